"""Storey rods: every course of the one list stands on them once, at its own level."""

import re
from collections import Counter, defaultdict
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from sampled import sampled
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import FEET_INCHES, INCH, SYSTEMS
from fireplace_calc.brickwork.courses import FACING, Course, course_list, odd_courses
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plates.marks import title_width
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.plates.whole_set import sheets
from fireplace_calc.drawing.rods import rod_figure
from fireplace_calc.drawing.rods.marked_lanes import (
    FACED,
    course_name,
    lanes,
    named_levels,
)
from fireplace_calc.drawing.rods.rod_figure import StripDrawing
from fireplace_calc.drawing.rods.sheet import MORE
from fireplace_calc.drawing.rods.sheet import plates as sheet_plates
from fireplace_calc.drawing.rods.strips import plan_rod, staggered, strip_width
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.views.layout import level

MAKER = ("rods.sheet",)


def drawn(design, units=FEET_INCHES, size="A3"):
    return sheets(assess(design), units, size, makers=MAKER)


def written(design, units=FEET_INCHES, size="A3"):
    return [label for _, sheet in drawn(design, units, size) for label in sheet.labels]


@pytest.mark.parametrize("size", sampled([*PAPERS], 2))
@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_the_sheet_is_clean(name, units, size):
    made = drawn(load(DESIGNS / f"{name}.toml"), units, size)
    assert len(made) == 1 or size in ("letter", "A4")
    for _, sheet in made:
        assert not collisions(sheet)
        assert min(label.size for label in sheet.labels) >= 2.5


@settings(max_examples=24, deadline=None)
@given(designs())
def test_every_course_stands_on_the_rod_at_its_level(design):
    geometry = assess(design).geometry
    texts = [label.text for label in written(design)]
    for lane in lanes(geometry):
        for course in lane.courses:
            told = level(course.top, FEET_INCHES)
            if lane.name == FACED:
                assert told in texts
            else:
                assert f"{course_name(course)}  {told}{'*' if course.cut else ''}" in texts
    listed = course_list(geometry)
    faced = [c for lane in lanes(geometry) if lane.name == FACED for c in lane.courses]
    assert [c for c in faced if c.part == FACING] == [*listed.of(FACING)]
    numbers = [text for text in texts if text.isdigit()]
    assert len([n for n in numbers if len(n) < 4]) >= len(faced)


LEVEL = re.compile(r"(?:(.+?)  )?(-?[\d\s]+|-?\d+'-.+\")(\*?)$")
"""A name, a level, a star, as they stand on a rod."""


def read_level(text):
    """A level as it is written, and half of its last mark. [m]"""
    if '"' in text:
        value = to_si(text.lstrip("-"), "length")
        return -value if text.startswith("-") else value, INCH / 32
    return int(re.sub(r"\s", "", text)) / 1000, 5e-4


def pointed(sheet):
    """What is written on a rod beside the height its line points at: name, level and half of its mark
    [m], star, height on paper [mm], column.
    """
    lines = [line for line in sheet.lines["dimension", "ink"] if len(line) in (2, 3, 4)]
    ends = np.array([line[-1] for line in lines])
    left = np.array([(label.x, label.y) for label in sheet.labels])
    for label in sheet.labels:
        said = LEVEL.match(label.text)
        if not said or label.va != "middle":
            continue
        name, told, star = said.groups()
        beside = 0.8 if label.ha == "right" else -0.8
        (n,) = np.nonzero(np.abs(ends - (label.x + beside, label.y)).max(axis=1) < 0.01)
        if len(n):
            at = lines[n[0]][0][1]
        elif label.ha == "left" and (np.abs(ends[:, 1] - label.y) < 0.01).any():
            (n,) = np.nonzero(np.abs(left - (label.x - 1.4, label.y)).max(axis=1) < 0.01)
            name, at = sheet.labels[n[0]].text, label.y
        else:
            continue
        yield name, *read_level(told), star, at, round(label.x, 1)


def rod_agrees(result, units, size="A3"):
    """A rod measured back: what stands in one column is to scale within half a mark and 0.02 mm of
    paper; every course of the list that belongs on it is there once; and there are as many of each
    part as the takeoff orders.
    """
    on, told = paper(units, size), Counter()
    for plate in sheet_plates(result, units, on):
        scale, columns = 1000 / plate.denominator, defaultdict(list)
        for name, value, half, star, at, column in pointed(plate.sheet):
            columns[column].append((at - value * scale, half * scale + 0.02))
            told[name, round(value, 5), star] += 1
        for column in columns.values():
            low = max(foot - spare for foot, spare in column)
            high = min(foot + spare for foot, spare in column)
            assert low <= high, "no foot puts every figure of a column to scale"
    geometry = result.geometry
    listed = course_list(geometry)
    for part, letter in LETTERED.items():
        wanted = Counter()
        for course in listed.of(part):
            if course.kind not in ("brick", "tile") or part == FACING:
                value, _ = read_level(level(course.top, units))
                star = "*" if course.cut and part != FACING else ""
                wanted[f"{letter}{course.number}", round(value, 5), star] += 1
        assert not wanted - told, (part, wanted - told)
    pieces = {row.item: row.net for row in result.takeoff}
    flue = sum(1 for name, *_ in told.elements() if name[0] == "F" and name[1:].isdigit())
    ordered = {pieces[item] for item in FLUE_ITEMS if item in pieces}
    assert not ordered or ordered == {flue}


LETTERED = {
    "base walls": "B",
    "firebox lining": "L",
    "flue liner": "F",
    FACING: "",
}
"""Parts whose every course stands on the rod, and the letter before its number."""
FLUE_ITEMS = ("Clay flue liner", "Flue section")


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_the_rod_measures_what_it_says(name, units):
    rod_agrees(assess(load(DESIGNS / f"{name}.toml")), units)


@settings(max_examples=24, deadline=None)
@given(designs())
def test_random_designs_are_clean(design):
    for _, sheet in drawn(design):
        assert not collisions(sheet)


def test_levels_run_from_the_floor_each_rounded_once():
    """The boathouse by hand: block of 7 5/8 with beds of 3/8 on a footing at -4'-4"."""
    texts = [label.text for label in written(load(DESIGNS / "boathouse.toml"))]
    for n, told in enumerate(("-3'-8\"", "-3'-0\"", "-2'-4\"", "-1'-8\""), 1):
        assert any(t.startswith(f"B{n}  {told}") for t in texts), (n, told)


def test_levels_with_names_are_the_frames():
    geometry = assess(Design()).geometry
    told = {name: one.level for one in named_levels(geometry) for name in one.name.split(", ")}
    assert told["FLOOR"] == 0.0
    assert told["HEARTH"] == geometry.frame.hearth
    assert told["throat"] == geometry.frame.throat


@pytest.mark.parametrize("place", ["HEARTH", "FLOOR"])
def test_what_everything_is_measured_from_is_bold(place):
    design = change(Design(), {"base.hearth_level": "10 in"})
    assert any(label.bold and place in label.text for label in written(design))


def test_columns_keep_figures_apart():
    courses = [n * 2.667 * INCH for n in range(20)]
    assert staggered(courses, 16) == 1
    assert staggered(courses, 24) == 2
    assert staggered(courses, 48) == 3


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_what_comes_out_odd_is_told_whole_or_where_it_stands(name, size):
    """A sentence stopped in its middle, and the rest was to stand on the cover, where it does not."""
    result = assess(load(DESIGNS / f"{name}.toml"))
    odd = odd_courses(result.geometry, FEET_INCHES)

    def said(maker):
        made = sheets(result, FEET_INCHES, size, makers=(maker,))
        return [" ".join(label.text for label in sheet.labels) for _, sheet in made]

    every = " ".join(said("cutting.sheets"))
    assert odd and all(text in every for text in odd)
    for told in said("rods.sheet"):
        here = [text in told for text in odd]
        assert here == sorted(here, reverse=True), "in their order, none left out between"
        assert size in ("letter", "A4") or (MORE in told) == (not all(here))
        cut = odd[sum(here)] if not all(here) else ""
        assert "see the cover" not in told
        assert not cut or " ".join(cut.split()[:6]) not in told, "begun and not ended"


def test_it_is_said_where_numbers_start_again():
    """After course 52 of the face comes 17 of the chimney, which looks like a mistake."""
    design = load(DESIGNS / "boathouse.toml")
    brick = next(lane for lane in lanes(assess(design).geometry) if lane.name == FACED)
    numbers = [course.number for course in brick.courses]
    assert numbers != sorted(numbers)
    told = " ".join(label.text for label in written(design))
    assert "over the face, numbers are those of the chimney's brick" in told


def test_each_name_stands_at_its_level_of_the_frame():
    """One by one, in a house whose roof and chamber have levels of their own."""
    geometry = assess(load(DESIGNS / "boathouse-laid.toml")).geometry
    f = geometry.frame
    told = {name: one.level for one in named_levels(geometry) for name in one.name.split(", ")}
    assert f.downhill_contact < f.uphill_contact and f.taper_top < f.flue_start
    places = {one.level: one.name for one in named_levels(geometry)}
    assert "roof, downhill" in places[f.downhill_contact]
    assert "roof, uphill" in places[f.uphill_contact]
    assert "chamber, top" in places[f.taper_top]
    assert told["flue starts"] == f.flue_start
    assert told["shoulder begins"] == f.block_top


@pytest.mark.parametrize(("name", "lane"), [("boathouse", "lined"), ("plain", "set")])
def test_the_lining_stands_in_its_lane(name, lane):
    """Before pieces in a lane of its own, else with what is set; every course of it."""
    geometry = assess(load(DESIGNS / f"{name}.toml")).geometry
    lining = course_list(geometry).of("firebox lining")
    assert lining
    (where,) = (one for one in lanes(geometry) if one.name == lane)
    assert [c for c in where.courses if c.part == "firebox lining"] == [*lining]


@pytest.mark.parametrize("units", SYSTEMS)
def test_a_strip_is_as_wide_as_its_title(units):
    """Titles of narrow strips side by side ran into each other on a letter sheet; here nothing
    stands beside a strip.
    """
    geometry = assess(Design()).geometry
    plan = plan_rod(lanes(geometry), named_levels(geometry), units, 250.0, 120.0, 4.0)
    assert len(plan.strips) > 1
    for strip in plan.strips:
        ends = f"from {level(strip.bottom, units)} to {level(strip.top, units)}"
        told = SCALES[units][plan.denominator], ends
        assert strip_width(plan, strip, []) >= title_width("11", "The rod, continued", *told)


CROWDED = [
    {"base.block_height": "3 in", "base.footing_depth": "144 in", "base.hearth_level": "48 in"},
    {"base.block_height": "3 in", "base.footing_depth": "120 in", "pieces.set": "small"},
]
"""Courses that stand closer than their figures, at any scale."""


@pytest.mark.parametrize("size", sampled(["letter", "A3"], 1))
@pytest.mark.parametrize("changes", CROWDED, ids=["laid", "set"])
def test_courses_closer_than_their_figures_keep_on_the_sheet(changes, size):
    """A base of low block ran its figures down over the title block and off the paper."""
    on = PAPERS[size]
    for units in SYSTEMS:
        for _, sheet in drawn(change(Design(), changes), units, size):
            assert not collisions(sheet, 0.7)
            for label in sheet.labels:
                left, low, right, top = label.extent
                assert left > 0 and low > 0 and right < on[0] and top < on[1], label.text


def test_the_lining_of_a_chamber_and_its_walls_are_told_apart():
    """Both are in one lane; *S5* stood there twice."""
    one, other = Course("smoke chamber lining", 5, 0, 1), Course("smoke chamber walls", 5, 0, 1)
    assert course_name(one) != course_name(other)


def test_figures_that_outgrow_their_strip_take_the_height_of_the_sheet():
    """1 m at one to ten from 50 mm up: 100 mm on paper, and 2 mm under and 6 over it are free."""
    plan, strip = SimpleNamespace(denominator=10.0), SimpleNamespace(bottom=0.0, top=1.0)
    one = StripDrawing(Sheet(400.0, 300.0), plan, strip, 20.0, (50.0, 240.0), FEET_INCHES)
    assert (one.y(0.0), one.y(1.0)) == (50.0, 150.0)
    assert one._limits(108.0, 6.0) == (48.0, 156.0)
    assert one._limits(108.1, 6.0) == (48.0, 246.0)
    one.foot = 60.0
    assert one._limits(108.0, 6.0) == (58.0, 166.0) and one._limits(120.0, 4.0) == (48.0, 244.0)


@pytest.mark.parametrize("needed", [20.0, 128.0, 1000.0])
def test_a_strip_that_its_figures_outgrow_stands_in_the_middle_of_them(monkeypatch, needed):
    """As far up as half of what they reach over it; no farther than the sheet has room."""
    drawn_at, real = [], StripDrawing.draw

    def draw(self, *of):
        real(self, *of)
        drawn_at.append((self.y(self.strip.top) - self.foot, *self.room, self.foot))

    monkeypatch.setattr(StripDrawing, "draw", draw)
    monkeypatch.setattr(rod_figure, "crowd", lambda *of: needed)
    drawn(Design(), FEET_INCHES, "letter")
    assert len(drawn_at) == 3
    for high, low, top, foot in drawn_at:
        assert 120.0 < high < 127.0 < top - low
        over = {20.0: 0.0, 128.0: 128.0 - high, 1000.0: top - low - high}[needed]
        assert foot == pytest.approx(low + over / 2)
