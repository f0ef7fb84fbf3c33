"""Front, section and plans on one sheet at one scale, or on two where the paper is small."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.plates.figure import Figure, Plate, put
from fireplace_calc.drawing.plates.marks import TITLE_ROOM, title_width
from fireplace_calc.drawing.plates.sizes import SCALES, Paper
from fireplace_calc.drawing.set_out.beside_figures import (
    APART,
    draw_legend,
    draw_notes,
    free_place,
    legend_block,
    note_block,
    open_ground,
    said_of,
)
from fireplace_calc.drawing.set_out.flue_set_out import flue_figure
from fireplace_calc.drawing.set_out.front_set_out import front_figure
from fireplace_calc.drawing.set_out.hearth_set_out import hearth_figure
from fireplace_calc.drawing.set_out.section_set_out import section_figure
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.cost import Price

LARGEST = {FEET_INCHES: 16, "millimetres": 20}
"""Denominator of the largest scale that a whole fireplace is drawn at. [-]"""
LARGEST_PLAN = {FEET_INCHES: 8, "millimetres": 10}
"""Likewise of plans on a sheet of their own. [-]"""
ONE_SHEET = 41
"""Up to this denominator all four stand on one sheet; smaller, they are parted. [-]"""
ALL, UPRIGHT, PLANS = "Front, section, plans", "Front and section", "Plans at hearth and flue"


@dataclass(frozen=True, slots=True)
class PlacedFigure:
    """A figure with its scale, how far it reaches from its origin on the paper [mm], and what found
    no room beside it when it was drawn.
    """

    figure: Figure
    denominator: float
    scale: str
    lost: list[str] = field(default_factory=list)

    @property
    def reach(self) -> tuple[float, float, float, float]:
        """To the left, down, right and up of the origin, words and title counted in."""
        f, k = self.figure, 1000 / self.denominator
        words = f.room(self.denominator)
        left = words[0] - f.box[0] * k
        titled = title_width(f.mark, f.name, self.scale, f.note)
        right = max(words[2] + f.box[2] * k, titled - left)
        return left, words[1] + TITLE_ROOM - f.box[1] * k, right, words[3] + f.box[3] * k

    def at(self, x: float, y: float) -> Cell:
        """What it covers when its origin lies there. [mm]"""
        left, down, right, up = self.reach
        return Cell(x - left, y - down, x + right, y + up)

    def put(self, sheet: Sheet, x: float, y: float) -> None:
        """Draw it with its origin there. [mm]"""
        left, down, _, _ = self.reach
        put(sheet, (x - left, y - down), self.figure, self.denominator, self.scale)


NARROW = 44
"""Width of the narrowest column of notes. [mm]"""
FIGURE = re.compile(r"\d")
Arranged = list[tuple[PlacedFigure, float, float]]
"""Figures with the places of their origins. [mm]"""


def figures(geometry: Geometry, units: str, denominator: float) -> tuple[PlacedFigure, ...]:
    """Front, section, plan at hearth, plan at flue, at one scale.

    Parameters
    ----------
    geometry : Geometry
    units : str
    denominator : float
        [-]
    """
    scale = SCALES[units][denominator]
    lost: tuple[list[str], ...] = ([], [], [], [])
    made = (
        front_figure(geometry, units, denominator, lost[0]),
        section_figure(geometry, units, denominator, scale, lost[1]),
        hearth_figure(geometry, units, denominator, scale, lost[2]),
        flue_figure(geometry, units, denominator),
    )
    return tuple(
        PlacedFigure(figure, denominator, scale, left)
        for figure, left in zip(made, lost, strict=True)
    )


def plates(
    result: Assessment, units: str, on: Paper, prices: Mapping[str, Price] | None = None
) -> list[Plate]:
    """The set-out sheet, or two.

    Parameters
    ----------
    result : Assessment
    units : str
    on : Paper
    prices : dict or None
        Nothing here has a price.

    Returns
    -------
    list of Plate
    """
    geometry, said = result.geometry, said_of(result, units)
    ladder = [n for n in SCALES[units] if n >= LARGEST[units]]
    for denominator in ladder:
        if denominator > ONE_SHEET:
            break
        made = figures(geometry, units, denominator)
        # a legend in a hole between the figures only where no margin has room for it
        for holes, loose in ((False, 1.0), (False, 0.0), (True, 1.0), (True, 0.0)):
            arranged = together(made, on, loose)
            plate = _drawn(ALL, arranged, on, said, holes) if arranged else None
            if plate is not None:
                return [plate]
    larger = [n for n in SCALES[units] if n >= LARGEST_PLAN[units]]
    # each has the notes; what finds no room on a small paper is left out from the middle
    notes = (said, [said[0], *said[-2:]], said[:1])
    return [
        _largest(UPRIGHT, (0, 1), ladder, geometry, units, on, (*notes[:2], [])),
        _largest(PLANS, (2, 3), larger, geometry, units, on, notes),
    ]


def together(made: Sequence[PlacedFigure], on: Paper, loose: float = 1.0) -> Arranged | None:
    """Front over plan on one center line, the section beside them on the front's floor, the plan at
    the flue beside that, loosely or all of it as high up as it goes; None where they do not fit.
    """
    front, section, plan, flue = made
    a, b, c, d = (placed.reach for placed in made)
    column_left, column_right = max(a[0], c[0]), max(a[2], c[2])
    column, field, tall = column_left + column_right, on.field, on.tall
    spare = field.right - field.left - column - b[0] - b[2] - d[0] - d[2] - 2 * APART
    if spare < 0:
        return None
    up = max(a[3], b[3])
    high = max(up + a[1] + APART + c[3] + c[1], up + b[1])
    # the column may reach down beside the title block
    under = tall.bottom if field.left + column <= tall.right else field.bottom
    if up + a[1] + APART + c[3] + c[1] > field.top - under:
        return None
    if up + b[1] > field.top - field.bottom:
        return None
    floor = field.top - up
    slack = min(floor - b[1] - field.bottom, floor - (high - up) - under)
    floor -= loose * min(max(slack, 0.0) * 0.25, 6.0)
    gap = min(spare / 3, 12.0)
    x = field.left + column_left
    face = x + column_right + APART + gap + b[0]
    plan_at = floor - a[1] - APART - c[3]
    plan_at -= loose * max(plan_at - c[1] - under, 0.0) * 0.3
    flue_at = face + b[2] + APART + gap + d[0]
    flue_high = field.top - d[3] - 2.0
    if flue_high - d[1] < field.bottom:
        return None
    return [
        (front, x, floor),
        (section, face, floor),
        (plan, x, plan_at),
        (flue, flue_at, flue_high),
    ]


def beside(made: Sequence[PlacedFigure], on: Paper) -> Arranged | None:
    """Two figures side by side: front and section on one floor, or the plans; None where they do
    not fit.
    """
    one, other = made
    a, b = one.reach, other.reach
    field = on.field
    spare = field.right - field.left - a[0] - a[2] - b[0] - b[2] - APART
    up, down = max(a[3], b[3]), max(a[1], b[1])
    if spare < 0 or up + down > field.top - field.bottom:
        return None
    y = field.top - up - min(max(field.top - field.bottom - up - down, 0.0) * 0.2, 6.0)
    x = field.left + a[0] + spare * 0.2
    return [(one, x, y), (other, x + a[2] + APART + spare * 0.4 + b[0], y)]


def _largest(
    name: str,
    which: tuple[int, int],
    ladder: Sequence[float],
    geometry: Geometry,
    units: str,
    on: Paper,
    notes: Sequence[Sequence[str]],
) -> Plate:
    """Two figures on a sheet at the largest scale that leaves room for legend and notes.

    Parameters
    ----------
    name : str
    which : tuple of int
        Of the four figures.
    ladder : sequence of float
        Denominators, the largest scale first. [-]
    geometry : Geometry
    units : str
    on : Paper
    notes : sequence of sequence of str
        What is told here, the best first.
    """
    for denominator in ladder:
        made = figures(geometry, units, denominator)
        arranged = beside([made[n] for n in which], on)
        for said in notes if arranged else ():
            plate = _drawn(name, arranged or [], on, said)
            if plate is not None:
                return plate
    # As small as it goes and still too large: drawn all the same, and seen by the tests.
    x, rough = on.field.left, []
    for placed in (made[n] for n in which):
        left, down, right, _ = placed.reach
        rough.append((placed, x + left, on.field.bottom + down))
        x += left + right + APART
    sheet = Sheet(on.width, on.height)
    for placed, at, y in rough:
        placed.put(sheet, at, y)
    keys = [placed.figure.key for placed, _, _ in rough]
    return Plate(name, sheet, rough[0][0].scale, ladder[-1], keys)


def _drawn(
    name: str, arranged: Arranged, on: Paper, said: Sequence[str], holes: bool = True
) -> Plate | None:
    """The sheet with its figures, legend and notes, in holes between the figures too; None where
    those find no place.
    """
    sheet = Sheet(on.width, on.height)
    for placed, x, y in arranged:
        placed.lost.clear()
        placed.put(sheet, x, y)
    # a name may be left out, a figure never
    left = [word for placed, _, _ in arranged for word in placed.lost if FIGURE.search(word)]
    said = [*said, f"{'; '.join(left)}."] if left else said
    # beside the title block, else right of the figures, else in any hole between them
    edge = max(placed.at(x, y).right for placed, x, y in arranged[:2])
    fields = [on.strip, Cell(edge, on.field.bottom, on.field.right, on.field.top)]
    fields += [on.field] if holes else []
    if said and not _with_notes(sheet, said, fields):
        return None
    ground = open_ground(sheet)
    for columns in (5, 4, 3, 2, 1):
        block = legend_block(sheet, columns)
        place = free_place(ground, fields, block)
        if place is not None:
            draw_legend(sheet, block, columns, place.left, place.top)
            break
    else:
        return None
    denominator = arranged[0][0].denominator
    keys = [placed.figure.key for placed, _, _ in arranged]
    return Plate(name, sheet, arranged[0][0].scale, denominator, keys)


def _with_notes(sheet: Sheet, said: Sequence[str], fields: Sequence[Cell]) -> bool:
    """Whether there was a place for the notes: as wide as they may be, they stand there."""
    ground = open_ground(sheet)
    for cell in fields:
        room = cell.right - cell.left - 1.0
        for wide in (room, *(float(n) for n in range(230, NARROW, -14) if n < room)):
            block = note_block(said, max(wide, NARROW))
            place = free_place(ground, [cell], block)
            if place is not None:
                draw_notes(sheet, block, place.left, place.top)
                return True
    return False
