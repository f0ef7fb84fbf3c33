"""Random sets: where their volume goes, lift by lift; and a design built from them.

``SETS=2000 pytest tests/test_pieces_random.py`` draws as many, by hand.
"""

import os
from dataclasses import replace
from itertools import pairwise
from math import pi

import pytest
from sampled import sampled
from set_strategies import made, random_set, stood
from shapely.geometry import Polygon
from shapely.ops import unary_union
from test_pieces_design import CHOICES, middling

from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.pieces import TakenSet
from fireplace_calc.design.records import Design
from fireplace_calc.editing.sets.deciding import decide
from fireplace_calc.geometry.assembled.solids import piece_part, piece_volume
from fireplace_calc.geometry.assembled.volumes import beds, nests, perpends
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import part_body
from fireplace_calc.geometry.polygons import box
from fireplace_calc.pieces.records import ArchCut

COUNT = int(os.environ.get("SETS", "12"))
HAIR, STEPS = 1e-9, 16
HAIR_AREA = 2e-6
"""Square meters that two cuts may share along their sides, or a sliver have."""


def cut(piece, height):
    """A piece's level cut by shapely, worked apart from the product's own sections."""
    adds, cuts = piece_part(piece).plan(height)
    return unary_union([Polygon(r) for r in adds]) - unary_union([Polygon(r) for r in cuts])


def closed_area(pieces, level, reach):
    """Of a lift at a level under its top, its joints filled, offset out and in by shapely; in small steps,
    for at each it leaves out corners that it takes for straight, of a hundredth of the step."""
    grown = unary_union([cut(p, level + p.height) for p in pieces])
    for by in (reach / STEPS,) * STEPS + (-reach / STEPS,) * STEPS:
        grown = grown.buffer(by, join_style="mitre", mitre_limit=4)
    return grown.area


def simpson(area, levels, panels=1):
    """Sum of an area between levels where nothing bends, each parted into so many panels."""
    total = 0.0
    for start, end in pairwise(levels):
        step = (end - start) / panels
        for low in (start + step * k for k in range(panels)):
            ends = area(low + HAIR), area(low + step / 2), area(low + step - HAIR)
            total += step * (ends[0] + 4 * ends[1] + ends[2]) / 6
    return total


def bends(pieces, high):
    """Levels under the top of a lift, as deep as is asked, at which one of its solids begins or ends."""
    solids = [(p, s) for p in pieces for s in piece_part(p).adds + piece_part(p).cuts]
    levels = {z - p.height for p, s in solids for z in (s.bottom, s.top)} | {-high, 0.0}
    return sorted({round(z, 9) for z in levels if -high - HAIR < z < HAIR})


def arched(pieces):
    return any(isinstance(s, ArchCut) for p in pieces for s in p.cuts)


@pytest.mark.parametrize("seed", sampled(range(COUNT), 4))
def test_pieces_and_joints_fill_their_lift(seed):
    """Against the closed section by shapely, summed by Simpson's rule, as high as the lowest piece; what
    taller ones have below that is summed apart. Pieces by their closed form, joints as the product counts
    them; beside an arch the joints alone are summed, for no rule is exact on a curve."""
    for here in stood(replace(random_set(seed), round=0)).by_lift:
        pieces = tuple(p.piece for p in here)
        if any(p.plain for p in pieces):
            continue  # what nests fills a stack, below
        high = min(p.height for p in pieces)
        reach = max(p.perpend.most for p in pieces) / 2 + 1e-6

        def whole(z, pieces=pieces, reach=reach):
            return closed_area(pieces, z, reach)

        def bare(z, pieces=pieces):
            return sum(cut(p, z + p.height).area for p in pieces)

        filled = sum(map(piece_volume, pieces))
        levels = bends(pieces, high)
        if arched(pieces):
            joints = simpson(lambda z, w=whole, b=bare: w(z) - b(z), levels, 40)
            assert perpends(pieces) == pytest.approx(joints, abs=1e-6 * filled), seed
            continue
        for p in pieces:
            lower = [z for z in bends([p], p.height) if z < -high - HAIR]
            filled -= simpson(lambda z, p=p: cut(p, z + p.height).area, [*lower, -high])
        closed = simpson(whole, levels)
        assert filled + perpends(pieces) == pytest.approx(closed, rel=1e-6), [
            p.mark for p in pieces
        ]


@pytest.mark.parametrize("seed", sampled(range(COUNT), 4))
def test_the_bed_of_a_lift_lies_where_its_pieces_meet(seed):
    """Each piece on each one under it, by shapely, times the bed; a tongue takes no bed."""
    made = stood(replace(random_set(seed), round=0))
    for number, (below, here) in enumerate(pairwise(made.by_lift), 1):
        by_hand = 0.0
        for a in here:
            for b in below:
                high = b.piece.height
                top = cut(b.piece, high - HAIR) - cut(b.piece, high + HAIR)
                by_hand += a.bed * cut(a.piece, HAIR).intersection(top).area
        lift = sum(piece_volume(p.piece) for p in here)
        assert beds(made, number) == pytest.approx(by_hand, abs=1e-6 * lift), number


@pytest.mark.parametrize("shape", [0, 1], ids=["square", "round"])
@pytest.mark.parametrize("seed", sampled(range(COUNT), 4))
def test_what_nests_fills_the_stack_to_its_bore(seed, shape):
    """By hand from the recipe: outline less bore, times the rise from top to top. A flue piece lends its
    tongue to the piece above and has that of the one below, which is as large."""
    recipe = replace(random_set(seed), round=shape, nest=4 + seed % 12, flues=3)
    grid = 0.0015 if recipe.metric else 0.0254 / 16
    out = (recipe.bore / 2 + 20 + 32) * grid
    bore = (pi if shape else 4) * (recipe.bore / 2 * grid) ** 2
    made = stood(recipe)
    nested = [n for n, here in enumerate(made.by_lift) if here[0].piece.role == "flue"]
    assert len(nested) == 3
    for n in nested:
        filled = piece_volume(made.by_lift[n][0].piece) + beds(made, n) + nests(made, n)
        rise = made.tops[n] - made.tops[n - 1]
        assert filled == pytest.approx((4 * out**2 - bore) * rise, rel=1e-6)


def designed(recipe):
    """A design that takes a set; none where the set leaves the range of an input."""
    plain = Design()
    named = plain.with_read({"pieces": TakenSet(set="random"), "piece_set": made(recipe)})
    try:
        return decide(named)
    except InputError:
        return None


def level_cut(part, z):
    adds, cuts = part.plan(z)
    return unary_union([Polygon(r) for r in adds]) - unary_union([Polygon(r) for r in cuts])


def remainder(geometry):
    """What neither parts nor voids fill between the base plates and the flue, level by level by shapely:
    its volume, the greatest area that two share, and what of it does not touch the masonry round it."""
    f = geometry.frame
    every = [p for p in geometry.parts + geometry.voids if p.name != "gap for movement"]
    ends = {z for p in every for s in p.adds + p.cuts for z in (s.bottom, s.top)}
    levels = sorted({round(z, 7) for z in ends if f.plate_bottom <= z <= f.flue_start})
    shared, pockets = [0.0], []

    def left(z):
        here = {p.name: level_cut(p, z) for p in every if p.bottom < z < p.top}
        filled = unary_union(list(here.values()))
        shared.append(sum(s.area for s in here.values()) - filled.area)
        rest = level_cut(geometry.outer, z) - filled
        for one in getattr(rest, "geoms", [rest]):
            if one.area > HAIR_AREA and one.distance(here["masonry round the set"]) > 1e-6:
                pockets.append((z, one.bounds))
        return rest.area

    steps = [(low, high) for low, high in pairwise(levels) if high - low > 1e-5]
    return sum(simpson(left, step) for step in steps), max(shared), pockets


@pytest.mark.parametrize("lining", [1, 0], ids=["lined", "bare"])
def test_a_design_of_a_random_set_fills_its_block_and_nothing_stands_in_anything(lining):
    """What is left of the outer solid without every part and void is the gap for movement: as large to
    1e-4 of the whole (arcs are polygons here), and no pocket of it anywhere inside the pieces."""
    built = 0
    for seed in range(COUNT):
        design = designed(replace(random_set(seed), lining=lining, flues=12))
        if design is None:
            continue
        built += 1
        geometry = build_geometry(design)
        filled = sum(p.volume for p in geometry.parts + geometry.voids)
        assert filled == pytest.approx(geometry.outer.volume, rel=1e-7)
        assert all(p.volume > 0 for p in geometry.parts + geometry.voids), seed
        left, shared, pockets = remainder(geometry)
        gap = geometry.by_name["gap for movement"].volume
        assert left == pytest.approx(gap, abs=1e-4 * geometry.outer.volume), seed
        assert shared < HAIR_AREA and not pockets, (seed, shared, pockets[:3])
    assert built >= COUNT // 3, built


@pytest.mark.parametrize("name", CHOICES)
def test_a_shipped_set_leaves_no_pocket_either(name):
    geometry = build_geometry(middling(**CHOICES[name]))
    left, shared, pockets = remainder(geometry)
    gap = geometry.by_name["gap for movement"].volume
    assert left == pytest.approx(gap, abs=1e-4 * geometry.outer.volume)
    assert shared < HAIR_AREA and not pockets, (shared, pockets[:3])


def test_no_two_solids_of_a_random_design_share_any_room():
    """The same in space, by manifold3d, pair by pair: its union of many that touch is not exact."""
    for seed in range(COUNT):
        design = designed(replace(random_set(seed), lining=seed % 2, flues=12))
        if design is None:
            continue
        geometry = build_geometry(design)
        bodies = [
            (p.name, part_body(p))
            for p in geometry.parts + geometry.voids
            if p.name != "gap for movement"
        ]
        outer = part_body(geometry.outer)
        for k, (one, solid) in enumerate(bodies):
            assert (solid - outer).volume() < 1e-6, (seed, one)
            for other, against in bodies[:k]:
                common = (solid ^ against).volume()
                least = min(solid.volume(), against.volume())
                assert common < 1e-5 * least + 1e-6, (seed, one, other, common)


def test_joints_are_counted_as_high_as_the_lowest_piece():
    """Blocks 4 in deep, one 8 and two 10 in high, 3/8 in apart, their tops level: 2 x 3/8 x 4 x 8
    in3; the two high ones alone 3/8 x 4 x 10.
    """
    wall = stood(random_set(0)).by_lift[0][0].piece
    joint = replace(wall.perpend, most=INCH / 2)

    def block(left, high):
        outline = box(left * INCH, (left + 10) * INCH, 0.0, 4 * INCH)
        solid = replace(wall.adds[0], bottom=0.0, top=high * INCH, lower=outline, upper=outline)
        return replace(wall, height=high * INCH, adds=(solid,), cuts=(), plain=None, perpend=joint)

    low, high, last = block(0.0, 8), block(10.375, 10), block(20.75, 10)
    assert perpends((low, high, last)) == pytest.approx(24 * INCH**3, rel=1e-5)
    assert perpends((high, last)) == pytest.approx(15 * INCH**3, rel=1e-5)
