"""The order as a spreadsheet that goes on adding up: change waste, a quantity or a price, and the
totals follow.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import InputError
from fireplace_calc.brickwork.face_bond import english
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.report.csv_files import FINDING_COLUMNS, finding_row, harmless
from fireplace_calc.report.sentences import CAUTION
from fireplace_calc.takeoff import goods_for
from fireplace_calc.takeoff.cost import Price, bill

if TYPE_CHECKING:
    from _typeshed import SizedBuffer

HEADINGS = (
    "Item",
    "Material",
    "Unit",
    "Net",
    "Waste",
    "Sold by",
    "To order",
    "Price of one",
    "Cost",
    "Weight of net [kg]",
    "Volume [m3]",
    "Packs",
    "Pack",
    "How counted",
)
FORMATS = {
    4: "#,##0.00",
    5: "0 %",
    7: "#,##0.00",
    8: "#,##0.00",
    9: "#,##0.00",
    10: "#,##0",
    11: "0.000",
}
"""How the figures of a column are shown."""
FIRST = 6
"""Row of the first item; over it stand name, caution and the headings. [-]"""
PROPERTIES = (
    '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">'
    f"<Application>{made_by()}</Application></Properties>"
)


class _Archive(ZipFile):
    """The parts of a spreadsheet file; where the library would name itself as program, we do."""

    def writestr(
        self,
        zinfo_or_arcname: str | ZipInfo,
        data: str | SizedBuffer,
        compress_type: int | None = None,
        compresslevel: int | None = None,
    ) -> None:
        """Write one part; ours where it names the program."""
        from openpyxl.xml.constants import ARC_APP

        ours = PROPERTIES if zinfo_or_arcname == ARC_APP else data
        super().writestr(zinfo_or_arcname, ours, compress_type, compresslevel)


def write_spreadsheet(
    result: Assessment, prices: Mapping[str, Price], path: str | os.PathLike[str]
) -> Path:
    """Write takeoff and findings as a workbook with live formulas.

    Parameters
    ----------
    result : Assessment
    prices : mapping of str to Price
        As ``takeoff.prices`` reads them.
    path : path
        Of the file.

    Returns
    -------
    path
        The file.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    import openpyxl
    from openpyxl.writer.excel import ExcelWriter

    book = openpyxl.Workbook()
    book.properties.creator, book.properties.title = made_by(), harmless(result.design.name)
    _order(book.active, result, prices)
    _findings(book.create_sheet("Findings"), result)
    written = BytesIO()
    try:
        with _Archive(written, "w", ZIP_DEFLATED) as archive:
            ExcelWriter(book, archive).save()
    except OSError as trouble:  # the library lays its sheets into files of its own first
        raise InputError(
            f"{path} cannot be written: {trouble.strerror}.", "file", "", str(path)
        ) from None
    write_whole(path, written.getvalue())
    return Path(path)


def _order(sheet: Any, result: Assessment, prices: Mapping[str, Price]) -> None:
    from openpyxl.styles import Alignment, Font

    sheet.title = "Order"
    priced, design = bill(result.takeoff, prices), result.design
    sheet["A1"], sheet["A1"].font = harmless(design.name), Font(bold=True, size=14)
    sheet["A2"] = CAUTION
    said = "Every price is an invented example: put in your own. " if priced.invented else ""
    sheet["A3"] = (
        f"{said}Currency: {priced.currency or 'none named'}. Labor, equipment, freight "
        f"and tax are not in it. Written by {made_by()}."
    )
    for column, heading in enumerate(HEADINGS, 1):
        cell = sheet.cell(FIRST - 1, column, heading)
        cell.font, cell.alignment = Font(bold=True), Alignment(wrap_text=True, vertical="top")
    for number, line in enumerate(priced.lines, FIRST):
        row, sold = line.row, goods_for(line.row.item)
        waste = getattr(design.waste, sold.waste) if sold.waste else 0.0
        known = prices.get(row.item)
        order = f"=ROUNDUP(ROUND(D{number}*(1+E{number})/F{number},9),0)*F{number}"
        per_pack = known.per_pack if known is not None and line.price is not None else None
        packs = f"=ROUNDUP(G{number}/{per_pack},0)" if per_pack else None
        cells = (
            row.item,
            row.material,
            row.unit,
            row.net,
            waste,
            sold.step,
            order,
            line.price,
            f'=IF(H{number}="",0,G{number}*H{number})',
            row.weight_kg,
            row.volume,
            packs,
            harmless(line.pack) or None,
            english(row.note, result.pack),
        )
        for column, value in enumerate(cells, 1):
            cell = sheet.cell(number, column, value)
            cell.number_format = FORMATS.get(column, "General")
    last = FIRST + len(priced.lines) - 1
    total = last + 1
    sheet.cell(total, 1, "Whole").font = Font(bold=True)
    for column, letter in ((9, "I"), (10, "J"), (11, "K")):
        cell = sheet.cell(total, column, f"=SUM({letter}{FIRST}:{letter}{last})")
        cell.font, cell.number_format = Font(bold=True), sheet.cell(last, column).number_format
    if priced.unpriced:
        sheet.cell(
            total + 1, 1, f"Without a price, and not in the cost: {', '.join(priced.unpriced)}."
        )
    for letter, wide in zip(
        "ABCDEFGHIJKLMN", (26, 28, 12, 10, 8, 9, 11, 11, 12, 12, 10, 8, 13, 60), strict=True
    ):
        sheet.column_dimensions[letter].width = wide
    sheet.freeze_panes = sheet.cell(FIRST, 2)
    sheet.page_setup.orientation, sheet.page_setup.fitToHeight = "landscape", 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.print_title_rows = f"{FIRST - 1}:{FIRST - 1}"


def _findings(sheet: Any, result: Assessment) -> None:
    from openpyxl.styles import Font

    sheet.append(list(FINDING_COLUMNS))
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    for finding in result.findings:
        sheet.append([harmless(value) for value in finding_row(finding)])
    sheet.freeze_panes = "B2"
