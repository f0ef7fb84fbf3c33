"""Which notebooks may run when they are opened: those that came with the package, byte for byte in
their code.

``shipped.json`` holds a digest of every supplied notebook's code cells, in their order. It is
written by a contributor (``python -m fireplace_calc.jupyter.shipped``) and never worked
out from a folder on a reader's disk, since a stranger's notebook may lie there under one of our
names.

Jupyter's own trust does not count. It is about outputs: a server signs every notebook without rich
outputs when it is saved, whoever wrote it, and the second opening would then run it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from importlib.machinery import all_suffixes
from pathlib import Path

from fireplace_calc.base.resources import NOTEBOOKS

LIST = Path(__file__).with_name("shipped.json")
"""The digests, by name of the notebook."""


def digest(cells: Sequence[str]) -> str:
    """What a notebook's code comes to: another cell, another order or another letter give another
    digest.

    Parameters
    ----------
    cells : sequence of str
        Source of every code cell, in their order.

    Returns
    -------
    str
        SHA-256 in hexadecimal.
    """
    return hashlib.sha256(json.dumps(list(cells)).encode()).hexdigest()


def code_cells(notebook: str) -> list[str]:
    """Source of every code cell.

    Parameters
    ----------
    notebook : str
        A notebook of format 4, as text.

    Returns
    -------
    list of str
        In their order.
    """
    return [
        "".join(cell["source"])
        for cell in json.loads(notebook)["cells"]
        if cell["cell_type"] == "code"
    ]


def supplied() -> dict[str, str]:
    """Digest of every supplied notebook, worked out from its file: for whoever writes the list,
    and for its test.
    """
    return {
        path.name: digest(code_cells(path.read_text(encoding="utf-8")))
        for path in sorted(NOTEBOOKS.glob("*.ipynb"))
    }


def is_shipped(cells: Sequence[str]) -> bool:
    """Whether this code came with the package as it stands."""
    return digest(cells) in json.loads(LIST.read_text(encoding="utf-8")).values()


def loadable(folder: Path) -> list[str]:
    """What lies in a folder that a kernel started there could import in place of a library: Python
    files and packages.

    Parameters
    ----------
    folder : path
        Where the kernel starts.

    Returns
    -------
    list of str
        Their names.
    """
    endings = tuple(all_suffixes())
    return sorted(
        entry.name
        for entry in folder.iterdir()
        if entry.name.endswith(endings)
        or any((entry / f"__init__{ending}").exists() for ending in endings)
    )


if __name__ == "__main__":
    LIST.write_text(json.dumps(supplied(), indent=2) + "\n", encoding="utf-8")
