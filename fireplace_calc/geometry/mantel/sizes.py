"""Sizes of a mantel: as somebody chose them, else the usual ones of its family, cut to the breast
and to the room over the opening.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables.bricks import brick_sizes
from fireplace_calc.base.tables.mantels import usual_mantels
from fireplace_calc.design.mantel import Mantel
from fireplace_calc.geometry.frame import Framed

NARROWEST = 0.4
"""Share of what stands beside the opening that a pilaster takes where there is little room. [-]"""
COURSES = 4
"""Of a shelf of brick, where nobody has told how thick it is. [-]"""


@dataclass(frozen=True, slots=True)
class MantelPlace:
    """What a mantel hangs on. [m]

    Attributes
    ----------
    half, spring, head : float
        Half width of the opening; levels of its spring line and its highest point.
    foot : float
        Level of the firebox floor.
    left, right : tuple of tuple of float
        What stands over the floor before the breast on either side, from the middle outward: how
        far it reaches, and its top; beyond the last is the floor.
    breast_half, breast_top : float
        Half width of the breast, and up to which level it is that wide in the room.
    course, corbel, brick, joint, height : float
        Course of the facing brick; how far a course of it may stand out over the one below; length
        of a brick, its head joint, and its height.
    """

    half: float
    spring: float
    head: float
    foot: float
    left: tuple[tuple[float, float], ...]
    right: tuple[tuple[float, float], ...]
    breast_half: float
    breast_top: float
    course: float
    corbel: float
    brick: float
    joint: float
    height: float


def breast_top(framed: Framed) -> float:
    """Up to which level the breast has its full width in the room.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    float
        [m]
    """
    f = framed.frame
    return min(max(framed.design.house.ceiling, f.opening_top), f.block_top)


def _underfoot(framed: Framed, seat: float) -> tuple[tuple[float, float], ...]:
    """Hearth and seat on one side, as they stand over the floor. [m]"""
    f, d = framed.frame, framed.design
    if d.hearth.front <= 0:
        return ()
    end, top = f.half_width + d.hearth.side, max(f.extension_top, 0.0)
    high = top if d.seat.height is None else d.seat.height
    return ((end, top), (end + seat, high)) if seat > 0 else ((end, top),)


def mantel_place(framed: Framed) -> MantelPlace:
    """What the mantel of a design hangs on.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    MantelPlace
    """
    f, d = framed.frame, framed.design
    size, told = brick_sizes()[d.brick.facing], d.brick.facing_joint
    joint = size.joint if told is None else told
    left, right = (_underfoot(framed, reach) for reach in (d.seat.left, d.seat.right))
    return MantelPlace(
        half=f.half_width,
        spring=f.spring,
        head=f.opening_top,
        foot=f.hearth,
        left=left,
        right=right,
        breast_half=f.block_half,
        breast_top=breast_top(framed),
        course=size.course if told is None else size.height + joint,
        corbel=min(size.height / 2, size.width / 3),
        brick=size.length,
        joint=joint,
        height=size.height,
    )


@dataclass(frozen=True, slots=True)
class MantelSizes:
    """Sizes of one mantel as it is built; nought where its family has no such thing. [m]

    Attributes
    ----------
    over_opening, depth, thickness, beyond, support, beside, projection, frieze, overmantel : float
        As the inputs of the same names.
    courses : int
        Of a shelf of brick. [-]
    """

    over_opening: float
    depth: float
    thickness: float
    beyond: float
    support: float
    beside: float
    projection: float
    frieze: float
    overmantel: float
    courses: int

    @property
    def tall(self) -> float:
        """From its lowest edge over the opening to its highest. [m]"""
        return self.frieze + self.thickness + self.overmantel


@lru_cache(maxsize=64)
def mantel_sizes(mantel: Mantel, place: MantelPlace) -> MantelSizes:
    """Sizes of a family's mantel.

    Parameters
    ----------
    mantel : Mantel
        Of a family, none of the first two of ``FAMILIES``.
    place : MantelPlace

    Returns
    -------
    MantelSizes
        What was told stays as it is, whether it fits or not.
    """
    usual = usual_mantels()[mantel.family]

    def size(name: str, most: float) -> float:
        told: float | None = getattr(mantel, name)
        if name not in usual:
            return 0.0
        return max(min(usual[name], most), 0.0) if told is None else told

    endless = float("inf")
    jamb, room = place.breast_half - place.half, place.breast_top - place.head
    supports = (mantel.beside or 0.0) + (mantel.support or 0.0)
    beyond = size("beyond", jamb)
    if mantel.beyond is None:
        beyond = min(max(beyond, supports), max(jamb, beyond))
    support = size("support", max(NARROWEST * beyond, beyond - (mantel.beside or beyond)))
    beside = size("beside", beyond - support)
    thickness, frieze = size("thickness", endless), size("frieze", endless)
    courses = 0
    depth = size("depth", endless)
    if mantel.material == "brick":
        told = mantel.thickness
        courses = COURSES if told is None else max(round(told / place.course), 1)
        thickness = courses * place.course
        if mantel.depth is None:
            depth = min(depth, courses * place.corbel)
    least = thickness + frieze
    over = size("over_opening", room - least)
    projection = size("projection", depth)
    if mantel.depth is None:
        depth = max(depth, projection)
    return MantelSizes(
        over_opening=over,
        depth=depth,
        thickness=thickness,
        beyond=beyond,
        support=support,
        beside=beside,
        projection=projection,
        frieze=frieze,
        overmantel=size("overmantel", room - least - over),
        courses=courses,
    )
