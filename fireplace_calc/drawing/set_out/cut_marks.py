"""Where the plans are cut, marked on the section: each with the sheet that shows it."""

from __future__ import annotations

import numpy as np

from fireplace_calc.drawing.plan_sheets.base_plan import base_level
from fireplace_calc.drawing.plan_sheets.throat_plan import throat_level
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import RING, cutting_plane, section_mark
from fireplace_calc.drawing.set_out.columns import clear_of_text, segments
from fireplace_calc.drawing.set_out.front_set_out import break_level
from fireplace_calc.drawing.sheets.overlaps import passes
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.geometry.parts import Geometry

END, BEND = 8.0, 2.0
"""A cutting plane is drawn from so far before its ring to so far before it. [mm]"""
APART = 1.0
"""Clear of anything written, round a ring and its arrow. [mm]"""
STEP, FARTHEST = 0.5, 24.0
"""How a free place is looked for, up and down from the cut. [mm]"""


def flue_cut(geometry: Geometry, denominator: float) -> float:
    """Level at which the plan at the flue is cut: between shoulder and break. [m]

    Parameters
    ----------
    geometry : Geometry
    denominator : float
        Of the scale. [-]
    """
    f = geometry.frame
    low = min(f.shoulder_top, f.crown_bottom)
    return low + 0.8 * (break_level(geometry, denominator) - low)


def marks_beside(view: View, geometry: Geometry, start: float) -> None:
    """Marks of the plans at the throat and in the base, between what is written beside the section;
    a plan whose mark finds no room there says its level under its own title alone.

    Parameters
    ----------
    view : View
    geometry : Geometry
    start : float
        Right of the string of heights. [mm]
    """
    for key, z in (("throat_plan", throat_level(geometry)), ("base_plan", base_level(geometry))):
        at = view.at(0.0, z)[1]
        y = _free(view.sheet, start + RING, at)
        plane = (start - END, at), (start - BEND, at)
        clear = y is not None and all(
            clear_of_text(view.sheet, *line) for line in (plane, (plane[1], (start, y)))
        )
        if y is not None and clear:
            cutting_plane(view.sheet, *plane)
            cutting_plane(view.sheet, (start - BEND, at), (start, y))
            section_mark(view.sheet, (start + RING, y), marked(key)[0], (0, -1), key)


def _free(sheet: Sheet, x: float, at: float) -> float | None:
    """The level nearest to a cut at which a ring and the arrow under it lie clear. [mm]"""
    boxes = np.array([label.extent for label in sheet.labels]).reshape(-1, 4)
    beside = boxes[(boxes[:, 0] < x + RING + APART) & (boxes[:, 2] > x - RING - APART)]
    starts, ends = segments(sheet)
    for n in np.arange(0.0, FARTHEST, STEP):
        for y in (at + n, at - n):
            low, high = y - 1.75 * RING - APART, y + RING + APART
            if ((beside[:, 1] < high) & (beside[:, 3] > low)).any():
                continue
            ring = np.array([[x - RING, y - RING, x + RING, y + RING]])
            if not passes(starts, ends, ring).any():
                return float(y)
    return None
