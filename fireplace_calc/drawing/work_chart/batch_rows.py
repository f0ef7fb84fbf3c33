"""One batch of everything that is mixed, in sacks, pails and pounds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from math import ceil

from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import CUFT, FEET_INCHES, POUND
from fireplace_calc.build import Plan
from fireplace_calc.build.on_site.batching import Batch, list_batches
from fireplace_calc.drawing.plates.bands import Together, heading, row, words
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.work_chart.at_hand import bulk
from fireplace_calc.report.sentences import weight

PAIL = 5 * 231 / 1728 * CUFT
"""Five gallons. [m3]"""
TEN_LITERS = 0.010
"""A metric pail. [m3]"""
SACK, LIME_BAG = 94 * POUND, 50 * POUND
"""[kg]"""
QUARTERS = {0.125: "1/8", 0.25: "1/4", 0.5: "1/2", 1.5: "1 1/2"}
BATCHES = (
    Column("What", 78),
    Column("One batch, at most", 84),
    Column("Makes", 16, "right"),
    Column("Batches", 15, "right"),
    Column("Good for", 18, "right"),
    Column("All of it, no waste", 80),
)
BEFORE = (
    "Water last, no more than the work asks for: damp sand brings some, so no figure stands here. A"
    " label goes first. Where an engineer or the code asks for a strength, concrete is ordered by"
    " it."
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
        pails = f"{volume(whole)}: {ceil(bought - COUNT_SLACK)} {batch.unit}s"
        return batch.item, label, volume(batch.makes), str(count), "see label", pails
    parts = [f"{sacks_text(batch.cement)} cement ({weight(batch.cement * SACK, units)})"]
    if batch.lime > 0:
        parts.append(f"{weight(batch.lime * LIME_BAG, units)} lime")
    parts.append(f"{volume(batch.sand)} sand ({pails_text(batch.sand, units)})")
    if batch.gravel > 0:
        parts.append(f"{volume(batch.gravel)} gravel ({pails_text(batch.gravel, units)})")
    all_of = [f"{sum(one.sacks for one in alike):.1f} sacks cement"]
    if batch.bags > 0:
        all_of.append(f"{batch.bags:.1f} bags lime")
    all_of.append(f"{volume(sum(one.sand_whole for one in alike))} sand")
    if batch.gravel > 0:
        all_of.append(f"{volume(sum(one.gravel_whole for one in alike))} gravel")
    names = [one.item.removesuffix(" concrete").lower() for one in alike]
    several = [f"{name} {volume(one.whole)}" for name, one in zip(names, alike, strict=True)]
    name = batch.item if len(alike) == 1 else f"Concrete: {', '.join(several)}"
    bagged = f"; or {bought:.1f} {batch.unit}s ready" if batch.unit.endswith("bag") else ""
    return (
        f"{name}, {batch.recipe}",
        ", ".join(parts),
        volume(batch.makes),
        str(count),
        hours_text(batch.good),
        f"{volume(whole)}: {', '.join(all_of)}{bagged if len(alike) == 1 else ''}",
    )


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
