"""The trainer's page: set a class, hand it out, print it, and gather what came of it."""

from __future__ import annotations

import os
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.classroom.class_book import (
    GRID,
    KEY,
    QUIZ,
    SLIPS,
    ClassPapers,
    class_papers_writing,
)
from fireplace_calc.drawing.classroom.class_paper import STANDING
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.editing.visitor import own_folder
from fireplace_calc.exports.class_table import BOOK, CSV, write_results
from fireplace_calc.lessons.classroom.class_files import hand_out, kept_class, read_class
from fireplace_calc.lessons.classroom.class_records import SchoolClass
from fireplace_calc.lessons.classroom.class_results import result_rows
from fireplace_calc.lessons.classroom.gathering_work import gathered
from fireplace_calc.panels import html
from fireplace_calc.panels.classroom.class_form import ClassForm
from fireplace_calc.panels.classroom.result_lists import result_tables
from fireplace_calc.panels.controls.choices import button, dropdown, row
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.panels.teaching.look import STYLE

TABLETS = "visitors"
"""Folder beside the students' that keeps what was done on tablets."""
TICKETS = (Column("Student", 40), Column("Ticket", 30), Column("Place", 10))
HONEST = (
    "The secret and the key stay in your folder; a student's page has neither, and no other"
    " student's ticket.",
    "The program works the answers out by itself. Whoever has a ticket and can run Python with the"
    " program can have that student's answers. For a test use the paper, or serve class-student as"
    " a page without code (fireplace-workbook tablet class-student), where nobody can run any.",
    "A drawing is to scale: whoever measures it on the screen comes near some of the answers.",
    "Whoever can open your files can read the secret. Keep your folder off a JupyterLab that you"
    " share with the class.",
)


class TrainerPage:
    """A class under its trainer's hands.

    Parameters
    ----------
    folder : path
        The trainer's own: secret, key, results.
    students : path
        Folder of the students' work; what is handed out is laid there.
    """

    def __init__(
        self,
        folder: str | os.PathLike[str] = "class",
        students: str | os.PathLike[str] = "students",
    ) -> None:
        self.folder, self.students = own_folder(folder), own_folder(students)
        self.school: SchoolClass | None = None
        self.form, self.job = ClassForm(), Job("students")
        self.trouble, self.heard = w.HTML(), w.HTML()
        self.tickets, self.results = w.HTML(), w.HTML()
        papers = {"usual for these units": ""} | {name: name for name in STANDING}
        self.size = dropdown("Paper", papers, "", lambda _: None, "20em", "5em")
        self.widget = self._lay_out()
        try:
            self.school = read_class(self.folder)
        except InputError as wrong:
            self._wrong(wrong)
        if self.school is not None:
            self.form.show(self.school)
            self.heard.value = html.heard(f"{self._named()} is as you kept it.")

    def keep(self) -> None:
        """Keep the class, and lay out what the students' pages read."""
        try:
            self.school = kept_class(self.folder, self.form.task(), self.form.roster())
            hand_out(self.students, self.school.task)
        except InputError as wrong:
            self._wrong(wrong)
            return
        self.tickets.value = ""
        self._said(f"{self._named()} is kept in {self.folder} and handed out in {self.students}.")

    def show_tickets(self) -> None:
        """Show or hide the tickets."""
        if self.school is None:
            self._said("Keep the class first.")
        elif self.tickets.value:
            self.tickets.value = ""
        else:
            rows = [
                (name, ticket, str(self.school.places[name]))
                for name, ticket in self.school.tickets.items()
            ]
            self.tickets.value = html.flow([Table("Tickets", TICKETS, tuple(rows))])

    def write(self) -> None:
        """Write quiz, answer grid, key and slips."""
        school, size = self.school, self.size.value or None
        if school is None:
            self._said("Keep the class first.")
            return

        def steps() -> Steps:
            yield from class_papers_writing(school, self.folder, size)

        def finished() -> str:
            more = ClassPapers(school, size).said
            return f"{QUIZ}, {GRID}, {KEY} and {SLIPS} are written to {self.folder}. {more}".strip()

        self.job.run(steps, finished)

    def gather(self) -> None:
        """Read every student's work, and write and show the table."""
        if self.school is None:
            self._said("Keep the class first.")
            return
        found = gathered(self.school, (self.students, self.students.parent / TABLETS))
        rows = list(result_rows(self.school, found.works))
        try:
            write_results(rows, self.folder)
        except InputError as wrong:
            self._wrong(wrong)
            return
        self.results.value = html.flow([*found.said, *result_tables(rows)])
        many = f"{len(found.works)} of {len(self.school.places)} students have begun"
        self._said(f"{many}. {CSV} and {BOOK} are written to {self.folder}.")

    # -- inside -----------------------------------------------------------------------------------
    def _named(self) -> str:
        assert self.school is not None
        return f"{self.school.task.title}, {len(self.school.places)} students,"

    def _wrong(self, wrong: InputError) -> None:
        self.heard.value, self.trouble.value = "", html.trouble(str(wrong))

    def _said(self, sentence: str) -> None:
        self.trouble.value, self.heard.value = "", html.heard(sentence)

    def _lay_out(self) -> w.Widget:
        keep = [button("Keep and hand out", self.keep), button("Show tickets", self.show_tickets)]
        folds = w.Accordion(
            children=[
                w.VBox([self.form.widget, row(keep), self.tickets]),
                w.VBox([row([self.size, button("Write the papers", self.write)]), self.job.widget]),
                w.VBox([row([button("Gather the results", self.gather)]), self.results]),
                w.HTML("".join(map(html.remark, HONEST))),
            ],
            titles=("The class", "On paper", "Results", "What is safe, and what is not"),
            selected_index=0,
        )
        page = w.VBox([w.HTML(html.STYLE + STYLE), self.trouble, self.heard, folds])
        page.add_class("fireplace-panel")
        page.add_class("fireplace-lesson")
        return page

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        shown = self.widget._repr_mimebundle_(**kwargs)
        return {**shown, "text/plain": "The page of a trainer: class, papers, results"}


def trainer(
    folder: str | os.PathLike[str] = "class", students: str | os.PathLike[str] = "students"
) -> TrainerPage:
    """The page of a trainer; put it last in a cell."""
    return TrainerPage(folder, students)
