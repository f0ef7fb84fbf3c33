"""A smoke chamber: how far its sides draw in, and how tall that makes it."""

from __future__ import annotations

from math import pi, sin, tan

from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.limits import CodeLimit
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

STEPPED, SMOOTH, EVEN = "corbelled brick", "sloped units", "any way of building"
SLOPES = {STEPPED: ("SMK-06",), SMOOTH: ("SMK-05",), EVEN: ("CA-058",)}


def draw(task: TaskMaker) -> str:
    """Run, rise, whole height, and the greatest height where the code has one."""
    width, flue = task.length(32, 46, 2), task.length(8, 13)
    throat = width - task.length(2, 5)
    transition = task.length(3, 6)
    run = (throat - flue) / 2
    lean, other = _lean(task)
    if task.level == 1:
        run = task.on_tape(run, 1)
    rise = run / tan(lean.value)
    task.give("Width at the throat", throat, at=(2, 3))
    task.give("Flue, inside width", flue, at=(2, 3))
    task.give("Each side draws in", run, at=(1,), key="run")
    task.give("Upright part on top", transition, at=(3,))
    task.give("Opening width", width, at=(3,))
    _run(task, throat, flue, run)
    _rise(task, run, rise, lean, other)
    _whole(task, rise, transition, run * tan(lean.value))
    if task.book == "US":
        _tallest(task, width, throat, (rise, transition))
    _figure(task, (throat, flue), rise, transition)
    built = {
        STEPPED: " of corbelled brick. The steps are parged smooth afterwards, and the limit stays",
        SMOOTH: " of sloped units with a smooth face",
        EVEN: "",
    }[task.branch]
    return (
        f"The sides of a smoke chamber{built}. They draw in evenly from the throat to the flue."
        if task.branch == STEPPED
        else f"A smoke chamber{built} draws in evenly from the throat to the flue."
    )


def _lean(task: TaskMaker) -> tuple[CodeLimit, float]:
    """The steepest lean that is allowed, and the one of the other way of building. [rad]"""

    def asked(branch: str) -> CodeLimit:
        built = "corbelled" if branch == STEPPED else "sloped units"
        return task.limit(SLOPES[branch], {"smoke_chamber.construction": built})

    if task.book != "US":
        return asked(EVEN), pi / 6
    other = asked(SMOOTH if task.branch == STEPPED else STEPPED).value
    return asked(task.branch), other


def _run(task: TaskMaker, throat: float, flue: float, run: float) -> None:
    task.ask(
        "run",
        "How far does each side draw in?",
        run,
        "length",
        Way(
            "Both sides draw in alike.",
            "Take the flue off the width at the throat. Each side takes half.",
            f"({task.side(throat)} - {task.side(flue)}) / 2 = {task.show(run)}.",
        ),
        [
            (2 * run, "You took both sides together. Each side draws in half."),
            (throat / 2, "You closed the flue. Take its width off first."),
            ((throat + flue) / 2, "You added the flue. Take it off."),
        ],
        at=(2, 3),
    )


def _rise(task: TaskMaker, run: float, rise: float, lean: CodeLimit, other: float) -> None:
    degrees = round(lean.value * 180 / pi)
    tangent = f"{tan(lean.value):.3f}"
    task.ask(
        "rise",
        "How high must the sloping part be, at least?",
        rise,
        "length",
        Way(
            "The code limits the lean from upright.",
            f"It allows {degrees} degrees from upright. Divide the run by its tangent.",
            f"{task.side(run)} / {tangent} = {task.show(rise, limit='least')}.",
        ),
        [
            (run * tan(lean.value), "You counted the lean from level. It counts from upright."),
            (run / sin(lean.value), "You measured along the slope. The height is upright."),
            (2 * rise, "You took both sides together. Each side draws in half."),
            (run / tan(other), "You took the lean for another way of building."),
        ],
        limit="least",
        code=lean,
    )


def _whole(task: TaskMaker, rise: float, transition: float, wrong: float) -> None:
    task.ask(
        "whole",
        "How high must the whole smoke chamber be, at least?",
        rise + transition,
        "length",
        Way(
            "The upright part stands on top of the slope.",
            "Add the upright part to the sloping part.",
            f"{task.show(rise, limit='least')} + {task.show(transition)} ="
            f" {task.show(rise + transition, limit='least')}.",
        ),
        [
            (rise, "You left the upright part out."),
            (rise - transition, "You took the upright part off. It comes on top."),
            (wrong + transition, "You counted the lean from level. It counts from upright."),
        ],
        at=(3,),
        limit="least",
    )


def _tallest(task: TaskMaker, width: float, throat: float, heights: tuple[float, float]) -> None:
    code = task.limit(("SMK-04",), {"opening.width": task.text(width)})
    task.ask(
        "tallest",
        "How high may the whole smoke chamber be, at most?",
        width,
        "length",
        Way(
            "A tall chamber lets the smoke cool.",
            "The chamber may be as tall as the opening is wide.",
            f"{code.clause}: as tall as the opening is wide, {task.show(width, limit='most')}.",
        ),
        [
            (throat, "You took the width at the throat. The width of the opening counts."),
            (sum(heights), "That is the least height. The question is the greatest."),
            (width + heights[1], "You added the upright part. It counts in."),
        ],
        at=(3,),
        limit="most",
        code=code,
    )


def _figure(task: TaskMaker, widths: tuple[float, float], rise: float, transition: float) -> None:
    """Front section: throat below, flue above, sides leaning in between."""
    figure, (throat, flue), wall = task.figure, widths, 0.2
    low, high, top = throat / 2, flue / 2, rise + transition
    for sign in (-1, 1):
        figure.solid(
            [(sign * low, 0.0), (sign * high, rise), (sign * high, top),
             (sign * (high + wall), top), (sign * (high + wall), rise), (sign * (low + wall), 0.0)]
        )  # fmt: skip
    figure.line([(-low, 0.0), (low, 0.0)], "hidden")
    figure.line([(low, 0.0), (low, rise), (high, rise)], "hidden", after="rise")
    if task.level > 1:
        figure.size((-low, 0.0), (low, 0.0), task.show(throat), "below", 1)
        figure.size((-high, top), (high, top), task.show(flue), "above")
    run = (throat - flue) / 2
    figure.size((high, 0.0), (low, 0.0), task.show(run), "below", 0, asks="run")
    figure.size((low + wall, 0.0), (low + wall, rise), task.show(rise, limit="least"), "right",
                asks="rise")  # fmt: skip
    if task.level == 3:
        figure.size((-high, rise), (-high, top), task.show(transition), "left")
        figure.size((low + wall, 0.0), (low + wall, top), task.show(top, limit="least"), "right",
                    1, asks="whole")  # fmt: skip
    for step in task.steps:
        if step.key == "tallest":
            figure.size((low + wall, 0.0), (low + wall, step.expected), step.answer(task.units),
                        "right", 2, asks="tallest")  # fmt: skip
    task.said = "Section through a smoke chamber, from the throat below to the flue above."


KIND = ExerciseKind(
    "chamber",
    6,
    "smoke-chamber",
    "Smoke chamber by its slope",
    {"US": (STEPPED, SMOOTH), "CA": (EVEN,)},
    draw,
)
