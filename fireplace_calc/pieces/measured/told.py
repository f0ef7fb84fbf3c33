"""What has been read of a sheet: fields that can be used, what is wrong, what is missing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.pieces.fields import MILLIMETER
from fireplace_calc.pieces.measured.sheet import MeasuredSheet
from fireplace_calc.pieces.records import SetPiece


@dataclass
class Told:
    """One entry, read.

    Attributes
    ----------
    mark : str
    table : dict
        Its fields in the set's file, lengths as fractions of the sheet's unit. [in or mm]
    piece : SetPiece or None
        As far as it can be read.
    lifts : tuple of int
        That it stands in, from 1. [-]
    times : tuple of int
        How often it is set. [-]
    wrong : dict
        A sentence by field; an empty key is the piece as a whole.
    missing : list of str
        Fields without which there is no piece.
    """

    mark: str
    table: dict[str, Any] = field(default_factory=dict)
    piece: SetPiece | None = None
    lifts: tuple[int, ...] = ()
    times: tuple[int, int] = (1, 1)
    wrong: dict[str, str] = field(default_factory=dict)
    missing: list[str] = field(default_factory=list)

    def take(self, key: str, read: Callable[[], Any]) -> Any:
        """What a field reads; nothing, and the sentence kept, when it cannot be read."""
        try:
            return read()
        except InputError as wrong:
            self.wrong[key] = str(wrong)
            return None


@dataclass(frozen=True)
class ReadSheet:
    """A whole sheet, read.

    Attributes
    ----------
    head : Told
        Of the set; ``table`` holds its fields.
    told : tuple of Told
        One for each entry.
    """

    head: Told
    told: tuple[Told, ...]


def unit_of_sheet(sheet: MeasuredSheet) -> float:
    """What a bare number on the sheet is worth. [m]"""
    return MILLIMETER if sheet.metric else INCH


def plain(value: Any) -> Any:
    """Fractions as the numbers of a file, in whatever holds them. [in or mm]"""
    if isinstance(value, Fraction):
        return value.numerator if value.denominator == 1 else float(value)
    if isinstance(value, Mapping):
        return {key: plain(v) for key, v in value.items()}
    if isinstance(value, list | tuple):
        return [plain(v) for v in value]
    return value
