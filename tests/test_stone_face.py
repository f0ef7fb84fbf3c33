"""Stones of a face in both bonds: a wall is all stone and joint, none overlap, and the same stones
stand however large the wall is.
"""

from functools import cache
from math import sin

import numpy as np
import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union
from shapely.strtree import STRtree

from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.seen import coursed_rubble, random_rubble
from fireplace_calc.brickwork.seen.stone_face import stone_joints, stones
from fireplace_calc.design.surround import STONE_BONDS

ENDS = (-1.0, 1.0, 0.0, 2.0)
JOINT = {"coursed rubble": coursed_rubble.JOINT, "random rubble": random_rubble.JOINT}
bonds = pytest.mark.parametrize("bond", STONE_BONDS)


@bonds
def test_stones_lie_apart_and_fill_the_face_but_for_the_joints(bond):
    """By shapely; 0.7 to 0.95 of a rubble face is stone (the list's own mortar share is a quarter
    at most).
    """
    shapes = [Polygon(ring) for ring in stones(bond, ENDS)]
    assert all(shape.is_valid and shape.exterior.is_ccw for shape in shapes)
    tree = STRtree(shapes)
    for k, shape in enumerate(shapes):
        for other in tree.query(shape):
            assert other == k or shape.intersection(shapes[other]).area < 1e-9
    left, right, bottom, top = ENDS
    face = Polygon([(left, bottom), (right, bottom), (right, top), (left, top)])
    assert 0.75 < unary_union(shapes).intersection(face).area / face.area < 0.96


@bonds
def test_the_drawn_joints_run_between_the_stones(bond):
    """No drawn joint goes through a stone, and every one lies within a joint's width of one."""
    shapes = STRtree([Polygon(ring).buffer(-1e-6) for ring in stones(bond, (-1.6, 1.6, -0.6, 2.6))])
    middles = stone_joints(bond, ENDS).mean(axis=1)
    from shapely import points

    spots = points(middles)
    assert len(shapes.query(spots, predicate="within")[0]) == 0
    near = shapes.query(spots, predicate="dwithin", distance=JOINT[bond])
    assert set(near[0]) == set(range(len(spots)))


@bonds
def test_a_larger_wall_keeps_the_stones_of_a_smaller_one(bond):
    few = {tuple(np.round(ring, 6).ravel()) for ring in stones(bond, (-0.8, 0.7, 0.1, 1.4))}
    many = {tuple(np.round(ring, 6).ravel()) for ring in stones(bond, (-1.9, 2.3, -0.9, 3.1))}
    assert len(few) > 20 and few <= many


def test_random_stones_are_of_sizes_that_a_mason_handles():
    """From a hand's width to about two feet: no chips, and none that two men have to set."""
    for ring in random_rubble.random_rubble():
        wide, high = np.ptp(ring, axis=0)
        assert 4 * INCH < wide < 26 * INCH and 3 * INCH < high < 20 * INCH
        assert 4 <= len(ring) <= 9


def test_coursed_stones_are_of_sizes_that_a_mason_handles():
    """8 to 20 in with their joints, in courses of 5 to 9 in; only a tall course is split, so that
    no half is thinner than two fingers.
    """
    for ring in stones("coursed rubble", ENDS):
        wide, high = np.ptp(ring, axis=0)
        assert 7 * INCH < wide < 20.5 * INCH and 2 * INCH < high < 9.2 * INCH


@pytest.mark.parametrize("left", [-0.01, -2.39, -2.41, -4.79, 0.01])
def test_random_stones_come_as_far_as_an_end_just_past_where_the_pattern_begins_anew(left):
    """It begins anew every 2.4 m, and its stones reach past there."""
    laid = random_rubble._around(random_rubble._patch(), left, left + 1.0, 0.01, 1.0)
    wall = Polygon([(left, 0.01), (left + 1.0, 0.01), (left + 1.0, 1.0), (left, 1.0)])
    assert wall.difference(unary_union([Polygon(ring) for ring in laid])).area < 1e-6


@bonds
def test_every_joint_is_drawn_once(bond):
    """The side of one stone is that of the next, whichever way round each of them runs."""
    ends = np.sort(np.round(stone_joints(bond, ENDS), 4).view("f8,f8").reshape(-1, 2), axis=1)
    assert len(ends) == len({tuple(map(tuple, pair)) for pair in ends.tolist()})


def fills(values, low, high):
    """Whether values drawn by lot stay between two bounds, and come within a twentieth of both."""
    slack = 0.05 * (high - low)
    assert low - 1e-9 <= values.min() <= low + slack, (values.min(), low)
    assert high - slack <= values.max() <= high + 1e-9, (values.max(), high)


def test_joints_of_coursed_rubble_stray_no_farther_than_they_may():
    """24 m by 24: stones of 8 to 20 in, 14 in the mean; bed and head joints 0.3 in off their line at
    most; only courses over 6-1/2 in have split stones, a quarter of theirs, near half their height.
    """
    foot, head, under, over, middle, split = coursed_rubble._laid(6, -6, 6)
    waver, bed, courses = 0.3 * INCH, [0.0], [7.0, 5.0, 8.5, 6.0, 9.0, 5.5, 7.5]
    while bed[-1] < 12.3:
        bed.append(bed[-1] + courses[len(bed) % 7 - 1] * INCH)
    levels = {round(z, 6) for z in bed if z <= 12.0}
    line = (under.min(axis=1) + under.max(axis=1)) / 2
    assert all(np.abs(line - z).min() < 0.1 * waver for z in levels)
    fills((foot - head) / waver, -2.0, 2.0)
    wide = np.diff((foot + head) / 2)
    assert wide.mean() == pytest.approx(14 * INCH, rel=0.01)
    assert 7.4 * INCH < wide.min() < 8.2 * INCH and 19.8 * INCH < wide.max() < 20.6 * INCH
    first = ((foot + head) / 2)[:, foot.shape[1] // 2]
    assert np.abs(first).max() < 4.3 * INCH and first.min() < -2 * INCH and first.max() > 2 * INCH
    np.testing.assert_allclose(over[:-1], under[1:], atol=1e-9)
    high = np.array([courses[k % 7] for k in range(-7 * 7, 7 * 8)]) * INCH
    tall = np.median(over - under, axis=1)
    assert {round(float(h) / INCH, 0) for h in tall} <= {5.0, 6.0, 7.0, 8.0, 9.0}
    assert high.min() - waver < (over - under).min()
    fills(((middle - under[:, :-1]) / (over - under)[:, :-1])[split], 0.42, 0.58)
    assert not split[tall < 6.4 * INCH].any()
    assert split[tall > 6.6 * INCH].mean() == pytest.approx(0.28, abs=0.02)


def test_each_random_stone_lies_nearest_to_its_own_middle():
    """By distance squared less its weight, on a patch that closes on itself: cells fill the patch, and
    a spot of a cell is nearer to its middle than to any other or to any of their images.
    """
    lot = np.random.default_rng(3)
    size = np.array([2.0, 1.5])
    grid = np.stack(np.meshgrid(np.arange(8), np.arange(5)), -1).reshape(-1, 2)
    middles, weight = (grid + 0.6 * lot.random((40, 2))) * (0.25, 0.3), 0.01 * lot.random(40)
    cells = random_rubble._cells(middles, weight, size)
    assert sum(Polygon(cell).area for cell in cells) == pytest.approx(3.0)
    images = (middles[None] + np.array([(i, k) for i in (-1, 0, 1) for k in (-1, 0, 1)])[:, None]
              * size).reshape(-1, 2)  # fmt: skip
    for n, cell in enumerate(cells):
        for spot in 0.98 * cell + 0.02 * cell.mean(axis=0):
            near = ((images - spot) ** 2).sum(axis=1) - np.tile(weight, 9)
            assert near.min() == pytest.approx(((middles[n] - spot) ** 2).sum() - weight[n])


def test_middle_and_inset_of_a_stone_are_shapelys():
    ring = np.array([(0.1, 0.2), (0.6, 0.1), (0.7, 0.5), (0.3, 0.7), (0.0, 0.5)])
    assert random_rubble._middle(ring) == pytest.approx(Polygon(ring).centroid.coords[0])
    inside = Polygon(ring).buffer(-0.05, join_style="mitre")
    made = Polygon(random_rubble._inset(ring, 0.05))
    assert made.symmetric_difference(inside).area < 1e-9


def test_random_stones_are_half_a_square_foot_and_lie_flat():
    """108 of them on 2.4 by 2.1 m are half a square foot each; on the whole wider than high."""
    cells = [Polygon(cell) for cell in random_rubble._patch()]
    areas = np.array([cell.area for cell in cells])
    assert len(cells) == 108 and areas.sum() == pytest.approx(2.4 * 2.1)
    assert areas.mean() / (0.3048**2) == pytest.approx(0.5, abs=0.01)
    wide, high = np.array([np.ptp(cell, axis=0) for cell in random_rubble._patch()]).T
    assert (wide.mean() / high.mean()) == pytest.approx(1 / 0.72, abs=0.06)
    assert 0.1 < areas.std() / areas.mean() < 0.25


WALLS = [
    (-5.0, 0.5, 0.1, 1.0),
    (-0.4, 5.3, -4.3, 2.2),
    (0.6, 1.9, 2.3, 6.1),
    (-3.0, -2.2, -5.9, -5.0),
]


@pytest.mark.parametrize("ends", WALLS)
@pytest.mark.parametrize("laid", [coursed_rubble.rubble, coursed_rubble.rubble_stones])
def test_a_wall_anywhere_shows_just_what_of_the_endless_face_reaches_into_it(laid, ends):
    left, right, bottom, top = ends
    wanted = [
        each
        for each in np.array(laid(-9.0, 9.0, -9.0, 9.0))
        if each[:, 0].max() > left and each[:, 0].min() < right
        and each[:, 1].max() > bottom and each[:, 1].min() < top
    ]  # fmt: skip
    shown = laid(*ends)
    assert len(shown) == len(wanted) > 15
    key = {tuple(np.round(each, 5).ravel()) for each in wanted}
    assert {tuple(np.round(each, 5).ravel()) for each in shown} == key


@pytest.mark.parametrize("spot", [(1.0, 2.0, 3.0), (-7.0, 12.25), (0.0, 0.0, 0.0), (41.0,)])
def test_the_lot_is_the_one_it_always_was(spot):
    """A sheet printed again years later shows the same stones: |sin(n . k) 43758.5453| and what of
    it is over whole ones.
    """
    turned = sum(n * k for n, k in zip(spot, (12.9898, 78.233, 37.719), strict=False))
    assert coursed_rubble._stray(*spot) == pytest.approx(abs(sin(turned) * 43758.5453) % 1)


STOOD = [
    [-257.72, 91.53],
    [196.1, 90.42],
    [-202.62, 241.91],
    [124.33, 241.11],
    [435.99, 239.73],
    [-262.12, 410.69],
    [200.23, 366.29],
    [199.41, 475.04],
]


def test_stones_over_the_hearth_stay_where_they_are():
    """Middles of the eight in half a meter by 60 cm, as drawn on 2026-11-30. [mm]"""
    rings = coursed_rubble.rubble_stones(-0.3, 0.3, 0.02, 0.5)
    assert [[round(1000 * mean, 2) for mean in ring.mean(axis=0)] for ring in rings] == STOOD


def test_a_stone_leaves_half_a_joint_all_round():
    """Joints of 0.45 in, as drawn."""
    stone = np.array([[(0.0, 0.0), (0.4, 0.01), (0.41, 0.2), (-0.01, 0.19)]])
    half = 0.45 / 2 * INCH
    left = [(half, half), (0.4 - half, 0.01 + half), (0.41 - half, 0.2 - half)]
    assert coursed_rubble._without_joint(stone)[0] == pytest.approx(
        np.array([*left, (-0.01 + half, 0.19 - half)])
    )


@pytest.mark.parametrize("laid", [coursed_rubble.rubble, coursed_rubble.rubble_stones])
@pytest.mark.parametrize("axis", [0, 1])
def test_what_ends_where_the_wall_begins_is_not_in_it(laid, axis):
    """Of a joint or stone near the middle the wall begins just at its end, or ends just at its
    beginning.
    """
    one = min(laid(-1.0, 1.0, 0.0, 2.0), key=lambda ring: abs(ring.mean(axis=0) - (0, 1)).sum())
    low, high = one[:, axis].min(), one[:, axis].max()
    for begins, ends in ((high, high + 1.0), (low - 1.0, low)):
        walls = (begins, ends, -1.0, 3.0) if axis == 0 else (-1.0, 1.0, begins, ends)
        assert not any(np.array_equal(one, other) for other in laid(*walls))


PAST = [(3.0, 4.79, 2.2, 4.19), (-4.79, -2.5, -4.15, -2.2), (-1.0, 2.39, 0.0, 2.09)]


@cache
def endless():
    return random_rubble.rubble_around(-7.0, 7.0, -7.0, 7.0)


@pytest.mark.parametrize("ends", WALLS + PAST)
def test_random_stones_of_a_wall_are_all_of_the_endless_face_that_reach_into_it(ends):
    left, right, bottom, top = ends

    def told(rings):
        return sorted(tuple(np.round(ring.mean(axis=0), 5)) for ring in rings)

    wanted = [
        ring
        for ring in endless()
        if (ring.max(axis=0) > (left, bottom)).all() and (ring.min(axis=0) < (right, top)).all()
    ]
    assert told(random_rubble.rubble_around(*ends)) == told(wanted)


def test_random_stones_leave_half_a_joint_all_round():
    half = 0.55 / 2 * INCH
    for cell, stone in zip(random_rubble._patch(), random_rubble.random_rubble(), strict=True):
        inside = Polygon(cell).buffer(-half, join_style="mitre")
        assert Polygon(stone).symmetric_difference(inside).area < 1e-8
