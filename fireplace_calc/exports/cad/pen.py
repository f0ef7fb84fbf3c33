"""The pen that puts views into a drawing file: layers, blocks, hatches, dimensions, levels."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.units import FEET_INCHES, MM
from fireplace_calc.drawing.annotation.level_column import level_marks
from fireplace_calc.drawing.set_out.tape_marks import on_tape
from fireplace_calc.drawing.views.layout import level
from fireplace_calc.exports.cad.document import APART, BROKEN, STYLE, line_type, pattern
from fireplace_calc.exports.cad.tied_places import Gap
from fireplace_calc.exports.cad.true_view import BEYOND, LETTERS, OUT, ROW, CutShape, TrueView
from fireplace_calc.geometry.polygons import Point, Polygon

COLORS = {"dimensions": 7, "words": 7, "joints": 9, "outline": 7, "hatching": 9, "levels": 7}
"""Of the layers that are no material, by the standard's index; materials take theirs in turn. [-]
"""
PENS = {"hatching": 13, "joints": 13, "pieces": 13, "dimensions": 13, "levels": 18, "words": 18}
PENS |= {"center-lines": 18, "hidden": 18, "title-block": 35}
"""Widths of lines; materials take a quarter of a millimeter. [mm/100]"""
LEVEL = "level"
"""Block of a level mark."""
TRIANGLE = 0.05
"""Of a level mark. [m]"""


class DxfPen:
    """Draws model metres at a scale, each view moved to its place.

    Parameters
    ----------
    document : ezdxf.document.Drawing
    scale : float
        Units of the file to a meter. [1/m]
    units : str
    """

    def __init__(self, document: Any, scale: float, units: str) -> None:
        self.document, self.scale, self.units = document, scale, units
        self.space = document.modelspace()
        self.dx = self.dy = 0.0
        self._shapes: dict[tuple[Any, ...], str] = {}
        self._counts: dict[str, int] = {}

    def layer(self, name: str) -> str:
        """A layer of that name, made when first drawn on."""
        name = name.replace(" ", "-")
        if name not in self.document.layers:
            color = COLORS.get(name, 1 + len(self.document.layers) % 6)
            kind = {}
            if name in BROKEN:
                kind["linetype"] = line_type(self.document, self.scale, BROKEN[name])
            self.document.layers.add(name, color=color, lineweight=PENS.get(name, 25), **kind)
        return name

    def at(self, x: float, y: float) -> Point:
        """Where a model point goes."""
        return ((x + self.dx) * self.scale, (y + self.dy) * self.scale)

    def _in_block(self, x: float, y: float) -> Point:
        return (x * self.scale, y * self.scale)

    # -- lines ------------------------------------------------------------------------------------
    def ring(self, points: Iterable[Point], layer: str, closed: bool = True) -> None:
        """An outline."""
        self.space.add_lwpolyline(
            [self.at(x, y) for x, y in points],
            close=closed,
            dxfattribs={"layer": self.layer(layer)},
        )

    def segments(self, pairs: Array, layer: str) -> None:
        """Straight lines, (k, 2, 2). [m]"""
        named = {"layer": self.layer(layer)}
        for (a, b), (c, d) in pairs.tolist():
            self.space.add_line(self.at(a, b), self.at(c, d), dxfattribs=named)

    def hatch(self, cut: CutShape, space: Any = None, apart: float = APART) -> None:
        """One hatch of a cut part, in model space or in a block, its lines right for a scale of one
        to so much; sheet metal is filled. [-]
        """
        lines = pattern(cut.material, self.scale * apart / APART)
        if lines is None:
            return
        here, space = (self.at, self.space) if space is None else (self._in_block, space)
        made = space.add_hatch(dxfattribs={"layer": self.layer("hatching"), "hatch_style": 0})
        name = cut.material.upper().replace(" ", "-")
        if cut.material in ("steel", "metal"):
            made.set_solid_fill()
        else:
            made.set_pattern_fill(name, definition=lines)
        for ring in cut.rings:
            made.paths.add_polyline_path([here(x, y) for x, y in ring], is_closed=True)

    def filled(self, rings: Sequence[Sequence[Point]]) -> None:
        """A black spot: an arrow, a dot."""
        made = self.space.add_hatch(dxfattribs={"layer": self.layer("leaders"), "hatch_style": 0})
        made.set_solid_fill()
        for ring in rings:
            made.paths.add_polyline_path([self.at(x, y) for x, y in ring], is_closed=True)

    def words(
        self, text: str, x: float, y: float, size: float = LETTERS, turn: float = 0.0
    ) -> None:
        """One row of letters from a point to the right, or turned. [m], [deg]"""
        self.space.add_text(
            text,
            height=size * self.scale,
            rotation=turn,
            dxfattribs={"layer": self.layer("words")},
        ).set_placement(self.at(x, y))

    # -- blocks -----------------------------------------------------------------------------------
    def piece(self, name: str, ring: Polygon) -> None:
        """A piece where it stands: an insert of the block of its form, made when first needed."""
        x0, y0 = min(x for x, _ in ring), min(y for _, y in ring)
        form = [(x - x0, y - y0) for x, y in ring]
        key = (name, *((round(x, 5), round(y, 5)) for x, y in form))
        if key not in self._shapes:
            self._counts[name] = self._counts.get(name, 0) + 1
            self._shapes[key] = f"{name} {self._counts[name]}"
            block = self.document.blocks.new(self._shapes[key])
            block.add_lwpolyline(
                [(x * self.scale, y * self.scale) for x, y in form],
                close=True,
                dxfattribs={"layer": "0"},
            )
        self.space.add_blockref(
            self._shapes[key], self.at(x0, y0), dxfattribs={"layer": self.layer("pieces")}
        )

    def level(self, told: str, name: str, z: float, x: float) -> None:
        """A level mark: a triangle that stands on the level, with its height and its name. [m]"""
        spots = {"LEVEL": (0.02, 0.02), "NAME": (0.02, -0.07)}
        if LEVEL not in self.document.blocks:
            block = self.document.blocks.new(LEVEL)
            drawn = [(0.0, 0.0), (-TRIANGLE / 2, TRIANGLE), (TRIANGLE / 2, TRIANGLE)]
            block.add_lwpolyline(
                [(x * self.scale, y * self.scale) for x, y in drawn],
                close=True,
                dxfattribs={"layer": "0"},
            )
            for tag, (right, up) in spots.items():
                block.add_attdef(
                    tag,
                    ((right + TRIANGLE) * self.scale, up * self.scale),
                    dxfattribs={"height": LETTERS * self.scale, "prompt": tag.capitalize()},
                )
        layer = self.layer("levels")
        insert = self.space.add_blockref(LEVEL, self.at(x, z), dxfattribs={"layer": layer})
        for tag, words in (("LEVEL", told), ("NAME", name)):
            right, up = spots[tag]
            spot = self.at(x + right + TRIANGLE, z + up)
            insert.add_attrib(tag, words, spot, {"height": LETTERS * self.scale, "layer": layer})

    # -- dimensions -------------------------------------------------------------------------------
    def dimension(
        self,
        a: Point,
        b: Point,
        line: float,
        upright: bool = False,
        times: float = 1.0,
        words: str = "",
    ) -> None:
        """A dimension from one model point to another, its line at a level or, upright, at a
        distance [m]; letters and ticks so many times as large as the style's [-]. What is painted
        may be told; else it is what is measured.

        It is painted in feet and inches, which the library cannot write by itself, and stays a
        measured dimension: ``<>``.
        """
        base = self.at(line, a[1]) if upright else self.at(a[0], line)
        long = abs(b[1] - a[1] if upright else b[0] - a[0])
        inches = self.units == FEET_INCHES
        made = self.space.add_linear_dim(
            base=base,
            p1=self.at(*a),
            p2=self.at(*b),
            angle=90 if upright else 0,
            dimstyle=STYLE[self.units],
            override={} if times == 1.0 else {"dimscale": times},
            text=words or (feet_inches(long) if inches else "<>"),
            dxfattribs={"layer": self.layer("dimensions")},
        )
        made.render()
        made.dimension.dxf.text = "<>"
        made.dimension.dxf.actual_measurement = long * self.scale

    # -- a whole view -----------------------------------------------------------------------------
    def view(self, view: TrueView, dx: float, dy: float) -> None:
        """One view, moved by so much. [m]"""
        self.dx, self.dy = dx, dy
        for cut in view.cuts:
            self.hatch(cut)
            for ring in cut.rings:
                self.ring(ring, cut.material)
        for layer, ring in view.seen:
            self.ring(ring, layer, closed=len(ring) > 2)
        for layer, pairs in view.lines:
            self.segments(pairs, layer)
        for piece in view.pieces:
            self.piece(piece.name, piece.ring)
        if view.more is not None:
            view.more(self)
        self._measured(view)
        left, low, _, top = view.box
        if view.middle:
            self.ring([(0.0, low - 0.1), (0.0, top + 0.1)], "center-lines", closed=False)
        self.words(view.name, left, view.room()[1] + 0.05, 2 * LETTERS)

    def _measured(self, view: TrueView) -> None:
        """Its dimensions under it and to the right, then its level marks."""
        _, low, right, _ = view.box
        for n, row in enumerate(view.rows_across()):
            self._row(row, low - OUT - ROW * n, _Reached(view.spots, 0))
        for n, row in enumerate(view.rows_over()):
            self._row(row, view.box[3] + OUT + ROW * n, _Reached(view.spots, 0, high=True))
        rows = view.rows_up()
        for n, row in enumerate(rows):
            self._row(row, right + OUT + ROW * n, _Reached(view.spots, 1), upright=True)
        column = right + OUT + ROW * len(rows) + 0.1
        stood, aside = -BEYOND, 0.0
        for z, told, name in level_marks(view.marks, lambda z: level(z, self.units)):
            aside = 0.0 if z - stood > 2.6 * LETTERS else aside + 0.9
            stood = z if aside == 0.0 else stood
            self.level(told, name, z, column + aside)

    def _row(
        self, row: Sequence[Gap], line: float, reached: _Reached, upright: bool = False
    ) -> None:
        """One row of dimensions, each place rounded once to the tape, so that their sums hold."""
        for a, b in row:
            long = on_tape(b, self.units) - on_tape(a, self.units)
            inches = self.units == FEET_INCHES
            words = "" if long < 1e-9 else feet_inches(long) if inches else f"{long / MM:.0f}"
            first, last = (
                (reached(place), place) if upright else (place, reached(place)) for place in (a, b)
            )
            self.dimension(first, last, line, upright, words=words)


class _Reached:
    """Where the point of a place stands that a dimension begins at: the lowest, or the one farthest
    to the right or up.
    """

    def __init__(self, spots: Sequence[Point], axis: int, high: bool = False) -> None:
        self.spots, self.axis, self.high = spots, axis, high or axis == 1

    def __call__(self, place: float) -> float:
        other = [spot[1 - self.axis] for spot in self.spots if abs(spot[self.axis] - place) < 3e-4]
        return (max(other) if self.high else min(other)) if other else 0.0
