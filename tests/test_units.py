"""Units at the door."""

import math
import re
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc.base.messages import LONGEST_MESSAGE, LONGEST_SHOWN, one_line, shown
from fireplace_calc.base.plain_decimals import PlainDecimals
from fireplace_calc.base.printing import feet_inches, grouped, show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import (
    CUFT,
    CUYD,
    FACTORS,
    FOOT,
    INCH,
    PCF,
    POUND,
    PRINTED,
    PSF,
    SI_UNIT,
    SQFT,
    SQIN,
    G,
    InputError,
    from_unit,
    in_unit,
    registry,
)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("36 in", 36),
        ("36in", 36),
        ("36 inches", 36),
        ('36"', 36),
        ("3'-0\"", 36),
        ("3' 0\"", 36),
        ("3 ft", 36),
        ("3ft", 36),
        ("3′-6 1/2″", 42.5),
        ("3' 6-1/2\"", 42.5),
        ("3 ft 6 in", 42),
        ("2.5 ft", 30),
        ("1/4 in", 0.25),
        ("1-1/2 in", 1.5),
        ("4 1/2 in", 4.5),
        ("-6 in", -6),
        ("-1'-6\"", -18),
        ("914.4 mm", 36),
        ("0.9144 m", 36),
        ("91.44 cm", 36),
        ("1 yd", 36),
        ("2 540 mm", 100),
        ("3ft6in", 42),
        ("3ft6 1/2in", 42.5),
        ("3½ in", 3.5),
        ("3 ½ in", 3.5),
        ("½ in", 0.5),
        ("3′ 6⅝″", 42.625),
        ("2 255/256 in", 2.99609375),
        ("1,000 mm", 1000 / 25.4),
        ("1\u202f016 mm", 40),
        ("−3 in", -3),
        ("1e3 mm", 1000 / 25.4),
    ],
)
def test_lengths_as_a_mason_writes_them(text, inches):
    assert to_si(text, "length") == pytest.approx(inches * 0.0254, rel=1e-15)


def test_the_same_length_is_the_same_float():
    assert (
        len(
            {
                to_si(t, "length")
                for t in ("3'-0\"", "3 ft", "36 in", "1 yd", "914.4 mm", "0.9144 m")
            }
        )
        == 1
    )


@pytest.mark.parametrize(
    ("text", "kind", "si"),
    [
        ("864 in2", "area", 864 * 0.0254**2),
        ("6 ft²", "area", 6 * 0.3048**2),
        ("6 sq ft", "area", 6 * 0.3048**2),
        ("45 deg", "angle", math.pi / 4),
        ("-10 degC", "temperature", 263.15),
        ("14 degF", "temperature", 263.15),
        ("263.15 K", "temperature", 263.15),
        ("5 Pa", "pressure", 5),
        ("115 mph", "speed", 115 * 0.44704),
        ("3.6 kg/h", "mass rate", 0.001),
        ("12 %", "ratio", 0.12),
        ("7:12", "ratio", 7 / 12),
        ("7 in 12", "ratio", 7 / 12),
        ("1/8", "ratio", 0.125),
        (0.25, "ratio", 0.25),
        ("100 cfm", "flow", 100 * 0.3048**3 / 60),
        ("50 L/s", "flow", 0.05),
        ("150 pcf", "density", 150 * 16.01846337),
        ("2 atm", "pressure", 202650),
        ("1 psi", "pressure", 6894.757293168),
        ("20 MPa", "strength", 20e6),
        ("3000 psf", "bearing", 143640.777),
    ],
)
def test_other_kinds(text, kind, si):
    """Exact definitions of the international yard, pound and foot; pcf and psi as NIST SP 811
    appendix B prints them.
    """
    assert to_si(text, kind) == pytest.approx(si, rel=1e-9)


def test_pint_agrees_with_every_short_rule():
    """Pint's own definitions, an outside reference."""
    ureg = registry()
    for unit, si in (
        ("inch", INCH),
        ("foot", FOOT),
        ("inch**2", SQIN),
        ("foot**2", SQFT),
        ("foot**3", CUFT),
        ("yard**3", CUYD),
        ("pound", POUND),
        ("lbf/foot**2", PSF),
        ("pound/foot**3", PCF),
        ("standard_gravity", G),
    ):
        assert ureg.Quantity(1, unit).to_base_units().magnitude == pytest.approx(si, rel=1e-12)


NO_UNIT_OF_PINTS = {
    "psf": "lbf/foot**2",
    "pcf": "pound/foot**3",
    "cfm": "foot**3/minute",
    '"': "inch",
    "'": "foot",
    **dict.fromkeys(("", "-", "count", "ratio"), "dimensionless"),
}


@pytest.mark.parametrize(
    ("unit", "factor"),
    [*PRINTED.items(), *(one for kind in FACTORS.values() for one in kind.items())],
)
def test_every_unit_that_is_read_or_printed_is_pints_own(unit, factor):
    """Pint's own definitions, an outside reference."""
    name = NO_UNIT_OF_PINTS.get(unit) or re.sub(r"(?<=[a-z])([23])", r"**\1", unit)
    one = registry().Quantity(1, name).to_base_units().magnitude
    assert float(factor) == pytest.approx(one, rel=1e-12)


def test_a_pint_quantity_is_welcome():
    assert to_si(registry().Quantity(36, "inch"), "length") == pytest.approx(0.9144)
    with pytest.raises(InputError, match="no length"):
        to_si(registry().Quantity(36, "kg"), "length", "Opening width")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("30 deg", "ratio"),
        ("0.5 rad", "ratio"),
        ("100 %", "angle"),
        ("1e400", "ratio"),
        ("0,25", "ratio"),
        ("1e400 degC", "temperature"),
    ],
)
def test_an_angle_is_no_ratio_and_nothing_overflows(text, kind):
    """A pitch of 30 degrees is tan 30, not 0.52: pint takes both for pure numbers."""
    with pytest.raises(InputError, match="Roof pitch"):
        to_si(text, kind, "Roof pitch")
    with pytest.raises(InputError, match="no ratio"):
        to_si(registry().Quantity(30, "degree"), "ratio", "Roof pitch")


@pytest.mark.parametrize(
    "bad",
    [
        "36",
        36,
        36.0,
        "abc",
        "36 kg",
        "",
        "nan m",
        "inf m",
        "1/0 in",
        "36 in; import os",
        None,
        [],
        True,
        "12 in 12 in 12",
        "3'-",
        "1e400 m",
        "1e999 in",
        "3 in 2",
        "2*3 in",
        "--3 in",
        "3.5.2 in",
        "1e2.5 in",
        "1 m + 2 in",
        "in",
        "1,5 m",
        "1 066,8 mm",
        "0,914 m",
        "3 ft2",
        "3'6\"7",
    ],
)
def test_what_is_no_length_is_refused_with_the_fix(bad):
    with pytest.raises(InputError, match="Opening width") as caught:
        to_si(bad, "length", "Opening width")
    assert "914 mm" in str(caught.value) and "\\" not in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (36, "3'-0\""),
        (36.5, "3'-0 1/2\""),
        (10.5, '10 1/2"'),
        (11.99, "1'-0\""),
        (0.25, '1/4"'),
        (0, '0"'),
        (-0.001, '0"'),
        (-18, "-1'-6\""),
        (12, "1'-0\""),
        (23.97, "2'-0\""),
        (8.0625, '8 1/16"'),
    ],
)
def test_feet_and_inches_carry(inches, text):
    assert feet_inches(inches * INCH) == text


@given(st.floats(0.003, 60))
def test_what_is_shown_reads_back_within_half_a_sixteenth(metres):
    assert abs(to_si(show(metres, "length"), "length") - metres) <= INCH / 32 + 1e-9


@given(st.floats(0.003, 9.9))
def test_metric_reads_back_within_half_a_millimetre(metres):
    assert abs(to_si(show(metres, "length", "millimetres"), "length") - metres) <= 0.0005 + 1e-9


def test_other_kinds_are_shown_in_both_systems():
    assert show(0.557418, "area") == "864.0 in²"
    assert show(0.557418, "area", "millimetres") == "0.557 m²"
    assert show(263.15, "temperature") == "14 °F"
    assert show(263.15, "temperature", "millimetres") == "-10.0 °C"
    assert show(math.pi / 4, "angle") == "45.0°"
    assert show(None, "length") == "unknown"
    assert show(12.192, "length", "millimetres") == "12.19 m"
    for kind in SI_UNIT:
        assert show(1.0, kind) and show(1.0, kind, "millimetres")


@pytest.mark.parametrize(
    ("value", "kind", "american", "metric"),
    [
        (0.09290304, "area", "144.0 in²", "0.093 m²"),
        (2.831685, "volume", "100.0 ft³", "2.832 m³"),
        (0.5, "angle", "28.6°", "28.6°"),
        (12.34, "pressure", "12.3 Pa", "12.3 Pa"),
        (143640.777, "bearing", "3,000 psf", "143.6 kPa"),
        (20684271.9, "strength", "3,000 psi", "20.7 MPa"),
        (10.0, "speed", "22 mph", "10.0 m/s"),
        (1000.0, "mass", "2,205 lb", "1 000 kg"),
        (0.001, "mass rate", "7.9 lb/h", "3.6 kg/h"),
        (2402.77, "density", "150 lb/ft³", "2 403 kg/m³"),
        (1 / 3, "ratio", "0.333", "0.333"),
        (12340.0, "power", "12.3 kW", "12.3 kW"),
        (0.0471947, "flow", "100 cfm", "47 L/s"),
        (0.3048, "air speed", "1.00 ft/s", "0.30 m/s"),
        (4448.2216, "force", "1,000 lbf", "4.45 kN"),
        (222.0, "difference", "400 °F", "222 K"),
        (310.15, "temperature", "99 °F", "37.0 °C"),
        (10.0, "length", "32'-9 11/16\"", "10.00 m"),
        (-12.0, "length", "-39'-4 7/16\"", "-12.00 m"),
        (9.9994, "length", "32'-9 11/16\"", "9 999 mm"),
        (12, "count", "12", "12"),
    ],
)
def test_every_kind_is_rounded_as_it_is_read_off(value, kind, american, metric):
    """Worked out by hand: 1 ft is 0.3048 m, 1 mph 0.44704 m/s, 1 lb 0.45359 kg, 1 lbf 4.44822 N;
    400 F is 222 K. A sixteenth is 1.5875 mm: 10 m is 393.7008 in, 32 ft and 9 11/16 in.
    """
    assert (show(value, kind), show(value, kind, "millimetres")) == (american, metric)


def test_a_length_is_rounded_as_finely_as_asked_and_in_inches_alone():
    assert feet_inches(3.3 * INCH, finest=2) == '3 1/2"'
    assert feet_inches(3.3 * INCH, finest=4) == '3 1/4"'
    assert feet_inches(42.5 * INCH, inches_only=True) == '42 1/2"'
    assert feet_inches(12.5 * INCH) == "1'-0 1/2\""
    assert feet_inches(-INCH / 2) == '-1/2"' and feet_inches(-INCH / 40) == '0"'


@pytest.mark.parametrize("kind", ["air speed", "difference", "count", "", "lenght"])
@pytest.mark.parametrize("value", ["3 ft/s", 3.0, None, registry().Quantity("3 ft/s")])
def test_a_kind_that_cannot_be_read_is_a_sentence(kind, value):
    """Every kind that ``show`` knows can be asked for by mistake."""
    with pytest.raises(InputError, match="what can be read is length, area") as refused:
        to_si(value, kind, "Face velocity")
    assert str(refused.value).startswith(f"Face velocity is asked for as '{kind}'")


def test_thousands_stand_apart_and_no_nought_is_negative():
    assert grouped(1234567.0) == "1,234,567" and grouped(-1234.5, 1) == "-1,234.5"
    assert grouped(1234567.0, units="millimetres") == "1 234 567"
    assert grouped(-0.004, 2) == "0.00" and grouped(-0.04, 2) == "-0.04"


@pytest.mark.parametrize(
    ("what", "value", "american", "metric"),
    [
        ("length", 0.1, '3 15/16"', "0.1 m"),
        ("length", 0.9144, '36"', "0.914 m"),
        ("level", 8.275, "27'-1 13/16\"", "8.275 m"),
        ("density", 1.2, "0.07491 lb/ft³", "1.200 kg/m³"),
        ("long_length", 6.5, "21.33 ft", "6.5 m"),
        ("area", 0.5574182, "864 in²", "0.5574 m²"),
        ("pressure", 1000.0, "20.9 lbf/ft²", "1000 N/m²"),
        ("force", 1234.5, "278 lbf", "1234 N"),
        ("force", 444.822, "100 lbf", "445 N"),
    ],
)
def test_plain_decimals_multiply(what, value, american, metric):
    """By hand: 0.1 / 0.0254; 8.275 / 0.3048; 1.2 / 16.01846 kg/m3 to the lb/ft3; 1000 / 47.8803 Pa to the lbf/ft2; 1234.5 / 4.44822 N to the lbf."""
    assert getattr(PlainDecimals(metric=False), what)(value) == american
    assert getattr(PlainDecimals(metric=True), what)(value) == metric


def test_what_is_shown_in_a_message_is_cut_where_it_is_too_long():
    assert shown(10**300) == f"{10**300!r}"[:57] + "..." and shown(-(10**301)).endswith("bounds")
    just = "x" * (LONGEST_SHOWN - 2)
    assert shown(just) == f"'{just}'" and shown(just + "x") == f"'{just[:-2]}..."
    assert len(shown(just + "x")) == LONGEST_SHOWN
    most = "y" * LONGEST_MESSAGE
    assert one_line(most) == most
    assert one_line(most + "z") == f"{most[:300]} ... {most[:299]}z"


def test_printed_units_go_both_ways():
    assert in_unit(from_unit(20, "in"), "in") == pytest.approx(20)
    assert in_unit(0.3048, "ft") == pytest.approx(1)


def test_pint_sleeps_until_it_is_needed():
    import subprocess

    code = "import sys, fireplace_calc.design.records; print('pint' in sys.modules)"
    assert (
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True
        ).stdout.strip()
        == "False"
    )
