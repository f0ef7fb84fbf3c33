"""The quantities a code asks about, each under the name the code tables give it. The nomenclature
of the checks.

Everything is read from the design and its geometry; a figure measured on site replaces the
drawing's own.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from fireplace_calc.design.abroad import Abroad
from fireplace_calc.design.chimney import Stack
from fireplace_calc.design.fire import Air
from fireplace_calc.design.loads import Anchorage, Ground
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.mantel.on_face import FaceStep
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED, Compared


@dataclass(frozen=True, slots=True)
class Facts:
    """One field a quantity, SI, ``None`` where nobody has told.

    Lengths in m, areas in m2, angles in rad from the vertical; words and yes-or-no as the design
    holds them. The records at the end are for what only one book asks.
    """

    shallow: bool
    opening_area: float
    opening_width: float
    firebox_wall_thickness_total: float
    firebox_lining: str | None
    firebrick_thickness: float
    firebrick_joint_width: float | None
    firebrick_standard: str | None
    mortar_standard: str | None
    firebox_depth: float
    lining_approved: bool | None
    masonry_kind: str | None
    chimney_masonry_kind: str | None
    throat_height_above_opening: float
    throat_depth: float
    throat_area: float
    damper_place: str | None
    damper_height_above_opening: float
    damper_free_area: float | None
    damper_material: str | None
    damper_operable_from_room: bool | None
    lintel_height: float
    lintel_bearing_each_end: float | None
    lintel_material: str | None
    face: str
    facing_apart: bool
    facing_head: str | None
    facing_lintel_bearing: float | None
    smoke_chamber_wall_thickness: float
    smoke_chamber_lining: str | None
    smoke_chamber_lining_thickness: float
    smoke_chamber_height: float
    smoke_chamber_construction: str | None
    smoke_chamber_slope_from_vertical: float
    smoke_chamber_min_section: float
    corbel_per_course: float | None
    chimney_corbel_step: float | None
    unit_height: float | None
    unit_thickness: float | None
    hearth_material: str | None
    hearth_support: str | None
    hearth_forms_removed: bool | None
    hearth_thickness: float
    hearth_extension_thickness: float
    hearth_extension_front: float
    hearth_extension_side: float
    opening_bottom_above_extension_top: float
    liner_kind: str | None
    liner_thickness: float
    liner_gap: float
    liner_gap_used_as_vent: bool | None
    liner_top_above_enclosing_wall: float
    liner_slope_from_vertical: float
    flue_shape: str
    flue_aspect: float
    flue_net_area: float | None
    flue_area_source: str | None
    flue_route: str | None
    relined: bool | None
    label_present: bool | None
    chimney_height: float
    chimney_location: str | None
    clear_front: float | None
    clear_side: float | None
    clear_back: float | None
    clear_chimney: float | None
    airspace_fill: str | None
    chimney_airspace_fill: str | None
    fireblock_material: str | None
    fireplace_listed: bool | None
    liner_listed: bool | None
    in_masonry_wall: bool | None
    combustible_to_firebox_lining_inner_face: float | None
    combustible_to_flue_lining_inner_face: float | None
    edge_trim: bool | None
    accessory: bool | None
    accessory_standard: bool | None
    trim: tuple[Trim | FaceStep, ...]
    chimney_top_above_highest_roof_contact: float
    chimney_top_above_building_within_10ft: float
    highest_within_reach_is: str
    chimney_dim_parallel_ridge: float
    through_ridge: bool
    roof_pitch: float
    cricket_present: bool | None
    cricket_height: float | None
    cap_material: str | None
    cap_sloped: bool
    drip_edge: bool | None
    liner_bond_break: bool | None
    arrester: bool | None
    arrester_free_area: float | None
    arrester_opening_sphere: float | None
    arrester_metal: str | None
    rain_cap: bool | None
    rain_cap_free_area: float | None
    footing_thickness: float
    footing_projection_min_side: float
    footing_width: float
    footing_bottom_depth: float
    footing_depth_below_finished_grade: float
    footing_contact_pressure: float | None
    frost_depth: float | None
    material_class: str | None
    seismic_design_category: str | None
    chimney_width: float
    level_above_grade: float
    chimney_wall_thickness: float
    flue_offset: float
    flue_offset_limit: float
    corbel_unit_bed: float | None
    corbel_unit_height: float | None
    wythe_between_flues: float | None
    firebox_elevation: float
    air_passage_area: float
    ground: Ground
    anchorage: Anchorage
    stack: Stack
    air: Air
    abroad: Abroad
    design: Design
    frame: Frame

    def unmeasured_nearby(self) -> str | None:
        """Name of a part of the building whose distance or level nobody has told."""
        parts = self.design.roof.nearby
        return next((p.name for p in parts if p.distance is None or p.level is None), None)

    def over_nearby(self, found: Compared) -> Compared:
        """What was found over everything near, unless a part that nobody measured may be higher."""
        name = self.unmeasured_nearby()
        if name is None or found.verdict == FALLS_SHORT:
            return found
        return Compared(
            NOT_CHECKED, None, found.required, f"How far {name} is and how high is not known yet."
        )

    def but(self, **others: Any) -> Facts:
        """The same facts with other values for some."""
        return replace(self, **others)
