"""Sheets of the order of work: the chart, batches, cards, lifts, what can hurt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from fireplace_calc.assessment import Assessment
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
from fireplace_calc.drawing.work_chart.step_bars import LEGEND, heads, legend, step_rows
from fireplace_calc.drawing.work_chart.step_cards import cards, dangers
from fireplace_calc.takeoff.cost import Price

NAME = "Order of work"
CARD = 84.0
"""A card is at least so wide. [mm]"""
THIRD = 115.0
"""A column of a table is at least so wide. [mm]"""


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
    plan, bands = result.work, Bands(paper)
    wide = bands.wide
    bands.band(words(summary(result), wide))
    bands.band(step_rows(plan, units, wide), 1, heads(plan, wide))
    legend(bands.sheets[0], paper)
    strip = paper.strip
    cured = curing_rows(plan, max(strip.right - strip.left - LEGEND, CARD / 2))
    if sum(block.high for block in cured) <= strip.top - strip.bottom:
        stacked(bands.sheets[0], strip.left + LEGEND, strip.top, cured)
        cured = []
    thirds, count = max(1, int(wide // THIRD)), max(1, int(wide // CARD))
    third, column = bands.column(thirds), bands.column(count)
    warned = cautions(plan, column)
    beside = beside_block(warned, strip, column)
    warned = warned[: len(warned) - len(beside)]
    tables = [
        (batch_table(plan, result.design.work.mortar_mix, units, wide), 1),
        (lift_table(plan, units, third), thirds),
    ]
    for table in [one for one in tables if lowest(*one, bands.room) is not None]:
        if lowest(*table, bands.room) is not None:
            bands.band(*table)
            tables.remove(table)
    told = [*cards(plan, column), *dangers(plan, column), *staging_rows(plan, units, column)]
    bands.band([*told, *(curing_rows(plan, column) if cured else []), *warned], count)
    for table in tables:
        bands.band(*table)
    for n, blocks in enumerate(split(beside, len(beside), strip.top - strip.bottom)[0]):
        stacked(bands.sheets[-1], strip.left + n * (column + BETWEEN), strip.top, blocks)
    return [Plate(NAME, sheet) for sheet in bands.sheets]


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
        + (f" with {helpers} to serve him" if helpers else "")
        + f": {plan.days:.1f} days of {work.day:g} h at the wall, done on working day"
        f" {last_day(plan.calendar)} with the waits. Paces are those of the design: our own habit,"
        " to be replaced by yours; setting up for an arch, a lintel or a crown is our judgement."
        f" Weather: now {plan.while_working.do}; afterwards {plan.afterwards.do}."
    )
