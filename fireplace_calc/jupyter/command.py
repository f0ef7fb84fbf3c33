"""``fireplace-workbook``: the supplied notebooks in a folder of your own, a notebook as a page
without code, a laid design cut into pieces to cast, the sheets to measure what
stands, and what a lesson file still lacks.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from fireplace_calc.base.resources import CARRIED, DESIGNS, NOTEBOOKS, SETS, made_by
from fireplace_calc.base.units import InputError
from fireplace_calc.jupyter.cast_command import add_cast
from fireplace_calc.jupyter.copies import copy_out
from fireplace_calc.jupyter.lesson_command import add_lesson
from fireplace_calc.jupyter.survey_command import add_survey

DONE, LEFT_ALONE, INPUT_ERROR = 0, 1, 2
HERE = "127.0.0.1"
PORT = 8866


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="fireplace-workbook", description=__doc__, allow_abbrev=False
    )
    parser.add_argument("--version", action="version", version=made_by())
    jobs = parser.add_subparsers(dest="job", required=True, metavar="COMMAND")
    copies = jobs.add_parser(
        "notebooks", help="copy the notebooks and the example designs into a folder"
    )
    copies.set_defaults(do=_copy)
    copies.add_argument(
        "folder", metavar="DIR", help="made when not there; files that differ are left alone"
    )
    add_cast(jobs)
    add_survey(jobs)
    add_lesson(jobs)
    page = jobs.add_parser(
        "page", help="one notebook as a page without code, for this machine alone"
    )
    tablet = jobs.add_parser(
        "tablet", help="the same for a client's tablet: each visitor keeps a folder of his own"
    )
    tablet.add_argument(
        "--address",
        required=True,
        help="address of this machine as the tablet reaches it, such as 192.0.2.10",
    )
    for job in (page, tablet):
        job.set_defaults(do=_serve)
        job.add_argument(
            "notebook",
            metavar="NOTEBOOK",
            help="a file, or the name of one that was supplied, such as with-a-client",
        )
        job.add_argument(
            "--port", type=int, default=PORT, help=f"first port to try; {PORT} when left out"
        )
        job.add_argument(
            "--kept",
            metavar="DIR",
            help="folder for what is kept; beside the notebook when left out",
        )
    page.add_argument("--no-browser", action="store_true", help="do not open a browser")
    return parser


def _notebook(asked: str) -> Path:
    """The file, or the supplied notebook of this name."""
    if Path(asked).is_file():
        return Path(asked)
    path = NOTEBOOKS / f"{asked}.ipynb"
    if not path.is_file():
        names = ", ".join(sorted(p.stem for p in NOTEBOOKS.glob("*.ipynb")))
        raise InputError(
            f"No notebook {asked}: neither a file here nor one of {names}.",
            "NOTEBOOK",
            names,
            asked,
        )
    return path


def _copy(asked: argparse.Namespace) -> int:
    written, alone = copy_out(
        {
            ".": NOTEBOOKS.glob("*.ipynb"),
            "designs": DESIGNS.glob("*.toml"),
            "sets": SETS.glob("*.toml"),
        },
        Path(asked.folder),
    )
    print(f"Written to {asked.folder}: {len(written)}.")
    for path in alone:
        print(f"Left alone, because it differs from the one supplied: {path}", file=sys.stderr)
    return LEFT_ALONE if alone else DONE


def _serve(asked: argparse.Namespace) -> int:
    from fireplace_calc.jupyter.page import serve

    notebook, tablet = _notebook(asked.notebook), asked.job == "tablet"
    beside = Path.cwd() if CARRIED in notebook.parents else notebook.parent
    kept = Path(asked.kept) if asked.kept else beside / "visitors" if tablet else beside
    address, opens = (asked.address, False) if tablet else (HERE, not asked.no_browser)
    serve(notebook, address, asked.port, kept, visitors=tablet, opens=opens)
    return DONE


def main(arguments: Sequence[str] | None = None) -> int:
    """Do what the command line asks.

    Parameters
    ----------
    arguments : sequence of str or None
        As on the command line, without the program's name.

    Returns
    -------
    int
        Exit status: 0 done, 1 files left alone or something is missing, 2 input error. [-]
    """
    asked = _parser().parse_args(arguments)
    try:
        done: int = asked.do(asked)
        return done
    except InputError as wrong:
        print(wrong, file=sys.stderr)
    except OSError as trouble:
        print(f"{trouble.filename} cannot be written: {trouble.strerror}.", file=sys.stderr)
    return INPUT_ERROR


if __name__ == "__main__":
    sys.exit(main())
