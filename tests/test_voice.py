"""The project's own voice in what a reader is told by rules and tables: short, direct, in the trade's words."""

import csv
import re

import pytest

from fireplace_calc import PACKS, assess, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.draft import findings as draft_findings
from fireplace_calc.structure.findings import register as structure_register

LONGEST = 24
"""Words of a sentence; about twenty is the aim."""
BANNED = re.compile(
    r"as far as it can be told|\bone to \d|\bcoin\b|begun one|begun step|looked into|knows no\b"
    r"|\bis not thereby\b|\bsend for\b|\blet-out\b|\btabled bearing\b",
    re.I,
)
ENGLISH = re.compile(
    r"\bstorey|\bcentre|\bcolour|\bgrey\b|\bpetrol\b|\bdraught|\bvapour|\btimber|corbell"
    r"|\bround (?:the|a|it)\b|\bcentring|\bboiler|\bmetres?\b|\blabour|\bneighbour",
    re.I,
)
"""Words that an American mason does not use; English rules may."""
WORDS = ("what", "while_working", "afterwards", "note", "why the books differ", "control")
AMERICAN = [
    *{r.function: r for p in PACKS.values() if p.name.startswith("US") for r in p.rules}.values(),
    *PACKS["Trade practice"].rules,
    *draft_findings.RULES,
    *structure_register.RULES,
]
RULES = [
    *AMERICAN,
    *(
        r
        for name, pack in PACKS.items()
        if not name.startswith("US") and name != "Trade practice"
        for r in pack.rules
    ),
]


def sentences(text):
    return [s for s in re.split(r"[.;:](?:\s|$)", text) if s.strip()]


def test_the_test_finds_what_it_looks_for():
    assert BANNED.search("have the soil looked into") and ENGLISH.search("two storeys")
    assert not ENGLISH.search("a round flue, around the liner, from the center line")
    assert sentences("One. Two; three") == ["One", "Two", "three"]


def test_rules_speak_short():
    for rule in RULES:
        for sentence in sentences(rule.why):
            assert len(sentence.split()) <= LONGEST, sentence
        assert not BANNED.search(f"{rule.title} {rule.why}"), (rule.key, rule.title, rule.why)
        assert len(rule.title.split()) <= 12, (rule.key, rule.title)


def test_american_rules_in_american_words():
    for rule in AMERICAN:
        assert not ENGLISH.search(f"{rule.title}; {rule.why}"), (rule.title, rule.why)


@pytest.mark.parametrize("pack", PACKS)
def test_notes_of_whole_designs(pack):
    """What stands beside the findings of the example designs, and the advice on structure."""
    for file in sorted((DATA / "designs").glob("*.toml")):
        result = assess(load(file), pack)
        told = [f.note for f in (*result.findings, *result.judgement, *result.structure.findings)]
        told += [*result.structure.engineer, *result.structure.remarks]
        assert any(told)
        for text in told:
            assert not BANNED.search(text), text
            if pack.startswith("US"):
                assert not ENGLISH.search(text), text


@pytest.mark.parametrize("file", sorted(DATA.glob("*.csv")), ids=lambda f: f.stem)
def test_tables_speak_short(file):
    """Sentences of the data files are shown word for word."""
    with file.open(newline="", encoding="utf-8") as opened:
        for row in csv.DictReader(opened):
            for name in WORDS:
                text = row.get(name) or ""
                assert not BANNED.search(text) and not ENGLISH.search(text), text
                for sentence in sentences(text):
                    assert len(sentence.split()) <= LONGEST, sentence
            assert "coin" not in row.values()
