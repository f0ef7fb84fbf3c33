"""Plan where the chimney comes out of the roof: slope, cricket, flashing, framing, and which way
the flue has gone.
"""

from __future__ import annotations

from collections.abc import Callable
from math import atan, degrees

from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.drawing.plan_sheets.level_cut import arrow, center_lines, cut_level
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import cut_at, flue_size, length
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Point, box

FLASHING, TIMBER = 4 * INCH, 1.5 * INCH
"""Of step flashing on the roof, and thickness of the framing, as drawn: usual practice. [m]"""
AROUND = 15 * INCH
"""How much of the roof is shown round the chimney. [m]"""
FARTHEST = 3 * AROUND
"""How far uphill a cricket is shown; one that meets the roof farther off is open there. [m]"""


def roof_level(geometry: Geometry) -> float:
    """Where the chimney is cut: over the roof at its uphill face, under the crown. [m]"""
    f = geometry.frame
    high = f.crown_bottom - 0.02
    return min(max(f.uphill_contact + 0.1, f.shoulder_top + 0.02), high)


def stack_box(geometry: Geometry, z: float) -> Extent:
    """Outside of the chimney in plan at a level: left, front, right, back. [m]"""
    f = geometry.frame
    middle = f.shift_at(z) + f.stack_middle
    return (
        middle - f.stack_half,
        f.flue_y - f.stack_depth,
        middle + f.stack_half,
        f.flue_y + f.stack_depth,
    )


def uphill(geometry: Geometry, stack: Extent) -> Callable[[float, float], Point]:
    """From a place beside the uphill face to the plan.

    Parameters
    ----------
    geometry : Geometry
    stack : Extent
        The chimney in plan. [m]

    Returns
    -------
    callable
        Takes how far uphill of that face, and how far to the right of the chimney's middle as one
        looks uphill; gives x and y. [m]
    """
    left, front, right, back = stack
    if geometry.design.roof.ridge_runs == "along the opening":
        return lambda up, aside: ((left + right) / 2 - aside, front - up)
    return lambda up, aside: (right + up, (front + back) / 2 - aside)


def cricket_run(geometry: Geometry, half: float) -> tuple[float, bool]:
    """How far uphill the ridge of a cricket meets the roof.

    Parameters
    ----------
    geometry : Geometry
    half : float
        Half the chimney's width across the slope. [m]

    Returns
    -------
    float, bool
        [m]; and whether it follows from a height that was told.
    """
    roof = geometry.design.roof
    if roof.cricket_height is None or roof.pitch <= 0:
        return half, False
    return roof.cricket_height / roof.pitch, True


def pitch_words(pitch: float, units: str) -> str:
    """The slope of a roof as the trade says it.

    >>> pitch_words(7 / 12, "feet-inches"), pitch_words(1.0, "millimetres")
    ('7:12', '45 deg')
    """
    if units == FEET_INCHES:
        return f"{round(pitch * 24) / 2:g}:12"
    return f"{degrees(atan(pitch)):.0f} deg"


def has_slope(geometry: Geometry) -> bool:
    """Whether water runs against a face of the chimney."""
    roof = geometry.design.roof
    return roof.pitch > 0 and roof.position != "through the ridge"


def arrow_side(geometry: Geometry) -> int:
    """On which side of the chimney the fall is shown, as one looks uphill: where neither a center
    line nor a dimension stands.
    """
    return -1 if geometry.design.roof.ridge_runs == "along the opening" else 1


def roof_figure(geometry: Geometry, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of the chimney in the roof.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    f, d = geometry.frame, geometry.design
    z = roof_level(geometry)
    stack = stack_box(geometry, z)
    place = uphill(geometry, stack)
    along = d.roof.ridge_runs == "along the opening"
    half = f.stack_half if along else f.stack_depth
    long = 2 * (f.stack_depth if along else f.stack_half)
    run, told = cricket_run(geometry, half)
    around = max(AROUND, (d.clearance.chimney or 0.0) + TIMBER + 4 * INCH)
    drawn = min(run + 0.15, FARTHEST) if d.roof.cricket and has_slope(geometry) else 0.0
    room = max(around, drawn)
    corners = [place(room, -half - around), place(-long - around, half + around)]
    shift = f.shift_at(z)
    extent = (
        min(*(x for x, _ in corners), 0.0 if shift else 9e9),
        min(y for _, y in corners),
        max(*(x for x, _ in corners), 0.0 if shift else -9e9),
        max(y for _, y in corners),
    )

    def draw(view: View) -> None:
        _roof(view, geometry, place, (half, long, around), run, told)
        _framing(view, stack, d.clearance.chimney)
        cut_level(view, geometry, z)
        at = [shift] if f.second is None else [shift, shift + f.second.x]
        center_lines(view, at, [f.flue_y], stack)
        if shift:
            past = 2.5 / view.scale
            view.path([(0.0, stack[3]), (0.0, extent[3] + past)], "center")

    air = d.clearance.chimney
    below = [] if air is None else [Sizes((stack[0] - air, stack[0]), stack[1], "air")]
    falls: list[Note] = []
    if d.roof.pitch > 0:
        beside = arrow_side(geometry) * (half + around - 0.06)
        said = f"roof {pitch_words(d.roof.pitch, units)}, falls this way"
        tail = -0.2 * long
        if not has_slope(geometry):  # clear of the arrow's head, where its leader goes the same way
            tail = -0.4 * long if along else 0.05
        falls = [(place(tail, beside), said)]
    return annotated(
        "roof_plan",
        extent,
        draw,
        units,
        scales,
        left=_words(geometry, units, stack, (half, long, run)),
        right=falls,
        below=below,
        above=[Sizes(tuple(sorted((0.0, shift))), stack[3], "offset")] if shift else [],
        note=cut_at(z, units),
    )


def _roof(
    view: View,
    geometry: Geometry,
    place: Callable[[float, float], Point],
    sizes: tuple[float, float, float],
    run: float,
    told: bool,
) -> None:
    """Its fall, flashing, ridge and cricket."""
    half, long, around = sizes
    roof = geometry.design.roof
    for side in (-1, 1):  # step flashing up both sides, apron below, pan above
        lap = half + FLASHING
        steps = [place(0.0, side * lap), place(-long, side * lap)]
        view.path(steps, "fine")
    view.path([place(-long - FLASHING, s * (half + FLASHING)) for s in (-1, 1)], "fine")
    for side in (-1, 1):
        view.path(
            [
                place(-long, side * (half + FLASHING)),
                place(-long - FLASHING, side * (half + FLASHING)),
            ],
            "fine",
        )
    beside = arrow_side(geometry) * (half + around - 0.06)
    if has_slope(geometry):
        arrow(view, place(-0.15 * long, beside), place(-0.85 * long, beside))
    elif roof.pitch > 0:
        arrow(view, place(-0.6 * long, beside), place(-long, beside))
        arrow(view, place(-0.4 * long, beside), place(0.0, beside))
        for side in (-1, 1):
            ridge = [place(-long / 2, side * half), place(-long / 2, side * (half + around / 2))]
            view.path(ridge, "seen")
    if roof.cricket and has_slope(geometry):
        weight = "seen" if told else "hidden"
        end = min(run, max(around, FARTHEST))
        left = half * (1 - end / max(run, 1e-9))
        for side in (-1, 1):
            view.path([place(0.0, side * half), place(end, side * left)], weight)
        view.path([place(0.0, 0.0), place(end, 0.0)], weight)
    elif has_slope(geometry) or roof.pitch <= 0:
        pan = [place(0.0, s * (half + FLASHING)) for s in (-1, 1)]
        view.path(
            [pan[0], place(FLASHING, -half - FLASHING), place(FLASHING, half + FLASHING), pan[1]],
            "fine",
        )


def _framing(view: View, stack: Extent, air: float | None) -> None:
    """Headers and trimmers under the roof, their air space away."""
    if air is None:
        return
    for grow in (air, air + TIMBER):
        ring = box(stack[0] - grow, stack[2] + grow, stack[1] - grow, stack[3] + grow)
        view.path([*ring, ring[0]], "hidden")


def _words(
    geometry: Geometry, units: str, stack: Extent, sizes: tuple[float, float, float]
) -> list[Note]:
    f, d = geometry.frame, geometry.design
    half, long, run = sizes
    place = uphill(geometry, stack)
    air = d.clearance.chimney
    left = stack[0]
    words: list[Note] = []
    if air is None:
        words.append(((left, stack[1] + 0.7 * (stack[3] - stack[1])), "air to framing: not told"))
    else:
        words.append(
            (
                (left - air - TIMBER / 2, stack[1] + 0.7 * (stack[3] - stack[1])),
                "framing under the roof, air all round",
            )
        )
    words.append(
        (
            (left - FLASHING, stack[1] + 0.35 * (stack[3] - stack[1])),
            f"step flashing at the sides, apron below, usual: see {marked('flashing_detail')[0]}",
        )
    )
    if has_slope(geometry):
        if d.roof.cricket:
            high = d.roof.cricket_height
            said = "height not told" if high is None else f"{length(high, units)} high"
            words.append((place(min(run, FARTHEST) * 0.5, 0.0), f"cricket, {said}"))
        else:
            said = "cricket: not told" if d.roof.cricket is None else "no cricket"
            words.append((place(FLASHING / 2, 0.0), said))
    lies = (
        ""
        if f.bore.round
        else (
            ", long side left to right"
            if f.bore.width > f.bore.depth
            else ", long side front to back"
        )
    )
    if not f.bore.round and abs(f.bore.width - f.bore.depth) < 1e-6:
        lies = ""
    shift = f.shift_at(roof_level(geometry))
    gone = f", {length(shift, units)} right of the opening's center" if shift else ""
    words.append(((shift, f.flue_y + f.bore.depth * 0.2), f"flue {flue_size(f.bore)}{lies}{gone}"))
    if f.second is not None:
        words.append(
            (
                (shift + f.second.x, f.flue_y - f.second.bore.depth * 0.2),
                f"second flue {flue_size(f.second.bore)}",
            )
        )
    return words
