"""Findings on an arched head: its ring, its thrust and the jambs that take it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.tables import Source
from fireplace_calc.rules.comparing import Compared, at_least, at_most, not_applicable
from fireplace_calc.rules.core import Rule, filing
from fireplace_calc.structure.arch import Arch
from fireplace_calc.structure.arch_thrust import THIRD
from fireplace_calc.structure.figures import figure, source
from fireplace_calc.structure.findings.head import if_load_is_known

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

ARCH = "arch"
MIDDLE = Source("statics: the middle third", "derived")

RULES: list[Rule[Structure]] = []
judged = filing(RULES)


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
    return if_load_is_known(structure, found, arch.low_cover)


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
    return if_load_is_known(structure, found, arch.low_cover)


@judged("STR-18", ARCH, "Jamb against tipping outward", "-", source("overturning factor"))
def jamb_overturning(structure: Structure) -> Compared:
    """A slim jamb is tipped over by its own arch."""
    arch = _arch(structure)
    if isinstance(arch, Compared):
        return arch
    found = at_least(arch.overturning, figure("overturning factor"))
    return if_load_is_known(structure, found, arch.low_cover)
