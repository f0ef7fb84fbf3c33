"""What every finding on the draft has: where it is filed, its modes, its evenings."""

from __future__ import annotations

from dataclasses import replace

from fireplace_calc.base.tables import Source
from fireplace_calc.base.tables.draft import coefficients
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.comparing import MEETS, NOT_CHECKED, Compared
from fireplace_calc.rules.core import Rule, filing

SIZING, OPERATING = "draft, sizing mode", "draft, operating mode"
WINTER, MILD, EMBERS, WINDY = range(len(CASES))
OWN = Source("engineering judgement: worked out from first principles", "derived")
PLUME = Source(
    "; ".join(coefficients()[name].source.text for name in ("plume constant", "inward velocity")),
    coefficients()["plume constant"].source.confidence,
)

HOUSE_UNKNOWN = ("house.leakage",)
"""What a finding waits for that needs to know how tight the house is."""

RULES: list[Rule[DraftResult]] = []
judged = filing(RULES)


def on_this_house(found: DraftResult, compared: Compared) -> Compared:
    """The middle of all houses may condemn a design, but only this house's own leakage lets it
    pass.
    """
    if found.tested or compared.verdict != MEETS:
        return compared
    return replace(
        compared,
        verdict=NOT_CHECKED,
        note="The house's leakage is not known yet; figured with that of a middling US house. "
        + compared.note,
        missing=HOUSE_UNKNOWN,
    )
