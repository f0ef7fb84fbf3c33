"""Files that are written whole or not at all, and never over what could not be read."""

from __future__ import annotations

import os
from itertools import count
from pathlib import Path

from fireplace_calc.base.units import InputError

SHORT = 200
"""Bytes of a name that are kept where something is added to it. [-]"""


def write_whole(path: str | os.PathLike[str], content: bytes) -> None:
    """Put a file in place in one step, or leave what was there and say why.

    Parameters
    ----------
    path : str or path
        The file; its folder has to exist. Permissions of a file already there are kept.
    content : bytes
        All of it.

    Raises
    ------
    InputError
        When it cannot be written.
    """
    target = Path(os.path.realpath(path))
    beside = target.with_name(f".{short(target.name)}.{os.getpid()}.{os.urandom(4).hex()}.tmp")
    try:
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            if target.exists():
                os.chmod(beside, target.stat().st_mode & 0o7777)
            os.replace(beside, target)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
    except OSError as trouble:
        raise InputError(
            f"{path} cannot be written: {trouble.strerror}.", "file", "", str(path)
        ) from None


def short(name: str) -> str:
    """As much of a file's name as leaves a disk room to add to it: it takes 255 bytes.

    >>> len(short("x" * 255))
    200
    """
    return os.fsencode(name)[:SHORT].decode(errors="ignore")


def set_aside(path: str | os.PathLike[str]) -> Path:
    """Give a file that cannot be read another name beside it; nothing is written over it."""
    path = Path(path)
    taken = {other.name for other in path.parent.iterdir()}
    name = next(
        name
        for n in count(1)
        if (name := f"{short(path.stem)}-unreadable-{n}{path.suffix}") not in taken
    )
    path.rename(path.with_name(name))
    return path.with_name(name)
