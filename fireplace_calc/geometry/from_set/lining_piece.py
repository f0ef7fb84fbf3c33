"""The firebrick lining of a set as one thing set among its pieces, for their pictures. [m]"""

from __future__ import annotations

from collections.abc import Iterable

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.from_set.frame_of_set import SetFrame
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.solids import Loft, Solid
from fireplace_calc.pieces.records import JointRange, SetPiece, Tapered

LINING = "lining"
"""Its mark, and the name of its step."""


def lining_as_piece(geometry: Geometry) -> Placed | None:
    """Floor, sides and back inside the pieces, as they are drawn and counted.

    Parameters
    ----------
    geometry : Geometry
        Of a design with a set.

    Returns
    -------
    Placed or None
        In the lowest lift, on no bed; its paving through the facing is left out. Nothing where the
        set is not lined.
    """
    made, frame = geometry.parts_by_name.get("firebox lining"), geometry.frame
    if made is None or not isinstance(frame, SetFrame) or geometry.design.piece_set is None:
        return None
    foot = min(s.bottom for s in made.adds)
    back = frame.set_back
    # What is cut out under the hearth is the paving, which is laid with the rest.
    clear = [s for s in made.cuts if s.top > frame.hearth + CONTACT_GAP]
    none = JointRange(0.0, 0.0, 0.0)
    piece = SetPiece(
        mark=LINING,
        name="firebrick lining",
        role="back",
        height=max(s.top for s in made.adds) - foot,
        adds=_shapes(made.adds, back, foot),
        cuts=_shapes(clear, back, foot),
        bed=none,
        perpend=none,
        density=0.0,
        weighed=None,
        bearing=0.0,
        after=(),
        on_pallet=None,
        liner=0.0,
        mirrored="",
        material="firebrick",
    )
    return Placed(piece, 0, 1, 0.0, foot - frame.plate_bottom)


def _shapes(solids: Iterable[Solid], back: float, foot: float) -> tuple[Tapered, ...]:
    """The same from the front line of the pieces and over the lining's own foot."""
    return tuple(
        Tapered(
            s.bottom - foot,
            s.top - foot,
            tuple((x, y - back) for x, y in s.lower),
            tuple((x, y - back) for x, y in s.upper),
        )
        for s in solids
        if isinstance(s, Loft)
    )
