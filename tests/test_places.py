"""Stations against figures read once from the same index's newest records; the figures stand here,
the index in its library.
"""

import subprocess
import sys
from dataclasses import replace
from types import SimpleNamespace

import pytest
from sampled import sampled

from fireplace_calc import change
from fireplace_calc.base import places
from fireplace_calc.base.places import Place, find, inside, nearest, site, winter_means
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
NAMED = {SAMPLE[n][0] for n in (0, 4, 8)}


@pytest.mark.parametrize(("wmo", "latitude", "longitude", "height", "winter"), sampled(SAMPLE, 1))
def test_a_station_is_the_indexs_own(wmo, latitude, longitude, height, winter):
    """By position, some by name too, for which the index is gone through twice; the newest record's
    temperature may have moved by half a degree since the sample was read.
    """
    there = next(p for p in nearest(latitude, longitude, limit=5) if p.wmo == wmo)
    assert there.altitude == pytest.approx(height, abs=0.5)
    assert there.winter - 273.15 == pytest.approx(winter, abs=0.6)
    if wmo in NAMED:
        assert any(p.wmo == wmo for p in find(there.name, limit=10)), there.name


def test_one_place_a_station():
    """The index has some four records each, by range of years."""
    found = find(nearest(42.361, -71.01, limit=1)[0].name, limit=10)
    assert len({(p.country, p.wmo, p.name) for p in found}) == len(found)


def test_of_a_stations_records_the_full_one_is_taken_or_else_the_first():
    """Invented records."""

    def record(wmo, years, altitude):
        name = {"country": "XYZ", "state": "", "wmo": wmo, "city": f"Town.{wmo}"}
        where = {"latitude": 1.0, "longitude": 2.0, "elevation": altitude}
        return SimpleNamespace(**name, **where, heating_design_db_c=None, url=f"{wmo}_{years}.zip")

    listed = [
        *(record("1", "TMYx.2004-2018", 1.0), record("1", "TMYx", 2.0), record("1", "TMYx.2", 3.0)),
        *(record("2", "TMYx.2004-2018", 4.0), record("2", "TMYx.2007-2021", 5.0)),
    ]
    found = places._one_per_station(listed)
    assert [(place.name, place.altitude) for place in found] == [("Town 1", 2.0), ("Town 2", 4.0)]


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


def test_the_places_of_a_country_and_of_one_of_its_provinces():
    """Canada has some 900 stations in thirteen provinces and territories, whichever way it is
    written.
    """
    whole, part = inside("CAN"), inside("can", "on")
    assert 800 < len(whole) < 1100 and {p.country for p in whole} == {"CAN"}
    assert len({p.state for p in whole}) == 13
    assert 50 < len(part) < 250 and {p.state for p in part} == {"ON"} and set(part) <= set(whole)
    assert inside("XXX") == ()


def test_no_more_places_than_asked_for_nearest_first():
    near = nearest(43.65, -79.38, limit=3)
    off = [(p.latitude - 43.65) ** 2 + ((p.longitude + 79.38) * 0.7236) ** 2 for p in near]
    assert len(near) == 3 and off == sorted(off) and len(nearest(43.65, -79.38)) == 5
    found = find("toronto.city", limit=2)
    assert len(found) == 2 and "Toronto" in found[0].name and "." not in found[0].name


def test_a_place_as_changes_to_a_design():
    """A station that knows no winter leaves the design's own."""
    place = Place("Upper Lake", "XXX", "NN", "1", 45.0, -75.0, 230.04, 255.154)
    assert site(place) == {
        "site.place": "Upper Lake, NN", "site.latitude": "45.00 deg",
        "site.altitude": "230.0 m", "site.winter": "-18.00 degC",
    }  # fmt: skip
    assert "site.winter" not in site(replace(place, winter=None))


def test_means_of_a_winter_leave_the_other_months_out():
    hours = [
        (12, 260.0, 1.0),
        (1, 270.0, 2.0),
        (2, 280.0, 6.0),
        (3, 400.0, 90.0),
        (11, 400.0, 90.0),
    ]
    assert winter_means(hours) == pytest.approx((270.0, 3.0))
    assert winter_means([(7, 300.0, 1.0)]) is None and winter_means([]) is None
