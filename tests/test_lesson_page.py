"""The kernel's side of the lesson page: what is asked is done, and what follows is told.

Limits are read from outside: IRC 2021 R1003.9 (3 ft and 2 ft, within 10 ft) and NBC 9.21.4.4
(900 and 600 mm), as in ``data/us_irc_sources.csv`` and ``data/canada_sources.csv``.
"""

import os
import re
from dataclasses import replace

import pytest
from sampled import sampled

from fireplace_calc.base.units import InputError
from fireplace_calc.build.notes import cautions
from fireplace_calc.lessons import exercise
from fireplace_calc.lessons.answers.given_figures import given_rows, given_table
from fireplace_calc.lessons.course.lesson_file import course, course_lesson
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.lessons.exercise_kinds import kinds_of
from fireplace_calc.panels.lesson.lesson_desk import SCREENS, LessonDesk
from fireplace_calc.panels.lesson.lesson_page import LessonPage
from fireplace_calc.panels.lesson.lesson_reader import aim_of
from fireplace_calc.panels.lesson.showing import show_lesson

ROOF = "height-over-the-roof"


class Heard(LessonDesk):
    """A desk whose answers are kept in place of being sent."""

    def ask(self, do, **more):
        self.page.send = lambda told, bodies: setattr(self, "answer", (told, bodies))
        self._heard({"do": do, **more})
        return self.answer[0]


@pytest.mark.parametrize(("at", "key"), list(enumerate(course())))
def test_every_screen_of_every_lesson_opens(at, key):
    """In one book each, all three going round; in every book by hand, with ``BOOKS=all``."""
    desk, books = Heard(key), course_lesson(key).books
    for book in books if os.environ.get("BOOKS") == "all" else [books[at % len(books)]]:
        desk.ask("book", name=book)
        for screen in SCREENS:
            told = desk.ask("screen", name=screen)
            assert told["screen"] == screen and told["book"]["value"] == book
            assert told["done"] and len(told["stage"]["names"]) >= 1


@pytest.mark.parametrize("key", sampled(course(), 3))
def test_what_there_is_to_try_changes_what_the_file_says(key):
    """Have, need or verdict of the picture that is sent, in the book the lesson opens with."""
    desk, lesson = Heard(key), course_lesson(key)
    rule = desk.screens["rule"]

    def figures():
        held = rule.moment
        return {"have": [m.have for m in held.marks], "need": [m.need for m in held.marks],
                "verdict": [m.short for m in held.marks]}  # fmt: skip

    for at, one in enumerate(lesson.tries):
        desk.ask("book", name=lesson.books[0])
        rule = desk.screens["rule"]
        before = figures()
        told = desk.ask("try", at=at)
        assert told["lead"][1] != lesson.aim and not told["shown"]["trouble"]
        named = {"both": ("have", "need"), "shown": ()}
        for name in named.get(one.changes, (one.changes,)):
            assert figures()[name] != before[name], one.do
        assert len(desk.answer[1]) == 1, "the picture goes over with it"


def test_a_control_is_moved_to_each_end_and_says_where_it_stands():
    desk = Heard(ROOF)
    told = desk.ask("slide", name="sections", at=0)["shown"]["controls"][0]
    assert (told["at"], told["said"]) == (0, "15")
    told = desk.ask("slide", name="ridge", at=32)["shown"]["controls"][1]
    assert told["said"] == "16'-0\""
    cards = desk.ask("units", name="millimetres")["shown"]["cards"]
    assert [card["figure"] for card in cards] == ["914 mm", "610 mm"]  # 3 ft and 2 ft


def test_the_books_stand_side_by_side_as_they_are_printed():
    desk = Heard(ROOF)
    desk.ask("screen", name="why")
    books = {name: marks for name, marks in desk.ask("part", at=1)["shown"]["books"]}
    assert [m[1] for m in books["US IRC 2021"]] == ["3 ft", "2 ft"]
    assert [m[1] for m in books["Canada NBC"]] == ["900 mm", "600 mm"]
    assert "R1003.9" in books["US IRC 2021"][0][2] and "9.21.4.4" in books["Canada NBC"][0][2]


def test_a_lesson_without_a_figure_in_a_book_says_so():
    desk = Heard(ROOF)
    for key in course():
        desk.ask("lesson", name=key)
        desk.ask("screen", name="why")
        for _, marks in desk.ask("part", at=1)["shown"]["books"]:
            assert all(figure for _, figure, _ in marks)


def test_each_step_of_a_worked_example_adds_a_mark():
    desk = Heard(ROOF)
    desk.ask("screen", name="worked")
    words, count = list[str](), len(course_lesson(ROOF).worked.step)
    for at in range(count):
        told = desk.ask("step", at=at)
        assert len(told["shown"]["steps"]) == at + 1
        words += [sent.told["words"] for sent in desk.stage.shown.values()]
    assert len(set(words)) >= count - 1
    assert "6'-0\"" in told["shown"]["steps"][-1]["say"]  # 6 in a foot over 8 ft, and 2 ft
    assert desk.ask("step", at=99)["shown"]["at"] == count - 1


def test_guesses_are_counted_and_each_wrong_one_is_answered():
    for key in course()[:3]:
        desk, options = Heard(key), course_lesson(key).fault.options
        first = desk.ask("screen", name="site")
        assert course_lesson(key).fault.title not in first["lead"], "the name gives it away"
        wrong = [at for at, one in enumerate(options) if not one.right]
        right = next(at for at, one in enumerate(options) if one.right)
        for count, at in enumerate(wrong, 1):
            told = desk.ask("guess", at=at)["shown"]
            assert (told["guesses"], told["solved"]) == (count, False)
            assert told["reply"]["right"] is False and told["reply"]["text"]
            assert "cure" not in told and desk.ask("guess", at=at)["shown"]["guesses"] == count
        told = desk.ask("guess", at=right)
        assert told["shown"]["solved"] and told["shown"]["cure"] and told["stage"]["sheets"]
        assert desk.ask("again")["shown"]["guesses"] == 0


def test_questions_answer_every_option():
    desk = Heard(ROOF)
    desk.ask("screen", name="check")
    for q, one in enumerate(course_lesson(ROOF).question):
        assert desk.ask("question", at=q)["shown"]["ask"]
        for at, option in enumerate(one.options):
            reply = desk.ask("answer", at=at)["shown"]["reply"]
            assert reply["right"] is option.right and reply["text"]


@pytest.mark.parametrize("book", BOOKS)
def test_an_exercise_that_the_book_has_no_figure_for_is_not_offered(book):
    """The Canadian book has none for the throat: its page opens with the lintel."""
    desk = Heard("firebox-lintel-throat", book)
    told = desk.ask("screen", name="exercises")["shown"]
    assert told["kinds"] == len(set(kinds_of(book)) & {"throat", "lintel"})
    assert not told["trouble"] and told["ask"]


def test_givens_that_differ_by_a_number_are_told_together():
    """A given never loses its figure or its unit; what differs by more stands alone."""
    given = [("Bed", "3/8 in"), ("Lift 1", "14 mm"), ("Lift 2", "19 mm"), ("Lift 9, top", "2 mm"),
             ("Table: 0 h out", "62 °C"), ("Table: 2 h out", "70 °C"), ("Pier 1", "1'-2\""),
             ("Pier 2", "1'-3 1/4\"")]  # fmt: skip
    assert given_table(given) is None
    assert given_rows(given) == [
        ("Bed", "3/8 in"), ("Lift 1, 2", "14, 19 mm"), ("Lift 9, top", "2 mm"),
        ("Table: 0, 2 h out", "62, 70 °C"), ("Pier 1, 2", "1'-2\", 1'-3 1/4\""),
    ]  # fmt: skip


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_canadas_flues_stand_in_a_table_that_loses_none(units):
    """Rows by the opening, columns by the chimney, both rising; every figure in its own cell."""
    for seed in range(12):
        task = exercise("flue", seed, "Canada Ontario", 3, units)
        given = [(one.name, one.shown(units)) for one in task.given]
        table = given_table(given)
        if table is None:
            assert not any(name.startswith("Table: ") for name, _ in given)
            continue
        down, across = table.corner.lower().split(", ")
        cells = {
            f"Table: {down} {row}, {across} {column}": text
            for row, texts in table.rows
            for column, text in zip(table.columns, texts, strict=True)
            if text
        }
        unit = f" {table.unit}" if table.unit else ""
        told = {
            name: text.replace(unit, "").replace(" to ", "–") if unit else text
            for name, text in given
            if name.startswith("Table: ")
        }
        assert (table.unit == "mm") == (units == "millimetres")
        assert cells == told and len(told) >= 3
        for names in ([row for row, _ in table.rows], table.columns):
            assert list(names) == sorted(names, key=lambda name: rising(name))
        plain = given_rows(given)
        assert len(plain) == len(given) - len(told)


def rising(name):
    return [float(number) for number in re.findall(r"[\d.]+", name)]


def test_an_exercise_is_answered_helped_and_followed_by_its_next_step():
    desk = Heard("hearths")
    told = desk.ask("screen", name="exercises")
    screen = desk.screens["exercises"]
    told = desk.ask("level", at=screen.level)["shown"]
    while True:
        asked = screen.asked
        assert told["ask"] == asked.ask and not told["done"]
        wrong = desk.ask("typed", text="9999 mm")["shown"]
        assert wrong["reply"]["right"] is False and not wrong["done"]
        assert desk.ask("help", name="hint")["shown"]["reply"]["text"] == asked.hint
        right = desk.ask("typed", text=asked.answer(desk.reader.units))["shown"]
        assert right["reply"]["right"] and right["done"]
        if told["step"] + 1 == told["steps"]:
            break
        told = desk.ask("onward", at=told["step"] + 1)["shown"]
    first = desk.screens["exercises"].task.given
    desk.ask("another")
    assert desk.screens["exercises"].task.given != first


def test_a_step_is_worked_out_in_full_and_one_goes_on_to_any_step():
    """660 sq in are 30 by 22."""
    desk = Heard("hearths")
    desk.ask("screen", name="exercises")
    told = desk.ask("level", at=3)["shown"]
    assert (told["step"], told["steps"], told["typed"], told["done"]) == (0, 4, "", False)
    assert told["ask"] == "What is the area of the opening?" and told["unit"] == "sq in"
    for name in ("hint", "more"):
        told = desk.ask("help", name=name)["shown"]
        assert told["reply"]["name"] == name and not told["done"]
    told = desk.ask("help", name="working")["shown"]
    assert told["done"] and told["reply"] == {
        "right": None,
        "text": '30" × 22" = 660.0 in².',
        "name": "working",
    }
    steps = [desk.ask("onward", at=at)["shown"]["step"] for at in (1, 3, 4, 99, -1, 0)]
    assert steps == [1, 3, 3, 3, 3, 0]
    assert desk.ask("onward", at=1)["shown"]["done"] is False
    assert desk.ask("onward", at=0)["shown"]["done"] is True
    assert desk.ask("typed", text="660 sq in")["shown"]["reply"]["name"] == "answer"


def test_a_lesson_without_an_exercise_says_so_and_takes_no_answer(monkeypatch):
    desk = Heard("hearths")
    bare = replace(desk.reader.lesson, exercises=())
    monkeypatch.setattr(type(desk.reader), "lesson", bare)
    told = desk.ask("screen", name="exercises")
    assert told["shown"] == {
        "kinds": 0, "kind": 0, "levels": [1, 2, 3], "level": 1, "seed": 1,
        "trouble": "This lesson has no exercise.",
    }  # fmt: skip
    assert told["lead"] == aim_of(bare)
    assert desk.ask("typed", text="20 in")["shown"] == told["shown"]
    assert desk.ask("onward", at=1)["shown"] == told["shown"]
    assert desk.screens["exercises"].replies == {} and desk.screens["exercises"].step == 0


def test_words_and_what_can_hurt_are_told_after_reasons_and_books():
    desk = Heard("hearths", BOOKS[1], "millimetres")
    desk.ask("screen", name="why")
    words = desk.ask("part", at=2)["shown"]
    assert words.pop("parts") == ["Reasons", "Books", "Words", "Take care"]
    assert words == {
        "part": 2,
        "list": [[name.replace("_", " "), said] for name, said in desk.reader.lesson.words.items()],
    }
    assert len(words["list"]) == 2
    care = desk.ask("part", at=3)["shown"]
    fire = [one for one in cautions(BOOKS[1]) if one.topic == "fire"]
    assert care["list"] == [["fire", one.figured("millimetres")] for one in fire] and fire
    assert care["last"] == "Local codes, their officials and licensed practice decide."
    assert care["part"] == 3 and "last" not in words


def test_the_page_tells_its_size_and_its_paper():
    desk = Heard("hearths")
    before = desk.ask("screen", name="rule")["stage"]
    desk.ask("size", wide=700, high=500, screen=800)
    reader = desk.reader
    assert (reader.wide, reader.high, reader.screen) == (700.0, 500.0, 800.0)
    told = desk.ask("paper", name="dark")
    assert told["theme"] == desk.theme == desk.stage.theme == "dark"
    assert told["stage"] != before
    assert repr(desk.page) == "The page of a lesson"


def test_a_lesson_that_has_not_the_readers_book_opens_with_its_first(monkeypatch):
    desk = Heard("hearths", BOOKS[2])
    desk.ask("lesson", name=ROOF)
    assert desk.reader.book == BOOKS[2] and desk.screen == "rule"
    two = replace(course_lesson(ROOF), books=BOOKS[1::-1])
    monkeypatch.setattr(type(desk.reader), "lesson", two)
    told = desk.ask("lesson", name=ROOF)
    assert told["book"] == {"options": [[one, one] for one in BOOKS[1::-1]], "value": BOOKS[1]}


def test_an_option_that_is_taken_again_is_answered_again():
    desk = Heard(ROOF)
    desk.ask("screen", name="check")
    options = course_lesson(ROOF).question[0].options
    for at in (0, 1, 0):
        told = desk.ask("answer", at=at)["shown"]
        right = options[at].right
        assert (told["reply"]["right"], told["answered"]) == (right, 1)
    assert desk.screens["check"].taken == {0: [1, 0]}


def test_a_place_that_no_design_can_take_moves_nothing_and_is_said(monkeypatch):
    desk = Heard(ROOF)
    first = desk.ask("screen", name="rule")["shown"]
    screen, kept = desk.screens["rule"], type(desk.screens["rule"]).moment
    (moved, *_), before = first["controls"], dict(desk.screens["rule"].places)

    class Refused:
        @property
        def assessment(self):
            raise InputError("Flue sections is 99.", "sections", "", 99)

    def moment(one):
        return Refused() if one.places != before else kept.__get__(one)

    monkeypatch.setattr(type(screen), "moment", property(moment))
    told = desk.ask("slide", name=moved["name"], at=moved["at"] + 1)["shown"]
    assert told.pop("trouble") == "Not changed. Flue sections is 99."
    assert first.pop("trouble") == "" and told == first
    assert screen.places == before and screen.see == ""
    monkeypatch.setattr(type(screen), "moment", kept)
    told = desk.ask("slide", name=moved["name"], at=moved["at"] + 1)["shown"]
    assert told["trouble"] == "" and told["controls"][0]["at"] == moved["at"] + 1


def test_a_lesson_is_shown_as_its_page():
    page = show_lesson(ROOF, BOOKS[1], "millimetres")
    assert isinstance(page, LessonPage) and page.first["key"] == ROOF
    assert page.first["book"]["value"] == BOOKS[1]
    assert page.first["units"]["value"] == "millimetres"
    assert show_lesson().first["screen"] == "contents"


def test_contents_tell_order_and_what_comes_before():
    told = Heard("").ask("hello")
    assert told["screen"] == "contents" and not told["stage"]["names"]
    numbers = [one["number"] for one in told["contents"]]
    assert numbers == sorted(numbers) and len(numbers) == len(course())
    by_key = {one["key"]: one for one in told["contents"]}
    for key in course():
        needs = [n for n in course_lesson(key).needs if n in course()]
        assert len(by_key[key]["needs"]) == len(needs)


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ({"key": "how-high"}, "no lesson 'how-high'"),
        ({"key": ROOF, "book": "US IRC 1066"}, "Book is 'US IRC 1066'"),
        ({"key": ROOF, "units": "cubits"}, "Units is 'cubits'"),
    ],
)
def test_what_is_not_there_is_refused(how, said):
    with pytest.raises(InputError, match=said):
        show_lesson(**how)
