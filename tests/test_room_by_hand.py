"""The room around the plain design worked out by hand: where the eye is, what is shown, what the
guides and the caption say. In inches where nothing else is said.
"""

from types import SimpleNamespace

import numpy as np
import pytest

from fireplace_calc import change
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.seen.coursed_rubble import rubble
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import HEIGHT, WHOLE, WIDTH
from fireplace_calc.drawing.room.eye import Block, Eye, hull
from fireplace_calc.drawing.room.guide_lines import guide_room, wrapped
from fireplace_calc.drawing.room.inside import _joints, faces
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.room.room_view import _block, room
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.hidden_lines import HiddenLines
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.proportion import NAMES, find_guides

EYE = 64.5
METER = 1 / INCH


def made(changes=None):
    return build_geometry(change(Design(), changes or {}))


def drawn(changes=None, shown=(), units="feet-inches", cell=WHOLE):
    geometry, sheet = made(changes), Sheet(WIDTH, HEIGHT)
    guides = [g for g in find_guides(geometry, units) if g.name in shown]
    return geometry, sheet, room(sheet, cell, geometry, units, guides=guides)


def inch(ring):
    return np.asarray(ring) / INCH


# -- where the eye is, and what is shown -----------------------------------------------------------
def test_the_eye_of_the_plain_room():
    """Twelve feet away; floor as far as 0.75 m before the wall; somebody 0.38 m beside a breast of
    30 and 0.45 m before it; the wall of 20 ft shown whole, all of it from floor to ceiling at that
    depth: 144 / (144 - 29.53) of its size about the eye's own height.
    """
    s = scene(made())
    assert (s.eye.away / INCH, s.eye.level / INCH) == pytest.approx((144, EYE))
    assert (s.depth, s.whole) == (0.75, True)
    assert s.person == pytest.approx((30 * INCH + 0.38, -0.45))
    k = 144 / (144 - 0.75 * METER)
    assert inch(s.window[0]) == pytest.approx((-120 * k, EYE * (1 - k)))
    assert inch(s.window[2]) == pytest.approx((120 * k, EYE + (108 - EYE) * k))
    assert inch(s.wall[2]) == pytest.approx((120, 108)) and inch(s.wall[0]) == pytest.approx(
        (-120, 0)
    )


@pytest.mark.parametrize(
    ("changes", "away", "depth", "person", "whole"),
    [
        # 10 ft deep: one foot behind the viewer
        ({"house.room_width": "10 ft"}, 108, 0.75 * METER, (30 + 0.38 * METER, -0.45), True),
        ({"house.room_width": "unknown"}, 144, 0.75 * METER, (30 + 0.38 * METER, -0.45), True),
        # 6 ft: never nearer than 1.5 m from the front edge of the floor that is shown
        ({"house.room_width": "6 ft"}, 2.25 * METER, 0.75 * METER, (30 + 0.38 * METER, -0.45), True),
        # a hearth 40 in out: 0.2 m of floor before it
        ({"hearth.front": "40 in"}, 144, 40 + 0.2 * METER, (30 + 0.38 * METER, -0.45), True),
        ({"hearth.side": "30 in"}, 144, 0.75 * METER, (48 + 0.38 * METER, -0.45), True),
        # a wall of 7 ft: no room beside the breast, so 0.3 m off its end and before the hearth
        ({"house.room_length": "7 ft"}, 144, 20 + 0.7 * METER, (42 - 0.3 * METER, -20 * INCH - 0.45), True),
        ({"house.room_length": "60 ft"}, 144, 0.75 * METER, (30 + 0.38 * METER, -0.45), False),
        ({"house.room_length": "unknown"}, 144, 0.75 * METER, (30 + 0.38 * METER, -0.45), False),
        (
            {"surround.trim": [{"place": "above", "projection": "30 in", "distance": "12 in"}]},
            144, 30 + 0.1 * METER, (30 + 0.38 * METER, -0.45), True,
        ),
    ],
)  # fmt: skip
def test_where_people_stand_and_how_much_floor_is_shown(changes, away, depth, person, whole):
    s = scene(made(changes))
    assert (s.eye.away / INCH, s.depth / INCH) == pytest.approx((away, depth))
    assert s.person == pytest.approx((person[0] * INCH, person[1])) and s.whole == whole


def test_of_a_long_wall_the_middle_is_shown_in_the_shape_of_the_sheet():
    for shape in (1.6, 2.0):
        s = scene(made({"house.room_length": "60 ft"}), shape)
        (x0, z0), (x1, z1) = s.window[0], s.window[2]
        assert (x1 - x0) / (z1 - z0) == pytest.approx(shape) and x0 == -x1
        assert inch(s.wall[2])[0] == pytest.approx(360)
    unknown = scene(made({"house.room_length": "unknown"}))
    assert unknown.wall[2][0] == pytest.approx(unknown.window[2][0] + 1)
    narrow = scene(made({"house.room_length": "60 ft"}), 0.2)
    k = 144 / (144 - 0.45 * METER)
    assert inch(narrow.window[2])[0] == pytest.approx((30 + 0.68 * METER) * k)


def test_hearth_and_mantel_stand_before_the_face():
    """A slab of 2 in on a bed of 4 and block where it is raised; a shelf as wide as the opening and its distance."""
    (flat,) = scene(made()).hearth
    assert inch([flat.left, flat.right, flat.y, flat.bottom, flat.top]) == pytest.approx(
        [-30, 30, -20, 0, 0]
    )
    base, bed, slab = scene(made({"base.hearth_level": "12 in"})).hearth
    assert inch([base.bottom, base.top, bed.bottom, bed.top]) == pytest.approx([0, 6, 6, 10])
    assert inch([slab.bottom, slab.top]) == pytest.approx([10, 12])
    assert (slab.left, slab.y) == (base.left, base.y) == pytest.approx((-30 * INCH, -20 * INCH))
    assert scene(made({"hearth.front": "0 in"})).hearth == ()
    trim = [
        {"place": "above", "distance": "7 in", "height": "2 in", "projection": "6 in"},
        {"place": "beside", "distance": "8 in", "height": "4 in", "projection": "1 in"},
    ]
    shelf, left, right = scene(made({"surround.trim": trim})).trim
    found = [inch([b.left, b.right, b.y, b.bottom, b.top]) for b in (shelf, left, right)]
    assert found[0] == pytest.approx([-25, 25, -6, 37, 39])
    assert found[1] == pytest.approx([-30, -26, -1, 0, 30])
    assert found[2] == pytest.approx([26, 30, -1, 0, 30])
    high = [{"place": "above", "distance": "40 in", "height": "5 in", "projection": "6 in"}]
    cut = scene(made({"surround.trim": high, "house.ceiling": "6 ft"})).trim
    assert cut[0].top == pytest.approx(72 * INCH)
    over = [{"place": "above", "distance": "48 in", "height": "5 in", "projection": "6 in"}]
    low = {"surround.trim": over, "house.ceiling": "6 ft"}
    assert scene(made(low)).trim == ()


# -- perspective -----------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("block", "names"),
    [
        (Block(-1, 1, -0.5, 0, 0.4), ["top", "front"]),
        (Block(-1, 1, -0.5, 2, 2.2), ["underside", "front"]),
        (Block(0.5, 1, -0.5, 1, 2), ["end", "front"]),
        (Block(-1, -0.5, -0.5, 1, 2), ["end", "front"]),
        (Block(0.5, 1, -0.5, 0, 0.4), ["top", "end", "front"]),
        (Block(-1, 1, -0.5, 1, 2), ["front"]),
        (Block(-1, 1, -0.5, 0, 0), ["top"]),
    ],
)
def test_the_sides_of_a_block_that_can_be_seen(block, names):
    """From 1.5 m up and 3 m away; the front at 0.5 m before the wall is 3 / 2.5 of its size."""
    eye = Eye(3.0, 1.5)
    found = block.faces(eye)
    assert [name for name, _ in found] == names
    for name, ring in found:
        if name == "front":
            low = np.array([(block.left, block.bottom), (block.right, block.top)])
            wanted = (low - (0, 1.5)) * 1.2 + (0, 1.5)
            assert (ring.min(axis=0), ring.max(axis=0)) == (
                pytest.approx(wanted[0]),
                pytest.approx(wanted[1]),
            )
        else:
            flat = {"top": block.top, "underside": block.bottom}.get(name)
            if flat is not None:
                assert ring[:2, 1] == pytest.approx(flat), "its edge on the wall keeps its place"
                assert sorted(ring[:2, 0]) == pytest.approx([block.left, block.right])
            else:
                inner = block.left if block.left > 0 else block.right
                assert ring[[0, 3], 0] == pytest.approx(inner)
    spots = np.concatenate([ring for _, ring in found])
    outline = block.outline(eye)
    assert (outline.min(axis=0), outline.max(axis=0)) == (
        pytest.approx(np.minimum(spots.min(axis=0), outline.min(axis=0))),
        pytest.approx(np.maximum(spots.max(axis=0), outline.max(axis=0))),
    )


def test_what_is_farther_from_the_eyes_own_line_is_painted_first():
    eye = Eye(3.0, 1.5)
    assert Block(-1, 1, -0.5, 2.0, 2.2).before(eye) == pytest.approx((0.5, 0.0))
    assert Block(-1, 1, -0.5, 0.0, 0.4).before(eye) == pytest.approx((1.1, 0.0))
    assert Block(-1, 1, -0.5, 1.0, 2.0).before(eye) == (0.0, 0.0)
    assert Block(0.4, 1, -0.5, 1.0, 2.0).before(eye) == pytest.approx((0.0, 0.4))
    assert Block(-1, -0.3, -0.5, 1.0, 2.0).before(eye) == pytest.approx((0.0, 0.3))
    assert eye.size(-0.5) == pytest.approx(1.2) and eye.meeting((1.0, 2.0, 4.0)) == (1.5, 7.5)
    square = np.array([(0, 0), (2, 0), (1, 1), (2, 2), (0, 2), (0, 1)], float)
    assert sorted(map(tuple, hull(square))) == [(0, 0), (0, 2), (2, 0), (2, 2)]


def test_the_faces_behind_the_opening_by_hand():
    """Back 22-2/3 wide to the bend at 14; throat from 8 to 12-1/2 in at 38, 36 less 2/3 of each wide;
    a rake of 7-1/2 over 24.
    """
    rings = {tone: inch(ring) for tone, ring in faces(made())}
    low, front, rear = 34 / 3, 18 - 8 / 3, 18 - 12.5 / 3
    assert rings["box back"] == pytest.approx(
        np.array([(-low, 20, 0), (low, 20, 0), (low, 20, 14), (-low, 20, 14)])
    )
    assert rings["box rake"] == pytest.approx(
        np.array([(-low, 20, 14), (low, 20, 14), (rear, 12.5, 38), (-rear, 12.5, 38)])
    )
    assert rings["box floor"] == pytest.approx(
        np.array([(-18, 0, 0), (18, 0, 0), (low, 20, 0), (-low, 20, 0)])
    )
    assert rings["box dark"] == pytest.approx(
        np.array([(-rear, 12.5, 38), (rear, 12.5, 38), (front, 8, 38), (-front, 8, 38)])
    )


def test_joints_of_the_firebrick_lie_on_their_faces():
    """Each on the floor, the back at 20 in, the rake above 14, or a side that closes in a third."""
    geometry = made()
    work, spots = lay_brickwork(geometry), [inch(part) for part in _joints(geometry)]
    floor, *rest = spots
    assert floor[:, :, 2] == pytest.approx(0)
    count = {"back": 0, "raked back": 0, "side": 0}
    for part in rest:
        x, y, z = part[..., 0], part[..., 1], part[..., 2]
        if np.abs(y - 20).max() < 0.01:
            count["back"] += 1
            assert z.min() >= -2.51 and z.max() <= 14.01, "from the slab up"
        elif np.abs(np.abs(x) - (18 - y / 3)).max() < 0.01:
            count["side"] += 1
            assert y.min() >= -0.01 and y.max() <= 20.01
        else:
            count["raked back"] += 1
            assert y == pytest.approx(20 - (z - 14) * 7.5 / 24, abs=0.01) and z.min() >= 13.99
    assert count["back"] == count["raked back"] == 1 and count["side"] % 2 == 0 < count["side"]
    assert len(rest) == len(work.lining) + count["side"] // 2
    sections = {
        "method": "modular",
        "firebox.lining": "refractory section",
        "firebox.section_height": "9 in",
    }
    joints = [inch(part) for part in _joints(made(sections)) if np.shape(part)[0] == 3]
    assert [round(float(j[0, 0, 2]), 6) for j in joints] == [
        6.625,
        15.75,
        24.875,
        34,
    ], "from the slab, 2 1/2 in under the hearth, each 9 in on a bed of 1/8 in"
    for part in joints:
        z = part[0, 0, 2]
        y = 20 - max(z - 14, 0) * 7.5 / 24
        half = 18 - y / 3
        assert part[0] == pytest.approx(np.array([(-half, y, z), (half, y, z)]))
        assert part[1] == pytest.approx(np.array([(half, y, z), (18, 0, z)]))
        assert part[2] == pytest.approx(np.array([(-half, y, z), (-18, 0, z)]))


def test_courses_of_rubble_count_from_the_hearth_and_stones_from_the_middle():
    """Beds near whole courses; no stone longer or shorter than a mason would pick, none in line with
    the one under it.
    """
    joints = inch(rubble(-1.0, 1.0, 0.0, 1.2))
    flat = joints[np.abs(joints[:, 0, 1] - joints[:, 1, 1]) < 1.5]
    upright = joints[np.abs(joints[:, 0, 0] - joints[:, 1, 0]) < 1.5]
    upright = upright[np.ptp(upright[:, :, 1], axis=1) > 2]
    assert len(flat) > 20 and len(upright) > 15
    nearest = np.abs(joints[..., 1]).min()
    assert nearest < 0.5, "a bed runs at nought"
    assert set(map(tuple, np.round(inch(rubble(-0.5, 0.5, 0.1, 0.5)), 6).reshape(-1, 4))) <= set(
        map(tuple, np.round(joints, 6).reshape(-1, 4))
    ), "a smaller wall has the same stones"


# -- on the sheet ----------------------------------------------------------------------------------
def test_the_person_is_as_tall_as_told_where_it_stands():
    """69 in, 0.45 m before the wall: 144 / (144 - 17.7) of that."""
    _, sheet, view = drawn()
    body = (sheet.fills[-1, "person"][0][0] - (view.x0, view.y0)) / view.scale / INCH
    k = 144 / (144 - 0.45 * METER)
    assert np.ptp(body[:, 1]) == pytest.approx(69 * k, abs=0.3)
    assert (body[:, 0].min() + body[:, 0].max()) / 2 == pytest.approx(
        (30 + 0.38 * METER) * k, abs=0.1
    )
    assert body[:, 1].min() == pytest.approx(EYE * (1 - k), abs=0.2)


@pytest.mark.parametrize(("units", "square"), [("feet-inches", 12.0), ("millimetres", 300 / 25.4)])
def test_the_floor_lies_in_squares_that_start_at_the_wall(units, square):
    """Square to the wall at every foot or 300 mm from the center line."""
    geometry, sheet, view = drawn({"hearth.front": "0 in"}, units=units)
    feet = set()
    for lines in sheet.hatches:
        at = (lines - (view.x0, view.y0)) / view.scale / INCH
        for a, b in at:
            low, high = (a, b) if a[1] < b[1] else (b, a)
            if abs(high[1]) < 0.01 and low[1] < -1:
                feet.add(round(float(high[0]) / square, 2))
    assert feet >= {-9.0, -8.0, 0.0, 1.0, 9.0} if square == 12 else len(feet) >= 15
    assert all(abs(n - round(n)) < 0.02 for n in feet)


CAPTIONS = [
    ({}, ["Seen from 12'-0\" away; person 5'-9\"; floor in squares of 12 in.",
          "Sizes are those in the plane of the face."]),
    ({"house.room_width": "6 ft"},
     ["Seen from 7'-4 9/16\" away, farther than the room is deep; person 5'-9\"; floor in squares of"
      " 12 in.", "Sizes are those in the plane of the face."]),
    ({"house.room_length": "unknown"},
     ["Seen from 12'-0\" away; person 5'-9\"; floor in squares of 12 in.",
      "Sizes are those in the plane of the face. Length of the wall: unknown."]),
    ({"house.room_length": "60 ft"},
     ["Seen from 12'-0\" away; person 5'-9\"; floor in squares of 12 in.",
      "Sizes are those in the plane of the face. Only the middle of the 60'-0\" wall is shown."]),
    ({"house.room_length": "6 ft", "opening.width": "60 in"},
     ["Seen from 12'-0\" away; person 5'-9\"; floor in squares of 12 in.",
      "Sizes are those in the plane of the face. The masonry is longer than the wall of 6'-0\"."]),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "said"), CAPTIONS)
def test_the_caption_says_what_the_picture_is(changes, said):
    _, sheet, _ = drawn(changes)
    found = [label for label in sheet.labels if label.ha == "right" and label.ink == "soft"]
    assert {label.text for label in found} == set(said)
    first, second = (next(x for x in found if x.text == text) for text in said)
    assert (first.x, first.y - second.y, second.y) == (
        WIDTH - 2,
        pytest.approx(4.2),
        pytest.approx(2.2),
    )


def test_a_room_in_a_small_cell_has_no_caption():
    _, sheet, _ = drawn(cell=Cell(0, 0, 150, HEIGHT))
    assert not any("Seen from" in label.text for label in sheet.labels)


def test_levels_of_the_room():
    geometry, sheet, view = drawn({"surround.trim": [{"place": "above", "distance": "12 in", "height": "2 in", "name": "shelf"}]})  # fmt: skip
    words = {t.partition("  ")[2] for t in (label.text for label in sheet.labels)}
    assert {"floor, hearth", "opening top", "eye", "ceiling", "top of shelf"} <= words
    low = {"house.ceiling": "6 ft", "base.hearth_level": "42 in"}
    assert any(label.text.endswith("ceiling, as drawn") for label in drawn(low)[1].labels)
    assert not any("top of" in label.text for label in drawn()[1].labels)


# -- guides ----------------------------------------------------------------------------------------
def test_a_guide_is_named_level_with_its_line():
    """One guide alone: its name a hair under the tip of its line, 7 mm beside the picture."""
    geometry, sheet, view = drawn(shown=("door head",))
    (label,) = [x for x in sheet.labels if x.text.startswith("door head")]
    (leader,) = [line for line in sheet.lines["dimension", "guide"]]
    tip, knee, end = leader
    assert (tip[1] - view.y0) / view.scale / INCH == pytest.approx(80)
    assert knee[1] == end[1] == label.y and label.x - end[0] == pytest.approx(0.8)
    assert 0.8 < tip[1] - label.y < 1.1
    assert label.x - knee[0] == pytest.approx(5.5)
    dots = sheet.fills[9, "guide"][0][0]
    assert dots.mean(axis=0) == pytest.approx(tip) and np.hypot(*(dots - tip).T) == pytest.approx(
        0.5
    )
    head = next(x for x in sheet.labels if x.text == "Guides, not rules")
    assert (head.x, head.y, head.bold) == (label.x, pytest.approx(HEIGHT - 3 - 2.7), True)
    short, long = (SimpleNamespace(name=name) for name in ("eye", "upper third of the wall"))
    widest = lettering.width(long.name, SMALL, bold=True)
    assert guide_room(WHOLE, [short, long], words=True) == 79
    for guides in ([short, long], [long, short], [long]):
        assert guide_room(WHOLE, guides, words=False) == pytest.approx(9 + widest)
    assert guide_room(WHOLE, [], words=True) == 4


def test_rows_of_guides_stand_a_line_apart_and_guides_a_little_more():
    """Crowded, all eight: 3.9 mm from row to row of one, 5.8 from one to the next."""
    _, sheet, _ = drawn(shown=NAMES)
    rows = [x for x in sheet.labels if x.ink == "guide" or (x.ink == "ink" and x.size == SMALL and x.va == "middle" and x.ha == "left")]  # fmt: skip
    rows = sorted((x for x in rows if x.text != "Guides, not rules"), key=lambda x: -x.y)
    inside, between = set(), []
    for upper, lower in zip(rows, rows[1:], strict=False):
        gap = round(upper.y - lower.y, 3)
        (between.append(gap) if lower.bold else inside.add(gap))
    assert inside <= {3.9} and min(between) == pytest.approx(5.8)
    assert sum(x.bold for x in rows) == 8


def test_what_a_guide_says_is_told_with_its_source_where_there_is_room():
    _, few, _ = drawn(shown=("door head",))
    assert any(x.text.startswith("Source: common practice; memory") for x in few.labels)
    assert any(x.text == "door head, from memory" for x in few.labels)
    _, small, _ = drawn(shown=("door head",), cell=Cell(0, 0, 150, HEIGHT))
    assert {x.text for x in small.labels if x.ink == "guide"} == {"Guides, not rules", "door head"}
    assert not any(x.text.startswith("Source") for x in small.labels)


def test_numbers_keep_to_their_units_when_words_wrap():
    lines = wrapped("about 1 194 mm of 30 % or 12 ft and so on", 20.0)
    assert [line.replace("\u00a0", " ") for line in lines] == [
        "about", "1 194 mm of", "30 % or", "12 ft and", "so on",
    ] or all(lettering.width(line, SMALL) <= 20.0 or " " not in line for line in lines)  # fmt: skip
    plain = [line.replace("\u00a0", " ") for line in lines]
    for kept in ("1 194 mm", "30 %", "12 ft"):
        assert any(kept in line for line in plain), kept


def test_a_block_beyond_what_is_shown_leaves_no_joint_on_the_sheet():
    """The window ends 3.83 m from the middle: of a block from 5 m on no line is drawn, of one in sight
    its front is hatched.
    """
    geometry = made({"base.hearth_level": "16 in"})
    s = scene(geometry)
    for left, seen in ((0.5, True), (5.0, False)):
        sheet = Sheet(WIDTH, HEIGHT)
        view, hidden = View(sheet, 150.0, 20.0, 30.0), HiddenLines(sheet)
        block = Block(left, left + 1.0, -0.5, 0.0, 0.4, "block")
        _block(view, hidden, geometry, block, s, [], "block", -2.0)
        hidden.lift()
        assert bool(sheet.hatches and sum(map(len, sheet.hatches))) == seen
        assert bool(sheet.lines) == seen
