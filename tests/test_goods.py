"""How everything on the order is sold, and what becomes of an item without a price."""

from dataclasses import replace
from math import ceil

import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.tables import density
from fireplace_calc.base.units import CUYD, POUND
from fireplace_calc.design.records import Design
from fireplace_calc.takeoff import all_goods
from fireplace_calc.takeoff.cost import bill, prices

SOLD = {
    ("yd3", 0.25, "concrete"): "Footing concrete; Core grout; Hearth slab concrete;"
    " Hearth bed concrete; Hearth topping concrete; Wall concrete",
    ("ft2", 1, ""): "Hearth stone; Hearth tile; Hearth boards; Face stone; Face plaster; Face tile",
    ("block", 1, "block"): "Base block; Masonry block",
    ("brick", 1, "brick"): "Hearth brick; Common brick; Facing brick; Lintel brick; Arch brick",
    ("brick", 1, "firebrick"): "Firebrick, whole; Firebrick, cut; Smoke chamber firebrick",
    ("piece", 1, "section"): "Firebox floor section; Firebox back section; Firebox side section;"
    " Smoke chamber section",
    (
        "piece",
        1,
        "",
    ): "Steel lintel; Stone lintel; Concrete lintel; Timber lintel; Transition piece",
    ("ton", 0.25, "brick"): "Building stone; Arch stone",
    ("80-lb bag", 1, "mortar"): "Mortar",
    ("50-lb pail", 1, "mortar"): "Refractory mortar",
}
"""Unit, the least part of it that is sold, and which waste it takes: ready mix by the quarter yard,
stone by the quarter ton, everything else whole.
"""


@pytest.mark.parametrize("sold", SOLD, ids=str)
def test_goods_are_sold_as_the_trade_sells_them(sold):
    for item in SOLD[sold].split("; "):
        one = all_goods()[item]
        assert (one.unit, one.step, one.waste) == sold, item


def test_a_bag_holds_its_own_weight_of_set_work_and_a_ton_two_thousand_pounds():
    goods = all_goods()
    assert goods["Mortar"].holds * density("mortar") == pytest.approx(80 * POUND)
    assert goods["Crown concrete"].holds * density("concrete") == pytest.approx(80 * POUND)
    assert goods["Refractory mortar"].holds * density("refractory mortar") == pytest.approx(
        50 * POUND
    )
    assert goods["Building stone"].holds * density("stone") == pytest.approx(2000 * POUND)
    assert goods["Footing concrete"].holds == pytest.approx(CUYD)
    assert all(goods[item].holds is None for item in ("Common brick", "Base block", "Flue section"))


def test_an_order_is_rounded_up_to_what_is_sold_with_its_waste():
    design = Design()
    for row in assess(design).takeoff:
        sold = all_goods()[row.item]
        waste = getattr(design.waste, sold.waste) if sold.waste else 0.0
        steps = ceil(round(row.net * (1 + waste) / sold.step, 9))
        assert row.order == pytest.approx(steps * sold.step), row.item


def test_what_has_no_price_has_no_packs_and_no_cost():
    """A price by another unit is none; packs are counted up: 90 block to a pallet, 91 take two."""
    row = next(r for r in assess(Design()).takeoff if r.item == "Base block")
    known = prices()["Base block"]
    assert (known.per_pack, known.pack) == (90, "pallet")
    for order, packs in ((90, 1), (91, 2), (1, 1), (180, 2)):
        (line,) = bill([replace(row, order=float(order))], prices()).lines
        assert (line.packs, line.pack, line.amount) == (packs, "pallet", known.price * order)
    for priced in ({}, {"Base block": replace(known, unit="piece")}):
        found = bill([row], priced)
        (line,) = found.lines
        assert (line.price, line.amount, line.packs, line.pack) == (None, None, 0, "")
        assert (found.total, found.currency, found.unpriced, found.invented) == (
            0, "", ("Base block",), False,
        )  # fmt: skip
    loose = bill([row], {"Base block": replace(known, per_pack=None, pack="")})
    assert loose.lines[0].packs == 0 and loose.total == known.price * row.order


@pytest.mark.parametrize(
    ("color", "made"),
    [("gray", None), ("white", "white cement and light sand"), ("buff", "a pigment")],
)
def test_colored_mortar_of_the_face_is_told_and_not_counted(color, made):
    """White mortar is made with white cement, another color with a pigment."""
    told = {"method": "laid", "surround.face": "brick", "surround.mortar": color}
    (row,) = (r for r in assess(change(Design(), told)).takeoff if r.item == "Mortar")
    said = f"in {color} mortar, with {made} that"
    assert (said in row.note) == (made is not None) and ("that the list" in row.note) == bool(made)
