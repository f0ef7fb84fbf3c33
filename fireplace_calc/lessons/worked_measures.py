"""Figures of draft and heat that a lesson may name: read off one assessment when asked for."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from fireplace_calc.assessment import Assessment
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.grading import COARSE
from fireplace_calc.heat.conduction.mesh import NotWorked
from fireplace_calc.heat.cuts.behind import WallRun, three_fires

MILD = 1
"""Place of the mild evening in a draft result's flows."""
EVENING = 8.0
"""How long the fire of a lesson burns. [h]"""
ZERO = 273.15
"""Of Celsius. [K]"""


def warm_column(found: Assessment) -> float:
    """Height of the warm column, from the top of the opening to the top of the flue. [m]"""
    return float(found.draft.path.height)


def column_pull(found: Assessment) -> float:
    """Pull of the warm column on the mild evening, before anything is taken off. [Pa]"""
    return float(found.draft.flows.draft[MILD])


def way_losses(found: Assessment) -> float:
    """What bends, walls and narrow places take on the mild evening. [Pa]"""
    return float(sum(taken[MILD] for taken in found.draft.flows.losses.values()))


def house_share(found: Assessment) -> float:
    """What the house with its fans takes: all of the pull that is not lost on the way. [Pa]"""
    return column_pull(found) - way_losses(found)


@lru_cache(maxsize=32)
def _fires(geometry: Geometry) -> tuple[WallRun, ...]:
    """The kind, the middle and the hard fire, with coarse cells."""
    try:
        return tuple(three_fires(geometry, EVENING, COARSE))
    except NotWorked:
        return ()


def hottest_wood(which: int) -> Callable[[Assessment], float]:
    """The hottest wood behind one of the three fires, kind, middle, hard. [K]"""

    def hottest(found: Assessment) -> float:
        runs = _fires(found.geometry)
        return runs[which].safe_highest + ZERO if runs else float("nan")

    return hottest


def hours_later(found: Assessment) -> float:
    """How long after the middle fire is out the wood is hottest, in hours. [-]"""
    runs = _fires(found.geometry)
    if not runs:
        return float("nan")
    run = runs[1]
    peak = max(range(len(run.wood)), key=lambda k: run.wood[k])
    return round(float(run.times[peak]) - run.out)
