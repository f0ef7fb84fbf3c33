"""Smoke chamber in section: its walls, its lining, how it draws in, what the flue stands on."""

from __future__ import annotations

from math import degrees

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.window import clipped, draw_window
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import flue_size, length
from fireplace_calc.geometry.parts import Geometry

UNDER, OVER = 0.06, 0.2
"""How much of firebox and flue is shown. [m]"""


def chamber_window(geometry: Geometry) -> Extent:
    """What is shown: front, bottom, back, top. [m]"""
    f = geometry.frame
    low = max(f.throat - UNDER, f.hearth + 0.01)
    return -0.03, low, f.block_back + 0.03, min(f.flue_start + OVER, f.crown_bottom - 0.01)


def corbel_step(geometry: Geometry) -> float | None:
    """How far each course of a corbelled chamber steps in at its steepest face. [m]"""
    chamber, f = geometry.design.smoke_chamber, geometry.frame
    if chamber.construction != "corbelled" or chamber.course is None:
        return None
    rise = f.taper_top - f.throat
    front = abs(f.flue_y - f.bore.depth / 2 - f.throat_front)
    back, side = abs(f.flue_y + f.bore.depth / 2 - f.depth), abs(f.throat_width - f.bore.width) / 2
    return max(front, back, side) / rise * chamber.course


def chamber_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of the smoke chamber; the room is at the left.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    geometry = result.geometry
    f = geometry.frame
    window = chamber_window(geometry)

    def draw(view: View) -> None:
        draw_window(view, geometry, window)
        front, back = f.flue_y - f.bore.depth / 2, f.flue_y + f.bore.depth / 2
        lines = [
            [(f.throat_front, f.throat), (f.depth, f.throat)],
            [(front, f.taper_top), (back, f.taper_top)],
        ]
        clipped(view, lines, window, "fine")
        view.path([(f.flue_y, window[1]), (f.flue_y, window[3])], "center")

    words = _words(result, units)
    kept = [n for n in words if window[0] < n[0][0] < window[2] and window[1] < n[0][1] < window[3]]
    return annotated(
        "chamber_detail",
        window,
        draw,
        units,
        scales,
        left=kept,
        note="on the center line",
    )


def _words(result: Assessment, units: str) -> list[Note]:
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    chamber, slopes = d.smoke_chamber, f.chamber_slopes
    middle = (f.throat + f.taper_top) / 2
    front = (f.throat_front + f.flue_y - f.bore.depth / 2) / 2
    back = (f.depth + f.flue_y + f.bore.depth / 2) / 2
    most = asked(result, units, "Slope of the smoke chamber")
    wall = asked(result, units, "Smoke chamber wall")
    part = geometry.parts_by_name.get("smoke chamber lining")
    thick = length(chamber.lining_thickness, units)
    lining = {"parged": "parging", None: "lining not told, drawn"}.get(
        chamber.lining, chamber.lining or ""
    )
    words: list[Note] = [
        ((front, middle + 0.02), f"front leans {degrees(slopes['front']):.0f} deg{most}"),
        ((back, middle - 0.05), f"back leans {degrees(slopes['back']):.0f} deg"),
        (
            ((f.depth + f.block_back) / 2, middle + 0.06),
            f"wall, {length(chamber.wall, units)} with its lining{wall}",
        ),
        (
            (f.flue_y + f.bore.depth * 0.2, min(f.flue_start + OVER * 0.6, f.crown_bottom)),
            f"flue {flue_size(f.bore)}",
        ),
    ]
    if part is not None:
        lean = (f.flue_y - f.bore.depth / 2 - f.throat_front) / (f.taper_top - f.throat)
        z = f.throat + 0.25 * (f.taper_top - f.throat)
        y = f.throat_front + lean * (z - f.throat) - chamber.lining_thickness / 2
        words.append(((y, z), f"{lining} {thick}{asked(result, units, 'SMK-03')}"))
    if (step := corbel_step(geometry)) is not None and chamber.course is not None:
        words.append(
            (
                (max(f.throat_front * 0.5, 0.01), f.throat + 0.12),
                f"corbelled: each course of {length(chamber.course, units)} steps in"
                f" {length(step, units)}{asked(result, units, 'SMK-07')}, parged smooth",
            )
        )
    if "transition" in geometry.parts_by_name:
        words.append(
            (
                (
                    max(f.flue_y - f.bore.depth / 2 - f.bore.wall, 0.01),
                    (f.taper_top + f.flue_start) / 2,
                ),
                f"transition, {geometry.parts_by_name['transition'].material}, carries the flue",
            )
        )
    return words
