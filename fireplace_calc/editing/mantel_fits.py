"""What must hold between the sizes of a mantel, its opening, its breast and its room."""

from __future__ import annotations

from typing import NamedTuple

from fireplace_calc.base.tables.mantels import usual_mantels
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.mantel import NONE, SHELF, TOLD, Mantel
from fireplace_calc.design.records import Design
from fireplace_calc.editing.between import require_at_least, require_at_most
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.geometry.mantel.edges import mantel_edge
from fireplace_calc.geometry.mantel.families import stands_on
from fireplace_calc.geometry.mantel.sizes import (
    MantelPlace,
    MantelSizes,
    mantel_place,
    mantel_sizes,
)

LEAST_PILASTER = 12 * INCH
"""Of a pilaster, from what it stands on: our own habit. [m]"""


class Hung(NamedTuple):
    """A design and its frame, before anything is built of it."""

    design: Design
    frame: Frame


def require_mantel(design: Design) -> None:
    """Refuse a mantel that does not fit; a size that nobody told gives way before.

    Raises
    ------
    InputError
        Names the input to change, the most or the least that fits, and why.
    """
    mantel = design.mantel
    if mantel.family in (TOLD, NONE):
        _require_edge(design)
        return
    if mantel.material == "brick" and mantel.family != SHELF:
        raise InputError(
            f"Mantel material is brick, but a {mantel.family} is not laid of brick; take a shelf,"
            " or wood or stone.",
            "Mantel material",
            "wood, painted wood or stone",
            mantel.material,
        )
    place = mantel_place(Hung(design, build_frame(design)))
    size = mantel_sizes(mantel, place)
    _require_height(mantel, size, place)
    require_at_most(
        "Mantel beyond the opening",
        size.beyond,
        place.breast_half - place.half,
        "it hangs on the breast.",
    )
    if size.support <= ROUNDING and "support" in usual_mantels()[mantel.family]:
        require_at_least(
            "Mantel beyond the opening", size.beyond, INCH, "what carries it stands under that."
        )
    if size.support:
        label = "Pilaster or corbel width" if mantel.support is not None else BESIDE
        other = size.beside if mantel.support is not None else size.support
        told = size.support if mantel.support is not None else size.beside
        require_at_most(label, told, size.beyond - other, "the mantel lies over all of it.")
    if size.projection:
        _require_foot(design, size, place)
        require_at_least(
            "Mantel depth", size.depth, size.projection, "it covers pilasters and frieze."
        )
    if size.courses:
        require_at_most(
            "Mantel depth",
            size.depth,
            size.courses * place.corbel,
            "a course of brick stands out over the one below by no more than half its height or a"
            " third of its bed; take more courses.",
        )
    _require_edge(design)


def _require_foot(design: Design, size: MantelSizes, place: MantelPlace) -> None:
    """Pilasters stand under the frieze, whatever is under them."""
    near = place.half + size.beside
    under = [
        level
        for side in (place.left, place.right)
        for _, _, level in stands_on(side, near, near + size.support)
    ]
    if design.seat.height is not None and max(under) > 0:
        require_at_most(
            "Seat height",
            max(under),
            place.head + size.over_opening - LEAST_PILASTER,
            "a pilaster of a foot stands on it under the frieze.",
        )


def _require_edge(design: Design) -> None:
    """A face that ends at the mantel wants one over the opening."""
    if design.surround.face_height != "to the mantel":
        return
    if mantel_edge(Hung(design, build_frame(design))) is None:
        raise InputError(
            "Face height is to the mantel, but there is none over the opening; choose a mantel, or"
            " take the face to the ceiling.",
            "Face height",
            "to the ceiling, without a mantel",
            design.surround.face_height,
        )


BESIDE = "Pilaster or corbel beside the opening"
UPWARD = {
    "overmantel": "Overmantel height",
    "over_opening": "Mantel over the opening",
    "frieze": "Frieze height",
    "thickness": "Mantel thickness",
}
"""Sizes that lie over each other, by what is blamed first."""


def _require_height(mantel: Mantel, size: MantelSizes, place: MantelPlace) -> None:
    """All of it hangs on the straight of the breast, and under the ceiling."""
    over = size.over_opening + size.tall - (place.breast_top - place.head)
    if over <= 0:
        return
    named = [name for name in UPWARD if getattr(mantel, name) is not None]
    why = "the mantel ends under the ceiling, where the breast is as wide as over the opening."
    first = named[0] if named else "thickness"
    name = next((name for name in named if getattr(size, name) > over), first)
    has = getattr(size, name)
    require_at_most(UPWARD[name], has, max(has - over, 0.0), why)
