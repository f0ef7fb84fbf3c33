"""How long mends take: single ones after the hand rests, two and three changes, the table of liners.

Run: ``.venv/bin/python tests/bench/mends.py``.
"""

from __future__ import annotations

import statistics
import time
from pathlib import Path

from fireplace_calc import Design, change, load
from fireplace_calc.explore import find_remedies, liner_raises, rejected_remedies
from fireplace_calc.explore.mending import remedies
from fireplace_calc.explore.together.combined import looking_for_combinations

ROOT = Path(__file__).resolve().parents[2]
KEPT = ("width", "raise", "look")


def cases() -> dict[str, Design]:
    """Invented designs that fall short of several things at once."""
    laid = load(ROOT / "data" / "designs" / "boathouse-laid.toml")
    raised = {"flue.size": "12", "flue.sections": 22, "opening.extension": "14 in"}
    return {
        "laid boathouse": laid,
        "raised 14 in on a round 12": change(laid, raised),
        "raised 12 in on a 12x12": change(
            Design(), {"opening.extension": "12 in", "flue.size": "12x12"}
        ),
        "short hearth, shallow box": change(
            Design(), {"hearth.front": "14 in", "hearth.side": "6 in", "firebox.depth": "18 in"}
        ),
    }


def took(act) -> float:
    """Processor time. [ms]"""
    start = time.process_time()
    act()
    return (time.process_time() - start) * 1000


def longest(steps) -> tuple[float, float]:
    """The whole, and the longest that nobody else is heard. [ms]"""
    each, start = [], time.process_time()
    for _ in steps:
        now = time.process_time()
        each.append((now - start) * 1000)
        start = now
    return sum(each) + (time.process_time() - start) * 1000, max(each, default=0.0)


def main() -> None:
    print("| | kept | singles [ms] | what breaks [ms] | triples [ms] | longest silence [ms] |")
    print("|---|---|---|---|---|---|")
    for name, design in cases().items():
        for kept in ((), KEPT):
            found = []
            for _ in range(3):
                remedies._screened.cache_clear()
                found.append(
                    (
                        took(lambda d=design, k=kept: find_remedies(d, locks=k)),
                        took(lambda d=design, k=kept: rejected_remedies(d, locks=k)),
                        *longest(looking_for_combinations(design, locks=kept)),
                    )
                )
            middle = " | ".join(f"{statistics.median(one):.0f}" for one in zip(*found, strict=True))
            print(f"| {name} | {' '.join(kept) or 'nothing'} | {middle} |")
    print(f"liners: {took(lambda: liner_raises(cases()['laid boathouse'])):.0f} ms")


if __name__ == "__main__":
    main()
