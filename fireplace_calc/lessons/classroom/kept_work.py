"""A student's folder: found or made under his name, and every answer added to what stands there.

Whoever writes reads the file again first, alone, and adds one entry. So two pages of one student
lose nothing, two students never meet, and a page that is killed leaves a file that is whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import InputError
from fireplace_calc.editing.file_reading import parsed_file
from fireplace_calc.editing.jobs.names import in_any_letters
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.lessons.classroom.rosters import same_name, student_name
from fireplace_calc.lessons.classroom.student_work import (
    MOST_ENTRIES,
    Attempt,
    StudentWork,
    work_of,
    work_text,
)
from fireplace_calc.lessons.classroom.tickets import as_printed, seed_of

WORK = "work.toml"
USUAL = "student"
"""A folder's name where nothing is left of the student's."""


def own_work_folder(home: Path, key: str, name: str, ticket: str) -> Path:
    """The folder of one student, made when he begins.

    Parameters
    ----------
    home : path
        Folder of all students' work.
    key : str
        Of the class.
    name, ticket : str
        As they stand on the slip.

    Returns
    -------
    path

    Raises
    ------
    InputError
        When name and ticket do not belong together, somebody else of that name works here, or
        nothing can be written.
    """
    name, seed = student_name(name), seed_of(ticket, name)
    try:
        home.mkdir(parents=True, exist_ok=True)
        with KeptFolder(home, WORK.__eq__).alone():
            for folder, found in works_in(home):
                if found.key == key and same_name(found.name) == same_name(name):
                    if seed_of(found.ticket, found.name) != seed:
                        raise InputError(
                            f"{name} works here already with another ticket. Ask your trainer"
                            " which of you has to change the name.",
                            "Name",
                            "a name that nobody else has",
                            name,
                        )
                    return folder
            taken = {path.name.casefold() for path in home.iterdir() if _in_use(path)}
            folder = home / in_any_letters(name, taken, USUAL)
            folder.mkdir(exist_ok=True)
            begun = StudentWork(key, name, as_printed(ticket))
            write_whole(folder / WORK, work_text(begun, made_by()).encode())
            return folder
    except OSError as trouble:
        raise InputError(
            f"{home} cannot be written: {trouble.strerror}.", "folder", "", str(home)
        ) from None


def works_in(home: Path) -> Iterator[tuple[Path, StudentWork]]:
    """Every student's folder below this one, with what it holds; what cannot be read is left out.

    Parameters
    ----------
    home : path

    Yields
    ------
    path, StudentWork
    """
    for path in sorted(home.glob(f"*/{WORK}")):
        with suppress(InputError):
            yield path.parent, read_work(path.parent)


def read_work(folder: Path) -> StudentWork:
    """What a student's folder holds.

    Raises
    ------
    InputError
        When it cannot be read.
    """
    path = folder / WORK
    return work_of(parsed_file(path), str(path))


def add_attempt(folder: Path, attempt: Attempt) -> StudentWork:
    """Add one entry to a student's file.

    Parameters
    ----------
    folder : path
        The student's own.
    attempt : Attempt

    Returns
    -------
    StudentWork
        All that the file holds now.

    Raises
    ------
    InputError
        When the file cannot be read or written, or is full.
    """
    with KeptFolder(folder, WORK.__eq__).alone():
        known = read_work(folder)
        if len(known.attempts) >= MOST_ENTRIES:
            raise InputError(
                f"{MOST_ENTRIES} answers are kept already, and no more are taken. Show your"
                " trainer.",
                "answers",
                f"up to {MOST_ENTRIES}",
                len(known.attempts),
            )
        made = StudentWork(known.key, known.name, known.ticket, (*known.attempts, attempt))
        write_whole(folder / WORK, work_text(made, made_by()).encode())
    return made


def _in_use(path: Path) -> bool:
    """Whether a folder is somebody's; one that a killed page has just made is not yet."""
    return not path.is_dir() or any(not inside.name.startswith(".") for inside in path.iterdir())
