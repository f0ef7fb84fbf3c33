"""Small measures in words: what is too tight or too wide, by how much."""

from __future__ import annotations

from fireplace_calc.base.printing import feet_inches


def small(meters: float) -> str:
    """A small length for a mason: the tape's fraction, and millimeters beside it.

    Parameters
    ----------
    meters : float
        Its sign counts for nothing. [m]

    Examples
    --------
    >>> small(0.0015875), small(0.0001)
    ('1/16" (1.6 mm)', 'less than 1/64" (0.1 mm)')
    """
    fraction = feet_inches(abs(meters), 64, inches_only=True)
    if abs(meters) < 0.0254 / 64:
        fraction = 'less than 1/64"'
    return f"{fraction} ({abs(meters) * 1000:.1f} mm)"
