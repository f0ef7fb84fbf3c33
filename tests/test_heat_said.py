"""What is said of the heat: never a pass, three numbers, and the code's clearance first."""

from functools import lru_cache

import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.heat.map_of_plan import heat_map
from fireplace_calc.drawing.heat.one_sheet_of_heat import heat_sheet
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.heat.cuts.behind import STANDS
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.heat.cuts.section_run import burn_section
from fireplace_calc.heat.findings import judgement
from fireplace_calc.report.heat import heat_report
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, NOT_CHECKED

CASES = {
    "plain": {},
    "boathouse": {},
    "outdoors": {"chimney.location": "exterior"},
    "steel": {"firebox.lining": "steel unit"},
    "not told": {"clearance.back": "unknown", "clearance.chimney": "unknown"},
    "wide": {"opening.width": "8 ft"},
    "narrow": {"opening.width": "18 in"},
}


@lru_cache
def result(name):
    design = load(DESIGNS / f"{name if name == 'boathouse' else 'plain'}.toml")
    return assess(change(design, CASES[name]) if CASES[name] else design)


@pytest.mark.parametrize("name", CASES)
def test_nothing_ever_passes(name):
    found = judgement(result(name).heat)
    assert {f.verdict for f in found} <= {FALLS_SHORT, NOT_CHECKED, DOES_NOT_APPLY}
    assert all(STANDS in f.note for f in found if f.provided)
    assert all(f.edition == "engineering judgement" for f in found)


def test_what_cannot_be_worked_says_why():
    assert "steel" in " ".join(result("steel").heat.why_not)
    notes = " ".join(f.note for f in judgement(result("not told").heat))
    assert "behind and beside" in notes
    assert "round the chimney" in notes
    assert result("not told").heat.evening is None


@pytest.mark.parametrize("units", SYSTEMS)
def test_three_numbers_and_no_tenth_of_a_degree(units):
    said = heat_report.reach_sentence(result("plain").heat.evening, units)
    assert said.count("°") == 3
    assert "." not in said.split("reach")[1].split("Hottest")[0].rstrip(". ")


def test_a_metric_reader_reads_no_inches():
    rows = heat_report.worth_rows(result("plain"), "millimetres")
    assert "102 mm more masonry" in rows[0][0]
    assert not any("°F" in text for row in rows for text in row)


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["plain", "boathouse", "outdoors", "wide", "narrow"])
@pytest.mark.parametrize("hour", [0.0, 8.0, 30.0])
def test_the_picture_is_clean(name, units, hour):
    drawn = result(name)
    for which in range(3):
        sheet = heat_sheet(drawn.geometry, drawn.heat.evening, which, hour, units)
        assert not collisions(sheet)


@lru_cache
def in_section(name):
    drawn = result(name)
    return burn_section(drawn.geometry, drawn.heat.evening[1].fire, 8.0, 14.0)


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["plain", "boathouse", "outdoors", "wide", "narrow"])
@pytest.mark.parametrize("wide", [100.0, 120.0, 204.0, 205.0, 300.0])
def test_the_picture_is_clean_on_a_phone_a_tablet_and_a_desk(name, units, wide):
    """Paper as wide as each lays it out, in plan and in section, with every tone and line named."""
    drawn, cut = result(name), in_section(name)
    for section in (None, cut):
        sheet = heat_sheet(drawn.geometry, drawn.heat.evening, 1, 11.0, units, section, wide)
        assert not collisions(sheet)
        said = " ".join(label.text for label in sheet.labels)
        assert "fire" in said.split() and ("framing" in said) == (name != "outdoors")
        assert all(line.name in said for line in heat_lines())
        if wide <= 120.0:  # a phone's 350 px: letters of 9.5 px and more, by 0.73 of their height
            assert min(label.size for label in sheet.labels) * 350 / sheet.width / 0.73 > 9.5


def test_the_warmer_the_house_the_more_an_open_fire_costs():
    mild = heat_report.in_the_room(
        assess(change(result("plain").design, {"site.winter": "10 degC"}))
    )
    cold = heat_report.in_the_room(
        assess(change(result("plain").design, {"site.winter": "-20 degC"}))
    )
    assert cold.net < mild.net
    assert 0.05 < mild.gross_share < 0.55


def test_no_line_of_the_map_runs_on_into_a_gap():
    """Lines at temperatures stop where masonry and wood do, to half a cell."""
    drawn = result("plain")
    run = drawn.heat.evening[2]
    plan = wall_plan(drawn.geometry, run.fire)
    sheet = Sheet(300.0, 186.0)
    view = heat_map(sheet, Cell(0, 0, 300, 186), run.mesh, run.at(10.0), plan, 10.0, "millimetres")
    low, high = (view.at(0, y)[1] for y in (plan.deep, plan.deep + plan.back_gap))
    right = view.at(plan.half, 0)[0]
    lines = [line for line in sheet.lines["fine", "ink"] if line[:, 0].max() < right]
    assert lines
    for line in lines:
        within = (line[:, 1] > low + 1.0) & (line[:, 1] < high - 1.0)
        assert not within.any()
