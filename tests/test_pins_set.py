"""A shipped set laid up by hand: every part of it with its material, foot and head, and the volumes
that a pencil gives. All figures in inches, from the set's own file (``data/sets/middling.toml``).

Levels count from the hearth. The floor of 2-1/2 in lies on the plates, 3 in on a bed of 1/2, so
the plates' bed begins at -6. Then three courses of 10 on beds of 3/8, the first from -2-1/2: 28-5/8;
the top walls and the lintel, 9 on 3/8: 38; the throat, 5: 43-3/8; the reducer, 16: 59-3/4; the
collar, 3: 63-1/8; twenty flue pieces of 8: 230-5/8.
"""

from dataclasses import astuple
from math import pi

import pytest

from fireplace_calc import change
from fireplace_calc.base.units import FOOT, INCH
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.set_outlines import SetOutlines

PARTS = {
    "footing": ("concrete", -48, -36),
    "base walls": ("block", -36, -10),
    "base core": ("grout", -36, -10),
    "hearth slab": ("concrete", -10, -6),
    "base plates": ("refractory", -6, -2.5),
    "firebox floor": ("firebrick", -2.5, 0),
    "hearth extension": ("stone", -2, 0),
    "hearth extension bed": ("concrete", -6, -2),
    "firebox lining": ("firebrick", -2.5, 38),
    "firebox walls": ("refractory", -2.5, 38),
    "lintel": ("refractory", 28.625, 38),
    "throat back": ("refractory", 38, 43.375),
    "smoke shelf": ("refractory", 38, 43.375),
    "throat front": ("refractory", 38, 43.375),
    "masonry round the set": ("brick", -6, 63.125),
    "smoke chamber walls": ("refractory", 43.375, 63.125),
    "flue casing": ("refractory", 63.125, 230.625),
    "shoulder": ("brick", 63.125, 75.125),
    "chimney walls": ("brick", 75.125, 222.625),
    "crown": ("concrete", 222.625, 228.625),
}
VOIDS = {
    "firebox air": ("air", 0, 38.375),  # through the bed under the throat
    "smoke chamber air": ("air", 38.375, 63.125),
    "flue air": ("air", 63.125, 230.625),
    "gap round liner": ("air", 63.125, 222.625),
    "gap for movement": ("air", -6, 63.125),
}
BLOCK = 61.25 * 32
"""Walls and reducer, 53 in by 23-3/4; an eighth of gap and 4 in of brick all round, the facing counted
in. [in2]
"""
VOLUMES = {
    "footing": (61.25 + 12) * (32 + 12) * 12,  # 6 in beyond the block all round
    "hearth slab": BLOCK * 4,
    "base core": (61.25 - 2 * 7.625) * (32 - 2 * 7.625) * 26,  # walls of 8 in block
    "base walls": BLOCK * 26 - (61.25 - 2 * 7.625) * (32 - 2 * 7.625) * 26,
    # two plates 26-3/8 by 23-3/4 with 1/4 in between them, on half an inch of mortar
    "base plates": (2 * 26.375 + 0.25) * 23.75 * 3.5,
    "throat front": 48 * 5 * 5.375,
    "flue casing": (20**2 - pi * 7.5**2) * 20 * 8.375,
    "flue air": pi * 7.5**2 * 20 * 8.375,
    "gap round liner": (21**2 - 20**2) * (222.625 - 63.125),  # half an inch all round
    "chimney walls": (29**2 - 21**2) * (222.625 - 75.125),  # one wythe of 4 in
}


@pytest.fixture(scope="module")
def laid():
    """Set in the laid house of the default: 12 in of footing, 4 of slab, 12 of shoulder."""
    return build_geometry(change(Design(), {"pieces.set": "middling", "flue.sections": 20}))


def standing(parts) -> dict:
    """Material, foot and head of each part. [in]"""
    return {
        p.name: (
            p.material,
            pytest.approx(min(s.bottom for s in p.adds) / INCH),
            pytest.approx(max(s.top for s in p.adds) / INCH),
        )
        for p in parts
    }


def test_every_part_of_the_set_stands_where_its_pieces_add_up_to(laid):
    assert standing(laid.parts) == PARTS
    assert standing(laid.voids) == VOIDS


@pytest.mark.parametrize("name", VOLUMES)
def test_the_volume_is_that_of_the_pencil(laid, name):
    assert laid.by_name[name].volume / INCH**3 == pytest.approx(VOLUMES[name], rel=1e-6)


def test_the_air_begins_where_the_masonry_ends(laid):
    """The opening: 42-5/8 less the splits' slant, three courses less the floor high."""
    frame = laid.frame
    assert frame.opening_top / INCH == pytest.approx(3 * 10.375 + 0.375 - 2.5)
    assert frame.throat / INCH == pytest.approx(38)
    assert frame.flue_length / INCH == pytest.approx(20 * 8.375)
    assert frame.flue_y / INCH == pytest.approx(11.875 + 4.125)
    assert frame.liner_top / FOOT == pytest.approx(230.625 / 12)


def test_every_bed_under_the_flue_lies_on_the_top_of_what_it_stands_on(laid):
    """Half an inch under the plates, three eighths on every top from there to the collar."""
    tops = (-2.5, 7.875, 18.25, 28.625, 38, 43.375, 59.75)
    beds = [(-6, -5.5), *((top, top + 0.375) for top in tops)]
    assert [(b / INCH, t / INCH) for b, t in laid.frame.beds] == [pytest.approx(b) for b in beds]


def test_an_arch_is_clear_through_the_pieces_and_the_facing():
    """Under the set's lintel, its bed at 28-5/8: 44-3/4 wide, 4 high and 5 deep behind the facing. Under
    the facing's arch as wide as the opening: 22-3/8 aside less the splits of 1-1/4 on 1/8, square to
    a side that comes in 4-7/8 on 20.
    """
    told = {"pieces.set": "middling", "flue.sections": 20, "pieces.facing": "4 in"}
    made = SetOutlines(change(Design(), told | {"opening.head": "segmental"}))
    front = 4.5  # the facing, and the half inch behind it
    half = 22.375 - 1.375 * (1 + (4.875 / 20) ** 2) ** 0.5
    (lintel,) = made.under_lintel()
    below, over = made.reveal()
    assert inches(lintel) == pytest.approx([29, 4, 44.75, 5, 0, front])
    assert inches(over) == pytest.approx([29, 4, 2 * half, front, 0, 0])
    assert (below.bottom / INCH, below.top / INCH) == pytest.approx((0, 29))
    assert below.lower == below.upper and below.volume / INCH**3 == pytest.approx(
        29 * 2 * half * front
    )
    flat = SetOutlines(change(Design(), told))
    assert flat.under_lintel() == [] and [inches(s)[:2] for s in flat.reveal()] == [
        pytest.approx([0, 29])
    ]
    bare = SetOutlines(change(Design(), told | {"pieces.facing": "0 in", "pieces.gap": "0 in"}))
    assert bare.reveal() == []


def inches(solid) -> list[float]:
    """Its numbers in their order."""
    return [value / INCH for value in astuple(solid) if isinstance(value, float)]
