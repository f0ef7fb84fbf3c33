"""Where a second flue stands beside the first, and how much wider the chimney grows for it. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, sin

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import Bore, flue_bore


@dataclass(frozen=True, slots=True)
class Beside:
    """A second flue, as it stands in the chimney. [m]

    Attributes
    ----------
    bore : Bore
        Inside of its liner.
    x : float
        Of its center line from the first flue's, to the right. [m]
    unit_half, unit_depth : float
        Half the outside of its liner, or of its casing. [m]
    cavity_half, cavity_depth : float
        The same with the gap. [m]
    between : float
        Masonry between the two, gaps not counted. [m]
    start, top : float
        Levels of its liner's ends. [m]
    set_out : bool
        Whether it is drawn farther out than asked, to pass the firebox or the smoke chamber.
    """

    bore: Bore
    x: float
    unit_half: float
    unit_depth: float
    cavity_half: float
    cavity_depth: float
    between: float
    start: float
    top: float
    set_out: bool


def unit_depth(design: Design) -> float:
    """Half the outside of the second flue's unit, front to back; nothing where there is none.

    Parameters
    ----------
    design : Design

    Returns
    -------
    float
        [m]
    """
    if not design.second_flue.drawn:
        return 0.0
    bore = flue_bore(design.second_flue)
    return bore.depth / 2 + bore.wall + (design.flue.casing if design.method == "modular" else 0.0)


def beside(
    design: Design,
    cavity_half: float,
    flue_y: float,
    levels: tuple[float, float, float, float, float],
    chamber_reach: float,
    side_slope: float,
    breast: float,
) -> Beside | None:
    """Stand the second flue beside the first; nothing where there is none.

    Parameters
    ----------
    design : Design
    cavity_half : float
        Half the width of the first flue with its gap. [m]
    flue_y : float
        Both center lines, from the opening plane. [m]
    levels : tuple of float
        Underside and top of the hearth slab, throat, start of the first flue, and its top. [m]
    chamber_reach : float
        How far the smoke chamber's lining reaches sideways. [m]
    side_slope : float
        How far a side of the firebox closes in per unit of depth. [-]
    breast : float
        Thickness of the wall over the opening, as drawn. [m]
    """
    if not design.second_flue.drawn:
        return None
    told, chimney, bore = design.second_flue, design.chimney, flue_bore(design.second_flue)
    slab_bottom, slab_top, throat, flue_start, top = levels
    casing = design.flue.casing if design.method == "modular" else 0.0
    half, deep = bore.width / 2 + bore.wall + casing, unit_depth(design)
    start = flue_start if told.start is None else told.start
    if slab_bottom < start < slab_top:
        start = slab_top  # the slab is cast in one piece; the liner stands on it
    inner = cavity_half + told.wythe
    if start < flue_start - ROUNDING:
        passed = max(chamber_reach, cavity_half + chimney.wall / 2)
        if start < throat:
            front = flue_y - deep - chimney.gap
            passed = max(passed, _firebox_reach(design, front, side_slope, breast))
        inner = max(inner, passed + max(told.wythe, chimney.wall))
    x = inner + half + chimney.gap
    return Beside(
        bore=bore,
        x=x if told.side == "right" else -x,
        unit_half=half,
        unit_depth=deep,
        cavity_half=half + chimney.gap,
        cavity_depth=deep + chimney.gap,
        between=inner - cavity_half,
        start=start,
        top=top + told.top,
        set_out=inner > cavity_half + told.wythe + ROUNDING,
    )


def _firebox_reach(design: Design, front: float, side_slope: float, breast: float) -> float:
    """How far lining, lintel and arch of the firebox reach sideways, behind a place. [m]"""
    opening, firebox = design.opening, design.firebox
    half = opening.width / 2
    reach = half - side_slope * max(front, 0.0) + firebox.lining_thickness * (1 + side_slope)
    if front >= breast - ROUNDING:
        return reach
    reach = max(reach, half + (design.lintel.bearing or 0.0))
    if opening.head == "segmental":
        radius = (half**2 + opening.rise**2) / (2 * opening.rise)
        reach = max(reach, (radius + design.lintel.height) * sin(asin(min(half / radius, 1.0))))
    return reach


def stack_across(cavity_half: float, wall: float, second: Beside | None) -> tuple[float, float]:
    """Half the width of the chimney, and its middle from the first flue's center line, to the
    right.

    Parameters
    ----------
    cavity_half, wall : float
        Half the width of the first flue with its gap, and the wall round it. [m]
    second : Beside or None

    Returns
    -------
    tuple of float
        [m]
    """
    near = cavity_half + wall
    if second is None:
        return near, 0.0
    far = abs(second.x) + second.cavity_half + wall
    middle = (far - near) / 2
    return (far + near) / 2, middle if second.x > 0 else -middle
