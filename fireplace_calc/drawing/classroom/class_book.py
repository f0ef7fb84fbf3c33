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
    drawn : dict of str to tuple of Exercise
        Those that one page takes, by student.
    stamp : ClassStamp
    many : int
        Exercises of one page. [-]

    Raises
    ------
    InputError
        When not one exercise fits a page.
    """

    def __init__(self, school: SchoolClass, size: str | None = None) -> None:
        task = school.task
        whole = {name: task.draw_all(school.seed(name)) for name in school.places}
        digests = [figures_digest(one, True) for own in whole.values() for one in own]
        self.school, self.stamp = school, ClassStamp(task, class_digest(tuple(digests)), size)
        _, room = self.stamp.blank()
        wide, high = room.right - room.left, room.top - room.bottom
        self.blocks: dict[str, list[QuizBlock]] = {
            name: quiz_blocks(own, task.units, wide) for name, own in whole.items()
        }
        self.many = min(fitting(blocks, high) for blocks in self.blocks.values())
        if not self.many:
            raise InputError(
                "The first exercise is too long for one page: choose another topic, or larger"
                " paper.",
                "Topics",
                "an exercise that fits a page",
                task.kinds[0],
            )
        self.drawn: dict[str, tuple[Exercise, ...]] = {
            name: own[: self.many] for name, own in whole.items()
        }

    def quiz(self, name: str) -> Sheet:
        """One student's page."""
        names, shown = list(self.drawn), on_paper(name, self.school.places[name])
        what = f"Quiz, sheet {names.index(name) + 1} of {len(names)}"
        return quiz_page(self.blocks[name][: self.many], self.stamp, shown, what)

    def tables(self) -> tuple[ClassTable, ClassTable]:
        """Answer grid and key."""
        places = self.school.places
        shown = {on_paper(name, places[name]): own for name, own in self.drawn.items()}
        return grid_table(shown), key_table(shown, self.school.task.units)

    @property
    def said(self) -> str:
        """What the trainer should know of the page."""
        count = self.school.task.count
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

    def pages() -> Iterator[Sheet]:
        for name in school.places:
            yield papers.quiz(name)

    book, held = _book(papers, "quiz")
    for number, (name, sheet) in enumerate(zip(school.places, pages(), strict=True)):
        yield number, many, name
        book.add(sheet)
    book.save()
    files = {QUIZ: held.getvalue()}
    yield many, many, "Answer grid, key and tickets."
    grid, key = papers.tables()
    for file, what, sheets in (
        (GRID, "answer grid", table_sheets(grid, papers.stamp)),
        (KEY, "key", table_sheets(key, papers.stamp)),
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
