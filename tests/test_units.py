"""Units at the door."""

import math
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc.base.printing import feet_inches, show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import (
    CUFT,
    CUYD,
    FOOT,
    INCH,
    PCF,
    POUND,
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
    assert '"914 mm"' in str(caught.value)
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
