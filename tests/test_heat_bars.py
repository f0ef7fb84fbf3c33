"""The bars that the heat has to reach, one test each, named after its bar.

Rows are those of ``data/examples_heat.csv``, worked in tests/test_heat_cases.py; here each is held
to the bar, however wide its own range is.
"""

from dataclasses import replace
from math import hypot

import numpy as np
import pytest
from scipy.optimize import brentq
from test_heat_cases import (
    BRICK,
    CASES,
    HOUR,
    LINING,
    PLAN,
    WORKED,
    bar,
    coupled,
    layered,
    stud,
)

from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.heat.conduction.driving import always
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import HELD, Film, Room, Solid
from fireplace_calc.heat.conduction.raster import Body
from fireplace_calc.heat.cuts.wall_plan import WallPlan, plan_mesh

LABORATORY = 115.0
"""Row H100: hottest of the back after twelve hours of brands. [C]"""


def missed(*keys):
    """How far the worst of some rows is off. [its own unit]"""
    off = [
        np.abs(np.atleast_1d(WORKED[key]()) - [float(t) for t in CASES[key]["result"].split()])
        for key in keys
    ]
    return max(float(np.max(each)) for each in off)


def of_kind(*kinds):
    """Rows of some kinds that are worked."""
    return [key for key in WORKED if CASES[key]["kind"] in kinds]


# -- closed forms ---------------------------------------------------------------------------------
@pytest.mark.parametrize("key", ["H001", "H003", "H004", "H006", "H009", "H020", "H037", "H038"])
def test_bar_closed_forms_within_half_a_kelvin_on_16_cells(key):
    """Half-space, film, flux, slab, corner: Carslaw and Jaeger."""
    assert missed(key) < 0.5


@pytest.mark.parametrize("key", ["H023", "H026", "H027", "H028", "H032", "H033", "H035"])
def test_bar_layered_walls_within_half_a_kelvin_on_16_cells(key):
    """Laplace transform of the layered slab, inverted numerically."""
    assert missed(key) < 0.5


def test_bar_order_in_space_is_at_least_1_9():
    """Against the wall's own limit, from 8, 16 and 32 cells a layer."""
    found = [layered(0.1016, 12, cells) for cells in (8, 16, 32)]
    assert np.log2((found[0] - found[1]) / (found[1] - found[2])) >= 1.9


def test_bar_order_in_time_is_at_least_1_9():
    """Steps of 1 h, 1/2 h and 1/4 h through a layered wall behind a film."""
    edges = {"left": Film("fire", 60.0), "right": Film("room", 9.0)}
    solved = Conduction(bar([LINING, BRICK], [0.1143, 0.1016], [8, 8], edges))
    drives = always({"fire": 400.0, "room": 21.0})
    found = [solved.run(drives, 8 * HOUR, step).points[-1, -1] for step in (3600.0, 1800.0, 900.0)]
    assert np.log2((found[0] - found[1]) / (found[1] - found[2])) >= 1.9


# -- benchmarks -----------------------------------------------------------------------------------
def test_bar_iso_10211_case_1_within_a_tenth_of_a_kelvin():
    assert missed("H045", "H047", "H048", "H051") < 0.1


def test_bar_iso_10211_case_2_within_a_tenth_of_a_kelvin_and_of_a_watt():
    assert missed("H052", "H056", "H057", "H058") < 0.1
    assert missed("H061") < 0.1


def test_bar_benchmarks_t3_and_t4_within_a_tenth_of_a_kelvin():
    """NAFEMS, standard thermal benchmarks: 36.60 C after 32 s; 18.3 C, which is printed to a tenth."""
    assert missed("H063", "H064") < 0.1


# -- air layers and gaps --------------------------------------------------------------------------
def test_bar_air_layers_of_iso_6946_within_a_hundredth():
    """m2K/W."""
    assert missed("H070", "H072", "H074", "H075", "H076", "H078") <= 0.01


@pytest.mark.parametrize("key", ["H082", "H083", "H084", "H089", "H090", "H091"])
def test_bar_plane_air_spaces_of_the_handbook_within_a_tenth(key):
    """ASHRAE Handbook, Fundamentals."""
    assert missed(key) <= 0.10 * float(CASES[key]["result"])


def test_bar_a_gap_between_two_walls_within_a_tenth_of_a_kelvin():
    assert missed("H098", "H099") < 0.1


def test_a_gap_between_two_walls_by_brackets():
    """The same wall, its two faces found by a root of the heat that crosses: no mesh."""
    through, behind = 0.1143 / 1.05 + 0.1016 / 0.80, 0.945
    faces = np.array(coupled(0.9, 0.0))

    def cold(flux):
        return 21.0 + flux * behind

    def crossing(flux):
        hot = 400.0 - flux * through
        sent = 1 / (1 / 0.93 + 1 / 0.9 - 1) * 5.670374419e-8
        by_light = sent * ((hot + 273.15) ** 4 - (cold(flux) + 273.15) ** 4)
        apart = hot - cold(flux)
        return by_light + max(0.025 / 0.1016, 0.73 * np.cbrt(apart)) * apart - flux

    flux = brentq(crossing, 1.0, 379.0 / (through + behind) - 1e-6)
    assert faces == pytest.approx([400.0 - flux * through, cold(flux)], abs=0.1)


# -- balance and plan -----------------------------------------------------------------------------
@pytest.mark.parametrize("air", [0.0, 5.0, 20.0])
def test_bar_heat_balance_of_the_plan_within_a_thousandth(air):
    solved = Conduction(plan_mesh(replace(PLAN, air=air)))
    drives = {"fire": 400.0, "room": 21.0}
    flow = solved.flow(solved.steady(drives), drives)
    assert abs(sum(flow.values())) < 1e-3 * flow["room"]


@pytest.mark.parametrize("key", of_kind("plan, own"))
def test_bar_plans_within_three_kelvin(key):
    """With the very cells that the page has at rest; the rows' grid had 12,300."""
    assert missed(key) < 3.0


# -- readings -------------------------------------------------------------------------------------
@pytest.mark.parametrize("key", ["H103", "H104", "H105"])
def test_bar_seven_hours_of_a_household_within_twelve_kelvin(key):
    """Nothing is fitted; the gap is closed."""
    assert missed(key) < 12.0


def back_of(firebrick, whole, face, hours=12.0):
    """The back behind the middle, free in a room of 21 C: firebox of the rows, so much firebrick in
    so thick a wall. [C] hour by hour
    """
    depth, wide, slope = 20 * INCH, 18 * INCH, 1 / 3
    narrow, skin = wide - slope * depth, firebrick * hypot(1.0, slope)
    behind, deep, half = depth + firebrick, depth + whole, 30 * INCH
    fire = ((0.0, 0.0), (wide, 0.0), (narrow, depth), (0.0, depth))
    lined = ((0.0, 0.0), (wide + skin, 0.0), (wide + skin - slope * behind, behind), (0.0, behind))
    block = ((0.0, 0.0), (half, 0.0), (half, deep), (0.0, deep))
    bodies = Body(BRICK, (block,)), Body(LINING, (lined,))
    plan = WallPlan(bodies, fire, slope, half, deep, HELD, 0.0, 0.0, None)
    mesh = plan_mesh(plan)
    run = Conduction(mesh).run(always({"fire": face, "room": 21.0}), hours * HOUR, 1200.0)
    places = mesh.places()
    back = np.flatnonzero(np.abs(places[:, 1] - deep) < 1e-6)
    return run.points[:, back].max(axis=1)


def test_bar_laboratory_back_at_12_h_with_one_number_fitted():
    """The number is the hard fire's inner face; the wall is that of all rows, 4 1/2 in of firebrick
    in 8 1/2 in.
    """
    hard = wall_fires()["hard"]
    assert hard.film is None
    assert back_of(4.5 * INCH, 8.5 * INCH, hard.face)[-1] == pytest.approx(LABORATORY, abs=0.5)


def test_behind_a_code_wall_the_hard_fire_is_two_to_three_kelvin_too_hot():
    """2 1/2 in of firebrick in 8 in (row B06): there 460 C fits, which the table says beside it. Of
    the wall that was tested nothing more is told, so the hotter fire of the two stays.
    """
    hard = wall_fires()["hard"]

    def behind(face):
        return back_of(2.5 * INCH, 8.0 * INCH, face)[-1]

    fitted = brentq(lambda face: behind(face) - LABORATORY, 400.0, 525.0, xtol=0.5)
    assert fitted == pytest.approx(460.0, abs=2.0)
    assert f"{460} C fits" in hard.source.text
    assert 2.0 < behind(hard.face) - LABORATORY < 3.0


def test_at_12_h_the_laboratorys_wall_has_all_but_a_tenth_of_its_last_rise():
    """Row B07: it went on for 9 to 12 h; the reference has 91 to 94 percent at 12 h."""
    course = back_of(4.5 * INCH, 8.5 * INCH, 475.0, 96.0) - 21.0
    share = course[36] / course[-1]
    assert 0.905 < share < 0.945
    late, last = course[27] - course[24], course[36] - course[33]  # in the hour to 9 h, to 12 h
    assert last < late < 0.06 * course[-1]


def test_a_free_back_at_115_loses_fourteen_and_a_half_watts():
    """W/(m2 K), of 0.93 and a room of 21 C: reference sheet of the fit; nine were too few."""
    edges = {"left": Film("fire"), "right": Room("room", 0.93)}
    mesh = bar([Solid(1e4, 1.0)], [0.01], [4], edges)
    solved = Conduction(mesh)
    drives = {"fire": 115.0, "room": 21.0}
    points = solved.steady(drives)
    face = points[int(np.argmax(mesh.places()[:, 0]))]
    found = solved.flow(points, drives)["room"] / (face - 21.0)
    by_hand = 0.93 * 5.670374e-8 * ((face + 273.15) ** 4 - 294.15**4) / (face - 21.0)
    assert found == pytest.approx(by_hand + 1.31 * np.cbrt(face - 21.0), rel=1e-6)
    assert found == pytest.approx(14.5, abs=0.05)


def test_the_wood_is_hottest_hours_after_the_fire_and_far_hotter_than_at_its_end():
    """Reference: 3 to 5 h after, and 30 to 90 K over what it was when the fire went out."""
    solved = Conduction(plan_mesh(PLAN))
    where = stud(solved.mesh, PLAN)
    burnt = solved.run(always({"fire": 400.0, "room": 21.0}), 4 * HOUR, 1200.0)
    solved.film("fire", 10.0)
    after = solved.run(always({"fire": 25.0, "room": 21.0}), 20 * HOUR, 1200.0, burnt.points[-1])
    course = after.points[:, where]
    assert 3.0 <= after.times[course.argmax()] / HOUR <= 5.5
    assert 30.0 < course.max() - course[0] < 90.0
