"""What is measured on site, to be used in place of what is drawn."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import length, quantity


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Measured(Record):
    """Figures taken on site; where one is given, the checks use it and not the drawing's own."""

    opening_area: float | None = quantity(
        "area", "Measured opening area", None, "50 in2", "10000 in2", "Clear.", "opening_area"
    )
    throat_area: float | None = quantity(
        "area", "Measured throat area", None, "1 in2", "4000 in2", "Free.", "throat_area"
    )
    passage: float | None = quantity(
        "area",
        "Measured least smoke chamber section",
        None,
        "1 in2",
        "4000 in2",
        "Free.",
        "smoke_chamber_min_section",
    )
    flue_area: float | None = quantity(
        "area", "Measured flue area", None, "1 in2", "4000 in2", "Net.", "flue_net_area"
    )
    chamber_slope: float | None = quantity(
        "angle",
        "Measured smoke chamber slope",
        None,
        "0 deg",
        "89 deg",
        "From the vertical, at the face that leans most.",
        "smoke_chamber_slope_from_vertical",
    )
    corbel: float | None = length(
        "Measured corbel step",
        None,
        "0 in",
        "12 in",
        "Of one course; of the chimney too, unless its own is told.",
        "corbel_per_course",
    )
    hearth_thickness: float | None = length(
        "Measured hearth thickness", None, "0 in", "36 in", "Under the fire.", "hearth_thickness"
    )
    liner_slope: float | None = quantity(
        "angle",
        "Measured liner slope",
        None,
        "0 deg",
        "89 deg",
        "From the vertical.",
        "liner_slope_from_vertical",
    )
    chimney_height: float | None = length(
        "Measured chimney height",
        None,
        "1 ft",
        "120 ft",
        "Firebox floor to the top of the flue.",
        "chimney_height",
    )
    over_contact: float | None = length(
        "Measured height over the roof",
        None,
        "-60 ft",
        "120 ft",
        "At the highest contact.",
        "chimney_top_above_highest_roof_contact",
    )
    over_nearby: float | None = length(
        "Measured height over the building",
        None,
        "-60 ft",
        "120 ft",
        "Over anything within reach.",
        "chimney_top_above_building_within_10ft",
    )
    along_ridge: float | None = length(
        "Measured chimney along the ridge",
        None,
        "4 in",
        "240 in",
        "Outside masonry.",
        "chimney_dim_parallel_ridge",
    )
