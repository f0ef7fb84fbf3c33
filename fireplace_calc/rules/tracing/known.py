"""How the figure of a finding is known: measured, drawn, told, assumed, or not at all."""

from __future__ import annotations

from typing import cast

from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.rules.book import Pack
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, NOT_CHECKED
from fireplace_calc.rules.core import Finding, Rule
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.tracing.follows import MEASURED, follows_from
from fireplace_calc.rules.tracing.traced import NOUGHT, Reading, Traced

TAPED, DRAWN, TOLD, ASSUMED, UNKNOWN = "measured", "drawn", "told", "assumed", "not known"
WORKED = "worked out"
"""Of draft and structure: by our own reckoning from all of these."""
MEANING = {
    TAPED: "on site",
    DRAWN: "on these sheets or worked out from them",
    TOLD: "somebody's word",
    ASSUMED: "follows from what nobody has entered",
    WORKED: "from other figures",
    UNKNOWN: "look",
}
"""What each word stands for, as a page explains it."""
READ_AS = {"frame": DRAWN, "measured": TAPED}
"""Records of which every fact is known in one way."""
WORDS = ("choice", "yes-no", "text")
"""Kinds of inputs that no drawing shows."""


def known_facts(facts: Facts, pack: Pack, findings: tuple[Finding, ...]) -> dict[str, str]:
    """How each finding that applies is known.

    Parameters
    ----------
    facts : Facts
        Of one design.
    pack : Pack
        The book it was held against.
    findings : tuple of Finding
        What that gave.

    Returns
    -------
    dict
        Key of the finding to one of the words of ``MEANING``. Where several facts make a figure it
        is the weakest of theirs.
    """
    rules = {rule.key: rule for rule in pack.rules}
    return {
        finding.key: _known(finding, rules[finding.key], facts, pack.edition)
        for finding in findings
        if finding.verdict != DOES_NOT_APPLY
    }


def known_judgement(finding: Finding) -> str:
    """The same of a finding on draft or structure."""
    if finding.verdict == NOT_CHECKED and finding.provided is None:
        return UNKNOWN
    return ASSUMED if finding.assumed else WORKED


def _known(finding: Finding, rule: Rule[Facts], facts: Facts, edition: str) -> str:
    if finding.verdict == NOT_CHECKED and finding.provided is None:
        return UNKNOWN
    if finding.assumed:
        return ASSUMED
    reading = Reading()
    rule.check(cast("Facts", Traced(facts, reading)), edition)
    read = reading.read - reading.blank
    names = {name.strip() for name in rule.quantity.split(";")}
    figures = {fact for fact in read if fact.rpartition(".")[2] in names}
    values = dict(reading.values)
    ways = {_way(fact, values.get(fact), facts) for fact in figures or read}
    first = (TOLD, DRAWN) if figures or rule.unit in ("word", "yes-no") else (DRAWN, TOLD)
    return next((way for way in (*first, TAPED) if way in ways), DRAWN)


def _way(fact: str, value: object, facts: Facts) -> str:
    """How one fact is known, if whatever it follows from has been entered."""
    decides = MEASURED.get(fact)
    if decides is not None:
        record, _, name = decides.rpartition(".")
        if getattr(getattr(facts.design, record), name) is not None:
            return TAPED if record == "measured" else TOLD
    record = fact.partition(".")[0]
    if record in READ_AS:
        return READ_AS[record]
    inputs, keys = all_inputs(), follows_from(fact)
    specs = [inputs[key] for key in keys if key in inputs]
    if len(specs) < len(keys) or (len(specs) > 1 and isinstance(value, float)):
        return DRAWN
    sizes = [spec for spec in specs if spec.kind not in WORDS and spec.default is not None]
    return DRAWN if sizes and fact not in NOUGHT else TOLD
