"""One piece as exact solids: one closed form feeds volume, weight and middle of mass. [m, kg]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.geometry.arches import ArchVoid
from fireplace_calc.geometry.first_moments import moments
from fireplace_calc.geometry.parts import Part, part
from fireplace_calc.geometry.solids import Cylinder, Loft, Solid, moved
from fireplace_calc.pieces.records import Round, SetPiece, Shape, Tapered


def _solid(shape: Shape) -> Solid:
    if isinstance(shape, Tapered):
        return Loft(shape.bottom, shape.top, shape.lower, shape.upper)
    if isinstance(shape, Round):
        return Cylinder(shape.bottom, shape.top, shape.radius, shape.center)
    return ArchVoid(0.0, shape.rise, shape.span, shape.depth, 0.0)


@lru_cache(maxsize=1024)
def piece_part(piece: SetPiece) -> Part:
    """A piece standing on its bed at nought, as a part.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    Part
        Named by its mark. [m]
    """
    return part(
        piece.mark,
        "refractory",
        [_solid(s) for s in piece.adds],
        [_solid(s) for s in piece.cuts],
    )


def piece_volume(piece: SetPiece) -> float:
    """Volume of a piece, a round thing as a true circle.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        [m3]
    """
    return piece_part(piece).volume


def plain_volume(piece: SetPiece) -> float:
    """Volume of a piece as it fills a stack of its kind: without tongue, its socket filled.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        [m3]
    """
    adds, cuts = _plain(piece)
    return sum(s.volume for s in adds) - sum(s.volume for s in cuts)


def piece_weight(piece: SetPiece) -> float:
    """Weight of a piece, as weighed, or by volume and density.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        [kg]
    """
    return piece.weighed if piece.weighed is not None else piece_volume(piece) * piece.density


@lru_cache(maxsize=1024)
def middle_of_mass(piece: SetPiece) -> tuple[float, float, float]:
    """Where the mass of a piece has its middle, its bed at nought.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    tuple of float
        x, y and z. [m]
    """
    volume, along, across, up = moments(piece_part(piece))
    return along / volume, across / volume, up / volume


@lru_cache(maxsize=4096)
def extent(piece: SetPiece) -> tuple[float, float, float, float, float, float]:
    """How far a piece reaches, its bed at nought, tongues counted in.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    tuple of float
        Least and greatest x, then y, then z. [m]
    """
    xs: list[float] = []
    ys: list[float] = []
    for solid in piece_part(piece).adds:
        if isinstance(solid, Cylinder):
            xs += [solid.center[0] - solid.radius, solid.center[0] + solid.radius]
            ys += [solid.center[1] - solid.radius, solid.center[1] + solid.radius]
        elif isinstance(solid, Loft):
            for x, y in (*solid.lower, *solid.upper):
                xs.append(x)
                ys.append(y)
    tops = [s.top for s in piece_part(piece).adds]
    return min(xs), max(xs), min(ys), max(ys), 0.0, max(tops)


@lru_cache(maxsize=1024)
def _plain(piece: SetPiece) -> tuple[tuple[Solid, ...], tuple[Solid, ...]]:
    adds, cuts = piece.plain or (piece.adds, piece.cuts)
    return tuple(map(_solid, adds)), tuple(map(_solid, cuts))


def placed_solids(
    piece: SetPiece, set_back: float, level: float
) -> tuple[list[Solid], list[Solid]]:
    """What a piece adds and cuts where it stands, its nest filled.

    Parameters
    ----------
    piece : SetPiece
    set_back : float
        Of the set's front line from the opening plane. [m]
    level : float
        Of its bed. [m]

    Returns
    -------
    tuple of list
        Of solids. [m]
    """
    adds, cuts = _plain(piece)
    return (
        [moved(s, 0.0, set_back, level) for s in adds],
        [moved(s, 0.0, set_back, level) for s in cuts],
    )
