"""The flue an opening asks for: a share of its area, a cell of a table, or a least size."""

from __future__ import annotations

from math import pi, sqrt

from fireplace_calc.base.tables.liners import rectangular_liner, round_liner
from fireplace_calc.base.units import MM
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box, circle
from fireplace_calc.lessons.making.flue_table import BANDS, flue_by_table
from fireplace_calc.lessons.making.limits import CodeLimit
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

FLUES = ("FLU-10", "FLU-11", "FLU-12", "FLU-13")
ROUND, SQUARE = "round flue", "rectangular flue"
SMALL, LARGE = "small opening", "larger opening"
LINERS = {
    ROUND: ("8", "10", "12", "15", "18"),
    SQUARE: ("8.5x13", "12x16", "13x18", "18x18", "20x24"),
}
"""Rectangular ones are shorter than two to one, so that one ratio holds for the whole list."""
SIZES = {SMALL: ((16, 19), (16, 21)), LARGE: ((26, 44), (22, 32))}
"""Width and height of openings that England's table tells apart at 500 by 550 mm. [in]"""


def draw(task: TaskMaker) -> str:
    """Area of the opening, least flue, and what does."""
    wide, tall = SIZES.get(task.branch, SIZES[LARGE])
    if task.book == "CA":
        wide, tall = (24, 38), (22, 30)
    width, high = task.length(*wide), task.length(*tall)
    task.give("Opening width", width, at=(2, 3))
    task.give("Opening height", high, at=(2, 3))
    if task.branch == SMALL and task.level == 1:
        task.give("Opening width", width)
        task.give("Opening height", high)
    area = width * high
    if task.level == 1 and not (task.book == "UK" and task.branch == SMALL):
        area = task.printed(area, "area")
        task.give("Area of the opening", area, "area", key="area")
    if not (task.book == "UK" and task.branch == SMALL):
        _area(task, width, high, area)
    made = {"US": _american, "CA": flue_by_table, "UK": _english}[task.book]
    across = made(task, width, high, area)
    _figure(task, width, high, area, across)
    return {
        "US": f"A {task.branch} of clay is wanted for this opening.",
        "CA": "A round flue is wanted for this opening. The code has a table for it.",
        "UK": f"A round flue is wanted for this open fire in a recess.{_class_of(task)}",
    }[task.book]


def _class_of(task: TaskMaker) -> str:
    handed = task.level == 1 and task.branch == LARGE
    return " The opening is larger than 500 by 550 mm." if handed else ""


def _area(task: TaskMaker, width: float, high: float, area: float) -> None:
    task.ask(
        "area",
        "What is the area of the opening?",
        area,
        "area",
        Way(
            "An area is one side times the other.",
            "Multiply the width by the height, both in the same unit.",
            f"{task.side(width)} × {task.side(high)} = {task.show(area, 'area')}.",
        ),
        [
            (2 * (width + high), "You added the sides. Multiply them."),
            (area / 2, "You took half of it. An opening is no triangle."),
        ],
        at=(2, 3),
    )


def _american(task: TaskMaker, width: float, high: float, area: float) -> float:
    """A twelfth for a round flue, a tenth for a rectangular one; then the liner."""
    shape = {ROUND: "round", SQUARE: "rectangular"}[task.branch]
    sizes = LINERS[task.branch]
    changes = {"opening.width": task.text(width), "opening.standard_height": task.text(high)}
    code = task.limit(FLUES, changes | {"flue.shape": shape, "flue.size": sizes[1]})
    parts = round(width * high / code.value)
    other, flat = (10, 8) if task.branch == ROUND else (12, 8)
    least = area / parts
    task.ask(
        "least",
        "How large must the net area of the flue be, at least?",
        least,
        "area",
        Way(
            "The flue is a share of the opening.",
            f"For a {task.branch} the code asks for 1/{parts} of the opening.",
            f"{task.show(area, 'area')} ÷ {parts} = {task.show(least, 'area', 'least')}.",
        ),
        [
            (area / other, "You took the share for another shape of flue."),
            (area / flat, "You took the share for a flue twice as long as wide, or longer."),
            (area * parts, "You multiplied. Divide the opening by the share."),
        ],
        limit="least",
        code=code,
    )
    if task.level == 3:
        _liner(task, sizes, least, code)
    return 0.0 if task.branch == ROUND else sqrt(least)


def _liner(task: TaskMaker, sizes: tuple[str, ...], least: float, code: CodeLimit) -> None:
    read = round_liner if task.branch == ROUND else rectangular_liner
    nets = {size: task.printed(read(size).net_area, "area") for size in sizes}
    for size, net in nets.items():
        task.give(f"Liner {size}, net area", net, "area")
    right = next(size for size, net in nets.items() if net >= least)
    options = {
        size: "You took one that is too small. Its net area does not reach the least."
        if net < least
        else "You took a larger one than is needed. A smaller one of the list does."
        for size, net in nets.items()
    }
    task.choose(
        "liner",
        "Which is the smallest liner of the list that is large enough?",
        right,
        options,
        Way(
            "Only the net area counts, not the size in the name.",
            "Go down the list to the first net area that reaches the least.",
            f"The {right} has {task.show(nets[right], 'area')}. The next smaller is too small.",
        ),
        code=code,
    )


def _english(task: TaskMaker, width: float, high: float, area: float) -> float:
    """England: 200 mm for a small opening, a share of the area for a larger one."""
    asked = (0.48, 0.54) if task.branch == SMALL else (width, high)
    changes = {
        "opening.width": task.text(asked[0]),
        "opening.standard_height": task.text(asked[1]),
        "flue.shape": "round",
        "flue.size": "10",
    }
    row = "up to 500 by 550 mm" if task.branch == SMALL else "larger than 500 by 550 mm"
    task.choose(
        "row",
        "Which row of the table does this opening belong to?",
        row,
        {
            "up to 500 by 550 mm": "You took the row for a small opening. One side is too large.",
            "larger than 500 by 550 mm": "You took the row for a larger opening. Both sides fit.",
        },
        Way(
            "Both sides must fit for the small row.",
            "Compare the width with 500 mm and the height with 550 mm.",
            f"{task.show(width)} by {task.show(high)} is {row}.",
        ),
        at=(2, 3),
    )
    code = task.limit(("UK-001",) if task.branch == SMALL else ("UK-004",), changes)
    if task.branch == SMALL:
        across = code.value
        why = f"{code.clause} asks for {task.show(across, limit='least')} across."
        wrong = [(across / 2, "You took the radius. The question is the width across.")]
    else:
        least = code.value * area
        share = f"{code.value:.0%}"
        task.ask(
            "least",
            "How large must the area of the flue be, at least?",
            least,
            "area",
            Way(
                "The flue is a share of the opening.",
                f"A larger opening asks for {share} of its area.",
                f"{share} of {task.show(area, 'area')} = {task.show(least, 'area', 'least')}.",
            ),
            [
                (area * 0.1, f"You took a tenth. England asks for {share}."),
                (area / code.value, "You divided by the share. Multiply."),
                (area * 0.015, "Your decimal point is one place off."),
            ],
            limit="least",
            code=code,
        )
        across = sqrt(4 * least / pi)
        why = f"√(4 × {task.show(least, 'area', 'least')} / π) ="
        why += f" {task.show(across, limit='least')}."
        wrong = [
            (sqrt(least), "You took the side of a square flue. A round one is wider across."),
            (across / 2, "You took the radius. The question is the width across."),
            (200 * MM, "You took the figure for a small opening."),
        ]
    task.ask(
        "across",
        "How wide must a round flue be across the inside, at least?",
        across,
        "length",
        Way(
            "A small opening has a fixed size. A larger one goes by its area.",
            "For a larger opening: four times the area over 3.14, then the square root.",
            why,
        ),
        wrong,
        at=(1, 2, 3) if task.branch == SMALL else (3,),
        limit="least",
        code=code,
    )
    if task.branch == SMALL:
        _bore(task, across)
    return across


def _bore(task: TaskMaker, across: float) -> None:
    net = pi / 4 * across**2
    task.ask(
        "net",
        "What is the area inside that flue?",
        net,
        "area",
        Way(
            "A circle is 3.14 times its radius squared.",
            "Halve the width across, square that, and multiply by 3.14.",
            f"3.14 × {task.side(across / 2)} × {task.side(across / 2)} = {task.show(net, 'area')}.",
        ),
        [
            (across**2, "You took a square flue. This one is round."),
            (pi * across**2, "You squared the width across. Square half of it."),
        ],
        at=(3,),
    )


def _figure(task: TaskMaker, width: float, high: float, area: float, across: float) -> None:
    """Front of the opening, and beside it the flue from above at the same scale."""
    figure, wall = task.figure, 0.2
    for sign in (-1, 1):
        low, top = sorted((sign * width / 2, sign * (width / 2 + wall)))
        figure.solid(box(low, 0.0, top, high))
    figure.solid(box(-width / 2 - wall, high, width / 2 + wall, high + wall))
    figure.line([(-width / 2 - wall, 0.0), (width / 2 + wall, 0.0)], "cut")
    handed = task.level == 1 and not task.given[0].name.startswith("Opening")
    if not handed:
        figure.size((-width / 2, 0.0), (width / 2, 0.0), task.show(width), "below")
        figure.size((-width / 2, 0.0), (-width / 2, high), task.show(high), "left")
    if task.branch != SMALL:
        figure.word((0.0, high / 2), task.show(area, "area"), "opening", asks="area")
    least = next((s for s in task.steps if s.key == "least"), None)
    shown = across or sqrt(4 * (least.expected if least else 0.05) / pi)
    middle = (width / 2 + wall + 0.15 + shown / 2, high / 2)
    if task.branch == SQUARE:
        half = shown / 2
        figure.line(
            box(middle[0] - half, middle[1] - half, middle[0] + half, middle[1] + half),
            "cut", closed=True,
        )  # fmt: skip
    else:
        figure.line(circle(middle, shown), "cut", closed=True)
    name = "flue"
    if least is not None:
        figure.word(middle, task.show(least.expected, "area", "least"), name, asks="least")
    elif task.branch == SMALL and task.level == 3:
        net = pi / 4 * across**2
        figure.word(middle, task.show(net, "area"), name, asks="net")
    across_said = task.show(across, limit="least")
    low = middle[1] - shown / 2
    figure.size(
        (middle[0] - shown / 2, low), (middle[0] + shown / 2, low),
        across_said, "below", asks="across",
    )  # fmt: skip
    for step in task.steps:
        if step.key == "most":
            figure.word(middle, step.answer(task.units), "at most", asks="most")
    task.said = "Front of the opening, and the flue seen from above at the same scale."


KIND = ExerciseKind(
    "flue",
    1,
    "opening-and-flue",
    "Flue for an opening",
    {"US": (ROUND, SQUARE), "CA": BANDS, "UK": (SMALL, LARGE)},
    draw,
)
