"""What is said of one thing that somebody has picked: name, size, weight, price, and the checks
that speak of it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.tables import density, rows
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.mantel import BURNS
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.report.sentences import SIGNS
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, NOT_CHECKED
from fireplace_calc.takeoff import share_out
from fireplace_calc.takeoff.before_masonry import MANTEL
from fireplace_calc.takeoff.cost import Bill, bill, prices
from fireplace_calc.takeoff.goods import SET_PIECE

if TYPE_CHECKING:
    from collections.abc import Mapping

    from fireplace_calc.rules import Finding
    from fireplace_calc.scene.records import Thing
    from fireplace_calc.takeoff.cost import Price

MOST_CHECKS = 6
"""So many checks are named; the others are counted. [-]"""


@dataclass(frozen=True, slots=True)
class Weighed:
    """What one thing weighs and asks for.

    Attributes
    ----------
    weight : float
        [kg]
    goods : tuple of (str, float)
        Lines of the list, and the share of each that it takes. [-]
    """

    weight: float
    goods: tuple[tuple[str, float], ...]


@lru_cache(maxsize=1)
def checks_of_parts() -> dict[str, frozenset[str]]:
    """Which checks speak of a part.

    Returns
    -------
    dict of frozenset
        Keys of findings, by the part's name; under no name those that speak of none.
    """
    return {row["part"]: frozenset(row["keys"].split()) for row in rows("part_checks.csv")}


def weighed(result: Assessment, part: str, share: float = 1.0, item: str = "") -> Weighed:
    """What a thing weighs and what of the order it takes.

    Parameters
    ----------
    result : Assessment
    part : str
        That it belongs to.
    share : float
        Of the part's volume. [-]
    item : str
        Line of the list that it is one piece of, where it is one.

    Returns
    -------
    Weighed
        Its share of what the part asks for; of a piece its own line alone.
    """
    shares = [s for s in share_out(result.geometry) if s.part == part]
    if item:
        shares = [s for s in shares if s.item == item]
        whole = sum(s.count for s in shares)
        share = 1 / whole if whole else 0.0
    lines = {row.item: row for row in result.takeoff}
    goods: dict[str, float] = {}
    for one in shares:
        row = lines[one.item]
        of_line = one.volume / row.volume if row.volume else one.count / row.net
        goods[one.item] = goods.get(one.item, 0.0) + share * of_line
    return Weighed(share * sum(s.weight for s in shares), tuple(goods.items()))


def about(
    result: Assessment,
    thing: Thing,
    units: str = FEET_INCHES,
    priced: Mapping[str, Price] | None = None,
) -> dict[str, Any]:
    """What is said of one thing.

    Parameters
    ----------
    result : Assessment
    thing : Thing
        One that is shown.
    units : str
        ``feet-inches`` or ``millimetres``.
    priced : mapping of str to Price, optional
        The price list; the example list when left out.

    Returns
    -------
    dict
        ``key`` and ``name``; ``size``, ``weight`` and ``price`` in words, ``goods`` line by line;
        ``checks``, each with key, sign, title and verdict, and ``more``, how many others; ``said``,
        all of it in one sentence.
    """
    found = _weighed_thing(result, thing)
    order = bill(result.takeoff, prices() if priced is None else priced)
    checks = _checks(result, thing.part)
    told = {
        "key": thing.key,
        "name": thing.name[:1].upper() + thing.name[1:],
        "size": size_words(thing, units),
        "weight": show(found.weight, "mass", units) if found.weight else "",
        "price": _price(found, order, units),
        "goods": _goods(found, thing, result),
        "checks": [_told(f) for f in checks[:MOST_CHECKS]],
        "more": max(len(checks) - MOST_CHECKS, 0),
    }
    words = [str(told[name]) for name in ("name", "size", "weight", "price")]
    short = sum(f.verdict == FALLS_SHORT for f in checks)
    words.append(f"{short} of {len(checks)} checks fall short" if short else "")
    return told | {"said": ", ".join(filter(None, words)) + "."}


def size_words(thing: Thing, units: str = FEET_INCHES) -> str:
    """Wide by deep by high, of the box round a thing."""
    low, high = thing.points.min(axis=0), thing.points.max(axis=0)
    wide, deep, tall = (show(float(b - a), "length", units) for a, b in zip(low, high, strict=True))
    return f"{wide} wide, {deep} deep, {tall} high"


def volume_of(thing: Thing) -> float:
    """What is inside its skin. [m3]"""
    import numpy as np

    a, b, c = (thing.points[thing.faces[:, k]] for k in range(3))
    return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)


def _weighed_thing(result: Assessment, thing: Thing) -> Weighed:
    part = result.geometry.parts_by_name.get(thing.part)
    if thing.item:
        found = weighed(result, thing.part, item=thing.item)
        if thing.item.startswith(SET_PIECE):
            return found
        # The list has the mean of all sections; this one is as large as it is drawn.
        return replace(found, weight=volume_of(thing) * density(thing.stuff))
    if thing.part == MANTEL:
        return _weighed_trim(result, thing)
    if part is None:
        return weighed(result, thing.part)
    volume = volume_of(thing)
    if thing.stuff == "mortar" or thing.kind == "piece":
        # Between pieces: by its own volume, which the list has in one line with all the others.
        return Weighed(volume * density(thing.stuff), ())
    return weighed(result, thing.part, min(volume / part.volume, 1.0))


def _weighed_trim(result: Assessment, thing: Thing) -> Weighed:
    """One piece of mantel or trim, by its share of all that is of the same."""
    here = [part for part in mantel_parts(result.geometry) if part.tone == _tone(thing.stuff)]
    whole = sum(part.group.volume for part in here)
    shares = [s for s in share_out(result.geometry) if s.part == MANTEL]
    of_it = {s.item for s in shares if s.item.endswith(_tone(thing.stuff))}
    items = of_it | ({"Mortar"} if thing.stuff == "brick" else set())
    lines = {row.item: row for row in result.takeoff}
    part_of = min(volume_of(thing) / whole, 1.0)
    goods = {
        item: part_of * sum(s.volume for s in shares if s.item == item) / lines[item].volume
        for item in sorted(items)
    }
    weight = part_of * sum(s.weight for s in shares if s.item in items)
    return Weighed(weight, tuple(goods.items()))


def _tone(stuff: str) -> str:
    return "wood" if stuff in BURNS else stuff


def _price(found: Weighed, order: Bill, units: str) -> str:
    """What it costs, as its share of the order."""
    lines = {line.row.item: line for line in order.lines}
    amounts = [(lines[item].amount, share) for item, share in found.goods if item in lines]
    if not amounts or any(amount is None for amount, _ in amounts):
        return "not priced" if amounts else ""
    cost = sum(amount * share for amount, share in amounts if amount is not None)
    words = ", at example prices" if order.invented else ""
    return f"{grouped(cost, units=units)} {order.currency} of material{words}"


def _goods(found: Weighed, thing: Thing, result: Assessment) -> list[str]:
    lines = {row.item: row for row in result.takeoff}
    if thing.item:
        row = lines[thing.item]
        return [f"{thing.item}, one of {row.net:g}"]
    return [f"{item}, {grouped(100 * share)} % of the line" for item, share in found.goods]


def _checks(result: Assessment, part: str) -> list[Finding]:
    """Those that speak of a part, worst first; what does not apply is left out."""
    if part == "flue casing" and "flue liner" not in result.geometry.parts_by_name:
        part = "flue liner"  # a set's flue pieces are both
    keys = checks_of_parts().get(part, frozenset())
    every = (*result.findings, *result.structure.findings, *result.judgement)
    found = [f for f in every if f.key in keys and f.verdict != DOES_NOT_APPLY]
    order = {FALLS_SHORT: 0, NOT_CHECKED: 1}
    return sorted(found, key=lambda f: order.get(f.verdict, 2))


def _told(finding: Finding) -> dict[str, str]:
    return {
        "key": finding.key,
        "sign": SIGNS[finding.verdict],
        "title": finding.title,
        "verdict": finding.said,
    }
