"""Rules of old handbooks as they stand in print: flue areas, brick by courses, mortar by the
thousand, concrete by the yard.

Second opinions beside what is counted and drawn. None of them decides anything: the codes' own flue
rules are in ``rules``.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, pi

from fireplace_calc.base.tables import pick, rows
from fireplace_calc.base.tables.liners import rectangular_liner, round_liner
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import CUYD, FOOT, SQFT, from_unit
from fireplace_calc.takeoff.bricks import WALL_MEASURE


@lru_cache(maxsize=1)
def _figures() -> dict[str, float]:
    return {
        r["name"]: from_unit(float(r["value"]), r["unit"]) for r in rows("handbook_figures.csv")
    }


def figure(name: str) -> float:
    """One printed figure, in SI.

    >>> figure("flue, lined")
    12.0
    """
    return pick(_figures(), name, "Handbook figure")


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
        A twelfth where lined and 22 ft or more, else a tenth: USDA FB 1889 (read twice). [m2]

    Examples
    --------
    >>> round(flue_area(7.5 * SQFT, 22 * FOOT) / SQFT * 144), round(flue_area(7.5 * SQFT, 21.9 * FOOT) / SQFT * 144)
    (90, 108)
    """
    tall = height >= figure("flue, lined, from") * (1 - ROUNDING)
    return opening / figure("flue, lined" if lined and tall else "flue, else")


def older_flue_area(opening: float) -> float:
    """Inside area of a lined flue by the older bulletin.

    Parameters
    ----------
    opening : float
        Area of the fireplace opening. [m2]

    Returns
    -------
    float
        13 in2 to the square foot, a little under an eleventh: USDA FB 1230 (read). [m2]

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
    """Sizes of liner in the bulletin's table of fireplaces, small to large.

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
        Wanted. [m2]
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
    >>> wanted = flue_area(7.5 * SQFT, 22 * FOOT)
    >>> next_liner(wanted, "rectangular"), next_liner(wanted, "round")
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
        Wanted. [m2]

    Returns
    -------
    tuple of float
        Short and long side. [m]

    Examples
    --------
    >>> [round(side / FOOT * 12) for side in brick_flue(0.75 * SQFT)]
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


def courses(height: float) -> float:
    """Courses of brick in a height by the bulletin's 4-1/2 to the foot.

    Parameters
    ----------
    height : float
        Of the work. [m]

    Returns
    -------
    float
        Whole or not. [-]

    Examples
    --------
    >>> round(courses(30 * FOOT), 6)
    135.0
    """
    return height / FOOT * figure("courses")


def brick_by_courses(height: float, per_course: float, solid_base: float = 0.0) -> float:
    """Brick of a chimney by its courses.

    Parameters
    ----------
    height : float
        Of the chimney. [m]
    per_course : float
        Brick in one course. [-]
    solid_base : float
        More brick, to fill the base. [-]

    Returns
    -------
    float
        Number. [-]
    """
    return courses(height) * per_course + solid_base


def wall_measure(volume: float) -> float:
    """'Brick' of a volume of work at 22.5 to the cubic foot: a way of pricing, no count; USDA FB
    1889 (read twice).

    Parameters
    ----------
    volume : float
        Voids taken off. [m3]

    Returns
    -------
    float
        Number. [-]
    """
    return volume * WALL_MEASURE


def mortar(brick: float, thick: bool = True) -> float:
    """Mortar to a number of brick.

    Parameters
    ----------
    brick : float
        How many. [-]
    thick : bool
        In solid walls, by the bulletin's sand; else one wythe, by the navy manual, nothing spilt.

    Returns
    -------
    float
        Volume. [m3]
    """
    return brick / 1000 * figure("mortar, thick walls" if thick else "mortar, one wythe")


@dataclass(frozen=True, slots=True)
class Concrete:
    """What goes into concrete of 1:2-1/2:5: sacks of 94 lb [-], sand and gravel [m3]."""

    cement: float
    sand: float
    gravel: float


def concrete(volume: float) -> Concrete:
    """Materials of plain concrete mixed on site, 1:2-1/2:5 by volume: USDA FB 1889 (read).

    Parameters
    ----------
    volume : float
        Of the set concrete. [m3]

    Returns
    -------
    Concrete

    Examples
    --------
    >>> concrete(CUYD).cement
    5.0
    """
    yards = volume / CUYD
    return Concrete(
        figure("concrete cement") * yards,
        figure("concrete sand") * yards,
        figure("concrete gravel") * yards,
    )
