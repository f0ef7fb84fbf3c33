"""Floors of the room: boards, flags, tile; and the bands of a rug."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from math import sqrt

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.face_bond import lapped
from fireplace_calc.brickwork.seen.coursing_of_face import bonded_units
from fireplace_calc.scene.records import FaceLayout, Point, Thing

BOARD, BOARDS, LONG = 5.5 * INCH, 20, 3.2
"""Width of a board, how many lie side by side and how long they are before all comes again: our
own choice. [m, -, m]
"""
GAP = 1.2e-3
"""Between two boards. [m]"""
FLOOR_TILE = 12 * INCH
FLAGS = ((22, 15, 27, 18, 14), (16, 24, 17, 21, 18), (26, 19, 14, 20, 17), (15, 21, 25, 16, 19))
"""Lengths of the flags of each row. [in]"""
FLAG_ROWS = (18, 14, 21, 16)
"""Widths of the rows. [in]"""
FLAG_JOINT = 0.4 * INCH
BANDS = (0.0, 0.07, 0.13, 0.17, 0.195, 0.37, 0.385)
"""How far from the edge of a rug each of its bands begins: our own choice. [m]"""
DEEP: Point = (0.0, 1.0, 0.0)
LEFT: Point = (-1.0, 0.0, 0.0)
RIGHT: Point = (1.0, 0.0, 0.0)
UP: Point = (0.0, 0.0, 1.0)


@lru_cache(maxsize=2)
def floor_layouts(cornered: bool = False) -> tuple[FaceLayout, ...]:
    """Every floor a room may have; boards run toward the fireplace, where it stands across a corner
    along the wall at its left.

    Parameters
    ----------
    cornered : bool
        Whether it does.

    Returns
    -------
    tuple of FaceLayout
        [m]
    """
    if not cornered:
        return tuple(_floors())
    half = sqrt(0.5)
    turned: dict[Point | None, Point] = {
        DEEP: (half, half, 0.0),
        LEFT: (-half, half, 0.0),
        RIGHT: (half, -half, 0.0),
    }
    return tuple(replace(one, along=turned[one.along], up=turned[one.up]) for one in _floors())


def rug_layouts(things: Iterable[Thing]) -> Iterator[FaceLayout]:
    """The bands of every rug, one inside the other from its edge.

    Parameters
    ----------
    things : iterable of Thing
        What stands in the room; what is of another stuff is passed over.

    Yields
    ------
    FaceLayout
    """
    for thing in things:
        if thing.stuff != "rug":
            continue
        (left, front, _), (right, back, top) = thing.points.min(axis=0), thing.points.max(axis=0)
        wide, deep = float(right - left), float(back - front)
        rings = [
            np.array([(e, e), (wide - e, e), (wide - e, deep - e), (e, deep - e)])
            for e in BANDS
            if 2 * e < min(wide, deep)
        ]
        yield FaceLayout(
            *("rug", (float(left), float(front), float(top)), wide, deep, tuple(rings)),
            along=RIGHT,
            up=DEEP,
            things=(thing.key,),
            normal=UP,
            repeats=False,
        )


def _floors() -> Iterator[FaceLayout]:
    boards = tuple(_boards())
    for stuff in ("boards", "pine boards"):
        yield FaceLayout(
            *(stuff, (0.0, 0.0, 0.0), LONG, BOARDS * BOARD, boards),
            along=DEEP,
            up=LEFT,
            normal=UP,
        )
    tile = lapped(FLOOR_TILE, FLOOR_TILE, name="stack")
    rings = tuple(bonded_units(tile, (INCH / 4, INCH / 4), 6, 6))
    wide = 6 * FLOOR_TILE
    yield FaceLayout("floor tile", (0.0, 0.0, 0.0), wide, wide, rings, along=RIGHT, up=DEEP)
    wide, deep = sum(FLAGS[0]) * INCH, sum(FLAG_ROWS) * INCH
    yield FaceLayout(
        *("flags", (0.0, 0.0, 0.0), wide, deep, tuple(_flags())), along=RIGHT, up=DEEP, normal=UP
    )


def _boards() -> Iterator[Array]:
    """Rows of two or three boards end to end; no end stands beside another."""
    for row in range(BOARDS):
        first = (row * 0.381966) % 1.0
        cuts = [first, first + (0.36, 0.52, 0.44)[row % 3], first + (0.72, 1.0, 1.0)[row % 3]]
        ends = [LONG * c for c in cuts if c < first + 1] + [LONG * (first + 1)]
        low, high = row * BOARD + GAP / 2, (row + 1) * BOARD - GAP / 2
        for left, right in zip(ends[:-1], ends[1:], strict=True):
            a, b = left + GAP / 2, right - GAP / 2
            yield np.array([(a, low), (b, low), (b, high), (a, high)])


def _flags() -> Iterator[Array]:
    """Flags in rows of uneven width."""
    half, low = FLAG_JOINT / 2, 0.0
    for wide, row in zip(FLAG_ROWS, FLAGS, strict=True):
        left = 0.0
        for long in row:
            a, b = left * INCH + half, (left + long) * INCH - half
            c, d = low * INCH + half, (low + wide) * INCH - half
            yield np.array([(a, c), (b, c), (b, d), (a, d)])
            left += long
        low += wide
