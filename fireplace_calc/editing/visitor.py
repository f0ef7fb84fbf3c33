"""Whose folder this is: on a client's tablet every visitor has one of his own."""

from __future__ import annotations

import os
from pathlib import Path

FOLDER = "FIREPLACE_KEPT"
"""Environment variable: the folder under which everything is kept that a notebook asks to keep."""
VISITOR = "HTTP_X_FIREPLACE_VISITOR"
"""Environment variable: name of the visitor whose kernel this is. Set by our own page server for
every kernel.
"""


def own_folder(keep: str | os.PathLike[str]) -> Path:
    """The folder to keep a panel in, for the one who looks at it.

    In a notebook this is the folder that was asked for. Served by ``fireplace-workbook`` it stands
    under the folder that the command names, and on a tablet under the visitor's own.

    Parameters
    ----------
    keep : path
        Folder as the notebook names it.

    Returns
    -------
    path
        Where to keep.
    """
    wanted, visitor = Path(keep), os.environ.get(VISITOR, "")
    if visitor:  # no way up and out to the others
        wanted = Path(*(part for part in wanted.parts if part not in (wanted.anchor, "..")))
    return Path(os.environ.get(FOLDER, ""), visitor, wanted)


def common_folders(keep: str | os.PathLike[str]) -> tuple[Path, ...]:
    """Where all visitors may read what somebody has laid out for them, the likeliest first.

    Parameters
    ----------
    keep : path
        Folder as the notebook names it.

    Returns
    -------
    tuple of path
        Under the folder that the command names, beside that one, and beside the notebook.
    """
    wanted = Path(keep)
    if FOLDER not in os.environ:
        return (wanted,)
    served = Path(os.environ[FOLDER])
    return (served / wanted, served.parent / wanted, wanted)


def served_to_visitors() -> bool:
    """Whether this is the page of one of several visitors, who all have folders of their own."""
    return bool(os.environ.get(VISITOR))
