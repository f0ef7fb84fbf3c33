"""Findings by section of their code, in the order in which the code has them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.rules import Finding

OTHER = "Other clauses"
"""Where a clause stands that no heading was given."""
NUMBER = re.compile(r"\d+")


@lru_cache(maxsize=1)
def _headings() -> tuple[tuple[str, str], ...]:
    return tuple((row["begins"], row["heading"]) for row in rows("code_sections.csv"))


@lru_cache(maxsize=1024)
def section_of(clause: str) -> str:
    """Heading of a clause: of the longest beginning that is told.

    >>> section_of("R1003.9.2(1)"), section_of("9.22.2.1")
    ('R1003 Masonry chimneys', '9.22 Fireplaces')
    """
    told = [(len(begins), name) for begins, name in _headings() if clause.startswith(begins)]
    return max(told)[1] if told else OTHER


def in_order(clause: str) -> tuple[str, ...]:
    """A key by which clauses are sorted as a book prints them: ten comes after nine.

    >>> sorted(["R1001.10", "R1001.9.1", "R1001.9"], key=in_order)
    ['R1001.9', 'R1001.9.1', 'R1001.10']
    """
    return tuple(
        NUMBER.sub(lambda found: found.group().zfill(6), part) for part in clause.split(".")
    )


def by_section(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    """Findings under the headings of their code, by clause and key.

    Parameters
    ----------
    findings : iterable of Finding

    Returns
    -------
    dict
        Heading to its findings, in the order of ``data/code_sections.csv``.
    """
    found: dict[str, list[Finding]] = {
        name: [] for name in (*(name for _, name in _headings()), OTHER)
    }
    for finding in sorted(findings, key=lambda f: (in_order(f.clause), f.key)):
        found[section_of(finding.clause)].append(finding)
    return {name: under for name, under in found.items() if under}
