"""The facts of a geometry: every quantity a code asks about, read off once."""

from __future__ import annotations

from dataclasses import replace
from math import hypot, tan
from typing import TypeVar

from fireplace_calc.base.units import INCH, G
from fireplace_calc.brickwork.unit import CHAMBER, CHIMNEY, corbel_size
from fireplace_calc.design.loads import Anchorage
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame, Framed, flue_count
from fireplace_calc.geometry.mantel.on_face import trim_steps
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.told_areas import BelievedAreas, believed_areas

Figure = TypeVar("Figure", float, float | None)


def _measured_or_drawn(measured: float | None, drawn: Figure) -> Figure:
    return drawn if measured is None else measured


def _flue_area(design: Design, frame: Frame, told: BelievedAreas) -> float | None:
    """Net area from wherever the reader says it comes; the drawing's own sum is no accepted source
    but better than none. A figure that cannot be is none.
    """
    if design.measured.flue_area is not None:
        return told.flue
    return {"table": frame.bore.table_area, "own sum": frame.bore.area}.get(
        design.flue.area_from or ""
    )


KINDS = {"brick": "solid units", "stone": "stone", "concrete": "concrete"}
"""What a chimney's masonry says by itself about its units; block says nothing."""


def _chimney_masonry_kind(design: Design) -> str | None:
    """Told for the chimney itself; else what its masonry says, unless the same hands were told to
    build the firebox of something that does not count, or nobody has told them.
    """
    told, firebox = design.stack.masonry_kind, design.firebox.masonry
    if told is not None:
        return told
    by_itself = KINDS.get(design.chimney.masonry)
    return firebox if by_itself and firebox in (None, "hollow ungrouted") else by_itself


def _pressure(geometry: Framed, mass: float | None) -> float | None:
    """A mass [kg] over the footing's area; earth, wind and what the house puts on are not in it.
    [Pa]
    """
    f, out = geometry.frame, geometry.design.base.footing_projection
    area = 2 * (f.block_half + out) * (f.block_back + 2 * out)
    return None if mass is None else G * mass / area


def _counted(design: Design, frame: Frame) -> Anchorage:
    """With the flues that are drawn counted in."""
    told = design.anchorage
    return told if frame.second is None else replace(told, n_flues=flue_count(told.n_flues, frame))


def _between(design: Design, frame: Frame) -> float | None:
    """Masonry between two flues: as somebody has told it, else as it is drawn. [m]"""
    told = design.stack.wythe_between_flues
    return frame.second.between if told is None and frame.second is not None else told


def gather_facts(geometry: Framed, mass: float | None = None) -> Facts:
    """Everything the rules may ask, for one design.

    Parameters
    ----------
    geometry : Framed
        Whole, or a sketch.
    mass : float or None
        Of the whole as the takeoff weighs it; unknown leaves the pressure under the footing
        unknown. [kg]

    Returns
    -------
    Facts
    """
    design, f = geometry.design, geometry.frame
    fb, sc, fl, ch, cl, m = (
        design.firebox,
        design.smoke_chamber,
        design.flue,
        design.chimney,
        design.clearance,
        design.measured,
    )
    areas = believed_areas(design, f)
    splay = hypot(1.0, f.side_slope)
    # The gap for movement round a set is no masonry.
    beside = f.block_half - f.half_width if design.piece_set is None else fb.jamb
    jamb = beside / splay
    chamber_left = min(
        f.throat_front,
        f.block_back - f.depth,
        f.block_half - f.throat_width / 2,
        f.flue_y - f.bore.depth / 2 if f.flue_y > f.bore.depth / 2 else f.throat_front,
    )
    slope = _measured_or_drawn(m.chamber_slope, max(f.chamber_slopes.values()))
    course = corbel_size(design, "course", CHAMBER)
    along = 2 * (f.stack_half if design.roof.ridge_runs == "along the opening" else f.stack_depth)
    base, out, thick = design.base, design.base.footing_projection, ch.wall
    arched = design.opening.head == "segmental" and design.piece_set is None
    lintel = "masonry arch" if arched else design.lintel.material
    return Facts(
        shallow=design.opening.type == "shallow",
        opening_area=areas.opening,
        opening_width=design.opening.width,
        firebox_wall_thickness_total=min(fb.wall, jamb),
        firebox_lining=fb.lining,
        firebrick_thickness=fb.lining_thickness,
        firebrick_joint_width=fb.joint,
        firebrick_standard=fb.brick_standard,
        mortar_standard=fb.mortar_standard,
        firebox_depth=fb.depth,
        lining_approved=fb.lining_approved,
        masonry_kind=fb.masonry,
        chimney_masonry_kind=_chimney_masonry_kind(design),
        throat_height_above_opening=design.throat.height,
        throat_depth=design.throat.depth,
        throat_area=areas.throat,
        damper_place=design.throat.damper,
        damper_height_above_opening=_measured_or_drawn(
            design.throat.damper_height, design.throat.height
        ),
        damper_free_area=areas.damper,
        damper_material=design.throat.damper_material,
        damper_operable_from_room=design.throat.worked_from_room,
        lintel_height=design.lintel.height,
        lintel_bearing_each_end=design.lintel.bearing,
        lintel_material=lintel,
        face=design.surround.face,
        facing_apart=design.piece_set is not None and design.pieces.facing > 0,
        facing_head=design.pieces.facing_head,
        facing_lintel_bearing=design.pieces.angle_bearing,
        smoke_chamber_wall_thickness=min(sc.wall, chamber_left),
        smoke_chamber_lining=sc.lining,
        smoke_chamber_lining_thickness=sc.lining_thickness,
        smoke_chamber_height=sc.height,
        smoke_chamber_construction=sc.construction,
        smoke_chamber_slope_from_vertical=slope,
        smoke_chamber_min_section=areas.passage,
        corbel_per_course=_measured_or_drawn(
            m.corbel, None if course is None else course * tan(slope)
        ),
        chimney_corbel_step=_measured_or_drawn(design.stack.corbel_step, m.corbel),
        unit_height=corbel_size(design, "unit_height", CHAMBER),
        unit_thickness=corbel_size(design, "unit_bed", CHAMBER),
        hearth_material=design.hearth.material,
        hearth_support=design.hearth.support,
        hearth_forms_removed=design.hearth.forms_removed,
        hearth_thickness=_measured_or_drawn(m.hearth_thickness, design.base.slab + fb.floor),
        hearth_extension_thickness=design.hearth.thickness,
        hearth_extension_front=design.hearth.front,
        hearth_extension_side=design.hearth.side,
        opening_bottom_above_extension_top=f.hearth - f.extension_top,
        liner_kind=fl.liner,
        liner_thickness=f.bore.wall,
        liner_gap=ch.gap,
        liner_gap_used_as_vent=fl.gap_vents,
        liner_top_above_enclosing_wall=ch.liner_above,
        liner_slope_from_vertical=_measured_or_drawn(m.liner_slope, f.offset_slope),
        flue_shape=(
            "round"
            if f.bore.round
            else "square"
            if abs(f.bore.width - f.bore.depth) < 0.01 * INCH
            else "rectangle"
        ),
        flue_aspect=f.bore.aspect,
        flue_net_area=_flue_area(design, f, areas),
        flue_area_source=fl.area_from,
        flue_route=fl.route,
        relined=fl.relined,
        label_present=fl.label,
        chimney_height=_measured_or_drawn(m.chimney_height, f.liner_top - f.hearth),
        chimney_location=ch.location,
        clear_front=cl.front,
        clear_side=cl.side,
        clear_back=cl.back,
        clear_chimney=cl.chimney,
        airspace_fill=cl.fill,
        chimney_airspace_fill=cl.fill if cl.chimney_fill is None else cl.chimney_fill,
        fireblock_material=cl.fireblock,
        fireplace_listed=cl.fireplace_listed,
        liner_listed=cl.liner_listed,
        in_masonry_wall=cl.in_masonry_wall,
        combustible_to_firebox_lining_inner_face=cl.to_firebox_lining,
        combustible_to_flue_lining_inner_face=cl.to_flue_lining,
        edge_trim=cl.edge_trim,
        accessory=cl.accessory if design.fire.doors_inlet is None else True,
        accessory_standard=cl.accessory_ul907,
        trim=trim_steps(geometry),
        chimney_top_above_highest_roof_contact=_measured_or_drawn(
            m.over_contact, f.crown_top - f.uphill_contact
        ),
        chimney_top_above_building_within_10ft=_measured_or_drawn(
            m.over_nearby, f.crown_top - f.highest_within_reach
        ),
        highest_within_reach_is=f.highest_within_reach_is,
        chimney_dim_parallel_ridge=_measured_or_drawn(m.along_ridge, along),
        through_ridge=design.roof.position == "through the ridge",
        roof_pitch=design.roof.pitch,
        cricket_present=design.roof.cricket,
        cricket_height=design.roof.cricket_height,
        cap_material=ch.cap_material,
        cap_sloped=ch.wash > 0,
        drip_edge=ch.drip,
        liner_bond_break=ch.bond_break,
        arrester=ch.arrester,
        arrester_free_area=ch.arrester_area,
        arrester_opening_sphere=ch.mesh,
        arrester_metal=ch.arrester_metal,
        rain_cap=ch.rain_cap,
        rain_cap_free_area=ch.rain_cap_area,
        footing_thickness=base.footing_thickness,
        footing_projection_min_side=out,
        footing_width=min(2 * (f.block_half + out), f.block_back + 2 * out),
        footing_bottom_depth=base.footing_depth,
        footing_depth_below_finished_grade=_measured_or_drawn(
            design.ground.footing_depth_below_finished_grade,
            base.footing_depth - base.footing_thickness,
        ),
        footing_contact_pressure=_measured_or_drawn(
            design.ground.footing_contact_pressure, _pressure(geometry, mass)
        ),
        frost_depth=design.site.frost_depth,
        material_class=design.site.soil,
        seismic_design_category=design.site.seismic,
        chimney_width=_measured_or_drawn(
            design.anchorage.chimney_width, 2 * max(f.stack_half, f.stack_depth)
        ),
        level_above_grade=_measured_or_drawn(
            design.anchorage.level_above_grade,
            max(design.house.ceiling, f.uphill_contact) - f.grade,
        ),
        chimney_wall_thickness=thick,
        flue_offset=design.flue.offset,
        flue_offset_limit=f.unit_half + design.chimney.gap + thick / 2,
        corbel_unit_bed=_measured_or_drawn(
            design.stack.unit_bed_depth, corbel_size(design, "unit_bed", CHIMNEY)
        ),
        corbel_unit_height=_measured_or_drawn(
            design.stack.unit_height, corbel_size(design, "unit_height", CHIMNEY)
        ),
        wythe_between_flues=_between(design, f),
        firebox_elevation=f.hearth,
        air_passage_area=design.house.air_inlet,
        ground=design.ground,
        anchorage=_counted(design, f),
        stack=design.stack,
        air=design.air,
        abroad=design.abroad,
        design=design,
        frame=f,
    )
