"""Code books as packs of rules."""

from __future__ import annotations

from fireplace_calc.facts import Facts
from fireplace_calc.rules import (
    us_air,
    us_chimney,
    us_clearance,
    us_firebox,
    us_flue,
    us_foundation,
    us_hearth,
    us_roof,
    us_seismic,
    us_states,
)
from fireplace_calc.rules.core import EDITIONS, Finding, Pack
from fireplace_calc.rules.us_book import IRC

__all__ = ["PACKS", "Finding", "Pack", "check", "us_air", "us_chimney", "us_clearance", "us_firebox", "us_flue", "us_foundation",
           "us_hearth", "us_roof", "us_seismic", "us_states"]

PACKS: dict[str, Pack] = {pack.name: pack for pack in (*(IRC.pack(edition) for edition in EDITIONS),
                                                       *(state.pack() for state in us_states.STATES))}
"""Every pack by the name a reader gives it."""


def check(work: Facts, pack: str) -> tuple[Finding, ...]:
    """Every rule of one pack held against one design, worst first."""
    return PACKS[pack].check(work)
