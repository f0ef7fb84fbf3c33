"""The breast in its wall: how far it stands out, what is seen of it, what that asks for."""

from collections import Counter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import change
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import single
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.takeoff.facing import finish_area, shown_areas
from fireplace_calc.takeoff.share import Share
from fireplace_calc.takeoff.shares import share_out

PLASTER = {"surround.face": "plaster"}


def made(changes=None):
    return build_geometry(change(Design(), changes or {}))


def square_inches(area: float) -> float:
    return area / INCH**2


def test_returns_are_plastered_from_the_face_back_to_the_wall():
    """A face 10 in out of the wall, flue start at 66 in, a shoulder of 12 in over which the front
    draws back 3-3/8 in, the stack up to the 9 ft ceiling: both sides of that.
    """
    returns = 2 * (10 * 66 + (10 - 3.375 / 2) * 12 + (10 - 3.375) * 30)
    bare, out = made(PLASTER), made(PLASTER | {"breast.projection": "10 in"})
    assert square_inches(finish_area(out) - finish_area(bare)) == pytest.approx(returns)
    rows = [sum(s.count for s in share_out(g) if s.item == "Face plaster") for g in (bare, out)]
    assert (rows[1] - rows[0]) * 144 == pytest.approx(returns)


def test_a_corner_brick_is_counted_in_the_front_alone():
    """The same in brick 3-3/4 in deep (common, ``data/brick_sizes.csv``)."""
    returns = 2 * (6.25 * 66 + (6.25 - 3.375 / 2) * 12 + (6.25 - 3.375) * 30)
    bare, out = made(), made({"breast.projection": "10 in"})
    found = [sum(shown_areas(g).values()) for g in (bare, out)]
    assert square_inches(found[1] - found[0]) == pytest.approx(returns)


def test_what_has_drawn_back_behind_the_wall_is_not_seen():
    """2 in out: the front is behind the wall from 66 + 12 x 2 / 3-3/8 in on; up to there each return
    narrows from 2 in to nothing.
    """
    g = made(PLASTER | {"breast.projection": "2 in"})
    high, stack = 12 * 2 / 3.375, 2 * g.frame.stack_half / INCH
    top = 60 + (stack - 60) * 2 / 3.375
    front = 60 * 66 - 36 * 30 + (60 + top) / 2 * high
    assert square_inches(finish_area(g)) == pytest.approx(front + 2 * 2 * 66 + 2 * high)
    flush = made(PLASTER | {"breast.projection": "0 in"})
    assert square_inches(finish_area(flush)) == pytest.approx(60 * 66 - 36 * 30)


def sliced(geometry, low: float, high: float, out: float | None, corner: float) -> float:
    """Front and returns between two levels, off a thousand level cuts of the whole. [m2]"""
    area, levels = 0.0, np.linspace(low, high, 1001)
    for z in (levels[:-1] + levels[1:]) / 2:
        x, y = np.concatenate([np.array(ring) for ring in geometry.outer.plan(z)[0]]).T
        if out is not None and y.min() > out:
            continue
        side = 0.0 if out is None else max(min(out, y.max()) - y.min() - corner, 0.0)
        area += (high - low) / 1000 * (np.ptp(x) + 2 * side)
    return area


@given(designs(), st.one_of(st.none(), st.floats(0.0, 1.0)), st.floats(6.0, 20.0))
def test_what_shows_over_the_throat_is_what_level_cuts_show(design, share, feet):
    """Against the solids themselves, cut a thousand times."""
    most = build_geometry(design).frame.block_back + (design.clearance.back or 0.0)
    out = None if share is None else round(share * most / INCH, 3)
    told = {
        "house.ceiling": f"{feet} ft",
        "breast.projection": None if out is None else f"{out} in",
    }
    try:
        g = build_geometry(change(design, told))
    except InputError:  # rounded up, over the most
        return
    f, found = g.frame, shown_areas(g)
    wall, ceiling = g.design.breast.projection, g.design.house.ceiling
    corner = 3.75 * INCH if design.surround.face == "brick" else 0.0
    for name, low, high in (
        ("smoke chamber walls", f.throat, f.flue_start),
        ("shoulder", f.flue_start, f.shoulder_top),
        ("chimney walls", f.shoulder_top, f.crown_bottom),
    ):
        top = min(high, ceiling)
        wanted = sliced(g, low, top, wall, corner) if top > low else 0.0
        if f.offset and name == "chimney walls":
            continue  # a stack that leans shows one side more than the other
        assert found[name] == pytest.approx(wanted, abs=2e-3 * (1 + wanted)), name


def test_what_is_told_adds_up_and_older_designs_ask_for_the_same():
    """Unknown orders no returns; known, the volumes of a part's shares still add up to it."""
    g = made({"breast.projection": "14 in"})
    volumes = Counter()
    for share in share_out(g):
        assert isinstance(share, Share)
        volumes[share.part] += share.volume
    for part in g.parts:
        assert volumes[part.name] == pytest.approx(part.volume), part.name
    assert Design().breast.projection is None
    assert shown_areas(made()) == shown_areas(made({"breast.projection": None}))


def test_a_breast_stands_in_its_wall():
    """The plain block is 28-1/2 in deep with 4 in of air behind: 32-1/2 in at most."""
    made({"breast.projection": "32-1/2 in"})
    with pytest.raises(InputError, match="Breast projection is 2'-9\".*at most 2'-8 1/2\""):
        change(Design(), {"breast.projection": "33 in"})


def test_the_wall_of_the_room_stands_behind_the_face():
    """Twelve feet before the face, a wall 12 in behind it shows at 12/13 of its size."""
    g = made({"breast.projection": "12 in"})
    s = scene(g)
    assert s.back == pytest.approx(12 * INCH)
    (x, z), *_ = s.eye.see([(120 * INCH, s.back, 0.0)]) / INCH
    assert x == pytest.approx(120 * 12 / 13) and z == pytest.approx(64.5 / 13)
    sheet, floor = single("room", g), []
    for tone in ("room wall", "room floor"):
        ((ring,),) = sheet.fills[-10, tone]
        floor.append(np.array(ring))
    wide = np.ptp(floor[0][:, 0])
    near = np.sort(floor[1][:, 0])
    assert wide / (near[-1] - near[0]) == pytest.approx((144 - 0.75 / INCH) / 156, rel=1e-6)


@pytest.mark.parametrize("out", ["0 in", "2 in", "10 in", "28 in", "32-1/2 in"])
@pytest.mark.parametrize("view", ["room", "plan"])
@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_views_of_it_are_clean(out, view, units):
    sheet = single(view, made({"breast.projection": out}), units)
    assert collisions(sheet) == []
    if view == "plan":
        words = " ".join(label.text for label in sheet.labels)
        assert ("flush with the wall" if out == "0 in" else "out of the wall") in words
