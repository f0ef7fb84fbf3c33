"""A lesson never says that a rule holds which nobody could check; and its findings come worst first.

THR-03 of the plain and the boathouse design is such a rule: both its figures are known, and yet the
engine does not check it.
"""

from dataclasses import replace

import pytest

from fireplace_calc.base.units import FEET_INCHES, INCH
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
