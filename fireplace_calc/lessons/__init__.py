"""What is taught: lessons, numbers to work out and faults to find, drawn from a seed."""

from fireplace_calc.lessons.answers.exercise_records import Exercise, ExerciseStep, Given, Mistake
from fireplace_calc.lessons.answers.printed_answer import shown
from fireplace_calc.lessons.answers.replying import Reply, check
from fireplace_calc.lessons.exercise_figure import ExerciseFigure
from fireplace_calc.lessons.exercise_kinds import (
    LEVELS,
    TAUGHT,
    exercise,
    kinds_of,
    known_kinds,
)
from fireplace_calc.lessons.fault_finding import figures, guess, suspects
from fireplace_calc.lessons.fault_hunt.hunting import FaultHunt, checklist, unfindable
from fireplace_calc.lessons.fault_hunt.planting import planted
from fireplace_calc.lessons.fault_records import Fault, FaultFinding
from fireplace_calc.lessons.faults import FAULTS
from fireplace_calc.lessons.seeds import seeds_of
from fireplace_calc.lessons.valid_designs import SEARCHED, valid_design

KINDS = known_kinds()
"""Kinds of exercise, in the order of the lessons."""

__all__ = [
    "FAULTS",
    "KINDS",
    "LEVELS",
    "SEARCHED",
    "TAUGHT",
    "Exercise",
    "ExerciseFigure",
    "ExerciseStep",
    "Fault",
    "FaultFinding",
    "FaultHunt",
    "Given",
    "Mistake",
    "Reply",
    "check",
    "checklist",
    "exercise",
    "figures",
    "guess",
    "kinds_of",
    "planted",
    "seeds_of",
    "shown",
    "suspects",
    "unfindable",
    "valid_design",
]
