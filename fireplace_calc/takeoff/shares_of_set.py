"""What a part from a set asks for: its pieces by mark, and the refractory mortar between them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.pieces.roles import PARTS
from fireplace_calc.takeoff.goods import SET_PIECE
from fireplace_calc.takeoff.share import Share, hand_set, joints

if TYPE_CHECKING:
    from fireplace_calc.geometry.assembled.assembly import Assembly
    from fireplace_calc.pieces.records import SetPiece

FACING_LINTEL = "facing lintel"


def is_of_set(geometry: Geometry, part: Part) -> bool:
    """Whether a part is made of a set's pieces, or carries the facing before them."""
    return geometry.design.piece_set is not None and (
        part.name in PARTS or part.name == FACING_LINTEL
    )


def set_item(piece: SetPiece) -> str:
    """What a piece is called on the list: ``Piece WR, right wall``."""
    return f"{SET_PIECE}{piece.mark}, {piece.name}"


def set_shares(geometry: Geometry, part: Part) -> Iterator[Share]:
    """Pieces of a part, counted one by one, then its mortar, nests filled.

    Parameters
    ----------
    geometry : Geometry
        Of a design with a set.
    part : Part

    Yields
    ------
    Share
        Their volumes add up to the part's, but for tongues: one is counted with its piece, and
        stands in the part above.
    """
    if part.name == FACING_LINTEL:
        yield from _facing_lintel(geometry, part)
        return
    from fireplace_calc.geometry.from_set.set_up import set_up  # wakes manifold3d

    shares, filled = _of_pieces(set_up(geometry.design).assembly, part.name)
    yield from shares
    yield from joints(part, part.volume - filled, "refractory mortar")


@lru_cache(maxsize=256)
def _of_pieces(made: Assembly, part: str) -> tuple[tuple[Share, ...], float]:
    """Shares of a part's pieces, and what they fill of it [m3]. Kept while the set stands."""
    from fireplace_calc.geometry.assembled.solids import piece_volume, piece_weight
    from fireplace_calc.geometry.assembled.volumes import socket_room, tongue_volume

    shares, filled, roles = list[Share](), 0.0, PARTS[part]
    for piece, number in made.counted.items():
        if piece.role not in roles:
            continue
        volume, weight = number * piece_volume(piece), number * piece_weight(piece)
        # A tongue is counted with its piece, and stands in the part whose socket takes it.
        filled += volume - number * tongue_volume(piece)
        note = "weighed" if piece.weighed is not None else f"taken as {piece.density:g} kg/m3"
        shares.append(Share(part, set_item(piece), "refractory", volume, weight, number, note))
    filled += sum(
        tongue_volume(below.piece)
        for one in made.placed
        if one.piece.role in roles and one.lift and socket_room(one.piece)
        for below in made.by_lift[one.lift - 1]
    )
    return tuple(shares), filled


def _facing_lintel(geometry: Geometry, part: Part) -> Iterator[Share]:
    """The steel angle under the facing, in one piece."""
    design = geometry.design
    around, legs = design.pieces, design.pieces.facing_angle(design.opening.head)
    if legs is not None:
        long = 2 * geometry.frame.half_width + 2 * (around.angle_bearing or 0.0)
        thick, level, high = map(feet_inches, (legs.thickness, legs.level, around.angle_height))
        note = f"angle {thick} thick, level leg {level}, {high} high, {feet_inches(long)} long"
        yield from hand_set(part, "Facing lintel", "steel", 1, note=note)
