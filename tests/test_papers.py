"""The paper set: every sheet of it, on every paper, and the file it is written into."""

import numpy as np
import pytest
from hypothesis import given, settings
from pypdf import PdfReader
from sampled import sampled
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.full_papers import paper_set
from fireplace_calc.drawing.plates.sizes import PAPERS, USUAL
from fireplace_calc.drawing.plates.whole_set import COVER, MAKERS, sheets
from fireplace_calc.drawing.sheets import lists
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.rules.comparing import DOES_NOT_APPLY

MM = 25.4 / 72
MOST = {"boathouse": 12, "boathouse-laid": 12, "plain": 14}
"""Sheets of A3 for a shipped design; 12 are wanted, and the plain one, laid in firebrick all over,
takes 14.
"""
CLEAR = 0.7
"""Between letters and any line. [mm]"""
CHANGED = [
    {},
    {"opening.width": "96 in", "flue.sections": 40},
    {"opening.width": "18 in", "flue.sections": 4},
    {
        "opening.extension": "24 in",
        "firebox.bond": "herringbone 45",
        "opening.head": "segmental",
    },
]


def clean(design, units, size):
    for name, sheet in sheets(assess(design), units, size):
        assert (sheet.width, sheet.height) == PAPERS[size]
        assert collisions(sheet) == [], (design.name, name)
        assert min(label.size for label in sheet.labels) >= 2.5 - 1e-9


@pytest.mark.parametrize("size", sampled([*PAPERS], 1))
@pytest.mark.parametrize("changes", CHANGED, ids=str)
def test_every_sheet_is_clean(boathouse, size, changes):
    """Each change on each paper, one design and unit system and the other in turns."""
    if ([*PAPERS].index(size) + CHANGED.index(changes)) % 2:
        clean(change(boathouse, changes), FEET_INCHES, size)
    else:
        clean(change(Design(), changes), "millimetres", size)


@settings(max_examples=4, deadline=None)
@given(designs())
def test_every_sheet_of_a_random_design_is_clean(design):
    clean(design, FEET_INCHES, "11x17")


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_the_set_is_short(name, units):
    made = sheets(assess(load(DESIGNS / f"{name}.toml")), units, "A3")
    assert len(made) <= MOST[name], [title for title, _ in made]


def broken(made, monkeypatch):
    """Words that are cut in two while sheets are made; a word without end may be."""
    found, cut = [], lists.fitting

    def seen(word, room, *rest):
        found.append((word, room))
        return cut(word, room, *rest)

    monkeypatch.setattr(lists, "fitting", seen)
    lists.wrapped.cache_clear()
    made()
    return found


@pytest.mark.parametrize("size", sampled([*PAPERS], 2))
@pytest.mark.parametrize("units", SYSTEMS)
def test_no_word_is_broken(units, size, monkeypatch):
    """*Mark* and *Pieces* over the cut list, *Makes* and *Batches* over the mixes stood in two rows."""
    for name in ("boathouse", "plain"):
        result = assess(load(DESIGNS / f"{name}.toml"))
        assert broken(lambda r=result: sheets(r, units, size), monkeypatch) == []


def full(sheet, step=20.0):
    """Share of the squares of a sheet in which something is drawn or written. [-]"""
    inked = set()

    def mark(left, low, right, top):
        for x in np.arange(left // step, right // step + 1):
            for y in np.arange(low // step, top // step + 1):
                inked.add((x, y))

    for lines in sheet.lines.values():
        for line in lines:
            for (ax, ay), (bx, by) in zip(line, line[1:], strict=False):
                many = int(np.hypot(bx - ax, by - ay) // 5) + 2
                for x, y in zip(np.linspace(ax, bx, many), np.linspace(ay, by, many), strict=True):
                    mark(x, y, x, y)
    for label in sheet.labels:
        mark(*label.extent)
    return len(inked) / ((sheet.width // step + 1) * (sheet.height // step + 1))


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_no_sheet_is_less_than_half_used(name):
    for title, sheet in sheets(assess(load(DESIGNS / f"{name}.toml")), FEET_INCHES, "A3"):
        assert full(sheet) > 0.5, title


def test_every_maker_has_its_sheets(boathouse):
    """Nothing that the set once held is lost: every maker gives sheets for a laid firebox."""
    laid = assess(load(DESIGNS / "boathouse-laid.toml"))
    for maker in MAKERS:
        if maker != COVER:
            assert sheets(laid, FEET_INCHES, "A3", makers=(maker,)), maker


def test_every_sheet_tells_which_inputs_it_was_drawn_from(boathouse):
    def told(design):
        made = sheets(assess(design), FEET_INCHES)
        return [{n.text for n in sheet.labels} for _, sheet in made]

    assert all(fingerprint(boathouse) in words for words in told(boathouse))
    assert not any(
        fingerprint(boathouse) in words for words in told(change(boathouse, {"work.people": 3}))
    )


def test_a_paper_nobody_has_is_named(boathouse):
    with pytest.raises(InputError, match="letter, 11x17, A4, A3"):
        sheets(assess(boathouse), FEET_INCHES, "B5")


def test_words_wrap_within_their_room():
    for room in (20.0, 45.0, 120.0):
        text = (
            "Every brick of the lining to the underside of the smokeshelfwithoutanyspacewhatsoever,"
            " cut wet."
        )
        lines = wrapped(text, room)
        assert all(width(line, SMALL) <= room + 1e-6 for line in lines)
        assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_progress_is_told_sheet_by_sheet(boathouse, tmp_path):
    heard = []
    paper_set(
        assess(boathouse),
        tmp_path / "set.pdf",
        told=lambda done, of, name: heard.append((done, of, bool(name))),
    )
    many = len(PdfReader(tmp_path / "set.pdf").pages)
    assert heard[-1] == (many, many, False)
    written = heard[-many - 1 :]
    assert written == [(n, many, n < many) for n in range(many + 1)]
    drawn = heard[: -many - 1]
    assert len(drawn) == len(MAKERS)
    assert all(done < of for done, of, _ in drawn)
    assert [done for done, _, _ in drawn] == sorted(done for done, _, _ in drawn)


def test_the_file_can_be_searched(boathouse, tmp_path):
    result = assess(boathouse)
    paper_set(result, tmp_path / "set.pdf")
    text = "".join(page.extract_text() for page in PdfReader(tmp_path / "set.pdf").pages)
    for finding in result.findings:
        assert finding.verdict == DOES_NOT_APPLY or finding.clause.split()[0].rstrip(";,") in text


def test_the_file_has_every_sheet_on_the_right_paper(boathouse, tmp_path):
    for units in SYSTEMS:
        paper_set(assess(boathouse), tmp_path / "set.pdf", units)
        book = PdfReader(tmp_path / "set.pdf")
        assert len(book.pages) == len(sheets(assess(boathouse), units)) > 6
        assert book.metadata.title == boathouse.name
        for page in book.pages:
            sides = float(page.mediabox.width) * MM, float(page.mediabox.height) * MM
            assert sides == pytest.approx(PAPERS[USUAL[units]], abs=0.1)


def test_a_folder_that_is_not_there_is_named(boathouse, tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        paper_set(assess(boathouse), tmp_path / "nowhere" / "set.pdf")


def test_pens_on_paper_are_as_wide_as_their_line_and_dashes_end_square(tmp_path):
    """ISO 128: widths in millimetres; a rounded dash of a thin gap would close it. Read back from the
    drawing operators of the page.
    """
    from pypdf.generic import ContentStream

    from fireplace_calc.drawing.sheets.pdf import PdfBook
    from fireplace_calc.drawing.sheets.sheet import Sheet
    from fireplace_calc.drawing.sheets.style import DASHES, WEIGHT

    sheet = Sheet(100, 80)
    for k, weight in enumerate(WEIGHT):
        sheet.line([(10, 10 + 5 * k), (60, 10 + 5 * k)], weight)
    sheet.text(50, 70, "up", turned=True)
    book = PdfBook(str(tmp_path / "pens.pdf"), "title", "subject")
    book.add(sheet)
    book.save()
    reader = PdfReader(tmp_path / "pens.pdf")
    page = reader.pages[0]
    assert [float(v) * 25.4 / 72 for v in page.mediabox[2:]] == pytest.approx([100, 80], abs=0.01)
    assert (reader.metadata.title, reader.metadata.subject) == ("title", "subject")
    pen, drawn = {"w": 1.0, "J": 0, "d": []}, {}
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        name = operator.decode()
        if name in ("w", "J"):
            pen[name] = float(operands[0])
        elif name == "d":
            pen["d"] = [float(v) * 25.4 / 72 for v in operands[0]]
        elif name == "m":
            drawn[round(float(operands[1]) * 25.4 / 72, 2)] = dict(pen)
    for k, (weight, wide) in enumerate(WEIGHT.items()):
        used = drawn[10 + 5 * k]
        assert used["w"] * 25.4 / 72 == pytest.approx(wide, abs=1e-3), weight
        assert used["d"] == pytest.approx(list(DASHES.get(weight, ())), abs=1e-3)
        assert used["J"] == (0 if weight in DASHES else 1), (
            "square ends for dashes, round for others"
        )
