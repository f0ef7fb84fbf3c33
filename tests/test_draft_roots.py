"""The root search of the draft against scipy's, one number at a time."""

from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from scipy.optimize import brentq
from test_draft_examples import reference
from test_draft_properties import fires

from fireplace_calc.draft import Surroundings, settle
from fireplace_calc.draft.conditions import leaks
from fireplace_calc.draft.flow_search import HALVINGS, _bounds, carries, flow_inputs, settled
from fireplace_calc.draft.operating import excess_pressure
from fireplace_calc.draft.physics.house_leaks import leakage, net_inflow
from fireplace_calc.draft.physics.walls import mean_temperature
from fireplace_calc.draft.root_search import SCAN_STEPS, largest_root


def largest_by_scipy(function, low: float, high: float, steps: int = 4000) -> float | None:
    """Topmost of many steps with a change of sign, closed by Brent's method."""
    places = np.geomspace(low, high, steps)
    good = np.flatnonzero(function(places) >= 0)
    if not good.size:
        return None
    if good[-1] == steps - 1:
        raise AssertionError("the upper bound does not bound")
    return brentq(function, places[good[-1]], places[good[-1] + 1], xtol=1e-15, rtol=1e-14)


@settings(max_examples=300, deadline=None, derandomize=True)
@given(fires())
def test_a_fire_settles_where_scipy_finds_the_largest_flow(case):
    """300 fires over the whole workable range; scipy.optimize.brentq."""
    flow, least = settle(*case), float(case[1].least_flow)
    expected = largest_by_scipy(
        lambda mass: np.asarray(excess_pressure(mass, *case)[0]), least, 500 * least + 50
    )
    if flow.stalled:
        assert expected is None
    else:
        assert float(flow.mass) == pytest.approx(expected, rel=1e-9)


def test_polynomials_with_known_roots():
    """200 of them, up to five roots each, all in one call; the two topmost at least one step of the
    scan apart, as its Notes ask.
    """
    rng = np.random.default_rng(5)
    low, high = 0.5, 200.0
    roots = np.exp(rng.uniform(0, 5, (600, 5)))
    roots[np.arange(5) >= rng.integers(1, 6, 600)[:, None]] = np.nan
    second, first = np.sort(np.nan_to_num(roots, nan=low), axis=1)[:, -2:].T
    roots = roots[first / second > (high / low) ** (1 / SCAN_STEPS)][:200]

    def falling(x):
        return -np.nanprod(np.asarray(x)[..., None] - roots, axis=-1)

    found, none = largest_root(falling, np.full(200, low), np.full(200, high))
    assert not none.any()
    assert found == pytest.approx(np.nanmax(roots, axis=1), rel=1e-9)
    for own, place in zip(roots, found, strict=True):
        known = own[~np.isnan(own)]
        expected = largest_by_scipy(
            lambda x, known=known: -np.prod(np.subtract.outer(x, known), axis=-1), low, high
        )
        assert place == pytest.approx(expected, rel=1e-9)


def test_many_places_are_searched_as_each_alone():
    """To the last bit, and whatever else is asked for in the same call."""
    low, high = np.linspace(0.1, 0.9, 7), np.full(7, 50.0)
    slopes = np.linspace(0.5, 4.0, 7)
    found, none = largest_root(lambda x: slopes - x, low, high)
    for k in range(7):
        own, without = largest_root(lambda x, k=k: slopes[k] - x, low[k : k + 1], high[k : k + 1])
        assert own[0] == found[k] and without[0] == none[k]


@pytest.mark.parametrize("off", [1e-4, 1e-6, 1e-8, -1e-8, -1e-6])
def test_a_root_a_hair_from_a_step_of_the_scan_is_closed_like_any_other(off):
    """The first secant moves hardly at all there, which is no sign that it has arrived: the error
    left is that move times the width of the step.
    """
    low, high = 0.5, 200.0
    steps = high * np.exp(-np.arange(1, SCAN_STEPS) * np.log(high / low) / SCAN_STEPS)
    roots = steps * (1 + off)
    found, none = largest_root(
        lambda x: (roots - x) * np.abs(roots + x) ** 3, np.full(27, low), np.full(27, high)
    )
    assert not none.any()
    assert found == pytest.approx(roots, rel=1e-11)


def test_a_root_right_on_a_step_of_the_scan_is_found():
    """Neither short nor over at just that place, short wherever else it is looked."""
    low, high = 0.5, 200.0
    place = high * np.exp(-5 * np.log(high / low) / SCAN_STEPS)
    found, none = largest_root(
        lambda x: np.where(np.abs(x / place - 1) < 1e-12, 0.0, -1.0),
        np.array([low]),
        np.array([high]),
    )
    assert not none.any() and found == pytest.approx(place)


def test_the_upper_bound_is_narrowed_to_what_is_hardly_driven():
    """Halved so many times on a scale of ratios: no farther from a flow too weak for any house than that."""
    way, lit, air = reference(np.linspace(3.0, 12.0, 10))
    house, known = leaks(way, air), flow_inputs(way, lit, air, None)
    low, high = _bounds(lit, house, air, known)

    def over(mass):
        heated = mean_temperature(known.heat / mass, 0.0, known.cooling / mass)
        cold, warm = min(known.room, known.beside), max(known.room, known.beside)
        drive = known.column + house.rise - known.gas / (warm + heated)
        return drive - known.resistance * known.loss * (cold + heated) * mass * mass

    wide = np.sqrt((known.column + house.rise) / (known.resistance * known.loss * known.room))
    assert (over(high) <= 0).all()
    assert (over(high * (low / wide) ** (1.05 / 2**HALVINGS)) > 0).all() and (high < wide).all()


@pytest.mark.parametrize("changes", [1.0, 30.0, 1000.0, 30_000.0])
def test_what_leaves_even_a_very_leaky_house_comes_in(changes):
    """It is pulled by less than the last digits of what is lost in the flue."""
    way, lit, air = reference(np.linspace(2.0, 16.0, 57))
    air = replace(air, wind=8.0, leak=leakage(changes, 400.0, 0.5), exponent=0.5)
    flow = settle(way, lit, air)
    house = leaks(way, air)
    out = flow.mass - lit.burn
    assert not flow.stalled.any()
    assert net_inflow(flow.pull, house) == pytest.approx(out, rel=1e-9)
    drive = flow.draft + air.wind
    assert sum(flow.losses.values()) + flow.pull == pytest.approx(drive, rel=1e-9)


def test_where_nothing_crosses_the_lower_bound_comes_back():
    found, none = largest_root(lambda x: -x, np.array([0.2, 0.3]), np.array([5.0, 6.0]))
    assert none.all() and found.tolist() == [0.2, 0.3]


@pytest.mark.parametrize("seed", range(3))
def test_the_last_of_many_fires_are_looked_for_alone_and_end_where_they_would(seed):
    """6,000 fires, some of them stalled, some rooms open: to the last bit as in parcels of 300,
    in which all stay together; and none where a scan apart from this code finds one.
    """
    rng = np.random.default_rng(seed)
    n = 6000
    way, lit, _ = reference(rng.uniform(0.5, 12.0, n))
    flue = rng.uniform(0.02, 0.15, n)
    way = replace(
        way, flue_area=flue, flue_perimeter=4 * np.sqrt(flue), height=rng.uniform(3.0, 12.0, n)
    )
    air = Surroundings(
        rng.uniform(250.0, 300.0, n),
        293.15,
        np.where(rng.random(n) < 0.05, np.inf, leakage(rng.uniform(0.5, 15.0, n), 400.0, 0.65)),
        inlet=np.where(rng.random(n) < 0.5, 0.0, 0.02),
        fans=np.where(rng.random(n) < 0.3, 0.15, 0.0),
    )
    friction = rng.uniform(0.025, 0.05, n)
    mass, stalled = settled(way, lit, air, friction)
    assert 0.005 < stalled.mean() < 0.3
    for share in (0.5, 0.999, 1.0, 1.001, 2.0):
        # and whether a flow is reached, which need not find it
        asked = np.maximum(mass * share, lit.least_flow)
        reached = carries(way, lit, air, asked, friction)
        assert (reached == (~stalled & (mass >= asked))).all() and reached.any() == (share <= 1)
    shares = np.array(
        [[0.5], [2.0]]
    )  # several questions of the same fires, that differ in nothing else
    both = carries(way, lit, air, np.maximum(mass * shares, lit.least_flow), friction)
    assert both.shape == (2, n) and both[0].any() and not both[1].any()

    def cut(record, part):
        return replace(
            record,
            **{
                f.name: value[part]
                for f in fields(record)
                if np.ndim(value := getattr(record, f.name))
            },
        )

    for first in range(0, n, 300):
        part = slice(first, first + 300)
        own, without = settled(*(cut(each, part) for each in (way, lit, air)), friction[part])
        assert (own == mass[part]).all() and (without == stalled[part]).all()
    few = slice(0, 40)
    case = [cut(each, few) for each in (way, lit, air)]
    scan = case[1].least_flow * np.geomspace(1.0, 200.0, 3000)[:, None]
    good = excess_pressure(scan, *case, friction[few])[0] >= 0
    assert (stalled[few] <= ~good.any(axis=0)).all()
