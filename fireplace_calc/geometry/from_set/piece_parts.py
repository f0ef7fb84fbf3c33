"""One part out of the pieces of some lifts, with the mortar under and between them. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.solids import extent, placed_solids
from fireplace_calc.geometry.from_set.mortar_beds import bed_solids, joint_solids
from fireplace_calc.geometry.parts import Part, part
from fireplace_calc.geometry.solids import Loft, Solid
from fireplace_calc.pieces.records import SetPiece
from fireplace_calc.pieces.roles import PARTS

TOUCH = 1e-6
"""What begins nearer than this to the center line does not cross it. [m]"""


@dataclass(frozen=True, slots=True)
class Stood:
    """A lift and what it stands on.

    Attributes
    ----------
    here : tuple of Placed
        All its pieces.
    below : tuple of SetPiece
        Of the lift under it.
    under : float
        What its bed lies on, over the assembly's start. [m]
    """

    here: tuple[Placed, ...]
    below: tuple[SetPiece, ...]
    under: float

    @property
    def names(self) -> list[str]:
        """Parts that it has pieces of."""
        roles = {p.piece.role for p in self.here}
        return [name for name, of in PARTS.items() if not roles.isdisjoint(of)]

    @property
    def keeper(self) -> str:
        """Which part holds its upright joints: that of its first piece, the lintel last."""
        return next((name for name in self.names if name != "lintel"), "lintel")


@lru_cache(maxsize=64)
def parts_of_pieces(made: Assembly, set_back: float, start: float) -> dict[str, Part]:
    """Every part that is pieces. Kept while the set stands as it does.

    Parameters
    ----------
    made : Assembly
    set_back : float
        Of the set's front line from the opening plane. [m]
    start : float
        Level of the assembly's start. [m]

    Returns
    -------
    dict of Part
        By its name.
    """
    lifts: dict[str, list[Stood]] = {}
    for n, here in enumerate(made.by_lift):
        below = tuple(p.piece for p in made.by_lift[n - 1]) if n else ()
        one = Stood(here, below, made.tops[n - 1] if n else made.start)
        for name in one.names:
            lifts.setdefault(name, []).append(one)
    return {
        name: part_of_pieces(name, tuple(lifts[name]), set_back, start)
        for name in PARTS
        if name in lifts
    }


@lru_cache(maxsize=256)
def part_of_pieces(name: str, lifts: tuple[Stood, ...], set_back: float, start: float) -> Part:
    """One part out of all pieces of its roles. Kept by content: most stay when one slider moves.

    Parameters
    ----------
    name : str
        One of ``PARTS``.
    lifts : tuple of Stood
        Those with such pieces.
    set_back : float
        Of the set's front line from the opening plane. [m]
    start : float
        Level of the assembly's start. [m]

    Returns
    -------
    Part
    """
    adds: list[Solid] = []
    cuts: list[Solid] = []
    aside: list[Solid] = []
    for stood in lifts:
        for one in stood.here:
            if one.piece.role not in PARTS[name]:
                continue
            more, less = placed_solids(one.piece, set_back, one.level + start)
            bed, holes = bed_solids(one, stood.below, stood.under, set_back, start)
            adds += [*more, *bed]
            cuts += [*less, *holes]
            left, right, *_ = extent(one.piece)
            if left > -TOUCH or right < TOUCH:
                aside += [*more, *less]
            aside += [s for s in (*bed, *holes) if _beside(s)]
        if stood.keeper == name:
            ups, holes = joint_solids(stood.here, stood.below, stood.under, set_back, start)
            adds += ups
            cuts += holes
            aside += [s for s in ups if _beside(s)]
    made = part(name, "refractory", adds, cuts)
    return Part(name, made.material, made.adds, made.cuts, made.volume, tuple(aside))


def _beside(solid: Solid) -> bool:
    """Whether a solid stands beside the center line."""
    if not isinstance(solid, Loft):
        return False
    xs = [x for x, _ in solid.lower]
    return min(xs) > -TOUCH or max(xs) < TOUCH
