"""A fireplace across a corner of its room: what fits before the corner, what must hold, how it is
drawn and told, and the page's own axes beside ours.
"""

import json
import shutil
import subprocess
from dataclasses import asdict, replace
from math import inf
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon, box
from strategies import designs

import fireplace_calc
from fireplace_calc import assess, change, example, load, save
from fireplace_calc.base.units import FOOT, INCH, InputError
from fireplace_calc.build.setting.site_plan import site_of
from fireplace_calc.design.records import Design
from fireplace_calc.design.work import Work
from fireplace_calc.drawing.composed.compose import reads, single
from fireplace_calc.drawing.composed.marked_check import marked
from fireplace_calc.drawing.composed.marked_places import PLACES
from fireplace_calc.drawing.pieces.staging_picture import staging_sheet
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.starting.outcomes import came_of
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.in_room.cut_corner import CutCorner, corner_of, least_across
from fireplace_calc.geometry.mesh import part_body
from fireplace_calc.proportion import corner_fit, find_guides, wall_sides, wall_top, width_sentence
from fireplace_calc.report.for_client.three_sentences import client_sentences
from fireplace_calc.rules.tracing.follows import idle
from fireplace_calc.scene.eyes import INSIDE, standpoints
from fireplace_calc.scene.layouts.floors import floor_layouts
from fireplace_calc.scene.setting.furnished import room_measures
from fireplace_calc.scene.setting.openings import door_place, door_size
from fireplace_calc.scene.setting.shell import _between, shell_things
from fireplace_calc.scene.still.light_dots import _from_windows

CORNER = {"breast.place": "across a corner"}
SOURCES = Path(fireplace_calc.__file__).parent / "panels" / "scene" / "src"
NODE = shutil.which("node")


def made(changes=None):
    return build_geometry(change(Design(), CORNER | (changes or {})))


def corner(geometry):
    return corner_of(geometry.design, geometry.frame)


# -- what fits before the corner -------------------------------------------------------------------
def test_masonry_with_its_air_fits_before_the_corner_by_hand():
    """A block of 60 by 28-1/2 in, 10 in of it before the wall: 18-1/2 in stand behind. A triangle
    of 45 degrees with a base w is w/2 - 30 deep at the back edge of the block, and 4 in square off
    its slanting side are 5.66 in along the depth: w = 2 (30 + 18.5 + 5.66) = 108.3 in.
    """
    g = made({"breast.projection": "10 in"})
    assert corner(g).needed / INCH == pytest.approx(2 * (30 + 18.5 + 4 * 2**0.5))
    assert corner(g).width / INCH == 108.5  # the next half inch
    assert corner_fit(g) == ""
    short = made({"breast.projection": "10 in", "breast.across": "100 in"})
    assert corner(short).too_deep / INCH == pytest.approx(4.157, abs=1e-3)
    said = '4 1/2" too deep for the corner: a wall 9\'-0 1/2" across would do'
    assert said in corner_fit(short)
    assert "110 mm too deep" in corner_fit(short, "millimetres")


@pytest.mark.parametrize(("wide", "fits"), [("108-1/2 in", True), ("108 in", False)])
def test_it_is_told_from_the_width_on_that_does_not_do(wide, fits):
    g = made({"breast.projection": "10 in", "breast.across": wide})
    assert (corner_fit(g) == "") is fits


@pytest.mark.parametrize(
    ("changes", "inches"),
    [
        ({"clearance.side": "6 in"}, 6),
        ({"clearance.back": "unknown"}, 2),
        ({"clearance.back": "unknown", "clearance.side": "unknown"}, 0),
    ],
)
def test_the_larger_air_that_is_told_counts(changes, inches):
    g = made(changes)
    assert corner(g).needed / INCH == pytest.approx(2 * (30 + 28.5 + inches * 2**0.5))
    narrow = made(changes | {"breast.across": "6 ft"})
    assert ("not told" in corner_fit(narrow)) == (inches == 0)
    # Where it would fit without any, nobody knows: silence would say that it does.
    assert ("not checked" in corner_fit(g)) == (inches == 0)


@settings(deadline=None)
@given(designs(), st.floats(0.0, 1.0), st.floats(-2.0, 2.0))
def test_needed_is_where_the_solids_touch_the_corner(design, share, feet):
    """Against the parts themselves, cut at many levels from floor to ceiling: none comes nearer to
    the room's walls than its air, and one comes as near as that.
    """
    most = build_geometry(design).frame.block_back
    told = {
        "breast.projection": f"{share * most / INCH:.3f} in",
        "breast.off_center": f"{feet:.3f} ft",
        "house.room_length": "unknown",
        "house.room_width": "unknown",
    }
    try:
        g = build_geometry(change(design, CORNER | told))
    except InputError:
        return
    c, off, top = corner(g), g.design.breast.off_center, wall_top(g)
    gap = g.design.clearance
    air = 2**0.5 * max(gap.side or 0.0, gap.back or 0.0)
    reach = [
        abs(x + off) + y
        for part in g.parts
        for z in np.linspace(0.002, min(g.design.house.ceiling, top) - 0.002, 23)
        if part.bottom < z < part.top
        for ring in plan_rings(part, z)
        for x, y in ring
        if y > c.wall + 1e-6
    ]
    most = max(reach, default=0.0) - c.wall + air
    assert 2 * most <= c.needed + 1e-6
    assert c.needed == 0 or not reach or 2 * most >= c.needed - 0.02
    assert c.width >= max(c.needed, least_across(g.design, g.frame)) - 1e-9


# -- what must hold --------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"breast.across": "59 in"}, "Wall across the corner.*at least 5'-0\""),
        ({"breast.across": "7 ft", "hearth.side": "2 ft"}, "at least 7'-0\"|never"),
        ({"breast.across": "6 ft", "breast.off_center": "9 in"}, "at least 6'-6\""),
        ({"breast.across": "19 ft"}, "at most 18'-4 5/8\".*room's width"),
        ({"house.room_length": "7 ft"}, "Wall across the corner.*at most.*room's length"),
    ],
)
def test_masonry_hearth_and_room_end_it(changes, message):
    if "never" in message:  # 36 and two times 24 in are just 7 ft
        made(changes)
        changes = changes | {"breast.across": "83 in"}
    with pytest.raises(InputError, match=message):
        made(changes)


def test_a_seat_ends_with_it():
    told = {"base.hearth_level": "16 in", "seat.left": "30 in", "breast.across": "120 in"}
    made(told)
    with pytest.raises(InputError, match="at least 10'-0\""):
        made(told | {"breast.across": "119 in"})


def test_its_width_is_idle_in_a_wall_and_kept_in_a_file():
    assert "breast.across" in idle(Design())
    design = change(Design(), CORNER | {"breast.across": "10 ft"})
    assert "breast.across" not in idle(design)
    assert Design().breast.place == "in a wall" and Design().breast.across is None


def test_a_file_keeps_it(tmp_path):
    design = change(Design(), CORNER | {"breast.across": "10 ft"})
    save(design, tmp_path / "corner.toml")
    assert load(tmp_path / "corner.toml").breast == design.breast


@pytest.mark.parametrize("out", [None, "10 in"])
@pytest.mark.parametrize("form", ["shouldered", "straight", "flush"])
def test_nothing_of_order_draft_and_clauses_moves_with_it(form, out):
    """The returns of the breast stand out of the wall across as out of any other."""
    told = {"breast.form": form, "breast.projection": out}
    one, other = (assess(change(Design(), told | more)) for more in ({}, CORNER))
    assert [(f.key, f.verdict) for f in one.findings] == [
        (f.key, f.verdict) for f in other.findings
    ]
    assert one.takeoff == other.takeoff and one.geometry.parts == other.geometry.parts
    judged = [
        [(f.key, f.verdict, f.note) for f in (*of.judgement, *of.structure.findings)]
        for of in (one, other)
    ]
    assert judged[0] == judged[1]


def test_no_finding_rests_on_where_it_stands():
    """On the form of the breast the weight does, and so does what stands under it."""
    result = assess(load(example("boathouse-laid")))
    every = (*result.findings, *result.judgement, *result.structure.findings)
    rests = {key for finding in every for key in finding.assumed}
    assert "breast.form" in rests
    assert not {"breast.place", "breast.across"} & rests


# -- how it is drawn and told ----------------------------------------------------------------------
def test_the_wall_of_the_guides_is_the_one_across():
    g = made({"breast.across": "12 ft", "breast.off_center": "1 ft"})
    assert wall_sides(g) == pytest.approx((-7 * FOOT, 5 * FOOT))
    third = next(x for x in find_guides(g) if x.name == "thirds of the wall")
    assert third.found == pytest.approx(5 / 12)
    assert "not checked: the table says nothing of a corner" in width_sentence(g)


def test_the_room_goes_out_from_it_at_45_degrees():
    """A wall of 12 ft, 10 in behind the face; 3 ft before the face the room is 3 ft 10 in wider to
    each side. A room of 20 by 14 ft is deep where the shorter wall's line crosses the middle:
    14 ft times the root of two, less 10 in and half of 12 ft.
    """
    g = made({"breast.across": "12 ft", "breast.projection": "10 in"})
    s = scene(g)
    assert s.cornered and s.out(-3 * FOOT) == pytest.approx(46 * INCH)
    assert corner(g).deep() / INCH == pytest.approx(168 * 2**0.5 - 10 - 72)
    x0, y0, x1, y1 = s.wall[0][0], s.depth, s.wall[2][0], s.back
    k = s.eye.size(-s.depth)
    assert s.whole and s.window[0][0] == pytest.approx((x0 - y0 - y1) * k)
    assert s.window[2][0] == pytest.approx((x1 + y0 + y1) * k)
    sheet = single("room", g)
    said = " ".join(label.text for label in sheet.labels)
    assert "Across a corner, its wall 12'-0\" wide." in said and "too deep" not in said


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_mason_and_client_are_told_that_it_does_not_fit(units):
    g = made({"breast.across": "6 ft", "breast.projection": "10 in"})
    deep, wide = {"feet-inches": ("1'-6 1/2\"", "9'-0 1/2\""), "millimetres": ("465", "2 755")}[
        units
    ]
    for view in ("room", "plan"):
        said = " ".join(label.text for label in single(view, g, units).labels)
        assert f"{deep}" in said and "too deep for the corner" in said, view
        assert wide in said, view
    said = client_sentences(assess(g.design), units)[1]
    assert f"{deep}" in said and f"a wall {wide}" in said and said.count(".") == 1
    fits = client_sentences(assess(change(g.design, {"breast.across": "10 ft"})), units)[1]
    assert "wall across a corner of the room" in fits and "too deep" not in fits


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
@pytest.mark.parametrize("view", ["room", "plan"])
@pytest.mark.parametrize(
    "told",
    [
        {},
        {"breast.across": "60 in"},
        {"breast.across": "18 ft", "breast.off_center": "-5 ft"},
        {"breast.projection": "0 in", "house.room_length": "unknown"},
        {"breast.projection": "32-1/2 in", "breast.form": "straight"},
        {"clearance.side": "unknown", "clearance.back": "unknown", "breast.across": "8 ft"},
        {"breast.off_center": "12 in", "house.room_width": "unknown", "house.ceiling": "14 ft"},
        {"base.hearth_level": "16 in", "seat.left": "30 in", "seat.right": "20 in"},
    ],
)
def test_views_of_it_are_clean(told, view, units):
    assert collisions(single(view, made(told), units)) == []


def test_what_was_begun_says_which_wall_is_which():
    said = came_of("room", change(Design(), CORNER), {}, "feet-inches")
    assert "20'-0\" along the wall at the right" in said


def slanting(changes):
    """How many pieces of timber of the plan have an edge at 45 degrees."""
    count = 0
    for ring in single("plan", build_geometry(change(Design(), changes))).fills[0, "timber"]:
        edges = np.abs(np.diff(np.concatenate([*ring, ring[0][:1]]), axis=0))
        count += bool(np.isclose(edges[:, 0], edges[:, 1], rtol=1e-6).any())
    return count


def test_the_plan_has_the_walls_of_the_corner():
    out = {"breast.projection": "10 in"}
    assert slanting(out) == 0
    assert slanting(CORNER | out) == 2
    assert slanting(CORNER | out | {"breast.across": "60 in"}) == 2  # through the masonry
    assert slanting(CORNER | out | {"breast.across": "16 ft"}) == 0  # beyond what is drawn


def test_the_plan_is_drawn_again_when_the_stack_leans_into_the_corner():
    """A stack shifted 5 ft aside under the ceiling comes nearer to the corner than the block."""
    told = CORNER | {"flue.offset": "60 in", "flue.offset_rise": "48 in", "flue.sections": 12}
    low, high = (
        build_geometry(change(Design(), told | {"house.ceiling": x})) for x in ("9 ft", "13 ft")
    )
    assert corner(low).width < corner(high).width
    assert reads("plan", low) != reads("plan", high)


@pytest.mark.parametrize("pack", ["US IRC 2021", "Canada NBC"])
def test_air_is_marked_where_the_corner_leaves_it(pack):
    """Square off the slanting wall, from the back edge of the block to the wall of the room."""
    g = made({"breast.projection": "10 in"})
    found = [x for x in assess(g.design, pack).findings if x.key in ("CLR-02", "CA-064", "CA-066")]
    assert found
    for finding in found:
        (x0, y0), (x1, y1) = PLACES[finding.key][1](g)
        if y1 > y0:
            assert (x0, y0) == pytest.approx((g.frame.block_half, g.frame.block_back))
            assert corner(g).own(x1, y1)[1] == pytest.approx(0.0, abs=INCH / 4)  # half an inch wide
        else:
            assert x1 < x0 < 0 and 10 * INCH < y0 < 13.5 * INCH
        assert collisions(marked(finding, g)) == []


# -- the staging floor -----------------------------------------------------------------------------
def floor_of(c: CutCorner) -> Polygon:
    """What lies before the face, from the walls' own lines."""
    x, y = c.corner
    ring = [c.fire(0, 0), c.fire(c.along, 0), c.fire(c.along, -c.away), c.fire(0, -c.away)]
    return Polygon(ring).intersection(box(x - 99, y - 99, x + 99, 0.0))


@pytest.mark.parametrize(("along", "away"), [(4.0, 5.0), (6.5, 3.0)])
def test_a_floor_across_a_corner_ends_at_the_corner_of_the_room_before_the_face(along, away):
    """The corner cut off lies 1 m behind the face: width 2 m. The opposite one is as far off as the
    sides of the room over the root of two.
    """
    site = site_of(Work(), Design().house, 0.0, CutCorner(-1.0, 1.0, 0.0, 2.0, along, away))
    assert (site.half, site.deep) == pytest.approx((1.0, (along + away) / 2**0.5 - 1.0))
    for known in ((None, away), (along, None), (None, None)):
        assert (
            site_of(Work(), Design().house, 0.0, CutCorner(-1.0, 1.0, 0.0, 2.0, *known)).deep == inf
        )


@settings(deadline=None)
@given(
    *[st.floats(8.0, 60.0)] * 2,
    st.floats(6.0, 10.0),
    st.floats(-0.9, 0.9),
    st.tuples(st.floats(-9.0, 9.0), st.floats(0.1, 3.0)),
    st.tuples(st.floats(0.0, 9.0), st.floats(0.1, 3.0)),
)
def test_the_staging_floor_is_the_rooms_own(along, away, wide, aside, across, down):
    """Any rectangle that it holds lies in the room, and any that lies in the room it holds."""
    c = CutCorner(
        (-wide / 2 - aside) * FOOT, (wide / 2 - aside) * FOOT, 0.1, 0.0, along * FOOT, away * FOOT
    )
    site = site_of(Work(), Design().house, aside * FOOT, c)
    (x, w), (y, d) = across, down
    area = (x, -y - d, x + w, -y)
    if floor_of(c).buffer(-1e-4).contains(box(*area)):
        assert site.holds(area)
    if not floor_of(c).buffer(1e-4).contains(box(*area)):
        assert not site.holds(area)


def test_piles_and_pallets_stand_in_the_room():
    design = change(Design(), CORNER | {"pieces.set": "middling", "house.room_width": "30 ft"})
    sheet = staging_sheet(design)
    said = " ".join(label.text for label in sheet.labels)
    assert "wall across the corner" in said and "45 degrees" in said
    assert collisions(sheet) == []


# -- the lit room, and the page's axes beside ours -------------------------------------------------
SIZES = [
    ("20 ft", "14 ft"),
    ("14 ft", "20 ft"),
    ("11 ft", "11 ft"),
    ("100 ft", "60 ft"),
    (None, None),
]


@pytest.mark.parametrize(("length", "width"), SIZES)
def test_whoever_looks_stands_in_the_room(length, width):
    g = made({"house.room_length": length, "house.room_width": width})
    room = room_measures(g)
    ring = [
        room.corner.fire(x, y)
        for x, y in (
            (room.corner.leg, 0.0),
            (room.right, 0.0),
            (room.right, room.front),
            (0.0, room.front),
            (0.0, -room.corner.leg),
        )
    ]
    floor = Polygon(ring).buffer(-0.4)
    for eye in standpoints(g):
        if eye.name in INSIDE:
            assert floor.contains(Point(eye.stands[:2])), eye.name
    low, high = room.front, -room.corner.leg
    if room.window_wall.turn > 0:
        low, high = -room.right, 0.0
    assert room.windows
    for window in room.windows:
        assert low < window.front < window.back < high


@pytest.mark.parametrize("told", [{}, {"breast.off_center": "1 ft", "breast.across": "14 ft"}])
def test_the_shell_closes_all_round(told):
    """What is 2 cm thick round the room's outline is filled: by walls, floor and ceiling, and by
    masonry, door and windows where those are. Strips along the walls stand off them alike.
    """
    from manifold3d import CrossSection, JoinType, Manifold, Mesh64, OpType

    g = made(told | {"house.room_width": "20 ft"})
    room, c = room_measures(g), room_measures(g).corner
    walls = ((c.leg, 0), (room.right, 0), (room.right, room.front), (0, room.front), (0, -c.leg))
    outline = CrossSection([[c.fire(*place) for place in walls]])
    if outline.area() == 0:
        outline = CrossSection([[c.fire(*place) for place in walls[::-1]]])
    grown = outline.offset(0.02, JoinType.Miter, 4.0)
    high = room.ceiling
    skin = grown.extrude(high + 0.04).translate((0, 0, -0.02)) - outline.extrude(high)
    solids = [
        Manifold(Mesh64(np.ascontiguousarray(t.points, float), t.faces.astype("uint64")))
        for t in shell_things(g)
    ]
    solids += [part_body(p) for p in (*g.parts, g.outer)]
    holes = [  # what stands in an opening stands deeper in its wall, and the firebox is open
        box_at(room.window_wall, w.front, w.back, w.sill, w.head) for w in room.windows
    ]
    at, (wide, tall) = door_place(g), door_size(g)
    turned = Manifold.cube((1.0, wide, tall)).translate((room.right - 0.5, at - wide, 0.0))
    holes.append(turned.rotate((0, 0, -45)).translate((*c.corner, 0)))
    f = g.frame
    holes.append(
        Manifold.cube((2 * f.half_width, 2.0, f.opening_top + 0.5)).translate(
            (-f.half_width, 0.0, -0.1)
        )
    )
    left = skin - Manifold.batch_boolean([*solids, *holes], OpType.Add)
    assert left.volume() < 1e-6
    for off in (0.018, 0.1):
        strip = _between(c, (0.0, room.right), (room.front, 0.0), off, 0.0, off, 1.0)
        assert strip.volume() == pytest.approx(outline.offset(-off, JoinType.Miter, 4.0).area())


def box_at(wall, front, back, sill, head):
    from manifold3d import Manifold

    body = Manifold.cube((1.0, back - front, head - sill)).translate(
        (wall.plane - 0.5, front, sill)
    )
    return body.rotate((0, 0, wall.turn)).translate((wall.x, wall.y, 0))


def asked(script: str, told):
    """What the page's own modules answer."""
    result = subprocess.run(
        [NODE, "--input-type=module", "-e", script.replace("SRC", SOURCES.as_uri())],
        input=json.dumps(told),
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(result.stdout)


@pytest.mark.skipif(NODE is None, reason="Node is not installed")
@pytest.mark.parametrize("width", ["20 ft", "9 ft"])
def test_the_page_turns_as_we_do(width):
    """Axes, the window's light, and an eye that is turned and taken far out in every way."""
    told = {"breast.projection": "10 in", "breast.off_center": "6 in", "breast.across": "10 ft"}
    g = made(told | {"house.room_width": width})
    room, c = room_measures(g), room_measures(g).corner
    plain = {
        "left": room.left,
        "right": room.right,
        "front": room.front,
        "back": room.back,
        "ceiling": room.ceiling,
        "windows": [
            {"front": w.front, "back": w.back, "sill": w.sill, "head": w.head} for w in room.windows
        ],
        "lamp": room.lamp,
        "fire": room.fire,
        "fire_width": room.fire_width,
        "corner": {"left": c.left, "right": c.right, "wall": c.wall},
        "window_wall": asdict(room.window_wall),
    }
    script = """
      import { readFileSync } from 'node:fs';
      import { ownOf, fireOf } from 'SRC/own.js';
      import { sourcesOf } from 'SRC/trace.js';
      import { Eye } from 'SRC/hands.js';
      const room = JSON.parse(readFileSync(0)), at = [0.7, -1.9, 1.2], stood = [];
      for (let k = 0; k < 60; k++) {
        const eye = new Eye();
        eye.go({ name: 'x', looks: [0.1, 0.1, 0.9], stands: [0.4, -3, 1.5], angle: 50 }, room);
        eye.turn(-1.5 + k * 0.05, 0); eye.nearer(50);
        stood.push(eye.stands);
      }
      console.log(JSON.stringify({ own: ownOf(room, at), again: fireOf(room, ownOf(room, at)), sources: sourcesOf(room).filter((s) => s.kind === 0), stood }));
    """
    told = asked(script, plain)
    assert told["own"] == pytest.approx([*c.own(0.7, -1.9), 1.2])
    assert told["again"] == pytest.approx([0.7, -1.9, 1.2])
    assert len(told["sources"]) == 8 * len(room.windows) > 0
    for source in told["sources"]:
        along, away = c.own(*source["at"][:2])
        off, at, up = (along, away, -1) if width == "20 ft" else (away - room.front, -along, 1)
        assert off == pytest.approx(0.01)
        assert any(w.front < at < w.back for w in room.windows)
        assert source["looks"] == pytest.approx([0.5**0.5, up * 0.5**0.5, 0.0])
    for x, y, z in told["stood"]:
        along, away = c.own(x, y)
        assert 0.2 < along < room.right - 0.4 and room.front + 0.2 < away < -0.4
        assert y < c.wall and 0 < z < room.ceiling


@pytest.mark.skipif(NODE is None, reason="Node is not installed")
def test_in_a_wall_the_page_turns_nothing():
    g = build_geometry(Design())
    assert room_measures(g).corner is None
    script = """
      import { readFileSync } from 'node:fs';
      import { ownOf, fireOf, turned, paneAxes } from 'SRC/own.js';
      const room = JSON.parse(readFileSync(0));
      console.log(JSON.stringify([ownOf(room, [1, 2, 3]), fireOf(room, [1, 2, 3]), turned(room, [1, 2, 3]), paneAxes(room)]));
    """
    told = asked(script, {"corner": None, "window_wall": None, "left": -3})
    assert told == [[1, 2, 3]] * 3 + [{"axes": [1, 0, 0, 0], "plane": -3}]


def test_own_and_fire_are_each_others_way_back():
    c = replace(corner(made({"breast.off_center": "1 ft"})), wall=0.2)
    for place in ((0.0, 0.0), (1.3, -2.0), (-0.4, 0.2)):
        assert c.fire(*c.own(*place)) == pytest.approx(place)
    assert c.own(c.right, c.wall) == pytest.approx((c.leg, 0.0))
    assert c.own(c.left, c.wall) == pytest.approx((0.0, -c.leg))


@pytest.mark.parametrize("width", ["20 ft", "9 ft"])
def test_a_still_is_lit_from_the_windows(width):
    """Light begins just inside the glass and goes into the room, square to its wall."""
    room = room_measures(made({"house.room_width": width}))
    inside = Polygon(
        [
            room.corner.fire(x, y)
            for x, y in ((0, 0), (room.right, 0), (room.right, room.front), (0, room.front))
        ]
    )
    lamps = list(_from_windows(room))
    assert lamps
    for stands, looks, area in lamps:
        way = np.subtract(looks[:2], stands[:2]) / np.hypot(*np.subtract(looks[:2], stands[:2]))
        assert area > 0 and inside.contains(Point(stands[:2]))
        assert inside.exterior.distance(Point(stands[:2])) == pytest.approx(0.05)
        assert not inside.contains(Point(np.subtract(stands[:2], 0.06 * way)))
        assert np.abs(way) == pytest.approx([0.5**0.5] * 2)


def test_boards_run_along_the_walls_of_the_room():
    c = corner(made())
    ways = [np.subtract(c.fire(*way), c.fire(0, 0)) for way in ((1, 0), (0, 1))]
    for stuff in ("boards", "flags", "floor tile"):
        one = next(x for x in floor_layouts(True) if x.stuff == stuff)
        for way in (one.along, one.up):
            assert max(abs(np.dot(way[:2], own)) for own in ways) == pytest.approx(1.0)
        across = np.cross(one.along, one.up)
        plain = next(x for x in floor_layouts() if x.stuff == stuff)
        assert across == pytest.approx(np.cross(plain.along, plain.up))


def test_walls_of_a_room_before_one_across_its_corner_by_hand():
    """A corner cut off 2 m wide, 20 cm to the left of the opening; walls of 5 m at the right and 4 m at
    the left run away from its ends at 45 degrees, and on at right angles from there.
    """
    c, r = CutCorner(-1.2, 0.8, 0.3, 2.0, 5.0, 4.0), 0.5**0.5
    assert c.corner == pytest.approx((-0.2, 1.3)) and c.leg == pytest.approx(2**0.5)
    right, left = (-0.2 + 5 * r, 1.3 - 5 * r), (-0.2 - 4 * r, 1.3 - 4 * r)
    over = (right[0] - 4 * r, right[1] - 4 * r)
    lines = c.walls_before(0.1)
    wanted = [[(-1.4, 0.1), left], [(1.0, 0.1), right], [right, over], [left, over]]
    assert len(lines) == 4
    for line, ends in zip(lines, wanted, strict=True):
        assert [*line[0], *line[1]] == pytest.approx([*ends[0], *ends[1]])
    for x, y in (left, (-1.4, 0.1), (1.0, 0.1), right):  # all of them on the walls of the room
        assert min(abs(v) for v in c.own(x, y)) == pytest.approx(0.0, abs=1e-9)
    unknown = replace(c, along=None).walls_before(0.3)
    assert len(unknown) == 3 and unknown[1][0] == pytest.approx((0.8, 0.3))
    assert c.own(*unknown[1][1]) == pytest.approx((100.0, 0.0))


@pytest.mark.parametrize("half", [0.0, 0.4])
def test_the_room_goes_on_as_far_as_a_strip_of_its_floor_meets_a_wall(half):
    """Along the axis of the opening the walls of 5 and 4 m end at 45 degrees; half a strip ends sooner
    by so much. Nothing known, no end.
    """
    c = CutCorner(-1.2, 0.8, 0.3, 2.0, 5.0, 4.0)
    far = [2**0.5 * long - 1.3 + side * -0.2 - half for long, side in ((5.0, 1), (4.0, -1))]
    assert c.deep(half) == pytest.approx(min(far))
    walls = Polygon([c.fire(0, 0), c.fire(5.0, 0), c.fire(5.0, -4.0), c.fire(0, -4.0)])
    strip = box(-half - 1e-6, -9.0, half + 1e-6, 0.0)
    assert strip.difference(walls).bounds[3] == pytest.approx(-c.deep(half), abs=1e-5)
    assert replace(c, along=None).deep(half) == pytest.approx(far[1])
    assert replace(c, along=None, away=None).deep() == float("inf")


def test_hearth_and_seat_need_a_wall_as_wide_on_either_side():
    """Opening 36 in wide: the hearth reaches 12 in past it and the seat 30 in more at the left, 60 in
    from the middle; off by 10 in to the right of the room's middle line it takes 50 there, and 40 right.
    """
    told = {"base.hearth_level": "16 in", "hearth.side": "12 in", "seat.left": "30 in"}
    for off, wide in ((0, 120), (10, 100), (-10, 140)):
        g = made(told | {"breast.off_center": f"{off} in"})
        assert least_across(g.design, g.frame) / INCH == pytest.approx(wide)
    bare = made({"hearth.front": "0 in"})
    assert least_across(bare.design, bare.frame) == pytest.approx(2 * bare.frame.block_half)


@pytest.mark.parametrize(("lean", "reach"), [(0.0, 1.8), (0.5, 2.3), (-1.3, 2.3)])
def test_a_stack_that_leans_aside_may_come_nearer_to_the_corner_than_the_breast(lean, reach):
    """By hand: breast 0.6 + 0.1 + 0.9 = 1.6 m; stack |0.3 + lean + 0.1| + 0.4 aside and 0.7 + 0.3 behind the face."""
    from types import SimpleNamespace

    from fireplace_calc.geometry.in_room.cut_corner import _reach

    frame = SimpleNamespace(
        stack_middle=0.3, shift_at=lambda level: lean, block_half=0.6, block_back=0.9,
        stack_half=0.4, flue_y=0.7, stack_depth=0.3,
    )  # fmt: skip
    design = change(Design(), {"breast.off_center": "100 mm"})
    assert _reach(design, frame) == pytest.approx(reach)
