"""Air, smoke and losses against reference libraries from the registry and against printed tables.
Nothing is tuned.
"""

import fluids
import numpy as np
import psychrolib
import pytest
from ht.conv_internal import turbulent_Gnielinski

from fireplace_calc.base.tables.draft import wood_analysis
from fireplace_calc.draft.flow_search import CP_SMOKE, R_SMOKE
from fireplace_calc.draft.physics import air, losses, walls, wood
from fireplace_calc.draft.physics.house_leaks import Leaks

TEMPERATURES = (250.0, 263.15, 278.15, 293.15, 323.15, 373.15, 473.15, 573.15, 673.15, 873.15)
OAK = wood_analysis("hardwood")


def PropsSI(*asked):
    """CoolProp's own; two seconds to import, so not where tests are only collected."""
    from CoolProp.CoolProp import PropsSI as coolprops

    return coolprops(*asked)


@pytest.mark.parametrize(
    ("kelvin", "pascal", "printed"), [(288.15, 101_325, 1.2250), (275.15, 79_501, 1.0066)]
)
def test_density_is_the_standard_atmosphere(kelvin, pascal, printed):
    """U.S. Standard Atmosphere, 1976, main table; half of its last digit."""
    assert air.air_density(kelvin, pascal) == pytest.approx(printed, abs=5e-5)


@pytest.mark.parametrize(
    ("formula", "letter", "within"),
    [
        (air.air_density, "D", 0.001),
        (air.heat_capacity, "C", 0.003),
        (air.air_viscosity, "V", 0.002),
        (air.air_conductivity, "L", 0.003),
    ],
)
def test_air_is_coolprops_air(formula, letter, within):
    """CoolProp, real air at one atmosphere."""
    for kelvin in (*TEMPERATURES, *range(250, 701, 10)):
        assert float(formula(kelvin)) == pytest.approx(
            PropsSI(letter, "T", kelvin, "P", 101_325, "Air"), rel=within
        ), kelvin


@pytest.mark.parametrize(
    ("gas", "fluid"),
    [("CO2", "CarbonDioxide"), ("H2O", "Water"), ("N2", "Nitrogen"), ("O2", "Oxygen")],
)
def test_heat_capacity_of_each_gas_is_coolprops(gas, fluid):
    """CoolProp, ideal-gas heat capacity per mole."""
    for kelvin in (300, 400, 500, 700, 900):
        assert float(air.heat_capacity(kelvin, gas)) == pytest.approx(
            PropsSI("CP0MOLAR", "T", kelvin, "P", 101_325, fluid), rel=0.002
        )


def test_pressure_is_the_standard_atmosphere():
    """fluids.ATMOSPHERE_1976; the geometric altitude taken for geopotential costs 0.04 % at 4500 m."""
    for altitude in (-300, 0, 500, 1500, 3000, 4500):
        assert air.pressure_at(altitude) == pytest.approx(
            fluids.ATMOSPHERE_1976(altitude).P, rel=5e-4
        )


@pytest.mark.parametrize(
    ("feet", "printed"),
    [(2000, 1.075), (4000, 1.158), (6000, 1.248), (8000, 1.346), (10000, 1.454)],
)
def test_altitude_factors(feet, printed):
    """Sea-level over local pressure, ICAO; the handbook prints 1.08, 1.16, 1.25, 1.34, 1.45
    (memory).
    """
    assert air.SEA_LEVEL / air.pressure_at(feet * 0.3048) == pytest.approx(printed, abs=6e-4)


def test_vapour_pressure_is_psychrolibs():
    psychrolib.SetUnitSystem(psychrolib.SI)
    for celsius in (1, 10, 20, 40, 60):
        assert air.saturation_pressure(273.15 + celsius) == pytest.approx(
            psychrolib.GetSatVapPres(celsius), rel=0.003
        )
    for ratio in (0.004, 0.006, 0.012):
        pressure = psychrolib.GetVapPresFromHumRatio(ratio, 101_325)
        assert air.dew_point(pressure) - 273.15 == pytest.approx(
            psychrolib.GetTDewPointFromVapPres(20.0, pressure), abs=0.1
        )


def test_friction_is_colebrooks():
    """fluids.friction_factor (Clamond's solution of Colebrook), from the first turbulent flow to
    past any flue, smooth to very rough.
    """
    for reynolds in np.geomspace(4e3, 3e5, 20):
        for roughness in (0.0, 1e-4, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05):
            assert float(losses.friction_factor(reynolds, roughness)) == pytest.approx(
                fluids.friction_factor(reynolds, roughness), rel=0.003
            )
    assert float(losses.friction_factor(500.0, 0.01)) == pytest.approx(0.128)


def test_heat_transfer_is_gnielinskis():
    """ht's Gnielinski with the friction factor of a rough wall, from fluids."""
    for reynolds in (4e3, 1e4, 2e4, 3e4, 1e5):
        for roughness in (0.0, 0.002, 0.005, 0.01, 0.02):
            for prandtl in (0.68, 0.7, 0.72):
                theirs = turbulent_Gnielinski(
                    reynolds, prandtl, fluids.friction_factor(reynolds, roughness)
                )
                assert float(walls.nusselt(reynolds, prandtl, roughness)) == pytest.approx(
                    theirs, rel=0.005
                )


def test_the_film_is_hts_with_coolprops_air():
    """Film coefficient of a flue, everything from libraries: Gnielinski in ht, friction in fluids,
    air in CoolProp.
    """
    for flow, side, roughness, kelvin in (
        (0.10, 0.20, 0.0015, 350.0),
        (0.25, 0.30, 0.0015, 400.0),
        (0.40, 0.45, 0.004, 320.0),
    ):
        mu, conductivity, cp = (
            PropsSI(letter, "T", kelvin, "P", 101_325, "Air") for letter in "VLC"
        )
        reynolds = flow / side**2 * side / mu
        number = turbulent_Gnielinski(
            reynolds, cp * mu / conductivity, fluids.friction_factor(reynolds, roughness / side)
        )
        assert float(walls.film(flow, side**2, side, roughness, kelvin)) == pytest.approx(
            number * conductivity / side, rel=0.01
        )


def test_contractions_lie_between_two_authors():
    """fluids' conical contractions by Rennels and by Idelchik; the tabled figures (memory) agree
    within 0.03 of a velocity head.
    """
    for ratio in (2.0, 4.0, 6.0):
        for degrees in (30, 60, 90):
            ours = float(losses.contraction_loss(ratio, 1.0, np.radians(degrees)))
            theirs = [
                fluids.contraction_conical(1.0, ratio**-0.5, fd=0.02, angle=degrees, method=name)
                for name in ("Rennels", "Idelchik")
            ]
            assert min(theirs) - 0.03 <= ours <= max(theirs) + 0.03, (ratio, degrees)
    assert float(losses.contraction_loss(0.5, 1.0, 1.0)) == 0.0
    assert losses.contraction_loss(
        np.array([1.0, 2.0, 20.0]), 1.0, np.pi / 2
    ).tolist() == pytest.approx([0.0, 0.12, 0.19])


def test_bends_are_mitred_ones():
    """fluids.bend_miter (Miller) stays within 0.04 of SMACNA's printed figures, which stand in the
    data.
    """
    for degrees, printed in ((20, 0.08), (30, 0.16), (45, 0.34), (60, 0.55), (75, 0.81), (90, 1.2)):
        assert float(losses.bend_loss(np.radians(degrees))) == pytest.approx(printed, abs=1e-9)
        assert printed == pytest.approx(fluids.bend_miter(degrees), abs=0.04)


def test_inlet_goes_through_the_three_published_values():
    """0.5 for a cone, 1.0 for a throat of twice the flue, 2.5 for one of its own area (handbook,
    memory).
    """
    assert losses.inlet_loss(1.0, np.array([1e9, 2.0, 1.0])).tolist() == pytest.approx(
        [0.5, 1.0, 2.5]
    )


def test_wood_is_the_published_wood():
    """Formulas 5.1 to 5.6: oak 20.11, 18.78 dry, 14.54 MJ/kg at 20 % wet basis; 5.97 kg of air;
    laboratory 8660 Btu/lb.
    """
    assert wood.higher_heating_value(OAK) / 1e6 == pytest.approx(20.11, abs=0.005)
    assert wood.lower_heating_value(OAK, 0.0) / 1e6 == pytest.approx(18.78, abs=0.006)
    assert wood.lower_heating_value(OAK, 0.20) / 1e6 == pytest.approx(14.54, abs=0.005)
    assert wood.stoichiometric_air(OAK) == pytest.approx(5.97, abs=0.005)
    assert wood.higher_heating_value(OAK) == pytest.approx(8660 * 2326, rel=0.03)
    assert 5.5 < wood.stoichiometric_air(wood_analysis("softwood")) < 7.0


SMOKE = [
    (1, 28.95, 1136, 17.6, 58, 58),
    (2, 28.91, 1090, 9.6, 45, 47),
    (5, 28.87, 1057, 4.1, 30, 33),
    (10, 28.86, 1045, 2.1, 18, 24),
    (15, 28.86, 1041, 1.4, 12, 20),
    (20, 28.86, 1039, 1.1, 8, 18),
]


@pytest.mark.parametrize(("ratio", "mass", "capacity", "water", "dew", "humid_dew"), SMOKE)
def test_smoke_is_the_tabled_smoke(ratio, mass, capacity, water, dew, humid_dew):
    """Flue gas of oak at 20 % water, computed with cantera and CoolProp for the draft figures; half
    a last digit, one for the molar mass (0.03 %) and two for the heat capacity (0.2 %).
    """
    gas = wood.smoke(OAK, 0.20, ratio)
    assert sum(gas.parts().values()) == pytest.approx(1.0, abs=1e-12)
    assert wood.smoke_molar_mass(gas) * 1000 == pytest.approx(mass, abs=0.011)
    assert wood.smoke_heat_capacity(gas, 473.15) == pytest.approx(capacity, abs=2.0)
    assert pytest.approx(water, abs=0.06) == gas.H2O * 100
    assert float(wood.smoke_dew_point(gas)) - 273.15 == pytest.approx(dew, abs=0.7)
    assert float(
        wood.smoke_dew_point(wood.smoke(OAK, 0.20, ratio, 0.006))
    ) - 273.15 == pytest.approx(humid_dew, abs=0.7)


def test_the_smoke_of_the_solver_is_this_smoke():
    """One molar mass and one heat capacity stand for all fires: an air ratio of 10 to 50 at 30 to
    200 C.
    """
    for ratio in (10, 20, 30, 50):
        for kelvin in (303.0, 350.0, 420.0, 473.0):
            gas = wood.smoke(OAK, 0.20, ratio, 0.006)
            assert pytest.approx(wood.smoke_heat_capacity(gas, kelvin), rel=0.025) == CP_SMOKE
            assert (
                pytest.approx(wood.smoke_molar_mass(gas), rel=0.005) == air.GAS_CONSTANT / R_SMOKE
            )


def test_wall_example():
    """Formula 6.8: 16 mm liner, 13 mm mortar, 102 mm brick: 0.143 m2K/W, 3.7 W/m2K outdoors with a
    film of 11.8. The 3.2 of the same line for an inside chimney is met only with a film of 11.8 on
    the outer side too, not with the printed 8.
    """
    wall = walls.wall_resistance([("clay liner", 0.016), ("mortar", 0.013), ("brick", 0.102)])
    assert wall == pytest.approx(0.143, abs=5e-4)
    assert walls.transmittance(11.8, wall, 23.0) == pytest.approx(3.7, abs=0.05)
    assert walls.transmittance(11.8, wall, 11.8) == pytest.approx(3.2, abs=0.05)


def test_cooling_along_the_flue_is_the_exponential():
    """The mean is the integral of the profile, here by ten thousand slices."""
    mean, top = walls.flue_temperatures(400.0, 280.0, 0.4)
    profile = 280.0 + 120.0 * np.exp(-0.4 * (np.arange(10_000) + 0.5) / 10_000)
    assert mean == pytest.approx(profile.mean(), abs=1e-6)
    assert top == pytest.approx(280.0 + 120.0 * np.exp(-0.4), abs=1e-9)


def test_a_house_of_which_nothing_is_told_stands_in_air_of_usual_weight():
    """Air of 20 degC at sea level: 101,325 Pa / (287.05 J/(kg K) x 293.15 K) = 1.204 kg/m3."""
    usual = Leaks(0.1, 0.65)
    assert usual.room == usual.outside == pytest.approx(101325 / (287.05 * 293.15), abs=0.005)
    assert (usual.bottom, usual.top, usual.inlet) == (0.0, 0.0, 0.0)
