"""What is measured in the room, standing and kneeling before the fireplace."""

from __future__ import annotations

from fireplace_calc.base.inputs import Input
from fireplace_calc.base.units import INCH
from fireplace_calc.survey.asked.entry import (
    GREATEST,
    LEAST,
    ROOM,
    SurveyEntry,
    at,
    of_trim,
    own_length,
)

SIDES = ("left", "right")
SPARKS = "A spark lands where the hearth is shortest."
BIGGER = "A bigger opening asks for a bigger flue and hearth."
HEAT = "What burns is judged where it is nearest to the fire."
_room = at(ROOM)

ENTRIES: tuple[SurveyEntry, ...] = (
    _room(
        "opening width",
        "From jamb to jamb at the face, brick to brick. Level tape.",
        "opening.width",
        ("top", "bottom"),
        GREATEST,
        BIGGER,
    ),
    _room(
        "opening height",
        "From the firebox floor up to the underside of the lintel, at the face. Under an arch: at"
        " the crown.",
        "opening.standard_height",
        SIDES,
        GREATEST,
        BIGGER,
        own_length("Opening height", 16 * INCH, 84 * INCH),
    ),
    _room(
        "height before raising",
        "From the firebox floor up to where joint, brick or soot line changes on the jamb. Only"
        " where that shows.",
        "opening.extension",
        spec=own_length("Height before raising", 16 * INCH, 60 * INCH),
    ),
    _room("head", "A level lintel is straight; an arch is segmental.", "opening.head"),
    _room("arch rise", "From the spring line up to the crown.", "opening.rise"),
    _room(
        "firebox depth",
        "From the plane of the opening back to the fireback, along the floor.",
        "firebox.depth",
        SIDES,
        LEAST,
        "A shallow firebox spills smoke and throws sparks.",
    ),
    _room("back width", "Across the fireback, along the floor.", "firebox.back_width"),
    _room(
        "vertical back",
        "From the firebox floor up the back to where it begins to lean.",
        "firebox.vertical_back",
    ),
    _room("lining", "What faces the fire. Look at a joint or a chip.", "firebox.lining"),
    _room(
        "firebrick joint",
        "Across a joint between firebricks, the widest you find.",
        "firebox.joint",
    ),
    _room(
        "jamb",
        "From the edge of the opening out to the end of the masonry. Masonry only: no plaster.",
        "firebox.jamb",
        SIDES,
        LEAST,
        "The lintel rests on the narrower one.",
    ),
    _room(
        "breast",
        "Hook the tape under the lintel: from its face through to the inside.",
        "firebox.breast",
        SIDES,
        LEAST,
        "The thinner end carries less.",
    ),
    _room("lintel material", "What carries the masonry over the opening.", "lintel.material"),
    _room(
        "lintel height",
        "The upright leg of the angle, or the depth of stone, concrete or arch ring.",
        "lintel.height",
    ),
    _room("lintel thickness", "Steel: across the edge of a leg.", "lintel.thickness"),
    _room(
        "lintel bearing",
        "From the edge of the opening to the end of the lintel. Only where an end shows.",
        "lintel.bearing",
        SIDES,
        LEAST,
        "The shorter end slips first.",
    ),
    _room(
        "hearth level",
        "From the finished room floor up to the firebox floor.",
        "base.hearth_level",
    ),
    _room(
        "hearth step",
        "From the top of the hearth in front up to the firebox floor; nought where they are level.",
        "hearth.drop",
    ),
    _room(
        "hearth in front",
        "From the plane of the opening out to the front edge of the hearth.",
        "hearth.front",
        ("left", "middle", "right"),
        LEAST,
        SPARKS,
    ),
    _room(
        "hearth beside",
        "From the edge of the opening sideways to the end of the hearth.",
        "hearth.side",
        SIDES,
        LEAST,
        SPARKS,
    ),
    _room(
        "hearth thickness",
        "The finished layer in front, at an open edge.",
        "hearth.thickness",
    ),
    _room("hearth material", "Of the hearth in front.", "hearth.material"),
    _room(
        "trim that burns",
        "Mantel, shelf or trim of wood or the like, within a foot of the opening or over it.",
        "surround.trim",
        spec=Input("Trim that burns", "yes-no", None, optional=True),
    ),
    _room(
        "mantel distance",
        "From the top of the opening up to the lowest edge of the mantel or trim that burns.",
        "surround.trim",
        SIDES,
        LEAST,
        HEAT,
        of_trim("distance"),
    ),
    _room(
        "mantel projection",
        "From the face of the masonry out to the front edge of that piece.",
        "surround.trim",
        SIDES,
        GREATEST,
        HEAT,
        of_trim("projection"),
    ),
    _room(
        "side trim distance",
        "From the edge of the opening sideways to the nearest trim that burns.",
        "surround.trim",
        SIDES,
        LEAST,
        HEAT,
        of_trim("distance"),
    ),
    _room(
        "side trim projection",
        "From the face of the masonry out to the front of that trim.",
        "surround.trim",
        SIDES,
        GREATEST,
        HEAT,
        of_trim("projection"),
    ),
    _room(
        "ceiling height",
        "From the finished floor up to the ceiling, before the fireplace.",
        "house.ceiling",
    ),
    _room("room length", "Along the fireplace wall.", "house.room_length"),
    _room("room width", "From the fireplace wall to the wall across.", "house.room_width"),
)
