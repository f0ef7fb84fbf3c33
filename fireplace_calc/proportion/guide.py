"""What a guide is: one proportion held against a design. It passes or fails nothing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fireplace_calc.base.tables import Source
from fireplace_calc.geometry.polygons import Point

GOLDEN = "golden section"
NAMES = (
    "opening shape",
    "published opening",
    "height of the opening",
    "like shapes",
    GOLDEN,
    "thirds of the wall",
    "door head",
    "width for the room",
)
"""Guides that can be switched on, in the order in which they are shown."""

Polyline = tuple[Point, ...]
"""In the plane of the face: x from the center line, z from the floor. [m]"""
LengthText = Callable[[float], str]
"""A length [m] in the reader's units."""


@dataclass(frozen=True, slots=True)
class Guide:
    """One proportion held against a design.

    Attributes
    ----------
    name : str
        One of ``NAMES``.
    sentence : str
        What it says of this design, in the reader's units.
    found : float or None
        The design's own ratio; ``None`` when something is unknown. [-]
    nearest : str
        Name of the ratio it is held against.
    ideal : float or None
        That ratio. [-]
    lines : tuple of Polyline
        In the plane of the face.
    source : Source
        Where the figures come from, and how well they are known.
    """

    name: str
    sentence: str
    found: float | None
    nearest: str
    ideal: float | None
    lines: tuple[Polyline, ...]
    source: Source

    @property
    def off(self) -> float | None:
        """How far the ratio found is over the named one, as a share of it. [-]"""
        return None if self.found is None or self.ideal is None else self.found / self.ideal - 1


def percent(off: float, over: str = "over", under: str = "under") -> str:
    """How far off, in whole per cents and words.

    Parameters
    ----------
    off : float
        Over or, negative, under; a share. [-]
    over, under : str
        Words for either side.

    Returns
    -------
    str

    Examples
    --------
    >>> percent(0.031), percent(-0.25), percent(0.001)
    ('3 % over', '25 % under', 'the same')
    """
    whole = round(100 * abs(off))
    return "the same" if whole == 0 else f"{whole} % {over if off > 0 else under}"
