"""What the pages of the workbook show while somebody walks through them: the workbench fold by fold, the client's page, every
lesson screen by screen, every exercise, pieces set step by step, a search for a fault.

Whoever changes on purpose what a page says looks at it in a browser and writes the figures anew:
``.venv/bin/python tests/as_shown.py``; the change stands in ``tests/pins/as_shown.csv`` then, a row for each step of each walk.
"""

import re
import sys
from functools import partial

from as_built import FIGURES, drawn, figures, with_a_set
from as_judged import drawn as answered
from held_figures import held, hold

from fireplace_calc import load
from fireplace_calc.base.resources import DESIGNS, lesson_keys
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.lessons import LEVELS, TAUGHT, check, exercise, kinds_of
from fireplace_calc.panels import client, panel
from fireplace_calc.panels.folds.contents import FOLDS, JOBS
from fireplace_calc.panels.lesson.lesson_desk import SCREENS, LessonDesk
from fireplace_calc.panels.step_by_step import StepByStep
from fireplace_calc.panels.teaching.exercise_panel import Practice

ASIDE = (
    "layout",
    "style",
    "children",
    "tooltip",
    "tabbable",
    "comm",
    "keys",
    "log",
    "first",
    "glyphs",
)
"""What of a widget is no word or value on the page, or stands in what is told to it."""
LONG_TEXT = re.compile(r"data:[^\"']+|fp-?[0-9a-f]{8,}")
"""Files and marks that stand in a text whole."""


# -- what is seen ----------------------------------------------------------------------------------
def plain(thing):
    """What can be summed of something that is told to a page."""
    if isinstance(thing, dict):
        return {str(key): plain(value) for key, value in thing.items()}
    if isinstance(thing, (list, tuple, set)):
        return [plain(one) for one in thing]
    if isinstance(thing, str):
        return LONG_TEXT.sub("", thing)
    if isinstance(thing, (bytes, memoryview)):
        return len(thing) > 0
    return thing if isinstance(thing, (bool, int, float)) or thing is None else type(thing).__name__


def seen(widget):
    """All that a widget and what stands in it show."""
    yield type(widget).__name__, tuple(getattr(widget, "_dom_classes", ()))
    for name in sorted(widget.keys):
        if not name.startswith("_") and name not in ASIDE:
            yield name, plain(getattr(widget, name))
    for child in getattr(widget, "children", ()):
        yield from seen(child)


class Heard:
    """Everything that is sent to a page, one after the other."""

    def __init__(self, page):
        self.said, self.page = [], page
        page.send = lambda content, bodies=None: self.said.append(plain(content))

    def since(self):
        """What was sent since it was last asked."""
        said, self.said = self.said, []
        return said

    def hears(self, **message):
        """The page sends a message of its own."""
        self.page._handle_custom_msg(message, [])


# -- walks -----------------------------------------------------------------------------------------
def workbench(design, units):
    """Every fold of the workbench, then a slider, entries, views, books and back."""
    made = panel(design, units=units)
    page = Heard(made.page)
    yield "first", plain(made.told())
    page.hears(do="hello")
    for name in (name for name in FOLDS if name not in JOBS):
        made.open(name)
        yield name, (list(seen(made.folds[name].widget)), page.since())
    for name, message in (
        ("slide", {"do": "slide", "key": "opening.width", "value": 44.0}),
        ("type", {"do": "type", "key": "flue.sections", "value": "13"}),
        ("refused", {"do": "type", "key": "opening.width", "value": "banana"}),
        ("refused elsewhere", {"do": "type", "key": "chimney.wall", "value": "9 ft"}),
        ("undo", {"do": "undo"}),
        ("undo again", {"do": "undo"}),
        ("redo", {"do": "redo"}),
        ("view", {"do": "view", "name": "section"}),
        ("jump", {"do": "jump", "key": "FLU-03"}),
        ("jump elsewhere", {"do": "jump", "key": "STR-01"}),
        ("paper", {"do": "paper", "name": "dark"}),
        ("book", {"do": "pack", "name": "Canada NBC"}),
        ("units", {"do": "units", "name": MILLIMETRES if units == FEET_INCHES else FEET_INCHES}),
        ("size", {"do": "size", "wide": 500, "high": 900}),
        ("again", {"do": "again"}),
        ("tab", {"do": "tab", "name": "checks"}),
    ):
        page.hears(**message)
        yield name, (page.since(), made.opened, list(seen(made.content)), made.said.value)


def fireside(design, units):
    """The client's page: its first picture, each slider to both sides, every button in turn."""
    made = client(design, units=units)
    yield "first", list(seen(made.widget))
    for key, values in (
        ("opening.width", ("30 in", "50 in", "9 ft")),
        ("surround.face", ("stone", "plaster")),
        ("base.hearth_level", ("0 in", "18 in")),
        ("seat.left", ("3 ft", "0 ft")),
    ):
        for value in values:
            made.set_input(key, value)
            yield f"{key} {value}", list(seen(made.widget))
    made.set_units(MILLIMETRES if units == FEET_INCHES else FEET_INCHES)
    yield "other units", list(seen(made.widget))


IN_A_LESSON = {
    "rule": [("try", {"at": 0}), ("try", {"at": 1}), ("book", {"name": "Canada NBC"})],
    "why": [("part", {"at": n}) for n in (1, 2, 3)],
    "worked": [("step", {"at": n}) for n in (1, 2, 99)],
    "site": [("guess", {"at": n}) for n in (0, 1, 2)] + [("again", {})],
    "check": [
        ("answer", {"at": 0}),
        ("answer", {"at": 1}),
        ("question", {"at": 1}),
        ("answer", {"at": 2}),
    ],
    "exercises": [
        *[("typed", {"text": text}) for text in ("12 in", "0.5", "banana")],
        *[("help", {"name": name}) for name in ("hint", "more", "working")],
        *[("onward", {"at": 1}), ("level", {"at": 2}), ("another", {}), ("kind", {"at": 0})],
        ("units", {"name": MILLIMETRES}),
    ],
}
"""What is done on each screen, one after the other."""


def lessons(key, units):
    """Every screen of a lesson, and all that can be done there."""
    made = LessonDesk(key, units=units)
    page = Heard(made.page)
    for screen in SCREENS:
        made.turn(screen)
        yield screen, plain(made.told())
        if screen == "rule":
            for control in made.screens[screen].places:
                page.hears(do="slide", name=control, at=1)
                yield f"{screen}: {control}", page.since()
        for n, (act, told) in enumerate(IN_A_LESSON[screen]):
            page.hears(do=act, **told)
            yield f"{screen} {n}: {act}", page.since()
    made.turn("contents")
    yield "contents", plain(made.told())


def step_by_step(design, units):
    """Some steps of setting a set."""
    made = StepByStep(design, units)
    for step in (0, 1, 5, made.slider.max // 2, made.slider.max):
        made.go(step)
        yield f"step {step}", list(seen(made.widget))


def search(seed, units):
    """A fault to find, with one and with three planted, by two editions."""
    made = Practice(seed, units)
    yield "one", list(seen(made.widget))
    made.set(faults=3)
    yield "three", list(seen(made.widget))
    made.set(pack="US IRC 2018", units=FEET_INCHES)
    yield "by another edition", list(seen(made.widget))


def exercises(units):
    """Every kind in every book, by level and by all its branches: givens, questions, mistakes, figure, replies."""
    for pack in TAUGHT:
        for kind in kinds_of(pack):
            tasks = [
                exercise(kind, seed, pack, level, units, place)
                for level in LEVELS
                for place, seed in enumerate(range(4 * level, 4 * level + 4))
            ]
            replies = [
                [check(step, text, units) for text in ("12 in", "0.5", "30", "banana")]
                for task in tasks
                for step in task.steps
            ]
            yield f"{kind} by {pack}", (tasks, replies)


EXAMPLE = DESIGNS / "boathouse-laid.toml"
WALKS = {
    "workbench, laid": lambda: workbench(load(EXAMPLE), FEET_INCHES),
    "workbench, answered": lambda: workbench(answered(5), MILLIMETRES),
    "workbench, of a set": lambda: workbench(with_a_set(1), FEET_INCHES),
    "client, laid": lambda: fireside(load(EXAMPLE), FEET_INCHES),
    "client, drawn": lambda: fireside(drawn(3), MILLIMETRES),
    "set": lambda: step_by_step(with_a_set(0), FEET_INCHES),
    "exercises, feet": lambda: exercises(FEET_INCHES),
    "exercises, millimeters": lambda: exercises(MILLIMETRES),
    "search": lambda: search(4, MILLIMETRES),
    **{f"lesson {key}": partial(lessons, key, (FEET_INCHES, MILLIMETRES)[n % 2])
       for n, key in enumerate(lesson_keys())},
}  # fmt: skip


def figures_of(walk):
    """By step of a walk."""
    return {step: figures(told) for step, told in WALKS[walk]()}


def kept():
    """By walk and step, the figures of the file."""
    return held("as_shown")


def main():
    found = (((walk, step), row) for walk in WALKS for step, row in figures_of(walk).items())
    hold("as_shown", ("walk", "step", *FIGURES), found)


if __name__ == "__main__":
    sys.exit(main())
