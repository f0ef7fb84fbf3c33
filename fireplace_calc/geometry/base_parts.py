"""Parts from the footing to the hearth, and what the firebox's lining fills."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from itertools import pairwise
from math import hypot

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.firebox import DRAWN_PLATE, STEEL_UNIT
from fireplace_calc.geometry.outlines import centered, stacked
from fireplace_calc.geometry.parts import Part, beside, part
from fireplace_calc.geometry.polygons import Polygon, box
from fireplace_calc.geometry.second_flue.outlines import FlueOutlines
from fireplace_calc.geometry.solids import Loft, Solid, prism

SEAT = ("hearth seat", "hearth seat bed", "hearth seat base")
"""Finished slab, its bed, and the masonry under it: they stand on the floor beside the hearth, not
on the footing.
"""


class BaseParts(FlueOutlines):
    """Footing, base, slab, hearth and its extension."""

    def foundation(self) -> Iterable[Part]:
        """Footing, base walls, what fills them, and the slab under the hearth."""
        d, f = self.design, self.frame
        out = d.base.footing_projection
        yield part(
            "footing",
            "concrete",
            [
                prism(
                    f.footing_bottom,
                    f.footing_top,
                    centered(f.block_half + out, -out, f.block_back + out),
                )
            ],
        )
        whole = prism(f.footing_top, f.slab_bottom, self.block)
        core = self.core()
        yield part(
            "base walls", "block", [whole], core, self.second_cavity(f.footing_top, f.slab_bottom)
        )
        if core and d.base.core == "grouted":
            yield part("base core", "grout", core)
        yield part(
            "hearth slab",
            "concrete",
            [prism(f.slab_bottom, f.slab_top, self.block)],
            aside=self.second_cavity(f.slab_bottom, f.slab_top),
        )

    def core(self) -> list[Solid]:
        """What the base walls surround; it ends a wall short of a second flue that comes from
        below. None where the walls meet.
        """
        f, w = self.frame, self.design.base.block_width
        left, right = w - f.block_half, f.block_half - w
        if f.second is not None and f.second.start < f.slab_bottom:
            near = abs(f.second.x) - f.second.cavity_half - w
            left, right = (left, min(right, near)) if f.second.x > 0 else (max(left, -near), right)
        if right <= left or f.block_back <= 2 * w:
            return []
        outline = box(left, right, w, f.block_back - w)
        return [prism(f.footing_top, f.slab_bottom, outline)]

    def hearth(self) -> Iterable[Part]:
        """Firebox floor, and the hearth extension on its bed and base."""
        d, f = self.design, self.frame
        yield part(
            "firebox floor", "firebrick" if d.method == "laid" else "refractory", [self.floor]
        )
        if d.hearth.front <= 0:
            return
        plan = centered(f.half_width + d.hearth.side, -d.hearth.front, 0.0)
        under, bottom = (
            f.extension_top - d.hearth.thickness,
            f.extension_top - d.hearth.thickness - d.hearth.bed,
        )
        finish = d.hearth.material or "stone"
        material = "brick" if finish == "masonry" else finish
        yield part("hearth extension", material, [prism(under, f.extension_top, plan)])
        yield part("hearth extension bed", "concrete", [prism(bottom, under, plan)])
        if bottom > 0:
            yield part("hearth extension base", "block", [prism(0.0, bottom, plan)])
        yield from self.seat(material)

    def seat(self, material: str) -> Iterable[Part]:
        """The hearth carried on along the wall as a bench: slab, bed, and the masonry under it.

        Parameters
        ----------
        material : str
            Of the finished slab.
        """
        if not self.design.seat.drawn:
            return
        slab, bed, base = SEAT
        top, under, bottom = self.seat_levels()
        plans = self.seat_plans()
        yield beside(slab, material, [prism(under, top, plan) for plan in plans])
        yield beside(bed, "concrete", [prism(bottom, under, plan) for plan in plans])
        yield beside(base, "block", [prism(0.0, bottom, plan) for plan in plans], self.wood_store())

    def seat_levels(self) -> tuple[float, float, float]:
        """Top of a seat, underside of its slab and of its bed. [m]"""
        hearth, told = self.design.hearth, self.design.seat.height
        top = self.frame.extension_top if told is None else told
        under = max(top - hearth.thickness, 0.0)
        return top, under, max(under - hearth.bed, 0.0)

    def seat_plans(self) -> list[Polygon]:
        """A seat from above, before the breast and, where it reaches past the breast, back to the
        wall as far as that is known. [m]
        """
        f, d, made = self.frame, self.design, []
        near, back = f.half_width + d.hearth.side, d.breast.stands_out or 0.0
        for sign, reach, _ in d.seat.stretches():
            far = near + reach
            corner = min(max(near, f.block_half), far)
            for a, b, behind in ((near, corner, 0.0), (corner, far, back)):
                if b - a > ROUNDING:
                    low, high = sorted((sign * a, sign * b))
                    made.append(box(low, high, -d.hearth.front, behind))
        return made

    def wood_store(self) -> list[Solid]:
        """Niches in the front of a seat: as wide as told, in the middle of it, from the floor up to
        the bed, and back to the plane of the face.
        """
        f, d, bottom = self.frame, self.design, self.seat_levels()[2]
        near, half = f.half_width + d.hearth.side, d.seat.niche_width / 2
        found: list[Solid] = []
        for sign, reach, stored in d.seat.stretches():
            middle = sign * (near + reach / 2)
            if stored:
                left, right = middle - half, middle + half
                cuts = {-f.block_half, f.block_half}
                ends = sorted({left, right, *(x for x in cuts if left < x < right)})
                found += [
                    prism(0.0, bottom, box(a, b, -d.hearth.front, 0.0)) for a, b in pairwise(ends)
                ]
        return found

    @cached_property
    def floor(self) -> Loft:
        """Firebrick paving between the splayed sides, as a solid."""
        return prism(self.frame.slab_top, self.frame.hearth, self.trapezoid(0.0, self.frame.depth))

    @cached_property
    def lining_outside(self) -> list[Solid]:
        """Firebox and its lining, air chamber of a steel unit counted in."""
        return self.lined(self.design.firebox.lining_thickness)

    def lined(self, thick: float) -> list[Solid]:
        """Firebox and a lining of one thickness, from the slab to the throat.

        Parameters
        ----------
        thick : float
            Square to the faces. [m]
        """
        f = self.frame
        spread, bends = thick * hypot(1.0, f.side_slope), [self.bend(thick)]
        low = stacked(
            f.slab_top,
            f.spring,
            lambda z: self.trapezoid(0.0, self.behind(z, thick), spread),
            bends,
        )
        low += stacked(
            f.spring,
            f.opening_top,
            lambda z: self.trapezoid(f.breast, self.behind(z, thick), spread),
            bends,
        )
        return low + stacked(
            f.opening_top,
            f.throat,
            lambda z: self.trapezoid(self.front_above(z), self.behind(z, thick), spread),
            bends,
        )

    @cached_property
    def plate_outside(self) -> list[Solid]:
        """Firebox and what is solid of its lining: of a steel unit the plate alone."""
        firebox = self.design.firebox
        if firebox.lining != STEEL_UNIT:
            return self.lining_outside
        return self.lined(DRAWN_PLATE if firebox.plate is None else firebox.plate)
