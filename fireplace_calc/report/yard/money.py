"""What is in a price and what is not, as sentences: one place for page, paper and spreadsheet."""

from __future__ import annotations

from fireplace_calc.base.printing import grouped
from fireplace_calc.report.yard.beside_the_list import HELPERS, MASON, TAX, BesideLine
from fireplace_calc.report.yard.by_supplier import YardOrder, not_priced

HIRED = {
    "Staging": "equipment",
    "Hoist or crane": "equipment",
    "Engineer": "engineer",
    "Delivery": "freight",
    "Permit, inspections": "permit",
    TAX: "tax",
}
"""Words for what is no goods."""
ALWAYS = ("equipment", "freight", "permit", "tax")
"""Left out of a price unless it has a rate: whoever builds needs them, wanted here or not."""


def beside_words(found: YardOrder, units: str) -> str:
    """What has a rate beside the materials, with its cost; empty where nothing has.

    Parameters
    ----------
    found : YardOrder
    units : str

    Returns
    -------
    str
        A sentence.
    """
    priced = [line for line in found.beside if line.amount is not None]
    if not priced:
        return ""
    listed = ", ".join(_priced(line, units) for line in priced)
    whole = grouped(found.beside_total, units=units)
    return f"Beside the materials {whole} {found.bill.currency}: {listed}."


def _priced(line: BesideLine, units: str) -> str:
    amount = grouped(line.amount or 0.0, units=units)
    if line.item in (MASON, HELPERS):
        who = "one mason" if line.item == MASON else "helpers"
        return f"labor of {who}, about {line.count or 0.0:.0f} hours, {amount}"
    return f"{line.item.lower()} {amount}"


def left_out(found: YardOrder) -> str:
    """What has no rate beside the materials, without a full stop behind it.

    Parameters
    ----------
    found : YardOrder

    Returns
    -------
    str
        That nothing is, where all of it has one.
    """
    missing = not_priced(found.beside)
    rated = {HIRED.get(line.item) for line in found.beside if line.amount is not None}
    hours = next(line.count or 0.0 for line in found.beside if line.item == MASON)
    words = [f"labor, about {hours:.0f} hours of one mason"] if MASON in missing else []
    words += ["helpers"] if HELPERS in missing and MASON not in missing else []
    goods = [item.lower() for item in missing if item not in (*HIRED, MASON, HELPERS)]
    words += [f"hardware such as {' and '.join(goods[:2])}"] if goods[1:] else goods
    named = {HIRED[item] for item in missing if item in HIRED}
    words += [
        word
        for word in dict.fromkeys(HIRED.values())
        if word in named or (word in ALWAYS and word not in rated)
    ]
    if not words:
        return "All of it is priced"
    listed = f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else words[0]
    return f"Not in it: {listed}"
