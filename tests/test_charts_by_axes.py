"""The draft's pictures read as a reader does, off their axes; and what a mason takes hold of to mend
a fault, step by step.
"""

import re

import numpy as np
import pytest
import shapely

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import FOOT, INCH, MM, SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import CELLS
from fireplace_calc.drawing.sheets.sheet import Cell
from fireplace_calc.drawing.views.draft_charts import (
    MARKS,
    air_sheet,
    air_view,
    air_views,
    velocity,
)
from fireplace_calc.explore import LIMITS
from fireplace_calc.explore.mending.lever_settings import settings_of
from fireplace_calc.explore.mending.levers import FOOT as FOOTING
from fireplace_calc.explore.mending.levers import HEAD, LEVERS, STACK
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.panels.picture.draft_pictures import DraftPictures

BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")


@pytest.fixture(scope="module")
def air():
    made = DraftPictures()
    result = assess(BOATHOUSE)
    made.whole(result, "feet-inches")
    return made.air(result.geometry, result.draft)


def number(label):
    try:
        return float(label.text.replace("\N{MINUS SIGN}", "-"))
    except ValueError:
        return None


def axis(sheet, along, cell):
    """From a place on paper to the figure of the axis, by its ticks; none when it has none."""
    found = []
    for label in sheet.labels:
        value = number(label)
        if value is None or not (
            cell.left <= label.x <= cell.right and cell.bottom <= label.y <= cell.top
        ):
            continue
        foot = label.ha == "center" and label.va == "base"
        side = label.ha == "right" and label.va == "middle"
        if (foot and along == "x") or (side and along == "y"):
            found.append((label.x if along == "x" else label.y, value))
    places, values = np.array(sorted(found)).T
    slope, start = np.polyfit(places, values, 1)
    assert np.abs(np.polyval((slope, start), places) - values).max() < 1e-6 * np.ptp(values) + 1e-9
    return lambda p: slope * np.asarray(p) + start


# -- curves ----------------------------------------------------------------------------------------
@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", ["by_sections", "by_extension"])
def test_a_curve_is_read_off_its_axes(air, units, name):
    """Sizing mode, the middle and the band, the figure wanted, and where the design stands."""
    from fireplace_calc.drawing.sheets.sheet import Sheet

    curve, sheet = getattr(air, name), Sheet(300, 186)
    cell = Cell(0, 0, 102, 93)
    velocity(sheet, cell, curve, units)
    x, y = axis(sheet, "x", cell), axis(sheet, "y", cell)
    speed = FOOT if units == "feet-inches" else 1.0
    length = 1.0 if name == "by_sections" else INCH if units == "feet-inches" else MM
    (sizing,) = [line for line in sheet.lines["cut", "ink"]]
    assert x(sizing[:, 0]) * length == pytest.approx(curve.values, abs=1e-6)
    assert y(sizing[:, 1]) * speed == pytest.approx(curve.sizing, abs=1e-6)
    middle = next(line for line in sheet.lines["seen", "ink"] if len(line) == len(curve.values))
    assert y(middle[:, 1]) * speed == pytest.approx(curve.middle, abs=1e-6)
    low, high = [line for line in sheet.lines["fine", "ink"] if len(line) == len(curve.values)]
    assert y(low[:, 1]) * speed == pytest.approx(curve.low, abs=1e-6)
    assert y(high[:, 1]) * speed == pytest.approx(curve.high, abs=1e-6)
    (wanted,) = sheet.lines["hidden", "bad"]
    assert y(wanted[:, 1]) * speed == pytest.approx(0.244, abs=1e-6), "0.8 ft/s"
    (here,) = sheet.lines["hidden", "good"]
    own = 20 if name == "by_sections" else 6 * INCH
    assert x(here[:, 0]) * length == pytest.approx(own, abs=1e-6)
    assert y(here[0, 1]) == pytest.approx(0, abs=1e-9)
    crosses = [line for line in sheet.lines["seen", "good"] if abs(line[0, 1] - line[1, 1]) < 1e-9]
    at = sorted(float(y(line[0, 1])) * speed for line in crosses)
    marked = [np.interp(own, curve.values, line) for line in (curve.middle, curve.sizing)]
    assert at == pytest.approx(sorted(marked), abs=1e-6)
    words = {label.text for label in sheet.labels}
    unit = {"feet-inches": ("ft/s", ", in"), "millimetres": ("m/s", ", mm")}[units]
    assert unit[0] in words
    assert curve.label + (unit[1] if name == "by_extension" else "") in words
    assert {"sizing mode", "95 of 100", "half of 100", "5 of 100"} <= words
    assert f"wanted {0.244 / speed:.2f}" in words
    ends = dict(zip(("sizing mode", "95 of 100", "half of 100", "5 of 100"),
                    (curve.sizing, curve.high, curve.middle, curve.low), strict=True))  # fmt: skip
    labels = {label.text: label.y for label in sheet.labels if label.text in ends}
    assert sorted(labels, key=labels.get) == sorted(ends, key=lambda k: ends[k][-1])


@pytest.mark.parametrize("units", SYSTEMS)
def test_pressure_is_marked_at_its_level_and_told_beside(air, units):
    sheet = air_view("section", air, units)
    cell = CELLS["section"]
    x = axis(sheet, "x", cell)
    curve = next(line for line in sheet.lines["cut", "ink"] if len(line) == len(air.steps))
    assert x(curve[:, 0]) == pytest.approx([s.pressure for s in air.steps], abs=1e-6)
    levels = [s.level for s in air.steps]
    scale, start = np.polyfit(levels, curve[:, 1], 1)
    assert curve[:, 1] == pytest.approx(np.polyval((scale, start), levels), abs=1e-6)
    low, high = min(s.pressure for s in air.steps), max(0.0, *(s.pressure for s in air.steps))
    ends = (x(cell.left + 40), x(cell.right - 16))
    pad = 0.08 * (high - low)
    assert ends == pytest.approx((low - pad, high + pad), abs=1e-6), "the pull and nought, no more"
    (zero,) = [line for line in sheet.lines["hidden", "ink"]]
    assert x(zero[:, 0]) == pytest.approx(0, abs=1e-9)
    words = [label.text for label in sheet.labels]
    assert "Pa, against open air" in words
    assert f"{air.evening.capitalize()} evening, operating mode" in words
    for step in air.steps:
        assert any(w.startswith(f"{step.name} ") for w in words)
        assert f"{step.pressure:.1f}".replace("-0.0", "0.0") in words


# -- the map ---------------------------------------------------------------------------------------
@pytest.mark.parametrize("units", SYSTEMS)
def test_every_field_of_the_map_has_the_ground_of_what_stops_it(air, units):
    sheet, found, cell = air_view("front", air, units), air.map, CELLS["front"]
    x, y = axis(sheet, "x", cell), axis(sheet, "y", cell)
    unit = INCH if units == "feet-inches" else MM
    grounds = [
        (tone, shapely.Polygon(np.stack([x(p[0][:, 0]), y(p[0][:, 1])], 1)))
        for (layer, tone), polygons in sheet.fills.items()
        for p in polygons
        if layer == 0 and len(p[0]) == 4
    ]
    assert sum(ground.area for _, ground in grounds) == pytest.approx(
        len(found.sections) * float(np.ptp(found.extensions)) / unit, rel=1e-6
    )
    step = float(found.extensions[1] - found.extensions[0])
    for i, raise_ in enumerate(found.extensions):
        level = float(
            np.clip(raise_, found.extensions[0] + step / 5, found.extensions[-1] - step / 5)
        )
        for k, count in enumerate(found.sections):
            spot = shapely.Point(count, level / unit)
            (tone,) = [name for name, ground in grounds if ground.contains(spot)]
            assert tone == MARKS[found.limit[i, k]][0]
    cross = [line for line in sheet.lines["seen", "good"]]
    middle = np.mean([line.mean(axis=0) for line in cross], axis=0)
    assert (x(middle[0]), y(middle[1]) * unit) == (
        pytest.approx(20, abs=1e-6), pytest.approx(6 * INCH, abs=1e-6),
    )  # fmt: skip
    assert {label.text for label in sheet.labels} >= {"Flue sections"}


def test_borders_of_the_map_run_between_fields_that_differ(air):
    sheet, found, cell = air_view("front", air, "feet-inches"), air.map, CELLS["front"]
    x, y = axis(sheet, "x", cell), axis(sheet, "y", cell)
    upright = [
        line for line in sheet.lines["seen", "ink"] if len(line) == 2 and line[0, 0] == line[1, 0]
    ]
    level = [
        line for line in sheet.lines["seen", "ink"] if len(line) == 2 and line[0, 1] == line[1, 1]
    ]
    assert len(upright) == (found.limit[:, 1:] != found.limit[:, :-1]).sum()
    assert len(level) == (found.limit[1:] != found.limit[:-1]).sum()
    for line in upright:
        place = float(x(line[0, 0])) - 0.5
        assert place == pytest.approx(round(place), abs=1e-6)
        k, i = int(round(place)) - found.sections[0], int(round(float(y(line[:, 1].mean())) / 2))
        assert found.limit[i, k] != found.limit[i, k + 1]
    for line in level:
        k = int(round(float(x(line[:, 0].mean())))) - found.sections[0]
        i = int(np.floor(float(y(line[0, 1])) / 2 + 1e-6))
        assert found.limit[i, k] != found.limit[i + 1, k]
        assert np.ptp(x(line[:, 0])) == pytest.approx(1.0)


def test_the_legend_names_each_ground_in_the_order_of_the_limits(air):
    sheet = air_sheet("plan", Cell(0.0, 0.0, 110.0, 130.0), air)
    placed = {label.text: label for label in sheet.labels}
    boxes = [line for line in sheet.lines["seen", "ink"] if len(line) == 5]
    assert len(boxes) == len(LIMITS)
    present = set(np.unique(air.map.limit).tolist())
    for k, (words, box) in enumerate(zip(LIMITS, boxes, strict=True)):
        label = placed[words]
        assert label.y == pytest.approx(box[:4, 1].mean()) and label.x - box[:, 0].max() == 2.0
        assert label.ink == ("ink" if k in present else "soft")
        tone, _ = MARKS[k]
        assert any(np.allclose(p[0], box[:4]) for p in sheet.fills[0, tone])
        assert np.ptp(box[:, 0]) == 9 and np.ptp(box[:, 1]) == 4
    rows = [placed[words].y for words in LIMITS]
    assert np.diff(rows) == pytest.approx(-5.4)
    assert [cell for cell, _ in air_views(air)] == list(CELLS.values())


def test_a_low_legend_names_the_grounds_that_are_on_the_map(air):
    sheet = air_sheet("plan", Cell(0.0, 0.0, 110.0, 62.0), air)
    boxes = [line for line in sheet.lines["seen", "ink"] if len(line) == 5]
    words = {label.text for label in sheet.labels}
    present = set(np.unique(air.map.limit).tolist())
    assert 0 < len(present) < len(LIMITS) and len(boxes) == len(present)
    assert {k for k, text in enumerate(LIMITS) if text in words} == present


# -- what is taken hold of -------------------------------------------------------------------------
def test_levers_are_pulled_for_what_they_move():
    """For the draft: what changes flue, opening, throat, top, or the air of the house. For wind and
    earthquake: what makes the stack wider, heavier, shorter or held. For the head: lintel, arch and
    what they rest on. For the ground: the footing, and a lighter breast.
    """
    draft = {(one.key, one.step[0]) for one in LEVERS if one.for_draft}
    assert draft == {
        ("flue.sections", "+"), ("flue.size", "+"), ("flue.size", "-"), ("flue.shape", "+"), ("flue.own_width", "+"),
        ("flue.own_width", "-"), ("flue.offset", "-"), ("opening.extension", "-"),
        ("opening.width", "-"), ("opening.standard_height", "-"), ("throat.depth", "+"),
        ("house.air_inlet", "+"), ("house.exhaust", "-"), ("chimney.arrester", "n"),
        ("chimney.rain_cap", "n"),
    }  # fmt: skip
    loads = {name: {one.key for one in LEVERS if one.loads == group} for name, group in
             {"stack": STACK, "head": HEAD, "foot": FOOTING, "both": HEAD + FOOTING}.items()}  # fmt: skip
    assert loads["stack"] == {
        "flue.sections", "flue.size", "flue.shape", "flue.own_width", "flue.offset", "chimney.wall", "chimney.gap",
        "loads.support", "anchorage.vertical_bars_no4",
    }  # fmt: skip
    assert loads["head"] == {
        "opening.rise", "firebox.jamb", "lintel.bearing", "lintel.height", "lintel.thickness",
        "lintel.material", "lintel.angles", "lintel.level_leg",
    }  # fmt: skip
    assert loads["foot"] == {"base.footing_thickness", "base.footing_projection"}
    assert loads["both"] == {"opening.width"}
    reach = {(one.key, one.step): one.max_steps for one in LEVERS if one.max_steps != 24}
    assert set(reach.values()) <= {6, 40, 48, 72}
    assert reach["firebox.jamb", "+1/2 in"] == 72, "an arch may want a jamb three feet longer"
    assert sum(many == 6 for many in reach.values()) == 3, "six liners up, down or across"


def settings(design, key, sign):
    """The settings of one lever, by key and the sign of its step."""
    lever = next(one for one in LEVERS if one.key == key and one.step.startswith(sign))
    return settings_of(design, lever)


def test_a_lever_moves_by_its_steps_as_far_as_the_range_goes():
    """A wall of 4 in by halves: 4-1/2, 5, ... 12 steps of at most 24; a count by one, up to forty."""
    (found,) = settings(Design(), "chimney.wall", "+")
    assert [one.after / INCH for one in found[:3]] == pytest.approx([4.5, 5.0, 5.5])
    assert len(found) == 24 and found[-1].after == pytest.approx(16 * INCH)
    assert [one.relative for one in found[:3]] == pytest.approx([0.125, 0.25, 0.375])
    assert {one.before for one in found} == {4 * INCH} and found[1].steps == 2
    assert change(Design(), found[1].change).chimney.wall == pytest.approx(5 * INCH)
    (found,) = settings(Design(), "flue.sections", "-")
    assert [one.after for one in found] == [9, 8, 7, 6, 5, 4] and found[0].change == {
        "flue.sections": 9
    }
    (found,) = settings(change(Design(), {"flue.sections": 38}), "flue.sections", "+")
    assert [one.after for one in found] == [39, 40]
    (found,) = settings(Design(), "hearth.thickness", "+")
    assert found[0].relative == pytest.approx(1 / 8)
    (nothing,) = settings(change(Design(), {"house.exhaust": "0 L/s"}), "house.exhaust", "-")
    assert nothing == []
    (some,) = settings(change(Design(), {"house.air_inlet": "0 in2"}), "house.air_inlet", "+")
    assert some[0].relative == float("inf") and len(some) == 40


def test_a_word_is_taken_once_and_only_where_it_is_another():
    (found,) = settings(change(Design(), {"lintel.material": "stone"}), "lintel.material", "steel")
    assert [(one.before, one.after, one.steps, one.relative) for one in found] == [
        ("stone", "steel", 1, 1.0)
    ]
    assert settings(Design(), "lintel.material", "steel") == [[]]
    assert settings(Design(), "hearth.forms_removed", "yes") == [], "nobody has looked"
    (found,) = settings(change(Design(), {"chimney.rain_cap": "yes"}), "chimney.rain_cap", "no")
    assert found[0].after is False and found[0].change == {"chimney.rain_cap": False}
    assert settings(Design(), "opening.rise", "+") == [], "a straight head has no rise"
    assert settings(change(Design(), {"opening.head": "segmental"}), "opening.rise", "+")


def test_liners_are_taken_by_net_area_no_further_than_six():
    """IRC table R1003.14(1): 8, 10, 10-3/4, 12, 15, 18 in round: 50, 78, 90, 113, 176, 254 in2."""
    round_ = change(Design(), {"flue.shape": "round", "flue.size": "10"})
    (up,) = settings(round_, "flue.size", "+")
    (down,) = settings(round_, "flue.size", "-")
    assert [one.after for one in up] == ["10.75", "12", "15", "18"]
    assert [one.after for one in down] == ["8", "7", "6"]
    assert up[1].relative == pytest.approx(113 / 78 - 1) and up[1].steps == 2
    assert down[0].relative == pytest.approx(1 - 50 / 78)
    (many,) = settings(change(Design(), {"flue.size": "8.5x8.5"}), "flue.size", "+")
    assert len(many) == 6
    own = {"flue.size": "own", "flue.own_width": "14 in", "flue.own_depth": "10 in"}
    assert settings(change(Design(), own), "flue.size", "+") == [[]]
    (wider,) = settings(change(Design(), own), "flue.own_width", "+")
    made = change(change(Design(), own), wider[1].change)
    assert (made.flue.own_width, made.flue.own_depth) == pytest.approx((15 * INCH, 11 * INCH))
    (round_own,) = settings(change(Design(), own | {"flue.shape": "round"}), "flue.own_width", "-")
    assert set(round_own[0].change) == {"flue.own_width"}
    assert settings(Design(), "flue.own_width", "+") == []


def test_trim_is_set_further_off_together_and_pulled_back_piece_by_piece():
    trim = [
        {"name": "step", "distance": "8 in", "projection": "1 in"},
        {"name": "tile", "distance": "7 in", "projection": "1 in", "combustible": "no"},
        {"name": "shelf", "distance": "12 in", "projection": "3 in"},
    ]
    design = change(Design(), {"surround.trim": trim})
    (further,) = settings(design, "surround.trim", "+")
    assert (further[1].before, further[1].after) == pytest.approx((8 * INCH, 9 * INCH))
    assert further[1].relative == pytest.approx(1 / 8) and len(further) == 24
    moved = change(design, further[1].change).surround.trim
    assert [p.distance / INCH for p in moved] == pytest.approx([9, 7, 13])
    step, shelf = settings(design, "surround.trim", "-")
    assert (step[0].piece, shelf[0].piece) == ("step", "shelf")
    assert (len(step), len(shelf)) == (7, 23), "while something is left of it"
    assert step[1].after == pytest.approx(0.75 * INCH) and step[1].relative == pytest.approx(0.25)
    back = change(design, shelf[3].change).surround.trim
    assert [p.projection / INCH for p in back] == pytest.approx([1, 1, 2.5])
    stone = [{"name": "stone", "distance": "7 in", "combustible": "no"}]
    assert settings(change(Design(), {"surround.trim": stone}), "surround.trim", "+") == []
    flush = change(Design(), {"surround.trim": [{"distance": "0 in", "projection": "1 in"}]})
    assert settings(flush, "surround.trim", "+")[0][0].relative == float("inf")


# -- figures to follow with a pencil -----------------------------------------------------------------
def test_the_figures_of_the_plain_design_with_their_numbers():
    """36 by 30; throat 4-1/2 deep between 30-2/3 and 27-2/3; 13x13 of 127 in2; ridge 22 ft, 8 in 12,
    8 ft off; crown at 305.25 in = 25.44 ft; hearth 20 out and 12 beside.
    """
    found = {
        one.name: (one.formula, one.numbers, one.result) for one in work_figures(assess(Design()))
    }
    assert found["Opening area"] == ("width × height", '36" × 30"', "1080 in²")
    assert found["Flue ratio"] == (
        "opening area ÷ net area of the flue", "1080 in² ÷ 127 in²", "8.50 to 1",
    )  # fmt: skip
    assert found["Throat area"][1] == '4 1/2" × (30 11/16" + 27 11/16") ÷ 2'
    assert float(found["Throat area"][2].split()[0]) == pytest.approx(131.25, abs=0.06)
    assert found["Chimney over the roof"][1:] == (
        "25'-5 1/4\" − (22'-0\" − 8/12 × 8'-0\")",
        "8'-9 1/4\"",
    )
    assert found["Hearth across"][1:] == ('36" + 2 × 12"', '60"')
    assert found["Hearth front to back"][1:] == ('20" + 20"', '40"')
    height = assess(Design()).draft.path.height
    # air of 70 F and 470 F at one atmosphere: 0.0749 and 0.0427 lb/ft3
    assert (
        f"{height / FOOT:.2f}".rstrip("0") + " ft × (0.07492 lb/ft³ − 0.04269 lb/ft³)"
        == found["Draft, sizing mode"][1]
    )
    pulled = 9.80665 * height * 101325 / 287.05 * (1 / 294.15 - 1 / 516.15)
    pounds, pascals = re.findall(r"[\d.]+", found["Draft, sizing mode"][2])
    assert float(pascals) == pytest.approx(pulled, abs=0.06)
    assert float(pounds) == pytest.approx(pulled / 47.8803, abs=0.0006)
    metric = {one.name: one for one in work_figures(assess(Design()), "millimetres")}
    assert metric["Draft, sizing mode"].numbers == (
        f"9.81 m/s² × {round(height, 3):g} m × (1.200 kg/m³ − 0.684 kg/m³)"
    )
    assert float(metric["Draft, sizing mode"].result.split()[0]) == pytest.approx(pulled, abs=0.06)
    assert found["Slenderness"][1] == '(307 1/4" − 200") ÷ 22"'
    assert float(found["Slenderness"][2]) == pytest.approx(107.25 / 22, abs=0.006)
    numbers, result = found["Resistance, sizing mode"][1:]
    one, inlet, other, friction, length, wide = map(float, re.findall(r"[\d.]+", numbers))
    assert float(result.split()[0]) == pytest.approx(
        one + inlet + other + friction * length / wide, abs=0.01
    )
    numbers, result = found["Face velocity, sizing mode"][1:]
    flue, opening, _, gravity, draft, hot, loss, cold = map(
        float, re.findall(r"(?<!\w)[\d.]+(?=[ )])", numbers)
    )
    speed = flue / opening * np.sqrt(2 * gravity * draft * hot / loss) / cold
    assert float(result.split()[0]) == pytest.approx(speed, abs=0.005)
    assert result.endswith(f"which is {float(result.split()[0]) * FOOT:.2f} m/s")
    flue, opening, _, draft, hot, loss, cold = map(
        float,
        re.findall(r"(?<!\w)[\d.]+(?=[ )])", metric["Face velocity, sizing mode"].numbers),
    )
    speed = flue / opening * np.sqrt(2 * draft * hot / loss) / cold
    assert float(metric["Face velocity, sizing mode"].result.split()[0]) == pytest.approx(
        speed, abs=0.002
    )
    weight, span, again, _ = map(
        float, re.findall(r"(?<![a-z])[\d.]+(?= |$)", found["Load on the lintel"][1])
    )
    assert float(found["Load on the lintel"][2].split()[0]) == pytest.approx(
        weight * span * again / 4, rel=2e-3
    )
    assert span == 3.5, "36 in and one bearing of 6"


def test_figures_that_were_measured_or_do_not_apply():
    site = {
        "measured.opening_area": "7 ft2",
        "measured.throat_area": "120 in2",
        "measured.flue_area": "100 in2",
    }
    found = {one.name: one for one in work_figures(assess(change(Design(), site)))}
    assert (found["Opening area"].numbers, found["Opening area"].source) == (
        "1008 in²",
        "measured on site",
    )
    assert (found["Throat area"].result, found["Throat area"].formula) == ("120 in²", "as measured")
    assert (
        found["Flue ratio"].numbers == "1008 in² ÷ 100 in²"
        and found["Flue ratio"].result == "10.08 to 1"
    )
    assert found["Flue ratio"].source.startswith("measured on site")
    arch = {"opening.head": "segmental", "opening.rise": "6 in"}
    made = {one.name: one for one in work_figures(assess(change(Design(), arch)))}
    assert made["Opening area"].numbers.startswith('36" × 24" + ')
    segment = float(made["Opening area"].numbers.split(" + ")[1].split()[0])
    # radius 30, half angle asin(0.6): r^2 (a - sin a cos a)
    assert segment == pytest.approx(900 * (np.arcsin(0.6) - 0.6 * 0.8), abs=0.5)
    assert "Load on the lintel" not in made
    ridge = {
        one.name: one
        for one in work_figures(assess(change(Design(), {"roof.position": "through the ridge"})))
    }
    assert ridge["Chimney over the roof"].formula == "top of the crown − (ridge)"
    assert ridge["Chimney over the roof"].numbers == "25'-5 1/4\" − 22'-0\""
    own = {
        "flue.size": "own",
        "flue.own_width": "12 in",
        "flue.own_depth": "12 in",
        "flue.area_from": "own sum",
    }
    assert (
        "own sum of the inside"
        in {one.name: one for one in work_figures(assess(change(Design(), own)))}[
            "Flue ratio"
        ].source
    )
    unknown = work_figures(assess(change(Design(), {"flue.area_from": "manufacturer"})))
    assert "Flue ratio" not in {one.name for one in unknown}
