"""The plan at mid firebox that a geometry makes."""

from __future__ import annotations

from dataclasses import replace

from fireplace_calc.base.tables.heat import WallFire, conductors
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box
from fireplace_calc.heat.conduction.mesh import HELD, NotWorked, Solid
from fireplace_calc.heat.conduction.raster import Body
from fireplace_calc.heat.cuts.wall_plan import OUTDOORS, ROOM, Framing, WallPlan


def solid(material: str) -> Solid:
    """A material as it conducts and keeps heat.

    Raises
    ------
    NotWorked
        When nothing is known of it.
    """
    known = conductors().get(material)
    if known is None:
        raise NotWorked(f"How {material} conducts heat is not in the tables.")
    return Solid(known.conductivity, known.capacity)


def mid_firebox(geometry: Geometry) -> float:
    """Level at which the plan is cut: half way up what stands upright of the firebox. [m]"""
    f = geometry.frame
    return (f.hearth + max(min(f.back_bend, f.opening_top), f.hearth + 0.1)) / 2


def framing() -> Framing:
    """Usual stud framing, with mineral batts and gypsum board."""
    return Framing(solid("wood"), solid("batt"), solid("gypsum"))


def wall_plan(geometry: Geometry, fire: WallFire, more_masonry: float = 0.0) -> WallPlan:
    """Half the plan at mid firebox with what the clearances leave behind and beside it.

    Parameters
    ----------
    geometry : Geometry
    fire : WallFire
        Which face it gives the firebox, and how much air goes through the gap.
    more_masonry : float
        Laid behind the back, the framing there moved back with it; that beside stays. [m]

    Returns
    -------
    WallPlan
        Where the masonry stands outdoors nothing is framed behind it.

    Raises
    ------
    NotWorked
        When the firebox is a steel unit, whose air chamber is not worked, when nothing is known of
        a material, or when a clearance is not known.
    """
    f, design = geometry.frame, geometry.design
    z = mid_firebox(geometry)
    bodies = []
    for part in geometry.parts:
        rings, holes = part.plan(z)
        if rings and part.material != "air":
            if part.material in ("steel", "metal"):
                raise NotWorked("A steel firebox with its air chamber is not worked out.")
            bodies.append(Body(solid(part.material), tuple(rings), tuple(holes)))
    deep = f.block_back + more_masonry
    if more_masonry:
        behind = box(-f.block_half, f.block_half, f.block_back - 1e-4, deep)
        wall = geometry.parts_by_name["firebox walls"].material
        bodies.append(Body(solid(wall), (behind,)))
    free = design.chimney.location == "exterior"
    back, side = design.clearance.back, design.clearance.side
    if not free and (back is None or side is None):
        raise NotWorked("How much air is left behind and beside the masonry is not known.")
    depth, half = f.back_at(z), f.half_at(0.0)
    narrow = f.half_at(depth)
    return WallPlan(
        bodies=tuple(bodies),
        fire=((0.0, 0.0), (half, 0.0), (narrow, depth), (0.0, depth)),
        slope=f.side_slope,
        half=f.block_half,
        deep=deep,
        film=HELD if fire.film is None else fire.film,
        back_gap=0.0 if back is None else back,
        side_gap=0.0 if side is None else side,
        framing=None if free else framing(),
        behind=OUTDOORS if free else ROOM,
        air=fire.air,
        studs_from=f.block_back,
    )


def with_lining(plan: WallPlan, material: str, lining: str) -> WallPlan:
    """The same plan with what is made of one material made of another.

    Parameters
    ----------
    plan : WallPlan
    material, lining : str
        Of which is changed, and into which.
    """
    old, new = solid(material), solid(lining)
    changed = tuple(replace(body, solid=new) if body.solid == old else body for body in plan.bodies)
    return replace(plan, bodies=changed)
