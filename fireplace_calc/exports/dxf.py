"""The drawings as DXF: true size, a layer to each material, dimensions as dimensions, a block to
each mark of a set.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from io import StringIO
from pathlib import Path
from typing import Any

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.resources import MAKER, made_by
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.drawing.views.face import COVERED, hood_ring, open_ring, seat_fronts
from fireplace_calc.drawing.views.front_elevation import breast_ring, lintel_ring, opening_ring
from fireplace_calc.drawing.views.laid_bricks import from_the_room
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.polygons import box
from fireplace_calc.pieces.records import PARTS

DIMENSIONS = "workbook"
"""The style of dimensions."""
APART = 1.2
"""Between two views. [m]"""
COLOURS = {"air": 8, "dimensions": 7, "words": 7, "joints": 9, "outline": 7}
"""Of the layers that are no material, by the standard's index; materials take theirs in turn. [-]
"""


def write_dxf(result: Assessment, path: str | os.PathLike[str], units: str = FEET_INCHES) -> Path:
    """Front elevation, section and plan side by side in model space.

    Parameters
    ----------
    result : Assessment
    path : path
        Of the file.
    units : str
        ``feet-inches`` draws one to an inch, ``millimetres`` one to a millimetre; the file says
        which.

    Returns
    -------
    path
        The file.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    import ezdxf
    from ezdxf.filemanagement import new
    from ezdxf.version import __version__ as version

    inches = units == FEET_INCHES
    document = new("R2010")
    document.units = ezdxf.units.IN if inches else ezdxf.units.MM
    document.header["$MEASUREMENT"] = 0 if inches else 1
    document.header["$LUNITS"] = 4 if inches else 2
    pen = _Pen(document, 1 / (INCH if inches else MM), result)
    pen.front()
    pen.section()
    pen.plan()
    pen.pieces()
    write_whole(path, _signed(document, version).encode(document.output_encoding))
    return Path(path)


def _signed(document: Any, library: str) -> str:
    """The file's text, with our name in every place where the library writes its own."""
    document.header["$LASTSAVEDBY"] = made_by()
    document.header.custom_vars.append("Program", made_by())
    document.header["$DIMSTYLE"] = DIMENSIONS
    written = StringIO()
    document.write(written)
    stamp = rf"^{re.escape(library)} @ .*$"
    signed = re.sub(stamp, made_by(), written.getvalue(), flags=re.MULTILINE)
    return signed.replace("EZDXF", MAKER.upper())


class _Pen:
    """Draws model metres at a scale, each view moved to its place."""

    def __init__(self, document: Any, scale: float, result: Assessment) -> None:
        geometry = result.geometry
        self.document, self.space, self.scale, self.g, self.f = (
            document,
            document.modelspace(),
            scale,
            geometry,
            geometry.frame,
        )
        self.dx = self.dy = 0.0
        self.set = None
        if geometry.design.piece_set is not None:
            from fireplace_calc.exports.dxf_pieces import SetInserts  # wakes manifold3d

            self.set = SetInserts(document, scale, self.layer, result)
        hearth = geometry.design.hearth
        beside = self.f.half_width + hearth.side if hearth.front > 0 else 0.0
        beside += max(geometry.design.seat.left, geometry.design.seat.right)
        self.wide = max(self.f.block_half, beside)  # half of what front and plan show [m]
        inches = document.units == 1
        sizes = {
            "dimtxt": 0.06,
            "dimasz": 0.03,
            "dimexe": 0.02,
            "dimexo": 0.02,
            "dimtsz": 0.03,
            "dimgap": 0.015,
        }
        document.dimstyles.new(
            DIMENSIONS,
            dxfattribs={name: size * scale for name, size in sizes.items()}
            | {
                "dimlunit": 4 if inches else 2,
                "dimdec": 4 if inches else 0,
                "dimtad": 1,
                "dimdsep": ord("."),
            },
        )

    def layer(self, name: str) -> str:
        """A layer of that name, made when first drawn on."""
        name = name.replace(" ", "-")
        if name not in self.document.layers:
            self.document.layers.add(
                name, color=COLOURS.get(name, 1 + len(self.document.layers) % 6)
            )
        return name

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Where a model point goes."""
        return ((x + self.dx) * self.scale, (y + self.dy) * self.scale)

    def ring(self, points: Iterable[tuple[float, float]], layer: str) -> None:
        """A closed outline."""
        self.space.add_lwpolyline(
            [self.at(*p) for p in points], close=True, dxfattribs={"layer": self.layer(layer)}
        )

    def lines(self, segments: Iterable[tuple[tuple[float, float], tuple[float, float]]]) -> None:
        """Brick edges."""
        layer = self.layer("joints")
        for (a, b), (c, d) in segments:
            self.space.add_line(self.at(a, b), self.at(c, d), dxfattribs={"layer": layer})

    def name(self, text: str, x: float, y: float) -> None:
        """What a view is called."""
        self.space.add_text(
            text, height=0.09 * self.scale, dxfattribs={"layer": self.layer("words")}
        ).set_placement(self.at(x, y))

    def dimension(
        self, a: tuple[float, float], b: tuple[float, float], line: float, upright: bool = False
    ) -> None:
        """A dimension from one model point to another, its line at a level or, upright, at a
        distance. [m]

        It is painted in feet and inches, which the library cannot write by itself, and stays a
        measured dimension: ``<>``.
        """
        base = self.at(line, a[1]) if upright else self.at(a[0], line)
        long = abs(b[1] - a[1] if upright else b[0] - a[0])
        words = feet_inches(long) if self.document.units == 1 else "<>"
        made = self.space.add_linear_dim(
            base=base,
            p1=self.at(*a),
            p2=self.at(*b),
            angle=90 if upright else 0,
            dimstyle=DIMENSIONS,
            text=words,
            dxfattribs={"layer": self.layer("dimensions")},
        )
        made.render()
        made.dimension.dxf.text = "<>"

    def front(self) -> None:
        """Front elevation with every brick of the lining that shows."""
        f, d = self.f, self.g.design
        top = max(d.house.ceiling, f.opening_top + 1.0)
        self.ring(breast_ring(self.g, top), "outline")
        self.ring(opening_ring(self.g), "outline")
        if hood := hood_ring(self.g, opening_ring(self.g)):
            self.ring(hood, "metal")
        self.ring(
            lintel_ring(self.g), (self.g.by_name.get("arch") or self.g.by_name["lintel"]).material
        )
        for edges in from_the_room(self.g, np.array(open_ring(self.g, opening_ring(self.g)))):
            self.lines(edges.tolist())
        half = f.half_width
        if d.hearth.front > 0:
            wide = half + d.hearth.side
            low = f.extension_top - d.hearth.thickness
            self.ring(
                box(-wide, wide, low, f.extension_top), self.g.by_name["hearth extension"].material
            )
        for material, ring in seat_fronts(self.g):
            self.ring(ring, "outline" if material == COVERED else material)
        self.dimension((-half, f.hearth), (half, f.hearth), min(f.hearth, 0.0) - 0.25)
        self.dimension(
            (-f.block_half, f.hearth), (f.block_half, f.hearth), min(f.hearth, 0.0) - 0.45
        )
        self.dimension((half, f.hearth), (half, f.opening_top), self.wide + 0.2, upright=True)
        self.name("Front elevation", -f.block_half, -0.8)

    def section(self) -> None:
        """Section on the center line, footing to crown."""
        f = self.f
        self.dx = self.wide + APART + self.g.design.hearth.front
        for part in self.g.parts:
            if self.set and part.name in PARTS:
                continue
            for ring in part.section():
                self.ring(ring, part.material)
        if self.set:
            self.set.cut_upright(self.dx)
        if f.hood > 0:
            self.ring([(0.0, f.clear_top), (0.0, f.opening_top)], "metal")
        low = f.footing_bottom - 0.2
        self.dimension((0.0, f.hearth), (f.depth, f.hearth), low)
        self.dimension((f.throat_front, f.throat), (f.throat_back, f.throat), low - 0.2)
        far = f.block_back + self.g.design.base.footing_projection + 0.2
        stops = [
            f.footing_bottom,
            f.footing_top,
            f.slab_bottom,
            f.hearth,
            f.opening_top,
            f.throat,
            f.flue_start,
            f.crown_top,
        ]
        for a, b in zip(stops, stops[1:], strict=False):
            if b - a > 1e-6:
                self.dimension((f.block_back, a), (f.block_back, b), far, upright=True)
        self.dimension(
            (f.block_back, f.hearth), (f.block_back, f.liner_top), far + 0.35, upright=True
        )
        self.name("Section on the center line", -self.g.design.hearth.front, low - 0.6)

    def plan(self) -> None:
        """Plan at the hearth with every brick of the floor."""
        f, d = self.f, self.g.design
        self.dx += f.block_back + APART + 1.0 + self.wide
        z = f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))
        for name in ("firebox lining", "firebox walls"):
            if (part := self.g.by_name.get(name)) is None:  # pieces that face the fire themselves
                continue
            if self.set and name in PARTS:
                self.set.cut_level(self.dx, z)
                continue
            for ring in part.plan(z)[0]:
                self.ring(ring, part.material)
        floor = lay_brickwork(self.g).floor
        self.ring(
            (
                (-f.half_width, 0.0),
                (f.half_width, 0.0),
                (f.half_at(f.depth), f.depth),
                (-f.half_at(f.depth), f.depth),
            ),
            self.g.under_fire.material,
        )
        if floor is not None:
            self.lines(floor.edges.tolist())
        if d.hearth.front > 0:
            wide = f.half_width + d.hearth.side
            self.ring(
                box(-wide, wide, -d.hearth.front, 0.0), self.g.by_name["hearth extension"].material
            )
            self.dimension((wide, -d.hearth.front), (wide, 0.0), self.wide + 0.2, upright=True)
        if seat := self.g.by_name.get(SEAT[0]):
            for ring in seat.plan(seat.top)[0]:
                self.ring(ring, seat.material)
        low = -d.hearth.front - 0.25
        self.dimension((-f.half_width, 0.0), (f.half_width, 0.0), low)
        self.dimension(
            (-f.back_width / 2, f.depth), (f.back_width / 2, f.depth), f.block_back + 0.2
        )
        far = self.wide + 0.4
        self.dimension((f.half_width, 0.0), (f.half_at(f.depth), f.depth), far, upright=True)
        self.name("Plan at the hearth", -f.block_half, low - 0.5)

    def pieces(self) -> None:
        """The set in space beside the plan, a block to each mark."""
        if self.set is None:
            return
        self.dx += 2 * self.wide + APART + 0.4
        self.set.in_space(self.dx)
        self.name("The set in space", -self.f.block_half, -0.5)
