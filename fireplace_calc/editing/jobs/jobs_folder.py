"""Several jobs in one folder: which there are, which is open, and the bin."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.designfile import load, load_words, text_of_words
from fireplace_calc.editing.jobs.kept_job import DESIGN
from fireplace_calc.editing.jobs.names import BIN, as_name, folder_for, one_line
from fireplace_calc.editing.kept_folder import COPY
from fireplace_calc.editing.whole_files import write_whole

NAMED, OPEN = "job.toml", "open.toml"
"""The name of a job, in its folder; which one is open, beside the jobs."""
TEXT = "*.toml"
OF_ITS_OWN = (DESIGN, NAMED, "as-built.toml")
"""Files that a copy is given otherwise, or not at all."""
MOST_LISTED = 500
"""Jobs in a list. [-]"""


@dataclass(frozen=True, slots=True)
class ListedJob:
    """One job of the list.

    Attributes
    ----------
    key : str
        Its folder, as seen from the folder of all jobs.
    name : str
        As the reader calls it.
    changed : float
        When its design was last written, in seconds since 1970. [s]
    """

    key: str
    name: str
    changed: float


class JobsFolder:
    """The folder of all jobs.

    Parameters
    ----------
    path : path
        Made when the first job is started.
    """

    def __init__(self, path: Path) -> None:
        self.path = path

    def jobs(self) -> tuple[ListedJob, ...]:
        """Every job, the one changed last first. What an older notebook kept is one of them, under
        the name of its folder.
        """
        return self._listed(self.path)

    def binned(self) -> tuple[ListedJob, ...]:
        """Those in the bin."""
        return self._listed(self.path / BIN)

    def named(self, key: str) -> str:
        """Name of one job."""
        return self._named(self.path / key)

    def open_key(self) -> str:
        """The job that was open last, if it is still there."""
        key = load_words(self.path / OPEN).get("job", "")
        return key if key in {job.key for job in self.jobs()} else ""

    def remember(self, key: str) -> None:
        """Open this one the next time; none when empty. Where nothing can be written nothing is
        remembered.
        """
        if load_words(self.path / OPEN).get("job", "") != key:
            with suppress(OSError, InputError):
                write_whole(self.path / OPEN, text_of_words({"job": key}).encode())

    def start(self, name: str) -> str:
        """Make the folder of a new job.

        Returns
        -------
        str
            Its key.

        Raises
        ------
        InputError
            When there is no name, or the folder cannot be made.
        """
        name = as_name(name, "The job")
        try:
            path = self._new(self.path, name)
        except OSError as trouble:
            raise self._cannot(self.path, trouble) from None
        self._name(path, name)
        return path.name

    def copy(self, key: str, name: str = "") -> str:
        """Another job with all that this one holds, sets beside it too; what was measured while one
        was built stays with that one.

        Raises
        ------
        InputError
            When it cannot be read, or the copy not be written.
        """
        name = as_name(name or f"{self.named(key)}, copy", "The copy")
        source = self._there(key)
        try:
            path = self._new(self.path, name)
            for file in _to_copy(source):
                (path / file).parent.mkdir(exist_ok=True)
                write_whole(path / file, (source / file).read_bytes())
        except OSError as trouble:
            raise self._cannot(self.path, trouble) from None
        self._name(path, name)
        return path.name

    def rename(self, key: str, name: str) -> None:
        """Call a job otherwise; its folder keeps its name, so that whoever has it open goes on.

        Raises
        ------
        InputError
            When there is no name, or it cannot be written.
        """
        self._name(self._there(key), as_name(name, "The job"))

    def bin(self, key: str) -> str:
        """Put a job into the bin.

        Returns
        -------
        str
            Its key there.

        Raises
        ------
        InputError
            When it cannot be moved.
        """
        return self._move(self._there(key), key, self.path / BIN)

    def put_back(self, key: str) -> str:
        """Take a job out of the bin; gives its key.

        Raises
        ------
        InputError
            When it cannot be moved.
        """
        return self._move(self._there(key, self.path / BIN), key, self.path)

    def design(self, key: str) -> Design:
        """The design of a job, to see it beside others.

        Raises
        ------
        InputError
            When it cannot be read.
        """
        return load(self._there(key) / DESIGN)

    # -- inside -----------------------------------------------------------------------------------
    def _listed(self, where: Path) -> tuple[ListedJob, ...]:
        found = []
        for path in (
            *where.glob(f"*/{DESIGN}"),
            *where.glob(f"*/{COPY.format('[0-9]*')}/{DESIGN}"),
        ):
            folder = path.parent
            key = folder.relative_to(where).as_posix()
            if key.partition("/")[0] != BIN and not key.startswith(".") and key.isprintable():
                with suppress(OSError):
                    found.append(ListedJob(key, self._named(folder), path.stat().st_mtime))
        return tuple(sorted(found, key=lambda job: (-job.changed, job.key))[:MOST_LISTED])

    def _named(self, folder: Path) -> str:
        """As its own file says; else an older folder's name in words."""
        name = one_line(load_words(folder / NAMED).get("name", ""))
        if name:
            return name
        plain = one_line(folder.name.replace("-", " ").capitalize()) or folder.name
        inside = folder.name.startswith(COPY.format("")) and folder.parent != self.path
        return f"{self._named(folder.parent)}, {plain.lower()}" if inside else plain

    def _there(self, key: str, where: Path | None = None) -> Path:
        """Folder of a job of the list; no other place can be named."""
        where = where or self.path
        if key not in {job.key for job in self._listed(where)}:
            raise InputError(
                f"There is no job {one_line(key)!r} in {where}; was it moved or renamed elsewhere?",
                "job",
                "one of the list",
                key,
            )
        return where / key

    def _new(self, where: Path, name: str) -> Path:
        """An empty folder that nobody else has. The key of another job is never given again."""
        where.mkdir(parents=True, exist_ok=True)
        taken = {path.name.lower() for path in where.iterdir()}
        while True:
            path = where / folder_for(name, taken)
            try:
                path.mkdir()
            except FileExistsError:
                taken.add(path.name)
            else:
                return path

    def _name(self, folder: Path, name: str) -> None:
        write_whole(folder / NAMED, text_of_words({"name": name}).encode())

    def _move(self, source: Path, key: str, target: Path) -> str:
        name = self._named(source)
        try:
            made = self._new(target, key.replace("/", "-"))
            made.rmdir()
            source.rename(made)
        except OSError as trouble:
            raise self._cannot(source, trouble) from None
        if not (made / NAMED).exists():
            self._name(made, name)
        return made.name

    def _cannot(self, path: Path, why: OSError) -> InputError:
        return InputError(
            f"{path} cannot be written: {why.strerror}.",
            "folder",
            "a folder that can be written to",
            str(path),
        )


def _to_copy(source: Path) -> list[Path]:
    """Files of a job, by where they stand in it; the design last: without one it is no job yet."""
    found = [
        path.relative_to(source) for path in (*source.glob(TEXT), *source.glob(f"sets/{TEXT}"))
    ]
    return [path for path in sorted(found) if path.name not in OF_ITS_OWN] + [Path(DESIGN)]
