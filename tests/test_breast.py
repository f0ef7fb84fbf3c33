"""The breast in its wall: how far it stands out, what is seen of it, what that asks for."""

from collections import Counter

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import assess, change
from fireplace_calc.base.units import FOOT, INCH, InputError
from fireplace_calc.build.setting.site_plan import site_of
from fireplace_calc.design.records import Design
from fireplace_calc.design.work import Work
from fireplace_calc.drawing.composed.compose import single
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.in_room.cut_corner import least_across
from fireplace_calc.proportion import find_guides, wall_sides
from fireplace_calc.rules.tracing.follows import idle
from fireplace_calc.takeoff.facing import finish_area, shown_areas
from fireplace_calc.takeoff.share import Share
from fireplace_calc.takeoff.shares import share_out

PLASTER = {"surround.face": "plaster"}


def made(changes=None):
    return build_geometry(change(Design(), changes or {}))


def square_inches(area: float) -> float:
    return area / INCH**2


def test_returns_are_plastered_from_the_face_back_to_the_wall():
    """A face 10 in out of the wall, flue start at 66 in, a shoulder of 12 in over which the front
    draws back 3-3/8 in, the stack up to the 9 ft ceiling: both sides of that.
    """
    returns = 2 * (10 * 66 + (10 - 3.375 / 2) * 12 + (10 - 3.375) * 30)
    bare, out = made(PLASTER), made(PLASTER | {"breast.projection": "10 in"})
    assert square_inches(finish_area(out) - finish_area(bare)) == pytest.approx(returns)
    rows = [sum(s.count for s in share_out(g) if s.item == "Face plaster") for g in (bare, out)]
    assert (rows[1] - rows[0]) * 144 == pytest.approx(returns)


def test_returns_end_with_the_masonry_where_the_wall_lies_behind_it():
    """28 in out: the block is 28-1/2 in deep, so up to 66 in the wall ends the returns; over the
    shoulder's first 12 x 1/2 / 3-1/8 = 1.92 in the back, which draws in to 25-3/8 in, does; over it
    stand 25-3/8 less 3-3/8 in for 30 in.
    """
    shoulder = 28 * 1.92 + (28 + 25.375) / 2 * (12 - 1.92) - 3.375 / 2 * 12
    returns = 2 * (28 * 66 + shoulder + (25.375 - 3.375) * 30)
    bare, out = made(PLASTER), made(PLASTER | {"breast.projection": "28 in"})
    assert square_inches(finish_area(out) - finish_area(bare)) == pytest.approx(returns)


def test_a_corner_brick_is_counted_in_the_front_alone():
    """The same in brick 3-3/4 in deep (common, ``data/brick_sizes.csv``)."""
    returns = 2 * (6.25 * 66 + (6.25 - 3.375 / 2) * 12 + (6.25 - 3.375) * 30)
    bare, out = made(), made({"breast.projection": "10 in"})
    found = [sum(shown_areas(g).values()) for g in (bare, out)]
    assert square_inches(found[1] - found[0]) == pytest.approx(returns)


def test_what_has_drawn_back_behind_the_wall_is_not_seen():
    """2 in out: the front is behind the wall from 66 + 12 x 2 / 3-3/8 in on; up to there each return
    narrows from 2 in to nothing.
    """
    g = made(PLASTER | {"breast.projection": "2 in"})
    high, stack = 12 * 2 / 3.375, 2 * g.frame.stack_half / INCH
    top = 60 + (stack - 60) * 2 / 3.375
    front = 60 * 66 - 36 * 30 + (60 + top) / 2 * high
    assert square_inches(finish_area(g)) == pytest.approx(front + 2 * 2 * 66 + 2 * high)
    flush = made(PLASTER | {"breast.projection": "0 in"})
    assert square_inches(finish_area(flush)) == pytest.approx(60 * 66 - 36 * 30)


def sliced(geometry, low: float, high: float, out: float | None, corner: float) -> float:
    """Front and returns between two levels, off two hundred level cuts of the whole. [m2]"""
    area, levels = 0.0, np.linspace(low, high, 201)
    for z in (levels[:-1] + levels[1:]) / 2:
        x, y = np.concatenate([np.array(ring) for ring in geometry.outer.plan(z)[0]]).T
        if out is not None and y.min() > out:
            continue
        side = 0.0 if out is None else max(min(out, y.max()) - y.min() - corner, 0.0)
        area += (high - low) / 200 * (np.ptp(x) + 2 * side)
    return area


@settings(deadline=None)
@given(designs(), st.one_of(st.none(), st.floats(0.0, 1.0)), st.floats(6.0, 20.0))
def test_what_shows_over_the_throat_is_what_level_cuts_show(design, share, feet):
    """Against the solids themselves, cut two hundred times."""
    most = build_geometry(design).frame.block_back + (design.clearance.back or 0.0)
    out = None if share is None else round(share * most / INCH, 3)
    told = {
        "house.ceiling": f"{feet} ft",
        "breast.projection": None if out is None else f"{out} in",
    }
    try:
        g = build_geometry(change(design, told))
    except InputError:  # rounded up, over the most
        return
    f, found = g.frame, shown_areas(g)
    wall, ceiling = g.design.breast.stands_out, g.design.house.ceiling
    corner = 3.75 * INCH if design.surround.face == "brick" else 0.0
    for name, low, high in (
        ("smoke chamber walls", f.throat, f.flue_start),
        ("breast walls", f.flue_start, f.block_top),
        ("shoulder", f.block_top, f.shoulder_top),
        ("chimney walls", f.shoulder_top, f.crown_bottom),
    ):
        top = min(high, ceiling)
        wanted = sliced(g, low, top, wall, corner) if top > low else 0.0
        if f.offset and name == "chimney walls":
            continue  # a stack that leans shows one side more than the other
        assert found[name] == pytest.approx(wanted, abs=1e-2 * (1 + wanted)), name


def test_what_is_told_adds_up_and_older_designs_ask_for_the_same():
    """Unknown orders no returns; known, the volumes of a part's shares still add up to it."""
    g = made({"breast.projection": "14 in"})
    volumes = Counter()
    for share in share_out(g):
        assert isinstance(share, Share)
        volumes[share.part] += share.volume
    for part in g.parts:
        assert volumes[part.name] == pytest.approx(part.volume), part.name
    assert Design().breast.projection is None
    assert shown_areas(made()) == shown_areas(made({"breast.projection": None}))


def test_a_breast_stands_in_its_wall():
    """The plain block is 28-1/2 in deep with 4 in of air behind: 32-1/2 in at most."""
    made({"breast.projection": "32-1/2 in"})
    with pytest.raises(InputError, match="Breast projection is 2'-9\".*at most 2'-8 1/2\""):
        change(Design(), {"breast.projection": "33 in"})


def test_the_wall_of_the_room_stands_behind_the_face():
    """Twelve feet before the face, a wall 12 in behind it shows at 12/13 of its size."""
    g = made({"breast.projection": "12 in"})
    s = scene(g)
    assert s.back == pytest.approx(12 * INCH)
    (x, z), *_ = s.eye.see([(120 * INCH, s.back, 0.0)]) / INCH
    assert x == pytest.approx(120 * 12 / 13) and z == pytest.approx(64.5 / 13)
    sheet, floor = single("room", g), []
    for tone in ("room wall", "room floor"):
        ((ring,),) = sheet.fills[-10, tone]
        floor.append(np.array(ring))
    wide = np.ptp(floor[0][:, 0])
    near = np.sort(floor[1][:, 0])
    assert wide / (near[-1] - near[0]) == pytest.approx((144 - 0.75 / INCH) / 156, rel=1e-6)


@pytest.mark.parametrize("out", ["0 in", "2 in", "10 in", "28 in", "32-1/2 in"])
@pytest.mark.parametrize("view", ["room", "plan"])
@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_views_of_it_are_clean(out, view, units):
    sheet = single(view, made({"breast.projection": out}), units)
    assert collisions(sheet) == []
    if view == "plan":
        words = " ".join(label.text for label in sheet.labels)
        assert ("flush with the wall" if out == "0 in" else "out of the wall") in words


# -- how it goes up --------------------------------------------------------------------------------
STRAIGHT = {"breast.form": "straight"}


def test_a_straight_breast_is_its_block_carried_up_to_the_ceiling():
    """From 66 in, where the flue starts, to the 9 ft ceiling: 60 by 28-1/2 in, less a flue of 14-1/2
    in over its wall with 1/2 in of gap round it; the shoulder's 12 in begin over the ceiling.
    """
    plain, g = made(), made(STRAIGHT)
    part, f = g.by_name["breast walls"], g.frame
    cavity = 2 * f.cavity_half / INCH * (2 * f.cavity_depth / INCH)
    assert part.volume / INCH**3 == pytest.approx((60 * 28.5 - cavity) * (108 - 66))
    assert (part.bottom, part.top) == pytest.approx((66 * INCH, 108 * INCH))
    assert (f.block_top, f.shoulder_top) == pytest.approx((108 * INCH, 120 * INCH))
    assert part.material == g.design.chimney.masonry
    shoulder = [x.by_name["shoulder"].volume for x in (plain, g)]
    assert shoulder[1] == pytest.approx(shoulder[0])
    assert "breast walls" not in plain.by_name and plain.frame.block_top == plain.frame.flue_start


def test_it_shows_asks_for_and_weighs_the_whole_of_it():
    """Front 60 in by 108 less the opening; the weight on the footing grows by the walls that are
    added, less the stack that stood there.
    """
    plain, g = made(PLASTER), made(PLASTER | STRAIGHT)
    assert square_inches(finish_area(g)) == pytest.approx(60 * 108 - 36 * 30)
    bricks = [sum(s.count for s in share_out(x) if s.item == "Common brick") for x in (plain, g)]
    assert bricks[1] > bricks[0] + 500
    weights = [sum(s.weight for s in share_out(x)) for x in (plain, g)]
    added = sum(s.weight for s in share_out(g) if s.part == "breast walls")
    assert 0 < weights[1] - weights[0] < added
    pressed = [assess(x.design).structure.footing.load for x in (plain, g)]
    assert pressed[1] > pressed[0]


def test_under_a_low_ceiling_it_is_as_it_was():
    """The flue starts at 66 in: a ceiling under that leaves nothing to carry up."""
    low = {"house.ceiling": "6 ft", "smoke_chamber.height": "36 in"}
    plain, g = made(low), made(low | STRAIGHT)
    assert [p.name for p in g.parts] == [p.name for p in plain.parts]
    assert g.frame == plain.frame


def test_a_straight_breast_leaves_room_for_shoulder_and_crown_over_the_ceiling():
    """Eight sections of 2 ft end at 66 + 193 in; under a ceiling of 20 ft they are used up."""
    high = {"house.ceiling": "20 ft", "flue.sections": 8}
    made(high)
    with pytest.raises(InputError, match="Crown.*share the height of the flue over the ceiling"):
        change(Design(), high | STRAIGHT)


def test_a_flush_breast_stands_in_the_plane_of_its_wall():
    """Nothing stands out, whatever the projection says; solids are those of a shouldered one."""
    flush = made(PLASTER | {"breast.form": "flush", "breast.projection": "10 in"})
    nought = made(PLASTER | {"breast.projection": "0 in"})
    assert flush.design.breast.stands_out == 0.0 and flush.parts == nought.parts
    assert finish_area(flush) == finish_area(nought)
    assert "breast.projection" in idle(flush.design)
    assert "breast.projection" not in idle(nought.design)


def test_a_set_of_pieces_goes_up_straight_too():
    """Masonry round its flue, from its head to the ceiling; nothing stands in anything."""
    work = change(Design(), {"pieces.set": "middling"} | STRAIGHT)
    g = build_geometry(work)
    part, f = g.by_name["breast walls"], g.frame
    assert part.top == pytest.approx(work.house.ceiling) and part.bottom == pytest.approx(
        f.flue_start
    )
    filled = sum(p.volume for p in (*g.parts, *g.voids))
    assert filled == pytest.approx(g.outer.volume)


@pytest.mark.parametrize("form", ["straight", "flush"])
@pytest.mark.parametrize("view", ["room", "plan", "front", "section", "roof"])
@pytest.mark.parametrize("ceiling", ["7 ft", "9 ft", "14 ft"])
def test_views_of_every_form_are_clean(form, view, ceiling):
    told = {"breast.form": form, "house.ceiling": ceiling, "breast.projection": "8 in"}
    assert collisions(single(view, made(told))) == []


# -- where it stands along its wall ----------------------------------------------------------------
def test_off_the_middle_the_ends_of_the_wall_move_the_other_way():
    """A wall of 20 ft; 3 ft right of its middle there are 13 ft to the left and 7 to the right."""
    g = made({"breast.off_center": "3 ft"})
    assert wall_sides(g) == pytest.approx((-13 * FOOT, 7 * FOOT))
    assert wall_sides(made()) == pytest.approx((-10 * FOOT, 10 * FOOT))
    assert wall_sides(made({"breast.off_center": "-3 ft"})) == pytest.approx((-7 * FOOT, 13 * FOOT))
    unknown = made({"breast.off_center": "3 ft", "house.room_length": "unknown"})
    assert wall_sides(unknown)[0] == -wall_sides(unknown)[1]
    third = next(x for x in find_guides(g) if x.name == "thirds of the wall")
    assert [line[0][0] / FOOT for line in third.lines] == pytest.approx(
        [-13 + 20 / 3, -13 + 40 / 3]
    )


def test_the_room_shows_both_ends_and_says_where_it_stands():
    """All 20 ft are shown: 13 ft to the left and 7 to the right, larger by what the floor in front
    is nearer; nobody stands in the wall.
    """
    g = made({"breast.off_center": "3 ft"})
    s = scene(g)
    k = s.eye.size(-s.depth)
    assert s.whole and s.window[0][0] / FOOT == pytest.approx(-13 * k)
    assert s.window[2][0] / FOOT == pytest.approx(7 * k)
    assert (s.wall[0][0] / FOOT, s.wall[2][0] / FOOT) == pytest.approx((-13, 7))
    said = " ".join(label.text for label in single("room", g).labels)
    assert "3'-0\" right of the middle of its wall" in said
    near = scene(made({"breast.off_center": "7 ft"}))
    assert near.person[0] < -30 * INCH  # 3 ft are left at the right: he stands at the left


def test_masonry_and_hearth_end_at_the_end_of_the_wall():
    """20 ft less the 5 ft breast: 7 ft 6 in to either side; a hearth 30 in beside takes 1 ft 6 in of it."""
    made({"breast.off_center": "-90 in"})
    with pytest.raises(InputError, match="Off the middle of the wall is 7'-7\".*7'-6\""):
        change(Design(), {"breast.off_center": "91 in"})
    with pytest.raises(InputError, match="at most 6'-0\""):
        change(Design(), {"breast.off_center": "-73 in", "hearth.side": "30 in"})
    made({"breast.off_center": "91 in", "house.room_length": "unknown"})
    made({"house.room_length": "6 ft", "opening.width": "96 in"})


def test_nothing_else_moves_with_it():
    """Order, draft, clauses and weights are of the fireplace, not of its wall."""
    one, other = assess(Design()), assess(change(Design(), {"breast.off_center": "2 ft"}))
    assert [(f.key, f.verdict) for f in one.findings] == [
        (f.key, f.verdict) for f in other.findings
    ]
    assert one.takeoff == other.takeoff and one.geometry.parts == other.geometry.parts


def test_the_staging_floor_ends_at_the_nearer_end():
    """Half of 20 ft less 3 ft, to both sides."""
    house = Design().house
    assert site_of(Work(), house, 3 * FOOT).half == pytest.approx(7 * FOOT)
    assert site_of(Work(), house, -3 * FOOT).half == pytest.approx(7 * FOOT)
    assert site_of(Work(), house).half == pytest.approx(10 * FOOT)


@pytest.mark.parametrize("off", ["-90 in", "-2 ft", "4 ft", "90 in"])
@pytest.mark.parametrize("view", ["room", "plan"])
@pytest.mark.parametrize("long", ["20 ft", "60 ft", "unknown"])
def test_views_off_the_middle_are_clean(off, view, long):
    told = {"breast.off_center": off, "house.room_length": long, "breast.projection": "12 in"}
    assert collisions(single(view, made(told))) == []


def test_across_a_corner_the_wall_holds_hearth_and_seat():
    """An opening of 36 in, 40 in of hearth on either side, a seat of 12 in at the right: 2 x (18 + 40 +
    12) in, and twice as much more as it stands off the middle.
    """
    told = {"opening.width": "36 in", "hearth.side": "40 in", "seat.right": "12 in"}
    told["base.hearth_level"] = "16 in"
    made = build_geometry(change(Design(), told))
    assert least_across(made.design, made.frame) == pytest.approx(140 * INCH)
    moved = build_geometry(change(made.design, {"breast.off_center": "2 in"}))
    assert least_across(moved.design, moved.frame) == pytest.approx(144 * INCH)


def test_round_a_set_the_face_goes_on_from_the_walls_over_the_chamber():
    """Its masonry is one part: with a ceiling at the throat the walls alone show of it, with a higher one the
    breast before the chamber too.
    """
    from fireplace_calc.brickwork.seen.breast_seen import breast_shown
    from fireplace_calc.takeoff.facing import _areas_up_to

    made = build_geometry(change(Design(), {"pieces.set": "middling"}))
    throat, top = made.frame.throat, made.frame.flue_start
    walls, both = (_areas_up_to(made, level)["masonry round the set"] for level in (throat, top))
    chamber = breast_shown(made, throat, top)
    assert both - walls == pytest.approx(chamber) and min(walls, chamber) > 0.1
