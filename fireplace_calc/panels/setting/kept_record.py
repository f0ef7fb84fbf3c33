"""The record of what was measured on one job, kept in its folder after every entry."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.visitor import own_folder
from fireplace_calc.editing.whole_files import set_aside
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.standing.as_built import AsBuilt
from fireplace_calc.pieces.standing.as_built_file import as_built_text, read_as_built

AS_BUILT = "as-built.toml"
"""The file in the folder."""


class KeptRecord:
    """A record that grows, and the way back to what was entered since it was opened.

    Parameters
    ----------
    job : str
        Whose record it is, where it begins.
    chain : sequence of Rise
        Lifts that it may speak of.
    keep : path, optional
        Folder of the job; made when it is first written to.

    Attributes
    ----------
    built : AsBuilt
    said : str
        What the reader has to know of the file.
    """

    def __init__(
        self, job: str, chain: Sequence[Rise], keep: str | os.PathLike[str] | None = None
    ) -> None:
        self.built, self.chain, self.said = AsBuilt(job), tuple(chain), ""
        self._past: list[tuple[AsBuilt, Mapping[str, str]]] = []
        self.folder = None if keep is None else KeptFolder(own_folder(keep), AS_BUILT.__eq__)
        if self.folder is None:
            self.said = "No folder was named, so the record is gone when the notebook is closed."
        else:
            self._open(self.folder)

    def put(self, built: AsBuilt, typed: Mapping[str, str], units: str) -> None:
        """Take a longer record, and keep it.

        Parameters
        ----------
        built : AsBuilt
        typed : mapping of str to str
            What was typed for the new entry.
        units : str
            That the file is written in.

        Raises
        ------
        InputError
            When it cannot be kept; then it is not taken either.
        """
        self._keep(built, units)
        self._past.append((self.built, typed))
        self.built = built

    def undo(self, units: str) -> Mapping[str, str] | None:
        """Take back the last entry made here, and give what was typed; nothing when there is none.

        Raises
        ------
        InputError
            When the shorter record cannot be kept; then nothing is taken back.
        """
        if not self._past:
            return None
        built, typed = self._past[-1]
        self._keep(built, units)
        self.built = built
        self._past.pop()
        return typed

    def beside(self, name: str) -> Path | None:
        """Where another file of the job goes; nowhere when nothing is kept."""
        if self.folder is None:
            return None
        self.folder.path.mkdir(parents=True, exist_ok=True)
        return self.folder.path / name

    def _keep(self, built: AsBuilt, units: str) -> None:
        if self.folder is None:
            return
        try:
            self.folder.keep({AS_BUILT: as_built_text(built, units).encode()})
        except OSError as trouble:
            raise InputError(
                f"Not kept: {self.folder.path} cannot be written: {trouble.strerror}.",
                "folder",
                "a folder that can be written to",
                str(self.folder.path),
            ) from None
        self.said = (
            f"{self.folder.asked} holds another record. This one is kept in {self.folder.path}."
            if self.folder.shared
            else ""
        )

    def _open(self, folder: KeptFolder) -> None:
        """Take up what was kept. What cannot be read is set aside; a record of other lifts stays
        where it is, and this one goes on in a folder of its own.
        """
        try:
            with folder.alone():
                found = folder.look()
        except OSError as trouble:
            self.said = f"{folder.path} cannot be read: {trouble.strerror}."
            return
        if AS_BUILT not in found:
            return
        try:
            built = read_as_built(found[AS_BUILT].decode("utf-8-sig"))
        except (InputError, UnicodeDecodeError) as wrong:
            self._set_aside(folder, str(wrong))
            return
        try:
            built.standing(self.chain)
        except InputError as wrong:
            self.said = (
                f"{folder.path / AS_BUILT} is the record of another set: {wrong} It stays as it is;"
                " a new one begins in a folder inside."
            )
            return
        self.built, folder.known = built, found
        if built.tops:
            self.said = f"Picked up {len(built.tops)} entries from {folder.path / AS_BUILT}."

    def _set_aside(self, folder: KeptFolder, why: str) -> None:
        try:
            other = set_aside(folder.path / AS_BUILT)
        except OSError:
            self.said = f"{why} It could not be renamed and is left as it is."
        else:
            self.said = f"{why} It was set aside as {other.name}; a new record begins."
