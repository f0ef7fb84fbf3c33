"""As it stands: the set from the front beside its story pole, each top wanted and built."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_outlines, put_parts
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.dimensions import room_for
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View, spread
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit, title
from fireplace_calc.geometry.visible.viewpoint import FRONT
from fireplace_calc.pieces.joints.joint_plan import JointPlan
from fireplace_calc.pieces.joints.story_pole import joint_words
from fireplace_calc.pieces.joints.tape import tape_text, ticks
from fireplace_calc.pieces.standing.as_built import AsBuilt
from fireplace_calc.pieces.standing.inspector_record import off_words, record_rows
from fireplace_calc.pieces.standing.next_beds import replan

WIDTH, HEIGHT = 210.0, 297.0
"""A sheet of A4, upright. [mm]"""
POLE, AWAY, TICK, LEADER = 5.0, 6.0, 3.0, 10.0
"""Width of the pole, from the set to it, how far a tick stands out, and to the words. [mm]"""
BEHIND, AHEAD = 8, 8
"""Lifts that the window holds under the last that stands, and over it. [-]"""
LONG = 26
"""Letters of a bed's words; longer ones are left to the story pole. [-]"""


@dataclass(frozen=True, slots=True)
class PoleMark:
    """One lift on the pole. [m]

    Attributes
    ----------
    lift : str
    wanted : float
        Its top on the story pole.
    now : float or None
        As measured or, where it is to come, as planned now; nothing where it stands unmeasured.
    stands : bool
    outside : bool
        Whether something of it is outside its tolerance.
    words : str
        What is written beside it.
    """

    lift: str
    wanted: float
    now: float | None
    stands: bool
    outside: bool
    words: str


def pole_marks(
    plan: JointPlan, built: AsBuilt, units: str = FEET_INCHES
) -> tuple[tuple[PoleMark, ...], int]:
    """Every lift as it is wanted and as it stands, or is to come.

    Parameters
    ----------
    plan : JointPlan
        Of the whole set, as the story pole has it.
    built : AsBuilt
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of (tuple of PoleMark, int)
        From the base up, and how many lifts stand. [m] and [-]

    Raises
    ------
    InputError
        When an entry names no lift of the plan.
    """
    left = replan(plan.chain, plan.wanted, built, plan.start, units, plan.units)
    measured = dict(built.standing(plan.chain))
    rows = record_rows(plan.chain, plan.wanted, built, plan.start, plan.units)
    outside = {row.entry.lift for row in rows if row.stands and row.outside}
    count = max(measured, default=-1) + 1
    tick = plan.tick if units == plan.units else 0.0
    marks = []
    for n, (lift, wanted) in enumerate(zip(plan.chain, plan.tops, strict=True)):
        now, words = None, "stands, not measured"
        if n in measured:
            now = measured[n].level
            off = off_words(now - wanted, "high", "low", units)
            words = "stands as wanted" if off == "none" else f"stands {off}"
            words += ", out of tolerance" if lift.name in outside else ""
        elif n >= count and left.plan is not None:
            now = left.plan.top_of(lift.name)
            bed = joint_words(left.plan.joints_under(lift.name), units, tick)
            moved = abs(now - wanted) > ticks(plan.units)[-1] / 2
            words = f"now build to {tape_text(now, units, tick)}" if moved else "to come"
            words += f", bed {bed}" if bed and len(bed) <= LONG else ""
        wanted_words = tape_text(wanted, units, tick)
        marks.append(
            PoleMark(
                lift.name,
                wanted,
                now,
                n < count,
                lift.name in outside,
                f"{wanted_words}  {lift.name}: {words}",
            )
        )
    return tuple(marks), count


def built_view(
    sheet: Sheet,
    cell: Cell,
    pictures: SetPictures,
    plan: JointPlan,
    built: AsBuilt,
    units: str = FEET_INCHES,
    whole: bool = False,
) -> None:
    """Draw what stands and what is to come, and both ticks of every top.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    pictures : SetPictures
    plan : JointPlan
        Of the same set.
    built : AsBuilt
    units : str
        ``feet-inches`` or ``millimetres``.
    whole : bool
        Every lift; else a window round the last that stands.
    """
    marks, count = pole_marks(plan, built, units)
    first = 0 if whole else max(count - BEHIND, 0)
    last = len(marks) if whole else min(max(count, first) + AHEAD, len(marks))
    lifts = {p.name: p.lift for p in pictures.drawn}
    every = pictures.stages(FRONT).seen(len(pictures.drawn))
    parts = [part for part in every if first <= lifts[part.name] < last]
    shown = marks[first:last]
    box = bounds_of(parts)
    tops = [z for mark in shown for z in (mark.wanted, mark.now) if z is not None]
    box = (box[0], min(box[1], *tops), box[2], max(box[3], *tops))
    room = AWAY + POLE + LEADER + room_for((mark.words for mark in shown), bold=True)
    view, _ = fit(sheet, cell, box, (4.0, 12.0, room, 8.0), LADDER)
    put_parts(view, [part for part in parts if lifts[part.name] < count])
    put_outlines(view, [part for part in parts if lifts[part.name] >= count])
    _put_pole(view, box, shown, (cell.bottom + 10.0, cell.top - 8.0))
    title(sheet, cell, "As it stands", "tick on the left: story pole; on the right: as built")


def built_sheet(
    pictures: SetPictures, plan: JointPlan, built: AsBuilt, units: str = FEET_INCHES
) -> Sheet:
    """The whole set as it stands on a sheet of its own.

    Parameters
    ----------
    pictures : SetPictures
    plan : JointPlan
    built : AsBuilt
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    sheet = Sheet(WIDTH, HEIGHT)
    cell = Cell(6.0, 14.0, WIDTH - 6.0, HEIGHT - 6.0)
    built_view(sheet, cell, pictures, plan, built, units, whole=True)
    return sheet


def _put_pole(
    view: View,
    box: tuple[float, float, float, float],
    marks: Sequence[PoleMark],
    limits: tuple[float, float],
) -> None:
    sheet = view.sheet
    right, foot = view.at(box[2], box[1])
    head = view.at(0.0, box[3])[1]
    x0 = right + AWAY
    x1 = x0 + POLE
    ring = [(x0, foot - 2.0), (x1, foot - 2.0), (x1, head + 2.0), (x0, head + 2.0)]
    sheet.fill([ring], "wood")
    sheet.line(ring, "seen", closed=True)
    at = [view.at(0.0, m.wanted if m.now is None else m.now)[1] for m in marks]
    places = spread(at, [SMALL * 1.55] * len(marks), *limits)
    for mark, y, place in zip(marks, at, places, strict=True):
        wanted = view.at(0.0, mark.wanted)[1]
        sheet.line([(x0 - TICK, wanted), (x0 + POLE / 2, wanted)], "seen")
        if mark.now is not None:
            ink = "bad" if mark.outside else "ink"
            weight = "flag" if mark.stands else "dimension"
            sheet.line([(x0 + POLE / 2, y), (x1 + TICK, y)], weight, ink)
        x = x1 + LEADER
        sheet.line([(x1 + TICK, y), (x - 2.4, place), (x - 0.8, place)], "dimension", "dimension")
        sheet.text(
            x,
            place,
            mark.words,
            size=SMALL,
            ha="left",
            va="middle",
            bold=mark.stands,
            ink="bad" if mark.outside else "ink",
        )
