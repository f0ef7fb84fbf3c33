"""The faces of a firebox as a mason sees them: floor, back, raked back and the two sides, each
flat, each in its own plane. [m]
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.polygons import Polygon, area

LEAST_ZONE = 1e-6
"""A zone lower than this is no zone. [m]"""


@dataclass(frozen=True, slots=True)
class Face:
    """One flat face to be laid.

    Attributes
    ----------
    name : str
        ``floor``, ``back``, ``raked back`` or ``side``.
    zones : tuple of polygon
        Convex and counter-clockwise; the second, if any, stands on the first. [m]
    alike : int
        How many there are: the sides mirror one another. [-]
    centred : bool
        Whether it is set out from its centre line; a side is set out from its front arris.
    """

    name: str
    zones: tuple[Polygon, ...]
    alike: int = 1
    centred: bool = True

    @property
    def area(self) -> float:
        """Of one. [m2]"""
        return sum(area(zone) for zone in self.zones)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top. [m]"""
        xs, ys = zip(*(p for zone in self.zones for p in zone), strict=True)
        return min(xs), min(ys), max(xs), max(ys)


def floor_face(frame: Frame) -> Face:
    """The floor in plan: x to the right, y from the opening. [m]"""
    front, back, begins = frame.half_width, frame.half_at(frame.depth), frame.lining_front
    square = ((front, begins), (-front, begins)) if begins > LEAST_ZONE else ()
    rear = ((back, frame.depth), (-back, frame.depth))
    return Face(
        "floor",
        (((-front, 0.0), (front, 0.0), *square[:1], *rear, *square[1:]),),
    )


def lining_faces(frame: Frame) -> tuple[Face, ...]:
    """Back, raked back along its slope, and one of two sides; levels count from the room floor."""
    low, bend, top = frame.slab_top, frame.back_bend, frame.throat
    wide = frame.half_at(frame.depth)
    faces = [
        Face(
            "back",
            (((-wide, low), (wide, low), (wide, min(bend, top)), (-wide, min(bend, top))),),
        )
    ]
    if top - bend > LEAST_ZONE:
        long, upper = (top - bend) * hypot(1.0, frame.lean), frame.half_at(frame.throat_back)
        faces.append(
            Face(
                "raked back",
                (((-wide, 0.0), (wide, 0.0), (upper, long), (-upper, long)),),
            )
        )
    return (*faces, _side(frame))


def _side(frame: Frame) -> Face:
    """Along the splay from the front arris, over the level; under the breast it starts at the face
    of the wall. [m]
    """
    low, bend, spring, head, top = (
        frame.slab_top,
        frame.back_bend,
        frame.spring,
        frame.opening_top,
        frame.throat,
    )
    slant = hypot(1.0, frame.side_slope)

    def rear(z: float) -> tuple[float, float]:
        return ((frame.back_at(z) - frame.lining_front) * slant, z)

    def zone(z0: float, z1: float, front: list[tuple[float, float]]) -> Polygon:
        bends = [rear(bend)] if z0 + LEAST_ZONE < bend < z1 - LEAST_ZONE else []
        return (front[0], rear(z0), *bends, rear(z1), *front[:0:-1])

    zones = [zone(low, spring, [(0.0, low), (0.0, spring)])]
    if top - spring > LEAST_ZONE:
        under = (frame.breast - frame.lining_front) * slant
        front = [(under, spring)]
        front += [(under, head)] if spring + LEAST_ZONE < head < top - LEAST_ZONE else []
        over = (frame.throat_front - frame.lining_front) * slant
        zones.append(zone(spring, top, [*front, (over, top)]))
    return Face("side", tuple(zones), alike=2, centred=False)
