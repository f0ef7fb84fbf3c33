"""Courses of one unit, one on another: each on its bed, the first too."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.coursing import BED, SIXTEENTH
from fireplace_calc.brickwork.unit import LEAST_CUT

CUT = "cut to height"


@lru_cache(maxsize=256)
def gauged(
    part: str, kind: str, bottom: float, top: float, unit: float, bed: float
) -> tuple[Course, ...]:
    """Whole courses from the bottom up, the last one cut.

    Parameters
    ----------
    part, kind : str
        What the courses belong to, and what they are of.
    bottom, top : float
        Levels between which they are laid. [m]
    unit, bed : float
        Height of a unit, and of the bed under each, the first too. [m]

    Returns
    -------
    tuple of Course
        What is left over at the top is no course where it is too thin to be cut: the joint there
        takes it up.

    Examples
    --------
    >>> laid = gauged("flue liner", "section", 0.0, 50 * INCH, 24 * INCH, INCH / 8)
    >>> [(round(c.bottom / INCH, 3), round(c.top / INCH, 3), c.cut) for c in laid]
    [(0.125, 24.125, False), (24.25, 48.25, False), (48.375, 50.0, True)]
    """
    made: list[Course] = []
    foot = bottom + bed
    while top - foot > LEAST_CUT + ROUNDING:
        head = foot + unit
        cut = head > top + ROUNDING
        made.append(
            Course(
                part,
                len(made) + 1,
                foot,
                top if cut else head,
                cut,
                CUT if cut else "",
                kind,
                bed,
            )
        )
        foot = bottom + bed + len(made) * (unit + bed)
    return tuple(made)


def even_bed(height: float, unit: float, bed: float) -> float | None:
    """The bed nearest to the chosen one with which whole courses, each on its bed, fill a height.

    Parameters
    ----------
    height : float
        From what the first bed lies on. [m]
    unit, bed : float
        Height of a unit, and the bed that is aimed at. [m]

    Returns
    -------
    float or None
        [m] None where it would be thinner than 1/4 in or thicker than 1/2 in, or, of a bed that is
        outside of that from the start, further off than 1/16 in.

    Examples
    --------
    >>> round(even_bed(100 * INCH, 2.25 * INCH, 0.375 * INCH) / INCH, 4)
    0.3816
    """
    number = max(round(height / (unit + bed)), 1)
    even = height / number - unit
    least, most = min(BED[0], bed - SIXTEENTH), max(BED[1], bed + SIXTEENTH)
    return even if max(least, 0.0) - ROUNDING <= even <= most + ROUNDING else None


ODD = INCH / 16
"""How far off a course line a level is before it is called odd: what a mason reads a tape to. [m]
"""
