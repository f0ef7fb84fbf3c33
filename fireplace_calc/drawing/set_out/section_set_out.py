"""The section of a composed sheet: heights beside it, depths from the face under it."""

from __future__ import annotations

from fireplace_calc.drawing.annotation.beside_section import back_face, over_opening
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import (
    RING,
    TITLE_ROOM,
    center_line,
    section_mark,
    title_width,
)
from fireplace_calc.drawing.set_out.columns import (
    PITCH,
    Word,
    clear_of_text,
    fits,
    fits_within,
    heights,
    heights_width,
    row_words,
    windowed,
    words,
    words_width,
)
from fireplace_calc.drawing.set_out.cut_marks import flue_cut, marks_beside
from fireplace_calc.drawing.set_out.front_set_out import break_level
from fireplace_calc.drawing.set_out.tape_marks import gap_texts, told_apart
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import length, level, lining_word, of_a_set
from fireplace_calc.drawing.views.section_view import draw_section_cut, section_ends
from fireplace_calc.geometry.parts import Geometry

STRING = 4.0
"""From the drawing to the string beside it. [mm]"""
NOTE_ROOM = 30.0
"""Width of a note. [mm]"""
FIRST, NEXT = 6.4, 5.6
"""From the footing to the first string under it, from one string to the next. [mm]"""
WINDOWS = (
    ("footing", ("footing",)),
    ("base core", ("core,", "grouted")),
    ("hearth slab", ("slab",)),
)
"""Parts that are named where they are cut, if there is room."""


def section_figure(
    geometry: Geometry,
    units: str,
    denominator: float,
    scale: str,
    lost: list[str] | None = None,
) -> Figure:
    """The section with its strings, at one scale.

    Parameters
    ----------
    geometry : Geometry
    units : str
    denominator : float
        [-]
    scale : str
        As it is written under the title.
    lost : list of str, optional
        Takes what finds no room beside the figure, when it is drawn.
    """
    f, k = geometry.frame, 1000 / denominator
    front, back = section_ends(geometry)
    top = break_level(geometry, denominator)
    stops, texts = _upright(geometry, units)
    notes = row_words(section_words(geometry, units), NOTE_ROOM)
    rows = strings_under(geometry, units)
    mark, name = marked("section")
    left = STRING + words_width(notes)
    right = STRING + max(heights_width(texts), 4.0 + 2 * RING)
    crowd = max(len(texts) * PITCH - (f.shoulder_top - f.footing_bottom) * k + 3.4, 0.0)
    depth = FIRST + _depth(rows, k)
    titled = title_width(mark, name, scale) + 1.0
    beside = left - front * k - max(_before(row, k) for row in rows[1:])
    low = max(depth - TITLE_ROOM, 0.0) if titled <= beside else depth

    def paint(view: View) -> None:
        sheet = view.sheet
        draw_section_cut(view, geometry, top)
        (edge, bottom), (start, high) = view.at(back, f.footing_bottom), view.at(front, top)
        flue, shoulder = view.at(f.flue_y, f.shoulder_top)
        over = max(shoulder - 3.4, bottom + len(texts) * PITCH)  # of the string's texts
        center_line(sheet, (flue, high + 4.0), (flue, bottom - 2.5))
        heights(
            sheet,
            [view.at(0.0, z)[1] for z in stops],
            texts,
            edge + STRING,
            1,
            [view.at(back_face(geometry, z), 0.0)[0] + 1.0 for z in stops],
            (bottom - 1.0, over),
        )
        z = flue_cut(geometry, denominator)
        at = view.at(0.0, z)[1]
        ring = (edge + STRING + 4.0 + RING, max(at, over + 8.3))
        stack = view.at(f.flue_y + f.stack_depth, 0.0)[0]
        sheet.line(
            [(stack + 1.0, at), (stack + 4.0, at), (ring[0] - RING - 2.0, ring[1])]
            + [(ring[0] - RING, ring[1])],
            "plane",
        )
        section_mark(sheet, ring, "C", (0, -1), "flue_plan")
        strings(view, bottom, start - left, edge + right)
        marks_beside(view, geometry, edge + STRING + 4.0)
        placed = [(view.at(*tip), text) for tip, text in notes]
        left_out = words(sheet, placed, start - STRING, -1, (bottom + 3.0, high + 3.0))
        if lost is not None:
            lost.extend(left_out)
        for part_name, said in WINDOWS:
            part = geometry.parts_by_name.get(part_name)
            for polygon in part.section() if part else ():
                if windowed(sheet, view.ring(polygon), said, part.material if part else ""):
                    break

    def strings(view: View, bottom: float, far: float, near: float) -> None:
        line = bottom - FIRST
        for places, said, called in rows:
            xs = [view.at(y, 0.0)[0] for y in places]
            feet = [
                bottom - 0.6
                if clear_of_text(view.sheet, (x, bottom - 0.8), (x, line))
                else line + 2.2
                for x in xs
            ]
            level_with = titled <= beside and line - 2.0 < bottom - low  # with the title
            chain(
                view.sheet, xs, said, line, feet=feet, name=called,
                limits=(far + titled if level_with else far, near),
                composed=True,
            )  # fmt: skip
            line -= _room((places, said, called), k)

    return Figure(
        "section",
        mark,
        name,
        (front, f.footing_bottom, back, top),
        (left, low, right, 8.0 + crowd),
        paint,
        (denominator,),
    )


Row = tuple[list[float], list[str], str]
"""Places of a string front to back [m], its texts, its name."""


def strings_under(geometry: Geometry, units: str) -> list[Row]:
    """Strings under the footing: its projections, the throat from the face, the flue's center.

    Parameters
    ----------
    geometry : Geometry
    units : str

    Returns
    -------
    list of (list of float, list of str, str)
        Places front to back [m], texts between them, name.
    """
    f, d = geometry.frame, geometry.design
    out, rows = d.base.footing_projection, []
    places = told_apart([-out, 0.0, f.block_back, f.block_back + out], units)
    if len(places) == 4:
        said = length(out, units)  # the same at both ends, whatever falls between two marks
        rows.append((places, [said, "", said], "footing"))
    places = told_apart([0.0, f.breast, f.throat_front, f.throat_back], units)
    rows.append((places, gap_texts(places, units), "throat"))
    places = [0.0, f.flue_y]
    rows.append((places, gap_texts(places, units), "face to center of flue"))
    return rows


def _room(row: Row, k: float) -> float:
    """Height that a string takes. [mm]"""
    return NEXT if fits_within(row[0], row[1], k) else NEXT + 4.4


def _before(row: Row, k: float) -> float:
    """Room that the first figure of a string wants beyond its left end. [mm]"""
    places, texts, _ = row
    return 3.0 if fits(places[:2], texts[:1], k) else width(texts[0], SMALL) + 3.0


def _depth(rows: list[Row], k: float) -> float:
    return sum(_room(row, k) for row in rows) - NEXT + 3.0


def _upright(geometry: Geometry, units: str) -> tuple[list[float], list[str]]:
    """Stops and texts of the string of heights: what ends at each stop."""
    f = geometry.frame
    named = {f.footing_bottom: "", f.footing_top: "footing", f.slab_bottom: "base"}
    plates = getattr(f, "plate_bottom", f.slab_top)
    named[plates] = "slab"
    named[f.slab_top] = "slab" if plates == f.slab_top else "base plates"
    named[f.hearth] = "floor"
    named[f.throat] = "to throat"
    if f.lean > 0 and f.hearth < f.back_bend < f.throat:
        named[f.back_bend], named[f.throat] = "upright back", "raked back"
    for level_of, word in (
        (f.taper_top, "chamber"),
        (f.flue_start, "transition"),
        (f.block_top, "breast"),
        (f.shoulder_top, "shoulder"),
    ):
        named.setdefault(level_of, word)
    stops = told_apart(list(named), units)
    figures = gap_texts(stops, units)
    return stops, [f"{t}  {named[z]}" for t, z in zip(figures, stops[1:], strict=True)]


def section_words(geometry: Geometry, units: str) -> list[Word]:
    """What is what, and where to point at it, [m]; what may be left out last."""
    f, d = geometry.frame, geometry.design
    layers = f.extension_top - d.hearth.thickness
    ahead = -max(d.hearth.front, 0.05) * 0.7
    chamber = "smoke chamber"
    items: list[Word] = [
        ((d.base.block_width * 0.5, (f.footing_top + f.slab_bottom) / 2), "base block"),
        ((f.depth + d.firebox.lining_thickness / 2, f.hearth + 0.1), lining_word(geometry)),
        ((min(f.throat_front, f.depth) + 0.06, (f.throat + f.taper_top) / 2), chamber),
        (
            (f.throat_front + 0.02, f.throat),
            "throat, damper" if d.throat.damper == "throat" else "throat",
        ),
        over_opening(geometry),
        (
            (f.flue_y - f.bore.depth / 2 - f.bore.wall * 0.5, f.shoulder_top),
            "flue",
        ),
        (
            (max(f.flue_y - f.cavity_depth, 0.02), (f.taper_top + f.flue_start) / 2),
            f"transition, bears {length(d.chimney.wall / 2, units)} on the wall",
        ),
    ]
    if f.lean > 0:
        items.append(((f.depth * 0.97, f.throat - 0.03), "smoke shelf"))
    if f.hood > 0:
        items.append(((0.0, (f.clear_top + f.opening_top) / 2), "metal hood"))
    if f.grade < f.slab_bottom:
        ground = section_ends(geometry)[0] + 0.03
        items.append(((ground, f.grade), f"grade {level(f.grade, units)}"))
    elif d.chimney.location == "exterior":
        items.append(
            ((section_ends(geometry)[1] - 0.03, f.grade), f"grade {level(f.grade, units)}")
        )
    if d.hearth.front > 0:
        items.append(((ahead, layers + d.hearth.thickness / 2), "hearth, see its detail"))
    items.append(((f.depth * 0.4, (f.slab_top + f.hearth) / 2), "firebox floor"))
    if d.piece_set is not None:
        kept = of_a_set(items, geometry)
        return [item for item in kept if not item[1].startswith("transition")]
    return items
