"""Where the delivery is put down: held against scipy's assignment, and against what can be seen on the plan."""

from collections import Counter
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment
from set_strategies import random_set, stood
from test_voice import BANNED, ENGLISH, LONGEST, sentences

from fireplace_calc import assess, change
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, SYSTEMS, InputError
from fireplace_calc.build.setting.dealing import deal_as_delivered, deal_by_weight, that_fit
from fireplace_calc.build.setting.piles import Pile, piles_of
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.setting.site_plan import HANDS, MIXER, PALLET, StagingFloor, _grid
from fireplace_calc.build.setting.staging import plan_staging
from fireplace_calc.build.setting.staging_wording import staging_words
from fireplace_calc.design.records import Design
from fireplace_calc.design.surroundings import House
from fireplace_calc.design.work import Work
from fireplace_calc.drawing import single
from fireplace_calc.drawing.composed.compose import reads
from fireplace_calc.drawing.pieces.staging_picture import staging_sheet, staging_view
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.geometry.assembled.solids import extent, piece_weight
from fireplace_calc.geometry.from_set.set_up import set_up

SETS = ("small", "middling", "wide")
NEVER = 1e12


def pile(weight, side="", step=1):
    return Pile(None, (f"P.{step}",), weight, step, side)


piles = st.lists(
    st.tuples(st.floats(1, 300), st.sampled_from(("left", "right", "", ""))),
    min_size=1,
    max_size=12,
).map(lambda told: [pile(w, side, n) for n, (w, side) in enumerate(told, 1)])
far = st.lists(st.floats(0.5, 20), min_size=12, max_size=14).map(sorted)


def cost(dealt, given, left, right):
    ways = {"left": left, "right": right}
    return sum(p.weight * ways[side][n] for p, (side, n) in zip(given, dealt, strict=True))


@settings(max_examples=300, deadline=None)
@given(piles, far, far)
def test_no_assignment_carries_less(given, left, right):
    """scipy's linear_sum_assignment over every spot, the wrong side forbidden."""
    table = np.array(
        [
            [p.weight * w if p.side in ("left", "") else NEVER for w in left]
            + [p.weight * w if p.side in ("right", "") else NEVER for w in right]
            for p in given
        ]
    )
    least = table[linear_sum_assignment(table)].sum()
    dealt = deal_by_weight(given, left, right)
    assert cost(dealt, given, left, right) == pytest.approx(least, rel=1e-9)
    assert len(set(dealt)) == len(given)
    assert all(p.side in ("", side) for p, (side, _) in zip(given, dealt, strict=True))
    come = deal_as_delivered(given, len(left), len(right))
    assert len(set(come)) == len(given)
    assert cost(come, given, left, right) >= least - 1e-9 * least


@settings(max_examples=100, deadline=None)
@given(piles, st.integers(0, 8), st.integers(0, 8))
def test_what_fits_is_set_first_and_finds_its_spots(given, left, right):
    fits = that_fit(given, left, right)
    ways = [float(n) for n in range(1, 9)]
    for dealt in (
        deal_by_weight(fits, ways[:left], ways[:right]),
        deal_as_delivered(fits, left, right),
    ):
        assert len(set(dealt)) == len(fits)
        assert all(n < (left if side == "left" else right) for side, n in dealt)
    if len(fits) < min(len(given), left + right):  # then one side is full of its own
        out = [p for p in given if p not in fits]
        assert all(p.side for p in out)
    for p in given:
        if p not in fits:
            alike = [q for q in fits if q.side == p.side]
            assert all(q.step < p.step for q in alike)


def test_equal_weights_stand_in_the_order_of_use():
    given = [pile(40, "left", 5), pile(40, "left", 2), pile(60, "left", 9), pile(40, "left", 7)]
    assert [n for _, n in deal_by_weight(given, [1.0, 2.0, 3.0, 4.0], [])] == [2, 1, 0, 3]


def test_the_rearrangement_by_hand():
    """Three weights, three ways: 30 kg at 1 m, 20 at 2, 10 at 3 is 100; as they come, 10, 20, 30, it is 140."""
    given = [pile(w, "left", n) for n, w in enumerate((10, 20, 30), 1)]
    ways = [1.0, 2.0, 3.0]
    assert cost(deal_by_weight(given, ways, []), given, ways, []) == 100
    assert cost(deal_as_delivered(given, 3, 0), given, ways, []) == 140


def planned(name="middling", **changes):
    design = change(
        Design(),
        {"pieces.set": name, "house.room_length": "34 ft", "house.room_width": "24 ft", **changes},
    )
    made = set_up(design).assembly
    steps = order_of_setting(made, design.piece_set.lining)
    return design, made, plan_staging(made, steps, design.work, design.house)


def spot(plan, one):
    (x, y), (wide, deep) = one.place, plan.spot
    return x - wide / 2, y - deep / 2, x + wide / 2, y + deep / 2


def apart(one, other):
    return (
        one[2] <= other[0] + 1e-9
        or other[2] <= one[0] + 1e-9
        or one[3] <= other[1] + 1e-9
        or other[3] <= one[1] + 1e-9
    )


ENDS = [
    {},
    {"house.room_length": "unknown", "house.room_width": "unknown"},
    {"house.room_length": "6 ft", "house.room_width": "6 ft"},
    {"house.room_length": "12 ft", "house.room_width": "10 ft"},
    {"work.pallet_away": "3 ft"},
    {"work.pallet_away": "100 ft", "house.room_width": "unknown"},
    {"work.pallet_aside": "-50 ft"},
    {"work.pallet_aside": "50 ft", "house.room_length": "unknown", "house.room_width": "unknown"},
    {"work.walkway": "2 ft", "work.staged_off": "2 ft"},
    {"work.walkway": "8 ft", "work.staged_off": "12 ft"},
    {"work.stack_height": "0 in"},
    {"work.stack_height": "60 in"},
    {"flue.sections": 40},
]


@pytest.mark.parametrize("changes", ENDS, ids=str)
@pytest.mark.parametrize("name", SETS)
def test_everything_stands_once_in_the_room_and_nothing_in_the_way(name, changes):
    design, made, plan = planned(name, **changes)
    names = Counter(n for one in plan.piles for n in one.pile.names)
    names += Counter(n for one in plan.pallets for n in one.names)
    assert names == Counter(p.name for p in made.placed)
    down = [one for one in plan.piles if one.place]
    spots = [spot(plan, one) for one in down]
    side = design.work.walkway / 2
    free = (-side, -plan.site.away, side, 0.0)
    for one, area in zip(down, spots, strict=True):
        x0, x1, *_ = extent(one.pile.piece)
        assert not (x1 <= 0 and one.place[0] > 0) and not (x0 >= 0 and one.place[0] < 0)
        assert area[3] <= -plan.site.off + 1e-9
        assert -plan.site.half - 1e-9 <= area[0] and area[2] <= plan.site.half + 1e-9
        assert area[1] >= -plan.site.deep - 1e-9
        wide, deep = plan.spot
        assert min(wide, deep) >= one.pile.footprint[0] + HANDS - 1e-9
        assert max(wide, deep) >= one.pile.footprint[1] + HANDS - 1e-9
    solid = [*spots, *plan.areas]
    for one, other in combinations(solid, 2):
        assert apart(one, other)
    for one in [*spots, *plan.areas]:
        assert apart(one, free)
        assert all(apart(one, way) for way in plan.site.walkways)
    for sign in (-1, 1):
        beside = sorted((one.way, -one.pile.weight) for one in down if one.place[0] * sign > 0)
        for (near, heavy), (farther, light) in zip(beside, beside[1:], strict=False):
            assert near == pytest.approx(farther) or heavy <= light


@pytest.mark.parametrize("name", SETS)
def test_sums_are_those_of_the_plan(name):
    """Each pile's weight, from its pieces one by one, times the way that the drawing shows."""
    design, made, plan = planned(name, **{"work.pallet_aside": "4 ft"})
    weight = {p.name: piece_weight(p.piece) for p in made.placed}
    here = [(sum(weight[n] for n in one.pile.names), one) for one in plan.piles]
    down = [(kg, one) for kg, one in here if one.place]
    px, py = design.work.pallet_aside, -design.work.pallet_away
    assert plan.carried == pytest.approx(sum(kg * (abs(o.place[0]) - o.place[1]) for kg, o in down))
    assert plan.unloading == pytest.approx(
        sum(kg * (abs(o.place[0] - px) + abs(o.place[1] - py)) for kg, o in down)
    )
    straight = abs(px) + abs(py)
    assert plan.straight == pytest.approx(straight * sum(kg for kg, _ in down))
    staged = {n for _, o in down for n in o.pile.names}
    kept = sum(kg for n, kg in weight.items() if n not in staged)
    assert plan.kept == pytest.approx(straight * kept)
    assert plan.lifted == pytest.approx(sum(weight.values()) + sum(kg for kg, _ in down))
    assert plan.trips == len(weight) + len(staged)
    assert 0 <= plan.saved < 1
    assert plan.saved == pytest.approx(1 - plan.carried / plan.as_delivered)


def test_piles_and_pallets_of_the_middling_set():
    """By hand: three courses of walls 10 in high make a pile of 30 in; 12 flue pieces to a pallet, as its file says."""
    design, made, _ = planned(**{"flue.sections": 29})
    steps = order_of_setting(made, design.piece_set.lining)
    put, pallets = piles_of(steps, 30 * INCH)
    labels = [one.label for one in put]
    assert "WL x 3" in labels and "WB x 3" in labels and "LS" in labels
    assert [one.label for one in pallets] == ["F8 x 12", "F8 x 12", "F8 x 5"]
    walls = next(one for one in put if one.label == "WL x 3")
    assert walls.names == ("WL.1", "WL.2", "WL.3") and walls.side == "left"
    assert next(one for one in put if one.piece.mark == "WR").side == "right"
    assert next(one for one in put if one.piece.mark == "LS").side == ""
    lower, _ = piles_of(steps, 29 * INCH)
    assert [one.label for one in lower if one.piece.mark == "WL"] == ["WL x 2", "WL"]


@pytest.mark.parametrize("seed", range(30))
def test_random_sets_find_their_place(seed):
    made = stood(random_set(seed))
    steps = order_of_setting(made)
    plan = plan_staging(made, steps, Work(), House(room_length=12.0, room_width=9.0))
    names = [n for one in plan.piles for n in one.pile.names]
    names += [n for one in plan.pallets for n in one.names]
    assert sorted(names) == sorted(p.name for p in made.placed)
    assert plan.carried <= plan.as_delivered * (1 + 1e-12)
    for one, other in combinations([spot(plan, p) for p in plan.piles if p.place], 2):
        assert apart(one, other)


def test_a_pallet_that_the_room_has_no_depth_for_stands_at_its_wall():
    _, _, plan = planned(**{"house.room_width": "14 ft", "work.pallet_away": "30 ft"})
    assert plan.site.away == pytest.approx(14 * FOOT - PALLET[1])
    low = min(area[1] for area in plan.areas)
    assert low >= -14 * FOOT - 1e-9
    assert plan.areas[-1][2] - plan.areas[-1][0] == pytest.approx(MIXER[0])


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("changes", ENDS, ids=str)
@pytest.mark.parametrize("name", SETS)
def test_the_drawing_is_clean_and_names_every_pile(name, changes, units):
    design, _, plan = planned(name, **changes)
    sheet = staging_sheet(design, units)
    assert collisions(sheet) == []
    said = [label.text for label in sheet.labels]
    if not changes:
        for one in plan.piles:
            assert (one.pile.label in said) == bool(one.place)
        assert "mixer" in said and "walkway" in said
        assert said.count("pallet") == 1 + len(plan.pallets)
        tones = {tone: len(rings) for (_, tone), rings in sheet.fills.items()}
        assert tones["piece top"] == sum(one.place is not None for one in plan.piles)
        assert tones["wood"] == len(plan.areas), "what stands on boards is filled so"


@pytest.mark.parametrize("units", SYSTEMS)
def test_the_view_of_the_catalogue_is_drawn_anew_when_the_work_changes(units):
    design, _, _ = planned()
    before = assess(design).geometry
    assert collisions(single("staging", before, units)) == []
    for changes in (
        {"work.walkway": "4 ft"},
        {"work.pallet_aside": "3 ft"},
        {"house.room_length": "30 ft"},
        {"flue.sections": 21},
        {"work.walkway": "3 ft"},  # told now, no longer assumed
    ):
        after = assess(change(design, changes)).geometry
        assert reads("staging", before) != reads("staging", after), changes
        assert single("staging", before, units).labels != single("staging", after, units).labels
    lower = assess(change(design, {"house.ceiling": "9 ft"})).geometry
    assert reads("staging", before) == reads("staging", lower) or lower.design.told != design.told


def test_a_design_without_a_set_has_nothing_to_put_down():
    with pytest.raises(InputError, match="nothing to put down"):
        staging_view(Sheet(297.0, 210.0), Cell(0.0, 0.0, 297.0, 210.0), Design())


@pytest.mark.parametrize("changes", ENDS, ids=str)
def test_what_is_said_is_short_and_does_not_oversell(changes):
    _, _, plan = planned(**changes)
    for units in SYSTEMS:
        for text in staging_words(plan, units):
            assert not BANNED.search(text) and not ENGLISH.search(text), text
            for sentence in sentences(text):
                assert "piles off the work" in sentence or len(sentence.split()) <= LONGEST, (
                    sentence
                )
    told = " ".join(staging_words(plan, FEET_INCHES, {"work.walkway"}))
    assert "(assumed)" in told and "not checked" in told
    if plan.carried and plan.saved > 0.0005:
        assert f"saves {100 * plan.saved:.0f} %" in told
    even = replace(plan, as_delivered=plan.carried)
    if plan.carried:
        assert "as good" in " ".join(staging_words(even))


@pytest.mark.parametrize("name", SETS)
def test_the_book_of_a_set_has_a_clean_sheet_of_it(name):
    """In a large room and the default one."""
    for changes in ({}, {"house.room_length": "20 ft", "house.room_width": "14 ft"}):
        design, _, plan = planned(name, **changes)
        for units in SYSTEMS:
            sheet = staging_sheet(design, units)
            assert collisions(sheet) == [], units
            said = {label.text for label in sheet.labels}
            assert {one.pile.label for one in plan.piles if one.place} <= said


@pytest.mark.parametrize(
    ("aside", "across"),
    [
        (0.0, None),
        (0.5, None),
        (-0.5, None),
        (2.0, (-0.5, -6.0, 2.5, -5.0)),
        (-2.0, (-2.5, -6.0, 0.5, -5.0)),
    ],
)
def test_a_pallet_beside_the_walkway_has_one_of_its_own(aside, across):
    """A walkway of 1 m, the pallet 6 m before the work: straight up the middle, and across to a pallet
    that stands farther aside than its edge.
    """
    floor = StagingFloor(5.0, 7.0, 1.0, 0.5, 6.0, aside)
    up = (-0.5, -6.0, 0.5, 0.0)
    assert floor.walkways == ((up,) if across is None else (up, across))
    assert floor.way == 6.0 + abs(aside)


def test_a_spot_is_free_where_its_own_square_is():
    """Places of 1 m from 0.5 m beside the middle; what stands from 2 to 3 m takes two of them, and no
    more.
    """
    floor = StagingFloor(5.0, 1.6, 1.0, 0.5, 6.0, 0.0)
    found = _grid((1.0, 1.0), floor, ((2.0, -1.5, 3.0, -0.5),), 6, 1.0)
    assert np.array(found).ravel() == pytest.approx([1.0, -1.0, 4.0, -1.0])
