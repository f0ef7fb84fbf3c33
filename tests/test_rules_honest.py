"""Random answers to everything the books ask: what is unknown never passes where some answer falls
short, no finding meets with a negative margin, and no note contradicts its verdict.

The answers come from the cases of the other tests, mixed: each rule is asked about facts that nobody
put together by hand.
"""

import dataclasses
import random
import re
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sampled import sampled
from test_rules_missing import SETTLED, Seen, cases, facts_of, may_be_unknown, without_one

from fireplace_calc import PACKS, assess, change
from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import tell_everything
from fireplace_calc.report.sentences import compared
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.core import Finding, Rule

MIXED = ("air", "abroad", "anchorage", "ground", "stack")
"""Records among the facts whose own fields are mixed; the rest goes over whole."""


@cache
def pool():
    """By field of the facts, or of a record in them, every value some case has."""
    found = {}
    for _, changes in cases():
        facts = facts_of(changes)
        for field in dataclasses.fields(facts):
            value = getattr(facts, field.name)
            if field.name in MIXED:
                for inner in dataclasses.fields(value):
                    path = (field.name, inner.name)
                    found.setdefault(path, []).append(getattr(value, inner.name))
            elif field.name not in ("design", "frame"):
                found.setdefault((field.name,), []).append(value)
    return {path: distinct(values) for path, values in found.items()}


def distinct(values):
    kept = []
    for value in values:
        if value not in kept:
            kept.append(value)
    return kept


@cache
def bases():
    return distinct([facts_of(changes) for _, changes in cases()][::7])


def mixed(seed):
    """Facts of one case in which about a third of all answers come from others."""
    rng = random.Random(seed)
    facts = rng.choice(bases())
    inner = {name: {} for name in MIXED}
    outer = {}
    for path, values in pool().items():
        if rng.random() < 0.3:
            (inner[path[0]] if path[0] in MIXED else outer)[path[-1]] = rng.choice(values)
    for name, told in inner.items():
        outer[name] = dataclasses.replace(getattr(facts, name), **told)
    return dataclasses.replace(facts, **outer)


@pytest.mark.parametrize("pack", sampled(PACKS, 3))
@settings(deadline=None, max_examples=40)
@given(seed=st.integers(0, 10**9))
def test_unknown_never_passes_where_an_answer_falls_short(pack, seed):
    facts = mixed(seed)
    for rule in PACKS[pack].rules:
        if rule.function(facts).verdict != FALLS_SHORT:
            continue
        read = set()
        try:
            rule.function(Seen(facts, read))
        except TypeError:  # a state's rule that hands a changed copy to the national one
            continue
        for path in sorted(read):
            if may_be_unknown(facts, path) and (rule.key, path.rpartition(".")[2]) not in SETTLED:
                found = rule.function(without_one(facts, path))
                assert found.verdict != MEETS, (rule.key, path, found)


DOUBLED = re.compile(r"\b(\w+) \1\b", re.IGNORECASE)
ASKS = re.compile(r"not known yet|nobody has", re.IGNORECASE)


def contradicts(finding: Finding) -> str:
    """What is wrong with a finding's note; nothing where it is right."""
    note, verdict = finding.note, finding.verdict
    if DOUBLED.search(note):
        return "a word twice"
    if ASKS.search(note) and verdict != NOT_CHECKED:
        return "asks what is decided"
    if verdict == NOT_CHECKED and not note:
        return "does not say what is missing"
    if note and not note.rstrip().endswith((".", "?")):
        return "no whole sentence"
    return ""


@pytest.mark.parametrize("pack", PACKS)
@settings(deadline=None, max_examples=40)
@given(seed=st.integers(0, 10**9))
def test_no_note_contradicts_its_verdict_and_no_margin_either(pack, seed):
    for finding in PACKS[pack].check(mixed(seed)):
        assert not contradicts(finding), (contradicts(finding), finding)
        if finding.margin is not None and finding.verdict == MEETS:
            assert finding.margin >= 0, finding
        if finding.margin is not None and finding.verdict == FALLS_SHORT:
            assert finding.margin <= 0, finding
            passed = finding.numbers and finding.provided > finding.required
            assert ("at most" in compared(finding)[1]) == passed, finding


@pytest.mark.parametrize("pack", PACKS)
@settings(deadline=None, max_examples=12)
@given(seed=st.integers(0, 10**9), share=st.sampled_from([0.02, 0.3]))
def test_a_rule_that_is_not_asked_again_would_say_the_same(pack, seed, share):
    """After other facts, a few or a third of them different: what comes of what was known equals
    what comes of asking every rule; back again too, and with other answers told.
    """
    book, first = PACKS[pack], mixed(seed)
    rng, second = random.Random(seed), first
    for path, values in pool().items():
        if len(path) == 1 and rng.random() < share:
            second = dataclasses.replace(second, **{path[0]: rng.choice(values)})
    third = dataclasses.replace(second, design=tell_everything(second.design))
    book.check(first)
    for facts in (second, third, first):
        again = book.check(facts)
        book.last.clear()
        assert again == book.check(facts)


@pytest.mark.parametrize("pack", sampled(PACKS, 4))
@settings(deadline=None, max_examples=20)
@given(seed=st.integers(0, 10**9), doubted=st.booleans())
def test_whoever_asks_for_less_hears_the_same(pack, seed, doubted):
    """Verdicts alone, and findings without what they rest on; a told damper larger than the firebox
    under it is doubted by all three.
    """
    book, facts = PACKS[pack], mixed(seed)
    if doubted:
        facts = dataclasses.replace(
            facts, design=change(facts.design, {"throat.damper_area": "2000 in2"})
        )
    whole = book.check(facts)
    assert book.verdicts(facts) == {finding.key: finding.verdict for finding in whole}
    some = {finding.key for finding in whole[::3]}
    assert book.verdicts(facts, some) == {f.key: f.verdict for f in whole if f.key in some}
    bare = book.check(facts, some, resting=False)
    assert [f.resting((), ()) for f in bare] == [f.resting((), ()) for f in whole if f.key in some]


def test_a_step_of_a_slider_asks_few_rules_again(monkeypatch):
    """To the default and away from it: somebody has entered both, so nothing else is assumed."""
    asked, check = [], Rule.check
    monkeypatch.setattr(Rule, "check", lambda rule, *told: asked.append(rule) or check(rule, *told))
    design = change(Design(), {"opening.extension": "6 in"})
    assess(design)
    for raised in ("0 in", "6 in", "0 in", "12 in"):
        asked.clear()
        design = change(design, {"opening.extension": raised})
        assess(design)
        assert 0 < len(asked) < len(PACKS[DEFAULT_PACK].rules) / 5


@pytest.mark.parametrize("pack", PACKS)
def test_a_finding_has_two_numbers_or_none(pack):
    findings = assess(tell_everything(Design()), pack).findings
    for finding in findings:
        both = isinstance(finding.provided, float) and isinstance(finding.required, float)
        assert finding.numbers == ((finding.provided, finding.required) if both else None)
        half = finding._replace(required=None)._replace(provided=1.0)
        assert half.numbers is None and half._replace(provided=None, required=1.0).numbers is None
