"""What one reader has on the table, and the job that keeps all of it."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path
from typing import Any

from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.jobs.history import History, Moment
from fireplace_calc.editing.jobs.jobs_folder import JobsFolder
from fireplace_calc.editing.jobs.kept_job import DESIGN, SURVEY, KeptJob, KeptWork
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.visitor import own_folder
from fireplace_calc.panels.work_in_hand import WorkInHand
from fireplace_calc.report.for_client.handed_over import taken_over
from fireplace_calc.rules import PACKS
from fireplace_calc.survey.kept import Survey, read_survey


class Session(WorkInHand):
    """A design with its past, kept on disk after every change.

    Parameters
    ----------
    first : Design
        The example, and where an empty folder begins.
    pack, units : str
        Code and unit system to begin with.
    folder : path, optional
        Where everything is kept, of one job alone; made when not there.
    jobs : path, optional
        Folder of all jobs, instead: the one that was open last is opened, and without one the
        example is looked at. Without either nothing is kept.

    Attributes
    ----------
    job : str
        Key of the job that is open; empty while nothing of the reader's own is.
    words : dict
        Further words of the reader, kept with the job.
    said : str
        What there is to say about what was opened.
    """

    def __init__(
        self,
        first: Design,
        pack: str,
        units: str,
        folder: str | os.PathLike[str] | None = None,
        jobs: str | os.PathLike[str] | None = None,
    ) -> None:
        self.first, self._at_first = first, (pack, units)
        self.jobs = None if jobs is None else JobsFolder(own_folder(jobs))
        super().__init__(first, units)
        self._lay_out(None)
        if self.jobs is not None:
            if key := self.jobs.open_key():
                self._open_key(self.jobs, key)
        elif folder is not None:
            self._open(KeptJob(own_folder(folder)))

    def _lay_out(self, kept: KeptJob | None) -> None:
        """Begin with the example."""
        self.kept, self.job, self.said, self._news = kept, "", "", ("", -1)
        self.pack, self.units = self._at_first
        self.words: dict[str, str] = {}
        self._standing: tuple[Any, ...] = ()
        self.begin(self.first, None if kept is None else kept.folder.path)

    # -- jobs -------------------------------------------------------------------------------------
    @property
    def folder(self) -> KeptFolder | None:
        """Where it is kept; none while it is not."""
        return self.kept.folder if self.kept else None

    @property
    def looking(self) -> bool:
        """Whether the reader looks at the example, and the first change will begin a job."""
        return self.jobs is not None and self.kept is None

    @property
    def asks(self) -> bool:
        """Whether there is something to ask when a notebook is opened: nothing of the reader's own
        is on the table, or it could be one of several.
        """
        return self.jobs is not None and (self.looking or len(self.jobs.jobs()) > 1)

    def open_job(self, key: str) -> None:
        """Go on with a job of the list, as its folder holds it now.

        Raises
        ------
        InputError
            When there is none of that key, or what is on the table cannot be kept.
        """
        jobs = self._all_jobs()
        self.keep()
        jobs.design(key)
        self._open_key(jobs, key)
        jobs.remember(key)

    def _open_key(self, jobs: JobsFolder, key: str) -> None:
        self._lay_out(None)
        self._open(KeptJob(jobs.path / key))
        self.job = key

    def look_at_example(self) -> None:
        """Leave the job as it is kept, and look at the example.

        Raises
        ------
        InputError
            When what is on the table cannot be kept.
        """
        jobs = self._all_jobs()
        self.keep()
        self._lay_out(None)
        jobs.remember("")

    def start_job(self, name: str, design: Design) -> None:
        """Begin a job of one's own with this design, under this name.

        Raises
        ------
        InputError
            When there is no name, or nothing can be kept.
        """
        jobs = self._all_jobs()
        self.keep()
        pack, units = self.pack, self.units
        key = jobs.start(name)
        self._lay_out(KeptJob(jobs.path / key))
        self.job, self.pack, self.units = key, pack, units
        self.begin(design, jobs.path / key)
        self.keep()
        jobs.remember(key)

    def rename_job(self, name: str) -> None:
        """Call the open job otherwise, in the list and on its sheets.

        Raises
        ------
        InputError
            When there is no name, or it cannot be kept.
        """
        jobs = self._all_jobs()
        before = jobs.named(self.job)
        jobs.rename(self.job, name)
        if self.design.name == before:
            self.take({"name": jobs.named(self.job)})
            self.keep()

    def _all_jobs(self) -> JobsFolder:
        if self.jobs is None:
            raise InputError(
                "This page keeps no list of jobs: name the folder of all jobs in its call.",
                "jobs",
                'a folder, such as jobs="kept"',
                None,
            )
        return self.jobs

    @property
    def notice(self) -> str:
        """Where the work is kept, when that is not where it was asked to be, or has just begun."""
        if self.folder is not None and self.folder.shared:
            listed = f", in My jobs as {self.jobs.named(self.job)}" if self.jobs else ""
            return (
                f"{self.folder.asked} was changed elsewhere. This panel is kept in"
                f" {self.folder.path}{listed}."
            )
        words, version = self._news
        return words if version == self.history.version else ""

    # -- keeping ----------------------------------------------------------------------------------
    def keep(self) -> None:
        """Bring the folder up to what is on the table. A file is replaced whole, so that a kill at
        any moment leaves the old or the new. A change of the example begins a job.

        When somebody else has written there since, that stays, and this session goes on in a
        folder of its own inside; ``notice`` says so.

        Raises
        ------
        InputError
            When the folder cannot be written.
        """
        words = {"pack": self.pack, "units": self.units, **self.words}
        now = (self.design, words, self.history.version)
        untouched = self.looking and not self.history.version
        if now == self._standing or untouched:
            return
        if self.kept is None:
            if self.jobs is None:
                return
            self._begin_job(self.jobs)
        assert self.kept is not None
        known = self.history.numbers()
        self.designs = {number: d for number, d in self.designs.items() if number in known}
        measured = self.history.now.survey or None
        work = KeptWork(self.design, self.history, self.shelf, self.designs, words, measured)
        try:
            self.kept.keep(work)
        except OSError as trouble:
            raise InputError(
                f"Not kept: {self.kept.folder.path} cannot be written: {trouble.strerror}.",
                "folder",
                "a folder that can be written to",
                str(self.kept.folder.path),
            ) from None
        self._standing = now
        if self.jobs is not None:
            self.job = self.kept.folder.path.relative_to(self.jobs.path).as_posix()

    def _begin_job(self, jobs: JobsFolder) -> None:
        """What the reader made of the example is his own from now on."""
        self.job = jobs.start(self.design.name.strip() or "My fireplace")
        self.kept = KeptJob(jobs.path / self.job)
        jobs.remember(self.job)
        self._news = (
            f"This is a job of your own now, in My jobs as {jobs.named(self.job)}. The example"
            " stays as it was.",
            self.history.version,
        )

    def lay(self, name: str, content: bytes) -> Path | None:
        """Lay a paper beside what is kept; nowhere when nothing is kept.

        Raises
        ------
        InputError
            When the folder cannot be written.
        """
        if self.folder is None:
            return None
        before = self.folder.path
        try:
            laid = self.folder.lay(name, content)
        except OSError:
            return None
        if self.folder.path != before:
            self._standing = ()
            self.keep()
        return laid

    def _open(self, kept: KeptJob) -> None:
        """Take up what was kept."""
        found = kept.read(self._named, read_survey)
        self.kept, self.designs, self.said = kept, found.designs, kept.said
        own = {"pack": PACKS, "units": SYSTEMS}
        for name, allowed in own.items():
            if found.words.get(name) in allowed:
                setattr(self, name, found.words[name])
        self.words = {name: word for name, word in found.words.items() if name not in own}
        if DESIGN in kept.unread:
            found.design = self._from_history(found.history)
        self._begin_with(found, kept)
        if names := taken_over(self.words, self.design):
            self.take(names)
        if SURVEY not in kept.unread:
            self.take_up_survey(found.survey or Survey())
        copies = kept.folder.copies
        if copies:
            self._say(f"Other panels kept their work in {', '.join(copies)} of {kept.folder.path}.")

    def _from_history(self, history: History | None) -> Design | None:
        """What the history remembers in place of a design file that cannot be read."""
        with suppress(InputError):
            if history is not None:
                design = history.design_of(history.at)
                self._say("What the history of the job remembers is shown instead.")
                return design
        self._say("The example is shown instead.")
        return None

    def _begin_with(self, found: KeptWork, kept: KeptJob) -> None:
        """Stand where the files stand, with as much of the past as they know."""
        design = self.first if found.design is None else found.design
        self.history.folder = kept.folder.path
        if found.history is not None:
            if found.design is None:
                found.history.take_up(design, found.shelf)
            self.history = found.history
        else:
            self.history.moments[0].shelf = found.shelf
            if design != self.first and self.jobs is None:
                self.history.moments.append(Moment("", found.shelf, design))
                self.history.at = 1
            else:
                self.history.moments[0].design = design
        if design != self.first and self.jobs is None:
            self._say("Picked up where you left off. Start again brings back the example.")

    def _say(self, sentence: str) -> None:
        self.said = f"{self.said} {sentence}".strip()
