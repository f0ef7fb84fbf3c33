"""The paper of the set: frame, title block, marks, and figures put on a sheet."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.cutting import sheets as cutting
from fireplace_calc.drawing.details import sheet as details
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.figure import Figure, Plate
from fireplace_calc.drawing.plates.fill_sheets import filled
from fireplace_calc.drawing.plates.marked_figures import MARKED
from fireplace_calc.drawing.plates.marks import SMALL, section_mark
from fireplace_calc.drawing.plates.packing import in_columns, places
from fireplace_calc.drawing.plates.packing import in_rows as row_under_row
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.plates.title_block import in_room
from fireplace_calc.drawing.sheets.lettering import in_rows
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet

LONG = "The long and winding name of a very small hut in the far north of an invented land " * 3


@pytest.fixture(scope="module")
def boathouse():
    return load(DESIGNS / "boathouse.toml")


def box(key, paint, wide=1.0, high=0.5):
    scales = tuple(d for d in SCALES["feet-inches"] if 8 <= d <= 192)
    return Figure(key, "1", "A box", (0, 0, wide, high), (20, 5, 5, 5), paint, scales)


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("name", ["Hut", LONG, "W" * 400], ids=["short", "long", "one word"])
def test_a_title_block_is_clean_whatever_the_name(boathouse, units, size, name):
    called = ("name", "site.place", "job.client", "job.drawn", "job.checked")
    result = assess(change(boathouse, dict.fromkeys(called, name)))
    on = paper(units, size)
    for denominator, scale in SCALES[units].items():
        plate = Plate("Anything", Sheet(on.width, on.height), scale, denominator)
        ((_, sheet),) = whole_set.bound([plate], result, units, on)
        assert not collisions(sheet)


def test_a_mark_is_told_the_sheet_of_its_figure(boathouse):
    on = paper("feet-inches", "A3")
    refers = Sheet(on.width, on.height)
    section_mark(refers, (100, 200), "A", (1, 0), "section")
    section_mark(refers, (100, 100), "Z", (1, 0), "nowhere")
    made = [Plate("One", refers), Plate("Two", Sheet(on.width, on.height), figures=["section"])]
    (_, sheet), _ = whole_set.bound(made, assess(boathouse), "feet-inches", on)
    told = [label.text for label in sheet.labels if 90 < label.x < 110 and label.size == 2.5]
    assert sorted(told) == ["", "2", "A", "Z"]


def test_figures_are_drawn_to_scale_as_large_as_they_fit():
    windows = []
    on = paper("feet-inches", "A3")
    (plate,) = filled("Boxes", [box("a", windows.append)], on, SCALES["feet-inches"])
    assert plate.denominator == 8
    assert plate.figures == ["a"]
    left, right = (windows[0].at(x, 0)[0] for x in (0, 1))
    assert right - left == pytest.approx(1000 / 8)


def test_what_does_not_fit_goes_on_another_sheet():
    on = paper("feet-inches", "letter")
    wide = [box(str(n), lambda view: None, 60.0, 28.0) for n in range(3)]
    made = filled("Boxes", wide, on, SCALES["feet-inches"])
    assert [plate.figures for plate in made] == [["0", "1"], ["2"]] or len(made) == 3


def test_no_two_figures_share_a_mark():
    assert len({mark for mark, _ in MARKED.values()}) == len(MARKED)


def test_an_unknown_paper_is_refused():
    with pytest.raises(InputError, match="A5"):
        paper("feet-inches", "A5")


def test_a_text_keeps_its_size_while_it_fits():
    assert in_room("Hut", 90.0, (5.0, 2.5), 2) == (["Hut"], 5.0)
    rows, size = in_room(LONG, 90.0, (5.0, 2.5), 2)
    assert size == 2.5
    assert len(rows) == 2
    assert rows[-1].endswith("…")


@pytest.mark.parametrize("rows", [lambda text, room: in_rows(text, room, SMALL), wrapped])
def test_no_row_ends_inside_a_figure_of_the_tape(rows):
    """A mason reads 2" where 1/4" stands alone in the next row."""
    figures = ('2 1/4"', "1'-3 15/16\"", "11 1/16")
    text = "corners: {}; cut to {} or {} high, of 12 courses".format(*figures)
    for room in range(24, 90):
        told = rows(text, float(room))
        assert " ".join(told) == text
        assert all(sum(figure in row for row in told) == 1 for figure in figures)


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_every_mark_in_the_list_of_sheets_stands_on_its_sheet(name):
    """Templates were listed by a mark that no figure bore."""
    result = assess(load(DESIGNS / f"{name}.toml"))
    for module in (cutting, details):
        for plate in module.plates(result, "feet-inches", paper("feet-inches", "A3")):
            rings = {label.text for label in plate.sheet.labels}
            assert {MARKED[key][0] for key in plate.figures} <= rings


def test_a_row_as_wide_as_the_paper_stands_on_it_and_a_hair_wider_does_not():
    sizes = [(40, 30), (40, 20), (30, 10)]
    tops = [[top for _, top in row_under_row(sizes, 88.0 + over, 200)] for over in (0.0, -1e-6)]
    assert tops == [[0.0, 0.0, 190.0], [0.0, 180.0, 180.0]]


def test_the_title_block_says_no_half_sentence_beside_its_scale_bar():
    """A place of usual length stood there with *Checked...* behind it."""
    result = assess(load(DESIGNS / "boathouse.toml"))
    for _, sheet in whole_set.sheets(result, "feet-inches", "A3", makers=("rods.sheet",)):
        assert not [label.text for label in sheet.labels if "…" in label.text]


@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_details_stand_on_their_sheet_in_the_order_of_their_marks(name):
    """Row under row, as one reads: they stood wherever there was room, 8 before 3."""
    result = assess(load(DESIGNS / f"{name}.toml"))
    (plate,) = details.plates(result, "feet-inches", paper("feet-inches", "A3"))
    marks = {MARKED[key][0] for key in plate.figures}
    found = [label for label in plate.sheet.labels if label.text in marks and label.bold]
    for one, after in pairwise(sorted(found, key=lambda label: int(label.text))):
        assert after.x > one.x + 5 or after.y < one.y - 5, (one.text, after.text)


sides = st.floats(5, 90)


@given(st.lists(st.tuples(sides, sides), min_size=1, max_size=8), st.floats(90, 250), sides)
def test_boxes_that_are_packed_lie_within_and_never_over_each_other(sizes, wide, more):
    high = 120 + more
    for place in (places, row_under_row, in_columns):
        spots = place(sizes, wide, high)
        if spots is None:
            continue
        boxes = [(x, y, x + w, y + h) for (x, y), (w, h) in zip(spots, sizes, strict=True)]
        assert all(a > -1e-6 and b > -1e-6 for a, b, _, _ in boxes)
        assert all(c < wide + 1e-6 and d < high + 1e-6 for _, _, c, d in boxes)
        for n, (a, b, c, d) in enumerate(boxes):
            for e, f, g, h in boxes[:n]:
                assert c <= e + 1e-6 or g <= a + 1e-6 or d <= f + 1e-6 or h <= b + 1e-6
        if place is row_under_row:  # never back up, never to the left in a row
            assert all(y < v - 1e-9 or (y == v and x < u) for (x, y), (u, v) in pairwise(spots))


@pytest.mark.parametrize(
    ("denominator", "said"),
    [
        (48, "Check: 8 ft measures 2 in on the paper."),  # 1/4 in to the foot
        (96, "Check: 16 ft measures 2 in on the paper."),  # 1/8 in
    ],
)
def test_a_scale_bar_measures_whole_inches(boathouse, denominator, said):
    """As long as goes into 60 mm, and whole inches of the paper."""
    on = paper("feet-inches", "A3")
    plate = Plate("Anything", Sheet(on.width, on.height), "", denominator)
    ((_, sheet),) = whole_set.bound([plate], assess(boathouse), "feet-inches", on)
    assert [label.text for label in sheet.labels if label.text.startswith("Check:")] == [said]
