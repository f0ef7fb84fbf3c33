"""Reading the fields of a set's file: what came, what is allowed, in one sentence. [m, kg]"""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import EXACT_INCH, INCH, InputError
from fireplace_calc.pieces.records import JointRange, Outline

MILLIMETER = 0.001
REACH = 10.0
"""No length of a set is longer, and no corner farther off. [m]"""
MOST_CORNERS = 200
"""Of an outline. [-]"""


@dataclass(frozen=True, slots=True)
class Fields:
    """One table of the file, with its place for what is said about it.

    Attributes
    ----------
    where : str
        What the reader would call the table: ``Piece WR``.
    raw : mapping
        As the file has it.
    unit : float
        What a bare number is worth. [m]
    """

    where: str
    raw: Mapping[str, Any]
    unit: float

    def wrong(self, field: str, wanted: str, why: str = "") -> InputError:
        """What to raise when a field cannot be used."""
        came = shown(self.raw[field]) if field in self.raw else "missing"
        message = f"{self.where}, {field}: it is {came}, but {wanted} is wanted"
        return InputError(f"{message}{'; ' + why if why else ''}.", field, wanted, came)

    def only(self, known: Iterable[str]) -> None:
        """Refuse fields nobody knows, and name those that come near."""
        names = tuple(known)
        for field in self.raw:
            if field not in names:
                near = difflib.get_close_matches(str(field), names, n=1, cutoff=0.6)
                hint = f"did you mean {near[0]}?" if near else f"it may hold {', '.join(names)}."
                raise InputError(
                    f"{self.where} has no field {shown(field)}; {hint}",
                    str(field),
                    ", ".join(names),
                    field,
                )

    def length(
        self,
        field: str,
        default: float | None = None,
        low: float = 0.0,
        high: float = REACH,
    ) -> float:
        """A length: a bare number in the file's unit, or text with its own unit. [m]"""
        if field not in self.raw:
            if default is None:
                raise self.wrong(field, "a length")
            return default
        return self.one_length(field, self.raw[field], low, high)

    def one_length(self, field: str, value: Any, low: float = -REACH, high: float = REACH) -> float:
        """The same for one number of several. [m]"""
        if isinstance(value, str):
            made = to_si(value, "length", f"{self.where}, {field}")
        elif isinstance(value, (int, float)) and not isinstance(value, bool):
            # By fractions, so that 3 in and 76.2 mm are one number.
            exact = EXACT_INCH if self.unit == INCH else Fraction(1, 1000)
            made = float(Fraction(repr(value)) * exact) if abs(value) < 1e9 else math.inf
        else:
            raise self.wrong(field, "a length")
        if not low <= made <= high:
            worth = "mm" if self.unit == MILLIMETER else "in"
            span = f"{low / self.unit:g} to {high / self.unit:g} {worth}"
            raise self.wrong(field, f"a length of {span}")
        return made

    def number(self, field: str, low: float, high: float, unit: str) -> float | None:
        """A plain number, or nothing where the field is not there."""
        value = self.raw.get(field)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.wrong(field, f"a number in {unit}")
        if not low <= value <= high:
            raise self.wrong(field, f"{low:g} to {high:g} {unit}")
        return float(value)

    def words(self, field: str, default: str | None = None, longest: int = 200) -> str:
        """A line of text."""
        value = self.raw.get(field, default)
        if not isinstance(value, str) or not value.isprintable() or len(value) > longest:
            raise self.wrong(field, f"a line of text of at most {longest} letters")
        if default is None and not value.strip():
            raise self.wrong(field, "a name")
        return value.strip()

    def listed(self, field: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """A list of marks or names."""
        value = self.raw.get(field, default)
        if not isinstance(value, (list, tuple)) or not all(isinstance(v, str) for v in value):
            raise self.wrong(field, "a list of marks")
        return tuple(value)

    def joint(self, field: str, default: JointRange | None) -> JointRange:
        """Least, wanted and most thickness of a joint. [m]"""
        value = self.raw.get(field)
        if value is None and default is not None:
            return default
        if not isinstance(value, list) or len(value) != 3:
            raise self.wrong(field, "a list of three: least, wanted and most")
        least, wanted, most = (self.one_length(field, v, 0.0, 0.1) for v in value)
        if not least <= wanted <= most:
            raise self.wrong(field, "least, wanted and most in rising order")
        return JointRange(least, wanted, most)

    def point(self, field: str, value: Any) -> tuple[float, float]:
        """Two lengths: to the right, and set back. [m]"""
        if not isinstance(value, list) or len(value) != 2:
            raise self.wrong(field, "a pair: to the right of the center line, and set back")
        return self.one_length(field, value[0]), self.one_length(field, value[1])

    def outline(self, field: str) -> Outline:
        """A ring of corners as it was measured, either way round. [m]"""
        value = self.raw.get(field)
        if not isinstance(value, list) or not 3 <= len(value) <= MOST_CORNERS:
            many = f"it has {len(value)}" if isinstance(value, list) else ""
            raise self.wrong(field, f"a list of 3 to {MOST_CORNERS} corners", many)
        ring = tuple(self.point(field, corner) for corner in value)
        return ring[:-1] if ring[0] == ring[-1] and len(ring) > 3 else ring

    def tables(self, field: str) -> tuple[Mapping[str, Any], ...]:
        """A list of tables; none where the field is not there."""
        value = self.raw.get(field, [])
        if not isinstance(value, list) or not all(isinstance(v, Mapping) for v in value):
            raise self.wrong(field, "a list of tables")
        return tuple(value)


def unit_of(raw: Mapping[str, Any]) -> float:
    """What a bare number of the file is worth. [m]"""
    known = {"in": INCH, "mm": MILLIMETER}
    unit = raw.get("unit")
    if not isinstance(unit, str) or unit not in known:
        came = shown(unit) if unit is not None else "missing"
        raise InputError(
            f"The set's unit is {came}, but in or mm is wanted; a bare number is read in it.",
            "unit",
            "in or mm",
            unit,
        )
    return known[unit]
