"""What must hold of heat in any wall: nothing is hotter than the fire, nothing is lost, a mirrored
wall is the same wall, more fire is hotter, more wall and more air are cooler.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from test_heat_cases import BRICK, FRAMING, HELD, LINING, bar, walled

from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.conduction.driving import always
from fireplace_calc.heat.conduction.grading import COARSE, Cells
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import Film, Gap, HeatMesh, Room, Solid
from fireplace_calc.heat.cuts.behind import burn, three_fires
from fireplace_calc.heat.cuts.spells import Spells
from fireplace_calc.heat.cuts.wall_plan import plan_mesh

ROUGH = Cells(0.03, 1.8, 0.15)

plans = st.builds(
    walled,
    depth=st.floats(12 * INCH, 28 * INCH),
    half=st.floats(26 * INCH, 40 * INCH),
    slope=st.floats(0.1, 0.45),
    film=st.sampled_from([25.0, 60.0, HELD]),
    back_gap=st.sampled_from([0.0, INCH, 4 * INCH]),
    side_gap=st.sampled_from([0.0, INCH, 4 * INCH]),
    air=st.sampled_from([0.0, 5.0, 20.0]),
    framing=st.sampled_from([FRAMING, replace(FRAMING, solid=True), None]),
    deep=st.floats(34 * INCH, 46 * INCH),
)


@settings(max_examples=25, deadline=None)
@given(plans, st.floats(100.0, 525.0), st.floats(5.0, 30.0))
def test_nothing_is_hotter_than_the_fire_or_colder_than_the_room(plan, fire, room):
    solved = Conduction(plan_mesh(plan, ROUGH))
    run = solved.run(always({"fire": fire, "room": room}), 8 * 3600.0, 2400.0, room)
    assert run.points.min() > room - 0.05
    assert run.points.max() < fire + 0.05


@settings(max_examples=25, deadline=None)
@given(plans, st.floats(100.0, 525.0))
def test_what_goes_in_comes_out_again(plan, fire):
    solved, drives = Conduction(plan_mesh(plan, ROUGH)), {"fire": fire, "room": 20.0}
    flow = solved.flow(solved.steady(drives), drives)
    assert abs(sum(flow.values())) < 1e-3 * flow["room"]


@settings(max_examples=10, deadline=None)
@given(plans, st.floats(100.0, 525.0))
def test_what_goes_in_is_kept_or_comes_out(plan, fire):
    solved, drives = Conduction(plan_mesh(plan, ROUGH)), {"fire": fire, "room": 20.0}
    run = solved.run(always(drives), 3600.0, 30.0, 20.0)
    kept = solved.mesh.capacity @ (run.points[-1] - run.points[20])
    gone = np.array([sum(solved.flow(points, drives).values()) for points in run.points[20:]])
    assert kept == pytest.approx(-np.trapezoid(gone, run.times[20:]), rel=0.02)


FED = walled(
    depth=0.5,
    half=0.8,
    slope=0.25,
    film=25.0,
    back_gap=4 * INCH,
    side_gap=4 * INCH,
    air=20.0,
    framing=FRAMING,
    deep=1.0,
)
SIDE = walled(
    depth=0.5,
    half=1.0,
    slope=0.25,
    film=25.0,
    back_gap=INCH,
    side_gap=4 * INCH,
    air=20.0,
    framing=replace(FRAMING, solid=True),
    deep=1.0,
)


@settings(max_examples=10, deadline=None)
@example(FED, 5.0, 2400.0, 11.0)
@example(SIDE, 5.0, 1200.0, 13.0)
@given(plans, st.floats(5.0, 30.0), st.sampled_from([1200.0, 2400.0]), st.floats(0.0, 30.0))
def test_a_fire_that_is_out_cools_where_the_air_just_begins_to_turn(plan, room, step, colder):
    """A gap fed by room air passes from still to turning air: corrections swing to and fro there."""
    solved = Conduction(plan_mesh(plan, ROUGH))
    hot = solved.run(always({"fire": 400.0, "room": room}), 8 * 3600.0, step, room).points[-1]
    solved.film("fire", 2.0)
    drives = {"fire": room + 5.0, "room": room - colder}
    run = solved.run(always(drives), 8 * 3600.0, step, hot)
    assert run.points.min() > room - colder - 0.05
    assert run.points.max() < hot.max() + 0.05


def hottest(plan, face=400.0, **fire):
    given_fire = replace(wall_fires()["middle"], face=face, **fire)
    return burn(plan, given_fire, 8.0, cells=ROUGH).highest


@settings(max_examples=12, deadline=None)
@given(plans.filter(lambda plan: plan.framing is not None))
def test_more_fire_is_hotter_more_air_is_cooler(plan):
    middle = hottest(plan)
    assert hottest(plan, face=450.0) > middle
    if plan.back_gap and plan.side_gap:
        assert hottest(replace(plan, air=plan.air + 5.0)) < middle + 0.05


@settings(max_examples=8, deadline=None)
@given(st.floats(28.5 * INCH, 36 * INCH), st.floats(INCH, 8 * INCH))
def test_more_masonry_is_cooler(deep, more):
    assert hottest(walled(deep=deep + more)) < hottest(walled(deep=deep))


def test_a_week_of_evenings_is_hotter_than_one_and_cooler_than_a_fire_all_week():
    fire = replace(wall_fires()["middle"], film=None, face=300.0)
    one, week = (burn(walled(), fire, 4.0, cells=ROUGH, days=days) for days in (1, 7))
    assert week.out == pytest.approx(6 * 24 + 4)
    assert one.highest < week.highest
    assert week.highest < burn(walled(), fire, 148.0, cells=ROUGH).highest
    daily = [week.wood[(week.times >= 24 * d) & (week.times < 24 * d + 24)].max() for d in range(7)]
    assert daily == sorted(daily)
    assert daily[-1] - daily[-2] < daily[1] - daily[0]  # it settles


@pytest.mark.parametrize("flipped", [False, True])
def test_a_wall_read_from_the_other_end_is_the_same(flipped):
    layers = [LINING, Gap(0, 0.84, 5.0), BRICK]
    thick, cells = [0.1143, 0.05, 0.1016], [8, 1, 8]
    edges = {"left": Film("fire", 60.0), "right": Room("room")}
    if flipped:
        layers, thick, cells = layers[::-1], thick[::-1], cells[::-1]
        edges = {"left": edges["right"], "right": edges["left"]}
    solved = Conduction(bar(layers, thick, cells, edges))
    run = solved.run(always({"fire": 400.0, "room": 21.0}), 8 * 3600.0, 1200.0)
    straight = Conduction(
        bar(
            [LINING, Gap(0, 0.84, 5.0), BRICK],
            [0.1143, 0.05, 0.1016],
            [8, 1, 8],
            {"left": Film("fire", 60.0), "right": Room("room")},
        )
    )
    other = straight.run(always({"fire": 400.0, "room": 21.0}), 8 * 3600.0, 1200.0)
    assert np.sort(run.points[-1]) == pytest.approx(np.sort(other.points[-1]), abs=0.02)


def test_a_square_is_as_warm_along_as_across():
    edges = np.linspace(0.0, 0.3, 13)
    mesh = HeatMesh(
        edges,
        edges,
        [Solid(1.0, 2e6)],
        np.zeros((12, 12), int),
        {
            "left": Film("fire", 40.0),
            "bottom": Film("fire", 40.0),
            "right": Room("room"),
            "top": Room("room"),
        },
    )
    found = Conduction(mesh).run(always({"fire": 400.0, "room": 21.0}), 7200.0, 300.0).points[-1]
    field = found[: mesh.cells].reshape(12, 12)
    assert field == pytest.approx(field.T, abs=1e-6)


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"opening.width": "18 in"},
        {"opening.width": "8 ft"},
        {"clearance.back": "0 in", "clearance.side": "0 in"},
        {"clearance.back": "48 in", "clearance.side": "48 in"},
        {"chimney.location": "exterior"},
    ],
    ids=str,
)
def test_a_design_is_worked_until_its_wood_is_past_its_hottest(design, changes):
    runs = [*three_fires(build_geometry(change(design, changes)), 8.0, COARSE)]
    assert [run.fire.key for run in runs] == ["kind", "middle", "hard"]
    assert all(run.passed for run in runs)
    assert [run.highest for run in runs] == sorted(run.highest for run in runs)
    assert all(run.framed for run in runs) == (changes != {"chimney.location": "exterior"})


@pytest.fixture(scope="module")
def design():
    from fireplace_calc.design.records import Design

    return Design()


def test_slopes_are_those_of_the_flows():
    """Against small differences of the flows themselves, where faces differ by 30 K and more."""
    solved = Conduction(plan_mesh(walled(), ROUGH))
    bends, drives = solved.bends, {"room": 10.0}
    gaps = bends.gaps
    points = np.random.default_rng(1).uniform(60.0, 300.0, solved.mesh.points)
    hot, cold, away = bends.slopes(points, drives)

    def moved(faces):
        up = points.copy()
        up[faces] += 0.01
        return (bends.flows(up, drives)[0] - bends.flows(points, drives)[0]) / 0.01

    apart = np.abs(points[bends.node[gaps]] - points[bends.other[gaps]]) > 30.0
    assert apart.sum() > 20
    rooms = slice(gaps.stop, None)
    assert moved(bends.node)[rooms] == pytest.approx(hot[rooms], rel=1e-3)
    assert moved(bends.node)[gaps][apart] == pytest.approx(hot[gaps][apart], rel=1e-3)
    assert -moved(bends.other[gaps])[gaps][apart] == pytest.approx(cold[gaps][apart], rel=1e-3)
    assert not away.any()  # nothing is fed


def test_a_fire_that_is_lit_at_once_heats_nothing_over_itself():
    """A face held at 500 C from one moment to the next, unless something else is asked for."""
    lit = Spells(plan_mesh(replace(FED, film=HELD), ROUGH), 20.0, ROUGH)
    lit.go({"fire": 500.0, "room": 20.0}, {}, 2.0, 2400.0)
    assert lit.last.max() <= 500.05
