"""Heat beside a flue, from an opening, in a lining that grows, and for the room."""

from math import atan, pi, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc.base.tables.heat import flue_fires, wall_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import Film, HeatMesh, NotWorked, Solid
from fireplace_calc.heat.cuts.layers import HeatLayer, at_edge, layer_mesh
from fireplace_calc.heat.cuts.round_flue import (
    all_flue_fires,
    beside_flue,
    flue_layers,
    girth_radius,
)
from fireplace_calc.heat.for_the_room import room_heat
from fireplace_calc.heat.from_opening import ShiningOpening, distance_for, flux, view_factor
from fireplace_calc.heat.movement import gap_for, grown, through_stress

OPENING = ShiningOpening(36 * INCH, 30 * INCH, 24 * INCH, 10 * INCH)


def across(a, b, c):
    """View factor of equal rectangles a by b, c apart: Hottel's closed form, any text (memory)."""
    x, y = a / c, b / c
    return (
        2
        / (pi * x * y)
        * (
            np.log(sqrt((1 + x**2) * (1 + y**2) / (1 + x**2 + y**2)))
            + x * sqrt(1 + y**2) * atan(x / sqrt(1 + y**2))
            + y * sqrt(1 + x**2) * atan(y / sqrt(1 + x**2))
            - x * atan(x)
            - y * atan(y)
        )
    )


def to_corner(a, b, c):
    """From a small face to a rectangle a by b parallel to it, c away, over its corner (memory)."""
    x, y = a / c, b / c
    return (
        x / sqrt(1 + x**2) * atan(y / sqrt(1 + x**2))
        + y / sqrt(1 + y**2) * atan(x / sqrt(1 + y**2))
    ) / (2 * pi)


def square_to_corner(a, b, c):
    """Likewise to a rectangle square to it: b up from the foot of its plane, c away (memory)."""
    y, x = c / a, b / a
    across = sqrt(x**2 + y**2)
    return (atan(1 / y) - y / across * atan(1 / across)) / (2 * pi)


@pytest.mark.parametrize("out", [0.5, 1.0, 2.0])
def test_a_face_before_the_middle_sees_four_corners(out):
    found = view_factor((0, out, 0.4), (0, -1, 0), 1.0, 0.8, dots=200)
    assert found == pytest.approx(4 * to_corner(0.5, 0.4, out), rel=1e-3)


@pytest.mark.parametrize("out", [0.3, 1.0])
def test_a_floor_sees_the_opening_from_below(out):
    found = view_factor((0, out, 0.0), (0, 0, 1), 1.0, 0.8, dots=200)
    assert found == pytest.approx(2 * square_to_corner(0.5, 0.8, out), rel=2e-3)


def test_faces_that_look_at_each_other_agree_with_the_closed_form():
    xs = (np.arange(20) + 0.5) / 20 - 0.5
    mean = np.mean(
        [view_factor((x, 0.7, z + 0.5), (0, -1, 0), 1.0, 1.0, 20) for x in xs for z in xs]
    )
    assert mean == pytest.approx(across(1.0, 1.0, 0.7), rel=2e-3)


def test_what_lies_in_the_plane_of_the_opening_sees_nothing_of_it():
    assert view_factor((0, 0.0, 1.0), (0, 1, 0), 1.0, 0.8) == 0


@pytest.mark.parametrize("key", ["kind", "middle", "hard"])
def test_further_off_is_cooler(key):
    fire = wall_fires()[key]
    fluxes = [flux(OPENING, (0, out, 0.4), (0, -1, 0), fire) for out in (0.2, 0.5, 1.0, 2.0)]
    assert fluxes == sorted(fluxes, reverse=True)


def test_how_far_off_the_least_flux_is():
    fire = wall_fires()["hard"]
    out = distance_for(OPENING, fire)
    assert flux(OPENING, (0, out, OPENING.high / 2), (0, -1, 0), fire) <= 4300
    assert flux(OPENING, (0, out - 0.02, OPENING.high / 2), (0, -1, 0), fire) > 4300
    assert distance_for(OPENING, fire, least=1e9) == 0.0
    assert distance_for(OPENING, fire, least=0.0) is None


@pytest.fixture(scope="module")
def flue():
    geometry = build_geometry(Design())
    return flue_layers(geometry), girth_radius(geometry)


def test_a_hotter_flue_is_a_hotter_rafter(flue):
    hottest = [beside_flue(*flue, fire).highest for fire in flue_fires().values()][:3]
    assert hottest == sorted(hottest)
    assert hottest[0] > 21.0


def test_a_soot_fire_goes_on_heating_after_it_is_out(flue):
    found = beside_flue(*flue, flue_fires()["soot"])
    assert found.out == pytest.approx(4.5)
    assert found.hours_after > 2
    assert found.highest > found.at_fire_out + 10


def test_without_its_gap_the_liner_gives_more_to_the_wood(flue):
    layers, radius = flue
    fire = flue_fires()["usual"]
    tight = [layer for layer in layers if layer.name != "gap"]
    assert len(tight) < len(layers)
    assert beside_flue(tight, radius, fire).highest > beside_flue(layers, radius, fire).highest


def test_wood_that_touches_the_chimney_is_worked_too_and_is_hotter():
    touching, apart = (
        beside_flue(flue_layers(geometry), girth_radius(geometry), flue_fires()["hard"])
        for air in ("0 in", "2 in")
        for geometry in [build_geometry(change(Design(), {"clearance.chimney": air}))]
    )
    assert touching.highest > apart.highest > 21.0


def test_a_face_between_two_cells_is_as_their_conductances_have_it():
    """Steady: the same heat through 1/10 m of 1 W/mK and of 1/2 W/mK, 100 C to 0 C: a third of the
    fall in the first, so 66.7 C where they touch.
    """
    layers = [HeatLayer("one", 0.1, Solid(1.0, 1e3)), HeatLayer("other", 0.1, Solid(0.5, 1e3))]
    mesh = layer_mesh(layers, Film("fire"), "room", 0.01)
    mesh = HeatMesh(
        mesh.x, mesh.y, mesh.stuff, mesh.which, {"left": Film("fire"), "right": Film("room")}
    )
    points = Conduction(mesh).steady({"fire": 100.0, "room": 0.0})[None]
    assert at_edge(mesh, points, 0.1) == pytest.approx([200 / 3])
    assert at_edge(mesh, points, 0.0) == pytest.approx([100.0])
    assert at_edge(mesh, points, 0.2) == pytest.approx([0.0], abs=1e-6)


def test_every_fire_is_run():
    assert [run.fire.key for run in all_flue_fires(build_geometry(Design()))] == [*flue_fires()]


def test_air_nobody_told_is_not_guessed():
    geometry = build_geometry(change(Design(), {"clearance.chimney": "unknown"}))
    with pytest.raises(NotWorked, match="chimney"):
        flue_layers(geometry)


def test_a_meter_of_fireclay_grows_as_the_table_has_it():
    """5 to 7 mm to 1000 C: foundry lexicon, as read."""
    assert 0.005 <= grown(1.0, 1000.0) <= 0.007


@given(st.floats(0.1, 2.0), st.floats(100.0, 900.0), st.floats(20.0, 90.0))
def test_the_gap_is_what_one_grows_more_than_the_other(long, hot, cool):
    assert gap_for(long, hot, cool) == pytest.approx(
        max(grown(long, hot) - grown(long, cool, which="brick growth"), 0.0)
    )
    assert gap_for(long, 20.0, 20.0) == 0.0


def test_stress_goes_with_the_difference():
    low, middle, high = through_stress(100.0)
    assert 0 < low < middle < high
    assert through_stress(200.0)[1] == pytest.approx(2 * middle)


@given(st.floats(1e3, 3e4), st.floats(0.2, 0.6), st.floats(0.0, 0.3), st.floats(-20.0, 19.0))
def test_what_the_room_gets_less_what_it_loses(burning, kept, air, outdoors):
    heat = room_heat(burning, kept, air, 20.0, outdoors)
    assert heat.net == pytest.approx(burning * kept - air * 1006.0 * (20.0 - outdoors))
    assert room_heat(burning, kept, air, 20.0, outdoors - 5).net <= heat.net
    assert room_heat(burning, kept, air, 20.0, outdoors, air).net == pytest.approx(burning * kept)
