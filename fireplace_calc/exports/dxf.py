"""The drawings as DXF: true size, a block to each piece, hatches, levels, real dimensions."""

from __future__ import annotations

import os
from functools import partial
from pathlib import Path
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.exports.cad.cut_views import hearth_plan, level_plans, plan_level, section_view
from fireplace_calc.exports.cad.document import new_document, signed_text
from fireplace_calc.exports.cad.front_bricks import front_view
from fireplace_calc.exports.cad.painted import figure_views
from fireplace_calc.exports.cad.pen import DxfPen
from fireplace_calc.exports.cad.title_insert import put_title
from fireplace_calc.exports.cad.true_view import LETTERS, TrueView
from fireplace_calc.report.sentences import require_units

BETWEEN = 0.8
"""Between two views. [m]"""


def write_dxf(result: Assessment, path: str | os.PathLike[str], units: str = FEET_INCHES) -> Path:
    """Every view in model space: front and section on one floor line, plans under them, the plan at
    the hearth on the front's center line, figures and title block below.

    Parameters
    ----------
    result : Assessment
    path : path
        Of the file; an earlier one is replaced only when the new one is whole.
    units : str
        ``feet-inches`` draws one to an inch, ``millimetres`` one to a millimetre; the file says
        which.

    Returns
    -------
    path
        The file.

    Raises
    ------
    InputError
        When there is no such unit system, or the file cannot be written.
    """
    units = require_units(units)
    document, scale = new_document(units)
    pen = DxfPen(document, scale, units)
    _draw(pen, result)
    write_whole(path, signed_text(document).encode(document.output_encoding))
    return Path(path)


def _draw(pen: DxfPen, result: Assessment) -> None:
    geometry = result.geometry
    pieces: Any = None
    if geometry.design.piece_set is not None:
        from fireplace_calc.exports.dxf_pieces import SetInserts  # wakes manifold3d

        pieces = SetInserts(pen, result)
    upright = partial(_cut_upright, pieces) if pieces else None
    level = partial(_cut_level, pieces, plan_level(geometry)) if pieces else None
    front, section = front_view(geometry), section_view(geometry, upright)
    pen.view(front, 0.0, 0.0)
    right = _beside(pen, section, front.room()[2] + BETWEEN, 0.0)
    low = min(front.room()[1], section.room()[1]) - BETWEEN
    plans = [hearth_plan(geometry, level), *(view for _, view in level_plans(geometry))]
    row = low - max(view.room()[3] for view in plans)
    pen.view(plans[0], 0.0, row)
    far = plans[0].room()[2] + BETWEEN
    for view in plans[1:]:
        far = _beside(pen, view, far, row)
    low = row + min(view.room()[1] for view in plans) - BETWEEN
    far = front.room()[0]
    figures = [*figure_views(result, pen.units)]
    for view in figures:
        far = _beside(pen, view, far, low - view.room()[3])
    high = [view.room()[3] - view.room()[1] for view in figures]
    low -= max(high, default=0.0) + BETWEEN
    if pieces is not None:
        half = geometry.frame.block_half
        pen.dx, pen.dy = right + half, 0.0
        pieces.in_space(pen.dx)
        pen.words("The set in space", -half, -0.5, 2 * LETTERS)
    put_title(pen, result, front.room()[0], low - 2.0)


def _beside(pen: DxfPen, view: TrueView, left: float, up: float) -> float:
    """Draw a view whose room begins at a distance; where the next may begin. [m]"""
    room = view.room()
    pen.view(view, left - room[0], up)
    return left + room[2] - room[0] + BETWEEN


def _cut_upright(pieces: Any, pen: DxfPen) -> None:
    pieces.cut_upright(pen.dx)


def _cut_level(pieces: Any, z: float, pen: DxfPen) -> None:
    pieces.cut_level((pen.dx, pen.dy), z)
