"""Every sheet and every view as a picture on its own."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES, INCH, InputError
from fireplace_calc.drawing.composed.catalogue import CATALOGUE, NamedView
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.page.saved_picture import known_kind, picture
from fireplace_calc.drawing.plates.sizes import paper
from fireplace_calc.drawing.plates.whole_set import sheets
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.draft_charts import legend, limits, pressure, velocity
from fireplace_calc.drawing.views.layout import ARCHITECT
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.jobs.names import plain
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.explore import face_curve, limit_map, pressure_steps
from fireplace_calc.report.draft_report import beside
from fireplace_calc.takeoff.cost import Price

EDGE = 8.0
"""Left free round a view that stands alone. [mm]"""


EVENING = "mild"
"""Which evening the pressures are shown of."""
MOVED = (("flue.sections", "sections", 1.0), ("opening.extension", "extension", 2 * INCH))
"""Inputs that face velocity is drawn over, from end to end: key, name, step [-] or [m]."""


class NamedPicture(NamedTuple):
    """One picture: how its file begins, what it is called, and what it shows."""

    key: str
    name: str
    sheet: Sheet


def pictures(
    result: Assessment,
    units: str = FEET_INCHES,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
) -> list[NamedPicture]:
    """The sheets of the paper set as they are printed, then every view and chart alone on a paper
    of that size.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str or None
        Paper; the one usual for the units when left out.
    prices : dict or None
        Price list by item; else the example list, which is invented.

    Returns
    -------
    list of NamedPicture

    Raises
    ------
    InputError
        When there is no such paper.
    """
    on = paper(units, size)
    wide, high = on.width, on.height
    every = sheets(result, units, size, prices)
    made = [
        NamedPicture(
            f"sheet-{n:02d}-{plain(name, 'sheet')}", f"Sheet {n} of {len(every)}: {name}", sheet
        )
        for n, (name, sheet) in enumerate(every, 1)
    ]
    for view in CATALOGUE.values():
        if view.suits(result.geometry):
            sheet = _alone(view, result, units, Sheet(wide, high))
            made.append(NamedPicture(f"view-{view.key}", view.label, sheet))
    return [*made, *_charts(result, units, wide, high)]


def _charts(result: Assessment, units: str, wide: float, high: float) -> Iterator[NamedPicture]:
    """Charts of the draft, each alone."""
    design, whole = result.design, Cell(EDGE, EDGE, wide - EDGE, high - EDGE)

    def alone(key: str, name: str, draws: Callable[[Sheet], None]) -> NamedPicture:
        sheet = Sheet(wide, high)
        draws(sheet)
        return NamedPicture(f"chart-{key}", name, sheet)

    steps = pressure_steps(result.draft, result.geometry, EVENING)
    yield alone(
        "pressure",
        "Draft: pressure on the way up",
        lambda sheet: pressure(sheet, whole, EVENING, steps, units),
    )
    for key, name, step in MOVED:
        least, most = all_inputs()[key].bounds
        curve = face_curve(design, key, np.arange(least, most + step / 2, step))
        yield alone(
            f"velocity-by-{name}",
            f"Draft: face velocity by {name}",
            partial(velocity, cell=whole, curve=curve, units=units),
        )
    found, half = limit_map(design, result.pack), EDGE + 0.6 * (wide - 2 * EDGE)

    def of_limits(sheet: Sheet) -> None:
        limits(sheet, Cell(EDGE, EDGE, half, high - EDGE), found, units)
        legend(sheet, Cell(half, EDGE, wide - EDGE, high - EDGE), found, beside(result, units))

    yield alone("limits", "Draft: what limits where", of_limits)


def _alone(view: NamedView, result: Assessment, units: str, sheet: Sheet) -> Sheet:
    """A view at the largest round scale that fits, with its scale written under it."""
    cell = Cell(EDGE, EDGE, sheet.width - EDGE, sheet.height - EDGE)
    more: dict[str, Any] = {"limits": roof_limits(result.findings)} if view.key == "roof" else {}
    scales = ARCHITECT[units]
    view.draw(
        *(sheet, cell, result.geometry, units),
        scales=scales,
        name_scale=lambda denominator: scales[denominator],
        **more,
    )
    return sheet


def write_pictures(
    result: Assessment,
    folder: str | os.PathLike[str],
    kind: str = "svg",
    units: str = FEET_INCHES,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
) -> Iterator[tuple[int, int, str]]:
    """Write all of them into a folder, one by one; each is replaced only when it is whole.

    Parameters
    ----------
    result : Assessment
    folder : path
        Made when it is not there.
    kind : str
        ``svg`` or ``png``.
    units : str
    size : str or None
        As ``pictures`` has it.
    prices : dict or None

    Yields
    ------
    int, int, str
        How many are written, of how many, and the name of the next.

    Raises
    ------
    InputError
        When there is no such kind or paper, or the folder cannot be written.
    """
    known_kind(kind)
    made = pictures(result, units, size, prices)
    place = Path(folder)
    try:
        place.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise InputError(
            f"{place} cannot be made a folder: {trouble.strerror}.", "folder", "", str(place)
        ) from None
    for done, one in enumerate(made):
        yield done, len(made), one.name
        write_whole(place / f"{one.key}.{kind}", picture(one.sheet, kind))
    yield len(made), len(made), ""
