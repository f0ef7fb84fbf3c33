"""The cards of a set on paper."""

from collections import Counter
from dataclasses import replace
from datetime import datetime

import pytest
from pypdf import PdfReader
from sampled import sampled

from fireplace_calc import change
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.build.setting.pallet_list import pallet_rows
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.as_built_record import print_record
from fireplace_calc.drawing.papers.setting_cards import print_cards
from fireplace_calc.drawing.pieces.pallet_picture import pallet_sheets
from fireplace_calc.drawing.pieces.pole_picture import pole_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.geometry.assembled.assembly import assemble
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.pieces.choice import ChosenLift
from fireplace_calc.pieces.joints.tape import tape_text
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
