"""Brick and block by the measure of a wall; firebrick counted off its layout, the block of a base
off its courses.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from fireplace_calc.base.printing import feet_inches, show
from fireplace_calc.base.tables import density
from fireplace_calc.base.units import CUFT, FEET_INCHES, INCH, SQFT
from fireplace_calc.brickwork import Layout
from fireplace_calc.brickwork.block_work import LaidBlock
from fireplace_calc.brickwork.unit import Unit, UnitMasonry, in_wall
from fireplace_calc.brickwork.work import count_bricks, floor_bricks, lining_bricks, split_brick
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff.share import Share, brick, joints, poured

WALL_MEASURE = 22.5 / CUFT
"""Brick by old wall measure, a way of pricing and no count: USDA FB 1889, p. 44 (read twice).
[1/m3]
"""

CORELESS = 0.27 * CUFT / (7.625 * INCH * 7.625 * INCH * 15.625 * INCH)
"""Share of a hollow 8 in block that is concrete: Masonry Magazine June 1989, p. 10, measured
(read). [-]
"""

BASE_BLOCK = {
    "block": ("Base block", "Base block, cut"),
    "half-high": ("Half-high block", "Half-high block, cut"),
    "packing": ("Packing block", "Packing block, cut"),
}
"""What is ordered for each kind of course: whole, and for cut pieces."""


@lru_cache(maxsize=64)
def size_note(unit: Unit) -> str:
    """What brick it is, and how many the work takes.

    Parameters
    ----------
    unit : Unit
        As it is laid. [m]

    Returns
    -------
    str
    """
    sides = " x ".join(
        show(side, "length", FEET_INCHES) for side in (unit.length, unit.height, unit.depth)
    )
    return (
        f"brick {sides}, {unit.per_area * SQFT:.2f} to the square foot of face and"
        f" {unit.per_volume * CUFT:.1f} to the cubic foot with its joints"
    )


def laid_firebrick(geometry: Geometry, part: Part) -> UnitMasonry | None:
    """How a part is laid that is counted brick by brick; nothing for any other.

    Parameters
    ----------
    geometry : Geometry
    part : Part

    Returns
    -------
    UnitMasonry or None
    """
    if part.material != "firebrick":
        return None
    if part.name == "firebox floor":
        return floor_bricks(geometry)
    return lining_bricks(geometry) if part.name == "firebox lining" else None


def firebrick_shares(
    geometry: Geometry, part: Part, laid: UnitMasonry, layouts: tuple[Layout, ...]
) -> Iterator[Share]:
    """Counted off the layout; volume shared out by the faces of whole bricks and cut ones.

    Parameters
    ----------
    geometry : Geometry
    part : Part
        Floor or lining of the firebox.
    laid : UnitMasonry
    layouts : tuple of Layout
        Of its faces.

    Yields
    ------
    Share
        Whole bricks, those for cuts, and mortar.
    """
    counted = count_bricks(layouts)
    bare = part.volume * laid.share
    whole = bare * counted.whole_area / (counted.whole_area + counted.cut_area)
    pieces = f"{counted.pieces} cut pieces" + (
        "" if laid.wythes == 1 else f" in each of {laid.wythes} wythes"
    )
    notes = [*dict.fromkeys(layout.note for layout in layouts if layout.note)]
    notes += [] if geometry.design.firebox.joint is not None else ["joint unknown, taken as 1/8 in"]
    notes += [said] if (said := split_brick(geometry)) else []
    no_text: list[str] = []
    for item, volume, count, text in (
        ("whole", whole, counted.whole, no_text),
        ("cut", bare - whole, counted.bricks_for_cuts, [pieces]),
    ):
        if count:
            yield Share(
                part.name,
                f"Firebrick, {item}",
                "firebrick",
                volume,
                volume * density("firebrick"),
                count * laid.wythes,
                "; ".join(text + notes),
            )
    yield from joints(part, part.volume - bare, "refractory mortar")


def hearth_shares(part: Part, common: Unit) -> Iterator[Share]:
    """A hearth of whatever it is of, as thick as it is drawn.

    Parameters
    ----------
    part : Part
    common : Unit
        Brick that nobody sees. [m]

    Yields
    ------
    Share
    """
    thick = part.top - part.bottom
    if part.material == "concrete":
        return poured(part, "Hearth topping concrete")
    if part.material == "brick":
        return brick(part, "Hearth brick", in_wall(common, thick), note=size_note(common))
    item = {"stone": "Hearth stone", "tile": "Hearth tile"}.get(part.material, "Hearth boards")
    return poured(
        part, item, part.material, part.volume / thick / SQFT, f"{feet_inches(thick)} thick"
    )


def hollow_block(
    part: Part, item: str, laid: UnitMasonry, count: float, filled: bool
) -> Iterator[Share]:
    """Hollow block, its cores left empty or filled with grout.

    Parameters
    ----------
    part : Part
    item : str
        What to order.
    laid : UnitMasonry
        How it is laid.
    count : float
        Blocks. [-]
    filled : bool
        Whether the cores are poured solid.

    Yields
    ------
    Share
    """
    gross = part.volume * laid.share
    cores = gross * (1 - CORELESS) if filled else 0.0
    yield Share(part.name, item, "block", gross - cores, gross * density("block"), count)
    if cores:
        yield Share(part.name, "Core grout", "grout", cores, cores * density("grout"))
    yield from joints(part, part.volume - gross)


def base_block(part: Part, laid: LaidBlock) -> Iterator[Share]:
    """Block counted off its courses as they are laid; the rest of the part is their joints.

    Parameters
    ----------
    part : Part
    laid : LaidBlock
        Its courses.

    Yields
    ------
    Share
    """
    left, fits, counted = part.volume, laid.fits, laid.count()
    for kind, items in BASE_BLOCK.items():
        if kind not in counted:
            continue
        found = counted[kind]
        one = (found.whole, found.whole_volume, "")
        cut = (found.blocks_for_cuts, found.cut_volume, f"{found.pieces} cut pieces")
        for item, (count, volume, note) in zip(items, (one, cut), strict=True):
            if count:
                gross = volume * fits
                yield Share(
                    part.name, item, "block", gross, gross * _block_density(kind), count, note
                )
                left -= gross
    yield from joints(part, left)


def base_block_weight(part: Part, laid: LaidBlock) -> float:
    """The same block and its mortar weighed, without counting what the cut blocks come out of.

    Parameters
    ----------
    part : Part
    laid : LaidBlock
        Its courses.

    Returns
    -------
    float
        [kg]
    """
    left, weight = part.volume, 0.0
    for kind, found in laid.count().items():
        gross = (found.whole_volume + found.cut_volume) * laid.fits
        weight += gross * _block_density(kind)
        left -= gross
    return weight + sum([share.weight for share in joints(part, left)])


def _block_density(kind: str) -> float:
    """Of a kind of block: hollow, but for what packs out a height. [kg/m3]"""
    return density("block") / (CORELESS if kind == "packing" else 1.0)
