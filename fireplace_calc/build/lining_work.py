"""What the firebrick lining of a set takes: brick, mortar and time, as the list has them."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.shares import share_out

PARTS_OF_LINING = ("firebox lining", "firebox floor")
"""What the lining's step lays: sides and back, and the paving."""


@dataclass(frozen=True, slots=True)
class LiningWork:
    """Of the whole lining.

    Attributes
    ----------
    whole, cut : int
        Firebrick laid whole, and those that cut pieces come out of. [-]
    mortar : float
        Refractory, in the joints. [m3]
    seconds : float
        Of one mason, cuts counted in. [s]
    """

    whole: int
    cut: int
    mortar: float
    seconds: float


def count_lining(geometry: Geometry) -> LiningWork | None:
    """Count what the lining takes.

    Parameters
    ----------
    geometry : Geometry
        Of a design with a set.

    Returns
    -------
    LiningWork or None
        Nothing where there is no firebrick in it.
    """
    shares = [s for s in share_out(geometry) if s.part in PARTS_OF_LINING]
    count = {
        kind: round(sum(s.count for s in shares if s.item == f"Firebrick, {kind}"))
        for kind in ("whole", "cut")
    }
    if not any(count.values()):
        return None
    pace = geometry.design.work.firebrick_pace
    return LiningWork(
        count["whole"],
        count["cut"],
        sum(s.volume for s in shares if s.item == "Refractory mortar"),
        sum(count.values()) / pace * 3600,
    )
