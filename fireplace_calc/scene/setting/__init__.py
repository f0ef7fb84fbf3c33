"""The room and its furniture: what only stands there, so that a fireplace can be judged."""

from fireplace_calc.scene.setting.furnished import room_measures, setting

__all__ = ["room_measures", "setting"]
