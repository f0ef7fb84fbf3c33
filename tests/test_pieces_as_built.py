"""What stands and what is left: any sequence of measured levels, held against a linear programme that knows nothing of the plan."""

from datetime import datetime, timedelta, timezone

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog
from test_pieces_joints import block, courses, misses
from test_voice import BANNED, ENGLISH, LONGEST, sentences

from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, MILLIMETRES, InputError
from fireplace_calc.pieces.joints.joint_plan import plan_joints
from fireplace_calc.pieces.joints.plumb import plumb_words
from fireplace_calc.pieces.joints.rise import Rise, rise_of
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.as_built_file import END, as_built_text, read_as_built
from fireplace_calc.pieces.standing.inspector_record import record_rows, record_table
from fireplace_calc.pieces.standing.next_beds import replan

NOON = datetime(2027, 5, 3, 12, 0)
TICK = INCH / 16
NANO = 2e-9


def at(lift, inches, **more):
    return MeasuredTop(f"{lift}", inches * INCH, NOON, **more)


def can_be_met(chain, levels, start):
    """Whether any joints of the ranges bring all tops within their tolerances (HiGHS)."""
    place = {r.name: n for n, r in enumerate(chain)}
    rows, limits = [], []
    for w in levels:
        row = np.array([float(n <= place[w.lift]) for n in range(len(chain))])
        rows += [row, -row]
        limits += [w.level - start + w.tolerance + 1e-9, start - w.level + w.tolerance + 1e-9]
    bounds = [(r.least, r.most) for r in chain]
    return linprog(np.zeros(len(chain)), rows or None, limits or None, bounds=bounds).status == 0


@st.composite
def jobs(draw):
    """A chain, wanted levels that can be met from the start, and errors of every setting."""
    count = draw(st.integers(2, 9))
    heights = draw(st.lists(st.integers(64, 200), min_size=count, max_size=count))
    rooms = draw(st.lists(st.integers(0, 4), min_size=count, max_size=count))
    chain = [
        rise_of(f"{n}", [block("P", h / 16, 0.375, 0.375 + room / 32, 0.375 + room / 16)])
        for n, (h, room) in enumerate(zip(heights, rooms, strict=True))
    ]
    reached = np.cumsum([r.least + draw(st.integers(0, 4)) / 4 * (r.most - r.least) for r in chain])
    places = draw(st.lists(st.integers(0, count - 1), max_size=3, unique=True))
    levels = [
        WantedLevel(
            f"{p}", float(reached[p]), draw(st.integers(0, 2)) * TICK, draw(st.integers(1, 2))
        )
        for p in places
    ]
    errors = draw(st.lists(st.integers(-3, 3), min_size=count, max_size=count))
    return chain, levels, errors


@settings(max_examples=80, deadline=None)
@given(jobs())
def test_a_new_plan_never_leaves_a_range_and_says_so_when_nothing_is_left(job):
    """Built lift by lift to the plan, each off by some sixteenths."""
    chain, levels, errors = job
    built = AsBuilt("a job")
    for number, error in enumerate(errors):
        found = replan(chain, levels, built)
        assert found.plan is not None
        assert [r.name for r in found.plan.chain] == [r.name for r in chain[number:]]
        for rise, one in zip(found.plan.rounded_rises, found.plan.chain, strict=True):
            assert one.least - NANO <= rise <= one.most + NANO
        above = [w for w in levels if int(w.lift) >= number]
        met = can_be_met(chain[number:], above, found.level)
        assert met == (not found.plan.unmet)
        if met:
            assert (
                max(misses(found.plan.tops, found.plan.chain, above), default=0.0)
                <= TICK / 2 + NANO
            )
        to_come = [one for one in found.lost if not one.stands]
        for one in to_come:
            assert not met
            below = int(one.lift_off) - 1
            assert below < number - 1 or number == 0
            under = built.tops[below].level if below >= 0 else 0.0
            rest = [w for w in levels if int(w.lift) > below]
            alone = [w for w in rest if w == one.wanted]
            assert can_be_met(chain[below + 1 :], alone, under)
        if not met and len(above) == 1:
            assert len(to_come) == 1 or found.plan.conflicts[0].missing < TICK / 2 + NANO
        built = built.with_top(MeasuredTop(f"{number}", found.plan.tops[0] + error * TICK, NOON))
        stood = [w for w in levels if w.lift == f"{number}"]
        off = [w for w in stood if abs(built.tops[-1].level - w.level) > w.tolerance + 0.51 * TICK]
        lost = [one.wanted for one in replan(chain, levels, built).lost if one.stands]
        assert set(off) <= set(lost)
    last = replan(chain, levels, built)
    assert last.plan is None and last.next_beds == "All lifts stand."


def test_next_beds_by_hand():
    """Four courses of 8 in, top at 2'-10": the first stands 1/16 low, so three beds share 8 9/16 over 8."""
    chain = courses(4)
    wanted = [WantedLevel("4", 33.9375 * INCH)]
    first = replan(chain, wanted, AsBuilt())
    assert (
        first.next_beds.startswith('Next three beds 1/2", then bed 7/16"')
        or "Next" in first.next_beds
    )
    after = replan(chain, wanted, AsBuilt().with_top(at(1, 8.4375)))
    assert after.next_beds == 'Next three beds 1/2". Top of 2 at 1\'-4 15/16".'
    assert after.measured == "1" and after.lost == () and after.doubts == ()
    low = replan(chain, wanted, AsBuilt().with_top(at(1, 8.25)), units=FEET_INCHES)
    (lost,) = low.lost
    assert (lost.lift_off, lost.below, lost.stands) == ("1", "the start", False)
    assert lost.off == pytest.approx(-3 / 16 * INCH)
    assert low.sentences[0] == (
        'The top of 4 can come no nearer than 3/16" low: 2\'-9 15/16" is wanted. No joint above '
        "cures that. Lift off 1 again, with all that stands on it, while its mortar is soft. Scrape "
        "the faces clean and bed it fresh on the start. Set mortar is cut, not pried."
    )
    assert low.sentences[1].startswith("From the top of 1 as measured to the top of 4 the fullest")
    assert low.sentences[2].startswith(
        'From the start to the top of 1 it measures 8 1/4"; the joints allow 8 3/8"'
    )
    assert low.sentences[-1].startswith('Next three beds 1/2".')


def test_next_beds_of_pieces_that_differ_and_of_bare_rises():
    walls = [block("WL", 8.0), block("WR", 8.0), block("BK", 7.9375, 0.375, 0.5, 0.625)]
    chain = [rise_of(f"{n}", walls) for n in range(12)]
    told = replan(chain, [], AsBuilt()).next_beds
    assert told.startswith('Next 12 beds WL and WR 7/16", BK 1/2". Top of 0 at 8 7/16"')
    bare = [Rise("a", 0.2, 0.2, 0.2), Rise("b", 0.2, 0.2, 0.2)]
    assert replan(bare, [], AsBuilt(), 0.1, MILLIMETRES).next_beds == "Top of a at 300 mm."
    # Beds that are told stand alone where what follows has none to tell.
    first = replan([*courses(1), *bare], [], AsBuilt(), units=MILLIMETRES).next_beds
    assert first.startswith("Next bed ") and "then" not in first and ". Top of 1 at" in first


def test_the_lift_to_take_off_is_the_highest_that_helps():
    """The second stands well; the third, 1/4 in low, is the one that puts the top out of reach."""
    chain, wanted = courses(5), [WantedLevel("5", 42.25 * INCH)]
    built = AsBuilt(tops=(at(1, 8.4375), at(2, 16.875), at(3, 25.0625)))
    (lost,) = replan(chain, wanted, built).lost
    assert (lost.lift_off, lost.below) == ("3", "the top of 2")
    metric = replan(chain, wanted, built, units=MILLIMETRES).sentences[0]
    assert "6 mm low: 1 073 mm is wanted" in metric


def test_a_top_that_stands_off_names_the_lift_that_did_it():
    chain, wanted = courses(3), [WantedLevel("2", 16.875 * INCH, INCH / 16)]
    good = replan(chain, wanted, AsBuilt(tops=(at(1, 8.4375), at(2, 16.9375))))
    assert good.lost == ()
    (lost,) = replan(chain, wanted, AsBuilt(tops=(at(1, 8.4375), at(2, 17.0625)))).lost
    assert (lost.lift_off, lost.below, lost.stands) == ("2", "the top of 1", True)
    assert lost.off == pytest.approx(3 / 16 * INCH)
    (lost,) = replan(chain, wanted, AsBuilt(tops=(at(1, 8.8125), at(2, 17.1875)))).lost
    assert (lost.lift_off, lost.below) == ("1", "the start")


def test_what_is_missed_from_the_start_is_no_fault_of_what_stands():
    chain, wanted = courses(3), [WantedLevel("3", 27.0 * INCH)]
    found = replan(chain, wanted, AsBuilt(tops=(at(1, 8.5), at(2, 17.0))))
    assert found.lost == () and len(found.plan.unmet) == 1


def test_a_lift_set_again_takes_off_what_stood_on_it():
    chain, wanted = courses(4), [WantedLevel("4", 33.75 * INCH)]
    tops = (at(1, 8.4375), at(2, 17.0), at(3, 25.625), at(2, 16.875, again=True))
    found = replan(chain, wanted, AsBuilt(tops=tops))
    assert found.measured == "2" and found.level == pytest.approx(16.875 * INCH)
    checked = replan(chain, wanted, AsBuilt(tops=(*tops[:3], at(2, 16.9375))))
    assert checked.measured == "3"
    rows = record_rows(chain, wanted, AsBuilt(tops=tops))
    assert [row.stands for row in rows] == [True, False, False, True]


def test_doubts():
    """A rise no joint gives; a wanted top nobody measured; the start as measured goes before the drawing's."""
    chain = courses(4)
    built = AsBuilt(tops=(at(1, 8.4375), at(3, 25.9375)))
    told = replan(chain, [WantedLevel("2", 16.875 * INCH)], built).doubts
    assert told == (
        "From the top of 1 to the top of 3 it measures 1'-5 1/2\"; the joints allow 1'-4 3/4\" to "
        "1'-5\". Measure again: a piece is over or under size, or a bed is out of its range.",
        "The top of 2 stands but was not measured: its level is not checked.",
    )
    low = replan(chain, [], AsBuilt(start=-INCH))
    assert low.level == -INCH and low.plan.start == -INCH and low.measured == ""
    assert replan(chain, [], AsBuilt(start=-INCH, tops=(at(1, 7.4375),))).doubts == ()


def test_the_record_by_hand():
    chain = courses(3)
    wanted = [WantedLevel("3", 25.3125 * INCH)]
    built = AsBuilt("Lake house", None, ())
    first = at(
        1, 8.5, by="AB", left_right=INCH / 16, front_back=-INCH / 8, plumb=INCH / 8, note="dry day"
    )
    built = built.with_top(first).with_top(at(2, 16.75))
    rows = record_rows(chain, wanted, built)
    assert [row.planned / INCH for row in rows] == pytest.approx([8.4375, 16.9375])
    assert [d.allowed for d in rows[0].deviations] == [None, *[pytest.approx(INCH / 4)] * 3]
    assert [row.deviations[0].allowed for row in rows[1:]] == [pytest.approx(INCH / 8)]
    headings, table = record_table(rows, FEET_INCHES)
    assert len(headings) == len(table[0]) == len(table[1])
    assert table[0] == (
        "2027-05-03 12:00",
        "1",
        '8 7/16"',
        '8 1/2"',
        '1/16" high',  # the first bed has no tolerance of its own
        '1/16" right high, at most 1/4"',
        '1/8" front high, at most 1/4"',
        '1/8", at most 1/4"',
        "as far as measured; not checked: top",
        "AB",
        "dry day",
    )
    assert table[1][4:10] == (
        '3/16" low, at most 1/8"',
        "not measured",
        "not measured",
        "not measured",
        "NO: top",
        "not told",
    )
    tall = [rise_of("a", [block("A", 12 * 15, 0.375, 0.375, 0.375)])]
    (row,) = record_rows(tall, [], AsBuilt(tops=(MeasuredTop("a", 15 * FOOT, NOON, plumb=0.0),)))
    assert row.deviations[3].allowed == pytest.approx(3 / 8 * INCH)
    assert record_table([row], MILLIMETRES)[1][0][7] == "0 mm, at most 10 mm"
    again = record_rows(chain, wanted, built.with_top(at(1, 8.4375, again=True)))
    last = record_table(again, FEET_INCHES)[1]
    assert "No longer stands so." in last[0][10] and last[2][10] == "Lifted off and set again."
    assert last[2][4] == "none"


offs = st.none() | st.integers(-12, 12).map(lambda n: n * INCH / 32)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(-4, 4), offs, offs, offs), min_size=1, max_size=4))
def test_within_or_not_is_read_off_the_published_figures(told):
    """TMS 602, article 3.3 F, from memory, once more by hand: beds 1/8 in, level 1/4 in in 10 ft, plumb
    1/4 in in 10 ft. What nobody measured never passes, nor does the first bed."""
    chain = courses(4)
    built, level = AsBuilt(), 0.0
    for number, (ticks, across, deep, plumb) in enumerate(told, 1):
        planned = replan(chain, [], built).plan.top_of(f"{number}")
        level = planned + ticks * INCH / 32
        top = MeasuredTop(f"{number}", level, NOON, "AB", across, deep, plumb)
        built = built.with_top(top)
    for number, (row, (ticks, *others)) in enumerate(
        zip(record_rows(chain, [], built), told, strict=True)
    ):
        wanted = [None if number == 0 else abs(ticks) <= 4]
        wanted += [None if off is None else abs(off) <= INCH / 4 + 1e-9 for off in others]
        assert [d.within for d in row.deviations] == wanted
        assert row.verdict.startswith("NO") == (False in wanted)
        assert (row.verdict == "yes") == all(wanted)


def test_a_top_over_a_lift_that_nobody_measured_is_not_checked():
    (_, row) = record_rows(courses(3), [], AsBuilt(tops=(at(1, 8.4375), at(3, 27.0))))
    assert row.deviations[0].off == pytest.approx((27 - 25.3125) * INCH)
    assert row.deviations[0].within is None and row.outside == ()


def test_a_lift_longer_than_ten_feet_has_the_wider_level():
    """TMS 602, article 3.3 F, from memory: 1/4 in in 10 ft, 1/2 in at most."""
    built = AsBuilt(tops=(at(1, 8.4375, left_right=3 / 8 * INCH),))
    (short,) = record_rows(courses(2), [], built, across={"1": 10 * FOOT})
    (long,) = record_rows(courses(2), [], built, across={"1": 10.1 * FOOT})
    assert (short.deviations[1].within, long.deviations[1].within) == (False, True)


def test_the_story_pole_keeps_its_marks_whoever_reads_it():
    """A pole in sixteenths stays one when the plan is told in millimeters, and the other way."""
    chain, wanted = courses(4), [WantedLevel("4", 33.8 * INCH)]
    built = AsBuilt(tops=(at(1, 8.4),))
    feet, told = (
        replan(chain, wanted, built),
        replan(chain, wanted, built, 0.0, MILLIMETRES, FEET_INCHES),
    )
    assert told.plan.tops == feet.plan.tops
    assert "mm" in told.next_beds and '"' not in " ".join(told.sentences)
    assert replan(chain, wanted, built, 0.0, MILLIMETRES).plan.tops != feet.plan.tops


def test_all_that_is_said_is_short_and_american():
    """The project's own voice: at most 24 words a sentence, no word an American mason does not use."""
    chain, wanted = courses(5), [WantedLevel("5", 42.5 * INCH), WantedLevel("2", 16.0 * INCH)]
    built = AsBuilt(tops=(at(1, 8.25), at(3, 25.9375)))
    told = [*replan(chain, wanted, built).sentences, *plan_joints(chain, wanted).unmet]
    told += plumb_words(np.full(20, 8.375 * INCH), 20 * INCH, INCH / 16, 0.001, FEET_INCHES)
    assert len(told) > 10
    for text in told:
        assert not BANNED.search(text) and not ENGLISH.search(text), text
        for sentence in sentences(text):
            assert len(sentence.split()) <= LONGEST, sentence


lengths = st.floats(-90, 90).map(lambda x: x + 0.0)
lines = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), max_size=30).filter(
    str.isprintable
)
zones = st.none() | st.integers(-1439, 1439).map(lambda m: timezone(timedelta(minutes=m)))
entries = st.builds(
    MeasuredTop,
    lines.filter(str.strip),
    lengths | st.integers(-2000, 2000).map(lambda n: n / 16 * INCH),
    st.datetimes(datetime(1, 1, 2), datetime(9999, 12, 30), timezones=zones),
    lines,
    st.none() | lengths,
    st.none() | lengths,
    st.none() | lengths,
    st.booleans(),
    lines,
)


@settings(deadline=None)
@given(
    st.builds(AsBuilt, lines, st.none() | lengths, st.lists(entries, max_size=4).map(tuple)),
    st.booleans(),
)
def test_nothing_is_lost_in_the_file(built, metric):
    text = as_built_text(built, MILLIMETRES if metric else FEET_INCHES)
    assert read_as_built(text) == built
    assert read_as_built("\ufeff" + text.replace("\n", "\r\n")) == built


def test_the_file_reads_as_a_mason_writes():
    text = as_built_text(AsBuilt("Lake house", 0.0, (at(1, 8.4375, by="AB", again=True),)))
    for line in (
        'start = "0 in"',
        'level = "8-7/16 in"',
        "when = 2027-05-03T12:00:00",
        "again = true",
    ):
        assert line in text.splitlines()
    told = '[[top]]\nlift = "1"\nlevel = "16 7/8\\""\nwhen = 2027-05-03T08:15:00\nplumb = "1/8 in"'
    (top,) = read_as_built(told).tops
    assert top.level == 16.875 * INCH and top.plumb == INCH / 8 and top.left_right is None
    metric = as_built_text(AsBuilt(tops=(MeasuredTop("1", 0.214, NOON),)), MILLIMETRES)
    assert 'level = "214 mm"' in metric


BEGUN = '[[top]]\nlift = "1"\nlevel = "8 in"\nwhen = 2027-05-03T08:15:00\n'


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            '[[top]]\nlift = "1"\nlevel = 8\nwhen = 2027-05-03T08:15:00',
            "Entry 1, level is 8, which has no unit",
        ),
        ('[[top]]\nlift = "1"\nwhen = 2027-05-03T08:15:00', "Entry 1 lacks level"),
        ('[[top]]\nlevel = "8 in"', "Entry 1 lacks lift and when"),
        (BEGUN + BEGUN + 'plum = "1 in"', "Entry 2 has no 'plum'; it may hold lift, level, when"),
        (BEGUN + "by = 3", "Entry 1: By of '1' is 3, but a line"),
        (BEGUN + 'again = "yes"', "Entry 1: Again of '1' is 'yes', but true or false"),
        (
            BEGUN + 'front_back = "200 m"',
            "Front_back of '1' is 200.0, but a length of at most 100 m",
        ),
        (BEGUN.replace("2027-05-03T08:15:00", "2027-05-03"), "Entry 1: When of '1' is"),
        (BEGUN.replace('"1"', '" "'), "Entry 1: Lift of ' ' is"),
        ("top = 3", "each begins with"),
        ("job = 3", "job's name is no line"),
        ('start = "900 m"', "The start is 900.0 m"),
        ('level = "8 in"', "The record has no 'level'"),
        ("[[top]\n", "cannot be read"),
        (as_built_text(AsBuilt()).replace(END, ""), "has been cut short"),
        ("#" * 1_000_001, "is it another file"),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_sentence(text, said):
    with pytest.raises(InputError, match=said):
        read_as_built(text)


def test_a_record_of_another_job_is_refused():
    with pytest.raises(InputError, match="no lift '9'; the lifts are 1, 2"):
        replan(courses(2), [], AsBuilt(tops=(at(9, 8.0),)))
    with pytest.raises(InputError, match="holds at most 2000"):
        AsBuilt(tops=(at(1, 8.0),) * 2001)
    zone = timezone(timedelta(seconds=90))
    with pytest.raises(InputError, match="a day and an hour"):
        MeasuredTop("1", 1.0, NOON.replace(tzinfo=zone))
