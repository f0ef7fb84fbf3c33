"""``fireplace-workbook lesson``: what lesson files still lack."""

from __future__ import annotations

import argparse
from pathlib import Path

DONE, MISSING = 0, 1


def add_lesson(jobs: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Declare the command and its options."""
    job = jobs.add_parser("lesson", help="what a lesson file still lacks, line by line")
    job.set_defaults(do=check_lessons)
    job.add_argument("files", metavar="LESSON.toml", nargs="+", help="one file or several")


def check_lessons(asked: argparse.Namespace) -> int:
    """Say what is missing in each file.

    Parameters
    ----------
    asked : namespace
        Of the command line.

    Returns
    -------
    int
        Exit status: 0 nothing is missing, 1 something is. [-]

    Raises
    ------
    InputError
        When a file cannot be read.
    """
    from fireplace_calc.editing.file_reading import file_text
    from fireplace_calc.lessons.course.checker import missing

    status = DONE
    for name in asked.files:
        slips = missing(file_text(Path(name)))
        for slip in slips:
            print(f"{name}, {slip}")
        if not slips:
            print(f"{name}: nothing is missing.")
        status = MISSING if slips else status
    return status
