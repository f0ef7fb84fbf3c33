"""``fireplace-workbook survey``: the sheets to take along to a fireplace that stands."""

from __future__ import annotations

import argparse
from pathlib import Path

from fireplace_calc.base.units import FEET_INCHES, SYSTEMS

DONE = 0
PAPERS = ("letter", "a4")


def add_survey(jobs: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Declare the command and its options."""
    job = jobs.add_parser(
        "survey",
        help="sheets to measure a fireplace that stands: where to hold the tape, lines to write on",
    )
    job.set_defaults(do=print_sheets)
    job.add_argument("out", metavar="OUT.pdf", help="an earlier file is replaced")
    job.add_argument("--paper", choices=PAPERS, default=PAPERS[0], help="letter if left out")
    job.add_argument(
        "--units", choices=SYSTEMS, default=FEET_INCHES, help="what the lines are to be filled in"
    )
    job.add_argument(
        "--told",
        metavar="SURVEY.toml",
        help="a survey that was kept: what was entered is written on the lines",
    )


def print_sheets(asked: argparse.Namespace) -> int:
    """Write the sheets.

    Parameters
    ----------
    asked : namespace
        Of the command line.

    Returns
    -------
    int
        Exit status: 0 done. [-]

    Raises
    ------
    InputError
        When the survey cannot be read, or the file cannot be written.
    """
    from fireplace_calc.drawing.survey.to_take_along import print_survey
    from fireplace_calc.editing.file_reading import file_text
    from fireplace_calc.survey.kept import read_survey

    told = read_survey(file_text(Path(asked.told))) if asked.told else None
    pages = print_survey(asked.out, asked.paper, asked.units, told)
    print(f"Written: {asked.out} ({pages} pages).")
    return DONE
