"""Outlines and voids of a fireplace from a set: inside the lining, through the facing, round it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property, lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.arches import ArchVoid
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.passage import bed_way, lift_section, passage
from fireplace_calc.geometry.from_set.frame_of_set import SetFrame
from fireplace_calc.geometry.from_set.set_up import SetUp, set_up
from fireplace_calc.geometry.from_set.tapering import alike, between
from fireplace_calc.geometry.laid_parts import Builder
from fireplace_calc.geometry.outlines import centered
from fireplace_calc.geometry.polygons import Polygon, overlap
from fireplace_calc.geometry.solids import Loft, Solid, prism
from fireplace_calc.pieces.records import ArchCut, SetPiece, Tapered
from fireplace_calc.pieces.roles import FIREBOX


class SetOutlines(Builder):
    """The shapes of one design with a set; every part is one, less what stands in it. [m]"""

    frame: SetFrame

    def __init__(self, design: Design) -> None:
        super().__init__(design)
        self.up: SetUp = set_up(design)
        self.has_lining = design.piece_set is not None and design.piece_set.lining is not None

    def trapezoid(self, front: float, back: float, spread: float = 0.0) -> Polygon:
        """Level outline between the sides: square through the facing, splayed behind. [m]

        Parameters
        ----------
        front, back : float
            As y. [m]
        spread : float
            How far each side is pushed out, along x. [m]
        """
        f = self.frame
        a, b = f.half_at(front) + spread, f.half_at(back) + spread
        if not front < f.set_back < back:
            return ((-a, front), (a, front), (b, back), (-b, back))
        c, y = f.half_width + spread, f.set_back
        return ((-a, front), (a, front), (c, y), (b, back), (-b, back), (-c, y))

    @cached_property
    def throat_lift(self) -> int:
        """Number of the lift that the throat is in; a set without one has been refused. [-]"""
        placed, roles = self.up.assembly.placed, ("throat front", "throat back")
        return next(p.lift for p in placed if p.piece.role in roles)

    @property
    def throat_foot(self) -> float:
        """Underside of the throat's pieces: what no mortar fills of the bed under them is the
        fire's. [m]
        """
        return self._foot(self.throat_lift)

    def under_throat(self) -> list[Solid]:
        """What is clear over the lining, or over the walls, in the bed under the throat."""
        ring = self._through_bed(self.throat_lift, self.frame.throat, self.throat_foot)
        return [ring] if ring.top > ring.bottom else []

    def _foot(self, number: int) -> float:
        return _foot(self.up.assembly, number) + self.frame.plate_bottom

    @cached_property
    def lining_hole(self) -> list[Solid]:
        """What the pieces leave round the fire, from the base plates to the throat."""
        f, made = self.frame, self.up.assembly
        return list(_lining_hole(made, self.throat_lift, f.set_back, f.plate_bottom, f.slab_top))

    def inside(self) -> list[Solid]:
        """What is clear inside the lining, or the pieces, and behind the front of the pieces."""
        f = self.frame
        if not self.has_lining:
            return list(self.lining_hole)
        lintel_back = f.breast
        low = [prism(f.hearth, f.spring, self.trapezoid(f.set_back, f.depth))]
        return [*low, prism(f.spring, f.throat, self.trapezoid(lintel_back, f.depth))]

    def reveal(self) -> list[Solid]:
        """What is clear through the facing."""
        f = self.frame
        if f.set_back <= 0:
            return []
        plan = centered(f.half_width, 0.0, f.set_back)
        made: list[Solid] = [prism(f.hearth, f.spring, plan)]
        if f.spring < f.opening_top:
            span = 2 * f.half_width
            made.append(ArchVoid(f.spring, f.opening_top - f.spring, span, f.set_back, 0.0))
        return made

    def under_lintel(self) -> list[Solid]:
        """What is clear under an arched lintel, over its springing."""
        for one in self.up.assembly.placed:
            for cut in one.piece.cuts:
                if one.piece.role == "lintel" and isinstance(cut, ArchCut):
                    level = one.level + self.frame.plate_bottom
                    return [
                        ArchVoid(level, cut.rise, cut.span, cut.depth, 0.0, self.frame.set_back)
                    ]
        return []

    @cached_property
    def floor(self) -> Loft:
        """Firebrick paving between the sides, and through the facing."""
        return prism(self.frame.slab_top, self.frame.hearth, self.trapezoid(0.0, self.frame.depth))

    @cached_property
    def cavity(self) -> list[Solid]:
        """What the masonry round the set leaves for it, up to the flue."""
        f, gap = self.frame, self.design.pieces.gap
        return list(_cavity(self.up.assembly, f.set_back, gap, f.plate_bottom, f.flue_start))

    @cached_property
    def flue_foot(self) -> float:
        """Where the bore begins: over the first bed, unless that is filled as a nest. [m]"""
        made = self.up.assembly
        first = next(p for p in made.placed if p.piece.role == "flue")
        below = made.by_lift[first.lift - 1] if first.lift else ()
        if first.piece.plain and below and all(p.piece.plain for p in below):
            return self.frame.flue_start
        return first.level + self.frame.plate_bottom

    def chamber_air(self) -> Iterable[Loft]:
        """What is clear from the throat to the flue, lift by lift and through every bed."""
        f, made = self.frame, self.up.assembly
        last = next(n for n, here in enumerate(made.by_lift) if here[0].piece.role == "flue") - 1
        for number in range(self.throat_lift, last + 1):
            here = made.by_lift[number]
            pieces = tuple(p.piece for p in here)
            low, high = self._foot(number), here[0].top + f.plate_bottom
            yield from _clear_in(pieces, f.set_back, low, high)
            if number < last:
                yield self._through_bed(number + 1, high, self._foot(number + 1))

    def _through_bed(self, number: int, low: float, high: float) -> Loft:
        ring = _bed_way(self.up.assembly, number)
        return prism(low, high, _back(ring, self.frame.set_back))

    def flue_bed(self) -> Iterable[Loft]:
        """What is clear through the bed under the flue, where it is not filled as a nest."""
        f = self.frame
        if self.flue_foot > f.flue_start:
            number = next(p.lift for p in self.up.assembly.placed if p.piece.role == "flue")
            yield self._through_bed(number, f.flue_start, self.flue_foot)


def _foot(made: Assembly, number: int) -> float:
    """Level of the lintel's underside in its own lift, of the lowest in any other. [m]"""
    here = made.by_lift[number]
    return min([p.level for p in here if p.piece.role == "lintel"] or [p.level for p in here])


def _bed_way(made: Assembly, number: int) -> Polygon:
    """What the bed under a lift leaves clear. [m]"""
    pieces, below = (tuple(p.piece for p in made.by_lift[n]) for n in (number, number - 1))
    return bed_way(pieces, below) or passage(below, 1.0)[0]


def _inside_of(here: tuple[Placed, ...]) -> Polygon:
    """What a lift leaves round the fire: half way up, but over the arch of a lintel."""
    share = 1.0 if any(p.piece.role == "lintel" for p in here) else 0.5
    return passage(tuple(p.piece for p in here), share)[0]


@lru_cache(maxsize=64)
def _lining_hole(
    made: Assembly, throat: int, set_back: float, start: float, slab_top: float
) -> tuple[Solid, ...]:
    """From the base plates to the lift that the throat is in. Kept while the set stands."""
    rings: list[tuple[float, Polygon]] = []
    for number in range(1, throat):
        here = made.by_lift[number]
        if any(p.piece.role in FIREBOX for p in here):
            rings.append((_foot(made, number) + start, _bed_way(made, number)))
            rings.append((here[0].top + start, _inside_of(here)))
    found, low = list[Solid](), slab_top
    for k, (high, ring) in enumerate(rings):
        if k + 1 < len(rings) and alike(ring, rings[k + 1][1]):
            continue
        found.append(prism(low, high, _back(ring, set_back)))
        low = high
    return tuple(found)


@lru_cache(maxsize=64)
def _cavity(
    assembly: Assembly, set_back: float, gap: float, start: float, flue_start: float
) -> tuple[Loft, ...]:
    """Lift by lift a box that leans in with its pieces, and the gap for movement round it."""

    def round_them(pieces: tuple[SetPiece, ...], share: float) -> Polygon:
        x0, y0, x1, y1 = lift_section(pieces, share).bounds()
        return centered(max(-x0, x1) + gap, max(set_back + y0 - gap, 0.0), set_back + y1 + gap)

    made, low = list[Loft](), start
    for number, here in enumerate(assembly.by_lift):
        if any(p.piece.role == "flue" for p in here):
            break
        high = assembly.tops[number] + start
        pieces, foot = tuple(p.piece for p in here), here[0].level + start
        below, above = round_them(pieces, 0.0), round_them(pieces, 1.0)
        made += [prism(low, foot, below), Loft(foot, high, below, above)]
        low = high
    if low < flue_start:
        made.append(prism(low, flue_start, made[-1].upper))
    return tuple(made)


@lru_cache(maxsize=256)
def _clear_in(
    pieces: tuple[SetPiece, ...], set_back: float, low: float, high: float
) -> tuple[Loft, ...]:
    """The smoke's way through a lift, and troughs in its top beside that. Kept by content: a flue
    that grows changes none of it.
    """
    lower, middle, upper = (_back(passage(pieces, share)[0], set_back) for share in (0.0, 0.5, 1.0))
    found, way = [between(lower, middle, upper, low, high)], passage(pieces, 0.5)[0]
    for piece in pieces:
        for hollow in piece.cuts:
            if not isinstance(hollow, Tapered) or hollow.bottom < ROUNDING:
                continue
            if hollow.top < piece.height - ROUNDING or overlap(hollow.upper, way):
                continue
            foot = high - piece.height + hollow.bottom
            lower, upper = _back(hollow.lower, set_back), _back(hollow.upper, set_back)
            found.append(Loft(foot, high, lower, upper))
    return tuple(found)


def _back(ring: Polygon, set_back: float) -> Polygon:
    return tuple((x, y + set_back) for x, y in ring)
