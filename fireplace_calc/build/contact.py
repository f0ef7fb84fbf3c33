"""What touches what: whether a part carries another, stands inside it, or is leant on, read off
their level cuts.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.convex import convex_parts
from fireplace_calc.geometry.parts import Part
from fireplace_calc.geometry.polygons import Polygon, area, box, overlap
from fireplace_calc.geometry.solids import CIRCLE, Cylinder, Solid, level_cuts

LEAST_CONTACT = 1e-5
"""Plans that share less than this only touch. [m2]"""


@dataclass(frozen=True, slots=True)
class Outline:
    """A convex outline in plan.

    Attributes
    ----------
    polygon : Polygon
        Its corners, counter-clockwise. [m]
    left, right, front, back : float
        Its sides. [m]
    rectangular : bool
        Whether it is no more than these sides.
    area : float
        [m2]
    """

    polygon: Polygon
    left: float
    right: float
    front: float
    back: float
    rectangular: bool
    area: float

    def contains(self, other: Outline) -> bool:
        """Whether another's sides all lie within these."""
        return (
            self.left <= other.left
            and self.right >= other.right
            and self.front <= other.front
            and self.back >= other.back
        )


def outline(polygon: Polygon) -> Outline:
    """An outline with its sides read once.

    Parameters
    ----------
    polygon : Polygon
        Convex, counter-clockwise. [m]

    Returns
    -------
    Outline
    """
    across, deep = zip(*polygon, strict=True)
    sides = min(across), max(across), min(deep), max(deep)
    return Outline(polygon, *sides, polygon == box(*sides), area(polygon))


@lru_cache(maxsize=2048)
def _convex(polygon: Polygon) -> tuple[Outline, ...]:
    """A level cut as convex outlines; most parts are upright and have one cut at every level."""
    return tuple(outline(part) for part in convex_parts(polygon))


TWELVE = CIRCLE[::6]
"""Corners that a circle is read by here: enough to tell inside from outside. Their outline holds
three square radii.
"""


def outlines(solids: tuple[Solid, ...], level: float) -> list[Outline]:
    """Level cut of several solids.

    Parameters
    ----------
    solids : tuple of Solid
        Apart from each other.
    level : float
        Where. [m]

    Returns
    -------
    list of Outline
        Of those that reach so low and so high; where one ends and the next begins, only of the
        next.
    """
    found: list[Outline] = []
    for s in solids:
        if not s.bottom <= level < s.top:
            continue
        if isinstance(s, Cylinder):
            (x, y), r = s.center, s.radius
            x += s.shift * (level - s.bottom) / (s.top - s.bottom)  # an inclined flue
            found.append(
                Outline(
                    tuple((x + r * c, y + r * n) for c, n in TWELVE),
                    x - r,
                    x + r,
                    y - r,
                    y + r,
                    False,
                    3 * r * r,
                )
            )
        else:
            found += [one for polygon in level_cuts(s, level) for one in _convex(polygon)]
    return found


def shared(one: Outline, other: Outline) -> float:
    """Plan area that two outlines have in common.

    Parameters
    ----------
    one, other : Outline
        In either order.

    Returns
    -------
    float
        Area. [m2]

    Examples
    --------
    >>> shared(outline(((0, 0), (2, 0), (2, 2), (0, 2))), outline(((1, 1), (3, 1), (2, 3))))
    0.75
    """
    wide = min(one.right, other.right) - max(one.left, other.left)
    deep = min(one.back, other.back) - max(one.front, other.front)
    if wide <= 0 or deep <= 0:
        return 0.0
    if one.rectangular and other.rectangular:
        return wide * deep
    for small, large in ((one, other), (other, one)):
        if small.polygon == large.polygon or large.rectangular and large.contains(small):
            return small.area
    kept = overlap(one.polygon, other.polygon)
    return area(tuple(kept)) if kept else 0.0


Plan = tuple[list[Outline], list[Outline]]
"""Outlines at a level, and the holes in them."""


def common(one: Plan, other: Plan) -> float:
    """Plan area in common when both have holes.

    Parameters
    ----------
    one, other : Plan
        Holes lie inside outlines and apart from each other.

    Returns
    -------
    float
        Area. [m2]
    """
    solid = sum(shared(p, q) for p in one[0] for q in other[0])
    if solid <= LEAST_CONTACT:
        return 0.0
    return (
        solid
        - sum(shared(p, q) for p in one[0] for q in other[1])
        - sum(shared(p, q) for p in one[1] for q in other[0])
        + sum(shared(p, q) for p in one[1] for q in other[1])
    )


class Contacts:
    """What touches what among some parts; a cut that was taken is kept."""

    def __init__(self, parts: list[Part]) -> None:
        self.span = {p.name: (p.bottom, p.top) for p in parts}
        self._kept: dict[tuple[str, float], Plan] = {}

    def plan(self, part: Part, level: float) -> Plan:
        """Cut of a part at a level. [m]"""
        key = part.name, level
        if key not in self._kept:
            self._kept[key] = outlines(part.adds, level), outlines(part.cuts, level)
        return self._kept[key]

    def shared_height(self, one: Part, other: Part) -> tuple[float, float]:
        """From the higher underside to the lower top; the other way round when they are clear of
        each other. [m]
        """
        (a, b), (c, d) = self.span[one.name], self.span[other.name]
        return a if a > c else c, b if b < d else d

    def carries(self, lower: Part, upper: Part) -> bool:
        """Whether the underside of one part lies on the other, where that still is or just ends."""
        (bottom, top), (level, _) = self.span[lower.name], self.span[upper.name]
        if not bottom + CONTACT_GAP < level <= top + CONTACT_GAP:
            return False
        return (
            common(
                self.plan(lower, min(level, top) - CONTACT_GAP),
                self.plan(upper, level + CONTACT_GAP),
            )
            > LEAST_CONTACT
        )

    def inside(self, inner: Part, outer: Part) -> bool:
        """Whether one part stands in a hole of the other, half-way up the height they share."""
        if not outer.cuts:
            return False
        low, high = self.shared_height(inner, outer)
        if high - low <= CONTACT_GAP:
            return False
        holes = self.plan(outer, (low + high) / 2)[1]
        return (
            bool(holes) and common((holes, []), self.plan(inner, (low + high) / 2)) > LEAST_CONTACT
        )

    def leans(self, upper: Part, lower: Part) -> bool:
        """Whether one part grows over the other on a slope: its head, of the height they share, is
        over the other's foot.
        """
        low, high = self.shared_height(upper, lower)
        if high - low <= 1000 * CONTACT_GAP:
            return False
        return (
            common(self.plan(upper, high - CONTACT_GAP), self.plan(lower, low + CONTACT_GAP))
            > LEAST_CONTACT
        )
