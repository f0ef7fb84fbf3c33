"""The files of a set that is being measured: the sheet as it is typed, and the set made from it."""

from __future__ import annotations

import os
from hashlib import sha256
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.whole_files import set_aside, write_whole
from fireplace_calc.pieces.measured.kept_words import read_sheet_text, sheet_text
from fireplace_calc.pieces.measured.set_file import set_text
from fireplace_calc.pieces.measured.sheet import MeasuredSheet, begun

EMPTY = begun(MeasuredSheet({"unit": "in"}))
"""A sheet on which nothing is typed yet."""


class MeasuredFiles:
    """A set file and the sheet beside it; each is written whole or not at all.

    Parameters
    ----------
    path : str or path
        Of the set file, such as ``my-set.toml``; its folder has to exist.

    Raises
    ------
    InputError
        For a name that no design could ask for.
    """

    def __init__(self, path: str | os.PathLike[str]) -> None:
        self.set = Path(path)
        if self.set.suffix != ".toml" or self.set.name.startswith(".") or not self.set.stem.strip():
            raise InputError(
                f"The set file is {str(path)!r}, but a name that ends in .toml is wanted.",
                "file",
                "my-set.toml",
                str(path),
            )
        self.sheet = self.set.with_name(f"{self.set.stem}-sheet.toml")
        self._written = ""

    def take_up(self) -> tuple[MeasuredSheet, str]:
        """The sheet as it was left, and what is to be said of that; an empty one at first.

        Returns
        -------
        tuple
            MeasuredSheet, and str.
        """
        if not self.sheet.is_file():
            return EMPTY, ""
        try:
            sheet, self._written = read_sheet_text(self.sheet.read_bytes().decode("utf-8-sig"))
        except (OSError, UnicodeDecodeError, InputError) as trouble:
            aside = set_aside(self.sheet)
            return EMPTY, f"{self.sheet.name} could not be read and is now {aside.name}. {trouble}"
        many = sum("mark" in entry for entry in sheet.entries)
        were = {0: "Nothing but the set as a whole was", 1: "One piece was"}.get(
            many, f"{many} pieces were"
        )
        return sheet, f"{were} on the sheet; it goes on there."

    def keep(self, sheet: MeasuredSheet) -> str:
        """Write the sheet, and the set file as far as there is one to write.

        Parameters
        ----------
        sheet : MeasuredSheet

        Returns
        -------
        str
            What is in the set file, or why it is not written.

        Raises
        ------
        InputError
            When the folder takes no file.
        """
        try:
            text = set_text(sheet)
        except InputError as wrong:
            write_whole(self.sheet, sheet_text(sheet, self._written).encode())
            return f"{self.set.name} is not written yet. {wrong}"
        there = self.set.read_bytes() if self.set.is_file() else None
        mark = _mark(text.encode())
        if there is not None and _mark(there) not in (self._written, mark):
            write_whole(self.sheet, sheet_text(sheet, self._written).encode())
            return (
                f"{self.set.name} holds another set, or was changed by hand since, and stays as it"
                " is. Give it another name, and it is written here again."
            )
        # The sheet first: it names the set file that is to come, whatever happens in between.
        write_whole(self.sheet, sheet_text(sheet, mark).encode())
        if there is None or _mark(there) != mark:
            write_whole(self.set, text.encode())
        self._written = mark
        return f'{self.set.name} is written; a design takes it with pieces.set = "{self.set.stem}".'


def _mark(content: bytes) -> str:
    return sha256(content).hexdigest()
