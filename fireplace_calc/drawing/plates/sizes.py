"""Papers: their frame, where the title block stands, what is left to draw on, and the scales.

Frame and edges as ISO 5457 has them, scales as ISO 5455 and American practice have them; all of it
from memory.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.drawing.sheets.sheet import Cell

PAPERS = {
    "letter": (279.4, 215.9),
    "11x17": (431.8, 279.4),
    "A4": (297.0, 210.0),
    "A3": (420.0, 297.0),
}
"""All lying. [mm]"""
USUAL = {FEET_INCHES: "11x17", "millimetres": "A3"}
"""Paper of each unit system, where nobody asks for another."""
ON_A_TABLE = {FEET_INCHES: "letter", "millimetres": "A4"}
"""Paper of what a client is given, where nobody asks for another."""
FILING, EDGE = 20.0, 10.0
"""Margin at the left, for punched holes, and round the rest. [mm]"""
BLOCK_WIDE, BLOCK_HIGH = 180.0, 36.0
"""Of the title block. [mm]"""
AIR = 3.0
"""Between frame or title block and what is drawn. [mm]"""

SCALES: dict[str, dict[float, str]] = {
    FEET_INCHES: {
        1: "full size",
        2: "half size",
        4: '3" = 1\'-0"',
        8: '1 1/2" = 1\'-0"',
        12: '1" = 1\'-0"',
        16: '3/4" = 1\'-0"',
        24: '1/2" = 1\'-0"',
        32: '3/8" = 1\'-0"',
        48: '1/4" = 1\'-0"',
        64: '3/16" = 1\'-0"',
        96: '1/8" = 1\'-0"',
        128: '3/32" = 1\'-0"',
        192: '1/16" = 1\'-0"',
        384: '1/32" = 1\'-0"',
        768: '1/64" = 1\'-0"',
    },
    "millimetres": {n: f"1:{n}" for n in (1, 2, 5, 10, 20, 25, 40, 50, 100, 200, 250, 500, 1000)},
}
"""Scales of a sheet as the trade writes them, by their denominators, the largest first."""


@dataclass(frozen=True, slots=True)
class Paper:
    """One size of paper.

    Attributes
    ----------
    name : str
    width, height : float
        [mm]
    """

    name: str
    width: float
    height: float

    @property
    def frame(self) -> Cell:
        """The heavy line round the sheet. [mm]"""
        return Cell(FILING, EDGE, self.width - EDGE, self.height - EDGE)

    @property
    def block(self) -> Cell:
        """The title block, in the lower right corner. [mm]"""
        f = self.frame
        return Cell(f.right - BLOCK_WIDE, f.bottom, f.right, f.bottom + BLOCK_HIGH)

    @property
    def field(self) -> Cell:
        """All the width above the title block. [mm]"""
        f = self.frame
        return Cell(f.left + AIR, self.block.top + AIR, f.right - AIR, f.top - AIR)

    @property
    def strip(self) -> Cell:
        """What is left beside the title block: for legend and notes. [mm]"""
        f = self.frame
        return Cell(f.left + AIR, f.bottom + AIR, self.block.left - AIR, self.block.top - AIR)

    @property
    def tall(self) -> Cell:
        """All the height left of the title block. [mm]"""
        return Cell(self.strip.left, self.strip.bottom, self.strip.right, self.field.top)


def paper(units: str, name: str | None = None, usual: Mapping[str, str] = USUAL) -> Paper:
    """A paper by its name.

    Parameters
    ----------
    units : str
        ``feet-inches`` or ``millimetres``: which is taken where no name is given.
    name : str or None
    usual : mapping
        Which is taken by the name of the units.

    Raises
    ------
    InputError
        When there is no such paper.
    """
    name = name or usual[units]
    if name not in PAPERS:
        raise InputError(
            f"Paper is {name!r}, but there are only {', '.join(PAPERS)}.",
            "Paper",
            ", ".join(PAPERS),
            name,
        )
    return Paper(name, *PAPERS[name])
