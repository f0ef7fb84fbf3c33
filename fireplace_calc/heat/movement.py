"""How much lining, pieces and liner grow in the heat, the gap that asks for, and what it does to a
liner whose inside is hotter than its outside.
"""

from __future__ import annotations

from fireplace_calc.base.tables.heat import growths


def grown(
    length: float, celsius: float, start: float = 20.0, which: str = "fireclay growth"
) -> float:
    """How much longer something becomes. [m]

    Parameters
    ----------
    length : float
        [m]
    celsius, start : float
        Mean temperature through it, hot and cold. [C]
    which : str
        Of the table of growths.

    Notes
    -----
    ``a L (T - T0)``.

    Examples
    --------
    >>> round(1000 * grown(1.0, 1000.0), 1)
    6.0
    """
    return growths()[which].value * 1e-6 * length * (celsius - start)


def gap_for(length: float, celsius: float, masonry: float, start: float = 20.0) -> float:
    """Gap that lets a lining grow freely in masonry that grows less. [m]

    A fire that has just been lit asks for the most: the lining is hot, and the masonry behind it
    is still as warm as the room.

    Parameters
    ----------
    length : float
        Of the lining in the direction of the gap. [m]
    celsius, masonry, start : float
        Mean temperatures of lining and masonry, and of both when they were built. [C]
    """
    free = grown(length, celsius, start) - grown(length, masonry, start, "brick growth")
    return max(free, 0.0)


def through_stress(difference: float) -> tuple[float, float, float]:
    """Pull in the cooler face of a closed ring or a held slab: low, middle, high. [Pa]

    Parameters
    ----------
    difference : float
        Inner face over outer. [K]

    Notes
    -----
    ``E a dT / (2 (1 - v))``: straight fall of temperature through a wall that cannot bend (from
    any text on thermal stress). Low and high are the ends of stiffness and growth.

    Examples
    --------
    >>> [round(s / 1e6) for s in through_stress(200.0)]
    [6, 15, 29]
    """
    stiff, grows, side = (
        growths()[name] for name in ("fireclay stiffness", "fireclay growth", "side strain")
    )
    return (
        stiff.low * 1e9 * grows.low * 1e-6 * difference / (2 * (1 - side.low)),
        stiff.value * 1e9 * grows.value * 1e-6 * difference / (2 * (1 - side.value)),
        stiff.high * 1e9 * grows.high * 1e-6 * difference / (2 * (1 - side.high)),
    )
