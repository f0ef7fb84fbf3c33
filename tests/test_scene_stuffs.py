"""What things look like: every material that is drawn or ordered has its row, and colors that real
surfaces can have.
"""

import re

import pytest

from fireplace_calc import Design, change
from fireplace_calc.base.tables import densities
from fireplace_calc.drawing.sheets.style import HATCHES
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.scene.stuffs import MORTARS, PAINTERS, joint_color, stuffs
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
