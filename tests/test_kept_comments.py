"""Saving over a design file keeps what a reader wrote into it, and still reads back alike."""

import subprocess
import sys
import tomllib
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.editing import kept_comments
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load, save
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import END, text_of
from fireplace_calc.editing.kept_comments import text_over
from fireplace_calc.panels.session import Session

OWN = """\
# Ours, after the second visit
name = "Ours # 2"

[opening]   # clear, at the face
width = "3 ft"   # by tape
# still to be agreed
standard_height = "30 in"

[[surround.trim]]
# oak, from the old house
name = "shelf"   # 2 in thick
distance = "14 in"
"""
"""Invented: a short file somebody wrote by hand."""


def comments(text):
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def test_a_file_that_has_not_changed_stays_as_it_is():
    assert text_over(OWN, load_text(OWN)) == OWN


def test_only_what_has_changed_is_written_anew():
    after = change(load_text(OWN), {"opening.width": "4 ft", "flue.sections": 12})
    text = text_over(OWN, after)
    assert text.startswith(OWN.replace('"3 ft"', '"48 in"').rstrip())
    assert tomllib.loads(text)["flue"] == {"sections": 12}
    assert load_text(text) == after


@pytest.mark.parametrize("wanted", [0, 1, 2, 3])
def test_pieces_come_and_go_and_keep_their_comments(wanted):
    trim = tuple(Trim(name=f"piece {n}", distance=0.3) for n in range(wanted))
    after = change(load_text(OWN), {"surround.trim": trim})
    text = text_over(OWN, after)
    assert load_text(text) == after
    assert ("oak, from the old house" in text) == (wanted > 0)


def test_pieces_in_one_line_keep_to_it():
    own = '[surround]\ntrim = [{name = "shelf"}]  # ours\n'
    after = change(load_text(own), {"surround.trim": [{"name": "shelf"}, {"name": "frieze"}]})
    text = text_over(own, after)
    assert load_text(text) == after and "# ours" in text


@settings(max_examples=40, deadline=None)
@given(designs(), designs(), st.data())
def test_any_file_with_comments_anywhere_reads_back_to_what_was_saved(before, after, data):
    lines = text_of(before).splitlines()
    for n in range(data.draw(st.integers(1, 4))):
        lines.insert(data.draw(st.integers(3, len(lines) - 2)), f"# remark {n}")
    old = "\n".join(lines) + "\n"
    once = text_over(old, after)
    assert load_text(once) == after
    assert set(comments(old)) <= set(comments(once))
    assert once.rstrip().endswith(END)
    again = text_over(once, before)
    assert load_text(again) == before
    assert comments(again) == comments(once)


@pytest.mark.parametrize("old", ["", "# a note, and no design\n[nowhere]\n", "# cut shor", "#\0"])
def test_what_is_no_design_file_is_written_anew(old):
    assert text_over(old, Design()) == text_of(Design())


def test_saving_over_a_file_keeps_its_comments(tmp_path):
    path = tmp_path / "ours.toml"
    path.write_text(OWN)
    save(change(load(path), {"opening.width": "4 ft"}), path)
    assert "# by tape" in path.read_text()
    assert load(path).opening.width == pytest.approx(4 * 0.3048)


def test_what_no_longer_reads_alike_is_written_whole_without_its_comments(monkeypatch):
    """Should the parser that keeps comments write what is no file, or another one."""
    for text, holds in (("= broken", {}), ("width = 3\n", {}), ("width = 3\n", {"width": 4})):
        monkeypatch.setattr(kept_comments, "_update", lambda document, before, design: None)
        document = SimpleNamespace(
            as_string=lambda text=text: text, unwrap=lambda holds=holds: holds
        )
        monkeypatch.setattr(kept_comments, "_read", lambda old, it=document: (it, Design()))
        assert text_over("# mine\n", Design()) == text_of(Design())
    document = SimpleNamespace(as_string=lambda: "width = 3  # mine\n", unwrap=lambda: {"width": 3})
    monkeypatch.setattr(kept_comments, "_read", lambda old: (document, Design()))
    assert text_over("# mine\n", Design()) == "width = 3  # mine\n"


def test_the_last_piece_of_a_list_that_goes_takes_its_list_along():
    """Undone, not told to be none: the file names no trim any more, and keeps what stands beside it."""
    head = '[opening]\nwidth = "3 ft"  # as measured\n\n[surround]\nface = "stone"  # local\n'
    piece = '\n[[surround.trim]]\nname = "shelf"  # to be planed\n'
    with_piece, without = load_text(head + piece), load_text(head)
    assert len(with_piece.surround.trim) == 1
    made = text_over(head + piece, without)
    assert load_text(made) == without
    assert made.rstrip() == head.rstrip()


def test_saving_over_what_cannot_be_read_writes_a_whole_file(tmp_path):
    path = tmp_path / "broken.toml"
    path.write_bytes(b"# \xff\n")
    save(Design(), path)
    assert path.read_text() == text_of(Design())


def test_a_file_of_our_own_never_wakes_tomlkit(tmp_path):
    """So that whoever moves a slider waits for no parser."""
    code = (
        "import sys; from fireplace_calc import Design, change, save;"
        f"save(Design(), {str(tmp_path / 'a.toml')!r});"
        f"save(change(Design(), {{'opening.width': '40 in'}}), {str(tmp_path / 'a.toml')!r});"
        "sys.exit('tomlkit' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_a_panels_folder_keeps_the_comments_in_it(tmp_path):
    (tmp_path / "design.toml").write_text(OWN)
    session = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    for width in ("4 ft", "50 in", "51 in"):
        session.take({"opening.width": width})
        session.keep()
    kept = (tmp_path / "design.toml").read_text()
    assert comments(kept) == comments(OWN)
    assert load_text(kept) == session.design
