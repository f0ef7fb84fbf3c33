"""How the files for other programs look when they are opened: where the views and their dimensions
stand in the DXF, on which layers and in which colors; how the spreadsheet is laid out and printed.
"""

import openpyxl
import pytest

from fireplace_calc import assess, load
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, MM
from fireplace_calc.exports import write_spreadsheet
from fireplace_calc.report.csv_files import FINDING_COLUMNS, harmless
from fireplace_calc.report.sentences import CAUTION
from fireplace_calc.takeoff import total_weight
from fireplace_calc.takeoff.cost import prices

UNITS = [("feet-inches", INCH), ("millimetres", MM)]
BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")


# -- spreadsheet ---------------------------------------------------------------------------------
@pytest.fixture(scope="module")
def book(tmp_path_factory):
    """The example's order, and what it was made from; two items are without a price."""
    result = assess(BOATHOUSE)
    known = {item: p for item, p in prices().items() if item not in ("Mortar", "Hearth stone")}
    path = tmp_path_factory.mktemp("xlsx") / "order.xlsx"
    return result, openpyxl.load_workbook(write_spreadsheet(result, known, path))


def test_the_order_begins_with_name_caution_and_what_is_not_in_it(book):
    result, opened = book
    sheet = opened["Order"]
    assert (sheet["A1"].value, sheet["A1"].font.b, sheet["A1"].font.sz) == (
        "Boathouse club room, laid",
        True,
        14,
    )
    assert sheet["A2"].value == CAUTION
    assert sheet["A3"].value == (
        "Every price is an invented example: put in your own. Currency: USD. Labor, equipment,"
        f" freight and tax are not in it. Written by {made_by()}."
    )
    assert [sheet.cell(5, 1).value, sheet.cell(5, 14).value] == ["Item", "How counted"]
    for cell in sheet[5]:
        assert cell.font.b and cell.alignment.wrap_text and cell.alignment.vertical == "top"
    last = 5 + len(result.takeoff)
    assert sheet.cell(last + 2, 1).value == (
        "Without a price, and not in the cost: Hearth stone, Mortar."
    )
    assert (opened.properties.creator, opened.properties.title) == (
        made_by(),
        "Boathouse club room, laid",
    )


def test_each_column_is_shown_as_what_it_is(book):
    """Counts to two places, waste in whole per cents, weight in whole kilograms, volume in liters."""
    result, opened = book
    sheet = opened["Order"]
    last = 5 + len(result.takeoff)
    wanted = {
        4: "#,##0.00",
        5: "0 %",
        6: "General",
        7: "#,##0.00",
        8: "#,##0.00",
        9: "#,##0.00",
        10: "#,##0",
        11: "0.000",
        12: "General",
    }
    for row, number in zip(result.takeoff, range(6, last + 1), strict=True):
        assert {k: sheet.cell(number, k).number_format for k in wanted} == wanted
        assert sheet.cell(number, 2).value == row.material
        assert sheet.cell(number, 3).value == row.unit
        assert sheet.cell(number, 4).value == pytest.approx(row.net)
        assert sheet.cell(number, 10).value == pytest.approx(row.weight_kg)
        assert sheet.cell(number, 11).value == pytest.approx(row.volume)
        assert sheet.cell(number, 14).value == (row.note or None)
        known = row.item not in ("Mortar", "Hearth stone")
        assert (sheet.cell(number, 8).value is not None) == known
    assert sheet.cell(last + 1, 1).value == "Whole" and sheet.cell(last + 1, 1).font.b
    for column in (9, 10, 11):
        total = sheet.cell(last + 1, column)
        assert total.font.b and total.number_format == wanted[column]
        letter = "ABCDEFGHIJKL"[column - 1]
        assert total.value == f"=SUM({letter}6:{letter}{last})"
    assert total_weight(result.takeoff) == pytest.approx(result.weight)


def test_the_order_prints_on_pages_one_wide_under_its_headings(book):
    """Landscape, as many pages high as it takes, headings on each; the names stay when one scrolls."""
    sheet = book[1]["Order"]
    assert sheet.page_setup.orientation == "landscape"
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToHeight, sheet.page_setup.fitToWidth) in ((0, None), (0, 1))
    assert sheet.print_title_rows == "$5:$5" and sheet.freeze_panes == "B6"


def test_no_word_of_the_order_is_hidden_by_a_narrow_column(book):
    """A letter takes about one unit of width; headings wrap, so their longest word counts."""
    result, opened = book
    sheet = opened["Order"]
    longest = {
        "A": [row.item for row in result.takeoff],
        "B": [row.material for row in result.takeoff],
        "C": [row.unit for row in result.takeoff],
    }
    for column, letter in enumerate("ABCDEFGHIJKLMN", 1):
        wide = sheet.column_dimensions[letter].width
        heading = sheet.cell(5, column).value
        needed = max(map(len, [*heading.split(), *longest.get(letter, [])]))
        assert needed <= wide <= max(2.5 * needed, 60), (letter, needed, wide)
    widths = [sheet.column_dimensions[letter].width for letter in "ABCDEFGHIJKLMN"]
    assert widths == [26, 28, 12, 10, 8, 9, 11, 11, 12, 12, 10, 8, 13, 60]


def test_packs_are_worked_out_where_there_are_packs(book):
    result, opened = book
    sheet, known = opened["Order"], prices()
    for number, row in enumerate(result.takeoff, 6):
        price = known.get(row.item)
        pack = price.per_pack if row.item not in ("Mortar", "Hearth stone") else None
        formula = sheet.cell(number, 12).value
        assert formula == (f"=ROUNDUP(G{number}/{pack},0)" if pack else None)
        assert bool(sheet.cell(number, 13).value) == bool(pack)


def test_every_finding_has_its_row(book):
    result, opened = book
    sheet = opened["Findings"]
    assert [cell.value for cell in sheet[1]] == [*FINDING_COLUMNS]
    assert all(cell.font.b for cell in sheet[1]) and sheet.freeze_panes == "B2"
    for number, finding in enumerate(result.findings, 2):
        for cell, name in zip(sheet[number], FINDING_COLUMNS, strict=True):
            value = getattr(finding, name)
            value = harmless(" ".join(value) if isinstance(value, tuple) else value)
            assert cell.value == (None if value == "" else value)
    assert sheet.max_row == 1 + len(result.findings)
