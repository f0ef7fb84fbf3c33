"""Our own cutting of polygons against shapely, on random shapes."""

from math import cos, pi, sin

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

from fireplace_calc.geometry.polygons import area, box, chord, cut_off, joined, overlap, tidy

NUMBERS = st.floats(-2, 2).map(lambda x: round(x, 3))
POINTS = st.tuples(NUMBERS, NUMBERS)


@st.composite
def rings(draw):
    """A convex ring, counter-clockwise: corners of an ellipse, at angles of their own."""
    turns = sorted(draw(st.sets(st.integers(0, 35), min_size=3, max_size=8)))
    wide, deep, (x, y) = draw(st.floats(0.1, 2)), draw(st.floats(0.1, 2)), draw(POINTS)
    made = tuple((x + wide * cos(t * pi / 18), y + deep * sin(t * pi / 18)) for t in turns)
    assume(Polygon(made).area > 1e-4)
    return made


def same(ours, theirs):
    """Alike in area, and nothing of one lies outside the other."""
    if len(ours) < 3 or theirs.is_empty:
        return theirs.area < 1e-9 and (len(ours) < 3 or area(tuple(ours)) < 1e-9)
    # on a grid: two that differ by the last bit alone have for GEOS nothing in common
    return Polygon(ours).symmetric_difference(theirs, grid_size=1e-12).area < 1e-9


@given(rings())
def test_area(ring):
    assert area(ring) == pytest.approx(Polygon(ring).area, abs=1e-14)
    assert area(ring[::-1]) == pytest.approx(area(ring), abs=1e-14)


@given(rings(), rings())
def test_overlap_of_convex_rings(ring, zone):
    assert same(overlap(ring, zone), Polygon(ring).intersection(Polygon(zone)))


@st.composite
def stars(draw):
    """A ring with corners that point inward: some far from the middle, some near."""
    reach = draw(st.lists(st.floats(0.2, 2), min_size=5, max_size=10))
    turns = [2 * pi * k / len(reach) for k in range(len(reach))]
    return [(r * cos(t), r * sin(t)) for r, t in zip(reach, turns, strict=True)]


@given(stars(), rings())
def test_what_is_cut_need_not_be_convex(star, zone):
    """Where the rest falls into pieces, ours hang together by lines without area."""
    common = Polygon(star).intersection(Polygon(zone)).area
    found = overlap(star, zone)
    assert (area(tuple(found)) if found else 0.0) == pytest.approx(common, abs=1e-9)


@example(
    (
        (0.984807753012208, 0.17364817766693033),
        (0.766044443118978, 0.6427876096865393),
        (-0.7660444431189783, -0.6427876096865389),
    ),
    (0.0, -0.938),
    (0.0, 0.0),
)
@given(rings(), POINTS, POINTS)
def test_cut_off_keeps_what_lies_left(ring, a, b):
    length = ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
    assume(length > 0.01)
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    left = (-along[1], along[0])
    far = [
        (a[0] + s * 99 * along[0] + t * 99 * left[0], a[1] + s * 99 * along[1] + t * 99 * left[1])
        for s, t in ((-1, 0), (1, 0), (1, 1), (-1, 1))
    ]
    assert same(cut_off(ring, a, b), Polygon(ring).intersection(Polygon(far)))


@given(rings(), st.lists(st.tuples(st.integers(0, 7), st.floats(0.1, 0.9)), max_size=5))
def test_tidy_leaves_the_shape_and_takes_what_lies_on_its_sides(ring, extra):
    more = list(ring)
    for side, share in extra:
        k = side % len(more)
        (ax, ay), (bx, by) = more[k - 1], more[k]
        more.insert(k, (ax + share * (bx - ax), ay + share * (by - ay)))
        more.insert(k, more[k])
    kept = tidy(more)
    assert set(kept) <= set(more) and len(kept) <= len(ring)
    assert same(kept, Polygon(ring))


def test_tidy_of_what_has_no_area():
    assert tidy(((0, 0), (1, 1))) == ()
    assert tidy(((0, 0), (1, 1), (2, 2), (1, 1))) == ()


@given(NUMBERS, NUMBERS, st.floats(0.1, 2), st.floats(0.1, 2), st.floats(0.1, 1), st.floats(0.1, 1))
def test_joined_is_the_union_where_they_meet_along_a_line(x, u, wide, long, deep, high):
    lower, upper = box(x, x + wide, -deep, 0.0), box(u, u + long, 0.0, high)
    meets = min(x + wide, u + long) - max(x, u)
    assume(abs(meets) > 1e-6)
    found = joined(lower, upper, 0.0)
    if meets < 0:
        assert found is None
    else:
        assert same(found, unary_union([Polygon(lower), Polygon(upper)]))


@given(rings(), NUMBERS)
def test_chord(ring, x):
    assume(all(abs(x - px) > 1e-6 for px, _ in ring))
    found = Polygon(ring).intersection(LineString([(x, -9), (x, 9)]))
    if found.is_empty:
        assert chord(ring, x) is None
    else:
        assert chord(ring, x) == pytest.approx((found.bounds[1], found.bounds[3]), abs=1e-9)
