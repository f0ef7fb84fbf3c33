"""The cut list: every cut marked, counted as the takeoff counts, out of whole units that give it."""

import itertools
import re
from collections import Counter, defaultdict
from dataclasses import replace
from io import BytesIO
from math import asin, hypot, sqrt

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from pypdf.generic import ContentStream
from sampled import sampled
from shapely import Polygon
from shapely.affinity import scale
from sheet_ink import inked
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.brickwork import block_work as block_laying
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.arch_ring import laid_arch, voussoirs
from fireplace_calc.brickwork.bonds import BONDS
from fireplace_calc.brickwork.cut_stock import KERF
from fireplace_calc.brickwork.cutting.bevel_cuts import bevels
from fireplace_calc.brickwork.cutting.cut_marks import (
    BASE,
    EXTENSION,
    FLOOR,
    KINDS,
    LINING,
    CutList,
    StockUse,
    _marks,
    cut_list_of,
)
from fireplace_calc.brickwork.cutting.from_whole import stock_plan
from fireplace_calc.brickwork.cutting.set_arch import VoussoirRing, arch_setting
from fireplace_calc.brickwork.cutting.shapes import NICK, is_square_cut, laid_along, letter
from fireplace_calc.brickwork.work import count_bricks
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.cutting import sheets as cutting
from fireplace_calc.drawing.cutting.arch_rows import _ring, arch_blocks
from fireplace_calc.drawing.cutting.before_words import _fitted
from fireplace_calc.drawing.cutting.in_outline import (
    holds_mark,
    mark_places,
    middle,
    passes_over,
    toward,
)
from fireplace_calc.drawing.cutting.list_rows import stock_blocks
from fireplace_calc.drawing.cutting.marked_faces import MarkedFace, _numbers
from fireplace_calc.drawing.cutting.templates import taper_figure
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.figure import put
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.sheets.dimensions import CLEAR
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.polygons import box
from fireplace_calc.takeoff import take_off

MANY = settings(
    deadline=None,
    max_examples=60,
    suppress_health_check=list(HealthCheck),
)
SOME = settings(deadline=None, max_examples=16, suppress_health_check=list(HealthCheck))
MAKER = ("cutting.sheets",)
NAMES = ("plain", "boathouse", "boathouse-laid")
HERRING = {"firebox.bond": "herringbone 45", "firebox.floor_bond": "herringbone 45"}


def shipped(name, **changes):
    return assess(change(load(DESIGNS / f"{name}.toml"), changes))


def changed(design, changes):
    """Another design; what does not hold together is not asked for."""
    try:
        return change(design, changes)
    except InputError:
        assume(False)


laid = st.builds(
    lambda design, brick, bond, floor: changed(
        design,
        {"method": "laid", "firebox.lining": "firebrick", "firebox.bond": bond}
        | {"firebox.floor_bond": floor, "firebox.lining_thickness": brick},
    ),
    designs(),
    st.sampled_from(["4.5 in", "2.5 in"]),
    st.sampled_from(BONDS),
    st.sampled_from(BONDS),
)
"""Fireboxes of firebrick, in every bond."""


def firebrick_agrees(geometry):
    """List, layout and count of the takeoff are of one firebox."""
    work, cuts = lay_brickwork(geometry), cut_list_of(geometry)
    pieces = {cut.mark: cut for cut in cuts.cuts if not cut.kind}
    counted = Counter()
    assert len(cuts.on_layout) == len(work.layouts)
    for layout, marks in zip(work.layouts, cuts.on_layout, strict=True):
        assert [bool(mark) for mark in marks] == [not piece.whole for piece in layout.pieces]
        for mark in filter(None, marks):
            counted[mark] += layout.face.alike
    assert counted == {mark: cut.count for mark, cut in pieces.items()}
    for of, layouts in ((FLOOR, (work.floor,) if work.floor else ()), (LINING, work.lining)):
        if not layouts:
            assert cuts.units(of) == 0 == sum(cut.count for cut in cuts.cuts if cut.of == of)
            continue
        told = count_bricks(layouts)
        assert cuts.units(of) == told.bricks_for_cuts
        assert sum(cut.count for cut in cuts.cuts if cut.of == of) == told.pieces
        assert sum(use.units * len(use.marks) for use in cuts.stock if use.of == of) == told.pieces


@MANY
@given(laid)
def test_list_layout_and_takeoff_agree(design):
    firebrick_agrees(build_geometry(design))


def block_agrees(geometry):
    """Block that is cut by the list is that of the layout, course by course."""
    work, cuts = lay_brickwork(geometry), cut_list_of(geometry)
    for of, laid_block in (
        ("Block of the base", work.base_block),
        ("Block under the hearth extension", work.extension_block),
    ):
        if laid_block is None:
            continue
        counted = laid_block.count()
        for kind, name in KINDS.items():
            uses = [use for use in cuts.stock if use.of == f"{of}, {name}"]
            units = sum(use.units for use in uses)
            pieces = sum(use.units * len(use.marks) for use in uses)
            told = counted.get(kind)
            assert (units, pieces) == ((told.blocks_for_cuts, told.pieces) if told else (0, 0))
        for plan in set(laid_block.courses):
            marks = cuts.on_course[plan]
            assert len(marks) == len(plan.blocks)
            assert all(mark for mark, (_, cut) in zip(marks, plan.blocks, strict=True) if cut)
            if laid_block.courses.count(plan) > 1:  # one drawing of several courses, not all sawn
                assert not any(m for m, (_, cut) in zip(marks, plan.blocks, strict=True) if not cut)


@MANY
@given(designs())
def test_block_is_cut_as_it_is_counted(design):
    block_agrees(build_geometry(design))


ORDERED = {
    FLOOR: "Firebrick, cut",
    LINING: "Firebrick, cut",
    **{
        f"{of}, {name}": f"{item}, cut"
        for of in (BASE, EXTENSION)
        for name, item in (
            ("whole-high", "Base block"),
            ("half-high", "Half-high block"),
            ("packing", "Packing block"),
        )
    },
}
"""What is ordered for the cuts of each work."""
WHOLE = "Firebrick, whole"


def order_agrees(geometry):
    """Whole units for all cuts of the list are the rows of the takeoff, and no row is without cuts; so
    are the bricks of the layouts that stay whole.
    """
    cuts, wanted, work = cut_list_of(geometry), Counter(), lay_brickwork(geometry)
    for use in cuts.stock:
        wanted[ORDERED[use.of]] += use.units * cuts.wythes.get(use.of, 1)
    for of, layouts in ((FLOOR, (work.floor,)), (LINING, work.lining)):
        for layout in filter(None, layouts):
            whole = sum(piece.whole for piece in layout.pieces) * layout.face.alike
            wanted[WHOLE] += whole * cuts.wythes[of]
    told = {*ORDERED.values(), WHOLE}
    assert {row.item: row.net for row in take_off(geometry) if row.item in told} == +wanted


COUNT = re.compile(r"\d+")


def printed_rows(sheets):
    """Rows of the printed list, from the letters on the sheets: mark, count, sizes in both units."""
    for sheet in sheets:
        words = sorted((one for one in sheet.labels if one.ha == "left"), key=lambda one: one.x)

        def whole(label, words=words):
            """A cell, with what stands in its next line."""
            if not label.text.endswith(" x"):
                return label.text
            under = (one for one in words if abs(one.x - label.x) < 0.01 and one.y < label.y)
            return f"{label.text} {max(under, key=lambda one: one.y).text}"

        rows = defaultdict(list)
        for one in words:
            rows[round(one.y, 2)].append(one)
        for row in rows.values():
            for mark, count, *sizes in zip(row, row[1:], row[2:], row[3:], strict=False):
                if mark.text.isalpha() and COUNT.fullmatch(count.text) and " x" in sizes[0].text:
                    yield mark.text, int(count.text), *map(whole, sizes)


def sizes_of(text):
    """Sizes as a row has them, in either unit, and half of their last mark. [m]"""
    if text.endswith(" mm"):
        return [int(one) / 1000 for one in text[:-3].split(" x ")], 5e-4
    return [to_si(one, "length") for one in text.split(" x ")], INCH / 32


def printed_agrees(geometry, sheets):
    """The rows of the printed list, read back: every cut with its count, and the sizes of its outline
    to half a sixteenth and half a millimeter; no row besides.
    """
    told = list(printed_rows(sheets))
    for cut in cut_list_of(geometry).cuts:
        (left, low), size = np.min(cut.outline, axis=0), np.max(cut.outline, axis=0)
        assert abs(left) < 1e-9 and abs(low) < 1e-9
        for row in told:
            read = [sizes_of(text) for text in row[2:]]
            near = all(np.abs(np.array(one) - size).max() <= half + 1e-6 for one, half in read)
            if row[:2] == (cut.mark, cut.count) and near:
                told.remove(row)
                break
        else:
            raise AssertionError(f"{cut.mark}, {cut.count} of {size} is not in the list: {told}")
    assert not told, "in the printed list alone"


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("name", NAMES)
def test_order_and_printed_list_agree_with_the_cuts(name, units):
    result = shipped(name)
    order_agrees(result.geometry)
    printed_agrees(result.geometry, [sheet for _, sheet in drawn(result, units)])


@SOME
@given(laid)
def test_a_piece_is_off_its_mark_by_no_more_than_the_saw_takes(design):
    """Turned over or end for end as shapely does it, the nearest of four ways."""
    geometry = build_geometry(design)
    cuts = cut_list_of(geometry)
    shapes = {cut.mark: cut for cut in cuts.cuts}
    for layout, marks in zip(lay_brickwork(geometry).layouts, cuts.on_layout, strict=True):
        for piece, mark in zip(layout.pieces, marks, strict=True):
            if not mark:
                continue
            told, own = Polygon(shapes[mark].outline), Polygon(laid_along(piece.ring, piece.along))
            ways = (scale(told, x, y, origin="center") for x in (1, -1) for y in (1, -1))
            placed = (Polygon(np.array(way.exterior.coords) - way.bounds[:2]) for way in ways)
            # corners within the saw's width on both axes, so sides within its diagonal
            assert min(own.hausdorff_distance(way) for way in placed) <= KERF * sqrt(2) + NICK
            assert shapes[mark].size[0] <= piece.length + NICK


@SOME
@given(laid)
def test_a_whole_brick_gives_what_is_asked_of_it(design):
    geometry = build_geometry(design)
    cuts, work = cut_list_of(geometry), lay_brickwork(geometry)
    long = {cut.mark: cut.size[0] for cut in cuts.cuts}
    for use in cuts.stock:
        if use.of in (FLOOR, LINING):
            whole = (work.floor if use.of == FLOOR else work.lining[0]).unit.length
            used = sum(long[mark] for mark in use.marks) + KERF * (len(use.marks) - 1)
            assert used <= whole + NICK * len(use.marks)


def test_marks_do_not_read_as_figures():
    marks = [letter(n) for n in range(23 * 24)]
    assert len(set(marks)) == len(marks)
    assert not set("".join(marks)) & set("ilo")
    assert marks[:3] + marks[17:20] == ["a", "b", "c", "z", "aa", "ab"]


@pytest.mark.parametrize("bond", ["running", "herringbone 45"])
def test_every_side_that_is_not_square_has_its_bevel(bond):
    """Angles of the outlines as numpy finds them, against the bevels by their templates."""
    cuts = cut_list_of(shipped("plain", **{"firebox.bond": bond}).geometry)
    found = bevels(cuts)
    of = {mark: [bevel for bevel in found if mark in bevel.marks] for mark in "abcdefghjk"}
    for cut in cuts.cuts:
        if cut.kind or cut.mark not in of:
            continue
        ring = np.array(cut.outline)
        sides = np.abs(np.roll(ring, -1, axis=0) - ring)
        for along, across in sides:
            if min(along, across) > NICK:
                angle = np.degrees(np.arctan2(across, along))
                near = min(abs(np.degrees(bevel.angle) - angle) for bevel in of[cut.mark])
                assert near <= 1.0


# -- the arch ---------------------------------------------------------------------------------------
arches = st.builds(
    lambda design, rise: changed(
        design,
        {"method": "laid", "opening.head": "segmental", "opening.rise": f"{rise} in"},
    ),
    designs(),
    st.floats(1.0, 9.0),
)


@MANY
@given(arches)
def test_voussoirs_and_joints_close_the_ring(design):
    """Bricks and joints laid off along the arc, one after the other, end at the other skewback."""
    setting = arch_setting(build_geometry(design))
    assume(setting is not None)
    half = asin(min(setting.ring.span / 2 / setting.ring.radius, 1.0))
    for one in setting.rings:
        for widths, joints in (((one.thick,) * 2, one.wedge), (one.taper, (one.joint,) * 2)):
            for r, brick, joint in zip((one.inner, one.outer), widths, joints, strict=True):
                at = -half + joint / r
                for _ in range(one.bricks):
                    at += (brick + joint) / r
                assert at == pytest.approx(half, abs=1e-9)
        assert one.bricks % 2 == 1


@MANY
@given(arches)
def test_ordinates_lie_on_the_circle_through_springings_and_crown(design):
    """The circle through three points, from its determinant, not from the radius."""
    setting = arch_setting(build_geometry(design))
    assume(setting is not None)
    half, rise = setting.ring.span / 2, setting.ring.rise
    for x in setting.stations(3 * INCH):
        y = setting.ordinate(x)
        rows = [[a * a + b * b, a, b, 1.0] for a, b in ((-half, 0), (half, 0), (0, rise), (x, y))]
        assert abs(np.linalg.det(np.array(rows))) < 1e-9
    assert setting.ordinate(0.0) == pytest.approx(rise)
    assert setting.ordinate(half) == pytest.approx(0.0, abs=1e-9)


def test_an_arch_as_it_is_reckoned_by_hand():
    """Span 48, rise 8: r = (s^2 + 4 h^2) / 8 h = (2304 + 256) / 64 = 40 (chord rule, any handbook);
    half angle asin 0.6, so a skewback 10 deep goes 6 across and 8 up."""
    arched = {"opening.width": "48 in", "opening.head": "segmental", "opening.rise": "8 in"}
    high = {"lintel.height": "10 in", "throat.height": "14 in"}
    setting = arch_setting(shipped("plain", **arched, **high).geometry)
    assert setting.ring.radius == pytest.approx(40 * INCH)
    assert setting.center == pytest.approx(32 * INCH)
    assert setting.skewback == pytest.approx((6 * INCH, 8 * INCH))
    number = len(setting.rings)
    assert number > 1
    for k, one in enumerate(setting.rings):
        ends = [40 + 10 * k / number, 40 + 10 * (k + 1) / number]
        assert [one.inner / INCH, one.outer / INCH] == pytest.approx(ends)
        assert one.angle == pytest.approx(2 * asin(0.6))


def test_a_straight_head_has_no_arch():
    assert arch_setting(shipped("plain").geometry) is None


# -- the sheets -------------------------------------------------------------------------------------
def drawn(result, units="feet-inches", size="A3"):
    return whole_set.sheets(result, units, size, makers=MAKER)


CASES = [(name, size, units) for size in PAPERS for units in SCALES for name in NAMES]


@pytest.mark.parametrize(("name", "size", "units"), sampled(CASES, 3))
def test_every_shipped_design_is_clean_on_every_paper(name, size, units):
    for title, sheet in drawn(shipped(name), units, size):
        assert not collisions(sheet), title
        assert min(label.size for label in sheet.labels) >= SMALL


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize(("name", "most"), [("boathouse-laid", 1), ("plain", 2), ("boathouse", 1)])
def test_few_sheets_and_none_half_empty(name, most, units):
    made = drawn(shipped(name), units)
    assert len(made) <= most
    assert all(inked(sheet) >= 0.5 for _, sheet in made)


def test_what_is_built_first_stands_under_a_short_list():
    """Half of the list's sheet was bare while the layouts crowded the other."""
    first, second = cutting.plates(shipped("plain"), "feet-inches", paper("feet-inches", "A3"))
    assert (first.name, second.name) == (cutting.NAME, cutting.LAYOUT)
    assert first.figures == ["block_layout", "block_layout", "layout"]
    assert second.figures == ["layout_back", "layout_raked", "layout_side", *["templates"] * 2]
    texts = {label.text for label in first.sheet.labels}
    assert "Before the first course" in texts and "Block of the base" in texts


@SOME
@given(laid, st.sampled_from(sorted(SCALES)), st.sampled_from(sorted(PAPERS)))
def test_random_fireboxes_are_clean(design, units, size):
    for title, sheet in drawn(assess(design), units, size):
        assert not collisions(sheet), title


@SOME
@given(arches, st.sampled_from(sorted(SCALES)), st.sampled_from(sorted(PAPERS)))
def test_random_arches_are_clean(design, units, size):
    for title, sheet in drawn(assess(design), units, size):
        assert len(collisions(sheet)) <= 1, title  # now and then a mark between two leaders


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("changes", [{}, HERRING], ids=["as it is", "herringbone"])
def test_every_mark_of_the_list_stands_on_a_layout(name, changes):
    result = shipped(name, **changes)
    sheet = Sheet(4000.0, 4000.0)
    for n, figure in enumerate(cutting.figures(result, "feet-inches")):
        if "layout" in figure.key or "block" in figure.key:
            put(sheet, (100.0 + 900.0 * (n % 4), 100.0 + 900.0 * (n // 4)), figure, 8.0, "")
    told = Counter(label.text for label in sheet.labels)
    cuts = cut_list_of(result.geometry)
    work = lay_brickwork(result.geometry)
    assert {cut.mark for cut in cuts.cuts} <= set(told)
    for layout, marks in zip(work.layouts, cuts.on_layout, strict=True):
        assert len(layout.pieces) == len(marks)
    on_plan = Counter(m for marks in cuts.on_layout for m in marks if m)
    assert all(told[mark] == number for mark, number in on_plan.items())


def test_a_template_measures_full_size_on_the_print():
    """The outline in the PDF, in points of 1/72 in, against the slope it stands for."""
    result = shipped("plain")
    found = bevels(cut_list_of(result.geometry))
    figures = [f for f in cutting.figures(result, "feet-inches") if f.key == "templates"]
    assert len(figures) == len(found) == 2
    assert [bevel.number for bevel in found] == [1, 2]
    for bevel, figure in zip(found, figures, strict=True):
        sheet = Sheet(420.0, 297.0)
        put(sheet, (40.0, 60.0), figure, 1.0, "full size")
        file = BytesIO()
        book = PdfBook(file, "One", "One")
        book.add(sheet)
        book.save()
        reader = PdfReader(file)
        slopes, at = [], (0.0, 0.0)
        for operands, operator in ContentStream(reader.pages[0].get_contents(), reader).operations:
            if operator in (b"m", b"l"):
                to = tuple(float(v) * 25.4 / 72 for v in operands)
                if operator == b"l":
                    slopes.append((abs(to[0] - at[0]), abs(to[1] - at[1])))
                at = to
        off, over = (1000 * side for side in bevel.fall)
        near = min(hypot(along - off, across - over) for along, across in slopes)
        assert over > 50.0
        assert near < 0.2


def test_a_block_sawn_to_a_height_is_no_whole_one():
    """Each block under the hearth extension bears a mark; its figure called 8 of them whole."""
    result = assess(load(DESIGNS / "boathouse.toml"))
    sheets = cutting.plates(result, "feet-inches", paper("feet-inches", "A3"))
    told = [label.text for plate in sheets for label in plate.sheet.labels]
    assert any(text.endswith("course 1: 0 whole, 15 cut") for text in told)


def test_marks_are_found_after_many_other_designs_were_laid():
    """Block is kept for the last designs only: the cut list of an older one lost its courses, and
    the paper set of it could not be made."""
    result = assess(load(DESIGNS / "boathouse.toml"))
    on = paper("feet-inches", "A3")
    before = [plate.sheet.labels for plate in cutting.plates(result, "feet-inches", on)]
    block_laying._laid.cache_clear()
    after = [plate.sheet.labels for plate in cutting.plates(result, "feet-inches", on)]
    assert before == after


def test_each_whole_block_that_is_sawn_to_a_height_takes_a_block():
    result = assess(load(DESIGNS / "boathouse.toml"))
    cuts, laid_block = cut_list_of(result.geometry), lay_brickwork(result.geometry).extension_block
    of = "Block under the hearth extension"
    long = [cut for cut in cuts.cuts if cut.of == of and cut.kind == "sawn"]
    full = {cut.mark for cut in long if cut.size[0] > laid_block.unit.length - NICK}
    assert full
    uses = [use for use in cuts.stock if use.of.startswith(of) and full & {*use.marks}]
    assert all(len(use.marks) == 1 for use in uses)
    assert sum(use.units for use in uses) == sum(c.count for c in long if c.mark in full)


def test_bricks_too_thin_for_their_taper_at_the_back_are_not_cut_to_it():
    """A ring of 1 m and 1.5 m through 1 rad, ten bricks, joints of 10 mm: the taper is 89 mm at the
    soffit and 139 mm at the back, and whole bricks would have joints of 55 mm there.
    """
    ring = VoussoirRing(10, 1.0, 1.5, 1.0, 0.09, 0.01)
    assert ring.taper == pytest.approx((0.089, 0.139))
    assert not ring.whole and not ring.tapered
    assert replace(ring, thick=0.14).tapered


def test_leaders_of_the_far_row_pass_between_wide_marks_of_the_near_one():
    """Slivers 30 mm wide at 1:20 take two rows of marks under them, wide and narrow by turns."""
    names = ["am", "k", "mm", "ak", "i", "aa", "aw", "s", "wm", "t"]
    slivers = [
        (((n * 0.03, 0.0), (n * 0.03 + 0.03, 0.0), (n * 0.03 + 0.03, 0.2), (n * 0.03, 0.2)), mark)
        for n, mark in enumerate(names)
    ]
    sheet = Sheet(120.0, 120.0)
    MarkedFace(tuple(slivers)).paint(View(sheet, 40.0, 60.0, 50.0))
    assert {label.text for label in sheet.labels} == set(names)
    assert not collisions(sheet, CLEAR)


def test_the_longest_shape_has_the_first_mark_and_of_those_the_highest():
    rings = [box(0.0, wide, 0.0, high) for wide, high in ((8, 3), (10, 2), (10, 4), (8, 3))]
    marks, outlines = _marks(
        [tuple((x / 100, y / 100) for x, y in r) for r in rings], itertools.count()
    )
    assert marks == ["c", "b", "a", "c"]
    assert [max(x for x, _ in outlines[mark]) for mark in "abc"] == [0.1, 0.1, 0.08]


@pytest.mark.parametrize("name", ["plain", "boathouse-laid"])
def test_the_list_goes_through_each_work_in_the_order_of_marks(name):
    """A saw's helper reads down the marks, not along the courses."""
    cuts = cut_list_of(build_geometry(load(DESIGNS / f"{name}.toml"))).cuts
    for of in {cut.of for cut in cuts}:
        marks = [cut.mark for cut in cuts if cut.of == of]
        assert len(marks) > 1 and marks == sorted(marks, key=lambda mark: (len(mark), mark))


@pytest.mark.parametrize(("deep", "rings"), [(3.5, 1), (7.5, 2), (11.5, 3)])
def test_a_brick_arch_shows_a_joint_between_two_rings_and_none_at_its_ends(deep, rings):
    """Header rings of 3-1/2 in or so: joints across each, and one between each two of them."""
    told = {"opening.head": "segmental", "lintel.height": f"{deep} in", "brick.facing": "common"}
    geometry = build_geometry(
        change(Design(), {"throat.height": "16 in", "opening.rise": "6 in", **told})
    )
    laid = laid_arch(geometry)
    assert len(laid.rings) == rings
    inner = np.stack([np.linspace(-500, 500, 41), np.zeros(41)], 1)
    drawn = list(voussoirs(geometry, inner, inner + (0, 100)))
    assert len(drawn) == 2 * rings - 1
    for k, ring in enumerate(laid.rings):
        across = drawn[2 * k]
        assert across[[0, -1], 0, 0] == pytest.approx([-500, 500])
        assert across.shape == (ring.round + 1, 2, 2)
        assert across[:, :, 1] == pytest.approx(
            np.tile([100 * k / rings, 100 * (k + 1) / rings], (ring.round + 1, 1))
        )
        if k + 1 < rings:
            assert set(drawn[2 * k + 1][..., 1].ravel().round(6)) == {
                round(100 * (k + 1) / rings, 6)
            }


@pytest.mark.parametrize("corner", range(4))
@pytest.mark.parametrize("axis", [0, 1])
@pytest.mark.parametrize(("nicks", "square"), [(0.45, True), (0.55, False)])
def test_a_corner_drawn_in_by_half_a_nick_is_square_and_by_more_is_not(corner, axis, nicks, square):
    ring = [[0.0, 0.0], [0.2, 0.0], [0.2, 0.1], [0.0, 0.1]]
    ring[corner][axis] -= nicks * NICK * (1 if ring[corner][axis] > 0 else -1)
    assert is_square_cut(tuple(map(tuple, ring))) == square


@pytest.mark.parametrize("off", [(0.0, 0.0), (1e-15, -1e-15), (-1e-15, 1e-15)])
def test_what_adding_up_loses_changes_no_plan(off):
    """Four pieces of 4-1/2 in, two of 2-1/4: of those alike the first comes out of the first brick."""
    lengths = [4.5, 4.5 + off[0], 2.25, 4.5 + off[1], 4.5, 2.25 + off[0]]
    assert stock_plan(lengths, 9.25, 0.125) == [[0, 1], [3, 4], [2, 5]]


def test_pieces_of_one_mark_come_out_of_one_brick():
    """Marks as they lie on the wall, mixed; pairs of a mark are of one length."""
    from fireplace_calc.brickwork.cutting.cut_marks import _used

    used = _used("lining", [("a", 4.5), ("b", 4.5), ("a", 4.5), ("b", 4.5)], 9.25)
    assert [(use.units, use.marks) for use in used] == [(1, ("a", "a")), (1, ("b", "b"))]


SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


def test_a_mark_is_tried_from_the_middle_of_its_piece_out():
    """By hand in a square of 1 m: tenths of it each way, as far as the mark keeps within."""
    found = list(mark_places(SQUARE, "A1", 20.0))
    steps = sorted({round(10 * (x - 0.5)) for x, _ in found})
    assert found[0] == pytest.approx((0.5, 0.5)) and steps == [-3, -2, -1, 0, 1, 2, 3]
    assert {round(10 * (y - 0.5)) for _, y in found} == set(steps)
    assert {(round(10 * x, 6), round(10 * y, 6)) for x, y in found[1:5]} == {
        *((4, 5), (6, 5), (5, 4), (5, 6)),
    }
    away = [hypot(x - 0.5, y - 0.5) for x, y in found]
    assert away == pytest.approx(sorted(away))
    # A U lying on its side has room in its web alone, to the left of its middle.
    bent = ((0, 0), (1, 0), (1, 0.1), (0.25, 0.1), (0.25, 0.9), (1, 0.9), (1, 1), (0, 1))
    places = list(mark_places(bent, "A1", 60.0))
    assert places and max(x for x, _ in places) < 0.25 < middle(bent)[0]
    assert not holds_mark(bent, "A1", 60.0)


@pytest.mark.parametrize(
    ("start", "end", "over"),
    [
        ((-10, 0), (10, 0), True),
        ((-10, 2.5), (10, 2.5), False),
        ((-10, -2.5), (10, -2.5), False),
        ((0, -10), (0, 10), True),
        ((6, -10), (6, 10), False),
        ((-10, -10), (10, 10), True),
        ((-10, -2), (-6, 10), False),
        ((1, 5), (1, 10), False),
        ((-10, 0), (-6, 0), False),
        ((-10, 0), (-4, 0), True),
    ],
)
def test_a_leader_passes_over_a_mark_or_beside_it(start, end, over):
    """A mark 8 mm wide at nought, which keeps 0.9 mm clear all round."""
    assert passes_over((0.0, 0.0), 4.0, start, end) == over
    assert passes_over((0.0, 0.0), 4.0, end, start) == over
    moved = [(x + 50.0, y + 20.0) for x, y in (start, end)]
    assert passes_over((50.0, 20.0), 4.0, *moved) == over


@pytest.mark.parametrize(
    ("side", "at"),
    [("left", (0.15, 0.5)), ("right", (0.85, 0.5)), ("below", (0.5, 0.15)), ("above", (0.5, 0.85))],
)
def test_a_leader_ends_near_the_edge_of_its_side(side, at):
    """Three tenths of the way from the middle of that edge to the middle of the piece."""
    assert toward(SQUARE, side) == pytest.approx(at)
    assert toward(tuple((x + 2, y - 1) for x, y in SQUARE), side) == pytest.approx(
        (at[0] + 2, at[1] - 1)
    )


# -- what stands in the rows -------------------------------------------------------------------------
def rows_in(blocks):
    """Texts of blocks with their places across, row for row; what wraps is put together. [mm]"""
    found = []
    for block in blocks:
        sheet = Sheet(200.0, 200.0)
        block.paint(sheet, 0.0, 190.0)
        cells = {}
        for label in sheet.labels:
            cells.setdefault(label.x, []).append(label.text)
        found.append([" ".join(words) for _, words in sorted(cells.items())])
    return found


TAPER = VoussoirRing(10, 1.0, 1.5, 1.0, 0.14, 0.01)
"""Ten bricks round 1 rad, from 1 m to 1.5 m, with joints of 10 mm: 89 mm at the soffit, 139 mm at the
back.
"""


def test_bricks_that_are_cut_to_a_taper_tell_it_with_the_joint_they_keep():
    assert TAPER.tapered
    assert rows_in(_ring(TAPER, 0, 1, "millimetres", 91.4)) == [
        ["Bricks round", "10", "the middle one is the key"],
        ["Cut to a taper, soffit and back", "89 x 139 mm", '3 1/2" x 5 1/2"'],
        ["Joints, all alike", "10", '3/8"'],
    ]
    assert rows_in(_ring(TAPER, 0, 2, "millimetres", 91.4))[0][1] == "10, 2 behind one another"
    assert rows_in(_ring(TAPER, 2, 3, "feet-inches", 91.4)) == [
        ["Ring 2 round", "10, 3 behind one another", "the middle one is the key"],
        ["Cut to a taper, soffit and back", '3 1/2" x 5 1/2"', "89 x 139 mm"],
        ["Joints, all alike", '3/8"', "10"],
    ]


@pytest.mark.parametrize(("number", "name"), [(0, "Taper of the arch"), (2, "Taper of ring 2")])
def test_the_template_of_a_taper_is_narrow_at_the_soffit(number, name):
    sheet = Sheet(900.0, 900.0)
    view = put(sheet, (200.0, 200.0), taper_figure(TAPER, number, "millimetres"), 1.0, "")
    outline = sheet.lines["seen", "ink"][0] - view.at(0.0, 0.0)
    assert np.allclose(outline, [(25, 0), (114, 0), (139, 500), (0, 500), (25, 0)])
    texts = [label.text for label in sheet.labels]
    assert name in texts and "soffit 89, back 139" in texts and {"89", "500"} <= {*texts}


def test_ordinates_of_a_wide_arch_are_taken_at_double_steps():
    """84 in: every 3 in there would be 15 of them, one more than are written; 78 in has 14."""
    for wide, stations in (("84 in", [0, 6, 12, 18, 24, 30, 36, 42]), ("78 in", range(0, 42, 3))):
        told = {"opening.head": "segmental", "opening.rise": "5 in", "opening.width": wide}
        setting = arch_setting(build_geometry(change(Design(), told)))
        rows = rows_in(arch_blocks(setting, "feet-inches", 91.4))
        at = next(n for n, row in enumerate(rows) if row[0].startswith("From the center"))
        assert len(rows) - at - 1 == len(stations) <= 14
        assert rows[at + 1] == ['0"', '5"', "127"]
        assert rows[-1][0] == feet_inches(stations[-1] * INCH) and rows[-1][1:] == ['0"', "0"]
        assert rows[at + 2][0] == f'{stations[1]}"'


def test_marks_without_room_in_half_a_row_have_one_of_their_own():
    """Fourteen letters have room; what waited for the other half stands alone before them."""
    uses = (
        (3, ("a", "b")),
        (1, ("aa", "bb", "cc", "dd")),
        (2, ("aa", "bb", "cc", "ddd")),
        (1, ("e",)),
    )
    of = "Firebrick of the lining"
    cuts = CutList(stock=tuple(StockUse(of, units, marks) for units, marks in uses[:1] + uses[2:]))
    head = [[f"{of}, cuts out of 6"], ["Units", "Each gives", "Units", "Each gives"]]
    rest = [["1 to 3", "a, b"], ["4 to 5", "aa, bb, cc, ddd"], ["6", "e"]]
    assert rows_in(stock_blocks(cuts, 91.4)) == head + rest
    cuts = CutList(stock=tuple(StockUse(of, units, marks) for units, marks in uses[:2]))
    head = [[f"{of}, cuts out of 4"], ["Units", "Each gives", "Units", "Each gives"]]
    assert rows_in(stock_blocks(cuts, 91.4)) == [*head, ["1 to 3", "a, b", "4", "aa, bb, cc, dd"]]
    both = uses[2:3] + uses[:1] + uses[3:]
    cuts = CutList(stock=tuple(StockUse(of, units, marks) for units, marks in both))
    head = [[f"{of}, cuts out of 6"], ["Units", "Each gives", "Units", "Each gives"]]
    rest = [["1 to 2", "aa, bb, cc, ddd"], ["3 to 5", "a, b", "6", "e"]]
    assert rows_in(stock_blocks(cuts, 91.4)) == head + rest


def test_what_was_done_against_thin_pieces_is_said():
    """By hand, of a face of bricks 2-1/4 in high with joints of 3/8 in, each thing by itself."""
    geometry = shipped("plain", method="laid", **{"firebox.lining": "firebrick"}).geometry
    face = lay_brickwork(geometry).layouts[0]
    unit = replace(face.unit, height=2.25 * INCH, joint=0.375 * INCH, bed=0.375 * INCH)
    laid = replace(face, unit=unit, joint=0.375 * INCH, first=2.25 * INCH, closers=0, left_out=0)
    said = {
        "": laid,
        ' So that no piece is thinner than 3/8": the lowest course cut to 1 1/2".': replace(
            laid, first=1.5 * INCH
        ),
        ' So that no piece is thinner than 3/8": joints 3/8", not 1/4".': replace(
            laid, joint=0.25 * INCH
        ),
        ' 1 place is thinner than 3/8", which no saw gives: fill with mortar.': replace(
            laid, left_out=1
        ),
        ' So that no piece is thinner than 3/8": the lowest course cut to 2", a three-quarter'
        ' brick, or two alike, at 2 ends. 3 places are thinner than 3/8", which no saw gives: fill'
        " with mortar.": replace(laid, first=2 * INCH, closers=2, left_out=3),
    }
    for wanted, layout in said.items():
        assert _fitted(layout, "feet-inches") == wanted
    for bed, way, ten in ((0.5, "wider", "2'-3 1/2\""), (0.25, "thinner", "2'-1\"")):
        told = _fitted(replace(laid, unit=replace(unit, bed=bed * INCH)), "feet-inches")
        assert told.endswith(f'3/8": beds a little {way}, 10 courses to {ten}.')


@pytest.mark.parametrize(
    ("numbers", "said"),
    [
        ([4], "course 4"),
        ([1, 3], "courses 1, 3"),
        ([1, 3, 5], "odd courses"),
        ([2, 4, 6], "even courses"),
        ([3, 5, 7, 9], "courses 3 to 9, every other one"),
        ([2, 3, 4], "courses 2 to 4"),
        ([1, 4, 7], "courses 1, 4, 7"),
        ([1, 2, 4], "courses 1, 2, 4"),
    ],
)
def test_courses_are_named_by_their_numbers(numbers, said):
    assert _numbers(numbers) == said


def test_layouts_that_find_no_clear_place_are_drawn_at_the_largest_scale_all_the_same(monkeypatch):
    asked = []
    apart = cutting._apart
    monkeypatch.setattr(cutting, "_clean", lambda made: False)
    monkeypatch.setattr(cutting, "_apart", lambda *of: asked.append(of[-1]) or apart(*of))
    made = cutting.plates(shipped("plain"), "feet-inches", paper("feet-inches", "A3"))
    assert asked == [*cutting.APART] and asked[-1] == min(asked) == 8.0
    drawn = sorted(key for plate in made for key in plate.figures)
    (plain,) = [cutting.figures(shipped("plain"), "feet-inches")]
    assert drawn == sorted(figure.key for figure in plain)
