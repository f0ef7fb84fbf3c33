"""Geometry closes: checked against shapely, which knows nothing of our formulas."""

from itertools import pairwise
from math import pi, sin

import numpy as np
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon as Shape
from shapely.ops import unary_union
from strategies import designs

from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import INCH, SQIN, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load, save
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.bore import flue_bore, liners
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.first_moments import _moments
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.geometry.outlines import centered
from fireplace_calc.geometry.polygons import box, signed_area, tidy
from fireplace_calc.geometry.solids import Cylinder, Loft, level_cuts, moved, prism

SLOW = settings(
    deadline=None,
    max_examples=60,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)
SHIFTED = {
    *("flue liner", "flue casing", "chimney walls", "crown"),
    *("second flue liner", "second flue casing"),
}
"""Parts that follow the flue sideways; their section is taken where they stand."""
RINGS = {"flue liner", "gap round liner", "second flue liner", "gap round second liner"}
"""Thin, and round where the flue is."""
GAUSS = (
    (-0.9061798459386640, 0.2369268850561891),
    (-0.5384693101056831, 0.4786286704993665),
    (0.0, 0.5688888888888889),
    (0.5384693101056831, 0.4786286704993665),
    (0.9061798459386640, 0.2369268850561891),
)


def cut_area(part, z):
    """Area of a level cut as shapely sees it, holes taken out by its own boolean."""
    adds, cuts = part.plan(z)
    return unary_union([Shape(p).buffer(0) for p in adds]).difference(
        unary_union([Shape(p).buffer(0) for p in cuts])
    )


def breaks_of(parts):
    return sorted({z for p in parts for s in p.adds + p.cuts for z in (s.bottom, s.top)})


def volume_by_slices(part, pieces=1):
    levels = breaks_of([part])
    total = 0.0
    for low, high in pairwise(levels):
        for i in range(pieces):
            a, b = low + (high - low) * i / pieces, low + (high - low) * (i + 1) / pieces
            total += (
                sum(w * cut_area(part, (a + b) / 2 + g * (b - a) / 2).area for g, w in GAUSS)
                * (b - a)
                / 2
            )
    return total


@SLOW
@given(designs())
def test_parts_and_air_add_up_to_the_outer_solid(design):
    """Sum of exact volumes; nothing is computed by subtraction from the outer solid."""
    made = build_geometry(design)
    assert sum(p.volume for p in made.parts + made.voids) == pytest.approx(
        made.outer.volume, rel=1e-9
    )
    assert all(p.volume > 0 for p in made.parts)
    assert (made.outer.name, made.outer.material) == ("outer solid", "all")
    assert {void.material for void in made.voids} == {"air"}


@SLOW
@given(designs(), st.floats(0.001, 0.999))
def test_no_two_parts_share_a_place_and_none_is_left_empty(design, where):
    """At any level the cuts of parts and air tile the cut of the outer solid (shapely 2, polygon
    booleans).
    """
    made = build_geometry(design)
    levels = breaks_of(made.parts)
    low = max(int(where * (len(levels) - 1)), 0)
    z = levels[low] + (levels[low + 1] - levels[low]) * 0.37
    shapes = [cut_area(p, z) for p in made.parts + made.voids]
    shapes = [s for s in shapes if not s.is_empty]
    whole = cut_area(made.outer, z)
    assert sum(s.area for s in shapes) == pytest.approx(whole.area, rel=2e-6, abs=1e-9)
    assert unary_union(shapes).symmetric_difference(whole).area < 2e-6 * max(whole.area, 0.1)


@settings(SLOW, max_examples=15)
@given(designs())
def test_volume_of_each_part_is_its_slices_summed(design):
    """Gauss quadrature of shapely's areas; round liners are 72-gons there, hence 0.2 % for them."""
    made = build_geometry(design)
    second = made.frame.second
    round_flue = made.frame.bore.round or (second is not None and second.bore.round)
    arched = design.opening.head == "segmental"
    for p in made.parts + made.voids:
        tolerance = 2e-3 if round_flue or arched else 1e-8
        if (round_flue and p.name in RINGS) or p.name == "arch":
            tolerance = (
                2e-2  # thin rings between 72-gons, and a crown whose cuts end in a square root
            )
        assert volume_by_slices(p, 8 if arched else 1) == pytest.approx(p.volume, rel=tolerance), (
            p.name
        )


def test_prismatoid_rule_on_a_cone_frustum_of_squares():
    """Frustum of a pyramid, h/3 (A + sqrt(A B) + B): mensuration, any handbook; 2 m and 1 m
    squares, 3 m high, 7 m3.
    """
    frustum = Loft(0, 3, box(-1, 1, -1, 1), box(-0.5, 0.5, -0.5, 0.5))
    assert frustum.volume == pytest.approx(7.0)


def test_round_solid():
    assert Cylinder(0, 2, 0.5, (0, 0), 0.3).volume == pytest.approx(pi / 2)


@pytest.mark.parametrize("splay", [0.0, 0.02, 0.33])
@pytest.mark.parametrize("rise", [0.05, 0.3, 0.5])
def test_air_under_an_arch_is_its_slices_summed(splay, rise):
    """Against Gauss quadrature of the cuts, taken finely because the crown is round."""
    arch = ArchVoid(1.0, rise, 1.0, 0.2, splay)
    n = 4000
    slices = sum(Shape(arch.cut(1.0 + rise * (i + 0.5) / n)).area for i in range(n)) * rise / n
    assert arch.volume == pytest.approx(slices, rel=2e-4)


@pytest.mark.parametrize("vertical", [20, 30, 34])
def test_the_back_bends_where_it_is_told_to_beside_an_arch_too(vertical):
    """It leans from so many inches over the hearth; the arch rises from 27 to 36 in."""
    told = {
        "opening.head": "segmental",
        "opening.rise": "9 in",
        "opening.standard_height": "36 in",
        "firebox.vertical_back": f"{vertical} in",
    }
    geometry = build_geometry(change(Design(), told))
    f = geometry.frame
    air = next(void for void in geometry.voids if void.name == "firebox air")
    assert f.spring == pytest.approx(f.hearth + 27 * INCH)
    for up in np.linspace(0.5, 35.5, 71):
        behind = max(y for ring in air.plan(f.hearth + up * INCH)[0] for _, y in ring)
        assert behind == pytest.approx(f.depth - f.lean * max(up - vertical, 0.0) * INCH)


def test_half_round_arch_ring():
    """Half a tube: pi (R2 - r2) t / 2 (mensuration)."""
    ring = ArchRing(0.0, 0.5, 1.0, 0.1, 0.2)
    assert ring.volume == pytest.approx(pi * (0.36 - 0.25) * 0.2 / 2)
    n = 4000
    slices = (
        sum(sum(Shape(p).area for p in ring.cuts(0.6 * (i + 0.5) / n)) for i in range(n)) * 0.6 / n
    )
    assert ring.volume == pytest.approx(slices, rel=1e-3)


def test_levels_stack_up():
    """Plain addition, as with a tape: hearth 0, opening 36, throat 44, flue 72, ten 24 in liners on
    1/8 in beds.
    """
    made = build_geometry(change(Design(), {"opening.extension": "6 in"}))
    inches = {name: z / INCH for name, z in made.levels.items()}
    assert inches["hearth"] == pytest.approx(0)
    assert inches["opening top"] == pytest.approx(36)
    assert inches["throat"] == pytest.approx(44)
    assert inches["flue start"] == pytest.approx(72)
    assert inches["flue top"] == pytest.approx(72 + 10 * 24.125)
    assert inches["crown"] == pytest.approx(72 + 10 * 24.125 - 2)
    assert inches["footing bottom"] == pytest.approx(-48)
    assert list(inches.values()) == sorted(inches.values())


def test_throat_area_is_taken_between_the_splayed_sides():
    """36 in wide, 20 deep, 4:12 splay; throat 8 to 12.5 in behind the face: widths 30.67 and 27.67
    in, 131.25 in2 by hand.
    """
    assert build_frame(Design()).throat_area / SQIN == pytest.approx(
        (36 - 2 * 8 / 3 + 36 - 2 * 12.5 / 3) / 2 * 4.5
    )


def test_arched_opening_has_its_true_area():
    """Half circle on a 36 in span: 18 in rise, area 36 x (30 - 18) + pi 18^2 / 2 (mensuration)."""
    arched = build_frame(change(Design(), {"opening.head": "segmental", "opening.rise": "18 in"}))
    assert arched.opening_area / SQIN == pytest.approx(36 * 12 + pi * 18**2 / 2)


def test_back_width_follows_the_splay_until_it_is_told():
    assert build_frame(Design()).back_width / INCH == pytest.approx(36 - 2 * 20 / 3)
    assert build_frame(
        change(Design(), {"opening.width": "18 in"})
    ).back_width / INCH == pytest.approx(6)
    assert build_frame(
        change(Design(), {"firebox.back_width": "30 in"})
    ).back_width / INCH == pytest.approx(30)


@settings(SLOW, max_examples=25)
@given(designs(), st.floats(0.01, 0.99))
def test_section_on_the_centre_line_agrees_with_the_level_cuts(design, where):
    """What the section shows as solid at a level is what a level cut meets on the centre line
    (shapely intersects both).
    """
    from shapely.geometry import LineString

    made = build_geometry(design)
    levels = breaks_of(made.parts)
    k = int(where * (len(levels) - 1))
    z = levels[k] + (levels[k + 1] - levels[k]) * 0.41
    for p in made.parts:
        x = made.frame.shift_at(z) if p.name in SHIFTED else 0.0
        met = cut_area(p, z).intersection(LineString([(x, -10), (x, 10)])).length
        shown = sum(
            Shape(q).buffer(0).intersection(LineString([(-10, z), (10, z)])).length
            for q in p.section()
        )
        assert shown == pytest.approx(met, abs=1e-6), p.name


def test_a_thick_chamber_lining_stays_behind_a_thin_breast():
    """Laid square to a leaning front it would come out of the wall; what is drawn still fills its
    block to the last.
    """
    made = build_geometry(
        change(
            Design(),
            {
                "firebox.breast": "3 in",
                "smoke_chamber.lining_thickness": "3 in",
                "firebox.rake": "24 in",
            },
        )
    )
    walls, lining = made.by_name["smoke chamber walls"], made.by_name["smoke chamber lining"]
    assert (
        min(
            y
            for solid in (*walls.cuts, *lining.adds)
            for ring in (solid.cut(solid.bottom), solid.cut(solid.top))
            for _, y in ring
        )
        >= 0
    )
    assert any("out of the breast" in said and "lining" in said for said in made.frame.adjusted)
    assert not any("lining" in said for said in build_geometry(Design()).frame.adjusted)


def box_round(parts):
    """Left, right, front, back of all corners of a level cut just under the top of each solid."""
    corners = [
        (x, y)
        for p in parts
        for s in p.adds
        for polygon in level_cuts(s, s.bottom + 0.999 * (s.top - s.bottom))
        for x, y in polygon
    ]
    xs, ys = zip(*corners, strict=True)
    return min(xs), max(xs), min(ys), max(ys)


def test_a_lining_laid_on_flat_chamber_sides_stays_in_the_masonry():
    """Square to a side that leans 4 in 1, a coat of 5 in would stand 20 in out at the foot: it is
    drawn thinner, and said.
    """
    flat = {"smoke_chamber.height": "7 in", "smoke_chamber.lining_thickness": "5 in"}
    made = build_geometry(change(Design(), {"firebox.wall": "24 in", **flat}))
    lining, walls = made.by_name["smoke chamber lining"], made.by_name["smoke chamber walls"]
    left, right, front, back = box_round([lining])
    assert left >= -made.frame.block_half and right <= made.frame.block_half
    assert front >= 0 and back <= made.frame.block_back
    assert any("thinner at the sides" in said for said in made.frame.adjusted)
    assert walls.volume > 0
    assert not any(
        "thinner at the sides" in said for said in build_geometry(Design()).frame.adjusted
    )


def test_a_lining_is_drawn_thinner_from_where_it_leaves_the_sides():
    """Jambs of 8 in leave 26 in to the side. At the front of the throat the opening of 36 in has drawn
    in to 15 1/3; over a rise of 3 in to a flue of 11 1/4 the side leans 3 1/4 in 1, so a coat is 3.39
    of its thickness across: 3 in ends at 25 1/2, 3 1/4 in at 26.4.
    """
    told = {"firebox.jamb": "8 in", "firebox.wall": "24 in", "smoke_chamber.height": "7 in"}
    for coat, out in (("3 in", False), ("3-1/4 in", True)):
        made = build_geometry(change(Design(), told | {"smoke_chamber.lining_thickness": coat}))
        assert made.frame.block_half == pytest.approx(26 * INCH)
        assert any("thinner at the sides" in said for said in made.frame.adjusted) == out, coat


def test_the_ring_of_an_arch_ends_in_the_breast():
    """8 ft span, 24 in rise: radius 5 ft, so the ends of a ring d deep stand 0.8 d over the jambs; a
    jamb of 16 in takes 20 in of ring, half an inch more is refused.
    """
    wide = {
        "opening.width": "96 in",
        "opening.head": "segmental",
        "opening.rise": "24 in",
        "firebox.jamb": "16 in",
        "throat.height": "36 in",
        "smoke_chamber.height": "60 in",
    }
    made = build_geometry(change(Design(), {**wide, "lintel.height": "20 in"}))
    ring = next(s for s in made.by_name["arch"].adds if isinstance(s, ArchRing))
    assert (ring.radius + ring.depth) * sin(ring.half_angle) == pytest.approx(64 * INCH)
    assert made.frame.block_half == pytest.approx(64 * INCH)
    with pytest.raises(InputError, match="Lintel height.*1'-8\".*widen the jamb"):
        change(Design(), {**wide, "lintel.height": "20-1/2 in"})


LIES = {"along the opening": "no", "front to back": "yes"}


@pytest.mark.parametrize("size", ["4.5x13", "8x12", "12x16", "13x18"])
@pytest.mark.parametrize("runs", LIES)
def test_the_long_side_of_a_liner_lies_as_it_is_told(size, runs):
    """A mason who reads it the other way sets flue and stack a quarter turn wrong: bore, liner,
    stack and their plan, and the answer of older files to *Long side front to back*.
    """
    design = change(Design(), {"flue.size": size, "flue.long_side": runs})
    made = build_geometry(design)
    along = runs == "along the opening"
    frame, (short, long) = made.frame, sorted(float(n) for n in size.split("x"))
    assert (frame.bore.width > frame.bore.depth) == along
    assert abs(frame.bore.width - frame.bore.depth) == pytest.approx((long - short) * INCH)
    assert (frame.stack_half > frame.stack_depth) == along
    adds, _ = made.by_name["flue liner"].plan((frame.shoulder_top + frame.liner_top) / 2)
    xs, ys = ([p[k] for shape in adds for p in shape] for k in (0, 1))
    assert max(xs) - min(xs) == pytest.approx((long if along else short) * INCH)
    assert max(ys) - min(ys) == pytest.approx((short if along else long) * INCH)
    assert change(Design(), {"flue.size": size, "flue.turned": LIES[runs]}) == design
    assert "long_side" in text_of(design) and "turned" not in text_of(design)
    old = text_of(design).replace(f'long_side = "{runs}"', f'turned = "{LIES[runs]}"', 1)
    assert load_text(old) == design


def test_an_old_answer_goes_when_the_file_is_saved_over(tmp_path):
    """Two answers to one question in one file would contradict each other."""
    path = tmp_path / "old.toml"
    design = change(Design(), {"flue.size": "8x12", "flue.long_side": "front to back"})
    path.write_text(
        text_of(design).replace('long_side = "front to back"', 'turned = "yes" # as it stands')
    )
    save(change(load(path), {"flue.long_side": "along the opening"}), path)
    assert "turned" not in path.read_text()
    assert load(path).flue.long_side == "along the opening"


@settings(deadline=None, max_examples=40, suppress_health_check=list(HealthCheck))
@given(
    wall=st.integers(8, 24), high=st.integers(49, 200), lining=st.integers(1, 48),
    transition=st.integers(8, 40), stack=st.integers(4, 24),
)  # fmt: skip
@example(wall=24, high=49, lining=48, transition=40, stack=24)
def test_no_chamber_lining_leaves_the_block_or_loses_its_volume(
    wall, high, lining, transition, stack
):
    """A chamber 6-1/8 in high, lined 6 in thick, under a transition of 5 in, once had less than no
    wall. Eighths of an inch, walls in inches.
    """
    try:
        made = build_geometry(
            change(
                Design(),
                {
                    "firebox.wall": f"{wall} in",
                    "firebox.jamb": f"{max(wall, 8)} in",
                    "smoke_chamber.height": f"{high / 8} in",
                    "smoke_chamber.lining_thickness": f"{lining / 8} in",
                    "smoke_chamber.transition": f"{transition / 8} in",
                    "chimney.wall": f"{stack} in",
                },
            )
        )
    except InputError:
        return
    f = made.frame
    assert all(part.volume > -1e-12 for part in (*made.parts, *made.voids))
    for solid in made.by_name["smoke chamber lining"].adds:
        for x, y in (*solid.lower, *solid.upper):
            assert abs(x) <= f.block_half + 1e-9 and -1e-9 <= y <= f.block_back + 1e-9


def test_first_moments_of_a_leaning_hopper_are_its_integrals():
    """Sides of 2 - t, middle at 1 + 2.5 t and 1 + 4.5 t, t from nought to one: the integrals of
    (2 - t)^2, of that times each middle, and times t, by hand.
    """
    hopper = Loft(0.0, 1.0, box(0, 2, 0, 2), box(3, 4, 5, 6))
    assert _moments(hopper) == pytest.approx((7 / 3, 37 / 8, 155 / 24, 11 / 12))
    tall = Loft(10.0, 12.0, hopper.lower, hopper.upper)  # everything twice, height four times
    assert _moments(tall) == pytest.approx((14 / 3, 37 / 4, 155 / 12, 44 / 12 + 10 * 14 / 3))
    upright = Loft(1.0, 3.0, box(4, 6, 7, 10), box(4, 6, 7, 10))
    assert _moments(upright) == pytest.approx((12, 60, 102, 24))
    clockwise = box(4, 6, 7, 10)[::-1]
    assert _moments(Loft(1.0, 3.0, clockwise, clockwise)) == pytest.approx((12, 60, 102, 24))


@given(designs())
@settings(deadline=None)
def test_the_chimneys_front_is_flush_or_truly_set_back(design):
    """A step of less than an inch behind the breast is none that a mason can lay or weather."""
    frame = build_geometry(design).frame
    front = frame.flue_y - frame.stack_depth
    assert abs(front) < 1e-9 or front >= INCH - 1e-9


def test_over_a_part_its_plan_is_empty():
    made = build_geometry(Design())
    lintel = made.by_name["lintel"]
    assert plan_rings(lintel, lintel.top + 1.0) == []
    assert sum(map(signed_area, plan_rings(lintel, (lintel.bottom + lintel.top) / 2))) > 0


@pytest.mark.parametrize(("method", "made"), [("modular", "refractory"), ("laid", "concrete")])
def test_the_seat_of_the_flue_is_cast_of_what_the_method_casts(method, made):
    parts = build_geometry(change(Design(), {"method": method})).by_name
    assert parts["transition"].material == made


@pytest.mark.parametrize(
    "solid",
    [
        Cylinder(0.5, 2.0, 0.3, (0.1, 0.2)),
        ArchRing(0.5, 0.2, 1.0, 0.3, 0.4),
        ArchVoid(0.5, 0.2, 1.0, 0.4, 0.1, 0.2),
        Loft(0.5, 2.0, centered(0.4, 0.0, 0.6), centered(0.3, 0.1, 0.5)),
        prism(0.5, 2.0, centered(0.4, 0.0, 0.6)),
    ],
)
def test_a_solid_that_is_moved_is_the_same_somewhere_else(solid):
    """An arch stays on the center line, and its ring at the opening plane."""
    gone = moved(solid, 0.7, -0.2, 1.3)
    assert (gone.bottom, gone.top) == pytest.approx((solid.bottom + 1.3, solid.top + 1.3))
    assert gone.volume == pytest.approx(solid.volume)
    across = 0.0 if isinstance(solid, (ArchRing, ArchVoid)) else 0.7
    back = 0.0 if isinstance(solid, ArchRing) else -0.2
    level = solid.bottom + 0.13
    for was, now in zip(level_cuts(solid, level), level_cuts(gone, level + 1.3), strict=True):
        assert np.array(now) == pytest.approx(np.array(was) + (across, back))


@pytest.mark.parametrize(
    ("told", "made"),
    [
        ("steel", "steel"),
        ("stone", "stone"),
        ("timber", "timber"),
        ("reinforced masonry", "brick"),
        ("masonry arch", "brick"),
        ("reinforced concrete", "concrete"),
        (None, "concrete"),
    ],
)
def test_a_lintel_is_of_what_is_told(told, made):
    straight = change(Design(), {"lintel.material": told or "unknown"})
    assert build_geometry(straight).by_name["lintel"].material == made
    arched = build_geometry(change(straight, {"opening.head": "segmental", "opening.rise": "5 in"}))
    assert arched.by_name["arch"].material == ("stone" if told == "stone" else "brick")


def test_every_liner_by_its_name_is_the_one_that_is_drawn():
    """As many names as the two tables have rows; each is shape and size of the bore that it chooses."""
    named = liners()
    assert len(named) == len(round_liners()) + len(rectangular_liners())
    for name, choice in named.items():
        bore = flue_bore(change(Design(), choice).flue)
        assert name == f"{'round' if bore.round else 'rectangular'} {bore.label} in"


def test_a_ring_of_a_line_or_a_spot_is_none():
    assert tidy(((0, 0), (1, 0))) == tidy(((0, 0), (0, 0), (1, 0), (1, 0))) == ()
