"""The order by supplier: every row of the takeoff once, in the turn of use, with weights that add up;
what the job takes besides, priced or named; and the sheets it is printed on.
"""

import base64
import csv
import io
import re
from collections import Counter
from dataclasses import replace
from datetime import UTC, datetime
from itertools import pairwise
from math import ceil
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import INCH, POUND, SYSTEMS, InputError
from fireplace_calc.build.lifting.equation import HOIST
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.sizes import PAPERS, paper
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.yard.blocks import OrderBlock, _Place, _put, columns_of, laid_out
from fireplace_calc.drawing.yard.order_sheets import _each
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.panels import panel
from fireplace_calc.panels.folds.order_and_cost import FILL_IN
from fireplace_calc.report.sentences import quantity, weight
from fireplace_calc.report.yard.asked_for import in_units, loaded_as, size_of, weight_ordered
from fireplace_calc.report.yard.beside_the_list import HELPERS, MASON, _days, _hands
from fireplace_calc.report.yard.by_supplier import first_uses, not_known, not_priced, yard_order
from fireplace_calc.report.yard.kept_list import LIST, kept_prices, list_to_fill_in
from fireplace_calc.report.yard.money import beside_words, left_out
from fireplace_calc.takeoff.cost import bill, prices
from fireplace_calc.takeoff.goods import all_goods
from fireplace_calc.takeoff.rules_of_thumb import second_opinion
from fireplace_calc.takeoff.yard.price_list import Price, read_prices, unit_of
from fireplace_calc.takeoff.yard.suppliers import beside_goods
from fireplace_calc.takeoff.yard.written_list import price_text

SLOW = settings(deadline=None, max_examples=40, suppress_health_check=list(HealthCheck))
SHIPPED = {path.stem: assess(load(path)) for path in sorted(DESIGNS.glob("*.toml"))}
RATES = {"Labor, mason": 60.0, "Labor, helpers": 30.0, "Staging": 40.0, "Hoist or crane": 500.0,
         "Delivery": 75.0, "Permit, inspections": 250.0, "Sales tax": 7.5, "Flashing": 320.0}  # fmt: skip


def rated(rates=RATES, currency="USD"):
    """The example list with rates beside it, all invented here."""
    more = {
        item: Price(item, unit_of(item), price, currency, None, "", "mine")
        for item, price in rates.items()
    }
    return prices() | more


def held(result, known=None):
    """An order in which everything stands once and adds up."""
    known = prices() if known is None else known
    found = yard_order(result, known)
    lines = [line for one in found.suppliers for line in one.lines]
    rows = [row for line in lines for row in line.rows]
    assert sorted(map(id, rows)) == sorted(map(id, result.takeoff)), "every row, once"
    uses = first_uses(result)
    for line in lines:
        assert line.order == pytest.approx(sum(row.order for row in line.rows))
        assert {row.unit for row in line.rows} == {line.unit}
        assert line.weight == pytest.approx(
            sum(weight_ordered(row, result.design) for row in line.rows)
        )
        assert line.weight >= sum(row.weight_kg for row in line.rows) * (1 - 1e-9)
        assert line.step is not None and line.step == min(uses[row.item][0] for row in line.rows)
        assert 1 <= line.day <= ceil(result.work.calendar + 1)
    for one in found.suppliers:
        assert [line.step for line in one.lines] == sorted(line.step for line in one.lines)
        assert one.weight == pytest.approx(sum(line.weight for line in one.lines))
    assert all(a.first <= b.first for a, b in pairwise(found.suppliers))
    assert sum(one.amount for one in found.suppliers) <= found.bill.total * (1 + 1e-9)
    if not found.bill.unpriced:
        assert sum(one.amount for one in found.suppliers) == pytest.approx(found.bill.total)
    return found


@pytest.mark.parametrize("name", SHIPPED)
def test_every_row_is_ordered_once_and_in_its_turn(name):
    held(SHIPPED[name])


@SLOW
@given(designs())
def test_so_it_is_with_any_design(design):
    held(assess(design))


def test_whole_and_cut_pieces_are_loaded_as_one():
    """By hand from the takeoff: so many whole bricks and so many to cut come on the packs of both."""
    result = SHIPPED["boathouse-laid"]
    rows = {row.item: row for row in assess(Design()).takeoff}
    found = yard_order(assess(Design()), prices())
    line = next(line for one in found.suppliers for line in one.lines if line.item == "Firebrick")
    both = rows["Firebrick, whole"].order + rows["Firebrick, cut"].order
    assert line.order == both and line.packs == ceil(both / 25) and line.pack == "strapped pack"
    assert loaded_as("Base block, cut") == "Base block" and result.takeoff


def test_bricks_that_are_cut_on_site_come_whole():
    """9 x 4-1/2 x 2-1/2 in at 145 lb/ft3 (common table of weights, read): 8.5 lb, whatever is cut
    off it.
    """
    result = assess(Design())
    row = next(row for row in result.takeoff if row.item == "Firebrick, cut")
    each = 9 * 4.5 * 2.5 / 1728 * 145 * POUND
    assert weight_ordered(row, result.design) == pytest.approx(row.order * each)
    bag = next(row for row in result.takeoff if row.item == "Mortar")
    assert weight_ordered(bag, result.design) == pytest.approx(bag.order * 80 * POUND)


def test_a_supplier_that_the_list_names_takes_the_place_of_the_usual_one():
    known = prices()
    known["Mortar"] = replace(known["Mortar"], supplier="the yard down the road")
    found = held(SHIPPED["plain"], known)
    assert [line.item for one in found.suppliers for line in one.lines
            if one.supplier == "the yard down the road"] == ["Mortar"]  # fmt: skip


def test_what_a_yard_is_told():
    result = assess(Design())
    asked = {row.item: size_of(row, result, "feet-inches") for row in result.takeoff}
    assert asked["Common brick"] == '8" x 2 1/4" x 3 3/4"'
    assert asked["Firebrick, cut"] == '9" x 4 1/2" x 2 1/2"'
    assert asked["Half-high block"] == '1\'-3 5/8" x 3 5/8" x 7 5/8"'
    assert asked["Clay flue liner"].endswith("2'-0\" long")
    assert asked["Steel lintel"].startswith('angle 1/4" thick')
    metric = size_of(
        next(r for r in result.takeoff if r.item == "Steel lintel"), result, "millimetres"
    )
    assert metric.startswith("angle 6 mm thick") and '"' not in metric
    assert in_units("4'-6\" long", "millimetres") == f"{54 * INCH * 1000:,.0f} mm long".replace(
        ",", " "
    )


def test_what_the_job_takes_besides_is_priced_or_named():
    """80.7 hours, of which the rates make sums by hand; what has none is named, and what nobody
    has told is not counted.
    """
    result = SHIPPED["boathouse"]
    found = yard_order(result, rated())
    lines = {line.item: line for line in found.beside}
    hours = result.work.hours
    assert lines[MASON].amount == pytest.approx(60 * hours)
    assert lines[HELPERS].amount == pytest.approx(30 * hours * (result.work.people - 1))
    assert lines["Delivery"].amount == 75 * len(found.suppliers)
    assert lines["Sales tax"].amount == pytest.approx(0.075 * found.bill.total)
    assert found.beside_total == pytest.approx(
        sum(line.amount for line in found.beside if line.amount is not None)
    )
    assert "Damper" in not_priced(found.beside) and "Flashing" not in not_priced(found.beside)
    assert "Bars and ties" in not_known(found.beside)
    assert lines["Bars and ties"].amount is None
    for line in found.beside:
        assert line.unit == beside_goods()[line.item].unit and line.why


@pytest.mark.parametrize(("changes", "item", "count"), [
    ({"throat.damper": "none"}, "Damper", "absent"),
    ({"throat.damper": "flue top"}, "Damper", 1),
    ({"throat.damper": "unknown"}, "Damper", None),
    ({"roof.cricket": "yes"}, "Cricket", 1),
    ({"roof.cricket": "no"}, "Cricket", "absent"),
    ({"air.exterior_air_supply": "yes"}, "Outside air kit", 1),
    ({"ground.ash_dump": "yes"}, "Ash dump", 1),
    ({"anchorage.vertical_bars_no4": 4}, "Bars and ties", 1),
    ({"anchorage.vertical_bars_no4": 0}, "Bars and ties", "absent"),
    ({"opening.head": "segmental", "opening.rise": "4 in"}, "Centering", 1),
    ({}, "Centering", "absent"),
    ({"surround.mortar": "white"}, "Colored mortar", 1),
    ({}, "Colored mortar", "absent"),
    ({"surround.face": "plaster", "surround.mortar": "white"}, "Colored mortar", "absent"),
    ({"mantel.family": "shelf", "mantel.material": "painted wood"}, "Mantel paint", 1),
    ({"work.people": 1}, HELPERS, "absent"),
    ({"clearance.fireblock": "noncombustible"}, "Fireblocking", 1),
    ({"clearance.fireblock": "none"}, "Fireblocking", "absent"),
    ({}, "Permit, inspections", 1),
    ({}, "Flashing", 1),
    ({"stack.cleanout": "yes"}, "Clean-out door", 1),
    ({"stack.cleanout": "no"}, "Clean-out door", "absent"),
    ({"stack.cleanout": None, "stack.cleaned_through_opening": "yes"}, "Clean-out door", "absent"),
    ({"stack.cleanout": None, "stack.cleaned_through_opening": "no"}, "Clean-out door", None),
    ({"anchorage.strap_count": 2}, "Straps and anchors", 1),
    ({"anchorage.strap_count": 0}, "Straps and anchors", "absent"),
    ({"anchorage.vertical_bars_no4": None, "anchorage.chimney_reinforced": "yes"}, "Bars and ties", 1),
    ({"ground.reinforced": "yes"}, "Footing bars", 1),
    ({"ground.reinforced": "no"}, "Footing bars", "absent"),
    ({"clearance.fill": "noncombustible"}, "Insulation of the air space", 1),
    ({"clearance.accessory": "yes"}, "Doors or accessory", 1),
    ({"clearance.accessory": "no"}, "Doors or accessory", "absent"),
    ({}, "Forms", 1),
])  # fmt: skip
def test_it_stands_there_where_it_is_wanted(changes, item, count):
    found = yard_order(assess(change(Design(), changes)), prices())
    lines = {line.item: line.count for line in found.beside}
    assert lines.get(item, "absent") == count


def test_words_name_everything_that_has_no_rate():
    found = yard_order(SHIPPED["boathouse"], prices())
    assert left_out(found) == (
        "Not in it: labor, about 81 hours of one mason, hardware such as damper and flashing,"
        " equipment, freight, permit and tax"
    )
    assert beside_words(found, "feet-inches") == ""
    some = yard_order(SHIPPED["boathouse"], rated())
    assert left_out(some) == "Not in it: hardware such as damper and cricket"
    said = beside_words(some, "feet-inches")
    assert (
        said.startswith("Beside the materials ")
        and "labor of one mason, about 81 hours, 4,847" in said
    )
    every = dict.fromkeys(beside_goods(), 1.0)
    assert left_out(yard_order(SHIPPED["boathouse"], rated(every))) == "All of it is priced"


def test_packs_of_one_row_are_those_of_the_bill():
    result = SHIPPED["plain"]
    by_row = {line.row.item: line.packs for line in bill(result.takeoff, prices()).lines}
    for one in yard_order(result, prices()).suppliers:
        for line in one.lines:
            if len(line.rows) == 1:
                assert line.packs == by_row[line.rows[0].item]


# -- on paper ------------------------------------------------------------------------------------
def printed(result, units="feet-inches", size="A3", known=None):
    """Its sheets, clean, with 0.7 mm round every letter."""
    made = whole_set.sheets(result, units, size, prices=known, makers=("yard.order_sheets",))
    for _, sheet in made:
        assert collisions(sheet, 0.7) == []
    return [sheet for _, sheet in made]


def letters(sheets):
    return [label.text for sheet in sheets for label in sheet.labels]


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", SHIPPED)
def test_the_order_is_printed_whole_on_any_paper(name, units, size):
    """Every item has its row under its supplier, with its amount and its weight; what is wanted
    besides and every rule of thumb stand there once.
    """
    result = SHIPPED[name]
    sheets = printed(result, units, size)
    told = Counter(letters(sheets))
    found = yard_order(result, prices())
    for one in found.suppliers:
        assert told[one.supplier.capitalize()] == 1
        assert told[weight(one.weight, units)] >= 1
        for line in one.lines:
            amount = quantity(line.order, line.rows[0], units)
            assert any(text.startswith(amount.split()[0]) for text in told), line.item
    everything = "".join(letters(sheets)).replace(" ", "")
    for line in found.bill.lines:
        assert loaded_as(line.row.item).replace(" ", "") in everything, line.row.item
    for line in found.beside:
        assert (line.item.replace(" ", "") in everything) == (line.count is not None), line.item
    for one in second_opinion(result.geometry, result.takeoff):
        assert one.what.replace(" ", "") in everything, one.what
    if size in ("A3", "11x17"):
        assert len(sheets) <= 2


@settings(SLOW, max_examples=16)
@given(designs(), st.sampled_from([*PAPERS]), st.sampled_from(SYSTEMS))
def test_any_order_is_printed_clean(design, size, units):
    result = assess(design)
    sheets = printed(result, units, size)
    told = letters(sheets)
    for one in yard_order(result, prices()).suppliers:
        assert sum(text == one.supplier.capitalize() for text in told) == 1


def test_no_row_is_broken():
    """A block that is longer than any column goes on elsewhere: a box to tick for every row, and a
    rule under it, on the same sheet.
    """
    rows = tuple((f"Item {n}", "so many", "words " * (n % 7)) for n in range(90))
    block = OrderBlock("Long", "", ("Before.",), (Column("A", 1), Column("B", 1), Column("C", 2)), rows,
                  ("After.",), 1, True)  # fmt: skip
    on = paper("feet-inches", "letter")
    made = laid_out("Test", [block], on)
    told = [[label.text for label in plate.sheet.labels] for plate in made]
    assert [text for sheet in told for text in sheet if text.startswith("Item")] == [
        r[0] for r in rows
    ]
    assert len(made) > 1 and all(sheet.count("A") == 1 for sheet in told)
    for plate, sheet in zip(made, told, strict=True):
        assert sheet.count("so many") == sum(text.startswith("Item") for text in sheet)
        assert collisions(plate.sheet, 0.7) == []
        bottom = min(label.extent[1] for label in plate.sheet.labels)
        assert bottom > on.frame.bottom
    assert told[0][0] == "Long" and told[1][0] == "Long, continued"
    assert [sheet.count("After.") for sheet in told] == [0] * (len(made) - 1) + [1]


def test_blocks_keep_clear_of_the_title_block_and_of_each_other():
    for size in PAPERS:
        on = paper("feet-inches", size)
        for cell in columns_of(on):
            assert not cell.meets(on.block) and cell.right - cell.left >= 175
    for sheet in printed(SHIPPED["boathouse"]):
        labels = [label.extent for label in sheet.labels]
        assert all(b > 9 for _, b, _, _ in labels[:-3])


def test_a_torn_off_block_says_whose_it_is_and_has_room_for_a_price():
    result = SHIPPED["plain"]
    found = yard_order(result, prices())
    told = letters(printed(result))
    mark = f"Inputs {fingerprint(result.design)}."
    assert sum(mark in text for text in told) == len(found.suppliers)
    assert sum(text == "Amount" for text in told) == len(found.suppliers)


def test_money_on_paper_is_the_lists():
    result = SHIPPED["plain"]
    told = " ".join(letters(printed(result, known=rated())))
    found = yard_order(result, rated())
    assert f"Total: {found.bill.total:,.2f} USD" in told
    assert f"{60 * result.work.hours:,.2f}" in told
    bare = " ".join(letters(printed(result, known={})))
    assert "(no currency named)" in bare and "no price yet" in bare


# -- the reader's own list in a panel -------------------------------------------------------------
OWN = "item;unit;price;currency\nMortar;80-lb bag;12,5;crown\nLabor, mason;hour;60;crown\n"


def upload(fold, text, name="mine.csv"):
    fold.upload.value = ({"name": name, "type": "text/csv", "size": len(text), "content": text,
                          "last_modified": datetime.now(UTC)},)  # fmt: skip


def test_a_list_is_kept_with_the_job_and_prices_everything(tmp_path):
    made = panel(load(DESIGNS / "plain.toml"), keep=tmp_path)
    made.open("cost")
    fold = made.folds["cost"]
    assert "invented example" in fold.said.value and fold.example.disabled
    upload(fold, OWN.encode("utf-16"))
    assert "mine.csv, 2 items, crown" in fold.said.value and not fold.example.disabled
    hours = made.result.work.hours
    assert f"{60 * hours:,.2f}" in fold.words.value
    bags = next(row.order for row in made.result.takeoff if row.item == "Mortar")
    assert f"{12.5 * bags:,.0f} crown" in str(made.told_strip())
    again = panel(load(DESIGNS / "plain.toml"), keep=tmp_path)
    assert kept_prices(again.session.words) == read_prices(OWN.encode(), "x")
    fold.example.click()
    assert "invented example" in fold.said.value and LIST not in made.session.words
    assert kept_prices(made.session.words) == prices()


def test_a_list_that_cannot_be_read_changes_nothing_and_is_answered():
    made = panel(load(DESIGNS / "plain.toml"))
    made.open("cost")
    upload(made.folds["cost"], b"item,unit,price\nMortar,80-lb bag,nan\n")
    assert "line 2, column price" in made.said.value and LIST not in made.session.words
    upload(made.folds["cost"], b"item,unit,price\n")
    assert "holds no price" in made.said.value


def test_a_list_to_fill_in_names_everything_and_is_read_once_it_is_filled_in():
    result = SHIPPED["boathouse"]
    known = prices()
    text = list_to_fill_in(result, yard_order(result, known), known)
    with pytest.raises(InputError, match="has none"):
        read_prices(text.encode(), "x")
    rows = list(csv.DictReader(io.StringIO(text)))
    wanted = {row.item for row in result.takeoff}
    wanted |= {line.item for line in yard_order(result, known).beside}
    assert {row["item"] for row in rows} == wanted
    for row in rows:
        row["price"] = row["price"] or "1"
    out = io.StringIO()
    writer = csv.DictWriter(out, rows[0])
    writer.writeheader()
    writer.writerows(rows)
    filled = read_prices(out.getvalue().encode(), "x")
    assert not bill(result.takeoff, filled).unpriced
    assert left_out(yard_order(result, filled)) == "All of it is priced"


def test_the_list_to_fill_in_comes_as_a_file_for_a_spreadsheet():
    made = panel(load(DESIGNS / "plain.toml"))
    made.open("cost")
    fold = made.folds["cost"]
    assert fold.link.value == ""
    upload(fold, OWN.encode())
    fold.fill_in.click()
    known = read_prices(OWN.encode(), "mine.csv")
    text = list_to_fill_in(made.result, yard_order(made.result, known), known)
    found = re.fullmatch(
        r'<a download="([^"]+)" href="data:text/csv;base64,([^"]+)">Download (.+)</a>',
        fold.link.value,
    )
    assert found[1] == found[3] == FILL_IN
    assert base64.b64decode(found[2]) == b"\xef\xbb\xbf" + text.encode()
    assert text != list_to_fill_in(made.result, yard_order(made.result, prices()), prices())


def test_a_list_is_written_as_it_is_read():
    known = prices()
    assert read_prices(price_text(known).encode(), "x") == known
    odd = {
        "Mortar": Price("Mortar", "80-lb bag", 1e-7 / 3, "", 7, "pack", "mine", 1e-9, 5e11, "A, B")
    }
    assert read_prices(price_text(odd).encode(), "x") == odd


@pytest.mark.parametrize(
    ("start", "end", "days"),
    [(0.0, 2.0, [0, 1]), (0.5, 1.0, [0]), (1.2, 2.1, [1, 2]), (3.0, 3.0, [3])],
)
def test_work_that_ends_with_a_day_takes_none_of_the_next(start, end, days):
    assert [*_days(start, end)] == days


@pytest.mark.parametrize("name", ["plain", "boathouse"])
def test_a_hoist_is_hired_for_the_days_on_which_something_wants_it(name):
    result = SHIPPED[name]
    lines = {line.item: line.count for line in yard_order(result, prices()).beside}
    wanting = {lift.step for lift in result.work.lifts if lift.verdict == HOIST}
    days = {
        day
        for step in result.work.steps
        if step.number in wanting
        for day in range(int(step.start + 1e-9), max(ceil(step.end - 1e-9), 1))
    }
    assert lines.get("Hoist or crane", 0) == len(days)


def test_a_line_of_which_one_row_has_no_price_has_none():
    """Whole firebrick is priced, cut ones are not: the two together have no amount."""
    known = {item: price for item, price in prices().items() if item != "Firebrick, cut"}
    lines = [line for one in yard_order(SHIPPED["plain"], known).suppliers for line in one.lines]
    (firebrick,) = (line for line in lines if line.item == "Firebrick")
    assert len(firebrick.rows) == 2 and firebrick.amount is None


def test_a_ton_is_two_thousand_pounds():
    """907.185 kg, so a ton costs 0.907185 of what a metric ton does (NIST Handbook 44)."""
    item = next(name for name, goods in all_goods().items() if goods.unit == "ton")
    told = f"item,unit,price\n{item},t,100\n"
    assert read_prices(told.encode(), "mine.csv")[item].price == pytest.approx(90.7185, abs=1e-4)


def test_a_square_meter_is_ten_and_three_quarters_square_feet():
    """0.3048 m to the foot: 0.092903 m2 to the square foot."""
    item = next(name for name, goods in all_goods().items() if goods.unit == "ft2")
    told = f"item,unit,price\n{item},m2,100\n"
    assert read_prices(told.encode(), "mine.csv")[item].price == pytest.approx(9.2903, abs=1e-4)


def test_a_hoist_is_there_on_every_day_of_what_it_lifts():
    """From the middle of the first day into the third: three days; a step without it counts none."""
    work = SimpleNamespace(
        hours=20.0,
        people=1,
        staging=(),
        lifts=[SimpleNamespace(step=1, verdict=HOIST), SimpleNamespace(step=2, verdict="")],
        steps=[
            SimpleNamespace(number=1, start=0.5, end=2.2),
            SimpleNamespace(number=2, start=2.2, end=5.0),
        ],
    )
    told = dict(_hands(SimpleNamespace(work=work, structure=SimpleNamespace(engineer=()))))
    assert told == {MASON: 20.0, "Hoist or crane": 3.0}


def test_a_price_is_told_for_the_bag_and_the_ton_of_the_reader():
    """An 80-lb bag is 36.287 kg, a ton 907.185 kg (NIST Handbook 44): of 25 kg, and of 1000."""

    def line(unit, *prices):
        rows = (SimpleNamespace(unit=unit),)
        return SimpleNamespace(rows=rows, priced=[SimpleNamespace(price=p) for p in prices])

    for unit, price, american, metric in (
        ("80-lb bag", 9.5, "9.50", "6.54 for 25 kg"),
        ("50-lb pail", 62.0, "62.00", "68.34 for 25 kg"),
        ("ton", 30.0, "30.00", "33.07"),
        ("brick", 0.75, "0.75", "0.75"),
    ):
        assert _each(line(unit, price, price), "feet-inches") == american
        assert _each(line(unit, price), "millimetres") == metric
    assert (
        _each(line("brick", 0.75, 0.8), "feet-inches") == _each(line("brick"), "millimetres") == ""
    )


def test_of_a_block_in_a_narrow_column_the_line_that_sends_on_has_room_for_both_its_rows():
    """Rows of 5 mm under a title of 7.2 and headings of 5; *Continued in the next block.* takes 8.7 mm
    in two lines, where 5 had been counted: a row fewer.
    """
    rows = tuple((f"row {n}", f"{n}") for n in range(12))
    block = OrderBlock("Order", "", (), (Column("What", 2), Column("No.", 1)), rows, ())
    sheet = Sheet(100.0, 200.0)
    place = _Place(sheet, Cell(10.0, 150.0 - (7.2 + 5.0 + 6 * 5.0 + 5.1), 40.0, 150.0), 150.0)
    rest = _put(place, block, 30.0)
    assert rest.title == "Order, continued" and rest.rows == rows[5:] and rest.before == ()
    texts = [label.text for label in sheet.labels]
    assert [text for text in texts if text.startswith("row")] == [f"row {n}" for n in range(5)]
    assert "Continued in" in texts and "the next block." in texts
    assert min(label.extent[1] for label in sheet.labels) >= place.cell.bottom
    wide = _Place(Sheet(200.0, 200.0), Cell(10.0, place.cell.bottom, 110.0, 150.0), 150.0)
    assert _put(wide, block, 100.0).rows == rows[6:]
    assert _put(replace(wide, top=150.0), replace(block, rows=rows[:1]), 100.0) is None


def test_a_list_of_a_job_that_cannot_be_read_any_longer_is_none():
    assert kept_prices({}) == kept_prices({LIST: "nonsense"}) == prices()
    own = kept_prices({LIST: "item,unit,price\nMortar,80-lb bag,9.99\n"})
    assert own["Mortar"].price == 9.99 and own != prices()
