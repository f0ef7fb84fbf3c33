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
from fireplace_calc.exports.order_table import COLUMNS, FIRST
from fireplace_calc.exports.spreadsheet import WORDED
from fireplace_calc.report.csv_files import FINDING_COLUMNS, harmless
from fireplace_calc.report.sentences import CAUTION, asked, compared
from fireplace_calc.takeoff import total_weight
from fireplace_calc.takeoff.cost import prices
from fireplace_calc.takeoff.yard.suppliers import supplier_of

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


def at(sheet):
    """Columns by what they hold, and rows by item."""
    held = {heading: key for key, (heading, _, _) in COLUMNS.items()}
    columns = {held[cell.value]: cell.column for cell in sheet[FIRST - 1]}
    rows = {sheet.cell(n, columns["item"]).value: n for n in range(FIRST, sheet.max_row + 1)}
    return columns, rows


def test_the_order_begins_with_name_caution_and_what_is_not_in_it(book):
    result, opened = book
    sheet = opened["Order"]
    assert (sheet["A1"].value, sheet["A1"].font.b, sheet["A1"].font.sz) == (
        "Boathouse club room, laid",
        True,
        14,
    )
    assert sheet["A2"].value == CAUTION
    hours = f"{result.work.hours:.0f}"
    assert sheet["A3"].value == (
        "Every price is an invented example: put in your own. Currency: USD. Not in it: labor,"
        f" about {hours} hours of one mason, hardware such as damper and flashing, equipment,"
        f" freight, permit and tax. Written by {made_by()}."
    )
    assert [sheet.cell(5, 1).value, sheet.cell(5, len(COLUMNS)).value] == [
        "Supplier",
        "How counted",
    ]
    for cell in sheet[5]:
        assert cell.font.b and cell.alignment.wrap_text and cell.alignment.vertical == "top"
    last = FIRST + len(result.takeoff)
    assert sheet.cell(last + 1, 1).value == (
        "Without a price, and not in the cost: Hearth stone, Mortar."
    )
    assert sheet.cell(last + 2, 1).value.startswith("Low and high: 20 % under to 30 % over")
    assert (opened.properties.creator, opened.properties.title) == (
        made_by(),
        "Boathouse club room, laid",
    )


SHOWN = {"net": "#,##0.00", "waste": "0 %", "step": "General", "order": "#,##0.00",
         "metric": "#,##0.00", "price": "#,##0.00", "cost": "#,##0.00", "low": "#,##0.00",
         "high": "#,##0.00", "pounds": "#,##0", "kilograms": "#,##0", "standing": "#,##0",
         "feet": "#,##0.00", "meters": "0.000", "packs": "General", "day": "General"}  # fmt: skip


def test_each_column_is_shown_as_what_it_is(book):
    """Counts to two places, waste in whole per cents, weight in whole kilograms, volume in liters."""
    result, opened = book
    sheet = opened["Order"]
    columns, rows = at(sheet)

    def cell(key, row):
        return sheet.cell(rows[row.item], columns[key])

    for row in result.takeoff:
        assert {key: cell(key, row).number_format for key in SHOWN} == SHOWN
        assert cell("material", row).value == row.material
        assert cell("unit", row).value == row.unit
        assert cell("net", row).value == pytest.approx(row.net)
        assert cell("standing", row).value == pytest.approx(row.weight_kg)
        assert cell("meters", row).value == pytest.approx(row.volume)
        assert cell("note", row).value == (row.note or None)
        assert cell("supplier", row).value == supplier_of(row.item)
        known = row.item not in ("Mortar", "Hearth stone")
        assert (cell("price", row).value is not None) == known
    last = FIRST + len(result.takeoff)
    assert sheet.cell(last, 1).value == "Total" and sheet.cell(last, 1).font.b
    for key in ("cost", "low", "high", "pounds", "kilograms", "standing", "feet", "meters"):
        total = sheet.cell(last, columns[key])
        assert total.font.b and total.number_format == SHOWN[key]
        letter = total.column_letter
        assert total.value == f"=SUM({letter}6:{letter}{last - 1})"
    assert total_weight(result.takeoff) == pytest.approx(result.weight)


def test_feet_and_inches_stand_beside_metric(book):
    """From the definitions: a yard is 0.9144 m, a foot 0.3048 m, a pound 0.45359237 kg."""
    result, opened = book
    sheet = opened["Order"]
    columns, rows = at(sheet)
    concrete = rows["Footing concrete"]
    formula = sheet.cell(concrete, columns["metric"]).value
    assert float(formula.partition("*")[2]) == pytest.approx(0.9144**3)
    assert sheet.cell(concrete, columns["metric unit"]).value == "m3"
    assert sheet.cell(rows["Common brick"], columns["metric"]).value is None
    assert sheet.cell(rows["Common brick"], columns["size"]).value == '8" x 2 1/4" x 3 3/4"'
    assert (
        sheet.cell(rows["Common brick"], columns["metric size"]).value == "203 mm x 57 mm x 95 mm"
    )
    pounds = sheet.cell(concrete, columns["pounds"]).value
    assert float(pounds.partition("/")[2]) == pytest.approx(0.45359237)
    feet = sheet.cell(concrete, columns["feet"]).value
    assert float(feet.partition("/")[2]) == pytest.approx(0.3048**3)
    assert result.takeoff


@pytest.mark.parametrize(
    ("title", "row", "frozen"),
    [("Order", 5, "C6"), ("By supplier", 1, "B2"), ("Beside the list", 1, "B2"),
     ("Findings", 1, "B2"), ("Draft", 1, "B2"), ("Structure", 1, "B2")],
)  # fmt: skip
def test_every_sheet_prints_on_pages_one_wide_under_its_headings(book, title, row, frozen):
    """Landscape, as many pages high as it takes, headings on each; the names stay when one scrolls."""
    sheet = book[1][title]
    assert sheet.page_setup.orientation == "landscape"
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToHeight, sheet.page_setup.fitToWidth) in ((0, None), (0, 1))
    assert sheet.print_title_rows == f"${row}:${row}" and sheet.freeze_panes == frozen


def test_no_word_of_the_order_is_hidden_by_a_narrow_column(book):
    """A letter takes about one unit of width; headings wrap, so their longest word counts."""
    result, opened = book
    sheet = opened["Order"]
    columns, _ = at(sheet)
    longest = {
        "item": [row.item for row in result.takeoff],
        "material": [row.material for row in result.takeoff],
        "unit": [row.unit for row in result.takeoff],
        "supplier": [supplier_of(row.item) for row in result.takeoff],
    }
    for key, number in columns.items():
        heading = sheet.cell(5, number)
        wide = sheet.column_dimensions[heading.column_letter].width
        needed = max(map(len, [*heading.value.split(), *longest.get(key, [])]))
        assert needed <= wide <= max(3 * needed, 70), (key, needed, wide)


def test_packs_are_worked_out_where_there_are_packs(book):
    result, opened = book
    sheet, known = opened["Order"], prices()
    columns, rows = at(sheet)
    for row in result.takeoff:
        number, price = rows[row.item], known.get(row.item)
        pack = price.per_pack if row.item not in ("Mortar", "Hearth stone") else None
        formula = sheet.cell(number, columns["packs"]).value
        order = sheet.cell(number, columns["order"]).coordinate
        assert formula == (f"=ROUNDUP({order}/{pack},0)" if pack else None)
        assert bool(sheet.cell(number, columns["pack"]).value) == bool(pack)


@pytest.mark.parametrize("title", ["Findings", "Draft", "Structure"])
def test_every_finding_has_its_row(book, title):
    """Bare figures as in the CSV, and before them words in both systems; draft and structure too."""
    result, opened = book
    findings = {"Findings": result.findings, "Draft": result.judgement,
                "Structure": result.structure.findings}[title]  # fmt: skip
    sheet = opened[title]
    headings = [cell.value for cell in sheet[1]]
    assert headings == [*FINDING_COLUMNS[:4], *WORDED, *FINDING_COLUMNS[4:]]
    assert all(cell.font.b for cell in sheet[1])
    for number, finding in enumerate(findings, 2):
        told = dict(zip(headings, (cell.value for cell in sheet[number]), strict=True))
        for name in FINDING_COLUMNS:
            value = getattr(finding, name)
            value = harmless(" ".join(value) if isinstance(value, tuple) else value)
            assert told[name] == (None if value == "" else value)
        for system, units in (("feet and inches", "feet-inches"), ("metric", "millimetres")):
            provided, _, spared = compared(finding, units)
            for words, value in (("provided", provided), ("required", asked(finding, units)),
                                 ("to spare", spared)):  # fmt: skip
                assert told[f"{words}, {system}"] == (harmless(value) or None)
    assert sheet.max_row == 1 + len(findings)
