"""All the brickwork of one geometry: every face of the firebox, and the block under it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.block_work import LaidBlock, lay_block
from fireplace_calc.brickwork.coursing import Coursing, EvenCourses, even_courses
from fireplace_calc.brickwork.cut_stock import Shape, bricks_for, cut_list
from fireplace_calc.brickwork.faces import floor_face, lining_faces
from fireplace_calc.brickwork.fitted.gauge import Gauge, gauge
from fireplace_calc.brickwork.layout import Layout, lay
from fireplace_calc.brickwork.ring import BlockCourse
from fireplace_calc.brickwork.unit import UnitMasonry, block, brick_sides, firebrick
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.parts import Geometry

LEAST_SAWN = INCH / 16
"""A brick may be so much deeper than its place before it has to be sawn: what a straight is off by.
[m]
"""
USUAL_JOINT = INCH / 8
"""Taken while the joint is not known. [m]"""


@dataclass(frozen=True)
class Brickwork:
    """Where every brick goes; each face is laid when it is first asked for."""

    geometry: Geometry

    @cached_property
    def floor(self) -> Layout | None:
        """Of the firebox floor, where it is paved with firebrick."""
        if self.geometry.under_fire.material != "firebrick":
            return None
        bond = self.geometry.design.firebox.floor_bond
        return lay(floor_face(self.geometry.frame), floor_bricks(self.geometry).unit, bond)

    @cached_property
    def lining(self) -> tuple[Layout, ...]:
        """Back, raked back and one of two sides, where they are firebrick."""
        return tuple(_lined(self.geometry)) if self._is_lined else ()

    @cached_property
    def lining_courses(self) -> EvenCourses | None:
        """Courses of the lining up to the underside of the smoke shelf."""
        if not self._is_lined:
            return None
        f, unit = self.geometry.frame, lining_bricks(self.geometry).unit
        return even_courses(f.throat - f.slab_top, unit.height, unit.joint)

    @cached_property
    def base_block(self) -> LaidBlock | None:
        """Block under the hearth slab."""
        return self._block("base walls")

    @cached_property
    def extension_block(self) -> LaidBlock | None:
        """Block under the hearth extension, where it stands above the floor."""
        return self._block("hearth extension base")

    @property
    def _is_lined(self) -> bool:
        return self.geometry.facing_fire.material == "firebrick"

    def block_of(self, name: str) -> LaidBlock | None:
        """The block of a part that is laid in it course by course; none of any other part."""
        match name:
            case "base walls":
                return self.base_block
            case "hearth extension base":
                return self.extension_block
        return None

    def _block(self, name: str) -> LaidBlock | None:
        part = self.geometry.parts_by_name.get(name)
        return lay_block(part, block(self.geometry)) if part and part.volume > 0 else None

    @property
    def layouts(self) -> tuple[Layout, ...]:
        """Every face that is laid, in the order it is built."""
        return ((self.floor,) if self.floor else ()) + self.lining

    @cached_property
    def cuts(self) -> dict[Shape, int]:
        """Cut pieces by shape, and how many. [-]"""
        return cut_list(self.layouts)

    @cached_property
    def slivers(self) -> int:
        """Cuts of less than a quarter brick that no start could avoid. [-]"""
        return sum(len(layout.slivers) * layout.face.alike for layout in self.layouts)

    @property
    def base(self) -> Coursing | None:
        """What of the base stands on what."""
        return None if self.base_block is None else self.base_block.coursing

    @property
    def extension(self) -> Coursing | None:
        """The same under the hearth extension."""
        return None if self.extension_block is None else self.extension_block.coursing

    @property
    def block_courses(self) -> tuple[BlockCourse, ...]:
        """The first two courses of base block, which take turns, in plan; one where it is all."""
        return () if self.base_block is None else self.base_block.courses[:2]


@dataclass(frozen=True, slots=True)
class BrickCount:
    """Bricks of one kind of work.

    Attributes
    ----------
    whole, pieces, bricks_for_cuts : int
        Whole bricks, cut pieces, and the bricks those come out of. [-]
    whole_area, cut_area : float
        Bare faces of the whole bricks and of the cut pieces. [m2]
    """

    whole: int
    pieces: int
    bricks_for_cuts: int
    whole_area: float
    cut_area: float


@lru_cache(maxsize=64)
def count_bricks(layouts: tuple[Layout, ...]) -> BrickCount:
    """Bricks that some faces take, all alike ones counted."""
    whole = sum(layout.whole * layout.face.alike for layout in layouts)
    pieces = [
        (piece, layout.face.alike)
        for layout in layouts
        for piece in layout.pieces
        if not piece.whole
    ]
    number = sum(alike for _, alike in pieces)
    length = layouts[0].unit.length if layouts else 0.0
    face = sum(
        layout.whole * layout.face.alike * layout.unit.length * layout.unit.height
        for layout in layouts
    )
    from_bricks = bricks_for(
        (piece.length for piece, alike in pieces for _ in range(alike)), length
    )
    return BrickCount(
        whole, number, from_bricks, face, sum(piece.area * alike for piece, alike in pieces)
    )


def usual_joint(design: Design) -> float:
    """Joint of firebrick and of refractory sections, 1/8 in while it is not known.

    Parameters
    ----------
    design : Design

    Returns
    -------
    float
        [m]
    """
    told = design.firebox.joint
    return USUAL_JOINT if told is None else told


def lining_bricks(geometry: Geometry) -> UnitMasonry:
    """How the firebrick of the lining lies, its joint taken as 1/8 in while it is not known."""
    box = geometry.design.firebox
    return firebrick(box.brick, box.lining_thickness, usual_joint(geometry.design))


def lining_courses_of(geometry: Geometry) -> Gauge:
    """How the courses of the lining are brought up, level round back and sides: no piece under the
    springing, the bend or the smoke shelf is too thin to be cut.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Gauge
    """
    f, unit = geometry.frame, lining_bricks(geometry).unit
    ends = (f.spring, f.back_bend, f.throat)
    levels = sorted({min(end, f.throat) - f.slab_top for end in ends})
    return gauge(tuple(levels), unit.height, unit.joint)


def floor_bricks(geometry: Geometry) -> UnitMasonry:
    """The same for the floor."""
    box = geometry.design.firebox
    return firebrick(box.brick, box.floor, usual_joint(geometry.design))


def split_brick(geometry: Geometry) -> str:
    """A question where lining or floor is thinner than its brick lies: every brick is sawn.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    str
        Nothing where the brick is laid as it comes.
    """
    box, said = geometry.design.firebox, []
    for made, label, told in (
        (geometry.facing_fire, "Lining thickness", box.lining_thickness),
        (geometry.under_fire, "Firebrick floor", box.floor),
    ):
        if made.material == "firebrick":
            laid = (
                lining_bricks(geometry) if label == "Lining thickness" else floor_bricks(geometry)
            )
            whole = next(
                side for side in sorted(brick_sides(box.brick)) if side > laid.unit.depth - ROUNDING
            )
            if whole > laid.unit.depth + LEAST_SAWN:
                said.append(
                    f"{label} is {feet_inches(told)}, but the brick lies"
                    f" {feet_inches(whole)} deep: every brick of it is sawn to"
                    f" {feet_inches(laid.unit.depth)}. Is that meant?"
                )
    return " ".join(said)


def lay_brickwork(geometry: Geometry) -> Brickwork:
    """Everything that is laid brick by brick, laid once for a geometry: a cut is found again by the
    course that it was marked on.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Brickwork
        Faces that are not firebrick are left out.
    """
    return geometry.once(Brickwork)


def _lined(geometry: Geometry) -> Iterator[Layout]:
    """The faces of the lining; the raked back is coursed along its slope, by itself."""
    unit, bond = lining_bricks(geometry).unit, geometry.design.firebox.bond
    level = lining_courses_of(geometry)
    for face in lining_faces(geometry.frame):
        yield lay(face, unit, bond, None if face.name == "raked back" else level)
