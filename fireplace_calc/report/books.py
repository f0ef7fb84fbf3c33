"""The books beside each other: what each covers, what it asks of the reader, and how it answers the
same question.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.assessment import assess_all
from fireplace_calc.base.tables import rows, rule_sources
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, book_names
from fireplace_calc.rules import PACKS, Finding, Pack
from fireplace_calc.rules.book import RANK
from fireplace_calc.rules.comparing import DOES_NOT_APPLY
from fireplace_calc.rules.core import Rule
from fireplace_calc.rules.facts import Facts

COMPUTED, ASKED = "computed", "asked of the reader"
DRAWN = "unknown takes"
"""What the help of an input says when the drawing's own figure stands in for an unknown one."""
PREFIXES = {
    "Canada": ("CA-",),
    "UK": ("UK-",),
    "Trade": ("PRA-",),
    "Germany": ("DE-",),
    "France": ("FR-",),
    "Australia": ("AU-",),
    "US IBC": ("IBC-",),
    "US IRC": (
        "FBX",
        "THR",
        "LIN",
        "SMK",
        "HTH",
        "FLU",
        "CLR",
        "ROF",
        "FND",
        "SEI",
        "CHM",
        "TWO",
        "AIR",
    ),
}
SIDE_BY_SIDE = {
    "us": "US IRC 2021",
    "canada": "Canada NBC",
    "uk": "UK ADJ",
    "practice": "Trade practice",
}
"""Column of the questions, and the pack that answers it unless another is chosen."""
COLUMNS = {"US IRC": "us", "Canada": "canada", "UK": "uk", "Trade": "practice"}
"""Start of a pack's name, and the column in which it stands; the rest share the last one."""


def books_beside(pack: str) -> dict[str, str]:
    """Column of the questions to the pack that answers it, the reader's own among them.

    Examples
    --------
    >>> list(books_beside("Canada Ontario").values())
    ['US IRC 2021', 'Canada Ontario', 'UK ADJ', 'Trade practice']
    """
    column = next((held for name, held in COLUMNS.items() if pack.startswith(name)), "others")
    return SIDE_BY_SIDE | {column: pack}


@lru_cache(maxsize=1)
def _by_field() -> dict[str, str]:
    """Name of a quantity to the key of the input that holds it: by its name in the code tables,
    else by its own.
    """
    found = {key.rpartition(".")[2]: key for key, spec in all_inputs().items() if spec.optional}
    return found | book_names()


def asked_keys(rule: Rule[Facts]) -> tuple[str, ...]:
    """Inputs that somebody has to answer before a rule can be held against a design.

    Parameters
    ----------
    rule : Rule

    Returns
    -------
    tuple of str
        Dotted keys; empty for a rule that the drawing answers by itself.
    """
    keys = (_by_field().get(name.strip()) for name in rule.quantity.split(";"))
    return tuple(key for key in keys if key is not None and _waits(key))


def _waits(key: str) -> bool:
    """Whether an input is unknown until somebody tells, and nothing drawn stands in for it."""
    spec = all_inputs()[key]
    return spec.default is None and not key.startswith("measured.") and DRAWN not in spec.help


def way(rule: Rule[Facts]) -> str:
    """Whether a rule is computed from the drawing or asked of the reader."""
    return ASKED if asked_keys(rule) else COMPUTED


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a pack covers: counts of clauses, the rows of its book that neither a rule of their own
    nor another row's answers, and those known from memory only.
    """

    pack: str
    computed: int
    asked: int
    uncovered: tuple[str, ...]
    memory: int


def _rows_of(pack: Pack) -> list[str]:
    """Rows of the book's table that are in force in a pack."""
    starts = next(found for book, found in PREFIXES.items() if pack.name.startswith(book))
    found = []
    for key, row in rule_sources().items():
        in_force = not pack.name.startswith("US IRC") or pack.edition[:4] in row.editions
        if key.startswith(starts) and in_force:
            found.append(key)
    return found


@lru_cache(maxsize=1)
def without_rule() -> dict[str, dict[str, str]]:
    """Rows of the books without a rule that can answer: the row that answers in their stead, if
    any, and why.

    Returns
    -------
    dict
        Key of the row to ``covered_by``, empty for none, and ``why``.
    """
    return {row["id"]: row for row in rows("rows_without_rule.csv")}


def coverage(pack: Pack) -> Coverage:
    """Count a pack's clauses.

    Examples
    --------
    >>> found = coverage(PACKS["US IRC 2021"])
    >>> "AIR-12" in found.uncovered  # a factory-built fireplace's own duct
    True
    """
    held = {rule.key: way(rule) for rule in pack.rules if not rule.outside}
    ways = list(held.values())
    elsewhere = {key: row["covered_by"] for key, row in without_rule().items()}
    gone = tuple(
        key for key in _rows_of(pack) if key not in held and elsewhere.get(key) not in held
    )
    return Coverage(
        pack.name,
        ways.count(COMPUTED),
        ways.count(ASKED),
        gone,
        sum(r.confidence == "memory" for r in pack.rules),
    )


def coverage_table() -> str:
    """Coverage of every pack as Markdown, for the contributors' page."""
    lines = [
        (
            "| pack | computed | asked of the reader | not covered | of these from memory,"
            " unverified |"
        ),
        "|---|---|---|---|---|",
    ]
    for pack in PACKS.values():
        c = coverage(pack)
        gone = f"{len(c.uncovered)}: {', '.join(c.uncovered)}" if c.uncovered else "0"
        lines.append(f"| {c.pack} | {c.computed} | {c.asked} | {gone} | {c.memory} |")
    return "\n".join(lines)


def uncovered_table() -> str:
    """Why a row of a book is not covered, or which other row answers it, as Markdown."""
    lines = ["| row | answered by | why |", "|---|---|---|"]
    for key, row in without_rule().items():
        lines.append(f"| {key} | {row['covered_by'] or 'nothing'} | {row['why']} |")
    return "\n".join(lines)


@dataclass(frozen=True, slots=True)
class Answer:
    """How one book answers a question: the clauses that bind, worst first; empty when none does or
    it is silent.
    """

    pack: str
    findings: tuple[Finding, ...]
    silent: bool


@dataclass(frozen=True, slots=True)
class Question:
    """One question and every book's answer."""

    text: str
    answers: tuple[Answer, ...]
    why: str


def side_by_side(design: Design, packs: dict[str, str] | None = None) -> tuple[Question, ...]:
    """The same design under several books, one question a row.

    Parameters
    ----------
    design : Design
    packs : dict, optional
        Column (``us``, ``canada``, ``uk``, ``practice``, ``others``) to the name of a pack;
        ``SIDE_BY_SIDE`` when left out.

    Returns
    -------
    tuple of Question
    """
    chosen = SIDE_BY_SIDE | (packs or {})
    said = {name: {f.key: f for f in found} for name, found in assess_all(design).items()}
    made = []
    for row in rows("questions.csv"):
        answers = []
        for column, pack in chosen.items():
            keys = row[column].split()
            found = [
                said[pack][key]
                for key in keys
                if key in said[pack] and said[pack][key].verdict != DOES_NOT_APPLY
            ]
            answers.append(
                Answer(
                    pack,
                    tuple(sorted(found, key=lambda f: RANK[f.verdict])),
                    not any(k in said[pack] for k in keys),
                )
            )
        made.append(Question(row["question"], tuple(answers), row["why the books differ"]))
    return tuple(made)


def checklist(pack: Pack) -> tuple[str, ...]:
    """Inputs of a site walk for one book: every yes, no or word that some rule of it waits for, in
    the order of the record.
    """
    wanted = {key for rule in pack.rules for key in asked_keys(rule)}
    return tuple(
        key
        for key, spec in all_inputs().items()
        if key in wanted and spec.kind in ("yes-no", "choice")
    )


if __name__ == "__main__":
    print(coverage_table())
