"""Mortar of a set: each piece's, in mixes, in pails.

``SETS=1000 pytest tests/test_setting_mortar.py`` tries more random sets, by hand.
"""

import os
from math import pi, sin

import pytest
from manifold3d import CrossSection
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.build.setting.mixes import (
    OPEN_TIME,
    mixes_of_steps,
    pails_of,
    seconds_to_set,
)
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.setting.step_mortar import mortar_of_steps
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.geometry.assembled.volumes import beds, nest, nests, perpends
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set

COUNT = int(os.environ.get("SETS", "40"))
MIDDLING = (DATA / "sets" / "middling.toml").read_text()


def middling(text=MIDDLING, **choice):
    made = read_set(text)
    assembly = as_wanted(choose(made, Choice(**choice)))
    return assembly, order_of_setting(assembly, made.lining)


@pytest.mark.parametrize("seed", range(COUNT))
def test_the_pieces_mortar_is_the_mortar_of_the_lifts(seed):
    assembly, lining = stood(random_set(seed)), made_set(random_set(seed)).lining
    found = mortar_of_steps(assembly, order_of_setting(assembly, lining))
    for number, lift in enumerate(assembly.by_lift):
        here = [m for m in found if m.name in {p.name for p in lift}]
        for kind, wanted in (
            ("bed", beds(assembly, number)),
            ("joints", perpends(tuple(p.piece for p in lift))),
            ("nest", nests(assembly, number)),
        ):
            assert sum(getattr(m, kind) for m in here) == pytest.approx(wanted, abs=1e-9)
    assert all(min(m.bed, m.joints, m.nest) > -1e-8 for m in found)
    assert len(found) == len(assembly.placed)


def test_mortar_by_hand():
    """In inches. Right plate: 26-3/8 by 23-3/4 on 1/2. Right wall, set after the left: no joint yet. Flue
    piece: 20 by 20 less a socket of 17-1/2 across on 3/8."""
    assembly, steps = middling()
    found = {m.name: m for m in mortar_of_steps(assembly, steps)}
    assert found["PL.1"].bed / INCH**3 == pytest.approx(26.375 * 23.75 * 0.5, rel=1e-6)
    assert found["PL.1"].joints == 0
    assert found["PR.1"].joints / INCH**3 == pytest.approx(23.75 * 0.25 * 3, rel=1e-5)
    assert found["WL.1"].joints == 0 and found["WR.1"].joints == pytest.approx(0, abs=1e-8)
    # The back, last: its ends 3 by 1/4 and 1-1/4 by 3/8 before its front at either lip, and the corner.
    wide = 2 * (3 * 0.25 + 1.25 * 0.375 + 0.25 * 0.375) * 10
    assert found["WB.1"].joints / INCH**3 == pytest.approx(wide, rel=0.03)
    assert found["F8.2"].bed / INCH**3 == pytest.approx((400 - pi * 8.75**2) * 0.375, rel=2e-3)


def test_a_nest_is_what_its_socket_leaves_round_the_tongue():
    """By hand, in inches: from the bore of 15 to 17-1/2 across over bed and socket, 3/8 and 1 high, less a
    tongue 1 thick and 3/4 high. The circles have 72 corners."""
    assembly, _ = middling()
    upper = next(p for p in assembly.placed if p.name == "F8.3")
    wanted = pi * ((8.75**2 - 7.5**2) * 1.375 - (8.5**2 - 7.5**2) * 0.75)
    found = nest(upper.piece, upper.piece, upper.bed)
    assert found / INCH**3 == pytest.approx(wanted, rel=3e-3)
    assert nest(upper.piece, upper.piece, 0.5 * INCH) > found


@pytest.mark.parametrize("seed", range(0, COUNT, 3))
def test_a_nest_is_what_bodies_leave_between_them(seed):
    """Apart from sections: what stands over the socket's outline and clear of the bore, less both
    bodies, by manifold3d."""
    assembly = stood(random_set(seed))
    flues = [p for p in assembly.placed if p.piece.role == "flue"]
    one = flues[-1]
    under = next(p for p in assembly.placed if p.lift == one.lift - 1)
    if random_set(seed).nest < 4:
        assert nest(one.piece, under.piece, one.bed) == 0.0
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
    assert nest(one.piece, under.piece, one.bed) == pytest.approx(left, abs=2e-8) != 0


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
