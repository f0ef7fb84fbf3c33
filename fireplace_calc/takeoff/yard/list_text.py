"""A list as a spreadsheet saves it: letters, separators and decimal marks are found out from the
file itself, and what cannot be told for certain is refused by line and column.
"""

from __future__ import annotations

import csv
import io
import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError

SEPARATORS = (";", "\t", ",")
POINT, COMMA = ".", ","
WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""What a workbook begins with, which is no text."""
MARKS = (b"\xff\xfe", b"\xfe\xff")
"""What 16-bit letters begin with."""
_BLANKS = re.compile(r"[\s'’_]")
_NUMBER = re.compile(r"[0-9]+(?:[.,_][0-9]+)*|[.,][0-9]+")
_NEGATIVE = re.compile(r"[-−–(].*|.*[-−–]")


@dataclass(frozen=True, slots=True)
class ListLine:
    """One line of a list: its number in the file, from 1 [-], and its cells by heading."""

    number: int
    cells: dict[str, str]


@dataclass(frozen=True, slots=True)
class ListText:
    """A list that has been read: what it is called, how its cells are separated, its lines."""

    name: str
    separator: str
    lines: tuple[ListLine, ...]

    def wrong(self, line: int, column: str, why: str, received: object) -> InputError:
        """What is wrong with one cell, to be raised; lines count from 1. [-]"""
        said = f"{self.name}, line {line}, column {column}: {why}"
        return InputError(said, column, "", str(received))


def decoded(content: bytes, name: str) -> str:
    r"""The letters of a file, whichever way they were saved.

    Parameters
    ----------
    content : bytes
    name : str
        Of the list, for a message.

    Returns
    -------
    str
        UTF-8 with or without its mark, UTF-16, else Windows' western letters (code page 1252).

    Raises
    ------
    InputError
        When it is a workbook, or no text at all.

    Examples
    --------
    >>> decoded("Mörtel".encode("cp1252"), "list"), decoded(b"\xff\xfeM\x00", "list")
    ('Mörtel', 'M')
    """
    if content.startswith(WORKBOOKS):
        raise InputError(
            f"{name} is a workbook, but a price list is read as text: save its sheet as CSV.",
            "price list",
            "a CSV file",
            name,
        )
    half = len(content) // 2
    odd, even = content[1::2].count(0), content[::2].count(0)
    try:
        if content.startswith(MARKS):
            return content.decode("utf-16")
        if max(odd, even) > half / 2:
            return content.decode("utf-16-le" if odd > even else "utf-16-be")
        try:
            return content.decode("utf-8-sig")
        except UnicodeDecodeError:
            return content.decode("cp1252")
    except UnicodeDecodeError:
        raise InputError(
            f"{name} cannot be read as text: its letters are neither UTF-8 nor UTF-16 nor those of"
            " Windows. Save it as CSV (UTF-8).",
            "price list",
            "a CSV file",
            name,
        ) from None


def read_list(content: bytes, name: str, needed: tuple[str, ...]) -> ListText:
    """Lines of a list under their headings.

    Parameters
    ----------
    content : bytes
        Of the file: cells separated by comma, semicolon or tab.
    name : str
        Of the list, for a message.
    needed : tuple of str
        Headings that have to be there, in any order; capitals and blanks do not matter.

    Returns
    -------
    ListText
        Without empty lines.

    Raises
    ------
    InputError
        When a heading is missing or stands twice, a line holds more cells than there are headings,
        or a quotation mark is left open.
    """
    text = decoded(content, name)
    first, _, rest = text.partition("\n")
    skipped = first.strip().lower().startswith("sep=")
    separator, found = _separated(rest if skipped else text, name)
    number, headings = found[0] if found else (1, [])
    headings = [_BLANKS.sub("_", heading.strip().lower()) for heading in headings]
    missing = [one for one in needed if one not in headings]
    if missing:
        raise InputError(
            f"{name}, line {number + skipped}: the first line names the columns, and"
            f" {', '.join(needed)} have to be among them, but it holds"
            f" {', '.join(filter(None, headings)) or 'nothing'}.",
            "price list",
            ", ".join(needed),
            ", ".join(headings),
        )
    twice = [one for one in headings if one and headings.count(one) > 1]
    made = ListText(name, separator, ())
    if twice:
        raise made.wrong(number + skipped, twice[0], "the column stands there twice.", twice[0])
    lines = []
    for number, cells in found[1:]:
        if len(cells) > len(headings) and any(cell.strip() for cell in cells[len(headings) :]):
            raise made.wrong(
                number + skipped,
                str(len(headings) + 1),
                f"the line has {len(cells)} cells under {len(headings)} headings; likely a number"
                f" or a name with {'a tab' if separator == chr(9) else shown(separator)} in it and"
                " no quotation marks round it.",
                cells,
            )
        padded = [*cells, *[""] * len(headings)]
        held = {one: padded[k].strip() for k, one in enumerate(headings) if one}
        lines.append(ListLine(number + skipped, held))
    return ListText(name, separator, tuple(lines))


def _separated(text: str, name: str) -> tuple[str, list[tuple[int, list[str]]]]:
    """Separator, and every line that is not empty, by the number it begins at."""
    header = next((line for line in text.splitlines() if line.strip()), "")
    separator = max(SEPARATORS, key=header.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    found, begins = [], 1
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                found.append((begins, cells))
            begins = reader.line_num + 1
    except csv.Error:
        raise InputError(
            f"{name}, line {begins}: a quotation mark is left open, or something stands behind one"
            " that closes.",
            "price list",
            "a CSV file",
            name,
        ) from None
    return separator, found


def _readings(text: str) -> dict[str, float]:
    """What a text of digits and marks comes to, by the mark that stands before its decimals."""
    found = {}
    for mark, other in ((POINT, COMMA), (COMMA, POINT)):
        whole, _, part = text.partition(mark)
        thousands = {one for one in whole if not one.isdigit()}
        groups = re.split(r"[.,_]", whole)
        grouped = len(groups) == 1 or (
            len(thousands) == 1
            and 1 <= len(groups[0]) <= 3
            and not groups[0].startswith("0")
            and all(len(group) == 3 for group in groups[1:])
        )
        if grouped and not (set(part) & {mark, other, "_"}) and thousands <= {other, "_"}:
            found[mark] = float(f"{''.join(groups)}.{part or 0}")
    return found


def numbers(
    made: ListText, columns: Iterable[str], currency: str = ""
) -> dict[tuple[int, str], float]:
    """Every number of a list, by its line and column; empty cells are left out.

    Parameters
    ----------
    made : ListText
    columns : iterable of str
        That hold numbers.
    currency : str
        May stand beside a number, as a cell that is shown as money has it; so may a sign of money.

    Returns
    -------
    dict of float
        None of them negative. [-]

    Raises
    ------
    InputError
        When a cell holds no number, a negative one, or one that is not finite; when one line has a
        decimal comma and another a decimal point; and when nothing tells which of the two a mark
        before three digits is.

    Notes
    -----
    A list separated by commas has decimal points, unless its numbers say otherwise.
    """
    read: list[tuple[ListLine, str, str, dict[str, float]]] = []
    marks, witness = {POINT, COMMA}, ListLine(0, {})
    for line in made.lines:
        for column in columns:
            told = line.cells.get(column, "")
            if not told:
                continue
            bare = _bare(made, line, column, told, currency)
            readings = _readings(bare) if bare else {}
            if not readings:
                raise made.wrong(line.number, column, _no_number(told), told)
            if not marks & set(readings):
                raise made.wrong(
                    line.number,
                    column,
                    f"{shown(told)} has another decimal mark than line {witness.number}; write all"
                    " numbers of the list alike.",
                    told,
                )
            if marks - set(readings):
                marks, witness = marks & set(readings), line
            read.append((line, column, told, readings))
    if len(marks) == 2 and made.separator == COMMA:
        marks = {POINT}
    found = {}
    for line, column, told, readings in read:
        values = {readings[mark] for mark in marks}
        if len(values) > 1:
            raise made.wrong(
                line.number,
                column,
                f"{shown(told)} may be {min(values):g} or {max(values):g}, and no other number of"
                " the list tells which; write its decimals out.",
                told,
            )
        found[line.number, column] = values.pop()
        if not isfinite(found[line.number, column]):
            raise made.wrong(line.number, column, _no_number(told), told)
    return found


def _bare(made: ListText, line: ListLine, column: str, told: str, currency: str) -> str:
    """Digits and marks alone: without signs of money, blanks and quotes between thousands as _."""
    text = told.removeprefix(currency).removesuffix(currency)
    text = "".join(one for one in text if unicodedata.category(one) != "Sc").strip()
    if _NEGATIVE.fullmatch(text) and any(one.isdigit() for one in text):
        raise made.wrong(line.number, column, f"{shown(told)} is less than nought.", told)
    text = _BLANKS.sub("_", text)
    return text if _NUMBER.fullmatch(text) else ""


def _no_number(told: str) -> str:
    return f"{shown(told)} is no number; a bare one is wanted, such as 12.50."
