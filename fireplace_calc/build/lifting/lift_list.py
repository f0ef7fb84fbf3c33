"""Every heavy piece that is set: what it weighs, where it goes, and whether one, two, or only a
hoist may lift it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import ceil

from fireplace_calc.brickwork.coursing import HALF_HIGH, SPLIT
from fireplace_calc.build.contact import Contacts
from fireplace_calc.build.lift_parts import FLUES, STACK, LiftPart
from fireplace_calc.build.lifting.equation import (
    HOIST,
    ONE,
    TWO,
    UNKNOWN,
    LiftingTask,
    capacity,
    how_lifted,
    lifting_index,
    reach_for,
    weight_limit,
)
from fireplace_calc.build.lifting.multipliers import exceeds
from fireplace_calc.build.production_rates import StepGoods
from fireplace_calc.build.steps import WorkStep
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.goods import LONGEST

PANELS = ("Firebox back section", "Firebox side section", "Smoke chamber section")
"""Carried upright, flat against the body."""
FLUE_PIECES = {
    "Clay flue liner": "flue liner",
    "Flue section": "flue liner",
    "Second clay flue liner": "second flue liner",
    "Second flue section": "second flue liner",
}
"""Pieces of a flue, and the part that rises by them."""
SLAB = "Hearth stone"
"""Taken as one slab, the heaviest it can come in."""
BLOCK_HIGH = {"Half-high block": HALF_HIGH, "Packing block": SPLIT}
"""Block that is lower than a full one. [m]"""
BLOCKS = ("Base block", *BLOCK_HIGH)
"""Of the base; each has a row for its cut pieces too."""
GRIPS = {
    **dict.fromkeys((*BLOCKS, *(f"{item}, cut" for item in BLOCKS)), "fair"),
    "Masonry block": "fair",
    "Steel lintel": "fair",
    "Facing lintel": "fair",
    "Timber lintel": "fair",
}
"""Webs and edges the fingers close on; anything else is smooth and wide, and in doubt the worse:
our own habit.
"""
HEAVY_UNIT = 20.0
"""Units over this are set by nobody alone, wherever they go: HSE guidance (read). [kg]"""

RANK = (UNKNOWN, ONE, TWO, HOIST)
"""Who lifts, from no answer to the most it takes."""


@dataclass(frozen=True, slots=True)
class Lift:
    """A kind of piece in one step, at its worst.

    Attributes
    ----------
    step : int
        In which it is set. [-]
    item : str
        As on the takeoff.
    count : float
        Pieces in the step. [-]
    weight : float or None
        Of one, on the average; unknown where only its maker knows. [kg]
    height : float
        Of its bed over the working floor, where the lift is worst. [m]
    reach : float
        Of the hands where it is put. [m]
    allowed : float
        Limit of one person, the smaller of both ends. [kg]
    index_one, index_two : float or None
        Lifting index for one person and for two. [-]
    verdict : str
        ``one person``, ``two people``, ``hoist`` or ``not checked``.
    note : str
        What else there is to know.
    """

    step: int
    item: str
    count: float
    weight: float | None
    height: float
    reach: float
    allowed: float
    index_one: float | None
    index_two: float | None
    verdict: str
    note: str


def _size(
    geometry: Geometry, item: str, plan: Callable[[], tuple[float, float]]
) -> tuple[float, float]:
    """How deep a piece is away from the body, and how tall as it is set. [m]"""
    d, f = geometry.design, geometry.frame
    if item in FLUE_PIECES:
        unit = f.second if item.startswith("Second") and f.second else f
        return 2 * min(unit.unit_half, unit.unit_depth), d.flue.section_height
    whole = item.removesuffix(", cut")
    if whole in (*BLOCKS, "Masonry block"):
        return d.base.block_width, BLOCK_HIGH.get(whole, d.base.block_height)
    if item in PANELS:
        thick = (
            d.smoke_chamber.lining_thickness if item == PANELS[2] else d.firebox.lining_thickness
        )
        return thick, d.firebox.section_height
    wide, deep = plan()
    if item == "Steel lintel":
        return d.lintel.legs(f.breast).level, d.lintel.height
    if item == "Facing lintel" and (angle := d.pieces.facing_angle(d.opening.head)):
        return angle.level, d.pieces.angle_height
    if item.endswith("lintel"):
        return deep, d.lintel.height
    return min(
        wide / ceil(wide / LONGEST - 1e-9), deep / ceil(deep / LONGEST - 1e-9)
    ) if item == "Firebox floor section" else min(wide, deep), 0.0


def _beds(lift_part: LiftPart, tall: float) -> list[float]:
    """Levels of the beds of pieces so tall, bottom to top. [m]"""
    number = max(ceil((lift_part.high - lift_part.low) / tall - 0.02), 1) if tall > 0 else 1
    return [lift_part.low + k * (lift_part.high - lift_part.low) / number for k in range(number)]


def _lift(
    geometry: Geometry,
    step: WorkStep,
    lift_part: LiftPart,
    need: StepGoods,
    size: tuple[float, float],
) -> Lift:
    work, (deep, tall) = geometry.design.work, size
    single = need.item == SLAB
    count = 1.0 if single else need.quantity
    weight = need.weight / count if need.weight > 0 else None
    task = LiftingTask(work.lifts, "long", GRIPS.get(need.item, "poor"))

    def hands(height: float) -> tuple[float, float]:
        return max(work.carry, reach_for(deep, height)), height

    taken = hands(work.stack_height)
    floors = [
        lift_part.floor,
        *(
            [lift_part.floor - work.lift_height]
            if lift_part.floor >= work.lift_height - 1e-9
            else []
        ),
    ]
    options = [
        max(
            (
                weight_limit(taken, hands(max(bed - floor, 0.0) + tall / 2), task),
                bed >= floor,
                bed,
                floor,
            )
            for floor in floors
        )
        for bed in _beds(lift_part, tall)
    ]
    allowed, _, bed, floor = min(options)
    verdict = how_lifted(weight, HEAVY_UNIT if allowed > 0 else 0.0)
    notes = [
        "taken as one slab" if single else "",
        "no twist: turn with the feet" if weight else "weight from its maker",
    ]
    put = hands(max(bed - floor, 0.0) + tall / 2)
    index_one = None if weight is None else lifting_index(weight, allowed)
    index_two = None if weight is None else lifting_index(weight, capacity(allowed, 2))
    return Lift(
        step.number,
        need.item,
        count,
        weight,
        bed - floor,
        put[0],
        allowed,
        index_one,
        index_two,
        verdict,
        "; ".join(n for n in notes if n),
    )


def list_lifts(geometry: Geometry, steps: list[WorkStep]) -> tuple[Lift, ...]:
    """Lifts of every step that sets blocks, sections, lintels, slabs or stones.

    Parameters
    ----------
    geometry : Geometry
        Its design's ``work`` says where pieces stand ready, how far off the body they are held, how
        often.
    steps : list of WorkStep

    Returns
    -------
    tuple of Lift
        In turn.

    Notes
    -----
    Who lifts a piece goes by its weight alone, in every step alike: one person up to 20 kg, two up
    to two thirds of twice that, a hoist beyond or where hands do not reach. The index is the strain
    by the lifting equation at the worst bed. Hands are taken to hold a piece at half
    its height, all day long: our own habit, on the safe side.
    """
    found = []
    for step in steps:
        for need in step.goods:
            if (
                not (need.unit in ("piece", "block") or need.item == SLAB)
                or not step.parts
                or need.quantity <= 1e-9
            ):
                continue
            chosen = [
                s
                for s in step.parts
                if s.part not in STACK
                or (
                    s.part == FLUE_PIECES[need.item]
                    if need.item in FLUE_PIECES
                    else s.part not in FLUES
                )
            ]

            def plan(name: str = chosen[0].part) -> tuple[float, float]:
                part = geometry.parts_by_name[name]
                outlines = Contacts([part]).plan(part, (part.bottom + part.top) / 2)[0]
                return (
                    max(o.right for o in outlines) - min(o.left for o in outlines),
                    max(o.back for o in outlines) - min(o.front for o in outlines),
                )

            size = _size(geometry, need.item, plan)
            options = [_lift(geometry, step, s, need, size) for s in chosen]
            found.append(min(options, key=lambda lift: lift.allowed))
    return tuple(_settled(lift, found, geometry.design.work.people) for lift in found)


def _settled(lift: Lift, found: list[Lift], people: int) -> Lift:
    """A lift with the one answer its kind of piece has in every step: the most any of them asks."""
    verdict = max((one.verdict for one in found if one.item == lift.item), key=RANK.index)
    index = lift.index_one if verdict == ONE else lift.index_two
    notes = [lift.note]
    if lift.allowed <= 0:
        notes.append("no lift by hand at its worst bed: hands do not reach")
    elif verdict in (ONE, TWO) and index is not None and exceeds(index, 1.0):
        notes.append("strain at its worst bed: bring pile and stand nearer to its height")
    if verdict == TWO and people < 2:
        notes.append("two are wanted, and the plan has one")
    return replace(lift, verdict=verdict, note="; ".join(notes))
