"""Figures that a file under ``pins`` holds, by what they are of: read, and written anew."""

import csv
from functools import cache
from pathlib import Path

import numpy as np

PINS = Path(__file__).with_name("pins")


@cache
def held(name, keys=2):
    """Figures of every row of a file, by its first columns; by the first alone where one is asked for."""
    with (PINS / f"{name}.csv").open(newline="") as file:
        _, *rows = csv.reader(file)
    return {tuple(row[:keys]) if keys > 1 else row[0]: np.array(row[keys:], float) for row in rows}


def hold(name, heading, rows, form=".12g"):
    """Write a file anew: of each row what it is of, and its figures."""
    with (PINS / f"{name}.csv").open("w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(heading)
        out.writerows((*of, *(format(value, form) for value in figures)) for of, figures in rows)


def otherwise(found, was, names, allowed):
    """Of the figures found by what they are of, those that are no longer what they were, and by how much. ``allowed`` of a row
    that was says how much one machine may find otherwise than another.
    """
    return {
        what: dict(zip(names, row - was[what], strict=True))
        for what, row in found.items()
        if np.abs(row - was[what]).max() > allowed(was[what])
    }
