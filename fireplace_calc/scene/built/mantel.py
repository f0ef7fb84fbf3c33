"""Mantel and trim, as bodies to be seen and picked."""

from __future__ import annotations

import atexit
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.design.mantel import TOLD
from fireplace_calc.geometry.bodies import solid_body
from fireplace_calc.geometry.mantel.families import MantelGroup
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_top
from fireplace_calc.scene.built.standing import ShownSolid

if TYPE_CHECKING:
    from manifold3d import Manifold

PART, KIND = "mantel", "trim"
"""What the list calls it, and what it is among all things."""


def mantel_solids(geometry: Geometry, step: int) -> tuple[ShownSolid, ...]:
    """Everything of mantel and trim, from the floor to the ceiling.

    Parameters
    ----------
    geometry : Geometry
    step : int
        When it is set. [-]

    Returns
    -------
    tuple of ShownSolid
    """
    made: dict[str, ShownSolid] = {}
    top = wall_top(geometry)
    for part in mantel_parts(geometry):
        key = next(k for k in _keys(part.name) if k not in made)
        body = group_body(part.group)
        if body.bounding_box()[5] > top:
            body = body.trim_by_plane((0.0, 0.0, -1.0), -top)
        smooth = any(run.round for run in part.group.runs)
        made[key] = ShownSolid(
            key, part.name, PART, part.tone, body, kind=KIND, step=step, smooth=smooth
        )
    return tuple(made.values())


def _keys(name: str) -> tuple[str, ...]:
    """Names for the first and the next of one name; no design has more pieces."""
    return (name, *(f"{name} {n}" for n in range(2, 300)))


def trim_stuff(geometry: Geometry, one: ShownSolid) -> str:
    """What it is made of to the eye.

    Parameters
    ----------
    geometry : Geometry
    one : ShownSolid

    Returns
    -------
    str
    """
    mantel = geometry.design.mantel
    return one.material if mantel.family == TOLD else mantel.material


@lru_cache(maxsize=64)
def group_body(group: MantelGroup) -> Manifold:
    """One thing of a mantel in one skin.

    Parameters
    ----------
    group : MantelGroup

    Returns
    -------
    Manifold
        [m]
    """
    from manifold3d import Manifold, OpType

    lofts = [solid_body(loft) for run in group.runs for loft in run.lofts]
    return Manifold.batch_boolean(lofts, OpType.Add)


# solids that outlive the library's own end are reported as lost, on the reader's screen
atexit.register(group_body.cache_clear)
