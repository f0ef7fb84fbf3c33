"""A fireplace in bare outlines, to put arrows on: no hatching, no figures. [m]"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from fireplace_calc.drawing.sheets.sheet import Pair, View
from fireplace_calc.drawing.survey.chimney_outlines import (
    roof_outlines,
    roof_window,
    top_outlines,
    top_window,
)
from fireplace_calc.drawing.survey.rings import Line, clipped, closed
from fireplace_calc.drawing.views.cuts import clip_top
from fireplace_calc.drawing.views.front_elevation import breast_ring, lintel_ring, opening_ring
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box

MARGIN = 0.12

ABOVE = 0.5
"""How much of the flue is shown above the shoulder. [m]"""


class SurveySketch(NamedTuple):
    """A way of looking.

    Attributes
    ----------
    letter, title : str
        As they stand on the sheet.
    lines : callable
        From a geometry its outlines. [m]
    window : callable
        From a geometry what is shown: left, bottom, right, top. [m]
    """

    letter: str
    title: str
    lines: Callable[[Geometry], Iterator[Line]]
    window: Callable[[Geometry], tuple[float, float, float, float]]


def _front(g: Geometry) -> Iterator[Line]:
    f, d = g.frame, g.design
    ceiling, wide = d.house.ceiling, _front_half(g)
    yield [(-wide, 0.0), (wide, 0.0)], "ground"
    yield [(-wide, ceiling), (wide, ceiling)], "seen"
    yield closed(breast_ring(g, ceiling)), "seen"
    yield closed(opening_ring(g)), "cut"
    yield closed(lintel_ring(g)), "hidden" if d.lintel.material != "steel" else "fine"
    back = f.half_at(f.depth)
    yield [(-back, f.hearth), (-back, min(f.back_bend, f.opening_top))], "fine"
    yield [(back, f.hearth), (back, min(f.back_bend, f.opening_top))], "fine"
    if d.opening.extension > 0:
        old = f.opening_top - d.opening.extension
        yield [(-f.half_width, old), (f.half_width, old)], "hidden"
    if d.hearth.front > 0:
        half = f.half_width + d.hearth.side
        yield closed(box(-half, half, min(f.extension_top - 0.05, 0.0), f.extension_top)), "seen"
    yield from ((closed(ring), "seen") for ring in _trim_front(g))


def _trim_front(g: Geometry) -> Iterator[tuple[Pair, ...]]:
    f, d = g.frame, g.design
    for piece in d.surround.trim:
        if piece.place == "above":
            low, half = f.opening_top + piece.drawn_distance, f.half_width + 0.2
            yield box(-half, half, low, low + piece.height)
        else:
            for side in (-1, 1):
                near = side * (f.half_width + piece.drawn_distance)
                far = near + side * 0.09
                yield box(min(near, far), max(near, far), f.extension_top, f.opening_top + 0.1)


def _front_half(g: Geometry) -> float:
    f = g.frame
    return max(f.block_half, f.half_width + g.design.hearth.side) + MARGIN


def _front_window(g: Geometry) -> tuple[float, float, float, float]:
    wide = _front_half(g)
    return -wide, -0.06, wide, g.design.house.ceiling + 0.02


def _plan(g: Geometry) -> Iterator[Line]:
    f, d = g.frame, g.design
    lip, w, back = f.block_half, f.half_width, f.half_at(f.depth)
    outside = [(-w, 0.0), (-lip, 0.0), (-lip, f.block_back), (lip, f.block_back), (lip, 0.0)]
    yield [*outside, (w, 0.0), (back, f.depth), (-back, f.depth), (-w, 0.0)], "cut"
    if d.hearth.front > 0:
        half = w + d.hearth.side
        yield closed(box(-half, half, -d.hearth.front, 0.0)), "seen"
    for y in (f.throat_front, f.throat_back):
        yield [(-f.half_at(y), y), (f.half_at(y), y)], "hidden"
    side, behind = d.clearance.side or 0.05, d.clearance.back or 0.1
    x0, y0 = lip + side, f.block_back + behind
    for ring in (box(-x0 - 0.09, -x0, 0.0, y0), box(x0, x0 + 0.09, 0.0, y0)):
        yield closed(ring), "fine"
    yield closed(box(-x0 - 0.09, x0 + 0.09, y0, y0 + 0.09)), "fine"
    for piece in d.surround.trim:
        if piece.place == "beside":
            for s in (-1, 1):
                near = s * (w + piece.drawn_distance)
                far = near + s * 0.09
                yield (
                    closed(box(min(near, far), max(near, far), -piece.drawn_projection, 0)),
                    "fine",
                )


def _plan_window(g: Geometry) -> tuple[float, float, float, float]:
    f, d = g.frame, g.design
    wide = max(f.block_half + (d.clearance.side or 0.05) + 0.1, f.half_width + d.hearth.side)
    top = f.block_back + (d.clearance.back or 0.1) + 0.1
    return -wide - 0.05, -d.hearth.front - 0.05, wide + 0.05, top + 0.05


def _section(g: Geometry) -> Iterator[Line]:
    f, d = g.frame, g.design
    top, low = _section_top(g), _section_low(g)
    for part in g.parts:
        for polygon in part.section():
            ring = [(y, max(z, low)) for y, z in clip_top(polygon, top)]
            if len(ring) > 2 and max(z for _, z in ring) > low + 1e-6:
                yield closed(ring), "seen"
    front = -max(d.hearth.front, 0.1)
    yield [(front - 0.25, 0.0), (front, 0.0)], "ground"
    yield [(f.throat_front, f.throat), (f.depth, f.throat)], "hidden"
    for piece in d.surround.trim:
        if piece.place == "above":
            z = f.opening_top + piece.drawn_distance
            yield closed(box(-piece.drawn_projection, 0.0, z, z + piece.height)), "seen"
    if d.throat.damper == "throat":
        deep = f.throat_back - f.throat_front
        z = f.throat if d.throat.damper_height is None else f.opening_top + d.throat.damper_height
        yield [(f.throat_front, z), (f.throat_front + deep * 0.35, z + deep * 0.85)], "cut"


def _section_top(g: Geometry) -> float:
    return min(g.frame.flue_start + ABOVE, g.frame.crown_bottom)


def _section_low(g: Geometry) -> float:
    return min(g.frame.slab_bottom - 0.15, -0.15)


def _section_window(g: Geometry) -> tuple[float, float, float, float]:
    front = -max(g.design.hearth.front, 0.1) - 0.25
    return front, _section_low(g) - 0.02, g.frame.block_back + 0.1, _section_top(g) + 0.02


SKETCHES: dict[str, SurveySketch] = {
    "front": SurveySketch("A", "From the room", _front, _front_window),
    "plan": SurveySketch("B", "From above, at the hearth", _plan, _plan_window),
    "section": SurveySketch("C", "Cut down the middle", _section, _section_window),
    "roof": SurveySketch("D", "Against the roof, seen along the ridge", roof_outlines, roof_window),
    "top": SurveySketch("E", "Top of the chimney: side, and from above", top_outlines, top_window),
}


def draw_lines(
    view: View,
    name: str,
    geometry: Geometry,
    window: tuple[float, float, float, float],
    weight: str = "",
) -> None:
    """Draw a sketch.

    Parameters
    ----------
    view : View
    name : str
        Of ``SKETCHES``.
    geometry : Geometry
    window : left, bottom, right, top
        What is shown; lines end at its edge. [m]
    weight : str
        For all lines; without it each has its own.
    """
    for points, own in SKETCHES[name].lines(geometry):
        for run in clipped(points, window):
            view.path(run, weight or own)
