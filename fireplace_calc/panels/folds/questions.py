"""Questions at the finding that asks them: the control of each input, and a button that says it is
so where a default stands in for an answer.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

import ipywidgets as w

from fireplace_calc.editing.assumptions import tell
from fireplace_calc.editing.changes import value_of
from fireplace_calc.panels import found
from fireplace_calc.panels.controls.choices import row
from fireplace_calc.panels.controls.liner_choice import LINER_INPUTS
from fireplace_calc.panels.host import Host
from fireplace_calc.report.assumed_inputs import label_of, value_in_words
from fireplace_calc.rules import Finding

AT_ONCE = 12
"""More questions of one finding wait until some of these are answered. [-]"""


class Questions:
    """A row an input. Controls are those of their groups; a row and its button are made once: new
    ones at every rest would never leave the kernel.

    Parameters
    ----------
    panel : Host
        Whose design is asked about.
    """

    def __init__(self, panel: Host) -> None:
        self.panel = panel
        self.buttons: dict[str, w.Button] = {}
        self.rows: dict[str, w.Box] = {}

    def row(self, key: str) -> w.Box:
        """The question of one input, as the design stands."""
        if key not in self.rows:
            button = w.Button(description="It is so", layout=w.Layout(width="6em"))
            button.on_click(partial(self._confirm, key))
            self.buttons[key] = button
            self.rows[key] = row([self.panel.everything.control(key).widget, button])
            self.rows[key].layout.min_height = "40px"  # a label may take two lines
        button, design = self.buttons[key], self.panel.design
        said = value_in_words(design, key, self.panel.units)
        button.tooltip = f"It is so: {label_of(key)}, {said}"
        button.layout.display = "none" if value_of(design, key) is None else "flex"
        return self.rows[key]

    def _confirm(self, key: str, _: w.Button) -> None:
        keys = LINER_INPUTS if key in LINER_INPUTS else (key,)
        self.panel.put(tell(self.panel.design, keys))


class FindingLine:
    """One finding, and under it what it would have somebody enter; shown again with other figures.

    Parameters
    ----------
    questions : Questions
        Of the fold it stands in.
    """

    def __init__(self, questions: Questions) -> None:
        self.questions, self.open = questions, False
        self.asked: tuple[str, ...] = ()
        self.title = ""
        self.words, self.rows, self.more = w.HTML(), w.VBox(), w.HTML()
        self.rows.add_class("fireplace-questions")
        self.button = w.Button(layout=w.Layout(width="auto", align_self="flex-start"))
        self.button.add_class("fireplace-ask")
        self.button.on_click(lambda _: self.turn())
        self.widget = w.VBox([self.words])

    def show(self, finding: Finding, units: str, origin: str) -> None:
        """Tell of the finding as it stands; questions that are open stay open."""
        self.words.value = found.finding_row(finding, units, origin)
        self.title = finding.title
        self.asked = finding.assumed if finding.on_assumption else finding.missing
        self.open = self.open and bool(self.asked)
        self._lay()

    def turn(self) -> None:
        """Open the questions, or put them away."""
        self.open = not self.open
        self._lay()

    def _lay(self) -> None:
        many = len(self.asked)
        here = "Answer it here" if many == 1 else f"Answer {many} questions here"
        self.button.description = "Put the questions away" if self.open else here
        self.button.tooltip = f"{self.button.description}: {self.title}"
        if self.open:
            put(self.rows, [*map(self.questions.row, self.asked[:AT_ONCE]), self.more])
            left = many - AT_ONCE
            self.more.value = f"{left} more come when these are answered." if left > 0 else ""
        put(self.widget, [self.words, *[self.button] * bool(many), *[self.rows] * self.open])


class FindingList:
    """Findings one below the other, each with its questions.

    Parameters
    ----------
    panel : Host
        Whose design they are of.
    origin : str
        Heading of the last column: where a finding is written.
    """

    def __init__(self, panel: Host, origin: str) -> None:
        self.panel, self.origin = panel, origin
        self.questions = Questions(panel)
        self.lines: dict[str, FindingLine] = {}
        self.head, self.widget = w.HTML(), w.VBox()
        self.widget.add_class("fireplace-findings")

    def show(self, findings: Iterable[Finding], caption: str) -> None:
        """Tell of these, in their order, under a caption."""
        self.head.value = found.finding_head(caption, self.origin)
        shown = [self.head]
        for finding in findings:
            if finding.key not in self.lines:
                self.lines[finding.key] = FindingLine(self.questions)
                self.lines[finding.key].widget.add_class(f"fp-line-{finding.key}")
            line = self.lines[finding.key]
            line.show(finding, self.panel.units, self.origin)
            shown.append(line.widget)
        put(self.widget, shown)


def put(box: w.Box, children: Iterable[w.Widget]) -> None:
    """Lay widgets into a box, unless they lie there already."""
    if box.children != (laid := tuple(children)):
        box.children = laid
