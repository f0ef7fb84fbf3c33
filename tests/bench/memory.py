"""A thousand redraws of the live panel: what the process holds afterwards, over what it held
before.

Run: ``.venv/bin/python tests/bench/memory.py``. The panel is the one of the notebooks, moved
through its own controls; only the wire to a browser is missing.
"""

from __future__ import annotations

import gc
import itertools
from pathlib import Path

from fireplace_calc import load
from fireplace_calc.panels import panel

ROOT = Path(__file__).resolve().parents[2]
MOVES = {"opening.width": (36, 60), "opening.extension": (0, 18), "flue.sections": (14, 30)}
"""Whole steps of each slider, to and fro."""


def resident() -> float:
    """What the process holds now. [MB]"""
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * 4096 / 1e6


def redraw(live, times: int) -> None:
    """Move the three sliders in turn, up and down their range."""
    ways = {
        key: itertools.cycle([*range(low, high), *range(high, low, -1)])
        for key, (low, high) in MOVES.items()
    }
    for key in itertools.islice(itertools.cycle(ways), times):
        live.leads[key].slider.value = next(ways[key])


def main() -> None:
    live = panel(load(ROOT / "data" / "designs" / "boathouse.toml"))
    redraw(live, 200)
    before = resident()
    print("| redraws | resident [MB] | growth [MB] |\n|---|---|---|")
    print(f"| 200, warm | {before:.1f} | |")
    for done in (500, 1000, 2000):
        redraw(live, done - (0 if done == 500 else done // 2))
        print(f"| {done} more | {resident():.1f} | {resident() - before:+.1f} |")


if __name__ == "__main__":
    main()
