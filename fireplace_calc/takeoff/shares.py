"""Every part of the geometry shared out, to the last litre, into pieces, mortar and poured work."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, hypot

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, SQFT
from fireplace_calc.brickwork import Layout, lay_brickwork
from fireplace_calc.brickwork import unit as bricks
from fireplace_calc.brickwork.unit import COMMON, UnitMasonry
from fireplace_calc.brickwork.work import count_bricks, floor_bricks, lining_bricks
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.solids import ArchRing
from fireplace_calc.takeoff.bricks import CORELESS
from fireplace_calc.takeoff.goods import LONGEST, STONE_JOINTS

DUST = 1e-12
"""Mortar that is less is only what a float has lost: bricks laid dry have none. [m3]"""


@dataclass(frozen=True, slots=True)
class Share:
    """What one part asks of one kind of goods: volume [m3], weight [kg], and a count or an area
    [ft2] if so bought.
    """

    part: str
    item: str
    material: str
    volume: float
    weight: float
    count: float = 0.0
    note: str = ""


IN_MASS = bricks.in_mass(COMMON)
"""Common brick in work many bricks thick."""


class _Takeoff:
    """Shares one geometry out; each method is one way of building."""

    def __init__(self, geometry: Geometry):
        self.g, self.d, self.f = geometry, geometry.design, geometry.frame
        self.work = lay_brickwork(geometry)

    def poured(
        self, part: Part, item: str, material: str = "concrete", count: float = 1, note: str = ""
    ) -> Iterator[Share]:
        """All of a part in one material."""
        yield Share(
            part.name, item, material, part.volume, part.volume * density(material), count, note
        )

    def pieces(
        self,
        part: Part,
        item: str,
        material: str,
        count: float,
        joint: float = 0.0,
        volume: float | None = None,
        note: str = "",
    ) -> Iterator[Share]:
        """Hand-set pieces of one volume; ``joint`` is the share of it that is refractory mortar."""
        filled = part.volume if volume is None else volume
        bare = filled * (1 - joint)
        yield Share(part.name, item, material, bare, bare * density(material), count, note)
        yield from self.mortar(part, filled * joint, "refractory mortar")

    def mortar(self, part: Part, volume: float, material: str = "mortar") -> Iterator[Share]:
        """Joints, when there are any."""
        if volume > DUST:
            yield Share(
                part.name, material.capitalize(), material, volume, volume * density(material)
            )

    def units(
        self,
        part: Part,
        item: str,
        laid: UnitMasonry,
        material: str = "brick",
        mortar: str = "mortar",
        volume: float | None = None,
        note: str = "",
    ) -> Iterator[Share]:
        """Brick by volume, each with its joints."""
        filled = part.volume if volume is None else volume
        bare = filled * laid.share
        yield Share(
            part.name,
            item,
            material,
            bare,
            bare * density(material),
            filled * laid.per_volume,
            note,
        )
        yield from self.mortar(part, filled - bare, mortar)

    def blocks(
        self, part: Part, item: str, laid: UnitMasonry, count: float, filled: bool = False
    ) -> Iterator[Share]:
        """Hollow block; ``filled`` pours the cores solid."""
        gross = part.volume * laid.share
        cores = gross * (1 - CORELESS) if filled else 0.0
        yield Share(part.name, item, "block", gross - cores, gross * density("block"), count)
        if cores:
            yield Share(part.name, "Core grout", "grout", cores, cores * density("grout"))
        yield from self.mortar(part, part.volume - gross)

    def masonry(self, part: Part, laid: UnitMasonry, facing: float = 0.0) -> Iterator[Share]:
        """Whatever the walls are made of; the first ``facing`` cubic metres of brick show in the
        room.
        """
        if part.material == "stone":
            stone = part.volume * (1 - STONE_JOINTS)
            yield Share(part.name, "Building stone", "stone", stone, stone * density("stone"))
            yield from self.mortar(part, part.volume - stone)
        elif part.material == "concrete":
            yield from self.poured(part, "Wall concrete")
        elif part.material in ("block", "grouted block"):
            laid = bricks.in_mass(bricks.block(self.g))
            yield from self.blocks(
                part, "Masonry block", laid, part.volume * laid.per_volume, part.material != "block"
            )
        else:
            facing = min(facing, part.volume)
            if facing > 0:
                yield from self.units(
                    part, "Facing brick", IN_MASS, volume=facing, note="one wythe in the room"
                )
            if part.volume > facing:
                yield from self.units(part, "Common brick", laid, volume=part.volume - facing)

    def wall_of_block(self, part: Part) -> Iterator[Share]:
        """Base block by courses: so many to the ring or the layer, halves used, the top course cut
        to height.
        """
        unit = bricks.block(self.g)
        loft = part.adds[0]
        height = loft.top - loft.bottom
        layer = part.volume / height
        ring = bool(part.cuts)
        across = unit.depth if ring else unit.depth + unit.joint
        number = ceil(
            height / (unit.height + unit.joint) - ROUNDING
        )  # each has its bed, the first too
        each = ceil(2 * layer / ((unit.length + unit.joint) * across) - ROUNDING) / 2
        laid = bricks.in_wall(unit, unit.depth) if ring else bricks.in_mass(unit)
        yield from self.blocks(part, "Base block", laid, number * each)

    def firebrick(
        self, part: Part, laid: UnitMasonry, layouts: tuple[Layout, ...]
    ) -> Iterator[Share]:
        """Counted off the layout; volume shared out by the faces of whole bricks and cut ones."""
        asked = count_bricks(layouts)
        bare = part.volume * laid.share
        whole = bare * asked.whole_area / (asked.whole_area + asked.cut_area)
        pieces = f"{asked.pieces} cut pieces" + (
            "" if laid.wythes == 1 else f" in each of {laid.wythes} wythes"
        )
        notes = [*dict.fromkeys(layout.note for layout in layouts if layout.note)]
        notes += [] if self.d.firebox.joint is not None else ["joint unknown, taken as 1/8 in"]
        for item, volume, count, said in (
            ("whole", whole, asked.whole, []),
            ("cut", bare - whole, asked.bricks_for_cuts, [pieces]),
        ):
            if count:
                yield Share(
                    part.name,
                    f"Firebrick, {item}",
                    "firebrick",
                    volume,
                    volume * density("firebrick"),
                    count * laid.wythes,
                    "; ".join(said + notes),
                )
        yield from self.mortar(part, part.volume - bare, "refractory mortar")

    def sections(self, height: float) -> tuple[int, float]:
        """Refractory sections to a height, and the share of it that is bed joint."""
        high, joint = self.d.firebox.section_height, self.d.firebox.joint or 0.0
        return ceil((height + joint) / (high + joint) - ROUNDING), joint / (high + joint)

    # -- the parts ------------------------------------------------------------------------------
    def firebox_floor(self, part: Part) -> Iterator[Share]:
        if part.material == "firebrick":
            return self.firebrick(part, floor_bricks(self.g), (self.work.floor,))
        count = ceil(2 * self.f.half_width / LONGEST - ROUNDING) * ceil(
            self.f.depth / LONGEST - ROUNDING
        )
        return self.pieces(part, "Firebox floor section", "refractory", count)

    def firebox_lining(self, part: Part) -> Iterator[Share]:
        f, thickness = self.f, self.d.firebox.lining_thickness
        if part.material == "firebrick":
            yield from self.firebrick(part, lining_bricks(self.g), self.work.lining)
        elif part.material != "refractory":
            yield from self.masonry(part, bricks.in_wall(COMMON, thickness))
        else:
            number, joint = self.sections(f.throat - f.slab_top)
            spread = thickness * hypot(1.0, f.side_slope)
            deep = sum(
                (s.top - s.bottom)
                * (s.lower[2][1] - s.lower[0][1] + s.upper[2][1] - s.upper[0][1])
                / 2
                for s in part.cuts
            )
            side = ceil(f.depth * hypot(1.0, f.side_slope) / LONGEST - ROUNDING)
            back = ceil((f.back_width + 2 * spread) / LONGEST - ROUNDING)
            sides = 2 * spread * deep
            rest = part.volume - sides
            yield from self.pieces(
                part, "Firebox side section", "refractory", 2 * number * side, joint, sides
            )
            yield from self.pieces(
                part, "Firebox back section", "refractory", number * back, joint, rest
            )

    def lintel(self, part: Part) -> Iterator[Share]:
        lintel = self.d.lintel
        if part.material == "brick":
            return self.units(part, "Lintel brick", IN_MASS)
        long = 2 * self.f.half_width + 2 * (lintel.bearing or 0.0)
        size = f"{feet_inches(lintel.height)} high, {feet_inches(long)} long"
        if part.material == "steel":
            size = f"angle {feet_inches(lintel.thickness)} thick, {size}"
        return self.pieces(
            part, f"{part.material.capitalize()} lintel", part.material, 1, note=size
        )

    def arch(self, part: Part) -> Iterator[Share]:
        if part.material == "stone":
            return self.poured(part, "Arch stone", "stone")
        ring: ArchRing = part.adds[0]
        middle = 2 * ring.half_angle * (ring.radius + ring.depth / 2)
        laid = IN_MASS
        note = (
            f"{2 * round(middle / (COMMON.height + COMMON.joint) / 2 - 0.5) + 1} round the ring,"
            " odd for a key"
        )
        return self.units(part, "Arch brick", laid, note=note)

    def hearth(self, part: Part) -> Iterator[Share]:
        thick = part.top - part.bottom
        if part.material == "concrete":
            return self.poured(part, "Hearth topping concrete")
        if part.material == "brick":
            return self.units(part, "Hearth brick", bricks.in_wall(COMMON, thick))
        item = {"stone": "Hearth stone", "tile": "Hearth tile"}.get(part.material, "Hearth boards")
        return self.poured(
            part, item, part.material, part.volume / thick / SQFT, f"{feet_inches(thick)} thick"
        )

    def chamber_lining(self, part: Part) -> Iterator[Share]:
        thickness, joint = self.d.smoke_chamber.lining_thickness, self.d.firebox.joint
        if part.material == "firebrick":
            laid = bricks.firebrick(
                self.d.firebox.brick, thickness, INCH / 8 if joint is None else joint
            )
            return self.units(
                part, "Smoke chamber firebrick", laid, "firebrick", "refractory mortar"
            )
        if part.material == "clay liner":
            number, share = self.sections(part.top - part.bottom)
            round_it = [
                2 * max(x for x, _ in part.adds[0].lower),
                part.adds[0].lower[2][1] - part.adds[0].lower[0][1],
            ]
            count = number * sum(2 * ceil(side / LONGEST - ROUNDING) for side in round_it)
            return self.pieces(part, "Smoke chamber section", "clay liner", count, share)
        return self.mortar(part, part.volume, "refractory mortar")

    def flue(self, part: Part) -> Iterator[Share]:
        flue = self.d.flue
        joint = flue.joint / (flue.section_height + flue.joint)
        if self.d.method == "laid":
            return self.pieces(part, "Clay flue liner", "clay liner", flue.sections, joint)
        count = flue.sections if part.name == "flue liner" else 0
        return self.pieces(part, "Flue section", part.material, count, joint)

    def crown(self, part: Part) -> Iterator[Share]:
        if part.material == "metal":
            yield Share(part.name, "Metal cap", "metal", part.volume, 0.0, 1)
        elif part.material == "stone":
            yield from self.pieces(part, "Crown stone", "stone", 1)
        else:
            yield from self.poured(part, f"Crown {part.material}", part.material)

    def showing(self, part: Part) -> float:
        """Brick that shows in the room, one wythe deep: beside and over the opening, over the
        throat, and up to the ceiling. [m3]
        """
        if self.d.surround.face != "brick":
            return 0.0
        f, deep = self.f, COMMON.depth + COMMON.joint
        wide, lining = (
            2 * f.block_half,
            2 * (f.half_width + self.d.firebox.lining_thickness * hypot(1.0, f.side_slope)),
        )
        if part.name == "shoulder":
            return self.over_chamber(f.flue_start, f.shoulder_top) * deep
        if part.name == "chimney walls":
            return self.over_chamber(f.shoulder_top, f.crown_bottom) * deep
        if part.name == "smoke chamber walls":
            return wide * (f.flue_start - f.throat) * deep
        under_arch = f.opening_area - 2 * f.half_width * (f.spring - f.hearth)
        head = self.g.by_name.get("arch") or self.g.by_name["lintel"]
        carried = 0.0 if head.material == "steel" else head.volume / f.breast
        return (
            max(
                wide * (f.throat - f.slab_top)
                - lining * (f.spring - f.slab_top)
                - under_arch
                - carried,
                0.0,
            )
            * deep
        )

    def over_chamber(self, low: float, high: float) -> float:
        """Front of shoulder and stack between two levels, as far as the room goes up. [m2]"""
        f, area = self.f, 0.0
        high = min(high, self.d.house.ceiling)
        a, b = (min(max(z, f.flue_start), f.shoulder_top) for z in (low, high))
        if b > a:
            over = [1 - (z - f.flue_start) / (f.shoulder_top - f.flue_start) for z in (a, b)]
            area += (b - a) * (2 * f.stack_half + (f.block_half - f.stack_half) * sum(over))
        return area + 2 * f.stack_half * max(high - max(low, f.shoulder_top), 0.0)

    def part(self, part: Part) -> Iterator[Share]:
        """All that one part asks for."""
        match part.name:
            case "footing":
                return self.poured(part, "Footing concrete")
            case "base walls" | "hearth extension base":
                return self.wall_of_block(part)
            case "base core":
                return self.poured(part, "Core grout", "grout")
            case "hearth slab":
                return self.poured(part, "Hearth slab concrete")
            case "hearth extension bed":
                return self.poured(part, "Hearth bed concrete")
            case "hearth extension":
                return self.hearth(part)
            case "firebox floor":
                return self.firebox_floor(part)
            case "firebox lining":
                return self.firebox_lining(part)
            case "lintel":
                return self.lintel(part)
            case "arch":
                return self.arch(part)
            case "firebox walls" | "smoke chamber walls" | "shoulder":
                return self.masonry(part, IN_MASS, self.showing(part))
            case "smoke chamber lining":
                return self.chamber_lining(part)
            case "transition":
                if part.material == "refractory":
                    return self.pieces(part, "Transition piece", "refractory", 1)
                return self.poured(part, "Transition concrete")
            case "flue liner" | "flue casing":
                return self.flue(part)
            case "chimney walls":
                return self.masonry(
                    part, bricks.in_wall(COMMON, self.d.chimney.wall), self.showing(part)
                )
            case "crown":
                return self.crown(part)
        return self.masonry(part, IN_MASS)

    def face(self) -> Iterator[Share]:
        """A finish over the masonry, by area: the breast from floor to ceiling less the opening."""
        finish, f = self.d.surround.face, self.f
        if finish != "brick":
            area = 2 * f.block_half * min(f.flue_start, self.d.house.ceiling) - f.opening_area
            area += self.over_chamber(f.flue_start, f.crown_bottom)
            yield Share("face", f"Face {finish}", finish, 0.0, 0.0, max(area, 0.0) / SQFT)


def share_out(geometry: Geometry) -> list[Share]:
    """What every part asks for; the volumes of a part's shares add up to the part."""
    work = _Takeoff(geometry)
    return [
        share for part in geometry.parts if part.volume > 0 for share in work.part(part)
    ] + list(work.face())
