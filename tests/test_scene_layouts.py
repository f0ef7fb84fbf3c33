"""Faces of the lit scene are laid as they are drawn and counted: as many bricks as the list counts,
courses on the elevation's levels, the firebox brick by brick.
"""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import STRtree, polygons, unary_union
from shapely.geometry import Polygon
from strategies import designs

from fireplace_calc import Design, assess, change
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.arch_ring import laid_arch
from fireplace_calc.brickwork.face_bond import face_bond
from fireplace_calc.brickwork.unit import facing_brick
from fireplace_calc.design.surround import FACE_BONDS
from fireplace_calc.drawing.views.face import face_joints, jamb_ends
from fireplace_calc.drawing.views.front_elevation import breast_ring, lintel_ring, opening_ring
from fireplace_calc.scene.layouts.all_layouts import face_layouts
from fireplace_calc.scene.layouts.arch import arch_units
from fireplace_calc.scene.records import FaceLayout
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.scene.whole_scene import gather_scene
from fireplace_calc.takeoff.facing import facing_of, head_shows, shown_areas

ARCHED = {"opening.head": "segmental", "lintel.material": "masonry arch", "lintel.height": "8 in"}
FACES = {
    "brick": {},
    "arch": ARCHED,
    "Flemish, white mortar": {"brick.facing_bond": "Flemish", "surround.mortar": "white"},
    "coursed": {"surround.face": "stone"},
    "random": {"surround.face": "stone", "surround.stone_bond": "random rubble"},
    "tile": {"surround.face": "tile"},
    "plaster": {"surround.face": "plaster"},
    "herringbone": {"method": "laid", "firebox.bond": "herringbone 45"},
    "sections": {"method": "modular"},
}
every_face = pytest.mark.parametrize("changes", FACES.values(), ids=FACES)


def made(changes):
    return assess(change(Design(), changes))


def front(result, stuff):
    """The layout that stands on the front of the breast."""
    return next(
        one
        for one in face_layouts(result)
        if one.stuff == stuff and not one.things and one.normal in (None, (0.0, -1.0, 0.0))
    )


def standing(layout: FaceLayout, low, high):
    """Outlines where they stand in the plane of the face, repeated over a box. [m]"""
    x, _, z = layout.origin
    found = []
    for i in range(int((low[0] - x) // layout.width) - 1, int((high[0] - x) // layout.width) + 2):
        for k in range(
            int((low[1] - z) // layout.height) - 1, int((high[1] - z) // layout.height) + 2
        ):
            if layout.repeats or (i == 0 and k == 0):
                shift = (x + i * layout.width, z + k * layout.height)
                found += [ring + shift for ring in layout.rings]
    return found


def shown(result):
    """What of the face shows, as the elevation draws it. [m]"""
    g = result.geometry
    f, d = g.frame, g.design
    face = Polygon(breast_ring(g, d.house.ceiling)).difference(Polygon(opening_ring(g)))
    hidden = [Polygon(ring) for ring, _ in jamb_ends(g)]
    if head_shows(g):
        hidden.append(Polygon(lintel_ring(g)))
    half = f.half_width + d.hearth.side
    if d.hearth.front > 0 and f.extension_top > 0:
        hidden.append(
            Polygon([(-half, -1), (half, -1), (half, f.extension_top), (-half, f.extension_top)])
        )
    return face.difference(unary_union(hidden)) if hidden else face


@pytest.mark.parametrize("bond", FACE_BONDS)
def test_as_many_bricks_are_seen_as_are_counted(bond):
    """The list counts by the area of the face; by area the bricks in the picture are the same to one
    in a hundred, and whole ones are fewer, whole and part ones more.
    """
    result = made({"brick.facing": "modular", "brick.facing_bond": bond})
    g, unit = result.geometry, facing_brick(result.design)
    region = shown(result)
    low, high = region.bounds[:2], region.bounds[2:]
    bricks = polygons(standing(front(result, "brick"), low, high))
    pieces = [b.intersection(region) for b in bricks[STRtree(bricks).query(region)]]
    seen = np.array([p.area for p in pieces if p.area > 1e-6])
    full = {round(b.area, 7) for b in bricks}
    names = g.once(shown_areas)
    stretcher = unit.length * unit.height
    laid = face_bond(unit, bond)
    area = sum(names.values())
    counted = area * (laid.stretchers + laid.headers)
    bare = laid.stretchers * stretcher + laid.headers * (laid.header - unit.joint) * unit.height
    assert seen.sum() == pytest.approx(area * bare, rel=0.01)
    whole = sum(any(abs(a - b) < 1e-7 for b in full) for a in seen)
    assert whole < counted < len(seen)
    if not laid.headers:
        ordered = sum(facing_of(g, n).volume * facing_of(g, n).laid.per_volume for n in names)
        assert seen.sum() / stretcher == pytest.approx(ordered, rel=0.01)


@pytest.mark.parametrize("face", ["brick", "tile"])
def test_courses_stand_on_the_levels_of_the_elevation(face):
    """No bed joint that is drawn runs through a unit, and no unit but between two of them."""
    result = made({"surround.face": face, "base.hearth_level": "10 in"})
    region = shown(result)
    outline = np.array(breast_ring(result.geometry, 2.4)) * 1000
    hearth = result.geometry.frame.hearth
    drawn = face_joints(result.geometry, [outline], [], (0.0, hearth * 1000), 1000.0) / 1000
    beds = np.unique(np.round(drawn[np.abs(np.ptp(drawn[..., 1], axis=1)) < 1e-9][:, 0, 1], 6))
    layout = front(result, face)
    rings = np.array(standing(layout, region.bounds[:2], (region.bounds[2], 2.4)))
    low, high = rings[..., 1].min(axis=1), rings[..., 1].max(axis=1)
    inside = (low > beds[0]) & (high < beds[-1])
    assert len(beds) > 10 and inside.sum() > 50
    for a, b in zip(low[inside], high[inside], strict=True):
        under = beds[beds <= a + 1e-9].max()
        over = beds[beds >= b - 1e-9].min()
        course = layout.height / len({round(v, 6) for v in np.array(layout.rings)[:, 0, 1]})
        assert over - under == pytest.approx(course, abs=2e-5)


def test_the_firebox_is_laid_as_it_is_counted():
    """Each face stands in the picture as often as the list counts it, with the same pieces."""
    result = made(FACES["herringbone"])
    lined = [one for one in face_layouts(result) if one.stuff == "firebrick" and one.normal]
    for face in lay_brickwork(result.geometry).layouts:
        counted = np.array([piece.area for piece in face.pieces])
        seen = [
            np.array([Polygon(ring).area for ring in one.rings[: len(counted)]]) for one in lined
        ]
        alike = [s for s in seen if len(s) == len(counted) and np.allclose(s, counted)]
        assert len(alike) == face.face.alike, face.face.name


def test_the_arch_shows_the_bricks_that_are_ordered():
    result = made(ARCHED)
    laid = laid_arch(result.geometry)
    arch = next(one for one in face_layouts(result) if one.things == ("arch",))
    assert len(arch.rings) * laid.deep == laid.count
    ring = Polygon(lintel_ring(result.geometry)).buffer(2e-3)
    for unit in standing(arch, (0, 0), (1, 1)):
        assert ring.contains(Polygon(unit))


def test_between_two_rings_of_an_arch_is_a_joint():
    """8 in on edge is two rings: half a joint is left out at either side of their seam, and none at the soffit and
    the back.
    """
    result = made(ARCHED)
    laid, ring = laid_arch(result.geometry), result.geometry.parts_by_name["arch"].adds[0]
    assert len(laid.rings) == 2
    low = ring.spring + ring.rise - ring.radius
    keys = [
        arch_units(ring, laid)[k.round // 2 + n]
        for k, n in zip(laid.rings, (0, laid.rings[0].round), strict=True)
    ]
    feet = [unit[:2, 1].mean() - low - ring.radius for unit in keys]
    heads = [unit[2:, 1].mean() - low - ring.radius for unit in keys]
    half = laid.unit.joint / 2
    assert [*feet, *heads] == pytest.approx(
        [0, ring.depth / 2 + half, ring.depth / 2 - half, ring.depth], abs=1e-9
    )


@pytest.mark.parametrize(
    ("width", "half"), [("28 in", 1.5), ("44 in", 1.5), ("47 in", 1.5), ("60 in", 1.5)]
)
def test_stones_are_laid_40_cm_past_the_corners_in_whole_half_meters(width, half):
    result = made(FACES["coursed"] | {"opening.width": width})
    stones = front(result, "stone face")
    assert (stones.origin[0], stones.width) == (-half, 2 * half)


@every_face
def test_outlines_are_such_as_the_painter_takes(changes):
    """Counter-clockwise, apart from one another; every stuff has a look, every direction is
    a unit vector and square to the other.
    """
    for layout in face_layouts(made(changes)):
        assert layout.stuff in stuffs()
        assert layout.width > 0 and layout.height > 0 and layout.rings
        shapes = [Polygon(ring) for ring in layout.rings]
        for shape in shapes:
            assert shape.is_valid and shape.exterior.is_ccw
        total = sum(shape.area for shape in shapes)
        assert unary_union(shapes).area == pytest.approx(total, rel=1e-6), layout.stuff
        assert total <= layout.width * layout.height * (1.0 + 1e-9) or not layout.repeats
        if layout.along:
            assert np.dot(layout.along, layout.up) == pytest.approx(0, abs=1e-12)
            for way in (layout.along, layout.up, layout.normal or layout.up):
                assert np.linalg.norm(way) == pytest.approx(1)
            if layout.normal:
                assert abs(np.dot(np.cross(layout.along, layout.up), layout.normal)) > 0.999


def test_a_slider_of_the_opening_moves_the_face_and_lays_nothing_anew():
    """What the page has painted stays: outlines are the same, only where they start differs."""
    before, after = made({}), made({"opening.width": "41 in", "base.hearth_level": "8 in"})
    one, two = front(before, "brick"), front(after, "brick")
    assert all((a == b).all() for a, b in zip(one.rings, two.rings, strict=True))
    assert one.origin != two.origin


@pytest.mark.parametrize("bond", ["running", "Flemish", "English"])
def test_a_corner_brick_shows_its_end_where_the_face_shows_its_length(bond):
    """Course by course at the right corner of the breast: what a brick shows in front and what it
    shows on the return are its length and its width, or a cut and its width.
    """
    result = made({"brick.facing": "modular", "brick.facing_bond": bond})
    unit, edge = facing_brick(result.design), result.geometry.frame.block_half
    face = front(result, "brick")
    side = next(
        one for one in face_layouts(result) if one.normal == (1.0, 0.0, 0.0) and not one.things
    )
    rings = np.array(standing(face, (edge - 0.3, face.origin[2]), (edge + 0.3, 2.0)))
    for ring in side.rings:
        (left, low), (right, _) = ring[0], ring[1]
        if left > 1e-9:
            continue
        level = low + side.origin[2]
        here = rings[
            (abs(rings[:, 0, 1] - level) < 1e-6)
            & (rings[:, 0, 0] < edge - 1e-6)
            & (rings[:, 1, 0] > edge - unit.joint - 1e-6)
        ]
        assert len(here) == 1
        width = min(edge, here[0, 1, 0]) - here[0, 0, 0]
        seen = right - left
        if width > unit.depth + 0.45 * INCH:
            assert seen == pytest.approx(unit.depth)
        elif width < unit.depth + 0.3 * INCH:
            assert seen == pytest.approx(unit.length)


def test_the_bands_of_a_rug_lie_one_inside_the_other_on_the_rug():
    scene = gather_scene(made({}))
    rug = next(thing for thing in scene.setting if thing.stuff == "rug")
    bands = next(one for one in scene.layouts if one.stuff == "rug")
    assert bands.things == (rug.key,)
    corner = np.array(bands.origin[:2])
    assert corner == pytest.approx(rug.points.min(axis=0)[:2])
    assert corner + (bands.width, bands.height) == pytest.approx(rug.points.max(axis=0)[:2])
    outlines = [Polygon(ring) for ring in bands.rings]
    assert len(outlines) > 3
    for outer, inner in zip(outlines, outlines[1:], strict=False):
        assert outer.contains(inner)


@settings(deadline=None, max_examples=32, suppress_health_check=list(HealthCheck))
@given(
    designs(),
    st.fixed_dictionaries(
        {
            "surround.face": st.sampled_from(["brick", "stone", "tile", "plaster"]),
            "surround.stone_bond": st.sampled_from(["coursed rubble", "random rubble"]),
            "brick.facing_bond": st.sampled_from(FACE_BONDS),
            "firebox.bond": st.sampled_from(["running", "basketweave", "herringbone 90"]),
            "breast.form": st.sampled_from(["shouldered", "straight", "flush"]),
        }
    ),
)
def test_any_design_is_laid_within_what_goes_over_the_wire(design, changes):
    """Outlines are told in 16-bit steps of a tenth of a millimeter. All patterns of a design, sent
    once, take less than 24 KiB beside those of the floors; a slider sends those that change.
    """
    patterns = {}
    for layout in face_layouts(assess(change(design, changes))):
        corners = np.concatenate(layout.rings)
        assert np.isfinite(corners).all() and np.isfinite(layout.origin).all()
        assert 0.01 < layout.width < 12 and 0.01 < layout.height < 12
        assert np.abs(corners).max() < 12
        if layout.stuff not in ("boards", "pine boards", "flags", "floor tile"):
            patterns[corners.round(4).tobytes()] = 4 * len(corners)
    assert sum(patterns.values()) < 24 * 1024


@pytest.mark.parametrize("level", ["6.2 in", "7 in"])
def test_a_raised_hearth_too_low_for_a_block_is_laid_with_none(level):
    """Nothing but mortar fits under it at the first level, a course of block at the second."""
    layouts = face_layouts(made({"base.hearth_level": level, "hearth.front": "2 in"}))
    front = [one for one in layouts if one.things == ("hearth extension base",)]
    assert len(front) == (level == "7 in")
    assert all(one.rings for one in layouts)
