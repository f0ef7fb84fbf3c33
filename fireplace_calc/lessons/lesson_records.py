"""What a lesson is."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson.

    Attributes
    ----------
    key, title : str
    why : tuple of str
        The reason behind the rule, a paragraph each.
    questions : tuple of str
        Rows of ``data/questions.csv`` that it sets side by side.
    view : str
        What the live picture shows: a view, or ``all``.
    marks : tuple of str
        Rules that can be shown where they are measured, the first one to begin with.
    rules : tuple of str
        Rules of the American code that it is about.
    inputs : tuple of str
        What to move, by dotted key.
    exercises : tuple of str
        Kinds of numbers to work out.
    cautions : tuple of str
        Topics of ``data/safety.csv`` that belong to it.
    """

    key: str
    title: str
    why: tuple[str, ...]
    questions: tuple[str, ...]
    view: str
    marks: tuple[str, ...]
    rules: tuple[str, ...]
    inputs: tuple[str, ...]
    exercises: tuple[str, ...]
    cautions: tuple[str, ...]
