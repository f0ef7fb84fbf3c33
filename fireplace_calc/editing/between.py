"""Refusing an input beside another: the most or the least that fits, and why."""

from __future__ import annotations

from fireplace_calc.base.printing import show
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError


def require_at_most(label: str, value: float, limit: float, why: str) -> None:
    """Refuse a length over what fits. [m]

    Raises
    ------
    InputError
        Names the input, the most that fits, and why.
    """
    if value > limit + ROUNDING:
        given = (
            f"{label} is {show(value, 'length', 'feet-inches')}"
            f" ({show(value, 'length', 'millimetres')})"
        )
        most = f"{show(limit, 'length', 'feet-inches')} ({show(limit, 'length', 'millimetres')})"
        fits = f"at most {most} fits" if limit > 0 else "there is no room for it"
        raise InputError(f"{given}, but {fits}: {why}", label, f"at most {most}", value)


def require_at_least(label: str, value: float, limit: float, why: str) -> None:
    """Refuse a length under what fits. [m]

    Raises
    ------
    InputError
        Names the input, the least that fits, and why.
    """
    if value < limit - ROUNDING:
        given, least = (
            f"{show(z, 'length', 'feet-inches')} ({show(z, 'length', 'millimetres')})"
            for z in (value, limit)
        )
        raise InputError(
            f"{label} is {given}, but at least {least} fits: {why}",
            label,
            f"at least {least}",
            value,
        )
