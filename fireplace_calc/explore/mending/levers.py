"""What a mason can change to mend a design: one table of levers, each with the smallest step he
would take.
"""

from __future__ import annotations

from dataclasses import dataclass

NEXT = "next"
"""Step of a lever that goes from one standard liner to the next by net area."""


@dataclass(frozen=True, slots=True)
class Lever:
    """Something that can be changed by steps.

    Attributes
    ----------
    key : str
        Dotted name of the input; ``surround.trim`` for the pieces round the opening.
    step : str
        Smallest step with its sign and unit, a count, a word to take instead, or ``NEXT``.
    instruction : str
        What is done, as an order.
    for_draft : bool
        Whether it is moved for the draft's sake. A hint where to look, never a verdict.
    loads : tuple of str
        For the sake of which loads it is moved, by the clause of the structure's findings. Also a
        hint.
    max_steps : int
        Steps that are tried. [-]
    extra : str
        What it takes that the order does not list; empty where the order holds all of it.
    only_for : tuple of str
        How the keys begin of the findings it is honestly for; empty where it is for any. Nobody
        raises a throat to make a chimney taller.
    """

    key: str
    step: str
    instruction: str
    for_draft: bool = False
    loads: tuple[str, ...] = ()
    max_steps: int = 24
    extra: str = ""
    only_for: tuple[str, ...] = ()


NEAR_FIRE = ("CLR-07", "CLR-08", "CA-061", "CA-062", "PRA-18", "IBC-10", "DE-07")
"""Findings on what burns near the opening."""
STACK = ("wind, code mode", "wind, cautious mode", "slenderness", "earthquake")
HEAD, FOOT = ("lintel", "arch"), ("footing",)
DUCT, FRAMING, JOINERY, BARS = (
    "duct and grille",
    "moved framing",
    "joiner's work",
    "bars, ties and straps",
)
LEVERS = (
    Lever("flue.sections", "+1", "Add flue sections", for_draft=True, loads=STACK),
    Lever("flue.sections", "-1", "Leave out flue sections", loads=STACK),
    Lever("flue.size", "+" + NEXT, "Take a larger liner", for_draft=True, loads=STACK, max_steps=6),
    Lever(
        "flue.size", "-" + NEXT, "Take a smaller liner", for_draft=True, loads=STACK, max_steps=6
    ),
    Lever(
        "flue.shape",
        "+" + NEXT,
        "Take a larger liner of the other shape",
        for_draft=True,
        loads=STACK,
        max_steps=6,
    ),
    Lever("flue.own_width", "+1/2 in", "Widen the flue", for_draft=True, loads=STACK),
    Lever("flue.own_width", "-1/2 in", "Narrow the flue", for_draft=True, loads=STACK),
    Lever("flue.offset", "-1/2 in", "Shift the flue less", for_draft=True, loads=STACK),
    Lever("flue.offset_rise", "+2 in", "Shift the flue more gently"),
    Lever("opening.extension", "-1/2 in", "Raise the firebox less", for_draft=True, max_steps=48),
    Lever("opening.width", "-1 in", "Narrow the opening", for_draft=True, loads=HEAD + FOOT),
    Lever("opening.standard_height", "-1 in", "Lower the opening", for_draft=True),
    Lever("opening.rise", "+1/2 in", "Give the arch more rise", loads=HEAD),
    Lever("opening.rise", "-1/2 in", "Flatten the arch", loads=HEAD),
    Lever("throat.depth", "+1/2 in", "Deepen the throat", for_draft=True),
    Lever(
        "throat.height",
        "+1/2 in",
        "Set the throat higher",
        only_for=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever(
        "house.air_inlet",
        "+6 in2",
        "Give the fire more outdoor air",
        for_draft=True,
        max_steps=40,
        extra=DUCT,
    ),
    Lever(
        "house.exhaust",
        "-5 L/s",
        "Let the fans draw less",
        for_draft=True,
        max_steps=40,
        extra="other fans, or a lock between fans and fire",
    ),
    Lever(
        "smoke_chamber.height",
        "+1 in",
        "Make the smoke chamber taller",
        only_for=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever(
        "smoke_chamber.height",
        "-1 in",
        "Make the smoke chamber lower",
        only_for=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever("smoke_chamber.wall", "+1/2 in", "Thicken the smoke chamber wall"),
    Lever("smoke_chamber.lining_thickness", "+1/8 in", "Thicken the smoke chamber lining"),
    Lever(
        "smoke_chamber.lining",
        "vitrified clay",
        "Line the smoke chamber with vitrified clay",
        extra="clay lining",
    ),
    Lever("firebox.depth", "+1/2 in", "Deepen the firebox"),
    Lever("firebox.wall", "+1/2 in", "Thicken the firebox wall"),
    Lever("firebox.jamb", "+1/2 in", "Widen the jambs", loads=HEAD, max_steps=72),
    Lever("firebox.lining_thickness", "+1/4 in", "Thicken the lining"),
    Lever("firebox.joint", "-1/16 in", "Lay the firebrick with thinner joints"),
    Lever("firebox.floor", "+1/4 in", "Thicken the firebrick floor"),
    Lever("firebox.lining", "firebrick", "Line the firebox with firebrick"),
    Lever("firebox.masonry", "solid units", "Build with solid units"),
    Lever("lintel.bearing", "+1/2 in", "Let the lintel bear further", loads=HEAD),
    Lever("lintel.height", "+1/2 in", "Take a deeper lintel", loads=HEAD),
    Lever("lintel.thickness", "+1/16 in", "Take a thicker angle", loads=HEAD),
    Lever("lintel.angles", "+1", "Set another angle beside it", loads=HEAD),
    Lever("lintel.level_leg", "+1/2 in", "Take an angle with a longer level leg", loads=HEAD),
    Lever("lintel.material", "steel", "Take a steel lintel", loads=HEAD),
    Lever("hearth.front", "+1/2 in", "Bring the hearth further out in front", max_steps=40),
    Lever("hearth.side", "+1/2 in", "Bring the hearth further out at the sides"),
    Lever("hearth.thickness", "+1/4 in", "Thicken the hearth extension"),
    Lever("base.slab", "+1/2 in", "Thicken the hearth slab"),
    Lever("hearth.material", "stone", "Lay the hearth extension in stone"),
    Lever(
        "hearth.support",
        "noncombustible",
        "Carry the hearth on what does not burn",
        extra="another support",
    ),
    Lever(
        "hearth.forms_removed",
        "yes",
        "Take the forms out from under the hearth",
        extra="a man under the hearth",
    ),
    Lever("chimney.wall", "+1/2 in", "Thicken the chimney wall", loads=STACK),
    Lever("chimney.gap", "-1/8 in", "Close the gap round the liner", loads=STACK),
    Lever("chimney.gap", "+1/8 in", "Open the gap round the liner", loads=STACK),
    Lever("chimney.liner_above", "+1/4 in", "Let the liner stand further out"),
    Lever("chimney.liner_above", "-1/4 in", "Let the liner stand less far out"),
    Lever("chimney.overhang", "+1/2 in", "Let the crown stand further out"),
    Lever("chimney.cap_material", "concrete", "Cast the crown in concrete"),
    Lever("chimney.drip", "yes", "Give the crown a drip edge"),
    Lever("chimney.bond_break", "yes", "Part the crown from the liner"),
    Lever("chimney.arrester", "no", "Leave out the spark arrester", for_draft=True),
    Lever("chimney.rain_cap", "no", "Leave out the rain cap", for_draft=True),
    Lever("flue.liner", "ASTM C315 clay", "Line the flue with clay"),
    Lever("clearance.front", "+1/4 in", "Leave more air in front", extra=FRAMING),
    Lever("clearance.side", "+1/4 in", "Leave more air beside", extra=FRAMING),
    Lever("clearance.back", "+1/4 in", "Leave more air behind", extra=FRAMING),
    Lever("clearance.chimney", "+1/4 in", "Leave more air round the chimney", extra=FRAMING),
    Lever("clearance.fill", "none", "Clear out the air space", extra="a hand in the air space"),
    Lever(
        "clearance.fireblock",
        "noncombustible",
        "Block the fire with what does not burn",
        extra="fireblock",
    ),
    Lever(
        "surround.trim", "+1/2 in", "Set trim that burns further from the opening", extra=JOINERY
    ),
    Lever("surround.trim", "-1/8 in", "Pull back", extra=JOINERY),
    Lever(
        "mantel.over_opening",
        "+1/2 in",
        "Raise the mantel",
        extra=JOINERY,
        only_for=NEAR_FIRE,
    ),
    Lever(
        "mantel.beside",
        "+1/2 in",
        "Set pilasters or corbels further from the opening",
        extra=JOINERY,
        only_for=NEAR_FIRE,
    ),
    Lever(
        "mantel.projection",
        "-1/8 in",
        "Let pilasters and frieze stand out less",
        extra=JOINERY,
        only_for=NEAR_FIRE,
    ),
    Lever(
        "mantel.material", "stone", "Take a mantel of stone", extra="a mason", only_for=NEAR_FIRE
    ),
    Lever("base.footing_thickness", "+1 in", "Thicken the footing", loads=FOOT),
    Lever("base.footing_projection", "+1 in", "Widen the footing", loads=FOOT),
    Lever("base.footing_depth", "+2 in", "Found it deeper", extra="more digging"),
    Lever("roof.cricket", "yes", "Build a cricket behind the chimney", extra="roofer's work"),
    Lever(
        "roof.cricket_height", "+1/4 in", "Raise the cricket", extra="roofer's work", max_steps=48
    ),
    Lever(
        "throat.damper_material",
        "ferrous",
        "Take a damper of iron or steel",
        extra="another damper",
    ),
    Lever(
        "loads.support",
        "+6 in",
        "Hold the chimney higher up",
        loads=STACK,
        max_steps=40,
        extra="a tie that really holds it",
    ),
    Lever("anchorage.vertical_bars_no4", "+1", "Add upright bars", loads=STACK, extra=BARS),
    Lever("anchorage.tie_spacing_vertical", "-1 in", "Set the ties closer", extra=BARS),
    Lever("anchorage.strap_count", "+1", "Add straps at each level", extra=BARS),
    Lever(
        "anchorage.strap_embedment", "+1 in", "Run the straps further into the chimney", extra=BARS
    ),
    Lever("air.intake_screen_mesh", "-1/16 in", "Screen the air intake more finely", extra=DUCT),
    Lever("air.outlet_closable", "yes", "Make the air outlet close", extra=DUCT),
    Lever("air.ember_guard", "yes", "Guard the air outlet", extra=DUCT),
)
"""Everything that is tried; steps are our own habit. A figure measured on site is no lever, nor is
an answer that is still missing.
"""
