"""What is the least change that mends it: every lever by its smallest steps, each answer assessed
in full.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.levers import LEVERS, Lever, Try, tries
from fireplace_calc.explore.reach import by_kind, every_finding
from fireplace_calc.explore.trials import Case, TrialRow, between, look, mending
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.takeoff import Bill, Price, bill
from fireplace_calc.takeoff import prices as price_list

USUAL = {
    ("flue.sections", "+"),
    ("flue.size", "+"),
    ("throat.depth", "+"),
    ("house.air_inlet", "+"),
}
"""Changes that come to mind first: key of the lever and which way it goes."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that mends something and breaks nothing.

    Attributes
    ----------
    lever : Lever
    change : dict
        For ``change``.
    before, after : object
        Where the lever stood and where it stands, in SI or in words.
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
    change: dict
    before: object
    after: object
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

    def words(self, units: str = FEET_INCHES) -> str:
        """What to do, with where it was and where it goes, in the reader's units."""
        return _words(self.lever, self.piece, self.before, self.after, units)


@dataclass(frozen=True, slots=True)
class Refused:
    """The least step of a usual change that would mend something and break something else, and so
    is no remedy.

    Attributes
    ----------
    lever : Lever
    change : dict
        For ``change``.
    before, after : object
        Where the lever stood and where it would stand, in SI or in words.
    mends : tuple of str
        Keys of what it would mend.
    breaks : tuple of Finding
        What would fall short then, or become a question, that stands now.
    """

    lever: Lever
    change: dict
    before: object
    after: object
    mends: tuple[str, ...]
    breaks: tuple[Finding, ...]

    def words(self, units: str = FEET_INCHES) -> str:
        """What was thought of, with where it was and where it would go, in the reader's units."""
        return _words(self.lever, "", self.before, self.after, units)


def _words(lever: Lever, piece: str, before: object, after: object, units: str) -> str:
    spec = all_inputs().get(lever.key)
    kind = "length" if spec is None else spec.kind
    was, now = (
        str(v) if isinstance(v, (str, bool)) else show(v, kind, units) for v in (before, after)
    )
    what = f"{lever.words} {piece}".strip()
    return f"{what}." if isinstance(after, bool) else f"{what}: {was} to {now}."


def _count(found: Iterable[Finding]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for f in found:
        counts[f.verdict] = counts.get(f.verdict, 0) + 1
    return counts


def _dearer(was: Bill, now: Bill, takes: str) -> float | None:
    """What the order costs more, where the list prices all that has changed."""

    def unpriced(of: Bill) -> dict[str, float]:
        return {line.row.item: line.row.order for line in of.lines if line.price is None}

    return None if takes or unpriced(was) != unpriced(now) else now.total - was.total


def _remedy(
    case: Case,
    one: Try,
    result: Assessment,
    mended: set[str],
    was: Bill,
    priced: Mapping[str, Price],
) -> Remedy:
    now, after = bill(result.takeoff, priced), every_finding(result)
    aims = sorted(case.aims)
    return Remedy(
        one.lever,
        one.change,
        one.before,
        one.after,
        one.steps,
        tuple(k for k in aims if k in mended),
        tuple(k for k in aims if k not in mended),
        tuple(after[k] for k in aims),
        {kind: _count(found) for kind, found in by_kind(result).items()},
        _dearer(was, now, one.lever.takes),
        now.currency,
        was.invented or now.invented,
        result.weight - case.now.weight,
        one.relative,
        one.piece,
    )


def _case(design: Design, pack: str, aims: Iterable[str] | None) -> Case:
    now = assess(design, pack)
    before = every_finding(now)
    wanted = before if aims is None else tuple(aims)
    for key in wanted:
        if key not in before:
            raise InputError(
                f"There is no finding named {key} under {pack}.",
                "Aims",
                "keys such as FLU-10, DRF-01 or STR-04",
                key,
            )
    return Case(now, before, frozenset(key for key in wanted if before[key].verdict == FALLS_SHORT))


def refused(
    design: Design, pack: str = DEFAULT_PACK, aims: Iterable[str] | None = None
) -> tuple[Refused, ...]:
    """Of the changes that come to mind first, those whose least step that mends something breaks
    something else.

    Parameters
    ----------
    design : Design
    pack : str
        Code to hold it against.
    aims : iterable of str, optional
        As for ``remedies``.

    Returns
    -------
    tuple of Refused
        More sections, a larger liner, a bigger throat, more outdoor air: each at most once,
        assessed in full.

    Raises
    ------
    InputError
        When there is no such book, or no such finding in it.
    """
    case, found = _case(design, pack, aims), []
    levers = [lever for lever in LEVERS if (lever.key, lever.step[0]) in USUAL] if case.aims else []
    rows = [
        row
        for lever in levers
        for settings in tries(design, lever)
        if len(row := TrialRow(case, settings))
    ]
    look(rows, [row.probes for row in rows])
    look(rows, [between(row) for row in rows])
    for row in rows:
        least = next((k for k in sorted(row.mends) if row.mends[k]), None)
        if least is None:
            continue
        one, moved = row.tried[least]
        after = every_finding(assess(moved, pack))
        broken = tuple(f for f in after.values() if case.spoilt([f]))
        if broken:
            found.append(
                Refused(
                    one.lever,
                    one.change,
                    one.before,
                    one.after,
                    tuple(sorted(case.mended(after.values()))),
                    broken,
                )
            )
    return tuple(found)


def find_remedies(
    design: Design,
    pack: str = DEFAULT_PACK,
    aims: Iterable[str] | None = None,
    prices: Mapping[str, Price] | None = None,
) -> tuple[Remedy, ...]:
    """The least changes that mend what falls short, best first.

    Parameters
    ----------
    design : Design
    pack : str
        Code to hold it against.
    aims : iterable of str, optional
        Keys of findings to mend, of code, draft or structure; all that fall short when left out.
        What does not fall short is passed over.
    prices : mapping of str to Price, optional
        As ``takeoff.prices`` reads them; the example list, which is invented, when left out.

    Returns
    -------
    tuple of Remedy
        Each assessed in full: it mends at least one aim, breaks nothing that stood, and turns no
        answer into a question. For one lever there is one remedy for each set of aims that no fewer
        steps mend.

    Notes
    -----
    Ranked by how many aims are mended, most first; then by cost, cheapest first and unknown last;
    then by the relative change. Mended means *meets* or *does not apply*; *not checked* mends
    nothing. A lever is looked at ever further apart, and step by step between two looks where the
    second mends what the first does not; what it mends only between two looks is not seen.

    Raises
    ------
    InputError
        When there is no such book, or no such finding in it.

    Examples
    --------
    >>> found = find_remedies(Design(), aims=["DRF-05"])
    >>> all(one.mends == ("DRF-05",) for one in found)
    True
    """
    case, now = _case(design, pack, aims), assess(design, pack)
    if not case.aims:
        return ()
    rows = [
        row
        for lever in LEVERS
        for settings in tries(design, lever)
        if len(row := TrialRow(case, settings))
    ]
    look(rows, [row.probes for row in rows])
    look(rows, [between(row) for row in rows])
    priced = price_list() if prices is None else prices
    was = bill(now.takeoff, priced)
    found = [_remedy(case, *one, was, priced) for row in rows for one in mending(case, row)]
    found = [
        one
        for one in found
        if not one.lever.serves or any(key.startswith(one.lever.serves) for key in one.mends)
    ]
    found.sort(key=lambda r: (-len(r.mends), r.cost is None, r.cost or 0.0, r.relative))
    return tuple(replace(one, rank=k) for k, one in enumerate(found, 1))
