"""A fault to find in a drawing: picture, figures, and a guess at the rule that is broken."""

from __future__ import annotations

import ipywidgets as w

from fireplace_calc.lessons import FaultFinding, FaultHunt, Reply, checklist, figures
from fireplace_calc.panels.controls.choices import button, dropdown, row
from fireplace_calc.panels.teaching.design_views import DesignFigures, DesignViews
from fireplace_calc.panels.teaching.replies import prompt_html, reply_html

NO_SUSPECT = {"choose": ""}


def _listed(pack: str) -> dict[str, str]:
    """The list to look down, part by part."""
    rules = [(part, rule) for part, held in checklist(pack) for rule in held]
    return NO_SUSPECT | {f"{part}: {text}": key for part, (key, text) in rules}


class FaultSearch:
    """A design to look through.

    Parameters
    ----------
    faults : FaultFinding
        The design, and what is wrong with it.
    units : str
        ``feet-inches`` or ``millimetres``.
    many : Widget
        Chooses how many faults there are.
    """

    def __init__(self, faults: FaultFinding, units: str, many: w.Widget) -> None:
        self.faults, self.units = faults, units
        self.hunt = FaultHunt(faults)
        self.views, self.figures = DesignViews(), DesignFigures()
        self.story, self.verdict = w.HTML(), w.HTML()
        named = _listed(faults.pack)
        self.suspect = dropdown(
            "Which rule is broken?", named, "", lambda _: None, "calc(100% - 4px)", "11em"
        )
        check = button("Check my answer", lambda: self.accuse(self.suspect.value))
        asked = [row([self.story, many]), self.suspect, row([check]), self.verdict]
        self.widget = w.Box([self.views.widget, w.VBox([*asked, self.figures.widget])])
        self.widget.add_class("beside")
        self.show(faults, units)

    def show(self, faults: FaultFinding, units: str) -> None:
        """Show another design; the guesses begin afresh."""
        if faults.pack != self.faults.pack:
            self.suspect.options = _listed(faults.pack)
        self.faults, self.units, self.verdict.value = faults, units, ""
        self.hunt = FaultHunt(faults)
        self.story.value = prompt_html(self._told())
        self.figures.show(figures(faults, units))
        self.views.show(faults.design, units)

    def accuse(self, key: str) -> Reply | None:
        """Take a guess at the rule that is broken."""
        if not key:
            self.verdict.value = prompt_html("Choose a rule first.")
            return None
        self.hunt, found = self.hunt.guess(key, self.units)
        self.verdict.value = reply_html(found)
        return found

    def _told(self) -> str:
        """How much there is to find."""
        count = len(self.faults.findings)
        many = "one rule" if count == 1 else f"{count} rules"
        return f"This design breaks {many} of {self.faults.pack} and no other."
