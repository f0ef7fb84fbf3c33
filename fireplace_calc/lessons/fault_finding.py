"""Looking for a planted fault: the figures somebody is given, the rules to choose from, and the
reply to a guess.
"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore import sketch
from fireplace_calc.lessons.answers.printed_answer import shown
from fireplace_calc.lessons.answers.replying import Reply
from fireplace_calc.lessons.fault_hunt.planting import offered
from fireplace_calc.lessons.fault_records import FaultFinding
from fireplace_calc.lessons.valid_designs import require_taught, told
from fireplace_calc.report.sentences import AT_MOST, compared
from fireplace_calc.rules import PACKS, Finding
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts

NOT_THAT_ONE, RIGHT = "Not that one. ", "Right: "
"""What a reply begins with."""
SHOWN = {
    "Opening": (
        "opening.width",
        "opening.type",
        "lintel.material",
        "lintel.bearing",
        "surround.face",
    ),
    "Firebox": (
        "firebox.depth",
        "firebox.wall",
        "firebox.jamb",
        "firebox.lining",
        "firebox.lining_thickness",
        "firebox.joint",
    ),
    "Throat": ("throat.height", "throat.depth", "throat.damper", "throat.damper_area"),
    "Smoke chamber": (
        "smoke_chamber.height",
        "smoke_chamber.construction",
        "smoke_chamber.wall",
        "smoke_chamber.lining",
        "smoke_chamber.lining_thickness",
    ),
    "Hearth": ("hearth.front", "hearth.side", "hearth.thickness", "hearth.drop"),
    "Flue": ("flue.shape", "flue.size", "flue.offset", "flue.offset_rise"),
    "Chimney": (
        "chimney.location",
        "chimney.wall",
        "chimney.gap",
        "chimney.liner_above",
        "chimney.wash",
    ),
    "Air space": ("clearance.front", "clearance.side", "clearance.back", "clearance.chimney"),
    "Roof": ("roof.position", "roof.ridge_level", "roof.ridge_distance", "roof.cricket_height"),
    "Ground": (
        "base.footing_thickness",
        "base.footing_projection",
        "base.footing_depth",
        "site.frost_depth",
    ),
    "Outdoor air": ("house.air_inlet",),
}
"""Inputs that are told, group by group."""
TOLD_SINCE: dict[str, int] = {}
"""Edition of the list of faults that told an input first, where it was not the first edition:
searches of an earlier one are printed as they were. [-]
"""


@lru_cache(maxsize=64)
def _found(design: Design, pack: str) -> dict[str, Finding]:
    return {f.key: f for f in PACKS[pack].check(told(design))}


def figures(
    fault_finding: FaultFinding, units: str = FEET_INCHES
) -> tuple[tuple[str, str, str], ...]:
    """Everything that is told of the design: group, name, figure in the reader's units.

    Parameters
    ----------
    fault_finding : Hunt
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of tuple of str
    """
    design, specs = fault_finding.design, all_inputs()
    work = gather_facts(sketch(design))
    made: list[tuple[str, str, str]] = []
    for group, keys in SHOWN.items():
        for key in keys:
            record, _, name = key.partition(".")
            value = getattr(getattr(design, record), name)
            late = TOLD_SINCE.get(key, 1) > fault_finding.edition
            if value is not None and not late and not _idle(design, key):
                kind = specs[key].kind
                made.append(
                    (
                        group,
                        specs[key].label,
                        str(value) if kind in ("choice", "text") else shown(value, kind, units),
                    )
                )
        made += [(group, name, text) for name, text in _worked(work, group, units)]
    return tuple(made)


def _idle(design: Design, key: str) -> bool:
    """Whether an input says nothing on this design."""
    idle = {
        "flue.offset": not design.flue.offset,
        "flue.offset_rise": not design.flue.offset,
        "hearth.drop": not design.hearth.drop,
        "roof.ridge_distance": design.roof.position != "on the slope",
        "throat.damper_area": design.throat.damper != "throat",
    }
    return idle.get(key, False)


def _worked(work: Facts, group: str, units: str) -> list[tuple[str, str]]:
    """Figures that are measured on the drawing rather than chosen."""
    f, design = work.frame, work.design

    def size(value: float, kind: str = "length") -> str:
        return shown(value, kind, units)

    if group == "Opening":
        arch = (
            [("Clear area under the arch", size(work.opening_area, "area"))]
            if design.opening.head == "segmental"
            else []
        )
        return [("Clear height, raise included", size(design.opening.clear_height)), *arch]
    if group == "Throat":
        return [("Free area of the throat", size(work.throat_area, "area"))]
    if group == "Smoke chamber":
        return [
            (
                "Steepest lean from vertical",
                size(work.smoke_chamber_slope_from_vertical, "angle"),
            )
        ]
    if group == "Hearth":
        return [("Slab and firebrick floor together", size(work.hearth_thickness))]
    if group == "Flue":
        net, wall = work.flue_net_area, work.liner_thickness
        return [
            *([("Net area by the liner table", size(net, "area"))] if net else []),
            *([("Wall of the liner", size(wall))] if wall else []),
        ]
    if group == "Roof":
        return [
            ("Pitch", f"{design.roof.pitch * 12:g} in 12"),
            ("Roof at the chimney, uphill", size(f.uphill_contact)),
            ("Chimney top", size(f.crown_top)),
            ("Chimney along the ridge", size(work.chimney_dim_parallel_ridge)),
        ]
    if group == "Air space":
        return [
            (
                f"{piece.name.capitalize()}, wood",
                f"{size(piece.drawn_distance)} from the opening,"
                f" projects {size(piece.drawn_projection)}",
            )
            for piece in design.surround.trim
        ]
    return []


def suspects(pack: str, edition: int | None = None) -> dict[str, str]:
    """Every rule that a fault of an edition might break: what it is called with its clause, to its
    key. The choice to guess from.
    """
    keys = {key for fault in offered(edition) for key in fault.rules}
    return {
        f"{rule.title} ({rule.clause})": rule.key
        for rule in require_taught(pack).rules
        if rule.key in keys
    }


def guess(fault_finding: FaultFinding, key: str, units: str = FEET_INCHES) -> Reply:
    """Reply to a guess.

    Parameters
    ----------
    fault_finding : Hunt
    key : str
        Of the rule that somebody thinks is broken.
    units : str
        Of the reply.

    Returns
    -------
    Reply
        Right with the figures, or why that rule stands.

    Examples
    --------
    >>> from fireplace_calc.lessons import planted
    >>> fault_finding = planted(3)
    >>> guess(fault_finding, fault_finding.findings[0].key).right
    True
    >>> guess(fault_finding, "FND-12").right
    False
    """
    finding = _found(fault_finding.design, fault_finding.pack)[key]
    provided, required, spare = compared(finding, units)
    at_most = next(rule for rule in PACKS[fault_finding.pack].rules if rule.key == key).at_most
    if at_most and not required.startswith(AT_MOST):
        required = f"{AT_MOST}{required}"
    if finding.verdict == FALLS_SHORT:
        name = next(
            fault.name
            for fault, broken in zip(fault_finding.faults, fault_finding.findings, strict=True)
            if broken.key == key
        )
        return Reply(
            True,
            f"{RIGHT}{name.lower()}. {finding.title}: {provided} provided, {required} required"
            f" ({finding.clause}). {finding.why}",
        )
    if finding.verdict == DOES_NOT_APPLY:
        return Reply(
            False,
            f"{NOT_THAT_ONE}{finding.title} ({finding.clause}) does not apply here: {finding.note}",
            DOES_NOT_APPLY,
        )
    left = f", {spare} to spare" if spare else ""
    note = f" {finding.note}" if finding.note else ""
    return Reply(
        False,
        f"{NOT_THAT_ONE}{finding.title} ({finding.clause}) stands: {provided} provided, {required}"
        f" required{left}.{note} {finding.why}",
        finding.verdict,
    )
