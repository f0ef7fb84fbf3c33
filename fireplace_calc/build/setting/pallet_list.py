"""What has to stand on the pallets before the first piece is set, and what a missing one stops."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil

from fireplace_calc.base.units import InputError
from fireplace_calc.build.setting.setting_order import SettingStep, stopped_by
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.pieces.records import SetPiece


@dataclass(frozen=True, slots=True)
class PalletRow:
    """One mark of the delivery.

    Attributes
    ----------
    piece : SetPiece
    count : int
        In the work. [-]
    each, whole : float
        Weight of one, and of all. [kg]
    pallets : int or None
        As far as the set's file says how many come on one. [-]
    """

    piece: SetPiece
    count: int
    each: float
    whole: float
    pallets: int | None


def pallet_rows(made: Assembly) -> tuple[PalletRow, ...]:
    """The delivery, mark by mark, in the order the pieces are first used.

    Parameters
    ----------
    made : Assembly

    Returns
    -------
    tuple of PalletRow
    """
    counts = Counter(one.piece for one in made.placed)
    return tuple(
        PalletRow(
            piece,
            count,
            piece_weight(piece),
            count * piece_weight(piece),
            None if piece.on_pallet is None else ceil(count / piece.on_pallet),
        )
        for piece, count in counts.items()
    )


def stopped_without(
    steps: Iterable[SettingStep], delivered: dict[str, int]
) -> tuple[SettingStep, ...]:
    """Steps that cannot be done with what came sound: the piece itself, and all that waits for it.

    Parameters
    ----------
    steps : iterable of SettingStep
        In order.
    delivered : dict of str to int
        Sound pieces by mark, of marks that are short or came broken. [-]

    Returns
    -------
    tuple of SettingStep

    Raises
    ------
    InputError
        When the set has no such mark, or a count is less than nought.
    """
    steps = tuple(steps)
    marks = {s.placed.piece.mark for s in steps if s.placed is not None}
    for mark, count in delivered.items():
        if mark not in marks:
            known = ", ".join(sorted(marks))
            raise InputError(
                f"There is no piece {mark!r} in this set; its marks are {known}.",
                "mark",
                known,
                mark,
            )
        if count < 0:
            raise InputError(
                f"{mark}: {count} pieces cannot come.", "mark", "nought or more", count
            )
    missing = [
        s.name
        for s in steps
        if s.placed is not None
        and s.placed.number > delivered.get(s.placed.piece.mark, s.placed.number)
    ]
    return stopped_by(steps, missing)
