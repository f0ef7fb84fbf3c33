"""Twenty whole designs: bricks, list, weights and cost, against a second reckoning by hand (``tests/naive``)."""

from collections import defaultdict

import pytest
import shapely
from naive import bricks, order
from naive.reading import PINS
from naive.whole import NAMES, assessed, differs, naive

from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.takeoff import bill, prices, second_opinion, share_out

COLUMNS = {
    "unit": "unit",
    "net": "net",
    "order": "order",
    "weight": "weight_kg",
    "volume": "volume",
    "piece": "piece_kg",
    "material": "material",
}


@pytest.mark.parametrize("name", NAMES)
def test_the_list(name):
    mine, theirs = naive(name).rows, {row.item: row for row in assessed(name).takeoff}
    assert list(theirs) == list(mine)
    wrong = {
        item: bad
        for item, row in mine.items()
        if (
            bad := differs(
                row, {key: getattr(theirs[item], column) for key, column in COLUMNS.items()}
            )
        )
    }
    assert wrong == {}


@pytest.mark.parametrize("name", NAMES)
def test_what_every_part_asks_for(name):
    """Volume, weight and count, part by part and kind by kind."""

    def summed(asked) -> dict:
        found = defaultdict(float)
        for share in asked:
            for what in ("volume", "weight", "count"):
                found[share.part, share.item, what] += getattr(share, what)
        return found

    assert (
        differs(summed(naive(name).order.shares), summed(share_out(assessed(name).geometry))) == {}
    )
    assert assessed(name).weight == pytest.approx(sum(naive(name).order.masses.values()), rel=1e-9)


@pytest.mark.parametrize("name", NAMES)
def test_the_bill_by_a_list_of_our_own(name):
    theirs, mine = (
        bill(assessed(name).takeoff, prices(PINS / "prices.csv")),
        order.bill(naive(name).rows),
    )
    assert theirs.total == pytest.approx(mine["total"], rel=1e-9)
    assert theirs.unpriced == tuple(mine["unpriced"])
    assert {line.row.item: line.packs for line in theirs.lines if line.price is not None} == mine[
        "packs"
    ]
    assert (theirs.currency, theirs.invented) == ("mark", True)


@pytest.mark.parametrize("name", NAMES)
def test_rules_of_thumb_beside_it(name):
    said = second_opinion(assessed(name).geometry, assessed(name).takeoff)
    wanted = order.opinions(naive(name).s, naive(name).order, naive(name).rows)
    assert [one.what for one in said] == [what for what, *_ in wanted]
    for one, (what, counted, thumb, unit) in zip(said, wanted, strict=True):
        assert (one.counted, one.thumb) == pytest.approx((counted, thumb), rel=1e-9), what
        assert one.unit == unit


def laid_by_hand(name: str) -> dict[str, tuple]:
    """Every face that is laid, with its outline, unit and bond."""
    s, box = naive(name).s, naive(name).d.firebox
    found = {}
    if naive(name).d.method == "laid":
        found["floor"] = (
            bricks.floor(s),
            bricks.firebrick(box.brick, box.floor, box.joint),
            box.floor_bond,
        )
    if box.lining == "firebrick":
        unit = bricks.firebrick(box.brick, box.lining_thickness, box.joint)
        found |= {face: (outline, unit, box.bond) for face, outline in bricks.faces(s).items()}
    return found


@pytest.mark.parametrize("name", NAMES)
def test_bricks_of_every_face(name):
    """Whole ones, cut ones, slivers, how far the start was moved, the bond, and every piece by its area and its length."""
    theirs, mine = lay_brickwork(assessed(name).geometry).layouts, laid_by_hand(name)
    assert [layout.face.name for layout in theirs] == list(mine)
    for layout in theirs:
        (outline, alike, centred), unit, bond = mine[layout.face.name]
        pieces, moved, laid = bricks.best(outline, unit, bond, centred)
        assert (layout.whole, layout.cut) == (
            sum(p.whole for p in pieces),
            sum(not p.whole for p in pieces),
        ), layout.face.name
        assert len(layout.slivers) == bricks.thin(pieces, unit)
        assert (layout.bond, layout.face.alike) == (laid, alike)
        assert layout.shifted == pytest.approx(moved, abs=1e-12)
        assert sorted(p.area for p in layout.pieces) == pytest.approx(
            sorted(p.face for p in pieces), rel=1e-6, abs=1e-8
        )
        assert sorted(p.long for p in layout.pieces) == pytest.approx(
            sorted(p.long for p in pieces), rel=1e-6, abs=1e-8
        )
        where = [(shapely.Polygon(p.ring).centroid.coords[0]) for p in layout.pieces]
        assert_alike(where, [p.middle for p in pieces])


def assert_alike(found: list, wanted: list) -> None:
    """Two sets of places, each as near to one of the other as a hundredth of a millimetre."""
    tree = shapely.STRtree(shapely.points(wanted))
    pairs, far = tree.query_nearest(shapely.points(found), return_distance=True, all_matches=False)
    assert far.max() < 1e-5
    assert len(set(pairs[1])) == len(wanted)
