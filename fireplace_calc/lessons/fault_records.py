"""What a fault is, and a faulty design to look for it in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from fireplace_calc.design.records import Design
from fireplace_calc.rules import Finding, Pack

Plant = Callable[[Design, Pack, "Fault", Random], Design | None]
FEW = "few designs"
"""What sets faults apart that few sound designs take."""


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
    apart : tuple of str
        Words that it shares with faults it is never dealt together with: ``FEW`` where few sound
        designs take it, else the thing that both of them move.
    wants : tuple of tuple
        Inputs and the words that one of them has to be, for a design to take it at all: others are
        not tried where it is dealt.
    """

    name: str
    lesson: str
    rules: tuple[str, ...]
    plant: Plant
    since: int = 1
    apart: tuple[str, ...] = ()
    wants: tuple[tuple[str, tuple[str, ...]], ...] = ()


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
    edition: int
