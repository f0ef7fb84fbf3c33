"""The random sets that other tests draw from: all of them meet, and they differ.

``SETS=1000 pytest tests/test_random_sets.py`` draws more, by hand.
"""

import os
from dataclasses import replace

import pytest
from set_strategies import RANGES, made, random_set, stood, text

from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.assembled.solids import piece_volume

COUNT = int(os.environ.get("SETS", "40"))


@pytest.mark.parametrize("seed", range(COUNT))
def test_a_random_set_meets(seed):
    assert fit(stood(random_set(seed))) == ()


def test_random_sets_are_of_every_kind():
    drawn = [random_set(seed) for seed in range(200)]
    assert {r.throats for r in drawn} == {1, 2, 3} and {r.reducers for r in drawn} == {1, 2}
    for name in ("metric", "round", "arch", "left_more", "lining", "weighed", "extensions"):
        assert {bool(getattr(r, name)) for r in drawn} == {False, True}, name
    for name, (low, high) in RANGES.items():
        assert all(low <= getattr(r, name) <= high for r in drawn), name
    assert {r.rebate < 16 for r in drawn} == {r.nest < 4 for r in drawn} == {False, True}


def test_a_seed_gives_the_same_set_every_time():
    assert text(random_set(7)) == text(random_set(7)) != text(random_set(8))


def test_a_random_plate_has_the_size_that_was_drawn():
    """By hand, from the recipe: width over all by depth by height, less nothing."""
    for seed in range(20):
        r = replace(random_set(seed), plates=1, splay=0, left_more=0)
        grid = 0.0015 if r.metric else 0.0254 / 16
        wide = max(r.half + r.front, r.half + (r.rebate if r.rebate >= 16 else 0) + r.rear)
        deep = r.lip_at + r.joint + r.back
        volume = 2 * wide * deep * r.plate * grid**3
        assert piece_volume(made(r).piece("P")) == pytest.approx(volume, rel=1e-9)
