"""Refusing an input beside another: the most or the least that fits, and why."""

from __future__ import annotations

from fireplace_calc.base.printing import named_in_both
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
        given, most = named_in_both(value, "length"), named_in_both(limit, "length")
        fits = f"at most {most} fits" if limit > 0 else "there is no room for it"
        raise InputError(f"{label} is {given}, but {fits}: {why}", label, f"at most {most}", value)


def require_at_least(label: str, value: float, limit: float, why: str) -> None:
    """Refuse a length under what fits. [m]

    Raises
    ------
    InputError
        Names the input, the least that fits, and why.
    """
    if value < limit - ROUNDING:
        given, least = named_in_both(value, "length"), named_in_both(limit, "length")
        raise InputError(
            f"{label} is {given}, but at least {least} fits: {why}",
            label,
            f"at least {least}",
            value,
        )
