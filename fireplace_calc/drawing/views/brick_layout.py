"""The brick layout on a sheet of its own: each face flat, every brick, cuts marked, and the block
under it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from fireplace_calc.brickwork import BlockCourse, Brickwork, Layout, lay_brickwork
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import LADDER, ScaleName, Scales, fit, length, title
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon

TOP, FOOT, SIDE = 6.0, 30.0, 8.0
"""Room round a face for its words and its dimension. [mm]"""
LEAST = 36.0
"""Narrowest cell, for the words under a narrow face. [mm]"""
NAMES = {
    "floor": "Floor",
    "back": "Back",
    "raked back": "Raked back, along its slope",
    "side": "Side, front at the left; one mirrored",
}


Box = tuple[float, float, float, float]
"""Left, bottom, right, top. [m]"""
Laid = tuple[str, Box, Layout | BlockCourse]
"""Name of a face, its box, and what is laid on it."""


def can_lay(geometry: Geometry) -> bool:
    """Whether anything is laid brick by brick or block by block."""
    work = lay_brickwork(geometry)
    return bool(work.layouts) or bool(work.block_courses)


def bricks(
    sheet: Sheet,
    cell: Cell,
    geometry: Geometry,
    units: str,
    scales: Scales = LADDER,
    name_scale: ScaleName | None = None,
) -> View:
    """Draw every face of the firebox, or two courses of base block, side by side at one scale."""
    work = lay_brickwork(geometry)
    faces: list[Laid] = [
        (NAMES[layout.face.name], layout.face.box, layout) for layout in work.layouts
    ]
    if not faces:
        faces = list(_block_courses(work))
    ways = [[faces], [faces[:2], faces[2:]]] if len(faces) > 2 else [[faces]]
    cells, denominator = min(
        (_arranged(cell, rows, scales) for rows in ways), key=lambda way: way[1]
    )
    view = View(sheet, cell.left, cell.bottom, 1000 / denominator)
    for place, (name, box, layout) in cells:
        view, _ = fit(sheet, place, box, (SIDE, FOOT, SIDE, TOP), (denominator,))
        _face(view, place, name, box, layout, units)
    title(
        sheet,
        cell,
        "Brick layout" if work.layouts else "Block layout",
        name_scale(denominator) if name_scale else "",
    )
    return view


def _block_courses(work: Brickwork) -> Iterator[Laid]:
    """The two courses of block that take turns, of the base and under a raised hearth."""
    for name, laid in (
        ("Base block", work.base_block),
        ("Block under the hearth extension", work.extension_block),
    ):
        for k, course in enumerate(laid.courses[:2] if laid else ()):
            if not course.blocks:
                continue
            xs, ys = zip(*(point for ring, _ in course.blocks for point in ring), strict=True)
            box = (min(xs), min(ys), max(xs), max(ys))
            yield f"{name}, course {'odd' if k == 0 else 'even'}", box, course


def _arranged(
    cell: Cell, rows: list[list[Laid]], scales: Scales
) -> tuple[list[tuple[Cell, Laid]], float]:
    """A cell to each face, as wide as the face asks, and the largest scale at which all of them
    fit.
    """
    tall, cells = (cell.top - cell.bottom - 8) / len(rows), []
    for r, row in enumerate(rows):
        wide = [box[2] - box[0] for _, box, _ in row]
        each = [LEAST + (cell.right - cell.left - LEAST * len(row)) * w / sum(wide) for w in wide]
        left = cell.left
        for room, face in zip(each, row, strict=True):
            cells.append(
                (Cell(left, cell.top - tall * (r + 1), left + room, cell.top - tall * r), face)
            )
            left += room
    return cells, max(
        fit(Sheet(1, 1), place, box, (SIDE, FOOT, SIDE, TOP), scales)[1]
        for place, (_, box, _) in cells
    )


def _face(
    view: View, place: Cell, name: str, box: Box, laid: Layout | BlockCourse, units: str
) -> None:
    sheet = view.sheet
    pieces: Iterable[tuple[Polygon, bool]]
    if isinstance(laid, Layout):
        for zone in laid.face.zones:
            sheet.fill([view.ring(zone)], "wall", layer=-3)
        pieces = [(piece.ring, not piece.whole) for piece in laid.pieces]
        said = f"{laid.whole} whole, {laid.cut} cut, hatched" + (
            f", {len(laid.slivers)} under a quarter" if laid.slivers else ""
        )
    else:
        pieces, said = laid.blocks, f"{laid.whole} whole, {laid.cut} cut, hatched"
    tone, hatch = ("firebrick", "firebrick") if isinstance(laid, Layout) else ("block", "block")
    for ring, cut in pieces:
        placed = view.ring(ring)
        sheet.fill([placed], tone, hatch if cut else None, layer=-2)
        sheet.line(placed, "seen", closed=True)
    left, bottom, right, _ = box
    foot = view.at(0, bottom)[1]
    used = chain(
        sheet,
        [view.at(left, 0)[0], view.at(right, 0)[0]],
        [length(right - left, units)],
        foot - 5.4,
        limits=(place.left + 2, place.right - 2),
        feet=[foot - 0.5] * 2,
    )
    y = foot - 5.4 - used
    for text, bold in ((name, True), (said, False)):
        for line in wrapped(text, place.right - place.left - 4.0, bold):
            y -= PITCH
            sheet.text(
                (view.at(left, 0)[0] + view.at(right, 0)[0]) / 2, y, line, size=SMALL, bold=bold
            )
