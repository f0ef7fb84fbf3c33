"""What one reader has on the table: the design, the way back, options put aside, and a folder that
keeps all of it.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from time import monotonic
from typing import Any

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load, load_words, text_of_words
from fireplace_calc.editing.file_reading import file_text
from fireplace_calc.editing.kept_comments import text_over
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.visitor import own_folder
from fireplace_calc.editing.whole_files import set_aside
from fireplace_calc.rules import PACKS
from fireplace_calc.survey.kept import Survey, read_survey, survey_text

PAUSE = 1.0
"""A hand that rests longer has made a move of its own, to be undone alone. [s]"""
STEPS_BACK, MOST_OPTIONS = 500, 4
DESIGN, READER, SURVEY = "design.toml", "reader.toml", "survey.toml"
OPTIONS = tuple(f"option-{number}.toml" for number in range(1, MOST_OPTIONS + 1))
"""Files in the folder."""


class Session:
    """A design with its past, kept on disk after every change.

    Parameters
    ----------
    first : Design
        The example: where ``start_again`` goes, and where an empty folder begins.
    pack, units : str
        Code and unit system to begin with.
    folder : path, optional
        Where everything is kept; made when not there. Without one nothing is kept.
    """

    def __init__(
        self, first: Design, pack: str, units: str, folder: str | os.PathLike[str] | None = None
    ) -> None:
        self.first, self.design, self.pack, self.units = first, first, pack, units
        self.options: list[Design] = []
        self.survey = Survey()
        self.past: list[Design] = []
        self.coming: list[Design] = []
        self.folder = (
            None
            if folder is None
            else KeptFolder(own_folder(folder), (DESIGN, READER, SURVEY, *OPTIONS))
        )
        self.said = ""
        self._run = ("", 0.0)
        self._kept: tuple[Any, ...] = ()
        self._written: dict[str, Design] = {}
        self._left: set[str] = set()
        if self.folder is not None:
            self._open(self.folder)

    def take(self, changes: Mapping[str, Any], run: str = "") -> None:
        """Change some inputs.

        Raises
        ------
        InputError
            And nothing is changed.
        """
        self.put(change(self.design, changes), run)

    def put(self, design: Design, run: str = "") -> None:
        """Lay another design on the table. Moves of one run, without a pause between them, are one
        step back.
        """
        now = monotonic()
        if not (run and self._run[0] == run and now - self._run[1] < PAUSE):
            self.past.append(self.design)
            del self.past[:-STEPS_BACK]
        self._run = (run, now)
        self.coming.clear()
        self.design = design

    def undo(self) -> bool:
        """Back to the design before; false when there is none."""
        return self._step(self.past, self.coming)

    def redo(self) -> bool:
        """Forward again; false when nothing was undone."""
        return self._step(self.coming, self.past)

    def _step(self, source: list[Design], target: list[Design]) -> bool:
        if not source:
            return False
        target.append(self.design)
        self.design, self._run = source.pop(), ("", 0.0)
        return True

    def without(self, key: str) -> Design:
        """The design with one input at its default and without name and note, to tell whether
        anything else has changed.
        """
        group, _, name = key.partition(".")
        record = getattr(self.design, group)
        default = inputs_of(record)[name].default
        return replace(self.design, name="", note="", **{group: replace(record, **{name: default})})

    def put_aside(self) -> None:
        """Keep the design as an option beside the others; to undo what comes after leads back to
        it.

        Raises
        ------
        InputError
            When there is no room for another.
        """
        if len(self.options) >= MOST_OPTIONS:
            raise InputError(
                f"There are {MOST_OPTIONS} options already; remove one first.",
                "Options",
                f"up to {MOST_OPTIONS}",
                "",
            )
        self.options.append(self.design)
        self._run = ("", 0.0)

    @property
    def notice(self) -> str:
        """Where the work is kept, when that is not where it was asked to be."""
        if self.folder is None or not self.folder.shared:
            return ""
        return (
            f"{self.folder.asked} was changed elsewhere. This panel is kept in {self.folder.path}."
        )

    def keep(self) -> None:
        """Bring the folder up to what is on the table. A file is replaced whole, so that a kill at
        any moment leaves the old or the new.

        When somebody else has written there since, that stays, and this session goes on in a
        folder of its own inside; ``notice`` says so.

        Raises
        ------
        InputError
            When the folder cannot be written.
        """
        now = (self.design, self.pack, self.units, tuple(self.options), self.survey)
        if self.folder is None or now == self._kept:
            return
        designs = dict(zip((DESIGN, *OPTIONS), (self.design, *self.options), strict=False))
        files = {name: self._content(name, design) for name, design in designs.items()}
        files[READER] = text_of_words({"pack": self.pack, "units": self.units}).encode()
        if self.survey != Survey():
            files[SURVEY] = survey_text(self.survey).encode()
        try:
            self.folder.keep(files)
        except OSError as trouble:
            raise InputError(
                f"Not kept: {self.folder.path} cannot be written: {trouble.strerror}.",
                "folder",
                "a folder that can be written to",
                str(self.folder.path),
            ) from None
        self._kept, self._written = now, designs

    def _content(self, name: str, design: Design) -> bytes:
        """A design as its file is to hold it, with the comments that a reader wrote into it."""
        known = self.folder.known.get(name, b"") if self.folder else b""
        if known and self._written.get(name) is design:
            return known
        return text_over(known.decode("utf-8-sig", "replace"), design).encode()

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
            self._kept = ()
            self.keep()
        return laid

    def _open(self, folder: KeptFolder) -> None:
        """Take up what was kept; a file that cannot be read is set aside under another name, never
        overwritten.
        """
        with folder.alone():
            found = self._read(folder.path / DESIGN)
            if found is not None:
                self.design = found
            elif self.said:
                self._say("The example is shown instead.")
            options = [self._read(folder.path / name) for name in OPTIONS]
            self.options = [option for option in options if option is not None]
            self.survey = self._read_survey(folder.path / SURVEY)
            words = load_words(folder.path / READER)
            with suppress(OSError):  # what cannot be read stays unknown, so it is not written over
                folder.known = {n: c for n, c in folder.look().items() if n not in self._left}
        self.pack = words["pack"] if words.get("pack") in PACKS else self.pack
        self.units = words["units"] if words.get("units") in SYSTEMS else self.units
        if self.design != self.first:
            self.past.append(self.first)
            self._say("Picked up where you left off. Start again brings back the example.")
        if folder.copies:
            self._say(
                f"Other panels kept their work in {', '.join(folder.copies)} of {folder.path}."
            )

    def _read(self, path: Path) -> Design | None:
        if not path.exists():
            return None
        try:
            return load(path)
        except InputError as trouble:
            self._say(str(trouble))
        self._set_aside(path)
        return None

    def _read_survey(self, path: Path) -> Survey:
        if not path.exists():
            return Survey()
        try:
            return read_survey(file_text(path))
        except InputError as trouble:
            self._say(str(trouble))
        self._set_aside(path)
        return Survey()

    def _set_aside(self, path: Path) -> None:
        try:
            self._say(f"It was set aside as {set_aside(path).name}.")
        except OSError:
            self._left.add(path.name)
            self._say("It could not be renamed and is left as it is.")

    def _say(self, sentence: str) -> None:
        self.said = f"{self.said} {sentence}".strip()
