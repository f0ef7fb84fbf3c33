"""Rules of thumb beside the count: a second opinion, and why it differs."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.parts import Geometry
from fireplace_calc.tables import density
from fireplace_calc.takeoff.bricks import WALL_MEASURE
from fireplace_calc.takeoff.rows import Row
from fireplace_calc.units import CUFT, POUND, SQFT

NAVY, BULLETIN = "NAVEDTRA 14045, chapter 4 (read)", "USDA FB 1889, 1941 (read twice)"


@dataclass(frozen=True, slots=True)
class Opinion:
    """What a rule of thumb says beside what was counted; both in ``unit``."""

    what: str
    counted: float
    thumb: float
    unit: str
    rule: str
    source: str
    gap: str


def second_opinion(geometry: Geometry, rows: tuple[Row, ...]) -> tuple[Opinion, ...]:
    """Every rule of thumb that has something to say about an order.

    Parameters
    ----------
    geometry : Geometry
    rows : tuple of Row
        Of its takeoff.

    Returns
    -------
    tuple of Opinion
        Net quantities, waste left out on both sides.
    """
    net = {row.item: row.net for row in rows}
    volume = {row.item: row.volume for row in rows}
    made = []
    brick = sum(net.get(item, 0) for item in ("Common brick", "Facing brick"))
    apart = ("lintel", "arch", "hearth extension", "firebox lining")
    work = sum(p.volume for p in geometry.parts if p.material == "brick" and p.name not in apart)
    if brick:
        made.append(Opinion("Brick by wall measure", brick, work * WALL_MEASURE, "brick", "22.5 to the cubic foot", BULLETIN,
                            "Wall measure prices work by 7.5 brick to each 4 in of wall and foot of face; it is no count and runs some "
                            "29 percent over brick of 8 in with 1/2 in joints."))
        thousand = brick / 1000
        made.append(Opinion("Mortar, thick walls", volume.get("Mortar", 0.0) / CUFT, 18 * thousand, "ft3", "18 ft3 of sand to 1000 brick",
                            BULLETIN, "The bulletin's mix fills solid walls; ours adds the block's joints and leaves out what is spilt."))
        made.append(Opinion("Mortar, one wythe", volume.get("Mortar", 0.0) / CUFT, 11.7 * thousand, "ft3", "11.7 ft3 to 1000 brick", NAVY,
                            "Bare joints of a 4 in wall; solid work has collar joints besides."))
    fire = net.get("Firebrick, whole", 0) + net.get("Firebrick, cut", 0)
    lined = sum(p.volume for p in geometry.parts if p.name in ("firebox lining", "firebox floor") and p.material == "firebrick")
    if fire and lined:
        made.append(Opinion("Firebrick", fire, 17 * lined / CUFT, "brick", "17 to the cubic foot of wall", "old pocket books (memory)",
                            "Dry brick without joints, 17.1 to the cubic foot, nothing lost in cuts: a small firebox is nearly all cuts."))
        paste = volume.get("Refractory mortar", 0.0) * density("refractory mortar") / POUND
        made.append(Opinion("Refractory mortar", paste, 350 * fire / 1000, "lb", "350 lb to 1000 straights", "general practice (memory)",
                            "For thin trowelled joints, 250 to 600 by the crew; ours counts parging and liner joints too, nothing spilt."))
    walls = geometry.by_name.get("base walls")
    if walls and net.get("Base block") and walls.cuts:
        f = geometry.frame
        face = (4 * f.block_half + 2 * f.block_back) * (walls.top - walls.bottom)
        made.append(Opinion("Base block", net["Base block"], 1.125 * face / SQFT, "block", "112.5 to 100 square feet",
                            "NCMA TEK 14, 1969 (read twice)", "Outside face, corners counted twice; ours goes by the middle of the wall, "
                            "in halves, by whole courses."))
    return tuple(made)
