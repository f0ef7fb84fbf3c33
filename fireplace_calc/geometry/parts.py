"""A part is a named solid of one material; a geometry is the parts, the air between them, and the
stack of levels.

A part is what its ``adds`` hold less what its ``cuts`` take away; cuts lie inside adds and never
overlap, so volumes add and subtract exactly.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Any, TypeVar, cast

from fireplace_calc.design.records import Design
from fireplace_calc.geometry.arches import ArchRing
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.polygons import Point, Polygon
from fireplace_calc.geometry.solids import Solid, level_cuts, spans

Made = TypeVar("Made")


@dataclass(frozen=True, slots=True)
class Part:
    """A named solid of one material; its ``volume`` is what it adds less what it cuts. [m3]

    ``aside`` are those of its solids that stand beside the section on the first flue's center line.
    """

    name: str
    material: str
    adds: tuple[Solid, ...]
    cuts: tuple[Solid, ...] = ()
    volume: float = 0.0
    aside: tuple[Solid, ...] = ()

    def plan(self, z: float) -> tuple[list[Polygon], list[Polygon]]:
        """Level cut at ``z``: polygons of the part, and the holes in them. [m]"""
        return (
            [p for s in self.adds for p in level_cuts(s, z)],
            [p for s in self.cuts for p in level_cuts(s, z)],
        )

    def section(self) -> list[Polygon]:
        """Upright cut on the center line, front to back: polygons of ``(y, z)``. [m]

        Between two levels where nothing bends the cut is made of straight-sided pieces; pieces that
        meet are joined. Kept, since several views show it and most parts stay when a slider moves.
        """
        return list(_sections(self))

    def _cut_upright(self) -> list[Polygon]:
        adds, cuts = self._crossed(self.adds), self._crossed(self.cuts)
        levels = sorted({z for s in adds + cuts for z in _bends(s)})
        # A polygon grows upward as two chains of points, front and back. At each level those whose
        # ends meet the next piece go on; the others are finished.
        open_sides: list[tuple[list[Point], list[Point]]] = []
        done: list[tuple[list[Point], list[Point]]] = []
        for low, high in pairwise(levels):
            here = [s for s in adds if _from(s) <= low and s.top >= high]
            gone = [s for s in cuts if _from(s) <= low and s.top >= high]
            starts, ends = _gaps(here, gone, low), _gaps(here, gone, high)
            if len(starts) != len(ends):  # a piece begins or ends between: nothing stands there
                starts = ends = []
            running = []
            for (a, b), (c, d) in zip(starts, ends, strict=True):
                if b - a < 1e-9 and d - c < 1e-9:
                    continue
                met = next(
                    (s for s in open_sides if s[0][-1] == (a, low) and s[1][-1] == (b, low)), None
                )
                if met is None:
                    met = ([(a, low)], [(b, low)])
                    done.append(met)
                met[0].append((c, high))
                met[1].append((d, high))
                running.append(met)
            open_sides = running
        return [tuple(front + back[::-1]) for front, back in done]

    def _crossed(self, solids: tuple[Solid, ...]) -> tuple[Solid, ...]:
        """Those that the section crosses."""
        return tuple(s for s in solids if s not in self.aside) if self.aside else solids

    def holding(self, volume: float) -> Part:
        """So much of the same part. [m3]"""
        return Part(self.name, self.material, self.adds, self.cuts, volume, self.aside)

    @property
    def bottom(self) -> float:
        """Lowest level. [m]"""
        return min(s.bottom for s in self.adds)

    @property
    def top(self) -> float:
        """Highest level. [m]"""
        return max(s.top for s in self.adds)


@lru_cache(maxsize=256)
def _sections(part: Part) -> tuple[Polygon, ...]:
    return tuple(part._cut_upright())


def _from(solid: Solid) -> float:
    """Where a solid begins on the center line: an arch ring only at its crown."""
    return solid.spring + solid.rise if isinstance(solid, ArchRing) else solid.bottom


def _bends(solid: Solid) -> tuple[float, ...]:
    return (
        (solid.bottom, solid.spring + solid.rise, solid.top)
        if isinstance(solid, ArchRing)
        else (solid.bottom, solid.top)
    )


def _gaps(adds: list[Solid], cuts: list[Solid], z: float) -> list[tuple[float, float]]:
    """What is solid along the center line at ``z``, front to back, as pairs of y."""
    found = sorted(span for s in adds for span in spans(s, z))
    for hole in (span for s in cuts for span in spans(s, z)):
        found = [
            piece
            for a, b in found
            for piece in ((a, min(b, hole[0])), (max(a, hole[1]), b))
            if piece[1] >= piece[0] - 1e-9
        ]
    return found


def part(
    name: str,
    material: str,
    adds: Iterable[Solid],
    cuts: Iterable[Solid] = (),
    aside: Iterable[Solid] = (),
) -> Part:
    """Make a part and sum its volume once; ``aside`` are cuts beside the section line."""
    adds, aside = _with_height(adds), _with_height(aside)
    cuts = _with_height(cuts) + aside
    volume = sum([s.volume for s in adds]) - sum([s.volume for s in cuts])
    return Part(name, material, adds, cuts, volume, aside)


def _with_height(solids: Iterable[Solid]) -> tuple[Solid, ...]:
    return tuple([s for s in solids if s.top - s.bottom > 1e-12])


def beside(name: str, material: str, adds: Iterable[Solid], cuts: Iterable[Solid] = ()) -> Part:
    """Make a part that stands beside the section line as a whole."""
    made = part(name, material, adds, cuts)
    return replace(made, aside=made.adds + made.cuts)


@dataclass(frozen=True)
class Geometry:
    """Levels, parts, and what is air between them.

    Attributes
    ----------
    design : Design
    frame : Frame
        Every level and line.
    parts : tuple of Part
        In order from the footing up.
    air : callable
        Gives the voids.
    whole : callable
        Gives the whole as one solid.
    """

    design: Design
    frame: Frame
    parts: tuple[Part, ...]
    air: Callable[[], Iterable[Part]] = field(repr=False, compare=False)
    whole: Callable[[], Part] = field(repr=False, compare=False)

    @cached_property
    def outer(self) -> Part:
        """The whole as one solid, voids filled; built when first asked for."""
        return self.whole()

    @cached_property
    def voids(self) -> tuple[Part, ...]:
        """Firebox, smoke chamber, flue and the gap round it, as air; built when first asked for."""
        return tuple(self.air())

    @cached_property
    def by_name(self) -> dict[str, Part]:
        """Parts and voids by name: asks for the voids to be built."""
        return self.parts_by_name | {p.name: p for p in self.voids}

    @cached_property
    def parts_by_name(self) -> dict[str, Part]:
        """What is built, by name."""
        return {p.name: p for p in self.parts}

    @cached_property
    def _known(self) -> dict[Callable[..., Any], Any]:
        return {}

    def once(self, work: Callable[[Geometry], Made]) -> Made:
        """What a function makes of this geometry, which it is asked for only once."""
        if work not in self._known:
            self._known[work] = work(self)
        return cast("Made", self._known[work])

    @property
    def facing_fire(self) -> Part:
        """What faces the fire: the lining, or the pieces of a set that has none."""
        return self.parts_by_name.get("firebox lining") or self.parts_by_name["firebox walls"]

    @property
    def under_fire(self) -> Part:
        """What the fire is laid on: the paving, or the base plates of a set that has none."""
        return self.parts_by_name.get("firebox floor") or self.parts_by_name["base plates"]

    @cached_property
    def levels(self) -> dict[str, float]:
        """Level of everything that has a name on the drawing, bottom to top. [m]"""
        f = self.frame
        named = {
            "footing bottom": f.footing_bottom,
            "footing top": f.footing_top,
            "grade": f.grade,
            "floor": 0.0,
            "hearth extension": f.extension_top,
            "hearth": f.hearth,
            "back bend": f.back_bend,
            "opening top": f.opening_top,
            "throat": f.throat,
            "smoke chamber top": f.taper_top,
            "flue start": f.flue_start,
            "shoulder top": f.shoulder_top,
            "roof contact": f.uphill_contact,
            "ridge": self.design.roof.ridge_level,
            "crown": f.crown_top,
            "flue top": f.liner_top,
        }
        if f.hood > 0:
            named["hood"] = f.clear_top
        if f.spring < f.opening_top:
            named["spring line"] = f.spring
        return dict(sorted(named.items(), key=lambda item: item[1]))
