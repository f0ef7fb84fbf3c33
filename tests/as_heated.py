"""What the heat of a fire comes to, of invented designs that are drawn from a seed: wood behind, beside and below, what is
worth how much, what grows, what is told of it.

Whoever changes the heat on purpose holds it against its cases (``test_heat_cases``, ``test_heat_properties``,
``test_heat_designs``) and writes the figures anew: ``.venv/bin/python tests/as_heated.py``; the change stands in
``tests/pins/as_heated.csv`` then, a row for each design and what of it.
"""

import sys
from functools import cache

from as_built import FIGURES, drawn, figures, with_a_set
from held_figures import held, hold

from fireplace_calc import change
from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.answer import fires_behind, heat_answer
from fireplace_calc.heat.conduction.grading import COARSE
from fireplace_calc.heat.conduction.mesh import NotWorked
from fireplace_calc.heat.cuts.behind import three_fires
from fireplace_calc.heat.cuts.section_run import burn_section
from fireplace_calc.heat.findings import judgement

LAID, OF_A_SET = 12, 4
"""Designs."""
SHORT = 2.5
"""A fire of a few hours. [h]"""
AROUND = (
    {"clearance.back": "1 in", "clearance.side": "3 in", "house.indoor": "64 F"},
    {"clearance.back": "2 in", "clearance.side": "0 in", "clearance.chimney": "1/2 in"},
    {"chimney.location": "exterior", "site.winter": "-20 degC"},
)
"""What stands round them, in turns."""


def _design(case):
    kind, _, seed = case.rpartition(" ")
    made = drawn(int(seed)) if kind == "laid" else with_a_set(int(seed))
    return change(made, AROUND[int(seed) % len(AROUND)])


@cache
def geometry(case):
    return build_geometry(_design(case))


def _warming(run):
    """A run in scalars first: its many points are summed."""
    yield run.at_fire_out, run.highest, run.safe_highest, run.hours_after, run.out
    yield len(run.times), float(run.times[-1]), run.times, run.wood, run.low


def _behind(run):
    yield from _warming(run)
    yield run.fire.key, run.burns, run.framed, run.passed
    yield run.mesh.x, run.mesh.y, run.points, run.at(run.out / 3.0)


def _section(made):
    for fire in list(wall_fires().values())[::2]:
        run = burn_section(made, fire, SHORT, SHORT + 2.0, days=1, cells=COARSE)
        yield run.mesh.x, run.mesh.y, run.times, run.points, run.at(SHORT / 2.0)


def _runs(runs, read=_warming):
    return [list(read(run)) for run in runs or ()]


def figures_of(case):
    """By what of the heat."""
    made = geometry(case)
    answer = heat_answer(made)
    told = {
        "evening": _runs(answer.evening, _behind),
        "day": _runs(answer.day, _behind),
        "worth": answer.worth,
        "flue": _runs(answer.flue),
        "flue too": [(one.fire.key, one.liner, one.middle) for one in answer.flue or ()],
        "hearth": _runs(answer.hearth),
        "trim": (answer.trim, answer.keep_off),
        "grows": (answer.grows, answer.pull),
        "why not": answer.why_not,
    }
    for units in (FEET_INCHES, MILLIMETRES):
        told[f"judged in {units}"] = judgement(answer, units)
    for name, work in (
        ("short", lambda: _runs((made.once(one) for one in fires_behind(SHORT)), _behind)),
        ("coarse", lambda: _runs(three_fires(made, SHORT, COARSE), _behind)),
        ("section", lambda: list(_section(made))),
    ):
        try:
            told[name] = work()
        except NotWorked as why:
            told[name] = str(why)
    return {what: figures(thing) for what, thing in told.items()}


CASES = (*(f"laid {n}" for n in range(LAID)), *(f"of a set {n}" for n in range(OF_A_SET)))


def kept():
    """By case and what of it, the figures of the file."""
    return held("as_heated")


def main():
    rows = (((case, what), row) for case in CASES for what, row in figures_of(case).items())
    hold("as_heated", ("case", "of", *FIGURES), rows)


if __name__ == "__main__":
    sys.exit(main())
