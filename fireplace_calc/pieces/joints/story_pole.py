"""The story pole: every lift's bed, joint and top, with the level that is wanted beside it. [m]"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.pieces.joints.joint_plan import JointPlan
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel

HEADINGS = ("Lift", "Bed at", "Joint", "Top at", "Wanted at", "Off")
"""Of the table, one a column."""


@dataclass(frozen=True, slots=True)
class PoleRow:
    """One lift on the pole.

    Attributes
    ----------
    lift : str
    bed : float
        Level that its mortar is spread on: the top of the lift below. [m]
    joints : tuple of (str, float)
        Mark of each piece, and its joint; empty where only the rise is known. [m]
    rise : float
        From top to top. [m]
    top : float
        Level to build to. [m]
    wanted, tolerance : float or None
        Where its top is wanted, and how far off will do; nothing where nobody asked. [m]
    off : float or None
        How much higher than wanted it comes. [m]
    """

    lift: str
    bed: float
    joints: tuple[tuple[str, float], ...]
    rise: float
    top: float
    wanted: float | None
    tolerance: float | None
    off: float | None


def pole_rows(plan: JointPlan) -> tuple[PoleRow, ...]:
    """Rows of the pole; a lift that is wanted at two levels has two.

    Parameters
    ----------
    plan : JointPlan

    Returns
    -------
    tuple of PoleRow
        From the base up. [m]
    """
    beds = (plan.start, *plan.tops[:-1])
    rows: list[PoleRow] = []
    for one, bed, top in zip(plan.chain, beds, plan.tops, strict=True):
        joints = one.joints(top - bed)
        told: list[WantedLevel | None] = [w for w in plan.wanted if w.lift == one.name]
        for w in told or [None]:
            asked = (w.level, w.tolerance, top - w.level) if w else (None, None, None)
            rows.append(PoleRow(one.name, bed, joints, top - bed, top, *asked))
    return tuple(rows)


def joint_words(joints: tuple[tuple[str, float], ...], units: str, tick: float = 0.0) -> str:
    r"""Joints of one lift as one says them.

    Parameters
    ----------
    joints : tuple of (str, float)
        Mark and joint of each piece. [m]
    units : str
        ``feet-inches`` or ``millimetres``.
    tick : float
        From mark to mark of the tape; nought takes the coarsest. [m]

    Returns
    -------
    str
        One figure where all are alike; else each with the marks it belongs to.

    Examples
    --------
    >>> joint_words((("WL", 0.0127), ("WR", 0.0127), ("BK", 0.009525)), "feet-inches")
    'WL and WR 1/2", BK 3/8"'
    """
    marks: dict[str, list[str]] = {}
    for mark, joint in joints:
        under = marks.setdefault(tape_text(joint, units, tick), [])
        if mark not in under:
            under.append(mark)
    if len(marks) < 2:
        return next(iter(marks), "")
    return ", ".join(f"{' and '.join(these)} {text}" for text, these in marks.items())


def pole_table(plan: JointPlan) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """The pole as text in the plan's units, the top lift first, as it stands on site.

    Parameters
    ----------
    plan : JointPlan

    Returns
    -------
    tuple of (tuple of str, tuple of tuple of str)
        Headings, and rows of as many words.
    """

    def text(level: float | None) -> str:
        return "" if level is None else tape_text(level, plan.units, plan.tick)

    rows = [
        (
            row.lift,
            text(row.bed),
            joint_words(row.joints, plan.units, plan.tick),
            text(row.top),
            text(row.wanted) + _give_or_take(row, plan),
            _off_words(row, plan),
        )
        for row in pole_rows(plan)
    ]
    return HEADINGS, tuple(reversed(rows))


def _give_or_take(row: PoleRow, plan: JointPlan) -> str:
    return f" ± {tape_text(row.tolerance, plan.units)}" if row.tolerance else ""


def _off_words(row: PoleRow, plan: JointPlan) -> str:
    """How far off, said only where it is more than the tolerance and half a mark."""
    if row.off is None:
        return ""
    slack = (row.tolerance or 0.0) + (plan.tick * 0.501 or 1e-6)
    if abs(row.off) <= slack:
        return "as wanted"
    return f"{tape_text(abs(row.off), plan.units, plan.tick)} {'high' if row.off > 0 else 'low'}"


def pole_text(plan: JointPlan) -> str:
    """The pole as lines of text in columns, with what could not be met under it.

    Parameters
    ----------
    plan : JointPlan

    Returns
    -------
    str
        Lines without blanks at their ends.
    """
    headings, rows = pole_table(plan)
    wide = [max(len(words) for words in column) for column in zip(headings, *rows, strict=True)]
    start = (plan.start_name, "", "", tape_text(plan.start, plan.units, plan.tick), "", "")
    lines = [
        "  ".join(word.ljust(n) for word, n in zip(line, wide, strict=True)).rstrip()
        for line in (headings, *rows, start)
    ]
    return "\n".join([*lines, *pole_notes(plan)])


def pole_notes(plan: JointPlan) -> tuple[str, ...]:
    """What has to be said under the pole: levels that are missed, and tops off the tape's marks.

    Parameters
    ----------
    plan : JointPlan

    Returns
    -------
    tuple of str
        Sentences in the plan's units.
    """
    if plan.tick:
        return plan.unmet
    return (
        *plan.unmet,
        "No mark of the tape fits every joint: the tops are printed to the nearest mark. "
        "Measure each joint as well.",
    )
