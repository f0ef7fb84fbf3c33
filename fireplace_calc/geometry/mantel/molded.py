"""Runs of mantel and trim: a profile carried along the face, with its ends returned or cut square,
made of straight-sided solids.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.geometry.solids import Loft

CHORDS = 8
"""Straight pieces to a curve of a molding. [-]"""
Profile = Sequence[tuple[float, float]]
"""How far out and how high, from the lowest point up. [m]"""


@dataclass(frozen=True, slots=True)
class MantelRun:
    """One profile carried along the face.

    Attributes
    ----------
    lofts : tuple of Loft
        From below, each a level slice of it; the face is where the second number is nought. [m]
    round : bool
        Curved to the eye.
    """

    lofts: tuple[Loft, ...]
    round: bool = False

    @property
    def bounds(self) -> tuple[float, float, float, float, float]:
        """Left, right, how far out, bottom and top. [m]"""
        ends = [
            corner for loft in self.lofts for ring in (loft.lower, loft.upper) for corner in ring
        ]
        return (
            min(x for x, _ in ends),
            max(x for x, _ in ends),
            -min(y for _, y in ends),
            self.lofts[0].bottom,
            self.lofts[-1].top,
        )

    @property
    def blocks(self) -> tuple[tuple[float, float, float, float, float], ...]:
        """Upright blocks round it, of a curved one two over each other; each as ``bounds``. [m]"""
        middle = len(self.lofts) // 2
        if not self.round or not middle:
            return (self.bounds,)
        return tuple(
            MantelRun(lofts).bounds for lofts in (self.lofts[:middle], self.lofts[middle:])
        )

    @property
    def front(self) -> Polygon:
        """Outline as it is seen from the front: right and up. [m]"""
        left: list[tuple[float, float]] = []
        right: list[tuple[float, float]] = []
        for loft in self.lofts:
            for ring, z in ((loft.lower, loft.bottom), (loft.upper, loft.top)):
                left.append((min(x for x, _ in ring), z))
                right.append((max(x for x, _ in ring), z))
        return (*_plain(right), *reversed(_plain(left)))

    @property
    def section(self) -> Polygon:
        """Outline of an upright cut across it: away from the room and up. [m]"""
        out = [
            (min(y for _, y in ring), z)
            for loft in self.lofts
            for ring, z in ((loft.lower, loft.bottom), (loft.upper, loft.top))
        ]
        return ((0.0, self.lofts[0].bottom), *_plain(out), (0.0, self.lofts[-1].top))


def _plain(chain: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Without points that stand twice, or on the line between their neighbors."""
    kept: list[tuple[float, float]] = []
    for x, z in chain:
        if kept and kept[-1] == (x, z):
            continue
        if len(kept) > 1 and kept[-1][0] == kept[-2][0] == x:
            kept.pop()
        kept.append((x, z))
    return kept


def run(
    left: float, right: float, profile: Profile, returned: float = 0.0, curved: bool = False
) -> MantelRun:
    """Carry a profile along the face.

    Parameters
    ----------
    left, right : float
        Its ends where it is deepest. [m]
    profile : sequence of tuple
        How far out and how high, from below; two points at one level are a step. [m]
    returned : float
        How far the ends draw in for so much that it stands out less: 1 for a molding mitered round
        its ends, 0 for ends cut square. [-]
    curved : bool
        Curved to the eye.

    Returns
    -------
    MantelRun
    """
    deepest = max(out for out, _ in profile)

    def ring(out: float) -> Polygon:
        back = returned * (deepest - out)
        return box(left + back, right - back, -out, 0.0)

    lofts = tuple(
        Loft(low, high, ring(a), ring(b))
        for (a, low), (b, high) in pairwise(profile)
        if high - low > 1e-9
    )
    return MantelRun(lofts, curved)


def block(left: float, right: float, out: float, low: float, high: float) -> MantelRun:
    """A plain board, block or shaft.

    Parameters
    ----------
    left, right, out, low, high : float
        Its ends, how far out it stands, and its levels. [m]

    Returns
    -------
    MantelRun
    """
    return run(left, right, ((out, low), (out, high)))


def cove(start: float, end: float, low: float, high: float) -> Profile:
    """A hollow quarter that begins upright and ends level.

    Parameters
    ----------
    start, end : float
        How far out it begins and ends. [m]
    low, high : float
        [m]

    Returns
    -------
    Profile
        [m]

    Examples
    --------
    >>> points = cove(0.0, 1.0, 0.0, 1.0)
    >>> points[0], [round(x, 6) for x in points[-1]]
    ((0.0, 0.0), [1.0, 1.0])
    """
    return tuple(
        (start + (end - start) * (1 - cos(t)), low + (high - low) * sin(t))
        for t in (k * pi / 2 / CHORDS for k in range(CHORDS + 1))
    )


def ogee(start: float, end: float, low: float, high: float) -> Profile:
    """An S that begins and ends upright, hollow below and full above.

    Parameters
    ----------
    start, end : float
        How far out it begins and ends. [m]
    low, high : float
        [m]

    Returns
    -------
    Profile
        [m]
    """
    return tuple(
        (start + (end - start) * (1 - cos(pi * t)) / 2, low + (high - low) * t)
        for t in (k / CHORDS for k in range(CHORDS + 1))
    )
