"""Temperatures of spaces in time, as a run asks for them."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from fireplace_calc.heat.conduction.faces import Drives


def always(drives: Drives) -> Callable[[float], Drives]:
    """Drives that stay as they are."""
    return lambda _: drives


def schedule(
    times: Sequence[float], temperatures: Sequence[float], name: str, **fixed: float
) -> Callable[[float], Drives]:
    """Drives of which one goes in straight lines between given times.

    Parameters
    ----------
    times : sequence of float
        Rising; two alike make a jump. [s]
    temperatures : sequence of float
        [C]
    name : str
        Which drive.
    fixed : float
        The others. [C]
    """
    at, of = np.asarray(times, float), np.asarray(temperatures, float)

    def drives(time: float) -> Drives:
        return {**fixed, name: float(np.interp(time, at, of))}

    return drives
