"""How long a joint plan of 40 lifts takes.

Run: ``.venv/bin/python tests/bench/joints.py``.
"""

from __future__ import annotations

import random

from speed import row, times

from fireplace_calc.base.units import INCH
from fireplace_calc.pieces.joints.joint_plan import plan_joints
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel

LIFTS, LEVELS = 40, 6


def chain(seed: int) -> tuple[list[Rise], list[WantedLevel]]:
    """Forty lifts in sixteenths and six levels, half of which need joints far from the wanted."""
    draw = random.Random(seed)
    made, top, levels = [], 0.0, []
    for n in range(LIFTS):
        least = draw.randint(64, 200) / 16 * INCH
        made.append(Rise(f"{n}", least, least + INCH / 16, least + INCH / 8, draw.randint(1, 4)))
        top += least + draw.choice([0.0, 1 / 16, 1 / 8]) * INCH
        if n % (LIFTS // LEVELS) == 5:
            levels.append(WantedLevel(f"{n}", top, INCH / 16, draw.randint(1, 3)))
    return made, levels


def main() -> None:
    print("| | median [ms] | 95 % [ms] |\n|---|---|---|")
    made = [chain(seed) for seed in range(300)]
    print(row(f"`plan_joints` of {LIFTS} lifts", times(lambda k: plan_joints(*made[k]), 300)))


if __name__ == "__main__":
    main()
