"""Staging in words: what is carried, what the better order saves, what to keep free."""

from __future__ import annotations

from collections.abc import Collection

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES, FOOT, MILLIMETRES, POUND
from fireplace_calc.build.setting.staging import StagingPlan
from fireplace_calc.build.setting.wording import weight_text

ASKED = {
    "work.walkway": "walkway",
    "work.staged_off": "piles off the work",
    "work.pallet_away": "pallet from the fireplace",
    "work.stack_height": "piles no higher than",
    "house.room_length": "room along the wall",
    "house.room_width": "away from it",
}
"""Inputs that staging rests on, and what they are called here."""
IN_A_CORNER = {
    "house.room_length": "wall across the corner",
    "house.room_width": "floor straight on before its middle",
}
"""What two of them are where the fireplace stands across a corner."""
ASSUMED = " (assumed)"
FIGURES = 3
"""To how many a sum of carrying is told. [-]"""


def carry_text(weight_way: float, units: str = FEET_INCHES) -> str:
    """Weight times way, as it is added up.

    Parameters
    ----------
    weight_way : float
        [kg m]
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str

    Examples
    --------
    >>> carry_text(100.0), carry_text(100.0, "millimetres")
    ('723 lb x ft', '100 kg x m')
    """
    unit, name = (1.0, "kg x m") if units == MILLIMETRES else (POUND * FOOT, "lb x ft")
    return f"{grouped(float(f'{weight_way / unit:.{FIGURES}g}'), units=units)} {name}"


def staging_words(
    plan: StagingPlan, units: str = FEET_INCHES, assumed: Collection[str] = ()
) -> tuple[str, ...]:
    """What is to be said beside the drawing, a paragraph each.

    Parameters
    ----------
    plan : StagingPlan
    units : str
        ``feet-inches`` or ``millimetres``.
    assumed : collection of str
        Inputs that nobody has entered, by dotted key.

    Returns
    -------
    tuple of str
    """
    down = [one.pile for one in plan.piles if one.place is not None]
    count = sum(len(pile.names) for pile in down)
    every = sum(len(one.pile.names) for one in plan.piles) + sum(len(p.names) for p in plan.pallets)
    way = show(plan.site.way, "length", units)
    said = [
        f"{count} pieces in {len(down)} piles, the first to be set on top. Left pieces left, right"
        " pieces right, the heaviest nearest."
    ]
    if plan.pallets:
        stay = sum(len(pile.names) for pile in plan.pallets)
        on = "a pallet" if len(plan.pallets) == 1 else f"{len(plan.pallets)} pallets"
        said.append(f"{stay} pieces stay on {on} of their own.")
    if plan.left_over:
        labels = ", ".join(one.pile.label for one in plan.left_over)
        said.append(f"No room for {labels}. They stay on the pallet until their turn.")
    if plan.beyond:
        said.append(
            "The room has no floor for all pallets and the mixer: what is drawn beyond it waits"
            " outside."
        )
    if down:
        said += _carrying(plan, units, way)
    said.append(
        f"What stays on pallets goes straight from there, {way} each:"
        f" {carry_text(plan.kept, units)}."
        if plan.kept
        else "Nothing is carried straight from a pallet."
    )
    said.append(
        f"Lifted in all: {weight_text(plan.lifted, units)}, in {plan.trips} trips of one piece."
        f" {plan.hoisted} of {every} pieces are too heavy for hands: hoist or cart."
    )
    said.append(_taken(plan, units, assumed))
    said.append(
        "Keep the walkway free, cords and hoses out of it. Lay piles on laths, level. Whether the"
        f" floor bears a pallet of {weight_text(_heaviest(plan), units)} is not checked. Mix away"
        " from the pieces, with mask, gloves and goggles."
    )
    return tuple(said)


def _carrying(plan: StagingPlan, units: str, way: str) -> tuple[str, ...]:
    carried = carry_text(plan.carried, units)
    if plan.saved > 0.0005:
        order = (
            f" Taken to the nearest spot as they come, mark by mark, it is"
            f" {carry_text(plan.as_delivered, units)}: this order saves {100 * plan.saved:.0f} %."
        )
    else:
        order = " The order in which they come is as good."
    both = plan.carried + plan.unloading
    return (
        f"From the piles to the work: {carried}.{order}",
        f"Putting them down takes {carry_text(plan.unloading, units)} before that,"
        f" {carry_text(both, units)} both. Straight from the pallet, {way} each, it is"
        f" {carry_text(plan.straight, units)}. Piles {_against(both, plan.straight)}; they spare"
        " looking for a piece while the mortar dries.",
    )


def _against(both: float, straight: float) -> str:
    """What piles cost in carrying, against none."""
    share = 100 * (both / straight - 1) if straight else 0.0
    if abs(share) < 0.5:
        return "cost no more carrying"
    return f"cost {share:.0f} % more carrying" if share > 0 else f"spare {-share:.0f} % of it"


def _taken(plan: StagingPlan, units: str, assumed: Collection[str]) -> str:
    site = plan.site
    called = {} if site.corner is None else IN_A_CORNER
    values = {
        "work.walkway": site.walkway,
        "work.staged_off": site.off,
        "work.pallet_away": site.away,
        "work.stack_height": plan.pile_height,
        "house.room_length": 2 * (site.half + abs(site.off_center)),
        "house.room_width": site.deep if site.corner is None else site.corner.deep(),
    }
    told = [
        f"{called.get(key, name)} {show(values[key], 'length', units)}"
        f"{ASSUMED if key in assumed else ''}"
        if values[key] < 1e3
        else f"{called.get(key, name)} not known"
        for key, name in ASKED.items()
    ]
    if site.corner is not None:
        return (
            f"Taken: {', '.join(told)}. The room goes out from the ends of that wall at 45 degrees;"
            " ways are along it and square to it."
        )
    nearer = (
        " Off the middle of its wall, both sides count as far as the nearer end."
        if site.off_center and site.half < 1e3
        else ""
    )
    return f"Taken: {', '.join(told)}.{nearer} Ways are square to the walls."


def _heaviest(plan: StagingPlan) -> float:
    """The heaviest pallet: one of its own, or that of all else. [kg]"""
    rest = sum(one.pile.weight for one in plan.piles)
    return max([rest, *(pile.weight for pile in plan.pallets)])
