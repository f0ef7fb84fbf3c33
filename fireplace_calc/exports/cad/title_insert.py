"""The title block of a drawing file: an insert whose attributes say whose job it is and from which
inputs it was drawn.
"""

from __future__ import annotations

from datetime import date
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.drawing.plates.title_block import CAUTION
from fireplace_calc.drawing.sheets.lettering import in_rows
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.exports.cad.pen import DxfPen

BLOCK = "title block"
WIDE, ROW_HIGH = 4.0, 0.2
"""Of the block, and of one of its rows: 200 by 10 mm at 1:20. [m]"""
SIZE = 0.06
"""Letters of an attribute. [m]"""
ROWS: tuple[tuple[tuple[str, float, float], ...], ...] = (
    (("JOB", 0.0, WIDE),),
    (("JOB2", 0.0, WIDE),),
    (("PLACE", 0.0, WIDE),),
    (("CLIENT", 0.0, 1.6), ("DRAWN", 1.6, 2.8), ("CHECKED", 2.8, WIDE)),
    (("DATE", 0.0, 0.9), ("INPUTS", 0.9, 2.2), ("UNITS", 2.2, WIDE)),
    (("CODE", 0.0, WIDE),),
    (("CAUTION", 0.0, WIDE),),
    (("CAUTION2", 0.0, WIDE),),
    (("PROGRAM", 0.0, WIDE),),
)
"""Tags of each row with where they begin and end, from the top. [m]"""


def told(result: Assessment, units: str) -> dict[str, str]:
    """What each attribute says; a name that is longer than two rows is cut short."""
    design = result.design
    job, caution = _rows(design.name), _rows(CAUTION)
    return {
        "JOB": job[0],
        "JOB2": job[1],
        "PLACE": _short(design.site.place or "place not named", WIDE),
        "CLIENT": _short(f"Client: {design.job.client or 'not named'}", 1.6),
        "DRAWN": _short(f"Drawn: {design.job.drawn or 'not named'}", 1.2),
        "CHECKED": _short(f"Checked: {design.job.checked or 'nobody'}", 1.2),
        "DATE": date.today().isoformat(),
        "INPUTS": f"Inputs {fingerprint(design)}",
        "UNITS": "One unit is one inch" if units == "feet-inches" else "One unit is 1 mm",
        "CODE": f"Checked against {result.pack}",
        "CAUTION": caution[0],
        "CAUTION2": caution[1],
        "PROGRAM": made_by(),
    }


def _rows(text: str) -> tuple[str, str]:
    """Two rows of a text, in letters as they are measured on paper at 1:20."""
    rows = in_rows(text, (WIDE - 0.1) * 50, SIZE * 50) or [""]
    first, rest = rows[0], " ".join(rows[1:])
    return _short(first, WIDE), _short(rest, WIDE)


def _short(text: str, room: float) -> str:
    from fireplace_calc.drawing.plates.title_block import elided

    return elided(text, (room - 0.1) * 50, SIZE * 50)


def put_title(pen: DxfPen, result: Assessment, x: float, y: float) -> None:
    """The block with its lower left corner at a point. [m]"""
    scale, document = pen.scale, pen.document
    block: Any = document.blocks.new(BLOCK)
    high = ROW_HIGH * len(ROWS)
    frame = [(0.0, 0.0), (WIDE, 0.0), (WIDE, high), (0.0, high)]
    on = {"layer": "0"}
    block.add_lwpolyline([(a * scale, b * scale) for a, b in frame], close=True, dxfattribs=on)
    pen.dx = pen.dy = 0.0
    insert = pen.space.add_blockref(
        BLOCK, pen.at(x, y), dxfattribs={"layer": pen.layer("title-block")}
    )
    words = told(result, pen.units)
    for n, row in enumerate(ROWS):
        level = high - (n + 1) * ROW_HIGH
        if n not in (0, 1, 7):
            line = [(0.0, level + ROW_HIGH), (WIDE, level + ROW_HIGH)]
            block.add_lwpolyline([(a * scale, b * scale) for a, b in line], dxfattribs=on)
        for tag, left, _ in row:
            spot = (left + 0.04, level + 0.06)
            block.add_attdef(
                tag,
                (spot[0] * scale, spot[1] * scale),
                dxfattribs={"height": SIZE * scale, "prompt": tag.capitalize()},
            )
            insert.add_attrib(
                tag,
                words[tag],
                pen.at(x + spot[0], y + spot[1]),
                {"height": SIZE * scale, "layer": "title-block"},
            )
