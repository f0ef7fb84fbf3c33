"""Which inputs of a design nobody has entered: defaults that stand for an answer.

An input is told when somebody entered it, in a file, by ``change`` or with a control; else it is
assumed, as long as it has a default at all. An empty list of pieces is an answer too: there are
none.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import fields
from functools import lru_cache
from itertools import compress
from operator import eq, is_
from typing import Any, TypeAlias

from fireplace_calc.base.inputs import is_record, pieces_of
from fireplace_calc.base.record import all_at
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


_records = all_at(*(group.name for group in fields(Design) if is_record(group.default)))


Held: TypeAlias = "tuple[frozenset[str], frozenset[str]]"
"""Inputs at a default, and unknown ones, by dotted key."""


@lru_cache(maxsize=128)
def _of(kind: type, unknown: bool) -> tuple[dict[str, Any], Callable[[Any], tuple[Any, ...]]]:
    """Inputs of one kind of record that can be assumed with their defaults, or those that nobody
    may know with none, by dotted key; and how to get at what they are.
    """
    group = next((f.name for f in fields(Design) if type(f.default) is kind), "")
    may = {key: None for key, spec in all_inputs().items() if spec.optional or spec.default is None}
    found = {
        key: value
        for key, value in (may if unknown else _defaults()).items()
        if key.rpartition(".")[0] == group
    }
    return found, all_at(*(key.rpartition(".")[2] for key in found))


def _held(record: Any) -> Held:
    inputs, values = _of(type(record), False)  # type: ignore[arg-type]  # a class is hashable
    at_default = frozenset(compress(inputs, map(eq, values(record), inputs.values())))
    inputs, values = _of(type(record), True)  # type: ignore[arg-type]  # a class is hashable
    return at_default, frozenset(compress(inputs, map(is_, values(record), inputs.values())))


def held_by_record(design: Design) -> tuple[Held, ...]:
    """What of each record of a design stands at a default or is unknown, told or not; a change
    leaves most of it as it was.
    """
    return (_held(design), *[record.once(_held) for record in _records(design)])


def is_assumed(design: Design, record: str, name: str) -> bool:
    """Whether one input stands at its default and nobody has entered it.

    Parameters
    ----------
    design : Design
    record, name : str
        The two halves of its dotted key.
    """
    key = f"{record}.{name}"
    return key in getattr(design, record).once(_held)[0] and key not in design.told


@lru_cache(maxsize=8)
def assumed(design: Design) -> frozenset[str]:
    """Inputs at their default that nobody has entered, by dotted key.

    >>> from fireplace_calc.editing.changes import change
    >>> "clearance.back" in assumed(Design())
    True
    >>> "clearance.back" in assumed(change(Design(), {"clearance.back": "4 in"}))
    False
    """
    return frozenset[str]().union(*[held for held, _ in held_by_record(design)]) - design.told


def tell(design: Design, keys: Iterable[str]) -> Design:
    """A copy in which these inputs are told as they stand: somebody has looked.

    >>> assumed(tell(Design(), _defaults()))
    frozenset()
    """
    return design.with_read({"told": design.told | (assumed(design) & frozenset(keys))})


def tell_everything(design: Design) -> Design:
    """A copy that rests on nothing assumed: a lesson's design, where the text tells all."""
    return tell(design, assumed(design))
