"""The reader's price list as a job keeps it among its words, and as a file to fill in."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import InputError
from fireplace_calc.report.yard.by_supplier import YardOrder
from fireplace_calc.takeoff.cost import Price, prices
from fireplace_calc.takeoff.yard.price_list import COLUMNS, read_prices
from fireplace_calc.takeoff.yard.written_list import price_text

LIST, NAMED = "price_list", "price_list_name"
"""Under which words a job keeps the list, and the name of the file it came from."""


def kept_prices(words: Mapping[str, str]) -> dict[str, Price]:
    """Prices of a job: its own list, else the example's.

    Parameters
    ----------
    words : mapping of str to str
        Of the job. A list in them that can no longer be read is none.

    Returns
    -------
    dict of str to Price
    """
    return dict(_read(words.get(LIST, "")))


@lru_cache(maxsize=8)
def _read(text: str) -> dict[str, Price]:
    try:
        return read_prices(text.encode(), LIST) if text else prices()
    except InputError:
        return prices()


def list_words(content: bytes, name: str) -> dict[str, str]:
    """Words by which a job keeps a list.

    Parameters
    ----------
    content : bytes
        Of its file, as a spreadsheet saves it.
    name : str
        Of the file.

    Returns
    -------
    dict of str to str

    Raises
    ------
    InputError
        By line and column, when the list cannot be read.
    """
    known = read_prices(content, name)
    if not known:
        raise InputError(
            f"{name} holds no price: a line for each item is wanted under its headings.",
            "price list",
            ", ".join(COLUMNS),
            name,
        )
    return {LIST: price_text(known), NAMED: name}


def list_to_fill_in(result: Assessment, found: YardOrder, known: Mapping[str, Price]) -> str:
    """A price list of everything that a job orders and takes besides.

    Parameters
    ----------
    result : Assessment
    found : YardOrder
        Of it.
    known : mapping of str to Price
        Prices that are known, which stand there already.

    Returns
    -------
    str
        CSV; what has no price yet has an empty one, to be filled in or taken out.
    """
    items = [*(row.item for row in result.takeoff), *(line.item for line in found.beside)]
    return price_text(known, dict.fromkeys(items))
