"""What is missing never passes: whatever a rule read on its way to a pass is taken away, and the
rule passes no more. The cases are those of the other tests of the rules.
"""

import dataclasses
from functools import cache

import pytest
import test_rules_abroad
import test_rules_ground
import test_rules_limits
import test_rules_others
import test_rules_words

from fireplace_calc import PACKS, change
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.takeoff import weight_on_footing

MEETS = "meets"
ENOUGH = {
    "exterior_air_supply": "AIR-02 AIR-03 AIR-04 AIR-05 AIR-06 AIR-07 AIR-08a AIR-09 IBC-12 IBC-13"
    " IBC-14",
    "listed_duct": "AIR-02",
    "near_outlet": "AIR-06",
    "other_intake": "AIR-11",
    "fireplace_listed": "CLR-01 CLR-02",
    "liner_listed": "CLR-20 CLR-21 CLR-26",
    "in_masonry_wall": "CLR-01 CLR-02 CLR-20 CLR-21 CLR-26",
    "upper_storey": "CHM-01",
    "changes": "CHM-04",
    "one_appliance": "CHM-08",
    "reinforced": "FND-15",
    "frost_depth": "FND-11",
    "cleanout": "CHM-11",
    "flue_area": "CA-006 UK-005",
    "bars_bend": "SEI-07 IBC-06",
    "braced": "CA-022 CA-023",
    "rooflight": "UK-013",
    "windows_near": "DE-03",
    "parapet": "FR-03",
    "to_chimney_face": "UK-023",
    "footing_contact_pressure": "FND-08 IBC-17",
    "over_contact": "CA-019",
    "over_nearby": "CA-020 ROF-02",
}
"""By what was taken away, the rules that are met whatever the answer: what is asked has been done,
asked or not, or the stricter of two figures is kept. The last three, and a measured flue, are figures of the drawing
where nobody has measured.
"""
SETTLED = test_rules_words.SETTLED | {
    (key, name) for name, keys in ENOUGH.items() for key in keys.split()
}


def cases():
    """Key and changes of every case there is."""
    for case in test_rules_words.CASES + test_rules_ground.WORDS:
        yield case[0], case[1]
    for case in test_rules_limits.CASES + test_rules_ground.LIMITS:
        yield case.values[0], case.values[1]
    for case in test_rules_abroad.CASES + test_rules_others.CASES:
        yield case.values[1], case.values[2]


@cache
def _facts(changes):
    made = build_geometry(change(Design(), dict(changes)))
    return gather_facts(made, weight_on_footing(made))


def facts_of(changes):
    """Facts of a case, made once."""
    try:
        return _facts(tuple(changes.items()))
    except TypeError:  # a list of pieces
        made = build_geometry(change(Design(), changes))
        return gather_facts(made, weight_on_footing(made))


class Seen:
    """A record that writes down which of its fields are read, through nested records too."""

    def __init__(self, record, read, at=""):
        self._record, self._read, self._at = record, read, at

    def __getattr__(self, name):
        value = getattr(self._record, name)
        self._read.add(self._at + name)
        nested = dataclasses.is_dataclass(value)
        return Seen(value, self._read, f"{self._at}{name}.") if nested else value


def without_one(record, path):
    """A record in which one field, of itself or of a record in it, is unknown."""
    name, _, rest = path.partition(".")
    return dataclasses.replace(
        record, **{name: without_one(getattr(record, name), rest) if rest else None}
    )


def may_be_unknown(record, path):
    name, _, rest = path.partition(".")
    if rest:
        return may_be_unknown(getattr(record, name), rest)
    kind = next((str(f.type) for f in dataclasses.fields(record) if f.name == name), "")
    return "None" in kind and getattr(record, name) is not None


@pytest.mark.parametrize(
    "pack", ["US IRC 2021", "Canada NBC", "UK ADJ", "Trade practice", *test_rules_others.OTHERS]
)
def test_whatever_a_rule_read_is_missing_and_it_passes_no_more(pack):
    """Every case of these tests that meets its rule, and every told thing that the rule then read,
    one after the other: a rule that does not look whether it was told would pass.
    """
    rules, tried, passed = {r.key: r for r in PACKS[pack].rules}, 0, set()
    for key, changes in cases():
        if key not in rules:
            continue
        facts, read = facts_of(changes), set()
        if rules[key].function(Seen(facts, read)).verdict != MEETS:
            continue
        for path in sorted(read):
            if may_be_unknown(facts, path):
                tried += 1
                if rules[key].function(without_one(facts, path)).verdict == MEETS:
                    passed.add((key, path.rpartition(".")[2]))
    assert passed <= SETTLED, sorted(passed - SETTLED)
    assert tried > (1 if PACKS[pack].reach else 20)
