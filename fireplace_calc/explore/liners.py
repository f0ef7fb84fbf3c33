"""Every standard liner against the greatest raise that goes with it at one chimney height."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.explore.raising import HighestRaise, RaiseStop, highest_raise
from fireplace_calc.explore.stepwise import Steps, finished
from fireplace_calc.rules import PACKS, Finding


@dataclass(frozen=True, slots=True)
class LinerTable:
    """What ``liner_raises`` gives.

    Attributes
    ----------
    rows : tuple of LinerRaise
        Smallest net area first.
    aside : tuple of Finding
        What falls short without any raise whatever the liner, and on draft and loads with the
        liner as it is: it counts against none.
    """

    rows: tuple[LinerRaise, ...]
    aside: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class LinerRaise:
    """One liner in a design, everything else as it is.

    Attributes
    ----------
    shape, size : str
        For ``flue.shape`` and ``flue.size``.
    net_area : float
        Inside. [m2]
    taken : bool
        Whether it is the design's own.
    raised : float or None
        How far the firebox can be raised with it; nothing where something falls short with this
        liner without any raise, or it cannot be drawn. [m]
    stop : RaiseStop or None
        What stops it there; nothing where the range ends first.
    short : tuple of Finding
        What falls short with this liner without any raise, but for what is set aside.
    refusal : str
        Why it cannot be drawn, or empty.
    """

    shape: str
    size: str
    net_area: float
    taken: bool
    raised: float | None
    stop: RaiseStop | None = None
    short: tuple[Finding, ...] = ()
    refusal: str = ""


def looking_at_liners(design: Design, pack: str = DEFAULT_PACK) -> Steps[LinerTable]:
    """``liner_raises`` liner by liner, for whoever shows how far it is.

    Parameters
    ----------
    design : Design
    pack : str
        Both as for ``liner_raises``.

    Returns
    -------
    generator
        How many liners are done, of how many, and the next. [-]
    """
    liners = [
        *(("round", row.size, row.net_area) for row in round_liners().values()),
        *(("rectangular", row.size, row.net_area) for row in rectangular_liners().values()),
    ]
    liners.sort(key=lambda one: one[2])
    reached: list[HighestRaise | str] = []
    for n, (shape, size, _) in enumerate(liners):
        yield n, len(liners), f"{shape} {size}"
        try:
            other = change(design, {"flue.shape": shape, "flue.size": size})
            reached.append(highest_raise(other, pack))
        except InputError as refused:
            reached.append(str(refused))
    as_it_is = highest_raise(design, pack)
    code = PACKS[pack].keys
    shared = [{f.key for f in one.broken} for one in reached if not isinstance(one, str)]
    aside = {f.key for f in as_it_is.broken if f.key not in code or all(f.key in s for s in shared)}
    own = design.flue.shape, design.flue.size.strip().lower()
    return LinerTable(
        tuple(
            _row(shape, size, area, (shape, size) == own, one, aside)
            for (shape, size, area), one in zip(liners, reached, strict=True)
        ),
        tuple(f for f in as_it_is.broken if f.key in aside),
    )


def _row(
    shape: str, size: str, area: float, taken: bool, one: HighestRaise | str, aside: Container[str]
) -> LinerRaise:
    """One line of the table."""
    if isinstance(one, str):
        return LinerRaise(shape, size, area, taken, None, refusal=one)
    short = tuple(f for f in one.broken if f.key not in aside)
    if short:
        return LinerRaise(shape, size, area, taken, None, short=short)
    return LinerRaise(shape, size, area, taken, one.raised, one.stop)


def liner_raises(design: Design, pack: str = DEFAULT_PACK) -> LinerTable:
    """How far the firebox can be raised with every standard liner of both shapes, chimney height
    and all else as they are.

    Parameters
    ----------
    design : Design
    pack : str
        Code to hold it against; what another country's table says stops nothing.

    Returns
    -------
    LinerTable

    Raises
    ------
    InputError
        When there is no such book.
    """
    return finished(looking_at_liners(design, pack))
