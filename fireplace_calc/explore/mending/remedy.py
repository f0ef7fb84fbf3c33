"""What a remedy is: one change that mends something, with what it costs and weighs."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.mending.lever_settings import Changes, Value
from fireplace_calc.explore.mending.levers import Lever
from fireplace_calc.rules import Finding


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that mends something and breaks nothing.

    Attributes
    ----------
    lever : Lever
    change : dict
        For ``change``.
    before, after : object
        Where the lever was and where it goes, a number in SI or a word. [SI]
    steps : int
        How many of the lever's steps; one less does not mend the same. [-]
    mends, stays : tuple of str
        Keys of what was to be mended: what is, and what is not.
    findings : tuple of Finding
        All that was to be mended, as it stands after the change.
    counts : dict
        Of each kind (code, draft, structure) how many findings have which verdict after the change.
        [-]
    cost : float or None
        Of the materials, over what they cost before, in the list's currency; unknown where the
        order does not hold all of it. [-]
    currency : str
    invented : bool
        Whether a price behind it is an invented example.
    weight : float
        Over what the whole weighed before. [kg]
    relative : float
        The change over what was there before. [-]
    piece : str
        Of the trim, where it is one piece.
    rank : int
        From 1.
    """

    lever: Lever
    change: Changes
    before: Value
    after: Value
    steps: int
    mends: tuple[str, ...]
    stays: tuple[str, ...]
    findings: tuple[Finding, ...]
    counts: dict[str, dict[str, int]]
    cost: float | None
    currency: str
    invented: bool
    weight: float
    relative: float
    piece: str
    rank: int = 0

    def sentence(self, units: str = FEET_INCHES) -> str:
        """What to do, with where it was and where it goes, in the reader's units."""
        return _sentence(self.lever, self.piece, self.before, self.after, units)


@dataclass(frozen=True, slots=True)
class RejectedRemedy:
    """The least step of a usual change that would mend something and break something else, and so
    is no remedy.

    Attributes
    ----------
    lever : Lever
    change : dict
        For ``change``.
    before, after : object
        Where the lever was and where it would go, a number in SI or a word. [SI]
    mends : tuple of str
        Keys of what it would mend.
    breaks : tuple of Finding
        What would fall short then, or become a question, that is in order now.
    """

    lever: Lever
    change: Changes
    before: Value
    after: Value
    mends: tuple[str, ...]
    breaks: tuple[Finding, ...]

    def sentence(self, units: str = FEET_INCHES) -> str:
        """What comes to mind, with where it was and where it would go, in the reader's units."""
        return _sentence(self.lever, "", self.before, self.after, units)


def _sentence(lever: Lever, piece: str, before: Value, after: Value, units: str) -> str:
    spec = all_inputs().get(lever.key)
    kind = "length" if spec is None else spec.kind
    was, now = (
        str(v) if isinstance(v, (str, bool)) else show(v, kind, units) for v in (before, after)
    )
    what = f"{lever.instruction} {piece}".strip()
    return f"{what}." if isinstance(after, bool) else f"{what}: {was} to {now}."
