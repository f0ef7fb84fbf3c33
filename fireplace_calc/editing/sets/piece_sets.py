"""Finding the file of a set by its name: beside the job, where the work goes on, or as it came."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from fireplace_calc.base.resources import SETS
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.records import PieceSet
from fireplace_calc.pieces.set_text import LONGEST_FILE, read_set

BLANK = "blank"
"""The one to fill in."""


def shipped_sets() -> tuple[str, ...]:
    """Names of the sets that came with the package, the blank one left out."""
    return tuple(sorted(p.stem for p in SETS.glob("*.toml") if p.stem != BLANK))


def find_set(name: str, folder: Path | None = None) -> PieceSet:
    """Read the set of a name.

    Parameters
    ----------
    name : str
        Of its file, without ``.toml``.
    folder : path, optional
        Where the design file stands; looked into first.

    Returns
    -------
    PieceSet

    Raises
    ------
    InputError
        When there is no such file, and where it was looked for; or when it cannot be read.
    """
    if not name.strip() or name != Path(name).name or name.startswith("."):
        raise InputError(
            f"Set of pieces is {name!r}, but the plain name of a set file is wanted, without folder"
            " or .toml.",
            "Set of pieces",
            ", ".join(shipped_sets()),
            name,
        )
    near = [f for f in (folder, Path.cwd()) if f is not None]
    folders = [*near, *(f / "sets" for f in near), SETS]
    for place in folders:
        path = place / f"{name}.toml"
        if path.is_file():
            return _read(path, path.stat().st_mtime_ns)
    looked = "beside the design and where you work"
    raise InputError(
        f"There is no set {name!r} {looked}; {', '.join(shipped_sets())} came with the workbook.",
        "Set of pieces",
        ", ".join(shipped_sets()),
        name,
    )


@lru_cache(maxsize=32)
def _read(path: Path, changed: int) -> PieceSet:
    """One file, as it stood at a moment. ``changed`` tells the moments apart. [ns]"""
    del changed
    try:
        with path.open("rb") as file:
            text = file.read(LONGEST_FILE + 1).decode("utf-8-sig")
    except (OSError, UnicodeDecodeError) as trouble:
        raise InputError(
            f"The set file {path.name} cannot be read: {trouble}.",
            "Set of pieces",
            "a set file",
            path.name,
        ) from None
    try:
        return read_set(text)
    except InputError as wrong:
        raise InputError(
            f"{path.name}: {wrong}", wrong.name, wrong.allowed, wrong.received
        ) from None
