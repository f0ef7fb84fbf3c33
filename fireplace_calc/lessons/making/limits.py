"""What a code asks for, read from its own finding on a design that is made for the question."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from fireplace_calc.base.units import FEET_INCHES, MM, from_unit
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore import sketch
from fireplace_calc.rules import Pack
from fireplace_calc.rules.comparing import DOES_NOT_APPLY
from fireplace_calc.rules.gathering import gather_facts


@dataclass(frozen=True, slots=True)
class CodeLimit:
    """A figure of a code.

    Attributes
    ----------
    value : float
        What is required. [SI]
    rule, clause : str
        Key of the rule and where the book has it.
    design : Design
        What it was asked of.
    """

    value: float
    rule: str
    clause: str
    design: Design


def code_limit(pack: Pack, changes: dict[str, Any], keys: tuple[str, ...], units: str) -> CodeLimit:
    """What the first rule that applies requires of a design with some changes.

    Parameters
    ----------
    pack : Pack
    changes : dict
        By dotted input.
    keys : tuple of str
        Rules that answer the question, each in its own case.
    units : str
        The reader's: a length of a book in inches is what that book prints in millimetres.

    Returns
    -------
    CodeLimit

    Raises
    ------
    ValueError
        When none of them applies, or compares no numbers.
    """
    design = change(Design(), changes)
    found = pack.check(gather_facts(sketch(design)), keys)
    for one in found:
        if one.verdict != DOES_NOT_APPLY and isinstance(one.required, float):
            value = from_unit(one.required, one.unit)
            if one.unit in ("in", "ft") and units != FEET_INCHES:
                value = round(value / MM) * MM
            return CodeLimit(value, one.key, one.clause, design)
    raise ValueError(f"{pack.name} requires no number by {', '.join(keys)} of this design.")
