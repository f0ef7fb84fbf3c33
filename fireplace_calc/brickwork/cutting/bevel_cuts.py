"""Bevels of the cut list: pieces sawn on the same slope share one, whatever their length."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, hypot, pi, radians, tan

from fireplace_calc.brickwork.cutting.cut_marks import Cut, CutList
from fireplace_calc.brickwork.cutting.shapes import NICK
from fireplace_calc.geometry.polygons import Polygon

ALIKE = radians(0.75)
"""Slopes no further apart are one: 1/16 in over a brick 4-1/2 in high. [rad]"""
BODY = 0.025
"""How much of the square brick a template shows beside its bevel. [m]"""
LONG = 0.08
"""Length of a template whose bevel runs along the brick. [m]"""


@dataclass(frozen=True, slots=True)
class Bevel:
    """One slope.

    Attributes
    ----------
    number : int
        From 1. [-]
    angle : float
        Off the long side of the brick, turned over or not: more than nothing, under a right angle.
        [rad]
    high : float
        Highest stretch of a piece that is cut on it, across the brick. [m]
    marks : tuple of str
        Pieces that have it.
    """

    number: int
    angle: float
    high: float
    marks: tuple[str, ...]

    @property
    def steep(self) -> bool:
        """Whether it goes across the brick rather than along it."""
        return self.angle >= pi / 4

    @property
    def fall(self) -> tuple[float, float]:
        """So much, in so much: off square across the brick where it is steep, else off the long
        side along it. [m]
        """
        if self.steep:
            return self.high / tan(self.angle), self.high
        return LONG * tan(self.angle), LONG

    @property
    def template(self) -> Polygon:
        """A piece of brick with the bevel at its right end, or along its top. [m]"""
        off, over = self.fall
        if self.steep:
            return ((0.0, 0.0), (BODY + off, 0.0), (BODY, over), (0.0, over))
        return ((0.0, 0.0), (over, 0.0), (over, BODY), (0.0, BODY + off))


def _slopes(cut: Cut) -> Iterator[tuple[float, float]]:
    """Angle of each side that is not square to the brick [rad], and its stretch across it [m]."""
    ring = cut.outline
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        along, across = abs(bx - ax), abs(by - ay)
        angle = atan2(across, along)
        off = min(along, across)
        if off > NICK / 2 and hypot(along, across) > NICK:
            yield angle, across


def bevels(cuts: CutList) -> tuple[Bevel, ...]:
    """Every bevel of the firebrick, the steepest first.

    Parameters
    ----------
    cuts : CutList

    Returns
    -------
    tuple of Bevel
    """
    found = sorted(
        (
            (-angle, across, cut.mark)
            for cut in cuts.cuts
            if not cut.kind
            for angle, across in _slopes(cut)
        ),
        key=lambda one: one[0],
    )
    groups: list[list[tuple[float, float, str]]] = []
    for one in found:
        if groups and one[0] - groups[-1][0][0] <= ALIKE:
            groups[-1].append(one)
        else:
            groups.append([one])
    order = {cut.mark: n for n, cut in enumerate(cuts.cuts)}
    made = []
    for number, group in enumerate(groups, 1):
        # the longest stretch says the angle best
        angle, high, _ = max(group, key=lambda one: one[1])
        marks = tuple(sorted({mark for *_, mark in group}, key=order.__getitem__))
        made.append(Bevel(number, -angle, high, marks))
    return tuple(made)
