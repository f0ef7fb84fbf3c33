"""What no drawing shows but a code asks: ground, bars and anchors, the stack's details, and the air
for the fire.

Nearly all of it is unknown until somebody has looked, and then it is *not checked*. Names are those
of the code tables.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.inputs import Input, choice, count, length, quantity, yes_no


def _len(name: str, label: str, low: str, high: str, help: str) -> Input:
    return length(label, None, low, high, help, name)


@dataclass(frozen=True, slots=True)
class Ground:
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
    footing_depth_below_finished_grade: float | None = _len(
        "footing_depth_below_finished_grade",
        "Footing below finished grade",
        "-24 in",
        "240 in",
        "To its top; unknown takes the drawing's.",
    )
    footing_depth_below_undisturbed_ground: float | None = _len(
        "footing_depth_below_undisturbed_ground",
        "Footing below old ground",
        "-24 in",
        "240 in",
        "To its underside.",
    )
    frost_protection_method: str | None = choice(
        "Frost protection",
        None,
        ("below frost line", "frost protected shallow R403.3", "ASCE 32", "solid rock", "none"),
        "How frost is kept off.",
        "frost_protection_method",
    )
    footing_contact_pressure: float | None = quantity(
        "pressure",
        "Footing pressure",
        None,
        "1 psf",
        "50000 psf",
        "On the ground, all loads; unknown takes the weight as drawn.",
        "footing_contact_pressure",
    )
    soil_bearing_assumed: float | None = quantity(
        "pressure",
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
    rebar_cover_earth: float | None = _len(
        "rebar_cover_earth", "Bar cover against earth", "0 in", "12 in", "Cast against the ground."
    )
    concrete_fc: float | None = quantity(
        "pressure", "Concrete strength", None, "500 psi", "12000 psi", "At 28 days.", "concrete_fc"
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


@dataclass(frozen=True, slots=True)
class Anchorage:
    """Bars, ties and straps against earthquake."""

    chimney_reinforced: bool | None = yes_no(
        "Chimney reinforced and anchored",
        None,
        "As the code asks in its category.",
        "chimney_reinforced",
    )
    chimney_width: float | None = _len(
        "chimney_width",
        "Chimney width",
        "8 in",
        "400 in",
        "Longer side; unknown takes the drawing's.",
    )
    n_flues: int | None = count(
        "Flues in the chimney", 1, 1, 12, "This one counted in.", "n_flues", optional=True
    )
    vertical_bars_no4: int | None = count(
        "Vertical bars No. 4", None, 0, 60, "Continuous, grouted.", "vertical_bars_no4"
    )
    tie_diameter: float | None = _len(
        "tie_diameter", "Tie diameter", "1/16 in", "1 in", "Horizontal ties."
    )
    tie_spacing_vertical: float | None = _len(
        "tie_spacing_vertical", "Tie spacing", "1 in", "96 in", "Up the chimney."
    )
    bars_bend: bool | None = yes_no("Vertical bars bend", None, "Where the chimney changes width.")
    ties_per_bend: int | None = count(
        "Ties at each bend", None, 0, 12, "Where vertical bars bend.", "ties_per_bend"
    )
    level_above_grade: float | None = _len(
        "level_above_grade",
        "Highest floor, ceiling or roof line",
        "0 ft",
        "120 ft",
        "Above grade at the chimney; unknown takes ceiling or roof as drawn, the higher.",
    )
    anchor_at_level: bool | None = yes_no(
        "Anchored at each level", None, "Over 6 ft above grade.", "anchor_at_level"
    )
    strap_count: int | None = count(
        "Straps at each level", None, 0, 12, "3/16 by 1 in.", "strap_count"
    )
    strap_embedment: float | None = _len(
        "strap_embedment", "Strap embedment", "0 in", "96 in", "Into the chimney."
    )
    strap_hook_extension: float | None = _len(
        "strap_hook_extension", "Strap beyond its hook", "0 in", "48 in", "Past the bend."
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
    plate_side: float | None = _len(
        "plate_side", "Anchor plate side", "0 in", "24 in", "On steel framing."
    )
    plate_thickness: float | None = _len(
        "plate_thickness", "Anchor plate thickness", "0.01 in", "2 in", "On steel framing."
    )
    no6_screws_per_bolt: int | None = count(
        "No. 6 screws to each bolt", None, 0, 40, "On steel framing.", "no6_screws_per_bolt"
    )


@dataclass(frozen=True, slots=True)
class Stack:
    """Details of the chimney that the clauses ask about."""

    corbelled: bool | None = yes_no("Chimney corbelled", False, "Out from a wall or foundation.")
    corbel_total: float | None = _len(
        "corbel_total", "Corbel, total", "0 in", "96 in", "Out from wall or foundation."
    )
    upper_storey: bool | None = yes_no(
        "Corbel on an upper storey's outside", False, "Of a two-storey house."
    )
    one_sided: bool | None = yes_no("Corbel on one side only", None, "Of the wall that carries it.")
    supporting_wall_thickness: float | None = _len(
        "supporting_wall_thickness", "Wall under the corbel", "1 in", "48 in", "Thickness."
    )
    unit_bed_depth: float | None = _len(
        "unit_bed_depth",
        "Bed depth of the corbelled unit",
        "1 in",
        "16 in",
        "Actual; unknown takes the smoke chamber's unit.",
    )
    changes: bool | None = yes_no("Wall or liner changes size or shape", None, "On its way up.")
    distance_change_to_penetration: float | None = _len(
        "distance_change_to_penetration",
        "Change to next floor, ceiling or roof",
        "0 in",
        "240 in",
        "Level distance, up or down.",
    )
    offset_carried: bool | None = yes_no(
        "Offset carried by masonry below", None, "In an approved way."
    )
    imposed_load_on_chimney: float | None = quantity(
        "force",
        "Load put on the chimney",
        None,
        "0 lbf",
        "100000 lbf",
        "By beams or floors.",
        "imposed_load_on_chimney",
    )
    designed_for_load: bool | None = yes_no(
        "Designed for that load", False, "Or part of a masonry or concrete wall."
    )
    wythe_between_flues: float | None = _len(
        "wythe_between_flues", "Masonry between flues", "0 in", "48 in", "Bonded into the walls."
    )
    one_appliance: bool | None = yes_no(
        "Adjoining flues serve one appliance", False, "Then the liners may touch."
    )
    liner_joint_stagger: float | None = _len(
        "liner_joint_stagger", "Stagger of liner joints", "0 in", "48 in", "Of touching liners."
    )
    connector: bool | None = yes_no("Appliance connected to the flue", False, "By a connector.")
    inlet_side: str | None = choice(
        "Connector enters from", None, ("side", "other"), "Of the chimney.", "inlet_side"
    )
    thimble_material: str | None = choice(
        "Thimble",
        None,
        ("fireclay", "refractory", "metal", "other"),
        "Made of.",
        "thimble_material",
    )
    cleaned_through_opening: bool | None = yes_no(
        "Flue cleaned through the opening", True, "Then it needs no clean-out."
    )
    cleanout_to_flue_base: float | None = _len(
        "cleanout_to_flue_base", "Clean-out to flue base", "0 in", "96 in", "To it."
    )
    lowest_inlet_minus_cleanout_top: float | None = _len(
        "lowest_inlet_minus_cleanout_top", "Clean-out below inlet", "-96 in", "480 in", "Its top."
    )
    cleanout_height: float | None = _len(
        "cleanout_height", "Clean-out height", "0 in", "48 in", "Of the opening."
    )
    veneer_on_frame: bool | None = yes_no(
        "Veneer on a framed chimney", False, "Not a masonry chimney at all."
    )
    through_flashing: bool | None = yes_no(
        "Through flashing", None, "Behind the veneer.", "through_flashing"
    )
    weep_holes: bool | None = yes_no("Weep holes", None, "In the veneer.", "weep_holes")


@dataclass(frozen=True, slots=True)
class Air:
    """Outdoor air for the fire."""

    exterior_air_supply: bool | None = yes_no(
        "Outdoor air supply", None, "For the fire.", "exterior_air_supply"
    )
    pressure_held: bool | None = yes_no(
        "Room kept at neutral or positive pressure", False, "By mechanical ventilation."
    )
    listed_duct: bool | None = yes_no("Listed duct", None, "Tested as a unit.")
    duct_per_listing: bool | None = yes_no(
        "Duct as its listing says", None, "Installed so.", "duct_per_listing"
    )
    intake_location: str | None = choice(
        "Air intake",
        None,
        ("outdoors", "crawl space", "attic", "garage", "basement"),
        "From where.",
        "intake_location",
    )
    intake_elevation: float | None = _len(
        "intake_elevation", "Air intake level", "-40 ft", "80 ft", "Above the finished floor."
    )
    intake_screen_mesh: float | None = _len(
        "intake_screen_mesh", "Air intake mesh", "1/16 in", "2 in", "Corrosion resistant."
    )
    near_outlet: bool | None = yes_no(
        "Duct within 5 ft of its outlet", True, "Some of it always is."
    )
    duct_clearance: float | None = _len(
        "duct_clearance", "Air round the duct", "0 in", "24 in", "To anything that burns."
    )
    outlet_place: str | None = choice(
        "Air outlet", None, ("firebox", "hearth"), "In the firebox, or at hearth level outside it."
    )
    outlet_distance_to_opening: float | None = _len(
        "outlet_distance_to_opening", "Air outlet to opening", "0 in", "240 in", "Level."
    )
    outlet_closable: bool | None = yes_no(
        "Air outlet can be closed", None, "From the room.", "outlet_closable"
    )
    ember_guard: bool | None = yes_no(
        "Air outlet holds embers back", None, "So none falls into the duct.", "ember_guard"
    )
    tight_damper_or_doors: bool | None = yes_no(
        "Tight damper or doors", None, "Energy chapter.", "tight_damper_or_doors"
    )
    other_intake: bool | None = yes_no(
        "Another outdoor air intake near the chimney", None, "Of the house's ventilation."
    )
    intake_to_chimney_distance: float | None = _len(
        "intake_to_chimney_distance", "That intake to the chimney", "0 ft", "200 ft", "Level."
    )
    intake_below_outlet: float | None = _len(
        "intake_below_outlet", "That intake below the chimney top", "-40 ft", "120 ft", "Height."
    )


@dataclass(frozen=True, slots=True)
class Abroad:
    """What only the Canadian and the British books ask."""

    braced: bool | None = yes_no("Chimney braced sideways", None, "Against wind, by design.")
    liner_mortar: bool | None = yes_no(
        "Liner joints in heat-resistant mortar", None, "All of them."
    )
    firebrick_mortar: bool | None = yes_no(
        "Firebrick in high-temperature mortar", None, "All of it."
    )
    joints_offset: bool | None = yes_no(
        "Lining joints offset from the backing's", None, "So that none runs through."
    )
    liners_held: bool | None = yes_no(
        "Liners held from moving sideways", None, "Where there are several."
    )
    gap_closed: bool | None = yes_no(
        "Gap round the chimney closed at top or bottom", None, "With something that cannot burn."
    )
    damper_covers: bool | None = yes_no("Damper covers the whole throat", None, "When it is shut.")
    soot_door: bool | None = yes_no("Tight soot door at the foot of the flue", None, "Of metal.")
    cleanout_clearance: float | None = length(
        "Soot door to combustibles", None, "0 mm", "2000 mm", "Clear."
    )
    flooring_clearance: float | None = length(
        "Flooring and ceiling to chimney", None, "0 mm", "1000 mm", "Combustible finishes."
    )
    joist_masonry: float | None = length(
        "Masonry between joist ends and flue", None, "0 mm", "1000 mm", "At the flue."
    )
    joists_on_wall: bool | None = yes_no("Joists rest on the flue's wall", None, "Or beams.")
    metal_clearance: float | None = length(
        "Bare metal to combustibles", None, "0 mm", "1000 mm", "Metal that shows in the room."
    )
    slab_edge: float | None = length(
        "Free edge of the hearth slab", None, "0 mm", "600 mm", "Where it is cantilevered."
    )
    cantilevered: bool | None = yes_no(
        "Hearth slab cantilevered", None, "Without support in front."
    )
    warm_air: bool | None = yes_no(
        "Warm-air outlets over the opening", False, "Of a circulating fireplace."
    )
    thatch: bool | None = yes_no("Thatch or shingle roof", False, "Easily set alight.")
    rooflight: bool | None = yes_no(
        "Opening window in the roof near the outlet", None, "Within 2300 mm or uphill."
    )
    above_rooflight: float | None = length(
        "Outlet above that window", None, "-10 m", "30 m", "Its top."
    )
    to_chimney_face: float | None = length(
        "Combustible to chimney face", None, "0 mm", "2000 mm", "Outer face."
    )
    metal_fixing: float | None = length(
        "Metal fixing in wood to flue", None, "0 mm", "1000 mm", "Nearest."
    )
    other_space: bool | None = yes_no(
        "Flue beside another dwelling or compartment", False, "One wall between."
    )
    sweeping: bool | None = yes_no(
        "Soot can be got at where the flue is not straight", None, "Box or door."
    )
    drip_distance: float | None = length(
        "Drip to wall face", None, "0 mm", "300 mm", "Under the crown."
    )
    wood_below: float | None = length(
        "Wood under the hearth, below its top", None, "0 mm", "3000 mm", "Depth."
    )
    gap_below: float | None = length(
        "Air gap between hearth and wood", None, "0 mm", "1000 mm", "Under the hearth."
    )
    liners_socket_up: bool | None = yes_no(
        "Liners sockets up, jointed, gap filled weak", None, "With insulating concrete."
    )
    centre_line: bool | None = yes_no(
        "Set out from the centre line", None, "Before the first brick."
    )
    covered_mortar: bool | None = yes_no(
        "No more mortar spread than is covered at once", None, "Refractory mortar above all."
    )


@dataclass(frozen=True, slots=True)
class Loads:
    """What pushes, shakes and carries it; only a structural answer asks."""

    exposure: str | None = choice(
        "Wind exposure",
        None,
        ("B", "C", "D"),
        "B built up or wooded, C open country, D along water.",
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
    building_width: float | None = _len(
        "building_width", "Building width", "6 ft", "400 ft", "Square to the wind."
    )
    in_triangle: bool | None = yes_no(
        "Load over the lintel", None, "A floor or beam bears within the triangle over the opening."
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


@dataclass(frozen=True, slots=True)
class Work:
    """The day's work: weather, people and pace. Paces are our own habit to be replaced by your own."""

    air: float = quantity(
        "temperature",
        "Air temperature at work",
        "15 degC",
        "-40 degC",
        "50 degC",
        "When the mortar is used.",
    )
    mean: float | None = quantity(
        "temperature",
        "Mean temperature of the day",
        None,
        "-40 degC",
        "50 degC",
        "Half of highest and lowest; decides how the work is protected. Unknown takes the one at"
        " work.",
    )
    wind: float = quantity(
        "speed",
        "Wind at work",
        "2 m/s",
        "0 m/s",
        "40 m/s",
        "Dries mortar in heat, chills it in frost.",
    )
    people: int = count("People", 2, 1, 12, "One lays, the others serve.")
    day: int = count("Hours a day", 8, 1, 14, "At the wall.")
    brick_pace: int = count("Brick an hour", 50, 5, 400, "Laid by one mason.")
    firebrick_pace: int = count("Firebrick an hour", 25, 2, 200, "Cuts counted in.")
    block_pace: int = count("Block an hour", 15, 2, 100, "Laid by one mason.")
    piece_pace: int = count(
        "Sections an hour",
        4,
        1,
        60,
        "Refractory sections, liners and flue sections, bedded and levelled.",
    )
    pour_pace: float = quantity(
        "flow", "Concrete an hour", "1 m3/h", "0.05 m3/h", "40 m3/h", "Mixed and placed."
    )
    lift_height: float = length(
        "Staging lift", "5 ft", "3 ft", "8 ft", "From one working floor to the next."
    )
    stack_height: float = length(
        "Pick-up height", "30 in", "0 in", "60 in", "Of the hands, where a piece is taken from."
    )
    carry: float = length(
        "Piece held off the body",
        "10 in",
        "0 in",
        "25 in",
        "Ankles to hands, where the piece's size does not say more.",
    )
    lifts: float = quantity("ratio", "Lifts a minute", "0.2", "0.05", "15", "By one person.")
    cure: int = count(
        "Days of curing", 28, 1, 90, "Before the first fire; site practice, not code."
    )
    cold_days: int = count("Days below 40 F", 0, 0, 120, "While it cures; they do not count.")
