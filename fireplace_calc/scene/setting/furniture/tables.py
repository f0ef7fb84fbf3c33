"""A low table, a small round one with a lamp, and a rug. [m]"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.scene.setting.forms import ROUNDED, block, rod, tapered, turned
from fireplace_calc.scene.setting.stood import Furniture, Made, gathered, made

if TYPE_CHECKING:
    from manifold3d import Manifold

RUG = 0.012
"""Thickness of a rug. [m]"""
LAMP = 1.06
"""Level of the middle of the lamp's shade. [m]"""


@lru_cache(maxsize=1)
def low_table() -> Furniture:
    """A low table of oak; two books and a bowl on it."""
    wide, deep, top = 1.0, 0.55, 0.4
    board = block((-wide / 2, wide / 2), (-deep / 2, deep / 2), (top - 0.032, top), 0.008)
    frame = [
        block((-wide / 2 + 0.08, wide / 2 - 0.08), (y - 0.01, y + 0.01), (top - 0.09, top - 0.033))
        for y in (-deep / 2 + 0.06, deep / 2 - 0.06)
    ]
    legs = [
        tapered(0.0, top - 0.033, 0.014, 0.023, 8).translate((x, y, 0.0))
        for x in (-wide / 2 + 0.055, wide / 2 - 0.055)
        for y in (-deep / 2 + 0.06, deep / 2 - 0.06)
    ]
    books = [
        book(0.26, 0.19, 0.032).rotate((0, 0, 8)).translate((-0.2, 0.03, top + 0.001)),
        book(0.22, 0.16, 0.026).rotate((0, 0, -11)).translate((-0.19, 0.03, top + 0.034)),
    ]
    return gathered(
        made("low table", "low table", "oak", [board, *frame]),
        made("low table legs", "legs of the low table", "oak", legs, smooth=True),
        made("book on the table", "book", "wool", books[0]),
        made("upper book on the table", "book", "linen", books[1]),
        made("bowl", "bowl", "clay", bowl(0.13, 0.07).translate((0.22, 0.02, top)), smooth=True),
    )


def book(high: float, deep: float, thick: float) -> Manifold:
    """A book that lies, its foot at nought.

    Parameters
    ----------
    high, deep, thick : float
        [m]
    """
    return block((-high / 2, high / 2), (-deep / 2, deep / 2), (0.0, thick), 0.002)


def bowl(radius: float, high: float) -> Manifold:
    """A shallow bowl, turned.

    Parameters
    ----------
    radius, high : float
        [m]
    """
    wall = 0.006
    return turned(
        [
            (0, 0),
            (0.42 * radius, 0),
            (0.44 * radius, 0.006),
            (0.82 * radius, 0.5 * high),
            (radius, high),
            (radius - wall, high),
            (0.8 * radius - wall, 0.55 * high),
            (0.4 * radius, 0.012),
            (0, 0.01),
        ],
        14,
    )


@lru_cache(maxsize=1)
def side_table() -> Furniture:
    """A small round table with a lamp on it."""
    high, radius = 0.54, 0.24
    board = turned(
        [(0, high - 0.025), (radius - 0.01, high - 0.025), (radius, high - 0.012),
         (radius - 0.003, high), (0, high)],
        24,
    )  # fmt: skip
    legs = [
        rod([(0.17 * a, 0.17 * b, 0.014), (0.1 * a, 0.1 * b, high - 0.04)], 0.014, ROUNDED)
        for a, b in ((0, -1), (0.866, 0.5), (-0.866, 0.5))
    ]
    foot = turned(
        [(0, 0), (0.06, 0), (0.062, 0.012), (0.048, 0.02), (0.075, 0.075), (0.088, 0.13),
         (0.078, 0.19), (0.045, 0.235), (0.024, 0.26), (0.02, 0.275), (0, 0.276)],
        12,
    )  # fmt: skip
    stem = turned(
        [(0, 0.277), (0.016, 0.277), (0.016, 0.29), (0.006, 0.295), (0.006, 0.44), (0, 0.44)], 8
    )
    return gathered(
        made("side table", "side table", "walnut", board, smooth=True),
        made("side table legs", "legs of the side table", "walnut", legs, smooth=True),
        made("lamp", "lamp", "glaze", foot.translate((0, 0, high)), smooth=True),
        made("lamp stem", "lamp", "brass", stem.translate((0, 0, high)), smooth=True),
        shade(LAMP),
    )


def shade(level: float) -> Made:
    """The shade of a lamp, open above and below.

    Parameters
    ----------
    level : float
        Of its middle. [m]
    """
    high, foot, top, thin = 0.24, 0.2, 0.13, 0.003
    half = high / 2
    ring = [(foot - thin, -half), (foot, -half), (top, half), (top - thin, half)]
    body = turned(ring, 22).translate((0, 0, level))
    return made("lamp shade", "lamp shade", "lamp", body, smooth=True)


@lru_cache(maxsize=16)
def rug(wide: float, deep: float) -> Furniture:
    """A rug that lies flat.

    Parameters
    ----------
    wide, deep : float
        [m]
    """
    flat = block((-wide / 2, wide / 2), (-deep / 2, deep / 2), (0.0, RUG), 0.004)
    return gathered(
        made("rug", "rug", "rug", flat),
    )
