"""The order of work of one design: what waits for what is seen by laying level cuts on each other; hours and days by plain sums."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import shapely
from shapely.geometry import Polygon

from naive import courses
from naive.order import COMMON, PIECE, Order, Share
from naive.reading import FT, IN, LB
from naive.solids import Disc, Ring, Solid, Under

FOOT = 12 * IN
"""So much more or less is reached from where one stands: the project's own habit. [m]"""
LAID = (
    "base walls",
    "base core",
    "firebox lining",
    "smoke shelf",
    "firebox walls",
    "smoke chamber lining",
    "smoke chamber walls",
    "flue liner",
    "flue casing",
    "shoulder",
    "chimney walls",
)
"""Go up by courses or pieces; all others are set or poured whole."""
TOGETHER = ("flue liner", "flue casing", "shoulder", "chimney walls")
CAST = ("concrete", "grout", "parging", "mortar")
"""Their form has to stand first."""
HAIR, TOUCH = 1e-6, 1e-5
"""Cuts are taken so far off a level [m]; plans that share less only touch [m2]."""


def flat(shapes: list) -> shapely.Geometry:
    """Several outlines as one area."""
    return shapely.union_all(
        [
            shapely.Point(p.x, p.y).buffer(p.r, 24) if isinstance(p, Disc) else Polygon(p)
            for p in shapes
        ]
    )


def arch_plan(arch: Ring | Under, z: float) -> list:
    """Level cut of a ring or of the air under it."""
    if not arch.spring <= z < arch.top:
        return []
    over = z - arch.spring - arch.rise + arch.radius
    if isinstance(arch, Under):
        wide, deep = arch.half(z), [arch.thick * k / 20 for k in range(21)]
        sides = [min(wide, arch.span / 2 - arch.splay * y) for y in deep]
        return [
            [(x, y) for x, y in zip(sides, deep, strict=True)]
            + [(-x, y) for x, y in zip(sides[::-1], deep[::-1], strict=True)]
        ]
    outer = min(
        math.sqrt(max((arch.radius + arch.deep) ** 2 - over**2, 0.0)), over * math.tan(arch.skew)
    )
    inner = math.sqrt(max(arch.radius**2 - over**2, 0.0))
    return [
        [
            (sign * a, y)
            for a, y in ((inner, 0.0), (outer, 0.0), (outer, arch.thick), (inner, arch.thick))
        ]
        for sign in (1, -1)
        if outer > inner
    ]


@dataclass
class Piece:
    """A part from one working floor to the next."""

    part: str
    material: str
    low: float
    high: float
    share: float
    number: int
    of: int
    floor: float


@dataclass
class Step:
    """What is built at one go."""

    pieces: list[Piece]
    after: tuple[int, ...]
    goods: dict[str, list[float]]  # quantity, volume [m3], weight [kg]
    hours: float
    mortar: float
    refractory: float
    batches: int
    batch: float
    floor: float
    waits: list[tuple[str, float, bool, bool]]  # part, days, from the start, holds up
    start: float = 0.0
    end: float = 0.0
    idle: float = 0.0


@dataclass
class Lift:
    """A kind of piece, at its worst."""

    step: int
    item: str
    count: float
    weight: float | None
    height: float
    reach: float
    allowed: float
    verdict: str


WAITS = {  # part: material it is for, days, counted from the start, holds up what comes after
    "footing": ("", 3, False, True),
    "base core": ("", 1, False, True),
    "hearth slab": ("", 7, False, True),
    "hearth extension bed": ("", 3, False, True),
    "lintel": ("", 7, False, False),
    "arch": ("", 7, False, False),
    "firebox walls": ("concrete", 3, False, True),
    "smoke chamber lining": ("parging", 1, False, True),
    "transition": ("concrete", 3, False, True),
    "crown": ("concrete mortar", 3, False, False),
    "chimney walls": ("", 1, True, True),
}
"""Common practice, from memory. [d]"""


HOLDS = {
    "footing": ("inspection", "level"),
    "base walls": ("square", "level"),
    "base core": ("cure",),
    "hearth slab": ("level",),
    "firebox floor": ("level", "square"),
    "firebox lining": ("plumb",),
    "firebox walls": ("plumb",),
    "lintel": ("level",),
    "arch": ("square",),
    "smoke shelf": ("level",),
    "smoke chamber walls": ("fit", "slope"),
    "smoke chamber lining": ("fit",),
    "transition": ("level",),
    "flue liner": ("plumb",),
    "chimney walls": ("plumb", "cure"),
    "crown": ("fit",),
    "hearth extension": ("level",),
}
"""What has to be right before work goes on, by kind: site practice."""


@dataclass
class Work:
    """One design, its order of work."""

    s: object
    order: Order
    pieces: list[Piece] = field(default_factory=list)
    steps: list[Step] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.d, self.parts = self.s.d, self.order.parts
        lift, s = self.d.work.lift_height, self.s
        found, z = [s.footing_foot], s.footing_top
        while z < -FOOT - HAIR:
            found, z = [*found, z], z + lift
        z = 0.0
        while z == 0 or z < s.crown_foot - FOOT - HAIR:
            found, z = [*found, z], z + lift
        self.floors = sorted(set(found))
        self._plans: dict[tuple, tuple] = {}
        self._cut()
        self._sort()
        self._group()

    # -- contacts -----------------------------------------------------------------------------------------
    def plan(self, name: str, z: float) -> tuple[shapely.Geometry, shapely.Geometry]:
        """What a part has at a level, and the holes in it."""
        if (name, z) not in self._plans:
            part: Solid = self.parts[name]
            inside = min(part.breaks) <= z < max(part.breaks) if part.breaks else False
            holes = (part.holes(z) if inside else []) + [
                p for sign, a in part.arches if sign < 0 for p in arch_plan(a, z)
            ]
            adds = (part.adds(z) if inside else []) + [
                p for sign, a in part.arches if sign > 0 for p in arch_plan(a, z)
            ]
            hollow = flat(holes)
            self._plans[name, z] = flat(adds).difference(hollow), hollow
        return self._plans[name, z]

    def span(self, one: str, other: str) -> tuple[float, float]:
        """Heights that two parts share."""
        a, b = self.parts[one], self.parts[other]
        return max(a.bottom, b.bottom), min(a.top, b.top)

    def carries(self, lower: str, upper: str) -> bool:
        """Some of the upper one's foot stands on the lower one."""
        foot, under = self.parts[upper].bottom, self.parts[lower]
        if not under.bottom + HAIR < foot <= under.top + HAIR:
            return False
        return (
            self.plan(lower, min(foot, under.top) - HAIR)[0]
            .intersection(self.plan(upper, foot + HAIR)[0])
            .area
            > TOUCH
        )

    def inside(self, inner: str, outer: str) -> bool:
        """One part fills some of a hole in the other, half-way up."""
        low, high = self.span(inner, outer)
        middle = (low + high) / 2
        return (
            high - low > HAIR
            and self.plan(outer, middle)[1].intersection(self.plan(inner, middle)[0]).area > TOUCH
        )

    def leans(self, upper: str, lower: str) -> bool:
        """The head of one stands over the foot of the other."""
        low, high = self.span(upper, lower)
        return (
            high - low > 1000 * HAIR
            and self.plan(upper, high - HAIR)[0].intersection(self.plan(lower, low + HAIR)[0]).area
            > TOUCH
        )

    # -- pieces --------------------------------------------------------------------------------------------
    def stands_on(self, level: float) -> float:
        """The highest floor from which a level is reached."""
        return max([z for z in self.floors if z <= level + FOOT + HAIR], default=self.floors[0])

    def set_level(self, name: str) -> float:
        """How high the work round a part has to be before it is set: its foot, or an arch's skewbacks."""
        part = self.parts[name]
        ring = next((a for sign, a in part.arches if sign > 0), None)
        return part.bottom + ring.deep * math.cos(ring.skew) if ring else part.bottom

    def _cut(self) -> None:
        names = list(self.parts)
        self.pairs = [
            (a, b)
            for k, a in enumerate(names)
            for b in names[k + 1 :]
            if self.span(a, b)[0] <= self.span(a, b)[1] + HAIR
        ]
        self.nested = [
            (a, b)
            for one, other in self.pairs
            for a, b in ((one, other), (other, one))
            if self.inside(a, b)
        ]
        known = [self.parts[name].bottom for name in names if name in LAID or name == "crown"]
        stops = {self.set_level(a) for a, b in self.nested if a not in LAID and b in LAID}
        for level in self.floors[1:]:
            near = min([*known, *stops], key=lambda z: abs(z - level))
            stops.add(near if abs(near - level) <= FOOT + HAIR else self.bed_near(level))
        flue, step = self.s.flue_foot, self.d.flue.section_height + self.d.flue.joint
        for name in names:
            part, cuts = self.parts[name], {}
            cuts[part.bottom] = part.bottom
            for z in sorted(stops) if name in LAID else []:
                if part.bottom + HAIR < z < part.top - HAIR:
                    at = z
                    if name.startswith("flue "):  # a section stays whole
                        at = flue
                        while at < z - 1e-7:
                            at += step
                    if at < part.top - HAIR:
                        cuts.setdefault(at, z)
            ends = [*sorted(cuts), part.top]
            sizes = (
                [self.between(name, a, b) for a, b in zip(ends, ends[1:], strict=False)]
                if len(ends) > 2
                else [1.0]
            )
            for k, (a, b) in enumerate(zip(ends, ends[1:], strict=False)):
                self.pieces.append(
                    Piece(
                        name,
                        part.material,
                        a,
                        b,
                        sizes[k] / sum(sizes),
                        k + 1,
                        len(sizes),
                        self.stands_on(cuts[a]),
                    )
                )

    def bed_near(self, level: float) -> float:
        """Where a mason stops near a level: on the course of block or brick that ends nearest, of two the lower; as told where nothing near is coursed."""
        ends = []
        if base := self.parts.get("base walls"):
            block = self.order.block
            made = courses.stack(base.top - base.bottom, block.high, block.joint)
            high = [block.high] * made.whole + [made.sawn] * (made.sawn > 0)
            high += [courses.HALF_HIGH] * made.half + [courses.SPLIT] * made.packing
            z = base.bottom
            for k, one in enumerate(high):
                z += (made.bed if k else made.first) + one
                ends.append(min(z, base.top) if z > base.top + IN / 16 else z)
        run: list[tuple[float, float, float, float]] = []
        for name in (
            *("firebox walls", "smoke chamber walls", "breast walls", "shoulder", "chimney walls"),
        ):
            part = self.parts.get(name)
            if part is None:
                continue
            unit = {
                "brick": COMMON,
                "block": self.order.block,
                "grouted block": self.order.block,
            }.get(part.material)
            if run and unit and run[-1][2:] == (unit.high, unit.joint):
                run[-1] = (run[-1][0], part.top, unit.high, unit.joint)
            elif unit:
                run.append((part.bottom, part.top, unit.high, unit.joint))
            else:
                run.append((0.0, 0.0, 0.0, 0.0))  # stone, concrete: what is over it starts anew
        for bottom, top, high, bed in run:
            if high:
                ends += courses.gauge(bottom, top, high, bed)
        near = min(ends, key=lambda z: (round(abs(z - level), 9), z), default=level + FOOT)
        return near if abs(near - level) < FOOT else level

    def between(self, name: str, low: float, high: float) -> float:
        """Volume of a part between two levels."""
        part = self.parts[name]
        volume = Solid(part.material, part.breaks, part.adds, part.holes).moments(low, high)[0]
        for sign, arch in part.arches:
            if low <= arch.spring and high >= arch.top:
                volume += sign * arch.volume()
            elif min(high, arch.top) > max(low, arch.spring):
                a, b = max(low, arch.spring), min(high, arch.top)
                if isinstance(arch, Under):
                    volume += sign * arch.volume(a, b)
                else:
                    thin = 2000
                    volume += (
                        sign
                        * sum(
                            flat(arch_plan(arch, a + (b - a) * (k + 0.5) / thin)).area
                            for k in range(thin)
                        )
                        * (b - a)
                        / thin
                    )
        return max(volume, 0.0)

    # -- what waits for what ----------------------------------------------------------------------------------
    def _sort(self) -> None:
        of = {
            name: [(n, p) for n, p in enumerate(self.pieces) if p.part == name]
            for name in self.parts
        }
        waits: list[set] = [set() for _ in self.pieces]
        for those in of.values():
            for (a, _), (b, _) in zip(those, those[1:], strict=False):
                waits[b].add(a)
        for inner, outer in self.nested:
            self._nest(inner, of[inner], of[outer], waits)
        within = {*self.nested, *((b, a) for a, b in self.nested)}
        for one, other in self.pairs:
            for lower, upper in ((one, other), (other, one)):
                if (lower, upper) not in self.nested and self.carries(lower, upper):
                    foot = self.parts[upper].bottom
                    under = [n for n, p in of[lower] if p.low + HAIR < foot <= p.high + HAIR]
                    waits[of[upper][0][0]].add(under[0] if under else of[lower][-1][0])
                elif (lower, upper) not in within and self.leans(upper, lower):
                    for m, up in of[upper]:
                        waits[m] |= {
                            n
                            for n, p in of[lower]
                            if min(up.high, p.high) - max(up.low, p.low) > HAIR
                        }
        self.waits = waits
        done: list[int] = []
        while len(done) < len(self.pieces):
            ready = [n for n in range(len(self.pieces)) if n not in done and waits[n] <= set(done)]
            done.append(
                min(
                    ready,
                    key=lambda n: (
                        self.pieces[n].part == "hearth extension",
                        self.pieces[n].floor,
                        self.pieces[n].low,
                        n,
                    ),
                )
            )
        self.turn = done

    def _nest(self, inner: str, ins: list, outs: list, waits: list[set]) -> None:
        """What is cast waits for its form; what is set waits for the course it stands in, and the rest goes round it."""
        cast = self.parts[inner].material in CAST
        for i, p in ins:
            if cast:
                waits[i] |= {o for o, q in outs if min(p.high, q.high) - max(p.low, q.low) > HAIR}
                continue
            level = p.low if inner in LAID else max(p.low, self.set_level(inner))
            below = [o for o, q in outs if q.high <= level + HAIR]
            waits[i] |= (
                set(below[-1:])
                if [q.low for o, q in outs if o in below[-1:] and q.low < p.high]
                else set()
            )
            for o, q in outs:
                if (
                    o not in below
                    and q.low < p.high
                    and min(p.high, q.high) - max(p.low, q.low) > HAIR
                ):
                    waits[o].add(i)

    # -- steps -------------------------------------------------------------------------------------------------
    def _group(self) -> None:
        groups: list[list[int]] = []
        for n in self.turn:
            piece, last = self.pieces[n], self.pieces[groups[-1][-1]] if groups else None
            if (
                last
                and piece.part in TOGETHER
                and last.part in TOGETHER
                and piece.floor == last.floor
            ):
                groups[-1].append(n)
            else:
                groups.append([n])
        at = {n: k for k, group in enumerate(groups, 1) for n in group}
        for k, group in enumerate(groups, 1):
            after = tuple(sorted({at[m] for n in group for m in self.waits[n]} - {k}))
            pieces = [self.pieces[n] for n in group]
            waits = []
            for p in pieces:
                of, days, start, holds = WAITS.get(p.part, ("-", 0, False, False))
                if (
                    of != "-"
                    and (of == "" or p.material in of.split())
                    and (start or p.number == p.of)
                ):
                    waits.append((p.part, days, start, holds))
            self._step(
                pieces,
                after,
                waits,
                [
                    (share, p.share)
                    for p in pieces
                    for share in self.order.shares
                    if share.part == p.part
                ],
            )
        face = [share for share in self.order.shares if share.part == "face"]
        walls = tuple(
            k
            for k, step in enumerate(self.steps, 1)
            if any(p.part in ("firebox walls", "smoke chamber walls") for p in step.pieces)
        )
        if face:
            self._step([], walls, [], [(share, 1.0) for share in face])
            walls = (*walls, len(self.steps))
        if shelf := [share for share in self.order.shares if share.part == "mantel"]:
            self._step([], walls, [], [(share, 1.0) for share in shelf])
        if plate := [share for share in self.order.shares if share.part == "hood"]:
            self._step([], walls, [], [(share, 1.0) for share in plate])

    def _step(
        self, pieces: list[Piece], after: tuple, waits: list, asked: list[tuple[Share, float]]
    ) -> None:
        goods: dict[str, list[float]] = {}
        for share, part in asked:
            sums = goods.setdefault(share.item, [0.0, 0.0, 0.0])
            for k, value in enumerate((share.quantity, share.volume, share.weight)):
                sums[k] += part * value
        hours = sum(self.hours(item, *sums) for item, sums in goods.items())
        if any(p.material == "parging" for p in pieces):
            hours += (
                goods["Refractory mortar"][1]
                / self.d.smoke_chamber.lining_thickness
                / FT**2
                / self.d.work.piece_pace
            )
        for p in pieces:  # centering and skewbacks; forms and finish
            first, head = p.number == 1, self.d.lintel.material
            hours += 4 if first and p.part == "arch" else 0
            if p.part == "lintel":
                hours += {"masonry arch": 4, "reinforced masonry": 2}.get(head, 0)
            if p.material == "concrete" and (formed := self.formed(p.part)):
                hours += p.share * max(formed / self.d.work.form_pace, 0.5)
            hours += (
                3 if first and p.part == "crown" and p.material in ("concrete", "mortar") else 0
            )
        mortar = sum(goods[item][1] for item in ("Mortar", "Crown mortar") if item in goods)
        number = max(math.ceil(hours / self.open_time - 1e-6), 1) if mortar > 0 else 0
        made = Step(
            pieces,
            after,
            goods,
            hours,
            mortar,
            goods.get("Refractory mortar", [0, 0.0])[1],
            number,
            mortar / number if number else 0.0,
            min((p.floor for p in pieces), default=0.0),
            waits,
        )
        free = self.steps[-1].end if self.steps else 0.0
        ready = [
            days + (self.steps[n - 1].start if start else self.steps[n - 1].end)
            for n in after
            for _, days, start, holds in self.steps[n - 1].waits
            if holds
        ]
        made.start = max([free, *ready])
        made.end, made.idle = made.start + hours / self.d.work.day, made.start - free
        self.steps.append(made)

    def mixed(self, mortar: float) -> dict[str, float]:
        """Sacks, bags and sand: 1:1:6 as USDA FB 1889 has it; ASTM C270's types (memory) by rule 38
        of NAVEDTRA 14043, with 94 lb of cement a cubic foot and 40 lb of lime.
        """
        yards = mortar / FT**3 / 27
        if self.d.work.mortar_mix == "1:1:6":
            feet = 27 * yards
            return {"cement": 3.5 * feet / 18, "lime": 2.6 * feet / 18, "sand": mortar}
        lime, sand = {"M": (1 / 4, 3.5), "S": (1 / 2, 4.5), "N": (1, 6), "O": (2, 9)}[
            self.d.work.mortar_mix.removeprefix("type ")
        ]
        cement = 38 * yards / (1 + lime + sand)
        return {"cement": cement, "lime": cement * lime * 40 / 50, "sand": cement * sand * FT**3}

    def formed(self, part: str) -> float:
        """Face of concrete that boards have to hold. [m2]"""
        s, d = self.s, self.d
        wide, deep = 2 * s.block[0], s.block[1]
        inside = (wide - 2 * d.base.block_width) * (deep - 2 * d.base.block_width)
        if part == "footing":
            out = d.base.footing_projection
            return 2 * (wide + deep + 4 * out) * d.base.footing_thickness
        if part == "hearth slab":
            under = inside if d.base.core == "hollow" and min(inside, wide) > 0 else 0.0
            return 2 * (wide + deep) * d.base.slab + under
        apron, front = 2 * (s.half + d.hearth.side), d.hearth.front
        if part == "hearth extension":
            return (apron + 2 * front) * d.hearth.thickness
        if part == "hearth extension bed":
            foot = s.apron - d.hearth.thickness - d.hearth.bed
            return (apron + 2 * front) * d.hearth.bed + (0.0 if foot > 0 else apron * front)
        if part == "transition":
            round_it = math.pi * s.flue.wide if s.flue.round else 2 * (s.flue.wide + s.flue.deep)
            return round_it * d.smoke_chamber.transition
        heights = {
            "firebox walls": s.throat - s.paving,
            "smoke chamber walls": s.flue_foot - s.throat,
        }
        if part in heights:
            return 2 * (wide + deep) * heights[part]
        stack = 4 * (s.stack[0] + s.stack[1])
        if part == "chimney walls":
            return stack * (s.crown_foot - s.shoulder_top)
        if part == "shoulder":
            return (2 * (wide + deep) + stack) / 2 * (s.shoulder_top - s.flue_foot)
        return 0.0

    def hours(self, item: str, quantity: float, volume: float, weight: float) -> float:
        """Of one mason, at the design's paces; mortar goes with what is laid in it."""
        pace, unit = (
            self.d.work,
            {
                "yd3": "pour",
                "80-lb bag": "pour",
                "block": "block",
                "piece": "piece",
                "ft2": "piece",
                "brick": "brick",
                "ton": "stone",
                "board foot": "stone",
                "ft3": "stone",
            },
        )
        from naive.order import SOLD

        how = unit.get(SOLD[item][0], "")
        if item in ("Mortar", "Refractory mortar"):
            return 0.0
        if how == "pour":
            return volume / pace.pour_pace / 3600
        if how == "stone":  # as the brick in its place, by old wall measure
            return volume * 22.5 / FT**3 / pace.brick_pace
        if (
            item == "Arch brick"
            or item == "Lintel brick"
            and self.d.lintel.material == "masonry arch"
        ):
            return quantity / pace.voussoir_pace
        if how == "brick":
            return quantity / (
                pace.firebrick_pace if "firebrick" in item.lower() else pace.brick_pace
            )
        return quantity / (pace.block_pace if how == "block" else pace.piece_pace)

    @property
    def open_time(self) -> float:
        """Of a batch: 2-1/2 hours, 2 over 100 F, or over 90 F in wind over 8 mph (TMS 602). [h]"""
        warm, windy = self.d.work.air, self.d.work.wind > 8 * 0.44704 * (1 + 1e-6)
        hot = 100 if not windy else 90
        return 2.0 if (warm - 273.15) * 1.8 + 32 > hot + 1e-6 else 2.5

    # -- lifting, NIOSH 94-110 ------------------------------------------------------------------------------------
    def allowed(self, deep: float, taken: float, put: float, grip: tuple[float, float]) -> float:
        """Weight for one person, all day long, the worse of both ends. [kg]"""
        ends = []
        travel = abs(put - taken)
        for height in (taken, put):
            reach = max(self.d.work.carry, (8 if height >= 10 * IN - 1e-9 else 10) * IN + deep / 2)
            if (
                reach > 25 * IN * (1 + 1e-9)
                or height > 70 * IN * (1 + 1e-9)
                or travel > 70 * IN * (1 + 1e-9)
            ):
                ends.append(0.0)
                continue
            ends.append(
                51
                * LB
                * 10
                * IN
                / max(reach, 10 * IN)
                * (1 - 0.0075 * abs(height / IN - 30))
                * (0.82 + 1.8 * IN / max(travel, 10 * IN))
                * self.often
                * grip[height > 30 * IN * (1 - 1e-9)]
            )
        return min(ends)

    @property
    def often(self) -> float:
        """Frequency multiplier of the long column of table 5, up to one lift a minute."""
        rate = max(self.d.work.lifts, 0.2)
        table = ((0.2, 0.85), (0.5, 0.81), (1.0, 0.75))
        (a, u), (b, v) = table[:2] if rate <= 0.5 else table[1:]
        return u + (v - u) * (rate - a) / (b - a)

    def lifts(self) -> list[Lift]:
        """Every heavy piece that is set, at its worst bed from its better floor."""
        from naive.order import SOLD

        found = []
        for number, step in enumerate(self.steps, 1):
            for item, (quantity, _, weight) in step.goods.items():
                if (
                    not (SOLD[item][0] in ("piece", "block") or item == "Hearth stone")
                    or not step.pieces
                    or quantity <= 1e-9
                ):
                    continue
                pieces = [
                    p
                    for p in step.pieces
                    if p.part not in TOGETHER or (p.part == "flue liner") == ("lue " in item)
                ]
                pieces = [p for p in pieces if p.part != "flue casing"]
                found.append(
                    min(
                        (self._lift(number, item, quantity, weight, p) for p in pieces),
                        key=lambda one: one.allowed,
                    )
                )
        order = ("not checked", "one person", "two people", "hoist")
        for one in found:  # a kind of piece has one answer: the most that any step asks
            one.verdict = max((o.verdict for o in found if o.item == one.item), key=order.index)
        return found

    def _lift(self, number: int, item: str, quantity: float, weight: float, p: Piece) -> Lift:
        work = self.d.work
        deep, tall = self._size(item, p)
        count = 1.0 if item == "Hearth stone" else quantity
        one = weight / count if weight > 0 else None
        beds = max(math.ceil((p.high - p.low) / tall - 0.02), 1) if tall > 0 else 1
        floors = [p.floor] + (
            [p.floor - work.lift_height] if p.floor >= work.lift_height - 1e-9 else []
        )
        grip = (
            (0.95, 1.0)
            if "block" in item or item in ("Steel lintel", "Timber lintel")
            else (0.9, 0.9)
        )
        worst = None
        for k in range(beds):
            bed = p.low + k * (p.high - p.low) / beds
            best = max(
                (
                    self.allowed(deep, work.stack_height, max(bed - floor, 0.0) + tall / 2, grip),
                    bed >= floor,
                    bed,
                    floor,
                )
                for floor in floors
            )
            worst = best if worst is None else min(worst, best)
        allowed, _, bed, floor = worst
        height = max(bed - floor, 0.0) + tall / 2
        reach = max(work.carry, (8 if height >= 10 * IN - 1e-9 else 10) * IN + deep / 2)
        if one is None:
            verdict = "not checked"
        elif allowed == 0 or one > 80 / 3 * (1 + 1e-9):  # two thirds of 40 kg
            verdict = "hoist"
        else:  # over 20 kg nobody alone: HSE
            verdict = "one person" if one <= 20 * (1 + 1e-9) else "two people"
        return Lift(number, item, count, one, bed - floor, reach, allowed, verdict)

    def _size(self, item: str, p: Piece) -> tuple[float, float]:
        """How deep a piece is off the body, and how tall."""
        d, s = self.d, self.s
        if "lue " in item:
            return 2 * min(s.unit), d.flue.section_height
        if "block" in item:
            low = 3.625 if "Half" in item else 1.625 if "Packing" in item else None
            return d.base.block_width, d.base.block_height if low is None else low * IN
        if item in ("Firebox back section", "Firebox side section"):
            return d.firebox.lining_thickness, d.firebox.section_height
        if item == "Smoke chamber section":
            return d.smoke_chamber.lining_thickness, d.firebox.section_height
        part = self.parts[p.part]
        left, front, right, back = flat(part.adds((part.bottom + part.top) / 2)).bounds
        wide, deep = right - left, back - front
        if item == "Steel lintel":
            deep = min(d.lintel.level_leg, s.breast / d.lintel.angles)
        if item.endswith("lintel"):
            return deep, d.lintel.height
        if item == "Firebox floor section":
            return min(
                wide / math.ceil(wide / PIECE - 1e-9), deep / math.ceil(deep / PIECE - 1e-9)
            ), 0.0
        return min(wide, deep), 0.0

    # -- words ------------------------------------------------------------------------------------------------
    def name(self, step: Step) -> str:
        """What a step is called."""
        if not step.pieces:
            if "Metal hood" in step.goods:
                return "Metal hood"
            trim = any(item.startswith("Mantel") for item in step.goods)
            plaster = set(step.goods) == {"Face plaster"} and self.d.surround.face == "brick"
            face = "Plaster over the mantel" if plaster else f"Face in {self.d.surround.face}"
            return "Mantel and trim" if trim else face
        first = step.pieces[0]
        if first.part not in TOGETHER:
            told = first.part if first.of == 1 else f"{first.part} {first.number} of {first.of}"
            return told[0].upper() + told[1:]
        parts = [p.part for p in step.pieces]
        words = [
            word
            for word, of in (
                ("flue", "flue liner"),
                ("shoulder", "shoulder"),
                ("chimney", "chimney walls"),
            )
            if of in parts
        ]
        told = words[0] if len(words) == 1 else ", ".join(words[:-1]) + " and " + words[-1]
        return told.capitalize() + ("" if first.of == 1 else f", lift {first.number} of {first.of}")

    def last_flue(self) -> int:
        """Number of the step with the last section of flue."""
        return max(
            k
            for k, step in enumerate(self.steps, 1)
            if any(p.part.startswith("flue ") for p in step.pieces)
        )

    def holds(self, step: Step, number: int) -> list[str]:
        """Kinds of hold point, in turn; a course is levelled only where the work goes on no higher."""
        found = []
        if not step.pieces:
            return found
        last = step.pieces[-1]
        unfinished = last.part in ("chimney walls", "base walls") and last.number < last.of
        for part in dict.fromkeys(p.part for p in step.pieces):
            found += [kind for kind in HOLDS.get(part, ()) if not (unfinished and kind == "level")]
        return found + (["test"] if number == self.last_flue() else [])

    def cautions(self, step: Step, number: int) -> list[str]:
        """First words of every caution of a step."""
        from naive.order import SOLD

        if not step.pieces:
            stony = (
                *("Facing brick", "Face stone", "Face tile"),
                *("Mantel and trim, stone", "Mantel and trim, brick"),
            )
            shelf = any(item.startswith("Mantel") for item in step.goods)
            wet = "Mortar" in step.goods or "Face plaster" in step.goods
            told = ["Dust"] if any(item in step.goods for item in stony) else []
            told += ["Skin and eyes"] if wet else []
            told += ["Lifting"] * shelf + ["Fire: a hood"] * ("Metal hood" in step.goods)
            return told + ["Fire: nothing that burns in the face"]
        parts, grade = {p.part for p in step.pieces}, self.s.grade
        low, high = min(p.low for p in step.pieces), max(p.high for p in step.pieces)
        wet = any(p.material in CAST for p in step.pieces) or any(
            item in step.goods for item in ("Mortar", "Refractory mortar")
        )
        told = [
            ("Dust", any(SOLD[item][0] in ("brick", "block", "ton") for item in step.goods)),
            ("Skin and eyes", wet),
            (
                "Collapse: the pit",
                grade - low > 5 * FT and parts & {"footing", "base walls", "base core"},
            ),
            ("Collapse: the centering carries it", "arch" in parts),
            ("Collapse: props carry it", "lintel" in parts and "arch" not in parts),
            ("Collapse: its bearing", "lintel" in parts and not self.d.lintel.bearing),
            ("Collapse: green masonry", "chimney walls" in parts),
            ("Heights", high - grade > 6 * FT and min(p.floor for p in step.pieces) > 0),
            ("Fire: keep mortar", parts & set(TOGETHER)),
            ("CO and fire", number == self.last_flue()),
        ]
        told += [
            (f"Lifting: {one.item[:1].lower() + one.item[1:]}, {one.verdict}", True)
            for one in self.lifts()
            if one.step == number and one.verdict in ("two people", "hoist")
        ]
        return [words for words, so in told if so]

    def critical(self) -> list[str]:
        """Parts whose waits keep the hands idle: of those before an idle step, the one that ends last."""
        found = []
        for step in self.steps:
            if step.idle > 0:
                ends = [
                    (days + (self.steps[n - 1].start if start else self.steps[n - 1].end), part)
                    for n in step.after
                    for part, days, start, holds in self.steps[n - 1].waits
                    if holds
                ]
                found.append(max(ends)[1])
        return list(dict.fromkeys(found))

    def weather(self, kelvin: float) -> str:
        """Band of the table of cold- and hot-weather work, TMS 602 as restated for the trade. [degF]"""
        warm, windy = (kelvin - 273.15) * 1.8 + 32, self.d.work.wind > 8 * 0.44704
        if warm > (90 if windy else 100) + 1e-6:
            return "hot"
        for name, start, included in (
            ("mild", 40, True),
            ("cold", 32, True),
            ("freezing", 25, True),
            ("hard frost", 20, False),
        ):
            if warm > start + 1e-6 or included and warm > start - 1e-6:
                return name
        return "deep frost"

    def staging(self) -> list[tuple[float, float, list[int], bool]]:
        """Floors that have to be put up: level, height over the ground or the footing, the steps, and whether they want rails."""
        found: dict[float, list[int]] = {}
        for number, step in enumerate(self.steps, 1):
            if step.floor > 0 or self.s.footing_top < step.floor < 0:
                found.setdefault(step.floor, []).append(number)
        return [
            (
                level,
                level - (self.s.grade if level > 0 else self.s.footing_top),
                used,
                level - (self.s.grade if level > 0 else self.s.footing_top) > 10 * FT,
            )
            for level, used in found.items()
        ]
