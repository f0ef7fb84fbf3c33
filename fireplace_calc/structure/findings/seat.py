"""Findings on a seat beside the hearth: what carries it, what spans its wood store, and how near
the fire wood is kept.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source
from fireplace_calc.base.units import G
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.rules.comparing import (
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    unknown,
    yes,
)
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.figures import figure, source

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

MODE = "seat beside the hearth"
NO_SEAT, NO_STORE = "There is no seat beside the hearth.", "No wood is stored under a seat."
SPANNED = Source("statics: plain concrete has no strength in tension to count on", "derived")

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


def _load(structure: Structure) -> float:
    """Weight of the seat over the floor it stands on. [Pa]"""
    weights = structure.weights
    slab = weights.parts[SEAT[0]]
    area = slab.volume / (slab.top - slab.bottom)
    return G * sum(weights.masses.get(name, 0.0) for name in SEAT) / area


@judged("STR-34", MODE, "Seat on the floor", "psf", source("room floor load"), over=True)
def seat_on_floor(structure: Structure) -> Compared:
    """A bench of masonry weighs several times what a room's floor is framed for."""
    seat = structure.design.seat
    if not seat.drawn:
        return not_applicable(NO_SEAT)
    if seat.carried_by == "footing or slab on ground":
        return not_applicable("It stands on the ground, not on framing.")
    load, limit = _load(structure), figure("room floor load")
    if seat.carried_by is None:
        note = "What the seat stands on is not known yet."
        return Compared(NOT_CHECKED, load, limit, note, ("seat.carried_by",))
    note = "Framing under it has to be designed for its weight; whoever sits on it comes on top."
    return at_most(load, limit, note)


@judged("STR-35", MODE, "Bars over the wood store", "word", SPANNED)
def bars_over_store(structure: Structure) -> Compared:
    """The bed over a niche is a beam; without bars it cracks and drops."""
    seat = structure.design.seat
    if not any(stored for _, _, stored in seat.stretches()):
        return not_applicable(NO_STORE)
    if seat.niche_bars is None:
        return unknown("Whether bars lie in the bed over the wood store", "seat.niche_bars")
    return yes(seat.niche_bars)


@judged("STR-36", MODE, "Wood store from the opening", "in", source("stored wood from a fire"))
def wood_from_opening(structure: Structure) -> Compared:
    """Stacked wood is fuel; sparks and heat reach it sideways."""
    design = structure.design
    near = [
        design.hearth.side + (reach - design.seat.niche_width) / 2
        for _, reach, stored in design.seat.stretches()
        if stored
    ]
    if not near:
        return not_applicable(NO_STORE)
    note = "No building code was read that speaks of wood stored in a niche; ask the fire service."
    return at_least(min(near), figure("stored wood from a fire"), note)
