"""Shapes of cut pieces, laid along the unit they come out of; shapes that differ by less than the
saw takes are one.
"""

from __future__ import annotations

from collections.abc import Sequence
from string import ascii_lowercase

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.cut_stock import KERF
from fireplace_calc.geometry.polygons import Polygon

NICK = INCH / 16
"""A side shorter than this is no side: nobody marks it. [m]"""


def laid_along(ring: Polygon, along: tuple[float, float] = (1.0, 0.0)) -> Polygon:
    """A piece with the length of its unit from left to right, its lower left corner at nought.

    Parameters
    ----------
    ring : polygon
        [m]
    along : tuple of float
        Which way its length runs. [-]

    Returns
    -------
    polygon
        Sides shorter than ``NICK`` left out. [m]

    Examples
    --------
    >>> laid_along(((1.0, 2.0), (1.0, 3.0), (0.5, 3.0), (0.5, 2.0)), (0.0, 1.0))
    ((0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.0, 0.5))
    """
    ux, uy = along
    turned = [(ux * x + uy * y, ux * y - uy * x) for x, y in ring]
    kept = [
        (x, y)
        for k, (x, y) in enumerate(turned)
        if max(abs(x - turned[k - 1][0]), abs(y - turned[k - 1][1])) > NICK
    ]
    corners = kept if len(kept) > 2 else turned
    left, low = min(x for x, _ in corners), min(y for _, y in corners)
    made = [(x - left, y - low) for x, y in corners]
    first = min(range(len(made)), key=lambda k: (round(made[k][1], 4), round(made[k][0], 4)))
    return tuple(made[first:] + made[:first])


def ways(ring: Polygon) -> Array:
    """A piece turned over, end for end, and both, from every corner.

    Parameters
    ----------
    ring : polygon
        As ``laid_along`` has it. [m]

    Returns
    -------
    array, (4 n, n, 2)
        The same n corners in each row, counter-clockwise. [m]
    """
    import numpy as np  # here, so that importing the package does not wait for it

    points = np.array(ring)
    size = points.max(axis=0)
    made = []
    for over in (0, 1):
        for end in (0, 1):
            turned = np.abs(points - size * (end, over))
            if over != end:
                turned = turned[::-1]
            made += [np.roll(turned, k, axis=0) for k in range(len(ring))]
    return np.stack(made)


def merged(rings: Sequence[Polygon], kerf: float = KERF) -> list[int]:
    """Which shape each piece has, where no corner is off by more than the saw takes.

    Parameters
    ----------
    rings : sequence of polygon
        As ``laid_along`` has them. [m]
    kerf : float
        [m]

    Returns
    -------
    list of int
        For each piece the number of the one it is like: of those alike the shortest, so that every
        one of them can be cut so. [-]
    """
    import numpy as np  # here, so that importing the package does not wait for it

    first: dict[Polygon, list[int]] = {}
    for n, ring in enumerate(rings):
        rounded = tuple((round(x, 5), round(y, 5)) for x, y in ring)
        first.setdefault(rounded, []).append(n)

    def order(ring: Polygon) -> tuple[float, ...]:
        xs, ys = [x for x, _ in ring], [y for _, y in ring]
        return (round(max(xs) - min(xs), 5), round(max(ys) - min(ys), 5), sum(xs), sum(ys))

    like: dict[int, int] = {}
    known: dict[int, list[tuple[int, Array]]] = {}  # by the number of corners
    for ring in sorted(first, key=order):
        here, corners = first[ring], np.array(ring)
        alike = known.setdefault(len(ring), [])
        shape = next(
            (n for n, shapes in alike if (np.abs(shapes - corners).max(axis=(1, 2)) <= kerf).any()),
            None,
        )
        if shape is None:
            shape = here[0]
            alike.append((shape, ways(rings[shape])))
        for n in here:
            like[n] = shape
    return [like[n] for n in sorted(like)]


def is_square_cut(ring: Polygon) -> bool:
    """Whether all of its corners are square, so that two sizes say it all.

    Parameters
    ----------
    ring : polygon
        As ``laid_along`` has it. [m]
    """
    wide, high = max(x for x, _ in ring), max(y for _, y in ring)
    return len(ring) == 4 and all(
        min(abs(x), abs(x - wide)) < NICK / 2 and min(abs(y), abs(y - high)) < NICK / 2
        for x, y in ring
    )


def letter(number: int) -> str:
    """The mark of a shape by its number: a to z without i, l and o, which read as figures, and
    without letters whose tails come near a line under them; then aa, ab and on.

    Parameters
    ----------
    number : int
        From nought. [-]

    Examples
    --------
    >>> letter(0), letter(17), letter(18)
    ('a', 'z', 'aa')
    """
    letters = "".join(sorted(set(ascii_lowercase) - set("ilogjpqy")))
    told = ""
    while number >= 0:
        number, rest = divmod(number, len(letters))
        told = letters[rest] + told
        number -= 1
    return told
