"""The fold on the heat: it follows the design, says why where nothing can be worked, and goes on."""

import re

import pytest

from fireplace_calc import change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.heat.cuts.behind import STANDS
from fireplace_calc.panels import panel
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.heat import heat_fold
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

    def pieces(geometry):
        for n in range(5):
            worked.append(n)
            fold.burns = (4.0, 1)  # as a hand would, on any control
            yield n, 5, "a piece"

    monkeypatch.setattr(heat_fold, "heat_steps", pieces)
    assert len([*fold._steps()]) == 1 and worked == [0]


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
