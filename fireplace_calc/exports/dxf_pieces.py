"""A set of pieces in the DXF: every mark a block, every piece that stands an insert of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.build.setting.setting_order import steps_by_name
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.drawing.sheets.style import HATCHES
from fireplace_calc.exports.cad.pen import DxfPen
from fireplace_calc.exports.cad.true_view import CutShape
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.sections import section
from fireplace_calc.geometry.assembled.solids import extent, piece_part, piece_weight
from fireplace_calc.geometry.from_set.frame_of_set import SetFrame
from fireplace_calc.geometry.from_set.mortar_beds import rings_of
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.geometry.mesh import part_mesh
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.geometry.visible.stages import seen_alone
from fireplace_calc.geometry.visible.viewpoint import SECTION
from fireplace_calc.pieces.records import SetPiece

TELLS = ("MARK", "NUMBER", "STEP", "NAME", "ROLE", "MATERIAL", "WEIGHT", "KILOGRAMS")
"""What an insert in space tells of its piece, tag by tag."""
SHOWN = "PIECE"
"""The one tag of an insert in a view: mark and number."""
HIGH = 0.03
"""Letters of a tag. [m]"""
UPRIGHT, LEVEL = "cut upright", "cut level"
"""What the name of a block adds to the mark where a cut is shown of the piece."""


class SetInserts:
    """Puts the pieces of a design's set into a document.

    Parameters
    ----------
    pen : DxfPen
        Draws into it.
    result : Assessment
        Of a design with a set.
    """

    def __init__(self, pen: DxfPen, result: Assessment) -> None:
        self.pen, self.document, self.scale, self.layer = pen, pen.document, pen.scale, pen.layer
        self.space, self.units = pen.space, pen.units
        design = result.design
        self.up = set_up(design)
        frame = result.geometry.frame
        self.start = frame.plate_bottom if isinstance(frame, SetFrame) else 0.0
        self.blocks: dict[str, str] = {}
        lining = design.piece_set.lining if design.piece_set else None
        self.step = steps_by_name(self.up.assembly, lining)

    def in_space(self, dx: float) -> None:
        """The set as it stands, x to the right of ``dx``, y away from the room, z up. [m]"""
        for one in self.up.assembly.placed:
            piece = one.piece
            name = self._solid(piece)
            x0, x1, y0, y1, _, _ = extent(piece)
            insert = self._put(name, piece, (dx, self.up.set_back, one.level + self.start))
            told = (
                piece.mark,
                str(one.number),
                str(self.step.get(one.name, "")),
                piece.name,
                piece.role,
                piece.material,
                weight_text(piece_weight(piece), self.units),
                f"{piece_weight(piece):.3f}",
            )
            middle = (dx + (x0 + x1) / 2, self.up.set_back + (y0 + y1) / 2, one.top + self.start)
            for tag, words in zip(TELLS, told, strict=True):
                self._tell(insert, tag, words, middle, hidden=tag != "NUMBER")

    def cut_upright(self, dx: float) -> None:
        """What the center line cuts, y to the right of ``dx``. [m]"""
        for one in self.up.assembly.placed:
            self._cut(
                one, UPRIGHT, _upright(one.piece), (dx + self.up.set_back, one.level + self.start)
            )

    def cut_level(self, at: tuple[float, float], z: float) -> None:
        """What a level cuts, x to the right of a point, y up from it. [m]"""
        for one in self.up.assembly.placed:
            over = z - one.level - self.start
            solids = piece_part(one.piece)
            if 0.0 <= over <= solids.top:
                rings = [r for both in rings_of(section(one.piece, over)) for r in both]
                self._cut(one, LEVEL, rings, (at[0], at[1] + self.up.set_back))

    def _cut(self, one: Placed, kind: str, rings: list[Polygon], at: tuple[float, float]) -> None:
        """A piece as a cut shows it, with its name in the middle of the largest outline."""
        if not rings:
            return
        insert = self._put(self._outlines(one.piece, kind, rings), one.piece, (*at, 0.0))
        x, y = _middle(rings)
        self._tell(insert, SHOWN, one.name, (at[0] + x, at[1] + y, 0.0), hidden=False)

    def _put(self, name: str, piece: SetPiece, at: tuple[float, float, float]) -> Any:
        where = tuple(self.scale * v for v in at)
        return self.space.add_blockref(
            name, where, dxfattribs={"layer": self.layer(f"set {piece.role}")}
        )

    def _tell(self, insert: Any, tag: str, words: str, at: tuple[float, ...], hidden: bool) -> None:
        attribute = insert.add_attrib(
            tag,
            words,
            tuple(self.scale * v for v in at),
            {"height": HIGH * self.scale, "layer": insert.dxf.layer},
        )
        attribute.is_invisible = hidden

    def _solid(self, piece: SetPiece) -> str:
        """The block of a mark: its true form in flat faces, of which only real edges show."""
        if piece.mark in self.blocks:
            return self.blocks[piece.mark]
        block = self._new_block(piece.mark)
        skin = part_mesh(piece_part(piece))
        shown = {(int(e[0]), int(e[1])) for e in skin.edges[skin.sharp]}
        points = [tuple(float(self.scale * v) for v in p) for p in skin.points]
        for face in skin.faces:
            a, b, c = (int(v) for v in face)
            sides = [(a, b), (b, c), None, (c, a)]  # a face of three corners has its last one twice
            unseen = sum(
                1 << k
                for k, side in enumerate(sides)
                if side is None or (side not in shown and side[::-1] not in shown)
            )
            block.add_3dface(
                [points[a], points[b], points[c], points[c]],
                dxfattribs={"layer": "0", "invisible_edges": unseen},
            )
        self._asks(block, TELLS)
        return self.blocks[piece.mark]

    def _new_block(self, key: str) -> Any:
        """An empty block; a name that differs from another in nothing but its capitals, which the
        file does not tell apart, gets a number.
        """
        name = key
        while name in self.document.blocks:
            name = f"{key} {len(self.blocks)}"
        self.blocks[key] = name
        return self.document.blocks.new(name)

    def _outlines(self, piece: SetPiece, kind: str, rings: Sequence[Polygon]) -> str:
        """Name of the block of a cut piece: its outlines, hatched."""
        key = f"{piece.mark} {kind}"
        if key in self.blocks:
            return self.blocks[key]
        block = self._new_block(key)
        self.pen.hatch(CutShape(_stuff(piece), tuple(rings)), block)
        for ring in rings:
            corners = [(self.scale * x, self.scale * y) for x, y in ring]
            block.add_lwpolyline(corners, close=True, dxfattribs={"layer": "0"})
        self._asks(block, (SHOWN,))
        return self.blocks[key]

    def _asks(self, block: Any, tags: Iterable[str]) -> None:
        for tag in tags:
            asked = block.add_attdef(
                tag,
                (0.0, 0.0),
                dxfattribs={
                    "height": HIGH * self.scale,
                    "layer": "0",
                    "prompt": tag.capitalize(),
                },
            )
            asked.is_invisible = tag not in ("NUMBER", SHOWN)


def _stuff(piece: SetPiece) -> str:
    """How what it is made of is hatched: as it is called, or as what faces fire."""
    return piece.material if piece.material in HATCHES else "refractory"


def _upright(piece: SetPiece) -> list[Polygon]:
    """What the center line cuts of a piece on its bed: ``(y, z)``. [m]"""
    return [
        tuple((float(y), float(z)) for y, z in ring)
        for seen in seen_alone(piece, SECTION)
        if seen.cut
        for ring in seen.rings
    ]


def _middle(rings: Iterable[Polygon]) -> tuple[float, float]:
    """Mean corner of the first outline. [m]"""
    ring = next(iter(rings))
    return sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring)
