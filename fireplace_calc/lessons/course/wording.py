"""Bars for the words of a lesson: short sentences, prompts that ask or tell, pronouns with nouns,
each country's own spelling.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from fireplace_calc.lessons.course.records import ALIAS, COUNTRIES
from fireplace_calc.lessons.course.told_lines import Path

LONGEST = 20
"""Words of a sentence. [-]"""
PROMPTS = {("question", "ask"), ("fault", "ask"), ("try", "do"), ("step", "say")}
"""Texts that ask or tell somebody to do something: the table, and the field."""
_PROSE = (
    *("text", "from", "why", "reading", "say", "ask", "told", "cure", "do", "see", "aim"),
    *("title", "label"),
)
_TELLING = (
    "add allow ask brace bring brush build buy carry check choose clean clear close "
    "compare count cut divide do draw feel fill find go halve hang hold keep lay leave "
    "let lift light look lower make mark measure mix move multiply narrow open place pull "
    "push put raise read round set shut start step stop subtract swap take tell thin try "
    "turn use wait warm wet widen work write"
)
"""First words of a command."""
_VERBS = frozenset(_TELLING.split())
_PRONOUN = re.compile(
    r"(?:It|They|Them|These|Those|This|That|He|She)(?:'s|'re)?"
    r"(?= (?:is|are|was|were|has|have|had|can|may|must|does|do|did|will|would|should|looks|holds|"
    r"counts|makes|means|reads|reaches|asks|gives|takes|needs|stands|falls)\b)"
)
_FOREIGN = {
    COUNTRIES[0]: (
        r"(?:milli|centi)?metres?|colou?rs?(?<=our|urs)|mould\w*|draught\w*|grey|storey\w*|"
        r"corbelled"
    ),
    COUNTRIES[1]: r"(?:milli|centi)meters?|colors?|gray|plow",
    COUNTRIES[2]: (
        r"(?:milli|centi)?meters?|colors?|mold\w*|draft\w*|gray|corbeled|faucet|sidewalk|lumber"
    ),
}
_FIGURES = re.compile(r"\{[^{}]*\}")
_ENDS = re.compile(r"(?<=[.!?])\s+")
_WORDS = re.compile(r"[A-Za-z][A-Za-z'-]*|\d[\d'\"./-]*")


def texts(record: Any, path: Path = (), table: str = "") -> Iterator[tuple[Path, str, str]]:
    """Every text that a student reads: its path in the file, its table, and the text.

    Parameters
    ----------
    record : record
        A lesson, or part of one.
    path : tuple
        Where it stands in the file.
    table : str
        Name of the table it is.
    """
    if is_dataclass(record):
        for one in fields(record):
            name = ALIAS.get(one.name, one.name)
            value = getattr(record, one.name)
            if isinstance(value, str):
                if name in _PROSE:
                    yield (*path, name), table, value
            else:
                yield from texts(value, (*path, name), name)
    elif isinstance(record, tuple):
        for k, each in enumerate(record):
            yield from texts(each, (*path, k), table)
    elif table in ("verdict", "words"):
        for name, value in record.items():
            yield (*path, name), table, value


def wording_slips(path: Path, table: str, text: str, country: str) -> list[str]:
    """What a text lacks.

    Parameters
    ----------
    path : tuple
        Where it stands in the file; its last step is the field.
    table : str
        Name of the table it stands in.
    text : str
    country : str
        Whose words it is to be in.

    Returns
    -------
    list of str
        A sentence each; empty for a text as it should be.

    Examples
    --------
    >>> wording_slips(("question", 0, "ask"), "question", "Flue sections that takes", "american")
    ["'Flue sections that takes' asks or tells nothing: end it with ? or begin with a verb."]
    """
    plain = _FIGURES.sub("4", text).strip()
    sentences = [each for each in _ENDS.split(plain) if each]
    said = []
    for sentence in sentences:
        count = len(_WORDS.findall(sentence))
        if count > LONGEST:
            said.append(f"A sentence of {count} words, {LONGEST} at most: {_start(sentence)!r}.")
    if (table, path[-1]) in PROMPTS and not any(_prompts(each) for each in sentences):
        said.append(f"{_start(plain)!r} asks or tells nothing: end it with ? or begin with a verb.")
    if table != "verdict" and sentences and _PRONOUN.match(sentences[0]) and not _of_people(path):
        said.append(f"{_start(plain)!r} begins with a pronoun: name the thing.")
    if found := re.search(rf"\b(?:{_FOREIGN[country]})\b", plain, re.IGNORECASE):
        said.append(f"{found[0]!r} is not {country} spelling.")
    return said


def _of_people(path: Path) -> bool:
    """Whether a text answers a question that names somebody: *he* has its noun there."""
    return path[0] == "fault" and "options" in path


def _prompts(sentence: str) -> bool:
    first = _WORDS.findall(sentence.lower())[:1]
    return sentence.endswith("?") or bool(first and first[0] in _VERBS)


def _start(text: str) -> str:
    return text if len(text) < 48 else f"{text[:45]}..."
