"""A set built on the screen, one piece at a time."""

import asyncio
import re
from datetime import datetime

import pytest

from fireplace_calc import change
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import INCH, MILLIMETRES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.pieces.growing import SHARES
from fireplace_calc.editing.designfile import load
from fireplace_calc.editing.jobs.jobs_folder import JobsFolder
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.geometry.visible.stages import Stages
from fireplace_calc.geometry.visible.viewpoint import SECTION
from fireplace_calc.panels import html
from fireplace_calc.panels.picture.turning import Turning
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.setting import as_it_stands, kept_record
from fireplace_calc.panels.setting.kept_record import KeptRecord
from fireplace_calc.panels.setting.open_job import open_set
from fireplace_calc.panels.step_by_step import StepByStep
from fireplace_calc.pieces.standing.as_built_file import read_as_built


def refused(act):
    with pytest.raises(InputError) as wrong:
        act()
    return wrong.value


@pytest.fixture(scope="module")
def grown():
    return StepByStep(load(example("boathouse")))


def test_every_piece_of_the_set_has_one_step_and_the_lining_one(grown):
    placed = [card.placed.name for card in grown.pictures.cards if card.placed]
    assert len(placed) == len(set(placed)) == len(grown.pictures.made.placed)
    assert grown.slider.max == len(placed) + 1


def test_the_slider_runs_from_the_bare_footing_to_the_last_piece(grown):
    seen = set()
    for step in (0, 1, 20, grown.slider.max):
        grown.go(step)
        seen.add(grown.board.widget.drawn["bodies"][0])
        assert (f"Step {step} of" in grown.card.value) == (step > 0)
    assert len(seen) == 4
    grown.go(10_000)
    assert grown.slider.value == grown.slider.max
    grown.go(-5)
    assert grown.slider.value == 0 and "bare footing" in grown.card.value


def test_the_card_is_read_in_the_readers_units(grown):
    grown.go(3)
    feet = grown.card.value
    grown.read_in(MILLIMETRES)
    assert " mm" in grown.card.value and grown.card.value != feet


def test_dark_paper_is_another_picture(grown):
    grown.go(5)
    light = grown.board.widget.drawn
    grown.paint_on("dark")
    assert grown.board.widget.drawn != light


def test_a_design_without_a_set_is_refused():
    with pytest.raises(InputError, match="without a set of pieces"):
        StepByStep(change(Design(), {"opening.width": "40 in"}))


def test_another_set_has_other_steps():
    small = change(Design(), {"pieces.set": "small"})
    assert StepByStep(small).slider.max != StepByStep(load(example("boathouse"))).slider.max


@pytest.mark.whole
def test_the_cards_are_printed_where_one_works(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    small = StepByStep(change(Design(), {"pieces.set": "small"}))
    small.print_cards()
    assert (tmp_path / "cards.pdf").read_bytes().startswith(b"%PDF")
    assert f"{small.slider.max + 3} pages" in small.said.value  # delivery, staging and pole before
    monkeypatch.setattr("fireplace_calc.panels.step_by_step.CARDS", "nowhere/cards.pdf")
    small.print_cards()
    assert "cards.pdf" in small.said.value and "a card for every step" not in small.said.value


SMALL = {"pieces.set": "small", "flue.sections": 12}


def opened(folder=None, changes=SMALL, **how):
    panel = StepByStep(change(Design(), changes), keep=folder, **how)
    panel.open()
    panel.measured.now = lambda: datetime(2027, 5, 3, 10, 40, 12, 345)
    return panel.measured


def enter(measured, level, **more):
    for key, text in {"level": level, **more}.items():
        measured.form.boxes[key].value = text
    measured.enter()


def test_a_closed_fold_makes_nothing():
    panel = StepByStep(change(Design(), SMALL), step=7)
    assert panel.measured is None
    panel.go(8)
    assert panel.measured is None
    panel.open()
    assert panel.measured is not None
    assert panel.measured.form.lift.value == panel.up.plan.chain[0].name  # nothing was measured yet


def test_a_top_is_entered_in_the_readers_units_and_the_next_comes_up(tmp_path):
    measured = opened(tmp_path)
    first, second = measured.up.plan.chain[0].name, measured.up.plan.chain[1].name
    assert measured.form.lift.value == first
    before = measured.board.widget.drawn
    enter(measured, "3 1/2", plumb="1/16", by="A. B.", note="dry day")
    (top,) = measured.kept.built.tops
    assert (top.lift, top.level, top.plumb) == (
        first,
        pytest.approx(3.5 * INCH),
        pytest.approx(INCH / 16),
    )
    assert (top.by, top.note, top.when) == ("A. B.", "dry day", datetime(2027, 5, 3, 10, 40, 12))
    assert measured.form.lift.value == second
    assert measured.form.boxes["level"].value == "" and measured.form.boxes["by"].value == "A. B."
    assert measured.board.widget.drawn != before
    assert "dry day" in measured.table.value and "Next" in measured.words.value
    measured.read_in(MILLIMETRES)
    enter(measured, "300", left_right="-2")
    top = measured.kept.built.tops[-1]
    assert (top.level, top.left_right) == (pytest.approx(0.3), pytest.approx(-0.002))
    assert "2 mm left high" in measured.table.value
    enter(measured, "1'-10 1/4\"")
    assert measured.kept.built.tops[-1].level == pytest.approx(22.25 * INCH)


@pytest.mark.parametrize(
    ("boxes", "said"),
    [
        ({"level": ""}, "Top stands at&quot; is empty"),
        ({"level": "about three"}, "Top stands at&quot; is .*no length"),
        ({"level": "3 1/2", "plumb": "1/0"}, "divides by nothing"),
        ({"level": "3 1/2", "left_right": "two"}, "Right side high by"),
        ({"level": "900 m"}, "at most 100 m"),
    ],
)
def test_what_is_no_measure_changes_nothing(tmp_path, boxes, said):
    measured = opened(tmp_path)
    enter(measured, **boxes)
    assert measured.kept.built.tops == () and not list(tmp_path.iterdir())
    assert re.search(said, measured.said.value) and 'role="alert"' in measured.said.value


def test_it_is_back_after_a_restart_and_undo_goes_no_further(tmp_path):
    measured = opened(tmp_path)
    enter(measured, "3 1/2", by="A. B.")
    enter(measured, "11 7/8")
    kept = tmp_path / "as-built.toml"
    assert len(read_as_built(kept.read_text()).tops) == 2
    measured.undo()
    assert measured.form.boxes["level"].value == "11 7/8"
    assert measured.form.lift.value == measured.up.plan.chain[1].name
    assert len(read_as_built(kept.read_text()).tops) == 1
    again = opened(tmp_path)
    assert again.kept.built == measured.kept.built and "Picked up" in again.said.value
    assert again.form.lift.value == measured.up.plan.chain[1].name
    again.undo()
    assert "Nothing to take back" in again.said.value and len(again.kept.built.tops) == 1


def test_what_no_joint_cures_is_said_while_it_can_be_lifted_off():
    """The lintel's seat is wanted where the joints just reach; an inch low on the way is never made up."""
    wanted = {**SMALL, "pieces.opening_wanted": "24-1/2 in"}
    measured = opened(None, wanted)
    tops = measured.up.plan.tops
    assert 'role="alert"' not in measured.words.value
    enter(measured, f"{tops[0] / INCH}")
    assert 'role="alert"' not in measured.words.value
    enter(measured, f"{tops[1] / INCH - 1}")
    assert 'role="alert"' in measured.words.value and "Lift off" in measured.words.value
    measured.undo()
    assert 'role="alert"' not in measured.words.value


def test_set_again_takes_off_what_stood_on_it(tmp_path):
    measured = opened(tmp_path)
    for level in ("3 1/2", "11 7/8", "20 1/4"):
        enter(measured, level)
    measured.form.choose(measured.up.plan.chain[1].name)
    measured.form.again.value = True
    enter(measured, "11 15/16")
    assert measured.form.again.value is False
    assert measured.form.lift.value == measured.up.plan.chain[2].name
    assert "Lifted off and set again." in measured.table.value


def test_a_record_of_another_set_stays_and_a_new_one_goes_elsewhere(tmp_path):
    enter(opened(tmp_path, {"pieces.set": "wide"}), "3 1/2")
    kept = (tmp_path / "as-built.toml").read_text()
    assert read_as_built(kept).tops[0].lift
    (tmp_path / "as-built.toml").write_text(kept.replace('lift = "', 'lift = "attic '))
    before = (tmp_path / "as-built.toml").read_text()
    measured = opened(tmp_path)
    assert "record of another set" in measured.said.value and measured.kept.built.tops == ()
    enter(measured, "3 1/2")
    assert (tmp_path / "as-built.toml").read_text() == before
    assert len(read_as_built((tmp_path / "copy-2" / "as-built.toml").read_text()).tops) == 1
    assert "copy-2" in measured.said.value


def test_a_record_that_cannot_be_read_is_set_aside(tmp_path):
    (tmp_path / "as-built.toml").write_text("[[top")
    measured = opened(tmp_path)
    assert "set aside as as-built-unreadable-1.toml" in measured.said.value
    enter(measured, "3 1/2")
    assert (tmp_path / "as-built-unreadable-1.toml").read_text() == "[[top"
    assert len(read_as_built((tmp_path / "as-built.toml").read_text()).tops) == 1


def test_a_folder_that_cannot_be_written_is_said_and_nothing_is_taken(tmp_path):
    (tmp_path / "job").write_text("a file, not a folder")
    measured = opened(tmp_path / "job")
    enter(measured, "3 1/2")
    assert "Not kept" in measured.said.value and measured.kept.built.tops == ()
    assert measured.form.boxes["level"].value == "3 1/2"


def test_an_entry_that_cannot_be_taken_back_stays_and_is_said(tmp_path, monkeypatch):
    measured = opened(tmp_path)
    enter(measured, "3 1/2")
    kept = measured.kept.built

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(measured.kept.folder, "keep", full)
    measured.undo()
    said = f"Not kept: {tmp_path} cannot be written: No space left on device."
    assert measured.said.value == html.trouble(said) and measured.kept.built is kept
    monkeypatch.undo()
    measured.undo()
    assert measured.kept.built.tops == () and "Taken back" in measured.said.value


def test_a_record_that_cannot_be_printed_is_said(tmp_path, monkeypatch):
    measured = opened(tmp_path)
    asked = []

    def refuse(*how):
        asked.append(how)
        raise InputError("as-built.pdf cannot be written.")

    monkeypatch.setattr(as_it_stands, "print_record", refuse)
    measured.print_record()
    assert measured.said.value == html.trouble("as-built.pdf cannot be written.")
    assert asked == [
        (measured.design, measured.kept.built, tmp_path / "as-built.pdf", measured.units)
    ]


def test_a_folder_that_cannot_be_looked_into_begins_no_record(tmp_path, monkeypatch):
    def refuse(folder):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(KeptFolder, "look", refuse)
    record = KeptRecord("Lake", (), tmp_path)
    assert record.said == f"{tmp_path} cannot be read: Permission denied."
    assert record.built.tops == ()


def test_a_record_that_can_be_neither_read_nor_renamed_is_left(tmp_path, monkeypatch):
    (tmp_path / "as-built.toml").write_text("[[top")
    first = KeptRecord("Lake", (), tmp_path).said
    why, _, end = first.partition(" It was set aside as ")
    assert end == "as-built-unreadable-1.toml; a new record begins."
    assert why.startswith("The record cannot be read: Expected ']]'")

    def refuse(path):
        raise PermissionError(13, "Permission denied", str(path))

    (tmp_path / "as-built.toml").write_text("[[top")
    monkeypatch.setattr(kept_record, "set_aside", refuse)
    record = KeptRecord("Lake", (), tmp_path)
    assert record.said == f"{why} It could not be renamed and is left as it is."
    assert (tmp_path / "as-built.toml").read_text() == "[[top"


def test_a_fold_that_is_closed_again_keeps_what_is_in_it():
    panel = StepByStep(change(Design(), SMALL))
    panel.fold.selected_index = None
    panel._unfolded()
    assert panel.measured is None
    panel.open()
    made = panel.measured
    panel.fold.selected_index = None
    panel.open()
    assert made is not None and panel.measured is made
    assert panel.fold.children[0].children == (made.widget,)


def test_the_record_is_printed_beside_what_is_kept(tmp_path, monkeypatch):
    measured = opened(tmp_path / "job")
    enter(measured, "3 1/2")
    measured.print_record()
    assert (tmp_path / "job" / "as-built.pdf").read_bytes().startswith(b"%PDF")
    assert "pages" in measured.said.value
    monkeypatch.chdir(tmp_path)
    unkept = opened()
    assert "No folder was named" in unkept.said.value
    unkept.print_record()
    assert (tmp_path / "as-built.pdf").exists()


def test_the_slider_brings_the_hold_point_up():
    panel = StepByStep(change(Design(), SMALL))
    panel.open()
    card = [c for c in panel.pictures.cards if c.hold][3]
    panel.go(card.number)
    assert panel.measured.form.lift.value == card.lift
    panel.go(card.number + 1)
    assert panel.measured.form.lift.value == card.lift  # no hold point: it stays
    panel.read_in(MILLIMETRES)
    assert panel.measured.units == MILLIMETRES
    light = panel.measured.board.widget.drawn
    panel.paint_on("dark")
    assert panel.measured.board.widget.drawn != light


def test_the_pieces_in_space_are_sent_once_and_then_a_number(monkeypatch):
    """Slider and view are tied on the page: the kernel sends the view nothing at a step."""
    small = StepByStep(change(Design(), {"pieces.set": "small"}), step=2)
    assert small.turning.step == 2
    tie = small.tie
    assert (tie.source, tie.target) == ((small.slider, "value"), (small.turning, "step"))
    sent = []
    monkeypatch.setattr(Turning, "send_state", lambda self, key=None: sent.append(key))
    for step in (0, 5, 9):
        small.go(step)
    assert sent == []
    small.turning.step = 4
    small.read_in(MILLIMETRES)
    assert [*map(str, sent)] == ["step", "units"]


def test_the_picture_leads_and_words_follow():
    """On a page, whose loop runs."""

    async def slide():
        panel = StepByStep(change(Design(), SMALL))
        panel.go(2)
        before = panel.board.widget.drawn
        panel.go(3)
        assert panel.board.widget.drawn != before and "Step 3" not in panel.card.value
        while "Step 3" not in panel.card.value:
            await asyncio.sleep(0.01)
        seen = len(panel.pictures.stages(SECTION)._seen)
        while len(panel.pictures.stages(SECTION)._seen) < seen + 2:
            await asyncio.sleep(0.01)  # later steps are worked out while nobody asks
        standing = panel.board.widget.drawn
        panel.slider.value = 3
        assert panel.board.widget.drawn is standing, "it stands already"

    asyncio.run(asyncio.wait_for(slide(), 300))


def test_what_was_worked_out_ahead_is_not_worked_out_again(monkeypatch):
    panel = StepByStep(change(Design(), SMALL))
    assert len(list(panel.pictures.ahead(eye for _, eye, _ in SHARES))) == 3 * (
        len(panel.pictures.drawn) + 1
    )
    monkeypatch.setattr(Stages, "_with", None)
    for step in (panel.slider.max, 3, 17):
        panel.go(step)
        assert f"Step {step} of" in panel.card.value


def test_the_job_that_is_open_is_set_where_it_has_a_set(tmp_path):
    """What is measured is kept with the job; a laid one leaves the example, and says so."""
    example = change(Design(), {"pieces.set": "middling"})
    work = Session(example, "US IRC 2021", "feet-inches", jobs=tmp_path)
    assert StepByStep(example, jobs=tmp_path).design == example
    work.start_job("Lake", change(Design(), {"pieces.set": "small"}))
    page = StepByStep(example, jobs=tmp_path)
    assert page.design == work.design and "This is Lake" in page.said.value
    assert page.keep == tmp_path / "lake"
    path = tmp_path / "lake" / "design.toml"
    whole = path.read_text()
    path.write_text("half a design")
    page = StepByStep(example, jobs=tmp_path)
    why = str(refused(lambda: JobsFolder(tmp_path).design("lake")))
    assert open_set(tmp_path, example) == (
        example,
        tmp_path / "pieces",
        f"{why} The example is shown.",
    )
    assert page.design == example and page.keep == tmp_path / "pieces"
    path.write_text(whole)
    work.take({"pieces.set": "", "method": "laid"})
    work.keep()
    page = StepByStep(example, jobs=tmp_path)
    assert page.design == example and "without a set" in page.said.value
    assert page.keep == tmp_path / "pieces"
