"""Parts of a laid design that are set by hand in sections, cut into as many as the list counts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil, hypot
from typing import TYPE_CHECKING

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.scene.built.standing import CRUMB, ShownSolid, between_levels
from fireplace_calc.takeoff.goods import LONGEST

if TYPE_CHECKING:
    from manifold3d import Manifold

FAR = 20.0
"""Beyond everything that a fireplace has. [m]"""


def sections_of(geometry: Geometry, part: Part) -> tuple[ShownSolid, ...]:
    """The sections of a part, from the bottom up.

    Parameters
    ----------
    geometry : Geometry
        Of a laid design.
    part : Part

    Returns
    -------
    tuple of ShownSolid
        None where the part is not set in sections, or is not cut here.
    """
    if part.material == "refractory" and part.name == "firebox floor":
        return tuple(_floor(geometry, part))
    if part.material == "refractory" and part.name == "firebox lining":
        return tuple(_lining(geometry, part))
    if part.name.endswith("flue liner") or part.name.endswith("flue casing"):
        return tuple(_flue(geometry, part))
    return ()


def _floor(geometry: Geometry, part: Part) -> Iterator[ShownSolid]:
    f, whole = geometry.frame, between_levels(part)
    across = _ends(-f.half_width, f.half_width)
    deep = _ends(f.lining_front, f.lining_front + f.depth)
    number, of = 0, (len(across) - 1) * (len(deep) - 1)
    for row in pairwise(deep):
        for span in pairwise(across):
            number += 1
            # The outermost reach to where the part ends, which may lie a little farther.
            body = _slab(_slab(whole, 0, *_opened(span, across)), 1, *_opened(row, deep))
            yield ShownSolid(
                f"firebox floor {number}",
                f"floor section {number} of {of}",
                part.name,
                part.material,
                body,
                "Firebox floor section",
                "piece",
            )


def _lining(geometry: Geometry, part: Part) -> Iterator[ShownSolid]:
    """Ring by ring, the back between the sides as it is seen from the fire."""
    f, design = geometry.frame, geometry.design
    courses = course_list(geometry).of(part.name)
    spread = design.firebox.lining_thickness * hypot(1.0, f.side_slope)
    half = f.back_width / 2 + spread
    across = _shared(-half, half, ceil(2 * half / LONGEST - ROUNDING))
    deep = _shared(0.0, f.depth, ceil(f.depth * hypot(1.0, f.side_slope) / LONGEST - ROUNDING))
    behind = _behind_the_fire(geometry)
    for course in courses:
        body, ring = between_levels(part, course.bottom, course.top), course.number
        words = f"ring {ring} of {len(courses)}"
        back, sides = body ^ behind, body - behind
        for k, span in enumerate(pairwise(across), 1):
            name = "back section" + (f" {k} of {len(across) - 1}" if len(across) > 2 else "")
            yield ShownSolid(
                f"firebox back {ring}.{k}",
                f"{name}, {words}",
                part.name,
                part.material,
                _slab(back, 0, *_opened(span, across)),
                "Firebox back section",
                "piece",
            )
        for side, ends in (("left", (-FAR, 0.0)), ("right", (0.0, FAR))):
            for k, span in enumerate(pairwise(deep), 1):
                name = f"{side} side section" + (
                    f" {k} of {len(deep) - 1}" if len(deep) > 2 else ""
                )
                yield ShownSolid(
                    f"firebox {side} side {ring}.{k}",
                    f"{name}, {words}",
                    part.name,
                    part.material,
                    _slab(_slab(sides, 0, *ends), 1, *_opened(span, deep)),
                    "Firebox side section",
                    "piece",
                )


def _behind_the_fire(geometry: Geometry) -> Manifold:
    """All that lies behind the back's own face, upright and raked."""
    from manifold3d import CrossSection

    f = geometry.frame
    outline = [
        (f.depth, -FAR),
        (FAR, -FAR),
        (FAR, FAR),
        (f.back_at(f.throat), FAR),
        (f.back_at(f.throat), f.throat),
        (f.depth, f.back_bend),
    ]
    # Drawn as (y, z) and pulled along x.
    turned = ((0.0, 0.0, 1.0, -FAR), (1.0, 0.0, 0.0, 0.0), (0.0, 1.0, 0.0, 0.0))
    return CrossSection([outline]).extrude(2 * FAR).transform(turned)


def _flue(geometry: Geometry, part: Part) -> Iterator[ShownSolid]:
    courses = course_list(geometry).of(part.name)
    laid = geometry.design.method == "laid"
    item = "Clay flue liner" if laid else "Flue section"
    if part.name.startswith("second"):
        item = "Second " + (item.lower() if laid else "flue section")
    counted = laid or part.name.endswith("flue liner")
    for course in courses:
        yield ShownSolid(
            f"{part.name} {course.number}",
            f"{part.name}, section {course.number} of {len(courses)}",
            part.name,
            part.material,
            between_levels(part, course.bottom, course.top),
            item if counted else "",
            "piece",
            smooth=geometry.design.flue.shape == "round",
        )


def _ends(low: float, high: float) -> list[float]:
    return _shared(low, high, ceil((high - low) / LONGEST - ROUNDING))


def _shared(low: float, high: float, count: int) -> list[float]:
    """A length in so many equal ones, by their ends. [m]"""
    return [low + (high - low) * k / count for k in range(count + 1)]


def _opened(span: tuple[float, float], ends: list[float]) -> tuple[float, float]:
    """A span among others; the outermost run on. [m]"""
    return (
        -FAR if span[0] == ends[0] else span[0],
        FAR if span[1] == ends[-1] else span[1],
    )


def _slab(body: Manifold, axis: int, low: float, high: float) -> Manifold:
    """What of a body lies between two planes across an axis."""
    way = [0.0, 0.0, 0.0]
    way[axis] = 1.0
    if low > -FAR:
        body = body.trim_by_plane(tuple(way), low)
    if high < FAR:
        body = body.trim_by_plane(tuple(-v for v in way), -high)
    return body


def is_something(one: ShownSolid) -> bool:
    """Whether anything of it is left."""
    return not one.body.is_empty() and bool(one.body.volume() > CRUMB)
