"""The inspector's page: what falls short, what nobody has checked, what meets, by section of the
code, and hold points to sign.
"""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.checks.found_rows import (
    LEVELS,
    ON_SMALL,
    SHORT,
    Fullness,
    head,
    listed,
    short_clause,
)
from fireplace_calc.drawing.checks.sections import by_section
from fireplace_calc.drawing.plates.bands import OVER, Bands, Together, heading, row, words
from fireplace_calc.drawing.plates.marks import LARGE, MIDDLE, SMALL
from fireplace_calc.drawing.plates.sizes import BLOCK_WIDE, Paper
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.report.sentences import judged_tally, read_in_part, tally
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.tracing.known import MEANING, known_facts

HOLD_POINTS = (
    "Ground, footing and bars",
    "Base, level and square",
    "Firebox, lining and joints",
    "Lintel, throat and damper",
    "Smoke chamber, parged",
    "Air space and fireblock",
    "Flue, joints wiped, plumb",
    "Over the roof, cap, flashing",
    "Smoke test, fans on and off",
    "Sizes as built",
)
"""Where the work stops until somebody has looked."""
SIGNED = (Column("", 5.5), Column("Inspected on site", 49), Column("By", 24), Column("Date", 18))
OPEN = "NOT CHECKED, somebody has to look"
SMALL_PAPER = 400.0
"""Paper under this width takes one column of findings. [mm]"""
HEADING = 6.0
"""Room for the heading over what meets. [mm]"""
SIGN_ROW = 5.9
"""Height of a line to sign on. [mm]"""


def front(result: Assessment, units: str, paper: Paper) -> list[Sheet]:
    """The page, as full as one sheet holds it; more sheets where the least there is to say needs
    them.

    Parameters
    ----------
    result : Assessment
    units : str
    paper : Paper

    Returns
    -------
    list of Sheet
    """
    known = known_facts(result.facts, PACKS[result.pack], result.findings)
    if paper.width < SMALL_PAPER:
        return _written(result, units, paper, known, ON_SMALL, 1)[0]
    made: list[Sheet] = []
    for say in LEVELS:
        sheets, open_ends = _written(result, units, paper, known, say, 2)
        if len(sheets) == 1 and open_ends >= paper.height / 2 + HEADING:
            return sheets
        if not made or len(sheets) < len(made):
            made = sheets
    return made


def _written(
    result: Assessment,
    units: str,
    paper: Paper,
    known: dict[str, str],
    say: Fullness,
    count: int,
) -> tuple[list[Sheet], float]:
    """Sheets, and where on the first what is short or open ends. [mm]"""
    bands = Bands(paper)
    found = {
        verdict: [f for f in result.findings if f.verdict == verdict]
        for verdict in (FALLS_SHORT, NOT_CHECKED, MEETS)
    }
    bands.band(_top(result, bands.wide, say.keys))
    wide = bands.column(count)
    short = listed("FALLS SHORT", found[FALLS_SHORT], known, units, wide, say)
    if say.columns:
        short += listed(OPEN, found[NOT_CHECKED], known, units, wide, say)
    bands.band(short, count, head(wide))
    if not say.columns:
        narrow = bands.column(3)
        open_ = listed(f"{OPEN}; not known", found[NOT_CHECKED], known, units, narrow, say, SHORT)
        bands.band(open_, 3, head(narrow, SHORT))
    ends = bands.y if len(bands.sheets) == 1 else 0.0
    met = [
        block
        for name, under in by_section(found[MEETS]).items()
        for block in listed(f"MEETS: {name}", under, known, units, wide, say)[not say.sections :]
    ]
    if not say.sections:
        met.insert(0, heading("MEETS, by section of the code", wide, over=1.0))
    bands.band(met, count, head(wide) if not (short and say.columns) else ())
    _to_sign(bands)
    return bands.sheets, ends


def _top(result: Assessment, wide: float, full: bool) -> list[Together]:
    """What it was checked against, how it came out, and what the words of the last column mean."""
    title, counted = f"Checked against {result.pack}", f"{tally(result)}."
    beside = width(title, LARGE, True) + 5.0
    size = next((z for z in (MIDDLE, SMALL) if beside + width(counted, z, True) <= wide), None)
    made = words(title, wide, LARGE, bold=True)
    if size is None:
        made += words(counted, wide, bold=True)
    else:

        def paint(sheet: Sheet, left: float, top: float) -> None:
            sheet.text(left, top - OVER - LARGE, title, LARGE, "left", bold=True)
            sheet.text(left + beside, top - OVER - LARGE, counted, size, "left", bold=True)

        made = [Together(made[0].high, paint)]
    judged = (*result.judgement, *result.structure.findings)
    place = PACKS[result.pack].edition.partition(" ")[2]
    amended = any(short_clause(f).endswith("*") for f in result.findings)
    star = f"A star: as {place} has it." if amended and not full else ""
    means = "; ".join(f"{word}, {said}" for word, said in MEANING.items())
    said = (
        f"How a figure is known: {means}.",
        star,
        "What does not apply is left out." if result.counts.get(DOES_NOT_APPLY) else "",
        f"{'' if full else 'Keys of the checks and '}what is to spare where one meets:".capitalize()
        + " in the spreadsheet, under Findings.",
        read_in_part(result.pack),
        f"Draft and structure, engineering judgement, next sheet: {judged_tally(judged)}.",
    )
    return made + words(" ".join(filter(None, said)), wide)


def _to_sign(bands: Bands) -> None:
    """Lines to sign on: beside the title block where there is room, else in a band."""
    strip, paper = bands.paper.strip, bands.paper
    if strip.right - strip.left < BLOCK_WIDE:
        wide = bands.column(2)
        bands.band(hold_points(wide, HOLD_POINTS), 2, _signing(wide))
        return
    wide, half = (strip.right - strip.left - 6.0) / 2, len(HOLD_POINTS) // 2
    for n, points in enumerate((HOLD_POINTS[:half], HOLD_POINTS[half:])):
        y = paper.block.top + 1.5
        for block in (*_signing(wide), *hold_points(wide, points)):
            block.paint(bands.sheets[-1], strip.left + n * (wide + 6.0), y)
            y -= block.high


def _signing(wide: float) -> list[Together]:
    names = [column.heading for column in SIGNED]
    return row(SIGNED, names, wide, bold=True, weight="seen", leads=True)


def hold_points(wide: float, points: tuple[str, ...]) -> list[Together]:
    """A line to sign on for each. [mm]"""
    made = []
    for point in points:
        (block,) = row(SIGNED, ("", point, "", ""), wide, weight="", box=True)

        def paint(sheet: Sheet, left: float, top: float, block: Together = block) -> None:
            block.paint(sheet, left, top - (SIGN_ROW - block.high) + 1.0)
            low = top - SIGN_ROW
            sheet.line([(left, low), (left + wide, low)], "fine")

        made.append(Together(SIGN_ROW, paint))
    return made
