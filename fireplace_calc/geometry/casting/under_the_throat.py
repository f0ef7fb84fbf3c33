"""Courses of a firebox that is cast: how many, how high, and what stands in each. [-]"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.geometry.casting.cast_lines import CastLines
from fireplace_calc.geometry.casting.cast_piece import SetWriter
from fireplace_calc.geometry.casting.equal_courses import (
    EqualRise,
    courses,
    heavy,
    high,
    low,
    lowest,
)
from fireplace_calc.geometry.casting.round_the_fire import CastLift, course, lintels, plates

BACKS = (1, 2)
"""A back is cast in one, or in two halves. [-]"""


@dataclass(frozen=True, slots=True)
class FireLifts:
    """From the base plates to the lintel.

    Attributes
    ----------
    lifts : tuple of CastLift
    extensions : int
        Lifts that extend the firebox. [-]
    folded : bool
        Whether an extension was too low for a course, and the walls are cast higher.
    off : int
        By how many marks equal courses leave the opening too low. [-]
    """

    lifts: tuple[CastLift, ...]
    extensions: int
    folded: bool
    off: int


def fire_lifts(lines: CastLines) -> FireLifts:
    """Cut base plates, walls, backs and lintel.

    Parameters
    ----------
    lines : CastLines

    Returns
    -------
    FireLifts

    Raises
    ------
    InputError
        When a piece stays too heavy, or there is no room for one.
    """
    opening, bed = lines.design.opening, lines.bed
    top, height = lines.marks(lines.design.throat.height), lines.marks(opening.height)
    _room(lines, height, top)
    raised = lines.whole_marks(opening.extension)
    folded = 0 < raised < lines.least + bed[1]
    if folded:
        raised = 0
    rise = lines.floor + height - raised - bed[1]
    walls, more, parts = _cheapest(lines, rise, raised, top)
    left = walls.left + (more.left if more else 0)
    seat = min(max(bed[1] + left, bed[0]), bed[2])
    told = SetWriter(lines.wish.metric).numbers((bed[0], seat, bed[2]))
    rows = (f"bed = {told}",) if seat != bed[1] else ()
    lifts = [CastLift("plate", plates(lines))]
    pieces = course(lines, "W", walls.height, parts)
    lifts += [CastLift(f"course {n + 1}", pieces) for n in range(walls.count)]
    if more:
        pieces, extension = course(lines, "X", more.height, parts), ("extension = true",)
        lifts += [CastLift(f"extension {n + 1}", pieces, extension) for n in range(more.count)]
    beside = course(lines, "T", top, parts, lines.behind_lintel, rows)
    beams = lintels(lines, top, rows)
    heads = (f'heads = {{ straight = "{beams[-1].mark}" }}',)
    lifts.append(CastLift("top walls", (*beside, *beams), heads))
    return FireLifts(tuple(lifts), more.count if more else 0, folded, bed[1] + left - seat)


def _room(lines: CastLines, height: int, top: int) -> None:
    """Refuse a head that has no room for its pieces, and a back that no design may hold."""
    for came, what in ((top, "Throat height"), (lines.breast, "Breast")):
        if came < lines.least:
            raise low(what, lines, came, lines.least, what)
    deepest = lines.lip - lines.least - lines.perpend[1]
    if lines.breast > deepest:
        why = "in a firebox so shallow: the top walls stand behind the lintel"
        raise high("Breast", lines, lines.breast, deepest, why)
    most = inputs_of(lines.design.firebox)["vertical_back"].bounds[1]
    if height + top > lines.whole_marks(most):
        why = "for a back that stands upright; lower the opening or the throat"
        raise high("Hearth to throat", lines, height + top, lines.whole_marks(most), why)


def _cheapest(
    lines: CastLines, rise: int, raised: int, top: int
) -> tuple[EqualRise, EqualRise | None, int]:
    """Courses of walls and of extensions with the fewest pieces, and the parts of a back."""
    found: list[tuple[int, tuple[EqualRise, EqualRise | None, int]]] = []
    for parts in BACKS:

        def fits(height: int, start: int = 0, parts: int = parts) -> bool:
            pieces = course(lines, "T", height, parts, start)
            return all(lines.wish.weight(p.volume) <= lines.wish.most for p in pieces)

        walls = courses(lines, rise, fits)
        more = courses(lines, raised, fits, below=True) if raised else None
        light = fits(top, lines.behind_lintel)
        if walls is None or (raised and more is None) or not light:
            continue
        count = (walls.count + (more.count if more else 0) + 1) * (2 + parts)
        found.append((count, (walls, more, parts)))
    if not found:
        if rise < lines.least + lines.bed[1]:
            raise low("Standard height", lines, rise, lines.least + lines.bed[1], "Standard height")
        zones = (rise, raised) if raised else (rise,)
        pieces = [p for z in zones for p in course(lines, "W", lowest(lines, z), BACKS[-1])]
        pieces += course(lines, "T", top, BACKS[-1], lines.behind_lintel)
        worst = max(pieces, key=lambda p: p.volume)
        why = "it is not cut further, so allow more, thinner walls or a lower throat"
        raise heavy(f"The {worst.name}", lines, worst.volume, why)
    return min(found, key=lambda one: one[0])[1]
