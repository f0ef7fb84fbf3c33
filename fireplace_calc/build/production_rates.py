"""What some work takes: goods, mortar, and hours by the production rates of the design."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import dist, pi

from fireplace_calc.base.units import SQFT
from fireplace_calc.build.lift_parts import LiftPart
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.solids import Cylinder, Loft, Solid
from fireplace_calc.takeoff import Share, goods_for
from fireplace_calc.takeoff.bricks import WALL_MEASURE

MORTAR, REFRACTORY = "Mortar", "Refractory mortar"
POURED = ("concrete", "grout", "Crown mortar")
"""Ends of the names of what is poured."""
COATS = ("parging",)
SETTING_UP = {
    ("arch", ""): 4.0,
    ("lintel", "masonry arch"): 4.0,
    ("lintel", "reinforced masonry"): 2.0,
    ("crown", "concrete"): 3.0,
    ("crown", "mortar"): 3.0,
}
"""Hours of one mason beside what he lays, by part and material: centering built, set and struck and
skewbacks cut for an arch, flat or not; form board and posts for reinforced masonry; forms,
bond break, drip and finish for a crown that is cast. Engineering judgement; no published figure was
found. [h]
"""
FORM_LEAST = 0.5
"""Any form takes half an hour, however small: engineering judgement. [h]"""
CAST_WALLS = ("firebox walls", "smoke chamber walls", "breast walls", "shoulder", "chimney walls")
"""Where of concrete, formed outside; inside they are cast against what they surround."""


@dataclass(frozen=True, slots=True)
class StepGoods:
    """Goods for a step.

    Attributes
    ----------
    item, unit : str
        As on the takeoff.
    quantity : float
        In that unit, net. [-]
    volume : float
        It fills. [m3]
    weight : float
        As it stands in the work. [kg]
    """

    item: str
    unit: str
    quantity: float
    volume: float
    weight: float


def _quantity(share: Share) -> float:
    holds = goods_for(share.item).holds
    return share.count if holds is None else share.volume / holds


def _sides(solid: Solid) -> float:
    """Upright faces of a solid, by its mean girth. [m2]"""
    if isinstance(solid, Cylinder):
        return 2 * pi * solid.radius * (solid.top - solid.bottom)
    if not isinstance(solid, Loft):
        return 0.0
    girth = sum(
        dist(a, b) / 2
        for ring in (solid.lower, solid.upper)
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
    )
    return girth * (solid.top - solid.bottom)


def form_areas(geometry: Geometry) -> dict[str, float]:
    """What concrete touches of its forms.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of float
        By part; the crown's forms are in ``SETTING_UP``. [m2]

    Notes
    -----
    Footing and slab are formed at their sides, the slab over a hollow base from below too; so is
    the bed of the hearth extension, unless block stands under it, and at its three free sides. A
    seat's bed is formed over its wood store too. The first flue liner's seat is formed by its bore,
    walls outside. A footing cast against earth takes less: put the pace of forms up.
    """
    found: dict[str, float] = {}
    hollow, hearth = geometry.design.base.core == "hollow", geometry.design.hearth
    for part in geometry.parts:
        if part.material != "concrete":
            continue
        area = sum(map(_sides, part.adds))
        if part.name == "transition":
            area = sum(map(_sides, part.cuts))
        elif part.name == "hearth slab" and hollow and "base walls" in geometry.parts_by_name:
            walls = geometry.parts_by_name["base walls"]
            area += sum(s.volume for s in walls.cuts if s not in walls.aside) / (
                walls.top - walls.bottom
            )
        elif part.name in ("hearth extension bed", "hearth extension"):
            thick, front = part.top - part.bottom, hearth.front
            wide = part.volume / thick / front
            area = (wide + 2 * front) * thick
            if part.name.endswith("bed") and "hearth extension base" not in geometry.parts_by_name:
                area += wide * front
        elif part.name == SEAT[1]:
            base = geometry.parts_by_name.get(SEAT[2])
            area += sum(s.volume / (s.top - s.bottom) for s in base.cuts) if base else 0.0
        elif part.name not in (SEAT[0], "footing", "hearth slab", *CAST_WALLS):
            continue
        found[part.name] = area
    return found


def goods_of(built: Iterable[LiftPart], by_part: dict[str, list[Share]]) -> tuple[StepGoods, ...]:
    """Goods of some lift parts, like with like.

    Parameters
    ----------
    built : iterable of LiftPart
        With their share of their part.
    by_part : dict
        Shares of the takeoff by part.

    Returns
    -------
    tuple of StepGoods
        In the order they are first used.
    """
    found: dict[str, list[float]] = {}
    for lift_part in built:
        for share in by_part.get(lift_part.part, ()):
            sums = found.setdefault(share.item, [0.0, 0.0, 0.0])
            for k, value in enumerate((_quantity(share), share.volume, share.weight)):
                sums[k] += value * lift_part.share
    return tuple(StepGoods(item, goods_for(item).unit, *sums) for item, sums in found.items())


def hours_for(goods: StepGoods, design: Design) -> float:
    """Hours of one mason.

    Parameters
    ----------
    goods : StepGoods
        Of one kind.
    design : Design
        Its production rates.

    Returns
    -------
    float
        Mortar takes none of its own. [h]

    Notes
    -----
    Stone takes as long as the brick in its place by wall measure, and a square foot of paving,
    facing or coat as long as one piece: our own habit.
    """
    work = design.work
    if goods.item in (MORTAR, REFRACTORY):
        return 0.0
    if goods.item.endswith(POURED) and goods.unit != "piece":
        return goods.volume / work.pour_pace / 3600
    if goods.unit == "block":
        return goods.quantity / work.block_pace
    if goods.unit in ("piece", "ft2"):
        return goods.quantity / work.piece_pace
    if goods.unit == "brick":
        flat = goods.item == "Lintel brick" and design.lintel.material == "masonry arch"
        if goods.item == "Arch brick" or flat:
            return goods.quantity / work.voussoir_pace
        return goods.quantity / (
            work.firebrick_pace if "irebrick" in goods.item else work.brick_pace
        )
    return goods.volume * WALL_MEASURE / work.brick_pace


def hours_of(built: Iterable[LiftPart], goods: tuple[StepGoods, ...], geometry: Geometry) -> float:
    """Hours of a step, coats and forms counted in, and the setting up of an arch or a crown.

    Parameters
    ----------
    built : iterable of LiftPart
        What is built.
    goods : tuple of StepGoods
        Their goods.
    geometry : Geometry
        What is formed; its design's production rates, and how thick the smoke chamber is parged.

    Returns
    -------
    float
        Of one mason. [h]
    """
    built, design = tuple(built), geometry.design
    hours = sum(hours_for(one, design) for one in goods)
    formed = form_areas(geometry) if any(s.material == "concrete" for s in built) else {}
    for s in built:
        if s.number == 1:
            material = design.lintel.material or "" if s.part == "lintel" else s.material
            hours += SETTING_UP.get((s.part, ""), SETTING_UP.get((s.part, material), 0.0))
        if s.part in formed:
            hours += s.share * max(formed[s.part] / design.work.form_pace, FORM_LEAST)
    if any(s.material in COATS for s in built):
        coat = sum(one.volume for one in goods if one.item == REFRACTORY)
        hours += coat / design.smoke_chamber.lining_thickness / SQFT / design.work.piece_pace
    return hours
