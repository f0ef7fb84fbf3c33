"""What the order costs, from a price list the reader edits; and how it comes packed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil
from pathlib import Path

from fireplace_calc.base.tables import rows as rows_of
from fireplace_calc.base.units import InputError
from fireplace_calc.takeoff.rows import Row


@dataclass(frozen=True, slots=True)
class Price:
    """What one unit of an item costs.

    Attributes
    ----------
    item, unit : str
        As on the takeoff.
    price : float
        Of one unit, in ``currency``. [-]
    currency : str
        The list's own word for it.
    per_pack : int or None
        Units in a pack, where it is sold so. [-]
    pack : str
        What a pack is called.
    confidence : str
        ``invented`` for an example.
    """

    item: str
    unit: str
    price: float
    currency: str
    per_pack: int | None
    pack: str
    confidence: str


def prices(path: str | None = None) -> dict[str, Price]:
    """A price list by item.

    Parameters
    ----------
    path : str, optional
        A CSV file; the example list, every price of which is invented, when left out.

    Returns
    -------
    dict of str to Price

    Raises
    ------
    InputError
        When the file cannot be opened, or a line of it cannot be read.

    Examples
    --------
    >>> prices()["Mortar"].confidence
    'invented'
    """
    made = {}
    try:
        listed = rows_of("prices.csv" if path is None else Path(path).resolve())
    except OSError as trouble:
        raise InputError(
            f"{path} cannot be opened as a price list: {trouble.strerror}.",
            "price list",
            "a CSV file",
            str(path),
        ) from None
    for number, r in enumerate(listed, 2):
        try:
            made[r["item"]] = Price(
                r["item"],
                r["unit"],
                float(r["price"]),
                r["currency"],
                int(r["per_pack"]) if r["per_pack"] else None,
                r["pack"],
                r["confidence"],
            )
        except (KeyError, TypeError, ValueError):
            raise InputError(
                f"Line {number} of the price list cannot be read: item, unit, price as a bare"
                " number, currency, per_pack, pack and confidence are needed, but it holds"
                f" {', '.join(map(str, r.values()))}.",
                "price list",
                "a bare number",
                str(r),
            ) from None
    return made


@dataclass(frozen=True, slots=True)
class PricedLine:
    """One line of the bill.

    Attributes
    ----------
    row : Row
        What is ordered.
    price : float or None
        Of one unit, in the list's currency; unknown where the list has none. [-]
    amount : float or None
        Of the whole order. [-]
    packs : int
        Whole packs or pallets it comes on; none where it is not sold so. [-]
    pack : str
        What they are called.
    """

    row: Row
    price: float | None
    amount: float | None
    packs: int
    pack: str


@dataclass(frozen=True, slots=True)
class Bill:
    """What the materials cost. Labor, equipment, freight and tax are not in it.

    Attributes
    ----------
    lines : tuple of PricedLine
    total : float
        Of all that has a price. [-]
    currency : str
        The list's own word for it.
    unpriced : tuple of str
        Items the list does not name: they are missing from the total.
    invented : bool
        Whether any price is an invented example.
    """

    lines: tuple[PricedLine, ...]
    total: float
    currency: str
    unpriced: tuple[str, ...]
    invented: bool


def bill(rows: Iterable[Row], prices: Mapping[str, Price]) -> Bill:
    """Price an order.

    Parameters
    ----------
    rows : iterable of Row
        Of a takeoff.
    prices : mapping of str to Price
        By item, as ``prices`` reads them. A price for another unit than the row's is no price.

    Returns
    -------
    Bill
        An item without a price is named, never taken as free.
    """
    lines = []
    for row in rows:
        known = prices.get(row.item)
        if known is None or known.unit != row.unit:
            lines.append(PricedLine(row, None, None, 0, ""))
        else:
            packs = ceil(row.order / known.per_pack - 1e-9) if known.per_pack else 0
            lines.append(PricedLine(row, known.price, known.price * row.order, packs, known.pack))
    used = [prices[line.row.item] for line in lines if line.price is not None]
    return Bill(
        tuple(lines),
        sum(line.amount for line in lines if line.amount is not None),
        " and ".join(dict.fromkeys(price.currency for price in used)),
        tuple(line.row.item for line in lines if line.price is None),
        any(price.confidence == "invented" for price in used),
    )
