"""A set with everything its pictures need, worked out once: order, cards, and what is seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from math import ceil

from fireplace_calc.build.setting.cards import SettingCard, cards_of
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.visible.stages import Stages
from fireplace_calc.geometry.visible.viewpoint import Viewpoint
from fireplace_calc.pieces.records import FirebrickLining

AT_A_TIME = 6
"""Flue pieces that the window makes room for together. [-]"""


class SetPictures:
    """A set that fits, as its pictures read it.

    Parameters
    ----------
    made : Assembly
    lining : FirebrickLining or None
    """

    def __init__(self, made: Assembly, lining: FirebrickLining | None = None) -> None:
        self.made, self.lining = made, lining
        self._stages: dict[Viewpoint, Stages] = {}

    @cached_property
    def cards(self) -> tuple[SettingCard, ...]:
        """Every step, in order."""
        return cards_of(self.made, self.lining)

    @cached_property
    def order(self) -> tuple[Placed, ...]:
        """Pieces as they are set."""
        return tuple(card.placed for card in self.cards if card.placed is not None)

    def standing(self, step: int) -> int:
        """How many pieces stand after a step; nought is the bare footing. [-]"""
        return sum(card.placed is not None for card in self.cards[:step])

    def shown(self, step: int) -> int:
        """How many pieces the window holds at a step: all under the flue until that begins, then a
        few flue pieces more at a time, so that the scale seldom jumps. [-]
        """
        under = sum(p.piece.role != "flue" for p in self.order)
        beyond = max(self.standing(step) - under, 0 if under else 1)
        return min(under + ceil(beyond / AT_A_TIME) * AT_A_TIME, len(self.order))

    def card(self, step: int) -> SettingCard | None:
        """The card of a step, from 1; none on the bare footing."""
        return self.cards[step - 1] if step else None

    def stages(self, eye: Viewpoint) -> Stages:
        """What is seen from one side, kept for the next step."""
        if eye not in self._stages:
            self._stages[eye] = Stages(self.made, self.order, eye)
        return self._stages[eye]

    def ahead(self, eyes: Iterable[Viewpoint]) -> Iterator[None]:
        """Work out what is seen after every step, a little each time it is asked to go on.

        Parameters
        ----------
        eyes : iterable of Viewpoint

        Yields
        ------
        None
            After each view of each step.
        """
        every = tuple(eyes)
        for count in range(len(self.order) + 1):
            for eye in every:
                self.stages(eye).seen(count)
                yield
