"""What a step takes, who lifts in it, and which steps, in few words."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable
from math import ceil, floor

from fireplace_calc.base.printing import show
from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import CUFT, FEET_INCHES
from fireplace_calc.build import Plan, WorkStep
from fireplace_calc.build.lifting.equation import HOIST, TWO
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY
from fireplace_calc.takeoff.goods import SET_PIECE

WHOLE = ("piece", "block", "brick", "firebrick", "section")
"""Units of what is counted whole."""
ONE_OF = re.compile(r",? (lift )?\d+ of \d+$")
CUT, WHOLE_ONES = ", cut", ", whole"
SECTION = " section"
FACING, COMMON, BRICK = "Facing brick", "Common brick", " brick"
A_LITTLE = 0.05 * CUFT
"""Less refractory mortar than this is not worth a figure. [m3]"""


def first_day(start: float) -> int:
    """Working day on which a step begins, the first being 1. [-]"""
    return floor(start + 1e-9) + 1


def last_day(end: float) -> int:
    """Working day on which it is done: work that ends with a day is done on that day. [-]"""
    return max(ceil(end - 1e-9), 1)


def on_days(step: WorkStep) -> str:
    """Days on which a step is worked.

    Returns
    -------
    str
        The day, or the first and the last.
    """
    first = first_day(step.start)
    last = max(first, last_day(step.end))
    return f"{first}" if first == last else f"{first}–{last}"


def whole_counts(steps: Iterable[WorkStep]) -> list[dict[str, int]]:
    """Whole pieces that each step takes, so that all steps together take what is ordered.

    Parameters
    ----------
    steps : iterable of WorkStep
        In turn.

    Returns
    -------
    list of dict
        By item; a piece that two steps share is counted in the first. [-]
    """
    used: dict[str, float] = defaultdict(float)
    found = []
    for step in steps:
        counts = {}
        for one in step.goods:
            if one.unit in WHOLE:
                before = ceil(used[one.item] - COUNT_SLACK)
                used[one.item] += one.quantity
                counts[one.item] = ceil(used[one.item] - COUNT_SLACK) - before
        found.append(counts)
    return found


def lies_ready(step: WorkStep, counts: dict[str, int], units: str) -> str:
    """What has to lie ready for a step.

    Parameters
    ----------
    step : WorkStep
    counts : dict
        Its whole pieces, from ``whole_counts``. [-]
    units : str

    Returns
    -------
    str
        Pieces of a set by their marks, cut ones behind their kind, mortar by the batch.
    """
    pieces: dict[int, list[str]] = defaultdict(list)
    said: dict[str, str] = {}
    for one in step.goods:
        if one.item in (MORTAR, REFRACTORY):
            continue
        count = counts.get(one.item)
        if count is None:
            said[one.item] = f"{bulk(one.volume, units)} {_low(one.item)}"
        elif count and one.item.startswith(SET_PIECE):
            pieces[count].append(one.item.removeprefix(SET_PIECE).strip().split(",")[0])
        elif count and one.item.endswith(CUT) and (kind := one.item.removesuffix(CUT)) in said:
            said[kind] += f" and {count} cut"
        elif count:
            kind = one.item.removesuffix(WHOLE_ONES)
            said[kind] = (
                f"{count} {_low(kind)}{'s' if count > 1 and kind.endswith(SECTION) else ''}"
            )
    if FACING in said and COMMON in said:
        said = {
            FACING: f"{said.pop(FACING).removesuffix(BRICK)} and {said.pop(COMMON)}",
            **said,
        }
    marked = [
        f"{'pieces' if len(marks) * count > 1 else 'piece'} {', '.join(marks)}"
        + (f", {count} of each" if len(marks) > 1 and count > 1 else "")
        if len(marks) > 1 or count == 1
        else f"{count} pieces {marks[0]}"
        for count, marks in pieces.items()
    ]
    if step.batches:
        said[MORTAR] = f"mortar {step.batches} × {bulk(step.batch, units)}"
    if step.refractory > 0:
        much = bulk(step.refractory, units) if step.refractory > A_LITTLE else "a little"
        said[REFRACTORY] = f"{much} refractory"
    return "; ".join([*marked, *said.values()])


def _low(item: str) -> str:
    return item[0].lower() + item[1:]


def hands(plan: Plan, step: WorkStep) -> tuple[int, bool]:
    """How many people a step takes, never more than the plan has, and whether it takes a hoist.

    Parameters
    ----------
    plan : Plan
    step : WorkStep

    Returns
    -------
    tuple of int and bool
        One lays and the others serve where something is mixed or laid in number; two hold what one
        may not lift alone. [-]
    """
    asked = {lift.verdict for lift in plan.lifts if lift.step == step.number}
    served = step.batches > 0 or any(one.unit != "piece" for one in step.goods)
    count = plan.people if served else 2 if asked & {TWO, HOIST} else 1
    return min(count, plan.people), HOIST in asked


def plain_name(name: str) -> str:
    """A step's name without which of how many it is.

    >>> plain_name("Flue and chimney, lift 2 of 6"), plain_name("Smoke shelf 1 of 2")
    ('Flue and chimney', 'Smoke shelf')
    """
    return ONE_OF.sub("", name)


def numbers(found: Iterable[int]) -> str:
    """Numbers in a row, runs as from and to.

    >>> numbers([1, 4, 5, 6, 8, 9])
    '1, 4 to 6, 8, 9'
    """
    runs: list[list[int]] = []
    for n in sorted(set(found)):
        if runs and n == runs[-1][-1] + 1:
            runs[-1].append(n)
        else:
            runs.append([n])
    return ", ".join(
        f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs
    )


def straight_after(plan: Plan) -> dict[int, list[int]]:
    """Steps that each step waits for and that no other step it waits for has waited for already.

    Parameters
    ----------
    plan : Plan

    Returns
    -------
    dict of list
        By number. [-]
    """
    before: dict[int, set[int]] = {}
    found = {}
    for step in plan.steps:
        implied = set().union(*(before[n] for n in step.after))
        before[step.number] = implied | set(step.after)
        found[step.number] = sorted(set(step.after) - implied)
    return found


def bulk(volume: float, units: str) -> str:
    """What is mixed or poured, as one says it on site.

    Examples
    --------
    >>> bulk(0.0283, "feet-inches"), bulk(0.0583, "millimetres"), bulk(1.02, "millimetres")
    ('1.0 ft³', '58 L', '1.02 m³')
    >>> bulk(0.0032, "millimetres")
    '3.2 L'
    """
    if units == FEET_INCHES:
        return show(volume, "volume", units)
    liters = 1000 * volume
    if liters >= 999.5:
        return f"{volume:.2f} m³"
    return f"{liters:.0f} L" if liters >= 9.95 else f"{liters:.1f} L"
