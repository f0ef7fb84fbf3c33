"""My jobs: go on, start one, or look at the example; and the list of all jobs."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import assess
from fireplace_calc.editing.jobs.jobs_folder import JobsFolder, ListedJob
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.folds.folds import LONG_REST, Fold
from fireplace_calc.panels.host import Host
from fireplace_calc.report.alternatives import side_by_side
from fireplace_calc.report.yard.kept_list import kept_prices

NEW = "new"
"""The fold that asks the questions of a new job."""
WIDE = w.Layout(width="100%", max_width="48em")
ROWS = 6
"""Jobs that a list shows without scrolling. [-]"""
NOTHING = "This page keeps one design alone, so there is no list of jobs."


class MyJobs(Fold):
    """What a notebook asks when it is opened, and every job with what can be done with it."""

    rest = LONG_REST

    def __init__(self, panel: Host) -> None:
        super().__init__(panel)
        self.listed: tuple[ListedJob, ...] = ()
        self.gone: tuple[ListedJob, ...] = ()
        self.hint, self.compared = w.HTML(), w.HTML()
        self.go_on = button("Go on", self._go_on)
        asked = [
            self.go_on,
            button("Start mine", self._start),
            button("Look at the example", lambda: self._switch(panel.session.look_at_example)),
        ]
        self.list = w.Select(options=[], rows=ROWS, description="Jobs", layout=WIDE)
        self.name = w.Text(description="New name", continuous_update=False)
        acts = [
            button("Open", self._open),
            button("Copy", lambda: self._with(lambda jobs, key: jobs.copy(key))),
            button("Compare with this design", self._compare),
            button("Put into the bin", self._bin),
        ]
        self.bin = w.Select(options=[], rows=3, description="Bin", layout=WIDE)
        self.back = button("Put back", self._put_back)
        self.emptied = w.VBox([self.bin, row([self.back])])
        self.own = w.VBox(
            [
                self.list,
                row(acts),
                row([self.name, button("Rename", self._rename)]),
                self.emptied,
                self.compared,
            ]
        )
        self.widget = w.VBox([row(asked), self.hint, self.own])

    # -- what the reader does ---------------------------------------------------------------------
    def _go_on(self) -> None:
        session = self.panel.session
        if session.looking and self.listed:
            self._switch(lambda: session.open_job(self.listed[0].key))
        self._leave()

    def _start(self) -> None:
        """To the questions; the first answer begins the job."""
        panel = self.panel
        if NEW in panel.named:
            panel.open(NEW)
        else:
            self._switch(panel.session.look_at_example)

    def _leave(self) -> None:
        panel = self.panel
        panel.open("")

    def _open(self) -> None:
        if key := self.list.value:
            self._switch(lambda: self.panel.session.open_job(key))

    def _switch(self, act: Callable[[], Any]) -> None:
        """Lay another job on the table, and show all of it."""
        if self.panel.attempt(act):
            self.panel.show_job()
        self.update()

    def _with(self, act: Callable[[JobsFolder, str], Any]) -> None:
        """Do something with the job that is chosen in the list."""
        jobs, key = self.panel.session.jobs, self.list.value
        if jobs is not None and key:
            self.panel.attempt(lambda: act(jobs, key))
            self.update()

    def _rename(self) -> None:
        session, name = self.panel.session, self.name.value
        if self.list.value and self.list.value == session.job:
            if self.panel.attempt(lambda: session.rename_job(name)):
                self.panel.catch_up()
                self.name.value = ""
            self.update()
        else:
            self._with(lambda jobs, key: jobs.rename(key, name))

    def _bin(self) -> None:
        session = self.panel.session
        if self.list.value and self.list.value == session.job:
            key = self.list.value
            self._switch(session.look_at_example)
            if session.job:
                return
            self.list.value = key
        self._with(lambda jobs, key: jobs.bin(key))

    def _put_back(self) -> None:
        jobs, key = self.panel.session.jobs, self.bin.value
        if jobs is not None and key:
            self.panel.attempt(lambda: jobs.put_back(key))
            self.update()

    def _compare(self) -> None:
        self._with(self._beside)

    def _beside(self, jobs: JobsFolder, key: str) -> None:
        panel = self.panel
        both = [assess(jobs.design(key), panel.pack), panel.result]
        self.compared.value = html.options(
            side_by_side(both, panel.units, kept_prices(panel.session.words)),
            [jobs.named(key), "This design"],
        )

    # -- what is shown ----------------------------------------------------------------------------
    def update(self) -> None:
        """The jobs as their folder holds them now."""
        session = self.panel.session
        jobs = session.jobs
        if jobs is None:
            self.hint.value, self.own.children = html.remark(NOTHING), []
            return
        self.listed, self.gone = jobs.jobs(), jobs.binned()
        self._show(self.list, self.listed)
        self._show(self.bin, self.gone)
        self.emptied.layout.display = "" if self.gone else "none"
        self.go_on.disabled = not self.listed
        on = jobs.named(session.job) if session.job else next((j.name for j in self.listed), "")
        self.go_on.description = f"Go on with {on}" if on else "Go on"
        self.hint.value = html.remark(self._where(on))

    def _where(self, on: str) -> str:
        session = self.panel.session
        if session.looking:
            return (
                "You are looking at the example. It stays as it is: the first change makes a job of"
                " your own out of it, and says so."
            )
        path = session.folder.path if session.folder else ""
        return f"You are working on {on}, kept in {path} after every change."

    def _show(self, shown: w.Select, jobs: tuple[ListedJob, ...]) -> None:
        open_key, chosen = self.panel.session.job, shown.value
        options = [
            (_line(job, job.key == open_key and shown is self.list), job.key) for job in jobs
        ]
        if list(shown.options) != options:
            shown.options = options
        keys = [job.key for job in jobs]
        kept = chosen if chosen in keys else open_key if open_key in keys else None
        shown.value = kept or (keys[0] if keys else None)


def _line(job: ListedJob, is_open: bool) -> str:
    when = datetime.fromtimestamp(job.changed).strftime("%b %d %Y, %H:%M")
    return f"{job.name} ({'open, ' if is_open else ''}changed {when})"
