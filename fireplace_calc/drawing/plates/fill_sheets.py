"""Figures of different shapes on as few sheets as hold them, each at the largest scale that lets
the others in, wherever there is room: a mark finds a figure, not its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fireplace_calc.drawing.plates.figure import BETWEEN, Figure, Plate, put
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet

Size = tuple[float, float]
Place = tuple[float, float]


def places(sizes: Sequence[Size], wide: float, high: float) -> list[Place] | None:
    """Where boxes stand in a rectangle, from its upper left corner: in their order where that
    goes, else the tallest first.

    Parameters
    ----------
    sizes : sequence of (width, height)
        [mm]
    wide, high : float
        Of the rectangle. [mm]

    Returns
    -------
    list of (float, float) or None
        Left and top of each, to the right and down [mm]; None where they do not fit.

    Notes
    -----
    What is free is kept as the largest rectangles; each box takes the highest and leftmost that
    holds it, or the one that it fills best (J. Jylanki, A thousand ways to pack the bin, 2010,
    maximal rectangles; from memory).

    Examples
    --------
    >>> places([(40, 30), (40, 20)], 100, 40)
    [(0.0, 0.0), (48.0, 0.0)]
    """
    if any(w > wide + 1e-9 or h > high + 1e-9 for w, h in sizes):
        return None
    told = list(range(len(sizes)))
    tall = sorted(told, key=lambda n: (-sizes[n][1], n))
    for order, close in ((told, False), (tall, False), (tall, True)):
        found = _placed(sizes, order, wide, high, close)
        if found is not None:
            return found
    return None


def _placed(
    sizes: Sequence[Size], order: Sequence[int], wide: float, high: float, close: bool
) -> list[Place] | None:
    free = [(0.0, 0.0, wide + BETWEEN, high + BETWEEN)]
    found: list[Place] = [(0.0, 0.0)] * len(sizes)
    for n in order:
        w, h = sizes[n][0] + BETWEEN, sizes[n][1] + BETWEEN
        fitting = [
            (min(right - left - w, low - top - h) if close else 0.0, top, left)
            for left, top, right, low in free
            if right - left >= w - 1e-9 and low - top >= h - 1e-9
        ]
        if not fitting:
            return None
        _, top, left = min(fitting)
        found[n] = (left, top)
        free = _without(free, (left, top, left + w, top + h))
    return found


Box = tuple[float, float, float, float]


def _without(free: Sequence[Box], taken: Box) -> list[Box]:
    """What is free once a box is taken out: left, top, right, low of each; none within another."""
    a, b, c, d = taken
    made: list[Box] = []
    for left, top, right, low in free:
        if a >= right or c <= left or b >= low or d <= top:
            made.append((left, top, right, low))
            continue
        made += [
            box
            for box in (
                (left, top, a, low),
                (c, top, right, low),
                (left, top, right, b),
                (left, d, right, low),
            )
            if box[2] - box[0] > 1e-9 and box[3] - box[1] > 1e-9
        ]
    made = list(dict.fromkeys(made))
    return [
        one
        for one in made
        if not any(
            other != one
            and other[0] <= one[0]
            and other[1] <= one[1]
            and other[2] >= one[2]
            and other[3] >= one[3]
            for other in made
        )
    ]


def chosen_scales(
    figures: Sequence[Figure], scales: dict[float, str], wide: float, high: float
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
    """

    def fit(told: Sequence[float]) -> bool:
        sizes = [f.size(s, scales[s]) for f, s in zip(figures, told, strict=True)]
        return places(sizes, wide, high) is not None

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
    which a sheet holds it.
    """
    good = tuple(s for s in figure.scales if s <= least)
    if good and places([figure.size(good[-1], scales[good[-1]])], wide, high) is not None:
        return replace(figure, scales=good)
    fitting = [s for s in figure.scales if places([figure.size(s, scales[s])], wide, high)]
    return replace(figure, scales=(fitting[0],) if fitting else figure.scales[-1:])


def _sheet(
    name: str, figures: Sequence[Figure], paper: Paper, scales: dict[float, str], cell: Cell
) -> Plate:
    """One sheet of figures that fit it, spread over all of it."""
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    told = chosen_scales(figures, scales, wide, high) or [f.scales[-1] for f in figures]
    sizes = [f.size(s, scales[s]) for f, s in zip(figures, told, strict=True)]
    spots = places(sizes, wide, high) or [(0.0, 0.0)] * len(figures)
    pairs = list(zip(sizes, spots, strict=True))
    across = min(((wide - w) / x for (w, _), (x, _) in pairs if x), default=1.0)
    down = min(((high - h) / y for (_, h), (_, y) in pairs if y), default=1.0)
    sheet = Sheet(paper.width, paper.height)
    for figure, scale, (_, h), (x, y) in zip(figures, told, sizes, spots, strict=True):
        corner = (cell.left + x * max(across, 1.0), cell.top - y * max(down, 1.0) - h)
        put(sheet, corner, figure, scale, scales[scale])
    one = told[0] if len(set(told)) == 1 else None
    return Plate(name, sheet, scales[one] if one else "as shown", one, [f.key for f in figures])
