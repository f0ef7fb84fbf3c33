"""The set file that a sheet makes: lengths as numbers in its unit, what was typed beside them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.lifts import MeasuredLift, lifts_of
from fireplace_calc.pieces.measured.reading import read_sheet
from fireplace_calc.pieces.measured.sheet import HEAD, LETTERS, Entry, MeasuredSheet, label_of
from fireplace_calc.pieces.measured.told import ReadSheet, plain
from fireplace_calc.pieces.set_text import read_set

ORDER = (
    "mark",
    "name",
    "role",
    "mirror",
    "at",
    "outline",
    "top",
    "arch",
    "bore",
    "liner",
    "nest",
    "cut",
    "height",
    "bed",
    "perpend",
    "bearing",
    "weight",
    "material",
    "pallet",
    "after",
)


def set_text(sheet: MeasuredSheet) -> str:
    """The text of the set file.

    Parameters
    ----------
    sheet : MeasuredSheet
        Pieces that are not done yet are left out, and named at the top.

    Returns
    -------
    str
        TOML that ``read_set`` reads.

    Raises
    ------
    InputError
        When what is told for the whole set is not enough, or no piece is done.
    """
    read = read_sheet(sheet)
    for key in (*read.head.wrong, *read.head.missing):
        says = read.head.wrong.get(key) or f"{HEAD[key]} is missing."
        raise InputError(says, key, "what is asked", "")
    lifts = lifts_of(read)
    if not lifts:
        raise InputError("No piece is done yet, so there is no set to write.", "piece", "one", 0)
    text = "\n".join([*_top(sheet, read), *_pieces(sheet, read), *_lifts(lifts)]) + "\n"
    read_set(text)
    return text


def left_out(read: ReadSheet) -> tuple[str, ...]:
    """Marks that are not in the file yet."""
    return tuple(t.mark or "a piece without a mark" for t in read.told if t.piece is None)


def _top(sheet: MeasuredSheet, read: ReadSheet) -> list[str]:
    table = read.head.table
    unit = "millimeters" if sheet.metric else "inches"
    lines = [
        f"# Measured piece by piece; every bare length is in {unit}. What was read off the tape",
        "# stands over each piece. The sheet it comes from is kept beside this file.",
    ]
    if missing := left_out(read):
        lines.append(f"# Not done, so not in here: {', '.join(missing)}.")
    lines += ["", f"name = {_text(table['name'])}"]
    if "note" in table:
        lines.append(f"note = {_text(table['note'])}")
    lines.append(f"unit = {_text('mm' if sheet.metric else 'in')}")
    lines += [
        f"{key} = {_text(table[key])}" for key in ("density", "bed", "perpend") if key in table
    ]
    after = [t.mark for t in read.told if t.piece is not None and t.piece.role == "throat back"]
    lines += ["", "[lining]"]
    lines += [f"{key} = {_text(size)}" for key, size in table["lining"].items()]
    if after:
        lines.append(f"after = {_text(after)}")
    limits = {"raise": "raise", "stack": "stack", "approval": "approval"}
    told = [f"{name} = {_text(table[key])}" for key, name in limits.items() if key in table]
    return [*lines, *(["", "[limits]", *told] if told else [])]


def _pieces(sheet: MeasuredSheet, read: ReadSheet) -> list[str]:
    lines = []
    pairs = [(e, t) for e, t in zip(sheet.entries, read.told, strict=True) if t.piece and t.lifts]
    for entry, told in sorted(pairs, key=lambda pair: "mirror" in pair[1].table):
        lines += ["", "[[piece]]"]
        if words := _as_typed(entry):
            lines.append(f"# {words}")
        table = dict(told.table)
        if table.get("at") == [0, 0] or "arch" in table:
            table.pop("at", None)
        lines += [f"{key} = {_text(table[key])}" for key in ORDER if key in table]
    return lines


def _as_typed(entry: Entry) -> str:
    words = [f"{label_of(entry, key)} {entry[key]}" for key in LETTERS if key in entry]
    words += [f"{key} {entry[key]}" for key in ("X", "Y") if key in entry]
    return f"{entry['form']}; {', '.join(words)}" if words and "form" in entry else ""


def _lifts(lifts: tuple[MeasuredLift, ...]) -> list[str]:
    lines = []
    for lift in lifts:
        lines += ["", "[[lift]]", f"name = {_text(lift.name)}"]
        lines.append(f"pieces = {_text([p.mark for p in lift.pieces])}")
        if lift.extension:
            lines.append("extension = true")
        if lift.heads:
            lines.append(f"heads = {_text({head: p.mark for head, p in lift.heads})}")
        if lift.times != (1, 1):
            lines.append(f"repeat = {_text(list(lift.times))}")
    return lines


def _text(value: Any) -> str:
    """A value as TOML; a quoted text is written as in JSON, which TOML reads alike."""
    value = plain(value)
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{key} = {_text(v)}" for key, v in value.items()) + " }"
    if isinstance(value, list):
        return f"[{', '.join(map(_text, value))}]"
    return repr(value)
