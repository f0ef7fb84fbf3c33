"""The record for the inspector: wanted against built, entry by entry. [m]"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fireplace_calc.base.tables.erection import allowed_off
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.pieces.joints.joint_plan import place_of
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.next_beds import plan_above

NOT_MEASURED = "not measured"
HEADINGS = (
    "When",
    "Lift",
    "Planned",
    "Measured",
    "Off",
    "Right over left",
    "Back over front",
    "Off plumb",
    "By",
    "Note",
)
"""Of the table, one a column."""


@dataclass(frozen=True, slots=True)
class RecordRow:
    """One entry beside the plan that was in force when it was made.

    Attributes
    ----------
    entry : MeasuredTop
    planned : float
        Level of its top by the plan made from what then stood below. [m]
    allowed : float
        How far from plumb it may stand at its height, by the published tolerance. [m]
    stands : bool
        Whether it still counts: it was not lifted off or measured anew.
    """

    entry: MeasuredTop
    planned: float
    allowed: float
    stands: bool


def record_rows(
    chain: Sequence[Rise],
    wanted: Sequence[WantedLevel],
    built: AsBuilt,
    start: float = 0.0,
    units: str = FEET_INCHES,
) -> tuple[RecordRow, ...]:
    """Rows of the record, in the order of its entries.

    Parameters
    ----------
    chain : sequence of Rise
        Of the whole job. [m]
    wanted : sequence of WantedLevel
        [m]
    built : AsBuilt
    start : float
        Level that the first lift is set on. [m]
    units : str
        Of the tape that the plans were rounded to.

    Returns
    -------
    tuple of RecordRow
        [m]

    Raises
    ------
    InputError
        When a level or an entry names no lift of the chain.
    """
    begin = start if built.start is None else built.start
    places = [place_of(chain, top.lift) for top in built.tops]
    rows: list[RecordRow] = []
    for number, (top, place) in enumerate(zip(built.tops, places, strict=True)):
        before = replace(built, tops=built.tops[:number]).standing(chain)
        under = [(n, one.level, one.lift) for n, one in before if n < place]
        last, level, name = under[-1] if under else (-1, begin, "")
        planned = plan_above(chain, wanted, last, level, name, units).top_of(top.lift)
        later = zip(built.tops[number + 1 :], places[number + 1 :], strict=True)
        gone = any(n == place or (one.again and n < place) for one, n in later)
        allowed = allowed_off("plumb", abs(top.level - begin))
        rows.append(RecordRow(top, planned, allowed, not gone))
    return tuple(rows)


def record_table(
    rows: Sequence[RecordRow], units: str
) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """The record as words.

    Parameters
    ----------
    rows : sequence of RecordRow
        [m]
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of (tuple of str, tuple of tuple of str)
        Headings, and rows of as many words.
    """
    return HEADINGS, tuple(_words(row, units) for row in rows)


def _words(row: RecordRow, units: str) -> tuple[str, ...]:
    top = row.entry
    plumb = NOT_MEASURED
    if top.plumb is not None:
        limit = tape_text(row.allowed, units)
        plumb = f"{tape_text(abs(top.plumb), units)}, at most {limit}"
    set_again = "Lifted off and set again." if top.again else ""
    gone = "" if row.stands else "No longer stands so."
    return (
        top.when.strftime("%Y-%m-%d %H:%M"),
        top.lift,
        tape_text(row.planned, units),
        tape_text(top.level, units),
        _signed(top.level - row.planned, "high", "low", units),
        _signed(top.left_right, "right high", "left high", units),
        _signed(top.front_back, "back high", "front high", units),
        plumb,
        top.by or "not told",
        " ".join(words for words in (top.note, set_again, gone) if words),
    )


def _signed(value: float | None, more: str, less: str, units: str) -> str:
    if value is None:
        return NOT_MEASURED
    text = tape_text(abs(value), units)
    if text == tape_text(0.0, units):
        return "none"
    return f"{text} {more if value > 0 else less}"
