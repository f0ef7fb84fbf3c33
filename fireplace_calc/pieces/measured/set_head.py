"""What is told once for a set: its name, joints, density, lining and limits."""

from __future__ import annotations

from functools import partial

from fireplace_calc.base.messages import shown
from fireplace_calc.pieces.measured.sheet import HEAD, MeasuredSheet
from fireplace_calc.pieces.measured.told import Told
from fireplace_calc.pieces.measured.typed import read_density, read_joint, read_length

LINING = ("thickness", "joint", "floor")
"""Lengths of the firebrick lining."""


def read_head(sheet: MeasuredSheet, unit: float) -> Told:
    """What is told once for the whole set; its fields in ``table``.

    Parameters
    ----------
    sheet : MeasuredSheet
    unit : float
        What a bare number is worth. [m]
    """
    told, head = Told(""), sheet.head
    table = told.table
    for key in ("name", "note", "approval"):
        if key in head:
            table[key] = head[key]
    if "name" not in head:
        told.missing.append("name")
    for key in ("bed", "perpend"):
        if key not in head:
            told.missing.append(key)
        elif joint := told.take(key, partial(read_joint, head[key], unit, key, HEAD[key])):
            table[key] = joint
    if "density" in head:
        value = told.take("density", lambda: read_density(head["density"], sheet.metric))
        if value is not None and not 200 <= value <= 8000:
            told.wrong["density"] = (
                f"Density is {shown(head['density'])}, but 200 to 8000 kg/m3 is wanted."
            )
        elif value is not None:
            table["density"] = value
    for key in ("raise", "stack"):
        if key in head:
            size = told.take(key, partial(read_length, head[key], unit, key, HEAD[key]))
            if size is not None:
                table[key] = size
    lining = {
        key: told.take(key, partial(read_length, head[key], unit, key, HEAD[key]))
        for key in LINING
        if key in head
    }
    if "thickness" in lining and "floor" in lining:
        if None not in lining.values():
            table["lining"] = lining
    else:
        told.missing += [key for key in ("thickness", "floor") if key not in head]
    return told
