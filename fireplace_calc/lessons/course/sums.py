"""Figures and sums as a lesson file writes them: parsed, never executed, and held to their kinds.

``3 ft``, ``2 ft 6 in``, ``10-1/2 in``, ``60 lb``, ``-10 degC``, ``6 / 12``, ``max(3 ft, climb + 2
ft)``. A length plus an area is refused, so that a slip is found where it stands.
"""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import NamedTuple

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FACTORS, InputError

NUMBER = "number"
"""Kind of a count, of a pitch, and of whatever else is a bare number."""


class Amount(NamedTuple):
    """A figure in SI, and of which kind it is. [SI]"""

    value: float
    kind: str = NUMBER


class SumError(InputError):
    """A sum that cannot be worked out; the message is one sentence."""


Given = str | int | float
"""A sum as a file holds it."""
_KIND_OF = {
    unit: kind
    for kind in (
        *("bearing", "strength", "density", "angle", "force", "power", "speed", "volume"),
        *("pressure", "flow", "mass", "area", "length"),
    )
    for unit in FACTORS[kind]
    if re.fullmatch(r"[A-Za-z]+[\d/A-Za-z]*", unit)
} | {"degC": "temperature", "degF": "temperature"}
FIGURE = r"\d+-\d+/\d+|\d+/\d+|\d+\.\d+|\d+"
"""A number as a mason writes it: a pattern."""
_UNITS = "|".join(sorted(map(re.escape, _KIND_OF), key=len, reverse=True))
_SIGNED = rf"(?:(?<![\w)\s])\s*-)?(?:{FIGURE})"
_QUANTITY = re.compile(rf"(?<![\w.])(?:(\d+ ft (?:{FIGURE}) in)|({_SIGNED})\s*({_UNITS}))(?![\w])")
_FUNCTIONS: dict[str, Callable[..., float]] = {
    "ceil": lambda one: math.ceil(one - 1e-9),
    "floor": lambda one: math.floor(one + 1e-9),
    "min": min,
    "max": max,
}
_PRODUCTS = {("length", "length"): "area", ("length", "area"): "volume"}


def work_out(given: Given, names: Mapping[str, Amount] | None = None) -> Amount:
    """Work out a figure or a sum.

    Parameters
    ----------
    given : str or number
        The sum as the file has it.
    names : mapping, optional
        What names in it stand for.

    Returns
    -------
    Amount
        In SI, with its kind. [SI]

    Raises
    ------
    SumError
        For what is no sum, a name nobody has given, or kinds that do not go together.

    Examples
    --------
    >>> feet = work_out("max(3 ft, climb + 2 ft)", {"climb": Amount(1.2192, "length")})
    >>> round(feet.value / 0.3048, 9), feet.kind
    (6.0, 'length')
    """
    if isinstance(given, int | float):
        return Amount(float(given))
    try:
        body, held = _parsed(str(given))
        return _value(body, held, names or {})
    except SyntaxError:
        raise SumError(f"{given!r} is no sum.", "sum", "a figure or a sum", given) from None
    except ZeroDivisionError:
        raise SumError(f"{given!r} divides by nothing.", "sum", "", given) from None


@lru_cache(maxsize=1024)
def _parsed(given: str) -> tuple[ast.expr, Mapping[str, Amount]]:
    """A sum as a tree, and the figures with a unit in it by the names that they have there; a
    lesson asks for each of its sums at every place of its controls.
    """
    held: dict[str, Amount] = {}

    def keep(found: re.Match[str]) -> str:
        unit = "in" if found[1] else found[3]
        name = f"_quantity{len(held)}"
        held[name] = Amount(to_si(found[0].strip(), _KIND_OF[unit]), _KIND_OF[unit])
        return f" {name} "

    made = _QUANTITY.sub(keep, f" {given}".replace("\N{MINUS SIGN}", "-"))
    return ast.parse(made.strip(), mode="eval").body, held


def _value(node: ast.AST, held: Mapping[str, Amount], names: Mapping[str, Amount]) -> Amount:
    match node:
        case ast.Constant(value=int() | float() as number) if not isinstance(number, bool):
            return Amount(float(number))
        case ast.Name(id=name):
            return held[name] if name in held else _named(name, names)
        case ast.UnaryOp(op=ast.USub(), operand=one):
            value, kind = _value(one, held, names)
            return Amount(-value, kind)
        case ast.BinOp(left=left, op=op, right=right):
            return _joined(op, _value(left, held, names), _value(right, held, names))
        case ast.Call(func=ast.Name(id=name), args=args, keywords=[]) if args:
            return _called(name, [_value(one, held, names) for one in args])
    raise SumError(f"{ast.unparse(node)!r} has no place in a sum.", "sum", "+ - * /", "")


def _named(name: str, names: Mapping[str, Amount]) -> Amount:
    try:
        return names[name]
    except KeyError:
        known = ", ".join(sorted(names)) or "none"
        raise SumError(
            f"{name!r} stands for nothing; the names of this lesson are {known}.", name, known, name
        ) from None


def _joined(op: ast.operator, a: Amount, b: Amount) -> Amount:
    if isinstance(op, ast.Add | ast.Sub):
        value = a.value + b.value if isinstance(op, ast.Add) else a.value - b.value
        return Amount(value, _alike([a, b]))
    if isinstance(op, ast.Mult):
        return Amount(a.value * b.value, _product(a.kind, b.kind))
    if isinstance(op, ast.Div):
        return Amount(a.value / b.value, _quotient(a.kind, b.kind))
    raise SumError("A sum knows + - * / only.", "sum", "+ - * /", "")


def _alike(amounts: list[Amount]) -> str:
    kinds = {one.kind for one in amounts}
    if len(kinds) > 1:
        said = " and ".join(sorted(kinds))
        raise SumError(f"These do not go together: {said}.", "sum", "figures of one kind", said)
    return kinds.pop()


def _product(a: str, b: str) -> str:
    if NUMBER in (a, b):
        return b if a == NUMBER else a
    for pair in ((a, b), (b, a)):
        if pair in _PRODUCTS:
            return _PRODUCTS[pair]
    raise SumError(f"There is no {a} times {b}.", "sum", "", f"{a} * {b}")


def _quotient(a: str, b: str) -> str:
    if a == b:
        return NUMBER
    if b == NUMBER:
        return a
    for (one, other), whole in _PRODUCTS.items():
        if whole == a and b in (one, other):
            return other if b == one else one
    raise SumError(f"There is no {a} divided by {b}.", "sum", "", f"{a} / {b}")


def _called(name: str, amounts: list[Amount]) -> Amount:
    values = [one.value for one in amounts]
    if name in ("min", "max"):
        return Amount(_FUNCTIONS[name](values), _alike(amounts))
    if name in ("ceil", "floor") and len(amounts) == 1 and amounts[0].kind == NUMBER:
        return Amount(float(_FUNCTIONS[name](values[0])))
    if name == "sqrt" and len(amounts) == 1 and amounts[0].kind in (NUMBER, "area"):
        if values[0] < 0:
            raise SumError("There is no square root of less than nothing.", "sum", "", values[0])
        return Amount(math.sqrt(values[0]), NUMBER if amounts[0].kind == NUMBER else "length")
    known = "min, max, ceil, floor, sqrt"
    raise SumError(f"{name!r} cannot be worked out here; known are {known}.", name, known, name)
