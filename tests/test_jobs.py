"""Jobs in one folder, the history of each, and options that keep their names: over random
sequences of actions, through a reload, a kill between two writes, and hostile names.
"""

import shutil
from contextlib import suppress
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from fireplace_calc import change, load, save
from fireplace_calc.base.resources import SETS
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed, tell
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.editing.jobs import jobs_folder, kept_job
from fireplace_calc.editing.jobs.deltas import apply_to, between
from fireplace_calc.editing.jobs.history import ELSEWHERE, History, Moment
from fireplace_calc.editing.jobs.history_file import (
    LARGEST_HISTORY,
    history_text,
    read_history,
)
from fireplace_calc.editing.jobs.jobs_folder import NAMED, JobsFolder
from fireplace_calc.editing.jobs.names import folder_for, in_any_letters
from fireplace_calc.editing.jobs.options import (
    MOST_KNOWN,
    MOST_OPTIONS,
    MOST_REMOVED,
    Option,
    option_text,
    removed,
    shown,
)
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.panels import work_in_hand
from fireplace_calc.panels.session import Session

EXAMPLE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml")
HOSTILE = [
    "../../etc/passwd",
    "/",
    "a/b\\c",
    "x" * 5000,
    "CON",
    "bin",
    "copy-2",
    ".hidden",
    "Müller, 2. Etage \U0001f525",
    "same",
    "Same",
    "quote \" and ''' and \\ back",
    "two\nlines\x00\x07",
    "\udcff lone",
]


def session(folder, **how) -> Session:
    return Session(EXAMPLE, "US IRC 2021", "feet-inches", folder, **how)


def in_jobs(folder, first=EXAMPLE) -> Session:
    return Session(first, "US IRC 2021", "feet-inches", jobs=folder)


def state(work: Session):
    """All that undo is to bring back: the design and every option with its name."""
    return work.design, work.shelf, tuple(work.designs[o.number] for o in work.shelf)


# -- history ---------------------------------------------------------------------------------------
@settings(deadline=None, max_examples=32)
@given(
    st.lists(st.text("ab", max_size=2), max_size=8), st.lists(st.text("ab", max_size=2), max_size=8)
)
def test_what_changed_between_two_texts_makes_one_of_the_other(before, after):
    made = list(before)
    apply_to(made, between(before, after))
    assert made == after


ACTIONS = st.lists(
    st.one_of(
        st.tuples(st.just("width"), st.integers(30, 60)),
        st.tuples(st.just("slide"), st.integers(30, 60)),
        st.tuples(st.just("trim"), st.integers(0, 2)),
        st.tuples(
            st.just("name"), st.sampled_from(["A", 'Müller\'s \\ "place"', "it's '''three'''"])
        ),
        st.tuples(
            st.sampled_from(["aside", "rename"]), st.sampled_from(["", "arch", "Z \x00\n #"])
        ),
        st.tuples(st.sampled_from(["remove", "put back", "bring back"]), st.integers(0, 3)),
        st.tuples(st.sampled_from(["undo", "redo", "reload", "pause"]), st.just(0)),
    ),
    max_size=14,
)


def act(work: Session, what: str, how) -> bool:
    """One thing a reader does, and whether he could; what is refused changes nothing."""
    before = state(work)
    options = shown(work.shelf)
    try:
        if what == "width":
            work.take({"opening.width": f"{how} in"})
        elif what == "slide":
            work.take({"opening.width": f"{how} in"}, run="opening.width")
        elif what == "trim":
            work.take({"surround.trim": [{"name": f"step {n}"} for n in range(how)]})
        elif what == "name":
            work.take({"name": how})
        elif what == "aside":
            work.put_aside(how)
        elif what == "rename" and options:
            work.rename_option(options[-1].number, how)
        elif what == "remove" and how < len(options):
            work.remove_option(options[how].number)
        elif what == "put back" and how < len(removed(work.shelf)):
            work.put_back_option(removed(work.shelf)[how].number)
        elif what == "bring back" and how < len(options):
            work.bring_back_option(options[how].number)
        else:
            return False
    except InputError:
        assert state(work) == before
        return False
    return True


@settings(deadline=None, max_examples=32)
@given(ACTIONS)
def test_undo_brings_back_every_earlier_state_after_any_reload(tmp_path_factory, actions):
    """A list of states kept by the test, against the session and what it finds on disk again."""
    folder = tmp_path_factory.mktemp("job")
    now = [0.0]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(work_in_hand, "monotonic", lambda: now[0])
        patch.setattr("fireplace_calc.editing.whole_files.os.fsync", lambda handle: None)
        work = session(folder)
        states, at, sliding = [state(work)], 0, False
        for what, how in actions:
            if what == "pause":
                now[0] += 1.5
                sliding = False
            elif what == "reload":
                before = state(work), work.steps, work.history.at
                work.keep()
                work, sliding = session(folder), False
                assert (state(work), work.steps, work.history.at) == before
            elif what in ("undo", "redo"):
                step = -1 if what == "undo" else 1
                there = 0 <= at + step < len(states)
                assert getattr(work, what)() == there
                at += step * there
                sliding = sliding and not there
            elif act(work, what, how):
                if state(work) != states[at]:
                    if not (sliding and what == "slide"):
                        del states[at + 1 :]
                        at += 1
                        states.append(None)
                        sliding = what == "slide"
                    states[at] = state(work)
                sliding = sliding and what == "slide"
            assert state(work) == states[at]
        work.keep()
        work = session(folder)
        for back in range(at, 0, -1):
            assert state(work) == states[back]
            assert work.undo()
        assert state(work) == states[0] and not work.undo()
        for forth in range(1, len(states)):
            assert work.redo() and state(work) == states[forth]
        assert not work.redo()


class Killed(BaseException):
    """Power gone."""


@settings(deadline=None, max_examples=32)
@example([("width", 40)], 1)
@example([("width", 40), ("undo", 0)], 1)
@example([("aside", "arch"), ("remove", 0)], 1)
@example([("slide", 30), ("slide", 31)], 1)
@given(ACTIONS, st.integers(0, 3))
def test_a_kill_between_two_writes_leaves_the_old_or_the_new(tmp_path_factory, actions, after):
    """The last action is cut off after so many files; what is opened then is as before or as after,
    and undo still leads to what was before.
    """
    folder = tmp_path_factory.mktemp("job")
    work = session(folder)
    work.keep()
    for what, how in actions[:-1]:
        getattr(work, what)() if what in ("undo", "redo") else act(work, what, how)
        work.keep()
    old = state(work)
    for what, how in actions[-1:]:
        getattr(work, what)() if what in ("undo", "redo") else act(work, what, how)
    new = state(work)
    written = []

    def write(path, content):
        if len(written) >= after:
            raise Killed
        written.append(path)
        write_whole(path, content)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("fireplace_calc.editing.kept_folder.write_whole", write)
        patch.setattr("fireplace_calc.editing.whole_files.os.fsync", lambda handle: None)
        with suppress(Killed):
            work.keep()
    again = session(folder)
    assert state(again) in (old, new) and "unreadable" not in again.said
    if old[1:] == new[1:]:
        assert ELSEWHERE not in again.steps, "the history knew it before the design was written"
    lead_to = [state(again)]
    at = again.history.at
    while again.undo():
        lead_to.append(state(again))
    again.go(at)
    while again.redo():
        lead_to.append(state(again))
    on_the_way = work.history.moving  # a place that a moving hand has passed is no step
    assert on_the_way or old in lead_to


def test_whoever_went_to_a_step_moves_nothing_any_more():
    """Another design in the file is then a step of its own; while a hand moves, it is where the hand
    stopped.
    """
    designs = [change(Design(), {"opening.width": f"{width} in"}) for width in (36, 40, 44, 50)]
    for back, steps in ((False, 3), (True, 4)):
        history = History([Moment("Beginning", (), designs[0])], lambda *_: "Step")
        history.add(designs[1], ())
        history.add(designs[2], (), moving=True)
        assert history.moving
        if back:
            history.go(1)
            history.go(2)
            assert not history.moving
        history.settle()
        history.take_up(designs[3], ())
        assert len(history.moments) == steps and history.now.design == designs[3]


def test_steps_have_names_and_come_back_after_a_reload(tmp_path):
    work = session(tmp_path)
    work.take({"opening.width": "50 in"})
    number = work.put_aside("With the wide opening")
    work.take({"surround.face": "stone"})
    work.remove_option(number)
    work.keep()
    again = session(tmp_path)
    assert again.steps == [
        "Beginning",
        "Opening width 4'-2\"",
        "Put aside: With the wide opening",
        again.steps[3],
        "Removed: With the wide opening",
    ]
    assert "stone" in again.steps[3] and again.history.at == 4
    assert again.go(1) and again.design.opening.width == pytest.approx(50 * INCH)
    assert again.shelf == () and not again.go(5) and not again.go(-1)


def test_an_input_that_is_confirmed_is_a_step_with_a_name(tmp_path):
    work = session(tmp_path)
    work.put(tell(work.design, sorted(assumed(work.design))[:2]))
    assert work.steps[-1] == "Confirmed: 2 inputs"
    work.keep()
    assert session(tmp_path).undo()


def test_options_keep_number_and_name_and_are_put_back(tmp_path):
    work = session(tmp_path)
    for width in (44, 48, 52):
        work.take({"opening.width": f"{width} in"})
        work.put_aside(f"{width} wide")
    work.remove_option(1)
    work.rename_option(2, "The one they liked")
    work.keep()
    again = session(tmp_path)
    assert [(o.number, o.name) for o in shown(again.shelf)] == [
        (2, "The one they liked"),
        (3, "52 wide"),
    ]
    assert again.put_aside() == 4, "a number is never given again"
    again.put_back_option(1)
    again.keep()
    last = session(tmp_path)
    assert [o.name for o in shown(last.shelf)] == [
        "44 wide",
        "The one they liked",
        "52 wide",
        "Option 4",
    ]
    while len(shown(last.shelf)) < MOST_OPTIONS:
        last.put_aside()
    with pytest.raises(InputError, match="remove one"):
        last.put_aside()
    last.remove_option(4)
    last.put_aside()
    last.remove_option(2)
    last.put_aside()
    with pytest.raises(InputError, match="remove one"):
        last.put_back_option(2)


def test_options_of_an_older_folder_are_on_the_shelf(tmp_path):
    """Before options had names they were ``option-1.toml`` and on."""
    save(change(EXAMPLE, {"opening.width": "50 in"}), tmp_path / "option-1.toml")
    save(change(EXAMPLE, {"opening.width": "52 in"}), tmp_path / "option-3.toml")
    work = session(tmp_path)
    assert [(o.number, o.name) for o in work.shelf] == [(1, "Option 1"), (3, "Option 3")]
    work.take({"opening.width": "40 in"})
    work.keep()
    assert "# Put aside as: Option 3" in (tmp_path / "option-3.toml").read_text()
    assert load(tmp_path / "option-3.toml") == work.options[1]
    assert session(tmp_path).shelf == work.shelf


def test_a_design_file_edited_by_hand_is_a_step_more(tmp_path):
    work = session(tmp_path)
    work.take({"opening.width": "50 in"})
    work.keep()
    save(change(EXAMPLE, {"opening.width": "52 in"}), tmp_path / "design.toml")
    again = session(tmp_path)
    assert again.design.opening.width == pytest.approx(52 * INCH)
    assert again.steps[-1] == "Changed outside the workbench"
    assert again.undo() and again.design.opening.width == pytest.approx(50 * INCH)
    save(EXAMPLE, tmp_path / "design.toml")
    back = session(tmp_path)
    assert back.design == EXAMPLE and back.history.at == 0, "it knows that one"


@pytest.mark.parametrize(
    "text",
    [
        "",
        "no history",
        "at = 0\nmoving = false\nbase = ''\n",
        "at = 7\nmoving = false\nbase = 'x'\n[[step]]\ndid = 'a'\n",
        "at = 0\nmoving = false\nbase = 'x'\n[[step]]\ndid = 'a'\n[[step]]\ndid = 'b'\nlines = [[9, 1, []]]\n",
        "at = 0\nmoving = false\nbase = 'x'\n[[step]]\ndid = 'a'\noptions = [['1', 'a', 'shown']]\n",
        "at = true\nmoving = false\nbase = 7\nstep = 3\n",
    ],
)
def test_a_history_that_cannot_be_read_is_set_aside_and_the_design_stays(tmp_path, text):
    work = session(tmp_path)
    work.take({"opening.width": "50 in"})
    work.keep()
    (tmp_path / "history.toml").write_text(text)
    again = session(tmp_path)
    assert again.design == work.design and "history-unreadable-1.toml" in again.said
    again.take({"opening.width": "52 in"})
    again.keep()
    assert (tmp_path / "history-unreadable-1.toml").read_text() == text
    assert session(tmp_path).undo()


def test_the_history_stands_in_for_a_design_that_cannot_be_read(tmp_path):
    work = in_jobs(tmp_path)
    work.start_job("Lake", Design())
    work.take({"opening.width": "50 in"})
    work.keep()
    (tmp_path / "lake" / "design.toml").write_text("half a design")
    again = in_jobs(tmp_path)
    assert again.design == work.design and "history of the job remembers" in again.said
    assert "design-unreadable-1.toml" in again.said
    again.keep()
    assert load(tmp_path / "lake" / "design.toml") == work.design
    (tmp_path / "lake" / "design.toml").write_text("half a design")
    (tmp_path / "lake" / "history.toml").write_text("half a history")
    assert "The example is shown" in in_jobs(tmp_path).said


def test_the_history_stays_small_and_its_end_is_kept(tmp_path):
    """Large steps push out old ones; small ones go back five hundred."""
    work = session(tmp_path)
    for number in range(60):
        work.take({"note": f"{number} " + "x" * 4800})
    work.keep()
    assert (tmp_path / "history.toml").stat().st_size <= LARGEST_HISTORY
    again = session(tmp_path)
    assert again.design == work.design and again.undo() and again.design.note.startswith("58 ")
    for number in range(40):
        again.remove_option(again.put_aside(f"number {number}"))
    again.keep()
    assert len(removed(again.shelf)) == MOST_REMOVED
    assert len(list(tmp_path.glob("option-*.toml"))) <= MOST_KNOWN
    assert session(tmp_path).shelf == again.shelf


# -- jobs ------------------------------------------------------------------------------------------
def test_the_next_notebook_opens_the_same_job(tmp_path):
    one = in_jobs(tmp_path)
    assert one.looking and one.design == EXAMPLE
    one.start_job("Lake house", Design())
    one.take({"opening.width": "50 in"})
    one.pack = "UK ADJ"
    one.keep()
    other = in_jobs(tmp_path, Design())
    assert (other.job, other.design, other.pack) == ("lake-house", one.design, "UK ADJ")
    assert other.steps == one.steps and not other.looking
    other.look_at_example()
    assert other.looking and other.design == Design() and other.pack == "US IRC 2021"
    assert in_jobs(tmp_path).looking, "that is remembered too"


def test_a_change_of_the_example_is_a_job_of_ones_own_and_says_so(tmp_path):
    work = in_jobs(tmp_path)
    work.units = "millimetres"
    work.keep()
    assert work.looking and not list(tmp_path.iterdir()), "looking keeps nothing"
    work.take({"opening.width": "50 in"})
    work.keep()
    assert not work.looking and "job of your own" in work.notice and EXAMPLE.name in work.notice
    assert in_jobs(tmp_path).design == work.design
    assert work.undo() and work.design == EXAMPLE
    work.keep()
    assert work.notice == ""


def test_what_older_notebooks_kept_is_in_the_list_under_its_old_name(tmp_path):
    for name in ("first-look", "client"):
        old = session(tmp_path / name)
        old.take({"opening.width": "50 in"})
        old.keep()
    second = session(tmp_path / "client")
    old.take({"opening.width": "52 in"})
    second.take({"opening.width": "51 in"})
    second.keep()
    old.keep()
    (tmp_path / "pieces").mkdir()
    (tmp_path / "pieces" / "as-built.toml").write_text("")
    found = JobsFolder(tmp_path)
    assert {job.name for job in found.jobs()} == {"First look", "Client", "Client, copy 2"}
    work = in_jobs(tmp_path)
    assert work.looking, "none of them was open"
    work.open_job("client/copy-2")
    assert work.design == old.design and "start again" not in work.said.lower()
    work.rename_job("Client, second try")
    assert "Client, second try" in {job.name for job in found.jobs()}


def test_list_copy_rename_bin_and_put_back(tmp_path):
    work, jobs = in_jobs(tmp_path), JobsFolder(tmp_path)
    work.start_job("Lake house", change(Design(), {"name": "Lake house"}))
    work.take({"opening.width": "50 in"})
    work.put_aside("narrow")
    work.keep()
    key = jobs.copy("lake-house")
    assert jobs.named(key) == "Lake house, copy" and key != "lake-house"
    work.open_job(key)
    assert [o.name for o in work.shelf] == ["narrow"] and len(work.steps) == 3
    work.rename_job("Lake, arch")
    assert work.design.name == "Lake house", "its sheet has another name than the list"
    work.open_job("lake-house")
    work.rename_job("Lake place")
    assert work.design.name == "Lake place" == jobs.named("lake-house")
    assert work.job == "lake-house", "the folder stays, whoever has it open"
    binned = jobs.bin(key)
    assert [job.name for job in jobs.jobs()] == ["Lake place"]
    assert [(job.key, job.name) for job in jobs.binned()] == [(binned, "Lake, arch")]
    assert jobs.design(jobs.put_back(binned)) == load(tmp_path / key / "design.toml")
    assert jobs.binned() == () and len(jobs.jobs()) == 2
    for wrong in ("../x", "bin", "", "no-such", str(tmp_path)):
        for do in (jobs.bin, jobs.copy, jobs.design, jobs.put_back, work.open_job):
            with pytest.raises(InputError, match="no job"):
                do(wrong)
    with pytest.raises(InputError, match="no name"):
        jobs.rename("lake-house", " \n")
    assert work.design.name == "Lake place"


def test_a_job_of_an_older_notebook_keeps_its_name_in_the_bin(tmp_path):
    """It has no file for its name; in the bin another has its folder's name already."""
    work, jobs = in_jobs(tmp_path), JobsFolder(tmp_path)
    for _ in range(2):
        work.start_job("Lake", change(Design(), {"name": "Lake"}))
        work.keep()
        (tmp_path / "lake" / NAMED).unlink()
        name = jobs.named("lake")
        binned = jobs.bin("lake")
        assert dict((job.key, job.name) for job in jobs.binned())[binned] == name
    assert len({job.key for job in jobs.binned()}) == 2
    assert {job.name for job in jobs.binned()} == {name}


def test_a_copy_takes_the_set_beside_it_and_leaves_what_was_measured(tmp_path):
    work, jobs = in_jobs(tmp_path), JobsFolder(tmp_path)
    work.start_job("Lake", Design())
    (tmp_path / "lake" / "sets").mkdir()
    mine = (SETS / "small.toml").read_text()
    (tmp_path / "lake" / "sets" / "mine.toml").write_text(mine)
    (tmp_path / "lake" / "as-built.toml").write_text("")
    (tmp_path / "lake" / "papers.pdf").write_bytes(b"paper")
    design = load_text('pieces.set = "mine"\n', "test", tmp_path / "lake")
    work.put(design)
    work.keep()
    copy = tmp_path / jobs.copy("lake")
    assert load(copy / "design.toml") == design
    assert sorted(path.name for path in copy.iterdir()) == [
        *("design.toml", "history.toml", "job.toml", "reader.toml", "sets")
    ]


@settings(deadline=None, max_examples=32)
@given(st.lists(st.one_of(st.sampled_from(HOSTILE), st.text(max_size=30)), min_size=1, max_size=5))
def test_any_name_makes_a_job_of_its_own_inside_the_folder(tmp_path_factory, names):
    folder = tmp_path_factory.mktemp("jobs")
    jobs, made = JobsFolder(folder / "kept"), []
    for name in names:
        try:
            key = jobs.start(name)
        except InputError as error:
            assert "no name" in str(error)
            continue
        save(Design(), folder / "kept" / key / "design.toml")
        made.append(key)
        jobs.remember(key)
        assert jobs.open_key() == key and jobs.named(key)
    assert len(set(made)) == len(made)
    assert {job.key for job in jobs.jobs()} == set(made)
    assert [path.name for path in folder.iterdir()] == ["kept"] * bool(made)
    for key in made:
        jobs.put_back(jobs.bin(key))
    assert {job.key for job in jobs.jobs()} == set(made)


def test_two_sessions_on_one_job_both_keep_their_work(tmp_path):
    one = in_jobs(tmp_path)
    one.start_job("Lake", Design())
    two = in_jobs(tmp_path)
    one.take({"opening.width": "50 in"})
    one.keep()
    two.take({"opening.width": "44 in"})
    two.keep()
    assert one.notice == "" and "copy-2, in My jobs as Lake, copy 2." in two.notice
    assert two.job == "lake/copy-2", "what is done to the open job is done to this one"
    assert load(tmp_path / "lake" / "design.toml") == one.design
    assert load(tmp_path / "lake" / "copy-2" / "design.toml") == two.design
    two.open_job("lake")
    assert two.design == one.design and two.notice == "" and "copy-2" in two.said
    assert {job.name for job in two.jobs.jobs()} == {"Lake", "Lake, copy 2"}


def test_a_job_that_went_into_the_bin_elsewhere_is_written_again(tmp_path):
    work = in_jobs(tmp_path)
    work.start_job("Lake", Design())
    shutil.rmtree(tmp_path / "lake")
    work.take({"opening.width": "50 in"})
    work.keep()
    assert load(tmp_path / "lake" / "design.toml") == work.design
    shutil.rmtree(tmp_path / "lake")
    assert in_jobs(tmp_path).looking, "the one that was open is gone"


def test_a_page_without_a_list_of_jobs_says_so(tmp_path):
    with pytest.raises(InputError, match="keeps no list of jobs"):
        session(tmp_path).start_job("Lake", Design())


def test_a_folder_that_cannot_be_written_is_said_and_nothing_is_lost(tmp_path):
    (tmp_path / "kept").write_text("no folder")
    work = in_jobs(tmp_path / "kept")
    with pytest.raises(InputError, match="cannot be written"):
        work.start_job("Lake", Design())
    work.take({"opening.width": "50 in"})
    with pytest.raises(InputError, match="cannot be written"):
        work.keep()
    assert work.design.opening.width == pytest.approx(50 * INCH)


def test_text_of_a_kept_option_is_a_design_file(tmp_path):
    work = session(tmp_path)
    work.put_aside("plain")
    work.keep()
    text = (tmp_path / "option-1.toml").read_text()
    assert text.replace("# Put aside as: plain\n", "") == text_of(EXAMPLE)
    assert kept_job.belongs("option-1.toml")


def test_a_moment_that_cannot_be_read_is_like_no_design():
    """Its text is of another version, or somebody wrote in it."""

    def unread(number):
        raise InputError("It cannot be read.")

    there = SimpleNamespace(design_of=unread, at=0)
    assert History._reads_as(there, Design()) is False
    there.design_of = lambda number: Design()
    assert History._reads_as(there, Design()) is True


def test_a_history_of_one_long_step_is_written_whole():
    long = "x" * LARGEST_HISTORY
    history = History([Moment("", (), Design(), ())], None, None, [f'note = "{long}"'])
    assert long in history_text(history)


def test_lines_with_three_quotes_in_them_come_back_as_they_stood(tmp_path):
    lines = ["note = '''one \\\\ two", '"""three""" \'\'\'']
    path = tmp_path / "history.toml"
    path.write_text(history_text(History([Moment("begun", (), Design(), ())], None, None, lines)))
    again = read_history(path, None, tmp_path)
    assert again.base == lines and again.at == 0 and not again.moving


@pytest.mark.parametrize("words", ["['0', 1, []]", "[0, true, []]", "[0, 1.0, []]", "[0, 1, [3]]"])
def test_a_step_whose_lines_are_not_counted_is_no_step(tmp_path, words):
    path = tmp_path / "history.toml"
    step = f"[[step]]\ndid = 'b'\nlines = [{words}]\n"
    head = "at = 0\nmoving = false\nbase = 'x'\n[[step]]\ndid = 'a'\n"
    path.write_text(head + step.replace(words, "[0, 1, []]"))
    assert len(read_history(path, None, tmp_path).moments) == 2
    path.write_text(head + step)
    with pytest.raises(InputError) as refused:
        read_history(path, None, tmp_path)
    assert str(refused.value) == f"{path} is no history of a job: its steps cannot be followed."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("history", "a file that the workbench wrote", str(path))


def test_a_history_of_another_version_stands_where_its_design_stands():
    """The text of its step is written otherwise than today, and reads as the same design."""
    steps = [Moment("begun", (), None, ()), Moment("again", (), None, ())]
    history = History(steps, None, None, ["[opening]", 'width = "4 ft"'])
    wide = change(Design(), {"opening.width": "48 in"})
    history.take_up(wide, ())
    assert (history.at, len(history.moments)) == (0, 2) and history.now.design is wide
    history.take_up(change(Design(), {"opening.width": "50 in"}), ())
    assert history.moments[-1].did == ELSEWHERE and history.at == len(history.moments) - 1


def test_an_option_that_was_written_by_hand_gets_its_name_on_top():
    text = option_text("[opening]\nwidth = '4 ft'\n", 1, (Option(1, "wide"),))
    assert text == "# Put aside as: wide\n[opening]\nwidth = '4 ft'\n"


def test_a_name_in_letters_of_many_bytes_is_cut_to_what_a_disk_takes():
    """Four bytes a letter, three a letter, one: at most 120 bytes, and 40 letters."""
    for letter, most in (("𐐨", 30), ("小", 40), ("a", 40)):
        assert in_any_letters("b" + letter * 50, set(), "student") == "b" + letter * (most - 1)


def test_a_disk_that_takes_nothing_is_said_with_the_place(tmp_path, monkeypatch):
    work, jobs = in_jobs(tmp_path), JobsFolder(tmp_path)
    work.start_job("Lake", Design())
    work.keep()

    def full(*where):
        raise OSError(28, "No space left on device")

    for module, name, do, place in (
        (jobs_folder, "write_whole", jobs.copy, tmp_path),
        (Path, "rename", jobs.bin, tmp_path / "lake"),
    ):
        with monkeypatch.context() as patched, pytest.raises(InputError) as refused:
            patched.setattr(module, name, full)
            do("lake")
        assert str(refused.value) == f"{place} cannot be written: No space left on device."
        said = refused.value.name, refused.value.allowed, refused.value.received
        assert said == ("folder", "a folder that can be written to", str(place))
    assert "lake" in {job.key for job in jobs.jobs()}


def test_a_folder_that_another_made_meanwhile_is_left_to_him(tmp_path, monkeypatch):
    made = []

    def overtaken(name, taken):
        found = folder_for(name, taken)
        if not made:
            (tmp_path / found).mkdir()
        made.append(found)
        return found

    monkeypatch.setattr(jobs_folder, "folder_for", overtaken)
    assert JobsFolder(tmp_path)._new(tmp_path, "Lake") == tmp_path / "lake-2"
    assert made == ["lake", "lake-2"]
