"""What is held to while building: hold points, waits and cautions, read from ``data/`` where they
can be changed.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import rows


@dataclass(frozen=True, slots=True)
class Hold:
    """Something to be right before work goes on, and of what kind: level, plumb, square, slope,
    fit, cure, test, inspection.
    """

    kind: str
    what: str
    source: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Wait:
    """Time that a part takes by itself.

    Attributes
    ----------
    part, what : str
        Which, and what happens.
    days : float
        At 40 F or warmer; longer in the cold. [d]
    counts_from : str
        ``end`` of the part, or ``start`` of each of its stretches.
    holds_up : bool
        Whether what rests on it has to wait; else it runs beside the work.
    source, confidence : str
        Where it is from.
    """

    part: str
    what: str
    days: float
    counts_from: str
    holds_up: bool
    source: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning, its figure in the unit it is known by, and where it is from."""

    topic: str
    what: str
    number: float | None
    unit: str
    source: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Dust:
    """A task that raises silica, what holds it down, and the mask that is wanted up to 4 h a day
    and over.
    """

    task: str
    control: str
    mask_short: str
    mask_long: str
    source: str
    confidence: str


@lru_cache(maxsize=1)
def _holds() -> dict[str, tuple[Hold, ...]]:
    found: dict[str, list[Hold]] = {}
    for r in rows("build_holds.csv"):
        found.setdefault(r["part"], []).append(
            Hold(r["kind"], r["what"], r["source"], r["confidence"])
        )
    return {part: tuple(holds) for part, holds in found.items()}


@lru_cache(maxsize=1)
def _waits() -> tuple[tuple[str, Wait], ...]:
    return tuple(
        (
            r["material"],
            Wait(
                r["part"],
                r["what"],
                float(r["days"]),
                r["counts_from"],
                r["holds_up"] == "yes",
                r["source"],
                r["confidence"],
            ),
        )
        for r in rows("build_waits.csv")
    )


def holds_of(part: str) -> tuple[Hold, ...]:
    """Hold points of a part.

    Parameters
    ----------
    part : str
        Its name, or ``last flue`` for the last section.

    Returns
    -------
    tuple of Hold
        None for a part that needs no more than care.
    """
    return _holds().get(part, ())


def waits_of(part: str, material: str) -> tuple[Wait, ...]:
    """Waits after a part.

    Parameters
    ----------
    part, material : str
        Its name, and what it is made of.

    Returns
    -------
    tuple of Wait
        In days. [d]
    """
    return tuple(wait for of, wait in _waits() if wait.part == part and of in ("", material))


@lru_cache(maxsize=1)
def cautions() -> tuple[Caution, ...]:
    """Fire, carbon monoxide, collapse, lifting, silica, heights, and whom to defer to; figures as
    their rule prints them.
    """
    return tuple(
        Caution(
            r["topic"],
            r["what"],
            float(r["number"]) if r["number"] else None,
            r["unit"],
            r["source"],
            r["confidence"],
        )
        for r in rows("safety.csv")
    )


@lru_cache(maxsize=1)
def dust() -> tuple[Dust, ...]:
    """Tasks that raise silica, with their controls; masks by assigned protection factor."""
    return tuple(
        Dust(
            r["task"],
            r["control"],
            r["protection_factor_to_4h"],
            r["protection_factor_over_4h"],
            r["source"],
            r["confidence"],
        )
        for r in rows("silica_work.csv")
    )
