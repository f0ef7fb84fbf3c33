"""What the air says of a design, as findings. Engineering judgement, not code: each rests on a
published figure and names it.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi, sqrt

import numpy as np

from fireplace_calc.base.tables import Source
from fireplace_calc.base.tables.canada import canada_round_flues
from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.base.units import SQIN
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.book import worst_first
from fireplace_calc.rules.comparing import MEETS, NOT_CHECKED, Compared, at_least, at_most
from fireplace_calc.rules.core import JUDGEMENT, Finding, Rule, filing

SIZING, OPERATING = "draft, sizing mode", "draft, operating mode"
WINTER, MILD, EMBERS, WINDY = range(len(CASES))
_OWN = Source("engineering judgement: worked out from first principles", "derived")
_PLUME = coefficients()["plume constant"].source

RULES: list[Rule[DraftResult]] = []
judged = filing(RULES)


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


def _house(found: DraftResult, compared: Compared) -> Compared:
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
    )


def _carries(found: DraftResult, case: int) -> Compared:
    if found.flows.stalled[case]:
        return at_least(
            0.0, float(found.spills.capture[case]), "No steady flow carries this fire away."
        )
    return _house(found, at_least(float(found.flows.face[case]), float(found.spills.capture[case])))


@judged("DRF-02", OPERATING, "Smoke carried off, mild evening", "ft/s", _PLUME)
def carried_mild(found: DraftResult) -> Compared:
    """The flue must take at least what the fire drives up. On a mild evening it pulls least."""
    return _carries(found, MILD)


@judged("DRF-03", OPERATING, "Smoke carried off, winter evening", "ft/s", _PLUME)
def carried_winter(found: DraftResult) -> Compared:
    """In the cold the flue pulls best; now the leaks of the house set the limit."""
    return _carries(found, WINTER)


@judged("DRF-04", OPERATING, "Smoke carried off while the fire dies down", "ft/s", _PLUME)
def carried_embers(found: DraftResult) -> Compared:
    """Embers give little heat and much carbon monoxide, and nobody is watching any more."""
    return _carries(found, EMBERS)


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
    worst = float(np.max(found.flows.pull - found.spills.stack))
    inlet = float(np.max(found.spills.inlet))
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
    return _house(found, at_most(worst, coefficient("depressurisation limit"), note))


@judged("DRF-06", OPERATING, "Draft before lighting, mild evening", "Pa", _OWN)
def lit_mild(found: DraftResult) -> Compared:
    """A flue that does not pull sends the first smoke into the room. Warm it first, fans off, a
    window open.
    """
    return _lit(found, 1)


@judged("DRF-07", OPERATING, "Draft before lighting, winter evening", "Pa", _OWN)
def lit_winter(found: DraftResult) -> Compared:
    """A chimney out in the cold holds cold air, while the warm house pulls at the hearth."""
    return _lit(found, 0)


def _lit(found: DraftResult, evening: int) -> Compared:
    excess = float(found.lighting.excess[evening])
    if abs(excess) < 1e-9:
        excess = 0.0
    hangs_on_leaks = np.any(found.lighting.fans) or np.any(found.surroundings.inlet)
    compared = at_least(excess, 0.0)
    return _house(found, compared) if hangs_on_leaks else compared


def _canada(found: DraftResult) -> tuple[float | None, float | None, str]:
    """Least and largest round flue of Canada's table for this opening and height, in m; and a word
    when there is none.
    """
    area, height = float(found.path.opening_area), float(found.path.height)
    for cell in canada_round_flues():
        lowest = cell.height_low <= height if cell.height_low == 3.0 else cell.height_low < height
        if area <= cell.opening_high + 1e-9 and lowest and height <= cell.height_high:
            if cell.flue_low is None:
                return (
                    None,
                    None,
                    (
                        "Canada's table has a dash here: no flue suits so large an "
                        "opening and so low a chimney."
                    ),
                )
            return cell.flue_low, cell.flue_high, ""
    return None, None, "Outside Canada's round-flue table (opening to 2.2 m², chimney 3 to 12 m)."


def _as_round(found: DraftResult) -> float:
    return sqrt(4 * float(found.path.flue_area) / pi)


_NOTE = (
    "Round flue of the same area against Canada's table; where that table counts the height from"
    " was not read."
)
_TABLE = canada_round_flues()[0].source


@judged("DRF-08", SIZING, "Flue large enough for the opening, by Canada's table", "in", _TABLE)
def large_enough(found: DraftResult) -> Compared:
    """Too small a flue cannot take what the opening lets in."""
    least, _, word = _canada(found)
    return (
        Compared(NOT_CHECKED, note=word)
        if least is None
        else at_least(_as_round(found), least, _NOTE)
    )


@judged(
    "DRF-09",
    SIZING,
    "Flue not too large for the opening, by Canada's table",
    "in",
    _TABLE,
    over=True,
)
def not_too_large(found: DraftResult) -> Compared:
    """Too large a flue stays cold: air falls down one side while smoke climbs the other."""
    _, most, word = _canada(found)
    return (
        Compared(NOT_CHECKED, note=word) if most is None else at_most(_as_round(found), most, _NOTE)
    )


@judged("DRF-10", OPERATING, "Flue gas above its dew point at the top, winter", "K", _OWN)
def dry_top(found: DraftResult) -> Compared:
    """Gas that condenses in a cold flue wets the liner; frost and acid follow. Outside chimneys
    suffer first.
    """
    if found.flows.stalled[WINTER]:
        return Compared(NOT_CHECKED, note="No steady flow carries this fire away in winter.")
    return at_least(float(found.flows.top[WINTER] - found.dew_points[WINTER]), 0.0)


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
    _PLUME,
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
    )
