"""What stays, what another country says, and two or three changes together, against every setting
tried one after the other.
"""

from __future__ import annotations

import os
from functools import cache
from random import Random
from types import SimpleNamespace

import mending_by_force as force
import numpy as np
import pytest
from sampled import sampled

from fireplace_calc import Design, assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, SQIN, InputError
from fireplace_calc.editing.changes import value_of
from fireplace_calc.explore import LOOKS, find_combinations, find_remedies, liner_raises
from fireplace_calc.explore.mending.locks import foreign, locked_inputs, stays
from fireplace_calc.explore.mending.remedies import screened
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.explore.together import effects
from fireplace_calc.explore.together.combined import looking_for_combinations
from fireplace_calc.explore.together.effects import AT_ONCE, REST, Effects
from fireplace_calc.explore.together.forecast import between
from fireplace_calc.explore.together.hunt import PRICED, Hunt
from fireplace_calc.explore.together.looking import SURE, Want, score
from fireplace_calc.explore.together.teams import promising
from fireplace_calc.lessons.valid_designs import valid_design
from fireplace_calc.rules.comparing import FALLS_SHORT

PACK = "US IRC 2021"
HOW_MANY = int(os.environ.get("MENDS", "0"))
"""Random shortfalls of the long run, by hand; else a handful."""
SEEDS = range(HOW_MANY) if HOW_MANY else sampled((1, 0, 3), 1)
PAIRS = 3 if HOW_MANY else 1
"""Pairs of levers tried by force in each of them."""
BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")
RAISED = change(BOATHOUSE, {"flue.size": "12", "flue.sections": 22, "opening.extension": "14 in"})
SMALL_FLUE = change(Design(), {"opening.extension": "12 in", "flue.size": "12x12"})
SPOILED = {
    "opening.extension": ("6 in", "10 in", "14 in", "20 in"),
    "flue.sections": (-8, -5, -3, -2),
    "flue.size": ("8", "10", "8.5x8.5", "8.5x13", "12x12"),
    "hearth.front": ("12 in", "15 in"),
    "hearth.side": ("4 in", "7 in"),
    "firebox.depth": ("16 in", "18 in"),
    "throat.depth": ("3 in", "4 in"),
    "house.exhaust": ("60 L/s", "120 L/s"),
    "clearance.back": ("1 in", "3 in"),
    "base.footing_thickness": ("6 in", "9 in"),
    "chimney.wall": ("3 in",),
    "lintel.bearing": ("1 in", "3 in"),
    "site.altitude": ("5280 ft",),
}
"""What is done to a sound design, a few at a time; the sections are counted from what it has."""


@cache
def shortfall(seed: int):
    """A sound design with one to four things spoiled, and what is to be kept; invented."""
    draw = Random(f"mends {seed}")
    while True:
        design = valid_design(draw.randrange(10**6), PACK)
        changes = {}
        for key in draw.sample(sorted(SPOILED), draw.randint(1, 4)):
            value = draw.choice(SPOILED[key])
            if key == "flue.sections":
                value = max(4, design.flue.sections + value)
            if key == "flue.size":
                changes["flue.shape"] = "rectangular" if "x" in value else "round"
            changes[key] = value
        made = force.drawn(design, changes)
        if made is not None and any(
            f.verdict == FALLS_SHORT for f in every_finding(assess(made, PACK)).values()
        ):
            return made, tuple(draw.sample(sorted(LOOKS), draw.randint(0, 3)))


@cache
def before_and_after(design, other):
    """Verdicts of the job's own books, before and after."""
    (before, _), (after, _) = force.worked([design, other], PACK)
    return force.own(before, PACK), force.own(after, PACK)


def one_step_less(design, remedy, n):
    """The remedy with one of its levers a step back, or left alone; nothing where it has no such
    step.
    """
    one = remedy.settings[n]
    others = [s for s in remedy.settings if s is not one]
    if one.steps > 1:
        nearer = [
            s
            for lever, row in force.rows_of(design)
            for s in row
            if lever == one.lever and s.piece == one.piece and s.steps == one.steps - 1
        ]
        if not nearer:
            return None
        others.append(nearer[0])
    return force.drawn(design, {key: v for s in others for key, v in s.change.items()})


@pytest.mark.parametrize("seed", SEEDS)
def test_every_mend_of_a_random_shortfall_holds(seed):
    """It mends what it says and breaks nothing of the job's own books, one step less of any of its
    changes does not, and what is kept stays.
    """
    design, locks = shortfall(seed)
    locked = locked_inputs(locks)
    found = [
        *find_remedies(design, PACK, locks=locks),
        *find_combinations(design, PACK, locks=locks),
    ]
    for one in found:
        changed = change(design, one.change)
        assert all(value_of(design, key) == value_of(changed, key) for key in locked)
        before, after = before_and_after(design, changed)
        assert not force.spoilt(before, after), one.sentence()
        assert force.mended(before, after) == set(one.mends) != set(), one.sentence()
        for n in range(len(one.settings)):
            less = one_step_less(design, one, n)
            if less is not None:
                before, near = before_and_after(design, less)
                assert force.spoilt(before, near) or not set(one.mends) <= force.mended(
                    before, near
                ), f"{one.sentence()} without a step of {one.settings[n].lever.instruction}"


@pytest.mark.parametrize("seed", SEEDS)
def test_no_pair_tried_by_force_mends_more_or_costs_less(seed):
    """Every setting of some pairs of levers, drawn at random from those that move anything."""
    design, locks = shortfall(seed)
    locked, draw = locked_inputs(locks), Random(f"pairs {seed}")
    found = [
        *find_remedies(design, PACK, locks=locks),
        *find_combinations(design, PACK, locks=locks, most=2),
    ]
    most = max((len(one.mends) for one in found), default=0)
    reach = {key for one in found for key in one.mends}
    rows = [
        (lever, row)
        for lever, row in force.rows_of(design)
        if not locked & {key for s in row for key in s.change}
    ]
    tried = 0
    while tried < PAIRS:
        one, other = draw.sample(rows, 2) if draw.random() < 0.3 else _airy(draw, rows)
        if {k for s in one[1] for k in s.change} & {k for s in other[1] for k in s.change}:
            continue
        tried += 1
        for fixes, cost, changes in force.least_pairs(design, PACK, one, other, locked):
            if not _honest(one[0], fixes) or not _honest(other[0], fixes):
                continue
            assert len(fixes) <= most and fixes <= reach, (sorted(fixes), changes)
            if cost is not None and len(fixes) == most:
                ours = [r.cost for r in found if fixes <= set(r.mends) and r.cost is not None]
                assert ours and min(ours) <= cost + 0.01, (sorted(fixes), cost, changes, ours)


def _airy(draw, rows):
    """Two levers of the draft: where two most often do what one does not."""
    return draw.sample([row for row in rows if row[0].for_draft], 2)


def _honest(lever, fixes):
    return not lever.only_for or any(key.startswith(lever.only_for) for key in fixes)


def test_a_larger_liner_and_a_deeper_throat_do_what_neither_does():
    """A 13x18 in liner is 173 in2 net and wants a throat as large: alone it breaks that, and its
    throat alone leaves the flue too small.
    """
    keep = ("width", "raise", "height", "look")
    alone = find_remedies(SMALL_FLUE, locks=keep)
    assert "FLU-11" not in {key for one in alone for key in one.mends}
    pair = next(
        one
        for one in find_combinations(SMALL_FLUE, locks=keep, most=2)
        if "FLU-11" in one.mends and len(one.settings) == 2
    )
    assert {one.lever.key for one in pair.settings} == {"flue.size", "throat.depth"}
    assert pair.change["flue.size"] == "13x18"
    assert change(SMALL_FLUE, pair.change).throat.depth == pytest.approx(7 * INCH)


def test_a_check_that_waits_shows_what_it_has_to_spare():
    """A smaller liner draws better, and leaves a chimney too light to hold the jamb against the
    thrust of its arch; a narrower opening thrusts less. That check waits for an answer before and
    after both. By force: 12x16 wants 42 in and 13x13, a little cheaper, 43 in.
    """
    design, locks = shortfall(94)
    pair = next(
        one for one in find_combinations(design, PACK, locks=locks, most=2) if "DRF-05" in one.mends
    )
    assert pair.change["flue.size"] == "13x13"
    assert change(design, pair.change).opening.width == pytest.approx(43 * INCH)
    tried = [("12x16", 42), ("13x13", 43), ("12x16", 43), ("13x13", 44)]
    made = [change(design, {"flue.size": z, "opening.width": f"{w} in"}) for z, w in tried]
    (before, was), *after = force.worked([design, *made], PACK)
    verdicts = [force.own(one, PACK) for one in (before, *(now for now, _ in after))]
    mends = ["DRF-05" in force.mended(verdicts[0], now) for now in verdicts[1:]]
    breaks = [force.spoilt(verdicts[0], now) for now in verdicts[1:]]
    assert mends == [True, True, True, True] and breaks == [False, False, True, True]
    assert pair.cost == pytest.approx(after[1][1].total - was.total)
    assert pair.cost < after[0][1].total - was.total


def test_two_small_changes_may_be_cheaper_than_one_large_one():
    """A taller chimney mends four things alone; with an opening 1 in lower it takes a section less.
    By force, every setting of both: one section and 21 in cost least.
    """
    design, locks = shortfall(462)
    alone = find_remedies(design, PACK, locks=locks)[0]
    pair = find_combinations(design, PACK, locks=locks, most=2)[0]
    assert pair.mends == alone.mends and len(pair.mends) == 4 and pair.cost < alone.cost
    assert {one.lever.key for one in pair.settings} == {"flue.sections", "opening.standard_height"}
    rows = {lever.key: (lever, row) for lever, row in force.rows_of(design)}
    pairs = force.least_pairs(
        design, PACK, *(rows[one.lever.key] for one in pair.settings), locked_inputs(locks)
    )
    assert min(cost for fixes, cost, _ in pairs if fixes == set(pair.mends)) == pytest.approx(
        pair.cost
    )


def test_a_promise_that_fails_hides_no_smaller_one(monkeypatch):
    """Where several levers are foretold to mend all and do not, what they do mend, and what others
    do, is looked for next.
    """
    design = change(
        Design(), {"hearth.front": "14 in", "hearth.side": "6 in", "firebox.depth": "18 in"}
    )
    honest = {frozenset(one.mends) for one in find_combinations(design, most=2)}

    def boasting(effects, size, at_least, unmended):
        teams = promising(effects, size, at_least, unmended)
        assert all(team.goal < effects.base.aims for team in teams) and teams
        return [team._replace(goal=effects.base.aims, cost=-1e9) for team in teams]

    monkeypatch.setattr("fireplace_calc.explore.together.combined.promising", boasting)
    assert {frozenset(one.mends) for one in find_combinations(design, most=2)} == honest


def test_where_settings_cost_the_same_the_search_ends():
    """Of equals the first that does it is taken, and of those without a price none that does not:
    two orders of the same prices went round and round.
    """
    design, locks = shortfall(117)
    assert all(
        len(one.settings) == 2 for one in find_combinations(design, PACK, locks=locks, most=2)
    )
    hunt = Hunt.__new__(Hunt)
    hunt.cost = np.full((6, 7), np.inf)
    open_to = np.indices((6, 7)).sum(axis=0) > 4
    assert hunt._few(open_to) == [tuple(map(int, at)) for at in np.argwhere(open_to)[:PRICED]]


def test_what_only_levers_together_break_is_seen():
    """Among the scores stands one for all that no lever breaks by itself."""
    base, rows = screened(SMALL_FLUE, PACK, None, ())
    effects = Effects(base, rows[:2], {})
    for _ in effects.look_around():
        pass
    key = next(k for k, f in base.before.items() if f.verdict == "meets" and k not in effects.keys)
    worse = base.before | {key: base.before[key]._replace(verdict=FALLS_SHORT, margin=-1.0)}
    before, after = effects.scored(base.before), effects.scored(worse)
    assert effects.keys[-1] == REST and before[-1] > 0 > after[-1]
    assert (before[:-1] == after[:-1]).all()


def test_a_search_ends_where_all_that_it_finds_proves_worse(monkeypatch):
    """Every best is looked at in full, refused, and the next one tried, so many times and no more."""
    proved = []

    def worse(base, designs):
        proved.append(len(designs))
        assert len(proved) < 100, "the same one is proved again and again"
        return [None] * len(designs)

    monkeypatch.setattr("fireplace_calc.explore.together.combined.assess_unless_worse", worse)
    keep = ("width", "raise", "height", "look")
    found = find_combinations(SMALL_FLUE, aims=["FLU-11"], locks=keep, most=2)
    assert found == () and sum(proved) > 1


def test_three_changes_mend_what_two_do_not():
    """A hearth short in front and at the sides, and a shallow box: three things, three changes."""
    design = change(
        Design(), {"hearth.front": "14 in", "hearth.side": "6 in", "firebox.depth": "18 in"}
    )
    found = find_combinations(design)
    best = found[0]
    assert {one.lever.key for one in best.settings} == {
        "hearth.front", "hearth.side", "firebox.depth",
    }  # fmt: skip
    assert {"FBX-09", "HTH-07", "HTH-08", "SMK-01"} == set(best.mends)
    (_, was), (_, now) = force.worked([design, change(design, best.change)], PACK)
    assert best.cost == pytest.approx(now.total - was.total)
    assert best.hours == pytest.approx(
        assess(change(design, best.change)).work.hours - assess(design).work.hours
    )


def test_steps_tell_how_far_they_are():
    told = list(looking_for_combinations(SMALL_FLUE))
    assert [done for done, *_ in told] == sorted(done for done, *_ in told)
    assert told[-1][0] == told[-1][1] and all(words for *_, words in told)


def test_what_is_kept_is_named_by_look_or_by_input():
    assert locked_inputs(("width",)) == {"opening.width"}
    assert locked_inputs(("throat.depth", "raise")) == {"throat.depth", "opening.extension"}
    with pytest.raises(InputError, match="chimney_pot"):
        find_remedies(SMALL_FLUE, locks=("chimney_pot",))
    kept = {key for name in ("width", "air") for key in LOOKS[name].keys}
    for one in find_remedies(RAISED, locks=("width", "air")):
        assert not kept & set(one.change), one.sentence()


def test_what_a_set_decides_stays_too_when_it_is_kept():
    """A set's raise comes in whole courses, and its width with its pieces: what is kept is not
    moved by what follows from another change either.
    """
    design = change(Design(), {"pieces.set": "middling", "hearth.front": "12 in"})
    for keep in (("width", "raise"), ("opening.standard_height",), ("firebox.depth",)):
        keys = locked_inputs(keep)
        found = [*find_remedies(design, locks=keep), *find_combinations(design, locks=keep, most=2)]
        assert found
        for one in found:
            changed = change(design, one.change)
            assert all(value_of(design, key) == value_of(changed, key) for key in keys)


def test_what_follows_from_a_change_may_not_move_what_is_kept():
    """Another set brings another width."""
    design = change(Design(), {"pieces.set": "middling"})
    other = change(design, {"pieces.set": "wide"})
    moved = {
        k
        for k in ("opening.width", "opening.extension")
        if value_of(design, k) != value_of(other, k)
    }
    assert moved and not stays(design, other, moved) and stays(design, other, ["fire.moisture"])


def test_canadas_table_is_no_shortfall_of_an_american_job():
    """The next liner mends what the job's code asks; Canada's table calls it too large, which is
    said beside it and rejects nothing.
    """
    assert foreign(PACK) == {"DRF-08", "DRF-09"} and not foreign("Canada Ontario")
    larger = next(one for one in find_remedies(RAISED) if one.lever.key == "flue.size")
    assert "FLU-10" in larger.mends and [f.key for f in larger.warns] == ["DRF-09"]
    assert all("DRF-09" not in (*one.mends, *one.stays) for one in find_remedies(Design()))
    ours = find_remedies(RAISED)
    assert [bool(one.warns) for one in ours] == sorted(bool(one.warns) for one in ours)


def test_the_next_liner_of_the_other_shape_is_a_lever():
    """IRC tables of clay liners: a round 12 is 113 in2, the next rectangular one by net area 13x13
    with 127 in2.
    """
    row = next(row for lever, row in force.rows_of(RAISED) if lever.key == "flue.shape")
    assert row[0].change == {"flue.shape": "rectangular", "flue.size": "13x13"}
    assert row[0].before == "round 12" and row[0].after == "rectangular 13x13"


def test_a_longer_jamb_holds_an_arch():
    """A flat arch 48 in wide tips an 8 in jamb outward (STR-18)."""
    design = change(
        Design(),
        {
            "opening.head": "segmental",
            "opening.rise": "4 in",
            "opening.width": "48 in",
            "firebox.jamb": "8 in",
            "loads.in_triangle": "no",
        },
    )
    found = {one.lever.key: one for one in find_remedies(design, aims=["STR-18"])}
    longer = change(design, found["firebox.jamb"].change)
    shorter = change(design, {"firebox.jamb": f"{longer.firebox.jamb / INCH - 0.5:g} in"})
    for made, held in ((longer, True), (shorter, False)):
        assert (every_finding(assess(made))["STR-18"].verdict == "meets") is held


# -- liners against the raise ----------------------------------------------------------------------
def test_the_table_of_liners_by_hand():
    """IRC R1003.15.1: round liners want a twelfth of the opening, square ones a tenth.

    Round 12 in: 113 in2 net, 12 x 113 = 1356 in2; an opening 42 in wide may be 32.29 in high, 2.29
    over 30: 2-1/4 in to the sixteenth below. Rectangular 13x18, 173 in2, under 2:1 a tenth: 1730 /
    42 = 41.19, 11-3/16 in.
    """
    table = liner_raises(RAISED)
    rows = {(row.shape, row.size): row for row in table.rows}
    assert len(rows) == 25 and [r.net_area for r in table.rows] == sorted(
        r.net_area for r in table.rows
    )
    own, wide = rows["round", "12"], rows["rectangular", "13x18"]
    assert own.net_area == pytest.approx(113 * SQIN) and own.taken and not wide.taken
    assert own.raised == pytest.approx(2.25 * INCH, abs=1e-9)
    assert own.stop.kind == "code" and [f.key for f in own.stop.findings] == ["FLU-10"]
    assert wide.raised == pytest.approx((11 + 3 / 16) * INCH, abs=1e-9)
    assert [f.key for f in wide.stop.findings] == ["FLU-12"]
    small = rows["round", "10"]
    assert small.raised is None and "FLU-10" in {f.key for f in small.short}
    assert {f.key for f in table.aside} >= {"CLR-08"}
    assert not {f.key for row in table.rows for f in row.short} & {"DRF-08", "DRF-09"}


@pytest.mark.parametrize("first", [False, True])
@pytest.mark.parametrize("second", [False, True])
def test_what_one_of_two_levers_moves_is_looked_at(first, second):
    """The draft where either is for the draft, the loads where either loads; each told apart."""
    for draft, loads in (((first, second), (second, False)), ((second, False), (first, second))):
        levers = [
            SimpleNamespace(for_draft=d, loads=("chimney",) if w else ())
            for d, w in zip(draft, loads, strict=True)
        ]
        both = SimpleNamespace(rows=[SimpleNamespace(lever=one) for one in levers])
        found = Effects._want(both, ((0, 3), (1, 0)), "design")
        assert found == Want("design", draft[0] or draft[1], loads[0] or loads[1])


def test_what_waits_for_an_answer_is_far_from_mended():
    """A jamb long enough on paper whose check waits for an answer counted as nearly mended, so that
    the search asked for one step more again and again.
    """
    base, _ = screened(SMALL_FLUE, PACK, None, ())
    short = base.before["FLU-11"]
    waiting = short._replace(verdict="not checked", margin=3.0)
    assert score(base, waiting) == -SURE < score(base, short) < 0
    assert score(base, short._replace(verdict="meets", margin=0.0)) > 0
    was = {f.verdict: f for k, f in base.before.items() if k not in base.aims}
    assert score(base, was["not checked"]._replace(margin=3.0)) == 3.0
    assert score(base, was["meets"]._replace(verdict="not checked", margin=3.0)) == -SURE


@pytest.mark.parametrize("count", [0, 1, AT_ONCE, AT_ONCE + 1, 3 * AT_ONCE - 1])
def test_of_many_designs_each_is_looked_at_and_a_hand_is_let_in_between(monkeypatch, count):
    monkeypatch.setattr(effects, "look", lambda base, wanted, only: [{"of": one} for one in wanted])
    going = Effects.some_at_a_time(SimpleNamespace(base=None), {n: -n for n in range(count)}, None)
    pauses = 0
    with pytest.raises(StopIteration) as ended:
        while True:
            next(going)
            pauses += 1
    assert ended.value.value == {n: {"of": -n} for n in range(count)}
    assert pauses == -(-count // AT_ONCE)


def test_a_pair_that_nobody_has_looked_at_is_foretold_as_its_nearest_neighbor():
    near, far = np.array([7.0]), np.array([3.0])
    foretold = between((3, 6), {(1, 1): far, (2, 5): near})
    assert foretold[1, 5] == near and foretold[2, 1] == far
    assert foretold[1, 1] == far and foretold[2, 5] == near
    assert not foretold[0].any() and not foretold[:, 0].any()
