"""What one reader has on the table: the design, the way back, options put aside, and a folder that
keeps all of it.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from time import monotonic
from typing import Any

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load, load_words, save, save_words
from fireplace_calc.editing.visitor import own_folder
from fireplace_calc.editing.whole_files import set_aside, write_whole
from fireplace_calc.rules import PACKS

PAUSE = 1.0
"""A hand that rests longer has made a move of its own, to be undone alone. [s]"""
STEPS_BACK, MOST_OPTIONS = 500, 4
DESIGN, READER, OPTION = "design.toml", "reader.toml", "option-{}.toml"
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
    ):
        self.first, self.design, self.pack, self.units = first, first, pack, units
        self.options: list[Design] = []
        self.past: list[Design] = []
        self.coming: list[Design] = []
        self.folder = None if folder is None else own_folder(folder)
        self.said = ""
        self._run = ("", 0.0)
        self._kept: tuple = ()
        if self.folder is not None:
            self._open()

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
                f"There are {MOST_OPTIONS} options already; take one away first.",
                "Options",
                f"up to {MOST_OPTIONS}",
                "",
            )
        self.options.append(self.design)
        self._run = ("", 0.0)

    def keep(self) -> None:
        """Bring the folder up to what is on the table. A file is replaced whole, so that a kill at
        any moment leaves the old or the new.

        Raises
        ------
        InputError
            When the folder cannot be written.
        """
        now = (self.design, self.pack, self.units, tuple(self.options))
        if self.folder is None or now == self._kept:
            return
        before = self._kept or (None,) * 4
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            if before[0] is not self.design:
                save(self.design, self.folder / DESIGN)
            if before[1:3] != now[1:3]:
                save_words({"pack": self.pack, "units": self.units}, self.folder / READER)
            if before[3] != now[3]:
                for number, option in enumerate(self.options, 1):
                    save(option, self.folder / OPTION.format(number))
                for number in range(len(self.options) + 1, MOST_OPTIONS + 1):
                    (self.folder / OPTION.format(number)).unlink(missing_ok=True)
        except OSError as trouble:
            raise InputError(
                f"Not kept: {self.folder} cannot be written: {trouble.strerror}.",
                "folder",
                "a folder that can be written to",
                str(self.folder),
            ) from None
        self._kept = now

    def lay(self, name: str, content: bytes) -> Path | None:
        """Lay a paper beside what is kept; nowhere when nothing is kept."""
        if self.folder is None:
            return None
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError:
            return None
        write_whole(self.folder / name, content)
        return self.folder / name

    def _open(self) -> None:
        """Take up what was kept; a file that cannot be read is set aside under another name, never
        overwritten.
        """
        found = self._read(self.folder / DESIGN)
        if found is not None:
            self.design = found
            if found != self.first:
                self.past.append(self.first)
                self.said = "Taken up where it was left. Start again brings the example back."
        words = load_words(self.folder / READER)
        self.pack = words["pack"] if words.get("pack") in PACKS else self.pack
        self.units = words["units"] if words.get("units") in SYSTEMS else self.units
        for number in range(1, MOST_OPTIONS + 1):
            option = self._read(self.folder / OPTION.format(number))
            self.options += [] if option is None else [option]

    def _read(self, path: Path) -> Design | None:
        if not path.exists():
            return None
        try:
            return load(path)
        except InputError as trouble:
            self.said = (
                f"{trouble} It was set aside as {set_aside(path).name}, and the example stands in"
                " its place."
            )
            return None
