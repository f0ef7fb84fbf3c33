"""A map of what limits where: firebox extension against flue sections."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.draft import face_velocity, trace_flow_path
from fireplace_calc.explore.sketches import Sketch, sketch, try_change
from fireplace_calc.rules import PACKS, Pack
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

FREE, RATIO, CODE, VELOCITY, STABILITY, IMPOSSIBLE = range(6)
LIMITS = (
    "nothing here stops it",
    "flue too small for the opening (code)",
    "another clause of the code",
    "face velocity under 0.8 ft/s (sizing mode)",
    "chimney taller than 4.5 times its width (UK figure)",
    "cannot be drawn so",
)
"""What a field of the map can be stopped by, in the order it is looked for."""
RATIO_RULES = ("FLU-10", "FLU-11", "FLU-12", "FLU-13", "FLU-14")


@dataclass(frozen=True, slots=True)
class LimitMap:
    """What stops a design where.

    Attributes
    ----------
    extensions : array, shape (n,)
        Of the firebox. [m]
    sections : array of int, shape (m,)
        Of the flue. [-]
    limit : array of int, shape (n, m)
        Place in ``LIMITS`` of what stops the design with that extension and those sections. [-]
    here : tuple of float and int
        The design's own extension [m] and sections [-].
    everywhere : tuple of str
        Keys of clauses that fall short wherever the sliders are: they color nothing.
    """

    extensions: Array
    sections: IntArray
    limit: IntArray
    here: tuple[float, int]
    everywhere: tuple[str, ...]


def limit_map(
    design: Design,
    pack: str = DEFAULT_PACK,
    extensions: ArrayLike | None = None,
    sections: ArrayLike | None = None,
) -> LimitMap:
    """Which raise goes with which chimney, and what stops the others.

    Parameters
    ----------
    design : Design
    pack : str
        Code to check every field of the map against.
    extensions : array, optional
        Firebox extensions; the whole workable range in steps of two inches when left out. [m]
    sections : array, optional
        Counts of flue sections; all workable ones when left out. [-]

    Returns
    -------
    LimitMap
    """
    raises = np.asarray(np.arange(13) * 2 * INCH if extensions is None else extensions, np.float64)
    counts = np.arange(4, 41) if sections is None else np.asarray(sections, int)
    book = PACKS[pack]
    grid = [
        [
            try_change(design, {"opening.extension": f"{float(e)!r} m", "flue.sections": int(n)})
            for n in counts
        ]
        for e in raises
    ]
    drawn = [
        (i, k, sketch(d)) for i, row in enumerate(grid) for k, d in enumerate(row) if d is not None
    ]
    facts = [gather_facts(one) for *_, one in drawn]
    corners = [
        {f.key for f in book.check(facts[n]) if f.verdict == FALLS_SHORT}
        for n in {0, len(counts) - 1, len(drawn) // 2, len(drawn) - len(counts), len(drawn) - 1}
        if 0 <= n < len(drawn)
    ]
    everywhere = set.intersection(*corners)
    moving_keys = set.union(*corners) - everywhere
    limit = np.full((len(raises), len(counts)), IMPOSSIBLE)
    for (i, k, one), known in zip(drawn, facts, strict=True):
        limit[i, k] = _stopped(one, known, book, moving_keys)
    return LimitMap(
        raises,
        counts,
        limit,
        (design.opening.extension, design.flue.sections),
        tuple(sorted(everywhere)),
    )


def _stopped(drawn: Sketch, facts: Facts, book: Pack, moving: set[str]) -> int:
    """The first thing that stops one field of the map."""
    broken = (
        {f.key for f in book.check(facts, moving) if f.verdict == FALLS_SHORT} if moving else set()
    )
    if broken:
        return RATIO if broken & set(RATIO_RULES) else CODE
    path = trace_flow_path(drawn)
    speed = face_velocity(
        path.opening_area,
        path.flue_area,
        path.diameter,
        path.height,
        path.length,
        path.inlet,
        path.other,
    )
    if float(speed) < coefficient("face velocity"):
        return VELOCITY
    return STABILITY if _slenderness(drawn, facts) > coefficient("stack slenderness") else FREE


def _slenderness(drawn: Sketch, facts: Facts) -> float:
    """Height over the highest roof contact against the least width there. [-]"""
    least = 2 * min(drawn.frame.stack_half, drawn.frame.stack_depth)
    return facts.chimney_top_above_highest_roof_contact / least
