"""The throat between splayed sides: its free area, against the flue or against the air vent."""

from __future__ import annotations

from math import sqrt

from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

ENOUGH, SHORT = "throat large enough", "throat too small"
VENT_ENOUGH, VENT_SHORT = "vent large enough", "vent too small"


def draw(task: TaskMaker) -> str:
    """Widths between the sides, free area, and what is to spare."""
    width, depth = task.length(32, 46, 2), task.length(20, 24)
    back, start = width - task.length(10, 16, 2), task.length(3, 6)
    deep = task.length(4, 7, 0.5)
    first, last = (width - (width - back) * at / depth for at in (start, start + deep))
    first, last = (
        (first, last) if task.level == 3 else (task.on_tape(first, 1), task.on_tape(last, 1))
    )
    area = deep * (first + last) / 2
    task.give("Opening width", width, at=(3,))
    task.give("Back width", back, at=(3,))
    task.give("Firebox depth", depth, at=(3,))
    task.give("Front of the throat, behind the opening", start, at=(3,))
    task.give("Throat, front to back", deep, at=(2, 3))
    task.give("Width at the front of the throat", first, at=(2,), key="first")
    task.give("Width at the back of the throat", last, at=(2,), key="last")
    task.give("Free area of the throat", task.printed(area, "area"), "area", at=(1,), key="area")
    area = task.printed(area, "area") if task.level == 1 else area
    if task.level == 3:
        _widths(task, width, back, depth, (start, deep))
    _area(task, (first, last), deep, area)
    (_against_flue if task.book == "US" else _against_vent)(task, area)
    _figure(task, width, back, depth, (start, deep), (first, last))
    return (
        "The sides of the firebox run straight from the opening to the back. The throat lies level"
        " between them."
    )


def _widths(
    task: TaskMaker, width: float, back: float, depth: float, throat: tuple[float, float]
) -> None:
    start, deep = throat
    first, last = (width - (width - back) * at / depth for at in (start, start + deep))
    straight = "You took the opening's width. The sides close in behind the opening."
    for key, name, at, here, other in (
        ("first", "front", start, first, last),
        ("last", "back", start + deep, last, first),
    ):
        task.ask(
            key,
            f"How wide is the firebox at the {name} of the throat?",
            here,
            "length",
            Way(
                "The sides close in evenly from the opening to the back.",
                f"Take the share of the depth: {task.side(at)} of {task.side(depth)}.",
                f"{task.side(width)} - {task.side(width - back)} × {task.side(at)} /"
                f" {task.side(depth)} = {task.show(here)}.",
            ),
            [
                (width, straight),
                (other, "You took the other edge of the throat."),
                (back, "You took the back of the firebox."),
                ((width + here) / 2, "You let one side close in. Both sides do."),
            ],
        )


def _area(task: TaskMaker, widths: tuple[float, float], deep: float, area: float) -> None:
    first, last = widths
    task.ask(
        "area",
        "What is the free area of the throat?",
        area,
        "area",
        Way(
            "The throat narrows toward the back.",
            "Multiply the depth of the throat by the middle of the two widths.",
            f"({task.side(first)} + {task.side(last)}) / 2 × {task.side(deep)} ="
            f" {task.show(area, 'area')}.",
        ),
        [
            (first * deep, "You took the front width. Take the middle of the two."),
            (last * deep, "You took the back width. Take the middle of the two."),
            (2 * area, "You added the widths. Take half of the sum."),
        ],
        at=(2, 3),
    )


def _against_flue(task: TaskMaker, area: float) -> None:
    code = task.limit(("THR-03",))
    low, high = (0.6, 0.9) if task.branch == ENOUGH else (1.08, 1.35)
    flue = task.printed(area * (low + (high - low) * task.rng.randrange(11) / 10), "area")
    spare = area - flue
    task.give("Net area of the flue", flue, "area")
    task.ask(
        "spare",
        "How much larger is the throat than the flue, with a minus sign if smaller?",
        spare,
        "area",
        Way(
            "The throat must be no smaller than the flue.",
            "Take the area of the flue off the area of the throat.",
            f"{task.show(area, 'area')} - {task.show(flue, 'area')} = {task.show(spare, 'area')}.",
        ),
        [
            (area + flue, "You added the areas. Subtract the flue."),
            (-spare, "You subtracted the other way around."),
            (area, "You gave the throat alone. Take the flue off."),
        ],
        code=code,
    )


def _against_vent(task: TaskMaker, area: float) -> None:
    """England: the permanent vent has half of the throat's area."""
    code = task.limit(("UK-035",), {"house.air_inlet": "0.03 m2"})
    least = area * code.value
    low, high = (1.05, 1.5) if task.branch == VENT_ENOUGH else (0.5, 0.92)
    vent = task.printed(least * (low + (high - low) * task.rng.randrange(11) / 10), "area")
    task.give("Free area of the air vent", vent, "area", at=(3,))
    share = f"{code.value:.0%}"
    task.ask(
        "vent",
        "How large must the free area of the air vent be, at least?",
        least,
        "area",
        Way(
            "The vent goes by the throat.",
            f"The vent needs {share} of the throat.",
            f"{share} of {task.show(area, 'area')} = {task.show(least, 'area', 'least')}.",
        ),
        [
            (area, f"You took all of the throat. The vent needs {share} of it."),
            (area / 4, "You took a quarter. Take half."),
            (2 * area, "You doubled the throat. Halve it."),
        ],
        limit="least",
        code=code,
    )
    spare = vent - least
    task.ask(
        "spare",
        "How much is there to spare, with a minus sign if the vent is too small?",
        spare,
        "area",
        Way(
            "Hold the vent against what it needs.",
            "Take what is needed off what is there.",
            f"{task.show(vent, 'area')} - {task.show(least, 'area')} = {task.show(spare, 'area')}.",
        ),
        [
            (-spare, "You subtracted the other way around."),
            (vent - area, "You held the vent against the throat. Take half of the throat."),
        ],
        at=(3,),
    )


def _figure(
    task: TaskMaker,
    width: float,
    back: float,
    depth: float,
    throat: tuple[float, float],
    widths: tuple[float, float],
) -> None:
    """Plan of the firebox, opening below, with the throat across it."""
    figure, (start, deep), (first, last) = task.figure, throat, widths
    wall, half, behind = 0.2, width / 2, back / 2
    for sign in (-1, 1):
        figure.solid(
            [(sign * half, 0.0), (sign * (half + wall), 0.0), (sign * (half + wall), depth),
             (sign * behind, depth)]
        )  # fmt: skip
    figure.solid(
        [(-half - wall, depth), (half + wall, depth), (half + wall, depth + wall),
         (-half - wall, depth + wall)]
    )  # fmt: skip
    figure.line([(-half, 0.0), (half, 0.0)], "hidden")
    figure.line(
        [(-first / 2, start), (first / 2, start), (last / 2, start + deep),
         (-last / 2, start + deep)],
        "seen", closed=True,
    )  # fmt: skip
    if task.level == 3:
        figure.size((-half, 0.0), (half, 0.0), task.show(width), "below", 1)
        figure.size((-behind, depth), (behind, depth), task.show(back), "above", 1)
        figure.size((-half, 0.0), (-half, depth), task.show(depth), "left", 1)
        figure.size((-half, 0.0), (-half, start), task.show(start), "left")
    figure.size((-first / 2, start), (first / 2, start), task.show(first), "below", asks="first")
    figure.size(
        (-last / 2, start + deep), (last / 2, start + deep), task.show(last), "above", asks="last"
    )
    if task.level > 1:
        figure.size((-half, start), (-half, start + deep), task.show(deep), "left")
    figure.word((0.0, start + deep / 2), task.show(deep * (first + last) / 2, "area"), "throat",
                asks="area")  # fmt: skip
    _beside(task, half + wall)
    task.said = "Plan of the firebox with the throat across it."


def _beside(task: TaskMaker, edge: float) -> None:
    """Flue or vent as a square of its area, beside the plan at the same scale."""
    for step in task.steps:
        if step.key == "vent" or (step.key == "spare" and task.book == "US"):
            area = step.expected if step.key == "vent" else _flue_area(task)
            half, x = sqrt(area) / 2, edge + 0.4
            task.figure.line(box(x - half, 0.0, x + half, 2 * half), "cut", closed=True)
            asks, name = ("vent", "vent, at least") if step.key == "vent" else ("", "flue")
            told = task.show(area, "area", "least" if asks else "")
            task.figure.word((x, half), told, name, asks=asks)
        if step.key == "spare":
            task.figure.word((edge + 0.4, 0.5), task.show(step.expected, "area"), "to spare",
                             asks="spare")  # fmt: skip


def _flue_area(task: TaskMaker) -> float:
    return next(float(g.value) for g in task.given if g.name.startswith("Net area"))


KIND = ExerciseKind(
    "throat",
    5.2,
    "firebox-lintel-throat",
    "Throat between the sides",
    {"US": (ENOUGH, SHORT), "UK": (VENT_ENOUGH, VENT_SHORT)},
    draw,
)
