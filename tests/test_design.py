"""The design record and its door."""

import dataclasses
import re

import pytest

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.chimney import Breast
from fireplace_calc.design.opening import Lintel, Opening, Seat
from fireplace_calc.design.pieces import ANGLE
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.design.surroundings import Nearby
from fireplace_calc.editing.changes import all_inputs, book_names, change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.frame_builder import build_frame


def test_every_input_is_declared_in_full():
    for key, spec in all_inputs().items():
        assert spec.label and spec.help.endswith((".", "]")), f"{key}: label and one line of help"
        if spec.low is not None:
            assert spec.low < spec.high, key
            assert spec.default is None or spec.low <= spec.default <= spec.high, key
        if spec.choices:
            assert spec.default is None or spec.default in spec.choices, key


def test_labels_and_book_names_are_given_once():
    labels = [spec.label for spec in all_inputs().values()]
    assert len(labels) == len(set(labels))
    books = [spec.book for spec in all_inputs().values() if spec.book]
    assert len(books) == len(set(books))


def test_the_three_sliders_have_their_names():
    inputs = all_inputs()
    assert inputs["opening.width"].label == "Opening width"
    assert inputs["opening.extension"].label == "Firebox extension"
    assert inputs["flue.sections"].label == "Flue sections"


def test_change_leaves_the_original_alone():
    plain = Design()
    trial = change(
        plain, {"opening.width": "48 in", "opening.extension": "8 in", "flue.sections": 24}
    )
    assert plain == Design()
    assert trial.opening.width == pytest.approx(48 * INCH)
    assert trial.opening.height == pytest.approx(38 * INCH)
    assert trial.flue.sections == 24


def test_a_book_name_is_as_good_as_a_dotted_key():
    assert change(Design(), {"firebox_depth": "22 in"}) == change(
        Design(), {"firebox.depth": "22 in"}
    )
    assert book_names()["hearth_extension_front"] == "hearth.front"


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"opening.width": 36}, ["Opening width", "36", "in"]),
        ({"opening.width": "36"}, ["Opening width", "36", "in"]),
        ({"opening.width": "10 ft"}, ["Opening width", "10 ft", "8'-0\"", "workable"]),
        ({"opening.width": "36 kg"}, ["Opening width", "36 kg"]),
        ({"opening.width": None}, ["Opening width", "unknown"]),
        ({"flue.sections": 12.5}, ["Flue sections", "12.5", "whole number"]),
        ({"flue.sections": 400}, ["Flue sections", "400", "4 to 40"]),
        ({"opening.head": "gothic"}, ["Head", "gothic", "straight, segmental"]),
        (
            {"throat.worked_from_room": "perhaps"},
            ["Damper worked from the room", "perhaps", "yes or no"],
        ),
        ({"opening.witdh": "36 in"}, ["opening.witdh", "opening.width"]),
        (
            {"roof.nearby": [{"name": "dormer", "hight": "3 ft"}]},
            ["Anything within reach", "hight", "level"],
        ),
        ({"flue.size": "13x14"}, ["13x14"]),
        ({"throat.depth": "24 in"}, ["Throat depth", "2'-0\"", "firebox"]),
        ({"firebox.back_width": "40 in"}, ["Back width", "3'-4\"", "splay"]),
        ({"opening.head": "segmental", "opening.rise": "20 in"}, ["Arch rise", "half its span"]),
        ({"site.grade": "-36 in"}, ["Hearth slab", "there is no room for it", "lower the footing"]),
        ({"flue.sections": 10**400}, ["Flue sections", "beyond all bounds"]),
        ({"flue.sections": "1e400"}, ["Flue sections", "1e400"]),
        ({"fire.moisture": 10**5000}, ["Wood moisture", "no finite number"]),
        ({"fire.moisture": float("nan")}, ["Wood moisture", "nan", "no finite number"]),
        ({"opening.width": "1e400 m"}, ["Opening width", "no finite number"]),
        ({"opening.head": "x" * 5000}, ["Head", "xxx...", "straight"]),
        ({"flue.sections": "9" * 5000}, ["Flue sections", "999..."]),
    ],
)
def test_an_error_is_one_sentence_that_names_the_input(changes, says):
    with pytest.raises(InputError) as caught:
        change(Design(), changes)
    message = str(caught.value)
    assert "\n" not in message and len(message) < 500
    for words in says:
        assert words in message


def test_a_footing_runs_under_the_hearth_extension_and_not_through_it():
    """36 in deep under a floor 12 in up, 6 in of extension and bed: 42 in of footing just fits,
    unless nothing lies in front of it.
    """
    raised = {"hearth.drop": "18 in", "base.footing_thickness": "42 in"}
    parts = {p.name: p for p in build_geometry(change(Design(), raised)).parts}
    assert parts["footing"].top == pytest.approx(parts["hearth extension bed"].bottom)
    for free in ({"hearth.front": "0 in"}, {"base.footing_projection": "0 in"}):
        assert change(Design(), {**raised, "base.footing_thickness": "43 in", **free})
    with pytest.raises(InputError, match="Footing thickness is 3'-7\".*at most 3'-6\""):
        change(Design(), {**raised, "base.footing_thickness": "43 in"})


def test_unknown_is_allowed_where_the_drawing_can_do_without():
    assert change(Design(), {"hearth.material": "unknown"}).hearth.material is None
    assert change(Design(), {"site.frost_depth": "42 in"}).site.frost_depth == pytest.approx(
        42 * INCH
    )


NOT_LOOKED_AT_YET = """
house.room_length house.room_width house.leakage lintel.material lintel.bearing firebox.lining
firebox.joint firebox.masonry hearth.material throat.damper smoke_chamber.construction
smoke_chamber.lining smoke_chamber.course smoke_chamber.unit_height smoke_chamber.unit_bed
flue.liner flue.area_from flue.route flue.relined chimney.location chimney.cap_material
chimney.arrester chimney.rain_cap clearance.front clearance.side clearance.back clearance.chimney
clearance.fireplace_listed clearance.liner_listed clearance.in_masonry_wall clearance.edge_trim
clearance.accessory ground.own_footing anchorage.n_flues anchorage.steel_framing stack.corbelled
stack.upper_storey stack.designed_for_load stack.one_appliance stack.connector
stack.cleaned_through_opening stack.veneer_on_frame air.pressure_held air.near_outlet
abroad.warm_air abroad.thatch abroad.other_space
"""
"""What an inspector who stands before a finished fireplace may not know."""


@pytest.mark.parametrize("key", NOT_LOOKED_AT_YET.split())
def test_what_nobody_has_looked_at_may_be_unknown_though_it_has_a_default(key):
    assert all_inputs()[key].default is not None
    group, _, name = key.partition(".")
    assert getattr(getattr(change(Design(), {key: "unknown"}), group), name) is None


def test_lists_of_pieces():
    trial = change(
        Design(),
        {"surround.trim": [{"name": "shelf", "distance": "12 in", "projection": "1-1/2 in"}]},
    )
    assert trial.surround.trim[0].projection == pytest.approx(1.5 * INCH)
    assert change(trial, {"surround.trim": trial.surround.trim}) == trial


def test_what_does_not_fit_is_drawn_otherwise_and_said():
    """A shallow box under a deep flue is built all the time; the drawing says what it had to move."""
    plain = build_frame(Design())
    assert plain.adjusted == ()
    shallow = build_frame(
        change(
            Design(), {"opening.type": "shallow", "firebox.depth": "12 in", "hearth.drop": "8 in"}
        )
    )
    assert len(shallow.adjusted) == 4
    assert shallow.hearth == pytest.approx(8 * INCH)
    assert shallow.throat_back == pytest.approx(12 * INCH)
    assert shallow.throat_front == pytest.approx(7.5 * INCH)


def test_words_from_the_code_tables_are_understood():
    assert (
        change(Design(), {"chimney_location": "within_exterior_wall"}).chimney.location
        == "within exterior wall"
    )
    assert (
        change(Design(), {"masonry_kind": "hollow_grouted_solid"}).firebox.masonry
        == "hollow grouted solid"
    )


def test_records_are_frozen():
    with pytest.raises(dataclasses.FrozenInstanceError):
        Design().opening.width = 1.0


def test_the_opening_is_its_height_with_the_raise_and_less_the_hood():
    """30 in standard and 6 of raise are 36; a hood of 4 leaves 32 clear, none leaves all."""
    opening = Opening(standard_height=30 * INCH, extension=6 * INCH, hood=4 * INCH)
    assert opening.height / INCH == pytest.approx(36)
    assert opening.clear_height / INCH == pytest.approx(32)
    assert dataclasses.replace(opening, hood=None).clear_height / INCH == pytest.approx(36)


def test_only_what_may_be_unknown_is_left_blank():
    """A number with a default has to be told, but for those declared so: how wet the wood is does, how
    leaky the house is does not.
    """
    for key in ("opening.width", "fire.moisture", "flue.sections", "site.winter"):
        with pytest.raises(InputError):
            change(Design(), {key: None})
    assert change(Design(), {"house.leakage": None}).house.leakage is None


@pytest.mark.parametrize("record", [Trim, Nearby])
def test_what_nobody_has_told_is_drawn_as_its_help_says(record):
    told = {
        field.name: said[1]
        for field in dataclasses.fields(record)
        if (said := re.search(r"unknown is drawn at (.+)\.$", field.metadata["input"].help))
    }
    assert len(told) == 2
    for name, size in told.items():
        drawn = f"drawn_{name}"
        assert getattr(record(), drawn) == pytest.approx(to_si(size, "length", name))
        assert getattr(record(**{name: 0.5}), drawn) == 0.5
        assert getattr(record(**{name: 0.0}), drawn) == 0.0


@pytest.mark.parametrize(
    ("angles", "leg", "upright", "steel", "wanted"),
    [  # by hand, under a breast of 4 in: pitch, level leg, thickness
        (1, 3.5, 3.5, 0.25, (4, 3.5, 0.25)),
        (1, 6, 3.5, 0.25, (4, 4, 0.25)),
        (2, 3.5, 3.5, 0.25, (2, 2, 0.25)),
        (3, 1, 0.5, 0.75, (4 / 3, 1, 0.5)),
        (3, 12, 6, 1, (4 / 3, 4 / 3, 1)),
    ],
)
def test_angles_share_the_breast_and_are_no_thicker_than_their_legs(
    angles, leg, upright, steel, wanted
):
    lintel = Lintel(
        angles=angles, level_leg=leg * INCH, height=upright * INCH, thickness=steel * INCH
    )
    assert lintel.legs(4 * INCH) == pytest.approx([v * INCH for v in wanted])


def test_an_angle_carries_the_facing_of_a_set_under_a_straight_head_alone():
    told = {"facing_head": ANGLE, "facing": 3 * INCH, "angle_height": 2 * INCH}
    told |= {"angle_leg": 3.5 * INCH, "angle_thickness": 0.25 * INCH}
    pieces = dataclasses.replace(Design().pieces, **told)
    assert pieces.facing_angle("straight") == pytest.approx([v * INCH for v in (3, 3, 0.25)])
    short = dataclasses.replace(pieces, angle_leg=2.5 * INCH, angle_thickness=INCH)
    assert short.facing_angle("straight") == pytest.approx([v * INCH for v in (3, 2.5, 1)])
    assert pieces.facing_angle("segmental") is None
    assert dataclasses.replace(pieces, facing=0.0).facing_angle("straight") is None
    assert dataclasses.replace(pieces, facing_head=None).facing_angle("straight") is None


def test_what_follows_from_what_was_chosen():
    assert Opening(standard_height=0.7, extension=0.2).height == pytest.approx(0.9)
    assert Opening(standard_height=0.7, hood=0.1).clear_height == pytest.approx(0.6)
    assert Opening(standard_height=0.7).clear_height == pytest.approx(0.7)
    flush, out = Breast(form="flush", projection=0.3), Breast(form="straight", projection=0.3)
    assert (flush.stands_out, out.stands_out, Breast(form="straight").stands_out) == (
        0,
        0.3,
        None,
    )
    assert Breast(place="across a corner").cornered and not Breast().cornered
    seat = Seat(left=0.5, right=0.8, niche="right")
    assert seat.drawn and seat.stretches() == ((-1, 0.5, False), (1, 0.8, True))
    assert not Seat(left=0.0, right=0.0).drawn and Seat(left=0.0, right=0.0).stretches() == ()
    assert Seat(left=0.5, right=0.0, niche="both").stretches() == ((-1, 0.5, True),)
    assert Seat(left=0.0, right=0.5, niche="none").stretches() == ((1, 0.5, False),)
