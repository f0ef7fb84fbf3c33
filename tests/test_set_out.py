"""The set-out sheet: clean, to scale, related figure to figure, every size once, none missing."""

import contextlib
import io
import re
from functools import partial
from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from sampled import sampled
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plan_sheets.throat_plan import throat_level
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.marks import numbered
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.set_out import sheets as set_out
from fireplace_calc.drawing.set_out.beside_figures import TextBlock, free_place, open_ground
from fireplace_calc.drawing.set_out.columns import AIR, REACH, heights, rows_of
from fireplace_calc.drawing.set_out.cut_marks import marks_beside
from fireplace_calc.drawing.set_out.front_set_out import front_words
from fireplace_calc.drawing.set_out.hearth_set_out import plan_words
from fireplace_calc.drawing.set_out.section_set_out import section_words, strings_under
from fireplace_calc.drawing.set_out.tape_marks import gap_texts, on_tape, told_apart
from fireplace_calc.drawing.sheets.canvas import Picture
from fireplace_calc.drawing.sheets.dimensions import TICK
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.builder import build_geometry

MILLIMETRES = "millimetres"
SHIPPED = sorted(path.name for path in DESIGNS.glob("*.toml"))
EVERY = [(name, size, units) for size in PAPERS for units in SCALES for name in SHIPPED]
CLEAR = 0.7
"""Between a letter and anything else; what a draftsman keeps. [mm]"""

FAR_OUT = {
    "arch": {"opening.head": "segmental", "opening.rise": "5 in"},
    "arch on pieces of a face": {"opening.head": "segmental", "mantel.family": "shelf"},
    "hood": {"opening.hood": "8 in"},
    "no hearth extension": {"hearth.front": "0 in"},
    "seats": {"seat.left": "40 in", "seat.right": "20 in"},
    "one seat": {"seat.right": "30 in", "hearth.front": "20 in"},
    "outside": {"chimney.location": "exterior"},
    "straight": {"breast.form": "straight"},
    "flush": {"breast.form": "flush"},
    "off center": {"breast.off_center": "9 in", "breast.projection": "8 in"},
    "across a corner": {"breast.place": "across a corner"},
    "too deep for its corner": {
        "breast.place": "across a corner",
        "breast.across": "8 ft",
        "breast.off_center": "6 in",
        "breast.projection": "8 in",
    },
    "offset": {"flue.offset": "18 in", "flue.offset_rise": "36 in"},
    "far aside at once": {"flue.offset": "60 in", "flue.offset_rise": "6 in"},
    "trim over the shoulder": {
        "surround.trim": [{"distance": "60 in", "height": "12 in"}],
        "mantel.family": "piece by piece",
    },
    "second flue": {"second_flue.serves": "appliance", "second_flue.side": "left"},
    "unknown air": {"clearance.side": "unknown", "clearance.back": "unknown"},
    "pilasters": {"mantel.family": "pilasters and frieze"},
    "overmantel": {"mantel.family": "paneled overmantel"},
    "corbels": {"mantel.family": "beam on corbels"},
    "tall": {"opening.extension": "24 in", "base.footing_depth": "96 in"},
    "floor hearth": {"base.hearth_level": "0 in"},
    "legs far out": {
        "surround.trim": [{"place": "beside", "distance": "40 in", "height": "8 in"}],
    },
}


def made(design, units=FEET_INCHES, size="A3"):
    return whole_set.sheets(assess(design), units, size, makers=("set_out.sheets",))


def laid(**changes):
    return change(load(DESIGNS / "boathouse-laid.toml"), changes)


def inked(sheet, edge=20):
    """Share of the squares of a sheet that hold any ink."""
    dots = 2.0
    picture = Picture(sheet.width, sheet.height, dots, "print")
    picture.png([(Cell(0, 0, sheet.width, sheet.height), sheet)])
    dark = np.asarray(picture.renderer.buffer_rgba())[:, :, :3].min(axis=2) < 160
    side = int(edge * dots)
    high, wide = (length // side * side for length in dark.shape)
    squares = dark[:high, :wide].reshape(high // side, side, wide // side, side)
    return squares.any(axis=(1, 3)).mean()


def check(pages):
    for name, sheet in pages:
        assert not collisions(sheet, CLEAR), name
        assert min(label.size for label in sheet.labels) >= 2.5
        assert not any("\x01" in label.text for label in sheet.labels), "marks have their sheet"


@pytest.mark.parametrize(("name", "size", "units"), sampled(EVERY, 4))
def test_every_paper_is_clean_and_used(name, size, units):
    pages = made(load(DESIGNS / name), units, size)
    check(pages)
    for title, sheet in pages:
        assert inked(sheet) >= 0.5, title


def test_a_figure_without_room_beside_its_drawing_stands_in_the_notes():
    """Names may go on a small paper; a size never."""
    design = laid(**{"mantel.family": "pilasters and frieze", "flue.offset": "12 in"})
    geometry = build_geometry(design)
    wanted = [
        said
        for said in (
            *(text for _, text in front_words(geometry, FEET_INCHES)),
            *(text for _, text in section_words(geometry, FEET_INCHES)),
            *(text for _, text in plan_words(geometry, FEET_INCHES)),
        )
        if re.search(r"\d", said)
    ]
    assert len(wanted) > 6
    for size in PAPERS:
        said = " ".join(
            label.text for _, sheet in made(design, size=size) for label in sheet.labels
        )
        assert [text for text in wanted if text not in said] == [], size


def test_a_shelf_over_the_shoulder_keeps_off_the_mark_of_the_section():
    check(made(laid(**FAR_OUT["trim over the shoulder"]), size="11x17"))


@pytest.mark.parametrize("which", sampled(FAR_OUT, 7))
def test_what_is_out_of_the_common_is_clean_too(which):
    for units, size in ((FEET_INCHES, "11x17"), (MILLIMETRES, "A4")):
        check(made(laid(**FAR_OUT[which]), units, size))


def test_the_boathouse_stands_on_one_sheet_at_half_an_inch_to_the_foot():
    ((title, sheet),) = made(load(DESIGNS / "boathouse.toml"))
    assert title == set_out.ALL
    assert '1/2" = 1\'-0"' in {label.text for label in sheet.labels}
    letter = made(load(DESIGNS / "boathouse.toml"), size="letter")
    assert [title for title, _ in letter] == [set_out.UPRIGHT, set_out.PLANS]


MORE = st.fixed_dictionaries(
    {},
    optional={
        "mantel.family": st.sampled_from(
            ["none", "shelf", "beam on corbels", "pilasters and frieze", "paneled overmantel"]
        ),
        "seat.left": st.integers(0, 60).map(lambda n: f"{n} in"),
        "seat.right": st.integers(0, 60).map(lambda n: f"{n} in"),
        "opening.hood": st.integers(0, 8).map(lambda n: f"{n} in"),
        "hearth.side": st.integers(0, 24).map(lambda n: f"{n} in"),
        "clearance.side": st.sampled_from(["unknown", "0 in", "2 in", "6 in"]),
        "clearance.back": st.sampled_from(["unknown", "0 in", "4 in", "8 in"]),
        "breast.projection": st.integers(0, 20).map(lambda n: f"{n} in"),
        "breast.off_center": st.integers(-12, 12).map(lambda n: f"{n} in"),
        "breast.place": st.sampled_from(["in a wall", "across a corner"]),
        "breast.across": st.integers(60, 240).map(lambda n: f"{n} in"),
        "site.grade": st.integers(0, 40).map(lambda n: f"{n} in"),
        "chimney.location": st.sampled_from(["interior", "exterior"]),
        "house.ceiling": st.integers(84, 160).map(lambda n: f"{n} in"),
    },
)


def with_more(design, more):
    for key, value in more.items():
        with contextlib.suppress(InputError):
            design = change(design, {key: value})
    return design


@given(designs(), MORE, st.sampled_from(sorted(PAPERS)), st.sampled_from(sorted(SCALES)))
@settings(
    max_examples=16,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
def test_random_designs_are_clean(design, more, size, units):
    pages = made(with_more(design, more), units, size)
    check(pages)
    for title, sheet in pages:
        assert inked(sheet) >= 0.5, title


# -- figures related to each other ------------------------------------------------------------------
def placed_together(design, units=FEET_INCHES, size="A3"):
    geometry = build_geometry(design)
    for denominator in SCALES[units]:
        if denominator >= set_out.LARGEST[units]:
            arranged = set_out.together(
                set_out.figures(geometry, units, denominator), paper(units, size)
            )
            if arranged:
                return arranged
    raise AssertionError("no scale fits")


@pytest.mark.parametrize("name", SHIPPED)
@pytest.mark.parametrize("units", SCALES)
def test_front_section_and_plan_share_their_lines(name, units):
    ((_, sheet),) = made(load(DESIGNS / name), units)
    ground = [line for line in sheet.lines["ground", "ink"] if np.ptp(line[:, 1]) == 0]
    floors = [line[0, 1] for line in ground if line[0, 1] == max(each[0, 1] for each in ground)]
    assert len(floors) >= 2, "the floor of the front, and of the section"
    upright = [line for line in sheet.lines["center", "ink"] if np.ptp(line[:, 0]) == 0]
    centers = sorted(line[0, 0] for line in upright)
    assert centers[1] - centers[0] <= 0.01, "front and plan stand on one center line"
    arranged = placed_together(load(DESIGNS / name), units)
    (_, x, floor), (_, _, other), (_, under, _), _ = arranged
    assert floor == other and x == under
    assert len({placed.denominator for placed, _, _ in arranged}) == 1


@pytest.mark.parametrize("size", ["A3", "letter"])
def test_marks_name_the_sheet_of_their_figure(size):
    pages = made(load(DESIGNS / "boathouse.toml"), size=size)
    found = {}
    for n, (_, sheet) in enumerate(pages, 1):
        titles = {label.text for label in sheet.labels if label.bold}
        for word, mark in (("Section", "A"), ("Plan at hearth", "B"), ("Plan at flue", "C")):
            if word in titles:
                found[mark] = str(n)
    told = set()
    for _, sheet in pages:
        for one in sheet.labels:
            if one.bold and one.text in found and one.size == 2.5:
                (number,) = (
                    each.text
                    for each in sheet.labels
                    if each.x == one.x and each.size == 2.5 and each.va == "top" and not each.bold
                    and 0 < one.y - each.y < 3
                )  # fmt: skip
                assert number == found[one.text]
                told.add(one.text)
    assert told == {"A", "B", "C"}


# -- drawn again from what is written -----------------------------------------------------------
TAPE = re.compile(r"(-?)(?:(\d+)'-)?(?:(\d+) )?(?:(\d+)/(\d+)|(\d+))\"")


def read(text):
    """A length as it is written, feet and inches or millimeters. [m]"""
    if '"' not in text:
        return int(re.match(r"(?:\D*  )?([\d  ]+)", text)[1].replace(" ", "")) / 1000
    sign, feet, whole, top, bottom, inches = TAPE.search(text).groups()
    value = int(feet or 0) * FOOT
    value += int(inches or whole or 0) * INCH + (int(top) / int(bottom) * INCH if top else 0.0)
    return -value if sign else value


def read_strings(sheet):
    """Every string of a sheet: along which way, and the lengths that are written on it, by the
    ticks they stand between.
    """
    for string in sheet.measured:
        names = [label for label in sheet.labels[slice(*string.written)] if label.ink != "soft"]
        texts = [label.text for label in names]
        yield string, [(text, read(text)) for text in texts]


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("name", SHIPPED)
def test_every_string_measures_what_it_says(name, units):
    """The pen's places over the scale against what is written; half a mark of the tape at each
    end.
    """
    mark = INCH / 16 if units == FEET_INCHES else 1e-3
    for size in ("A3", "letter"):
        for (_, sheet), plate in zip(
            made(load(DESIGNS / name), units, size),
            set_out.plates(assess(load(DESIGNS / name)), units, paper(units, size)),
            strict=True,
        ):
            assert sheet.measured
            for string, told in read_strings(sheet):
                gaps = [(b - a) * plate.denominator / 1000 for a, b in pairwise(string.stops)]
                for text, value in told:
                    assert min(abs(value - gap) for gap in gaps) <= mark + 1e-6, text


LEVELS = (
    *(
        "footing_bottom",
        "footing_top",
        "slab_bottom",
        "slab_top",
        "hearth",
        "extension_top",
        "spring",
    ),
    *("opening_top", "clear_top", "throat", "taper_top", "flue_start", "block_top", "shoulder_top"),
)
NEAR = {FEET_INCHES: INCH / 16, MILLIMETRES: 2e-3}
"""How far a point drawn from the figures alone may lie from where it is. [m]"""


def written(placed, along, known=(0.0,)):
    """Places that follow from nothing but the figures of one drawing, from places known before:
    its datum, or what another drawing gave. [m]
    """
    sheet = set_out.Sheet(9000, 9000)
    placed.put(sheet, 4500, 4500)
    k = 1000 / placed.denominator
    spans = []
    for string, told in read_strings(sheet):
        if string.along != along:
            continue
        left = [value for _, value in told]
        for a, b in pairwise((stop - 4500) / k for stop in string.stops):
            near = min(left, key=lambda value, a=a, b=b: abs(value - (b - a)), default=None)
            if near is not None and abs(near - (b - a)) < 2e-3:
                left.remove(near)
                spans += [(a, b, near), (b, a, -near)]
        assert not left, "a figure that belongs to no gap"
    found = {place: place for place in known}
    for _ in spans:
        for start, end, value in spans:
            at = next((at for place, at in found.items() if abs(place - start) < 1e-3), None)
            if at is not None:
                found.setdefault(end, at + value)
    return list(found.values())


def holds(places, wanted, name, near):
    assert min(abs(place - wanted) for place in places) <= near + 1e-9, name


def drawn_again(geometry, units):
    """Front, section and plans, drawn again from what is written on them."""
    f, d = geometry.frame, geometry.design
    held = partial(holds, near=NEAR[units])
    denominator = next(n for n in SCALES[units] if n >= 24)
    front, section, plan, flue = set_out.figures(geometry, units, denominator)
    up = written(section, "y", written(front, "y"))
    for name in LEVELS:
        if name == "extension_top" and d.hearth.front <= 0:
            continue  # there is none
        held(up, getattr(f, name), name)
    if f.lean > 0:
        held(up, f.back_bend, "back bend")
    across = written(front, "x")
    for side in (-1, 1):
        held(across, side * f.half_width, "opening")
        held(across, side * f.block_half, "breast")
    deep = written(plan, "y")
    for name, y in (("hearth", -d.hearth.front), ("back", f.depth), ("breast", f.block_back)):
        held(deep, y, name)
    if d.piece_set is None and f.depth + d.firebox.lining_thickness < f.block_back:
        held(deep, f.depth + d.firebox.lining_thickness, "lining")
    if d.hearth.front > 0:
        for side, reach in ((-1, d.seat.left), (1, d.seat.right)):
            for x in (f.half_width + d.hearth.side, f.half_width + d.hearth.side + reach):
                held(written(plan, "x"), side * x, "hearth")
    cut = written(section, "x", (0.0, f.block_back))
    out = d.base.footing_projection
    for name, y in (
        ("footing in front", -out),
        ("footing behind", f.block_back + out),
        ("breast", f.breast),
        ("throat's front", f.throat_front),
        ("throat's back", f.throat_back),
        ("flue", f.flue_y),
    ):
        held(cut, y, name)
    middle = written(flue, "x")
    for side in (-1, 1):
        held(middle, f.stack_middle + side * f.stack_half, "chimney")
    sheet = set_out.Sheet(9000, 9000)
    flue.put(sheet, 4500, 4500)
    said = " ".join(label.text for label in sheet.labels)
    if "flush with the breast" not in said:
        held(written(flue, "y"), -f.stack_depth, "depth of the chimney")
    plan.put(sheet, 4500, 4500)
    said = " ".join(label.text for label in sheet.labels)
    (wide,) = re.findall(r"back ([-\d '/\"]+) wide", said)
    assert abs(read(wide) - f.back_width) < NEAR[units]


@pytest.mark.parametrize("units", SCALES)
@pytest.mark.parametrize("name", SHIPPED)
def test_shipped_designs_are_drawn_again_from_their_figures(name, units):
    drawn_again(build_geometry(load(DESIGNS / name)), units)


@pytest.mark.parametrize(
    "set_of", sampled([{"pieces.set": name} for name in ("middling", "small", "wide")], 1)
)
def test_a_set_of_pieces_is_clean_and_drawn_again(set_of):
    for changes in ({}, {"opening.head": "segmental"}, {"pieces.facing": "0 in"}):
        design = change(Design(), set_of | {"flue.sections": 20} | changes)
        for units in SCALES:
            check(made(design, units, "11x17"))
            drawn_again(build_geometry(design), units)


@pytest.mark.parametrize("which", sampled(FAR_OUT, 6))
def test_what_is_out_of_the_common_is_drawn_again_from_its_figures(which):
    drawn_again(build_geometry(laid(**FAR_OUT[which])), FEET_INCHES)


@given(designs(), MORE, st.sampled_from(sorted(SCALES)))
@settings(
    max_examples=16,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
def test_random_designs_are_drawn_again_from_their_figures(design, more, units):
    drawn_again(build_geometry(with_more(design, more)), units)


@given(designs(), st.sampled_from(sorted(SCALES)))
@settings(
    max_examples=16,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
def test_no_height_is_given_twice_and_none_contradicts(design, units):
    """Levels as knots, figures as threads: front and section are tied at the hearth alone, into one
    tree with no ring. Levels that only happen to agree are two knots.
    """
    geometry = build_geometry(design)
    denominator = next(n for n in SCALES[units] if n >= 40)
    hearth = geometry.frame.hearth * 1000 / denominator
    threads, ends = 0, set()
    for placed in set_out.figures(geometry, units, denominator)[:2]:
        sheet = set_out.Sheet(4000, 4000)
        placed.put(sheet, 2000, 2000)
        (string,) = (each for each in sheet.measured if each.along == "y")
        written = string.written[1] - string.written[0]
        assert written == len(string.stops) - 1, "a figure in every gap"
        assert list(string.stops) == sorted(string.stops)
        near = [abs(stop - 2000 - hearth) < 0.05 for stop in string.stops]
        assert sum(near) == 1, "tied at the hearth"
        threads += written
        ends |= {
            (placed.figure.key, stop)
            for stop, tied in zip(string.stops, near, strict=True)
            if not tied
        }
    assert threads == len(ends), "a tree has one thread less than knots, the hearth among them"


@given(
    st.lists(st.floats(0, 5), min_size=2, max_size=9, unique=True), st.sampled_from(sorted(SCALES))
)
def test_a_string_sums_to_its_places(stops, units):
    """Each place is rounded once: no sum of figures is farther off than half a mark."""
    stops = told_apart(stops, units)
    mark = INCH / 16 if units == FEET_INCHES else 1e-3
    at = on_tape(stops[0], units)
    for text, stop in zip(gap_texts(stops, units), stops[1:], strict=True):
        at += read(text)
        assert abs(at - stop) <= mark / 2 + 1e-6


def test_a_figure_is_not_broken_over_two_rows():
    assert rows_of("flue goes over 5'-7 15/16\" at 2 699 there", 26.0) == [
        "flue goes over",
        "5'-7 15/16\" at",
        "2 699 there",
    ]


# -- the PDF, measured back -------------------------------------------------------------------------
@pytest.mark.parametrize("units", SCALES)
def test_the_pdf_measures_to_scale(units):
    """The lines of the page's own stream, in points of 1/72 in, as ISO 32000 has them (from
    memory): every tick stands where the sheet has it, and a whole string is to scale.
    """
    design = load(DESIGNS / "boathouse-laid.toml")
    ((_, sheet),) = made(design, units)
    (plate,) = set_out.plates(assess(design), units, paper(units, "A3"))
    file = io.BytesIO()
    book = PdfBook(file, "Set out", "Test")
    book.add(sheet)
    book.save()
    (page,) = PdfReader(file).pages
    stream = page.get_contents().get_data().decode("latin-1")
    points = np.array(
        [(float(x), float(y)) for x, y in re.findall(r"([-\d.]+) ([-\d.]+) [ml]\b", stream)]
    )
    points *= 25.4 / 72
    opening = next(s for s in sheet.measured if s.along == "x" and len(s.stops) == 5)
    for stop in opening.stops:
        near = points[np.abs(points[:, 1] - opening.line).argsort()]
        assert np.abs(near[:400, 0] - stop).min() < 0.05
    jambs = (opening.stops[3] - opening.stops[1]) * plate.denominator / 1000
    width = 2 * build_geometry(design).frame.half_width
    assert abs(jambs - width) * 1000 / plate.denominator < 0.2


@pytest.mark.parametrize("name", SHIPPED)
def test_no_hatch_stands_twice_in_the_legend(name):
    """Mantel and framing are one hatch: it was called wood and timber."""
    made = whole_set.sheets(
        assess(load(DESIGNS / name)), FEET_INCHES, "A3", makers=("set_out.sheets",)
    )
    words = [label.text for _, sheet in made for label in sheet.labels]
    assert words.count("wood") == 1 and "timber" not in words


def test_words_beside_front_and_section_say_what_is_drawn():
    """Corbels 2 in beside the opening under a beam 10 in beyond it; a flue shifted to the right; the
    transition bears on half of a wall of 4 in.
    """
    told = {"mantel.family": "beam on corbels", "flue.offset": "18 in"}
    geometry = build_geometry(change(Design(), told))
    said = " ".join(text for _, text in front_words(geometry, FEET_INCHES))
    assert 'corbel 4" wide, 2" beside the opening' in said
    assert "go over 1'-6\" to the right" in said
    assert geometry.design.chimney.wall == pytest.approx(4 * INCH)
    assert 'bears 2" on the wall' in " ".join(
        text for _, text in section_words(geometry, FEET_INCHES)
    )


def test_slab_and_plates_are_told_apart():
    """The boathouse: a slab of 6 in, and plates of 3 1/2 in on it."""
    sheets = made(load(DESIGNS / "boathouse.toml"))
    texts = [label.text for _, sheet in sheets for label in sheet.labels]
    assert '6"  slab' in texts and '3 1/2"  base plates' in texts


@pytest.mark.parametrize(("off", "way"), [("9 in", "right"), ("-9 in", "left")])
def test_off_the_middle_of_the_wall_says_to_which_side(off, way):
    geometry = build_geometry(change(Design(), {"breast.off_center": off}))
    said = " ".join(text for _, text in plan_words(geometry, FEET_INCHES))
    assert f'center 9" {way} of the wall' in said


def test_across_a_corner_the_mason_is_told_its_width_and_what_is_missing():
    """A block of 60 by 28-1/2 in and 4 in of air, 8 in before the wall: 2 (30 + 20.5 + 5.66) is
    112.3 in, 16.3 in more than 8 ft; half of that is missing in depth.
    """
    told = {"breast.place": "across a corner", "breast.across": "8 ft", "breast.projection": "8 in"}
    design = change(Design(), told)
    said = " ".join(text for _, text in plan_words(build_geometry(design), FEET_INCHES))
    assert 'wall across the corner, 8\'-0" wide, air 2"; 9\'-4 1/2" would do' in said
    assert '8 1/2" too deep for the corner with its air' in said
    texts = [label.text for _, sheet in made(design) for label in sheet.labels]
    assert not [text for text in texts if text.endswith("  air")]  # no framing square behind
    wide = change(design, {"breast.across": "unknown"})
    said = " ".join(text for _, text in plan_words(build_geometry(wide), FEET_INCHES))
    assert "air 4\" to the corner's walls" in said and "too deep" not in said


def test_air_behind_is_what_is_left_behind():
    """5 in behind and 3 in beside: the string of depths has the first."""
    told = {"clearance.back": "5 in", "clearance.side": "3 in"}
    sheets = made(change(load(DESIGNS / "plain.toml"), told))
    texts = [label.text for _, sheet in sheets for label in sheet.labels]
    assert '5"  air' in texts and '3"  air' not in texts


def test_without_a_hearth_extension_there_is_no_drop_to_it():
    """Front and section told how deep lay what is not there."""
    told = {"hearth.front": "0 in", "hearth.drop": "1/2 in", "base.hearth_level": "12 in"}
    texts = [label.text for _, sheet in made(laid(**told)) for label in sheet.labels]
    assert not any("drop" in text for text in texts)
    told["hearth.front"] = "20 in"
    texts = [label.text for _, sheet in made(laid(**told)) for label in sheet.labels]
    assert any("drop" in text for text in texts)


@pytest.mark.parametrize("name", SHIPPED)
def test_a_footing_that_projects_alike_says_so_in_front_and_behind(name):
    """Rounded place by place 8 in came to 203 mm in front and 204 mm behind."""
    geometry = build_geometry(load(DESIGNS / name))
    for units in (FEET_INCHES, MILLIMETRES):
        ((_, texts, _),) = [row for row in strings_under(geometry, units) if row[2] == "footing"]
        assert texts[0] == texts[2] == length(geometry.design.base.footing_projection, units)


def test_marks_of_the_plans_keep_off_words_and_lines():
    """By hand: a mark moves where a word takes its place, and is left out where its line would cross
    one, or a line runs all along its column.
    """
    geometry, start = build_geometry(Design()), 150.0

    def marked_beside(*in_the_way):
        sheet = Sheet(300.0, 400.0)
        view = View(sheet, 100.0, 150.0, 40.0)
        at = view.at(0.0, throat_level(geometry))[1]
        for put in in_the_way:
            put(sheet, at)
        before = len(sheet.labels)
        marks_beside(view, geometry, start)
        numbered(sheet, {"throat_plan": "3", "base_plan": "3"})
        assert collisions(sheet) == []
        return {label.text: label.y for label in sheet.labels[before:] if label.text in "DE"}

    free = marked_beside()
    assert set(free) == {"D", "E"}
    moved = marked_beside(lambda sheet, at: sheet.text(start + 4.0, at, "word"))
    assert moved["D"] == free["D"] and abs(moved["E"] - free["E"]) > 2.0
    crossed = marked_beside(lambda sheet, at: sheet.text(start - 9.0, at - 1.0, "word"))
    assert crossed == {"D": free["D"]}
    column = [(start + 2.0, 0.0), (start + 2.0, 400.0)]
    assert marked_beside(lambda sheet, at: sheet.line(column, "seen")) == {}


@pytest.mark.parametrize(
    ("told", "wanted"),
    [  # the slab's underside 6-1/2 in below the floor: grade over it stands behind a wall outside
        ({"chimney.location": "exterior", "site.grade": "2 in"}, (0.9063, -2 * INCH)),
        ({"site.grade": "2 in"}, None),
        ({"chimney.location": "exterior", "site.grade": "12 in"}, (-0.598, -12 * INCH)),
    ],
)
def test_grade_is_told_in_front_of_the_footing_or_behind_a_wall_outside(told, wanted):
    geometry = build_geometry(change(Design(), told))
    said = [word for word in section_words(geometry, FEET_INCHES) if "grade" in word[1]]
    deep = told["site.grade"].partition(" ")[0]
    name = "grade -1'-0\"" if deep == "12" else f"grade -0'-{deep}\""
    assert [text for _, text in said] == [name] * (wanted is not None)
    assert [place for place, _ in said] == [pytest.approx(wanted)] * (wanted is not None)


def test_trim_that_is_told_piece_by_piece_is_named_once_with_its_size():
    """An opening of 36 by 30 in, 12 in over the floor: a board 60 in long, and a leg on either side
    of which the right one is named; where nobody told how high, that is said.
    """
    told = {"mantel.family": "piece by piece"}
    told["surround.trim"] = [
        {"name": "board", "distance": "12 in", "height": "6 in"},
        {"name": "leg", "place": "beside", "distance": "10 in", "height": "8 in"},
        {"name": "ledge", "height": "2 in"},
    ]
    geometry = build_geometry(change(Design(), told))
    words = front_words(geometry, FEET_INCHES)
    said = dict(reversed(word) for word in words)
    top, edge = geometry.frame.opening_top, 0.02
    assert said["board, 5'-0\" long"] == pytest.approx((30 * INCH - edge, top + 15 * INCH))
    leg = said['leg, 8" wide, beside the opening by 10"']
    assert leg == pytest.approx((36 * INCH - edge, top / 2))
    assert any(text.startswith("ledge, ") and text.endswith(", height not told") for text in said)
    assert len(words) == len(said) == 4


def test_only_heights_with_a_figure_have_ticks():
    """Four stops, the middle gap figured: its ends have a tick and a line to the model."""
    sheet = Sheet(100.0, 100.0)
    heights(sheet, [10, 20, 40, 70], ["", "1'-0\"", ""], 50.0, 1, [30.0] * 4, (5.0, 95.0))
    ticks = [line[0] for line in sheet.lines["flag", "dimension"]]
    tick = TICK * 0.7
    assert np.allclose(ticks, [(50 - tick, 20 - tick), (50 - tick, 40 - tick)])
    feet = [line for line in sheet.lines["dimension", "dimension"] if line[0][0] == 30.0]
    assert np.allclose(feet, [[(30, 20), (50.8, 20)], [(30, 40), (50.8, 40)]])
    along = [line for line in sheet.lines["dimension", "dimension"] if line[0][0] == 50.0]
    assert np.allclose(along[0], [(50, 19), (50, 41)])
    assert np.allclose(along[1], [(50, 30), (50 + REACH - AIR, 30)]) and len(along) == 2
    (label,) = sheet.labels
    assert (label.text, label.x, label.y, label.ha) == ("1'-0\"", 50.0 + REACH, 30.0, "left")
    (string,) = sheet.measured
    assert list(string.stops) == [10, 20, 40, 70]


def test_a_block_larger_than_the_sheet_has_no_place():
    ground = open_ground(Sheet(40.0, 30.0))
    field = [Cell(2.0, 3.0, 38.0, 28.0)]
    assert free_place(ground, field, TextBlock(20.0, 9.5, ())) == Cell(2.0, 3.0, 22.0, 12.5)
    for wide, high in ((50.0, 9.0), (20.0, 50.0), (50.0, 50.0), (42.0, 9.0), (20.0, 32.0)):
        assert free_place(ground, field, TextBlock(wide, high, ())) is None


def test_a_block_stands_as_low_and_then_as_far_left_as_it_is_free():
    """A box of 10 by 5 mm in the lower left corner: low beside it, else over it in the same column."""
    sheet = Sheet(40.0, 30.0)
    sheet.fill([np.array([(2.0, 3.0), (12.0, 3.0), (12.0, 8.0), (2.0, 8.0)])], "wood")
    ground, free = open_ground(sheet), TextBlock(20.0, 6.0, ())
    assert free_place(ground, [Cell(2.0, 3.0, 38.0, 28.0)], free) == Cell(15.0, 3.0, 35.0, 9.0)
    assert free_place(ground, [Cell(2.0, 3.0, 32.0, 28.0)], free) == Cell(2.0, 11.0, 22.0, 17.0)
    both = [Cell(2.0, 3.0, 32.0, 12.0), Cell(1.0, 12.0, 32.0, 28.0)]
    assert free_place(ground, both, free) == Cell(1.0, 12.0, 21.0, 18.0)


def test_a_plan_at_the_flue_that_is_too_high_for_the_sheet_goes_on_another():
    on = paper(FEET_INCHES, "11x17")
    high = on.field.top - on.field.bottom
    small = SimpleNamespace(reach=(10.0, 10.0, 10.0, 10.0))
    for over, fits in ((-0.1, True), (0.1, False)):
        tall = SimpleNamespace(reach=(10.0, high - 2.0 - 5.0 + over, 10.0, 5.0))
        arranged = set_out.together((small, small, small, tall), on)
        assert (arranged is not None) == fits
        if arranged:
            assert arranged[3][2] == on.field.top - 5.0 - 2.0


def test_what_is_too_large_at_every_scale_is_drawn_all_the_same():
    """At full size on a letter: side by side from the left edge, standing on the lower one."""
    geometry, on = build_geometry(Design()), paper(FEET_INCHES, "letter")
    plate = set_out._largest("Plans", (2, 3), (4.0,), geometry, FEET_INCHES, on, [["a note"]])
    plan, flue = set_out.figures(geometry, FEET_INCHES, 4.0)[2:]
    assert (plate.name, plate.denominator) == ("Plans", 4.0) and plate.scale == plan.scale
    assert plate.figures == [plan.figure.key, flue.figure.key]
    wanted, left = Sheet(on.width, on.height), on.field.left
    plan.put(wanted, left + plan.reach[0], on.field.bottom + plan.reach[1])
    left += plan.reach[0] + plan.reach[2] + set_out.APART
    flue.put(wanted, left + flue.reach[0], on.field.bottom + flue.reach[1])
    assert plate.sheet.labels == wanted.labels
    assert {pen: len(lines) for pen, lines in plate.sheet.lines.items()} == {
        pen: len(lines) for pen, lines in wanted.lines.items()
    }
