"""What was done with the job, step by step, and the way to any of the steps."""

from __future__ import annotations

import ipywidgets as w

from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host


class HistoryList(Fold):
    """The steps of the job, the last one on top, with a button that goes to one of them."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.list = w.Select(
            options=[],
            rows=14,
            description="Steps",
            layout=w.Layout(width="100%", max_width="48em"),
        )
        hint = w.HTML(
            html.remark(
                "The last step is on top. Go to any of them: what came after it waits until you"
                " change something."
            )
        )
        acts = [
            button("Go to this step", lambda: self._go(self.list.value)),
            button("One step back", lambda: self._go(panel.session.history.at - 1)),
            button("One step forward", lambda: self._go(panel.session.history.at + 1)),
        ]
        self.widget = w.VBox([hint, self.list, row(acts)])

    def _go(self, number: int | None) -> None:
        session = self.panel.session
        if number is not None and self.panel.attempt(lambda: session.go(number)):
            self.panel.catch_up()
        self.update()

    def update(self) -> None:
        """The steps as they are now; where things stand is chosen."""
        session = self.panel.session
        steps = [
            (f"{number}. {did}{'  (here)' if number == session.history.at else ''}", number)
            for number, did in enumerate(session.steps)
        ][::-1]
        if list(self.list.options) != steps:
            self.list.options = steps
        if self.list.value != session.history.at:
            self.list.value = session.history.at
