"""An assessment as tables, in the reader's units: pandas frames, made only when asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.sentences import answer, compared, quantity, require_units, sign, weight
from fireplace_calc.report.wide_tables import whole

if TYPE_CHECKING:
    import pandas


def findings_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """Every finding, worst first, its verdict as a sign and a word."""
    require_units(units)
    columns = (
        "",
        "Verdict",
        "Check",
        "Provided",
        "Required",
        "To spare",
        "Clause",
        "Edition",
        "Confidence",
        "Why",
        "Note",
        "Key",
    )
    return whole(
        (
            (
                sign(f),
                f.said,
                f.title,
                *compared(f, units),
                f.clause,
                f.edition,
                f.confidence,
                f.why,
                " ".join(filter(None, (f.note, to_enter(f)))),
                f.key,
            )
            for f in assessment.findings
        ),
        columns,
    )


def takeoff_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """What to order, in the order it is needed on site."""
    require_units(units)
    columns = ("Item", "Material", "Net", "To order", "Weight", "One piece", "How counted")
    return whole(
        (
            (
                r.item,
                r.material,
                quantity(r.net, r, units),
                quantity(r.order, r, units),
                weight(r.weight_kg, units),
                weight(r.piece_kg, units) if r.piece_kg else "",
                r.note,
            )
            for r in assessment.takeoff
        ),
        columns,
    )


def draft_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """What the air does on each evening, operating mode. Engineering judgement, not code."""
    from fireplace_calc.report import draft_report

    require_units(units)
    return whole(draft_report.case_rows(assessment, units), draft_report.COLUMNS)


def judgement_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """Every finding on the draft, worst first. Engineering judgement, not code."""
    require_units(units)
    return whole(
        (
            (
                sign(f),
                f.said,
                f.title,
                *compared(f, units),
                f.clause,
                f.confidence,
                f.source,
                f.why,
                " ".join(filter(None, (f.note, to_enter(f)))),
                f.key,
            )
            for f in assessment.judgement
        ),
        (
            "",
            "Verdict",
            "Question",
            "Found",
            "Wanted",
            "To spare",
            "Mode",
            "Confidence",
            "Based on",
            "Why",
            "Note",
            "Key",
        ),
    )


def side_by_side_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """The same design under several books, the assessment's own among them, the same question in
    one row.
    """
    from fireplace_calc.report.books import books_beside, side_by_side

    require_units(units)
    chosen = books_beside(assessment.pack)
    return whole(
        (
            (q.text, *(answer(a, units) for a in q.answers), q.why)
            for q in side_by_side(assessment.design, chosen)
        ),
        ("Question", *chosen.values(), "Why they differ"),
    )


def coverage_table() -> pandas.DataFrame:
    """What every pack covers: computed, asked of the reader, not covered, from memory only."""
    from fireplace_calc.report.books import coverage
    from fireplace_calc.rules import PACKS

    found = (coverage(pack) for pack in PACKS.values())
    return whole(
        (
            (c.pack, c.computed, c.asked, len(c.uncovered), c.memory, ", ".join(c.uncovered))
            for c in found
        ),
        (
            "Pack",
            "Computed",
            "Asked of the reader",
            "Not covered",
            "From memory",
            "Which are not covered",
        ),
    )


def agreement_table() -> pandas.DataFrame:
    """Canada's round-flue table cell by cell against sizing mode, at both published inlet
    coefficients; diameters in mm.
    """
    from fireplace_calc.report.canada_agreement import compare_with_canada

    tight, wide = compare_with_canada(2.5), compare_with_canada(1.0)
    rows = (
        (
            f"{a:.3f} m²",
            f"{h:.2f} m",
            f"{1000 * low:.0f} to {1000 * high:.0f}",
            f"{1000 * d1:.0f}{'' if in1 else ' (outside)'}",
            f"{100 * m1:+.1f} %",
            f"{1000 * d2:.0f}{'' if in2 else ' (outside)'}",
            f"{100 * m2:+.1f} %",
        )
        for a, h, low, high, d1, in1, m1, d2, in2, m2 in zip(
            wide.opening,
            wide.height,
            wide.least,
            wide.most,
            wide.ours,
            wide.inside,
            wide.misfit,
            tight.ours,
            tight.inside,
            tight.misfit,
            strict=True,
        )
    )
    return whole(
        rows,
        (
            "Opening",
            "Height",
            "Table",
            "Inlet 1.0",
            "Off the middle",
            "Inlet 2.5",
            "Off its middle",
        ),
    )


def levels_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """Every level from the room floor, top of the list the highest, as on a drawing."""
    require_units(units)
    named = (
        (name.capitalize(), show(level, "length", units))
        for name, level in reversed(assessment.levels.items())
    )
    return whole(named, ("Level", "Over room floor"))


def parts_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """Every solid with its material and volume, from the footing up."""
    require_units(units)
    return whole(
        (
            (p.name.capitalize(), p.material, show(p.volume, "volume", units))
            for p in assessment.parts
        ),
        ("Part", "Material", "Volume"),
    )
