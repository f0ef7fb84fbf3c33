"""What a design makes: every part built as a solid, from the footing up. The only source of
dimensions.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property, lru_cache
from math import hypot

from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import build_frame
from fireplace_calc.geometry.parts import Geometry, Part, part
from fireplace_calc.geometry.solids import (
    ArchRing,
    ArchVoid,
    Cylinder,
    Loft,
    Polygon,
    Solid,
    box,
    prism,
)

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
}
CHAMBER_LININGS = {
    "firebrick": "firebrick",
    "vitrified clay": "clay liner",
    "parged": "parging",
    None: "parging",
}


def _stack(
    bottom: float, top: float, outline: Callable[[float], Polygon], breaks: Iterable[float] = ()
) -> list[Loft]:
    """Lofts between two levels, broken where the outline bends."""
    levels = sorted({bottom, top, *(z for z in breaks if bottom < z < top)})
    return [
        Loft(low, high, outline(low), outline(high))
        for low, high in zip(levels, levels[1:], strict=False)
        if high > low
    ]


def _centred(half: float, front: float, back: float, shift: float = 0.0) -> Polygon:
    return box(shift - half, shift + half, front, back)


class _Builder:
    """Builds the solids of one design; each method is one part of the work."""

    def __init__(self, design: Design):
        self.design = design
        self.f = build_frame(design)
        f, lining = self.f, design.firebox.lining_thickness
        self.block = _centred(f.block_half, 0.0, f.block_back)
        self.side_offset = lining * hypot(1.0, f.side_slope)
        self.back_offset = lining * hypot(1.0, f.lean)
        mitre = f.back_bend + (self.back_offset - lining) / f.lean if f.lean > 0 else f.back_bend
        self.bend_behind = min(mitre, f.throat)
        self.masonry = FIREBOX_MASONRY.get(design.firebox.masonry, "brick")

    # -- outlines of the firebox at a level -----------------------------------------------------
    def front_above(self, z: float) -> float:
        """Front of the firebox over the opening: from the breast to the throat."""
        f = self.f
        t = (z - f.opening_top) / (f.throat - f.opening_top) if f.throat > f.opening_top else 1.0
        return f.breast + (f.throat_front - f.breast) * min(max(t, 0.0), 1.0)

    def behind(self, z: float) -> float:
        """Back of the lining, seen from behind."""
        f = self.f
        lining = self.design.firebox.lining_thickness
        return (
            f.depth + lining
            if z <= self.bend_behind
            else f.depth + lining - f.lean * (z - self.bend_behind)
        )

    def trapezoid(self, front: float, back: float, spread: float = 0.0) -> Polygon:
        """Level outline between the splayed sides, each pushed out by ``spread``."""
        a, b = self.f.half_at(front) + spread, self.f.half_at(back) + spread
        return ((-a, front), (a, front), (b, back), (-b, back))

    # -- voids ----------------------------------------------------------------------------------
    def firebox_air(self) -> list[Solid]:
        f = self.f
        air: list[Solid] = _stack(
            f.hearth, f.spring, lambda z: self.trapezoid(0.0, f.back_at(z)), [f.back_bend]
        )
        air += _stack(
            f.spring, f.opening_top, lambda z: self.trapezoid(f.breast, f.back_at(z)), [f.back_bend]
        )
        air += _stack(
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
        return air

    def chamber_outline(self, upper: bool, spread: float = 0.0) -> Polygon:
        """Bottom or top rectangle of the smoke chamber, pushed out square to each leaning face, but
        not out of the breast.
        """
        f = self.f
        rise = f.taper_top - f.throat
        half = f.bore.width / 2 if upper else f.throat_width / 2
        front = f.flue_y - f.bore.depth / 2 if upper else f.throat_front
        back = f.flue_y + f.bore.depth / 2 if upper else f.depth
        side = spread * hypot(1.0, (f.throat_width - f.bore.width) / 2 / rise)
        ahead = spread * hypot(1.0, (f.flue_y - f.bore.depth / 2 - f.throat_front) / rise)
        behind = spread * hypot(1.0, (f.flue_y + f.bore.depth / 2 - f.depth) / rise)
        return _centred(half + side, max(front - ahead, 0.0), back + behind)

    def chamber(self, spread: float = 0.0) -> Loft:
        return Loft(
            self.f.throat,
            self.f.taper_top,
            self.chamber_outline(False, spread),
            self.chamber_outline(True, spread),
        )

    def along_flue(
        self, bottom: float, top: float, half: float, deep: float, round_radius: float | None = None
    ) -> list[Solid]:
        """Upright or shifting solid about the flue's centre line; a cylinder when a radius is
        given.
        """
        f = self.f
        levels = sorted(
            {bottom, top, *(z for z in (f.offset_bottom, f.offset_top) if bottom < z < top)}
        )
        made: list[Solid] = []
        for low, high in zip(levels, levels[1:], strict=False):
            a, b = f.shift_at(low), f.shift_at(high)
            if round_radius is not None:
                made.append(Cylinder(low, high, round_radius, (a, f.flue_y), b - a))
            else:
                made.append(
                    Loft(
                        low,
                        high,
                        _centred(half, f.flue_y - deep, f.flue_y + deep, a),
                        _centred(half, f.flue_y - deep, f.flue_y + deep, b),
                    )
                )
        return made

    def bore(self, bottom: float, top: float, wall: float = 0.0) -> list[Solid]:
        """The flue's inside, or with a wall its liner's outside."""
        b = self.f.bore
        radius = b.width / 2 + wall if b.round else None
        return self.along_flue(bottom, top, b.width / 2 + wall, b.depth / 2 + wall, radius)

    def unit(self, bottom: float, top: float) -> list[Solid]:
        """Outside of one flue unit: the cast section, or the bare liner."""
        if self.design.method == "modular":
            return self.along_flue(bottom, top, self.f.unit_half, self.f.unit_depth)
        return self.bore(bottom, top, self.f.bore.wall)

    # -- parts ----------------------------------------------------------------------------------
    def foundation(self) -> Iterable[Part]:
        d, f = self.design, self.f
        out, w = d.base.footing_projection, d.base.block_width
        yield part(
            "footing",
            "concrete",
            [
                prism(
                    f.footing_bottom,
                    f.footing_top,
                    _centred(f.block_half + out, -out, f.block_back + out),
                )
            ],
        )
        whole = prism(f.footing_top, f.slab_bottom, self.block)
        roomy = f.block_half > w and f.block_back > 2 * w
        core = (
            [prism(f.footing_top, f.slab_bottom, _centred(f.block_half - w, w, f.block_back - w))]
            if roomy
            else []
        )
        yield part("base walls", "block", [whole], core)
        if core and d.base.core == "grouted":
            yield part("base core", "grout", core)
        yield part("hearth slab", "concrete", [prism(f.slab_bottom, f.slab_top, self.block)])

    def hearth(self) -> Iterable[Part]:
        d, f = self.design, self.f
        yield part(
            "firebox floor", "firebrick" if d.method == "laid" else "refractory", [self.floor]
        )
        if d.hearth.front <= 0:
            return
        plan = _centred(f.half_width + d.hearth.side, -d.hearth.front, 0.0)
        under, bottom = (
            f.extension_top - d.hearth.thickness,
            f.extension_top - d.hearth.thickness - d.hearth.bed,
        )
        material = {None: "stone", "masonry": "brick"}.get(d.hearth.material, d.hearth.material)
        yield part("hearth extension", material, [prism(under, f.extension_top, plan)])
        yield part("hearth extension bed", "concrete", [prism(bottom, under, plan)])
        if bottom > 0:
            yield part("hearth extension base", "block", [prism(0.0, bottom, plan)])

    @cached_property
    def floor(self) -> Loft:
        return prism(self.f.slab_top, self.f.hearth, self.trapezoid(0.0, self.f.depth))

    @cached_property
    def lining_outside(self) -> list[Solid]:
        f = self.f
        spread, bends = self.side_offset, [self.bend_behind]
        low = _stack(
            f.slab_top, f.spring, lambda z: self.trapezoid(0.0, self.behind(z), spread), bends
        )
        low += _stack(
            f.spring,
            f.opening_top,
            lambda z: self.trapezoid(f.breast, self.behind(z), spread),
            bends,
        )
        return low + _stack(
            f.opening_top,
            f.throat,
            lambda z: self.trapezoid(self.front_above(z), self.behind(z), spread),
            bends,
        )

    @cached_property
    def shelf(self) -> list[Solid]:
        f, wall = self.f, self.f.depth + self.design.firebox.lining_thickness
        if f.lean <= 0:
            return []
        return _stack(
            self.bend_behind,
            f.throat,
            lambda z: self.trapezoid(self.behind(z), wall, self.side_offset),
        )

    @cached_property
    def lintel(self) -> Part:
        d, f = self.design, self.f
        if d.opening.head == "segmental":
            ring = ArchRing(
                f.spring, f.opening_top - f.spring, 2 * f.half_width, d.lintel.height, f.breast
            )
            return part("arch", "stone" if d.lintel.material == "stone" else "brick", [ring])
        half, top = f.half_width + (d.lintel.bearing or 0.0), f.opening_top + d.lintel.height
        material = {
            "steel": "steel",
            "stone": "stone",
            "timber": "timber",
            "reinforced masonry": "brick",
            "masonry arch": "brick",
        }.get(d.lintel.material, "concrete")
        if d.lintel.material != "steel":
            return part(
                "lintel", material, [prism(f.opening_top, top, _centred(half, 0.0, f.breast))]
            )
        leaf = min(d.lintel.thickness, d.lintel.height, f.breast)
        flat = prism(
            f.opening_top, f.opening_top + leaf, _centred(half, 0.0, min(d.lintel.height, f.breast))
        )
        upright_back = min(d.lintel.height, f.breast)
        return part(
            "lintel",
            material,
            [
                flat,
                prism(f.opening_top + leaf, top, _centred(half, upright_back - leaf, upright_back)),
            ],
        )

    def firebox(self) -> Iterable[Part]:
        d, f = self.design, self.f
        inside = self.firebox_air()
        behind_arch = [s for s in inside if isinstance(s, ArchVoid)]
        lined = [s for s in inside if not isinstance(s, ArchVoid)]
        yield part(
            "firebox lining",
            LININGS.get(d.firebox.lining, "brick"),
            self.lining_outside,
            [self.floor, *lined],
        )
        yield self.lintel
        if self.shelf:
            yield part("smoke shelf", self.masonry, self.shelf)
        yield part(
            "firebox walls",
            self.masonry,
            [prism(f.slab_top, f.throat, self.block)],
            [*self.lining_outside, *self.shelf, *self.lintel.adds, *behind_arch],
        )

    def smoke_chamber(self) -> Iterable[Part]:
        d, f = self.design, self.f
        inside, coated = self.chamber(), self.chamber(d.smoke_chamber.lining_thickness)
        yield part(
            "smoke chamber lining", CHAMBER_LININGS[d.smoke_chamber.lining], [coated], [inside]
        )
        seat = prism(
            f.taper_top,
            f.flue_start,
            _centred(
                min(f.cavity_half + d.chimney.wall / 2, f.block_half),
                max(f.flue_y - f.cavity_depth - d.chimney.wall / 2, 0.0),
                min(f.flue_y + f.cavity_depth + d.chimney.wall / 2, f.block_back),
            ),
        )
        yield part(
            "transition",
            "refractory" if d.method == "modular" else "concrete",
            [seat],
            self.bore(f.taper_top, f.flue_start),
        )
        yield part(
            "smoke chamber walls",
            self.masonry,
            [prism(f.throat, f.flue_start, self.block)],
            [coated, seat],
        )

    def stack(self) -> Iterable[Part]:
        d, f = self.design, self.f
        inside, liner = (
            self.bore(f.flue_start, f.liner_top),
            self.bore(f.flue_start, f.liner_top, f.bore.wall),
        )
        yield part("flue liner", "clay liner", liner, inside)
        if d.method == "modular":
            yield part("flue casing", "refractory", self.unit(f.flue_start, f.liner_top), liner)
        cavity = self.along_flue(f.flue_start, f.shoulder_top, f.cavity_half, f.cavity_depth)
        shoulder = Loft(
            f.flue_start,
            f.shoulder_top,
            self.block,
            _centred(f.stack_half, f.flue_y - f.stack_depth, f.flue_y + f.stack_depth),
        )
        yield part("shoulder", d.chimney.masonry, [shoulder], cavity)
        yield part(
            "chimney walls",
            d.chimney.masonry,
            self.along_flue(f.shoulder_top, f.crown_bottom, f.stack_half, f.stack_depth),
            self.along_flue(f.shoulder_top, f.crown_bottom, f.cavity_half, f.cavity_depth),
        )
        yield part(
            "crown",
            d.chimney.cap_material or "concrete",
            self.crown_outside(),
            self.unit(f.crown_bottom, f.crown_top),
        )

    def crown_outside(self) -> list[Solid]:
        d, f = self.design, self.f
        shift, over = f.shift_at(f.crown_bottom), d.chimney.overhang
        edge = _centred(
            f.stack_half + over,
            f.flue_y - f.stack_depth - over,
            f.flue_y + f.stack_depth + over,
            shift,
        )
        peak = _centred(f.unit_half, f.flue_y - f.unit_depth, f.flue_y + f.unit_depth, shift)
        at_edge = f.crown_bottom + d.chimney.crown
        made: list[Solid] = [prism(f.crown_bottom, at_edge, edge)]
        return made + ([Loft(at_edge, f.crown_top, edge, peak)] if d.chimney.wash > 0 else [])

    def voids(self) -> Iterable[Part]:
        d, f = self.design, self.f
        yield part("firebox air", "air", self.firebox_air())
        yield part("smoke chamber air", "air", [self.chamber()])
        yield part("flue air", "air", self.bore(f.taper_top, f.liner_top))
        yield part(
            "gap round liner",
            "air",
            self.along_flue(f.flue_start, f.crown_bottom, f.cavity_half, f.cavity_depth),
            self.unit(f.flue_start, f.crown_bottom),
        )
        if (
            d.base.core == "hollow"
            and f.block_half > d.base.block_width
            and f.block_back > 2 * d.base.block_width
        ):
            w = d.base.block_width
            yield part(
                "base air",
                "air",
                [
                    prism(
                        f.footing_top,
                        f.slab_bottom,
                        _centred(f.block_half - w, w, f.block_back - w),
                    )
                ],
            )

    def outer(self) -> Part:
        d, f = self.design, self.f
        out = d.base.footing_projection
        solids: list[Solid] = [
            prism(
                f.footing_bottom,
                f.footing_top,
                _centred(f.block_half + out, -out, f.block_back + out),
            ),
            prism(f.footing_top, f.flue_start, self.block),
            Loft(
                f.flue_start,
                f.shoulder_top,
                self.block,
                _centred(f.stack_half, f.flue_y - f.stack_depth, f.flue_y + f.stack_depth),
            ),
            *self.along_flue(f.shoulder_top, f.crown_bottom, f.stack_half, f.stack_depth),
            *self.crown_outside(),
            *self.unit(f.crown_top, f.liner_top),
        ]
        if d.hearth.front > 0:
            plan = _centred(f.half_width + d.hearth.side, -d.hearth.front, 0.0)
            solids.append(
                prism(
                    min(f.extension_top - d.hearth.thickness - d.hearth.bed, 0.0),
                    f.extension_top,
                    plan,
                )
            )
        return part("outer solid", "all", solids)


@lru_cache(maxsize=64)
def build_geometry(design: Design) -> Geometry:
    """Everything a design makes. Kept for the last few designs, so that every reader of one sees
    the same object.
    """
    b = _Builder(design)
    parts = (*b.foundation(), *b.hearth(), *b.firebox(), *b.smoke_chamber(), *b.stack())
    return Geometry(design, b.f, tuple(p for p in parts if p.adds), tuple(b.voids()), b.outer())
