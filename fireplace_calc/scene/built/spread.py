"""How far each thing is moved where a fireplace is drawn apart: what is inside stands beside its
shell, and both are lifted apart level by level.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.built.standing import ShownSolid
from fireplace_calc.scene.records import Point

SHELL = (
    "footing",
    "base walls",
    "hearth slab",
    "hearth extension",
    "hearth extension bed",
    "hearth extension base",
    "hearth seat",
    "hearth seat bed",
    "hearth seat base",
    "masonry round the set",
    "facing lintel",
    "breast walls",
    "shoulder",
    "chimney walls",
    "crown",
)
"""What stays; of a laid design the walls round firebox and smoke chamber too."""
WALLS = ("firebox walls", "smoke chamber walls")
BETWEEN = 0.14
"""Between two levels. [m]"""
OUTWARD = 0.12
"""What stands round the fire goes out by so much. [m]"""
BESIDE = 0.55
"""Between the shell and what is inside it. [m]"""
BEFORE = 0.4
"""The mantel goes so far out into the room. [m]"""
HOLDS = ("firebox walls", "masonry round the set")
"""What it hangs on."""
BACK = {"smoke shelf": 0.45}
"""What stands behind something of the same level goes back by so much. [m]"""
ONE_LEVEL = 0.02
"""Undersides that differ by less are of one level. [m]"""


def spread_apart(geometry: Geometry, things: Sequence[ShownSolid]) -> dict[str, Point]:
    """How far each is moved, by its key.

    Parameters
    ----------
    geometry : Geometry
    things : sequence of ShownSolid

    Returns
    -------
    dict of str to tuple
        [m]
    """
    shell = SHELL if geometry.design.piece_set else (*SHELL, *WALLS)
    outer = [one for one in things if one.part in shell]
    inner = [one for one in things if one.part not in shell]
    aside = 2 * max(geometry.frame.block_half, geometry.frame.stack_half) + BESIDE
    moved: dict[str, Point] = {}
    for column in (outer, inner):
        levels = _levels(column)
        for one in column:
            up = BETWEEN * levels[one.key]
            if column is outer:
                moved[one.key] = (0.0, 0.0, up)
                continue
            right, back = _outward(geometry, one)
            # A liner is drawn out of the casing that is cast round it.
            out = aside if "liner" in one.part and _cased(inner) else 0.0
            moved[one.key] = (aside + out * 0.7 + right, back, up)
    return moved


def before_walls(moved: dict[str, Point], things: Sequence[ShownSolid]) -> Point:
    """How far a mantel is moved: with the walls that it hangs on, and out into the room.

    Parameters
    ----------
    moved : dict of str to tuple
        How far all else is moved. [m]
    things : sequence of ShownSolid
        All else.

    Returns
    -------
    tuple of float
        [m]
    """
    up = max((moved[one.key][2] for one in things if one.part in HOLDS), default=0.0)
    return (0.0, -BEFORE, up)


def _levels(column: Sequence[ShownSolid]) -> dict[str, int]:
    """The how-manieth level each stands on, from nought. [-]"""
    found: dict[str, int] = {}
    number, last = -1, -1e9
    for one in sorted(column, key=_underside):
        if _underside(one) > last + ONE_LEVEL:
            number, last = number + 1, _underside(one)
        found[one.key] = number
    return found


def _underside(one: ShownSolid) -> float:
    return float(one.body.bounding_box()[2])


def _outward(geometry: Geometry, one: ShownSolid) -> tuple[float, float]:
    """Away from the middle of the fire, for what does not stand round it. [m]"""
    if one.part in BACK and not geometry.design.piece_set:
        return 0.0, BACK[one.part]
    x0, y0, _, x1, y1, _ = one.body.bounding_box()
    middle = geometry.frame.depth / 2
    if x0 < 0 < x1 and y0 < middle < y1:
        return 0.0, 0.0
    x, y = (x0 + x1) / 2, (y0 + y1) / 2 - middle
    if x0 < 0 < x1 and abs(x) < (x1 - x0) / 4:
        x = 0.0
    far = hypot(x, y)
    return (OUTWARD * x / far, OUTWARD * y / far) if far > 0 else (0.0, 0.0)


def _cased(things: Sequence[ShownSolid]) -> bool:
    return any("casing" in one.part for one in things)
