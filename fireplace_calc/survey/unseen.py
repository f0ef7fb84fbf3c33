"""What no survey sees, and how one would find out."""

from __future__ import annotations

from typing import NamedTuple


class Unseen(NamedTuple):
    """Something that stays hidden from tape, lamp and mirror.

    Attributes
    ----------
    what : str
    why : str
        What it decides.
    how : str
        How one would find out, and who.
    """

    what: str
    why: str
    how: str


LICENSED = "a licensed chimney professional"

UNSEEN: tuple[Unseen, ...] = (
    Unseen(
        "The inside of the flue between top and smoke chamber",
        "A cracked tile or an open joint lets fire and gas through.",
        f"Camera down the whole flue, after sweeping, by {LICENSED}.",
    ),
    Unseen(
        "Whether the flue leaks",
        "Smoke and carbon monoxide can reach rooms and other flues.",
        f"Smoke or pressure test of the closed flue, by {LICENSED}.",
    ),
    Unseen(
        "Steel in the masonry: bars, anchors, the hidden leg of a lintel",
        "It holds in an earthquake and carries the wall over the opening.",
        "Cover meter; a brick taken out beside it. An engineer decides.",
    ),
    Unseen(
        "Thickness of firebox, smoke chamber and chimney wall behind the facing",
        "It keeps heat from the framing.",
        "A small hole drilled through a joint and mended, or a brick taken out.",
    ),
    Unseen(
        "Masonry behind the lining: solid, hollow or rubble",
        "Hollow masonry counts for less, and open holes feed fire.",
        "A brick taken out; tapping hints at it and proves nothing.",
    ),
    Unseen(
        "What is in the air space behind and beside the masonry",
        "Wood or insulation in it can catch fire years later.",
        "Opening the wall or the floor, or a thin camera through a hole.",
    ),
    Unseen(
        "Firestops between floors",
        "Without them a fire in the air space climbs to the attic.",
        "Looking from attic and basement; opening where neither shows it.",
    ),
    Unseen(
        "The throat behind an old damper or a raised lintel",
        "A hand that raised the opening may have cut throat or smoke shelf.",
        "Damper taken out; a drawing or a photograph from when it was built.",
    ),
    Unseen(
        "How the raised lintel was let in",
        "Brick over it may hang on old mortar alone.",
        "Plaster or a brick taken off at both ends; an engineer decides. Prop it first.",
    ),
    Unseen(
        "The footing: its depth, thickness and soil",
        "It carries all the weight, and frost can lift it.",
        "A hole dug beside it, away from its corner; an engineer or the building department.",
    ),
    Unseen(
        "The ash pit behind its door, and what lies under it",
        "Embers can lie there, and wood may have been built in.",
        "Emptied cold, with a mask, then lamp and mirror.",
    ),
    Unseen(
        "Another appliance on the same flue",
        "Its gas can come out of the fireplace.",
        "Smoke test, and following every pipe to the chimney.",
    ),
)
"""In the order of what can hurt first."""

CAUTIONS = (
    "Put the fire out and let the masonry cool. Open the damper before you put your head in.",
    "Soot and old mortar harm lungs and eyes: wear a mask with a tight filter and goggles. Old"
    " gaskets and plaster may hold asbestos: leave them alone.",
    "Stand under no lintel that sags and beside no chimney that leans.",
    "Roof only in dry, calm weather, tied to something that holds, with a second person below."
    " Where that cannot be, leave it to those who are equipped.",
    "A survey is no inspection. Light no fire on the strength of it: local code, the building"
    " official and a licensed chimney professional decide.",
)
"""What can hurt whoever measures, printed on the sheet."""
