"""Cut pieces by shape, and the bricks they come out of: two halves make one brick, the saw's cut
between them lost.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from itertools import groupby
from math import floor

from fireplace_calc.base.tolerances import COUNT_SLACK
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.layout import Layout
from fireplace_calc.geometry.polygons import Polygon

KERF = INCH / 8
"""What the saw takes: common practice, no source. [m]"""


Shape = tuple[tuple[int, int], ...]
"""Sides of a piece in turn [mm], each with the angle that follows it [deg]."""


def bricks_for(lengths: Iterable[float], brick: float, kerf: float = KERF) -> int:
    """Bricks to cut pieces from, the longest first, each from the first brick with enough left.

    Parameters
    ----------
    lengths : iterable of float
        What each piece needs of a brick's length. [m]
    brick : float
        Length of a brick. [m]
    kerf : float
        Lost between two pieces. [m]

    Returns
    -------
    int
        Bricks. [-]

    Examples
    --------
    >>> bricks_for([4.0, 4.0, 5.0, 2.0], 9.0, 0.125)
    2
    """
    wanted = sorted(lengths, reverse=True)
    least, number = wanted[-1] if wanted else 0.0, 0
    left: list[float] = []  # of the bricks that still have enough for the shortest piece
    for length, alike in groupby(wanted):
        times, begun, taken = len(list(alike)), left, length + kerf
        left = []
        for rest in begun:
            here = _fit(rest, length, taken, times)
            left.append(rest - here * taken)
            times -= here
        if times:
            each = max(_fit(brick, length, taken, times), 1)
            whole, over = divmod(times, each)
            number += whole + (over > 0)
            left += [brick - each * taken] * whole + [brick - over * taken] * (over > 0)
        left = [rest for rest in left if rest + 1e-9 >= least]
    return number


def _fit(rest: float, length: float, taken: float, most: int) -> int:
    """How many pieces of a length come out of a rest, each of which takes a cut too. [-]"""
    for found in range(most):
        if length > rest - found * taken + 1e-9:
            return found
    return most


def cut_list(layouts: tuple[Layout, ...]) -> dict[Shape, int]:
    """Cut pieces grouped by shape, the commonest first.

    Parameters
    ----------
    layouts : tuple of Layout

    Returns
    -------
    dict
        How many [-], by the ``cut_shape`` of the piece [mm, deg].
    """
    counted: Counter[Shape] = Counter()
    for layout in layouts:
        for piece in layout.pieces:
            if not piece.whole:
                counted[cut_shape(piece.ring)] += layout.face.alike
    return dict(counted.most_common())


def _nearest(value: float) -> int:
    """The nearest whole number; of a half, such as a brick of 63.5 mm, always the one above."""
    return floor(value + 0.5 + COUNT_SLACK)


def cut_shape(ring: Polygon) -> Shape:
    """A shape whatever way it is turned or flipped.

    Parameters
    ----------
    ring : polygon
        Its corners in turn. [m]

    Returns
    -------
    tuple of tuple
        Its sides in turn [mm], each with the angle that follows it [deg].

    Examples
    --------
    >>> cut_shape(((0, 0), (0.2, 0), (0.2, 0.1), (0, 0.1)))
    ((100, 90), (200, 90), (100, 90), (200, 90))
    """
    import numpy as np  # here, so that importing the package does not wait for it

    points = np.array(ring)
    along = np.roll(points, -1, axis=0) - points
    length = np.hypot(along[:, 0], along[:, 1])
    after = np.roll(along, -1, axis=0)
    angle = np.degrees(
        np.arctan2(
            along[:, 0] * after[:, 1] - along[:, 1] * after[:, 0], (along * after).sum(axis=1)
        )
    )
    forth = [
        (_nearest(1000 * float(s)), _nearest(180 - float(t)))
        for s, t in zip(length, angle, strict=True)
    ]
    back = [(forth[k][0], forth[k - 1][1]) for k in range(len(forth) - 1, -1, -1)]
    return min(tuple(turn[k:] + turn[:k]) for turn in (forth, back) for k in range(len(turn)))
