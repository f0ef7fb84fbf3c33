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
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.plates.words_round import AIR, KNEE, TO_TEXT
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair, View, spread
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon

OVER = 3.5
"""From a face to the marks over or under it. [mm]"""
EDGE = 2.0
"""Round a face where no marks stand. [mm]"""
PITCH = 1.7 * SMALL
"""From mark to mark in a column. [mm]"""
ALIGNED, OVERHEAD = {-1: "right", 1: "left"}, {-1: "top", 1: "base"}
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
        found: dict[str, list[tuple[Pair, str]]] = {}
        for ring, mark in self._crowded_out(k):
            side = self._side(ring)
            found.setdefault(side, []).append((toward(ring, side), mark))
        return found

    def _crowded_out(self, k: float) -> list[tuple[Polygon, str]]:
        """Pieces without room for their mark, found out once for each scale."""
        if k not in self._known:
            self._known[k] = self._without_room(k)
        return self._known[k]

    def _without_room(self, k: float) -> list[tuple[Polygon, str]]:
        """Too small for it, or with a leader all across."""
        marked = [(ring, mark) for ring, mark in self.pieces if mark]
        out = [(ring, mark) for ring, mark in marked if not holds_mark(ring, mark, k)]
        leaders = [self._leader(ring, k) for ring, _ in out]
        for ring, mark in marked:
            if (ring, mark) not in out and all_crossed(ring, mark, k, leaders):
                out.append((ring, mark))
                leaders.append(self._leader(ring, k))
        return out

    def _leader(self, ring: Polygon, k: float) -> tuple[Pair, Pair]:
        """About where the leader of a piece runs over the face. [mm]"""
        side = self._side(ring)
        (axis, way), (x, y) = SIDES[side], toward(ring, side)
        end = self.box[axis if way < 0 else axis + 2] * k
        return (x * k, y * k), (end, y * k) if axis == 0 else (x * k, end)

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
        sizes = ((self.box[3] - self.box[1]) * k, (self.box[2] - self.box[0]) * k)
        lines = {side: _Line(side, items, sizes) for side, items in self.outside(k).items()}
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
        sizes = ((self.box[3] - self.box[1]) * k, (self.box[2] - self.box[0]) * k)
        leaders: list[tuple[Pair, Pair]] = []
        crowded = self._crowded_out(k)
        for side, items in self.outside(k).items():
            leaders += _Line(side, items, sizes).paint(view, self.box)
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


class _Line:
    """Marks beside one side of a face, one line of them or two that take turns. [mm]"""

    def __init__(
        self, side: str, items: list[tuple[Pair, str]], sizes: tuple[float, float]
    ) -> None:
        axis, self.way = SIDES[side]
        self.along = 1 - axis  # the axis along which the marks stand
        self.items = sorted(items, key=lambda item: (item[0][self.along], item[0][axis]))
        self.long = sizes[axis]
        self.wide = [width(mark, SMALL) for _, mark in self.items]
        pitch = [PITCH] * len(items) if axis == 0 else [wide + 1.6 for wide in self.wide]
        self.two = sum(pitch) > self.long
        if self.two:  # a leader of the far line passes between two marks of the near one
            beside = zip([0.0, *pitch], pitch, [*pitch[1:], 0.0], strict=False)
            pitch = [max(three) / 2 + 0.1 for three in beside]
        self.pitch = pitch
        self.step = max(self.wide) + 1.6 if axis == 0 else SMALL + 1.6

    @property
    def beyond(self) -> float:
        """How far they reach past either end of the face."""
        return max(0.0, (sum(self.pitch) - self.long) / 2)

    @property
    def room(self) -> float:
        """From the face to their far end."""
        own = max(self.wide) + KNEE + TO_TEXT + AIR if self.along else OVER + SMALL + 1.0
        return own + (self.step if self.two else 0.0)

    def paint(self, view: View, box: Extent) -> list[tuple[Pair, Pair]]:
        """Write them, each with its leader; gives the stretches that go to pieces."""
        drawn: list[tuple[Pair, Pair]] = []
        upright = self.along == 1
        ends = view.at(box[0], box[1]), view.at(box[2], box[3])
        edge = ends[0 if self.way < 0 else 1][1 - self.along]
        low, high = (end[self.along] for end in ends)
        tips = [view.at(*at) for at, _ in self.items]
        limits = (low - self.beyond, high + self.beyond)
        places = spread([tip[self.along] for tip in tips], self.pitch, *limits)
        first, knee = (AIR + KNEE + TO_TEXT, AIR) if upright else (OVER, 1.0)
        for n, (tip, at) in enumerate(zip(tips, places, strict=True)):
            out = first + (self.step if self.two and n % 2 else 0.0)
            start, bend = (edge + self.way * (out - TO_TEXT), at), (edge + self.way * knee, at)
            text = (edge + self.way * out, at)
            if not upright:
                start, bend, text = start[::-1], bend[::-1], text[::-1]
            view.sheet.line([start, bend, tip], "dimension", "soft")
            ha, va = (ALIGNED[self.way], "middle") if upright else ("center", OVERHEAD[self.way])
            view.sheet.text(*text, self.items[n][1], size=SMALL, ha=ha, va=va)
            drawn.append((bend, tip))
        return drawn


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
    if len(numbers) > 2 and len(steps) == 1:
        step = steps.pop()
        if step == 2 and numbers[0] <= 2:
            return "odd courses" if numbers[0] == 1 else "even courses"
        told = "" if step == 1 else f", every {step}th"
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
