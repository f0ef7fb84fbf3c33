"""The lintel over the opening: what it carries, and how angle, stone or plain concrete takes it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import G
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.structure.allowables import rupture
from fireplace_calc.structure.beam import (
    angle,
    bending,
    deflection,
    deflection_limit,
    jack_skew,
    reaction,
    slab_modulus,
    veneer_span,
)
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.loads.weights import Weights
from fireplace_calc.structure.opening_load import head_load
from fireplace_calc.structure.reinforced import ReinforcedBeam, beam_shear, reinforced_lintel

MASONRY = "masonry round the set"
"""What stands on the lintel of a set."""


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
    low_cover : bool
        The triangle runs out of the breast: what stands on top comes in.
    bears : bool
        A floor or beam bears within the triangle: the whole wall counts, and it in full.
    carried, own : float
        All but the lintel [N], and the lintel itself. [N/m]
    moment, shear : float
        Largest. [N m, N]
    modulus, stress, allowed : float or None
        Of the section [m3], its bending stress and what it may have. [Pa]
    needed : float or None
        Section modulus that would do. [m3]
    deflection, deflection_limit : float or None
        Steel only. [m]
    shear_stress, bearing_stress : float or None
        Mean across a stone; peak under the end, twice the mean. [Pa]
    least_bearing : float
        At each end. [m]
    veneer_span : float or None
        Of one such angle by the veneer table. [m]
    seat : float
        Of the breast's thickness, how much rests on it: level legs of angles, else all. [m]
    beam : ReinforcedBeam or None
        Reinforced masonry, once its bars are told: the stress is that of the bars.
    skew : float or None
        Of a flat arch: its skewback per unit of depth. [-]
    """

    kind: str | None
    clear: float
    span: float
    bearing: float | None
    wall: float
    cover: float
    low_cover: bool
    bears: bool
    carried: float
    own: float
    moment: float
    shear: float
    modulus: float | None
    stress: float | None
    allowed: float | None
    needed: float | None
    deflection: float | None
    deflection_limit: float | None
    shear_stress: float | None
    bearing_stress: float | None
    least_bearing: float
    veneer_span: float | None
    seat: float
    beam: ReinforcedBeam | None
    skew: float | None


def wall_weight(frame: Frame, weights: Weights) -> float:
    """Weight of the masonry over the opening by its face, taken as thick as it gets before the
    flue.

    Parameters
    ----------
    frame : Frame
    weights : Weights
        Mass of every part.

    Returns
    -------
    float
        On the safe side: the thickest of breast, throat and smoke chamber front. [Pa]
    """
    thick = max(frame.breast, frame.throat_front, frame.flue_y - frame.bore.depth / 2)
    behind = MASONRY if MASONRY in weights.parts else "firebox walls"
    return G * weights.density(behind, density("brick")) * thick


def assess_lintel(design: Design, frame: Frame, weights: Weights) -> LintelResult | None:
    """The straight head of a design, or the lintel of a set; nothing under an arch.

    Parameters
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.

    Returns
    -------
    LintelResult or None
        Loads, stresses and limits in SI.

    Notes
    -----
    Span is the clear opening and one bearing, which is the safe reading; some handbooks take the
    clear opening. The triangle stands on the lintel's top and needs solid jambs beside it. Steel
    angles are those drawn, and bend alike: each takes an even share. By the veneer table each has
    to carry its own part of the breast.
    """
    if design.opening.head == "segmental" and design.piece_set is None:
        return None
    lintel, clear = design.lintel, 2 * frame.half_width
    least = figure("lintel bearing")
    if lintel.material == "stone":
        least = max(least, clear * figure("stone bearing ratio"))
    bearing = lintel.bearing
    span = clear + (least if bearing is None else bearing)
    cover = frame.block_top - frame.opening_top - lintel.height
    wall = wall_weight(frame, weights)
    load = head_load(design.loads, wall, span, cover)
    own = G * weights.masses["lintel"] / (clear + 2 * (bearing or 0.0))
    laid = (load.triangular, own + load.uniform / span, load.point)
    moment, shear = bending(span, *laid), reaction(span, *laid)
    modulus = stress = allowed = needed = bent = limit = across = table = None
    seat = frame.breast
    if lintel.material == "steel":
        legs, number = lintel.legs(frame.breast), lintel.angles
        seat = number * legs.level
        made = angle(lintel.height, legs.level, legs.thickness)
        modulus, allowed = number * made.modulus, figure("steel bending")
        stiff, limit = number * figure("steel modulus") * made.inertia, deflection_limit(span)
        bent = deflection(span, stiff, *laid)
        table = veneer_span(lintel.height, legs.level, legs.thickness)
    else:
        modulus, across = (
            slab_modulus(frame.breast, lintel.height),
            shear / (frame.breast * lintel.height),
        )
        if lintel.material == "stone" and design.loads.stone is not None:
            allowed = rupture(design.loads.stone) / figure("stone safety factor")
    beam = None
    if lintel.material == "reinforced masonry":
        beam = reinforced_lintel(lintel, frame.breast, design.loads.masonry_strength)
        if beam is not None:
            modulus, allowed = beam.modulus, beam.allowed
            across = beam_shear(shear, beam.breadth, beam.depth)
    if modulus:
        stress = moment / modulus
        needed = moment / allowed if allowed else None
    pressed = 2 * shear / (seat * bearing) if bearing else None
    skew = jack_skew(clear) if lintel.material == "masonry arch" else None
    return LintelResult(
        lintel.material,
        clear,
        span,
        bearing,
        wall,
        cover,
        load.low_cover,
        load.bears,
        load.whole,
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
        seat,
        beam,
        skew,
    )
