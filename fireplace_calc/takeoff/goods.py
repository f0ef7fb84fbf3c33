"""Everything that can stand on the list: the unit it is bought in, what one unit holds, and which
waste applies.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.units import CUFT, CUYD, INCH, POUND
from fireplace_calc.takeoff.bricks import WALL_MEASURE
from fireplace_calc.takeoff.handbook import concrete as mixed

LONGEST = 30 * INCH
"""Refractory sections are taken no longer than this, so that a piece stays handy: our own habit;
its weight says who sets it. [m]
"""

STONE_JOINTS = 0.25
"""Share of stonework that is mortar; common practice for rubble, from memory. [-]"""


@dataclass(frozen=True, slots=True)
class Goods:
    """How something is bought.

    Attributes
    ----------
    unit : str
        It is sold by: bag, brick, piece, square foot, cubic yard.
    holds : float or None
        What one unit holds, where it is bought by volume. [m3]
    step : float
        Fraction of a unit that is sold. [-]
    waste : str
        Which waste input applies.
    note : str
        How it is counted.
    spare : int
        Least number over what is laid. [-]
    """

    unit: str
    holds: float | None
    step: float
    waste: str
    note: str = ""
    spare: int = 0


SET_PIECE = "Piece "
"""What the name of an item begins with that is a piece of a set; its mark follows."""


def _bag(pounds: float, material: str) -> float:
    return pounds * POUND / density(material)


@lru_cache(maxsize=1)
def all_goods() -> dict[str, Goods]:
    """Everything that can stand on the list, in the order it is needed on site.

    Returns
    -------
    dict of str to Goods
        By the item's name.
    """
    brick, block, fire = (
        Goods("brick", None, 1, "brick"),
        Goods("block", None, 1, "block"),
        Goods("brick", None, 1, "firebrick"),
    )
    poured, slab = Goods("yd3", CUYD, 0.25, "concrete"), Goods("ft2", None, 1, "")
    piece, single = Goods("piece", None, 1, "section"), Goods("piece", None, 1, "")
    bag = "a bag is taken to make its own weight of set work"
    concrete = Goods("80-lb bag", _bag(80, "concrete"), 1, "concrete", bag)
    mortar = Goods("80-lb bag", _bag(80, "mortar"), 1, "mortar", bag)
    pail = Goods(
        "50-lb pail",
        _bag(50, "refractory mortar"),
        1,
        "mortar",
        "firebrick, section and liner joints, parging; bought ready or dry, medium-duty: no mix of"
        " cement and sand stands the heat",
    )
    stone = Goods(
        "ton",
        2000 * POUND / density("stone"),
        0.25,
        "brick",
        "a quarter of the work is mortar, by habit",
    )
    hand = replace(
        piece,
        note=f"pieces no longer than {feet_inches(LONGEST)}, our own habit; weight is the mean"
        " piece",
    )
    measure = (
        f"old wall measure, {WALL_MEASURE * CUFT:.1f} to the cubic foot, is a way of pricing and no"
        " count"
    )
    two_of_one = "blocks the cut pieces come out of, two from one where they fit"
    solid = "solid, nominal 2 in high"
    yard = mixed(CUYD)
    by_hand = (
        f"mixed on site 1:2-1/2:5, a yard takes {yard.cement:g} sacks of 94 lb,"
        f" {yard.sand / CUYD:.2f} yd3 of sand and {yard.gravel / CUYD:.2f} of gravel (USDA FB 1889)"
    )
    return {
        "Footing concrete": replace(poured, note=by_hand),
        "Base block": block,
        "Base block, cut": replace(block, note=two_of_one),
        "Half-high block": block,
        "Half-high block, cut": replace(block, note=two_of_one),
        "Packing block": replace(block, note=solid),
        "Packing block, cut": replace(block, note=f"{solid}; {two_of_one}"),
        "Core grout": poured,
        "Hearth slab concrete": poured,
        "Hearth bed concrete": poured,
        "Hearth stone": slab,
        "Hearth tile": slab,
        "Hearth boards": slab,
        "Hearth brick": brick,
        "Hearth topping concrete": poured,
        "Firebrick, whole": fire,
        "Firebrick, cut": replace(
            fire, note="bricks the cut pieces come out of, two from one where they fit"
        ),
        "Firebox floor section": hand,
        "Firebox back section": hand,
        "Firebox side section": hand,
        "Steel firebox unit": replace(single, note="its plate; throat and damper with it are not"),
        "Common brick": replace(brick, note=measure),
        "Facing brick": brick,
        "Masonry block": block,
        "Building stone": stone,
        "Wall concrete": poured,
        **{
            f"Face {finish}": replace(
                slab, note="by the square foot as it shows; mantel and trim take none of it off"
            )
            for finish in ("stone", "plaster", "tile")
        },
        "Mantel and trim, wood": Goods(
            *(
                "board foot",
                CUFT / 12,
                1,
                "",
                "a piece told by itself in its full section, a family as molded",
            )
        ),
        "Mantel and trim, stone": Goods(
            *(
                "ft3",
                CUFT,
                0.25,
                "",
                "noncombustible, taken as stone; told by itself in its full section",
            )
        ),
        "Mantel and trim, brick": replace(brick, note="facing brick in courses that stand out"),
        "Steel lintel": single,
        "Facing lintel": single,
        "Stone lintel": single,
        "Concrete lintel": single,
        "Timber lintel": single,
        "Lintel brick": brick,
        "Lintel bar": single,
        "Arch brick": replace(brick, spare=1),
        "Arch stone": stone,
        "Smoke chamber firebrick": fire,
        "Smoke chamber section": hand,
        "Transition piece": single,
        "Transition concrete": concrete,
        "Clay flue liner": piece,
        "Flue section": piece,
        "Second clay flue liner": piece,
        "Second flue section": piece,
        "Crown concrete": concrete,
        "Crown stone": single,
        "Crown mortar": mortar,
        "Metal hood": replace(single, note="weight from its maker, not counted"),
        "Metal cap": replace(single, note="weight from its maker, not counted"),
        "Mortar": mortar,
        "Refractory mortar": pail,
    }


def goods_for(item: str) -> Goods:
    """How one item is bought: by the list, or as the piece of a set, which is counted and not
    wasted.

    Parameters
    ----------
    item : str

    Returns
    -------
    Goods
    """
    if item.startswith(SET_PIECE):
        return Goods("piece", None, 1, "", "of the set; broken ones are ordered again by mark")
    return all_goods()[item]
