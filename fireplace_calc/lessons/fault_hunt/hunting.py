"""A search under way: the list to look down, guesses counted, and faults that nobody could find."""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.lessons.answers.replying import Reply
from fireplace_calc.lessons.fault_finding import figures, guess, suspects
from fireplace_calc.lessons.fault_records import Fault, FaultFinding
from fireplace_calc.lessons.faults import FAULTS
from fireplace_calc.lessons.valid_designs import broken, require_taught, told, valid_design

PARTS = {
    "Opening and firebox": ("LIN", "FBX", "CA-037", "CA-046", "CA-049", "UK-050"),
    "Throat and smoke chamber": ("THR", "SMK", "CA-058", "CA-059", "CA-060"),
    "Hearth": ("HTH", "CA-05", "UK-042", "UK-045"),
    "Flue": ("FLU", "CA-004", "CA-006", "UK-001", "UK-004"),
    "Chimney and roof": ("CHM", "ROF", "CA-01", "CA-020", "CA-026", "UK-0"),
    "Wood near the fire": ("CLR", "CA-03", "CA-06", "UK-023"),
    "Ground and air": ("FND", "AIR", "CA-040", "UK-035"),
}
"""Part of the fireplace to the beginnings of rules that belong to it; the longest one counts."""
SEEDS_TRIED = 40
"""Sound designs that a fault is tried on before it counts as never planted. [-]"""


def part_of(key: str) -> str:
    """The part of the fireplace that a rule speaks of."""
    fits = [(len(start), part) for part, starts in PARTS.items() for start in starts
            if key.startswith(start)]  # fmt: skip
    return max(fits)[1] if fits else "Other"


def checklist(
    pack: str = DEFAULT_PACK, edition: int | None = None
) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """What to look down: part by part, the key of each rule and what it is called.

    Parameters
    ----------
    pack : str
        One that faults are planted for.
    edition : int or None
        Of the list of faults; the latest when not told. [-]

    Returns
    -------
    tuple
        Part, and its rules as key and title with clause.
    """
    named = [(part_of(key), key, text) for text, key in suspects(pack, edition).items()]
    parts = [part for part in (*PARTS, "Other") if any(p == part for p, *_ in named)]
    return tuple((part, tuple((k, t) for p, k, t in named if p == part)) for part in parts)


@dataclass(frozen=True, slots=True)
class FaultHunt:
    """One student's search.

    Attributes
    ----------
    faults : FaultFinding
        The design, and what is wrong with it.
    guesses : tuple of str
        Keys of the rules that were guessed, in their order, each once.
    """

    faults: FaultFinding
    guesses: tuple[str, ...] = ()

    @property
    def found(self) -> tuple[str, ...]:
        """Keys of the faults that were found."""
        meant = {finding.key for finding in self.faults.findings}
        return tuple(key for key in self.guesses if key in meant)

    @property
    def wrong(self) -> int:
        """Guesses that were not right. [-]"""
        return len(self.guesses) - len(self.found)

    @property
    def left(self) -> int:
        """Faults that are still to be found. [-]"""
        return len(self.faults.findings) - len(self.found)

    def guess(self, key: str, units: str = FEET_INCHES) -> tuple[FaultHunt, Reply]:
        """Take a guess; the same one twice counts once.

        Parameters
        ----------
        key : str
            Of the rule that is thought to be broken.
        units : str
            Of the reply.

        Returns
        -------
        FaultHunt, Reply
            The search after it, and why the guess is right or not, with the count.
        """
        reply = guess(self.faults, key, units)
        after = self if key in self.guesses else replace(self, guesses=(*self.guesses, key))
        return after, counted(reply, len(after.guesses), after.left)


def counted(reply: Reply, guesses: int, left: int) -> Reply:
    """A reply with the count of guesses, and of what is still to be found. [-]"""
    more = f"{left} more to find." if left else "Nothing else is broken."
    rest = f" {more}" if reply.right else ""
    return Reply(reply.right, f"Guess {guesses}. {reply.text}{rest}", reply.mistake)


def unfindable(pack: str = DEFAULT_PACK, seeds: int = SEEDS_TRIED) -> dict[str, str]:
    """Faults that nobody can find, and why.

    Parameters
    ----------
    pack : str
        One that faults are planted for.
    seeds : int
        Sound designs that each fault is tried on. [-]

    Returns
    -------
    dict
        Name of the fault to a sentence; empty when all is well. A fault that the book has no rule
        for is not looked at.
    """
    book, trouble = require_taught(pack), {}
    sound = [valid_design(f"checker {seed}", pack) for seed in range(seeds)]
    listed = {key for _, rules in checklist(pack) for key, _ in rules}
    for fault in FAULTS:
        keys = set(fault.rules) & set(book.keys)
        if not keys:
            continue
        if not keys <= listed:
            trouble[fault.name] = "Its rule is not on the list to look down."
            continue
        said = _planted_alone(fault, pack, sound)
        if said:
            trouble[fault.name] = said
    return trouble


def _planted_alone(fault: Fault, pack: str, sound: list[Design]) -> str:
    book = require_taught(pack)
    for seed, design in enumerate(sound):
        wrong = fault.plant(design, book, fault, Random(f"{fault.name}/{seed}"))
        if wrong is None:
            continue
        facts = told(wrong)
        keys = broken(book, facts)
        if len(keys) != 1 or not keys.keys() <= set(fault.rules):
            continue
        found = book.check(facts, keys)
        before, after = (
            figures(FaultFinding(0, pack, one, (fault,), found, fault.since))
            for one in (design, wrong)
        )
        return "" if before != after else "No figure that is told shows it."
    return f"None of {len(sound)} sound designs takes it alone."
