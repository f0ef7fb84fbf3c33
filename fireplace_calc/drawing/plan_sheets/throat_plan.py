"""Plan at the throat: looking down from the foot of the smoke chamber on throat and smoke shelf."""

from __future__ import annotations

from math import degrees

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.plan_sheets.level_cut import center_lines, cut_level
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import cut_at, flue_size
from fireplace_calc.geometry.parts import Geometry

OVER = 1 * INCH
"""How far over the throat it is cut. [m]"""


def throat_level(geometry: Geometry) -> float:
    """Where the smoke chamber is cut, just over the throat. [m]"""
    f = geometry.frame
    return f.throat + min(OVER, (f.taper_top - f.throat) / 4)


def throat_figure(geometry: Geometry, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of throat, damper, smoke shelf and the chamber's walls.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    f, d = geometry.frame, geometry.design
    z = throat_level(geometry)
    extent = (-f.block_half, 0.0, f.block_half, f.block_back)
    a, b = throat_corners(geometry)

    def draw(view: View) -> None:
        cut_level(view, geometry, z)
        slot = [(-a, f.throat_front), (a, f.throat_front), (b, f.throat_back), (-b, f.throat_back)]
        view.path([*slot, slot[0]], "seen")
        if 0.0 < f.breast < f.throat_front - 1e-6:
            view.path([(-f.half_width, f.breast), (f.half_width, f.breast)], "hidden")
        if d.throat.damper == "throat":
            y = f.throat_front + 0.35 * (f.throat_back - f.throat_front)
            view.path([(-a * 0.97, y), (a * 0.97, y)], "fine")
        center_lines(view, [0.0], [], extent)

    half = f.throat_width / 2
    return annotated(
        "throat_plan",
        extent,
        draw,
        units,
        scales,
        left=_words(geometry, units),
        below=[Sizes((-half, 0.0, half), f.throat_front, "throat")],
        note=cut_at(z, units),
    )


def throat_corners(geometry: Geometry) -> tuple[float, float]:
    """Half the width of the throat at its front and at its back. [m]"""
    f = geometry.frame
    if geometry.design.piece_set is not None:
        return f.throat_width / 2, f.throat_width / 2
    return f.half_at(f.throat_front), f.half_at(f.throat_back)


def _words(geometry: Geometry, units: str) -> list[Note]:
    f, d = geometry.frame, geometry.design
    a, b = throat_corners(geometry)
    deep = f.throat_back - f.throat_front
    words: list[Note] = [((-a * 0.5, f.throat_front + 0.75 * deep), "throat")]
    if d.throat.damper == "throat":
        of = {"ferrous": ", cast iron or steel", "other metal": ", metal"}.get(
            d.throat.damper_material or "", ""
        )
        words.append(((-a * 0.75, f.throat_front + 0.35 * deep), f"damper{of}"))
    if f.throat_back < f.depth - 1e-6:
        words.append(((-b * 0.6, (f.throat_back + f.depth) / 2), "smoke shelf"))
    lean = degrees(f.chamber_slopes["sides"])
    words.append(
        (
            (-(f.block_half + f.throat_width / 2) / 2, f.depth * 0.6),
            f"smoke chamber wall, sides lean {lean:.0f} deg",
        )
    )
    if "smoke chamber lining" in geometry.parts_by_name:
        lined = d.smoke_chamber.lining or "parged"
        words.append(((-f.throat_width / 2 - 0.002, f.depth * 0.8), f"chamber, {lined}"))
    if f.second is not None and f.second.start < f.throat:
        words.append(((f.second.x, f.flue_y), f"second flue {flue_size(f.second.bore)}"))
    return words
