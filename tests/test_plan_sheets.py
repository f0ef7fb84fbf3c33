"""Plans of footing, throat, roof and two flues, and the height against the roof, on sheets."""

import io
import re

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from sampled import sampled
from sheet_ink import inked
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plan_sheets import plans
from fireplace_calc.drawing.plan_sheets.against_roof import _seen_from
from fireplace_calc.drawing.plan_sheets.base_plan import core_strings
from fireplace_calc.drawing.plan_sheets.level_cut import level_rings
from fireplace_calc.drawing.plan_sheets.roof_plan import cricket_run, pitch_words, uphill
from fireplace_calc.drawing.plan_sheets.throat_plan import throat_corners
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.figure import put
from fireplace_calc.drawing.plates.fill_sheets import chosen_scales, filled
from fireplace_calc.drawing.plates.packing import places
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.plates.words_round import Sizes, annotated
from fireplace_calc.drawing.sheets.dimensions import CLEAR
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.polygons import signed_area

SOME = settings(deadline=None, max_examples=20, suppress_health_check=list(HealthCheck))
MAKER = ("plan_sheets.plans",)
TWO = {"second_flue.serves": "fireplace"}
NAMES = ("boathouse", "boathouse-laid", "plain")


def shipped(name, **changes):
    return assess(change(load(DESIGNS / f"{name}.toml"), changes))


def sheets(result, units="feet-inches", size="A3"):
    return whole_set.sheets(result, units, size, makers=MAKER)


def drawn(result, key, units="feet-inches", denominator=24.0):
    """One figure alone on a large sheet, and the window it was drawn through."""
    (figure,) = (f for f in plans.figures(result, units) if f.key == key)
    sheet = Sheet(900.0, 900.0)
    return sheet, put(sheet, (250.0, 250.0), figure, denominator, "")


def written(sheet):
    return {label.text for label in sheet.labels}


CASES = [(name, size, units) for size in PAPERS for units in SCALES for name in NAMES]


@pytest.mark.parametrize(("name", "size", "units"), sampled(CASES, 3))
def test_every_shipped_design_is_clean_on_every_paper(name, size, units):
    for told in ({},) if name == "boathouse" else ({}, TWO):
        for title, sheet in sheets(shipped(name, **told), units, size):
            assert not collisions(sheet, CLEAR), (title, told)
            assert min(label.size for label in sheet.labels) >= SMALL


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("name", NAMES)
def test_one_large_sheet_holds_them_and_is_half_used(name, units):
    ((_, sheet),) = sheets(shipped(name), units)
    assert inked(sheet) >= 0.5


FAR_OUT = {
    "arch": {"opening.head": "segmental", "opening.rise": "5 in"},
    "hood": {"opening.hood": "8 in"},
    "no hearth extension": {"hearth.front": "0 in"},
    "seats": {"base.hearth_level": "12 in", "seat.left": "40 in", "seat.right": "20 in"},
    "outside": {"chimney.location": "exterior"},
    "straight": {"breast.form": "straight"},
    "flush": {"breast.form": "flush"},
    "offset": {"flue.offset": "18 in", "flue.offset_rise": "36 in"},
    "second flue from below": {"second_flue.serves": "appliance", "second_flue.start": "-30 in"},
    "hollow core, ash pit": {"base.core": "hollow", "ground.ash_dump": True},
    "flat roof": {"roof.pitch": "0"},
    "through the ridge": {"roof.position": "through the ridge"},
    "ridge front to back": {"roof.ridge_runs": "front to back", "roof.cricket": True},
    "cap and arrester": {"chimney.rain_cap": True, "chimney.arrester": True},
    "low ceiling": {"house.ceiling": "6 ft"},
    "overmantel": {"mantel.family": "paneled overmantel"},
    "steel unit": {"firebox.lining": "steel unit"},
    "short": {"flue.sections": 4},
    "as tall as can be": {"flue.sections": 40, "flue.section_height": "24 in"},
    "roof under the ground": {
        "roof.ridge_level": "7 ft",
        "roof.ridge_distance": "60 ft",
        "roof.pitch": "24:12",
    },
    "through a ridge front to back": {
        "roof.position": "through the ridge",
        "roof.ridge_runs": "front to back",
        "clearance.chimney": "unknown",
    },
    "cricket on a roof that is nearly flat": {
        "roof.pitch": "1.5:12",
        "roof.cricket": True,
        "roof.cricket_height": "8 ft",
    },
    "seven materials": {
        "firebox.masonry": "hollow grouted solid",
        "firebox.lining": "refractory section",
        "smoke_chamber.lining": "parged",
        "chimney.masonry": "stone",
        "chimney.cap_material": "metal",
    },
    "two dormers of one name": {
        "roof.nearby": [
            {"name": "dormer", "distance": "56 ft", "level": "60 ft"},
            {"name": "dormer", "distance": "6 ft", "level": "30 ft"},
        ]
    },
}
MAKERS = ("plan_sheets.plans", "details.sheet")


@pytest.mark.parametrize("told", FAR_OUT.values(), ids=FAR_OUT)
def test_what_is_unusual_is_clean_too(told):
    result = assess(change(Design(), told))
    for size, units in (("11x17", "feet-inches"), ("letter", "millimetres")):
        for title, sheet in whole_set.sheets(result, units, size, makers=MAKERS):
            assert not collisions(sheet, CLEAR), (title, size)


def test_a_roof_that_rises_above_the_drawing_ends_there():
    """A ridge at 100 ft, 52 ft away up a slope of 36 in 12: its slope ran off the sheet."""
    steep = {"roof.pitch": "36:12", "roof.ridge_distance": "52 ft", "roof.ridge_level": "100 ft"}
    result = shipped("plain", **steep)
    (figure,) = (f for f in plans.figures(result, "feet-inches") if f.key == "roof")
    sheet, view = drawn(result, "roof", denominator=96.0)
    highest = max(line[:, 1].max() for line in sheet.lines["seen", "ink"])
    assert highest <= view.at(0.0, figure.box[3])[1] + 1e-6


@pytest.mark.parametrize("size", sorted(PAPERS))
def test_the_height_is_no_dwarf_beside_large_plans(size):
    """Two flues led far aside: large plans left the height 16 mm at 1:500, its levels on its title."""
    aside = {"flue.offset": "60 in", "flue.offset_rise": "60 in", "roof.cricket": True}
    result = assess(change(Design(), TWO | aside))
    told = []
    for title, sheet in sheets(result, "millimetres", size):
        assert not collisions(sheet, CLEAR), title
        told += [text for text in written(sheet) if "flue sections" in text]
    (scale,) = told
    assert int(scale.partition(",")[0].removeprefix("1:")) <= 200


def test_a_string_under_a_plan_keeps_below_notes_that_are_higher_than_it():
    """With a string over it too the notes have to go down, their leaders across the string's place."""
    notes = [
        ((-0.3, 0.03 * k), f"note {k} of a low plan with strings over and under it")
        for k in range(9)
    ]
    figure = annotated(
        "roof_plan",
        (-1.0, 0.0, 1.0, 0.3),
        lambda view: view.path([(-0.5, 0.0), (0.5, 0.0)], "seen"),
        "millimetres",
        (25.0,),
        left=notes,
        below=[Sizes((-0.7, -0.65), 0.0, "air")],
        above=[Sizes((-0.5, 0.5), 0.3, "offset")],
    )
    sheet = Sheet(400.0, 400.0)
    put(sheet, (50.0, 50.0), figure, 25.0, "")
    assert not collisions(sheet, CLEAR)


@pytest.mark.parametrize("denominator", [100.0, 500.0])
def test_levels_of_a_small_height_stand_over_it_and_not_on_its_title(denominator):
    sheet, _ = drawn(shipped("plain"), "roof", "millimetres", denominator)
    assert not collisions(sheet, CLEAR)


def test_what_rises_above_the_drawing_is_open_there():
    """A tower of 113 ft, 12 ft away, over a ridge at 28 ft: its sides ran off the sheet."""
    tower = {"name": "tower", "distance": "12 ft", "level": "113 ft"}
    steep = {"pitch": "36:12", "ridge_distance": "6 ft", "ridge_level": "28 ft"}
    steep |= {"eaves_level": "0 ft", "nearby": [tower]}
    told = {f"roof.{key}": value for key, value in steep.items()}
    result = shipped("plain", **told, **{"base.footing_depth": "144 in"})
    (figure,) = (f for f in plans.figures(result, "feet-inches") if f.key == "roof")
    sheet, view = drawn(result, "roof", denominator=96.0)
    top = view.at(0.0, figure.box[3])[1]
    seen = [line for line in sheet.lines["seen", "ink"] if len(line) == 4]
    heads = [line for line in seen if line[0, 1] == line[3, 1] == line[:, 1].max()]
    assert any(abs(line[0, 1] - top) < 1e-6 for line in heads), "two sides, open at the top"
    assert all(line[:, 1].max() <= top + 1e-6 for line in seen)


@pytest.mark.parametrize("units", SCALES)
def test_the_pdf_measures_to_scale(units):
    """The lines of the page's own stream, in points of 1/72 in, as ISO 32000 has them (from
    memory): the core's width of footing and base.
    """
    result = shipped("boathouse-laid")
    (figure,) = (f for f in plans.figures(result, units) if f.key == "base_plan")
    sheet = Sheet(420.0, 297.0)
    put(sheet, (20.0, 20.0), figure, 25.0, "")
    file = io.BytesIO()
    book = PdfBook(file, "Plans", "Test")
    book.add(sheet)
    book.save()
    (page,) = PdfReader(file).pages
    stream = page.get_contents().get_data().decode("latin-1")
    points = re.findall(r"([-\d.]+) ([-\d.]+) [ml]\b", stream)
    points = np.array([(float(x), float(y)) for x, y in points]) * 25.4 / 72
    (core,) = (s for s in sheet.measured if s.along == "x")
    on_it = points[np.abs(points[:, 1] - (core.line - 0.8)) < 0.05, 0]
    f, wide = result.geometry.frame, result.design.base.block_width
    left, right = (min(on_it, key=lambda x, at=at: abs(x - at)) for at in core.stops[::2])
    assert abs((right - left) - 2 * (f.block_half - wide) * 1000 / 25.0) < 0.2


@settings(SOME)
@given(designs(), st.sampled_from(sorted(PAPERS)), st.sampled_from(sorted(SCALES)))
def test_any_design_is_clean_on_any_paper(design, size, units):
    for title, sheet in sheets(assess(design), units, size):
        assert not collisions(sheet, CLEAR), title


@settings(SOME)
@given(designs(), st.sampled_from(sorted(SCALES)))
def test_every_size_on_a_plan_is_the_geometry_own(design, units):
    """By hand from frame and inputs: what the base walls surround, and the throat."""
    result = assess(design)
    f, wide = result.geometry.frame, design.base.block_width
    sheet, _ = drawn(result, "base_plan", units, 48.0)
    if f.second is None and min(f.block_half, f.block_back / 2) > wide + 0.01:
        inside = {length(f.block_half - wide, units), length(f.block_back - 2 * wide, units)}
        assert inside <= written(sheet)
    sheet, _ = drawn(result, "throat_plan", units, 12.0)
    assert length(f.throat_width / 2, units) in written(sheet)


@settings(SOME)
@given(designs())
def test_a_level_cut_holds_what_the_solids_hold(design):
    """Area of rings with holes against thin slices of the part's own volume, from its solids."""
    geometry = assess(design).geometry
    for part in geometry.parts:
        z = (part.bottom + part.top) / 2
        area = sum(signed_area(ring) for ring in level_rings(geometry, part, z))
        adds, cuts = part.plan(z)
        wanted = sum(abs(signed_area(r)) for r in adds) - sum(abs(signed_area(r)) for r in cuts)
        assert area == pytest.approx(wanted, abs=1e-9), part.name


@pytest.mark.parametrize("name", NAMES)
def test_a_plan_is_drawn_to_its_scale(name):
    """The footing's outline measured on the paper."""
    result = shipped(name)
    f, out = result.geometry.frame, result.design.base.footing_projection
    for denominator in (16.0, 24.0, 48.0):
        sheet, _ = drawn(result, "base_plan", denominator=denominator)
        rings = [r for r in sheet.lines["seen", "ink"] if len(r) == 5 and (r[0] == r[-1]).all()]
        wide = max(ring[:, 0].max() - ring[:, 0].min() for ring in rings)
        assert wide == pytest.approx(2000 * (f.block_half + out) / denominator, abs=0.2)


def test_a_cricket_meets_the_roof_where_its_ridge_is_as_high():
    """A level ridge 9 1/4 in over a roof of 7:12 runs 9.25 / (7/12) = 15.857 in into it."""
    run, told = cricket_run(shipped("boathouse").geometry, 0.3)
    assert told
    assert run / 0.0254 == pytest.approx(15.857, abs=5e-4)
    assert cricket_run(shipped("boathouse", **{"roof.cricket_height": None}).geometry, 0.3) == (
        0.3,
        False,
    )


def test_what_nobody_told_is_not_drawn():
    told = shipped("boathouse", **{"clearance.chimney": None, "roof.cricket": None})
    sheet, _ = drawn(told, "roof_plan")
    said = " ".join(label.text for label in sheet.labels)
    assert "air to framing: not told" in said
    assert "cricket: not told" in said
    known, _ = drawn(shipped("boathouse"), "roof_plan")
    assert len(known.lines["hidden", "ink"]) > len(sheet.lines["hidden", "ink"])


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"ground.ash_cleanout_door_material": None}, "clean-out door: place not told"),
        ({"ground.ash_cleanout_door_material": "other"}, "clean-out door: place not told"),
        ({"ground.ash_cleanout_door_material": "masonry"}, "door of masonry: place not told"),
        ({"air.outlet_place": None}, "outdoor air duct: leave its way open"),
        ({"air.outlet_place": "firebox"}, "outdoor air duct into the firebox: leave its way open"),
        ({"air.outlet_place": "hearth"}, "outdoor air duct to the hearth: leave its way open"),
    ],
)
def test_what_has_no_place_yet_is_said_in_the_base(changes, says):
    asked = {"ground.ash_dump": True, "air.exterior_air_supply": True} | changes
    sheet, _ = drawn(shipped("boathouse", **asked), "base_plan")
    assert says in " ".join(label.text for label in sheet.labels)


def test_the_second_flue_has_its_plan():
    keys = [f.key for f in plans.figures(shipped("boathouse-laid", **TWO), "feet-inches")]
    assert "chimney_plan" in keys
    assert "chimney_plan" not in [f.key for f in plans.figures(shipped("plain"), "feet-inches")]


def test_a_flue_that_has_gone_aside_is_measured_from_the_center_line():
    result = shipped("boathouse-laid", **{"flue.offset": "14 in", "flue.offset_rise": "40 in"})
    sheet, _ = drawn(result, "roof_plan", denominator=16.0)
    assert "1'-2\"" in written(sheet)


@pytest.mark.parametrize(
    ("pitch", "american", "metric"), [(7 / 12, "7:12", "30 deg"), (0.0, "0:12", "0 deg")]
)
def test_a_slope_is_said_as_the_trade_says_it(pitch, american, metric):
    assert pitch_words(pitch, "feet-inches") == american
    assert pitch_words(pitch, "millimetres") == metric


boxes = st.lists(st.tuples(st.floats(5, 200), st.floats(5, 120)), min_size=1, max_size=8)


@given(boxes)
def test_boxes_stand_in_the_rectangle_and_apart(sizes):
    found = places(sizes, 380.0, 230.0)
    if found is None:
        return
    spots = [(x, y, x + w, y + h) for (x, y), (w, h) in zip(found, sizes, strict=True)]
    assert all(x >= 0 and y >= 0 and r <= 380 + 1e-6 and d <= 230 + 1e-6 for x, y, r, d in spots)
    for n, a in enumerate(spots):
        for b in spots[n + 1 :]:
            gaps = (a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3])
            assert max(gaps) >= 8.0 - 1e-6


def test_what_one_sheet_does_not_hold_goes_on_two():
    result = assess(Design())
    on = paper("feet-inches", "letter")
    figures = plans.figures(result, "feet-inches")
    made = filled("Plans", figures, on, SCALES["feet-inches"], least=24.0)
    assert len(made) > 1
    assert [key for plate in made for key in plate.figures] == [f.key for f in figures]
    assert chosen_scales(figures, SCALES["feet-inches"], 50.0, 50.0) is None


def test_a_throat_is_wider_in_front_than_behind():
    """The sides of the firebox close in: half the opening less the splay times the depth."""
    geometry = shipped("plain").geometry
    f = geometry.frame
    front, back = throat_corners(geometry)
    assert front == pytest.approx(f.half_width - f.side_slope * f.throat_front)
    assert back == pytest.approx(f.half_width - f.side_slope * f.throat_back)
    assert front > back


@pytest.mark.parametrize(
    ("runs", "lies"),
    [("along the opening", "left to right"), ("front to back", "front to back")],
)
def test_which_way_the_long_side_of_a_flue_lies(runs, lies):
    told = {"flue.shape": "rectangular", "flue.size": "8.5x13", "flue.long_side": runs}
    sheet, _ = drawn(shipped("plain", **told), "roof_plan", denominator=16.0)
    assert f"long side {lies}" in " ".join(label.text for label in sheet.labels)


def test_uphill_is_to_the_right_of_whoever_looks_at_the_roof():
    """Where the ridge runs along the opening, uphill is toward the room: the room is at the right."""
    geometry = shipped("plain", **{"roof.ridge_runs": "along the opening"}).geometry
    _, y = uphill(geometry, (-1.0, 2.0, 1.0, 3.0))(1.0, 0.0)
    assert y == pytest.approx(1.0)  # a meter before the front of the chimney
    assert _seen_from(geometry) == "room at the right"


def test_base_walls_that_meet_surround_no_core():
    """A block of 28-1/2 in less two walls of 8 in leaves 12-1/2 in; two of 16 in leave nothing."""
    inch = 0.0254
    for wide, wanted in (("8 in", True), ("16 in", False)):
        told = {"base.block_width": wide, "firebox.depth": "16 in"}
        geometry = build_geometry(change(Design(), told))
        strings = core_strings(geometry)
        assert bool(strings) == wanted
    across, deep = core_strings(build_geometry(Design()))
    assert across.stops == pytest.approx((-22.375 * inch, 0.0, 22.375 * inch))
    assert (across.foot, across.name) == (pytest.approx(7.625 * inch), "core")
    assert deep.stops == pytest.approx((0.0, 7.625 * inch, 20.875 * inch))
    assert deep.foot == pytest.approx(30 * inch)
