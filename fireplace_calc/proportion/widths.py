"""Which opening widths suit a room, by a published table. A guide, not a rule."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import Source, rows
from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.geometry.parts import Geometry

FOOT = 12 * INCH


@dataclass(frozen=True, slots=True)
class SuitedWidths:
    """Opening widths that suit a room.

    Attributes
    ----------
    low, high : float or None
        Least and largest; unknown where the table has none. [m]
    why : str
        Which rows they are from, or why there are none.
    source : Source
    """

    low: float | None
    high: float | None
    why: str
    source: Source

    def compare(self, width: float) -> str:
        """``within``, ``narrower`` or ``wider``, for a width [m]; ``not checked`` where no widths
        are known.
        """
        if self.low is None or self.high is None:
            return "not checked"
        slack = 1e-7 * width
        return (
            "narrower"
            if width < self.low - slack
            else "wider"
            if width > self.high + slack
            else "within"
        )


def suited_widths(along: float | None, away: float | None, cornered: bool = False) -> SuitedWidths:
    """Opening widths a published table gives for a room, read between its rows by floor area.

    Parameters
    ----------
    along : float or None
        Length of the wall the fireplace stands in. [m]
    away : float or None
        Of the room, square to that wall. [m]
    cornered : bool
        Whether it stands across a corner, of which the table says nothing.

    Returns
    -------
    SuitedWidths
        Least and largest width.

    Notes
    -----
    The table has seven rooms from 10 by 14 to 20 by 36 ft, each with widths for its short and for
    its long wall. Most rows are from memory. A room smaller or larger than the table is not
    checked. In a square room the widths of both walls are taken together.

    Examples
    --------
    >>> found = suited_widths(24 * FOOT, 12 * FOOT)
    >>> round(found.low / INCH), round(found.high / INCH)
    (36, 48)
    """
    table = rows("room_widths.csv")
    source = Source(table[0]["source"], "memory")
    if cornered:
        return SuitedWidths(None, None, "the table says nothing of a corner", source)
    if along is None or away is None:
        return SuitedWidths(None, None, "the size of the room is unknown", source)
    areas = [float(r["room_short_ft"]) * float(r["room_long_ft"]) * FOOT**2 for r in table]
    floor = along * away
    if not areas[0] * (1 - 1e-9) <= floor <= areas[-1] * (1 + 1e-9):
        end, row = ("begins", table[0]) if floor < areas[0] else ("ends", table[-1])
        return SuitedWidths(
            None,
            None,
            f"the table {end} with a room of {row['room_short_ft']} by {row['room_long_ft']} ft",
            source,
        )
    walls = (
        ("short", "long") if abs(along - away) < 1e-6 else ("long",) if along > away else ("short",)
    )
    k = max(i for i, area in enumerate(areas[:-1]) if area <= floor * (1 + 1e-9))
    t = min(max((floor - areas[k]) / (areas[k + 1] - areas[k]), 0.0), 1.0)

    def between(name: str) -> float:
        return (float(table[k][name]) * (1 - t) + float(table[k + 1][name]) * t) * INCH

    low, high = (
        min(between(f"{w}_wall_low_in") for w in walls),
        max(between(f"{w}_wall_high_in") for w in walls),
    )
    used = [table[i] for i, share in ((k, 1 - t), (k + 1, t)) if share > 1e-9]
    known = "read" if all(r["confidence"] == "read" for r in used) else "memory"
    rooms = " and ".join(f"{r['room_short_ft']} by {r['room_long_ft']} ft" for r in used)
    return SuitedWidths(
        low,
        high,
        f"{' or '.join(walls)} wall, {'between ' if len(used) > 1 else ''}{rooms}",
        Source(source.text, known),
    )


def width_sentence(geometry: Geometry, units: str = FEET_INCHES) -> str:
    """How the opening's width compares with its room.

    Parameters
    ----------
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
        One sentence; *not checked* where the table or the room says nothing.
    """
    house, width = geometry.design.house, 2 * geometry.frame.half_width
    cornered = geometry.design.breast.cornered
    widths = suited_widths(house.room_length, house.room_width, cornered)
    if widths.low is None or widths.high is None:
        return f"Width for the room not checked: {widths.why}."
    words = {"within": "lies within", "narrower": "is less than", "wider": "is more than"}[
        widths.compare(width)
    ]
    ends = " to ".join(
        dict.fromkeys(
            show(round(w / INCH) * INCH, "length", units) for w in (widths.low, widths.high)
        )
    )
    return f"{show(width, 'length', units)} {words} the {ends} of the table ({widths.why})."
