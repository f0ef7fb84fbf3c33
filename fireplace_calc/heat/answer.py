"""All that is worked out of the heat of one geometry, for the page, the papers and the findings."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeVar

from fireplace_calc.base.tables.heat import WallFire, wall_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.grading import COARSE
from fireplace_calc.heat.conduction.mesh import NotWorked
from fireplace_calc.heat.cuts.behind import WallRun, burn, one_fire
from fireplace_calc.heat.cuts.below_hearth import UnderHearth, hearth_layers, under_hearth
from fireplace_calc.heat.cuts.from_geometry import wall_plan, with_lining
from fireplace_calc.heat.cuts.round_flue import BesideFlue, all_flue_fires
from fireplace_calc.heat.growing_parts import Growing, LinerPull, liner_pull, what_grows
from fireplace_calc.heat.trim_flux import TrimFlux, keep_off, on_trim

EVENING, DAY = 8.0, 24.0
"""A long evening, and a fire kept up for a day. [h]"""
MORE = 4 * INCH
"""More masonry, to see what it is worth. [m]"""
MORE_AIR = 20.0
"""Heat that a gap open to the room carries, to see what it is worth. [W/(m2 K)]"""

Made = TypeVar("Made")


@dataclass(frozen=True, slots=True)
class Worth:
    """By how much something changes the hottest wood behind the middle fire of an evening.

    Attributes
    ----------
    what : str
        ``masonry``, ``open``, ``closed`` or ``lining``: so much more masonry, the gap open to the
        room's air, the gap closed, the lining of ``other_lining``.
    kelvin : float
        Under nought where it is cooler. [K]
    """

    what: str
    kelvin: float


@dataclass(frozen=True, slots=True)
class HeatAnswer:
    """The heat of one geometry. What cannot be worked is None, and ``why_not`` says why.

    Attributes
    ----------
    evening, day : tuple of WallRun or None
        The kind, the middle and the hard fire.
    worth : tuple of Worth
    flue : tuple of BesideFlue or None
    hearth : tuple of UnderHearth or None
        Wood left against the slab under the fire: kind, middle and hard.
    trim : tuple of TrimFlux
    keep_off : float or None
        Distance before the opening at which the hard fire's flux is the least that lit wood; None
        where it is over twenty feet. [m]
    grows : tuple of Growing
        Lining and liner; the liner only where the flue is worked.
    pull : LinerPull or None
        In a liner whose soot burns.
    why_not : tuple of str
    """

    evening: tuple[WallRun, ...] | None
    day: tuple[WallRun, ...] | None = None
    worth: tuple[Worth, ...] = ()
    flue: tuple[BesideFlue, ...] | None = None
    hearth: tuple[UnderHearth, ...] | None = None
    trim: tuple[TrimFlux, ...] = ()
    keep_off: float | None = None
    grows: tuple[Growing, ...] = ()
    pull: LinerPull | None = None
    why_not: tuple[str, ...] = ()


def evening_alone(geometry: Geometry) -> HeatAnswer:
    """What a long evening does behind the firebox, and nothing else: for papers, which ask no more
    and do not wait for the rest.

    Parameters
    ----------
    geometry : Geometry
    """
    try:
        return HeatAnswer(_behind(geometry, EVENING))
    except NotWorked as why:
        return HeatAnswer(None, why_not=(str(why),))


def heat_answer(geometry: Geometry) -> HeatAnswer:
    """Work all of it out; a second or so.

    Parameters
    ----------
    geometry : Geometry
    """
    first = geometry.once(evening_alone)
    evening, why_not = first.evening, [*first.why_not]

    def tried(work: Callable[[], Made]) -> Made | None:
        try:
            return work()
        except NotWorked as why:
            if str(why) not in why_not:
                why_not.append(str(why))
            return None

    day = tried(lambda: geometry.once(_day))
    worth = tried(lambda: geometry.once(_worth)) or ()
    flue = tried(lambda: geometry.once(_flue))
    hearth = tried(lambda: geometry.once(_below))
    hard = wall_fires()["hard"]
    return HeatAnswer(
        evening,
        day,
        worth,
        flue,
        hearth,
        on_trim(geometry),
        keep_off(geometry, hard),
        what_grows(geometry, flue),
        liner_pull(flue),
        tuple(why_not),
    )


@lru_cache(maxsize=32)
def fires_behind(hours: float) -> tuple[Callable[[Geometry], WallRun], ...]:
    """The kind, the middle and the hard fire, each to be asked of a geometry once.

    Parameters
    ----------
    hours : float
        How long each burns. [h]
    """

    def fire_behind(fire: WallFire) -> Callable[[Geometry], WallRun]:
        return lambda geometry: one_fire(geometry, fire, hours)

    return tuple(map(fire_behind, wall_fires().values()))


def heat_steps(geometry: Geometry, hours: float = EVENING) -> Iterator[tuple[int, int, str]]:
    """The same piece by piece, for a page that goes on listening: ``heat_answer`` then has but to
    put them together.

    Parameters
    ----------
    geometry : Geometry
    hours : float
        How long the three fires burn that are worked first. [h]

    Yields
    ------
    int, int, str
        How many pieces are worked, of how many, and the name of the next.
    """
    burns = dict.fromkeys((hours, EVENING, DAY))
    pieces: list[tuple[str, Callable[[Geometry], object]]] = [
        (f"wood after {long:.0f} h of fire", one) for long in burns for one in fires_behind(long)
    ]
    pieces += PIECES.items()
    for n, (name, work) in enumerate(pieces):
        yield n, len(pieces), name
        with suppress(NotWorked):
            geometry.once(work)


def other_lining(geometry: Geometry) -> str:
    """The material that the lining might be of instead."""
    return "refractory" if geometry.facing_fire.material == "firebrick" else "firebrick"


def _room(geometry: Geometry) -> float:
    """[C]"""
    return geometry.design.house.indoor - 273.15


def _day(geometry: Geometry) -> tuple[WallRun, ...]:
    return _behind(geometry, DAY)


def _behind(geometry: Geometry, hours: float) -> tuple[WallRun, ...]:
    return tuple(geometry.once(one) for one in fires_behind(hours))


def _flue(geometry: Geometry) -> tuple[BesideFlue, ...]:
    return tuple(all_flue_fires(geometry))


def _below(geometry: Geometry) -> tuple[UnderHearth, ...]:
    layers, room = hearth_layers(geometry), _room(geometry)
    return tuple(under_hearth(layers, fire, EVENING, room) for fire in wall_fires().values())


def _worth(geometry: Geometry) -> tuple[Worth, ...]:
    """Against the middle fire, with the same coarse cells; nothing of masonry that stands free."""
    evening = geometry.once(evening_alone).evening
    if not evening or not evening[0].framed:
        return ()
    fire, lining = wall_fires()["middle"], geometry.facing_fire.material

    def highest(masonry: float = 0.0, air: float | None = None, relined: bool = False) -> float:
        plan = wall_plan(geometry, fire, masonry)
        plan = replace(plan, air=plan.air if air is None else air)
        if relined:
            plan = with_lining(plan, lining, other_lining(geometry))
        return burn(plan, fire, EVENING, _room(geometry), cells=COARSE).highest

    base = highest()
    return (
        Worth("masonry", highest(masonry=MORE) - base),
        Worth("open", highest(air=MORE_AIR) - base),
        Worth("closed", highest(air=0.0) - base),
        Worth("lining", highest(relined=True) - base),
    )


PIECES: dict[str, Callable[[Geometry], object]] = {
    "what is worth how much": _worth,
    "wood beside the flue": _flue,
    "wood under the hearth": _below,
}
"""What takes long besides, each worked once of a geometry."""
