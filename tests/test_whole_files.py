"""Every file is written whole or not at all: a full disk, a kill, a name as long as a disk takes."""

import os
import re
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sampled import sampled
from school import school_of

from fireplace_calc import assess, change, load, save
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.classroom.class_book import class_papers_writing
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.drawing.papers.full_papers import paper_set
from fireplace_calc.drawing.papers.one_sheet import check_sheet, hand_over
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.sheets.lists import TextFlow
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.editing.jobs.names import file_stem, folder_for, one_line
from fireplace_calc.editing.whole_files import set_aside, write_whole
from fireplace_calc.exports import one_file, write_dxf, write_spreadsheet
from fireplace_calc.exports.hand_over_files import write_hand_over
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.scene.still import light_dots
from fireplace_calc.takeoff.cost import prices

PLAIN = load(DATA / "designs" / "plain.toml")
KINDS = {
    "design.toml": lambda d, at: save(d, at / "design.toml"),
    "drawings.dxf": lambda d, at: write_dxf(assess(d), at / "drawings.dxf"),
    "order.xlsx": lambda d, at: write_spreadsheet(assess(d), prices(), at / "order.xlsx"),
    "takeoff.csv": lambda d, at: write_csv(assess(d), at),
    "papers.pdf": lambda d, at: paper_set(assess(d), at / "papers.pdf"),
    "check-sheet.pdf": lambda d, at: list(check_sheet(assess(d), at / "check-sheet.pdf")),
    "hand-over.pdf": lambda d, at: list(hand_over(assess(d), [], at / "hand-over.pdf")),
    "quiz.pdf": lambda d, at: list(
        class_papers_writing(school_of(("hearth",), 1, "feet-inches"), at)
    ),
    "book.pdf": lambda d, at: write_book([Sheet(99, 99)] * 9, at / "book.pdf", "a", "b", "c"),
    "room.html": lambda d, at: list(write_hand_over(at / "room.html", NamedDesign("a", assess(d)))),
}


@pytest.mark.skipif(sys.platform == "win32", reason="no limit on the size of a file there")
@pytest.mark.parametrize("name", sampled(KINDS, 4))
def test_a_disk_that_is_full_leaves_the_old_file(name, tmp_path, monkeypatch):
    """The system itself refuses the last bytes of it (RLIMIT_FSIZE, POSIX getrlimit); the picture in
    a room is a small one.
    """
    import resource

    monkeypatch.setattr(light_dots, "SHADOW", 30)
    monkeypatch.setattr(
        one_file.room_to_turn, "__defaults__", (None, "feet-inches", (60, 40), None)
    )
    (tmp_path / name).write_bytes(b"old")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (600, hard))
    try:
        with pytest.raises(InputError, match="cannot be written: File too large"):
            KINDS[name](PLAIN, tmp_path)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert (tmp_path / name).read_bytes() == b"old"
    assert os.listdir(tmp_path) == [name]
    KINDS[name](PLAIN, tmp_path)
    assert (tmp_path / name).stat().st_size > 600


def test_a_name_as_long_as_a_disk_takes_can_be_written_and_set_aside(tmp_path):
    """255 bytes are the limit of the usual file systems; letters of three bytes are cut whole."""
    for name in ("x" * 250 + ".toml", "ü" * 125 + ".toml", "屋" * 83 + ".toml"):
        write_whole(tmp_path / name, b"all of it")
        assert (tmp_path / name).read_bytes() == b"all of it"
        aside = set_aside(tmp_path / name)
        assert aside.read_bytes() == b"all of it" and len(os.fsencode(aside.name)) <= 255


FORBIDDEN = set('<>:"/\\|?*') | {chr(n) for n in range(32)}
KEPT_BY_WINDOWS = {"con", "prn", "aux", "nul"} | {
    f"{w}{n}" for w in ("com", "lpt") for n in range(10)
}
NAMES = [
    "",
    " ",
    ".",
    "..",
    "../../etc",
    "CON",
    "nul",
    "com1",
    "a" * 400,
    "Hut?",
    "Hut!",
    "hut",
    "HUT",
]
NAMES += [
    "小屋",
    "別荘",
    "Häuschen",
    "a/b",
    "a\\b",
    "trailing.",
    "trailing ",
    "\x00\n\t",
    "-",
    "=1+1",
]


def test_any_name_gives_a_file_name_that_any_disk_takes_and_no_two_the_same():
    """Windows: nine characters and controls are forbidden, devices have names of their own, no dot
    or space at the end, capitals do not count.
    """
    words, found = {}, {}
    for name in NAMES:
        stem = file_stem(name, words)
        whole = f"{stem}-check-sheet.pdf"
        assert stem and not FORBIDDEN & set(whole) and len(os.fsencode(whole)) < 100
        assert stem not in KEPT_BY_WINDOWS and not stem.startswith((".", "-"))
        assert file_stem(name, words) == stem, "the same the next time"
        if name.split() and name.isprintable():
            found.setdefault(stem.lower(), set()).add(" ".join(name.split()))
    assert all(len(names) == 1 for names in found.values())


@given(st.lists(st.text(max_size=300), min_size=2, max_size=8))
def test_so_do_names_that_nobody_thought_of(typed):
    words, found = {}, {}
    for name in typed:
        stem = file_stem(name, words)
        assert stem and re.fullmatch(r"[a-z0-9][a-z0-9-]*", stem) and len(stem) < 60
        assert stem not in KEPT_BY_WINDOWS and file_stem(name, words) == stem
        found.setdefault(stem, set()).add(one_line(name, 200))
    assert all(len(names) == 1 for names in found.values())


def test_any_name_gives_a_folder_likewise():
    taken = set()
    for name in NAMES:
        folder = folder_for(name, taken)
        assert folder and not FORBIDDEN & set(folder) and folder not in KEPT_BY_WINDOWS | taken
        taken.add(folder)


@pytest.mark.parametrize("size", ["letter", "A3"])
def test_a_name_of_any_length_fits_the_title_block_of_every_paper(size):
    design = change(PLAIN, {"name": "A name with no end " * 30, "site.place": "far away " * 40})
    for name, sheet in whole_set.sheets(assess(design), "feet-inches", size):
        assert not [c for c in collisions(sheet) if "no end" in str(c) or "far away" in str(c)], (
            name
        )
        for label in sheet.labels:
            left, _, right, _ = label.extent
            assert left > 0 and right < sheet.width, (name, label.text)


LONG = "A name with no end " * 30


@pytest.mark.parametrize("size", sampled(["A3", "letter"], 1))
def test_names_of_any_length_fit_every_sheet_of_the_set(size):
    """Of the job, its place, client and makers."""
    told = dict.fromkeys(("name", "site.place", "job.client", "job.drawn", "job.checked"), LONG)
    for name, sheet in whole_set.sheets(assess(change(PLAIN, told)), "feet-inches", size):
        assert not [c for c in collisions(sheet) if "no end" in str(c)], name
        for label in sheet.labels:
            left, low, right, top = label.extent
            assert left >= 0 and right <= sheet.width and low >= 0 and top <= sheet.height, (
                name,
                label.text,
            )


def test_a_long_heading_takes_as_many_rows_as_it_needs():
    flow = TextFlow(200.0, 280.0, Cell(10, 10, 190, 270))
    flow.heading(f"{LONG}: as measured")
    flow.words("What follows.")
    (sheet,) = flow.sheets
    assert not collisions(sheet) and all(label.extent[2] <= 190 for label in sheet.labels)
    assert " ".join(label.text for label in sheet.labels[:-1]) == f"{LONG.strip()} : as measured"


def test_what_a_client_is_given_has_one_of_three_endings(tmp_path):
    chosen = NamedDesign("As it is", assess(Design()))
    writing = write_hand_over(tmp_path / "mine.docx", chosen)
    assert next(writing) == (0, 1, "Pictures and pages")
    said = "^mine.docx ends in '.docx', but there are only .pdf, .png and .html.$"
    with pytest.raises(ValueError, match=said):
        next(writing)
    assert list(tmp_path.iterdir()) == []
    assert next(write_hand_over(tmp_path / "mine.html", chosen)) == (0, 1, "The room that turns")
