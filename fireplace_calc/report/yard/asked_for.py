"""What a yard is told of an item: its size, and how it was counted."""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import prod

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import density
from fireplace_calc.base.units import CUFT, FEET_INCHES, MILLIMETRES, POUND
from fireplace_calc.brickwork.coursing import HALF_HIGH, SPLIT
from fireplace_calc.brickwork.face_bond import english
from fireplace_calc.brickwork.unit import block_of, brick_sides, common_brick, facing_brick
from fireplace_calc.design.records import Design
from fireplace_calc.takeoff import Row, goods_for
from fireplace_calc.takeoff.bricks import BASE_BLOCK

WHOLE, CUT = ", whole", ", cut"
"""Ends of the names of two rows that a yard loads as one."""
FACED = ("Facing brick", "Arch brick", "Lintel brick", "Mantel and trim, brick")
"""Of the brick that shows."""
COMMON = ("Common brick", "Hearth brick")
FIRE = ("Firebrick", "Smoke chamber firebrick")
BLOCK_HIGH = {"half-high": HALF_HIGH, "packing": SPLIT}
"""Block that is lower than a full one. [m]"""
_TAPE = re.compile(r"(?:\d+'-)?(?:\d+ )?\d+(?:/\d+)?\"")
_SACKS = re.compile(r"(\d+) (?:sacks|bags) of (?:(cement|lime) \((\d+) lb\)|(\d+) lb)")
_FEET = re.compile(r"([\d.]+) ft3(?= of sand)")
_DENSITY = re.compile(r"\(\d+ lb/ft3, (?=\w+\))")
_WEIGHT = re.compile(r" [\d.]+ kg/m3 \(")


def loaded_as(item: str) -> str:
    """What a yard calls an item: whole pieces, and those that are cut on site, are one.

    >>> loaded_as("Firebrick, cut"), loaded_as("Mortar")
    ('Firebrick', 'Mortar')
    """
    return item.removesuffix(WHOLE).removesuffix(CUT)


def in_units(text: str, units: str) -> str:
    r"""A text with its feet and inches, sacks, bags and feet of sand in the reader's units.

    >>> in_units('2" thick, 4\'-6" long', "millimetres")
    '51 mm thick, 1 372 mm long'
    >>> in_units("10 sacks of cement (94 lb), 48 ft3 of sand", "millimetres")
    '426 kg of cement, 1.36 m³ of sand'
    """
    if units == FEET_INCHES:
        return text
    text = _DENSITY.sub("(", text)
    text = _SACKS.sub(_kilograms, text)
    text = _FEET.sub(lambda found: f"{float(found[1]) * CUFT:.2f} m³", text)
    return _TAPE.sub(lambda found: show(to_si(found[0], "length", "size"), "length", units), text)


def _kilograms(found: re.Match[str]) -> str:
    """So many sacks or bags as the kilograms that they hold."""
    of = f" of {found[2]}" if found[2] else " of cement"
    return f"{show(int(found[1]) * int(found[3] or found[4]) * POUND, 'mass', MILLIMETRES)}{of}"


def size_of(row: Row, result: Assessment, units: str) -> str:
    """Size of an item, as one asks for it.

    Parameters
    ----------
    row : Row
    result : Assessment
        Whose takeoff it is of.
    units : str

    Returns
    -------
    str
        Empty where it is sold by volume or weight.
    """
    design, frame, item = result.design, result.geometry.frame, loaded_as(row.item)
    sides = piece_sides(item, design)
    if sides:
        return " x ".join(show(side, "length", units) for side in sides)
    if item in ("Clay flue liner", "Flue section"):
        long = show(design.flue.section_height, "length", units)
        return f"{design.flue.shape} {frame.bore.label}, {long} long"
    if item.startswith("Second "):
        return f"{design.second_flue.shape} {design.second_flue.size}"
    if row.unit in ("yd3", "80-lb bag", "50-lb pail", "ton"):
        return ""
    bought = goods_for(row.item).note.split("; ")
    said = (part for part in counted(row).split("; ") if _TAPE.search(part) and part not in bought)
    return in_units(next(said, ""), units)


def piece_sides(item: str, design: Design) -> tuple[float, float, float] | None:
    """Length and the two other sides of a whole brick or block, as it comes from the yard.

    Parameters
    ----------
    item : str
        As the yard calls it.
    design : Design

    Returns
    -------
    tuple of float or None
        None of anything else. [m]
    """
    kinds = {loaded_as(name): kind for kind, names in BASE_BLOCK.items() for name in names}
    if item in FACED or item in COMMON:
        unit = facing_brick(design) if item in FACED else common_brick(design)
        return unit.length, unit.height, unit.depth
    if item in FIRE:
        return brick_sides(design.firebox.brick)
    if item == "Masonry block" or item in kinds:
        unit = block_of(design)
        return unit.length, BLOCK_HIGH.get(kinds.get(item, ""), unit.height), unit.depth
    return None


def weight_ordered(row: Row, design: Design) -> float:
    """What is ordered weighs on the truck, waste counted in; bricks and block that are cut on site
    come whole.

    Parameters
    ----------
    row : Row
    design : Design

    Returns
    -------
    float
        Nought where only its maker knows. [kg]
    """
    sides = piece_sides(loaded_as(row.item), design)
    laid = row.weight_kg * row.order / row.net if row.net > 0 else row.weight_kg
    whole = row.order * prod(sides) * density(row.material) if sides else 0.0
    return max(laid, whole) if row.item.endswith(CUT) else laid


def waste_of(row: Row, design: Design) -> tuple[str, float]:
    """Which waste a row takes, and how much.

    Parameters
    ----------
    row : Row
    design : Design

    Returns
    -------
    str, float
        Its name and share of the net quantity [-]; none of what is bought as it is counted.
    """
    name = goods_for(row.item).waste
    return name, getattr(design.waste, name) if name else 0.0


def counted(row: Row) -> str:
    """How a row was counted, without what its materials weigh.

    Parameters
    ----------
    row : Row

    Returns
    -------
    str
    """
    return "; ".join(part for part in row.note.split("; ") if not _WEIGHT.search(part))


def how_counted(row: Row, result: Assessment, units: str) -> str:
    """The same in the reader's units and the words of his book."""
    return in_units(english(counted(row), result.pack), units)


def weights_taken(rows: Iterable[Row]) -> tuple[str, ...]:
    """What materials were taken to weigh, each once.

    Parameters
    ----------
    rows : iterable of Row

    Returns
    -------
    tuple of str
    """
    parts = (part for row in rows for part in row.note.split("; ") if _WEIGHT.search(part))
    return tuple(dict.fromkeys(parts))
