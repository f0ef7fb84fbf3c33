"""Exercises and replies under one name."""

from __future__ import annotations

from fireplace_calc.lessons.answers.exercise_records import Exercise, ExerciseStep, Given, Mistake
from fireplace_calc.lessons.answers.printed_answer import shown, tolerance
from fireplace_calc.lessons.answers.replying import SLIPS, Reply, apart, check, step

__all__ = [
    "SLIPS",
    "Exercise",
    "ExerciseStep",
    "Given",
    "Mistake",
    "Reply",
    "apart",
    "check",
    "shown",
    "step",
    "tolerance",
]
