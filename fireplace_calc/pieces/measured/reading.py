"""What is wrong or missing on a sheet, field by field, and the pieces that can be read already."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import partial
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.form import Dim, Form, Shaped, Values
from fireplace_calc.pieces.measured.hollow_forms import FORMS
from fireplace_calc.pieces.measured.set_head import read_head
from fireplace_calc.pieces.measured.sheet import Entry, MeasuredSheet, label_of
from fireplace_calc.pieces.measured.told import ReadSheet, Told, plain, unit_of_sheet
from fireplace_calc.pieces.measured.typed import (
    read_corners,
    read_joint,
    read_length,
    read_lifts,
    read_marks,
    read_times,
    read_weight,
)
from fireplace_calc.pieces.piece_text import Defaults, read_piece
from fireplace_calc.pieces.records import JointRange, SetPiece
from fireplace_calc.pieces.roles import ROLES

WAITS = ("lintel", "throat front")
"""Roles that are set when the firebrick is in, so that it can be laid."""


def read_sheet(sheet: MeasuredSheet) -> ReadSheet:
    """Read everything that can be read; nothing is raised, all is told by field.

    Parameters
    ----------
    sheet : MeasuredSheet
    """
    unit = unit_of_sheet(sheet)
    head = read_head(sheet, unit)
    joints = {
        name: JointRange(*(float(v) * unit for v in head.table[name]))
        for name in ("bed", "perpend")
        if name in head.table
    }
    whole = Defaults(joints.get("bed"), joints.get("perpend"), head.table.get("density"))
    known: dict[str, tuple[Mapping[str, Any], SetPiece]] = {}
    lined = "lining" in head.table
    told = [_entry(sheet, entry, lined) for entry in sheet.entries]
    marks = [one.mark for one in told]
    # A piece may be measured before or after the one whose other hand it is.
    for one in sorted(told, key=lambda t: "mirror" in t.table):
        if one.mark and marks.count(one.mark) > 1:
            one.wrong["mark"] = f"Two pieces have the mark {one.mark}; give each its own."
        if one.wrong or one.missing:
            continue
        _read(one, known, whole, unit)
    for one in told:
        for mark in one.table.get("after", ()):
            if mark not in marks and mark != "lining":
                one.wrong["after"] = f"No piece has the mark {mark}, after which {one.mark} is set."
    return ReadSheet(head, tuple(told))


def _read(
    one: Told,
    known: dict[str, tuple[Mapping[str, Any], SetPiece]],
    whole: Defaults,
    unit: float,
) -> None:
    mirror = one.table.get("mirror")
    if mirror is not None and mirror not in known:
        one.wrong[""] = f"{mirror}, whose other hand it is, is not done yet."
        return
    try:
        full, piece = read_piece(plain(one.table), known, whole, unit)
    except InputError as wrong:
        known_fields = {"weight", "bed", "perpend", "bearing", "mark", "role", "material"}
        one.wrong[wrong.name if wrong.name in known_fields else ""] = str(wrong)
        return
    one.piece = piece
    known[piece.mark] = full, piece


def _entry(sheet: MeasuredSheet, entry: Entry, lined: bool) -> Told:
    unit = unit_of_sheet(sheet)
    told = Told(entry.get("mark", ""))
    table = told.table
    if not told.mark:
        told.missing.append("mark")
    table["mark"] = told.mark
    if "name" in entry:
        table["name"] = entry["name"]
    if "lifts" in entry:
        told.lifts = told.take("lifts", lambda: read_lifts(entry["lifts"])) or ()
    else:
        told.missing.append("lifts")
    if "times" in entry:
        told.times = told.take("times", lambda: read_times(entry["times"])) or (1, 1)
    if "weight" in entry:
        weight = told.take("weight", lambda: read_weight(entry["weight"], sheet.metric))
        if weight is not None:
            table["weight"] = weight
    if "count" in entry:
        if entry["count"].isdecimal() and 1 <= int(entry["count"]) <= 1000:
            table["pallet"] = int(entry["count"])
        else:
            told.wrong["count"] = f"How many is {shown(entry['count'])}, but 1 to 1000 is wanted."
    if "after" in entry:
        table["after"] = read_marks(entry["after"])
    if "mirror" in entry:
        table["mirror"] = entry["mirror"]
        return told
    role = entry.get("role", "")
    if role in ROLES:
        table["role"] = role
    else:
        told.missing.append("role")
    if lined and role in WAITS and "after" not in entry:
        table["after"] = ["lining"]
    _own(told, entry, unit)
    return told


def _own(told: Told, entry: Entry, unit: float) -> None:
    """What a piece has that is no other hand: joints, bearing, and its solid where it stands."""
    table = told.table
    for key in ("bed", "perpend"):
        if key in entry:
            read = told.take(key, partial(read_joint, entry[key], unit, key, label_of(entry, key)))
            if read is not None:
                table[key] = read
    if "bearing" in entry:
        size = told.take(
            "bearing", lambda: read_length(entry["bearing"], unit, "bearing", "Least bearing")
        )
        if size is not None:
            table["bearing"] = size
    if "material" in entry:
        table["material"] = entry["material"]
    form = FORMS.get(entry.get("form", ""))
    if form is None:
        told.missing.append("form")
        return
    values = read_lengths(told, form, entry, unit)
    told.missing += [d.key for d in form.dims if not d.optional and d.key not in entry]
    if any(d.key in told.wrong or d.key in told.missing for d in form.dims):
        return
    try:
        shaped = form.shape(values)
    except InputError as wrong:
        told.wrong[wrong.name] = str(wrong)
        return
    table |= shaped.table
    table["at"] = _place(told, entry, shaped, unit)


def read_lengths(told: Told, form: Form, entry: Entry, unit: float) -> Values:
    """The lengths that were typed, by letter; what cannot be read is told by field.

    Parameters
    ----------
    told : Told
        Takes the sentences.
    form : Form
    entry : mapping
    unit : float
        What a bare number is worth. [m]
    """
    values: dict[str, Any] = {}
    for dim in form.dims:
        if dim.key in entry:
            read = told.take(dim.key, partial(_length, dim, entry, unit))
            if read is not None:
                values[dim.key] = read
    return values


def _length(dim: Dim, entry: Entry, unit: float) -> Any:
    label = label_of(entry, dim.key)
    if dim.corners:
        return read_corners(entry[dim.key], unit, dim.key, label)
    return read_length(entry[dim.key], unit, dim.key, label, 0 if dim.optional else 1)


def _place(told: Told, entry: Entry, shaped: Shaped, unit: float) -> list[Fraction]:
    """Where the corner stands that the outline is measured from; without X the piece stands on the
    center line. [in or mm]
    """
    across, back = -shaped.width / 2, Fraction(0)
    for key in ("X", "Y"):
        if key not in entry:
            continue
        if "arch" in shaped.table:
            told.wrong[key] = (
                f"{key}: an arched lintel stands on the center line, in front; leave it empty."
            )
            continue
        read = told.take(key, partial(read_length, entry[key], unit, key, label_of(entry, key), -1))
        if read is not None:
            across, back = (read, back) if key == "X" else (across, read)
    return [across - shaped.left, back - shaped.front]
