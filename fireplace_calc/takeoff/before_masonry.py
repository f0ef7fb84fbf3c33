"""What stands before the masonry: a finish with its bed, mantel and trim, each with what it weighs,
and a metal hood.
"""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.finishes import finishes
from fireplace_calc.base.units import SQFT
from fireplace_calc.design.surround import Trim
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.facing import BEFORE_BASE, facing_of, finish_area
from fireplace_calc.takeoff.share import Share

FACE, MANTEL, HOOD = "face", "mantel", "hood"
"""Whose shares those are."""


def face_shares(geometry: Geometry) -> Iterator[Share]:
    """Whatever stands before the masonry: a finish; facing brick before the block of a raised base.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    surround = geometry.design.surround
    if surround.face == "brick":
        face = facing_of(geometry, BEFORE_BASE)
        if face.volume > 0:
            bare = face.volume * face.laid.share
            yield Share(
                *(FACE, "Facing brick", "brick", bare, bare * density("brick")),
                face.volume * face.laid.per_volume,
                face.note,
            )
            yield _mortar(face.volume - bare)
        return
    usual, area = finishes()[surround.face], finish_area(geometry)
    thick = usual.thickness if surround.thickness is None else surround.thickness
    if area > 0:
        bare = area * thick * (1 - usual.mortar)
        note = f"{feet_inches(thick)} thick with its bed, before the masonry as it is drawn"
        yield Share(
            *(FACE, f"Face {surround.face}", surround.face, bare, bare * density(surround.face)),
            area / SQFT,
            f"{note}; usual, {usual.source.confidence}" if surround.thickness is None else note,
        )
        if usual.mortar > 0:
            yield _mortar(area * thick * usual.mortar)


def _mortar(volume: float) -> Share:
    return Share(FACE, "Mortar", "mortar", volume, volume * density("mortar"))


def trim_boxes(geometry: Geometry) -> Iterator[tuple[Trim, tuple[float, float, float, float]]]:
    """Every piece of mantel and trim as it is drawn: one over the opening, two beside it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    iterator of Trim and tuple of float
        The piece; left, right, bottom and top of what is seen from the front. [m]
    """
    f = geometry.frame
    for piece in geometry.design.surround.trim:
        if piece.place == "above":
            low = f.opening_top + piece.drawn_distance
            half = min(f.block_half, f.half_width + max(piece.drawn_distance, 0.1))
            yield piece, (-half, half, low, low + piece.height)
        else:
            near = f.half_width + piece.drawn_distance
            yield piece, (-near - piece.height, -near, f.hearth, f.opening_top)
            yield piece, (near, near + piece.height, f.hearth, f.opening_top)


def trim_shares(geometry: Geometry) -> Iterator[Share]:
    """Mantel and trim: wood where it burns, else stone.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Share
    """
    for piece, (left, right, low, top) in trim_boxes(geometry):
        volume = (right - left) * (top - low) * piece.drawn_projection
        of = "wood" if piece.combustible else "stone"
        note = "; size unknown, as drawn" if piece.projection is None else ""
        if volume > 0:
            yield Share(
                *(MANTEL, f"Mantel and trim, {of}", of, volume, volume * density(of)),
                note=f"{piece.name}{note}",
            )


def hood(geometry: Geometry) -> Iterator[Share]:
    """The metal hood, bought in one piece and weighed by its maker; none where none is drawn.

    Yields
    ------
    Share
    """
    f = geometry.frame
    if f.hood > 0:
        size = f"{feet_inches(2 * f.half_width)} by {feet_inches(f.hood)}"
        yield Share(HOOD, "Metal hood", "metal", 0.0, 0.0, 1, size)
