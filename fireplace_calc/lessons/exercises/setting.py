"""Setting a set of pieces: what bed brings the top to its level, and whether it may be so."""

from __future__ import annotations

from fireplace_calc.base.units import INCH, MM
from fireplace_calc.lessons.making.exercise_kind import ExerciseKind
from fireplace_calc.lessons.making.figure_maker import box
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

FITS, THICK, THIN = "beds within range", "beds too thick", "beds too thin"


def draw(task: TaskMaker) -> str:
    """Sum of the pieces, the bed that shares out what is left, and whether it may be so."""
    count = task.rng.choice((3, 4, 5))
    grid = INCH / 16 if task.feet else MM
    thin, thick = (3 * grid, 10 * grid) if task.feet else (5 * grid, 16 * grid)
    heights = [task.on_tape(task.rng.randrange(64, 160) / 8 * INCH, 1) for _ in range(count)]
    bed = _bed(task, thin / grid, thick / grid) * grid
    whole, wanted = sum(heights), sum(heights) + count * bed
    for k, high in enumerate(heights, 1):
        task.give(f"Lift {k}, height as measured", high, at=(2, 3))
    task.give("All lifts together", whole, at=(1,), key="whole")
    task.give("Lifts, and a bed under each", str(count), "word", at=(1,))
    task.give("Top of the last lift wanted, above the slab", wanted)
    task.give("Thinnest bed", thin, at=(2, 3))
    task.give("Thickest bed", thick, at=(2, 3))
    _sum(task, heights, whole)
    _joint(task, whole, wanted, count, bed)
    _allowed(task, bed, (thin, thick))
    _after(task, heights, whole, wanted, (bed, thin, thick))
    _figure(task, heights, bed, wanted, whole)
    task.source = "plane arithmetic; the range of the beds is the mortar's maker's to tell"
    return (
        "The lifts of a set are measured before they are set. There is a bed under each lift, all"
        " beds alike. Heights count from the slab."
    )


def _bed(task: TaskMaker, thin: float, thick: float) -> int:
    low, high = {
        FITS: (thin + 1, thick - 1),
        THICK: (thick + 2, thick + 8),
        THIN: (1, thin - 1),
    }[task.branch]
    return task.rng.randrange(round(low), round(high) + 1)


def _sum(task: TaskMaker, heights: list[float], whole: float) -> None:
    task.ask(
        "whole",
        "How high are all lifts together, without beds?",
        whole,
        "length",
        Way(
            "Leave the beds out for now.",
            "Add the heights of the lifts.",
            f"{' + '.join(task.show(h) for h in heights)} = {task.show(whole)}.",
        ),
        [
            (whole - heights[-1], "You left the last lift out."),
            (whole - heights[0], "You left the first lift out."),
        ],
        at=(2, 3),
    )


def _joint(task: TaskMaker, whole: float, wanted: float, count: int, bed: float) -> None:
    left = wanted - whole
    task.ask(
        "bed",
        "How thick must each bed be?",
        bed,
        "length",
        Way(
            "The beds share what the lifts leave.",
            f"Take the lifts off the level that is wanted. Share it among {count} beds.",
            f"({task.show(wanted)} - {task.show(whole)}) / {count} = {task.show(bed)}.",
        ),
        [
            (left, "You gave all beds together. Share it among them."),
            (
                left / (count - 1),
                "You left out the bed under the first lift. There is one under each.",
            ),
            (left / (count + 1), "You counted a bed on top. The last lift has none over it."),
        ],
    )


def _allowed(task: TaskMaker, bed: float, limits: tuple[float, float]) -> None:
    thin, thick = limits
    right = {FITS: "yes", THICK: "no, too thick", THIN: "no, too thin"}[task.branch]
    said = {
        "yes": "You took it as allowed. It lies outside the two.",
        "no, too thick": "You took it as too thick. Compare it with the thickest bed.",
        "no, too thin": "You took it as too thin. Compare it with the thinnest bed.",
    }
    task.choose(
        "allowed",
        "May the beds be that thick?",
        right,
        said,
        Way(
            "The mortar has a thinnest and a thickest bed.",
            f"Does {task.show(bed)} lie between {task.show(thin)} and {task.show(thick)}?",
            f"{task.show(bed)} against {task.show(thin)} to {task.show(thick)}: {right}.",
        ),
        at=(2, 3),
    )


def _after(
    task: TaskMaker,
    heights: list[float],
    whole: float,
    wanted: float,
    beds: tuple[float, float, float],
) -> None:
    """Where the second lift comes to, or by how much the top misses its level."""
    bed, thin, thick = beds
    count = len(heights)
    if task.branch == FITS:
        second = heights[0] + heights[1] + 2 * bed
        task.ask(
            "second",
            "How high above the slab is the top of lift 2?",
            second,
            "length",
            Way(
                "Two lifts and two beds lie below it.",
                "Add lift 1, lift 2 and two beds.",
                f"{task.show(heights[0])} + {task.show(heights[1])} + 2 × {task.show(bed)} ="
                f" {task.show(second)}.",
            ),
            [
                (second - bed, "You counted one bed. There is one under each lift."),
                (second - 2 * bed, "You left the beds out."),
                (second + bed, "You counted a bed over lift 2. Its top is asked."),
            ],
            at=(3,),
        )
        return
    used = thick if task.branch == THICK else thin
    miss = abs(wanted - whole - count * used)
    word, end = ("low", "thickest") if task.branch == THICK else ("high", "thinnest")
    task.ask(
        "miss",
        f"With the {end} beds, how far too {word} is the top?",
        miss,
        "length",
        Way(
            f"Use the {end} bed everywhere.",
            f"Add the lifts and {count} such beds. Compare with the level that is wanted.",
            f"{task.show(whole)} + {count} × {task.show(used)} = {task.show(whole + count * used)}."
            f" Wanted is {task.show(wanted)}.",
        ),
        [
            (abs(bed - used), f"You took one bed. There are {count}."),
            (count * used, "You gave all beds together."),
        ],
        at=(3,),
    )


def _figure(task: TaskMaker, heights: list[float], bed: float, wanted: float, whole: float) -> None:
    """Front of the stack, lift on lift; beds are drawn thicker than they are, and it says so."""
    figure, wide, drawn = task.figure, 0.5, max(bed, 0.02)
    level = 0.0
    figure.line([(-wide, 0.0), (wide, 0.0)], "cut")
    for k, high in enumerate(heights, 1):
        level += drawn
        figure.line(box(-wide / 2, level, wide / 2, level + high), "cut", closed=True)
        figure.word((0.0, level + high / 2), f"lift {k}")
        if task.level > 1:
            figure.size((-wide / 2, level), (-wide / 2, level + high), task.show(high), "left")
        level += high
    figure.size((wide / 2, 0.0), (wide / 2, level), task.show(wanted), "right", 1)
    for step in task.steps:
        if step.key == "whole":
            figure.word((1.7 * wide, 0.35 * level), task.show(step.expected), "all lifts",
                        asks="whole")  # fmt: skip
        if step.key == "miss":
            figure.word((0.0, level + 0.12), task.show(step.expected), "top misses by",
                        asks="miss")  # fmt: skip
        if step.key == "second":
            second = heights[0] + heights[1] + 2 * drawn
            figure.size((wide / 2, 0.0), (wide / 2, second), task.show(step.expected), "right", 2,
                        asks="second")  # fmt: skip
    last = level - heights[-1]
    figure.size((wide / 2, last - drawn), (wide / 2, last), task.show(bed), "right", asks="bed")
    task.said = "Front of the lifts on each other, a bed of mortar under each."


KIND = ExerciseKind(
    "setting",
    9,
    "setting-a-set",
    "Beds that bring a set to its level",
    dict.fromkeys(("US", "CA", "UK"), (FITS, THICK, THIN)),
    draw,
)
