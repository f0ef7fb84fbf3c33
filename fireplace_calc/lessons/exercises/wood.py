"""The heat in the back of a firebox: a chain of resistances, and the hours after the fire."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.tables.heat import conductors, flue_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

ZERO = 273.15
HOURS = (0, 2, 4, 6, 8, 10, 12)
"""After fire out that the table tells. [h]"""
CASES = {"usual fire": (4, "usual"), "hard fire": (6, "hard"), "soot fire": (4, "soot")}
"""Branch to chimney wall [in] and fire; each table has one highest figure, however rounded."""
R_VALUE = 5.678263
"""One square meter kelvin to a watt, in square feet hours and degrees Fahrenheit to a Btu."""


@lru_cache(maxsize=len(CASES))
def _after(branch: str) -> tuple[str, tuple[float, ...]]:
    """The fire's name, and its wood beside the flue at ``HOURS`` after fire out. [K]"""
    import numpy as np  # here, so that the other exercises need not wait for numpy

    from fireplace_calc.heat.cuts.round_flue import beside_flue, flue_layers, girth_radius

    wall, key = CASES[branch]
    design = change(Design(), {"chimney.wall": f"{wall} in", "clearance.chimney": "2 in"})
    geometry, fire = build_geometry(design), flue_fires()[key]
    run = beside_flue(flue_layers(geometry), girth_radius(geometry), fire)
    told = np.interp(run.out + np.array(HOURS), run.times, run.wood)
    return fire.label, tuple(float(t) + ZERO for t in told)


def draw(task: TaskMaker) -> str:
    """Temperatures where layers meet; what four inches more do; when the wood is hottest."""
    lining, masonry = task.rng.choice((2, 4)), task.rng.choice((4, 6, 8))
    hot, cold = _round(task, task.rng.randrange(180, 401, 20)), _round(task, 20)
    layers = [
        _resistance(task, lining * INCH / conductors()["firebrick"].conductivity),
        _resistance(task, masonry * INCH / conductors()["brick"].conductivity),
        _resistance(task, task.rng.choice((0.10, 0.12, 0.14))),
        _resistance(task, task.rng.choice((0.60, 0.70, 0.80))),
    ]
    more = _resistance(task, 4 * INCH / conductors()["brick"].conductivity)
    thick = [task.show(task.on_tape(n * INCH)) for n in (lining, masonry, 4)]
    task.give("Inner face of the lining", hot, "temperature")
    task.give("Room", cold, "temperature")
    names = (f"Firebrick lining, {thick[0]}", f"Brick behind the lining, {thick[1]}",
             "Closed air gap", "Studs, board and the room's air")  # fmt: skip
    for name, value in zip(names, layers, strict=True):
        task.give(name, _told(task, value), "word", at=(2, 3))
    if task.level == 1:
        task.give(names[0], _told(task, layers[0]), "word")
        task.give("All layers together", _told(task, sum(layers)), "word", key="sum")
    task.give(f"Brick, {thick[2]} more", _told(task, more), "word", at=(3,))
    _sum(task, layers)
    first = _first(task, (hot, cold), layers)
    back = _back(task, (hot, cold), layers)
    if task.level == 3:
        _thicker(task, (hot, cold), layers, more)
        _hours(task)
    _figure(task, (hot, cold), (lining * INCH, masonry * INCH), (first, back))
    task.source = "resistances in a row, ISO 6946; engineering judgement, never a clearance"
    return (
        "A fire is kept up until the wall behind the firebox warms no more. Each layer takes its"
        " share of the fall from fire to room: its resistance over the sum. The code's clearance"
        " holds, whatever the sum gives."
    )


def _round(task: TaskMaker, celsius: float) -> float:
    """A temperature that is round in the reader's degrees. [K]"""
    if task.feet:
        return (round((celsius * 1.8 + 32) / 5) * 5 - 32) / 1.8 + ZERO
    return celsius + ZERO


def _resistance(task: TaskMaker, value: float) -> float:
    """Of a layer, as it is printed: m2 K/W, or the R-value of inch countries."""
    return round(value * R_VALUE, 2) if task.feet else round(value, 3)


def _told(task: TaskMaker, value: float) -> str:
    return f"R {value:.2f}" if task.feet else f"{value:.3f} m²K/W"


def _figure_of(task: TaskMaker, value: float) -> str:
    return f"{value:.2f}" if task.feet else f"{value:.3f}"


def _degrees(task: TaskMaker, value: float) -> str:
    return task.show(value, "temperature")


def _fall(task: TaskMaker, kelvin: float) -> str:
    return f"{kelvin * 1.8:.0f} °F" if task.feet else f"{kelvin:.0f} °C"


def _sum(task: TaskMaker, layers: list[float]) -> None:
    """Which layer holds back most: the one with the largest resistance."""
    names = ("lining", "brick", "air gap", "studs and board")
    most = names[layers.index(max(layers))]
    task.choose(
        "most",
        "Which layer takes the largest share of the fall?",
        most,
        dict.fromkeys(names, "You took a layer with less resistance. The largest one takes most."),
        Way(
            "The share goes by the resistance.",
            "Look for the largest resistance, not for the thickest layer.",
            f"{most.capitalize()}: {_told(task, max(layers))}.",
        ),
        at=(2,),
    )  # fmt: skip


def _first(task: TaskMaker, ends: tuple[float, float], layers: list[float]) -> float:
    hot, cold = ends
    whole, fall = sum(layers), hot - cold
    met = hot - fall * layers[0] / whole
    task.ask(
        "first",
        "How hot is it where lining and brick meet?",
        met,
        "temperature",
        Way(
            "The lining takes its share of the fall.",
            "Divide the lining's resistance by the sum. Multiply by the fall, and subtract.",
            f"{_degrees(task, hot)} - {_fall(task, fall)} × {_figure_of(task, layers[0])} /"
            f" {_figure_of(task, whole)} = {_degrees(task, met)}.",
        ),
        [
            (cold + fall * layers[0] / whole, "You counted up from the room. Count down."),
            (hot - fall / 4, "You shared alike. Each layer takes by its resistance."),
            (hot - fall * layers[0] / (layers[0] + layers[1]), "You left out gap and studs."),
            (cold, "That is the room."),
        ],
    )
    return met


def _back(task: TaskMaker, ends: tuple[float, float], layers: list[float]) -> float:
    hot, cold = ends
    whole, fall = sum(layers), hot - cold
    both = layers[0] + layers[1]
    met = hot - fall * both / whole
    task.ask(
        "back",
        "How hot is the back of the brick?",
        met,
        "temperature",
        Way(
            "Two layers lie before it.",
            "Add the resistances of lining and brick, and take their share off.",
            f"{_degrees(task, hot)} - {_fall(task, fall)} × {_figure_of(task, both)} /"
            f" {_figure_of(task, whole)} = {_degrees(task, met)}.",
        ),
        [
            (hot - fall * layers[0] / whole, "You stopped behind the lining."),
            (hot - fall * layers[1] / whole, "You left the lining out."),
            (hot - fall * (both + layers[2]) / whole, "You went across the gap to the studs."),
        ],
        at=(2, 3),
    )
    return met


def _thicker(task: TaskMaker, ends: tuple[float, float], layers: list[float], more: float) -> None:
    hot, cold = ends
    fall, whole = hot - cold, sum(layers) + more
    before = sum(layers[:3])
    met = hot - fall * (before + more) / whole
    extra = task.show(task.on_tape(4 * INCH))
    task.ask(
        "studs",
        f"How hot are the studs with {extra} more brick?",
        met,
        "temperature",
        Way(
            "More brick takes more of the fall, and the sum grows too.",
            f"Add the {extra} to the brick and to the sum. Take lining, brick and gap off.",
            f"{_degrees(task, hot)} - {_fall(task, fall)} × {_figure_of(task, before + more)} /"
            f" {_figure_of(task, whole)} = {_degrees(task, met)}.",
        ),
        [
            (hot - fall * before / (whole - more), f"You left out the {extra}."),
            (
                hot - fall * (before + more) / (whole - more),
                f"You left the {extra} out of the sum. Add it there too.",
            ),
            (
                hot - fall * (before + more - layers[2]) / whole,
                "You stopped at the back of the brick. The gap takes its share too.",
            ),
        ],
    )


def _hours(task: TaskMaker) -> None:
    fire, told = _after(task.branch)
    task.give("Table: wood beside a flue, from one", fire, "word")
    for hour, kelvin in zip(HOURS, told, strict=True):
        task.give(f"Table: {hour} h after fire out", kelvin, "temperature")
    highest = HOURS[told.index(max(told))]
    task.ask(
        "hours",
        "How many hours after fire out is the wood of the table hottest?",
        float(highest),
        "count",
        Way(
            "The wall goes on giving heat after the fire.",
            "Look down the table for the highest figure.",
            f"The highest is {_degrees(task, max(told))}, {highest} h after fire out.",
        ),
        [
            (0.0, "You took the end of the fire. The wood goes on warming."),
            (float(HOURS[-1]), "You took the end of the table. Look for the highest."),
        ],
    )


def _figure(
    task: TaskMaker,
    ends: tuple[float, float],
    thick: tuple[float, float],
    met: tuple[float, float],
) -> None:
    """Cut through the back of the firebox: fire at the left, room at the right."""
    figure, high, at = task.figure, 0.35, 0.0
    parts = (("firebrick", thick[0]), ("brick", thick[1]), ("", 0.1), ("timber", 0.09))
    edges = [0.0]
    for hatch, wide in parts:
        if hatch:
            figure.solid(box(at, 0.0, at + wide, high), hatch)
        at += wide
        edges.append(at)
    figure.word((-0.16, high / 2), _degrees(task, ends[0]), "fire side")
    figure.word((at + 0.14, high / 2), _degrees(task, ends[1]), "room")
    for x, key, value, row in ((edges[1], "first", met[0], 0.1), (edges[2], "back", met[1], 0.1)):
        figure.line([(x, 0.0), (x, -row if key == "back" else high + row)], "fine")
        spot = (x, -row - 0.05) if key == "back" else (x, high + row + 0.05)
        figure.word(spot, _degrees(task, value), "", asks=key)
    for step in task.steps:
        if step.key == "studs":
            figure.word((edges[4] - 0.045, high + 0.15), _degrees(task, step.expected),
                        "with more brick", asks="studs")  # fmt: skip
    task.said = "Cut through the back of the firebox: lining, brick, air gap and studs."


KIND = ExerciseKind(
    "wood",
    8,
    "heat-and-wood",
    "Heat on its way to the wood",
    {book: tuple(CASES) for book in ("US", "CA", "UK")},
    draw,
)
