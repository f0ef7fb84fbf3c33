"""Mantel and trim of a design: its solids with their stuff, and every step of them as a code asks
about it, how far from the opening and how far out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import hypot
from typing import NamedTuple

from fireplace_calc.design.mantel import BURNS, NONE, TOLD, Mantel
from fireplace_calc.design.surround import Trim
from fireplace_calc.geometry.frame import Framed
from fireplace_calc.geometry.mantel.families import MantelGroup, family_groups
from fireplace_calc.geometry.mantel.molded import block
from fireplace_calc.geometry.mantel.sizes import MantelPlace, mantel_place
from fireplace_calc.geometry.solids import Loft


@dataclass(frozen=True, slots=True)
class MantelPart:
    """One thing that hangs on the face or stands before it.

    Attributes
    ----------
    name : str
    material : str
        wood, painted wood, stone or brick.
    group : MantelGroup
        Its solids.
    told : Trim or None
        The piece of trim that it is, where it is told piece by piece.
    """

    name: str
    material: str
    group: MantelGroup
    told: Trim | None = None

    @property
    def burns(self) -> bool:
        """Whether it is of wood."""
        return self.material in BURNS

    @property
    def tone(self) -> str:
        """What it is of, paint left out: wood, stone or brick."""
        return "wood" if self.burns else self.material


class FaceStep(NamedTuple):
    """A step of a mantel as a code asks about it; the fields are those of a piece of trim.

    Attributes
    ----------
    name, place : str
    distance, projection, height : float
        [m]
    combustible : bool
    """

    name: str
    place: str
    distance: float
    projection: float
    height: float
    combustible: bool

    @property
    def drawn_distance(self) -> float:
        """As of a piece of trim; here nothing is unknown. [m]"""
        return self.distance


def trim_boxes(framed: Framed) -> Iterator[tuple[Trim, tuple[float, float, float, float]]]:
    """Every piece of trim as it is told and drawn: one over the opening, two beside it.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    iterator of Trim and tuple of float
        The piece; left, right, bottom and top of what is seen from the front. [m]
    """
    f = framed.frame
    if framed.design.mantel.family != TOLD:
        return
    for piece in framed.design.surround.trim:
        if piece.place == "above":
            low = f.opening_top + piece.drawn_distance
            half = min(f.block_half, f.half_width + max(piece.drawn_distance, 0.1))
            yield piece, (-half, half, low, low + piece.height)
        else:
            near = f.half_width + piece.drawn_distance
            yield piece, (-near - piece.height, -near, f.hearth, f.opening_top)
            yield piece, (near, near + piece.height, f.hearth, f.opening_top)


def mantel_parts(framed: Framed) -> tuple[MantelPart, ...]:
    """Everything of mantel and trim that is drawn, weighed and ordered.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    tuple of MantelPart
    """
    mantel = framed.design.mantel
    if mantel.family == NONE:
        return ()
    if mantel.family == TOLD:
        return tuple(
            MantelPart(
                piece.name,
                "wood" if piece.combustible else "stone",
                MantelGroup(piece.name, (block(left, right, piece.drawn_projection, low, high),)),
                piece,
            )
            for piece, (left, right, low, high) in trim_boxes(framed)
        )
    groups = family_groups(mantel, mantel_place(framed))
    return tuple(MantelPart(group.name, mantel.material, group) for group in groups)


def trim_steps(framed: Framed) -> tuple[Trim | FaceStep, ...]:
    """Mantel and trim as the codes ask about it: every step with its distance from the opening, how
    far it stands out, and whether it burns.

    A molding counts as the steps that stand round it, so that no point of it is nearer or farther
    out than what is checked.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    tuple of Trim or FaceStep
        Of a family nothing is unknown: it is drawn.
    """
    mantel = framed.design.mantel
    if mantel.family == TOLD:
        return framed.design.surround.trim
    return () if mantel.family == NONE else _steps(mantel, mantel_place(framed))


@lru_cache(maxsize=64)
def _steps(mantel: Mantel, place: MantelPlace) -> tuple[FaceStep, ...]:
    burns = mantel.material in BURNS
    steps = (
        _step(group.name, loft, place, burns)
        for group in family_groups(mantel, place)
        for one in group.runs
        for loft in one.lofts
    )
    return tuple(dict.fromkeys(steps))  # what stands left and right is one


def _step(name: str, loft: Loft, place: MantelPlace, burns: bool) -> FaceStep:
    corners = (*loft.lower, *loft.upper)
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    side = 0.0 if left <= 0 <= right else min(abs(left), abs(right))
    return FaceStep(
        name,
        "above" if loft.bottom >= place.head - 1e-9 else "beside",
        gap_to_opening(place, side, loft.bottom, loft.top),
        -min(y for _, y in corners),
        loft.top - loft.bottom,
        burns,
    )


def gap_to_opening(place: MantelPlace, side: float, low: float, high: float) -> float:
    """From the edge of the opening to the nearest point of an upright rectangle in the plane of the
    face.

    Parameters
    ----------
    place : MantelPlace
    side : float
        Its edge that is nearer to the middle of the opening; nought where it lies over that. [m]
    low, high : float
        Its levels. [m]

    Returns
    -------
    float
        Nought where it stands in the opening. [m]
    """
    beside = max(side - place.half, 0.0)
    if high < place.foot:
        return hypot(beside, place.foot - high)
    if low <= place.spring:
        return beside
    rise = place.head - place.spring
    if rise <= 1e-9:
        return hypot(beside, max(low - place.head, 0.0))
    return _to_arch(place, side, low, rise)


def _to_arch(place: MantelPlace, side: float, low: float, rise: float) -> float:
    """From a corner beside and over the spring line to the arch or its end. [m]"""
    radius = (place.half**2 + rise**2) / (2 * rise)
    center = place.head - radius
    # On the arch lies the nearest point only where the corner is seen from its middle within it.
    if low - center > 0 and side * (place.spring - center) <= place.half * (low - center):
        return max(hypot(side, low - center) - radius, 0.0)
    return hypot(side - place.half, low - place.spring)


def shelf_board(framed: Framed) -> tuple[float, float, float, float] | None:
    """What things can be put on: the highest board over the opening that is deep enough to carry
    any.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    tuple of float or None
        Left, right, front edge (away from the room, so less than nought) and top. [m]
    """
    boards = [
        (high, left, right, -out)
        for part in mantel_parts(framed)
        for one in part.group.runs
        for left, right, out, low, high in [one.bounds]
        if low >= framed.frame.opening_top
        and left < 0 < right
        and out >= 0.075
        and part.name != "overmantel cornice"
    ]
    if not boards:
        return None
    high, left, right, front = max(boards)
    return left, right, front, high
