"""What has to be on the pallets, and what a missing piece stops."""

import pytest

from fireplace_calc import assess
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import InputError
from fireplace_calc.build.setting.pallet_list import pallet_rows, stopped_without
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.editing.designfile import load
from fireplace_calc.geometry.from_set.set_up import set_up


@pytest.fixture(scope="module")
def boathouse():
    return load(example("boathouse"))


@pytest.fixture(scope="module")
def steps(boathouse):
    return order_of_setting(set_up(boathouse).assembly, boathouse.piece_set.lining)


def test_the_delivery_is_what_the_takeoff_counts_and_weighs(boathouse):
    rows = {row.piece.mark: row for row in pallet_rows(set_up(boathouse).assembly)}
    listed = [r for r in assess(boathouse).takeoff if r.item.startswith("Piece ")]
    assert len(listed) == len(rows)
    for one in listed:
        row = rows[one.item.removeprefix("Piece ").split(",")[0]]
        assert (row.count, row.whole) == (one.net, pytest.approx(one.weight_kg, rel=1e-12))
    assert (rows["F8"].count, rows["F8"].pallets) == (29, 3)  # twelve on a pallet
    assert rows["WR"].pallets is None


def test_a_short_delivery_stops_the_last_of_its_mark_and_all_that_stands_on_it(steps):
    stopped = [s.name for s in stopped_without(steps, {"WR": 2})]
    assert stopped[0] == "WR.3"
    assert {"XR.1", "TR.1", "LS.1", "F8.29", "lining"} <= set(stopped)
    assert not {"WR.1", "WR.2", "WL.3", "WB.3", "PL.1"} & set(stopped)


def test_the_last_flue_piece_stops_itself_alone(steps):
    assert [s.name for s in stopped_without(steps, {"F8": 28})] == ["F8.29"]


def test_nothing_short_stops_nothing(steps):
    assert stopped_without(steps, {}) == stopped_without(steps, {"F8": 29}) == ()


def test_without_the_right_plate_only_the_left_walls_can_stand(steps):
    stopped = {s.name for s in stopped_without(steps, {"PR": 0})}
    left = {"PL.1", "WL.1", "WL.2", "WL.3", "XL.1", "XL.2", "TL.1"}
    assert {s.name for s in steps} - stopped == left


@pytest.mark.parametrize(
    ("delivered", "says"), [({"ZZ": 1}, "no piece 'ZZ'"), ({"F8": -1}, "-1 pieces")]
)
def test_a_mark_or_count_that_cannot_be_is_refused(steps, delivered, says):
    with pytest.raises(InputError, match=says):
        stopped_without(steps, delivered)
