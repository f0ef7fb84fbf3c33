"""Every part of a fireplace as what its level cut is at any height, and its volume by adding up such cuts."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field

from naive.levels import back_at, front_at, half_at, shift_at, throat_width
from naive.sums import gauss, shoelace


def box(half: float, front: float, back: float, middle: float = 0.0) -> list:
    """A rectangle about a line front to back."""
    return [
        (middle - half, front),
        (middle + half, front),
        (middle + half, back),
        (middle - half, back),
    ]


@dataclass(frozen=True)
class Disc:
    """A round cut."""

    x: float
    y: float
    r: float

    @property
    def sums(self) -> tuple[float, float, float]:
        """Area and first moments."""
        area = math.pi * self.r**2
        return area, area * self.x, area * self.y


@dataclass(frozen=True)
class Under:
    """Air under an arch, between sides that close in with depth."""

    span: float
    rise: float
    spring: float
    thick: float
    splay: float

    @property
    def radius(self) -> float:
        """Half span squared over twice the rise, and half the rise."""
        return self.span**2 / 8 / self.rise + self.rise / 2

    @property
    def top(self) -> float:
        """Crown of the soffit."""
        return self.spring + self.rise

    def slice(self, y: float) -> float:
        """Area of the upright slice at a depth."""
        r, side = self.radius, self.span / 2 - self.splay * y
        skew = math.asin(min(side / r, 1.0))
        return gauss(lambda t: (r * math.cos(t) - r + self.rise) * r * math.cos(t), -skew, skew)

    def volume(self, low: float = -1e9, high: float = 1e9) -> float:
        """Slices front to back; between two levels, slices from below."""
        if low <= self.spring and high >= self.spring + self.rise:
            return gauss(self.slice, 0.0, self.thick)
        low, high = max(low, self.spring), min(high, self.spring + self.rise)
        return gauss(
            lambda z: gauss(
                lambda y: 2 * min(self.half(z), self.span / 2 - self.splay * y), 0.0, self.thick
            ),
            low,
            high,
        )

    def half(self, z: float) -> float:
        """Half the width at a level."""
        return math.sqrt(
            max(self.radius**2 - (z - self.spring - self.rise + self.radius) ** 2, 0.0)
        )

    def upright(self) -> float:
        """First moment about the room floor, slices front to back. [m4]"""
        r, flat = self.radius, self.radius - self.rise

        def slab(y: float) -> float:
            skew = math.asin(min((self.span / 2 - self.splay * y) / r, 1.0))
            return gauss(
                lambda t: (
                    (self.spring * (r * math.cos(t) - flat) + (r * math.cos(t) - flat) ** 2 / 2)
                    * r
                    * math.cos(t)
                ),
                -skew,
                skew,
            )

        return gauss(slab, 0.0, self.thick)

    def across(self) -> float:
        """First moment about the plane of the opening. [m4]"""
        return gauss(lambda y: y * self.slice(y), 0.0, self.thick)


@dataclass(frozen=True)
class Ring:
    """A ring over the opening: so deep out from the soffit, its ends cut toward the centre."""

    span: float
    rise: float
    spring: float
    deep: float
    thick: float

    @property
    def radius(self) -> float:
        """Of the soffit."""
        return self.span**2 / 8 / self.rise + self.rise / 2

    @property
    def skew(self) -> float:
        """From the crown to a skewback. [rad]"""
        return math.asin(min(self.span / 2 / self.radius, 1.0))

    def volume(self) -> float:
        """Thin rings, from the soffit out."""
        return gauss(lambda r: 2 * self.skew * r, self.radius, self.radius + self.deep) * self.thick

    def upright(self) -> float:
        """First moment about the room floor. [m4]"""
        centre = self.spring + self.rise - self.radius
        lift = gauss(
            lambda r: gauss(lambda t: r * math.cos(t), -self.skew, self.skew) * r,
            self.radius,
            self.radius + self.deep,
        )
        return centre * self.volume() + lift * self.thick

    @property
    def top(self) -> float:
        """Over the crown."""
        return self.spring + self.rise + self.deep


Plan = Callable[[float], list]


@dataclass(frozen=True)
class Solid:
    """A part: what it is of, the levels where its sides bend, what its cut holds and what is cut out of it; arches apart."""

    material: str
    breaks: list
    adds: Plan
    holes: Plan = field(default=lambda z: [])
    arches: tuple = ()  # (sign, Under or Ring)

    @property
    def bottom(self) -> float:
        """Lowest level."""
        return min([*self.breaks, *(a.spring for sign, a in self.arches if sign > 0)])

    @property
    def top(self) -> float:
        """Highest level."""
        return max([*self.breaks, *(a.top for sign, a in self.arches if sign > 0)])

    def cut(self, z: float) -> tuple[float, float, float]:
        """Area and first moments of the level cut, arches left out."""
        found = [0.0, 0.0, 0.0]
        for sign, shapes in ((1, self.adds(z)), (-1, self.holes(z))):
            for shape in shapes:
                for k, part in enumerate(
                    shape.sums if isinstance(shape, Disc) else shoelace(shape)
                ):
                    found[k] += sign * part
        return found[0], found[1], found[2]

    def pieces(self, low: float, high: float) -> list[tuple[float, float]]:
        """Between two levels, from bend to bend."""
        stops = sorted({low, high, *(z for z in self.breaks if low < z < high)})
        return [(a, b) for a, b in zip(stops, stops[1:], strict=False) if b - a > 1e-12]

    def moments(self, low: float = -1e9, high: float = 1e9) -> tuple[float, float, float, float]:
        """Volume and first moments of what lies between two levels."""
        volume = along = deep = up = 0.0
        if self.breaks:
            for a, b in self.pieces(max(low, min(self.breaks)), min(high, max(self.breaks))):
                volume += gauss(lambda z: self.cut(z)[0], a, b, 4)
                along += gauss(lambda z: self.cut(z)[1], a, b, 4)
                deep += gauss(lambda z: self.cut(z)[2], a, b, 4)
                up += gauss(lambda z: z * self.cut(z)[0], a, b, 4)
        for sign, arch in self.arches:
            v = arch.volume()
            y = v * arch.thick / 2 if isinstance(arch, Ring) else arch.across()
            volume, deep, up = volume + sign * v, deep + sign * y, up + sign * arch.upright()
        return volume, along, deep, up

    @property
    def volume(self) -> float:
        """Of all of it. [m3]"""
        return self.moments()[0]


def _bounded(plan: Plan, low: float, high: float) -> Plan:
    return lambda z: plan(z) if low < z < high else []


def _sum(*plans: Plan) -> Plan:
    return lambda z: [shape for plan in plans for shape in plan(z)]


class Parts:
    """The parts of one design; ``s`` holds its levels and lines."""

    def __init__(self, s):
        self.s, self.d = s, s.d
        self.thick = self.d.firebox.lining_thickness
        self.aside = self.thick * math.sqrt(1 + s.splay**2)

    # -- outlines -----------------------------------------------------------------------------------
    def block(self, z: float = 0.0) -> list:
        """Of the whole base."""
        return [box(self.s.block[0], 0.0, self.s.block[1])]

    def flank(self, front: float, back: float, out: float = 0.0) -> list:
        """Between the splayed sides, each pushed out sideways."""
        a, b = half_at(self.s, front) + out, half_at(self.s, back) + out
        return [(-a, front), (a, front), (b, back), (-b, back)]

    def behind(self, z: float) -> float:
        """Back of the lining from behind: as far off the upright back as off the leaning one, square to each."""
        s = self.s
        return min(
            s.depth + self.thick,
            s.depth - s.lean * (z - s.bend) + self.thick * math.sqrt(1 + s.lean**2),
        )

    def face(self, z: float) -> float:
        """Where the inside of the firebox begins: at the opening, behind the breast, or along the throat's front."""
        s = self.s
        if z < s.spring:
            return 0.0
        return s.breast if z < s.head else front_at(s, z)

    @property
    def bends(self) -> list:
        """Levels where firebox and lining change their slope."""
        s = self.s
        mitre = s.bend + self.thick * (math.sqrt(1 + s.lean**2) - 1) / s.lean if s.lean else s.bend
        return [z for z in (s.hearth, s.bend, mitre, s.spring, s.head) if z < s.throat]

    def inside(self, z: float) -> list:
        """Air of the firebox."""
        return [self.flank(self.face(z), back_at(self.s, z))]

    def lined(self, z: float) -> list:
        """Outside of the lining."""
        return [self.flank(self.face(z), self.behind(z), self.aside)]

    def floor(self, z: float) -> list:
        """Under the fire."""
        return [self.flank(0.0, self.s.depth)]

    def ledge(self, z: float) -> list:
        """What fills up behind the leaning back."""
        return (
            [self.flank(self.behind(z), self.s.depth + self.thick, self.aside)]
            if self.s.lean
            else []
        )

    def chamber(self, coat: float = 0.0) -> Plan:
        """Smoke chamber, each face pushed out square to itself but never out of the breast."""
        s, f = self.s, self.s.flue
        rise = s.taper_top - s.throat
        low = (throat_width(s) / 2, s.throat_front, s.depth)
        high = (f.wide / 2, s.flue_y - f.deep / 2, s.flue_y + f.deep / 2)
        out = [coat * math.hypot(1, (b - a) / rise) for a, b in zip(low, high, strict=True)]
        low, high = (
            (side + out[0], max(front - out[1], 0.0), back + out[2])
            for side, front, back in (low, high)
        )

        def at(z: float) -> list:
            t = (z - s.throat) / rise
            side, front, back = (a + t * (b - a) for a, b in zip(low, high, strict=True))
            return [box(side, front, back)]

        return at

    def column(self, half: float, deep: float) -> Plan:
        """Square about the flue's line, wherever that has moved."""
        return lambda z: [
            box(half, self.s.flue_y - deep, self.s.flue_y + deep, shift_at(self.s, z))
        ]

    def pipe(self, wall: float = 0.0) -> Plan:
        """The flue's hole, or with its wall the liner's outside."""
        f = self.s.flue
        if f.round:
            return lambda z: [Disc(shift_at(self.s, z), self.s.flue_y, f.wide / 2 + wall)]
        return self.column(f.wide / 2 + wall, f.deep / 2 + wall)

    def unit(self) -> Plan:
        """Outside of a flue unit."""
        return (
            self.column(*self.s.unit) if self.d.method == "modular" else self.pipe(self.s.flue.wall)
        )

    def shoulder(self, z: float) -> list:
        """From the base to the stack, straight."""
        s = self.s
        t = (z - s.flue_foot) / (s.shoulder_top - s.flue_foot)
        front, back = s.flue_y - s.stack[1], s.flue_y + s.stack[1]
        return [
            box(
                s.block[0] + t * (s.stack[0] - s.block[0]),
                t * front,
                s.block[1] + t * (back - s.block[1]),
            )
        ]

    def crown(self, z: float) -> list:
        """Upright at the edge, then sloping to the unit."""
        s, over = self.s, self.d.chimney.overhang
        t = (z - s.crown_edge) / (s.crown_top - s.crown_edge) if z > s.crown_edge else 0.0
        half, deep = (a + over + t * (b - a - over) for a, b in zip(s.stack, s.unit, strict=True))
        return [box(half, s.flue_y - deep, s.flue_y + deep, shift_at(s, s.crown_foot))]

    def seat(self, z: float) -> list:
        """Bearing piece under the flue, half into the wall."""
        s, into = self.s, self.d.chimney.wall / 2
        return [
            box(
                min(s.cavity[0] + into, s.block[0]),
                max(s.flue_y - s.cavity[1] - into, 0.0),
                min(s.flue_y + s.cavity[1] + into, s.block[1]),
            )
        ]

    # -- parts, from the footing up --------------------------------------------------------------------
    def all(self) -> dict[str, Solid]:
        """Every part by name."""
        return {
            name: made
            for name, made in (self._ground() | self._firebox() | self._above()).items()
            if made.volume or made.arches
        }

    def _ground(self) -> dict[str, Solid]:
        s, b, h = self.s, self.d.base, self.d.hearth
        out, w = b.footing_projection, b.block_width
        found = {
            "footing": Solid(
                "concrete",
                [s.footing_foot, s.footing_top],
                lambda z: [box(s.block[0] + out, -out, s.block[1] + out)],
            )
        }
        rise = [s.footing_top, s.slab_foot]
        roomy = s.block[0] > w and s.block[1] > 2 * w

        def core(z: float) -> list:
            return [box(s.block[0] - w, w, s.block[1] - w)] if roomy else []

        found["base walls"] = Solid("block", rise, self.block, core)
        if roomy and b.core == "grouted":
            found["base core"] = Solid("grout", rise, core)
        found["hearth slab"] = Solid("concrete", [s.slab_foot, s.paving], self.block)
        found["firebox floor"] = Solid(
            "firebrick" if self.d.method == "laid" else "refractory",
            [s.paving, s.hearth],
            self.floor,
        )
        if h.front > 0:
            apron = lambda z: [box(s.half + h.side, -h.front, 0.0)]  # noqa: E731
            under, foot = s.apron - h.thickness, s.apron - h.thickness - h.bed
            made_of = {"masonry": "brick", None: "stone"}.get(h.material, h.material)
            found["hearth extension"] = Solid(made_of, [under, s.apron], apron)
            found["hearth extension bed"] = Solid("concrete", [foot, under], apron)
            if foot > 0:
                found["hearth extension base"] = Solid("block", [0.0, foot], apron)
        return found

    @property
    def masonry(self) -> str:
        """Of walls, shelf and chamber."""
        return {
            "stone": "stone",
            "concrete": "concrete",
            "hollow grouted solid": "grouted block",
            "hollow ungrouted": "block",
        }.get(self.d.firebox.masonry, "brick")

    def _firebox(self) -> dict[str, Solid]:
        s, d = self.s, self.d
        lined_with = {
            "firebrick": "firebrick",
            "refractory section": "refractory",
            "other approved": "refractory",
        }
        rise = [s.paving, *self.bends, s.throat]
        hollow = _sum(
            _bounded(self.floor, s.paving, s.hearth), _bounded(self.inside, s.hearth, s.throat)
        )
        found = {
            "firebox lining": Solid(
                lined_with.get(d.firebox.lining, "brick"), rise, self.lined, hollow
            )
        }
        carried, arches = self._head()
        found |= carried
        mitre = (
            min(s.bend + self.thick * (math.sqrt(1 + s.lean**2) - 1) / s.lean, s.throat)
            if s.lean
            else s.throat
        )
        if s.lean:
            found["smoke shelf"] = Solid(self.masonry, [mitre, s.throat], self.ledge)
        [(name, head)] = carried.items()
        cut = _sum(
            self.lined,
            _bounded(self.ledge, mitre, s.throat),
            *([] if name == "arch" else [head.adds]),
        )
        levels = [s.paving, *self.bends, *head.breaks, s.throat]
        found["firebox walls"] = Solid(
            self.masonry, levels, self.block, cut, tuple((-sign, a) for sign, a in arches)
        )
        return found

    def _head(self) -> tuple[dict[str, Solid], list]:
        s, d = self.s, self.d
        if s.spring < s.head:
            ring = Ring(2 * s.half, s.head - s.spring, s.spring, d.lintel.height, s.breast)
            under = Under(2 * s.half, s.head - s.spring, s.spring, s.breast, s.splay)
            made = Solid(
                "stone" if d.lintel.material == "stone" else "brick",
                [],
                lambda z: [],
                lambda z: [],
                ((1, ring),),
            )
            return {"arch": made}, [(1, ring), (1, under)]
        half, top = s.half + (d.lintel.bearing or 0.0), s.head + d.lintel.height
        made_of = {
            "steel": "steel",
            "stone": "stone",
            "timber": "timber",
            "reinforced masonry": "brick",
            "masonry arch": "brick",
        }
        material = made_of.get(d.lintel.material, "concrete")
        each = s.breast / d.lintel.angles
        leg = min(d.lintel.level_leg, each)
        leaf = min(d.lintel.thickness, d.lintel.height, leg)

        def bar(z: float) -> list:
            if not s.head < z < top:
                return []
            if material != "steel":
                return [box(half, 0.0, s.breast)]
            toe = 0.0 if z < s.head + leaf else leg - leaf
            return [box(half, each * k + toe, each * k + leg) for k in range(d.lintel.angles)]

        return {
            "lintel": Solid(
                material,
                [s.head, s.head + leaf, top] if material == "steel" else [s.head, top],
                bar,
            )
        }, []

    def _above(self) -> dict[str, Solid]:
        s, d = self.s, self.d
        sc = d.smoke_chamber
        coated, air = self.chamber(sc.lining_thickness), self.chamber()
        lined_with = {"firebrick": "firebrick", "vitrified clay": "clay liner"}
        taper = [s.throat, s.taper_top]
        found = {
            "smoke chamber lining": Solid(lined_with.get(sc.lining, "parging"), taper, coated, air),
            "transition": Solid(
                "refractory" if d.method == "modular" else "concrete",
                [s.taper_top, s.flue_foot],
                self.seat,
                self.pipe(),
            ),
            "smoke chamber walls": Solid(
                self.masonry,
                [*taper, s.flue_foot],
                self.block,
                _sum(_bounded(coated, *taper), _bounded(self.seat, s.taper_top, s.flue_foot)),
            ),
        }
        stops = [z for z in (s.shift_foot, s.shift_top) if z < s.flue_top]
        found["flue liner"] = Solid(
            "clay liner", [s.flue_foot, *stops, s.flue_top], self.pipe(s.flue.wall), self.pipe()
        )
        if d.method == "modular":
            found["flue casing"] = Solid(
                "refractory", [s.flue_foot, *stops, s.flue_top], self.unit(), self.pipe(s.flue.wall)
            )
        found["shoulder"] = Solid(
            d.chimney.masonry, [s.flue_foot, s.shoulder_top], self.shoulder, self.column(*s.cavity)
        )
        stops = [z for z in stops if z < s.crown_foot]
        found["chimney walls"] = Solid(
            d.chimney.masonry,
            [s.shoulder_top, *stops, s.crown_foot],
            self.column(*s.stack),
            self.column(*s.cavity),
        )
        found["crown"] = Solid(
            d.chimney.cap_material or "concrete",
            [s.crown_foot, s.crown_edge, s.crown_top],
            self.crown,
            self.unit(),
        )
        return found

    def voids(self) -> dict[str, Solid]:
        """The air between them."""
        s = self.s
        stops = [z for z in (s.shift_foot, s.shift_top) if z < s.flue_top]
        _, arches = self._head()
        found = {
            "firebox air": Solid(
                "air",
                [s.hearth, *(z for z in self.bends if z > s.hearth), s.throat],
                self.inside,
                lambda z: [],
                tuple((1, a) for _, a in arches if isinstance(a, Under)),
            ),
            "smoke chamber air": Solid("air", [s.throat, s.taper_top], self.chamber()),
            "flue air": Solid("air", [s.taper_top, *stops, s.flue_top], self.pipe()),
            "gap round liner": Solid(
                "air",
                [s.flue_foot, *(z for z in stops if z < s.crown_foot), s.crown_foot],
                self.column(*s.cavity),
                self.unit(),
            ),
        }
        w = self.d.base.block_width
        if self.d.base.core == "hollow" and s.block[0] > w and s.block[1] > 2 * w:
            found["base air"] = Solid(
                "air",
                [s.footing_top, s.slab_foot],
                lambda z: [box(s.block[0] - w, w, s.block[1] - w)],
            )
        return found
