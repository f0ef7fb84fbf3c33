"""An assessment as sentences and tables, in the reader's units. Tables are pandas frames, made only
when asked for.
"""

from __future__ import annotations

import csv
import io
import os
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import (
    CUYD,
    FEET_INCHES,
    MILLIMETRES,
    SQFT,
    SYSTEMS,
    InputError,
    from_unit,
)
from fireplace_calc.editing.designfile import write_whole
from fireplace_calc.report.wide_tables import whole
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.takeoff import Row

if TYPE_CHECKING:
    import pandas

    from fireplace_calc.report.books import Answer

CAUTION = (
    "For planning, by people who know masonry. A fireplace can burn a house down, poison its people"
    " or fall: local code, the building department and licensed practice decide, and what is not"
    " checked is not safe until somebody looks."
)
SIGNS = {FALLS_SHORT: "✗", NOT_CHECKED: "?", MEETS: "✓", DOES_NOT_APPLY: "–"}
PLURALS = {
    FALLS_SHORT: "fall short",
    NOT_CHECKED: "not checked",
    MEETS: "meet",
    DOES_NOT_APPLY: "do not apply",
}
TAKEOFF_COLUMNS = (
    "item",
    "material",
    "net",
    "order",
    "unit",
    "weight_kg",
    "piece_kg",
    "volume_m3",
    "note",
)
FINDING_COLUMNS = (
    "key",
    "clause",
    "title",
    "verdict",
    "provided",
    "required",
    "margin",
    "unit",
    "why",
    "note",
    "edition",
    "confidence",
    "source",
)
MADE_BY = "made_by"
"""Last column of every table of figures: name and version of the program."""
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


def quantity(amount: float, row: Row, units: str = FEET_INCHES) -> str:
    """A net or ordered quantity with its unit; poured work and areas in cubic and square metres for
    metric readers.
    """
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
    return f"{number} {row.unit}" + ("" if amount == 1 or row.unit == "brick" else "s")


def compared(finding: Finding, units: str = FEET_INCHES) -> tuple[str, str, str]:
    """What is provided, what is asked and what is to spare, in the reader's units; words stay
    words.

    Where rounding would hide the difference, the figures stand in the book's own unit with three
    more decimals.
    """
    kind, figures = KINDS.get(finding.unit), (finding.provided, finding.required, finding.margin)

    def shown(value: Any) -> str:
        if value is None or isinstance(value, str):
            return value or ""
        if kind:
            return show(from_unit(value, finding.unit), kind, units)
        number = f"{value:.4g}" if abs(value) < 1e3 else grouped(value)
        return number if finding.unit in ("count", "-") else f"{number} {finding.unit}"

    texts = tuple(shown(value) for value in figures)
    if kind and finding.margin and texts[0] == texts[1]:
        return tuple(f"{value:.3f} {finding.unit}" for value in figures)
    return texts


def asked(finding: Finding, units: str = FEET_INCHES) -> str:
    """What is asked, and which way it binds where the margin tells."""
    required, values = (
        compared(finding, units)[1],
        (finding.provided, finding.required, finding.margin),
    )
    if (
        not required
        or not finding.margin
        or not all(isinstance(value, (int, float)) for value in values)
    ):
        return required
    return f"at {'least' if (values[0] - values[1]) * values[2] > 0 else 'most'} {required}"


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
                SIGNS[f.verdict],
                f.verdict,
                f.title,
                *compared(f, units),
                f.clause,
                f.edition,
                f.confidence,
                f.why,
                f.note,
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
                SIGNS[f.verdict],
                f.verdict,
                f.title,
                *compared(f, units),
                f.clause,
                f.confidence,
                f.source,
                f.why,
                f.note,
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
            else f" {required} asked"
            if required
            else ""
        )
        said.append(f"{SIGNS[f.verdict]} {f.verdict}{figures} ({f.key})")
    return "; ".join(said) or "does not apply"


def side_by_side_table(assessment: Assessment, units: str = FEET_INCHES) -> pandas.DataFrame:
    """The same design under every book, the same question in one row."""
    from fireplace_calc.report.books import SIDE_BY_SIDE, side_by_side

    require_units(units)
    return whole(
        (
            (q.text, *(answer(a, units) for a in q.answers), q.why)
            for q in side_by_side(assessment.design)
        ),
        ("Question", *SIDE_BY_SIDE.values(), "Why they differ"),
    )


def coverage_table() -> pandas.DataFrame:
    """What every pack covers: computed, asked of the reader, not covered, known from memory only."""
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


def weight(kg: float, units: str = FEET_INCHES) -> str:
    """A weight in the reader's units, or that there is none to give."""
    return show(kg, "mass", units) if kg else "not counted"


def tally(assessment: Assessment) -> str:
    """How many checks came out how, worst first."""
    found = (
        (assessment.counts.get(verdict, 0), verdict, words) for verdict, words in PLURALS.items()
    )
    return ", ".join(
        f"{number} {verdict if number == 1 else words}" for number, verdict, words in found
    )


def sentence(finding: Finding, units: str = FEET_INCHES) -> str:
    """One finding in words: what is there, what is asked, how much is lacking, where it is written,
    and why.
    """
    provided, required, margin = compared(finding, units)
    said = [f"{finding.title}:"]
    if finding.provided is not None and finding.verdict != DOES_NOT_APPLY:
        lacking = ""
        if finding.verdict == FALLS_SHORT and finding.margin:
            lacking = (
                f", {margin.removeprefix('-')} too"
                f" {'little' if finding.required > finding.provided else 'much'}"
            )
        said.append(f"{provided} provided, {required} required{lacking}.")
    said += [text[:1].upper() + text[1:] for text in (finding.note, finding.why) if text]
    return " ".join((*said, f"({finding.key}, {finding.clause}, {finding.edition})"))


def _summary(assessment: Assessment, units: str) -> Iterator[str]:
    from fireplace_calc.report import draft_report

    d, f = assessment.design, assessment.geometry.frame

    def long(value: float) -> str:
        return show(value, "length", units)

    def wide(value: float) -> str:
        return show(value, "area", units)

    yield d.name
    yield from ([d.note] if d.note else [])
    yield from (f"Drawn otherwise than asked: {said}" for said in f.adjusted)
    flue = (
        f"{d.flue.shape} {f.bore.label}, {d.flue.sections} sections of"
        f" {long(d.flue.section_height)}"
    )
    yield ""
    yield (
        f"Opening      {long(d.opening.width)} wide, {long(d.opening.height)} high,"
        f" {wide(f.opening_area)}"
    )
    yield (
        f"Firebox      {long(f.depth)} deep, back {long(f.back_width)} wide, throat"
        f" {wide(f.throat_area)}"
    )
    yield (
        f"Flue         {flue}, inside {wide(f.bore.area)}, "
        f"1/{f.opening_area / f.bore.area:.1f} of the opening"
    )
    yield (
        f"Chimney top  {long(f.crown_top)} above the floor, {long(f.crown_top - f.hearth)} above"
        " the hearth"
    )
    yield f"Weight       {show(assessment.weight, 'mass', units)} as it stands, footing counted in"
    yield ""
    yield f"Checks against {assessment.pack}: {tally(assessment)}"
    for finding in assessment.findings:
        if finding.verdict in (FALLS_SHORT, NOT_CHECKED):
            yield f"{SIGNS[finding.verdict]} {finding.verdict}: {sentence(finding, units)}"
    yield ""
    yield (
        f"Draft. {draft_report.LABEL} {draft_report.sized(assessment, units)}"
        f" {draft_report.likely(assessment, units)}"
    )
    for finding in assessment.judgement:
        if finding.verdict in (FALLS_SHORT, NOT_CHECKED):
            yield f"{SIGNS[finding.verdict]} {finding.verdict}: {sentence(finding, units)}"
    yield ""
    yield f"{'Takeoff':26}{'net':>16}{'to order':>18}{'weight':>13}{'one piece':>12}"
    for r in assessment.takeoff:
        piece = show(r.piece_kg, "mass", units) if r.piece_kg and r.unit != "brick" else ""
        yield (
            f"{r.item:26}{quantity(r.net, r, units):>16}{quantity(r.order, r, units):>18}"
            f"{weight(r.weight_kg, units):>13}{piece:>12}"
        ).rstrip()
    yield ""
    yield CAUTION


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


def harmless(value: Any) -> Any:
    """Text that a spreadsheet would take for a formula gets a quote in front."""
    return (
        "'" + value if isinstance(value, str) and value.startswith(("=", "+", "-", "@")) else value
    )


def _csv(columns: Sequence[str], rows: Iterable[Sequence[Any]]) -> bytes:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([*columns, MADE_BY])
    writer.writerows([*map(harmless, row), made_by()] for row in rows)
    return text.getvalue().encode()


def write_csv(assessment: Assessment, folder: str | os.PathLike[str]) -> tuple[Path, Path, Path]:
    """Write ``takeoff.csv``, ``findings.csv`` and ``draft.csv``: bare figures, their unit in the
    heading or in the row.

    Parameters
    ----------
    assessment : Assessment
        What to write.
    folder : str or path
        A folder that is there.

    Returns
    -------
    tuple of path
        All three files.
    """
    order, checks, air = (
        Path(folder) / name for name in ("takeoff.csv", "findings.csv", "draft.csv")
    )
    write_whole(
        order,
        _csv(
            TAKEOFF_COLUMNS,
            (
                (
                    r.item,
                    r.material,
                    r.net,
                    r.order,
                    r.unit,
                    r.weight_kg,
                    r.piece_kg,
                    r.volume,
                    r.note,
                )
                for r in assessment.takeoff
            ),
        ),
    )
    for path, findings in ((checks, assessment.findings), (air, assessment.judgement)):
        write_whole(
            path,
            _csv(
                FINDING_COLUMNS, ([getattr(f, name) for name in FINDING_COLUMNS] for f in findings)
            ),
        )
    return order, checks, air
