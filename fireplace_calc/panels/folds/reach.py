"""How far the firebox can be raised, what stops it, and what another liner would do."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from typing import Any

import ipywidgets as w

from fireplace_calc.base.printing import show
from fireplace_calc.explore import HighestRaise, LinerRaise, LinerTable, RaiseStop, highest_raise
from fireplace_calc.explore.liners import looking_at_liners
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.job import Job, Steps
from fireplace_calc.report.sentences import sentence
from fireplace_calc.rules import Finding
from fireplace_calc.rules.core import JUDGEMENT


class HowFar(Fold):
    """The raise as a number, and what stops it; every liner on request."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.words, self.table = w.HTML(), w.HTML()
        self.job = Job("liners", writes=False)
        self.ask = button("Every liner at this chimney height", self.look)
        self.widget = w.VBox([self.words, self.ask, self.job.widget, self.table])
        self.known: tuple[Any, Any] = (None, None)
        self.liners: tuple[Any, LinerTable | None] = (None, None)

    def _key(self) -> Any:
        return self.panel.session.without("opening.extension"), self.panel.pack

    def update(self) -> None:
        """Worked out again only when something else than the raise or the units has changed."""
        panel, key = self.panel, self._key()
        if self.known[0] != key:
            self.known = (key, highest_raise(panel.design, panel.pack))
        self.words.value = reach_words(self.known[1], panel.design.opening.extension, panel.units)
        known, table = self.liners
        self.table.value = (
            "" if table is None or known != key else liner_words(table, panel.units, panel.pack)
        )

    def look(self) -> None:
        """Work out the table of liners, liner by liner."""
        key, design, pack = self._key(), self.panel.design, self.panel.pack

        def steps() -> Steps:
            table = yield from looking_at_liners(design, pack)
            self.liners = (key, table)

        def ready() -> str:
            self.update()
            same = self._key() == key
            return "The table is below." if same else "The design has changed: ask again."

        self.job.run(steps, ready)


def liner_words(table: LinerTable, units: str, pack: str) -> str:
    """Every liner, how far it lets the firebox be raised, and what stops it."""
    rows = [
        f"<tr><td>{escape(_named(one))}</td>"
        f"<td class=n>{escape(show(one.net_area, 'area', units))}</td>"
        f"<td class=n>{_raised(one, units)}</td><td>{_why(one, pack)}</td></tr>"
        for one in table.rows
    ]
    aside = "; ".join(f"{f.title} ({f.key})" for f in table.aside)
    return html.table(
        "Each liner and the greatest raise it allows, chimney height as it is",
        (18, 14, 14, 54),
        ("Liner", "Net area", "Raise up to", "What stops it"),
        rows,
    ) + (
        f'<div class="sentence">Short without any raise, so not counted: {escape(aside)}.</div>'
        if aside
        else ""
    )


def _named(one: LinerRaise) -> str:
    return f"{one.shape} {one.size}{', yours' if one.taken else ''}"


def _raised(one: LinerRaise, units: str) -> str:
    return "none" if one.raised is None else escape(show(one.raised, "length", units), quote=False)


def _why(one: LinerRaise, pack: str) -> str:
    if one.refusal:
        return escape(one.refusal)
    if one.short:
        return "Short without any raise. " + escape(_said(one.short, pack))
    if one.stop is None:
        return "Nothing: the workable range ends here."
    return escape(_said(one.stop.findings, pack) or one.stop.refusal)


def _said(found: Sequence[Finding], pack: str) -> str:
    """Which book and clause, and what it asks for."""
    return "; ".join(
        f"{JUDGEMENT if f.edition == JUDGEMENT else pack}, {f.clause}: {f.title} ({f.key})"
        for f in found
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
