"""The papers of a class: one page a student, an answer grid, one key page, and slips to cut."""

import io
import re
from collections import Counter
from dataclasses import replace

import pytest
from pypdf import PdfReader
from sampled import sampled
from school import THIRTY, school_of

from fireplace_calc import assess
from fireplace_calc.base.resources import version
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.classroom import class_book
from fireplace_calc.drawing.classroom.class_book import (
    GRID,
    KEY,
    QUIZ,
    SLIPS,
    ClassPapers,
    class_papers_writing,
)
from fireplace_calc.drawing.classroom.class_tables import grid_table, key_table, table_sheets
from fireplace_calc.drawing.classroom.quiz_sheet import DRAWN
from fireplace_calc.drawing.classroom.ruled_grid import given_grid
from fireplace_calc.drawing.classroom.search_sheet import BESIDE, _views
from fireplace_calc.drawing.classroom.stamped import ClassStamp
from fireplace_calc.drawing.classroom.ticket_slips import slip_sheets
from fireplace_calc.drawing.composed.compose import draw_view
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons import KINDS, check
from fireplace_calc.lessons.answers.given_figures import given_table
from fireplace_calc.lessons.classroom.class_records import topics_of

WAYS = [
    (tuple(KINDS)[:4], 4, "feet-inches", None),
    (tuple(KINDS)[4:], 3, "millimetres", None),
    (tuple(KINDS), 8, "feet-inches", "A4"),
    (tuple(KINDS)[:1], 12, "millimetres", "letter"),
    *(((kind,), 2, "feet-inches", None) for kind in KINDS),
    (("roof", "faults"), 3, "millimetres", "letter"),
]


@pytest.mark.parametrize("way", sampled([(way,) for way in WAYS], 2))
def test_every_sheet_is_clean_and_a_class_of_thirty_has_one_page_of_each(way):
    kinds, count, units, size = way
    for level in (1, 3):
        school = school_of(kinds, count, units, level=level)
        papers = ClassPapers(school, size)
        grid, key = papers.tables()
        tables = [table_sheets(grid, papers.stamp), table_sheets(key, papers.stamp)]
        assert [len(sheets) for sheets in tables] == [1, 1]
        slips = slip_sheets(school, papers.stamp)
        assert len(slips) == 1 and 1 <= papers.many <= count
        quiz = [sheet for name in school.places for sheet in papers.quiz(name)]
        searches = (count - 1) // 2 if "faults" in kinds else 0
        assert len(quiz) == 30 * (1 + searches)
        for sheet in (*quiz, *tables[0], *tables[1], *slips):
            assert collisions(sheet) == []


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_canadas_flues_stand_in_a_table_on_paper(units):
    """Every figure of the exercise in one cell, its row and column beside and over it; no figure is
    told in a run of text, and no word is cut.
    """
    school = school_of(("flue",), 1, units, THIRTY[:12], pack="Canada Ontario")
    papers = ClassPapers(school)
    told = 0
    for name in school.places:
        given = [(one.name, one.shown(units)) for one in papers.drawn[name][1].given]
        (page,) = papers.quiz(name)
        assert collisions(page) == [] and not any("Table:" in one.text for one in page.labels)
        if (table := given_table(given)) is None:
            continue
        told += 1
        room = page.width * DRAWN
        grid = given_grid(table, room)
        words = [*table.columns, *(row for row, _ in table.rows)]
        words += [text for _, texts in table.rows for text in texts]
        assert sorted(" ".join([table.corner, *words]).split()) == sorted(
            word for one in grid.labels for word in one.text.replace("(mm)", "").split()
        )
        on_page = Counter(word for one in page.labels for word in one.text.split())
        assert on_page >= Counter(word for one in grid.labels for word in one.text.split())
        assert all(one.extent[0] > 0 and one.extent[2] < room for one in grid.labels)
    assert told >= 3


def test_the_files_bear_one_stamp_and_the_key_answers_the_quiz(tmp_path):
    """Every figure of the printed key, read from the PDF, is taken for right on the student's
    exercise; every question stands on his page.
    """
    school = school_of(("hearth", "mantel", "flue"), 3, "feet-inches")
    heard = list(class_papers_writing(school, tmp_path))
    assert heard[0][:2] == (0, 30) and heard[-1] == (30, 30, "")
    read = {name: PdfReader(tmp_path / name) for name in (QUIZ, GRID, KEY, SLIPS)}
    assert [len(book.pages) for book in read.values()] == [30, 1, 1, 1]
    texts = {name: [page.extract_text() for page in book.pages] for name, book in read.items()}
    stamps = {
        re.search(r"exercises (\w{8}), fireplace_calc ([\d.]+),", text)[0]
        for pages in texts.values()
        for text in pages
    }
    assert len(stamps) == 1 and version() in stamps.pop()
    papers = ClassPapers(school)
    cells = dict(papers.tables()[1].rows)
    for page, name in zip(texts[QUIZ], school.places, strict=True):
        asked = [step for one in papers.drawn[name].values() for step in one.steps]
        shown = "No. 29" if name == "小屋" else name
        flat = " ".join(page.split())
        for step, cell in zip(asked, cells[shown], strict=False):
            assert check(step, cell, "feet-inches").right, (step.ask, cell)
            assert " ".join(step.ask.split()[:4]) in flat
            assert cell in texts[KEY][0]
    for ticket in school.tickets.values():
        assert ticket in texts[SLIPS][0] and not any(ticket in page for page in texts[QUIZ])


def test_a_search_has_a_page_of_its_own_and_the_key_its_numbers(tmp_path):
    """Numbers of the printed key, looked up in the printed list, are the rules that the assessment
    finds broken; every figure stands on the page.
    """
    school = school_of(("faults", "hearth"), 2, "feet-inches", names=("Ann Lee", "Bo Ray"))
    list(class_papers_writing(school, tmp_path))
    quiz, key = (PdfReader(tmp_path / name).pages for name in (QUIZ, KEY))
    assert len(quiz) == 2 * 2 + 1 and len(key) == 2
    listed = " ".join(quiz[-1].extract_text().split())
    assert "List to look down" in listed and listed == " ".join(key[-1].extract_text().split())
    papers = ClassPapers(school)
    for k, name in enumerate(school.places):
        drawn, page = papers.drawn[name][1], " ".join(quiz[2 * k + 1].extract_text().split())
        assert "1. Find the fault" in page and "2. Hearth" in quiz[2 * k].extract_text()
        for given in drawn.given:
            assert given.name in page and given.shown("feet-inches") in page
        found = assess(drawn.design, school.task.pack).findings
        broken = {f"{f.title} ({f.clause})" for f in found if f.verdict == "falls short"}
        heads, (_, cells) = papers.tables()[1].heads, papers.tables()[1].rows[k]
        numbers = [cell for head, cell in zip(heads, cells, strict=True) if head[0] == "1"]
        assert len(broken) == len(numbers) == 3
        assert all(any(f" {n} {rule} " in f"{listed} " for rule in broken) for n in numbers)


def test_another_class_and_other_exercises_have_another_stamp():
    stamps = {
        ClassPapers(school_of(kinds, count, units)).stamp.digest
        for kinds, count, units in (
            (("hearth",), 2, "feet-inches"),
            (("hearth",), 3, "feet-inches"),
            (("mantel",), 2, "feet-inches"),
        )
    }
    assert len(stamps) == 3
    school = school_of(("hearth",), 2, "feet-inches")
    assert ClassPapers(school).stamp.digest == ClassPapers(school).stamp.digest


def test_stopped_half_way_nothing_is_written(tmp_path):
    writing = class_papers_writing(school_of(("hearth",), 2, "feet-inches"), tmp_path)
    for _ in range(10):
        next(writing)
    writing.close()
    assert list(tmp_path.iterdir()) == []


def test_an_exercise_that_no_page_takes_is_refused(monkeypatch):
    monkeypatch.setattr(class_book, "fitting", lambda blocks, high: 0)
    with pytest.raises(InputError, match="too long for one page"):
        ClassPapers(school_of(("hearth",), 2, "feet-inches"))


def test_what_does_not_fit_the_page_is_said():
    papers = ClassPapers(school_of(tuple(KINDS), 12, "feet-inches"))
    assert papers.many < 12 and f"{papers.many} of the 12" in papers.said
    assert ClassPapers(school_of(("hearth",), 1, "feet-inches")).said == ""


def test_sixty_students_go_on_over_the_page():
    school = school_of(("roof",), 2, "feet-inches", names=tuple(map(str, range(1, 61))))
    papers = ClassPapers(school)
    sheets = table_sheets(papers.tables()[1], papers.stamp)
    told = [label.text for sheet in sheets for label in sheet.labels]
    assert len(sheets) == 2 and all(str(n) in told for n in range(1, 61))
    assert all(collisions(sheet) == [] for sheet in sheets)
    assert len(slip_sheets(school, papers.stamp)) == 2


def test_the_letters_of_a_sheet_can_be_searched(tmp_path):
    school = school_of(("hearth",), 1, "millimetres", names=("Zoë",))
    list(class_papers_writing(school, tmp_path, "letter"))
    (page,) = PdfReader(io.BytesIO((tmp_path / QUIZ).read_bytes())).pages
    assert "Zoë" in page.extract_text()
    assert [round(float(n) / 72 * 25.4, 1) for n in page.mediabox[2:]] == [215.9, 279.4]


def test_paper_of_another_size_is_refused():
    with pytest.raises(InputError, match="letter or A4"):
        ClassPapers(school_of(("hearth",), 1, "feet-inches", names=("1",)), "A3")


@pytest.mark.parametrize("pack", ["Canada NBC", "UK ADJ"])
def test_a_key_of_thirty_is_one_page_abroad_too(pack):
    """Longest choices and all: each topic twice."""
    for kind in topics_of(pack):
        school = school_of((kind,), 2, "millimetres")
        task = replace(school.task, pack=pack)
        drawn = {
            name: dict(enumerate(task.draw_all(school.seed(name)), 1)) for name in school.places
        }
        for table in (grid_table(drawn), key_table(drawn, task.units)):
            assert len(table_sheets(table, ClassStamp(task, "0" * 8))) == 1, kind


@pytest.mark.parametrize(("high", "both"), [(165.0, True), (110.0, False), (90.0, False)])
def test_beside_a_low_section_the_roof_stands_alone(high, both):
    """Where front and roof over each other would be crowded, or one of them (the roof, at 110 mm), the
    roof has the whole height.
    """
    papers = ClassPapers(school_of(("faults",), 1, "feet-inches", names=("Ann Lee",)))
    (search,) = papers.drawn["Ann Lee"].values()
    geometry, sheet = build_geometry(search.design), Sheet(290.0, 200.0)
    _views(sheet, search, Cell(10.0, 5.0, 280.0, 5.0 + high))
    left = 270.0 - BESIDE
    wanted = [("section", left, high, 10.0, 5.0)]
    if both:
        wanted += [("roof", BESIDE, 0.6 * high, 10.0 + left, 5.0)]
        wanted += [("front", BESIDE, 0.4 * high, 10.0 + left, 5.0 + 0.6 * high)]
    else:
        wanted += [("roof", BESIDE, high, 10.0 + left, 5.0)]
    texts = set()
    for name, wide, tall, x, y in wanted:
        cell = Cell(0.0, 0.0, wide, tall)
        one = draw_view(name, cell, geometry, "feet-inches", own_paper=True)
        texts |= {(round(n.x + x, 6), round(n.y + y, 6), n.text) for n in one.labels}
    assert {(round(n.x, 6), round(n.y, 6), n.text) for n in sheet.labels} == texts
