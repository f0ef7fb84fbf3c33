"""Many designs round one: curves, the map of what limits where, sweeps, how far it can be raised,
what mends it.
"""

from fireplace_calc.explore.climate import grid, station_label, stations
from fireplace_calc.explore.curves import Curve, PressureStep, face_curve, many, pressure_steps
from fireplace_calc.explore.limits import LIMITS, LimitMap, limit_map
from fireplace_calc.explore.reach import Reach, Stop, how_far
from fireplace_calc.explore.remedies import Refused, Remedy, find_remedies, refused
from fireplace_calc.explore.sketches import Sketch, moved, sketch
from fireplace_calc.explore.weather_sweep import sweep
from fireplace_calc.explore.worked_figures import WorkedFigure, work_figures

__all__ = [
    "LIMITS",
    "Curve",
    "LimitMap",
    "Reach",
    "Refused",
    "Remedy",
    "Sketch",
    "PressureStep",
    "Stop",
    "WorkedFigure",
    "face_curve",
    "grid",
    "how_far",
    "limit_map",
    "many",
    "moved",
    "pressure_steps",
    "refused",
    "find_remedies",
    "sketch",
    "station_label",
    "stations",
    "sweep",
    "work_figures",
]
