"""What a reader has on the table is kept: after every change, through a killed kernel, beside files
that cannot be read, and beside somebody else who works in the same folder.
"""

import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest
from jupyter_client.manager import start_new_kernel
from sampled import sampled
from test_panels import words_in

from fireplace_calc import change, load, save
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.drawing.composed import compose
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.editing.jobs.options import MOST_OPTIONS
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.panels import panel
from fireplace_calc.panels.session import Session

EXAMPLE = Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml"
ENDLESS = """
from fireplace_calc import load
from fireplace_calc.drawing.composed import compose
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.panels import panel
made = panel(load({example!r}), keep={folder!r}, folds=("checks",))
for n in range(100000):
    made.set_input("opening.width", f"{{30 + n % 60}} in")
    print(30 + n % 60, flush=True)
"""
RIVAL = """
from fireplace_calc import load
from fireplace_calc.panels.session import Session
made = Session(load({example!r}), "US IRC 2021", "feet-inches", {folder!r})
made.take({{"name": {name!r}}})
print("ready", flush=True)
input()
for n in range(100):
    made.take({{"opening.width": f"{{30 + n % 20}} in"}})
    made.keep()
print(made.folder.path)
"""


def session(folder, first=None) -> Session:
    return Session(load(EXAMPLE) if first is None else first, "US IRC 2021", "feet-inches", folder)


def test_design_options_code_and_units_come_back(tmp_path):
    one = session(tmp_path / "new" / "folder")
    one.take({"opening.width": "50 in"})
    one.put_aside()
    one.take({"opening.width": "52 in"})
    one.pack, one.units = "UK ADJ", "millimetres"
    one.keep()
    other = session(tmp_path / "new" / "folder")
    assert (other.design, other.options, other.pack, other.units) == (
        one.design,
        one.options,
        "UK ADJ",
        "millimetres",
    )
    assert "left" in other.said
    other.remove_option(1)
    other.keep()
    assert session(tmp_path / "new" / "folder").options == []


def test_names_that_an_older_job_kept_apart_are_taken_over(tmp_path):
    """What its design says goes before them."""
    save(change(load(EXAMPLE), {"job.drawn": "Oak Hearths"}), tmp_path / "design.toml")
    words = 'pack = "UK ADJ"\npaper_client = "A. Client"\npaper_designer = "Elm Hearths"\n'
    (tmp_path / "reader.toml").write_text(words)
    for _ in range(2):
        opened = session(tmp_path)
        assert opened.pack == "UK ADJ"
        job = opened.design.job
        assert (job.client, job.drawn, job.checked) == ("A. Client", "Oak Hearths", "")
        opened.keep()
        assert "paper_" not in (tmp_path / "reader.toml").read_text()


def test_a_design_file_that_is_gone_is_the_example_with_the_past_that_is_known(tmp_path):
    work = session(tmp_path)
    work.take({"opening.width": "50 in"})
    work.keep()
    (tmp_path / "design.toml").unlink()
    again = session(tmp_path)
    assert again.design == load(EXAMPLE) and again.said == ""
    assert [moment.did for moment in again.history.moments] == ["Beginning", "Opening width 4'-2\""]
    assert again.history.at == 0 and not again.undo() and again.redo()
    assert again.design == work.design


def test_a_paper_that_cannot_be_laid_beside_the_job_is_not_laid(tmp_path, monkeypatch):
    work = session(tmp_path)
    assert work.lay("order.csv", b"1") == tmp_path / "order.csv"
    assert session(None).lay("order.csv", b"1") is None

    def refuse(folder, name, content):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(KeptFolder, "lay", refuse)
    assert work.lay("papers.pdf", b"%PDF") is None
    assert not (tmp_path / "papers.pdf").exists()


def test_an_empty_folder_begins_with_the_example(tmp_path):
    assert session(tmp_path).design == load(EXAMPLE) and session(tmp_path).said == ""


def test_a_file_that_cannot_be_read_is_set_aside_and_never_written_over(tmp_path):
    for number in (1, 2):
        (tmp_path / "history.toml").unlink(missing_ok=True)
        (tmp_path / "design.toml").write_text(f"half a design {number}")
        found = session(tmp_path)
        assert found.design == load(EXAMPLE) and f"design-unreadable-{number}.toml" in found.said
        found.take({"opening.width": "50 in"})
        found.keep()
        assert (
            tmp_path / f"design-unreadable-{number}.toml"
        ).read_text() == f"half a design {number}"
    (tmp_path / "reader.toml").write_text('pack = "no such book"\nunits = 7')
    assert session(tmp_path).pack == "US IRC 2021" and session(tmp_path).units == "feet-inches"


def test_an_option_that_cannot_be_read_is_set_aside_alone(tmp_path):
    one = session(tmp_path)
    for width in ("50 in", "52 in"):
        one.take({"opening.width": width})
        one.put_aside()
    one.keep()
    (tmp_path / "option-1.toml").write_text("half an option")
    other = session(tmp_path)
    assert other.design == one.design and other.options == [one.options[1]]
    assert "option-1-unreadable-1.toml" in other.said and "example is shown" not in other.said
    other.keep()
    assert (tmp_path / "option-1-unreadable-1.toml").read_text() == "half an option"
    assert session(tmp_path).options == other.options


def test_a_kept_file_cut_short_anywhere_is_set_aside_and_never_the_plain_fireplace(tmp_path):
    """A full disk or a lost cable may leave any beginning of a file, an empty one too."""
    text = text_of(load(EXAMPLE)).encode()
    for end in (0, 1, 20, 200, len(text) // 2, len(text) - 100, len(text) - 2):
        folder = tmp_path / str(end)
        folder.mkdir()
        (folder / "design.toml").write_bytes(text[:end])
        found = session(folder, change(load(EXAMPLE), {"name": "first"}))
        assert found.design.name == "first" and "design-unreadable-1.toml" in found.said, end
        found.keep()
        assert (folder / "design-unreadable-1.toml").read_bytes() == text[:end]


def test_a_file_that_can_be_neither_read_nor_renamed_stays_as_it_is(tmp_path, monkeypatch):
    (tmp_path / "design.toml").write_text("half a design")

    def refuse(path):
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("fireplace_calc.editing.jobs.kept_job.set_aside", refuse)
    found = session(tmp_path)
    assert "left as it is" in found.said
    found.keep()
    assert (tmp_path / "design.toml").read_text() == "half a design"
    assert load(tmp_path / "copy-2" / "design.toml") == found.design


def test_two_who_keep_in_one_folder_both_keep_their_work(tmp_path):
    one, two = session(tmp_path), session(tmp_path)
    one.keep()
    two.keep()
    assert one.notice == two.notice == "", "both still have the same"
    one.take({"opening.width": "50 in"})
    one.put_aside()
    one.keep()
    two.take({"opening.width": "44 in"})
    two.keep()
    assert load(tmp_path / "design.toml") == one.design
    assert load(tmp_path / "copy-2" / "design.toml") == two.design
    assert one.notice == "" and "copy-2" in two.notice and str(tmp_path) in two.notice
    for taker, width in ((one, "51 in"), (two, "45 in"), (one, "52 in")):
        taker.take({"opening.width": width})
        taker.keep()
    again, copy = session(tmp_path), session(tmp_path / "copy-2")
    assert (again.design, again.options) == (one.design, one.options)
    assert (copy.design, copy.options) == (two.design, [])
    assert "copy-2" in again.said
    third = session(tmp_path)
    again.take({"opening.width": "60 in"})
    again.keep()
    third.pack = "UK ADJ"
    third.keep()
    assert "copy-3" in third.notice and session(tmp_path / "copy-3").pack == "UK ADJ"


def test_two_who_begin_in_an_empty_folder_both_keep_their_work(tmp_path):
    one, two = session(tmp_path), session(tmp_path)
    for taker, width in ((one, "50 in"), (two, "44 in")):
        taker.take({"opening.width": width})
        taker.keep()
    assert load(tmp_path / "design.toml") == one.design
    assert load(tmp_path / "copy-2" / "design.toml") == two.design


def test_a_cell_run_again_goes_on_in_the_same_folder(tmp_path):
    """The panel of the first run is still there, though nobody looks at it; whoever moves it later
    gets a copy.
    """
    first = panel(load(EXAMPLE), keep=tmp_path, folds=())
    first.set_input("opening.width", "50 in")
    second = panel(load(EXAMPLE), keep=tmp_path, folds=())
    assert second.design == first.design
    second.set_input("opening.width", "52 in")
    assert second.session.notice == "" and "copy" not in second.said.value
    assert load(tmp_path / "design.toml") == second.design
    first.set_input("opening.width", "44 in")
    assert load(tmp_path / "design.toml") == second.design
    assert load(tmp_path / "copy-2" / "design.toml") == first.design
    assert str(tmp_path / "copy-2") in first.said.value
    first.set_input("opening.width", "45 in")
    assert str(tmp_path / "copy-2") in first.said.value, "said as long as it is so"


def test_a_paper_is_not_laid_over_somebody_elses(tmp_path):
    one, two = session(tmp_path), session(tmp_path)
    one.take({"opening.width": "50 in"})
    one.keep()
    assert one.lay("papers.pdf", b"one") == tmp_path / "papers.pdf"
    assert two.lay("papers.pdf", b"two") == tmp_path / "copy-2" / "papers.pdf"
    assert (tmp_path / "papers.pdf").read_bytes() == b"one" and "copy-2" in two.notice
    assert load(tmp_path / "copy-2" / "design.toml") == two.design


def test_a_folder_that_somebody_emptied_is_filled_again(tmp_path):
    one = session(tmp_path / "kept")
    one.keep()
    shutil.rmtree(tmp_path / "kept")
    one.take({"opening.width": "50 in"})
    one.keep()
    assert load(tmp_path / "kept" / "design.toml") == one.design and one.notice == ""


@pytest.mark.whole
def test_two_processes_that_write_at_once_lose_nothing(tmp_path):
    """Both begin in the same empty folder; each finds its last change where it says it is kept."""
    rivals = {
        name: subprocess.Popen(
            [
                sys.executable,
                "-c",
                RIVAL.format(example=str(EXAMPLE), folder=str(tmp_path), name=name),
            ],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        for name in ("one", "two")
    }
    for rival in rivals.values():
        assert rival.stdout.readline() == "ready\n"
    for rival in rivals.values():
        rival.stdin.write("go\n")
        rival.stdin.flush()
    kept = {name: Path(rival.communicate()[0].strip()) for name, rival in rivals.items()}
    assert set(kept.values()) == {tmp_path, tmp_path / "copy-2"}
    for name, folder in kept.items():
        last = load(folder / "design.toml")
        assert (last.name, last.opening.width) == (name, pytest.approx(49 * INCH))


def test_there_is_room_for_six_options():
    full = session(None)
    assert MOST_OPTIONS == 6
    for _ in range(MOST_OPTIONS):
        full.put_aside()
    with pytest.raises(InputError, match="remove one"):
        full.put_aside()


def test_a_folder_that_cannot_be_written_is_said_and_the_work_goes_on(tmp_path):
    (tmp_path / "file").write_text("no folder")
    made = panel(load(EXAMPLE), keep=tmp_path / "file" / "under", folds=())
    made.set_input("opening.width", "50 in")
    assert "cannot be written" in made.said.value and made.design.opening.width == pytest.approx(
        1.27
    )


@pytest.fixture
def no_section(monkeypatch):
    """A fault of our own in one of the four pictures, for as long as the switch is on."""
    switch = {"on": True}
    drawn = compose.draw_view

    def fail(view, *what, **how):
        if view == "section" and switch["on"]:
            raise ZeroDivisionError("of our own making")
        return drawn(view, *what, **how)

    monkeypatch.setattr(compose, "draw_view", fail)
    monkeypatch.setattr(compose, "_kept", {})
    return switch


def shown(made) -> dict:
    return {name: (sent.told, sent.body) for name, sent in made.stage.shown.items()}


def test_a_fault_in_a_picture_neither_ends_keeping_nor_the_panel(tmp_path, no_section, caplog):
    no_section["on"] = False
    made = panel(load(EXAMPLE), keep=tmp_path, folds=("checks",))
    made.open("checks")
    before, checks = shown(made), words_in(made.folds["checks"].widget)
    no_section["on"] = True
    for raised in ("8 in", "10 in"):
        made.set_input("opening.extension", raised)
        assert load(tmp_path / "design.toml") == made.design
        assert "could not be drawn" in made.said.value and "kept" in made.said.value
        assert shown(made) == before, "nothing half painted is sent"
        told = {one["key"]: one["text"] for one in made.told()["fields"]}
        assert told["opening.extension"] == feet_inches(made.design.opening.extension)
    assert words_in(made.folds["checks"].widget) != checks
    assert [record.exc_info[0] for record in caplog.records] == [ZeroDivisionError] * 2
    caplog.clear()
    no_section["on"] = False
    made.set_input("flue.sections", made.design.flue.sections)
    assert not made.said.value and shown(made) == shown(panel(made.design, folds=()))
    made.undo()
    made.undo()
    made.undo()
    assert made.design == load(EXAMPLE) and shown(made) == before


def test_what_is_kept_opens_though_it_cannot_be_drawn(tmp_path, no_section, caplog):
    mine = change(load(EXAMPLE), {"opening.width": "50 in"})
    save(mine, tmp_path / "design.toml")
    made = panel(load(EXAMPLE), keep=tmp_path, folds=("checks",))
    made.open("checks")
    assert made.design == mine and "could not be drawn" in made.said.value
    assert "Picked up" in made.said.value and words_in(made.folds["checks"].widget)
    caplog.clear()


def test_a_fault_in_a_fold_leaves_the_panel_alive(tmp_path, monkeypatch, caplog):
    made = panel(load(EXAMPLE), keep=tmp_path, folds=("checks", "takeoff"))
    made.open("checks")

    def fail(*what):
        raise ZeroDivisionError("of our own making")

    monkeypatch.setattr(made.folds["checks"].list, "show", fail)
    made.set_input("opening.width", "50 in")
    assert "earlier design" in made.said.value and load(tmp_path / "design.toml") == made.design
    caplog.clear()
    made.open("takeoff")
    made.set_input("opening.width", "52 in")
    assert "Material takeoff" in made.folds["takeoff"].widget.value and not made.said.value


def test_a_design_is_kept_before_it_is_drawn(tmp_path, monkeypatch):
    """A kernel that dies while it draws has kept what it was about to draw."""
    made = panel(load(EXAMPLE), keep=tmp_path, folds=())
    seen = []
    lead = made.view_pane.lead

    def look(design, pack, units):
        seen.append(load(tmp_path / "design.toml") == design)
        return lead(design, pack, units)

    monkeypatch.setattr(made.view_pane, "lead", look)
    made.set_input("opening.width", "50 in")
    made.on_slider("opening.width", "51 in")
    assert seen == [True, True]


def test_a_crown_low_over_the_shoulder_is_kept_and_drawn(tmp_path):
    made = panel(load(EXAMPLE), keep=tmp_path, folds=())
    made.set_inputs({"flue.sections": 4, "chimney.cap_material": "mortar"})
    made.set_inputs({"chimney.shoulder": "34 in"})
    assert not made.said.value and load(tmp_path / "design.toml") == made.design


@pytest.mark.parametrize("after", sampled([3, 17], 0))
def test_a_kernel_killed_at_any_moment_loses_nothing_older_than_the_last_change(tmp_path, after):
    """A real kernel moves a slider without end and tells each place once it is there; it is killed
    in the middle of a move.
    """
    manager, client = start_new_kernel()
    try:
        client.execute(ENDLESS.format(example=str(EXAMPLE), folder=str(tmp_path)))
        told, deadline = [], time.monotonic() + 60
        while len(told) < after and time.monotonic() < deadline:
            message = client.get_iopub_msg(timeout=60)
            assert message["msg_type"] != "error", message["content"]
            if message["msg_type"] == "stream":
                told += [int(word) for word in message["content"]["text"].split()]
        kernel = manager.provisioner.process
        kernel.kill()
        kernel.wait(20)
        while True:  # what it still had to say
            try:
                message = client.get_iopub_msg(timeout=0.5)
            except Exception:  # an empty queue
                break
            if message["msg_type"] == "stream":
                told += [int(word) for word in message["content"]["text"].split()]
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)
    assert len(told) >= after
    kept = load(tmp_path / "design.toml")
    width = round(kept.opening.width / INCH)
    # what was told is kept; at most one more move was under way
    assert width in (told[-1], 30 + (told[-1] - 30 + 1) % 60), (width, told[-3:])
    assert kept == change(load(EXAMPLE), {"opening.width": f"{width} in"})
    assert panel(load(EXAMPLE), keep=tmp_path, folds=()).design == kept
    assert [
        path.name
        for path in tmp_path.iterdir()
        if path.suffix == ".toml" and "unreadable" in path.name
    ] == []


def test_a_draft_that_follows_a_slider_says_that_it_was_drawn():
    """Whoever asks need not draw it again; before its pictures are known it needs more than the geometry."""
    made = panel(load(DESIGNS / "plain.toml"), view="draft", folds=())
    told = made.design, made.pack, made.units
    assert made.view_pane.lead(*told)
    made.view_pane.draft_pictures.known.clear()
    assert not made.view_pane.lead(*told)
