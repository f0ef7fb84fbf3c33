"""A search for faults as an exercise of a class: a question for each fault, one list of rules to
answer all of them from, and no order.
"""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.lessons.answers.exercise_records import (
    Exercise,
    ExerciseStep,
    Given,
    Mistake,
)
from fireplace_calc.lessons.fault_finding import NOT_THAT_ONE, RIGHT, figures, guess
from fireplace_calc.lessons.fault_hunt.hunting import checklist, part_of
from fireplace_calc.lessons.fault_hunt.planting import planted

SEARCH, TITLE = "faults", "Find the fault"
"""Key of the topic, and what it is called."""
ASKED = ("Which rule is broken?", "Which other rule is broken?", "Which third rule is broken?")
BROKEN = ("One rule is", "Two rules are", "Three rules are")


def search_exercise(
    seed: int | str,
    pack: str,
    level: int,
    units: str = FEET_INCHES,
    edition: int | None = None,
    place: int | None = None,
    deal: str = "",
) -> Exercise:
    """A design to look through, with as many faults as the level says.

    Parameters
    ----------
    seed : int or str
        Whatever tells one student from the next.
    pack : str
        One that faults are planted for.
    level : int
        1 to 3. [-]
    units : str
        The reader's.
    edition : int or None
        Of the list of faults; the latest when not told. [-]
    place : int or None
        Of the student in the class, which faults go round by. [-]
    deal : str
        Tells one class from the next.

    Returns
    -------
    Exercise
        Its design is the faulty one, its steps stand in the order of the list.

    Examples
    --------
    >>> [step.ask for step in search_exercise(3, "UK ADJ", 2).steps]
    ['Which rule is broken?', 'Which other rule is broken?']
    """
    faults = planted(seed, level, pack, edition, place, deal)
    listed = {key: name for _, held in checklist(pack, faults.edition) for key, name in held}
    keys, options = tuple(listed), tuple(listed.values())
    said = {key: guess(faults, key, units).text for key in keys}
    broken = sorted(faults.findings, key=lambda finding: keys.index(finding.key))
    wrong = tuple(
        Mistake(float(k), said[key].removeprefix(NOT_THAT_ONE), f"You took: {listed[key]}.")
        for k, key in enumerate(keys)
        if key not in {finding.key for finding in broken}
    )
    steps = tuple(
        ExerciseStep(
            f"fault {n}",
            ASKED[n - 1],
            float(keys.index(finding.key)),
            "choice",
            f"Look at this part: {part_of(finding.key).lower()}.",
            f"This is what the rule is for: {finding.why}",
            _sentence(said[finding.key].removeprefix(RIGHT)),
            wrong,
            finding.key,
            options=options,
            clause=finding.clause,
        )
        for n, finding in enumerate(broken, 1)
    )
    given = tuple(Given(name, text, "word", group) for group, name, text in figures(faults, units))
    return Exercise(
        SEARCH,
        "",
        TITLE,
        seed,
        pack,
        _story(level),
        given,
        steps,
        faults.design,
        level,
        units,
        "",
        any_order=True,
    )


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]


def broken_many(level: int) -> str:
    """How many rules are broken, as a sentence."""
    return f"{BROKEN[level - 1]} broken in this design, and no other."


def _story(level: int) -> str:
    order = " The order of your answers does not count." if level > 1 else ""
    return (
        f"{broken_many(level)} Hold the drawing and the figures against the list of rules.{order}"
    )
