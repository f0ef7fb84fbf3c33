"""What lies in a level cut plane, and the signs that every plan has."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.cuts import cut_parts
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Polygon, signed_area

BEYOND = 2.5
"""How far a center line runs past what it divides. [mm]"""


def level_rings(geometry: Geometry, part: Part, z: float) -> list[Polygon]:
    """A part cut at a level: outlines counter-clockwise, holes clockwise. [m]

    Parameters
    ----------
    geometry : Geometry
    part : Part
    z : float
        [m]
    """
    if geometry.design.piece_set is not None:
        return plan_rings(part, z)
    adds, holes = part.plan(z)
    return [r if signed_area(r) > 0 else r[::-1] for r in adds] + [
        r if signed_area(r) < 0 else r[::-1] for r in holes
    ]


def cut_level(
    view: View, geometry: Geometry, z: float, without: Collection[str] = ()
) -> list[tuple[Part, list[Polygon]]]:
    """Draw every part that a level plane cuts, and give what was cut.

    Parameters
    ----------
    view : View
    geometry : Geometry
    z : float
        [m]
    without : collection of str
        Names of parts that are left out.
    """
    cut = level_cuts_of(geometry, z, without)
    cut_parts(view, cut, holes=True)
    return cut


def level_cuts_of(
    geometry: Geometry, z: float, without: Collection[str] = ()
) -> list[tuple[Part, list[Polygon]]]:
    """Every part that a level plane cuts, with its rings. [m]"""
    found = [
        (part, level_rings(geometry, part, z))
        for part in geometry.parts
        if part.name not in without and part.bottom < z < part.top
    ]
    return [(part, rings) for part, rings in found if rings]


def center_lines(
    view: View,
    upright: Iterable[float],
    level: Iterable[float],
    box: tuple[float, float, float, float],
) -> None:
    """Center lines through a plan, a little beyond it.

    Parameters
    ----------
    view : View
    upright, level : iterable of float
        Where they stand, along x, and along y. [m]
    box : left, bottom, right, top
        What they divide. [m]
    """
    past = BEYOND / view.scale
    for x in upright:
        view.path([(x, box[1] - past), (x, box[3] + past)], "center")
    for y in level:
        view.path([(box[0] - past, y), (box[2] + past, y)], "center")


def arrow(view: View, start: tuple[float, float], end: tuple[float, float]) -> None:
    """A line with a black head at its end, of a short one smaller. [m]"""
    (ax, ay), (bx, by) = view.at(*start), view.at(*end)
    long = max(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5, 1e-6)
    u, v = (bx - ax) / long, (by - ay) / long
    head = min(3.0, 0.6 * long)
    base, half = (bx - head * u, by - head * v), head / 3
    view.sheet.line([(ax, ay), base], "seen")
    ring = [
        (bx, by),
        (base[0] - half * v, base[1] + half * u),
        (base[0] + half * v, base[1] - half * u),
    ]
    view.sheet.fill([ring], "ink", layer=9)
