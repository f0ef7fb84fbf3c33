"""Courses of one unit, one on another: each on its bed, the first too."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.coursing import BED, SIXTEENTH
from fireplace_calc.brickwork.fitted.gauge import LEAST_PIECE
from fireplace_calc.brickwork.unit import LEAST_CUT

CUT = "cut to height"
TWO = "the two top ones cut to one height, so that neither is too thin to cut"
LEAST_SECTION = 1.5 * INCH
"""No section is cut lower where another stands under it: our own habit. [m]"""


@lru_cache(maxsize=256)
def gauged(
    part: str,
    kind: str,
    bottom: float,
    top: float,
    unit: float,
    bed: float,
    first: float | None = None,
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
    first : float or None
        Height of the lowest course where it is cut. [m]

    Returns
    -------
    tuple of Course
        What is left over at the top is no course where a joint takes it up. Where it is more and
        still too thin to be cut, the two top courses are cut alike.

    Examples
    --------
    >>> laid = gauged("flue liner", "section", 0.0, 50 * INCH, 24 * INCH, INCH / 8)
    >>> [(round(c.bottom / INCH, 3), round(c.top / INCH, 3), c.cut) for c in laid]
    [(0.125, 24.125, False), (24.25, 48.25, False), (48.375, 50.0, True)]
    """
    made: list[Course] = []
    first = unit if first is None else first
    foot, high = bottom + bed, first
    while top - foot > LEAST_CUT + ROUNDING:
        head = foot + high
        cut = head > top + ROUNDING or high < unit - ROUNDING
        made.append(
            Course(
                part,
                len(made) + 1,
                foot,
                min(head, top) if cut else head,
                cut,
                CUT if cut else "",
                kind,
                bed,
            )
        )
        foot, high = bottom + bed + first - unit + len(made) * (unit + bed), unit
    least = LEAST_SECTION if kind == "section" else LEAST_PIECE
    if len(made) > 1 and made[-1].cut and made[-1].height < least - ROUNDING:
        low = made[-2].bottom
        each = (top - low - bed) / 2
        made[-2] = made[-2]._replace(top=low + each, cut=True, note=TWO)
        made[-1] = made[-1]._replace(bottom=top - each, note=TWO)
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
