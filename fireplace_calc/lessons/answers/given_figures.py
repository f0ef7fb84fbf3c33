"""What an exercise gives, in the order it is read: figures that belong together in a row, and a
table as a table.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

GRID = re.compile(
    r"Table: (?P<down>\w+) (?P<row>[^,]*\d[^,]*), (?P<across>\w+) (?P<column>[^,]*\d[^,]*)"
)
"""Name of a figure in a table: of what its row is and which, of what its column is and which."""
Pair = tuple[str, str]
"""Name and figure."""


class GivenTable(NamedTuple):
    """Figures that are looked up by row and column.

    Attributes
    ----------
    unit : str
        Of all figures; empty where each bears its own.
    corner : str
        Of what the rows are, and of what the columns.
    columns : tuple of str
    rows : tuple
        What a row is called, and its figures; empty where the table has none.
    """

    unit: str
    corner: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def given_rows(given: Sequence[Pair]) -> list[Pair]:
    """Names and figures: those in a row whose names differ by a number alone are told together,
    and those of a table are left out.

    Examples
    --------
    >>> given_rows([("Bed", "3/8"), ("Lift 1, height", "14 mm"), ("Lift 2, height", "19 mm")])
    [('Bed', '3/8'), ('Lift 1, 2, height', '14, 19 mm')]
    """
    rows = []
    plain = [one for one in given if not GRID.fullmatch(one[0])]
    for _, group in groupby(plain, key=lambda one: re.sub(r"\d+", "#", one[0], count=1)):
        names, said = zip(*group, strict=True)
        numbers = [found.group() for name in names if (found := re.search(r"\d+", name))]
        if len(names) == 1:
            rows.append((names[0], said[0]))
            continue
        last = said[-1].rpartition(" ")[2]
        if all(one.endswith(f" {last}") for one in said) and not any(map(str.isdigit, last)):
            said = (*(one.removesuffix(f" {last}") for one in said[:-1]), said[-1])
        rows.append((re.sub(r"\d+", ", ".join(numbers), names[0], count=1), ", ".join(said)))
    return rows


def given_table(given: Sequence[Pair]) -> GivenTable | None:
    """The table among what is given, each cell in its place; nothing where there is none.

    Examples
    --------
    >>> table = given_table([("Table: opening 2, chimney 5", "8 mm to 9 mm")])
    >>> table.unit, table.corner, table.columns, table.rows
    ('mm', 'Opening, chimney', ('5',), (('2', ('8–9',)),))
    """
    found = [(one, text) for name, text in given if (one := GRID.fullmatch(name))]
    if not found:
        return None
    unit = " mm" if all(text.endswith(" mm") for _, text in found) else ""
    if unit:
        found = [(one, text.replace(unit, "").replace(" to ", "–")) for one, text in found]
    cells = {(one["row"], one["column"]): text for one, text in found}
    rows, columns = ([*dict.fromkeys(key[k] for key in cells)] for k in (0, 1))
    rows.sort(key=_in_order)
    columns.sort(key=_in_order)
    first = found[0][0]
    return GivenTable(
        unit.strip(),
        f"{first['down'].capitalize()}, {first['across']}",
        tuple(columns),
        tuple((row, tuple(cells.get((row, c), "") for c in columns)) for row in rows),
    )


def _in_order(name: str) -> list[float]:
    return [float(number) for number in re.findall(r"\d+\.?\d*", name)]
