"""The drawing set on paper."""

import re

import numpy as np
import pytest
from pypdf import PdfReader

from fireplace_calc import assess, change
from fireplace_calc.design import Design
from fireplace_calc.designfile import fingerprint
from fireplace_calc.drawing.lettering import width
from fireplace_calc.drawing.lists import Table, wrapped
from fireplace_calc.drawing.papers import EDGE, PAPERS, USUAL, pages, paper_set
from fireplace_calc.drawing.sheet import collisions
from fireplace_calc.drawing.style import SMALL
from fireplace_calc.drawing.views import ARCHITECT
from fireplace_calc.drawing.written import tables
from fireplace_calc.units import FEET_INCHES, SYSTEMS, InputError

MM = 25.4 / 72


@pytest.mark.parametrize("size", ["letter", "A4", "A3"])
@pytest.mark.parametrize("changes", [{}, {"opening.width": "96 in", "flue.sections": 40}, {"opening.width": "18 in", "flue.sections": 4},
                                     {"opening.extension": "24 in", "firebox.bond": "herringbone 45", "opening.head": "segmental"}])
def test_every_page_is_clean(boathouse, size, changes):
    for design, units in ((boathouse, FEET_INCHES), (Design(), "millimetres")):
        for name, sheet in pages(assess(change(design, changes)), units, size):
            assert (sheet.width, sheet.height) == PAPERS[size]
            assert collisions(sheet) == [], (design.name, name)


def test_a_page_tells_which_inputs_it_was_drawn_from(boathouse):
    def told(design):
        written = [n.text for _, sheet in pages(assess(design), FEET_INCHES) for n in sheet.labels]
        return {text.partition("Inputs ")[2] for text in written if "Inputs " in text}

    assert told(boathouse) == {f"{fingerprint(boathouse)}."}
    assert told(change(boathouse, {"work.people": 3})) != told(boathouse)


def test_a_paper_nobody_has_is_named(boathouse):
    with pytest.raises(InputError, match="letter, A4, A3"):
        pages(assess(boathouse), FEET_INCHES, "B5")


def test_words_wrap_within_their_room():
    for room in (20.0, 45.0, 120.0):
        text = "Every brick of the lining to the underside of the smokeshelfwithoutanyspacewhatsoever, cut wet."
        lines = wrapped(text, room)
        assert all(width(line, SMALL) <= room + 1e-6 for line in lines)
        assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_no_heading_is_broken_within_a_word(boathouse):
    """On the narrowest paper, every table of the set."""
    room = PAPERS["letter"][0] - 2 * EDGE - 6 - 5.5
    for design in (boathouse, Design()):
        shown = [part for _, parts in tables(assess(design), FEET_INCHES) for part in parts if isinstance(part, Table)]
        assert len(shown) > 5
        for table in shown:
            whole = sum(column.share for column in table.columns)
            for column in table.columns:
                assert all(width(word, SMALL, True) <= room * column.share / whole - 2 for word in column.heading.split()), column


def test_progress_is_told_sheet_by_sheet(boathouse, tmp_path):
    heard = []
    paper_set(assess(boathouse), tmp_path / "set.pdf", told=lambda done, of, name: heard.append((done, of)))
    assert heard == [(k, heard[0][1]) for k in range(heard[0][1] + 1)]
    assert len(PdfReader(tmp_path / "set.pdf").pages) == heard[0][1]


def test_written_sheets_can_be_searched(boathouse, tmp_path):
    paper_set(assess(boathouse), tmp_path / "set.pdf")
    text = "".join(page.extract_text() for page in PdfReader(tmp_path / "set.pdf").pages)
    for finding in assess(boathouse).findings:
        assert finding.verdict == "does not apply" or finding.key in text


def test_pdf_has_every_page_of_the_right_paper(boathouse, tmp_path):
    for units in SYSTEMS:
        paper_set(assess(boathouse), tmp_path / "set.pdf", units)
        book = PdfReader(tmp_path / "set.pdf")
        assert len(book.pages) == len(pages(assess(boathouse), units)) > 6
        assert book.metadata.title == boathouse.name
        for page in book.pages:
            assert (float(page.mediabox.width) * MM, float(page.mediabox.height) * MM) == pytest.approx(PAPERS[USUAL[units]], abs=0.1)


@pytest.mark.parametrize("units", SYSTEMS)
def test_front_elevation_measured_back_off_the_pdf_is_to_scale(boathouse, tmp_path, units):
    """The heavy outline of the opening, read from the page's own path operators, against the scale in its title."""
    paper_set(assess(boathouse), tmp_path / "set.pdf", units)
    content = PdfReader(tmp_path / "set.pdf").pages[0].get_contents().get_data().decode("latin-1")
    _, sheet = pages(assess(boathouse), units)[0]
    written = [n.text for n in sheet.labels]
    denominator = next(d for d, text in ARCHITECT[units].items() if text in written)
    wanted = boathouse.opening.width * 1000 / denominator
    runs = re.findall(r"([-\d.]+) ([-\d.]+) m((?:\s+[-\d.]+ [-\d.]+ l)+)", content)
    widths = []
    for x, y, rest in runs:
        points = np.array([[float(x), float(y)], *[[float(a), float(b)] for a, b in re.findall(r"([-\d.]+) ([-\d.]+) l", rest)]]) * MM
        widths += list(np.abs(np.diff(points[:, 0])))
    assert min(abs(w - wanted) for w in widths) < 0.2


def test_a_folder_that_is_not_there_is_named(boathouse, tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        paper_set(assess(boathouse), tmp_path / "nowhere" / "set.pdf")
