"""Details at large scales: clean, true to the section, honest about what nobody told."""

from math import atan, degrees, tan
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from sampled import sampled
from shapely import Polygon, box, make_valid, unary_union
from sheet_ink import inked
from strategies import designs

from fireplace_calc import Design, assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.drawing.details import sheet as details
from fireplace_calc.drawing.details.chamber_detail import chamber_window, corbel_step
from fireplace_calc.drawing.details.crown_detail import crown_window
from fireplace_calc.drawing.details.flashing_detail import _steps, flashing_window
from fireplace_calc.drawing.details.framing_detail import framing_figure, mantel_figure
from fireplace_calc.drawing.details.hearth_detail import hearth_window
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.lintel_detail import _words, lintel_window
from fireplace_calc.drawing.details.window import window_cuts
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.figure import put
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES
from fireplace_calc.drawing.roof.roof_lines import along, roof_at
from fireplace_calc.drawing.sheets.dimensions import CLEAR
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.rules import PACKS

SOME = settings(deadline=None, max_examples=20, suppress_health_check=list(HealthCheck))
MAKER = ("details.sheet",)
NAMES = ("boathouse", "boathouse-laid", "plain")
WINDOWS = (lintel_window, chamber_window, crown_window, hearth_window)


def shipped(name, **changes):
    return assess(change(load(DESIGNS / f"{name}.toml"), changes))


def sheets(result, units="feet-inches", size="A3"):
    return whole_set.sheets(result, units, size, makers=MAKER)


def drawn(result, key, units="feet-inches", denominator=8.0):
    (figure,) = (f for f in details.figures(result, units) if f.key == key)
    sheet = Sheet(900.0, 900.0)
    put(sheet, (200.0, 200.0), figure, denominator, "")
    return sheet


def said(sheet):
    return " ".join(label.text for label in sheet.labels)


CASES = [(name, size, units) for size in PAPERS for units in SCALES for name in NAMES]


@pytest.mark.parametrize(("name", "size", "units"), sampled(CASES, 3))
def test_every_shipped_design_is_clean_on_every_paper(name, size, units):
    for title, sheet in sheets(shipped(name), units, size):
        assert not collisions(sheet, CLEAR), title
        assert min(label.size for label in sheet.labels) >= SMALL


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("name", NAMES)
def test_one_large_sheet_holds_them_and_is_half_used(name, units):
    ((_, sheet),) = sheets(shipped(name), units)
    assert inked(sheet) >= 0.5


@settings(SOME)
@given(designs(), st.sampled_from(sorted(PAPERS)), st.sampled_from(sorted(SCALES)))
def test_any_design_is_clean_on_any_paper(design, size, units):
    for title, sheet in sheets(assess(design), units, size):
        assert not collisions(sheet, CLEAR), title


@pytest.mark.parametrize("pack", sorted(PACKS))
def test_every_book_has_its_details(pack):
    for _, sheet in sheets(assess(load(DESIGNS / "boathouse-laid.toml"), pack)):
        assert not collisions(sheet, CLEAR)


@settings(SOME)
@given(designs())
def test_a_detail_cuts_what_the_section_cuts(design):
    """Clipped by Shapely, part by part."""
    geometry = assess(design).geometry
    for window_of in WINDOWS:
        window = window_of(geometry)
        if window is None:
            continue
        zone = box(*window)
        cut = {part.name: rings for part, rings in window_cuts(geometry, window)}
        for part in geometry.parts:
            wanted, made = (
                unary_union([make_valid(Polygon(ring)) for ring in rings])
                for rings in (part.section(), cut.get(part.name, []))
            )
            assert made.symmetric_difference(wanted & zone).area < 1e-9, part.name


@settings(SOME)
@example(change(Design(), {"chimney.wash": "63.5 mm", "flue.sections": 15}), "millimetres")
@given(designs(), st.sampled_from(sorted(SCALES)))
def test_every_size_on_a_detail_is_the_design_own(design, units):
    result = assess(design)
    chimney, hearth = design.chimney, design.hearth
    texts = {label.text for label in drawn(result, "crown_detail", units, 5.0).labels}
    wanted = {length(v, units) for v in (chimney.crown, chimney.wash, chimney.liner_above) if v > 0}
    if chimney.overhang > 0:
        wanted.add(length(chimney.overhang, units))
    assert wanted <= texts
    if hearth.front > 0:
        texts = {label.text for label in drawn(result, "hearth_detail", units, 5.0).labels}
        assert length(hearth.thickness, units) in texts


def test_a_course_of_a_corbelled_chamber_steps_in_by_its_share():
    """By hand: the steepest face draws in x over a rise y; a course of 2 3/4 in takes x / y of it."""
    result = shipped("boathouse-laid", **{"smoke_chamber.construction": "corbelled"})
    f, course = result.geometry.frame, result.design.smoke_chamber.course
    lean = max(f.chamber_slopes.values())
    step = corbel_step(result.geometry)
    assert step == pytest.approx(course * tan(lean))
    assert f"steps in {length(step, 'feet-inches')}" in said(drawn(result, "chamber_detail"))


def test_a_limit_stands_with_its_direction_and_its_verdict():
    result = shipped("boathouse")
    assert asked(result, "feet-inches", "THR-04") == ', at least 8"'
    assert asked(result, "feet-inches", "CLR-08") == ', at most 1 1/8": FALLS SHORT'
    assert asked(result, "millimetres", "Slope of the smoke chamber") == ", at most 45 deg"
    assert asked(result, "feet-inches", "no such check") == ""


@pytest.mark.parametrize(
    ("key", "change", "wanted"),
    [
        ("crown_detail", {"chimney.drip": None}, "drip: not told"),
        ("crown_detail", {"chimney.bond_break": None}, "bond break at the liner: not told"),
        ("flashing_detail", {"clearance.chimney": None}, "air to framing: not told"),
        ("framing_detail", {"clearance.fireblock": None}, "fireblock: not told"),
        ("hearth_detail", {"hearth.support": None}, "what carries it: not told"),
        ("lintel_detail", {"throat.damper_material": None}, "metal not told"),
    ],
)
def test_what_nobody_told_is_said_so(key, change, wanted):
    told = said(drawn(shipped("boathouse"), key))
    unknown = said(drawn(shipped("boathouse", **change), key))
    assert " ".join(wanted.split()) in " ".join(unknown.split())
    assert wanted not in told


@given(designs())
@settings(SOME)
def test_counterflashing_steps_along_the_beds_of_the_chimney(design):
    """Every level stretch of its upper edge lies on a bed of the one list of courses, and over the
    roof.
    """
    geometry = assess(design).geometry
    window, stack = flashing_window(geometry), along(geometry)[2]
    if window is None or not (courses := course_list(geometry).of("chimney walls")):
        return
    beds = [course.top + course.bed / 2 for course in courses]
    for edge in _steps(geometry, stack)[0]:
        for (a, low), (b, high) in zip(edge, edge[1:], strict=False):
            if a != b:
                assert low == high
                assert min(abs(low - bed) for bed in beds) < 1e-9
                assert low >= max(roof_at(geometry, a), roof_at(geometry, b)) - 1e-9


def test_what_is_not_there_has_no_detail():
    keys = {
        f.key for f in details.figures(shipped("plain", **{"hearth.front": "0 in"}), "millimetres")
    }
    assert "hearth_detail" not in keys
    assert "crown_detail" in keys


def test_front_and_back_of_a_chamber_lean_each_by_its_own_angle():
    """By hand: how far a face draws in, over the rise from throat to flue."""
    result = shipped("plain")
    f = result.geometry.frame
    rise = f.taper_top - f.throat
    front = degrees(atan(abs(f.flue_y - f.bore.depth / 2 - f.throat_front) / rise))
    back = degrees(atan(abs(f.flue_y + f.bore.depth / 2 - f.depth) / rise))
    assert round(front) != round(back)
    told = said(drawn(result, "chamber_detail"))
    assert f"front leans {front:.0f} deg" in told
    assert f"back leans {back:.0f} deg" in told


def test_each_layer_of_the_hearth_has_its_thickness():
    """From the floor: what is under the bed, the bed, the stone."""
    result = shipped("boathouse")
    hearth, top = result.design.hearth, result.geometry.frame.extension_top
    under = top - hearth.thickness - hearth.bed
    assert under > 0.01 and hearth.bed != hearth.thickness
    texts = {label.text for label in drawn(result, "hearth_detail", denominator=5.0).labels}
    layers = (under, hearth.bed, hearth.thickness)
    assert {length(layer, "feet-inches") for layer in layers} <= texts


@pytest.mark.parametrize(
    ("cricket", "wanted"), [(None, "cricket: not told"), (False, "no cricket")]
)
def test_a_cricket_nobody_told_of_is_not_one_that_is_not_there(cricket, wanted):
    told = {"roof.cricket": cricket, "roof.cricket_height": None}
    texts = " ".join(said(drawn(shipped("boathouse", **told), "flashing_detail")).split())
    assert wanted in texts
    other = {"cricket: not told", "no cricket"} - {wanted}
    assert not any(words in texts for words in other)


def test_a_limit_that_is_no_length_and_no_angle_stands_in_no_detail():
    result = shipped("boathouse")
    found = {f.key: f for f in result.findings}
    assert found["AIR-07"].required == 6.0 and found["AIR-07"].unit == "in2"
    assert found["FND-14"].required > 0 and found["FND-14"].unit == "ratio"
    assert asked(result, "feet-inches", "AIR-07", "FND-14") == ""
    assert asked(result, "feet-inches", "AIR-07", "THR-04") == ', at least 8"'


def test_a_damper_on_top_of_the_flue_is_said_where_there_is_none_below():
    result = shipped("boathouse", **{"throat.damper": "flue top"})
    f, window = result.geometry.frame, lintel_window(result.geometry)
    words = {text: place for place, text in _words(result, "feet-inches", window)}
    middle = (f.throat_front + f.throat_back) / 2, f.throat
    assert words["no damper here: flue top"] == pytest.approx(middle)
    for damper in ("throat", "none"):
        other = shipped("boathouse", **{"throat.damper": damper})
        assert "no damper here" not in said(drawn(other, "lintel_detail"))


def test_a_fireblock_that_does_not_burn_says_how_deep_it_is():
    """The depth is asked of sheet metal and the like; wood burns as deep as it is."""
    for block, depth, wanted in (
        ("noncombustible", "1 in", 'fireblock, does not burn, 1" deep'),
        ("noncombustible", None, "fireblock, does not burn air"),
        ("wood or gypsum", "1 in", "FIREBLOCK OF WOOD OR GYPSUM air"),
    ):
        told = {"clearance.fireblock": block, "clearance.fireblock_depth": depth}
        result = shipped("boathouse", **told)
        assert wanted in said(drawn(result, "framing_detail"))


@pytest.mark.parametrize(("ceiling", "there"), [("11 ft 8 in", True), ("11 ft 9 in", False)])
def test_a_chimney_that_ends_at_the_ceiling_has_no_framing_to_show(ceiling, there):
    """Four sections end 3.924 m up, and 0.35 m over the ceiling are shown: 3.574 m, 11 ft 8-3/4 in."""
    result = shipped("plain", **{"flue.sections": 4, "house.ceiling": ceiling})
    assert result.geometry.frame.crown_bottom == pytest.approx(3.9243)
    made = framing_figure(result, "feet-inches", (8.0,))
    assert (made is not None) == there


@pytest.mark.parametrize(("distance", "there"), [("12 in", True), ("60 in", False)])
def test_a_board_higher_than_is_shown_has_no_detail(distance, there):
    told = {"mantel.family": "piece by piece"}
    told["surround.trim"] = [{"distance": distance, "height": "6 in"}]
    made = mantel_figure(shipped("plain", **told), "feet-inches", (8.0,))
    assert (made is not None) == there


@pytest.mark.parametrize(
    ("required", "said"),
    [
        (8.0, ', at least 8"'),
        (0.5, ', at least 1/2"'),
        (0.0, ""),
        (-1.0, ""),
        (None, ""),
        ("in good order", ""),
    ],
)
def test_only_a_limit_above_nought_is_told(required, said):
    result = shipped("boathouse")
    (finding,) = (f for f in result.findings if f.key == "THR-04")
    one = SimpleNamespace(pack=result.pack, findings=(finding._replace(required=required),))
    assert asked(one, "feet-inches", "THR-04") == said
