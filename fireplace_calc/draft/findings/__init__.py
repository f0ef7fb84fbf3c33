"""What the air says of a design, as findings. Engineering judgement, not code: each rests on a
published figure and names it.
"""

from __future__ import annotations

from fireplace_calc.design.records import Design
from fireplace_calc.draft.findings import canada, house, smoke
from fireplace_calc.draft.findings.follows import GROUNDS
from fireplace_calc.draft.findings.register import RULES
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.book import worst_first
from fireplace_calc.rules.comparing import MEETS, NOT_CHECKED
from fireplace_calc.rules.core import JUDGEMENT, Finding
from fireplace_calc.rules.tracing.resting import hold

__all__ = ["ALONE", "RULES", "canada", "house", "judgement", "smoke"]


ALONE = "Figured without the appliance that is connected to this flue."
"""Said where there is one: what it takes of the draft is not known."""


def judgement(found: DraftResult, design: Design | None = None) -> tuple[Finding, ...]:
    """Every finding on the draft, worst first.

    Parameters
    ----------
    found : DraftResult
    design : Design, optional
        Where it is given, what passes carries the inputs it rests on that nobody has entered.

    Returns
    -------
    tuple of Finding
        ``edition`` says that it is engineering judgement, ``clause`` in which mode the number was
        found.
    """
    checked = (
        (rule.check(found, JUDGEMENT) for rule in RULES)
        if design is None
        else hold(RULES, found, design, GROUNDS)
    )
    return worst_first(_unless_shared(found, finding) for finding in checked)


def _unless_shared(found: DraftResult, finding: Finding) -> Finding:
    """What would pass for the fireplace alone does not where an appliance takes of its draft."""
    if not found.shared or finding.verdict != MEETS:
        return finding
    return finding._replace(
        verdict=NOT_CHECKED, margin=None, note=f"{ALONE} {finding.note}".rstrip(), assumed=()
    )
