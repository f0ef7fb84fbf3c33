"""What must hold of the heat of any design that can be built, laid or set of pieces: nothing hotter
than the fire or colder than its surroundings, nothing lost, a mirrored or turned plan the same, more
fire hotter, more wall and more air cooler. Many by hand: ``EXAMPLES=50``.
"""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st
from sampled import sampled
from set_strategies import random_set
from strategies import designs
from test_courses import designed

from fireplace_calc import load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.heat import flue_fires, wall_fires
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.heat.answer import heat_answer
from fireplace_calc.heat.conduction.driving import always
from fireplace_calc.heat.conduction.grading import COARSE, FINE, Cells
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import HELD, Film, Gap, HeatMesh, NotWorked, Solid
from fireplace_calc.heat.cuts.behind import EMBERS, EMBERS_FILM, HottestWood, burn
from fireplace_calc.heat.cuts.below_hearth import hearth_layers, under_hearth
from fireplace_calc.heat.cuts.from_geometry import wall_plan
from fireplace_calc.heat.cuts.round_flue import beside_flue, flue_layers, girth_radius
from fireplace_calc.heat.cuts.section_run import burn_section
from fireplace_calc.heat.cuts.spells import Spells
from fireplace_calc.heat.cuts.wall_plan import FIRE, OUTDOORS, ROOM, plan_mesh
from fireplace_calc.heat.findings import judgement
from fireplace_calc.rules.comparing import MEETS

HOT = {"fire": 475.0, "room": 21.0, "outdoors": 21.0}
SETS = st.integers(0, 10**6).map(random_set)
LITTLE = 0.05
"""To which a stage in time is worked, ten times over. [K]"""
INCHES = st.integers(0, 96).map(lambda eighths: f"{eighths / 8} in")


@st.composite
def built(draw):
    """A random design that can be built, with any air left behind, beside and round it."""
    design = draw(designs()) if draw(st.booleans()) else designed(draw(SETS))
    assume(design is not None)
    free = draw(st.integers(0, 5)) == 0
    around = {
        "clearance.back": draw(INCHES),
        "clearance.side": draw(INCHES),
        "clearance.chimney": draw(INCHES),
        "chimney.location": "exterior" if free else "interior",
        "site.winter": f"{draw(st.integers(-40, 15))} degC",
    }
    try:
        made = change(design, around)
        build_geometry(made)
    except InputError:
        assume(False)
    return made


def tried(count):
    """So many examples; a geometry takes longer to build than a number."""
    slow = [HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large]
    return settings(
        max_examples=count,
        deadline=None,
        suppress_health_check=slow,
        phases=(Phase.explicit, Phase.reuse, Phase.generate),
    )


def plan_of(geometry, key="hard", more=0.0, **changed):
    plan = wall_plan(geometry, wall_fires()[key], more)
    return replace(plan, **changed) if changed else plan


def hottest(plan, face=None, key="hard"):
    fire = wall_fires()[key]
    return burn(plan, fire if face is None else replace(fire, face=face), 8.0, cells=COARSE)


@tried(8)
@given(built(), st.sampled_from(["kind", "middle", "hard"]))
def test_nothing_is_hotter_than_the_fire_or_colder_than_around_it(design, key):
    geometry = build_geometry(design)
    fire = wall_fires()[key]
    room, winter = design.house.indoor - 273.15, design.site.winter - 273.15
    cold = min(room, winter) if design.chimney.location == "exterior" else room
    run = burn(plan_of(geometry, key), fire, 8.0, room, winter, COARSE)
    assert run.points.min() > cold - LITTLE
    assert run.points.max() < fire.face + LITTLE
    assert run.passed
    section = burn_section(geometry, fire, 4.0, 12.0)
    gas = flue_fires()["hard"].gas
    assert section.points.min() > min(room, winter) - LITTLE
    assert section.points.max() < max(fire.face, gas) + LITTLE


@tried(8)
@given(built())
def test_beside_the_flue_and_under_the_hearth_too(design):
    geometry = build_geometry(design)
    layers, radius = flue_layers(geometry), girth_radius(geometry)
    for fire in flue_fires().values():
        run = beside_flue(layers, radius, fire)
        assert run.wood.min() > 21.0 - LITTLE and run.highest < fire.gas + LITTLE
        assert np.abs(run.liner).max() < fire.gas
    try:
        down = hearth_layers(geometry)
    except NotWorked:
        return
    found = [under_hearth(down, fire, 8.0) for fire in wall_fires().values()]
    assert all(run.wood.min() > 21.0 - LITTLE for run in found)
    for run, fire in zip(found, wall_fires().values(), strict=True):
        assert run.highest < fire.face + LITTLE


@tried(8)
@given(built(), st.sampled_from([0.0, 5.0, 20.0]))
def test_what_goes_in_comes_out_or_is_kept(design, air):
    geometry = build_geometry(design)
    solved = Conduction(plan_mesh(plan_of(geometry, air=air), COARSE))
    flow = solved.flow(solved.steady(HOT), HOT)
    assert abs(sum(flow.values())) < 1e-3 * -flow["fire"]
    run = solved.run(always(HOT), 3600.0, 30.0, 21.0)
    kept = solved.mesh.capacity @ (run.points[-1] - run.points[20])
    gone = [sum(solved.flow(points, HOT).values()) for points in run.points[20:]]
    assert kept == pytest.approx(-np.trapezoid(gone, run.times[20:]), rel=0.02)


def turned(mesh):
    """The same cut with its axes changed over."""
    stuff = [replace(s, across=1 - s.across) if _looks(s) else s for s in mesh.stuff]
    names = {"left": "bottom", "bottom": "left", "right": "top", "top": "right"}
    edges = {names[name]: space for name, space in mesh.edges.items()}
    return HeatMesh(mesh.y, mesh.x, stuff, mesh.which.T.copy(), edges)


def mirrored(mesh):
    """The same cut seen from behind."""
    names = {"left": "right", "right": "left", "bottom": "bottom", "top": "top"}
    edges = {names[name]: space for name, space in mesh.edges.items()}
    return HeatMesh(-mesh.x[::-1], mesh.y, mesh.stuff, mesh.which[:, ::-1].copy(), edges)


def _looks(stuff):
    return isinstance(stuff, Gap) and stuff.across in (0, 1)


def field(mesh, points):
    found = np.full(mesh.which.shape, np.nan)
    found[mesh.solid] = points[: mesh.cells]
    return found


@tried(8)
@given(built(), st.sampled_from([0.0, 5.0]))
def test_a_plan_mirrored_or_turned_is_the_same_plan(design, air):
    geometry = build_geometry(design)
    mesh = plan_mesh(plan_of(geometry, air=air), COARSE)
    other_way, back = turned(mesh), mirrored(mesh)

    def burnt(cut):
        run = Conduction(cut).run(always(HOT), 6 * 3600.0, 1800.0, 21.0)
        return field(cut, run.points[-1])

    straight = burnt(mesh)
    close = {"abs": LITTLE, "nan_ok": True}
    found = burnt(other_way).T, burnt(back)[:, ::-1]
    assert found[0] == pytest.approx(straight, **close)
    assert found[1] == pytest.approx(straight, **close)


@tried(8)
@given(built(), st.sampled_from(["kind", "middle", "hard"]), st.integers(10, 60))
def test_more_fire_is_hotter_everywhere(design, key, more):
    geometry = build_geometry(design)
    plan, face = plan_of(geometry, key), wall_fires()[key].face
    less, hot = hottest(plan, key=key), hottest(plan, face + more, key)
    many = min(len(less.points), len(hot.points))
    assert (hot.points[:many] - less.points[:many]).min() > -LITTLE
    assert hot.highest > less.highest


@tried(8)
@given(built(), st.sampled_from([2.0, 4.0, 8.0]))
def test_more_wall_is_cooler(design, inches):
    """The stud behind the middle, or the free back, is cooler for it, and no wood is hotter."""
    geometry = build_geometry(design)
    plan, thick = plan_of(geometry), plan_of(geometry, more=inches * INCH)
    runs = [hottest(cut) for cut in (plan, thick)]
    before, after = (
        _behind_the_middle(cut, run) for cut, run in zip((plan, thick), runs, strict=True)
    )
    assert after < before + LITTLE
    assert runs[1].highest < runs[0].highest + LITTLE


def _behind_the_middle(plan, run):
    """The hottest of the stud on the center line; of masonry that stands free, of its back there."""
    places = run.mesh.places()
    there = (places[:, 0] < 0.02) & (
        places[:, 1] > plan.deep + plan.back_gap * bool(plan.framing) - 1e-6
    )
    return run.points[:, there].max()


@tried(8)
@given(built(), st.sampled_from([0.0, 2.0, 5.0]), st.sampled_from([1.0, 5.0, 20.0]))
def test_more_air_is_cooler(design, air, more):
    geometry = build_geometry(design)
    plan = plan_of(geometry, air=air)
    assert hottest(replace(plan, air=air + more)).highest < hottest(plan).highest + LITTLE


@tried(4)
@given(built())
def test_a_film_is_cooler_than_a_face_that_is_held(design):
    geometry = build_geometry(design)
    held = plan_of(geometry, film=HELD)
    assert hottest(replace(held, film=60.0)).highest < hottest(held).highest + LITTLE
    faces = [f for f in plan_mesh(held, COARSE).faces if isinstance(f.space, Film)]
    assert sum(f.area.sum() for f in faces) > 0


@tried(4)
@given(built())
def test_whatever_is_built_has_its_answer_and_never_a_pass(design):
    """All of it at once, as the page asks: findings, and figures that are figures."""
    heat = heat_answer(build_geometry(design))
    assert MEETS not in {finding.verdict for finding in judgement(heat)}
    highest = [run.highest for run in heat.evening or ()]
    assert highest == sorted(highest) and np.isfinite(highest).all()
    assert all(np.isfinite(one.kelvin) for one in heat.worth)
    masonry = [one.kelvin for one in heat.worth if one.what == "masonry"]
    assert all(kelvin < LITTLE for kelvin in masonry)
    assert all(one.growth > 0 and one.asks > 0 for one in heat.grows)
    assert (heat.pull is None) == (heat.flue is None)
    assert heat.evening is not None or heat.why_not


FAR = Cells(0.004, 1.2, 0.03)
"""Far finer than what is told is worked in: about ten times as many. [m]"""


@pytest.mark.parametrize("cells", [FINE, COARSE])
@pytest.mark.parametrize("gap", sampled(["0 in", "2 in", "4 in"], 1))
@pytest.mark.parametrize("name", sampled(["plain", "boathouse-laid", "boathouse"], 1))
@pytest.mark.parametrize("hours", [4.0, 8.0])
def test_what_is_told_is_not_under_far_finer_cells(name, gap, cells, hours):
    """Each fire, wood that touches the masonry too, on the safe side by no more than the cells ask."""
    design = load(DESIGNS / f"{name}.toml")
    geometry = build_geometry(change(design, {"clearance.back": gap}))
    for fire in wall_fires().values():
        plan = wall_plan(geometry, fire)
        run, far = (burn(plan, fire, hours, cells=one) for one in (cells, FAR))
        rise = far.highest - 21.0
        assert (
            far.highest
            <= run.safe_highest
            < far.highest + 1.0 + cells.low.kelvin + cells.low.share * rise
        )


@tried(8)
@given(built(), st.sampled_from(["kind", "middle", "hard"]), st.sampled_from([4.0, 8.0, 24.0]))
def test_nor_on_any_design(design, key, hours):
    plan, fire = plan_of(build_geometry(design), key), wall_fires()[key]
    assume(plan_mesh(plan).cells < 2500)
    far = burn(plan, fire, hours, cells=FAR)
    for cells in (FINE, COARSE):
        assert burn(plan, fire, hours, cells=cells).safe_highest >= far.highest


THICK = {
    "opening.width": "33.375 in",
    "firebox.depth": "19 in",
    "firebox.back_width": "18.625 in",
    "firebox.jamb": "8 in",
    "firebox.wall": "13.625 in",
    "firebox.lining_thickness": "4 in",
    "clearance.side": "7.75 in",
    "clearance.back": "4.125 in",
}
"""Thick walls, warm for a few hours after a short fire: of what is behind them far finer cells tell a
third more."""


@pytest.mark.parametrize("cells", [FINE, COARSE])
@pytest.mark.parametrize(("walls", "key"), [("thick", "middle"), (29, "hard"), (57, "hard")])
def test_nor_on_designs_that_random_ones_found(walls, key, cells):
    """And sets with half an inch behind their facing, no place for a flame to stand in."""
    if walls == "thick":
        design = change(load(DESIGNS / "plain.toml"), THICK)
    else:
        beside = {"clearance.side": "1 in", "clearance.back": "4 in"}
        design = change(designed(random_set(walls)), beside)
    plan, fire = plan_of(build_geometry(design), key), wall_fires()[key]
    far, run = (burn(plan, fire, 4.0, cells=one) for one in (FAR, cells))
    assert run.safe_highest >= far.highest


def highest_in_three_days(plan, fire, hours):
    """The hottest that any of the wood becomes, the fire long out."""
    mesh = plan_mesh(plan, COARSE)
    spells = Spells(mesh, 21.0, COARSE)
    lit = {FIRE: fire.face, ROOM: 21.0, OUTDOORS: 21.0}
    spells.go(lit, {FIRE: plan.film}, hours)
    spells.go({**lit, FIRE: EMBERS}, {FIRE: EMBERS_FILM}, 72.0)
    return HottestWood(mesh, plan).at(spells.points).max()


def test_the_stud_behind_is_waited_for_where_the_one_beside_is_past_its_hottest():
    """Beside it is the hottest first, 77 C; hours later the thick back brings what is behind to 83."""
    walls = {
        "opening.width": "45.5 in",
        "firebox.jamb": "8 in",
        "firebox.wall": "14 in",
        "clearance.side": "4 in",
        "clearance.back": "2 in",
    }
    geometry = build_geometry(change(load(DESIGNS / "plain.toml"), walls))
    plan, fire = plan_of(geometry), wall_fires()["hard"]
    run = burn(plan, fire, 4.0, cells=COARSE)
    falls = np.flatnonzero(np.diff(run.wood) < 0)
    assert run.wood[falls[0] :].max() > run.wood[falls[0]] + 5.0
    assert run.highest == pytest.approx(highest_in_three_days(plan, fire, 4.0), abs=0.1)


@tried(8)
@given(built(), st.sampled_from(["kind", "middle", "hard"]), st.sampled_from([4.0, 8.0, 24.0]))
def test_nothing_is_hotter_days_later(design, key, hours):
    plan, fire = plan_of(build_geometry(design), key), wall_fires()[key]
    run = burn(plan, fire, hours, cells=COARSE)
    assert run.highest > highest_in_three_days(plan, fire, hours) - 0.1


def test_wood_that_touches_is_as_hot_as_the_face_it_touches():
    """Masonry and wood in one line between two faces that are held: by hand from resistances."""
    brick, wood = Solid(0.8, 1.6e6), Solid(0.12, 1.0e6)
    framing = SimpleNamespace(wood=wood)
    edges = {"bottom": Film("fire"), "top": Film("room")}
    x, y = np.array([0.0, 1.0]), np.array([0.0, 0.1, 0.2, 0.24, 0.28])
    mesh = HeatMesh(x, y, [brick, wood], np.array([[0], [0], [1], [1]]), edges)
    points = Conduction(mesh).steady({"fire": 400.0, "room": 21.0})
    looked = HottestWood(mesh, SimpleNamespace(framing=framing))
    through = 0.2 / 0.8 + 0.08 / 0.12
    touching = 400.0 - 379.0 * (0.2 / 0.8) / through
    assert looked.at(points[None]) == pytest.approx([touching], abs=1e-3)


def test_a_splay_of_more_than_half_its_depth_is_cut_into_lower_steps():
    plan = plan_of(build_geometry(load(DESIGNS / "plain.toml")))
    usual, half, wider, square = (plan_mesh(replace(plan, slope=s)) for s in (0.2, 0.5, 0.55, 1.0))
    assert np.array_equal(usual.y, half.y) and np.array_equal(usual.x, square.x)
    assert not np.allclose(np.diff(wider.y)[:2], np.diff(half.y)[:2], rtol=0.01)
    assert len(square.y) > len(half.y)
