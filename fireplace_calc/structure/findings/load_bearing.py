"""Findings on the head of the opening: lintel or arch."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source
from fireplace_calc.editing.changes import unknown_of
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
from fireplace_calc.structure.allowables import lintel_spans, ruptures
from fireplace_calc.structure.arch import Arch
from fireplace_calc.structure.arch_thrust import THIRD
from fireplace_calc.structure.figures import figure, source
from fireplace_calc.structure.lintel import LintelResult

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

LINTEL, ARCH = "lintel", "arch"
LOW_COVER = (
    "The breast ends below the top of the triangle, so load from above comes in: call an engineer."
)
BEARS = ("loads.floor_over_head", "loads.beam_over_head")
MIDDLE = Source("statics: the middle third", "derived")

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


# -- lintel ---------------------------------------------------------------------------------------
def _lintel(structure: Structure) -> LintelResult | Compared:
    """The straight head, or why there is nothing to check."""
    return structure.lintel or not_applicable("An arch carries the opening.")


def _lintel_on_its_bearing(structure: Structure) -> LintelResult | Compared:
    """The straight head where its bearing is known too."""
    lintel = _lintel(structure)
    if isinstance(lintel, LintelResult) and lintel.bearing is None:
        return NO_BEARING
    return lintel


NO_BEARING = unknown("The lintel's bearing", "lintel.bearing")
NO_KIND = "The lintel's material is not known yet."


def _if_kind_is_known(lintel: LintelResult, found: Compared) -> Compared:
    """What is met, or does not apply, counts only where it is known what the lintel is made of."""
    if lintel.kind is None and found.verdict != FALLS_SHORT:
        return replace(found, verdict=NOT_CHECKED, note=NO_KIND, missing=("lintel.material",))
    return found


def _if_load_is_known(structure: Structure, found: Compared, low_cover: bool) -> Compared:
    """What is met counts as met only where every load in the triangle is known."""
    if found.verdict != MEETS:
        return found
    inside = structure.design.loads.in_triangle
    waits = unknown_of(structure.design, *BEARS) if inside else ()
    if waits:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "The load that bears in the triangle counts in full and is not known.",
            waits,
        )
    if inside and structure.arch is not None and structure.design.loads.beam_over_head:
        return Compared(
            NOT_CHECKED, found.provided, found.required, "A beam on an arch is for an engineer."
        )
    if inside is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Whether a floor or beam bears in the triangle is not known yet.",
            ("loads.in_triangle",),
        )
    return Compared(NOT_CHECKED, found.provided, found.required, LOW_COVER) if low_cover else found


@judged("STR-09", LINTEL, "Bending of the lintel", "psi", source("steel bending"), over=True)
def lintel_bending(structure: Structure) -> Compared:
    """Span is the clear opening plus one bearing; above a 45-degree triangle the wall arches
    over.
    """
    lintel = _lintel_on_its_bearing(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.kind == "stone" and lintel.allowed is None:
        return Compared(
            NOT_CHECKED,
            lintel.stress,
            note="The kind of stone is not known yet.",
            missing=("loads.stone",),
        )
    if lintel.allowed is None:
        return Compared(
            NOT_CHECKED,
            lintel.stress,
            note=REASONS.get(lintel.kind, REASONS[None]),
            missing=() if lintel.kind else ("lintel.material",),
        )
    stone = structure.design.loads.stone if lintel.kind == "stone" else None
    note = ruptures()[stone][1].text if stone is not None else ""
    found = at_most(lintel.stress, lintel.allowed, note)
    return _if_load_is_known(structure, found, lintel.low_cover)


REASONS: dict[str | None, str] = {
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
    None: NO_KIND,
}


@judged(
    "STR-10", LINTEL, "Sag of a steel lintel", "in", source("lintel deflection ratio"), over=True
)
def lintel_deflection(structure: Structure) -> Compared:
    """Brick cracks long before steel yields."""
    lintel = _lintel_on_its_bearing(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.deflection is None:
        return _if_kind_is_known(lintel, not_applicable("The lintel is not of steel."))
    found = at_most(lintel.deflection, lintel.deflection_limit)
    return _if_load_is_known(structure, found, lintel.low_cover)


@judged(
    "STR-11",
    LINTEL,
    "Clear span by the table of veneer lintels",
    "ft",
    lintel_spans()[0].source,
    over=True,
)
def veneer_table_span(structure: Structure) -> Compared:
    """A table for brick veneer with no story above, to set beside the calculation."""
    lintel = _lintel(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.deflection is None:
        return _if_kind_is_known(lintel, not_applicable("The lintel is not of steel."))
    if lintel.veneer_span is None:
        return Compared(
            NOT_CHECKED, lintel.clear, note="The angle is lighter than any in the table."
        )
    found = at_most(lintel.clear, lintel.veneer_span)
    if lintel.bears and found.verdict == MEETS:
        note = "A floor or beam bears over it, and the table's span is for none."
        return replace(found, verdict=NOT_CHECKED, note=note)
    return _if_load_is_known(structure, found, False)


@judged("STR-12", LINTEL, "Bearing of the lintel", "in", source("lintel bearing"))
def lintel_bearing(structure: Structure) -> Compared:
    """A lintel slides off a short seat, or breaks its edge."""
    lintel = _lintel(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.bearing is None:
        return NO_BEARING
    note = "A tenth of the span for stone." if lintel.kind == "stone" else ""
    return _if_kind_is_known(lintel, at_least(lintel.bearing, lintel.least_bearing, note))


@judged(
    "STR-13", LINTEL, "Pressure under the lintel's end", "psi", source("bearing stress"), over=True
)
def bearing_pressure(structure: Structure) -> Compared:
    """The end turns as the lintel bends, and presses hardest at the edge of the jamb."""
    lintel = _lintel_on_its_bearing(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.bearing_stress is None:
        return Compared(FALLS_SHORT, note="The lintel has no bearing at all.")
    found = at_most(lintel.bearing_stress, figure("bearing stress"))
    found = _if_kind_is_known(lintel, found)
    return _if_load_is_known(structure, found, lintel.low_cover)


# -- arch -----------------------------------------------------------------------------------------
def _arch(structure: Structure) -> Arch | Compared:
    """The arched head, or why there is nothing to check."""
    return structure.arch or not_applicable("A lintel carries the opening.")


@judged("STR-14", ARCH, "Span of a minor arch", "ft", source("minor arch span"), over=True)
def arch_span(structure: Structure) -> Compared:
    """Above this span the rules of thumb end; call an engineer."""
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    return at_most(arch.ring.span, figure("minor arch span"))


@judged("STR-15", ARCH, "Rise over span of a minor arch", "-", source("minor arch rise"), over=True)
def arch_rise(structure: Structure) -> Compared:
    """A steep arch pushes less, but its line of thrust may leave the ring."""
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    return at_most(arch.ring.rise / arch.ring.span, figure("minor arch rise"))


@judged(
    "STR-16",
    ARCH,
    "Line of thrust off the middle of the ring, over its depth",
    "-",
    MIDDLE,
    over=True,
)
def thrust_in_middle_third(structure: Structure) -> Compared:
    """Inside the middle third no joint of the ring opens."""
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    note = "Drawn through the third points it touches both."
    found = at_most(arch.line.eccentricity, THIRD, note)
    return _if_load_is_known(structure, found, arch.low_cover)


@judged(
    "STR-17", ARCH, "Thrust that the jamb's bed joint takes", "lbf", source("bed joint friction")
)
def jamb_sliding(structure: Structure) -> Compared:
    """The arch pushes the jamb outward at its spring line; friction under the weight above holds
    it, bond not counted.
    """
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    note = "The parabola's thrust, which is the larger."
    found = at_least(arch.friction, arch.abutment_thrust, note)
    return _if_load_is_known(structure, found, arch.low_cover)


@judged("STR-18", ARCH, "Jamb against tipping outward", "-", source("overturning factor"))
def jamb_overturning(structure: Structure) -> Compared:
    """A slim jamb is tipped over by its own arch."""
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    found = at_least(arch.overturning, figure("overturning factor"))
    return _if_load_is_known(structure, found, arch.low_cover)
