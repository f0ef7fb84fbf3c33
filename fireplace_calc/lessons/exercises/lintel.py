"""The lintel over an opening: its bearing, and the wall it carries."""

from __future__ import annotations

from fireplace_calc.base.units import FOOT, POUND
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

ALONE, BEAM = "the wall arches", "a beam bears over it"
BEARING = ("LIN-01",)


def draw(task: TaskMaker) -> str:
    """Height of the triangle, weight of the wall within it, and what the lintel carries."""
    span, depth = task.length(30, 54, 2), task.length(4, 8)
    cover = task.length(34, 60, 2)
    wall, said = _wall(task)
    beam = task.printed(task.rng.randrange(200, 901, 50) * POUND, "mass")
    task.give("Span", span)
    task.give("Weight of the wall, by its face", said, "word", at=(2, 3))
    task.give("Wall over the lintel, height", cover, at=(2, 3))
    if task.branch == BEAM:
        task.give("Load of the beam", beam, "mass", at=(2, 3))
    bears = task.branch == BEAM
    _height(task, span, cover, bears)
    _weight(task, span, cover, wall, bears)
    if bears:
        whole = wall * span * cover + beam
        _carried(task, wall * span * cover, beam)
    else:
        whole = wall * span**2 / 4
    if task.book == "US":
        _bearing(task, span)
    else:
        _each_end(task, whole)
    task.source = "engineering judgement: wall within 45 degrees, or all of it under a beam"
    _figure(task, span, depth, cover, bears)
    return (
        "A beam bears on the wall over the opening. Such a wall is not trusted to arch:"
        " all of it over the span counts, and the load of the beam."
        if bears
        else "Nothing bears on the wall over the opening. The lintel carries what lies within 45"
        " degrees. The rest arches past it."
    )


def _wall(task: TaskMaker) -> tuple[float, str]:
    """Weight of a wall by its face, invented within what is usual [kg/m2], and as it is told."""
    if task.feet:
        pounds = task.rng.choice((40, 50, 80, 90))
        return pounds * POUND / FOOT**2, f"{pounds} lb/ft²"
    kilos = task.rng.choice((200, 240, 400, 440))
    return float(kilos), f"{kilos} kg/m²"


def _height(task: TaskMaker, span: float, cover: float, bears: bool) -> None:
    rise = cover if bears else span / 2
    done = (
        f"A beam bears over it, so all of the wall counts: {task.show(cover)}."
        if bears
        else f"{task.show(span)} / 2 = {task.show(rise)}."
    )
    if bears and task.level == 1:
        task.give("Wall over the lintel, height", cover)
    task.ask(
        "height",
        "How high is the wall that counts, over the lintel?",
        rise,
        "length",
        Way(
            "Does the wall arch, or does something bear on it?",
            "A wall that arches counts as a triangle of 45 degrees. Under a beam all of it counts.",
            done,
        ),
        [
            (span / 2, "You took the triangle. Under a beam the wall is not trusted to arch."),
            (span, "You took the whole span. At 45 degrees the two sides meet at half of it."),
            (cover, "You took all of the wall. What is outside the triangle arches past."),
        ],
    )


def _weight(task: TaskMaker, span: float, cover: float, wall: float, bears: bool) -> None:
    face = span * cover if bears else span**2 / 4
    weight = face * wall
    told = f"{face / FOOT**2:.2f} ft²" if task.feet else f"{face:.3f} m²"
    sum_ = (
        f"{task.side(span)} × {task.side(cover)}"
        if bears
        else f"{task.side(span)} × {task.side(span / 2)} / 2"
    )
    task.ask(
        "weight",
        "How much does that wall weigh?",
        weight,
        "mass",
        Way(
            "First the face of the wall that counts, then its weight.",
            "A triangle is half of its base times its height. A rectangle is the whole.",
            f"{sum_} = {told}. Times the weight by the face: {task.show(weight, 'mass')}.",
        ),
        [
            (2 * weight, "You took a rectangle. A triangle is half of that."),
            (weight / 2, "You took a triangle. Under a beam it is a rectangle."),
            (span * cover * wall, "You took all of the wall. Only the triangle counts."),
        ],
        at=(2, 3),
    )


def _carried(task: TaskMaker, wall: float, beam: float) -> None:
    task.ask(
        "carried",
        "How much does the lintel carry, its own weight apart?",
        wall + beam,
        "mass",
        Way(
            "The wall and the beam both come down on it.",
            "Add the load of the beam to the weight of the wall.",
            f"{task.show(wall, 'mass')} + {task.show(beam, 'mass')} ="
            f" {task.show(wall + beam, 'mass')}.",
        ),
        [
            (wall, "You left the beam out."),
            (beam, "You left the wall out."),
            (wall + beam / 2, "You took half of the beam. All of it bears here."),
        ],
        at=(3,),
    )


def _bearing(task: TaskMaker, span: float) -> None:
    """The shortest lintel: the opening and a bearing at each end."""
    code = task.limit(BEARING, {"lintel.material": "steel"})
    long = span + 2 * code.value
    bearing = task.show(code.value, limit="least")
    task.ask(
        "long",
        "How long must the lintel be, at least?",
        long,
        "length",
        Way(
            "The lintel rests on the wall at both ends.",
            f"{code.clause} asks for {bearing} of bearing at each end.",
            f"{task.show(span)} + 2 × {bearing} = {task.show(long, limit='least')}.",
        ),
        [
            (span + code.value, "You added one bearing. It rests at both ends."),
            (span, "You gave the span. It must rest on the wall too."),
        ],
        at=(3,),
        limit="least",
        code=code,
    )


def _each_end(task: TaskMaker, whole: float) -> None:
    task.ask(
        "end",
        "How much comes down on each end of the lintel?",
        whole / 2,
        "mass",
        Way(
            "The load stands in the middle.",
            "Each end takes half of it.",
            f"{task.show(whole, 'mass')} / 2 = {task.show(whole / 2, 'mass')}.",
        ),
        [
            (whole, "You gave all of it. It is shared by two ends."),
            (whole / 4, "You halved it twice."),
        ],
        at=(3,),
    )


def _figure(task: TaskMaker, span: float, depth: float, cover: float, bears: bool) -> None:
    """Front: opening, lintel on its two jambs, and the wall over it."""
    figure, bearing, high = task.figure, 0.1, 0.45
    half, edge = span / 2, span / 2 + 0.35
    wall = depth + cover
    for sign in (-1, 1):
        low, top = sorted((sign * half, sign * edge))
        figure.solid(box(low, -high, top, 0.0))
    figure.line(box(-half - bearing, 0.0, half + bearing, depth), "cut", closed=True)
    figure.line([(-edge, 0.0), (-edge, wall), (edge, wall), (edge, 0.0)], "seen")
    if bears:
        figure.line(box(-half, depth, half, wall), "hidden", closed=True, after="height")
        figure.line(box(-0.12, wall, 0.12, wall + 0.2), "cut", closed=True)
        figure.word((0.0, wall + 0.1), "beam")
    else:
        figure.line([(-half, depth), (0.0, depth + half), (half, depth)], "hidden", after="height")
    counts = cover if bears else half
    figure.size((-half, 0.0), (half, 0.0), task.show(span), "below")
    figure.size((edge, depth), (edge, depth + counts), task.show(counts), "right", asks="height")
    if task.level > 1 or bears:
        figure.size((-edge, depth), (-edge, wall), task.show(cover), "left")
    step = next((s for s in task.steps if s.key == "weight"), None)
    if step:
        figure.word((0.0, depth + counts / 3), task.show(step.expected, "mass"), "", asks="weight")
    for step in task.steps:
        if step.key in ("carried", "end"):
            name, low = {"carried": ("on the lintel", 0.3), "end": ("on each end", 0.8)}[step.key]
            figure.word((0.0, -low * high), task.show(step.expected, "mass"), name, asks=step.key)
    long = next((s for s in task.steps if s.key == "long"), None)
    if long:
        figure.size((-half - bearing, depth), (half + bearing, depth),
                    task.show(long.expected, limit="least"), "below", 1, asks="long")  # fmt: skip
    task.said = "Front of the opening with the lintel on its jambs and the wall over it."


KIND = ExerciseKind(
    "lintel",
    5.1,
    "firebox-lintel-throat",
    "Lintel over an opening",
    dict.fromkeys(("US", "CA", "UK"), (ALONE, BEAM)),
    draw,
)
