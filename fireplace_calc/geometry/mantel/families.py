"""Families of mantels, each built of its runs: shelf, beam on corbels, pilasters with a frieze, and
paneling over them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.design.mantel import BEAM, OVERMANTEL, PILASTERS, SHELF, Mantel
from fireplace_calc.geometry.mantel.molded import MantelRun, block, cove, ogee, run
from fireplace_calc.geometry.mantel.sizes import MantelPlace, MantelSizes, mantel_sizes

BOARD, SHAFT = 0.6, 0.75
"""How far frieze and shaft stand out, of base and cap. [-]"""
PANEL = 22 * INCH
"""About how wide a panel of the overmantel is. [m]"""
FRAME = 3.5 * INCH
"""Stiles and rails of the overmantel, where there is room. [m]"""
FIELD = 0.35
"""How far a panel stands out, of its frame. [-]"""


@dataclass(frozen=True, slots=True)
class MantelGroup:
    """What of a mantel is spoken of as one thing.

    Attributes
    ----------
    name : str
    runs : tuple of MantelRun
    """

    name: str
    runs: tuple[MantelRun, ...]

    @property
    def volume(self) -> float:
        """Of all its solids. [m3]"""
        return sum(loft.volume for one in self.runs for loft in one.lofts)


@lru_cache(maxsize=64)
def family_groups(mantel: Mantel, place: MantelPlace) -> tuple[MantelGroup, ...]:
    """What a family's mantel is built of.

    Parameters
    ----------
    mantel : Mantel
        Of a family, none of the first two of ``FAMILIES``.
    place : MantelPlace

    Returns
    -------
    tuple of MantelGroup
        Nothing of it stands in anything else of it.
    """
    size = mantel_sizes(mantel, place)
    if size.courses:
        return (_brick_shelf(size, place),)
    return tuple(_BUILT[mantel.family](size, place))


def _brick_shelf(size: MantelSizes, place: MantelPlace) -> MantelGroup:
    """Courses of brick, each as far over the one below as the next."""
    step, low = size.thickness / size.courses, place.head + size.over_opening
    out, half = size.depth / size.courses, place.half + size.beyond
    return MantelGroup(
        "mantel shelf",
        tuple(
            block(-half, half, (k + 1) * out, low + k * step, low + (k + 1) * step)
            for k in range(size.courses)
        ),
    )


def _shelf_runs(size: MantelSizes, low: float, ends: float, least: float) -> MantelGroup:
    """A board on a cove, which begins where it stands out ``least``, ``ends`` from the middle."""
    half, middle = size.beyond, low + size.thickness / 2
    lip = least + 0.8 * (size.depth - least)
    drawn = (half - ends) / (size.depth - least) if size.depth - least > 1e-9 else 0.0
    under = half - drawn * (size.depth - lip)
    return MantelGroup(
        "mantel shelf",
        (
            run(-under, under, cove(least, lip, low, middle), drawn, curved=True),
            block(-half, half, size.depth, middle, low + size.thickness),
        ),
    )


def _from_middle(size: MantelSizes, place: MantelPlace) -> MantelSizes:
    """With the ends of the shelf told from the middle of the opening."""
    return replace(size, beyond=place.half + size.beyond)


def _shelf(size: MantelSizes, place: MantelPlace) -> Iterator[MantelGroup]:
    whole, least = _from_middle(size, place), 0.3 * size.depth
    ends = max(whole.beyond - (size.depth - least), whole.beyond / 2)
    yield _shelf_runs(whole, place.head + size.over_opening, ends, least)


def _beam(size: MantelSizes, place: MantelPlace) -> Iterator[MantelGroup]:
    low, half = place.head + size.over_opening, place.half + size.beyond
    yield MantelGroup("mantel beam", (block(-half, half, size.depth, low, low + size.thickness),))
    near, far = place.half + size.beside, place.half + size.beside + size.support
    tall = min(size.depth, size.thickness)
    neck, out = 0.2 * size.depth, 0.85 * size.depth
    cap = low - 0.18 * tall
    for name, left, right in (("left corbel", -far, -near), ("right corbel", near, far)):
        curve = ogee(neck, 0.95 * out, low - tall, cap)
        yield MantelGroup(
            name,
            (run(left, right, curve, curved=True), block(left, right, out, cap, low)),
        )


def _pilasters(size: MantelSizes, place: MantelPlace) -> Iterator[MantelGroup]:
    low, out = place.head + size.over_opening, size.projection
    near, far = place.half + size.beside, place.half + size.beside + size.support
    top = low + size.frieze
    for name, side in (("left pilaster", -1), ("right pilaster", 1)):
        yield MantelGroup(name, tuple(_pilaster(size, place, near, far, low, side)))
    yield MantelGroup(
        "frieze",
        (
            block(-near, near, BOARD * out, low, top),
            block(-far, -near, out, low, top),
            block(near, far, out, low, top),
        ),
    )
    yield _shelf_runs(_from_middle(size, place), top, far, out)


def _pilaster(
    size: MantelSizes, place: MantelPlace, near: float, far: float, top: float, side: int
) -> Iterator[MantelRun]:
    """Plinth, shaft and cap; it stands on hearth, seat or floor, on all that is under it."""

    def upright(a: float, b: float, out: float, low: float, high: float) -> MantelRun:
        return block(a, b, out, low, high) if side > 0 else block(-b, -a, out, low, high)

    out, under = size.projection, stands_on(place.right if side > 0 else place.left, near, far)
    foot = max(level for _, _, level in under)
    for a, b, level in under:
        if level < foot:
            yield upright(a, b, out, level, foot)
    tall = top - foot
    plinth, cap = min(1.4 * size.support, 0.2 * tall), min(0.5 * size.support, 0.1 * tall)
    yield upright(near, far, out, foot, foot + plinth)
    yield upright(near, far, SHAFT * out, foot + plinth, top - cap)
    left, right = (near, far) if side > 0 else (-far, -near)
    yield run(left, right, cove(SHAFT * out, out, top - cap, top), curved=True)


def stands_on(
    over_floor: tuple[tuple[float, float], ...], near: float, far: float
) -> list[tuple[float, float, float]]:
    """What is under a stretch beside the opening.

    Parameters
    ----------
    over_floor : tuple of tuple of float
        ``MantelPlace.left`` or ``right``. [m]
    near, far : float
        Ends of the stretch. [m]

    Returns
    -------
    list of tuple of float
        From, to and level, outward. [m]
    """
    found, start = [], 0.0
    for end, level in (*over_floor, (float("inf"), 0.0)):
        a, b = max(start, near), min(end, far)
        if b - a > ROUNDING:
            found.append((a, b, level))
        start = end
    return found


def _overmantel(size: MantelSizes, place: MantelPlace) -> Iterator[MantelGroup]:
    yield from _pilasters(size, place)
    half, out = place.half + size.beside + size.support, size.projection
    low = place.head + size.over_opening + size.frieze + size.thickness
    crown = min(3 * INCH, 0.15 * size.overmantel)
    top = low + size.overmantel
    if size.overmantel <= ROUNDING:
        return
    yield MantelGroup("overmantel", tuple(_paneling(half, out, low, top - crown)))
    deep = out + min(crown, max(place.breast_half - half, 0.25 * crown))
    drawn = max(min((place.breast_half - half) / (deep - out), 1.0), 0.0)
    ends = half + drawn * (deep - out)
    yield MantelGroup(
        "overmantel cornice",
        (run(-ends, ends, cove(out, deep, top - crown, top), drawn, curved=True),),
    )


def _paneling(half: float, out: float, low: float, top: float) -> Iterator[MantelRun]:
    """Two rails, stiles between them, and a panel in each bay; nothing over anything else."""
    bays = max(round(2 * half / PANEL), 1)
    rail = min(FRAME, (top - low) / 4)
    stile = min(FRAME, 2 * half / (3 * bays + 1))
    bay = (2 * half - (bays + 1) * stile) / bays
    yield block(-half, half, out, low, low + rail)
    for k in range(bays + 1):
        left = -half + k * (bay + stile)
        yield block(left, left + stile, out, low + rail, top - rail)
    for k in range(bays):
        left = -half + k * (bay + stile) + stile
        yield block(left, left + bay, FIELD * out, low + rail, top - rail)
    yield block(-half, half, out, top - rail, top)


_BUILT: dict[str, Callable[[MantelSizes, MantelPlace], Iterator[MantelGroup]]] = {
    SHELF: _shelf,
    BEAM: _beam,
    PILASTERS: _pilasters,
    OVERMANTEL: _overmantel,
}
