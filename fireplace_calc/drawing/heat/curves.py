"""How the hottest wood warms while the fire burns, and goes on warming after it is out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.sheets.chart import Chart, round_steps
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import title
from fireplace_calc.heat.cuts.behind import WallRun
from fireplace_calc.heat.telling import exactly, told

PENS = {"kind": "hidden", "middle": "seen", "hard": "cut"}
"""Which line each fire has."""


class Reach(NamedTuple):
    """How far a chart of the wood goes.

    Attributes
    ----------
    until : float
        [h]
    hottest : float
        [C]
    """

    until: float
    hottest: float

    @classmethod
    def of(cls, runs: Sequence[WallRun]) -> Reach:
        """As far as the longest and the hottest of some runs."""
        last = max(float(run.times[-1]) for run in runs)
        return cls(last, max(run.highest for run in runs))


def _told(value: float, units: str) -> float:
    return value * 1.8 + 32.0 if units == FEET_INCHES else value


def wood_curves(
    sheet: Sheet,
    cell: Cell,
    runs: Sequence[WallRun],
    hour: float | None,
    units: str,
    short: bool,
    reach: Reach | None = None,
) -> None:
    """Draw the curves of the three fires, or of the one that is worked while a hand moves, with the
    lines that matter.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        [mm]
    runs : sequence of WallRun
    hour : float or None
        Where the map stands, marked; nowhere when None. [h]
    units : str
    short : bool
        Whether lines bear their temperature alone: on narrow paper, where the key has their names.
    reach : Reach or None
        How far the chart went at rest, while a hand moves: it goes no less far, and curves bear
        their names without a figure.
    """
    own = Reach.of(runs)
    until, hottest = own if reach is None else map(max, own, reach)
    lines = [line for line in heat_lines() if line.celsius < 1.1 * hottest]
    names = [exactly(n.celsius, units) + f" {n.name}" * (not short) for n in lines]
    for run in runs:
        figure = f", {told(run.safe_highest, units=units)}" if reach is None else ""
        names.append(f"{run.fire.key}{figure}")
    right = cell.right - 6.0 - max(width(name, SMALL) for name in names)
    box = Cell(cell.left + 16.0, cell.bottom + 21.0, right, cell.top - 12.0)
    low = min(float(run.wood.min()) for run in runs)
    high = hottest * 1.06
    chart = Chart(sheet, box, (0.0, until), (_told(low, units), _told(high, units)))
    chart.frame("hours after lighting", "°F" if units == FEET_INCHES else "°C")
    chart.ticks_across(round_steps(0.0, until, 5 if short else 9), lambda v: f"{v:g}")
    chart.ticks_up(round_steps(*chart.up, 7), lambda v: f"{v:g}")
    for line in lines:
        chart.level(_told(line.celsius, units))
    for run in runs:
        ys = [_told(float(v), units) for v in run.wood]
        chart.curve(run.times, ys, PENS[run.fire.key])
        top = int(run.wood.argmax())
        chart.mark(float(run.times[top]), ys[top], 0.8)
    burns = runs[0].out
    foot, head = chart.at(burns, chart.up[0]), chart.at(burns, chart.up[1])
    sheet.line([foot, head], "center")
    sheet.text(head[0], head[1] + 1.6, "fire out", size=SMALL)
    if hour is not None and abs(hour - burns) > 1e-9:
        at = float(np.clip(hour, 0.0, until))
        sheet.line([chart.at(at, chart.up[0]), chart.at(at, chart.up[1])], "hidden", "good")
    ends = [_told(line.celsius, units) for line in lines]
    ends += [_told(float(run.wood[-1]), units) for run in runs]
    chart.names_right(ends, names)
    title(sheet, cell, "Hottest wood")
