"""Published tolerances of masonry erection, the measure for plumb, level and joints. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.messages import shown
from fireplace_calc.base.tables import Source, rows, source_of
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FOOT, INCH, InputError


@dataclass(frozen=True, slots=True)
class ErectionLimit:
    """One line of the tolerances.

    Attributes
    ----------
    measure : str
        ``plumb``, ``bed level`` or ``bed thickness``.
    most : float
        How far off will do, either way. [m]
    over : float or None
        Within what height or length; nothing where it holds however far. [m]
    note : str
    source : Source
    """

    measure: str
    most: float
    over: float | None
    note: str
    source: Source


@lru_cache(maxsize=1)
def erection_limits() -> tuple[ErectionLimit, ...]:
    """Every line, the shortest heights first.

    Returns
    -------
    tuple of ErectionLimit
        [m]
    """
    return tuple(
        ErectionLimit(
            r["measure"],
            float(r["most_in"]) * INCH,
            float(r["over_ft"]) * FOOT if r["over_ft"] else None,
            r["note"],
            source_of(r),
        )
        for r in rows("erection_tolerances.csv")
    )


def allowed_off(measure: str, over: float | None = None) -> float:
    """How far off will do.

    Parameters
    ----------
    measure : str
        ``plumb``, ``bed level`` or ``bed thickness``.
    over : float or None
        Height or length between the two points compared; nothing where it does not count. [m]

    Returns
    -------
    float
        Either way. [m]

    Raises
    ------
    InputError
        When there is no such measure.

    Notes
    -----
    Read in steps: up to 10 ft the first figure, up to 20 ft the second, beyond that the last. From
    memory: see the source of each line.

    Examples
    --------
    >>> [round(allowed_off("plumb", feet * FOOT) / INCH, 4) for feet in (2, 10, 10.01, 20, 35)]
    [0.25, 0.25, 0.375, 0.375, 0.5]
    """
    told = [limit for limit in erection_limits() if limit.measure == measure]
    if not told:
        known = ", ".join(dict.fromkeys(limit.measure for limit in erection_limits()))
        raise InputError(
            f"Measure is {shown(measure)}, but the tolerances hold only {known}.",
            "measure",
            known,
            measure,
        )
    return next(
        limit.most
        for limit in told
        if limit.over is None or (over is not None and over <= limit.over + ROUNDING)
    )
