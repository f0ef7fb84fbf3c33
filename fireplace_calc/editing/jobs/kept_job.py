"""One job as its folder keeps it: the design, the options, the history and the reader's words, each
a text file that is written whole.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.designfile import load_words, text_of_words
from fireplace_calc.editing.file_reading import file_text, load_text
from fireplace_calc.editing.jobs.history import History, Namer
from fireplace_calc.editing.jobs.history_file import history_text, read_history
from fireplace_calc.editing.jobs.options import (
    OPTION_FILE,
    Option,
    Shelf,
    number_of,
    option_text,
    read_option,
)
from fireplace_calc.editing.kept_comments import text_over
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.whole_files import set_aside

DESIGN, READER, HISTORY, SURVEY = "design.toml", "reader.toml", "history.toml", "survey.toml"
"""Files in the folder, beside those of the options."""

T = TypeVar("T")


def belongs(name: str) -> bool:
    """Whether a file of this name is part of a job.

    >>> belongs("option-3.toml"), belongs("papers.pdf")
    (True, False)
    """
    return name in (DESIGN, READER, HISTORY, SURVEY) or number_of(name) is not None


@dataclass
class KeptWork:
    """What a job holds.

    Attributes
    ----------
    design : Design or None
        None where there is no file that can be read.
    shelf : Shelf
        Options, in the order in which they were put aside.
    designs : dict
        Design of every option that any moment knows, by number.
    history : History or None
        None where there is no file that can be read.
    words : dict
        The reader's: code, units and the like.
    survey : object
        What was measured: read, or the text to write; None where nothing was.
    """

    design: Design | None
    history: History | None
    shelf: Shelf = ()
    designs: dict[int, Design] = field(default_factory=dict)
    words: dict[str, str] = field(default_factory=dict)
    survey: Any = None


class KeptJob:
    """A job's folder, for one who works in it.

    Attributes
    ----------
    folder : KeptFolder
        Goes on elsewhere when somebody else has written there.
    said : str
        What could not be read, and where it is now.
    unread : set of str
        Files that could not be read.
    """

    def __init__(self, path: Path) -> None:
        self.folder, self.said = KeptFolder(path, belongs), ""
        self._written: dict[str, Design] = {}
        self._left: set[str] = set()
        self.unread: set[str] = set()
        self._history: tuple[History | None, int, bytes] = (None, 0, b"")

    def read(self, namer: Namer, survey_of: Callable[[str], Any]) -> KeptWork:
        """Take up what was kept; a file that cannot be read is set aside under another name, never
        overwritten. ``survey_of`` reads the text of a survey.
        """
        folder = self.folder
        with folder.alone():
            found = KeptWork(
                self._read(DESIGN, lambda path: load_text(file_text(path), str(path), path.parent)),
                self._read(HISTORY, lambda path: read_history(path, namer, path.parent)),
                survey=self._read(SURVEY, lambda path: survey_of(file_text(path))),
            )
            for name in self._option_files():
                self._option(name, found)
            found.words = load_words(folder.path / READER)
            with suppress(OSError):  # what cannot be read stays unknown, so it is not written over
                folder.known = {n: c for n, c in folder.look().items() if n not in self._left}
        if found.history is not None and found.design is not None:
            found.history.take_up(found.design, found.shelf)
        return found

    def keep(self, work: KeptWork) -> None:
        """Bring the folder up to the work; each file is replaced whole. The history is written
        before the design, so that a kill in between leaves a design that the history knows.

        Raises
        ------
        OSError, InputError
            When the folder cannot be written.
        """
        files = {}
        for number, design in work.designs.items():
            name = OPTION_FILE.format(number)
            text = self._content(name, design).decode("utf-8-sig", "replace")
            files[name] = option_text(text, number, work.shelf).encode()
        if work.history is not None:
            files[HISTORY] = self._history_bytes(work.history)
        if work.design is not None:
            files[DESIGN] = self._content(DESIGN, work.design)
        if work.survey is not None:
            files[SURVEY] = work.survey.encode()
        files[READER] = text_of_words(work.words).encode()
        self.folder.keep(files)
        names = {OPTION_FILE.format(number): d for number, d in work.designs.items()}
        self._written = names if work.design is None else {**names, DESIGN: work.design}

    def _content(self, name: str, design: Design) -> bytes:
        """A design as its file is to hold it, with the comments that a reader wrote into it."""
        known = self.folder.known.get(name, b"")
        if known and self._written.get(name) is design:
            return known
        return text_over(known.decode("utf-8-sig", "replace"), design).encode()

    def _history_bytes(self, history: History) -> bytes:
        """As it was last written, while only a hand moves."""
        of, version, content = self._history
        if of is not history or version != history.version:
            content = history_text(history).encode()
            self._history = history, history.version, content
        return content

    # -- reading ----------------------------------------------------------------------------------
    def _option_files(self) -> list[str]:
        with suppress(OSError):
            names = [path.name for path in self.folder.path.iterdir()]
            return sorted(filter(number_of, names), key=lambda name: number_of(name) or 0)
        return []

    def _option(self, name: str, found: KeptWork) -> None:
        number, designs = number_of(name) or 0, found.designs

        def read(path: Path) -> tuple[Design, tuple[Option, bool]]:
            text = file_text(path)
            return load_text(text, str(path), path.parent), read_option(text, number)

        if (read_one := self._read(name, read)) is not None:
            designs[number], (option, counts) = read_one
            self._written[name] = designs[number]
            if counts:
                found.shelf = (*found.shelf, option)

    def _read(self, name: str, read: Callable[[Path], T]) -> T | None:
        """One file; set aside when it cannot be read, none when there is none."""
        path = self.folder.path / name
        if not path.exists():
            return None
        try:
            return read(path)
        except InputError as trouble:
            self._put_aside(path, trouble)
        return None

    def _put_aside(self, path: Path, why: InputError) -> None:
        self._say(str(why))
        self.unread.add(path.name)
        try:
            self._say(f"It was set aside as {set_aside(path).name}.")
        except OSError:
            self._left.add(path.name)
            self._say("It could not be renamed and is left as it is.")

    def _say(self, sentence: str) -> None:
        self.said = f"{self.said} {sentence}".strip()
