"""The whole assessment as plain text."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterator

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork.courses import odd_courses
from fireplace_calc.brickwork.work import split_brick
from fireplace_calc.design.second_flue import FIREPLACE, GAS
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.report.sentences import (
    CAUTION,
    SIGNS,
    judged_tally,
    quantity,
    read_in_part,
    require_units,
    sentence,
    tally,
    weight,
)
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.told_areas import not_used

MOST_LISTED = 12
"""A summary names no more assumptions; the check sheet names all. [-]"""


def _summary(assessment: Assessment, units: str) -> Iterator[str]:
    from fireplace_calc.report import draft_report

    d, f = assessment.design, assessment.geometry.frame

    def long(value: float) -> str:
        return show(value, "length", units)

    def wide(value: float) -> str:
        return show(value, "area", units)

    yield d.name
    yield from ([d.note] if d.note else [])
    yield from (f"Drawn differently from the input: {said}" for said in f.adjusted)
    yield from (f"Not used: {said}" for said in not_used(d, f))
    yield from filter(None, [split_brick(assessment.geometry)])
    yield from odd_courses(assessment.geometry, units)
    flue = (
        f"{d.flue.shape} {f.bore.label}, {d.flue.sections} sections of"
        f" {long(d.flue.section_height)}"
    )
    yield ""
    yield (
        f"Opening      {long(d.opening.width)} wide, {long(d.opening.clear_height)} high,"
        f" {wide(f.clear_area)}" + (f" under a metal hood of {long(f.hood)}" if f.hood > 0 else "")
    )
    yield (
        f"Firebox      {long(f.depth)} deep, back {long(f.back_width)} wide, throat"
        f" {wide(f.throat_area)}"
    )
    yield (
        f"Flue         {flue}, inside {wide(f.bore.area)}, "
        f"1/{f.clear_area / f.bore.area:.1f} of the opening"
    )
    yield from _second_flue(assessment, long)
    yield (
        f"Chimney top  {long(f.crown_top)} above the floor, {long(f.crown_top - f.hearth)} above"
        " the hearth"
    )
    yield f"Weight       {show(assessment.weight, 'mass', units)} as built, footing included"
    yield ""
    yield f"Checks against {assessment.pack}: {tally(assessment)}"
    yield from filter(None, [read_in_part(assessment.pack)])
    for finding in assessment.findings:
        if finding.verdict in (FALLS_SHORT, NOT_CHECKED):
            yield f"{SIGNS[finding.verdict]} {finding.verdict}: {sentence(finding, units)}"
    yield from _assumed(assessment, units)
    yield ""
    yield (
        f"Draft. {draft_report.LABEL} {draft_report.sized(assessment, units)}"
        f" {draft_report.likely(assessment, units)} {draft_report.air_doubted(assessment)}"
    )
    yield f"Draft checks: {judged_tally(assessment.judgement)}"
    for finding in assessment.judgement:
        if finding.verdict in (FALLS_SHORT, NOT_CHECKED):
            yield f"{SIGNS[finding.verdict]} {finding.verdict}: {sentence(finding, units)}"
    yield ""
    first = max(26, *(len(r.item) + 1 for r in assessment.takeoff))
    yield f"{'Takeoff':{first}}{'net':>15}{'to order':>16}{'weight':>12}{'one piece':>11}"
    for r in assessment.takeoff:
        piece = show(r.piece_kg, "mass", units) if r.piece_kg and r.unit != "brick" else ""
        yield (
            f"{r.item:{first}}{quantity(r.net, r, units):>15}{quantity(r.order, r, units):>16}"
            f"{weight(r.weight_kg, units):>12}{piece:>11}"
        ).rstrip()
    yield ""
    yield CAUTION


def _assumed(assessment: Assessment, units: str) -> Iterator[str]:
    """What the passing checks rest on that nobody has entered."""
    found = assumptions(assessment, units)
    if found:
        listed = ", ".join(
            f"{one.label[:1].lower()}{one.label[1:]} {one.value}" for one in found[:MOST_LISTED]
        )
        more = f" and {len(found) - MOST_LISTED} more" if len(found) > MOST_LISTED else ""
        yield f"Assumed, nobody has entered it: {listed}{more}."


def summary(assessment: Assessment, units: str = FEET_INCHES, width: int = 100) -> str:
    """The whole assessment as plain text.

    Parameters
    ----------
    assessment : Assessment
        What to tell.
    units : str
        ``feet-inches`` or ``millimetres``.
    width : int
        Longest line, in characters. [-]

    Returns
    -------
    str
        Sizes, checks that want attention, takeoff, caution.
    """
    require_units(units)
    return "\n".join(
        line if len(line) <= width else textwrap.fill(line, width, subsequent_indent="  ")
        for line in _summary(assessment, units)
    )


def _second_flue(assessment: Assessment, long: Callable[[float], str]) -> Iterator[str]:
    """The flue beside the first one, and how far it is checked."""
    second, told = assessment.geometry.frame.second, assessment.design.second_flue
    if second is None:
        return
    what = "another fireplace" if told.serves == FIREPLACE else "a heating appliance"
    yield (
        f"Second flue  of {what}, {told.shape} {second.bore.label}, to the {told.side}, with"
        f" {long(second.between)} of masonry between"
    )
    if not assessment.pack.startswith("US IRC"):
        yield (
            "Not covered  the second flue's own size under these rules: give what burns below it a"
            " design of its own."
        )
    if told.serves != FIREPLACE and told.fuel == GAS:
        yield "Not covered  gas: liner, vent and draft of its appliance go by the fuel gas code."
