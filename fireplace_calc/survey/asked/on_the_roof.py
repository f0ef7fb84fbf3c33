"""What is measured on the roof: the top of the chimney, and what stands near it."""

from __future__ import annotations

from fireplace_calc.base.units import INCH
from fireplace_calc.survey.asked.entry import GREATEST, LEAST, ROOF, SurveyEntry, at, own_length

_roof = at(ROOF)
TWO = ("one way", "again")
NARROW = "The narrowest place sets what the flue can carry."

ENTRIES: tuple[SurveyEntry, ...] = (
    _roof(
        "chimney height",
        "From the top of the flue down to the firebox floor: a weighted line down the flue.",
        "measured.chimney_height",
        TWO,
        LEAST,
        "A shorter chimney pulls less.",
    ),
    _roof(
        "top over the roof",
        "From the top of the masonry down to the roof, at the uphill face.",
        "measured.over_contact",
        ("left", "right"),
        LEAST,
        "The roof is judged where it stands highest.",
    ),
    _roof(
        "top over what is near",
        "From the top of the masonry down to the level of the highest roof, wall or dormer within"
        " 10 ft. Level across, then measure.",
        "measured.over_nearby",
    ),
    _roof(
        "ridge distance",
        "Level from the uphill face of the chimney to the ridge.",
        "roof.ridge_distance",
    ),
    _roof("roof pitch", "Rise over a run of 12, with a level and a rule.", "roof.pitch"),
    _roof("where it comes out", "On the slope, or through the ridge.", "roof.position"),
    _roof(
        "chimney along the ridge",
        "Outside of the masonry, in the direction of the ridge.",
        "measured.along_ridge",
        ("at the roof", "under the crown"),
        GREATEST,
        "A wider chimney dams more water and snow.",
    ),
    _roof("cricket", "A saddle behind the chimney that sheds water.", "roof.cricket"),
    _roof(
        "cricket height",
        "From the roof up to the ridge of the saddle, at the chimney.",
        "roof.cricket_height",
    ),
    _roof("flue shape", "Look down. Square counts as rectangular.", "flue.shape"),
    _roof(
        "flue width",
        "Clear inside, left to right as seen from the room; the diameter when round.",
        "flue.own_width",
        TWO,
        LEAST,
        NARROW,
    ),
    _roof(
        "flue depth",
        "Clear inside, front to back as seen from the room; not when round.",
        "flue.own_depth",
        TWO,
        LEAST,
        NARROW,
    ),
    _roof(
        "rounding of the corners",
        "Inside a corner of the liner: how far from the square corner the curve begins.",
        "measured.flue_area",
        ("one corner", "another"),
        GREATEST,
        "What the corners take is not open to smoke.",
        own_length("Rounding of the corners", 0.0, 8 * INCH),
    ),
    _roof("liner wall", "Across the edge of the liner at the top.", "flue.own_wall"),
    _roof(
        "liner over the crown",
        "From the crown, where it meets the liner, up to the top of the liner.",
        "chimney.liner_above",
        TWO,
        LEAST,
        "Water runs in where it stands up least.",
    ),
    _roof("crown material", "What covers the top of the masonry.", "chimney.cap_material"),
    _roof("crown thickness", "At its outer edge.", "chimney.crown", TWO, LEAST, "It cracks there."),
    _roof(
        "crown overhang",
        "From the face of the masonry out to the edge of the crown.",
        "chimney.overhang",
        TWO,
        LEAST,
        "Water drips on the face that has least.",
    ),
    _roof("drip edge", "Feel under the crown's edge for a groove or a lip.", "chimney.drip"),
    _roof("rain cap", "A cover over the flue.", "chimney.rain_cap"),
    _roof("spark arrester", "Mesh over the flue.", "chimney.arrester"),
    _roof("chimney masonry", "Of the outer wall.", "chimney.masonry"),
    _roof(
        "chimney stands",
        "Inside the house, within an outer wall, or wholly outside it.",
        "chimney.location",
    ),
)
