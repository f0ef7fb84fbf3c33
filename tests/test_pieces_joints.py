"""The joint plan against optimisers that know nothing of it: linear programmes and SLSQP of scipy, and every combination of a coarse grid.

``CHAINS=1000 pytest tests/test_pieces_joints.py`` tries a thousand random chains.
"""

import itertools
import os
import random
from math import ceil, floor
from typing import NamedTuple

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linprog, minimize

from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, InputError
from fireplace_calc.pieces.joints.joint_plan import plan_joints, settled_misses
from fireplace_calc.pieces.joints.rise import Rise, rise_of
from fireplace_calc.pieces.joints.story_pole import joint_words, pole_rows, pole_table, pole_text
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel

CHAINS = int(os.environ.get("CHAINS", "60"))
NANO = 1e-9


class Bed(NamedTuple):
    least: float
    wanted: float
    most: float


class Block(NamedTuple):
    mark: str
    height: float
    bed: Bed


def block(mark, height, least=3 / 8, wanted=7 / 16, most=1 / 2, unit=INCH):
    return Block(mark, height * unit, Bed(least * unit, wanted * unit, most * unit))


def courses(count, height=8.0, **bed):
    """A chain of equal lifts of one piece, named 1, 2, ..."""
    return [rise_of(f"{n + 1}", [block(f"P{n + 1}", height, **bed)]) for n in range(count)]


def random_chain(seed, most_lifts=12, most_levels=4):
    """A chain and wanted levels near what it can reach, so that about half can be met."""
    draw = random.Random(seed)
    chain = []
    for n in range(draw.randint(1, most_lifts)):
        least = draw.choice([draw.uniform(4, 20), draw.randint(64, 320) / 16]) * INCH
        room = draw.choice([0.0, 1 / 8, 1 / 4, draw.uniform(0.05, 0.4)]) * INCH
        wanted = least + draw.uniform(-0.2, 1.2) * room
        chain.append(Rise(f"lift {n}", least, wanted, least + room, draw.randint(1, 4)))
    start = draw.choice([0.0, draw.uniform(-2, 2) * INCH])
    reached = start + np.cumsum([draw.uniform(r.least, r.most) for r in chain])
    levels = []
    for place in draw.sample(range(len(chain)), min(draw.randint(0, most_levels), len(chain))):
        off = draw.choice([0.0, draw.gauss(0, 0.3) * INCH])
        tolerance = draw.choice([0.0, 1 / 16, draw.uniform(0, 0.25)]) * INCH
        levels.append(
            WantedLevel(chain[place].name, reached[place] + off, tolerance, draw.randint(1, 3))
        )
    return chain, levels, start


def misses(tops, chain, levels):
    place = {r.name: n for n, r in enumerate(chain)}
    return [max(abs(tops[place[w.lift]] - w.level) - w.tolerance, 0.0) for w in levels]


def cost(rises, chain):
    return sum(r.pull * (x - r.wanted) ** 2 for x, r in zip(rises, chain, strict=True))


def least_misses(chain, levels, start):
    """Rank by rank the least greatest miss, then the next, by linear programmes alone (textbook)."""
    n, place = len(chain), {r.name: k for k, r in enumerate(chain)}
    bounds = [(r.least, r.most) for r in chain]

    def least(goal, fixed, opened):
        """Least common miss of the opened ones, or least miss of one of them with the others given."""
        rows, limits = [], []
        for k, w in enumerate(levels):
            if k not in fixed and k not in opened:
                continue
            row = np.zeros(n + 1)
            row[: place[w.lift] + 1] = 1.0
            extra = fixed.get(k)
            own = -1.0 if extra is None and (goal is None or goal == k) else 0.0
            slack = w.tolerance + (extra or 0.0) + (0.0 if own else opened.get(k, 0.0))
            for sign in (1.0, -1.0):
                one = sign * row
                one[n] = own
                rows.append(one)
                limits.append(sign * (w.level - start) + slack)
        found = linprog(np.eye(n + 1)[n], rows or None, limits or None, bounds=[*bounds, (0, None)])
        assert found.status == 0, found.message
        return found.x[n]

    fixed = {}
    for rank in sorted({w.rank for w in levels}):
        opened = {k for k, w in enumerate(levels) if w.rank == rank}
        while opened:
            common = least(None, fixed, dict.fromkeys(opened, 0.0))
            bound = {
                k
                for k in opened
                if least(k, fixed, {o: common + 1e-10 for o in opened}) > common - 1e-7
            }
            assert bound
            fixed |= dict.fromkeys(opened if common < 1e-9 else bound, common)
            opened -= set(fixed)
    return [fixed[k] for k in range(len(levels))]


@pytest.mark.parametrize("seed", range(CHAINS))
def test_misses_and_joints_are_those_of_an_independent_optimiser(seed):
    """Misses by linear programmes (HiGHS), then the joints by sequential least squares (SLSQP)."""
    chain, levels, start = random_chain(seed)
    plan = plan_joints(chain, levels, start)
    tops = start + np.cumsum(plan.rises)
    for rise, one in zip(plan.rises, chain, strict=True):
        assert one.least <= rise <= one.most
    expected = least_misses(chain, levels, start)
    assert misses(tops, chain, levels) == pytest.approx(expected, abs=2e-8)
    assert settled_misses(chain, levels, start) == pytest.approx(expected, abs=2e-8)
    assert bool(plan.unmet) == (max(expected, default=0.0) > 1e-8)

    place = {r.name: k for k, r in enumerate(chain)}
    gates = [
        (place[w.lift], w.level - w.tolerance - m, w.level + w.tolerance + m)
        for w, m in zip(levels, misses(tops, chain, levels), strict=True)
    ]
    rows = np.array([[float(j <= p) for j in range(len(chain))] for p, _, _ in gates])
    inside = []
    if gates:
        low, high = (np.array([g[k] for g in gates]) - start for k in (1, 2))
        inside = [
            {
                "type": "ineq",
                "fun": lambda x: (rows @ x - low) / INCH,
                "jac": lambda x: rows / INCH,
            },
            {
                "type": "ineq",
                "fun": lambda x: (high - rows @ x) / INCH,
                "jac": lambda x: -rows / INCH,
            },
        ]
    pull, wanted = (np.array([getattr(r, k) for r in chain]) for k in ("pull", "wanted"))
    found = minimize(
        lambda x: (pull * (x - wanted) ** 2).sum() / INCH**2,
        plan.rises,
        jac=lambda x: 2 * pull * (x - wanted) / INCH**2,
        bounds=[(r.least, r.most) for r in chain],
        constraints=inside,
        method="SLSQP",
        options={"ftol": 1e-12, "maxiter": 200},
    )
    feasible = not gates or min((rows @ found.x - low).min(), (high - rows @ found.x).min()) > -NANO
    if feasible:
        assert cost(plan.rises, chain) / INCH**2 <= found.fun + 1e-7


@pytest.mark.parametrize("seed", range(CHAINS))
def test_no_rounded_joint_leaves_its_range(seed):
    """Ends of ranges on the tape's marks or off them; both tapes."""
    chain, levels, start = random_chain(seed)
    for units in (FEET_INCHES, MILLIMETRES):
        plan = plan_joints(chain, levels, start, units)
        for rise, one in zip(plan.rounded_rises, chain, strict=True):
            assert one.least - NANO * 2 <= rise <= one.most + NANO * 2
        if plan.tick:
            marks = np.array(plan.tops) / plan.tick
            assert marks == pytest.approx(np.round(marks), abs=1e-6)
        else:
            assert plan.tops == pytest.approx(start + np.cumsum(plan.rises))


@pytest.mark.parametrize("seed", range(CHAINS // 3))
def test_small_chains_against_every_combination(seed):
    """Chains of three or four lifts, every joint in steps of a sixteenth, none of it better."""
    draw = random.Random(seed)
    chain = [
        rise_of(f"lift {n}", [block("A", draw.randint(32, 160) / 16)] * draw.randint(1, 3))
        for n in range(draw.randint(3, 4))
    ]
    top = sum(r.least + draw.randint(0, 2) / 16 * INCH for r in chain)
    place = draw.randrange(2)
    seat = sum(r.least + draw.randint(0, 2) / 16 * INCH for r in chain[: place + 1])
    levels = [WantedLevel(chain[-1].name, top), WantedLevel(chain[place].name, seat, rank=2)]
    plan = plan_joints(chain, levels)

    def judged(rises):
        found = misses(np.cumsum(rises), chain, levels)
        return (*(round(m / INCH, 6) for m in found), cost(rises, chain))

    steps = [[r.least + k / 16 * INCH for k in range(3)] for r in chain]
    best = min(judged(rises) for rises in itertools.product(*steps))
    ours, rounded = judged(plan.rises), judged(plan.rounded_rises)
    assert ours[:2] <= best[:2]
    assert ours[:2] < best[:2] or ours[2] <= best[2] + NANO
    assert rounded[:2] == best[:2]


@pytest.mark.parametrize("seed", range(CHAINS))
def test_the_tape_is_refused_only_where_a_range_holds_no_mark(seed):
    chain, _, start = random_chain(seed)
    plan = plan_joints(chain, (), start)

    def holds(tick):
        slack = tick * 1e-6
        first = ceil((start + chain[0].least - slack) / tick) <= floor(
            (start + chain[0].most + slack) / tick
        )
        return first and all(
            ceil((r.least - slack) / tick) <= floor((r.most + slack) / tick) for r in chain[1:]
        )

    marks = [INCH / 16, INCH / 32, INCH / 64]
    assert plan.tick == next((tick for tick in marks if holds(tick)), 0.0)


def test_twenty_courses_by_hand():
    """Twenty courses of 8 in at 7/16 in make 14'-0 3/4"; 14'-1 1/2" wants 3/80 in more in each."""
    plan = plan_joints(courses(20), [WantedLevel("20", 169.5 * INCH)])
    assert plan.rises == pytest.approx([8.475 * INCH] * 20)
    assert plan.tops[-1] == pytest.approx(169.5 * INCH) and not plan.unmet
    joints = {round((rise / INCH - 8) * 16) for rise in plan.rounded_rises}
    assert joints == {7, 8}
    assert sum(plan.departures) == pytest.approx(0.75 * INCH)
    assert {round(d / INCH * 16) for d in plan.departures} == {0, 1}


def test_pull_shares_by_the_number_of_pieces():
    """A lift of three pieces departs a third as far as one of one: 3/32 in more is 3/4 and 1/4 of it."""
    chain = [Rise("one", 8.0, 8.5, 9.0, 1), Rise("three", 8.0, 8.5, 9.0, 3)]
    plan = plan_joints(chain, [WantedLevel("three", 17.4)])
    assert plan.rises == pytest.approx([8.8, 8.6])


def test_equal_ranks_share_and_a_lower_rank_waits():
    """Seat at 16 7/8 in and top at 34 in are 17 1/8 in apart; two full courses between reach 17 in."""
    chain = courses(4)
    for ranks, expected in [
        ((1, 1), [16.9375, 33.9375]),
        ((1, 2), [16.875, 33.875]),
        ((2, 1), [17.0, 34.0]),
    ]:
        told = [
            WantedLevel("2", 16.875 * INCH, rank=ranks[0]),
            WantedLevel("4", 34.0 * INCH, rank=ranks[1]),
        ]
        plan = plan_joints(chain, told)
        assert np.cumsum(plan.rises)[[1, 3]] / INCH == pytest.approx(expected)
        assert len(plan.unmet) == 1 and '1/8" short' in plan.unmet[0]


def test_a_level_does_not_share_what_others_of_its_rank_miss():
    """The first can come no lower than 8 3/8 in, the second then no higher than 16 7/8 in; the ninth is met."""
    levels = [
        WantedLevel("1", 8.0 * INCH),
        WantedLevel("2", 17.125 * INCH),
        WantedLevel("9", 76.0 * INCH),
    ]
    plan = plan_joints(courses(9), levels)
    found = np.array(misses(np.cumsum(plan.rises), courses(9), levels)) / INCH
    assert found == pytest.approx([0.375, 0.25, 0.0], abs=1e-9)


def test_the_sentence_names_the_two_levels_and_the_measure():
    chain = courses(4)
    plan = plan_joints(
        chain, [WantedLevel("1", 8.4375 * INCH), WantedLevel("3", 25.9375 * INCH, rank=2)]
    )
    (said,) = plan.unmet
    assert said == (
        "From the top of 1 to the top of 3 the fullest joints reach 1'-5\"; 1'-5 1/2\" is wanted: "
        '1/2" short. The top of 3 comes 1/2" low.'
    )
    (low,) = plan_joints(chain, [WantedLevel("2", 16.5 * INCH)], start_name="the footing").unmet
    assert low == (
        "From the footing to the top of 2 the thinnest joints take 1'-4 3/4\"; 1'-4 1/2\" is "
        'wanted: 1/4" too much. The top of 2 comes 1/4" high.'
    )
    (metric,) = plan_joints(chain, [WantedLevel("2", 0.5)], units=MILLIMETRES).unmet
    assert "fullest joints reach 432 mm; 500 mm is wanted: 68 mm short" in metric
    twice = plan_joints(chain, [WantedLevel("2", 16.8 * INCH), WantedLevel("2", 16.925 * INCH)])
    assert twice.unmet[0].startswith('The top of 2 is wanted at two levels that are 1/8" too far')


def test_pieces_of_one_lift_even_out_or_are_refused_by_name():
    """9 in on 3/8 to 1/2 and 8 7/8 in on 1/2 to 3/4: 9 3/8 to 9 1/2 and 9 3/8 to 9 5/8."""
    tall, short = block("WL", 9.0), block("BK", 8.875, 0.5, 0.5, 0.75)
    rise = rise_of("wall", [tall, short])
    assert (rise.least / INCH, rise.most / INCH) == pytest.approx((9.375, 9.5))
    assert rise.wanted / INCH == pytest.approx((9.4375 + 9.375) / 2) and rise.pull == 2
    joints = dict(rise.joints(9.4375 * INCH))
    assert joints["WL"] / INCH == pytest.approx(7 / 16) and joints["BK"] / INCH == pytest.approx(
        9 / 16
    )
    with pytest.raises(InputError) as wrong:
        rise_of("wall", [tall, block("WR", 9.0), block("BK", 8.5)])
    told = str(wrong.value)
    assert "WL and BK cannot come level" in told and '3/8" too much' in told
    with pytest.raises(InputError, match="10 mm too much"):
        rise_of("wall", [tall, block("BK", 8.5)], MILLIMETRES)


@pytest.mark.parametrize(
    ("act", "said"),
    [
        (lambda: plan_joints([]), "there is none"),
        (lambda: plan_joints([*courses(2), *courses(1)]), "'1' twice"),
        (
            lambda: plan_joints(courses(2), [WantedLevel("3", 1.0)]),
            "no lift '3'; the lifts are 1, 2",
        ),
        (lambda: plan_joints(courses(2), units="feet"), "feet-inches or millimetres is wanted"),
        (lambda: plan_joints(courses(2), start=float("nan")), "start is nan, which is no level"),
        (lambda: Rise("a", -0.1, 0.0, 0.1), "no less than nought"),
        (lambda: Rise("a", 2.0, 1.5, 1.0), "were two of them swapped"),
        (lambda: Rise("a", 1.0, float("nan"), 2.0), "The rise of a"),
        (lambda: Rise("a", 1.0, 1.5, 2.0, 0), "pull of a is 0"),
        (lambda: WantedLevel("a", float("inf")), "which is no level"),
        (lambda: WantedLevel("a", 1.0, -0.1), "nought or more is wanted"),
        (lambda: WantedLevel("a", 1.0, rank=0), "rank 1 is met first"),
        (lambda: rise_of("a", []), "has no piece"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(act, said):
    with pytest.raises(InputError, match=said):
        act()


def test_lengths_read_as_on_a_tape():
    assert tape_text(8.53125 * INCH, FEET_INCHES, INCH / 32) == '8 17/32"'
    assert tape_text(INCH / 40, FEET_INCHES) == 'under 1/16"'
    assert tape_text(0.0003, MILLIMETRES) == "under 1 mm"
    assert tape_text(0.0105, MILLIMETRES, 0.0005) == "10.5 mm"
    assert tape_text(0.01025, MILLIMETRES, 0.00025) == "10.25 mm"
    assert tape_text(0.0, FEET_INCHES) == '0"' and tape_text(1e-12, FEET_INCHES) == '0"'


@given(
    st.lists(
        st.tuples(st.integers(0, 60), st.integers(0, 8), st.integers(0, 8)), min_size=1, max_size=20
    ),
    st.integers(0, 20),
    st.integers(-40, 40),
)
def test_on_the_grid_nothing_is_lost_by_rounding(told, place, off):
    """Ranges and levels in sixteenths: the rounded tops reach every level as well as exact ones."""
    tick = INCH / 16
    chain = [
        Rise(
            f"{n}",
            (100 + a) * tick,
            (100 + a) * tick + (b + 0.3) * tick / 2,
            (100 + a + b) * tick,
            1 + c,
        )
        for n, (a, b, c) in enumerate(told)
    ]
    place = min(place, len(chain) - 1)
    level = sum(r.wanted for r in chain[: place + 1])
    level = round(level / tick + off) * tick
    plan = plan_joints(chain, [WantedLevel(f"{place}", level)])
    exact = misses(np.cumsum(plan.rises), chain, plan.wanted)
    assert plan.tick == tick
    assert misses(plan.tops, chain, plan.wanted) == pytest.approx(exact, abs=NANO)
    assert np.abs(np.array(plan.tops) - np.cumsum(plan.rises)).max() <= tick / 2 + NANO


def house():
    """A base, two courses of walls of two heights, a lintel, worked by hand below."""
    walls = [block("WL", 8.0), block("WR", 8.0), block("BK", 7.9375, 0.375, 0.5, 0.625)]
    return [
        rise_of("base", [block("B1", 3.0)]),
        rise_of("course 1", walls),
        rise_of("course 2", walls),
        rise_of("lintel", [block("L1", 6.0)]),
    ]


def test_the_pole_by_hand():
    """Base on 7/16: 3 7/16 in; walls on 7/16 and back on 1/2 come 8 7/16 more; the lintel's bed 3/8 at least."""
    plan = plan_joints(
        house(),
        [
            WantedLevel("course 2", 20.3125 * INCH),
            WantedLevel("lintel", 26.5 * INCH, INCH / 8, rank=2),
        ],
        start_name="the slab",
    )
    rows = {row.lift: row for row in pole_rows(plan)}
    expected = [3.4375, 11.875, 20.3125, 26.6875]
    assert [row.top / INCH for row in rows.values()] == pytest.approx(expected)
    assert [row.bed for row in rows.values()] == [0.0, *(row.top for row in rows.values())][:4]
    joints = {"WL": 7 / 16 * INCH, "WR": 7 / 16 * INCH, "BK": INCH / 2}
    assert dict(rows["course 1"].joints) == pytest.approx(joints)
    for row in rows.values():
        assert row.top - row.bed == pytest.approx(row.rise)
        assert row.off is None or row.off == pytest.approx(row.top - row.wanted)
    headings, table = pole_table(plan)
    assert len(headings) == 6
    assert [line[0] for line in table] == ["lintel", "course 2", "course 1", "base"]
    assert table[2] == ("course 1", '3 7/16"', 'WL and WR 7/16", BK 1/2"', '11 7/8"', "", "")
    assert table[1][4:] == ("1'-8 5/16\"", "as wanted")
    assert table[0][4:] == ('2\'-2 1/2" ± 1/8"', '3/16" high')
    *_, slab, said = pole_text(plan).splitlines()
    assert slab.split() == ["the", "slab", '0"']
    assert said == (
        'From the top of course 2 to the top of lintel the thinnest joints take 6 3/8"; 6 5/16" '
        'is wanted: 1/16" too much. The top of lintel comes 3/16" high.'
    )


def test_the_pole_in_millimeters_goes_to_half_ones_at_most_for_a_level():
    """An inch set on a metric tape: full joints of 12.7 mm reach 685.8 mm; halves lose 1.3 of it, whole ones 2.8."""
    plan = plan_joints(house(), [WantedLevel("lintel", 27.0 * INCH)], units=MILLIMETRES)
    assert plan.tick == 0.0005 and not plan.unmet
    assert pole_table(plan)[1][0][3:] == ("684.5 mm", "685.8 mm", "1.3 mm low")


def test_a_level_between_two_marks_asks_for_no_finer_ones():
    """8 15/32 in lies half a mark from 8 7/16 and 8 1/2: sixteenths will do, half a mark off."""
    plan = plan_joints(courses(1), [WantedLevel("1", 8.46875 * INCH)])
    assert plan.tick == INCH / 16 and plan.tops == pytest.approx([8.5 * INCH])
    below = plan_joints(
        [Rise("1", 8.0 * INCH, 8.0 * INCH, 8.49 * INCH)], [WantedLevel("1", 8.49 * INCH)]
    )
    assert below.tick == INCH / 32 and below.tops == pytest.approx([8.46875 * INCH])


def test_tops_no_tape_has_a_mark_for():
    plan = plan_joints([Rise(f"{n}", 0.20033, 0.20033, 0.20033) for n in range(3)])
    assert plan.tick == 0.0 and "No mark of the tape" in pole_text(plan)
    assert pole_rows(plan)[2].top == pytest.approx(0.60099)
    assert joint_words((), FEET_INCHES) == ""
    half = plan_joints([Rise("a", 8.46875 * INCH, 8.46875 * INCH, 8.46875 * INCH)])
    assert half.tick == INCH / 32 and pole_table(half)[1][0][3] == '8 15/32"'
    fine = plan_joints([Rise("a", 8.515625 * INCH, 8.515625 * INCH, 8.515625 * INCH)])
    assert fine.tick == INCH / 64 and pole_table(fine)[1][0][3] == '8 33/64"'
