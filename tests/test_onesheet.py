"""The sheet for a client and the sheet for an inspector: what stands on them, and that nothing lies
across anything.
"""

import re

import pytest
from pypdf import PdfReader
from sampled import sampled

from fireplace_calc import assess, change
from fireplace_calc.drawing.papers import one_sheet as onesheet
from fireplace_calc.drawing.plates.sizes import PAPERS
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.report.alternatives import differences, side_by_side
from fireplace_calc.report.sentences import weight
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT
from fireplace_calc.takeoff.cost import bill, prices

UNITS = [("feet-inches", "letter"), ("millimetres", "A4"), ("millimetres", "A3")]


def flat(text: str) -> str:
    return re.sub(r"\s+", "", text)


def text_of(path) -> str:
    return flat("".join(page.extract_text() for page in PdfReader(path).pages))


@pytest.fixture
def clean(monkeypatch):
    """Every sheet that is printed, looked over for words across lines."""
    seen = []
    through = onesheet.printing
    monkeypatch.setattr(
        onesheet,
        "printing",
        lambda made, path, result: seen.extend(made) or through(made, path, result),
    )
    yield
    assert seen and all(not collisions(sheet) for _, sheet in seen)


@pytest.mark.parametrize(("units", "size"), UNITS)
def test_the_sheet_to_hand_over(units, size, boathouse, tmp_path, clean):
    options = [
        assess(change(boathouse, {"opening.width": "48 in"})),
        assess(change(boathouse, {"opening.head": "segmental"})),
    ]
    result, path = assess(boathouse), tmp_path / "sheet.pdf"
    steps = list(onesheet.hand_over(result, options, path, units, size, shown={"golden section"}))
    assert steps[-1][0] == steps[-1][1] == len(PdfReader(path).pages)
    box = PdfReader(path).pages[0].mediabox
    assert [float(side) / 72 * 25.4 for side in (box.width, box.height)] == pytest.approx(
        PAPERS[size], abs=0.1
    )
    text = text_of(path)
    for words in (
        fingerprint(boathouse),
        "Option 2",
        "golden section",
        "local code",
        "Invented example",
        *differences(options[0].design, boathouse, units),
    ):
        assert flat(words) in text, words
    for name, told in side_by_side([*options, result], units):
        assert flat(name) in text
        assert all(flat(word) in text for one in told for word in one.split(" ")[:2]), name


@pytest.mark.parametrize(("units", "size"), sampled(UNITS, 1))
def test_the_check_sheet(units, size, boathouse, tmp_path, clean):
    result, path = (
        assess(change(boathouse, {"flue.size": "12", "opening.extension": "14 in"})),
        tmp_path / "sheet.pdf",
    )
    list(onesheet.check_sheet(result, path, units, size))
    text = text_of(path)
    for finding in result.findings:
        applies = finding.verdict != DOES_NOT_APPLY
        assert not applies or flat(finding.title) in text, finding.key
        assert size == "A3" or (f"({finding.key})" in text) == applies, finding.key
    for one in work_figures(result, units):
        assert flat(one.name) in text and flat(one.result).split("=")[0][:8] in text
    assert flat("Inspected on site") in text and fingerprint(result.design) in text


def test_side_by_side_tells_each_designs_own(boathouse):
    """Cost, weight and what is broken against the takeoff, the price list and the findings
    themselves.
    """
    results = [
        assess(boathouse),
        assess(change(boathouse, {"opening.extension": "24 in", "flue.size": "10"})),
    ]
    told = dict(side_by_side(results))
    for k, result in enumerate(results):
        assert told["Weight, footing included"][k] == weight(result.weight)
        assert told["Material costs"][k].startswith(f"{bill(result.takeoff, prices()).total:,.0f} ")
        assert re.findall(r"\(([A-Z]+-\w+)\)", told["Falls short of US IRC 2021"][k]) == [
            f.key for f in result.findings if f.verdict == FALLS_SHORT
        ]
    assert told["Differs from the first in"] == ("", "Firebox extension 2'-0\"; Flue size 10")
    assert differences(boathouse, boathouse) == ()
    assert differences(boathouse, change(boathouse, {"surround.trim": []})) == (
        "Mantel and trim: 0 pieces, changed",
    )
