"""One geometry in, one frozen record of its structure out: numbers, findings, and when to send for
an engineer.
"""

from __future__ import annotations

from dataclasses import replace

from fireplace_calc.base.printing import named_in_both, show
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.rules.comparing import FALLS_SHORT, exceeds
from fireplace_calc.structure.arch import assess_arch
from fireplace_calc.structure.beam import hot_growth
from fireplace_calc.structure.figures import figure
from fireplace_calc.structure.findings.register import judgement
from fireplace_calc.structure.footing import assess_footing
from fireplace_calc.structure.lintel import LintelResult, assess_lintel
from fireplace_calc.structure.loads.hill import hill_at
from fireplace_calc.structure.loads.seismic import STRONG_SEISMIC, seismic_load, steel
from fireplace_calc.structure.loads.stack import free_stack
from fireplace_calc.structure.loads.weights import weigh
from fireplace_calc.structure.record import Structure

MORTARS = {"type M": ("M or S",), "type S": ("M or S",), "type N": ("N",), "type O": ()}
"""What a mix of cement and lime counts as in the table of bed joints."""
WEAK_LINTEL = {"STR-09", "STR-10", "STR-13", "STR-24", "STR-25"}
SILENT = (
    "The US residential code has no wind rule for chimneys. Meeting it does not make a "
    "chimney stable."
)


def _engineer(structure: Structure) -> tuple[str, ...]:
    design, found = structure.design, []
    short = {f.key for f in structure.findings if f.verdict == FALLS_SHORT}
    loads, category = design.loads, design.site.seismic
    if short & {"STR-01", "STR-02", "STR-03"}:
        found.append(
            "Wind is too much for the free part of the chimney: brace, lower or thicken it, or have"
            " an engineer reinforce it."
        )
    if "STR-23" in short:
        found.append(
            "The stack presses harder than its masonry may bear: thicken it, or ask an engineer."
        )
    if short & {"STR-04", "STR-05", "STR-06"}:
        found.append(
            "The chimney is more slender than the books allow without calculation: have "
            "an engineer do it."
        )
    if "STR-07" in short:
        found.append(
            "Earthquake is too much for a plain chimney here: have an engineer reinforce and anchor"
            " it, or build it light."
        )
    if category in STRONG_SEISMIC:
        found.append(
            f"Seismic category {category}: bars, ties and straps are the least; an engineer should"
            " see chimney and anchors."
        )
    elif category == "C":
        found.append(
            "Seismic category C: the International Building Code asks for bars here, the "
            "house code does not. Ask the building department or an engineer."
        )
    elif category is None:
        found.append(
            "The seismic category is not known: ask the building department before you build."
        )
    if loads.sds is not None and loads.support is None:
        found.append(
            "In an earthquake a chimney that nothing holds falls under another chapter: "
            "call an engineer."
        )
    if loads.in_triangle:
        found.append(
            "A floor or beam bears within the triangle over the opening: an engineer sizes the"
            " lintel or the arch."
        )
    head = structure.lintel or structure.arch
    if head is not None and head.low_cover:
        found.append(
            "The opening is so wide that its triangle runs out of the breast: an engineer sizes the"
            " head."
        )
    if structure.lintel is not None and short & WEAK_LINTEL:
        found.append(
            "The lintel is too weak, bends too far or bears too little: use a heavier "
            "one, or ask an engineer."
        )
    if structure.arch is not None and not structure.arch.ring.minor:
        found.append(
            "The arch spans more than 6 ft or rises more than 0.15 of its span: that is "
            "a major arch, for an engineer."
        )
    if structure.arch is not None and short & {"STR-16", "STR-17", "STR-18"}:
        found.append(
            "The arch's thrust leaves its ring or is too much for a jamb: make the ring "
            "deeper or the jamb wider, or ask an engineer."
        )
    if design.site.soil is None or design.ground.bearing_stratum == "other":
        found.append(
            "The soil is not known, or the table gives it no bearing. Have the ground "
            "tested and an engineer size the footing."
        )
    if short & {"STR-19", "STR-20"}:
        found.append(
            "The footing presses harder than the soil's table allows: make it wider, or "
            "ask an engineer."
        )
    return tuple(found)


def _ground(structure: Structure) -> str:
    """What the ground does to the wind."""
    loads, frame = structure.design.loads, structure.frame
    if loads.hill == "flat":
        return "The ground is taken as flat; a hill or a ridge makes the wind stronger."
    top, foot = (hill_at(loads, z) for z in (frame.highest - frame.grade, 0.0))
    return (
        f"The {loads.hill} makes its pressure {top:.2f} times that over flat ground at the"
        f" chimney's top, {foot:.2f} at the ground."
    )


def _angle_remarks(structure: Structure, head: LintelResult) -> list[str]:
    """What the drawn angles leave without steel under it, and how they lie."""
    found, lintel, breast = [], structure.design.lintel, structure.frame.breast
    if exceeds(breast, head.seat):
        found.append(
            f"The level {'legs carry' if lintel.angles > 1 else 'leg carries'}"
            f" {named_in_both(head.seat, 'length')} of a breast"
            f" {named_in_both(breast, 'length')} thick: bond the rest over it course by course, or"
            " set another angle beside it."
        )
    if exceeds(head.seat / lintel.angles, lintel.height):
        found.append("The longer leg lies level: set it upright, which carries far more.")
    return found


def _remarks(structure: Structure) -> tuple[str, ...]:
    found, side, design = [SILENT], structure.stack.worst, structure.design
    if side.wind_load is not None and not structure.stack.supported and side.wind_load.area > 0:
        found.append(
            f"Wind {side.wind_load.side}:"
            f" {named_in_both(side.wind_load.structure_force, 'force')} as another structure,"
            f" {named_in_both(side.wind_load.rooftop_force, 'force')} as a rooftop structure,"
            f" from {design.loads.wind_map} maps; the larger is used."
            f" {_ground(structure)}"
        )
        if side.corner is not None and side.tension is not None:
            found.append(
                "With the wind on the diagonal a corner would see"
                f" {show(side.corner, 'strength')} where the face sees"
                f" {show(side.tension, 'strength')} (tension positive); practice"
                " checks the face."
            )
        if side.wind_load.rooftop_factor > 1.89 and design.loads.building_width is None:
            found.append(
                "The building's width is not known: the rooftop force is taken at its largest."
            )
    elif side.wind_load is None and not structure.stack.supported:
        found.append(
            "Wind speed and exposure come from the local code's map; the weather stations here do"
            " not give them."
        )
    told, mixed = design.loads.mortar, design.work.mortar_mix
    if told is not None and mixed in MORTARS and told not in MORTARS[mixed]:
        found.append(
            f"The chimney's mortar is told as {told}, but the list mixes {mixed}: make them one."
        )
    head = structure.lintel
    if head is not None:
        found.append(
            "The lintel is figured for the clear opening and one bearing, "
            f"{named_in_both(head.span, 'length')}, "
            "with solid jambs beside it and shores until the mortar is hard."
        )
        if head.kind == "steel":
            found += _angle_remarks(structure, head)
            found.append(
                "Steel in the head of a firebox grows: leave"
                f" {named_in_both(hot_growth(head.span), 'length')} free at its ends, and brick"
                " between it and the fire (from memory)."
            )
        if head.kind == "reinforced concrete" and head.stress is not None:
            found.append(
                "As plain concrete the lintel would bend at"
                f" {show(head.stress, 'strength')} where such concrete breaks at some"
                f" {show(figure('plain concrete rupture'), 'strength')}: a"
                " precast lintel needs its bars."
            )
        if head.beam is not None:
            found.append(
                "The bars run the whole length of the lintel and are grouted in all round. How they"
                " are anchored, and what they sag, is not checked."
            )
        if head.skew is not None:
            found.append(
                f"A flat arch of this span is cut with its skewbacks out by {head.skew:.2f} of its"
                " depth."
            )
    return tuple(found)


def assess_structure(geometry: Geometry, pack: str = "") -> Structure:
    """Work the structure of a design through.

    Parameters
    ----------
    geometry : Geometry
    pack : str
        Book the job is under: rules of another country than its own are no shortfall. Empty takes
        them all.

    Returns
    -------
    Structure
        All of it in SI. Not a stamped design: local code and a licensed engineer come first.

    Examples
    --------
    >>> from fireplace_calc.geometry.builder import build_geometry
    >>> from fireplace_calc.design.records import Design
    >>> assess_structure(build_geometry(Design())).edition
    'engineering judgement'
    """
    design, frame, weights = geometry.design, geometry.frame, weigh(geometry)
    stack = free_stack(design, frame, weights)
    structure = Structure(
        design,
        frame,
        weights,
        stack,
        seismic_load(design, frame, weights, stack),
        steel(design, frame),
        assess_lintel(design, frame, weights),
        assess_arch(design, frame, weights),
        assess_footing(design, frame, weights, stack),
        pack=pack,
    )
    structure = replace(structure, findings=judgement(structure))
    return replace(structure, engineer=_engineer(structure), remarks=_remarks(structure))
