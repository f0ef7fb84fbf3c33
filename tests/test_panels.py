"""The panel without a browser: what it takes, what it refuses, what it shows; the browser test looks at the rest."""

from pathlib import Path

import pytest

from fireplace_calc import load
from fireplace_calc.panels import panel
from fireplace_calc.panels.lookup import Lookup

BOATHOUSE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse.toml")


@pytest.mark.parametrize("view", ["all", "draft", "front", "section", "plan", "roof"])
def test_every_view_opens_and_follows(view):
    made = panel(BOATHOUSE, view=view)
    shown = {cell: image.value for cell, image in made.images.items() if image.value}
    assert shown
    made.given("opening.extension", "10 in")
    assert made.design.opening.extension == pytest.approx(0.254)
    after = {cell: image.value for cell, image in made.images.items() if image.value}
    if view != "plan":  # a plan at the hearth does not show how high the opening is
        assert shown != after
    assert "10 in" not in made.said.value and made.result.design is made.design


def test_the_draft_tells_modes_and_odds():
    made = panel(BOATHOUSE, view="draft")
    for words in ("sizing mode", "Operating mode", "of 100", "judgement, not code", "DRF-05", "dying down", "velocity head"):
        assert words in made.air.value, words
    before = made.air.value
    made.given("house.exhaust", "0 L/s")
    assert made.air.value != before


def test_a_bad_input_changes_nothing():
    made = panel(BOATHOUSE, view="draft")
    pictures = {cell: image.value for cell, image in made.images.items()}
    made.given("opening.width", "banana")
    assert "banana" in made.said.value and made.design is BOATHOUSE
    assert pictures == {cell: image.value for cell, image in made.images.items()}


def test_views_units_papers_and_codes_change_and_come_back():
    made = panel(BOATHOUSE)
    start = {cell: image.value for cell, image in made.images.items() if image.value}
    for change, back in ((lambda: made._set_units("millimetres"), lambda: made._set_units("feet-inches")),
                         (lambda: made._set_paper("dark"), lambda: made._set_paper("light")),
                         (lambda: made._set_view("draft"), lambda: made._set_view("all"))):
        change()
        assert start != {cell: image.value for cell, image in made.images.items() if image.value}
        back()
        assert start == {cell: made.images[cell].value for cell in start}
    made._set_pack("US IRC 2015")
    assert "US IRC 2015" in made.checks.value


def test_a_place_is_looked_up_and_set():
    put = {}
    box = Lookup(put.update)
    box.search("qqxxzzvv")
    assert box.list.options == ("no station of that name",)
    box.search("Intl")
    assert len(box.list.options) > 1
    box.choose(box.list.options[1])
    assert set(put) >= {"site.place", "site.altitude"}
    made = panel(BOATHOUSE)
    made.given_all({"site.altitude": "1500 m", "site.winter": "-15 degC"})
    assert made.design.site.altitude == 1500
    made.given_all({"site.altitude": "1600 m", "site.winter": "-1500 degC"})
    assert made.design.site.altitude == 1500, "all or nothing"
