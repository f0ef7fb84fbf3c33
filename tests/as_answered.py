"""What every public function answers that can be asked with what a design has, or with numbers alone, in a few figures each: of
invented designs that are drawn from a seed, in both systems of units.

Whoever changes an answer on purpose asks for it by hand in the tests of its own kind and writes the figures anew:
``.venv/bin/python tests/as_answered.py``; the change stands in ``tests/pins/as_answered.csv`` then, a row for each function. A
new function gets a row of its own.
"""

import inspect
import pkgutil
import sys
from collections.abc import Iterable
from functools import cache
from importlib import import_module
from itertools import islice
from random import Random

import numpy as np
from as_built import FIGURES, drawn, figures, with_a_set
from as_judged import drawn as answered
from held_figures import held, hold

import fireplace_calc
from fireplace_calc import PACKS, assess, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.heat.findings import ReadHeat

ASIDE = ("jupyter", "__main__", "cli", "rules.us", "rules.ca", "rules.uk", "rules.asked")
"""What starts something, reads a command line, or is asked elsewhere (``as_judged``)."""
ELSEWHERE = frozenset(
    [
        "base.places.nearest",
        "base.places.find",
        "drawing.classroom.stamped.cut_to",
        "editing.starting.start.places",
        "scene.setting.furniture.shelves.bookcase",
        "heat.cuts.behind.three_fires",
        "brickwork.seen.random_rubble.random_joints",
        "brickwork.seen.random_rubble.rubble_around",
        "drawing.plates.whole_set.sheets",
        "exports.picture_files.pictures",
        "heat.answer.heat_answer",
        "explore.together.combined.looking_for_combinations",
        "explore.liners.looking_at_liners",
        "panels.picture.turning_set.packed_set",
        "exports.cad.title_insert.told",
        "base.resources.version",
        "base.resources.made_by",
        "lessons.classroom.class_files.new_key",
        "lessons.seeds.new_seed",
        "panels.memory.settle_memory",
        "panels.memory.send_promptly",
        "panels.classroom.student_page.student",
        "panels.classroom.trainer_page.trainer",
        "panels.lesson.showing.show_lesson",
        "base.units.registry",
        "editing.visitor.served_to_visitors",
    ]
)
"""Functions that take long over such numbers or are asked again elsewhere; those that tell the day or the version, throw dice,
or open a page.
"""
SEARCHES = ("explore.", "geometry.mesh.", "panels.picture.turning.")
"""What takes long is asked of the last design alone."""
SAID = 4000
"""Numbers of an answer that are looked at, at most."""
ROUNDS = 6
"""Times that a function of numbers is asked."""
TEXTS = (
    *("", "unknown", "42 in", "3 ft 6-1/2 in", "1067 mm", "-3", "1, 2, 3", "A name", "B x 3"),
    *("a = 1\nb = [2]", "The flue is 12 in wide.", "unknown; 12", "5/8", "A\n\nB, C", "{here}"),
)
"""What somebody may write."""
SOME = 12
"""Outlines of a design."""
UNITS = (FEET_INCHES, MILLIMETRES)
DRAWN = {
    "laid": lambda: drawn(3),
    "answered": lambda: answered(4),
    "in full": lambda: answered(5),
    "again laid": lambda: drawn(10),
    "of a set": lambda: with_a_set(1),
    "of another": lambda: with_a_set(8),
    "boathouse": lambda: load(DESIGNS / "boathouse-laid.toml"),
}
"""Designs that are asked about."""


WRITTEN = ("text", "words", "told", "said", "name", "key", "item")
"""Names of words that somebody writes."""
NUMBERS = ("float", "int", "Number")
OF_ONE = {
    "Design": lambda made: made.design,
    "Geometry": lambda made: made.geometry,
    "Assessment": lambda made: made,
    "Facts": lambda made: made.facts,
    "Frame": lambda made: made.geometry.frame,
    "Framed": lambda made: made.geometry,
    "Assembly": lambda made: made.design.piece_set and set_up(made.design).assembly,
    "Readings": lambda made: made.design.piece_set and set_up(made.design).read,
    "Structure": lambda made: made.structure,
    "DraftResult": lambda made: made.draft,
    "Iterable[Finding]": lambda made: made.findings,
    "Sequence[Finding]": lambda made: made.findings,
    "Iterable[Row]": lambda made: made.takeoff,
    "Sequence[Row]": lambda made: made.takeoff,
    "ReadHeat": lambda made: ReadHeat(made.heat, FEET_INCHES),
    "PieceSet": lambda made: made.design.piece_set,
    "tuple[SetPiece, ...]": lambda made: made.design.piece_set and made.design.piece_set.pieces,
    "pack": lambda made: made.pack,
}
"""What a design has of a type."""
OF_MANY = {
    "Finding": lambda made: made.findings,
    "Row": lambda made: made.takeoff,
    "Part": lambda made: made.geometry.parts,
    "str": lambda made: TEXTS,
    "Polygon": lambda made: [ring for part in made.parts for ring in part.section()][:SOME],
    "SetPiece": lambda made: made.design.piece_set.pieces if made.design.piece_set else (),
}
"""Of these it has many, and each is asked about."""
KINDS = frozenset((*NUMBERS, *OF_ONE, *OF_MANY, "units"))
ALONE = frozenset((*NUMBERS, "units", "str"))
"""Kinds that no design has."""


@cache
def worlds():
    """Every design with what comes of it, each by a book of its own."""
    packs = tuple(PACKS)
    return tuple(assess(make(), packs[n % len(packs)]) for n, make in enumerate(DRAWN.values()))


# -- what is asked ---------------------------------------------------------------------------------
@cache
def asked():
    """By name, every public function whose arguments are all known here."""
    found = {}
    for module in pkgutil.walk_packages(fireplace_calc.__path__, "fireplace_calc."):
        name = module.name.removeprefix("fireplace_calc.")
        if "node_modules" in name or name.startswith(ASIDE):
            continue
        for own, function in vars(import_module(module.name)).items():
            takes = _takes(function) if _of_module(own, function, module.name) else None
            if takes is not None and f"{name}.{own}" not in ELSEWHERE:
                found[f"{name}.{own}"] = function, takes
    return found


def _of_module(own, function, module):
    plain = inspect.unwrap(function) if callable(function) else None
    return not own.startswith("_") and inspect.isfunction(plain) and plain.__module__ == module


def _takes(function):
    """Kind of each argument it must be given; None where one of them is nobody's here."""
    plain = inspect.unwrap(function)
    if inspect.isgeneratorfunction(plain) and "None" in str(plain.__annotations__.get("return")):
        return None
    told = []
    for one in inspect.signature(plain).parameters.values():
        if one.default is not one.empty or one.kind in (one.VAR_POSITIONAL, one.VAR_KEYWORD):
            continue
        if one.annotation == "str" and one.name in ("units", "pack"):
            told.append((one.name, one.name))
        elif one.annotation in KINDS and (one.annotation != "str" or one.name in WRITTEN):
            told.append((one.name, one.annotation))
        else:
            return None
    return told


def _number(kind, lot):
    if kind == "int":
        return lot.randint(0, 9)
    return round(lot.choice((lot.uniform(0, 1), lot.uniform(0, 1), lot.uniform(-2, 40), 300.0)), 4)


def _given(takes, made, units, lot):
    """All that a function is asked with, in turns."""
    many = next((kind for _, kind in takes if kind in OF_MANY), None)
    rounds = ROUNDS if any(kind in NUMBERS for _, kind in takes) else 1
    for turn in OF_MANY[many](made) if many else range(rounds):
        told = []
        for _, kind in takes:
            if kind in NUMBERS:
                told.append(_number(kind, lot))
            elif kind in OF_MANY:
                told.append(turn if kind == many else None)
            else:
                told.append(units if kind == "units" else OF_ONE[kind](made))
        yield told


def _answer(function, told):
    try:
        found = function(*told)
        if isinstance(found, Iterable) and not hasattr(found, "__len__"):
            found = list(islice(found, SAID))
        if hasattr(found, "to_csv"):
            found = found.to_csv()
    except Exception as why:  # what cannot be answered is an answer
        return type(why).__name__
    return found


def answers(name):
    """All that a function answers."""
    function, takes = asked()[name]
    kinds = {kind for _, kind in takes}
    designs = worlds()[-1:] if name.startswith(SEARCHES) else worlds()
    for number, made in enumerate((None,) if kinds <= ALONE else designs):
        for units in UNITS if "units" in kinds else UNITS[:1]:
            lot = Random(f"{name} {number}")
            for told in _given(takes, made, units, lot):
                if None not in told:
                    yield _answer(function, told)


def figures_of(name):
    """None where an answer is of a kind that nobody can sum."""
    try:
        with np.errstate(all="ignore"):
            return figures(answers(name))
    except TypeError:
        return None


def kept():
    """By function, the figures of the file."""
    return held("as_answered", 1)


def main():
    found = ((name, figures_of(name)) for name in sorted(asked()))
    hold(
        "as_answered", ("function", *FIGURES), (((n,), row) for n, row in found if row is not None)
    )


if __name__ == "__main__":
    sys.exit(main())
