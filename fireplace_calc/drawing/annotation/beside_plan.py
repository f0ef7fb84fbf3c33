"""What is written beside the live plan at the hearth."""

from __future__ import annotations

from itertools import pairwise

from fireplace_calc.base.units import INCH
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.sheet import Cell, View
from fireplace_calc.drawing.views.layout import length, lining_word
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion import corner_of_room, corner_short

STUD = 3.5 * INCH
"""Depth of the framing drawn round the masonry. [m]"""
Word = tuple[tuple[float, float], str]
"""Where its tip is [m], and what is said."""


def plan_words(
    geometry: Geometry, units: str, side: float, back: float, talk: bool
) -> list[tuple[tuple[float, float], str]]:
    """Air spaces always; with room to talk, what everything is. [m]"""
    f, d = geometry.frame, geometry.design
    words = [
        ((-f.block_half - side / 2, f.block_back * 0.8), _air(d.clearance.side, units)),
        ((-f.half_at(f.depth) * 0.6, f.block_back + back / 2), _air(d.clearance.back, units)),
    ]
    if (cornered := corner_words(geometry, units, talk)) is not None:
        words = list(cornered)
    if not talk:
        return words
    if (out := d.breast.stands_out) is not None:
        said = f"face {length(out, units)} out of the wall" if out else "face flush with the wall"
        words.append(((-f.block_half - side - STUD, min(out, f.block_back + back)), said))
    if off := d.breast.off_center:
        to = "right" if off > 0 else "left"
        said = f"center {length(abs(off), units)} {to} of the wall's middle"
        place = (0.0, f.block_back + (back + STUD / 2 if cornered is None else 0.0))
        words.append((place, said))
    lining = d.firebox.lining_thickness
    if cornered is None:
        words.append(((-f.block_half - side - STUD / 2, f.block_back + back), "framing"))
    words += [
        (
            (-(f.block_half + f.half_at(f.depth / 2)) / 2 - lining / 2, f.depth * 0.55),
            "firebox wall",
        ),
        ((-f.half_at(f.depth * 0.42) - lining / 2, f.depth * 0.42), lining_word(geometry)),
        ((-f.half_at(f.throat_back) * 0.6, (f.throat_front + f.throat_back) / 2), "throat above"),
        ((-f.half_at(0.0) * 0.8, f.depth * 0.1), _floor_word(geometry)),
    ]
    if d.hearth.front > 0:
        thick, of = (
            length(d.hearth.thickness, units),
            geometry.parts_by_name["hearth extension"].material,
        )
        words.append(
            ((-f.half_width * 0.9, -d.hearth.front * 0.5), f"hearth extension, {thick} {of}")
        )
    for sign, reach, stored in d.seat.stretches()[:1]:
        at = sign * (f.half_width + d.hearth.side + reach / 2)
        top = length(f.extension_top if d.seat.height is None else d.seat.height, units)
        said = f"seat, {top} high" + (", wood store under it" if stored else "")
        words.append(((at, -d.hearth.front * 0.75), said))
    return words


def corner_words(geometry: Geometry, units: str, talk: bool = True) -> tuple[Word, Word] | None:
    """What is told of a wall across a corner, with the air between it and the masonry, then what is
    behind it; nothing where the fireplace stands in a wall. [m]

    Parameters
    ----------
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.
    talk : bool
        Whether there is room for more than air and what is missing.
    """
    corner = corner_of_room(geometry)
    if corner is None:
        return None
    f, gap = geometry.frame, geometry.design.clearance
    side, short = gap.side or 0.0, corner_short(geometry, units)
    told = [size for size in (gap.side, gap.back) if size is not None]
    air, behind = _air(gap.side, units), _air(max(told, default=None), units)
    at = corner.wall + STUD / 2
    edge = (-f.block_half, f.block_back)
    if not talk:
        missing = behind if short is None else f"{short[0]} too deep"
        return ((-f.block_half - side / 2, at), air), (edge, missing)
    across = f"wall across the corner, {length(corner.width, units)} wide, {air}"
    behind += " to the corner's walls"
    if short is not None:
        across += f"; {short[1]} would do"
        behind = f"{short[0]} too deep for the corner{' with its air' if told else ', air unknown'}"
    return ((-f.block_half - side - STUD, at), across), (edge, behind)


def _floor_word(geometry: Geometry) -> str:
    """What the fire is laid on, as it is called in plan."""
    return {"base plates": "base plate"}.get(geometry.under_fire.name, "firebox floor")


def plan_strings(
    view: View, cell: Cell, geometry: Geometry, units: str, wide: float, back: float
) -> None:
    """Strings of the widths under and over the plan, and of the depths at its right."""
    f, d = geometry.frame, geometry.design
    sheet, limits = view.sheet, (cell.left + 2, cell.right - 2)
    foot = view.at(0, -d.hearth.front)[1]
    xs = [-f.half_width - d.hearth.side, -f.half_width, f.half_width, f.half_width + d.hearth.side]
    if d.hearth.front <= 0 or d.hearth.side <= 0:
        xs = [-f.half_width, f.half_width]
    for sign, reach, _ in d.seat.stretches():
        xs.append(sign * (f.half_width + d.hearth.side + reach))
    xs.sort()
    texts = [length(b - a, units) for a, b in pairwise(xs)]
    chain(
        sheet,
        [view.at(x, 0)[0] for x in xs],
        texts,
        foot - 4.6,
        limits=limits,
        feet=[foot - 0.5] * len(xs),
    )
    half = f.back_width / 2
    top = view.at(0, f.block_back + back + STUD)[1]
    chain(
        sheet,
        [view.at(x, 0)[0] for x in (-half, half)],
        [length(f.back_width, units)],
        top + 3.0,
        side=1,
        limits=limits,
        name="back",
    )
    ys = (
        [-d.hearth.front, 0.0, f.depth, f.block_back]
        if d.hearth.front > 0
        else [0.0, f.depth, f.block_back]
    )
    feet = [view.at(wide if y >= 0 else f.half_width + d.hearth.side, 0)[0] for y in ys]
    texts = [length(b - a, units) for a, b in pairwise(ys)]
    chain(
        sheet,
        [view.at(0, y)[1] for y in ys],
        texts,
        view.at(wide, 0)[0] + 6.5,
        along="y",
        side=1,
        limits=(cell.bottom + 8, cell.top - 2),
        feet=feet,
    )


def _air(gap: float | None, units: str) -> str:
    return "air unknown" if gap is None else f"air {length(gap, units)}"
