"""What a field says it takes: the set's sizes where a set decides, messages in the reader's units,
and what the customer wants to keep.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fireplace_calc.base.printing import feet_inches, message_units, messages_in, show
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, MM, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, change, value_of
from fireplace_calc.editing.sets.deciding import SNAPPED, decided
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.editing.sets.set_sizes import offers
from fireplace_calc.panels import panel
from fireplace_calc.panels.controls import ranges
from fireplace_calc.panels.controls.ranges import allowed_in, bounds_in, words_in
from fireplace_calc.panels.work_in_hand import WorkInHand
from fireplace_calc.panels.workbench.front_fields import told_field

SETS = shipped_sets()
UNIT = {FEET_INCHES: INCH, MILLIMETRES: MM}


def of_set(name, **changes):
    return change(change(Design(), {"pieces.set": name}), changes)


@pytest.mark.parametrize("name", SETS)
def test_every_size_a_set_is_said_to_offer_can_be_had_and_no_other(name):
    """Asked for one by one, each comes as it was said; what is asked between two of them comes as
    one of them.
    """
    for head in offers(of_set(name))["opening.head"]:
        design = of_set(name, **{"opening.head": head})
        assert design.opening.head == head
        for key, given_ in offers(design).items():
            if key == "opening.head":
                continue
            unit = "" if key == "flue.sections" else " m"
            for value in given_:
                asked = f"{value}{unit}" if unit else value
                got = value_of(change(design, {key: asked}), key)
                assert got == pytest.approx(value, abs=1e-9)
            for low, high in zip(given_, given_[1:], strict=False):
                if unit:
                    between = value_of(change(design, {key: f"{(low + high) / 2} m"}), key)
                    assert min(abs(between - low), abs(between - high)) < 1e-9
    assert offers(Design()) == {}


@pytest.mark.parametrize("units", [FEET_INCHES, MILLIMETRES])
@pytest.mark.parametrize("name", SETS)
def test_the_range_at_a_field_is_the_sets_and_both_ends_of_the_slider_reach_it(name, units):
    design = of_set(name)
    for key in ("opening.width", "opening.extension", "flue.sections"):
        told, given_ = told_field(key, design, units), offers(design)[key]
        least, most = given_[0], given_[-1]
        if key == "flue.sections":
            assert told["allowed"] == f"{least} to {most}"
            assert (told["low"], told["high"]) == (least, most)
            continue
        ends = (feet_inches(least), feet_inches(most)) if units == FEET_INCHES else (
            f"{round(least / MM)} mm", f"{round(most / MM)} mm")  # fmt: skip
        assert all(end in told["allowed"] for end in ends)
        assert told["low"] * UNIT[units] <= least + 1e-9
        assert told["high"] * UNIT[units] >= most - 1e-9
        for end, value in ((told["low"], least), (told["high"], most)):
            slid = change(design, {key: f"{end} {'in' if units == FEET_INCHES else 'mm'}"})
            assert value_of(slid, key) == pytest.approx(value)


def test_what_a_set_has_decided_names_no_range_and_its_heads_are_the_sets():
    design = of_set(SETS[0])
    for key in decided(design):
        if key not in SNAPPED:
            assert allowed_in(design, key, FEET_INCHES) == ""
            assert told_field(key, design, FEET_INCHES)["locked"]
    assert words_in(design, "opening.head") == tuple(
        word
        for word in all_inputs()["opening.head"].choices
        if word in offers(design)["opening.head"]
    )
    assert words_in(Design(), "hearth.material") == all_inputs()["hearth.material"].choices
    assert bounds_in(Design(), "opening.width") == all_inputs()["opening.width"].bounds


def test_a_set_without_an_arch_offers_none(monkeypatch):
    key = "opening.head"
    monkeypatch.setattr(ranges, "offers", lambda _: {key: ("straight",)})
    assert words_in(Design(), key) == ("straight",)


@pytest.mark.parametrize("units", [FEET_INCHES, MILLIMETRES])
@pytest.mark.parametrize("off", [0.0, 0.3])
def test_a_seat_goes_as_far_as_the_wall_and_its_slider_too(units, off):
    """Off the middle one side has more room; without a wall's length the input's own range stands."""
    wall = {
        "house.room_length": "14 ft",
        "breast.off_center": f"{off} m",
        "base.hearth_level": "18 in",
    }
    design = change(Design(), wall)
    near = design.opening.width / 2 + design.hearth.side
    for key, most in (
        ("seat.left", 7 * 12 * INCH + off - near),
        ("seat.right", 7 * 12 * INCH - off - near),
    ):
        told = told_field(key, design, units)
        assert bounds_in(design, key)[1] == pytest.approx(most)
        assert most - 10 * MM - INCH < told["high"] * UNIT[units] <= most + 1e-9
        assert told["allowed"].endswith(show(most, "length", units))
        unit = "in" if units == FEET_INCHES else "mm"
        reach = value_of(change(design, {key: f"{told['high']} {unit}"}), key)
        with pytest.raises(InputError, match="end of the wall"):
            change(design, {key: f"{reach + 2 * INCH} m"})
    free = change(design, {"house.room_length": None})
    assert bounds_in(free, "seat.left") == all_inputs()["seat.left"].bounds


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from([key for key, spec in all_inputs().items() if spec.kind == "length"]),
    st.sampled_from([FEET_INCHES, MILLIMETRES]),
)
def test_a_refusal_names_the_readers_units_first(key, units):
    """The other units come behind, in brackets; outside of the reader's page feet lead as before."""
    spec = all_inputs()[key]
    first, second = (FEET_INCHES, MILLIMETRES)[:: 1 if units == FEET_INCHES else -1]
    with messages_in(units), pytest.raises(InputError) as refused:
        spec.read(f"{spec.high * 2 + 1} m")
    said = str(refused.value)
    own = f"{show(spec.low, 'length', first)} to {show(spec.high, 'length', first)}"
    other = f"({show(spec.low, 'length', second)} to {show(spec.high, 'length', second)})"
    assert 0 < said.index(own) < said.index(other)
    assert refused.value.allowed == own
    assert message_units()[0] == FEET_INCHES, "nobody else is told in them"


@pytest.mark.parametrize(("units", "first"), [(FEET_INCHES, "2'-0\""), (MILLIMETRES, "610 mm")])
def test_what_does_not_go_together_is_said_in_the_readers_units(units, first):
    """A throat of 24 in in a firebox 20 in deep, which leaves room for 18 in."""
    session = WorkInHand(Design(), units)
    with pytest.raises(InputError) as refused:
        session.take({"firebox.depth": "20 in", "throat.depth": "24 in"})
    assert f"Throat depth is {first} (" in str(refused.value)


def test_an_entry_refused_on_the_page_is_answered_in_millimeters():
    page = panel(Design(), units=MILLIMETRES)
    page.set_input("opening.width", "30")
    assert "457 mm to 2 438 mm is the workable range" in page.refused["opening.width"]


def test_what_is_kept_is_said_at_the_controls_until_it_is_let_go():
    page = panel(Design(), leads=("opening.width", "flue.shape_and_size"))
    box = page.everything.control("opening.extension").widget
    page.open("remedies")
    ticks = page.folds["remedies"].boxes
    ticks["width"].value = ticks["raise"].value = ticks["liner"].value = True
    notes = {told["key"]: told["note"] for told in page.told_fields(page.leads)}
    assert all("Kept as it is" in note for note in notes.values()) and len(notes) == 2
    assert "Kept as it is" in box.note and not box.disabled
    assert not page.everything.control("firebox.depth").widget.note
    ticks["width"].value = ticks["raise"].value = False
    notes = {told["key"]: told["note"] for told in page.told_fields(page.leads)}
    assert notes["opening.width"] == "" == box.note and notes["flue.shape_and_size"]
