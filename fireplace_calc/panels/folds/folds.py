"""What can be unfolded under the picture. A fold is written only while it is open, so that a closed
one costs nothing.
"""

from __future__ import annotations

from collections.abc import Callable

import ipywidgets as w

from fireplace_calc.assessment import Assessment
from fireplace_calc.editing.changes import value_of
from fireplace_calc.panels import html
from fireplace_calc.panels.host import Host
from fireplace_calc.proportion import NAMES, find_guides
from fireplace_calc.report.books import checklist
from fireplace_calc.rules import PACKS

REST, LONG_REST = 0.06, 0.25
"""How long a hand has to rest before words are sent, and before what takes longer is worked out.
[s]
"""


class Fold:
    """One fold: what is in it, and how it follows the design. It is made when it is first unfolded.

    Parameters
    ----------
    panel : Host
        Whose design it tells of.
    """

    rest = REST

    def __init__(self, panel: Host):
        self.panel = panel
        self.widget: w.Widget = w.VBox()

    def update(self) -> None:
        """Say what there is to say about the design as it stands now."""


class Words(Fold):
    """A fold of words and tables made by one function of the assessment and the units."""

    def __init__(self, panel: Host, said: Callable[[Assessment, str], str], rest: float = REST):
        super().__init__(panel)
        self.said, self.rest = said, rest
        self.widget = w.HTML()

    def update(self) -> None:
        self.widget.value = self.said(self.panel.result, self.panel.units)


class Checklist(Fold):
    """The answers a book waits for; the same controls as in their groups, so one answer does for
    both.
    """

    def __init__(self, panel: Host):
        super().__init__(panel)
        self.hint, self.ticks = w.HTML(), w.Box(layout=w.Layout(flex_flow="row wrap"))
        self.widget = w.VBox([self.hint, self.ticks])

    def update(self) -> None:
        design, pack = self.panel.design, self.panel.pack
        keys = checklist(PACKS[pack])
        left = sum(value_of(design, key) is None for key in keys)
        self.hint.value = html.checklist_hint(pack, left)
        shown = tuple(self.panel.everything.control(key).widget for key in keys)
        if self.ticks.children != shown:
            self.ticks.children = shown


class Inputs(Fold):
    """Everything else that can be chosen; the panel itself keeps these controls up to date."""

    def __init__(self, panel: Host):
        super().__init__(panel)
        self.widget = panel.everything.widget


class Guides(Fold):
    """Proportion guides to switch on and off over the view in its room, and what each says."""

    def __init__(self, panel: Host):
        super().__init__(panel)
        self.boxes = {
            name: w.Checkbox(
                description=name.capitalize(), indent=False, layout=w.Layout(width="17em")
            )
            for name in NAMES
        }
        for name, box in self.boxes.items():
            box.observe(lambda event, name=name: self._switch(name, event["new"]), "value")
        self.said = w.HTML()
        self.widget = w.VBox(
            [
                w.HTML(
                    html.remark(
                        "Switch a guide on to see it over the view in its room. Guides, not rules."
                    )
                ),
                w.Box(list(self.boxes.values()), layout=w.Layout(flex_flow="row wrap")),
                self.said,
            ]
        )

    def _switch(self, name: str, on: bool) -> None:
        view_pane = self.panel.view_pane
        view_pane.guides = view_pane.guides | {name} if on else view_pane.guides - {name}
        if on and view_pane.view != "room":
            self.panel.viewer.value = "room"  # draws
        else:
            self.panel.redraw()

    def update(self) -> None:
        self.said.value = html.guided(
            find_guides(self.panel.result.geometry, self.panel.units),
            self.panel.result,
            self.panel.units,
        )


class Body(Fold):
    """The fireplace as a body that turns."""

    rest = LONG_REST

    def __init__(self, panel: Host):
        super().__init__(panel)
        self.turning = None

    def update(self) -> None:
        if self.turning is None:
            from fireplace_calc.panels.picture.turning import (
                Turning,  # here, so that whoever never unfolds it need not wait
            )

            self.turning = Turning(self.panel.result.geometry)
            self.widget.children = [self.turning]
        else:
            self.turning.put(self.panel.result.geometry)
