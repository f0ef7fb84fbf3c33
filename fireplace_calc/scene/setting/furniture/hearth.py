"""What stands by a hearth: fire irons, and wood in a cradle. [m]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.scene.setting.forms import block, joined, rod, turned
from fireplace_calc.scene.setting.stood import Furniture, gathered, made
from fireplace_calc.scene.setting.wood import Log, bark_of, ends_of


@lru_cache(maxsize=1)
def fire_irons() -> Furniture:
    """A stand with poker, shovel and brush."""
    high = 0.68
    stand = turned([(0, 0), (0.1, 0), (0.102, 0.012), (0.03, 0.022), (0.009, 0.035),
                    (0.009, high), (0, high)], 12)  # fmt: skip
    knob = turned([(0, high), (0.012, high), (0.026, high + 0.02), (0.02, high + 0.045),
                   (0, high + 0.055)], 12)  # fmt: skip
    hook = joined(
        [
            block((-0.085, 0.085), (-0.006, 0.006), (0.6, 0.612)),
            block((-0.006, 0.006), (-0.085, 0.0), (0.6, 0.612)),
        ]
    )
    tools, handles = [], []
    for x, y in ((-0.075, 0.0), (0.075, 0.0), (0.0, -0.075)):
        tools.append(rod([(x, y, 0.1), (x, y, 0.595)], 0.005, 4))
        handles.append(
            turned([(0, 0.614), (0.008, 0.614), (0.011, 0.66), (0.008, 0.7), (0, 0.706)], 8)
            .translate((x, y, 0))
        )  # fmt: skip
    shovel = block((0.045, 0.105), (-0.004, 0.004), (0.04, 0.16), 0.003)
    brush = turned([(0, 0.035), (0.02, 0.035), (0.022, 0.1), (0.01, 0.13), (0, 0.13)], 10)
    point = rod([(-0.075, 0, 0.12), (-0.075, -0.03, 0.09)], 0.005, 4)
    return gathered(
        made("fire irons", "fire irons", "iron", joined([stand, hook, *tools, shovel, point])),
        made("handles", "handles of the fire irons", "brass", [knob, *handles], smooth=True),
        made("brush", "brush", "bark", brush.translate((0, -0.075, 0)) - tools[2], smooth=True),
    )


@lru_cache(maxsize=1)
def wood_cradle() -> Furniture:
    """Firewood in a cradle of iron, its sawn ends to the front."""
    wide, deep, high, bar = 0.52, 0.34, 0.42, 0.011
    half = wide / 2
    hoops = []
    for y in (-deep / 2 + 0.05, deep / 2 - 0.05):
        line = [(-half, y, high), (-half, y, 0.08), (half, y, 0.08), (half, y, high)]
        hoops.append(rod(line, bar, 6))
        hoops += [
            block((x - bar, x + bar), (y - bar, y + bar), (0.0, 0.08))
            for x in (-half + 0.04, half - 0.04)
        ]
    rails = [
        rod([(x, -deep / 2 + 0.05, 0.08), (x, deep / 2 - 0.05, 0.08)], bar, 6)
        for x in (-half + 0.04, half - 0.04)
    ]
    logs: list[Log] = []
    radius, row, level = 0.059, 4, 0.08 + bar + 0.062
    for k in range(3):
        many = row - k % 2
        for m in range(many):
            x = (m - (many - 1) / 2) * 0.1215
            r = radius - 0.007 * ((0.618 * (5 * k + 3 * m)) % 1)
            long = deep - 0.03 * ((0.618 * (7 * k + 2 * m)) % 1)
            logs.append(Log((x, 0.0, level), r, long, 90.0))
        level += 0.106
    return gathered(
        made("wood cradle", "wood cradle", "iron", joined([*hoops, *rails])),
        made("firewood", "firewood", "bark", [bark_of(x, 8, 1) for x in logs], smooth=True),
        made(
            "firewood ends",
            "firewood",
            "log end",
            [e for x in logs for e in ends_of(x, 7, False)],
        ),
    )
