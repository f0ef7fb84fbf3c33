"""Answers read as people write them, and what is said of those that cannot be."""

from types import SimpleNamespace

import pytest

from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.answers.printed_answer import kept_limit, shown, tolerance
from fireplace_calc.lessons.answers.replying import _passes_limit, check, step
from fireplace_calc.lessons.answers.written import read_answer

INCH, POUND = 0.0254, 0.45359237
FEET, METRIC = "feet-inches", "millimetres"


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("20 IN", 20), ("20in", 20), ("20 inches.", 20), ("20″", 20), ("20''", 20), ("20", 20),
        ("12-3/8", 12.375), ("12 3/8", 12.375), ("12⅜", 12.375), ('1 1/2"', 1.5), ("3/4 in", 0.75),
        ("3'-4 1/2\"", 40.5), ("3' 4\"", 40), ("3’ 4”", 40), ("3ft4in", 40), ("3 ft. 4 in.", 40),
        ("3 ft", 36), ("3'", 36), ("0,75", 0.75), ("508 mm", 20), ("50,8 cm", 20), ("50.8cm", 20),
        ("0.508 m", 20), ("1,016 mm", 40), ("1 016 mm", 40), ("1 yd", 36), ("-2 in", -2),
        ("-3'-4\"", -40), (".5 in", 0.5), ("−2", -2), ("3 ft -- 4 in", 40), ("3'--4 1/2\"", 40.5),
    ],
)  # fmt: skip
def test_lengths_as_people_write_them(text, inches):
    """An inch is 25.4 mm, a foot 12 in."""
    assert read_answer(text, "length", FEET) == pytest.approx(inches * INCH)


@pytest.mark.parametrize(
    ("text", "square_inches"),
    [
        ("7.75 sqft", 1116), ("7 3/4 square feet", 1116), ("1116 sq. in.", 1116), ("1116", 1116),
        ("1,116 sq in", 1116), ("1116 in2", 1116), ("1116 in^2", 1116), ("1116 IN²", 1116),
        ("12x16", 192), ("12 X 16 in", 192), ("12 by 16", 192), ("12in × 16in", 192),
        ("3' x 31\"", 1116), ("2'-7\" x 3'", 1116), ("300 x 400 mm", 120000 / 25.4**2),
        ("7200 cm2", 720000 / 25.4**2), ("0,72 m²", 720000 / 25.4**2),
    ],
)  # fmt: skip
def test_areas_as_people_write_them(text, square_inches):
    assert read_answer(text, "area", FEET) / INCH**2 == pytest.approx(square_inches)


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("508", "length", 0.508), ("12,5 cm", "length", 0.125), ("1 321", "length", 1.321),
        ("500", "area", 0.05), ("300x400", "area", 0.12), ("70", "mass", 70), ("21", "temperature", 294.15),
        ("70 F", "temperature", 294.2611), ("21 °C", "temperature", 294.15), ("5", "count", 5),
        ("12 Pa", "pressure", 12), ("0.05 in wc", "pressure", 12.4544), ("150 lbs", "mass", 68.0389),
    ],
)  # fmt: skip
def test_a_bare_number_is_in_the_readers_units(text, kind, value):
    """The water column by the standard inch of 249.089 Pa, a pound 0.45359 kg."""
    assert read_answer(text, kind, METRIC, 0.05) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "kind", "said"),
    [
        ("1116 in", "area", "That is a length; an area is in sq in."),
        ("20 sq in", "length", "That is an area; a length is in inches."),
        ("20 kg", "length", "That is a weight; a length is in inches."),
        ("7 ft", "temperature", "That is a length; a temperature is in °F."),
        ("twenty", "length", "That cannot be read. Write a length in inches, such as 7 3/4 or 7.75."),
        ("", "length", "That cannot be read."), ("1/0", "length", "That cannot be read."),
        ("3 x 4 x 5", "area", "That cannot be read."), ("5'6'7", "length", "That cannot be read."),
        ("20 ells", "length", "That cannot be read."), ("2.5", "count", "Write a whole number"),
        ("9" * 80, "length", "That is 80 letters long"), ("1e400", "length", "That cannot be read."),
        ("__import__('os')", "length", "That cannot be read."), ("nan", "length", "cannot be read"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_said(text, kind, said):
    with pytest.raises(InputError) as trouble:
        read_answer(text, kind, FEET)
    assert said in str(trouble.value)


def test_a_least_figure_is_printed_so_that_it_keeps_the_limit():
    """450 mm are 17.717 in: up to 17-3/4, down to 17-11/16."""
    assert shown(0.45, "length", FEET, "least") == "1'-5 3/4\""
    assert shown(0.45, "length", FEET, "most") == "1'-5 11/16\""
    assert shown(0.0100001, "length", METRIC, "least") == "11 mm" or kept_limit(
        0.0100001, "length", METRIC, "least"
    ) == pytest.approx(0.010)
    assert shown(0.4064, "length", METRIC, "least") == "407 mm"
    assert shown(70.06 * INCH**2, "area", FEET, "least") == "70.1 in²"
    assert (
        shown(19.32, "mass", METRIC, "most") == "19.3 kg"
        and shown(150.7, "mass", METRIC) == "151 kg"
    )


@pytest.mark.parametrize(
    ("value", "kind", "units", "least", "most"),
    [  # by hand, in the printed unit: the last place printed, above it and under it
        (17.72 * INCH, "length", FEET, "1'-5 3/4\"", "1'-5 11/16\""),
        (1.2345, "length", METRIC, "1 235 mm", "1 234 mm"),
        (10.004, "length", METRIC, "10.01 m", "10.00 m"),
        (70.06 * INCH**2, "area", FEET, "70.1 in²", "70.0 in²"),
        (0.04525, "area", METRIC, "453 cm²", "452 cm²"),
        (1.2345, "area", METRIC, "1.235 m²", "1.234 m²"),
        (19.37, "mass", METRIC, "19.4 kg", "19.3 kg"),
        (19.32, "mass", METRIC, "19.4 kg", "19.3 kg"),
        (150.7, "mass", METRIC, "151 kg", "150 kg"),
        (19.37 * POUND, "mass", FEET, "19.4 lb", "19.3 lb"),
        (19.32 * POUND, "mass", FEET, "19.4 lb", "19.3 lb"),
        (150.2 * POUND, "mass", FEET, "151 lb", "150 lb"),
        (12.34, "pressure", METRIC, "12.3 Pa", "12.3 Pa"),
    ],
)
def test_a_limit_is_rounded_to_the_last_place_printed(value, kind, units, least, most):
    assert (shown(value, kind, units, "least"), shown(value, kind, units, "most")) == (least, most)


@pytest.mark.parametrize(
    ("kind", "value", "off"),
    [  # a share of 1/200, no less than print takes; of a thin bed an eighth
        ("length", 10.0, 0.05), ("length", 0.2, INCH / 16), ("length", 0.008, 0.001),
        ("length", 0.0001, INCH / 64), ("area", 1.0, 0.005), ("area", 0.001, 0.00035),
        ("mass", 100.0, 0.5), ("mass", 1.0, 0.06), ("pressure", 40.0, 0.2),
        ("pressure", 1.0, 0.06), ("temperature", 600.0, 1.5), ("count", 900.0, 0.0),
        ("choice", 3.0, 0.0),
    ],
)  # fmt: skip
def test_how_far_off_an_answer_may_be(kind, value, off):
    assert tolerance(value, kind) == pytest.approx(off)
    assert tolerance(-value, kind) == pytest.approx(off)


def test_a_sixteenth_rounded_down_is_short_and_said_so():
    from dataclasses import replace

    least = replace(step("How far?", 12.4 * INCH, "length", "Divide."), limit="least")
    assert not check(least, '12 3/8"').right and "Round up" in check(least, "12-3/8").text
    assert check(least, "12 7/16 in").right
    most = replace(least, limit="most")
    assert check(most, "12-3/8").right and "Round down" in check(most, "12-7/16").text
    exact = replace(step("How far?", 16 * INCH, "length", "Look."), limit="least")
    assert (
        check(exact, "16").right
        and check(exact, "1'-4\"").right
        and not check(exact, "15-15/16").right
    )


def test_a_thin_bed_is_told_from_one_a_sixteenth_thicker():
    bed = step("How thick?", INCH / 8, "length", "Share it.")
    assert check(bed, "1/8").right and not check(bed, "1/16").right and not check(bed, "3/16").right


def test_a_liner_is_read_by_its_name():
    from dataclasses import replace

    asked = replace(
        step("Which?", 1.0, "choice", "Look.", [(0.0, "You took a small one.")]),
        options=("8.5x13", "12x16", "18x18"),
    )
    for text in ("12x16", "12 x 16", "12 X 16 in", '12" x 16"', "12×16"):
        assert check(asked, text).right, text
    assert check(asked, "8.5 x 13").mistake == "You took a small one."
    assert "Choose one of these: 8.5x13, 12x16, 18x18." in check(asked, "15").text


@pytest.mark.parametrize("limit", ["least", "most"])
@pytest.mark.parametrize(
    ("kind", "figure", "off", "right"),
    [
        ("length", 0.5, 0.05e-3, True),  # a twentieth of a millimeter is none of anybody's rounding
        ("length", 0.5, 0.3e-3, False),
        ("area", 0.5, 0.05e-3, False),
        ("area", 0.5, 0.4e-6, True),
    ],
)
def test_how_far_beyond_its_limit_an_answer_still_meets_it(limit, kind, figure, off, right):
    asked = SimpleNamespace(limit=limit, kind=kind, expected=figure)
    beyond = figure + (off if limit == "most" else -off)
    assert _passes_limit(asked, beyond) == right
    assert _passes_limit(asked, 2 * figure - beyond)
