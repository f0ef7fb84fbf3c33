"""The order by supplier, in the units that are sold and in the turn of use, with what it weighs on
the truck, what it costs by the list, and what the job takes besides.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil, floor

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.report.yard.asked_for import loaded_as, weight_ordered
from fireplace_calc.report.yard.beside_the_list import BesideLine, beside
from fireplace_calc.takeoff import Row
from fireplace_calc.takeoff.cost import Bill, Price, PriceBand, PricedLine, bill, price_band
from fireplace_calc.takeoff.yard.suppliers import supplier_of

LATEST = (10**6, 10**6)
"""Where no step is known to use it: after all others."""


@dataclass(frozen=True, slots=True)
class YardLine:
    """What a yard loads as one: a row of the takeoff, or whole and cut pieces of one kind.

    Attributes
    ----------
    item : str
        As the yard has it.
    priced : tuple of PricedLine
        The rows in it.
    order : float
        To buy, in ``unit``. [-]
    unit : str
    packs : int
        Whole packs it comes on; none where it is not sold so. [-]
    pack : str
        What they are called.
    weight : float
        Of what is ordered, spare counted in; nought where only its maker knows. [kg]
    step, day : int or None
        First step that uses it, and its day, both from 1; None where no step does. [-]
    amount : float or None
        Of the whole line; None where a row of it has no price. [-]
    """

    item: str
    priced: tuple[PricedLine, ...]
    order: float
    unit: str
    packs: int
    pack: str
    weight: float
    step: int | None
    day: int | None
    amount: float | None

    @property
    def rows(self) -> tuple[Row, ...]:
        """Of the takeoff."""
        return tuple(line.row for line in self.priced)


@dataclass(frozen=True, slots=True)
class SupplierOrder:
    """What one supplier delivers.

    Attributes
    ----------
    supplier : str
    lines : tuple of YardLine
        In the turn of use.
    """

    supplier: str
    lines: tuple[YardLine, ...]

    @property
    def weight(self) -> float:
        """On the truck, as far as it is known. [kg]"""
        return sum(line.weight for line in self.lines)

    @property
    def amount(self) -> float:
        """Of the lines that have a price. [-]"""
        return sum(line.amount for line in self.lines if line.amount is not None)

    @property
    def first(self) -> tuple[int, int]:
        """Step and day on which the first of it is used. [-]"""
        return min(map(_turn, self.lines))


@dataclass(frozen=True, slots=True)
class YardOrder:
    """The whole order.

    Attributes
    ----------
    suppliers : tuple of SupplierOrder
        In the turn in which they are first needed.
    beside : tuple of BesideLine
        What the job takes besides.
    bill : Bill
        Of the takeoff.
    band : PriceBand
        Between what and what the materials may come.
    """

    suppliers: tuple[SupplierOrder, ...]
    beside: tuple[BesideLine, ...]
    bill: Bill
    band: PriceBand

    @property
    def beside_total(self) -> float:
        """Of what has a rate beside the materials. [-]"""
        return sum(line.amount for line in self.beside if line.amount is not None)

    @property
    def weight(self) -> float:
        """Of all that is ordered, as far as it is known. [kg]"""
        return sum(one.weight for one in self.suppliers)


def first_uses(result: Assessment) -> dict[str, tuple[int, int]]:
    """Step and day on which each item is first used, both from 1.

    Parameters
    ----------
    result : Assessment
        Its order of work is worked out for it.

    Returns
    -------
    dict
        By item. [-]
    """
    found: dict[str, tuple[int, int]] = {}
    for step in result.work.steps:
        for goods in step.goods:
            found.setdefault(goods.item, (step.number, floor(step.start + ROUNDING) + 1))
    return found


def yard_order(result: Assessment, known: Mapping[str, Price]) -> YardOrder:
    """A takeoff by supplier.

    Parameters
    ----------
    result : Assessment
    known : mapping of str to Price
        The price list; a supplier that it names takes the place of the usual one.

    Returns
    -------
    YardOrder
        Every row of the takeoff once.
    """
    found, uses = bill(result.takeoff, known), first_uses(result)
    groups: dict[tuple[str, str, str], list[PricedLine]] = {}
    for line in found.lines:
        item, told = line.row.item, known.get(line.row.item)
        who = (told.supplier if told else "") or supplier_of(item)
        groups.setdefault((who, loaded_as(item), line.row.unit), []).append(line)
    loads: dict[str, list[YardLine]] = {}
    for (who, item, unit), lines in groups.items():
        loads.setdefault(who, []).append(_load(item, unit, lines, known, uses, result.design))
    suppliers = sorted(
        (SupplierOrder(who, tuple(sorted(lines, key=_turn))) for who, lines in loads.items()),
        key=lambda one: one.first,
    )
    return YardOrder(
        tuple(suppliers),
        beside(result, found, known, len(suppliers)),
        found,
        price_band(found, known),
    )


def _turn(line: YardLine) -> tuple[int, int]:
    return LATEST if line.step is None or line.day is None else (line.step, line.day)


def _load(
    item: str,
    unit: str,
    lines: list[PricedLine],
    known: Mapping[str, Price],
    uses: Mapping[str, tuple[int, int]],
    design: Design,
) -> YardLine:
    order = sum(line.row.order for line in lines)
    used = min((uses[line.row.item] for line in lines if line.row.item in uses), default=None)
    amounts = [line.amount for line in lines]
    packed = {known[line.row.item].per_pack for line in lines if line.pack}
    per_pack = packed.pop() if len(packed) == 1 and all(line.pack for line in lines) else None
    packs = sum(line.packs for line in lines)
    return YardLine(
        item,
        tuple(lines),
        order,
        unit,
        ceil(order / per_pack - ROUNDING) if per_pack else packs,
        next((line.pack for line in lines if line.pack), ""),
        sum(weight_ordered(line.row, design) for line in lines),
        used[0] if used else None,
        used[1] if used else None,
        None if None in amounts else sum(one for one in amounts if one is not None),
    )


def not_priced(lines: Iterable[BesideLine]) -> tuple[str, ...]:
    """What is wanted and has no rate in the list.

    Parameters
    ----------
    lines : iterable of BesideLine

    Returns
    -------
    tuple of str
    """
    return tuple(line.item for line in lines if line.count is not None and line.amount is None)


def not_known(lines: Iterable[BesideLine]) -> tuple[str, ...]:
    """What nobody has told yet whether it is wanted.

    Parameters
    ----------
    lines : iterable of BesideLine

    Returns
    -------
    tuple of str
    """
    return tuple(line.item for line in lines if line.count is None)
