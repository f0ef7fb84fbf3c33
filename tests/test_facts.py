"""What the rules are told: every answer and every figure measured on site arrives under its name in
the code tables, and what is drawn is what the plain design's sizes add up to.
"""

from dataclasses import fields
from math import cos, pi

import pytest

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import INCH, SQIN, G, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, book_names, value_of
from fireplace_calc.explore import sketch
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.rules.tracing.known import DRAWN, known_facts

NAMED = {book: key for book, key in book_names().items() if book in {f.name for f in fields(Facts)}}
"""Quantities of the code tables that are a fact under their own name, and the input that tells."""
ROOM = {
    "opening_area": 900,
    "throat_area": 300,
    "damper_free_area": 300,
    "smoke_chamber_min_section": 300,
}
"""Areas that the drawn masonry has room for; no other is believed. [in2]"""
LEAST_OF = {"firebox_wall_thickness_total", "smoke_chamber_wall_thickness"}
"""The lesser of what is told and of what the drawing leaves."""


def facts(design):
    return gather_facts(sketch(design))


def told(spec):
    """Values an input may take that are not its default, the likeliest to fit first."""
    if spec.kind == "yes-no":
        return [v for v in (True, False) if v != spec.default]
    if spec.kind == "choice":
        return [c for c in spec.choices if c != spec.default]
    near = spec.default if spec.default is not None else (spec.low + spec.high) / 2
    if spec.book in ROOM:
        near = ROOM[spec.book] * SQIN
    span = spec.high - spec.low
    found = [near + share * span for share in (0.04, -0.04, 0.013, -0.013, 0.1, -0.1)]
    return [v for v in found if spec.low <= v <= spec.high]


@pytest.mark.parametrize("book", sorted(NAMED))
def test_an_answer_arrives_under_its_name_in_the_code_tables(book):
    key = NAMED[book]
    spec = all_inputs()[key]
    tried = 0
    for value in told(spec):
        text = value
        if isinstance(value, float):
            value = round(value) if spec.kind == "count" else value
            unit = {"length": "m", "area": "m2", "angle": "rad", "ratio": "", "force": "N"}
            text = (
                value if spec.kind == "count" else f"{value!r} {unit.get(spec.kind, 'Pa')}".strip()
            )
        try:
            design = change(Design(), {key: text})
        except InputError:
            continue
        tried += 1
        found = getattr(facts(design), book)
        if book == "flue_net_area" and value > build_frame(design).bore.area:
            assert found is None  # no liner of that size has room for it
            continue
        if book in LEAST_OF:
            assert found <= value_of(design, key) + 1e-12
            assert found == pytest.approx(value) or value > value_of(Design(), key) + 1e-9
        else:
            assert found == (pytest.approx(value) if isinstance(value, float) else value)
        break
    assert tried, "no value could be tried"


@pytest.mark.parametrize(
    ("name", "drawn"),
    [
        ("opening_area", 1080 * SQIN),
        ("opening_width", 36 * INCH),
        ("throat_area", 131.25 * SQIN),  # 4-1/2 deep between 30-2/3 and 27-2/3
        ("damper_height_above_opening", 8 * INCH),
        ("hearth_thickness", 6.5 * INCH),  # slab 4 and firebrick 2-1/2
        ("firebox_wall_thickness_total", 8.5 * INCH),
        ("chimney_height", 307.25 * INCH),
        ("chimney_top_above_highest_roof_contact", 105.25 * INCH),
        ("chimney_top_above_building_within_10ft", 41.25 * INCH),
        ("chimney_dim_parallel_ridge", 22 * INCH),
        ("chimney_width", 22 * INCH),
        ("footing_width", 40.5 * INCH),  # 28-1/2 front to back and 6 on either side
        ("footing_depth_below_finished_grade", 24 * INCH),  # 36 less a footing of 12
        ("level_above_grade", 212 * INCH),  # the roof at 200, grade 12 under the floor
        ("liner_slope_from_vertical", 0.0),
        ("flue_net_area", 127 * SQIN),
        ("flue_offset", 0.0),
        ("corbel_unit_bed", 3.75 * INCH),
        ("firebox_elevation", 0.0),
        ("flue_aspect", 1.0),
        ("flue_shape", "square"),
        ("lintel_material", "steel"),
        ("cap_sloped", True),
        ("through_ridge", False),
        ("shallow", False),
    ],
)
def test_what_is_drawn_is_what_the_sizes_add_up_to(name, drawn):
    """Opening 36 by 30, ten sections of 24-1/8 from 66 in, ridge at 264 in, 96 off, 8 in 12."""
    found = getattr(facts(Design()), name)
    assert found == (pytest.approx(drawn, abs=1e-9) if isinstance(drawn, float) else drawn)


@pytest.mark.parametrize(
    ("changes", "name", "wanted"),
    [
        ({"firebox.jamb": "6 in"}, "firebox_wall_thickness_total", 6 * INCH * cos(0.3217505544)),
        ({"opening.head": "segmental"}, "lintel_material", "masonry arch"),
        ({"flue.shape": "round", "flue.size": "12"}, "flue_shape", "round"),
        ({"flue.size": "8.5x18"}, "flue_shape", "rectangle"),
        ({"flue.area_from": "own sum", "flue.shape": "round", "flue.size": "12"}, "flue_net_area", pi * 36 * SQIN),
        ({"flue.area_from": "manufacturer"}, "flue_net_area", None),
        ({"flue.area_from": "field measured", "measured.flue_area": "120 in2"}, "flue_net_area", 120 * SQIN),
        ({"measured.flue_area": "120 in2"}, "flue_net_area", 120 * SQIN),
        ({"smoke_chamber.course": "unknown"}, "corbel_per_course", None),
        ({"chimney.wash": "0 in"}, "cap_sloped", False),
        ({"opening.type": "shallow"}, "shallow", True),
        ({"roof.position": "through the ridge"}, "through_ridge", True),
        ({"throat.damper_height": "10 in"}, "damper_height_above_opening", 10 * INCH),
        ({"stack.unit_bed_depth": "5 in"}, "corbel_unit_bed", 5 * INCH),
        ({"house.ceiling": "30 ft"}, "level_above_grade", 372 * INCH),
        ({"base.hearth_level": "12 in"}, "firebox_elevation", 12 * INCH),
        ({"hearth.drop": "6 in"}, "opening_bottom_above_extension_top", 6 * INCH),
        ({"base.footing_projection": "24 in"}, "footing_width", 76.5 * INCH),
    ],
)  # fmt: skip
def test_facts_that_follow_from_what_is_told(changes, name, wanted):
    found = getattr(facts(change(Design(), changes)), name)
    assert found == (pytest.approx(wanted) if isinstance(wanted, float) else wanted)


def test_the_pressure_under_the_footing_is_the_weight_over_its_area():
    """A base of 60 by 28-1/2 in with 6 in all round, under the weight of the list to order from: one
    weight for soil, list and structure. Of a sketch, which has no parts, it stays unknown.
    """
    result = assess(Design())
    area = 72 * 40.5 * SQIN
    found = result.facts.footing_contact_pressure
    weight = G * sum(row.weight_kg for row in result.takeoff)
    assert found == pytest.approx(weight / area) and 20e3 < found < 100e3
    assert result.structure.weights.total == pytest.approx(result.weight)
    assert gather_facts(result.geometry).footing_contact_pressure is None
    capped = assess(change(Design(), {"chimney.cap_material": "metal"}))
    concrete = next(r for r in result.takeoff if r.item == "Crown concrete")
    assert result.weight - capped.weight == pytest.approx(concrete.weight_kg)  # a cap is not solid
    lighter = found - capped.facts.footing_contact_pressure
    assert lighter == pytest.approx(G * concrete.weight_kg / area)
    assert facts(Design()).footing_contact_pressure is None


def test_how_far_wood_stands_from_the_opening_is_drawn():
    """The mantel's distances follow from several inputs and stand on the front elevation, in every
    book that asks for them.
    """
    asked = {"US IRC 2021": ("CLR-07", "CLR-08"), "Canada NBC": ("CA-061", "CA-062")}
    for name, keys in asked.items():
        found = assess(load(example("boathouse")), name)
        known = known_facts(found.facts, PACKS[name], found.findings)
        assert {known[key] for key in keys} == {DRAWN}


def test_a_rules_own_figure_says_how_it_is_known_and_not_what_it_was_asked_beside():
    """Depth of the firebox and air behind the masonry stand on the sheets, whatever answers their rules
    ask for besides.
    """
    found = assess(load(example("boathouse-laid")))
    known = known_facts(found.facts, PACKS[found.pack], found.findings)
    assert {known[key] for key in ("FBX-09", "CLR-02", "THR-01", "FLU-07")} == {DRAWN}
