"""Entries read one by one: what was told, which reading is taken, and how far they differ. [SI]"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.survey.asked.entry import GREATEST, SurveyEntry
from fireplace_calc.survey.asked.walk import WALK
from fireplace_calc.survey.kept import Survey

MEASURED, UNREACHED, LEFT_OUT, WRONG = "measured", "cannot reach", "not looked at", "cannot be read"


@dataclass(frozen=True)
class SurveyReading:
    """One entry, read.

    Attributes
    ----------
    entry : SurveyEntry
    state : str
        ``measured``, ``cannot reach``, ``not looked at`` or ``cannot be read``.
    given : mapping of str to value
        By the name of the reading, what was read; only what was told. [SI]
    taken : value or None
        The one that the design takes. [SI]
    text : str
        It as it was typed.
    wrong : mapping of str to str
        By box, what cannot be read there, in one sentence.
    """

    entry: SurveyEntry
    state: str
    given: Mapping[str, Any] = field(default_factory=dict)
    taken: Any = None
    text: str = ""
    wrong: Mapping[str, str] = field(default_factory=dict)

    @property
    def differ(self) -> float:
        """How far readings of a number lie apart; nought where there is one. [SI]"""
        return float(max(self.given.values()) - min(self.given.values()))

    @property
    def lacking(self) -> tuple[str, ...]:
        """Readings of several that nobody has told, where one was."""
        if not self.given:
            return ()
        return tuple(name for name in self.entry.readings if name not in self.given)


def read_entry(survey: Survey, entry: SurveyEntry) -> SurveyReading:
    """Read what was told for one entry; nothing is raised.

    Parameters
    ----------
    survey : Survey
    entry : SurveyEntry

    Returns
    -------
    SurveyReading
    """
    if survey.unreached(entry.key):
        return SurveyReading(entry, UNREACHED)
    given: dict[str, Any] = {}
    texts: dict[str, str] = {}
    wrong: dict[str, str] = {}
    for box in entry.boxes:
        text = survey.told.get(box, "")
        if not text:
            continue
        name = entry.reading_of(box)
        try:
            value = entry.spec.read(text)
        except InputError as trouble:
            wrong[box] = str(trouble)
            continue
        if value is None:  # "unknown" is typed for what nobody knows: it is no reading
            wrong[box] = f"{entry.spec.label} is unknown: tick Cannot reach, or leave it empty."
            continue
        given[name], texts[name] = value, text
    if wrong:
        return SurveyReading(entry, WRONG, given, wrong=wrong)
    if not given:
        return SurveyReading(entry, LEFT_OUT)
    pick = max if entry.take == GREATEST else min
    name = pick(given, key=given.__getitem__) if len(given) > 1 else next(iter(given))
    return SurveyReading(entry, MEASURED, given, given[name], texts[name])


def read_entries(survey: Survey) -> dict[str, SurveyReading]:
    """Read every entry of the walk.

    Parameters
    ----------
    survey : Survey

    Returns
    -------
    dict of str to SurveyReading
        By the key of the entry, in the order of the walk.
    """
    return {entry.key: read_entry(survey, entry) for entry in WALK}
