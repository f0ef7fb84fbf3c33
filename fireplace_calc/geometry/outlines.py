"""Outlines and voids of one design at any level: what its parts are built from and cut out by."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from itertools import pairwise
from math import hypot

from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.arches import ArchVoid
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.geometry.solids import Cylinder, Loft, Solid

FIREBOX_MASONRY = {
    "stone": "stone",
    "concrete": "concrete",
    "hollow grouted solid": "grouted block",
    "hollow ungrouted": "block",
}
LININGS = {
    "firebrick": "firebrick",
    "refractory section": "refractory",
    "other approved": "refractory",
    "none": "brick",
    STEEL_UNIT: "steel",
}
CHAMBER_LININGS = {
    "firebrick": "firebrick",
    "vitrified clay": "clay liner",
    "parged": "parging",
    None: "parging",
}


def stacked(
    bottom: float, top: float, outline: Callable[[float], Polygon], breaks: Iterable[float] = ()
) -> list[Solid]:
    """Lofts between two levels, broken where the outline bends.

    Parameters
    ----------
    bottom, top : float
        Levels. [m]
    outline : callable
        Level outline at a level. [m]
    breaks : iterable of float
        Levels where it bends; those outside count for nothing. [m]

    Returns
    -------
    list of Solid
    """
    levels = sorted({bottom, top, *(z for z in breaks if bottom < z < top)})
    return [
        Loft(low, high, outline(low), outline(high))
        for low, high in zip(levels, levels[1:], strict=False)
        if high > low
    ]


def centered(half: float, front: float, back: float, shift: float = 0.0) -> Polygon:
    """A level rectangle astride the center line, or beside it.

    Parameters
    ----------
    half : float
        Half its width. [m]
    front, back : float
        Its sides, from the opening plane away from the room. [m]
    shift : float
        Of its middle, to the right. [m]

    Returns
    -------
    Polygon
        Counter-clockwise. [m]
    """
    return box(shift - half, shift + half, front, back)


class Outlines:
    """The shapes of one design; every part is one of them, less what stands in it. [m]

    Attributes
    ----------
    design : Design
    frame : Frame
    block : Polygon
        Outside of the masonry up to the shoulder. [m]
    side_offset, back_offset : float
        Thickness of the lining along x beside, and along y behind. [m]
    bend_behind : float
        Level at which the back of the lining starts to lean: the miter of its two faces. [m]
    masonry : str
        Material behind the lining.
    """

    def __init__(self, design: Design) -> None:
        self.design = design
        self.frame = build_frame(design)
        f, lining = self.frame, design.firebox.lining_thickness
        self.block = centered(f.block_half, 0.0, f.block_back)
        self.side_offset = lining * hypot(1.0, f.side_slope)
        self.back_offset = lining * hypot(1.0, f.lean)
        self.bend_behind = self.bend(lining)
        self.masonry = FIREBOX_MASONRY.get(design.firebox.masonry or "", "brick")

    def bend(self, thickness: float) -> float:
        """Level at which the back of a lining so thick starts to lean. [m]

        Parameters
        ----------
        thickness : float
            Square to the face. [m]
        """
        f = self.frame
        if f.lean <= 0:
            return min(f.back_bend, f.throat)
        return min(f.back_bend + thickness * (hypot(1.0, f.lean) - 1) / f.lean, f.throat)

    # -- outlines of the firebox at a level -----------------------------------------------------
    def front_above(self, z: float) -> float:
        """Front of the firebox over the opening, from the breast to the throat, as y. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        """
        f = self.frame
        t = (z - f.opening_top) / (f.throat - f.opening_top) if f.throat > f.opening_top else 1.0
        return f.breast + (f.throat_front - f.breast) * min(max(t, 0.0), 1.0)

    def behind(self, z: float, thickness: float | None = None) -> float:
        """Back of the lining, seen from behind, as y. [m]

        Parameters
        ----------
        z : float
            Level. [m]
        thickness : float, optional
            Of the lining; as told when left out. [m]
        """
        f = self.frame
        lining = self.design.firebox.lining_thickness if thickness is None else thickness
        return f.depth + lining - f.lean * max(z - self.bend(lining), 0.0)

    def trapezoid(self, front: float, back: float, spread: float = 0.0) -> Polygon:
        """Level outline between the splayed sides. [m]

        Parameters
        ----------
        front, back : float
            As y. [m]
        spread : float
            How far each side is pushed out, along x. [m]
        """
        a, b = self.frame.half_at(front) + spread, self.frame.half_at(back) + spread
        return ((-a, front), (a, front), (b, back), (-b, back))

    # -- voids ----------------------------------------------------------------------------------
    @cached_property
    def firebox_air(self) -> tuple[Solid, ...]:
        """Inside of the firebox, from the hearth to the throat."""
        f = self.frame
        air = stacked(
            f.hearth, f.spring, lambda z: self.trapezoid(0.0, f.back_at(z)), [f.back_bend]
        )
        air += stacked(
            f.spring, f.opening_top, lambda z: self.trapezoid(f.breast, f.back_at(z)), [f.back_bend]
        )
        air += stacked(
            f.opening_top,
            f.throat,
            lambda z: self.trapezoid(self.front_above(z), f.back_at(z)),
            [f.back_bend],
        )
        if f.spring < f.opening_top:
            air.append(
                ArchVoid(
                    f.spring, f.opening_top - f.spring, 2 * f.half_width, f.breast, f.side_slope
                )
            )
        return tuple(air)

    def chamber_outline(self, upper: bool, spread: float) -> Polygon:
        """Bottom or top rectangle of the smoke chamber, pushed out square to each leaning face, but
        not out of the masonry. [m]

        Parameters
        ----------
        upper : bool
            The top one.
        spread : float
            How far out, square to the face. [m]
        """
        f = self.frame
        rise = f.taper_top - f.throat
        half = f.bore.width / 2 if upper else f.throat_width / 2
        front = f.flue_y - f.bore.depth / 2 if upper else f.throat_front
        back = f.flue_y + f.bore.depth / 2 if upper else f.depth
        side = spread * hypot(1.0, (f.throat_width - f.bore.width) / 2 / rise)
        ahead = spread * hypot(1.0, (f.flue_y - f.bore.depth / 2 - f.throat_front) / rise)
        behind = spread * hypot(1.0, (f.flue_y + f.bore.depth / 2 - f.depth) / rise)
        return centered(
            min(half + side, f.block_half),
            max(front - ahead, 0.0),
            min(back + behind, f.block_back),
        )

    def chamber(self, spread: float = 0.0) -> Loft:
        """Inside of the smoke chamber, or the outside of its lining.

        Parameters
        ----------
        spread : float
            Thickness of the lining, square to each face. [m]
        """
        return Loft(
            self.frame.throat,
            self.frame.taper_top,
            self.chamber_outline(False, spread),
            self.chamber_outline(True, spread),
        )

    def along_flue(
        self,
        bottom: float,
        top: float,
        half: float,
        deep: float,
        round_radius: float | None = None,
        aside: float = 0.0,
    ) -> list[Solid]:
        """Solid about the flue's center line, upright or shifting: a loft, or a cylinder where a
        radius is given; nothing where its top is not over its bottom.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        half, deep : float
            Half its width and half its depth. [m]
        round_radius : float, optional
            Of a round one. [m]
        aside : float
            How far to the right of that line. [m]
        """
        f = self.frame
        if top <= bottom:
            return []
        levels = sorted(
            {bottom, top, *(z for z in (f.offset_bottom, f.offset_top) if bottom < z < top)}
        )
        made: list[Solid] = []
        front, back = f.flue_y - deep, f.flue_y + deep
        middles = [f.shift_at(z) + aside for z in levels]
        for (low, a), (high, b) in pairwise(zip(levels, middles, strict=True)):
            if round_radius is not None:
                made.append(Cylinder(low, high, round_radius, (a, f.flue_y), b - a))
            else:
                foot = centered(half, front, back, a)
                head = foot if a == b else centered(half, front, back, b)
                made.append(Loft(low, high, foot, head))
        return made

    def bore(self, bottom: float, top: float, wall: float = 0.0) -> list[Solid]:
        """The flue's inside, or with a wall its liner's outside.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        wall : float
            Thickness of the liner. [m]
        """
        return self._liner(self.frame.bore, bottom, top, wall)

    def _liner(
        self, bore: Bore, bottom: float, top: float, wall: float, aside: float = 0.0
    ) -> list[Solid]:
        half, deep = bore.width / 2 + wall, bore.depth / 2 + wall
        return self.along_flue(bottom, top, half, deep, half if bore.round else None, aside)

    def unit(self, bottom: float, top: float) -> list[Solid]:
        """Outside of one flue unit: the cast section, or the bare liner.

        Parameters
        ----------
        bottom, top : float
            Levels. [m]
        """
        if self.design.method == "modular":
            return self.along_flue(bottom, top, self.frame.unit_half, self.frame.unit_depth)
        return self.bore(bottom, top, self.frame.bore.wall)
