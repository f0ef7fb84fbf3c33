"""A folder that keeps somebody's work, and what happens when two work in it at once."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from fireplace_calc.editing.whole_files import write_whole

COPY = "copy-{}"
"""Folder inside, for whoever comes second."""


class KeptFolder:
    """Files that belong together, replaced only while they are what we last saw of them.

    Whoever finds that somebody else has written there goes on in a folder of his own inside, so
    both keep their work.

    Parameters
    ----------
    path : path
        Made when it is first written to.
    belongs : callable
        Whether a file of this name is part of the work.

    Attributes
    ----------
    path : path
        Where it is kept now.
    known : dict
        Content of each file, as it was last read or written here.
    """

    def __init__(self, path: Path, belongs: Callable[[str], bool]) -> None:
        self.asked, self.path, self.belongs = path, path, belongs
        self.known: dict[str, bytes] = {}

    @property
    def shared(self) -> bool:
        """Whether somebody else writes to the folder that was asked for."""
        return self.path != self.asked

    @property
    def copies(self) -> list[str]:
        """Folders inside that others, or we ourselves, have gone on in."""
        return sorted(path.name for path in self.path.glob(COPY.format("[0-9]*")) if path.is_dir())

    @contextmanager
    def alone(self) -> Iterator[None]:
        """Read or write while nobody else does; a process that is killed lets go.

        Where the system has no such lock (Windows, some network drives) two who write within the
        same millisecond may still meet.
        """
        handle = None
        try:
            if sys.platform != "win32":
                import fcntl

                with suppress(OSError):
                    handle = os.open(self.path, os.O_RDONLY)
                    fcntl.flock(handle, fcntl.LOCK_EX)
            yield
        finally:
            if handle is not None:
                os.close(handle)

    def look(self) -> dict[str, bytes]:
        """What stands there now, by name.

        Raises
        ------
        OSError
            When a file is there and cannot be read.
        """
        found: dict[str, bytes] = {}
        with suppress(FileNotFoundError, NotADirectoryError):
            for name in filter(self.belongs, sorted(os.listdir(self.path))):
                with suppress(FileNotFoundError):
                    found[name] = (self.path / name).read_bytes()
        return found

    def keep(self, files: Mapping[str, bytes]) -> None:
        """Bring the folder up to these files; each is replaced whole.

        Raises
        ------
        OSError, InputError
            When the folder cannot be written.
        """
        self.path.mkdir(parents=True, exist_ok=True)
        with self.alone():
            self._leave_others_alone(files)
            for name, content in files.items():
                if self.known.get(name) != content:
                    write_whole(self.path / name, content)
                    self.known[name] = content
            for name in [name for name in self.known if name not in files]:
                (self.path / name).unlink(missing_ok=True)
                del self.known[name]

    def lay(self, name: str, content: bytes) -> Path:
        """Put another file beside them.

        Raises
        ------
        OSError, InputError
            When the folder cannot be written.
        """
        self.path.mkdir(parents=True, exist_ok=True)
        with self.alone():
            self._leave_others_alone({})
            write_whole(self.path / name, content)
        return self.path / name

    def _leave_others_alone(self, wanted: Mapping[str, bytes]) -> None:
        """Go on in a folder of our own when what stands here is neither what we know nor what we
        want.
        """
        there = self.look()
        if there and there not in (self.known, wanted):
            self.path, self.known = self._new_folder(), {}
        else:
            self.known = there

    def _new_folder(self) -> Path:
        number = 2
        while (made := self.path / COPY.format(number)).exists():
            number += 1
        made.mkdir()
        return made
