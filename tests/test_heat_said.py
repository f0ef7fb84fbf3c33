"""What is said of the heat: never a pass, three numbers, and the code's clearance first."""

import re
from dataclasses import replace
from functools import lru_cache
from types import SimpleNamespace

import pytest
import shapely

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.heat import heat_lines
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.heat.map_of_plan import heat_map
from fireplace_calc.drawing.heat.map_of_section import section_map
from fireplace_calc.drawing.heat.one_sheet_of_heat import heat_sheet
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.heat.cuts.behind import STANDS
from fireplace_calc.heat.cuts.from_geometry import mid_firebox, wall_plan
from fireplace_calc.heat.cuts.section_cut import HOT
from fireplace_calc.heat.cuts.section_run import burn_section
from fireplace_calc.heat.cuts.wall_plan import STUD_DEEP
from fireplace_calc.heat.findings import judgement
from fireplace_calc.report.heat import heat_report
from fireplace_calc.report.heat.growth_report import growth_rows, pull_sentence
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


@pytest.mark.parametrize("cut", ["plan", "section"])
@pytest.mark.parametrize("name", ["plain", "boathouse"])
def test_paper_lies_on_all_that_is_hollow_and_on_nothing_else(name, cut):
    """Against shapely: the parts that the cut goes through, and the wood behind them."""
    drawn = result(name)
    geometry, sheet = drawn.geometry, Sheet(300.0, 186.0)
    cell, units = Cell(0, 0, 300, 186), "millimetres"
    run = drawn.heat.evening[2]
    if cut == "plan":
        plan = wall_plan(geometry, run.fire)
        view = heat_map(sheet, cell, run.mesh, run.at(10.0), plan, 10.0, units)
        parts = [part.plan(mid_firebox(geometry)) for part in geometry.parts if _is_solid(part)]
        open_ = shapely.Polygon(plan.fire)
        side, back = plan.half + plan.side_gap, plan.deep + plan.back_gap
        whole = shapely.box(0.0, 0.0, *(float(edge[-1]) for edge in (run.mesh.x, run.mesh.y)))
        wood = whole - shapely.box(0.0, 0.0, side, back)
    else:
        mesh = in_section(name).mesh
        view = section_map(
            sheet, cell, geometry, mesh, in_section(name).at(10.0), 10.0, units, (200, 150)
        )
        parts = [(part.section(), ()) for part in geometry.parts if _is_solid(part)]
        open_ = shapely.union_all(
            [shapely.Polygon(ring) for key in HOT for ring in geometry.by_name[key].section()]
        )
        left, right, low, high = (float(e) for e in (*mesh.x[[0, -1]], *mesh.y[[0, -1]]))
        whole = shapely.box(left, low, right, high)
        wood = shapely.box(right - STUD_DEEP, low, right, high)
    solid = shapely.union_all(
        [
            shapely.union_all([shapely.make_valid(shapely.Polygon(r)) for r in rings])
            - shapely.union_all([shapely.make_valid(shapely.Polygon(h)) for h in holes])
            for rings, holes in parts
        ]
    )
    hollow = (whole - (solid | wood)) | (open_ & whole)
    (paper,) = (many for (layer, _), many in sheet.fills.items() if layer == 3)
    pieces = [[(ring - (view.x0, view.y0)) / view.scale for ring in rings] for rings in paper]
    laid = shapely.union_all([shapely.Polygon(outer, holes) for outer, *holes in pieces])
    assert ((laid & whole) ^ hollow).area < 1e-4 * whole.area


def _is_solid(part):
    return part.material != "air"


def test_tones_reach_all_that_is_solid():
    """No cell inside the window is left without a tone: paper alone says what is hollow."""
    drawn = result("boathouse")
    run = drawn.heat.evening[2]
    sheet = Sheet(300.0, 186.0)
    plan = wall_plan(drawn.geometry, run.fire)
    cell = Cell(0, 0, 300, 186)
    view = heat_map(sheet, cell, run.mesh, run.at(10.0), plan, 10.0, "millimetres")
    toned = sum(
        abs(shapely.Polygon(rings[0], rings[1:]).area)
        for (layer, tone), many in sheet.fills.items()
        if tone.startswith("heat") and layer < 2
        for rings in many
    )
    wide, high = (float(edge[-1] - edge[0]) * view.scale for edge in (run.mesh.x, run.mesh.y))
    assert toned == pytest.approx(wide * high, rel=1e-6)


def test_what_is_added_for_a_fine_working_is_told_in_the_readers_degrees():
    from fireplace_calc.report.heat.heat_report import sources

    told = {units: " ".join(sources(units)) for units in ("feet-inches", "millimetres")}
    added = {units: re.search(r"figures have (\S+ \S+)", text)[1] for units, text in told.items()}
    assert added["feet-inches"].endswith("°F") and added["millimetres"].endswith("°C")
    american, metric = (float(text.split()[0]) for text in added.values())
    assert american == pytest.approx(1.8 * metric, abs=0.6)


def test_a_gap_that_is_too_little_is_said_so():
    """The plain design's liner has half an inch about it, and asks for a hundredth; were it to grow by
    an inch it would be too little.
    """
    made = result("plain")
    rows = growth_rows(made, "feet-inches")
    assert {row[4] for row in rows} == {"none drawn", "slides at the crown", '1/2"'}
    grows = tuple(
        replace(one, asks=0.0254) if one.what == "liner across" else one for one in made.heat.grows
    )
    tight = growth_rows(SimpleNamespace(heat=SimpleNamespace(grows=grows)), "feet-inches")
    for before, row in zip(rows, tight, strict=True):
        told = before[4] == '1/2"'
        assert row[3:] == (("1 in at either side", '1/2", too little') if told else before[3:])


def test_nothing_is_said_of_a_liner_that_is_not_worked():
    assert "likely to crack" in pull_sentence(result("plain"), "feet-inches")
    bare = SimpleNamespace(heat=SimpleNamespace(pull=None))
    assert pull_sentence(bare, "feet-inches") == ""


def test_radiation_on_a_step_of_trim_is_told_in_kilowatts():
    steps = (SimpleNamespace(name="shelf", falls=(174.9, 548.1, 12_449.0)),)
    made = SimpleNamespace(heat=SimpleNamespace(trim=steps))
    assert heat_report.trim_rows(made) == (("shelf", "0.2 kW/m²", "0.5 kW/m²", "12.4 kW/m²"),)
