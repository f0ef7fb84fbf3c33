"""Where a lift or a bed does not close round the smoke: between which pieces, and how wide. [m]"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from manifold3d import CrossSection, JoinType

from fireplace_calc.geometry.assembled.passage import WALL, passage, reach
from fireplace_calc.geometry.assembled.sections import (
    SKIN,
    closed,
    contact,
    holes,
    outlined,
    section,
    shrunk,
    united,
)
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.pieces.records import SetPiece

HALVINGS = 20
"""A gap of a meter is found to a millionth. [-]"""
HAIR = 1e-6
"""A rim that is narrower by less is wide enough. [m]"""
NEAR = 1e-4
"""What fills a gap touches what it lies nearer to. [m]"""
CRUMB = 1e-5
"""Fillings smaller than this are no gap, only what an offset leaves. [m2]"""
LEAST_WAY = 1e-4
"""Smaller openings are no way for smoke. [m2]"""
BAND = 1e-3
"""How wide the strip is along which the edge of a way is looked at. [m]"""
Pair = tuple[int, int]
"""Numbers of a piece and of one under it. [-]"""


@dataclass(frozen=True, slots=True)
class Leak:
    """A gap that lets the smoke out.

    Attributes
    ----------
    over, under : tuple of int
        Numbers of the pieces beside it, in the lift and in the one under that. [-]
    width : float
        [m]
    front : bool
        Whether it opens at the front line of the lift.
    """

    over: tuple[int, ...]
    under: tuple[int, ...]
    width: float
    front: bool = False


def _inside(piece: SetPiece, share: float) -> float:
    return min(max(share * piece.height, SKIN), piece.height - SKIN)


@lru_cache(maxsize=256)
def lift_leaks(
    pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...], share: float
) -> tuple[Leak, ...]:
    """The widest gaps through which a lift lets the smoke out at a share of its height.

    Parameters
    ----------
    pieces, below : tuple of SetPiece
        Of a lift that has no way for the smoke there, and of the one under it.
    share : float
        [-]

    Returns
    -------
    tuple of Leak
        Nothing where nothing is open: the way is shut.
    """
    here = [section(p, _inside(p, share)) for p in pieces]
    x0, y0, x1, y1 = united(here).bounds()
    front = CrossSection.square((x1 - x0, WALL)).translate((x0, y0 - WALL))
    found = _widest(lambda by: closed([*here, front], by), reach(pieces), (x0, y0, x1, y1))
    if found is not None:
        width, gaps = found
        return tuple(
            dict.fromkeys(
                Leak(at, (), width, len(at) < 2 and _touch(front, gap))
                for gap, at in ((gap, _beside(here, gap)) for gap in gaps)
            )
        )
    if not (below and (ring := way_out(below))):
        return ()
    open_front = CrossSection.square((2 * WALL + x1 - x0, WALL)).translate((x0 - WALL, y0 - WALL))
    run = _open_run(united([*here, open_front]), outlined([ring]), reach(pieces))
    if run is None:
        return ()
    width, gap = run
    feet = [section(b, _inside(b, 1.0)) for b in below]
    return (Leak(_beside(here, gap), _beside(feet, gap), width),)


@lru_cache(maxsize=256)
def bed_leaks(pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...]) -> tuple[Leak, ...]:
    """The same for a bed that does not close.

    Parameters
    ----------
    pieces, below : tuple of SetPiece
        Of a lift, and of the one under it.

    Returns
    -------
    tuple of Leak
        Nothing where the bed touches nowhere, which is a seat that is missing.
    """
    pairs = [(k, n) for k in range(len(pieces)) for n in range(len(below))]
    beds = {(k, n): contact(pieces[k], below[n]) for k, n in pairs}
    beds = {pair: bed for pair, bed in beds.items() if not bed.is_empty()}
    if not beds:
        return ()
    span, whole = max(reach(pieces), reach(below)), list(beds.values())
    found = _widest(lambda by: closed(whole, by), span, united(whole).bounds())
    if found is not None:
        width, gaps = found
        touched = [[pair for pair, bed in beds.items() if _touch(bed, gap)] for gap in gaps]
        return tuple(
            dict.fromkeys(
                Leak(tuple(sorted({k for k, _ in at})), tuple(sorted({n for _, n in at})), width)
                for at in touched
            )
        )
    ring = way_out(below) or next(iter(passage(pieces, 0.0)), ())
    run = _open_run(united(whole), outlined([ring]), span) if ring else None
    if run is None:
        return ()
    width, gap = run
    over, under = [section(p, SKIN) for p in pieces], [section(b, _inside(b, 1.0)) for b in below]
    return (Leak(_beside(over, gap), _beside(under, gap), width),)


def _open_run(
    cover: CrossSection, way: CrossSection, span: float
) -> tuple[float, CrossSection] | None:
    """The longest stretch of the edge of what is left of a way that nothing covers, and where it
    is; none where the way is shut.
    """
    left = [one for one in (way - closed([cover], span)).decompose() if one.area() > LEAST_WAY]
    if not left:
        return None
    inner = max(left, key=lambda one: float(one.area())).offset(span, JoinType.Miter, 4.0)
    strip = inner.offset(BAND, JoinType.Miter, 4.0) - inner
    runs = [run for run in (strip - cover).decompose() if run.area() > CRUMB]
    if not runs:
        return None
    longest = max(runs, key=lambda run: float(run.area()))
    return float(longest.area()) / BAND, longest


def _widest(
    at: Callable[[float], CrossSection], least: float, box: tuple[float, float, float, float]
) -> tuple[float, list[CrossSection]] | None:
    """The widest gap that has to be filled before one way is left, and what fills it there."""
    low, high = least, max(box[2] - box[0], box[3] - box[1]) / 2
    if not holes(at(high)):
        # so wide a filling may have shut the way as well: come down until it is seen
        while high > 2 * low and not holes(at(high)):
            high /= 1.25
        if not holes(at(high)):
            return None
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if holes(at(middle)) else (middle, high)
    filled = at(high) - at(low)
    return 2 * high, [gap for gap in filled.decompose() if gap.area() > CRUMB]


def _touch(one: CrossSection, gap: CrossSection) -> bool:
    return float((one.offset(NEAR) ^ gap).area()) > NEAR * NEAR


def _beside(bodies: list[CrossSection], gap: CrossSection) -> tuple[int, ...]:
    """Numbers of those that touch a gap. [-]"""
    return tuple(k for k, one in enumerate(bodies) if _touch(one, gap))


@lru_cache(maxsize=1024)
def rim(pieces: tuple[SetPiece, ...], below: tuple[SetPiece, ...], least: float) -> float | None:
    """How wide a bed is round the smoke where it is narrowest.

    Parameters
    ----------
    pieces, below : tuple of SetPiece
        Of a lift, and of the one under it, whose bed closes.
    least : float
        What it is to be. [m]

    Returns
    -------
    float or None
        None where it is at least that. [m]
    """
    beds = [contact(a, b) for a in pieces for b in below]
    ring = closed([b for b in beds if not b.is_empty()], max(reach(pieces), reach(below)))
    if holes(shrunk(ring, least / 2 - HAIR)):
        return None
    low, high = 0.0, least
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if holes(shrunk(ring, middle / 2)) else (low, middle)
    return low


def way_out(pieces: tuple[SetPiece, ...]) -> Polygon:
    """The way through a lift where it comes out, no trough beside it.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift.

    Returns
    -------
    Polygon
        Empty where nothing goes through. [m]
    """
    through = outlined(passage(pieces, 0.5)[:1])
    shared = [(float((outlined([r]) ^ through).area()), r) for r in passage(pieces, 1.0)]
    most, ring = max(shared, default=(0.0, ()))
    return ring if most > 0.0 else ()


def box_of(ring: Polygon) -> tuple[float, float]:
    """Width and depth of the box round a ring.

    Parameters
    ----------
    ring : Polygon
        [m]

    Returns
    -------
    tuple of float
        [m]
    """
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    return max(xs) - min(xs), max(ys) - min(ys)


def second_way(pieces: tuple[SetPiece, ...]) -> tuple[tuple[int, ...], float, float]:
    """Of a second way through a lift, half way up: numbers of the pieces round it, width, depth.

    Parameters
    ----------
    pieces : tuple of SetPiece
        Of one lift with two ways.

    Returns
    -------
    tuple
        The numbers [-], width and depth [m].
    """
    ring = passage(pieces, 0.5)[1]
    wide, deep = box_of(ring)
    near = outlined([ring]).offset(2 * reach(pieces) + NEAR, JoinType.Miter, 4.0)
    return _beside([section(p, p.height / 2) for p in pieces], near), wide, deep
