"""The cards of a set on paper."""

from collections import Counter
from dataclasses import replace
from datetime import datetime
from types import SimpleNamespace

import pytest
from pypdf import PdfReader
from sampled import sampled

from fireplace_calc import change
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, InputError
from fireplace_calc.build.lifting.equation import HOIST, ONE, TWO
from fireplace_calc.build.setting.pallet_list import pallet_rows
from fireplace_calc.build.setting.wording import QUART, _check, card_cautions, card_words
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.as_built_record import print_record
from fireplace_calc.drawing.papers.setting_cards import print_cards
from fireplace_calc.drawing.pieces.pallet_picture import pallet_sheets
from fireplace_calc.drawing.pieces.pole_picture import pole_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.geometry.assembled.assembly import assemble
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.joints.story_pole import pole_notes
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.records import Round
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop


@pytest.mark.whole
def test_every_step_is_a_page_that_names_its_piece_and_the_caution(tmp_path):
    small = change(Design(), {"pieces.set": "small", "flue.sections": 10})
    pages = print_cards(small, tmp_path / "cards.pdf", MILLIMETRES)
    read = [page.extract_text() for page in PdfReader(tmp_path / "cards.pdf").pages]
    assert len(read) == pages
    pallet, staging, pole, *cards = read
    assert "On the pallet" in pallet
    assert "Staging" in staging and "kg x m" in staging
    assert "Story pole" in pole
    assert "base plate" in cards[0]
    assert "F8.10" in cards[-1]
    assert all("not permission" in " ".join(text.split()) for text in read)
    assert [f"Step {n} of {len(cards)}" in text for n, text in enumerate(cards, 1)] == [True] * len(
        cards
    )


@pytest.mark.parametrize("units", sampled([FEET_INCHES, MILLIMETRES], 1))
@pytest.mark.parametrize("name", ["small", "middling", "wide"])
def test_the_delivery_is_drawn_mark_by_mark_to_one_scale(name, units):
    made = set_up(change(Design(), {"pieces.set": name, "flue.sections": 12})).assembly
    (sheet,) = pallet_sheets(made, units)
    said = [label.text for label in sheet.labels]
    for mark, count in Counter(one.piece.mark for one in made.placed).items():
        assert f"{mark} x {count}" in said
    assert [said.count(word) for word in ("here", "short", "broken")] == [
        len(pallet_rows(made))
    ] * 3
    assert not collisions(sheet)


@pytest.mark.parametrize("units", sampled([FEET_INCHES, MILLIMETRES], 1))
@pytest.mark.parametrize("name", ["small", "middling", "wide"])
@pytest.mark.parametrize("sections", [4, 40])
def test_the_pole_has_every_lift_at_its_top(name, units, sections):
    design = change(Design(), {"pieces.set": name, "flue.sections": sections})
    up = set_up(design)
    sheet = pole_sheet(SetPictures(up.assembly, design.piece_set.lining), up.plan, units)
    said = [label.text for label in sheet.labels]
    tick = up.plan.tick if units == up.plan.units else 0.0
    for lift, top in zip(up.plan.chain, up.plan.tops, strict=True):
        assert any(
            text.startswith(f"{tape_text(top, units, tick)}  {lift.name}, ") for text in said
        )
    assert not collisions(sheet)


@pytest.mark.parametrize("units", [FEET_INCHES, MILLIMETRES])
def test_what_the_pole_cannot_meet_is_said_in_red_at_its_foot(units):
    """A sentence is wider than the sheet: it ran off its right edge, and the fourth off its foot."""
    told = {"pieces.set": "small", "pieces.opening_wanted": "40 in", "pieces.top_wanted": "12 ft"}
    design = change(Design(), told)
    up = set_up(design)
    plan = up.plan if units == up.plan.units else replace(up.plan, tick=0.0)
    notes = pole_notes(replace(plan, units=units))
    assert not any((" mm" in note) != (units == MILLIMETRES) for note in notes[:3])
    assert len(notes) > 1 and all(note.startswith("From ") for note in up.plan.unmet)
    pictures = SetPictures(up.assembly, design.piece_set.lining)
    bare = pole_sheet(pictures, replace(up.plan, conflicts=()), FEET_INCHES)
    sheet = pole_sheet(pictures, plan, units)
    red = [label for label in sheet.labels if label.ink == "bad"]
    assert " ".join(label.text for label in red) == " ".join(notes)
    assert not [label for label in bare.labels if label.ink == "bad"]
    assert {(label.x, label.ha, label.size) for label in red} == {(8.0, "left", SMALL)}
    rows = len(red)
    assert [label.y for label in red] == pytest.approx(
        [9.0 + 3.6 * (max(rows - 2, 0) - n) for n in range(rows)]
    )
    assert not collisions(sheet)


def test_a_set_of_many_marks_has_sheets_enough():
    made = set_up(change(Design(), {"pieces.set": "middling"})).assembly
    more = [replace(made.placed[0].piece, mark=f"X{n}") for n in range(20)]
    lifts = [ChosenLift(piece.mark, (piece,)) for piece in more]
    first, second = pallet_sheets(assemble(lifts, [piece.height for piece in more]))
    assert "X0 x 1" in [label.text for label in first.labels]
    assert [label.text for label in second.labels if label.text.endswith("x 1")] == [
        "X18 x 1",
        "X19 x 1",
    ]


def test_no_set_no_cards(tmp_path):
    with pytest.raises(InputError, match="no cards to print"):
        print_cards(Design(), tmp_path / "cards.pdf")
    assert not (tmp_path / "cards.pdf").exists()


def test_a_folder_that_is_not_there_is_said(tmp_path):
    small = change(Design(), {"pieces.set": "small"})
    with pytest.raises(InputError):
        print_cards(small, tmp_path / "nowhere" / "cards.pdf")


def measured(up, count):
    noon = datetime(2027, 5, 3, 12, 0)
    return AsBuilt(
        "Lake house",
        tops=tuple(
            MeasuredTop(
                rise.name, top + 0.004 * (n % 2), noon, "A. B.", 0.001, None, 0.002, note="dry"
            )
            for n, (rise, top) in enumerate(zip(up.plan.chain, up.plan.tops, strict=True))
            if n < count
        ),
    )


@pytest.mark.parametrize("units", sampled([FEET_INCHES, MILLIMETRES], 1))
@pytest.mark.parametrize("name", ["small", "middling", "wide"])
@pytest.mark.parametrize("count", [0, 3, 40])
def test_the_record_for_the_inspector(tmp_path, name, count, units):
    """Job, hold point, wanted, built, tolerance, within or not, who measured, lines to sign, fingerprint."""
    design = change(Design(), {"pieces.set": name, "flue.sections": 20})
    up = set_up(design)
    built = measured(up, count)
    pages = print_record(design, built, tmp_path / "record.pdf", units)
    read = [page.extract_text() for page in PdfReader(tmp_path / "record.pdf").pages]
    assert len(read) == pages
    said = " ".join(" ".join(read).split())
    for words in (
        "Lake house",
        fingerprint(design),
        "Measured by",
        "Inspected by",
        "Date",
        "memory",
    ):
        assert words in said
    assert all(fingerprint(design) in text for text in read)
    assert ("Nothing has been measured yet" in said) == (count == 0)
    assert said.count("A. B.") == len(built.tops)
    assert ("NO: top" in said) == (count > 0)  # every other bed is 4 mm too full
    if count == 3:
        first, second, third = (tape_text(top.level, units) for top in built.tops)
        assert first in said and second in said and third in said
        assert f"Not measured: {up.plan.chain[3].name}" in said


def test_no_set_no_record(tmp_path):
    with pytest.raises(InputError, match="nothing of one can be measured"):
        print_record(Design(), AsBuilt(), tmp_path / "record.pdf")
    small = change(Design(), {"pieces.set": "small"})
    other = AsBuilt(tops=(MeasuredTop("attic", 1.0, datetime(2027, 5, 3)),))
    with pytest.raises(InputError, match="no lift 'attic'"):
        print_record(small, other, tmp_path / "record.pdf")
    assert not list(tmp_path.iterdir())


# -- what a card says, by hand ---------------------------------------------------------------------
def card_of(role="wall", **told):
    """A card of an invented piece, everything else as told."""
    piece = SimpleNamespace(name="right wall", role=role, height=10 * INCH, cuts=())
    placed = SimpleNamespace(piece=piece, bed=0.375 * INCH)
    hands = SimpleNamespace(weight=20.0, weighed=True, verdict="one person", index=0.5)
    given = {
        "placed": placed, "handling": hands, "name": "WR", "carried_by": (), "front": 0.0,
        "left": 17.5 * INCH, "right": 26.5 * INCH, "beside": (), "mortar": None, "mix": None,
        "opens_mix": False, "top": 13.5 * INCH, "hold": None, "number": 1, "of": 1,
        "lift": "first course", "lining": None, "laid": None,
    }  # fmt: skip
    return SimpleNamespace(**(given | told))


def told_of(*args, head="Place", units=FEET_INCHES, **told):
    return dict(card_words(card_of(*args, **told), units)).get(head)


@pytest.mark.parametrize(
    ("left", "right", "front", "says"),
    [
        (-4, 4, 0, 'front edge on the front line; centered, 4" each way'),
        (-4, 5, 0, 'front edge on the front line; 4" left and 5" right of the center line'),
        (0, 5, 0, 'front edge on the front line; edges 0" and 5" right of the center line'),
        (-5, 0, 0, 'front edge on the front line; edges 0" and 5" left of the center line'),
        (2, 5, 3, 'front edge 3" back of the front line; edges 2" and 5" right of the center line'),
        (-5, -2, 0, 'front edge on the front line; edges 2" and 5" left of the center line'),
    ],
)
def test_a_place_is_told_from_the_front_line_and_the_center_line(left, right, front, says):
    where = {"left": left * INCH, "right": right * INCH, "front": front * INCH}
    assert told_of(**where) == says


def test_what_is_not_placed_has_nothing_to_be_checked():
    assert _check(card_of(placed=None), FEET_INCHES) == ""
    assert _check(card_of(), FEET_INCHES) == "level both ways, plumb, front edge on its line"


def test_weight_lift_and_what_it_rests_on():
    def hands(verdict, weighed=True):
        return SimpleNamespace(weight=20.0, weighed=weighed, verdict=verdict, index=0.5)

    assert told_of(head="Weight") == "44 lb (20 kg), weighed"
    assert told_of(head="Weight", handling=hands(ONE, False), units=MILLIMETRES) == (
        "20 kg (44 lb), from its density; weigh one"
    )
    assert told_of(head="Lift", handling=hands(ONE)) == ONE
    assert told_of(head="Lift", handling=hands(TWO)) == f"{TWO}, one at each end"
    assert told_of(head="Lift", handling=hands(HOIST)) == f"{HOIST}, two to guide it"
    assert told_of(head="Rests on") == "the footing or base under it"
    assert told_of(head="Rests on", carried_by=("PR", "PL")) == "PR, PL"
    assert told_of(head="Top at") == "1'-1 1/2\" on the story pole"
    assert told_of(head="Joints") is None and told_of(head="Mortar") is None
    beside = (("WB", 0.25 * INCH), ("LS", 0.5 * INCH))
    assert told_of(head="Joints", beside=beside).startswith('1/4" to WB, 1/2" to LS; butter')


def test_a_socket_of_the_flue_is_filled_and_its_bore_wiped():
    def bedded(role, cuts):
        card = card_of(role)
        card.placed.piece.cuts = cuts
        return dict(card_words(card))["Bed"]

    socket, hole = Round(0.0, 0.02, 0.2, (0.0, 0.0)), Round(0.05, 0.2, 0.2, (0.0, 0.0))
    assert bedded("flue", (socket,)).endswith("fill the socket, wipe the bore")
    assert "socket" not in bedded("flue", (hole,)) + bedded("collar", (socket,))
    assert bedded("wall", ()).startswith('3/8", full; wet the dry faces')


def test_a_mix_is_opened_in_time_or_spread_in_two_goes():
    mix = SimpleNamespace(number=3, names=("WR", "WL"), volume=2 * QUART, in_time=True)
    own = {"mortar": SimpleNamespace(volume=0.5 * QUART), "mix": mix, "head": "Mortar"}
    assert told_of(**own) == "0.5 qt, from mix 3"
    assert told_of(**own, opens_mix=True) == "0.5 qt; make mix 3, 2.0 qt for WR, WL"
    mix.in_time = False
    assert told_of(**own, opens_mix=True).endswith("WR, WL; spread it in two goes, it sets slower"
                                                   " than it is good")  # fmt: skip


def test_a_lift_that_is_whole_is_held_until_it_is_checked():
    hold = SimpleNamespace(level=0.125 * INCH, plumb=0.25 * INCH, joint=0.0625 * INCH)
    assert told_of(head="Check") == "level both ways, plumb, front edge on its line"
    held = told_of(head="Check", hold=hold)
    assert held.endswith(
        'STOP, lift complete: first course. Tops level within 1/8", faces plumb within 1/4" from the'
        ' start, beds within 1/16" of what is told, top on its mark. Diagonals equal.'
    )
    assert "Diagonals" not in told_of("lintel", head="Check", hold=hold)
    assert "Diagonals" not in told_of("flue", head="Check", hold=hold)


def dangers(*args, **told):
    return {said.split(":")[0] for said in card_cautions(card_of(*args, **told))}


def test_what_can_hurt_follows_from_the_piece_and_its_place():
    """Six feet and over one can fall (29 CFR 1926.501(b), from memory)."""
    assert dangers() == {"Hands"}
    assert dangers("lintel") == dangers("reducer") == {"Hands", "Collapse"}
    assert dangers("reducer", hold=SimpleNamespace()) == {"Hands"}
    assert dangers(top=82.1 * INCH) == {"Hands", "Heights"} and dangers(top=82 * INCH) == {"Hands"}
    assert "CO and fire" in dangers("flue", number=4, of=4)
    assert "CO and fire" not in dangers("flue", number=3, of=4) | dangers("wall")
    assert dangers(opens_mix=True) == {"Hands", "Dust, skin and eyes"}
    hoisted = SimpleNamespace(weight=200.0, weighed=True, verdict=HOIST, index=None)
    assert "Lifting: hoist only" in card_cautions(card_of(handling=hoisted))[0]
    assert dangers(placed=None) == dangers(handling=None) == {"Dust", "Skin and eyes"}


def test_the_card_of_the_lining_opens_no_mix():
    design = change(Design(), {"pieces.set": "middling"})
    cards = SetPictures(set_up(design).assembly, design.piece_set.lining).cards
    (own,) = (card for card in cards if card.placed is None)
    assert (own.opens_mix, own.mix, own.mortar) == (False, None, None)
