"""Many designs round one: curves, the map of what limits where, sweeps, how far it can be raised, what mends it."""

from fireplace_calc.explore.curves import Curve, Step, face_curve, many, pressure_steps
from fireplace_calc.explore.limits import LIMITS, LimitMap, limit_map
from fireplace_calc.explore.sketch import Sketch, moved, sketch

__all__ = ["LIMITS", "Curve", "LimitMap", "Sketch", "Step", "face_curve", "limit_map", "many", "moved", "pressure_steps", "sketch"]
