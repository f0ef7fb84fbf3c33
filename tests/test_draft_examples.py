"""Worked examples and published tables of the draft, each with its source. Where we miss a figure,
the test says by how much.
"""

from dataclasses import replace
from math import pi

import numpy as np
import pytest

from fireplace_calc import load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.canada import canada_round_flues
from fireplace_calc.base.tables.draft import coefficient, wood_analysis
from fireplace_calc.draft import (
    BurningFire,
    FlowPath,
    Surroundings,
    face_velocity,
    gravity_flow,
    round_flue_for,
    settle,
    smoke_odds,
    theoretical_draft,
)
from fireplace_calc.draft.flow_path import FIRE_BED, trace_flow_path
from fireplace_calc.draft.operating import excess_pressure
from fireplace_calc.draft.physics import house as house_module
from fireplace_calc.draft.physics.air import air_density, pressure_at
from fireplace_calc.draft.physics.house import house_pull
from fireplace_calc.draft.physics.house_leaks import Leaks, flows, inlet_flow, leakage, net_inflow
from fireplace_calc.draft.physics.losses import handbook_friction, inlet_loss
from fireplace_calc.draft.physics.weather import wind_pressure
from fireplace_calc.draft.physics.wood import lower_heating_value, stoichiometric_air
from fireplace_calc.draft.spillage import inward_velocity, least_air, plume, spill
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.report.canada_agreement import (
    FIRST_ROW,
    TABLES_WORDS,
    WORDS,
    compare_canadas_tables,
    compare_with_canada,
)

INCH_WATER, INCH_MERCURY, RANKINE, FOOT, POUND_HOUR = (
    249.089,
    3386.389,
    1 / 1.8,
    0.3048,
    0.45359237 / 3600,
)


# -- the handbook's formulas --------------------------------------------------------------------------
def test_theoretical_draft_in_inches_of_water():
    """M01: 0.2554 B H (1/To - 1/Tm) with 29.92 inHg, 25 ft, 530 and 710 R is 0.0914 in.wg; SI is
    22.71 Pa, 0.2 % less.
    """
    printed = 0.2554 * 29.92 * 25 * (1 / 530 - 1 / 710)
    assert printed == pytest.approx(0.0914, abs=5e-5)
    ours = float(theoretical_draft(25 * FOOT, 710 * RANKINE, 530 * RANKINE, 29.92 * INCH_MERCURY))
    assert ours == pytest.approx(22.71, abs=0.006)
    assert ours / INCH_WATER == pytest.approx(printed, rel=0.003)


def test_theoretical_draft_of_a_boiler_chimney():
    """M02: 20 m, 0 and 200 C, 1.292 kg/m3: 107 Pa (an engineering reference page; the ideal gas law
    gives it too).
    """
    assert theoretical_draft(20.0, 473.15, 273.15) == pytest.approx(107, abs=0.5)


def test_theoretical_draft_of_the_reference_case():
    """6.1 m, 5 C outdoors, 71 C on the mean: 14.6 Pa; and the short form 0.0342 p H (1/To - 1/Tm)
    (read).
    """
    assert theoretical_draft(6.1, 344.15, 278.15) == pytest.approx(14.6, abs=0.05)
    assert theoretical_draft(6.1, 344.15, 278.15) == pytest.approx(
        0.03416 * 101_325 * 6.1 * (1 / 278.15 - 1 / 344.15), rel=2e-4
    )


def test_gravity_flow_in_pounds_an_hour():
    """M03: 413 d2 sqrt(dp B / (K T)), 12 in, K 5, 0.0914 in.wg, 29.92 inHg, 710 R: 1651 lb/h; SI
    1653. Both forms agree.
    """
    printed = 413 * 12**2 * (0.0914 * 29.92 / (5 * 710)) ** 0.5
    assert printed == pytest.approx(1651, abs=0.5)
    area = pi * (12 * 0.0254) ** 2 / 4
    ours = (
        float(gravity_flow(area, 0.0914 * INCH_WATER, 5.0, 710 * RANKINE, 29.92 * INCH_MERCURY))
        / POUND_HOUR
    )
    assert ours == pytest.approx(1653, abs=1.0)
    assert ours == pytest.approx(printed, rel=0.002)


def test_friction_in_feet_over_inches():
    """0.4 L/d with L in feet and d in inches is f = 0.0333 in one unit; the twelvefold slip is the
    one to fear.
    """
    assert float(handbook_friction(20 * FOOT, 12 * 0.0254)) == pytest.approx(
        0.4 * 20 / 12, rel=0.002
    )


@pytest.mark.parametrize("name", ["boathouse-laid", "plain"])
def test_all_losses_of_a_way_with_the_handbooks_friction(name):
    """One velocity head, every loss once, and 0.4 L/d with L in feet and d, four areas over the
    perimeter, in inches; the product's factor is rounded to 0.2 %.
    """
    way = trace_flow_path(build_geometry(load(DESIGNS / f"{name}.toml")), "opening top")
    across = 4 * way.flue_area / way.flue_perimeter / 0.0254
    losses = way.mouth + way.throat + way.chamber + way.bends + way.cap + way.screen
    friction = 0.4 * way.length / FOOT / across
    assert friction > 0.3
    assert way.handbook_resistance == pytest.approx(1 + losses + friction, abs=0.002 * friction)


CHART = [
    (3.05, 10.3, 8.0),
    (4.57, 12.0, 9.6),
    (6.1, 13.3, 10.8),
    (7.62, 14.3, 11.8),
    (9.14, 15.1, 12.6),
]


@pytest.mark.parametrize(("height", "generous", "tight"), CHART)
def test_sizing_chart(height, generous, tight):
    """Opening over flue at 0.8 ft/s, 0.7 m2, To = Tr = 294 K, rise 222 K, inlet 1.0 and 2.5
    (derived from the handbook's coefficients); the last printed digit, and 0.05 of rounding for
    8.05 printed as 8.0.
    """
    for inlet, printed in ((1.0, generous), (2.5, tight)):
        diameter = float(round_flue_for(0.7, height, inlet, outdoor=294.0, room=294.0))
        assert 0.7 / (pi * diameter**2 / 4) == pytest.approx(printed, abs=0.06)


SENSITIVITY = [
    ({"inlet": 1.0}, -9.7),
    ({"inlet": 0.5}, -13.6),
    ({"top": 0.5}, 2.7),
    ({"top": 1.5}, 7.6),
    ({"rise": 280.0}, -0.5),
    ({"rise": 170.0}, 1.3),
    ({"rise": 100.0}, 6.4),
    ({"rise": 60.0}, 14.3),
    ({"velocity": 0.30}, 10.5),
    ({"velocity": 0.20}, -9.0),
    ({"velocity": 0.15}, -20.7),
    ({"suction": 3.0}, 2.5),
    ({"suction": 5.0}, 4.4),
    ({"outdoor": 273.15, "room": 293.15}, -3.7),
]


@pytest.mark.parametrize(("change", "percent"), SENSITIVITY)
def test_sensitivity_of_the_diameter(change, percent):
    """A trial calculation apart from this code, 0.6 m2 and 6 m at inlet 2.5: 267 mm, and by how
    many percent it moves; two last digits, for suction and cold outdoors; the others to half of
    one.
    """
    base = float(round_flue_for(0.6, 6.0, 2.5))
    assert base == pytest.approx(0.267, abs=0.0005)
    moved = float(round_flue_for(0.6, 6.0, **({"inlet": 2.5} | change)))
    assert (moved / base - 1) * 100 == pytest.approx(percent, abs=0.18)


RATIOS = [
    ("round 1/12", 12, 15, (0.244, 0.215, 0.194)),
    ("round 1/12", 12, 25, (0.295, 0.263, 0.240)),
    ("square 1/10", 10, 15, (0.292, 0.257, 0.232)),
    ("1/12", 12, 22, (0.282, 0.250, 0.228)),
    ("1/10", 10, 15, (0.296, 0.260, 0.234)),
]


@pytest.mark.parametrize(("rule", "ratio", "feet", "printed"), RATIOS)
def test_what_the_ratio_rules_deliver(rule, ratio, feet, printed):
    """A trial calculation apart from this code: face velocity that the American ratios give at
    inlet 1.0, 1.75, 2.5 (0.7 m2, 222 K); half a last digit.
    """
    flue = 0.7 / ratio
    diameter = flue**0.5 if rule.startswith("square") else (4 * flue / pi) ** 0.5
    height = feet * FOOT
    ours = [
        float(face_velocity(0.7, flue, diameter, height, height, inlet))
        for inlet in (1.0, 1.75, 2.5)
    ]
    assert ours == pytest.approx(printed, abs=0.0012)


# -- Canada's table -----------------------------------------------------------------------------------
CELLS = [cell for cell in canada_round_flues() if cell.flue_low is not None]


@pytest.mark.parametrize(
    ("inlet", "rise", "cells", "deviation"),
    [
        (0.5, 222, 25, -0.107),
        (1.0, 222, 40, -0.068),
        (1.75, 222, 46, -0.016),
        (2.5, 222, 46, 0.029),
        (1.0, 170, 42, None),
        (2.5, 170, 42, None),
        (1.0, 280, 39, None),
        (2.5, 280, 46, None),
    ],
)
def test_canadas_round_flue_table(inlet, rise, cells, deviation):
    """NBC 9.21.2.5.A, 46 cells, opening and height at mid-band, published coefficients, nothing
    tuned: at least 40 at inlet 1.0 and all 46 at 2.5. Agreement between two design rules, not an
    experiment: each band is 8 to 25 % of the diameter wide. The misses at 1.0 all lie in the lowest
    chimneys, 2 to 11 mm under the table's least.
    """
    assert len(CELLS) == 46
    found = compare_with_canada(inlet, rise)
    assert found.inside.sum() == cells
    if deviation is not None:
        assert found.misfit.mean() == pytest.approx(deviation, abs=0.0006)
    assert 0.024 < found.misfit.std() < 0.032  # a trial apart from this code had 2.6 to 2.9 % of D


def test_where_the_table_is_missed():
    """At inlet 1.0 all misses lie in the lowest chimneys, 2 to 11 mm under the least diameter."""
    found = compare_with_canada(1.0)
    missed = ~found.inside
    assert set(found.height[missed]) == {3.75}
    short = (found.least - found.ours)[missed]
    assert short.min() > 0.0015 and short.max() < 0.0115


@pytest.mark.parametrize(
    ("walls", "rounded", "cells"),
    [
        (0.040, True, 38),
        (0.030, True, 36),
        (0.035, True, 36),
        (0.0, True, 15),
        (0.0, False, 1),
        (0.050, False, 26),
    ],
)
def test_canadas_two_tables_against_each_other(walls, rounded, cells):
    """NBC 9.21.2.5.A and B. The rectangular table as printed, less the liner's walls, against the
    round one: worked apart from this code on the printed cells. The 40 mm is fitted; it is agreement
    between two tables, not an experiment. The one cell that misses is 0.351 to 0.5 m2 at 8.9 to
    12 m: the smallest flue counts as 160 mm across, where the round table starts at 170. With full
    corners no walls whatever give more than 34.
    """
    found = compare_canadas_tables(walls, rounded)
    assert (sum(found), len(found)) == (cells, 39)


def test_what_is_said_of_canadas_two_tables():
    full = max(sum(compare_canadas_tables(mm / 1000, rounded=False)) for mm in range(90))
    assert full == 34 and f"{full} at best" in TABLES_WORDS
    assert "38 of its 39 cells" in TABLES_WORDS and TABLES_WORDS in WORDS


def test_a_rule_without_height_does_worse():
    """The null model: one ratio for every height fits 33 cells at best, so the height carries
    information.
    """
    opening = np.array(
        [(c.opening_low + c.opening_high) / 2 if c.opening_low else FIRST_ROW for c in CELLS]
    )
    best = max(
        sum(
            c.flue_low <= (4 * a / r / pi) ** 0.5 <= c.flue_high
            for a, c in zip(opening, CELLS, strict=True)
        )
        for r in np.linspace(8, 18, 201)
    )
    assert best <= 34


# -- an operating example worked out apart from this code ---------------------------------------------------------------
OAK = wood_analysis("hardwood")


def reference(rates, air_changes=None, inlet=0.0):
    """0.915 x 0.74 m opening, 305 mm round flue of 6.1 m, 5 C outdoors, inlet coefficient 2.5, oak
    at 20 % water.
    """
    burn = np.asarray(rates, float) / 3600
    power = burn * lower_heating_value(OAK, 0.20)
    way = FlowPath(
        0.915 * 0.74,
        0.74,
        pi * 0.305**2 / 4,
        pi * 0.305,
        6.1,
        6.1,
        0.0015,
        0.5,
        2.0,
        0.0,
        0.0,
        0.0,
        0.0,
        3.5,
        0.0,
    )
    leak = np.inf if air_changes is None else leakage(np.asarray(air_changes, float), 400.0, 0.65)
    fire = BurningFire(burn, 0.8, power, power * 0.9 * 0.6, stoichiometric_air(OAK))
    return way, fire, Surroundings(278.15, 293.15, leak, 0.65, inlet)


def test_operating_example():
    """A trial calculation apart from this code: 1, 3, 5, 9.3, 16 kg/h give 435...708 m3/h,
    0.178...0.291 m/s, 35...163 C, air ratio 110...11. It does not tell wall and friction in full;
    we come out 0.3 to 1.7 % lower in flow, and within 1 K.
    """
    flow = settle(*reference([1, 3, 5, 9.3, 16]), friction=0.0333)
    assert (flow.air * 3600).tolist() == pytest.approx([435, 535, 591, 659, 708], rel=0.018)
    assert flow.face.tolist() == pytest.approx([0.178, 0.219, 0.242, 0.271, 0.291], rel=0.02)
    assert (flow.foot - 273.15).tolist() == pytest.approx([35, 56, 74, 110, 163], abs=1.0)
    assert flow.air_ratio.tolist() == pytest.approx([110, 45, 30, 18, 11], rel=0.03)


def test_top_temperatures():
    """Formula section 11: 68, 102, 122 C at the top for 5, 9.3, 12 kg/h: under 121 C, so that
    figure is no aim for an open fire.
    """
    flow = settle(*reference([5, 9.3, 12]), friction=0.0333)
    assert (flow.top - 273.15).tolist() == pytest.approx([68, 102, 122], abs=2.5)


def test_house_example():
    """A trial calculation apart from this code, 5 kg/h in 400 m3: pull and face velocity by air
    tightness. We pull 0.6 to 2.5 % less (0.56 Pa at most).
    """
    flow = settle(*reference(5, [13, 7, 5, 3, 1.5, 0.6]), friction=0.0333)
    assert flow.pull.tolist() == pytest.approx([1.5, 3.6, 5.5, 9.6, 16.8, 27.6], rel=0.026)
    assert flow.face.tolist() == pytest.approx(
        [0.232, 0.217, 0.204, 0.175, 0.126, 0.069], abs=0.005
    )


def test_house_example_with_an_inlet():
    """355 cm2: 7 changes 2.3 Pa, 3 changes 5.0 Pa, 1.5 changes 7.6 Pa; we pull 2 to 3 % less."""
    flow = settle(*reference(5, [7, 3, 1.5], inlet=0.0355), friction=0.0333)
    assert flow.pull.tolist() == pytest.approx([2.3, 5.0, 7.6], rel=0.03)


def test_inlet_example():
    """Formula 7.10: 355 cm2 at 5 Pa and 1.27 kg/m3 is 0.060 m3/s, 215 m3/h."""
    assert float(inlet_flow(0.0355, 5.0, 1.27)) * 3600 == pytest.approx(215, abs=0.7)


def test_wind_examples():
    """Section 8: 5 m/s is 15.6 Pa at 1.25 kg/m3; -0.5 helps 8 Pa, +0.3 costs 5 Pa."""
    thin = 101_325 / 287.05 / 1.25
    assert wind_pressure(1.0, 5.0, thin) == pytest.approx(15.6, abs=0.05)
    assert wind_pressure(-0.5, 5.0, thin) == pytest.approx(-8, abs=0.5)
    assert wind_pressure(0.3, 5.0, thin) == pytest.approx(5, abs=0.5)


def test_plume_example():
    """Formula 9.3: 0.11, 0.13, 0.17, 0.20 m/s for 20, 30, 45, 60 kW; the height that gives them is
    the lintel less 150 mm.
    """
    ours = [
        float(plume(kilowatts * 1e3, 0.74 - FIRE_BED)) / air_density(293.15) / (0.915 * 0.74)
        for kilowatts in (20, 30, 45, 60)
    ]
    assert ours == pytest.approx([0.11, 0.13, 0.17, 0.20], abs=0.005)


@pytest.mark.parametrize("altitude", [0.0, 1609.0, 3000.0])
def test_plume_in_thin_air(altitude):
    """The strong plume law of the fire handbooks, 0.196 (g rho^2 / (cp T))^(1/3) Qc^(1/3) z^(5/3),
    constant from memory: the printed 0.071 is it at 20 C and sea level to 1 %, and rho to the power
    2/3 at any other pressure. The second term, 2.9 times it over (g^0.5 cp rho T)^(2/3), knows no
    density.
    """
    z, kilowatts = 0.59, 18.0
    density = float(air_density(293.15, pressure_at(altitude)))
    law = 0.196 * (9.80665 * density**2 / (1.006 * 293.15)) ** (1 / 3)
    first = law * kilowatts ** (1 / 3) * z ** (5 / 3)
    ours = float(plume(kilowatts * 1e3 / 0.6, z, density)) - 0.0018 * kilowatts
    assert ours == pytest.approx(first, rel=0.01)
    sea = float(plume(kilowatts * 1e3 / 0.6, z)) - 0.0018 * kilowatts
    assert ours / sea == pytest.approx((density / 1.2041) ** (2 / 3), rel=1e-4)
    second = law * 2.9 / (9.80665**0.5 * 1.006 * density * 293.15) ** (2 / 3)
    assert second == pytest.approx(0.0018, rel=0.08)


def test_odds_of_the_reference_fire():
    """A trial calculation apart from this code, 4000 draws over the same ranges: 0.178, 0.235,
    0.288 m/s, 0.3, 1.6, 6.9 Pa, 1 % under 0.15 and 62 % under 0.244. Evenings were drawn from a
    climate file there and evenly between -10 and 10 C here, and the wind at the top from a bell
    about 1.5 Pa there: 8 % apart at the upper edge, and 54 of 100 under 0.244.
    """
    way, fire, surroundings = reference(5.0, 12.86)
    way = FlowPath(
        **{name: getattr(way, name) for name in FlowPath.__dataclass_fields__}
        | {"throat": 1.25, "transmittance": 4.0}
    )
    surroundings = Surroundings(263.15, 293.15, surroundings.leak, 0.65)
    found = smoke_odds(
        way, fire, surroundings, 283.15, (-0.18, 0.88), tested=False, cap_known=False, draws=4000
    )
    assert found.face.tolist() == pytest.approx([0.178, 0.235, 0.288], rel=0.08)
    assert found.pull.tolist() == pytest.approx([0.3, 1.6, 6.9], rel=0.15)
    assert float(found.below) == pytest.approx(0.62, abs=0.09)
    # Against a cross-draft 0.100 to 0.244 m/s are asked, likeliest 0.151: how often a bell as wide
    # as those three figures lies under such a triangle, by hand.
    speed = np.linspace(0.0, 0.5, 5001)
    bell = np.exp(-(((speed - 0.235) / ((0.288 - 0.178) / 3.29)) ** 2) / 2)
    rising, falling = (speed - 0.1) ** 2 / 0.051 / 0.144, (0.244 - speed) ** 2 / 0.093 / 0.144
    reached = np.where(speed < 0.151, np.where(speed < 0.1, 0.0, rising), 1 - falling)
    reached[speed > 0.244] = 1.0
    assert float(found.smokes) == pytest.approx((bell * (1 - reached)).sum() / bell.sum(), abs=0.02)


@pytest.mark.parametrize(("duty", "burn", "printed"), [(544, 5.0, 0.151), (360, 0.65, 0.100)])
def test_speed_against_a_cross_draft(duty, burn, printed):
    """FORMULAS 7.8: 340 kW to a square metre at 1.6 m3/h a kilowatt are 544 m3/h; the rule for a
    fireplace that stands alone has 360. The first for a fire that burns, the second for embers.
    """
    least = float(inward_velocity(burn / 3600))
    assert least == pytest.approx(duty / 3600, abs=5e-4) and least == pytest.approx(printed)
    assert float(inward_velocity(1.0 / 3600)) == 0.100 < float(inward_velocity(1.01 / 3600))


def test_a_fire_against_the_fireback_takes_less():
    """FORMULAS 9.3: 0.11, 0.13, 0.17 and 0.20 m/s for 20, 30, 45 and 60 kW in an opening of 0.915
    by 0.74 m, 0.08 to 0.16 against the fireback. Nobody asks for less than 0.1 m/s.
    """
    way, fire, _ = reference([1.0] * 4)
    way = replace(way, opening_area=0.915 * 0.74, opening_height=0.74)
    fire = replace(fire, burn=np.full(4, 5 / 3600), power=np.array([20e3, 30e3, 45e3, 60e3]))
    free, leaning = (
        least_air(fire, way, 1.2, 0.0, lean) / 1.2 / way.opening_area for lean in (0.0, 1.0)
    )
    assert free.tolist() == pytest.approx([0.11, 0.13, 0.17, 0.20], abs=0.006)
    assert leaning[[0, 3]].tolist() == pytest.approx([0.08, 0.16], abs=0.006)
    asked = least_air(fire, way, 1.2) / 1.2 / way.opening_area
    assert asked.tolist() == pytest.approx([0.151, 0.151, *free[2:]])


def test_excess_air_is_not_what_was_measured_at_low_fire():
    """M05 has 10 to 20 times the air needed; the model gives that only from 9 kg/h up and 29 at 5
    kg/h. Owned up to, not tuned.
    """
    flow = settle(*reference([5, 9.3, 16]), friction=0.0333)
    assert flow.air_ratio[0] > 21
    assert flow.air_ratio[2] + 0.5 >= 11 and flow.air_ratio[1] <= 21


def test_dying_fire_reverses_near_the_published_limit():
    """M16, and a trial calculation apart from this code: at 0.3 kg/h the draft is 1.8 to 4.8 Pa
    between 20 and 5 C outdoors, so a pull of some 5 Pa turns it.
    """
    way, fire, surroundings = reference(0.3)
    for outdoor, draft in ((293.15, 1.8), (278.15, 4.8)):
        surroundings = Surroundings(outdoor, 293.15, np.inf)
        flow = settle(way, fire, surroundings, friction=0.0333)
        assert float(flow.draft) == pytest.approx(draft, abs=0.4)


def test_the_largest_of_two_roots_is_taken():
    """A small fire in a leaky room: the pressure left over is positive at the root's left and
    negative at every flow to its right.
    """
    way, fire, surroundings = reference(5.0, 7.0)
    flow = settle(way, fire, surroundings)
    right = np.linspace(float(flow.mass) * 1.0001, 2.0, 500)
    assert (excess_pressure(right, way, fire, surroundings)[0] < 0).all()
    assert excess_pressure(float(flow.mass) * 0.9999, way, fire, surroundings)[0] > 0


def test_house_and_its_inverse_agree():
    pull = np.linspace(0.1, 60, 100)
    for inlet in (0.0, 0.002, 0.05, 0.4):
        for bottom, top in ((0.0, 0.0), (-1.0, 5.0), (-9.0, 1.0)):
            house = Leaks(leakage(4.0, 500.0, 0.65), 0.65, inlet, 1.34, 1.2, bottom, top)
            let_in = net_inflow(pull, house)
            some = (
                let_in > 0
            )  # below, the house is lower than at rest: nothing that goes out does it
            assert some.sum() > 80
            assert house_pull(let_in[some], house) == pytest.approx(pull[some], rel=1e-9)
    assert float(house_pull(-0.1, Leaks(0.02, 0.65, 0.01))) == pytest.approx(0.0, abs=1e-7)


def test_a_pull_is_found_in_few_rounds(monkeypatch):
    """Newton's steps need four to eight, where halving alone takes some fifty."""
    rounds = []
    monkeypatch.setattr(house_module, "flows", lambda *told: rounds.append(1) or flows(*told))
    for out in (0.01, 0.1, 1.0):
        rounds.clear()
        house_pull(out, Leaks(0.05, 0.65, 0.01, 1.35, 1.2, -1.0, 5.0))
        assert 2 <= len(rounds) <= 12, out


@pytest.mark.parametrize(("over", "height"), [(1.0, 6.0), (2.0, 9.0), (-1.5, 4.0)])
def test_draft_fails_where_the_neutral_level_says(over, height):
    """A06, the house's influence on the draft (a national research council's note of 1961; derived
    form): a flue fails when its gas is colder than To / (1 - (1 - To / Ti) h_n / H), h_n the neutral
    level over the draft's foot. Gas taken as air; nothing goes up yet and no fan runs, so the leaks
    alone put the neutral level, and they do so at mid-height but for the densities (a tenth).
    """
    outdoor, room = 263.15, 293.15
    cold, warm = air_density(outdoor), air_density(room)
    house = Leaks(0.05, 0.65, 0.0, cold, warm, over - 3.0, over + 3.0)
    rest = float(house_pull(0.0, house))
    neutral = rest / (9.80665 * (cold - warm))
    assert neutral == pytest.approx(over, abs=0.3)
    assert float(net_inflow(rest, house)) == pytest.approx(0.0, abs=1e-12)
    fails = outdoor / (1 - (1 - outdoor / room) * neutral / height)
    assert theoretical_draft(height, fails, outdoor) == pytest.approx(rest, rel=1e-9)


def test_the_inlet_coefficients_bracket_the_american_ratios():
    """Notes: needed opening over flue at 15 ft is 12.0 | 9.6, so 1/12 and 1/10 lie between the two
    published inlets.
    """
    assert float(inlet_loss(1.0, 2.0)) == 1.0 and float(inlet_loss(1.0, 1.0)) == 2.5
    assert coefficient("face velocity") == pytest.approx(0.8 * FOOT, abs=5e-4)


@pytest.mark.parametrize("kind", ["hardwood", "softwood"])
@pytest.mark.parametrize("water", [0.0, 0.2, 0.5, 0.7])
def test_the_plume_carries_more_than_the_wood_needs_to_burn(kind, water):
    """Whatever the wood and however low the lintel, so that the air needed never sets the limit: dry
    oak needs 5.97 kg to a kilogram (formula 5.6), its plume's second term alone takes 19.
    """
    wood = wood_analysis(kind)
    taken = float(plume(lower_heating_value(wood, water), 1e-9))
    assert taken > 2 * (1 - water) * stoichiometric_air(wood)
    if (kind, water) == ("hardwood", 0.0):
        assert taken == pytest.approx(0.0018 * 0.6 * 18.78e3, rel=0.01)


@pytest.mark.filterwarnings("ignore:invalid value:RuntimeWarning")  # a leak without end
@pytest.mark.parametrize(("wind", "fan"), [(-30.0, 0.0), (0.0, np.inf)])
def test_in_a_room_as_open_as_outdoors_no_fan_tips_a_fire_that_draws(wind, fan):
    """And one that the wind presses down bears none."""
    way, lit, air = reference(np.array([8.0]))
    air = replace(air, leak=np.array([np.inf]), wind=wind)
    assert spill(settle(way, lit, air), way, lit, air).tipping_fan == fan
