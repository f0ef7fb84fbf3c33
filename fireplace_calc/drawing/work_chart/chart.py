"""Sheets of the order of work: the chart, batches, cards, lifts, what can hurt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.build.on_site.set_in import list_set_in
from fireplace_calc.drawing.plates.bands import BETWEEN, Bands, Together, lowest, split, words
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.work_chart.at_hand import last_day
from fireplace_calc.drawing.work_chart.batch_rows import batch_table
from fireplace_calc.drawing.work_chart.lift_rows import (
    cautions,
    curing_rows,
    lift_table,
    staging_rows,
)
from fireplace_calc.drawing.work_chart.set_rows import rows_of_set
from fireplace_calc.drawing.work_chart.step_bars import LEGEND, heads, legend, step_rows
from fireplace_calc.drawing.work_chart.step_cards import cards, dangers
from fireplace_calc.takeoff.cost import Price

NAME = "Order of work"
FEW = 2
"""With more sheets than this the last is filled better. [-]"""
CARD = 84.0
"""A card is at least so wide. [mm]"""
THIRD, HALF = 115.0, 180.0
"""A column of lifts is at least so wide, and one with all that is known of them. [mm]"""


def plates(
    result: Assessment, units: str, paper: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """The chart, and as many sheets more as its cards take.

    Parameters
    ----------
    result : Assessment
    units : str
    paper : Paper
    prices : dict or None
        Not used here.
    """
    made, used = _sheets(result, units, paper, together=True)
    if len(made) > FEW:
        apart, deeper = _sheets(result, units, paper, together=False)
        if (len(apart), -deeper) < (len(made), -used):
            made = apart
    return [Plate(NAME, sheet) for sheet in made]


def _sheets(
    result: Assessment, units: str, paper: Paper, together: bool
) -> tuple[list[Sheet], float]:
    """Everything, with cautions in the columns of the cards, or after all else; and how far down
    the last sheet is used. [mm]
    """
    plan, bands, strip = result.work, Bands(paper), paper.strip
    wide = bands.wide
    bands.band(words(summary(result), wide))
    bands.band(step_rows(plan, units, wide), 1, heads(plan, wide))
    legend(bands.sheets[0], paper)
    cured = curing_rows(plan, max(strip.right - strip.left - LEGEND, CARD / 2))
    if sum(block.high for block in cured) <= strip.top - strip.bottom:
        stacked(bands.sheets[0], strip.left + LEGEND, strip.top, cured)
        cured = []
    thirds, halves, count = (max(1, int(wide // least)) for least in (THIRD, HALF, CARD))
    column, things = bands.column(count), list_set_in(plan, result.geometry)
    told = [*cards(plan, column, things), *dangers(plan, column)]
    told += rows_of_set(result.design, units, column)
    warned = [*(curing_rows(plan, column) if cured else []), *cautions(result.pack, column, units)]
    warned += staging_rows(plan, units, column)
    beside = beside_block(warned, strip, column)
    warned = warned[: len(warned) - len(beside)]
    batches = batch_table(plan, result.design.work.mortar_mix, units, wide)
    short = lift_table(plan, units, bands.column(thirds)), thirds
    full = lift_table(plan, units, bands.column(halves), full=True), halves
    early = lowest(batches, 1, bands.room) is not None
    if early:
        bands.band(batches)
    bands.band([*told, *warned] if together else told, count)
    bands.band(*(short if lowest(*short, bands.room) is not None else full))
    if not early:
        bands.band(batches)
    if not together:
        if lowest(warned, count, bands.room) is None:
            bands.begin()
        bands.band(warned, count)
    for n, blocks in enumerate(split(beside, len(beside), strip.top - strip.bottom)[0]):
        stacked(bands.sheets[-1], strip.left + n * (column + BETWEEN), strip.top, blocks)
    return bands.sheets, bands.cell.top - bands.y


def stacked(sheet: Sheet, left: float, top: float, blocks: Sequence[Together]) -> None:
    """Put blocks one under the other. [mm]"""
    for block in blocks:
        block.paint(sheet, left, top)
        top -= block.high


def beside_block(blocks: Sequence[Together], strip: Cell, column: float) -> list[Together]:
    """The last of some blocks, as many as have room beside the title block.

    Parameters
    ----------
    blocks : sequence of Together
    strip : Cell
    column : float
        Width they were made for. [mm]

    Returns
    -------
    list of Together
    """
    count = int((strip.right - strip.left + BETWEEN) / (column + BETWEEN) + 1e-6)
    found: list[Together] = []
    for block in reversed(blocks if count else ()):
        if block.leads or split([block, *found], count, strip.top - strip.bottom)[1]:
            break
        found.insert(0, block)
    return found


def summary(result: Assessment) -> str:
    """Hours, days and what they stand on.

    Returns
    -------
    str
        Two or three sentences.
    """
    plan, work = result.work, result.design.work
    helpers = plan.people - 1
    return (
        f"{plan.hours:.1f} hours of one mason"
        + (f" with {helpers} helper{'s' if helpers > 1 else ''}" if helpers else "")
        + f": {plan.days:.1f} days of {work.day:g} h at the wall, done on working day"
        f" {last_day(plan.calendar)} with the waits. Paces are those of the design: our own habit,"
        " to be replaced by yours; setting up for an arch, a lintel or a crown is our judgement."
        f" Weather: now {plan.while_working.do}; afterwards {plan.afterwards.do}."
    )
