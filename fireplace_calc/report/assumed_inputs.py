"""What an assessment rests on that nobody has entered, as words."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.rules import Finding

MOST_NAMED = 3
"""A line names no more inputs. [-]"""
LISTS = {"surround.trim": "Trim near the opening", "roof.nearby": "Building parts near the chimney"}


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


def _value(assessment: Assessment, key: str, units: str) -> str:
    if key in LISTS:
        return "none"
    value, kind = value_of(assessment.design, key), all_inputs()[key].kind
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
        Assumption(key, label_of(key), _value(assessment, key, units), tuple(found))
        for key, found in first
    )


def resting_on(finding: Finding) -> str:
    """What a finding that passes takes for granted, in a sentence; nothing where all is entered."""
    if not finding.on_assumption:
        return ""
    named = ", ".join(label_of(key) for key in finding.assumed[:MOST_NAMED])
    more = len(finding.assumed) - MOST_NAMED
    others = f" and {more} more" if more > 0 else ""
    return f"Nobody has entered: {named}{others}."
