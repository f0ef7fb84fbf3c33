"""What one step of each slider costs: making the sheets, painting them as dots, packing them
as lines for a page; and a
thousand such steps.

Run: ``.venv/bin/python tests/bench/draw.py``. No browser and no panel: only what is under
``drawing/``.
"""

from __future__ import annotations

import gc
import itertools
import statistics
import time
from pathlib import Path

from fireplace_calc import assess, change, load
from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.live import live_views
from fireplace_calc.drawing.page.message import page_message

ROOT = Path(__file__).resolve().parents[2]
DOTS = 4.0
"""1200 x 744 dots. [1/mm]"""
STEPS = {
    "Opening width": [{"opening.width": f"{36 + k / 4:g} in"} for k in range(100)],
    "Firebox extension": [{"opening.extension": f"{k / 8:g} in"} for k in range(100)],
    "Flue sections": [{"flue.sections": 8 + k % 30} for k in range(100)],
}


def resident() -> float:
    """What the process holds now. [MB]"""
    gc.collect()
    return int(Path("/proc/self/statm").read_text().split()[1]) * 4096 / 1e6


def main() -> None:
    boathouse = load(ROOT / "data" / "designs" / "boathouse-laid.toml")
    picture = Picture(WIDTH, HEIGHT, DOTS)
    results = {
        name: [assess(change(boathouse, step)) for step in steps] for name, steps in STEPS.items()
    }
    print(
        "| median of 100 steps | sheets [ms] | paint [ms] | pack [ms] | all [ms] | kilobytes"
        " |\n|---|---|---|---|---|---|"
    )
    for name, found in results.items():
        rows = []
        for result in found:
            begin = time.perf_counter()
            shown = list(live_views("all", result.geometry, "feet-inches", result.findings))
            made = time.perf_counter()
            picture.draw(shown)
            painted = time.perf_counter()
            size = sum(len(page_message(sheet, "light", cell)[1]) for cell, sheet in shown)
            end = time.perf_counter()
            rows.append((made - begin, painted - made, end - painted, end - begin, size / 1e6))
        print(
            f"| {name} |",
            " | ".join(
                f"{statistics.median(column) * 1000:.1f}" for column in zip(*rows, strict=True)
            ),
            "|",
        )
    every = [result for found in results.values() for result in found]
    redraw(picture, every, 300)
    before = resident()
    redraw(picture, every, 1000)
    print(f"\n1,000 redraws: {resident() - before:+.1f} MB on {before:.0f} MB")


def redraw(picture: Picture, results: list, times: int) -> None:
    for result in itertools.islice(itertools.cycle(results), times):
        picture.encode(live_views("all", result.geometry, "feet-inches", result.findings))


if __name__ == "__main__":
    main()
