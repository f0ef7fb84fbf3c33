"""Families of mantels: what is built of them against the room and the codes, by hand and by shapely and manifold3d."""

import math
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from manifold3d import Manifold, OpType
from naive.mantels import hollow
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

from fireplace_calc import assess, change
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.mantels import SIZES, usual_mantels
from fireplace_calc.base.units import INCH, POUND, InputError
from fireplace_calc.design.mantel import FAMILIES, Mantel
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import single
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.views.cuts import mantel_cuts, mantel_reach
from fireplace_calc.drawing.views.front_elevation import breast_ring, opening_ring
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.bodies import solid_body
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mantel.edges import face_end, mantel_edge
from fireplace_calc.geometry.mantel.families import family_groups
from fireplace_calc.geometry.mantel.molded import _plain
from fireplace_calc.geometry.mantel.on_face import (
    mantel_parts,
    shelf_board,
    trim_boxes,
    trim_steps,
)
from fireplace_calc.geometry.mantel.sizes import mantel_place, mantel_sizes
from fireplace_calc.geometry.polygons import signed_area
from fireplace_calc.proportion import shelf_top
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS
from fireplace_calc.scene.picked import volume_of
from fireplace_calc.scene.shown_masonry import mantel_things, masonry
from fireplace_calc.takeoff import share_out
from fireplace_calc.takeoff.facing import plastered_area, shown_areas
from fireplace_calc.takeoff.rows import take_off

F, M, X = FALLS_SHORT, MEETS, DOES_NOT_APPLY
BUILT = FAMILIES[2:]
SOME = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def mantel(family, **sizes):
    return change(Design(), changes(family, **sizes))


def changes(family, **sizes):
    wide = {"firebox.jamb": "24 in", "house.ceiling": "10 ft"}
    own = {f"mantel.{name}": value for name, value in sizes.items()}
    return wide | {"mantel.family": family} | own


def verdict(design, key):
    (pack,) = [
        pack
        for pack in ("US IRC 2021", "Canada NBC", "US IBC", "Trade practice", "Germany")
        if any(
            rule.key == key for name in PACKS if name.startswith(pack) for rule in PACKS[name].rules
        )
    ] or [None]
    name = next(name for name in PACKS if name.startswith(pack))
    return next(f.verdict for f in assess(design, name).findings if f.key == key)


# -- the codes, both sides --------------------------------------------------------------------------
# IRC R1001.11 exception 4: nothing that burns within 6 in of the opening, and within 12 in none that
# stands out more than an eighth of its distance. NBC 9.22.9.1: 150 mm, and 300 mm where a mantel stands
# out more than 38 mm. The page on mantels: 8 in. German practice: 800 mm.
SIDES = [
    ("CLR-07", "shelf", {"over_opening": ("5-15/16 in", "6 in")}, F, M),
    ("CLR-07", "beam on corbels", {"beside": ("5-15/16 in", "6 in"), "over_opening": "4 in"}, F, F),
    (
        "CLR-07",
        "beam on corbels",
        {"over_opening": ("12-15/16 in", "13 in"), "beside": "0 in"},
        F,
        M,
    ),
    ("CLR-07", "pilasters and frieze", {"beside": ("5-15/16 in", "6 in")}, F, M),
    ("CLR-07", "pilasters and frieze", {"over_opening": ("5-15/16 in", "6 in")}, F, M),
    ("CLR-07", "paneled overmantel", {"beside": ("5-15/16 in", "6 in")}, F, M),
    # a shelf is deeper than an eighth of a foot, so it falls short up to the foot, and is free beyond
    ("CLR-08", "shelf", {"over_opening": ("12 in", "12-1/16 in")}, F, X),
    # corbels hang as low as the beam is deep or thick, here 7 in
    (
        "CLR-08",
        "beam on corbels",
        {"over_opening": ("19 in", "19-1/16 in"), "beside": "0 in"},
        F,
        X,
    ),
    (
        "CLR-08",
        "pilasters and frieze",
        {"projection": ("1-1/16 in", "1 in"), "over_opening": "13 in"},
        F,
        M,
    ),
    # the board of the frieze stands out 0.6 of it: 1 in at 1.67 in
    (
        "CLR-08",
        "pilasters and frieze",
        {"projection": ("1-11/16 in", "1-5/8 in"), "beside": "12-1/2 in", "beyond": "20 in"},
        F,
        M,
    ),
    (
        "CLR-08",
        "paneled overmantel",
        {"projection": ("1-1/16 in", "1 in"), "over_opening": "13 in"},
        F,
        M,
    ),
    ("CA-061", "shelf", {"over_opening": ("149 mm", "150 mm")}, F, M),
    ("CA-061", "pilasters and frieze", {"beside": ("149 mm", "150 mm")}, F, M),
    ("CA-062", "shelf", {"over_opening": ("299 mm", "300 mm")}, F, M),
    (
        "CA-062",
        "beam on corbels",
        {"over_opening": ("476.7 mm", "477.8 mm"), "beside": "0 in"},
        F,
        M,
    ),
    # frieze of 200 mm; the cove over it, 38.1 mm high, stands out 38 mm in its third of eight chords, which
    # begins at the sine of 22.5 deg
    (
        "CA-062",
        "pilasters and frieze",
        {"over_opening": ("85.3 mm", "85.5 mm"), "frieze": "200 mm", "beside": "200 mm"},
        F,
        M,
    ),
    ("PRA-18", "shelf", {"over_opening": ("7-15/16 in", "8 in")}, F, M),
    ("PRA-18", "pilasters and frieze", {"beside": ("7-15/16 in", "8 in")}, F, M),
    ("DE-07", "shelf", {"over_opening": ("799 mm", "800 mm")}, F, M),
]


@pytest.mark.parametrize(("key", "family", "sizes", "before", "beyond"), SIDES)
def test_both_sides_of_each_limit(key, family, sizes, before, beyond):
    for n, wanted in enumerate((before, beyond)):
        told = {k: v[n] if isinstance(v, tuple) else v for k, v in sizes.items()}
        high = {} if key != "DE-07" else {"opening.standard_height": "24 in"}
        for wood in ("wood", "painted wood"):
            design = change(Design(), changes(family, material=wood, **told) | high)
            assert verdict(design, key) == wanted, (told, wood)
        stone = change(Design(), changes(family, material="stone", **told) | high)
        assert verdict(stone, key) == X, told


def test_wood_that_stands_out_beside_the_opening():
    """IBC 2111.11, exception 4: beyond 1-1/2 in out, 6 in and as much as it stands out."""
    deep = {"projection": "2 in", "over_opening": "13 in", "beyond": "22 in"}
    assert verdict(mantel("pilasters and frieze", beside="7-15/16 in", **deep), "IBC-10") == F
    assert verdict(mantel("pilasters and frieze", beside="8 in", **deep), "IBC-10") == M
    slim = deep | {"projection": "1-1/2 in"}
    assert verdict(mantel("pilasters and frieze", beside="6 in", **slim), "IBC-10") == X
    stone = mantel("pilasters and frieze", beside="2 in", material="stone", **deep)
    assert verdict(stone, "IBC-10") == X


@pytest.mark.parametrize("family", BUILT)
@pytest.mark.parametrize("pack", ["US IRC 2021", "US IRC 2024"])
def test_the_usual_mantel_of_wood_meets_the_code_on_nothing_assumed(family, pack):
    found = {f.key: f for f in assess(change(Design(), {"mantel.family": family}), pack).findings}
    for key in ("CLR-07", "CLR-08"):
        assert found[key].verdict in (M, X)
        assert not [name for name in found[key].assumed if name.startswith(("mantel", "surround"))]


def test_brick_and_none_leave_nothing_that_burns():
    for told in ({"mantel.family": "none"}, {"mantel.family": "shelf", "mantel.material": "brick"}):
        shelf = [{"name": "old shelf", "distance": "3 in", "projection": "6 in"}]
        assert verdict(change(Design(), {"surround.trim": shelf}), "CLR-07") == F
        assert verdict(change(Design(), {"surround.trim": shelf, **told}), "CLR-07") == X


def test_piece_by_piece_is_what_it_was():
    """The pieces as they are told, each with what is unknown of it, and nothing of the sizes read."""
    pieces = [{"name": "shelf"}, {"name": "leg", "place": "beside", "distance": "7 in"}]
    told = change(Design(), {"surround.trim": pieces, "mantel.depth": "3 in"})
    assert trim_steps(sketch(told)) == told.surround.trim
    (found,) = [f for f in assess(told).findings if f.key == "CLR-07"]
    assert found.missing == ("surround.trim",)
    family = change(told, {"mantel.family": "shelf"})
    (found,) = [f for f in assess(family).findings if f.key == "CLR-07"]
    assert found.verdict == M and found.missing == ()


# -- solids ----------------------------------------------------------------------------------------
def eighths(low, high):
    return st.one_of(
        st.none(), st.integers(int(low * 8), int(high * 8)).map(lambda n: f"{n / 8} in")
    )


SIZED = {
    "over_opening": eighths(0, 24),
    "depth": eighths(1, 12),
    "thickness": eighths(1, 10),
    "beyond": eighths(2, 24),
    "support": eighths(1, 8),
    "beside": eighths(0, 14),
    "projection": eighths(0.5, 3),
    "frieze": eighths(2, 12),
    "overmantel": eighths(6, 30),
}
BEFORE = ("hearth extension", "hearth extension bed", "hearth extension base", *SEAT)
AROUND = {
    "opening.width": st.sampled_from(("30 in", "36 in", "48 in")),
    "opening.head": st.sampled_from(("straight", "segmental")),
    "opening.rise": st.sampled_from(("3 in", "6 in", "12 in")),
    "firebox.jamb": st.sampled_from(("6 in", "12 in", "24 in")),
    "base.hearth_level": st.sampled_from(("0 in", "12 in")),
    "hearth.side": st.sampled_from(("8 in", "12 in")),
    "brick.facing": st.sampled_from(("modular", "king", "roman")),
}


SEATS = st.sampled_from(
    (
        *({}, {}),
        {"seat.left": "30 in", "seat.height": "16 in"},
        {"seat.right": "2 in", "seat.height": "14 in"},
        {"seat.left": "1 in", "seat.right": "40 in", "seat.height": "18 in"},
    )
)


@st.composite
def mantels(draw):
    told = {f"mantel.{name}": draw(values) for name, values in SIZED.items()}
    around = {name: draw(values) for name, values in AROUND.items()} | draw(SEATS)
    family = {
        "mantel.family": draw(st.sampled_from(BUILT)),
        "mantel.material": draw(st.sampled_from(("wood", "painted wood", "stone", "brick"))),
    }
    try:
        return change(Design(), {k: v for k, v in (told | around | family).items() if v})
    except InputError as refused:
        assert refused.name in {spec.label for spec in all_inputs().values()}
        # What nobody told gives way, but for what the opening leaves no room for at all.
        around = {name: value for name, value in around.items() if "seat" not in name}
        bare = change(Design(), around | family | {"mantel.material": "stone"})
        return change(bare, {"mantel.material": draw(st.sampled_from(("wood", "stone")))})


def runs_of(geometry):
    return [run for part in mantel_parts(geometry) for run in part.group.runs]


def opening_in_chords(frame):
    """Through the ends of the spring line and the crown, in 720 chords."""
    rise, half = frame.opening_top - frame.spring, frame.half_width
    foot = [(half, frame.hearth), (-half, frame.hearth)]
    if rise < 1e-9:
        return Polygon([(-half, frame.opening_top), (half, frame.opening_top), *foot])
    radius = (half**2 + rise**2) / 2 / rise
    turn = math.asin(min(half / radius, 1.0))
    around = [-turn + 2 * turn * k / 720 for k in range(721)]
    middle = frame.opening_top - radius
    return Polygon(
        [*((radius * math.sin(a), middle + radius * math.cos(a)) for a in around), *foot]
    )


@SOME
@given(mantels())
def test_every_point_of_the_mantel_is_inside_a_step_that_is_checked(design):
    """Distance by shapely, from the opening with its arch in short chords to the front of each slice."""
    made = build_geometry(design)
    opening, steps = opening_in_chords(made.frame), trim_steps(made)
    assert steps and all(step.drawn_distance == step.distance for step in steps)
    for run in runs_of(made):
        for loft in run.lofts:
            ends = [*loft.lower, *loft.upper]
            left, right = min(x for x, _ in ends), max(x for x, _ in ends)
            out = -min(y for _, y in ends)
            away = opening.distance(rectangle(left, loft.bottom, right, loft.top))
            near = [s for s in steps if abs(s.distance - away) < 2e-5 and s.projection == out]
            assert near, (away, out)
            assert all(
                s.combustible == (design.mantel.material in ("wood", "painted wood")) for s in near
            )


@SOME
@given(mantels())
def test_it_hangs_on_the_breast_under_the_ceiling_and_clear_of_the_opening(design):
    made = build_geometry(design)
    f, opening = made.frame, Polygon(opening_ring(made))
    for run in runs_of(made):
        left, right, out, low, high = run.bounds
        assert -f.block_half - 1e-9 <= left < right <= f.block_half + 1e-9
        assert 0 <= low < high <= min(design.house.ceiling, f.block_top) + 1e-9
        assert out > 0
        assert all(signed_area(r) > 0 for loft in run.lofts for r in (loft.lower, loft.upper))
        assert Polygon(run.front).intersection(opening).area < 1e-6


@settings(deadline=None, max_examples=15)
@given(mantels())
def test_solids_are_closed_and_none_stands_in_another(design):
    made = build_geometry(design)
    bodies = []
    for part in mantel_parts(made):
        lofts = [solid_body(loft) for run in part.group.runs for loft in run.lofts]
        assert sum(body.volume() for body in lofts) == pytest.approx(part.group.volume, rel=1e-6)
        bodies += lofts
    for one, other in combinations(bodies, 2):
        assert (one ^ other).volume() < 1e-9
    # nor in hearth or seat, and under each pilaster there is something
    masonry_ = [solid_body(s) for p in made.parts if p.name in BEFORE for s in p.adds]
    for one in bodies:
        assert all((one ^ other).volume() < 1e-9 for other in masonry_)
    for part in mantel_parts(made):
        if part.name.endswith("pilaster"):
            body = Manifold.batch_boolean(
                [solid_body(x) for r in part.group.runs for x in r.lofts], OpType.Add
            )
            lowered = body.translate((0.0, 0.0, -1e-3))
            floor = Manifold.cube((20.0, 20.0, 1.0)).translate((-10.0, -10.0, -1.0))
            stand = (lowered ^ Manifold.batch_boolean([*masonry_, floor], OpType.Add)).volume()
            out = -min(y for loft in part.group.runs[0].lofts for _, y in loft.lower)
            wide = mantel_sizes(design.mantel, mantel_place(made)).support
            assert stand == pytest.approx(out * wide * 1e-3, rel=1e-3)


@SOME
@given(mantels())
def test_weight_is_density_times_what_is_drawn(design):
    made = build_geometry(design)
    rows = [row for row in take_off(made) if row.item.startswith("Mantel and trim")]
    (row,) = rows
    volume = sum(part.group.volume for part in mantel_parts(made))
    if design.mantel.material == "brick":
        assert 0.5 * volume < row.volume < volume and row.net >= len(runs_of(made))
        assert row.weight_kg == pytest.approx(row.volume * density("brick"))
    else:
        stuff = "stone" if design.mantel.material == "stone" else "wood"
        assert row.volume == pytest.approx(volume)
        assert row.weight_kg == pytest.approx(volume * density(stuff))


@pytest.mark.parametrize(
    "family", ["beam on corbels", "pilasters and frieze", "paneled overmantel"]
)
def test_a_mantel_with_nothing_to_stand_on_is_refused(family):
    """What carries it stands under what reaches beyond the opening; with none of that it has no
    width. It came through, and the order of its goods broke.
    """
    with pytest.raises(InputError, match='Mantel beyond the opening is .*at least 1"'):
        change(Design(), changes(family, beyond="0 in"))
    assess(change(Design(), changes(family, beyond="1 in")))


def test_a_beam_on_two_corbels_by_hand():
    """Beam 6 by 8 in and 60 in long: 2880 in3. Corbels 4 in wide and 6 in high: an S from 1.2 to 4.845 in
    over 0.82 of that, on the average half way, 3.0225 in; above it 5.1 in: 2 x 4 x (4.92 x 3.0225 +
    1.08 x 5.1). Wood of 40 lb to the cubic foot.
    """
    told = {"depth": "6 in", "thickness": "8 in", "beyond": "12 in", "support": "4 in"}
    made = build_geometry(mantel("beam on corbels", beside="3 in", over_opening="20 in", **told))
    corbels = 2 * 4 * (4.92 * 3.0225 + 1.08 * 5.1)
    (row,) = [r for r in take_off(made) if r.item == "Mantel and trim, wood"]
    assert row.weight_kg / POUND == pytest.approx((2880 + corbels) / 1728 * 40)
    beam, left, right = mantel_parts(made)
    assert [b / INCH for b in beam.group.runs[0].bounds] == pytest.approx([-30, 30, 6, 50, 58])
    assert [b / INCH for b in right.group.runs[1].bounds] == pytest.approx([21, 25, 5.1, 48.92, 50])
    assert left.group.runs[0].bounds[1] == pytest.approx(-21 * INCH)


def test_a_shelf_of_brick_by_hand():
    """Modular brick, 2-2/3 in to the course: 8 in are three, each 1 in over the one below, 60 in long; a
    brick and its joint are 8 in, so 7-1/2 of them, bought as 8 to the course.
    """
    design = change(
        Design(),
        {
            **changes("shelf", material="brick", thickness="8 in", depth="3 in", beyond="12 in"),
            "brick.facing": "modular",
            "waste.brick": "0",
        },
    )
    made = build_geometry(design)
    out = [run.bounds[2] / INCH for run in runs_of(made)]
    assert out == pytest.approx([1, 2, 3])
    (row,) = [r for r in take_off(made) if r.item == "Mantel and trim, brick"]
    assert (row.net, row.order, row.unit) == (24, 24, "brick")
    with pytest.raises(InputError, match="Mantel depth is 3 7/16"):
        change(design, {"mantel.depth": "3-7/16 in"})
    with pytest.raises(InputError, match="not laid of brick"):
        change(design, {"mantel.family": "beam on corbels"})


# -- sizes -----------------------------------------------------------------------------------------
REFUSED = [
    ("shelf", {"beyond": "24-1/16 in"}, "Mantel beyond the opening"),
    (
        "beam on corbels",
        {"beyond": "8 in", "support": "5 in", "beside": "3-1/16 in"},
        "Pilaster or corbel width",
    ),
    (
        "pilasters and frieze",
        {"beyond": "10 in", "beside": "7 in", "support": "3-1/16 in"},
        "Pilaster or corbel width",
    ),
    ("pilasters and frieze", {"depth": "1 in", "projection": "1-1/16 in"}, "Mantel depth"),
    ("shelf", {"over_opening": "36 in"}, "Mantel over the opening"),
    ("paneled overmantel", {"overmantel": "60 in"}, "Overmantel height"),
    ("shelf", {"over_opening": "30 in", "thickness": "16 in"}, "Mantel over the opening"),
]


@pytest.mark.parametrize(("family", "sizes", "label"), REFUSED)
def test_sizes_that_do_not_go_together_are_refused_by_name(family, sizes, label):
    with pytest.raises(InputError) as caught:
        mantel(family, **sizes)
    assert caught.value.name == label and str(caught.value).startswith(f"{label} is ")


def test_the_most_that_goes_under_the_ceiling_is_taken_and_a_sixteenth_more_is_refused():
    """A ceiling of 6 ft under the shoulder: 30 in over an opening that ends at 42, less 3 of shelf."""
    low = {"house.ceiling": "6 ft", "base.hearth_level": "12 in"}
    base = change(Design(), {**low, "mantel.family": "shelf", "mantel.thickness": "3 in"})
    assert change(base, {"mantel.over_opening": "27 in"})
    with pytest.raises(InputError, match="Mantel over the opening"):
        change(base, {"mantel.over_opening": "27-1/16 in"})


@pytest.mark.parametrize("family", BUILT)
def test_what_nobody_told_gives_way_to_breast_and_ceiling(family):
    """A jamb of 4 in and a low ceiling: nothing is refused that nobody chose."""
    tight = {"firebox.jamb": "4 in", "firebox.lining_thickness": "3 in", "lintel.bearing": "4 in"}
    tight["house.ceiling"] = "6 ft"
    made = build_geometry(change(Design(), {**tight, "mantel.family": family}))
    assert max(run.bounds[1] for run in runs_of(made)) <= made.frame.block_half + 1e-9


@pytest.mark.parametrize(("joint", "course"), [(None, 8 / 3), ("1/2 in", 2.75), ("1/4 in", 2.5)])
def test_a_brick_shelf_is_whole_courses_of_the_brick_with_its_joint(joint, course):
    """Modular brick, 2-1/4 in: three courses to 8 in, whatever joint is told."""
    told = changes("shelf", material="brick", thickness="8 in")
    told |= {"brick.facing": "modular", "brick.facing_joint": joint}
    made = sketch(change(Design(), told))
    sizes = mantel_sizes(made.design.mantel, mantel_place(made))
    assert sizes.thickness / INCH == pytest.approx(3 * course)


def test_a_mantel_reaches_over_what_carries_it():
    """Corbels 5 in beside the opening and 7 in wide, nothing told of the beam: it ends with them, 12 in
    beyond the opening, which is more than is usual.
    """
    told = {"mantel.family": "beam on corbels", "mantel.beside": "5 in", "mantel.support": "7 in"}
    wide = build_geometry(change(Design(), told | {"firebox.jamb": "16 in"}))
    assert mantel_sizes(wide.design.mantel, mantel_place(wide)).beyond == pytest.approx(12 * INCH)
    usual = build_geometry(change(Design(), {"mantel.family": "beam on corbels"}))
    assert mantel_sizes(usual.design.mantel, mantel_place(usual)).beyond < 12 * INCH


@pytest.mark.parametrize("family", BUILT)
def test_every_size_of_a_family_moves_something_and_no_other_does(family):
    base = change(Design(), changes(family))
    drawn = mantel_sizes(base.mantel, mantel_place(sketch(base)))
    seen = {name: getattr(drawn, name) for name in usual_mantels()[family]}
    for name in SIZES:
        spec = all_inputs()[f"mantel.{name}"]
        value = seen.get(name, spec.bounds[0])
        other = change(
            base,
            {f"mantel.{name}": f"{value * 0.9!r} m" if name in seen else f"{max(value, 0.1)!r} m"},
        )
        assert (runs_of(build_geometry(base)) != runs_of(build_geometry(other))) == (
            name in seen
        ), name


def test_usual_sizes_lie_within_the_range_of_their_inputs():
    assert set(usual_mantels()) == set(BUILT)
    for sizes in usual_mantels().values():
        Mantel(**sizes)
        assert all(math.isfinite(size) for size in sizes.values())


# -- drawings --------------------------------------------------------------------------------------
@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
@pytest.mark.parametrize("family", BUILT)
@pytest.mark.parametrize("head", ["straight", "segmental"])
def test_views_stay_clean(family, units, head):
    for raised in ("0 in", "12 in"):
        told = {"opening.head": head, "base.hearth_level": raised}
        made = build_geometry(change(Design(), {**told, "mantel.family": family}))
        for view in ("front", "room", "section"):
            assert collisions(single(view, made, units)) == [], view


def test_the_shelf_is_where_it_is_said_to_be():
    """Opening to 30 in, shelf of 3 in at 13 over it; 8 in past the edge, 7 out."""
    made = build_geometry(change(Design(), {"mantel.family": "shelf"}))
    assert [v / INCH for v in shelf_board(made)] == pytest.approx([-26, 26, -7, 46])
    assert shelf_top(made) == ("mantel shelf", pytest.approx(46 * INCH))
    over = build_geometry(mantel("paneled overmantel"))
    assert shelf_board(over)[3] == pytest.approx((30 + 8 + 5.5 + 3) * INCH)
    assert shelf_top(over)[1] == pytest.approx(46.5 * INCH)
    assert shelf_board(build_geometry(Design())) is None
    assert shelf_board(build_geometry(change(Design(), {"mantel.family": "none"}))) is None
    legs = [{"place": "beside", "distance": "8 in", "projection": "5 in"}]
    assert shelf_board(build_geometry(change(Design(), {"surround.trim": legs}))) is None
    shelf = [{"name": "shelf", "distance": "13 in", "projection": "6 in"}]
    told = build_geometry(change(Design(), {"surround.trim": shelf}))
    assert [v / INCH for v in shelf_board(told)] == pytest.approx([-30, 30, -6, 45])
    for out, carries in (("74 mm", False), ("75 mm", True)):  # no narrower board carries anything
        narrow = [shelf[0] | {"projection": out}]
        board = shelf_board(build_geometry(change(Design(), {"surround.trim": narrow})))
        assert (board is not None) is carries


# -- face to the mantel ----------------------------------------------------------------------------
FACED = {"surround.face_height": "to the mantel", "mantel.family": "shelf"}


@pytest.mark.parametrize("face", ["brick", "stone", "tile", "plaster"])
@pytest.mark.parametrize("form", ["shouldered", "straight"])
def test_face_and_plaster_share_the_breast_at_the_top_of_the_shelf(face, form):
    """By shapely from the outline of the front elevation: what lies over the shelf is plastered."""
    told = {"surround.face": face, "breast.form": form}
    whole = build_geometry(change(Design(), told))
    made = build_geometry(change(Design(), {**told, **FACED}))
    ceiling, edge = made.design.house.ceiling, mantel_edge(made)[1]
    assert face_end(made) == edge < ceiling == face_end(whole)
    breast = Polygon(breast_ring(made, ceiling))
    over = breast.intersection(rectangle(-9, edge, 9, ceiling)).area
    assert plastered_area(made) == pytest.approx(over)
    assert plastered_area(whole) == 0
    before, after = (sum(shown_areas(g).values()) for g in (whole, made))
    assert before - after == pytest.approx(over)
    rows = {r.item: r for r in take_off(made)}
    full = {r.item: r for r in take_off(whole)}
    plaster = rows["Face plaster"]
    if face == "plaster":
        assert plaster.net == pytest.approx(full["Face plaster"].net)
        return
    assert plaster.net == pytest.approx(over / 0.3048**2)
    assert plaster.weight_kg == pytest.approx(over * 0.5 * INCH * density("plaster"))
    item = "Facing brick" if face == "brick" else f"Face {face}"
    assert rows[item].net < full[item].net
    if face != "brick":
        assert full[item].net - rows[item].net == pytest.approx(over / 0.3048**2)


def test_brick_behind_the_plaster_is_common_brick():
    """What is no longer face is still wall: the volume of all brick and mortar stays."""
    both = [build_geometry(change(Design(), told)) for told in ({"mantel.family": "shelf"}, FACED)]
    volumes = [sum(s.volume for s in share_out(g) if s.part in g.by_name) for g in both]
    assert volumes[0] == pytest.approx(volumes[1])
    common = [sum(s.volume for s in share_out(g) if s.item == "Common brick") for g in both]
    assert common[1] > common[0]


def test_a_face_cannot_end_at_a_mantel_that_is_not_there():
    for told in ({}, {"mantel.family": "none"}, {"surround.trim": [{"place": "beside"}]}):
        with pytest.raises(InputError, match="Face height is to the mantel, but there is none"):
            change(Design(), {"surround.face_height": "to the mantel", **told})
    shelf = [{"name": "shelf", "distance": "13 in", "projection": "6 in"}]
    told = change(Design(), {"surround.trim": shelf, "surround.face_height": "to the mantel"})
    assert face_end(build_geometry(told)) == pytest.approx(45 * INCH)


@pytest.mark.parametrize("face", ["brick", "stone", "tile"])
def test_the_face_is_drawn_and_shown_up_to_the_shelf(face):
    """No joint of the face stands over the shelf, in elevation and room; the scene shows plaster there."""
    design = change(Design(), {**FACED, "surround.face": face, "breast.form": "straight"})
    made = build_geometry(design)
    for view in ("front", "room", "section"):
        assert collisions(single(view, made, "feet-inches")) == [], view
    things = masonry(assess(design), "room")
    edge = face_end(made)
    over = [t for t in things if t.points[:, 2].max() > edge + 1e-6 and t.key.endswith("mantel")]
    assert over and all(t.stuff == "plaster" for t in over)
    assert min(t.points[:, 2].min() for t in over) == pytest.approx(edge)
    faced = [t for t in things if t.stuff in (face, "stone face")]
    assert max(t.points[:, 2].max() for t in faced) <= edge + 1e-6
    plain = masonry(assess(change(design, {"surround.face_height": "to the ceiling"})), "whole")
    whole = masonry(assess(design), "whole")
    assert sum(map(volume_of, whole)) == pytest.approx(sum(map(volume_of, plain)), rel=1e-6)


def test_the_section_cuts_the_mantel_where_it_stands():
    """A beam 7 by 7 in, its underside 20 in over the opening: 49 in2 of the section, out from the face."""
    made = build_geometry(change(Design(), {"mantel.family": "beam on corbels"}))
    ((part, rings),) = mantel_cuts(made, 9.0)
    (ring,) = rings
    assert part.material == "wood"
    assert Polygon(ring).area == pytest.approx(49 * INCH**2)
    assert [v / INCH for v in Polygon(ring).bounds] == pytest.approx([-7, 50, 0, 57])
    assert mantel_reach(made) == pytest.approx(7 * INCH)
    assert mantel_cuts(build_geometry(Design()), 9.0) == [] and mantel_reach(sketch(Design())) == 0
    legs = [{"place": "beside", "distance": "8 in", "projection": "1 in"}]
    assert mantel_cuts(build_geometry(change(Design(), {"surround.trim": legs})), 9.0) == []


@pytest.mark.parametrize(("room", "over"), [(60, True), (18, True), (17, False), (10, False)])
def test_where_there_is_no_room_over_the_shelf_there_is_no_overmantel(room, over):
    """8 in over the opening, a frieze of 5-1/2 and a shelf of 3: what is left of the room is paneled."""
    made = build_geometry(mantel("paneled overmantel"))
    place = mantel_place(made)
    place = replace(place, breast_top=place.head + (room - 0.5) * INCH)
    names = [group.name for group in family_groups(made.design.mantel, place)]
    assert (names[-2:] == ["overmantel", "overmantel cornice"]) == over
    assert len(names) == (6 if over else 4)


def sized(family, head_room=60.0, jamb=24.0, **sizes):
    """Sizes of a mantel with so much room over the opening and beside it. [in]"""
    made = build_geometry(mantel(family, **sizes))
    place = mantel_place(made)
    place = replace(
        place, breast_top=place.head + head_room * INCH, breast_half=place.half + jamb * INCH
    )
    found = mantel_sizes(made.design.mantel, place)
    return {name: getattr(found, name) / INCH for name in (*SIZED, "tall")}


@pytest.mark.parametrize(
    ("family", "told", "wanted"),
    [
        # usual sizes where there is room: 13 over the opening, 3 thick, 8 past its edge
        ("shelf", {}, {"over_opening": 13, "beyond": 8, "depth": 7, "tall": 3, "frieze": 0}),
        ("shelf", {"head_room": 14}, {"over_opening": 11, "thickness": 3}),
        ("shelf", {"head_room": 2}, {"over_opening": 0, "thickness": 3}),
        ("shelf", {"jamb": 5}, {"beyond": 5}),
        ("shelf", {"jamb": 5, "beyond": "7 in"}, {"beyond": 7}),
        ("shelf", {"head_room": 2, "over_opening": "5 in"}, {"over_opening": 5}),
        ("beam on corbels", {"head_room": 20}, {"over_opening": 13, "tall": 7, "support": 4}),
        # frieze and shelf are 8-1/2 high; pilasters of 3-1/2 from 8 in beside the opening on
        ("pilasters and frieze", {"head_room": 15}, {"over_opening": 6.5, "tall": 8.5}),
        ("pilasters and frieze", {}, {"beside": 8, "support": 3.5, "beyond": 12, "projection": 1}),
        ("pilasters and frieze", {"jamb": 10}, {"beyond": 10, "support": 3.5, "beside": 6.5}),
        ("pilasters and frieze", {"jamb": 5}, {"beyond": 5, "support": 2, "beside": 3}),
        ("pilasters and frieze", {"beside": "9 in", "support": "6 in"}, {"beyond": 15}),
        ("pilasters and frieze", {"jamb": 13, "beside": "9 in", "support": "6 in"}, {"beyond": 13}),
        ("pilasters and frieze", {"beside": "8-1/4 in"}, {"beyond": 12, "support": 3.5}),
        ("pilasters and frieze", {"projection": "3 in"}, {"depth": 7, "projection": 3}),
        ("pilasters and frieze", {"depth": "1/2 in"}, {"depth": 0.5, "projection": 0.5}),
        ("paneled overmantel", {}, {"overmantel": 36, "tall": 44.5}),
        ("paneled overmantel", {"head_room": 40}, {"over_opening": 8, "overmantel": 23.5}),
        ("paneled overmantel", {"head_room": 10}, {"over_opening": 1.5, "overmantel": 0}),
    ],
)
def test_a_mantel_gives_way_where_there_is_little_room(family, told, wanted):
    found = sized(family, **told)
    assert {name: found[name] for name in wanted} == pytest.approx(wanted)


# -- the work --------------------------------------------------------------------------------------
def finishing(**told):
    told = {key.replace("__", "."): value for key, value in told.items()}
    return {s.name: s for s in assess(change(Design(), told)).work.steps if not s.parts}


def test_the_mantel_is_the_last_of_the_work_and_says_what_can_hurt():
    wood = finishing(mantel__family="beam on corbels")
    assert list(wood) == ["Mantel and trim"]
    said = " ".join(wood["Mantel and trim"].cautions)
    assert "Lifting" in said and "Fire" in said and "Dust" not in said
    stone = finishing(mantel__family="shelf", mantel__material="stone")["Mantel and trim"]
    assert "Dust" in " ".join(stone.cautions)
    brick = finishing(mantel__family="shelf", mantel__material="brick")["Mantel and trim"]
    assert "Dust" in " ".join(brick.cautions) and "Skin" in " ".join(brick.cautions)
    assert "laid with those of the breast" in brick.why[0]
    assert "over the finished breast" in stone.why[0]
    assert finishing(mantel__family="none") == {}


def test_what_is_plastered_over_the_mantel_is_called_so():
    named = finishing(mantel__family="shelf", surround__face_height="to the mantel")
    assert list(named) == ["Plaster over the mantel", "Mantel and trim"]
    tiled = finishing(
        mantel__family="shelf", surround__face_height="to the mantel", surround__face="tile"
    )
    assert list(tiled) == ["Face in tile", "Mantel and trim"]
    assert "Face plaster" in {one.item for one in tiled["Face in tile"].goods}


def test_pilasters_stand_on_seat_hearth_and_floor():
    """Pilasters from 26 to 30 in of the middle. The hearth ends at 28: flush it is the floor. A seat of 16 in at the
    left begins there: the left pilaster stands on it with a block under its inner half; the right one on the floor.
    """
    told = {"beside": "8 in", "support": "4 in", "beyond": "12 in"}
    seat = {"hearth.side": "10 in", "seat.left": "30 in", "seat.height": "16 in"}
    made = build_geometry(change(Design(), changes("pilasters and frieze", **told) | seat))
    left, right = mantel_parts(made)[:2]
    found = [[v / INCH for v in run.bounds] for run in left.group.runs[:2]]
    assert found[0] == pytest.approx([-28, -26, 1, 0, 16])
    assert found[1][:4] == pytest.approx([-30, -26, 1, 16])
    assert [v / INCH for v in right.group.runs[0].bounds[:4]] == pytest.approx([26, 30, 1, 0])
    low = changes("pilasters and frieze", **told) | seat | {"opening.standard_height": "20 in"}
    assert change(Design(), low)
    with pytest.raises(InputError, match="Seat height is"):
        change(Design(), {**low, "seat.height": "16-1/16 in"})


def test_where_there_is_no_hearth_pilasters_stand_on_the_floor():
    told = changes("pilasters and frieze", beside="8 in", support="4 in", beyond="12 in")
    made = build_geometry(change(Design(), {**told, "hearth.front": "0 in"}))
    left, right = mantel_parts(made)[:2]
    assert [run.bounds[3] for part in (left, right) for run in part.group.runs[:1]] == [0, 0]


# -- by hand ---------------------------------------------------------------------------------------
def inches_of(run):
    return [v / INCH for v in run.bounds]


def test_a_paneled_overmantel_by_hand():
    """59 in long and 36 high, a cornice of 3 in on top. Rails and stiles of 3-1/2 in, 1 in out: two rails, four stiles
    of 26 in between them, three panels of 15 by 26 in 0.35 in out. The cornice is a hollow from 1 out to 4 in, its ends
    returned, so 59 in long below and 65 above: by Simpson's rule over its chords.
    """
    told = {"overmantel": "36 in", "beside": "8 in", "support": "3-1/2 in", "projection": "1 in"}
    design = change(Design(), {**changes("paneled overmantel", **told), "breast.form": "straight"})
    made = build_geometry(design)
    paneling, cornice = mantel_parts(made)[-2:]
    by_hand = 2 * 59 * 3.5 + 4 * 3.5 * 26 + 3 * 15 * 26 * 0.35
    assert paneling.group.volume / INCH**3 == pytest.approx(by_hand)
    crown = hollow(0.0, lambda out: 2 * (29.5 + out - 1), 1.0, 4.0, 0.0, 3.0)
    assert cornice.group.volume / INCH**3 == pytest.approx(sum(one[-1] for one in crown))
    assert inches_of(cornice.group.runs[0])[:2] == pytest.approx([-32.5, 32.5])
    low = change(design, {"mantel.overmantel": "10 in"})
    paneling, cornice = mantel_parts(build_geometry(low))[-2:]
    # 0.15 of 10 in of cornice; of the 8-1/2 in under it a quarter for each rail
    assert inches_of(cornice.group.runs[0])[3:] == pytest.approx([55, 56.5])
    assert inches_of(paneling.group.runs[0])[3:] == pytest.approx([46.5, 46.5 + 8.5 / 4])


def test_a_wide_pilaster_keeps_its_foot_and_head_in_proportion():
    """12 in wide and 38 high: a fifth of that is plinth and a tenth cap, where the width would make 16.8 and 6."""
    made = build_geometry(mantel("pilasters and frieze", support="12 in", beyond="22 in"))
    plinth, shaft, cap = (inches_of(run) for run in mantel_parts(made)[1].group.runs)
    assert plinth[2:] == pytest.approx([1, 0, 7.6])
    assert shaft[2:] == pytest.approx([0.75, 7.6, 34.2])
    assert cap[2:] == pytest.approx([1, 34.2, 38])


def test_what_stands_beside_the_opening_and_what_over_it():
    steps = trim_steps(sketch(mantel("pilasters and frieze")))
    assert {s.place for s in steps if "shelf" in s.name or s.name == "frieze"} == {"above"}
    shaft = max((s for s in steps if "pilaster" in s.name), key=lambda s: s.height)
    assert shaft.place == "beside"  # it goes up past the opening, and begins beside it
    corbels = trim_steps(sketch(mantel("beam on corbels")))
    assert {s.place for s in corbels} == {"above"}


def test_a_course_of_brick_stands_out_no_more_than_a_third_of_its_bed():
    """Utility brick, 3-5/8 in high and wide: a third of the bed is 1-5/24 in, half the height 1-13/16."""
    told = {**changes("shelf", material="brick", thickness="4 in"), "brick.facing": "utility"}
    assert change(Design(), {**told, "mantel.depth": "1-3/16 in"})
    with pytest.raises(InputError, match="Mantel depth"):
        change(Design(), {**told, "mantel.depth": "1-1/4 in"})


def test_brick_of_a_shelf_is_counted_to_the_next_whole_one_and_weighed_without_its_joints():
    """56 in: seven modular brick and six joints are 55-5/8, so eight to the course; brick fills 2-1/4 of 2-2/3 in and
    7-5/8 of 8.
    """
    told = changes("shelf", material="brick", thickness="8 in", depth="3 in", beyond="10 in")
    made = build_geometry(change(Design(), {**told, "brick.facing": "modular"}))
    (row,) = [r for r in take_off(made) if r.item == "Mantel and trim, brick"]
    whole = 56 * 8 / 3 * (1 + 2 + 3)
    assert row.net == 24
    assert row.volume / INCH**3 == pytest.approx(whole * (2.25 / (8 / 3)) * 7.625 / 8, rel=1e-6)


def test_what_goes_through_the_ceiling_is_shown_up_to_it():
    high = [
        {"distance": "40 in", "height": "5 in", "projection": "6 in", "combustible": False},
        {"distance": "13 in", "height": "2 in", "projection": "6 in"},
    ]
    result = assess(change(Design(), {"surround.trim": high, "house.ceiling": "6 ft"}))
    shelf = mantel_things(result, "room")[0]
    assert shelf.points[:, 2].max() == pytest.approx(72 * INCH)
    (stone, ring), (wood, _) = (
        (part.material, rings[0]) for part, rings in mantel_cuts(result.geometry, 9.0)
    )
    assert (stone, wood) == ("stone", "wood")
    assert max(z for _, z in ring) == pytest.approx(72 * INCH)
    assert [block.tone for block in scene(result.geometry).trim] == ["stone", "wood"]


def test_the_left_pilaster_is_the_right_one_in_a_mirror():
    """Plinth, shaft and cap: bounds of one side are those of the other, turned over."""
    parts = {
        part.name: part for part in mantel_parts(build_geometry(mantel("pilasters and frieze")))
    }
    sides = [
        sorted((tuple(one.bounds) for one in part.group.runs), key=lambda b: b[3])
        for name, part in parts.items()
        if name.endswith("pilaster")
    ]
    assert len(sides) == 2 and len(sides[0]) == len(sides[1]) == 3
    for side in sides:
        assert len({left > 0 for left, *_ in side}) == 1  # plinth, shaft and cap over each other
    for (a, b, *rest), (c, d, *other) in zip(*sides, strict=True):
        assert (a, b, *rest) == pytest.approx((-d, -c, *other))


def test_a_pilaster_on_a_raised_hearth_is_measured_from_there():
    """Hearth at 12 in, reaching past the pilasters; opening to 42 in, frieze 8 in over it: 50 - 12 = 38
    in tall, so a plinth of 7.6 and a cap of 3.8 in, as on the floor. The left one is the right one's mirror.
    """
    told = {"support": "12 in", "beyond": "22 in"}
    raised = {"base.hearth_level": "12 in", "hearth.side": "30 in"}
    made = build_geometry(change(mantel("pilasters and frieze", **told), raised))
    left, right = mantel_parts(made)[:2]
    assert [inches_of(run)[2:] for run in right.group.runs] == [
        pytest.approx(each) for each in ([1, 12, 19.6], [0.75, 19.6, 46.2], [1, 46.2, 50])
    ]
    for one, other in zip(left.group.runs, right.group.runs, strict=True):
        a, b, *rest = inches_of(one)
        assert [-b, -a, *rest] == pytest.approx(inches_of(other))


def test_an_outline_has_no_point_twice_and_none_on_an_upright_between_two_others():
    """Board over board of one depth, then a step out and a lip that leans back."""
    chain = [(0, 0), (0, 1), (0, 1), (0, 2), (2, 2), (2, 3), (2, 3), (2, 5), (1, 6), (0, 7)]
    assert _plain(chain) == [(0, 0), (0, 2), (2, 2), (2, 5), (1, 6), (0, 7)]
    assert _plain([(1, 1), (1, 2), (3, 3), (3, 1), (1, 0)]) == [
        (1, 1),
        (1, 2),
        (3, 3),
        (3, 1),
        (1, 0),
    ]
    assert _plain([(2, 0), (0, 2), (2, 4)]) == [(2, 0), (0, 2), (2, 4)]


def test_trim_beside_the_opening_stands_on_either_side_of_it():
    """Opening 36 by 30 in: legs of 5 in from 8 in on; a shelf of 3 in 13 in over it, as far past its
    ends as it is over it."""
    trim = [{"name": "leg", "place": "beside", "distance": "8 in", "height": "5 in"},
            {"name": "shelf", "place": "above", "distance": "10 in", "height": "3 in"}]  # fmt: skip
    made = build_geometry(change(Design(), {"surround.trim": trim}))
    hearth = made.frame.hearth / INCH
    found = [(piece.name, [v / INCH for v in box]) for piece, box in trim_boxes(made)]
    assert found == [
        ("leg", pytest.approx([-31, -26, hearth, hearth + 30])),
        ("leg", pytest.approx([26, 31, hearth, hearth + 30])),
        ("shelf", pytest.approx([-28, 28, hearth + 40, hearth + 43])),
    ]


def test_a_beam_that_lies_right_on_the_opening_carries_what_is_put_on_it():
    """Of stone, 7 in thick and deep, its underside at the head of an opening 30 in high."""
    made = build_geometry(mantel("beam on corbels", material="stone", over_opening="0 in"))
    board = shelf_board(made)
    assert [v / INCH for v in board[2:]] == pytest.approx([-7, 37])


def test_stiles_of_a_narrow_panel_are_a_quarter_of_its_width():
    """4 in wide: one bay, which is as wide as both its stiles; by hand 1, 2 and 1 in."""
    from fireplace_calc.geometry.mantel.families import _paneling

    runs = list(_paneling(2 * INCH, 1 * INCH, 50 * INCH, 70 * INCH))
    across = sorted({tuple(inches_of(run)[:2]) for run in runs})
    assert [pytest.approx(each) for each in across] == [(-2, -1), (-2, 2), (-1, 1), (1, 2)]


@pytest.mark.parametrize(
    ("told", "blamed"),
    [
        ({"mantel.thickness": "2 in"}, "Mantel thickness"),
        ({"mantel.frieze": "3 in"}, "Frieze height"),
        ({"mantel.thickness": "2 in", "mantel.over_opening": "1 in"}, "Mantel over the opening"),
    ],
)
@pytest.mark.parametrize("family", ["pilasters and frieze", "paneled overmantel"])
def test_where_nothing_fits_under_the_ceiling_a_size_that_was_told_is_blamed(family, told, blamed):
    """And never so that nothing at most fits, which helps nobody."""
    under = {
        "mantel.family": family,
        "house.ceiling": "84 in",
        "opening.standard_height": "60 in",
        "opening.extension": "24 in",
    }
    with pytest.raises(InputError, match=f"^{blamed} is .*there is no room for it"):
        change(Design(), under | told)
    under["opening.extension"] = "12 in"
    with pytest.raises(InputError, match="^Overmantel height is .*there is no room for it"):
        change(
            Design(), under | {"mantel.family": "paneled overmantel", "mantel.overmantel": "12 in"}
        )


@pytest.mark.parametrize(
    ("sizes", "label", "given", "most"),
    [
        ({"overmantel": "24 in"}, "Overmantel height", "2'-0\" (610 mm)", "1'-7 1/2\" (495 mm)"),
        ({"over_opening": "60 in"}, "Mantel over the opening", "5'-0\" (1 524 mm)", "2'-3 1/2\" (699 mm)"),
        ({"over_opening": "24 in", "frieze": "10 in"}, "Mantel over the opening", "2'-0\" (610 mm)",
         "1'-11\" (584 mm)"),
        ({"over_opening": "24 in", "overmantel": "24 in"}, "Overmantel height", "2'-0\" (610 mm)",
         '3 1/2" (89 mm)'),
        ({"over_opening": "40 in", "overmantel": "6 in"}, "Mantel over the opening",
         "3'-4\" (1 016 mm)", "1'-9 1/2\" (546 mm)"),
        ({"frieze": "10 in", "thickness": "9 in", "overmantel": "18 in"}, "Overmantel height",
         "1'-6\" (457 mm)", '9" (229 mm)'),
    ],
)  # fmt: skip
def test_of_a_mantel_that_reaches_the_ceiling_the_highest_size_is_blamed(sizes, label, given, most):
    """With the most that fits, all others as they are told."""
    base = {"mantel.family": "paneled overmantel", "house.ceiling": "8 ft"}
    with pytest.raises(InputError) as refused:
        change(Design(), base | {f"mantel.{name}": size for name, size in sizes.items()})
    assert str(refused.value) == (
        f"{label} is {given}, but at most {most} fits: the mantel ends under the ceiling, where the"
        " breast is as wide as over the opening."
    )
    assert (refused.value.name, refused.value.allowed) == (label, f"at most {most}")
