"""What is reckoned of a design in two figures each: draft, first hour, odds, structure, order and the days of work, of invented
designs drawn from a seed.

Whoever changes a formula on purpose holds it against its source (``test_draft_examples``, ``test_structure_examples``,
``test_handbook_examples``, ...) and writes the figures anew: ``.venv/bin/python tests/as_reckoned.py``; the change stands in
``tests/pins/as_reckoned.csv`` then, a row for each design and what of it.
"""

import sys
from functools import cache

import numpy as np
from as_built import _numbers
from as_judged import drawn
from held_figures import held, hold

from fireplace_calc import assess

FIGURES = ("count", "sum", "weighed")
DESIGNS = 18
FINE = 1e3
"""A number far under one part of this counts as it is, a larger one by its size. [-]"""
OF = {
    "draft": lambda made: (made.draft, made.judgement),
    "odds": lambda made: made.odds,
    "first hour": lambda made: made.first_hour,
    "structure": lambda made: made.structure,
    "order": lambda made: made.takeoff,
    "work": lambda made: made.work,
}
"""What of a design."""
CASES = tuple(f"{what} of design {n}" for n in range(DESIGNS) for what in OF)


@cache
def assessed(seed):
    return assess(drawn(seed))


def figures_of(case):
    """How many numbers, and their sums: each counts by its size, so that a large one hides no small one."""
    what, _, seed = case.partition(" of design ")
    found = np.arcsinh(FINE * np.fromiter(_numbers(OF[what](assessed(int(seed)))), float))
    weights = 1.0 + (np.arange(1, len(found) + 1) * 0.6180339887498949) % 1.0
    return np.array([len(found), found.sum(), (weights * found).sum()])


def kept():
    """By case, the figures of the file."""
    return held("as_reckoned", 1)


def main():
    hold("as_reckoned", ("case", *FIGURES), (((case,), figures_of(case)) for case in CASES))


if __name__ == "__main__":
    sys.exit(main())
