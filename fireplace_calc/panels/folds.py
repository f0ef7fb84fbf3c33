"""What can be unfolded under the picture. A fold is written only while it is open, so that a closed one costs nothing."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import ipywidgets as w

from fireplace_calc.assess import Assessment
from fireplace_calc.books import checklist
from fireplace_calc.drawing.working import working
from fireplace_calc.drawing.written import cutting, ordering, standing
from fireplace_calc.panels import html
from fireplace_calc.rules import PACKS

if TYPE_CHECKING:
    from fireplace_calc.panels.panel import Panel

REST, LONG_REST = 0.06, 0.25
"""How long a hand has to rest before words are sent, and before what takes longer is worked out. [s]"""


class Fold:
    """One fold: its title, what is in it, and how it follows the design.

    Parameters
    ----------
    panel : Panel
        Whose design it tells of.
    """

    title = ""
    rest = REST

    def __init__(self, panel: Panel):
        self.panel = panel
        self.widget: w.Widget = w.VBox()

    def tell(self) -> None:
        """Say what there is to say about the design as it stands now."""


class Words(Fold):
    """A fold of words and tables made by one function of the assessment and the units."""

    def __init__(self, panel: Panel, title: str, said: Callable[[Assessment, str], str], rest: float = REST):
        super().__init__(panel)
        self.title, self.said, self.rest = title, said, rest
        self.widget = w.HTML()

    def tell(self) -> None:
        self.widget.value = self.said(self.panel.result, self.panel.units)


class Checklist(Fold):
    """The answers a book waits for; the same controls as in their groups, so one answer does for both."""

    title = "Site checklist"

    def __init__(self, panel: Panel):
        super().__init__(panel)
        self.hint, self.ticks = w.HTML(), w.Box(layout=w.Layout(flex_flow="row wrap"))
        self.widget = w.VBox([self.hint, self.ticks])

    def tell(self) -> None:
        design, pack = self.panel.design, self.panel.pack
        keys = checklist(PACKS[pack])
        left = sum(getattr(getattr(design, group), name) is None for group, _, name in (key.partition(".") for key in keys))
        self.hint.value = html.checklist_hint(pack, left)
        shown = tuple(self.panel.controls[key].widget for key in keys)
        if self.ticks.children != shown:
            self.ticks.children = shown


class Inputs(Fold):
    """Everything else that can be chosen; the panel itself keeps these controls up to date."""

    title = "Everything else that can be chosen"

    def __init__(self, panel: Panel):
        super().__init__(panel)
        self.widget = panel.everything.widget


def _words(title: str, said: Callable[[Assessment, str], str], rest: float = REST) -> Callable[[Panel], Fold]:
    return lambda panel: Words(panel, title, said, rest)


FOLDS: dict[str, Callable[[Panel], Fold]] = {
    "checks": _words("Checks", html.findings),
    "checklist": Checklist,
    "books": _words("Every book", html.books, LONG_REST),
    "draft": _words("Will it draw?", html.draft, LONG_REST),
    "structure": _words("Will it stand?", lambda result, units: html.flow(standing(result, units)), LONG_REST),
    "bricks": _words("Brickwork and cuts", lambda result, units: html.flow(cutting(result, units)), LONG_REST),
    "takeoff": _words("Material takeoff", html.takeoff),
    "cost": _words("Order and cost", lambda result, units: html.flow(ordering(result, units)), LONG_REST),
    "work": _words("Order of work", lambda result, units: html.flow(working(result, units)), LONG_REST),
    "inputs": Inputs,
}
"""Every fold by the name a notebook asks for it."""
