"""One way for the smoke: what lets it out, what shuts it, in a sentence with pieces and measure."""

from __future__ import annotations

from collections.abc import Iterable

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.geometry.assembled.assembly import Placed
from fireplace_calc.geometry.assembled.closing.leaks import (
    bed_leaks,
    box_of,
    lift_leaks,
    rim,
    second_way,
    way_out,
)
from fireplace_calc.geometry.assembled.passage import bed_ways, passage
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.assembled.wording import Misfit, small
from fireplace_calc.pieces.records import SetPiece

SHARES = (0.5, 0.0, 1.0)
"""Of a lift's height, where its way is looked for. A pocket from above or below is no way through;
what goes through is clear half way up. [-]
"""


def way_faults(
    here: tuple[Placed, ...], below: tuple[Placed, ...], over: int | None
) -> Iterable[Misfit]:
    """One hole for the smoke in every lift, and in every bed over the lintel, its rim wide enough.

    Parameters
    ----------
    here, below : tuple of Placed
        Of a lift, and of the one under it.
    over : int or None
        1 where the lift stands over the lintel's, 0 where it is that, -1 under it; none without a
        lintel. [-]

    Yields
    ------
    Misfit
    """
    kinds = tuple(a.piece for a in here)
    if all(p.role == "base plate" for p in kinds):
        return
    if over != 0:
        ways = {share: len(passage(kinds, share)) for share in SHARES}
        lost = next((share for share in SHARES if not ways[share]), None)
        if lost is not None:
            yield from _no_way(here, below, lost)
        elif ways[0.5] > 1:
            yield _two_ways(here, ways[0.5])
    if over == 1:
        yield from _bed(here, below)


def _no_way(here: tuple[Placed, ...], below: tuple[Placed, ...], share: float) -> Iterable[Misfit]:
    leaks = lift_leaks(_kinds(here), _kinds(below), share)
    if not leaks:
        yield _shut(here, below)
    for leak in leaks:
        beside, under = _names(here, leak.over), _names(below, leak.under)
        if leak.front and len(beside) < 2:
            first = min(extent(p.piece)[2] for p in here)
            fore = tuple(
                p.name
                for p in here
                if p.name not in beside and extent(p.piece)[2] < first + CONTACT_GAP
            )
            says = (
                f"{_and(beside)} stands {small(leak.width)} behind the front of {_and(fore)}: the"
                " smoke gets out there."
            )
            yield Misfit((*beside, *fore), "way", leak.width, says)
            continue
        where = f" over {_and(under)}" if under else ""
        leave = "leave" if len(beside) > 1 else "leaves"
        says = f"{_and(beside)} {leave} {small(leak.width)} open{where}: the smoke gets out there."
        yield Misfit((*beside, *under), "way", leak.width, says)


def _shut(here: tuple[Placed, ...], below: tuple[Placed, ...]) -> Misfit:
    names, under = _names(here), _names(below)
    ring = way_out(_kinds(below)) if below else ()
    if not ring:
        leave = "leave" if len(names) > 1 else "leaves"
        return Misfit(names, "way", 0.0, f"{_and(names)} {leave} the smoke no way through.")
    wide, deep = box_of(ring)
    says = (
        f"{_and(names)} {'shut' if len(names) > 1 else 'shuts'} the smoke's way, {small(wide)} by"
        f" {small(deep)} where it comes out of {_and(under)}."
    )
    return Misfit((*names, *under), "way", min(wide, deep), says)


def _two_ways(here: tuple[Placed, ...], ways: int) -> Misfit:
    beside, wide, deep = second_way(_kinds(here))
    names = _names(here, beside)
    says = (
        f"{_and(names)} {'do' if len(names) > 1 else 'does'} not close round the smoke: {ways} ways"
        f" through, one of them {small(wide)} by {small(deep)}."
    )
    return Misfit(names, "way", min(wide, deep), says)


def _bed(here: tuple[Placed, ...], below: tuple[Placed, ...]) -> Iterable[Misfit]:
    kinds, under = _kinds(here), _kinds(below)
    names, feet = _names(here), _names(below)
    ways = bed_ways(kinds, under)
    if ways == 1:
        least = min(p.bearing for p in kinds)
        if (narrow := rim(kinds, under, least)) is not None:
            by = least - narrow
            says = (
                f"The bed of {_and(names)} on {_and(feet)} is {small(narrow)} wide round the smoke"
                f" where it is narrowest, {small(by)} less than it needs."
            )
            yield Misfit((*names, *feet), "bed", by, says)
    elif ways:
        says = (
            f"The bed of {_and(names)} on {_and(feet)} does not close round the smoke: {ways} ways"
            " through."
        )
        yield Misfit((*names, *feet), "bed", 0.0, says)
    else:
        for leak in bed_leaks(kinds, under):
            over, carry = _names(here, leak.over) or names, _names(below, leak.under) or feet
            says = (
                f"The bed of {_and(over)} on {_and(carry)} does not close round the smoke:"
                f" {small(leak.width)} is open."
            )
            yield Misfit((*over, *carry), "bed", leak.width, says)


def _kinds(placed: tuple[Placed, ...]) -> tuple[SetPiece, ...]:
    return tuple(p.piece for p in placed)


def _names(placed: tuple[Placed, ...], which: tuple[int, ...] | None = None) -> tuple[str, ...]:
    """Of all of them, or of some by their number."""
    return tuple(p.name for k, p in enumerate(placed) if which is None or k in which)


def _and(names: tuple[str, ...]) -> str:
    return " and ".join(names)
