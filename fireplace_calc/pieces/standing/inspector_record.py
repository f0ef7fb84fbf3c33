"""The record for the inspector: wanted against built, entry by entry. [m]"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from fireplace_calc.base.tables.erection import allowed_off, erection_limits
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.pieces.joints.joint_plan import place_of
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.next_beds import plan_above

NOT_MEASURED, NOT_CHECKED = "not measured", "not checked"
TOP, ACROSS, DEEP, PLUMB = "top", "right over left", "back over front", "plumb"
HEADINGS = (
    "When",
    "Hold point",
    "Wanted",
    "Built",
    "Off",
    "Right over left",
    "Back over front",
    "Off plumb",
    "Within",
    "Measured by",
    "Note",
)
"""Of the table, one a column."""


@dataclass(frozen=True, slots=True)
class Deviation:
    """One thing that was measured, beside what is allowed.

    Attributes
    ----------
    measure : str
        ``top``, ``right over left``, ``back over front`` or ``plumb``.
    off : float or None
        How far off; nothing where nobody measured. [m]
    allowed : float or None
        Either way, by the published tolerance; nothing where it says nothing. [m]
    """

    measure: str
    off: float | None
    allowed: float | None

    @property
    def within(self) -> bool | None:
        """Whether it is within; nothing where that is not checked."""
        if self.off is None or self.allowed is None:
            return None
        return abs(self.off) <= self.allowed + ROUNDING


@dataclass(frozen=True, slots=True)
class RecordRow:
    """One entry beside the plan that was in force when it was made.

    Attributes
    ----------
    entry : MeasuredTop
    planned : float
        Level of its top by the plan made from what then stood below. [m]
    stands : bool
        Whether it still counts: it was not lifted off or measured anew.
    deviations : tuple of Deviation
        Top, right over left, back over front, plumb.
    """

    entry: MeasuredTop
    planned: float
    stands: bool
    deviations: tuple[Deviation, ...]

    @property
    def outside(self) -> tuple[str, ...]:
        """What is outside its tolerance."""
        return tuple(d.measure for d in self.deviations if d.within is False)

    @property
    def verdict(self) -> str:
        """Within or not, and what nobody can say."""
        if self.outside:
            return f"NO: {', '.join(self.outside)}"
        open_ones = [d.measure for d in self.deviations if d.within is None]
        if len(open_ones) == len(self.deviations):
            return NOT_CHECKED
        if open_ones:
            return f"as far as measured; {NOT_CHECKED}: {', '.join(open_ones)}"
        return "yes"


def record_rows(
    chain: Sequence[Rise],
    wanted: Sequence[WantedLevel],
    built: AsBuilt,
    start: float = 0.0,
    units: str = FEET_INCHES,
    across: Mapping[str, float] | None = None,
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
    across : mapping of str to float, optional
        How long each lift is; the tolerance of the shortest counts where it is not told. [m]

    Returns
    -------
    tuple of RecordRow
        [m]

    Raises
    ------
    InputError
        When a level or an entry names no lift of the chain.

    Notes
    -----
    A top is off by what its bed is thicker or thinner than told. The published tolerance of a bed
    leaves out the first one on the footing; where the lift below was not measured, one bed cannot
    be told from the next. Both are not checked.
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
        one_bed = place > 0 and last == place - 1
        bed_level = allowed_off("bed level", (across or {}).get(top.lift, 0.0))
        deviations = (
            Deviation(TOP, top.level - planned, allowed_off("bed thickness") if one_bed else None),
            Deviation(ACROSS, top.left_right, bed_level),
            Deviation(DEEP, top.front_back, bed_level),
            Deviation(PLUMB, top.plumb, allowed_off("plumb", abs(top.level - begin))),
        )
        rows.append(RecordRow(top, planned, not gone, deviations))
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


def tolerance_words() -> str:
    """Where the tolerances of the record come from, and how well that is known."""
    sources = dict.fromkeys((one.source.text, one.source.confidence) for one in erection_limits())
    told = "; ".join(f"{text} ({confidence})" for text, confidence in sources)
    return f"Tolerances: {told}. Check the book before you rely on one."


def off_words(value: float | None, more: str, less: str, units: str) -> str:
    """How far off, and which way.

    Parameters
    ----------
    value : float or None
        [m]
    more, less : str
        What it is called over and under nought.
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
    """
    if value is None:
        return NOT_MEASURED
    text = tape_text(abs(value), units)
    if text == tape_text(0.0, units):
        return "none"
    return f"{text} {more if value > 0 else less}"


def _words(row: RecordRow, units: str) -> tuple[str, ...]:
    top, across, deep, plumb = row.deviations
    entry = row.entry
    off_plumb = NOT_MEASURED if plumb.off is None else tape_text(abs(plumb.off), units)
    set_again = "Lifted off and set again." if entry.again else ""
    gone = "" if row.stands else "No longer stands so."
    return (
        entry.when.strftime("%Y-%m-%d %H:%M"),
        entry.lift,
        tape_text(row.planned, units),
        tape_text(entry.level, units),
        _at_most(off_words(top.off, "high", "low", units), top, units),
        _at_most(off_words(across.off, "right high", "left high", units), across, units),
        _at_most(off_words(deep.off, "back high", "front high", units), deep, units),
        _at_most(off_plumb, plumb, units),
        row.verdict,
        entry.by or "not told",
        " ".join(words for words in (entry.note, set_again, gone) if words),
    )


def _at_most(words: str, one: Deviation, units: str) -> str:
    if one.off is None or one.allowed is None:
        return words
    return f"{words}, at most {tape_text(one.allowed, units)}"
