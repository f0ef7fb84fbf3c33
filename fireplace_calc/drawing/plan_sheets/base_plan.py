"""Footing and base in plan, cut through the lowest course of the base."""

from __future__ import annotations

from fireplace_calc.base.printing import show
from fireplace_calc.drawing.plan_sheets.level_cut import center_lines, cut_level, level_rings
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import cut_at, flue_size, length, level
from fireplace_calc.geometry.parts import Geometry


def base_level(geometry: Geometry) -> float:
    """Where the base is cut: in its lowest block. [m]"""
    f = geometry.frame
    return f.footing_top + min(geometry.design.base.block_height, f.slab_bottom - f.footing_top) / 2


def base_figure(geometry: Geometry, units: str, scales: tuple[float, ...]) -> Figure:
    """The figure of footing and base.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    f, d = geometry.frame, geometry.design
    out, z = d.base.footing_projection, base_level(geometry)
    front = min(-out, -d.hearth.front)
    half = max(f.block_half + out, f.half_width + d.hearth.side if d.hearth.front > 0 else 0.0)
    extent = (-half, front, half, f.block_back + out)

    def draw(view: View) -> None:
        for ring in level_rings(geometry, geometry.parts_by_name["footing"], f.footing_top - 1e-6):
            view.seen(ring)
        if d.hearth.front > 0:
            wide = f.half_width + d.hearth.side
            over = [(-wide, 0.0), (-wide, -d.hearth.front), (wide, -d.hearth.front), (wide, 0.0)]
            view.path(over, "hidden")
        if f.slab_bottom > f.footing_top:
            cut_level(view, geometry, z)
        center_lines(view, [0.0], [], extent)

    strings = core_strings(geometry)
    return annotated(
        "base_plan",
        extent,
        draw,
        units,
        scales,
        left=_words(geometry, units),
        below=strings[:1],
        beside=strings[1:],
        note=cut_at(z, units),
    )


def core_strings(geometry: Geometry) -> list[Sizes]:
    """Widths from the center line, and depths from the face, of what the base walls surround; the
    outside stands on front and section.
    """
    core = geometry.parts_by_name.get("base core") or geometry.by_name.get("base air")
    if core is None:
        return []
    f = geometry.frame
    ring = level_rings(geometry, core, base_level(geometry))[0]
    xs, ys = sorted(x for x, _ in ring), sorted(y for _, y in ring)
    across = [xs[0], xs[-1]]
    if xs[0] < -1e-6 and xs[-1] > 1e-6:
        across.insert(1, 0.0)
    return [
        Sizes(tuple(across), ys[0], "core"),
        Sizes((0.0, ys[0], ys[-1]), f.block_half),
    ]


def _words(geometry: Geometry, units: str) -> list[Note]:
    f, d = geometry.frame, geometry.design
    out, w, back = d.base.footing_projection, d.base.block_width, f.block_back
    bars = {
        True: "reinforced, bars not told here",
        False: "plain",
        None: "bars not told",
    }[d.ground.reinforced]
    if d.ground.reinforced and d.ground.rebar_cover_earth is not None:
        bars += f", cover {length(d.ground.rebar_cover_earth, units)}"
    strength = d.ground.concrete_fc
    mix = "" if strength is None else f", {show(strength, 'strength', units)}"
    thick = length(f.footing_top - f.footing_bottom, units)
    words: list[Note] = [
        (
            (-f.block_half - out * 0.5, back + out * 0.4),
            f"footing, concrete {thick} thick{mix}, {bars}",
        )
    ]
    if f.slab_bottom > f.footing_top:
        words.append(((-f.block_half + w * 0.5, back * 0.72), "base block"))
    core = geometry.parts_by_name.get("base core") or geometry.by_name.get("base air")
    inside = (-f.block_half + 1.4 * w, back * 0.5)
    if core is not None:
        words.append((inside, "core, grouted" if core.name == "base core" else "core, hollow"))
    if d.air.exterior_air_supply:
        to = {"firebox": " into the firebox", "hearth": " to the hearth"}.get(
            d.air.outlet_place or "", ""
        )
        words.append(
            (
                (-f.block_half * 0.3, back * 0.35),
                f"outdoor air duct{to}: leave its way open; place not told",
            )
        )
    if d.ground.ash_dump:
        door = d.ground.ash_cleanout_door_material
        of = "" if door in (None, "other") else f" of {door}"
        words.append(
            (
                (-f.block_half * 0.3, back * 0.5),
                f"ash pit, clean-out door{of}: place not told",
            )
        )
    if f.second is not None and f.second.start < f.slab_bottom:
        begins = f.second.start > base_level(geometry)
        where = f", begins over it, at {level(f.second.start, units)}" if begins else ""
        words.append(((f.second.x, f.flue_y), f"second flue {flue_size(f.second.bore)}{where}"))
    if d.hearth.front > 0:
        words.append(
            ((-f.half_width - d.hearth.side, -d.hearth.front * 0.6), "hearth extension over")
        )
    return words
