"""How far the firebox can be raised, and the least change that mends what falls short."""

from __future__ import annotations

from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.explore import (
    HighestRaise,
    RaiseStop,
    RejectedRemedy,
    Remedy,
    find_remedies,
    highest_raise,
    rejected_remedies,
)
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.panels import html
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.report.sentences import sentence, weight
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT

Named = dict[str, Finding]
"""Findings of every kind by key."""
MOST = 12
"""Remedies shown at first; the list is ranked, and a button shows the rest."""


class HowFar(Fold):
    """The raise as a number, and the clause or the physics that stops it."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.words = w.HTML()
        self.widget = self.words
        self.known: tuple[Any, Any] = (None, None)

    def update(self) -> None:
        """Worked out again only when something else than the raise or the units has changed."""
        panel = self.panel
        key = (panel.session.without("opening.extension"), panel.pack)
        if self.known[0] != key:
            self.known = (key, highest_raise(panel.design, panel.pack))
        self.words.value = reach_words(self.known[1], panel.design.opening.extension, panel.units)


class Remedies(Fold):
    """Remedies, ranked, each with a button that makes the change."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.said, self.rows, self.refused = w.HTML(), w.VBox(), w.HTML()
        self.whole = False
        self.more = w.Button(layout=w.Layout(width="auto", display="none"))
        self.more.on_click(lambda _: self._turn())
        self.widget = w.VBox([self.said, self.rows, self.more, self.refused])
        self.known: tuple[Any, tuple[Remedy, ...]] = (None, ())
        self.lines: list[RemedyLine] = []

    def update(self) -> None:
        """The list for the design as it stands."""
        panel = self.panel
        key = (panel.design, panel.pack, panel.units)
        if self.known[0] != key:
            self.known = (key, find_remedies(panel.design, panel.pack))
            self._show(self.known[1])
            self.refused.value = refused_words(
                rejected_remedies(panel.design, panel.pack),
                every_finding(panel.result),
                panel.units,
            )

    def _turn(self) -> None:
        """From the short list to the whole one and back."""
        self.whole = not self.whole
        self._show(self.known[1])

    def _show(self, found: tuple[Remedy, ...]) -> None:
        panel = self.panel
        named = every_finding(panel.result)
        short = [f for f in named.values() if f.verdict == FALLS_SHORT]
        over = sum(f.key not in {key for one in found for key in one.mends} for f in short)
        best = shortened(found, MOST)
        self.more.layout.display = "none" if len(best) == len(found) else ""
        self.more.description = (
            f"Show the best {len(best)}" if self.whole else f"Show all {len(found)} changes"
        )
        listed = found if self.whole else best
        self.said.value = html.remark(
            "Nothing falls short."
            if not short
            else (
                f"{len(short)} checks fall short. Each line below is the smallest single change"
                " that fixes what it names and breaks nothing else."
            )
            + (f" There are {len(found)} of them." if len(found) > 1 else "")
            + (
                f" For the other {over}, none of the changes tried here helps by itself without"
                " breaking something else."
                if over
                else ""
            )
        )
        while len(self.lines) < len(listed):
            self.lines.append(RemedyLine(self.panel))
        for line, one in zip(self.lines, listed, strict=False):
            line.show(one, named)
        self.rows.children = [line.widget for line in self.lines[: len(listed)]]


def shortened(found: tuple[Remedy, ...], most: int) -> tuple[Remedy, ...]:
    """The best remedies, and of the rest the first that mends what none before it does.

    Parameters
    ----------
    found : tuple of Remedy
        Ranked, best first.
    most : int
        How many of the best to keep in any case. [-]

    Returns
    -------
    tuple of Remedy
        In the same order: together they mend all that the whole list mends.
    """
    kept, mended = [], set[str]()
    for n, one in enumerate(found):
        if n < most or set(one.mends) - mended:
            kept.append(one)
            mended |= set(one.mends)
    return tuple(kept)


class RemedyLine:
    """A button and what it would do. Lines are shown again with other remedies: new ones at every
    rest would never leave the kernel.
    """

    def __init__(self, panel: Host) -> None:
        self.panel = panel
        self.one: Remedy | None = None
        self.button = w.Button(layout=w.Layout(width="10em", flex="0 0 auto"))
        self.button.on_click(lambda _: self._take())
        self.words = w.HTML()
        self.widget = w.HBox([self.button, self.words])

    def _take(self) -> None:
        if self.one is not None:
            self.panel.set_inputs(self.one.change)

    def show(self, one: Remedy, named: Named) -> None:
        """Tell of another remedy."""
        self.one = one
        self.button.description = f"Use remedy {one.rank}"
        self.words.value = remedy_words(one, named, self.panel.units)


def remedy_words(one: Remedy, named: Named, units: str) -> str:
    """One remedy: what to do, what it mends, what stays, what it costs and weighs."""

    def names(keys: tuple[str, ...]) -> str:
        return escape(", ".join(f"{named[key].title} ({key})" for key in keys))

    signed = "" if one.cost is None else ("+" if one.cost > 0 else "") + grouped(one.cost)
    cost = (
        "cost not known"
        if one.cost is None
        else f"{signed} {one.currency}{', example prices' if one.invented else ''}"
    )
    heavier = (
        f"{'-' if one.weight < 0 else '+'}{weight(abs(one.weight), units)}"
        if abs(one.weight) > 0.5
        else "same weight"
    )
    left = f"<br><span class='why'>Still short: {names(one.stays)}.</span>" if one.stays else ""
    return (
        f'<div class="sentence"><b>{escape(one.sentence(units))}</b> {escape(cost)},'
        f" {escape(heavier)}.<br>Fixes {names(one.mends)}.{left}</div>"
    )


def refused_words(found: tuple[RejectedRemedy, ...], named: Named, units: str) -> str:
    """What comes to mind first and is no remedy, because it breaks something else."""
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


def reach_words(reach: HighestRaise, now: float, units: str) -> str:
    """The answer first, then what stops it, then every kind of thing that stops it somewhere."""

    def long(value: float) -> str:
        return escape(show(value, "length", units), quote=False)

    if reach.stop is None:
        first = (
            f"<b>The firebox can be raised by {long(reach.raised)}</b>, the end of the workable"
            " range, and nothing new falls short."
        )
    else:
        first = (
            f"<b>The firebox can be raised by {long(reach.raised)}</b> over its standard height."
            f" Any higher, and: {_stopped(reach.stop, units)}"
        )
    there = (
        f" It is raised by {long(now)} now, {long(abs(reach.raised - now))}"
        f" {'below' if now <= reach.raised else 'above'} that."
    )
    rows = [
        f"<tr><td><b>{escape(stop.kind)}</b></td><td"
        f" class=n>{long(stop.raised)}</td><td>{_stopped(stop, units)}</td></tr>"
        for stop in reach.stops
    ]
    ladder = (
        html.table("What stops it, and where", (12, 14, 74), ("Kind", "Up to", "Then"), rows)
        if rows
        else ""
    )
    broken = "; ".join(f"{f.title} ({f.key})" for f in reach.broken)
    before = (
        f'<div class="sentence">Short without any raise, so not counted: {escape(broken)}.</div>'
        if broken
        else ""
    )
    return f'<div class="sentence">{first}{there}</div>{ladder}{before}'


def _stopped(stop: RaiseStop, units: str) -> str:
    return escape(" ".join(sentence(f, units) for f in stop.findings) or stop.refusal)
