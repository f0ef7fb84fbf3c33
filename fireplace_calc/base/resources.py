"""Where the files stand that came with the package: figures, example designs, notebooks; and its
version.

In a clone they are the folders ``data`` and ``notebooks`` at the top. A wheel carries the same
folders inside the package.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from fireplace_calc.base.units import InputError

MAKER = "fireplace_calc"
"""Name of the program."""
PACKAGE = Path(__file__).resolve().parent.parent
CLONE = PACKAGE.parent
CARRIED = PACKAGE / "_supplied"
"""Only in an installed wheel."""
_TOP = CARRIED if CARRIED.is_dir() else CLONE

DATA = _TOP / "data"
DESIGNS = DATA / "designs"
SETS = DATA / "sets"
LESSONS = DATA / "lessons"
NOTEBOOKS = _TOP / "notebooks"


def example(name: str) -> Path:
    """An example design that came with the package, for ``load``.

    Parameters
    ----------
    name : str
        ``boathouse`` (from a set), ``boathouse-laid`` or ``plain``.

    Returns
    -------
    path
        The design file; copy it to make a design of your own.

    Raises
    ------
    InputError
        When there is none of this name.
    """
    path = DESIGNS / f"{name}.toml"
    if path.parent != DESIGNS or not path.is_file():
        names = ", ".join(sorted(known.stem for known in DESIGNS.glob("*.toml")))
        raise InputError(f"No example design {name!r}; there are {names}.", "example", names, name)
    return path


def lesson_keys() -> tuple[str, ...]:
    """Names of the lesson files that came with the package, without their ending."""
    return tuple(sorted(path.stem for path in LESSONS.glob("*.toml")))


def lesson_text(key: str) -> str:
    """Text of a lesson file that came with the package."""
    return (LESSONS / f"{key}.toml").read_text(encoding="utf-8")


@cache
def version() -> str:
    """The project's version, from ``pyproject.toml`` in a clone and from the installed package
    else.
    """
    if _TOP is CLONE:
        import tomllib

        with (CLONE / "pyproject.toml").open("rb") as file:
            return str(tomllib.load(file)["project"]["version"])
    from importlib import metadata

    return metadata.version(MAKER)


def made_by() -> str:
    """Name and version of the program, as every file written here carries it."""
    return f"{MAKER} {version()}"


def page_source(folder: str, *names: str) -> str:
    """Scripts or styles of a page, one behind the other.

    Parameters
    ----------
    folder : str
        Within the package.
    *names : str
        File names.
    """
    return "\n".join((PACKAGE / folder / name).read_text("utf-8") for name in names)
