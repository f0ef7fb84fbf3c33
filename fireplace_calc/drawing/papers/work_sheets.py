"""The order of work on paper: steps to tick off, who lifts what, waits, curing and first fires,
cautions.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.build import Lift, WorkStep
from fireplace_calc.build.lifting.equation import capacity
from fireplace_calc.build.lifting.lift_list import HEAVY_UNIT
from fireplace_calc.build.notes import cautions
from fireplace_calc.build.on_site.set_in import SetIn, list_set_in
from fireplace_calc.build.production_rates import StepGoods
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.drawing.work_chart.at_hand import first_day, last_day, whole_counts
from fireplace_calc.report.sentences import weight

STEPS = (
    Column("Step", 10, "right"),
    Column("What", 24),
    Column("Because", 32),
    Column("With", 32),
    Column("Mortar batches", 15, "right"),
    Column("Hours", 12, "right"),
    Column("Day", 8, "right"),
    Column("Hold points, waits, cautions", 62),
)
LIFTS = (
    Column("Step", 10, "right"),
    Column("Piece", 26),
    Column("How many", 12, "right"),
    Column("Weighs", 13, "right"),
    Column("Set at", 14, "right"),
    Column("Held off the body", 14, "right"),
    Column("NIOSH, for one", 14, "right"),
    Column("Index, one and two", 14, "right"),
    Column("Who", 14),
    Column("Note", 50),
)
CAUTIONS = (Column("About", 16), Column("What", 100), Column("Source, confidence", 40))


def working(result: Assessment, units: str) -> Iterator[str | Table]:
    """Everything the crew takes along, paragraph by table."""
    plan = result.work
    set_in = list_set_in(plan, result.geometry)
    yield Table(
        "Order of work",
        STEPS,
        tuple(
            _step(step, counts, set_in)
            for step, counts in zip(plan.steps, whole_counts(plan.steps), strict=True)
        ),
        tick=True,
        before=(
            f"About {plan.hours:.0f} hours at the wall for one mason,"
            f" {last_day(plan.calendar)} days with the waits, at the paces of the design: our own"
            " habit, to be replaced by yours; 4 hours for the centering of an arch, 3 for the"
            " forms of a crown are our judgement. Now:"
            f" {plan.while_working.do}. Afterwards: {plan.afterwards.do}. A batch is used within"
            f" {plan.open_time:g} h."
        ),
    )
    yield from (
        f"Staging {stage.number}: floor at {show(stage.level, 'length', units)},"
        f" {' and '.join(stage.sides)}" + (", guard rails." if stage.rails else ".")
        for stage in plan.staging
    )
    yield Table(
        "Lifts, by weight",
        LIFTS,
        tuple(_lift(lift, units) for lift in plan.lifts),
        before=(
            "Who lifts a piece goes by its weight, in every step alike: one person up to"
            f" {weight(HEAVY_UNIT, units)}, two up to {weight(capacity(HEAVY_UNIT, 2), units)}, a"
            " hoist beyond, or where hands do not reach. The index is its weight over what the"
            " revised NIOSH equation of 1991 allows one and two at the worst bed: over 1 it"
            " strains."
        ),
    )
    fires = "; ".join(
        f"day {fire.day}: {fire.share:.0%} of a full fire, {fire.note}"
        for fire in plan.curing.fires
    )
    yield f"Curing {plan.curing.days} days, then {fires}. {plan.curing.note}"
    told = tuple(
        (c.topic, c.figured(units), f"{c.source}, {c.confidence}") for c in cautions(result.pack)
    )
    yield Table("Cautions", CAUTIONS, told, before="Local code and licensed practice come first.")


def _goods(need: StepGoods, counts: dict[str, int]) -> str:
    """What a step takes: whole pieces by number, the rest in the unit it is sold in."""
    item = need.item[0].lower() + need.item[1:]
    if need.item not in counts:
        return f"{need.quantity:.2g} {need.unit} {item}"
    return f"{counts[need.item]} × {item}" if counts[need.item] else ""


def _step(step: WorkStep, counts: dict[str, int], set_in: tuple[SetIn, ...]) -> tuple[str, ...]:
    goods = ", ".join(filter(None, (_goods(need, counts) for need in step.goods)))
    said = [f"{one.item}: {one.what}." for one in set_in if one.step == step.number]
    said += [f"Hold, {hold.kind}: {hold.what}" for hold in step.hold_points]
    said += [f"Wait {wait.days:g} d: {wait.what}." for wait in step.waits]
    return (
        str(step.number),
        step.name,
        ", ".join(step.why),
        goods,
        str(step.batches) if step.batches else "",
        f"{step.hours:.1f}",
        f"{first_day(step.start)}",
        " ".join([*said, *step.cautions]),
    )


def _lift(lift: Lift, units: str) -> tuple[str, ...]:
    index = (
        ""
        if lift.index_one is None or lift.index_two is None
        else f"{lift.index_one:.1f}, {lift.index_two:.1f}"
    )
    index = "out of reach" if lift.index_one == inf else index
    weighs = "not known" if lift.weight is None else weight(lift.weight, units)
    return (
        str(lift.step),
        lift.item,
        f"{lift.count:.3g}",
        weighs,
        show(lift.height, "length", units),
        show(lift.reach, "length", units),
        weight(lift.allowed, units),
        index,
        lift.verdict,
        lift.note,
    )
