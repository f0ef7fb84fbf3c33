"""The cut list: a mark for every shape, how many, and which whole unit gives which pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import count
from operator import itemgetter
from typing import NamedTuple

from fireplace_calc.brickwork.block_work import LaidBlock
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.cutting.from_whole import stock_plan
from fireplace_calc.brickwork.cutting.shapes import laid_along, letter, merged
from fireplace_calc.brickwork.layout import Layout
from fireplace_calc.brickwork.ring import BlockCourse, BlockRow
from fireplace_calc.brickwork.work import Brickwork, floor_bricks, lay_brickwork, lining_bricks
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon

FLOOR, LINING = "Firebrick of the floor", "Firebrick of the lining"
BASE, EXTENSION = "Block of the base", "Block under the hearth extension"
KINDS = {"block": "whole-high", "half-high": "half-high", "packing": "packing"}
LAID = ("firebrick", "block", "half-high block", "packing block", "fill")
"""Kinds of course whose cuts stand on a layout, or that have no unit to cut."""


@dataclass(frozen=True, slots=True)
class Cut:
    """All pieces of one shape.

    Attributes
    ----------
    mark : str
        Letter on the layout.
    of : str
        Work it belongs to.
    kind : str
        Of a block: whole-high, half-high, packing or sawn.
    outline : polygon
        The unit's length from left to right, lower left corner at nought. [m]
    high : float
        How high a cut block is; nought where it keeps its height. [m]
    count : int
        [-]
    """

    mark: str
    of: str
    kind: str
    outline: Polygon
    high: float
    count: int

    @property
    def size(self) -> tuple[float, float]:
        """Length and width of a unit that it takes. [m]"""
        return max(x for x, _ in self.outline), max(y for _, y in self.outline)


class StockUse(NamedTuple):
    """Whole units that give the same pieces.

    Attributes
    ----------
    of : str
        Work they are for.
    units : int
        [-]
    marks : tuple of str
        Pieces that each gives, the longest first.
    """

    of: str
    units: int
    marks: tuple[str, ...]


@dataclass(frozen=True)
class CutList:
    """Every cut of the laid work.

    Attributes
    ----------
    cuts : tuple of Cut
    stock : tuple of StockUse
    on_layout : tuple of tuple of str
        Mark of every piece of every layout of the firebox, empty where it is whole.
    on_course : dict
        The same of every plan of a course of block.
    courses : tuple of Course
        Of sections, tile, pieces and brick: those that are cut to a height.
    wythes : dict
        How many times each work is laid behind itself. [-]
    """

    cuts: tuple[Cut, ...] = ()
    stock: tuple[StockUse, ...] = ()
    on_layout: tuple[tuple[str, ...], ...] = ()
    on_course: dict[BlockCourse, tuple[str, ...]] = field(default_factory=dict)
    courses: tuple[Course, ...] = ()
    wythes: dict[str, int] = field(default_factory=dict)

    def units(self, of: str) -> int:
        """Whole units that the cuts of one work come out of, one wythe of it. [-]"""
        return sum(use.units for use in self.stock if use.of == of)


def cut_list_of(geometry: Geometry) -> CutList:
    """The cut list of a design, made once.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    CutList
        Pieces within the saw's width of one another share a mark. Units are counted as the takeoff
        counts them.
    """
    return geometry.once(_listed)


class _Piece(NamedTuple):
    """A cut piece: where it was found, its shape, what it needs of a unit's length [m]."""

    where: tuple[int, int]
    outline: Polygon
    length: float


def _listed(geometry: Geometry) -> CutList:
    work, number = lay_brickwork(geometry), count()
    cuts: list[Cut] = []
    stock: list[StockUse] = []
    on_layout: list[tuple[str, ...]] = []
    wythes: dict[str, int] = {}
    for of, layouts in ((FLOOR, (work.floor,) if work.floor else ()), (LINING, work.lining)):
        if layouts:
            laid = floor_bricks(geometry) if of == FLOOR else lining_bricks(geometry)
            wythes[of] = laid.wythes
            marks = _bricks(of, layouts, number, cuts, stock)
            on_layout += marks
    on_course = _blocks(work, number, cuts, stock)
    rest = tuple(c for c in course_list(geometry).all if c.cut and c.kind not in LAID)
    return CutList(
        tuple(cuts), tuple(stock), tuple(on_layout), on_course, tuple(dict.fromkeys(rest)), wythes
    )


def _marks(outlines: list[Polygon], number: Iterator[int]) -> tuple[list[str], dict[str, Polygon]]:
    """The mark of each piece, the longest shape first, and the outline of each mark. [m]"""
    shape = merged(outlines)

    def order(n: int) -> tuple[float, ...]:
        xs, ys = zip(*outlines[n], strict=True)
        return (-round(max(xs), 5), -round(max(ys), 5), n)

    told = {n: letter(next(number)) for n in sorted(set(shape), key=order)}
    return [told[n] for n in shape], {mark: outlines[n] for n, mark in told.items()}


def _bricks(
    of: str,
    layouts: tuple[Layout, ...],
    number: Iterator[int],
    cuts: list[Cut],
    stock: list[StockUse],
) -> list[tuple[str, ...]]:
    pieces = [
        _Piece((k, n), laid_along(piece.ring, piece.along), piece.length)
        for k, layout in enumerate(layouts)
        for n, piece in enumerate(layout.pieces)
        if not piece.whole
    ]
    marks, outlines = _marks([piece.outline for piece in pieces], number)
    placed = [[""] * len(layout.pieces) for layout in layouts]
    counted: Counter[str] = Counter()
    every: list[tuple[str, float]] = []
    for piece, mark in zip(pieces, marks, strict=True):
        k, n = piece.where
        placed[k][n] = mark
        counted[mark] += layouts[k].face.alike
        every += [(mark, piece.length)] * layouts[k].face.alike
    cuts += [Cut(mark, of, "", ring, 0.0, counted[mark]) for mark, ring in outlines.items()]
    stock += _used(of, every, layouts[0].unit.length)
    return [tuple(row) for row in placed]


def _used(of: str, pieces: list[tuple[str, float]], length: float) -> list[StockUse]:
    """Units that give the same pieces, together. [m]"""
    pieces = sorted(pieces, key=itemgetter(0))  # so that pieces of one mark come out of one unit
    plan = stock_plan([long for _, long in pieces], length)
    alike = Counter(tuple(pieces[n][0] for n in unit) for unit in plan)
    return [StockUse(of, units, marks) for marks, units in alike.items()]


def _blocks(
    work: Brickwork, number: Iterator[int], cuts: list[Cut], stock: list[StockUse]
) -> dict[BlockCourse, tuple[str, ...]]:
    """Cuts of block: a mark for each length and width, whatever the height of its course."""
    found: dict[BlockCourse, tuple[str, ...]] = {}
    for of, laid in ((BASE, work.base_block), (EXTENSION, work.extension_block)):
        if laid is None:
            continue
        plans = tuple(dict.fromkeys(laid.courses))
        pieces = [
            ((k, n), _flat(row, ring))
            for k, plan in enumerate(plans)
            for n, (row, ring, cut) in enumerate(_rows(plan))
            if cut
        ]
        marks, outlines = _marks([ring for _, ring in pieces], number)
        at = {where: mark for (where, _), mark in zip(pieces, marks, strict=True)}
        for k, plan in enumerate(plans):
            found[plan] = tuple(at.get((k, n), "") for n in range(len(plan.blocks)))
        _count_blocks(of, laid, found, outlines, number, cuts, stock)
    return found


def _flat(row: BlockRow, ring: Polygon) -> Polygon:
    """A block with its length from left to right. [m]"""
    return laid_along(ring if row.across else tuple((y, x) for x, y in ring[::-1]))


def _rows(plan: BlockCourse) -> Iterator[tuple[BlockRow, Polygon, bool]]:
    for row in plan.rows:
        for ring, cut in row.outlines():
            yield row, ring, cut


def _count_blocks(
    of: str,
    laid: LaidBlock,
    found: dict[BlockCourse, tuple[str, ...]],
    outlines: dict[str, Polygon],
    number: Iterator[int],
    cuts: list[Cut],
    stock: list[StockUse],
) -> None:
    counted: Counter[tuple[str, str, float]] = Counter()
    taken: dict[str, list[tuple[str, float]]] = {}
    sawn: dict[float, str] = {}  # mark of a block of full length, by the height it is sawn to
    for (kind, high), plan in zip(laid.coursing.pieces, laid.courses, strict=True):
        bought = "block" if kind == "sawn" else kind
        told, low = (kind, high) if kind == "sawn" else (KINDS[kind], 0.0)
        marks = [*found[plan]]
        for n, (row, ring, cut) in enumerate(_rows(plan)):
            if not cut and kind != "sawn":
                continue
            outline = _flat(row, ring)
            if not cut:
                if high not in sawn:
                    sawn[high] = letter(next(number))
                    outlines[sawn[high]] = outline
                marks[n] = sawn[high]
            long = outline[2][0] if cut else plan.unit.length
            counted[marks[n], told, low] += 1
            taken.setdefault(bought, []).append((marks[n], long))
        if kind == "sawn" and laid.courses.count(plan) == 1:
            found[plan] = tuple(marks)
    in_order = sorted(counted.items(), key=lambda one: (len(one[0][0]), one[0][0]))
    cuts += [
        Cut(mark, of, kind, outlines[mark], high, number_of)
        for (mark, kind, high), number_of in in_order
    ]
    for bought, pieces in taken.items():
        stock += _used(f"{of}, {KINDS[bought]}", pieces, laid.unit.length)
