"""What a stretch of work asks for: goods, mortar, and hours by the paces of the design."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fireplace_calc.base.units import SQFT
from fireplace_calc.build.lift_parts import LiftPart
from fireplace_calc.design.records import Design
from fireplace_calc.takeoff import Share, all_goods
from fireplace_calc.takeoff.bricks import WALL_MEASURE

MORTAR, REFRACTORY = "Mortar", "Refractory mortar"
POURED = ("concrete", "grout", "Crown mortar")
"""Ends of the names of what is poured."""
COATS = ("parging",)


@dataclass(frozen=True, slots=True)
class Need:
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
    holds = all_goods()[share.item].holds
    return share.count if holds is None else share.volume / holds


def needs(built: Iterable[LiftPart], by_part: dict[str, list[Share]]) -> tuple[Need, ...]:
    """Goods of some stretches, like with like.

    Parameters
    ----------
    built : iterable of LiftPart
        With their share of their part. [-]
    by_part : dict
        Shares of the takeoff by part.

    Returns
    -------
    tuple of Need
        In the order they are first wanted.
    """
    found: dict[str, list[float]] = {}
    for lift_part in built:
        for share in by_part.get(lift_part.part, ()):
            sums = found.setdefault(share.item, [0.0, 0.0, 0.0])
            for k, value in enumerate((_quantity(share), share.volume, share.weight)):
                sums[k] += value * lift_part.share
    return tuple(Need(item, all_goods()[item].unit, *sums) for item, sums in found.items())


def hours_for(need: Need, design: Design) -> float:
    """Hours of one mason.

    Parameters
    ----------
    need : Need
        Of one kind of goods. [-]
    design : Design
        Its paces. [1/h, m3/s]

    Returns
    -------
    float
        Mortar takes none of its own; stone is paced as the brick in its place by wall measure, and
        a square foot of paving, facing or coat as one piece: our own habit. [h]
    """
    work = design.work
    if need.item in (MORTAR, REFRACTORY):
        return 0.0
    if need.item.endswith(POURED) and need.unit != "piece":
        return need.volume / work.pour_pace / 3600
    if need.unit == "block":
        return need.quantity / work.block_pace
    if need.unit in ("piece", "ft2"):
        return need.quantity / work.piece_pace
    if need.unit == "brick":
        return need.quantity / (work.firebrick_pace if "irebrick" in need.item else work.brick_pace)
    return need.volume * WALL_MEASURE / work.brick_pace


def hours_of(built: Iterable[LiftPart], wanted: tuple[Need, ...], design: Design) -> float:
    """Hours of a step, coats counted in.

    Parameters
    ----------
    built : iterable of LiftPart
        What is built.
    wanted : tuple of Need
        Their goods.
    design : Design
        Its paces, and how thick the smoke chamber is parged. [m]

    Returns
    -------
    float
        Of one mason. [h]
    """
    hours = sum(hours_for(need, design) for need in wanted)
    if any(s.material in COATS for s in built):
        coat = sum(need.volume for need in wanted if need.item == REFRACTORY)
        hours += coat / design.smoke_chamber.lining_thickness / SQFT / design.work.piece_pace
    return hours
