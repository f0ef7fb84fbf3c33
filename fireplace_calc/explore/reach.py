"""How far the firebox can be raised, and what stops it: a clause, the air, the loads, or the
drawing itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fireplace_calc.assessment import DEFAULT_PACK, Assessment
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.editing.changes import change
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure

KINDS = ("code", "draft", "structure", "drawing")
"""What can stop it; where two do at once, the first of them is named."""
TICK, LOOK = INCH / 16, 16
"""The answer's fineness [m], and how many of it lie between two looks [-]."""


@dataclass(frozen=True, slots=True)
class Stop:
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
class Reach:
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
    stop : Stop or None
        What stops it; nothing where the range ends first.
    ladder : tuple of Stop
        For each kind that stops anywhere in the range, where it first does; lowest first.
    broken : tuple of Finding
        What falls short already at the least raise, and so stops nothing.
    """

    design: Design
    pack: str
    least: float
    most: float
    raised: float
    stop: Stop | None
    ladder: tuple[Stop, ...]
    broken: tuple[Finding, ...]

    @property
    def finding(self) -> Finding | None:
        """The first finding of what stops it: clause, reason, what there is and what is asked."""
        return self.stop.findings[0] if self.stop and self.stop.findings else None


def by_kind(result: Assessment) -> dict[str, tuple[Finding, ...]]:
    """Every finding of an assessment: of the code, on the draft, and on the structure."""
    return {
        "code": result.findings,
        "draft": result.judgement,
        "structure": result.structure.findings,
    }


def every_finding(result: Assessment) -> dict[str, Finding]:
    """The same by key."""
    return {f.key: f for found in by_kind(result).values() for f in found}


def raised_to(design: Design, ticks: int) -> Design:
    """A design with its firebox raised so many sixteenths of an inch over its standard height.

    Raises
    ------
    InputError
        When it cannot be drawn so.
    """
    return change(design, {"opening.extension": f"{ticks / 16} in"})


def _metres(ticks: int) -> float:
    """So many sixteenths, the same float as the length typed in inches. [m]"""
    return to_si(f"{ticks / 16} in", "length")


def _short(kind: str, designs: Sequence[Design], pack: str) -> list[dict[str, Finding]]:
    """What of one kind falls short, design by design."""
    if kind == "draft":
        found = [judgement(one) for one in draft_results([sketch(d) for d in designs])]
    elif kind == "structure":
        found = [assess_structure(build_geometry(d)).findings for d in designs]
    else:
        found = [PACKS[pack].check(gather_facts(build_geometry(d))) for d in designs]
    return [{f.key: f for f in one if f.verdict == FALLS_SHORT} for one in found]


def _first(
    kind: str, drawn: dict[int, Design], looks: list[int], pack: str
) -> tuple[dict[str, Finding], Stop | None]:
    """What of one kind is broken from the start, and where something else first breaks."""
    scan = _short(kind, [drawn[t] for t in looks], pack)
    broken = scan[0]
    far = next((n for n, one in enumerate(scan) if one.keys() - broken.keys()), None)
    if far is None:
        return broken, None
    between = [t for t in range(looks[far - 1] + 1, looks[far]) if t in drawn]
    close = zip(
        [*between, looks[far]],
        [*_short(kind, [drawn[t] for t in between], pack), scan[far]],
        strict=True,
    )
    tick, found = next((t, one) for t, one in close if one.keys() - broken.keys())
    return broken, Stop(
        kind, _metres(tick - 1), tuple(f for key, f in found.items() if key not in broken)
    )


def how_far(design: Design, pack: str = DEFAULT_PACK) -> Reach:
    """How far the firebox of a design can be raised before something breaks that stood at the least
    raise.

    Parameters
    ----------
    design : Design
        Everything but its raise stays.
    pack : str
        Code to hold it against.

    Returns
    -------
    Reach
        In sixteenths of an inch, with the findings that stop it. [m]

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
    >>> found = how_far(Design())
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
    spec = inputs_of(design.opening)["extension"]
    drawn, refused = {}, {}
    for tick in range(round(spec.low / TICK), round(spec.high / TICK) + 1):
        try:
            drawn[tick] = raised_to(design, tick)
        except InputError as error:
            refused[tick] = str(error)
    least, end = min(drawn), max(drawn)
    ladder, broken = [], []
    beyond = min((t for t in refused if t > least), default=None)
    if beyond is not None:
        ladder.append(Stop("drawing", _metres(beyond - 1), refusal=refused[beyond]))
    looks = sorted({least, end, *(t for t in drawn if t % LOOK == 0)})
    for kind in KINDS[:3]:
        start, stop = _first(kind, drawn, looks, pack)
        broken += start.values()
        ladder += [stop] if stop else []
    ladder.sort(key=lambda stop: (stop.raised, KINDS.index(stop.kind)))
    first = ladder[0] if ladder else None
    return Reach(
        design,
        pack,
        _metres(least),
        spec.high,
        first.raised if first else _metres(end),
        first,
        tuple(ladder),
        tuple(broken),
    )
