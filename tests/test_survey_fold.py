"""The fold on which a fireplace that stands is entered: box by box, kept, and what comes of it."""

import base64
import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from test_survey import BRICK, filled

from fireplace_calc import load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.panels import panel
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.survey.survey_telling import BESIDE, FOUND
from fireplace_calc.survey.asked.entry import CANNOT_REACH, HIDDEN, ROOF, ROOM, SIGNS, STATIONS, UP
from fireplace_calc.survey.asked.walk import WALK
from fireplace_calc.survey.kept import Survey, survey_text


def opened(units="feet-inches", **more):
    made = panel(Design(), units=units, folds=("survey",), **more)
    made.open("survey")
    return made, made.folds["survey"]


def put(fold, box, text):
    fold.hear({"do": "put", "box": box, "text": text})


def box(fold, name):
    return next(b for e in fold.page.shown["entries"] for b in e["boxes"] if b["box"] == name)


def entry(fold, key):
    return next(e for e in fold.page.shown["entries"] if e["key"] == key)


def seen(fold) -> str:
    """The sketch in words."""
    return fold.page.drawn["stage"]["sheets"][0]["words"]


def test_it_stands_among_the_folds():
    assert FOLDS["survey"][0] == "Measure what stands"


@pytest.mark.parametrize("station", STATIONS)
def test_every_station_shows_its_entries_in_order(station):
    fold = opened()[1]
    fold.hear({"do": "at", "station": station})
    assert [e["key"] for e in fold.page.shown["entries"]] == [
        e.key for e in WALK if e.station == station
    ]
    assert all(b["label"] for e in fold.page.shown["entries"] for b in e["boxes"])
    labels = {s["name"]: s["label"] for s in fold.page.shown["stations"]}
    assert labels[station].endswith(f": 0 of {len(fold.page.shown['entries'])}")


@pytest.mark.parametrize(
    ("units", "typed", "kept", "length"),
    [
        ("feet-inches", "44", "44 in", 44 * INCH),
        ("millimetres", "1100", "1100 mm", 1.1),
        ("feet-inches", "1100 mm", "1100 mm", 1.1),
    ],
)
def test_a_bare_number_is_in_the_readers_units(units, typed, kept, length):
    made, fold = opened(units)
    put(fold, "opening width, top", typed)
    assert made.session.survey.told == {"opening width, top": kept}
    assert fold.read().design.opening.width == pytest.approx(length)
    assert entry(fold, "opening width")["found"].startswith("Read: ")


def test_slopes_and_angles_have_a_unit_of_their_own():
    made, fold = opened()
    put(fold, "roof pitch", "6")
    put(fold, "smoke chamber lean, front", "30")
    assert made.session.survey.told == {
        "roof pitch": "6:12",
        "smoke chamber lean, front": "30 deg",
    }


def test_what_cannot_be_read_is_said_at_its_box_and_changes_nothing():
    made, fold = opened()
    put(fold, "jamb, left", "4000")
    assert "workable range" in box(fold, "jamb, left")["wrong"]
    assert box(fold, "jamb, right")["wrong"] == "" and "\\" not in box(fold, "jamb, left")["wrong"]
    put(fold, "jamb, right", "x" * 999 + "\u0007")
    shown = box(fold, "jamb, right")
    assert shown["wrong"] and shown["text"].startswith("xxx")
    assert set(made.session.survey.told) == {"jamb, left"}
    put(fold, "jamb, right", "12")
    put(fold, "jamb, left", "12")
    assert box(fold, "jamb, right")["wrong"] == box(fold, "jamb, left")["wrong"] == ""


def test_what_does_not_go_together_is_said_at_one_of_them():
    fold = opened()[1]
    put(fold, "opening height, left", "30")
    put(fold, "height before raising", "40")
    assert "high now" in box(fold, "height before raising")["wrong"]
    assert fold.page.shown["whole"] is False
    fold.hear({"do": "at", "station": FOUND})
    assert "Nothing can be drawn" in fold.found.value
    fold.hear({"do": "take"})  # nothing to take, and nothing breaks


@pytest.mark.parametrize(
    ("units", "said"),
    [("feet-inches", "alone take 5'-6\""), ("millimetres", "alone take 1 676 mm")],
)
def test_what_does_not_go_together_is_said_in_the_readers_units(units, said):
    """The plain firebox, throat and chamber are 66 in high; and again when the units change."""
    made, fold = opened(units)
    for way in ("one way", "again"):
        put(fold, f"chimney height, {way}", "1 ft")
    assert said in fold.read().trouble
    other = "millimetres" if units == "feet-inches" else "feet-inches"
    made.set_units(other)
    assert said not in fold.read().trouble and "alone take" in fold.read().trouble


def test_out_of_reach_is_a_tick():
    made, fold = opened()
    put(fold, "lintel bearing, left", "6")
    fold.hear({"do": "out", "key": "lintel bearing", "on": True})
    assert entry(fold, "lintel bearing")["out"] is True
    assert box(fold, "lintel bearing, left")["text"] == ""
    assert made.session.survey.told == {"lintel bearing": CANNOT_REACH}
    fold.hear({"do": "out", "key": "lintel bearing", "on": False})
    assert made.session.survey == Survey()
    fold.hear({"do": "at", "station": UP})
    put(fold, "damper", "none")
    fold.hear({"do": "out", "key": "damper", "on": True})
    assert box(fold, "damper")["text"] == "" and entry(fold, "damper")["out"] is True


def test_the_last_entry_is_taken_back(tmp_path):
    made, fold = opened(keep=tmp_path)
    assert fold.page.shown["back"] is False
    put(fold, "jamb, left", "12")
    put(fold, "jamb, left", "12")  # nothing new, so nothing to take back twice
    fold.hear({"do": "out", "key": "jamb", "on": True})
    fold.hear({"do": "back"})
    assert made.session.survey.told == {"jamb, left": "12 in"}
    fold.hear({"do": "back"})
    assert made.session.survey == Survey() and fold.page.shown["back"] is False
    fold.hear({"do": "back"})
    assert Session(Design(), "US IRC 2021", "feet-inches", tmp_path).survey == Survey()


def test_another_job_has_nothing_to_take_back():
    made, fold = opened()
    put(fold, "jamb, left", "12")
    put(fold, "jamb, right", "x" * 999)
    made.session.begin(Design())  # as when another job is opened
    made.session.take_up_survey(filled(BRICK))
    put(fold, "jamb, left", "10")
    assert box(fold, "jamb, right")["wrong"] == ""
    fold.hear({"do": "back"})
    assert made.session.survey == filled(BRICK) and fold.page.shown["back"] is False


def test_undo_goes_over_what_was_measured_and_over_the_design_alike(tmp_path):
    made, fold = opened(keep=tmp_path)
    put(fold, "jamb, left", "12")
    made.set_input("opening.width", "44 in")
    put(fold, "jamb, right", "13")
    assert made.session.steps[1:] == [
        "Jamb, left 12 in, measured", made.session.steps[2], "Jamb, right 13 in, measured",
    ]  # fmt: skip
    made.undo()
    fold.update()
    assert box(fold, "jamb, right")["text"] == "" and box(fold, "jamb, left")["text"]
    assert fold.page.shown["back"] is False, "the last step was the width"
    assert made.design.opening.width == pytest.approx(44 * 0.0254)
    made.undo()
    made.undo()
    fold.update()
    assert made.session.survey == Survey() and box(fold, "jamb, left")["text"] == ""
    for _ in range(3):
        made.redo()
    again = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    assert again.survey.told == {"jamb, left": "12 in", "jamb, right": "13 in"}
    assert again.undo() and set(again.survey.told) == {"jamb, left"}


MOVES = st.lists(
    st.one_of(
        st.tuples(st.just("measure"), st.sampled_from(["10 in", "11 in", "12 in", ""])),
        st.tuples(st.just("take"), st.sampled_from(["40 in", "41 in", "42 in"])),
        st.tuples(st.sampled_from(["undo", "redo", "reopen"]), st.just("")),
    ),
    max_size=14,
)


@settings(max_examples=40, deadline=None)
@given(MOVES)
def test_every_step_back_stands_where_things_stood(moves):
    """Against a plain list of what stood there, reopened from its folder in between."""
    with tempfile.TemporaryDirectory() as folder:
        session = Session(Design(), "US IRC 2021", "feet-inches", Path(folder))
        stood, at = [(session.design, Survey())], 0
        for move, text in moves:
            if move == "measure":
                session.measure(session.survey.put("jamb, left", text), "Measured")
            elif move == "take":
                session.take({"opening.width": text})
            elif move == "reopen":
                session.keep()
                session = Session(Design(), "US IRC 2021", "feet-inches", Path(folder))
            else:
                way = -1 if move == "undo" else 1
                assert getattr(session, move)() == (0 <= at + way < len(stood))
                at = min(max(at + way, 0), len(stood) - 1)
            now = session.design, session.survey
            if move in ("measure", "take") and now != stood[at]:
                stood[at + 1 :] = [now]
                at += 1
            assert now == stood[at]


def test_what_a_step_has_measured_and_nobody_can_read_is_like_nothing():
    work = Session(load(DESIGNS / "plain.toml"), "US IRC 2021", "feet-inches")
    work.measure(Survey().put("jamb, left", "8 in"), "Jamb 8 in")
    good = work.history.now.survey
    work.take({"opening.width": "40 in"})
    assert [moment.survey for moment in work.history.moments] == ["", good, good]
    work.history.moments[1].survey = "[[jamb"
    work.take_up_survey(Survey().put("jamb, left", "8 in"))
    assert [moment.survey for moment in work.history.moments] == ["", "", good]
    assert work.survey == Survey().put("jamb, left", "8 in")


def test_a_survey_of_before_stays_whatever_is_undone(tmp_path):
    """A history that knows of no survey, as older jobs have it, has had it from the beginning; what
    somebody wrote into the file since is one step more.
    """
    session = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    session.take({"opening.width": "44 in"})
    session.keep()
    (tmp_path / "survey.toml").write_text(survey_text(filled(BRICK)))
    again = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    assert again.survey == filled(BRICK) and len(again.steps) == 2
    assert again.undo() and again.survey == filled(BRICK)
    again.redo()
    again.keep()
    other = filled(BRICK).put("jamb, left", "15 in")
    (tmp_path / "survey.toml").write_text(survey_text(other))
    third = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    assert third.survey == other and len(third.steps) == 3
    assert third.undo() and third.survey == filled(BRICK)


def test_a_sign_of_trouble_says_what_to_do():
    fold = opened()[1]
    fold.hear({"do": "at", "station": SIGNS})
    put(fold, "wood charred or stained", "yes")
    assert "Light no fire" in entry(fold, "wood charred or stained")["found"]
    put(fold, "wood charred or stained", "no")
    assert entry(fold, "wood charred or stained")["found"] == ""


def test_what_was_found_says_the_doubtful_first():
    made, fold = opened()
    fold.hear({"do": "at", "station": FOUND})
    assert "Nothing has been entered" in fold.found.value
    made.session.measure(filled(BRICK), "Measured")
    fold.update()
    words = re.sub("<.*?>", " ", fold.found.value)
    at = words.index
    assert at("Signs of trouble") < at("What is doubtful") < at("Not looked at")
    assert "95.1 in²" in words and "falls short" in words
    assert fold.page.drawn == {}


def test_measured_beside_drawn_has_table_and_picture():
    made, fold = opened()
    made.session.measure(filled(BRICK), "Measured")
    fold.hear({"do": "at", "station": BESIDE})
    assert "Measured beside drawn" in fold.found.value and "greatest is taken" in fold.found.value
    assert fold.page.drawn == {}
    fold.hear({"do": "sketch", "name": "front"})
    before = fold.page.drawn
    assert "1b: 3'-4\"" in seen(fold)
    fold.hear({"do": "sketch", "name": "roof"})
    assert fold.page.drawn not in ({}, before) and "44: 18'-11\"" in seen(fold)
    made.set_input("opening.width", "50 in")
    fold.update()
    assert "10&quot; less" in fold.found.value


def test_a_sketch_shows_where_to_hold_the_tape():
    fold = opened()[1]
    fold.hear({"do": "sketch", "name": "plan"})
    room = fold.page.drawn
    assert "6a" in seen(fold) and "68a" not in seen(fold)
    fold.hear({"do": "at", "station": HIDDEN})  # the same sketch with the arrows of another station
    assert room and fold.page.drawn != room and "68a" in seen(fold)
    fold.hear({"do": "sketch", "name": "elsewhere"})
    assert fold.page.drawn == {}


def test_the_measured_fireplace_is_laid_on_the_table_and_undone():
    made, fold = opened()
    made.session.measure(filled(BRICK), "Measured")
    fold.hear({"do": "take"})
    assert made.design.opening.width == pytest.approx(40 * INCH)
    assert made.design.name == "The brick house" and "Undo" in fold.page.shown["said"]
    made.undo()
    assert made.design == Design()


@pytest.mark.parametrize(("what", "name"), [("sheets", "survey-sheets"), ("found", "as-measured")])
def test_papers_are_handed_over(what, name, tmp_path):
    made, fold = opened(keep=tmp_path)
    made.session.measure(filled(BRICK), "Measured")
    fold.hear({"do": "print", "what": what})
    link = fold.link.value
    assert f'download="{name}.pdf"' in link
    assert base64.b64decode(re.search('base64,([^"]+)', link)[1]).startswith(b"%PDF")
    assert (tmp_path / f"{name}.pdf").exists()


def test_it_is_kept_with_the_job(tmp_path):
    _, fold = opened(keep=tmp_path)
    put(fold, "opening width, top", "44")
    fold.hear({"do": "name", "text": "The  brick house"})
    again = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    assert again.survey == Survey("The brick house", "", {"opening width, top": "44 in"})


NOISE = [
    {},
    {"do": None},
    {"do": "put"},
    {"do": "put", "box": "x", "text": "1"},
    {"do": "put", "box": ["jamb"], "text": 4},
    {"do": "at", "station": "elsewhere"},
    {"do": "out", "key": "nothing"},
    {"do": "name", "text": "a\u0000b" * 400},
    {"do": "print", "what": 3},
]


@pytest.mark.parametrize("told", NOISE, ids=range(len(NOISE)))
def test_noise_changes_nothing(told):
    made, fold = opened()
    fold.hear(told)
    assert made.session.survey == Survey() and fold.station in (ROOM, ROOF, HIDDEN, UP)
