"""What can be unfolded under the picture. A fold is written only while it is open, so that a closed
one costs nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import TYPE_CHECKING, Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment
from fireplace_calc.editing.changes import value_of
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import row
from fireplace_calc.panels.host import Host
from fireplace_calc.proportion import NAMES, find_guides
from fireplace_calc.report.books import checklist
from fireplace_calc.rules import PACKS

if TYPE_CHECKING:
    from fireplace_calc.panels.scene.scene_view import SceneView

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

    def __init__(self, panel: Host) -> None:
        self.panel = panel
        self.widget: w.Widget = w.VBox()

    def lead(self) -> None:
        """Show what can follow a moving hand; most folds wait until it rests."""

    def update(self) -> None:
        """Say what there is to say about the design as it stands now."""


class Words(Fold):
    """A fold of words and tables made by one function of the assessment and the units."""

    def __init__(
        self, panel: Host, said: Callable[[Assessment, str], str], rest: float = REST
    ) -> None:
        super().__init__(panel)
        self.said, self.rest = said, rest
        self.widget = w.HTML()

    def update(self) -> None:
        """The words for the design as it stands."""
        self.widget.value = self.said(self.panel.result, self.panel.units)


class Checklist(Fold):
    """The answers a book waits for; the same controls as in their groups, so one answer does for
    both.
    """

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.hint, self.ticks = w.HTML(), row([])
        self.widget = w.VBox([self.hint, self.ticks])

    def update(self) -> None:
        """The answers that the book of the moment waits for."""
        design, pack = self.panel.design, self.panel.pack
        keys = checklist(PACKS[pack])
        left = sum(value_of(design, key) is None for key in keys)
        self.hint.value = html.checklist_hint(pack, left)
        shown = tuple(self.panel.everything.control(key).widget for key in keys)
        if self.ticks.children != shown:
            self.ticks.children = shown


class Inputs(Fold):
    """Every input without a slider; the panel itself keeps these controls up to date."""

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.widget = panel.everything.widget


class Guides(Fold):
    """Proportion guides to switch on and off over the view in its room, and what each says."""

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.boxes = {
            name: w.Checkbox(
                description=name.capitalize(), indent=False, layout=w.Layout(width="17em")
            )
            for name in NAMES
        }
        for name, box in self.boxes.items():
            box.observe(partial(self._switch, name), "value")
        self.said = w.HTML()
        hint = "Switch a guide on to see it over the view in its room. Guides, not rules."
        self.widget = w.VBox([w.HTML(html.remark(hint)), row(self.boxes.values()), self.said])

    def _switch(self, name: str, event: Mapping[str, Any]) -> None:
        view_pane, on = self.panel.view_pane, event["new"]
        view_pane.guides = view_pane.guides | {name} if on else view_pane.guides - {name}
        if on and view_pane.view != "room":
            self.panel.set_view("room")  # draws
        else:
            self.panel.redraw()

    def update(self) -> None:
        """What each guide says of the design as it stands."""
        result, units = self.panel.result, self.panel.units
        self.said.value = html.guided(find_guides(result.geometry, units), result, units)


class InItsRoom(Fold):
    """The fireplace in its room, lit; whole, cut open, drawn apart, or built step by step."""

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.scene: SceneView | None = None

    def update(self) -> None:
        """Show the design as it stands, from where the reader looks."""
        result, units = self.panel.result, self.panel.units
        if self.scene is None:
            # here, so that whoever never unfolds it need not wait
            from fireplace_calc.panels.scene.scene_view import SceneView

            self.scene = SceneView(result, units=units)
            self.widget.children = [self.scene]
            return
        if self.scene.result is not result:
            self.scene.put(result)
        self.scene.units = units
