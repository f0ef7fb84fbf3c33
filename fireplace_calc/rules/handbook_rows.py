"""Rows of the old bulletin's table, and brick sizes, for the trade's own rules."""

from __future__ import annotations

import re
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import INCH
from fireplace_calc.rules.comparing import Printed, inches
from fireplace_calc.rules.facts import Facts


@lru_cache(maxsize=16)
def brick_size(name: str) -> tuple[float, float, float]:
    """Size of a brick from its name.

    Parameters
    ----------
    name : str
        Such as ``9 x 4-1/2 x 2-1/2 in``.

    Returns
    -------
    tuple of float
        Length, width and thickness. [m]
    """
    numbers = re.findall(r"(\d+)(?:-(\d+)/(\d+))?", name)
    length, width, thickness = (
        (int(whole) + (int(top) / int(low) if top else 0.0)) * INCH for whole, top, low in numbers
    )
    return length, width, thickness


@lru_cache(maxsize=1)
def _table() -> tuple[tuple[float, float, Printed, Printed], ...]:
    """Width and height of the opening, least and greatest depth, row by row. [m]"""
    return tuple(
        (
            float(r["opening_width_w_in"]) * INCH,
            float(r["opening_height_h_in"]) * INCH,
            inches(float(r["depth_d_min_in"])),
            inches(float(r["depth_d_max_in"])),
        )
        for r in rows("fb1889_table3.csv")
    )


def handbook_row(facts: Facts) -> tuple[float, float, Printed, Printed] | None:
    """The table's row for the nearest height and the nearest width of it.

    Parameters
    ----------
    facts : Facts

    Returns
    -------
    tuple of float or None
        Width and height of the opening, least and greatest depth; none when the opening is far from
        all of them. [m]
    """
    wide, tall = facts.opening_width, facts.design.opening.clear_height
    near = min(_table(), key=lambda r: (abs(r[1] - tall), abs(r[0] - wide)))
    return near if abs(near[1] - tall) <= 4 * INCH and abs(near[0] - wide) <= 6 * INCH else None
