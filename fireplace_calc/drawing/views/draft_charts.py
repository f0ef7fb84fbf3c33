"""Pictures of the draft: pressure on the way of the smoke, face velocity against what one can move,
and what limits where.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, MM
from fireplace_calc.draft.conditions import RUNAWAY
from fireplace_calc.drawing.composed.compose import CELLS, HEIGHT, RULES, WIDTH
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.chart import Chart, lines_of_text, round_steps
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, spread
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import title
from fireplace_calc.explore import LIMITS, Curve, LimitMap, PressureStep

MARKS = (
    ("air", None),
    ("brick", "brick"),
    ("block", "block"),
    ("soot", "concrete"),
    ("stone", "stone"),
    ("earth", "timber"),
)
"""Tone and hatch of each limit on the map, in the order of ``LIMITS``; the first is left white."""


NO_FIGURE = (
    f"Over {RUNAWAY:.0f} Pa on the house: no figure.",
    "No fan of a house pulls so hard.",
    "Check exhaust fans and air changes at 50 Pa.",
)
"""Said instead of a chart where fans and leaks do not go together."""


@dataclass(frozen=True, slots=True)
class DraftCharts:
    """What the pictures of the draft are drawn from: steps of one evening, two curves, the map, and
    sentences for beside it.
    """

    evening: str
    steps: tuple[PressureStep, ...]
    by_sections: Curve
    by_extension: Curve
    map: LimitMap
    said: tuple[str, ...]


def _speed(units: str) -> tuple[float, str]:
    return (FOOT, "ft/s") if units == FEET_INCHES else (1.0, "m/s")


def _short(value: float, units: str) -> str:
    return show(value, "length", units).removesuffix(" mm")


def pressure(
    sheet: Sheet, cell: Cell, evening: str, steps: Sequence[PressureStep], units: str
) -> None:
    """Pressure against the open air at the same level, from the room up to the top."""
    title(sheet, cell, "Pressure on the way up")
    values, levels = [s.pressure for s in steps], [s.level for s in steps]
    if max(map(abs, values)) > RUNAWAY:
        rows = [row for line in NO_FIGURE for row in _rows(line, cell, 8.0)]
        lines_of_text(sheet, cell.left + 4.0, cell.top - 7.0, rows, SMALL, 5.0)
        return
    low, high = min(*values, -1.0), max(*values, 0.0)
    pad = 0.08 * (high - low)
    box = Cell(cell.left + 40.0, cell.bottom + 26.0, cell.right - 16.0, cell.top - 16.0)
    chart = Chart(sheet, box, (low - pad, high + pad), (min(levels) - 0.3, max(levels) + 0.3))
    chart.frame("Pa, against open air")
    sheet.text(
        cell.left + 4.0,
        cell.top - 6.5,
        f"{evening.capitalize()} evening, operating mode",
        size=SMALL,
        ha="left",
    )
    figures = max(2, min(6, int((box.right - box.left) / 6.5)))
    chart.ticks_across(round_steps(*chart.across, figures), lambda v: f"{v:g}")
    sheet.line([chart.at(0.0, chart.up[0]), chart.at(0.0, chart.up[1])], "hidden")
    put = spread(
        [chart.at(0, level)[1] for level in levels], [4.0] * len(steps), box.bottom, box.top + 4.0
    )
    for step, y in zip(steps, put, strict=True):
        place = chart.at(step.pressure, step.level)
        sheet.line([(box.left - 1.5, y), (box.left, place[1]), place], "fine")
        sheet.text(
            box.left - 2.2,
            y,
            f"{step.name} {_short(step.level, units)}",
            size=SMALL,
            ha="right",
            va="middle",
        )
        sheet.text(box.right + 1.5, y, f"{step.pressure:z.1f}", size=SMALL, ha="left", va="middle")
    chart.curve(values, levels)
    for step in steps:
        chart.mark(step.pressure, step.level, 0.7)


def velocity(sheet: Sheet, cell: Cell, curve: Curve, units: str) -> None:
    """Face velocity against one moved input: sizing mode as a line, operating mode as a band, the
    design marked.
    """
    factor, unit = _speed(units)
    title(sheet, cell, f"Face velocity, by {curve.label.split()[-1].lower()}")
    scale = 1.0 if curve.kind == "count" else INCH if units == FEET_INCHES else MM
    across = curve.values / scale
    top = max(curve.high.max(), curve.sizing.max(), curve.target) / factor
    box = Cell(cell.left + 14.0, cell.bottom + 21.0, cell.right - 26.0, cell.top - 12.0)
    chart = Chart(sheet, box, (float(across.min()), float(across.max())), (0.0, 1.08 * top))
    suffix = "" if curve.kind == "count" else ", in" if units == FEET_INCHES else ", mm"
    chart.frame(curve.label + suffix, unit)
    chart.ticks_across(round_steps(*chart.across, 7), lambda v: f"{v:g}")
    chart.ticks_up(round_steps(*chart.up, 6), lambda v: f"{v:g}")
    chart.band(across, curve.low / factor, curve.high / factor)
    chart.curve(across, curve.middle / factor, "seen")
    chart.curve(across, curve.sizing / factor, "cut")
    chart.level(curve.target / factor)
    ends = [curve.sizing[-1], curve.high[-1], curve.middle[-1], curve.low[-1], curve.target]
    names = [
        "sizing mode",
        "95 of 100",
        "half of 100",
        "5 of 100",
        f"wanted {curve.target / factor:.2f}",
    ]
    chart.names_right([v / factor for v in ends], names)
    here = float(np.clip(curve.here / scale, *chart.across))
    sheet.line([chart.at(here, 0.0), chart.at(here, chart.up[1])], "hidden", "good")
    for line in (curve.middle, curve.sizing):
        chart.mark(here, float(np.interp(here, across, line / factor)))


def limits(sheet: Sheet, cell: Cell, found: LimitMap, units: str) -> None:
    """What stops which raise with which chimney; the design is the mark."""
    title(sheet, cell, "What limits where")
    unit = INCH if units == FEET_INCHES else MM
    rows, columns = found.extensions / unit, found.sections.astype(float)
    half = (rows[1] - rows[0]) / 2 if len(rows) > 1 else 1.0
    box = Cell(cell.left + 16.0, cell.bottom + 21.0, cell.right - 6.0, cell.top - 10.0)
    chart = Chart(
        sheet, box, (columns[0] - 0.5, columns[-1] + 0.5), (float(rows[0]), float(rows[-1]))
    )
    edges = np.clip(np.concatenate([rows - half, rows[-1:] + half]), *chart.up)
    for i, row in enumerate(found.limit):
        starts = np.flatnonzero(np.concatenate([[True], row[1:] != row[:-1]]))
        for start, end in zip(starts, [*starts[1:], len(row)], strict=True):
            tone, hatch = MARKS[row[start]]
            ring = chart.places(
                *zip(
                    *[
                        (columns[k] + s, edges[i + up])
                        for k, s, up in (
                            (start, -0.5, 0),
                            (end - 1, 0.5, 0),
                            (end - 1, 0.5, 1),
                            (start, -0.5, 1),
                        )
                    ],
                    strict=True,
                )
            )
            sheet.fill([ring], tone, hatch)
    _borders(chart, found.limit, columns, edges)
    chart.frame(
        "Flue sections",
        "Firebox extension, in" if units == FEET_INCHES else "Firebox extension, mm",
    )
    sheet.line([(box.left, box.top), (box.right, box.top), (box.right, box.bottom)], "seen")
    chart.ticks_across(round_steps(columns[0], columns[-1], 8), lambda v: f"{v:g}")
    chart.ticks_up(
        list(rows if units == FEET_INCHES else round_steps(*chart.up, 8))[::2],
        lambda v: f"{v:g}",
    )
    x, y = found.here[1], found.here[0] / unit
    chart.mark(float(np.clip(x, *chart.across)), float(np.clip(y, *chart.up)))


def _borders(chart: Chart, limit: np.ndarray, columns: np.ndarray, edges: np.ndarray) -> None:
    """Lines between fields that are stopped by different things."""
    for i, k in zip(*np.nonzero(limit[:, 1:] != limit[:, :-1]), strict=True):
        x = columns[k] + 0.5
        chart.sheet.line([chart.at(x, edges[i]), chart.at(x, edges[i + 1])], "seen")
    for i, k in zip(*np.nonzero(limit[1:] != limit[:-1]), strict=True):
        y = edges[i + 1]
        chart.sheet.line([chart.at(columns[k] - 0.5, y), chart.at(columns[k] + 0.5, y)], "seen")


def _rows(words: str, cell: Cell, less: float) -> list[str]:
    """Words in rows that fit a cell but for so much. [mm]"""
    return lettering.in_rows(words, cell.right - cell.left - less, SMALL)


def legend(sheet: Sheet, cell: Cell, found: LimitMap, said: Sequence[str]) -> None:
    """What each ground on the map means, and what there is to say; in a low cell the grounds that
    are on the map alone.
    """
    present = set(np.unique(found.limit).tolist())
    texts = list(said)
    if found.everywhere:
        texts.append(f"Falls short at every setting: {', '.join(found.everywhere)}.")
    said_in = [_rows(text, cell, 8.0) for text in texts]
    grounds = {k: _rows(words, cell, 17.0) for k, words in enumerate(LIMITS)}
    y, foot = cell.top - 3.2, cell.bottom + 9.0
    if sum(1.5 + 3.9 * len(g) for g in grounds.values()) + 4.0 * sum(map(len, said_in)) > y - foot:
        grounds = {k: g for k, g in grounds.items() if k in present}
    for k, words in grounds.items():
        y -= 1.5
        for row, text in enumerate(words):
            y -= 3.9
            ink = "ink" if k in present else "soft"
            at = (cell.left + 15.0, y + 2.0)
            sheet.text(*at, text, size=SMALL, ha="left", va="middle", ink=ink)
            if row:
                continue
            x0, x1 = cell.left + 4.0, cell.left + 13.0
            ring = np.array([(x0, y), (x1, y), (x1, y + 4.0), (x0, y + 4.0)])
            tone, hatch = MARKS[k]
            sheet.fill([ring], tone, hatch)
            sheet.line(ring, "seen", closed=True)
    y -= 2.0
    for rows in said_in:
        if y - 4.0 * len(rows) >= foot:  # a sentence is written whole or not at all
            y = lines_of_text(sheet, cell.left + 4.0, y, rows, SMALL, 4.0)


def _draw(sheet: Sheet, name: str, cell: Cell, air: DraftCharts, units: str) -> None:
    if name == "front":
        limits(sheet, cell, air.map, units)
    elif name == "plan":
        legend(sheet, cell, air.map, air.said)
    elif name == "section":
        pressure(sheet, cell, air.evening, air.steps, units)
    else:
        middle = (cell.bottom + cell.top) / 2
        velocity(sheet, Cell(cell.left, middle, cell.right, cell.top), air.by_sections, units)
        velocity(sheet, Cell(cell.left, cell.bottom, cell.right, middle), air.by_extension, units)


def air_sheet(name: str, cell: Cell, air: DraftCharts, units: str = FEET_INCHES) -> Sheet:
    """What stands where a view stands, on paper of its own.

    Parameters
    ----------
    name : str
        Of the view in whose place it stands: ``front``, ``plan``, ``section`` or ``roof``.
    cell : Cell
        The paper; it begins at its lower left corner. [mm]
    air : DraftCharts
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    Sheet
    """
    made = Sheet(cell.right, cell.top)
    _draw(made, name, cell, air, units)
    return made


def air_view(name: str, air: DraftCharts, units: str = FEET_INCHES) -> Sheet:
    """What stands in one cell of the live picture."""
    made = Sheet(WIDTH, HEIGHT)
    _draw(made, name, CELLS[name], air, units)
    if name in RULES:
        made.line(RULES[name], "fine", "soft")
    return made


def air_views(air: DraftCharts, units: str = FEET_INCHES) -> list[tuple[Cell, Sheet]]:
    """All pictures of the draft in the cells of the live picture."""
    return [(cell, air_view(name, air, units)) for name, cell in CELLS.items()]
