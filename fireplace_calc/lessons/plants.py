"""Ways to plant a fault: one input moved until a rule gives way."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from random import Random
from typing import Any

from fireplace_calc.base.units import INCH, SQIN
from fireplace_calc.design.records import Design
from fireplace_calc.explore import sketch, try_change
from fireplace_calc.lessons.fault_records import Fault, Plant
from fireplace_calc.lessons.valid_designs import nudged
from fireplace_calc.rules import Pack
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.rules.gathering import gather_facts

STEPS = 48
"""Most moves of one input before a fault is given up. [-]"""


def _bad(design: Design, pack: Pack, keys: tuple[str, ...]) -> bool:
    return FALLS_SHORT in pack.verdicts(gather_facts(sketch(design)), keys).values()


def by_steps(key: str, *steps: float) -> Plant:
    """Move one length [in], or one count, by a step drawn from some until a rule of the fault gives
    way.
    """

    def plant(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
        by = rng.choice(steps)
        length = not isinstance(
            getattr(getattr(design, key.split(".", maxsplit=1)[0]), key.split(".")[1]), int
        )
        moved_on = design
        for _ in range(STEPS):
            tried = nudged(moved_on, key, by * INCH if length else by)
            if tried is None or _bad(tried, pack, fault.rules):
                return tried
            moved_on = tried
        return None

    return plant


def set_to(**words: str) -> Plant:
    """Put something else; names have two underscores for the dot."""

    def plant(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
        return try_change(design, {key.replace("__", "."): value for key, value in words.items()})

    return plant


def _smaller_flue(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
    """The same chimney round a wider opening: as is done when somebody wants to see more of the
    fire.
    """
    key = rng.choice(("opening.width", "opening.extension"))
    return by_steps(key, 1, 2)(design, pack, fault, rng)


def _damper(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
    """A damper bought by the width of the throat, without a look at its free area."""
    flue = gather_facts(sketch(design)).flue_net_area or 0.0
    return try_change(
        design, {"throat.damper_area": f"{int(flue / SQIN * rng.choice((0.7, 0.8, 0.9)))} in2"}
    )


def _air_passage(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
    return try_change(design, {"house.air_inlet": f"{rng.choice((3, 4, 5, 60, 70, 80))} in2"})


def _trim(change_piece: Callable[[Random], dict[str, float]]) -> Plant:
    """Put the lowest piece of the mantel elsewhere, or make it stand out farther. [in]"""

    def plant(design: Design, pack: Pack, fault: Fault, rng: Random) -> Design | None:
        *upper, lowest = design.surround.trim
        sizes: dict[str, Any] = {name: value * INCH for name, value in change_piece(rng).items()}
        lowest = replace(lowest, **sizes)
        return replace(design, surround=replace(design.surround, trim=(*upper, lowest)))

    return plant


def _too_near(rng: Random) -> dict[str, float]:
    return {"distance": rng.choice((3.0, 4.0, 4.5, 5.0, 5.5))}


def _stands_out(rng: Random) -> dict[str, float]:
    away = rng.choice((7.0, 8.0, 9.0, 10.0, 12.0))
    return {"distance": away, "projection": away / 8 + rng.choice((0.25, 0.5, 0.75))}
