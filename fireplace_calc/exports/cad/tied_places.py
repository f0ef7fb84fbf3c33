"""Which dimensions fix a row of places: every place once, none closed with its own sum."""

from __future__ import annotations

from collections.abc import Iterable

SAME = 2e-4
"""Places nearer than this are one. [m]"""
Gap = tuple[float, float]
"""From where to where. [m]"""


def merged(places: Iterable[float]) -> list[float]:
    """Places in rising order, each once. [m]

    >>> merged([2.0, 0.0, 0.00001, 2.0])
    [0.0, 2.0]
    """
    found: list[float] = []
    for place in sorted(places):
        if not found or place - found[-1] > SAME:
            found.append(place)
    return found


def half_of(places: Iterable[float]) -> list[float]:
    """Of places on both sides of a center line those that fix all: the right-hand one of a pair.
    [m]

    >>> half_of([-2.0, 2.0, 3.0, -1.0])
    [-1.0, 2.0, 3.0]
    """
    every = merged(places)
    right = [place for place in every if place > -SAME]
    alone = [p for p in every if p <= -SAME and all(abs(p + other) > SAME for other in right)]
    return alone + right


def span_rows(places: Iterable[float], first: Iterable[float], least: float) -> list[list[Gap]]:
    """Rows of dimensions that together tie every place to every other in one way only.

    Parameters
    ----------
    places : iterable of float
        [m]
    first : iterable of float
        Those that a mason measures from; they stand in the first row. [m]
    least : float
        Gap that a figure has room in; a nearer place is tied to its neighbor in a row farther out.
        [m]

    Returns
    -------
    list of list of (float, float)
        The first row is one chain. None where there are not two places.

    Examples
    --------
    >>> span_rows([0.0, 1.0, 1.05, 3.0], [0.0], 0.3)
    [[(0.0, 1.0), (1.0, 3.0)], [(1.0, 1.05)]]
    """
    every = merged(places)
    firsts = list(first)
    wanted = [p for p in every if any(abs(p - one) <= SAME for one in firsts)]
    chain: list[float] = []
    for place in (*wanted, *every):
        if all(abs(place - other) >= least for other in chain):
            chain.append(place)
    chain.sort()
    rows: list[list[Gap]] = [list(zip(chain, chain[1:], strict=False))]
    for place in every:
        if place in chain:
            continue
        near = min(chain, key=lambda other: abs(place - other))
        gap = (min(near, place), max(near, place))
        for row in rows[1:]:
            if all(gap[1] + least < low or high + least < gap[0] for low, high in row):
                row.append(gap)
                break
        else:
            rows.append([gap])
    return [row for row in rows if row]
