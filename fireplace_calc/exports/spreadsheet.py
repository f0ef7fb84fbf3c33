"""The order as a spreadsheet that goes on adding up: change waste, a quantity or a price, and the
totals follow. What the job takes besides, and what was found, stand on sheets of their own.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from pathlib import Path

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, POUND, InputError
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.exports.order_table import FIRST, LETTER, MASS, MONEY, write_order
from fireplace_calc.exports.stored_formulas import ColumnKind, Formula, StoredBook
from fireplace_calc.report.csv_files import FINDING_COLUMNS, finding_row, harmless
from fireplace_calc.report.sentences import asked, compared
from fireplace_calc.report.yard.beside_the_list import TAX
from fireplace_calc.report.yard.by_supplier import YardOrder, yard_order
from fireplace_calc.rules import Finding
from fireplace_calc.takeoff.cost import Price

BY_SUPPLIER = (
    ColumnKind("Supplier", 26),
    ColumnKind("First day", 8),
    ColumnKind("Lines", 8),
    ColumnKind("Cost", 12, MONEY),
    ColumnKind("Weight as ordered [lb]", 12, MASS),
    ColumnKind("Weight as ordered [kg]", 12, MASS),
)
BESIDES = (
    ColumnKind("What", 28),
    ColumnKind("From whom", 24),
    ColumnKind("For what", 50),
    ColumnKind("How much", 10, "#,##0.0"),
    ColumnKind("Unit", 16),
    ColumnKind("Rate", 12, MONEY),
    ColumnKind("Cost", 12, MONEY),
    ColumnKind("Note", 44),
)
WORDED = (
    "provided, feet and inches",
    "provided, metric",
    "required, feet and inches",
    "required, metric",
    "to spare, feet and inches",
    "to spare, metric",
)
"""Figures of a finding in the reader's units, before the bare ones."""
BEFORE = 4
"""Columns of a finding that stand before its figures. [-]"""
KNOWN_WIDTHS = {"key": 9, "clause": 16, "title": 36, "verdict": 14, "why": 60, "note": 60}


def write_spreadsheet(
    result: Assessment, prices: Mapping[str, Price], path: str | os.PathLike[str]
) -> Path:
    """Write takeoff and findings as a workbook with live formulas and their values.

    Parameters
    ----------
    result : Assessment
        Draft, structure and order of work are worked out for it.
    prices : mapping of str to Price
        As ``takeoff.prices`` reads them.
    path : path
        Of the file.

    Returns
    -------
    path
        The file, whole, or the one that was there.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    made, found = StoredBook(), yard_order(result, prices)
    properties = made.book.properties
    properties.creator, properties.title = made_by(), harmless(result.design.name)
    last = write_order(made, result, found, prices)
    _by_supplier(made, found, last)
    _besides(made, found, last)
    for title, findings in (
        ("Findings", result.findings),
        ("Draft", result.judgement),
        ("Structure", result.structure.findings),
    ):
        _findings(made, title, findings)
    try:
        content = made.content()
    except OSError as trouble:  # the library lays its sheets into files of its own first
        raise InputError(
            f"{path} cannot be written: {trouble.strerror}.", "file", "", str(path)
        ) from None
    write_whole(path, content)
    return Path(path)


def _by_supplier(made: StoredBook, found: YardOrder, last: int) -> None:
    """What each supplier delivers, added up from the order."""
    sheet = made.sheet("By supplier")
    made.headed(sheet, 1, BY_SUPPLIER)
    who = f"Order!$A${FIRST}:$A${last - 1}"
    for number, one in enumerate(found.suppliers, 2):
        lines = [priced for line in one.lines for priced in line.priced]
        cost = sum(line.amount or 0.0 for line in lines)
        sums = [
            Formula(
                f"=SUMIF({who},A{number},Order!{LETTER[key]}${FIRST}:{LETTER[key]}${last - 1})",
                value,
            )
            for key, value in (
                ("cost", cost),
                ("pounds", one.weight / POUND),
                ("kilograms", one.weight),
            )
        ]
        count = Formula(f"=COUNTIF({who},A{number})", float(len(lines)))
        cells = (harmless(one.supplier), one.first[1], count, *sums)
        for column, (content, kind) in enumerate(zip(cells, BY_SUPPLIER, strict=True), 1):
            made.put(sheet, number, column, content, kind.shown)
    total = len(found.suppliers) + 2
    made.put(sheet, total, 1, "Total", bold=True)
    whole = (found.bill.total, found.weight / POUND, found.weight)
    for column, value in zip((4, 5, 6), whole, strict=True):
        letter = "ABCDEF"[column - 1]
        summed = Formula(f"=SUM({letter}2:{letter}{total - 1})", value)
        made.put(sheet, total, column, summed, BY_SUPPLIER[column - 1].shown, bold=True)


def _besides(made: StoredBook, found: YardOrder, last: int) -> None:
    """What the job takes beside the list; whoever has a rate puts it in."""
    sheet = made.sheet("Beside the list")
    made.headed(sheet, 1, BESIDES)
    materials = f"Order!{LETTER['cost']}{last}"
    for number, line in enumerate(found.beside, 2):
        count = (
            Formula(f"={materials}/100", found.bill.total / 100) if line.item == TAX else line.count
        )
        cost = Formula(f'=IF(F{number}="","",D{number}*F{number})', line.amount)
        unknown = "nobody has told yet whether it is wanted" if line.count is None else ""
        note = unknown or ("not priced" if line.amount is None else "")
        cells = (line.item, line.supplier, line.why, count, line.unit, line.price, cost, note)
        for column, (content, kind) in enumerate(zip(cells, BESIDES, strict=True), 1):
            made.put(sheet, number, column, harmless(content), kind.shown)
    total = len(found.beside) + 2
    whole = Formula(f"=SUM(G2:G{total - 1})", found.beside_total)
    both = Formula(f"={materials}+G{total}", found.bill.total + found.beside_total)
    for row, name, content in (
        (total, "Beside the list", whole),
        (total + 1, "Materials and what is beside them", both),
    ):
        made.put(sheet, row, 1, name, bold=True)
        made.put(sheet, row, 7, content, MONEY, bold=True)


def _findings(made: StoredBook, title: str, findings: Iterable[Finding]) -> None:
    sheet = made.sheet(title)
    headings = (*FINDING_COLUMNS[:BEFORE], *WORDED, *FINDING_COLUMNS[BEFORE:])
    made.headed(sheet, 1, [ColumnKind(one, KNOWN_WIDTHS.get(one, 18)) for one in headings])
    for number, finding in enumerate(findings, 2):
        bare = finding_row(finding)
        for column, value in enumerate((*bare[:BEFORE], *worded(finding), *bare[BEFORE:]), 1):
            made.put(sheet, number, column, harmless(value))


def worded(finding: Finding) -> tuple[str, ...]:
    """Figures of a finding as words, under ``WORDED``.

    Parameters
    ----------
    finding : Finding

    Returns
    -------
    tuple of str
    """
    both = [
        (compared(finding, units)[0], asked(finding, units), compared(finding, units)[2])
        for units in (FEET_INCHES, MILLIMETRES)
    ]
    return tuple(both[system][k] for k in range(3) for system in range(2))
