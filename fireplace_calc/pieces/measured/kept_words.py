"""A sheet as the text of a file, and back; every word as it was typed."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterable, Mapping
from typing import Any

from fireplace_calc.base.messages import one_line, shown
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.sheet import (
    BEFORE,
    HEAD,
    LETTERS,
    MORE,
    PLACE,
    UNITS,
    MeasuredSheet,
)
from fireplace_calc.pieces.set_text import LONGEST_FILE, MOST_PIECES

HEADER = """\
# What was typed for a set of pieces, word for word. The set file beside it is made from this.
"""
KNOWN = frozenset((*BEFORE, *PLACE, *MORE, *LETTERS, "mirror"))
LONGEST = 2000
"""Letters of one field. [-]"""


def sheet_text(sheet: MeasuredSheet, written: str = "") -> str:
    """The sheet as the text of a file.

    Parameters
    ----------
    sheet : MeasuredSheet
    written : str
        Mark of the set file that was last made from it.

    Returns
    -------
    str
        TOML that ``read_sheet_text`` reads back to the same sheet.
    """
    lines = [HEADER, f"written = {json.dumps(written)}", "", "[set]", *_fields(sheet.head)]
    for entry in sheet.entries:
        lines += ["", "[[piece]]", *_fields(entry)]
    return "\n".join(lines) + "\n"


def _fields(texts: Mapping[str, str]) -> list[str]:
    return [f"{key} = {json.dumps(text, ensure_ascii=False)}" for key, text in texts.items()]


def read_sheet_text(text: str) -> tuple[MeasuredSheet, str]:
    """A sheet out of the text of its file, and the mark of the set file made from it.

    Parameters
    ----------
    text : str

    Returns
    -------
    tuple
        MeasuredSheet, and str.

    Raises
    ------
    InputError
        One sentence: what is wanted, what came.
    """
    if len(text) > LONGEST_FILE:
        raise InputError("The sheet is longer than any sheet.", "sheet", "a sheet", len(text))
    try:
        raw = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as wrong:
        words = one_line(f"The sheet cannot be read as TOML: {wrong}.")
        raise InputError(words, "sheet", "TOML", None) from None
    pieces, written = raw.get("piece", []), raw.get("written", "")
    if not isinstance(pieces, list) or len(pieces) > MOST_PIECES or not isinstance(written, str):
        words = f"The sheet holds no list of at most {MOST_PIECES} pieces."
        raise InputError(words, "piece", "a list of pieces", None)
    head = _texts("The set", raw.get("set"), HEAD)
    head.setdefault("unit", UNITS[0])
    if head["unit"] not in UNITS:
        words = f"The sheet's unit is {shown(head['unit'])}, but in or mm is wanted."
        raise InputError(words, "unit", "in or mm", head["unit"])
    told = tuple(_texts(f"Piece {n}", piece, KNOWN) for n, piece in enumerate(pieces, 1))
    return MeasuredSheet(head, told), written


def _texts(where: str, raw: Any, known: Iterable[str]) -> dict[str, str]:
    names = tuple(known)
    if not isinstance(raw, Mapping):
        raise InputError(f"{where} is no table of fields.", where, "a table", None)
    for key, text in raw.items():
        if key not in names:
            words = f"{where} on the sheet has no field {shown(key)}."
            raise InputError(words, str(key), ", ".join(names), key)
        if not isinstance(text, str) or not text.isprintable() or len(text) > LONGEST:
            words = f"{where}, {key}: it is {shown(text)}, but a line of text is wanted."
            raise InputError(words, str(key), "a line of text", text)
    return dict(raw)
