"""A check on its view: what is measured there is what the check compares, and the sheet stays
clean.
"""

from math import hypot
from pathlib import Path

import pytest
from hypothesis import given, settings
from strategies import designs

from fireplace_calc import PACKS, assess, load
from fireplace_calc.base.units import from_unit
from fireplace_calc.drawing.composed.compose import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.marked_check import PLACES, can_show, marked
from fireplace_calc.drawing.sheets.overlaps import collisions

DESIGNS = Path(__file__).resolve().parents[1] / "data" / "designs"
BOOKS = ("US IRC 2021", "Canada NBC", "UK ADJ", "Trade practice")


def shown(design):
    for pack in BOOKS:
        result = assess(design, pack)
        for finding in result.findings:
            if can_show(finding):
                yield finding, result.geometry


@settings(max_examples=60, deadline=None)
@given(designs())
def test_what_is_marked_is_what_is_compared(design):
    """From where to where on the view, against what the check says is there."""
    for finding, geometry in shown(design):
        if finding.key == "PRA-03":  # what is left over, not the width itself
            continue
        start, end = PLACES[finding.key][1](geometry)
        drawn = hypot(end[0] - start[0], end[1] - start[1])
        assert drawn == pytest.approx(abs(from_unit(finding.provided, finding.unit)), abs=2e-6), (
            finding
        )


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
@pytest.mark.parametrize("name", ["boathouse", "plain"])
def test_sheets_with_a_mark_are_clean(name, units):
    keys = set()
    for finding, geometry in shown(load(DESIGNS / f"{name}.toml")):
        sheet = marked(finding, geometry, units)
        assert collisions(sheet) == [], finding.key
        assert any(finding.key in label.text for label in sheet.labels) and any(
            finding.clause in label.text for label in sheet.labels
        )
        flags = [
            line
            for (weight, ink), lines in sheet.lines.items()
            if weight == "flag" and ink in ("good", "bad")
            for line in lines
        ]
        assert len(flags) >= 2
        for line in flags:
            assert (
                (line >= -0.01).all() and line[:, 0].max() <= WIDTH and line[:, 1].max() <= HEIGHT
            )
        keys.add(finding.key)
    assert len(keys) >= 30


def test_every_marked_key_is_a_rule():
    rules = {key for pack in PACKS.values() for key in pack.keys}
    assert set(PLACES) <= rules
