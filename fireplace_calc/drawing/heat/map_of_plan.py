"""Temperatures in a cut at one hour: bands, and lines at the temperatures that matter."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

import numpy as np
from contourpy import FillType, contour_generator
from scipy.ndimage import distance_transform_edt

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.drawing.plates.marks import center_line
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Cell, Pair, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit, title
from fireplace_calc.geometry.mesh import FlatCut, not_covered
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.heat.conduction.mesh import HeatMesh
from fireplace_calc.heat.cuts.wall_plan import WallPlan
from fireplace_calc.heat.telling import exactly

BANDS = (-60.0, 35.0, 52.0, 71.0, 86.0, 150.0, 250.0, 2000.0)
"""Between them a tone is the same. [C]"""
EDGE = 0.005
"""How far paper goes over the edge of a map, where tones would fringe it. [m]"""
KEY_ROW = 5.6
"""Of a row of the key. [mm]"""


def heat_map(
    sheet: Sheet,
    cell: Cell,
    mesh: HeatMesh,
    points: Array,
    plan: WallPlan,
    hour: float,
    units: str,
    key_under: bool = False,
) -> View:
    """Draw half a plan with its temperatures, the room below.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        [mm]
    mesh : HeatMesh
    points : array (points,)
        [C]
    plan : WallPlan
        Whose outlines are drawn over it.
    hour : float
        Written under it. [h]
    units : str
    key_under : bool
        Whether the key stands under the map, on narrow paper, and not beside it.
    """
    right, top = float(mesh.x[-1]), float(mesh.y[-1])
    view = placed_with_key(sheet, cell, (0.0, -0.05, right, top), units, key_under)
    temperatures(view, mesh, points)
    _outlines(view, plan)
    _words(view, plan)
    title(sheet, cell, f"In plan at mid firebox, {hour:g} h after lighting")
    return view


def placed_with_key(
    sheet: Sheet,
    cell: Cell,
    extent: tuple[float, float, float, float],
    units: str,
    under: bool,
) -> View:
    """The window of a map, its key drawn beside or under it.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        [mm]
    extent : left, bottom, right, top
        Of what is shown. [m]
    units : str
    under : bool
        Whether the key stands under the map.
    """
    low = KEY_ROW * len(_key_words(units)) + 4.0 if under else 0.0
    margins = (4, 16 + low, 4, 6) if under else (4, 16, key_width(units), 6)
    view, _ = fit(sheet, cell, extent, margins, LADDER)
    left, top = view.at(extent[2], extent[3])
    if under:
        key_of_bands(sheet, cell.left + 4.0, cell.bottom + 14.0 + low, units)
    else:
        key_of_bands(sheet, left + 5.0, top, units)
    return view


def _words(view: View, plan: WallPlan) -> None:
    """What is what, where there is room for it: fire, air, wood."""
    deep = max(y for _, y in plan.fire)
    narrow = min(x for x, _ in plan.fire if x > 0)
    places = [("fire", narrow / 2, deep / 2, narrow, deep)]
    if plan.framing is not None:
        back = plan.deep + plan.back_gap / 2
        places.append(("air", plan.half / 2, back, plan.half, plan.back_gap))
        x, top = view.at(plan.half / 2, view_top(plan))
        view.sheet.text(x, top + 1.5, "framing", size=SMALL)
    for word, x, y, wide, high in places:
        if width(word, SMALL) + 2 < wide * view.scale and high * view.scale > SMALL + 1.5:
            view.sheet.text(*view.at(x, y), word, size=SMALL, va="middle")


def temperatures(view: View, mesh: HeatMesh, points: Array) -> None:
    """Bands and lines of temperature, without outlines; hollows have to be laid over them.

    Parameters
    ----------
    view : View
    mesh : HeatMesh
    points : array (points,)
        [C]
    """
    x, y, field = _field(mesh, points)
    x, y = x * view.scale + view.x0, y * view.scale + view.y0
    made = contour_generator(x, y, _carried(field), fill_type=FillType.OuterOffset)
    for n, (low, high) in enumerate(zip(BANDS, BANDS[1:], strict=False)):
        polygons, offsets = made.filled(low, high)[:2]
        for polygon, cuts in zip(polygons, offsets, strict=True):
            rings = np.split(np.asarray(polygon), np.asarray(cuts)[1:-1].astype(int))
            view.sheet.fill(rings, f"heat {n}", layer=1 + n / 10)
    solid = contour_generator(x, y, field)
    for line in heat_lines():
        for drawn in solid.lines(line.celsius):
            view.sheet.line(np.asarray(drawn), "fine", "ink")


def key_width(units: str) -> float:
    """Room that the key takes beside a map. [mm]"""
    return 6.0 + max(width(text, SMALL) for text in _key_words(units)) + 14.0


def _field(mesh: HeatMesh, points: Array) -> tuple[Array, Array, Array]:
    """Places and temperatures of the cells' middles; hollow ones have none.

    The outermost cells are carried to the edges, so that bands reach them.
    """
    field = np.full(mesh.which.shape, np.nan)
    field[mesh.solid] = points[: mesh.cells]
    x, y = (mesh.x[1:] + mesh.x[:-1]) / 2, (mesh.y[1:] + mesh.y[:-1]) / 2
    x[0], x[-1], y[0], y[-1] = mesh.x[0], mesh.x[-1], mesh.y[0], mesh.y[-1]
    return x, y, field


def _carried(field: Array) -> Array:
    """The same with bands that go on into all that is hollow: what is hollow is laid over them."""
    nearest = distance_transform_edt(np.isnan(field), return_distances=False, return_indices=True)
    found: Array = field[tuple(nearest)]
    return found


def _outlines(view: View, plan: WallPlan) -> None:
    def half(ring: Polygon) -> list[Pair]:
        return [(max(x, 0.0), y) for x, y in ring]

    for body in plan.bodies:
        for ring in (*body.rings, *body.holes):
            view.seen(half(ring))
    side, back = plan.half + plan.side_gap, plan.deep + plan.back_gap
    whole = box(0.0, view_right(plan), 0.0, view_top(plan))
    cuts: list[FlatCut] = [(body.rings, body.holes) for body in plan.bodies]
    cuts.append(((whole,), (box(0.0, side, 0.0, back),)))  # the framing
    lay_hollows(view, whole, cuts, [plan.fire])
    view.path(plan.fire[1:], "cut")
    center_line(view.sheet, view.at(0.0, -0.04), view.at(0.0, float(view_top(plan)) + 0.03))
    if (f := plan.framing) is not None:
        for deep in (0.0, f.stud_deep, f.stud_deep + f.board_thick):
            view.path([(0.0, back + deep), (side + deep, back + deep), (side + deep, 0.0)], "seen")


def lay_hollows(
    view: View, whole: Polygon, solid: Iterable[FlatCut], open_: Iterable[Polygon]
) -> None:
    """Paper over all of a window that nothing solid covers, to its very outlines.

    Parameters
    ----------
    view : View
    whole : polygon
        The window. [m]
    solid : iterable of FlatCut
        [m]
    open_ : iterable of polygon
        What is hollow though something covers it. [m]
    """
    (left, foot), _, (right, top), _ = whole
    window = box(left - EDGE, right + EDGE, foot - EDGE, top + EDGE)
    for rings in not_covered(window, solid, open_):
        view.sheet.fill([view.ring(ring) for ring in rings], "paper", layer=3)


def view_right(plan: WallPlan) -> float:
    """How far a plan reaches to the side. [m]"""
    f = plan.framing
    return plan.half + (plan.side_gap + f.stud_deep + f.board_thick if f else 0.0)


def view_top(plan: WallPlan) -> float:
    """How far back a plan reaches. [m]"""
    f = plan.framing
    return plan.deep + (plan.back_gap + f.stud_deep + f.board_thick if f else 0.0)


def _bands(units: str) -> list[str]:
    ends = [exactly(value, units) for value in BANDS[1:-1]]
    named = {line.celsius: line.name for line in heat_lines()}
    words = [f"under {ends[0]}"]
    words += [f"{a.split()[0]} to {b}" for a, b in zip(ends, ends[1:], strict=False)]
    words.append(f"over {ends[-1]}")
    return [
        f"{word}; {exactly(low, units)}: {named[low]}" if low in named and low > 0 else word
        for word, low in zip(words, BANDS, strict=False)
    ]


@lru_cache(maxsize=8)
def _key_words(units: str) -> tuple[str, ...]:
    """Every tone, then the lines that no tone begins at."""
    lines = [line for line in heat_lines() if line.celsius not in BANDS]
    return (*_bands(units), *(f"{exactly(n.celsius, units)}: {n.name}" for n in lines))


def key_of_bands(sheet: Sheet, left: float, top: float, units: str) -> None:
    """What each tone and line means, from a corner to the right and down. [mm]"""
    for n, word in enumerate(_key_words(units)):
        y = top - (n + 1) * KEY_ROW
        ring = np.array([(left, y), (left + 7.0, y), (left + 7.0, y + 4.0), (left, y + 4.0)])
        if n < len(BANDS) - 1:
            sheet.fill([ring], f"heat {n}", layer=2)
            sheet.line(ring, "fine", closed=True)
        else:
            sheet.line([(left, y + 2.0), (left + 7.0, y + 2.0)], "fine")
        sheet.text(left + 9.0, y + 2.0, word, size=SMALL, ha="left", va="middle")
