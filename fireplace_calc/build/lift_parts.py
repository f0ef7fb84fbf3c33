"""Parts cut at the working floors: what of a part is built from each, and what has to be up before
something is set into it.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.courses.of_brick import WALLS
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.polygons import area
from fireplace_calc.geometry.solids import Cylinder, Loft, Solid, level_cuts

WITHIN_REACH = 12 * INCH
"""A foot more or less is reached from the floor one stands on: our own habit. [m]"""

COURSED = (
    "base walls",
    "base core",
    "firebox lining",
    "smoke shelf",
    "firebox walls",
    "smoke chamber lining",
    "smoke chamber walls",
    "masonry round the set",
    "flue liner",
    "flue casing",
    "second flue liner",
    "second flue casing",
    "breast walls",
    "shoulder",
    "chimney walls",
)
"""Parts that go up by courses or pieces and may stop at any of them; every other part is set or
poured whole.
"""
FLUES = ("flue liner", "flue casing", "second flue liner", "second flue casing")
"""What the smoke goes up in, and what is cast round it."""
STACK = (*FLUES, "breast walls", "shoulder", "chimney walls")
"""Parts that rise together: a section of flue, then the wall round it."""


@dataclass(frozen=True, slots=True)
class LiftPart:
    """A part, or what of it is built from one working floor.

    Attributes
    ----------
    part, material : str
        Which, and of what.
    low, high : float
        Levels. [m]
    share : float
        Of the part's volume. [-]
    number, of : int
        This one of so many. [-]
    floor : float
        Level one stands on. [m]
    """

    part: str
    material: str
    low: float
    high: float
    share: float
    number: int
    of: int
    floor: float

    @property
    def name(self) -> str:
        """The part, and which piece of it."""
        return self.part if self.of == 1 else f"{self.part} {self.number} of {self.of}"


def working_floors(geometry: Geometry) -> tuple[float, ...]:
    """Levels one stands on: the pit, the footing, then the room floor, with staging between and
    above.

    Parameters
    ----------
    geometry : Geometry
        Its design says how high a staging lift is.

    Returns
    -------
    tuple of float
        Bottom to top. [m]
    """
    f, lift = geometry.frame, geometry.design.work.lift_height
    below = [
        f.footing_top + k * lift
        for k in range(max(ceil((-WITHIN_REACH - f.footing_top) / lift - CONTACT_GAP), 0))
    ]
    above = [
        k * lift for k in range(max(ceil((f.crown_bottom - WITHIN_REACH) / lift - CONTACT_GAP), 1))
    ]
    return tuple(sorted({f.footing_bottom, *below, *above}))


def floor_under(floors: tuple[float, ...], level: float) -> float:
    """Floor one stands on to work from a level upward.

    Parameters
    ----------
    floors : tuple of float
        Bottom to top. [m]
    level : float
        Where the work begins. [m]

    Returns
    -------
    float
        The highest that is not over it by more than a foot. [m]
    """
    return max((z for z in floors if z <= level + WITHIN_REACH + CONTACT_GAP), default=floors[0])


def set_level(part: Part) -> float:
    """How high the work round a part has to stand before the part is set in: its underside, or the
    skewbacks of an arch.

    Parameters
    ----------
    part : Part

    Returns
    -------
    float
        Level. [m]
    """
    solid = part.adds[0]
    return (
        part.bottom + solid.depth * cos(solid.half_angle)
        if isinstance(solid, ArchRing)
        else part.bottom
    )


def _nearest(levels: tuple[float, ...], level: float) -> float:
    """Of several levels the one nearest to a level. [m]"""
    return min(levels, key=lambda other: abs(other - level))


def break_levels(
    geometry: Geometry, nested: list[Part], floors: tuple[float, ...]
) -> tuple[float, ...]:
    """Levels at which everything that may stop does stop.

    Parameters
    ----------
    geometry : Geometry
    nested : list of Part
        What is set whole into a hole of another.
    floors : tuple of float
        From ``working_floors``. [m]

    Returns
    -------
    tuple of float
        Working floors, moved to where a part begins anyway when that is within a foot, else to the
        nearest bed of the walls; and where something is set in. [m]
    """
    starts = [p.bottom for p in geometry.parts if p.name in COURSED or p.name == "crown"]
    found = {set_level(p) for p in nested}
    if geometry.frame.second is not None:
        # The walls stop under the second flue: its first liner stands on them.
        found.add(geometry.frame.second.start)
    for level in floors[1:]:
        nearest = _nearest((*starts, *found), level)
        near = abs(nearest - level) <= WITHIN_REACH + CONTACT_GAP
        found.add(nearest if near else _on_a_bed(geometry, level))
    return tuple(sorted(found))


def _on_a_bed(geometry: Geometry, level: float) -> float:
    """The top of the course of block or brick nearest to a level, of two the lower; the level
    itself where the walls have no courses. [m]
    """
    tops = geometry.once(_beds_of_walls)
    at = bisect_left(tops, level)
    nearest = min(
        tops[max(at - 1, 0) : at + 1], key=lambda z: round(abs(z - level), 9), default=level
    )
    return nearest if abs(nearest - level) < WITHIN_REACH else level


def _beds_of_walls(geometry: Geometry) -> list[float]:
    """Top of every course of base and walls, bottom to top. [m]"""
    found = course_list(geometry)
    return sorted([c.top for name in ("base walls", *WALLS) for c in found.of(name)])


def volume_between(solid: Solid, low: float, high: float) -> float:
    """Volume of a solid between two levels: exact, but an arch by Simpson's rule on sixteen strips.

    Parameters
    ----------
    solid : Solid
    low, high : float
        Levels. [m]

    Returns
    -------
    float
        Volume. [m3]
    """
    low, high = max(low, solid.bottom), min(high, solid.top)
    if high <= low:
        return 0.0
    if low <= solid.bottom and high >= solid.top:
        return solid.volume
    if isinstance(solid, Cylinder) or isinstance(solid, Loft) and solid.lower == solid.upper:
        return solid.volume * (high - low) / (solid.top - solid.bottom)
    if isinstance(solid, Loft):
        lower, upper = solid.cut(low), solid.cut(high)
        if lower is None or upper is None:
            raise ValueError(f"A cut from {low} to {high} m misses its solid.")
        return Loft(low, high, lower, upper).volume
    steps = 16
    cuts = [
        sum(map(area, level_cuts(solid, low + (high - low) * k / steps))) for k in range(steps + 1)
    ]
    return (
        (high - low)
        / steps
        / 3
        * (cuts[0] + cuts[-1] + 4 * sum(cuts[1::2]) + 2 * sum(cuts[2:-1:2]))
    )


def _between(part: Part, low: float, high: float) -> float:
    """Volume of a part between two levels. [m3]"""
    adds, cuts = (
        sum(volume_between(s, low, high) for s in solids) for solids in (part.adds, part.cuts)
    )
    return max(adds - cuts, 0.0)


def _at_joint(geometry: Geometry, name: str, level: float) -> float:
    """The joint of a flue at a level or next above it. [m]"""
    courses = course_list(geometry).of(name)
    return next((c.top for c in courses if c.top > level - CONTACT_GAP), level)


def split_into_lifts(
    part: Part, geometry: Geometry, breaks: tuple[float, ...], floors: tuple[float, ...]
) -> list[LiftPart]:
    """A part cut at the break levels; flue sections stay whole and end at the joint next above.

    Parameters
    ----------
    part : Part
        Of the geometry.
    geometry : Geometry
    breaks, floors : tuple of float
        From ``break_levels`` and ``working_floors``. [m]

    Returns
    -------
    list of LiftPart
        Bottom to top; their shares add up to one. [-]
    """
    bottom, top = part.bottom, part.top
    inner = (
        [z for z in breaks if bottom + CONTACT_GAP < z < top - CONTACT_GAP]
        if part.name in COURSED and part.material != "steel"
        else []
    )
    stops = {bottom: bottom}
    for z in inner:
        at = _at_joint(geometry, part.name, z) if part.name in FLUES else z
        if at < top - CONTACT_GAP:
            stops.setdefault(at, z)
    levels = [*sorted(stops), top]
    pieces = (
        [_between(part, low, high) for low, high in pairwise(levels)] if len(levels) > 2 else [1.0]
    )
    whole = sum(pieces)
    return [
        LiftPart(
            part.name,
            part.material,
            low,
            high,
            piece / whole,
            n,
            len(pieces),
            floor_under(floors, stops[low]),
        )
        for n, ((low, high), piece) in enumerate(zip(pairwise(levels), pieces, strict=True), 1)
    ]
