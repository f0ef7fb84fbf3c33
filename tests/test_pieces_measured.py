"""A set of one's own: what is typed for each piece, what is said of it, and the file it makes."""

import tomllib
from fractions import Fraction
from math import pi
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measured_sheet import HEAD, as_sheet, rows

from fireplace_calc import Design, change
from fireplace_calc.base.resources import SETS
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.drawing.pieces.measured_picture import measured_view
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.editing.sets import so_far
from fireplace_calc.editing.sets.measured_files import EMPTY, MeasuredFiles
from fireplace_calc.editing.sets.so_far import _runs, fit_so_far
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.assembled.solids import piece_volume
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.measured.hollow_forms import FORMS
from fireplace_calc.pieces.measured.kept_words import read_sheet_text, sheet_text
from fireplace_calc.pieces.measured.lifts import lifts_of, still_missing
from fireplace_calc.pieces.measured.reading import read_sheet
from fireplace_calc.pieces.measured.set_file import set_text
from fireplace_calc.pieces.measured.set_head import read_head
from fireplace_calc.pieces.measured.sheet import (
    LETTERS,
    MeasuredSheet,
    begun,
    keys_of,
    label_of,
    other_hand,
    put,
    put_head,
    without,
)
from fireplace_calc.pieces.measured.sketch import sketch_of
from fireplace_calc.pieces.measured.typed import (
    read_corners,
    read_joint,
    read_length,
    read_lifts,
    read_times,
    read_weight,
)
from fireplace_calc.pieces.set_text import read_set

CUBIC_INCH = INCH**3


@pytest.fixture(scope="module")
def told():
    """The whole invented sheet, as it was typed."""
    return as_sheet()


@pytest.fixture(scope="module")
def made(told):
    return read_set(set_text(told))


def misfits(sheet, whole=False):
    return fit_so_far(lifts_of(read_sheet(sheet)), whole)


def number_of(sheet, mark):
    return next(n for n, e in enumerate(sheet.entries) if e.get("mark") == mark)


# ---- the sheet of forty pieces ----


def test_forty_pieces_make_a_set_of_the_volumes_on_the_sheet(made):
    """Volumes on the sheet by hand formulas, to the hundredth of a cubic inch."""
    wanted = {row["mark"]: float(row["volume"]) for row in rows()}
    assert len(wanted) == len(made.pieces) == 40
    for piece in made.pieces:
        volume = piece_volume(piece) / CUBIC_INCH
        assert volume == pytest.approx(wanted[piece.mark], abs=0.006), piece.mark


def test_a_set_is_tried_raised_and_with_its_extension_courses_left_out(told, monkeypatch):
    """Once for each head, whole; what does not meet at another height is then told."""
    runs = []
    monkeypatch.setattr(so_far, "_of_run", lambda run, *_: runs.append(run) or ())
    lifts = lifts_of(read_sheet(told))
    assert fit_so_far(lifts, whole=True) == ()
    tried = [(len(run), sum(lift.extension for lift in run)) for run in runs]
    assert tried == [(len(lifts), 3), (len(lifts) - 3, 0)] * 2


@pytest.mark.parametrize("head", ["straight", "segmental"])
@pytest.mark.parametrize("extensions", [0, 3])
def test_the_forty_pieces_meet(made, head, extensions):
    assert fit(as_wanted(choose(made, Choice(0, extensions, head, 12)))) == ()


def test_nothing_is_left_to_say_of_the_whole_sheet(told):
    read = read_sheet(told)
    assert [t.wrong or t.missing for t in read.told if t.wrong or t.missing] == []
    assert still_missing(read, lifts_of(read)) == () == misfits(told, whole=True)


def test_weighed_pieces_weigh_what_the_scale_said(made):
    """118 lb; 1 lb is 0.45359237 kg (international yard and pound agreement)."""
    assert made.piece("F8").weighed == pytest.approx(118 * 0.45359237)
    assert made.piece("PR").weighed is None and made.piece("PR").density == pytest.approx(
        125 * 0.45359237 / 0.3048**3
    )


def test_lining_and_lifts_follow_from_the_roles(made):
    """Throat's back part, lining, then its front part and the lintel: the order of the trade."""
    assert made.lining.after == ("N2",)
    assert made.piece("LS").after == made.piece("N1").after == ("lining",)
    assert [lift.extension for lift in made.lifts].count(True) == 3
    assert dict(made.lifts[9].heads) == {"straight": "LS", "segmental": "LA"}
    assert made.lifts[-1].times == (12, 36)


def test_the_shipped_set_measured_again_has_the_same_pieces():
    """Against data/sets/middling.toml, which was written by hand as outlines."""
    theirs = read_set((SETS / "middling.toml").read_text())
    ours = read_set(set_text(as_sheet()))
    same = {"PR": "PR", "PL": "PL", "TR": "TR", "TL": "TL", "TB": "TB", "LS": "LS", "LA": "LA"}
    same |= {"N1": "N1", "N2": "N2", "SH": "SH", "RR": "RR", "RL": "RL", "CT": "CT", "F8": "F8"}
    for ours_mark, their_mark in same.items():
        one, other = ours.piece(ours_mark), theirs.piece(their_mark)
        assert (one.adds, one.cuts, one.height, one.bed) == (
            other.adds,
            other.cuts,
            other.height,
            other.bed,
        ), ours_mark


# ---- what is said while it is typed ----


def test_two_walls_of_different_height_are_named(told):
    low = put(told, number_of(told, "W2B"), "C", "5")
    said = [m for m in misfits(low, True) if m.kind == "level"]
    assert {"W2R", "W2B"} <= set(said[0].names) | {"W2L"} and "W2B" in said[0].says
    assert "Check both heights" in said[0].says


@pytest.mark.parametrize(
    ("height", "tall", "short", "says"),
    [
        ("5", "W2R", "W2B", '6 1/4", W2B on its fullest only 5 1/2": 3/4" too much'),
        ("5 1/2", "W2R", "W2B", '6 1/4", W2B on its fullest only 6": 1/4" too much'),
        ("7", "W2B", "W2R", '7 1/4", W2R on its fullest only 6 1/2": 3/4" too much'),
    ],
)
def test_a_bed_that_follows_from_two_heights_is_not_named_again(told, height, tall, short, says):
    """What their beds would come to is said by their heights, once."""
    odd = put(told, number_of(told, "W2B"), "C", height)
    (one,) = misfits(odd, True)
    assert (one.kind, one.names) == ("level", (tall, short))
    assert one.says == (
        f"Lift course 2: {tall} and {short} cannot come level. {tall} on its thinnest bed is {says}."
        " Check both heights, from bed to bed."
    )


def test_a_shelf_that_finds_no_seat_is_named(told):
    off = put(told, number_of(told, "SH"), "Y", "24")
    assert any(m.kind == "seat" and m.names[0] == "SH.1" for m in misfits(off, True))


def test_a_tongue_taller_than_its_mate_is_deep_is_named(told):
    high = put(told, number_of(told, "C3"), "G", "2 1/2")
    assert any(m.kind == "clash" and {"C3.1", "F8.1"} == set(m.names) for m in misfits(high, True))


def test_pieces_of_one_mark_nest_into_each_other(told):
    high = put(told, number_of(told, "F8"), "G", "2 1/2")
    assert any(m.kind == "clash" and {"F8.1", "F8.2"} == set(m.names) for m in misfits(high, True))


def test_a_role_that_is_not_there_yet_is_named(told):
    bare = without(told, number_of(told, "F8"))
    read = read_sheet(bare)
    assert "Not on the sheet yet: flue." in still_missing(read, lifts_of(read))


def test_too_few_on_the_pallet_are_told(told):
    lifts = put(told, number_of(told, "W1B"), "lifts", "2-4")
    read = read_sheet(lifts)
    assert "W1B stands in 3 lifts, but 1 are on the pallet." in still_missing(read, lifts_of(read))


def test_an_empty_lift_is_named(told):
    kept = MeasuredSheet(told.head, tuple(e for e in told.entries if e.get("lifts") != "13"))
    read = read_sheet(kept)
    assert "Nothing stands in lift 13 yet." in still_missing(read, lifts_of(read))
    assert misfits(kept, False) == (), "what stands on nothing yet has no seat to be judged"


@pytest.mark.parametrize("count", range(1, 41))
def test_a_sound_set_is_never_called_unsound_while_it_is_entered(told, count):
    """In the order of the sheet, piece by piece."""
    begun_with = MeasuredSheet(told.head, told.entries[:count])
    assert misfits(begun_with) == ()


def test_a_ring_that_stays_open_is_named_when_the_next_lift_is_begun(told):
    kept = tuple(e for e in told.entries if e.get("mark") not in ("W1L", "W1B"))
    assert not any(m.kind == "way" for m in misfits(MeasuredSheet(told.head, kept[:3])))
    assert any(m.kind == "way" for m in misfits(MeasuredSheet(told.head, kept[:4])))


# ---- typing ----


@pytest.mark.parametrize(
    ("text", "unit", "exact"),
    [
        ("12 3/8", INCH, Fraction(99, 8)),
        ("12-3/8", INCH, Fraction(99, 8)),
        ("12.375", INCH, Fraction(99, 8)),
        ("3/4", INCH, Fraction(3, 4)),
        ("1'-0 3/8\"", INCH, Fraction(99, 8)),
        ("254 mm", INCH, Fraction(10)),
        ("300", 0.001, Fraction(300)),
        ("12 in", 0.001, Fraction(1524, 5)),
        ("12 ½", INCH, Fraction(25, 2)),
    ],
)
def test_lengths_are_read_as_a_tape_shows_them(text, unit, exact):
    assert read_length(text, unit, "A", "Width") == exact


@given(st.integers(0, 2000), st.integers(0, 63))
def test_every_mark_of_a_tape_is_read_exactly(whole, parts):
    """Counted in sixty-fourths, apart from the reading."""
    text = f"{whole} {parts}/64"
    assert read_length(text, INCH, "A", "Width") * 64 == whole * 64 + parts if whole < 390 else True


@pytest.mark.parametrize("text", ["", "x", "12 3/", "0", "-3", "12,5", "1/0", "999 ft", "1e999"])
def test_what_is_no_length_is_refused_in_one_sentence_with_its_field(text):
    with pytest.raises(InputError) as wrong:
        read_length(text, INCH, "A", "A: width", 1)
    assert wrong.value.name == "A" and str(wrong.value).count(". ") == 0


def test_joints_corners_lifts_counts_and_weights():
    assert read_joint("1/4, 3/8, 1/2", INCH, "bed", "Bed") == [
        Fraction(1, 4),
        Fraction(3, 8),
        Fraction(1, 2),
    ]
    assert read_corners("0,0; 9,-2; -5,23 1/2", INCH, "A", "A") == [
        (0, 0),
        (9, -2),
        (-5, Fraction(47, 2)),
    ]
    assert read_lifts("2-4, 6") == (2, 3, 4, 6) and read_times("12 to 36") == (12, 36)
    assert read_weight("100", True) == 100 and read_weight("100", False) == 45.359237
    for read in (
        lambda: read_joint("1/2, 3/8, 1/4", INCH, "bed", "Bed"),
        lambda: read_joint("1/2", INCH, "bed", "Bed"),
        lambda: read_corners("0,0; 9,0", INCH, "A", "A"),
        lambda: read_corners("0,0; 9; 5,5", INCH, "A", "A"),
        lambda: read_lifts("4-2"),
        lambda: read_lifts("0"),
        lambda: read_lifts("first"),
        lambda: read_times("12-99"),
        lambda: read_weight("heavy", True),
    ):
        with pytest.raises(InputError):
            read()


@pytest.mark.parametrize(
    ("form", "key", "text"),
    [
        ("wall with a rebate", "D", "10"),
        ("wall with a rebate", "G", "6"),
        ("wall with a rebate", "H", "30"),
        ("wall with a rebate", "E", "30"),
        ("block with a notch", "D", "44"),
        ("block with a notch", "E", "9"),
        ("shelf with a trough", "D", "24"),
        ("shelf with a trough", "E", "10"),
        ("shelf with a trough", "F", "5"),
        ("arched lintel", "D", "53"),
        ("arched lintel", "E", "9"),
        ("half of a reducer", "D", "24"),
        ("half of a reducer", "E", "20"),
        ("half of a reducer", "J", "10"),
        ("half of a reducer", "K", "18"),
        ("reducer in one piece", "D", "24"),
        ("block with a bore", "D", "20"),
        ("block with a bore", "E", "20"),
    ],
)
def test_a_length_that_the_form_does_not_allow_is_named_by_its_letter(form, key, text):
    sheet = typical(form)
    assert not read_sheet(sheet).told[0].wrong
    wrong = read_sheet(put(sheet, 0, key, text)).told[0].wrong
    assert list(wrong) == [key] and wrong[key].startswith(key), wrong


def typical(form, unit="in"):
    """A sheet of one piece, every length of its form typed."""
    head = {**HEAD, "unit": unit}
    sheet = put(begun(MeasuredSheet(head)), 0, "form", form)
    sheet = put(sheet, 0, "mark", "A1")
    for dim in FORMS[form].dims:
        if dim.corners and not dim.optional:
            sheet = put(sheet, 0, dim.key, "0, 0; 9, 0; 5, 23; 0, 23")
        elif dim.typical:
            sheet = put(sheet, 0, dim.key, str(dim.typical))
    return sheet


def test_a_tongue_without_a_wall_and_a_rebate_without_a_depth_are_refused():
    ring = put(typical("block with a bore"), 0, "I", "")
    assert "I" in read_sheet(ring).told[0].wrong
    wall = put(typical("wall with a rebate"), 0, "H", "")
    assert "H" in read_sheet(wall).told[0].wrong


def test_the_forms_that_the_forty_pieces_do_not_use_have_their_volume():
    """By hand: trapezoid, prismatoid (Simpson's rule is exact for it), rectangle less a cut."""
    wedge = volume(typical("wedge"))
    assert wedge == pytest.approx((24 + 16) / 2 * 12 * 8)
    block = volume(typical("tapered block"))
    assert block == pytest.approx(8 / 6 * (24 * 12 + 4 * 20 * 10 + 16 * 8))
    corners = put(put(typical("corner by corner"), 0, "D", "1, 1; 3, 1; 3, 3; 1, 3"), 0, "F", "2")
    assert volume(corners) == pytest.approx(8 * (9 + 5) / 2 * 23 - 2 * 2 * 2)
    bored = put(typical("block with a bore"), 0, "E", "12")
    for key in "GHIJ":
        bored = put(bored, 0, key, "")
    assert volume(bored) == pytest.approx(8 * (20 * 20 - 15 * 12))

    def across(low, high, share):
        return low + (high - low) * share

    def ring(share):
        wide, deep = across(48, 10, share), across(24, 20, share)
        return wide * deep - (wide - 2 * across(5, 2.5, share)) * (
            deep - across(5, 2.5, share) - across(4, 2.5, share)
        )

    assert volume(typical("reducer in one piece")) == pytest.approx(
        16 / 6 * (ring(0) + 4 * ring(0.5) + ring(1))
    )


def volume(sheet):
    read = read_sheet(sheet).told[0]
    assert read.piece is not None, (read.wrong, read.missing)
    return piece_volume(read.piece) / CUBIC_INCH


@pytest.mark.parametrize("form", FORMS)
def test_a_metric_sheet_makes_the_same_piece(form):
    """1 in is 25.4 mm."""
    inches = typical(form)
    metric = MeasuredSheet(
        {**HEAD, "unit": "mm", "bed": "6, 10, 13", "perpend": "3, 6, 11", "density": "2000"},
        tuple(
            {
                k: (" ; ".join(_mm(c) for c in t.split(";")) if k == "A" and ";" in t else _mm(t))
                if k in LETTERS
                else t
                for k, t in e.items()
            }
            for e in inches.entries
        ),
    )
    assert volume(metric) == pytest.approx(volume(inches), rel=1e-9)


def _mm(text):
    return ", ".join(
        f"{float(Fraction(part.strip()) * Fraction(254, 10))!r}" for part in text.split(",")
    )


@settings(deadline=None)
@given(st.data())
def test_any_lengths_make_a_piece_within_its_box_or_are_refused(data):
    """A solid is never more than width, depth and height over all, tongue counted in, nor less than
    nothing; what cannot be built is told at a field, and drawn all the same.
    """
    name = data.draw(st.sampled_from([f for f in FORMS if f != "corner by corner"]))
    sheet = put(put(begun(MeasuredSheet(HEAD)), 0, "form", name), 0, "mark", "A1")
    for dim in FORMS[name].dims:
        quarters = data.draw(st.integers(0 if dim.optional else 1, 120))
        if quarters:
            sheet = put(sheet, 0, dim.key, f"{quarters}/4")
    read = read_sheet(sheet).told[0]
    assert (read.piece is None) == bool(read.wrong or read.missing)
    sketch = sketch_of(sheet, 0)
    assert sketch is not None
    if read.piece is None:
        return
    entry = sheet.entries[0]
    wide, deep, high = (float(Fraction(entry[key])) for key in "ABC")
    if "reducer" in name or name == "tapered block":
        wide = max([wide, *(float(Fraction(entry[k])) for k in ("D", "G") if k in entry)])
        deep = max([deep, *(float(Fraction(entry[k])) for k in ("E", "H") if k in entry)])
    if name == "wedge":
        wide = max(wide, float(Fraction(entry["D"])))
    if name == "block with a bore":
        high += float(Fraction(entry.get("G", "0")))
    content = piece_volume(read.piece) / CUBIC_INCH
    assert 0 < content <= wide * deep * high * (1 + 1e-9), entry


def test_an_arch_that_is_set_off_the_center_line_is_refused_at_the_field():
    wrong = read_sheet(put(typical("arched lintel"), 0, "X", "3")).told[0].wrong
    assert "X" in wrong and "center line" in wrong["X"]


def test_a_piece_without_weight_and_density_is_not_done():
    sheet = put_head(typical("box"), "density", "")
    assert "weight" in read_sheet(sheet).told[0].wrong
    assert read_sheet(put(sheet, 0, "weight", "90")).told[0].piece.weighed == pytest.approx(
        40.8233133
    )


@pytest.mark.parametrize(
    ("key", "text", "wrong", "table"),
    [
        ("after", "XX", "No piece has the mark XX, after which W1R is set.", ["XX"]),
        ("after", " W1L, , W1B ,", None, ["W1L", "W1B"]),
        ("after", "lining", None, ["lining"]),
        ("count", "0", "How many is '0', but 1 to 1000 is wanted.", None),
        ("count", "1001", "How many is '1001', but 1 to 1000 is wanted.", None),
        ("count", "six", "How many is 'six', but 1 to 1000 is wanted.", None),
        ("count", "1", None, 1),
        ("count", "1000", None, 1000),
        ("bearing", "1 1/2", None, Fraction(3, 2)),
        ("bearing", "0", None, Fraction(0)),
        (
            "bearing",
            "x",
            "Least bearing is 'x', but a length such as 12 3/8 or 12-3/8 is wanted.",
            None,
        ),
        (
            "bearing",
            "-1",
            "Least bearing is '-1', but a length of nought or more, such as 12 3/8 or 12-3/8, is wanted.",
            None,
        ),
        ("material", "clay", None, "clay"),
        (
            "material",
            "wood",
            "Piece W1R, material: it is 'wood', but one of refractory concrete, reinforced refractory"
            " concrete, clay, lightweight concrete is wanted.",
            "wood",
        ),
    ],
)
def test_what_is_told_of_a_wall_goes_into_its_table_or_is_said_at_the_field(
    told, key, text, wrong, table
):
    number = number_of(told, "W1R")
    read = read_sheet(put(told, number, key, text)).told[number]
    assert read.wrong == ({} if wrong is None else {key: wrong}) and read.missing == []
    assert read.table.get("pallet" if key == "count" else key) == table


@pytest.mark.parametrize("key", ["mark", "role", "lifts", "form", "A"])
def test_what_a_wall_does_not_do_without_is_missing_and_no_piece_is_made(told, key):
    number = number_of(told, "W1R")
    read = read_sheet(put(told, number, key, "")).told[number]
    assert read.missing[:1] == [key] and read.wrong == {} and read.piece is None


def test_a_wall_set_after_others_says_so_in_the_set(told):
    sheet = put(put(told, number_of(told, "W1R"), "after", "W1B, PR"), 0, "bearing", "1 1/2")
    made = read_set(set_text(put_head(sheet, "note", 'his "own" words')))
    assert made.piece("W1R").after == ("W1B", "PR") and made.piece("W1B").after == ()
    assert made.piece("PR").bearing == pytest.approx(1.5 * INCH)
    assert made.note == 'his "own" words'


@pytest.mark.parametrize(("socket", "most"), [("1", "2.24"), ("", "2.49")])
def test_the_wall_of_a_tongue_leaves_something_of_the_block_around_it(socket, most):
    """Bore of 15 in a block of 20: two and a half inches around it, less the clearance of a socket."""
    ring = put(put(typical("block with a bore"), 0, "H", socket), 0, "J", "1/4")
    assert read_sheet(put(ring, 0, "I", most)).told[0].wrong == {}
    over = str(Fraction(most) + Fraction(1, 100))
    says = "I, the wall of the tongue, leaves nothing of the block around it."
    assert read_sheet(put(ring, 0, "I", over)).told[0].wrong == {"I": says}
    shape = FORMS["block with a bore"].shape
    sizes = {"A": 20, "B": 20, "C": 8, "D": 15, "G": 1, "I": Fraction(5, 2)}
    with pytest.raises(InputError) as refused:
        shape({key: Fraction(size) for key, size in sizes.items()})
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("I", "less than the block around the bore", "5/2")


def test_corner_by_corner_a_piece_may_have_another_outline_at_its_top():
    sheet = put(typical("corner by corner"), 0, "B", "1, 0; 8, 0; 4, 23; 1, 23")
    table = read_sheet(sheet).told[0].table
    assert table["outline"] == [(0, 0), (9, 0), (5, 23), (0, 23)]
    assert table["top"] == [(1, 0), (8, 0), (4, 23), (1, 23)]


def test_a_sheet_longer_than_any_is_not_read():
    with pytest.raises(InputError) as refused:
        read_sheet_text("#" * 1_000_001)
    assert str(refused.value) == "The sheet is longer than any sheet."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("sheet", "a sheet", 1_000_001)
    assert read_sheet_text("[set]\nunit = 'in'\n" + "#" * (1_000_000 - 18))[0].head == {
        "unit": "in"
    }


# ---- from piece to piece ----


def test_the_next_piece_begins_as_a_copy_of_the_last_without_what_is_its_own():
    sheet = typical("box")
    for key, text in {"weight": "90", "bed": "3/8, 1/2, 1", "X": "3", "name": "plate"}.items():
        sheet = put(sheet, 0, key, text)
    copy = begun(sheet).entries[1]
    assert {k: copy[k] for k in ("A", "B", "C", "X", "role", "form")} == {
        "A": "24",
        "B": "12",
        "C": "8",
        "X": "3",
        "role": "base plate",
        "form": "box",
    }
    assert not {"mark", "weight", "bed", "name"} & set(copy)


def test_the_other_hand_follows_its_piece():
    sheet = put(typical("wall with a rebate"), 0, "mark", "WR")
    sheet = put(sheet, 0, "name", "right wall")
    sheet = other_hand(put(sheet, 0, "X", "17"), 0)
    assert sheet.entries[1]["mark"] == "WL" and sheet.entries[1]["name"] == "left wall"
    right, left = (t.piece for t in read_sheet(put(sheet, 0, "C", "6")).told)
    assert left.height == right.height == pytest.approx(6 * INCH)
    assert left.adds[0].lower == tuple((-x, y) for x, y in reversed(right.adds[0].lower))
    copy = begun(sheet).entries[2]
    assert copy["form"] == "wall with a rebate" and copy["A"] == "9" and "mirror" not in copy
    assert "mirror" in keys_of(sheet, sheet.entries[1]) and "A" not in keys_of(
        sheet, sheet.entries[1]
    )


def test_a_mark_changes_wherever_it_is_named():
    sheet = other_hand(put(typical("box"), 0, "mark", "WR"), 0)
    sheet = put(begun(sheet), 2, "mark", "N1")
    sheet = put(put(sheet, 2, "after", "WR, lining"), 0, "mark", "VR")
    assert sheet.entries[1]["mirror"] == "VR" and sheet.entries[2]["after"] == "VR, lining"


def test_a_piece_with_another_hand_stays_on_the_sheet():
    sheet = other_hand(put(typical("box"), 0, "mark", "WR"), 0)
    with pytest.raises(InputError, match="WL is the other hand of WR"):
        without(sheet, 0)
    assert len(without(sheet, 1).entries) == 1


def test_a_mark_without_a_side_has_its_other_hand_named_by_hand():
    sheet = put(typical("box"), 0, "mark", "B2")
    assert "mark" not in other_hand(sheet, 0).entries[1]
    assert other_hand(sheet, 0, "B3").entries[1]["mark"] == "B3"
    with pytest.raises(InputError, match="no mark yet"):
        other_hand(put(sheet, 0, "mark", ""), 0)


def test_two_pieces_of_one_mark_are_told_at_both():
    sheet = put(begun(typical("box")), 1, "mark", "A1")
    assert all("mark" in t.wrong for t in read_sheet(sheet).told)


def test_a_role_brings_its_form_and_keeps_what_is_called_the_same():
    sheet = put(typical("box"), 0, "role", "flue")
    entry = sheet.entries[0]
    assert entry["form"] == "block with a bore" and entry["A"] == "24" and "D" not in entry
    assert "times" in keys_of(sheet, entry) and label_of(entry, "D") == "D: bore, across"
    assert label_of(entry, "mirror") == "Other hand of" and label_of(entry, "mark") == "Mark"
    assert "material" in keys_of(sheet, entry) and "material" not in keys_of(sheet, entry, False)


def test_a_role_that_was_there_before_brings_its_lengths_and_its_place():
    sheet = put(put(typical("wall with a rebate"), 0, "role", "wall"), 0, "mark", "WR")
    for key, text in {"form": "wall with a rebate", "C": "10", "X": "17", "lifts": "2"}.items():
        sheet = put(sheet, 0, key, text)
    sheet = put(put(begun(sheet), 1, "role", "back"), 1, "A", "37")
    assert "X" not in sheet.entries[1] and sheet.entries[1]["form"] == "box"
    sheet = put(begun(sheet), 2, "lifts", "3")
    for role in ("wall", "extension wall"):
        again = put(sheet, 2, "role", role).entries[2]
        assert (again["C"], again["X"], again["lifts"]) == ("10", "17", "3"), role
        assert again["form"] == "wall with a rebate" and "mark" not in again
    assert "X" not in put(sheet, 2, "role", "lintel").entries[2]


# ---- files ----


def test_a_sheet_comes_back_word_for_word(told):
    odd = put_head(told, "note", 'his "own" words, 3/4 \\ é')
    assert read_sheet_text(sheet_text(odd, "abc")) == (odd, "abc")


@given(st.text(max_size=30), st.sampled_from(["mark", "A", "X", "name"]))
def test_whatever_is_typed_comes_back_or_is_refused_never_lost(text, key):
    sheet = put(begun(MeasuredSheet({"unit": "in"})), 0, key, text)
    try:
        again, _ = read_sheet_text(sheet_text(sheet))
    except InputError:
        assert not text.isprintable()
    else:
        assert again == sheet


@pytest.mark.parametrize(
    "text",
    [
        "x",
        "[set]\nunit = 3",
        "[set]\nunit = 'ft'",
        "[set]\n[[piece]]\ncolor = 'red'",
        "piece = 3\n[set]",
        "",
    ],
)
def test_a_sheet_that_is_none_is_refused(text):
    with pytest.raises(InputError):
        read_sheet_text(text)


def test_the_file_keeps_what_was_read_off_the_tape(told):
    text = set_text(told)
    assert "A: width 9, B: depth 23 3/4" in text
    assert tomllib.loads(text)["name"] == HEAD["name"]


def test_pieces_that_are_not_done_are_left_out_and_named(told):
    text = set_text(put(told, number_of(told, "W1B"), "C", "x"))
    assert "# Not done, so not in here: W1B." in text
    assert "W1B" not in {p.mark for p in read_set(text).pieces}


@pytest.mark.parametrize(
    ("key", "label"),
    [
        ("name", "Name of the set"),
        ("bed", "Bed joint: least, wanted, most"),
        ("perpend", "Joint beside: least, wanted, most"),
        ("thickness", "Lining: firebrick, thickness"),
        ("floor", "Lining: floor"),
    ],
)
def test_a_set_without_what_is_told_once_is_not_written(told, key, label):
    with pytest.raises(InputError, match=f"^{label} is missing.$"):
        set_text(put_head(told, key, ""))


# ---- the drawing ----


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("typed", [False, True])
@pytest.mark.parametrize("hand", [False, True])
def test_a_form_is_drawn_before_and_after_it_is_typed(form, typed, hand):
    sheet = typical(form)
    if not typed:
        bare = {"form": form, "mark": "A1", "role": "wall"}
        sheet = MeasuredSheet(sheet.head, (bare,))
    sheet = other_hand(sheet, 0, "A2") if hand else sheet
    sketch = sketch_of(sheet, len(sheet.entries) - 1)
    assert sketch.guessed != typed and not sketch.says
    paper = Sheet(300.0, 186.0)
    measured_view(paper, Cell(4.0, 4.0, 296.0, 182.0), sketch)
    assert collisions(paper) == []
    words = [label.text for label in paper.labels]
    for length in sketch.lengths:
        shown = f"{length.key} {length.words or '?'}"
        assert shown in words and bool(length.words) == typed


@pytest.mark.parametrize("form", [f for f in FORMS if f != "corner by corner"])
@pytest.mark.parametrize("hand", [False, True])
def test_every_length_is_drawn_as_long_as_it_is_typed_and_within_its_piece(form, hand):
    sheet = typical(form)
    sheet = other_hand(sheet, 0, "A2") if hand else sheet
    sketch, entry = sketch_of(sheet, len(sheet.entries) - 1), sheet.entries[0]
    assert {one.key for one in sketch.lengths} >= {d.key for d in FORMS[form].dims if d.typical} - {
        "J"
    }
    half, deep = (float(Fraction(entry[key])) * INCH / 2 for key in "AB")
    for one in sketch.lengths:
        typed = float(Fraction(entry[one.key])) * INCH
        assert one.high - one.low == pytest.approx(typed), one
        if one.edge in ("below", "above"):
            low, high = (0.0, 2 * deep) if one.view == "side" else (-half, half)
            assert low - 1e-9 <= one.low <= one.high <= high + 1e-9, one


def test_what_may_stay_empty_is_drawn_while_it_is_asked_for():
    sheet = typical("block with a bore")
    for key in "GHIJ":
        sheet = put(sheet, 0, key, "")
    assert "G" not in {one.key for one in sketch_of(sheet, 0).lengths}
    assert {"G", "I"} <= {one.key for one in sketch_of(sheet, 0, "G").lengths}


def test_a_length_that_does_not_go_is_said_and_the_drawing_stays():
    sketch = sketch_of(put(typical("arched lintel"), 0, "E", "30"), 0)
    assert sketch.says.startswith("E, the rise") and sketch.guessed


def test_the_bore_is_drawn_as_wide_as_it_is_typed():
    sketch = sketch_of(typical("block with a bore"), 0)
    bore = next(one for one in sketch.lengths if one.key == "D")
    assert bore.high - bore.low == pytest.approx(15 * INCH)
    content = piece_volume(sketch.piece) / CUBIC_INCH
    assert content == pytest.approx(
        8 * 400 - pi / 4 * 15**2 * 8 + pi / 4 * (17**2 - 15**2) * 0.75 - pi / 4 * (17.5**2 - 15**2)
    )


# ---- kept in the folder ----


def test_a_restart_goes_on_where_it_was_and_a_design_takes_the_set(told, tmp_path, monkeypatch):
    files = MeasuredFiles(tmp_path / "own.toml")
    assert files.take_up()[0].entries == EMPTY.entries
    half = MeasuredSheet(told.head, told.entries[:3])
    assert 'pieces.set = "own"' in files.keep(half)
    again = MeasuredFiles(tmp_path / "own.toml")
    assert again.take_up()[0] == half
    again.keep(told)
    monkeypatch.chdir(tmp_path)
    design = change(Design(), {"pieces.set": "own"})
    assert len(design.piece_set.pieces) == 40
    theirs = change(Design(), {"pieces.set": "middling"})
    assert design.opening.width == pytest.approx(theirs.opening.width), "the same plan"
    ours, others = ({p.name for p in build_geometry(d).parts} for d in (design, theirs))
    assert ours == others


def test_what_cannot_be_written_yet_is_kept_on_the_sheet_and_said(tmp_path):
    files = MeasuredFiles(tmp_path / "own.toml")
    assert "not written yet" in files.keep(put(EMPTY, 0, "A", "12 3/"))
    assert not (tmp_path / "own.toml").exists()
    assert MeasuredFiles(tmp_path / "own.toml").take_up()[0].entries[0]["A"] == "12 3/"


def test_a_set_that_a_hand_has_changed_is_never_written_over(told, tmp_path):
    path = tmp_path / "own.toml"
    files = MeasuredFiles(path)
    files.keep(told)
    by_hand = path.read_text() + "# mine\n"
    path.write_text(by_hand)
    assert "stays as it is" in files.keep(put(told, 0, "A", "26"))
    assert path.read_text() == by_hand
    other = MeasuredFiles(path)
    assert other.take_up()[0].entries[0]["A"] == "26", "the sheet goes on"
    path.rename(tmp_path / "mine.toml")
    assert "is written" in other.keep(told) and path.read_text() == set_text(told)


def test_a_set_of_another_hand_is_never_written_over(told, tmp_path):
    path = tmp_path / "own.toml"
    path.write_text("name = 'another'")
    assert "stays as it is" in MeasuredFiles(path).keep(told)
    assert path.read_text() == "name = 'another'"


def test_a_sheet_that_cannot_be_read_is_set_aside(tmp_path):
    (tmp_path / "own-sheet.toml").write_text("x")
    sheet, said = MeasuredFiles(tmp_path / "own.toml").take_up()
    assert sheet == EMPTY and "own-sheet-unreadable-1.toml" in said
    assert (tmp_path / "own-sheet-unreadable-1.toml").read_text() == "x"


@pytest.mark.parametrize("name", ["own", "own.txt", ".toml", ".own.toml"])
def test_a_name_that_no_design_could_ask_for_is_refused(name, tmp_path):
    with pytest.raises(InputError):
        MeasuredFiles(tmp_path / name)


@pytest.mark.parametrize(
    ("every", "left_out", "runs"),
    [
        ((1, 2, 3, 5), (), [[1, 2, 3], [5]]),
        ((1, 2, 3, 5), (2,), [[1, 3], [5]]),
        ((1, 2, 3, 4, 6), (2, 3), [[1, 4], [6]]),
        ((2, 3, 4, 5), (2, 4), [[3, 5]]),
        ((1, 3, 4), (3,), [[1], [4]]),  # nobody has typed the second
        ((1, 2), (1, 2), []),
    ],
)
def test_a_gap_that_an_extension_leaves_is_none(every, left_out, runs):
    """Numbers of lifts that stand on each other, with the extension courses left out."""
    lifts = [SimpleNamespace(number=n) for n in every]
    kept = [lift for lift in lifts if lift.number not in left_out]
    assert [[lift.number for lift in run] for run in _runs(kept, lifts)] == runs


@pytest.mark.parametrize("key", ["raise", "stack"])
@pytest.mark.parametrize(
    ("text", "wanted"), [("12", 12), ("12 mm", 12 / 25.4), ("a lot", None), ("", None)]
)
def test_a_limit_of_the_maker_stands_in_the_set_once_it_can_be_read(key, text, wanted):
    """In the inches of the sheet."""
    told = read_head(put_head(typical("box"), key, text), INCH)
    assert told.table.get(key) == (None if wanted is None else pytest.approx(wanted))
    assert (key in told.table) == (wanted is not None)
    assert bool(told.wrong.get(key)) == (text == "a lot")


@pytest.mark.parametrize(
    ("many", "says"),
    [
        (0, "Nothing but the set as a whole was on the sheet; it goes on there."),
        (1, "One piece was on the sheet; it goes on there."),
        (2, "2 pieces were on the sheet; it goes on there."),
    ],
)
def test_a_sheet_that_is_taken_up_says_how_many_pieces_it_has(tmp_path, many, says):
    """The piece that is begun and has no mark yet is none."""
    sheet = begun(MeasuredSheet(HEAD))
    for n in range(many):
        sheet = begun(put(sheet, n, "mark", f"B{n}"))
    MeasuredFiles(tmp_path / "own.toml").keep(sheet)
    assert MeasuredFiles(tmp_path / "own.toml").take_up()[1] == says
