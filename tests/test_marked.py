"""A check on its view: what is measured there is what the check compares, and the sheet stays
clean.
"""

import csv
from math import hypot
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from sampled import sampled
from strategies import designs

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.base.units import INCH, from_unit
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.marked_check import can_show, marked
from fireplace_calc.drawing.composed.marked_places import PLACES
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import part_body

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
@example(load(DESIGNS / "boathouse.toml"))
@example(change(Design(), {"breast.place": "across a corner"}))
def test_what_is_marked_is_what_is_compared(design):
    """From where to where on the view, against what the check says is there."""
    for finding, geometry in shown(design):
        start, end = PLACES[finding.key][1](geometry)
        drawn = hypot(end[0] - start[0], end[1] - start[1])
        if finding.key == "PRA-03":  # compares what is left over, and is shown on the whole back
            assert drawn == pytest.approx(geometry.frame.back_width)
            assert start[0] == -end[0] and start[1] == end[1] == geometry.frame.depth
            continue
        assert drawn == pytest.approx(abs(from_unit(finding.provided, finding.unit)), abs=2e-6), (
            finding
        )


def test_a_jamb_is_marked_from_the_opening_to_the_end_of_the_masonry():
    """36 in of opening and jambs of 12: from 18 to 30 in, and not over the opening."""
    start, end = PLACES["PRA-17"][1](build_geometry(change(Design(), {"firebox.jamb": "12 in"})))
    assert (start[0] / INCH, end[0] / INCH) == pytest.approx((18, 30))


SEEN = {"plan": (0, 1), "front": (0, 2), "section": (1, 2)}
"""Axes of space that lie across and up a view."""


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_a_mark_lies_on_the_part_that_its_check_speaks_of(name):
    """Any of those that ``part_checks`` names with the check: the boxes of both meet on the view.
    Air beside the smoke chamber (CA-066, CA-067) is shown beside the firebox, which the plan cuts.
    """
    with (DESIGNS.parent / "part_checks.csv").open(newline="") as file:
        spoken = [(row["part"], row["keys"].split()) for row in csv.DictReader(file)]
    seen = 0
    for finding, geometry in shown(load(DESIGNS / f"{name}.toml")):
        view, measured = PLACES[finding.key]
        bodies = [part_body(geometry.by_name[part]).bounding_box() for part, keys in spoken
                  if finding.key in keys and part in geometry.by_name]  # fmt: skip
        if view not in SEEN or not bodies or finding.key in ("CA-066", "CA-067"):
            continue
        ends, seen = measured(geometry), seen + 1
        assert any(
            all(
                min(a[k], b[k]) < box[3 + axis] + 1e-6 and max(a[k], b[k]) > box[axis] - 1e-6
                for k, axis in enumerate(SEEN[view])
            )
            for box in bodies
            for a, b in [ends]
        ), finding.key
    assert seen > 10


@pytest.mark.parametrize("units", sampled(["feet-inches", "millimetres"], 1))
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
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


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_the_long_stroke_stands_where_what_is_asked_would_end(name):
    """Short strokes of 3.6 mm at both ends of what is there, one of 6.4 mm at the share that is asked,
    all square to it; one that would cross a figure or leave the sheet is left out.
    """
    long_ones = 0
    for finding, geometry in shown(load(DESIGNS / f"{name}.toml")):
        sheet = marked(finding, geometry)
        ink = "bad" if finding.verdict == "falls short" else "good"
        before = {
            line.tobytes() for other in ("good", "bad") for line in sheet.lines["flag", other]
        }
        assert before and not sheet.lines["flag", "good" if ink == "bad" else "bad"]
        measured, *strokes = sheet.lines["flag", ink]
        start, along = measured[0], measured[1] - measured[0]
        length = hypot(*along)
        for stroke in strokes:
            size, middle = hypot(*(stroke[1] - stroke[0])), stroke.mean(axis=0)
            assert abs((stroke[1] - stroke[0]) @ along) < 1e-6 * max(length, 1)
            place = (middle - start) @ along / length**2 if length else 0.0
            if size == pytest.approx(3.6):
                assert place == pytest.approx(round(place), abs=1e-6)
            else:
                assert size == pytest.approx(6.4)
                share = finding.required / abs(finding.provided)
                if finding.key != "PRA-03":
                    assert place == pytest.approx(share, rel=1e-3), finding.key
                long_ones += 1
    assert long_ones >= 8


def test_every_marked_key_is_a_rule():
    rules = {key for pack in PACKS.values() for key in pack.keys}
    assert set(PLACES) <= rules


def test_an_outlet_that_passes_by_the_ridge_is_measured_from_the_ridge():
    """England's Diagram 17, B: under 1000 mm over the slope the ridge's own level is enough."""
    design = change(Design(), {"roof.pitch": "1:12", "roof.ridge_distance": "9 ft"})
    frame = build_geometry(design).frame
    design = change(design, {"roof.ridge_level": f"{frame.liner_top - 0.3!r} m"})
    finding = {f.key: f for f in assess(design, "UK ADJ").findings}["UK-011"]
    assert finding.verdict == "meets" and finding.provided == pytest.approx(300.0)
    start, end = PLACES["UK-011"][1](build_geometry(design))
    assert (start[1], end[1]) == pytest.approx((design.roof.ridge_level, frame.liner_top))


@pytest.mark.parametrize(
    ("side", "back", "where"),
    [  # a block of 60 by 28-1/2 in: beside its middle, or behind it, a third of the opening over
        ("2 in", "4 in", ((-30, 14.25), (-32, 14.25))),
        ("2 in", None, ((-30, 14.25), (-32, 14.25))),
        ("4 in", "2 in", ((6, 28.5), (6, 30.5))),
        (None, "3 in", ((6, 28.5), (6, 31.5))),
        ("2 in", "2 in", ((6, 28.5), (6, 30.5))),
    ],
)
def test_the_narrower_air_is_marked_beside_or_behind(side, back, where):
    told = {"clearance.side": side, "clearance.back": back}
    place = PLACES["CA-064"][1](build_geometry(change(Design(), told)))
    assert [n / 0.0254 for point in place for n in point] == pytest.approx(
        [n for point in where for n in point]
    )


def test_a_check_that_measures_no_length_is_not_marked():
    result = assess(load(DESIGNS / "plain.toml"))
    finding = next(f for f in result.findings if can_show(f))
    with pytest.raises(ValueError, match=f"^{finding.key} measures no length on a view.$"):
        marked(finding._replace(provided=None), result.geometry)
