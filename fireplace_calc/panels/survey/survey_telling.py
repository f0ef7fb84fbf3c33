"""What the page of a survey shows: stations with how far they are, entries with their boxes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.drawing.survey.entry_rows import letters_of, unit_of
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.survey.asked.entry import NOTE, STATIONS, SurveyEntry, reads_number
from fireplace_calc.survey.asked.walk import NUMBER, WALK
from fireplace_calc.survey.beside import readings_words
from fireplace_calc.survey.from_survey import Surveyed
from fireplace_calc.survey.kept import Survey
from fireplace_calc.survey.reading import LEFT_OUT, MEASURED, SurveyReading

FOUND, BESIDE = "What was found", "Measured beside drawn"
RESULTS = (FOUND, BESIDE)
"""What is shown behind the stations."""


def page_of(
    survey: Survey,
    told: Surveyed,
    station: str,
    sketch: str,
    units: str,
    refused: Mapping[str, tuple[str, str]],
    said: str,
    back: bool,
) -> dict[str, Any]:
    """Everything on the page.

    Parameters
    ----------
    survey : Survey
    told : Surveyed
        The same, read.
    station : str
        One of ``STATIONS`` or of ``RESULTS``.
    sketch : str
        The one that is shown; empty for none.
    units : str
        The reader's.
    refused : mapping of str to (str, str)
        By box: what was typed and could not be kept, and why.
    said : str
        The sentence over the entries.
    back : bool
        Whether there is an entry to take back.
    """
    entries = [entry for entry in WALK if entry.station == station]
    return {
        "station": station,
        "stations": [*(_station(name, told) for name in STATIONS), *map(_result, RESULTS)],
        "sketches": [["", "none"], *([n, f"{s.letter}  {s.title}"] for n, s in SKETCHES.items())],
        "sketch": sketch,
        "name": survey.name,
        "back": back,
        "whole": told.design is not None,
        "said": said or (told.trouble if not told.at else ""),
        "entries": [_entry(survey, told, entry, units, refused) for entry in entries],
    }


def _station(name: str, told: Surveyed) -> dict[str, str]:
    of_it = [one for one in told.readings.values() if one.entry.station == name]
    done = sum(one.state != LEFT_OUT for one in of_it)
    return {"name": name, "label": f"{name}: {done} of {len(of_it)}"}


def _result(name: str) -> dict[str, str]:
    return {"name": name, "label": name}


def _entry(
    survey: Survey,
    told: Surveyed,
    entry: SurveyEntry,
    units: str,
    refused: Mapping[str, tuple[str, str]],
) -> dict[str, Any]:
    reading, letters = told.readings[entry.key], letters_of(entry)
    out = survey.unreached(entry.key)
    take = f" The {entry.take} counts." if entry.take else ""
    return {
        "key": entry.key,
        "number": NUMBER[entry.key],
        "title": entry.spec.label + (f" [{letters}]" if letters else ""),
        "hold": entry.hold + take,
        "out": out,
        "found": _found(told, reading, units),
        "boxes": [
            {
                "box": box,
                "label": _label(entry, box),
                "aria": f"{entry.spec.label}, {_label(entry, box)}",
                "text": _text(survey, box, out, refused),
                "hint": unit_of(entry, units),
                "choices": _choices(entry),
                "wrong": _wrong(told, reading, box, refused),
            }
            for box in entry.boxes
        ],
    }


def _label(entry: SurveyEntry, box: str) -> str:
    """What stands over a box."""
    return entry.reading_of(box) or ("reading" if reads_number(entry.spec) else "answer")


def _text(survey: Survey, box: str, out: bool, refused: Mapping[str, tuple[str, str]]) -> str:
    if box in refused:
        return refused[box][0]
    return "" if out else survey.told.get(box, "")


def _choices(entry: SurveyEntry) -> list[str]:
    if reads_number(entry.spec):
        return []
    return list(entry.spec.choices or ("yes", "no"))


def _wrong(
    told: Surveyed, reading: SurveyReading, box: str, refused: Mapping[str, tuple[str, str]]
) -> str:
    """What cannot be kept or read, or at the first box of an entry does not go with the others."""
    if box in refused:
        return refused[box][1]
    if box in reading.wrong:
        return reading.wrong[box]
    entry = reading.entry
    return told.trouble if told.at == entry.key and box == entry.boxes[0] else ""


def _found(told: Surveyed, reading: SurveyReading, units: str) -> str:
    """How an entry was read; of a sign of trouble, what it means."""
    if reading.state != MEASURED:
        return ""
    if reading.entry.fills == NOTE:
        return reading.entry.sign if reading.taken else ""
    if not reads_number(reading.entry.spec):
        return ""
    return f"Read: {readings_words(reading, units)}"
