"""Heat through the plan of a fireplace: processor time of the runs that the page asks for.

.venv/bin/python tests/bench/heat.py
"""

import sys
from itertools import count
from pathlib import Path
from statistics import median
from time import process_time

sys.path.insert(0, str(Path(__file__).parent.parent))

from test_heat_cases import PLAN

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.heat import flue_fires, wall_fires
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.answer import evening_alone, heat_answer
from fireplace_calc.heat.conduction.driving import always
from fireplace_calc.heat.conduction.grading import COARSE, Cells
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.cuts.behind import burn, three_fires
from fireplace_calc.heat.cuts.round_flue import beside_flue, flue_layers, girth_radius
from fireplace_calc.heat.cuts.wall_plan import plan_mesh

HOT = {"fire": 400.0, "room": 21.0}


def timed(work, rounds=9):
    """Middle processor time of a few rounds. [ms]"""
    took = []
    for _ in range(rounds):
        start = process_time()
        work()
        took.append(1000 * (process_time() - start))
    return median(took)


def main():
    many = Cells(0.009, 1.4, 0.06)
    mesh = plan_mesh(PLAN, many)
    fire = wall_fires()["middle"]
    design = load(DESIGNS / "boathouse.toml")
    geometry = assess(design).geometry
    walls = ({"chimney.wall": f"{8 + n / 16} in"} for n in count())  # nothing is kept of these
    anew = (build_geometry(change(design, wall)) for wall in walls)
    layers, radius = flue_layers(geometry), girth_radius(geometry)
    rows = [
        ("12 h in 20 min steps", 100, lambda: Conduction(mesh).run(always(HOT), 43200.0, 1200.0)),
        ("12 h in 10 min steps", "", lambda: Conduction(mesh).run(always(HOT), 43200.0, 600.0)),
        ("steady", 30, lambda: Conduction(mesh).steady(HOT)),
        (
            "8 h and until the wood is past its hottest",
            "",
            lambda: burn(PLAN, fire, 8.0, cells=many),
        ),
        ("24 h and until then", 120, lambda: burn(PLAN, fire, 24.0, cells=many)),
        (
            "one line through the flue, 8 h and 12 more",
            20,
            lambda: beside_flue(layers, radius, flue_fires()["usual"]),
        ),
        ("three fires, coarse, boathouse", "", lambda: [*three_fires(geometry, 8.0, COARSE)]),
        ("an evening, geometry and all, boathouse", "", lambda: evening_alone(next(anew))),
        ("all of it, geometry and all, boathouse", "", lambda: heat_answer(next(anew))),
    ]
    print(f"{mesh.cells} cells, {mesh.points} points")
    for name, target, work in rows:
        print(f"{name:45} {timed(work):7.0f} ms   {target}")


if __name__ == "__main__":
    main()
