"""Faults that a mason makes: what was done, and which rules of each book it may break."""

from __future__ import annotations

from fireplace_calc.lessons.fault_records import Fault
from fireplace_calc.lessons.plants import (
    _air_passage,
    _damper,
    _smaller_flue,
    _stands_out,
    _too_near,
    _trim,
    by_steps,
    set_to,
)

FAULTS = (
    Fault(
        "Flue too small for the opening",
        "opening-and-flue",
        ("FLU-10", "FLU-11", "FLU-12", "FLU-13", "CA-006", "UK-001", "UK-004"),
        _smaller_flue,
    ),
    Fault("Damper's free area smaller than the flue", "opening-and-flue", ("THR-03",), _damper),
    Fault(
        "Flue leans too far",
        "opening-and-flue",
        ("FLU-06", "CA-004"),
        by_steps("flue.offset_rise", -2, -3),
    ),
    Fault(
        "Gap around the liner too wide",
        "opening-and-flue",
        ("FLU-07",),
        by_steps("chimney.gap", 0.25, 0.5),
    ),
    Fault(
        "Throat too narrow, front to back",
        "opening-and-flue",
        ("THR-02",),
        by_steps("throat.depth", -0.5),
    ),
    Fault(
        "Throat too low, shallow type",
        "opening-and-flue",
        ("THR-05",),
        by_steps("throat.height", -1),
    ),
    Fault(
        "Chimney too low over the roof",
        "height-over-the-roof",
        ("ROF-01", "ROF-02", "CA-019", "CA-020", "UK-007", "UK-008", "UK-010", "UK-011"),
        by_steps("flue.sections", -1),
    ),
    Fault("Flat crown", "height-over-the-roof", ("ROF-03",), set_to(chimney__wash="0 in")),
    Fault(
        "Liner level with the crown",
        "height-over-the-roof",
        ("FLU-05", "CA-016", "UK-032"),
        set_to(chimney__liner_above="0 in"),
    ),
    Fault(
        "Cricket too low",
        "height-over-the-roof",
        ("ROF-09",),
        by_steps("roof.cricket_height", -1, -2),
    ),
    Fault(
        "Chimney wall too thin",
        "clearances-and-mantel",
        ("CHM-07", "CA-026", "UK-027"),
        by_steps("chimney.wall", -0.5, -1),
    ),
    Fault(
        "Mantel piece too near the opening",
        "clearances-and-mantel",
        ("CLR-07", "CA-061"),
        _trim(_too_near),
    ),
    Fault(
        "Mantel projects too far", "clearances-and-mantel", ("CLR-08", "CA-062"), _trim(_stands_out)
    ),
    Fault(
        "Framing too near in front",
        "clearances-and-mantel",
        ("CLR-01",),
        by_steps("clearance.front", -0.5, -1),
    ),
    Fault(
        "Framing too near beside",
        "clearances-and-mantel",
        ("CLR-01", "CA-064", "CA-065"),
        by_steps("clearance.side", -0.5, -1),
    ),
    Fault(
        "Framing too near behind",
        "clearances-and-mantel",
        ("CLR-02", "CA-064", "CA-065"),
        by_steps("clearance.back", -0.5, -1),
    ),
    Fault(
        "Framing too near the chimney",
        "clearances-and-mantel",
        ("CLR-20", "CLR-21", "CA-031", "CA-032"),
        by_steps("clearance.chimney", -0.5),
    ),
    Fault(
        "Firebox wall too thin",
        "clearances-and-mantel",
        ("FBX-01", "FBX-02", "CA-046", "UK-050"),
        by_steps("firebox.wall", -0.5, -1),
    ),
    Fault(
        "Hearth too short in front",
        "hearths",
        ("HTH-05", "HTH-07", "CA-050", "CA-052", "CA-053", "UK-045"),
        by_steps("hearth.front", -1, -1.5),
    ),
    Fault(
        "Hearth too narrow beside",
        "hearths",
        ("HTH-06", "HTH-08", "CA-051"),
        by_steps("hearth.side", -1, -1.5),
    ),
    Fault(
        "Hearth too thin under the fire",
        "hearths",
        ("HTH-02", "CA-054", "UK-042"),
        by_steps("base.slab", -0.5, -1),
    ),
    Fault(
        "Hearth extension too thin",
        "hearths",
        ("HTH-03", "HTH-04"),
        by_steps("hearth.thickness", -0.25),
    ),
    Fault(
        "Firebox too shallow",
        "draft-house-weather",
        ("FBX-09", "FBX-10", "CA-049"),
        by_steps("firebox.depth", -0.5, -1),
    ),
    Fault("Lintel bearing too short", "", ("LIN-01",), by_steps("lintel.bearing", -0.5, -1)),
    Fault("Lintel that burns", "", ("LIN-02", "CA-037"), set_to(lintel__material="timber")),
    Fault("Footing too thin", "", ("FND-01",), by_steps("base.footing_thickness", -1, -2)),
    Fault(
        "Footing projection too small",
        "",
        ("FND-02",),
        by_steps("base.footing_projection", -1),
    ),
    Fault(
        "Smoke chamber wall too thin",
        "smoke-chamber",
        ("SMK-01", "SMK-02", "CA-059", "CA-060"),
        by_steps("smoke_chamber.wall", -0.5, -1),
    ),
    Fault(
        "Smoke chamber lining too thin",
        "smoke-chamber",
        ("SMK-03",),
        by_steps("smoke_chamber.lining_thickness", -0.25),
    ),
    Fault(
        "Smoke chamber too tall",
        "smoke-chamber",
        ("SMK-04",),
        by_steps("smoke_chamber.height", 1, 2),
    ),
    Fault(
        "Smoke chamber leans too far",
        "smoke-chamber",
        ("SMK-05", "CA-058"),
        by_steps("smoke_chamber.height", -1, -2),
    ),
    Fault(
        "Air passage of the wrong size",
        "draft-house-weather",
        ("AIR-07", "CA-040", "UK-035"),
        _air_passage,
    ),
    Fault(
        "Joints between firebricks too wide",
        "",
        ("FBX-04",),
        by_steps("firebox.joint", 0.125, 0.25),
    ),
)
"""What can be planted. One more bears ``since``, a number higher than any that was handed out."""
