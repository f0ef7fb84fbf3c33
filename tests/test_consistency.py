"""What must hold between inputs: each limit at its end, and a sixteenth of an inch beyond."""

import re

import pytest

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change

ARCH = {"opening.head": "segmental", "lintel.height": "3 in", "lintel.bearing": "3 in"}
SHALLOW_FOOTING = {
    "site.grade": "0 in",
    "base.footing_depth": "12 in",
    "base.footing_thickness": "6 in",
}
LOW = {"flue.sections": 4, "flue.section_height": "6-1/8 in"}
SLIM = {"firebox.jamb": "4 in", "firebox.lining_thickness": "3 in", "opening.rise": "18 in"}
CROWN, SLAB = "Crown with its wash, shoulder and standing liner", "Hearth slab with its floor"
LIMITS = [
    ("Back width", {}, "firebox.back_width", 36),
    # 30 in of opening and 8 of throat, less the 7-1/2 in of rake at 2 to 1
    ("Vertical back", {}, "firebox.vertical_back", 34.25),
    ("Vertical back", {"firebox.depth": "18 in"}, "firebox.vertical_back", 38 - 5.5 / 2),
    ("Vertical back", {"firebox.rake": "3 in"}, "firebox.vertical_back", 36.5),
    ("Throat depth", {}, "throat.depth", 18),  # nine tenths of 20 in
    ("Lining thickness", {}, "firebox.lining_thickness", 8.5),
    # a jamb of 12 in, square to a side that splays 1 in 3: 12 / sqrt(1 + 1/9) = 11.384
    ("Lining thickness", {"firebox.wall": "24 in"}, "firebox.lining_thickness", 11.384),
    ("Lintel bearing", {}, "lintel.bearing", 12),
    ("Arch rise", ARCH, "opening.rise", 18),
    ("Arch rise", {**ARCH, "opening.width": "72 in"}, "opening.rise", 30),
    ("Lintel height", {}, "lintel.height", 8),
    ("Transition", {"smoke_chamber.height": "20 in"}, "smoke_chamber.transition", 18),
    # 18 in of step less 2 of stone and 4 of bed: 6 in under a floor that lies 12 over grade
    ("Footing thickness", {"hearth.drop": "18 in"}, "base.footing_thickness", 42),
    (
        "Footing thickness",
        {"hearth.drop": "18 in", "hearth.bed": "5 in", "hearth.thickness": "3 in"},
        "base.footing_thickness",
        40,
    ),
    (
        "Footing thickness",
        {"base.hearth_level": "12 in", "base.footing_depth": "30 in"},
        "base.footing_thickness",
        42,
    ),
    # 12 in down to the footing's underside, 6 of it footing, 2-1/2 firebrick floor
    (SLAB, SHALLOW_FOOTING, "base.slab", 3.5),
    (SLAB, {**SHALLOW_FOOTING, "base.hearth_level": "2 in"}, "base.slab", 5.5),
    (SLAB, {**SHALLOW_FOOTING, "site.grade": "3 in"}, "base.slab", 6.5),
    ("Smoke chamber lining thickness", {}, "smoke_chamber.lining_thickness", 4.25),
    (
        "Smoke chamber lining thickness",
        {"firebox.jamb": "7 in"},
        "smoke_chamber.lining_thickness",
        3.5,
    ),
    # four sections of 6-1/8 in and a joint of 1/8: 25 in for crown, wash and liner of 4, 2, 2
    (CROWN, LOW, "chimney.shoulder", 17),
    (CROWN, {**LOW, "chimney.wash": "1 in"}, "chimney.shoulder", 18),
    (CROWN, {**LOW, "chimney.liner_above": "1 in"}, "chimney.shoulder", 18),
    (CROWN, {**LOW, "chimney.crown": "5 in"}, "chimney.shoulder", 16),
    # four sections of 24-1/8 in, less shoulder 12, crown 4, wash 2 and 2 of standing liner
    ("Offset rise", {"flue.sections": 4, "flue.offset": "3 in"}, "flue.offset_rise", 76.5),
    # a half circle ends level on the jamb of 4 in; 6 in of rise over 36 lean sine 0.6 outward
    ("Lintel height", {**ARCH, **SLIM}, "lintel.height", 4),
    ("Lintel height", {**ARCH, **SLIM, "opening.rise": "6 in"}, "lintel.height", 4 / 0.6),
]


@pytest.mark.parametrize(("label", "others", "key", "most"), LIMITS)
def test_the_most_that_fits_is_taken_and_a_sixteenth_more_is_refused(label, others, key, most):
    """Worked out by hand from the plain design: 36 by 30 in, 20 deep, jambs of 12, wall of 8-1/2."""
    fits = int(most * 16 + 1e-9) / 16
    assert change(Design(), {**others, key: f"{fits} in"})
    with pytest.raises(InputError) as caught:
        change(Design(), {**others, key: f"{fits + 1 / 16} in"})
    message = str(caught.value)
    assert message.startswith(f"{label} is ")
    told = re.search(r"but at most (.+?) \(([\d ]+ mm)\) fits: [a-z ]+", message)
    whole = {CROWN: 25, SLAB: most + 2.5}.get(label, most)  # what is added up is told whole
    for words in told.groups():
        assert to_si(words, "length") == pytest.approx(whole * INCH, abs=1e-3)


def test_a_limit_binds_only_where_there_is_such_a_part():
    """A straight head has no rise, a straight flue no shift, and nothing lies before no hearth."""
    assert change(Design(), {"opening.rise": "4 ft"})
    assert change(Design(), {"flue.sections": 4, "flue.offset_rise": "20 ft"})
    deep = {"hearth.drop": "18 in", "base.footing_thickness": "43 in"}
    assert change(Design(), {**deep, "hearth.front": "0 in"})
    assert change(Design(), {**deep, "base.footing_projection": "0 in"})
    assert change(Design(), {"lintel.bearing": "unknown"})


def test_where_there_is_no_room_at_all_it_says_so():
    low = {"site.grade": "-36 in", "base.footing_depth": "36 in"}
    with pytest.raises(InputError, match="floor is 6 1/2.*but there is no room for it: they lie"):
        change(Design(), low)


def test_a_chambers_lining_is_told_as_it_was_entered():
    """Half of a jamb of 8 in, and not twice the lining against all of it."""
    narrow = {"firebox.jamb": "8 in"}
    assert change(Design(), narrow | {"smoke_chamber.lining_thickness": "4 in"})
    with pytest.raises(InputError) as refused:
        change(Design(), narrow | {"smoke_chamber.lining_thickness": "4-1/4 in"})
    assert str(refused.value) == (
        'Smoke chamber lining thickness is 4 1/4" (108 mm), but at most 4" (102 mm) fits: half of'
        " the jamb, or of the back wall, is left for the wall beside it."
    )


def test_what_is_added_up_is_named_whole():
    """A crown of 4 in with a wash of 1, a shoulder of 96 and 4 of liner is no crown of 105 in."""
    whole = {"chimney.crown": "4 in", "chimney.wash": "1 in", "chimney.liner_above": "4 in"}
    with pytest.raises(InputError) as refused:
        change(Design(), {**whole, "chimney.shoulder": "8 ft", "flue.sections": 4})
    assert str(refused.value).startswith(
        "Crown with its wash, shoulder and standing liner is 8'-9\" (2 667 mm), but at most "
    )
    assert str(refused.value).endswith(" fits: they share the height of the flue.")


BARS = {"lintel.material": "reinforced masonry", "lintel.bar": "No. 4", "lintel.bar_center": "2 in"}


@pytest.mark.parametrize(
    ("changes", "fits"),
    [
        ({"lintel.bars": 4, "firebox.breast": "4 in", "lintel.height": "8 in"}, True),
        ({"lintel.bars": 5, "firebox.breast": "4 in", "lintel.height": "8 in"}, False),
        ({"lintel.bars": 1, "lintel.height": "1 in", "lintel.bar_center": None}, True),
        ({"lintel.bars": 1, "lintel.height": "15/16 in", "lintel.bar_center": None}, False),
        ({"lintel.bars": 1, "lintel.height": "8 in", "lintel.bar": None}, True),
    ],
)
def test_bars_lie_side_by_side_in_their_lintel(changes, fits):
    """A No. 4 bar is 1/2 in thick and wants 1 in: four in 4 in of breast, five not."""
    if fits:
        assert change(Design(), BARS | changes)
    else:
        with pytest.raises(InputError, match="Lintel bars are .* each bar wants"):
            change(Design(), BARS | changes)
