"""A set with everything its pictures need, worked out once: order, cards, and what is seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from math import ceil

from fireplace_calc.build.lining_work import LiningWork, count_lining
from fireplace_calc.build.setting.cards import DAY_WORK, SettingCard, cards_of
from fireplace_calc.design.records import Design
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.lining_piece import lining_as_piece
from fireplace_calc.geometry.from_set.set_up import set_up
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
    brick : Placed or None
        The lining as it is drawn; without it its step shows nothing new.
    laid : LiningWork or None
        What the lining takes.
    work : Work
        Who lifts, from which height, on which staging.
    """

    def __init__(
        self,
        made: Assembly,
        lining: FirebrickLining | None = None,
        brick: Placed | None = None,
        laid: LiningWork | None = None,
        work: Work = DAY_WORK,
    ) -> None:
        self.made, self.lining, self.brick, self.laid = made, lining, brick, laid
        self.work = work
        self._stages: dict[Viewpoint, Stages] = {}

    @cached_property
    def cards(self) -> tuple[SettingCard, ...]:
        """Every step, in order."""
        return cards_of(self.made, self.lining, self.work, laid=self.laid)

    @cached_property
    def order(self) -> tuple[Placed, ...]:
        """Pieces as they are set."""
        return tuple(card.placed for card in self.cards if card.placed is not None)

    @cached_property
    def drawn(self) -> tuple[Placed, ...]:
        """The same with the lining in its turn, where it is drawn."""
        turns = (card.placed or self.brick for card in self.cards)
        return tuple(one for one in turns if one is not None)

    def standing(self, step: int) -> int:
        """How much of what is drawn stands after a step; nought is the bare footing. [-]"""
        return sum((card.placed or self.brick) is not None for card in self.cards[:step])

    def shown(self, step: int) -> int:
        """How much the window holds at a step: all under the flue until that begins, then a few
        flue pieces more at a time, so that the scale seldom jumps. [-]
        """
        under = sum(p.piece.role != "flue" for p in self.drawn)
        beyond = max(self.standing(step) - under, 0 if under else 1)
        return min(under + ceil(beyond / AT_A_TIME) * AT_A_TIME, len(self.drawn))

    def card(self, step: int) -> SettingCard | None:
        """The card of a step, from 1; none on the bare footing."""
        return self.cards[step - 1] if step else None

    def name_drawn(self, card: SettingCard) -> str:
        """What is marked when a card is shown."""
        return self.brick.name if card.placed is None and self.brick else card.name

    def stages(self, eye: Viewpoint) -> Stages:
        """What is seen from one side, kept for the next step."""
        if eye not in self._stages:
            self._stages[eye] = Stages(self.made, self.drawn, eye)
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
        for count in range(len(self.drawn) + 1):
            for eye in every:
                self.stages(eye).seen(count)
                yield


def pictures_of(design: Design) -> SetPictures:
    """Everything the pictures of a design's set need, its lining counted and drawn.

    Parameters
    ----------
    design : Design
        With a set.
    """
    up, geometry = set_up(design), build_geometry(design)
    lining = design.piece_set.lining if design.piece_set else None
    laid = count_lining(geometry)
    return SetPictures(up.assembly, lining, lining_as_piece(geometry), laid, design.work)
