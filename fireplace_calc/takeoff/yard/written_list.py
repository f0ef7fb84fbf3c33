"""A price list as text: what is known, and what is still to be filled in."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping
from decimal import Decimal

from fireplace_calc.takeoff.yard.price_list import COLUMNS, Price, unit_of


def price_text(known: Mapping[str, Price], items: Iterable[str] | None = None) -> str:
    r"""A price list as text that ``read_prices`` reads back alike.

    Parameters
    ----------
    known : mapping of str to Price
    items : iterable of str, optional
        What stands on it, in this order; an item without a price has an empty one, to be filled in
        or taken out. All that is known when left out.

    Returns
    -------
    str
        Comma between cells, decimal points.

    Examples
    --------
    >>> from fireplace_calc.takeoff.yard.price_list import prices, read_prices
    >>> one = {"Mortar": prices()["Mortar"]}
    >>> read_prices(price_text(one).encode(), "again") == one
    True
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    currency = next((one.currency for one in known.values()), "")
    for item in known if items is None else items:
        told = known.get(item)
        cells = [item, unit_of(item), None, currency]
        cells = [getattr(told, name) for name in COLUMNS] if told else cells
        writer.writerow("" if cell is None else cell for cell in map(_plain, cells))
    return text.getvalue()


def _plain(cell: object) -> object:
    """A number without an exponent."""
    return f"{Decimal(repr(cell)):f}" if isinstance(cell, float) else cell
