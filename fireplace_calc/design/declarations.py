"""How a record declares its inputs, each in one call: what a field holds, its range, its words.

As with ``dataclasses.field`` the return types tell what the record holds, not what the call gives
back. A field that may be unknown has to be annotated with ``None``, or no type checker passes it.
"""

from __future__ import annotations

from dataclasses import field
from typing import Any, Literal, TypeVar, overload

from fireplace_calc.base.inputs import Input
from fireplace_calc.base.reading import to_si


def _declared(spec: Input) -> Any:
    return field(default=spec.default, metadata={"input": spec})


@overload
def quantity(
    kind: str,
    label: str,
    default: str,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: Literal[False] = False,
) -> float: ...
@overload
def quantity(
    kind: str,
    label: str,
    default: str | None,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: bool = False,
) -> float | None: ...
def quantity(
    kind: str,
    label: str,
    default: str | None,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: bool = False,
) -> float | None:
    """Declare a number with a unit. A default of ``None`` means unknown until told."""
    declared: float | None = _declared(
        Input(
            label,
            kind,
            None if default is None else to_si(default, kind, label),
            to_si(low, kind, label),
            to_si(high, kind, label),
            (),
            help,
            book,
            optional or default is None,
        )
    )
    return declared


@overload
def length(
    label: str,
    default: str,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: Literal[False] = False,
) -> float: ...
@overload
def length(
    label: str,
    default: str | None,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: bool = False,
) -> float | None: ...
def length(
    label: str,
    default: str | None,
    low: str,
    high: str,
    help: str,
    book: str = "",
    optional: bool = False,
) -> float | None:
    """Declare a length."""
    return quantity("length", label, default, low, high, help, book, optional)


@overload
def count(
    label: str,
    default: int,
    low: int,
    high: int,
    help: str,
    book: str = "",
    optional: Literal[False] = False,
) -> int: ...
@overload
def count(
    label: str,
    default: int | None,
    low: int,
    high: int,
    help: str,
    book: str = "",
    optional: bool = False,
) -> int | None: ...
def count(
    label: str,
    default: int | None,
    low: int,
    high: int,
    help: str,
    book: str = "",
    optional: bool = False,
) -> int | None:
    """Declare a whole number."""
    unknown = optional or default is None
    declared: int | None = _declared(
        Input(label, "count", default, low, high, (), help, book, unknown)
    )
    return declared


@overload
def choice(
    label: str,
    default: str,
    choices: tuple[str, ...],
    help: str,
    book: str = "",
    optional: Literal[False] = False,
) -> str: ...
@overload
def choice(
    label: str,
    default: str | None,
    choices: tuple[str, ...],
    help: str,
    book: str = "",
    optional: bool = False,
) -> str | None: ...
def choice(
    label: str,
    default: str | None,
    choices: tuple[str, ...],
    help: str,
    book: str = "",
    optional: bool = False,
) -> str | None:
    """Declare one word out of a few."""
    unknown = optional or default is None
    declared: str | None = _declared(
        Input(label, "choice", default, None, None, choices, help, book, unknown)
    )
    return declared


@overload
def yes_no(
    label: str, default: bool, help: str, book: str = "", *, optional: Literal[False]
) -> bool: ...
@overload
def yes_no(
    label: str, default: bool | None, help: str, book: str = "", *, optional: bool = True
) -> bool | None: ...
def yes_no(
    label: str, default: bool | None, help: str, book: str = "", *, optional: bool = True
) -> bool | None:
    """Declare a yes or no; most may be unknown until somebody has looked."""
    declared: bool | None = _declared(
        Input(label, "yes-no", default, None, None, (), help, book, optional)
    )
    return declared


def text(label: str, default: str, help: str) -> str:
    """Declare a line of text."""
    declared: str = _declared(Input(label, "text", default, None, None, (), help))
    return declared


Piece = TypeVar("Piece")
"""Record of one piece in a list of like things."""


def pieces(record: type[Piece], label: str, help: str) -> tuple[Piece, ...]:
    """Declare a list of like things (trim pieces, nearby parts of the building), each a record of
    its own.
    """
    declared: tuple[Piece, ...] = field(
        default=(), metadata={"pieces": record, "label": label, "help": help}
    )
    return declared
