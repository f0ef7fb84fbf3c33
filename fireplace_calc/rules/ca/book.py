"""The National Building Code of Canada, 9.21 and 9.22, with Ontario's own: as restated from copies
of 2005 to 2012.
"""

from __future__ import annotations

from fireplace_calc.base.tables.canada import RoundFlueCell
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.comparing import Compared, not_applicable, unknown
from fireplace_calc.rules.facts import Facts

NBC = Book("Canada NBC", ("2005 to 2012", "Ontario 2012"))
ONTARIO = ("Ontario 2012",)
NATIONAL = ("2005 to 2012",)


def precondition(answer: bool | None, what: str, absent: str) -> Compared | None:
    """Why a clause that hangs on an answer does not bind, or that nobody has answered; nothing when
    it binds.
    """
    if answer is None:
        return unknown(what)
    return None if answer else not_applicable(absent)


def in_cell(cell: RoundFlueCell, opening: float, height: float) -> bool:
    """Whether an opening and a chimney belong to a cell of the flue tables: gaps between rows go to
    the larger row.
    """
    slack = 1e-9
    first = cell.height_low <= 3.0 + slack
    above = height >= cell.height_low - slack if first else height > cell.height_low + slack
    return opening <= cell.opening_high + slack and above and height <= cell.height_high + slack


def chimney_height(facts: Facts) -> float:
    """Firebox floor to the top of the flue; where the flue tables count from was not read. [m]"""
    return facts.chimney_height
