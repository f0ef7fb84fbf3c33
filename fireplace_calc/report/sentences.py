"""An assessment's findings as sentences and figures, in the reader's units."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from math import ceil
from typing import TYPE_CHECKING, Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import (
    CUFT,
    CUYD,
    FEET_INCHES,
    MILLIMETRES,
    POUND,
    SQFT,
    SYSTEMS,
    InputError,
    from_unit,
)
from fireplace_calc.report.assumed_inputs import named, not_entered, to_enter
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.takeoff import Row

if TYPE_CHECKING:
    from fireplace_calc.report.books import Answer


CAUTION = (
    "For planning, by people who know masonry. A fireplace can burn a house down, poison its people"
    " or fall: local code, the building department and licensed practice decide, and what is not"
    " checked is not safe until somebody looks."
)
AT_MOST = "at most "
BAGGED = {"80-lb bag": (80 * POUND, "bag"), "50-lb pail": (50 * POUND, "pail")}
"""Units of the list that hold a weight [kg], and what they are."""
METRIC_BAG, TON = 25.0, 2000 * POUND
"""Of a bag or a pail where mortar is sold by the kilogram, common practice; of a ton. [kg]"""
SIGNS = {FALLS_SHORT: "✗", NOT_CHECKED: "?", MEETS: "✓", DOES_NOT_APPLY: "–"}
PLURALS = {
    FALLS_SHORT: "fall short",
    NOT_CHECKED: "not checked",
    MEETS: "meet",
    DOES_NOT_APPLY: "do not apply",
}
KINDS = {
    "in": "length",
    "ft": "length",
    "mm": "length",
    "m": "length",
    "in2": "area",
    "ft2": "area",
    "mm2": "area",
    "m2": "area",
    "deg": "angle",
    "ft/s": "air speed",
    "Pa": "pressure",
    "K": "difference",
}
METRIC = {"psi": "Pa", "psf": "Pa", "lbf": "N"}
"""Units of a book that who measures in millimeters reads in others."""


def require_units(units: str) -> str:
    """The name of a unit system, or a sentence that says which there are."""
    if units not in SYSTEMS:
        raise InputError(
            f"Units are {units!r}, but there are only {' and '.join(SYSTEMS)}.",
            "Units",
            ", ".join(SYSTEMS),
            units,
        )
    return units


def bagged(amount: float, unit: str) -> str:
    """What is sold in bags or pails by the pound, for readers who buy it by the kilogram.

    >>> bagged(77, "80-lb bag"), bagged(1, "50-lb pail")
    ('2 794 kg (112 bags of 25 kg)', '23 kg (1 pail of 25 kg)')
    """
    holds, name = BAGGED[unit]
    count = ceil(amount * holds / METRIC_BAG - COUNT_SLACK)
    several = "" if count == 1 else "s"
    mass = show(amount * holds, "mass", MILLIMETRES)
    return f"{mass} ({count} {name}{several} of {METRIC_BAG:.0f} kg)"


def quantity(amount: float, row: Row, units: str = FEET_INCHES) -> str:
    """A net or ordered quantity with its unit; poured work and areas in cubic and square metres for
    metric readers.
    """
    if units == MILLIMETRES and row.unit in BAGGED:
        return bagged(amount, row.unit)
    if units == MILLIMETRES and row.unit == "ton":
        return f"{amount * TON / 1000:.2f} t"
    if units == MILLIMETRES and row.unit == "board foot":
        return f"{amount * CUFT / 12:.3f} m³"
    if row.unit == "yd3":
        return f"{amount * CUYD:.2f} m³" if units == MILLIMETRES else f"{amount:.2f} yd³"
    if row.unit == "ft2":
        return f"{amount * SQFT:.2f} m²" if units == MILLIMETRES else f"{amount:.1f} ft²"
    number = (
        f"{amount:.0f}"
        if amount == int(amount)
        else f"{amount:.2f}"
        if row.unit == "ton"
        else f"{amount:.1f}"
    )
    if amount == 1 or row.unit == "brick":
        return f"{number} {row.unit}"
    return f"{number} {row.unit.replace('foot', 'feet')}{'' if row.unit.endswith('foot') else 's'}"


def compared(finding: Finding, units: str = FEET_INCHES) -> tuple[str, str, str]:
    """What is provided, what is asked and what is to spare, in the reader's units; words stay
    words. A limit that is passed says that it is the most.

    Where rounding would hide the difference, the figures stand in the book's own unit with three
    more decimals.
    """
    kind, figures = KINDS.get(finding.unit), (finding.provided, finding.required, finding.margin)
    turned = METRIC.get(finding.unit) if units == MILLIMETRES else None

    def shown(value: Any) -> str:
        if value is None or isinstance(value, str):
            return value or ""
        if kind:
            return show(from_unit(value, finding.unit), kind, units)
        if turned:
            kilo = from_unit(value, finding.unit) / 1000
            return f"{kilo:.3g} k{turned}" if abs(kilo) < 1000 else f"{kilo / 1000:.3g} M{turned}"
        number = f"{value:.4g}" if abs(value) < 1e3 else grouped(value, units=units)
        return number if finding.unit in ("count", "-", "ratio") else f"{number} {finding.unit}"

    provided, required, margin = (shown(value) for value in figures)
    if (kind or turned) and finding.margin and provided == required:
        provided, required, margin = (f"{value:.3f} {finding.unit}" for value in figures)
    if (passed := finding.numbers) and finding.verdict == FALLS_SHORT and passed[0] > passed[1]:
        required = f"{AT_MOST}{required}"
    return provided, required, margin


def asked(finding: Finding, units: str = FEET_INCHES) -> str:
    """What is asked, and which way it binds where the margin tells."""
    required, numbers = compared(finding, units)[1], finding.numbers
    if not required or not finding.margin or numbers is None or required.startswith(AT_MOST):
        return required
    least = (numbers[0] - numbers[1]) * finding.margin > 0
    return f"at {'least' if least else 'most'} {required}"


def answer(found: Answer, units: str = FEET_INCHES) -> str:
    """How a book answers a question, in a line: each clause that binds with its verdict, what is
    there and what is asked.
    """
    if found.silent:
        return "silent"
    said = []
    for f in found.findings:
        provided, required, _ = compared(f, units)
        figures = (
            f" {provided} for {required}"
            if provided and required
            else f" {required} required"
            if required
            else ""
        )
        said.append(f"{sign(f)} {f.verdict}{figures} ({f.key})")
    return "; ".join(said) or "does not apply"


def answers_rest(answers: Iterable[Answer]) -> str:
    """Said once for all answers side by side: what their signs in brackets mean, and which inputs
    nobody has entered; nothing where all are.
    """
    found = [f for one in answers for f in one.findings]
    resting = sorted({key for f in found if f.on_assumption for key in f.assumed})
    missing = sorted({key for f in found for key in f.missing})
    said = []
    if resting:
        said.append(f"A sign in brackets passes on an assumption. {not_entered(resting)}")
    if missing:
        said.append(f"What is not checked waits for: {named(missing)}.")
    return " ".join(said)


def weight(kg: float, units: str = FEET_INCHES) -> str:
    """A weight in the reader's units, or that there is none to give."""
    return show(kg, "mass", units) if kg else "not counted"


def sign(finding: Finding) -> str:
    """The sign of a verdict; in brackets where it stands on an assumption."""
    return f"({SIGNS[finding.verdict]})" if finding.on_assumption else SIGNS[finding.verdict]


def tally(assessment: Assessment) -> str:
    """How many checks of the code came out how, worst first; those on an assumption apart."""
    return _tallied(assessment.counts, assessment.assumed)


def judged_tally(findings: Iterable[Finding]) -> str:
    """The same of findings on the draft or the structure."""
    found = tuple(findings)
    return _tallied(
        Counter(f.verdict for f in found), Counter(f.verdict for f in found if f.on_assumption)
    )


def _tallied(counts: Mapping[str, int], assumed: Mapping[str, int]) -> str:
    def counted(verdict: str, words: str) -> str:
        number, resting = counts.get(verdict, 0), assumed.get(verdict, 0)
        apart = f" ({resting} of them on an assumption)" if resting else ""
        return f"{number} {verdict if number == 1 else words}{apart}"

    return ", ".join(counted(verdict, words) for verdict, words in PLURALS.items())


def read_in_part(pack: str) -> str:
    """How far a book was read that was not read whole; nothing for the others."""
    return PACKS[pack].reach


def sentence(finding: Finding, units: str = FEET_INCHES) -> str:
    """One finding in words: what is there, what is asked, how much is lacking, where it is written,
    and why.
    """
    provided, required, margin = compared(finding, units)
    said = [f"{finding.title}:"]
    if finding.provided is not None and finding.verdict != DOES_NOT_APPLY:
        lacking, numbers = "", finding.numbers
        if finding.verdict == FALLS_SHORT and finding.margin and numbers is not None:
            much = "little" if numbers[1] > numbers[0] else "much"
            lacking = f", {margin.removeprefix('-')} too {much}"
        wanted = f", {required} required{lacking}" if required else ""
        said.append(f"{provided} provided{wanted}.")
    said += [
        text[:1].upper() + text[1:]
        for text in (finding.note, finding.why, to_enter(finding))
        if text
    ]
    return " ".join((*said, f"({finding.key}, {finding.clause}, {finding.edition})"))
