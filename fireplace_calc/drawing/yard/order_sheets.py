"""The order for the yard: a block to tear off for each supplier, then how everything was counted,
what it comes to, and what rules of thumb say.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped
from fireplace_calc.base.units import MILLIMETRES, POUND
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.drawing.yard.blocks import OrderBlock, laid_out
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.report.sentences import BAGGED, METRIC_BAG, TON, quantity, weight
from fireplace_calc.report.yard.asked_for import (
    how_counted,
    in_units,
    size_of,
    waste_of,
    weights_taken,
)
from fireplace_calc.report.yard.beside_the_list import TAX
from fireplace_calc.report.yard.by_supplier import (
    SupplierOrder,
    YardLine,
    YardOrder,
    not_known,
    yard_order,
)
from fireplace_calc.report.yard.money import beside_words, left_out
from fireplace_calc.takeoff.cost import Price, PricedLine, prices
from fireplace_calc.takeoff.goods import SET_PIECE
from fireplace_calc.takeoff.rules_of_thumb import second_opinion

NAME = "Order for the yard"
TO_LOAD = (
    Column("Item and size", 53),
    Column("Order", 28),
    Column("Comes on", 24),
    Column("Weight", 22, "right"),
    Column("Day", 12, "right"),
    Column("Price each", 22),
    Column("Amount", 21),
)
COUNTED = (
    Column("Item", 38),
    Column("In the work", 22),
    Column("By the list", 19, "right"),
    Column("How it was counted", 101),
)
BESIDES = (
    Column("What", 34),
    Column("How much", 26),
    Column("By the list", 22, "right"),
    Column("From whom, and for what", 98),
)
OPINED = (
    Column("What", 32),
    Column("Counted", 20, "right"),
    Column("By rule", 20, "right"),
    Column("Rule and source", 46),
    Column("Why they differ", 72),
)


def plates(
    result: Assessment, units: str, on: Paper, known: Mapping[str, Price] | None = None
) -> list[Plate]:
    """Sheets of the order.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    known : mapping of str to Price or None
        Price list by item; else the example list, which is invented.

    Returns
    -------
    list of Plate
    """
    found = yard_order(result, prices() if known is None else known)
    blocks = [supplied(one, result, units) for one in found.suppliers]
    blocks += [counted(found, result, units), besides(found, units)]
    blocks += opinions(result, units)
    return laid_out(NAME, blocks, on)


def order_words(
    result: Assessment, units: str, known: Mapping[str, Price] | None = None
) -> Iterator[str | Table]:
    """The same on a screen, with the prices of the list where a yard would write its own.

    Parameters
    ----------
    result : Assessment
    units : str
    known : mapping of str to Price or None

    Yields
    ------
    str or Table
    """
    found = yard_order(result, prices() if known is None else known)
    yield from counted(found, result, units).words()
    yield from besides(found, units).words()
    for one in found.suppliers:
        yield from supplied(one, result, units, found.bill.currency).words()
    for block in opinions(result, units):
        yield from block.words()


def packs(line: YardLine) -> str:
    """What a line comes on, as one says it."""
    return f"{line.packs} {line.pack}{'s' if line.packs > 1 else ''}" if line.packs else ""


def supplied(
    one: SupplierOrder, result: Assessment, units: str, currency: str | None = None
) -> OrderBlock:
    """What one supplier is sent; told a currency, what it costs by the list, and no room for his
    own prices.
    """
    priced = currency is not None
    rows = tuple(
        (
            f"{line.item}\n{size_of(line.rows[0], result, units)}",
            quantity(line.order, line.rows[0], units),
            packs(line),
            weight(line.weight, units) if line.weight > 0 else "by its maker",
            "" if line.day is None else str(line.day),
            *((_each(line, units), _cost(line.amount, units)) if priced else ("", "")),
        )
        for line in one.lines
    )
    spared = dict.fromkeys(spare(line, result) for line in one.lines)
    said = [word for word in spared if word]
    whole = grouped(one.amount, 2, units) if priced else ""
    rows += (("Total", "", "", weight(one.weight, units), "", "", whole),)
    after = (
        (f"Spare is in it: {', '.join(said)}." if said else "No spare is in it.")
        + " Day: of the work, on which it is first used.",
        "Quoted by ________________________ on ______________ . Delivers on ______________ .",
    )[: 1 if priced else 2]
    site = ", ".join(filter(None, (result.design.name, result.design.site.place)))
    return OrderBlock(
        one.supplier.capitalize(),
        f"first needed on day {one.first[1]}",
        (f"For {site}. Inputs {fingerprint(result.design)}.",),
        TO_LOAD,
        rows,
        after,
        boxed=2,
        tick=True,
    )


def spare(line: YardLine, result: Assessment) -> str:
    """How much over the net quantity is in a line; empty where nothing is."""
    name, share = waste_of(line.rows[0], result.design)
    return f"{name} {share:.0%}".replace("%", " %") if share else ""


def much(count: float, unit: str, units: str) -> str:
    """So many of a unit.

    >>> much(1.0, "set", "feet-inches"), much(80.7, "hour", "feet-inches")
    ('1 set', '81 hours')
    """
    return f"{grouped(count, 0, units)} {unit}{'' if round(count) == 1 else 's'}"


def besides(found: YardOrder, units: str) -> OrderBlock:
    """What the job takes beside the list, priced or not."""
    rows = tuple(
        (
            line.item,
            line.unit if line.item == TAX else much(line.count, line.unit, units),
            "not priced" if line.amount is None else grouped(line.amount, 2, units),
            f"{line.supplier}; {line.why}",
        )
        for line in found.beside
        if line.count is not None
    )
    unknown = not_known(found.beside)
    said = [beside_words(found, units), f"{left_out(found)}."]
    if unknown:
        said.append(f"Nobody has told yet whether it takes: {', '.join(unknown).lower()}.")
    return OrderBlock(
        "Beside the list",
        "not counted from the drawing",
        (),
        BESIDES,
        rows,
        (" ".join(filter(None, said)),),
        flows=True,
    )


def counted(found: YardOrder, result: Assessment, units: str) -> OrderBlock:
    """How every row was counted, and what it comes to by the price list."""
    bill = found.bill
    rows, pieces = [], [line for line in bill.lines if line.row.item.startswith(SET_PIECE)]
    if pieces:
        rows.append(_pieces(pieces, result, units))
    rows += [_counted(line, result, units) for line in bill.lines if line not in pieces]
    missing = ", ".join(item for item in bill.unpriced if not item.startswith(SET_PIECE))
    if any(line.amount is None for line in pieces):
        missing = ", ".join(filter(None, ("pieces of the set", missing)))
    example = "Every price is an invented example. " if bill.invented else ""
    whole = (
        f"Total: {grouped(bill.total, 2, units)} {bill.currency or '(no currency named)'};"
        f" {weight(result.weight, units)} as built, {weight(found.weight, units)} as ordered."
        f" Materials {found.band.said(units)}. {found.band.stands_on}"
        + (f" Without a price: {missing}." if missing else "")
    )
    taken = in_units("; ".join(weights_taken(result.takeoff)), units)
    return OrderBlock(
        "How it was counted, and what it comes to",
        f"{bill.currency or 'no currency named'}, {'example' if bill.invented else 'list'} prices",
        (f"{example}Labor, hardware, equipment, freight and tax stand beside the list.",),
        COUNTED,
        tuple(rows),
        (whole, f"Taken to weigh: {taken}."),
        flows=True,
    )


def _cost(amount: float | None, units: str) -> str:
    return "no price" if amount is None else grouped(amount, 2, units)


def _each(line: YardLine, units: str) -> str:
    """Price of one; none where whole and cut pieces cost different."""
    known = {priced.price for priced in line.priced}
    price = known.pop() if len(known) == 1 else None
    if price is None:
        return ""
    unit = line.rows[0].unit
    if units == MILLIMETRES and unit in BAGGED:
        return f"{grouped(price * METRIC_BAG / BAGGED[unit][0], 2, units)} for 25 kg"
    if units == MILLIMETRES and unit == "ton":
        return grouped(price * 1000 / TON, 2, units)
    return grouped(price, 2, units)


def _counted(line: PricedLine, result: Assessment, units: str) -> tuple[str, ...]:
    row = line.row
    return (
        row.item,
        quantity(row.net, row, units),
        _cost(line.amount, units),
        how_counted(row, result, units),
    )


def _pieces(lines: list[PricedLine], result: Assessment, units: str) -> tuple[str, ...]:
    """Pieces of a set in one row: they stand one by one in the block of whoever casts them."""
    amounts = [line.amount for line in lines]
    known = [one for one in amounts if one is not None]
    notes = dict.fromkeys(how_counted(line.row, result, units) for line in lines)
    return (
        f"Pieces of the set, {len(lines)} marks",
        f"{sum(line.row.net for line in lines):.0f} pieces",
        grouped(sum(known), 2, units) if len(known) == len(amounts) else "no price",
        "; ".join(notes),
    )


def _so_many(count: float, unit: str, units: str) -> str:
    """A count of a rule of thumb, pounds in the reader's units."""
    if unit == "lb":
        return weight(count * POUND, units)
    return f"{grouped(count, units=units)} {unit}"


def opinions(result: Assessment, units: str) -> Iterator[OrderBlock]:
    """Rules of thumb beside the count."""
    rows = tuple(
        (
            one.what,
            *(_so_many(count, one.unit, units) for count in (one.counted, one.by_rule)),
            f"{one.rule}; {one.source}",
            one.why,
        )
        for one in second_opinion(result.geometry, result.takeoff)
    )
    if rows:
        yield OrderBlock(
            "Rules of thumb, a second opinion", "net, no waste", (), OPINED, rows, flows=True
        )
