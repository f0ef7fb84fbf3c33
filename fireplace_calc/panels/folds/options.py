"""Up to four designs put aside and seen side by side, with what each costs, weighs, draws and
breaks.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import views
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.session import MOST_OPTIONS
from fireplace_calc.report.alternatives import side_by_side


class Options(Fold):
    """The fold of options: a row of small pictures with their buttons, and a table under them."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.table, self.shelf = w.HTML(), w.Box()
        self.cards: list[OptionCard] = []
        self.shelf.add_class("fireplace-shelf")
        self.keep = button(
            "Keep this design as an option", lambda: self._changed(panel.session.put_aside)
        )
        hint = w.HTML(
            html.remark(
                f"Up to {MOST_OPTIONS} designs, each compared with the first. The design you are"
                " working on comes last."
            )
        )
        self.widget = w.VBox([hint, self.keep, self.shelf, self.table])

    def _changed(self, act: Callable[[], Any]) -> None:
        if self.panel.attempt(act):
            self.panel.keep()
            self.update()

    def _bring_back(self, number: int) -> None:
        self.panel.put(self.panel.session.options[number - 1])

    def _take_away(self, number: int) -> None:
        self._changed(lambda: self.panel.session.options.pop(number - 1))

    def update(self) -> None:
        """Small pictures, and everything side by side."""
        panel = self.panel
        results = [assess(option, panel.pack) for option in panel.session.options]
        self.keep.disabled = len(results) >= MOST_OPTIONS
        while len(self.cards) < len(results):
            self.cards.append(OptionCard(len(self.cards) + 1, self._bring_back, self._take_away))
        for card, result in zip(self.cards, results, strict=False):
            card.show(result, panel.units)
        self.shelf.children = [card.widget for card in self.cards[: len(results)]]
        names = [f"Option {number}" for number in range(1, len(results) + 1)]
        self.table.value = html.options(
            side_by_side([*results, panel.result], panel.units), [*names, "This design"]
        )


class OptionCard:
    """One option: a small picture in its room, a button to bring it back and one to take it away.

    A card is shown again with another design, and its picture is drawn only for a new one.
    """

    def __init__(
        self, number: int, back: Callable[[int], None], away: Callable[[int], None]
    ) -> None:
        self.picture = Picture(WIDTH, HEIGHT, dots=2.0)
        self.shown: tuple[Any, str] | None = None
        self.image = w.Image(format="png")
        self.image.add_class("fireplace-picture")
        self.image.add_class(f"fireplace-view-option-{number}")
        buttons = [
            button(f"Bring back option {number}", lambda: back(number)),
            button(f"Remove option {number}", lambda: away(number)),
        ]
        self.widget = w.VBox([w.HTML(f"<b>Option {number}</b>"), self.image, row(buttons)])

    def show(self, result: Assessment, units: str) -> None:
        """Draw an option, unless it is the one that is shown."""
        if self.shown != (result.design, units):
            self.shown = (result.design, units)
            self.image.value = self.picture.png(list(views("room", result.geometry, units)))
