"""What is no masonry and has its place in the order all the same: damper, flashing, bars, doors."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.build.lift_parts import FLUES, STACK
from fireplace_calc.build.plan import Plan
from fireplace_calc.geometry.parts import Geometry

SMOKE_CHAMBER = ("smoke chamber lining", "smoke chamber walls")
UNDER_THE_FIRE = ("hearth slab", "firebox floor", "firebox lining", "firebox walls")


@dataclass(frozen=True, slots=True)
class SetIn:
    """Something set in, by the mason or another trade.

    Attributes
    ----------
    item, what : str
        Which, and how.
    step : int or None
        In which it is set; None while nobody has told whether it is wanted. [-]
    source, confidence : str
        Where it is from.
    """

    item: str
    what: str
    step: int | None
    source: str
    confidence: str


@lru_cache(maxsize=1)
def _words() -> dict[str, tuple[str, str, str]]:
    return {r["item"]: (r["what"], r["source"], r["confidence"]) for r in rows("set_in.csv")}


def list_set_in(plan: Plan, geometry: Geometry) -> tuple[SetIn, ...]:
    """Everything that is set in, in turn.

    Parameters
    ----------
    plan : Plan
    geometry : Geometry
        Of the same design.

    Returns
    -------
    tuple of SetIn
        By step; last what nobody has told, without one. Its hours are not among those of the plan.

    Notes
    -----
    A throat damper goes in before the smoke chamber is laid over it, flashing and cricket with the
    step in which the chimney passes the roof, straps and fireblock where it passes the ceiling.
    """
    found = []
    for item, wanted, step in _asked(plan, geometry):
        if wanted is False:
            continue
        what, source, confidence = _words()[item]
        found.append(SetIn(item, what, step if wanted else None, source, confidence))
    return tuple(sorted(found, key=lambda one: (one.step is None, one.step or 0)))


def _asked(plan: Plan, geometry: Geometry) -> Iterator[tuple[str, bool | None, int]]:
    """What there is, whether it is wanted, and its step."""
    d, f = geometry.design, geometry.frame
    last = plan.steps[-1].number
    first_flue = _first(plan, FLUES, last)
    under = next((n for part in UNDER_THE_FIRE if (n := _first(plan, (part,), 0))), 1)
    ceiling = _at(plan, d.house.ceiling, first_flue)
    roof = _at(plan, f.uphill_contact, last)
    bars = d.anchorage.vertical_bars_no4
    barred = d.anchorage.chimney_reinforced if bars is None else bars > 0
    straps = d.anchorage.strap_count
    yield "Footing bars", d.ground.reinforced, 1
    yield "Dowels", barred or False, 1
    yield "Outside air duct", d.air.exterior_air_supply, under
    yield "Ash dump", d.ground.ash_dump, under
    if arched := _first(plan, ("arch",), 0):
        yield "Centering", True, arched
    elif d.lintel.material == "masonry arch":
        yield "Centering", True, _first(plan, ("lintel",), last)
    damper = d.throat.damper
    yield (
        "Damper",
        None if damper is None else damper == "throat",
        _first(plan, SMOKE_CHAMBER, last),
    )
    yield "Top damper", damper == "flue top", _first(plan, ("crown",), last)
    cleaned = d.stack.cleaned_through_opening
    yield "Clean-out door", d.stack.cleanout or (False if cleaned else d.stack.cleanout), first_flue
    yield "Bars and ties", barred, first_flue
    yield (
        "Straps and anchors",
        d.anchorage.anchor_at_level if straps is None else straps > 0,
        ceiling,
    )
    block = d.clearance.fireblock
    yield "Fireblocking", None if block is None else block != "none", ceiling
    fills = (d.clearance.fill, d.clearance.chimney_fill)
    filled = any(one in ("noncombustible", "other") for one in fills)
    yield "Insulation of the air space", filled, ceiling
    yield "Cricket", d.roof.cricket, roof
    yield "Flashing", True, roof
    yield "Doors or accessory", d.clearance.accessory, last


def _first(plan: Plan, parts: tuple[str, ...], otherwise: int) -> int:
    """First step in which one of some parts goes up. [-]"""
    return next(
        (step.number for step in plan.steps if any(one.part in parts for one in step.parts)),
        otherwise,
    )


def _at(plan: Plan, level: float, otherwise: int) -> int:
    """First step in which rising masonry reaches a level. [-]"""
    return next(
        (
            step.number
            for step in plan.steps
            for one in step.parts
            if one.part in STACK and one.high >= level - CONTACT_GAP
        ),
        otherwise,
    )
