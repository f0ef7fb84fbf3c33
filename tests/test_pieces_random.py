"""Random sets: where their volume goes, lift by lift; and a design built from them.

``SETS=2000 pytest tests/test_pieces_random.py`` draws as many, by hand.
"""

import os
from dataclasses import replace

import pytest
from set_strategies import made, random_set, stood
from shapely.geometry import Polygon
from shapely.ops import unary_union

from fireplace_calc.base.units import InputError
from fireplace_calc.design.pieces import TakenSet
from fireplace_calc.design.records import Design
from fireplace_calc.editing.sets.deciding import decide
from fireplace_calc.geometry.assembled.solids import piece_part, piece_volume
from fireplace_calc.geometry.assembled.volumes import perpends
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import _body

COUNT = int(os.environ.get("SETS", "12"))


def cut(piece, height):
    """A piece's level cut by shapely, worked apart from the product's own sections."""
    adds, cuts = piece_part(piece).plan(height)
    return unary_union([Polygon(r) for r in adds]) - unary_union([Polygon(r) for r in cuts])


def closed_area(pieces, level, height, reach):
    whole = unary_union([cut(p, level + p.height - height) for p in pieces])
    grown = whole.buffer(reach, join_style="mitre", mitre_limit=4)
    return grown.buffer(-reach, join_style="mitre", mitre_limit=4).area


@pytest.mark.parametrize("seed", range(COUNT))
def test_pieces_and_joints_fill_their_lift(seed):
    """Against the closed section, offset out and in by shapely and summed by Simpson's rule between the
    levels where something bends; pieces by their closed form, joints as the product counts them."""
    for here in stood(replace(random_set(seed), round=0)).by_lift:
        pieces = tuple(p.piece for p in here)
        if any(p.plain for p in pieces) or len({p.height for p in pieces}) > 1:
            continue  # a nest reaches out of its lift
        if any(type(s).__name__ == "ArchCut" for p in pieces for s in p.cuts):
            continue  # a curve is no prismatoid
        height, hair = pieces[0].height, 1e-9
        solids = [s for p in pieces for s in piece_part(p).adds + piece_part(p).cuts]
        levels = sorted({round(z, 9) for s in solids for z in (s.bottom, s.top)})
        reach = max(p.perpend.most for p in pieces) / 2 + 1e-6
        whole = 0.0
        for low, high in zip(levels, levels[1:], strict=False):
            a, b, c = (
                closed_area(pieces, z, height, reach)
                for z in (low + hair, (low + high) / 2, high - hair)
            )
            whole += (high - low) * (a + 4 * b + c) / 6
        filled = sum(map(piece_volume, pieces)) + perpends(pieces)
        assert filled == pytest.approx(whole, rel=5e-6), [p.mark for p in pieces]


def designed(recipe):
    """A design that takes a set; none where the set leaves the range of an input."""
    plain = Design()
    named = plain.with_read({"pieces": TakenSet(set="random"), "piece_set": made(recipe)})
    try:
        return decide(named)
    except InputError:
        return None


def test_a_design_of_a_random_set_fills_its_block_and_nothing_stands_in_anything():
    built = 0
    for seed in range(COUNT):
        design = designed(replace(random_set(seed), lining=1, flues=12))
        if design is None:
            continue
        built += 1
        geometry = build_geometry(design)
        filled = sum(p.volume for p in geometry.parts + geometry.voids)
        assert filled == pytest.approx(geometry.outer.volume, rel=1e-7)
        assert all(p.volume > 0 for p in geometry.parts + geometry.voids), seed
        bodies = [(p.name, _body(p)) for p in geometry.parts]
        bodies += [(p.name, _body(p)) for p in geometry.voids if p.name != "gap for movement"]
        for k, (one, solid) in enumerate(bodies):
            for other, against in bodies[:k]:
                common = (solid ^ against).volume()
                least = min(solid.volume(), against.volume())
                assert common < 1e-5 * least + 1e-6, (seed, one, other, common)
    assert built >= COUNT // 3, built
