"""Clearance at framing, where the chimney passes the ceiling; and mantel and trim at the face."""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.window import draw_window
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.cuts import mantel_cuts, mantel_reach
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import Point, box, chords, overlap

JOIST = (1.5 * INCH, 9.25 * INCH)
"""Thickness and height of a header, as drawn: usual practice. [m]"""
BOARD = 0.5 * INCH
"""Of the ceiling, as drawn. [m]"""
UPWARD, BESIDE = 0.35, 0.3
"""How much is shown under and over the ceiling, and of the framing beside the air. [m]"""


def faces_at(geometry: Geometry, z: float) -> tuple[float, float] | None:
    """Front and back of the masonry at a level, on the center line. [m]"""
    spans = [
        span
        for part in geometry.parts
        for ring in part.section()
        for span in chords(tuple((b, a) for a, b in ring), z)
    ]
    return (min(a for a, _ in spans), max(b for _, b in spans)) if spans else None


def framing_gaps(geometry: Geometry) -> tuple[float | None, float | None, float]:
    """Air before and behind the masonry at the ceiling, and the ceiling's level. [m]"""
    f, d = geometry.frame, geometry.design
    z = d.house.ceiling
    if z >= f.shoulder_top:
        return d.clearance.chimney, d.clearance.chimney, z
    return d.clearance.front, d.clearance.back, z


def framing_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure | None:
    """The figure of header, air space and fireblock at the ceiling; the room is at the left.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    Figure or None
        Nothing where the masonry does not reach the ceiling.
    """
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    before, behind, z = framing_gaps(geometry)
    faces = faces_at(geometry, z)
    if faces is None or z > f.crown_bottom - UPWARD:
        return None
    front, back = faces
    window = (
        front - (before or 0.0) - BESIDE,
        z - UPWARD * 0.5,
        back + (behind or 0.0) + BESIDE,
        z + UPWARD,
    )
    outdoors = d.chimney.location == "exterior"

    def draw(view: View) -> None:
        draw_window(view, geometry, window)
        sides = [(front, -1, before)] + ([] if outdoors else [(back, 1, behind)])
        for face, way, air in sides:
            if air is not None:
                _framing(view, geometry, window, face + way * air, way, z)
                if d.clearance.fireblock == "noncombustible":
                    ends = sorted((face, face + way * (air + JOIST[0])))
                    view.sheet.fill([view.ring(box(ends[0], ends[1], z - 0.002, z))], "metal", None)
                    view.path([(ends[0], z), (ends[1], z)], "flag")

    return annotated(
        "framing_detail",
        window,
        draw,
        units,
        scales,
        left=_framing_words(result, units, window, (front, back), outdoors),
        note="at the ceiling",
    )


def _framing(view: View, geometry: Geometry, window: Extent, at: float, way: int, z: float) -> None:
    """Header, and the ceiling up to it."""
    edge = window[0] if way < 0 else window[2]
    first, last = sorted((at, at + way * JOIST[0]))
    view.cut([box(first, last, z, z + JOIST[1])], "timber", "seen")
    view.path([(at, z), (edge, z)], "seen")
    view.path([(at, z), (at, z - BOARD), (edge, z - BOARD)], "seen")
    view.path([(at + way * JOIST[0], z + JOIST[1]), (edge, z + JOIST[1])], "fine")


def _framing_words(
    result: Assessment, units: str, window: Extent, faces: tuple[float, float], outdoors: bool
) -> list[Note]:
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    before, behind, z = framing_gaps(geometry)
    front, back = faces
    chimney = z >= f.shoulder_top
    limit = asked(result, units, "Framing at the chimney" if chimney else "CLR-01")
    rear = asked(
        result, units, "Framing at the chimney" if chimney else "Framing behind the firebox"
    )
    words: list[Note] = []
    if before is None:
        words.append(((front, z + 0.1), f"air to framing: not told{limit}"))
    else:
        words.append(((front - before / 2, z + 0.12), f"air {length(before, units)}{limit}"))
        words.append(((front - before - JOIST[0] / 2, z + JOIST[1] * 0.75), "header (size usual)"))
    if not outdoors:
        if behind is None:
            words.append(((back, z + 0.16), f"air behind: not told{rear}"))
        elif behind != before or rear != limit:
            words.append(
                ((back + behind / 2, z + 0.16), f"air behind {length(behind, units)}{rear}")
            )
    block = d.clearance.fireblock
    said = {
        "noncombustible": "fireblock, does not burn",
        "wood or gypsum": "FIREBLOCK OF WOOD OR GYPSUM",
        "none": "no fireblock",
    }.get(block or "", "fireblock: not told")
    if block == "noncombustible" and d.clearance.fireblock_depth is not None:
        said += f", {length(d.clearance.fireblock_depth, units)} deep"
    words.append(((front - (before or 0.0) * 0.3, z), said))
    fill = d.clearance.chimney_fill if chimney else d.clearance.fill
    filled = {"none": "air space left empty", None: "what is in the air space: not told"}.get(
        fill, f"air space filled: {fill}"
    )
    words.append(((front - (before or 0.0) * 0.6, z + UPWARD * 0.8), filled))
    return [*words, ((window[0] + 0.04, z - BOARD / 2), "ceiling")]


def mantel_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure | None:
    """The figure of mantel and trim over the opening; the room is at the left.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    Figure or None
        Nothing where the center line cuts none.
    """
    geometry = result.geometry
    f = geometry.frame
    pieces = mantel_cuts(geometry, f.opening_top + 3.0)
    rings = [ring for _, cut in pieces for ring in cut]
    if not rings:
        return None
    top = min(max(z for ring in rings for _, z in ring) + 0.06, f.opening_top + 1.1)
    window = (-mantel_reach(geometry) - 0.03, f.opening_top - 0.06, 0.14, top)
    zone = box(window[0], window[2], window[1], window[3])
    kept = [
        (part, within)
        for part, cut in pieces
        if (within := [c for ring in cut if len(c := overlap(ring, zone)) > 2])
    ]
    if not kept:  # it stands higher than is shown
        return None

    def draw(view: View) -> None:
        draw_window(view, geometry, window, kept)
        view.path([(0.0, window[1]), (0.0, f.opening_top)], "seen")

    reach = max(-min(y for y, _ in ring) for ring in rings)
    return annotated(
        "mantel_detail",
        window,
        draw,
        units,
        scales,
        left=_mantel_words(result, units, kept),
        below=[Sizes((-reach, 0.0), f.opening_top)],
        note="on the center line",
    )


def _mantel_words(
    result: Assessment, units: str, pieces: list[tuple[Part, list[list[Point]]]]
) -> list[Note]:
    geometry = result.geometry
    f = geometry.frame
    burns = {part.name: part.burns for part in mantel_parts(geometry)}
    words: list[Note] = []
    deepest = max(-a for _, rings in pieces for ring in rings for a, _ in ring)
    for part, rings in pieces:
        ring = max(rings, key=len)
        y = min(a for a, _ in ring) * 0.6
        z = (min(b for _, b in ring) + max(b for _, b in ring)) / 2
        out = -min(a for a, _ in ring)
        said = "" if out > deepest - 1e-6 else f", out {length(out, units)}"
        does = "burns" if burns.get(part.name) else "does not burn"
        words.append(((y, z), f"{part.name}{said}, {does}"))
    if any(burns.values()):
        near = asked(result, units, "CLR-07", "Mantel").removeprefix(", ")
        far = asked(result, units, "CLR-08").removeprefix(", ")
        if near:
            words.append(((0.0, f.opening_top), f"what burns: {near} from the opening"))
        if far:
            words.append(((-0.001, f.opening_top + 0.03), f"out from the face: {far}"))
    return words
