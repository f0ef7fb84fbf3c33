"""What a set offers of the inputs that are chosen from its own steps: its widths, raises, heads and
counts of flue pieces.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from fireplace_calc.design.records import Design
from fireplace_calc.editing.sets.deciding import SNAPPED
from fireplace_calc.pieces.choice import flues_of, heads_of
from fireplace_calc.pieces.records import PieceSet

Offers = Mapping[str, tuple[float, ...] | tuple[str, ...]]


def offers(design: Design) -> Offers:
    """Every value that a design's set offers of an input, the other choices as they stand.

    Parameters
    ----------
    design : Design

    Returns
    -------
    mapping
        By dotted key, in rising order, in SI; words of the head. Empty without a set.
    """
    if design.piece_set is None:
        return {}
    from fireplace_calc.geometry.from_set.set_up import take

    choice = take(design)
    return _offered(design.piece_set, choice.width, choice.head)


@lru_cache(maxsize=64)
def _offered(made: PieceSet, width: int, head: str) -> Offers:
    from fireplace_calc.geometry.from_set.set_up import raises_of, width_of

    widths = {width_of(made, number, head) for number in range(len(made.widths))}
    least, most = flues_of(made)
    found = (
        tuple(sorted(widths)),
        tuple(sorted(set(raises_of(made, width, head)))),
        heads_of(made) or (head,),
        tuple(range(least, most + 1)),
    )
    return dict(zip(SNAPPED, found, strict=True))
