"""Looking for changes together, and how far a firebox can be raised: over grids that are small enough
to be tried whole, and the ends at which a search says that there is nothing.
"""

from types import SimpleNamespace

import numpy as np
import pytest

from fireplace_calc import PACKS, Design, assess, change
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore import find_combinations, find_remedies, liners
from fireplace_calc.explore.liners import liner_raises
from fireplace_calc.explore.mending import least_steps
from fireplace_calc.explore.mending.least_steps import least_settings
from fireplace_calc.explore.mending.locks import foreign
from fireplace_calc.explore.mending.remedies import screened
from fireplace_calc.explore.mending.trials import Baseline, LeverTrials
from fireplace_calc.explore.raising import highest_raise
from fireplace_calc.explore.together.effects import Effects
from fireplace_calc.explore.together.hunt import Hunt
from fireplace_calc.explore.together.pairs import pair_up
from fireplace_calc.explore.worked_figures import work_figures

PACK = "US IRC 2021"
SMALL_FLUE = change(Design(), {"opening.extension": "12 in", "flue.size": "12x12"})


def hunt_over(foretold, costs, known=()):
    """A search over an invented grid: what a check is over nought by, as foretold."""
    rows = tuple(range(foretold.ndim))
    effects = SimpleNamespace(
        together=lambda rows: foretold[..., None].copy(),
        aims=1,
        keys=("A",),
        known=dict(known),
        costs=lambda row: np.asarray(costs[row]),
        cost=lambda point: sum(costs[row][n + 1] for row, n in point),
    )
    return Hunt(effects, rows, frozenset({"A"}))


def hunted(truth, foretold, costs):
    """The search at its end, and its rounds and doubts at every look."""

    def at(point):
        moved = dict(point)
        return tuple(moved.get(row, -1) + 1 for row in range(truth.ndim))

    hunt, looks = hunt_over(foretold, costs), []
    while asked := hunt.wants():
        looks.append((hunt.rounds, hunt.doubts))
        hunt.take({point: np.array([truth[at(point)]]) for point in asked})
    return hunt, looks


def rising(dice, count):
    return np.concatenate([[0.0], np.cumsum(dice.random(count - 1))])


def grid(dice, shape, off):
    """What an invented check comes to, as foretold and in truth, and the costs of every lever."""
    gains = [rising(dice, count) for count in shape]
    costs = [rising(dice, count) for count in shape]
    foretold = sum(np.ix_(*gains)) - 0.55 * sum(gain[-1] for gain in gains)
    moved = (np.indices(shape) > 0).all(axis=0)
    return foretold + off * dice.standard_normal(shape) * moved, foretold, costs, moved


@pytest.mark.parametrize("shape", [(5, 6), (4, 3, 5)])
@pytest.mark.parametrize("off", [0.0, 0.15])
def test_a_search_ends_at_a_least_setting_that_does_it(shape, off):
    """Against every setting of an invented grid; foretold rightly, at the cheapest of those that
    no lever is needed less for.
    """
    dice = np.random.default_rng(7)
    for _ in range(30):
        truth, foretold, costs, moved = grid(dice, shape, off)
        hunt, looks = hunted(truth, foretold, costs)
        assert looks[0] == (1, 0), "the first look is a round, and no doubt"
        assert [sum(look) for look in looks] == list(range(1, len(looks) + 1))
        doing = {at: sum(c[k] for c, k in zip(costs, at, strict=True))
                 for at in map(tuple, np.argwhere((truth > 0) & moved))}  # fmt: skip
        if hunt.dead:
            assert off
            continue
        assert doing[hunt.best] == pytest.approx(float(hunt.cost[hunt.best]))
        fewest = [
            cost
            for at, cost in doing.items()
            if not any(
                truth[tuple(np.subtract(at, step))] > 0 for step in np.eye(len(at), dtype=int)
            )
        ]
        if not off:
            assert doing[hunt.best] == pytest.approx(min(fewest))


def test_what_was_seen_of_two_levers_stands_with_the_third_left_alone():
    """Steps from there to every setting: a step of each lever is one."""
    foretold, costs = np.zeros((4, 5, 3)), [range(4), range(5), range(3)]
    hunt = hunt_over(foretold, costs, {(0, 1): [(2, 3)], (1, 2): [(4, 1)]})
    known = {(2, 3, 0), (0, 4, 1)}
    for at in np.ndindex(4, 5, 3):
        lone = sum(at) - max(at)  # all but one lever left alone is foretold rightly
        steps = [sum(abs(a - b) for a, b in zip(at, one, strict=True)) for one in known]
        assert hunt.away[at] == min(lone, *steps), at


@pytest.mark.parametrize("seed", [37, 106, 197, 101, 110])
def test_a_search_that_looks_too_long_takes_the_cheapest_it_has_proved(seed):
    """Invented grids that are far from foretold, eight looks at three levers. Seeds 101 and 110: it
    has proved none.
    """
    truth, foretold, costs, _ = grid(np.random.default_rng(seed), (8, 8, 8), 1.5)
    hunt, _ = hunted(truth, foretold, costs)
    assert hunt.rounds == 8

    def below(at):
        return [tuple(np.subtract(at, step)) for step in np.eye(3, dtype=int)]

    proved = {
        at: float(hunt.cost[at])
        for at in hunt.seen
        if truth[at] > 0
        and min(at) > 0
        and all(one in hunt.seen and truth[one] <= 0 for one in below(at))
    }
    assert hunt.dead == (seed in (101, 110)) == (not proved)
    assert hunt.best == min(proved, key=proved.get, default=())
    assert hunt.asked == [] == hunt.wants()


def test_settings_that_cannot_be_drawn_together_cost_without_end_and_teach_nothing(monkeypatch):
    base, rows = screened(SMALL_FLUE, PACK, None, ())
    effects = Effects(base, [r for r in rows if r.lever.key in ("flue.size", "opening.width")], {})
    for _ in effects.look_around():
        pass
    list(pair_up(effects))
    assert len(effects.twists) == len(effects.known) == 2, "each size of a flue with the width"
    effects.twists.clear()
    effects.known.clear()
    monkeypatch.setattr(Baseline, "tried", lambda self, changes: None)
    assert effects.cost(((0, 0), (1, 0))) == np.inf
    assert list(pair_up(effects)) == [] and effects.twists == effects.known == {}


def test_where_nothing_is_to_be_mended_or_nothing_may_move_there_are_no_combinations():
    assert find_combinations(SMALL_FLUE, aims=[]) == ()
    assert find_combinations(SMALL_FLUE, aims=["FLU-11"], locks=all_inputs()) == ()


def test_a_remedy_tells_where_its_first_lever_was_and_goes():
    (lower,) = find_remedies(SMALL_FLUE, aims=["FLU-11"])
    assert lower.lever.key == "opening.standard_height"
    assert (lower.before, lower.after) == pytest.approx((30 * INCH, 16 * INCH))


def test_below_a_setting_that_proves_good_every_one_is_screened(monkeypatch):
    """Steps 1 to 9, of which 0, 3 and 8 were looked at first: 8 mends, and so do 5 to 7."""
    doing, asked = {5, 6, 7, 8}, []
    row = LeverTrials.__new__(LeverTrials)
    row.tried = [(f"setting {k}", f"design {k}") for k in range(9)]
    row.mends = {0: set(), 3: set(), 8: {"A"}}
    row.bad = set()

    def look(rows, places):
        assert rows == [row] and len(asked) < 5
        asked.append(places[0])
        row.mends.update({k: {"A"} if k in doing else set() for k in places[0]})

    monkeypatch.setattr(least_steps, "screen", look)
    monkeypatch.setattr(least_steps, "every_finding", lambda result: {"A": result})
    search = least_settings(SimpleNamespace(mended=lambda found: {"A"}), row)
    proved = [next(search)]
    with pytest.raises(StopIteration) as ended:
        while True:
            proved.append(search.send(f"{proved[-1]}, assessed"))
    assert asked == [[4, 5, 6, 7]] and proved == ["design 8", "design 5"]
    assert ended.value.value == [("setting 5", "design 5, assessed", {"A"})]


def test_no_book_is_foreign_to_trade_practice():
    assert foreign("Trade practice") == frozenset()
    assert foreign("US IRC 2021") == {"DRF-08", "DRF-09"}


def test_the_raise_is_refused_for_a_book_that_is_none():
    with pytest.raises(InputError) as refused:
        highest_raise(Design(), "no book")
    books = ", ".join(PACKS)
    assert str(refused.value) == f"Code pack is 'no book', but there are only {books}."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("Code pack", books, "no book")


def test_a_raise_is_stopped_by_what_cannot_be_drawn():
    """A shelf 24 in over the opening under a low ceiling: from 15-1/16 in on there is no room."""
    shelf = {"mantel.family": "shelf", "mantel.over_opening": "24 in", "house.ceiling": "6 ft"}
    found = highest_raise(change(Design(), shelf))
    last = found.stops[-1]
    assert [stop.kind for stop in found.stops] == ["code", "draft", "drawing"]
    assert last.raised == pytest.approx(15 * INCH) and last.findings == ()
    assert last.refusal == (
        "Mantel over the opening is 2'-0\" (610 mm), but at most 1'-11 15/16\" (608 mm) fits: the mantel"
        " ends under the ceiling, where the breast is as wide as over the opening."
    )
    assert found.stop == found.stops[0] and found.raised == found.stop.raised


def test_a_liner_that_cannot_be_drawn_says_why_in_its_row(monkeypatch):
    """Any answer will do of those that can be drawn."""
    known = highest_raise(SMALL_FLUE)

    def answer(design, pack):
        if (design.flue.shape, design.flue.size) == ("round", "8"):
            raise InputError("No room for a round of 8.")
        return known

    monkeypatch.setattr(liners, "highest_raise", answer)
    rows = {(row.shape, row.size): row for row in liner_raises(SMALL_FLUE).rows}
    odd = rows.pop(("round", "8"))
    assert (odd.refusal, odd.raised, odd.stop, odd.short) == (
        "No room for a round of 8.",
        None,
        None,
        (),
    )
    assert not odd.taken and odd.net_area > 0
    assert {row.refusal for row in rows.values()} == {""} and len(rows) > 20


@pytest.mark.parametrize(
    ("told", "units", "numbers", "result"),
    [
        (("2000 lbf", "500 lbf"), "feet-inches",
         "89.8 lbf/ft² × 3.5 ft × 2.71 ft + 2000 lbf + 500 lbf", "3352 lbf"),
        (("2000 lbf", "500 lbf"), "millimetres",
         "4301 N/m² × 1.067 m × 0.826 m + 8896 N + 2224 N", "14909 N"),
        (("", "500 lbf"), "millimetres",
         "4301 N/m² × 1.067 m × 0.826 m + 0 N + 2224 N", "6012 N"),
    ],
)  # fmt: skip
def test_a_floor_that_bears_over_the_opening_stands_in_the_lintels_figure(
    told, units, numbers, result
):
    """By hand: 89.8 x 3.5 x 2.71 = 852."""
    floor, beam = told
    loads = {"loads.in_triangle": "yes", "loads.beam_over_head": beam}
    loads |= {"loads.floor_over_head": floor} if floor else {}
    (figure,) = (
        one
        for one in work_figures(assess(change(Design(), loads)), units)
        if one.name == "Load on the lintel"
    )
    assert figure.formula == "weight of the wall × span × height over it + floor + beam"
    assert (figure.numbers, figure.result) == (numbers, result)
    assert figure.source == (
        "no arching where a floor or a beam bears over the opening; what is not told is nought"
    )
