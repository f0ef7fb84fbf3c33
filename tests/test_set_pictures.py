"""Pictures of a set: clean on every step, in both unit systems, and they show what stands."""

import numpy as np
import pytest
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, SYSTEMS
from fireplace_calc.drawing.pieces.card_picture import card_sheet
from fireplace_calc.drawing.pieces.growing import build_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set


def middling(**choice):
    made = read_set((DATA / "sets" / "middling.toml").read_text())
    return SetPictures(as_wanted(choose(made, Choice(**choice))), made.lining)


@pytest.fixture(scope="module")
def pictures():
    return middling(extensions=2)


def marked(sheet):
    """Area of everything drawn in the tone of what is set now. [mm2]"""
    total = 0.0
    for (_, tone), polygons in sheet.fills.items():
        if tone.startswith("set "):
            for x, y in (ring.T for rings in polygons for ring in rings):
                total += float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)
    return total


def words(sheet):
    return " ".join(label.text for label in sheet.labels)


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_step_of_the_middling_set_is_clean(pictures, units):
    assert collisions(build_sheet(pictures, 0, units)) == []
    for step in range(1, len(pictures.cards) + 1):
        assert collisions(build_sheet(pictures, step, units)) == [], step
        assert collisions(card_sheet(pictures, step, units)) == [], step


@pytest.mark.parametrize("seed", range(4))
def test_steps_of_random_sets_are_clean(seed):
    made = SetPictures(stood(random_set(seed)), made_set(random_set(seed)).lining)
    for step in range(1, len(made.cards) + 1, 5):
        for units in SYSTEMS:
            assert collisions(card_sheet(made, step, units)) == [], step
            assert collisions(build_sheet(made, step, units)) == [], step


def test_the_piece_just_set_is_marked_and_no_other(pictures):
    for step, card in enumerate(pictures.cards, 1):
        area = marked(build_sheet(pictures, step))
        assert (area > 1.0) == (card.placed is not None), card.name
    assert marked(build_sheet(pictures, 0)) == 0


def test_a_marked_front_is_as_large_as_the_piece(pictures):
    """The straight lintel from the front, by hand: 53 by 9 in, at the sheet's own scale, which the line
    it stands over gives: 53 in and 0.1 m either way."""
    step = next(c.number for c in pictures.cards if c.name == "LS.1")
    sheet = build_sheet(pictures, step)
    ground = min(sheet.lines["ground", "ink"], key=lambda line: line[:, 0].min())
    scale = np.ptp(ground[:, 0]) / (53 * INCH + 0.2)
    fronts = sheet.fills[1, "set front"]
    sizes = [np.ptp(rings[0], axis=0) for rings in fronts]
    assert any(size == pytest.approx(np.array([53, 9]) * INCH * scale, rel=1e-4) for size in sizes)


def test_the_level_beside_the_front_is_the_piece_s_top(pictures):
    step = next(c.number for c in pictures.cards if c.name == "N2.1")
    top = 3.5 + 3 * 10.375 + 2 * 6.375 + 9.375 + 5.375
    assert top == 62.125
    assert "5'-2 1/8\"" in words(build_sheet(pictures, step, FEET_INCHES))
    assert "1578" in words(build_sheet(pictures, step, MILLIMETRES)).replace(" ", "")


def test_the_window_holds_what_stands_under_the_flue_until_that_begins(pictures):
    first = next(c.number for c in pictures.cards if c.placed and c.placed.piece.role == "flue")
    assert pictures.shown(1) == pictures.shown(first - 1) == pictures.standing(first - 1)
    under, whole = pictures.shown(1), len(pictures.order)
    assert pictures.shown(first) == pictures.shown(first + 5) == min(under + 6, whole)
    assert pictures.shown(first + 6) == min(under + 12, whole)
    assert pictures.shown(len(pictures.cards)) == whole


def test_a_card_says_what_its_words_say(pictures):
    step = next(c.number for c in pictures.cards if c.name == "WR.2")
    said = words(card_sheet(pictures, step))
    assert "WR.2  right wall" in said and f"Step {step} of {len(pictures.cards)}" in said
    assert "Rests on" in said and "WR.1" in said
    # Its place from above: inner edge 17 1/2 in, 9 in wide.
    assert "1'-5 1/2\"" in said and '9"' in said


def test_the_lining_is_a_card_without_a_picture_of_a_piece(pictures):
    step = next(c.number for c in pictures.cards if c.placed is None)
    sheet = card_sheet(pictures, step)
    assert marked(sheet) == 0 and "Firebrick lining" in words(sheet)
    assert pictures.standing(step) == pictures.standing(step - 1)
