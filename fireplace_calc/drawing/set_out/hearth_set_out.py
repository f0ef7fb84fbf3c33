"""The plan at the hearth of a composed sheet: on the center line of the front, depths from the
face.
"""

from __future__ import annotations

from fireplace_calc.drawing.annotation.beside_plan import STUD, corner_words
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
    ROW,
    Word,
    fits,
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
from fireplace_calc.drawing.views.hearth_plan import draw_hearth_plan, plan_cut, plan_half
from fireplace_calc.drawing.views.layout import cut_at, length, lining_word
from fireplace_calc.geometry.parts import Geometry

STRING = 5.0
"""From a plan to the string beside it. [mm]"""
NOTE_ROOM = 28.0
"""Width of a note. [mm]"""
FRAMING = "to the face of framing"


def hearth_figure(
    geometry: Geometry,
    units: str,
    denominator: float,
    scale: str,
    lost: list[str] | None = None,
) -> Figure:
    """The plan at the hearth with its strings, at one scale.

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
    f, d, k = geometry.frame, geometry.design, 1000 / denominator
    half, z = plan_half(geometry), plan_cut(geometry)
    side, behind = d.clearance.side, d.clearance.back or 0.0
    back = f.block_back + behind + STUD
    stops, texts = _depths(geometry, units)
    xs, across = _hearth_widths(geometry, units)
    notes = row_words(plan_words(geometry, units), NOTE_ROOM)
    mark, name = marked("hearth_plan")
    note = cut_at(z, units)
    seat = "" if d.seat.left else _seat(geometry, units)
    framing = f.block_half + (side or 0.0)
    framed, called = gap_texts([0.0, framing], units), FRAMING
    if not fits([0.0, framing], framed, k):
        framed, called = [""], f"{framed[0]} {FRAMING}"
    left = STRING + words_width(notes)
    right = max(
        STRING + 1.0 + heights_width(texts),
        width(called, SMALL) + 4.0 - (half - framing) * k,
        width(seat, SMALL) + 18.0 if seat else 0.0,
    )
    string = (7.0 if fits(xs, across, k) else 11.4) if xs else 2.0
    depth = string + 2.0 + 2 * RING + 1.0
    beside = title_width(mark, name, scale, note) + 2.0 < left + half * k - RING - 1.0
    # a title beside the mark still keeps clear of the string over it
    low = max(depth - TITLE_ROOM, string + 1.0) if beside else depth
    tall = (back + d.hearth.front) * k
    need = sum(len(rows) * ROW + 1.2 for _, rows in notes)
    crowd = max(need - tall - 10.0, len(texts) * PITCH - tall - 5.0, 0.0)

    def paint(view: View) -> None:
        sheet = view.sheet
        draw_hearth_plan(view, geometry, z)
        (x0, _), (x1, high) = view.at(-half, 0.0), view.at(half, back)
        center, foot = view.at(0.0, -d.hearth.front)
        # figures that stand under their string may stand in the middle
        ends = foot - (6.0 if string > 8.0 else string + 1.5)
        center_line(sheet, (center, high + 7.0), (center, ends))
        section_mark(sheet, (center, foot - string - 2.0 - RING), "A", (-1, 0), "section")
        if side is not None:
            chain(
                sheet, [view.at(x, 0.0)[0] for x in (0.0, framing)],
                framed, high + 4.6, side=1, feet=[high + 0.4] * 2,
                name=called, composed=True,
            )  # fmt: skip
        if xs:
            chain(
                sheet, [view.at(x, 0.0)[0] for x in xs], across, foot - 6.0,
                feet=[foot - 0.6] * len(xs), limits=(x0 - left, x1 + right), name=seat,
                composed=True,
            )  # fmt: skip
        feet = [view.at(_edge(geometry, y), 0.0)[0] + 1.0 for y in stops]
        limits = (foot - 2.0, high + 3.0)
        heights(sheet, [view.at(0.0, y)[1] for y in stops], texts, x1 + STRING, 1, feet, limits)
        placed = [(view.at(*tip), rows) for tip, rows in notes]
        column = limits[0], high + 8.0 + crowd
        left_out = words(sheet, placed, x0 - STRING + 1.0, -1, column)
        if lost is not None:
            lost.extend(left_out)

    return Figure(
        "hearth_plan",
        mark,
        name,
        (-half, -d.hearth.front, half, back),
        (left, low, right, 9.0 + crowd),
        paint,
        (denominator,),
        note,
    )


def _hearth_half(geometry: Geometry) -> float:
    f, d = geometry.frame, geometry.design
    return f.half_width + d.hearth.side


def _edge(geometry: Geometry, y: float) -> float:
    """How far to the right something stands at a depth: extension lines start there. [m]"""
    f, d = geometry.frame, geometry.design
    framing = f.block_half + (d.clearance.side or 0.0) + STUD
    hearth = _hearth_half(geometry) + d.seat.right if d.hearth.front > 0 else 0.0
    if y < -1e-9:
        return hearth
    return max(framing, hearth) if y < 1e-9 else framing


def _hearth_widths(geometry: Geometry, units: str) -> tuple[list[float], list[str]]:
    """Hearth and seats from the center line out; nothing without a hearth extension."""
    d, half = geometry.design, _hearth_half(geometry)
    if d.hearth.front <= 0:
        return [], []
    xs = [-half, 0.0, half]
    xs += [sign * (half + reach) for sign, reach, _ in d.seat.stretches()]
    xs = told_apart(xs, units)
    return xs, gap_texts(xs, units)


def _depths(geometry: Geometry, units: str) -> tuple[list[float], list[str]]:
    """Stops and texts front to back from the face of the opening."""
    f, d = geometry.frame, geometry.design
    named = {-d.hearth.front: "", 0.0: "hearth"}
    if f.lining_front > 0:
        named[f.lining_front] = "to pieces"
    named[f.depth] = "firebox"
    lined = f.depth + d.firebox.lining_thickness
    if d.piece_set is None and lined < f.block_back:
        named[lined] = lining_word(geometry)
    named[f.block_back] = "wall"
    if d.clearance.back is not None and not d.breast.cornered:
        named[f.block_back + d.clearance.back] = "air"
    stops = told_apart(list(named), units)
    figures = gap_texts(stops, units)
    return stops, [f"{t}  {named[y]}" for t, y in zip(figures, stops[1:], strict=True)]


def plan_words(geometry: Geometry, units: str) -> list[Word]:
    """What is what in the plan, [m]; what may be left out last."""
    f, d = geometry.frame, geometry.design
    side, behind = d.clearance.side or 0.0, d.clearance.back or 0.0
    at_side, at_back = -f.block_half - side, f.block_back + behind
    items: list[Word] = [
        (
            (at_side + side / 2, f.block_back * 0.75),
            "air space" if d.clearance.side is not None else "air space, width not told",
        )
    ]
    if (cornered := corner_words(geometry, units)) is not None:
        items = list(cornered)
    elif d.clearance.back is None:
        items.append(((-f.block_half * 0.8, f.block_back), "air space behind, not told"))
    if (out := d.breast.stands_out) is not None:
        said = f"face {length(out, units)} out of the wall" if out else "face flush with the wall"
        items.append(((at_side - STUD, min(out, at_back)), said))
    if off := d.breast.off_center:
        said = f"center {length(abs(off), units)} {'right' if off > 0 else 'left'} of the wall's"
        place = (at_side, at_back + STUD * 0.7) if cornered is None else (0.0, f.block_back)
        items.append((place, f"{said} middle"))
    lining = d.firebox.lining_thickness
    wide = gap_texts([-f.back_width / 2, f.back_width / 2], units)[0]
    items.append(((-f.back_width * 0.45, f.depth), f"back {wide} wide"))
    items += [
        ((-f.half_at(f.depth * 0.42) - lining / 2, f.depth * 0.42), lining_word(geometry)),
        *([((at_side - STUD / 2, at_back * 0.9), "framing")] if cornered is None else []),
        (
            (-f.half_at(f.throat_back) * 0.75, (f.throat_front + f.throat_back) / 2),
            "throat over it",
        ),
    ]
    if d.seat.left:
        at = -f.half_width - d.hearth.side - d.seat.left / 2
        items.append(((at, -d.hearth.front * 0.75), _seat(geometry, units)))
    if d.hearth.front > 0:
        items.append(((-f.half_width * 0.9, -d.hearth.front * 0.45), "hearth extension"))
    return items


def _seat(geometry: Geometry, units: str) -> str:
    """Height of a seat, and what is under it; empty where there is none."""
    f, seat = geometry.frame, geometry.design.seat
    if not seat.stretches():
        return ""
    high = length(f.extension_top if seat.height is None else seat.height, units)
    stored = any(store for _, _, store in seat.stretches())
    store = f", wood store {length(seat.niche_width, units)} wide" if stored else ""
    return f"seat {high} high{store}"
