"""Stations against figures read once from the same index's newest records; the figures stand here,
the index in its library.
"""

import subprocess
import sys

import pytest

from fireplace_calc import change
from fireplace_calc.base.places import find, nearest, site
from fireplace_calc.design.records import Design

SAMPLE = [  # idfkit 1.1.1: WMO number, latitude, longitude, height [m], 99 % heating temperature [C]
    ("725090", 42.361, -71.01, 4.0, -10.2),
    ("726060", 43.65, -70.31667, 14.0, -14.5),
    ("725180", 42.747, -73.799, 89.0, -14.8),
    ("726580", 44.883, -93.229, 255.0, -20.6),
    ("727640", 46.783, -100.757, 503.0, -23.7),
    ("725650", 39.833, -104.658, 1650.0, -14.2),
    ("727930", 47.444, -122.314, 137.0, -1.0),
    ("722190", 33.63, -84.442, 308.0, -2.7),
    ("723170", 36.097, -79.943, 277.0, -5.0),
    ("702610", 64.804, -147.876, 132.0, -38.1),
    ("037760", 51.148, -0.19, 62.0, -2.5),
    ("030910", 57.205, -2.2053, 66.0, -2.4),
]


@pytest.mark.parametrize(("wmo", "latitude", "longitude", "height", "winter"), SAMPLE)
def test_a_station_is_the_indexs_own(wmo, latitude, longitude, height, winter):
    """By position and by name; the newest record's temperature may have moved by half a degree
    since the sample was read.
    """
    there = next(p for p in nearest(latitude, longitude, limit=5) if p.wmo == wmo)
    assert there.altitude == pytest.approx(height, abs=0.5)
    assert there.winter - 273.15 == pytest.approx(winter, abs=0.6)
    assert any(p.wmo == wmo for p in find(there.name, limit=10)), there.name


def test_one_place_a_station():
    """The index has some four records each, by range of years."""
    found = find(nearest(42.361, -71.01, limit=1)[0].name, limit=10)
    assert len({(p.country, p.wmo, p.name) for p in found}) == len(found)


def test_nothing_found_is_nothing():
    assert find("   ") == () and find("qqxxzzvv nowhere at all") == ()


def test_a_design_can_be_set_there():
    place = nearest(39.833, -104.658, limit=1)[0]
    moved = change(Design(), site(place))
    assert moved.site.altitude == pytest.approx(
        place.altitude, abs=0.1
    ) and moved.site.winter == pytest.approx(place.winter, abs=0.01)
    assert place.name in moved.site.place


def test_the_index_sleeps_until_it_is_asked():
    run = subprocess.run(
        [
            sys.executable,
            "-c",
            (
                "import sys, fireplace_calc, fireplace_calc.base.places; print('idfkit' in"
                " sys.modules)"
            ),
        ],
        capture_output=True,
        text=True,
        check=True,
    )
    assert run.stdout.strip() == "False"
