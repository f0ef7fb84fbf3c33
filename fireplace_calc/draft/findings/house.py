"""What house and fans do to the draft, and a flue nobody has lit."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.base.units import SQIN
from fireplace_calc.draft.conditions import RUNAWAY
from fireplace_calc.draft.findings.register import OPERATING, OWN, judged, on_this_house
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.comparing import FALLS_SHORT, Compared, at_least, at_most

_NO_HOUSE = (
    "Fans as strong and leaks as few as told do not go together: no fan of a house pulls so hard."
    " Check exhaust fans and air changes at 50 Pa."
)
LARGEST_INLET = 55 * SQIN
"""Past this the American house code stops an inlet (R1006.4, as its check AIR-07 has it). [m2]"""


@judged(
    "DRF-05",
    OPERATING,
    "Suction in the room with the fans on",
    "Pa",
    coefficients()["depressurisation limit"].source,
    over=True,
)
def pulled(found: DraftResult) -> Compared:
    """A room under suction draws smoke and carbon monoxide out of the fire; an air inlet relieves
    it. What a warm house pulls by itself is not counted here.
    """
    states = [(found.flows, found.spills), *([found.tended] if found.shut and found.tended else [])]
    worst = max(float(np.max(flows.pull - spills.stack)) for flows, spills in states)
    inlet = max(float(np.max(spills.inlet)) for _, spills in states)
    note = (
        f"An outdoor air inlet of {inlet * 1e4:.0f} cm² ({inlet / SQIN:.0f} in²) free area would"
        " keep it there."
        if inlet > 5e-5
        else ""
    )
    if inlet > LARGEST_INLET:
        note += (
            " That is over the 55 in² some codes allow one inlet: use weaker fans, or "
            "give them air of their own."
        )
    if found.shut:
        note = f"Counted with the glass doors open and shut. {note}".rstrip()
    limit = coefficient("depressurisation limit")
    if worst > RUNAWAY:
        return Compared(FALLS_SHORT, f"over {RUNAWAY:.0f} Pa", limit, f"{_NO_HOUSE} {note}".strip())
    return on_this_house(found, at_most(worst, limit, note))


@judged("DRF-06", OPERATING, "Draft before lighting, mild evening", "Pa", OWN)
def lit_mild(found: DraftResult) -> Compared:
    """A flue that does not pull sends the first smoke into the room. Warm it first, fans off, a
    window open.
    """
    return _lit(found, 1)


@judged("DRF-07", OPERATING, "Draft before lighting, winter evening", "Pa", OWN)
def lit_winter(found: DraftResult) -> Compared:
    """A chimney out in the cold holds cold air, while the warm house pulls at the hearth."""
    return _lit(found, 0)


def _lit(found: DraftResult, evening: int) -> Compared:
    excess = float(found.lighting.excess[evening])
    if abs(excess) < 1e-9:
        excess = 0.0
    if excess < -RUNAWAY:
        return Compared(FALLS_SHORT, f"over {RUNAWAY:.0f} Pa against it", 0.0, _NO_HOUSE)
    hangs_on_leaks = np.any(found.lighting.fans) or np.any(found.surroundings.inlet)
    compared = at_least(excess, 0.0)
    return on_this_house(found, compared) if hangs_on_leaks else compared
