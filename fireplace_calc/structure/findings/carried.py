"""Findings on what carries the work: lintel, arch, footing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source
from fireplace_calc.rules.comparing import (
    FALLS_SHORT,
    MEETS,
    NOT_CHECKED,
    Compared,
    at_least,
    at_most,
    not_applicable,
    unknown,
)
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.arch import THIRD
from fireplace_calc.structure.figures import figure, lintel_spans, ruptures, soils, source

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

LINTEL, ARCH, FOOTING = "lintel", "arch", "footing"
LOW = (
    "The breast ends below the top of the triangle, so load from above comes in: call an engineer."
)
MIDDLE = Source("statics: the middle third", "derived")

RULES: list[Rule] = []
judged = filing(RULES)


# -- lintel ---------------------------------------------------------------------------------------
def _straight(work: Structure) -> Compared | None:
    return not_applicable("An arch carries the opening.") if work.lintel is None else None


def _guarded(work: Structure, found: Compared, low: bool) -> Compared:
    """A load that is not all told cannot be met."""
    if found.verdict != MEETS:
        return found
    inside = work.design.loads.in_triangle
    if inside:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "The load that bears in the triangle counts in full and is not known.",
        )
    if inside is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Whether a floor or beam bears in the triangle is not known yet.",
        )
    return Compared(NOT_CHECKED, found.provided, found.required, LOW) if low else found


def _unborne(work: Structure) -> Compared | None:
    return _straight(work) or (
        unknown("The lintel's bearing") if work.lintel.bearing is None else None
    )


@judged("STR-09", LINTEL, "Bending of the lintel", "psi", source("steel bending"), over=True)
def bent(work: Structure) -> Compared:
    """Span is the clear opening plus one bearing; above a 45-degree triangle the wall arches over."""
    if said := _unborne(work):
        return said
    held = work.lintel
    if held.kind == "stone" and held.allowed is None:
        return Compared(NOT_CHECKED, held.stress, note="The kind of stone is not known yet.")
    if held.allowed is None:
        return Compared(NOT_CHECKED, held.stress, note=REASONS.get(held.kind, REASONS[None]))
    note = ruptures()[work.design.loads.stone][1].text if held.kind == "stone" else ""
    return _guarded(work, at_most(held.stress, held.allowed, note), held.low)


REASONS = {
    "reinforced concrete": (
        "Its bars are not known: use the maker's table, or ask an engineer. Shown as "
        "plain concrete."
    ),
    "reinforced masonry": ("Its bars are not known: ask an engineer. Shown as plain masonry."),
    "masonry arch": (
        "A flat arch is laid out by the trade's rules and held by its abutments. Shown "
        "as a plain beam."
    ),
    "timber": "Wood is never accepted over a fire.",
    None: "The lintel's material is not known yet.",
}


@judged(
    "STR-10", LINTEL, "Sag of a steel lintel", "in", source("lintel deflection ratio"), over=True
)
def sagging(work: Structure) -> Compared:
    """Brick cracks long before steel yields."""
    if said := _unborne(work):
        return said
    if work.lintel.sag is None:
        return not_applicable("The lintel is not of steel.")
    return _guarded(work, at_most(work.lintel.sag, work.lintel.sag_limit), work.lintel.low)


@judged(
    "STR-11",
    LINTEL,
    "Clear span by the table of veneer lintels",
    "ft",
    lintel_spans()[0].source,
    over=True,
)
def tabled(work: Structure) -> Compared:
    """A table for brick veneer with no story above, to set beside the calculation."""
    if said := _straight(work):
        return said
    if work.lintel.sag is None:
        return not_applicable("The lintel is not of steel.")
    if work.lintel.veneer_span is None:
        return Compared(
            NOT_CHECKED, work.lintel.clear, note="The angle is lighter than any in the table."
        )
    return _guarded(work, at_most(work.lintel.clear, work.lintel.veneer_span), False)


@judged("STR-12", LINTEL, "Bearing of the lintel", "in", source("lintel bearing"))
def borne(work: Structure) -> Compared:
    """A lintel slides off a short seat, or breaks its edge."""
    note = (
        "A tenth of the span for stone."
        if work.lintel is not None and work.lintel.kind == "stone"
        else ""
    )
    return _straight(work) or at_least(work.lintel.bearing, work.lintel.least_bearing, note)


@judged(
    "STR-13", LINTEL, "Pressure under the lintel's end", "psi", source("bearing stress"), over=True
)
def pressed(work: Structure) -> Compared:
    """The end turns as the lintel bends, and presses hardest at the edge of the jamb."""
    if said := _unborne(work):
        return said
    if work.lintel.bearing_stress is None:
        return Compared(FALLS_SHORT, note="The lintel has no bearing at all.")
    return _guarded(
        work, at_most(work.lintel.bearing_stress, figure("bearing stress")), work.lintel.low
    )


# -- arch -----------------------------------------------------------------------------------------
def _arched(work: Structure) -> Compared | None:
    return not_applicable("A lintel carries the opening.") if work.arch is None else None


@judged("STR-14", ARCH, "Span of a minor arch", "ft", source("minor arch span"), over=True)
def short(work: Structure) -> Compared:
    """Above this span the rules of thumb end; call an engineer."""
    return _arched(work) or at_most(work.arch.ring.span, figure("minor arch span"))


@judged("STR-15", ARCH, "Rise over span of a minor arch", "-", source("minor arch rise"), over=True)
def flat(work: Structure) -> Compared:
    """A steep arch pushes less, but its line of thrust may leave the ring."""
    return _arched(work) or at_most(
        work.arch.ring.rise / work.arch.ring.span, figure("minor arch rise")
    )


@judged(
    "STR-16",
    ARCH,
    "Line of thrust off the middle of the ring, over its depth",
    "-",
    MIDDLE,
    over=True,
)
def inside(work: Structure) -> Compared:
    """Inside the middle third no joint of the ring opens."""
    return _arched(work) or _guarded(
        work,
        at_most(work.arch.line.stray, THIRD, "Drawn through the third points it touches both."),
        work.arch.low,
    )


@judged(
    "STR-17", ARCH, "Thrust that the jamb's bed joint takes", "lbf", source("bed joint friction")
)
def slides(work: Structure) -> Compared:
    """The arch pushes the jamb outward at its spring line; friction under the weight above holds
    it, bond not counted.
    """
    return _arched(work) or _guarded(
        work,
        at_least(
            work.arch.friction, work.arch.abutment, "The parabola's thrust, which is the larger."
        ),
        work.arch.low,
    )


@judged("STR-18", ARCH, "Jamb against tipping outward", "-", source("overturning factor"))
def tips(work: Structure) -> Compared:
    """A slim jamb is tipped over by its own arch."""
    return _arched(work) or _guarded(
        work, at_least(work.arch.toppling, figure("overturning factor")), work.arch.low
    )


# -- footing --------------------------------------------------------------------------------------
def _ground(work: Structure, pressure: float | None) -> Compared | None:
    if work.design.ground.bearing_stratum == "other":
        return Compared(
            NOT_CHECKED,
            pressure,
            note="The table gives no bearing for fill, mud, peat or organic soil: dig and look.",
        )
    return (
        Compared(NOT_CHECKED, pressure, note="The soil is not known yet.")
        if work.footing.allowed is None
        else None
    )


@judged(
    "STR-19", FOOTING, "Pressure under the footing, still air", "psf", soils()["clay"][1], over=True
)
def stands(work: Structure) -> Compared:
    """All that stands on the footing and the footing itself, under its worst edge."""
    found = work.footing
    if found.pressure is None:
        return Compared(FALLS_SHORT, note="The weight stands beyond the edge of the footing.")
    return _ground(work, found.pressure) or at_most(found.pressure, found.allowed)


@judged(
    "STR-20",
    FOOTING,
    "Pressure under the footing in the wind",
    "psf",
    soils()["clay"][1],
    over=True,
)
def blown(work: Structure) -> Compared:
    """Wind on a chimney that nothing holds presses one edge of the footing and lifts the other."""
    found = work.footing
    if found.held:
        return not_applicable("The house takes the wind on this chimney.")
    if not found.wind_known:
        return unknown("The wind speed or the exposure")
    if found.topples:
        return Compared(FALLS_SHORT, note="The footing tips over first.")
    return _ground(work, found.windy) or at_most(
        found.windy, found.allowed, "The soil's figure is not raised for wind."
    )


@judged("STR-21", FOOTING, "Footing projection beyond the base", "in", source("footing projection"))
def projects(work: Structure) -> Compared:
    """A wider foot spreads the weight."""
    return at_least(work.footing.projection, figure("footing projection"), soft=True)


@judged("STR-22", FOOTING, "Footing thickness", "in", source("footing thickness"))
def thick(work: Structure) -> Compared:
    """Codes ask a foot of solid masonry or concrete; plain concrete must also be no thinner than it
    stands out.
    """
    spread = figure("footing thickness over projection") * work.footing.projection
    least = max(figure("footing thickness"), spread)
    return at_least(
        work.footing.thickness,
        least,
        "At least as thick as it projects." if spread > figure("footing thickness") else "",
        soft=True,
    )
