"""Will it draw? The physics of the smoke, from the room to the open air.

Two modes that are never mixed: *sizing* imposes the gas temperature, as handbooks size a flue;
*operating* is given a burn rate and finds flow and temperature. Every result says which it is.
"""

from __future__ import annotations

from fireplace_calc.draft.cases import fire, surroundings
from fireplace_calc.draft.conditions import BurningFire, Surroundings
from fireplace_calc.draft.findings import judgement
from fireplace_calc.draft.flow_path import DATUMS, FlowPath, trace_flow_path
from fireplace_calc.draft.odds import Odds, smoke_odds
from fireplace_calc.draft.operating import Flow, settle
from fireplace_calc.draft.physics.weather import roof_wind, wind_range
from fireplace_calc.draft.result import MODES, DraftResult, draft_result, draft_results
from fireplace_calc.draft.sizing import (
    face_velocity,
    gravity_flow,
    round_flue_for,
    theoretical_draft,
)
from fireplace_calc.draft.spillage import Spill, spill

__all__ = [
    "DATUMS",
    "MODES",
    "Surroundings",
    "BurningFire",
    "Flow",
    "Odds",
    "DraftResult",
    "FlowPath",
    "Spill",
    "surroundings",
    "face_velocity",
    "fire",
    "gravity_flow",
    "judgement",
    "roof_wind",
    "smoke_odds",
    "draft_result",
    "draft_results",
    "trace_flow_path",
    "round_flue_for",
    "settle",
    "spill",
    "theoretical_draft",
    "wind_range",
]
