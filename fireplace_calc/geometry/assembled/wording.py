"""What does not meet, in words: what is too tight or too wide, by how much."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import feet_inches


@dataclass(frozen=True, slots=True)
class Misfit:
    """Two pieces, or a lift, that do not meet.

    Attributes
    ----------
    names : tuple of str
        Of the pieces, mark and number.
    kind : str
        ``seat``, ``tips``, ``tight``, ``wide``, ``clash``, ``bed``, ``way`` or ``stack``.
    by : float
        How much is missing or too much; nought where it is no length. [m]
    says : str
        The sentence.
    """

    names: tuple[str, ...]
    kind: str
    by: float
    says: str


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
