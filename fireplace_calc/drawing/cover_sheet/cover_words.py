"""What the cover says, list by list."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.plates.bands import Together, row, words
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall
from fireplace_calc.report.for_client.ten_lines import to_be_built
from fireplace_calc.report.for_client.three_sentences import client_cautions
from fireplace_calc.report.sentences import CAUTION, read_in_part
from fireplace_calc.rules.comparing import NOT_CHECKED
from fireplace_calc.takeoff.cost import Price

PARTS = (Column("Part", 34), Column("What it is", 140))
SHEETS = (Column("Sheet", 13), Column("Name", 50), Column("Figures", 22))
INSPECTOR, BEHIND = "Inspector's page", "Formulas, draft, structure"
"""Sheets on which everything that was found, and what was assumed, stands in full."""


def by_whom(result: Assessment) -> str:
    """For whom, by whom and checked by whom, as far as somebody has said."""
    job = result.design.job
    told = (("For", job.client), ("drawn by", job.drawn), ("checked by", job.checked))
    said = ", ".join(f"{word} {name}" for word, name in told if name)
    return said[:1].upper() + said[1:]


def built(
    result: Assessment, units: str, wide: float, prices: Mapping[str, Price] | None
) -> list[Together]:
    """What is to be built, ten rows. [mm]"""
    return [
        block
        for part in to_be_built(result, units, prices)
        for block in row(PARTS, part, wide, weight="fine")
    ]


def sheet_of(name: str, others: Sequence[Plate], before: int) -> str:
    """Number of the first sheet of a name; empty where it is not in the set."""
    return next((str(n) for n, plate in enumerate(others, before) if plate.name == name), "")


def found_lists(
    result: Assessment, units: str, others: Sequence[Plate], before: int
) -> Iterator[tuple[str, list[str], str, bool]]:
    """Heading, entries and sheet of what falls short, is not checked and was assumed, and whether
    each entry has a line of its own.
    """
    page, back = (sheet_of(name, others, before) for name in (INSPECTOR, BEHIND))
    both = " and ".join(filter(None, (page, back)))
    short = shortfall(result)
    yield (
        f"FALLS SHORT: {short.headline}",
        [short_words(f, units) for f in short.all] or ["Nothing that was checked falls short"],
        both,
        True,
    )
    judged = (*result.judgement, *result.structure.findings)
    open_ = [f for f in (*result.findings, *judged) if f.verdict == NOT_CHECKED]
    yield (
        f"NOT CHECKED: {short.open} of the code, {len(open_) - short.open} of draft and structure;"
        " somebody has to look",
        [f.title for f in open_] or ["Nothing is left open"],
        both,
        False,
    )
    taken = assumptions(result, units)
    passed = sum(result.assumed.values())
    yield (
        f"ASSUMED: {len(taken)} inputs that nobody has entered; {passed} checks pass or do not"
        " apply on them",
        [f"{one.label} {one.value}" for one in taken] or ["Nothing"],
        back,
        False,
    )


def first_of(
    lines: Sequence[str], most: int, wide: float, sheet: str, each: bool
) -> list[Together]:
    """As many as are asked for, each on a line or one after the other, and how many more there are
    and where. [mm]
    """
    more = len(lines) - most
    where = f", sheet{'s' * (' and ' in sheet)} {sheet}" if sheet else ""
    said = [line[:1].upper() + line[1:] for line in lines[:most]]
    said += [f"and {more} more{where}"] if more > 0 else []
    if not each:
        return words(f"{'; '.join(said)}.", wide)
    return [block for line in said for block in words(line, wide)]


def _place(mark: str) -> tuple[bool, int, str]:
    """Numbers before letters, and each in its order."""
    return (True, 0, mark) if mark.isalpha() else (False, int(mark), "")


def listed_sheets(others: Sequence[Plate], before: int, wide: float) -> list[Together]:
    """Numbers, names and the marks of the figures; sheets of one name together. [mm]"""
    runs: list[tuple[list[int], str, list[str]]] = []
    for n, plate in enumerate(others, before):
        marks = [marked(key)[0] for key in plate.figures]
        if runs and runs[-1][1] == plate.name:
            runs[-1][0].append(n)
            runs[-1][2].extend(marks)
        else:
            runs.append(([n], plate.name, marks))
    made = []
    for numbers, name, marks in runs:
        between = " to " if len(numbers) > 2 else ", "
        span = between.join(map(str, dict.fromkeys((numbers[0], numbers[-1]))))
        made += row(
            SHEETS, (span, name, ", ".join(sorted(set(marks), key=_place))), wide, weight=""
        )
    return made


def cautions(units: str, pack: str, wide: float) -> list[Together]:
    """What everybody who builds it or lives with it should know. [mm]"""
    living = client_cautions(units, pack)[:-1]  # the last is for whoever only talks it over
    return [block for said in (CAUTION, *living) for block in words(said, wide)]


def reach(result: Assessment, wide: float) -> list[Together]:
    """How far the book was read. [mm]"""
    said = f"Checked against {result.pack}. {read_in_part(result.pack)}".strip()
    return words(said, wide)
