"""Which inputs of a design nobody has entered: defaults that stand for an answer.

An input is told when somebody entered it, in a file, by ``change`` or with a control; else it is
assumed, as long as it has a default at all. An empty list of pieces is an answer too: there are
none.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from functools import lru_cache
from itertools import compress
from operator import attrgetter, eq
from typing import Any

from fireplace_calc.base.inputs import is_record, pieces_of
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import NO_ANSWERS, all_inputs

MARK = " (assumed)"
"""Behind a value in a design file that nobody has entered."""


@lru_cache(maxsize=1)
def _defaults() -> dict[str, Any]:
    """Every input that can be assumed, and what it is then; lists by their dotted key, empty."""
    inputs = {
        key: spec.default
        for key, spec in all_inputs().items()
        if spec.default is not None and key not in NO_ANSWERS
    }
    lists = {
        f"{group.name}.{name}": ()
        for group in fields(Design)
        if is_record(group.default)
        for name in pieces_of(group.default)
    }
    return inputs | lists


@lru_cache(maxsize=1)
def _values() -> attrgetter[tuple[Any, ...]]:
    return attrgetter(*_defaults())


@lru_cache(maxsize=8)
def assumed(design: Design) -> frozenset[str]:
    """Inputs at their default that nobody has entered, by dotted key.

    >>> from fireplace_calc.editing.changes import change
    >>> "clearance.back" in assumed(Design())
    True
    >>> "clearance.back" in assumed(change(Design(), {"clearance.back": "4 in"}))
    False
    """
    defaults = _defaults()
    stands = map(eq, _values()(design), defaults.values())
    return frozenset(compress(defaults, stands)) - design.told


def tell(design: Design, keys: Iterable[str]) -> Design:
    """A copy in which these inputs are told as they stand: somebody has looked.

    >>> assumed(tell(Design(), _defaults()))
    frozenset()
    """
    return design.with_read({"told": design.told | (assumed(design) & frozenset(keys))})


def tell_everything(design: Design) -> Design:
    """A copy that rests on nothing assumed: a lesson's design, where the text tells all."""
    return tell(design, assumed(design))
