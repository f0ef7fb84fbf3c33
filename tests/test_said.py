"""Small promises to the reader: which way a limit binds, advice that the code allows, remedies a
mason would take.
"""

import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.explore import find_remedies
from fireplace_calc.report.sentences import asked

BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")


def test_a_limit_says_which_way_it_binds():
    found = {f.key: f for f in assess(BOATHOUSE).findings}
    assert asked(found["CLR-08"]).startswith("at most ")  # a mantel stands out too far
    assert asked(found["ROF-02"]).startswith("at least ")  # a chimney is too low


@pytest.mark.parametrize(("leaks", "more"), [("8.5", False), ("4", True)])
def test_an_inlet_past_what_the_code_allows_is_not_advised_alone(leaks, more):
    """R1006.4: 55 in2 at most, the figure of AIR-07."""
    note = next(
        f.note
        for f in assess(change(BOATHOUSE, {"house.leakage": leaks})).judgement
        if f.key == "DRF-05"
    )
    assert ("55 in²" in note) == more, note


def test_nobody_raises_a_throat_to_make_a_chimney_taller():
    keys = {(one.lever.key, key) for one in find_remedies(BOATHOUSE) for key in one.mends}
    assert ("flue.sections", "ROF-02") in keys
    assert not keys & {("throat.height", "ROF-02"), ("smoke_chamber.height", "ROF-02")}


def test_nobody_sets_a_piece_from_far_above_his_feet():
    assert all(lift.height > -0.31 for lift in assess(BOATHOUSE).work.lifts)
    lintel = next(lift for lift in assess(BOATHOUSE).work.lifts if "lintel" in lift.item.lower())
    assert lintel.height > 0
