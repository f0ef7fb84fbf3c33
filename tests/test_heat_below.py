"""Heat down through a hearth, and the first fires of a new fireplace."""

import csv

import pytest

from fireplace_calc import change, load
from fireplace_calc.assessment import assess
from fireplace_calc.base.resources import DATA, DESIGNS
from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.heat.cuts.below_hearth import hearth_layers, under_hearth
from fireplace_calc.heat.cuts.from_geometry import solid
from fireplace_calc.heat.cuts.layers import HeatLayer
from fireplace_calc.report.heat.first_warmings import warmings_of

PLAIN = load(DESIGNS / "plain.toml")


def hottest(design, fire="hard", hours=8.0):
    layers = hearth_layers(assess(design).geometry)
    return max(under_hearth(layers, wall_fires()[fire], hours).wood)


def test_more_slab_less_fire_and_fewer_hours_are_cooler():
    thick = change(PLAIN, {"base.slab": "8 in"})
    assert hottest(thick) < hottest(PLAIN) - 10
    assert hottest(PLAIN, "kind") < hottest(PLAIN, "middle") < hottest(PLAIN, "hard")
    assert hottest(PLAIN, "hard", 4.0) < hottest(PLAIN) < wall_fires()["hard"].face


def test_a_very_thick_hearth_stays_as_it_was():
    """A half-space held at a temperature (Carslaw and Jaeger, 2.4): erfc(1 / 2 sqrt(a t)) a meter
    down after two hours is under 1e-20, and the embers of the night bring no half a kelvin."""
    deep = [HeatLayer("slab", 2.0, solid("brick"))]
    assert max(under_hearth(deep, wall_fires()["hard"], 2.0).wood) == pytest.approx(21.0, abs=0.5)


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_layers_fill_hearth_and_slab(name):
    f = assess(load(DESIGNS / f"{name}.toml")).geometry.frame
    layers = hearth_layers(assess(load(DESIGNS / f"{name}.toml")).geometry)
    assert sum(layer.thick for layer in layers) == pytest.approx(f.hearth - f.slab_bottom, abs=1e-6)


def test_the_first_fires_grow_the_lining_as_the_table_says():
    """``a L (T - T0)`` with the row's own figure; a share of a full fire is that share of its rise."""
    with open(DATA / "heat_growth.csv", newline="", encoding="utf-8") as file:
        row = next(row for row in csv.DictReader(file) if row["name"] == "fireclay growth")
    per = float(row["value"]) * 1e-6
    geometry = assess(PLAIN).geometry
    f, room = geometry.frame, PLAIN.house.indoor - 273.15
    long, full = max(f.back_width, f.throat - f.hearth), wall_fires()["hard"].face
    found = warmings_of(geometry)
    assert [one.number for one in found] == [1, 2, 3, 4, 5]
    for one in found:
        rise = one.share * (full - room)
        assert one.face == pytest.approx(room + rise)
        assert one.growth == pytest.approx(per * long * rise, rel=1e-3)
    assert found[-1].face == pytest.approx(full) and found[0].reason.startswith("under boiling")
