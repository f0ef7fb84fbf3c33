"""What the air says of a design, as findings. Engineering judgement, not code: each rests on a
published figure and names it.
"""

from __future__ import annotations

from fireplace_calc.draft.findings import canada, house, smoke
from fireplace_calc.draft.findings.register import RULES
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.book import worst_first
from fireplace_calc.rules.core import JUDGEMENT, Finding

__all__ = ["RULES", "canada", "house", "judgement", "smoke"]


def judgement(found: DraftResult) -> tuple[Finding, ...]:
    """Every finding on the draft, worst first.

    Parameters
    ----------
    found : DraftResult

    Returns
    -------
    tuple of Finding
        ``edition`` says that it is engineering judgement, ``clause`` in which mode the number was
        found.
    """
    return worst_first(rule.check(found, JUDGEMENT) for rule in RULES)
