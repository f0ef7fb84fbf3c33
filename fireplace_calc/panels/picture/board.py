"""A sheet on the screen, or the views of one, each on a canvas of its own."""

from __future__ import annotations

from collections.abc import Iterable

from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import CELLS
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.panels.picture.live_stage import LiveStage, Place
from fireplace_calc.panels.picture.sheet_page import SheetPage, SheetTraits

WHOLE_NAME = "whole"
"""Of a sheet that is shown as one."""
_NAMES = {cell: name for name, cell in CELLS.items()}


class Board:
    """Where sheets are shown that are laid out for one size.

    Parameters
    ----------
    page : SheetTraits, optional
        A page that has a place for them among other things; one of its own when left out.

    Attributes
    ----------
    widget : SheetTraits
    stage : LiveStage
        What stands there.
    """

    def __init__(self, page: SheetTraits | None = None) -> None:
        self.widget = SheetPage() if page is None else page
        self.stage = LiveStage()

    def set_theme(self, theme: str) -> None:
        """Draw on light, dark or print paper, from the next picture on."""
        self.stage.set_theme(theme)

    def show(self, views: Iterable[tuple[Cell, Sheet]], stamp: int | None = None) -> None:
        """Send sheets, each in its cell.

        Parameters
        ----------
        views : iterable of (Cell, Sheet)
        stamp : int, optional
            A number that tells a benchmark which picture it sees.
        """
        self.stage.show(
            (_NAMES.get(cell, WHOLE_NAME), _place(cell), cell, sheet) for cell, sheet in views
        )
        self._send(stamp)

    def show_whole(self, sheet: Sheet, stamp: int | None = None) -> None:
        """Send one sheet, in whose proportions its place then stands; the smaller it is, the larger
        its letters.
        """
        cell = Cell(0.0, 0.0, sheet.width, sheet.height)
        self.stage.show([(WHOLE_NAME, (0.0, 0.0, 1.0, 1.0), cell, sheet)])
        self._send(stamp, sheet.width / sheet.height)

    def _send(self, stamp: int | None = None, ratio: float | None = None) -> None:
        told, bodies = self.stage.message(stamp=stamp)
        self.widget.drawn = {"stage": {**told, "ratio": ratio}, "bodies": bodies}

    def clear(self) -> None:
        """Show nothing."""
        self.stage.show(())
        self.widget.drawn = {}


def _place(cell: Cell) -> Place:
    """Where a cell's canvas stands, in shares of the whole sheet."""
    wide, high = cell.right - cell.left, cell.top - cell.bottom
    return cell.left / WIDTH, 1 - cell.top / HEIGHT, wide / WIDTH, high / HEIGHT
