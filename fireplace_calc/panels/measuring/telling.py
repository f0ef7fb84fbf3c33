"""What the page of a measured set shows: fields with their errors, the table, and sentences."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.geometry.assembled.fitting import Misfit
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.pieces.measured.sheet import (
    HEAD,
    MeasuredSheet,
    choices_of,
    keys_of,
    label_of,
    source_of,
)
from fireplace_calc.pieces.measured.told import ReadSheet, Told

WHOLE = -1
"""Number of what is told once for the set, where others are those of its pieces."""
HINTS = {
    "mark": "as it is on the piece",
    "lifts": "1, or 2-4",
    "times": "12-36",
    "X": "empty: on the center line",
    "Y": "empty: at the front",
    "count": "",
    "after": "marks, with commas",
    "bearing": "",
}
INCH_HINTS = {
    "bed": "1/4, 3/8, 1/2",
    "perpend": "1/8, 1/4, 7/16",
    "weight": "lb; empty: by density",
    "density": "lb/ft3",
    "stack": "30 ft",
}
MM_HINTS = {
    "bed": "6, 10, 13",
    "perpend": "3, 6, 11",
    "weight": "kg; empty: by density",
    "density": "kg/m3",
    "stack": "9 m",
}


def fields_of(
    sheet: MeasuredSheet, read: ReadSheet, number: int, more: bool, pressed: bool
) -> list[dict[str, Any]]:
    """The fields of a piece, or of the set as a whole.

    Parameters
    ----------
    sheet : MeasuredSheet
    read : ReadSheet
        The same, read.
    number : int
        Of the entry; ``WHOLE`` for the set. [-]
    more : bool
        With what is seldom told.
    pressed : bool
        The piece was to be done: what is missing is an error.
    """
    told = read.head if number == WHOLE else read.told[number]
    texts = sheet.head if number == WHOLE else sheet.entries[number]
    keys = tuple(HEAD) if number == WHOLE else keys_of(sheet, texts, more)
    labels = {k: HEAD[k] if number == WHOLE else label_of(texts, k) for k in keys}
    return [
        {
            "key": key,
            "label": labels[key],
            "text": texts.get(key, ""),
            "choices": _choices(sheet, key, texts.get(key, "")),
            "hint": (MM_HINTS if sheet.metric else INCH_HINTS).get(key, HINTS.get(key, "")),
            "wrong": _wrong(told, key, labels[key], pressed),
        }
        for key in keys
    ]


def _choices(sheet: MeasuredSheet, key: str, text: str) -> list[str]:
    if key == "mirror":
        return [e["mark"] for e in sheet.entries if e.get("mark") and "mirror" not in e]
    words = list(choices_of(key))
    return words if not words or text in words else ["", *words]


def _wrong(told: Told, key: str, label: str, pressed: bool) -> str:
    if key in told.wrong:
        return told.wrong[key]
    return f"{label} is missing." if pressed and key in told.missing else ""


def rows_of(
    sheet: MeasuredSheet, read: ReadSheet, misfits: Sequence[Misfit], opened: int
) -> list[dict[str, Any]]:
    """The table of pieces so far.

    Parameters
    ----------
    sheet : MeasuredSheet
    read : ReadSheet
    misfits : sequence of Misfit
    opened : int
        Number of the piece that is open. [-]
    """
    units = MILLIMETRES if sheet.metric else FEET_INCHES
    rows = []
    for number, (entry, told) in enumerate(zip(sheet.entries, read.told, strict=True)):
        if not told.mark and number == len(sheet.entries) - 1:
            continue  # begun, and nothing told of it yet
        weight = ""
        if told.piece is not None:
            how = "weighed" if told.piece.weighed is not None else "by density"
            weight = f"{weight_text(piece_weight(told.piece), units)}, {how}"
        role = source_of(sheet, entry).get("role", "")
        cells = [role, entry.get("lifts", ""), entry.get("count", ""), weight]
        state = state_of(told, entry, of_mark(misfits, told.mark))
        mark = told.mark or "(no mark)"
        rows.append(
            {"number": number, "mark": mark, "cells": [*cells, state], "open": number == opened}
        )
    return rows


def of_mark(misfits: Sequence[Misfit], mark: str) -> list[Misfit]:
    """What a piece has to do with."""
    return [m for m in misfits if mark in {name.partition(".")[0] for name in m.names}]


def state_of(told: Told, entry: Any, found: Sequence[Misfit]) -> str:
    """One line on a piece: done, or what is missing, or what does not meet."""
    if told.missing:
        return f"needs {', '.join(_short(entry, key) for key in told.missing)}"
    if told.wrong:
        return next(iter(told.wrong.values()))
    return f"does not meet: {found[0].says}" if found else "ok"


def _short(entry: Any, key: str) -> str:
    words = label_of(entry, key)
    return words if words[1:2] == ":" else words.partition(",")[0].lower()
