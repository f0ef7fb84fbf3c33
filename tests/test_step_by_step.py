"""A set built on the screen, one piece at a time."""

import pytest

from fireplace_calc import change
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import MILLIMETRES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.designfile import load
from fireplace_calc.panels.step_by_step import StepByStep


@pytest.fixture(scope="module")
def grown():
    return StepByStep(load(example("boathouse-set")))


def test_every_piece_of_the_set_has_one_step_and_the_lining_one(grown):
    placed = [card.placed.name for card in grown.pictures.cards if card.placed]
    assert len(placed) == len(set(placed)) == len(grown.pictures.made.placed)
    assert grown.slider.max == len(placed) + 1


def test_the_slider_runs_from_the_bare_footing_to_the_last_piece(grown):
    seen = set()
    for step in (0, 1, 20, grown.slider.max):
        grown.go(step)
        seen.add(grown.board.images[grown.board.panes[0]].value)
        assert (f"Step {step} of" in grown.card.value) == (step > 0)
    assert len(seen) == 4
    grown.go(10_000)
    assert grown.slider.value == grown.slider.max
    grown.go(-5)
    assert grown.slider.value == 0 and "bare footing" in grown.card.value


def test_the_card_is_read_in_the_readers_units(grown):
    grown.go(3)
    feet = grown.card.value
    grown.read_in(MILLIMETRES)
    assert " mm" in grown.card.value and grown.card.value != feet


def test_dark_paper_is_another_picture(grown):
    grown.go(5)
    light = grown.board.images[grown.board.panes[0]].value
    grown.paint_on("dark")
    assert grown.board.images[grown.board.panes[0]].value != light


def test_a_design_without_a_set_is_refused():
    with pytest.raises(InputError, match="without a set of pieces"):
        StepByStep(change(Design(), {"opening.width": "40 in"}))


def test_another_set_has_other_steps():
    small = change(Design(), {"pieces.set": "small"})
    assert StepByStep(small).slider.max != StepByStep(load(example("boathouse-set"))).slider.max


def test_the_cards_are_printed_where_one_works(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    small = StepByStep(change(Design(), {"pieces.set": "small"}))
    small.print_cards()
    assert (tmp_path / "cards.pdf").read_bytes().startswith(b"%PDF")
    assert f"{small.slider.max + 2} pages" in small.said.value  # the delivery and the pole before
    monkeypatch.setattr("fireplace_calc.panels.step_by_step.CARDS", "nowhere/cards.pdf")
    small.print_cards()
    assert "cards.pdf" in small.said.value and "a card for every step" not in small.said.value
