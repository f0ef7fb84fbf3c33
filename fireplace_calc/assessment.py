"""One design in, one frozen assessment out: everything a person sees is read from it.

What an answer needs is imported where it is first asked for, so that whoever only opens and changes
designs need not wait for it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.consistency import require_consistent
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.rules import PACKS, Finding, check, check_every_pack
from fireplace_calc.rules.facts import Facts

if TYPE_CHECKING:
    from fireplace_calc.build import Plan
    from fireplace_calc.draft import DraftResult, Odds
    from fireplace_calc.draft.lighting_up import FirstHour
    from fireplace_calc.heat.answer import HeatAnswer
    from fireplace_calc.structure import Structure
    from fireplace_calc.takeoff import Row

DEFAULT_PACK = "US IRC 2021"


@dataclass(frozen=True)
class Assessment:
    """What one design makes, whether it complies, and what it takes.

    Attributes
    ----------
    design : Design
    pack : str
        Name of the book it was checked against.
    geometry : Geometry
        Levels, parts and voids.
    facts : Facts
        What the checks were told.
    findings : tuple of Finding
        One a rule.
    """

    design: Design
    pack: str
    geometry: Geometry
    facts: Facts
    findings: tuple[Finding, ...]

    @property
    def levels(self) -> dict[str, float]:
        """Level of everything that has a name, bottom to top, from the room floor. [m]"""
        return self.geometry.levels

    @property
    def parts(self) -> tuple[Part, ...]:
        """Named solids with material and volume. [m3]"""
        return self.geometry.parts

    @property
    def takeoff(self) -> tuple[Row, ...]:
        """What to order; listed when first asked for."""
        from fireplace_calc.takeoff import take_off

        return take_off(self.geometry)

    @cached_property
    def draft(self) -> DraftResult:
        """What the air will do; worked out when first asked for."""
        from fireplace_calc.draft import draft_result

        return self.geometry.once(draft_result)

    @cached_property
    def judgement(self) -> tuple[Finding, ...]:
        """Findings on the draft: engineering judgement, not code, so they stand apart from
        ``findings``.
        """
        from fireplace_calc.draft import judgement

        return judgement(self.draft, self.design)

    @cached_property
    def odds(self) -> Odds:
        """How likely it smokes, over the published spread of everything that is not known; when
        first asked for.
        """
        from fireplace_calc.draft import fire, roof_wind, smoke_odds, surroundings, wind_range

        design = self.design
        return smoke_odds(
            self.draft.path,
            fire(design),
            surroundings(design),
            design.site.mild,
            wind_range(roof_wind(self.geometry)),
            design.house.leakage is not None,
            design.chimney.rain_cap is not None,
        )

    @cached_property
    def first_hour(self) -> FirstHour:
        """The first fire, from a cold flue; worked out when first asked for."""
        from fireplace_calc.draft.lighting_up import first_hour

        return self.geometry.once(first_hour)

    @cached_property
    def structure(self) -> Structure:
        """How it stands; worked out when first asked for. Its findings are engineering judgement,
        not code.
        """
        from fireplace_calc.structure import assess_structure
        from fireplace_calc.structure.findings.register import judgement

        found = assess_structure(self.geometry, self.pack)
        return replace(found, findings=judgement(found, named=True))

    @cached_property
    def heat(self) -> HeatAnswer:
        """How hot what burns beside it becomes; a second or so when first asked for. Judgement, and
        never a smaller clearance.
        """
        from fireplace_calc.heat.answer import heat_answer

        return self.geometry.once(heat_answer)

    @cached_property
    def work(self) -> Plan:
        """In what order it is built, and who lifts what; worked out when first asked for."""
        from fireplace_calc.build import plan_work

        return self.geometry.once(plan_work)

    @cached_property
    def counts(self) -> dict[str, int]:
        """How many findings there are of each verdict. [-]"""
        found: dict[str, int] = {}
        for finding in self.findings:
            found[finding.verdict] = found.get(finding.verdict, 0) + 1
        return found

    @cached_property
    def assumed(self) -> dict[str, int]:
        """How many findings of each verdict pass on what nobody has entered. [-]"""
        found: dict[str, int] = {}
        for finding in self.findings:
            if finding.on_assumption:
                found[finding.verdict] = found.get(finding.verdict, 0) + 1
        return found

    @property
    def weight(self) -> float:
        """Of the whole as it stands, footing counted in. [kg]"""
        from fireplace_calc.takeoff import total_weight

        return total_weight(self.takeoff)


def assess(design: Design, pack: str = DEFAULT_PACK) -> Assessment:
    """Work a design through: geometry and checks; all else when it is first asked for.

    Parameters
    ----------
    design : Design
        Whole and consistent, as ``change`` and ``load`` hand it out.
    pack : str
        Which book to check it against, one of ``PACKS``.

    Returns
    -------
    Assessment
        All of it, once.

    Raises
    ------
    InputError
        When there is no such book, or the design does not hold together.

    Examples
    --------
    >>> result = assess(Design())
    >>> round(result.levels["flue top"], 3) == round(result.geometry.frame.liner_top, 3)
    True
    """
    if pack not in PACKS:
        raise InputError(
            f"Code pack is {pack!r}, but there are only {', '.join(PACKS)}.",
            "Code pack",
            ", ".join(PACKS),
            pack,
        )
    geometry, facts = _without_code(design)
    return Assessment(design, pack, geometry, facts, check(facts, pack))


def assess_all(design: Design) -> dict[str, tuple[Finding, ...]]:
    """One design against every pack there is.

    Parameters
    ----------
    design : Design

    Returns
    -------
    dict
        Findings worst first, by the pack's name.

    Examples
    --------
    >>> sorted(assess_all(Design())) == sorted(PACKS)
    True
    """
    return check_every_pack(_without_code(design)[1])


@lru_cache(maxsize=4)
def _without_code(design: Design) -> tuple[Geometry, Facts]:
    """What no code changes: shape and facts; kept for the next code the same design is held
    against.
    """
    from fireplace_calc.rules.gathering import gather_facts
    from fireplace_calc.takeoff import weight_on_footing

    require_consistent(design)
    geometry = build_geometry(design)
    return geometry, gather_facts(geometry, weight_on_footing(geometry))
