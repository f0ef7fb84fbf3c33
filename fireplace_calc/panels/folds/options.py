"""Up to four designs put aside and seen side by side, with what each costs, weighs, draws and
breaks.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import ipywidgets as w

from fireplace_calc.assessment import assess
from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import views
from fireplace_calc.panels import html
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.session import MOST_OPTIONS
from fireplace_calc.report.alternatives import side_by_side

if TYPE_CHECKING:
    from fireplace_calc.panels.live_panel import Panel


class Options(Fold):
    """The fold of options: a row of small pictures with their buttons, and a table under them."""

    rest = LONG_REST

    def __init__(self, panel: Panel):
        super().__init__(panel)
        self.table, self.shelf = w.HTML(), w.Box()
        self.shelf.add_class("fireplace-shelf")
        self.keep = w.Button(
            description="Keep this design as an option", layout=w.Layout(width="auto")
        )
        self.keep.on_click(lambda _: self._changed(panel.session.put_aside))
        self.widget = w.VBox(
            [
                w.HTML(
                    html.remark(
                        f"Up to {MOST_OPTIONS} designs, told against the first. The design under"
                        " your hands stands last."
                    )
                ),
                self.keep,
                self.shelf,
                self.table,
            ]
        )

    def _changed(self, act) -> None:
        if self.panel.attempt(act) and self.panel.attempt(self.panel.session.keep):
            self.update()

    def _take_away(self, number: int) -> None:
        self._changed(lambda: self.panel.session.options.pop(number - 1))

    def update(self) -> None:
        """Small pictures, and everything side by side."""
        panel = self.panel
        results = [assess(option, panel.pack) for option in panel.session.options]
        self.keep.disabled = len(results) >= MOST_OPTIONS
        self.shelf.children = [
            self._card(number, result) for number, result in enumerate(results, 1)
        ]
        names = [f"Option {number}" for number in range(1, len(results) + 1)]
        self.table.value = html.options(
            side_by_side([*results, panel.result], panel.units), [*names, "Under your hands"]
        )

    def _card(self, number: int, result) -> w.Widget:
        picture = Picture(WIDTH, HEIGHT, dots=2.0)
        image = w.Image(
            value=picture.png(list(views("room", result.geometry, self.panel.units))), format="png"
        )
        image.add_class("fireplace-picture")
        image.add_class(f"fireplace-view-option-{number}")
        back = w.Button(description=f"Bring back option {number}", layout=w.Layout(width="auto"))
        back.on_click(lambda _: self.panel.put(self.panel.session.options[number - 1]))
        away = w.Button(description=f"Take option {number} away", layout=w.Layout(width="auto"))
        away.on_click(lambda _: self._take_away(number))
        return w.VBox(
            [
                w.HTML(f"<b>Option {number}</b>"),
                image,
                w.HBox([back, away], layout=w.Layout(flex_flow="row wrap")),
            ]
        )
