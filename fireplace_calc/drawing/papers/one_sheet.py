"""Two short papers: one to hand over to a client, one to show an inspector."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.papers.full_papers import blocked, paper, place, printing
from fireplace_calc.drawing.papers.written_sheets import FOUND, found_rows
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.room.room_view import room
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.proportion import find_guides, width_sentence
from fireplace_calc.report.alternatives import side_by_side
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.report.sentences import (
    CAUTION,
    asked,
    compared,
    judged_tally,
    read_in_part,
    sign,
    tally,
)
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED

Told = Iterator[tuple[int, int, str]]
WORKED = (
    Column("Figure", 26),
    Column("Formula", 40),
    Column("With the numbers", 50),
    Column("Comes to", 18),
    Column("Based on", 44),
)
MET = (Column("Check", 60), Column("Provided", 26), Column("Required", 26), Column("Clause", 46))
ASSUMED = (Column("What", 60), Column("Taken to be", 40), Column("Checks that pass on it", 78))
SIGNED = (
    Column("Item inspected", 60),
    Column("By", 40),
    Column("Date", 25),
    Column("Remarks", 60),
)
TO_SIGN = (
    "Sizes as built",
    "Clearances to combustibles",
    "Flue and its joints",
    "Smoke test, fans on and off",
    "Chimney over the roof",
)


def hand_over(
    result: Assessment,
    options: Sequence[Assessment],
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
    shown: Collection[str] = (),
) -> Told:
    """Write the sheet for a client: the fireplace in its room, then what it is, costs, weighs,
    draws and breaks, options beside it.

    Parameters
    ----------
    result : Assessment
        The design under the hands.
    options : sequence of Assessment
        Designs put aside, told before it.
    path : path
        Of the PDF.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str or None
        ``letter``, ``11x17``, ``A4`` or ``A3``; the one usual for the units when left out.
    shown : collection of str
        Proportion guides that are switched on.

    Returns
    -------
    iterator
        Writes as it goes, as ``papers.printing`` does.
    """
    wide, high = paper(units, size)
    picture = Sheet(wide, high)
    guides = find_guides(result.geometry, units) if shown else ()
    switched_on = [guide for guide in guides if guide.name in shown]
    room(picture, place(wide, high), result.geometry, units, guides=switched_on)
    flow = TextFlow(wide, high, place(wide, high))
    results = [*options, result]
    names = [f"Option {n}" for n in range(1, len(options) + 1)] + ["This design"]
    columns = (Column("", 24), *(Column(name, 100 / len(names)) for name in names))
    flow.table(
        Table(
            "Side by side" if options else "What it is",
            columns,
            tuple((name, *texts) for name, texts in side_by_side(results, units)),
        )
    )
    flow.words(width_sentence(result.geometry, units))
    flow.words(CAUTION)
    made = [("In its room", picture, None), *(("Figures", sheet, None) for sheet in flow.sheets)]
    return printing(blocked(made, result, units), path, result)


def check_sheet(
    result: Assessment,
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
) -> Told:
    """Write the sheet for an inspector: section and roof, every figure with its formula, what falls
    short and is open, lines to sign.

    Parameters
    ----------
    result : Assessment
    path : path
        Of the PDF.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str or None
        ``letter``, ``11x17``, ``A4`` or ``A3``; the one usual for the units when left out.

    Returns
    -------
    iterator
        Writes as it goes, as ``papers.printing`` does.
    """
    wide, high = paper(units, size)
    whole, picture = place(wide, high), Sheet(wide, high)
    middle = (whole.left + whole.right) / 2
    section(picture, Cell(whole.left, whole.bottom, middle, whole.top), result.geometry, units)
    roof(
        picture,
        Cell(middle, whole.bottom, whole.right, whole.top),
        result.geometry,
        units,
        limits=roof_limits(result.findings),
    )
    picture.line([(middle, whole.bottom + 3), (middle, whole.top - 3)], "fine", "soft")
    flow = TextFlow(wide, high, whole)
    for part in _checked(result, units):
        flow.words(part) if isinstance(part, str) else flow.table(part)
    made = [
        ("Check sheet, not to scale", picture, None),
        *(("Check sheet", sheet, None) for sheet in flow.sheets),
    ]
    return printing(blocked(made, result, units), path, result)


def _checked(result: Assessment, units: str) -> Iterator[str | Table]:
    yield CAUTION
    taken = assumptions(result, units)
    if taken:
        yield Table(
            "Assumed: nobody has entered it, look before you sign",
            ASSUMED,
            tuple((one.label, one.value, ", ".join(one.passed)) for one in taken),
            tick=True,
        )
    yield Table(
        "Formula, numbers, result",
        WORKED,
        tuple(
            (one.name, one.formula, one.numbers, one.result, one.source)
            for one in work_figures(result, units)
        ),
    )
    for title, verdict in (
        ("Falls short", FALLS_SHORT),
        ("Not checked: look on site", NOT_CHECKED),
    ):
        found = tuple(f for f in result.findings if f.verdict == verdict)
        if found:
            yield Table(f"{title}, {result.pack}", FOUND, found_rows(found, units))
    met = tuple(
        (
            f"{sign(f)} {f.title} ({f.key})",
            compared(f, units)[0],
            asked(f, units),
            f"{f.clause}, {f.edition}",
        )
        for f in result.findings
        if f.verdict == MEETS
    )
    if met:
        yield Table(f"Meets, {result.pack}", MET, met)
    yield f"All checks against {result.pack}: {tally(result)}. {read_in_part(result.pack)}".strip()
    judged = tuple(
        f
        for f in (*result.judgement, *result.structure.findings)
        if f.verdict in (FALLS_SHORT, NOT_CHECKED)
    )
    if judged:
        yield Table(
            "Draft and structure: engineering judgement, not code", FOUND, found_rows(judged, units)
        )
    yield f"Draft: {judged_tally(result.judgement)}."
    yield f"Structure: {judged_tally(result.structure.findings)}."
    yield from (f"Call an engineer. {reason}" for reason in result.structure.engineer)
    yield Table(
        "Inspected on site", SIGNED, tuple((what, "", "", "") for what in TO_SIGN), tick=True
    )
