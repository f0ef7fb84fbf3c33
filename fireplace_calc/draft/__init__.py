"""Will it draw? The physics of the smoke, from the room to the open air.

Two modes that are never mixed: *sizing* imposes the gas temperature, as handbooks size a flue; *operating* is given a burn
rate and finds flow and temperature. Every result says which it is.
"""

from __future__ import annotations

from fireplace_calc.draft.findings import judgement
from fireplace_calc.draft.odds import Odds, odds
from fireplace_calc.draft.result import MODES, Outlook, around, fire, outlook, outlooks
from fireplace_calc.draft.flow_path import DATUMS, Path, path
from fireplace_calc.draft.operating import Around, Fire, Flow, settle
from fireplace_calc.draft.sizing import face_velocity, gravity_flow, round_flue_for, theoretical_draft
from fireplace_calc.draft.spillage import Spill, spill

__all__ = ["DATUMS", "MODES", "Around", "Fire", "Flow", "Odds", "Outlook", "Path", "Spill", "around", "face_velocity", "fire",
           "gravity_flow", "judgement", "odds", "outlook", "outlooks", "path", "round_flue_for", "settle", "spill", "theoretical_draft"]
