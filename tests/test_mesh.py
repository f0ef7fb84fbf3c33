"""The triangles are the parts: closed, of the parts' exact volume, no larger, and open where the
parts are open.
"""

from collections import Counter
from itertools import pairwise
from math import atan2, cos

import numpy as np
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from shapely.geometry import Polygon as Shape
from shapely.ops import unary_union
from strategies import designs

from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.bodies import CHORDS, kept_inside, plan_rings, solid_body
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.convex import convex_parts
from fireplace_calc.geometry.first_moments import moments
from fireplace_calc.geometry.mesh import SMOOTHING, Mesh, meshes, not_covered, part_mesh
from fireplace_calc.geometry.parts import part as make_part
from fireplace_calc.geometry.polygons import chords, signed_area
from fireplace_calc.geometry.solids import Loft, prism, spans

FACETED = 0.0013
"""A 72-sided prism inside a cylinder: 1 - sin(5 deg) / (5 deg in rad) = 0.00127. Forty chords of a
half circle: 0.00103, of a flatter arch less. Mensuration.
"""
NOTHING = 1e-12
"""A part that has shrunk to a plane, like the shelf behind a back that leans up to the throat. [m3]
"""
FEW = settings(
    deadline=None,
    max_examples=10,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)
CASES = {
    "as it stands": {},
    "laid": {"method": "laid"},
    "modular": {"method": "modular"},
    "arch": {"opening.head": "segmental", "opening.rise": "5 in"},
    "half-round arch": {
        "opening.head": "segmental",
        "opening.rise": "18 in",
        "opening.width": "36 in",
    },
    "round, shifted": {"flue.shape": "round", "flue.size": "12", "flue.offset": "12 in"},
    "rectangular, shifted": {
        "flue.shape": "rectangular",
        "flue.size": "13x18",
        "flue.offset": "12 in",
        "flue.long_side": "front to back",
    },
}


def assert_closed(skin):
    """Each edge is run along once each way."""
    ways = Counter((int(f[k]), int(f[(k + 1) % 3])) for f in skin.faces for k in range(3))
    assert set(ways.values()) == {1}, skin.name
    assert all((b, a) in ways for a, b in ways), skin.name


def box_of(part):
    """From the solids' own corners; an arch from its radius."""
    boxes = []
    for s in part.adds:
        if isinstance(s, ArchRing):
            half = (s.radius + s.depth) * np.sin(s.half_angle)
            boxes.append(((-half, 0.0, s.bottom), (half, s.thickness, s.top)))
        else:
            corners = (
                [*s.lower, *s.upper] if isinstance(s, Loft) else [*s.cut(s.bottom), *s.cut(s.top)]
            )
            boxes.append(((*np.min(corners, axis=0), s.bottom), (*np.max(corners, axis=0), s.top)))
    return np.min([low for low, _ in boxes], axis=0), np.max([high for _, high in boxes], axis=0)


def surface(skin):
    a, b, c = (skin.points[skin.faces[:, k]] for k in range(3))
    return float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2)


def assert_is_the_part(part):
    skin = part_mesh(part)
    if part.volume < NOTHING:
        assert not len(skin.faces), part.name
        return
    assert_closed(skin)
    round_ = sum(s.volume for s in part.adds + part.cuts if not isinstance(s, Loft))
    slack = FACETED * round_ + SMOOTHING * surface(
        skin
    )  # no face stands farther off than the smoothing allows
    assert SMOOTHING * surface(skin) < 1e-3 * part.volume
    assert abs(skin.volume - part.volume) <= slack, part.name
    low, high = box_of(part)
    assert skin.points.min(axis=0) == pytest.approx(low, abs=2e-6), part.name
    assert skin.points.max(axis=0) == pytest.approx(high, abs=2e-6), part.name
    assert (skin.name, skin.material) == (part.name, part.material)


@pytest.mark.parametrize("told", CASES.values(), ids=CASES)
@pytest.mark.parametrize("which", ["boathouse", "plain"])
def test_a_skin_is_closed_and_holds_what_its_part_holds(which, told, boathouse):
    made = build_geometry(change(boathouse if which == "boathouse" else Design(), told))
    assert len(meshes(made)) == len(made.parts)
    for part in made.parts:
        assert_is_the_part(part)


@FEW
@given(designs())
def test_so_it_is_for_any_design(design):
    for part in build_geometry(design).parts:
        assert_is_the_part(part)


def test_straight_parts_are_off_by_nothing_but_the_growth_of_what_is_taken_away(boathouse):
    """Not even a hundred-thousandth: lofts are made of their own corners."""
    for part in build_geometry(boathouse).parts:
        if all(isinstance(s, Loft) for s in part.adds + part.cuts):
            assert part_mesh(part).volume == pytest.approx(part.volume, rel=1e-5)


def girth(skin, z):
    """Length of all the lines in which the level plane at ``z`` meets the skin. [m]"""
    over, total = skin.points[:, 2] - z, 0.0
    for face in skin.faces:
        ends = []
        for a, b in ((face[0], face[1]), (face[1], face[2]), (face[2], face[0])):
            if (over[a] > 0) != (over[b] > 0):
                ends.append(
                    skin.points[a]
                    + over[a] / (over[a] - over[b]) * (skin.points[b] - skin.points[a])
                )
        if ends:
            total += float(np.linalg.norm(ends[0] - ends[1]))
    return total


def outline_length(part, z):
    """Of the true level cut, without what is thinner than a hair. [m]"""
    adds, cuts = part.plan(z)
    left = unary_union([Shape(p).buffer(0) for p in adds]).difference(
        unary_union([Shape(p).buffer(1e-7, join_style=2) for p in cuts])
    )
    return left.buffer(-5e-6, join_style=2).buffer(5e-6, join_style=2).length


def under_the_curve(part):
    """How far the chords of the part's arches may lie under their curve, twice over: at the crown,
    where the curve is level, so little of height is much of width. [m]
    """
    arches = [s for s in part.adds + part.cuts if hasattr(s, "rise")]
    outer = [
        (s.radius + getattr(s, "depth", 0.0), atan2(s.span / 2, s.radius - s.rise)) for s in arches
    ]
    return 2 * max((r * (1 - cos(half / CHORDS)) for r, half in outer), default=0.0)


@FEW
@given(designs(), st.floats(0.02, 0.98))
def test_no_skin_is_left_across_an_opening(design, where):
    """A skin without thickness has no volume but a length where a level plane meets it; shapely
    draws the true outline.
    """
    for part in build_geometry(design).parts:
        skin = part_mesh(part)
        levels = sorted({z for s in part.adds + part.cuts for z in (s.bottom, s.top)})
        for low, high in pairwise(levels):
            if high - low > 1e-3:  # a wedge begins thinner than the smoothing
                z = low + (high - low) * where
                low_true, high_true = sorted(
                    (outline_length(part, z), outline_length(part, z + under_the_curve(part)))
                )
                found = girth(skin, z)
                assert low_true * (1 - 4e-3) - 1e-4 <= found <= high_true * (1 + 4e-3) + 1e-4, (
                    part.name,
                    z,
                )


@pytest.mark.parametrize("away", ["left half", "front half"])
@pytest.mark.parametrize(
    "told", [{}, CASES["arch"], CASES["round, shifted"]], ids=["as it stands", "arch", "shifted"]
)
def test_a_half_cut_away_leaves_closed_halves(away, told, boathouse):
    """The left half holds half of what is alike on both sides; nothing stands before the cut."""
    made = build_geometry(change(boathouse, told))
    halves = meshes(made, away)
    line, axis = (0.0, 0) if away == "left half" else (made.frame.flue_y, 1)
    for skin in halves:
        assert_closed(skin)
        assert skin.points[:, axis].min() >= line - 1e-9
    if away == "left half" and not made.frame.offset:
        for whole, half in zip(meshes(made), halves, strict=True):
            assert half.volume == pytest.approx(whole.volume / 2, rel=1e-6), whole.name
    else:
        assert 0.2 < sum(m.volume for m in halves) / sum(m.volume for m in meshes(made)) < 0.8


def test_edges_are_those_a_draughtsman_would_rule():
    """A box has twelve; a tube of 72 facets has its four rims sharp and its 144 facet lines soft."""
    parts = build_geometry(change(Design(), {"flue.shape": "round", "flue.size": "12"})).by_name
    footing = part_mesh(parts["footing"])
    assert len(footing.edges) == 12 and footing.sharp.all()
    seat = part_mesh(parts["transition"])  # a box with a round hole through it
    assert seat.sharp.sum() == 12 + 2 * 72 and (~seat.sharp).sum() == 72
    for a, b, left, right in seat.edges:
        assert a < b and runs(seat.faces[left], a, b) and runs(seat.faces[right], b, a)


def runs(face, a, b):
    """Whether the rim of a face goes from one point straight to another."""
    return (a, b) in {(face[k], face[(k + 1) % 3]) for k in range(3)}


def needle(scale, away):
    """A block 1 by 1 by 1, one edge of its top in two pieces, so that a face without any height
    closes the skin; and a corner on its right so near to an edge that a face there is a needle.
    """
    corners = [(x, y, z) for z in (0, 1) for y in (0, 1) for x in (0, 1)]  # 0 to 7
    corners += [(0.5, 0, 1), (1, 1e-3, 0.5)]  # on the edge 4 5; beside the edge 1 5
    faces = [
        *[(0, 2, 1), (1, 2, 3)],  # foot
        *[(0, 1, 5), (0, 5, 4)],  # front
        *[(2, 0, 4), (2, 4, 6), (3, 2, 6), (3, 6, 7)],  # left, back
        *[(1, 3, 9), (3, 7, 9), (7, 5, 9), (1, 9, 5)],  # right; the last is a needle
        *[(4, 8, 6), (8, 7, 6), (8, 5, 7)],  # top
        (4, 5, 8),  # no height at all
    ]
    return Mesh("needle", "brick", scale * np.array(corners, float) + away, np.array(faces))


@pytest.mark.parametrize("scale", [0.05, 1.0, 1e3])
@pytest.mark.parametrize("away", [0.0, 1e3])
def test_which_way_a_face_looks_depends_on_neither_size_nor_place(scale, away):
    """A needle of a thousandth of its length still has a way of its own, if no less than a hundredth
    of a millimeter; a face that has none takes that of the one along its length.
    """
    skin = needle(scale, scale * away)
    assert_closed(skin)
    left, front, up = np.eye(3)
    wanted = [*[-up] * 2, *[-front] * 2, *[-left] * 2, *[front] * 2, *[left] * 4, *[up] * 3]
    assert np.allclose(skin.normals[:15], wanted, atol=1e-6)
    assert np.allclose(skin.normals[15], -front, atol=1e-6)  # along the edge 4 5


def test_what_lies_inside_is_kept_and_what_lies_in_a_hole_is_not():
    """Squares of a meter; one inside whole comes back as it is, one over the rim is cut by hand."""

    def square(x, y, side=1.0):
        return ((x, y), (x + side, y), (x + side, y + side), (x, y + side))

    inside, over, out = square(1, 1), square(3.5, 1), square(9, 9)
    region = [square(0, 0, 2.0), square(2, 0, 2.0), square(0, 2, 2.0), square(2, 2, 2.0)]
    kept = kept_inside([inside, over, out], region)
    assert kept[0] is inside and len(kept) == 2
    assert signed_area(kept[1]) == pytest.approx(0.5)
    bitten = kept_inside([inside, over, out], region, [square(1.75, 1.5), square(3.5, 0, 0.5)])
    assert [signed_area(one) for one in bitten] == pytest.approx([1 - 0.25 * 0.5, 0.5])


def test_of_a_cut_piece_a_crumb_under_a_square_centimeter_is_left_out():
    """A square of 2 cm over the rim of a region by so much; whole inside, the smallest is kept."""
    region = [((0, 0), (1, 0), (1, 1), (0, 1))]

    def over(inside, side=0.02):
        return (
            (1 - inside, 0),
            (1 - inside + side, 0),
            (1 - inside + side, side),
            (1 - inside, side),
        )

    assert kept_inside([over(0.0048)], region) == []  # 0.96 cm2
    (kept,) = kept_inside([over(0.0055)], region)  # 1.1 cm2
    assert signed_area(kept) == pytest.approx(1.1e-4, rel=1e-3)
    whole = over(0.01, 0.005)
    assert kept_inside([whole], region) == [whole]


def test_what_is_left_open_in_a_window_piece_by_piece():
    """A window of 4 by 2 with a strip over its middle leaves two; a hole in a cover is open again,
    and a piece with a hole comes with its outline first.
    """

    def box(left, low, right, high):
        return ((left, low), (right, low), (right, high), (left, high))

    window = box(0, 0, 4, 2)
    halves = not_covered(window, [((box(1, -1, 3, 3),), ())], [])
    assert [len(rings) for rings in halves] == [1, 1]
    assert sorted(signed_area(rings[0]) for rings in halves) == pytest.approx([2.0, 2.0])
    again = not_covered(window, [((box(-1, -1, 5, 3),), (box(1, 0.5, 2, 1),))], [box(3, 0, 4, 1)])
    assert sorted(signed_area(rings[0]) for rings in again) == pytest.approx([0.5, 1.0])
    ((outer, hole),) = not_covered(window, [((box(1, 0.5, 2, 1),), ())], [])
    assert signed_area(outer) == pytest.approx(8.0) and signed_area(hole) == pytest.approx(-0.5)


def test_an_arch_has_its_chords():
    ring = part_mesh(build_geometry(change(Design(), CASES["arch"])).by_name["arch"])
    assert len(ring.points) == 4 * (CHORDS + 1)


def test_a_part_that_stays_is_not_made_again(boathouse):
    """So a slider that moves the chimney does not cut the firebox anew."""
    from fireplace_calc.geometry.mesh import part_body

    part_body.cache_clear()
    meshes(build_geometry(boathouse))
    made = part_body.cache_info().misses
    meshes(build_geometry(change(boathouse, {"flue.sections": boathouse.flue.sections + 1})))
    again = part_body.cache_info().misses - made
    assert 0 < again < len(build_geometry(boathouse).parts) / 2


def test_an_outline_with_a_rebate_keeps_its_volume():
    """A hull would fill the rebate: 2,040 for the U of a throat's back piece. In cubic inches."""
    throat = ((0, 0), (5, 0), (5, 5.25), (43, 5.25), (43, 0), (48, 0), (48, 8.5), (0, 8.5))
    wall = ((4.875, 0), (9, 0), (9, 3), (5, 23.75), (1.5, 23.75), (1.5, 20), (0, 20))
    for outline, wanted in ((throat, 5 * 208.5), (wall, 5 * 117.875)):
        for ring in (outline, outline[::-1]):
            made = make_part("a piece", "refractory", [prism(0.0, 5.0, ring)])
            assert made.volume == pytest.approx(wanted)
            assert part_mesh(made).volume == pytest.approx(wanted, rel=1e-9)


def test_a_line_through_a_rebated_outline_runs_in_and_out_twice():
    throat = ((0, 0), (5, 0), (5, 5.25), (43, 5.25), (43, 0), (48, 0), (48, 8.5), (0, 8.5))
    side = tuple((y, x) for x, y in throat)
    assert chords(side, 1.0) == [(0.0, 5.0), (43.0, 48.0)]
    assert spans(prism(0.0, 1.0, throat), 0.5) == [(5.25, 8.5)]


@pytest.mark.parametrize(
    "ring",
    [
        ((0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)),
        ((4.875, 0), (9, 0), (9, 3), (5, 23.75), (1.5, 23.75), (1.5, 20), (0, 20)),
        ((0, 0), (5, 0), (5, 5.25), (43, 5.25), (43, 0), (48, 0), (48, 8.5), (0, 8.5)),
        ((0, 0), (4, 0), (4, 4), (0, 4), (0, 3), (3, 3), (3, 1), (0, 1)),
        ((0, 0), (2, 0), (2, 1), (0, 1)),
    ],
)
@pytest.mark.parametrize("turn", [1, -1])
def test_convex_parts_are_the_outline_without_overlap(ring, turn):
    """By shapely: together the outline, and no two of them share anything but a side."""
    parts = [Shape(p) for p in convex_parts(ring[::turn])]
    whole = Shape(ring)
    assert sum(p.area for p in parts) == pytest.approx(whole.area)
    assert unary_union(parts).symmetric_difference(whole).area == pytest.approx(0, abs=1e-9)
    assert all(p.convex_hull.area == pytest.approx(p.area) for p in parts)


def moments_by_tetrahedra(body):
    """Volume and first moments of a closed body, summed over tetrahedra from the origin to each of
    its triangles: a quarter of the sum of the corners is a tetrahedron's middle. Mensuration.
    """
    mesh = body.to_mesh64()
    a, b, c = mesh.vert_properties[:, :3][mesh.tri_verts].swapaxes(0, 1)
    sixth = np.einsum("ij,ij->i", a, np.cross(b, c)) / 6
    return np.array([sixth.sum(), *(sixth[:, None] * (a + b + c) / 4).sum(axis=0)])


@pytest.mark.parametrize("changes", CASES.values(), ids=CASES.keys())
def test_middles_of_mass_are_those_of_the_triangles(changes):
    """Of every solid that anything is built of or cut out with, and of what of it lies over a level
    in it: its middle is within half a thousandth of its size of the triangles' own. An arch stays
    whole.
    """
    made = build_geometry(change(Design(), changes))
    solids = {s for part in (*made.parts, *made.voids) for s in (*part.adds, *part.cuts)}
    for solid in solids:
        body = solid_body(solid)
        if abs(body.volume()) < 1e-7:
            continue
        levels = [None] if isinstance(solid, (ArchRing, ArchVoid)) else [None, 0.3, 0.8]
        for share in levels:
            level = None if share is None else solid.bottom + share * (solid.top - solid.bottom)
            over = body if level is None else body.trim_by_plane((0, 0, 1), level)
            volume, *middle = moments(make_part("one", "brick", [solid]), level)
            wanted = moments_by_tetrahedra(over)
            low, high = np.reshape(over.bounding_box(), (2, 3))
            assert volume == pytest.approx(wanted[0], rel=2 * FACETED)
            off = np.abs(np.array(middle) / volume - wanted[1:] / wanted[0])
            assert (off <= 5e-4 * (high - low)).all(), (solid, share)


@pytest.mark.parametrize("turn", [1, -1])
def test_a_tee_is_its_stem_and_its_head(turn):
    stem = ((0, 0), (1, 0), (1, 2), (0, 2))
    head = ((0, 2), (1, 2), (3, 2), (3, 3), (-2, 3), (-2, 2))
    tee = ((0, 0), (1, 0), (1, 2), (3, 2), (3, 3), (-2, 3), (-2, 2), (0, 2))

    def from_the_first(ring):
        at = ring.index(min(ring))
        return ring[at:] + ring[:at]

    parts = [from_the_first(part) for part in convex_parts(tee[::turn])]
    assert sorted(parts) == sorted([from_the_first(stem), from_the_first(head)])


def test_corners_along_a_leaning_side_are_no_parts_of_their_own():
    """Seven corners that a tape found along one line, exact to the last bit or not: once all else is
    cut off, no ear is left among them.
    """
    corners = [0.0325, 0.12, 0.13, 0.14, 0.145, 0.2025, 0.21]
    side = [(0.66 * t, 3.28 * t) for t in corners]
    ring = ((-0.165, 0.638), (-0.925, 0.616), *side)
    parts = [p for p in convex_parts(ring) if signed_area(p) > 1e-12]
    assert len(parts) == 2
    assert sum(map(signed_area, parts)) == pytest.approx(signed_area(ring), abs=1e-15)


@pytest.mark.parametrize("turn", [1, -1])
def test_a_notch_of_a_millimeter_is_kept_among_convex_parts(turn):
    ring = ((0, 0), (1, 0), (1, 1), (0.501, 1), (0.5005, 0.999), (0.5, 1), (0, 1))
    parts = [Shape(p) for p in convex_parts(ring[::turn])]
    assert sum(p.area for p in parts) == pytest.approx(1 - 5e-7, abs=1e-9)
    assert unary_union(parts).symmetric_difference(Shape(ring)).area < 1e-9


@pytest.mark.parametrize("turn", [1, -1])
def test_a_solid_between_a_notched_outline_and_a_plain_one_keeps_its_volume(turn):
    """An L below, of 3, and the same with its corner cut across above, of 3-1/2: by Simpson's rule."""
    low = ((0, 0), (2, 0), (2, 1), (1, 1), (1, 2), (0, 2))
    high = ((0, 0), (2, 0), (2, 1), (1.5, 1.5), (1, 2), (0, 2))
    for lower, upper in ((low, high), (high, low)):
        solid = Loft(0.0, 3.0, lower[::turn], upper[::turn])
        middle = abs(
            signed_area(
                [((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(low, high, strict=True)]
            )
        )
        wanted = 3.0 * (3.0 + 4 * middle + 3.5) / 6
        assert solid.volume == pytest.approx(wanted)
        assert solid_body(solid).volume() == pytest.approx(wanted, rel=1e-9)


def test_a_level_cut_has_its_holes_and_what_runs_into_each_other_is_one():
    """A block of 4 by 2 with a hole of 1 by 1, and a second block that laps over its end by 1."""

    def box(left, low, right, high):
        return prism(0.0, 1.0, ((left, low), (right, low), (right, high), (left, high)))

    made = make_part("one", "brick", [box(0, 0, 4, 2), box(3, 0, 6, 2)], [box(1, 0.5, 2, 1.5)])
    rings = sorted(map(signed_area, plan_rings(made, 0.5)))
    assert rings == pytest.approx([-1.0, 12.0])
    assert (
        plan_rings(make_part("two", "brick", [box(0, 0, 4, 2)]), 0.5)[0][0] in box(0, 0, 4, 2).lower
    )
    assert plan_rings(made, 2.0) == []


@pytest.mark.parametrize("splay", [0.1, 0.33, 0.6])
def test_the_middle_of_the_air_under_a_splayed_arch_is_its_integral(splay):
    """By scipy, slice by slice from the face to the back: a segment of 1 m over 30 cm of rise."""
    void = ArchVoid(0.5, 0.3, 1.0, 0.4, splay, 0.1)
    radius, flat = void.radius, void.radius - void.rise

    def slice_(y, power):
        half = 0.5 - splay * y
        return quad(lambda x: ((radius**2 - x * x) ** 0.5 - flat) ** power / power, -half, half)[0]

    volume = quad(lambda y: slice_(y, 1), 0, 0.4)[0]
    found, _, deep, up = moments(make_part("one", "air", [void]))
    assert found == pytest.approx(volume, rel=1e-9)
    assert deep / volume == pytest.approx(
        0.1 + quad(lambda y: y * slice_(y, 1), 0, 0.4)[0] / volume, rel=1e-7
    )
    assert up / volume == pytest.approx(
        0.5 + quad(lambda y: slice_(y, 2), 0, 0.4)[0] / volume, rel=1e-7
    )


@pytest.mark.parametrize("corners", [6, 9, 14])
@pytest.mark.parametrize("seed", range(4))
def test_no_two_convex_parts_would_be_convex_together(corners, seed):
    """Every side between two parts is needed: Hertel and Mehlhorn, 1983."""
    lot = np.random.default_rng(seed)
    turns = np.sort(lot.uniform(0, 2 * np.pi, corners))
    ring = [
        (r * np.cos(t), r * np.sin(t))
        for r, t in zip(lot.uniform(0.4, 2, corners), turns, strict=True)
    ]
    if not Shape(ring).is_valid:
        pytest.skip("an outline that crosses itself")
    parts = convex_parts(tuple((float(x), float(y)) for x, y in ring))
    assert all(len(set(part)) == len(part) > 2 for part in parts)
    assert sum(map(signed_area, parts)) == pytest.approx(Shape(ring).area)
    for n, one in enumerate(parts):
        for other in parts[n + 1 :]:
            if len(set(one) & set(other)) == 2:
                both = unary_union([Shape(one), Shape(other)])
                assert both.convex_hull.area > both.area + 1e-9
