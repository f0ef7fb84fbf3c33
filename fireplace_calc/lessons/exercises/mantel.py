"""Wood on the face: how near the opening, how far out, and how far away a deep shelf has to be."""

from __future__ import annotations

from fireplace_calc.base.units import INCH, MM
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.limits import CodeLimit
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

THIN, DEEP = "shallow shelf", "deep shelf"
NEAR = {"US": ("CLR-07",), "CA": ("CA-061",)}
STEP = {"US": ("CLR-08",), "CA": ("CA-062",)}
SHARE = 8
"""A piece within the band stands out an eighth of its distance."""


def draw(task: TaskMaker) -> str:
    """Nearest wood, the projection that is allowed, and the distance of a shelf."""
    near = task.limit(NEAR[task.book], _trim(task, 9 * INCH, INCH / 2))
    out = _projection(task)
    opening = task.length(26, 34)
    if task.book == "US":
        away, code = _american(task, near, out)
    else:
        away, code = _canadian(task, near, out)
    task.give("Projection of the shelf", out)
    task.give("Top of the opening, above the hearth", opening, at=(3,))
    _nearest(task, near)
    if task.book == "US":
        _most(task, near)
    _away(task, near, away, out, code)
    task.ask(
        "level",
        "How high above the hearth must the underside of the shelf be, at least?",
        opening + away,
        "length",
        Way(
            "The distance counts from the top of the opening.",
            "Add the distance to the height of the opening.",
            f"{task.show(opening)} + {task.show(away, limit='least')} ="
            f" {task.show(opening + away, limit='least')}.",
        ),
        [
            (away, "You measured from the opening. Measure from the hearth."),
            (opening + near.value, "You used the nearest distance. This shelf needs more."),
            (opening + out, "You added the projection. Add the distance."),
        ],
        at=(3,),
        limit="least",
    )
    _figure(task, opening, away, out)
    return "A wooden shelf goes on the face over the opening. Wood near the fire chars bit by bit."


def _trim(task: TaskMaker, distance: float, out: float) -> dict[str, object]:
    piece = {"name": "shelf", "distance": task.text(distance), "projection": task.text(out)}
    return {"surround.trim": [piece]}


def _projection(task: TaskMaker) -> float:
    if task.book == "US":
        low, high = (13, 23) if task.branch == THIN else (32, 128)
        return task.on_tape(task.rng.randrange(low, high + 1) / 16 * INCH, 1)
    low, high = (12, 36) if task.branch == THIN else (45, 220)
    return task.on_tape(task.rng.randrange(low, high + 1, 2) * MM, 1)


def _american(task: TaskMaker, near: CodeLimit, out: float) -> tuple[float, CodeLimit]:
    """An eighth of the distance between six and twelve inches; beyond, as deep as one likes."""
    free = 2 * near.value if task.feet else 305 * MM
    far = task.limit(STEP["US"], _trim(task, 9 * INCH, out))
    return (max(near.value, SHARE * out) if task.branch == THIN else free), far


def _canadian(task: TaskMaker, near: CodeLimit, out: float) -> tuple[float, CodeLimit]:
    deep = task.limit(STEP["CA"], _trim(task, 0.4, 0.1))
    return (near.value, near) if task.branch == THIN else (deep.value, deep)


def _nearest(task: TaskMaker, near: CodeLimit) -> None:
    told = task.show(near.value, limit="least")
    task.ask(
        "near",
        "How near to the opening may any wood come, at the least distance?",
        near.value,
        "length",
        Way(
            "One figure holds for every piece, however flat.",
            f"{near.clause} has it: nothing that burns comes nearer.",
            f"{near.clause} asks for {told}.",
        ),
        [
            (2 * near.value, "You took the distance for a deep shelf."),
            (near.value / 2, "You took half of it."),
        ],
        at=(2, 3),
        limit="least",
        code=near,
    )


def _most(task: TaskMaker, near: CodeLimit) -> None:
    """How far a flat molding may stand out."""
    distance = task.on_tape(task.rng.randrange(52, 93) / 8 * INCH)
    found = task.limit(STEP["US"], _trim(task, distance, INCH / 4))
    most = distance / SHARE
    task.give("Molding, from the edge of the opening", distance, at=(2, 3))
    task.ask(
        "most",
        "How far may the molding stand out, at most?",
        most,
        "length",
        Way(
            "It depends on the distance from the opening.",
            "The molding may stand out an eighth of its distance.",
            f"{task.side(distance)} ÷ 8 = {task.show(most, limit='most')}.",
        ),
        [
            (
                (distance - near.value) / SHARE,
                "You started where wood may start. Start at the opening.",
            ),
            (distance, "You gave its distance. It may stand out an eighth of that."),
            (distance / 4, "You took a quarter. Take an eighth."),
            (2 * near.value / SHARE, "You took the far end of the band. This piece is nearer."),
        ],
        at=(2, 3),
        limit="most",
        code=found,
    )


def _away(task: TaskMaker, near: CodeLimit, away: float, out: float, code: CodeLimit) -> None:
    told, least = task.show(away, limit="least"), task.show(near.value, limit="least")
    if task.book == "US":
        eight = task.show(SHARE * out)
        free = task.show(2 * near.value if task.feet else 305 * MM)
        if task.branch == THIN:
            more = f"Up to {free} away it may stand out an eighth of its distance."
            done = f"8 × {task.side(out)} = {eight}."
        else:
            more = f"8 times its projection is more than {free}. Beyond {free} any depth will do."
            done = f"8 × {task.side(out)} = {eight}. From {free} on it may be as deep as you like."
        wrong = [
            (SHARE * out, f"You went on beyond {free}. From there on any depth will do."),
            (out, "You gave the projection. The shelf must be 8 times as far away."),
            (near.value, "You took the figure for a flat piece. This shelf stands out."),
            (near.value + SHARE * out, "You started where wood may start. Start at the opening."),
            (out / SHARE, "You divided by 8. Multiply."),
        ]
    else:
        other = {THIN: "less", DEEP: "more"}[task.branch]
        more = f"Is the projection more than 38 mm? This one is {other}."
        done = f"The projection is {task.show(out)}, {other} than 38 mm. So it is {told}."
        wrong = [
            (2 * near.value, "You took the figure for a shelf deeper than 38 mm."),
            (near.value, "You took the figure for flat trim. This shelf is deeper than 38 mm."),
            (out, "You gave the projection. The question is the distance."),
            (near.value + out, "You added the projection. The figure stands alone."),
        ]
    task.ask(
        "away",
        "How far above the opening must this shelf be, at least?",
        away,
        "length",
        Way(f"It depends on how far the shelf stands out. Never less than {least}.", more, done),
        wrong,
        limit="least",
        code=code,
    )


def _figure(task: TaskMaker, opening: float, away: float, out: float) -> None:
    """Section through the face: opening below, shelf above."""
    figure, deep = task.figure, 8 * INCH
    top = opening + away + 0.25
    figure.solid(box(-deep, opening, 0.0, top))
    figure.line([(-1.5 * deep, 0.0), (0.5 * deep, 0.0)], "cut")
    figure.line([(0.0, 0.0), (0.0, opening)], "hidden")
    figure.solid(box(0.0, opening + away, out, opening + away + 2 * INCH), "timber")
    figure.size((0.0, opening), (0.0, opening + away), task.show(away, limit="least"), "right",
                asks="away")  # fmt: skip
    figure.size((0.0, opening + away), (out, opening + away), task.show(out), "above")
    if task.level == 3:
        figure.size((-deep, 0.0), (-deep, opening), task.show(opening), "left")
        figure.size((0.0, 0.0), (0.0, opening + away), task.show(opening + away, limit="least"),
                    "right", 1, asks="level")  # fmt: skip
    for step in task.steps:
        if step.key == "near":
            figure.size((0.0, opening), (0.0, opening + step.expected), step.answer(task.units),
                        "right", 2, asks="near")  # fmt: skip
        if step.key == "most":
            figure.word((-0.75 * deep, 0.25 * opening), step.answer(task.units),
                        "molding", asks="most")  # fmt: skip
    figure.word((-0.75 * deep, 0.7 * opening), "opening")
    task.said = "Section through the face, with the shelf over the opening."


KIND = ExerciseKind(
    "mantel",
    3,
    "clearances-and-mantel",
    "Wood over the opening",
    {"US": (THIN, DEEP), "CA": (THIN, DEEP)},
    draw,
)
