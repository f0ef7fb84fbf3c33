"""Words and tables of the folds: how it stands, what the air does, brickwork and cuts."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.courses import odd_courses
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.report import draft_report
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.sentences import (
    asked,
    compared,
    judged_tally,
    sign,
)
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY

FOUND = (
    Column("", 5),
    Column("Verdict", 17),
    Column("Check", 30),
    Column("Provided", 13),
    Column("Required", 13),
    Column("To spare", 12),
    Column("Clause", 20),
    Column("Why, and what was noted", 54),
)

FACES = (
    Column("Face", 16),
    Column("Bond", 18),
    Column("How many", 9, "right"),
    Column("Whole", 9, "right"),
    Column("Cut", 9, "right"),
    Column("Under a quarter", 11, "right"),
    Column("Start moved by", 14, "right"),
    Column("Note", 60),
)
OPINIONS = tuple(map(Column, draft_report.OPINIONS, (30, 18, 16, 22, 80)))
LIGHTINGS = tuple(map(Column, draft_report.LIGHTINGS, (44, 36, 18, 18, 18, 18, 18)))


def found_rows(findings: tuple[Finding, ...], units: str) -> tuple[tuple[str, ...], ...]:
    """Findings as rows under ``FOUND``; what does not apply is left out."""

    def row(f: Finding) -> tuple[str, ...]:
        provided, _, margin = compared(f, units)
        said = " ".join(text for text in (f.note, f.why, to_enter(f)) if text)
        return (
            sign(f),
            f.said,
            f"{f.title} ({f.key})",
            provided,
            asked(f, units),
            margin,
            f"{f.clause}, {f.edition}",
            said,
        )

    return tuple(row(f) for f in findings if f.verdict != DOES_NOT_APPLY)


def airing(result: Assessment, units: str) -> Iterator[str | Table]:
    """What published rules make of the flue, and the first hour of the first fire."""
    yield Table(
        "Second opinions on the flue, sizing mode",
        OPINIONS,
        tuple(draft_report.opinion_rows(result, units)),
        before=draft_report.OPINION,
    )
    yield Table(
        "The first hour of the first fire, operating mode",
        LIGHTINGS,
        tuple(draft_report.first_hour_rows(result, units)),
        before=draft_report.FIRST_FIRE,
    )


def standing(result: Assessment, units: str) -> Iterator[str | Table]:
    """How it stands, and when to send for an engineer."""
    stands = result.structure
    yield Table(
        "Will it stand? Engineering judgement, not code",
        FOUND,
        found_rows(stands.findings, units),
        before=" ".join((f"{judged_tally(stands.findings)}.", *stands.remarks)),
    )
    yield from (f"Call an engineer. {reason}" for reason in stands.engineer)


def cutting(result: Assessment, units: str) -> Iterator[str | Table]:
    """Faces of the firebox, cuts by shape, courses that come out even, block under the hearth."""
    work = lay_brickwork(result.geometry)
    if not work.layouts:
        yield "Nothing to lay brick by brick: the firebox is set in refractory sections."
    faces = tuple(
        (
            layout.face.name.capitalize(),
            layout.bond,
            str(layout.face.alike),
            str(layout.whole),
            str(layout.cut),
            str(len(layout.slivers)),
            show(layout.shifted, "length", units),
            layout.note,
        )
        for layout in work.layouts
    )
    if faces:
        yield Table("Faces of the firebox", FACES, faces)
    unit = "mm" if units != FEET_INCHES else "in"
    size = 1.0 if units != FEET_INCHES else MM / INCH
    rows = tuple(
        (
            str(count),
            str(len(shape)),
            ", ".join(f"{side * size:.{0 if unit == 'mm' else 2}f}" for side, _ in shape),
            ", ".join(str(angle) for _, angle in shape),
        )
        for shape, count in work.cuts.items()
    )
    if rows:
        yield Table(
            "Cuts by shape",
            (
                Column("How many", 10, "right"),
                Column("Corners", 9, "right"),
                Column(f"Sides in turn [{unit}]", 60),
                Column("Angle after each [deg]", 50),
            ),
            rows,
            before=(
                "Every face as laid, sides counted twice. Cut wet, with eyes and lungs protected."
            ),
        )
    if said := odd_courses(result.geometry, units):
        yield "What does not come out in whole courses: " + " ".join(said)
    if work.lining_courses:
        fits = "" if work.lining_courses.fits else ", wider than a firebox allows"
        yield (
            f"Lining to the underside of the smoke shelf: {work.lining_courses.courses} courses"
            " come out even with joints of"
            f" {show(work.lining_courses.joint, 'length', units)}{fits}."
        )
    for name, laid in (
        ("Block under the hearth slab", work.base_block),
        ("Block under the hearth extension", work.extension_block),
    ):
        if laid:
            coursing = laid.coursing
            sawn = (
                f", one course sawn to {show(coursing.sawn, 'length', units)}"
                if coursing.sawn
                else ""
            )
            yield (
                f"{name}: {coursing.whole} courses of block, {coursing.half} half-high,"
                f" {coursing.packing} of packing{sawn}; first bed"
                f" {show(coursing.first_bed, 'length', units)}, others"
                f" {show(coursing.bed, 'length', units)}; "
                + (
                    f"level to {'1/16 in' if units == FEET_INCHES else '2 mm'}."
                    if coursing.level
                    else f"out by {show(abs(coursing.miss), 'length', units)}."
                )
                + "".join(
                    f" {'Odd' if k == 0 else 'Even'} courses: {course.whole} whole,"
                    f" {course.cut} cut."
                    for k, course in enumerate(laid.courses[:2])
                )
            )
