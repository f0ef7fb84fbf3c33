"""What a fault is, and a faulty design to look for it in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from fireplace_calc.design.records import Design
from fireplace_calc.rules import Finding, Pack

Plant = Callable[[Design, Pack, "Fault", Random], Design | None]


@dataclass(frozen=True, slots=True)
class Fault:
    """Something a mason gets wrong.

    Attributes
    ----------
    name : str
        What was done, in a few words.
    lesson : str
        Key of the lesson it belongs to, empty where none treats of it.
    rules : tuple of str
        Keys of the rules it may break; which of them depends on the design.
    plant : callable
        Makes a sound design wrong, or gives nothing where it cannot.
    since : int
        Edition of the list that offered it first: searches of an earlier one stay as they are. [-]
    """

    name: str
    lesson: str
    rules: tuple[str, ...]
    plant: Plant
    since: int = 1


@dataclass(frozen=True, slots=True)
class FaultFinding:
    """A design to look through, and what is wrong with it.

    Attributes
    ----------
    seed : int or str
    pack : str
    design : Design
        With its faults.
    faults : tuple of Fault
    findings : tuple of Finding
        One a fault, in the same order: the clause, what is there, what is asked, and why.
    edition : int
        Of the list that the faults were taken from. [-]
    """

    seed: int | str
    pack: str
    design: Design
    faults: tuple[Fault, ...]
    findings: tuple[Finding, ...]
    edition: int = 1
