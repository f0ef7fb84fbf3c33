"""How long a joint plan of 40 lifts takes, and a new one once some of them stand.

Run: ``.venv/bin/python tests/bench/joints.py``.
"""

from __future__ import annotations

import random
from datetime import datetime

from speed import row, times

from fireplace_calc.base.units import INCH
from fireplace_calc.pieces.joints.joint_plan import plan_joints
from fireplace_calc.pieces.joints.plumb import PARALLEL, plumb_odds
from fireplace_calc.pieces.joints.rise import Rise
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.next_beds import replan

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
    print(row(f"`replan` of {LIFTS} lifts", times(lambda k: again(*made[k], k % 40), 300)))
    rises = [r.wanted for r in made[0][0]]
    odds = times(lambda k: plumb_odds(rises, 20 * INCH, INCH / 16, PARALLEL, seed=k), 20)
    print(row(f"`plumb_odds` of {LIFTS} lifts, 10,000 times", odds))


def again(lifts: list[Rise], levels: list[WantedLevel], standing: int) -> None:
    """So many lifts stand, each a sixteenth higher than it was wanted."""
    tops, level = [], 0.0
    for one in lifts[:standing]:
        level += one.wanted + INCH / 16
        tops.append(MeasuredTop(one.name, level, datetime(2027, 5, 3)))
    replan(lifts, levels, AsBuilt(tops=tuple(tops)))


if __name__ == "__main__":
    main()
