"""What each fact follows from: the inputs that can move it, so that a finding can say which of them
nobody has entered.

A fact that is not listed here is an input itself, under its code table's name or its dotted key.
"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.design.mantel import TOLD
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, book_names

HEARTH = ("base.hearth_level", "hearth.drop")
OPENING_HIGH = ("opening.standard_height", "opening.extension")
HOOD = "opening.hood"
TO_THROAT = (*OPENING_HIGH, "throat.height")
TO_LINER_TOP = (
    *TO_THROAT,
    "smoke_chamber.height",
    "flue.section_height",
    "flue.sections",
    "flue.joint",
)
CROWN = "chimney.liner_above"
ROOF = ("roof.pitch", "roof.ridge_level", "roof.ridge_distance", "roof.position")
OWN = ("own_width", "own_depth", "own_wall")
BORE = ("flue.shape", "flue.size", *(f"flue.{size}" for size in OWN))
LINER = (*BORE, "flue.long_side")
STACK = ("method", *LINER, "flue.casing", "chimney.wall", "chimney.gap")
SECOND = tuple(key for key in all_inputs() if key.startswith("second_flue."))
BACK = ("opening.width", "firebox.depth", "firebox.back_width", "firebox.splay")
THROAT = ("firebox.depth", "firebox.rake", "firebox.breast", "throat.depth")
MOUTH = (*BACK, *THROAT[1:])
CHAMBER = (*MOUTH, "smoke_chamber.height", "smoke_chamber.transition", *STACK)
JAMBS = ("opening.width", "firebox.jamb")
MANTEL = tuple(key for key in all_inputs() if key.startswith("mantel."))
UNITS = (
    "brick.common",
    "brick.common_joint",
    *("base.block_height", "base.block_width", "base.bed"),
)
"""Sizes of the brick or block that is corbelled, until somebody enters them."""
SOLIDS = (
    *(
        key
        for key in all_inputs()
        if key not in ("breast.place", "breast.across")
        and key.partition(".")[0]
        in (
            *("method", "opening", "lintel", "firebox", "base", "hearth", "throat"),
            *("smoke_chamber", "flue", "chimney", "brick", "surround", "mantel"),
            *("second_flue", "breast", "seat"),
        )
    ),
    *("house.ceiling", "site.grade"),
)
"""Whatever weighs something; the facing ends at the ceiling, the base begins below grade. The same
masonry stands in a wall and across a corner.
"""

FOLLOWS: dict[str, tuple[str, ...]] = {
    "accessory": ("clearance.accessory", "fire.doors_inlet"),
    "arrester": ("chimney.arrester",),
    "breast.cornered": ("breast.place",),
    "breast.stands_out": ("breast.form", "breast.projection"),
    "chimney_wall_thickness": ("chimney.wall",),
    "damper_place": ("throat.damper",),
    "edge_trim": ("clearance.edge_trim",),
    "face": ("surround.face",),
    "facing_apart": ("pieces.set", "pieces.facing"),
    "facing_head": ("pieces.facing_head",),
    "facing_lintel_bearing": ("pieces.angle_bearing",),
    "fireplace_listed": ("clearance.fireplace_listed",),
    "flue_offset": ("flue.offset",),
    "flue_route": ("flue.route",),
    "hearth_forms_removed": ("hearth.forms_removed",),
    "in_masonry_wall": ("clearance.in_masonry_wall",),
    "liner_listed": ("clearance.liner_listed",),
    "lining_approved": ("firebox.lining_approved",),
    "lintel_height": ("lintel.height",),
    "rain_cap": ("chimney.rain_cap",),
    "relined": ("flue.relined",),
    "shallow": ("opening.type",),
    "smoke_chamber_construction": ("smoke_chamber.construction",),
    "smoke_chamber_lining": ("smoke_chamber.lining",),
    "air_passage_area": ("house.air_inlet",),
    "anchorage.n_flues": ("anchorage.n_flues", "second_flue.serves"),
    "arrester_opening_sphere": ("chimney.mesh",),
    "cap_sloped": ("chimney.wash",),
    "chimney_airspace_fill": ("clearance.fill", "clearance.chimney_fill"),
    "chimney_corbel_step": ("stack.corbel_step",),
    "chimney_dim_parallel_ridge": (*STACK, *SECOND, "roof.ridge_runs"),
    "chimney_height": TO_LINER_TOP,
    "chimney_masonry_kind": ("firebox.masonry", "chimney.masonry", "stack.masonry_kind"),
    "chimney_top_above_building_within_10ft": (
        *HEARTH,
        *TO_LINER_TOP,
        CROWN,
        *ROOF,
        "roof.nearby",
    ),
    "chimney_top_above_highest_roof_contact": (
        *HEARTH,
        *TO_LINER_TOP,
        CROWN,
        *ROOF,
    ),
    "chimney_width": (*STACK, *SECOND),
    "corbel_per_course": (
        *CHAMBER,
        *SECOND,
        "firebox.jamb",
        "smoke_chamber.course",
        *UNITS,
        "firebox.masonry",
    ),
    "corbel_unit_bed": (
        "smoke_chamber.unit_bed",
        "stack.unit_bed_depth",
        *UNITS,
        "chimney.masonry",
    ),
    "corbel_unit_height": (
        "smoke_chamber.unit_height",
        "stack.unit_height",
        *UNITS,
        "chimney.masonry",
    ),
    "unit_height": ("smoke_chamber.unit_height", *UNITS, "firebox.masonry"),
    "unit_thickness": ("smoke_chamber.unit_bed", *UNITS, "firebox.masonry"),
    "damper_height_above_opening": ("throat.height", "throat.damper_height"),
    "firebox_elevation": HEARTH,
    "firebox_wall_thickness_total": (*BACK, *STACK, "firebox.wall", "firebox.jamb"),
    "flue_aspect": BORE,
    "flue_net_area": (*BORE, "flue.area_from"),
    "flue_offset_limit": STACK,
    "flue_shape": BORE,
    "footing_contact_pressure": SOLIDS,
    "footing_depth_below_finished_grade": ("base.footing_thickness", "base.footing_depth"),
    "footing_width": (
        *STACK,
        *SECOND,
        *JAMBS,
        "firebox.depth",
        "firebox.wall",
        "base.footing_projection",
    ),
    "frame.back_bend": ("firebox.vertical_back", *HEARTH),
    "frame.back_width": BACK,
    "frame.bore": LINER,
    "frame.crown_top": (*HEARTH, *TO_LINER_TOP, CROWN),
    "frame.depth": ("firebox.depth",),
    "frame.grade": ("site.grade",),
    "frame.hearth": HEARTH,
    "frame.highest_within_reach": (*ROOF, "roof.nearby"),
    "frame.liner_top": (*HEARTH, *TO_LINER_TOP),
    "frame.clear_top": (*OPENING_HIGH, HOOD, *HEARTH),
    "frame.opening_top": (*OPENING_HIGH, *HEARTH),
    "frame.second": ("second_flue.serves",),
    "frame.second.bore": SECOND,
    "frame.second.top": (*SECOND, *HEARTH, *TO_LINER_TOP),
    "frame.stack_depth": (*STACK, *SECOND),
    "frame.stack_half": (*STACK, *SECOND),
    "frame.throat": (*TO_THROAT, *HEARTH),
    "frame.throat_back": THROAT,
    "frame.throat_front": THROAT,
    "frame.uphill_contact": ROOF,
    "hearth_thickness": ("firebox.floor", "base.slab"),
    "highest_within_reach_is": ("roof.ridge_distance", "roof.position", "roof.nearby"),
    "level_above_grade": ("site.grade", "house.ceiling", *ROOF),
    "liner_slope_from_vertical": ("flue.offset", "flue.offset_rise"),
    "liner_thickness": BORE,
    "lintel_material": ("opening.head", "lintel.material"),
    "opening.clear_height": (*OPENING_HIGH, HOOD),
    "opening.height": OPENING_HIGH,
    "opening_area": ("opening.width", *OPENING_HIGH, HOOD, "opening.head", "opening.rise"),
    "opening_bottom_above_extension_top": ("hearth.drop",),
    "over_nearby": ("roof.nearby",),
    "second_flue.drawn": ("second_flue.serves",),
    "smoke_chamber_min_section": (*MOUTH, *LINER),
    "smoke_chamber_slope_from_vertical": (*CHAMBER, *SECOND, "firebox.jamb"),
    "smoke_chamber_wall_thickness": (*STACK, *THROAT, "smoke_chamber.wall"),
    "throat_area": MOUTH,
    "through_ridge": ("roof.position",),
    "trim": ("surround.trim", *MANTEL),
    "wythe_between_flues": SECOND,
}

BESIDE_SECOND = (
    "chimney_dim_parallel_ridge",
    "chimney_width",
    "firebox_wall_thickness_total",
    "frame.stack_half",
    "wythe_between_flues",
)
"""Facts that whatever stands between two flues can move too, once there are two."""
BESIDE = (
    *CHAMBER,
    *JAMBS,
    *TO_THROAT,
    *HEARTH,
    *("opening.head", "opening.rise", "lintel.height", "lintel.bearing"),
    *("firebox.lining_thickness", "smoke_chamber.lining_thickness"),
)
"""What stands between them, where the second begins below the smoke chamber."""

MEASURED = {
    "accessory": "fire.doors_inlet",
    "chimney_dim_parallel_ridge": "measured.along_ridge",
    "chimney_height": "measured.chimney_height",
    "chimney_top_above_building_within_10ft": "measured.over_nearby",
    "chimney_top_above_highest_roof_contact": "measured.over_contact",
    "chimney_width": "anchorage.chimney_width",
    "corbel_per_course": "measured.corbel",
    "flue_net_area": "measured.flue_area",
    "footing_contact_pressure": "ground.footing_contact_pressure",
    "footing_depth_below_finished_grade": "ground.footing_depth_below_finished_grade",
    "hearth_thickness": "measured.hearth_thickness",
    "level_above_grade": "anchorage.level_above_grade",
    "liner_slope_from_vertical": "measured.liner_slope",
    "opening_area": "measured.opening_area",
    "smoke_chamber_min_section": "measured.passage",
    "smoke_chamber_slope_from_vertical": "measured.chamber_slope",
    "throat_area": "measured.throat_area",
    "wythe_between_flues": "stack.wythe_between_flues",
}
"""Facts that one input decides alone, once it is told."""


TURNS: dict[str, frozenset[str]] = {
    "opening.type": frozenset({"FBX-10", "THR-05", "THR-06"}),
    "flue.relined": frozenset({"FLU-16"}),
    "chimney.arrester": frozenset({"ROF-04", "ROF-05", "ROF-06"}),
    "chimney.rain_cap": frozenset({"ROF-07"}),
    "clearance.fireplace_listed": frozenset(),
    "clearance.liner_listed": frozenset(),
    "clearance.in_masonry_wall": frozenset({"CLR-05", "CLR-23a", "CLR-23b"}),
    "clearance.edge_trim": frozenset({"CLR-06a", "CLR-06b", "CLR-06c", "CLR-24b", "CLR-24c"}),
    "clearance.accessory": frozenset({"CLR-11"}),
    "stack.designed_for_load": frozenset(),
    "air.pressure_held": frozenset(),
    "air.near_outlet": frozenset(),
}
"""Answers to *is it there?* that stand on the safe side for most clauses: the only ones that the
other answer can turn from a pass. A clause that it could but lift, as a listing lifts a clearance,
rests on nothing here.
"""


def idle(design: Design) -> frozenset[str]:
    """Inputs that move nothing as the design stands: the rise of a straight head, the sizes of a
    second flue that is not there.
    """
    found: set[str] = set()
    if design.breast.form == "flush":
        found.add("breast.projection")
    if not design.breast.cornered:
        found.add("breast.across")
    if not design.second_flue.drawn:
        found.update(SECOND[1:])
    if design.opening.head == "straight":
        found.add("opening.rise")
    # Its pieces are told one by one; or a family is chosen, and what follows from that is drawn.
    found.update(MANTEL)
    if design.mantel.family != TOLD:
        found.add("surround.trim")
    if not design.flue.offset:
        found.add("flue.offset_rise")
    for flue in ("flue", "second_flue"):
        if getattr(design, flue).size != "own":
            found.update(f"{flue}.{size}" for size in OWN)
    wide = design.flue.size.partition("x")[0]
    if design.flue.shape == "round" or design.flue.size in (f"{wide}x{wide}", "own"):
        found.add("flue.long_side")
    return frozenset(found)


@lru_cache(maxsize=512)
def follows_from(fact: str) -> frozenset[str]:
    """Inputs that can move a fact, named as ``Traced`` notes it."""
    return frozenset(FOLLOWS.get(fact) or (book_names().get(fact, fact),))
