"""Do the pieces of a set meet; and what is said when they do not."""

from dataclasses import replace
from math import cos, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from manifold3d import CrossSection

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.geometry.assembled.assembly import Placed, as_wanted, assemble
from fireplace_calc.geometry.assembled.closing.leaks import _open_run, bed_leaks, lift_leaks
from fireplace_calc.geometry.assembled.closing.ways import way_faults
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.assembled.joints import _between
from fireplace_calc.geometry.assembled.lowering import covers, laps_over
from fireplace_calc.geometry.assembled.readings import _box, _thinnest, lined, read_off
from fireplace_calc.geometry.assembled.seats import bearing_lengths, seat_fault
from fireplace_calc.geometry.assembled.wording import small
from fireplace_calc.pieces.choice import Choice, choose, extensions_of, heads_of
from fireplace_calc.pieces.set_text import read_set

MIDDLING = (DATA / "sets" / "middling.toml").read_text()
SHIPPED = shipped_sets()


def stood(text, **choice):
    return as_wanted(choose(read_set(text), Choice(**choice)))


@pytest.mark.parametrize("name", SHIPPED)
def test_every_shipped_set_fits_in_every_choice(name):
    made = read_set((DATA / "sets" / f"{name}.toml").read_text())
    for width in range(len(made.widths)):
        for extensions in range(extensions_of(made) + 1):
            for head in heads_of(made) or ("straight",):
                lifts = choose(made, Choice(width, extensions, head))
                assert fit(as_wanted(lifts)) == ()


WORSE = {
    "back too wide": (
        "outline = [[0, 0], [37.5, 0]",
        "outline = [[0, 0], [38.5, 0]",
        "WB.1",
        "inside",
    ),
    "back too deep in its rebate": (
        "at = [-18.75, 20.375]",
        "at = [-18.75, 19.75]",
        "WB.1",
        "WR.1",
    ),
    "wall too tall": (
        'mark = "WL"\nname = "left wall"\nmirror = "WR"',
        'mark = "WL"\nname = "left wall"\nmirror = "WR"\nheight = 10.5',
        "WL",
        "WR",
    ),
    "shelf finds no seat": ("at = [-24, 14]", "at = [-24, 24]", "SH.1", "seat"),
    "lintel too short": (
        "outline = [[0, 0], [53, 0], [53, 5], [0, 5]]",
        "outline = [[1.5, 0], [51.5, 0], [51.5, 5], [1.5, 5]]",
        "LS.1",
        "bears",
    ),
    "nest deeper than its mate": (
        "nest = { tongue = 0.75, socket = 1,",
        "nest = { tongue = 1.75, socket = 1,",
        "F8",
        "inside",
    ),
    "bore beside the collar": (
        'role = "flue"\nat = [0, 11.875]',
        'role = "flue"\nat = [3, 11.875]',
        "F8",
        "CT",
    ),
    "leak in the throat": (
        "outline = [[0, 0], [5, 0], [5, 5.25], [43, 5.25], [43, 0], [48, 0], [48, 8.5], [0, 8.5]]",
        "outline = [[0, 0], [5, 0], [5, 5.25], [40, 5.25], [40, 8.5], [0, 8.5]]",
        "N2.1",
        "SH.1 and N1.1 leave 9",
    ),
}


KINDS = {"bed", "clash", "level", "tight", "way", "wide", "seat", "tips", "bearing"}
MARKS = {piece.mark for piece in read_set(MIDDLING).pieces}


@pytest.mark.parametrize("case", WORSE)
def test_a_misfit_names_its_pieces_and_the_measure(case):
    old, new, piece, says = WORSE[case]
    assert old in MIDDLING
    try:
        misfits = fit(stood(MIDDLING.replace(old, new, 1)))
        assert {m.kind for m in misfits} <= KINDS
        assert all(name.partition(".")[0] in MARKS for m in misfits for name in m.names)
        found = " ".join(m.says for m in misfits)
    except ValueError as refused:
        found = str(refused)
    assert piece in found and says in found, found


@pytest.mark.parametrize(
    ("at", "kind", "by"), [("0.25", "wide", 1 / 16), ("0.03125", "tight", 1 / 16)]
)
def test_two_pieces_too_near_or_too_far_are_named_with_the_measure(at, kind, by):
    """The two base plates stand so far each side of the middle: twice that is their joint, which may
    be 1/8 to 7/16 in.
    """
    assert "at = [0.125, 0]" in MIDDLING
    (found,) = fit(stood(MIDDLING.replace("at = [0.125, 0]", f"at = [{at}, 0]", 1)))
    assert found.kind == kind and found.by / INCH == pytest.approx(by, abs=1e-5)
    assert sorted(name[:2] for name in found.names) == ["PL", "PR"], found


def test_a_joint_out_of_its_range_is_a_misfit():
    lifts = choose(read_set(MIDDLING), Choice())
    wanted = as_wanted(lifts)
    rises = [b - a for a, b in zip((0.0, *wanted.tops), wanted.tops, strict=False)]
    rises[1] += 0.25 * INCH
    found = fit(assemble(lifts, rises))
    assert [m.kind for m in found] == ["wide"] * 3
    assert 'its bed is 5/8" (15.9 mm), 1/8" (3.2 mm) too thick' in found[0].says


def test_lengths_are_read_off_the_pieces():
    """By hand, in inches: plate 3 on a bed of 1/2; three courses of 10 on 3/8; the lintel on 3/8; top
    walls 9; throat 5, reducer 16, collar 3, each on 3/8. Side: from 22-3/8 in front to 17-1/2 at a depth
    of 20, the splits and their joint square to it."""
    r = read_off(stood(MIDDLING))
    inches = {
        "plate_top": 3.5,
        "opening_top": 3.5 + 3 * 10.375 + 0.375,
        "throat_bottom": 3.5 + 3 * 10.375 + 9.375,
        "throat_top": 3.5 + 3 * 10.375 + 9.375 + 5.375,
        "head_top": 3.5 + 3 * 10.375 + 9.375 + 5.375 + 16.375 + 3.375,
        "half_width": 22.375,
        "depth": 20.375,
        "lintel_bearing": 4.125,
        "throat_front": 5,
        "throat_back": 10.5,
        "throat_width": 38,
        "bore_width": 15,
        "flue_half": 10,
        "half_over_all": 26.5,
        "deep_over_all": 23.75,
    }
    for name, wanted in inches.items():
        assert getattr(r, name) / INCH == pytest.approx(wanted, abs=1e-5), name
    assert r.splay == pytest.approx(4.875 / 20, abs=1e-6)
    # The reducer, 16 high: inside from 19-1/8 to 7-1/2 aside, 5 to 4-3/8 in front, 19-3/4 to 19-3/8 behind.
    assert r.slopes == pytest.approx((11.625 / 16, 0.625 / 16, 0.375 / 16), abs=1e-6)
    assert [one / INCH for one in r.chamber_foot] == pytest.approx([19.125, 19.75], abs=1e-5)
    half, back, depth = lined(r, read_set(MIDDLING).lining)
    aside = 1.375 * (1 + (4.875 / 20) ** 2) ** 0.5
    assert half / INCH == pytest.approx(22.375 - aside, abs=1e-5)
    assert depth / INCH == pytest.approx(19.0, abs=1e-5)
    assert back / INCH == pytest.approx(22.375 - aside - 19 * 4.875 / 20, abs=1e-5)


def test_an_extension_brings_its_joint_along():
    flat, raised = (read_off(stood(MIDDLING, extensions=n)) for n in (0, 2))
    assert (raised.opening_top - flat.opening_top) / INCH == pytest.approx(12.75)


def first(text, kind, **choice):
    return next(m for m in fit(stood(text, **choice)) if m.kind == kind)


def test_a_gap_is_told_between_its_pieces_to_the_last_digit():
    """By hand, in inches: the back 3 narrower at either end leaves its joint of 1/4 and 3 more; each end
    is told by itself, and the joint of a half reducer moved by 3 is 1/4 and two threes."""
    narrow = MIDDLING.replace("at = [-18.75, 20.375]", "at = [-15.75, 20.375]").replace(
        "outline = [[0, 0], [37.5, 0], [37.5, 3]", "outline = [[0, 0], [31.5, 0], [31.5, 3]"
    )
    ways = [m for m in fit(stood(narrow)) if m.kind == "way"]
    assert {m.names for m in ways} >= {("WR.1", "WB.1"), ("WL.1", "WB.1")}
    assert all(m.by / INCH == pytest.approx(3.25, abs=1e-4) for m in ways)
    assert '3 1/4" (82.6 mm) open: the smoke gets out there' in ways[0].says
    apart = MIDDLING.replace(
        'role = "reducer"\nat = [0.125, 0]', 'role = "reducer"\nat = [3.125, 0]'
    )
    found = first(apart, "way")
    assert set(found.names) == {"RR.1", "RL.1"} and "leave" in found.says
    assert found.by / INCH == pytest.approx(6.25, abs=1e-4)


def test_a_wall_behind_the_front_of_its_mate_is_told():
    """The left wall pushed back 2 in, the right one left: 2 in are open to the room."""
    pushed = MIDDLING.replace(
        'mark = "WL"\nname = "left wall"\nmirror = "WR"',
        'mark = "WL"\nrole = "wall"\nheight = 10\noutline = [[-22.375, 2], [-26.5, 2], [-26.5, 5],'
        " [-22.5, 25.75], [-19, 25.75], [-19, 22], [-17.5, 22]]",
    )
    found = first(pushed, "way")
    assert found.names == ("WL.1", "WR.1")
    assert found.by / INCH == pytest.approx(2, abs=1e-4)
    assert 'WL.1 stands 2" (50.8 mm) behind the front of WR.1' in found.says


def test_a_way_that_is_shut_and_one_too_many_are_told_with_their_size():
    """The shelf as long as the block lies on the slot, 38 by 5-1/2 under it; a trough cut right through
    is a second way."""
    through = MIDDLING.replace("from = 3, to = 5", "from = 0, to = 5")
    found = first(through, "way")
    assert found.names == ("N2.1", "N1.1") and "2 ways through" in found.says
    assert found.by / INCH == pytest.approx(5.5, abs=1e-4)  # the lesser; the trough has 6
    start = MIDDLING.index("top = [[0, 1.875]")
    solid = MIDDLING[
        : MIDDLING.index("outline = [[0, 0], [23.875, 0], [23.875, 23.75], [0, 23.75]")
    ]
    solid += "outline = [[0, 0], [23.875, 0], [23.875, 23.75], [0, 23.75]]\n"
    solid += MIDDLING[MIDDLING.index("\n", start) + 1 :]
    shut = first(solid, "way")
    assert set(shut.names) >= {"RL.1", "RR.1", "N2.1", "N1.1"}
    assert "shut the smoke's way" in shut.says
    assert shut.by / INCH == pytest.approx(5.5, abs=1e-3)
    pieces = stood(solid).by_lift
    reducer = next(here for here in pieces if here[0].piece.role == "reducer")
    (alone,) = way_faults(reducer, (), -1)
    assert (alone.names, alone.kind) == (tuple(p.name for p in reducer), "way")
    assert alone.says == "RL.1 and RR.1 leave the smoke no way through." and alone.by == 0.0


def test_a_rim_round_the_bore_is_measured_where_it_is_thinnest():
    """By hand, in inches: a round bore of 19 in a block of 20, no nests: half an inch stands, where the
    corners have four; 1 is asked."""
    text = MIDDLING.replace("nest = { tongue = 0.75, wall = 1 }\n", "").replace(
        "nest = { tongue = 0.75, socket = 1, wall = 1, clearance = 0.25 }\n", ""
    )
    assert fit(stood(text)) == ()
    thin = text.replace("bore = 15\nliner = 0.75", "bore = 19\nliner = 0.25")
    found = next(m for m in fit(stood(thin)) if m.names == ("F8.2", "F8.1"))
    assert found.kind == "bed" and found.by / INCH == pytest.approx(0.5, abs=0.02)
    assert "wide round the smoke where it is narrowest" in found.says
    just = text.replace("bore = 15\nliner = 0.75", "bore = 17.95\nliner = 0.25")
    assert not [m for m in fit(stood(just)) if m.names == ("F8.2", "F8.1")]


def test_a_bed_with_a_gap_names_the_pieces_over_and_under_it():
    """The throat's front part left out: the reducer has nothing under its front, from side to side of
    the slot; its own lift still closes, for the room's side counts as walled."""
    gone = MIDDLING.replace('pieces = ["N2", "SH", "N1"]', 'pieces = ["N2", "SH"]')
    start = gone.index('[[piece]]\nmark = "N1"')
    gone = gone[:start] + gone[gone.index("[[piece]]", start + 5) :]
    beds = [m for m in fit(stood(gone)) if m.kind == "bed"]
    assert beds and all("does not close round the smoke" in m.says for m in beds)
    assert any({"N2.1", "LS.1"} <= set(m.names) for m in beds)
    assert all(m.by > 30 * INCH for m in beds)


def test_what_tips_says_how_far():
    """By hand, in inches: a block 10 deep on 3 of it; half of its least bearing of 1 carries nothing, so
    its middle lies 5 - 2-1/2 beside."""
    low, high = (
        read_set(
            'name = "two"\nunit = "in"\ndensity = 2000\nbed = [0.25, 0.375, 0.5]\n'
            "perpend = [0.125, 0.25, 0.5]\n"
            '[[piece]]\nmark = "A"\nrole = "wall"\nheight = 4\n'
            f"outline = [[-5, {front}], [5, {front}], [5, {back}], [-5, {back}]]\n"
            '[[lift]]\nname = "one"\npieces = ["A"]\n'
        ).piece("A")
        for front, back in ((-5, 3), (0, 10))
    )
    fault = seat_fault(high, (low,))
    assert (fault.kind, fault.by / INCH) == ("tips", pytest.approx(2.5, abs=1e-3))
    assert '2 1/2" (63.5 mm) beside its seat' in fault.says


def test_a_lift_that_is_sound_below_is_judged_anew_with_another_bed():
    """What is known of a lift is known of its own beds alone."""
    lifts = choose(read_set(MIDDLING), Choice())
    wanted = as_wanted(lifts)
    rises = [b - a for a, b in zip((0.0, *wanted.tops), wanted.tops, strict=False)]
    assert fit(assemble(lifts, rises)) == ()
    rises[2] += 0.25 * INCH
    names = [m.names for m in fit(assemble(lifts, rises))]
    assert names == [("WL.2",), ("WR.2",), ("WB.2",)]
    rises[2] -= 0.4 * INCH
    assert {m.kind for m in fit(assemble(lifts, rises))} == {"tight"}


@pytest.mark.parametrize(
    ("back", "kind", "by"), [(21.375, "wide", 1.375 - 0.4375), (20.0625, "tight", 0.125 - 0.0625)]
)
def test_a_joint_too_wide_or_too_tight_is_told_by_how_much(back, kind, by):
    """By hand, in inches: the walls' lips end 20 back; a joint is 1/8 to 7/16."""
    found = first(MIDDLING.replace("at = [-18.75, 20.375]", f"at = [-18.75, {back}]"), kind)
    assert set(found.names) in ({"WL.1", "WB.1"}, {"WR.1", "WB.1"})
    assert found.by / INCH == pytest.approx(by, abs=1e-4)


def test_a_gap_that_widens_upward_is_told_half_way_up():
    """The halves of the reducer lean apart: 1/4 at the foot, 6-1/4 at the head, 3-1/4 half way."""
    top = "top = [[0, 1.875], [9.875, 1.875], [9.875, 21.875], [0, 21.875], [0, 19.375]"
    assert top in MIDDLING
    leaning = MIDDLING.replace(
        "top = [[0, 1.875], [9.875, 1.875], [9.875, 21.875], [0, 21.875], [0, 19.375], [7.375, 19.375],"
        " [7.375, 4.375], [0, 4.375]]",
        "top = [[3, 1.875], [9.875, 1.875], [9.875, 21.875], [3, 21.875], [3, 19.375], [7.375, 19.375],"
        " [7.375, 4.375], [3, 4.375]]",
    )
    found = next(m for m in fit(stood(leaning)) if m.kind == "way" and "RR.1" in m.names)
    assert found.by / INCH == pytest.approx(3.25, abs=1e-4)


def test_pieces_that_pass_each_other_cover_nothing_of_each_other():
    pieces = {p.mark: p for p in read_set(MIDDLING).pieces}
    assert covers(pieces["LS"], pieces["WR"]) and covers(pieces["WR"], pieces["LS"])
    assert not covers(pieces["LS"], pieces["WB"]) and not covers(pieces["WL"], pieces["WR"])


def test_of_two_open_stretches_the_longer_is_told():
    """A frame round a way a meter square, 20 cm of it open at the left and 40 at the right."""
    way = CrossSection.square((1.0, 1.0))
    frame = CrossSection.square((1.4, 1.4)).translate((-0.2, -0.2)) - way
    for x, wide in ((-0.3, 0.2), (0.9, 0.4)):
        frame -= CrossSection.square((0.4, wide)).translate((x, 0.5 - wide / 2))
    width, where = _open_run(frame, way, 0.005)
    assert width == pytest.approx(0.4, abs=1e-5) and where.bounds()[0] > 0.9
    assert _open_run(frame, CrossSection.square((0.005, 0.005)), 0.005) is None


@pytest.mark.parametrize(("side", "open_"), [(0.0098, False), (0.0106, True)])
def test_a_way_under_a_square_centimeter_is_none(side, open_):
    """Squares of 0.96 and 1.12 cm2 beside a cover that fills nothing of them."""
    cover = CrossSection.square((1.0, 1.0)).translate((-2.0, 0.0))
    found = _open_run(cover, CrossSection.square((side, side)), 0.001)
    assert (found is not None) == open_
    if found:
        assert found[0] == pytest.approx(4 * (side + 0.002), abs=0.006)


def test_a_length_of_a_sixty_fourth_is_told_as_one():
    assert small(0.0254 / 64) == '1/64" (0.4 mm)'
    assert small(0.0254 / 64.5) == 'less than 1/64" (0.4 mm)'


def test_a_lip_laps_over_what_it_stands_above_and_nothing_else():
    """A lip 4 by 2 in on the throat's front part; lifted over the back part it laps over it, sunk under
    it it does not."""
    front = "outline = [[0, 0], [48, 0], [48, 5], [0, 5]]\nheight = 5\n"
    assert front in MIDDLING
    lip = "add = [{ outline = [[0, 5], [4, 5], [4, 7], [0, 7]], from = 3, to = 5 }]\n"
    pieces = {p.mark: p for p in read_set(MIDDLING.replace(front, front + lip)).pieces}
    assert laps_over(pieces["N1"], pieces["N2"], 6 * INCH)
    assert not laps_over(pieces["N1"], pieces["N2"], -6 * INCH)
    assert not laps_over(pieces["N1"], pieces["SH"], 6 * INCH)


def bed(*corners):
    return CrossSection([corners])


BEDS = {
    # a bed 4 in long; one that narrows from 5 in to 3 in; two of 2 and 6 in; a notch of 1 in in 4
    "even": ([((-20, 0), (-16, 0), (-16, 8), (-20, 8))], 4, 0),
    "narrowing": ([((-20, 0), (-15, 0), (-17, 8), (-20, 8))], 3, 0),
    "two": (
        [((-20, 0), (-18, 0), (-18, 4), (-20, 4)), ((-20, 4), (-14, 4), (-14, 8), (-20, 8))],
        6,
        0,
    ),
    "notched": (
        [((-20, 0), (-16, 0), (-16, 3), (-17, 3), (-17, 5), (-16, 5), (-16, 8), (-20, 8))],
        3,
        0,
    ),
    "from end to end": ([((-10, 0), (10, 0), (10, 8), (-10, 8))], 20, 20),
    "a mere strip": ([((-20, 0), (-19.9, 0), (-19.9, 8), (-20, 8))], 0, 0),
    "nothing": ([], 0, 0),
}


@pytest.mark.parametrize("side", [1, -1], ids=["left", "right"])
@pytest.mark.parametrize(("rings", "left", "right"), BEDS.values(), ids=BEDS.keys())
def test_how_far_a_lintel_bears_at_either_end(rings, left, right, side):
    """By hand, in inches, along the lintel where it bears least; mirrored, the ends change places."""
    beds = [bed(*[(side * x * INCH, y * INCH) for x, y in ring][::side]) for ring in rings]
    found = bearing_lengths(beds)
    assert (found["left"], found["right"])[::side] == pytest.approx(
        (left * INCH, right * INCH), abs=2e-4
    )


def turned(side, by, x, y):
    """A side carried round and away."""
    return tuple((x + u * cos(by) - v * sin(by), y + u * sin(by) + v * cos(by)) for u, v in side)


@given(st.floats(0, 6.28), st.floats(-5, 5), st.floats(-5, 5))
def test_a_joint_is_as_wide_wherever_its_pieces_stand(by, x, y):
    """Beside a side of 1 m, which has its piece at the left and the joint at the right: one that
    faces it from 20 cm along it, 2 cm away there and 3 cm at 120 cm, so 2.8 cm where the first ends.
    """

    def between(facing, reach=0.05):
        return _between(turned(((0, 0), (1, 0)), by, x, y), turned(facing, by, x, y), reach)

    assert between(((1.2, -0.03), (0.2, -0.02))) == pytest.approx((0.02, 0.028), abs=1e-9)
    assert between(((0.8, -0.02), (-0.2, -0.03))) == pytest.approx((0.02, 0.028), abs=1e-9)
    assert between(((0.9, -0.02), (0.1, -0.02))) == pytest.approx((0.02, 0.02), abs=1e-9)
    assert between(((0.2, -0.02), (1.2, -0.03))) is None  # looks the same way
    assert between(((1.2, -0.03), (0.2, -0.02)), 0.027) is None  # too far to be a joint
    assert between(((1.2, 0.03), (0.2, 0.02))) is None  # behind it
    assert between(((2.2, -0.02), (1.00001, -0.02))) is None  # past its end
    assert between(((-0.00001, -0.02), (-1.2, -0.02))) is None


def test_a_bed_is_as_wide_as_the_least_of_its_pieces_asks():
    """The reducer's halves lie on the throat as they are; that one of them asks for half a meter is no
    fault while the other asks for less, and is one when both do.
    """
    lifts = stood(MIDDLING).by_lift
    number = next(n for n, here in enumerate(lifts) if here[0].piece.role == "reducer")
    here, below = lifts[number], lifts[number - 1]
    greedy = tuple(replace(one, piece=replace(one.piece, bearing=0.5)) for one in here)
    assert not list(way_faults((greedy[0], *here[1:]), below, 1))
    (fault,) = way_faults(greedy, below, 1)
    assert fault.kind == "bed" and "narrowest" in fault.says


def test_one_plate_on_another_has_no_way_for_the_smoke_to_leak_from():
    plate = next(p for p in read_set(MIDDLING).pieces if p.mark == "PR")
    assert bed_leaks((plate,), (plate,)) == () and lift_leaks((plate,), (), 0.5) == ()
    assert _thinnest((plate,)) == 0.0
    gone = replace(plate, adds=tuple(moved_away(s) for s in plate.adds))
    assert bed_leaks((gone,), (plate,)) == ()


def moved_away(solid):
    lower, upper = (tuple((x + 9.0, y) for x, y in ring) for ring in (solid.lower, solid.upper))
    return replace(solid, lower=lower, upper=upper)


def test_the_splay_of_a_side_is_read_in_its_rear_two_thirds():
    """A notch three tenths of the way back is none of the corners that the side may run to."""
    right = [(1.0, 0.0), (0.82, 0.3), (0.9, 0.6), (0.8, 1.0)]
    half, narrow, deep, splay = _box((*right, *((-x, y) for x, y in right[::-1])))
    assert (half, narrow, deep) == (1.0, 0.8, 1.0) and splay == pytest.approx(0.1 / 0.6, abs=1e-6)
    back = [(x, y + 0.7) for x, y in (*right, *((-x, y) for x, y in right[::-1]))]
    assert _box(tuple(back)) == pytest.approx((half, narrow, deep, splay), abs=1e-6)
    back = [(1.0, 0.0), (0.82, 0.35), (0.9, 0.6), (0.8, 1.0)]
    assert _box((*back, *((-x, y) for x, y in back[::-1])))[3] == pytest.approx(
        0.18 / 0.35, abs=1e-6
    )


def bored(*holes):
    """A block 100 by 60 cm with level holes right through it, each left, right, front and back."""
    plate = next(p for p in read_set(MIDDLING).pieces if p.mark == "PR")

    def through(x0, x1, y0, y1):
        ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
        return replace(plate.adds[0], bottom=0.0, top=plate.height, lower=ring, upper=ring)

    whole, cuts = through(0.0, 1.0, 0.0, 0.6), tuple(through(*hole) for hole in holes)
    return replace(plate, role="reducer", adds=(whole,), cuts=cuts, plain=None, bearing=0.05)


def test_the_wall_round_the_fire_is_read_where_it_is_thinnest():
    """A hole 5 cm from the left edge below and 8 cm above, farther from all others."""
    block = bored((0.05, 0.8, 0.1, 0.5))
    (hole,) = block.cuts
    lean = replace(hole, upper=((0.08, 0.1), (0.8, 0.1), (0.8, 0.5), (0.08, 0.5)))
    for cut in (lean, replace(lean, lower=lean.upper, upper=lean.lower)):
        assert _thinnest((replace(block, cuts=(cut,)),)) == pytest.approx(0.05, abs=1e-6)


def test_a_bed_round_two_ways_names_both_pieces_and_says_how_many():
    """Two holes of 30 by 40 and 20 by 40 cm, one block on another: the lift has two ways, and its bed."""
    block = bored((0.1, 0.4, 0.1, 0.5), (0.6, 0.8, 0.1, 0.5))
    over, under = Placed(block, 1, 1, 0.01, 0.1), Placed(block, 0, 1, 0.01, 0.0)
    two, bed = way_faults((over,), (under,), 1)
    assert (two.kind, two.names) == ("way", ("PR.1",)) and "2 ways through" in two.says
    assert two.by == pytest.approx(0.2) and "one of them 7 7/8" in two.says
    assert (bed.kind, bed.names, bed.by) == ("bed", ("PR.1", "PR.1"), 0.0)
    assert bed.says.endswith("does not close round the smoke: 2 ways through.")
    one = bored((0.1, 0.4, 0.1, 0.5))
    here, below = Placed(one, 1, 1, 0.01, 0.1), Placed(one, 0, 1, 0.01, 0.0)
    assert list(way_faults((here,), (below,), 1)) == []


@pytest.mark.parametrize(("rim", "short"), [(0.04, 0.01), (0.05, None), (0.051, None)])
def test_a_rim_narrower_than_its_bearing_is_told_by_how_much(rim, short):
    """A hole so far from the edge; a piece of this set bears 5 cm."""
    one = bored((rim, 0.9, 0.1, 0.5))
    here, below = Placed(one, 1, 1, 0.01, 0.1), Placed(one, 0, 1, 0.01, 0.0)
    found = list(way_faults((here,), (below,), 1))
    assert [fault.by for fault in found] == (
        [] if short is None else [pytest.approx(short, abs=2e-6)]
    )
    for fault in found:
        assert (fault.kind, fault.names) == ("bed", ("PR.1", "PR.1"))


@pytest.mark.parametrize(("from_", "upto", "shut"), [(0, 1, False), (0.1, 1, True), (0, 0.9, True)])
def test_a_pocket_from_above_or_below_is_no_way_through(from_, upto, shut):
    """A hole of 30 by 40 cm, clear half way up, that stops a tenth over the foot or under the head."""
    block = bored((0.1, 0.4, 0.1, 0.5))
    (hole,) = block.cuts
    pocket = replace(hole, bottom=from_ * block.height, top=upto * block.height)
    piece = replace(block, cuts=(pocket,))
    found = list(way_faults((Placed(piece, 1, 1, 0.01, 0.1),), (), -1))
    assert [fault.says for fault in found] == ["PR.1 leaves the smoke no way through."] * shut
