"""The mantel: which family it is of, what it is made of, and the sizes somebody has chosen."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length

TOLD, NONE, SHELF = "piece by piece", "none", "shelf"
BEAM, PILASTERS, OVERMANTEL = "beam on corbels", "pilasters and frieze", "paneled overmantel"
FAMILIES = (TOLD, NONE, SHELF, BEAM, PILASTERS, OVERMANTEL)
"""Mantels by their make; the first takes the pieces of ``surround.trim`` as they are told."""
BURNS = ("wood", "painted wood")
"""What of the materials burns."""


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Mantel(Record):
    """The mantel. A size that is not known is the usual one of its family, cut to what fits."""

    family: str = choice(
        "Mantel",
        TOLD,
        FAMILIES,
        "Piece by piece takes mantel and trim as they are listed under Surround; each of the others"
        " takes their place.",
    )
    material: str = choice(
        "Mantel material",
        "wood",
        (*BURNS, "stone", "brick"),
        "Wood burns, painted or not. Brick makes a shelf of corbelled courses and nothing else.",
    )
    over_opening: float | None = length(
        "Mantel over the opening",
        None,
        "0 in",
        "60 in",
        "Top of the opening up to the lowest edge of shelf, beam or frieze.",
    )
    depth: float | None = length(
        "Mantel depth", None, "1/2 in", "24 in", "Shelf or beam, out from the face."
    )
    thickness: float | None = length(
        "Mantel thickness",
        None,
        "3/4 in",
        "16 in",
        "Shelf with its molding, or beam, as seen from the front; of brick in whole courses.",
    )
    beyond: float | None = length(
        "Mantel beyond the opening",
        None,
        "0 in",
        "60 in",
        "Each end of shelf or beam past the edge of the opening.",
    )
    support: float | None = length(
        "Pilaster or corbel width", None, "1 in", "24 in", "As seen from the front."
    )
    beside: float | None = length(
        "Pilaster or corbel beside the opening",
        None,
        "0 in",
        "48 in",
        "Edge of the opening sideways to the pilaster or corbel.",
    )
    projection: float | None = length(
        "Pilaster and frieze projection",
        None,
        "1/4 in",
        "12 in",
        "Out from the face, at the deepest of base, cap and frieze.",
    )
    frieze: float | None = length(
        "Frieze height", None, "2 in", "36 in", "Board between the pilasters and the shelf."
    )
    overmantel: float | None = length(
        "Overmantel height", None, "6 in", "120 in", "Paneling over the shelf, with its cornice."
    )
