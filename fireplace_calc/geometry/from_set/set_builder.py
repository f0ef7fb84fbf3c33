"""The parts of a fireplace from a set: its pieces by what they are for, the firebrick lining inside
them, the masonry round them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cached_property

from fireplace_calc.geometry.arches import ArchVoid
from fireplace_calc.geometry.from_set.piece_parts import parts_of_pieces
from fireplace_calc.geometry.from_set.set_outlines import SetOutlines
from fireplace_calc.geometry.outlines import centered
from fireplace_calc.geometry.parts import Part, part
from fireplace_calc.geometry.solids import Loft, Solid, prism

FACING_LINTEL = "facing lintel"
OUTSIDE = ("masonry round the set", FACING_LINTEL)
"""What stands before and round the gap."""


class SetBuilder(SetOutlines):
    """Builds the solids of a design with a set."""

    @cached_property
    def _of_pieces(self) -> dict[str, Part]:
        """Every part that is pieces, by its name; each made once."""
        return parts_of_pieces(self.up.assembly, self.frame.set_back, self.frame.plate_bottom)

    def group(self, *names: str) -> Iterable[Part]:
        """Some of the parts that are pieces."""
        return (self._of_pieces[name] for name in names if name in self._of_pieces)

    # -- the parts --------------------------------------------------------------------------------
    def foundation(self) -> Iterable[Part]:
        """Footing, base, the slab, and the base plates on it with masonry round them."""
        f = self.frame
        for made in super().foundation():
            if made.name == "hearth slab":
                yield part(
                    "hearth slab", "concrete", [prism(f.slab_bottom, f.plate_bottom, self.block)]
                )
            else:
                yield made
        yield from self.group("base plates")

    def firebox(self) -> Iterable[Part]:
        """Lining, where there is one, walls, lintel, and the masonry round them."""
        return self._firebox

    @cached_property
    def _firebox(self) -> tuple[Part, ...]:
        return tuple(self._in_and_round_the_set())

    def _in_and_round_the_set(self) -> Iterable[Part]:
        f = self.frame
        if self.has_lining:
            behind = prism(f.slab_top, f.hearth, self.trapezoid(f.set_back, f.depth))
            yield part("firebox lining", "firebrick", self.lining_hole, [behind, *self.inside()])
        yield from self.group("firebox walls")
        yield from self.group("lintel", "throat back", "smoke shelf", "throat front")
        through = prism(f.slab_top, f.hearth, centered(f.half_width, 0.0, f.set_back))
        cuts: list[Solid] = [*self.cavity, *self.facing_angle]
        if f.set_back > 0:
            cuts += self._outside_cavity([through, *self.reveal()])
        if self.facing_angle:
            yield part(FACING_LINTEL, "steel", self.facing_angle)
        yield part(
            "masonry round the set",
            self.masonry,
            [prism(f.plate_bottom, f.flue_start, self.block)],
            cuts,
        )

    @cached_property
    def facing_angle(self) -> list[Solid]:
        """Steel angle under the facing, its upright leg at the back of it."""
        d, f = self.design, self.frame
        legs = d.pieces.facing_angle(d.opening.head)
        if legs is None:
            return []
        half, heel = f.half_width + (d.pieces.angle_bearing or 0.0), f.opening_top + legs.thickness
        back, top = d.pieces.facing, f.opening_top + d.pieces.angle_height
        return [
            prism(f.opening_top, heel, centered(half, back - legs.level, back)),
            prism(heel, top, centered(half, back - legs.thickness, back)),
        ]

    def _outside_cavity(self, solids: list[Solid]) -> list[Solid]:
        """What of the reveal lies in the facing, before the gap."""
        front = max(self.frame.set_back - self.design.pieces.gap, 0.0)
        kept: list[Solid] = []
        for solid in solids:
            if isinstance(solid, ArchVoid):
                kept.append(ArchVoid(solid.spring, solid.rise, solid.span, front, 0.0))
            elif isinstance(solid, Loft):
                kept.append(
                    prism(solid.bottom, solid.top, centered(self.frame.half_width, 0.0, front))
                )
        return kept

    def smoke_chamber(self) -> Iterable[Part]:
        """Reducer and collar."""
        yield from self.group("smoke chamber walls")

    def stack(self) -> Iterable[Part]:
        """The flue, piece on piece, and the chimney round it."""
        yield from self.group("flue casing")
        for made in super().stack():
            if made.name not in ("flue liner", "flue casing"):
                yield made

    def voids(self) -> Iterable[Part]:
        """Air of firebox, reducer and flue, and the gap for movement round the pieces."""
        f = self.frame
        yield part(
            "firebox air",
            "air",
            [*self.reveal(), *self.inside(), *self.under_lintel(), *self.under_throat()],
        )
        chamber = part("smoke chamber air", "air", self.chamber_air())
        yield chamber
        yield part("flue air", "air", [*self.bore(self.flue_foot, f.liner_top), *self.flue_bed()])
        yield part(
            "gap round liner",
            "air",
            self.along_flue(f.flue_start, f.crown_bottom, f.cavity_half, f.cavity_depth),
            self.unit(f.flue_start, f.crown_bottom),
        )
        yield self.movement([*self._set_in_cavity(), chamber])
        if self.design.base.core == "hollow" and (core := self.core()):
            yield part("base air", "air", core)

    def _set_in_cavity(self) -> Iterable[Part]:
        """Everything solid or clear that stands in the cavity, the smoke's way over it left out."""
        f = self.frame
        yield from self.group("base plates")
        yield from (p for p in self.firebox() if p.name not in OUTSIDE)
        yield from self.smoke_chamber()
        inside = [*self.inside(), *self.under_lintel(), *self.under_throat()]
        if self.has_lining:
            inside.append(prism(f.slab_top, f.hearth, self.trapezoid(f.set_back, f.depth)))
        yield part("inside", "air", inside)
        front = max(f.set_back - self.design.pieces.gap, 0.0)
        if front < f.set_back:
            strip = centered(f.half_width, front, f.set_back)
            through: list[Solid] = [prism(f.slab_top, f.spring, strip)]
            if f.spring < f.opening_top:
                rise, span = f.opening_top - f.spring, 2 * f.half_width
                through.append(ArchVoid(f.spring, rise, span, f.set_back - front, 0.0, front))
            yield part("through the gap", "air", through)

    def hearth(self) -> Iterable[Part]:
        """Firebox floor of firebrick, the hearth extension, and a seat beside it."""
        for made in super().hearth():
            yield replace(made, material="firebrick") if made.name == "firebox floor" else made

    def movement(self, filled: list[Part]) -> Part:
        """The gap round the pieces: the cavity less all that stands in it. What a part cuts out of
        itself is given back, so that the volumes close.
        """
        adds = [s for s in self.cavity if s.top > s.bottom]
        cuts: list[Solid] = []
        volume = sum(s.volume for s in self.cavity)
        for one in filled:
            adds += one.cuts
            cuts += one.adds
            volume -= one.volume
        return Part("gap for movement", "air", tuple(adds), tuple(cuts), volume)
