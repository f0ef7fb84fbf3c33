"""Where the second flue stands beside the first, worked out by hand. [in]"""

from math import hypot

import pytest

from fireplace_calc import change
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.explore import sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.frame_builder import LEAST_SETBACK, _flush

FIRE = {"second_flue.serves": "fireplace"}


def frame(**changes):
    told = {key.replace("__", "."): value for key, value in changes.items()}
    return sketch(change(Design(), {**FIRE, **told})).frame


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("wythe", [4.0, 8.0])
def test_from_the_start_of_the_first_flue_up_only_the_wythe_is_between(side, wythe):
    """First liner and gap, the wythe, then gap and liner of the second: its middle."""
    f = frame(second_flue__side=side, second_flue__wythe=f"{wythe} in")
    second = f.second
    assert second.between == pytest.approx(wythe * INCH) and not second.set_out
    first = f.unit_half + Design().chimney.gap
    apart = first + wythe * INCH + second.cavity_half
    assert second.x == pytest.approx(apart if side == "right" else -apart)
    assert second.cavity_half - second.unit_half == pytest.approx(Design().chimney.gap)
    assert second.cavity_depth - second.unit_depth == pytest.approx(Design().chimney.gap)
    assert second.start == pytest.approx(f.flue_start)


def test_past_the_firebox_it_stands_farther_out_and_says_so():
    """From the hearth up it has to clear smoke chamber and firebox: more masonry between, and the
    same rule from its own edge to the first flue's.
    """
    near, far = frame().second, frame(second_flue__start="0 in").second
    assert far.set_out and far.between > near.between and abs(far.x) > abs(near.x)
    assert abs(far.x) - abs(near.x) == pytest.approx(far.between - near.between)


def test_past_a_narrow_chamber_it_clears_the_first_chimneys_wall():
    """An 18 in opening under a wall of 20 in: half of it from the first liner's gap on, then a whole
    one, then the second's own gap.
    """
    narrow = {"opening__width": "18 in", "chimney__wall": "20 in"}
    start = frame(**narrow).flue_start / INCH - 2
    f = frame(**narrow, second_flue__start=f"{start} in")
    assert f.second.start < f.flue_start
    first = f.unit_half + Design().chimney.gap
    assert f.second.x == pytest.approx(first + (10 + 20) * INCH + f.second.cavity_half)


def test_its_casing_is_of_the_pieces_it_is_set_of():
    made = build_geometry(change(Design(), FIRE | {"method": "modular"})).parts_by_name
    casing, liner = made["second flue casing"], made["second flue liner"]
    assert (casing.material, liner.material) == ("refractory", "clay liner")
    assert casing.volume > 0
    laid = build_geometry(change(Design(), FIRE | {"method": "laid"})).parts_by_name
    assert "second flue liner" in laid and "second flue casing" not in laid


def test_half_of_it_is_bore_liner_and_casing():
    """The bore of 13x13 is 11-1/4 in and its liner 7/8 thick (table of liners): 6-1/2 in, and 2 of casing."""
    for method, half in (("laid", 6.5), ("modular", 8.5)):
        second = frame(method=method, second_flue__size="13x13", flue__casing="2 in").second
        assert [second.unit_half / INCH, second.unit_depth / INCH] == pytest.approx([half] * 2)


def test_no_second_flue_no_frame_of_one():
    assert sketch(Design()).frame.second is None


def test_its_top_is_told_from_the_top_of_the_first():
    """As high as told over, or under, the first liner's top."""
    level, higher = frame(second_flue__top="0 in"), frame(second_flue__top="6 in")
    assert level.second.top == pytest.approx(level.liner_top)
    assert higher.second.top - level.second.top == pytest.approx(6 * INCH)


@pytest.mark.parametrize("side", ["left", "right"])
def test_the_stack_goes_round_both_flues(side):
    """From the wall outside the first flue's gap to the wall outside the second's, and its middle."""
    f = frame(second_flue__side=side, chimney__wall="6 in")
    first, wall = f.unit_half + Design().chimney.gap, 6 * INCH
    near, far = -(first + wall), abs(f.second.x) + f.second.cavity_half + wall
    assert f.stack_half == pytest.approx((far - near) / 2)
    assert f.stack_middle == pytest.approx((far + near) / 2 * (1 if side == "right" else -1))


def by_hand(**changes):
    """How far the second flue has to clear lining, lintel and arch of a firebox that it passes. [in]"""
    told = {key.replace("__", "."): value for key, value in changes.items()}
    d = change(Design(), {**FIRE, "second_flue.start": "0 in", "flue.size": "8x8", **told})
    f = sketch(d).frame
    inch, second = 1 / INCH, f.second
    front = (f.flue_y - second.cavity_depth) * inch
    half, slope = f.half_width * inch, f.side_slope
    lining = d.firebox.lining_thickness * inch * (1 + slope)
    reach = half - slope * max(front, 0.0) + lining
    if front < f.breast * inch:
        reach = max(reach, half + (d.lintel.bearing or 0.0) * inch)
    wall = max(d.second_flue.wythe, d.chimney.wall) * inch
    return f, front, reach + wall + second.cavity_half * inch


def test_a_flue_behind_the_breast_passes_the_firebox_where_its_sides_have_closed_in():
    """A deep firebox: the second flue begins behind the breast, where lintel and arch have ended, so
    that only the splayed side and its lining are in its way.
    """
    told = {"firebox__depth": "36 in", "opening__width": "60 in", "throat__depth": "4 in"}
    f, front, wanted = by_hand(**told, lintel__bearing="12 in", smoke_chamber__height="60 in")
    assert front > f.breast / INCH
    assert f.second.x / INCH == pytest.approx(wanted)


def test_past_a_wide_chamber_it_clears_its_lining():
    """A firebox 60 in wide without a splay: the chamber's half foot is 30 in, its lining 1 in square to a
    face that runs in from there to half the bore over the rise without the transition.
    """
    told = {
        "opening__width": "60 in",
        "firebox__back_width": "60 in",
        "smoke_chamber__lining_thickness": "1 in",
    }
    start = frame(**told).flue_start / INCH - 2
    made = frame(**told, second_flue__start=f"{start} in")
    d = change(Design(), {key.replace("__", "."): value for key, value in told.items()})
    rise = (d.smoke_chamber.height - d.smoke_chamber.transition) / INCH
    run = 30 - made.bore.width / 2 / INCH
    lining = hypot(1.0, run / rise)
    wall = max(d.second_flue.wythe, d.chimney.wall)
    wanted = (30 + lining) * INCH + wall + made.second.cavity_half
    assert made.second.x == pytest.approx(wanted)


@pytest.mark.parametrize("bearing", ["unknown", "0 in", "4 in", "12 in"])
def test_a_flue_within_the_breast_clears_what_the_lintel_bears(bearing):
    """As far past the opening as the lintel bears; where nobody has told, its end is the opening's."""
    f, front, wanted = by_hand(
        lintel__bearing=bearing, firebox__breast="14 in", firebox__rake="0 in"
    )
    assert front < f.breast / INCH
    chamber = f.unit_half + Design().chimney.gap + Design().chimney.wall / 2
    assert f.second.x / INCH == pytest.approx(max(wanted, chamber / INCH))


@pytest.mark.parametrize(("behind", "stands"), [(0.0, True), (1e-4, True), (-1e-4, False)])
def test_a_chimney_stands_back_by_the_least_setback_or_is_flush(behind, stands):
    depth = 0.5
    placed = _flush(depth + LEAST_SETBACK + behind, depth)
    assert placed == (depth + LEAST_SETBACK + behind if stands else depth)


def test_where_there_is_one_flue_the_second_has_no_solids():
    from fireplace_calc.geometry.second_flue.outlines import FlueOutlines

    made = FlueOutlines(Design())
    assert (
        made.second_bore(0.0, 9.0)
        == made.second_unit(0.0, 9.0)
        == made.second_cavity(0.0, 9.0)
        == []
    )


def test_an_arch_reaches_sideways_past_a_flue_as_far_as_its_back_does():
    """By hand: 60 in wide, 15 in rise: radius (30^2 + 15^2) / 30 = 37.5 in; a ring of 8 in springs from
    (37.5 + 8) x 30 / 37.5 = 36.4 in. A straight head: lining of 4-1/2 in on sides that close in by a third, 36 in.
    """
    from fireplace_calc.geometry.second_flue.placing import _firebox_reach

    told = {"opening.width": "60 in", "opening.rise": "15 in", "lintel.height": "8 in"}
    for head, reach in (("segmental", 36.4), ("straight", 36.0)):
        d = change(Design(), {**told, "opening.head": head})
        assert _firebox_reach(d, 0.0, 1 / 3, 8 * INCH) / INCH == pytest.approx(reach)
