"""The views against the plain design worked out by hand: every dimension is the distance between
its own ticks, every level mark and note points at what it names, and the lines stand where the
sizes put them. In inches, from the center line, the face and the floor.
"""

import re
from itertools import pairwise
from math import sqrt
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from fireplace_calc import change
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, SYSTEMS, InputError
from fireplace_calc.brickwork import BlockCourse, lay_brickwork
from fireplace_calc.brickwork.ring import block_layer
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.compose import CELLS, HEIGHT, WHOLE, WIDTH, single
from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.drawing.views.brick_layout import _block_courses
from fireplace_calc.drawing.views.cuts import cut_parts
from fireplace_calc.drawing.views.face import coursed_face, face_joints
from fireplace_calc.drawing.views.front_elevation import front
from fireplace_calc.drawing.views.hearth_plan import plan
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.drawing.views.throat_detail import detail
from fireplace_calc.geometry.builder import build_geometry

DRAW = {"front": front, "plan": plan, "section": section, "roof": roof}
PIECES = {"pieces.set": "small"}
WORKS = {
    "plain": {},
    "raised": {
        "opening.extension": "8 in", "base.hearth_level": "12 in", "firebox.depth": "24 in",
        "hearth.drop": "4 in", "flue.offset": "10 in", "roof.ridge_runs": "front to back",
    },
    "arched": {
        "opening.head": "segmental", "opening.rise": "5 in", "hearth.front": "0 in",
        "method": "modular", "firebox.lining": "refractory section", "flue.shape": "round",
        "flue.size": "12", "chimney.location": "exterior",
    },
}  # fmt: skip


def drawn(view, changes=None, units="feet-inches", cell=WHOLE):
    """Geometry, sheet, and the window it was drawn through."""
    made = build_geometry(change(Design(), changes or {}))
    sheet = Sheet(WIDTH, HEIGHT)
    return made, sheet, DRAW[view](sheet, cell, made, units)


def model(view, line):
    """Points of a line on paper, in inches of the model."""
    return (np.asarray(line) - (view.x0, view.y0)) / view.scale / INCH


def has(sheet, view, points, weight, ink="ink", closed=False):
    """Whether such a line is drawn, either way round, within a hundredth of an inch."""
    points = np.array([*points, points[0]] if closed else points, float)
    for line in sheet.lines[weight, ink]:
        found = model(view, line)
        if len(found) == len(points) and any(
            np.abs(turn - points).max() < 0.01 for turn in (found, found[::-1])
        ):
            return True
    return False


def filled(sheet, view, points, tone):
    """Whether a polygon of this outline is filled with a tone."""
    wanted = shapely.Polygon(points)
    return any(
        shapely.Polygon(model(view, polygon[0])).buffer(0).symmetric_difference(wanted).area < 0.5
        for (_, name), polygons in sheet.fills.items()
        if name == tone
        for polygon in polygons
    )


# -- dimensions ----------------------------------------------------------------------------------
def strings(sheet):
    """Dimension strings: upright or not, where each runs, and its ticks along. Its line runs 1 mm
    beyond the first tick and the last.
    """
    ticks = np.array(
        [
            line.mean(axis=0)
            for line in sheet.lines["flag", "dimension"]
            if len(line) == 2 and np.abs(np.abs(line[1] - line[0]) - 1.54).max() < 1e-6
        ]
    )
    made = []
    for line in sheet.lines["dimension", "dimension"]:
        for upright in (False, True):
            along, across = (1, 0) if upright else (0, 1)
            low, high = line[0, along] + 1.0, line[-1, along] - 1.0
            if len(line) != 2 or abs(line[0, across] - line[1, across]) > 1e-9 or low >= high:
                continue
            on = ticks[np.abs(ticks[:, across] - line[0, across]) < 1e-6][:, along]
            on = sorted(float(t) for t in on if low - 1e-6 <= t <= high + 1e-6)
            if len(on) > 1 and (on[0], on[-1]) == pytest.approx((low, high)):
                made.append((upright, float(line[0, across]), on))
    return made


def value(text):
    """A length as it is written in a string, in metres; none for any other word."""
    try:
        return to_si(f"{text} mm" if re.fullmatch(r"[\d ]+", text) else text, "length")
    except InputError:
        return None


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", WORKS)
@pytest.mark.parametrize("view", ["front", "plan", "section"])
@pytest.mark.parametrize("small", [False, True])
def test_every_dimension_is_the_distance_between_its_ticks(view, name, units, small):
    """Each gap of each string has its figure beside it, true to half a sixteenth or millimetre."""
    _, sheet, window = drawn(view, WORKS[name], units, CELLS[view] if small else WHOLE)
    half = INCH / 32 if units == "feet-inches" else 0.0005
    written = [
        label
        for label in sheet.labels
        if label.ink == "dimension" and "  " not in label.text and label.va == "base"
    ]
    count = 0
    for upright, at, places in strings(sheet):
        for low, high in pairwise(places):
            gap, middle = (high - low) / window.scale, (low + high) / 2
            beside = [
                label
                for label in written
                if label.turned == upright
                and abs((label.x if upright else label.y) - at) < 8
                and abs((label.y if upright else label.x) - middle) < 30
                and value(label.text) is not None
                and abs(value(label.text) - gap) <= half + 1e-6
            ]
            assert beside, (upright, at, gap / INCH)
            count += 1
    assert count >= 4


def chains(sheet, window):
    """Every string as its stops in inches of the model, rounded, upright ones apart."""
    found = {False: set(), True: set()}
    for upright, _, places in strings(sheet):
        origin = window.y0 if upright else window.x0
        stops = tuple(round((p - origin) / window.scale / INCH, 2) + 0.0 for p in places)
        found[upright].add(stops)
    return found


@pytest.mark.parametrize(
    ("view", "changes", "across", "up"),
    [
        ("front", {}, {(-30, -18, 18, 30), (-30, 30)}, {(0, 30)}),
        (
            "front",
            {"opening.extension": "8 in", "base.hearth_level": "12 in"},
            {(-30, -18, 18, 30), (-30, 30)},
            {(0, 12, 42, 50), (0, 50)},
        ),
        ("plan", {}, {(-30, -18, 18, 30), (-11.33, 11.33)}, {(-20, 0, 20, 28.5)}),
        (
            "plan",
            {"hearth.front": "0 in"},
            {(-18, 18), (-11.33, 11.33)},
            {(0, 20, 28.5)},
        ),
        (
            "section",
            {},
            {(0, 8, 12.5, 20, 28.5), (-20, 0, 20, 28.5)},
            {(-48, -36, -6.5, 0, 30, 38, 66), (-48, 66)},
        ),
        (
            "section",
            {"firebox.depth": "12.5 in"},
            {(0, 8, 12.5, 22), (-20, 0, 12.5, 22)},
            {(-48, -36, -6.5, 0, 30, 38, 66), (-48, 66)},
        ),
    ],
)
def test_what_is_dimensioned(view, changes, across, up):
    """Opening 36 by 30, jambs 12, hearth 20 out and 12 beside, 20 deep, wall 8-1/2, back 22-2/3."""
    _, sheet, window = drawn(view, changes)
    found = chains(sheet, window)
    assert across <= found[False] and up <= found[True]
    assert {stops for stops in found[False] if len(stops) > 2} == {s for s in across if len(s) > 2}


# -- levels and notes ----------------------------------------------------------------------------
def level_lines(sheet):
    return [line for line in sheet.lines["dimension", "dimension"] if len(line) == 4]


PLAIN_LEVELS = {
    "front": {"floor, hearth": 0, "opening top": 30, "lintel top": 33.5, "shoulder": 66,
              "ceiling": 108},
    "section": {"underside": -48, "footing": -36, "grade": -12, "floor, hearth": 0,
                "back bend": 14, "opening top": 30, "throat": 38, "flue": 66, "shoulder": 78},
}  # fmt: skip


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("view", PLAIN_LEVELS)
def test_a_level_mark_stands_at_its_level_and_says_it(view, units):
    """Its leader begins at the level that is written, and the levels are the plain design's."""
    _, sheet, window = drawn(view, {}, units)
    found = {}
    for label in sheet.labels:
        text, gap, name = label.text.partition("  ")
        if not gap:
            continue
        (line,) = [one for one in level_lines(sheet) if abs(one[3, 1] - label.y) < 1e-6]
        height = model(window, line)[0, 1]
        half = 1 / 32 if units == "feet-inches" else 0.5 / 25.4
        unit = f"{text} mm" if units == "millimetres" else text
        assert abs(to_si(unit, "length") / INCH - height) <= half + 1e-6
        assert (line[0, 1] == line[1, 1]) and (line[2, 1] == line[3, 1])
        found[name] = height
    assert found == pytest.approx(PLAIN_LEVELS[view], abs=0.02)


def test_levels_of_the_roof_view():
    """Grade 12 in under the floor, footing 48, flue from 66; ten sections of 24 and their joints
    end at 307.25, the crown 2 lower. A roof of 8 in 12 with the ridge at 264, 96 off, is at 200.
    """
    _, sheet, window = drawn("roof")
    found = {}
    for label in sheet.labels:
        text, gap, name = label.text.partition("  ")
        if gap and (lines := [x for x in level_lines(sheet) if abs(x[3, 1] - label.y) < 1e-6]):
            found[name] = model(window, lines[0])[0, 1]
            assert to_si(text, "length") / INCH == pytest.approx(found[name], abs=1 / 30)
    assert found == pytest.approx(
        {"footing": -48, "grade": -12, "floor": 0, "flue start": 66, "roof contact": 200,
         "ridge": 264, "crown": 305.25, "flue top": 307.25}, abs=0.02,
    )  # fmt: skip


def pointed(sheet, window):
    """Every note, and the place its leader points at, in inches."""
    found = {}
    for line in sheet.lines["dimension", "soft"]:
        if len(line) == 2:
            (label,) = [x for x in sheet.labels if x.va == "middle" and abs(x.y - line[1, 1]) < 1e-6
                        and abs(abs(x.x - line[1, 0]) - 0.7) < 1e-6]  # fmt: skip
            found[label.text] = tuple(model(window, line)[0])
    return found


@pytest.mark.parametrize("name", WORKS)
def test_a_note_in_the_section_points_into_what_it_names(name):
    made, sheet, window = drawn("section", WORKS[name])
    parts = {
        part.name: shapely.MultiPolygon([shapely.Polygon(r).buffer(0) for r in part.section()])
        for part in made.parts
        if part.section()
    }
    f = made.frame
    notes = pointed(sheet, window)
    for word, names in {
        "lining": ("firebox lining",), "hearth": ("hearth extension",), "hearth slab": ("hearth slab",),
        "footing": ("footing",), "lintel": ("lintel",), "arch": ("arch",),
        "transition": ("transition", "chamber walls"), "base": ("base walls",),
    }.items():  # fmt: skip
        if word in notes:
            place = shapely.Point(np.array(notes[word]) * INCH)
            near = [
                n for n, part in parts.items() if any(r.distance(place) < 1e-6 for r in part.geoms)
            ]
            known = [n for n in names if n in parts]
            if word in ("hearth", "transition") and not set(known) & set(near):
                assert word == "hearth" and made.design.hearth.front <= 0 or near
            else:
                assert set(near) & set(known), (word, near)
    for word in ("firebox", "smoke chamber", f"flue {f.bore.label}"):
        place = next(at for text, at in notes.items() if text.startswith(word))
        spot = shapely.Point(np.array(place) * INCH)
        assert all(ring.distance(spot) > 1e-6 for part in parts.values() for ring in part.geoms), (
            f"{word} is air"
        )
    x, z = (v * INCH for v in notes["firebox"])
    assert 0 < x < f.depth and f.hearth < z < f.opening_top
    x, z = (v * INCH for v in notes["smoke chamber"])
    assert f.throat_front < x < f.depth and f.throat < z < f.taper_top
    x, z = (v * INCH for v in notes["throat, damper"])
    assert (z, f.throat_front < x < f.throat_back) == (pytest.approx(f.throat), True)
    x, z = (v * INCH for v in next(at for t, at in notes.items() if t.startswith("flue")))
    assert (x, f.flue_start < z < f.crown_bottom) == (pytest.approx(f.flue_y), True)
    assert ("smoke shelf" in notes) == (f.lean > 0)


def test_notes_of_the_plan_point_into_what_they_name():
    """Air 2 in beside and 4 behind a block of 60 by 28-1/2; framing of 3-1/2 round it."""
    _, sheet, window = drawn("plan")
    notes = pointed(sheet, window)
    x, y = notes['air 2"']
    assert -32 < x < -30 and 0 < y < 28.5
    x, y = notes['air 4"']
    assert 28.5 < y < 32.5 and -30 < x < 30
    x, y = notes["framing"]
    assert -35.5 < x < -32 and 0 < y < 36
    x, y = notes["firebox wall"]
    side = 18 - y / 3
    assert -30 < x < -side - 4.5 and 0 < y < 20
    x, y = notes["lining"]
    assert -(18 - y / 3) - 4.5 * 1.06 < x < -(18 - y / 3) and 0 < y < 20
    x, y = notes["throat above"]
    assert 8 < y < 12.5 and -(18 - y / 3) < x < 0
    x, y = notes["firebox floor"]
    assert 0 < y < 8 and -(18 - y / 3) < x < 0
    x, y = notes['hearth extension, 2" stone']
    assert -20 < y < 0 and -30 < x < 0
    unknown = drawn("plan", {"clearance.side": "unknown", "hearth.front": "0 in"})
    words = pointed(*unknown[1:])
    assert "air unknown" in words and not any(w.startswith("hearth") for w in words)
    small = drawn("plan", cell=CELLS["plan"])
    assert set(pointed(*small[1:])) == {'air 2"', 'air 4"'}


# -- lines ---------------------------------------------------------------------------------------
def test_lines_of_the_front_elevation():
    """Breast 60 wide up to 66, stack of 27-1/2 (13 and 7-1/4 on either side) from the shoulder at 78
    to the ceiling at 108; steel lintel 3-1/2 high with 6 of bearing, hidden; hearth 60 by 2.
    """
    made, sheet, view = drawn("front")
    half = made.frame.stack_half / INCH
    breast = [(-30, 0), (30, 0), (30, 66), (half, 78), (half, 108), (-half, 108), (-half, 78),
              (-30, 66)]  # fmt: skip
    assert filled(sheet, view, breast, "face")
    opening = [(-18, 0), (18, 0), (18, 30), (-18, 30)]
    assert has(sheet, view, opening, "cut", closed=True) and filled(sheet, view, opening, "soot")
    lintel = [(-24, 30), (24, 30), (24, 33.5), (-24, 33.5)]
    assert has(sheet, view, lintel, "hidden", closed=True)
    assert has(sheet, view, [(-30, -2), (30, -2), (30, 0), (-30, 0)], "seen", closed=True)
    wide = 30 + 0.08 / INCH
    for height, weight in ((0, "ground"), (108, "cut")):
        ends = [(-wide - 0.05 / INCH, height), (wide + 0.72 / INCH, height)]
        assert has(sheet, view, ends, weight)
    # the back, 22-2/3 wide up to its bend at 14, opens with the sides as it leans forward 5 in
    lean = 7.5 / 24 * 16
    top = 18 - (20 - lean) / 3
    low = 34 / 3
    back = [(-low, 0), (low, 0), (low, 14), (top, 30), (-top, 30), (-low, 14)]
    assert filled(sheet, view, back, "firebrick")
    assert has(sheet, view, [(-low, 14), (low, 14)], "fine")


@pytest.mark.parametrize(
    ("changes", "tone", "ring"),
    [
        ({"lintel.material": "stone", "lintel.height": "6 in"}, "stone",
         [(-24, 30), (24, 30), (24, 36), (-24, 36)]),
        ({"base.hearth_level": "12 in"}, "stone", [(-30, 10), (30, 10), (30, 12), (-30, 12)]),
        ({"base.hearth_level": "12 in"}, "block", [(-30, 0), (30, 0), (30, 6), (-30, 6)]),
        ({"base.hearth_level": "12 in"}, "concrete", [(-30, 6), (30, 6), (30, 10), (-30, 10)]),
        ({"surround.trim": [{"place": "above", "distance": "12 in", "height": "2 in"}]}, "wood",
         [(-30, 42), (30, 42), (30, 44), (-30, 44)]),
        ({"surround.trim": [{"place": "above", "distance": "7 in", "height": "3 in"}]}, "wood",
         [(-25, 37), (25, 37), (25, 40), (-25, 40)]),
        ({"surround.trim": [{"place": "beside", "distance": "8 in", "height": "4 in"}]}, "wood",
         [(26, 0), (30, 0), (30, 30), (26, 30)]),
        ({"surround.trim": [{"place": "beside", "distance": "8 in", "height": "4 in"}]}, "wood",
         [(-26, 0), (-30, 0), (-30, 30), (-26, 30)]),
        ({"method": "modular", "firebox.lining": "refractory section"}, "refractory",
         [(-34 / 3, 0), (34 / 3, 0), (34 / 3, 14), (13, 30), (-13, 30), (-34 / 3, 14)]),
    ],
)  # fmt: skip
def test_pieces_of_the_front_elevation(changes, tone, ring):
    _, sheet, view = drawn("front", changes)
    assert filled(sheet, view, ring, tone)


def test_an_arch_in_front_keeps_to_its_circle():
    """36 in wide, 6 high: radius (18^2 + 6^2) / 12 = 30 in, center 24 under its spring at 24; a ring
    of 4 in. Voussoirs of about 2.6 in, 13.8 of them, an odd number: 15.
    """
    arch = {"opening.head": "segmental", "opening.rise": "6 in", "lintel.height": "4 in"}
    made, sheet, view = drawn("front", arch)
    assert made.frame.spring == pytest.approx(24 * INCH)
    material = made.by_name["arch"].material
    (ring,) = [model(view, p[0]) for (_, tone), ps in sheet.fills.items() if tone == material
               for p in ps if len(p[0]) == 50]  # fmt: skip
    radius = np.hypot(ring[:, 0], ring[:, 1])
    assert radius[:25] == pytest.approx(30) and radius[25:] == pytest.approx(34)
    assert ring[:25, 1].max() == pytest.approx(30) and ring[0] == pytest.approx((18, 24))
    joints = [model(view, h) for h in sheet.hatches if len(h) == 16 and np.ptp(h[:, 0, 0]) > 9]
    assert len(joints) == 1, "fifteen voussoirs have sixteen edges"
    ends = np.hypot(joints[0][:, :, 0], joints[0][:, :, 1])
    assert ends[:, 0] == pytest.approx(30, abs=0.06) and ends[:, 1] == pytest.approx(34, abs=0.06)
    assert {"spring line", "arch"} <= {label.text.split("  ")[-1] for label in sheet.labels}


@pytest.mark.parametrize("cell", [WHOLE, *CELLS.values()], ids=str)
@pytest.mark.parametrize("head", ["segmental", "straight"])
def test_a_head_that_runs_over_the_ceiling_stays_on_its_sheet(head, cell):
    """78 in up to the opening's top and a head of 20 over it: all of the head is drawn, up to 98 in
    and over a ceiling that is drawn 0.3 m over the opening, yet no higher than its place on the sheet.
    """
    deep = {"opening.head": head, "lintel.material": "stone", "lintel.height": "20 in"}
    deep |= {"throat.height": "20 in", "base.hearth_level": "48 in", "house.ceiling": "6 ft"}
    _, sheet, view = drawn("front", deep, cell=cell)
    drawn_to = [p[:, 1].max() for runs in sheet.lines.values() for p in map(np.asarray, runs)]
    assert max(drawn_to) <= cell.top
    heads = [model(view, p) for p in sheet.lines["seen", "ink"]]
    assert max(p[:, 1].max() for p in heads) == pytest.approx(98)


@pytest.mark.parametrize(
    ("face", "course", "unit"),
    [("brick", 2.75, 8.5), ("tile", 6, 6), ("plaster", None, None)],
)
def test_the_face_is_coursed_from_the_hearth(face, course, unit):
    """Common brick of 8 by 2-1/4 in with 1/2 in joints, as it is ordered (NAVEDTRA 14045, table 4-5:
    face 8-1/2 by 2-3/4 in); whole courses up from the hearth at 12 in.
    """
    changes = {"surround.face": face, "base.hearth_level": "12 in", "hearth.front": "0 in"}
    _, sheet, view = drawn("front", changes)
    beds, heads = [], []
    for lines in sheet.hatches:
        at = model(view, lines)
        for (ax, ay), (bx, by) in at:
            if max(abs(ax), abs(bx)) > 24 and ay < 60:  # clear of the lining's ends
                (beds if abs(ay - by) < 1e-3 else heads).append((ax, ay, bx, by))
    if course is None:
        assert not beds and not heads
        return
    levels = np.unique(np.round([b[1] for b in beds], 2))
    steps = (levels - 12) / course
    assert steps == pytest.approx(np.round(steps), abs=0.02) and len(levels) >= 5
    assert np.diff(levels) == pytest.approx(course, abs=0.02)
    places = np.round(np.array([h[0] for h in heads]) / (unit / 2), 3)
    assert places == pytest.approx(np.round(places), abs=0.01)


def test_a_face_of_coursed_stone_keeps_its_courses():
    """Level joints stray no more than 0.15 in from courses of 7, 5, 8-1/2, 6, 9, 5-1/2 and 7-1/2 in
    over the hearth, in turn, or halve a stone of a course over 6-1/2 in, within a tenth (all our
    own). No course is left without a joint.
    """
    changes = {"surround.face": "stone", "base.hearth_level": "12 in", "hearth.front": "0 in"}
    changes |= {"firebox.jamb": "24 in"}
    _, sheet, view = drawn("front", changes)
    heights = np.tile([7, 5, 8.5, 6, 9, 5.5, 7.5], 2)
    beds = 12 + np.concatenate([[0], np.cumsum(heights)])
    halves = (beds[:-1] + heights / 2)[heights > 6.5]
    found = set()
    for lines in sheet.hatches:
        for (ax, ay), (bx, by) in model(view, lines):
            beside = min(abs(ax), abs(bx)) > 24 and min(ay, by) > 14 and max(ay, by) < 60
            if not beside or abs(by - ay) > abs(bx - ax):
                continue
            for level in (ay, by):
                stray = np.abs(beds - level)
                if stray.min() < 0.16:
                    found.add(int(stray.argmin()))
                else:
                    assert np.abs(halves - level).min() < 0.9, level
    within = [k for k, level in enumerate(beds) if 15 < level < 59]
    assert len(found & set(within)) >= len(within) - 1 > 4


def test_ends_of_the_lining_show_in_a_brick_face():
    """4-1/2 in of firebrick beside the opening, 4-3/4 along the face for a splay of 4 in 12; its beds
    2-5/8 apart from the slab at -2-1/2. A finish covers them, and so does one over a brick arch.
    """
    _, sheet, view = drawn("front")
    wide = 4.5 * (1 + 1 / 9) ** 0.5
    for side in (-1, 1):
        a, b = sorted((side * 18, side * (18 + wide)))
        assert filled(sheet, view, [(a, 0), (b, 0), (b, 30), (a, 30)], "firebrick")
    levels = {
        float(z) for lines in sheet.hatches for (x, z), (to, _) in model(view, lines)
        if 17.9 < min(x, to) < max(x, to) < 18.1 + wide
    }  # fmt: skip
    wanted = [-2.5 + 2.625 * k for k in range(1, 13) if -2.5 + 2.625 * k < 30]
    assert np.unique(np.round(sorted(levels), 5)) == pytest.approx(wanted, abs=1e-3)
    arch = {"opening.head": "segmental", "opening.rise": "6 in", "surround.face": "tile"}
    made, sheet, view = drawn("front", arch)
    assert made.by_name["arch"].material == "brick"
    assert not [tone for (_, tone) in sheet.fills if tone == "brick"]
    assert any(weight == "hidden" for weight, _ in sheet.lines)


def test_lines_of_the_plan():
    """A floor of 36 in front and 22-2/3 behind, 20 deep; throat lines at 8 and 12-1/2, hidden;
    framing 3-1/2 thick, 2 in off the sides and 4 off the back.
    """
    _, sheet, view = drawn("plan")
    low = 34 / 3
    floor = [(-18, 0), (18, 0), (low, 20), (-low, 20)]
    assert filled(sheet, view, floor, "firebrick")
    for y in (8, 12.5):
        wide = 18 - y / 3
        assert has(sheet, view, [(-wide, y), (wide, y)], "hidden")
    hearth = [(-30, -20), (30, -20), (30, 0), (-30, 0)]
    assert has(sheet, view, hearth, "seen", closed=True) and filled(sheet, view, hearth, "stone")
    for ring in (
        [(-35.5, 0), (-32, 0), (-32, 36), (-35.5, 36)],
        [(35.5, 0), (32, 0), (32, 36), (35.5, 36)],
        [(-32, 32.5), (32, 32.5), (32, 36), (-32, 36)],
    ):
        assert filled(sheet, view, ring, "timber")
    bare = drawn("plan", {"hearth.front": "0 in"})
    assert has(*bare[1:], [(-18, 0), (18, 0)], "seen")


def test_lines_of_the_section():
    """Throat from 8 to 20 in at 38; the damper stands up from its front edge, open; liner joints
    from 66 up; edges of the jamb at the face.
    """
    made, sheet, view = drawn("section")
    f = made.frame
    assert has(sheet, view, [(0, 0), (0, 30)], "seen")
    assert has(sheet, view, [(8, 38), (20, 38)], "fine")
    assert has(sheet, view, [(8, 38), (8 + 4.5 * 0.35, 38 + 4.5 * 0.85)], "cut")
    flue, half = f.flue_y / INCH, f.bore.depth / 2 / INCH
    assert has(sheet, view, [(flue - half, 62), (flue + half, 62)], "fine")
    outside = f.unit_depth / INCH
    for z in (66, 66 + 24.125):
        for side in (-1, 1):
            ends = [(flue + side * half, z), (flue + side * outside, z)]
            assert has(sheet, view, ends, "seen")
    assert not has(sheet, view, [(flue + half, 66 + 48.25), (flue + outside, 66 + 48.25)], "seen")
    assert has(sheet, view, [(-20 - 0.12 / INCH, 0), (-20, 0)], "ground")
    assert has(sheet, view, [(28.5, 0), (34.5 + 0.06 / INCH, 0)], "ground")
    grade = [
        line for line in sheet.lines["ground", "ink"] if abs(model(view, line)[0, 1] + 12) < 0.01
    ]
    assert sorted(round(float(model(view, line)[0, 0]), 1) for line in grade) == [-24.7, 28.5]
    outdoors = drawn("section", {"chimney.location": "exterior"})
    assert not has(*outdoors[1:], [(28.5, 0), (34.5 + 0.06 / INCH, 0)], "ground")
    none = drawn("section", {"throat.damper": "none"})
    assert not has(*none[1:], [(8, 38), (8 + 4.5 * 0.35, 38 + 4.5 * 0.85)], "cut")
    high = drawn("section", {"throat.damper_height": "12 in"})
    assert has(*high[1:], [(8, 42), (8 + 4.5 * 0.35, 42 + 4.5 * 0.85)], "cut")


def test_refractory_sections_are_jointed_at_their_height():
    """Nine inches on beds of 1/8 in from the slab, 2 1/2 in under the hearth: at 6 5/8 straight
    through the lining, then along its lean.
    """
    _, sheet, view = drawn(
        "section",
        {
            "method": "modular",
            "firebox.lining": "refractory section",
            "firebox.section_height": "9 in",
        },
    )
    lean = 7.5 / 24
    for z in (6.625, 15.75, 24.875, 34):
        back = 20 - max(0, z - 14) * lean
        thick = 4.5 * (np.hypot(1, lean) if z > 14 else 1)
        assert has(sheet, view, [(back, z), (back + thick, z)], "fine"), z


def test_lines_of_the_roof_view():
    """Seen along the ridge, 8 in 12, ridge at 264 in and 96 in from the uphill face; eaves at 108,
    234 in either side of the ridge; the roof as drawn is 0.22 m thick.
    """
    made, sheet, view = drawn("roof")
    f = made.frame
    thick = 0.22 / INCH
    roofs = [
        model(view, p[0]) for (_, tone), ps in sheet.fills.items() if tone == "roof" for p in ps
    ]
    assert len(roofs) == 2, "left and right of the stack"
    stack = 2 * f.stack_depth / INCH
    for ring in roofs:
        for u, z in ring:
            upper = 264 - abs(96 - u) * 8 / 12
            assert min(abs(z - upper), abs(z - upper + thick)) < 0.01
            assert u <= -stack + 0.01 or u >= -0.01, "open where the chimney stands"
    left = min(ring[:, 0].min() for ring in roofs)
    assert left >= 96 - 234 - 0.01
    face = (f.flue_y - f.stack_depth) / INCH
    low, high = face - 28.5, face
    out = [
        (low, -36),
        (low - 6, -36),
        (low - 6, -48),
        (high + 6, -48),
        (high + 6, -36),
        (high, -36),
    ]
    assert has(sheet, view, out, "hidden")
    assert has(sheet, view, [(low, -36), (low, -12)], "hidden")
    assert has(sheet, view, [(high, -36), (high, -12)], "hidden")
    body = [(low, -12), (high, -12), (high, 66), (0, 78), (0, 301.25 - 2), (-stack, 301.25 - 2),
            (-stack, 78), (low, 66)]  # fmt: skip
    assert f.crown_bottom / INCH == pytest.approx(299.25)
    assert filled(sheet, view, body, "masonry")
    inset = 4.5
    crown = [(-stack - 2, 299.25), (2, 299.25), (2, 303.25), (-inset, 305.25), (-stack + inset, 305.25),
             (-stack - 2, 303.25)]  # fmt: skip
    assert filled(sheet, view, crown, "concrete")
    liner = [(-stack + inset, 305.25), (-inset, 305.25), (-inset, 307.25), (-stack + inset, 307.25)]
    assert filled(sheet, view, liner, "clay liner")
    joints = [66 + 24.125 * k for k in range(1, 10)]
    for z in joints:
        ends = [(-stack + inset, z), (-inset, z)]
        assert has(sheet, view, ends, "fine") == (z < 299.25)


@pytest.mark.parametrize("units", SYSTEMS)
def test_clearances_over_the_roof_are_what_they_say(units):
    """Crown at 305.25: 105.25 over the roof at the uphill face, 41.25 over the ridge, 8 ft off."""
    _, sheet, view = drawn("roof", {}, units)
    bars = [model(view, line) for line in sheet.lines["flag", "dimension"]
            if len(line) == 2 and abs(line[0, 0] - line[1, 0]) < 1e-9]  # fmt: skip
    spans = {tuple(np.round(np.sort(bar[:, 1]), 2)) for bar in bars}
    assert {(200.0, 305.25), (264.0, 305.25)} <= spans
    words = {label.text for label in sheet.labels}
    metric = {"2.67 m", "1.05 m", "2.44 m"}
    assert (metric if units == "millimetres" else {"8'-9 1/4\"", "3'-5 1/4\"", "8'-0\""}) <= words
    reach = [line for line in sheet.lines["dimension", "dimension"]
             if len(line) == 2 and abs(model(view, line)[0, 0] + 1 / view.scale / INCH) < 0.01]  # fmt: skip
    assert any(abs(model(view, line)[1, 0] - 96 - 1 / view.scale / INCH) < 0.01 for line in reach)


def test_what_falls_short_over_the_roof_is_said_and_inked():
    made = build_geometry(Design())
    sheet = Sheet(WIDTH, HEIGHT)
    limits = {"contact": (0.9144, "meets"), "reach": (1.5, "falls short")}
    roof(sheet, WHOLE, made, "feet-inches", limits)
    found = {label.text: label.ink for label in sheet.labels}
    assert found["required: 3'-0\""] == "dimension" and found["short of 4'-11 1/16\""] == "bad"
    assert found["3'-5 1/4\""] == "bad" and found["8'-9 1/4\""] == "dimension"
    assert sheet.lines["flag", "bad"]


def test_the_throat_drawn_large_shows_throat_chamber_and_foot_of_the_flue():
    """From 0.12 m under the opening's top to 0.22 m over the flue's start at 66 in."""
    made, sheet = build_geometry(Design()), Sheet(WIDTH, HEIGHT)
    view = detail(sheet, WHOLE, made, "feet-inches")
    found = chains(sheet, view)
    assert (0, 8, 12.5, 20, 28.5) in found[False] and (30, 38, 62, 66) in found[True]
    assert has(sheet, view, [(8, 38), (20, 38)], "fine")
    assert has(sheet, view, [(8, 38), (8 + 4.5 * 0.35, 38 + 4.5 * 0.85)], "cut")
    low, high = 30 - 0.12 / INCH, 66 + 0.22 / INCH
    solid = [model(view, p[0]) for (_, tone), ps in sheet.fills.items() for p in ps
             if tone in ("brick", "firebrick", "clay liner")]  # fmt: skip
    inside = [ring for ring in solid if ring[:, 0].max() < 29]
    assert min(ring[:, 1].min() for ring in inside) == pytest.approx(low, abs=0.01)
    assert max(ring[:, 1].max() for ring in inside) == pytest.approx(high, abs=0.01)
    words = {label.text for label in sheet.labels}
    lean = np.degrees(np.arctan(max(made.frame.chamber_slopes.values(), key=abs)))
    said = next(w for w in words if "leans" in w)
    degrees = float(re.search(r"leans (\d+) deg", said)[1])
    assert degrees == pytest.approx(np.degrees(max(made.frame.chamber_slopes.values())), abs=0.5)
    assert lean and {"lintel", "damper", "transition", "smoke shelf", "flue 13x13 liner"} <= words


def test_each_view_has_its_name_and_scale_at_its_foot():
    made = build_geometry(Design())
    for name, title in (
        ("front", "Front elevation"), ("plan", "Plan at the hearth"),
        ("section", "Section on the center line"), ("roof", "Against the roof, 10 sections"),
    ):  # fmt: skip
        sheet = Sheet(WIDTH, HEIGHT)
        DRAW[name](
            sheet, WHOLE, made, "feet-inches", scales=(20, 50, 100), name_scale="1:{:g}".format
        )
        found = {label.text: label for label in sheet.labels}
        assert (found[title].x, found[title].y, found[title].bold) == (2, 2.2, True)
        (scale,) = [label for label in sheet.labels if label.text.startswith("1:")]
        assert (scale.x, scale.ha, scale.ink) == (WIDTH - 2, "right", "soft")


def feet(sheet, window, upright, stops):
    """Where the extension lines of a string with these stops begin, across it, in inches; they stand
    0.8 mm off.
    """
    along, across = (1, 0) if upright else (0, 1)
    origin = (window.x0, window.y0)
    found = {}
    for line in sheet.lines["dimension", "dimension"]:
        if len(line) != 2 or abs(line[0, along] - line[1, along]) > 1e-9:
            continue
        place = (line[0, along] - origin[along]) / window.scale / INCH
        for stop in stops:
            if abs(place - stop) < 0.02:
                found.setdefault(stop, []).append(line[:, across])
    return found


@pytest.mark.parametrize(
    ("view", "upright", "side", "wanted"),
    [
        ("front", True, -1, {0: -30, 30: -30}),
        ("plan", True, 1, {-20: 30, 0: 35.5 + 0.02 / INCH, 20: 35.5 + 0.02 / INCH}),
        ("section", True, 1, {-48: 34.5, -36: 34.5, -6.5: 28.5, 0: 28.5, 30: 28.5, 66: 28.5}),
    ],
)
def test_extension_lines_begin_at_what_they_measure(view, upright, side, wanted):
    """In front at the breast's left edge; in plan at the framing and, before the face, at the hearth;
    in section at the back of footing and masonry.
    """
    _, sheet, window = drawn(view)
    found = feet(sheet, window, upright, wanted)
    for stop, place in wanted.items():
        start = window.x0 + place * INCH * window.scale + side * 0.8
        assert any(abs(ends[0] - start) < 0.01 for ends in found[stop]), (
            stop,
            found.get(stop),
            start,
        )


def test_extension_lines_below_the_front_and_the_plan():
    """From 0.6 mm under what is lowest in front, a hearth 2 in deep, and 0.5 under the hearth's edge
    in plan.
    """
    for view, lowest, off, stops in (
        ("front", -2, 1.4, (-30, -18, 18, 30)),
        ("plan", -20, 1.3, (-30, -18, 18, 30)),
    ):
        _, sheet, window = drawn(view)
        found = feet(sheet, window, False, stops)
        start = window.y0 + lowest * INCH * window.scale - off
        for stop in stops:
            assert any(abs(ends[0] - start) < 0.01 for ends in found[stop]), (view, stop)


def test_extension_lines_of_the_throat_drawn_large():
    """1 mm beyond the masonry's back, and 0.8 mm more; the figures stand on the line, read from the
    right.
    """
    made, sheet = build_geometry(Design()), Sheet(WIDTH, HEIGHT)
    window = detail(sheet, WHOLE, made, "feet-inches")
    found = feet(sheet, window, True, (30, 38, 62, 66))
    edge = window.x0 + 28.5 * INCH * window.scale
    for stop in (30, 38, 62, 66):
        assert any(
            ends == pytest.approx((edge + 1.8, edge + 8.8), abs=0.01) for ends in found[stop]
        ), stop
    (line,) = [at for upright, at, _ in strings(sheet) if upright]
    assert line == pytest.approx(edge + 8.0)


@pytest.mark.parametrize("view", CATALOGUE.values(), ids=lambda view: view.key)
def test_every_view_gives_its_window_back(view):
    """For whoever marks something on it: a metre of the model is so many millimetres there."""
    for changes in ({}, WORKS["arched"], {"second_flue.serves": "fireplace"}, PIECES):
        made = build_geometry(change(Design(), changes))
        if view.suits(made):
            sheet = Sheet(WIDTH, HEIGHT)
            window = view.draw(sheet, WHOLE, made, "feet-inches", scales=(20, 50, 100, 200))
            assert window.sheet is sheet and window.scale in (50, 20, 10, 5)
            return
    pytest.fail("no design has it")


@pytest.mark.parametrize(
    ("serves", "whose"), [("fireplace", "another fireplace"), ("appliance", "heating appliance")]
)
def test_the_chimneys_plan_says_whose_each_flue_is(serves, whose):
    geometry = build_geometry(change(Design(), {"second_flue.serves": serves}))
    at = {label.text: label.x for label in single("chimney", geometry, "feet-inches").labels}
    assert at["this fireplace"] < at[whose]
    left = change(geometry.design, {"second_flue.side": "left"})
    at = {
        label.text: label.x
        for label in single("chimney", build_geometry(left), "feet-inches").labels
    }
    assert at["this fireplace"] > at[whose]


@pytest.mark.parametrize("view", ["section", "plan"])
def test_behind_the_plate_of_a_steel_unit_lies_an_air_chamber(view):
    unit = change(Design(), {"firebox.lining": "steel unit"})
    for design, word in ((Design(), "lining"), (unit, "air chamber")):
        said = {label.text for label in single(view, build_geometry(design), "feet-inches").labels}
        assert {"lining", "air chamber"} & said == {word}


def test_the_bend_of_the_back_ends_at_the_arch_where_that_is_narrower():
    """36 in wide, a rise of 12: radius (18^2 + 12^2) / 24 = 19-1/2 in about a center 10-1/2 in up. At
    28 in it is 2 sqrt(19.5^2 - 17.5^2) = 17.2 in wide, less than the back of 22-2/3 in; at 20 in more.
    """
    for bend, half in ((28, sqrt(19.5**2 - 17.5**2)), (20, 34 / 3), (14, 34 / 3)):
        arch = {"opening.head": "segmental", "opening.rise": "12 in"}
        made, sheet, view = drawn("front", arch | {"firebox.vertical_back": f"{bend} in"})
        assert made.frame.spring == pytest.approx(18 * INCH)
        levels = [model(view, line) for line in sheet.lines["fine", "ink"] if len(line) == 2]
        (found,) = [line for line in levels if line[:, 1] == pytest.approx([bend, bend])]
        assert np.sort(found[:, 0]) == pytest.approx([-half, half], abs=0.06)


@pytest.mark.parametrize(
    ("bond", "heads"),
    [  # headers of 4-1/4 in with their joint, a quarter brick off; in the wall from 0 to 17 in
        ("English", ({0, 8.5, 17}, {2.125, 6.375, 10.625, 14.875})),
        ("Flemish", ({4.25, 8.5, 17}, {2.125, 10.625, 14.875})),
    ],
)
def test_head_joints_of_a_bond_stand_in_their_own_courses(bond, heads):
    geometry = build_geometry(
        change(Design(), {"surround.face": "brick", "brick.facing_bond": bond.lower()})
    )
    assert coursed_face(geometry).name == bond
    scale, origin = 10.0, (3.0, 4.0)
    wall = np.array([(-0.5, 0.1), (17.5, 0.1), (17.5, 5.4), (-0.5, 5.4)]) * INCH * scale + origin
    found = face_joints(geometry, [wall], [], origin, scale) - origin
    lines = np.round(found / scale / INCH, 2)
    level = [line for line in lines if line[0][1] == line[1][1]]
    assert len(level) == 1 and np.allclose(level[0], [(-0.5, 2.75), (17.5, 2.75)])
    for course, wanted in enumerate(heads):
        low, high = max(2.75 * course, 0.1), min(2.75 * course + 2.75, 5.4)
        stand = [a for a, b in lines if (a[1], b[1]) == pytest.approx((low, high))]
        assert sorted(x for x, _ in stand) == pytest.approx(sorted(wanted), abs=0.01)


def test_a_cut_through_nothing_leaves_the_sheet_bare():
    sheet = Sheet(100.0, 100.0)
    cut_parts(View(sheet, 0.0, 0.0, 10.0), [])
    assert not sheet.lines and not sheet.fills and not sheet.hatched


def test_a_course_without_a_block_is_not_drawn():
    unit = lay_brickwork(build_geometry(Design())).base_block.unit
    bare, laid = BlockCourse(unit, ()), block_layer((-0.4, 0.4, 0.0, 0.2), unit, 0)
    work = SimpleNamespace(
        base_block=SimpleNamespace(courses=[bare, laid, laid]),
        extension_block=SimpleNamespace(courses=[laid, bare]),
    )
    found = list(_block_courses(work))
    assert [(name, course) for name, _, course in found] == [
        ("Base block, course even", laid),
        ("Block under the hearth extension, course odd", laid),
    ]
    assert found[0][1] == pytest.approx((-0.4, 0.0, 0.4, unit.depth))
    none = SimpleNamespace(base_block=None, extension_block=None)
    assert list(_block_courses(none)) == []
