"""Small promises to the reader: which way a limit binds, advice that the code allows, remedies a
mason would take.
"""

import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.design.records import Design
from fireplace_calc.explore import find_remedies
from fireplace_calc.panels.workbench.strip import _told
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


@pytest.mark.parametrize(
    ("key", "figures"),
    [
        ("CHM-07", '4", 4"'),  # walls of 4 in, 4 wanted
        ("CHM-15", "solid units, wanted: solid units or hollow grouted solid or stone or concrete"),
        ("AIR-01", "wanted: yes"),  # nobody has said whether
        ("AIR-02", "not checked"),
        ("AIR-12", "does not apply"),
    ],
)
def test_a_line_of_the_strip_has_its_figures_or_its_verdict(key, figures):
    """The plain fireplace: what stands and what is wanted; the verdict where there is neither."""
    found = next(f for f in assess(Design()).findings if f.key == key)
    told = _told(found, "feet-inches", "CHM-07")
    assert told["figures"] == figures
    assert told["shown"] == (key == "CHM-07")
    assert (
        told["title"] == found.title and f"{key}, {found.clause}: {found.verdict}" in told["help"]
    )
