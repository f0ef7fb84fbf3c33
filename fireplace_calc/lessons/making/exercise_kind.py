"""What the file of an exercise declares."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fireplace_calc.lessons.making.task_maker import TaskMaker


@dataclass(frozen=True, slots=True)
class ExerciseKind:
    """One kind.

    Attributes
    ----------
    key : str
        Names the stream of its random numbers: it never changes.
    place : float
        Where it stands among the others: the number of its lesson, or just after it. [-]
    lesson, title : str
    branches : dict
        Book to the ways it can go there; a book that has no such figure is not named.
    draw : callable
        Draws it and gives its story.
    """

    key: str
    place: float
    lesson: str
    title: str
    branches: dict[str, tuple[str, ...]]
    draw: Callable[[TaskMaker], str]
