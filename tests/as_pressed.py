"""What pages show when every control on them is used once, one after the other: each fold of the workbench (but two) with jobs kept, the
trainer's page and a student's; and what is shown while a set is measured, a fireplace that stands is measured, or what is built.

Whoever changes on purpose what a page says looks at it in a browser and writes the figures anew:
``.venv/bin/python tests/as_pressed.py``; the change stands in ``tests/pins/as_pressed.csv`` then, a row for each step.
"""

import re
import sys
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import ipywidgets as w
from as_built import FIGURES, figures, with_a_set
from as_drawn import NOON
from as_shown import Heard, plain, seen
from held_figures import held, hold
from measured_sheet import HEAD
from school import school_of

from fireplace_calc import load
from fireplace_calc.base.resources import DESIGNS, made_by
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.pieces.set_pictures import pictures_of
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.lessons.classroom.class_files import hand_out
from fireplace_calc.lessons.fault_hunt.search_of_class import SEARCH
from fireplace_calc.panels import panel
from fireplace_calc.panels.classroom.student_page import student
from fireplace_calc.panels.classroom.trainer_page import trainer
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.measuring.measure_set import MeasureSet
from fireplace_calc.panels.setting.as_it_stands import AsItStands
from fireplace_calc.panels.survey.survey_telling import RESULTS
from fireplace_calc.survey.asked.entry import STATIONS
from fireplace_calc.survey.asked.walk import WALK

EXAMPLE = DESIGNS / "boathouse-laid.toml"
TYPED = ("44 in", "banana", "A name", "3")
"""What is typed into boxes, in turns."""
ELSEWHERE = ("papers", "reach")
"""Folds whose buttons work long; their tests are ``test_papers`` and ``test_controls``."""
IN_BOXES = ("12 ft 3 in", "8 in 12", "yes", "banana", "", "-4 in", "30 deg", "400 mm", "brick")
"""What is entered of a fireplace that stands, in turns."""
PIECE = {"mark": "PR", "A": "26 3/8", "B": "23 3/4", "C": "3", "X": "1/8", "weight": "60"}
PASSING = re.compile(
    r"(/[\w.-]+)*/tmp\w+|\d{4}-\d\d-\d\d|[A-Z][a-z]{2} \d\d \d{4}|\d\d:\d\d|base64,[^\"]+"
)
"""Folders, days and hours in what is said, and files that are handed over."""


def lasting(thing):
    """What is told to a page, without folder, day and hour."""
    if isinstance(thing, dict):
        return {key: lasting(value) for key, value in thing.items()}
    if isinstance(thing, (list, tuple)):
        return [lasting(one) for one in thing]
    return PASSING.sub("", thing).replace(made_by(), "") if isinstance(thing, str) else thing


def shown(widget):
    return lasting(list(seen(widget)))


def reached(widget):
    yield widget
    for child in getattr(widget, "children", ()):
        yield from reached(child)


def pressed(widget):
    """Use every control of a page once, in their order; tells of each what the page shows then."""
    controls = (w.Button, w.Checkbox, w.Dropdown, w.ToggleButtons, w.Select, w.Text, w.IntSlider)
    yield "first", shown(widget)
    used = [one for one in reached(widget) if isinstance(one, controls)]
    for n, one in enumerate(used):
        if isinstance(one, w.Button):
            one.click()
        elif isinstance(one, w.Checkbox):
            one.value = not one.value
        elif isinstance(one, w.Text):
            one.value = TYPED[n % len(TYPED)]
        elif isinstance(one, w.IntSlider):
            one.value = (one.min + one.max) // 2
        elif len(one.options) > 1:
            one.index = ((one.index or 0) + 1) % len(one.options)
        yield f"{n} {type(one).__name__} {lasting(one.description)}", shown(widget)


# -- walks -----------------------------------------------------------------------------------------
def fold(name):
    """One fold of the workbench, jobs kept."""
    with TemporaryDirectory() as folder:
        made = panel(load(EXAMPLE), jobs=Path(folder) / "jobs", folds=tuple(FOLDS))
        page = Heard(made.page)
        made.open(name)
        for step, told in pressed(made.folds[name].widget):
            yield step, (told, lasting(page.since()), lasting(made.said.value), plain(made.design))


def class_page():
    """The trainer's page; the second time everything is as it was kept."""
    with TemporaryDirectory() as folder, patch("secrets.token_hex", lambda n: "5" * 2 * n):
        for time in ("first", "again"):
            made = trainer(Path(folder) / "class", Path(folder) / "students")
            if time == "first":
                made.form.names.value = "Ann Lee\nBo Ray\n小屋"
            for step, told in pressed(made.widget):
                yield f"{time}: {step}", told


def student_page(kinds, units):
    """A student answers what is asked, rightly, wrongly and with help."""
    school = school_of(kinds, 2, units, ("Ann Lee", "Bo Ray"))
    with TemporaryDirectory() as folder:
        hand_out(Path(folder), school.task)
        made = student(folder)
        made.name.value, made.ticket.value = "Ann Lee", school.tickets["Ann Lee"]
        made.begin()
        yield "begun", shown(made.widget)
        for number in range(1, school.task.count + 1):
            made.choose(number)
            steps = school.task.draw(school.seed("Ann Lee"), number).steps
            for n, step in enumerate(steps, 1):
                at = min(n, len(made.rows))
                for text in ("banana", "1", step.answer(units) if n % 2 else "0"):
                    made.answer(at, text)
                    yield f"{number}, {n}: {text[:9]}", shown(made.widget)
                for what in ("hint", "bigger hint", "working"):
                    made.help_with(at, what)
                    yield f"{number}, {n}: {what}", shown(made.widget)
        yield from pressed(made.widget)


def measuring():
    """A set is entered: what is told once, two hands of a piece, one like it, and some that are dropped."""
    with TemporaryDirectory() as folder:
        made = MeasureSet(Path(folder) / "own.toml")
        at = {"n": 0}

        def told(**message):
            made.hear({"id": made.page.shown["id"], **message})
            at["n"] += 1
            name = " ".join(map(str, [at["n"], *message.values()]))
            return name[:40], lasting([plain(made.page.shown), plain(made.page.drawn)])

        yield told(do="done")
        for key, text in HEAD.items():
            yield told(do="put", key=key, text=text)
        yield told(do="done")
        for key, text in PIECE.items():
            yield told(do="put", key=key, text=text, next="B")
        for message in ({"do": "done"}, {"do": "hand"}, {"do": "put", "key": "mark", "text": "B1"},
                        {"do": "more"}, {"do": "put", "key": "bed", "text": "1/4"},
                        {"do": "put", "key": "A", "text": "9 3/"}, {"do": "done"}, {"do": "open", "number": 0},
                        {"do": "new"}, {"do": "put", "key": "mark", "text": "PR"}, {"do": "drop"},
                        {"do": "open", "number": -1}, {"do": "put", "key": "unit", "text": "mm"},
                        {"do": "at", "key": "bed"}):  # fmt: skip
            yield told(**message)


def surveying(units):
    """A fireplace that stands is entered from the first station to the last, with slips, and taken back."""
    made = panel(Design(), units=units, folds=("survey",))
    made.open("survey")
    fold, n = made.folds["survey"], 0
    for station in STATIONS:
        fold.hear({"do": "at", "station": station})
        for entry in [entry for entry in WALK if entry.station == station]:
            for box in [
                b for e in fold.page.shown["entries"] if e["key"] == entry.key for b in e["boxes"]
            ]:
                text = IN_BOXES[n % len(IN_BOXES)]
                fold.hear({"do": "put", "box": box["box"], "text": text})
                n += 1
            if n % 5 == 0:
                fold.hear({"do": "out", "key": entry.key, "on": True})
            yield entry.key, (plain(fold.page.shown), shown(fold.widget))
    for n, message in enumerate((
        {"do": "name", "text": "The brick house"}, *({"do": "at", "station": one} for one in RESULTS),
        *({"do": "sketch", "name": one} for one in SKETCHES),
        {"do": "back"}, {"do": "take"}, {"do": "back"},
    )):  # fmt: skip
        fold.hear(message)
        drawn = plain(fold.page.drawn)
        yield f"{n} {message['do']}", (lasting(plain(fold.page.shown)), drawn, shown(fold.widget))


def standing(units):
    """Lifts of a set are measured one over the other, with a slip, one again, and the last taken back."""
    design = with_a_set(0)
    up = set_up(design)
    made = AsItStands(design, up, pictures_of(design), units, now=lambda: NOON)
    yield "first", shown(made.widget)
    for n in range(5):
        for key, text in (("level", ("9", "1/8 in", "5 3/4 in", "x", "")[n]), ("plumb", "1/16 in"),
                          ("left_right", "-2"), ("by", "AL"), ("note", "a note")):  # fmt: skip
            made.form.boxes[key].value = text
        made.form.again.value = n == 2
        made.enter()
        yield f"entry {n}", shown(made.widget)
    made.undo()
    yield "undone", shown(made.widget)


WALKS = {
    **{f"fold {name}": partial(fold, name) for name in FOLDS if name not in ELSEWHERE},
    "trainer": class_page,
    "student": partial(student_page, ("hearth", "roof"), FEET_INCHES),
    "student who searches": partial(student_page, (SEARCH,), MILLIMETRES),
    "measuring a set": measuring,
    "survey in feet": partial(surveying, FEET_INCHES),
    "survey in millimeters": partial(surveying, MILLIMETRES),
    "as it stands": partial(standing, FEET_INCHES),
    "as it stands, metric": partial(standing, MILLIMETRES),
}


def figures_of(walk):
    """By step of a walk."""
    return {step: figures(told) for step, told in WALKS[walk]()}


def kept():
    """By walk and step, the figures of the file."""
    return held("as_pressed")


def main():
    found = (((walk, step), row) for walk in WALKS for step, row in figures_of(walk).items())
    hold("as_pressed", ("walk", "step", *FIGURES), found)


if __name__ == "__main__":
    sys.exit(main())
