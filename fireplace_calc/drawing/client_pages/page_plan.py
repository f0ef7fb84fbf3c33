"""What both pages for a client go by: letters, margins, and the picture of a design in its box."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import atan, degrees, radians, tan

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.client_pages.leaf import Leaf
from fireplace_calc.scene.eyes import ASPECT
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.still.option_pictures import option_picture
from fireplace_calc.takeoff.cost import Price

Pictures = Callable[[Assessment, Standpoint, int, int], bytes]
"""Makes the picture of a design from a standpoint, so many dots wide and high."""
SMALL, TEXT, LARGE, TITLE = 0.74, 1.0, 1.28, 2.2
"""The one scale of letters, over the size of the text. [-]"""
LETTERS = 10.6
"""Size of the text on letter and A4, in points. [-]"""
BASIS = 297.0
"""Width of the paper for which that is. [mm]"""
DOTS = 4.0
"""Dots of a picture to a millimeter of paper. [1/mm]"""


@dataclass(frozen=True, slots=True)
class NamedDesign:
    """A design and what it is called."""

    name: str
    result: Assessment


@dataclass(frozen=True, slots=True)
class PagePlan:
    """What both pages go by: paper, words, and who makes the pictures.

    Attributes
    ----------
    wide, high : float
        Of the paper. [mm]
    units : str
        The reader's.
    priced : mapping, optional
        Price list by item.
    pictures : callable
        Makes each picture.
    """

    wide: float
    high: float
    units: str
    priced: Mapping[str, Price] | None
    pictures: Pictures

    @property
    def letters(self) -> float:
        """Size of the text, in points. [-]"""
        return LETTERS * self.wide / BASIS if self.wide > 1.2 * BASIS else LETTERS

    @property
    def margin(self) -> float:
        """Left free all round. [mm]"""
        return 0.056 * self.wide

    def size(self, step: float) -> float:
        """Size of letters of one step of the scale, in points. [-]"""
        return self.letters * step


def still_png(result: Assessment, standpoint: Standpoint, width: int, height: int) -> bytes:
    """The picture of a design without a page that lights it."""
    return option_picture(result, standpoint, width, height).jpeg


def widened(standpoint: Standpoint, aspect: float) -> Standpoint:
    """The same with as much seen from top to bottom in a picture that is wider, or less wide, for
    its height.

    Parameters
    ----------
    standpoint : Standpoint
    aspect : float
        Width over height. [-]
    """
    half = tan(radians(standpoint.angle) / 2) * aspect / ASPECT
    return replace(standpoint, angle=2 * degrees(atan(half)))


def lay_picture(
    plan: PagePlan,
    page: Leaf,
    one: NamedDesign,
    eye: Standpoint,
    at: tuple[float, float, float, float],
) -> None:
    """Lay the picture of a design into a box: left, top, width, height. [mm]"""
    x, y, width, height = at
    seen = widened(eye, width / height)
    dots = DOTS * min(1.0, BASIS / plan.wide)
    made = plan.pictures(one.result, seen, round(width * dots), round(height * dots))
    page.show(x, y, width, height, made)
