"""The job that is open, for the page that sets its pieces."""

from __future__ import annotations

import os
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.jobs.jobs_folder import JobsFolder
from fireplace_calc.editing.visitor import own_folder

APART = "pieces"
"""Folder that keeps what is measured of the example."""


def open_set(jobs: str | os.PathLike[str], example: Design) -> tuple[Design, Path, str]:
    """The open job where it has a set, or the example.

    Parameters
    ----------
    jobs : path
        Folder of all jobs, as the notebook names it.
    example : Design
        With a set.

    Returns
    -------
    tuple
        The design, the folder that keeps what is measured, and what there is to say.
    """
    folder = JobsFolder(own_folder(jobs))
    key = folder.open_key()
    if not key:
        return example, Path(jobs) / APART, ""
    name = folder.named(key)
    try:
        design = folder.design(key)
    except InputError as trouble:
        return example, Path(jobs) / APART, f"{trouble} The example is shown."
    if design.piece_set is None:
        return (
            example,
            Path(jobs) / APART,
            f"{name} is built without a set of pieces, so the example is shown.",
        )
    return design, Path(jobs) / key, f"This is {name}, the job that is open."
