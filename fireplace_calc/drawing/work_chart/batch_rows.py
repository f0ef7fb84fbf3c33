"""One batch of everything that is mixed, in sacks, pails and pounds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from math import ceil

from fireplace_calc.base.tables.mortars import LIME_BAG, SACK
from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import CUFT, FEET_INCHES
from fireplace_calc.build import Plan
from fireplace_calc.build.on_site.batching import Batch, list_batches
from fireplace_calc.drawing.plates.bands import Together, heading, row, words
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.work_chart.at_hand import bulk
from fireplace_calc.report.sentences import BAGGED, bagged, weight

PAIL = 5 * 231 / 1728 * CUFT
"""Five gallons. [m3]"""
TEN_LITERS = 0.010
"""A metric pail. [m3]"""
QUARTERS = {0.125: "1/8", 0.25: "1/4", 0.5: "1/2", 1.5: "1 1/2"}
BATCHES = (
    Column("What", 78),
    Column("One batch, at most", 84),
    Column("Makes", 16.9, "right"),
    Column("No.", 14.1, "right"),
    Column("Good for", 18, "right"),
    Column("All of it, no waste", 80),
)
BEFORE = (
    "Water goes in last, no more than the work asks for: that of mortar is a figure to begin with,"
    " for damp sand; a label or a bag goes first. Where an engineer or the code asks for a"
    " strength, concrete is ordered by it."
)


def batch_table(plan: Plan, recipe: str, units: str, wide: float) -> list[Together]:
    """Table of batches.

    Parameters
    ----------
    plan : Plan
    recipe : str
        Of the mortar.
    units : str
    wide : float
        [mm]

    Returns
    -------
    list of Together
    """
    made = [heading("One batch", wide), *words(BEFORE, wide)]
    headings = [column.heading for column in BATCHES]
    made += row(BATCHES, headings, wide, bold=True, weight="seen", leads=True)
    for alike in by_batch(list_batches(plan, recipe)):
        made += row(BATCHES, batch_texts(alike, units), wide)
    return made


def by_batch(batches: Iterable[Batch]) -> list[list[Batch]]:
    """Batches that are mixed alike, together."""
    found: dict[tuple[str, float], list[Batch]] = defaultdict(list)
    for batch in batches:
        found[batch.recipe or batch.item, batch.cement].append(batch)
    return list(found.values())


def batch_texts(alike: list[Batch], units: str) -> tuple[str, ...]:
    """Cells of a row: what is mixed alike for one or several pours."""
    batch, whole = alike[0], sum(one.whole for one in alike)

    def volume(much: float) -> str:
        return bulk(much, units)

    count, bought = sum(one.count for one in alike), sum(one.bought for one in alike)
    if not batch.recipe:
        label = "a pail, ready or dry with water as its label says"
        pails = f"{volume(whole)}: {ready(ceil(bought - COUNT_SLACK), batch.unit, units)}"
        return batch.item, label, volume(batch.makes), str(count), "see label", pails
    american = units == FEET_INCHES
    cement = weight(batch.cement * SACK, units)
    parts = [f"{sacks_text(batch.cement)} cement ({cement})" if american else f"{cement} cement"]
    if batch.lime > 0:
        parts.append(f"{weight(batch.lime * LIME_BAG, units)} lime")
    parts.append(f"{volume(batch.sand)} sand ({pails_text(batch.sand, units)})")
    if batch.gravel > 0:
        parts.append(f"{volume(batch.gravel)} gravel ({pails_text(batch.gravel, units)})")
    if batch.water > 0:
        parts.append(f"about {water_text(batch.water, units)} water")
    sacks, bags = sum(one.sacks for one in alike), batch.bags
    all_of = [f"{sacks:.1f} sacks cement" if american else f"{weight(sacks * SACK, units)} cement"]
    if bags > 0:
        lime = weight(bags * LIME_BAG, units)
        all_of.append(f"{bags:.1f} bags lime" if american else f"{lime} lime")
    all_of.append(f"{volume(sum(one.sand_whole for one in alike))} sand")
    if batch.gravel > 0:
        all_of.append(f"{volume(sum(one.gravel_whole for one in alike))} gravel")
    names = [one.item.removesuffix(" concrete").lower() for one in alike]
    several = [f"{name} {volume(one.whole)}" for name, one in zip(names, alike, strict=True)]
    name = batch.item if len(alike) == 1 else f"Concrete: {', '.join(several)}"
    ends = batch.unit.endswith("bag")
    in_bags = f"; or {ready(bought, batch.unit, units)}" if ends else ""
    return (
        f"{name}, {batch.recipe}",
        ", ".join(parts),
        volume(batch.makes),
        str(count),
        hours_text(batch.good),
        f"{volume(whole)}: {', '.join(all_of)}{in_bags if len(alike) == 1 else ''}",
    )


def ready(count: float, unit: str, units: str) -> str:
    """So many bags or pails of what is bought ready.

    >>> ready(64.04, "80-lb bag", "feet-inches"), ready(9, "50-lb pail", "millimetres")
    ('64.0 80-lb bags', '204 kg (9 pails of 25 kg)')
    """
    if units != FEET_INCHES and unit in BAGGED:
        return bagged(count, unit)
    return f"{count:.1f} {unit}s" if unit.endswith("bag") else f"{count:.0f} {unit}s"


def water_text(volume: float, units: str) -> str:
    """Water in gallons, to the next half of one, or in liters.

    >>> water_text(0.0337, "feet-inches"), water_text(0.0337, "millimetres")
    ('9 gal', '34 L')
    """
    if units != FEET_INCHES:
        return f"{max(1000 * volume, 1.0):.0f} L"
    halves = max(round(volume / PAIL * 10), 1)
    whole = f"{halves // 2}" if halves > 1 else ""
    return f"{' '.join(filter(None, (whole, '1/2' if halves % 2 else '')))} gal"


def sacks_text(sacks: float) -> str:
    """So many sacks.

    >>> sacks_text(0.5), sacks_text(1.0), sacks_text(1.5)
    ('1/2 sack', '1 sack', '1 1/2 sacks')
    """
    return f"{QUARTERS.get(sacks, f'{sacks:g}')} sack{'s' if sacks > 1 else ''}"


def pails_text(volume: float, units: str) -> str:
    """A volume in pails, to the next half of one.

    >>> pails_text(0.0379, "feet-inches"), pails_text(0.026, "millimetres")
    ('about 2 pails of 5 gal', 'about 2 1/2 pails of 10 L')
    """
    pail, name = (PAIL, "5 gal") if units == FEET_INCHES else (TEN_LITERS, "10 L")
    halves = max(round(volume / pail * 2), 1)
    whole = f"{halves // 2}" if halves > 1 else ""
    count = " ".join(filter(None, (whole, "1/2" if halves % 2 else "")))
    return f"about {count} pail{'s' if halves > 2 else ''} of {name}"


def hours_text(hours: float | None) -> str:
    """How long something is good.

    >>> hours_text(2.5), hours_text(2.0), hours_text(None)
    ('2 1/2 h', '2 h', 'see label')
    """
    if hours is None:
        return "see label"
    return f"{hours:g} h" if hours == int(hours) else f"{int(hours)} 1/2 h"
