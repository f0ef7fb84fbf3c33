"""What is measured round the masonry where the house hides it, and the signs of trouble."""

from __future__ import annotations

from fireplace_calc.survey.asked.entry import HIDDEN, LEAST, SurveyEntry, at, sign

_hidden = at(HIDDEN)
NEAREST = "Wood chars where it is nearest."
BARE = "smoke chamber bare"
NO_FIRE = "Light no fire before a licensed chimney professional has looked."

ENTRIES: tuple[SurveyEntry, ...] = (
    _hidden(
        "air around the chimney",
        "In the attic and at each floor: from the masonry to the nearest wood.",
        "clearance.chimney",
        ("left", "right", "front", "back"),
        LEAST,
        NEAREST,
    ),
    _hidden(
        "air beside the fireplace",
        "From the side of the masonry to the nearest framing.",
        "clearance.side",
        ("left", "right"),
        LEAST,
        NEAREST,
    ),
    _hidden(
        "air behind the fireplace",
        "From the back of the masonry to the nearest framing.",
        "clearance.back",
    ),
    _hidden(
        "air in front",
        "From the face of the masonry over the opening to the header or framing behind the trim.",
        "clearance.front",
    ),
    _hidden(
        "fill around the chimney",
        "What has been put into the air space.",
        "clearance.chimney_fill",
    ),
    _hidden(
        "fireblock",
        "What closes the air space at floors and ceilings.",
        "clearance.fireblock",
    ),
    _hidden("fireblock depth", "Up and down.", "clearance.fireblock_depth"),
    _hidden(
        "hearth thickness under the fire",
        "Through the ash dump or an open edge: firebrick and slab together.",
        "measured.hearth_thickness",
    ),
    _hidden("hearth support", "From below: what carries the hearth.", "hearth.support"),
    _hidden(
        "forms removed",
        "From below: yes when no boards are left under the hearth.",
        "hearth.forms_removed",
    ),
    _hidden(
        "clean-out",
        "A door or cover at the foot of the flue, or of the ash pit.",
        "stack.cleanout",
    ),
    _hidden(
        "floor above grade",
        "Outside: from the ground up to the level of the room floor.",
        "site.grade",
    ),
)

SIGNS_OF_TROUBLE: tuple[SurveyEntry, ...] = (
    sign(
        "liner cracked or open",
        "Lamp down the flue: cracks, gaps, tiles out of line, bare brick between them.",
        f"Flame and gas can reach the masonry and the framing. {NO_FIRE}",
    ),
    sign(
        "wood charred or stained",
        "Framing, trim or sheathing near the masonry that is brown, black or brittle.",
        f"The wood has been too hot and takes fire more easily now. {NO_FIRE}",
    ),
    sign(
        "lintel sags or masonry cracked",
        "A lintel that is bent or rusted thick, or a crack that runs up from its end.",
        "The masonry over the opening may come down. Prop it, and have an engineer look.",
    ),
    sign(
        "firebox joints open",
        "Mortar gone, firebrick loose, a gap between firebox and smoke chamber.",
        f"Fire can reach what is behind the lining. {NO_FIRE}",
    ),
    sign(
        BARE,
        "Looking up: steps of bare brick or block, no smooth coat.",
        "Mortar joints that face the smoke leak it. Have the chamber parged.",
    ),
    sign(
        "soot on the face",
        "Soot on lintel, breast or mantel.",
        "It has smoked into the room. Smoke brings carbon monoxide: put an alarm up.",
    ),
    sign(
        "thick soot or glaze",
        "More than 1/8 in, or shiny black, in the smoke chamber or the flue.",
        "It burns like a torch. Have it swept before any fire.",
    ),
    sign(
        "crown or cap broken",
        "Cracks in the crown, loose cap, plants.",
        "Water gets in and frost breaks the top. Mend it before winter.",
    ),
    sign(
        "chimney leans or has moved",
        "A gap that opens upward between chimney and house, or a lean against a plumb line.",
        "The footing may have given way. Keep people from under it, and have an engineer look.",
    ),
)
