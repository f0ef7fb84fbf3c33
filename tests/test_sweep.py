"""A sweep tells what the plain functions tell, wherever it is worked out, and finds it again by its
labels.
"""

import subprocess
import sys
import tracemalloc
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import xarray as xr

from fireplace_calc import change, load
from fireplace_calc.base.places import Place, inside
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_result, fire, settle, spill, surroundings
from fireplace_calc.draft.cases import CASES, EMBERS
from fireplace_calc.draft.flow_path import trace_flow_path
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.draft.physics.weather import BREEZE
from fireplace_calc.explore import grid, sketch, station_label, stations, sweep
from fireplace_calc.geometry.builder import build_geometry

BOATHOUSE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml")
CATALOGUE = {
    "boathouse": BOATHOUSE,
    "plain": Design(),
    "tall": change(Design(), {"flue.sections": 30, "chimney.location": "exterior"}),
    "airtight": change(
        BOATHOUSE, {"house.air_inlet": "0 in2", "house.leakage": "0.5", "house.exhaust": "2000 L/s"}
    ),
}
PLACES = [
    Place(*row)
    for row in (  # invented
        ("Upper Lake", "XXX", "ON", "000001", 45.0, -75.0, 230.0, 250.15),
        ("Low Meadow", "XXX", "", "000002", 44.0, -76.0, -20.0, 268.35),
        ("High Saddle", "YYY", "AA", "000003", 46.5, 7.5, 2310.0, 243.65),
    )
]
MILD = 282.15
FIELDS = {
    "flow": "mass",
    "air": "air",
    "face_velocity": "face",
    "flue_velocity": "speed",
    "throat_temperature": "foot",
    "top_temperature": "top",
    "draft": "draft",
    "pull": "pull",
    "stalled": "stalled",
}
SHARES = {"margin": ("margin", 1.0), "margin_percent": ("share", 100.0), "smokes": ("smokes", 1.0)}


@pytest.fixture(scope="module")
def country():
    return sweep(CATALOGUE, stations(PLACES, mild=MILD))


def own(name: str, place: Place, mild: float = MILD):
    """The design's own draft result, standing there."""
    put = {
        "site.altitude": f"{place.altitude!r} m",
        "site.winter": f"{place.winter!r} K",
        "site.mild": f"{mild!r} K",
    }
    return draft_result(build_geometry(change(CATALOGUE[name], put)))


@pytest.mark.parametrize("name", CATALOGUE)
@pytest.mark.parametrize("place", PLACES, ids=lambda p: p.name)
def test_a_label_finds_the_designs_own_result(country, name, place):
    """Every figure to the last bit, although worked out among others."""
    found = own(name, place)
    for evening in ("winter", "mild"):
        here, k = (
            country.sel(design=name, station=station_label(place), evening=evening),
            CASES.index(evening),
        )
        for variable, field in FIELDS.items():
            assert here[variable].item() == getattr(found.flows, field)[k], variable
        for variable, (field, factor) in SHARES.items():
            assert here[variable].item() == getattr(found.spills, field)[k] * factor, variable
        assert (
            here.outdoor.item() == (place.winter if evening == "winter" else MILD)
            and here.altitude.item() == place.altitude
        )
    assert country.sizing_face_velocity.sel(design=name).item() == found.sizing_velocity


def test_the_numbers_are_those_of_plain_floats(country):
    """``settle`` and ``spill`` with one float for each input; power and logarithm of a float may
    differ in the last bit.
    """
    for name, design in CATALOGUE.items():
        way, one, still = trace_flow_path(sketch(design)), fire(design), surroundings(design)
        for place in PLACES:
            there = replace(
                still, outdoor=place.winter, pressure=float(pressure_at(place.altitude))
            )
            flow = settle(way, one, there)
            said, here = (
                spill(flow, way, one, there),
                country.sel(design=name, station=station_label(place), evening="winter"),
            )
            for variable, field in FIELDS.items():
                assert here[variable].item() == pytest.approx(
                    float(getattr(flow, field)), rel=1e-12
                ), variable
            for variable, (field, factor) in SHARES.items():
                assert here[variable].item() == pytest.approx(
                    float(getattr(said, field)) * factor, rel=1e-11
                ), variable


@pytest.mark.whole
def test_a_cluster_gives_the_same_to_the_last_bit(monkeypatch):
    """Two workers in processes of their own; parcels small enough that there are many, and cut
    across designs and stations.
    """
    from distributed import Client, LocalCluster

    monkeypatch.setattr(sys.modules["fireplace_calc.explore.weather_sweep"], "TASK", 8)
    rates = np.array([1.0, 3.5, 5.0]) / 3600
    weathers = stations(PLACES, mild=MILD)
    alone = [sweep(CATALOGUE, weathers), sweep(CATALOGUE, weathers, burn_rate=rates)]
    with (
        LocalCluster(
            n_workers=2,
            threads_per_worker=1,
            processes=True,
            dashboard_address=None,
            host="127.0.0.1",
        ) as cluster,
        Client(cluster) as client,
    ):
        client.wait_for_workers(2)
        together = [
            sweep(CATALOGUE, weathers, client=client),
            sweep(CATALOGUE, weathers, burn_rate=rates, client=client),
        ]
        worked = client.run(lambda: "fireplace_calc.explore.weather_sweep" in sys.modules)
        assert list(worked.values()) == [True, True], "both workers had their share"
    for one, other in zip(alone, together, strict=True):
        xr.testing.assert_identical(one, other)
        for variable in one.variables:
            assert one[variable].values.tobytes() == other[variable].values.tobytes(), variable


def test_the_parcels_do_not_matter(country, monkeypatch):
    for block, task in ((1, 1), (2, 5), (3, 1000)):
        monkeypatch.setattr(sys.modules["fireplace_calc.explore.weather_sweep"], "BLOCK", block)
        monkeypatch.setattr(sys.modules["fireplace_calc.explore.weather_sweep"], "TASK", task)
        xr.testing.assert_identical(country, sweep(CATALOGUE, stations(PLACES, mild=MILD)))


def test_burn_rates_are_a_dimension():
    """The design's own rate gives the design's own figures, embers those of the dying fire."""
    rates = [EMBERS, BOATHOUSE.fire.burn_rate]
    found = sweep(CATALOGUE, stations(PLACES, mild=MILD), burn_rate=rates)
    assert (
        found.flow.dims == ("design", "station", "evening", "burn_rate")
        and found.burn_rate.values.tolist() == rates
    )
    for place in PLACES:
        here = found.sel(design="boathouse", station=station_label(place), evening="mild")
        flows = own("boathouse", place).flows
        assert here.face_velocity.sel(burn_rate=rates[1]).item() == flows.face[CASES.index("mild")]
        assert here.face_velocity.sel(burn_rate=EMBERS).item() == pytest.approx(
            flows.face[CASES.index("dying down, mild")], rel=1e-12
        )


def test_wind_blows_over_each_designs_own_roof():
    weathers = stations(PLACES).assign(
        outdoor=("station", [MILD] * 3), wind=("station", [BREEZE] * 3)
    )
    low = change(Design(), {"flue.sections": 6})
    found = sweep({"plain": Design(), "low": low}, weathers)
    for k, place in enumerate(PLACES):
        put = {"site.altitude": f"{place.altitude!r} m", "site.mild": f"{MILD!r} K"}
        for name, design in (("plain", Design()), ("low", low)):
            flows = draft_result(build_geometry(change(design, put))).flows
            assert found.flow.sel(design=name)[k].item() == flows.mass[CASES.index("windy, mild")]
    assert found.wind.attrs["units"] == "m/s"


def test_a_grid_is_every_temperature_at_every_altitude():
    outdoor, altitude = [243.15, 263.15, 283.15], [0.0, 1500.0]
    found = sweep({"plain": Design()}, grid(outdoor, altitude))
    assert found.flow.dims == ("design", "outdoor", "altitude") and found.flow.shape == (1, 3, 2)
    way, one, still = trace_flow_path(sketch(Design())), fire(Design()), surroundings(Design())
    for t in outdoor:
        for z in altitude:
            there = replace(still, outdoor=np.array([t]), pressure=float(pressure_at(z)))
            assert found.flow.sel(outdoor=t, altitude=z).item() == settle(way, one, there).mass[0]
    assert (np.diff(found.flow[0, :, 0]) < 0).all(), "the colder, the more"


def test_weather_without_a_dimension_is_one_evening():
    found = sweep({"plain": Design()}, xr.Dataset({"outdoor": 263.15, "altitude": 100.0}))
    assert found.flow.dims == ("design",)
    assert found.flow.item() == sweep({"plain": Design()}, grid(263.15, 100.0)).flow.item()


def test_every_variable_says_unit_name_and_mode(country):
    for name, variable in country.data_vars.items():
        assert variable.attrs["units"] and len(variable.attrs["long_name"]) > 10, name
        assert variable.attrs["mode"] == ("sizing" if name.startswith("sizing") else "operating"), (
            name
        )
    assert {
        "flow",
        "face_velocity",
        "throat_temperature",
        "top_temperature",
        "draft",
        "margin",
        "margin_percent",
        "stalled",
    } <= set(country.data_vars)
    assert [country[name].attrs["units"] for name in ("outdoor", "altitude", "burn_rate")] == [
        "K",
        "m",
        "kg/s",
    ]
    assert country.sizing.startswith("sizing mode") and country.operating.startswith(
        "operating mode"
    )


def test_a_stalled_fire_is_marked_and_not_hidden(country):
    airtight, others = country.sel(design="airtight"), country.drop_sel(design="airtight")
    assert airtight.stalled.all() and airtight.smokes.all() and not others.stalled.any()
    assert (
        (airtight.flow == 0).all()
        and (airtight.face_velocity == 0).all()
        and (airtight.margin < 0).all()
    )
    assert country.stalled.dtype == bool
    for name, variable in country.data_vars.items():
        assert np.isfinite(variable.values).all(), name


@pytest.mark.parametrize(
    ("act", "words"),
    [
        (lambda: sweep({}, grid(263.15)), "Designs are an empty list"),
        (
            lambda: sweep([("a", Design()), ("b", Design()), ("a", BOATHOUSE)], grid(263.15)),
            "Designs hold a more than once",
        ),
        (lambda: stations([]), "Stations are an empty list"),
        (
            lambda: stations([PLACES[0], PLACES[1], PLACES[0]]),
            "Stations hold Upper Lake, ON, XXX 000001 more than once",
        ),
        (
            lambda: stations([replace(PLACES[0], winter=None)]),
            "No winter temperature is known for Upper Lake",
        ),
        (lambda: sweep(CATALOGUE, grid([])), "Labels of outdoor are an empty list"),
        (
            lambda: sweep(CATALOGUE, grid([263.15, 263.15])),
            "Labels of outdoor hold 263.15 more than once",
        ),
        (
            lambda: sweep(CATALOGUE, grid(-10.0)),
            "Outdoor temperature of a sweep is -10.0 in SI, but 213.15 to 308.15",
        ),
        (lambda: sweep(CATALOGUE, grid([263.15, np.nan])), "Outdoor temperature of a sweep is nan"),
        (lambda: sweep(CATALOGUE, grid(263.15, 9000.0)), "Altitude of a sweep is 9000.0"),
        (lambda: sweep(CATALOGUE, grid(263.15), burn_rate=[]), "Burn rates are an empty list"),
        (
            lambda: sweep(CATALOGUE, grid(263.15), burn_rate=3.5),
            "Burn rate of a sweep is 3.5 in SI",
        ),
        (
            lambda: sweep(CATALOGUE, stations(PLACES).rename(station="design")),
            "has a design, but that name is the sweep's own",
        ),
        (
            lambda: sweep(CATALOGUE, stations(PLACES).drop_vars("altitude")),
            "has no altitude, but outdoor in K and altitude in m",
        ),
    ],
)
def test_what_cannot_be_swept_is_said_in_a_sentence(act, words):
    with pytest.raises(InputError, match=words) as told:
        act()
    assert str(told.value).endswith(".")


def test_what_is_needed_on_the_way_does_not_grow():
    """Beside the result itself, a few blocks of numbers, however many evenings there are."""

    def beside(count: int) -> float:
        weathers = grid(np.linspace(243.15, 293.15, count))
        tracemalloc.start()
        found = sweep({"plain": Design()}, weathers)
        peak = tracemalloc.get_traced_memory()[1] - found.nbytes
        tracemalloc.stop()
        return peak / 1e6

    beside(10)
    assert beside(120_000) < beside(40_000) + 10.0 < 40.0


def test_a_whole_country_of_the_index_has_labels_that_differ():
    """Offline: a country with mountains, by a state, and one that does not exist."""
    alps = inside("CHE")
    found = sweep({"plain": Design()}, stations(alps))
    assert found.sizes["station"] == len(alps) > 50 and {p.country for p in alps} == {"CHE"}
    assert found.altitude.max() > 2000 and np.isfinite(found.flow.values).all()
    assert {p.state for p in inside("usa", "me")} == {"ME"} and inside("QQQ") == ()


@pytest.mark.whole
def test_xarray_and_dask_sleep_until_they_are_asked():
    asked = (
        "import sys, fireplace_calc, fireplace_calc.explore as e; print('xarray' in"
        " sys.modules);from fireplace_calc.design.records import Design; e.sweep({'plain':"
        " Design()}, e.grid(263.15)); print('distributed' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)
    assert run.stdout.split() == ["False", "False"]


@pytest.mark.parametrize("many", [1, 3])
def test_one_record_is_stacked_as_three_are(many):
    """A row to each record, numbers as a column of one."""
    from fireplace_calc.draft.cases import fire, stacked

    one = fire(BOATHOUSE)
    made = stacked([one] * many)
    for name in ("burn", "dry_share", "power", "to_gas", "air_needed"):
        found = getattr(made, name)
        assert found.shape == (many, 1) and set(found[:, 0]) == {float(getattr(one, name))}
