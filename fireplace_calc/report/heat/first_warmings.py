"""The first fires of a new fireplace: how hot each makes the lining, how far that grows, and why no
fire is bigger sooner.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.build.curing_schedule import curing
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.movement import grown

BOILING, BOUND = 100.0, 250.0
"""Where free water boils, and over which the water bound in a cement bond leaves in earnest: the
latter from memory. [C]
"""


@dataclass(frozen=True, slots=True)
class FirstWarming:
    """One of the first fires and what it does to the lining.

    Attributes
    ----------
    number : int
    share : float
        Of a full fire. [-]
    face : float
        [C]
    growth : float
        Of the lining along its longer side. [m]
    note : str
        What to do.
    """

    number: int
    share: float
    face: float
    growth: float
    note: str

    @property
    def reason(self) -> str:
        """Why it is no bigger: what the water in joints and castings does."""
        if self.face < BOILING:
            return "under boiling: free water leaves without steam"
        if self.face < BOUND:
            return "over boiling: steam needs hours to find its way out"
        return "bound water leaves; lining and joints take up their movement"


def warmings_of(geometry: Geometry) -> tuple[FirstWarming, ...]:
    """How hot each of the first fires makes the lining, and how much that grows.

    A share of a full fire counts as that share of the hard fire's rise: engineering judgement.
    """
    f, full = geometry.frame, wall_fires()["hard"].face
    room = geometry.design.house.indoor - 273.15
    length = max(f.back_width, f.throat - f.hearth)
    made = []
    for fire in curing(geometry.design.work).fires:
        face = room + fire.share * (full - room)
        made.append(
            FirstWarming(fire.number, fire.share, face, grown(length, face, room), fire.note)
        )
    return tuple(made)
