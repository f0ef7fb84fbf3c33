"""What only books outside the United States ask, and the trade."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import length, yes_no


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Abroad(Record):
    """What only books outside the United States ask, and the trade."""

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
    warm_air_projection: float | None = length(
        "Trim over the warm-air outlets stands out", None, "0 mm", "1000 mm", "From the face."
    )
    warm_air_clear: float | None = length(
        "Trim above the warm-air outlets", None, "0 mm", "3000 mm", "Clear, outlet's top to trim."
    )
    liner_start: float | None = length(
        "Liner starts below the lowest connection", None, "0 mm", "3000 mm", "An appliance's pipe."
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
        "Access for sweeping where the flue is not straight", None, "Box or door."
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
    fit_for_1100: bool | None = yes_no(
        "Chimney's materials stand 1100 °C", None, "By their makers' word."
    )
    co_alarm: bool | None = yes_no(
        "Carbon monoxide alarm", None, "In the fire's room and by each sleeping area."
    )
    heat_recovery: bool | None = yes_no(
        "Balanced ventilator with heat recovery", None, "Blows in as much as out."
    )
    windows_near: bool | None = yes_no(
        "Windows, doors or vents within 15 m of the outlet", None, "The neighbors' too."
    )
    above_windows: float | None = length(
        "Outlet above windows and doors",
        None,
        "-30 m",
        "30 m",
        "Those within 15 m: above the top of the highest.",
    )
    parapet: float | None = length(
        "Parapet above the roof", None, "0 mm", "3000 mm", "0 where there is none."
    )
    two_leaves: bool | None = yes_no(
        "Firebox walls in two separate leaves", None, "Sides and back, of solid masonry."
    )
    parging: float | None = length(
        "Parging inside the chimney", None, "0 mm", "50 mm", "1 cement, 1 lime, 5 sand."
    )
    centre_line: bool | None = yes_no(
        "Laid out from the center line", None, "Before the first brick."
    )
    covered_mortar: bool | None = yes_no(
        "No more mortar spread than is covered at once", None, "Refractory mortar above all."
    )
