"""Flue areas and liners as old handbooks give them: second opinions, which decide nothing. The
codes' own flue rules are in ``rules``.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from math import ceil, pi

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tables.liners import rectangular_liner, round_liner
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import SQFT
from fireplace_calc.takeoff.handbook import figure


def flue_area(opening: float, height: float, lined: bool = True) -> float:
    """Inside area that a flue is given by its opening.

    Parameters
    ----------
    opening : float
        Area of the fireplace opening. [m2]
    height : float
        Of the chimney over the hearth. [m]
    lined : bool
        With a clay liner.

    Returns
    -------
    float
        A twelfth where lined and 22 ft or more, else a tenth. [m2]

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941 (read twice).

    Examples
    --------
    >>> from fireplace_calc.base.units import INCH
    >>> [round(flue_area(7.5 * SQFT, feet * 12 * INCH) / SQFT * 144) for feet in (22, 21.9)]
    [90, 108]
    """
    tall = height >= figure("flue, lined, from") * (1 - ROUNDING)
    return opening / figure("flue, lined" if lined and tall else "flue, else")


def older_flue_area(opening: float) -> float:
    """Inside area of a lined flue by an older bulletin.

    Parameters
    ----------
    opening : float
        Area of the fireplace opening. [m2]

    Returns
    -------
    float
        13 in2 to the square foot, a little under an eleventh. [m2]

    References
    ----------
    USDA Farmers' Bulletin 1230, 1921 (read).

    Examples
    --------
    >>> round(older_flue_area(8.25 * SQFT) / SQFT * 144, 2)
    107.25
    """
    return opening / SQFT * figure("flue, older")


def inside_area(size: str, shape: str) -> float:
    """Bare inside of a clay liner, its corners taken as square, as the bulletin reckons it; the
    code's net areas are less.

    Parameters
    ----------
    size : str
        As the liner tables name it.
    shape : str
        ``round`` or ``rectangular``.

    Returns
    -------
    float
        Area. [m2]
    """
    if shape == "round":
        return pi * round_liner(size).inside ** 2 / 4
    liner = rectangular_liner(size)
    return liner.inside_a * liner.inside_b


@lru_cache(maxsize=2)
def stock(shape: str) -> tuple[str, ...]:
    """Sizes of liner in the bulletin's table of fireplaces.

    Parameters
    ----------
    shape : str
        ``round`` or ``rectangular``.

    Returns
    -------
    tuple of str
        Small to large.

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941, table 3.

    Examples
    --------
    >>> stock("round")
    ('10', '12', '15', '18')
    """
    column = "round_flue_inside_dia_in" if shape == "round" else "rect_flue_outside_in"
    return tuple(
        sorted(
            {r[column] for r in rows("fb1889_table3.csv")},
            key=lambda size: inside_area(size, shape),
        )
    )


def next_liner(area: float, shape: str, sizes: Iterable[str] | None = None) -> str | None:
    """Smallest liner that is no smaller inside than an area.

    Parameters
    ----------
    area : float
        Needed. [m2]
    shape : str
        ``round`` or ``rectangular``.
    sizes : iterable of str or None
        To choose from; else the bulletin's own.

    Returns
    -------
    str or None
        Its size; none where the largest is too small.

    Examples
    --------
    >>> from fireplace_calc.base.units import INCH
    >>> needed = flue_area(7.5 * SQFT, 22 * 12 * INCH)
    >>> next_liner(needed, "rectangular"), next_liner(needed, "round")
    ('8.5x18', '12')
    """
    fits = [
        size for size in sizes or stock(shape) if inside_area(size, shape) >= area * (1 - ROUNDING)
    ]
    return min(fits, key=lambda size: inside_area(size, shape), default=None)


def brick_flue(area: float) -> tuple[float, float]:
    """Least flue of bare brick: sides in whole half bricks, at least a brick wide and no longer
    than twice that (our own limit).

    Parameters
    ----------
    area : float
        Needed. [m2]

    Returns
    -------
    tuple of float
        Short and long side. [m]

    Examples
    --------
    >>> from fireplace_calc.base.units import INCH
    >>> [round(side / INCH) for side in brick_flue(0.75 * SQFT)]
    [8, 16]
    """
    step = figure("brick flue step")
    pairs = [
        (short, max(ceil(area / (short * step**2) - ROUNDING), short))
        for short in range(2, max(ceil(area**0.5 / step), 2) + 1)
    ]
    short, long = min(
        (pair for pair in pairs if pair[1] <= 2 * pair[0]),
        key=lambda pair: (pair[0] * pair[1], pair[1]),
    )
    return short * step, long * step
