"""Ten thousand changes through the live panel, every fold opened once: what the process holds
afterwards over what it held before, and how many widgets there are.

Run: ``.venv/bin/python tests/bench/memory.py [changes]``. The panel is the one of the notebooks,
moved as the page moves it; only the wire to a browser is missing.
"""

from __future__ import annotations

import ctypes
import gc
import itertools
import sys
from pathlib import Path

from ipywidgets.widgets.widget import _instances as live_widgets

from fireplace_calc import load
from fireplace_calc.panels import panel

ROOT = Path(__file__).resolve().parents[2]
MOVES = {"opening.width": (36, 60), "opening.extension": (0, 18), "flue.sections": (14, 30)}
"""Whole steps of each slider, to and fro."""


def resident() -> float:
    """What the process holds now, after what is free went back. [MB]"""
    gc.collect()
    ctypes.CDLL(None).malloc_trim(0)
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * 4096 / 1e6


def redraw(live, times: int) -> None:
    """Move the three sliders in turn, up and down their range; from time to time another fold."""
    ways = {
        key: itertools.cycle([*range(low, high), *range(high, low, -1)])
        for key, (low, high) in MOVES.items()
    }
    for k, key in enumerate(itertools.islice(itertools.cycle(ways), times)):
        live.on_slider(key, next(ways[key]))
        if k % 50 == 49:
            live.open(live.named[(k // 50) % len(live.named)])


def main() -> None:
    changes = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    live = panel(load(ROOT / "data" / "designs" / "boathouse-laid.toml"))
    live.session.put_aside()
    for name in live.named:
        live.open(name)
    redraw(live, 1_000)
    before = resident()
    print("| changes | resident [MB] | growth [MB] | widgets |\n|---|---|---|---|")
    print(f"| 1,000, warm | {before:.1f} | | {len(live_widgets)} |")
    for part in range(1, 6):
        redraw(live, changes // 5)
        done, now = part * changes // 5, resident()
        print(f"| {done:,} more | {now:.1f} | {now - before:+.1f} | {len(live_widgets)} |")


if __name__ == "__main__":
    main()
