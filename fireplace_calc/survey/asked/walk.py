"""Everything the survey asks, in the order whoever measures walks."""

from __future__ import annotations

from fireplace_calc.survey.asked import in_the_room, looking_up, on_the_roof, out_of_sight
from fireplace_calc.survey.asked.entry import SurveyEntry

WALK: tuple[SurveyEntry, ...] = (
    *in_the_room.ENTRIES,
    *looking_up.ENTRIES,
    *on_the_roof.ENTRIES,
    *out_of_sight.ENTRIES,
    *out_of_sight.SIGNS_OF_TROUBLE,
)
"""Every entry."""
BY_KEY = {entry.key: entry for entry in WALK}
NUMBER = {entry.key: number for number, entry in enumerate(WALK, 1)}
"""As it stands on the sheet, beside the arrow. [-]"""
ENTRY_OF = {box: entry for entry in WALK for box in entry.boxes}
"""By the name of each place to write a reading."""
