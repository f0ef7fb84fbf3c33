"""The fireplace in its room: clean sheets, true sizes in the plane of the face, true perspective
before and behind it.
"""

import itertools

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from sampled import sampled
from strategies import designs
from test_drawing_reuse import MOVES, content

from fireplace_calc import assess, change
from fireplace_calc.base.units import INCH, SYSTEMS, InputError
from fireplace_calc.brickwork.seen.coursed_rubble import rubble
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import (
    HEIGHT,
    WHOLE,
    WIDTH,
    draw_view,
    reads,
    view_sheet,
)
from fireplace_calc.drawing.composed.live import live_views
from fireplace_calc.drawing.room.eye import Block, Eye, hull
from fireplace_calc.drawing.room.inside import _over, faces, lit_ring
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.room.room_view import room
from fireplace_calc.drawing.sheets.hidden_lines import clipped, clipped_each
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.front_elevation import opening_ring
from fireplace_calc.geometry.polygons import area
from fireplace_calc.proportion import NAMES, find_guides

ENDS = [
    {"opening.width": w, "opening.extension": e, "base.hearth_level": h}
    for w, e, h in itertools.product(
        ("20 in", "42 in", "96 in"), ("0 in", "24 in"), ("0 in", "18 in")
    )
]
LOOKS = [
    {"surround.face": "stone", "opening.head": "segmental"},
    {"surround.face": "tile", "lintel.material": "stone"},
    {"surround.face": "plaster", "house.room_length": "unknown", "house.room_width": "unknown"},
    {"house.room_length": "6 ft", "house.room_width": "6 ft", "house.ceiling": "6 ft"},
    {"house.room_length": "100 ft", "house.ceiling": "40 ft"},
    {"base.hearth_level": "48 in", "opening.standard_height": "60 in"},
    {"hearth.front": "72 in", "hearth.side": "48 in"},
    {"hearth.front": "0 in"},
    {"throat.height": "1 in", "lintel.height": "1 in", "base.hearth_level": "4 ft"},
    {"hearth.drop": "6 in", "base.hearth_level": "12 in"},
    {"flue.offset": "40 in"},
]
SMALL_CELL = Cell(0.0, 93.0, 150.0, HEIGHT)


def named(changes):
    return " ".join(str(v) for v in changes.values())


def drawn(design, units="feet-inches", shown=(), cell=WHOLE):
    geometry = assess(design).geometry
    sheet = Sheet(WIDTH, HEIGHT)
    view = room(
        sheet,
        cell,
        geometry,
        units,
        guides=[g for g in find_guides(geometry, units) if g.name in shown],
    )
    return sheet, view, geometry


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize("shown", [(), NAMES], ids=["bare", "guides"])
@pytest.mark.parametrize("changes", [*ENDS, *LOOKS], ids=named)
@pytest.mark.parametrize("which", ["boathouse", "plain"])
def test_clean_sheets(boathouse, which, changes, shown, units):
    design = change(boathouse if which == "boathouse" else Design(), changes)
    assert collisions(drawn(design, units, shown)[0]) == []


@pytest.mark.parametrize("shown", [(), NAMES[:2], NAMES], ids=len)
@pytest.mark.parametrize("changes", ENDS[::3], ids=named)
def test_clean_in_a_small_cell_too(boathouse, changes, shown):
    sheet, *_ = drawn(change(boathouse, changes), "feet-inches", shown, SMALL_CELL)
    assert collisions(sheet) == []
    points = np.concatenate([p for runs in sheet.lines.values() for p in runs])
    assert points[:, 0].max() <= 150.01 and points[:, 1].min() >= 92.99


@settings(deadline=None, max_examples=40, suppress_health_check=list(HealthCheck))
@given(designs())
def test_any_design_can_be_shown_in_its_room(design):
    sheet, *_ = drawn(design, shown=NAMES)
    assert collisions(sheet) == []
    window = max(
        (p for p in sheet.lines["seen", "ink"] if len(p) == 5), key=lambda p: np.ptp(p[:, 0])
    )
    inked = np.concatenate(
        [p for (_, ink), runs in sheet.lines.items() if ink == "ink" for p in runs]
    )
    assert (inked >= window.min(axis=0) - 0.01).all() and (inked <= window.max(axis=0) + 0.01).all()


@settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))
@given(designs(), MOVES)
def test_rooms_that_read_the_same_look_the_same(design, move):
    try:
        before, after = assess(design).geometry, assess(change(design, move)).geometry
    except InputError:
        return
    if reads("room", before) == reads("room", after):
        a, b = (draw_view("room", WHOLE, g, "feet-inches", None, NAMES) for g in (before, after))
        assert content(a) == content(b)


@pytest.mark.parametrize(
    ("changes", "ceiling"),
    [
        ({"opening.head": "segmental", "base.hearth_level": "24 in"}, 72),
        ({"opening.head": "segmental", "base.hearth_level": "48 in"}, 78 + 0.3 / INCH),
        ({"lintel.material": "stone", "base.hearth_level": "24 in"}, 72),
    ],
)
def test_a_deep_head_ends_at_the_ceiling(changes, ceiling):
    """A head of 20 in over an opening that ends 54 or 78 in up, under a ceiling of 6 ft, which is
    drawn no lower than 0.3 m over the opening: no line and no color runs past it, and the head
    runs up to it on both sides.
    """
    deep = {**changes, "lintel.height": "20 in", "throat.height": "20 in"}
    sheet, view, geometry = drawn(change(Design(), {**deep, "house.ceiling": "6 ft"}))
    top = ceiling * INCH
    seen = [np.array(p) for p in sheet.lines["seen", "ink"]]
    window = max((p for p in seen if len(p) == 5), key=lambda p: np.ptp(p[:, 0]))
    filled = [ring for many in sheet.fills.values() for rings in many for ring in rings]
    everything = np.concatenate([*seen, *filled, *(h.reshape(-1, 2) for h in sheet.hatches)])
    assert everything[:, 1].max() <= window[:, 1].max() + 0.01
    ends = [(p - (view.x0, view.y0)) / view.scale for p in seen if len(p) == 2]
    upward = [p for p in ends if abs(p[:, 1].max() - top) < 1e-6 < np.ptp(p[:, 1])]
    breast = geometry.frame.block_half - 1e-6
    sides = [p[p[:, 1].argmax(), 0] for p in upward if abs(p[p[:, 1].argmax(), 0]) < breast]
    assert len(sides) == 2 and sum(sides) == pytest.approx(0.0) != sides[0]


def test_guides_are_switched_on_by_name(boathouse):
    result = assess(boathouse)
    ((_, bare),) = live_views("room", result.geometry, "feet-inches", result.findings)
    ((_, some),) = live_views(
        "room", result.geometry, "feet-inches", result.findings, ("golden section", "door head")
    )
    bold = {n.text for n in some.labels if n.ink == "guide"}
    assert bold == {"Guides, not rules", "golden section", "door head, from memory"}
    assert not any(n.ink == "guide" for n in bare.labels) and not any(
        ink == "guide" for _, ink in bare.lines
    )
    assert (
        view_sheet(
            "room", WHOLE, result.geometry, "feet-inches", None, ("door head", "golden section")
        )
        is some
    )


@pytest.mark.parametrize("head", ["straight", "segmental"])
@pytest.mark.parametrize("changes", ENDS[::2], ids=named)
def test_the_opening_is_drawn_as_large_as_it_is(changes, head):
    """The heavy line, taken back to metres, is the geometry's own outline; its area is the clear
    area under the arch.
    """
    _, view, geometry = drawn(change(Design(), {**changes, "opening.head": head}))
    (line,) = view.sheet.lines["cut", "ink"]
    ring = (line[:-1] - (view.x0, view.y0)) / view.scale
    assert ring == pytest.approx(np.array(opening_ring(geometry)))
    assert area([tuple(p) for p in ring]) == pytest.approx(
        geometry.frame.opening_area, rel=2e-3 if head == "segmental" else 1e-9
    )


def off_line(a, b, point):
    """How far a point lies off the line through two others."""
    (x, y), (u, v) = b - a, np.asarray(point) - a
    return abs(x * v - y * u) / np.hypot(x, y)


def test_what_runs_away_from_the_eye_meets_at_its_height():
    """Every line square to the wall: edges of floor, ceiling and hearth, and the squares of the
    floor, meet before the eye.
    """
    _, view, geometry = drawn(change(Design(), {"base.hearth_level": "12 in"}))
    s = scene(geometry)
    centre = np.array(view.at(0.0, s.eye.level))
    half, top = s.wall[2]
    corners = [view.at(x, z) for x in (-half, half) for z in (0.0, top)]
    slab = s.hearth[-1]
    corners += [view.at(x, slab.top) for x in (slab.left, slab.right)]
    lines = [
        p
        for (w, ink), runs in view.sheet.lines.items()
        if (w, ink) == ("seen", "ink")
        for p in runs
        if len(p) == 2
    ]
    for corner in corners:
        running = [
            p
            for p in lines
            if min(np.hypot(*(p - corner).T)) < 0.01
            and abs(np.diff(p[:, 0])) > 0.3 < abs(np.diff(p[:, 1]))
        ]
        assert running, corner
        for a, b in running:
            assert off_line(a, b, centre) < 1e-6
    assert len(corners) == 6


def test_what_runs_alongside_meets_in_one_point():
    """Splayed side: its foot and the joints of its courses run one way in space, so they meet on
    the eye's level, off the middle.
    """
    geometry = assess(Design()).geometry
    f, eye = geometry.frame, Eye(3.5, 1.6)
    at = eye.meeting((-f.side_slope, 1.0, 0.0))
    assert at == pytest.approx((-3.5 * f.side_slope, 1.6))
    for z in (0.0, 0.3, 0.7):
        a, b = eye.see([(f.half_width, 0.0, z), (f.half_at(f.depth), f.depth, z)])
        assert off_line(a, b, at) < 1e-12


def test_sizes_behind_and_before_by_hand():
    """From 12 ft: a thing 4 ft behind shows at 12/16 of its size, one 3 ft before at 12/9."""
    eye = Eye(12.0, 5.0)
    assert eye.size(4.0) == pytest.approx(0.75) and eye.size(-3.0) == pytest.approx(4 / 3)
    a, b = eye.see([(2.0, 4.0, 1.0), (-2.0, 4.0, 1.0)])
    assert a == pytest.approx((1.5, 5 - 4 * 0.75)) and b == pytest.approx((-1.5, 2.0))


def test_the_back_shows_as_large_as_its_distance_makes_it():
    """The plain box: back 22 2/3 in wide at 20 in depth, seen from 12 ft, shows 144/164 of its
    width, over a floor that rises with it.
    """
    geometry = assess(Design()).geometry
    eye = scene(geometry).eye
    assert eye.away == pytest.approx(144 * INCH)
    back = eye.see(dict(faces(geometry))["box back"])
    assert np.ptp(back[:, 0]) == pytest.approx((36 - 2 * 20 / 3) * INCH * 144 / 164)
    assert back[:, 1].min() == pytest.approx(64.5 * INCH * 20 / 164)


def test_the_underside_of_the_head_is_seen_only_from_under_it():
    for changes, seen in (
        ({}, False),
        ({"opening.standard_height": "60 in", "base.hearth_level": "24 in"}, True),
    ):
        geometry = assess(change(Design(), changes)).geometry
        lit, _ = lit_ring(geometry, scene(geometry).eye)
        covered = area([tuple(p) for p in lit]) / geometry.frame.opening_area
        assert (covered < 0.999) == seen


def test_what_stands_before_hides_what_is_behind():
    """A shelf close over the opening: no line of the opening is left inside what the shelf covers."""
    trim = [
        {
            "name": "shelf",
            "place": "above",
            "distance": "0 in",
            "projection": "9 in",
            "height": "3 in",
        }
    ]
    _, view, geometry = drawn(change(Design(), {"surround.trim": trim}))
    s = scene(geometry)
    low = view.ring(s.trim[0].outline(s.eye))[:, 1].min()
    assert low < view.at(0, geometry.frame.opening_top)[1] - 0.5
    inner = [p for p in view.sheet.lines["cut", "ink"] if p[:, 1].max() > low + 0.01]
    assert inner == []


def test_blocks_show_the_faces_that_look_at_the_eye():
    eye = Eye(3.0, 1.5)
    assert [n for n, _ in Block(-1, 1, -0.3, 0.5, 0.6).faces(eye)] == ["top", "front"]
    assert [n for n, _ in Block(-1, 1, -0.3, 1.6, 1.7).faces(eye)] == ["underside", "front"]
    assert [n for n, _ in Block(0.5, 0.6, -0.3, 1.4, 1.7).faces(eye)] == ["end", "front"]


def test_the_covers_of_a_block_are_the_hull_of_its_faces():
    eye = Eye(3.0, 1.5)
    block = Block(-1, 1, -0.4, 0.2, 0.5)
    seen = np.concatenate([ring for _, ring in block.faces(eye)])
    assert area([tuple(p) for p in hull(seen)]) == pytest.approx(
        area([tuple(p) for p in block.outline(eye)])
    )
    assert sum(area([tuple(p) for p in ring]) for _, ring in block.faces(eye)) == pytest.approx(
        area([tuple(p) for p in block.outline(eye)])
    )


def test_clipping_keeps_every_length_once():
    """What shows through a window and what the same window hides add up to the whole, for any rings
    (shapely agrees).
    """
    from shapely import LineString, Polygon

    rng = np.random.default_rng(7)
    segments = rng.uniform(-2, 2, (200, 2, 2))
    ring = np.array([(-1, -1), (1, -1.2), (0.2, 0.0), (1.3, 1.1), (-0.9, 0.8)])
    inside, outside = clipped(segments, [ring]), clipped(segments, [], [ring])

    def total(pieces):
        return np.hypot(*(pieces[:, 1] - pieces[:, 0]).T).sum()

    assert total(inside) + total(outside) == pytest.approx(total(segments))
    assert total(inside) == pytest.approx(
        sum(LineString(p).intersection(Polygon(ring)).length for p in segments)
    )


def test_lots_cut_together_are_what_each_is_alone():
    """One ring keeps one lot and hides another; a lot may be empty, or have no ring (shapely agrees
    on the length of each).
    """
    from shapely import LineString, Polygon, union_all

    rng = np.random.default_rng(11)
    rings = [
        np.array([(-1, -1), (1, -1.2), (0.2, 0.0), (1.3, 1.1), (-0.9, 0.8)]),
        np.array([(-2, -2), (0.5, -2), (0.5, 2), (-2, 2)]),
        np.array([(0, 0), (1.5, 0), (1.5, 1.5)]),
        np.array([(8, 8), (9, 8), (9, 9)]),
    ]
    uses = [([0], [2]), ([], []), ([1, 0], []), ([], [0, 1, 3]), ([1], [0, 2]), ([0], [2])]
    lots = [
        (rng.uniform(-2, 2, (many, 2, 2)), [rings[k] for k in keep], [rings[k] for k in hide])
        for many, (keep, hide) in zip((40, 7, 60, 30, 0, 1), uses, strict=True)
    ]
    made = clipped_each(lots)
    assert len(made) == len(lots) and clipped_each([]) == []
    for (segments, keep, hide), found in zip(lots, made, strict=True):
        ground = Polygon([(-9, -9), (9, -9), (9, 9), (-9, 9)])
        for ring in keep:
            ground = ground.intersection(Polygon(ring))
        ground = ground.difference(union_all([Polygon(ring) for ring in hide]))
        left = sum(LineString(piece).intersection(ground).length for piece in segments)
        assert np.hypot(*(found[:, 1] - found[:, 0]).T).sum() == pytest.approx(left)


def test_stones_stay_where_they_are_when_the_wall_grows():
    near, far = rubble(-1.0, 1.0, 0.0, 1.5), rubble(-1.2, 1.25, -0.1, 1.7)
    kept = {tuple(np.round(p, 9).ravel()) for p in far}
    assert len(near) > 40 and all(tuple(np.round(p, 9).ravel()) in kept for p in near)


@pytest.mark.parametrize("face", ["stone", "brick", "tile"])
def test_the_bond_stays_on_the_masonry(face):
    """No joint of the face lies in the opening, and bricks are to scale: beds 2 3/4 in apart, as
    ordered.
    """
    _, view, geometry = drawn(change(Design(), {"surround.face": face, "hearth.front": "0 in"}))
    bond = max(view.sheet.hatches, key=lambda h: np.ptp(h[:, :, 1]) if len(h) else 0)
    middle = (bond.mean(axis=1) - (view.x0, view.y0)) / view.scale
    f = geometry.frame
    inside = (
        (abs(middle[:, 0]) < f.half_width - 1e-6)
        & (middle[:, 1] > f.hearth + 1e-6)
        & (middle[:, 1] < f.opening_top - 1e-6)
    )
    assert len(bond) > 50 and not inside.any()
    if face == "brick":
        level = np.unique(
            np.round(
                (bond[np.ptp(bond[:, :, 1], axis=1) < 1e-9][:, 0, 1] - view.y0) / view.scale / INCH,
                4,
            )
        )
        assert np.diff(level) == pytest.approx(2.75, abs=1e-3)


def test_the_person_is_as_tall_as_told_and_looks_level():
    """Eyes of somebody as tall as the viewer lie on the horizon wherever they stand: 69 in tall,
    eye at 64 1/2.
    """
    _, view, geometry = drawn(Design())
    s = scene(geometry)
    (ring,) = view.sheet.fills[-1, "person"][-1]
    k = s.eye.size(s.person[1])
    assert np.ptp(ring[:, 1]) / view.scale == pytest.approx(69 * INCH * k, rel=5e-3)
    floor = ring[:, 1].min()
    assert floor + 64.5 * INCH * k * view.scale == pytest.approx(
        view.at(0, s.eye.level)[1], abs=0.05
    )


def test_a_room_too_small_is_said(boathouse):
    sheet, *_ = drawn(change(boathouse, {"house.room_length": "6 ft", "opening.width": "96 in"}))
    assert any("longer than the wall" in n.text for n in sheet.labels)
    sheet, *_ = drawn(change(boathouse, {"house.room_length": "unknown"}))
    assert any("unknown" in n.text for n in sheet.labels)


def test_a_ceiling_that_cannot_be_is_said():
    """An opening up to 9 ft under a ceiling of 9 ft is drawn under a higher one, and the sheet says
    so.
    """
    sheet, *_ = drawn(
        change(Design(), {"base.hearth_level": "48 in", "opening.standard_height": "60 in"})
    )
    words = [n.text for n in sheet.labels]
    assert any("too high for a ceiling of 9'-0\"" in text for text in words) and any(
        "ceiling, as drawn" in text for text in words
    )
    sheet, *_ = drawn(Design())
    assert not any("as drawn" in n.text or "too high" in n.text for n in sheet.labels)


def test_no_brick_of_the_lining_shows_through_the_floor():
    """The lining goes down to the slab, 2-1/2 in under the paving: cut at the hearth, a slanting
    joint where it crosses.
    """
    segments = np.array([[(0, 1, -1), (0, 1, 1)], [(0, 1, -2), (4, 1, -1)], [(0, 0, 2), (0, 0, 0)]])
    assert _over(segments.astype(float), 0.0).tolist() == [
        [[0, 1, 0], [0, 1, 1]],
        [[0, 0, 2], [0, 0, 0]],
    ]
    slanting = np.array([[(0.0, 0.0, -1.0), (4.0, 0.0, 3.0)]])
    assert _over(slanting, 0.0).tolist() == [[[1, 0, 0], [4, 0, 3]]]


def test_a_stone_hearth_stays_stone_under_a_tile_face():
    """Whatever is painted later lies over it: the slab after its base, the nearer shelf last."""
    trim = [
        {"distance": "12 in", "projection": "2 in"},
        {"distance": "14 in", "projection": "9 in"},
    ]
    changes = {"surround.face": "tile", "base.hearth_level": "16 in", "surround.trim": trim}
    _, view, _ = drawn(change(Design(), changes))
    order = [tone for (layer, tone) in sorted(view.sheet.fills, key=lambda k: k[0]) if layer < -1]
    assert order.index("tile") < order.index("block") < order.index("stone")
    assert len([layer for layer, tone in view.sheet.fills if tone == "wood"]) == 2
