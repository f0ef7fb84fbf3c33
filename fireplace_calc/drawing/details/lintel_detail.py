"""Lintel and throat in section: what carries the breast, the damper, the smoke shelf."""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.design.opening import AngleLegs
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.window import clipped, draw_window
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.cuts import lintel_bars
from fireplace_calc.drawing.views.laid_bricks import section_lines
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box

UNDER, OVER, BEHIND = 0.12, 0.2, 0.14
"""How much is shown under the lintel, over the throat, and behind the back of the firebox. [m]"""


def lintel_window(geometry: Geometry) -> Extent:
    """What is shown: front, bottom, back, top. [m]"""
    f = geometry.frame
    back = min(f.depth + BEHIND, f.block_back)
    low = max(min(f.spring, f.opening_top) - UNDER, f.hearth + 0.01)
    return -0.03, low, back + 0.01, min(f.throat + OVER, f.flue_start - 0.01)


def damper_level(geometry: Geometry) -> float:
    """Where a damper in the throat sits. [m]"""
    f, told = geometry.frame, geometry.design.throat.damper_height
    return f.throat if told is None else min(f.opening_top + told, f.taper_top)


def damper_blade(geometry: Geometry) -> list[tuple[float, float]]:
    """A blade that stands open, hinged at the front of the throat. [m]"""
    f, z = geometry.frame, damper_level(geometry)
    deep = f.throat_back - f.throat_front
    return [(f.throat_front, z), (f.throat_front + deep * 0.35, z + deep * 0.85)]


def lintel_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of lintel, damper and smoke shelf; the room is at the left.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    window = lintel_window(geometry)

    def draw(view: View) -> None:
        section_lines(view, geometry, box(window[0], window[2], window[1], f.throat))
        draw_window(view, geometry, window)
        lintel_bars(view, geometry)
        clipped(view, [[(f.throat_front, f.throat), (f.depth, f.throat)]], window, "fine")
        clipped(view, [[(0.0, window[1]), (0.0, f.opening_top)]], window, "seen")
        if f.hood > 0:
            clipped(view, [[(0.0, f.clear_top), (0.0, f.opening_top)]], window, "cut")
        if f.breast > 0 and f.spring < f.opening_top:
            clipped(view, [[(f.breast, f.spring), (f.breast, f.opening_top)]], window, "fine")
        if d.throat.damper == "throat":
            clipped(view, [damper_blade(geometry)], window, "cut")

    upright, level = _legs(geometry)
    return annotated(
        "lintel_detail",
        window,
        draw,
        units,
        scales,
        left=_words(result, units, window),
        below=[Sizes(level, f.opening_top)] if level else [],
        beside=[Sizes(upright, level[-1] if level else f.breast)] if upright else [],
        note="on the center line",
    )


def _legs(geometry: Geometry) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Where the upright and the level leg of the first angle begin and end, or the height of
    another lintel. [m]
    """
    f, d = geometry.frame, geometry.design
    top = f.opening_top
    if d.piece_set is not None:
        angle = d.pieces.facing_angle(d.opening.head)
        if angle is None:
            return (), ()
        back = d.pieces.facing
        return (top, top + d.pieces.angle_height), (back - angle.level, back)
    if "arch" in geometry.parts_by_name:
        return (top, top + d.lintel.height), ()
    if d.lintel.material == "steel":
        return (top, top + d.lintel.height), (0.0, d.lintel.legs(f.breast).level)
    return (top, top + d.lintel.height), ()


def _angle_words(count: int, angle: AngleLegs, high: float, units: str) -> str:
    sizes = " x ".join(length(v, units) for v in (high, angle.level, angle.thickness))
    return f"steel angle {sizes}" if count == 1 else f"{count} steel angles {sizes}"


def _bears(bearing: float | None, units: str) -> str:
    return "bearing not told" if bearing is None else f"bears {length(bearing, units)} at each end"


def _lintel_words(result: Assessment, units: str) -> list[Note]:
    """What carries breast and facing."""
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    top = f.opening_top
    if d.piece_set is not None:
        made: list[Note] = [
            ((min(f.breast, f.throat_front) - 0.03, top + 0.08), "lintel of the set")
        ]
        if (angle := d.pieces.facing_angle(d.opening.head)) is not None:
            said = _angle_words(1, angle, d.pieces.angle_height, units)
            limit = asked(result, units, "LIN-03")
            bears = _bears(d.pieces.angle_bearing, units)
            place = (d.pieces.facing - angle.level * 0.7, top + angle.thickness / 2)
            made.append((place, f"{said} under the facing, {bears}{limit}"))
        return made
    limit = asked(result, units, "LIN-01")
    if "arch" in geometry.parts_by_name:
        return [
            (
                (f.breast * 0.4, top + d.lintel.height * 0.5),
                f"arch, ring {length(d.lintel.height, units)} high: set out in figure 12",
            )
        ]
    if d.lintel.material == "steel":
        legs = d.lintel.legs(f.breast)
        said = _angle_words(d.lintel.angles, legs, d.lintel.height, units)
        place = (legs.level * 0.7, top + legs.thickness / 2)
        return [(place, f"{said}, {_bears(d.lintel.bearing, units)}{limit}")]
    kind = d.lintel.material or "kind not told"
    place = (f.breast * 0.4, top + d.lintel.height * 0.5)
    return [(place, f"lintel, {kind}, {_bears(d.lintel.bearing, units)}{limit}")]


def _words(result: Assessment, units: str, window: Extent) -> list[Note]:
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    words = _lintel_words(result, units)
    over = asked(result, units, "THR-04", "THR-01", "Throat over the opening")
    if d.throat.damper == "throat":
        of = {"ferrous": ", cast iron or steel", "other metal": ", metal", "other": ""}.get(
            d.throat.damper_material or "", ", metal not told"
        )
        hand = {
            True: "",
            False: ", not worked from the room",
            None: ", worked from the room: not told",
        }[d.throat.worked_from_room]
        (ax, az), (bx, bz) = damper_blade(geometry)
        words.append((((ax + bx) / 2, (az + bz) / 2), f"damper{of}{hand}"))
    elif d.throat.damper == "flue top":
        words.append((((f.throat_front + f.throat_back) / 2, f.throat), "no damper here: flue top"))
    words.append(
        (
            (f.throat_front + 0.7 * (f.throat_back - f.throat_front), f.throat),
            f"throat over the opening{over}" if over else "throat",
        )
    )
    if d.piece_set is not None and d.pieces.gap > 0:
        words.append(
            (
                (d.pieces.facing + d.pieces.gap / 2, f.throat + 0.06),
                f"gap for movement {length(d.pieces.gap, units)}, wool or open, never mortar",
            )
        )
    if f.throat_back < f.depth - 1e-6:
        words.append(((f.depth - 0.012, f.throat - 0.012), "smoke shelf"))
    if f.hood > 0:
        words.append(((0.0, (f.clear_top + f.opening_top) / 2), "metal hood"))
    if (face := geometry.parts_by_name.get("firebox lining")) is not None:
        z = (window[1] + f.throat) / 2
        thick = d.firebox.lining_thickness
        words.append(
            ((f.back_at(z) + thick * 0.4, z), f"lining, {face.material} {length(thick, units)}")
        )
    return [note for note in words if _inside(note[0], window)]


def _inside(place: tuple[float, float], window: Extent) -> bool:
    return window[0] < place[0] < window[2] and window[1] < place[1] < window[3]
