"""How far the firebox can be raised, and what stops it: a clause, the air, the loads, or the
drawing itself.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import dataclass

from fireplace_calc.assessment import DEFAULT_PACK, Assessment
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.editing.changes import change
from fireplace_calc.explore.mending.locks import foreign
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure
from fireplace_calc.takeoff import weight_on_footing

KINDS = ("code", "draft", "structure", "drawing")
"""What can stop it; where two do at once, the first of them is named."""
TICK, LOOK = INCH / 16, 16
"""To what the answer is found [m], and how many of these lie between two designs of the first scan
[-].
"""


@dataclass(frozen=True, slots=True)
class RaiseStop:
    """Where one kind of thing first stops the raise.

    Attributes
    ----------
    kind : str
        One of ``KINDS``.
    raised : float
        Last raise at which all of this kind still stood. [m]
    findings : tuple of Finding
        What falls short one sixteenth of an inch further on, as it stands there; empty for the
        drawing.
    refusal : str
        Why it cannot be drawn further, for the drawing.
    """

    kind: str
    raised: float
    findings: tuple[Finding, ...] = ()
    refusal: str = ""


@dataclass(frozen=True, slots=True)
class HighestRaise:
    """How far a firebox can be raised over its standard height.

    Attributes
    ----------
    design : Design
        Whose raise was moved; its own is not counted from.
    pack : str
        Code it was held against.
    least, most : float
        Least raise that can be drawn, and the end of the workable range. [m]
    raised : float
        How far it goes with nothing newly broken, to a sixteenth of an inch; ``most`` where nothing
        stops it. [m]
    stop : RaiseStop or None
        What stops it; nothing where the range ends first.
    stops : tuple of RaiseStop
        For each kind that stops anywhere in the range, where it first does; lowest first.
    broken : tuple of Finding
        What falls short already at the least raise, and so stops nothing.
    """

    design: Design
    pack: str
    least: float
    most: float
    raised: float
    stop: RaiseStop | None
    stops: tuple[RaiseStop, ...]
    broken: tuple[Finding, ...]

    @property
    def finding(self) -> Finding | None:
        """The first finding of what stops it: clause, reason, what there is and the target."""
        return self.stop.findings[0] if self.stop and self.stop.findings else None


def by_kind(result: Assessment) -> dict[str, tuple[Finding, ...]]:
    """Every finding of an assessment.

    Parameters
    ----------
    result : Assessment

    Returns
    -------
    dict of tuple
        Findings of the code, on the ``draft``, and on the ``structure``.
    """
    return {
        "code": result.findings,
        "draft": result.judgement,
        "structure": result.structure.findings,
    }


def every_finding(result: Assessment) -> dict[str, Finding]:
    """Every finding of an assessment by its key.

    Parameters
    ----------
    result : Assessment

    Returns
    -------
    dict of Finding
    """
    return {f.key: f for found in by_kind(result).values() for f in found}


def raised_to(design: Design, ticks: int) -> Design:
    """A design with its firebox raised over its standard height.

    Parameters
    ----------
    design : Design
    ticks : int
        How far, in sixteenths of an inch. [-]

    Returns
    -------
    Design

    Raises
    ------
    InputError
        When it cannot be drawn so.
    """
    return change(design, {"opening.extension": f"{ticks / 16} in"})


def _metres(ticks: int) -> float:
    """So many sixteenths, the same float as the length typed in inches. [m]"""
    return to_si(f"{ticks / 16} in", "length")


def _short(
    kind: str, designs: Sequence[Design], pack: str, ignored: Container[str]
) -> list[dict[str, Finding]]:
    """What of one kind falls short, design by design."""
    if kind == "draft":
        found = [judgement(one) for one in draft_results([sketch(d) for d in designs])]
    elif kind == "structure":
        found = [assess_structure(build_geometry(d), pack).findings for d in designs]
    else:
        made = [build_geometry(d) for d in designs]
        found = [PACKS[pack].check(gather_facts(one, weight_on_footing(one))) for one in made]
    return [
        {f.key: f for f in one if f.verdict == FALLS_SHORT and f.key not in ignored}
        for one in found
    ]


def _first_stop(
    kind: str, drawn: dict[int, Design], scanned: list[int], pack: str, ignored: Container[str]
) -> tuple[dict[str, Finding], RaiseStop | None]:
    """What of one kind is broken from the start, and where something else first breaks."""
    scan = _short(kind, [drawn[t] for t in scanned], pack, ignored)
    broken = scan[0]
    far = next((n for n, one in enumerate(scan) if one.keys() - broken.keys()), None)
    if far is None:
        return broken, None
    # Something new falls short here and not one scanned design before: look at all between.
    between = [t for t in range(scanned[far - 1] + 1, scanned[far]) if t in drawn]
    closely = zip(
        [*between, scanned[far]],
        [*_short(kind, [drawn[t] for t in between], pack, ignored), scan[far]],
        strict=True,
    )
    tick, found = next((t, one) for t, one in closely if one.keys() - broken.keys())
    return broken, RaiseStop(
        kind, _metres(tick - 1), tuple(f for key, f in found.items() if key not in broken)
    )


def highest_raise(design: Design, pack: str = DEFAULT_PACK) -> HighestRaise:
    """How far the firebox of a design can be raised before something breaks that stood at the least
    raise. What the table of another country says stops nothing.

    Parameters
    ----------
    design : Design
        Everything but its raise stays.
    pack : str
        Code to hold it against.

    Returns
    -------
    HighestRaise
        To a sixteenth of an inch, with the findings that stop it.

    Notes
    -----
    Every kind is looked at inch by inch over the whole range; of the inch in which something first
    breaks, every sixteenth. What breaks and mends again within one inch, between two looks, is not
    seen. *Not checked* stops nothing.

    Raises
    ------
    InputError
        When there is no such book.

    Examples
    --------
    >>> found = highest_raise(Design())
    >>> found.finding.clause, found.raised < found.most
    ('R1003.15.1', True)
    """
    if pack not in PACKS:
        raise InputError(
            f"Code pack is {pack!r}, but there are only {', '.join(PACKS)}.",
            "Code pack",
            ", ".join(PACKS),
            pack,
        )
    low, high = inputs_of(design.opening)["extension"].bounds
    drawn: dict[int, Design] = {}
    refused: dict[int, str] = {}
    for tick in range(round(low / TICK), round(high / TICK) + 1):
        try:
            drawn[tick] = raised_to(design, tick)
        except InputError as error:
            refused[tick] = str(error)
    least, end = min(drawn), max(drawn)
    ignored = foreign(pack)
    stops: list[RaiseStop] = []
    broken: list[Finding] = []
    beyond = min((t for t in refused if t > least), default=None)
    if beyond is not None:
        stops.append(RaiseStop("drawing", _metres(beyond - 1), refusal=refused[beyond]))
    scanned = sorted({least, end, *(t for t in drawn if t % LOOK == 0)})
    for kind in KINDS[:3]:
        start, stop = _first_stop(kind, drawn, scanned, pack, ignored)
        broken += start.values()
        stops += [stop] if stop else []
    stops.sort(key=lambda stop: (stop.raised, KINDS.index(stop.kind)))
    first = stops[0] if stops else None
    return HighestRaise(
        design,
        pack,
        _metres(least),
        high,
        first.raised if first else _metres(end),
        first,
        tuple(stops),
        tuple(broken),
    )
