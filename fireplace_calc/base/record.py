"""What every record of a design is: frozen, and checked in SI whenever one is made."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from functools import lru_cache
from operator import attrgetter
from typing import Any, NamedTuple, Self, TypeVar, cast

from fireplace_calc.base.inputs import Input, plain
from fireplace_calc.base.messages import shown
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import EXAMPLES, FACTORS, SI_UNIT, InputError

Made = TypeVar("Made")
MOST_PIECES = 100
"""A list of trim or of nearby parts takes no more pieces. [-]"""
WITHOUT_UNIT = {"count": int, "choice": str, "yes-no": bool, "text": str}
"""Kinds of input that are no quantity, and what a record holds for each."""


class Record:
    """A frozen dataclass whose fields are inputs, lists of pieces, or records of that sort.

    Making one raises ``InputError`` when a field holds what its input does not allow: one sentence
    that names the field, what it may hold, what came, and the likely cause.

    Equality, hash and text are those of any dataclass, written here once: a record says
    ``eq=False, repr=False``, or three functions more are compiled for each at every import.
    """

    __slots__ = ("_hash", "_known")
    _hash: int
    _known: dict[Callable[[Any], Any], Any]

    def __post_init__(self) -> None:
        """Hold every field to its declaration; whole numbers and numpy's become plain floats."""
        values, inputs, nested, kinds, lists = _checks(type(self))  # type: ignore[arg-type]  # a class is hashable
        value: Any
        for value, (name, kind, low, high, words, spec) in zip(values(self), inputs, strict=False):
            if value.__class__ is kind:
                if kind is float:
                    if low <= value <= high:
                        continue
                elif value in words or (spec.kind == "text" and plain(str(value))):
                    continue
            elif value is None and spec.optional:
                continue
            object.__setattr__(self, name, checked_value(spec, value))
        if nested is not None and tuple(map(type, nested(self))) != kinds:
            raise _no_record(self, kinds)
        for name, piece in lists:
            object.__setattr__(self, name, checked_pieces(name, piece, getattr(self, name)))

    def __eq__(self, other: object) -> bool:
        """Field by field, with a record of the same kind."""
        if other.__class__ is not self.__class__:
            return NotImplemented
        held_now = _names(type(self))[1]  # type: ignore[arg-type]  # a class is hashable
        return held_now(self) == held_now(other)

    def __hash__(self) -> int:
        """Of all fields together, worked out once: a change leaves most records as they are."""
        try:
            return self._hash
        except AttributeError:
            made = hash(_names(type(self))[1](self))  # type: ignore[arg-type]
            object.__setattr__(self, "_hash", made)
            return made

    def __repr__(self) -> str:
        """As it would be made."""
        names, held_now = _names(type(self))  # type: ignore[arg-type]
        held = zip(names, held_now(self), strict=True)
        return f"{type(self).__qualname__}({', '.join(f'{n}={value!r}' for n, value in held)})"

    def with_read(self, values: Mapping[str, Any]) -> Self:
        """A copy with other values, which ``Input.read`` has passed: they are not held twice.

        Parameters
        ----------
        values : mapping
            By the names of fields.
        """
        names, held_now = _names(type(self))  # type: ignore[arg-type]
        made = object.__new__(type(self))
        for name, value in zip(names, held_now(self), strict=True):
            object.__setattr__(made, name, value)
        for name, value in values.items():
            object.__setattr__(made, name, value)
        return made

    def once(self, work: Callable[[Any], Made]) -> Made:
        """What a function makes of this record, which it is asked for only once: a change leaves
        most records of a design as they are.

        Parameters
        ----------
        work : callable
        """
        try:
            known = self._known
        except AttributeError:
            known = {}
            object.__setattr__(self, "_known", known)
        if work not in known:
            known[work] = work(self)
        return cast("Made", known[work])


@lru_cache(maxsize=64)
def _names(record: type) -> tuple[tuple[str, ...], Callable[[Any], tuple[Any, ...]]]:
    """Fields of a record, and how to get at all of them at once."""
    names = tuple(field.name for field in fields(record))
    return names, all_at(*names)


class _Checks(NamedTuple):
    """What the fields of a record may hold, and how to get at all of them at once."""

    values: Callable[[Any], tuple[Any, ...]]
    inputs: tuple[tuple[str, type, Any, Any, frozenset[Any], Input], ...]
    nested: Callable[[Any], tuple[Any, ...]] | None
    kinds: tuple[type, ...]
    lists: tuple[tuple[str, type], ...]


@lru_cache(maxsize=64)
def _checks(record: type) -> _Checks:
    inputs: list[tuple[str, type, Any, Any, frozenset[Any], Input]] = []
    lists: list[tuple[str, type]] = []
    nested: dict[str, type] = {}
    for field in fields(record):
        spec, piece = field.metadata.get("input"), field.metadata.get("pieces")
        if spec is not None:
            kind = WITHOUT_UNIT.get(spec.kind, float)
            low, high = spec.ends if kind is float else (0.0, 0.0)
            words: frozenset[Any] = frozenset((True, False) if kind is bool else spec.choices)
            if kind is int:
                words = frozenset(range(int(spec.bounds[0]), int(spec.bounds[1]) + 1))
            inputs.append((field.name, kind, low, high, words, spec))
        elif piece is not None:
            lists.append((field.name, piece))
        elif is_dataclass(field.default):
            nested[field.name] = type(field.default)
    names, groups = [name for name, *_ in inputs], tuple(nested)
    return _Checks(
        all_at(*names),
        tuple(inputs),
        all_at(*groups) if groups else None,
        tuple(nested.values()),
        tuple(lists),
    )


@lru_cache(maxsize=256)
def all_at(*names: str) -> Callable[[Any], tuple[Any, ...]]:
    """How to get at all these fields of a record at once, always as a tuple."""
    if not names:
        return lambda record: ()
    many = attrgetter(*names)
    return many if len(names) > 1 else lambda record: (many(record),)


def _no_record(record: Any, kinds: tuple[type, ...]) -> InputError:
    for field in fields(record):
        value, wanted = getattr(record, field.name), type(field.default)
        if wanted in kinds and type(value) is not wanted:
            message = f"{field.name} is {shown(value)}, but a record {wanted.__name__} is wanted."
            return InputError(message, field.name, wanted.__name__, value)
    raise AssertionError("every record is of its kind")


def checked_value(spec: Input, value: Any) -> Any:
    """A value as a record keeps it: a quantity in SI, everything else as through any other door.

    Raises
    ------
    InputError
        Where the workable range would take the number in another unit, that unit is named.
    """
    value = value.item() if type(value).__module__ == "numpy" and value.ndim == 0 else value
    if value is None or spec.kind in WITHOUT_UNIT:
        return spec.read(value)
    unit = SI_UNIT[spec.kind].replace("**", "") or "a bare ratio"
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        why = f"a record holds a number in {unit}; change() reads text, {EXAMPLES[spec.kind]}."
        raise InputError(f"{spec.label} is {shown(value)}, but {why}", spec.label, unit, value)
    low, high = spec.ends
    if low <= value <= high:
        return float(value)
    taken = f"{shown(value)} {unit}" if SI_UNIT[spec.kind] else shown(value)
    why = f"{spec.allowed()} ({spec.allowed('millimetres')}) is workable; records are in SI"
    raise InputError(
        f"{spec.label} is {taken}, but {why}{_likely_unit(spec, value)}.",
        spec.label,
        spec.allowed(),
        value,
    )


def _likely_unit(spec: Input, value: float) -> str:
    """The unit in which a number would have been workable, as a guess at what was meant."""
    low, high = spec.ends
    for unit in FACTORS.get(spec.kind, ("degC", "degF")):
        try:
            if unit and low <= to_si(f"{shown(value)} {unit}", spec.kind) <= high:
                return f": perhaps {shown(value)} {unit} was meant"
        except InputError:
            continue
    return ""


def checked_pieces(name: str, piece: type, value: Any) -> tuple[Any, ...]:
    """A list of like records as a record keeps it: a tuple, of a length that can be drawn.

    Raises
    ------
    InputError
        When it is no list, too long, or holds something else.
    """
    if not isinstance(value, (tuple, list)):
        wanted = f"a list of {piece.__name__}"
        raise InputError(f"{name} is {shown(value)}, but {wanted} is wanted.", name, wanted, value)
    pieces: tuple[Any, ...] = tuple(value)
    if len(pieces) > MOST_PIECES:
        raise too_many(name)
    for number, one in enumerate(pieces, 1):
        if one.__class__ is not piece:
            came = f"{name}, piece {number}, is {shown(one)}"
            raise InputError(
                f"{came}, but a record {piece.__name__} is wanted.",
                name,
                piece.__name__,
                one,
            )
    return pieces


def too_many(name: str) -> InputError:
    """More pieces than anybody could draw or read."""
    return InputError(
        f"{name} has more than {MOST_PIECES} pieces; leave out what is not needed.",
        name,
        f"up to {MOST_PIECES} pieces",
    )
