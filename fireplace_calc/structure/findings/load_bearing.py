"""Findings on a straight head: the lintel over the opening."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

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
from fireplace_calc.structure.figures import figure, source
from fireplace_calc.structure.findings.head import if_load_is_known
from fireplace_calc.structure.lintel import LintelResult
from fireplace_calc.structure.reinforced import ReinforcedBeam

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

LINTEL = "lintel"
BAR_INPUTS = (
    "lintel.bars",
    "lintel.bar",
    "lintel.bar_center",
    "lintel.bar_grade",
    "loads.masonry_strength",
)

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


# -- lintel ---------------------------------------------------------------------------------------
def _lintel(structure: Structure) -> LintelResult | Compared:
    """The straight head, or why there is nothing to check."""
    return structure.lintel or not_applicable("An arch carries the opening.")


def _lintel_on_its_bearing(structure: Structure) -> LintelResult | Compared:
    """The straight head where its bearing is known too."""
    lintel = _lintel(structure)
    if not isinstance(lintel, Compared) and lintel.bearing is None:
        return NO_BEARING
    return lintel


NO_BEARING = unknown("The lintel's bearing", "lintel.bearing")
NO_KIND = "The lintel's material is not known yet."


def _if_kind_is_known(lintel: LintelResult, found: Compared) -> Compared:
    """What is met, or does not apply, counts only where it is known what the lintel is made of."""
    if lintel.kind is None and found.verdict != FALLS_SHORT:
        return replace(found, verdict=NOT_CHECKED, note=NO_KIND, missing=("lintel.material",))
    return found


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
            missing=_of_bars(structure, lintel) if lintel.kind else ("lintel.material",),
        )
    stone = structure.design.loads.stone if lintel.kind == "stone" else None
    note = ruptures()[stone][1].text if stone is not None else ""
    found = at_most(lintel.stress, lintel.allowed, note)
    return if_load_is_known(structure, found, lintel.low_cover)


REASONS: dict[str | None, str] = {
    "reinforced concrete": (
        "Its bars are not known: use the maker's table, or ask an engineer. Shown as "
        "plain concrete."
    ),
    "reinforced masonry": (
        "Its bars, their place, or the masonry's strength are not known yet. Shown as plain"
        " masonry."
    ),
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
    return if_load_is_known(structure, found, lintel.low_cover)


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
    return if_load_is_known(structure, found, False)


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
    return if_load_is_known(structure, found, lintel.low_cover)


def _of_bars(structure: Structure, lintel: LintelResult) -> tuple[str, ...]:
    """What is not told yet of a lintel in reinforced masonry."""
    told = unknown_of(structure.design, *BAR_INPUTS)
    return told if lintel.kind == "reinforced masonry" else ()


def _beam(structure: Structure) -> tuple[LintelResult, ReinforcedBeam] | Compared:
    """A lintel in reinforced masonry with its bars, or why there is nothing to check."""
    lintel = _lintel_on_its_bearing(structure)
    if isinstance(lintel, Compared):
        return lintel
    if lintel.kind != "reinforced masonry":
        found = not_applicable("The lintel is not of reinforced masonry.")
        return _if_kind_is_known(lintel, found)
    if lintel.beam is None:
        note = "Its bars, their place, or the masonry's strength are not known yet."
        return Compared(NOT_CHECKED, note=note, missing=_of_bars(structure, lintel))
    return lintel, lintel.beam


@judged(
    "STR-24",
    LINTEL,
    "Masonry compressed over the lintel's bars",
    "psi",
    source("masonry bending share, reinforced"),
    over=True,
)
def lintel_compression(structure: Structure) -> Compared:
    """Bars hold the lower edge; the upper one crushes where the section is too shallow for them."""
    made = _beam(structure)
    if isinstance(made, Compared):
        return made
    lintel, beam = made
    found = at_most(beam.compression(lintel.moment), beam.compression_allowed)
    return if_load_is_known(structure, found, lintel.low_cover)


@judged(
    "STR-25",
    LINTEL,
    "Shear of a reinforced masonry lintel",
    "psi",
    source("masonry shear"),
    over=True,
)
def lintel_shear(structure: Structure) -> Compared:
    """Without stirrups the masonry alone takes it."""
    made = _beam(structure)
    if isinstance(made, Compared):
        return made
    lintel, beam = made
    found = at_most(lintel.shear_stress, beam.shear_allowed)
    return if_load_is_known(structure, found, lintel.low_cover)
