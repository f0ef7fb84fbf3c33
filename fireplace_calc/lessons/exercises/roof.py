"""How high a chimney stands over a roof: the two rules, and how many sections that takes."""

from __future__ import annotations

from math import ceil, hypot, pi, tan

from fireplace_calc.base.units import FOOT, INCH, MM
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.limits import CodeLimit
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

CONTACT = {"US": ("ROF-01",), "CA": ("CA-019",), "UK": ("UK-011",)}
NEARBY = {"US": ("ROF-02",), "CA": ("CA-020",), "UK": ("UK-008",)}
SHALLOW, NEAR, FAR = "over the roof decides", "ridge within reach", "ridge out of reach"
AT_RIDGE, SIDEWAYS, METRE, LEVEL = (
    "at the ridge",
    "clear of the slope",
    "over the slope",
    "level with the ridge",
)
REACH = {"US": 10 * FOOT, "CA": 3.0, "UK": 2.3}
"""How far level whatever stands near counts: IRC R1003.9, NBC 9.21.4.4, and Diagram 17 of Approved
Document J. [m]
"""
PITCHES = {
    SHALLOW: (3, 4),
    NEAR: (6, 7, 8, 9, 10, 12),
    FAR: (5, 6, 8, 9, 10, 12),
    AT_RIDGE: (30, 35, 40, 45),
    SIDEWAYS: (30, 35, 40, 45),
    METRE: (15, 17.5, 20, 22.5),
    LEVEL: (30, 35, 40),
}
"""Rise in twelve; in England degrees."""
RIDGES = {
    SHALLOW: (24, 34),
    NEAR: (60, 108),
    FAR: (138, 192),
    AT_RIDGE: (12, 22),
    SIDEWAYS: (110, 180),
    METRE: (170, 220),
    LEVEL: (36, 80),
}
"""Level from the uphill face to the ridge. [in]"""


def draw(task: TaskMaker) -> str:
    """Climb of the roof, height over it, and the sections that are missing."""
    said, pitch = _pitch(task)
    ridge = task.length(*RIDGES[task.branch], 2)
    reach = REACH[task.book] if task.feet or task.book != "US" else 3048 * MM
    near = min(ridge, reach)
    climb, rise = pitch * near, pitch * ridge
    if task.level == 1:
        climb = task.printed(climb, "length")
    if task.level < 3:
        rise = task.printed(rise, "length")
    rise = climb if task.branch == AT_RIDGE else rise
    over, above, decides = _limits(task, pitch, ridge)
    if task.book == "UK":
        need = rise + above.value if task.branch == AT_RIDGE else max(climb, min(over.value, rise))
    else:
        need = max(over.value, climb + above.value)
    task.give("Roof pitch", said, "word")
    task.give("Level to the ridge, from the uphill face", ridge)
    if task.book == "UK" and task.branch != AT_RIDGE:
        task.give("Rise of the roof to the ridge", rise, at=(1, 2))
    task.give(
        f"Climb of the roof within {task.show(near)}, level", climb, at=(1,), key="climb"
    )  # fmt: skip
    _climb(task, pitch, ridge, reach)
    _need(task, climb, rise, (over, above, decides), need)
    _sections(task, need)
    _figure(task, pitch, ridge, near, need)
    top = "top of the chimney" if task.book == "US" else "top of the flue"
    return (
        f"The chimney comes out of the slope. Heights count to the {top}, from the roof at the"
        " uphill face. Nothing but this roof is near."
    )


def _pitch(task: TaskMaker) -> tuple[str, float]:
    """A pitch as the book's country tells it, and rise over run. [-]"""
    drawn = task.rng.choice(PITCHES[task.branch])
    if task.book != "UK":
        return f"{drawn} in 12", drawn / 12
    tangent = round(tan(drawn * pi / 180), 3)
    return f"{drawn:g}°, tangent {tangent:.3f}", tangent


def _limits(task: TaskMaker, pitch: float, ridge: float) -> tuple[CodeLimit, CodeLimit, CodeLimit]:
    """The rule for the roof, the one for what is near, and the one that decides."""
    changes = {
        "roof.pitch": f"{pitch!r}",
        "roof.ridge_distance": task.text(ridge),
        "roof.ridge_level": "24 ft",
        "flue.sections": 12,
    }
    if task.book != "UK":
        over, above = (task.limit(keys[task.book], changes) for keys in (CONTACT, NEARBY))
        return over, above, over if task.branch == SHALLOW else above
    far, close = (
        changes | {"roof.ridge_distance": "5 m"},
        changes | {"roof.ridge_distance": "0.4 m"},
    )
    above, over = task.limit(NEARBY["UK"], close), task.limit(CONTACT["UK"], far)
    sideways = task.limit(("UK-010",), far)
    return over, above, {AT_RIDGE: above, METRE: over}.get(task.branch, sideways)


def _climb(task: TaskMaker, pitch: float, ridge: float, reach: float) -> None:
    near = min(ridge, reach)
    climb, reached = pitch * near, task.show(reach)
    stop = f"The ridge is nearer than {reached}." if ridge < reach else f"Only {reached} counts."
    by = f"{pitch:.3f}" if task.book == "UK" else f"{round(pitch * 12)}/12"
    task.ask(
        "climb",
        f"How far does the roof climb within {reached}, measured level?",
        climb,
        "length",
        Way(
            f"How far do you go: to the ridge, or {reached}?",
            f"{stop} Multiply that by the pitch.",
            f"{stop} {task.side(near)} × {by} = {task.show(climb)}.",
        ),
        [
            (pitch * ridge, f"You went all the way to the ridge. Stop at {reached}."),
            (pitch * reach, f"You went {reached}. The roof ends at the ridge before that."),
            (
                climb / hypot(1, pitch),
                "You measured along the slope. Hold the tape level.",
            ),
            (near, "You gave how far you go. The question is how far the roof climbs."),
        ],
        at=(2, 3),
    )


def _need(
    task: TaskMaker,
    climb: float,
    rise: float,
    limits: tuple[CodeLimit, CodeLimit, CodeLimit],
    need: float,
) -> None:
    over, above, decides = limits
    one, other = (task.show(v.value, limit="least") for v in (over, above))
    total = task.show(need, limit="least")
    if task.book != "UK":
        both = task.show(climb + above.value)
        way = Way(
            "Two rules hold. Work out both and take the larger.",
            f"One asks for {one} over the roof. The other asks for {other} over the climb.",
            f"Over the roof: {one}. Over what is near: {task.show(climb)} + {other} = {both}."
            f" The larger is {total}.",
        )
        wrong = [
            (over.value, "You took the rule for the roof alone. Check what stands near too."),
            (climb + above.value, "You took what stands near alone. Check the rule for the roof."),
            (climb + over.value, f"You added {one} to the climb. Over what is near it is {other}."),
            (climb, "You stopped level with the highest spot. The top must stand over it."),
            (above.value, f"You gave the height over the highest spot. Add the climb to {other}."),
            (climb + over.value + above.value, "You added both rules. Take the larger one."),
        ]
    elif task.branch == AT_RIDGE:
        way = Way(
            "This chimney counts as standing at the ridge.",
            f"At the ridge the outlet stands {other} over the ridge. Add the climb to the ridge.",
            f"{task.show(rise)} + {other} = {total}.",
        )
        wrong = [
            (above.value, "You measured from the ridge. Measure from the roof at the chimney."),
            (rise + over.value, f"You added {one}. At the ridge it is {other}."),
            (over.value, "You took the rule for a chimney away from the ridge."),
            (rise, "You stopped level with the ridge. The outlet must stand over it."),
        ]
    else:
        way = Way(
            "The outlet must clear the slope sideways and stand high enough over it.",
            f"Sideways asks for the climb. Upward asks for {one}, or for level with the ridge.",
            f"Sideways: {task.show(climb)}. Upward: the smaller of {one} and {task.show(rise)}."
            f" The larger of the two is {total}.",
        )
        wrong = [
            (over.value, "You took the rule over the slope alone. Check it sideways too."),
            (climb, "You took the rule sideways alone. Check the height over the slope too."),
            (climb + over.value, "You added the two rules. Take the larger one."),
            (rise + above.value, "You took the rule for a chimney at the ridge."),
            (rise, "You went up to the ridge. Less than that will do here."),
        ]
    task.ask(
        "need",
        "How high must the top stand over the roof at the uphill face, at least?",
        need,
        "length",
        way,
        wrong,
        limit="least",
        code=decides,
    )


def _sections(task: TaskMaker, need: float) -> None:
    """Level of the top over the floor, and what is missing of it."""
    contact = task.length(120, 216, 3)
    section = task.on_tape(task.rng.choice((12, 18, 24)) * INCH)
    missing = [m for m in (0.3, 0.6, 1.4, 1.7, 2.3, 2.6) if need - m * section > 6 * INCH]
    stands = task.on_tape(need - task.rng.choice(missing) * section)
    short = need - stands
    count = ceil(short / section - 1e-6)
    task.give("Roof at the uphill face, above the floor", contact, at=(3,))
    task.give("Top as it stands now, above the floor", contact + stands, at=(3,))
    task.give("One flue section with its joint", section, at=(3,))
    task.ask(
        "top",
        "How high above the floor must the top be, at least?",
        contact + need,
        "length",
        Way(
            "You know the roof's level and the height over the roof.",
            "Add the two.",
            f"{task.show(contact)} + {task.show(need, limit='least')} ="
            f" {task.show(contact + need, limit='least')}.",
        ),
        [
            (need, "You measured from the roof. Measure from the floor."),
            (contact, "That is the roof at the chimney. Add the height over the roof."),
        ],
        at=(3,),
        limit="least",
    )
    task.ask(
        "count",
        "How many sections must be added?",
        float(count),
        "count",
        Way(
            "How much is missing? You can only add whole sections.",
            "Take the level the top stands at off the level needed. Divide by one section.",
            f"{task.show(short)} is missing. One section is {task.show(section)}, so add {count}.",
        ),
        [
            (float(count - 1), "You rounded down. The top is still too low."),
            (float(count + 1), "You added one section too many."),
        ],
        at=(3,),
    )


def _figure(task: TaskMaker, pitch: float, ridge: float, near: float, need: float) -> None:
    """Slope to the right, chimney at its foot, ridge at its head."""
    figure, wide = task.figure, 0.6
    far = max(ridge, near) + (0.4 if ridge > near else 0.8)
    left = -wide - 0.7

    def roof(x: float) -> float:
        return pitch * x if x <= ridge else pitch * (2 * ridge - x)

    ends = sorted({left, ridge, far}) if far > ridge else [left, far]
    figure.line([(x, roof(x)) for x in ends], "cut")
    base = roof(-wide) - 0.2
    figure.line([(-wide, base), (-wide, need), (0.0, need), (0.0, 0.0)], "seen")
    figure.line([(0.0, 0.0), (near, 0.0), (near, pitch * near)], "hidden", after="climb")
    figure.line([(0.0, need), (far, need)], "hidden", after="need")
    figure.size((0.0, 0.0), (ridge, 0.0), task.show(ridge), "below", 1 if ridge > near else 0)
    if ridge > near:
        figure.size((0.0, 0.0), (near, 0.0), task.show(near), "below")
    figure.size((near, 0.0), (near, pitch * near), task.show(pitch * near), "right", asks="climb")
    figure.size((0.0, 0.0), (0.0, need), task.show(need, limit="least"), "left", asks="need")
    for step in task.steps:
        if step.key == "top":
            figure.word((-wide / 2, need + 0.35), step.answer(task.units), "above the floor",
                        asks="top")  # fmt: skip
    figure.word((ridge, pitch * ridge + 0.15), "ridge")
    task.said = "Section through a slope with the chimney at the left and the ridge at the right."


KIND = ExerciseKind(
    "roof",
    2,
    "height-over-the-roof",
    "Chimney over a roof",
    {
        "US": (SHALLOW, NEAR, FAR),
        "CA": (SHALLOW, NEAR, FAR),
        "UK": (AT_RIDGE, SIDEWAYS, METRE, LEVEL),
    },
    draw,
)
