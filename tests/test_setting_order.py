"""In what order the pieces of a set are set.

``SETS=1000 pytest tests/test_setting_order.py`` tries more random sets, by hand.
"""

import os
from dataclasses import replace
from types import SimpleNamespace

import pytest
from sampled import sampled
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.build.setting import setting_order
from fireplace_calc.build.setting.setting_order import order_of_setting, steps_by_name, stopped_by
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.clash import body
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set

COUNT = int(os.environ.get("SETS", "40"))
MIDDLING = (DATA / "sets" / "middling.toml").read_text()


def steps_of(text, **choice):
    made = read_set(text)
    return order_of_setting(as_wanted(choose(made, Choice(**choice))), made.lining)


def number_of(steps):
    return {step.name: step.number for step in steps}


def meets(one, other, up):
    """Volume that two placed pieces share when the first is moved up. [m3]"""
    a = body(one.piece).translate((0.0, 0.0, one.level + up))
    b = body(other.piece).translate((0.0, 0.0, other.level))
    x, y = a.bounding_box(), b.bounding_box()
    if any(x[k] >= y[k + 3] or y[k] >= x[k + 3] for k in range(3)):
        return 0.0
    return (a ^ b).volume()


@pytest.mark.parametrize("seed", sampled(range(COUNT), 8))
def test_no_piece_is_set_before_what_carries_it_nor_under_what_stands(seed):
    """Apart from contacts and shadows: each piece is dropped by its bed and a millimeter, and what it
    then runs into was set; and it is let down in steps from over everything, past what stands, and
    meets nothing."""
    recipe = random_set(seed)
    assembly, lining = stood(recipe), made_set(recipe).lining
    steps = order_of_setting(assembly, lining)
    assert sorted(s.name for s in steps if s.placed) == sorted(p.name for p in assembly.placed)
    standing = []
    for step in steps:
        one = step.placed
        if one is None:
            continue
        for other in assembly.placed:
            if other.lift < one.lift and meets(one, other, -one.bed - 0.001) > 1e-7:
                assert other in standing, f"{one.name} is set before {other.name}"
        over = max([o.top for o in standing], default=0.0) - one.level
        for up in (0.0, 0.003, 0.01, 0.03, 0.1, 0.2, 0.3, 0.5, 1.0, 2.0):
            if up < over + 0.03:
                for other in standing:
                    assert meets(one, other, up) < 1e-8, f"{one.name} cannot pass {other.name}"
        standing.append(one)


@pytest.mark.parametrize("seed", range(0, COUNT, 4))
def test_of_what_is_free_the_lowest_goes_next_then_the_heaviest(seed):
    assembly, lining = stood(random_set(seed)), made_set(random_set(seed)).lining
    steps = order_of_setting(assembly, lining)
    done = set()
    for step in steps:
        assert done >= set(step.after)
        if step.placed:
            free = [s for s in steps if s.placed and s.name not in done and done >= set(s.after)]
            lift = min(s.placed.lift for s in free)
            assert step.placed.lift == lift
            heaviest = max(piece_weight(s.placed.piece) for s in free if s.placed.lift == lift)
            assert piece_weight(step.placed.piece) == pytest.approx(heaviest, abs=1e-3)
        done.add(step.name)


def test_a_gram_tells_weights_apart_and_less_does_not(monkeypatch):
    """Both hands of a pair weigh the same but for how their corners were rounded: the left goes first."""
    weigh = {"left": 10.0, "right": 10.0004, "heavier": 10.001}
    monkeypatch.setattr(setting_order, "piece_weight", weigh.get)
    places = {"left": (-0.4, 0.1), "right": (0.4, 0.1), "heavier": (0.6, 0.1)}
    monkeypatch.setattr(setting_order, "middle_of_mass", places.get)
    pieces = [SimpleNamespace(lift=1, piece=name, name=name) for name in weigh]
    assert [p.name for p in sorted(pieces, key=setting_order._rank)] == ["heavier", "left", "right"]


def test_the_middling_set_by_hand():
    """Plates, then course by course, the heaviest first and the left of a pair before the right; the
    lining when the back part of the throat stands; the lintel and the throat's front after it."""
    names = [s.name for s in steps_of(MIDDLING, extensions=1, flues=12)]
    assert names[:5] == ["PL.1", "PR.1", "WL.1", "WR.1", "WB.1"]
    assert names[11:17] == ["XL.1", "XR.1", "XB.1", "TB.1", "TL.1", "TR.1"]
    at = names.index("lining")
    assert names[at - 1] == "N2.1" and names.index("LS.1") > at and names.index("N1.1") > at
    assert names.index("RL.1") > names.index("N1.1")
    assert names[-12:] == [f"F8.{n}" for n in range(1, 13)]


def test_without_a_lining_nothing_waits_for_it():
    made = read_set(MIDDLING)
    steps = order_of_setting(as_wanted(choose(made, Choice())), None)
    assert all(s.placed for s in steps)
    assert number_of(steps)["LS.1"] < number_of(steps)["N2.1"]


def test_a_piece_with_a_lip_over_its_neighbor_comes_after_it():
    """The throat's front part with a lip 1 in long over a ledge of the back part: only one order can
    be set from above."""
    old = 'outline = [[0, 0], [48, 0], [48, 5], [0, 5]]\nheight = 5\nafter = ["lining"]'
    front = old.replace(
        "height", "add = [{ outline = [[0, 5], [4, 5], [4, 7], [0, 7]], from = 3, to = 5 }]\nheight"
    )
    back = "cut = [{ outline = [[0, 0], [4.25, 0], [4.25, 2], [0, 2]], from = 2.75, to = 5 }]"
    ring = "[48, 8.5], [0, 8.5]]\nheight = 5"
    assert old in MIDDLING and ring in MIDDLING
    text = MIDDLING.replace(ring, ring.replace("height", f"{back}\nheight"))
    text = text.replace(old, front).replace('after = ["lining"]', "")
    turned = text.replace('pieces = ["N2", "SH", "N1"]', 'pieces = ["N1", "SH", "N2"]')
    assert turned != text
    for each in (text, turned):  # whichever of them the file names first
        at = number_of(steps_of(each))
        assert at["N1.1"] > at["N2.1"]
        assert "N2.1" in next(s for s in steps_of(each) if s.name == "N1.1").after


def test_pieces_that_lock_are_refused_by_name_unless_the_file_says_which_slides_in():
    """Both with a lip over the other, one at either end."""
    old = 'outline = [[0, 0], [48, 0], [48, 5], [0, 5]]\nheight = 5\nafter = ["lining"]'
    one = "{ outline = [[0, 5], [4, 5], [4, 7], [0, 7]], from = 3, to = 5 }"
    two = "{ outline = [[44, 5], [48, 5], [48, 7], [44, 7]], from = 0, to = 2 }"
    cuts = (
        "cut = [{ outline = [[0, 0], [4.25, 0], [4.25, 2], [0, 2]], from = 2.75, to = 5 },"
        " { outline = [[43.75, 0], [48, 0], [48, 2], [43.75, 2]], from = 0, to = 2.25 }]"
    )
    ring = "[48, 8.5], [0, 8.5]]\nheight = 5"
    text = MIDDLING.replace(ring, ring.replace("height", f"{cuts}\nheight"))
    locked = text.replace(old, old.replace("height", f"add = [{one}, {two}]\nheight"))
    with pytest.raises(InputError, match=r"N2\.1 and N1\.1 lock"):
        steps_of(locked)
    made = read_set(locked)
    assert steps_by_name(as_wanted(choose(made, Choice())), made.lining) == {}
    told = locked.replace('height = 5\nafter = ["lining"]', 'height = 5\nafter = ["lining", "N2"]')
    assert number_of(steps_of(told))["N1.1"] > number_of(steps_of(told))["N2.1"]


def test_a_circle_of_waiting_is_named():
    text = MIDDLING.replace('mark = "TR"', 'mark = "TR"\nafter = ["N2"]')
    with pytest.raises(InputError, match="Nothing can be set first: .* waits for N2.1 waits for T"):
        steps_of(text)


def test_a_missing_piece_stops_all_that_waits_for_it_and_nothing_else():
    steps = steps_of(MIDDLING, flues=12)
    whole = read_set(MIDDLING)
    built = as_wanted(choose(whole, Choice(flues=12)))
    assert steps_by_name(built, whole.lining) == {s.name: s.number for s in steps}
    stopped = [s.name for s in stopped_by(steps, ["CT.1"])]
    assert stopped == ["CT.1", *(f"F8.{n}" for n in range(1, 13))]
    assert "N1.1" in {s.name for s in stopped_by(steps, ["LS.1"])}
    assert "SH.1" not in {s.name for s in stopped_by(steps, ["LS.1"])}
    assert stopped_by(steps, []) == ()


def test_a_tall_set_is_ordered():
    made = read_set(MIDDLING.replace("repeat = [12, 36]", "repeat = [12, 60]"))
    assembly = as_wanted(choose(made, Choice(extensions=2, flues=60)), 4 * INCH)
    assert len(order_of_setting(assembly, made.lining)) == len(assembly.placed) + 1


def test_a_lining_that_waits_for_nothing_is_laid_first():
    """Flue pieces alone: no wall stands that it is laid against, and nothing is told of it."""
    made = read_set(MIDDLING)
    stack = [lift for lift in choose(made, Choice()) if lift.pieces[0].role == "flue"][:3]
    steps = order_of_setting(as_wanted(stack), replace(made.lining, after=()))
    assert [step.number for step in steps] == [1, 2, 3, 4]
    assert steps[0].placed is None and not steps[0].after
