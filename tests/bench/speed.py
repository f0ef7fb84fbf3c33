"""How long one assessment, its draft and its odds take, and how long the package takes to import.

Run: ``.venv/bin/python tests/bench/speed.py``.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.build import plan_work
from fireplace_calc.draft import (
    draft_result,
    fire,
    roof_wind,
    smoke_odds,
    surroundings,
    trace_flow_path,
    wind_range,
)
from fireplace_calc.explore import face_curve, limit_map
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.structure import assess_structure

ROOT = Path(__file__).resolve().parents[2]
IMPORT = """
import time
start = time.perf_counter()
import fireplace_calc
print((time.perf_counter() - start) * 1000)
"""


def times(act, count: int) -> list[float]:
    """Sorted durations. [ms]"""
    found = []
    for k in range(count):
        start = time.perf_counter()
        act(k)
        found.append((time.perf_counter() - start) * 1000)
    return sorted(found)


def row(name: str, found: list[float]) -> str:
    return (
        f"| {name} | {statistics.median(found):.2f} | {found[int(0.95 * (len(found) - 1))]:.2f} |"
    )


def main() -> None:
    print("| | median [ms] | 95 % [ms] |\n|---|---|---|")
    boathouse = load(ROOT / "data" / "designs" / "boathouse-laid.toml")
    moves = [
        {"opening.width": f"{30 + k / 8:g} in", "flue.sections": 14 + k % 20} for k in range(200)
    ]
    designs = [change(boathouse, move) for move in moves]
    for pack in PACKS:
        print(
            row(
                f"`assess`, 200 designs, {pack}",
                times(lambda k, pack=pack: assess(designs[k], pack=pack), 200),
            )
        )
    print(row("`change` of two inputs", times(lambda k: change(boathouse, moves[k]), 200)))
    made = [build_geometry(design) for design in designs]
    print(
        row(
            "`draft_result`: four evenings, sizing, lighting",
            times(lambda k: draft_result(made[k]), 200),
        )
    )
    mild = boathouse.site.mild
    print(
        row(
            "`smoke_odds` of 10,000 evenings",
            times(
                lambda k: smoke_odds(
                    trace_flow_path(made[k]),
                    fire(designs[k]),
                    surroundings(designs[k]),
                    mild,
                    wind_range(roof_wind(made[k])),
                ),
                20,
            ),
        )
    )
    inlet = [change(design, {"house.air_inlet": "40 in2"}) for design in designs[:20]]
    print(
        row(
            "the same with an air inlet",
            times(
                lambda k: smoke_odds(
                    trace_flow_path(made[k]),
                    fire(inlet[k]),
                    surroundings(inlet[k]),
                    mild,
                    wind_range(roof_wind(made[k])),
                ),
                20,
            ),
        )
    )
    print(
        row(
            "`face_curve` against 37 counts of sections",
            times(lambda k: face_curve(designs[k], "flue.sections", range(4, 41)), 10),
        )
    )
    print(row("`limit_map` of 481 designs", times(lambda k: limit_map(designs[k]), 10)))
    print(row("`assess_structure`", times(lambda k: assess_structure(made[k]), 200)))
    print(row("`plan_work`", times(lambda k: plan_work(made[k]), 200)))
    run = [sys.executable, "-c", IMPORT]
    imports = sorted(float(subprocess.check_output(run)) for _ in range(9))
    print(row("`import fireplace_calc`, 9 new interpreters", imports))


if __name__ == "__main__":
    main()
