"""The fold on the heat: it follows the design, says why where nothing can be worked, and goes on."""

import asyncio
import re

import pytest

from fireplace_calc import change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.heat.map_of_plan import view_top
from fireplace_calc.drawing.sheets.lists import Table
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.conduction.grading import FINE
from fireplace_calc.heat.cuts.behind import STANDS, three_fires
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.panels import panel
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.heat import heat_fold
from fireplace_calc.panels.heat.heat_fold import heat_words
from fireplace_calc.report.heat import heat_report

PLAIN = load(DESIGNS / "plain.toml")


def opened(units="millimetres", **changes):
    made = panel(change(PLAIN, changes) if changes else PLAIN, units=units, folds=("heat",))
    made.open("heat")
    return made, made.folds["heat"]


def picture(fold):
    """Words of the sheet that is shown, and how it is told to the page."""
    drawn = fold.board.widget.drawn
    return drawn["stage"]["sheets"][0]["words"], drawn["bodies"]


def told(fold):
    return [int(text) for text in re.findall(r"(\d+) °[CF]", fold.said.value)]


@pytest.mark.parametrize("units", SYSTEMS)
def test_it_opens_with_the_clearance_first_three_numbers_and_a_map(units):
    fold = opened(units)[1]
    assert FOLDS["heat"][0] == "How hot does the wood get?"
    assert STANDS.split(",")[0].split("'")[1] in fold.widget.children[0].value
    kind, middle, hard = told(fold)
    assert kind < middle < hard
    assert "after lighting" in picture(fold)[0]
    findings = "".join(line.words.value for line in fold.list.lines.values())
    for said in (fold.more.value, findings):
        assert ("°F" in said, "°C" in said) == (units == "feet-inches", units == "millimetres")
    assert fold.list.widget.children


def test_words_and_tables_tell_the_same_numbers():
    """The sentence over the map and the table under it are of the same fine cells."""
    fold = opened()[1]
    rows = re.findall(r"<tr>.*?</tr>", fold.more.value, re.S)
    hottest = [re.findall(r"(\d+) °C", row)[1] for row in rows if ">8 h<" in row][:3]
    assert told(fold) == [int(one) for one in hottest]
    assert all(name in fold.more.value for name in ("kind: ", "middle: ", "hard: "))


@pytest.mark.parametrize("units", SYSTEMS)
def test_growth_the_pull_in_a_liner_and_the_rooms_heat_are_shown(units):
    """Each figure of the answer, in the reader's units."""
    made, fold = opened(units)
    said, heat = fold.more.value, made.result.heat
    metric = units == "millimetres"
    for one in heat.grows:
        assert heat_report.grows(one.growth, units) in said
    assert "slides at the crown" in said
    psi = 100 * round(heat.pull.middle / 6894.757 / 100)
    assert (f"{heat.pull.middle / 1e6:.0f}, " if metric else f"{psi:,}, ") in said
    assert ("MPa" in said, "psi" in said) == (metric, not metric)
    assert "Left to the house" in said and "Published efficiencies" in said


def test_it_follows_the_design():
    made, fold = opened()
    before, old = told(fold), picture(fold)
    made.set_input("firebox.wall", "16 in")
    fold.update()
    assert all(now < was for now, was in zip(told(fold), before, strict=True))
    assert picture(fold) != old


def moved(made, key, value):
    """A hand that goes on moving: the design is taken, and nothing has come to rest yet."""
    made.session.take({key: value}, run=key)
    made.folds["heat"].lead()


@pytest.mark.parametrize("cut", ["plan", "section"])
def test_the_map_follows_a_moving_hand_without_figures_and_is_fine_at_rest(cut):
    """The fire that is shown, on cells of its own; sentence and other fires wait for the rest."""
    made, fold = opened()
    fold.cuts.value, fold.fire.value = cut, 2
    said, before, runs = fold.said.value, picture(fold), fold.runs
    seen = [before]
    for wall in ("12 in", "14 in", "16 in"):
        moved(made, "firebox.wall", wall)
        seen.append(picture(fold))
        names = [label[2] for label in fold.board.widget.drawn["stage"]["sheets"][0]["labels"]]
        assert "hard" in names and "kind" not in names and "middle" not in names
        assert "11 h after lighting" in seen[-1][0]
        assert fold.said.value == said and fold.runs is runs
    assert len({bytes(bodies[0]) for _, bodies in seen}) == 4
    made.redraw()
    names = [label[2] for label in fold.board.widget.drawn["stage"]["sheets"][0]["labels"]]
    assert any(name.startswith("kind, ") for name in names) and fold.said.value != said
    assert {run.low for run in fold.runs} == {FINE.low}


def test_the_moving_map_is_the_design_as_it_stands_within_its_cells():
    """Against the same fire on the cells of the rest, where the wood is hottest."""
    made, fold = opened()
    shown = []
    fold._draw, drawn = lambda runs, *_: shown.append(runs[0]), fold._draw
    for wall in ("8 in", "12 in", "16 in"):
        moved(made, "firebox.wall", wall)
        fine = [*three_fires(build_geometry(made.design), 8.0)][1]
        assert shown[-1].highest == pytest.approx(fine.highest, abs=3.0, rel=0.06)
    fold._draw = drawn


def test_another_hour_while_a_hand_moves_is_of_the_design_as_it_stands():
    """Runs of an earlier design are never drawn into the outlines of a later one."""
    made, fold = opened()
    moved(made, "firebox.wall", "16 in")
    drawn = []
    draw = fold._draw
    fold._draw = lambda runs, which, geometry, *rest: (
        drawn.append((runs[which].mesh.y[-1], geometry)) or draw(runs, which, geometry, *rest)
    )
    fold.hour.value = 9.0
    deep, geometry = drawn[-1]
    assert geometry.design == made.design
    assert deep > geometry.frame.block_back
    assert deep == pytest.approx(view_top(wall_plan(geometry, wall_fires()["middle"])))
    assert "9 h after lighting" in picture(fold)[0]


def test_a_redrawn_view_and_what_burns_for_days_wait_for_the_rest():
    made, fold = opened()
    before = fold.board.widget.drawn
    fold.lead()  # nothing has moved
    assert fold.board.widget.drawn is before
    fold.burns = (4.0, 7)
    moved(made, "firebox.wall", "12 in")
    assert fold.board.widget.drawn is before


def test_where_the_moving_map_cannot_be_worked_the_rest_says_why():
    made, fold = opened()
    moved(made, "clearance.back", "unknown")
    assert fold.runs is not None
    fold.update()
    assert fold.runs is None and "not known" in fold.said.value


def test_another_hour_and_another_fire_draw_another_map_and_work_nothing_out(monkeypatch):
    fold = opened()[1]
    monkeypatch.setattr(heat_fold, "three_fires", None)
    seen = [picture(fold)]
    for hour in (0.5, 8.0, 11.5):
        fold.hour.value = hour
        assert f"{hour:g} h after lighting" in picture(fold)[0]
        seen.append(picture(fold))
    fold.fire.value = 2
    seen.append(picture(fold))
    assert all(a != b for a, b in zip(seen, seen[1:], strict=False))


def test_the_slider_ends_where_the_runs_end():
    fold = opened()[1]
    fold.length.value = (24.0, 1)
    last = [float(run.times[-1]) for run in fold.runs]
    assert fold.hour.max == pytest.approx(max(last)) and min(last) > 24
    for which, end in enumerate(last):
        fold.fire.value, fold.hour.value = which, max(last)
        assert f"{end:g} h after lighting" in picture(fold)[0]


def test_a_longer_fire_is_hotter_and_is_said():
    fold = opened()[1]
    evening = told(fold)
    fold.length.value = (24.0, 1)
    assert "24 h" in fold.said.value
    assert all(now > was for now, was in zip(told(fold), evening, strict=True))


def test_where_nothing_can_be_worked_it_says_why_and_comes_back():
    made, fold = opened()
    made.set_input("clearance.back", "unknown")
    fold.update()
    assert fold.runs is None and fold.board.widget.drawn == {}
    assert "not known" in fold.said.value
    made.set_input("clearance.back", "4 in")
    fold.update()
    assert fold.runs is not None and len(told(fold)) == 3 and fold.board.widget.drawn


def test_it_is_drawn_on_the_paper_of_the_page():
    made, fold = opened()
    light = fold.board.widget.drawn["stage"]
    made.set_paper("dark")
    fold.update()
    assert fold.board.stage.theme == "dark" and fold.board.widget.drawn["stage"] != light


@pytest.mark.parametrize(("dots", "wide", "high"), [(350, 120.0, 240.0), (730, 208.57, 186.0)])
def test_the_picture_is_laid_out_for_the_width_that_the_page_tells(dots, wide, high):
    fold = opened()[1]
    assert fold.board.widget.drawn["stage"]["ratio"] == pytest.approx(300 / 186)
    fold.board.widget.wide = dots
    assert fold.board.widget.drawn["stage"]["ratio"] == pytest.approx(wide / high, abs=1e-3)


def test_the_rest_is_left_alone_once_the_hand_has_moved_on(monkeypatch):
    """Between two pieces the fold looks whether the design is still the one it works on."""
    made, fold = opened()
    made.set_input("firebox.wall", "13 in")
    worked = []

    def pieces(*_):
        for n in range(5):
            worked.append(n)
            fold.burns = (4.0, 1)  # as a hand would, on any control
            yield n, 5, "a piece"

    monkeypatch.setattr(heat_fold, "heat_steps", pieces)
    assert len([*fold._steps()]) == 1 and worked == [0]


def test_what_is_ready_too_late_says_nothing_and_the_fold_follows():
    fold = opened()[1]
    known, more, lines = fold.known, fold.more.value, fold.list.lines
    followed = []
    fold.update = lambda: followed.append(fold.burns)

    async def late():
        assert fold._ready(("of an earlier design",)) == "" and followed == []
        await asyncio.sleep(0)

    asyncio.run(late())
    assert followed == [fold.burns] and fold.known is known
    assert fold.more.value == more and fold.list.lines is lines


def test_radiation_on_a_mantel_that_burns_has_its_table():
    made = panel(load(DESIGNS / "boathouse-laid.toml"), units="millimetres", folds=("heat",))
    heat = made.result.heat
    assert heat.trim and not opened()[0].result.heat.trim
    tables = {one.title: one for one in heat_words(made) if isinstance(one, Table)}
    told = tables["Radiation on mantel and trim"]
    assert [column.heading for column in told.columns] == list(heat_report.TRIM)
    assert told.rows == heat_report.trim_rows(made.result) and len(told.rows) == len(heat.trim)
    assert [column.share for column in told.columns] == [34, *[16] * (len(told.columns) - 1)]


def test_a_fault_ends_nothing(monkeypatch, caplog):
    made, fold = opened()

    def broken(*_):
        raise ZeroDivisionError("planted")

    monkeypatch.setattr(heat_fold, "heat_sheet", broken)
    made.set_input("firebox.wall", "12 in")
    assert "planted" in caplog.text
    caplog.clear()
    monkeypatch.undo()
    before = told(fold)
    made.set_input("firebox.wall", "16 in")
    assert all(now < was for now, was in zip(told(fold), before, strict=True))
    assert fold.board.widget.drawn
