"""What a job takes beside the goods that are counted: hardware, boards, hands, rent, fees.

All of it is named; what the price list has a rate for is priced, the rest is *not priced*.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import ceil, floor

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.build.lifting.equation import HOIST
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.takeoff.cost import Bill, Price
from fireplace_calc.takeoff.yard.suppliers import beside_goods, supplier_of

MASON, HELPERS, TAX = "Labor, mason", "Labor, helpers", "Sales tax"


@dataclass(frozen=True, slots=True)
class BesideLine:
    """One thing a job takes besides.

    Attributes
    ----------
    item, unit : str
        As a price list has them.
    supplier : str
        Who sells or does it.
    count : float or None
        How many units; None where nobody has told whether it is wanted. [-]
    why : str
        It stands here.
    price, amount : float or None
        Of one unit, and of all; None where the list has no rate, or the count is not known. [-]
    """

    item: str
    unit: str
    supplier: str
    count: float | None
    why: str
    price: float | None
    amount: float | None


def beside(
    result: Assessment, found: Bill, known: Mapping[str, Price], trips: int
) -> tuple[BesideLine, ...]:
    """Everything beside the list.

    Parameters
    ----------
    result : Assessment
        Structure and order of work are worked out for it.
    found : Bill
        Of its takeoff.
    known : mapping of str to Price
        The price list.
    trips : int
        At least so many deliveries. [-]

    Returns
    -------
    tuple of BesideLine
        In the order of ``data/beside_the_list.csv``.
    """
    wanted = {
        **dict(_hardware(result)),
        **dict(_boards(result)),
        **dict(_hands(result)),
        "Delivery": float(trips),
        "Permit, inspections": 1.0,
        TAX: found.total / 100,
    }
    turn = list(beside_goods()).index
    return tuple(_line(item, wanted[item], known.get(item)) for item in sorted(wanted, key=turn))


def _line(item: str, count: float | None, known: Price | None) -> BesideLine:
    of = beside_goods()[item]
    price = None if known is None else known.price
    amount = None if price is None or count is None else price * count
    who = (known.supplier if known else "") or supplier_of(item)
    return BesideLine(item, of.unit, who, count, of.what, price, amount)


def _told(answer: bool | None) -> Iterator[float | None]:
    """One where it is wanted, none where it is not, not known where nobody has told."""
    if answer is None:
        yield None
    elif answer:
        yield 1.0


def _hardware(result: Assessment) -> Iterator[tuple[str, float | None]]:
    d = result.design
    bars, levels = d.anchorage.vertical_bars_no4, d.anchorage.strap_count
    mortar = d.surround.mortar != "gray" and d.surround.face in ("brick", "stone")
    fills = (d.clearance.fill, d.clearance.chimney_fill)
    painted = any(part.material == "painted wood" for part in mantel_parts(result.geometry))
    cleaned = d.stack.cleaned_through_opening
    answers: tuple[tuple[str, bool | None], ...] = (
        ("Damper", None if d.throat.damper is None else d.throat.damper != "none"),
        ("Flashing", True),
        ("Cricket", d.roof.cricket),
        ("Clean-out door", d.stack.cleanout or (False if cleaned else d.stack.cleanout)),
        ("Ash dump", d.ground.ash_dump),
        ("Outside air kit", d.air.exterior_air_supply),
        ("Bars and ties", d.anchorage.chimney_reinforced if bars is None else bars > 0),
        ("Straps and anchors", d.anchorage.anchor_at_level if levels is None else levels > 0),
        ("Footing bars", d.ground.reinforced),
        (
            "Fireblocking",
            None if d.clearance.fireblock is None else d.clearance.fireblock != "none",
        ),
        ("Insulation of the air space", any(one in ("noncombustible", "other") for one in fills)),
        ("Colored mortar", mortar),
        ("Mantel paint", painted),
        ("Doors or accessory", d.clearance.accessory),
    )
    for item, answer in answers:
        for count in _told(answer):
            yield item, count


def _boards(result: Assessment) -> Iterator[tuple[str, float | None]]:
    names = {part.name for part in result.parts}
    if "arch" in names or result.design.lintel.material == "masonry arch":
        yield "Centering", 1.0
    if any(row.item.endswith(("concrete", "grout", "Crown mortar")) for row in result.takeoff):
        yield "Forms", 1.0


def _hands(result: Assessment) -> Iterator[tuple[str, float | None]]:
    work = result.work
    yield MASON, work.hours
    if work.people > 1:
        yield HELPERS, work.hours * (work.people - 1)
    on_staging = {number for stage in work.staging for number in stage.steps}
    steps = [step for step in work.steps if step.number in on_staging]
    if steps:
        first, last = min(step.start for step in steps), max(step.end for step in steps)
        yield "Staging", float(len(_days(first, last)))
    by_hoist = {lift.step for lift in work.lifts if lift.verdict == HOIST}
    days = {
        day for step in work.steps if step.number in by_hoist for day in _days(step.start, step.end)
    }
    if days:
        yield "Hoist or crane", float(len(days))
    if result.structure.engineer:
        yield "Engineer", 1.0


def _days(start: float, end: float) -> range:
    """Days on which a step is worked, the first being 0."""
    first = floor(start + ROUNDING)
    return range(first, max(ceil(end - ROUNDING), first + 1))
