"""What stands exactly at a limit is within it: ends of inputs, lengths of texts and files, counts and weights of measured sets.

No figure is new here: each limit is the package's own, and is asked on both sides.
"""

import math
import re

import pytest
from measured_sheet import HEAD
from test_class import TASK

from fireplace_calc.base.printing import show
from fireplace_calc.base.reading import LONGEST, SI_UNIT, to_si
from fireplace_calc.base.record import WITHOUT_UNIT, checked_value
from fireplace_calc.base.units import INCH, MILLIMETRES, InputError
from fireplace_calc.editing import file_reading
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.lessons.classroom.class_files import FILE, kept_class, read_class
from fireplace_calc.pieces.fields import Fields
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.measured.set_head import read_head
from fireplace_calc.pieces.measured.sheet import MeasuredSheet
from fireplace_calc.pieces.measured.typed import read_times
from fireplace_calc.pieces.set_text import MOST_TIMES

QUANTITIES = {key: spec for key, spec in all_inputs().items() if spec.kind not in WITHOUT_UNIT}


@pytest.mark.parametrize("key", QUANTITIES)
def test_both_ends_of_an_input_are_taken_and_nothing_beyond(key):
    spec = QUANTITIES[key]
    for end, beyond in zip(spec.ends, (-math.inf, math.inf), strict=True):
        unit = SI_UNIT[spec.kind]
        assert spec.read(f"{end!r} {unit}") == end
        assert checked_value(spec, end) == end
        over = math.nextafter(end, beyond)
        with pytest.raises(InputError):
            spec.read(f"{over!r} {unit}")
        with pytest.raises(InputError):
            checked_value(spec, over)


def test_a_quantity_of_as_many_letters_as_it_may_have_is_read():
    text = "0" * (LONGEST - 4) + "1 in"
    assert len(text) == LONGEST and to_si(text, "length", "width") == INCH
    with pytest.raises(InputError, match="letters more"):
        to_si("0" + text, "length", "width")


def test_a_file_of_as_many_letters_as_it_may_have_is_read():
    text = 'name = "n"\n#'
    text += "-" * (file_reading.LARGEST - len(text))
    assert load_text(text).name == "n"
    with pytest.raises(InputError, match="larger than 256 kB"):
        load_text(text + "-")


def test_a_ratio_as_large_as_it_may_be_is_read():
    assert to_si(1e300, "ratio", "pitch") == 1e300
    with pytest.raises(InputError):
        to_si(1.0000001e300, "ratio", "pitch")


def test_a_count_from_one_to_the_most():
    assert read_times("1") == (1, 1)
    assert read_times(f"1-{MOST_TIMES}") == (1, MOST_TIMES)
    for wrong in ("0", f"{MOST_TIMES + 1}", "3-2"):
        with pytest.raises(InputError):
            read_times(wrong)


@pytest.mark.parametrize(
    ("told", "taken"),
    [("200 kg/m3", True), ("8000 kg/m3", True), ("199.9 kg/m3", False), ("8000.1 kg/m3", False)],
)
def test_a_density_at_the_ends(told, taken):
    found = read_head(MeasuredSheet({**HEAD, "density": told}), INCH)
    assert ("density" in found.table) == taken == ("density" not in found.wrong)


@pytest.mark.parametrize(("long", "taken"), [(32, True), (31, False)])
def test_a_secret_of_a_class_has_32_letters(tmp_path, long, taken):
    kept_class(tmp_path, TASK, ())
    path = tmp_path / FILE
    text = path.read_text()
    path.write_text(re.sub(r'(?m)^secret = ".*"$', f'secret = "{"5" * long}"', text))
    if taken:
        assert read_class(tmp_path).secret == "5" * long
    else:
        with pytest.raises(InputError, match="secret"):
            read_class(tmp_path)


@pytest.mark.parametrize(("corners", "taken"), [(2, 0), (3, 3), (4, 4), (200, 200), (201, 0)])
def test_a_ring_has_3_to_200_corners(corners, taken):
    ring = [[math.cos(n), math.sin(n)] for n in range(corners)]
    fields = Fields("piece F1", {"plan": ring}, INCH)
    if taken:
        assert len(fields.outline("plan")) == taken
    else:
        with pytest.raises(
            InputError, match=f"a list of 3 to 200 corners is wanted; it has {corners}."
        ):
            fields.outline("plan")


def test_a_ring_that_ends_where_it_began_has_that_corner_once():
    ring = [[0, 0], [4, 0], [4, 3], [0, 3]]
    for closed, kept in ((ring + ring[:1], 4), (ring[:3] + ring[:1], 3), (ring[:2] + ring[:1], 3)):
        assert len(Fields("piece F1", {"plan": closed}, INCH).outline("plan")) == kept


def test_tenths_of_a_millimeter_are_told_below_ten_meters():
    """In millimeters, off a fine tape."""
    assert tape_text(9.99987, MILLIMETRES, 5e-4) == "9 999.9 mm"
    assert tape_text(10.0, MILLIMETRES, 5e-4) == show(10.0, "length", MILLIMETRES) == "10.00 m"
