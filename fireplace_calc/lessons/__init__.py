"""What is taught: seven lessons on the chimney rules, numbers to work out and faults to find, drawn
from a seed.
"""

from fireplace_calc.lessons.exercise_figure import ExerciseFigure
from fireplace_calc.lessons.exercises.numbers import KINDS, exercise, exercises
from fireplace_calc.lessons.fault_finding import figures, guess, suspects
from fireplace_calc.lessons.fault_records import Fault, FaultFinding
from fireplace_calc.lessons.faults import FAULTS, planted
from fireplace_calc.lessons.lesson_records import Lesson
from fireplace_calc.lessons.reply import Exercise, ExerciseStep, Given, Mistake, Reply, check, shown
from fireplace_calc.lessons.seeds import seeds_of
from fireplace_calc.lessons.seven_lessons import LESSONS, warned
from fireplace_calc.lessons.valid_designs import TAUGHT, valid_design

__all__ = [
    "FAULTS",
    "KINDS",
    "LESSONS",
    "TAUGHT",
    "Exercise",
    "ExerciseFigure",
    "Fault",
    "FaultFinding",
    "Given",
    "Lesson",
    "Mistake",
    "Reply",
    "ExerciseStep",
    "check",
    "exercise",
    "exercises",
    "figures",
    "guess",
    "planted",
    "seeds_of",
    "shown",
    "valid_design",
    "suspects",
    "warned",
]
