"""Supplied files, copied out for a reader to change; what he has changed is never written over."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path

from fireplace_calc.editing.whole_files import write_whole


def copy_out(files: Mapping[str, Iterable[Path]], folder: Path) -> tuple[list[Path], list[Path]]:
    """Copy files into a folder, where they are missing.

    Parameters
    ----------
    files : mapping of str to iterable of path
        By the folder below that they go to.
    folder : path
        Made when not there.

    Returns
    -------
    written : list of path
        What was not there before.
    alone : list of path
        What is there and differs.

    Raises
    ------
    OSError
        When the folder cannot be written.
    """
    written: list[Path] = []
    alone: list[Path] = []
    for below, sources in files.items():
        (folder / below).mkdir(parents=True, exist_ok=True)
        for source in sorted(sources):
            target, content = folder / below / source.name, source.read_bytes()
            if not target.exists():
                write_whole(target, content)
                written.append(target)
            elif not target.is_file() or target.read_bytes() != content:
                alone.append(target)
    return written, alone
