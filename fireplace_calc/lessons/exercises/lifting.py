"""Who lifts this piece: its weight, the limit at this reach, and how many hands that takes."""

from __future__ import annotations

from fireplace_calc.base.units import INCH, POUND
from fireplace_calc.build.lifting.equation import LOAD, capacity
from fireplace_calc.build.lifting.multipliers import reach_multiplier
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

WHO = ("one person", "two people", "three people", "hoist")
SHARES = {WHO[0]: (0.55, 0.92), WHO[1]: (1.06, 1.28), WHO[2]: (1.38, 1.46), WHO[3]: (1.7, 2.6)}
"""Weight over the limit of one: two carry four thirds of it, three one and a half."""
STUFFS = {"cast refractory": 2200.0, "brick": 1900.0, "limestone": 2500.0}
"""What is lifted, and its density, invented for the exercise within what is usual. [kg/m3]"""


def draw(task: TaskMaker) -> str:
    """Weight, limit of one, limit of two, and who lifts it."""
    share = SHARES[task.branch]
    reach = task.length(12, 20)
    one = LOAD * reach_multiplier(reach)
    if task.level < 3:
        one = task.printed(one, "mass")
    stuff = task.rng.choice(tuple(STUFFS))
    sizes, density = _piece(task, one, share, STUFFS[stuff])
    weight = sizes[0] * sizes[1] * sizes[2] * density
    weight = task.printed(weight, "mass") if task.level == 1 else weight
    for name, size in zip(("Length", "Width", "Height"), sizes, strict=True):
        task.give(f"{name} of the piece", size, at=(2, 3))
    if task.feet:
        task.give(f"Weight of {stuff}", f"{density / POUND * 0.3048**3:.0f} lb/ft³", "word", (2, 3))
    else:
        task.give(f"Weight of {stuff}", f"{density:.0f} kg/m³", "word", (2, 3))
    task.give("Weight of the piece", weight, "mass", at=(1,), key="weight")
    task.give("One person may lift", one, "mass", at=(1, 2), key="one")
    if task.level == 3:
        task.give("Reach, from the ankles to the hands", reach)
        task.give(
            "One person may lift, hands close to the body", task.printed(LOAD, "mass"), "mass"
        )
    _weigh(task, sizes, weight)
    _limits(task, reach, one)
    _who(task, weight, one)
    _figure(task, sizes, weight)
    task.source = (
        "NIOSH publication 94-110 for one person; two lift two thirds and three half of their sum"
    )
    closer = (
        " Beyond 10 in of reach, one person's limit shrinks as 10 in over the reach."
        if task.feet
        else " Beyond 254 mm of reach, one person's limit shrinks as 254 mm over the reach."
    )
    team = " Two people lift two thirds of their sum, three people half. Beyond that, use a hoist."
    return (
        "A piece is to be lifted and put down with care: straight, on good footing."
        + (closer if task.level == 3 else "")
        + team
    )


def _piece(
    task: TaskMaker, one: float, share: tuple[float, float], dense: float
) -> tuple[tuple[float, float, float], float]:
    """Sizes whose weight lies plainly in the branch; density as it is printed."""
    cubic = POUND / 0.3048**3
    density = round(dense / cubic) * cubic if task.feet else dense
    while True:
        sizes = task.length(8, 30), task.length(4, 14), task.length(3, 12)
        if share[0] < sizes[0] * sizes[1] * sizes[2] * density / one < share[1]:
            return sizes, density


def _weigh(task: TaskMaker, sizes: tuple[float, float, float], weight: float) -> None:
    volume = sizes[0] * sizes[1] * sizes[2]
    told = f"{volume / 0.3048**3:.3f} ft³" if task.feet else f"{volume:.4f} m³"
    sides = " × ".join(task.side(size) for size in sizes)
    task.ask(
        "weight",
        "How much does the piece weigh?",
        weight,
        "mass",
        Way(
            "Weight is volume times weight by volume.",
            "Multiply the three sides. Turn that into "
            + ("cubic feet: divide by 1728." if task.feet else "cubic metres.").replace(
                "metres", "metres" if task.book == "UK" else "meters"
            ),
            f"{sides} = {told}. That is {task.show(weight, 'mass')}.",
        ),
        [
            (weight * sizes[0] / sizes[1], "You took the length twice and left the width out."),
            (weight / 2, "You took half of it."),
            (weight * 12, "You divided by 144. A cubic foot has 1728 cubic inches.")
            if task.feet
            else (weight * 10, "Your decimal point is one place off."),
        ],
        at=(2, 3),
    )


def _limits(task: TaskMaker, reach: float, one: float) -> None:
    near = "10 in" if task.feet else "254 mm"
    task.ask(
        "one",
        "How much may one person lift at this reach?",
        one,
        "mass",
        Way(
            "The farther the hands, the less may be lifted.",
            f"Multiply the limit close to the body by {near} over the reach.",
            f"{task.show(LOAD, 'mass')} × {near} / {task.side(reach)} = {task.show(one, 'mass')}.",
        ),
        [
            (LOAD, "You took the limit close to the body. The hands are farther away."),
            (LOAD * reach / (10 * INCH), "You divided the wrong way. A far reach allows less."),
        ],
        at=(3,),
        limit="most",
    )


def _who(task: TaskMaker, weight: float, one: float) -> None:
    two, three = capacity(one, 2), capacity(one, 3)
    limits = (one, two, three)
    told = ", ".join(
        f"{who} {task.show(limit, 'mass', 'most')}" for who, limit in zip(WHO, limits, strict=False)
    )
    said = {
        who: "You took too few. The piece is more than they may lift."
        if WHO.index(who) < WHO.index(task.branch)
        else "You took more than are needed. Fewer may lift it."
        for who in WHO
    }
    task.choose(
        "who",
        "Who lifts it?",
        task.branch,
        said,
        Way(
            "Compare the weight with what one, two and three may lift.",
            "Two may lift two thirds of their sum. Three may lift half of it.",
            f"{task.show(weight, 'mass')} against {told}: {task.branch}.",
        ),
    )


def _figure(task: TaskMaker, sizes: tuple[float, float, float], weight: float) -> None:
    """The piece from the front, and from above over it."""
    figure, (long, wide, high) = task.figure, sizes
    gap = 0.12
    figure.line(box(0.0, 0.0, long, high), "cut", closed=True)
    if task.level > 1:
        figure.line(box(0.0, high + gap, long, high + gap + wide), "cut", closed=True)
        figure.size((0.0, 0.0), (long, 0.0), task.show(long), "below")
        figure.size((0.0, 0.0), (0.0, high), task.show(high), "left")
        figure.size((0.0, high + gap), (0.0, high + gap + wide), task.show(wide), "left")
    figure.word((long / 2, high / 2), task.show(weight, "mass"), "", asks="weight")
    for step in task.steps:
        if step.key == "one":
            figure.word((long + 0.25, high / 2), step.answer(task.units), "one person", asks="one")
    above = ", and from above over it" if task.level > 1 else ""
    task.said = f"The piece from the front{above}."


KIND = ExerciseKind(
    "lifting",
    10,
    "lifting-dust-heights",
    "Who lifts this piece",
    dict.fromkeys(("US", "CA", "UK"), WHO),
    draw,
)
