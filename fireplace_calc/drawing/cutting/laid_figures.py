"""Faces brick by brick and courses of block in plan, every cut piece with its mark: inside it where
that has room, else beside the face with a leader.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_lowercase

from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.cutting.cut_marks import cut_list_of
from fireplace_calc.brickwork.ring import BlockCourse
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.plates.words_round import AIR, KNEE, TO_TEXT, callouts
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair, View, spread
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Polygon

CLEAR = 0.9
"""Between a mark and the sides of its piece. [mm]"""
OVER = 3.5
"""From a face to the marks over or under it. [mm]"""
EDGE = 2.0
"""Round a face where no marks stand. [mm]"""
PITCH = 1.7 * SMALL
"""From mark to mark in a column. [mm]"""
KEYS = {
    "floor": "layout",
    "back": "layout_back",
    "raked back": "layout_raked",
    "side": "layout_side",
}


@dataclass(frozen=True, slots=True)
class MarkedFace:
    """Pieces in one plane.

    Attributes
    ----------
    pieces : tuple of (polygon, str)
        Outline [m] and mark of each, empty where it is whole.
    """

    pieces: tuple[tuple[Polygon, str], ...]

    @property
    def box(self) -> Extent:
        """Left, bottom, right, top. [m]"""
        xs, ys = zip(*(point for ring, _ in self.pieces for point in ring), strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    def outside(self, k: float) -> dict[str, list[tuple[Pair, str]]]:
        """Marks that have no room in their pieces, by the side of the face they go to.

        Parameters
        ----------
        k : float
            Paper to model. [mm/m]

        Returns
        -------
        dict
            Middle of each piece [m] and its mark.
        """
        left, low, right, top = self.box
        found: dict[str, list[tuple[Pair, str]]] = {}
        for ring, mark in self.pieces:
            if not mark or _holds(ring, mark, k):
                continue
            x, y = middle(ring)
            row = [x for other, _ in self.pieces for x, at in other if abs(at - y) < 0.25]
            ends = (min(row, default=left), max(row, default=right))
            away = {"left": x - ends[0], "right": ends[1] - x, "below": y - low, "above": top - y}
            side = min(away, key=lambda name: (round(away[name], 3), name))
            found.setdefault(side, []).append(((x, y), mark))
        return found

    def margins(self, k: float) -> Extent:
        """Room for the marks outside. [mm]"""
        out = self.outside(k)
        tall = (self.box[3] - self.box[1]) * k
        wide = (self.box[2] - self.box[0]) * k
        most = max((len(out.get(side, ())) for side in ("left", "right")), default=0)
        more = max(0.0, most * PITCH - tall) / 2
        across = max(
            (
                sum(width(mark, SMALL) + 2.0 for _, mark in out.get(side, ())) - wide
                for side in ("above", "below")
            ),
            default=0.0,
        )
        sides = [
            max((width(mark, SMALL) for _, mark in out[side]), default=0.0) + KNEE + TO_TEXT + AIR
            if out.get(side)
            else EDGE
            for side in ("left", "right")
        ]
        ends = [OVER + SMALL + 1.0 if out.get(side) else EDGE for side in ("below", "above")]
        spare = max(across, 0.0) / 2
        return (
            max(sides[0], spare + 1.0),
            max(ends[0], more),
            max(sides[1], spare + 1.0),
            max(ends[1], more),
        )

    def paint(self, view: View) -> None:
        """Draw it with its marks."""
        sheet, k = view.sheet, view.scale
        for ring, mark in self.pieces:
            sheet.line(view.ring(ring), "seen" if mark else "fine", closed=True)
            if mark and _holds(ring, mark, k):
                x, y = view.at(*middle(ring))
                sheet.text(x, y, mark, size=SMALL, va="middle")
        out, (left, low, right, top) = self.outside(k), self.box
        margins = self.margins(k)
        limits = (view.at(0, low)[1] - margins[1], view.at(0, top)[1] + margins[3])
        for side, x, way in (("left", left, -1), ("right", right, 1)):
            items = [(view.at(*at), [mark]) for at, mark in out.get(side, ())]
            edge = view.at(x, 0)[0] + way * (AIR + KNEE + TO_TEXT)
            callouts(sheet, items, edge, way, limits)
        for side, y, way in (("below", low, -1), ("above", top, 1)):
            items = sorted((view.at(*at), mark) for at, mark in out.get(side, ()))
            at = view.at(0, y)[1] + way * OVER
            widths = [width(mark, SMALL) + 1.6 for _, mark in items]
            span = (view.at(left, 0)[0] - margins[0], view.at(right, 0)[0] + margins[2])
            for (tip, mark), x in zip(
                items, spread([tip[0] for tip, _ in items], widths, *span), strict=True
            ):
                sheet.line([(x, at - way * 0.9), tip], "dimension", "soft")
                sheet.text(x, at, mark, size=SMALL, va="base" if way > 0 else "top")


def middle(ring: Polygon) -> Pair:
    """Centroid of a polygon. [m]"""
    (x0, y0), whole, x, y = ring[0], 0.0, 0.0, 0.0
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        turn = (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
        whole += turn
        x += turn * (ax + bx - 2 * x0) / 3
        y += turn * (ay + by - 2 * y0) / 3
    return (x0 + x / whole, y0 + y / whole) if abs(whole) > 1e-12 else (x0, y0)


def _holds(ring: Polygon, mark: str, k: float) -> bool:
    """Whether a mark has room in a piece: all round its box lies within."""
    x, y = middle(ring)
    wide, high = (width(mark, SMALL) / 2 + CLEAR) / k, (SMALL / 2 + CLEAR) / k
    around = [(x + u * wide, y + v * high) for u in (-1, 0, 1) for v in (-1, 0, 1)]
    return all(_inside(ring, point) for point in around)


def _inside(ring: Polygon, point: Pair) -> bool:
    x, y = point
    crossed = False
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            crossed = not crossed
    return crossed


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
    made = []
    for laid, name in ((work.base_block, "block_layout"), (work.extension_block, "block_front")):
        if laid is None:
            continue
        plans: dict[BlockCourse, list[int]] = {}
        for n, plan in enumerate(laid.courses, 1):
            plans.setdefault(plan, []).append(n)
        for n, (plan, numbers) in enumerate(plans.items()):
            rings = tuple(ring for ring, _ in plan.blocks)
            if rings:
                face = MarkedFace(tuple(zip(rings, cuts.on_course[plan], strict=True)))
                told = f"{_numbers(numbers)}: {plan.whole} whole, {plan.cut} cut"
                again = ascii_lowercase[n % 26] if len(plans) > 1 else ""
                made.append(_figure(name, face, scales, told, again))
    for layout, marks in zip(work.layouts, cuts.on_layout, strict=True):
        rings = tuple(piece.ring for piece in layout.pieces)
        if rings:
            face = MarkedFace(tuple(zip(rings, marks, strict=True)))
            told = f"{layout.whole} whole, {layout.cut} cut"
            told += "; one as drawn, one mirrored" if layout.face.alike == 2 else ""
            made.append(_figure(KEYS[layout.face.name], face, scales, told))
    return made


def _numbers(numbers: Sequence[int]) -> str:
    """Courses by their numbers; those that take turns are not told one by one."""
    steps = {b - a for a, b in zip(numbers, numbers[1:], strict=False)}
    if len(numbers) > 3 and len(steps) == 1:
        step = steps.pop()
        told = "" if step == 1 else ", every other" if step == 2 else f", every {step}th"
        return f"courses {numbers[0]} to {numbers[-1]}{told}"
    return ("course " if len(numbers) == 1 else "courses ") + ", ".join(map(str, numbers))


def _figure(
    key: str, face: MarkedFace, scales: Sequence[float], told: str, more: str = ""
) -> Figure:
    mark, name = marked(key)
    return Figure(
        key,
        mark + more,
        name,
        face.box,
        lambda denominator: face.margins(1000 / denominator),
        face.paint,
        tuple(scales),
        told,
    )
