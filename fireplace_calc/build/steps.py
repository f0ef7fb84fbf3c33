"""The steps of the work, with their goods, mortar, hours, hold points, waits and cautions, and a
calendar in which one crew works.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.build.grouping import grouped, reasons, step_name
from fireplace_calc.build.lift_parts import FLUES, LiftPart
from fireplace_calc.build.mortar import batches
from fireplace_calc.build.notes import HoldPoint, Wait, hold_points_of, waits_of
from fireplace_calc.build.order import Dependency, Order, order_of_work
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY, StepGoods, goods_of, hours_of
from fireplace_calc.build.step_cautions import cautions_before, cautions_of
from fireplace_calc.design.mantel import SHELF
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff import Share, share_out
from fireplace_calc.takeoff.before_masonry import FACE, HOOD, MANTEL

MANTEL_STEP = "Mantel and trim"
"""Step in which the mantel is put up."""


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
    goods : tuple of StepGoods
        With counts.
    mortar, refractory : float
        Cement mortar, crown mortar counted in, and refractory mortar. [m3]
    batches : int
        Of cement mortar, each laid within its open time. [-]
    batch : float
        Size of one. [m3]
    hours : float
        Of one mason. [h]
    days : float
        The same in working days. [d]
    floor : float
        Level one stands on. [m]
    hold_points : tuple of HoldPoint
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
    goods: tuple[StepGoods, ...]
    mortar: float
    refractory: float
    batches: int
    batch: float
    hours: float
    days: float
    floor: float
    hold_points: tuple[HoldPoint, ...]
    waits: tuple[Wait, ...]
    cautions: tuple[str, ...]
    start: float
    end: float
    idle: float


def ready_at(step: WorkStep, wait: Wait) -> float:
    """When a wait is over.

    Parameters
    ----------
    step : WorkStep
        It follows.
    wait : Wait
        Counted from the step's start or from its end.

    Returns
    -------
    float
        From the first morning. [d]
    """
    return wait.days + (step.start if wait.counts_from == "start" else step.end)


def work_steps(geometry: Geometry, order: Order | None = None) -> list[WorkStep]:
    """Every step, with a calendar in which one crew works and waits where it must.

    Parameters
    ----------
    geometry : Geometry
        Its design's ``work`` holds weather, production rates and people.
    order : Order, optional
        When it is known already.

    Returns
    -------
    list of WorkStep
        In turn.
    """
    design, order = geometry.design, order or order_of_work(geometry)
    by_part: dict[str, list[Share]] = {}
    for share in share_out(geometry):
        by_part.setdefault(share.part, []).append(share)
    groups = grouped(order)
    step_of = {n: k for k, group in enumerate(groups, 1) for n in group}
    into: list[list[Dependency]] = [[] for _ in order.lift_parts]
    for dependency in order.dependencies:
        into[dependency.then].append(dependency)
    last_flue = max((n for n, s in enumerate(order.lift_parts) if s.part in FLUES), default=-1)
    done: list[WorkStep] = []
    for number, group in enumerate(groups, 1):
        built = [order.lift_parts[n] for n in group]
        after = tuple(sorted({step_of[t.first] for n in group for t in into[n]} - {number}))
        finish = (
            built[-1].part in ("chimney walls", "base walls") and built[-1].number < built[-1].of
        )
        hold_points = [
            h for s in built for h in hold_points_of(s.part) if not (finish and h.kind == "level")
        ]
        hold_points += hold_points_of("last flue") if last_flue in group else []
        waits = tuple(
            w
            for s in built
            for w in waits_of(s.part, s.material)
            if s.number == s.of or w.counts_from == "start"
        )
        goods = goods_of(built, by_part)
        done.append(
            _step(
                geometry,
                done,
                number,
                step_name(built),
                tuple(built),
                reasons(order, group, into),
                after,
                goods,
                tuple(dict.fromkeys(hold_points)),
                waits,
                tuple(cautions_of(geometry, built, goods, last_flue in group)),
            )
        )
    over, face = "goes over the finished breast", f"Face in {design.surround.face}"
    if {share.item for share in by_part.get(FACE, ())} == {"Face plaster"} and "brick" in face:
        face = "Plaster over the mantel"
    brick = design.mantel.material == "brick" and design.mantel.family == SHELF
    with_walls = "its courses are laid with those of the breast and counted here by themselves"
    finishing = (
        (FACE, face, over),
        (MANTEL, MANTEL_STEP, with_walls if brick else over),
        (HOOD, "Metal hood", "hangs in the finished opening"),
    )
    for part, name, why in finishing:
        if part not in by_part:
            continue
        goods = goods_of([LiftPart(part, name, 0.0, 0.0, 1.0, 1, 1, 0.0)], by_part)
        done.append(
            _step(
                geometry,
                done,
                len(done) + 1,
                name,
                (),
                (why,),
                tuple(
                    s.number
                    for s in done
                    if s.name == face
                    or any(b.part in ("firebox walls", "smoke chamber walls") for b in s.parts)
                ),
                goods,
                (),
                (),
                tuple(cautions_before(goods)),
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
    goods: tuple[StepGoods, ...],
    hold_points: tuple[HoldPoint, ...],
    waits: tuple[Wait, ...],
    cautions: tuple[str, ...],
) -> WorkStep:
    work = geometry.design.work
    hours = hours_of(built, goods, geometry)
    mortar = sum(one.volume for one in goods if one.item in (MORTAR, "Crown mortar"))
    count, batch = batches(mortar, hours, work.air, work.wind)
    free_from = done[-1].end if done else 0.0
    ready = max(
        (ready_at(done[n - 1], w) for n in after for w in done[n - 1].waits if w.holds_up),
        default=0.0,
    )
    start = max(free_from, ready)
    return WorkStep(
        number,
        name,
        built,
        why,
        after,
        goods,
        mortar,
        sum(n.volume for n in goods if n.item == REFRACTORY),
        count,
        batch,
        hours,
        hours / work.day,
        min((s.floor for s in built), default=0.0),
        hold_points,
        waits,
        cautions,
        start,
        start + hours / work.day,
        start - free_from,
    )
