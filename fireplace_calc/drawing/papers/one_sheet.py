"""Two short papers: one to hand over to a client, one to show an inspector."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.papers.full_papers import printing
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.sizes import ON_A_TABLE, paper
from fireplace_calc.drawing.plates.whole_set import bound, sheets
from fireplace_calc.drawing.room.room_view import room
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.proportion import find_guides, width_sentence
from fireplace_calc.report.alternatives import side_by_side
from fireplace_calc.report.sentences import CAUTION

Told = Iterator[tuple[int, int, str]]
CHECKED = ("checks.inspector", "set_out.sheets", "plan_sheets.plans")
"""Whose sheets an inspector is given."""


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
    on = paper(units, size, ON_A_TABLE)
    picture = Sheet(on.width, on.height)
    guides = find_guides(result.geometry, units) if shown else ()
    switched_on = [guide for guide in guides if guide.name in shown]
    room(picture, on.field, result.geometry, units, guides=switched_on)
    flow = TextFlow(on.width, on.height, on.field)
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
    made = [Plate("In its room", picture), *(Plate("Figures", sheet) for sheet in flow.sheets)]
    return printing(bound(made, result, units, on), path, result)


def check_sheet(
    result: Assessment,
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    size: str | None = None,
) -> Told:
    """Write the sheets for an inspector: what falls short, is open or meets, how each figure is
    known, lines to sign; formulas, draft and structure behind; front, section and plans.

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
    return printing(sheets(result, units, size, makers=CHECKED), path, result)
