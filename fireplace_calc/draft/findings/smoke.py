"""Is the smoke carried off, evening by evening, and does the liner stay dry."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.findings.register import (
    EMBERS,
    HOUSE_UNKNOWN,
    MILD,
    OPERATING,
    OWN,
    PLUME,
    SIZING,
    WINDY,
    WINTER,
    judged,
    on_this_house,
)
from fireplace_calc.draft.physics.air import FREEZING
from fireplace_calc.draft.result import DraftResult, Tended
from fireplace_calc.draft.spillage import inward_velocity
from fireplace_calc.rules.comparing import NOT_CHECKED, Compared, at_least, not_applicable

HOTTEST = 623.15
"""Gas of an open fire goes up no hotter: 350 C, what masonry chimneys for them are made for in
Sweden (trade note). [K]
"""


CROSS_DRAFT = (
    "Asked against a draft across the room, more than the fire's own plume takes; authors ask from"
    " 0.33 to 0.80 ft/s (0.10 to 0.24 m/s)."
)


SHUT = "Glass doors shut; speed through their inlet."


def _carries(found: DraftResult, case: int, opened: Tended | None = None) -> Compared:
    """As the evening settled, or with glass doors open."""
    flows, spills = opened or (found.flows, found.spills)
    capture = float(spills.capture[case])
    if flows.stalled[case]:
        return at_least(0.0, capture, "No steady flow carries this fire away.")
    foot = float(flows.foot[case])
    note = (
        f"Gas of {foot - FREEZING:.0f} °C would go up, and no open fire's is over 350 °C: check the"
        " burn rate."
        if foot > HOTTEST
        else ""
    )
    if found.shut and not opened:
        note = f"{SHUT} {note}".rstrip()
        if foot > HOTTEST:
            return Compared(NOT_CHECKED, None, capture, f"{note} Or the inlet is too small.")
    elif capture <= inward_velocity(np.asarray(found.fire.burn)[case]) * (1 + LIMIT_SLACK):
        note = f"{CROSS_DRAFT} {note}".rstrip()
    return on_this_house(found, at_least(float(flows.face[case]), capture, note))


@judged(
    "DRF-01",
    SIZING,
    "Face velocity the flue is sized for",
    "ft/s",
    coefficients()["face velocity"].source,
)
def sized_face(found: DraftResult) -> Compared:
    """Room air that moves in slower than this lets smoke roll out under the lintel."""
    return at_least(found.sizing_velocity, coefficient("face velocity"))


@judged("DRF-02", OPERATING, "Smoke carried off, mild evening", "ft/s", PLUME)
def carried_mild(found: DraftResult) -> Compared:
    """The flue must take what the fire drives up, and enough that nobody walking past pulls smoke
    out. On a mild evening it pulls least.
    """
    return _carries(found, MILD)


@judged("DRF-12", OPERATING, "Smoke carried off with the doors open, mild evening", "ft/s", PLUME)
def carried_tended(found: DraftResult) -> Compared:
    """Glass doors are opened to lay on wood, and then the flue must carry the smoke of the whole
    opening.
    """
    if not found.shut:
        return not_applicable("No glass doors are told.")
    return _carries(found, MILD, found.tended)


@judged("DRF-03", OPERATING, "Smoke carried off, winter evening", "ft/s", PLUME)
def carried_winter(found: DraftResult) -> Compared:
    """In the cold the flue pulls best; now the leaks of the house set the limit."""
    return _carries(found, WINTER)


@judged("DRF-04", OPERATING, "Smoke carried off while the fire dies down", "ft/s", PLUME)
def carried_embers(found: DraftResult) -> Compared:
    """Embers give little heat and much carbon monoxide, and nobody is watching any more."""
    return _carries(found, EMBERS)


@judged("DRF-10", OPERATING, "Liner above the smoke's dew point at the top", "K", OWN)
def dry_top(found: DraftResult) -> Compared:
    """Smoke that meets a cold liner wets it; frost and acid follow. Outside chimneys and wet wood
    suffer first.
    """
    over = found.linings - found.dew_points
    burning = [case for case in (WINTER, EMBERS) if not found.flows.stalled[case]]
    if WINTER not in burning:
        return Compared(
            NOT_CHECKED,
            note="No steady flow carries this fire away in winter.",
            missing=() if found.tested else HOUSE_UNKNOWN,
        )
    worst = min(burning, key=lambda case: float(over[case]))
    liner = f"{found.linings[worst] - FREEZING:.0f} °C"
    dew = f"{found.dew_points[worst] - FREEZING:.0f} °C"
    return at_least(
        float(over[worst]),
        0.0,
        f"Inside face {liner}, dew point {dew}, on the evening {CASES[worst]}. Any cold flue is wet"
        " for a while after lighting.",
    )


def _breeze(found: DraftResult) -> str:
    worst, best = found.wind_range
    return (
        f"Top taken as {found.wind_case}. There and on the walls of the house such a breeze may"
        f" help with {best:.0f} Pa or take {-worst:.0f} Pa away; the worst is figured."
    )


@judged(
    "DRF-11",
    OPERATING,
    "Smoke carried off against a breeze of 5 m/s, mild evening",
    "ft/s",
    PLUME,
)
def carried_in_wind(found: DraftResult) -> Compared:
    """Wind helps most tops, but not all the time. It presses on a top under the ridge, and in the
    lee it pulls at the room.
    """
    compared = _carries(found, WINDY)
    return Compared(
        compared.verdict,
        compared.provided,
        compared.required,
        " ".join((compared.note, _breeze(found))).strip(),
        compared.missing,
    )
