"""What comes of an entry: what is taken, what is refused and in which words, what a set decides, and what follows from the
answers of *Start mine*; of invented designs that are drawn from a seed.

Whoever changes what may be entered on purpose tries both sides of it by hand (``test_consistency``, ``test_start_mine``) and
writes the figures anew: ``.venv/bin/python tests/as_entered.py``; the change stands in ``tests/pins/as_entered.csv`` then.
"""

import sys
from functools import cache
from random import Random

from as_built import FIGURES, figures
from as_judged import UNITS, drawn
from held_figures import held, hold

from fireplace_calc import PACKS, change, load
from fireplace_calc.base.printing import messages_in
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.editing.sets.deciding import decided
from fireplace_calc.editing.sets.set_sizes import offers
from fireplace_calc.editing.starting.questions import QUESTIONS
from fireplace_calc.editing.starting.start import Start

DRAWN, TRIED, STARTED = 8, 4, 40
"""Designs into which every input is entered, beside the supplied ones; entries of each; jobs begun."""
SUPPLIED = ("plain", "boathouse", "boathouse-laid")
GROUPS = tuple(dict.fromkeys(key.partition(".")[0] for key in all_inputs() if "." in key))


@cache
def designs():
    """Supplied ones, and some of random answers."""
    there = [load(DESIGNS / f"{name}.toml") for name in SUPPLIED]
    return (*there, *(drawn(seed) for seed in range(DRAWN)))


def _entries(key, spec, lot):
    """Ends, words, and some that nobody should enter."""
    if spec.kind in ("choice", "yes-no"):
        yield from (*(spec.choices or ("yes", "no")), "unknown", "perhaps")
        return
    if spec.kind == "text":
        yield "A name"
        return
    yield "unknown"
    for _ in range(TRIED):
        share = lot.choice((0.0, 1.0, 1.02, lot.random() ** 3, lot.random()))
        value = spec.low + share * (spec.high - spec.low)
        yield (
            str(round(value)) if spec.kind == "count" else f"{value:.5f} {UNITS.get(spec.kind, '')}"
        )


def _outcome(design, changes):
    """What became of a change: the sentence of its refusal, or what is otherwise since."""
    try:
        made = change(design, changes)
    except InputError as why:
        return str(why), why.allowed
    moved = [key for key in all_inputs() if value_of(made, key) != value_of(design, key)]
    return [(key, value_of(made, key)) for key in moved], sorted(decided(made).items())


def entered(group):
    """What comes of each input of a record in every design."""
    found = {}
    for key, spec in all_inputs().items():
        if key.partition(".")[0] == group:
            lot = Random(key)
            told = []
            for number, design in enumerate(designs()):
                with messages_in((FEET_INCHES, MILLIMETRES)[number % 2]):
                    told += [_outcome(design, {key: text}) for text in _entries(key, spec, lot)]
            found[key] = figures(told)
    return found


def _answers(question, units, lot):
    """Something that may be said to a question."""
    words = [word for word in question.choices(units) if word]
    if words:
        return lot.choice(words)
    number = lot.choice((lot.uniform(0.5, 12.0), lot.uniform(12.0, 60.0), lot.uniform(60.0, 400.0)))
    return lot.choice(
        (f"{number:.1f}", f"{number:.0f}", question.hint or "8 in 12", f"{number / 3:.1f} ft")
    )


def started(seed):
    """A job of one's own from answers in any order, some given twice or taken back."""
    lot = Random(f"start {seed}")
    units = (FEET_INCHES, MILLIMETRES)[seed % 2]
    start, told = Start(units=units), []
    for question in lot.sample(QUESTIONS, len(QUESTIONS)) + lot.sample(QUESTIONS, 4):
        text = "" if lot.random() < 0.15 else _answers(question, units, lot)
        try:
            start = start.answer(question.key, text, PACKS)
        except InputError as why:
            told.append(str(why))
            continue
        told.append((question.key, start.became(question) if question.key in start.answers else ""))
        told.append((start.worked_out(), [one.key for one in start.left()]))
        told.append([start.decided_by_set(one) for one in QUESTIONS])
    told.append(sorted(start.design.told))
    told += [(key, value_of(start.design, key)) for key in all_inputs()]
    told.append(sorted(offers(start.design).items()))
    return figures(told)


def figures_of(case):
    """By input, or by the number of a job."""
    if case == START:
        return {str(seed): started(seed) for seed in range(STARTED)}
    return entered(case)


START = "start mine"
CASES = (*GROUPS, START)


def kept():
    """By case and what of it, the figures of the file."""
    return held("as_entered")


def main():
    found = (
        ((name, what), row) for name in CASES for what, row in sorted(figures_of(name).items())
    )
    hold("as_entered", ("case", "of", *FIGURES), found)


if __name__ == "__main__":
    sys.exit(main())
