"""The solids of one piece, read from its table: outlines, tapers, rounds, an arch. [m]"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from math import hypot
from typing import Any

from fireplace_calc.pieces.fields import Fields
from fireplace_calc.pieces.records import ArchCut, Outline, Point, Round, Shape, Tapered

PARALLEL = 1e-6
"""Sine of the angle up to which two sides count as parallel. [-]"""
SOLID_FIELDS = ("outline", "top", "across", "at", "from", "to", "hole")


def turned(ring: Outline) -> bool:
    """Whether a ring runs clockwise, as it may have been measured."""
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in _sides(ring)) < 0


def _sides(ring: Outline) -> list[tuple[Point, Point]]:
    return [*pairwise(ring), (ring[-1], ring[0])]


def crossing(ring: Outline) -> bool:
    """Whether two sides of a ring cross or a corner comes twice: no outline of anything."""
    sides = _sides(ring)
    if len(set(ring)) < len(ring):
        return True
    return any(
        _cross(*sides[i], *sides[j])
        for i in range(len(sides))
        for j in range(i + 2, len(sides))
        if (i, j) != (0, len(sides) - 1)
    )


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    one, two, three, four = side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
    return one * two <= 0 and three * four <= 0 and (one != two or three != four)


def _parallel(lower: Outline, upper: Outline) -> bool:
    for ((ax, ay), (bx, by)), ((cx, cy), (dx, dy)) in zip(
        _sides(lower), _sides(upper), strict=True
    ):
        one, other = (bx - ax, by - ay), (dx - cx, dy - cy)
        size = hypot(*one) * hypot(*other)
        if abs(one[0] * other[1] - one[1] * other[0]) > PARALLEL * size:
            return False
        if one[0] * other[0] + one[1] * other[1] <= 0:
            return False
    return True


def _moved(ring: Outline, at: Point) -> Outline:
    return tuple((x + at[0], y + at[1]) for x, y in ring)


def block(fields: Fields, at: Point, bottom: float, top: float) -> Tapered:
    """What stands between the outline of a table and its ``top``, where it has one.

    Raises
    ------
    InputError
        For an outline that crosses itself, or sides that would be twisted.
    """
    lower = fields.outline("outline")
    upper = fields.outline("top") if "top" in fields.raw else lower
    if len(lower) != len(upper):
        raise fields.wrong(
            "top", f"{len(lower)} corners like the outline's", f"it has {len(upper)}"
        )
    for name, ring in (("outline", lower), ("top", upper)):
        if crossing(ring):
            raise fields.wrong(name, "a ring whose sides do not cross", "measure it in order")
    if turned(lower) != turned(upper):
        raise fields.wrong("top", "corners in the order of the outline's")
    if not _parallel(lower, upper):
        raise fields.wrong(
            "top",
            "sides parallel to the outline's, one by one",
            "a side that turns from bottom to top is not flat",
        )
    if turned(lower):
        lower, upper = lower[::-1], upper[::-1]
    return Tapered(bottom, top, _moved(lower, at), _moved(upper, at))


def solids(
    fields: Fields, raw: Mapping[str, Any], at: Point, height: float, what: str
) -> tuple[list[Shape], list[Shape]]:
    """One more solid of a piece, added or cut: what it is, and its hole.

    Parameters
    ----------
    fields : Fields
        Of the piece.
    raw : mapping
        Table of the solid.
    at : Point
        Where the piece's own corner stands. [m]
    height : float
        Of the piece, bed to bed; where a solid ends that says nothing else. [m]
    what : str
        ``add`` or ``cut``, for what is said.

    Returns
    -------
    tuple of list
    """
    here = Fields(f"{fields.where}, {what}", raw, fields.unit)
    here.only(SOLID_FIELDS)
    bottom = here.length("from", 0.0)
    top = here.length("to", height)
    if top <= bottom:
        raise here.wrong("to", "a level over its bottom")
    if "across" not in raw:
        if "hole" in raw:
            raise here.wrong("hole", "a round solid to be in")
        return [block(here, at, bottom, top)], []
    radius = here.length("across", low=fields.unit / 4) / 2
    middle = here.point("at", raw["at"]) if "at" in raw else (0.0, 0.0)
    center = (middle[0] + at[0], middle[1] + at[1])
    made: list[Shape] = [Round(bottom, top, radius, center)]
    if "hole" not in raw:
        return made, []
    hole = here.length("hole", low=fields.unit / 4) / 2
    if hole >= radius:
        raise here.wrong("hole", "less than the round is across")
    return made, [Round(bottom, top, hole, center)]


def _ring(
    across: tuple[float, float] | float, more: float, at: Point, low: float, top: float
) -> Shape:
    """A bore, or what stands that much outside of it."""
    if isinstance(across, float):
        return Round(low, top, across / 2 + more, at)
    half, deep = across[0] / 2 + more, across[1] / 2 + more
    ring = tuple(
        (at[0] + x, at[1] + y)
        for x, y in ((-half, -deep), (half, -deep), (half, deep), (-half, deep))
    )
    return Tapered(low, top, ring, ring)


def bored(fields: Fields, at: Point, height: float) -> tuple[list[Shape], list[Shape], Shape]:
    """The bore of a flue piece and how it nests: what it adds, what it cuts, and the bore alone.

    The tongue is a ring round the bore, over the bed; the socket is wider by the clearance, under
    it.

    Parameters
    ----------
    fields : Fields
        Of the piece: ``bore``, and ``nest`` where it has one.
    at : Point
        Middle of the bore. [m]
    height : float
        Bed to bed. [m]

    Returns
    -------
    tuple
        [m]
    """
    told = fields.raw["bore"]
    across = fields.point("bore", told) if isinstance(told, list) else fields.length("bore")
    least = min(across) if isinstance(across, tuple) else across
    if least < 2 * fields.unit:
        raise fields.wrong(
            "bore", "what is clear inside, across or left to right and front to back"
        )
    nest = fields.raw.get("nest", {})
    if not isinstance(nest, Mapping):
        raise fields.wrong("nest", "a table of tongue, socket, wall and clearance")
    here = Fields(f"{fields.where}, nest", nest, fields.unit)
    here.only(("tongue", "socket", "wall", "clearance"))
    tongue, socket = (
        here.length("tongue", 0.0, high=height),
        here.length("socket", 0.0, high=height),
    )
    wall = here.length("wall", 0.0 if not nest else None)
    clearance = here.length("clearance", 0.0)
    adds: list[Shape] = []
    cuts: list[Shape] = [_ring(across, 0.0, at, socket, height + tongue)]
    if tongue > 0:
        adds.append(_ring(across, wall, at, height, height + tongue))
    if socket > 0:
        cuts.append(_ring(across, wall + clearance, at, 0.0, socket))
    return adds, cuts, _ring(across, 0.0, at, 0.0, height)


def arch(fields: Fields, height: float, at: Point) -> tuple[Tapered, ArchCut]:
    """A lintel with an arch under it: the block, and what it lacks.

    Raises
    ------
    InputError
        When the arch does not stay in the block, or is not at the front.
    """
    raw = fields.raw["arch"]
    if not isinstance(raw, Mapping):
        raise fields.wrong("arch", "a table of span, rise, width and depth")
    here = Fields(f"{fields.where}, arch", raw, fields.unit)
    here.only(("span", "rise", "width", "depth"))
    span, rise = here.length("span", low=fields.unit), here.length("rise", low=fields.unit / 8)
    width, depth = here.length("width", low=fields.unit), here.length("depth", low=fields.unit)
    if span >= width:
        raise here.wrong("span", "a span less than the width")
    if rise > span / 2 or rise >= height:
        raise here.wrong("rise", "no more than half the span, and less than the height")
    if at != (0.0, 0.0):
        raise fields.wrong("at", "[0, 0] for an arch, which stands at the front on the center line")
    half = width / 2
    outline = ((-half, 0.0), (half, 0.0), (half, depth), (-half, depth))
    return Tapered(0.0, height, outline, outline), ArchCut(rise, span, depth)


def bounds(shapes: list[Shape]) -> tuple[float, float, float, float, float, float]:
    """The box around solids: least x, y and z, then the greatest. [m]

    Parameters
    ----------
    shapes : list of Shape

    Returns
    -------
    tuple of float
        [m]
    """
    xs: list[float] = []
    ys: list[float] = []
    zs: list[float] = []
    for s in shapes:
        if isinstance(s, Tapered):
            xs += [x for x, _ in (*s.lower, *s.upper)]
            ys += [y for _, y in (*s.lower, *s.upper)]
            zs += [s.bottom, s.top]
        elif isinstance(s, Round):
            xs += [s.center[0] - s.radius, s.center[0] + s.radius]
            ys += [s.center[1] - s.radius, s.center[1] + s.radius]
            zs += [s.bottom, s.top]
        else:
            xs += [-s.span / 2, s.span / 2]
            ys += [0.0, s.depth]
            zs += [0.0, s.rise]
    return min(xs), min(ys), min(zs), max(xs), max(ys), max(zs)


def mirrored(shape: Shape) -> Shape:
    """The other hand of a solid."""
    if isinstance(shape, Tapered):

        def other(ring: Outline) -> Outline:
            return tuple((-x, y) for x, y in reversed(ring))

        return Tapered(shape.bottom, shape.top, other(shape.lower), other(shape.upper))
    if isinstance(shape, Round):
        center = (-shape.center[0], shape.center[1])
        return Round(shape.bottom, shape.top, shape.radius, center)
    return shape


def shifted(shape: Shape, dx: float) -> Shape:
    """A solid farther to the right. [m]"""
    if isinstance(shape, Tapered):

        def along(ring: Outline) -> Outline:
            return tuple((x + dx, y) for x, y in ring)

        return Tapered(shape.bottom, shape.top, along(shape.lower), along(shape.upper))
    if isinstance(shape, Round):
        return Round(shape.bottom, shape.top, shape.radius, (shape.center[0] + dx, shape.center[1]))
    return shape
