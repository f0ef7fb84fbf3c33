"""The front of a composed sheet: widths from the center line out, heights of opening and mantel."""

from __future__ import annotations

from fireplace_calc.design.mantel import NONE, TOLD
from fireplace_calc.drawing.annotation.beside_front import front_foot
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import (
    RING,
    center_line,
    cutting_plane,
    section_mark,
)
from fireplace_calc.drawing.set_out.columns import (
    PITCH,
    Word,
    fits_within,
    heights,
    heights_width,
    row_words,
    words,
    words_width,
)
from fireplace_calc.drawing.set_out.tape_marks import gap_texts, told_apart
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.front_elevation import draw_front_masonry, front_half
from fireplace_calc.drawing.views.hearth_plan import plan_cut
from fireplace_calc.drawing.views.layout import break_line, length, level
from fireplace_calc.geometry.mantel.on_face import trim_boxes
from fireplace_calc.geometry.mantel.sizes import mantel_place, mantel_sizes
from fireplace_calc.geometry.parts import Geometry

OVER = 7.0
"""How far front and section are drawn on over the shoulder. [mm]"""
STRING = 5.0
"""From a drawing to the string beside it. [mm]"""
NOTE_ROOM = 32.0
"""Width of a note. [mm]"""
FLOOR_WORD = "finished floor"


def break_level(geometry: Geometry, denominator: float) -> float:
    """Level at which front and section break off, a little over the shoulder. [m]

    Parameters
    ----------
    geometry : Geometry
    denominator : float
        Of the scale. [-]
    """
    f = geometry.frame
    return min(f.shoulder_top + OVER * denominator / 1000, f.crown_bottom)


def front_figure(
    geometry: Geometry, units: str, denominator: float, lost: list[str] | None = None
) -> Figure:
    """The front elevation with its strings, at one scale.

    Parameters
    ----------
    geometry : Geometry
    units : str
    denominator : float
        [-]
    lost : list of str, optional
        Takes what finds no room beside the figure, when it is drawn.
    """
    k, foot, top = 1000 / denominator, front_foot(geometry), break_level(geometry, denominator)
    f = geometry.frame
    middle = f.shift_at(top) + f.stack_middle
    half = max(front_half(geometry), abs(middle) + f.stack_half)  # a stack led far aside
    stops, texts = _upright(geometry, units)
    over = max(stops[-1] - top, 0.0) * k  # of a mantel taller than the shoulder
    notes = row_words(front_words(geometry, units), NOTE_ROOM)
    xs, across = _widths(geometry, units)
    narrow = not fits_within(xs, across, k)
    left = STRING + max(heights_width(texts), width(FLOOR_WORD, SMALL)) + 1.0
    right = max(7.0 + 2 * RING, (STRING + 2.0 + words_width(notes)) if notes else 0.0)
    crowd = max(len(texts) * PITCH + 4.0 - (top - 0.0) * k, 0.0)
    mark, name = marked("front")

    def paint(view: View) -> None:
        sheet = view.sheet
        draw_front_masonry(view, geometry, top)
        break_line(view, middle - f.stack_half, middle + f.stack_half, top)
        (x0, floor), (edge, _) = view.at(-half, 0.0), view.at(half, 0.0)
        far = x0 - left
        sheet.line([(far, floor), (edge + 3.0, floor)], "ground")
        sheet.text(far, floor - 1.2, FLOOR_WORD, size=SMALL, ha="left", va="top")
        center, high = view.at(0.0, top)
        under = view.at(0.0, foot)[1]
        peak = high + over + 2.5
        center_line(sheet, (center, peak), (center, under - 2.0))
        section_mark(sheet, (center, peak + RING), "A", (-1, 0), "section")
        level_at = max(view.at(0.0, plan_cut(geometry))[1], floor + 2.0 * RING)
        cutting_plane(sheet, (edge + 1.0, level_at), (edge + 4.0, level_at))
        section_mark(sheet, (edge + 4.0 + RING, level_at), "B", (0, -1), "hearth_plan")
        feet = [view.at(-_reach(geometry, z), 0.0)[0] - 1.0 for z in stops]
        heights(
            sheet,
            [view.at(0.0, z)[1] for z in stops],
            texts,
            x0 - STRING,
            -1,
            feet,
            (floor + 2.0, high + crowd),
        )
        chain(
            sheet,
            [view.at(x, 0.0)[0] for x in xs],
            across,
            under - 7.0,
            feet=[under - 0.6] * len(xs),
            limits=(far, edge + right),
            composed=True,
        )
        placed, x = [(view.at(*tip), rows) for tip, rows in notes], edge + STRING + 6.4
        left_out = words(sheet, placed, x, 1, (level_at + RING + 3.0, high + 10.0 + crowd))
        if lost is not None:
            lost.extend(left_out)

    return Figure(
        "front",
        mark,
        name,
        (-half, foot, half, top),
        (left, 13.0 if narrow else 9.0, right, 3.0 + 2 * RING + max(crowd, over)),
        paint,
        (denominator,),
    )


def _reach(geometry: Geometry, z: float) -> float:
    """How far the masonry reaches from the center line at a level: extension lines start there."""
    f, d = geometry.frame, geometry.design
    if d.hearth.front > 0 and z <= f.extension_top + 1e-9:
        return max(f.block_half, f.half_width + d.hearth.side)
    return f.block_half


def _widths(geometry: Geometry, units: str) -> tuple[list[float], list[str]]:
    f = geometry.frame
    row = told_apart([-f.block_half, -f.half_width, 0.0, f.half_width, f.block_half], units)
    return row, gap_texts(row, units)


def _upright(geometry: Geometry, units: str) -> tuple[list[float], list[str]]:
    """Stops and texts of the string at the left: hearth, opening, and the mantel over it. What a
    piece of trim is called stands beside it; here is only its figure.
    """
    f, d = geometry.frame, geometry.design
    foot = f.extension_top if d.hearth.front > 0 else f.hearth  # nothing lies in front of it
    named = {0.0: "", foot: "hearth"} if foot > 0 else {foot: ""}
    named.setdefault(f.hearth, "drop")
    if f.hood > 0:
        named[f.clear_top] = "to the hood"
    if f.spring < f.opening_top:
        named[f.spring] = "to the spring"
        named[f.opening_top] = "rise of the arch"
    else:
        named[f.opening_top] = "hood" if f.hood > 0 else "opening"
    low = f.opening_top
    if d.mantel.family == TOLD:
        over = [
            (bottom, top)
            for piece, (_, _, bottom, top) in trim_boxes(geometry)
            if piece.place == "above" and piece.distance is not None
        ]
        if over:
            named.setdefault(min(over)[0], "over it")
        for bottom, top in over:
            named.setdefault(bottom, "")
            named.setdefault(top, "")
    elif d.mantel.family != NONE:
        size = mantel_sizes(d.mantel, mantel_place(geometry))
        for word, rise in (
            ("over it", size.over_opening),
            ("frieze", size.frieze),
            ("mantel", size.thickness),
            ("overmantel", size.overmantel),
        ):
            low += rise
            named.setdefault(low, word)
    stops = told_apart(list(named), units)
    pairs = zip(gap_texts(stops, units), stops[1:], strict=True)
    return stops, [f"{named[z]}  {figure}".strip() for figure, z in pairs]


def front_words(geometry: Geometry, units: str) -> list[Word]:
    """What stands in no string: lengths of the mantel, head of the opening, a seat, an offset."""
    f, d = geometry.frame, geometry.design
    found: list[Word] = []
    if d.mantel.family == TOLD:
        seen = set()
        for piece, (_, right, low, top) in trim_boxes(geometry):
            place = (right - 0.02, (low + top) / 2)
            if right <= 0 or piece in seen:
                continue
            seen.add(piece)
            if piece.place == "above":
                said = f"{piece.name}, {length(2 * right, units)} long"
                said += "" if piece.distance is not None else ", height not told"
            else:
                said = f"{piece.name}, {length(piece.height, units)} wide, beside the opening by "
                said += length(piece.drawn_distance, units)
            found.append((place, said))
    elif d.mantel.family != NONE:
        size = mantel_sizes(d.mantel, mantel_place(geometry))
        middle = f.opening_top + size.over_opening + size.frieze + size.thickness * 0.75
        over = "beyond the opening at each end"
        found.append(
            (
                (f.half_width + size.beyond - 0.02, middle),
                f"mantel {length(size.beyond, units)} {over}",
            )
        )
        if size.support:
            middle = f.half_width + size.beside + size.support / 2
            word, at = "corbel", f.opening_top + size.over_opening - 0.02
            if size.frieze:
                word, at = "pilaster", f.spring - 0.1
            said = f"{word} {length(size.support, units)} wide, "
            said += f"{length(size.beside, units)} beside the opening"
            found.append(((middle, at), said))
    found.append(_head(geometry, units))
    if f.offset:
        way = "right" if f.offset > 0 else "left"
        rise = f"{level(f.offset_bottom, units)} to {level(f.offset_top, units)}"
        found.append(
            (
                (f.stack_middle + f.stack_half * 0.5, f.shoulder_top + 0.02),
                f"flue and stack go over {length(abs(f.offset), units)} to the {way}, {rise}",
            )
        )
    return found


def _head(geometry: Geometry, units: str) -> Word:
    """What carries the wall over the opening: its height, and how far it bears."""
    f, lintel = geometry.frame, geometry.design.lintel
    place = (f.half_width * 0.7, f.opening_top + lintel.height * 0.5)
    high = length(lintel.height, units)
    if f.spring < f.opening_top and "arch" in geometry.parts_by_name:
        return (0.02, place[1]), f"arch {high} deep"
    bears = "bearing not told"
    if lintel.bearing is not None:
        bears = f"bears {length(lintel.bearing, units)} each end"
    kind = (
        "steel angle" if lintel.material == "steel" else f"{lintel.material or ''} lintel".strip()
    )
    return place, f"{kind} {high} high, {bears}"
