"""What of a set is seen from one side, held against rays through its triangles.

``SETS=200 pytest tests/test_visible.py`` tries more random sets, by hand.
"""

import os
from math import hypot, radians

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from manifold3d import CrossSection, Manifold
from sampled import sampled
from set_strategies import random_set, stood
from shapely.geometry import Polygon as Shape
from shapely.geometry import box
from shapely.ops import unary_union

from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.sections import contact, underside
from fireplace_calc.geometry.visible.faces import FlatFace, _front, hidden, meeting, nearer
from fireplace_calc.geometry.visible.stages import Stages
from fireplace_calc.geometry.visible.viewpoint import CORNER, FRONT, SECTION, Viewpoint

COUNT = int(os.environ.get("SETS", "3"))
EYES = {
    "front": FRONT,
    "section": SECTION,
    "corner": CORNER,
    "above": Viewpoint(0.0, radians(90)),
    "behind": Viewpoint(radians(150), radians(20)),
}


def grown(seed, eye):
    assembly = stood(random_set(seed))
    order = [s.placed for s in order_of_setting(assembly) if s.placed]
    return assembly, order, Stages(assembly, order, eye)


def triangles(assembly, order, eye):
    """Every triangle of pieces and beds on paper with its depth, and whose it is."""
    found, names = [], []
    for one in order:
        below = assembly.by_lift[one.lift - 1] if one.lift else ()
        solids = [body(one.piece)]
        for bed in [contact(one.piece, b.piece) for b in below] or [underside(one.piece)]:
            if not bed.is_empty():
                solids.append(bed.extrude(one.bed).translate((0, 0, -one.bed)))
        for solid in solids:
            placed = solid.translate((0, 0, one.level))
            if eye.half:
                placed = placed.trim_by_plane((-1, 0, 0), 0)
            mesh = placed.to_mesh64()
            corners = mesh.vert_properties[mesh.tri_verts] @ eye.axes.T
            found.append(corners)
            names += [one.name] * len(corners)
    return np.concatenate(found), names


def first_met(corners, names, u, v):
    """Whose triangle a line of sight meets first; none where it meets nothing, or an edge."""
    a, b, c = (corners[:, k, :2] for k in range(3))

    def turn(p, q):
        return (q[:, 0] - p[:, 0]) * (v - p[:, 1]) - (q[:, 1] - p[:, 1]) * (u - p[:, 0])

    w = np.stack([turn(b, c), turn(c, a), turn(a, b)], 1)
    whole = w.sum(axis=1)
    inside = (np.abs(whole) > 1e-12) & ((w * np.sign(whole)[:, None]) > 0).all(axis=1)
    rows = np.flatnonzero(inside)
    if not len(rows):
        return None
    depth = (w[rows] * corners[rows, :, 2]).sum(axis=1) / whole[rows]
    return names[rows[np.argmin(depth)]]


def holds(part, u, v):
    """Whether a point lies in a part, by counting sides to its right."""
    crossings = 0
    for ring in part.rings:
        a, b = ring, np.roll(ring, -1, axis=0)
        over = (a[:, 1] <= v) != (b[:, 1] <= v)
        with np.errstate(divide="ignore", invalid="ignore"):
            at = a[:, 0] + (v - a[:, 1]) / (b[:, 1] - a[:, 1]) * (b[:, 0] - a[:, 0])
        crossings += int((over & (u < at)).sum())
    return crossings % 2 == 1


@pytest.mark.parametrize("eye", sampled(EYES, 2))
@pytest.mark.parametrize("seed", sampled(range(COUNT), 1))
def test_a_line_of_sight_meets_what_is_drawn_there(seed, eye):
    assembly, order, stages = grown(seed, EYES[eye])
    rng = np.random.default_rng(seed)
    for count in (len(order) // 2, len(order)):
        corners, names = triangles(assembly, order[:count], EYES[eye])
        low, high = corners[..., :2].min(axis=(0, 1)), corners[..., :2].max(axis=(0, 1))
        parts, wrong = stages.seen(count), 0
        for u, v in rng.uniform(low, high, (150, 2)):
            there = {p.name for p in parts if holds(p, u, v)}
            met = first_met(corners, names, u, v)
            wrong += there != ({met} if met else set())
        # A point on a joint's very edge may fall either way.
        assert wrong <= 1, f"{wrong} of 150"


@pytest.mark.parametrize("seed", sampled(range(COUNT), 1))
def test_what_is_cut_is_the_pieces_own_section(seed):
    """Pieces laid on their side and sliced at the center line, by manifold3d."""
    _, order, stages = grown(seed, SECTION)
    for one in order:
        lying = body(one.piece).rotate((0, 90, 0))
        box = body(one.piece).bounding_box()
        if not box[0] < -1e-4 < box[3]:
            continue
        wanted = lying.slice(1e-7).area()
        drawn = [p for p in stages.seen(len(order)) if p.name == one.name and p.cut]
        found = sum(_area(r) for p in drawn if p.kind == "piece" for r in p.rings)
        assert found == pytest.approx(wanted, abs=1e-6)


def _area(ring):
    x, y = ring.T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)


def test_a_stage_shows_no_piece_that_does_not_stand():
    _, order, stages = grown(3, CORNER)
    assert stages.seen(0) == ()
    for count in range(1, len(order) + 1):
        shown = {p.name for p in stages.seen(count)}
        assert shown <= {p.name for p in order[:count]} and order[count - 1].name in shown
    assert stages.seen(4) is stages.seen(4)


@pytest.mark.whole
def test_a_stage_asked_for_first_is_the_one_reached_step_by_step():
    _, order, stages = grown(2, CORNER)
    _, _, other = grown(2, CORNER)
    last = [[r.tolist() for r in p.rings] for p in other.seen(len(order))]
    for count in range(len(order)):
        stages.seen(count)
    assert [[r.tolist() for r in p.rings] for p in stages.seen(len(order))] == last


def test_the_bounds_hold_everything_that_is_seen():
    for eye in EYES.values():
        _, order, stages = grown(1, eye)
        x0, y0, x1, y1 = stages.bounds()
        drawn = np.concatenate([r for p in stages.seen(len(order)) for r in p.rings])
        assert (drawn.min(axis=0) > np.array([x0, y0]) - 1e-6).all()
        assert (drawn.max(axis=0) < np.array([x1, y1]) + 1e-6).all()
        assert drawn.max(axis=0)[1] == pytest.approx(y1, abs=0.06)


@pytest.mark.parametrize("eye", sampled(EYES, 2))
def test_what_is_seen_covers_the_shadow_once(eye):
    """No face lies behind another, of the same piece neither: together they are as large as the
    shadow of all triangles, which shapely unites.
    """
    assembly, order, stages = grown(1, EYES[eye])
    count = len(order) // 2
    corners, _ = triangles(assembly, order[:count], EYES[eye])
    flat = [Shape(t[:, :2]) for t in corners]
    shadow = unary_union([t.buffer(1e-7) for t in flat if t.area > 1e-10])
    drawn = sum(_area(r) for part in stages.seen(count) for r in part.rings)
    assert drawn == pytest.approx(shadow.area, rel=1e-4)


SLOPE = st.floats(-3, 3).filter(lambda slope: abs(slope) > 1e-3)
PLACE = st.floats(-1, 1)


@settings(deadline=None, max_examples=300)
@given(SLOPE, SLOPE, SLOPE, SLOPE, PLACE, PLACE, PLACE)
def test_what_of_a_face_lies_before_another_is_on_the_near_side_of_where_they_cross(
    a, b, d, e, c, over, up
):
    """Two squares of 2, one moved over the other: shapely's half plane, cut out of the first."""

    def face(x, y, plane):
        outline = CrossSection([[(x, y), (x + 2, y), (x + 2, y + 2), (x, y + 2)]])
        return FlatFace(outline, outline.bounds(), plane, (0.0, 0.0, -1.0), 0, "piece", False)

    one, other = face(0.0, 0.0, (a, b, 0.0)), face(over, up, (d, e, c))
    shared = box(max(0.0, over), max(0.0, up), min(2.0, 2 + over), min(2.0, 2 + up))
    along, rise = d - a, e - b  # the other lies so much deeper at each step right and up
    assume(hypot(along, rise) > 1e-3)
    far, where = 50.0, -c / (along**2 + rise**2)
    foot, way = np.array([along, rise]) * where, np.array([along, rise]) / hypot(along, rise)
    side = np.array([-way[1], way[0]])
    ends = [foot - far * side, foot + far * side]
    before = Shape([*ends, ends[1] + far * way, ends[0] + far * way])
    kept = nearer(one, other)
    found = 0.0 if kept is None else (kept ^ CrossSection([[*shared.exterior.coords][:-1]])).area()
    assert found == pytest.approx(shared.intersection(before).area, abs=1e-3)


@pytest.mark.parametrize("places", [(2.5, 0.0), (0.0, -2.5), (-2.0, 0.5), (0.5, 2.0), (3.0, 3.0)])
def test_faces_beside_or_over_each_other_hide_nothing(places):
    """Two squares of 2, one of them a meter before the other: where they do not lie over each other
    on paper both stay whole; else the near one takes what they share.
    """

    def face(x, y, depth):
        outline = CrossSection([[(x, y), (x + 2, y), (x + 2, y + 2), (x, y + 2)]])
        plane = (0.0, 0.0, depth)
        return FlatFace(outline, outline.bounds(), plane, (0.0, 0.0, -1.0), 0, "piece", False)

    near, far, half = face(*places, 0.0), face(0.0, 0.0, 1.0), face(1.0, 0.5, 0.5)
    assert nearer(near, far) is None and nearer(far, near) is None
    assert hidden(far, [near]) is far
    assert meeting([near, half], [far]).ravel().tolist() == [False, True]
    assert hidden(far, [near, half]).outline.area() == pytest.approx(4.0 - 1.5)
    assert hidden(half, [far]) is half


@pytest.mark.parametrize("eye", EYES)
def test_a_face_lies_in_the_plane_that_it_is_told_to_lie_in(eye):
    """A leaning block, away from nought: every corner of a face on paper, with the depth its plane gives
    there, is a spot of that face of the block, farther out along its normal than all the rest.
    """
    looks = EYES[eye]
    block = Manifold.hull_points(
        [
            (1, 2, 3),
            (2, 2, 3),
            (2, 4, 3),
            (1, 4, 3),
            (1.2, 2.3, 5),
            (1.7, 2.3, 5),
            (1.7, 3.6, 5),
            (1.2, 3.6, 5),
        ]
    )
    corners = block.to_mesh64().vert_properties[:, :3]
    faces = _front(block, looks, "piece")
    assert faces
    for face in faces:
        normal, (a, b, c) = np.array(face.normal), face.plane
        for u, v in face.outline.to_polygons()[0]:
            spot = looks.axes.T @ (u, v, a * u + b * v + c)
            assert normal @ spot == pytest.approx((corners @ normal).max(), abs=1e-6)
            assert np.abs(corners - spot).max(axis=1).min() < 1e-6
