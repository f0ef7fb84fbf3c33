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


def test_a_check_is_shown_where_it_is_measured():
    made = panel(BOATHOUSE)
    assert len(made.sheet.children) == 4
    made.pointer.value = "HTH-07"
    assert len(made.sheet.children) == 1 and made.sheet.children[0].value
    first = made.sheet.children[0].value
    made.given("hearth.front", "18 in")
    assert made.sheet.children[0].value != first
    made.pointer.value = "HTH-05"  # for small openings
    assert "does not apply" in made.said.value
    made._set_view("all")
    assert made.marked == "" and made.pointer.value == "" and len(made.sheet.children) == 4
    made._set_pack("UK ADJ")
    assert "UK-045" in dict(made.pointer.options).values()


def test_the_checklist_is_the_packs_own_and_counts_down():
    made = panel(BOATHOUSE, pack="Trade practice")
    assert [c.description for c in made.ticks.children] == ["Set out from the centre line", "No more mortar spread than is covered at once"]
    assert "<b>2</b> not answered" in made.hint.value
    made.ticks.children[0].value = "yes"
    assert made.design.abroad.centre_line is True and "<b>1</b> not answered" in made.hint.value
    assert "✓ meets</td><td><b>Set out from the centre line" in made.checks.value


def test_every_book_answers_in_one_table():
    made = panel(BOATHOUSE)
    for words in ("The same question to every book", "Canada NBC", "UK ADJ", "silent", "CA-006", "Why they differ"):
        assert words in made.books.value


def test_a_slider_reaches_the_ends_its_input_allows(boathouse):
    """18 and 96 in for the width; in whole centimetres the first and last inside them."""
    shown = panel(boathouse)
    slider = shown.leads["opening.width"].slider
    assert (slider.min, slider.max) == (18, 96)
    shown._set_units("millimetres")
    assert (slider.min, slider.max) == (460, 2430)
    extension = shown.leads["opening.extension"].slider
    assert (extension.min, extension.max) == (0, 600)
