"""Curing and first fires: site practice to be changed at will, and no code. What the maker of the
refractory says goes first.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.design.work import Work

PRACTICE = (
    "Site practice, no code: no published figure was found. The data of the refractory mortar and"
    " sections in hand take precedence. Curing wants water, the first fires drive it out: keep it"
    " damp first, then let it dry."
)


@dataclass(frozen=True, slots=True)
class FirstFire:
    """One of the first fires.

    Attributes
    ----------
    number : int
        From the first. [-]
    share : float
        Of a full load of wood. [-]
    day : int
        Earliest, from the end of the work. [d]
    note : str
        What to look for.
    """

    number: int
    share: float
    day: int
    note: str


@dataclass(frozen=True, slots=True)
class Curing:
    """From the last mortar to the first full fire.

    Attributes
    ----------
    days : int
        That count. [d]
    cold : int
        Days below 40 F, which do not count. [d]
    fires : tuple of Fire
        One a day, each after the last has gone cold.
    note, confidence : str
        What kind of figures these are.
    """

    days: int
    cold: int
    fires: tuple[FirstFire, ...]
    note: str = PRACTICE
    confidence: str = "derived"

    @property
    def calendar(self) -> int:
        """Days to wait before the first fire, cold ones counted in. [d]"""
        return self.days + self.cold


@lru_cache(maxsize=1)
def _fires() -> tuple[tuple[int, float, str], ...]:
    return tuple(
        (int(r["fire"]), float(r["share_of_full"]), r["note"]) for r in rows("first_fires.csv")
    )


def curing(work: Work) -> Curing:
    """When the first fires may be lit.

    Parameters
    ----------
    work : Work
        Days of curing, and how many were too cold. [d]

    Returns
    -------
    Curing
        With one fire a day from then on. [d]

    Examples
    --------
    >>> [f.share for f in curing(Work()).fires], curing(Work()).fires[0].day
    ([0.1, 0.2, 0.35, 0.6, 1.0], 28)
    """
    start = work.cure + work.cold_days
    return Curing(
        work.cure,
        work.cold_days,
        tuple(FirstFire(n, share, start + n - 1, note) for n, share, note in _fires()),
    )


def cold_days(means: list[float], limit: float = (40 - 32) / 1.8 + 273.15) -> int:
    """How many days do not count.

    Parameters
    ----------
    means : list of float
        Mean temperature of each day. [K]
    limit : float
        Days below it do not count. [K]

    Returns
    -------
    int
        Of them. [d]

    Examples
    --------
    >>> cold_days([280.0, 275.0, 277.6])
    1
    """
    return sum(mean < limit - 1e-9 for mean in means)
