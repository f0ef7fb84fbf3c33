"""Drawings a draughtsman would sign: nothing overlaps, nothing leaves the sheet, strings add up."""

import itertools

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from sampled import sampled
from strategies import designs

from fireplace_calc import assess, change
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import CELLS, elevations, single
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.compose import draw_view
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.sheets.hatch import lines_in
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet, spread
from fireplace_calc.panels.picture.view_pane import VIEWS

ENDS = [
    {"opening.width": w, "opening.extension": e, "flue.sections": n}
    for w, e, n in itertools.product(
        ("18 in", "42 in", "96 in"), ("0 in", "6 in", "24 in"), (4, 20, 40)
    )
]


def named(changes):
    return " ".join(str(v) for v in changes.values())


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize("changes", ENDS, ids=named)
@pytest.mark.parametrize("which", ["boathouse", "plain"])
def test_nothing_overlaps_at_either_end_of_every_slider(boathouse, which, changes, units):
    result = assess(change(boathouse if which == "boathouse" else Design(), changes))
    limits = roof_limits(result.findings)
    assert collisions(elevations(result.geometry, units, limits)) == []
    for view in CELLS:
        assert collisions(single(view, result.geometry, units, limits)) == [], view


ARCHED = {"opening.head": "segmental", "opening.rise": "6 in"}


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("view", CATALOGUE.values(), ids=lambda view: view.key)
def test_every_view_of_the_catalogue_is_clean_and_reaches_the_panel(boathouse, view, units):
    """Alone on the sheet, small and large, in both unit systems; by its label in the panel's list."""
    for changes in ({}, ARCHED, {**ARCHED, "opening.width": "60 in", "opening.extension": "8 in"}):
        result = assess(change(boathouse, changes))
        if view.suits(result.geometry):
            assert collisions(single(view.key, result.geometry, units)) == [], changes
        else:
            assert view.otherwise, "say what is shown instead"
    assert VIEWS[view.label] == view.key


@settings(deadline=None, max_examples=40, suppress_health_check=list(HealthCheck))
@given(designs())
def test_every_view_stays_in_its_cell(design):
    result = assess(design)
    for view, cell in CELLS.items():
        sheet = draw_view(view, cell, result.geometry, "feet-inches", roof_limits(result.findings))
        points = np.concatenate([p for runs in sheet.lines.values() for p in runs])
        assert points[:, 0].min() >= cell.left - 0.01 and points[:, 0].max() <= cell.right + 0.01, (
            view
        )
        assert points[:, 1].min() >= cell.bottom - 0.01 and points[:, 1].max() <= cell.top + 0.01, (
            view
        )


def test_a_draughtsman_would_find_these():
    """The check itself: it sees each kind of fault."""
    sheet = Sheet(100, 100)
    sheet.text(50, 50, "throat")
    assert collisions(sheet) == []
    sheet.text(52, 50, "shelf")
    sheet.line([(40, 40), (60, 60)])
    sheet.text(99, 10, "outside")
    sheet.text(10, 90, "small", size=1.0)
    sheet.line([(10, 10), (120, 10)], "dimension", "dimension")
    faults = " ".join(collisions(sheet))
    for words in ("lies over", "lies across", "leaves the sheet", "smaller than", "line leaves"):
        assert words in faults


@pytest.mark.parametrize("changes", ENDS[::5], ids=named)
def test_opening_string_adds_up_to_the_level_difference(boathouse, changes):
    """Standard height plus extension, as written on the front elevation, is the height the outer
    string gives.
    """
    result = assess(change(boathouse, changes))
    sheet = single("front", result.geometry)
    turned = [to_si(n.text, "length") for n in sheet.labels if n.turned]
    assert len(turned) >= 2
    assert sum(turned[:-1]) == pytest.approx(turned[-1], abs=0.001 * len(turned))


def test_hatch_covers_a_square_with_a_hole_evenly():
    """Total length of hatch lines times their gap is the hatched area (plain geometry)."""
    outer = np.array([(0, 0), (40, 0), (40, 40), (0, 40)], float)
    hole = np.array([(10, 10), (30, 10), (30, 30), (10, 30)], float)
    for angle in (0.0, 45.0, 90.0, 12.0):
        segments = lines_in([outer, hole], angle, 0.1)
        assert np.hypot(*(segments[:, 1] - segments[:, 0]).T).sum() * 0.1 == pytest.approx(
            40 * 40 - 20 * 20, rel=0.01
        )


def test_spread_moves_no_label_farther_than_it_must():
    assert spread([10.0, 20.0], [4.0, 4.0], 0, 100) == [10.0, 20.0]
    placed = spread([10.0, 10.0, 10.0], [4.0, 4.0, 4.0], 0, 100)
    assert placed == pytest.approx([6.0, 10.0, 14.0])
    assert spread([1.0, 1.5], [4.0, 4.0], 0, 100)[0] >= 2.0 - 1e-9
