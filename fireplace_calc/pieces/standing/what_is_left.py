"""What is left to do on a job and what went wrong, as one says it. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from fireplace_calc.pieces.joints.joint_plan import JointPlan
from fireplace_calc.pieces.joints.story_pole import joint_words
from fireplace_calc.pieces.joints.tape import tape_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel

COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True, slots=True)
class LostLevel:
    """A wanted level that what stands has put out of reach.

    Attributes
    ----------
    wanted : WantedLevel
    off : float
        How much higher than wanted it stands, or will at best. [m]
    stands : bool
        Whether it was measured; else it is still to come.
    lift_off : str
        The highest lift from which on the joints still reach it, when that and all above is lifted
        off and set again.
    below : str
        What that lift is then set on.
    """

    wanted: WantedLevel
    off: float
    stands: bool
    lift_off: str
    below: str


@dataclass(frozen=True, slots=True)
class Replan:
    """What to do next.

    Attributes
    ----------
    measured : str
        The last lift that stands and was measured; empty before the first.
    level : float
        Of its top, or of the start. [m]
    plan : JointPlan or None
        For the lifts above; nothing when all of them stand.
    lost : tuple of LostLevel
    doubts : tuple of str
        Measured rises that no joint of the range can give, and wanted tops that nobody measured.
    units : str
    """

    measured: str
    level: float
    plan: JointPlan | None
    lost: tuple[LostLevel, ...]
    doubts: tuple[str, ...]
    units: str

    @property
    def next_beds(self) -> str:
        """The beds that come next, and the next top."""
        if self.plan is None:
            return "All lifts stand."
        joints = [
            joint_words(one.joints(rise), self.units, self.plan.tick)
            for one, rise in zip(self.plan.chain, self.plan.rounded_rises, strict=True)
        ]
        runs = [(words, len(list(run))) for words, run in groupby(joints)]
        words, count = runs[0]
        said = f"Next {'bed' if count == 1 else f'{_counted(count)} beds'} {words}" if words else ""
        if words and len(runs) > 1 and runs[1][0]:
            said += f", then {_counted(runs[1][1])} {runs[1][0]}"
        top = tape_text(self.plan.tops[0], self.units, self.plan.tick)
        return f"{said}{'. ' if said else ''}Top of {self.plan.chain[0].name} at {top}."

    @property
    def sentences(self) -> tuple[str, ...]:
        """All that is to be said, in the reader's units."""
        unmet = self.plan.unmet if self.plan else ()
        return (
            *(lost_words(one, self.units) for one in self.lost),
            *unmet,
            *self.doubts,
            self.next_beds,
        )


def lost_words(lost: LostLevel, units: str) -> str:
    """A lost level and what can still be done, as one says it on site.

    Parameters
    ----------
    lost : LostLevel
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    str
    """
    w = lost.wanted
    off = f"{tape_text(abs(lost.off), units)} {'high' if lost.off > 0 else 'low'}"
    now = f"stands {off}" if lost.stands else f"can come no nearer than {off}"
    return (
        f"The top of {w.lift} {now}: {tape_text(w.level, units)} is wanted. No joint above cures "
        f"that. Lift off {lost.lift_off} again, with all that stands on it, while its mortar is "
        f"soft. Scrape the faces clean and bed it fresh on {lost.below}. Set mortar is cut, not "
        "pried."
    )


def _counted(count: int) -> str:
    return COUNTS[count] if count < len(COUNTS) else str(count)
