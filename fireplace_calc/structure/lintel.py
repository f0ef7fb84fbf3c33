"""The lintel over the opening: what it carries, and how angle, stone or plain concrete bears it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.beam import (
    angle,
    bending,
    jack_skew,
    low_wall,
    reaction,
    sag,
    sag_limit,
    slab_modulus,
    triangle,
    veneer_span,
)
from fireplace_calc.structure.figures import figure, rupture
from fireplace_calc.structure.loads.weights import Weights


@dataclass(frozen=True, slots=True)
class LintelResult:
    """A straight head and what it carries.

    Attributes
    ----------
    kind : str or None
        What it is made of.
    clear, span : float
        Of the opening; and clear opening with one bearing, for which it is worked out. [m]
    bearing : float or None
        At each end; unknown is worked out with the least allowed. [m]
    wall : float
        Weight of the wall by its face. [Pa]
    cover : float
        Masonry over it, up to where the breast draws in. [m]
    low : bool
        The triangle runs out of the breast: what stands on top comes in.
    carried, own : float
        Of the wall [N], and of the lintel itself. [N/m]
    moment, shear : float
        Largest. [N m, N]
    modulus, stress, allowed : float or None
        Of the section [m3], its bending stress and what it may have. [Pa]
    needed : float or None
        Section modulus that would do. [m3]
    sag, sag_limit : float or None
        Steel only. [m]
    shear_stress, bearing_stress : float or None
        Mean across a stone; peak under the end, twice the mean. [Pa]
    least_bearing : float
        At each end. [m]
    veneer_span : float or None
        Of this angle by the veneer table. [m]
    skew : float or None
        Of a flat arch: its skewback per unit of depth. [-]
    """

    kind: str | None
    clear: float
    span: float
    bearing: float | None
    wall: float
    cover: float
    low: bool
    carried: float
    own: float
    moment: float
    shear: float
    modulus: float | None
    stress: float | None
    allowed: float | None
    needed: float | None
    sag: float | None
    sag_limit: float | None
    shear_stress: float | None
    bearing_stress: float | None
    least_bearing: float
    veneer_span: float | None
    skew: float | None


def wall_weight(frame: Frame, weighed: Weights) -> float:
    """Weight of the masonry over the opening by its face, taken as thick as it gets before the
    flue.

    Parameters
    ----------
    frame : Frame
    weighed : Weights
        Mass of every part. [kg]

    Returns
    -------
    float
        Safe side: the thickest of breast, throat and smoke chamber front. [Pa]
    """
    thick = max(frame.breast, frame.throat_front, frame.flue_y - frame.bore.depth / 2)
    return G * weighed.density("firebox walls", density("brick")) * thick


def assess_lintel(design: Design, frame: Frame, weighed: Weights) -> LintelResult | None:
    """The straight head of a design; nothing under an arch.

    Parameters
    ----------
    design : Design
    frame : Frame
    weighed : Weights
        Mass of every part. [kg]

    Returns
    -------
    Lintel or None
        Loads, stresses and limits in SI.

    Notes
    -----
    Span is the clear opening and one bearing, which is the safe reading; some handbooks take the
    clear opening. The triangle stands on the lintel's top and needs solid jambs beside it. A steel
    angle is the one drawn: its upright leg as high as the lintel.
    """
    if design.opening.head == "segmental":
        return None
    told, clear = design.lintel, 2 * frame.half_width
    least = figure("lintel bearing")
    if told.material == "stone":
        least = max(least, clear * figure("stone bearing ratio"))
    bearing = told.bearing
    span = clear + (least if bearing is None else bearing)
    cover = frame.flue_start - frame.opening_top - told.height
    wall, low = wall_weight(frame, weighed), cover < span / 2
    carried = low_wall(wall, span, cover) if low else triangle(wall, span)
    own = G * weighed.masses.get("lintel", 0.0) / (clear + 2 * (bearing or 0.0))
    peaked, spread = (0.0, own + carried / span) if low else (carried, own)
    moment, shear = bending(span, peaked, spread), reaction(span, peaked, spread)
    modulus = stress = allowed = needed = bent = limit = across = table = None
    seat = frame.breast
    if told.material == "steel":
        leaf = min(told.thickness, told.height, frame.breast)
        seat = min(told.height, frame.breast)
        made = angle(told.height, seat, leaf)
        modulus, allowed, limit = made.modulus, figure("steel bending"), sag_limit(span)
        bent, table = (
            sag(span, figure("steel modulus") * made.inertia, peaked, spread),
            veneer_span(told.height, seat, leaf),
        )
    else:
        modulus, across = (
            slab_modulus(frame.breast, told.height),
            shear / (frame.breast * told.height),
        )
        if told.material == "stone" and design.loads.stone is not None:
            allowed = rupture(design.loads.stone) / figure("stone safety factor")
    if modulus:
        stress = moment / modulus
        needed = moment / allowed if allowed else None
    pressed = 2 * shear / (seat * bearing) if bearing else None
    skew = jack_skew(clear) if told.material == "masonry arch" else None
    return LintelResult(
        told.material,
        clear,
        span,
        bearing,
        wall,
        cover,
        low,
        carried,
        own,
        moment,
        shear,
        modulus,
        stress,
        allowed,
        needed,
        bent,
        limit,
        across,
        pressed,
        least,
        table,
        skew,
    )
