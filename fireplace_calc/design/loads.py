"""Ground, bars and anchors, and the loads a structure is held against.

Nearly all of it is unknown until somebody has looked, and then it is *not checked*. Names are those
of the code tables.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, count, length, quantity, yes_no


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Ground(Record):
    """What the footing stands on and is made of."""

    own_footing: bool | None = yes_no(
        "Chimney on its own footing", False, "Apart from the fireplace's."
    )
    bearing_stratum: str | None = choice(
        "Under the footing",
        None,
        ("undisturbed soil", "engineered fill", "approved fill", "other"),
        "What it bears on.",
        "bearing_stratum",
    )
    footing_depth_below_finished_grade: float | None = length(
        "Footing below finished grade",
        None,
        "-24 in",
        "240 in",
        "To its top; unknown takes the drawing's.",
        "footing_depth_below_finished_grade",
    )
    footing_depth_below_undisturbed_ground: float | None = length(
        "Footing below old ground",
        None,
        "-24 in",
        "240 in",
        "To its underside.",
        "footing_depth_below_undisturbed_ground",
    )
    frost_protection_method: str | None = choice(
        "Frost protection",
        None,
        ("below frost line", "frost protected shallow R403.3", "ASCE 32", "solid rock", "none"),
        "How frost is kept off.",
        "frost_protection_method",
    )
    footing_contact_pressure: float | None = quantity(
        "bearing",
        "Footing pressure",
        None,
        "1 psf",
        "50000 psf",
        "On the ground, all loads; unknown takes the weight as drawn.",
        "footing_contact_pressure",
    )
    soil_bearing_assumed: float | None = quantity(
        "bearing",
        "Soil bearing assumed",
        None,
        "100 psf",
        "50000 psf",
        "Where the official expects weak soil.",
        "soil_bearing_assumed",
    )
    footing_bottom_slope: float | None = quantity(
        "ratio",
        "Slope of the footing's underside",
        None,
        "0",
        "1",
        "Rise over run.",
        "footing_bottom_slope",
    )
    reinforced: bool | None = yes_no("Footing reinforced", None, "Bars in the footing.")
    rebar_cover_earth: float | None = length(
        "Bar cover against earth",
        None,
        "0 in",
        "12 in",
        "Cast against the ground.",
        "rebar_cover_earth",
    )
    concrete_fc: float | None = quantity(
        "strength", "Concrete strength", None, "500 psi", "12000 psi", "At 28 days.", "concrete_fc"
    )
    ash_dump: bool | None = yes_no(
        "Ash dump", None, "With a clean-out door in the foundation wall."
    )
    ash_cleanout_door_material: str | None = choice(
        "Ash clean-out door",
        None,
        ("ferrous metal", "masonry", "other"),
        "Made of.",
        "ash_cleanout_door_material",
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Anchorage(Record):
    """Bars, ties and straps against earthquake."""

    chimney_reinforced: bool | None = yes_no(
        "Chimney reinforced and anchored",
        None,
        "As the code asks in its category.",
        "chimney_reinforced",
    )
    chimney_width: float | None = length(
        "Chimney width",
        None,
        "8 in",
        "400 in",
        "Longer side; unknown takes the drawing's.",
        "chimney_width",
    )
    n_flues: int | None = count(
        "Flues in the chimney", 1, 1, 12, "This one counted in.", "n_flues", optional=True
    )
    vertical_bars_no4: int | None = count(
        "Vertical bars No. 4", None, 0, 60, "Continuous, grouted.", "vertical_bars_no4"
    )
    tie_diameter: float | None = length(
        "Tie diameter", None, "1/16 in", "1 in", "Horizontal ties.", "tie_diameter"
    )
    tie_spacing_vertical: float | None = length(
        "Tie spacing", None, "1 in", "96 in", "Up the chimney.", "tie_spacing_vertical"
    )
    bars_bend: bool | None = yes_no("Vertical bars bend", None, "Where the chimney changes width.")
    ties_per_bend: int | None = count(
        "Ties at each bend", None, 0, 12, "Where vertical bars bend.", "ties_per_bend"
    )
    level_above_grade: float | None = length(
        "Highest floor, ceiling or roof line",
        None,
        "0 ft",
        "120 ft",
        "Above grade at the chimney; unknown takes ceiling or roof as drawn, the higher.",
        "level_above_grade",
    )
    anchor_at_level: bool | None = yes_no(
        "Anchored at each level", None, "Over 6 ft above grade.", "anchor_at_level"
    )
    strap_count: int | None = count(
        "Straps at each level", None, 0, 12, "3/16 by 1 in.", "strap_count"
    )
    strap_embedment: float | None = length(
        "Strap embedment", None, "0 in", "96 in", "Into the chimney.", "strap_embedment"
    )
    strap_hook_extension: float | None = length(
        "Strap beyond its hook", None, "0 in", "48 in", "Past the bend.", "strap_hook_extension"
    )
    joists_per_strap: int | None = count(
        "Joists to each strap", None, 0, 20, "Fastened across.", "joists_per_strap"
    )
    bolts_half_inch_per_strap: int | None = count(
        "Bolts to each strap", None, 0, 12, "1/2 in.", "bolts_half_inch_per_strap"
    )
    steel_framing: bool | None = yes_no(
        "Framing of cold-formed steel", False, "What the straps are fastened to."
    )
    plate_side: float | None = length(
        "Anchor plate side", None, "0 in", "24 in", "On steel framing.", "plate_side"
    )
    plate_thickness: float | None = length(
        "Anchor plate thickness", None, "0.01 in", "2 in", "On steel framing.", "plate_thickness"
    )
    no6_screws_per_bolt: int | None = count(
        "No. 6 screws to each bolt", None, 0, 40, "On steel framing.", "no6_screws_per_bolt"
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Loads(Record):
    """What pushes, shakes and carries it; only a structural answer asks."""

    exposure: str | None = choice(
        "Wind exposure",
        None,
        ("B", "C", "D"),
        "B built up or wooded, C open country, D along water.",
    )
    hill: str = choice(
        "Ground", "flat", ("flat", "ridge", "escarpment", "hill"), "Wind speeds up toward a crest."
    )
    hill_height: float | None = length(
        "Hill height", None, "5 ft", "3000 ft", "Crest over the ground before it."
    )
    hill_length: float | None = length(
        "Hill half length",
        None,
        "5 ft",
        "10000 ft",
        "Level, from the crest down to half its height.",
    )
    hill_distance: float | None = length("House from the crest", None, "0 ft", "20000 ft", "Level.")
    hill_behind: bool | None = yes_no(
        "House on the high side",
        None,
        "Behind the crest of an escarpment; unknown is taken so, which is more wind.",
    )
    wind_map: str = choice(
        "Wind speed read from",
        "ultimate",
        ("ultimate", "allowable"),
        "Maps of 2010 and later are ultimate; the older ones are not.",
    )
    sds: float | None = quantity(
        "ratio", "Design spectral response", None, "0", "4", "SDS, short periods, over gravity."
    )
    support: float | None = length(
        "Last sideways support",
        None,
        "0 ft",
        "120 ft",
        "Level of the highest tie that really holds the chimney; unknown counts as none.",
    )
    mortar: str | None = choice(
        "Chimney mortar",
        None,
        ("M or S", "N", "M or S, masonry cement", "N, masonry cement"),
        "Portland cement and lime, unless it says masonry cement.",
    )
    masonry_strength: float | None = quantity(
        "strength",
        "Masonry strength",
        None,
        "250 psi",
        "12000 psi",
        "f'm: of chimney and lintel masonry as built, brick and mortar together, not of a brick.",
    )
    building_width: float | None = length(
        "Building width", None, "6 ft", "400 ft", "Square to the wind.", "building_width"
    )
    in_triangle: bool | None = yes_no(
        "Load over the lintel", None, "A floor or beam bears within the triangle over the opening."
    )
    floor_over_head: float | None = quantity(
        "force",
        "Floor load over the opening",
        None,
        "0 lbf",
        "50000 lbf",
        "All that a floor brings within the span, taken as even. Counts while a load bears there.",
    )
    beam_over_head: float | None = quantity(
        "force",
        "Beam load over the opening",
        None,
        "0 lbf",
        "50000 lbf",
        "What a beam brings, taken where it is worst. Counts while a load bears there.",
    )
    stone: str | None = choice(
        "Lintel stone",
        None,
        (
            "limestone, low density",
            "limestone, medium density",
            "limestone, high density",
            "granite",
            "marble",
            "quartz sandstone",
            "quartzitic sandstone",
            "quartzite",
        ),
        "For a stone lintel.",
    )
