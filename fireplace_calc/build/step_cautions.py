"""What can hurt in a step of the work: dust, burns, collapse, heights, fire and carbon monoxide."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.units import FOOT
from fireplace_calc.build.lift_parts import STACK, LiftPart
from fireplace_calc.build.order import CAST
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY, StepGoods
from fireplace_calc.design.second_flue import APPLIANCE
from fireplace_calc.geometry.parts import Geometry

FALL = 6 * FOOT
"""From this height over the ground a step warns of falls: 29 CFR 1926.501(b), from memory. [m]"""
CUT = ("brick", "block", "ton")
"""Sold so, it is cut on site, and cutting raises dust."""

HARD_MANTELS = ("Mantel and trim, stone", "Mantel and trim, brick")
"""Goods of a mantel that are cut with a wet saw."""
DUST = "Dust: cut wet, with a guard on the blade."
SKIN = "Skin and eyes: wet cement and lime burn; gloves and goggles."


def cautions_before(goods: tuple[StepGoods, ...]) -> Iterator[str]:
    """What can hurt where face, mantel and trim go on before the finished breast.

    Parameters
    ----------
    goods : tuple of StepGoods
        Set in the step.

    Yields
    ------
    str
    """
    items = {one.item for one in goods}
    if items & {"Facing brick", "Face stone", "Face tile", *HARD_MANTELS}:
        yield DUST
    if items & {MORTAR, "Face plaster"}:
        yield SKIN
    if any(item.startswith("Mantel") for item in items):
        yield "Lifting: weigh a shelf first; prop it until it is fixed."
    if "Metal hood" in items:
        yield "Fire: a hood gets hot; nothing that burns touches it, and no smoke passes over it."
    yield "Fire: nothing that burns in the face or behind it near the opening."


def cautions_of(
    geometry: Geometry, built: list[LiftPart], goods: tuple[StepGoods, ...], top: bool
) -> Iterator[str]:
    """What can hurt in a step.

    Parameters
    ----------
    geometry : Geometry
    built : list of LiftPart
        What goes up in it.
    goods : tuple of StepGoods
        Of these.
    top : bool
        Whether the last of the flue is among them.

    Yields
    ------
    str
        One sentence a danger.
    """
    parts, f = {s.part for s in built}, geometry.frame
    if any(one.unit in CUT for one in goods):
        yield DUST
    if any(s.material in CAST for s in built) or any(
        one.item in (MORTAR, REFRACTORY) for one in goods
    ):
        yield SKIN
    if f.grade - min(s.low for s in built) > 5 * FOOT and parts & {
        "footing",
        "base walls",
        "base core",
    }:
        yield "Collapse: the pit is deeper than 5 ft; slope or shore its sides."
    if parts & {"lintel", "arch", "facing lintel"}:
        held = "the centering carries" if "arch" in parts else "props carry"
        yield (
            f"Collapse: {held} it and the wall laid over it until the mortar is hard."
            " Nobody works or stands under it."
        )
    if "lintel" in parts and not geometry.design.lintel.bearing:
        yield "Collapse: its bearing is zero or unknown; give both ends a bearing before it is set."
    if "chimney walls" in parts:
        yield "Collapse: green masonry does not stand wind; brace it, and keep clear below."
    if built and max(s.high for s in built) - f.grade > FALL and min(s.floor for s in built) > 0:
        yield "Heights: rails or arrest on staging and roof, ladder tied, nothing dropped."
    if parts & set(STACK):
        yield (
            "Fire: keep mortar and scrap out of the air space to framing; look into it before it"
            " is closed."
        )
    if top:
        yield "CO and fire: look through the flue from end to end; nothing may be left in it."
        if geometry.design.second_flue.serves == APPLIANCE:
            yield "CO: the appliance on the second flue stays off until both flues are clear."
