"""Lessons as data files: what is read, what is found missing, what the pictures show."""

import os
import re
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from fireplace_calc.base.resources import lesson_keys, lesson_text
from fireplace_calc.base.units import FEET_INCHES, FOOT, MILLIMETRES
from fireplace_calc.drawing.lessons.board import BIG, MID, SHARE
from fireplace_calc.drawing.lessons.free_places import Wanted, put_labels
from fireplace_calc.drawing.lessons.lesson_pictures import DRAWINGS, lesson_board, lesson_picture
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.jupyter.command import main
from fireplace_calc.lessons.course import checker, lesson_file
from fireplace_calc.lessons.course.checker import ALWAYS, MARKS, missing
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.in_motion import moved_wrongly, tried_wrongly
from fireplace_calc.lessons.course.lesson_file import (
    LessonError,
    Slip,
    course,
    course_lesson,
    read_lesson,
)
from fireplace_calc.lessons.course.moments import moment, worked_moments
from fireplace_calc.lessons.course.place_values import input_of, places_of
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.lessons.course.sums import SumError, work_out
from fireplace_calc.lessons.course.told_lines import lines_of
from fireplace_calc.lessons.course.wording import texts
from fireplace_calc.lessons.exercise_kinds import known_kinds

UNITS = dict(zip(BOOKS, (FEET_INCHES, MILLIMETRES, MILLIMETRES), strict=True))
WIDE, HIGH = 219.0, 171.0
"""Of a picture on 60 % of a screen of 1280 by 800. [mm]"""
NARROW = 154.0, 164.0
"""Of one beside wider words, on a screen of 1024 by 768. [mm]"""
TOLD = [
    (key, book)
    for at, key in enumerate(lesson_keys())
    for book in (BOOKS if os.environ.get("BOOKS") == "all" else [BOOKS[at % len(BOOKS)]])
]
"""Each lesson in one book, all three going round; in every book by hand, with ``BOOKS=all``."""
each_lesson = pytest.mark.parametrize("key", lesson_keys())
each_book = pytest.mark.parametrize(("key", "book"), TOLD)


@pytest.mark.parametrize(
    ("text", "value", "kind"),
    [  # by hand: an inch is 25.4 mm, a pound 0.45359237 kg, exactly
        ("3 ft", 0.9144, "length"),
        ("2 ft 6 in", 0.762, "length"),
        ("10-1/2 in", 0.2667, "length"),
        ("7/8 in", 0.022225, "length"),
        ("max(3 ft, 6 / 12 * 8 ft + 2 ft)", 1.8288, "length"),
        ("ceil((7 ft - 5 ft 6 in) / 1 ft)", 2.0, "number"),
        ("sqrt(3 ft * 3 ft)", 0.9144, "length"),
        ("36 in * 24 in / 1 ft", 1.8288, "length"),
        ("36 in * 24 in * 1 ft / 1 ft", 0.55741824, "area"),
        ("36 in * 24 in * 1 ft / (1 ft * 1 ft)", 1.8288, "length"),
        ("sqrt(0)", 0.0, "number"),
        ("-10 degC", 263.15, "temperature"),
        ("60 lb", 27.2155422, "mass"),
        ("120 L/s", 0.12, "flow"),
        (18, 18.0, "number"),
    ],
)
def test_a_sum_is_worked_out(text, value, kind):
    found = work_out(text)
    assert found.value == pytest.approx(value, rel=1e-12)
    assert found.kind == kind


@pytest.mark.parametrize(
    "text",
    [
        "3 ft + 2 lb",
        "1 / 0",
        "climb",
        "__import__('os')",
        "(1).real",
        "3 ft 2",
        "2 ** 9",
        "sqrt(-1)",
    ],
)
def test_what_is_no_sum_is_refused(text):
    with pytest.raises(SumError):
        work_out(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2 lb * 3 lb", "There is no mass times mass."),
        ("2 lb * 3 ft", "There is no mass times length."),
        ("2 lb / 3 ft", "There is no mass divided by length."),
        ("3 ft / (2 ft * 2 ft)", "There is no length divided by area."),
        ("sqrt(2 lb)", "'sqrt' cannot be worked out here; known are min, max, ceil, floor, sqrt."),
        (
            "round(2.5)",
            "'round' cannot be worked out here; known are min, max, ceil, floor, sqrt.",
        ),
        ("ceil(1, 2)", "'ceil' cannot be worked out here; known are min, max, ceil, floor, sqrt."),
        ("3 ft + 2 lb", "These do not go together: length and mass."),
        ("1 / 0", "'1 / 0' divides by nothing."),
        ("sqrt(-1)", "There is no square root of less than nothing."),
        ("2 ** 9", "A sum knows + - * / only."),
        ("climb", "'climb' stands for nothing; the names of this lesson are none."),
        ("3 ft 2", "'3 ft 2' is no sum."),
    ],
)
def test_a_sum_that_is_refused_says_why(text, said):
    with pytest.raises(SumError) as wrong:
        work_out(text)
    assert str(wrong.value) == said


@each_lesson
def test_nothing_is_missing(key):
    assert [str(slip) for slip in missing(lesson_text(key))] == []


def test_lessons_stand_in_order():
    numbers = [course_lesson(key).number for key in course()]
    assert numbers == sorted(set(numbers))
    for key in course():
        lesson = course_lesson(key)
        assert lesson.key == key
        assert {course_lesson(need).number < lesson.number for need in lesson.needs} <= {True}


def test_the_way_through_the_course_leads_to_every_lesson():
    """From the first, by what each names as next, none twice; every exercise stands on one of them."""
    way = [course()[0]]
    while following := course_lesson(way[-1]).next:
        assert following not in way
        way.append(following)
    assert way == list(course())
    listed = [kind for key in course() for kind in course_lesson(key).exercises]
    assert sorted(listed) == sorted(known_kinds())


def slips_of(text):
    return [str(slip) for slip in missing(text)]


def test_a_lesson_that_no_other_names_as_next_is_found_out():
    """One more at the end; one that takes the place of another; the first is named by none."""
    whole = lesson_text("hearths")
    more = whole.replace('key = "hearths"', 'key = "ash-pits"').replace("number = 4", "number = 11")
    last = "lifting-dust-heights"
    assert slips_of(more) == [f"line 3: No lesson leads here: write next = 'ash-pits' in {last}."]
    between = more.replace("number = 11", "number = 5")
    assert slips_of(between)[0].endswith("write next = 'ash-pits' in hearths.")
    assert slips_of(lesson_text(course()[0])) == [] and course_lesson(course()[0]).number == 1


def test_an_exercise_that_no_lesson_lists_is_found_out(monkeypatch):
    whole, listed = lesson_text("firebox-lintel-throat"), 'exercises = ["throat", "lintel"]'
    line = whole[: whole.index(listed)].count("\n") + 1
    said = "No lesson lists exercise 'lintel', made for 'firebox-lintel-throat'."
    assert slips_of(whole.replace(listed, 'exercises = ["throat"]')) == [f"line {line}: {said}"]
    lost = replace(known_kinds()["lintel"], key="ash pit", lesson="ash-pits")
    monkeypatch.setattr(checker, "known_kinds", lambda: {**known_kinds(), "ash pit": lost})
    assert slips_of(whole) == [
        f"line {line}: No lesson lists exercise 'ash pit', made for 'ash-pits'."
    ]


def test_a_lesson_or_an_exercise_that_is_not_there_is_found_out():
    whole = lesson_text("hearths")
    for was, now, said in (
        ('next = "firebox-lintel-throat"', 'next = "firebox"', "There is no lesson 'firebox'"),
        ('needs = ["clearances-and-mantel"]', 'needs = ["wood"]', "There is no lesson 'wood'"),
        ('exercises = ["hearth"]', 'exercises = ["hearth", "hob"]', "There is no exercise 'hob'"),
    ):
        (slip,) = slips_of(whole.replace(was, now))
        assert said in slip


SLIPS = {
    'title = "How far must the hearth reach?"': ("", "title is missing"),
    "number = 4": ('number = "four"', "a whole number is wanted"),
    'letter = "B"': ('letter = "A"', "two rules 'A'"),
    'question = "Hearth beside"': ('question = "Hearth bside"', "no row of questions.csv"),
    'draw = "hearths"': ('draw = "hearth"', "no drawing 'hearth'"),
    'start = "18 in"': ('start = "18-1/2 in"', "starts between its steps"),
    'label = "Width of the opening"': ('lable = "Width of the opening"', "did you mean label?"),
    '"hearth.front" = "front"': ('"hearth.front" = "side"', "moves nothing of the rules"),
    'moves = "need"': ('moves = "have"', "but moves need"),
    'changes = "need"': ('changes = "have"', "but changes"),
    'set = { width = "28 in" }': ('set = { wide = "28 in" }', "'wide' is no control"),
    'sum = "beside {need_B}, left and right"': ('sum = "beside {ned_B}"', "stands for nothing"),
    'told = "Yes. A larger fire throws its sparks farther."': ('told = ""', "has no feedback"),
    'say = "The size of the room.", told': (
        'say = "The size of the room.", right = true, told',
        "One right answer is wanted, and there are 2",
    ),
    'draw = "first drawing"': ('draw = "second drawing"', "no mark 'second drawing'"),
    'do = "Cut the side to {8 inches}"': ('do = "A side of {8 inches}"', "asks or tells nothing"),
    'why = "A log rolls and a knot bursts.': ('why = "It rolls. It has burst.', None),
    'cure = "Work out the clear': (
        'cure = "Work out, whenever anybody changes anything at all about the opening of a'
        " fireplace that you build for a client, the clear",
        "A sentence of",
    ),
    'see = "Rule B falls short at both ends': (
        'see = "They are short. Rule B falls short at both ends',
        "begins with a pronoun",
    ),
    'why = "Sparks fly sideways too': ('why = "In the draught sparks fly', "not american spelling"),
    'cautions = ["fire"]': ('cautions = ["fires"]', "no caution 'fires'"),
    'short = "the hearth reaches': ('shrt = "the hearth reaches', "no text for 'short'"),
    'step = "1 in"': ("step = 1 in", "at line"),
    "[english]\n": ("[english.try.9]\n", "is not there to be replaced"),
    'aim = "You can size': ('aim = "{w:draft} You can size', "'w:draft' is no sum"),
}
"""Text of the lesson on hearths, what a hurried hand makes of it, and what is said then."""


@pytest.mark.parametrize("was", SLIPS)
def test_a_planted_slip_is_found_on_its_line(was):
    now, said = SLIPS[was]
    whole = lesson_text("hearths")
    assert was in whole, "the lesson has changed: plant the slip anew"
    at = whole[: whole.index(was)].count("\n") + 1
    found = missing(whole.replace(was, now, 1))
    if said is None:
        assert found == [], "short sentences and a verb of its own: nothing is wrong"
        return
    near = [slip for slip in found if said in slip.said]
    assert near, [str(slip) for slip in found]
    assert min(abs(slip.line - at) for slip in near) <= 25


@each_book
def test_controls_and_tries_do_what_the_file_says(key, book):
    lesson = course_lesson(key, country_of(book))
    assert list(moved_wrongly(lesson, book, every=True)) == []
    assert list(tried_wrongly(lesson, book)) == []


def drawn_with(board, pen):
    return [
        line for (weight, _), lines in board.sheet.lines.items() if weight == pen for line in lines
    ]


def as_drawn(at, board, line):
    """What a bar, an outline or a leaning line amounts to, each kind of quantity it may stand for:
    the figure in SI, and how much of it 0.1 mm of paper are.
    """
    scale, run = board.view.scale, line[-1] - line[0]
    found = {}
    if np.hypot(*run) < 1e-9:
        x, y = (line[:-1] / scale).T
        area = abs(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
        loose = 0.1 / scale * np.hypot(*np.diff(line, axis=0).T).sum() / scale
        opening = at.design.opening.width * at.design.opening.height
        round_flue = at.assessment.geometry.frame.bore.round
        found["area"] = area, loose
        found["number"] = area / opening, loose / opening
        if round_flue:
            across = 2 * np.sqrt(area / np.pi)
            found["length"] = across, 0.1 / scale
        return found
    long = float(np.hypot(*run))
    found["angle"] = float(np.arctan2(run[0], run[1])), 0.1 / long
    for kind in {mark.kind for mark in at.marks} - {"angle"}:
        per = board.per.get(kind, scale)
        found[kind] = long / per, 0.1 / per
    return found


PLACES = int(os.environ.get("PLACES", "0"))
"""Random places of all controls, and each control's every place, by hand: 200 once."""


def all_places(key, book):
    """Each control alone, at its ends or at every place, and all of them together at random."""
    lesson = course_lesson(key, country_of(book))
    found = [{}]
    for control in lesson.control:
        places = places_of(control)
        found += [{control.name: place} for place in places[:: 1 if PLACES else len(places) - 1]]
    rng = np.random.default_rng(7)
    for _ in range(PLACES or 1):
        found.append(
            {c.name: places_of(c)[rng.integers(len(places_of(c)))] for c in lesson.control}
        )
    return found


def looked_at(key, book):
    lesson = course_lesson(key, country_of(book))
    for values in all_places(key, book):
        yield values, lesson.shows
    yield lesson.fault.values, (lesson.fault.draw, *lesson.fault.shows)
    yield lesson.fault.values, (lesson.fault.draw, *lesson.fault.solved)
    for step in lesson.worked.step:
        yield lesson.worked.values, step.shows


@each_book
def test_pictures_are_clean_and_bars_are_as_long_as_checked(key, book):
    screen = HIGH / SHARE
    for values, shows in looked_at(key, book):
        at = moment(key, {k: v for k, v in values.items()}, book, UNITS[book])
        board = lesson_board(at, shows, WIDE, HIGH)
        for pen in ("have", "need"):
            for line in drawn_with(board, pen):
                found = as_drawn(at, board, line)
                off = [
                    abs(found[mark.kind][0] - getattr(mark, pen)) / found[mark.kind][1]
                    for mark in at.marks
                    if mark.kind in found and getattr(mark, pen) is not None
                ]
                assert min(off) < 1, (values, pen)
        placed = board.finish()
        page_message(board.sheet, "light", Cell(0.0, 0.0, WIDE, HIGH))
        assert collisions(board.sheet, 0.8) == [], (values, shows)
        for wanted, off in placed:
            assert off < 0.3 * HIGH, (values, wanted.text)
        for label in board.sheet.labels:
            told = re.search(r"\b(have|need|short)\b", label.text)
            assert label.size >= (0.025 if told else 0.02) * screen
        written = " ".join(label.text for label in board.sheet.labels)
        for pen in ("have", "need"):
            assert not drawn_with(board, pen) or pen in written, (values, pen)


@each_book
def test_pictures_are_clean_on_a_tablet(key, book):
    """No label on a line or on another."""
    for values, shows in looked_at(key, book):
        board = lesson_board(moment(key, dict(values), book, UNITS[book]), shows, *NARROW)
        board.finish()
        page_message(board.sheet, "light", Cell(0.0, 0.0, *NARROW))
        assert collisions(board.sheet, 0.8) == [], (values, shows)


@each_book
def test_each_control_moves_the_picture(key, book):
    start = drawn(key, book, ())
    for control in course_lesson(key, country_of(book)).control:
        ends = places_of(control)[0], places_of(control)[-1]
        assert {drawn(key, book, ((control.name, end),)) for end in ends} - {start}, control.name


@cache
def drawn(key, book, values):
    at = moment(key, dict(values), book, UNITS[book])
    ((_, sheet),) = lesson_picture(at, at.lesson.shows, WIDE, HIGH)
    lines = tuple((pen, tuple(map(np.ndarray.tobytes, each))) for pen, each in sheet.lines.items())
    return hash((lines, tuple(sheet.labels)))


def test_letters_are_large_enough_for_the_wall():
    assert BIG >= 0.025
    assert MID >= 0.02


def test_the_checker_knows_every_drawing():
    assert set(MARKS) == set(DRAWINGS)
    assert not any(ALWAYS & marks for marks in MARKS.values())


@each_book
def test_every_mark_changes_the_picture(key, book):
    """A mark that the checker lets a lesson name is drawn."""
    lesson = course_lesson(key, country_of(book))
    at = moment(key, lesson.fault.values, book, UNITS[book])
    bare = lesson_board(at, (), WIDE, HIGH)
    for mark in {lesson.fault.draw, *(one for step in lesson.worked.step for one in step.shows)}:
        board = lesson_board(at, (mark,), WIDE, HIGH)
        assert len(board.wanted) > len(bare.wanted) or lines(board) > lines(bare), mark


def lines(board):
    return sum(map(len, board.sheet.lines.values()))


def worked_need(pitch, ridge, book):
    """Height over the roof by hand, from the clauses as their books print them: R1003.9 of the
    American code; 9.21.4.4.(1) of the Canadian.
    """
    a, b, reach = (3 * FOOT, 2 * FOOT, 10 * FOOT) if book == BOOKS[0] else (0.9, 0.6, 3.0)
    return max(a, pitch * min(reach, ridge) + b)


@pytest.mark.parametrize("book", BOOKS[:2])
def test_need_over_the_roof_by_hand(book):
    for ridge in (0.0, 0.3, 1.5, 2.4, 3.0, 3.1, 4.2):
        for pitch in (0.25, 0.5, 1.0):
            found = moment("height-over-the-roof", {"ridge": ridge, "pitch": pitch}, book)
            assert found.need == pytest.approx(worked_need(pitch, ridge, book), abs=1e-9)


def test_hearth_by_hand():
    """R1001.10: 16 and 8 in, from 6 square feet of opening on 20 and 12 in."""
    for width in range(24, 41):
        found = moment("hearths", {"width": width * 0.0254})
        large = width * 30 >= 6 * 144
        assert found.of("A").need == pytest.approx((20 if large else 16) * 0.0254)
        assert found.of("B").need == pytest.approx((12 if large else 8) * 0.0254)


def test_flue_by_hand():
    """R1003.15.1: 1/12 of the opening for a round flue, 1/10 for a square one and one under 2:1;
    net areas of Tables R1003.14(1) and (2).
    """
    for liner, net, share in (
        ("round 12", 113, 12),
        ("round 15", 176, 12),
        ("rectangular 12x12", 102, 10),
        ("rectangular 8x12", 67, 10),
        ("rectangular 13x18", 173, 10),
    ):
        for width, raised in ((30, 0), (40, 6), (48, 12)):
            values = {"liner": liner, "width": width * 0.0254, "raised": raised * 0.0254}
            mark = moment("opening-and-flue", values).of("A")
            need = width * (30 + raised) / share
            assert mark.have / 0.0254**2 == pytest.approx(net)
            assert mark.need / 0.0254**2 == pytest.approx(need)
            assert mark.short == (net < need - 1e-6)


def test_clearances_by_hand():
    """R1001.11: 4 in behind; nothing that burns within 6 in of the opening; from there on 1/8 in
    of projection for each inch of distance, up to 12 in.
    """
    for distance in (3, 6, 9, 11):
        for out in (0.5, 1.0, 2.0):
            values = {"distance": distance * 0.0254, "projection": out * 0.0254}
            found = moment("clearances-and-mantel", values)
            assert found.of("A").need == pytest.approx(4 * 0.0254)
            assert found.of("B").need == pytest.approx(6 * 0.0254)
            assert found.of("B").short == (distance < 6)
            if distance >= 6:
                assert found.of("C").need == pytest.approx(distance / 8 * 0.0254)
                assert found.of("C").short == (out > distance / 8)


def test_lean_of_the_smoke_chamber_by_hand():
    """Half of what the chamber narrows, over the height of its leaning walls; 45 degrees at most
    where it is smooth (R1001.8.1).
    """
    for height in (14, 20, 36):
        for width in (30, 42, 48):
            values = {"height": height * 0.0254, "width": width * 0.0254}
            found = moment("smoke-chamber", values)
            f = found.assessment.geometry.frame
            run, rise = (f.throat_width - f.bore.width) / 2, f.taper_top - f.throat
            sides = np.degrees(np.arctan2(run, rise))
            lean = np.degrees(found.of("A").have)
            assert lean >= sides - 1e-6, "the flattest wall decides"
            over = np.degrees(np.arctan2(found.names["chamber_run"].value, rise))
            assert over == pytest.approx(lean, abs=1e-6)
            assert np.degrees(found.of("A").need) == pytest.approx(45)
            assert found.of("A").short == (lean > 45 + 1e-6)


def test_firebox_by_hand():
    """R1001.6 and R1001.7: 20 in deep, 4 in of bearing, 8 in from the opening to the throat."""
    found = moment("firebox-lintel-throat")
    assert [mark.need / 0.0254 for mark in found.marks] == pytest.approx([20, 4, 8])
    assert [mark.have / 0.0254 for mark in found.marks] == pytest.approx([18, 6, 8])
    assert [mark.short for mark in found.marks] == [True, False, False]


def test_worked_example_of_the_roof():
    """By hand: 6 in a foot for 8 feet is 4 feet; 2 feet on top make 6."""
    steps = worked_moments("height-over-the-roof")
    assert [step.sum for step in steps][-1] == "the larger of 3'-0\" and 6'-0\" = 6'-0\""


def test_the_command_names_file_and_line(tmp_path, capsys):
    good, bad = tmp_path / "good.toml", tmp_path / "bad.toml"
    good.write_text(lesson_text("hearths"))
    bad.write_text(lesson_text("hearths").replace('letter = "B"', "letter = 2"))
    assert main(["lesson", str(good)]) == 0
    assert main(["lesson", str(good), str(bad)]) == 1
    line = lesson_text("hearths")[: lesson_text("hearths").index('letter = "B"')].count("\n") + 1
    assert f"bad.toml, line {line}: rule 2 letter is 2, but a text in quotes is wanted." in (
        capsys.readouterr().out
    )


@pytest.mark.parametrize(
    ("reach", "height"), [(0.254, 0.762), (0.41, 0.75), (0.6, 0.1), (0.5, 1.6)]
)
def test_what_one_person_may_lift_is_the_equations(reach, height):
    """NIOSH 94-110 with load constant, reach and height of the hands alone: each of the other
    multipliers is one. Its US and its metric constants differ by less than 0.6 kg."""
    at = moment("lifting-dust-heights", {"weight": 20.0, "reach": reach, "height": height})
    inches, high = reach / 0.0254, height / 0.0254
    by_hand = 51 * 0.45359237 * min(1, 10 / inches) * (1 - 0.0075 * abs(high - 30))
    assert at.need == pytest.approx(by_hand, rel=1e-9)
    metric = 23 * min(1, 0.25 / reach) * (1 - 0.003 * abs(100 * height - 75))
    assert at.need == pytest.approx(metric, abs=0.6)


@pytest.mark.parametrize("key", ["draft-house-weather", "heat-and-wood"])
def test_what_a_lesson_measures_is_the_engines(key):
    at = moment(key)
    frame, design = at.assessment.geometry.frame, at.design
    names = at.names
    top = frame.hearth + design.opening.height
    assert names["column"].value == pytest.approx(frame.liner_top - top, abs=1e-9)
    way = sum(names[one].value for one in ("lost", "house"))
    assert names["pull"].value == pytest.approx(way, abs=1e-9)
    assert 0 < names["lost"].value < names["pull"].value < 25
    hot = [names[one].value for one in ("kind", "middle", "hard")]
    assert hot == sorted(hot)
    assert hot[0] > design.house.indoor


# -- words in the reader's units --------------------------------------------------------------------
IMPERIAL = r"\b(inch(es)?|feet|ft|pounds?|lb|\d foot)\b|\d ?[\"']|\d in\b(?! 12)|in²|sq ft|°F"
METRIC = r"\b(mm|cm|m|kg|kilo\w+|(milli)?met(er|re)s?)\b(?! of water)|cm²|m²|°C"


@each_lesson
def test_every_figure_in_words_is_in_the_readers_units(key):
    """Texts, cards, verdicts, worked example and the picture's own words, in each book."""
    for book in BOOKS:
        lesson = course_lesson(key, country_of(book))
        for units, foreign in (("feet-inches", METRIC), ("millimetres", IMPERIAL)):
            at = moment(key, None, book, units)
            own = ("control", "worked", "verdict", "words")
            said = [at.said(t) for path, _, t in texts(lesson) if path[0] not in own]
            said += [at.verdict, at.said(lesson.worked.title)]
            said += [f"{mark.figure} {mark.note}" for mark in at.marks]
            said += [f"{one.say} {one.sum}" for one in worked_moments(key, book, units)]
            for _, sheet in lesson_picture(at, ("have", "need"), 230.0, 190.0, 210.0):
                said += [label.text for label in sheet.labels]
            assert [text for text in said if re.search(foreign, text)] == [], (book, units)


def test_a_figure_that_is_typed_as_it_is_is_a_slip():
    text = lesson_text("hearths").replace("{28 inches}", "28 inches")
    assert any("'28 inches' stands so for every reader" in str(slip) for slip in missing(text))


@pytest.mark.parametrize(("count", "more"), [(1, ""), (2, " (and 1 more)"), (3, " (and 2 more)")])
def test_a_lesson_that_cannot_be_used_names_the_first_slip_and_counts_the_rest(count, more):
    slips = [Slip(line, f"slip {line}") for line in range(4, 4 + count)]
    wrong = LessonError("throat.toml", slips)
    assert str(wrong) == f"throat.toml, line 4: slip 4{more}" and wrong.slips == slips


@pytest.mark.parametrize(("count", "said"), [(1, 1), (2, 0), (4, 0), (5, 1)])
def test_a_lesson_has_two_to_four_controls(count, said):
    lesson = course_lesson("height-over-the-roof", country_of(BOOKS[0]))
    many = replace(lesson, control=(lesson.control * 5)[:count])
    told = [words for at, words in checker._controls(many) if at == ("control",)]
    assert told == ["Two to four controls are wanted: more hide the rule."] * said


ROOF = course_lesson("height-over-the-roof")


@pytest.mark.parametrize(
    ("control", "at", "said"),
    [
        (
            {"moves": "it"},
            ("control", 0, "moves"),
            "A control moves have, need, both or shown, not 'it'.",
        ),
        (
            {"choices": ("low", "high"), "start": "high up"},
            ("control", 0, "start"),
            "'high up' is none of the choices.",
        ),
        (
            {"label": "Roof", "step": ""},
            ("control", 0),
            "Roof needs from, to and step, or choices.",
        ),
        (
            {"label": "Roof", "start_at": "", "step": "1 in"},
            ("control", 0),
            "Roof needs from, to and step, or choices.",
        ),
        (
            {"start_at": "low"},
            ("control", 0),
            "'low' stands for nothing; the names of this lesson are none.",
        ),
        (
            {
                "label": "Roof",
                "start_at": "3 ft",
                "end_at": "3 ft",
                "start": "3 ft",
                "step": "1 in",
            },
            ("control", 0),
            "Roof runs from low to high by a step over nothing.",
        ),
        (
            {
                "label": "Roof",
                "start_at": "1 ft",
                "end_at": "3 ft",
                "start": "2 ft",
                "step": "0 in",
            },
            ("control", 0),
            "Roof runs from low to high by a step over nothing.",
        ),
        (
            {
                "label": "Roof",
                "start_at": "1 ft",
                "end_at": "3 ft",
                "start": "4 ft",
                "step": "1 ft",
            },
            ("control", 0, "start"),
            "Roof starts between its steps, or out of its range.",
        ),
    ],
)
def test_what_is_wrong_with_a_control_is_said_at_its_place(control, at, said):
    """And of the next control it is still said."""
    wrong = replace(ROOF.control[0], **control), replace(ROOF.control[1], moves="that")
    assert list(checker._controls(replace(ROOF, control=wrong))) == [
        (at, said),
        (("control", 1, "moves"), "A control moves have, need, both or shown, not 'that'."),
    ]


@pytest.mark.parametrize("start", ["1 ft", "2 ft", "3 ft"])
def test_a_control_may_start_at_either_end(start):
    ends = {"start_at": "1 ft", "end_at": "3 ft", "step": "6 in", "start": start}
    control = replace(ROOF.control[0], **ends)
    assert list(checker._controls(replace(ROOF, control=(control, ROOF.control[1])))) == []


def test_a_control_may_be_a_choice():
    chosen = replace(ROOF.control[0], choices=("low", "high"), start="high")
    assert list(checker._controls(replace(ROOF, control=(chosen, ROOF.control[1])))) == []


def test_two_things_to_try_are_wanted_and_each_changes_what_is_known():
    first, second = ROOF.tries[:2]
    odd = replace(ROOF, tries=(first, replace(second, changes="all")))
    said = "A try changes have, need or verdict, not 'all'."
    assert list(checker._controls(odd)) == [(("try", 1, "changes"), said)]
    one = (("try",), "Two or three things to try are wanted.")
    assert list(checker._controls(replace(ROOF, tries=(first,)))) == [one]


@pytest.mark.parametrize(
    ("rule", "said"),
    [
        ({}, "Rule B names no question, no key and no need."),
        ({"need": "3 ft", "have": "2 ft"}, "Rule B has a need, but no have or no source."),
        ({"need": "3 ft", "source": "Trade."}, "Rule B has a need, but no have or no source."),
        ({"need": "3 ft", "have": "2 ft", "source": "Trade."}, None),
        ({"keys": ("ROF-02",)}, None),
        (
            {"question": "Height over the roof"},
            "'Height over the roof' is no row of questions.csv.",
        ),
        ({"letter": "A", "keys": ("ROF-02",)}, "There are two rules 'A'."),
    ],
)
def test_a_rule_names_what_it_asks_and_where_from(rule, said):
    bare = replace(ROOF.rule[1], question="", keys=(), source="", have="", need="")
    found = list(checker._rules(replace(ROOF, rule=(ROOF.rule[0], replace(bare, **rule)))))
    place = ("rule", 1, "letter" if "two" in (said or "") else "question")
    at = place if said and ("two" in said or "row" in said) else place[:2]
    assert found == ([(at, said)] if said else [])


def test_three_questions_are_wanted():
    two = replace(ROOF, question=ROOF.question[:2])
    assert list(checker._form(ROOF)) == []
    assert list(checker._form(two)) == [
        (("question",), "Three questions are wanted, and there are 2.")
    ]


def test_another_lesson_that_cannot_be_read_is_left_to_its_own_check(monkeypatch):
    """That nothing leads to a lesson cannot be said while another is not read."""
    alone = replace(ROOF, key="ash-pits", number=11)
    assert list(checker._in_course(alone)) == [
        (("number",), "No lesson leads here: write next = 'ash-pits' in lifting-dust-heights.")
    ]

    def unread(key, country="american"):
        raise LessonError(f"{key}.toml", [Slip(1, "title is missing.")])

    monkeypatch.setattr(checker, "course_lesson", unread)
    assert list(checker._in_course(alone)) == []


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        ("format = 1", "format = 2", "line 1: format is 2, but 1 is read here."),
        (
            'exercises = ["hearth"]',
            'exercises = "hearth"',
            "line 10: exercises is 'hearth', but a list is wanted.",
        ),
        (
            'values = { width = "32 in", front = "20 in", side = "12 in" }',
            "values = 3",
            "line 98: worked values is 3, but a table is wanted.",
        ),
        ('step = "1 in"', "step = [1]", "line 53: control 1 step is [1], but a figure is wanted."),
        (
            'step = "1 in"',
            "step = true",
            "line 53: control 1 step is True, but a figure is wanted.",
        ),
    ],
)
def test_what_stands_in_a_lesson_is_of_its_kind(was, now, said):
    read = read_lesson(lesson_text("hearths").replace(was, now, 1))
    assert [str(slip) for slip in read.slips] == [said] and read.told == {}


def test_a_list_of_tables_where_one_is_wanted_is_a_slip():
    whole = lesson_text("hearths").replace("[worked]", "[[worked]]")
    first = str(read_lesson(whole[: whole.index("[english")]).slips[0])
    assert first.startswith("line 1: worked is [{'title': 'A hearth for an opening")
    assert first.endswith("but a table is wanted.")


def test_a_lesson_with_a_slip_cannot_be_taken(monkeypatch):
    whole = lesson_text("hearths").replace("format = 1", "format = 2")
    monkeypatch.setattr(lesson_file, "lesson_text", lambda key: whole)
    with pytest.raises(LessonError) as wrong:
        course_lesson.__wrapped__("hearths", "canadian")
    assert str(wrong.value) == "hearths.toml, line 1: format is 2, but 1 is read here."
    assert wrong.value.slips == [Slip(1, "format is 2, but 1 is read here.")]


def test_each_table_of_a_list_keeps_its_own_lines():
    text = "[[q]]\na = 1\n[[q]]\n[q.more]\nb = 2\n[[q.part]]\nc = 3\n[[q.part]]\n"
    assert lines_of(text) == {
        ("q", 0): 1,
        ("q", 0, "a"): 2,
        ("q", 1): 3,
        ("q", 1, "more"): 4,
        ("q", 1, "more", "b"): 5,
        ("q", 1, "part", 0): 6,
        ("q", 1, "part", 0, "c"): 7,
        ("q", 1, "part", 1): 8,
    }


@pytest.mark.parametrize(
    ("given", "taken"),
    [
        (7, 7),
        (True, True),
        ("liner", "round 12"),
        ("liner.1", "round"),
        ("liner.2", "12"),
        ("6 / 2", 3),
        ("7 / 2", 3.5),
        ("10 in", "0.254 m"),
        ("oak", "oak"),
        (
            [{"wide": "10 in", "kind": "oak", "many": 2}],
            [{"wide": "0.254 m", "kind": "oak", "many": 2}],
        ),
    ],
)
def test_what_the_picture_puts_into_a_design(given, taken):
    found = input_of(given, {}, {"liner": "round 12"})
    assert found == taken and type(found) is type(taken)


def test_a_place_that_no_design_can_take_is_said_of_its_control():
    """Half a flue section is none, once between each two of 15 to 18."""
    half = replace(ROOF.control[0], label="Sections", step="1 / 2", end_at=18)
    lesson = replace(ROOF, control=(half, ROOF.control[1]))
    said = "Sections at one of its places: Flue sections is {}, but a whole number from 4 to 40 is wanted; parts cannot be set by halves."
    assert list(moved_wrongly(lesson, BOOKS[0], every=True)) == [
        (("control", 0), said.format(count)) for count in (15.5, 16.5, 17.5)
    ]


def test_a_share_of_a_figure_is_held_against_a_share_of_what_is_asked():
    """Both figures of the finding, times a sum, and then plus another."""
    plain = moment(ROOF).marks[0]
    share = replace(ROOF.rule[0], times="3 / 4")
    more = replace(share, plus="2 ft")
    for rule, plus in ((share, 0.0), (more, 2 * FOOT)):
        held = moment(replace(ROOF, rule=(rule, *ROOF.rule[1:]))).marks[0]
        assert held.have == pytest.approx(0.75 * plain.have + plus, abs=1e-12)
        assert held.need == pytest.approx(0.75 * plain.need + plus, abs=1e-12)
        assert held.kind == plain.kind == "length"
    area = moment(replace(ROOF, rule=(replace(share, times="2 ft"), *ROOF.rule[1:]))).marks[0]
    assert area.kind == "area" and area.have == pytest.approx(2 * FOOT * plain.have, abs=1e-12)


def test_a_name_without_room_is_left_out_but_for_one_that_must_be_there():
    """On paper too low for a row of letters: what must be said stands where it would stand first."""
    sheet, at = Sheet(60.0, 3.0), [(10.0, 1.5), (58.0, 1.5)]
    may = Wanted("may be left out", at, ("left", "right"), 4.0, must=False)
    must = Wanted("must be said", at, ("right", "left"), 4.0, must=True)
    placed = put_labels(sheet, [may, must])
    assert [one for one, _ in placed] == [must] and placed[0][1] == pytest.approx(0.6 * 4.0)
    (label,) = sheet.labels
    assert label.text == "must be said" and label.size == 4.0
    wide = 10.0 + 0.6 * 4.0  # its left edge, right of the first point
    assert label.x - lettering.width("must be said", 4.0, must.bold) / 2 == pytest.approx(wide)
