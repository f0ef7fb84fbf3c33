"""Figures of different shapes on as few sheets as hold them, each at the largest scale that lets
the others in, wherever there is room: a mark finds a figure, not its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from math import prod

from fireplace_calc.drawing.plates.figure import Figure, Plate, put
from fireplace_calc.drawing.plates.packing import (
    Placing,
    in_columns,
    in_rows,
    places,
    spread_out,
)
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet

SMALLER = 1.4
"""A figure may be drawn smaller by so much where all then stand in reading order. [-]"""


def chosen_scales(
    figures: Sequence[Figure],
    scales: dict[float, str],
    wide: float,
    high: float,
    place: Placing = places,
) -> list[float] | None:
    """Denominators at which figures fit a rectangle together: first one for all, as large as goes,
    then each larger by itself, one step each in turn, and none more than half as large again as the
    others. None where the smallest do not fit.

    Parameters
    ----------
    figures : sequence of Figure
    scales : dict
        Of the unit system.
    wide, high : float
        [mm]
    place : callable
        Finds them their places: wherever there is room, or in rows.
    """

    def fit(told: Sequence[float]) -> bool:
        sizes = [f.size(s, scales[s]) for f, s in zip(figures, told, strict=True)]
        return place(sizes, wide, high) is not None

    for common in sorted({s for f in figures for s in f.scales}):
        told = [next((s for s in f.scales if s >= common), f.scales[-1]) for f in figures]
        if fit(told):
            break
    else:
        return None
    growing = list(range(len(figures)))
    while growing:
        n = growing.pop(0)
        larger = max((s for s in figures[n].scales if common / 1.5 <= s < told[n]), default=None)
        if larger is not None and fit(tried := [*told[:n], larger, *told[n + 1 :]]):
            told = tried
            growing.append(n)
    return told


def filled(
    name: str,
    figures: Sequence[Figure],
    paper: Paper,
    scales: dict[float, str],
    cell: Cell | None = None,
    least: float = float("inf"),
) -> list[Plate]:
    """Figures on as few sheets as hold them.

    Parameters
    ----------
    name : str
        Of every sheet.
    figures : sequence of Figure
        In reading order.
    paper : Paper
    scales : dict
        Of the unit system: denominator and how it is written.
    cell : Cell or None
        Where they stand; all the width above the title block when left out. [mm]
    least : float
        Denominator beyond which none is drawn unless it would not fit the sheet alone. [-]

    Returns
    -------
    list of Plate
    """
    cell = cell or paper.field
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    kept = [legible(figure, scales, wide, high, least) for figure in figures]
    made: list[Plate] = []
    while kept:
        count = len(kept)
        while count > 1 and chosen_scales(kept[:count], scales, wide, high) is None:
            count -= 1
        if len(kept) > count > (len(kept) + 1) // 2:  # rather two sheets alike than one and a rest
            count = (len(kept) + 1) // 2
        made.append(_sheet(name, kept[:count], paper, scales, cell))
        kept = kept[count:]
    return made


def legible(
    figure: Figure, scales: dict[float, str], wide: float, high: float, least: float
) -> Figure:
    """A figure with those of its scales alone that can be read well, or else with the largest at
    which a sheet holds it, be it smaller than any of its own.
    """
    good = tuple(s for s in figure.scales if s <= least)
    if good and places([figure.size(good[-1], scales[good[-1]])], wide, high) is not None:
        return replace(figure, scales=good)
    smaller = [s for s in sorted(scales) if s > figure.scales[-1]]
    for scale in (*figure.scales, *smaller):
        if places([figure.size(scale, scales[scale])], wide, high) is not None:
            return replace(figure, scales=(scale,))
    return replace(figure, scales=figure.scales[-1:])


def around(
    name: str,
    figures: Sequence[Figure],
    paper: Paper,
    scales: dict[float, str],
    taken: Sequence[Cell],
) -> Plate | None:
    """Figures on one sheet round what stands there already, as large as goes.

    Parameters
    ----------
    name : str
    figures : sequence of Figure
        In reading order.
    paper : Paper
    scales : dict
        Of the unit system.
    taken : sequence of Cell
        Where something stands. [mm]

    Returns
    -------
    Plate or None
        None where they do not fit.
    """
    cell = paper.tall
    cell = Cell(cell.left, cell.bottom, paper.field.right, cell.top)
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    boxes = [
        (one.left - cell.left, cell.top - one.top, one.right - cell.left, cell.top - one.bottom)
        for one in taken
    ]
    place = partial(places, taken=boxes)
    told = chosen_scales(figures, scales, wide, high, place)
    return None if told is None else _drawn(name, figures, told, place, paper, scales, cell)


def _sheet(
    name: str, figures: Sequence[Figure], paper: Paper, scales: dict[float, str], cell: Cell
) -> Plate:
    """One sheet of figures that fit it, spread over all of it."""
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    told = chosen_scales(figures, scales, wide, high) or [f.scales[-1] for f in figures]
    place: Placing = spread_out
    tried = [(chosen_scales(figures, scales, wide, high, p), p) for p in (in_rows, in_columns)]
    read = [
        (prod(found), found, p)
        for found, p in tried
        if found and all(b <= SMALLER * a for a, b in zip(told, found, strict=True))
    ]
    if read:
        _, told, place = min(read, key=lambda one: one[0])
    return _drawn(name, figures, told, place, paper, scales, cell)


def _drawn(
    name: str,
    figures: Sequence[Figure],
    told: Sequence[float],
    place: Placing,
    paper: Paper,
    scales: dict[float, str],
    cell: Cell,
) -> Plate:
    """A sheet with figures at their scales, where they are placed in a cell. [mm]"""
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    sizes = [f.size(s, scales[s]) for f, s in zip(figures, told, strict=True)]
    spots = place(sizes, wide, high) or [(0.0, 0.0)] * len(figures)
    sheet = Sheet(paper.width, paper.height)
    for figure, scale, (_, h), (x, y) in zip(figures, told, sizes, spots, strict=True):
        corner = (cell.left + x, cell.top - y - h)
        put(sheet, corner, figure, scale, scales[scale])
    one = told[0] if len(set(told)) == 1 else None
    return Plate(name, sheet, scales[one] if one else "as shown", one, [f.key for f in figures])
