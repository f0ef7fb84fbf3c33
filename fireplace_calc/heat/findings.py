"""What the heat says of a design, as findings in the reader's degrees: engineering judgement, and
never a pass.

A figure under a line proves nothing, so it is *not checked*; over it, it falls short of that line.
"""

from __future__ import annotations

from typing import NamedTuple

from fireplace_calc.base.tables import Source
from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.answer import HeatAnswer, evening_alone
from fireplace_calc.heat.cuts.behind import STANDS, WallRun
from fireplace_calc.heat.from_opening import LEAST_FLUX
from fireplace_calc.heat.telling import exactly, next_step, told
from fireplace_calc.rules.book import worst_first
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED, Compared, not_applicable
from fireplace_calc.rules.core import JUDGEMENT, Finding, Rule, filing

WOOD, FLUE, FRONT = "wood behind", "wood beside the flue", "wood before"
SOOT_RISE = 97.0
"""Allowed rise of a test structure in the gas test at 2100 F (UL 103 of 2010, as quoted). [K]"""
NO_PASS = f"Under the line here, which is no pass. {STANDS}"


class ReadHeat(NamedTuple):
    """An answer, and whose units it is told in."""

    answer: HeatAnswer
    units: str


RULES: list[Rule[ReadHeat]] = []
judged = filing(RULES)
TESTED = next(line.source for line in heat_lines() if line.key == "exposed")
LINES = {line.key: line for line in heat_lines()}
JUDGED = Source("engineering judgement", "derived")


def _held(highest: tuple[float, ...], held: float, limit: float, said: str, units: str) -> Compared:
    """Temperatures as they are told, one of them against a line."""
    provided, required = told(*highest, units=units), f"at most {exactly(limit, units)}"
    if next_step(held) > limit:
        return Compared(FALLS_SHORT, provided, required, f"{said} {STANDS}")
    return Compared(NOT_CHECKED, provided, required, f"{said} {NO_PASS}")


def _behind(runs: tuple[WallRun, ...] | None, read: ReadHeat) -> Compared:
    """Three fires; the middle one is held against the test limit of wood in the open."""
    if runs is None:
        return Compared(NOT_CHECKED, note=" ".join(read.answer.why_not))
    if not runs[0].framed:
        return not_applicable("The masonry stands free: nothing is framed behind it.")
    later = max(run.hours_after for run in runs)
    said = f"Kind, middle and hard fire; highest up to {later:.0f} h after it is out."
    highest = tuple(run.safe_highest for run in runs)
    return _held(highest, highest[1], LINES["exposed"].celsius, said, read.units)


@judged(
    "HEA-01", WOOD, "Wood behind the firebox, a long evening", "word", LINES["exposed"].source, True
)
def evening_behind(read: ReadHeat) -> Compared:
    """Eight hours of fire: the wood is hottest hours after it is out."""
    return _behind(read.answer.evening, read)


@judged(
    "HEA-02",
    WOOD,
    "Wood behind the firebox, a fire for a day",
    "word",
    LINES["exposed"].source,
    True,
)
def day_behind(read: ReadHeat) -> Compared:
    """A fire kept up for a day is another load: houses have burnt where it was the only heat."""
    return _behind(read.answer.day, read)


@judged("HEA-03", FLUE, "Wood beside the flue, a hard fire", "word", TESTED, True)
def beside_flue(read: ReadHeat) -> Compared:
    """Eight hours of hot smoke through liner, gap and wall."""
    return _flue(read, "hard", LINES["exposed"].celsius)


@judged("HEA-04", FLUE, "Wood beside the flue, a soot fire", "word", JUDGED, True)
def soot_fire(read: ReadHeat) -> Compared:
    """Soot burns for minutes; the wood is hottest hours later, so stay and look."""
    return _flue(read, "soot", 21.0 + SOOT_RISE)


def _flue(read: ReadHeat, key: str, limit: float) -> Compared:
    if read.answer.flue is None:
        return Compared(NOT_CHECKED, note=" ".join(read.answer.why_not))
    run = next(run for run in read.answer.flue if run.fire.key == key)
    said = f"Highest {run.hours_after:.0f} h after it is out."
    return _held((run.safe_highest,), run.safe_highest, limit, said, read.units)


@judged("HEA-05", FRONT, "Radiation on mantel and trim", "word", JUDGED, True)
def on_the_mantel(read: ReadHeat) -> Compared:
    """What a hard fire radiates on to the underside, against the least that has lit wood."""
    if not read.answer.trim:
        return not_applicable("No trim that stands out over the opening is told.")
    hottest = max(read.answer.trim, key=lambda step: step.falls[-1])
    said = f"{hottest.name[:1].upper()}{hottest.name[1:]}, at its outer edge, a hard fire."
    falls, limit = hottest.falls[-1] / 1e3, LEAST_FLUX / 1e3
    verdict, rest = (FALLS_SHORT, STANDS) if falls > limit else (NOT_CHECKED, NO_PASS)
    return Compared(verdict, f"{falls:.1f} kW/m²", f"at most {limit:.1f} kW/m²", f"{said} {rest}")


def judgement(answer: HeatAnswer, units: str = FEET_INCHES) -> tuple[Finding, ...]:
    """Every finding on the heat, worst first, in the reader's degrees."""
    return worst_first(rule.check(ReadHeat(answer, units), JUDGEMENT) for rule in RULES)


def evening_judged(geometry: Geometry, units: str = FEET_INCHES) -> Finding:
    """The first of them alone, wood behind the firebox after a long evening: for papers."""
    (rule,) = (rule for rule in RULES if rule.function is evening_behind)
    return rule.check(ReadHeat(geometry.once(evening_alone), units), JUDGEMENT)
