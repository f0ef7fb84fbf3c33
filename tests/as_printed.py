"""Papers, charts and files of pictures in a few figures each: what is drawn into them, and how a file holds it.

Whoever changes one on purpose looks at it (light, dark, print, both unit systems) and writes the figures anew:
``.venv/bin/python tests/as_printed.py``; the change stands in ``tests/pins/as_printed.csv`` then.
"""

import json
import sys
from dataclasses import replace
from functools import cache, partial
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from as_drawn import (
    BY_LOT,
    FIGURES,
    ON_PAPER,
    assessed,
    client_leaves,
    geometry,
    of_lesson,
    of_sheets,
    standing,
    undated,
)
from held_figures import held, hold
from openpyxl import load_workbook
from PIL import Image
from pypdf import PdfReader
from pypdf.generic import ContentStream
from school import school_of
from test_survey import BRICK, filled

from fireplace_calc import assess, change
from fireplace_calc.base.resources import lesson_keys
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.classroom.class_book import ClassPapers
from fireplace_calc.drawing.classroom.ruled_grid import given_grid
from fireplace_calc.drawing.client_pages.painted import as_pdf, as_png
from fireplace_calc.drawing.composed.compose import CELLS, single
from fireplace_calc.drawing.page.page_renderer import PageCanvas
from fireplace_calc.drawing.page.saved_picture import picture as saved
from fireplace_calc.drawing.page.sheet_artist import sheet_figure
from fireplace_calc.drawing.papers.as_built_record import print_record
from fireplace_calc.drawing.papers.one_sheet import hand_over
from fireplace_calc.drawing.papers.setting_cards import print_cards
from fireplace_calc.drawing.plates.sizes import paper
from fireplace_calc.drawing.plates.whole_set import _maker
from fireplace_calc.drawing.room.room_view import room
from fireplace_calc.drawing.sheets.canvas import Picture
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES
from fireplace_calc.drawing.survey.as_measured import print_measured
from fireplace_calc.drawing.survey.to_take_along import print_survey
from fireplace_calc.drawing.views.draft_charts import air_sheet
from fireplace_calc.exports.class_table import write_results
from fireplace_calc.exports.picture_files import _charts
from fireplace_calc.exports.spreadsheet import write_spreadsheet
from fireplace_calc.lessons.answers.given_figures import GivenTable
from fireplace_calc.lessons.classroom.class_results import result_rows
from fireplace_calc.lessons.classroom.desk import Desk
from fireplace_calc.lessons.classroom.gathering_work import gathered
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.lessons.fault_hunt.search_of_class import SEARCH
from fireplace_calc.panels.picture.draft_pictures import DraftPictures
from fireplace_calc.proportion import find_guides
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.survey.from_survey import surveyed
from fireplace_calc.takeoff.yard.price_list import prices

BOTH = (FEET_INCHES, MILLIMETRES)
PAPERS = ("letter", "A4", "11x17")
BY_TURNS = ("of a set", "laid", "by lot 23")
"""Designs that papers are drawn of."""
FOUND = ("Findings", "Draft", "Structure")
"""Pages of a workbook that say what every rule found: held elsewhere."""
CHART_CELLS = (Cell(0.0, 0.0, 180.0, 150.0), Cell(0.0, 0.0, 96.0, 110.0))
"""Of a chart, with room for every word and without. [mm]"""


def of_charts(make, units):
    """The draft in a wide cell and a narrow one."""
    made, known = make(), DraftPictures()
    known.whole(made, units)
    air = known.air(made.geometry, made.draft)
    for cell in CHART_CELLS:
        for name in CELLS:
            yield air_sheet(name, cell, air, units)


def of_plates(maker, name, size):
    """Sheets of one kind on a paper that is not the usual one."""
    units = FEET_INCHES if size in ("letter", "11x17") else MILLIMETRES
    for plate in _maker(maker).plates(assessed(name), units, paper(units, size), None):
        yield plate.sheet


def of_searches(units, size):
    papers = ClassPapers(school_of((SEARCH,), 2, units, ("Zoë",)), size)
    for name in list(papers.school.places)[-1:]:
        yield from papers.quiz(name)


def of_grids():
    """A table that an exercise gives, invented."""
    rows = tuple((f"{n} in of it", tuple(f"{n * k / 8:.2f}" for k in range(5))) for n in range(4))
    for unit in ("", "lb"):
        names = ("1", "less", "a name of several words", "x", "unconditionally")
        table = GivenTable(unit, "Height, by width", names, rows)
        for wide in (70.0, 120.0):
            yield given_grid(table, wide)


def of_guides(name, units):
    """A room with one proportion guide, with some and with all, in a wide cell and a narrow one."""
    guides = find_guides(geometry(name), units)
    for cell in (Cell(5.0, 5.0, 295.0, 190.0), Cell(2.0, 2.0, 150.0, 120.0)):
        for shown in (guides[:1], guides[1:4], guides):
            sheet = Sheet(300.0, 200.0)
            room(sheet, cell, geometry(name), units, guides=shown)
            yield sheet


def added(*writers):
    """Sheets that somebody who writes a book puts into it."""
    sheets, before = [], PdfBook.add
    PdfBook.add = lambda _, sheet: sheets.append(sheet)
    PdfBook.save, saved = lambda _: None, PdfBook.save
    try:
        with TemporaryDirectory() as folder:
            for write in writers:
                wrote = write(path=Path(folder) / "one.pdf")
                if not isinstance(wrote, int):
                    list(wrote)
    finally:
        PdfBook.add, PdfBook.save = before, saved
    return sheets


def of_papers(units, size):
    name = "laid" if units == FEET_INCHES else "barn_outside"
    result, others = assessed(name), [assessed("plain"), assessed("terrace_metric")]
    guides = [one.name for one in find_guides(result.geometry, units)][:3]
    built = standing("small")[3]
    made = standing("small")[0]
    survey = filled(BRICK).cannot_reach("lintel bearing")
    return added(
        partial(hand_over, result, others, units=units, size=size, shown=guides),
        partial(hand_over, result, (), units=units),
        partial(print_record, made, built, units=units),
        partial(print_record, made, built.__class__("another job"), units=units),
        partial(print_cards, made, units=units),
        partial(print_survey, paper=size.lower(), units=units, survey=survey),
        partial(
            print_measured, told=surveyed(survey), drawn=Design(), units=units, paper=size.lower()
        ),
    )


# -- files -----------------------------------------------------------------------------------------
def _every_mark():
    """A sheet with every pen, ground, hatch and way of writing."""
    sheet = Sheet(120.0, 90.0)
    for n, pen in enumerate(
        ("cut", "seen", "fine", "hidden", "center", "ground", "dimension", "guide")
    ):
        sheet.line([(5.0, 5.0 + 3 * n), (50.0 + n, 7.0 + 3 * n), (60.0, 5.0 + 3 * n)], pen)
    sheet.line([(70.0, 5.0), (90.0, 5.0), (80.0, 20.0)], "seen", "bad", closed=True)
    sheet.fill([[(70.0, 30.0), (90.0, 30.0), (80.0, 45.0)]], "brick", "concrete")
    sheet.fill([[(95.0, 30.0), (115.0, 30.0), (105.0, 45.0)]], "soot")
    sheet.text(10.0, 60.0, "Level, 3 ft", bold=True, ha="left")
    sheet.text(60.0, 60.0, "turned", turned=True, ink="bad")
    sheet.text(90.0, 70.0, "above\u2009it", size=4.0, ha="right", va="middle", ink="soft")
    return sheet


@cache
def _sheets():
    return [_every_mark(), single("section", geometry("plain"), FEET_INCHES)]


def read(file):
    """What a PDF draws, by what draws it."""
    reader = PdfReader(BytesIO(file))
    for page in reader.pages:
        box = page.mediabox
        sheet = Sheet(float(box.width), float(box.height))
        for operands, operator in ContentStream(page.get_contents(), reader).operations:
            flat = [one for v in operands for one in (v if isinstance(v, list) else [v])]
            numbers = [float(v) for v in flat if isinstance(v, (int, float))]
            said = [bytes(v, "latin1") if isinstance(v, str) else v
                    for v in flat if isinstance(v, (str, bytes))]  # fmt: skip
            pairs = np.array([*numbers, 0.0][: 2 * ((len(numbers) + 1) // 2)]).reshape(-1, 2)
            pen = f"{operator.decode()} {said}"
            sheet.line(pairs if len(pairs) else [(1.0, 1.0)], pen)
        yield sheet


def of_book(theme):
    out = BytesIO()
    book = PdfBook(out, "a title", "a subject", theme)
    for sheet in _sheets():
        book.add(sheet)
    book.save()
    return read(out.getvalue())


def _leaves(size, how_many):
    """A client's pages without the day they are printed."""
    names = Names("A client", "Oak and Stone, masons", b"" if how_many == 3 else _mark())
    for page in client_leaves(FEET_INCHES, size, how_many, names):
        page.words = [replace(one, text=undated(one.text)) for one in page.words]
        yield page


def _mark():
    dot = BytesIO()
    Image.new("RGB", (3, 3), "red").save(dot, "PNG")
    return dot.getvalue()


def of_client_file(size):
    """The client's pages as a file."""
    return read(as_pdf([*_leaves(size, 3)], "Pages"))


def dots(array):
    """A picture of dots as ink on paper: how much there is of each color, and where."""
    ink = np.asarray(array, float)[..., :3] / 255
    high, wide = ink.shape[:2]
    y, x = np.mgrid[:high, :wide]
    sheet = Sheet(float(wide), float(high))
    for n in range(3):
        dark = np.abs(ink[..., n] - ink[0, 0, n])
        total = dark.sum() + 1e-9
        sheet.line(
            [(100 * total / dark.size, 100 * (dark * x).sum() / total / wide)], f"{n} across"
        )
        sheet.line([(100 * (dark**2).mean(), 100 * (dark * y).sum() / total / high)], f"{n} up")
    yield sheet


def of_client_dots():
    for page in _leaves("letter", 2):
        yield from dots(Image.open(BytesIO(as_png(page, 40))).convert("RGB"))


def of_screen(theme):
    """What is painted on a screen, whole and once more after a change of one cell."""
    first, other = _sheets()
    picture = Picture(300.0, 200.0, 3.0, theme)
    cell = Cell(0.0, 0.0, 120.0, 90.0)
    yield from dots(picture.draw([(cell, first)]))
    beside = Cell(0.0, 0.0, other.width, other.height)
    yield from dots(picture.draw([(beside, other)]))
    yield from dots(Image.open(BytesIO(picture.png([(cell, first)]))).convert("RGB"))


def of_page(theme):
    """What is told to a page of a Figure."""
    for one in _sheets():
        drawn = PageCanvas(sheet_figure(one, theme)).drawn()
        sheet = Sheet(one.width, one.height)
        for pen, points in zip(drawn.pens, drawn.points, strict=True):
            sheet.line(points, json.dumps(pen))
        for x, y, text, size, turned, bold, ink in drawn.labels:
            sheet.text(x, y, text, size, turned=turned, bold=bold, ink=ink)
        yield sheet


def of_saved(theme):
    for one in _sheets():
        yield from dots(Image.open(BytesIO(saved(one, "png", theme))).convert("RGB"))


def of_workbook(write):
    """Cells of a table for reckoning on: what stands in each, how it is shown, and what it came to."""
    with TemporaryDirectory() as folder:
        path = write(Path(folder))
        for stored in (False, True):
            for page in load_workbook(path, data_only=stored):
                sheet = Sheet(float(page.max_column), float(page.max_row))
                frozen = (
                    f"{page.freeze_panes} {page.print_title_rows} {page.page_setup.orientation}"
                )
                sheet.text(1.0, 1.0, f"{page.title} {frozen}")
                for letter, column in page.column_dimensions.items():
                    sheet.line([(column.width, ord(letter[-1]))], letter)
                rows = page[1:2] if page.title in FOUND else page
                for cell in (cell for row in rows for cell in row if cell.value is not None):
                    told = f"{cell.data_type} {cell.number_format} {undated(str(cell.value))}"
                    bold = cell.font.bold and cell.font.size == 14
                    number = not stored or not isinstance(cell.value, float)
                    sheet.text(cell.column, cell.row, told if number else "", bold=bool(bold))
                    if not number:
                        sheet.line([(cell.value, cell.row)], cell.coordinate)
                yield sheet


def of_order(name):
    return of_workbook(
        lambda folder: write_spreadsheet(assessed(name), prices(), folder / "one.xlsx")
    )


def of_results():
    """A class of three, one of whom has slips and a hint and another has done nothing, as its trainer keeps it."""
    school = school_of(("hearth", "roof"), 2, FEET_INCHES, ("Ann Lee", "Bo Ray", "3"))

    def write(folder):
        ann, bo = (Desk(school.task, folder, n, school.tickets[n]) for n in ("Ann Lee", "Bo Ray"))
        for number in (1, 2):
            steps = school.task.draw(school.seed("Bo Ray"), number).steps
            own = school.task.draw(school.seed("Ann Lee"), number).steps
            for n, (step, right) in enumerate(zip(steps, own, strict=False), 1):
                ann.answer(number, n, right.answer(FEET_INCHES))
                for mistake in step.mistakes[:n]:
                    bo.answer(number, n, f"{mistake.value!r} m")
                bo.help_with(number, n, "hint")
                if n % 2:
                    bo.answer(number, n, step.answer(FEET_INCHES))
        return write_results(list(result_rows(school, gathered(school, (folder,)).works)), folder)[
            1
        ]

    return of_workbook(write)


def of_numbered_charts(name, units):
    for one in _charts(assessed(name), units, 420.0, 297.0):
        yield one.sheet


def _pictures():
    for n, changes in enumerate((
        {},
        {"opening.width": "60 in", "flue.sections": 6},
        {"opening.extension": "24 in", "flue.size": "12x16", "site.altitude": "3000 ft"},
    )):  # fmt: skip
        made = partial(assess, change(Design(), changes))
        yield f"charts {n}", partial(of_charts, made, BOTH[n % 2])
    for n, name in enumerate(BY_LOT):
        yield f"charts of {name}", partial(of_charts, partial(assessed, name), BOTH[n % 2])
    for n, maker in enumerate(ON_PAPER):
        for size in PAPERS:
            yield f"{maker} on {size}", partial(of_plates, maker, BY_TURNS[n % 3], size)
    for n, key in enumerate(lesson_keys()):
        yield f"lesson {key}", partial(of_lesson, key, BOOKS[(n + 2) % len(BOOKS)])
    for size, units in zip(("letter", "A4"), BOTH, strict=True):
        yield f"searches on {size}", partial(of_searches, units, size)
        yield f"papers on {size}", partial(of_papers, units, size)
        yield f"client's file on {size}", partial(of_client_file, size)
    yield "results of a class", of_results
    yield "grids", of_grids
    for n, name in enumerate(("of a set", "barn_outside", "by lot 21")):
        yield f"order of {name}", partial(of_order, name)
        yield f"charts to keep of {name}", partial(of_numbered_charts, name, BOTH[n % 2])
    for name, units in (
        ("laid", FEET_INCHES),
        ("corner_study", MILLIMETRES),
        ("plain", MILLIMETRES),
    ):
        yield f"guides of {name}", partial(of_guides, name, units)
    yield "client's pages in dots", of_client_dots
    for theme in THEMES:
        yield f"book, {theme}", partial(of_book, theme)
        yield f"screen, {theme}", partial(of_screen, theme)
        yield f"page, {theme}", partial(of_page, theme)
        yield f"saved, {theme}", partial(of_saved, theme)


PICTURES = dict(_pictures())


def figures(name):
    return of_sheets(list(PICTURES[name]()))


def kept():
    """By picture and what of it, the figures of the file."""
    return held("as_printed")


def main():
    found = (((name, what), row) for name in PICTURES for what, row in figures(name).items())
    hold("as_printed", ("picture", "of", *FIGURES), found, ".1f")


if __name__ == "__main__":
    sys.exit(main())
