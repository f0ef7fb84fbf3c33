"""The steps of the work: stretches that go up together, with their goods, mortar, hours, holds,
waits and cautions.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fireplace_calc.base.units import FOOT
from fireplace_calc.build.lift_parts import STACK, LiftPart
from fireplace_calc.build.mortar import batches
from fireplace_calc.build.notes import Hold, Wait, holds_of, waits_of
from fireplace_calc.build.order import CAST, Dependency, Order, order_of_work
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY, Need, hours_of, needs
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff import Share, share_out

FALL = 6 * FOOT
"""From this height over the ground a step warns of falls: 29 CFR 1926.501(b), from memory. [m]"""
CUT = ("brick", "block", "ton")
"""Sold so, it is cut on site, and cutting raises dust."""


@dataclass(frozen=True, slots=True)
class WorkStep:
    """One step of the work.

    Attributes
    ----------
    number : int
        From 1. [-]
    name : str
        What is built.
    parts : tuple of LiftPart
        In the order they are set; none for a finish that is no part of the drawing.
    why : tuple of str
        What it rests on, stands in, goes round or leans on.
    after : tuple of int
        Steps that carry or form it. [-]
    goods : tuple of Need
        With counts.
    mortar, refractory : float
        Cement mortar, crown mortar counted in, and refractory mortar. [m3]
    batches : int
        Of cement mortar, each laid within its open time. [-]
    batch : float
        Size of one. [m3]
    hours, days : float
        Of one mason, and in working days. [h, d]
    floor : float
        Level one stands on. [m]
    holds : tuple of Hold
        To be right before the next step.
    waits : tuple of Wait
        Before anything is put on it, or beside the work.
    cautions : tuple of str
        Of this step.
    start, end : float
        From the first morning; idle days before it counted in. [d]
    idle : float
        Days the hands are kept waiting before it. [d]
    """

    number: int
    name: str
    parts: tuple[LiftPart, ...]
    why: tuple[str, ...]
    after: tuple[int, ...]
    goods: tuple[Need, ...]
    mortar: float
    refractory: float
    batches: int
    batch: float
    hours: float
    days: float
    floor: float
    holds: tuple[Hold, ...]
    waits: tuple[Wait, ...]
    cautions: tuple[str, ...]
    start: float
    end: float
    idle: float


def grouped(made: Order) -> list[list[int]]:
    """Numbers of the stretches that make a step: flue and chimney of one working floor rise
    together.

    Parameters
    ----------
    made : Order
        Stretches in turn.

    Returns
    -------
    list of list of int
        In turn. [-]
    """
    found: list[list[int]] = []
    for n, lift_part in enumerate(made.lift_parts):
        before = made.lift_parts[found[-1][-1]] if found else None
        together = (
            before
            and before.part in STACK
            and lift_part.part in STACK
            and before.floor == lift_part.floor
        )
        found[-1].append(n) if together else found.append([n])
    return found


def _name(built: list[LiftPart]) -> str:
    first = built[0]
    if first.part not in STACK:
        return first.name.capitalize()
    parts = {s.part for s in built}
    words = [
        word
        for word, has in (
            ("flue", parts & {"flue liner", "flue casing"}),
            ("shoulder", "shoulder" in parts),
            ("chimney", "chimney walls" in parts),
        )
        if has
    ]
    lift = "" if first.of == 1 else f", lift {first.number} of {first.of}"
    return (", ".join(words[:-1]) + " and " * (len(words) > 1) + words[-1]).capitalize() + lift


def carried(dependencies: list[Dependency]) -> bool:
    """Whether something drawn carries a stretch.

    Parameters
    ----------
    dependencies : list of Dependency
        For what it waits.

    Returns
    -------
    bool
        False for the footing, and for what stands on the room's floor. [-]
    """
    return any(
        t.how in ("rests on", "goes on", "stands in", "leans on", "is cast against")
        for t in dependencies
    )


def _why(made: Order, group: list[int], into: list[list[Dependency]]) -> tuple[str, ...]:
    first = made.lift_parts[group[0]]
    said = [
        "goes on what is below it"
        if t.how == "goes on"
        else f"{t.how} {made.lift_parts[t.first].part}"
        for n in group
        for t in into[n]
        if t.first not in group
    ]
    if first.part == "footing":
        said.append("bears on undisturbed ground or engineered fill")
    elif not carried(into[group[0]]):
        said.append(
            "bears on the floor of the room or the ground, which the drawing does not hold"
            if first.part.startswith("hearth ext")
            else "bears on nothing that is drawn: give its ends a bearing before it is set"
        )
    return tuple(dict.fromkeys(said))


def ready_at(step: WorkStep, wait: Wait) -> float:
    """When a wait is over.

    Parameters
    ----------
    step : Step
        It follows. [d]
    wait : Wait
        Counted from the step's start or from its end. [d]

    Returns
    -------
    float
        From the first morning. [d]
    """
    return wait.days + (step.start if wait.counts_from == "start" else step.end)


def _cautions(
    geometry: Geometry, built: list[LiftPart], wanted: tuple[Need, ...], top: bool
) -> Iterator[str]:
    parts, f = {s.part for s in built}, geometry.frame
    if any(need.unit in CUT for need in wanted):
        yield "Dust: cut wet, with a guard on the blade."
    if any(s.material in CAST for s in built) or any(
        need.item in (MORTAR, REFRACTORY) for need in wanted
    ):
        yield "Skin and eyes: wet cement and lime burn; gloves and goggles."
    if f.grade - min(s.low for s in built) > 5 * FOOT and parts & {
        "footing",
        "base walls",
        "base core",
    }:
        yield "Collapse: the pit is deeper than 5 ft; slope or shore its sides."
    if parts & {"lintel", "arch"}:
        yield "Collapse: nothing is carried until the mortar is hard; props stay."
    if "lintel" in parts and not geometry.design.lintel.bearing:
        yield "Collapse: its bearing is zero or unknown; give both ends a bearing before it is set."
    if "chimney walls" in parts:
        yield "Collapse: green masonry does not stand wind; brace it, and keep clear below."
    if built and max(s.high for s in built) - f.grade > FALL and min(s.floor for s in built) > 0:
        yield "Heights: rails or arrest on staging and roof, ladder tied, nothing dropped."
    if parts & set(STACK):
        yield "Fire: keep mortar and scrap out of the air space to framing; look into it before it is closed."
    if top:
        yield "CO and fire: look through the flue from end to end; nothing may be left in it."


def work_steps(geometry: Geometry, made: Order | None = None) -> list[WorkStep]:
    """Every step, with a calendar in which one crew works and waits where it must.

    Parameters
    ----------
    geometry : Geometry
        Its design's ``work`` holds weather, paces and people.
    made : Order or None
        When it is known already.

    Returns
    -------
    list of Step
        In turn. [h, d]
    """
    design, made = geometry.design, made or order_of_work(geometry)
    by_part: dict[str, list[Share]] = {}
    for share in share_out(geometry):
        by_part.setdefault(share.part, []).append(share)
    groups = grouped(made)
    step_of = {n: k for k, group in enumerate(groups, 1) for n in group}
    into: list[list[Dependency]] = [[] for _ in made.lift_parts]
    for dependency in made.dependencies:
        into[dependency.then].append(dependency)
    lasts = max(
        (n for n, s in enumerate(made.lift_parts) if s.part.startswith("flue ")), default=-1
    )
    done: list[WorkStep] = []
    for number, group in enumerate(groups, 1):
        built = [made.lift_parts[n] for n in group]
        after = tuple(sorted({step_of[t.first] for n in group for t in into[n]} - {number}))
        finish = (
            built[-1].part in ("chimney walls", "base walls") and built[-1].number < built[-1].of
        )
        holds = [h for s in built for h in holds_of(s.part) if not (finish and h.kind == "level")]
        holds += holds_of("last flue") if lasts in group else []
        waits = tuple(
            w
            for s in built
            for w in waits_of(s.part, s.material)
            if s.number == s.of or w.counts_from == "start"
        )
        wanted = needs(built, by_part)
        done.append(
            _step(
                geometry,
                done,
                number,
                _name(built),
                tuple(built),
                _why(made, group, into),
                after,
                wanted,
                tuple(dict.fromkeys(holds)),
                waits,
                tuple(_cautions(geometry, built, wanted, lasts in group)),
            )
        )
    face = (
        [LiftPart("face", design.surround.face, 0.0, 0.0, 1.0, 1, 1, 0.0)]
        if "face" in by_part
        else []
    )
    if face:
        done.append(
            _step(
                geometry,
                done,
                len(done) + 1,
                f"Face in {design.surround.face}",
                (),
                ("goes over the finished breast",),
                tuple(
                    s.number
                    for s in done
                    if any(b.part in ("firebox walls", "smoke chamber walls") for b in s.parts)
                ),
                needs(face, by_part),
                (),
                (),
                ("Fire: nothing that burns in the face or behind it near the opening.",),
            )
        )
    return done


def _step(
    geometry: Geometry,
    done: list[WorkStep],
    number: int,
    name: str,
    built: tuple[LiftPart, ...],
    why: tuple[str, ...],
    after: tuple[int, ...],
    wanted: tuple[Need, ...],
    holds: tuple[Hold, ...],
    waits: tuple[Wait, ...],
    cautions: tuple[str, ...],
) -> WorkStep:
    work = geometry.design.work
    hours = hours_of(built, wanted, geometry.design)
    mortar = sum(need.volume for need in wanted if need.item in (MORTAR, "Crown mortar"))
    number_of, batch = batches(mortar, hours, work.air, work.wind)
    free = done[-1].end if done else 0.0
    ready = max(
        (ready_at(done[n - 1], w) for n in after for w in done[n - 1].waits if w.holds_up),
        default=0.0,
    )
    start = max(free, ready)
    return WorkStep(
        number,
        name,
        built,
        why,
        after,
        wanted,
        mortar,
        sum(n.volume for n in wanted if n.item == REFRACTORY),
        number_of,
        batch,
        hours,
        hours / work.day,
        min((s.floor for s in built), default=0.0),
        holds,
        waits,
        cautions,
        start,
        start + hours / work.day,
        start - free,
    )
