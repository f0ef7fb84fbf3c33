"""Chimney and roof along the slope: apron, step flashing, counterflashing, cricket, framing."""

from __future__ import annotations

from math import ceil

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.drawing.details.window import clipped, zigzag
from fireplace_calc.drawing.plan_sheets.roof_plan import cricket_run, has_slope, pitch_words
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, annotated
from fireplace_calc.drawing.roof.roof_lines import along, roof_at
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box, overlap

DECK, LAP, STEP = 1 * INCH, 4 * INCH, 5.3 * INCH
"""Of the deck; how far flashing laps; least height of a step: as drawn, usual practice. [m]"""
BEAM = (1.5 * INCH, 7.25 * INCH)
"""Of a header, as drawn: usual practice. [m]"""
Line = list[tuple[float, float]]
AROUND, OVER, BELOW = 0.4, 0.35, 0.12
"""How much is shown each side, over the higher contact, and under the framing. [m]"""


def flashing_window(geometry: Geometry) -> Extent | None:
    """What is shown, along the slope from the uphill face, and levels; none where the chimney does
    not come through the roof. [m]
    """
    f, (_, _, stack) = geometry.frame, along(geometry)
    contacts = [roof_at(geometry, u) for u in (-stack, -stack / 2, 0.0)]
    if f.crown_bottom < max(contacts) + LAP or f.shoulder_top > min(contacts) - LAP:
        return None
    run = _run(geometry)[0]
    left, right = -stack - AROUND, max(AROUND, run + 0.1)
    low, high = min(contacts) - BEAM[1] - BELOW, min(max(contacts) + OVER, f.crown_bottom)
    return left, low, right, high


def _run(geometry: Geometry) -> tuple[float, bool]:
    """Run of a cricket, and whether its height is told; nought without one. [m]"""
    f, roof = geometry.frame, geometry.design.roof
    if not (roof.cricket and has_slope(geometry)):
        return 0.0, True
    half = f.stack_half if roof.ridge_runs == "along the opening" else f.stack_depth
    return cricket_run(geometry, half)


def flashing_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure | None:
    """The figure of chimney and roof, seen along the ridge, uphill to the right.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    Figure or None
        Nothing where the chimney ends under the roof, or its shoulder stands in it.
    """
    geometry = result.geometry
    window = flashing_window(geometry)
    if window is None:
        return None
    stack = along(geometry)[2]

    def draw(view: View) -> None:
        _stack(view, geometry, window, stack)
        _roof(view, geometry, window, stack)
        _flashing(view, geometry, window, stack)

    return annotated(
        "flashing_detail",
        window,
        draw,
        units,
        scales,
        left=_words(geometry, units, window, stack),
        note="along the slope",
    )


def _stack(view: View, geometry: Geometry, window: Extent, stack: float) -> None:
    """The chimney's side, hidden under the roof."""
    left, low, right, high = window
    for u in (-stack, 0.0):
        at = roof_at(geometry, u)
        view.path([(u, low), (u, at - DECK)], "hidden")
        view.path([(u, at), (u, high)], "seen")
    zigzag(view, (-stack, high), (0.0, high))


def _slope(geometry: Geometry, a: float, b: float, drop: float = 0.0) -> list[tuple[float, float]]:
    """The roof between two places, over its ridge where that lies between. [m]"""
    stack = along(geometry)[2]
    roof = geometry.design.roof
    ridge = -stack / 2 if roof.position == "through the ridge" else roof.ridge_distance
    at = [a, *([ridge] if a < ridge < b else []), b]
    return [(u, roof_at(geometry, u) - drop) for u in at]


def _roof(view: View, geometry: Geometry, window: Extent, stack: float) -> None:
    """Deck and headers cut at both sides, and where the roof meets the side of the chimney."""
    left, low, right, high = window
    zone = box(left, right, low, high)
    air = geometry.design.clearance.chimney
    for a, b in ((left, -stack), (0.0, right)):
        ring = [*_slope(geometry, a, b), *reversed(_slope(geometry, a, b, DECK))]
        if len(shown := overlap(ring, zone)) > 2:
            view.cut([shown], "roof", "seen")
        if air is None:
            continue
        near, far = (b - air, b - air - BEAM[0]) if b <= 0 else (a + air, a + air + BEAM[0])
        top = min(roof_at(geometry, near), roof_at(geometry, far)) - DECK
        beam = overlap(box(min(near, far), max(near, far), top - BEAM[1], top), zone)
        if len(beam) > 2:
            view.cut([beam], "timber", "seen")
    clipped(view, [_slope(geometry, -stack, 0.0)], window, "seen")


def _flashing(view: View, geometry: Geometry, window: Extent, stack: float) -> None:
    """Apron, steps up the side, pan or cricket: as usual."""
    roof = geometry.design.roof
    foot = roof_at(geometry, -stack)
    apron = [
        (-stack - LAP, roof_at(geometry, -stack - LAP) + 0.008),
        (-stack - 0.004, foot + 0.008),
        (-stack - 0.004, foot + LAP),
    ]
    clipped(view, [apron], window, "flag")
    steps, beds = _steps(geometry, stack)
    clipped(view, steps, window, "seen")
    clipped(view, beds, window, "fine")
    run, told = _run(geometry)
    if run > 0:
        top = roof_at(geometry, 0.0) + (roof.cricket_height or run * roof.pitch)
        saddle = [(run, roof_at(geometry, run)), (0.004, top), (0.004, top + LAP)]
        clipped(view, [saddle], window, "flag" if told else "hidden")
    else:
        at = roof_at(geometry, 0.0)
        pan = [(LAP, roof_at(geometry, LAP) + 0.008), (0.004, at + 0.008), (0.004, at + LAP)]
        clipped(view, [pan], window, "flag")


def beds_of(geometry: Geometry) -> list[float]:
    """Levels of the bed joints of the chimney, the middle of each; an even ladder where it is not
    laid in courses. [m]
    """
    courses = course_list(geometry).of("chimney walls")
    found = [course.top + course.bed / 2 for course in courses]
    if len(found) > 1:
        return found
    f = geometry.frame
    count = max(ceil((f.crown_bottom - f.shoulder_top) / STEP), 1)
    return [f.shoulder_top + n * STEP for n in range(1, count + 1)]


def _steps(geometry: Geometry, stack: float) -> tuple[list[Line], list[Line]]:
    """Counterflashing up the side, its upper edge in steps along beds, and the beds over it. [m]"""
    faces = [(-stack, 0.0)]
    if geometry.design.roof.position == "through the ridge":
        faces = [(-stack, -stack / 2), (0.0, -stack / 2)]
    beds = beds_of(geometry)
    every = max(ceil(STEP / (beds[1] - beds[0]) - 1e-6), 1) if len(beds) > 1 else 1
    edges: list[Line] = []
    lines: list[Line] = []
    for start, end in faces:
        low, high = roof_at(geometry, start), roof_at(geometry, end)
        over = [z for z in beds if z > low + LAP / 2]
        edge: Line = [(start, low)]
        at = start
        for n, z in enumerate(over):
            if n % every == 0 and at != end:
                share = (z - LAP / 2 - low) / (high - low) if high - low > 1e-6 else 1.0
                far = start + (end - start) * min(max(share, 0.0), 1.0)
                edge += [(at, z), (far, z)]
                at = far
            lines.append([(start, z), (at if n % every == 0 else edge[-1][0], z)])
        edges.append([*edge, (at, roof_at(geometry, at))])
    return edges, lines


def _words(geometry: Geometry, units: str, window: Extent, stack: float) -> list[Note]:
    roof, air = geometry.design.roof, geometry.design.clearance.chimney
    left, _, right, _ = window
    foot = roof_at(geometry, -stack)
    side = -stack * 0.6
    words: list[Note] = [
        ((-stack - LAP * 0.6, roof_at(geometry, -stack - LAP * 0.6) + 0.008), "apron, usual"),
        (
            (side, roof_at(geometry, side) + LAP * 0.35),
            "step flashing, counterflashing let into the bed joints: usual",
        ),
        (
            (left + 0.05, roof_at(geometry, left + 0.05) - DECK / 2),
            f"roof {pitch_words(roof.pitch, units)}",
        ),
    ]
    run, _told = _run(geometry)
    if run > 0:
        said = "not told" if roof.cricket_height is None else length(roof.cricket_height, units)
        top = roof_at(geometry, 0.0) + (roof.cricket_height or run * roof.pitch)
        words.append(
            ((run * 0.3, top + (roof_at(geometry, run) - top) * 0.3), f"cricket, height {said}")
        )
    elif has_slope(geometry):
        said = "pan, usual; cricket: not told" if roof.cricket is None else "pan, usual; no cricket"
        words.append(((LAP * 0.5, roof_at(geometry, LAP * 0.5) + 0.008), said))
    if air is None:
        words.append(((-stack, foot - DECK - 0.05), "air to framing: not told"))
    else:
        place = (
            -stack - air - BEAM[0] / 2,
            roof_at(geometry, -stack - air - BEAM[0]) - DECK - BEAM[1] * 0.6,
        )
        words.append((place, f"header (size usual), air {length(air, units)}, never filled"))
    return [n for n in words if left < n[0][0] < right and window[1] < n[0][1] < window[3]]
