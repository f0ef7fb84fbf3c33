"""The drawing of an exercise, put together while its figures are drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import cos, pi, sin
from typing import TypeVar

from fireplace_calc.lessons.exercise_figure import (
    ExerciseFigure,
    FigureLine,
    FigureSize,
    FigureWord,
    Spot,
)

Item = TypeVar("Item", FigureLine, FigureSize, FigureWord)


def circle(middle: Spot, across: float) -> tuple[Spot, ...]:
    """Points of a circle. [m]"""
    return tuple(
        (middle[0] + across / 2 * cos(k * pi / 24), middle[1] + across / 2 * sin(k * pi / 24))
        for k in range(48)
    )


def box(left: float, bottom: float, right: float, top: float) -> tuple[Spot, ...]:
    """Corners of an upright rectangle. [m]"""
    return ((left, bottom), (right, bottom), (right, top), (left, top))


class FigureMaker:
    """Collects lines, sizes and words; what belongs to a step is named by the step's key."""

    def __init__(self) -> None:
        self._lines: list[tuple[FigureLine, str]] = []
        self._sizes: list[tuple[FigureSize, str]] = []
        self._words: list[tuple[FigureWord, str]] = []

    def line(
        self, points: Sequence[Spot], weight: str = "seen", closed: bool = False, after: str = ""
    ) -> None:
        """A line; with ``after`` it belongs to the working of that step."""
        self._lines.append((FigureLine(tuple(points), weight, closed), after))

    def solid(self, points: Sequence[Spot], hatch: str = "brick") -> None:
        """Something that is cut."""
        self._lines.append((FigureLine(tuple(points), "cut", True, hatch), ""))

    def size(
        self, start: Spot, end: Spot, text: str, side: str, row: int = 0, asks: str = ""
    ) -> None:
        """A size; with ``asks`` it is the answer of that step."""
        self._sizes.append((FigureSize(start, end, text, side, row), asks))

    def word(self, at: Spot, text: str, name: str = "", asks: str = "") -> None:
        """A word in the drawing; with ``asks`` its text is the answer of that step."""
        self._words.append((FigureWord(at, text, name), asks))

    def made(self, said: str, steps: Sequence[str], handed: set[str]) -> ExerciseFigure:
        """The drawing: what belongs to a step that is neither asked nor handed is left out."""

        def kept(items: list[tuple[Item, str]]) -> tuple[Item, ...]:
            held = [(one, _place(key, steps, handed)) for one, key in items]
            return tuple(replace(one, step=at) for one, at in held if at is not None)

        return ExerciseFigure(said, kept(self._lines), kept(self._sizes), kept(self._words))


def _place(key: str, steps: Sequence[str], handed: set[str]) -> int | None:
    """Step of a key, -1 for what is always there, nothing for what is left out."""
    if not key or key in handed:
        return -1
    return steps.index(key) if key in steps else None
