"""What goes to the page comes out as it went in; read here by hand, byte by byte."""

from dataclasses import replace

import numpy as np
import pytest

from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing
from fireplace_calc.scene.wire import bytes_of, pack_fireplace, pack_layouts, pack_things

BOX = np.array([[0, 0, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1]], float)
SKIN = np.array([[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]])


def thing(key, at=(0.0, 0.0, 0.0), grown=1.0):
    return Thing(key, key, "brick", "masonry", BOX * grown + at, SKIN)


def corners(packed, k):
    """Corners of the k-th thing, by the words of ``pack_things``."""
    number, first = packed["forms"].index(packed["form"][k]), 0
    for count, _, step in packed["sizes"][:number]:
        first += 3 * count * (2 if step else 4)
    count, _, step = packed["sizes"][number]
    own = np.frombuffer(packed["points"], "<i2" if step else "<f4", 3 * count, first)
    feet = np.frombuffer(packed["at"], "<f4").reshape(-1, 3)
    return own.reshape(-1, 3) * (step or 1) + feet[k]


def test_a_form_goes_over_once_and_stands_where_it_stood():
    things = [thing("a"), thing("b", (0.3, -1.7, 2.013)), thing("c", (5, 5, 5), 2.0)]
    packed = pack_things(things)
    a, b, c = packed["form"]
    assert a == b != c and packed["forms"] == [a, c] and packed["sizes"] == [(4, 4, 0), (4, 4, 0)]
    for k, one in enumerate(things):
        assert np.abs(corners(packed, k) - one.points).max() < 2e-5
    assert (np.frombuffer(packed["faces"], "<u1").reshape(-1, 3)[:4] == SKIN).all()


@pytest.mark.parametrize(("wide", "counted"), [*((k / 97, 6) for k in range(30, 90)), (4.0, 12)])
def test_what_only_stands_in_the_room_goes_over_in_steps_where_they_are_small(wide, counted):
    """Within half a step, under a tenth of a millimeter; a long thing as it is."""
    stands = replace(thing("log", (0.3, -1.7, 2.013), wide), kind="setting")
    packed = pack_things([thing("a"), stands, thing("b", grown=wide)])
    assert np.abs(corners(packed, 1) - stands.points).max() < 2e-5
    assert [bytes_of(size) for size in packed["sizes"]] == [(48, 12), (4 * counted, 12), (48, 12)]
    assert len(packed["points"]) == 96 + 4 * counted and len(packed["faces"]) == 36


def test_more_corners_than_one_byte_counts_take_two():
    ring = np.arange(300)
    round_ = np.stack([np.cos(ring / 40), np.sin(ring / 40), ring / 300], 1)
    skin = np.stack([ring[:-2], ring[1:-1], ring[2:]], 1)
    packed = pack_things([Thing("m", "m", "brick", "masonry", round_, skin)])
    assert (np.frombuffer(packed["faces"], "<u2").reshape(-1, 3) == skin).all()
    assert bytes_of(packed["sizes"][0])[1] == len(packed["faces"])


def test_a_form_that_is_held_is_only_named():
    first = pack_things([thing("a")])
    again = pack_things([thing("b", (1, 1, 1)), thing("c", (5, 5, 5), 2.0)], held=first["forms"])
    assert again["form"][0] == first["form"][0] and again["forms"] == again["form"][1:]
    assert len(again["points"]) == len(first["points"])
    assert np.frombuffer(again["at"], "<f4")[:3].tolist() == [1, 1, 1]


def test_more_corners_than_two_bytes_count_are_refused():
    many = Thing("m", "m", "brick", "masonry", np.zeros((65536, 3)), SKIN)
    with pytest.raises(ValueError, match="m has 65536 corners; at most 65535"):
        pack_things([many])


def test_measures_and_standpoints_go_as_plain_values():
    room = RoomMeasures(-2, 2, -5, 0.3, 2.6, (), (1, 1, 1), (0, 0.2, 0.4), 0.5)
    packed = pack_fireplace([thing("a")], room, [Standpoint("Close", (0, -2, 1), (0, 0, 1), 40)])
    assert packed["room"]["ceiling"] == 2.6 and packed["room"]["fire"] == (0, 0.2, 0.4)
    assert packed["standpoints"][0]["stands"] == [0, -2, 1]


@pytest.mark.parametrize(("wide", "step"), [(1.2, 1e-4), (6.0, 6.0 / 32767)])
def test_an_outline_keeps_its_size(wide, step):
    ring = np.array([[0, 0], [wide, 0], [wide, 0.05715], [0, 0.05715]])
    laid = FaceLayout("brick", (0, 0, 0), wide, 0.1, [ring, ring + [0, 0.01]])
    packed = pack_layouts([laid])
    made = packed["patterns"][packed["laid"][0]]
    assert made["step"] == pytest.approx(step)
    assert np.frombuffer(made["counts"], "<u2").tolist() == [4, 4]
    back = np.frombuffer(made["rings"], "<i2").reshape(-1, 2) * made["step"]
    assert np.abs(back[:4] - ring).max() <= step / 2 + 1e-12
    assert np.abs(back[4:] - ring - [0, 0.01]).max() <= step / 2 + 1e-12


def test_a_pattern_goes_over_once_and_not_again_when_it_is_held():
    ring = np.array([[0, 0], [0.2, 0], [0.2, 0.06]])
    one, moved = (FaceLayout("brick", (0, 0, z), 1, 1, [ring]) for z in (0.0, 0.5))
    other = FaceLayout("brick", (0, 0, 0), 1, 1, [ring + 0.001])
    first = pack_layouts([one, moved])
    assert len(first["patterns"]) == 1 and [origin[2] for origin in first["origin"]] == [0, 0.5]
    again = pack_layouts([one, other], held=first["patterns"])
    assert again["laid"][0] == first["laid"][0]
    assert list(again["patterns"]) == [again["laid"][1]]
