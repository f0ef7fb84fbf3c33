"""Stones of a face in both bonds: a wall is all stone and joint, none overlap, and the same stones
stand however large the wall is.
"""

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
