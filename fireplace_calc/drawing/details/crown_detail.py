"""Crown in section: slope, overhang, drip, bond break, and the liner through it."""

from __future__ import annotations

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.window import draw_window
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.roof.cap import draw_cap, over_flue
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry

UNDER = 0.2
"""How much of the chimney is shown under the crown. [m]"""
DRIP = 0.006
"""Radius of a drip groove, as drawn. [m]"""


def crown_window(geometry: Geometry) -> Extent:
    """What is shown: front, bottom, back, top. [m]"""
    f, d = geometry.frame, geometry.design
    half = f.stack_depth + d.chimney.overhang + 0.04
    top = max(f.liner_top, f.crown_top) + over_flue(geometry) + 0.03
    return f.flue_y - half, max(f.crown_bottom - UNDER, f.shoulder_top), f.flue_y + half, top


def crown_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of the crown, front to back through the first flue.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    ch, window = d.chimney, crown_window(geometry)
    front = f.flue_y - f.stack_depth

    def draw(view: View) -> None:
        draw_window(view, geometry, window)
        inside = (f.flue_y - f.unit_depth, f.flue_y + f.unit_depth)
        draw_cap(view, geometry, *inside, f.liner_top)
        if ch.bond_break:
            for y, way in zip(inside, (-1, 1), strict=True):
                at = y + way * 0.004
                view.path([(at, f.crown_bottom), (at, f.crown_top)], "seen")
        if ch.drip and ch.overhang > 4 * DRIP:
            _drip(view, geometry)
        view.path([(f.flue_y, window[1]), (f.flue_y, window[3])], "center")

    over = f.crown_bottom + ch.crown
    return annotated(
        "crown_detail",
        window,
        draw,
        units,
        scales,
        left=_words(result, units, window),
        below=[Sizes((front - ch.overhang, front), f.crown_bottom, "overhang")]
        if ch.overhang > 0
        else [],
        beside=[
            Sizes(
                tuple(sorted({f.crown_bottom, over, f.crown_top, f.liner_top})),
                f.flue_y + f.stack_depth + ch.overhang,
            )
        ],
        note="front to back",
    )


def _drip(view: View, geometry: Geometry) -> None:
    """A half round groove under each edge, halfway out."""
    f, out = geometry.frame, geometry.design.chimney.overhang
    turn = np.linspace(0.0, np.pi, 9)
    for side in (-1, 1):
        y = f.flue_y + side * (f.stack_depth + out * 0.6)
        arc = np.stack([y + DRIP * np.cos(turn), f.crown_bottom + DRIP * np.sin(turn)], 1)
        view.path(arc, "seen")


def _words(result: Assessment, units: str, window: Extent) -> list[Note]:
    geometry = result.geometry
    f, ch = geometry.frame, geometry.design.chimney
    front = f.flue_y - f.stack_depth
    edge = f.crown_bottom + ch.crown / 2
    material = ch.cap_material or "material not told"
    flat = ", flat" if ch.wash <= 0 else f", falls {length(ch.wash, units)} to the edge"
    drip = {True: "drip groove under the edge", False: "no drip", None: "drip: not told"}[ch.drip]
    bond = {
        True: "bond break round the liner, joint sealed (sealant usual)",
        False: "no bond break at the liner",
        None: "bond break at the liner: not told",
    }[ch.bond_break]
    words: list[Note] = [
        ((front + ch.wall * 0.4, edge), f"crown, {material}{flat}"),
        ((front - ch.overhang * 0.6, f.crown_bottom + DRIP / 2), drip),
        ((f.flue_y - f.unit_depth, f.crown_top - min(ch.wash, 0.05) * 0.2), bond),
        (
            (f.flue_y - f.bore.depth / 2 - f.bore.wall / 2, (f.crown_top + f.liner_top) / 2),
            f"liner stands over the crown{asked(result, units, 'Liner over the top')}",
        ),
        (
            (front + ch.wall / 2, window[1] + (f.crown_bottom - window[1]) * 0.6),
            f"{ch.masonry} {length(ch.wall, units)}{asked(result, units, 'Chimney wall')}",
        ),
    ]
    if ch.gap > 0:
        words.append(
            (
                (front + ch.wall + ch.gap / 2, window[1] + (f.crown_bottom - window[1]) * 0.3),
                f"gap {length(ch.gap, units)}{asked(result, units, 'Gap around the liner')}",
            )
        )
    high = f.liner_top + over_flue(geometry)
    if ch.rain_cap:
        told = "" if ch.rain_cap_area is not None else ", height not told"
        words.append(((f.flue_y, high - 0.012), f"rain cap{told}"))
    if ch.arrester:
        words.append(((f.flue_y - f.unit_depth * 0.6, (f.liner_top + high) / 2), "spark arrester"))
    return words
