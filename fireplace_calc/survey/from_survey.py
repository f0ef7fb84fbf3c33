"""From entries a design: what was measured is told, the rest is assumed or unknown, and named."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import hypot
from typing import Any

from fireplace_calc.base.printing import length_text
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import all_inputs, apply, change
from fireplace_calc.geometry.frame_builder import back_width
from fireplace_calc.survey.asked.entry import NOTE
from fireplace_calc.survey.asked.out_of_sight import BARE
from fireplace_calc.survey.kept import Survey
from fireplace_calc.survey.reading import MEASURED, UNREACHED, SurveyReading, read_entries
from fireplace_calc.survey.worked_out import (
    Readings,
    chimney_inputs,
    flue_inputs,
    low_throat,
    opening_inputs,
    throat_inputs,
    trim_inputs,
)

NAME = "A fireplace that stands"
DEEP = (
    "Floor above grade is measured and not drawn: the usual footing would stand in the hearth."
    " How deep the footing lies is not seen."
)
TOGETHER = frozenset(
    (
        *("opening height", "height before raising", "throat length", "rounding of the corners"),
        *("flue shape", "flue width", "flue depth"),
    )
)
"""Entries that fill their input only together with others, or not as they were typed."""


@dataclass(frozen=True)
class Surveyed:
    """What a survey comes to.

    Attributes
    ----------
    readings : mapping of str to SurveyReading
        Every entry, in the order of the walk.
    changes : mapping
        What was told to the design, by dotted key.
    design : Design or None
        Nothing where the entries do not go together.
    trouble : str
        Why there is none, in one sentence.
    at : str
        Key of the entry it is about, where one is.
    said : tuple of str
        What was drawn otherwise, or cannot be told, one sentence each.
    """

    readings: Mapping[str, SurveyReading]
    changes: Mapping[str, Any]
    design: Design | None
    trouble: str = ""
    at: str = ""
    said: tuple[str, ...] = ()

    def of_state(self, state: str) -> tuple[SurveyReading, ...]:
        """Readings in one state: measured, cannot reach, not looked at, cannot be read."""
        return tuple(one for one in self.readings.values() if one.state == state)

    @property
    def signs(self) -> tuple[SurveyReading, ...]:
        """Signs of trouble that were seen."""
        return tuple(one for one in self.readings.values() if one.entry.fills == NOTE and one.taken)

    @property
    def assumed(self) -> tuple[str, ...]:
        """Inputs that stand at a default nobody has measured, in reading order; none without a
        design.
        """
        if self.design is None:
            return ()
        found = assumed(self.design)
        listed = tuple(key for key in all_inputs() if key in found)
        return (*listed, *sorted(found.difference(listed)))


def surveyed(survey: Survey) -> Surveyed:
    """Read a survey and make a design of it.

    Parameters
    ----------
    survey : Survey

    Returns
    -------
    Surveyed
        An entry that cannot be read is left out, and told by its reading; what cannot be reached
        is unknown where an input may be, else assumed.
    """
    readings = read_entries(survey)
    changes: dict[str, Any] = {}
    said: tuple[str, ...] = ()
    try:
        changes, area = _changes(survey, readings)
        behind, low = low_throat(readings)
        changes |= behind
        below = apply(Design(), changes)
        changes |= chimney_inputs(readings, below)
        given_way, said = _give_way(below, changes)
        changes |= given_way
        if "site.grade" in changes and _too_deep(below):
            del changes["site.grade"]
            said = (*said, DEEP)
        said = (*low, *said, *((area,) if area else ()), *_side_by_side(changes))
        return Surveyed(readings, changes, change(Design(), changes), said=said)
    except InputError as wrong:
        where = _entry_of(readings, wrong.name)
        return Surveyed(readings, changes, None, str(wrong), where, said)


def _changes(survey: Survey, readings: Readings) -> tuple[dict[str, Any], str]:
    """What the entries tell, without the height of the flue; and why its area is not told."""
    told = {
        key: text for key, text in (("name", survey.name), ("site.place", survey.place)) if text
    }
    changes: dict[str, Any] = {"name": NAME, **told, NOTE: _note(readings)}
    specs = all_inputs()
    for key, one in readings.items():
        fills = one.entry.fills
        if fills == NOTE or fills not in specs or key in TOGETHER:
            continue
        if one.state == MEASURED:
            changes[fills] = one.text
        elif one.state == UNREACHED and specs[fills].optional:
            changes[fills] = None
    if readings[BARE].taken and readings["smoke chamber lining"].state != MEASURED:
        changes["smoke_chamber.lining"] = None
    changes |= opening_inputs(readings) | throat_inputs(readings) | trim_inputs(readings)
    flue, area = flue_inputs(readings)
    return changes | flue, area


def _note(readings: Readings) -> str:
    """What the design's note keeps: that it was measured, and which signs of trouble were seen."""
    seen = [one.entry.key for one in readings.values() if one.entry.fills == NOTE and one.taken]
    return "Measured as it stands." + (f" Seen: {', '.join(seen)}." if seen else "")


def _entry_of(readings: Readings, label: str) -> str:
    """The entry that a sentence is about, by the label or the key of its input."""
    names = {key for key, spec in all_inputs().items() if label in (key, spec.label)}
    for key, one in readings.items():
        about = label in (key, one.entry.spec.label) or one.entry.fills in names
        if about and one.state == MEASURED:
            return key
    return ""


def _too_deep(design: Design) -> bool:
    """Whether the room lies so deep that the usual footing would stand in the hearth's slab."""
    base, hearth = design.base, max(design.base.hearth_level, design.hearth.drop)
    under = hearth + design.site.grade + base.footing_depth - base.footing_thickness
    bed = design.hearth.thickness + design.hearth.bed
    ahead = min(hearth - design.hearth.drop - bed, 0.0) + design.site.grade + base.footing_depth
    over = max(base.slab + design.firebox.floor - under, base.footing_thickness - ahead)
    return over > ROUNDING


Limit = Callable[[Design], float]


def _bend(design: Design) -> float:
    firebox = design.firebox
    rake = min(firebox.rake, max(firebox.depth - firebox.breast - design.throat.depth, 0.0))
    return design.opening.height + design.throat.height - rake / 2


def _lined(design: Design) -> float:
    firebox = design.firebox
    splay = (design.opening.width - back_width(design)) / 2 / firebox.depth
    return min(firebox.wall, firebox.jamb / hypot(1.0, splay))


LINING = "firebox.lining_thickness"
LIMITS: dict[str, Limit] = {
    LINING: _lined,
    "firebox.vertical_back": _bend,
    "lintel.height": lambda design: design.throat.height,
    "lintel.bearing": lambda design: design.firebox.jamb,
    "smoke_chamber.transition": lambda design: 0.9 * design.smoke_chamber.height,
    "opening.rise": lambda design: min(design.opening.width / 2, design.opening.height),
}
"""Assumed lengths that give way to measured ones, and how much what was measured leaves them. [m]
"""


def _give_way(design: Design, told: Mapping[str, Any]) -> tuple[dict[str, Any], tuple[str, ...]]:
    """What nobody measured, and would not fit, is unknown where it may be, else drawn smaller."""
    specs, made, said = all_inputs(), {}, []
    for key, limit in LIMITS.items():
        group, _, name = key.partition(".")
        value, most = getattr(getattr(design, group), name), limit(design)
        spec = specs[key]
        if key in told or value is None or value <= most or most < spec.bounds[0]:
            continue
        made[key] = None if spec.optional else length_text(most)
        how = "is unknown" if spec.optional else "is drawn smaller than usual"
        said.append(f"{spec.label} {how}: what was measured leaves no room for the usual one.")
    if LINING in made:
        made["firebox.lining"] = None  # no check may pass on a thickness that nobody measured
        said.append("What faces the fire is not checked: how thick it is was not measured.")
    return made, tuple(said)


def _side_by_side(changes: Mapping[str, Any]) -> tuple[str, ...]:
    """What was worked out and not measured."""
    if "flue.sections" not in changes:
        return ()
    return (
        f"The flue is drawn in {changes['flue.sections']} sections of one height: its joints are"
        " not seen, its height is measured.",
    )
