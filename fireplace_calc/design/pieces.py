"""The set of pieces that a fireplace is assembled from, and what is built round it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import length, text


@dataclass(frozen=True, slots=True)
class TakenSet(Record):
    """Which set, and what stands round it. The set's own lengths are read off its pieces."""

    set: str = text(
        "Set of pieces",
        "",
        "Name of a set file; left empty, the fireplace is built without one.",
    )
    facing: float = length(
        "Facing before the pieces",
        "3-5/8 in",
        "0 in",
        "16 in",
        "Brick or stone in front of the set, to the opening plane.",
    )
    around: float = length(
        "Masonry round the pieces",
        "3-5/8 in",
        "0 in",
        "24 in",
        "Beside and behind the set, up to the flue.",
    )
    gap: float = length(
        "Gap for movement",
        "1/2 in",
        "0 in",
        "4 in",
        "Between the set and what stands round it; filled with wool or left open, never mortared.",
    )
    opening_wanted: float | None = length(
        "Opening height wanted",
        None,
        "12 in",
        "84 in",
        "The joints under the lintel are planned for it; unknown takes them as the set wants them.",
    )
    top_wanted: float | None = length(
        "Flue height wanted",
        None,
        "36 in",
        "800 in",
        "Hearth to the top of the last flue piece; the joints over the lintel are planned for it.",
    )
