"""Every part of the geometry shared out, to the last liter, into pieces, mortar and poured work."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, hypot
from typing import TypeVar

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork import unit as bricks
from fireplace_calc.brickwork.arch_ring import arch_bricks
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.unit import UnitMasonry
from fireplace_calc.brickwork.work import usual_joint
from fireplace_calc.design.firebox import DRAWN_PLATE
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.base_parts import SEAT
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.geometry.solids import Loft, Solid
from fireplace_calc.takeoff.before_masonry import face_shares, hood, trim_shares
from fireplace_calc.takeoff.bricks import (
    base_block,
    base_block_weight,
    firebrick_shares,
    hearth_shares,
    hollow_block,
    laid_firebrick,
    size_note,
)
from fireplace_calc.takeoff.facing import facing_of
from fireplace_calc.takeoff.goods import LONGEST, STONE_JOINTS
from fireplace_calc.takeoff.lintel import lintel_shares
from fireplace_calc.takeoff.share import (
    Share,
    brick,
    count_sections,
    crown,
    hand_set,
    joints,
    poured,
)
from fireplace_calc.takeoff.shares_of_set import is_of_set, set_shares

Kind = TypeVar("Kind", bound=Solid)


def _of_kind(kind: type[Kind], solid: Solid) -> Kind:
    if not isinstance(solid, kind):
        raise TypeError(f"A {type(solid).__name__} is counted as if it were a {kind.__name__}.")
    return solid


IN_MASS = (
    *("firebox walls", "smoke chamber walls", "masonry round the set"),
    *("breast walls", "shoulder"),
)
"""Walls laid solid, as wide as they are."""


class _Sharing:
    """Shares one geometry out, part by part, each when it is first asked for."""

    def __init__(self, geometry: Geometry) -> None:
        self.geometry, self.design, self.frame = geometry, geometry.design, geometry.frame
        self.work, self._known = lay_brickwork(geometry), dict[str, tuple[Share, ...]]()
        self.common = bricks.common_brick(self.design)
        self.facing = bricks.facing_brick(self.design)
        self.mass = bricks.in_mass(self.common)

    def masonry(self, part: Part, laid: UnitMasonry, shown: bool = False) -> Iterator[Share]:
        """Whatever the walls are made of; where they show in the room, the first of them is the
        brick of the face.
        """
        front = facing_of(self.geometry, part.name) if shown else None
        volume = min(front.volume, part.volume) if front else 0.0
        if front and volume > 0:
            yield from brick(part, "Facing brick", front.laid, volume=volume, note=front.note)
        rest = part.holding(part.volume - volume) if volume else part
        if rest.volume <= 0:
            return
        if part.material == "stone":
            stone = rest.volume * (1 - STONE_JOINTS)
            yield Share(part.name, "Building stone", "stone", stone, stone * density("stone"))
            yield from joints(part, rest.volume - stone)
        elif part.material == "concrete":
            yield from poured(rest, "Wall concrete")
        elif part.material in ("block", "grouted block"):
            laid = bricks.in_mass(bricks.block(self.geometry))
            yield from hollow_block(
                rest, "Masonry block", laid, rest.volume * laid.per_volume, part.material != "block"
            )
        else:
            yield from brick(rest, "Common brick", laid, note=size_note(self.common))

    def sections(self, part: Part) -> tuple[int, float, str, str]:
        """As ``count_sections``."""
        return count_sections(part, course_list(self.geometry).of(part.name))

    # -- the parts ------------------------------------------------------------------------------
    def firebox_floor(self, part: Part) -> Iterator[Share]:
        if laid := laid_firebrick(self.geometry, part):
            return firebrick_shares(self.geometry, part, laid, self.work.layouts[:1])
        count = ceil(2 * self.frame.half_width / LONGEST - ROUNDING) * ceil(
            self.frame.depth / LONGEST - ROUNDING
        )
        return hand_set(part, "Firebox floor section", "refractory", count)

    def firebox_lining(self, part: Part) -> Iterator[Share]:
        f, thickness = self.frame, self.design.firebox.lining_thickness
        if laid := laid_firebrick(self.geometry, part):
            yield from firebrick_shares(self.geometry, part, laid, self.work.lining)
        elif part.material == "steel":
            plate = self.design.firebox.plate
            size = f"plate {feet_inches(DRAWN_PLATE if plate is None else plate)} thick" + (
                ", not told, drawn so" if plate is None else ""
            )
            yield from hand_set(part, "Steel firebox unit", "steel", 1, note=size)
        elif part.material != "refractory":
            yield from self.masonry(part, bricks.in_wall(self.common, thickness))
        else:
            number, joint, level, leaning = self.sections(part)
            spread = thickness * hypot(1.0, f.side_slope)
            deep = sum(
                (s.top - s.bottom)
                * (s.lower[2][1] - s.lower[0][1] + s.upper[2][1] - s.upper[0][1])
                / 2
                for s in (_of_kind(Loft, cut) for cut in part.cuts)
            )
            side = ceil(f.depth * hypot(1.0, f.side_slope) / LONGEST - ROUNDING)
            back = ceil((f.back_width + 2 * spread) / LONGEST - ROUNDING)
            sides = 2 * spread * deep
            for item, count, volume, note in (
                ("Firebox side section", 2 * number * side, sides, level),
                ("Firebox back section", number * back, part.volume - sides, leaning),
            ):
                yield from hand_set(part, item, "refractory", count, joint, volume, note)

    def arch(self, part: Part) -> Iterator[Share]:
        if part.material == "stone":
            return poured(part, "Arch stone", "stone")
        laid = arch_bricks(_of_kind(ArchRing, part.adds[0]), self.facing)
        rings = " and ".join(str(ring.round) for ring in laid.rings)
        note = f"{rings} round the arch, odd for a key, {laid.deep} deep; {size_note(self.facing)}"
        mass = bricks.in_mass(self.facing)
        return brick(part, "Arch brick", mass, note=note, count=laid.count)

    def chamber_lining(self, part: Part) -> Iterator[Share]:
        thickness = self.design.smoke_chamber.lining_thickness
        if part.material == "firebrick":
            laid = bricks.firebrick(self.design.firebox.brick, thickness, usual_joint(self.design))
            return brick(part, "Smoke chamber firebrick", laid, "firebrick", "refractory mortar")
        if part.material == "clay liner":
            number, share, note, _ = self.sections(part)
            lower = _of_kind(Loft, part.adds[0]).lower
            sides = (2 * max(x for x, _ in lower), lower[2][1] - lower[0][1])
            count = number * sum(2 * ceil(side / LONGEST - ROUNDING) for side in sides)
            return hand_set(part, "Smoke chamber section", "clay liner", count, share, note=note)
        return joints(part, part.volume, "refractory mortar")

    def flue(self, part: Part) -> Iterator[Share]:
        sections, joint, _, note = self.sections(part)
        second = part.name.startswith("second")
        if self.design.method == "laid":
            item = "Second clay flue liner" if second else "Clay flue liner"
            return hand_set(part, item, "clay liner", sections, joint, note=note)
        item = "Second flue section" if second else "Flue section"
        count, note = (sections, note) if part.name.endswith("flue liner") else (0, "")
        return hand_set(part, item, part.material, count, joint, note=note)

    def part(self, part: Part) -> Iterator[Share]:
        """All that one part asks for."""
        if is_of_set(self.geometry, part):
            return set_shares(self.geometry, part)
        match part.name:
            case "footing":
                return poured(part, "Footing concrete")
            case name if laid := self.work.block_of(name):
                return base_block(part, laid)
            case "base core":
                return poured(part, "Core grout", "grout")
            case "hearth slab":
                return poured(part, "Hearth slab concrete")
            case "hearth extension bed" | "hearth seat bed":
                return poured(part, "Hearth bed concrete")
            case "hearth extension" | "hearth seat":
                return hearth_shares(part, self.common)
            case "firebox floor":
                return self.firebox_floor(part)
            case "firebox lining":
                return self.firebox_lining(part)
            case "lintel":
                note = size_note(self.common)
                return lintel_shares(self.geometry, part, self.mass, note)
            case "arch":
                return self.arch(part)
            case name if name in IN_MASS:
                return self.masonry(part, self.mass, shown=True)
            case "smoke chamber lining":
                return self.chamber_lining(part)
            case "transition":
                if part.material == "refractory":
                    return hand_set(part, "Transition piece", "refractory", 1)
                return poured(part, "Transition concrete")
            case "flue liner" | "flue casing" | "second flue liner" | "second flue casing":
                return self.flue(part)
            case "chimney walls":
                return self.masonry(
                    part,
                    bricks.in_wall(self.common, self.design.chimney.wall),
                    shown=True,
                )
            case "crown":
                return crown(part)
        return self.masonry(part, self.mass)

    def shares(self, part: Part) -> tuple[Share, ...]:
        """All that one part asks for, worked out once."""
        if part.name not in self._known:
            self._known[part.name] = tuple(self.part(part)) if part.volume > 0 else ()
        return self._known[part.name]

    def weight(self, part: Part) -> float:
        """Of a part; firebrick is not laid and cuts of block are not counted for it, as neither
        moves any weight. [kg]
        """
        if (block := self.work.block_of(part.name)) and not is_of_set(self.geometry, part):
            return base_block_weight(part, block)
        if (laid := laid_firebrick(self.geometry, part)) is None:
            return sum([share.weight for share in self.shares(part)])
        bare = part.volume * laid.share
        mortar = joints(part, part.volume - bare, "refractory mortar")
        return bare * density("firebrick") + sum([share.weight for share in mortar])


def share_out(geometry: Geometry) -> tuple[Share, ...]:
    """What every part asks for, and what stands before the masonry: face, mantel and trim.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Share
        The volumes of a part's shares add up to the part.
    """
    return geometry.once(_all_shares)


def _all_shares(geometry: Geometry) -> tuple[Share, ...]:
    work = geometry.once(_Sharing)
    shares = [share for part in geometry.parts for share in work.shares(part)]
    return (*shares, *geometry.once(_before_masonry))


def _before_masonry(geometry: Geometry) -> tuple[Share, ...]:
    return (*face_shares(geometry), *trim_shares(geometry), *hood(geometry))


def part_weights(geometry: Geometry) -> dict[str, float]:
    """What every part weighs; face, mantel and trim hang on the walls round the firebox.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of str to float
        By the part's name. [kg]
    """
    work = geometry.once(_Sharing)
    weights = {part.name: work.weight(part) for part in geometry.parts}
    for share in geometry.once(_before_masonry):
        weights[share.part if share.part in weights else "firebox walls"] += share.weight
    return weights


def weight_on_footing(geometry: Geometry) -> float:
    """Weight on the footing, its own counted in; a seat beside the hearth stands on the floor.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        [kg]
    """
    weights = geometry.once(part_weights)
    return sum([weight for name, weight in weights.items() if name not in SEAT])
