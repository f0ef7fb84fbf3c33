"""A lesson never says that a rule holds which nobody could check; and its findings come worst first.

THR-03 of the plain and the boathouse design is such a rule: both its figures are known, and yet the
engine does not check it.
"""

from dataclasses import replace

import numpy as np
import pytest

from fireplace_calc.base.resources import lesson_keys
from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.drawing.lessons.lesson_pictures import lesson_board
from fireplace_calc.lessons.course.checker import ALWAYS, MARKS
from fireplace_calc.lessons.course.lesson_file import course_lesson
from fireplace_calc.lessons.course.marks import _worked_mark, findings_for
from fireplace_calc.lessons.course.moments import moment
from fireplace_calc.lessons.course.records import LessonRule
from fireplace_calc.lessons.course.sums import Amount
from fireplace_calc.panels.lesson.lesson_desk import LessonDesk

ROOF = course_lesson("height-over-the-roof")
TALL = {"sections": ROOF.control[0].end_at}
"""A chimney that both rules of the lesson let pass."""


def asking(*keys):
    """The lesson with its second card asking for other rules."""
    return replace(ROOF, rule=(ROOF.rule[0], replace(ROOF.rule[1], question="", keys=keys)))


def test_the_lesson_holds_where_everything_is_checked():
    held = moment(ROOF, TALL)
    assert held.open is None and not held.short and "enough" in held.verdict.lower()


@pytest.mark.parametrize("key", ["THR-03", "STR-09", "STR-11", "HTH-01"])
def test_what_is_not_checked_is_never_enough(key):
    held = moment(asking(key), TALL)
    first, second = held.marks
    assert not first.short and first.need is not None
    assert second.finding.verdict == "not checked" and second.unchecked
    assert (second.have, second.need, second.short) == (None, None, False)
    assert held.open is second and held.verdict == f"Not checked. {second.finding.note}"


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ((), "This book gives no figure."),
        (("CHM-01",), "The rule does not apply here."),
        (("CHM-02", "AIR-11"), "The rule does not apply here."),
        (("FLU-04",), "Drawn so; see that it is built so."),
        (("AIR-01",), "There is no figure to compare."),
    ],
)
def test_where_no_rule_gives_a_figure_the_verdict_is_the_first_note(keys, said):
    rules = tuple(replace(rule, question="", keys=keys) for rule in ROOF.rule)
    held = moment(replace(ROOF, rule=rules), TALL)
    assert held.verdict == said and not held.short and held.open is None
    assert (held.need, held.decides.letter) == (None, "A")
    assert [mark.note for mark in held.marks] == [said, said]


def test_a_rule_that_falls_short_is_told_before_one_that_is_not_checked():
    held = moment(asking("ROF-02", "THR-03"))
    assert held.short and held.open is None and "short" in held.verdict


def test_the_page_has_no_check_mark_for_what_nobody_checked(monkeypatch):
    desk = LessonDesk(ROOF.key)
    screen = desk.screens["rule"]
    for lesson, short in ((ROOF, False), (asking("THR-03"), None)):
        held = moment(lesson, TALL)
        monkeypatch.setattr(type(screen), "moment", held)
        assert screen.told()["verdict"] == {"text": held.verdict, "short": short}


def test_findings_come_worst_first_whoever_made_them():
    found = moment(ROOF).assessment
    keys = tuple(f.key for f in (*found.findings, *found.judgement, *found.structure.findings))
    told = [one.verdict for one in findings_for(found, keys)]
    assert len(told) == len(keys)
    order = ["falls short", "not checked", "meets", "does not apply"]
    assert told == sorted(told, key=order.index) and set(told) == set(order)


@pytest.mark.parametrize(("off", "short"), [(0.061, False), (-0.061, False), (0.064, True)])
def test_what_has_to_be_met_is_met_to_a_sixteenth_either_way(off, short):
    rule = LessonRule("a", "Just so.", "here", "why", have="have", need="need", exact=True)
    named = {"have": Amount((8 + off) * INCH, "length"), "need": Amount(8 * INCH, "length")}
    assert _worked_mark(rule, named, FEET_INCHES).short is short


# -- what is drawn of it -------------------------------------------------------------------------
def drawn(held, *shows):
    """The picture of a moment, before its names are placed."""
    return lesson_board(held, shows or (*ALWAYS, *MARKS[held.lesson.picture.draw]), 219.0, 171.0)


def told(board, *words):
    """What it says that has one of some words in it."""
    return [one.text for _, one in board.wanted if any(word in one.text for word in words)]


def but_for(held, **of_marks):
    """The same moment with something of every mark told otherwise."""
    other = replace(held)
    other.__dict__["marks"] = tuple(replace(mark, **of_marks) for mark in held.marks)
    return other


@pytest.mark.parametrize("key", lesson_keys())
@pytest.mark.parametrize("book", ["US IRC 2021", "UK ADJ"])
def test_no_figure_is_drawn_of_what_nobody_has_told(key, book):
    """Nothing of a rule is drawn unless both its figures are known; but what there is of the height
    over the roof, and of the flue, is there to be seen.
    """
    held, whole = moment(key, {}, book), ("have", "need", "short", "too")
    full = drawn(held)
    assert told(full, "have") and told(full, "need")
    for lost in ({"have": None}, {"need": None}, {"have": None, "need": None}):
        board = drawn(but_for(held, short=False, **lost))
        stays = {"height-over-the-roof": "A have" if book == "UK ADJ" else "have"}
        stays["opening-and-flue"] = "have"
        there = told(full, stays[key]) if "have" not in lost and key in stays else []
        assert told(board, *whole) == there, lost
        pens = {pen for pen, _ in board.sheet.lines}
        assert pens.isdisjoint({"need", "ghost"}) and ("have" in pens) == bool(there)


@pytest.mark.parametrize("book", ["US IRC 2021", "Canada NBC", "UK ADJ"])
def test_a_flue_that_nobody_could_check_is_drawn_as_it_is_built(book):
    """Whatever the figure would be of: an area, a size or a share of the opening."""
    held = moment("opening-and-flue", {}, book)
    board = drawn(but_for(held, have=None, need=None))
    ((ring,),) = board.sheet.fills[-2, "clay liner"]
    x, y = (ring / board.view.scale).T
    area = abs(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
    assert area == pytest.approx(held.assessment.geometry.frame.bore.area, rel=1e-9)
    closed = np.concatenate([ring, ring[:1]])
    (seen,) = board.sheet.lines["seen", "ink"]
    assert np.allclose(seen, closed)


def test_what_is_not_measured_sideways_is_not_drawn_sideways():
    held = moment("height-over-the-roof", {}, "UK ADJ")
    assert told(drawn(held), "B have", "B need") == ["B have 6'-6 13/16\"", "B need 7'-6 9/16\""]
    finding = held.of("B").finding._replace(title="Top over what stands near")
    for other in (finding, None):
        assert told(drawn(but_for(held, finding=other)), "B have", "B need") == []


def test_the_chamber_wall_is_measured_where_its_rule_is_of_a_length():
    held = moment("smoke-chamber")
    assert told(drawn(held), "B ") == ['B have 7 5/8"', 'B need 6"']
    assert told(drawn(but_for(held, kind="number")), "B ") == []


def test_the_wood_of_a_wall_that_is_not_worked_has_no_bar():
    held = moment("heat-and-wood")
    assert len(told(drawn(held), "kind", "middle", "hard")) > 2
    other = replace(held)
    degrees = held.names["kind"]
    other.__dict__["names"] = {
        "kind": degrees, "middle": degrees, "hard": degrees._replace(value=float("nan")),
    }  # fmt: skip
    assert told(drawn(other), "kind", "middle", "hard", "hottest") == []


def test_a_mantel_that_is_not_there_is_not_drawn():
    held = moment("clearances-and-mantel")
    assert "mantel" in told(drawn(held), "mantel")
    other = replace(held)
    surround = replace(held.design.surround, trim=())
    other.__dict__.update(
        extremes=held.extremes, assessment=held.assessment, marks=held.marks,
        design=replace(held.design, surround=surround),
    )  # fmt: skip
    assert told(drawn(other), "mantel", "B ", "C ") == []


@pytest.mark.parametrize(
    ("values", "said", "left", "foot", "wide", "high"),
    [  # [in], from the face of the section and the hearth; by hand from the figures of the lesson
        ({"depth": 20, "bearing": 3}, 'B 1" short', -0.94 / 0.0254 + 3, 48, 1, 4),
        ({"depth": 20, "throat": 6}, 'C 2" short', 8, 54, 6, 2),
    ],
)
def test_what_is_missing_of_bearing_and_throat_is_a_red_box(values, said, left, foot, wide, high):
    held = moment("firebox-lintel-throat", {name: n * INCH for name, n in values.items()})
    board = drawn(held, "have", "need", "gap")
    (ghost,) = board.sheet.lines["ghost", "bad"]
    (x0, z0), (x1, z1) = (
        board.view.at(left * INCH, foot * INCH),
        board.view.at((left + wide) * INCH, (foot + high) * INCH),
    )
    assert np.allclose(ghost, [(x0, z0), (x1, z0), (x1, z1), (x0, z1), (x0, z0)], atol=0.01)
    ((rank, one),) = [(n, one) for n, one in board.wanted if "short" in one.text]
    assert (rank, one.text, one.ink) == (0, said, "bad")
    middle = (x1, z1 if said[0] == "B" else (z0 + z1) / 2)
    assert one.anchors[0] == pytest.approx(middle, abs=0.01)
    assert one.sides == (("above", "right") if said[0] == "B" else ("right", "above"))
    assert not told(drawn(held, "have", "need"), "short")


def test_a_bar_without_a_figure_is_not_drawn():
    board = drawn(moment("hearths"), "nothing")
    assert board.sheet.lines and board.wanted == []
    before = sum(map(len, board.sheet.lines.values()))
    mark = board.of("A")
    board.measured(replace(mark, have=None), "have", (0.0, 0.0), (0.0, 1.0))
    board.measured(replace(mark, need=None), "need", (0.0, 0.0), (0.0, 1.0))
    assert board.wanted == [] and sum(map(len, board.sheet.lines.values())) == before
    board.measured(mark, "need", (0.0, 0.0), (0.0, 1.0))
    assert [one.text for _, one in board.wanted] == ["need 1'-8\""]
    assert sum(map(len, board.sheet.lines.values())) == before + 3
