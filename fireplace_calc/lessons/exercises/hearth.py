"""The hearth in front of an opening: by its area, by its height, or one figure for all."""

from __future__ import annotations

from fireplace_calc.base.units import SQFT
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.limits import CodeLimit
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

FRONT = {
    "US": ("HTH-05", "HTH-07"),
    "CA": ("CA-050", "CA-052", "CA-053"),
    "UK": ("UK-045",),
}
BESIDE = {"US": ("HTH-06", "HTH-08"), "CA": ("CA-051",), "UK": ("UK-046",)}
SMALL, LARGE = "opening under 6 sq ft", "opening of 6 sq ft or more"
LOW, RAISED, HIGH = "raised up to 150 mm", "raised 150 to 300 mm", "raised over 300 mm"
ONE = "one figure for all"
RAISES = {LOW: (0, 5.5), RAISED: (6.5, 11.5), HIGH: (13, 18)}
"""How far the firebox stands over the hearth in front of it. [in]"""


def draw(task: TaskMaker) -> str:
    """Front, sides and the whole width of the smallest hearth a code allows."""
    width, high = _opening(task)
    raised = task.length(*RAISES[task.branch], 0.5) if task.book == "CA" else 0.0
    changes = {
        "opening.width": task.text(width),
        "opening.standard_height": task.text(high),
        "hearth.drop": task.text(raised),
        "base.hearth_level": task.text(raised),
    }
    front, side = (task.limit(keys[task.book], changes) for keys in (FRONT, BESIDE))
    area = width * high
    task.give("Opening width", width)
    if task.book == "US":
        task.give("Opening height", high, at=(2, 3))
        task.give("Area of the opening", task.printed(area, "area"), "area", at=(1,))
        _area(task, width, high)
    if task.book == "CA":
        task.give("Firebox floor, above the hearth in front of it", raised, at=(1, 2))
        _raise(task, raised)
    _limits(task, front, side, changes)
    _whole(task, width, front.value, side.value)
    _figure(task, width, front.value, side.value)
    over = {
        "US": f" The code asks for more from {_six(task)} of opening.",
        "CA": " The code asks for more where the firebox is raised.",
        "UK": "",
    }[task.book]
    return f"The hearth in front of this opening is to be as small as the code allows.{over}"


def _six(task: TaskMaker) -> str:
    return "6 square feet" if task.feet else task.show(6 * SQFT, "area")


def _opening(task: TaskMaker) -> tuple[float, float]:
    """An opening whose area is plainly on its side of six square feet."""
    if task.book != "US":
        return task.length(28, 44), task.length(24, 32)
    while True:
        width, high = task.length(26, 44), task.length(22, 32)
        share = width * high / (6 * SQFT)
        if (task.branch == SMALL and share < 0.97) or (task.branch == LARGE and share > 1.03):
            return width, high


def _area(task: TaskMaker, width: float, high: float) -> None:
    area = width * high
    told = task.show(area, "area")
    task.ask(
        "area",
        "What is the area of the opening?",
        area,
        "area",
        Way(
            "An area is one side times the other.",
            "Multiply the width by the height, both in the same unit.",
            f"{task.side(width)} × {task.side(high)} = {told}.",
        ),
        [
            (2 * (width + high), "You added the sides. Multiply them."),
            (area / 2, "You took half of it. An opening is no triangle."),
            (width * width, "You took the width twice."),
        ],
        at=(2, 3),
    )


def _raise(task: TaskMaker, raised: float) -> None:
    """The height of the firebox over its hearth, from two levels over the floor."""
    floor = task.length(0, 6)
    task.give("Hearth in front, above the floor", floor, at=(3,))
    task.give("Firebox floor, above the floor", floor + raised, at=(3,))
    task.ask(
        "raise",
        "How high does the firebox floor stand over the hearth in front of it?",
        raised,
        "length",
        Way(
            "Both levels start at the floor.",
            "Take the level of the hearth off the level of the firebox floor.",
            f"{task.show(floor + raised)} - {task.show(floor)} = {task.show(raised)}.",
        ),
        [
            (floor + raised, "You measured from the floor. Measure from the hearth."),
            (2 * floor + raised, "You added the levels. Subtract them."),
        ],
        at=(3,),
    )


def _limits(task: TaskMaker, front: CodeLimit, side: CodeLimit, changes: dict[str, str]) -> None:
    others = [task.limit(FRONT[task.book], changes | other).value for other in _other_cases(task)]
    beside = [task.limit(BESIDE[task.book], changes | other).value for other in _other_cases(task)]
    task.limit(FRONT[task.book], changes)
    case = {
        "US": f"The opening is {'under' if task.branch == SMALL else 'at or over'} {_six(task)}.",
        "CA": f"The firebox is {task.branch}.",
        "UK": "One figure holds for every open fire in a recess.",
    }[task.book]
    missed = "You took the figure of another case. Look which one this is."
    task.ask(
        "front",
        "How far must the hearth reach in front of the opening, at least?",
        front.value,
        "length",
        Way(
            "Find the case first, then its figure.",
            case,
            f"{case} {front.clause} asks for {task.show(front.value, limit='least')}.",
        ),
        [(side.value, "You took the figure for the sides.")]
        + [(value, missed) for value in others],
        limit="least",
        code=front,
    )
    task.ask(
        "side",
        "How far must the hearth reach past the opening on each side, at least?",
        side.value,
        "length",
        Way(
            "The sides have a figure of their own.",
            "The same clause has it, beside the figure for the front.",
            f"{side.clause} asks for {task.show(side.value, limit='least')} on each side.",
        ),
        [
            (front.value, "You took the figure for the front."),
            (2 * side.value, "You took both sides together. One side is asked."),
        ]
        + [(value, missed) for value in beside],
        at=(2, 3),
        limit="least",
        code=side,
    )


def _other_cases(task: TaskMaker) -> list[dict[str, str]]:
    if task.book == "US":
        sizes = (("24 in", "20 in"), ("60 in", "40 in"))
        return [{"opening.width": w, "opening.standard_height": h} for w, h in sizes]
    if task.book == "CA":
        raises = ("0 mm", "200 mm", "400 mm")
        return [{"hearth.drop": r, "base.hearth_level": r} for r in raises]
    return []


def _whole(task: TaskMaker, width: float, front: float, side: float) -> None:
    whole = width + 2 * side
    task.ask(
        "whole",
        "How wide is the whole hearth, at least?",
        whole,
        "length",
        Way(
            "The hearth passes the opening on both sides.",
            "Add the side twice to the width of the opening.",
            f"{task.show(width)} + 2 × {task.show(side, limit='least')} ="
            f" {task.show(whole, limit='least')}.",
        ),
        [
            (width + side, "You added one side. The hearth passes the opening on both."),
            (width, "That is the opening alone. Sparks fly sideways too."),
            (width + 2 * front, "You added the front. Add the side, twice."),
        ],
        at=(3,),
        limit="least",
    )


def _figure(task: TaskMaker, width: float, front: float, side: float) -> None:
    """Plan: jambs and opening above, hearth below."""
    half, deep = width / 2, width / 2
    jamb = half + 0.3
    figure = task.figure
    for sign in (-1, 1):
        figure.solid(box(*sorted_ends(sign * half, sign * jamb, deep)))
    figure.line([(-half, 0.0), (half, 0.0)], "hidden")
    figure.line([(-half, deep), (half, deep)], "seen")
    figure.line(box(-half - side, -front, half + side, 0.0), "seen", closed=True)
    figure.size((-half, deep), (half, deep), task.show(width), "above")
    figure.size(
        (half + side, -front), (half + side, 0.0), task.show(front, limit="least"), "right",
        asks="front",
    )  # fmt: skip
    figure.size(
        (half, -front), (half + side, -front), task.show(side, limit="least"), "below",
        asks="side",
    )  # fmt: skip
    figure.size(
        (-half - side, -front), (half + side, -front),
        task.show(width + 2 * side, limit="least"), "below", 1, asks="whole",
    )  # fmt: skip
    asked = next((s for s in task.steps if s.key in ("area", "raise")), None)
    if asked:
        name = {"area": "opening", "raise": "raised by"}[asked.key]
        figure.word((0.0, deep / 2), asked.answer(task.units), name, asks=asked.key)
    else:
        figure.word((0.0, deep / 2), "opening", "")
    figure.word((0.0, -front / 2), "hearth", "")
    task.said = "Plan of the opening, with the hearth in front of it and on both sides."


def sorted_ends(one: float, other: float, top: float) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of an upright box on the line of the face. [m]"""
    return min(one, other), 0.0, max(one, other), top


KIND = ExerciseKind(
    "hearth",
    4,
    "hearths",
    "Hearth in front of the opening",
    {"US": (SMALL, LARGE), "CA": (LOW, RAISED, HIGH), "UK": (ONE,)},
    draw,
)
