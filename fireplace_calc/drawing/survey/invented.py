"""The fireplace on the blank sheets: invented, raised, and nobody's."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Geometry

RAISED_CHANGES = {
    "opening.extension": "8 in",
    "base.hearth_level": "10 in",
    "hearth.drop": "4 in",
    "hearth.thickness": "3 in",
    "firebox.depth": "24 in",
    "firebox.jamb": "14 in",
    "throat.damper_height": "12 in",
    "flue.sections": 7,
    "roof.ridge_level": "18 ft",
    "surround.trim": [
        {"name": "mantel", "distance": "12 in", "projection": "8 in"},
        {"name": "side trim", "place": "beside", "distance": "9 in", "projection": "2 in"},
    ],
}
"""An invented raised fireplace: what the sketches show."""


@lru_cache(maxsize=1)
def sketched() -> Geometry:
    """The fireplace on the sketches: invented, and nobody's."""
    return build_geometry(change(Design(), RAISED_CHANGES))
