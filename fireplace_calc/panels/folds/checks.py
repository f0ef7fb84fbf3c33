"""Folds of findings: what a code asks, what the air does, how it stands; each finding with its
questions under it.
"""

from __future__ import annotations

import ipywidgets as w

from fireplace_calc.drawing.papers.written_sheets import standing
from fireplace_calc.drawing.sheets.lists import Table
from fireplace_calc.panels import found, html
from fireplace_calc.panels.controls.liner_choice import LINER_INPUTS
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.folds.questions import FindingList, Questions, put
from fireplace_calc.panels.host import Host
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.rules.comparing import DOES_NOT_APPLY


class Checks(Fold):
    """The findings of the book of the moment; what does not apply is left out."""

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.list = FindingList(panel, "Rule, edition, confidence")
        self.widget = self.list.widget

    def update(self) -> None:
        """The findings on the design as it stands, worst first."""
        result = self.panel.result
        shown = (f for f in result.findings if f.verdict != DOES_NOT_APPLY)
        self.list.show(shown, f"Checks against {result.pack}")


class Judged(Fold):
    """Findings of engineering judgement, with words before and after them."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.before, self.after = w.HTML(), w.HTML()
        self.list = FindingList(panel, "Finding, mode, confidence")
        self.widget = w.VBox([self.before, self.list.widget, self.after])


class Draft(Judged):
    """What the air does."""

    def update(self) -> None:
        """Sentence, findings, evenings and losses of the design as it stands."""
        result, units = self.panel.result, self.panel.units
        self.before.value = found.draft_sentence(result, units)
        self.list.show(result.judgement, "What the air says")
        self.after.value = found.draft(result, units)


class Stands(Judged):
    """How it stands, and when to send for an engineer."""

    def update(self) -> None:
        """Remarks, findings and reasons for an engineer, as they stand on paper."""
        result, units = self.panel.result, self.panel.units
        first, *rest = standing(result, units)
        if not isinstance(first, Table):
            raise TypeError("What stands on paper begins with the table of its findings.")
        self.before.value = html.remark(first.before)
        self.list.show(
            (f for f in result.structure.findings if f.verdict != DOES_NOT_APPLY), first.title
        )
        self.after.value = html.flow(rest)


class Assumed(Fold):
    """What nobody has entered and checks of the code pass on: the control to enter it, and a button
    that says it is so.
    """

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.hint, self.questions, self.asking = w.HTML(), w.VBox(), Questions(panel)
        self.buttons = self.asking.buttons
        self.widget = w.VBox([self.hint, self.questions])

    def update(self) -> None:
        """The questions of the moment, first those that most checks rest on."""
        taken = assumptions(self.panel.result, self.panel.units)
        keys = [one.key for one in taken]
        if set(LINER_INPUTS) <= set(keys):  # one choice answers both
            taken = tuple(one for one in taken if one.key != LINER_INPUTS[0])
        self.hint.value = html.assumed_hint(taken)
        put(self.questions, [self.asking.row(one.key) for one in taken])
