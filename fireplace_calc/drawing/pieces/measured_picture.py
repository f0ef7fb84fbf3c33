"""A piece as it is measured: from above, front and side, every length with its letter, and where it
stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import radians

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.pieces.seen_parts import bounds_of, put_parts
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, fit, title
from fireplace_calc.geometry.assembled.assembly import assemble
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.visible.stages import SeenPart, Stages
from fireplace_calc.geometry.visible.viewpoint import FRONT, Viewpoint
from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.measured.sketch import PieceSketch, SketchedLength
from fireplace_calc.pieces.records import SetPiece

ABOVE = Viewpoint(0.0, radians(90))
SIDE = Viewpoint(radians(90))
VIEWS = (
    ("front", "Front", FRONT, (0.0, 0.6, 0.52, 1.0)),
    ("side", "Right side", SIDE, (0.52, 0.6, 1.0, 1.0)),
    ("plan", "From above", ABOVE, (0.0, 0.0, 0.52, 0.6)),
)
"""Views by name, their titles, from where, and their share of the cell."""
PLACE = (0.52, 0.0, 1.0, 0.6)
"""Share of the cell for where the piece stands."""
STEP, FIRST = 5.6, 4.5
"""From one dimension to the next, and from the piece to the first. [mm]"""
FOOT, AIR = 8.0, 3.0
"""Room for a title under a view, and around it. [mm]"""
EDGES = ("left", "below", "right", "above")
OPEN = "?"
"""Written after a letter whose length is not told yet."""


def measured_view(
    sheet: Sheet,
    cell: Cell,
    sketch: PieceSketch,
    beside: Sequence[SetPiece] = (),
    asked: str = "",
    units: str = FEET_INCHES,
) -> None:
    """Draw a piece three times at one scale, and once where it stands.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    sketch : PieceSketch
    beside : sequence of SetPiece
        Of its lift.
    asked : str
        Letter of the length that is being typed; its line is heavy.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    drawn = {name: _seen(sketch.piece, eye) for name, _, eye, _ in VIEWS}
    rooms = {name: _rooms(sketch, name) for name in drawn}
    cells = {name: _share(cell, share) for name, _, _, share in VIEWS}
    scale = max(
        fit(sheet, cells[name], bounds_of(parts), rooms[name], LADDER)[1]
        for name, parts in drawn.items()
    )
    for name, words, _, _ in VIEWS:
        view, _ = fit(sheet, cells[name], bounds_of(drawn[name]), rooms[name], (scale,))
        put_parts(view, drawn[name])
        lengths = [one for one in sketch.lengths if one.view == name]
        for edge in EDGES:
            _edge(view, bounds_of(drawn[name]), edge, [x for x in lengths if x.edge == edge], asked)
        title(sheet, cells[name], words)
    _where(sheet, _share(cell, PLACE), sketch, beside, asked)


def _share(cell: Cell, share: tuple[float, float, float, float]) -> Cell:
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    return Cell(
        cell.left + share[0] * wide,
        cell.bottom + share[1] * high,
        cell.left + share[2] * wide,
        cell.bottom + share[3] * high,
    )


def _seen(piece: SetPiece, eye: Viewpoint) -> tuple[SeenPart, ...]:
    made = assemble([ChosenLift(piece.mark, (piece,))], [piece.height])
    return Stages(made, made.placed, eye).seen(1)


def _rooms(sketch: PieceSketch, view: str) -> tuple[float, float, float, float]:
    """Margins for the dimensions of a view: left, below, right, above. [mm]"""
    count = dict.fromkeys(EDGES, 0)
    for one in sketch.lengths:
        if one.view == view:
            count[one.edge] += 1
    left, below, right, above = (
        AIR + (FIRST + STEP * count[edge] if count[edge] else 0.0) for edge in EDGES
    )
    return left, below + FOOT, right, above


def _words(key: str, told: str) -> str:
    return f"{key} {told or OPEN}"


def _edge(
    view: View,
    box: tuple[float, float, float, float],
    edge: str,
    lengths: list[SketchedLength],
    asked: str,
) -> None:
    """The dimensions at one edge of a view, short ones next to the piece."""
    upright = edge in ("left", "right")
    away = -1.0 if edge in ("left", "below") else 1.0
    start = view.at(box[0 if edge == "left" else 2], box[1 if edge == "below" else 3])
    foot = start[0] if upright else start[1]
    ends = [
        view.at(end, end)[1 if upright else 0] for one in lengths for end in (one.low, one.high)
    ]
    middle = (min(ends, default=0.0) + max(ends, default=0.0)) / 2
    rows: list[list[tuple[float, float]]] = []
    for one in sorted(lengths, key=lambda x: x.high - x.low):
        low, high = (view.at(end, end)[1 if upright else 0] for end in (one.low, one.high))
        words = _words(one.key, one.words)
        needed = lettering.width(words, SMALL) + 2.0
        before, after = _beyond(needed, (low, high), middle, upright)
        taken = (low - 1.5 - before, high + 1.5 + after)
        row = next((k for k, r in enumerate(rows) if all(_apart(taken, o) for o in r)), len(rows))
        if row == len(rows):
            rows.append([])
        rows[row].append(taken)
        line = foot + away * (FIRST + STEP * row)
        _dimension(view.sheet, (low, high), line, words, upright, (foot, away), before > 0)
        if one.key == asked:
            heavy = [(low, line), (high, line)]
            view.sheet.line([(y, x) for x, y in heavy] if upright else heavy, "ground", "dimension")


def _beyond(
    needed: float, ends: tuple[float, float], middle: float, upright: bool
) -> tuple[float, float]:
    """Room that words take before and after a length too short for them: outward along the width,
    where nothing is drawn; inward up the side, where no other edge has its words. [mm]
    """
    low, high = ends
    if needed <= high - low:
        return 0.0, 0.0
    first = ((low + high) / 2 < middle) != upright
    return (needed, 0.0) if first else (0.0, needed)


def _apart(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[1] <= other[0] or other[1] <= one[0]


def _dimension(
    sheet: Sheet,
    ends: tuple[float, float],
    line: float,
    words: str,
    upright: bool,
    start: tuple[float, float],
    before: bool = False,
) -> None:
    """One dimension; words too long for it stand beyond its end, or before it."""
    low, high = ends
    foot, away = start
    needed = lettering.width(words, SMALL)
    inside = needed + 2.0 <= high - low
    chain(
        sheet,
        [low, high],
        [words] if inside else [],
        line,
        along="y" if upright else "x",
        side=-round(away),
        feet=(foot, foot),
    )
    if inside:
        return
    if upright:
        y = low - 1.8 - needed / 2 if before else high + 1.8 + needed / 2
        sheet.text(line - 0.7, y, words, size=SMALL, turned=True, ink="dimension")
    elif before:
        sheet.text(low - 1.8, line + 0.7, words, size=SMALL, ha="right", ink="dimension")
    else:
        sheet.text(high + 1.8, line + 0.7, words, size=SMALL, ha="left", ink="dimension")


def _where(
    sheet: Sheet, cell: Cell, sketch: PieceSketch, beside: Sequence[SetPiece], asked: str
) -> None:
    """The lift from above, the piece marked, with its distances from center line and front."""
    pieces = (*beside, sketch.placed)
    made = assemble([ChosenLift("here", pieces)], [max(p.height for p in pieces)])
    parts = Stages(made, made.placed, ABOVE).seen(len(pieces))
    x0, y0, x1, y1 = bounds_of(parts)
    box = (min(x0, 0.0), min(y0, 0.0), max(x1, 0.0), y1)
    view, _ = fit(sheet, cell, box, (AIR + 2 * STEP, FOOT + 2 * STEP, 8.0, 6.0), LADDER)
    put_parts(view, parts, (made.placed[-1].name,))
    view.path([(box[0] - 0.03, 0.0), (box[2] + 0.03, 0.0)], "guide", "guide")
    view.path([(0.0, box[1] - 0.03), (0.0, y1 + 0.03)], "guide", "guide")
    left, right, front, _, _, _ = extent(sketch.placed)
    told_x, told_y = sketch.place
    near = left if left >= 0 else right
    if told_x and abs(near) > 1e-6:
        ends = sorted((view.at(0.0, 0.0)[0], view.at(near, 0.0)[0]))
        foot = view.at(0.0, box[1])[1]
        _dimension(sheet, (ends[0], ends[1]), foot - STEP, _words("X", told_x), False, (foot, -1.0))
    if told_y and abs(front) > 1e-6:
        ends = sorted((view.at(0.0, 0.0)[1], view.at(0.0, front)[1]))
        foot = view.at(box[0], 0.0)[0]
        _dimension(sheet, (ends[0], ends[1]), foot - STEP, _words("Y", told_y), True, (foot, -1.0))
    title(sheet, cell, "Where it stands, from above")
