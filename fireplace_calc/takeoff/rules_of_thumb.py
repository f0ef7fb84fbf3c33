"""Rules of thumb beside the count: a second opinion, and why it differs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fireplace_calc.base.tables import density
from fireplace_calc.base.units import CUFT, FOOT, INCH, POUND, SQFT, SQIN
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.unit import common_brick, in_wall
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff import handbook, handbook_flues
from fireplace_calc.takeoff.rows import Row

NAVY, BULLETIN, OLDER = (
    "NAVEDTRA 14045, chapter 4 (read)",
    "USDA FB 1889, 1941 (read twice)",
    "USDA FB 1230, 1921 (read)",
)


@dataclass(frozen=True, slots=True)
class Opinion:
    """What a rule of thumb gives beside what was counted.

    Attributes
    ----------
    what : str
        Is counted.
    counted, by_rule : float
        Counted here, and by the rule of thumb, in ``unit``. [-]
    unit : str
    rule, source : str
        The rule of thumb, and where it is printed.
    why : str
        The two differ.
    """

    what: str
    counted: float
    by_rule: float
    unit: str
    rule: str
    source: str
    why: str


def second_opinion(geometry: Geometry, rows: tuple[Row, ...]) -> tuple[Opinion, ...]:
    """Every rule of thumb that has something to say about an order, and the two about the flue.

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
    return (
        *_brick(geometry, net, volume),
        *_firebrick(geometry, net, volume),
        *_block(geometry),
        *_flue(geometry),
    )


def _brick(
    geometry: Geometry, net: dict[str, float], volume: dict[str, float]
) -> Iterator[Opinion]:
    brick = sum(net.get(item, 0) for item in ("Common brick", "Facing brick"))
    if not brick:
        return
    apart = ("lintel", "arch", "hearth extension", "hearth seat", "firebox lining")
    work = sum(p.volume for p in geometry.parts if p.material == "brick" and p.name not in apart)
    laid, thick, thin = (
        v / CUFT
        for v in (
            volume["Mortar"],
            handbook.mortar(brick),
            handbook.mortar(brick, thick=False),
        )
    )
    yield Opinion(
        "Brick by wall measure",
        brick,
        handbook.wall_measure(work),
        "brick",
        "22.5 to the cubic foot",
        BULLETIN,
        "Wall measure prices work by 7.5 brick to each 4 in of wall and foot of face; it is no"
        " count and runs some 29 percent over brick of 8 in with 1/2 in joints.",
    )
    stack = geometry.parts_by_name["chimney walls"]
    if stack.material == "brick" and stack.volume > 0:
        high, unit = stack.top - stack.bottom, common_brick(geometry.design)
        counted = stack.volume * in_wall(unit, geometry.design.chimney.wall).per_volume
        each = counted * unit.course / high
        yield Opinion(
            "Brick of the chimney walls, by courses",
            counted,
            handbook.brick_by_courses(high, each),
            "brick",
            f"4-1/2 courses to the foot of {each:.1f} brick",
            BULLETIN,
            f"Ours are {FOOT / unit.course:.2f} courses to the foot; the bulletin rounds 4.36 up.",
        )
    yield Opinion(
        "Mortar, thick walls",
        laid,
        thick,
        "ft3",
        "18 ft3 of sand to 1000 brick",
        BULLETIN,
        "The bulletin's mix fills solid walls; ours adds the block's joints and leaves out what is"
        " spilt.",
    )
    yield Opinion(
        "Mortar, one wythe",
        laid,
        thin,
        "ft3",
        "11.7 ft3 to 1000 brick",
        NAVY,
        "Bare joints of a 4 in wall; solid work has collar joints besides.",
    )


def _firebrick(
    geometry: Geometry, net: dict[str, float], volume: dict[str, float]
) -> Iterator[Opinion]:
    fire = net.get("Firebrick, whole", 0) + net.get("Firebrick, cut", 0)
    lined = sum(
        p.volume
        for p in geometry.parts
        if p.name in ("firebox lining", "firebox floor") and p.material == "firebrick"
    )
    if fire and lined:
        yield Opinion(
            "Firebrick",
            fire,
            handbook.figure("firebrick") * lined / CUFT,
            "brick",
            "17 to the cubic foot of wall",
            "old pocket books (memory)",
            "Dry brick without joints, 17.1 to the cubic foot, nothing lost in cuts: a small"
            " firebox is nearly all cuts.",
        )
        paste = volume.get("Refractory mortar", 0.0) * density("refractory mortar") / POUND
        yield Opinion(
            "Refractory mortar",
            paste,
            handbook.figure("refractory mortar") / POUND * fire / 1000,
            "lb",
            "350 lb to 1000 straights",
            "general practice (memory)",
            "For thin trowelled joints, 250 to 600 by the crew; ours counts parging and liner"
            " joints too, nothing spilt.",
        )


def _block(geometry: Geometry) -> Iterator[Opinion]:
    f, laid = geometry.frame, lay_brickwork(geometry).base_block
    found = laid.count().get("block") if laid else None
    if laid and found and found.whole and geometry.parts_by_name["base walls"].cuts:
        courses = laid.coursing.whole + (laid.coursing.sawn > 0)
        face = (4 * f.block_half + 2 * f.block_back) * courses * laid.unit.course
        yield Opinion(
            "Base block",
            found.whole + found.blocks_for_cuts,
            handbook.figure("block") / 100 * face / SQFT,
            "block",
            "112.5 to 100 square feet",
            "NCMA TEK 14, 1969 (read twice)",
            "Courses of full block alone. Outside face, corners counted twice; ours is counted as"
            " it is laid, and what a cut block leaves is used where it fits.",
        )


def _flue(geometry: Geometry) -> Iterator[Opinion]:
    """The bulletins reckon with the bare inside of a liner, and so does what is drawn here."""
    f, lined = geometry.frame, geometry.design.flue.liner != "unlined"
    needed = handbook_flues.flue_area(f.clear_area, f.liner_top - f.hearth, lined)
    if lined:
        fits = [
            f"{size} {word}"
            for shape, word in (("rectangular", "outside"), ("round", "round"))
            if (size := handbook_flues.next_liner(needed, shape))
        ]
        sizes = (
            f"its next liner is {' or '.join(fits)}"
            if fits
            else "no liner of its table is as large"
        )
    else:
        short, long = (round(side / INCH) for side in handbook_flues.brick_flue(needed))
        sizes = f"in bare brick {short} x {long} in, which no code of today allows"
    yield Opinion(
        "Flue area",
        f.bore.area / SQIN,
        needed / SQIN,
        "in2",
        "a twelfth of the opening; a tenth unlined or under 22 ft",
        BULLETIN,
        f"Bare inside of the liner, which the code's net areas are less than; {sizes}. The code"
        " decides.",
    )
    yield Opinion(
        "Flue area, older rule",
        f.bore.area / SQIN,
        handbook_flues.older_flue_area(f.clear_area) / SQIN,
        "in2",
        "13 in2 to the square foot of opening",
        OLDER,
        "For every height alike. The code decides.",
    )
