"""Sizing mode against Canada's round-flue table, and that table against the rectangular one:
agreement between design rules, not an experiment.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi, sqrt

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.base.tables.canada import canada_rectangular_flues, canada_round_flues
from fireplace_calc.draft.sizing import round_flue_for
from fireplace_calc.rules.comparing import reaches

FIRST_ROW = 0.125
"""Opening taken for the table's first row, which is open below and so has no middle. [m2]"""
WALLS = 0.040
"""What is taken off both sides of a rectangular flue's printed size for its liner's walls; fitted.
[m]
"""
TABLES_WORDS = (
    "The rectangular table agrees with the round one in 38 of its 39 cells if its sizes are"
    " nominal, the liner's walls take 40 mm off each, and the ends of the bore count as round. The"
    " 40 mm is fitted; 30 or 35 mm gives 36. With full corners it is 34 at best, and 1 if the sizes"
    " are the inside. So the table seems to print nominal sizes; that was not read, and the"
    " check asks both ways."
)
WORDS = (
    "This is agreement between two design rules, not an experiment: no open measurement of face"
    " velocity in a masonry fireplace with its geometry was found, and the table may itself come"
    " from the same method. Each band is 60 mm wide, 8 to 25 % of the diameter; where the table"
    " counts the height from was not read."
    " " + TABLES_WORDS
)


@dataclass(frozen=True, slots=True)
class Agreement:
    """One row a cell that has a flue in it: middle of opening [m2] and height [m], the table's band
    and our diameter [m].
    """

    opening: Array
    height: Array
    least: Array
    most: Array
    ours: Array

    @property
    def inside(self) -> BoolArray:
        """Whether our diameter lies in the band, cell by cell."""
        return (self.least <= self.ours) & (self.ours <= self.most)

    @property
    def misfit(self) -> Array:
        """Our diameter over the middle of the band, less one. [-]"""
        return 2 * self.ours / (self.least + self.most) - 1

    @property
    def words(self) -> str:
        """How well they agree."""
        return (
            f"{int(self.inside.sum())} of {len(self.ours)} cells inside the band; off its middle by"
            f" {100 * self.misfit.mean():+.1f} % on the mean, {100 * self.misfit.std():.1f} % about"
            " that mean."
        )


def compare_with_canada(inlet: float, rise: float | None = None) -> Agreement:
    """Size every cell of the table at mid-opening and mid-height, published coefficients, nothing
    tuned.

    Parameters
    ----------
    inlet : float
        Loss of mouth and throat: 1.0 or 2.5 are published for masonry. [-]
    rise : float, optional
        Of the gas over outdoors; 222 when left out. [K]

    Returns
    -------
    Agreement

    Examples
    --------
    >>> compare_with_canada(2.5).words
    '46 of 46 cells inside the band; off its middle by +2.9 % on the mean, 2.9 % about that mean.'
    """
    cells = [cell for cell in canada_round_flues() if cell.flue_low is not None]
    opening = np.array(
        [(c.opening_low + c.opening_high) / 2 if c.opening_low else FIRST_ROW for c in cells]
    )
    height = np.array([(c.height_low + c.height_high) / 2 for c in cells])
    ours = np.asarray(round_flue_for(opening, height, inlet, rise=rise))
    return Agreement(
        opening,
        height,
        np.array([c.flue_low for c in cells]),
        np.array([c.flue_high for c in cells]),
        ours,
    )


def rounded_ends(short: float, long: float) -> float:
    """Area of a bore whose ends are half circles.

    Parameters
    ----------
    short, long : float
        Inside. [m]

    Returns
    -------
    float
        [m2]

    Examples
    --------
    >>> round(rounded_ends(0.16, 0.26), 4)
    0.0361
    """
    return pi / 4 * short**2 + short * (long - short)


def compare_canadas_tables(walls: float = WALLS, rounded: bool = True) -> tuple[bool, ...]:
    """Whether the smallest and the largest rectangular flue of each cell, as round flues of the
    same area, lie in the round table's band.

    Parameters
    ----------
    walls : float
        Taken off both sides of the printed size. [m]
    rounded : bool
        Ends of the bore count as half circles, else the corners are full.

    Returns
    -------
    tuple of bool
        One a cell that has a flue in it, row by row.

    Examples
    --------
    >>> sum(compare_canadas_tables()), sum(compare_canadas_tables(0.0, rounded=False))
    (38, 1)
    """
    bands = {
        (cell.opening_high, cell.height_high): (cell.flue_low, cell.flue_high)
        for cell in canada_round_flues()
    }
    found = []
    for cell, *flues in canada_rectangular_flues():
        low, high = bands[cell.opening_high, cell.height_high]
        across = []
        for flue in flues:
            if flue is not None:
                short, long = (side - walls for side in sorted(flue))
                area = rounded_ends(short, long) if rounded else short * long
                across.append(sqrt(4 * area / pi))
        if across:
            found.append(
                low is not None
                and high is not None
                and reaches(min(across), low)
                and reaches(high, max(across))
            )
    return tuple(found)
