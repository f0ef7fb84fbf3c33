"""A price list: the example that came with the package, or the reader's own as a spreadsheet saves
it. Its currency is the list's own, and so are the rates of whoever does the work.
"""

from __future__ import annotations

import difflib
import os
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from fireplace_calc.base.messages import shown
from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import CUFT, CUYD, POUND, SQFT, InputError
from fireplace_calc.takeoff.goods import SET_PIECE, all_goods
from fireplace_calc.takeoff.yard.list_text import ListLine, ListText, numbers, read_list
from fireplace_calc.takeoff.yard.suppliers import beside_goods

NEEDED = ("item", "unit", "price")
COLUMNS = (*NEEDED, "currency", "per_pack", "pack", "low", "high", "supplier", "confidence")
DEAREST = 1e12
"""No unit of anything costs more: a slip of the pen. [-]"""
METRIC = {
    ("m3", "yd3"): CUYD,
    ("m3", "ft3"): CUFT,
    ("m2", "ft2"): SQFT,
    ("t", "ton"): 2000 * POUND / 1000,
}
"""How much of a unit that a list may use is in the one that is counted in. [-]"""


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
    low, high : float or None
        Lowest and highest offer, where the list has them. [-]
    supplier : str
        Who sells it to the reader; empty where the list does not say.
    """

    item: str
    unit: str
    price: float
    currency: str
    per_pack: int | None
    pack: str
    confidence: str
    low: float | None = None
    high: float | None = None
    supplier: str = ""


def prices(path: str | os.PathLike[str] | None = None) -> dict[str, Price]:
    """A price list by item.

    Parameters
    ----------
    path : path, optional
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
    if path is None:
        return dict(_example())
    try:
        content = Path(path).read_bytes()
    except OSError as trouble:
        raise InputError(
            f"{path} cannot be opened as a price list: {trouble.strerror}.",
            "price list",
            "a CSV file",
            str(path),
        ) from None
    return read_prices(content, Path(path).name)


@lru_cache(maxsize=1)
def _example() -> dict[str, Price]:
    return read_prices((DATA / "prices.csv").read_bytes(), "prices.csv")


def read_prices(content: bytes, name: str) -> dict[str, Price]:
    r"""A price list by item, from the bytes of its file.

    Parameters
    ----------
    content : bytes
        A CSV file as a spreadsheet saves it: UTF-8, UTF-16 or Windows' letters; comma, semicolon or
        tab between cells; decimal point or comma. Columns item, unit, price; and, where wanted,
        currency, per_pack, pack, low, high, supplier, confidence.
    name : str
        Of the list, for a message.

    Returns
    -------
    dict of str to Price

    Raises
    ------
    InputError
        By line and column: an item that is not known or stands twice, a unit it is not counted by,
        a price that is missing, negative or no number, a second currency.

    Notes
    -----
    What is counted by the cubic yard, square foot or ton may be priced by m3, m2 or t.

    Examples
    --------
    >>> told = "item;unit;price;currency\nMortar;80-lb bag;9,50;EUR\n"
    >>> read_prices(told.encode(), "mine.csv")["Mortar"].price
    9.5
    """
    made = read_list(content, name, NEEDED)
    currency = _currency(made)
    found = numbers(made, ("price", "low", "high", "per_pack"), currency)
    listed: dict[str, Price] = {}
    seen: dict[str, int] = {}
    for line in made.lines:
        price = _price(made, line, found, currency)
        if price.item in seen:
            raise made.wrong(
                line.number,
                "item",
                f"{price.item} has a price in line {seen[price.item]} already; one of the two has"
                " to go.",
                price.item,
            )
        listed[price.item], seen[price.item] = price, line.number
    return listed


def _currency(made: ListText) -> str:
    """The one that every line with a currency names."""
    first = None
    for line in made.lines:
        told = line.cells.get("currency", "")
        if told and first and told != first.cells["currency"]:
            raise made.wrong(
                line.number,
                "currency",
                f"{shown(told)}, but line {first.number} has {shown(first.cells['currency'])}; a"
                " list has one currency, or it cannot be added up.",
                told,
            )
        first = line if told and first is None else first
    return first.cells["currency"] if first else ""


def _price(
    made: ListText, line: ListLine, found: dict[tuple[int, str], float], currency: str
) -> Price:
    told, item = line.cells.get, _item(made, line)
    unit, factor = _unit(made, line, item)
    price, low, high, per_pack = (
        found.get((line.number, column)) for column in ("price", "low", "high", "per_pack")
    )
    if price is None:
        raise made.wrong(
            line.number,
            "price",
            f"{item} has none. Leave the whole line out while there is no price: then the item is"
            " listed as not priced.",
            "",
        )
    for column, value in (("price", price), ("low", low), ("high", high)):
        if value is not None and value > DEAREST:
            raise made.wrong(line.number, column, f"more than {DEAREST:g} for one {unit}.", value)
    if low is not None and low > price:
        raise made.wrong(line.number, "low", "the lowest offer is over the price.", low)
    if high is not None and high < price:
        raise made.wrong(line.number, "high", "the highest offer is under the price.", high)
    if per_pack is not None and (per_pack != int(per_pack) or per_pack < 1):
        raise made.wrong(line.number, "per_pack", "a whole number from 1 on is wanted.", per_pack)
    return Price(
        item,
        unit,
        price * factor,
        currency,
        None if per_pack is None else int(per_pack),
        told("pack", "") or ("pack" if per_pack else ""),
        told("confidence", ""),
        None if low is None else low * factor,
        None if high is None else high * factor,
        told("supplier", ""),
    )


def _item(made: ListText, line: ListLine) -> str:
    """The item as the takeoff calls it."""
    told = " ".join(line.cells["item"].split())
    if told.startswith(SET_PIECE) and len(told) > len(SET_PIECE):
        return told
    known = {item.lower(): item for item in (*all_goods(), *beside_goods())}
    if told.lower() in known:
        return known[told.lower()]
    near = difflib.get_close_matches(told.lower(), known, 3, 0.5)
    meant = f"; likely {' or '.join(known[one] for one in near)} is meant" if near else ""
    raise made.wrong(
        line.number,
        "item",
        f"{shown(told)} is nothing that is ordered{meant}." if told else "the item has no name.",
        told,
    )


def _unit(made: ListText, line: ListLine, item: str) -> tuple[str, float]:
    """Unit that the item is counted in, and how much of the list's unit is in it."""
    told = line.cells["unit"].lower().replace("³", "3").replace("²", "2")
    counted = unit_of(item)
    if told == counted.lower():
        return counted, 1.0
    if (told, counted) in METRIC:
        return counted, METRIC[told, counted]
    others = [other for other, unit in METRIC if unit == counted]
    raise made.wrong(
        line.number,
        "unit",
        f"{item} is counted by {' or '.join([counted, *others])}, and a price by"
        f" {shown(told) if told else 'nothing'} cannot be set against it.",
        told,
    )


def unit_of(item: str) -> str:
    """Unit that an item is counted in.

    Parameters
    ----------
    item : str
        Of the takeoff, or of what is wanted beside it.

    Returns
    -------
    str
    """
    if item.startswith(SET_PIECE):
        return "piece"
    return beside_goods()[item].unit if item in beside_goods() else all_goods()[item].unit
