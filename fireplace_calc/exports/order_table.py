"""The order as a table that goes on adding up: supplier by supplier, in feet and inches and metric
side by side.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import CUFT, CUYD, FEET_INCHES, MILLIMETRES, POUND, SQFT
from fireplace_calc.brickwork.face_bond import english
from fireplace_calc.exports.stored_formulas import ColumnKind, Formula, StoredBook
from fireplace_calc.report.csv_files import harmless
from fireplace_calc.report.sentences import CAUTION
from fireplace_calc.report.yard.asked_for import size_of, waste_of, weight_ordered
from fireplace_calc.report.yard.by_supplier import SupplierOrder, YardLine, YardOrder
from fireplace_calc.report.yard.money import left_out
from fireplace_calc.takeoff import goods_for
from fireplace_calc.takeoff.cost import Price, PricedLine, price_spread

MONEY, PART, MASS, VOLUME = "#,##0.00", "#,##0.00", "#,##0", "0.000"
COLUMNS: dict[str, ColumnKind] = {
    "supplier": ColumnKind("Supplier", 20),
    "item": ColumnKind("Item", 30),
    "size": ColumnKind("Size, feet and inches", 30),
    "metric size": ColumnKind("Size, metric", 30),
    "material": ColumnKind("Material", 26),
    "unit": ColumnKind("Unit", 12),
    "net": ColumnKind("Net", 10, PART),
    "waste": ColumnKind("Waste", 8, "0 %"),
    "step": ColumnKind("Sold by", 9),
    "spare": ColumnKind("Spare, at least", 9),
    "order": ColumnKind("To order", 11, PART),
    "metric": ColumnKind("To order, metric", 11, PART),
    "metric unit": ColumnKind("Metric unit", 9),
    "price": ColumnKind("Price of one", 11, MONEY),
    "cost": ColumnKind("Cost", 12, MONEY),
    "low": ColumnKind("Cost, low", 12, MONEY),
    "high": ColumnKind("Cost, high", 12, MONEY),
    "pounds": ColumnKind("Weight as ordered [lb]", 11, MASS),
    "kilograms": ColumnKind("Weight as ordered [kg]", 11, MASS),
    "standing": ColumnKind("Weight in the work [kg]", 11, MASS),
    "feet": ColumnKind("Volume [ft3]", 10, PART),
    "meters": ColumnKind("Volume [m3]", 10, VOLUME),
    "packs": ColumnKind("Packs", 8),
    "pack": ColumnKind("Pack", 14),
    "used": ColumnKind("First step", 8),
    "day": ColumnKind("First day", 8),
    "note": ColumnKind("How counted", 70),
}
"""By what they hold."""
LETTER = {key: chr(65 + n) if n < 26 else f"A{chr(65 + n - 26)}" for n, key in enumerate(COLUMNS)}
FIRST = 6
"""Row of the first item; over it stand name, caution and the headings. [-]"""
SUMMED = ("cost", "low", "high", "pounds", "kilograms", "standing", "feet", "meters")
METRIC = {
    "yd3": (CUYD, "m3"),
    "ft3": (CUFT, "m3"),
    "ft2": (SQFT, "m2"),
    "board foot": (CUFT / 12, "m3"),
    "ton": (2000 * POUND / 1000, "t"),
    "80-lb bag": (80 * POUND, "kg"),
    "50-lb pail": (50 * POUND, "kg"),
}
"""How much of a metric unit is in one that is sold. [-]"""


def write_order(
    made: StoredBook, result: Assessment, found: YardOrder, known: Mapping[str, Price]
) -> int:
    """Write the order's sheet.

    Parameters
    ----------
    made : StoredBook
    result : Assessment
    found : YardOrder
        Of it.
    known : mapping of str to Price

    Returns
    -------
    int
        Row of the totals, counted from 1. [-]
    """
    from openpyxl.styles import Font

    sheet, bill = made.sheet("Order"), found.bill
    sheet["A1"], sheet["A1"].font = harmless(result.design.name), Font(bold=True, size=14)
    sheet["A2"] = CAUTION
    said = "Every price is an invented example: put in your own. " if bill.invented else ""
    sheet["A3"] = (
        f"{said}Currency: {bill.currency or 'none named'}. {left_out(found)}."
        f" Written by {made_by()}."
    )
    made.headed(sheet, FIRST - 1, tuple(COLUMNS.values()))
    sheet.freeze_panes = sheet.cell(FIRST, 3)
    totals, number = dict.fromkeys(SUMMED, 0.0), FIRST
    for one in found.suppliers:
        for line in one.lines:
            for priced in line.priced:
                cells = _row(number, one, line, priced, result, known)
                _write(made, sheet, number, cells)
                for key in SUMMED:
                    value = cells[key]
                    totals[key] += (value.value if isinstance(value, Formula) else value) or 0.0
                number += 1
    made.put(sheet, number, 1, "Total", bold=True)
    for key in SUMMED:
        letter = LETTER[key]
        total = Formula(f"=SUM({letter}{FIRST}:{letter}{number - 1})", totals[key])
        place = list(COLUMNS).index(key) + 1
        made.put(sheet, number, place, total, COLUMNS[key].shown, bold=True)
    stands = f"Low and high: {found.band.stands_on}" if found.band.stands_on else ""
    missing = ", ".join(bill.unpriced)
    unpriced = f"Without a price, and not in the cost: {missing}." if missing else ""
    for below, text in enumerate(filter(None, (unpriced, stands)), 1):
        sheet.cell(number + below, 1, harmless(text))
    return number


def _write(made: StoredBook, sheet: Any, number: int, cells: Mapping[str, Any]) -> None:
    for place, (key, column) in enumerate(COLUMNS.items(), 1):
        made.put(sheet, number, place, cells[key], column.shown)


def _row(
    number: int,
    one: SupplierOrder,
    line: YardLine,
    priced: PricedLine,
    result: Assessment,
    known: Mapping[str, Price],
) -> dict[str, Any]:
    """Cells of one row of the takeoff, by what their columns hold."""
    row, at = priced.row, {key: f"{letter}{number}" for key, letter in LETTER.items()}
    sold, waste = goods_for(row.item), waste_of(row, result.design)[1]
    factor, metric = METRIC.get(row.unit, (None, None))
    each = weight_ordered(row, result.design) / row.order if row.order else 0.0
    cost = priced.amount
    low, high = _band(priced, known)
    price = known.get(row.item)
    per_pack = price.per_pack if price and priced.price is not None else None
    rounded = f"ROUNDUP(ROUND({at['net']}*(1+{at['waste']})/{at['step']},9),0)*{at['step']}"
    none = f'IF({at["price"]}="","",'
    return {
        "supplier": harmless(one.supplier),
        "item": row.item,
        "size": size_of(row, result, FEET_INCHES) or None,
        "metric size": size_of(row, result, MILLIMETRES) or None,
        "material": row.material,
        "unit": row.unit,
        "net": row.net,
        "waste": waste,
        "step": sold.step,
        "spare": sold.spare,
        "order": Formula(f"=MAX({rounded},{at['net']}+{at['spare']})", row.order),
        "metric": Formula(f"={at['order']}*{factor!r}", row.order * factor) if factor else None,
        "metric unit": metric,
        "price": priced.price,
        "cost": Formula(f"={none}{at['order']}*{at['price']})", cost),
        "low": Formula(f"={none}{at['cost']}*{low!r})", None if cost is None else cost * low),
        "high": Formula(f"={none}{at['cost']}*{high!r})", None if cost is None else cost * high),
        "pounds": Formula(f"={at['kilograms']}/{POUND!r}", each * row.order / POUND),
        "kilograms": Formula(f"={at['order']}*{each!r}", each * row.order),
        "standing": row.weight_kg,
        "feet": Formula(f"={at['meters']}/{CUFT!r}", row.volume / CUFT),
        "meters": row.volume,
        "packs": Formula(f"=ROUNDUP({at['order']}/{per_pack},0)", float(priced.packs))
        if per_pack
        else None,
        "pack": harmless(priced.pack) or None,
        "used": line.step,
        "day": line.day,
        "note": english(row.note, result.pack) or None,
    }


def _band(priced: PricedLine, known: Mapping[str, Price]) -> tuple[float, float]:
    """Lowest and highest offer as shares of the price; the usual spread without offers. [-]"""
    less, more, _ = price_spread()
    price = known.get(priced.row.item)
    if not price or not priced.price:
        return 1.0, 1.0
    low = 1 + less if price.low is None else min(price.low / priced.price, 1.0)
    high = 1 + more if price.high is None else max(price.high / priced.price, 1.0)
    return low, high
