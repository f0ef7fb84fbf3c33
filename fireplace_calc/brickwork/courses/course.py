"""A course, and all courses of a fireplace by the part they belong to."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import NamedTuple


class Course(NamedTuple):
    """One course as it stands.

    Attributes
    ----------
    part : str
        Part of the geometry it belongs to, or ``facing``.
    number : int
        In its part, from 1 at the bottom. [-]
    bottom, top : float
        Levels of the units themselves; their bed lies below ``bottom``. [m]
    cut : bool
        Whether it is lower than a whole course.
    note : str
        Why it is cut, filled, or not of the usual height.
    kind : str
        What it is of: ``block``, ``half-high block``, ``packing block``, ``section``,
        ``firebrick``, ``brick``, ``tile``, ``piece``; ``fill`` where no unit fits.
    bed : float
        Under it. [m]
    along : float
        How high a unit of it is along its own slope, where it leans; nought where it is upright.
        [m]
    """

    part: str
    number: int
    bottom: float
    top: float
    cut: bool = False
    note: str = ""
    kind: str = ""
    bed: float = 0.0
    along: float = 0.0

    @property
    def height(self) -> float:
        """From bottom to top, its bed not counted. [m]"""
        return self.top - self.bottom

    @property
    def piece(self) -> float:
        """How high a unit of it is: along its slope where it leans. [m]"""
        return self.along or self.top - self.bottom


Maker = Callable[[], tuple[Course, ...]]
"""Makes the courses of one part."""
Finder = Callable[[str], Maker | None]
"""Finds that of a part by its name, where the part has courses."""


class CourseList:
    """Every course of a fireplace. A part's courses are made when they are first asked for."""

    def __init__(self, names: Callable[[], tuple[str, ...]], maker: Finder) -> None:
        self._names, self._maker = names, maker
        self._made: dict[str, tuple[Course, ...]] = {}

    @cached_property
    def parts(self) -> tuple[str, ...]:
        """Parts that are laid or set in courses, from the footing up."""
        return tuple(name for name in self._names() if self._maker(name) is not None)

    def of(self, part: str) -> tuple[Course, ...]:
        """Courses of one part, bottom to top.

        Parameters
        ----------
        part : str
            Its name in the geometry, or ``facing``.

        Returns
        -------
        tuple of Course
            Empty where the part is not there or has no courses: poured, stone, plaster, a lining of
            steel or in herringbone.
        """
        if part not in self._made:
            maker = self._maker(part)
            self._made[part] = maker() if maker else ()
        return self._made[part]

    @cached_property
    def all(self) -> tuple[Course, ...]:
        """Every course, part by part."""
        return tuple(course for part in self.parts for course in self.of(part))
