"""A delivery as it is put down: piles of one mark, and what stays on its own pallet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.build.setting.setting_order import SettingStep
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.solids import extent, piece_weight
from fireplace_calc.pieces.records import SetPiece

LEFT, RIGHT, EITHER = "left", "right", ""


@dataclass(frozen=True, slots=True)
class Pile:
    """Pieces of one mark on each other, the first to be set on top.

    Attributes
    ----------
    piece : SetPiece
    names : tuple of str
        In the order they are set.
    weight : float
        Of all of them. [kg]
    step : int
        At which the first is set. [-]
    side : str
        ``left``, ``right``, or empty for what stands across the middle.
    """

    piece: SetPiece
    names: tuple[str, ...]
    weight: float
    step: int
    side: str

    @property
    def label(self) -> str:
        """Mark, and how many."""
        count = len(self.names)
        return f"{self.piece.mark} x {count}" if count > 1 else self.piece.mark

    @property
    def footprint(self) -> tuple[float, float]:
        """Its shorter and its longer side on the floor. [m]"""
        x0, x1, y0, y1, _, _ = extent(self.piece)
        short, long = sorted((float(x1 - x0), float(y1 - y0)))
        return short, long


def piles_of(
    steps: Iterable[SettingStep], height: float
) -> tuple[tuple[Pile, ...], tuple[Pile, ...]]:
    """Piles to put down, and loads that stay on their own pallets.

    Parameters
    ----------
    steps : iterable of SettingStep
        In order.
    height : float
        No pile is higher, one piece alone excepted. [m]

    Returns
    -------
    tuple of (tuple of Pile, tuple of Pile)
        In the order the pieces are delivered: mark by mark, as they are first set. A mark that the
        set's file gives a count to a pallet stays on such pallets.
    """
    marks: dict[SetPiece, list[tuple[int, Placed]]] = {}
    for step in steps:
        if step.placed is not None:
            marks.setdefault(step.placed.piece, []).append((step.number, step.placed))
    piles: list[Pile] = []
    pallets: list[Pile] = []
    for piece, used in marks.items():
        if piece.on_pallet is None:
            most, into = max(int((height + CONTACT_GAP) / piece.height), 1), piles
        else:
            most, into = piece.on_pallet, pallets
        for load in (used[n : n + most] for n in range(0, len(used), most)):
            names = tuple(one.name for _, one in load)
            weight = piece_weight(piece) * len(names)
            into.append(Pile(piece, names, weight, load[0][0], _side(piece)))
    return tuple(piles), tuple(pallets)


def _side(piece: SetPiece) -> str:
    x0, x1, *_ = extent(piece)
    if x1 <= CONTACT_GAP:
        return LEFT
    return RIGHT if x0 >= -CONTACT_GAP else EITHER
