"""The invented sheet of forty measured pieces, read for tests that enter it."""

import csv
from pathlib import Path

from fireplace_calc.pieces.measured.sheet import MeasuredSheet, put

SHEET = Path(__file__).with_name("measured_pieces.csv")
HEAD = {
    "unit": "in",
    "name": "Own set",
    "bed": "1/4, 3/8, 1/2",
    "perpend": "1/8, 1/4, 7/16",
    "density": "125",
    "thickness": "1 1/4",
    "joint": "1/8",
    "floor": "2 1/2",
}
FIELDS = (
    "mark",
    "mirror",
    "role",
    "lifts",
    "times",
    "form",
    *"ABCDEFGHIJKL",
    "X",
    "Y",
    "count",
    "weight",
    "bed",
)


def rows():
    """Every row of the sheet, empty cells as empty texts."""
    with SHEET.open(encoding="utf-8", newline="") as file:
        lines = [line for line in file if not line.startswith("#")]
    return list(csv.DictReader(lines))


def as_sheet():
    """The sheet as it stands when everything is typed."""
    sheet = MeasuredSheet(HEAD)
    for number, row in enumerate(rows()):
        sheet = MeasuredSheet(sheet.head, (*sheet.entries, {}))
        for key in FIELDS:  # empty ones too: a role may bring what this piece does not have
            sheet = put(sheet, number, key, row[key])
    return sheet
