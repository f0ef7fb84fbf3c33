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
from fireplace_calc.panels.teaching.beside_drawing import given_html
from fireplace_calc.panels.teaching.design_views import DesignFigures, DesignViews
from fireplace_calc.panels.teaching.look import STYLE

SIZE = 0.55 * WIDTH, 0.55 * HEIGHT
"""Of the drawing of an exercise: beside the questions it has half of the page, and its letters stay
as large as on every board. [mm]
"""
HOW = (
    "Type your name and your ticket as they stand on the slip, and press Begin. Your ticket"
    " sets your own exercises. Write an answer as you would on site: 20 in, 12-3/8, 3'-4 1/2\","
    " 7.75 sqft, or a bare number in your units. Every answer is kept in a folder of your own:"
    " come back with the same slip and go on where you left off."
)
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
        self.trouble, self.story, self.given = w.HTML(), w.HTML(), w.HTML()
        self.heard, self.how = w.HTML(), w.HTML(html.remark(HOW))
        self.board, self.views, self.figures = Board(), DesignViews(), DesignFigures()
        self.chooser = dropdown("Exercise", [], None, self.choose, "38em", "6em")
        self.turner = w.ToggleButtons(
            description="Question", style={"button_width": "auto", "description_width": "6em"}
        )
        self.turner.observe(lambda event: self._turn(event["new"]), "value")
        self.steps = w.VBox()
        self.beside = w.Box()
        self.beside.add_class("beside")
        chosen = row([self.chooser, self.heard])
        chosen.layout.align_items = "center"
        work = [chosen, self.story, self.beside]
        self.work = w.VBox(work, layout=w.Layout(display="none"))
        page = w.VBox(
            [
                w.HTML(html.STYLE + STYLE),
                row([self.name, self.ticket, button("Begin", self.begin)]),
                self.trouble,
                self.how,
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
            self.desk, self.work.layout.display, self.how.layout.display = None, "none", ""
            self.heard.value, self.trouble.value = "", html.trouble(str(wrong))
            return
        self.trouble.value, self.work.layout.display, self.how.layout.display = "", "", "none"
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
        self.story.value = (
            f'<div class="why"><p><b>{escape(asked.title)}.</b> {escape(asked.story)}</p></div>'
        )
        left = next((n for n, step in enumerate(asked.steps, 1) if not step.stands.done), 1)
        if asked.search:
            self.rows = [self._row(1, asked.steps[left - 1], counted=True)]
        else:
            self.rows = [self._row(n, step) for n, step in enumerate(asked.steps, 1)]
        self.steps.children = [line.widget for line in self.rows]
        self.quiet = True
        self.turner.value = None
        self._name_questions(asked)
        self.turner.value = 1 if asked.search else left
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
            asked = self.desk.asked(self.number)
            self._name_questions(asked)
            self._draw(asked)

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

    def _name_questions(self, asked: AskedExercise) -> None:
        """One button to each question, with a tick where it is answered."""
        names = [
            f"{MARKS[n]} \u2713" if step.stands.done else MARKS[n]
            for n, step in enumerate(asked.steps)
        ]
        shown, self.quiet = self.turner.value, True
        self.turner.options = [(name, n) for n, name in enumerate(names[: len(self.rows)], 1)]
        self.turner.value, self.quiet = shown, False
        self.turner.layout.display = "none" if len(self.rows) == 1 else ""

    def _turn(self, question: int | None) -> None:
        """Show one question, from 1 on."""
        if question is None or self.quiet:
            return
        for number, line in enumerate(self.rows, 1):
            line.widget.layout.display = "" if number == question else "none"

    def _draw(self, asked: AskedExercise) -> None:
        """The drawing with the answers that are found, or a design to look through."""
        if asked.search and self.desk:
            self.beside.children = [self.views.widget, w.VBox([self.steps, self.figures.widget])]
            self.views.show(asked.search, self.desk.task.units)
            self.figures.show(asked.given)
            return
        given = given_html([one[1:] for one in asked.given])
        self.given.value = f'<div class="why">{given}</div>'
        self.beside.children = [
            w.VBox([self.board.widget, self.given]),
            w.VBox([self.turner, self.steps]),
        ]
        if asked.figure is None:
            self.board.clear()
        else:
            self.board.show_whole(figure_sheet(asked.figure, *SIZE, ShownUpTo()))

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
