"""What each field of a structure follows from: the inputs that can move it, so that a finding can
say which of them nobody has entered.
"""

from __future__ import annotations

from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.rules.tracing.follows import (
    CROWN,
    HEARTH,
    ROOF,
    SECOND,
    SOLIDS,
    STACK,
    TO_LINER_TOP,
)
from fireplace_calc.rules.tracing.resting import Grounds

WIND = (
    *ROOF,
    *("roof.eaves_level", "site.grade", "site.altitude"),
    *(key for key in all_inputs() if key.startswith("loads.")),
)
STANDING = (*SOLIDS, *WIND)
HEAD = ("opening.width", "opening.head", "opening.rise")
STEEL = ("firebox.breast", *(key for key in all_inputs() if key.startswith("lintel.")))
TOP = (*HEARTH, *TO_LINER_TOP, CROWN)

GROUNDS = Grounds(
    follows={
        "arch": SOLIDS,
        "arch.none": HEAD[1:],
        "arch.ring": (*HEAD, "opening.standard_height", "opening.extension", "lintel.height"),
        "design.piece_set": ("pieces.set",),
        "design.seat.drawn": ("seat.left", "seat.right"),
        "design.seat.stretches": ("seat.left", "seat.right", "seat.niche"),
        "footing": SOLIDS,
        "footing.allowed": ("site.soil",),
        "footing.overturns": STANDING,
        "footing.projection": ("base.footing_projection",),
        "footing.supported": ("loads.support",),
        "footing.thickness": ("base.footing_thickness",),
        "footing.wind_known": ("site.wind", "loads.exposure"),
        "footing.wind_pressure": STANDING,
        "frame": (*SOLIDS, *ROOF),
        "frame.crown_top": TOP,
        "frame.hearth": HEARTH,
        "frame.liner_top": TOP,
        "frame.stack_depth": (*STACK, *SECOND),
        "frame.stack_half": (*STACK, *SECOND),
        "frame.uphill_contact": (*STACK, *SECOND, *ROOF),
        "lintel": (*SOLIDS, "loads.stone"),
        "lintel.bearing": ("lintel.bearing",),
        "lintel.clear": ("opening.width",),
        "lintel.deflection_limit": ("opening.width", "lintel.bearing"),
        "lintel.kind": ("lintel.material",),
        "lintel.least_bearing": ("lintel.material", "opening.width"),
        "lintel.none": HEAD[1:],
        "lintel.veneer_span": STEEL,
        "pack": (),
        "seismic_load": STANDING,
        "stack": STANDING,
        "steel": (*STACK, *SECOND, "anchorage.chimney_width", "anchorage.n_flues"),
        "weights": SOLIDS,
    },
    nested=frozenset({"arch", "footing", "frame", "lintel", "stack", "steel"}),
    taken=("ground.bearing_stratum",),
)
