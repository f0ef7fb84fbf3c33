"""Three books that were read in part, reckoned from their figures alone: Germany's rule on outlets since 2022 with its practice, France's
DTU 24.1 as trade pages retell it, Australia's Housing Provisions 12.4.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from naive import levels, mantels
from naive.clauses import Asked, Work

MM = 0.001


def germany(w: Work) -> Iterator[Asked]:
    s, roof = w.s, w.d.roof
    degrees = math.degrees(math.atan(roof.pitch))
    if degrees >= 20 - 1e-9:
        over = s.flue_top - roof.ridge_level
        near = roof.position == "through the ridge" or over < 0.4 * (1 - 1e-7)
        yield Asked("DE-01", over, 0.4, MM, verdict=None if near else "not checked")
    elif roof.pitch and roof.ridge_level > roof.eaves_level:
        run = (roof.ridge_level - roof.eaves_level) / roof.pitch
        ridge = roof.eaves_level + run * math.tan(math.radians(20))
        yield Asked("DE-02", s.flue_top - ridge, 0.4, MM)
    yield Asked("DE-05", s.flue_top - s.head, 4.5, MM)
    room = (w.d.house.room_length, w.d.house.room_width)
    if None not in room:
        yield Asked("DE-06", math.prod(room), 12.0, 1.0)
    wood = [piece.distance for piece in mantels.pieces(w.s) if piece.combustible]
    if wood and None not in wood:
        yield Asked("DE-07", min(wood), 0.8, MM)
    if w.net is not None:
        yield Asked("DE-10", w.net, 0.01, MM**2)
    yield Asked("DE-11", min(s.flue.wide, s.flue.deep), 0.1, MM)


def france(w: Work) -> Iterator[Asked]:
    s = w.s
    if s.flue.round:
        yield Asked("FR-01", s.flue.wide, 0.18, MM)
    yield Asked("FR-02", s.flue_top - levels.highest_within(s, 8.0)[0], 0.4, MM)
    if math.degrees(math.atan(w.d.roof.pitch)) < 15 - 1e-9:
        over = s.flue_top - s.uphill
        if 1.2 <= over < 1.3:  # only behind a parapet too low, and nobody has told of one
            yield Asked("FR-03", over, 1.3, MM, verdict="not checked")
        else:
            yield Asked("FR-03", over, 1.2, MM)


def australia(w: Work) -> Iterator[Asked]:
    d = w.d
    yield Asked("AU-01", d.hearth.front, 0.3, MM)
    yield Asked("AU-02", d.hearth.side, 0.15, MM)
    if d.hearth.support == "combustible" and d.abroad.wood_below is not None:
        yield Asked("AU-03", d.abroad.wood_below, 0.15, MM)
    if w.wall < 0.18 * (1 - 1e-7):  # else it hangs on leaves that nobody has told of
        yield Asked("AU-04", w.wall, 0.18, MM)


IN_PART = {
    "Germany since 2022": germany,
    "France DTU 24.1 as retold": france,
    "Australia NCC 2022": australia,
}
