"""The drawing set on paper."""

import re

import numpy as np
import pytest
from pypdf import PdfReader

from fireplace_calc import assess, change
from fireplace_calc.drawing.papers import PAPERS, USUAL, pages, paper_set
from fireplace_calc.drawing.sheet import collisions
from fireplace_calc.drawing.views import ARCHITECT
from fireplace_calc.units import SYSTEMS, InputError

MM = 25.4 / 72


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("changes", [{}, {"opening.width": "96 in", "flue.sections": 40}, {"opening.width": "18 in", "flue.sections": 4}])
def test_every_page_is_clean(boathouse, units, changes):
    for name, sheet in pages(assess(change(boathouse, changes)), units):
        assert collisions(sheet) == [], name


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
