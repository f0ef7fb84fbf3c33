"""One list of courses: it fills every part from bottom to top, and nothing else counts courses.

Levels are worked out here by hand, from the heights of the units alone; no value is taken from the
list itself.
"""

import re
from collections import defaultdict
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from set_strategies import random_set
from strategies import designs
from test_pieces_random import designed

from fireplace_calc import load
from fireplace_calc.base.printing import show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.courses import course_list, odd_courses
from fireplace_calc.brickwork.courses.gauged import CUT, even_bed, gauged
from fireplace_calc.brickwork.courses.of_block import block_courses
from fireplace_calc.brickwork.courses.of_brick import BY_ITSELF, WALLS
from fireplace_calc.brickwork.courses.of_sections import FLUES
from fireplace_calc.brickwork.seen.coursing_of_face import (
    bonded_units,
    coursed_face,
    face_joint_widths,
)
from fireplace_calc.build.lift_parts import set_level
from fireplace_calc.build.order import order_of_work
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.face import face_joints
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.pieces.roles import PARTS
from fireplace_calc.takeoff import share_out

DATA = Path(__file__).parents[1] / "data"
LOWEST = 2 * INCH
EIGHTH, SIXTEENTH = INCH / 8, INCH / 16
UPRIGHT = settings(deadline=None, suppress_health_check=list(HealthCheck))


def few(examples):
    """So many random designs, where drawing or laying each takes longer."""
    return settings(UPRIGHT, max_examples=examples)


MODULAR = {"method": "modular", "firebox.lining": "refractory section"}


def made(**changes):
    return build_geometry(change(Design(), {k.replace("__", "."): v for k, v in changes.items()}))


def test_sections_stand_each_on_its_bed_by_hand():
    # 2 x (1/8 + 24) = 48 1/4; the third begins at 48 3/8 and is cut at 50.
    found = gauged("flue liner", "section", 0.0, 50 * INCH, 24 * INCH, EIGHTH)
    assert [round(c.bottom / INCH, 6) for c in found] == [0.125, 24.25, 48.375]
    assert [c.cut for c in found] == [False, False, True]
    assert [c.number for c in found] == [1, 2, 3]


def test_a_rest_too_thin_to_cut_is_no_course():
    two = 2 * 24.125 * INCH
    assert len(gauged("p", "section", 0.0, two + EIGHTH, 24 * INCH, EIGHTH)) == 2
    assert len(gauged("p", "section", 0.0, two + 2 * EIGHTH, 24 * INCH, EIGHTH)) == 2
    assert len(gauged("p", "section", 0.0, two + 3 * EIGHTH, 24 * INCH, EIGHTH)) == 3


def test_beds_even_out_a_wall_but_not_a_low_one():
    # 38 courses of 2 1/4 in in 100 in: 100 / 38 - 2.25 = 0.38158 in.
    assert even_bed(100 * INCH, 2.25 * INCH, 0.375 * INCH) == pytest.approx(
        (100 / 38 - 2.25) * INCH
    )
    # 4 courses in 12 in would take beds of 3/4, 5 of 0.15 in.
    assert even_bed(12 * INCH, 2.25 * INCH, 0.375 * INCH) is None


@UPRIGHT
@given(designs())
def test_courses_fill_every_part(design):
    geometry = build_geometry(design)
    found = course_list(geometry)
    for name in found.parts:
        courses = found.of(name)
        assert [c.number for c in courses] == list(range(1, len(courses) + 1)), name
        assert {c.part for c in courses} <= {name}
        for one in courses:
            assert one.top > one.bottom, one
            assert one.note or (not one.cut and one.height >= LOWEST), one
            assert one.along == 0.0 or one.along > one.height
        for low, high in pairwise(courses):
            assert high.bottom - low.top == pytest.approx(high.bed, abs=1e-9), (low, high)
        if name in WALLS or name == "facing" or not courses:
            continue
        part = geometry.by_name[name]
        assert courses[0].bottom - courses[0].bed == pytest.approx(part.bottom, abs=1e-9)
        # Over the last one no more is left than a bed and what is too thin to be cut.
        assert -SIXTEENTH <= part.top - courses[-1].top <= courses[-1].bed + EIGHTH + SIXTEENTH


@UPRIGHT
@given(designs())
def test_walls_of_one_unit_run_through(design):
    geometry = build_geometry(design)
    found = course_list(geometry)
    walls = [name for name in WALLS if found.of(name)]
    of_kind: dict[str, list] = {}
    for name in walls:
        for course in found.of(name):
            of_kind.setdefault(course.kind, []).append(course)
    for courses in of_kind.values():
        for low, high in pairwise(courses):
            assert high.bottom - low.top == pytest.approx(high.bed, abs=1e-9)


@UPRIGHT
@given(designs())
def test_the_face_is_set_out_from_the_hearth(design):
    geometry = build_geometry(change(design, {"surround.face": "brick"}))
    face = course_list(geometry).of("facing")
    hearth = geometry.frame.hearth
    assert face and face[0].bottom < face[-1].top <= geometry.design.house.ceiling + 1e-9
    above = [c for c in face if c.bottom > hearth - 1e-9]
    step = above[0].top - hearth if not above[0].cut else above[0].height + above[0].bed
    for k, course in enumerate(above):
        if not course.cut:
            assert course.top == pytest.approx(hearth + (k + 1) * step)
    assert sum(c.cut for c in face) <= 2
    assert all(c.number in (1, len(face)) for c in face if c.cut)


def test_stone_and_plaster_have_no_courses():
    for face in ("stone", "plaster"):
        assert "facing" not in course_list(made(surround__face=face)).parts


def test_the_list_is_made_once():
    geometry = made()
    assert course_list(geometry) is course_list(geometry)


def test_a_leaning_piece_is_higher_than_its_course():
    geometry = build_geometry(change(Design(), {**MODULAR, "firebox.section_height": "9 in"}))
    f = geometry.frame
    courses = course_list(geometry).of("firebox lining")
    raked = [c for c in courses if c.bottom > f.back_bend]
    assert raked
    lean = (f.depth - f.throat_back) / (f.throat - f.back_bend)
    for one in raked:
        assert one.piece == pytest.approx(one.height * (1 + lean**2) ** 0.5)
        assert "along the slope" in one.note
    assert courses[0].piece == pytest.approx(courses[0].height)


def said(units="feet-inches", **changes):
    return odd_courses(made(**changes), units)


def test_what_comes_out_odd_is_told():
    """By hand: opening 30 in on courses of 2 2/3 in is 11 courses and 2/3 in over."""
    plain = {"surround__face": "brick", "brick__facing": "modular"}
    told = said(**plain, opening__standard_height="30 in")
    assert any("hearth to head it is 11 courses and 11/16" in one for one in told), told
    even = said(**plain, opening__standard_height="32 in")  # 12 courses
    assert not any("hearth to head" in one for one in even)
    # 12 in from floor to hearth is 4 courses and 1 1/3 in.
    raised = said(**plain, base__hearth_level="12 in", opening__standard_height="32 in")
    assert any("floor to hearth it is 4 courses and 1 5/16" in one for one in raised), raised
    level = said(**plain, base__hearth_level="8 in", opening__standard_height="32 in")
    assert not any("floor to hearth" in one for one in level)


def test_a_cut_lining_course_is_told_with_what_makes_it_whole():
    """By hand: from slab to throat 2 1/2 + 30 + 8 = 40 1/2 in; five sections of 8 in on beds of
    1/8 in rise 40 5/8 in, so the fifth is 7 7/8 in high, 1/8 in short.
    """
    modular = {"method": "modular", "firebox__lining": "refractory section"}
    changes = {"opening__standard_height": "30 in", "throat__height": "8 in"}
    told = said(**modular, **changes, firebox__section_height="8 in")
    assert any(
        'course 5, the top one, is cut to 7 7/8"' in one and '1/8" higher' in one for one in told
    ), told
    lower = said(**modular, **changes, firebox__section_height="7-31/32 in")
    assert not any("Firebox lining" in one for one in lower), lower


@pytest.mark.parametrize(
    ("height", "lining"),
    [
        *((40.5, {"firebox__section_height": f"{high} in"}) for high in (48, 36, 24, 12, 9)),
        (40.75, {"method": "laid", "firebox__lining": "firebrick"}),
        (40.5, {"method": "laid", "firebox__lining": "none"}),
    ],
)
def test_a_throat_moved_as_told_leaves_no_course_cut(height, lining):
    """Whatever the lining is of, and were its only course cut: as much higher or lower as the
    sentence says, and it has nothing left to say of a cut course. Of one section of 48 in on its bed
    of 1/8 under 40 1/2 in: 7 5/8 in higher.
    """
    usual = {"method": "modular", "firebox__lining": "refractory section", **lining}

    def told(high):
        """What is said of the lining, with so much from slab to throat. [in]"""
        opening = min(max(high - 10.5, 16), 60)
        split = {"opening__standard_height": opening, "throat__height": high - 2.5 - opening}
        heights = {name: f"{value} in" for name, value in split.items()}
        return [one for one in said(**usual, **heights) if one.startswith("Firebox lining: c")]

    (one,) = told(height)
    higher, lower = re.search(r"throat (\S.*) higher, .* the throat (\S.*) lower", one).groups()
    assert told(height + to_si(higher, "length") / INCH) == []
    if (low := height - to_si(lower, "length") / INCH) > 24:
        assert told(low) == []
    if lining.get("firebox__section_height") == "48 in":
        assert higher == '7 5/8"'


def test_joints_of_the_lining_are_evened_up_to_a_quarter_inch():
    """Joints between firebricks are no wider than 1/4 in (IRC R1001.5): nine courses of 2 1/2 in
    with their beds fill 24 3/4 in with joints of just that; 1/16 in more is no longer offered.
    """
    laid = {"method": "laid", "throat__height": "6-1/4 in"}
    at, over = (said(**laid, opening__standard_height=f"{high} in") for high in (16, 16.0625))
    assert any('9 whole ones come out with joints of 1/4"' in one for one in at), at
    assert not any("whole ones come out" in one for one in over), over
    assert any("It is whole with the throat" in one for one in over), over


def test_every_sentence_is_short():
    for one in (*said(), *said("millimetres", firebox__rake="6 in", flue__offset="10 in")):
        for sentence in one.split(". "):
            assert len(sentence.split()) <= 24, sentence


def test_a_sets_stack_stands_flush_where_a_mere_edge_is_left():
    """By hand: the boathouse's stack stands 1 1/2 in behind its face; a wall 1 in thicker leaves
    1/2 in, and is drawn thicker by that, front and back.
    """
    shipped = load(DATA / "designs" / "boathouse.toml")
    usual = build_geometry(shipped).frame
    assert usual.flue_y - usual.stack_depth == pytest.approx(1.5 * INCH)
    thick = build_geometry(change(shipped, {"chimney.wall": "5 in"})).frame
    assert thick.flue_y == pytest.approx(thick.stack_depth)
    assert any("flush with the breast" in one for one in thick.adjusted)
    assert usual.adjusted == ()


# -- what is drawn, counted and lifted --------------------------------------------------------------
def levels_drawn(view, sheet, left, right):
    """Levels of level lines on a sheet that run between two places along it. [m]"""
    found = set()
    for (weight, _), lines in sheet.lines.items():
        for line in lines if weight in ("fine", "seen") else ():
            (ax, az), (bx, bz) = (np.asarray(line)[[0, -1]] - (view.x0, view.y0)) / view.scale
            if len(line) == 2 and abs(az - bz) < 1e-6 and left <= (ax + bx) / 2 <= right:
                found.add(round(float(az), 5))
    return found


@few(25)
@given(designs())
def test_flue_and_lining_are_drawn_where_the_list_has_them(design):
    """Joints on the section: no other between two units of liner or lining, none missing."""
    design = change(design, {"firebox.lining": "refractory section"})
    geometry = build_geometry(design)
    sheet = Sheet(400.0, 300.0)
    view = section(sheet, Cell(0.0, 0.0, 400.0, 300.0), geometry, "feet-inches")
    f, found = geometry.frame, course_list(geometry)
    top = max(z for z in levels_drawn(view, sheet, -9.0, 9.0))
    inside, half = f.bore.depth / 2, f.unit_depth
    flue = levels_drawn(view, sheet, f.flue_y + inside + 1e-6, f.flue_y + half - 1e-6)
    wanted = {round(c.top, 5) for c in found.of("flue liner")[:-1] if c.top < top}
    assert {z for z in wanted if not near(z, flue)} == set()
    drawn = levels_drawn(view, sheet, f.throat_back, f.depth + design.firebox.lining_thickness * 2)
    for course in found.of("firebox lining")[:-1]:
        if f.hearth + 1e-5 < course.top < f.throat - 1e-5:
            assert near(course.top, drawn), course


def near(level, levels):
    return any(abs(level - other) < SIXTEENTH / 2 for other in levels)


@few(40)
@given(designs())
def test_count_of_the_order_is_that_of_the_list(design):
    geometry = build_geometry(change(design, {"firebox.lining": "refractory section"}))
    found, count = course_list(geometry), defaultdict(float)
    for share in share_out(geometry):
        count[share.part, share.item] += share.count
    item = "Clay flue liner" if design.method == "laid" else "Flue section"
    assert count["flue liner", item] == len(found.of("flue liner")) == design.flue.sections
    if geometry.frame.second is not None:
        second = count["second flue liner", f"Second {item[0].lower()}{item[1:]}"]
        assert second == len(found.of("second flue liner"))
    backs = count["firebox lining", "Firebox back section"]
    sides = count["firebox lining", "Firebox side section"]
    number = len(found.of("firebox lining"))
    assert backs % number == sides % (2 * number) == 0
    assert backs > 0 and sides > 0


@few(20)
@given(designs())
def test_firebrick_is_laid_in_the_courses_of_the_list(design):
    """The side of the firebox, brick by brick: every piece within one course, no course without."""
    laid = change(
        design, {"method": "laid", "firebox.lining": "firebrick", "firebox.bond": "running"}
    )
    geometry = build_geometry(laid)
    courses = course_list(geometry).of("firebox lining")
    side = lay_brickwork(geometry).lining[-1]
    seen = set()
    for piece in side.pieces:
        heights = [z for _, z in piece.ring]
        mine = [
            c for c in courses if c.bottom - 1e-6 <= min(heights) and max(heights) <= c.top + 1e-6
        ]
        assert len(mine) == 1, (piece, courses)
        seen.add(mine[0].number)
    assert seen == {c.number for c in courses}


@few(20)
@given(designs())
def test_lifts_end_at_joints_of_the_list(design):
    geometry = build_geometry(design)
    found = course_list(geometry)
    for lift in order_of_work(geometry).lift_parts:
        if lift.part in FLUES:
            ends = [geometry.by_name[lift.part].top, *(c.top for c in found.of(lift.part))]
            assert near(lift.high, ends), lift


def test_a_sets_pieces_stand_in_the_list_as_they_are_counted():
    geometry = build_geometry(load(DATA / "designs" / "boathouse.toml"))
    found = course_list(geometry)
    flues = [s for s in share_out(geometry) if s.part == "flue casing" and s.count]
    assert len(found.of("flue casing")) == sum(s.count for s in flues)
    for name in PARTS:
        for low, high in pairwise(found.of(name)):
            assert high.bottom - low.top == pytest.approx(high.bed, abs=1e-9)
            assert high.bed >= SIXTEENTH


@few(20)
@given(designs(), st.sampled_from(["brick", "tile"]))
def test_the_face_is_drawn_and_lit_on_the_levels_of_the_list(design, face):
    """Every bed joint of the elevation is the top of a course, and every unit of the lit face
    stands between foot and head of one.
    """
    geometry = build_geometry(change(design, {"surround.face": face}))
    courses = [c for c in course_list(geometry).of("facing") if not c.cut]
    hearth, low, high = geometry.frame.hearth, courses[0].bottom, courses[-1].top
    wall = np.array([(-1.0, low), (1.0, low), (1.0, high + 1e-6), (-1.0, high + 1e-6)]) * 1000
    lines = face_joints(geometry, [wall], [], (0.0, hearth * 1000), 1000.0) / 1000
    level = np.abs(np.ptp(lines[..., 1], axis=1)) < 1e-9
    beds, tops = np.unique(np.round(lines[level][:, 0, 1], 5)), np.array([c.top for c in courses])
    away = np.abs(beds[:, None] - tops).min(axis=1)
    assert away.max() < 1e-4 and len(beds) >= len(tops) - 1
    rows = bonded_units(coursed_face(geometry), face_joint_widths(geometry), 1, 3)
    for ring in rows:
        z = hearth + ring[:, 1]
        assert any(
            abs(z.min() - c.bottom) < 1e-6 and abs(z.max() - c.top) < 1e-6
            for c in courses
            if c.bottom > hearth - 1e-9
        )


@few(20)
@given(designs())
def test_walls_stop_on_a_bed_of_the_list(design):
    """At each staging floor; but where something is set in, or another part begins, they stop there."""
    geometry = build_geometry(design)
    found, lifts = course_list(geometry), order_of_work(geometry).lift_parts
    tops = [c.top for name in ("base walls", *WALLS) for c in found.of(name)]
    other = [level for part in geometry.parts for level in (part.bottom, set_level(part))]
    for lift in lifts:
        coursed = lift.part in WALLS and found.of(lift.part)
        if coursed and lift.number < lift.of:
            assert near(lift.high, [*tops, *other]), lift


def test_pieces_of_random_sets_stand_in_the_list():
    """As many courses of a part as lifts with its pieces, each over the one below; flue pieces are
    as many as the set takes; the lining is laid from the top of the base plates.
    """
    built = 0
    for seed in range(24):
        design = designed(replace(random_set(seed), lining=seed % 2))
        if design is None:
            continue
        built += 1
        geometry = build_geometry(design)
        found, assembly = course_list(geometry), set_up(design).assembly
        for name, roles in PARTS.items():
            lifts = {p.lift for p in assembly.placed if p.piece.role in roles}
            courses = found.of(name)
            assert len(courses) == len(lifts), (seed, name)
            assert all(c.bottom - c.bed >= b.bottom for b, c in pairwise(courses)), (seed, name)
        if courses := found.of("firebox lining"):
            first = courses[0]
            assert first.bottom - first.bed == pytest.approx(geometry.frame.slab_top, abs=1e-9)
    assert built >= 4


def test_a_bed_is_evened_up_to_half_an_inch_and_no_further():
    """Two courses of 2 1/4 in in 5 1/2 in take beds of 1/2 in; in 5 5/8 in they would take 9/16."""
    unit, bed = 2.25 * INCH, 0.375 * INCH
    assert even_bed(5.5 * INCH, unit, bed) == pytest.approx(0.5 * INCH)
    assert even_bed(5.625 * INCH, unit, bed) is None
    # A bed of 3/4 in was chosen: it may be a sixteenth more.
    assert even_bed(6.0625 * INCH, unit, 0.75 * INCH) == pytest.approx(0.78125 * INCH)


@pytest.mark.parametrize(("left", "filled"), [(1 / 32, False), (1 / 8, True), (1 / 2, True)])
def test_what_is_left_over_block_is_filled_with_mortar(left, filled):
    """Two blocks of 7 5/8 in on beds of 3/8 in reach 16 in; a sixteenth is no gap to fill."""
    coursing = SimpleNamespace(pieces=[("block", 7.625 * INCH)] * 2, tops=[8 * INCH, 16 * INCH])
    found = block_courses("base walls", 0.0, (16 + left) * INCH, coursing)
    assert [c.kind for c in found] == ["block", "block"] + ["fill"] * filled
    assert not filled or found[-1].height == pytest.approx(left * INCH)


@pytest.mark.parametrize(
    ("ceiling", "highest"), [("96-7/8 in", 2.25), ("97-1/2 in", 97.5 - 96 - 2.6667 + 2.25)]
)
def test_no_course_of_a_face_is_lower_than_three_quarters_of_an_inch(ceiling, highest):
    """From a hearth at 8 in, 33 courses of 2 2/3 in reach 96 in. Over their bed of 0.4167 in 0.458 in
    are left under the first ceiling, which is no course, and 1.083 in under the second.
    """
    face = course_list(
        made(
            surround__face="brick",
            brick__facing="modular",
            base__hearth_level="8 in",
            house__ceiling=ceiling,
        )
    ).of("facing")
    assert face[-1].height / INCH == pytest.approx(highest, abs=1e-3)


def test_a_course_over_the_end_of_its_part_says_so():
    geometry = made()
    found = course_list(geometry)
    over = 0
    for name in WALLS:
        for course in found.of(name):
            goes_on = course.top > geometry.by_name[name].top + EIGHTH
            assert ("go on into the next part" in course.note) == goes_on
            over += goes_on
    assert over


def test_beside_the_raked_back_a_course_is_of_the_sides_only():
    """From the one that the bend lies in: the level of the bend is under its top."""
    geometry = made()
    lining = course_list(geometry).of("firebox lining")
    bend = geometry.frame.back_bend
    assert any(c.bottom < bend < c.top for c in lining)
    assert lining[-1].cut
    for course in lining:
        said = [CUT] * course.cut + [BY_ITSELF] * (course.top > bend)
        assert course.note == "; ".join(said)


def test_a_section_that_leans_with_the_flue_is_longer_by_its_slope():
    """18 in aside in 36 in of rise: a section of 12 in is 12 sqrt(1 + 1/4) = 13.416 in long."""
    geometry = made(flue__offset="18 in", flue__offset_rise="36 in", flue__section_height="12 in")
    f = geometry.frame
    within = 0
    for course in course_list(geometry).of("flue liner"):
        if f.offset_bottom <= course.bottom and course.top <= f.offset_top:
            assert course.piece / INCH == pytest.approx(13.416, abs=1e-3)
            within += 1
        elif course.bottom >= f.offset_top or course.top <= f.offset_bottom:
            assert course.piece == pytest.approx(course.height)
    assert within


def test_how_much_lower_a_cut_course_falls_away():
    """A course of 7 7/8 in on its bed of 1/8 in is not needed with the throat 8 in lower."""
    told = said(
        method="modular",
        firebox__lining="refractory section",
        opening__standard_height="30 in",
        throat__height="8 in",
        firebox__section_height="8 in",
    )
    assert any('not needed with the throat 8" lower' in one for one in told), told


def test_a_piece_of_a_section_rises_less_than_its_height_on_the_rake():
    """9 in over ``sqrt(1 + lean^2)``; the lean from where the back bends to the throat."""
    geometry = build_geometry(change(Design(), {**MODULAR, "firebox.section_height": "9 in"}))
    f = geometry.frame
    lean = (f.depth - f.throat_back) / (f.throat - f.back_bend)
    rise = show(9 * INCH / (1 + lean**2) ** 0.5, "length", "feet-inches")
    told = odd_courses(geometry, "feet-inches")
    assert any(f'A piece of 9" rises {rise}.' in one for one in told), told


def test_the_shoulder_is_counted_from_the_hearth():
    """Hearth 12 in, shoulder at 78 in: 66 in are 24 courses of 2 2/3 in and 2 in."""
    changes = dict(surround__face="brick", brick__facing="modular", base__hearth_level="12 in")
    assert made(**changes).frame.block_top / INCH == pytest.approx(78.0)
    told = said(**changes, house__ceiling="120 in")
    assert any('hearth to shoulder it is 24 courses and 2" of' in one for one in told), told


def test_one_course_alone_has_the_bed_that_is_left():
    """2-1/4 in of brick in 2-5/8 in: one course on 3/8; in 1 in nothing fits."""
    assert even_bed(2.625 * INCH, 2.25 * INCH, 0.375 * INCH) == pytest.approx(0.375 * INCH)
    assert even_bed(1.0 * INCH, 2.25 * INCH, 0.375 * INCH) is None


@pytest.mark.parametrize("name", ["small", "middling", "wide"])
def test_courses_of_a_set_lie_where_their_part_does(name):
    """The middling set by hand, in inches from the hearth (``test_pins_set``): three courses of 10 on
    beds of 3/8, the first from -2-1/2.
    """
    geometry = build_geometry(change(Design(), {"pieces.set": name, "base.hearth_level": "14 in"}))
    walls, part = course_list(geometry).of("firebox walls"), geometry.parts_by_name["firebox walls"]
    assert walls[0].bottom - walls[0].bed == pytest.approx(part.bottom)
    assert walls[-1].top == pytest.approx(part.top)
    if name == "middling":
        hearth = geometry.frame.hearth
        ends = [(end - hearth) / INCH for one in walls[:3] for end in (one.bottom, one.top)]
        assert ends == pytest.approx([-2.125, 7.875, 8.25, 18.25, 18.625, 28.625])


def test_a_low_hearth_cuts_the_lowest_course_of_the_face():
    """1-1/4 in to the hearth less a joint of 1/2 in; at 12 in the lowest is whole."""
    brick = dict(surround__face="brick", brick__facing="common")
    low, high = (said(**brick, base__hearth_level=level) for level in ("1-1/4 in", "12 in"))
    assert any('The lowest course is cut to 3/4".' in one for one in low), low
    assert any("From floor to hearth" in one for one in high), high
    assert not any("lowest course" in one for one in high), high


@pytest.mark.parametrize("firebox", ["solid units", "hollow grouted solid"])
def test_walls_on_each_other_are_coursed_as_one(firebox):
    """From the lowest wall's foot to the top of the chimney one course lies on the other, each in the
    wall in which it begins; of a firebox 40-1/2 in high 14 whole courses of 2-3/4 in and one begun.
    """
    geometry = build_geometry(change(Design(), {"firebox.masonry": firebox}))
    walls = [geometry.parts_by_name[name] for name in (
        "firebox walls", "smoke chamber walls", "shoulder", "chimney walls")]  # fmt: skip
    listed = course_list(geometry)
    kinds = {listed.of(part.name)[0].kind for part in walls}
    for kind in kinds:
        run = [part for part in walls if listed.of(part.name)[0].kind == kind]
        level = run[0].bottom
        for part in run:
            for one in listed.of(part.name):
                assert one.bottom - one.bed == pytest.approx(level, abs=1e-9)
                assert part.bottom - 1e-6 <= level < part.top
                level = one.top
        assert level == pytest.approx(run[-1].top, abs=INCH)
    if firebox == "solid units":
        assert len(kinds) == 1 and len(listed.of("firebox walls")) == 15


def test_courses_of_a_set_are_numbered_from_one():
    geometry = build_geometry(change(Design(), {"pieces.set": "small"}))
    listed = course_list(geometry)
    numbers = {
        part.name: [one.number for one in listed.of(part.name) if one.kind == "piece"]
        for part in geometry.parts
    }
    assert any(len(of_part) > 1 for of_part in numbers.values())
    assert all(found == [*range(1, len(found) + 1)] for found in numbers.values())


@pytest.mark.parametrize(
    ("ceiling", "told"),
    [
        ("96-5/8 in", "{} is left: take it up in the beds."),
        ("97-1/2 in", "the top course of face brick is cut to {}."),
    ],
)
def test_under_the_ceiling_a_course_is_cut_or_a_rest_is_left(ceiling, told):
    """As above: 5/8 in are left over the 33rd course under the first ceiling; under the second a
    course of 1-1/16 in goes in.
    """
    sentences = said(
        surround__face="brick",
        brick__facing="modular",
        base__hearth_level="8 in",
        house__ceiling=ceiling,
    )
    rest = '5/8"' if "left" in told else '1 1/16"'
    (top,) = [one for one in sentences if "Under the ceiling" in one]
    assert told.format(rest) in top


def test_a_second_flue_that_ends_higher_is_told_with_its_cut_section():
    """Three inches over the first, which ends whole: a joint of 1/8 in and 2-7/8 in of a section."""
    serves = {"second_flue__serves": "fireplace"}
    assert not [one for one in said(**serves) if one.startswith("Second flue")]
    (told,) = [one for one in said(**serves, second_flue__top="3 in") if "Second flue" in one]
    assert told.endswith('the top one, is cut to 2 7/8".')
    # One inch more leaves 7/8 in: that and the section under it are cut alike, (24 + 7/8) / 2 in.
    (both,) = [one for one in said(**serves, second_flue__top="1 in") if "Second flue" in one]
    assert "10 and 11, the top ones, are both cut to 1'-0 7/16\"" in both
