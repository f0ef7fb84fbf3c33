"""Code books as packs of rules: the United States and five of its states, Canada, England, the
trade's own, and books that were read in part.
"""

from __future__ import annotations

from fireplace_calc.rules import ca, others, practice, practice_flues, uk, us
from fireplace_calc.rules.book import Pack, check_all
from fireplace_calc.rules.ca.book import NBC
from fireplace_calc.rules.core import EDITIONS, Finding
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.others.australia import AUSTRALIA
from fireplace_calc.rules.others.building_code import IBC
from fireplace_calc.rules.others.france import FRANCE
from fireplace_calc.rules.others.germany import GERMANY
from fireplace_calc.rules.practice import PRACTICE
from fireplace_calc.rules.uk.book import ADJ
from fireplace_calc.rules.us.book import IRC
from fireplace_calc.rules.us.states import STATES

FAMILIES = (*ca.FAMILIES, *others.FAMILIES, practice, practice_flues, *uk.FAMILIES, *us.FAMILIES)
"""Modules that file their rules when they are read."""
__all__ = ["FAMILIES", "PACKS", "Finding", "Pack", "check", "check_every_pack"]

PACKS: dict[str, Pack] = {
    pack.name: pack
    for pack in (
        *(IRC.pack(edition) for edition in EDITIONS),
        *(state.pack() for state in STATES),
        IBC.pack("2012"),
        NBC.pack("2005 to 2012", "Canada NBC"),
        NBC.pack("Ontario 2012", "Canada Ontario"),
        ADJ.pack("2010 as amended", "UK ADJ"),
        *(book.pack(book.editions[0]) for book in (GERMANY, FRANCE, AUSTRALIA)),
        PRACTICE.pack("handbooks 1921 to 1980", "Trade practice"),
    )
}
"""Every pack by the name a reader gives it."""


def check(facts: Facts, pack: str) -> tuple[Finding, ...]:
    """Every rule of one pack held against one design, worst first."""
    return PACKS[pack].check(facts)


def check_every_pack(facts: Facts) -> dict[str, tuple[Finding, ...]]:
    """Every pack held against one design; a rule that several share is worked out once."""
    return check_all(facts, PACKS.values())
