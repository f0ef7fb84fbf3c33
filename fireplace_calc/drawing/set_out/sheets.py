"""Front, section and plans on one sheet at one scale, or on two where the paper is small."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

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
    said_of,
)
from fireplace_calc.drawing.set_out.front_figure import front_figure
from fireplace_calc.drawing.set_out.plan_figures import flue_figure, hearth_figure
from fireplace_calc.drawing.set_out.section_figure import section_figure
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.cost import Price

LARGEST = {FEET_INCHES: 16, "millimetres": 20}
"""Denominator of the largest scale that a whole fireplace is drawn at. [-]"""
LARGEST_PLAN = {FEET_INCHES: 12, "millimetres": 10}
"""Likewise of plans on a sheet of their own. [-]"""
ONE_SHEET = 41
"""Up to this denominator all four stand on one sheet; smaller, they are parted. [-]"""
ALL, UPRIGHT, PLANS = "Front, section, plans", "Front and section", "Plans at hearth and flue"


@dataclass(frozen=True, slots=True)
class Placed:
    """A figure with its scale, and how far it reaches from its origin on the paper. [mm]"""

    figure: Figure
    denominator: float
    scale: str

    @property
    def reach(self) -> tuple[float, float, float, float]:
        """To the left, down, right and up of the origin, words and title counted in."""
        f, k = self.figure, 1000 / self.denominator
        titled = title_width(f.mark, f.name, self.scale, f.note)
        left = f.margins[0] - f.box[0] * k
        right = max(f.margins[2] + f.box[2] * k, titled - left)
        return left, f.margins[1] + TITLE_ROOM - f.box[1] * k, right, f.margins[3] + f.box[3] * k

    def at(self, x: float, y: float) -> Cell:
        """What it covers when its origin lies there. [mm]"""
        left, down, right, up = self.reach
        return Cell(x - left, y - down, x + right, y + up)

    def put(self, sheet: Sheet, x: float, y: float) -> None:
        """Draw it with its origin there. [mm]"""
        left, down, _, _ = self.reach
        put(sheet, (x - left, y - down), self.figure, self.denominator, self.scale)


Arranged = list[tuple[Placed, float, float]]
"""Figures with the places of their origins. [mm]"""


def figures(geometry: Geometry, units: str, denominator: float) -> tuple[Placed, ...]:
    """Front, section, plan at hearth, plan at flue, at one scale.

    Parameters
    ----------
    geometry : Geometry
    units : str
    denominator : float
        [-]
    """
    scale = SCALES[units][denominator]
    made = (
        front_figure(geometry, units, denominator),
        section_figure(geometry, units, denominator, scale),
        hearth_figure(geometry, units, denominator, scale),
        flue_figure(geometry, units, denominator),
    )
    return tuple(Placed(figure, denominator, scale) for figure in made)


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
    geometry = result.geometry
    ladder = [n for n in SCALES[units] if n >= LARGEST[units]]
    for denominator in ladder:
        if denominator > ONE_SHEET:
            break
        made = figures(geometry, units, denominator)
        arranged = together(made, on)
        if arranged is not None:
            plate = _drawn(ALL, arranged, result, units, on, True)
            if plate is not None:
                return [plate]
    upright = _largest(UPRIGHT, (0, 1), ladder, result, units, on, notes=None)
    told = upright[1]
    larger = [n for n in SCALES[units] if n >= LARGEST_PLAN[units]]
    plans = _largest(PLANS, (2, 3), larger, result, units, on, notes=not told)
    return [upright[0], plans[0]]


def together(made: Sequence[Placed], on: Paper) -> Arranged | None:
    """Front over plan on one center line, the section beside them on the front's floor, the plan at
    the flue beside that; None where they do not fit.
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
    floor -= min(max(slack, 0.0) * 0.25, 6.0)
    gap = min(spare / 3, 12.0)
    x = field.left + column_left
    face = x + column_right + APART + gap + b[0]
    plan_at = floor - a[1] - APART - c[3]
    plan_at -= max(plan_at - c[1] - under, 0.0) * 0.3
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


def beside(made: Sequence[Placed], on: Paper) -> Arranged | None:
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
    y = field.top - up - max(field.top - field.bottom - up - down, 0.0) * 0.3
    x = field.left + a[0] + spare * 0.2
    return [(one, x, y), (other, x + a[2] + APART + spare * 0.4 + b[0], y)]


def _largest(
    name: str,
    which: tuple[int, int],
    ladder: Sequence[float],
    result: Assessment,
    units: str,
    on: Paper,
    notes: bool | None,
) -> tuple[Plate, bool]:
    """Two figures on a sheet at the largest scale that leaves room for legend and notes.

    Parameters
    ----------
    name : str
    which : tuple of int
        Of the four figures.
    ladder : sequence of float
        Denominators, the largest scale first. [-]
    result : Assessment
    units : str
    on : Paper
    notes : bool or None
        Whether they must stand here; None where they may.

    Returns
    -------
    Plate, bool
        The sheet, and whether the notes stand on it.
    """
    for denominator in ladder:
        made = figures(result.geometry, units, denominator)
        arranged = beside([made[n] for n in which], on)
        for told in (True, False) if notes is None else (notes,):
            plate = _drawn(name, arranged, result, units, on, told) if arranged else None
            if plate is not None:
                return plate, told
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
    return Plate(name, sheet, rough[0][0].scale, ladder[-1], keys), False


def _drawn(
    name: str, arranged: Arranged, result: Assessment, units: str, on: Paper, notes: bool
) -> Plate | None:
    """The sheet with its figures, legend and notes; None where those find no place."""
    sheet = Sheet(on.width, on.height)
    for placed, x, y in arranged:
        placed.put(sheet, x, y)
    taken = [placed.at(x, y) for placed, x, y in arranged]
    if notes and not _with_notes(sheet, taken, said_of(result, units), on):
        return None
    for columns in (5, 4, 3, 2, 1):
        block = legend_block(sheet, columns)
        place = free_place(taken, [on.strip, on.field], block)
        if place is not None:
            draw_legend(sheet, block, columns, place.left, place.top)
            break
    else:
        return None
    denominator = arranged[0][0].denominator
    keys = [placed.figure.key for placed, _, _ in arranged]
    return Plate(name, sheet, arranged[0][0].scale, denominator, keys)


def _with_notes(sheet: Sheet, taken: list[Cell], said: Sequence[str], on: Paper) -> bool:
    """Whether there was a place for the notes: as wide as they may be, they stand there."""
    for wide in (on.strip.right - on.strip.left, 150.0, 120.0, 100.0, 85.0, 70.0, 58.0):
        block = note_block(said, wide)
        place = free_place(taken, [on.strip, on.field], block)
        if place is not None:
            draw_notes(sheet, block, place.left, place.top)
            taken.append(place)
            return True
    return False
