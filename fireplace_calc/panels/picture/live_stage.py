"""The stage: the sheets that are shown, sent as lines and letters when they have changed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple, Protocol

from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import THEMES

USUAL = (996.0, 488.0)
"""Of a stage beside the controls in a window of 1280 by 800, until the page tells its own. [px]"""

Place = tuple[float, float, float, float]
"""Left, top, width and height of a canvas, in shares of the stage. [-]"""
Shown = tuple[str, Place, Cell, Sheet]
"""Name, where its canvas stands, what of the sheet is on it, and the sheet."""


class Sent(NamedTuple):
    """A sheet on the stage: where its canvas stands, and what the page is told of it."""

    sheet: Sheet
    place: Place
    told: dict[str, Any]
    body: bytes


class StagePage(Protocol):
    """A page that is sent what has changed."""

    def send(self, content: Any, buffers: Any = None) -> None:
        """One message, with its bytes beside it."""
        ...


class LiveStage:
    """What stands on the page's stage.

    Parameters
    ----------
    page : StagePage, optional
        None where somebody else sends what ``message`` gives.

    Attributes
    ----------
    size : tuple of float
        Width and height of the stage. [px]
    shown : dict
        By name.
    heard : bool
        Whether the page has asked: until then nothing is sent, and ``first`` holds it.
    """

    def __init__(self, page: StagePage | None = None) -> None:
        self.page, self.theme, self.size = page, "light", USUAL
        self.shown: dict[str, Sent] = {}
        self.heard = False

    def set_theme(self, theme: str) -> None:
        """Draw on light, dark or print paper."""
        self.theme, self.shown = theme, {}

    def show(self, views: Iterable[Shown], stamp: int | None = None) -> None:
        """Send what has changed, all of a step together.

        Parameters
        ----------
        views : iterable of tuple
        stamp : int, optional
            A number that tells a benchmark which picture it sees.
        """
        kept: dict[str, Sent] = {}
        for name, place, cell, sheet in views:
            held = self.shown.get(name)
            if held and held.sheet is sheet and held.place == place:
                kept[name] = held
                continue
            told, body = page_message(sheet, self.theme, cell)
            words = ", ".join(label.text for label in sheet.labels)
            told |= {"name": name, "at": place, "words": words}
            kept[name] = Sent(sheet, place, told, body)
        fresh = [name for name, sent in kept.items() if sent is not self.shown.get(name)]
        self.shown = kept  # all of them, or after a fault none
        if self.heard:
            self.send(fresh, stamp)

    def send(self, names: Iterable[str], stamp: int | None = None) -> None:
        """Send some of what is shown."""
        stage, bodies = self.message(names, stamp)
        assert self.page is not None
        self.page.send({"stage": stage}, bodies)

    def message(
        self, names: Iterable[str] | None = None, stamp: int | None = None
    ) -> tuple[dict[str, Any], list[bytes]]:
        """What the page is told of some sheets, or of all, and their points."""
        chosen = list(self.shown if names is None else names)
        stage = {
            "sheets": [self.shown[name].told for name in chosen],
            "names": list(self.shown),
            "paper": THEMES[self.theme].paper,
            "stamp": stamp,
        }
        return stage, [self.shown[name].body for name in chosen]
