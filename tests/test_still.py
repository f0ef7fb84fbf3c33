"""The still without a page: every dot shows what a ray meets, faces have their stuff's color, and
what changed is marked where it is seen.
"""

from dataclasses import replace
from io import BytesIO
from types import SimpleNamespace

import numpy as np
import pytest
from empty_room import empty_the_room
from PIL import Image

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.scene.records import FaceLayout, Standpoint, Thing
from fireplace_calc.scene.setting.furnished import room_measures
from fireplace_calc.scene.still.coat_dots import linear
from fireplace_calc.scene.still.option_pictures import (
    changed_keys,
    in_room,
    marks,
    one_standpoint,
    option_picture,
)
from fireplace_calc.scene.still.seen_dots import directions, faces_of, look
from fireplace_calc.scene.still.sight import sight_of
from fireplace_calc.scene.still.still_picture import still

LAID = load(DATA / "designs" / "boathouse-laid.toml")
SMALL = (120, 80)


@pytest.fixture
def bare(monkeypatch):
    """A room with nothing in it, and shadows of few dots: drawn in no time."""
    empty_the_room(monkeypatch)


def met(origin, ray, corners):
    """How far along a ray the nearest triangle is met: by the ray's plane and three edges, the
    textbook's way (Moeller and Trumbore, 1997), apart from the product's.
    """
    a, b, c = corners.transpose(1, 0, 2)
    across = np.cross(ray, c - a)
    turn = ((b - a) * across).sum(1)
    with np.errstate(all="ignore"):
        start = origin - a
        u = (start * across).sum(1) / turn
        other = np.cross(start, b - a)
        v = (other * ray).sum(1) / turn
        t = ((c - a) * other).sum(1) / turn
    with np.errstate(all="ignore"):
        inside = (np.abs(turn) > 1e-12) & (u >= 0) & (v >= 0) & (u + v <= 1) & (t > 0.05)
    return t[inside].min(initial=np.inf)


def test_every_dot_shows_what_a_ray_meets_within_a_millimeter():
    result = assess(LAID)
    things = in_room(result).things
    faces = faces_of(things)
    for name in ("Standing", "Seated", "Corner", "Close"):
        sight = sight_of(one_standpoint([result], name), *SMALL)
        seen = look(faces, sight)
        drawn = np.random.default_rng(3)
        rows, columns = drawn.integers(0, 80, 60), drawn.integers(0, 120, 60)
        points = sight.points(rows, columns, np.ones(60))
        for row, column, point in zip(rows, columns, points, strict=True):
            far = met(sight.stands, point - sight.stands, faces.corners)
            assert seen.away[row, column] == pytest.approx(far, abs=1e-3), (name, row, column)


def test_what_looks_at_a_point_has_it_in_the_middle():
    """A square of half a meter, two meters ahead, seen over 90 degrees: a quarter of half the
    picture's width to each side of the middle.
    """
    ring = np.array([(-0.25, 0, 0.75), (0.25, 0, 0.75), (0.25, 0, 1.25), (-0.25, 0, 1.25)])
    square = Thing("s", "s", "brick", "masonry", ring, np.array([[0, 1, 2], [0, 2, 3]]))
    sight = sight_of(Standpoint("here", (0, -2, 1), (0, 0, 1), 90.0), 160, 160)
    shown = look(faces_of((square,)), sight).face >= 0
    rows, columns = np.flatnonzero(shown.any(1)), np.flatnonzero(shown.any(0))
    assert (rows[0], rows[-1] + 1) == (70, 90) == (columns[0], columns[-1] + 1)
    assert np.allclose(look(faces_of((square,)), sight).away[shown], 2.0)


def test_a_face_that_begins_behind_the_eye_is_seen_as_far_as_it_lies_ahead():
    ring = np.array([(-9, -9, 0), (9, -9, 0), (9, 9, 0), (-9, 9, 0)], dtype=float)
    floor = Thing("f", "f", "boards", "setting", ring, np.array([[0, 1, 2], [0, 2, 3]]))
    sight = sight_of(Standpoint("here", (0, 0, 1), (0, 5, 1), 90.0), 100, 100)
    seen = look(faces_of((floor,)), sight)
    assert (seen.face[60:] >= 0).all() and (seen.face[:50] < 0).all()


def test_a_face_has_its_stuffs_color_and_loses_it_with_the_stuff(bare):
    """Brick is redder than stone, stone than tile; what only glows from the fire does not count:
    dots over the opening.
    """
    redder = {}
    for face in ("brick", "stone", "tile"):
        result = assess(change(LAID, {"surround.face": face}))
        picture = option_picture(result, one_standpoint([result]), *SMALL)
        over = [k for k, t in enumerate(picture.things) if t.key == "smoke chamber walls"]
        dots = picture.drawn.dots[np.isin(picture.drawn.owner, over)].mean(axis=0)
        redder[face] = dots[0] / dots[2]
    assert redder["brick"] > 1.3 > redder["stone"] > 1.0 > redder["tile"]


def test_the_first_face_of_all_is_lit_as_any_other():
    """A board before the fireplace, its two faces told in either order."""
    room = in_room(assess(LAID))
    eye = one_standpoint([room.result])
    corners = np.array([[-1.0, -0.7, 0.4], [1.0, -0.7, 0.4], [1.0, -0.7, 1.8], [-1.0, -0.7, 1.8]])
    faces = np.array([[0, 1, 2], [0, 2, 3]])
    one, other = (
        still((Thing("b", "board", "wood", "setting", corners, of),), room.measures, eye, *SMALL)
        for of in (faces, faces[::-1])
    )
    assert (one.owner == 0).mean() > 0.2 and (one.owner == other.owner).all()
    assert np.abs(one.dots.astype(float) - other.dots).max() <= 1


def test_a_layout_is_laid_over_its_face_unit_by_unit():
    """Two strips, one above the other, on an upright face of one meter: their border lies where the
    outline says, and it comes again after the layout's height.
    """
    ring = np.array([(-1, 0, 0), (1, 0, 0), (1, 0, 1), (-1, 0, 1)], dtype=float)
    wall = Thing("w", "w", "tile", "masonry", ring, np.array([[0, 1, 2], [0, 2, 3]]))
    strip = np.array([(0, 0), (1, 0), (1, 0.2), (0, 0.2)])
    laid = FaceLayout("tile", (-1.0, 0.0, 0.0), 1.0, 0.5, (strip,))
    room = room_measures(assess(LAID).geometry)
    sees = Standpoint("here", (0, -1.2, 0.5), (0, 0, 0.5), 80.0)
    bare, with_it = (
        still((wall,), room, sees, 100, 100, layouts).dots.astype(int) for layouts in ((), (laid,))
    )
    far = np.abs(with_it - bare).sum(axis=2)[:, 50]
    level = 0.5 + (50 - np.arange(100) - 0.5) / 100 * 2 * 1.2 * np.tan(np.radians(40))
    tile = ((level % 0.5) < 0.17) & (level > 0.03) & (level < 0.97)
    joint = ((level % 0.5) > 0.23) & (level > 0.03) & (level < 0.97)
    assert far[joint].min() > 60 > np.median(far[tile])
    away = still((replace(wall, stuff="plaster"),), room, sees, 100, 100, (laid,)).dots
    assert np.abs(away.astype(int) - still((replace(wall, stuff="plaster"),), room, sees, 100,
                                            100).dots).max() == 0  # fmt: skip


def test_what_changed_is_marked_where_it_is_seen_and_nothing_else(bare):
    before, after = assess(LAID), assess(change(LAID, {"hearth.front": "30 in"}))
    eye = one_standpoint([before, after])
    first, other = (option_picture(r, eye, *SMALL) for r in (before, after))
    assert changed_keys(first.things, first.things) == frozenset() == frozenset(marks(first, first))
    changed = changed_keys(first.things, other.things)
    assert changed and all("hearth" in key for key in changed)
    found = marks(first, other)
    assert {name for mark in found for name in mark.names} <= {
        t.name for t in other.things if t.key in changed
    }
    rows, columns = np.nonzero(
        np.isin(other.drawn.owner, [k for k, t in enumerate(other.things) if t.key in changed])
    )
    assert min(m.left for m in found) == columns.min() / 120
    assert max(m.bottom for m in found) == (rows.max() + 1) / 80


def test_the_six_largest_changes_are_marked_and_no_more():
    """Eight things that are new, one beside the other, each a column of dots wider than the one before."""
    strips = [np.full((10, n + 1), n) for n in range(8)]
    owner = np.concatenate(
        [np.concatenate([s, np.full((10, 1), -1)], axis=1) for s in strips], axis=1
    )
    things = [SimpleNamespace(key=f"k{n}", name=f"part {n}", kind="part") for n in range(8)]
    first = SimpleNamespace(things=())
    found = marks(first, SimpleNamespace(things=things, drawn=SimpleNamespace(owner=owner)))
    assert [mark.names for mark in found] == [(f"part {n}",) for n in (7, 6, 5, 4, 3, 2)]


def test_options_are_seen_from_the_farthest_of_their_standpoints():
    wide = assess(change(LAID, {"opening.width": "60 in"}))
    both = [assess(LAID), wide]
    alone = [one_standpoint([one], "Close").stands[1] for one in both]
    assert one_standpoint(both, "Close").stands[1] == min(alone) and alone[0] != alone[1]
    with pytest.raises(ValueError, match="0 options"):
        one_standpoint([])
    with pytest.raises(ValueError, match="'Cut'"):
        one_standpoint(both, "Cut")


@pytest.mark.whole
def test_the_picture_is_a_file_of_its_size():
    result = assess(LAID)
    made = option_picture(result, one_standpoint([result]), *SMALL)
    assert Image.open(BytesIO(made.png)).size == SMALL


def test_what_is_round_is_lit_as_round():
    """A drum of twelve flat faces: on one that is smooth the direction at each dot is within
    six degrees of the true drum's, on one that is not it is the face's, up to 15 degrees off.
    """
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    low, high = (np.column_stack((np.cos(turn), np.sin(turn), np.full(12, z))) for z in (0, 1))
    sides = [(k, (k + 1) % 12, (k + 1) % 12 + 12) for k in range(12)]
    sides += [(k, (k + 1) % 12 + 12, k + 12) for k in range(12)]
    flat = Thing("d", "d", "clay", "setting", np.concatenate((low, high)), np.array(sides))
    share = np.random.default_rng(1).dirichlet((1, 1, 1), len(sides))
    number = np.arange(len(sides))
    worst = {}
    for thing in (flat, replace(flat, smooth=True)):
        faces = faces_of((thing,))
        points = np.einsum("ij,ijk->ik", share, faces.corners)
        true = points * (1, 1, 0) / np.linalg.norm(points[:, :2], axis=1)[:, None]
        cosine = np.einsum("ij,ij->i", directions(faces, number, points), true)
        worst[thing.smooth] = np.degrees(np.arccos(np.clip(cosine, -1, 1))).max()
    assert worst[True] < 6 < 10 < worst[False] <= 15


@pytest.mark.parametrize("repeats", [False, True])
def test_a_dot_of_a_face_is_looked_up_where_it_lies(repeats):
    """A face of 0.5 by 0.25 m in four dots by two; past its end the last one, or where it repeats the first."""
    from types import SimpleNamespace

    from fireplace_calc.scene.still.coat_dots import _looked_up

    face = SimpleNamespace(origin=(1.0, 0.0, 2.0), width=0.5, height=0.25, repeats=repeats)
    painted = np.arange(8.0).reshape(2, 4, 1)
    points = np.array([(1.3, 0.0, 2.2), (1.01, 0.0, 2.1), (1.55, 0.0, 2.01)])
    found = _looked_up(face, painted, points, np.array((1.0, 0, 0)), np.array((0, 0, 1.0)))
    assert found[:, 0].tolist() == [6.0, 0.0, 0.0 if repeats else 3.0]


@pytest.mark.parametrize(
    ("tone", "light"),
    [
        ("#000000", 0.0),
        ("#0a0a0a", 0.0030353),
        ("#0b0b0b", 0.0033465),
        ("#808080", 0.2158605),
        ("#ffffff", 1.0),
    ],
)
def test_a_tone_sends_back_the_light_of_its_color_space(tone, light):
    """IEC 61966-2-1, sRGB: straight up to 0.04045, then to the power of 2.4; worked by hand."""
    assert linear(tone) == pytest.approx([light] * 3, abs=1e-6)
