"""Plumb and height of a stack of pieces: by hand, by another generator of chance, and by closed form."""

import random
from math import erf, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc.base.tables.erection import allowed_off, erection_limits
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, MILLIMETRES, InputError
from fireplace_calc.pieces.joints.height import height_left, height_within
from fireplace_calc.pieces.joints.plumb import (
    EVERY,
    EVERY_OTHER,
    LEVELED,
    NEVER,
    PARALLEL,
    level_drift,
    plumb_odds,
    plumb_within,
    plumb_words,
    share_outside,
)

STACK = np.full(20, 8.375 * INCH)
SIGMAS = 1.959963985
"""19 of 20 of a normal spread, printed in every table of it."""


@pytest.mark.parametrize(
    ("measure", "feet", "inches"),
    [
        ("plumb", 10, 1 / 4),
        ("plumb", 20, 3 / 8),
        ("plumb", 20.1, 1 / 2),
        ("plumb", None, 1 / 2),
        ("bed level", 10, 1 / 4),
        ("bed level", 40, 1 / 2),
        ("bed thickness", None, 1 / 8),
        ("bed thickness", 3, 1 / 8),
    ],
)
def test_the_published_tolerances(measure, feet, inches):
    """TMS 602, article 3.3 F, from memory: 1/4 in within 10 ft, 3/8 in within 20 ft, 1/2 in at most; beds 1/8 in."""
    over = None if feet is None else feet * FOOT
    assert allowed_off(measure, over) == pytest.approx(inches * INCH)
    assert {limit.source.confidence for limit in erection_limits()} == {"memory"}


def test_two_pieces_by_hand():
    """Pieces of 1 and 2 m on beds 0.5 m long, 1 mm out: leveled 2 and 4 mm, parallel (1 + 2) 3 m and 2 m of 2 mm/m."""
    rises = np.array([1.0, 2.0])
    assert plumb_within(rises, 0.5, 0.001, LEVELED) == pytest.approx(sqrt(2**2 + 4**2) / 1000)
    assert plumb_within(rises, 0.5, 0.001, PARALLEL) == pytest.approx(sqrt(6**2 + 4**2) / 1000)
    assert plumb_within(rises, np.array([0.5, 1.0]), 0.001, LEVELED) == pytest.approx(
        sqrt(8) / 1000
    )
    one = np.array([1.0])
    assert plumb_within(one, 0.5, 0.001, LEVELED) == plumb_within(one, 0.5, 0.001, PARALLEL)


def by_chance(way, seed, times=4000):
    """Offsets of the tops of a stack, piece by piece, by Python's own generator."""
    draw, found = random.Random(seed), []
    for _ in range(times):
        off, lean = 0.0, 0.0
        path = [(0.0, 0.0)]
        for rise in STACK:
            own = draw.gauss(0, INCH / 16 / SIGMAS) / (20 * INCH)
            lean = own + (lean if way == PARALLEL else 0.0)
            off += rise * lean
            path.append((path[-1][0] + rise, off))
        found.append(path)
    return found


@pytest.mark.parametrize("way", [LEVELED, PARALLEL])
def test_spread_and_odds_by_another_generator(way):
    """4,000 stacks; shares within four standard errors of both draws."""
    paths = by_chance(way, 7)
    offs = np.abs([path[-1][1] for path in paths])
    within = plumb_within(STACK, 20 * INCH, INCH / 16, way)
    assert np.quantile(offs, 0.95) == pytest.approx(within, rel=0.06)
    out = np.mean(
        [
            any(
                abs(x1 - x0) > (0.25 if z1 - z0 <= 120 * INCH + 1e-9 else 0.375) * INCH
                for n, (z0, x0) in enumerate(path)
                for z1, x1 in path[n + 1 :]
            )
            for path in paths
        ]
    )
    odds = plumb_odds(STACK, 20 * INCH, INCH / 16, way)
    error = sqrt(max(out * (1 - out), 1e-4) * (1 / 4000 + 1 / 10_000))
    assert odds.outside == pytest.approx(out, abs=4 * error)
    assert odds.most == pytest.approx(within, rel=0.04)
    assert odds.half == pytest.approx(within * 0.67449 / SIGMAS, rel=0.04)


@pytest.mark.parametrize(("feet", "inches"), [(9, 1 / 4), (12, 3 / 8), (21, 1 / 2)])
def test_one_piece_has_a_closed_form(feet, inches):
    """A single piece is out when its slope times its height passes what is allowed at that height."""
    rises = np.array([feet * FOOT])
    odds = plumb_odds(rises, 10 * INCH, INCH / 40, LEVELED)
    sigma = feet * FOOT / 400 / SIGMAS
    share = 1 - erf(inches * INCH / sigma / sqrt(2))
    assert odds.outside == pytest.approx(share, abs=4 * sqrt(share * (1 - share) / 10_000))
    assert share_outside(feet * FOOT / 400, inches * INCH) == pytest.approx(share, rel=1e-6)
    assert share_outside(0.0, 0.1) == 0.0


def test_a_level_that_is_out():
    """1/16 in over 24 in under 167 1/2 in: 0.436 in; turned every other piece, 21 pieces leave one piece's share."""
    slope = 1 / 16 / 24
    assert level_drift(STACK, slope) == pytest.approx(167.5 / 384 * INCH)
    assert level_drift(STACK[:3], slope, EVERY_OTHER) == pytest.approx(8.375 / 384 * INCH)
    assert level_drift(STACK, slope, EVERY) == 0.0
    leaning = plumb_odds(STACK, 20 * INCH, 1e-9, LEVELED, slope)
    assert leaning.half == pytest.approx(167.5 / 384 * INCH, rel=1e-6) and leaning.outside == 1.0
    turned = plumb_odds(STACK, 20 * INCH, 1e-9, LEVELED, slope, EVERY_OTHER)
    assert turned.outside == 0.0 and turned.words == "out of tolerance in fewer than 1 of 100"
    free = plumb_odds(STACK, 20 * INCH, 1e-9, PARALLEL, slope)
    assert free.most < 1e-6


def test_the_same_seed_gives_the_same_odds():
    one, two = (plumb_odds(STACK, 20 * INCH, INCH / 16, PARALLEL, seed=s) for s in (1, 2))
    assert one == plumb_odds(STACK, 20 * INCH, INCH / 16, PARALLEL, seed=1) and one != two
    assert one.draws == 10_000


def test_words_name_the_figures():
    told = plumb_words(STACK, 20 * INCH, INCH / 16, 1 / 16 / 24, FEET_INCHES)
    assert told[0] == 'Beds are taken to be within 1/16" of level over 1\'-8", 19 of 20.'
    assert 'within 1/8" of plumb' in told[1] and 'within 1 3/8"' in told[2]
    assert "fewer than 1 of 100" in told[1] and told[2].endswith("of 100.")
    assert 'At most 3/8"' in told[3] and 'top 7/16" off' in told[4]
    assert "within 3 mm of plumb" in plumb_words(STACK, 0.508, 0.0016, 0.001, MILLIMETRES)[1]


def test_height_of_thirty_lifts():
    """Thirty lifts of 1/16 in each: the square root of thirty of it left alone, the last one's planned again."""
    errors = np.full(30, INCH / 16)
    assert height_within(errors, False) == pytest.approx(sqrt(30) / 16 * INCH)
    assert height_within(errors, True) == pytest.approx(INCH / 16)
    rng = np.random.default_rng(3)
    over = rng.normal(0, INCH / 16, (4000, 30))
    wide, none = np.full(30, 1.0), np.zeros(30)
    assert np.std(height_left(over, wide, wide)[:, -1]) == pytest.approx(INCH / 16, rel=0.05)
    assert height_left(over, none, none) == pytest.approx(np.cumsum(over, axis=1))


@given(
    st.lists(
        st.tuples(*[st.floats(-0.01, 0.01)] * 1, *[st.floats(0, 0.004)] * 2),
        min_size=1,
        max_size=12,
    )
)
def test_beds_never_give_more_than_they_have(told):
    """The error that is left changes by a piece's own and by no more than its bed's room, never past nought."""
    over, thinner, thicker = (np.array(x) for x in zip(*told, strict=True))
    left = height_left(over, thinner, thicker)
    before = 0.0
    for n, after in enumerate(left):
        bed = after - over[n] - before
        assert -thinner[n] - 1e-12 <= bed <= thicker[n] + 1e-12
        assert (before + bed) * before >= -1e-15
        if abs(before + bed) > 1e-12:
            assert bed == pytest.approx(-thinner[n] if before > 0 else thicker[n], abs=1e-12)
        before = after


@pytest.mark.parametrize(
    ("act", "said"),
    [
        (
            lambda: plumb_within(STACK, 1.0, 0.1, "leveled"),
            "Way is 'leveled', but one of each piece",
        ),
        (lambda: plumb_odds(STACK, 1.0, 0.1, "x"), "Way is 'x'"),
        (lambda: level_drift(STACK, 0.1, "sometimes"), "every other piece"),
        (lambda: plumb_within(np.array([]), 1.0, 0.1, LEVELED), "is nought"),
        (lambda: plumb_within(STACK, 0.0, 0.1, LEVELED), "is nought"),
        (lambda: plumb_odds(np.array([1.0, 0.0]), 1.0, 0.1, LEVELED, turned=NEVER), "is nought"),
        (lambda: allowed_off("batter"), "the tolerances hold only plumb, bed level, bed thickness"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(act, said):
    with pytest.raises(InputError, match=said):
        act()
