"""The parts of a fireplace that is laid, or set in sections: each a solid, footing first."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.base_parts import BaseParts
from fireplace_calc.geometry.outlines import (
    CHAMBER_LININGS,
    LININGS,
    centered,
    stacked,
)
from fireplace_calc.geometry.parts import Part, beside, part
from fireplace_calc.geometry.polygons import Polygon
from fireplace_calc.geometry.solids import Loft, Solid, prism


class Builder(BaseParts):
    """Builds the solids of one design; each method is one part of the work."""

    @cached_property
    def shelf(self) -> list[Solid]:
        """Smoke shelf behind a raked back."""
        f, wall = self.frame, self.frame.depth + self.design.firebox.lining_thickness
        if f.lean <= 0:
            return []
        return stacked(
            self.bend_behind,
            f.throat,
            lambda z: self.trapezoid(self.behind(z), wall, self.side_offset),
        )

    @cached_property
    def lintel(self) -> Part:
        """Lintel or arch over the opening."""
        d, f = self.design, self.frame
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
        }.get(d.lintel.material or "", "concrete")
        if d.lintel.material != "steel":
            return part(
                "lintel", material, [prism(f.opening_top, top, centered(half, 0.0, f.breast))]
            )
        legs = d.lintel.legs(f.breast)
        heel = f.opening_top + legs.thickness
        steel: list[Solid] = []
        for k in range(d.lintel.angles):
            front, back = k * legs.pitch, k * legs.pitch + legs.level
            steel.append(prism(f.opening_top, heel, centered(half, front, back)))
            steel.append(prism(heel, top, centered(half, back - legs.thickness, back)))
        return part("lintel", material, steel)

    def firebox(self) -> Iterable[Part]:
        """Lining, lintel, shelf and walls."""
        d, f = self.design, self.frame
        inside = self.firebox_air
        behind_arch = [s for s in inside if isinstance(s, ArchVoid)]
        lined = [s for s in inside if not isinstance(s, ArchVoid)]
        yield part(
            "firebox lining",
            LININGS.get(d.firebox.lining or "", "brick"),
            self.plate_outside,
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
            self.second_cavity(f.slab_top, f.throat),
        )

    def smoke_chamber(self) -> Iterable[Part]:
        """Lining, transition and walls of the smoke chamber."""
        d, f = self.design, self.frame
        inside, coated = self.chamber(), self.chamber(d.smoke_chamber.lining_thickness)
        yield part(
            "smoke chamber lining", CHAMBER_LININGS[d.smoke_chamber.lining], [coated], [inside]
        )
        seat = prism(
            f.taper_top,
            f.flue_start,
            centered(
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
            self.second_cavity(f.throat, f.flue_start),
        )

    def stack_outline(self) -> Polygon:
        """Outside of the chimney's walls in plan. [m]"""
        f = self.frame
        return centered(
            f.stack_half, f.flue_y - f.stack_depth, f.flue_y + f.stack_depth, f.stack_middle
        )

    def stack(self) -> Iterable[Part]:
        """Flue, shoulder, chimney walls and crown."""
        d, f = self.design, self.frame
        inside, liner = (
            self.bore(f.flue_start, f.liner_top),
            self.bore(f.flue_start, f.liner_top, f.bore.wall),
        )
        yield part("flue liner", "clay liner", liner, inside)
        if d.method == "modular":
            yield part("flue casing", "refractory", self.unit(f.flue_start, f.liner_top), liner)
        yield part(
            "breast walls",
            d.chimney.masonry,
            [prism(f.flue_start, f.block_top, self.block)],
            self.along_flue(f.flue_start, f.block_top, f.cavity_half, f.cavity_depth),
            self.second_cavity(f.flue_start, f.block_top),
        )
        cavity = self.along_flue(f.block_top, f.shoulder_top, f.cavity_half, f.cavity_depth)
        shoulder = Loft(
            f.block_top,
            f.shoulder_top,
            self.block,
            self.stack_outline(),
        )
        yield part(
            "shoulder",
            d.chimney.masonry,
            [shoulder],
            cavity,
            self.second_cavity(f.block_top, f.shoulder_top),
        )
        yield part(
            "chimney walls",
            d.chimney.masonry,
            self.stack_outside(f.shoulder_top, f.crown_bottom),
            self.along_flue(f.shoulder_top, f.crown_bottom, f.cavity_half, f.cavity_depth),
            self.second_cavity(f.shoulder_top, f.crown_bottom),
        )
        yield part(
            "crown",
            d.chimney.cap_material or "concrete",
            self.crown_outside(),
            self.unit(f.crown_bottom, f.crown_top),
            self.second_unit(f.crown_bottom, f.crown_top),
        )

    def second_flue(self) -> Iterable[Part]:
        """Liner and casing of a second flue."""
        f = self.frame
        if f.second is None:
            return
        low, high = f.second.start, f.second.top
        inside, liner = (
            self.second_bore(low, high),
            self.second_bore(low, high, f.second.bore.wall),
        )
        yield beside("second flue liner", "clay liner", liner, inside)
        if self.design.method == "modular":
            yield beside("second flue casing", "refractory", self.second_unit(low, high), liner)

    def crown_outside(self) -> list[Solid]:
        """Crown, its wash counted in."""
        d, f = self.design, self.frame
        shift, over = f.shift_at(f.crown_bottom), d.chimney.overhang
        edge = centered(
            f.stack_half + over,
            f.flue_y - f.stack_depth - over,
            f.flue_y + f.stack_depth + over,
            shift + f.stack_middle,
        )
        inset = d.chimney.wall + d.chimney.gap
        peak = centered(
            f.stack_half - inset,
            f.flue_y - f.stack_depth + inset,
            f.flue_y + f.stack_depth - inset,
            shift + f.stack_middle,
        )
        at_edge = f.crown_bottom + d.chimney.crown
        made: list[Solid] = [prism(f.crown_bottom, at_edge, edge)]
        return made + ([Loft(at_edge, f.crown_top, edge, peak)] if d.chimney.wash > 0 else [])

    def voids(self) -> Iterable[Part]:
        """Air of firebox, smoke chamber and flues, and the gaps."""
        d, f = self.design, self.frame
        yield part("firebox air", "air", self.firebox_air)
        if self.design.firebox.lining == STEEL_UNIT:
            yield part("air chamber", "air", self.lining_outside, self.plate_outside)
        yield part("smoke chamber air", "air", [self.chamber()])
        yield part("flue air", "air", self.bore(f.taper_top, f.liner_top))
        yield part(
            "gap round liner",
            "air",
            self.along_flue(f.flue_start, f.crown_bottom, f.cavity_half, f.cavity_depth),
            self.unit(f.flue_start, f.crown_bottom),
        )
        if f.second is not None:
            low, high = f.second.start, f.second.top
            yield beside("second flue air", "air", self.second_bore(low, high))
            yield beside(
                "gap round second liner",
                "air",
                self.second_cavity(low, high),
                self.second_unit(low, f.crown_bottom),
            )
        if d.base.core == "hollow" and (core := self.core()):
            yield part("base air", "air", core)

    def outer(self) -> Part:
        """The whole as one solid."""
        d, f = self.design, self.frame
        out = d.base.footing_projection
        solids: list[Solid] = [
            prism(
                f.footing_bottom,
                f.footing_top,
                centered(f.block_half + out, -out, f.block_back + out),
            ),
            prism(f.footing_top, f.block_top, self.block),
            Loft(
                f.block_top,
                f.shoulder_top,
                self.block,
                self.stack_outline(),
            ),
            *self.stack_outside(f.shoulder_top, f.crown_bottom),
            *self.crown_outside(),
            *self.unit(f.crown_top, f.liner_top),
            *self.second_unit(f.crown_top, f.highest),
        ]
        if d.hearth.front > 0:
            plan = centered(f.half_width + d.hearth.side, -d.hearth.front, 0.0)
            solids.append(
                prism(
                    min(f.extension_top - d.hearth.thickness - d.hearth.bed, 0.0),
                    f.extension_top,
                    plan,
                )
            )
        if not d.seat.drawn:
            return part("outer solid", "all", solids)
        top, _, _ = self.seat_levels()
        solids += [prism(0.0, top, plan) for plan in self.seat_plans()]
        return part("outer solid", "all", solids, self.wood_store())
