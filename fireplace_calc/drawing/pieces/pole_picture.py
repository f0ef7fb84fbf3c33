"""The story pole as a sheet: the set from the front, and beside it every top to build to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_parts
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.layout import LADDER, fit
from fireplace_calc.geometry.visible.stages import SeenPart
from fireplace_calc.geometry.visible.viewpoint import FRONT
from fireplace_calc.pieces.joints.joint_plan import JointPlan
from fireplace_calc.pieces.joints.story_pole import joint_words, pole_notes, pole_rows
from fireplace_calc.pieces.joints.tape import tape_text

WIDTH, HEIGHT = 210.0, 297.0
"""A sheet of A4, upright. [mm]"""
LINE = 3.6
"""From line to line of what is said under it. [mm]"""
LEADER = 12.0
"""From the set to the words beside it. [mm]"""
SAME = 1e-3
"""Nearer than this, two levels are one. [m]"""


def pole_sheet(pictures: SetPictures, plan: JointPlan, units: str = FEET_INCHES) -> Sheet:
    """Draw the pole.

    Parameters
    ----------
    pictures : SetPictures
    plan : JointPlan
        Of the same set.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    Sheet
    """
    tick = plan.tick if units == plan.units else 0.0
    named = {
        f"{row.lift}, bed {joint_words(row.joints, units, tick)}": row.top
        for row in pole_rows(plan)
    }
    marks = level_marks(named, lambda z: tape_text(z, units, tick))
    sheet = Sheet(WIDTH, HEIGHT)
    sheet.text(8.0, HEIGHT - 9.0, "Story pole", size=TITLE, ha="left", bold=True)
    told = "tops over what the first bed lies on; after each, the bed under it"
    sheet.text(WIDTH - 8.0, HEIGHT - 9.0, told, size=SMALL, ha="right", ink="soft")
    parts = pictures.stages(FRONT).seen(len(pictures.drawn))
    box = bounds_of(parts)
    notes = pole_notes(replace(plan, units=units))  # the tape's marks stay those of the set
    said = [row for note in notes for row in wrapped(note, WIDTH - 16.0)]
    foot = 14.0 + LINE * max(len(said) - 2, 0)
    place = Cell(8.0, foot, WIDTH - 8.0, HEIGHT - 16.0)
    room = LEADER + level_room(marks, stacked=False)
    view, _ = fit(sheet, place, box, (2.0, 6.0, room, 2.0), LADDER)
    put_parts(view, parts)
    feet = [view.at(_reach(parts, z), 0.0)[0] + 1.0 for z, _, _ in marks]
    on_paper = [(view.at(0.0, z)[1], value, name) for z, value, name in marks]
    column = view.at(box[2], 0.0)[0] + LEADER
    levels(sheet, on_paper, feet, column, limits=(place.bottom, place.top))
    for n, row in enumerate(said):
        sheet.text(8.0, foot - 5.0 - LINE * n, row, size=SMALL, ha="left", ink="bad")
    return sheet


def _reach(parts: Sequence[SeenPart], level: float) -> float:
    """How far to the right something ends at a level, as seen from the front. [m]"""
    near = [
        ring[np.abs(ring[:, 1] - level) < SAME, 0].max(initial=-np.inf)
        for part in parts
        for ring in part.rings
    ]
    return float(max(near))
