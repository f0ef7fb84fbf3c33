"""Views laid out for a page's stage of any size: nothing overlaps, letters can be read, the stage is
filled.
"""

import itertools
import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sampled import sampled

from fireplace_calc import assess, change, load
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed import compose
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.compose import TURNS
from fireplace_calc.drawing.composed.marked_check import can_show, marked
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.page.stage import stage_cells, stage_views
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.proportion import NAMES

ROOT = Path(__file__).parents[1] / "data" / "designs"
STAGES = {  # screen: stage beside or over the controls, and how many views have room on it [px]
    "1280x800": (980, 640, 4),
    "1280x800 in a notebook": (882, 480, 4),
    "1440x900": (1140, 740, 4),
    "1920x1080": (1620, 920, 4),
    "1024x768": (724, 608, 2),
    "768x1024": (768, 560, 2),
    "390x844": (390, 420, 1),
}
ENDS = [
    *(
        {"opening.width": w, "opening.extension": e, "flue.sections": n}
        for w, e, n in itertools.product(("18 in", "96 in"), ("0 in", "24 in"), (4, 40))
    ),
    {},
    {"opening.standard_height": "18 in"},
    {"opening.standard_height": "60 in"},
    {"base.hearth_level": "0 in"},
    {"base.hearth_level": "24 in"},
    {"hearth.front": "0 in"},
    {"hearth.front": "36 in"},
]
LETTER = 12.0
"""Least font size. [px]"""
DECIDED = {"opening.standard_height", "base.hearth_level"}
"""What a set decides, or what changes its pieces."""


def pairs():
    for changes, name in itertools.product(ENDS, ("plain", "laid", "set")):
        if name != "set" or not DECIDED & set(changes):
            yield name, changes


@pytest.fixture(scope="module")
def met(boathouse):
    """Each design assessed once."""
    known = {}
    designs = {"plain": Design(), "laid": boathouse, "set": load(ROOT / "boathouse.toml")}

    def result(name, changes):
        key = (name, *changes.items())
        if key not in known:
            known[key] = assess(change(designs[name], changes))
        return known[key]

    return result


def shown(result, view, units, stage):
    return list(stage_views(view, result.geometry, units, result.findings, (), stage))


def extents(sheet):
    """Area of the box round everything drawn. [mm²]"""
    points = [run for runs in sheet.lines.values() for run in runs]
    points += [np.reshape(label.extent, (2, 2)) for label in sheet.labels]
    every = np.concatenate(points)
    return float(np.prod(every.max(axis=0) - every.min(axis=0)))


def filled(views, stage):
    """Share of the stage inside the drawings' extents, of the worse of its turns. [-]"""
    turns = [views[k : k + stage.count] for k in range(0, len(views), stage.count)]
    return min(sum(extents(sheet) for *_, sheet in turn) for turn in turns) / (
        stage.width * stage.height
    )


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize(("name", "changes"), sampled(list(pairs()), 2), ids=str)
@pytest.mark.parametrize("screen", STAGES)
def test_every_stage_is_filled_and_clean(met, screen, name, changes, units):
    """All four together and each alone: no letter meets anything, none is under 12 px, and three
    fifths of the stage lie inside the drawing.
    """
    wide, high, count = STAGES[screen]
    for view in ("all", *TURNS):
        stage = stage_cells(view, wide, high)
        assert stage.count == (count if view == "all" else 1)
        views = shown(met(name, changes), view, units, stage)
        assert [name for name, *_ in views] == (list(TURNS) if view == "all" else [view])
        for key, cell, sheet in views:
            assert collisions(sheet) == [], (view, key)
            share = {4: cell.right / stage.width, 2: 0.5, 1: 1.0}[stage.count]
            dots = wide * share / cell.right
            assert min(n.size for n in sheet.labels) / 0.73 * dots >= LETTER, (view, key)
        assert filled(views, stage) >= 0.6, view


@settings(deadline=None, max_examples=200, suppress_health_check=list(HealthCheck))
@given(
    st.tuples(st.integers(360, 2600), st.integers(400, 1400)),
    st.sampled_from(["all", *TURNS]),
    st.sampled_from(list(pairs())),
    st.sampled_from(SYSTEMS),
)
def test_nothing_meets_on_a_stage_of_any_size(met, size, view, which, units):
    stage = stage_cells(view, *size)
    for name, _, sheet in shown(met(*which), view, units, stage):
        assert collisions(sheet) == [], name


@settings(deadline=None, max_examples=100)
@given(
    st.integers(200, 4000),
    st.integers(150, 2500),
    st.sampled_from([None, 1, 2, 4]),
    st.sampled_from(["all", "front", "room"]),
)
def test_cells_share_the_stage(wide, high, count, view):
    """Side by side they are as wide as the stage, one over the other as high; a stage too small for
    a view keeps its own shape.
    """
    stage = stage_cells(view, wide, high, count)
    cells = stage.cells
    if view != "all":
        assert list(cells) == [view]
    elif stage.count == 4:
        assert cells["front"].right + cells["section"].right + cells["roof"].right == pytest.approx(
            stage.width
        )
        assert cells["front"].top + cells["plan"].top == pytest.approx(stage.height)
        assert cells["section"].top == cells["roof"].top == stage.height
    else:
        assert len(set(cells.values())) == 1
        assert cells["front"].right == pytest.approx(stage.width / stage.count)
    assert stage.width / stage.height == pytest.approx(wide / high)
    assert all(c.left == c.bottom == 0.0 for c in cells.values())


def test_a_view_is_drawn_again_only_when_something_moved(boathouse):
    """The very same sheet means: send nothing."""
    stage = stage_cells("all", 980, 640)
    first, taller = (
        {n: s for n, _, s in shown(assess(design), "all", "feet-inches", stage)}
        for design in (boathouse, change(boathouse, {"flue.sections": 30}))
    )
    assert {name for name in TURNS if first[name] is not taller[name]} == {"roof"}
    again = {n: s for n, _, s in shown(assess(boathouse), "all", "feet-inches", stage)}
    assert all(first[name] is again[name] for name in TURNS)


def test_what_was_asked_lately_is_kept_and_the_oldest_goes(boathouse, monkeypatch):
    """However many were drawn before: one more never costs those beside it."""
    monkeypatch.setattr(compose, "_kept", {})
    monkeypatch.setattr(compose, "MOST_KEPT", len(TURNS) + 1)
    stage = stage_cells("all", 980, 640)

    def drawn(count):
        design = change(boathouse, {"flue.sections": count})
        return {n: s for n, _, s in shown(assess(design), "all", "feet-inches", stage)}

    first = drawn(24)
    later = [drawn(count) for count in range(25, 30)]
    assert {name for name in TURNS if first[name] is not later[-1][name]} == {"roof"}
    assert len(compose._kept) == len(TURNS) + 1
    assert drawn(24)["roof"] is not first["roof"]


@pytest.mark.parametrize("screen", STAGES)
def test_a_step_is_small(met, screen):
    """All four views, letters and all, in 40 kB: what a drag can send at most."""
    wide, high, _ = STAGES[screen]
    stage = stage_cells("all", wide, high)
    sent = 0
    for _, cell, sheet in shown(met("laid", {}), "all", "feet-inches", stage):
        told, body = page_message(sheet, "light", cell)
        sent += len(json.dumps(told)) + len(body)
    assert sent <= 40_000


ARCHED = {"opening.head": "segmental", "opening.rise": "6 in"}
TWO_FLUES = {
    "second_flue.serves": "appliance",
    "second_flue.side": "left",
    "second_flue.shape": "round",
    "second_flue.size": "8",
}
OTHERS = {
    "room": ("plain", {}),
    "detail": ("laid", {}),
    "arch": ("laid", ARCHED),
    "chimney": ("plain", TWO_FLUES),
    "bricks": ("laid", {}),
    "staging": ("set", {}),
}
"""Every other view of the catalogue, with a design that has what it shows."""


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize("screen", sampled(list(STAGES), 3))
@pytest.mark.parametrize("view", OTHERS)
def test_every_other_view_is_clean_on_every_stage(met, view, screen, units):
    """The room with every proportion guide laid over it."""
    assert set(OTHERS) | set(TURNS) == set(CATALOGUE), "name in OTHERS a design that shows it"
    result = met(*OTHERS[view])
    assert CATALOGUE[view].suits(result.geometry)
    stage = stage_cells(view, *STAGES[screen][:2])
    for guides in ((), NAMES) if view == "room" else ((),):
        for *_, sheet in stage_views(view, result.geometry, units, (), guides, stage):
            assert collisions(sheet) == [], guides


@pytest.mark.parametrize("name", sampled(["laid", "plain", "set"], 1))
@pytest.mark.parametrize("screen", sampled(list(reversed(STAGES)), 2))
def test_a_check_is_marked_on_every_stage(met, screen, name):
    """Where it is measured, its caption over it in as many rows as it needs."""
    result = met(name, {})
    (paper,) = stage_cells("marked", *STAGES[screen][:2]).cells.values()
    shown = [finding for finding in result.findings if can_show(finding)]
    assert len(shown) > 15
    for finding, units in itertools.product(shown, SYSTEMS):
        sheet = marked(finding, result.geometry, units, paper)
        assert (sheet.width, sheet.height) == (paper.right, paper.top)
        assert collisions(sheet) == [], finding.key
        words = " ".join(label.text for label in sheet.labels)
        assert finding.key in words
        assert finding.clause in words


@pytest.mark.parametrize(
    "changes",
    [
        {"base.footing_projection": "36 in"},
        {"hearth.front": "72 in"},
        {"opening.hood": "1 in"},
        {"breast.place": "across a corner"},
        {"breast.place": "across a corner", "breast.across": "8 ft", "breast.projection": "6 in"},
    ],
    ids=str,
)
def test_rarer_ends_are_clean_too(met, changes):
    """A footing that reaches out before the hearth, a hearth that takes the whole width, one level
    more to name; across a corner, with room behind and without.
    """
    for (wide, high, _), name, units in itertools.product(
        STAGES.values(), ("plain", "laid"), SYSTEMS
    ):
        stage = stage_cells("all", wide, high)
        for key, _, sheet in shown(met(name, changes), "all", units, stage):
            assert collisions(sheet) == [], (wide, high, name, key)
