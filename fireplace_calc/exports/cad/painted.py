"""Figures of the sheets in a drawing file: what a figure paints on paper, at true size again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from itertools import pairwise

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.marks import numbered
from fireplace_calc.drawing.plates.whole_set import MAKERS
from fireplace_calc.drawing.sheets.sheet import DimensionString, Label, Pair, Sheet, View
from fireplace_calc.exports.cad.pen import DxfPen
from fireplace_calc.exports.cad.true_view import CutShape, TrueView
from fireplace_calc.geometry.polygons import Point

FROM = ("plan_sheets.plans", "details.sheet", "cutting.sheets")
"""Sheets of the set that show what is not drawn from the solids here; the module of each has
``figures(result, units)``.
"""
AT_TRUE_SIZE = frozenset(
    {"front", "section", "hearth_plan", "flue_plan", "base_plan", "throat_plan", "chimney_plan"}
)
"""Figures that the file draws from the solids themselves, every corner dimensioned."""
LAYERS = {
    "cut": "cut-lines",
    "seen": "seen-lines",
    "fine": "fine-lines",
    "hidden": "hidden",
    "center": "center-lines",
    "plane": "cutting-planes",
    "ground": "ground",
}
"""Layer of each weight of line; what points at something is a leader."""


def figure_views(result: Assessment, units: str) -> Iterator[TrueView]:
    """Details, roof plan, the chimney against the roof and whatever else the sheets show.

    Parameters
    ----------
    result : Assessment
    units : str

    Yields
    ------
    TrueView
        Beside those that are drawn from the solids.
    """
    for figure in sheet_figures(result, units):
        if figure.key not in AT_TRUE_SIZE:
            yield painted_view(figure)


def sheet_figures(result: Assessment, units: str) -> Iterator[Figure]:
    """Every figure of those sheets. [m]"""
    for maker in (name for name in MAKERS if name in FROM):
        yield from import_module(f"fireplace_calc.drawing.{maker}").figures(result, units)


@dataclass(frozen=True, slots=True)
class OnPaper:
    """A painted figure: its sheet, and the window that takes a place on paper back to the model."""

    sheet: Sheet
    view: View

    def true(self, point: Pair | np.ndarray) -> Point:
        """A place on paper [mm] in the model [m]."""
        v = self.view
        return (float(point[0] - v.x0) / v.scale, float(point[1] - v.y0) / v.scale)

    @property
    def denominator(self) -> float:
        """Of the scale it is painted at. [-]"""
        return 1000 / self.view.scale


def on_paper(figure: Figure) -> OnPaper:
    """A figure painted at its largest scale, alone.

    Parameters
    ----------
    figure : Figure

    Returns
    -------
    OnPaper
    """
    denominator = figure.scales[0]
    wide, high = figure.size(denominator)
    left, low, _, _ = figure.room(denominator)
    k, sheet = 1000 / denominator, Sheet(wide, high)
    view = View(sheet, left - figure.box[0] * k, low - figure.box[1] * k, k)
    figure.paint(view)
    numbered(sheet, {})
    return OnPaper(sheet, view)


def painted_view(figure: Figure) -> TrueView:
    """A figure as a view of the file. [m]"""
    made = on_paper(figure)
    corners = [made.true(corner) for corner in ((0.0, 0.0), (made.sheet.width, made.sheet.height))]
    name = f"{figure.mark} {figure.name}".strip()
    box = (*corners[0], *corners[1])
    return TrueView(figure.key, name, box=box, more=partial(_put, made))


def _put(made: OnPaper, pen: DxfPen) -> None:
    """Everything that is on the paper, where the view stands."""
    sheet, times = made.sheet, made.denominator
    for material, rings in sheet.hatched.items():
        cut = CutShape(material, tuple(tuple(made.true(p) for p in ring) for ring in rings))
        pen.hatch(cut, apart=times)
    for (_, tone), polygons in sheet.fills.items():
        for polygon in polygons if tone == "ink" else ():
            pen.filled([[made.true(p) for p in ring] for ring in polygon])
    for segments in sheet.hatches:
        if len(segments):
            flat = [made.true(p) for p in np.asarray(segments).reshape(-1, 2)]
            pen.segments(np.array(flat).reshape(-1, 2, 2), "joints")
    of_strings = [_drawn(sheet, string) for string in sheet.measured]
    lines = {key for keys, _ in of_strings for key in keys}
    words = {n for _, numbers in of_strings for n in numbers}
    for (weight, ink), polylines in sheet.lines.items():
        for n, points in enumerate(polylines):
            if (weight, ink, n) not in lines and len(points) > 1:
                layer = LAYERS.get(weight, "leaders") if ink == "ink" else "leaders"
                pen.ring([made.true(p) for p in points], layer, closed=False)
    for n, label in enumerate(sheet.labels):
        if n not in words and label.text.strip():
            _written(made, pen, label)
    for string in sheet.measured:
        _dimensioned(made, pen, string)


def _drawn(sheet: Sheet, string: DimensionString) -> tuple[set[tuple[str, str, int]], range]:
    """Which lines and which labels of a sheet are those of a dimension string."""
    keys = {
        (*pen, n)
        for pen, (first, last) in string.drawn.items()
        for n in range(first, min(last, len(sheet.lines[pen])))
    }
    return keys, range(*string.written)


def _dimensioned(made: OnPaper, pen: DxfPen, string: DimensionString) -> None:
    """Its gaps as dimensions."""
    upright = string.along == "y"

    def spot(along: float, across: float) -> Point:
        return made.true((across, along) if upright else (along, across))

    feet = string.feet or (string.line,) * len(string.stops)
    line = spot(string.stops[0], string.line)[0 if upright else 1]
    ends = list(zip(string.stops, feet, strict=True))
    for (a, foot), (b, other) in pairwise(ends):
        if abs(b - a) > 1e-6:
            times = made.denominator / APART_AT
            pen.dimension(spot(a, foot), spot(b, other), line, upright, times)


APART_AT = 20.0
"""Denominator for which the style of dimensions is right. [-]"""


def _written(made: OnPaper, pen: DxfPen, label: Label) -> None:
    left, low, right, top = label.extent
    x, y = (right, low) if label.turned else (left, low)
    spot = made.true((x, y))
    turn = 90.0 if label.turned else 0.0
    pen.words(label.text, spot[0], spot[1], label.size * made.denominator / 1000, turn)
