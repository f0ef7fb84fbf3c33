"""Hold points, waits and cautions of the work, read from ``data/`` where they can be changed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import FEET_INCHES, from_unit

THIS = re.compile(r"\bthis\b(?: distance| far| many| share)?")
"""Where the figure of a caution stands in its sentence."""
METRIC = {"ft": "length", "lb": "mass"}
"""Units of figures that are told in the reader's too, and kind of quantity."""


@dataclass(frozen=True, slots=True)
class HoldPoint:
    """Something to be right before work goes on.

    Attributes
    ----------
    kind : str
        Level, plumb, square, slope, fit, cure, test or inspection.
    what : str
        Is to be right.
    source, confidence : str
        Where it is from.
    """

    kind: str
    what: str
    source: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Wait:
    """Time that a part takes by itself.

    Attributes
    ----------
    part, what : str
        Which, and what happens.
    days : float
        At 40 F or warmer; longer in the cold. [d]
    counts_from : str
        ``end`` of the part, or ``start`` of each of its lift parts.
    holds_up : bool
        Whether what rests on it has to wait; else it runs beside the work.
    source, confidence : str
        Where it is from.
    """

    part: str
    what: str
    days: float
    counts_from: str
    holds_up: bool
    source: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning.

    Attributes
    ----------
    topic, what : str
        What can hurt, and what is to be done.
    number : float or None
        Its figure, in ``unit``. [-]
    unit : str
        As its rule prints it.
    source, confidence : str
        Where it is from.
    in_england : str
        The same in English words and for English law, its figure in it; empty where it says nothing
        there.
    england_from : str
        Where that is from, and how sure it is.
    """

    topic: str
    what: str
    number: float | None
    unit: str
    source: str
    confidence: str
    in_england: str = ""
    england_from: str = ""

    def figured(self, units: str = FEET_INCHES) -> str:
        """The sentence with its figure in the place of *this*, as its rule prints it; for who
        measures in millimeters in theirs too.

        Parameters
        ----------
        units : str
            ``feet-inches`` or ``millimetres``.

        Returns
        -------
        str

        Examples
        --------
        >>> caution = Caution("fire", "Keep the can this far from the house.", 10.0, "ft", "", "")
        >>> caution.figured(), caution.figured("millimetres")
        ('Keep the can 10 ft from the house.', 'Keep the can 10 ft (3 048 mm) from the house.')
        """
        if self.number is None:
            return self.what
        said = f"{self.number:g} {self.unit}".replace("ug/m3", "µg/m³")
        if self.unit == "-":
            said = str(Fraction(self.number))
        elif units != FEET_INCHES and self.unit in METRIC:
            said = f"{said} ({show(from_unit(self.number, self.unit), METRIC[self.unit], units)})"
        return THIS.sub(said, self.what, count=1)

    def as_in_england(self) -> Caution | None:
        """The same in English words; nothing where it says nothing there.

        Examples
        --------
        >>> caution = Caution("heights", "Rails here.", None, "", "OSHA", "read", "Guard rails.",
        ...                   "as beside")
        >>> caution.as_in_england().what, caution.as_in_england().source
        ('Guard rails.', 'OSHA')
        """
        if not self.in_england:
            return None
        source, confidence = self.source, self.confidence
        if not self.england_from.startswith(("as beside", "the same figure")):
            source, _, confidence = self.england_from.rpartition(", ")
        return Caution(self.topic, self.in_england, None, "", source, confidence)


@dataclass(frozen=True, slots=True)
class Dust:
    """A task that raises silica.

    Attributes
    ----------
    task, control : str
        The work, and what keeps the dust down.
    mask_short, mask_long : str
        The mask required up to 4 h a day and over.
    source, confidence : str
        Where it is from.
    """

    task: str
    control: str
    mask_short: str
    mask_long: str
    source: str
    confidence: str


@lru_cache(maxsize=1)
def _holds() -> dict[str, tuple[HoldPoint, ...]]:
    found: dict[str, list[HoldPoint]] = {}
    for r in rows("build_holds.csv"):
        found.setdefault(r["part"], []).append(
            HoldPoint(r["kind"], r["what"], r["source"], r["confidence"])
        )
    return {part: tuple(holds) for part, holds in found.items()}


@lru_cache(maxsize=1)
def _waits() -> tuple[tuple[str, Wait], ...]:
    return tuple(
        (
            r["material"],
            Wait(
                r["part"],
                r["what"],
                float(r["days"]),
                r["counts_from"],
                r["holds_up"] == "yes",
                r["source"],
                r["confidence"],
            ),
        )
        for r in rows("build_waits.csv")
    )


def hold_points_of(part: str) -> tuple[HoldPoint, ...]:
    """HoldPoint points of a part.

    Parameters
    ----------
    part : str
        Its name, or ``last flue`` for the last section.

    Returns
    -------
    tuple of HoldPoint
        None for a part that needs no more than care.
    """
    return _holds().get(part, ())


def waits_of(part: str, material: str) -> tuple[Wait, ...]:
    """Waits after a part.

    Parameters
    ----------
    part, material : str
        Its name, and what it is made of.

    Returns
    -------
    tuple of Wait
        In the order of the table.
    """
    return tuple(wait for of, wait in _waits() if wait.part == part and of in ("", material))


@lru_cache(maxsize=4)
def cautions(pack: str = "") -> tuple[Caution, ...]:
    """Fire, carbon monoxide, collapse, lifting, silica, heights, and whom to defer to.

    Parameters
    ----------
    pack : str
        Name of the book whose reader is warned: England has words and laws of its own.

    Returns
    -------
    tuple of Caution
        Rows of ``data/safety.csv``.
    """
    if pack.startswith("UK"):
        return tuple(said for one in cautions() if (said := one.as_in_england()) is not None)
    return tuple(
        Caution(
            r["topic"],
            r["what"],
            float(r["number"]) if r["number"] else None,
            r["unit"],
            r["source"],
            r["confidence"],
            r["in_england"],
            r["england_from"],
        )
        for r in rows("safety.csv")
    )


@lru_cache(maxsize=1)
def dust() -> tuple[Dust, ...]:
    """Tasks that raise silica, with their controls; masks by assigned protection factor.

    Returns
    -------
    tuple of Dust
        Rows of ``data/silica_work.csv``.
    """
    return tuple(
        Dust(
            r["task"],
            r["control"],
            r["protection_factor_to_4h"],
            r["protection_factor_over_4h"],
            r["source"],
            r["confidence"],
        )
        for r in rows("silica_work.csv")
    )
