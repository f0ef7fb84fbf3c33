"""The gauge of firebrick: beds and joints stretched a little, or the lowest course cut, so that no
piece comes out thinner than can be cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.unit import LEAST_CUT

LEAST_PIECE = 3 * INCH / 8
"""Thinner than this no brick can be sawn: our own habit. [m]"""
STEP, FINE = INCH / 16, INCH / 32
"""Between two joints that are tried, and between two beds, which add up course by course. [m]"""
STRETCH = INCH / 16
"""A joint may always be so much wider or narrower than it was chosen. [m]"""
WIDEST = INCH / 4
"""And a narrow one may be stretched to this, the most a joint of firebrick may have. [m]"""


MARGIN = 1e-6
"""No course ends so near to what is too thin. [m]"""
LOW = 0.25
"""A course that is cut to less of a brick's height is put in only where it has to be. [-]"""


class Gauge(NamedTuple):
    """How courses are brought up.

    Attributes
    ----------
    bed : float
        Of each course. [m]
    first : float
        Height of the lowest course; that of a brick where it is whole. [m]
    """

    bed: float
    first: float


def joints_near(joint: float, step: float = STEP) -> list[float]:
    """Joints to lay firebrick with, the chosen one first, then ever further off.

    Parameters
    ----------
    joint : float
        The chosen one. [m]
    step : float
        Between two of them. [m]

    Returns
    -------
    list of float
        [m]

    Examples
    --------
    >>> [round(16 * joint / INCH) for joint in joints_near(INCH / 8)]  # in 1/16 in
    [2, 1, 3, 4]
    """
    least, most = max(joint - STRETCH, 0.0), max(WIDEST, joint + STRETCH)
    steps = sorted(range(-round(STRETCH / step), round(most / step) + 1), key=abs)
    tried = (joint + n * step for n in steps)
    return [one for one in tried if least - ROUNDING <= one <= most + ROUNDING]


def under(level: float, height: float, first: float, bed: float, start: float) -> float:
    """How high the piece under a level is; that of a brick where a joint lies there.

    Parameters
    ----------
    level : float
        Over what the courses stand on. [m]
    height, first, bed : float
        Of a brick, of the lowest course, and of the joint between two courses. [m]
    start : float
        Bed under the lowest course. [m]

    Returns
    -------
    float
        Nought under the first bed. [m]

    Examples
    --------
    >>> under(10.0, 4.0, 4.0, 0.5, 0.5), under(9.25, 4.0, 4.0, 0.5, 0.5)
    (0.5, 4.0)
    """
    over = level - start
    if over <= first + bed:
        return min(max(over, 0.0), first)
    return min((over - first - bed) % (height + bed), height)


def is_thin(high: float) -> bool:
    """Whether so much is more than a joint takes up and less than can be cut.

    Parameters
    ----------
    high : float
        [m]
    """
    return LEAST_CUT + ROUNDING < high <= LEAST_PIECE + MARGIN


@lru_cache(maxsize=256)
def gauge(levels: tuple[float, ...], height: float, bed: float, on_bed: bool = True) -> Gauge:
    """Courses under which no piece is too thin: the chosen bed, else the nearest that does, else
    the lowest course cut so that the lowest of all cut ones is as high as can be.

    Parameters
    ----------
    levels : tuple of float
        At which pieces end, over what the courses stand on. [m]
    height : float
        Of a brick. [m]
    bed : float
        The chosen one. [m]
    on_bed : bool
        Whether the lowest course has one under it.

    Returns
    -------
    Gauge

    Examples
    --------
    >>> inches = lambda *told: tuple(n * INCH for n in told)
    >>> found = gauge(inches(10 * 2.625 + 0.325), 2.5 * INCH, INCH / 8)  # 0.2 in would be left
    >>> round(found.bed / INCH, 4), round(found.first / INCH, 2)
    (0.1562, 2.5)
    """

    def cuts(bed: float, first: float) -> Sequence[float]:
        start = bed if on_bed else 0.0
        return [under(level, height, first, bed, start) for level in levels]

    if not any(map(is_thin, cuts(bed, height))):
        return Gauge(bed, height)
    for least in (LOW * height, LEAST_PIECE + MARGIN):  # first such as leave no low course either
        for tried in joints_near(bed, FINE):
            if not any(LEAST_CUT + ROUNDING < c <= least for c in cuts(tried, height)):
                return Gauge(tried, height)
    number = int((height - LEAST_PIECE) / STRETCH)
    firsts = [height - n * STRETCH for n in range(1, number)]
    best = max(
        firsts or [height],
        key=lambda first: min([first, *(c for c in cuts(bed, first) if c > LEAST_CUT)]),
    )
    return Gauge(bed, best)
