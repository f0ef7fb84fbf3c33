"""Records hold their fields to their declarations when they are made, by whatever door; a message is one line."""

import itertools
import math
import re
from dataclasses import FrozenInstanceError, fields, replace

import numpy as np
import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.inputs import LONGEST_TEXT, Input, is_record
from fireplace_calc.base.record import MOST_PIECES, Record
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.fire import Fire
from fireplace_calc.design.firebox import Firebox
from fireplace_calc.design.opening import Hearth, Opening
from fireplace_calc.design.records import Design
from fireplace_calc.design.site import Site
from fireplace_calc.design.smoke_path import Flue
from fireplace_calc.design.surround import Surround, Trim
from fireplace_calc.design.surroundings import House, Nearby, Roof
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of

INPUTS = {key: spec for key, spec in all_inputs().items() if "." in key}
RANGES = {key: spec for key, spec in INPUTS.items() if spec.low is not None}


def made(key, value):
    """A record with one field set, and no other door than its own."""
    group, _, name = key.partition(".")
    return getattr(replace(getattr(Design(), group), **{name: value}), name)


GROUPS = sorted({key.partition(".")[0] for key in INPUTS})


def of_group(inputs, group):
    return {key: spec for key, spec in inputs.items() if key.startswith(f"{group}.")}


@pytest.mark.parametrize("group", GROUPS)
def test_both_ends_of_a_range_are_taken_and_nothing_beyond(group):
    for key, spec in of_group(RANGES, group).items():
        step = 1 if spec.kind == "count" else 0.01 * (spec.high - spec.low)
        assert made(key, spec.low) == spec.low and made(key, spec.high) == spec.high
        for value in (spec.low - step, spec.high + step, math.nan, math.inf, -math.inf):
            with pytest.raises(InputError, match=re.escape(spec.label)):
                made(key, value)


@pytest.mark.parametrize("group", GROUPS)
def test_what_is_of_another_kind_is_refused(group):
    for key, spec in of_group(INPUTS, group).items():
        if spec.optional:
            assert made(key, None) is None
        else:
            with pytest.raises(InputError, match="cannot be unknown"):
                made(key, None)
        for value in (object(), [], {}, 3 + 4j, b"36 in", "a\nb", range(3)):
            with pytest.raises(InputError, match=re.escape(spec.label)):
                made(key, value)


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda: Opening(width=36), ["Opening width is 36 m", "1'-6\"", "457 mm", "36 in was"]),
        (lambda: Opening(width=914), ["914 m,", "914 mm was meant"]),
        (lambda: Opening(width=-1), ["-1 m", "workable"]),
        (lambda: Site(winter=20), ["20 K", "20 degC was meant"]),
        (lambda: Fire(moisture=20), ["Wood moisture is 20,", "20 % was meant"]),
        (lambda: House(exhaust=50), ["50 m3/s", "50 L/s was meant"]),
        (lambda: Opening(width="36 in"), ["'36 in'", "a number in m", "change() reads text"]),
        (lambda: Opening(width=True), ["True", "a number in m"]),
        (lambda: Opening(width=10**9999), ["beyond all bounds", "workable"]),
        (lambda: Opening(head="gothic"), ["gothic", "straight, segmental"]),
        (lambda: Flue(sections=12.5), ["12.5", "whole number"]),
        (lambda: Design(opening=36), ["opening is 36", "Opening is wanted"]),
        (lambda: Design(opening=None), ["opening is None", "Opening is wanted"]),
        (lambda: Design(hearth=Opening()), ["hearth is Opening", "Hearth is wanted"]),
        (lambda: Surround(trim="mantel"), ["trim is 'mantel'", "list of Trim"]),
        (lambda: Surround(trim=[Trim(), 3]), ["trim, piece 2", "is 3"]),
        (lambda: Roof(nearby=(Trim(),)), ["nearby, piece 1", "Nearby is wanted"]),
        (lambda: Surround(trim=[Trim()] * (MOST_PIECES + 1)), ["more than 100 pieces"]),
        (lambda: Design(name="n" * (LONGEST_TEXT + 1)), ["Name is 'nnn", "5000 letters"]),
    ],
)
def test_a_record_says_what_is_wrong_and_the_likely_cause(make, says):
    with pytest.raises(InputError) as caught:
        make()
    for words in says:
        assert words in str(caught.value)
    assert "\n" not in str(caught.value) and len(str(caught.value)) < 400


def test_whole_numbers_and_those_of_numpy_become_plain_floats():
    """They are written to a file and read back as what they are."""
    design = Design(
        opening=Opening(width=1, standard_height=np.float64(1.0)), flue=Flue(sections=np.int64(12))
    )
    assert type(design.opening.width) is type(design.opening.standard_height) is float
    assert type(design.flue.sections) is int
    assert load_text(text_of(design)) == design


@pytest.mark.parametrize(
    ("word", "means"),
    [("yes", True), (" YES ", True), ("true", True), ("no", False), ("False", False)],
)
def test_yes_is_yes_and_no_is_no(word, means):
    assert change(Design(), {"chimney.rain_cap": word}).chimney.rain_cap is means
    for other in ("y", "1", "on", 1, 0):
        with pytest.raises(InputError, match="yes or no is wanted"):
            change(Design(), {"chimney.rain_cap": other})


def test_lists_become_tuples_that_can_be_kept():
    assert Surround(trim=[Trim()]).trim == (Trim(),)
    assert hash(Roof(nearby=[Nearby()])) == hash(Roof(nearby=(Nearby(),)))
    assert len(Surround(trim=[Trim()] * MOST_PIECES).trim) == MOST_PIECES


def test_the_slack_of_a_range_is_the_one_of_its_texts():
    """96 in typed as 2438.4 mm is still 96 in: a float above it is taken, a micrometer is not."""
    assert Opening(width=math.nextafter(96 * INCH, 9)).width > 96 * INCH
    with pytest.raises(InputError):
        Opening(width=96 * INCH + 1e-6)


def test_a_design_that_does_not_hold_together_is_not_assessed():
    """Each record is in order, but the throat is deeper than the firebox."""
    design = Design(firebox=Firebox(depth=10 * INCH, lining_thickness=2 * INCH))
    deep = replace(design, throat=replace(design.throat, depth=24 * INCH))
    with pytest.raises(InputError, match="Throat depth"):
        assess(deep)
    assert assess(replace(Design(), hearth=Hearth(front=0.5))).findings


def test_every_group_of_the_design_is_such_a_record():
    for name in Design.__dataclass_fields__:
        group = getattr(Design(), name)
        if is_record(group):
            with pytest.raises(InputError, match=name):
                replace(Design(), **{name: 7})


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"opening.width": "36\n37 in"}, "36\\n37 in"),
        ({"flue.size": "a\u2028b"}, "plain text"),
        ({"opening.head": "x\ty\n" * 500}, "only these words"),
        ({"roof.nearby": [{"level": "5 parsec"}]}, "Anything within reach, piece 1: Nearby level"),
        ({"surround.trim": [{}, {"distance": "9 ft"}]}, "Mantel and trim, piece 2: Trim distance is 9 ft"),
        ({"surround.trim": [{}, {"width": "9 ft"}]}, "Mantel and trim, piece 2, has no 'width'"),
        ({"surround.trim": [{}] * 5000}, "more than 100 pieces"),
        ({"surround.trim": itertools.repeat({})}, "more than 100 pieces"),
        ({"surround.trim": b"mantel"}, "a list of tables"),
    ],
)  # fmt: skip
def test_a_message_is_one_line_whatever_came(changes, says):
    with pytest.raises(InputError) as caught:
        change(Design(), changes)
    message = str(caught.value)
    assert says in message
    assert message.isprintable() and len(message) < 650


def test_a_message_keeps_its_beginning_and_its_end():
    message = str(InputError("begin " + "x" * 9000 + "\n\x00 end"))
    assert message.startswith("begin xxx") and message.endswith("x ? end") and len(message) < 650


def test_a_copy_with_values_that_were_read_is_the_copy_of_dataclasses():
    """Two ways to the same record; the quick one leaves the first record as it was."""
    before = Design()
    values = {"width": 1.5, "head": "segmental"}
    made = before.opening.with_read(values)
    assert made == replace(before.opening, **values) and hash(made) == hash(replace(made))
    assert before == Design() and type(made) is Opening
    assert before.with_read({"opening": made}) == replace(before, opening=made)
    with pytest.raises(FrozenInstanceError):
        made.width = 2.0


@pytest.mark.parametrize(("low", "high"), [(None, None), (1.0, None), (None, 1.0)])
def test_what_lacks_an_end_has_no_range(low, high):
    with pytest.raises(TypeError, match="Roof deck is no number"):
        _ = Input("Roof deck", "length", 0.0, low, high).bounds


def test_a_range_has_both_its_ends_and_the_slack_of_a_float():
    """A billionth of the greater end, whichever it is, on both sides."""
    for low, high, slack in ((1.0, 5.0, 5e-9), (-8.0, 2.0, 8e-9), (0.0, 3.0, 3e-9)):
        one = Input("Roof deck", "length", low, low, high)
        assert one.bounds == (low, high)
        least, most = one.ends
        assert low - least == pytest.approx(slack, rel=1e-3)
        assert most - high == pytest.approx(slack, rel=1e-3)


@pytest.mark.parametrize("group", GROUPS)
def test_records_that_hold_alike_are_alike_and_their_text_makes_them_again(group):
    """As with any dataclass, although ``Record`` has it written once for all of them."""
    one = getattr(Design(), group)
    kind = type(one)
    assert {kind.__eq__, kind.__hash__, kind.__repr__} == {
        Record.__eq__,
        Record.__hash__,
        Record.__repr__,
    }
    twin = kind()
    assert twin == one and hash(twin) == hash(one) and twin is not one
    told = ", ".join(f"{field.name}={getattr(one, field.name)!r}" for field in fields(kind))
    assert repr(one) == f"{kind.__name__}({told})"
    assert eval(repr(one), {kind.__name__: kind}) == one
    for key, spec in of_group(RANGES, group).items():
        name = key.partition(".")[2]
        other = spec.low if getattr(one, name) == spec.high else spec.high
        changed = one.with_read({name: other})
        assert changed != one and hash(changed) != hash(one)
    assert one != Design() and one.__eq__(None) is NotImplemented


def test_a_copy_with_another_value_does_not_keep_the_hash_of_the_first():
    hearth = Hearth()
    kept = hash(hearth)
    other = hearth.with_read({"front": 0.6})
    assert hash(other) != kept and hash(other.with_read({"front": hearth.front})) == kept
    assert {hearth: 1}[Hearth()] == 1


def test_an_arrester_is_spelled_either_way():
    """As books have it, in the name a book gives it and in the design's own."""
    made = change(Design(), {"chimney.arrestor": "yes", "arrestor_free_area": "90 in2"})
    assert made.chimney.arrester and made.chimney.arrester_area == pytest.approx(90 * INCH**2)
    with pytest.raises(InputError, match="There is no input named chimney.arrestor_hat; did you"):
        change(Design(), {"chimney.arrestor_hat": "yes"})
