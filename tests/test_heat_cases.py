"""Heat conduction against closed forms, printed benchmarks, tables of air layers and readings: every
row of ``data/examples_heat.csv`` is worked with the product's own solver, and held to the row's own
range, or said to be not worked, with the reason. Which bar each holds: tests/test_heat_bars.py.
"""

from dataclasses import replace
from math import exp, pi, sin

import numpy as np
import pytest
from scipy.special import j0

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tables.heat import conductors, flue_fires, heat_lines
from fireplace_calc.base.units import INCH
from fireplace_calc.heat.conduction.driving import schedule
from fireplace_calc.heat.conduction.exchange import (
    DOWN,
    between,
    layer_resistance,
    radiated,
)
from fireplace_calc.heat.conduction.grading import graded
from fireplace_calc.heat.conduction.march import Conduction
from fireplace_calc.heat.conduction.mesh import HELD, Film, Gap, HeatMesh, Room, Solid
from fireplace_calc.heat.conduction.raster import Body
from fireplace_calc.heat.cuts.wall_plan import Framing, WallPlan, plan_mesh
from fireplace_calc.heat.from_opening import CRITICAL_FLUX, LEAST_FLUX
from fireplace_calc.heat.movement import grown

CASES = {row["id"]: row for row in rows("examples_heat.csv")}
HOUR = 3600.0
LINING, BRICK = Solid(1.05, 2.1e6), Solid(0.80, 1.6e6)


def bar(stuff, thick, cells, edges):
    """Layers in a row along x, a meter high, each in so many equal cells."""
    x, which = [0.0], []
    for n, (long, count) in enumerate(zip(thick, cells, strict=True)):
        x += (x[-1] + long * np.arange(1, count + 1) / count).tolist()
        which += [n] * count
    return HeatMesh(np.array(x), np.array([0.0, 1.0]), stuff, np.array([which]), edges)


def at(mesh, points, x):
    """Temperature at a place of a row, in straight lines from point to point."""
    places = mesh.places()[:, 0]
    order = np.argsort(places, kind="stable")
    return float(np.interp(x, places[order], points[order]))


def deep_wall(x, hours, step, film=HELD, temperature=400.0):
    """A wall so thick that nothing comes back, 16 cells to where one looks."""
    mesh = bar([LINING], [3.0], [1], {"left": Film("fire", film)})
    edges = np.concatenate([np.linspace(0, x, 17), x + graded([0.0, 8.0], x / 16, 1.15)[1:]])
    mesh = HeatMesh(
        edges,
        np.array([0.0, 1.0]),
        [LINING],
        np.zeros((1, len(edges) - 1), int),
        {"left": Film("fire", film)},
    )
    run = Conduction(mesh).run(lambda t: {"fire": temperature}, hours * HOUR, step)
    return at(mesh, run.points[-1], x)


def layered(second, hours, cells=16):
    mesh = bar(
        [LINING, BRICK],
        [0.1143, second],
        [cells, cells],
        {"left": Film("fire"), "right": Film("room", 9.0)},
    )
    run = Conduction(mesh).run(lambda t: {"fire": 400.0, "room": 21.0}, hours * HOUR, 300.0)
    return at(mesh, run.points[-1], 0.1143 + second)


def flux_into_a_wall():
    """A film to a far hotter fire is a flux that hardly changes."""
    hot = 3e7
    edges = np.concatenate([np.linspace(0, 0.05, 17), 0.05 + graded([0.0, 6.0], 0.003, 1.15)[1:]])
    mesh = HeatMesh(
        edges,
        np.array([0.0, 1.0]),
        [LINING],
        np.zeros((1, len(edges) - 1), int),
        {"left": Film("fire", 3000.0 / hot)},
    )
    run = Conduction(mesh).run(lambda t: {"fire": hot}, 2 * HOUR, 60.0)
    return at(mesh, run.points[-1], 0.05)


def cooled_slab():
    mesh = bar([LINING], [0.114], [16], {"right": Film("air", 30.0)})
    run = Conduction(mesh).run(lambda t: {"air": 20.0}, 6 * HOUR, 300.0, 400.0)
    return at(mesh, run.points[-1], 0.0)


def swing():
    """Amplitude left and delay [h] at the back of 8 1/2 in of a day's swing."""
    x, day = 0.2159, 24 * HOUR
    edges = np.concatenate([np.linspace(0, x, 33), x + graded([0.0, 8.0], x / 32, 1.15)[1:]])
    mesh = HeatMesh(
        edges,
        np.array([0.0, 1.0]),
        [LINING],
        np.zeros((1, len(edges) - 1), int),
        {"left": Film("fire")},
    )
    run = Conduction(mesh).run(lambda t: {"fire": 100 * sin(2 * pi * t / day)}, 6 * day, 900.0, 0.0)
    places = mesh.places()[:, 0]
    order = np.argsort(places, kind="stable")
    seen = np.array([np.interp(x, places[order], p[order]) for p in run.points[-96:]])
    times = run.times[-96:]
    fitted = (
        2
        / 96
        * np.array(
            [
                (seen * np.sin(2 * pi * times / day)).sum(),
                (seen * np.cos(2 * pi * times / day)).sum(),
            ]
        )
    )
    return np.hypot(*fitted) / 100, -np.arctan2(fitted[1], fitted[0]) * 24 / (2 * pi)


def flue_wall():
    """Liner, a bare resistance, brick."""
    mesh = bar(
        [Solid(1.05, 2.1e6), Solid(0.01 / 0.15, 1.0), BRICK],
        [0.0159, 0.01, 0.1016],
        [8, 2, 16],
        {"left": Film("fire", 12.0), "right": Film("room", 8.0)},
    )
    run = Conduction(mesh).run(lambda t: {"fire": 250.0, "room": 21.0}, 8 * HOUR, 300.0)
    return at(mesh, run.points[-1], 1.0)


def quarter(x, y, hours):
    edges = np.concatenate([np.linspace(0, 0.3, 49), 0.3 + graded([0.0, 3.0], 0.3 / 48, 1.3)[1:]])
    mesh = HeatMesh(
        edges,
        edges,
        [LINING],
        np.zeros((len(edges) - 1,) * 2, int),
        {"left": Film("fire"), "bottom": Film("fire")},
    )
    run = Conduction(mesh).run(lambda t: {"fire": 400.0}, hours * HOUR, 300.0)
    return grid_at(mesh, run.points[-1], x, y)


def grid_at(mesh, points, x, y):
    """Between the four cells round a place."""
    x0, y0 = (mesh.x[1:] + mesh.x[:-1]) / 2, (mesh.y[1:] + mesh.y[:-1]) / 2
    field = points[: mesh.cells].reshape(len(y0), len(x0))
    rows_at_x = np.array([np.interp(x, x0, row) for row in field])
    return float(np.interp(y, y0, rows_at_x))


def steady_bar(mesh, *places, **drives):
    points = Conduction(mesh).steady(drives)
    return [at(mesh, points, place) for place in places]


def rectangle(down):
    """ISO 10211 case 1: left column of four points, at a depth under the hot top; places beside
    the line of symmetry from the line itself.
    """
    n = 40
    mesh = HeatMesh(
        np.linspace(0, 1, n + 1),
        np.linspace(0, 2, 2 * n + 1),
        [Solid(1.0, 1.0)],
        np.zeros((2 * n, n), int),
        {"left": Film("cold"), "bottom": Film("cold"), "top": Film("hot")},
    )
    points = Conduction(mesh).steady({"cold": 0.0, "hot": 20.0})
    return [grid_at(mesh, points, x, 2 - down) for x in (0.25, 0.5, 0.75, 1 - 0.5 / n)]


def bridge():
    """ISO 10211 case 2: a metal clip through insulation."""
    x = graded([0, 0.0015, 0.015, 0.5], 0.0003, 1.2)
    y = graded([0, 0.0015, 0.035, 0.0365, 0.0415, 0.0475], 0.00025, 1.2)
    at_x, at_y = np.meshgrid((x[1:] + x[:-1]) / 2, (y[1:] + y[:-1]) / 2)
    which = np.full(at_x.shape, 3)
    which[at_y > 0.0415] = 0
    which[(at_y > 0.0365) & (at_y < 0.0415) & (at_x < 0.015)] = 1
    clip = (at_y < 0.0015) | ((at_x < 0.0015) & (at_y < 0.0365))
    which[clip | ((at_x < 0.015) & (at_y > 0.035) & (at_y < 0.0365))] = 2
    stuff = [Solid(1.15, 1.0), Solid(0.12, 1.0), Solid(230.0, 1.0), Solid(0.029, 1.0)]
    mesh = HeatMesh(
        x, y, stuff, which, {"top": Film("out", 1 / 0.06), "bottom": Film("in", 1 / 0.11)}
    )
    solved = Conduction(mesh)
    drives = {"out": 0.0, "in": 20.0}
    points = solved.steady(drives)
    return mesh, points, solved.flow(points, drives)


def near(mesh, points, x, y, up):
    """On a line between two materials, from the cell above or below it."""
    places = mesh.places()
    side = (places[:, 1] > y) if up else (places[:, 1] <= y)
    far = np.where(side, np.abs(places - (x, y)) @ (1.0, 1.0), np.inf)
    return float(points[np.argmin(far)])


def radiating_rod():
    mesh = bar(
        [Solid(55.563, 1.0)], [0.1], [16], {"left": Film("hot"), "right": Room("far", 0.98, 0.0)}
    )
    return steady_bar(mesh, 0.1, hot=1000 - 273.15, far=300 - 273.15)[0] + 273.15


def swinging_bar():
    """NAFEMS T3: one end swings, the other is held; where and when the benchmark looks."""
    mesh = bar(
        [Solid(35.0, 440.5 * 7200.0)], [0.1], [40], {"left": Film("cold"), "right": Film("hot")}
    )
    run = Conduction(mesh).run(
        lambda t: {"cold": 0.0, "hot": 100 * sin(pi * t / 40)}, 32.0, 0.5, 0.0
    )
    return at(mesh, run.points[-1], 0.08)


def cooled_plate():
    """NAFEMS T4: a plate held below, insulated at the left, cooled elsewhere."""
    mesh = HeatMesh(
        graded([0.0, 0.6], 0.002, 1.15),
        graded([0.0, 0.2, 1.0], 0.002, 1.15),
        [Solid(52.0, 1.0)],
        np.zeros(
            (
                len(graded([0.0, 0.2, 1.0], 0.002, 1.15)) - 1,
                len(graded([0.0, 0.6], 0.002, 1.15)) - 1,
            ),
            int,
        ),
        {"bottom": Film("hot"), "right": Film("air", 750.0), "top": Film("air", 750.0)},
    )
    points = Conduction(mesh).steady({"hot": 100.0, "air": 0.0})
    places = mesh.places()
    edge = np.flatnonzero(np.abs(places[:, 0] - 0.6) < 1e-9)
    edge = edge[np.argsort(places[edge, 1])]
    return float(np.interp(0.2, places[edge, 1], points[edge]))


def cylinder():
    mesh = HeatMesh(
        np.linspace(0.1, 0.2, 33),
        np.array([0.0, 1.0]),
        [Solid(0.8, 1.0)],
        np.zeros((1, 32), int),
        {"left": Film("gas", 25.0), "right": Film("room", 9.0)},
        ring=True,
    )
    solved, drives = Conduction(mesh), {"gas": 300.0, "room": 20.0}
    return solved.flow(solved.steady(drives), drives)["room"]


def square_flue(ratio, n=60):
    """Shape factor of a square flue in a square stack, from a quarter of the plan."""
    inside, outside = 0.5, 0.5 * ratio
    x = graded([0.0, inside, outside], (outside - inside) / n, 1.1, outside / n)
    at_x, at_y = np.meshgrid((x[1:] + x[:-1]) / 2, (x[1:] + x[:-1]) / 2)
    which = np.where((at_x < inside) & (at_y < inside), 1, 0)
    mesh = HeatMesh(
        x, x, [Solid(1.0, 1.0), Film("flue")], which, {"right": Film("out"), "top": Film("out")}
    )
    solved = Conduction(mesh)
    points = solved.steady({"flue": 1.0, "out": 0.0})
    return 4 * solved.flow(points, {"flue": 1.0, "out": 0.0})["out"]


def coupled(emissivity, air):
    gap = Gap(0, between(0.93, emissivity), air)
    behind = Solid(0.1 / 0.945, 1.0)
    mesh = bar(
        [LINING, BRICK, gap, behind],
        [0.1143, 0.1016, 0.1016, 0.1],
        [16, 16, 1, 4],
        {"left": Film("fire"), "right": Film("room")},
    )
    return steady_bar(mesh, 0.2159, 0.3175, fire=400.0, room=21.0)


FRAMING = Framing(Solid(0.12, 0.73e6), Solid(0.04, 0.010e6), Solid(0.16, 0.74e6))


def walled(depth=20 * INCH, deep=28.5 * INCH, half=30 * INCH, slope=1 / 3, **more):
    """The plan of the rows: 36 in opening, lining 4 1/2 in, masonry to the outside."""
    wide, thick = 18 * INCH, 4.5 * INCH
    narrow, skin = wide - slope * depth, thick * np.hypot(1.0, slope)
    behind = depth + thick
    fire = ((0.0, 0.0), (wide, 0.0), (narrow, depth), (0.0, depth))
    lined = ((0.0, 0.0), (wide + skin, 0.0), (wide + skin - slope * behind, behind), (0.0, behind))
    block = ((0.0, 0.0), (half, 0.0), (half, deep), (0.0, deep))
    told = dict(film=60.0, back_gap=4 * INCH, side_gap=2 * INCH, framing=FRAMING) | more
    return WallPlan(
        (Body(BRICK, (block,)), Body(LINING, (lined,))), fire, slope, half, deep, **told
    )


PLAN = walled()


def stud(mesh, plan):
    """The stud's face behind the center line."""
    places = mesh.places()
    faces = np.flatnonzero(np.abs(places[:, 1] - plan.deep - plan.back_gap) < 1e-9)
    return faces[np.argmin(places[faces, 0])]


def plan_case(hours, fire=400.0, **changed):
    plan = walled(**changed)
    mesh = plan_mesh(plan)
    solved = Conduction(mesh)
    drives = {"fire": fire, "room": 21.0}
    if hours is None:
        return solved.steady(drives)[stud(mesh, plan)]
    return solved.run(lambda t: drives, hours * HOUR, 1200.0).points[-1, stud(mesh, plan)]


def out_after_four_hours():
    plan = replace(PLAN, film=HELD)
    mesh = plan_mesh(plan)
    solved = Conduction(mesh)
    burnt = solved.run(lambda t: {"fire": 475.0, "room": 21.0}, 4 * HOUR, 1200.0)
    solved.film("fire", 10.0)
    after = solved.run(lambda t: {"fire": 25.0, "room": 21.0}, 20 * HOUR, 1200.0, burnt.points[-1])
    return after.points[:, stud(mesh, plan)].max()


def household(at_hour):
    """Seven hours of readings of a fireback, in and out; the masonry was warm from the night before
    and is taken to be as warm as its face was, 36 C. The splay is not told: 4 in 12.
    """
    hours, read = range(8, 16), [36, 157, 159, 179, 188, 172, 164, 213]
    plan = walled(depth=14 * INCH, deep=24 * INCH, film=HELD, side_gap=4 * INCH)
    mesh = plan_mesh(plan)
    drives = schedule([(h - 8) * HOUR for h in hours], read, "fire", room=26.0)
    run = Conduction(mesh).run(drives, 7 * HOUR, 600.0, 36.0)
    places = mesh.places()
    back = np.flatnonzero(np.abs(places[:, 1] - plan.deep) < 1e-9)
    back = back[np.argmin(places[back, 0])]
    return float(np.interp((at_hour - 8) * HOUR, run.times, run.points[:, back]))


def household_side():
    """The side of that fireplace: 18 in of block, the readings in front of it."""
    mesh = bar(
        [Solid(1.3, 1.9e6)], [18 * INCH], [32], {"left": Film("fire"), "right": Room("room")}
    )
    drives = schedule(
        [h * HOUR for h in range(8)], [36, 157, 159, 179, 188, 172, 164, 213], "fire", room=22.0
    )
    return at(mesh, Conduction(mesh).run(drives, 7 * HOUR, 600.0, 22.0).points[-1], 18 * INCH)


def one_term(bi, ring=False, cells=96):
    """Root and coefficient of the late straight line of a slab or rod that cools."""
    mesh = HeatMesh(
        np.linspace(0, 1, cells + 1),
        np.array([0.0, 1.0]),
        [Solid(1.0, 1.0)],
        np.zeros((1, cells), int),
        {"right": Film("air", bi)},
        ring=ring,
    )
    run = Conduction(mesh).run(lambda t: {"air": 0.0}, 2.0, 0.002, 1.0)
    seen = run.points[:, 0]
    slope = np.log(seen[-1] / seen[-201]) / (run.times[-1] - run.times[-201])
    off = np.cos((-slope) ** 0.5 * 0.5 / cells) if not ring else j0((-slope) ** 0.5 * 0.5 / cells)
    return (-slope) ** 0.5, seen[-1] * exp(-slope * run.times[-1]) / off


def iso_layer(width, way="level"):
    return layer_resistance(width, 10.0, 5.0, between(0.9, 0.9), way)


def air_row(width, mean, difference, emittance):
    return layer_resistance(width, mean, difference, emittance)


WORKED = {
    "H001": lambda: deep_wall(0.0508, 1, 60.0),
    "H003": lambda: deep_wall(0.2159, 8, 300.0),
    "H004": lambda: deep_wall(0.2159, 12, 300.0),
    "H006": lambda: deep_wall(0.1016, 4, 120.0, 60.0, 500.0),
    "H009": flux_into_a_wall,
    "H011": lambda: one_term(0.1)[1],
    "H012": lambda: one_term(0.5)[0],
    "H014": lambda: one_term(1.0)[0],
    "H015": lambda: one_term(1.0)[1],
    "H020": cooled_slab,
    "H021": lambda: swing()[0],
    "H022": lambda: swing()[1],
    "H023": lambda: layered(0.1016, 1),
    "H026": lambda: layered(0.1016, 8),
    "H027": lambda: layered(0.1016, 12),
    "H028": lambda: layered(0.1016, 24),
    "H032": lambda: layered(0.1905, 12),
    "H033": lambda: layered(0.1905, 24),
    "H035": flue_wall,
    "H037": lambda: quarter(0.1, 0.1, 4),
    "H038": lambda: quarter(0.05, 0.2, 8),
    "H041": cylinder,
    "H044": lambda: one_term(1.0, ring=True)[1],
    "H045": lambda: rectangle(0.25),
    "H047": lambda: rectangle(0.75),
    "H048": lambda: rectangle(1.0),
    "H051": lambda: rectangle(1.75),
    "H052": lambda: near(*bridge()[:2], 0.0, 0.0475, False),
    "H056": lambda: near(*bridge()[:2], 0.5, 0.0415, True),
    "H057": lambda: near(*bridge()[:2], 0.0, 0.0365, False),
    "H058": lambda: near(*bridge()[:2], 0.015, 0.0365, False),
    "H061": lambda: bridge()[2]["out"],
    "H062": radiating_rod,
    "H063": swinging_bar,
    "H064": cooled_plate,
    "H066": lambda: square_flue(1.5),
    "H067": lambda: square_flue(2.0),
    "H070": lambda: iso_layer(0.007),
    "H072": lambda: iso_layer(0.015),
    "H074": lambda: iso_layer(0.050),
    "H075": lambda: iso_layer(0.100),
    "H076": lambda: iso_layer(0.300),
    "H078": lambda: iso_layer(0.050, DOWN),
    "H082": lambda: air_row(0.020, 32.2, 5.6, 0.82),
    "H083": lambda: air_row(0.040, 32.2, 5.6, 0.82),
    "H084": lambda: air_row(0.090, 32.2, 5.6, 0.82),
    "H089": lambda: air_row(0.090, 10.0, 16.7, 0.82),
    "H090": lambda: air_row(0.090, 10.0, 16.7, 0.05),
    "H091": lambda: air_row(0.040, 10.0, 16.7, 0.05),
    "H094": lambda: radiated(115.0, 21.0, between(0.93, 1.0))[0] / 94,
    "H095": lambda: radiated(200.0, 150.0, between(0.93, 0.05))[0] / 50,
    "H098": lambda: coupled(0.05, 0.0),
    "H099": lambda: coupled(0.9, 10.0),
    "H103": lambda: household(11),
    "H104": lambda: household(13),
    "H105": lambda: household(15),
    "H106": household_side,
    "H113": lambda: plan_case(None),
    "H115": lambda: plan_case(8, air=20.0),
    "H116": lambda: plan_case(8, deep=32.5 * INCH),
    "H117": lambda: plan_case(8, wood_sends=0.05),
    "H118": lambda: plan_case(8, back_gap=INCH, side_gap=INCH),
    "H121": lambda: plan_case(8, framing=replace(FRAMING, solid=True)),
    "H122": lambda: plan_case(4, 190.0, film=HELD),
    "H123": lambda: plan_case(8, 190.0, film=HELD),
    "H125": lambda: plan_case(8, 190.0, film=HELD, air=20.0),
    "H126": lambda: plan_case(4, 475.0, film=HELD),
    "H127": lambda: plan_case(8, 475.0, film=HELD),
    "H128": lambda: plan_case(8, 475.0, film=HELD, air=5.0),
    "H132": out_after_four_hours,
}
ANCHORS = {
    "B02": lambda: (line("covered") - 21.0) * 1.8,
    "B03": lambda: (line("exposed") - 21.0) * 1.8,
    "B08": lambda: line("years"),
    "B09": lambda: line("ignition"),
    "B11": lambda: LEAST_FLUX / 1e3,
    "B12": lambda: CRITICAL_FLUX / 1e3,
    "B15": lambda: flue_fires()["soot"].gas,
    "B19": lambda: found_among("firebrick", 1.0),
    "B20": lambda: found_among("firebrick", 1.297),
    "B21": lambda: found_among("firebrick", 1.088),
    "B25": lambda: 100 * grown(1.0, 1000.0),
}
"""Measured and printed figures that the product takes over, read off where it keeps them."""
WORKED |= ANCHORS
FITTED = "the hard fire is fitted to it: tests/test_heat_bars.py"
NO_MATERIAL = "no part that is drawn is made of it"
NO_HEAT = "a rule or a recommendation, no temperature: other rooms hold it"
NOT_WORKED = {
    "H100": FITTED,
    "B01": FITTED,
    "B04": "of a masonry heater, which is not drawn",
    "B05": "of a masonry heater, which is not drawn",
    "B06": "the wall of B01: tests/test_heat_bars.py",
    "B07": "a remark that names no rate; what the wall does by then: tests/test_heat_bars.py",
    "B10": "332 C is with a flame beside it; 250 C, without, is told in its place and is lower",
    "B13": "121 to 149 C for years: over the line of 77 C, which is told in its place",
    "B14": "232 to 260 C for hours: about the line of 250 C, which is told in its place",
    "B16": "15 min; 30 min are taken, for larger flues burn longer, and that is hotter",
    "B17": "whether a liner softens is not worked out",
    "B18": "no figure to work out: a liner failed thermal shock, as `through_stress` has it too",
    "B22": NO_MATERIAL,
    "B23": NO_MATERIAL,
    "B24": "753 J/kgK at 20 C, to 960; 960 is taken, as found at 100 C and over",
    "B26": NO_MATERIAL,
    "B27": NO_HEAT,
    "B28": NO_HEAT,
    "B29": NO_HEAT,
}


def line(key):
    return next(one.celsius for one in heat_lines() if one.key == key)


def found_among(material, conductivity):
    """The figure itself where it lies in the range that is kept, else the nearest end of it."""
    known = conductors()[material]
    return min(max(conductivity, known.low), known.high)


def within(row):
    """How far off a row lets an answer be. [its own unit]"""
    size, *unit = row["tolerance"].split(" ")
    return float(size) / 100 if unit[:1] == ["%"] else float(size), unit[:1] == ["%"]


def test_every_row_is_worked_or_says_why_not():
    assert WORKED.keys() | NOT_WORKED.keys() == CASES.keys()


@pytest.mark.parametrize("key", sorted(WORKED))
def test_a_published_case(key):
    row, (size, relative) = CASES[key], within(CASES[key])
    wanted = [float(text) for text in row["result"].split()]
    found = np.atleast_1d(WORKED[key]())
    assert found == pytest.approx(wanted, abs=0 if relative else size, rel=size if relative else 0)


@pytest.mark.parametrize("guess", [21.0, 300.0])
def test_the_guess_changes_nothing(guess):
    mesh = plan_mesh(PLAN)
    drives = {"fire": 400.0, "room": 21.0}
    ends = [
        Conduction(mesh, g).run(lambda t: drives, 8 * HOUR, 1200.0).points[-1]
        for g in (80.0, guess)
    ]
    assert np.abs(ends[0] - ends[1]).max() < 0.05
