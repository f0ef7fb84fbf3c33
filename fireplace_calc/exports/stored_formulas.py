"""Formulas of a spreadsheet, and beside them the values that they come to: so a preview that works
nothing out is not blank.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from fireplace_calc.base.resources import made_by

if TYPE_CHECKING:
    from _typeshed import SizedBuffer, StrPath

PROPERTIES = (
    '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">'
    f"<Application>{made_by()}</Application></Properties>"
)
SHEETS = "xl/worksheets/"
_EMPTY = re.compile(r'<c r="([A-Z]+[0-9]+)"([^>]*)>(<f>[^<]*</f>)(?:<v ?/>|<v></v>)')


class Formula(NamedTuple):
    """A formula, and the number it comes to [-]; None where it leaves its cell empty."""

    text: str
    value: float | None


class ColumnKind(NamedTuple):
    """Heading of a column, its width in letters [-], and how its figures are shown."""

    heading: str
    wide: float
    shown: str = "General"


class StoredBook:
    """A workbook that is written with the values of its formulas."""

    def __init__(self) -> None:
        import openpyxl

        self.book = openpyxl.Workbook()
        self.values: dict[str, dict[str, float | None]] = {}

    def sheet(self, title: str) -> Any:
        """The next sheet."""
        first = self.book.active if not self.values else self.book.create_sheet()
        first.title, self.values[title] = title, {}
        return first

    def put(
        self,
        sheet: Any,
        row: int,
        column: int,
        content: Any,
        shown: str = "General",
        bold: bool = False,
    ) -> None:
        """Fill one cell; its row and column count from 1. [-]"""
        from openpyxl.styles import Font

        cell = sheet.cell(row, column)
        if isinstance(content, Formula):
            cell.value = content.text
            self.values[sheet.title][cell.coordinate] = content.value
        else:
            cell.value = content
        if shown != "General":
            cell.number_format = shown
        if bold:
            cell.font = Font(bold=True)

    def headed(self, sheet: Any, row: int, columns: Sequence[ColumnKind]) -> None:
        """Put headings over a table, which stay in sight and are printed on every page; the row
        counts from 1. [-]
        """
        from openpyxl.styles import Alignment
        from openpyxl.utils import get_column_letter

        for number, column in enumerate(columns, 1):
            self.put(sheet, row, number, column.heading, bold=True)
            sheet.cell(row, number).alignment = Alignment(wrap_text=True, vertical="top")
            sheet.column_dimensions[get_column_letter(number)].width = column.wide
        sheet.freeze_panes = sheet.cell(row + 1, 2)
        sheet.page_setup.orientation, sheet.page_setup.fitToHeight = "landscape", 0
        sheet.sheet_properties.pageSetUpPr.fitToPage = True
        sheet.print_title_rows = f"{row}:{row}"

    def content(self) -> bytes:
        """The whole file."""
        from openpyxl.writer.excel import ExcelWriter

        written = BytesIO()
        with _Archive(written, "w", ZIP_DEFLATED) as archive:
            archive.values = {
                f"{SHEETS}sheet{number}.xml": self.values.get(sheet.title, {})
                for number, sheet in enumerate(self.book.worksheets, 1)
            }
            ExcelWriter(self.book, archive).save()
        return written.getvalue()


class _Archive(ZipFile):
    """The parts of a spreadsheet file: the values of formulas are put in, and where the library
    would name itself as program, we do.
    """

    values: dict[str, dict[str, float | None]]

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

    def write(
        self,
        filename: StrPath,
        arcname: StrPath | None = None,
        compress_type: int | None = None,
        compresslevel: int | None = None,
    ) -> None:
        """Write one part from a file; a sheet with its values."""
        values = self.values.get(str(arcname))
        if values is None:
            super().write(filename, arcname, compress_type, compresslevel)
            return
        text = Path(filename).read_text(encoding="utf-8")

        def stored(found: re.Match[str]) -> str:
            value = values[found[1]]
            kind, shown = (' t="str"', "") if value is None else ("", repr(value))
            return f'<c r="{found[1]}"{found[2]}{kind}>{found[3]}<v>{shown}</v>'

        self.writestr(str(arcname), _EMPTY.sub(stored, text))
