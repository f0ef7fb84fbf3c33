"""The list to order from, part by part, and what every part weighs."""

from __future__ import annotations

import csv
import math
from collections import Counter, defaultdict
from dataclasses import dataclass

import shapely

from naive import bricks, courses, mantels
from naive.bricks import Laid
from naive.levels import back_at, flue, left_open, opening_area, throat_width
from naive.reading import FT, IN, LB, PINS
from naive.solids import Parts, Solid
from naive.sums import gauss

PCF = LB / FT**3
DENSITY = {
    k: v * PCF
    for k, v in {
        "firebrick": 145,
        "refractory": 130,
        "brick": 120,
        "block": 65.25,
        "grout": 140,
        "concrete": 150,
        "mortar": 130,
        "refractory mortar": 130,
        "clay liner": 127,
        "steel": 490,
        "stone": 150,
        "tile": 125,
        "plaster": 130,
        "timber": 40,
        "wood": 40,
    }.items()
}
"""Handbook weights in lb/ft3: masonry, concrete and wood as general handbooks list them; block from a weighed 34.3 lb unit by its gross
volume; refractory, mortar, liner, steel and wood from memory. [kg/m3]"""
COMMON = Laid(8 * IN, 2.25 * IN, 3.75 * IN, 0.5 * IN)
"""Common brick with 1/2 in joints: NAVEDTRA 14045, table 4-5."""
SOLID = 0.27 * FT**3 / (7.625 * 7.625 * 15.625 * IN**3)
"""Of a hollow 8 in block, the part that is concrete: measured, Masonry Magazine, June 1989, p. 10."""
PIECE = 30 * IN
"""No section is longer than two people can set: the project's own habit."""

YARD, BAG = (
    27 * FT**3,
    {"concrete": 80 * LB / DENSITY["concrete"], "mortar": 80 * LB / DENSITY["mortar"]},
)
PAIL, TON = 50 * LB / DENSITY["refractory mortar"], 2000 * LB / DENSITY["stone"]
SOLD = {
    "Footing concrete": ("yd3", YARD, 0.25, "concrete"),
    "Base block": ("block", None, 1, "block"),
    "Base block, cut": ("block", None, 1, "block"),
    "Half-high block": ("block", None, 1, "block"),
    "Half-high block, cut": ("block", None, 1, "block"),
    "Packing block": ("block", None, 1, "block"),
    "Packing block, cut": ("block", None, 1, "block"),
    "Core grout": ("yd3", YARD, 0.25, "concrete"),
    "Hearth slab concrete": ("yd3", YARD, 0.25, "concrete"),
    "Hearth bed concrete": ("yd3", YARD, 0.25, "concrete"),
    "Hearth stone": ("ft2", None, 1, ""),
    "Hearth tile": ("ft2", None, 1, ""),
    "Hearth boards": ("ft2", None, 1, ""),
    "Hearth brick": ("brick", None, 1, "brick"),
    "Hearth topping concrete": ("yd3", YARD, 0.25, "concrete"),
    "Firebrick, whole": ("brick", None, 1, "firebrick"),
    "Firebrick, cut": ("brick", None, 1, "firebrick"),
    "Firebox floor section": ("piece", None, 1, "section"),
    "Firebox back section": ("piece", None, 1, "section"),
    "Firebox side section": ("piece", None, 1, "section"),
    "Common brick": ("brick", None, 1, "brick"),
    "Facing brick": ("brick", None, 1, "brick"),
    "Masonry block": ("block", None, 1, "block"),
    "Building stone": ("ton", TON, 0.25, "brick"),
    "Wall concrete": ("yd3", YARD, 0.25, "concrete"),
    "Face stone": ("ft2", None, 1, ""),
    "Face plaster": ("ft2", None, 1, ""),
    "Face tile": ("ft2", None, 1, ""),
    "Mantel and trim, wood": ("board foot", FT**3 / 12, 1, ""),
    "Mantel and trim, stone": ("ft3", FT**3, 0.25, ""),
    "Steel lintel": ("piece", None, 1, ""),
    "Stone lintel": ("piece", None, 1, ""),
    "Concrete lintel": ("piece", None, 1, ""),
    "Timber lintel": ("piece", None, 1, ""),
    "Lintel brick": ("brick", None, 1, "brick"),
    "Lintel bar": ("piece", None, 1, ""),
    "Arch brick": ("brick", None, 1, "brick"),
    "Arch stone": ("ton", TON, 0.25, "brick"),
    "Smoke chamber firebrick": ("brick", None, 1, "firebrick"),
    "Smoke chamber section": ("piece", None, 1, "section"),
    "Transition piece": ("piece", None, 1, ""),
    "Transition concrete": ("80-lb bag", BAG["concrete"], 1, "concrete"),
    "Clay flue liner": ("piece", None, 1, "section"),
    "Flue section": ("piece", None, 1, "section"),
    "Crown concrete": ("80-lb bag", BAG["concrete"], 1, "concrete"),
    "Crown stone": ("piece", None, 1, ""),
    "Crown mortar": ("80-lb bag", BAG["mortar"], 1, "mortar"),
    "Metal hood": ("piece", None, 1, ""),
    "Metal cap": ("piece", None, 1, ""),
    "Mortar": ("80-lb bag", BAG["mortar"], 1, "mortar"),
    "Refractory mortar": ("50-lb pail", PAIL, 1, "mortar"),
}
"""Sold by, holding [m3], in steps of, with which waste; a bag makes its own weight of set work."""


@dataclass(frozen=True)
class Share:
    """What one part asks for: so much of a material [m3, kg], and a count."""

    part: str
    item: str
    material: str
    volume: float
    weight: float
    count: float = 0.0

    @property
    def quantity(self) -> float:
        """In the unit it is sold by."""
        holds = SOLD[self.item][1]
        return self.count if holds is None else self.volume / holds


def up(number: float) -> int:
    """To the next whole one; whole but for a float's last digit is whole."""
    return math.ceil(number - 1e-9)


class Order:
    """Everything one design asks for."""

    def __init__(self, s):
        self.s, self.d, self.parts = s, s.d, Parts(s).all()
        self.shares: list[Share] = []
        self.cuts: dict[str, dict] = {}
        for name, solid in self.parts.items():
            self._name, self._solid = name, solid
            getattr(
                self,
                "_"
                + {"hearth extension base": "base walls", "flue casing": "flue liner"}.get(
                    name, name
                ).replace(" ", "_"),
            )()
        self._face()
        if s.d.opening.hood:  # hung by its maker, who weighs it
            self.shares.append(Share("hood", "Metal hood", "metal", 0.0, 0.0, 1.0))

    # -- ways of asking -----------------------------------------------------------------------------
    def ask(
        self,
        item: str,
        material: str,
        volume: float,
        count: float = 0.0,
        weight: float | None = None,
    ) -> None:
        """One share."""
        weight = volume * DENSITY[material] if weight is None else weight
        self.shares.append(Share(self._name, item, material, volume, weight, count))

    def joints(self, volume: float, material: str = "mortar") -> None:
        """The rest is mortar."""
        if volume > 1e-12:
            self.ask(material.capitalize(), material, volume)

    def laid(
        self,
        item: str,
        per: tuple[float, float],
        volume: float,
        material: str = "brick",
        mortar: str = "mortar",
    ) -> None:
        """Units by volume."""
        number, filled = per
        self.ask(item, material, volume * filled, volume * number)
        self.joints(volume - volume * filled, mortar)

    def set(self, item: str, material: str, count: float, joint: float, volume: float) -> None:
        """Pieces, of which a part is their joints."""
        self.ask(item, material, volume * (1 - joint), count)
        self.joints(volume * joint, "refractory mortar")

    def hollow(
        self, item: str, per: tuple[float, float], count: float, filled: bool, volume: float
    ) -> None:
        """Hollow block, its cores filled or not."""
        gross = volume * per[1]
        cores = gross * (1 - SOLID) if filled else 0.0
        self.ask(item, "block", gross - cores, count, gross * DENSITY["block"])
        if filled:
            self.ask("Core grout", "grout", cores)
        self.joints(volume - gross)

    def masonry(self, per: tuple[float, float], showing: float = 0.0) -> None:
        """Whatever walls are of; the first of it, if brick, shows in the room."""
        of, volume = self._solid.material, self._solid.volume
        showing = min(showing, volume)
        if showing:
            self.laid("Facing brick", bricks.density_in_mass(COMMON), showing)
        volume -= showing
        if volume <= 0:
            return
        if of == "stone":  # a quarter of rubble is mortar
            self.ask("Building stone", "stone", 0.75 * volume)
            self.joints(volume - 0.75 * volume)
        elif of == "concrete":
            self.ask("Wall concrete", "concrete", volume, 1)
        elif of in ("block", "grouted block"):
            per = bricks.density_in_mass(self.block)
            self.hollow("Masonry block", per, volume * per[0], of == "grouted block", volume)
        else:
            self.laid("Common brick", per, volume)

    @property
    def block(self) -> Laid:
        """Of the base."""
        b = self.d.base
        return Laid(b.block_length, b.block_height, b.block_width, b.bed)

    # -- the parts ------------------------------------------------------------------------------------
    def _poured(self, item: str, material: str = "concrete") -> None:
        self.ask(item, material, self._solid.volume, 1)

    def _footing(self) -> None:
        self._poured("Footing concrete")

    def _base_core(self) -> None:
        self._poured("Core grout", "grout")

    def _hearth_slab(self) -> None:
        self._poured("Hearth slab concrete")

    def _hearth_extension_bed(self) -> None:
        self._poured("Hearth bed concrete")

    def _base_walls(self) -> None:
        """Every block of every course, weighed by its own size; a solid one weighs what its concrete does."""
        solid, unit = self._solid, self.block
        level = (solid.bottom + solid.top) / 2
        holes, high = solid.holes(level), solid.top - solid.bottom
        xs, ys = zip(*(point for ring in solid.adds(level) for point in ring), strict=True)
        left, front, right, back = min(xs), min(ys), max(xs), max(ys)
        made = courses.stack(high, unit.high, unit.joint)
        kinds = ["Base block"] * made.whole + ["sawn"] * (made.sawn > 0)
        kinds += ["Half-high block"] * made.half + ["Packing block"] * made.packing
        tall = {
            "Base block": unit.high,
            "sawn": made.sawn,
            "Half-high block": courses.HALF_HIGH,
            "Packing block": courses.SPLIT,
        }
        squeezed = min(1.0, high / (high + made.miss)) if kinds else 1.0
        whole, cut, filled = Counter(), defaultdict(list), defaultdict(float)
        for number, kind in enumerate(kinds):
            odd = number % 2 == 1
            laid = (
                courses.ring(right, back, unit, odd)
                if holes
                else courses.solid(left, front, right, back, unit, odd)
            )
            item = "Base block" if kind == "sawn" else kind
            short = (
                courses.cut_lengths(right, back, unit, odd)
                if holes
                else [d - b if odd else c - a for a, b, c, d, is_cut in laid if is_cut]
            )
            bare = tall[kind] * squeezed
            for a, b, c, d, is_cut in laid:
                one_by_one = is_cut or kind == "sawn"
                filled[f"{item}, cut" if one_by_one else item] += (c - a) * (d - b) * bare
            uncut = sum(not is_cut for *_, is_cut in laid)
            cut[item] += short
            if kind == "sawn":
                cut[item] += [unit.long] * uncut
            else:
                whole[item] += uncut
        for item, bare in filled.items():
            kind = item.removesuffix(", cut")
            number = whole[item] if kind == item else bricks.bricks_for(cut[kind], unit.long)
            heavy = DENSITY["block"] / (SOLID if kind == "Packing block" else 1.0)
            self.ask(item, "block", bare, number, bare * heavy)
        self.joints(solid.volume - sum(filled.values()))

    def _hearth_extension(self) -> None:
        of, solid = self._solid.material, self._solid
        thick = solid.top - solid.bottom
        if of == "concrete":
            self._poured("Hearth topping concrete")
        elif of == "brick":
            self.laid(
                "Hearth brick",
                bricks.density_in_wall(bricks.in_wall(COMMON, thick), thick),
                solid.volume,
            )
        else:
            item = {"stone": "Hearth stone", "tile": "Hearth tile", "wood": "Hearth boards"}[of]
            self.ask(item, of, solid.volume, solid.volume / thick / FT**2)

    def _firebrick(self, faces: list, bond: str, thick: float, paving: bool = False) -> None:
        unit = bricks.firebrick(self.d.firebox.brick, thick, self.d.firebox.joint)
        laid = [
            (bricks.best(face, unit, bond, centred, ends, paving)[0], alike)
            for face, alike, centred, ends in faces
        ]
        found = self.cuts[self._name] = bricks.counted(laid, unit)
        bare = self._solid.volume * bricks.density_in_wall(unit, thick)[1]
        whole = bare * found["whole face"] / (found["whole face"] + found["cut face"])
        for item, volume, count in (
            ("whole", whole, found["whole"]),
            ("cut", bare - whole, found["from"]),
        ):
            if count:
                self.ask(f"Firebrick, {item}", "firebrick", volume, count * unit.rows)
        self.joints(self._solid.volume - bare, "refractory mortar")

    def _firebox_floor(self) -> None:
        s = self.s
        if self._solid.material == "firebrick":
            self._firebrick(
                [bricks.floor(s)], self.d.firebox.floor_bond, self.d.firebox.floor, True
            )
        else:
            self.set(
                "Firebox floor section",
                "refractory",
                up(2 * s.half / PIECE) * up(s.depth / PIECE),
                0.0,
                self._solid.volume,
            )

    def sections(self, high: float) -> tuple[int, float]:
        """Sections that reach so high, each put on its bed, the last cut; and what part of the wall is their beds.
        What is left over a bed and is no more than 1/8 in is not cut out of a section."""
        told = self.d.firebox.joint
        joint = IN / 8 if told is None else told
        return courses.put_up(high, self.d.firebox.section_height, joint)

    def _firebox_lining(self) -> None:
        s, d, solid = self.s, self.d, self._solid
        if solid.material == "firebrick":
            self._firebrick(
                list(bricks.faces(s).values()), d.firebox.bond, d.firebox.lining_thickness
            )
            return
        thick = d.firebox.lining_thickness
        if solid.material == "brick":
            self.masonry(bricks.density_in_wall(bricks.in_wall(COMMON, thick), thick))
            return
        number, joint = self.sections(s.throat - s.paving)
        out, parts = thick * math.hypot(1, s.splay), Parts(s)
        stops = sorted({s.hearth, *parts.bends, s.throat})
        seen = s.depth * (s.hearth - s.paving) + sum(
            gauss(lambda z: back_at(s, z) - parts.face(z), a, b, 4)
            for a, b in zip(stops, stops[1:], strict=False)
        )
        sides = 2 * out * seen
        self.set(
            "Firebox side section",
            "refractory",
            2 * number * up(s.depth * math.hypot(1, s.splay) / PIECE),
            joint,
            sides,
        )
        self.set(
            "Firebox back section",
            "refractory",
            number * up((s.back + 2 * out) / PIECE),
            joint,
            solid.volume - sides,
        )

    def _bars(self) -> float:
        """Steel in a lintel of reinforced masonry, end to end; nominal areas of ASTM A615. [m3]"""
        lintel = self.d.lintel
        if lintel.material != "reinforced masonry" or None in (lintel.bars, lintel.bar):
            return 0.0
        area = {"No. 3": 0.11, "No. 4": 0.20, "No. 5": 0.31, "No. 6": 0.44}[lintel.bar] * IN**2
        return lintel.bars * area * 2 * (self.s.half + (lintel.bearing or 0.0))

    def _lintel(self) -> None:
        if self._solid.material == "brick":
            volume = self._bars()
            self.laid("Lintel brick", bricks.density_in_mass(COMMON), self._solid.volume - volume)
            if volume:
                self.ask("Lintel bar", "steel", volume, self.d.lintel.bars)
        else:
            self.set(
                f"{self._solid.material.capitalize()} lintel",
                self._solid.material,
                self.d.lintel.angles if self._solid.material == "steel" else 1,
                0.0,
                self._solid.volume,
            )

    def _arch(self) -> None:
        if self._solid.material == "stone":
            self._poured("Arch stone", "stone")
        else:
            number, filled = bricks.density_in_mass(COMMON)
            self.ask("Arch brick", "brick", self._solid.volume * filled, self._round_the_arch())
            self.joints(self._solid.volume * (1 - filled))

    def _round_the_arch(self) -> int:
        """Brick by brick: on edge or on end by which fills the depth better, rings, a key in the middle of each, and so
        many behind one another that the breast is filled."""
        (ring,) = (a for sign, a in self._solid.arches if sign > 0)
        ways = []
        for across, along in ((COMMON.deep, COMMON.long), (COMMON.long, COMMON.deep)):
            rings = 1
            while abs(self._filled(rings + 1, across) - ring.deep) < abs(
                self._filled(rings, across) - ring.deep
            ):
                rings += 1
            ways.append((round(abs(self._filled(rings, across) - ring.deep), 6), rings, along))
        _, rings, along = min(ways, key=lambda way: way[0])
        half = math.asin(min(ring.span / 2 / ring.radius, 1.0))
        total = 0
        for k in range(rings):
            curve = 2 * half * (ring.radius + ring.deep * (2 * k + 1) / (2 * rings))
            fits = curve / (COMMON.high + COMMON.joint)
            total += min(range(3, int(fits) + 5, 2), key=lambda odd: abs(odd - fits))
        behind = 1
        while self._filled(behind, along) < ring.thick - 1e-9:
            behind += 1
        return total * behind

    @staticmethod
    def _filled(number: int, size: float) -> float:
        """So many bricks and the joints between them. [m]"""
        return number * size + (number - 1) * COMMON.joint

    def _smoke_shelf(self) -> None:
        self.masonry(bricks.density_in_mass(COMMON))

    def _firebox_walls(self) -> None:
        s = self.s
        area = self.plain(max(s.paving, 0.0), s.throat)
        self.masonry(bricks.density_in_mass(COMMON), self.wythe(max(area, 0.0)))

    @property
    def face_top(self) -> float:
        """The ceiling, or the top of the shelf over pilasters and frieze. [m]"""
        d, m = self.d, self.d.mantel
        if d.surround.face_height == "to the ceiling":
            return d.house.ceiling
        return self.s.head + m.over_opening + m.frieze + m.thickness

    def plain(self, low: float, high: float, jambs: bool = True, below_face: bool = True) -> float:
        """Front between two levels, as a sheet cut out: opening, what is seen of the head and of the lining's ends, and
        the hearth before it, taken out. [m2]"""
        s, d = self.s, self.d
        wide, top = s.block[0], min(high, self.face_top if below_face else d.house.ceiling)
        sheet = shapely.box(-wide, low, wide, max(top, low))
        apron = max(s.apron, 0.0) if d.hearth.front > 0 else 0.0
        aside = s.half + d.hearth.side
        sheet -= shapely.box(-aside, -9, aside, apron)
        seen = jambs and d.surround.face == "brick" and self.parts["firebox lining"].material
        if seen and seen != "brick":
            ends = s.half + d.firebox.lining_thickness * math.hypot(1, s.splay)
            foot = max(s.paving, apron, 0.0)
            for side in (-1, 1):
                near, far = sorted((side * s.half, side * ends))
                sheet -= shapely.box(near, foot, far, s.spring)
        under = shapely.box(-s.half, max(s.paving, 0.0), s.half, s.spring)  # the riser apart
        area = (sheet - under).area
        if low < s.spring < high:  # what an arch leaves over its spring, and the head itself
            area -= opening_area(s) - 2 * s.half * (s.spring - s.hearth)
            head = self.parts.get("arch") or self.parts["lintel"]
            covered = ("steel",) if d.surround.face == "brick" else ("steel", "brick", "concrete")
            area -= 0.0 if head.material in covered else head.volume / s.breast
        return area

    def wythe(self, area: float) -> float:
        """Brick that shows, one deep. [m3]"""
        return area * (COMMON.deep + COMMON.joint) if self.d.surround.face == "brick" else 0.0

    def front(self, low: float, high: float, below_face: bool = True) -> float:
        """Front of shoulder and stack in the room, by slices. [m2]"""
        s = self.s
        high = max(low, min(high, self.face_top if below_face else self.d.house.ceiling))
        stops = [z for z in sorted({low, s.shoulder_top, high}) if low <= z <= high]

        def wide(z: float) -> float:
            t = min((z - s.flue_foot) / (s.shoulder_top - s.flue_foot), 1.0)
            return 2 * (s.block[0] + t * (s.stack[0] - s.block[0]))

        return sum(gauss(wide, a, b, 4) for a, b in zip(stops, stops[1:], strict=False))

    def _smoke_chamber_walls(self) -> None:
        s = self.s
        self.masonry(bricks.density_in_mass(COMMON), self.wythe(self.plain(s.throat, s.flue_foot)))

    def _shoulder(self) -> None:
        self.masonry(
            bricks.density_in_mass(COMMON),
            self.wythe(self.front(self.s.flue_foot, self.s.shoulder_top)),
        )

    def _chimney_walls(self) -> None:
        wall = self.d.chimney.wall
        self.masonry(
            bricks.density_in_wall(bricks.in_wall(COMMON, wall), wall),
            self.wythe(self.front(self.s.shoulder_top, self.s.crown_foot)),
        )

    def _smoke_chamber_lining(self) -> None:
        s, d, solid = self.s, self.d, self._solid
        coat = d.smoke_chamber.lining_thickness
        if solid.material == "firebrick":
            unit = bricks.firebrick(d.firebox.brick, coat, d.firebox.joint)
            self.laid(
                "Smoke chamber firebrick",
                bricks.density_in_wall(unit, coat),
                solid.volume,
                "firebrick",
                "refractory mortar",
            )
        elif solid.material == "clay liner":
            number, joint = self.sections(s.taper_top - s.throat)
            [(left, front), (right, _), (_, back), _] = solid.adds(s.throat)[0]
            round_it = 2 * up((right - left) / PIECE) + 2 * up((back - front) / PIECE)
            self.set("Smoke chamber section", "clay liner", number * round_it, joint, solid.volume)
        else:
            self.joints(solid.volume, "refractory mortar")

    def _transition(self) -> None:
        if self._solid.material == "refractory":
            self.set("Transition piece", "refractory", 1, 0.0, self._solid.volume)
        else:
            self._poured("Transition concrete")

    def _flue_liner(self) -> None:
        f = self.d.flue
        item = "Clay flue liner" if self.d.method == "laid" else "Flue section"
        count = f.sections if self._name == "flue liner" else 0
        self.set(
            item,
            self._solid.material,
            count,
            f.joint / (f.section_height + f.joint),
            self._solid.volume,
        )

    def _crown(self) -> None:
        of = self._solid.material
        if of == "metal":
            self.ask("Metal cap", "metal", self._solid.volume, 1, 0.0)
        elif of == "stone":
            self.set("Crown stone", "stone", 1, 0.0, self._solid.volume)
        else:
            self._poured(f"Crown {of}", of)

    def _face(self) -> None:
        """What stands before the masonry: a finish with its bed; brick before the block of a raised base; wood and stone."""
        s, d, finish = self.s, self.d, self.d.surround.face
        foot = max(s.paving, 0.0)
        below = self.plain(0.0, foot)
        if s.hearth > foot:  # the riser under the opening, over the apron
            riser = shapely.box(-s.half, foot, s.half, s.hearth)
            side, apron = s.half + d.hearth.side, s.apron if d.hearth.front > 0 else 0.0
            below += (riser - shapely.box(-side, -9, side, max(apron, 0.0))).area
        self._name = "face"
        if finish == "brick":
            if below > 0:
                self.laid("Facing brick", bricks.density_in_mass(COMMON), self.wythe(below))
        else:
            thick, bed = {
                "stone": (4 * IN, 0.25),
                "plaster": (0.5 * IN, 0.0),
                "tile": (0.875 * IN, 0.571429),
            }[finish]
            bands = {
                "base walls": below,
                "firebox walls": self.plain(foot, s.throat),
                "smoke chamber walls": self.plain(s.throat, s.flue_foot),
                "shoulder": self.front(s.flue_foot, s.shoulder_top),
                "chimney walls": self.front(s.shoulder_top, s.crown_foot),
            }
            area = sum(
                band
                for name, band in bands.items()
                if finish != "stone" or self.parts[name].material != "stone"
            )
            self.ask(f"Face {finish}", finish, area * thick * (1 - bed), area / FT**2)
            self.joints(area * thick * bed)
        if self.face_top < d.house.ceiling:
            over = self.plain(s.throat, s.flue_foot, below_face=False) - self.plain(
                s.throat, s.flue_foot
            )
            over += self.plain(0.0, s.throat, below_face=False) - self.plain(0.0, s.throat)
            for low, high in ((s.flue_foot, s.shoulder_top), (s.shoulder_top, s.crown_foot)):
                over += self.front(low, high, below_face=False) - self.front(low, high)
            self.ask("Face plaster", "plaster", over * 0.5 * IN, over / FT**2)
        self._name = "mantel"
        if d.mantel.family != "piece by piece":
            of = "wood" if "wood" in d.mantel.material else d.mantel.material
            solid = sum(piece.volume for piece in mantels.pieces(s))
            self.ask(f"Mantel and trim, {of}", of, solid)
            return
        for piece in d.surround.trim:
            of = "wood" if piece.combustible else "stone"
            out = 1.5 * IN if piece.projection is None else piece.projection
            away = 12 * IN if piece.distance is None else piece.distance
            if piece.place == "above":
                long, tall = 2 * min(s.block[0], s.half + max(away, 0.1)), piece.height
            else:
                long, tall = 2 * piece.height, s.head - s.hearth
            if out > 0:
                self.ask(f"Mantel and trim, {of}", of, long * tall * out)

    # -- sums -----------------------------------------------------------------------------------------------
    @property
    def masses(self) -> dict[str, float]:
        """Of every part. [kg]"""
        found = dict.fromkeys(self.parts, 0.0)
        for share in self.shares:
            hung = share.part in ("face", "mantel", "hood")
            found["firebox walls" if hung else share.part] += share.weight
        return found

    def rows(self) -> dict[str, dict]:
        """The list, in the order things are needed."""
        found = {}
        for item, (unit, holds, step, waste) in SOLD.items():
            asked = [share for share in self.shares if share.item == item]
            if not asked:
                continue
            net = sum(share.quantity for share in asked)
            net = net if holds is not None or unit == "ft2" else up(net)
            weight = sum(share.weight for share in asked)
            buy = net * (1 + (self.d.waste[waste] if waste else 0.0))
            counted = holds is None and unit != "ft2" and weight > 0
            found[item] = {
                "unit": unit,
                "net": net,
                "order": up(buy / step) * step,
                "weight": weight,
                "volume": sum(share.volume for share in asked),
                "piece": weight / net if counted else None,
                "material": " and ".join(dict.fromkeys(share.material for share in asked)),
            }
        return found


def bill(rows: dict[str, dict]) -> dict:
    """What the order costs by the invented list beside the designs; what has no price there is named and not counted."""
    with (PINS / "prices.csv").open(encoding="utf-8") as file:
        listed = {r["item"]: r for r in csv.DictReader(file)}
    total, packs, missing = 0.0, {}, []
    for item, row in rows.items():
        price = listed.get(item)
        if price is None or price["unit"] != row["unit"]:
            missing.append(item)
            continue
        total += float(price["price"]) * row["order"]
        packs[item] = up(row["order"] / int(price["per_pack"])) if price["per_pack"] else 0
    return {"total": total, "packs": packs, "unpriced": missing}


def opinions(s, order: Order, rows: dict[str, dict]) -> list[tuple[str, float, float, str]]:
    """Old rules of thumb beside the count: what, counted, by the rule, unit. USDA FB 1889 unless said."""
    parts, found = order.parts, []
    brick = sum(rows[item]["net"] for item in ("Common brick", "Facing brick") if item in rows)
    if brick:
        apart = ("lintel", "arch", "hearth extension", "firebox lining")
        work = sum(
            p.volume for name, p in parts.items() if p.material == "brick" and name not in apart
        )
        found.append(("Brick by wall measure", brick, 22.5 * work / FT**3, "brick"))
        walls = parts["chimney walls"]
        if walls.material == "brick":
            per = bricks.density_in_wall(
                bricks.in_wall(COMMON, s.d.chimney.wall), s.d.chimney.wall
            )[0]
            number, high = walls.volume * per, s.crown_foot - s.shoulder_top
            found.append(
                (
                    "Brick of the chimney walls, by courses",
                    number,
                    4.5 * high / FT * number * 2.75 * IN / high,
                    "brick",
                )
            )
        laid = rows["Mortar"]["volume"] / FT**3
        found.append(("Mortar, thick walls", laid, 18 * brick / 1000, "ft3"))
        found.append(
            ("Mortar, one wythe", laid, 11.7 * brick / 1000, "ft3")
        )  # NAVEDTRA 14045, table 4-5
    fire = sum(rows[item]["net"] for item in ("Firebrick, whole", "Firebrick, cut") if item in rows)
    lined = sum(
        parts[name].volume
        for name in ("firebox lining", "firebox floor")
        if parts[name].material == "firebrick"
    )
    if fire:  # both from memory
        found.append(("Firebrick", fire, 17 * lined / FT**3, "brick"))
        found.append(
            (
                "Refractory mortar",
                rows["Refractory mortar"]["volume"] * DENSITY["refractory mortar"] / LB,
                0.35 * fire,
                "lb",
            )
        )
    if parts["base walls"].holes(s.footing_top):  # NCMA TEK 14, 1969
        made = courses.stack(s.slab_foot - s.footing_top, order.block.high, order.block.joint)
        rows_high = (made.whole + (made.sawn > 0)) * (order.block.high + order.block.joint)
        face = (4 * s.block[0] + 2 * s.block[1]) * rows_high / FT**2
        of_walls = sum(
            share.count
            for share in order.shares
            if share.part == "base walls" and share.item.startswith("Base block")
        )
        if made.whole:
            found.append(("Base block", of_walls, 1.125 * face, "block"))
    lined_flue = s.d.flue.liner != "unlined" and s.flue_top - s.hearth >= 22 * FT * (1 - 1e-9)
    bare = flue(s.d).bare / IN**2
    found.append(("Flue area", bare, left_open(s) / IN**2 / (12 if lined_flue else 10), "in2"))
    found.append(("Flue area, older rule", bare, 13 * left_open(s) / FT**2, "in2"))  # USDA FB 1230
    return found


def masonry_over(s, order: Order) -> tuple[Solid, float]:
    """Walls round the firebox, and what a cubic metre of them weighs. [kg/m3]"""
    walls = order.parts["firebox walls"]
    return walls, order.masses["firebox walls"] / walls.volume


__all__ = ["DENSITY", "Order", "Share", "bill", "masonry_over", "opinions", "throat_width", "up"]
