"""What things look like: every material that is drawn or ordered has its row, and colors that real
surfaces can have.
"""

import re

import pytest

from fireplace_calc import Design, assess, change
from fireplace_calc.base.tables import densities
from fireplace_calc.design.surroundings import FLOORS
from fireplace_calc.drawing.sheets.style import HATCHES
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.scene.layouts.floors import floor_layouts
from fireplace_calc.scene.setting.shell import shell_things
from fireplace_calc.scene.stuffs import MORTARS, PAINTERS, floor_stuff, joint_color, stuffs
from fireplace_calc.takeoff.rows import take_off

GROUND = {"roof"}
"""Hatched on a section, and never in the room."""


def linear(color):
    """Mean reflectance of a color as a screen shows it, by IEC 61966-2-1. [-]"""
    assert re.fullmatch(r"#[0-9a-f]{6}", color), color
    parts = [int(color[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    return sum(v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in parts) / 3


def test_every_material_that_is_weighed_or_hatched_has_a_stuff():
    materials = set(densities()) | set(HATCHES) - GROUND
    assert not materials - {"refractory mortar"} - set(stuffs())
    for face in ("brick", "stone face", "plaster", "tile", "hearth stone", "boards"):
        assert face in stuffs()


def test_tones_are_such_as_real_surfaces_have():
    """Reflectances from soot, 0.01, to fresh white plaster, 0.9; brick 0.1 to 0.4 (interior
    lighting handbooks, from memory).
    """
    for stuff in stuffs().values():
        assert stuff.painter in PAINTERS, stuff.name
        assert stuff.source.confidence == "invented"
        assert all(0.005 < linear(tone) < 0.9 for tone in stuff.tones), stuff.name
        assert 0 <= stuff.rough <= 1 and stuff.dots > 0 and stuff.patch > 0
        assert stuff.joint == "" or 0.005 < linear(stuff.joint) < 0.9
    brick = stuffs()["brick"].tones
    assert 0.1 < sum(map(linear, brick)) / len(brick) < 0.4


def test_a_tint_colors_the_joints_and_orders_nothing():
    plain = build_geometry(Design())
    colors = {joint_color(change(Design(), {"surround.mortar": name})) for name in MORTARS}
    assert len(colors) == len(MORTARS) and joint_color(Design()) == stuffs()["brick"].joint
    tinted = build_geometry(change(Design(), {"surround.mortar": "buff"}))
    for before, after in zip(take_off(plain), take_off(tinted), strict=True):
        assert (before.item, before.net, before.order) == (after.item, after.net, after.order)
        assert (before.note != after.note) == (before.item == "Mortar")
        if before.item == "Mortar":
            assert "buff mortar" in after.note and "not count" in after.note


@pytest.mark.parametrize("face", ["plaster", "tile"])
def test_where_no_joint_of_mortar_shows_no_tint_is_spoken_of(face):
    tinted = {"surround.face": face, "surround.mortar": "charcoal"}
    assert "charcoal" not in " ".join(
        row.note for row in take_off(build_geometry(change(Design(), tinted)))
    )


@pytest.mark.parametrize("floor", FLOORS)
def test_the_floor_that_is_chosen_is_shown_and_moves_no_check(floor):
    """Every finish has its stuff, and boards, flags and tile their layout; no verdict and no order follows from it."""
    design = change(Design(), {"house.floor": floor})
    stuff = floor_stuff(design)
    assert stuff in stuffs()
    result, plain = assess(design), assess(Design())
    (shown,) = [t for t in shell_things(result.geometry) if t.key == "floor"]
    assert shown.stuff == stuff
    assert floor == "carpet" or stuff in {layout.stuff for layout in floor_layouts()}
    assert [(f.key, f.verdict) for f in result.findings] == [
        (f.key, f.verdict) for f in plain.findings
    ]
    assert result.takeoff == plain.takeoff


def test_no_two_floors_look_alike():
    assert len({floor_stuff(change(Design(), {"house.floor": f})) for f in FLOORS}) == len(FLOORS)
