"""Who usually sells what, and what a job takes beside the goods that are counted."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.takeoff.goods import SET_PIECE

OF_SETS = "refractory supplier"
"""Who sells the pieces of a set."""


@dataclass(frozen=True, slots=True)
class BesideGoods:
    """Something a job takes that is not counted from the drawing.

    Attributes
    ----------
    item, unit : str
        As a price list has them.
    supplier : str
        Who usually sells or does it.
    what : str
        Of it, in a few words.
    """

    item: str
    unit: str
    supplier: str
    what: str


@lru_cache(maxsize=1)
def beside_goods() -> dict[str, BesideGoods]:
    """All that can stand beside the list, by name: hardware and boards, hands, rent, fees.

    Returns
    -------
    dict of str to BesideGoods

    Examples
    --------
    >>> beside_goods()["Labor, mason"].unit
    'hour'
    """
    return {
        r["item"]: BesideGoods(r["item"], r["unit"], r["supplier"], r["what"])
        for r in rows("beside_the_list.csv")
    }


@lru_cache(maxsize=1)
def _suppliers() -> dict[str, str]:
    return {r["item"]: r["supplier"] for r in rows("suppliers.csv")}


def supplier_of(item: str) -> str:
    """Who usually sells an item.

    Parameters
    ----------
    item : str
        Of the takeoff, or of what is wanted beside it.

    Returns
    -------
    str

    Examples
    --------
    >>> supplier_of("Mortar"), supplier_of("Piece F8, flue piece")
    ('masonry yard', 'refractory supplier')
    """
    if item.startswith(SET_PIECE):
        return OF_SETS
    return beside_goods()[item].supplier if item in beside_goods() else _suppliers()[item]
