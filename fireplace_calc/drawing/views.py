"""What the views share: cells on the sheet, fitting, titles, and cut parts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from fireplace_calc.drawing.sheet import Cell, Sheet, View
from fireplace_calc.drawing.style import SMALL, TITLE
from fireplace_calc.parts import Part
from fireplace_calc.solids import Polygon
from fireplace_calc.units import FEET_INCHES, show

LADDER = tuple(round(base * 10**power, 6) for power in (0, 1, 2) for base in (1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15,
                                                                              3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9))
"""Scale denominators tried on the screen; steps, so that a picture does not breathe while a slider moves. [-]"""

ARCHITECT = {
    FEET_INCHES: {8: '1 1/2" = 1\'-0"', 12: '1" = 1\'-0"', 16: '3/4" = 1\'-0"', 24: '1/2" = 1\'-0"', 32: '3/8" = 1\'-0"',
                  48: '1/4" = 1\'-0"', 64: '3/16" = 1\'-0"', 96: '1/8" = 1\'-0"', 128: '3/32" = 1\'-0"', 192: '1/16" = 1\'-0"',
                  240: '1" = 20\'-0"', 360: '1" = 30\'-0"'},
    "millimetres": {n: f"1:{n}" for n in (10, 15, 20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400)},
}
"""Scales of paper drawings, as the trade writes them."""


def fit(sheet: Sheet, cell: Cell, box: tuple[float, float, float, float], margins: tuple[float, float, float, float],
        scales: Iterable[float] = LADDER) -> tuple[View, float]:
    """Place a model box into a cell at the largest scale that leaves the margins free.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        Where on the paper. [mm]
    box : left, bottom, right, top
        Of the model. [m]
    margins : left, bottom, right, top
        Room for annotation. [mm]
    scales : iterable of float
        Denominators to choose from. [-]

    Returns
    -------
    View, float
        The window and its scale denominator. [-]
    """
    wide, high = cell.right - cell.left - margins[0] - margins[2], cell.top - cell.bottom - margins[1] - margins[3]
    scales = sorted(scales)
    for denominator in scales:
        k = 1000 / denominator
        if (box[2] - box[0]) * k <= wide + 1e-6 and (box[3] - box[1]) * k <= high + 1e-6:
            break
    spare_x, spare_y = wide - (box[2] - box[0]) * k, high - (box[3] - box[1]) * k
    x0 = cell.left + margins[0] + spare_x / 2 - box[0] * k
    y0 = cell.bottom + margins[1] + spare_y / 2 - box[1] * k
    return View(sheet, x0, y0, k), denominator


def title(sheet: Sheet, cell: Cell, text: str, scale: str = "") -> None:
    """Name of a view at the foot of its cell."""
    sheet.text(cell.left + 2, cell.bottom + 2.2, text, size=TITLE, ha="left", bold=True)
    if scale:
        sheet.text(cell.right - 2, cell.bottom + 2.2, scale, size=SMALL, ha="right", ink="soft")


def roomy(cell: Cell) -> bool:
    """Whether a cell has room for words beside the dimensions."""
    return cell.right - cell.left > 150.0


def length(value: float, units: str) -> str:
    """A length as it is written in a dimension string; metric ones without their unit."""
    return show(value, "length", units).removesuffix(" mm")


def cut_parts(view: View, cuts: Iterable[tuple[Part, list[Polygon]]]) -> None:
    """Parts where an upright knife went through: hatched, and outlined where one material meets another."""
    level_edges: dict[tuple[str, float], list[float]] = defaultdict(list)
    for part, polygons in cuts:
        for polygon in polygons:
            ring = view.ring(polygon)
            view.sheet.fill([ring], part.material, part.material)
            for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True):
                if abs(ay - by) < 1e-6:
                    level_edges[part.material, round(ay, 4)] += [min(ax, bx), max(ax, bx)]
                else:
                    view.sheet.line([(ax, ay), (bx, by)], "cut")
    for (_, y), ends in level_edges.items():
        ends = sorted(ends)
        for a, b in zip(ends[::2], ends[1::2], strict=True):
            if b - a > 1e-3:
                view.sheet.line([(a, y), (b, y)], "cut")


def clip_top(polygon: Polygon, top: float) -> Polygon:
    """What of an upright polygon lies under a level."""
    kept: list[tuple[float, float]] = []
    for (ax, az), (bx, bz) in zip(polygon, [*polygon[1:], polygon[0]], strict=True):
        if az <= top:
            kept.append((ax, az))
        if (az <= top) != (bz <= top):
            t = (top - az) / (bz - az)
            kept.append((ax + t * (bx - ax), top))
    return tuple(kept)


def break_line(view: View, x0: float, x1: float, z: float) -> None:
    """Zigzag where a drawing stops short of the thing."""
    (a, y), (b, _) = view.at(x0, z), view.at(x1, z)
    m = (a + b) / 2
    view.sheet.line([(a - 2, y), (m - 1.5, y), (m - 0.5, y + 1.6), (m + 0.5, y - 1.6), (m + 1.5, y), (b + 2, y)], "seen")
