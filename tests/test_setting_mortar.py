"""Mortar of a set: each piece's, in mixes, in pails.

``SETS=1000 pytest tests/test_setting_mortar.py`` tries more random sets, by hand.
"""

import os
from math import pi, sin

import numpy as np
import pytest
from manifold3d import CrossSection
from scipy.integrate import simpson
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc import change
from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.build.lining_work import count_lining
from fireplace_calc.build.setting.cards import cards_of
from fireplace_calc.build.setting.mixes import (
    OPEN_TIME,
    mixes_of_steps,
    pails_of,
    seconds_to_set,
)
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.setting.step_mortar import mortar_of_steps
from fireplace_calc.build.setting.wording import card_words
from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.passage import lift_section
from fireplace_calc.geometry.assembled.sections import SKIN, section
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.geometry.assembled.volumes import socket_room, tongue_volume
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.mortar_beds import rings_of
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.geometry.from_set.standing_solids import stood_apart
from fireplace_calc.geometry.from_set.tapering import alike, between, in_step, matched
from fireplace_calc.geometry.polygons import signed_area
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.roles import PARTS
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.takeoff.shares import share_out
from fireplace_calc.takeoff.shares_of_set import set_shares

COUNT = int(os.environ.get("SETS", "40"))
MIDDLING = (DATA / "sets" / "middling.toml").read_text()


def middling(text=MIDDLING, **choice):
    made = read_set(text)
    assembly = as_wanted(choose(made, Choice(**choice)))
    return assembly, order_of_setting(assembly, made.lining)


@pytest.mark.parametrize("seed", range(COUNT))
def test_the_mortar_of_a_lift_is_what_its_pieces_leave_of_its_closed_section(seed):
    """Apart from the product's solids: beds and upright joints of a lift by sections, its pieces on one bed.

    A bed lies where both lifts are, joints filled; the upright joints are the closed section less the
    pieces, by Simpson's rule over 40 slices."""
    assembly = stood(random_set(seed))
    found = {m.name: m for m in mortar_of_steps(assembly, order_of_setting(assembly))}
    assert len(found) == len(assembly.placed)
    assert all(min(m.bed, m.joints, m.nest) > -1e-8 for m in found.values())
    for number, lift in enumerate(assembly.by_lift):
        here = [found[p.name] for p in lift]
        pieces = tuple(p.piece for p in lift)
        if len({round(p.bed, 7) for p in lift}) > 1 or any(p.plain for p in pieces):
            continue
        foot = lift_section(pieces, 0.0)
        if number:
            foot = foot ^ lift_section(tuple(p.piece for p in assembly.by_lift[number - 1]), 1.0)
        bed = lift[0].bed * foot.area()
        heights = {p.height for p in pieces}
        if len(heights) == 1 and len(pieces) > 1:
            shares = np.linspace(0.0, 1.0, 41)
            gaps = [
                lift_section(pieces, z).area()
                - sum(
                    section(p, min(max(z * p.height, SKIN), p.height - SKIN)).area() for p in pieces
                )
                for z in shares
            ]
            upright = simpson(gaps, x=shares) * heights.pop()
        else:
            upright = sum(m.joints for m in here)
            bed = sum(m.bed for m in here)
        assert sum(m.bed + m.joints for m in here) == pytest.approx(bed + upright, rel=3e-3)


@pytest.mark.parametrize("head", ["straight", "segmental"])
@pytest.mark.parametrize("raised", ["0 in", "12 in"])
@pytest.mark.parametrize("name", ["small", "middling", "wide"])
def test_the_cards_and_the_list_have_the_same_mortar(name, raised, head):
    """To the last drop: the pieces' parts, not the lining's. Before, the list lacked the last tongue's
    volume (1 % of all), the cards the beds over the joints below (0.5 to 1 %)."""
    design = change(
        Design(), {"pieces.set": name, "opening.extension": raised, "opening.head": head}
    )
    up = set_up(design)
    steps = order_of_setting(up.assembly, design.piece_set.lining)
    geometry = build_geometry(design)
    shares = [
        share
        for part in geometry.parts
        if part.name in PARTS
        for share in set_shares(geometry, part)
    ]
    listed = sum(s.volume for s in shares if s.item == "Refractory mortar")
    assert sum(m.volume for m in mortar_of_steps(up.assembly, steps)) == pytest.approx(listed)
    assert all(s.volume > 0 for s in shares)


@pytest.mark.parametrize("name", ["small", "middling", "wide"])
def test_all_cards_together_have_the_mortar_and_the_brick_of_the_list(name):
    """The lining's too: its brick, mortar and hours are those of the list at the pace of the design."""
    design = change(Design(), {"pieces.set": name, "work.firebrick_pace": 20})
    geometry, up = build_geometry(design), set_up(design)
    laid = count_lining(geometry)
    cards = cards_of(up.assembly, design.piece_set.lining, laid=laid)
    shares = share_out(geometry)
    told = sum(c.mortar.volume for c in cards if c.mortar) + laid.mortar
    assert told == pytest.approx(sum(s.volume for s in shares if s.item == "Refractory mortar"))
    brick = sum(s.count for s in shares if s.item.startswith("Firebrick"))
    assert laid.whole + laid.cut == brick > 0
    assert laid.seconds == pytest.approx(brick / 20 * 3600)
    (card,) = [c for c in cards if c.placed is None]
    rows = dict(card_words(card))
    assert f"{laid.whole} firebrick whole, {laid.cut} to cut" in rows["Brick"]
    assert f"{brick / 20:.1f} h" in rows["Time"] and "qt" in rows["Mortar"]
    uncounted = dict(card_words(cards_of(up.assembly, design.piece_set.lining)[card.number - 1]))
    assert "Brick" not in uncounted and "Floor" in uncounted
    steel = change(design, {"pieces.set": "", "firebox.lining": STEEL_UNIT})
    assert count_lining(build_geometry(steel)) is None


def test_mortar_by_hand():
    """In inches. Right plate: 26-3/8 by 23-3/4 on 1/2. Right wall, set after the left: no joint yet. Flue
    piece: 20 by 20 less the bore of 15 across on 3/8."""
    assembly, steps = middling()
    found = {m.name: m for m in mortar_of_steps(assembly, steps)}
    assert found["PL.1"].bed / INCH**3 == pytest.approx(26.375 * 23.75 * 0.5, rel=1e-6)
    assert found["PL.1"].joints == 0
    assert found["PR.1"].joints / INCH**3 == pytest.approx(23.75 * 0.25 * 3.5, rel=1e-5)
    assert found["WL.1"].joints == 0 and found["WR.1"].joints == pytest.approx(0, abs=1e-8)
    # The back, last: its ends 3 by 1/4 and 1-1/4 by 3/8 before its front at either lip, and the corner;
    # down through the bed of 3/8 as well, as far as the plate is under it.
    wide = 2 * (3 * 0.25 + 1.25 * 0.375 + 0.25 * 0.375) * 10.375
    assert found["WB.1"].joints / INCH**3 == pytest.approx(wide, rel=0.03)
    assert found["F8.2"].bed / INCH**3 == pytest.approx((400 - pi * 7.5**2) * 0.375, rel=1e-9)


def test_a_nest_is_what_its_socket_leaves_round_the_tongue():
    """By hand, in inches: from the bore of 15 to 17-1/2 across, 1 high, less a tongue 1 thick and 3/4 high."""
    assembly, steps = middling()
    upper = next(p for p in assembly.placed if p.name == "F8.3")
    room, tongue = pi * (8.75**2 - 7.5**2), pi * (8.5**2 - 7.5**2) * 0.75
    assert socket_room(upper.piece) / INCH**3 == pytest.approx(room)
    assert tongue_volume(upper.piece) / INCH**3 == pytest.approx(tongue)
    found = {m.name: m for m in mortar_of_steps(assembly, steps)}
    assert found["F8.3"].nest / INCH**3 == pytest.approx(room - tongue)
    plate = next(p for p in assembly.placed if p.name == "PL.1").piece
    assert socket_room(plate) == tongue_volume(plate) == 0.0


@pytest.mark.parametrize("seed", range(0, COUNT, 3))
def test_a_nest_is_what_bodies_leave_between_them(seed):
    """Apart from sections: what stands over the socket's outline and clear of the bore, less both
    bodies, by manifold3d. The bodies' circles have corners."""
    assembly = stood(random_set(seed))
    flues = [p for p in assembly.placed if p.piece.role == "flue"]
    one = flues[-1]
    under = next(p for p in assembly.placed if p.lift == one.lift - 1)
    found = {m.name: m for m in mortar_of_steps(assembly, order_of_setting(assembly))}
    if random_set(seed).nest < 4:
        assert found[one.name].nest == pytest.approx(0.0, abs=1e-12)
        return
    r = random_set(seed)
    grid = 0.0015 if r.metric else INCH / 16
    deep, up = (r.nest + 4) * grid, under.piece.height + one.bed
    low, high = body(under.piece), body(one.piece).translate((0, 0, up))
    # Only what stands over the socket: its outline, taken half way up it.
    ring = high.slice(up + deep / 2)
    outer = max(ring.to_polygons(), key=lambda p: abs(p[:, 0]).max())
    socket = CrossSection([outer]) - ring
    bore = socket ^ (CrossSection([outer]) - low.slice(under.piece.height / 2))
    column = (socket - bore).extrude(one.bed + deep).translate((0, 0, under.piece.height))
    left = (column - low - high).volume()
    left *= 2 * pi / (72 * sin(2 * pi / 72)) if r.round else 1.0  # those bodies have 72 corners
    bed = one.bed * (socket - bore).area()
    bed *= 2 * pi / (72 * sin(2 * pi / 72)) if r.round else 1.0
    assert found[one.name].nest + bed == pytest.approx(left, abs=2e-8) != 0


@pytest.mark.parametrize("seed", range(0, COUNT, 2))
def test_every_mix_is_used_up_in_time_and_none_could_have_held_more(seed):
    assembly, lining = stood(random_set(seed)), made_set(random_set(seed)).lining
    steps = order_of_setting(assembly, lining)
    mortar = mortar_of_steps(assembly, steps)
    mixes = mixes_of_steps(steps, mortar)
    assert [n for mix in mixes for n in mix.names] == [m.name for m in mortar]
    assert sum(mix.volume for mix in mixes) == pytest.approx(sum(m.volume for m in mortar))
    lasting = {s.name: seconds_to_set(piece_weight(s.placed.piece)) for s in steps if s.placed}
    after_lining = {b.name for a, b in zip(steps, steps[1:], strict=False) if a.placed is None}
    for mix, later in zip(mixes, [*mixes[1:], None], strict=True):
        spent = sum(lasting[n] for n in mix.names)
        assert mix.seconds == pytest.approx(spent)
        assert mix.in_time == (spent <= OPEN_TIME) and (mix.in_time or len(mix.names) == 1)
        if later and later.names[0] not in after_lining:
            assert spent + lasting[later.names[0]] > OPEN_TIME


def test_mixes_by_hand():
    """Plates of 62 kg take 5 min each, so two go into 12 minutes; a mix is not kept while brick is laid."""
    assembly, steps = middling(flues=12)
    mixes = mixes_of_steps(steps, mortar_of_steps(assembly, steps))
    assert mixes[0].names == ("PL.1", "PR.1")
    at = [s.name for s in steps].index("lining")
    assert any(mix.names[0] == steps[at + 1].name for mix in mixes)


@pytest.mark.parametrize("minutes", [9.9, 15.1, 0, float("nan")])
def test_an_open_time_nobody_has_is_refused(minutes):
    assembly, steps = middling()
    with pytest.raises(InputError, match="10 to 15 are allowed"):
        mixes_of_steps(steps, mortar_of_steps(assembly, steps), minutes * 60)


def test_pails_are_rounded_up():
    assert [pails_of(v) for v in (0.0, 0.0132, 0.01321, 0.0264)] == [0, 1, 2, 2]
    with pytest.raises(InputError, match="read its label"):
        pails_of(1.0, pail=0.0)


def test_rings_and_holes_run_counter_clockwise_and_crumbs_are_none():
    """By hand: 400 by 300 mm round a hole of 200 by 100; a square of 0.4 mm is a ring, one of 0.3 is
    not; nor are holes."""
    whole = CrossSection.square((0.4, 0.3))
    for side, kept in ((4e-4, 1), (3e-4, 0)):
        small = CrossSection.square((side, side))
        holed = whole - CrossSection.square((0.2, 0.1)).translate((0.1, 0.1))
        rings, holes = rings_of(
            (holed - small.translate((0.01, 0.01))) + small.translate((0.6, 0.0))
        )
        inner = [side * side] * kept
        assert sorted(map(signed_area, rings)) == pytest.approx([*inner, 0.12], rel=1e-3)
        assert sorted(map(signed_area, holes)) == pytest.approx([*inner, 0.02], rel=1e-3)


def test_every_bed_and_joint_stands_where_a_pencil_puts_it():
    """The middling set, in inches: mortar of its plates and of its first flue piece but one, each from
    its own bed; a circle of the body has corners, 0.13 % less."""
    design = change(Design(), {"pieces.set": "middling", "flue.sections": 20})
    up, start = set_up(design), 7.0
    every = {one.name: one for one in stood_apart(design, start, lambda here: here[0])}
    for one in up.assembly.placed:
        bed = every[f"bed of {one.name}"]
        assert bed.at == every[one.name].at == (0.0, up.set_back, start + one.level)
        assert bed.with_piece == one.name and bed.placed is None and every[one.name].placed is one
        assert bed.body.bounding_box()[2] == pytest.approx(-one.bed)
        assert bed.body.bounding_box()[5] >= -1e-9
    plate, flue = every["bed of PR.1"], every["bed of F8.3"]
    assert plate.body.volume() / INCH**3 == pytest.approx(26.375 * 23.75 * 0.5, rel=1e-6)
    assert plate.body.bounding_box()[5] == pytest.approx(0.0, abs=1e-9)
    nest = pi * (8.75**2 - 7.5**2) - pi * (8.5**2 - 7.5**2) * 0.75
    assert flue.body.bounding_box()[5] / INCH == pytest.approx(1.0)
    # the tongue, 3/4 high, stands through the bed and in the socket
    wide = (400 - pi * 7.5**2) * 0.375 + nest
    assert flue.body.volume() / INCH**3 == pytest.approx(wide, rel=2e-3)
    first = up.assembly.by_lift[0][0]
    feet = (0.0, 3.5, 13.875, 24.25, 34.625, 44.0, 49.375)  # plates, three courses, lintel, throat
    tops = (*feet[1:], 65.75)
    for number, foot in enumerate(feet):
        joints = every[f"joints of {up.assembly.by_lift[number][0].name}"]
        assert (joints.at[2] - start) / INCH == pytest.approx(foot)
        assert joints.body.bounding_box()[2] == pytest.approx(0.0, abs=1e-9)
        assert joints.body.bounding_box()[5] / INCH == pytest.approx(tops[number] - foot)
    joints = every[f"joints of {first.name}"]
    assert joints.with_piece == first.name and joints.placed is None
    assert joints.at == (0.0, up.set_back, start + up.assembly.start)
    assert joints.body.volume() / INCH**3 == pytest.approx(0.25 * 23.75 * 3.5, rel=1e-4)
    low, high = joints.body.bounding_box()[:3], joints.body.bounding_box()[3:]
    assert low == pytest.approx((-0.125 * INCH, 0.0, 0.0), abs=1e-6)
    assert high == pytest.approx((0.125 * INCH, 23.75 * INCH, 3.5 * INCH), abs=1e-6)


def square(side, begun=0, x=0.0, y=0.0):
    ring = ((x, y), (x + side, y), (x + side, y + side), (x, y + side))
    return ring[begun:] + ring[:begun]


@pytest.mark.parametrize("begun", range(4))
def test_outlines_of_a_lift_stand_over_each_other_wherever_each_begins(begun):
    low, half, high = square(2.0), square(1.5, begun), square(1.0, begun)
    assert in_step(low, high) == square(1.0)
    even = between(low, half, high, 3.0, 7.0)
    assert (even.bottom, even.top, even.lower, even.upper) == (3.0, 7.0, low, square(1.0))
    for bent in (square(1.4, begun), (*half, (0.0, 0.75))):
        made = between(low, bent, high, 3.0, 7.0)  # it bulges: the one half way up, all the way
        assert (made.bottom, made.top, made.lower, made.upper) == (3.0, 7.0, bent, bent)
    assert between(low, square(1.5 + 5e-6, begun), high, 0.0, 1.0).upper == square(1.0)
    assert alike(low, square(2.0 + 5e-7, begun)) and not alike(low, square(2.0 + 2e-6, begun))
    assert not alike(low, (*low, (0.0, 1.0)))


def test_each_outline_goes_with_the_one_that_stands_nearest_over_it():
    left, right, far = square(1.0), square(1.0, x=2.0), square(1.0, x=0.0, y=3.0)
    over = square(1.2, x=1.9, y=0.2), square(0.8, y=2.9), square(0.8, x=0.3)
    assert matched((left, right, far), over) == (over[2], over[0], over[1])
