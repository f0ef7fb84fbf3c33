"""Many designs round one: curves, the map of what limits where, sweeps, how far it can be raised,
what mends it.
"""

from fireplace_calc.explore.climate import grid, station_label, stations
from fireplace_calc.explore.curves import (
    Curve,
    PressureStep,
    face_curve,
    flow_paths,
    pressure_steps,
)
from fireplace_calc.explore.limits import LIMITS, LimitMap, limit_map
from fireplace_calc.explore.liners import LinerRaise, LinerTable, liner_raises
from fireplace_calc.explore.mending.locks import LOOKS
from fireplace_calc.explore.mending.remedies import find_remedies, rejected_remedies
from fireplace_calc.explore.mending.remedy import RejectedRemedy, Remedy
from fireplace_calc.explore.raising import HighestRaise, RaiseStop, highest_raise
from fireplace_calc.explore.sketches import Sketch, sketch, try_change
from fireplace_calc.explore.together.combined import find_combinations
from fireplace_calc.explore.weather_sweep import sweep
from fireplace_calc.explore.worked_figures import WorkedFigure, work_figures

__all__ = [
    "LIMITS",
    "LOOKS",
    "Curve",
    "LimitMap",
    "LinerRaise",
    "LinerTable",
    "HighestRaise",
    "RejectedRemedy",
    "Remedy",
    "Sketch",
    "PressureStep",
    "RaiseStop",
    "WorkedFigure",
    "face_curve",
    "grid",
    "highest_raise",
    "limit_map",
    "flow_paths",
    "try_change",
    "pressure_steps",
    "rejected_remedies",
    "find_combinations",
    "find_remedies",
    "liner_raises",
    "sketch",
    "station_label",
    "stations",
    "sweep",
    "work_figures",
]
