"""The two files of a class: the trainer's with its secret, and what is handed out without one."""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.file_reading import parsed_file
from fireplace_calc.editing.file_text import quoted
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.lessons.classroom.class_records import ClassTask, SchoolClass
from fireplace_calc.lessons.classroom.rosters import placed

FILE = "class.toml"
"""Name of both, each in its folder."""
ONLY_THE_TRAINER = 0o700
"""Rights of the trainer's folder, where the system has such."""
_WORDS = ("title", "key", "pack", "units", "helps", "made_by")
_NUMBERS = ("count", "level", "edition")
_BEFORE = {"edition": 1}
"""What a file means that was written before a line was thought of."""


def new_key() -> str:
    """What tells a new class from all others; nothing can be worked out from it."""
    return secrets.token_hex(4)


def kept_class(folder: Path, task: ClassTask, names: tuple[str, ...]) -> SchoolClass:
    """Keep a class in the trainer's folder; secret and places given before stay.

    Parameters
    ----------
    folder : path
        Made when not there, for its owner alone.
    task : ClassTask
        Its key and its edition count only for a class that is new there.
    names : tuple of str
        The roster.

    Returns
    -------
    SchoolClass

    Raises
    ------
    InputError
        When it cannot be written, or what stands there cannot be used.
    """
    _made(folder, ONLY_THE_TRAINER)
    with KeptFolder(folder, FILE.__eq__).alone():
        known = read_class(folder)
        before = {**known.left, **known.places} if known else {}
        places = placed(names, before)
        kept = SchoolClass(
            replace(task, key=known.task.key, edition=known.task.edition) if known else task,
            known.secret if known else secrets.token_hex(32),
            places,
            {name: at for name, at in before.items() if at not in places.values()},
        )
        write_whole(folder / FILE, _class_text(kept).encode())
    return kept


def hand_out(folder: Path, task: ClassTask) -> None:
    """Lay what the students' pages read into the folder of their work.

    Raises
    ------
    InputError
        When it cannot be written.
    """
    _made(folder, 0o777)
    text = f"# What a class is set. Nothing here is secret.\n{_task_text(task)}"
    write_whole(folder / FILE, text.encode())


def read_class(folder: Path) -> SchoolClass | None:
    """The class of a trainer's folder; none where there is no file.

    Raises
    ------
    InputError
        When the file cannot be used; it is left as it is.
    """
    path = folder / FILE
    if not path.exists():
        return None
    told = parsed_file(path)
    secret = told.get("secret")
    if not isinstance(secret, str) or len(secret) < 32:
        raise _unusable(path, "secret")
    return SchoolClass(
        _task(told, path), secret, _places(told, "students", path), _places(told, "left", path)
    )


def read_task(places: tuple[Path, ...]) -> ClassTask:
    """What the class is set, from the first of several folders that holds it.

    Raises
    ------
    InputError
        When none does, or the file cannot be used.
    """
    for folder in places:
        if (folder / FILE).exists():
            return _task(parsed_file(folder / FILE), folder / FILE)
    raise InputError(
        "No class is handed out here yet. Ask your trainer to press Keep and hand out.",
        "class",
        f"a file {FILE} in the folder of the class",
        "",
    )


def _made(folder: Path, rights: int) -> None:
    try:
        folder.mkdir(mode=rights, parents=True, exist_ok=True)
    except OSError as trouble:
        raise InputError(
            f"{folder} cannot be made: {trouble.strerror}.", "folder", "", str(folder)
        ) from None


def _class_text(kept: SchoolClass) -> str:
    here, left = (
        "".join(f"{quoted(name)} = {at}\n" for name, at in places.items())
        for places in (kept.places, kept.left)
    )
    return (
        "# A class and its secret. Whoever has this file can work out every ticket: keep it from"
        f" the students.\n{_task_text(kept.task)}secret = {quoted(kept.secret)}\n"
        f"\n[students]\n{here}\n[left]\n{left}"
    )


def _task_text(task: ClassTask) -> str:
    words = "".join(f"{name} = {quoted(getattr(task, name))}\n" for name in _WORDS)
    numbers = "".join(f"{name} = {getattr(task, name)}\n" for name in _NUMBERS)
    return f"{words}kinds = {quoted(list(task.kinds))}\n{numbers}"


def _task(read: Mapping[str, Any], path: Path) -> ClassTask:
    told = {**_BEFORE, **read}
    for name in _WORDS:
        if not isinstance(told.get(name), str):
            raise _unusable(path, name)
    kinds = told.get("kinds")
    if not isinstance(kinds, list) or not all(isinstance(kind, str) for kind in kinds):
        raise _unusable(path, "kinds")
    for name in _NUMBERS:
        if type(told.get(name)) is not int:
            raise _unusable(path, name)
    return ClassTask(kinds=tuple(kinds), **{name: told[name] for name in (*_WORDS, *_NUMBERS)})


def _places(told: Mapping[str, Any], name: str, path: Path) -> dict[str, int]:
    found = told.get(name)
    if not isinstance(found, dict) or not all(type(at) is int for at in found.values()):
        raise _unusable(path, name)
    return found


def _unusable(path: Path, name: str) -> InputError:
    """Never shows the value: it might be the secret."""
    return InputError(
        f"{path}: {name} is missing or is not as the workbook writes it. Bring the file back from a"
        " copy, or move it away and begin the class anew.",
        name,
        "as it was written",
        "",
    )
