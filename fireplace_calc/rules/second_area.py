"""Area and shape of the second flue, as every book asks for them."""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.rules.comparing import inches
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import possible_area

ONE_FLUE = "There is one flue."
TOPS_APART = inches(2)
"""Least difference of two flues' tops, by the trade; from memory. [m]"""


def tops_apart(facts: Facts) -> float | None:
    """How much higher one flue ends than the other; unknown where no second one is drawn. [m]"""
    second = facts.frame.second
    return None if second is None else abs(second.top - facts.frame.liner_top)


def second_net_area(facts: Facts) -> float | None:
    """Net area of the second flue, from where somebody says it comes. [m2]"""
    told, second = facts.design.second_flue, facts.frame.second
    if second is None or told.area_from is None:
        return None
    return (
        second.bore.table_area
        if told.area_from == "table"
        else possible_area(told.net_area, second.bore, told.area_from)
    )


def shape_of(bore: Bore) -> str:
    """What the clauses on flue area call it: round, square or rectangle."""
    if bore.round:
        return "round"
    return "square" if abs(bore.width - bore.depth) < 0.01 * INCH else "rectangle"
