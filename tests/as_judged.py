"""What every rule of every book says of invented designs that are drawn from a seed, in a few figures each: verdicts, figures
held against each other, notes, what is missing, and how a figure is known.

Whoever changes a rule on purpose tries both its sides by hand (``test_rules_limits`` and its neighbors) and writes the figures
anew: ``.venv/bin/python tests/as_judged.py``; the change stands in ``tests/pins/as_judged.csv`` then, a row for each rule.
"""

import sys
from functools import cache

from as_built import FIGURES, figures
from by_lot import by_lot
from held_figures import held, hold

from fireplace_calc import PACKS
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import check_every_pack
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.rules.tracing.follows import idle
from fireplace_calc.rules.tracing.known import known_facts

COUNT = 48
"""Designs that every rule is asked about."""
UNITS = {
    "length": "m", "angle": "rad", "temperature": "K", "speed": "m/s", "volume": "m3", "ratio": "",
    "flow": "m3/s", "area": "m2", "mass rate": "kg/s", "bearing": "Pa", "strength": "Pa",
}  # fmt: skip
LEAVE = ("pieces", "job", "prices", "name", "note")
"""Inputs that no rule reads, or that a set decides."""


def drawn(seed):
    """A design with a quarter, half or most of all that can be told answered."""
    share = (0.25, 0.5, 0.8)[seed % 3]
    return by_lot(seed, LEAVE, lambda key: share, _answer)


def _answer(key, spec, lot):
    if spec.optional and lot.random() < 0.12:
        return "unknown"
    if spec.kind == "choice":
        return lot.choice(spec.choices)
    if spec.kind == "yes-no":
        return lot.random() < 0.5
    if spec.kind == "count":
        return lot.randint(int(spec.low), min(int(spec.high), int(spec.low) + 12))
    if spec.kind not in UNITS:
        raise InputError("Left as it is.")
    about = spec.default or min(spec.high, spec.low + (12 * INCH if spec.kind == "length" else 1e9))
    value = min(max(about * lot.uniform(0.4, 1.8), spec.low), spec.high)
    if spec.kind == "temperature":
        value = lot.uniform(spec.low, spec.high)
    if spec.kind == "length" and lot.random() < 0.8:
        value = max(round(value / INCH * 4), 0) / 4 * INCH
    return f"{value:.6f} {UNITS[spec.kind]}"


@cache
def asked():
    """Facts of every design, what each book finds of them, and how the figures of two books are known."""
    found = []
    for seed in range(COUNT):
        made = build_geometry(drawn(seed))
        facts = gather_facts(made, 4000.0 + 100.0 * seed if seed % 4 else None)
        found.append((facts, check_every_pack(facts)))
    return found


def _told(finding):
    return (
        finding.verdict, finding.provided, finding.required, finding.margin, finding.note,
        sorted(finding.assumed), sorted(finding.missing), finding.clause, finding.unit,
        finding.title, finding.why, finding.source, finding.confidence, finding.edition,
    )  # fmt: skip


def rows(book):
    """Figures of every rule of a book, by its key."""
    said = {}
    for _facts, by_book in asked():
        for finding in by_book[book]:
            said.setdefault(finding.key, []).append(_told(finding))
    return {key: figures(told) for key, told in said.items()}


def others():
    """Facts as they are gathered, what nobody needs to tell, and how figures are known."""
    facts = [facts for facts, _ in asked()]
    made = {}
    for field in ("air", "anchorage", "ground", "stack", "abroad"):
        made[field] = figures([getattr(one, field) for one in facts])
    for name in facts[0].__dataclass_fields__:
        if name not in ("design", "frame", *made):
            made[name] = figures([getattr(one, name) for one in facts])
    made["idle"] = figures([sorted(idle(one.design)) for one in facts])
    for book in ("US IRC 2021", "Trade practice"):
        pack = PACKS[book]
        ways = [known_facts(one, pack, by_book[book]) for one, by_book in asked()]
        made[f"how {book} is known"] = figures([sorted(way.items()) for way in ways])
    return made


FACTS = "what is gathered"
CASES = (*PACKS, FACTS)


def figures_of(case):
    """By rule, or by fact."""
    return others() if case == FACTS else rows(case)


def kept():
    """By case and what of it, the figures of the file."""
    return held("as_judged")


def main():
    found = (
        ((name, what), row) for name in CASES for what, row in sorted(figures_of(name).items())
    )
    hold("as_judged", ("case", "of", *FIGURES), found)


if __name__ == "__main__":
    sys.exit(main())
