"""The draft's pictures: clean sheets at every end, marks and curves where the figures say, a ground
that tells by hatch too.
"""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from sampled import sampled

from fireplace_calc import assess, change, load
from fireplace_calc.base.units import INCH
from fireplace_calc.drawing import HEIGHT, WIDTH, Picture
from fireplace_calc.drawing.composed.compose import CELLS
from fireplace_calc.drawing.page.stage import stage_cells
from fireplace_calc.drawing.sheets.chart import Chart
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.draft_charts import MARKS, air_sheet, air_views
from fireplace_calc.explore import LIMITS, LimitMap
from fireplace_calc.panels.picture.draft_pictures import DraftPictures

DESIGNS = Path(__file__).resolve().parents[1] / "data" / "designs"
BOATHOUSE, PLAIN = load(DESIGNS / "boathouse-laid.toml"), load(DESIGNS / "plain.toml")
ENDS = [
    (BOATHOUSE, {}),
    (BOATHOUSE, {"opening.extension": "24 in", "flue.sections": 40}),
    (BOATHOUSE, {"flue.sections": 4}),
    (BOATHOUSE, {"opening.width": "18 in"}),
    (BOATHOUSE, {"opening.width": "96 in", "opening.extension": "0 in"}),
    (PLAIN, {}),
    (PLAIN, {"opening.width": "96 in", "flue.sections": 40}),
    (PLAIN, {"house.exhaust": "2000 L/s", "house.leakage": "0.3"}),
    (BOATHOUSE, {"flue.offset": "16 in", "flue.offset_rise": "40 in"}),
]


def aired(result, draft_pictures):
    """What the pictures are drawn from, everything brought up to the design."""
    draft_pictures.whole(result, "feet-inches")
    return draft_pictures.air(result.geometry, result.draft)


def by_cell(drawn):
    return {cell: sheet for _, cell, sheet in drawn}


@pytest.fixture(scope="module")
def pictures():
    made = []
    for design, changes in ENDS:
        result = assess(change(design, changes))
        made.append((result, aired(result, DraftPictures())))
    return made


@pytest.mark.parametrize("units", sampled(["feet-inches", "millimetres"], 1))
def test_every_sheet_is_clean(pictures, units):
    for (result, air), (_, changes) in zip(pictures, ENDS, strict=True):
        for cell, sheet in air_views(air, units):
            assert collisions(sheet) == [], (result.design.name, changes, cell)
            for label in sheet.labels:
                left, bottom, right, top = label.extent
                assert (
                    cell.left <= left
                    and right <= cell.right
                    and cell.bottom <= bottom
                    and top <= cell.top
                ), label


def test_a_house_that_runs_away_gets_no_chart(pictures):
    """2,000 L/s of fans and 0.3 air changes: words instead of a scale of ten thousand pascals."""
    said = {
        key: " ".join(label.text for _, sheet in air_views(air) for label in sheet.labels)
        for key, (_, air) in (("plain", pictures[5]), ("tight", pictures[7]))
    }
    assert "no figure" in said["tight"] and "no figure" not in said["plain"]
    assert "against open air" in said["plain"] and "against open air" not in said["tight"]


def test_all_three_papers_paint(pictures):
    views = air_views(pictures[0][1])
    dots = {
        theme: Picture(WIDTH, HEIGHT, 2.0, theme).draw(views).copy()
        for theme in ("light", "dark", "print")
    }
    assert dots["print"].min() == 0 and dots["dark"][5, 300].mean() < 120
    assert not (dots["light"] == dots["dark"]).all()


def test_a_chart_puts_figures_where_they_belong():
    chart = Chart(Sheet(100, 100), Cell(10, 20, 90, 80), (0.0, 40.0), (0.0, 2.0))
    assert (
        chart.at(0, 0) == (10, 20) and chart.at(40, 2) == (90, 80) and chart.at(10, 1) == (30, 50)
    )


def test_the_mark_stands_where_the_design_does(pictures):
    """Read back off the paper: ring of the mark against the axis' own ticks."""
    result, air = pictures[0]
    sheet = dict(air_views(air, "feet-inches"))[CELLS["front"]]
    ring = max(sheet.lines["flag", "good"], key=len)
    centre = ring.mean(axis=0)
    ticks = {label.text: label for label in sheet.labels if label.text.lstrip("-").isdigit()}
    across = {int(t): n.x for t, n in ticks.items() if n.ha == "center"}
    up = {int(t): n.y for t, n in ticks.items() if n.ha == "right"}
    sections = np.interp(centre[0], sorted(across.values()), sorted(across))
    extension = np.interp(centre[1], sorted(up.values()), sorted(up))
    assert sections == pytest.approx(result.design.flue.sections, abs=0.15)
    assert extension == pytest.approx(result.design.opening.extension / INCH, abs=0.15)


def test_the_mark_moves_and_the_map_stays():
    """What a moving hand is shown is drawn from the same curves, and only the cells that say
    something else are drawn again.
    """
    draft_pictures = DraftPictures()
    here, sheets = (
        aired(assess(BOATHOUSE), draft_pictures),
        by_cell(draft_pictures.whole(assess(BOATHOUSE), "feet-inches")),
    )
    result = assess(change(BOATHOUSE, {"flue.sections": 25, "opening.extension": "10 in"}))
    moving, moved = (
        by_cell(draft_pictures.moving(result.design, "feet-inches")),
        draft_pictures.air(result.geometry, result.draft),
    )
    assert moved.map.limit is here.map.limit and moved.map.here == (10 * INCH, 25)
    assert moved.by_sections.here == 25 and moved.steps != here.steps
    assert {name for name, cell in CELLS.items() if moving[cell] is not sheets[cell]} == {
        "front",
        "section",
        "roof",
    }
    on_idle = aired(result, draft_pictures)
    assert (
        on_idle.map.limit is here.map.limit
        and not (on_idle.by_sections.sizing == here.by_sections.sizing).all()
    )
    wide = assess(change(result.design, {"opening.width": "50 in"}))
    rest, wider = (
        by_cell(draft_pictures.whole(result, "feet-inches")),
        by_cell(draft_pictures.moving(wide.design, "feet-inches")),
    )
    assert {name for name, cell in CELLS.items() if wider[cell] is not rest[cell]} == {"section"}
    assert aired(wide, draft_pictures).map.limit is not here.map.limit


def test_every_limit_is_told_apart_without_colour():
    hatches = [hatch for _, hatch in MARKS]
    assert len(set(hatches)) == len(MARKS) == len(LIMITS)


def test_a_design_outside_the_map_is_held_at_its_border(pictures):
    _, air = pictures[0]
    small = LimitMap(
        air.map.extensions[:3], air.map.sections[:10], air.map.limit[:3, :10], (24 * INCH, 40), ()
    )
    sheet = dict(air_views(replace(air, map=small)))[CELLS["front"]]
    centre = max(sheet.lines["flag", "good"], key=len).mean(axis=0)
    cell = CELLS["front"]
    assert cell.left < centre[0] < cell.right and cell.bottom < centre[1] < cell.top


def test_a_clause_that_always_falls_short_is_named(pictures):
    _, air = pictures[0]
    sheet = dict(air_views(air))[CELLS["plan"]]
    said = " ".join(label.text for label in sheet.labels)
    assert "CLR-08" in said and "not code" in said
    quiet = replace(air, map=replace(air.map, everywhere=()))
    assert not any("CLR-08" in label.text for label in dict(air_views(quiet))[CELLS["plan"]].labels)


STAGES = [(980, 640), (882, 480), (1140, 740), (1620, 920), (724, 608), (768, 560), (390, 420)]


@pytest.mark.parametrize("units", sampled(["feet-inches", "millimetres"], 1))
@pytest.mark.parametrize("size", sampled([(size,) for size in STAGES], 2), ids=str)
def test_every_picture_is_clean_on_a_stage_of_any_size(pictures, size, units):
    for name, cell in stage_cells("draft", *size).cells.items():
        for (_, air), (_, changes) in zip(pictures, ENDS, strict=True):
            assert collisions(air_sheet(name, cell, air, units)) == [], (changes, name)


def test_a_sentence_beside_the_map_is_whole_or_left_out(pictures):
    """On paper too low for all of them, those that are written are written to their end."""
    _, air = pictures[0]
    for low in range(56, 120, 4):
        sheet = air_sheet("plan", Cell(0.0, 0.0, 88.0, float(low)), air)
        words = " ".join(label.text for label in sheet.labels)
        for sentence in air.said:
            start = " ".join(sentence.split(" ")[:3])
            assert sentence in words or start not in words
        assert set(np.unique(air.map.limit)) <= {k for k, w in enumerate(LIMITS) if w in words}


def test_pictures_on_a_stage_are_drawn_again_only_when_something_moved():
    draft_pictures, result = DraftPictures(), assess(BOATHOUSE)
    draft_pictures.cells = stage_cells("draft", 980, 640).cells
    first = draft_pictures.whole(result, "feet-inches")
    assert [(name, sheet.width) for name, _, sheet in first] == [
        (name, cell.right) for name, cell in draft_pictures.cells.items()
    ]
    again = draft_pictures.moving(BOATHOUSE, "feet-inches")
    assert all(a is b for (*_, a), (*_, b) in zip(first, again, strict=True))
    draft_pictures.cells = stage_cells("draft", 390, 420).cells
    small = draft_pictures.moving(BOATHOUSE, "feet-inches")
    assert all(sheet.width == cell.right for _, cell, sheet in small)
