"""The plan of the work: steps, lifts, staging, days, waits, curing."""

from __future__ import annotations

from dataclasses import dataclass, replace

from fireplace_calc.base.tables.mortars import Mix, mix
from fireplace_calc.base.units import FOOT
from fireplace_calc.build.curing_schedule import Curing, curing
from fireplace_calc.build.lifting.equation import HOIST, TWO
from fireplace_calc.build.lifting.lift_list import Lift, list_lifts
from fireplace_calc.build.mortar import Weather, open_time, protection, work_rule
from fireplace_calc.build.notes import Dust, Wait, dust
from fireplace_calc.build.steps import WorkStep, ready_at, work_steps
from fireplace_calc.geometry.parts import Geometry

RAILS = 10 * FOOT
"""Staging higher than this has rails or fall arrest: 29 CFR 1926.451(g)(1) (read). [m]"""


@dataclass(frozen=True, slots=True)
class Stage:
    """A working floor that has to be put up.

    Attributes
    ----------
    number : int
        In order of use. [-]
    level, height : float
        Over the room floor, and over the ground. [m]
    sides : tuple of str
        On two sides: one to lay from, the other to land pieces on and lay the far face from.
    steps : tuple of int
        Worked from it. [-]
    rails : bool
        Higher than 10 ft.
    """

    number: int
    level: float
    height: float
    sides: tuple[str, str]
    steps: tuple[int, ...]
    rails: bool


@dataclass(frozen=True, slots=True)
class Plan:
    """The order of work.

    Attributes
    ----------
    steps : tuple of WorkStep
        From footing to cap, then what is left to the end.
    lifts : tuple of Lift
        Every heavy piece that is set, at its worst.
    staging : tuple of Stage
        In order of use.
    people : int
        One lays, the others serve. [-]
    hours : float
        Of one mason. [h]
    days : float
        At the wall. [d]
    calendar : float
        Days from the first morning to the last, waits counted in and no day of rest. [d]
    waits : tuple of Wait
        All of them.
    critical : tuple of Wait
        Those that keep the hands waiting.
    while_working : Weather
        By the air as it is.
    afterwards : Weather
        By the mean of the day.
    open_time : float
        Of a batch. [h]
    mortar : float
        Cement mortar of all steps. [m3]
    mix : Mix
        Its materials, by the design's recipe.
    curing : Curing
        And first fires.
    dust : tuple of Dust
    """

    steps: tuple[WorkStep, ...]
    lifts: tuple[Lift, ...]
    staging: tuple[Stage, ...]
    people: int
    hours: float
    days: float
    calendar: float
    waits: tuple[Wait, ...]
    critical: tuple[Wait, ...]
    while_working: Weather
    afterwards: Weather
    open_time: float
    mortar: float
    mix: Mix
    curing: Curing
    dust: tuple[Dust, ...]


def staging(geometry: Geometry, steps: list[WorkStep]) -> tuple[Stage, ...]:
    """Working floors over the footing and over the room floor, in order of use.

    Parameters
    ----------
    geometry : Geometry
    steps : list of WorkStep

    Returns
    -------
    tuple of Stage
        Left and right, which stay clear of the hearth in front and the wall behind.
    """
    f = geometry.frame
    levels: dict[float, list[int]] = {}
    for step in steps:
        if step.floor > 0 or f.footing_top < step.floor < 0:
            levels.setdefault(step.floor, []).append(step.number)
    ground = [f.grade if level > 0 else f.footing_top for level in levels]
    return tuple(
        Stage(n, level, level - under, ("left", "right"), tuple(used), level - under > RAILS)
        for n, ((level, used), under) in enumerate(zip(levels.items(), ground, strict=True), 1)
    )


def _critical(steps: list[WorkStep]) -> tuple[Wait, ...]:
    """The wait that ends last, of those before each step that had to be waited for."""
    found = []
    for step in steps:
        if step.idle > 0:
            held = [
                (ready_at(steps[n - 1], w), w)
                for n in step.after
                for w in steps[n - 1].waits
                if w.holds_up
            ]
            found.append(max(held, key=lambda pair: pair[0])[1])
    return tuple(dict.fromkeys(found))


def plan_work(geometry: Geometry) -> Plan:
    """The order of work of a design, derived from its parts.

    Parameters
    ----------
    geometry : Geometry
        With its design, whose ``work`` holds weather, people and production rates.

    Returns
    -------
    Plan
        Frozen.
    """
    work = geometry.design.work
    steps = work_steps(geometry)
    lifts = list_lifts(geometry, steps)
    for lift in lifts:
        if lift.verdict in (TWO, HOIST):
            at = lift.step - 1
            caution = f"Lifting: {lift.item[0].lower()}{lift.item[1:]}, {lift.verdict}."
            steps[at] = replace(steps[at], cautions=(*steps[at].cautions, caution))
    waits = tuple(dict.fromkeys(w for step in steps for w in step.waits))
    mortar, hours = sum(s.mortar for s in steps), sum(s.hours for s in steps)
    mean = work.air if work.mean is None else work.mean
    return Plan(
        tuple(steps),
        lifts,
        staging(geometry, steps),
        work.people,
        hours,
        hours / work.day,
        max(s.end for s in steps),
        waits,
        _critical(steps),
        work_rule(work.air, work.wind),
        protection(mean, work.wind),
        open_time(work.air, work.wind),
        mortar,
        mix(mortar, work.mortar_mix),
        curing(work),
        dust(),
    )
