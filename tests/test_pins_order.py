"""Twenty whole designs: bricks, list, weights and cost, against a second reckoning by hand (``tests/naive``)."""

from collections import Counter, defaultdict

import numpy as np
import pytest
import shapely
from naive import bricks, courses, order
from naive.reading import PINS
from naive.whole import NAMES, assessed, differs, naive

from fireplace_calc.brickwork import block_coursing, lay_brickwork
from fireplace_calc.takeoff import share_out
from fireplace_calc.takeoff.cost import bill, prices
from fireplace_calc.takeoff.rules_of_thumb import second_opinion

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
        assert (one.counted, one.by_rule) == pytest.approx((counted, thumb), rel=1e-9), what
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
        (outline, alike, centred, ends), unit, bond = mine[layout.face.name]
        paving = layout.face.name == "floor"
        pieces, moved, laid = bricks.best(outline, unit, bond, centred, ends, paving)
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
        assert sorted(p.length for p in layout.pieces) == pytest.approx(
            sorted(p.long for p in pieces), rel=1e-6, abs=1e-8
        )
        sides = layout.edges
        assert np.hypot(*(sides[:, 1] - sides[:, 0]).T).sum() == pytest.approx(
            sum(shapely.Polygon(p.ring).length for p in layout.pieces)
        )
        area = shapely.Polygon(outline).area
        assert layout.face.area == pytest.approx(area, rel=1e-9)
        assert layout.joint_area == pytest.approx(area - sum(p.face for p in pieces), abs=1e-7)
        where = [(shapely.Polygon(p.ring).centroid.coords[0]) for p in layout.pieces]
        assert_alike(where, [p.middle for p in pieces])


@pytest.mark.parametrize("name", NAMES)
def test_cut_pieces_by_their_shape(name):
    """Every cut piece is as some other or it is not, however it is turned or flipped; sides to the millimeter, corners to the degree."""
    theirs, wanted = lay_brickwork(assessed(name).geometry), Counter()
    for layout in theirs.layouts:
        for piece in layout.pieces:
            if not piece.whole:
                wanted[bricks.shape(piece.ring)] += layout.face.alike
    assert sorted(theirs.cuts.values()) == sorted(wanted.values())
    assert theirs.slivers == sum(
        len(layout.slivers) * layout.face.alike for layout in theirs.layouts
    )


@pytest.mark.parametrize("name", NAMES)
def test_courses_that_come_out_level(name):
    """Block to the slab and under the hearth in front, lining to the shelf: every bed tried by hand."""
    s, d, theirs, parts = (
        naive(name).s,
        naive(name).d,
        lay_brickwork(assessed(name).geometry),
        naive(name).parts,
    )
    for part, told in (("base walls", theirs.base), ("hearth extension base", theirs.extension)):
        assert (part in parts) == (told is not None)
        if told is None:
            continue
        high = parts[part].top - parts[part].bottom
        made = courses.stack(high, d.base.block_height, d.base.bed)
        assert (told.whole, told.half, told.packing) == (made.whole, made.half, made.packing)
        assert (told.sawn, told.first_bed, told.bed, told.miss) == pytest.approx(
            (made.sawn, made.first, made.bed, made.miss), abs=1e-9
        )
        assert told.level == (made.off == 0)
        assert told.courses == made.whole + made.half + made.packing + (made.sawn > 0)
        assert (told.height, told.target) == pytest.approx((high + made.miss, high), abs=1e-9)
        if told.courses:
            assert told.tops[0] == pytest.approx(
                made.first + (d.base.block_height if made.whole else told.tops[0] - made.first),
                abs=1e-9,
            )
            assert (
                told.tops[-1] == pytest.approx(told.height, abs=1e-9)
                and len(told.tops) == told.courses
            )
    lined = d.firebox.lining == "firebrick"
    assert (theirs.lining_courses is not None) == lined
    if lined:
        unit = bricks.firebrick(d.firebox.brick, d.firebox.lining_thickness, d.firebox.joint)
        number, joint = courses.even(s.throat - s.paving, unit.high, unit.joint)
        assert (theirs.lining_courses.courses, theirs.lining_courses.joint) == pytest.approx(
            (number, joint), abs=1e-12
        )
        assert theirs.lining_courses.fits == (-1e-9 <= joint <= 0.0127 + 1e-9)


@pytest.mark.parametrize(("block", "bed"), [(7.625, 0.375), (3.625, 0.375), (8.46, 0.4)])
def test_block_to_many_heights(block, bed):
    """The same trial of every bed for two dozen heights, in inches."""
    for high in (
        4.4,
        9.9,
        11.1,
        13.3,
        17,
        19.2,
        22.6,
        24,
        27.7,
        30.1,
        31,
        33.8,
        35.5,
        38.2,
        41,
        43.9,
        46.6,
        50.3,
    ):
        made, told = (
            courses.stack(*(x * 0.0254 for x in (high, block, bed))),
            block_coursing(*(x * 0.0254 for x in (high, block, bed))),
        )
        assert (told.whole, told.half, told.packing) == (made.whole, made.half, made.packing), high
        assert (told.sawn, told.first_bed, told.bed) == pytest.approx(
            (made.sawn, made.first, made.bed), abs=1e-9
        ), high


@pytest.mark.parametrize("name", NAMES)
def test_two_courses_of_base_block(name):
    """Every block of both courses that take turns, where it lies and whether it is cut."""
    theirs, s = lay_brickwork(assessed(name).geometry).block_courses, naive(name).s
    hollow = bool(naive(name).parts["base walls"].holes(s.footing_top))
    half, deep = s.block
    assert len(theirs) == 2  # each of these designs stands on block
    for odd, course in enumerate(theirs):
        wanted = (
            courses.ring(half, deep, naive(name).order.block, bool(odd))
            if hollow
            else courses.solid(-half, 0.0, half, deep, naive(name).order.block, bool(odd))
        )
        found = sorted(
            (*map(min, zip(*ring, strict=True)), *map(max, zip(*ring, strict=True)), cut)
            for ring, cut in course.blocks
        )
        assert len(found) == len(wanted)
        assert all(shapely.LinearRing(ring).is_ccw for ring, _ in course.blocks)
        assert [block[4] for block in found] == [block[4] for block in wanted]
        assert [x for block in found for x in block[:4]] == pytest.approx(
            [x for block in wanted for x in block[:4]], abs=1e-9
        )
        assert (course.whole, course.cut) == (
            sum(not b[4] for b in wanted),
            sum(b[4] for b in wanted),
        )


@pytest.mark.parametrize("name", NAMES)
def test_what_is_said_of_the_count(name):
    """How many pieces the cuts are, in how many wythes, and how heavy each material is known to be."""
    rows = {row.item: row.note for row in assessed(name).takeoff}
    for item, row in naive(name).rows.items():
        assert ("kg/m3" in rows[item]) == (row["weight"] > 0), item
    for item, note in rows.items():
        if item.endswith("lintel"):
            assert ("angle" in note) == (item == "Steel lintel") and " high, " in note
    parts, stone = naive(name).parts, naive(name).d.lintel.material == "stone"
    if "arch" in parts and not stone:
        [(_, ring)] = parts["arch"].arches
        high = ring.deep / round(ring.deep / (4 * 0.0254))  # rings of a brick on edge, 4 in
        odd = []
        for middle in (ring.radius + high / 2, ring.radius + 3 * high / 2):
            number = 2 * ring.skew * middle / (2.75 * 0.0254)
            odd.append(min(range(1, 200, 2), key=lambda k, n=number: abs(k - n)))
        assert f"{odd[0]} and {odd[1]} round the arch" in rows["Arch brick"]
    for part, found in naive(name).order.cuts.items():
        thick = (
            naive(name).d.firebox.floor
            if part == "firebox floor"
            else naive(name).d.firebox.lining_thickness
        )
        wythes = bricks.firebrick(
            naive(name).d.firebox.brick, thick, naive(name).d.firebox.joint
        ).rows
        told = f"{found['pieces']} cut pieces" + (
            f" in each of {wythes} wythes" if wythes > 1 else ""
        )
        assert found["from"] == 0 or told in rows["Firebrick, cut"]


def assert_alike(found: list, wanted: list) -> None:
    """Two sets of places, each as near to one of the other as a hundredth of a millimetre."""
    tree = shapely.STRtree(shapely.points(wanted))
    pairs, far = tree.query_nearest(shapely.points(found), return_distance=True, all_matches=False)
    assert far.max() < 1e-5
    assert len(set(pairs[1])) == len(wanted)
