"""Faces brick by brick and courses of block in plan, every cut piece with its mark: inside it where
that has room, else beside the face with a leader.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, cached_property

from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.cutting.cut_marks import cut_list_of
from fireplace_calc.brickwork.ring import BlockCourse
from fireplace_calc.drawing.cutting.in_outline import (
    SIDES,
    all_crossed,
    bounds,
    holds_mark,
    mark_places,
    middle,
    passes_over,
    toward,
)
from fireplace_calc.drawing.cutting.mark_lines import MarkLine
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair, View
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon

EDGE = 2.0
"""Round a face where no marks stand. [mm]"""
FINE = 12.0
"""Block is drawn no larger than this: its marks have room. [-]"""
KEYS = {
    "floor": "layout",
    "back": "layout_back",
    "raked back": "layout_raked",
    "side": "layout_side",
}


@dataclass(frozen=True)
class MarkedFace:
    """Pieces in one plane.

    Attributes
    ----------
    pieces : tuple of (polygon, str)
        Outline [m] and mark of each, empty where it is whole.
    """

    pieces: tuple[tuple[Polygon, str], ...]

    @cached_property
    def box(self) -> Extent:
        """Left, bottom, right, top. [m]"""
        left, low, right, top = zip(*self._boxes, strict=True)
        return min(left), min(low), max(right), max(top)

    @cached_property
    def _boxes(self) -> list[Extent]:
        """The same of each piece. [m]"""
        return [bounds(ring) for ring, _ in self.pieces]

    @cached_property
    def _known(self) -> dict[float, list[tuple[Polygon, str]]]:
        return {}

    def outside(self, k: float) -> dict[str, list[tuple[Pair, str]]]:
        """Marks that have no room in their pieces, by the side of the face they go to.

        Parameters
        ----------
        k : float
            Paper to model. [mm/m]

        Returns
        -------
        dict
            Where its leader goes in each piece [m] and its mark.
        """
        return self._by_side(self._crowded_out(k))

    def _crowded_out(self, k: float) -> list[tuple[Polygon, str]]:
        """Pieces without room for their mark, found out once for each scale."""
        if k not in self._known:
            self._known[k] = self._without_room(k)
        return self._known[k]

    def _without_room(self, k: float) -> list[tuple[Polygon, str]]:
        """Too small for it, or with leaders over every place it has there. Each that goes out has a
        leader itself, and the others of its side make way for that.
        """
        marked = [(ring, mark) for ring, mark in self.pieces if mark]
        out = [(ring, mark) for ring, mark in marked if not holds_mark(ring, mark, k)]
        left = [piece for piece in marked if piece not in out]
        while True:
            runs = self._leaders(out, k)
            more = [(ring, mark) for ring, mark in left if all_crossed(ring, mark, k, runs)]
            if not more:
                return out
            out += more
            left = [piece for piece in left if piece not in more]

    def _leaders(self, out: list[tuple[Polygon, str]], k: float) -> list[tuple[Pair, Pair]]:
        """Where leaders run over the face. [mm]"""
        found = []
        for side, items in self._by_side(out).items():
            runs = MarkLine(side, items, self._sizes(k)).runs(lambda x, y: (x * k, y * k), self.box)
            found += [(run[1], run[2]) for run in runs]
        return found

    def _sizes(self, k: float) -> tuple[float, float]:
        """Height and width. [mm]"""
        return (self.box[3] - self.box[1]) * k, (self.box[2] - self.box[0]) * k

    def _by_side(self, out: list[tuple[Polygon, str]]) -> dict[str, list[tuple[Pair, str]]]:
        found: dict[str, list[tuple[Pair, str]]] = {}
        for ring, mark in out:
            side = self._side(ring)
            found.setdefault(side, []).append((toward(ring, side), mark))
        return found

    def _side(self, ring: Polygon) -> str:
        """The side of the face that a piece touches; of two, the nearer."""
        _, low, _, top = self.box
        (x, y), (x0, y0, x1, y1) = middle(ring), bounds(ring)
        row = [box for box in self._boxes if box[1] <= y <= box[3]]
        left, right = min(box[0] for box in row), max(box[2] for box in row)
        away = {
            "left": (x0 - left, x - left),
            "right": (right - x1, right - x),
            "below": (y0 - low, y - low),
            "above": (top - y1, top - y),
        }
        return min(away, key=lambda name: tuple(round(far, 3) for far in away[name]))

    def margins(self, k: float) -> Extent:
        """Room for the marks outside. [mm]"""
        sizes = self._sizes(k)
        lines = {side: MarkLine(side, items, sizes) for side, items in self.outside(k).items()}
        room = {side: line.room if (line := lines.get(side)) else EDGE for side in SIDES}
        over = {
            upright: max((lines[s].beyond for s in lines if SIDES[s][0] == upright), default=0.0)
            for upright in (0, 1)
        }
        return (
            max(room["left"], over[1]),
            max(room["below"], over[0]),
            max(room["right"], over[1]),
            max(room["above"], over[0]),
        )

    def paint(self, view: View) -> None:
        """Draw it with its marks."""
        sheet, k = view.sheet, view.scale
        leaders: list[tuple[Pair, Pair]] = []
        crowded = self._crowded_out(k)
        for side, items in self.outside(k).items():
            leaders += MarkLine(side, items, self._sizes(k)).paint(view, self.box)
        for ring, mark in self.pieces:
            sheet.line(view.ring(ring), "seen" if mark else "fine", closed=True)
            if mark and (ring, mark) not in crowded:
                half = width(mark, SMALL) / 2
                places = [view.at(*at) for at in mark_places(ring, mark, k)]
                x, y = next(
                    (
                        at
                        for at in places
                        if not any(passes_over(at, half, *one) for one in leaders)
                    ),
                    places[0],
                )
                sheet.text(x, y, mark, size=SMALL, va="middle")


def laid_figures(geometry: Geometry, scales: Sequence[float]) -> list[Figure]:
    """Every face of the firebox and every plan of a course of block, in the order they are built.

    Parameters
    ----------
    geometry : Geometry
    scales : sequence of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    list of Figure
    """
    work, cuts = lay_brickwork(geometry), cut_list_of(geometry)
    coarse = [scale for scale in scales if scale > FINE]
    made = []
    for laid, name in ((work.base_block, "block_layout"), (work.extension_block, "block_front")):
        if laid is None:
            continue
        plans: dict[BlockCourse, list[int]] = {}
        for n, plan in enumerate(laid.courses, 1):
            plans.setdefault(plan, []).append(n)
        for plan, numbers in plans.items():
            rings = tuple(ring for ring, _ in plan.blocks)
            if rings:
                marks = cuts.on_course[plan]
                face = MarkedFace(tuple(zip(rings, marks, strict=True)))
                cut = sum(map(bool, marks))
                told = f"{_numbers(numbers)}: {len(marks) - cut} whole, {cut} cut"
                made.append(_figure(name, face, coarse, told))
    for layout, marks in zip(work.layouts, cuts.on_layout, strict=True):
        rings = tuple(piece.ring for piece in layout.pieces)
        if rings:
            face = MarkedFace(tuple(zip(rings, marks, strict=True)))
            told = f"{layout.whole} whole, {layout.cut} cut"
            told += " each" if layout.face.alike == 2 else ""
            made.append(_figure(KEYS[layout.face.name], face, scales, told))
    return made


def _numbers(numbers: Sequence[int]) -> str:
    """Courses by their numbers; those that take turns are not told one by one."""
    steps = {b - a for a, b in zip(numbers, numbers[1:], strict=False)}
    if len(numbers) > 2 and steps == {2} and numbers[0] <= 2:
        return "odd courses" if numbers[0] == 1 else "even courses"
    if len(numbers) > 2 and steps in ({1}, {2}):
        told = "" if steps == {1} else ", every other one"
        return f"courses {numbers[0]} to {numbers[-1]}{told}"
    return ("course " if len(numbers) == 1 else "courses ") + ", ".join(map(str, numbers))


def _figure(key: str, face: MarkedFace, scales: Sequence[float], told: str) -> Figure:
    mark, name = marked(key)
    return Figure(
        key,
        mark,
        name,
        face.box,
        cache(lambda denominator: face.margins(1000 / denominator)),
        face.paint,
        tuple(scales),
        told,
    )
