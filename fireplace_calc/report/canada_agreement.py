"""Sizing mode against Canada's round-flue table: agreement between two design rules, not an
experiment.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.base.tables.canada import canada_round_flues
from fireplace_calc.draft.sizing import round_flue_for

FIRST_ROW = 0.125
"""Opening taken for the table's first row, which is open below and so has no middle. [m2]"""
WORDS = (
    "This is agreement between two design rules, not an experiment: no open measurement of face"
    " velocity in a masonry fireplace with its geometry was found, and the table may itself come"
    " from the same method. Each band is 60 mm wide, 8 to 25 % of the diameter; where the table"
    " counts the height from was not read."
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
