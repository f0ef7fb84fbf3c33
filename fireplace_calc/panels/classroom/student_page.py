"""The student's page: name and ticket, then the exercises that the ticket draws, kept as they are
answered.
"""

from __future__ import annotations

import os
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.classroom.class_paper import CAUTION
from fireplace_calc.drawing.lessons.exercise_pictures import ShownUpTo, figure_sheet
from fireplace_calc.editing.visitor import common_folders, own_folder, served_to_visitors
from fireplace_calc.lessons.classroom.class_files import read_task
from fireplace_calc.lessons.classroom.desk import MARKS, AskedExercise, AskedStep, Desk
from fireplace_calc.lessons.classroom.kept_work import works_in
from fireplace_calc.panels import html
from fireplace_calc.panels.classroom.answer_rows import AnswerRow
from fireplace_calc.panels.controls.choices import button, dropdown, row
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.panels.teaching.design_views import DesignViews, figure_table
from fireplace_calc.panels.teaching.look import STYLE

SIZE = 0.55 * WIDTH, 0.55 * HEIGHT
"""Of the drawing of an exercise: beside the questions it has half of the page, and its letters stay
as large as on every board. [mm]
"""
WIDE = w.Layout(width="24em", max_width="100%")


class StudentPage:
    """Exercises of whoever has typed a name and a ticket.

    Parameters
    ----------
    students : path
        Folder of all students' work, as the notebook names it; what is handed out lies there too.
    """

    def __init__(self, students: str | os.PathLike[str] = "students") -> None:
        self.students, self.number, self.quiet = students, 1, False
        self.desk: Desk | None = None
        self.rows: list[AnswerRow] = []
        # a box tells what it holds when it is left: a click could overtake the last letter
        how = {"layout": WIDE, "style": {"description_width": "5em"}, "continuous_update": False}
        self.name = w.Text(description="Name", **how)
        self.ticket = w.Text(description="Ticket", placeholder="as on the slip", **how)
        self.trouble, self.heard, self.story = w.HTML(), w.HTML(), w.HTML()
        self.board, self.views, self.figures = Board(), DesignViews(), w.HTML()
        self.chooser = dropdown("Exercise", [], None, self.choose, "34em", "6em")
        self.steps = w.VBox()
        self.asked = w.VBox([self.story, self.steps])
        self.beside = w.Box([self.board.widget, self.asked])
        self.beside.add_class("beside")
        self.work = w.VBox(
            [self.chooser, self.beside, self.figures], layout=w.Layout(display="none")
        )
        page = w.VBox(
            [
                w.HTML(html.STYLE + STYLE),
                row([self.name, self.ticket, button("Begin", self.begin)]),
                self.trouble,
                self.heard,
                self.work,
                w.HTML(html.remark(CAUTION)),
            ]
        )
        page.add_class("fireplace-panel")
        page.add_class("fireplace-lesson")
        self.widget = page
        self._come_back()

    def begin(self) -> None:
        """Open the work of the name and the ticket that are typed."""
        try:
            task = read_task(common_folders(self.students))
            home = own_folder(self.students)
            self.desk = Desk(task, home, self.name.value, self.ticket.value)
        except InputError as wrong:
            self.desk, self.work.layout.display = None, "none"
            self.heard.value, self.trouble.value = "", html.trouble(str(wrong))
            return
        self.trouble.value, self.work.layout.display = "", ""
        self.ticket.value = ""  # nobody behind him reads it
        self.number = 1
        self._list()
        self.choose(self.chooser.value)

    def choose(self, number: int | None) -> None:
        """Show one exercise."""
        if self.desk is None or number is None or self.quiet:
            return
        self.number = number
        asked = self.desk.asked(number)
        listed = () if asked.search else asked.given
        given = "".join(
            f"<li>{escape(name)}: <b>{escape(figure)}</b></li>" for _, name, figure in listed
        )
        self.story.value = (
            f'<div class="why"><h2>{escape(asked.title)}</h2><p>{escape(asked.story)}</p>'
            f"<ul>{given}</ul></div>"
        )
        if asked.search:
            left = next((step for step in asked.steps if not step.stands.done), asked.steps[0])
            self.rows = [self._row(1, left, counted=True)]
        else:
            self.rows = [self._row(n, step) for n, step in enumerate(asked.steps, 1)]
        self.steps.children = [line.widget for line in self.rows]
        self._draw(asked)

    def answer(self, step: int, text: str) -> None:
        """Take an answer to one step, from 1 on, of the exercise that is shown."""
        if self.desk is None:
            return
        try:
            reply = self.desk.answer(self.number, step, text)
        except InputError as wrong:
            self.trouble.value = html.trouble(str(wrong))
            return
        self.trouble.value = ""
        self.rows[step - 1].show_reply(reply)
        self._list()
        if reply.right:
            self._draw(self.desk.asked(self.number))

    def help_with(self, step: int, what: str) -> None:
        """Show a hint or the working of one step, from 1 on."""
        if self.desk is None:
            return
        try:
            self.rows[step - 1].show_help(self.desk.help_with(self.number, step, what))
        except InputError as wrong:
            self.trouble.value = html.trouble(str(wrong))

    # -- inside -----------------------------------------------------------------------------------
    def _row(self, number: int, step: AskedStep, counted: bool = False) -> AnswerRow:
        return AnswerRow(
            MARKS[number - 1],
            step,
            self.desk.helps if self.desk else (),
            lambda text: self.answer(number, text),
            lambda what: self.help_with(number, what),
            counted,
        )

    def _draw(self, asked: AskedExercise) -> None:
        """The drawing with the answers that are found, or a design to look through."""
        self.figures.value = ""
        if asked.search and self.desk:
            self._stand([self.asked, self.views.widget], beside=False)
            self.views.show(asked.search, self.desk.task.units)
            self.figures.value = html.flow([figure_table("Figures of this design", asked.given)])
            return
        self._stand([self.board.widget, self.asked], beside=True)
        if asked.figure is None:
            self.board.clear()
        else:
            self.board.show_whole(figure_sheet(asked.figure, *SIZE, ShownUpTo()))

    def _stand(self, children: list[w.Widget], beside: bool) -> None:
        """A drawing beside its questions; the views of a design need all of the width."""
        self.beside.children = children
        self.beside.layout.flex_flow = None if beside else "column"
        (self.beside.add_class if beside else self.beside.remove_class)("beside")

    def _list(self) -> None:
        """The exercises with how far each is."""
        if self.desk is None:
            return
        all_asked = [self.desk.asked(n) for n in range(1, self.desk.task.count + 1)]
        self.quiet = True
        self.chooser.options = {_named(n, asked): n for n, asked in enumerate(all_asked, 1)}
        self.chooser.value = self.number
        self.quiet = False
        done = sum(asked.done == len(asked.steps) for asked in all_asked)
        who = self.desk.work.name
        told = f"{who}: {done} of {len(all_asked)} exercises done. Every answer is kept."
        self.heard.value = html.heard(told)

    def _come_back(self) -> None:
        """On a tablet's page: who has worked on this tablet goes on."""
        if served_to_visitors():
            for _, work in works_in(own_folder(self.students)):
                self.name.value, self.ticket.value = work.name, work.ticket
                self.begin()
                if self.desk is not None:
                    break

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        shown = self.widget._repr_mimebundle_(**kwargs)
        return {**shown, "text/plain": "The page of a student: name, ticket, exercises"}


def _named(number: int, asked: AskedExercise) -> str:
    return f"{number}. {asked.title}: {asked.done} of {len(asked.steps)} answered"


def student(students: str | os.PathLike[str] = "students") -> StudentPage:
    """The page of one student; put it last in a cell."""
    return StudentPage(students)
