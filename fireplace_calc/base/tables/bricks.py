"""Building brick by the trade's names: sizes, and the joint each is made for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import Source, rows, source_of


@dataclass(frozen=True, slots=True)
class BrickSize:
    """One brick: ``length``, ``height`` and bed ``width``, the head ``joint`` it is made for, and
    the height of a ``course`` [m]; and its source.

    Three courses to 8 in leave a bed a little wider than the 3/8 in head joint.
    """

    length: float
    height: float
    width: float
    joint: float
    course: float
    source: Source


@lru_cache(maxsize=1)
def brick_sizes() -> dict[str, BrickSize]:
    """Actual sizes by name.

    Returns
    -------
    dict of str to BrickSize
        Lengths. [m]

    Examples
    --------
    >>> round(3 * brick_sizes()["modular"].course / 0.0254, 9)  # [in]
    8.0
    """
    made = {}
    for r in rows("brick_sizes.csv"):
        length, height, width, joint, rise = (
            to_si(r[side], "length", side)
            for side in ("length", "height", "width", "joint", "rise")
        )
        course = rise / int(r["courses"])
        made[r["name"]] = BrickSize(length, height, width, joint, course, source_of(r))
    return made
