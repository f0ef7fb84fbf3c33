"""A class: roster and tickets, every student's own folder, what a page may know, and the results."""

import base64
import gc
import hashlib
import hmac
import os
import re
import signal
import subprocess
import sys
import tomllib
import types
from collections import Counter
from dataclasses import fields

import formulas
import openpyxl
import pytest
from sampled import sampled

from fireplace_calc import assess
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import InputError
from fireplace_calc.exports.class_table import ANSWERS, write_results
from fireplace_calc.lessons import planted
from fireplace_calc.lessons.answers.exercise_records import Exercise, ExerciseStep
from fireplace_calc.lessons.answers.written import LONGEST_ANSWER
from fireplace_calc.lessons.classroom import class_files, tickets
from fireplace_calc.lessons.classroom.class_files import hand_out, kept_class, read_class, read_task
from fireplace_calc.lessons.classroom.class_records import ClassTask
from fireplace_calc.lessons.classroom.class_results import hard_causes, hard_steps, result_rows
from fireplace_calc.lessons.classroom.desk import Desk
from fireplace_calc.lessons.classroom.gathering_work import gathered
from fireplace_calc.lessons.classroom.kept_work import WORK, own_work_folder, read_work
from fireplace_calc.lessons.classroom.rosters import roster_of
from fireplace_calc.lessons.classroom.student_work import (
    MOST_ENTRIES,
    StudentWork,
    as_answer,
    work_of,
)

TASK = ClassTask(
    "Tuesday (invented)",
    "0a1b2c3d",
    ("hearth", "roof"),
    3,
    3,
    "US IRC 2021",
    "feet-inches",
    "hints",
    made_by(),
)
NAMES = ("Ann Lee", "Bo Ray", "3", "Zoë", "小屋")


@pytest.fixture
def school(tmp_path):
    return kept_class(tmp_path / "class", TASK, NAMES)


def desk(school, home, name):
    return Desk(school.task, home, name, school.tickets[name])


def key_of(school, name, number):
    """The trainer's own drawing of one exercise."""
    return school.task.draw(school.seed(name), number)


# -- tickets ------------------------------------------------------------------------------------


def naive_ticket(secret, name, place):
    """RFC 2104 by the standard library, and base 32 as RFC 4648 has it, in other letters."""
    theirs, ours = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567", "0123456789abcdefghjkmnpqrstvwxyz"
    mixed = hmac.new(secret.encode(), f"{place} {name.casefold()}".encode(), hashlib.sha256)
    drawn = base64.b32encode(mixed.digest()[:5]).decode().translate(str.maketrans(theirs, ours))
    return ours[place // 32] + ours[place % 32] + drawn


def test_a_ticket_is_the_keyed_hash_of_place_and_name(school):
    for name, place in school.places.items():
        plain = school.tickets[name].replace("-", "")
        assert plain[:10] == naive_ticket(school.secret, name, place) == school.seed(name)
        assert tickets.place_of(school.seed(name)) == place


def test_another_secret_another_name_another_place_another_ticket():
    known = {
        tickets.ticket_of(secret, name, place)[:11]
        for secret in ("a" * 64, "b" * 64)
        for name in ("Ann", "Bo")
        for place in range(1, 201)
    }
    assert len(known) == 800


def test_a_slip_of_the_pen_is_told():
    """Two letters check: of 372 tickets with one wrong letter hardly one passes."""
    ticket = tickets.ticket_of("s" * 64, "Ann", 7)
    plain, passed = ticket.replace("-", ""), 0
    for place, letter in enumerate(plain):
        for other in set(tickets.LETTERS) - {letter}:
            try:
                tickets.seed_of(plain[:place] + other + plain[place + 1 :], "Ann")
            except InputError:
                continue
            passed += 1
    assert passed <= 3
    for typed in (ticket.upper(), f" {plain} ", ticket.replace("-", " ").replace("0", "O")):
        assert tickets.seed_of(typed, "ann") == plain[:10]


@pytest.mark.parametrize("name", ["Bo", "Ann 2", ""])
def test_a_ticket_is_for_one_name(name):
    with pytest.raises(InputError, match="not for the name"):
        tickets.seed_of(tickets.ticket_of("s" * 64, "Ann", 7), name)


@pytest.mark.parametrize("ticket", ["", "0126", "0126-sqv9-cbd9-1", "0126-sqv9-cb!9", "七" * 12])
def test_what_is_no_ticket_is_refused(ticket):
    with pytest.raises(InputError, match="letters and digits"):
        tickets.seed_of(ticket, "Ann")


# -- roster and files ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text", ["Ann\nann", "Zoë\nZoe\u0308", "1-3\n2", "Ann  Lee; ann lee", "", "\n \n", "1-300"]
)
def test_a_name_twice_or_nobody_is_refused(text):
    with pytest.raises(InputError):
        roster_of(text)


def test_whoever_has_a_ticket_keeps_it_when_the_roster_changes(tmp_path):
    folder = tmp_path / "class"
    first = kept_class(folder, TASK, ("Ann", "Bo", "Cy"))
    kept_class(folder, TASK, ("New", "Cy", "Ann"))
    last = kept_class(folder, TASK, ("Bo", "New", "Newer", "Ann"))
    assert {**last.tickets, **first.tickets}.items() >= last.tickets.items()
    assert sorted(last.places.values()) == [1, 2, 4, 5] and last.left == {"Cy": 3}
    assert read_class(folder) == last


def test_the_trainers_folder_is_for_its_owner_alone(school, tmp_path):
    if os.name == "posix":
        assert (tmp_path / "class").stat().st_mode & 0o077 == 0


def test_what_is_handed_out_is_the_task_and_nothing_of_secret_or_roster(school, tmp_path):
    hand_out(tmp_path / "students", school.task)
    text = (tmp_path / "students" / class_files.FILE).read_text()
    assert read_task((tmp_path / "nowhere", tmp_path / "students")) == school.task
    told = [school.secret, *school.tickets.values(), *map(school.seed, NAMES)]
    told += [name for name in NAMES if name != "3"]
    assert not [word for word in told if word in text]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("\nsecret", "\nsekret"),
        ("count = 3", "count = true"),
        ("count = 3", "count = 99"),
        ("level = 3", "level = 4"),
        ('["hearth", "roof"]', '["hearth", "window"]'),
        ("[students]", "[pupils]"),
        ('helps = "hints"', 'helps = "all"'),
        ('units = "feet-inches"', "units = 12"),
        ('pack = "US IRC 2021"\n', ""),
        ('["hearth", "roof"]', '"hearth"'),
        ('["hearth", "roof"]', '["hearth", 3]'),
    ],
)
def test_a_broken_class_file_is_refused_without_telling_the_secret(old, new, school, tmp_path):
    path = tmp_path / "class" / class_files.FILE
    path.write_text(path.read_text().replace(old, new, 1))
    before = path.read_bytes()
    with pytest.raises(InputError) as said:
        read_class(path.parent)
    with pytest.raises(InputError):
        kept_class(path.parent, TASK, NAMES)
    assert school.secret not in str(said.value) and path.read_bytes() == before


@pytest.mark.parametrize(
    ("old", "new", "name"),
    [
        ('units = "feet-inches"', "units = 12", "units"),
        ('pack = "US IRC 2021"\n', "", "pack"),
        ('["hearth", "roof"]', '"hearth"', "kinds"),
        ('["hearth", "roof"]', '["hearth", 3]', "kinds"),
        ("count = 3", "count = true", "count"),
        ("level = 3", "level = 2.5", "level"),
    ],
)
def test_a_task_that_is_not_as_it_was_written_names_what_is_wrong(old, new, name, tmp_path):
    hand_out(tmp_path, TASK)
    path = tmp_path / class_files.FILE
    assert old in path.read_text()
    path.write_text(path.read_text().replace(old, new, 1))
    with pytest.raises(InputError) as said:
        read_task((tmp_path,))
    assert str(said.value) == (
        f"{path}: {name} is missing or is not as the workbook writes it. Bring the file back from"
        " a copy, or move it away and begin the class anew."
    )
    assert said.value.name == name


@pytest.mark.parametrize("new", ['"2"', "true", "2.0"])
@pytest.mark.parametrize("name", ["Bo Ray", "Ann Lee"])
def test_a_place_that_is_no_whole_number_is_told_by_its_list(name, new, school, tmp_path):
    path = tmp_path / "class" / class_files.FILE
    place = school.places[name]
    text = path.read_text()
    assert text.count(f'"{name}" = {place}\n') == 1
    path.write_text(text.replace(f'"{name}" = {place}\n', f'"{name}" = {new}\n'))
    with pytest.raises(InputError) as said:
        read_class(path.parent)
    assert said.value.name == "students" and str(said.value).startswith(f"{path}: students is")


def test_folders_are_made_all_the_way_down(tmp_path):
    deep = tmp_path / "a" / "b" / "class"
    assert kept_class(deep, TASK, NAMES) == read_class(deep)
    hand_out(tmp_path / "c" / "d", TASK)
    assert read_task((tmp_path / "c" / "d",)) == TASK


def test_a_folder_that_cannot_be_made_or_written_is_named(school, tmp_path):
    """A file stands where the folder should be."""
    (tmp_path / "taken").write_text("")
    inside = tmp_path / "taken" / "students"
    for act in (lambda: hand_out(inside, TASK), lambda: kept_class(inside, TASK, NAMES)):
        with pytest.raises(InputError) as said:
            act()
        assert str(said.value) == f"{inside} cannot be made: Not a directory."
    with pytest.raises(InputError) as said:
        own_work_folder(inside, TASK.key, "Ann Lee", school.tickets["Ann Lee"])
    assert str(said.value) == f"{inside} cannot be written: Not a directory."


# -- a student's own folder ---------------------------------------------------------------------


def test_every_student_has_a_folder_of_his_own_and_finds_it_again(school, tmp_path):
    home = tmp_path / "students"
    folders = {name: desk(school, home, name).folder for name in NAMES}
    assert len(set(folders.values())) == len(NAMES)
    assert folders["小屋"].name == "小屋" and folders["Ann Lee"].name == "ann-lee"
    for name in NAMES:
        again = Desk(school.task, home, f" {name.upper()} ", school.tickets[name].upper())
        assert again.folder == folders[name]


@pytest.mark.parametrize("names", [("Ann!", "Ann?"), ("../x", "x"), ("CON", "con."), ("!!", "??")])
def test_two_names_that_come_to_one_folder_get_two(names, tmp_path):
    school = kept_class(tmp_path / "class", TASK, names)
    one, other = (desk(school, tmp_path / "s", name).folder for name in names)
    assert one != other and one.parent == other.parent == tmp_path / "s"


def test_somebody_elses_name_with_another_ticket_is_told(school, tmp_path):
    home = tmp_path / "students"
    desk(school, home, "Ann Lee")
    forged = tickets.ticket_of("forged" * 10, "Ann Lee", 1)
    with pytest.raises(InputError, match="works here already with another ticket"):
        own_work_folder(home, TASK.key, "Ann Lee", forged)


def test_two_pages_of_one_student_lose_nothing(school, tmp_path):
    home = tmp_path / "students"
    one, other = desk(school, home, "3"), desk(school, home, "3")
    for n in range(6):
        (one, other)[n % 2].answer(1, 1, f"{n + 1} in2")
    texts = [a.text for a in read_work(one.folder).attempts]
    assert texts == [f"{n + 1} in2" for n in range(6)]


def test_an_unreadable_file_is_left_alone_and_its_folder_not_reused(school, tmp_path):
    home = tmp_path / "students"
    folder = desk(school, home, "Bo Ray").folder
    (folder / WORK).write_text("attempts = [")
    assert desk(school, home, "Bo Ray").folder == home / "bo-ray-2"
    assert (folder / WORK).read_text() == "attempts = ["
    found = gathered(school, (home,))
    assert "Bo Ray" in found.works and any("bo-ray" in said for said in found.said)


GOOD = {"class": "0a1b2c3d", "name": "Ann", "ticket": "t", "attempts": []}
ROW = ["hearth 1", "0000", 1, "wrong", "20 in", "now"]


@pytest.mark.parametrize(
    "told",
    [
        {**GOOD, "class": 3},
        {**GOOD, "name": None},
        {key: word for key, word in GOOD.items() if key != "ticket"},
        {**GOOD, "attempts": "none"},
        {**GOOD, "attempts": ["hearth 1"]},
        {**GOOD, "attempts": [ROW[:5]]},
        {**GOOD, "attempts": [[*ROW[:2], "1", *ROW[3:]]]},
        {**GOOD, "attempts": [[*ROW[:3], "nearly", *ROW[4:]], ROW]},
    ],
)
def test_work_that_no_page_has_written_is_refused(told):
    with pytest.raises(InputError) as said:
        work_of(told, "ann/work.toml")
    assert str(said.value) == (
        "ann/work.toml is not as the student's page writes it. It is left as it is."
    )


def test_work_is_read_row_by_row():
    assert work_of(GOOD, "") == StudentWork("0a1b2c3d", "Ann", "t", ())
    made = work_of({**GOOD, "attempts": [ROW, [*ROW[:3], "right", *ROW[4:]]]}, "")
    assert [vars_of(one) for one in made.attempts] == [ROW, [*ROW[:3], "right", *ROW[4:]]]


def vars_of(attempt):
    return [getattr(attempt, one.name) for one in fields(attempt)]


def test_a_page_that_answers_without_end_keeps_a_file_that_can_be_read(school, tmp_path):
    """The longest answers in letters of four bytes: the reader takes 256 kB."""
    mine = desk(school, tmp_path / "s", "Zoë")
    entry = f'    ["hearth 1", "00000000", 1, "wrong", "{"𠀋" * 60}", "{"x" * 120}"],\n'
    text = (mine.folder / WORK).read_text()
    (mine.folder / WORK).write_text(text.replace("[\n", "[\n" + entry * MOST_ENTRIES, 1))
    assert len(read_work(mine.folder).attempts) == MOST_ENTRIES
    with pytest.raises(InputError, match="Show your"):
        mine.answer(1, 1, "20 in")


WRITER = """
import sys
from pathlib import Path
from fireplace_calc.lessons.classroom.class_files import read_class
from fireplace_calc.lessons.classroom.desk import Desk
folder, name = Path(sys.argv[1]), sys.argv[2]
school = read_class(folder / "class")
mine = Desk(school.task, folder / "students", name, school.tickets[name])
for n in range(len(mine.work.attempts), 400):
    mine.answer(1, 1, f"{n + 1} in2")
    print(n + 1, flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="no kill -9 there")
@pytest.mark.parametrize("times", sampled([1, 6], 1))
def test_kill_9_loses_nothing_that_was_told_and_mixes_nobody(times, school, tmp_path):
    """Three students write at once and are killed in the middle of it, again and again."""
    who = ("Ann Lee", "Bo Ray", "小屋")
    told = dict.fromkeys(who, 0)
    for _ in range(times):
        running = {
            name: subprocess.Popen(
                [sys.executable, "-c", WRITER, tmp_path, name], stdout=subprocess.PIPE, text=True
            )
            for name in who
        }
        for name, process in running.items():
            for _ in range(4):
                told[name] = int(process.stdout.readline())
        for name, process in running.items():
            process.send_signal(signal.SIGKILL)
            rest = process.communicate()[0].split("\n")[:-1]
            told[name] = max([told[name], *map(int, rest)])
    works = gathered(school, (tmp_path / "students",)).works
    for name in who:
        texts = [one.text for one in works[name].attempts]
        assert texts == [f"{n + 1} in2" for n in range(len(texts))]
        assert told[name] <= len(texts) <= told[name] + times


# -- what a page may know -----------------------------------------------------------------------


def reached(start, most=400_000):
    """Everything that can be reached from objects, but for modules and classes."""
    seen, todo = {}, list(start)
    while todo and len(seen) < most:
        one = todo.pop()
        if id(one) in seen or isinstance(one, (types.ModuleType, type, types.FrameType)):
            continue
        seen[id(one)] = one
        held = gc.get_referents(one)
        if isinstance(one, types.FunctionType):  # its globals are its module's
            held = [*(one.__closure__ or ()), *(one.__defaults__ or ())]
        todo += held
    return seen.values()


def test_a_students_desk_holds_nothing_of_the_key_or_the_secret(school, tmp_path):
    mine = desk(school, tmp_path / "students", "Ann Lee")
    shown = [mine.asked(n) for n in (1, 2, 3)]
    mine.answer(1, 2, "3 in")
    mine.help_with(2, 1, "hint")
    mine.help_with(2, 1, "bigger hint")
    held = list(reached([mine, shown]))
    assert len(held) > 100
    for one in held:
        assert not isinstance(one, (Exercise, ExerciseStep)), one
        if isinstance(one, str):
            assert school.secret not in one
            assert not any(school.tickets[name] in one for name in NAMES if name != "Ann Lee")


def test_the_search_would_find_what_it_looks_for(school):
    class Holder:
        pass

    holder, drawn = Holder(), key_of(school, "Ann Lee", 1)
    holder.deep = {"a": [lambda: drawn]}
    assert any(isinstance(one, Exercise) for one in reached([holder]))


def test_a_students_files_hold_his_ticket_and_his_answers_alone(school, tmp_path):
    mine = desk(school, tmp_path / "students", "Ann Lee")
    hand_out(tmp_path / "students", school.task)
    for number in (1, 2, 3):
        for step in range(1, 4):
            mine.answer(number, step, "1 in")
    texts = [path.read_text() for path in (tmp_path / "students").rglob("*") if path.is_file()]
    assert len(texts) == 2
    for text in texts:
        assert school.secret not in text
        assert not any(school.seed(name) in text.replace("-", "") for name in NAMES[1:])
    told = tomllib.loads((mine.folder / WORK).read_text())
    assert {row[4] for row in told["attempts"]} == {"1 in"}
    digests = {row[1] for row in told["attempts"]}
    for number in (1, 2, 3):  # of the givens: with other answers they would be the same
        drawn = key_of(school, "Ann Lee", number)
        told = "".join(f"{step.expected:.9g}" for step in drawn.steps)
        assert not any(hashlib.sha256(told.encode()).hexdigest()[:8] in d for d in digests)


@pytest.mark.parametrize("helps", ["none", "hints", "working"])
def test_the_page_helps_as_far_as_the_trainer_lets_it(helps, tmp_path):
    task = ClassTask(**{**vars(TASK), "helps": helps})
    school = kept_class(tmp_path / "class", task, NAMES)
    mine = desk(school, tmp_path / "s", "Ann Lee")
    drawn = key_of(school, "Ann Lee", 1)
    for n, step in enumerate(drawn.steps, 1):
        wrong = next((m for m in step.mistakes), None)
        if wrong and step.kind == "length":
            reply = mine.answer(1, n, f"{wrong.value * 1000:.6f} mm")
            assert not reply.right and (wrong.reason in reply.text) == (helps != "none")
            assert read_work(mine.folder).attempts[-1].cause == wrong.reason
        answer = step.answer("feet-inches")
        told = mine.help_with(1, n, "working")
        assert (answer in told) == (helps == "working")
        assert (mine.help_with(1, n, "hint") == step.hint) == (helps != "none")
        assert mine.answer(1, n, answer).right
    stands = [step.stands for step in mine.asked(1).steps]
    assert all(one.done for one in stands)
    assert all(one.first == (helps == "none" and not one.wrong) for one in stands)
    assert all(bool(one.workings) == (helps == "working") for one in stands)


def test_the_page_never_says_an_answer_before_it_is_found(school, tmp_path):
    """What a page with hints shows of an exercise has no answer in it that is not given anyway."""
    mine = desk(school, tmp_path / "s", "Ann Lee")
    for number in (1, 2, 3):
        drawn, asked = key_of(school, "Ann Lee", number), mine.asked(number)
        given = {figure for *_, figure in asked.given}
        for step in drawn.steps:
            answer = step.answer("feet-inches")
            if answer in given or step.options or len(answer) < 4:
                continue
            assert answer not in repr(asked), (number, step.ask)


# -- results ------------------------------------------------------------------------------------


@pytest.fixture
def worked(school, tmp_path):
    """Three students: one all right, one with slips and a hint, one who has just begun."""
    home = tmp_path / "students"
    ann, bo = desk(school, home, "Ann Lee"), desk(school, home, "Bo Ray")
    desk(school, home, "3").answer(2, 1, "what?")
    for number in (1, 2, 3):
        for n, step in enumerate(key_of(school, "Ann Lee", number).steps, 1):
            assert ann.answer(number, n, step.answer("feet-inches")).right
        for n, step in enumerate(key_of(school, "Bo Ray", number).steps, 1):
            for mistake in step.mistakes[:n]:
                bo.answer(number, n, f"{mistake.value!r} m")
            bo.help_with(number, n, "hint")
            if n % 2:
                bo.answer(number, n, step.answer("feet-inches"))
                bo.answer(number, n, "1 in")  # after it was right nothing counts
    return home


def test_the_table_is_what_a_second_count_finds(school, worked, tmp_path):
    """Counted again from the files alone, entry by entry."""
    works = gathered(school, (worked,)).works
    rows = list(result_rows(school, works))
    assert len(rows) == sum(len(key_of(school, name, n).steps) for name in NAMES for n in (1, 2, 3))
    parts = ("hearth 1", "roof 1", "hearth 2")
    for row in rows:
        path = next(
            (p for p in worked.glob(f"*/{WORK}") if f'name = "{row.name}"' in p.read_text()), None
        )
        mine = []
        for part, _, step, what, text, _ in (
            tomllib.loads(path.read_text())["attempts"] if path else ()
        ):
            if (part, step) == (parts[row.number - 1], row.step):
                mine.append((what, text))
        words = [what for what, _ in mine]
        until = words.index("right") if "right" in words else len(words)
        assert row.begun == bool(mine)
        assert row.stands.done == ("right" in words)
        assert row.stands.first == (words[:1] == ["right"])
        assert row.stands.wrong == words[:until].count("wrong")
        assert row.stands.hints == words[:until].count("hint")
        assert len(row.stands.causes) == row.stands.wrong
    assert all(r.stands.first for r in rows if r.name == "Ann Lee")
    assert not any(r.begun for r in rows if r.name == "小屋")


# -- a search for faults ------------------------------------------------------------------------
@pytest.fixture
def searching(tmp_path):
    """A class that looks for three faults in each of two designs, with an exercise between."""
    task = ClassTask(**{**vars(TASK), "kinds": ("faults", "roof"), "count": 3})
    return kept_class(tmp_path / "class", task, NAMES)


def test_faults_are_found_in_any_order_and_guesses_are_counted(searching, tmp_path):
    """The rules that are broken are those that the assessment finds open, in whatever order."""
    mine, drawn = desk(searching, tmp_path / "s", "Bo Ray"), key_of(searching, "Bo Ray", 1)
    options = drawn.steps[0].options
    found = assess(drawn.design, TASK.pack).findings
    names = {f"{f.title} ({f.clause})" for f in found if f.verdict == "falls short"}
    assert {step.answer() for step in drawn.steps} == names and len(names) == 3
    sound = [one for one in options if one not in names]
    assert max(map(len, options)) > LONGEST_ANSWER
    assert all(as_answer(one, options) == one for one in options)
    asked = mine.asked(1)
    assert asked.search == drawn.design and asked.figure is None and not asked.done
    for n, guess in enumerate(sound[:3], 1):
        reply = mine.answer(1, 1, guess)
        assert not reply.right and reply.text.startswith(f"Guess {n}. Not yet. ")
        assert reply.mistake == f"You took: {guess}." and len(reply.text) > 60
    assert mine.answer(1, 1, sound[1]).text.startswith("Guess 3. "), "twice the same counts once"
    answers = [step.answer() for step in drawn.steps]
    for left, guess in zip((2, 1, 0), reversed(answers), strict=True):
        assert mine.help_with(1, 1, "hint").startswith("Look at this part: ")
        reply = mine.answer(1, 1, guess)
        assert reply.right and mine.asked(1).done == 3 - left
        assert reply.text.endswith(f"{left} more to find." if left else "Nothing else is broken.")
    works = gathered(searching, (tmp_path / "s",)).works
    rows = [r for r in result_rows(searching, works) if r.name == "Bo Ray" and r.number == 1]
    assert all(row.stands.done for row in rows)
    assert {row.title for row in rows} == {"Find the fault"}
    assert sum(row.stands.wrong for row in rows) == 3 and sum(row.stands.hints for row in rows) == 3
    causes = {one.cause for one in hard_causes(rows)}
    assert causes == {f"You took: {one}." for one in sound[:3]}
    again = desk(searching, tmp_path / "s", "Bo Ray").asked(1)
    assert again.done == 3 and key_of(searching, "Bo Ray", 3).design != drawn.design


def test_a_search_without_reasons_says_no_more_than_right_or_not(tmp_path):
    task = ClassTask(**{**vars(TASK), "kinds": ("faults",), "helps": "none", "level": 1})
    room = kept_class(tmp_path / "class", task, NAMES)
    mine, drawn = desk(room, tmp_path / "s", "3"), key_of(room, "3", 1)
    (step,) = drawn.steps
    wrong = next(one for one in step.options if one != step.answer())
    assert mine.answer(1, 1, wrong).text == "Guess 1. Not yet."
    assert mine.answer(1, 1, step.answer()).right


def test_a_class_keeps_its_edition_of_the_list_of_faults(searching, tmp_path, monkeypatch):
    """A program with a fault more draws the old class as it was, and a new one from the new list."""
    from test_fault_hunt import FAULTS, ONE_MORE, planting

    was, before = searching.task.edition, key_of(searching, "Zoë", 1)
    monkeypatch.setattr(planting, "FAULTS", (ONE_MORE, *FAULTS))
    new = ClassTask(**{**vars(searching.task), "edition": planting.latest_edition()})
    again = kept_class(tmp_path / "class", new, NAMES)
    assert again.task.edition == was and key_of(again, "Zoë", 1) == before
    hand_out(tmp_path / "students", again.task)
    assert read_task((tmp_path / "students",)) == again.task
    assert kept_class(tmp_path / "another", new, NAMES).task.edition == was + 1


def test_a_class_from_before_faults_were_dealt_has_those_that_were_drawn(searching, tmp_path):
    """Its file names edition 1, or none: that was the only one. Place and class do not count in it."""
    path = tmp_path / "class" / "class.toml"
    for line in ("edition = 1\n", ""):
        path.write_text(re.sub(r"edition = \d+\n", line, path.read_text()))
        old = read_class(tmp_path / "class")
        drawn = planted(f"{old.seed('Zoë')}.1", 3, TASK.pack, 1)
        assert old.task.edition == 1 and key_of(old, "Zoë", 1).design == drawn.design
        assert key_of(searching, "Zoë", 1).design != drawn.design


def test_what_was_hard_is_counted_over_the_class(school, worked):
    rows = list(result_rows(school, gathered(school, (worked,)).works))
    hard = hard_steps(rows)
    assert sum(one.wrong for one in hard) == sum(row.stands.wrong for row in rows) > 5
    shares = [one.first / one.begun for one in hard if one.begun]
    assert shares == sorted(shares) and shares[0] < 1
    causes = Counter((r.title, c) for r in rows for c in r.stands.causes)
    assert {(c.title, c.cause): c.times for c in hard_causes(rows)} == causes
    assert any(c.cause == "could not be read" for c in hard_causes(rows))


def test_an_answer_counts_as_the_trainer_finds_it_not_as_the_file_says(school, worked):
    path = worked / "bo-ray" / WORK
    path.write_text(path.read_text().replace('"wrong"', '"right"'))
    rows = list(result_rows(school, gathered(school, (worked,)).works))
    bo = [row for row in rows if row.name == "Bo Ray"]
    assert sum(row.stands.wrong for row in bo) > 5 and not all(row.stands.done for row in bo)


def test_work_that_is_not_this_classes_is_left_out_and_told(school, worked, tmp_path):
    other = kept_class(tmp_path / "other", ClassTask(**{**vars(TASK), "key": "ffff"}), NAMES)
    desk(other, tmp_path / "visitors" / "visitor-1" / "students", "Zoë")
    stranger = tickets.ticket_of("s" * 64, "Mo", 9)
    own_work_folder(worked, TASK.key, "Mo", stranger)
    forged = tickets.ticket_of("s" * 64, "小屋", 5)
    own_work_folder(worked, TASK.key, "小屋", forged)
    tablet = tmp_path / "visitors" / "visitor-2" / "students"
    desk(school, tablet, "Ann Lee").answer(1, 1, "5 in2")
    found = gathered(school, (worked, tmp_path / "visitors"))
    assert set(found.works) == {"Ann Lee", "Bo Ray", "3"}
    said = " ".join(found.said)
    for words in ("another class", "not on the roster", "did not hand out", "two places"):
        assert words in said
    assert found.works["Ann Lee"].attempts[-1].text == "5 in2"


def test_the_spreadsheet_stores_what_another_program_works_out(school, worked, tmp_path):
    """The library ``formulas`` reads the file and runs its formulas."""
    rows = list(result_rows(school, gathered(school, (worked,)).works))
    table, book = write_results(rows, tmp_path)
    lines = table.read_text().splitlines()
    assert len(lines) == len(rows) + 1 and lines[0].startswith(ANSWERS[0].heading)
    stored = openpyxl.load_workbook(book, data_only=True)["Students"]
    live = openpyxl.load_workbook(book)["Students"]
    model = formulas.ExcelModel().loads(str(book)).finish()
    solved = {str(k).upper(): v for k, v in model.calculate().items()}
    tried = 0
    for row in live.iter_rows(min_row=2):
        for cell in row:
            if str(cell.value).startswith("="):
                found = solved[f"'[{book.name.upper()}]STUDENTS'!{cell.coordinate}"]
                value = float(found.value[0, 0])
                assert stored[cell.coordinate].value == pytest.approx(value), cell.coordinate
                tried += 1
    assert tried == (len(NAMES) + 1) * 8
    last = stored.max_row
    assert stored[f"D{last}"].value == sum(row.stands.done for row in rows)


def test_a_name_cannot_lead_out_of_the_folder_of_all(tmp_path):
    home = tmp_path / "deep" / "students"
    for name in ("..", "/etc/x", "a/../../b", "C:\\x", "~"):
        one = kept_class(tmp_path / "c", TASK, (name,))
        assert desk(one, home, name).folder.parent == home
    assert [path.name for path in (tmp_path / "deep").iterdir()] == ["students"]
