"""What a remedy is: changes that mend something, with what they cost, weigh and take to do."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.mending.lever_settings import Changes, Setting, Value
from fireplace_calc.explore.mending.levers import Lever
from fireplace_calc.rules import Finding

ORDERS = ("cost", "work")
"""What may come first among remedies that mend as much."""


@dataclass(frozen=True)
class Remedy:
    """One change, or two or three together, that mends something and breaks nothing.

    Attributes
    ----------
    settings : tuple of Setting
        What is changed, each of another lever.
    mends, stays : tuple of str
        Keys of what was to be mended: what is, and what is not.
    findings : tuple of Finding
        All that was to be mended, as it stands after the change.
    warns : tuple of Finding
        What falls short then and did not by the book of another country than the job's.
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
    now, then : Assessment
        Before and after, in full.
    rank : int
        From 1.
    """

    settings: tuple[Setting, ...]
    mends: tuple[str, ...]
    stays: tuple[str, ...]
    findings: tuple[Finding, ...]
    warns: tuple[Finding, ...]
    counts: dict[str, dict[str, int]]
    cost: float | None
    currency: str
    invented: bool
    weight: float
    now: Assessment = field(repr=False, compare=False)
    then: Assessment = field(repr=False, compare=False)
    rank: int = 0

    @property
    def lever(self) -> Lever:
        """The first lever that is moved."""
        return self.settings[0].lever

    @property
    def before(self) -> Value:
        """Where the first lever was. [SI]"""
        return self.settings[0].before

    @property
    def after(self) -> Value:
        """Where the first lever goes. [SI]"""
        return self.settings[0].after

    @property
    def steps(self) -> int:
        """How many steps of the first lever; one less does not mend the same. [-]"""
        return self.settings[0].steps

    @property
    def piece(self) -> str:
        """Of the trim, where the first lever moves one piece."""
        return self.settings[0].piece

    @property
    def change(self) -> Changes:
        """For ``change``."""
        return {key: value for one in self.settings for key, value in one.change.items()}

    @property
    def relative(self) -> float:
        """The changes over what was there before, added up. [-]"""
        return sum(one.relative for one in self.settings)

    @cached_property
    def hours(self) -> float:
        """Work of all hands over what it took before; worked out when first asked for. [h]"""
        return self.then.work.hours - self.now.work.hours

    def sentence(self, units: str = FEET_INCHES) -> str:
        """What to do, with where it was and where it goes, in the reader's units."""
        return " ".join(
            _sentence(one.lever, one.piece, one.before, one.after, units) for one in self.settings
        )


def ranked(found: Iterable[Remedy], by: str = "cost") -> tuple[Remedy, ...]:
    """Remedies, best first, with their rank.

    Parameters
    ----------
    found : iterable of Remedy
    by : str
        What counts where as much is mended, one of ``ORDERS``: the cheapest, or the least work.

    Returns
    -------
    tuple of Remedy

    Raises
    ------
    InputError
        When there is no such order.
    """
    if by not in ORDERS:
        raise InputError(
            f"Order is {by!r}, but there are only {', '.join(ORDERS)}.",
            "Order",
            ", ".join(ORDERS),
            by,
        )

    def place(r: Remedy) -> tuple[float, ...]:
        dear = (r.hours,) if by == "work" else (r.cost is None, r.cost or 0.0)
        return bool(r.warns), -len(r.mends), *dear, r.relative

    inorder = sorted(found, key=place)
    return tuple(replace(one, rank=k) for k, one in enumerate(inorder, 1))


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
