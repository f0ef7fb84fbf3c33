"""What grows in the heat of one geometry: lining of the firebox, liner of the flue, the gaps that
they ask for, and the pull in a liner whose soot burns.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fireplace_calc.base.tables.heat import growths, wall_fires
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.cuts.round_flue import BesideFlue
from fireplace_calc.heat.movement import gap_for, grown, through_stress


@dataclass(frozen=True, slots=True)
class Growing:
    """Something that grows in one direction.

    Attributes
    ----------
    what : str
        ``lining across``, ``lining up``, ``liner up`` or ``liner across``.
    fire : str
        Key of the fire in firebox or flue.
    length : float
        [m]
    hot : float
        Mean through it; of a lining its hot face, which is more. [C]
    growth : float
        [m]
    asks : float
        Gap at each free end: half at either side, all of it at the top. Masonry round it is still
        as warm as the room. [m]
    left : float or None
        Gap that is drawn there; None where none is. [m]
    """

    what: str
    fire: str
    length: float
    hot: float
    growth: float
    asks: float
    left: float | None

    @property
    def enough(self) -> bool | None:
        """Whether the gap that is drawn lets it grow; None where none is drawn."""
        return None if self.left is None else self.left >= self.asks


@dataclass(frozen=True, slots=True)
class LinerPull:
    """A liner whose soot burns: hotter inside than outside.

    Attributes
    ----------
    difference : float
        Inner face over outer, at its most. [K]
    low, middle, high : float
        Pull in the outer face, by the ends of stiffness and growth. [Pa]
    weak, strong : float
        What fired clay stands in bending. [Pa]
    """

    difference: float
    low: float
    middle: float
    high: float
    weak: float
    strong: float

    @property
    def likely(self) -> bool:
        """Whether the middle pull is more than the middle strength."""
        return self.middle > growths()["fireclay strength in bending"].value * 1e6


def what_grows(geometry: Geometry, flue: Sequence[BesideFlue] | None) -> tuple[Growing, ...]:
    """Lining in a hard fire; liner in a hard fire and in one of soot.

    Parameters
    ----------
    geometry : Geometry
    flue : sequence of BesideFlue or None
        Every fire in that geometry's flue; the liner is left out when None.
    """
    return (*_lining(geometry), *_liner(geometry, flue or ()))


def liner_pull(flue: Sequence[BesideFlue] | None) -> LinerPull | None:
    """Of the fire of soot among all fires in a flue; None where they were not worked."""
    for run in flue or ():
        if run.fire.key == "soot":
            difference = float(run.liner.max())
            strength = growths()["fireclay strength in bending"]
            ends = 1e6 * strength.low, 1e6 * strength.high
            return LinerPull(difference, *through_stress(difference), *ends)
    return None


def _lining(geometry: Geometry) -> Iterator[Growing]:
    f, hard = geometry.frame, wall_fires()["hard"]
    room = geometry.design.house.indoor - 273.15
    left = geometry.design.pieces.gap if geometry.design.piece_set else None
    for what, length, ends in (
        ("lining across", f.back_width, 2),
        ("lining up", f.throat - f.hearth, 1),
    ):
        grows, asks = grown(length, hard.face, room), gap_for(length / ends, hard.face, room, room)
        yield Growing(what, hard.key, length, hard.face, grows, asks, left if ends == 2 else None)


def _liner(geometry: Geometry, flue: Sequence[BesideFlue]) -> Iterator[Growing]:
    f, room = geometry.frame, geometry.design.house.indoor - 273.15
    for run in flue:
        if run.fire.key not in ("hard", "soot"):
            continue
        hot = float(run.middle.max())
        for what, length, ends, left in (
            ("liner up", f.liner_top - f.flue_start, 1, None),
            ("liner across", 2 * f.unit_half, 2, f.cavity_half - f.unit_half),
        ):
            grows, asks = grown(length, hot, room), gap_for(length / ends, hot, room, room)
            yield Growing(what, run.fire.key, length, hot, grows, asks, left)
