"""Figures of a sheet: each says how large it is and what room its words take, then draws itself
through the window it is given; they are put on sheets side by side at the largest scales that fit.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from fireplace_calc.drawing.plates.marks import TITLE_ROOM, title, title_width
from fireplace_calc.drawing.sheets.sheet import Sheet, View

Extent = tuple[float, float, float, float]
"""Left, bottom, right, top."""
BETWEEN = 8.0
"""Between two figures. [mm]"""


@dataclass(frozen=True, slots=True)
class Figure:
    """One drawing of a sheet.

    Attributes
    ----------
    key : str
        Its name in the program; marks refer to it.
    mark : str
        In the ring before its title: a letter for a section or a plan, a number for others.
    name : str
        Its title.
    box : tuple of float
        What is drawn, left, bottom, right, top. [m]
    margins : tuple of float, or callable
        Room for words and dimensions beyond that, left, bottom, right, top; the title's not
        counted. A callable gives it for a denominator: a column of notes that is higher than the
        drawing needs more the smaller that is. [mm]
    paint : callable
        Draws and annotates through a window; keeps within box and margins.
    scales : tuple of float
        Denominators it may be drawn at, the largest scale first. [-]
    note : str
        After the scale: where it is cut, which way one looks.
    """

    key: str
    mark: str
    name: str
    box: Extent
    margins: Extent | Callable[[float], Extent]
    paint: Callable[[View], None]
    scales: tuple[float, ...]
    note: str = ""

    def room(self, denominator: float) -> Extent:
        """Its margins at a scale. [mm]"""
        return self.margins(denominator) if callable(self.margins) else self.margins

    def size(self, denominator: float, scale: str = "") -> tuple[float, float]:
        """Width and height on paper with words and title. [mm]"""
        k, (left, low, right, top) = 1000 / denominator, self.box
        margins = self.room(denominator)
        wide = (right - left) * k + margins[0] + margins[2]
        high = (top - low) * k + margins[1] + margins[3] + TITLE_ROOM
        return max(wide, title_width(self.mark, self.name, scale, self.note)), high


@dataclass(slots=True)
class Plate:
    """One sheet of the set before it is numbered.

    Attributes
    ----------
    name : str
        What it shows, as its title block and the cover's list have it.
    sheet : Sheet
    scale : str
        ``none``, ``as shown``, or the one scale as the trade writes it.
    denominator : float or None
        Of that one scale; a bar is drawn for it.
    figures : list of str
        Keys of the figures that stand on it.
    """

    name: str
    sheet: Sheet
    scale: str = "none"
    denominator: float | None = None
    figures: list[str] = field(default_factory=list)


def put(
    sheet: Sheet, corner: tuple[float, float], figure: Figure, denominator: float, scale: str
) -> View:
    """Draw a figure with its title.

    Parameters
    ----------
    sheet : Sheet
    corner : float, float
        Lower left, where the title begins. [mm]
    figure : Figure
    denominator : float
    scale : str
        As it is written under the title.

    Returns
    -------
    View
        The window it was drawn through.
    """
    k, margins = 1000 / denominator, figure.room(denominator)
    x0 = corner[0] + margins[0] - figure.box[0] * k
    y0 = corner[1] + TITLE_ROOM + margins[1] - figure.box[1] * k
    view = View(sheet, x0, y0, k)
    figure.paint(view)
    title(sheet, corner, figure.mark, figure.name, scale, figure.note)
    return view
