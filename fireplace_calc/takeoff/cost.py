"""What the order costs, from a price list the reader edits; and how it comes packed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, floor, log10

from fireplace_calc.base.printing import grouped
from fireplace_calc.base.tables import Source, source_of
from fireplace_calc.base.tables import rows as rows_of
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.takeoff.rows import Row
from fireplace_calc.takeoff.yard.price_list import Price, prices

__all__ = [
    "Bill",
    "Price",
    "PriceBand",
    "PricedLine",
    "bill",
    "price_band",
    "price_spread",
    "prices",
]


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


@dataclass(frozen=True, slots=True)
class PriceBand:
    """Between what and what the materials may come, and what that stands on.

    Attributes
    ----------
    low, high : float
        Of all that has a price, to two figures, the low one down and the high one up. [-]
    currency : str
        The list's own word for it.
    stands_on : str
        Where the two come from, as a sentence.
    invented : bool
        Whether any price under it is an invented example.
    """

    low: float
    high: float
    currency: str
    stands_on: str
    invented: bool

    @property
    def words(self) -> str:
        """As one says it where money has a comma at its thousands."""
        return self.said()

    def said(self, units: str = FEET_INCHES) -> str:
        """As one says it; that there is no price where nothing has one."""
        if not self.high:
            return "no price yet"
        low, high = (grouped(value, units=units) for value in (self.low, self.high))
        said = f"{low} to {high} {self.currency}"
        return f"{said} at example prices" if self.invented else said


@lru_cache(maxsize=1)
def price_spread() -> tuple[float, float, Source]:
    """How far under and over a priced order the bill may end.

    Returns
    -------
    tuple of float and Source
        Lowest and highest, as shares of the order [-], and where they are from.
    """
    (row,) = rows_of("price_spread.csv")
    return float(row["low"]), float(row["high"]), source_of(row)


def price_band(found: Bill, prices: Mapping[str, Price]) -> PriceBand:
    """Between what and what the materials of a bill may come.

    Parameters
    ----------
    found : Bill
    prices : mapping of str to Price
        The list it was priced by. Where it has a lowest and a highest offer for an item, those
        count; else the spread of an order that is counted and not yet asked of a supplier.

    Returns
    -------
    PriceBand
        Of what has a price; what has none is missing from both ends.
    """
    less, more, source = price_spread()
    low = high = 0.0
    offered, estimated = 0, 0
    for line in found.lines:
        if line.price is None:
            continue
        known = prices[line.row.item]
        lowest = line.price * (1 + less) if known.low is None else known.low
        highest = line.price * (1 + more) if known.high is None else known.high
        both = known.low is not None and known.high is not None
        offered, estimated = offered + both, estimated + (not both)
        low += min(lowest, line.price) * line.row.order
        high += max(highest, line.price) * line.row.order
    said = [f"Lowest and highest offer of {offered} items."] if offered else []
    if estimated:
        said.append(
            f"{-100 * less:.0f} % under to {100 * more:.0f} % over the"
            f" {'example prices, all of them invented' if found.invented else 'price list'}:"
            f" usual for an order that is counted and not yet quoted (from {source.confidence})."
        )
    return PriceBand(
        _two_figures(low, floor),
        _two_figures(high, ceil),
        found.currency,
        " ".join(said),
        found.invented,
    )


def _two_figures(amount: float, rounded: Callable[[float], int]) -> float:
    if amount <= 0:
        return 0.0
    step = 10.0 ** (floor(log10(amount)) - 1)
    return rounded(round(amount / step, 9)) * step
