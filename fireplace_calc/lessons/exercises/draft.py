"""What a warm flue pulls: a column of warm gas against the same column of outdoor air."""

from __future__ import annotations

from fireplace_calc.base.units import FOOT, POUND, G
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

COLD, MILD = "cold evening", "mild evening"
AIR, KELVIN = 353.05, 273.15
"""Density of air times its temperature, at 101 325 Pa. [kg K/m3]"""
CUBIC = POUND / FOOT**3
PSF_IN_PASCALS = 47.88
OUTDOORS = {COLD: (-15, -10, -5), MILD: (5, 10, 15)}
"""Temperatures outdoors. [°C]"""


def draw(task: TaskMaker) -> str:
    """Height of the column, difference of the two weights, pull, and what a section adds."""
    outdoor = task.rng.choice(OUTDOORS[task.branch])
    gas = task.rng.randrange(60, 121, 5)
    air, warm = (_weight(task, t) for t in (outdoor, gas))
    mouth, top = task.length(24, 40), task.length(180, 288, 4)
    section = task.on_tape(task.rng.choice((0.3048, 0.6096)))
    height = top - mouth
    difference = round(air - warm, 4 if task.feet else 3)
    task.give("Top of the flue, above the hearth", top, at=(3,))
    task.give("Top of the opening, above the hearth", mouth, at=(3,))
    task.give("Height of the warm column", height, at=(1, 2), key="height")
    task.give(f"Outdoor air at {_degrees(task, outdoor)}", _told(task, air), "word", at=(2, 3))
    task.give(f"Flue gas at {_degrees(task, gas)}", _told(task, warm), "word", at=(2, 3))
    task.give("Difference of the two", _told(task, difference), "word", at=(1,))
    if task.level > 1:
        task.give("One flue section with its joint", section, at=(2, 3))
    pull = _pull(task, height, difference)
    _height(task, mouth, top)
    unit, by = ("foot", f" × {PSF_IN_PASCALS}") if task.feet else ("meter", f" × {G:.2f}")
    word = "draft" if task.book != "UK" else "draught"
    tall = f"{height / FOOT:.2f} ft" if task.feet else f"{height:.2f} m"
    subtract = f"({_figure_of(air, task)} - {_figure_of(warm, task)})" if task.level > 1 else ""
    one = subtract or _figure_of(difference, task)
    task.ask(
        "pull",
        f"How strong is the {word} before anything is lost?",
        pull,
        "pressure",
        Way(
            f"Outdoor air is heavier than flue gas. That difference is the {word}.",
            f"Take the difference of the two weights. Multiply by the height and by{by[2:]}.",
            f"{tall} × {one}{by} = {task.show(pull, 'pressure')}.",
        ),
        [
            (
                _pull(task, top, difference),
                "You started at the hearth. Start at the opening's top.",
            ),
            (_pull(task, height, warm), "You took the flue gas alone. Take the difference."),
            (_pull(task, height, air), "You took the outdoor air alone. Take the difference."),
            (pull / (PSF_IN_PASCALS if task.feet else G), f"You left out the factor{by[2:]}."),
        ],
    )
    _more(task, section, height, difference)
    _figure(task, mouth, height, outdoor, gas)
    task.source = "density of dry air at sea level, 101 325 Pa"
    factor = (
        f"Feet times pounds per cubic foot times {PSF_IN_PASCALS} are pascals."
        if task.feet
        else f"Meters times kilograms per cubic meter times {G:.2f} are pascals."
    )
    factor = factor if task.book != "UK" else factor.replace("eter", "etre")
    return (
        f"Warm gas fills the flue on a {task.branch}. {factor} This is at sea level; at altitude"
        f" there is less {word}."
    )


def _weight(task: TaskMaker, celsius: float) -> float:
    """Density to the last place that is printed. [kg/m3, or lb/ft3]"""
    density = AIR / (celsius + KELVIN)
    return round(density / CUBIC, 4) if task.feet else round(density, 3)


def _figure_of(weight: float, task: TaskMaker) -> str:
    return f"{weight:.4f}" if task.feet else f"{weight:.3f}"


def _told(task: TaskMaker, weight: float) -> str:
    return f"{_figure_of(weight, task)} {'lb/ft³' if task.feet else 'kg/m³'}"


def _degrees(task: TaskMaker, celsius: float) -> str:
    return task.show(celsius + KELVIN, "temperature").replace(".0 °C", " °C")


def _pull(task: TaskMaker, height: float, difference: float) -> float:
    """As a student works it, from the figures that are printed. [Pa]"""
    if task.feet:
        return height / FOOT * difference * PSF_IN_PASCALS
    return height * difference * G


def _height(task: TaskMaker, mouth: float, top: float) -> None:
    task.ask(
        "height",
        "How tall is the warm column?",
        top - mouth,
        "length",
        Way(
            "The column starts where gas enters the throat.",
            "Take the top of the opening off the top of the flue.",
            f"{task.show(top)} - {task.show(mouth)} = {task.show(top - mouth)}.",
        ),
        [
            (top, "You started at the hearth. Start at the top of the opening."),
            (top + mouth, "You added the opening. Take it off."),
        ],
        at=(3,),
    )


def _more(task: TaskMaker, section: float, height: float, difference: float) -> None:
    added = _pull(task, section, difference)
    task.ask(
        "more",
        "How much does one more flue section add?",
        added,
        "pressure",
        Way(
            "Pull grows with the height alone.",
            "Do the same sum for the height of one section.",
            f"{task.show(section)} of the same column: {task.show(added, 'pressure')}.",
        ),
        [
            (
                _pull(task, height + section, difference),
                "You gave the whole pull of the taller chimney.",
            ),
            (_pull(task, height, difference), "You gave the pull of the chimney as it stands."),
        ],
        at=(2, 3),
    )


def _figure(task: TaskMaker, mouth: float, height: float, outdoor: float, gas: float) -> None:
    """Section: opening below, flue above it, the same column outdoors beside it."""
    figure, wide, wall = task.figure, 1.0, 0.2
    top = mouth + height
    figure.line([(-1.2, 0.0), (3.0, 0.0)], "cut")
    figure.solid(box(-wide / 2 - wall, mouth, -wide / 2, top))
    figure.solid(box(wide / 2, mouth, wide / 2 + wall, top))
    figure.line([(-wide / 2 - wall, mouth), (-wide / 2 - wall, 0.0)], "seen")
    figure.line([(wide / 2 + wall, mouth), (wide / 2 + wall, 0.0)], "seen")
    figure.line(box(1.3, mouth, 1.3 + wide, top), "hidden", closed=True)
    figure.word((0.0, mouth + height / 3), _degrees(task, gas), "flue gas")
    figure.word((1.3 + wide / 2, mouth + 2 * height / 3), _degrees(task, outdoor), "outdoors")
    figure.size((-wide / 2 - wall, mouth), (-wide / 2 - wall, top), task.show(height), "left",
                asks="height")  # fmt: skip
    if task.level == 3:
        figure.size((-wide / 2 - wall, 0.0), (-wide / 2 - wall, mouth), task.show(mouth), "left")
        figure.size((1.3 + wide, 0.0), (1.3 + wide, top), task.show(top), "right")
    pull = next(s for s in task.steps if s.key == "pull")
    figure.word((0.0, mouth / 2), task.show(pull.expected, "pressure"), "pull", asks="pull")
    for step in task.steps:
        if step.key == "more":
            figure.word((0.0, top + 0.45), task.show(step.expected, "pressure"),
                        "one more section", asks="more")  # fmt: skip
    task.said = "A warm column in the flue beside the same column of outdoor air."


KIND = ExerciseKind(
    "draft",
    7,
    "draft-house-weather",
    "Pull of a warm column",
    dict.fromkeys(("US", "CA", "UK"), (COLD, MILD)),
    draw,
)
