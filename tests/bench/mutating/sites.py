"""Every place of a module where one small fault can be planted, on one line, so that the text
around it stays as it was.
"""

from __future__ import annotations

import ast
import builtins
import re
from collections.abc import Iterator
from dataclasses import dataclass

OTHER = {
    "<": (">=", "<="),
    "<=": (">", "<"),
    ">": ("<=", ">="),
    ">=": ("<", ">"),
    "==": ("!=",),
    "!=": ("==",),
    "is": ("is not",),
    "is not": ("is",),
    "in": ("not in",),
    "not in": ("in",),
    "+": ("-",),
    "-": ("+",),
    "*": ("/",),
    "/": ("*",),
    "//": ("*",),
    "%": ("*",),
    "**": ("*",),
    "and": ("or",),
    "or": ("and",),
}
NAMES = {
    "min": "max",
    "max": "min",
    "any": "all",
    "all": "any",
    "ceil": "floor",
    "floor": "ceil",
    "minimum": "maximum",
    "maximum": "minimum",
    "sin": "cos",
    "cos": "sin",
    "at_least": "at_most",
    "at_most": "at_least",
    "INCH": "FOOT",
    "FOOT": "INCH",
    "MM": "INCH",
    "SQIN": "SQFT",
    "SQFT": "SQIN",
    "CUFT": "CUYD",
    "CUYD": "CUFT",
    "POUND": "G",
    "PSF": "PCF",
    "PCF": "PSF",
    "DEG": "INCH",
    "append": "remove",
}
"""A name for a near one: the other end, the other unit, the other way of comparing."""
QUIET_CALLS = {
    "InputError",
    "_refuse",
    "lru_cache",
    "dataclass",
    "field",
    "TypeVar",
    "NamedTuple",
    "cast",
    "Protocol",
}
"""What stands inside these is a message, a type or a size of memory."""
EITHER_WAY = {"min", "max", "minimum", "maximum", "hypot", "suppress", "isclose"}
"""Calls that are the same with two arguments swapped."""
QUIET_NAMES = {"strict", "maxsize", "help", "stacklevel", "loading"}
"""Named arguments that change no figure."""
HAIR = 1e-5
"""A float below this keeps rounding out of a comparison: a quarter more of it is seen by nobody."""

NEARLY = re.compile(
    r"\b(1e-\d|LIMIT_SLACK|ROUNDING|COUNT_SLACK|CONTACT_GAP|MESH_SLIVER)"
)  # ``base/tolerances``


@dataclass(frozen=True, slots=True)
class Site:
    """One fault: the text of one line between two columns, replaced."""

    line: int
    start: int
    end: int
    new: str
    kind: str

    def planted(self, text: str) -> str:
        """The line with the fault in it."""
        raw = text.encode()
        return (raw[: self.start] + self.new.encode() + raw[self.end :]).decode()


class _Finder:
    def __init__(self, source: str, known: frozenset[str]):
        self.lines, self.known = source.splitlines(), known
        self.found: list[Site] = []
        self.depth = 0

    def text(self, node: ast.AST) -> str:
        return self.lines[node.lineno - 1].encode()[node.col_offset : node.end_col_offset].decode()

    def put(self, node: ast.AST, new: str, kind: str) -> None:
        if node.lineno == node.end_lineno and new != self.text(node):
            self.found.append(Site(node.lineno, node.col_offset, node.end_col_offset, new, kind))

    def between(self, left: ast.AST, right: ast.AST, kind: str) -> None:
        """The operator between two operands of one line."""
        if left.end_lineno != right.lineno:
            return
        raw = (
            self.lines[left.end_lineno - 1]
            .encode()[left.end_col_offset : right.col_offset]
            .decode()
        )
        operator = raw.strip(" ()")
        hair = NEARLY.search(self.text(left) + " " + self.text(right))
        for new in OTHER.get(operator, ()):
            if hair and new.strip("=") == operator.strip("="):
                continue  # `a < b + 1e-9` and `a <= b + 1e-9` say the same
            at = left.end_col_offset + raw.index(operator)
            self.found.append(Site(right.lineno, at, at + len(operator), new, kind))

    # -- walking -----------------------------------------------------------------------------------
    def visit(self, node: ast.AST) -> None:
        if self.quiet(node):
            return
        getattr(self, "at_" + type(node).__name__, lambda _: None)(node)
        inside = isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda))
        for child in getattr(node, "decorator_list", []):
            self.visit(child)
        self.depth += inside
        for child in self.loud(node):
            self.visit(child)
        self.depth -= inside

    def quiet(self, node: ast.AST) -> bool:
        """Messages, types, docstrings and what the interpreter never asks."""
        if isinstance(node, (ast.Raise, ast.JoinedStr, ast.Import, ast.ImportFrom, ast.Assert)):
            return True
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            return True
        if (
            isinstance(node, ast.If)
            and isinstance(node.test, ast.Name)
            and node.test.id == "TYPE_CHECKING"
        ):
            return True
        if isinstance(node, ast.FunctionDef) and any(
            isinstance(d, ast.Name) and d.id == "overload" for d in node.decorator_list
        ):
            return True
        if isinstance(node, ast.keyword) and node.arg in QUIET_NAMES:
            return True
        if isinstance(node, ast.Call):
            return (
                node.func.attr
                if isinstance(node.func, ast.Attribute)
                else getattr(node.func, "id", "")
            ) in QUIET_CALLS
        return isinstance(node, ast.Assign) and any(
            isinstance(t, ast.Name) and t.id.startswith("__") for t in node.targets
        )

    def loud(self, node: ast.AST) -> Iterator[ast.AST]:
        """Children that are no annotation."""
        for name, value in ast.iter_fields(node):
            if name in ("annotation", "returns", "type_params", "decorator_list"):
                continue
            yield from (
                child
                for child in (value if isinstance(value, list) else [value])
                if isinstance(child, ast.AST)
            )

    # -- kinds of fault ----------------------------------------------------------------------------
    def at_Constant(self, node: ast.Constant) -> None:
        if isinstance(node.value, bool):
            self.put(node, str(not node.value), "constant")
        elif isinstance(node.value, int):
            self.put(node, str(node.value + 1), "constant")
        elif isinstance(node.value, float) and not 0 < node.value < HAIR:
            self.put(node, repr(node.value * 1.25) if node.value else "1.0", "constant")

    def at_Compare(self, node: ast.Compare) -> None:
        for left, right in zip([node.left, *node.comparators], node.comparators, strict=False):
            self.between(left, right, "comparison")

    def at_BinOp(self, node: ast.BinOp) -> None:
        self.between(node.left, node.right, "arithmetic")

    def at_AugAssign(self, node: ast.AugAssign) -> None:
        line = self.lines[node.lineno - 1].encode()
        raw = (
            line[node.target.end_col_offset : node.value.col_offset].decode()
            if node.value.lineno == node.lineno
            else ""
        )
        sign = raw.strip(" (")
        if sign in ("+=", "-="):
            at = node.target.end_col_offset + raw.index(sign)
            self.found.append(
                Site(node.lineno, at, at + 2, "-=" if sign == "+=" else "+=", "arithmetic")
            )

    def at_BoolOp(self, node: ast.BoolOp) -> None:
        for left, right in zip(node.values, node.values[1:], strict=False):
            self.between(left, right, "and, or")

    def at_UnaryOp(self, node: ast.UnaryOp) -> None:
        if (
            isinstance(node.op, (ast.Not, ast.USub))
            and node.operand.lineno == node.lineno == node.end_lineno
        ):
            inner = (
                self.lines[node.lineno - 1]
                .encode()[node.operand.col_offset : node.end_col_offset]
                .decode()
            )
            self.put(node, f" {inner}" if isinstance(node.op, ast.Not) else inner, "not dropped")

    def at_IfExp(self, node: ast.IfExp) -> None:
        self.put(node.test, f"not ({self.text(node.test)})", "condition turned round")

    def at_If(self, node: ast.If) -> None:
        if node.test.lineno == node.test.end_lineno:
            self.put(node.test, f"not ({self.text(node.test)})", "condition turned round")

    def at_Call(self, node: ast.Call) -> None:
        if not self.depth:
            return  # swapped in a declaration, it would not even be imported
        called = node.func
        name = called.id if isinstance(called, ast.Name) else getattr(called, "attr", "")
        if name in EITHER_WAY:
            return  # the same either way round
        args = [a for a in node.args if not isinstance(a, ast.Starred)]
        if (
            len(node.args) == len(args) >= 2
            and args[0].lineno == args[1].end_lineno
            and self.text(args[0]) != self.text(args[1])
        ):
            one, other = args[0], args[1]
            middle = (
                self.lines[one.lineno - 1].encode()[one.end_col_offset : other.col_offset].decode()
            )
            self.found.append(
                Site(
                    one.lineno,
                    one.col_offset,
                    other.end_col_offset,
                    self.text(other) + middle + self.text(one),
                    "arguments swapped",
                )
            )

    def at_Name(self, node: ast.Name) -> None:
        if isinstance(node.ctx, ast.Load) and NAMES.get(node.id) in self.known:
            self.put(node, NAMES[node.id], "name swapped")

    def at_Attribute(self, node: ast.Attribute) -> None:
        if (
            node.attr in ("minimum", "maximum", "any", "all", "ceil", "floor", "sin", "cos")
            and node.value.end_lineno == node.end_lineno
            and (node.attr in ("any", "all") or getattr(node.value, "id", "") in ("np", "math"))
        ):
            at = node.end_col_offset - len(node.attr)
            self.found.append(
                Site(node.end_lineno, at, node.end_col_offset, NAMES[node.attr], "name swapped")
            )

    def at_Subscript(self, node: ast.Subscript) -> None:
        index = node.slice
        if isinstance(index, ast.Slice):
            for end in (index.lower, index.upper):
                if end is not None and isinstance(end, (ast.Constant, ast.UnaryOp)):
                    self.put(end, f"{self.text(end)} + 1", "index")

    def at_Return(self, node: ast.Return) -> None:
        if node.value is not None and not (
            isinstance(node.value, ast.Constant) and node.value.value is None
        ):
            self.put(node.value, "None", "nothing returned")


def _known(tree: ast.Module) -> frozenset[str]:
    """Names that a module may use: a name it lacks would be found by the import alone."""
    imported = (
        a for n in ast.walk(tree) if isinstance(n, (ast.Import, ast.ImportFrom)) for a in n.names
    )
    return frozenset(dir(builtins)) | {a.asname or a.name for a in imported}


def sites(source: str) -> list[Site]:
    """Every fault that can be planted in a module, in order of lines, none of them twice.

    Parameters
    ----------
    source : str
        Text of the module.
    """
    tree = ast.parse(source)
    finder = _Finder(source, _known(tree))
    finder.visit(tree)
    return sorted(set(finder.found), key=lambda s: (s.line, s.start, s.new))
