"""What some work takes: goods, mortar, and hours by the production rates of the design."""

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
SETTING_UP = {
    ("arch", ""): 4.0,
    ("crown", "concrete"): 3.0,
    ("crown", "mortar"): 3.0,
}
"""Hours of one mason beside what he lays, by part and material: centering built, set and struck and
skewbacks cut for an arch; forms, bond break, drip and finish for a crown that is cast. Engineering
judgement; no published figure was found. [h]
"""


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
    holds = all_goods()[share.item].holds
    return share.count if holds is None else share.volume / holds


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
    return tuple(StepGoods(item, all_goods()[item].unit, *sums) for item, sums in found.items())


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
        return goods.quantity / (
            work.firebrick_pace if "irebrick" in goods.item else work.brick_pace
        )
    return goods.volume * WALL_MEASURE / work.brick_pace


def hours_of(built: Iterable[LiftPart], goods: tuple[StepGoods, ...], design: Design) -> float:
    """Hours of a step, coats counted in, and the setting up of an arch or a crown.

    Parameters
    ----------
    built : iterable of LiftPart
        What is built.
    goods : tuple of StepGoods
        Their goods.
    design : Design
        Its production rates, and how thick the smoke chamber is parged.

    Returns
    -------
    float
        Of one mason. [h]
    """
    built = tuple(built)
    hours = sum(hours_for(one, design) for one in goods)
    for s in built:
        if s.number == 1:
            hours += SETTING_UP.get((s.part, ""), SETTING_UP.get((s.part, s.material), 0.0))
    if any(s.material in COATS for s in built):
        coat = sum(one.volume for one in goods if one.item == REFRACTORY)
        hours += coat / design.smoke_chamber.lining_thickness / SQFT / design.work.piece_pace
    return hours
