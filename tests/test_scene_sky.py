"""The sun over the room, against pvlib's own formulas and its almanac."""

from math import asin, atan2, degrees, pi, radians

import numpy as np
import pandas as pd
import pytest
from pvlib import atmosphere, solarposition

from fireplace_calc import change
from fireplace_calc.design.records import Design
from fireplace_calc.scene.sky import (
    DAYS,
    air_mass,
    beam,
    declination,
    sun_stands,
    sun_table,
)

LATITUDES = (-55, -33, 0, 23, 45, 60, 70)


def table(**site):
    made = sun_table(change(Design(), {f"site.{k}": v for k, v in site.items()}))
    return made, np.frombuffer(made["ways"], "<f4").reshape(12, 49, 4)


def test_the_declination_is_pvlibs():
    days = np.arange(1, 366)
    ours = [declination(day) for day in days]
    assert np.abs(ours - solarposition.declination_spencer71(days)).max() < 1e-6


@pytest.mark.parametrize("latitude", LATITUDES)
def test_the_sun_stands_where_the_almanac_has_it(latitude):
    """Against the solar position algorithm of NREL at longitude 0, in sundial time: its own
    equation of time is taken off. At an equinox the sun climbs 0.4 degrees a day, and the series
    counts whole days of a mean year.
    """
    for month in range(12):
        for hour in (6.0, 9.5, 12.0, 15.25, 19.0):
            day = pd.Timestamp(2026, month + 1, 21, tz="UTC")
            assert day.day_of_year == DAYS[month]
            clock = day + pd.Timedelta(hours=hour)
            equation = solarposition.get_solarposition(clock, latitude, 0)["equation_of_time"]
            almanac = solarposition.get_solarposition(
                clock - pd.Timedelta(minutes=float(equation.iloc[0])), latitude, 0
            ).iloc[0]
            east, north, up = sun_stands(radians(latitude), DAYS[month], hour)
            assert degrees(asin(up)) == pytest.approx(almanac["elevation"], abs=0.6)
            if abs(almanac["elevation"]) < 80:
                round_ = (degrees(atan2(east, north)) - almanac["azimuth"] + 180) % 360 - 180
                assert abs(round_) < 0.8
            assert east**2 + north**2 + up**2 == pytest.approx(1)


def test_air_and_strength():
    """Kasten and Young by pvlib; Meinel at a sun overhead and at 30 degrees: 1353 x 0.7 and
    1353 x 0.7^(2^0.678), by hand.
    """
    for altitude in (90, 45, 20, 5, 1):
        wanted = atmosphere.get_relative_airmass(90 - altitude, "kastenyoung1989")
        assert air_mass(radians(altitude)) == pytest.approx(float(wanted), rel=1e-6)
    assert beam(pi / 2) == pytest.approx(1353 * 0.7, rel=1e-3)
    assert beam(radians(30)) == pytest.approx(763, abs=3)
    assert beam(radians(-1)) == 0 == beam(0.0)


def test_an_unknown_latitude_is_45_degrees_and_says_so():
    unknown, ways = table()
    told, same = table(latitude="45 deg")
    assert unknown["latitude"] == 45 and not unknown["told"] and told["told"]
    assert (ways == same).all()


@pytest.mark.parametrize("latitude", ["52 deg", "-41 deg", "3 deg"])
def test_the_light_called_day_comes_in_by_the_window_past_the_viewer(latitude):
    made, ways = table(latitude=latitude)
    x, y, up, strong = ways[made["month"], int(made["hour"] * 2)]
    assert x < 0 < up and y < 0 and strong > 0.3


def test_noon_is_in_the_window_winter_lower_than_summer():
    _, ways = table(latitude="50 deg")
    noon = ways[:, 24]
    assert (noon[:, 0] < 0).all() and np.abs(noon[:, 1]).max() < 1e-6
    assert noon[11, 2] < noon[2, 2] < noon[5, 2]
    assert (ways[:, 0, 3] == 0).all()
