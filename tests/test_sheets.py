"""What a sheet is put together from: strings, marks, notes, tables, charts, hatches and letters, each
in its place on paper, worked out by hand in millimetres.
"""

import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc.base.units import FOOT, INCH
from fireplace_calc.drawing.annotation.level_column import level_marks, level_room, levels
from fireplace_calc.drawing.plates.marks import section_mark
from fireplace_calc.drawing.room.for_scale import person
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.chart import Chart, lines_of_text, round_steps
from fireplace_calc.drawing.sheets.dimensions import chain, note, notes, room_for
from fireplace_calc.drawing.sheets.hatch import coursing, hatch_lines, lines_in
from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow, wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Label, Sheet, View, spread
from fireplace_calc.drawing.sheets.style import DASHES, HATCHES, SMALL, TEXT, THEMES, TITLE, WEIGHT
from fireplace_calc.drawing.views.layout import ARCHITECT, LADDER, earth, fit, length, level

BOX = np.array([(0, 0), (40, 0), (40, 20), (0, 20)], float)


def at(sheet, weight, ink="ink"):
    """Polylines of one pen, rounded."""
    return [[tuple(np.round(p, 6).tolist()) for p in line] for line in sheet.lines[weight, ink]]


def labels(sheet):
    return {label.text: label for label in sheet.labels}


# -- strings -------------------------------------------------------------------------------------
def test_a_string_has_its_line_ticks_feet_and_figures():
    """30 mm from 10 to 40: the line runs 1 over, ticks 0.77 either way, feet stop 0.8 short."""
    sheet = Sheet(100, 100)
    taken = chain(sheet, [10, 40], ["3'-0\""], 20, feet=[35, 35])
    dims = at(sheet, "dimension", "dimension")
    assert dims[0] == [(9, 20), (41, 20)] and dims[1] == [(10, 34.2), (10, 19.2)]
    assert at(sheet, "flag", "dimension")[1] == [(39.23, 19.23), (40.77, 20.77)]
    (label,) = sheet.labels
    assert (label.x, label.y, label.size, label.ink) == (25, 20.7, TEXT, "dimension")
    assert (label.ha, label.va, label.turned) == ("center", "base", False)
    assert taken == pytest.approx(5.0)


def test_a_string_bottom_to_top_is_read_from_the_right():
    sheet = Sheet(100, 100)
    chain(sheet, [10, 40], ["3'-0\""], 20, along="y", side=1, feet=[15, 15])
    dims = at(sheet, "dimension", "dimension")
    assert dims[0] == [(20, 9), (20, 41)] and dims[2] == [(15.8, 40), (20.8, 40)]
    (label,) = sheet.labels
    assert (label.x, label.y, label.turned) == (19.3, 25, True)


def test_a_figure_that_is_a_little_too_wide_is_written_small():
    wide = lettering.width("3'-0\"", TEXT)
    for room, size in ((wide + 2.001, TEXT), (wide + 1.999, SMALL)):
        sheet = Sheet(100, 100)
        chain(sheet, [10, 10 + room], ["3'-0\""], 20)
        assert [label.size for label in sheet.labels] == [size]


def test_a_gap_without_a_figure_gets_none():
    sheet = Sheet(100, 100)
    chain(sheet, [20, 21, 60], ["", "1'-0\""], 50)
    assert [label.text for label in sheet.labels] == ["1'-0\""]
    assert len(at(sheet, "dimension", "dimension")) == 1  # the string, and no leader


def test_the_figure_of_a_narrow_end_stands_beyond_it():
    sheet = Sheet(100, 100)
    chain(sheet, [50, 52, 80], ['4"', "1'-0\""], 50, composed=True)
    label = labels(sheet)['4"']
    assert (label.ha, label.va, label.y) == ("right", "middle", 50)
    assert label.extent[2] < 50 - 1.0 - 0.7
    assert not collisions(sheet, 0.7)
    sheet = Sheet(100, 100)
    chain(sheet, [50, 52, 80], ['4"', "1'-0\""], 50, limits=(48, 90), composed=True)
    assert labels(sheet)['4"'].y < 50  # no room beyond: in the second row
    assert not collisions(sheet, 0.7)


def test_figures_that_find_no_place_are_reported():
    lost = []
    sheet = Sheet(100, 100)
    chain(sheet, [50, 51, 52, 53], ["10'-1\""] * 3, 50, limits=(40, 66), lost=lost)
    assert len(lost) == 1
    assert len(sheet.labels) == 2


@pytest.mark.parametrize(
    ("low", "seen"), [(0.6, True), (0.67, True), (0.71, False)], ids=["near", "just", "clear"]
)
def test_a_text_keeps_clear_of_lines(low, seen):
    """0.7 mm; figures have nothing under their base line, letters with tails do."""
    sheet = Sheet(100, 100)
    sheet.text(50, 50, "12", size=2.5)
    sheet.line([(0, 50 - low), (100, 50 - low)])
    assert bool(collisions(sheet, 0.7)) is seen
    assert not collisions(sheet) or low < 0.55
    sheet.labels.clear()
    sheet.text(50, 50, "gap", size=2.5)
    assert collisions(sheet, 0.7)


def test_marks_and_arrows_are_seen():
    sheet = Sheet(100, 100)
    section_mark(sheet, (50, 50), "A", (1, 0))
    assert not collisions(sheet, 0.7)
    sheet.text(56, 50, "1", size=2.5)
    assert any("arrow" in said for said in collisions(sheet, 0.7))
    sheet.labels.pop()
    sheet.line([(30, 50), (50, 52)])
    assert any("mark" in said for said in collisions(sheet, 0.7))


def test_figures_without_room_go_to_a_second_row_with_a_leader():
    """Two gaps of 2 mm; 4.4 mm to the row, a leader from 0.3 under the line to 0.7 from the
    letters, with room for what hangs under them where they stand over the line."""
    for side, row, far in ((-1, 15.6, 15.6 + 3.2), (1, 24.4, 22.8)):
        sheet = Sheet(100, 100)
        taken = chain(sheet, [50, 52, 54], ["1'-0\"", "2'-0\""], 20, side=side, name="here")
        assert taken == pytest.approx(9.8)
        first, second = labels(sheet)["1'-0\""], labels(sheet)["2'-0\""]
        apart = second.x - first.x
        widths = [lettering.width(text, SMALL) + 1.6 for text in ("1'-0\"", "2'-0\"")]
        assert apart == pytest.approx(sum(widths) / 2) and first.x + second.x == 104
        assert first.y == second.y == pytest.approx(row) and first.size == SMALL
        leaders = [line for line in at(sheet, "dimension", "dimension") if len(line) == 2][-2:]
        assert leaders[0] == [(51, 20 + side * 0.3), (round(first.x, 6), pytest.approx(far))]
        name = labels(sheet)["here"]
        assert (name.x, name.y, name.ha, name.va, name.ink) == (
            pytest.approx(second.x + 2.5), 20, "left", "middle", "soft",
        )  # fmt: skip
    sheet = Sheet(100, 100)
    chain(sheet, [50, 52], ["1'-0\""], 20, along="y", side=1)
    (label,) = sheet.labels
    assert (label.x, label.y, label.turned) == (pytest.approx(25.1), 51, True)
    assert at(sheet, "dimension", "dimension")[-1][1] == (pytest.approx(25.1 - 3.2), 51)
    sheet = Sheet(100, 100)
    chain(sheet, [50, 52], ["1'-0\""], 20, along="y", side=-1, limits=(60, 90))
    (label,) = sheet.labels
    assert label.x == pytest.approx(14.9) and 60 < label.y < 70, "kept within its limits"
    assert at(sheet, "dimension", "dimension")[-1][1][0] == pytest.approx(14.9 + 1.6)


def test_a_gap_of_nothing_has_no_figure_and_a_name_stands_beyond_the_end():
    sheet = Sheet(100, 100)
    chain(sheet, [10, 10, 40], ['0"', "3'-0\""], 20, name="back")
    assert [label.text for label in sheet.labels] == ["3'-0\"", "back"]
    assert labels(sheet)["back"].x == 42.5 and len(sheet.lines["flag", "dimension"]) == 3


@pytest.mark.parametrize("toward", [(1, 0), (-1, 0), (0, 1), (0, -1)])
def test_a_mark_owns_what_lies_in_its_disc_and_keeps_everything_else_off(toward):
    """A disc 8 mm wide, a letter and two lines moved out of it by tenths. What is anchored or
    ends within a fifth of a millimeter of the disc is its own. A letter farther out has to leave the
    air asked for (0.7, less 0.02), a line that passes has to leave the inner six tenths alone.
    """
    (x, y), round_it = toward, 4 * np.exp(1j * np.linspace(0, 2 * np.pi, 65))
    disc = np.column_stack([round_it.real, round_it.imag]) + 50
    across, up = {1: "left", 0: "center", -1: "right"}[x], {1: "base", 0: "base", -1: "top"}[y]

    def said(letter=None, line=None):
        sheet = Sheet(100, 100)
        sheet.fill([disc], "paper", layer=4)
        if letter:
            sheet.text(*letter, "H", ha=across, va=up)
        if line:
            sheet.line(line)
        return collisions(sheet, 0.7)

    for out in (*np.arange(2.03, 5.4, 0.1).tolist(), 7.03, 9.03, 14.0):
        end = 50 + x * out, 50 + y * out
        over = ["text 'H' lies over a mark or an arrow"] if 4.2 < out < 4.68 else []
        assert said(letter=end) == over, out
        through = ["a line runs through a mark or an arrow"]
        assert said(line=[(50, 50), end]) == through * (out > 4.2), out
        beside = [(end[0] + s * y * 9, end[1] + s * x * 9) for s in (-1, 1)]
        assert said(line=beside) == through * (out < 2.4), out


# -- levels and notes ----------------------------------------------------------------------------
def test_levels_that_fall_together_share_a_mark_lowest_first():
    marks = level_marks({"floor": 0.0, "top": 1.2, "hearth": 0.0004}, lambda z: f"{z:.1f}")
    assert marks == [(0.0, "0.0", "floor, hearth"), (1.2, "1.2", "top")]
    assert level_room(marks, stacked=False) == lettering.width("0.0  floor, hearth", SMALL)
    assert level_room(marks, stacked=True) == lettering.width("floor, hearth", SMALL)
    assert room_for(["a", "long"], 4.0, bold=True) == lettering.width("long", 4.0, True)
    assert room_for([]) == 0.0


@pytest.mark.parametrize("side", [1, -1])
def test_a_level_mark_points_from_its_level_to_its_words(side):
    sheet = Sheet(200, 100)
    levels(sheet, [(20.0, "0'-0\"", "floor"), (50.0, "8'-0\"", "top")], [90, 95], 110, side)
    lines = at(sheet, "dimension", "dimension")
    x = 110
    wanted = [95, x - side * 3.4, x - side * 1.6, x - side * 0.8]
    assert [x for x, _ in lines[1]] == pytest.approx(wanted) and {y for _, y in lines[1]} == {50}
    label = labels(sheet)["8'-0\"  top"]
    assert (label.x, label.y, label.va, label.size) == (110, 50, "middle", SMALL)
    assert label.ha == ("left" if side > 0 else "right")


@pytest.mark.parametrize("side", [1, -1])
def test_a_stacked_mark_has_the_value_over_its_line_and_the_name_under_it(side):
    sheet = Sheet(200, 100)
    levels(sheet, [(20.0, "0'-0\"", "floor")], [90], 110, side, stacked=True)
    (line,) = at(sheet, "dimension", "dimension")
    wide = max(lettering.width(text, SMALL) for text in ("floor", "0'-0\""))
    wanted = [90, 110 - side * 3.4, 110 - side * 0.6, 110 + side * wide]
    assert [x for x, _ in line] == pytest.approx(wanted, abs=1e-5)
    assert {y for _, y in line} == {20}
    value, name = labels(sheet)["0'-0\""], labels(sheet)["floor"]
    assert (value.y, value.va) == (20.75, "base") and (name.y, name.va) == (19.45, "top")
    assert {value.ha, name.ha} == {"left" if side > 0 else "right"}


def test_crowded_marks_are_spread_by_a_line_and_a_half():
    sheet = Sheet(200, 100)
    levels(sheet, [(50.0, "a", "x"), (50.5, "b", "y")], [90, 90], 110, limits=(0, 100))
    a, b = labels(sheet)["a  x"], labels(sheet)["b  y"]
    assert b.y - a.y == pytest.approx(1.55 * SMALL) and a.y + b.y == pytest.approx(100.5)
    stacked = Sheet(200, 100)
    levels(stacked, [(50.0, "a", "x"), (50.5, "b", "y")], [90, 90], 110, stacked=True)
    assert labels(stacked)["b"].y - labels(stacked)["a"].y == pytest.approx(3.3 * SMALL)


@pytest.mark.parametrize(("side", "ha", "end"), [(1, "left", 79.3), (-1, "right", 80.7)])
def test_a_note_points_with_a_dot_at_what_it_names(side, ha, end):
    sheet = Sheet(200, 100)
    notes(sheet, [((50.0, 30.0), "throat"), ((55.0, 31.0), "shelf")], 80, side)
    lines = at(sheet, "dimension", "soft")
    throat, shelf = labels(sheet)["throat"], labels(sheet)["shelf"]
    assert lines[0] == [(50, 30), (end, round(throat.y, 6))]
    assert shelf.y - throat.y == pytest.approx(1.6 * SMALL)
    assert (throat.x, throat.ha, throat.va, throat.size) == (80, ha, "middle", SMALL)
    (dots,) = [polygons for (layer, tone), polygons in sheet.fills.items() if tone == "soft"]
    ring = dots[0][0]
    assert ring.mean(axis=0) == pytest.approx((50, 30))
    assert np.hypot(*(ring - (50, 30)).T) == pytest.approx(0.45) and len(ring) == 24
    one = Sheet(200, 100)
    note(one, (1.0, 2.0), 9.0, 5.0, "word")
    assert labels(one)["word"].y == 5.0


def test_somebody_stands_on_the_floor_as_tall_as_said():
    """Shoulders about a quarter of the height, both sides alike; drawn behind and in gray."""
    sheet = Sheet(200, 200)
    person(View(sheet, 0, 0, 50.0), 2.0, 0.1, 1.8)
    (polygon,) = sheet.fills[-1, "person"]
    ring = polygon[0] / 50
    assert (ring[:, 1].min(), ring[:, 1].max()) == pytest.approx((0.1, 1.9), abs=0.01)
    assert np.ptp(ring[:, 0]) == pytest.approx(0.3 * 1.8, abs=0.02)
    assert ring[:, 0].min() + ring[:, 0].max() == pytest.approx(4.0)
    assert {*sheet.lines} == {("fine", "soft")}
    plain = Sheet(200, 200)
    person(View(plain, 0, 0, 50.0), 0.0, 0.0)
    assert np.ptp(plain.fills[-1, "person"][0][0][:, 1]) == pytest.approx(1.75 * 50, abs=0.5)


@given(st.lists(st.floats(0, 100), min_size=1, max_size=8), st.floats(1, 9))
def test_spread_keeps_order_and_distance_and_the_middle(wanted, size):
    """What is moved is moved by as little as possible: a lone block keeps its mean place."""
    wanted = sorted(wanted)
    placed = spread(wanted, [size] * len(wanted), -1e4, 1e4)
    assert all(b - a >= size - 1e-9 for a, b in zip(placed, placed[1:], strict=False))
    assert sum(placed) == pytest.approx(sum(wanted), abs=1e-6)
    low = spread(wanted, [size] * len(wanted), 40, 40 + size * len(wanted))
    assert low == pytest.approx([40 + size * (k + 0.5) for k in range(len(wanted))])
    assert spread([], [], 0, 1) == []
    assert spread([5.0, 5.0], [2.0, 6.0], -50, 50) == pytest.approx([3.0, 7.0])


# -- sheet and view ------------------------------------------------------------------------------
def test_a_view_puts_model_metres_where_they_belong():
    sheet = Sheet(100, 100)
    view = View(sheet, 10.0, 20.0, 50.0)
    assert view.at(1.0, 0.5) == (60.0, 45.0)
    view.path([(0, 0), (1, 0.5)])
    view.seen([(0, 0), (1, 0), (0, 1)], "face", "fine", layer=-2, ink="soft")
    view.seen([(0, 0), (1, 0), (0, 1)])
    view.cut([[(0, 0), (1, 0), (0, 1)]], "brick")
    view.cut([[(0, 0), (1, 0), (0, 1)]], "steel", "seen", tone="brick")
    assert at(sheet, "seen")[0] == [(10, 20), (60, 45)]
    assert at(sheet, "fine", "soft") == [[(10, 20), (60, 20), (10, 70), (10, 20)]]
    assert at(sheet, "cut") == [[(10, 20), (60, 20), (10, 70), (10, 20)]]
    assert {*sheet.fills} == {(-2, "face"), (0, "brick")} and len(sheet.fills[0, "brick"]) == 2
    assert {*sheet.hatched} == {"brick", "steel"}


def test_what_is_no_polygon_is_not_filled_and_air_not_hatched():
    sheet = Sheet(100, 100)
    sheet.fill([[(0, 0), (1, 1)]], "brick", "brick")
    assert not sheet.fills and not sheet.hatched
    sheet.fill([BOX, [(0, 0), (1, 1)]], "air", "air")
    assert len(sheet.fills[0, "air"][0]) == 1 and not sheet.hatched
    sheet.fill([BOX[:3]], "brick", "brick")
    assert len(sheet.hatched["brick"]) == 1
    assert Sheet(1, 1).fine_lines().shape == (0, 2, 2)


def test_two_sheets_put_together_hold_everything_of_both():
    one, other = Sheet(100, 100), Sheet(100, 100)
    for sheet in (one, other):
        sheet.fill([BOX], "brick", "brick")
        sheet.line(BOX)
        sheet.text(5, 5, "word")
        sheet.hatches.append(np.zeros((3, 2, 2)))
    alone = len(one.fine_lines())
    one.add(other)
    assert [len(v) for v in (one.fills[0, "brick"], one.lines["seen", "ink"], one.labels)] == [
        2
    ] * 3
    assert len(one.hatched["brick"]) == 2 and len(one.hatches) == 2
    assert alone > 3 and len(one.fine_lines()) >= 6


def test_the_larger_the_hatched_the_wider_the_hatch():
    usual, broad = Sheet(100, 100), Sheet(100, 100, hatch_size=2.0)
    for sheet in (usual, broad):
        sheet.fill([BOX], "brick", "brick")
    assert len(usual.fine_lines()) == pytest.approx(2 * len(broad.fine_lines()), abs=2)


def test_cells_meet_where_they_share_room_and_not_where_they_touch():
    cell = Cell(10, 10, 20, 20)
    for other, meets in (
        (Cell(19, 19, 30, 30), True),
        (Cell(0, 0, 11, 11), True),
        (Cell(20, 10, 30, 20), False),
        (Cell(0, 10, 10, 20), False),
        (Cell(10, 20, 20, 30), False),
        (Cell(10, 0, 20, 10), False),
        (Cell(12, 12, 13, 13), True),
    ):
        assert cell.meets(other) == other.meets(cell) == meets


# -- what a draughtsman would send back ----------------------------------------------------------
@pytest.mark.parametrize(
    ("x", "y", "fault"),
    [
        (0.1, 50, ""), (-0.1, 50, "leaves"), (50, 0.6, ""), (50, 0.4, "leaves"),
        (50, 97.2, ""), (50, 97.4, "leaves"),
    ],
)  # fmt: skip
def test_a_text_off_the_paper_is_found(x, y, fault):
    """2.7 mm letters, and what hangs under the line 0.22 of that: 0.594."""
    sheet = Sheet(100, 100)
    sheet.text(x, y, "gap", ha="left")
    assert [f for f in collisions(sheet) if "leaves" in f] == (
        ["text 'gap' leaves the sheet"] if fault else []
    )
    wide = lettering.width("gap", TEXT)
    right = Sheet(100, 100)
    right.text(100 - wide + (0.1 if fault else -0.1), 50, "gap", ha="left")
    assert bool(collisions(right)) == bool(fault)


def test_words_and_lines_that_touch_each_other_are_found():
    """A word of 10 by 2.7 mm at (20, 20); another, or a line, just off and just over it."""
    word = "over"
    wide = lettering.width(word, TEXT)
    for dx, dy, hit in (
        (wide - 0.1, 0, True), (wide, 0, False), (0, 3.2, True), (0, 3.3, False),
        (-wide + 0.1, 0, True), (-wide, 0, False), (0, -3.2, True), (0, -3.3, False),
    ):  # fmt: skip
        sheet = Sheet(100, 100)
        sheet.text(20, 20, word, ha="left")
        sheet.text(20 + dx, 20 + dy, word, ha="left")
        assert collisions(sheet) == ([f"text {word!r} lies over text {word!r}"] if hit else [])
    for line, hit in (
        ([(0, 21), (90, 21)], True),
        ([(0, 21), (19.9, 21)], False),
        ([(20 + wide + 0.1, 21), (90, 21)], False),
        ([(25, 0), (25, 19.3)], False),
        ([(25, 0), (25, 19.8)], True),
        ([(25, 22.8), (25, 90)], False),
        ([(15, 15), (35, 30)], True),
        ([(15, 22), (21, 30)], False),
    ):
        sheet = Sheet(100, 100)
        sheet.text(20, 20, word, ha="left")
        sheet.line(line)
        assert collisions(sheet) == ([f"text {word!r} lies across a seen line"] if hit else [])


@pytest.mark.parametrize(
    ("line", "leaves"),
    [
        ([(0, 0), (100, 100)], False), ([(-0.02, 5), (5, 5)], True), ([(5, -0.02), (5, 5)], True),
        ([(5, 5), (100.02, 5)], True), ([(5, 5), (5, 100.02)], True),
        ([(5, 5), (100.005, 99.9)], False),
    ],
)  # fmt: skip
def test_a_line_off_the_paper_is_found(line, leaves):
    sheet = Sheet(100, 100)
    sheet.line(line, "cut")
    assert collisions(sheet) == (["a cut line leaves the sheet"] if leaves else [])


def test_a_word_on_hatching_is_found_and_one_beside_it_is_not():
    for x, hit in ((20, True), (50, False)):
        sheet = Sheet(100, 100)
        sheet.fill([BOX], "brick", "brick")
        sheet.text(x, 10, "word", ha="left")
        assert collisions(sheet) == (["text 'word' lies across hatching"] if hit else [])


# -- letters -------------------------------------------------------------------------------------
@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("ha", ["left", "center", "right"])
@pytest.mark.parametrize("va", ["base", "middle", "top"])
@pytest.mark.parametrize("bold", [False, True])
def test_letters_lie_in_the_box_that_is_kept_free_for_them(turned, ha, va, bold):
    text, size = "Hxgq12'-0\"", 3.0
    points, codes = lettering.place(50, 60, text, size, ha, va, turned, bold)
    left, bottom, right, top = lettering.extent(50, 60, text, size, ha, va, turned, bold)
    low, high = points.min(axis=0), points.max(axis=0)
    slack = 0.3
    assert left - slack <= low[0] and bottom - slack <= low[1]
    assert high[0] <= right + slack and high[1] <= top + slack
    across, up = (points[:, 1] - 60, 50 - points[:, 0]) if turned else (points - (50, 60)).T
    wide = lettering.width(text, size, bold)
    start = {"left": 0.0, "center": -wide / 2, "right": -wide}[ha]
    base = {"base": 0.0, "middle": -size / 2, "top": -size}[va]
    assert across.min() == pytest.approx(start, abs=0.45)
    capital = lettering.outline("H", bold)[0][:, 1].max() * size
    assert capital == pytest.approx(size, rel=0.01), "capitals are as high as said"
    head = up[across < start + lettering.width("H", size, bold)]
    assert (head.min(), head.max()) == pytest.approx((base, base + size), abs=0.05)
    x, y = lettering.base(50, 60, text, size, ha, va, turned, bold)
    assert (x, y) == pytest.approx((50 - base, 60 + start) if turned else (50 + start, 60 + base))
    assert len(points) == len(codes)


def test_a_text_is_as_wide_as_its_letters():
    assert lettering.width("", 3.0) == 0.0
    single = sum(lettering.width(c, 3.0) for c in "3'-0 1/2\"")
    assert lettering.width("3'-0 1/2\"", 3.0) == pytest.approx(single)
    assert lettering.width(" ", 3.0) > 0.5 and lettering.width("W", 3.0, True) > lettering.width(
        "W", 3.0
    )
    assert lettering.font_size(2.5) == pytest.approx(2.5 / 0.73)


# -- hatching ------------------------------------------------------------------------------------
def test_parallel_lines_stand_a_gap_apart_and_keep_holes_free():
    """40 by 20 mm, lines every 4 mm from 1 up: at 1, 5, 9, 13, 17, each 40 long; a hole of 10."""
    found = lines_in([BOX], 0.0, 4.0, 1.0)
    assert sorted(set(np.round(found[:, :, 1].ravel(), 4))) == [1, 5, 9, 13, 17]
    assert np.ptp(found[:, :, 0], axis=1) == pytest.approx(40)
    hole = np.array([(10, 4), (20, 4), (20, 14), (10, 14)], float)
    other = hole + (5, 0)
    cut = lines_in([BOX], 0.0, 4.0, 1.0, [hole, other])
    long = np.hypot(*(cut[:, 1] - cut[:, 0]).T)
    assert long.sum() == pytest.approx(2 * 40 + 3 * (40 - 15))
    assert ((cut[:, :, 0] <= 10 + 1e-6) | (cut[:, :, 0] >= 25 - 1e-6) | (cut[:, :, 1] > 14)
            | (cut[:, :, 1] < 4)).all()  # fmt: skip
    upright = lines_in([BOX], 90.0, 8.0, 4.0)
    assert sorted(set(np.round(np.abs(upright[:, 0, 0]), 4))) == [4, 12, 20, 28, 36]
    assert len(lines_in([BOX], 0.0, 50.0, 30.0)) == 0


def test_brick_is_laid_in_running_bond_from_where_it_is_told():
    """Courses of 5 mm, bricks of 10: bed joints at 0, 5, 10, 15; head joints at 3, 13, 23, 33 in
    every even course and half a brick aside in the odd ones.
    """
    found = coursing([BOX], [], (3.0, 0.0), 5.0, 10.0)
    level_ones = found[np.ptp(found[:, :, 1], axis=1) < 1e-6]
    assert sorted(set(np.round(level_ones[:, 0, 1], 3))) == [0, 5, 10, 15]
    heads = found[np.ptp(found[:, :, 0], axis=1) < 1e-6]
    by_course = {}
    for x, low, high in zip(
        heads[:, 0, 0], heads[:, :, 1].min(1), heads[:, :, 1].max(1), strict=True
    ):
        assert high - low == pytest.approx(5, abs=1e-5)
        by_course.setdefault(round(low / 5), []).append(round(float(x), 3))
    assert {k: sorted(v) for k, v in by_course.items()} == {
        0: [3, 13, 23, 33], 1: [8, 18, 28, 38], 2: [3, 13, 23, 33], 3: [8, 18, 28, 38],
    }  # fmt: skip


def test_each_material_keeps_its_angles_gap_and_dots():
    """The gap is square to the lines; pairs stand their own distance apart; dots are 0.2 long."""
    for name, hatch in HATCHES.items():
        found = hatch_lines([BOX * 5], hatch)
        size = np.hypot(*(found[:, 1] - found[:, 0]).T)
        dots = int((np.abs(size - 0.2) < 1e-9).sum())
        long = found[size > 0.5]
        turned = {}
        for (ax, ay), (bx, by) in long:
            angle = round(np.degrees(np.arctan2(by - ay, bx - ax))) % 180
            t = np.radians(angle)
            turned.setdefault(angle, []).append(ay * np.cos(t) - ax * np.sin(t))
        assert sorted(turned) == sorted(a % 180 for a in hatch.angles), name
        for places in turned.values():
            steps = np.diff(np.unique(np.round(places, 4)))
            steps = steps[steps > 1e-3]
            wanted = {hatch.pair, hatch.gap - hatch.pair} if hatch.pair else {hatch.gap}
            assert {round(float(s), 3) for s in steps} == {round(w, 3) for w in wanted}, name
        assert (dots > 0) == hatch.dots, name
        if hatch.dots:
            assert dots == pytest.approx(200 * 100 / (hatch.gap**2 * 0.7), rel=0.05), name
    assert len(hatch_lines([BOX], HATCHES["air"] if "air" in HATCHES else type(hatch)())) == 0


def test_materials_that_meet_are_hatched_differently():
    """Brick and firebrick, firebrick and mortar, clay and parging: no two alike but names for one
    thing.
    """
    same = {frozenset(("steel", "metal")), frozenset(("timber", "wood"))}
    names = list(HATCHES)
    for k, one in enumerate(names):
        for other in names[:k]:
            assert HATCHES[one] != HATCHES[other] or frozenset((one, other)) in same


# -- weights, inks -------------------------------------------------------------------------------
def test_line_weights_stand_in_the_steps_of_the_standard():
    """ISO 128: pens of 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4; what is cut is twice what is seen; a lesson's
    bars, read across a room, twice the broadest line of a sheet."""
    assert WEIGHT == {
        "cut": 0.50, "seen": 0.25, "fine": 0.13, "hidden": 0.18, "dimension": 0.13,
        "ground": 0.70, "flag": 0.40, "guide": 0.25, "center": 0.18, "plane": 0.35, "frame": 0.70,
        "have": 1.4, "need": 1.4, "mark": 1.4, "tick": 1.4, "ghost": 0.7, "carried": 0.5,
    }  # fmt: skip
    assert set(WEIGHT.values()) <= {0.13, 0.18, 0.25, 0.35, 0.40, 0.5, 0.7, 1.0, 1.4}
    assert DASHES == {
        "hidden": (1.6, 1.0), "guide": (3.2, 1.1), "center": (7.0, 1.0, 0.8, 1.0),
        "plane": (5.0, 1.0, 0.8, 1.0), "ghost": (2.6, 1.6), "carried": (3.6, 2.0),
    }  # fmt: skip
    assert (SMALL, TEXT, TITLE) == (2.5, 2.7, 3.4)


def _contrast(one, other):
    """WCAG 2.1, relative luminance and contrast ratio."""

    def light(color):
        parts = [int(color[k : k + 2], 16) / 255 for k in (1, 3, 5)]
        parts = [p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]

    high, low = sorted((light(one), light(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("name", ["light", "dark", "print"])
def test_words_can_be_read_on_every_ground(name):
    """WCAG 2.1: 4.5 to 1 for words, 3 to 1 for lines that mean something."""
    theme = THEMES[name]
    for ink in (theme.ink, theme.dimension, theme.good, theme.bad):
        assert _contrast(ink, theme.paper) >= 4.5
    assert _contrast(theme.guide, theme.paper) >= 3 and _contrast(theme.soft, theme.paper) >= 4.5
    assert set(theme.tones) == set(THEMES["light"].tones)


# -- words and tables ----------------------------------------------------------------------------
@given(st.lists(st.text("abcdefgh", min_size=1, max_size=30), max_size=12), st.floats(12, 80))
def test_lines_fit_their_width_and_no_letter_is_lost(words, room):
    lines = wrapped(" ".join(words), room)
    assert all(lettering.width(line, SMALL) <= room + 1e-6 or len(line) == 1 for line in lines)
    assert "".join(lines).replace(" ", "") == "".join(words)
    broken = any(lettering.width(word, SMALL) > room for word in words)
    if not broken and words:
        assert " ".join(lines) == " ".join(words)
        for line, after in zip(lines, lines[1:], strict=False):
            assert lettering.width(f"{line} {after.split()[0]}", SMALL) > room, "no line too short"


def test_a_table_stands_in_its_columns_under_its_title():
    """Cell 10 to 110 wide, 200 high; columns of 1 and 3 parts of 94 mm, the second set right."""
    flow = TextFlow(120, 210, Cell(10, 5, 110, 205))
    flow.table(Table("Order", (Column("Item", 1), Column("Net", 3, "right")), (("sand", "12"),)))
    found = labels(flow.sheet)
    title = found["Order"]
    assert (title.x, title.size, title.bold, title.ha) == (13, TITLE, True, "left")
    assert title.y == pytest.approx(205 - 4 - TITLE - 1.0)
    under = title.y - 2.5
    assert (found["Item"].x, found["Item"].y) == pytest.approx((13, under - 4.1))
    assert (found["Net"].x, found["Net"].ha, found["Net"].bold) == (105, "right", True)
    line = under - 4.1 - 1.5
    assert at(flow.sheet, "seen") == [[(13, round(line + 0.15, 6)), (107, round(line + 0.15, 6))]]
    assert (found["sand"].x, found["sand"].y) == pytest.approx((13, line - 4.1))
    assert (found["12"].x, found["12"].ha, found["12"].size) == (105, "right", SMALL)
    row = round(line - 4.1 - 1.5 + 0.15, 6)
    assert at(flow.sheet, "fine") == [[(13, row), (107, row)]]
    assert flow.y == pytest.approx(line - 4.1 - 1.5 - 3.0)


def test_a_box_to_tick_stands_before_its_row():
    flow = TextFlow(120, 210, Cell(10, 5, 110, 205))
    table = Table("List", (Column("Item", 1),), (("sand",), ("lime",)), tick=True, before="Tick.")
    flow.table(table)
    sand, said = labels(flow.sheet)["sand"], labels(flow.sheet)["Tick."]
    assert sand.x == pytest.approx(18.5) and said.x == 13 and said.y > sand.y
    boxes = [line for line in at(flow.sheet, "seen") if len(line) == 5]
    assert len(boxes) == 2
    assert boxes[0][0] == pytest.approx((13, sand.y - 0.3))
    assert boxes[0][2] == pytest.approx((16, sand.y + 2.7))


def test_rows_go_on_over_the_page_under_their_headings():
    """Room for 200 - 4 - 2 mm; a row takes 5.6, the title 6.9 and the headings 5.6."""
    flow = TextFlow(120, 210, Cell(10, 5, 110, 205))
    rows = tuple((f"row {k}",) for k in range(60))
    flow.table(Table("Long", (Column("Item", 1),), rows))
    pages = [[label.text for label in sheet.labels] for sheet in flow.sheets]
    assert len(pages) == 2 and pages[0][:2] == ["Long", "Item"] and pages[1][0] == "Item"
    first = int((205 - 4 - 6.9 - 5.6 - 7.0) / 5.6)
    assert pages[1][1] == f"row {first}"
    assert [t for page in pages for t in page if t.startswith("row")] == [r for (r,) in rows]
    lowest = min(label.y for sheet in flow.sheets for label in sheet.labels)
    assert 7 <= lowest < 15
    flow.words("long " * 3000)
    assert len(flow.sheets) > 4
    assert all(label.y >= 7 for sheet in flow.sheets for label in sheet.labels)
    assert not any(collisions(sheet) for sheet in flow.sheets)


def test_words_are_set_from_the_left_and_indented_as_told():
    flow = TextFlow(120, 210, Cell(10, 5, 110, 205))
    flow.words("plain")
    flow.words("aside", indent=6.0, bold=True)
    plain, aside = flow.sheet.labels
    assert (plain.x, plain.y) == pytest.approx((13, 205 - 4 - 4.1))
    assert (aside.x, aside.bold) == (19, True) and plain.y - aside.y == pytest.approx(5.6)
    room = 110 - 10 - 6 - 6
    flow.words("m " * 200, indent=6.0)
    assert max(lettering.width(label.text, SMALL) for label in flow.sheet.labels) <= room + 1e-6


def test_no_title_stands_alone_at_the_foot():
    flow = TextFlow(120, 60, Cell(10, 5, 110, 55))
    while flow.y - 24 >= 7:
        flow.words("word")
    before = len(flow.sheets)
    flow.heading("Next")
    assert len(flow.sheets) == before + 1


def test_no_headings_of_columns_stand_alone_at_the_foot():
    """A paragraph, headings and one row, with ever more room: the row is where its headings are."""
    begun = []
    for high in np.arange(60.0, 80.0, 0.1):
        flow = TextFlow(120, high + 10, Cell(10, 5, 110, 5 + high))
        flow.table(Table("Order", (Column("Item", 1),), (("sand",),), before="word " * 100))
        (under,) = (set(labels(sheet)) for sheet in flow.sheets if "Item" in labels(sheet))
        assert "sand" in under
        begun.append(len(flow.sheets))
    assert begun == sorted(begun, reverse=True) and set(begun) == {1, 2}


# -- charts --------------------------------------------------------------------------------------
def chart(sheet):
    return Chart(sheet, Cell(20, 30, 120, 80), (0.0, 10.0), (-1.0, 4.0))


def test_figures_of_a_chart_stand_at_their_places():
    """100 mm for 10 across, 50 mm for 5 up from -1: ten millimetres to each."""
    sheet = Sheet(200, 100)
    c = chart(sheet)
    assert c.at(0, -1) == (20, 30) and c.at(10, 4) == (120, 80) and c.at(2.5, 0) == (45, 40)
    c.frame("speed", "pull")
    c.ticks_across([0, 5], "{:.0f}".format)
    c.ticks_up([1.0], "{:.1f}".format)
    c.curve([0, 10], [0, 4])
    c.level(2.0)
    c.band([0, 10], [0, 0], [1, 2])
    c.mark(5, 1)
    assert at(sheet, "seen")[0] == [(20, 80), (20, 30), (120, 30)]
    assert at(sheet, "fine")[:3] == [
        [(20, 30), (20, 28.8)], [(70, 30), (70, 28.8)], [(20, 50), (18.8, 50)],
    ]  # fmt: skip
    assert at(sheet, "fine")[3:] == [[(20, 40), (120, 40)], [(20, 50), (120, 60)]]
    assert at(sheet, "cut") == [[(20, 40), (120, 80)]]
    assert at(sheet, "hidden", "bad") == [[(20, 60), (120, 60)]]
    found = labels(sheet)
    assert (found["speed"].x, found["speed"].y) == (70, pytest.approx(20.2))
    assert (found["pull"].x, found["pull"].y, found["pull"].ha) == (20, 82, "left")
    assert (found["5"].x, found["5"].y) == (70, pytest.approx(24.6))
    one = found["1.0"]
    assert (one.x, one.y, one.ha, one.va) == (17, 50, "right", "middle")
    assert sheet.fills[0, "soot"][0][0].tolist() == [[20, 40], [120, 40], [120, 60], [20, 50]]
    ring = sheet.fills[2, "air"][0][0]
    assert np.hypot(*(ring - (70, 50)).T) == pytest.approx(1.5)
    assert at(sheet, "seen", "good") == [[(67.6, 50), (72.4, 50)], [(70, 47.6), (70, 52.4)]]


def test_names_of_curves_stand_beside_their_ends_without_touching():
    sheet = Sheet(200, 100)
    chart(sheet).names_right([2.0, 1.9, 4.0], ["upper", "lower", "top"])
    found = labels(sheet)
    assert found["upper"].y - found["lower"].y == pytest.approx(3.9)
    assert found["upper"].y + found["lower"].y == pytest.approx(60 + 59)
    assert (found["top"].x, found["top"].y, found["top"].ha) == (123, 80, "left")
    low = Sheet(200, 100)
    chart(low).names_right([-1.0, -1.0], ["one", "two"])
    assert min(label.y for label in low.labels) == pytest.approx(30 - 1 + 3.9 / 2)


@given(st.integers(-400, 400), st.integers(1, 800), st.integers(5, 9))
def test_round_steps_are_round_even_and_no_more_than_asked(low, wide, most):
    low, wide = low / 8, wide / 8
    steps = round_steps(low, low + wide, most)
    assert 1 <= len(steps) <= most
    assert low - 1e-6 <= steps[0] and steps[-1] <= low + wide + 1e-6
    if len(steps) > 1:
        gaps = np.diff(steps)
        assert gaps == pytest.approx(gaps[0])
        first = re.sub(r"[.0]", "", f"{gaps[0]:.6g}").removesuffix("e-05")
        assert first in {"1", "2", "25", "5"}


def test_lines_of_text_go_down():
    sheet = Sheet(100, 100)
    assert lines_of_text(sheet, 5, 50, ["a", "b"]) == pytest.approx(50 - 8.8)
    assert (labels(sheet)["b"].x, labels(sheet)["b"].y) == (5, pytest.approx(41.2))
    assert labels(sheet)["a"].ha == "left" and labels(sheet)["a"].size == TEXT


# -- scales --------------------------------------------------------------------------------------
def test_a_scale_is_called_what_it_is():
    """3/8 in to the foot is 12 over 3/8, one to 32."""
    for many, name in ARCHITECT["feet-inches"].items():
        paper, whole = name.split(" = ")
        *inches, part = paper.removesuffix('"').split()
        upper, _, lower = part.partition("/")
        on_paper = sum(map(int, inches)) + int(upper) / int(lower or 1)
        assert many == pytest.approx(12 * int(whole.split("'")[0]) / on_paper), name
    for many, name in ARCHITECT["millimetres"].items():
        assert name == f"1:{many}"
    assert {10, 20, 25, 50, 100, 200} <= ARCHITECT["millimetres"].keys()
    assert {8, 12, 16, 24, 48, 96} <= ARCHITECT["feet-inches"].keys()


def test_screen_scales_climb_in_even_steps():
    """Twenty to the decade, three decades: each about the twentieth root of ten, 1.122."""
    assert len(LADDER) == 60 and list(LADDER) == sorted(LADDER) and LADDER[0] == 1
    ratios = np.array(LADDER[1:]) / LADDER[:-1]
    assert ratios == pytest.approx(10 ** (1 / 20), rel=0.025) and LADDER[-1] == 900


def test_a_view_is_drawn_as_large_as_its_margins_allow_and_in_the_middle():
    """2 by 1 m in 130 by 120 mm less margins 10, 20, 20, 40: 100 by 60 mm, 1 to 20 fits just."""
    sheet, cell = Sheet(200, 200), Cell(5, 10, 135, 130)
    view, many = fit(sheet, cell, (-1, 0, 1, 1), (10, 20, 20, 40), (10, 25, 20, 50))
    assert (many, view.scale) == (20, 50) and view.at(-1, 0) == (15, pytest.approx(30 + 5))
    tight, less = fit(sheet, cell, (-1, 0, 1, 1.21), (10, 20, 20, 40), (10, 20, 25, 50))
    assert less == 25 and tight.at(-1, 0) == (pytest.approx(25), pytest.approx(30 + 5.8))
    _, wide = fit(sheet, cell, (-1, 0, 1.01, 1), (10, 20, 20, 40), (10, 20, 25, 50))
    assert wide == 25


@pytest.mark.parametrize(
    ("value", "american", "metric"),
    [
        (0.0, "0'-0\"", "0"),
        (6 * INCH, "0'-6\"", "152"),
        (-6 * INCH, "-0'-6\"", "-152"),
        (8 * FOOT, "8'-0\"", "2 438"),
        (-4 * FOOT, "-4'-0\"", "-1 219"),
    ],
)
def test_a_level_never_goes_without_its_feet(value, american, metric):
    assert level(value, "feet-inches") == american and level(value, "millimetres") == metric
    assert length(6 * INCH, "feet-inches") == '6"' and length(12.0, "millimetres") == "12 000"


def test_half_of_the_last_place_is_half_however_it_was_reckoned():
    """2 3/32 in and 63.5 mm, short of it by what a search of a root leaves over."""
    for short in (0.0, 1e-15, 4e-10, -4e-10):
        assert length((2 + 3 / 32) * INCH - short, "feet-inches") == '2 1/8"'
        assert length(0.0635 - short, "millimetres") == "64"
    assert length(0.0635 - 6e-10, "millimetres") == "63"


def test_ground_is_a_heavy_line_with_strokes_in_threes():
    """100 mm from 10 on: starts at 12.4, every 4.2 mm, three strokes 0.7 apart, down and back."""
    sheet = Sheet(200, 100)
    earth(View(sheet, 10, 50, 10.0), 0.0, 10.0, 0.0)
    assert at(sheet, "ground") == [[(10, 50), (110, 50)]]
    (strokes,) = sheet.hatches
    starts = np.sort(strokes[:, 0, 0])
    assert len(starts) % 3 == 0 and starts[:4] == pytest.approx([12.4, 13.1, 13.8, 16.6])
    assert starts[-1] < 110 and (strokes[:, 0, 1] == 50).all()
    falls = strokes[:, 0] - strokes[:, 1]
    assert falls[:, 0] == pytest.approx(falls[:, 1]) and set(falls[:, 0].round(6)) == {1, 1.5, 2}
    short = Sheet(200, 100)
    earth(View(short, 10, 50, 10.0), 0.0, 0.39, 0.0)
    assert not short.hatches


def test_dots_fill_each_row_from_end_to_end():
    """One to a gap, astray by at most 0.22 of it: no row begins or ends bare, none is crowded."""
    hatch = HATCHES["concrete"]
    for left in (0.0, 0.7, 13.3):
        found = hatch_lines([BOX * 2 + (left, 3.1)], hatch)
        rows = {}
        for (x, y), _ in found + (0.1, 0.0):
            rows.setdefault(round(float(y), 4), []).append(float(x))
        assert len(rows) == pytest.approx(40 / (0.7 * hatch.gap), abs=1.5)
        for places in rows.values():
            assert (
                min(places) - left <= 1.23 * hatch.gap
                and left + 80 - max(places) <= 1.23 * hatch.gap
            )
            steps = np.diff(sorted(places))
            assert steps.min() >= 0.3 * hatch.gap and steps.max() <= 1.45 * hatch.gap


def test_a_label_lies_level_and_plain_unless_told():
    left, bottom, right, top = Label(50, 50, "wide words").extent
    assert right - left > 4 * (top - bottom) and left + right == pytest.approx(100)
    told = Label(50, 50, "wide words")
    assert (told.size, told.ha, told.va, told.bold, told.ink) == (
        TEXT,
        "center",
        "base",
        False,
        "ink",
    )
