"""Cards: one a step, with what the mason needs and nothing that is not known."""

import pytest
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.tables.erection import allowed_off
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES
from fireplace_calc.build.setting.cards import card_named, cards_of
from fireplace_calc.build.setting.handling import handling_of
from fireplace_calc.build.setting.wording import card_cautions, card_title, card_words
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set

MIDDLING = (DATA / "sets" / "middling.toml").read_text()


@pytest.fixture(scope="module")
def cards():
    return middling()


def middling(text=MIDDLING, **choice):
    made = read_set(text)
    return card_named(cards_of(as_wanted(choose(made, Choice(**choice))), made.lining))


def words(card, units=FEET_INCHES):
    return dict(card_words(card, units))


@pytest.mark.parametrize("seed", range(20))
def test_every_piece_has_one_card_and_every_lift_one_stop(seed):
    assembly, lining = stood(random_set(seed)), made_set(random_set(seed)).lining
    cards = cards_of(assembly, lining)
    assert [c.number for c in cards] == list(range(1, len(cards) + 1))
    assert {c.of for c in cards} == {len(cards)}
    assert sorted(c.name for c in cards if c.placed) == sorted(p.name for p in assembly.placed)
    stops = [c.placed.lift for c in cards if c.hold]
    assert stops == sorted(set(stops)) and len(stops) == len(assembly.lifts)
    for card in cards:
        for units in (FEET_INCHES, MILLIMETRES):
            said = card_words(card, units)
            assert said and all(head and text for head, text in said)
            assert not any("nan" in text or " -" in text for _, text in said)
        assert card_cautions(card)
    assert sum(c.handling.weight for c in cards if c.handling) == pytest.approx(
        sum(piece_weight(p.piece) for p in assembly.placed)
    )


def test_a_card_by_hand(cards):
    """In inches: the back part of the throat stands 5-1/4 back, 24 either way; its top is plate 3-1/2,
    three courses of 10-3/8, top walls 9-3/8 and 5-3/8 up."""
    said = words(cards["N2.1"])
    assert said["Place"] == 'front edge 5 1/4" back of the front line; centered, 2\'-0" each way'
    assert said["Top at"] == "4'-1 3/8\" on the story pole"
    top = 3.5 + 3 * 10.375 + 9.375 + 5.375
    assert cards["N2.1"].top / INCH == pytest.approx(top)
    assert said["Bed"].startswith('3/8", full; wet the dry faces')
    assert "10 to 15 minutes" in said["Bed"]
    assert set(said["Rests on"].split(", ")) == {"TL.1", "TR.1"}
    assert "from its density; weigh one" in said["Weight"]


def test_places_left_right_and_on_the_front_line(cards):
    assert words(cards["WR.1"])["Place"] == (
        "front edge on the front line; edges 1'-5 1/2\" and 2'-2 1/2\" right of the center line"
    )
    assert "left of the center line" in words(cards["WL.1"])["Place"]
    assert words(cards["WR.1"], MILLIMETRES)["Place"].endswith(
        "edges 444 mm and 673 mm right of the center line"
    )


def test_joints_name_what_stands_and_no_more(cards):
    assert "Joints" not in words(cards["WL.1"]) and "Joints" not in words(cards["WR.1"])
    assert words(cards["WB.1"])["Joints"].startswith('1/4" to WL.1, 1/4" to WR.1')


def test_a_weighed_piece_says_so():
    text = MIDDLING.replace('mark = "CT"', 'mark = "CT"\nweight = 25.4')
    card = middling(text)["CT.1"]
    assert words(card)["Weight"] == "56 lb (25 kg), weighed"
    assert words(card, MILLIMETRES)["Weight"] == "25 kg (56 lb), weighed"


def test_who_lifts_goes_by_weight():
    """20 kg for one (HSE, read); two carry two thirds of their sum (lifting manual, read): 26.7 kg; beyond
    that a hoist."""
    for kilograms, who in ((19.9, "one person"), (26.6, "two people"), (26.8, "hoist")):
        text = MIDDLING.replace('mark = "CT"', f'mark = "CT"\nweight = {kilograms}')
        assert middling(text)["CT.1"].handling.verdict == who
    heavy = middling()["RL.1"]
    assert heavy.handling.verdict == "hoist" and "hoist only" in " ".join(card_cautions(heavy))


def test_a_stand_follows_the_work_up():
    made = read_set(MIDDLING)
    assembly = as_wanted(choose(made, Choice(flues=36)))
    work = Work()
    found = [handling_of(p, work, 0.0) for p in assembly.placed]
    stands = [h.stand for h in found]
    assert stands == sorted(stands) and stands[0] == 0.0
    for one, handling in zip(assembly.placed, found, strict=True):
        assert handling.stand == pytest.approx(
            round(handling.stand / work.lift_height) * work.lift_height
        )
        assert -0.31 <= one.level - handling.stand <= 2 * work.lift_height
        assert handling.lifted == pytest.approx(max(one.level - work.stack_height, 0.0))


def test_a_stop_gives_the_published_tolerances(cards):
    """TMS 602, from memory: 1/4 in level over 10 ft, plumb 1/4 in 10 ft, 3/8 in 20 ft, bed 1/8."""
    hold = cards["WB.1"].hold
    assert hold.level == allowed_off("bed level", 1.0) == pytest.approx(0.25 * INCH)
    assert 'level within 1/4"' in words(cards["WB.1"])["Check"]
    assert cards["WL.1"].hold is None
    assert cards["F8.12"].hold.plumb == pytest.approx(3 / 8 * INCH)


def test_cautions_name_the_danger_of_the_step(cards):
    assert any("props" in c for c in card_cautions(cards["LS.1"]))
    assert not any("props" in c for c in card_cautions(cards["WL.1"]))
    assert any("Heights" in c for c in card_cautions(cards["F8.12"]))
    assert not any("Heights" in c for c in card_cautions(cards["WB.2"]))
    assert any("end to end" in c for c in card_cautions(cards["F8.12"]))
    assert not any("end to end" in c for c in card_cautions(cards["F8.11"]))


def test_the_first_of_a_mix_says_how_much_is_mixed(cards):
    assert "make mix 1" in words(cards["PL.1"])["Mortar"]
    assert words(cards["PR.1"])["Mortar"].endswith("from mix 1")
    mix = cards["PL.1"].mix
    assert mix.volume == pytest.approx(sum(cards[n].mortar.volume for n in mix.names))


def test_the_lining_is_a_step_with_its_own_words(cards):
    card = cards["lining"]
    assert card_title(card) == "Firebrick lining" and card.placed is None
    assert words(card)["Floor"].startswith('2 1/2"')
    assert "half a brick" in words(card)["Check"]
