"""The sheet on the screen: as many images as are sent apart."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable

import ipywidgets as w

from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import PANES, WHOLE
from fireplace_calc.drawing.composed.live import FORMAT
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet

URL = f"data:image/{FORMAT};base64,".encode()
"""Written into the address of the image itself, a picture stands at once: from a file of its own a
browser fetches it first.
"""


class Board:
    """A picture and the images it is shown in.

    Attributes
    ----------
    images : dict
        Of each pane, and of the whole sheet.
    rough : set
        Panes that show what was packed for a moving hand.
    """

    def __init__(self) -> None:
        self.picture = Picture(WIDTH, HEIGHT)
        self.images = {pane: _image(name) for name, pane in {**PANES, "whole": WHOLE}.items()}
        self.panes: tuple[Cell, ...] = ()
        self.rough: set[Cell] = set()
        self.widget = w.Box()
        self.widget.add_class("fireplace-sheet")

    def frame(self, whole: bool) -> None:
        """One image for one large view, or one for each pane."""
        self.panes, self.rough = (WHOLE,) if whole else tuple(PANES.values()), set()
        self.widget.children = [self.images[pane] for pane in self.panes]

    def show(
        self, views: Iterable[tuple[Cell, Sheet]], stamp: int | None = None, moving: bool = False
    ) -> None:
        """Paint what has changed and send it together: a page that draws one image keeps the next
        waiting.

        Under a ``moving`` hand it is sent for speed, and ``settle`` has to follow when the hand
        rests.
        """
        try:
            packed = self.picture.encode_changed(views, self.panes, stamp, fine=not moving)
        except Exception:  # what is half painted must not be taken for painted, nor be sent
            self.picture.shown = {}
            self.rough.clear()
            raise
        for pane, data in packed:
            self._send(pane, data)
            self.rough = self.rough | {pane} if moving else self.rough - {pane}

    def settle(self, stamp: int | None = None) -> None:
        """The hand rests: send finely what was sent for speed."""
        for pane in self.rough:
            self._send(pane, self.picture.encode_pane(pane, stamp, fine=True))
        self.rough.clear()

    def _send(self, pane: Cell, data: bytes) -> None:
        self.images[pane].value = URL + b64encode(data)


def _image(name: str) -> w.Image:
    made = w.Image(format="url")
    made.add_class("fireplace-picture")
    made.add_class(f"fireplace-view-{name}")
    return made
