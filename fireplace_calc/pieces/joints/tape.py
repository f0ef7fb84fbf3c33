"""Lengths as a tape shows them, and the marks it has. [m]"""

from __future__ import annotations

from fireplace_calc.base.printing import feet_inches, grouped, show
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, MM, SYSTEMS, InputError

TICKS = {
    FEET_INCHES: (INCH / 16, INCH / 32, INCH / 64),
    MILLIMETRES: (MM, MM / 2, MM / 4),
}
"""Marks that tops are rounded to, the coarsest first. [m]"""


def ticks(units: str) -> tuple[float, ...]:
    """Marks of a tape, the coarsest first.

    Parameters
    ----------
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of float
        From mark to mark. [m]

    Raises
    ------
    InputError
        When there are no such units.
    """
    if units not in TICKS:
        raise InputError(
            f"Units are {units!r}, but {' or '.join(SYSTEMS)} is wanted.",
            "units",
            " or ".join(SYSTEMS),
            units,
        )
    return TICKS[units]


def tape_text(value: float, units: str, tick: float = 0.0) -> str:
    r"""A length to the nearest mark; less than half a mark is said to be under one.

    Parameters
    ----------
    value : float
        The length. [m]
    units : str
        ``feet-inches`` or ``millimetres``.
    tick : float
        From mark to mark; nought takes the coarsest of the units. [m]

    Returns
    -------
    str
        With its unit.

    Examples
    --------
    >>> tape_text(7 / 16 * INCH, FEET_INCHES), tape_text(0.0112, MILLIMETRES)
    ('7/16"', '11 mm')
    >>> tape_text(INCH / 50, FEET_INCHES)
    'under 1/16"'
    """
    coarsest = ticks(units)[0]
    tick = tick or coarsest
    metric = units == MILLIMETRES
    if 0 < abs(value) < tick / 2:
        if abs(value) < tick * 1e-3:
            value = 0.0
        else:
            least = f"{grouped(tick / MM, 0 if tick >= MM else 2, units)} mm" if metric else ""
            return f"under {least or feet_inches(tick, 64)}"
    if metric:
        if tick < MM and abs(value) < 10:
            return f"{grouped(value / MM, 2 if tick < MM / 2 else 1, units)} mm"
        return show(value, "length", units)
    return feet_inches(value, round(INCH / tick))
