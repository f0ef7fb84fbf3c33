"""The set of pieces that a fireplace is assembled from, and what is built round it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length, text
from fireplace_calc.design.opening import AngleLegs

ANGLE = "steel angle"


@dataclass(frozen=True, slots=True, eq=False, repr=False)
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
    facing_head: str | None = choice(
        "What carries the facing over the opening",
        None,
        (ANGLE, "something else"),
        "The lintel of the set stands behind the gap and carries none of it; an angle is drawn.",
    )
    angle_height: float = length(
        "Upright leg of the facing angle", "3-1/2 in", "1 in", "8 in", "Behind the facing."
    )
    angle_leg: float = length(
        "Level leg of the facing angle",
        "3-1/2 in",
        "1 in",
        "8 in",
        "Under the facing; no longer than the facing is thick.",
    )
    angle_thickness: float = length(
        "Thickness of the facing angle", "1/4 in", "1/8 in", "1 in", "Of its steel."
    )
    angle_bearing: float | None = length(
        "Bearing of the facing angle", "6 in", "0 in", "24 in", "At each end.", optional=True
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

    def facing_angle(self, head: str) -> AngleLegs | None:
        """Steel angle under the facing, as far as there is one. [m]

        Parameters
        ----------
        head : str
            Of the opening; under a curved one an angle carries nothing.

        Returns
        -------
        AngleLegs or None
        """
        if self.facing_head != ANGLE or head != "straight" or self.facing <= 0:
            return None
        level = min(self.angle_leg, self.facing)
        return AngleLegs(self.facing, level, min(self.angle_thickness, self.angle_height, level))
