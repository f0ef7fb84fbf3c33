"""All papers of a class, written student by student: quiz, answer grid, key and slips."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.classroom.class_tables import (
    ClassTable,
    grid_table,
    key_table,
    table_sheets,
)
from fireplace_calc.drawing.classroom.quiz_sheet import QuizBlock, fitting, quiz_blocks, quiz_page
from fireplace_calc.drawing.classroom.search_sheet import list_sheet, search_page
from fireplace_calc.drawing.classroom.stamped import ClassStamp, on_paper
from fireplace_calc.drawing.classroom.ticket_slips import slip_sheets
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.lessons import Exercise
from fireplace_calc.lessons.classroom.class_records import (
    SchoolClass,
    class_digest,
    figures_digest,
)

QUIZ, GRID, KEY, SLIPS = "quiz.pdf", "answer-grid.pdf", "key.pdf", "tickets.pdf"


class ClassPapers:
    """The exercises of a class as its papers take them.

    Parameters
    ----------
    school : SchoolClass
    size : str or None
        ``letter`` or ``A4``; else by the units.

    Attributes
    ----------
    drawn : dict of str to dict of int to Exercise
        Those that the paper takes, by student and number: as many as one page holds, and each
        search on a page of its own.
    stamp : ClassStamp
    many : int
        Exercises of the one page. [-]

    Raises
    ------
    InputError
        When not one exercise fits a page.
    """

    def __init__(self, school: SchoolClass, size: str | None = None) -> None:
        task = school.task
        whole = {
            name: dict(enumerate(task.draw_all(school.seed(name)), 1)) for name in school.places
        }
        digests = [figures_digest(one, True) for own in whole.values() for one in own.values()]
        self.school, self.stamp = school, ClassStamp(task, class_digest(tuple(digests)), size)
        _, room = self.stamp.blank()
        wide, high = room.right - room.left, room.top - room.bottom
        first = next(iter(whole.values()))
        self.searches = [n for n, one in first.items() if one.any_order]
        worked = [n for n in first if n not in self.searches]
        self.blocks: dict[str, list[QuizBlock]] = {
            name: quiz_blocks({n: own[n] for n in worked}, task.units, wide)
            for name, own in whole.items()
        }
        self.many = min(fitting(blocks, high) for blocks in self.blocks.values())
        if worked and not self.many:
            raise InputError(
                "The first exercise is too long for one page: choose another topic, or larger"
                " paper.",
                "Topics",
                "an exercise that fits a page",
                task.kinds[0],
            )
        taken = sorted([*worked[: self.many], *self.searches])
        self.drawn: dict[str, dict[int, Exercise]] = {
            name: {n: own[n] for n in taken} for name, own in whole.items()
        }

    def quiz(self, name: str) -> list[Sheet]:
        """One student's page, and one more for each search."""
        names, shown = list(self.drawn), on_paper(name, self.school.places[name])
        what = f"Quiz, sheet {names.index(name) + 1} of {len(names)}"
        blocks, stamp = self.blocks[name][: self.many], self.stamp
        made = [quiz_page(blocks, stamp, shown, what)] if blocks else []
        own = self.drawn[name]
        searches = [
            search_page(n, own[n], stamp, shown, f"{what}, exercise {n}") for n in self.searches
        ]
        return [*made, *searches]

    def tables(self) -> tuple[ClassTable, ClassTable]:
        """Answer grid and key."""
        places = self.school.places
        shown = {on_paper(name, places[name]): own for name, own in self.drawn.items()}
        return grid_table(shown), key_table(shown, self.school.task.units)

    @property
    def said(self) -> str:
        """What the trainer should know of the page."""
        count = self.school.task.count - len(self.searches)
        if self.many == count:
            return ""
        return (
            f"One page takes {self.many} of the {count} exercises; the page on the screen has all."
        )


def class_papers_writing(
    school: SchoolClass, folder: Path, size: str | None = None
) -> Iterator[tuple[int, int, str]]:
    """Write all papers of a class, so that whoever waits can watch, and stop by closing the
    generator: then no file is touched.

    Parameters
    ----------
    school : SchoolClass
    folder : path
        The trainer's; it is there.
    size : str or None
        ``letter`` or ``A4``; else by the units.

    Yields
    ------
    int, int, str
        How many students are done, of how many, and the next one's name.
    """
    many = len(school.places)
    yield 0, many, "Exercises are drawn."
    papers = ClassPapers(school, size)

    book, held = _book(papers, "quiz")
    for number, name in enumerate(school.places):
        yield number, many, name
        for sheet in papers.quiz(name):
            book.add(sheet)
    lists = [list_sheet(papers.stamp)] if papers.searches else []
    for sheet in lists:
        book.add(sheet)
    book.save()
    files = {QUIZ: held.getvalue()}
    yield many, many, "Answer grid, key and tickets."
    grid, key = papers.tables()
    for file, what, sheets in (
        (GRID, "answer grid", table_sheets(grid, papers.stamp)),
        (KEY, "key", [*table_sheets(key, papers.stamp), *lists]),
        (SLIPS, "tickets", slip_sheets(school, papers.stamp)),
    ):
        files[file] = _whole(papers, what, sheets)
    for file, content in files.items():
        write_whole(folder / file, content)
    yield many, many, ""


def _book(papers: ClassPapers, what: str) -> tuple[PdfBook, io.BytesIO]:
    held, task = io.BytesIO(), papers.school.task
    subject = f"{task.pack}, exercises {papers.stamp.digest}"
    return PdfBook(held, f"{task.title}, {what}", subject), held


def _whole(papers: ClassPapers, what: str, sheets: Iterable[Sheet]) -> bytes:
    book, held = _book(papers, what)
    for sheet in sheets:
        book.add(sheet)
    book.save()
    return held.getvalue()
