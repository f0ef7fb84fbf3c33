"""The page on which a set is entered: what it is told, what it shows, what it keeps."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measured_sheet import HEAD, as_sheet

from fireplace_calc.editing.sets.measured_files import MeasuredFiles
from fireplace_calc.panels.measuring import measure_set
from fireplace_calc.panels.measuring.measure_set import MeasureSet
from fireplace_calc.panels.measuring.telling import WHOLE
from fireplace_calc.pieces.measured.sheet import MeasuredSheet, begun
from fireplace_calc.pieces.set_text import read_set


@pytest.fixture
def bare(tmp_path):
    """A sheet that begins with what is told once."""
    return MeasureSet(tmp_path / "own.toml")


@pytest.fixture
def headed(bare):
    """The same, with that told, and the first piece open."""
    for key, text in HEAD.items():
        typed(bare, key, text)
    bare.hear({"do": "done", "id": bare.page.shown["id"]})
    return bare


@pytest.fixture
def full(tmp_path):
    """Forty pieces on the sheet."""
    MeasuredFiles(tmp_path / "own.toml").keep(as_sheet())
    return MeasureSet(tmp_path / "own.toml")


def typed(measuring, key, text, **more):
    measuring.hear(
        {"do": "put", "id": measuring.page.shown["id"], "key": key, "text": text, **more}
    )


def plate(measuring, mark="PR"):
    for key, text in {"mark": mark, "A": "26 3/8", "B": "23 3/4", "C": "3", "X": "1/8"}.items():
        typed(measuring, key, text)


def field(measuring, key):
    return next(f for f in measuring.page.shown["fields"] if f["key"] == key)


def marks(measuring):
    return [row["mark"] for row in measuring.page.shown["rows"]]


def test_a_new_sheet_asks_for_the_set_as_a_whole_first(bare):
    shown = bare.page.shown
    assert shown["title"] == "The set as a whole" and bare.number == WHOLE
    assert "name" in shown["misfits"][-1]
    assert [f["key"] for f in shown["fields"]][:2] == ["name", "unit"]


def test_what_is_missing_is_told_at_its_field_when_it_is_to_be_done(bare):
    assert field(bare, "bed")["wrong"] == ""
    bare.hear({"do": "done", "id": bare.page.shown["id"]})
    assert bare.number == WHOLE and bare.page.shown["ask"]["key"] == "name"
    assert field(bare, "bed")["wrong"] == "Bed joint: least, wanted, most is missing."
    typed(bare, "name", "Own set")
    said = "own.toml is not written yet. Bed joint: least, wanted, most is missing."
    assert bare.page.shown["kept"] == said


def test_a_text_that_cannot_be_read_stays_and_is_told_at_its_field(headed):
    typed(headed, "A", "26 3/")
    assert field(headed, "A")["text"] == "26 3/"
    assert "A: width is '26 3/'" in field(headed, "A")["wrong"]
    plate(headed)
    typed(headed, "B", "wide")
    headed.hear({"do": "done", "id": headed.page.shown["id"]})
    assert headed.number == 0 and headed.page.shown["ask"]["key"] == "B"


def test_the_drawing_takes_shape_with_every_field(headed):
    seen = set()
    for key, text in {"A": "26 3/8", "B": "23 3/4", "C": "3"}.items():
        typed(headed, key, text, next="C")
        seen.add(headed.page.drawn["bodies"][0])
        assert f"{key} {text}" in headed.page.seen
    assert len(seen) == 3


def test_the_next_piece_begins_as_a_copy_and_the_other_hand_is_one_key(headed):
    plate(headed)
    headed.hear({"do": "done", "id": headed.page.shown["id"]})
    assert headed.number == 1 and field(headed, "A")["text"] == "26 3/8"
    assert field(headed, "mark")["text"] == "" and marks(headed) == ["PR"]
    headed.hear({"do": "hand", "id": headed.page.shown["id"]})
    assert marks(headed) == ["PR", "PL"] and headed.number == 2
    assert field(headed, "A")["text"] == "26 3/8"


def test_the_other_hand_of_a_piece_without_a_side_asks_for_its_mark(headed):
    plate(headed, "B1")
    headed.hear({"do": "hand", "id": headed.page.shown["id"]})
    assert headed.number == 1 and headed.page.shown["ask"]["key"] == "mark"
    assert field(headed, "mirror")["text"] == "B1"


def test_the_set_as_a_whole_has_no_other_hand(full):
    before = full.sheet
    full.hear({"do": "open", "number": WHOLE})
    assert full.number == WHOLE
    full.hear({"do": "hand", "id": full.page.shown["id"]})
    assert full.sheet is before and full.number == WHOLE and full.page.shown["said"] == []


def test_a_set_has_no_more_pieces_than_can_be_read(full, monkeypatch):
    many = len(full.sheet.entries)
    monkeypatch.setattr(measure_set, "MOST_PIECES", many)
    full.hear({"do": "done", "id": full.page.shown["id"]})
    assert full.page.shown["said"][0] == f"A set has at most {many} pieces."
    assert len(full.sheet.entries) == many
    monkeypatch.setattr(measure_set, "MOST_PIECES", many + 1)
    full.hear({"do": "done", "id": full.page.shown["id"]})
    assert len(full.sheet.entries) == many + 1 and full.number == many


def test_there_is_no_other_hand_of_nothing(headed):
    headed.hear({"do": "hand", "id": headed.page.shown["id"]})
    assert headed.page.shown["said"] == ["There is no piece yet to be the other hand of."]


def test_what_is_typed_for_a_piece_that_was_left_does_not_reach_another(headed):
    plate(headed)
    before = headed.sheet
    headed.hear({"do": "put", "id": "7 of 9", "key": "mark", "text": "XX"})
    headed.hear({"do": "put", "id": headed.page.shown["id"], "key": "color", "text": "red"})
    assert headed.sheet == before


def test_one_goes_back_to_a_piece_and_sees_what_does_not_meet(full):
    number = marks(full).index("W2B")
    full.hear({"do": "open", "number": number})
    assert full.page.shown["title"] == f"Piece {number + 1}" and full.page.shown["said"] == []
    typed(full, "C", "5")
    assert any("cannot come level" in words for words in full.page.shown["said"])
    assert any("cannot come level" in words for words in full.page.shown["misfits"])
    state = full.page.shown["rows"][number]["cells"][-1]
    assert state.startswith("does not meet: ")
    typed(full, "C", "6")
    assert full.page.shown["misfits"] == ["Everything meets."]
    assert {row["cells"][-1] for row in full.page.shown["rows"]} == {"ok"}


def test_the_table_says_how_each_weight_is_known(full):
    cells = {row["mark"]: row["cells"] for row in full.page.shown["rows"]}
    assert cells["F8"][3] == "118 lb (54 kg), weighed"
    assert cells["W1R"][3].endswith("by density") and cells["W1L"][0] == "wall"


def test_a_restart_goes_on_where_it_was(full):
    full.hear({"do": "new", "id": full.page.shown["id"]})
    typed(full, "mark", "Z9")
    again = MeasureSet(full.files.set)
    assert again.sheet == full.sheet and again.number == 40
    assert field(again, "mark")["text"] == "Z9"


def test_a_piece_is_taken_off_unless_it_has_another_hand(full):
    full.hear({"do": "open", "number": 0})
    full.hear({"do": "drop", "id": full.page.shown["id"]})
    assert full.page.shown["said"][0].startswith("PL is the other hand of PR")
    full.hear({"do": "open", "number": 1})
    full.hear({"do": "drop", "id": full.page.shown["id"]})
    assert "PL" not in marks(full) and len(marks(full)) == 39


def test_more_fields_are_shown_when_asked_for_and_where_they_are_told(full):
    full.hear({"do": "open", "number": 0})
    assert full.page.shown["more"] and field(full, "bed")["text"] == "3/8, 1/2, 1"
    full.hear({"do": "open", "number": 2})
    assert not full.page.shown["more"]
    full.hear({"do": "more", "id": full.page.shown["id"]})
    assert full.page.shown["more"] and full.page.shown["ask"]["key"] == "name"


def test_a_new_piece_may_be_like_one_of_those_before(full):
    full.hear({"do": "open", "number": 2})
    full.hear({"do": "new", "id": full.page.shown["id"]})
    assert full.number == 40 and field(full, "D")["text"] == "4 1/8"
    full.hear({"do": "open", "number": 0})
    full.hear({"do": "new", "id": full.page.shown["id"]})
    assert full.number == 40 and field(full, "A")["text"] == "26 3/8", "in place of the one begun"
    full.hear({"do": "new", "id": full.page.shown["id"]})
    assert full.number == 40 and len(full.sheet.entries) == 41


def test_the_set_file_is_there_after_every_field(headed):
    plate(headed)
    assert [p.mark for p in read_set(headed.files.set.read_text()).pieces] == ["PR"]
    assert headed.page.shown["kept"].endswith('pieces.set = "own".')


def test_a_folder_that_takes_no_file_is_said_and_what_was_typed_stays(headed, monkeypatch):
    monkeypatch.setattr(headed.files, "sheet", headed.files.sheet / "gone" / "x.toml")
    typed(headed, "A", "12")
    assert headed.page.shown["kept"].startswith("Not kept: ")
    assert field(headed, "A")["text"] == "12"


def test_dark_paper_is_another_picture(full):
    light = full.page.drawn
    full.hear({"do": "look", "dark": True})
    assert full.page.drawn != light


def test_millimeters_are_asked_for_in_millimeters(headed):
    headed.hear({"do": "open", "number": WHOLE})
    typed(headed, "unit", "mm")
    assert field(headed, "bed")["hint"] == "6, 10, 13"
    assert field(headed, "density")["hint"] == "kg/m3"
    said = headed.page.shown["said"]
    assert said == ["Every bare number on the sheet is now read in millimeters and kilograms."]


@settings(deadline=None, max_examples=15)
@given(st.data())
def test_nothing_that_is_pressed_breaks_the_page(tmp_path_factory, data):
    """Random messages: the page goes on, and what it shows is what the sheet holds."""
    measuring = MeasureSet(tmp_path_factory.mktemp("any") / "own.toml")
    measuring.sheet = begun(MeasuredSheet(HEAD))
    measuring.hear({"do": "open", "number": 0})
    texts = st.sampled_from(
        ["", "5", "3/8, 1/2, 1", "2-4", "x", "WR", "flue", "lintel", "box", "-1"]
    )
    for _ in range(data.draw(st.integers(1, 12))):
        keys = [f["key"] for f in measuring.page.shown["fields"]]
        measuring.hear(
            {
                "do": data.draw(
                    st.sampled_from(
                        ["put", "put", "put", "at", "done", "new", "hand", "drop", "more", "open"]
                    )
                ),
                "id": measuring.page.shown["id"],
                "key": data.draw(st.sampled_from(keys)),
                "text": data.draw(texts),
                "number": data.draw(st.integers(-3, 5)),
            }
        )
        held = HEAD if measuring.number == WHOLE else measuring.sheet.entries[measuring.number]
        held = measuring.sheet.head if measuring.number == WHOLE else held
        assert {f["key"]: f["text"] for f in measuring.page.shown["fields"] if f["text"]} == {
            k: t for k, t in held.items() if k in {f["key"] for f in measuring.page.shown["fields"]}
        }
    again = MeasuredFiles(measuring.files.set).take_up()[0]
    assert again == measuring.sheet or not measuring.files.sheet.exists()
