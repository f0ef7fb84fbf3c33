"""The client's page: what he decides is taken, sliders stop where they are asked to, one line says
what it comes to.
"""

import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.units import INCH, MILLIMETRES
from fireplace_calc.panels import client
from fireplace_calc.proportion.snapping import SNAPS, slider_stops
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.for_client.under_a_picture import option_words

HEIGHT, WIDTH = "opening.standard_height", "opening.width"


@pytest.fixture
def page(boathouse):
    made = client(boathouse)
    made.sent = []
    made.page.send = lambda message, buffers=None: made.sent.append(message)
    return made


def test_a_client_decides_what_he_can_see(page):
    keys = [field["key"] for field in page.page.first["fields"]]
    wanted = {WIDTH, HEIGHT, "base.hearth_level", "opening.extension", "surround.face"}
    assert wanted <= set(keys) and "opening.head" in keys and "flue.sections" not in keys
    assert page.page.first["stops"] == [(name, False) for name in SNAPS]


def test_the_scene_follows_a_slider_and_its_words_the_resting_hand(page, boathouse):
    page._heard({"do": "slide", "key": WIDTH, "value": 40})
    assert page.design.opening.width == pytest.approx(40 * INCH)
    assert page.scene.result.design is page.design
    assert "3'-4\" wide" in page.scene.words["opening"]
    (told,) = [m["fields"] for m in page.sent if "fields" in m][-1:]
    assert next(f["text"] for f in told if f["key"] == WIDTH) == "3'-4\""


def test_the_line_is_the_assessment(page, boathouse):
    page._heard({"do": "type", "key": "surround.face", "value": "stone"})
    line = [m["line"] for m in page.sent if "line" in m][-1]
    result = assess(change(boathouse, {"surround.face": "stone"}))
    said = option_words(result)
    assert shortfall(result).headline in line["short"]
    assert said.price in line["price"] and said.weight in line["weight"]
    assert "local code" in line["planning"]
    assert all(short in line["more"] for short in said.short)


def test_what_cannot_be_is_said_at_its_field_and_changes_nothing(page, boathouse):
    page._heard({"do": "type", "key": WIDTH, "value": "3 in"})
    assert page.design == boathouse
    assert "Not changed" in page.sent[-1]["wrong"][WIDTH] and page.sent[-1]["done"]


def test_undo_and_redo(page, boathouse):
    page._heard({"do": "type", "key": WIDTH, "value": "40"})
    page._heard({"do": "undo"})
    assert page.design.opening.width == boathouse.opening.width
    page._heard({"do": "redo"})
    assert page.design.opening.width == pytest.approx(40 * INCH)
    page._heard({"do": "redo"})
    assert "Nothing to redo" in page.answer


def stops(page, key, *kinds):
    return [s.at for s in slider_stops(assess(page.design).geometry, key, kinds)]


def test_a_slider_goes_where_it_is_put_until_it_is_told_to_stop(page):
    page.slide(HEIGHT, 33.0)
    assert page.design.opening.standard_height == pytest.approx(33 * INCH)
    page._heard({"do": "stop", "name": "whole courses", "on": True})
    assert dict(page.sent[-1]["stops"])["whole courses"] is True
    page.slide(HEIGHT, 33.0)
    here = page.design.opening.standard_height
    every = stops(page, HEIGHT, "whole courses")
    assert min(every, key=lambda at: abs(at - 33 * INCH)) == pytest.approx(here, abs=1e-9)
    note = page._fields()[page.decides.index(HEIGHT)]["note"]
    assert "courses" in note


def test_a_key_goes_from_stop_to_stop(page):
    """Half an inch would never reach the next course."""
    page.stop_at("whole courses", True)
    page.slide(HEIGHT, 33.0)
    before = page.design.opening.standard_height
    page.slide(HEIGHT, before / INCH + 0.5, 1)
    after = page.design.opening.standard_height
    every = stops(page, HEIGHT, "whole courses")
    assert after == pytest.approx(min(at for at in every if at > before + 1e-6), abs=1e-9)
    page.slide(HEIGHT, after / INCH - 0.5, -1)
    assert page.design.opening.standard_height == pytest.approx(before, abs=1e-9)


def test_what_has_no_stops_is_not_stopped(page):
    page.stop_at("sizes of a set", True)
    page.slide(WIDTH, 41.0)
    every = stops(page, WIDTH, "sizes of a set")
    expected = min(every, key=lambda at: abs(at - 41 * INCH)) if every else 41 * INCH
    assert page.design.opening.width == pytest.approx(expected, abs=1e-9)
    page._heard({"do": "stop", "name": "anything", "on": True})
    assert "anything" not in page.stops


def test_a_metric_reader(boathouse):
    made = client(boathouse, units=MILLIMETRES)
    assert made.scene.units == MILLIMETRES
    made.stop_at("whole courses", True)
    made.slide(HEIGHT, 840)
    every = stops(made, HEIGHT, "whole courses")
    assert min(abs(at - made.design.opening.standard_height) for at in every) < 1e-9


def test_what_was_decided_is_kept(boathouse, tmp_path):
    made = client(boathouse, jobs=tmp_path)
    made.set_input(WIDTH, "40")
    again = client(boathouse, jobs=tmp_path)
    assert again.design.opening.width == pytest.approx(40 * INCH)
    assert str(again).startswith("As a client sees it")
