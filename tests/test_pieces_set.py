"""A set file: what it reads as, and what is said about one that cannot be used."""

from math import pi

import pytest
from shapely.geometry import Polygon

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.solids import (
    extent,
    middle_of_mass,
    piece_volume,
    piece_weight,
)
from fireplace_calc.pieces.choice import Choice, choose, extensions_of, flues_of, heads_of
from fireplace_calc.pieces.piece_text import FIELDS as PIECE_FIELDS
from fireplace_calc.pieces.records import ArchCut, Round, Tapered
from fireplace_calc.pieces.roles import ROLES
from fireplace_calc.pieces.set_text import FIELDS as SET_FIELDS
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.pieces.shape_text import bounds, mirrored, shifted

MIDDLING = (DATA / "sets" / "middling.toml").read_text()


@pytest.fixture(scope="module")
def middling():
    return read_set(MIDDLING)


def test_a_set_reads_in_inches(middling):
    plate = middling.piece("PR")
    assert plate.height == pytest.approx(3 * INCH)
    assert extent(plate)[:4] == pytest.approx((0.125 * INCH, 26.5 * INCH, 0.0, 23.75 * INCH))
    assert (plate.bed.least, plate.bed.most) == pytest.approx((0.375 * INCH, 1.0 * INCH))


def test_the_other_hand_is_the_mirror_image(middling):
    right, left = (extent(middling.piece(m)) for m in ("TR", "TL"))
    assert left == pytest.approx((-right[1], -right[0], *right[2:]))
    assert middling.piece("TL").mirrored == "TR"
    assert piece_volume(middling.piece("TL")) == pytest.approx(piece_volume(middling.piece("TR")))


def test_volumes_are_those_of_shapely_and_of_the_circle(middling):
    """Wall: its outline by shapely. Flue piece worked by hand: a square of 20 by 8, bored 15 across
    through it and its tongue; the tongue 17 across and 3/4 high, the socket 17-1/2 and 1 deep."""
    wall = Polygon([(4.875, 0), (9, 0), (9, 3), (5, 23.75), (1.5, 23.75), (1.5, 20), (0, 20)])
    assert piece_volume(middling.piece("WR")) == pytest.approx(wall.area * 10 * INCH**3)
    quarter = pi / 4
    flue = 400 * 8 - quarter * 15**2 * 7 - quarter * 17.5**2 * 1
    flue += quarter * (17**2 - 15**2) * 0.75
    assert piece_volume(middling.piece("F8")) == pytest.approx(flue * INCH**3)
    assert piece_weight(middling.piece("F8")) == pytest.approx(flue * INCH**3 * 2000)


def test_the_skin_of_every_piece_holds_what_the_closed_form_says(middling):
    """72 facets hold 0.13 % less than a circle, 40 chords 0.11 % less than an arch."""
    for piece in middling.pieces:
        exact = piece_volume(piece)
        assert body(piece).volume() == pytest.approx(exact, rel=2e-3), piece.mark
        if all(hasattr(s, "lower") for s in piece.adds + piece.cuts):
            assert body(piece).volume() == pytest.approx(exact, rel=1e-6), piece.mark


def test_the_middle_of_mass_is_shapelys(middling):
    ring = Polygon([(4.875, 0), (9, 0), (9, 3), (5, 23.75), (1.5, 23.75), (1.5, 20), (0, 20)])
    x, y, z = middle_of_mass(middling.piece("WR"))
    assert (x, y, z) == pytest.approx(
        ((17.5 + ring.centroid.x) * INCH, ring.centroid.y * INCH, 5 * INCH)
    )


def test_choices_of_a_set(middling):
    assert extensions_of(middling) == 2
    assert heads_of(middling) == ("straight", "segmental")
    assert flues_of(middling) == (12, 36)
    lifts = choose(middling, Choice(extensions=1, head="segmental", flues=14))
    assert [lift.name for lift in lifts][4:7] == ["first extension", "top walls", "throat"]
    assert [p.mark for p in lifts[5].pieces] == ["TL", "TR", "TB", "LA"]
    assert sum(p.mark == "F8" for lift in lifts for p in lift.pieces) == 14
    with pytest.raises(InputError, match="0 to 2 extension courses, not 3"):
        choose(middling, Choice(extensions=3))


def changed(old, new):
    assert MIDDLING.count(old) >= 1, old
    return MIDDLING.replace(old, new, 1)


WRONG = {
    "no unit": (('unit = "in"', ""), "unit is missing, but in or mm is wanted"),
    "another unit": (('unit = "in"', 'unit = "cm"'), "unit is 'cm'"),
    "not TOML": (('unit = "in"', "unit = in"), "cannot be read as TOML"),
    "unknown field": (
        ("height = 3", "heigth = 3"),
        "Piece PR has no field 'heigth'; did you mean height?",
    ),
    "no height": (("height = 3\nbed", "bed"), "Piece PR, height: it is missing"),
    "negative height": (("height = 3", "height = -3"), "Piece PR, height: it is -3"),
    "text height": (("height = 3", "height = true"), "Piece PR, height: it is True"),
    "joint order": (("bed = [0.375, 0.5, 1.0]", "bed = [0.5, 0.375, 1.0]"), "in rising order"),
    "joint length": (("bed = [0.375, 0.5, 1.0]", "bed = [0.5, 1.0]"), "Piece PR, bed"),
    "twice": (('mark = "PL"', 'mark = "PR"'), "Two pieces have the mark PR"),
    "mark": (('mark = "PL"', 'mark = "P L"'), "one to eight letters and figures"),
    "role": (
        ('role = "base plate"', 'role = "plate"'),
        "Piece PR, role: it is 'plate', but one of base plate",
    ),
    "mirror of none": (('mirror = "PR"', 'mirror = "PX"'), "Piece PL, mirror"),
    "mirror and like": (('mirror = "PR"', 'mirror = "PR"\nlike = "PR"'), "either like or mirror"),
    "bow tie": (
        ("[26.375, 0], [26.375, 23.75]", "[26.375, 23.75], [26.375, 0]"),
        "sides do not cross",
    ),
    "two corners": (
        ("outline = [[0, 0], [37.5, 0], [37.5, 3], [0, 3]]", "outline = [[0, 0], [37.5, 0]]"),
        "a list of 3 to 200 corners",
    ),
    "twisted": (("[9.875, 1.875]", "[9.875, 2.875]"), "Piece RR, top"),
    "top's corners": (
        ("[9.875, 1.875], ", ""),
        "but 8 corners like the outline's is wanted; it has 7",
    ),
    "arch too high": (("rise = 4", "rise = 12"), "Piece LA, arch, rise"),
    "arch too wide": (("span = 44.75", "span = 54"), "a span less than the width"),
    "bore": (("bore = 15\nliner", "bore = 1\nliner"), "Piece F8, bore"),
    "nest": (("clearance = 0.25", "slack = 0.25"), "Piece F8, nest has no field 'slack'"),
    "socket wider than its block": (
        ("wall = 1, clearance = 0.25 }\nheight = 8", "wall = 2.25, clearance = 0.5 }\nheight = 8"),
        "Piece F8, nest: it is",
    ),
    "trough over the shelf": (
        ("from = 3, to = 5", "from = 3, to = 6"),
        "it reaches 1 in out of it",
    ),
    "trough beside the shelf": (
        ("[43, 5.75], [5, 5.75]", "[48.5, 5.75], [5, 5.75]"),
        "Piece SH, cut",
    ),
    "liner": (("liner = 0.75", 'liner = "a lot"'), "Piece F8, liner"),
    "lift of none": (('pieces = ["CT"]', 'pieces = ["CX"]'), "Lift 10, pieces"),
    "unused": (('pieces = ["CT"]', 'pieces = ["F8"]'), "No lift holds CT"),
    "heads": (("heads = { straight", "heads = { flat"), "a mark for straight or segmental"),
    "repeat": (("repeat = [12, 36]", "repeat = [36, 12]"), "a pair of counts in rising order"),
    "after": (
        ('after = ["N2"]          # laid', 'after = ["N7"]          # laid'),
        "The lining, after",
    ),
    "lining": (("thickness = 1.25", "thickness = 125"), "The lining, thickness"),
    "limit": (("raise = 13", "raises = 13"), "did you mean raise?"),
    "infinite": (("height = 3", "height = inf"), "Piece PR, height"),
    "nan": (("height = 3", "height = nan"), "Piece PR, height"),
}


@pytest.mark.parametrize("case", WRONG)
def test_what_cannot_be_read_is_said_in_one_sentence(case):
    change, says = WRONG[case]
    with pytest.raises(InputError) as refused:
        read_set(changed(*change))
    message = str(refused.value)
    assert says in message, message
    assert "\n" not in message and message.endswith((".", "?")), message


TROUGH = "outline = [[5, 0], [43, 0], [43, 5.75], [5, 5.75]]"
ROUND = "at = [20, 4], across = 4, "
ENDS = {
    "Name of a set": ('"Middling set"', f'"{"a" * 200}"', f'"{"a" * 201}"'),
    "Note": ('"Invented for this workbook."', f'"{"a" * 2000}"', f'"{"a" * 2001}"'),
    "Mark": ('"CT"', '"COLLAR01"', '"COLLAR012"'),
    "Least density": ("density = 2000", "density = 200", "density = 199.9"),
    "Most density": ("density = 2000", "density = 8000", "density = 8000.1"),
    "A piece's least density": ("pallet = 12", "density = 200", "density = 199.9"),
    "A piece's most density": ("pallet = 12", "density = 8000", "density = 8000.1"),
    "Least weight": ("pallet = 12", "weight = 0.05", "weight = 0.049"),
    "Most weight": ("pallet = 12", "weight = 2000", "weight = 2000.1"),
    "Fewest on a pallet": ("pallet = 12", "pallet = 1", "pallet = 0"),
    "Most on a pallet": ("pallet = 12", "pallet = 1000", "pallet = 1001"),
    "Thickest bed": ("[0.375, 0.5, 1.0]", '[0.375, 0.5, "100 mm"]', '[0.375, 0.5, "100.1 mm"]'),
    "Thinnest bed": ("[0.375, 0.5, 1.0]", "[0, 0.5, 1.0]", "[-0.01, 0.5, 1.0]"),
    "Thinnest lining": ("thickness = 1.25", 'thickness = "5 mm"', 'thickness = "4.9 mm"'),
    "Thickest lining": ("thickness = 1.25", 'thickness = "300 mm"', 'thickness = "301 mm"'),
    "No joint in the lining": ("joint = 0.125", "joint = 0", "joint = -0.01"),
    "Its thickest joint": ("joint = 0.125", 'joint = "30 mm"', 'joint = "30.1 mm"'),
    "Thinnest floor": ("floor = 2.5", 'floor = "10 mm"', 'floor = "9.9 mm"'),
    "Thickest floor": ("floor = 2.5", 'floor = "300 mm"', 'floor = "301 mm"'),
    "Highest raise": ("raise = 13", 'raise = "10 m"', 'raise = "10.01 m"'),
    "Highest stack": ("stack = 360", 'stack = "60 m"', 'stack = "60.1 m"'),
    "Lowest piece": ("height = 3\n", "height = 0.25\n", "height = 0.24\n"),
    "Lowest over all": ("height = 3\n", "over_all = 0.25\n", "over_all = 0.24\n"),
    "Highest piece": ("height = 3\n", 'height = "10 m"\n', 'height = "10.01 m"\n'),
    "Narrowest bore": ("bore = 15\nliner", "bore = 2\nliner", "bore = 1.9\nliner"),
    "Narrowest bore by two": ("bore = 15\nliner", "bore = [15, 2]\nliner", "bore = [15, 1.9]\nliner"),
    "Deepest socket": ("socket = 1", "socket = 8", "socket = 8.1"),
    "Highest tongue": ("tongue = 0.75, socket", "tongue = 8, socket", "tongue = 8.1, socket"),
    "Lowest arch": ("rise = 4", "rise = 0.125", "rise = 0.12"),
    "Highest arch": ("span = 44.75, rise = 4", "span = 16, rise = 8", "span = 16, rise = 8.1"),
    "Arch as high as its piece": ("rise = 4", "rise = 8.9", "rise = 9"),
    "Narrowest arch": ("span = 44.75, rise = 4", "span = 1, rise = 0.5", "span = 0.9, rise = 0.45"),
    "Widest arch": ("span = 44.75", "span = 52.9", "span = 53"),
    "Narrowest arched lintel": (
        "span = 44.75, rise = 4, width = 53",
        "span = 1, rise = 0.5, width = 1.01",
        "span = 1, rise = 0.5, width = 1",
    ),
    "Thinnest arched lintel": ("width = 53, depth = 5", "width = 53, depth = 1", "width = 53, depth = 0.9"),
    "Lowest cut": ("from = 3, to = 5", "from = 3, to = 3.01", "from = 3, to = 3"),
    "Narrowest round": (TROUGH, "at = [20, 4], across = 0.25", "at = [20, 4], across = 0.24"),
    "Narrowest hole": (TROUGH, ROUND + "hole = 0.25", ROUND + "hole = 0.24"),
    "Widest hole": (TROUGH, ROUND + "hole = 3.99", ROUND + "hole = 4"),
    "Most times": ("repeat = [12, 36]", "repeat = [1, 60]", "repeat = [1, 61]"),
    "Fewest times": ("repeat = [12, 36]", "repeat = [1, 1]", "repeat = [0, 1]"),
    "Three counts": ("repeat = [12, 36]", "repeat = [36, 36]", "repeat = [12, 36, 36]"),
    "Farthest to the right": ("at = [0.125, 0]", 'at = ["10 m", 0]', 'at = ["10.01 m", 0]'),
    "Farthest to the left": ("at = [0.125, 0]", 'at = ["-10 m", 0]', 'at = ["-10.01 m", 0]'),
}  # fmt: skip
"""What stands in the file, the last value that is taken in its place, and one just beyond."""


@pytest.mark.parametrize("case", ENDS)
def test_the_last_size_of_every_field_is_taken_and_none_beyond(case):
    old, taken, refused = ENDS[case]
    swapped = changed(old, taken)
    assert read_set(swapped.replace('["CT"]', f"[{taken}]") if case == "Mark" else swapped)
    with pytest.raises(InputError, match="mark is" if case == "Mark" else ", .*: it is .* wanted"):
        read_set(changed(old, refused))


def test_what_a_file_may_leave_out(middling):
    """Bearings of an inch, of 3 in under a lintel, a joint of 3 mm in the lining: our own habit."""
    wall, lintel, flue = (middling.piece(mark) for mark in ("WR", "LS", "F8"))
    assert (wall.bearing, lintel.bearing) == pytest.approx((INCH, 3 * INCH))
    assert (wall.liner, flue.liner) == pytest.approx((0.0, 0.75 * INCH))
    assert (wall.on_pallet, flue.on_pallet, wall.weighed) == (None, 12, None)
    assert middling.lining.joint == pytest.approx(0.125 * INCH)
    bare = read_set(changed("joint = 0.125", ""))
    assert bare.lining.joint == pytest.approx(0.003)
    assert read_set(changed("raise = 13", "")).limits.raise_most is None
    assert read_set(changed("stack = 360", "")).limits.stack_most is None
    assert read_set(changed('approval = "an engineer"', "")).limits.approved_by == ""
    once, often = middling.lifts[0], middling.lifts[-1]
    assert (once.times, often.times) == ((1, 1), (12, 36))
    assert (once.extension, once.heads) == (False, ())
    assert read_set(changed("from = 3, to = 5", "to = 2")).piece("SH").cuts[0].bottom == 0.0
    assert read_set(changed("from = 3, to = 5", "from = 3")).piece("SH").cuts[0].top == 5 * INCH


def test_a_length_may_bring_its_own_unit():
    assert read_set(changed("height = 3", 'height = "76.2 mm"')) == read_set(MIDDLING)


def test_a_tape_gives_the_height_over_all_a_chain_wants_bed_to_bed():
    assert read_set(changed("height = 8  ", "over_all = 8.75  ")) == read_set(MIDDLING)
    with pytest.raises(InputError, match="Piece F8, over_all"):
        read_set(changed("height = 8  ", "height = 8\nover_all = 9  "))


def test_an_outline_may_be_measured_either_way_round():
    other = "outline = [[0, 3], [37.5, 3], [37.5, 0], [0, 0]]"
    made = read_set(changed("outline = [[0, 0], [37.5, 0], [37.5, 3], [0, 3]]", other))
    assert piece_volume(made.piece("WB")) == pytest.approx(
        piece_volume(read_set(MIDDLING).piece("WB"))
    )
    assert extent(made.piece("WB")) == extent(read_set(MIDDLING).piece("WB"))


@pytest.mark.parametrize("text", ["", "[[[[", "a" * 2_000_000, 'unit = "in"', 'unit="in"\npiece=3'])
def test_no_text_ends_in_anything_but_a_sentence(text):
    with pytest.raises(InputError):
        read_set(text)


def test_the_blank_set_asks_for_its_pieces_first():
    with pytest.raises(InputError, match="0 pieces"):
        read_set((DATA / "sets" / "blank.toml").read_text())


def test_the_blank_set_names_every_field_and_role():
    text = (DATA / "sets" / "blank.toml").read_text()
    for word in (*PIECE_FIELDS, *SET_FIELDS, *ROLES):
        assert word in text or word in ("density", "top"), word


def test_the_other_hand_weighs_the_same_and_a_piece_like_it_is_weighed_anew():
    text = (DATA / "sets" / "middling.toml").read_text()
    told = text.replace('name = "right wall"\n', 'name = "right wall"\nweight = 61.5\npallet = 6\n')
    assert told != text
    made = {p.mark: (p.weighed, p.on_pallet) for p in read_set(told).pieces}
    assert made["WR"] == made["WL"] == (61.5, 6)
    assert made["XR"] == (None, None)  # like WR, but of another height


def test_a_solid_is_boxed_shifted_and_mirrored():
    """By hand, in whole numbers: a tongue beside the center line, a wall that leans, an arch."""
    tongue = Round(1.0, 4.0, 2.0, (5.0, 7.0))
    leaning = Tapered(
        0.0, 9.0, ((3.0, 1.0), (4.0, 1.0), (4.0, 6.0)), ((1.0, 2.0), (2.0, 2.0), (2.0, 8.0))
    )
    arch = ArchCut(3.0, 20.0, 6.0)
    assert bounds([tongue]) == (3, 5, 1, 7, 9, 4)
    assert bounds([leaning]) == (1, 1, 0, 4, 8, 9)
    assert bounds([arch]) == (-10, 0, 0, 10, 6, 3)
    assert bounds([tongue, leaning, arch]) == (-10, 0, 0, 10, 9, 9)
    assert shifted(tongue, 10.0) == Round(1.0, 4.0, 2.0, (15.0, 7.0))
    assert shifted(leaning, -1.0) == Tapered(
        0.0, 9.0, ((2.0, 1.0), (3.0, 1.0), (3.0, 6.0)), ((0.0, 2.0), (1.0, 2.0), (1.0, 8.0))
    )
    assert shifted(arch, 10.0) == arch == mirrored(arch)
    assert mirrored(tongue) == Round(1.0, 4.0, 2.0, (-5.0, 7.0))
    assert mirrored(leaning) == Tapered(
        0.0, 9.0, ((-4.0, 6.0), (-4.0, 1.0), (-3.0, 1.0)), ((-2.0, 8.0), (-2.0, 2.0), (-1.0, 2.0))
    )


def test_a_flue_piece_without_its_nest_is_bored_from_bed_to_bed(middling):
    flue, wall = middling.piece("F8"), middling.piece("WR")
    adds, cuts = flue.plain
    assert wall.plain is None and len(adds) == 1
    (bore,) = cuts
    assert (bore.bottom, bore.top, 2 * bore.radius) == pytest.approx((0, 8 * INCH, 15 * INCH))
    two = read_set(changed("bore = 15\nliner", "bore = [15, 12]\nliner")).piece("F8")
    (slot,) = two.plain[1]
    ends = [max(axis) - min(axis) for axis in zip(*slot.lower, strict=True)]
    assert ends == pytest.approx([15 * INCH, 12 * INCH]) and slot.lower == slot.upper
    # Tongue and socket stand an inch, and an inch and a quarter, outside of it.
    (tongue,) = (s for s in two.adds if s.bottom == two.height)
    assert [max(a) - min(a) for a in zip(*tongue.lower, strict=True)] == pytest.approx(
        [17 * INCH, 14 * INCH]
    )
    (socket,) = (s for s in two.cuts if s.bottom == 0.0)
    assert [max(a) - min(a) for a in zip(*socket.lower, strict=True)] == pytest.approx(
        [17.5 * INCH, 14.5 * INCH]
    )


def test_what_is_added_and_cut_weighs_and_a_hole_in_one_is_none_of_the_other():
    """By hand, in inches: a lug 2 by 3, 5 high; a post 4 across with a hole of 2; a round cut of 4."""

    def more(table):
        return piece_volume(
            read_set(changed("height = 10\n", f"height = 10\n{table}\n")).piece("WR")
        )

    bare = piece_volume(read_set(MIDDLING).piece("WR"))
    lug = "add = [{ outline = [[20, 0], [22, 0], [22, 3], [20, 3]], to = 5 }]"
    assert (more(lug) - bare) / INCH**3 == pytest.approx(30)
    post = "add = [{ at = [20, 5], across = 4, hole = 2 }]"
    assert (more(post) - bare) / INCH**3 == pytest.approx(pi * (4 - 1) * 10)
    hole = "cut = [{ at = [5, 10], across = 2, from = 4 }]"
    assert (bare - more(hole)) / INCH**3 == pytest.approx(pi * 6)
    ring = "cut = [{ at = [5, 10], across = 2, hole = 1 }]"
    assert (bare - more(ring)) / INCH**3 == pytest.approx(pi * (1 - 0.25) * 10)
