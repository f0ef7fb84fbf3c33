"""What an assessment rests on that nobody has entered, and what it waits for, as words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.inputs import UNKNOWN
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.rules import Finding

MOST_NAMED = 3
"""A line names no more inputs. [-]"""
MOST_SINGLE = 8
"""Of more inputs than these a line only counts how many stand in each group. [-]"""
LISTS = {"surround.trim": "Trim near the opening", "roof.nearby": "Building parts near the chimney"}
GROUP_NAMES = {
    "smoke_chamber": "Smoke chamber",
    "second_flue": "Second flue",
    "": "Name and method",
}
"""Groups of inputs whose name is not that of their record."""


@dataclass(frozen=True)
class Assumption:
    """An input that stands at its default because nobody has entered it.

    Attributes
    ----------
    key : str
        Dotted.
    label, value : str
        As the reader sees them.
    passed : tuple of str
        Keys of findings that pass, or do not apply, on it.
    """

    key: str
    label: str
    value: str
    passed: tuple[str, ...]


def label_of(key: str) -> str:
    """What the reader sees beside an input."""
    return LISTS[key] if key in LISTS else all_inputs()[key].label


def value_in_words(design: Design, key: str, units: str) -> str:
    """What an input is, as the reader sees it."""
    value = value_of(design, key)
    if key in LISTS:
        return f"{len(value)} told" if value else "none"
    kind = all_inputs()[key].kind
    if value is None:
        return UNKNOWN
    if kind == "yes-no":
        return "yes" if value else "no"
    return str(value) if kind in ("choice", "text", "count") else show(value, kind, units)


def assumptions(assessment: Assessment, units: str = FEET_INCHES) -> tuple[Assumption, ...]:
    """Every input that a passing finding rests on and nobody has entered; first those that most
    findings rest on.

    Parameters
    ----------
    assessment : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of Assumption
    """
    resting: dict[str, list[str]] = {}
    for finding in assessment.findings:
        if finding.on_assumption:
            for key in finding.assumed:
                resting.setdefault(key, []).append(finding.key)
    first = sorted(resting.items(), key=lambda item: (-len(item[1]), item[0]))
    return tuple(
        Assumption(key, label_of(key), value_in_words(assessment.design, key, units), tuple(found))
        for key, found in first
    )


def group_of(key: str) -> str:
    """Under which heading of the panel, and of a design file, an input stands.

    >>> group_of("smoke_chamber.wall"), group_of("site.soil")
    ('Smoke chamber', 'Site')
    """
    return group_named(key.rpartition(".")[0])


def group_named(group: str) -> str:
    """Heading of a record's inputs."""
    return GROUP_NAMES.get(group, group.capitalize())


def to_enter(finding: Finding) -> str:
    """What somebody could enter, in a sentence: what a finding that passes takes for granted, or
    what one that is not checked waits for. Nothing where there is nothing.
    """
    if finding.on_assumption:
        return not_entered(finding.assumed)
    return f"Enter: {named(finding.missing)}." if finding.missing else ""


def not_entered(keys: Sequence[str]) -> str:
    """Inputs that nobody has entered, in a sentence: a few by their labels, many counted."""
    if len(keys) <= MOST_SINGLE:
        return f"Nobody has entered: {_few([label_of(key) for key in keys])}."
    return f"Nobody has entered {len(keys)} inputs: {_counted(keys)}."


def named(keys: Sequence[str]) -> str:
    """Inputs by their labels and where they stand; many counted by where they stand."""
    if len(keys) <= MOST_SINGLE:
        return _few([f"{label_of(key)} (under {group_of(key)})" for key in keys])
    return _counted(keys)


def _counted(keys: Sequence[str]) -> str:
    groups = Counter(map(group_of, keys))
    return ", ".join(f"{number} under {name}" for name, number in groups.items())


def _few(words: Sequence[str]) -> str:
    more = len(words) - MOST_NAMED
    return ", ".join(words[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
