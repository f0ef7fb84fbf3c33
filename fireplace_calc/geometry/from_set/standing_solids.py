"""A set piece by piece, every piece and every bed a solid of its own where it stands. [m]

Pieces of one mark are one form that stands more than once, so a picture is sent each form once.
"""

from __future__ import annotations

import atexit
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.design.records import Design
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.solids import placed_solids
from fireplace_calc.geometry.bodies import solid_body
from fireplace_calc.geometry.from_set.mortar_beds import bed_solids, joint_solids
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.geometry.solids import Solid
from fireplace_calc.pieces.records import SetPiece

if TYPE_CHECKING:
    from manifold3d import Manifold

DIGITS = 9
"""Beds alike to so many decimals of a meter are one form. [-]"""
CRUMB = 1e-9
"""A body of less is none. [m3]"""


@dataclass(frozen=True, slots=True)
class StoodApart:
    """A solid of its own where it stands.

    Attributes
    ----------
    name : str
        Of the piece, mark and number; of a bed ``bed of WR.2``, of joints ``joints of WR.2``.
    with_piece : str
        Name of the piece that it comes with.
    placed : Placed or None
        None for mortar.
    body : Manifold
        Its bed at nought; the same object wherever the form is the same.
    at : tuple of float
        Where its bed stands: to the right, away from the room, up. [m]
    """

    name: str
    with_piece: str
    placed: Placed | None
    body: Manifold
    at: tuple[float, float, float]


def stood_apart(
    design: Design, start: float, last_of_lift: Callable[[tuple[Placed, ...]], Placed]
) -> tuple[StoodApart, ...]:
    """Every piece of a design's set, the bed under it, and the upright joints of each lift.

    Parameters
    ----------
    design : Design
        With a set.
    start : float
        Level of what the first bed lies on. [m]
    last_of_lift : callable
        Which of a lift's pieces its joints come with.

    Returns
    -------
    tuple of StoodApart
        Lift by lift.
    """
    up = set_up(design)
    found: list[StoodApart] = []
    for number, here in enumerate(up.assembly.by_lift):
        below = tuple(p.piece for p in up.assembly.by_lift[number - 1]) if number else ()
        under = up.assembly.tops[number - 1] if number else up.assembly.start
        for one in here:
            at = (0.0, up.set_back, start + one.level)
            found.append(StoodApart(one.name, one.name, one, body(one.piece), at))
            bed = _bed(one.piece, below, round(one.bed, DIGITS))
            if bed is not None:
                found.append(StoodApart(f"bed of {one.name}", one.name, None, bed, at))
        top = round(here[0].top - under, DIGITS)
        joints = _joints(tuple(p.piece for p in here), below, top)
        if joints is not None:
            name = last_of_lift(here).name
            foot = (0.0, up.set_back, start + under)
            found.append(StoodApart(f"joints of {name}", name, None, joints, foot))
    return tuple(found)


@lru_cache(maxsize=512)
def _bed(piece: SetPiece, below: tuple[SetPiece, ...], thick: float) -> Manifold | None:
    """Mortar under a piece and in its socket, round the tongue that stands there; the piece's own
    bed at nought.
    """
    one = Placed(piece, 1, 1, thick, 0.0)
    adds, cuts = bed_solids(one, below, -thick, 0.0, 0.0)
    if not adds:
        return None
    whole = _united(adds, cuts)
    if piece.plain:
        filled, bored = placed_solids(piece, 0.0, 0.0)
        whole = (whole + _united(filled, bored)) - body(piece)
    for other in below:
        whole -= body(other).translate((0.0, 0.0, -thick - other.height))
    return _unless_crumb(whole)


@lru_cache(maxsize=512)
def _joints(
    pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...], top: float
) -> Manifold | None:
    """Mortar in the upright joints of a lift, what the lift lies on at nought."""
    here = tuple(Placed(p, 1, 1, top - p.height, top - p.height) for p in pieces)
    adds, cuts = joint_solids(here, below, 0.0, 0.0, 0.0)
    return _unless_crumb(_united(adds, cuts)) if adds else None


def _united(adds: list[Solid], cuts: list[Solid]) -> Manifold:
    from manifold3d import Manifold, OpType

    whole = Manifold.batch_boolean([solid_body(s) for s in adds], OpType.Add)
    if not cuts:
        return whole
    return whole - Manifold.batch_boolean([solid_body(s) for s in cuts], OpType.Add)


def _unless_crumb(whole: Manifold) -> Manifold | None:
    return None if whole.volume() < CRUMB else whole


@atexit.register
def _release_mortar() -> None:
    """What outlives the library's own end is reported as lost, on the reader's screen."""
    for kept in (_bed, _joints):
        kept.cache_clear()
