"""Proportions and widths: ratios worked by hand, tables against their sources, nothing told that is
not known.
"""

from itertools import pairwise
from math import sqrt

import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import INCH, SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.proportion import (
    NAMES,
    SNAPS,
    SliderStop,
    find_guides,
    nearest_published,
    nearest_shape,
    proportion_figures,
    published_openings,
    shapes,
    shelf_top,
    slider_stops,
    snapped,
    suited_widths,
    wall_ends,
    wall_top,
    width_sentence,
)

FOOT = 12 * INCH
SHELF = {
    "surround.trim": [
        {
            "name": "shelf",
            "place": "above",
            "distance": "12 in",
            "height": "2 in",
            "projection": "6 in",
        }
    ]
}


def told(changes=None, units="feet-inches"):
    geometry = assess(change(Design(), changes or {})).geometry
    return {guide.name: guide for guide in find_guides(geometry, units)}, geometry


def test_named_shapes_are_what_geometry_says():
    """Roots and the golden section, from their definitions."""
    golden = shapes()["golden section"]
    assert golden == pytest.approx(1 / (golden - 1), rel=1e-12)
    by_name = {
        "square": 1,
        "five to four": 5 / 4,
        "four to three": 4 / 3,
        "square and a half": 3 / 2,
        "double square": 2,
        "root two": sqrt(2),
        "root three": sqrt(3),
        "root five": sqrt(5),
        "golden section": (1 + sqrt(5)) / 2,
    }
    assert shapes() == pytest.approx(by_name, rel=1e-12)


@pytest.mark.parametrize(
    ("ratio", "name", "ideal"),
    [
        (36 / 30, "five to four", 1.25),
        (42 / 42, "square", 1.0),
        (36 / 24, "square and a half", 1.5),
        (72 / 36, "double square", 2.0),
        (1.1, "square", 1.0),
        (1.12, "five to four", 1.25),
        (0.98, "square", 1.0),
        (24 / 36, "square and a half upright", 2 / 3),
        (96 / 16, "root five", sqrt(5)),
    ],
)
def test_nearest_shape(ratio, name, ideal):
    """1.1 and 1.12 lie either side of the geometric mean of 1 and 1.25, the square root of 1.25,
    1.118.
    """
    found = nearest_shape(ratio)
    assert found[0] == name and found[1] == pytest.approx(ideal)


def test_a_shape_and_the_same_one_on_end_are_named_alike():
    for ratio in (1.05, 1.2, 1.33, 1.45, 1.7, 1.9, 2.4):
        (lying, over), (standing, under) = nearest_shape(ratio), nearest_shape(1 / ratio)
        assert standing.removesuffix(" upright") == lying and over * under == pytest.approx(1)


def test_published_openings_are_the_table():
    """USDA Farmers' Bulletin 1889 (1941), table 3: width, height and depths of all 19 rows, as the
    scan was read and mended.
    """
    printed = {
        (24, 24, 16, 18),
        (28, 24, 16, 18),
        (24, 28, 16, 18),
        (30, 28, 16, 18),
        (36, 28, 16, 18),
        (42, 28, 16, 18),
        (36, 32, 18, 20),
        (42, 32, 18, 20),
        (48, 32, 18, 20),
        (42, 36, 18, 20),
        (48, 36, 18, 20),
        (54, 36, 18, 20),
        (60, 36, 18, 20),
        (42, 40, 20, 22),
        (48, 40, 20, 22),
        (54, 40, 20, 22),
        (60, 40, 20, 22),
        (66, 40, 20, 22),
        (72, 40, 22, 28),
    }
    table = published_openings()
    assert len(table) == 19
    assert {
        tuple(round(v / INCH) for v in (p.width, p.height, p.depth_low, p.depth_high))
        for p in table
    } == printed
    assert all(nearest_published(p.width, p.height) == p for p in table)


def test_a_published_opening_finds_itself():
    found, _ = told({"opening.width": "42 in", "opening.standard_height": "36 in"})
    guide = found["published opening"]
    assert (
        guide.nearest == "row 10" and guide.off == pytest.approx(0) and "the same" in guide.sentence
    )
    assert guide.source.confidence == "read"


ROOMS = [
    ((10, 14), (24, 24), (24, 32)),
    ((12, 16), (28, 36), (32, 36)),
    ((12, 20), (32, 36), (36, 40)),
    ((12, 24), (32, 36), (36, 48)),
    ((14, 28), (32, 40), (40, 48)),
    ((16, 30), (36, 40), (48, 60)),
    ((20, 36), (40, 48), (48, 72)),
]
"""BIA Technical Notes 19 (1980), table 2. Only the first row was read, in a second-hand copy; the
others are from memory, so this holds the file to what was remembered and no more. [ft, in]
"""


@pytest.mark.parametrize(("room", "short", "long"), ROOMS)
def test_rows_of_the_room_table(room, short, long):
    low, high = (side * FOOT for side in room)
    for along, away, ends in ((low, high, short), (high, low, long)):
        widths = suited_widths(along, away)
        assert (widths.low / INCH, widths.high / INCH) == pytest.approx(ends)
        assert widths.source.confidence == ("read" if room == (10, 14) else "memory")


def test_between_two_rooms_widths_are_read_by_floor_area():
    """20 by 13.2 ft is 264 ft2, half way from 12 by 20 (240) to 12 by 24 (288): long wall 36 to 44
    in.
    """
    widths = suited_widths(20 * FOOT, 13.2 * FOOT)
    assert (widths.low / INCH, widths.high / INCH) == pytest.approx((36, 44))
    assert widths.compare(36 * INCH) == "within" and widths.compare(44 * INCH) == "within"
    assert widths.compare(35.9 * INCH) == "narrower" and widths.compare(44.1 * INCH) == "wider"


def test_a_square_room_takes_both_walls():
    """Half way again: 264 ft2; short wall 32 to 36, long wall 36 to 44."""
    side = sqrt(264) * FOOT
    widths = suited_widths(side, side)
    assert (widths.low / INCH, widths.high / INCH) == pytest.approx((32, 44))


@pytest.mark.parametrize(
    ("along", "away"),
    [(None, 4.0), (5.0, None), (None, None), (13.99 * FOOT, 10 * FOOT), (36.01 * FOOT, 20 * FOOT)],
)
def test_what_is_unknown_or_off_the_table_is_not_checked(along, away):
    widths = suited_widths(along, away)
    assert widths.low is None and widths.high is None and widths.why
    assert widths.compare(0.9) == "not checked"


@pytest.mark.parametrize("key", ["house.room_length", "house.room_width"])
def test_an_unknown_room_is_said_to_be_not_checked(key):
    found, geometry = told({key: "unknown"})
    assert "not checked" in width_sentence(geometry)
    assert found["width for the room"].found is None and found["width for the room"].off is None
    assert found["width for the room"].lines == ()


def test_guides_of_the_plain_fireplace_by_hand():
    """36 by 30 in opening on the floor, 9 ft ceiling, 20 ft wall, breast 60 in wide, shelf from 12
    to 14 in over the opening.
    """
    found, geometry = told(SHELF)
    assert shelf_top(geometry) == ("shelf", pytest.approx(44 * INCH))
    assert found["opening shape"].found == pytest.approx(1.2) and found[
        "opening shape"
    ].off == pytest.approx(1.2 / 1.25 - 1)
    assert found["published opening"].found == pytest.approx(1.2) and found[
        "published opening"
    ].ideal == pytest.approx(36 / 32)
    assert found["like shapes"].found == pytest.approx(60 / 44) and found[
        "like shapes"
    ].off == pytest.approx(60 / 44 / 1.2 - 1)
    assert found["golden section"].found == pytest.approx(44 / 108)
    assert found["golden section"].ideal == pytest.approx(2 - (1 + sqrt(5)) / 2)
    assert found["thirds of the wall"].off == pytest.approx(3 * 60 / 240 - 1)
    assert found["door head"].off == pytest.approx(44 / 80 - 1)


def test_like_shapes_have_parallel_diagonals():
    """A breast in the shape of its opening: 60 in over 50 is 36 over 30, so the shelf's top goes to
    50 in.
    """
    trim = [dict(SHELF["surround.trim"][0], distance="18 in")]
    found, _ = told({"surround.trim": trim})
    guide = found["like shapes"]
    slopes = [(b[1] - a[1]) / (b[0] - a[0]) for a, b in guide.lines]
    assert guide.off == pytest.approx(0) and slopes[0] == pytest.approx(slopes[1])


def test_lines_show_the_ratio_they_are_named_for():
    found, geometry = told(SHELF)
    for name in ("opening shape", "published opening"):
        ring = found[name].lines[0]
        xs, zs = zip(*ring, strict=True)
        assert (max(xs) - min(xs)) / (max(zs) - min(zs)) == pytest.approx(found[name].ideal)
        assert min(zs) == pytest.approx(geometry.frame.hearth)
    low, high = (line[0][1] for line in found["golden section"].lines)
    assert high / low == pytest.approx((1 + sqrt(5)) / 2) and low + high == pytest.approx(
        108 * INCH
    )
    at = sorted(line[0][0] for line in found["thirds of the wall"].lines)
    assert at[1] - at[0] == pytest.approx(20 * FOOT / 3)
    widths = suited_widths(20 * FOOT, 14 * FOOT)
    halves = sorted({abs(round(line[0][0], 9)) for line in found["width for the room"].lines})
    assert [2 * h for h in halves] == pytest.approx([widths.low, widths.high])


@pytest.mark.parametrize(
    ("extension", "off", "words"),
    [
        ("0 in", 0.0, "between them"),
        ("12 in", 0.0, "between them"),
        ("21 in", 51 / 42 - 1, "21 % over the higher"),
    ],
)
def test_height_against_the_older_bulletin(extension, off, words):
    """30 and 42 in: both ends count as between them."""
    guide = told({"opening.extension": extension})[0]["height of the opening"]
    assert guide.off == pytest.approx(off) and words in guide.sentence


def test_an_opening_too_low_to_tend():
    guide = told({"opening.standard_height": "24 in"})[0]["height of the opening"]
    assert guide.off == pytest.approx(24 / 30 - 1) and "20 % under the lower" in guide.sentence


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_guide_has_words_and_a_source(units):
    found, _ = told(SHELF, units)
    assert tuple(found) == NAMES
    for guide in found.values():
        assert guide.sentence.endswith(".") and len(guide.source.text) > 10
        assert guide.source.confidence in ("computed", "read", "memory")
        assert not any(
            word in guide.sentence.lower() for word in ("must", "wrong", "beautiful", "ugly")
        )
        assert all(a != b for line in guide.lines for a, b in pairwise(line))


def test_every_row_of_the_data_has_a_source_and_a_confidence():
    for name in ("proportions.csv", "room_widths.csv"):
        for row in rows(name):
            assert len(row["source"]) > 10 and row["confidence"] in (
                "computed",
                "read",
                "memory",
            ), row


def test_the_figures_of_the_older_bulletin():
    """USDA Farmers' Bulletin 1230 (1921): 30 in high for tending, 42 in high as a rule, 30 in wide
    for half cordwood.
    """
    printed = {
        "lowest opening for tending the fire": 30,
        "highest opening as a rule": 42,
        "narrowest opening for half cordwood": 30,
    }
    assert {name: proportion_figures()[name][0] / INCH for name in printed} == pytest.approx(
        printed
    )


def inches(line):
    return [(pytest.approx(x * INCH), pytest.approx(z * INCH)) for x, z in line]


def test_what_the_guides_say_of_the_plain_fireplace():
    """36 by 30 in, shelf up to 44, ceiling 108, breast 60, wall 20 ft. The nearest of the table is
    36 by 32, row 7. 20 by 14 ft is 280 ft2, five sixths from 240 to 288: 36 to 46.7 in.
    """
    found, _ = told(SHELF)
    assert {name: guide.sentence for name, guide in found.items()} == {
        "opening shape": "3'-0\" by 2'-6\", width over height 1.20; nearest: five to four 1.25,"
        " 4 % under.",
        "published opening": "Nearest of the table: 3'-0\" by 2'-8\", 1'-6\" to 1'-8\" deep (here"
        " 1'-8\"); width over height 1.12, this one is 7 % over.",
        "height of the opening": "2'-6\" to tend the fire, 3'-6\" at most as a rule; here 2'-6\","
        " between them.",
        "like shapes": "Breast up to the shelf: width over height 1.36, the opening's 1.20; 14 %"
        " over. Like shapes have diagonals side by side.",
        "golden section": "Top of the shelf at 0.41 of the wall's height; the section is at 0.38,"
        " 3'-5 1/4\" up; 7 % over.",
        "thirds of the wall": "The breast takes 0.25 of the wall's length; a third is 0.33, 25 %"
        " under.",
        "door head": "Usual door head at 6'-8\"; top of the shelf at 3'-8\", 45 % under.",
        "width for the room": "3'-0\" lies within the 3'-0\" to 3'-11\" of the table (long wall,"
        " between 12 by 20 ft and 12 by 24 ft).",
    }
    assert found["published opening"].nearest == "row 7"
    assert found["height of the opening"].nearest == "2'-6\" high"
    assert found["golden section"].nearest == "0.38 of the wall"
    assert found["width for the room"].found == pytest.approx(36 / 240)
    assert found["width for the room"].ideal == pytest.approx(36 / 240)
    metric, _ = told(SHELF, "millimetres")
    assert "914 mm lies within the 914 mm to 1 194 mm" in metric["width for the room"].sentence
    assert "914 mm by 762 mm" in metric["opening shape"].sentence


def test_the_lines_of_the_plain_fireplace():
    """In inches, by hand: 36 over 1.25 is 28.8; 108 in in the golden section, 41.25 and 66.75."""
    found, _ = told(SHELF)
    ring, diagonal = found["opening shape"].lines
    assert [*ring] == inches([(-18, 0), (18, 0), (18, 28.8), (-18, 28.8), (-18, 0)])
    assert [*diagonal] == inches([(-18, 0), (18, 28.8)])
    (ring,) = found["published opening"].lines
    assert [*ring] == inches([(-18, 0), (18, 0), (18, 32), (-18, 32), (-18, 0)])
    own, breast = found["like shapes"].lines
    assert [*own] == inches([(-18, 0), (18, 30)])
    assert [*breast] == inches([(-30, 0), (30, 44)])
    for name, ends in {
        "height of the opening": [((-18, z), (18, z)) for z in (30, 42)],
        "golden section": [((-120, z), (120, z)) for z in (41.2523, 66.7477)],
        "thirds of the wall": [((x, 0), (x, 108)) for x in (-40, 40)],
        "door head": [((-120, 80), (120, 80))],
    }.items():
        assert [[*line] for line in found[name].lines] == [inches(line) for line in ends], name
    across = [[*line] for line in found["width for the room"].lines]
    high = 40 + 8 * 5 / 6
    assert across == [inches([(x, 0), (x, 30)]) for x in (-high / 2, -18, 18, high / 2)]


def test_a_breast_without_a_mantel_is_measured_up_to_its_shoulder_or_the_ceiling():
    """Under a low ceiling the shoulder is out of the room; a high shelf counts, one beside does
    not.
    """
    high, geometry = told({"house.ceiling": "30 ft"})
    start = geometry.frame.flue_start
    assert "up to the shoulder" in high["like shapes"].sentence
    assert high["like shapes"].found == pytest.approx(60 * INCH / start)
    low, _ = told({"house.ceiling": "6 ft", "smoke_chamber.height": "36 in"})
    assert "up to the ceiling" in low["like shapes"].sentence
    assert low["like shapes"].found == pytest.approx(60 / 72)
    assert low["door head"].lines == () and low["door head"].off == pytest.approx(30 / 80 - 1)
    piece = SHELF["surround.trim"][0]
    leg = dict(piece, name="leg", place="beside", distance="30 in")
    lower = dict(piece, name="lower step", distance="6 in")
    _, geometry = told({"surround.trim": [leg, piece, lower]})
    assert shelf_top(geometry) == ("shelf", pytest.approx(44 * INCH))
    _, geometry = told({"surround.trim": [leg]})
    assert shelf_top(geometry) == ("opening", pytest.approx(30 * INCH))


@pytest.mark.parametrize(
    ("changes", "half", "top"),
    [
        ({}, 120, 108),
        ({"house.room_length": "6 ft", "opening.width": "70 in"}, 47, 108),
        ({"house.room_length": "6 ft", "hearth.side": "30 in"}, 48, 108),
        ({"house.room_length": "unknown"}, 30 + 1.2 / INCH, 108),
        ({"house.room_length": "unknown", "hearth.side": "20 in"}, 38 + 1.2 / INCH, 108),
        ({"house.ceiling": "6 ft", "base.hearth_level": "3-1/2 ft"}, 120, 72 + 0.3 / INCH),
    ],
)
def test_the_wall_is_never_less_than_what_stands_before_it(changes, half, top):
    """Breast of 12 in beside the opening, or the hearth's overhang; 0.3 m over the opening; where
    the room is unknown, 1.2 m of wall on either side.
    """
    _, geometry = told(changes)
    assert wall_ends(geometry) == pytest.approx(half * INCH)
    assert wall_top(geometry) == pytest.approx(top * INCH)


@pytest.mark.parametrize(
    ("width", "words"),
    [
        ("30 in", "is less than"),
        ("35-15/16 in", "is less than"),
        ("36 in", "lies within"),
        ("46-1/2 in", "lies within"),
        ("47 in", "is more than"),
    ],
)
def test_the_width_is_compared_with_the_table(width, words):
    _, geometry = told({"opening.width": width})
    assert f" {words} the 3'-0\" to 3'-11\" of the table" in width_sentence(geometry)


def test_a_room_off_the_table_says_where_it_ends():
    assert "begins with a room of 10 by 14 ft" in suited_widths(3.0, 4.0).why
    assert "ends with a room of 20 by 36 ft" in suited_widths(9.0, 8.0).why
    exact = suited_widths(10 * FOOT, 14 * FOOT)
    assert exact.why == "short wall, 10 by 14 ft"
    alike = told({"house.room_length": "10 ft", "house.room_width": "14 ft"})[1]
    assert "is more than the 2'-0\" of the table (short wall, 10 by 14 ft)" in width_sentence(alike)


# -- where a slider stops -------------------------------------------------------------------------
MILLI = 0.001


def stops_of(design, key, *kinds):
    """One for each reason."""
    stops = slider_stops(assess(design).geometry, key, kinds)
    return [SliderStop(s.at, why) for s in stops for why in s.why.split("; ")]


def test_a_slider_stops_at_whole_british_bricks():
    """215 x 65 mm with 10 mm joints: openings of 910 and 1135 mm, four and five bricks and a joint;
    twelve courses of 900 mm. Setting-out tables of brickwork, from memory.
    """
    design = change(
        Design(name="plain"), {"brick.facing": "UK metric", "brick.facing_joint": "10 mm"}
    )
    wide = {s.why: s.at for s in stops_of(design, "opening.width", "whole courses")}
    assert wide["4 bricks wide"] == pytest.approx(910 * MILLI)
    assert wide["5 bricks wide"] == pytest.approx(1135 * MILLI)
    assert wide["4 1/2 bricks wide"] == pytest.approx(1022.5 * MILLI)
    high = {s.why: s.at for s in stops_of(design, "opening.standard_height", "whole courses")}
    assert high["12 courses over the hearth"] == pytest.approx(900 * MILLI)


def test_three_modular_courses_make_eight_inches():
    """Nominal 4 x 2-2/3 x 8 in: three courses to 8 in (Technical Notes 10, from memory)."""
    design = change(Design(name="plain"), {"brick.facing": "modular", "opening.extension": "4 in"})
    high = {s.why: s.at for s in stops_of(design, "opening.extension", "whole courses")}
    assert high["15 courses over the hearth"] == pytest.approx((40 - 30) * INCH, abs=0.02 * INCH)


def test_where_a_slider_stops_the_guide_agrees():
    """Put at any of its shapes, the opening is that shape; at a third, the breast is a third."""
    design = change(
        Design(name="plain"), {"house.room_length": "24 ft", "opening.extension": "3 in"}
    )
    for key in ("opening.width", "opening.standard_height", "opening.extension"):
        tried = 0
        for stop in stops_of(design, key, "guides"):
            name = stop.why.removesuffix(" upright")
            if name in shapes():
                there = assess(change(design, {key: f"{stop.at} m"})).geometry
                ratio = there.design.opening.width / there.design.opening.height
                assert ratio == pytest.approx(
                    shapes()[name] if name == stop.why else 1 / shapes()[name]
                ), (key, stop)
                tried += 1
        assert tried > 2, key
    third = {s.why: s.at for s in stops_of(design, "opening.width", "guides")}
    there = assess(change(design, {"opening.width": f"{third['breast a third of the wall']} m"}))
    assert 2 * there.geometry.frame.block_half == pytest.approx(8 * FOOT)


def test_a_hearth_stops_where_the_shelf_meets_the_door_heads():
    design = change(Design(name="plain"), SHELF)
    found = {s.why: s.at for s in stops_of(design, "base.hearth_level", "guides")}
    at = found["top of the shelf in line with the door heads"]
    moved = assess(change(design, {"base.hearth_level": f"{at} m"})).geometry
    assert shelf_top(moved)[1] == pytest.approx(80 * INCH)


def test_a_set_offers_its_own_sizes_and_takes_each_as_it_is():
    design = change(Design(name="plain"), {"pieces.set": "small"})
    for key in ("opening.width", "opening.extension"):
        stops = stops_of(design, key, "sizes of a set")
        assert len(stops) > 1
        for stop in stops:
            took = change(design, {key: f"{stop.at} m"})
            assert getattr(took.opening, key.partition(".")[2]) == pytest.approx(stop.at), stop
    without = stops_of(Design(name="plain"), "opening.width", "sizes of a set")
    assert {s.why.rpartition(" ")[2] for s in without} == {"small", "middling", "wide"}


def test_a_hand_goes_to_the_nearest_stop_and_stays_where_there_is_none():
    geometry = assess(Design(name="plain")).geometry
    at = snapped(geometry, "opening.width", 36.3 * INCH, ["guides"])
    near = min(
        slider_stops(geometry, "opening.width", ["guides"]),
        key=lambda s: abs(s.at - 36.3 * INCH),
    )
    assert at == near and abs(at.at - 36.3 * INCH) < 1 * INCH
    free = snapped(geometry, "base.hearth_level", 0.1234, ["sizes of a set"])
    assert free.at == 0.1234 and free.why == ""
    stone = assess(change(Design(name="plain"), {"surround.face": "stone"})).geometry
    assert slider_stops(stone, "opening.width", ["whole courses"]) == ()
    for kind in SNAPS:
        places = [s.at for s in slider_stops(geometry, "opening.width", [kind])]
        assert places == sorted(set(places)) and places[0] >= 18 * INCH - 1e-9
    first = slider_stops(geometry, "base.hearth_level", ["whole courses"])[0]
    assert (first.at, first.why) == (0.0, "level with the floor"), "the end of the slider is a stop"
    with pytest.raises(ValueError, match="none of these"):
        slider_stops(geometry, "opening.width", ["magnets"])


def test_in_the_largest_room_of_the_table_its_row_alone_says_the_widths():
    assert suited_widths(36 * FOOT, 20 * FOOT).why == "long wall, 20 by 36 ft"
    assert suited_widths(36 * FOOT, 19.9 * FOOT).why.startswith("long wall, between ")


@pytest.mark.parametrize("level", ["0 in", "6 in", "15 in"])
def test_a_hearth_stops_where_the_shelf_is_in_line_with_the_door_heads(level):
    """The shelf's top is 46 in over the hearth, wherever that is; door heads are at 80 in."""
    told = {"mantel.family": "shelf", "base.hearth_level": level, "house.ceiling": "10 ft"}
    made = assess(change(Design(), told)).geometry
    (stop,) = [s for s in slider_stops(made, "base.hearth_level", ["guides"]) if "heads" in s.why]
    assert stop.at == pytest.approx((80 - 46) * INCH)
