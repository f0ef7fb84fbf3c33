"""The cut list in rows of words: every mark with its sizes, and which whole unit gives what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import groupby

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.brickwork.cutting.bevel_cuts import bevels
from fireplace_calc.brickwork.cutting.cut_marks import Cut, CutList, StockUse
from fireplace_calc.brickwork.cutting.shapes import NICK, is_square_cut
from fireplace_calc.drawing.plates.bands import Together, heading, row, words
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.geometry.polygons import Polygon

CUTS = (
    Column("Mark", 12),
    Column("Pieces", 14.5),
    Column("Length and width", 34),
    Column("", 31),
)
STOCK = (Column("Units", 17), Column("Each gives", 29)) * 2
SHORT = 14
"""So many letters of marks have room in half a row. [-]"""
LONG_STOCK = (Column("", 17), Column("", 75))
HOW = (
    "Cut wet, with eyes, ears and lungs protected. Pieces that differ by no more than the saw"
    " takes, 1/8 in or 3 mm, share a mark, which gives the shortest of them: the joint takes the"
    " rest. Sizes are those of the piece; the saw's cut is lost beside it."
)
CORNERS = "corners from its lower left, along and across: "


def tape(value: float, units: str) -> str:
    """A size of a piece, never in feet."""
    return feet_inches(value, inches_only=True) if units == FEET_INCHES else f"{value * 1000:.0f}"


def other_tape(value: float, units: str) -> str:
    """The same in the other units."""
    return tape(value, FEET_INCHES if units != FEET_INCHES else "millimetres")


def sized(sizes: Sequence[float], units: str) -> tuple[str, str]:
    """Sizes by each other, in the reader's units and in the other ones."""
    metric = " x ".join(tape(size, "millimetres") for size in sizes) + " mm"
    american = " x ".join(tape(size, FEET_INCHES) for size in sizes)
    return (american, metric) if units == FEET_INCHES else (metric, american)


def corners(ring: Polygon, units: str) -> str:
    """Corners of a piece in turn; of one with two ends square to its length, how long it is below
    and above.
    """
    high = max(y for _, y in ring)
    if len(ring) == 4 and all(min(y, high - y) < NICK / 2 for _, y in ring):
        below, above = ([x for x, y in ring if (y > high / 2) == upper] for upper in (False, True))
        long = [tape(max(xs) - min(xs), units) for xs in (below, above)]
        if min(below) < NICK / 2 and min(above) < NICK / 2:
            return f"{long[0]} long below, {long[1]} above"
    told = "; ".join(f"{tape(x, units)}, {tape(y, units)}" for x, y in ring)
    return CORNERS + told.replace('"', "")


def cut_blocks(cuts: CutList, units: str, wide: float) -> list[Together]:
    """Every mark of the list, by the work it belongs to.

    Parameters
    ----------
    cuts : CutList
    units : str
    wide : float
        Of the column. [mm]
    """
    made: list[Together] = []
    sloped: dict[str, list[str]] = {}
    for bevel in bevels(cuts):
        for mark in bevel.marks:
            sloped.setdefault(mark, []).append(str(bevel.number))
    for of, group in groupby(cuts.cuts, key=lambda cut: cut.of):
        behind = cuts.wythes.get(of, 1)
        again = f", in each of {behind} wythes" if behind > 1 else ""
        made.append(heading(f"{of}{again}", wide))
        if len(made) == 1:
            made += row(CUTS, [column.heading for column in CUTS], wide, bold=True, leads=True)
        for cut in group:
            made += _cut(cut, units, wide, sloped.get(cut.mark, []))
    for course in cuts.courses:
        if not made or course == cuts.courses[0]:
            made.append(heading("Courses cut to a height, every unit of them", wide))
        high, other = sized((course.piece,), units)
        part = f"{course.part}, course {course.number}"
        made += row(HEIGHTS, (part, course.kind, high, other), wide, course.note)
    return made


HEIGHTS = (Column("", 44), Column("", 14.5), Column("", 19), Column("", 15))


def _cut(cut: Cut, units: str, wide: float, sloped: Sequence[str]) -> list[Together]:
    own, other = sized(cut.size, units)
    under = []
    if cut.kind and cut.kind != "whole-high":
        high = f" to {tape(cut.high, units)} ({other_tape(cut.high, units)})" if cut.high else ""
        under.append(f"{cut.kind} block{high}")
    if not is_square_cut(cut.outline):
        bevel = f"bevel {' and '.join(sloped)}: " if sloped else ""
        under.append(bevel + corners(cut.outline, units))
    return row(CUTS, (cut.mark, str(cut.count), own, other), wide, ". ".join(under))


def stock_blocks(cuts: CutList, wide: float) -> list[Together]:
    """Which whole unit gives which pieces.

    Parameters
    ----------
    cuts : CutList
    wide : float
        Of the column. [mm]
    """
    made: list[Together] = []
    for of, uses in groupby(cuts.stock, key=lambda use: use.of):
        group = list(uses)
        total = sum(use.units for use in group)
        made.append(heading(f"{of}, cuts out of {total}", wide))
        if len(made) == 1:
            made += row(STOCK, [column.heading for column in STOCK], wide, bold=True, leads=True)
        waiting: tuple[str, ...] = ()
        for told in _numbered(group):
            if len(told[1]) > SHORT:
                made += row(STOCK, (*waiting, "", ""), wide) if waiting else []
                made += row(LONG_STOCK, told, wide)
                waiting = ()
            elif waiting:
                made += row(STOCK, (*waiting, *told), wide)
                waiting = ()
            else:
                waiting = told
        made += row(STOCK, (*waiting, "", ""), wide) if waiting else []
    return made


def _numbered(uses: Sequence[StockUse]) -> Iterator[tuple[str, str]]:
    first = 1
    for use in uses:
        last = first + use.units - 1
        yield (f"{first}" if first == last else f"{first} to {last}"), ", ".join(use.marks)
        first = last + 1


def all_blocks(cuts: CutList, said: Sequence[str], units: str, wide: float) -> list[Together]:
    """The whole list: cuts, units, and what has to be known before.

    Parameters
    ----------
    cuts : CutList
    said : sequence of str
        Sentences after it.
    units : str
    wide : float
        Of the column. [mm]
    """
    paragraph = partial(words, wide=wide)
    made = [*paragraph(HOW)] if cuts.cuts else []
    made += cut_blocks(cuts, units, wide) + stock_blocks(cuts, wide)
    if said:
        made.append(heading("Before the first course", wide))
    for text in said:
        made += paragraph(text)
    return made
