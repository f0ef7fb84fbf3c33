"""Rules of old handbooks as they stand in print: brick by courses, mortar by the thousand, concrete
by the yard.

Second opinions beside what is counted and drawn. None of them decides anything: the codes' own flue
rules are in ``rules``.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import pick, rows
from fireplace_calc.base.units import CUYD, FOOT, from_unit
from fireplace_calc.takeoff.bricks import WALL_MEASURE


@lru_cache(maxsize=1)
def _figures() -> dict[str, float]:
    return {
        r["name"]: from_unit(float(r["value"]), r["unit"]) for r in rows("handbook_figures.csv")
    }


def figure(name: str) -> float:
    """One printed figure.

    Parameters
    ----------
    name : str
        As ``data/handbook_figures.csv`` has it.

    Returns
    -------
    float
        In the SI unit of its row. [SI]

    Raises
    ------
    InputError
        When there is none of that name.

    Examples
    --------
    >>> figure("flue, lined")
    12.0
    """
    return pick(_figures(), name, "Handbook figure")


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

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941.

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

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941.
    """
    return courses(height) * per_course + solid_base


def wall_measure(volume: float) -> float:
    """'Brick' of a volume of work at 22.5 to the cubic foot: a way of pricing, no count.

    Parameters
    ----------
    volume : float
        Voids taken off. [m3]

    Returns
    -------
    float
        Number. [-]

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941 (read twice).
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

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941; NAVEDTRA 14045, chapter 4.
    """
    return brick / 1000 * figure("mortar, thick walls" if thick else "mortar, one wythe")


@dataclass(frozen=True, slots=True)
class Concrete:
    """What goes into concrete of 1:2-1/2:5: sacks of 94 lb [-], sand and gravel [m3]."""

    cement: float
    sand: float
    gravel: float


def concrete(volume: float) -> Concrete:
    """Materials of plain concrete mixed on site, 1:2-1/2:5 by volume.

    Parameters
    ----------
    volume : float
        Of the set concrete. [m3]

    Returns
    -------
    Concrete

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941 (read).

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
