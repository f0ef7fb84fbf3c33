"""What would fix it: the least changes that mend what falls short, with what the customer wants
kept as it is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.base.printing import grouped
from fireplace_calc.explore import (
    LOOKS,
    RejectedRemedy,
    Remedy,
    find_remedies,
    rejected_remedies,
)
from fireplace_calc.explore.mending.locks import foreign
from fireplace_calc.explore.mending.remedy import ORDERS, ranked
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.explore.together.combined import looking_for_combinations
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, dropdown, row
from fireplace_calc.panels.controls.keeping import KEPT
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.report.sentences import sentence, weight
from fireplace_calc.report.yard.kept_list import LIST, kept_prices
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT

Named = dict[str, Finding]
"""Findings of every kind by key."""
FIRST = "first"
"""Among the reader's words: what comes first."""
ORDER_WORDS = {"Least cost": "cost", "Least work": "work"}


class Remedies(Fold):
    """Remedies, ranked, each with a button that makes the change; two or three changes together on
    request.
    """

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self._showing, kept = False, self.kept
        self.boxes = {
            name: w.Checkbox(
                value=name in kept,
                description=look.label,
                indent=False,
                layout=w.Layout(width="auto", margin="0 1.2em 0 0"),
            )
            for name, look in LOOKS.items()
        }
        for box in self.boxes.values():
            box.observe(lambda _: self._ticked(), "value")
        self.first = dropdown("First", ORDER_WORDS, self.order, self._ordered, "16em", "4em")
        self.said, self.refused = w.HTML(), w.HTML()
        self.job = Job("steps", writes=False)
        self.ask = button("Look for two or three changes together", self.look)
        self.together, self.single = Listed(panel, "changes"), Listed(panel, "remedy")
        self.widget = w.VBox(
            [
                w.HTML(html.remark("Keep as it is:")),
                row(self.boxes.values()),
                row([self.first, self.ask]),
                self.job.widget,
                self.together.widget,
                self.said,
                self.single.widget,
                self.refused,
            ]
        )
        self.known: tuple[Any, tuple[Remedy, ...]] = (None, ())
        self.rejected: tuple[Any, tuple[RejectedRemedy, ...]] = (None, ())
        self.found: tuple[Any, tuple[Remedy, ...]] = (None, ())

    # -- what the reader wants ------------------------------------------------------------------
    @property
    def kept(self) -> tuple[str, ...]:
        """What stays as it is, by the names of ``LOOKS``."""
        words = self.panel.session.words.get(KEPT, "").split()
        return tuple(name for name in LOOKS if name in words)

    @property
    def order(self) -> str:
        """What comes first among remedies that mend as much."""
        word = self.panel.session.words.get(FIRST, "")
        return word if word in ORDERS else ORDERS[0]

    def _ticked(self) -> None:
        self._want(KEPT, " ".join(name for name, box in self.boxes.items() if box.value))

    def _ordered(self, by: str) -> None:
        self._want(FIRST, by)

    def _want(self, name: str, word: str) -> None:
        """Keep what the reader wants with the job, and list again."""
        if not self._showing and self.panel.session.words.get(name, "") != word:
            self.panel.session.words[name] = word
            self.panel.keep()
            self.panel.show_inputs(every=True)
            self.update()

    # -- what there is ----------------------------------------------------------------------------
    def _key(self) -> Any:
        return self.panel.design, self.panel.pack, self.kept, self.panel.session.words.get(LIST)

    def update(self) -> None:
        """The list for the design as it stands."""
        panel, key, kept = self.panel, self._key(), self.kept
        self._showing = True
        for name, box in self.boxes.items():
            box.value = name in kept
        self.first.value, self._showing = self.order, False
        named, known = every_finding(panel.result), kept_prices(panel.session.words)
        if self.known[0] != key:
            self.known = (key, find_remedies(panel.design, panel.pack, prices=known, locks=kept))
        single = ranked(self.known[1], self.order)
        together = ranked(self.found[1], self.order) if self.found[0] == key else ()
        self.said.value = html.remark(
            listed_words(named.values(), single, together, foreign(panel.pack))
        )
        self.single.show(single, named, self.order)
        self.together.show(together, named, self.order)
        if self.rejected[0] != key:  # what helps is on the page before what does not is looked for
            self.rejected = (key, rejected_remedies(panel.design, panel.pack, locks=kept))
        self.refused.value = refused_words(self.rejected[1], named, panel.units)

    def look(self) -> None:
        """Look for two or three changes that do together what fewer do not."""
        key, (design, pack, kept, _) = self._key(), self._key()
        known = kept_prices(self.panel.session.words)

        def steps() -> Steps:
            found = yield from looking_for_combinations(design, pack, prices=known, locks=kept)
            self.found = (key, found)

        def ready() -> str:
            if self._key() != key:
                return "The design has changed: look again."
            self.update()
            found = len(self.found[1])
            return (
                f"{found} ways found to make two or three changes together."
                if found > 1
                else "One way found."
                if found
                else "No two or three changes together do more than those below."
            )

        self.job.run(steps, ready)


class Listed:
    """Lines of remedies. Lines are shown again with other remedies: new ones at every rest would
    never leave the kernel.
    """

    def __init__(self, panel: Host, name: str) -> None:
        self.panel, self.name = panel, name
        self.lines: list[RemedyLine] = []
        self.widget = w.VBox()

    def show(self, found: Sequence[Remedy], named: Named, order: str) -> None:
        """Tell of other remedies."""
        while len(self.lines) < len(found):
            self.lines.append(RemedyLine(self.panel, self.name))
        for line, one in zip(self.lines, found, strict=False):
            line.show(one, named, order)
        shown = tuple(line.widget for line in self.lines[: len(found)])
        if self.widget.children != shown:
            self.widget.children = shown


class RemedyLine:
    """A button and what it would do."""

    def __init__(self, panel: Host, name: str = "remedy") -> None:
        self.panel, self.name = panel, name
        self.one: Remedy | None = None
        self.button = w.Button(layout=w.Layout(width="10em", flex="0 0 auto"))
        self.button.on_click(lambda _: self._take())
        self.words = w.HTML()
        self.widget = w.HBox([self.button, self.words])

    def _take(self) -> None:
        if self.one is not None:
            self.panel.set_inputs(self.one.change)

    def show(self, one: Remedy, named: Named, order: str = ORDERS[0]) -> None:
        """Tell of another remedy."""
        self.one = one
        self.button.description = f"Use {self.name} {one.rank}"
        self.words.value = remedy_words(one, named, self.panel.units, order)


def listed_words(
    found: Any, single: Sequence[Remedy], together: Sequence[Remedy], aside: frozenset[str]
) -> str:
    """How many checks fall short, and how far the lists go."""
    short = [f for f in found if f.verdict == FALLS_SHORT and f.key not in aside]
    if not short:
        return "Nothing falls short."
    mended = {key for one in (*single, *together) for key in one.mends}
    over = [f for f in short if f.key not in mended]
    many = "1 check falls" if len(short) == 1 else f"{len(short)} checks fall"
    words = f"{many} short. Each line below is the smallest single change"
    words += " that fixes what it names and breaks nothing else."
    if len(single) > 1:
        words += f" There are {len(single)} of them."
    if over:
        words += (
            f" For {', '.join(f'{f.title} ({f.key})' for f in over)}, none of the changes tried"
            " here helps without breaking something else."
        )
    return words


def remedy_words(one: Remedy, named: Named, units: str, order: str = ORDERS[0]) -> str:
    """One remedy: what to do, what it mends, what stays, what it costs and weighs, and how much
    work it is where least work comes first.
    """

    def names(keys: tuple[str, ...]) -> str:
        return escape(", ".join(f"{named[key].title} ({key})" for key in keys))

    if one.cost is None:
        cost = "cost not known"
    else:
        signed = ("+" if one.cost > 0 else "") + grouped(one.cost, units=units)
        cost = f"{signed} {one.currency}{', example prices' if one.invented else ''}"
    heavier = (
        f"{'-' if one.weight < 0 else '+'}{weight(abs(one.weight), units)}"
        if abs(one.weight) > 0.5
        else "same weight"
    )
    hours = f" {one.hours:+.1f} hours of work," if order == "work" else ""
    left = f"<br><span class='why'>Still short: {names(one.stays)}.</span>" if one.stays else ""
    warned = (
        "<br><span class='why'>Another country's book says no: "
        f"{escape(' '.join(sentence(f, units) for f in one.warns))}</span>"
        if one.warns
        else ""
    )
    return (
        f'<div class="sentence"><b>{escape(one.sentence(units))}</b>{hours} {escape(cost)},'
        f" {escape(heavier)}.<br>Fixes {names(one.mends)}.{left}{warned}</div>"
    )


def refused_words(found: Sequence[RejectedRemedy], named: Mapping[str, Finding], units: str) -> str:
    """What comes to mind and is no remedy, because it breaks something else."""
    lines = []
    for one in found:
        mends = ", ".join(f"{named[key].title} ({key})" for key in one.mends)
        breaks = " ".join(sentence(f, units) for f in one.breaks)
        lines.append(
            f"<li><b>{escape(one.sentence(units))}</b> It would fix {escape(mends)}, but then:"
            f" {escape(breaks)}</li>"
        )
    return (
        '<div class="sentence">These look right but break something else:'
        f"<ul>{''.join(lines)}</ul></div>"
        if lines
        else ""
    )
