"""What a lesson may name without working it out: figures of the engine, read when asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from math import tan

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import MM
from fireplace_calc.geometry.roofline import REACH, highest_within
from fireplace_calc.lessons import worked_measures as worked
from fireplace_calc.lessons.course.sums import NUMBER, Amount

Measure = Callable[[Assessment], Amount]
"""A figure read off an assessment."""


def reach_of(book: str) -> float:
    """How far, level, a book looks for what stands higher. [m]"""
    return 3000 * MM if book.startswith("Canada") else REACH


def _climb(found: Assessment) -> Amount:
    contact = found.geometry.frame.uphill_contact
    highest, _ = highest_within(found.design, contact, reach_of(found.pack))
    return Amount(highest - contact, "length")


def _opening(found: Assessment) -> Amount:
    opening = found.design.opening
    return Amount(opening.width * opening.height, "area")


def _flue_area(found: Assessment) -> Amount:
    """Net area of the liner, as its table prints it."""
    bore = found.geometry.frame.bore
    return Amount(bore.table_area or bore.area, "area")


def _chamber_run(found: Assessment) -> Amount:
    """How far the flattest wall of the smoke chamber goes inward."""
    slopes = found.geometry.frame.chamber_slopes
    return Amount(tan(max(slopes.values())) * _chamber_rise(found).value, "length")


def _chamber_rise(found: Assessment) -> Amount:
    """How high the leaning walls of the smoke chamber go; over them they stand upright."""
    frame = found.geometry.frame
    return Amount(frame.taper_top - frame.throat, "length")


def _of(figure: Callable[[Assessment], float], kind: str) -> Measure:
    """A figure as an amount of a kind."""
    return lambda found: Amount(figure(found), kind)


MEASURES: dict[str, Measure] = {
    "climb": _climb,
    "opening": _opening,
    "flue_area": _flue_area,
    "chamber_run": _chamber_run,
    "chamber_rise": _chamber_rise,
    "column": _of(worked.warm_column, "length"),
    "pull": _of(worked.column_pull, "pressure"),
    "lost": _of(worked.way_losses, "pressure"),
    "house": _of(worked.house_share, "pressure"),
    "kind": _of(worked.hottest_wood(0), "temperature"),
    "middle": _of(worked.hottest_wood(1), "temperature"),
    "hard": _of(worked.hottest_wood(2), "temperature"),
    "later": _of(worked.hours_later, NUMBER),
}
"""By the names that a lesson's sums and texts use."""
WOOD = ("kind", "middle", "hard")
"""Measures that are told roughly: temperatures of the wood."""


class LessonNames(Mapping[str, Amount]):
    """Names of a lesson's sums: what was given, else what the engine measures, once.

    Parameters
    ----------
    given : mapping
        Controls, values and answers.
    measured : callable
        Gives the assessment; asked only where a measure is named.
    """

    def __init__(
        self, given: Mapping[str, Amount], measured: Callable[[], Assessment] | None = None
    ) -> None:
        self.given, self.measured = dict(given), measured

    def __getitem__(self, name: str) -> Amount:
        if name not in self.given:
            if self.measured is None or name not in MEASURES:
                raise KeyError(name)
            self.given[name] = MEASURES[name](self.measured())
        return self.given[name]

    def __iter__(self) -> Iterator[str]:
        return iter(dict.fromkeys([*self.given, *(MEASURES if self.measured else ())]))

    def __len__(self) -> int:
        return len(list(iter(self)))
