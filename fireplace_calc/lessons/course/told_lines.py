"""On which line of a lesson file something stands, so that a slip is told with its line."""

from __future__ import annotations

import re

Path = tuple[str | int, ...]
"""Names of tables and keys, and places in lists, from the top of a file."""
_HEAD = re.compile(r"\s*(\[\[?)\s*([^\]]+?)\s*\]\]?\s*(?:#.*)?$")
_KEY = re.compile(r"\s*([A-Za-z0-9_.-]+|\"[^\"]+\")\s*=")
_OPTION = re.compile(r"^\s*\{")


def lines_of(text: str) -> dict[Path, int]:
    r"""Line of every table, key and entry of a list, counted from one.

    Parameters
    ----------
    text : str
        Of a TOML file.

    Returns
    -------
    dict
        Path to line. [-]

    Examples
    --------
    >>> lines_of('key = 1\n[[rule]]\nletter = "A"')
    {('key',): 1, ('rule', 0): 2, ('rule', 0, 'letter'): 3}
    """
    found: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    table: Path = ()
    listing: Path = ()
    for number, line in enumerate(text.splitlines(), 1):
        if head := _HEAD.match(line):
            table = _within(tuple(head[2].replace('"', "").split(".")), counts)
            if head[1] == "[[":
                counts[table] = counts.get(table, -1) + 1
                table = (*table, counts[table])
            found.setdefault(table, number)
        elif key := _KEY.match(line):
            listing = (*table, key[1].strip('"'))
            found.setdefault(listing, number)
            counts.pop(listing, None)
        elif _OPTION.match(line) and listing:
            counts[listing] = counts.get(listing, -1) + 1
            found.setdefault((*listing, counts[listing]), number)
    return found


def _within(names: tuple[str, ...], counts: dict[Path, int]) -> Path:
    """A table's path, with the place of the last entry of each list it lies in."""
    path: Path = ()
    for depth, name in enumerate(names):
        path = (*path, name)
        if depth < len(names) - 1 and path in counts:
            path = (*path, counts[path])
    return path


def line_of(path: Path, lines: dict[Path, int]) -> int:
    """Line of the nearest thing that has one.

    Parameters
    ----------
    path : tuple
    lines : dict
        From ``lines_of``.

    Returns
    -------
    int
        1 where nothing on the way has a line. [-]
    """
    while path and path not in lines:
        path = path[:-1]
    return lines.get(path, 1)
