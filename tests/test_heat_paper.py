"""The row on heat behind the inspector's page: the clearance first, judgement, never a pass."""

from functools import lru_cache

import pytest
from sampled import sampled

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.checks.back_page import behind
from fireplace_calc.drawing.plates.sizes import PAPERS, paper
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.heat.cuts.behind import STANDS
from fireplace_calc.heat.findings import judgement
from fireplace_calc.report.heat import heat_report
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED

CASES = {
    "boathouse": {},
    "boathouse-laid": {},
    "plain": {},
    "steel": {"firebox.lining": "steel unit"},
    "not told": {"clearance.back": "unknown"},
}


@lru_cache
def result(name):
    design = load(DESIGNS / f"{name if name in ('boathouse', 'boathouse-laid') else 'plain'}.toml")
    return assess(change(design, CASES[name]) if CASES.get(name) else design)


def words(sheets):
    """Of every sheet in turn, left column before right, from the top down."""
    return " ".join(
        label.text
        for sheet in sheets
        for label in sorted(sheet.labels, key=lambda a: (a.extent[0] > 210.0, -a.extent[1]))
    )


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize("size", sampled([*PAPERS], 2))
def test_the_clearance_stands_over_the_row(name, units, size):
    sheets = behind(result(name), units, paper(units, size))
    said = words(sheets)
    assert "STRUCTURE AND HEAT, engineering judgement, not code" in said
    clearance, row = said.index(STANDS[4:20]), said.index("Wood behind")
    assert clearance < row
    assert all(collisions(sheet) == [] for sheet in sheets)


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_it_is_never_a_pass_and_tells_what_the_screen_tells(name, units):
    (row,) = heat_report.evening_found(result(name), units)
    (found,) = (f for f in judgement(result(name).heat) if f.key == row.key)
    assert row.verdict == found.verdict and row.verdict in (FALLS_SHORT, NOT_CHECKED)
    said = heat_report.reach_sentence(result(name).heat.evening, units)
    for one in row.provided.split(" ")[0:3]:
        assert f" {one.strip(',')} °" in said
    assert row.provided.count(",") == 2


@pytest.mark.parametrize("name", ["steel", "not told"])
def test_what_is_not_worked_is_not_checked_and_says_why(name):
    (row,) = heat_report.evening_found(result(name), "feet-inches")
    assert (row.verdict, row.provided) == (NOT_CHECKED, None)
    assert row.note and row.note in " ".join(result(name).heat.why_not)


def test_masonry_that_stands_free_has_no_row():
    free = assess(change(result("plain").design, {"chimney.location": "exterior"}))
    assert heat_report.evening_found(free, "feet-inches") == ()
    said = words(behind(free, "feet-inches", paper("feet-inches", "A3")))
    assert "DRAFT AND STRUCTURE, engineering" in said and "Wood behind" not in said


def test_papers_work_out_no_more_than_the_evening(monkeypatch):
    """Nothing but three fires behind the firebox, and those once, however many sheets ask."""
    from fireplace_calc.heat import answer

    fresh, runs = assess(change(result("plain").design, {"firebox.wall": "9 in"})), []
    fire = answer.one_fire
    monkeypatch.setattr(answer, "one_fire", lambda *args: runs.append(args) or fire(*args))
    for name in ("all_flue_fires", "under_hearth", "_worth", "on_trim", "keep_off"):
        monkeypatch.setattr(answer, name, None)
    for size in PAPERS:
        behind(fresh, "feet-inches", paper("feet-inches", size))
    assert [key.key for _, key, _ in runs] == ["kind", "middle", "hard"]
    assert {hours for _, _, hours in runs} == {answer.EVENING}
