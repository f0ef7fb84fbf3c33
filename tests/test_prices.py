"""Price lists as spreadsheets save them: whatever can be told for certain is read, the rest is refused
by line and column.

Formats of numbers and files as the Unicode CLDR and RFC 4180 have them (from memory): what each
writes is made here, from the figures, by the test itself.
"""

import csv
import io
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fireplace_calc import assess
from fireplace_calc.base.units import CUYD, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.takeoff import all_goods
from fireplace_calc.takeoff.cost import bill, price_band, prices
from fireplace_calc.takeoff.yard.price_list import read_prices, unit_of
from fireplace_calc.takeoff.yard.suppliers import beside_goods, supplier_of

ITEMS = tuple(all_goods())
HEAD = ("item", "unit", "price", "currency", "per_pack", "low", "high")


def written(rows, separator=",", head=HEAD):
    out = io.StringIO()
    writer = csv.writer(out, delimiter=separator, lineterminator="\r\n")
    writer.writerows([head, *rows])
    return out.getvalue()


def refused(text, *said, name="mine.csv"):
    with pytest.raises(InputError) as raised:
        read_prices(text.encode() if isinstance(text, str) else text, name)
    for one in said:
        assert one in str(raised.value), str(raised.value)


def money(cents, decimal, thousands):
    """Two decimals, thousands set apart."""
    whole, part = divmod(cents, 100)
    return f"{whole:,}".replace(",", thousands) + f"{decimal}{part:02d}"


STYLES = [
    (",", ".", ""), (",", ".", ","), (",", ".", "'"), (",", ",", "."), (";", ",", "."),
    (";", ",", "\u00a0"), (";", ",", "\u202f"), (";", ".", "’"), (";", ",", ""), ("\t", ",", " "),
    ("\t", ".", ","),
]  # fmt: skip
SAVED = ["utf-8", "utf-8-sig", "cp1252", "utf-16", "utf-16-le", "utf-16-be"]


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.sampled_from(ITEMS), min_size=1, max_size=12, unique=True),
    st.data(),
    st.sampled_from(STYLES),
    st.sampled_from(SAVED),
    st.sampled_from(["", "sep"]),
    st.sampled_from(["{}", "€ {}", "{} EUR", "${}", "\u00a3{}"]),
)
def test_whatever_a_spreadsheet_saves_is_read_back(items, data, style, saved, first, around):
    separator, decimal, thousands = style
    if saved == "cp1252" and thousands == "\u202f":
        thousands = "\u00a0"
    cents = [data.draw(st.integers(0, 10**9)) for _ in items]
    rows = [
        (item, unit_of(item), around.format(money(c, decimal, thousands)), "EUR", "", "", "")
        for item, c in zip(items, cents, strict=True)
    ]
    text = written(rows, separator)
    text = f"sep={separator}\r\n{text}" if first else text
    found = read_prices(text.encode(saved), "mine.csv")
    assert list(found) == items
    for item, c in zip(items, cents, strict=True):
        assert found[item].price == float(Fraction(c, 100)), item
        assert (found[item].currency, found[item].unit) == ("EUR", unit_of(item))


def test_the_example_list_is_read_and_names_what_is_ordered():
    known = prices()
    assert set(known) <= set(all_goods())
    assert {one.currency for one in known.values()} == {"USD"}
    assert (known["Mortar"].price, known["Mortar"].per_pack) == (9.5, 42)
    known.clear()
    assert prices(), "whoever changes his copy changes no other"


WRONG = {
    "nan": '"nan" is no number', "NaN": "is no number", "inf": "is no number",
    "-inf": "is no number", "Infinity": "is no number", "1e5": "is no number",
    "9" * 400: "is no number", "twelve": "is no number", "12 %": "is no number",
    "0x10": "is no number", "-3": "is less than nought", "(3.50)": "is less than nought",
    "3.50-": "is less than nought", "−3": "is less than nought", "": "Mortar has none",
    "1.2.3": "is no number", "1,23,45": "is no number", "٣": "is no number",
    "9999999999999": "more than",
}  # fmt: skip


@pytest.mark.parametrize("cell", WRONG, ids=lambda cell: cell[:9] or "empty")
def test_a_price_that_is_none_is_refused_by_line_and_column(cell):
    rows = [("Common brick", "brick", "1.25", "", "", "", ""),
            ("Mortar", "80-lb bag", cell, "", "", "", "")]  # fmt: skip
    said = WRONG[cell].replace('"nan"', "'nan'")
    refused(written(rows), "mine.csv, line 3, column price", said)


def test_offers_and_packs_are_held_to_the_same():
    def line(**told):
        cells = {"item": "Mortar", "unit": "80-lb bag", "price": "10"} | told
        return written([[cells.get(one, "") for one in HEAD]])

    refused(line(low="nan"), "line 2, column low")
    refused(line(high="-1"), "line 2, column high", "less than nought")
    refused(line(low="11"), "column low", "over the price")
    refused(line(high="9"), "column high", "under the price")
    refused(line(per_pack="0"), "column per_pack", "from 1 on")
    refused(line(per_pack="2.5"), "column per_pack", "whole number")
    read = read_prices(line(low="10", high="10", per_pack="42").encode(), "x")["Mortar"]
    assert (read.low, read.high, read.per_pack, read.pack) == (10.0, 10.0, 42, "pack")


def test_twice_unknown_nameless_and_by_another_unit():
    bag = ("Mortar", "80-lb bag", "9", "", "", "", "")
    refused(written([bag, ("  mortar ", *bag[1:])]), "line 3, column item", "line 2 already")
    refused(written([("Mortr", *bag[1:])]), "line 2, column item", "likely Mortar or")
    refused(written([("Gold leaf", *bag[1:])]), "column item", "nothing that is ordered")
    refused(written([("", *bag[1:])]), "line 2, column item", "no name")
    refused(written([("Common brick", "piece", *bag[2:])]), "line 2, column unit", "by brick")
    refused(written([("Mortar", "", *bag[2:])]), "column unit", "by nothing")
    told = "Footing concrete is counted by yd3 or m3, and a price by 'bag'"
    refused(written([("Footing concrete", "bag", *bag[2:])]), told)
    refused(written([("Mortar", "m3", *bag[2:])]), "Mortar is counted by 80-lb bag, and a price")


def test_one_currency_to_a_list():
    rows = [("Mortar", "80-lb bag", "9", "EUR", "", "", ""),
            ("Common brick", "brick", "1", "", "", "", ""),
            ("Facing brick", "brick", "1", "crown", "", "", "")]  # fmt: skip
    refused(written(rows), "line 4, column currency", "line 2 has 'EUR'")
    read = read_prices(written(rows[:2]).encode(), "x")
    assert {one.currency for one in read.values()} == {"EUR"}


def test_a_mark_before_three_digits_is_told_by_the_others_or_refused():
    def read(separator, *cells):
        rows = [(item, unit_of(item), cell) for item, cell in zip(ITEMS, cells, strict=False)]
        found = read_prices(written(rows, separator, HEAD[:3]).encode(), "mine.csv")
        return [one.price for one in found.values()]

    assert read(";", "1.234", "12,50") == [1234, 12.5]
    assert read(";", "1,234", "12.50") == [1234, 12.5]
    assert read(",", "1.234", "7") == [1.234, 7], "commas between cells: a point before decimals"
    assert read(",", "1,234", "7") == [1234, 7]
    assert read(";", "0.125") == [0.125], "no thousand begins with nought"
    for separator in (";", "\t"):
        with pytest.raises(InputError, match=r"line 3, column price: '1.234' may be 1.234 or 1234"):
            read(separator, "7", "1.234")
    with pytest.raises(InputError, match=r"line 3, column price: .* decimal mark than line 2"):
        read(";", "12,50", "12.50")


def test_what_is_no_list_is_said():
    refused(b"PK\x03\x04rest", "is a workbook", "CSV")
    refused(b"\x81\x8d\xff", "cannot be read as text")
    refused("", "line 1", "holds nothing")
    refused("item;unit\nMortar;bag\n", "item, unit, price have to be among them")
    refused("item,item,unit,price\n", "column item: the column stands there twice")
    refused("item,unit,price\nMortar,80-lb bag,12,50\n", "line 2, column 4", "quotation marks")
    refused('item,unit,price\n"Mortar,80-lb bag,12\n', "line 2", "left open")
    with pytest.raises(InputError, match="cannot be opened"):
        prices("/nowhere/list.csv")


@pytest.mark.parametrize(
    ("row", "column", "said"),
    [
        ("1000000000001;1;2000000000000;40", "price", "more than 1e+12 for one 80-lb bag"),
        ("9;1;1000000000001;40", "high", "more than 1e+12 for one 80-lb bag"),
        ("9;9.01;12;40", "low", "the lowest offer is over the price"),
        ("9;8;8.99;40", "high", "the highest offer is under the price"),
        ("9;8;12;0", "per_pack", "a whole number from 1 on is wanted"),
        ("9;8;12;40.5", "per_pack", "a whole number from 1 on is wanted"),
    ],
)
def test_a_price_past_its_limit_is_refused_by_its_column(row, column, said):
    """The dearest unit that is taken, 10^12, is our own; the others follow from the words."""
    head = "item;unit;price;low;high;per_pack\n"
    refused(f"{head}Mortar;80-lb bag;{row}\n", f"line 2, column {column}", said)
    for taken in ("1000000000000;1;1000000000000;1", "9;9;9;1"):
        (found,) = read_prices(f"{head}Mortar;80-lb bag;{taken}\n".encode(), "x").values()
        assert found.high == found.price and found.low <= found.price and found.per_pack == 1


def test_lines_are_counted_as_they_stand_in_the_file():
    """Empty lines, a note of two lines and the line that names the separator count."""
    text = 'sep=;\r\n\r\nitem;unit;price;note\r\nMortar;80-lb bag;9;"two\nlines"\r\n;;;\r\nSand;ton;9;\r\n'
    refused(text, "line 7, column item")


def test_headings_in_any_order_and_hand():
    text = "Price, ITEM ,Unit,Per Pack,Something else\n9.5,hearth STONE,m²,40,x\n"
    (found,) = read_prices(text.encode(), "x").values()
    assert (found.item, found.unit, found.per_pack) == ("Hearth stone", "ft2", 40)
    assert found.price == pytest.approx(9.5 * 0.3048**2)


def test_concrete_by_the_cubic_meter_costs_the_same_per_yard():
    """100 a cubic meter: a yard is 0.764 554 857 984 m3 by definition."""
    text = "item,unit,price,low,high\nFooting concrete,m3,100,90,110\n"
    (found,) = read_prices(text.encode(), "x").values()
    assert found.unit == "yd3" and abs(CUYD - 0.764554857984) < 1e-12
    assert (found.price, found.low, found.high) == pytest.approx(
        (76.4554857984, 68.81, 84.1), rel=1e-4
    )


def test_everything_has_somebody_who_sells_it():
    for item in (*all_goods(), *beside_goods(), "Piece A1, back"):
        assert supplier_of(item), item
    assert not set(all_goods()) & set(beside_goods())


def test_the_bill_of_a_list_of_ones_own_is_the_sum_by_hand():
    rows = assess(Design()).takeoff
    text = written([(row.item, row.unit, "2,5", "EUR", "", "2", "4") for row in rows], ";")
    known = read_prices(text.encode("utf-16"), "mine.csv")
    found = bill(rows, known)
    assert found.total == pytest.approx(2.5 * sum(row.order for row in rows))
    band = price_band(found, known)
    assert band.low <= 2 * sum(row.order for row in rows) and not found.unpriced
    assert band.currency == "EUR"


def test_a_column_that_stands_twice_is_refused_by_the_name_of_the_list():
    text = "item,unit,price,price\nCommon brick,brick,1,2\n"
    refused(text, "mine.csv, line 1, column price: the column stands there twice.")
