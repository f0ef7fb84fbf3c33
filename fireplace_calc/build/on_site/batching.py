"""One batch, said plainly: what goes in, what it makes, how many there are, how long it is good."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from math import ceil

from fireplace_calc.base.tables.mortars import mix, mixing_water, mortar_figures
from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import CUFT, CUYD
from fireplace_calc.build.plan import Plan
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY
from fireplace_calc.takeoff.goods import goods_for
from fireplace_calc.takeoff.handbook import concrete

SACKS = (0.125, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0)
"""Sacks of cement that are weighed out for one batch without trouble: our own habit. [-]"""
CONCRETE, GROUT, CROWN_MORTAR = "concrete", "grout", "Crown mortar"
SMALL_JOB = 2.0
"""Up to so many sacks of cement concrete is mixed half a sack at a time: our own habit. [-]"""
GROUT_SAND = 3.0
"""Sand to one of cement in fine grout: ASTM C476, 2-1/4 to 3, from memory. [-]"""
POURED_FOR = 1.5
"""Concrete and grout are placed within so long of the first water: ASTM C94 and C476, from memory.
[h]
"""


@dataclass(frozen=True, slots=True)
class Batch:
    """One batch of something that is mixed on site.

    Attributes
    ----------
    item, recipe : str
        What it is, as on the takeoff, and its proportions by volume; no recipe for what is bought
        ready.
    cement, lime : float
        Sacks of 94 lb, and bags of 50 lb. [-]
    sand, gravel : float
        [m3]
    makes : float
        [m3]
    count : int
        Batches of the whole work, the last of each pour smaller. [-]
    good : float or None
        Hours from the first water; as its label says where it is bought. [h]
    whole : float
        In the work, without waste. [m3]
    sacks, bags : float
        Cement and lime of all batches. [-]
    sand_whole, gravel_whole : float
        [m3]
    bought, unit : float, str
        How many of which unit it comes to where it is bought ready to use or in bags. [-]
    water : float
        Of one batch of mortar, to begin with; nought where there is no figure. [m3]
    """

    item: str
    recipe: str
    cement: float
    lime: float
    sand: float
    gravel: float
    makes: float
    count: int
    good: float | None
    whole: float
    sacks: float
    bags: float
    sand_whole: float
    gravel_whole: float
    bought: float
    unit: str
    water: float = 0.0


def list_batches(plan: Plan, recipe: str) -> tuple[Batch, ...]:
    """Batches of a whole job.

    Parameters
    ----------
    plan : Plan
    recipe : str
        Of the mortar, as the design has it.

    Returns
    -------
    tuple of Batch
        Mortar, refractory mortar, then what is poured, in turn. What is in the work adds up to the
        list of goods before waste.

    Notes
    -----
    Mortar of a step is laid in equal batches, each within its open time; the batch told here is the
    least number of sacks that makes the largest of them. Concrete is 1:2-1/2:5, a sack or half of
    one at a time (USDA Farmers' Bulletin 1889, 1941); grout is one of cement and three of sand.
    """
    found = []
    if plan.mortar > 0:
        found.append(_mortar(plan, recipe))
    refractory = sum(step.refractory for step in plan.steps)
    if refractory > 0:
        found.append(_ready(REFRACTORY, refractory))
    pours: dict[str, float] = defaultdict(float)
    for step in plan.steps:
        for one in step.goods:
            if one.item.endswith((CONCRETE, GROUT)) and one.unit in ("yd3", "80-lb bag"):
                pours[one.item] += one.volume
    much = sum(volume for item, volume in pours.items() if not item.endswith(GROUT))
    sacks = 1.0 if concrete(much).cement > SMALL_JOB else 0.5
    found += [_poured(item, volume, sacks) for item, volume in pours.items()]
    return tuple(found)


def _mortar(plan: Plan, recipe: str) -> Batch:
    largest, all_of = max(step.batch for step in plan.steps), plan.mix
    of_one = mix(1.0, recipe)
    cement = next((n for n in SACKS if n >= of_one.cement * largest - COUNT_SLACK), SACKS[-1])
    makes = cement / of_one.cement
    unit = goods_for(MORTAR)
    return Batch(
        MORTAR,
        recipe,
        cement,
        of_one.lime * makes,
        of_one.sand * makes,
        0.0,
        makes,
        sum(step.batches for step in plan.steps),
        plan.open_time,
        plan.mortar,
        all_of.cement,
        all_of.lime,
        all_of.sand,
        0.0,
        plan.mortar / (unit.holds or CUYD),
        unit.unit,
        mixing_water(makes, recipe),
    )


def _ready(item: str, volume: float) -> Batch:
    unit = goods_for(item)
    bought = volume / (unit.holds or CUYD)
    makes, count = unit.holds or CUYD, ceil(bought - COUNT_SLACK)
    nothing = (0.0, 0.0, 0.0, 0.0)
    return Batch(item, "", *nothing, makes, count, None, volume, *nothing, bought, unit.unit)


def _poured(item: str, volume: float, sacks: float) -> Batch:
    unit = goods_for(item)
    if item.endswith(GROUT):
        loose = mortar_figures()["materials to a volume of mortar"]
        recipe, gravel = f"1:{GROUT_SAND:g}", 0.0
        cement, sand = loose / (1 + GROUT_SAND) / CUFT, loose * GROUT_SAND / (1 + GROUT_SAND)
    else:
        recipe, of_one = "1:2-1/2:5", concrete(1.0)
        cement, sand, gravel = of_one.cement, of_one.sand, of_one.gravel
    makes = sacks / cement
    return Batch(
        item,
        recipe,
        sacks,
        0.0,
        sand * makes,
        gravel * makes,
        makes,
        ceil(volume / makes - COUNT_SLACK),
        POURED_FOR,
        volume,
        volume * cement,
        0.0,
        volume * sand,
        volume * gravel,
        volume / (unit.holds or CUYD),
        unit.unit,
    )
