"""A class on paper: for every student a sheet of their own with numbers and a faulty design, and
the key for the trainer.
"""

from __future__ import annotations

import io
import os
from collections.abc import Callable, Iterator, Sequence
from datetime import date

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.drawing.papers.class_key import _key
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.front_elevation import front
from fireplace_calc.drawing.views.hearth_plan import plan
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons import KINDS, Exercise, FaultFinding, exercises, figures, planted
from fireplace_calc.report.sentences import require_units

STANDING = {"letter": (215.9, 279.4), "A4": (210.0, 297.0)}
"""Papers of a class sheet. [mm]"""
USUAL = {FEET_INCHES: "letter", "millimetres": "A4"}
EDGE, FOOT_ROOM, HEAD_ROOM = 10.0, 13.0, 16.0
"""Margin all round, the strip at the foot, and the one for a name at the head. [mm]"""
UPPER = 0.6
"""Share of a drawing page that section and roof take. [-]"""
ANSWER_ROOM = 11.0
"""From one line to write on to the next: working goes above it. [mm]"""
CAUTION = (
    "Invented for an exercise. Not to be built from: local code, its official and licensed practice"
    " decide."
)
Told = Callable[[int, int, str], None]
"""Called with how many students are done, of how many, and the next one's seed."""


def paper(units: str, name: str | None = None) -> tuple[float, float]:
    """Width and height of a standing paper. [mm]

    Raises
    ------
    InputError
        When there is no such paper.
    """
    name = name or USUAL[require_units(units)]
    if name not in STANDING:
        raise InputError(
            f"Paper is {name!r}, but a class sheet comes on {' or '.join(STANDING)}.",
            "Paper",
            ", ".join(STANDING),
            name,
        )
    return STANDING[name]


def class_pages(
    seed: int | str,
    units: str = FEET_INCHES,
    key: bool = False,
    pack: str = DEFAULT_PACK,
    kinds: Sequence[str] = tuple(KINDS),
    faults: int = 1,
    size: str | None = None,
) -> list[Sheet]:
    """Every page of one student, or of the key to it.

    Parameters
    ----------
    seed : int or str
        Tells one student from the next.
    units : str
        ``feet-inches`` or ``millimetres``.
    key : bool
        The answers instead of the questions.
    pack : str
        Code the exercises are drawn for.
    kinds : sequence of str
        Of the numbers to work out.
    faults : int
        Planted in the design. [-]
    size : str or None
        ``letter`` or ``A4``; else by the units.

    Returns
    -------
    list of Sheet
    """
    wide, high = paper(units, size)
    tasks, fault_finding = (
        exercises(seed, pack, tuple(kinds), units=units),
        planted(seed, faults, pack),
    )
    cell = Cell(EDGE, EDGE + FOOT_ROOM, wide - EDGE, high - EDGE - (0.0 if key else HEAD_ROOM))
    if key:
        made = _key(tasks, fault_finding, units, wide, high, cell)
    else:
        made = [
            *_numbers(tasks, units, wide, high, cell),
            _drawing(fault_finding, units, wide, high, cell),
            *_search(fault_finding, units, wide, high, cell),
        ]
    for number, sheet in enumerate(made, 1):
        _margins(
            sheet,
            f"{'Key' if key else 'Exercise'} {seed}",
            f"{pack}, page {number} of {len(made)}, {date.today().isoformat()}, {made_by()}",
            named=not key,
        )
    return made


def class_sheet(
    seeds: Sequence[int | str],
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    key: bool = False,
    pack: str = DEFAULT_PACK,
    kinds: Sequence[str] = tuple(KINDS),
    faults: int = 1,
    size: str | None = None,
    told: Told | None = None,
) -> None:
    """Write the sheets of a class, or their key, as PDF; an earlier file is replaced only when the
    new one is whole.

    Parameters
    ----------
    seeds : sequence of int or str
        One a student.
    path : path
        Of the PDF.
    units : str
        ``feet-inches`` or ``millimetres``.
    key : bool
        The answers instead of the questions.
    pack : str
        Code the exercises are drawn for.
    kinds : sequence of str
        Of the numbers to work out.
    faults : int
        Planted in each design. [-]
    size : str or None
        ``letter`` or ``A4``; else by the units.
    told : callable or None
        Hears how far it is.

    Raises
    ------
    InputError
        When there is nobody to write for, or the file cannot be written.
    """
    for done in class_writing(seeds, path, units, key, pack, kinds, faults, size):
        if told:
            told(*done)


def class_writing(
    seeds: Sequence[int | str],
    path: str | os.PathLike[str],
    units: str = FEET_INCHES,
    key: bool = False,
    pack: str = DEFAULT_PACK,
    kinds: Sequence[str] = tuple(KINDS),
    faults: int = 1,
    size: str | None = None,
) -> Iterator[tuple[int, int, str]]:
    """The same student by student, so that whoever waits can watch, and stop by closing the
    generator: then no file is left.

    Yields
    ------
    int, int, str
        How many students are done, of how many, and the next one's seed.
    """
    if not seeds:
        raise InputError(
            "There is no seed, but every student needs one.", "Seeds", "at least one", seeds
        )
    held = io.BytesIO()
    book = PdfBook(
        held,
        f"Chimney rules, {'key' if key else 'class sheet'}",
        f"{pack}, seeds {', '.join(map(str, seeds))}",
    )
    for number, seed in enumerate(seeds):
        yield number, len(seeds), str(seed)
        for sheet in class_pages(seed, units, key, pack, kinds, faults, size):
            book.add(sheet)
    book.save()
    write_whole(path, held.getvalue())
    yield len(seeds), len(seeds), ""


def _margins(sheet: Sheet, title: str, told: str, named: bool) -> None:
    """Head with room for a name, foot with what it is and the caution."""
    left, right = EDGE, sheet.width - EDGE
    sheet.line([(left, EDGE + FOOT_ROOM - 2), (right, EDGE + FOOT_ROOM - 2)], "seen")
    sheet.text(left, EDGE + 6.2, title, size=SMALL, ha="left", bold=True)
    sheet.text(right, EDGE + 6.2, told, size=SMALL, ha="right")
    sheet.text(left, EDGE + 1.8, CAUTION, size=SMALL, ha="left")
    if named:
        y = sheet.height - EDGE - 8
        for word, x, end in (("Name", left, right - 62), ("Date", right - 56, right)):
            sheet.text(x, y, word, size=SMALL, ha="left")
            sheet.line([(x + 11, y - 0.8), (end, y - 0.8)], "fine")


def _answer(flow: TextFlow, prompt: str) -> None:
    """A question, and a line to write on with room for the working above it."""
    flow.room(2 * 4.1 + ANSWER_ROOM)
    flow.words(prompt, indent=3.0)
    flow.y -= ANSWER_ROOM - 3.0
    flow.sheet.line([(flow.cell.left + 6, flow.y), (flow.cell.right - 3, flow.y)], "fine")
    flow.y -= 2.0


def _numbers(
    tasks: Sequence[Exercise], units: str, wide: float, high: float, cell: Cell
) -> list[Sheet]:
    flow = TextFlow(wide, high, cell)
    for number, task in enumerate(tasks, 1):
        flow.room(34.0 + len(task.steps) * (ANSWER_ROOM + 6.0))
        flow.heading(f"{number}. {task.title}")
        flow.words(task.story)
        flow.words(
            "; ".join(f"{given.name}: {given.shown(units)}" for given in task.given) + ".",
            bold=True,
        )
        for letter, step in zip("abcdefgh", task.steps, strict=False):
            _answer(flow, f"{letter})  {step.prompt}")
    return flow.sheets


def _drawing(
    fault_finding: FaultFinding, units: str, wide: float, high: float, cell: Cell
) -> Sheet:
    """The four views of the faulty design, as large as they fit; not to scale."""
    sheet, made = Sheet(wide, high), build_geometry(fault_finding.design)
    top = cell.top - TITLE - 4
    sheet.text(cell.left + 3, top, "Design to check", size=TITLE, ha="left", bold=True)
    middle, split = (cell.left + cell.right) / 2, top - 2 - UPPER * (top - 2 - cell.bottom)
    cells: dict[Callable[..., View], Cell] = {
        section: Cell(cell.left, split, middle, top - 2),
        roof: Cell(middle, split, cell.right, top - 2),
        front: Cell(cell.left, cell.bottom, middle, split),
        plan: Cell(middle, cell.bottom, cell.right, split),
    }
    for view, room in cells.items():
        view(sheet, room, made, units)
    sheet.line([(cell.left, split), (cell.right, split)], "fine")
    sheet.line([(middle, cell.bottom), (middle, top - 2)], "fine")
    return sheet


def _search(
    fault_finding: FaultFinding, units: str, wide: float, high: float, cell: Cell
) -> list[Sheet]:
    """Every figure of the design, and room for what is wrong with it."""
    flow, many = TextFlow(wide, high, cell), len(fault_finding.faults)
    told = figures(fault_finding, units)
    half = -(-len(told) // 2)
    pairs = [
        (*told[k][1:], *(told[k + half][1:] if k + half < len(told) else ("", "")))
        for k in range(half)
    ]
    columns = (Column("Figure", 50), Column("", 46)) * 2
    flow.table(
        Table(
            f"Find {'the fault' if many == 1 else f'the {many} faults'}",
            columns,
            tuple(pairs),
            before=(
                f"This design breaks {'one rule' if many == 1 else f'{many} rules'} of"
                f" {fault_finding.pack} and no other. Every length is as built."
            ),
        )
    )
    for number in range(1, many + 1):
        flow.room(4 * (ANSWER_ROOM + 6))
        which = "" if many == 1 else f" {number}"
        for prompt in (
            f"Rule broken{which}",
            "What is there, and what is required",
            "Why the rule exists",
        ):
            _answer(flow, prompt)
    return flow.sheets
