"""The same length told in inches, or in the millimetres a book of inches prints beside it, gives the
same verdict. No list of limits is kept here: whatever a rule compares a length with is written down
while the cases of the other tests run, then every rule is asked at that length in both units.
"""

import dataclasses
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sampled import sampled
from test_rules_missing import cases, facts_of

from fireplace_calc import PACKS, assess, change
from fireplace_calc.base.tolerances import LIMIT_SLACK
from fireplace_calc.base.units import INCH, MM
from fireplace_calc.design.records import Design
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, Printed, exceeds, inches, reaches

BOOKS = [name for name in PACKS if name.startswith(("US IRC", "Trade"))]


class Spied(Printed):
    """A length that writes down what it is compared with, even after something was taken off."""

    def __new__(cls, value, path, seen):
        made = super().__new__(cls, value)
        made.metric, made.path, made.seen = (), path, seen
        return made

    def _note(self, other):
        self.seen.add((self.path, float(other)))

    def __lt__(self, other):
        self._note(other)
        return float(self) < other

    def __le__(self, other):
        self._note(other)
        return float(self) <= other

    def __gt__(self, other):
        self._note(other)
        return float(self) > other

    def __ge__(self, other):
        self._note(other)
        return float(self) >= other

    def __sub__(self, other):
        return Spied(float(self) - other, self.path, self.seen)

    __hash__ = float.__hash__


class Spying:
    """A record whose numbers are spied on, through nested records and lists of pieces too."""

    def __init__(self, record, seen, scale=1.0, at=()):
        self._record, self._seen, self._scale, self._at = record, seen, scale, at

    def __getattr__(self, name):
        return self._wrapped(getattr(self._record, name), (*self._at, name))

    def _wrapped(self, value, path):
        if type(value) is float:
            return Spied(value * self._scale, path, self._seen)
        if isinstance(value, tuple):
            return tuple(self._wrapped(v, (*path, k)) for k, v in enumerate(value))
        nested = dataclasses.is_dataclass(value)
        return Spying(value, self._seen, self._scale, path) if nested else value


def put(record, path, value):
    """A record with one number of it, or of a record in it, changed."""
    first, *rest = path
    first = {"height": "standard_height", "clear_height": "standard_height"}.get(
        first, first
    )  # of an opening that is not raised
    if isinstance(record, tuple):
        return tuple(
            (put(v, rest, value) if rest else value) if k == first else v
            for k, v in enumerate(record)
        )
    old = getattr(record, first)
    return dataclasses.replace(record, **{first: put(old, rest, value) if rest else value})


def close(a, b):
    return abs(a - b) <= 3 * LIMIT_SLACK * max(abs(a), abs(b))


TRIM = {"surround.trim": [{"name": "shelf", "distance": "9 in", "projection": "3 in"}]}


def compared(rule, facts, scale):
    """Path and limit, in sixteenths of an inch, of all a rule compares when every number of the
    facts is made a little larger or smaller.
    """
    seen, found = set(), set()
    try:
        rule.function(Spying(facts, seen, scale))
    except TypeError:  # a state's rule that hands a changed copy to the national one
        return found
    for path, other in seen:
        sixteenths = round(other / INCH * 16)
        if "frame" not in path and sixteenths > 0 and close(sixteenths / 16 * INCH, other):
            found.add((path, sixteenths))
    return found


@cache
def limits(pack):
    """Key, path and limit [1/16 in] of all a book's comparisons with a figure of its own, to the
    changes of a case. What moves when the facts move is another fact and no figure of the book.
    """
    rules, found = {r.key: r for r in PACKS[pack].rules}, {}
    for key, changes in [*cases(), ("CLR-08", TRIM), ("PRA-18", TRIM)]:
        if key in rules:
            facts = facts_of(changes)
            fixed = compared(rules[key], facts, 1.001) | compared(rules[key], facts, 0.999)
            for path, limit in fixed & compared(rules[key], facts, 1.0):
                found.setdefault((key, path, limit), changes)
    return found


@pytest.mark.parametrize("pack", sampled(BOOKS, 2))
def test_inches_and_printed_millimetres_give_one_verdict(pack):
    """IRC's own SI figures are whole millimetres, tenths under an inch (R1001.5: 1/4 in, 6.4 mm)."""
    wrong, tried = [], 0
    for (key, path, limit), changes in limits(pack).items():
        facts = facts_of(changes)
        rule = next(r for r in PACKS[pack].rules if r.key == key)
        at = rule.function(put(facts, path, limit / 16 * INCH)).verdict
        for size in inches(limit / 16).metric:
            tried += 1
            if rule.function(put(facts, path, size)).verdict != at:
                wrong.append((key, ".".join(map(str, path)), limit / 16, size / MM, at))
    assert not wrong, wrong
    assert tried > 10


ARRESTER = {"chimney.arrester": True}
AIR = {"air.exterior_air_supply": True, "air.listed_duct": False, "air.outlet_place": "hearth"}
CLEANOUT = {"stack.cleaned_through_opening": False}
D2 = {"site.seismic": "D2", "chimney.location": "exterior"}
AT_THE_LIMIT = [
    ("FBX-04", {"firebox.joint": "6.4 mm"}),
    ("CHM-04", {"stack.distance_change_to_penetration": "152 mm"}),
    ("CHM-12", CLEANOUT | {"stack.lowest_inlet_minus_cleanout_top": "152 mm"}),
    ("CHM-13", CLEANOUT | {"stack.cleanout_height": "152 mm"}),
    ("SEI-11", D2 | {"anchorage.strap_hook_extension": "152 mm"}),
    ("CLR-21", {"chimney.location": "exterior", "clearance.chimney": "25 mm"}),
    ("AIR-06", AIR | {"air.duct_clearance": "25 mm"}),
    ("AIR-08a", AIR | {"air.outlet_distance_to_opening": "610 mm"}),
    ("FND-15", {"ground.reinforced": True, "ground.rebar_cover_earth": "76 mm"}),
    ("AIR-05", AIR | {"air.intake_screen_mesh": "6.4 mm"}),
    ("ROF-05", ARRESTER | {"chimney.mesh": "9.5 mm"}),
]


def found(key, changes):
    """A finding of the 2021 edition."""
    done = assess(change(Design(), changes), "US IRC 2021")
    return next(f for f in done.findings if f.key == key)


@pytest.mark.parametrize(("key", "changes"), AT_THE_LIMIT)
def test_the_printed_millimetres_are_enough_and_leave_nothing_to_spare(key, changes):
    """SI figures of the International Residential Code, 2021."""
    finding = found(key, changes)
    assert (finding.verdict, finding.margin) in {(MEETS, 0.0), (MEETS, None)}


def test_a_deep_mantel_is_held_to_its_projection_at_6_in_told_either_way():
    """R1001.11 exception 4: no more than an eighth of the distance between 6 and 12 in."""
    for distance in ("6 in", "152 mm", "12 in", "305 mm"):
        shelf = {"name": "shelf", "distance": distance, "projection": "300 mm"}
        assert found("CLR-08", {"surround.trim": [shelf]}).verdict == FALLS_SHORT, distance


@given(st.integers(1, 1600), st.sampled_from([-1, 1]))
def test_only_the_printed_figure_is_the_limit(sixteenths, side):
    """A tenth of a millimeter to either side is what it is."""
    limit = inches(sixteenths / 16)
    for size in limit.metric:
        assert reaches(size, limit) and reaches(limit, size) and not exceeds(size, limit)
        near = size + side * 0.03 * MM
        if not any(close(near, other) for other in (limit, *limit.metric)):
            assert reaches(near, limit) == (near > limit), near
            assert reaches(limit, near) == (near < limit), near
