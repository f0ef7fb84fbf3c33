"""How long one assessment takes, and how long the package takes to import.

Run: ``.venv/bin/python tests/bench/speed.py``.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

from fireplace_calc import PACKS, assess, change, load

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
    return f"| {name} | {statistics.median(found):.2f} | {found[int(0.95 * (len(found) - 1))]:.2f} |"


def main() -> None:
    print("| | median [ms] | 95 % [ms] |\n|---|---|---|")
    boathouse = load(ROOT / "data" / "designs" / "boathouse.toml")
    moves = [{"opening.width": f"{30 + k / 8:g} in", "flue.sections": 14 + k % 20} for k in range(200)]
    designs = [change(boathouse, move) for move in moves]
    for pack in PACKS:
        print(row(f"`assess`, 200 designs, {pack}", times(lambda k, pack=pack: assess(designs[k], pack=pack), 200)))
    print(row("`change` of two inputs", times(lambda k: change(boathouse, moves[k]), 200)))
    run = [sys.executable, "-c", IMPORT]
    imports = sorted(float(subprocess.check_output(run)) for _ in range(9))
    print(row("`import fireplace_calc`, 9 new interpreters", imports))


if __name__ == "__main__":
    main()
