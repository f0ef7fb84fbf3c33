"""The books beside each other: coverage that adds up, questions that meet their clauses, a
checklist whose ticks count.
"""

import ast
import inspect
import re
import textwrap
from pathlib import Path

import pytest

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.assessment import assess_all
from fireplace_calc.base.tables import rows, rule_sources
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.report.books import (
    ASKED,
    COMPUTED,
    PREFIXES,
    SIDE_BY_SIDE,
    asked_keys,
    books_beside,
    checklist,
    coverage,
    side_by_side,
    way,
    without_rule,
)
from fireplace_calc.report.sentences import answer
from fireplace_calc.report.tables import coverage_table, side_by_side_table
from fireplace_calc.rules.ca.book import NBC
from fireplace_calc.rules.others.australia import AUSTRALIA
from fireplace_calc.rules.others.building_code import IBC
from fireplace_calc.rules.others.france import FRANCE
from fireplace_calc.rules.others.germany import GERMANY
from fireplace_calc.rules.practice import PRACTICE
from fireplace_calc.rules.uk.book import ADJ
from fireplace_calc.rules.us.book import IRC

BOATHOUSE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml")


@pytest.mark.parametrize("pack", PACKS.values(), ids=lambda p: p.name)
def test_coverage_adds_up(pack):
    found = coverage(pack)
    outside = {rule.key for rule in pack.rules if rule.outside}
    assert found.computed + found.asked + len(outside) == len(pack.rules) == len(set(pack.keys))
    assert set(found.uncovered) & set(pack.keys) == outside
    assert set(found.uncovered) <= set(rule_sources())
    assert found.memory == sum(rule_sources()[k].source.confidence == "memory" for k in pack.keys)


def test_the_us_code_is_covered_but_for_factory_built_fireplaces():
    """147 rows; two are of 2012 and earlier, the others stand in at least one edition and none is
    missing from its own. Outside stay the factory-built fireplace's duct, and a figure's note of
    2015 that no sentence asks.
    """
    for name, pack in PACKS.items():
        if name.startswith("US IRC"):
            note = {"CLR-12"} if pack.edition.startswith("2015") else set()
            assert set(coverage(pack).uncovered) == {"AIR-12", *note}, name


def _in_force(key):
    """Packs whose book has a row of this key in force, with the rules that can answer."""
    family = next(name for name, starts in PREFIXES.items() if key.startswith(starts))
    for name, pack in PACKS.items():
        editions = rule_sources()[key].editions
        if name.startswith(family) and (family != "US IRC" or pack.edition[:4] in editions):
            yield pack, {rule.key for rule in pack.rules if not rule.outside}


def test_every_published_row_has_a_rule_or_a_reason():
    """All rows of all books. A row that another answers names one that every pack holds; what
    nothing answers is told as not covered by each pack in whose book it is in force.
    """
    missing = set()
    for key in rule_sources():
        held = [key in rules for _, rules in _in_force(key)]
        if not held or not all(held):
            missing.add(key)
    assert missing == set(without_rule())
    for key, row in without_rule().items():
        assert len(row["why"]) > 10
        for pack, rules in _in_force(key):
            if row["covered_by"]:
                assert row["covered_by"] in rules, key
                assert key not in coverage(pack).uncovered
            else:
                assert (key in coverage(pack).uncovered) == (key not in rules)
        assert not row["covered_by"] or row["covered_by"] in rule_sources()


@pytest.mark.parametrize(
    "book", (IRC, NBC, ADJ, PRACTICE, IBC, GERMANY, FRANCE, AUSTRALIA), ids=lambda book: book.name
)
def test_a_rule_that_can_only_say_it_does_not_apply_counts_as_not_covered(book):
    """Read off the rules' own text, which knows nothing of what they were filed as."""
    for rule in book.rules:
        body = ast.parse(textwrap.dedent(inspect.getsource(rule.function)))
        answers = [node.value for node in ast.walk(body) if isinstance(node, ast.Return)]
        only = all(
            isinstance(answer, ast.Call) and getattr(answer.func, "id", "") == "not_applicable"
            for answer in answers
        )
        assert rule.outside == only, rule.key


def test_what_a_rule_waits_for():
    rules = {
        r.key: r
        for name in ("US IRC 2021", "Canada NBC", "Trade practice")
        for r in PACKS[name].rules
    }
    assert (
        way(rules["FND-01"]) == COMPUTED
        and way(rules["FLU-10"]) == COMPUTED
        and way(rules["CA-006"]) == COMPUTED
    )
    assert (
        asked_keys(rules["AIR-09"]) == ("air.outlet_closable", "air.ember_guard")
        and way(rules["AIR-09"]) == ASKED
    )
    assert asked_keys(rules["SEI-06"]) == ("anchorage.tie_spacing_vertical",) and asked_keys(
        rules["PRA-02"]
    ) == ("abroad.centre_line",)
    assert way(rules["FND-08"]) == COMPUTED, "the weight as drawn stands in"


def test_every_question_names_clauses_that_are_there():
    columns = {
        "us": "US IRC 2021",
        "canada": "Canada Ontario",
        "uk": "UK ADJ",
        "practice": "Trade practice",
    }
    used = set()
    for row in rows("questions.csv"):
        assert sum(bool(row[column]) for column in columns) >= 1
        for column, pack in columns.items():
            for key in row[column].split():
                assert key in PACKS[pack].keys, (row["question"], key)
                assert key not in used, "one clause, one question"
                used.add(key)
        for key in row["others"].split():
            assert any(key in pack.keys for pack in PACKS.values() if pack.reach), key
            assert key not in used
            used.add(key)
    assert len(used) >= 95


@pytest.mark.parametrize("pack", PACKS)
def test_the_readers_own_book_stands_beside_the_others(pack):
    """Whatever code the reader has chosen, its column says what its own findings say."""
    chosen = books_beside(pack)
    assert pack in chosen.values() and len(chosen) == (5 if PACKS[pack].reach else 4)
    result = assess(BOATHOUSE, pack)
    table = side_by_side_table(result)
    assert list(table.columns) == ["Question", *chosen.values(), "Why they differ"]
    own = {f.key: f for f in result.findings}
    said = [a for q in side_by_side(BOATHOUSE, chosen) for a in q.answers if a.pack == pack]
    assert all(f == own[f.key] for a in said for f in a.findings)
    assert sum(not a.silent for a in said) >= 2, "it answers some of the questions"


def test_side_by_side_is_what_each_book_says():
    every = assess_all(BOATHOUSE)
    for question in side_by_side(BOATHOUSE):
        assert [a.pack for a in question.answers] == list(SIDE_BY_SIDE.values())
        for a in question.answers:
            for f in a.findings:
                own = next(x for x in assess(BOATHOUSE, a.pack).findings if x.key == f.key)
                assert own == f == next(x for x in every[a.pack] if x.key == f.key)
                assert f.verdict != "does not apply"


def test_every_pack_at_once_is_each_pack_by_itself():
    for design in (
        Design(),
        BOATHOUSE,
        change(BOATHOUSE, {"seismic_design_category": "C", "chimney_location": "exterior"}),
    ):
        every = assess_all(design)
        assert list(every) == list(PACKS)
        for name, found in every.items():
            assert found == assess(design, name).findings


def test_a_tick_counts_and_no_tick_is_not_checked():
    for pack in PACKS.values():
        for key in checklist(pack):
            spec = all_inputs()[key]
            assert spec.default is None and spec.kind in ("yes-no", "choice")
    before = {f.key: f.verdict for f in assess(Design(), "Trade practice").findings}
    assert before["PRA-02"] == before["PRA-04"] == "not checked"
    ticked = change(Design(), dict.fromkeys(checklist(PACKS["Trade practice"]), "yes"))
    after = {f.key: f.verdict for f in assess(ticked, "Trade practice").findings}
    assert after["PRA-02"] == after["PRA-04"] == "meets"


def test_the_tables_read_well():
    result = assess(BOATHOUSE)
    table = side_by_side_table(result)
    assert list(table.columns) == ["Question", *SIDE_BY_SIDE.values(), "Why they differ"] and len(
        table
    ) == len(rows("questions.csv"))
    flue = table[table["Question"] == "Flue for the opening"].iloc[0]
    assert (
        "✓" in flue["US IRC 2021"]
        and "✗ falls short" in flue["Canada NBC"]
        and "CA-006" in flue["Canada NBC"]
    )
    assert table[table["Question"] == "Firebox depth"].iloc[0]["UK ADJ"] == "silent"
    metric = side_by_side_table(result, "millimetres")
    assert "mm" in metric[metric["Question"] == "Firebox depth"].iloc[0]["US IRC 2021"]
    assert set(coverage_table()["Pack"]) == set(PACKS)
    assert all(answer(a) for q in side_by_side(BOATHOUSE) for a in q.answers)


def test_no_rule_speaks_like_a_code():
    """Own words: short reasons, no 'shall', no section cross-references in the text."""
    for pack in PACKS.values():
        for rule in pack.rules:
            assert not re.search(
                r"\bshall\b|in accordance with|not less than|provided that",
                f"{rule.why} {rule.title}",
                re.I,
            ), rule.key
            assert len(rule.why.split()) <= 32, rule.key
