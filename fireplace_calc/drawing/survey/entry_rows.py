"""Lines to write on: each entry with its number, where to hold the tape, and blanks. [mm]"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import MILLIMETRES
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.lists import PITCH, wrapped
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.survey.invented import sketched
from fireplace_calc.drawing.survey.numbered import SPANS, number_of
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.survey.asked.entry import CANNOT_REACH, SurveyEntry, reads_number
from fireplace_calc.survey.asked.walk import NUMBER
from fireplace_calc.survey.kept import Survey

NUMBERS, BLANKS, BETWEEN = 9.0, 50.0, 2.6
"""Width of the numbers and of the blanks, and air between rows. [mm]"""
TICK, LINE = 2.8, 6.0
"""Side of a box to tick, and from blank to blank. [mm]"""


@dataclass(frozen=True)
class Blank:
    """One thing to fill in: a line with its name and unit, or a box to tick."""

    name: str
    unit: str = ""
    box: bool = False
    told: str = ""


def unit_of(entry: SurveyEntry, units: str) -> str:
    """What a bare number on the sheet is in.

    Parameters
    ----------
    entry : SurveyEntry
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    if entry.fills == "roof.pitch":
        return "in 12"
    kinds = {"length": "mm" if units == MILLIMETRES else "ft, in", "angle": "deg"}
    return kinds.get(entry.spec.kind, "")


def blanks_of(entry: SurveyEntry, units: str, survey: Survey | None = None) -> tuple[Blank, ...]:
    """What there is to fill in for an entry; the last one is that it cannot be reached.

    Parameters
    ----------
    entry : SurveyEntry
    units : str
        ``feet-inches`` or ``millimetres``.
    survey : Survey or None
        What was entered already.
    """
    told = survey.told if survey is not None else {}
    out = "x" if survey is not None and survey.unreached(entry.key) else ""
    last = Blank(CANNOT_REACH, box=True, told=out)
    answered = told.get(entry.key, "").lower()
    if reads_number(entry.spec):
        apart = len(entry.readings) > 1 and _arrows_apart(entry)
        made = []
        for box in entry.boxes:
            reading = entry.reading_of(box)
            name = f"{number_of(entry, reading)[-1]}  {reading}" if apart else reading
            text = "" if out else told.get(box, "")
            made.append(Blank(name, unit_of(entry, units), told=text))
        return (*made, last)
    words = entry.spec.choices or ("yes", "no")
    ticks = tuple(
        Blank(word, box=True, told="x" if answered == word.lower() else "") for word in words
    )
    return (*ticks, last)


def _arrows_apart(entry: SurveyEntry) -> bool:
    """Whether its readings have arrows of their own."""
    return any(len(hold(sketched())) > 1 for _, hold in SPANS.get(entry.key, ()))


def letters_of(entry: SurveyEntry) -> str:
    """Letters of the sketches that show where the tape is held.

    Parameters
    ----------
    entry : SurveyEntry
    """
    return ", ".join(SKETCHES[name].letter for name, _ in SPANS.get(entry.key, ()))


@dataclass(frozen=True)
class EntryRow:
    """One entry set out in its lines.

    Attributes
    ----------
    entry : SurveyEntry
    words : tuple of str
        Lines under its name.
    blanks : tuple of tuple of Blank
        Lines of what there is to fill in.
    """

    entry: SurveyEntry
    words: tuple[str, ...]
    blanks: tuple[tuple[Blank, ...], ...]

    @property
    def high(self) -> float:
        """Room it takes. [mm]"""
        left = PITCH * (1 + len(self.words))
        return max(left, LINE * len(self.blanks)) + BETWEEN


def entry_row(
    entry: SurveyEntry, wide: float, units: str, survey: Survey | None = None
) -> EntryRow:
    """Set an entry out.

    Parameters
    ----------
    entry : SurveyEntry
    wide : float
        Of the column. [mm]
    units : str
        ``feet-inches`` or ``millimetres``.
    survey : Survey or None
        What was entered already.
    """
    said = entry.hold + (f" The {entry.take} counts." if entry.take else "")
    words = wrapped(said, wide - NUMBERS - BLANKS - 3.0)
    lines: list[tuple[Blank, ...]] = []
    line: list[Blank] = []
    used = 0.0
    for blank in blanks_of(entry, units, survey):
        room = _room(blank)
        if line and used + room > BLANKS:
            lines.append(tuple(line))
            line, used = [], 0.0
        line.append(blank)
        used += room
    return EntryRow(entry, words, (*lines, tuple(line)))


def _room(blank: Blank) -> float:
    if blank.box:
        return TICK + 1.2 + lettering.width(blank.name, SMALL) + 3.0
    return BLANKS


def draw_row(sheet: Sheet, row: EntryRow, left: float, top: float, wide: float) -> None:
    """Draw a row, its top at a level.

    Parameters
    ----------
    sheet : Sheet
    row : EntryRow
    left, top, wide : float
        [mm]
    """
    entry = row.entry
    y = top - PITCH
    sheet.text(left + NUMBERS - 2.0, y, str(NUMBER[entry.key]), size=SMALL, ha="right", bold=True)
    letters = letters_of(entry)
    name = entry.spec.label + (f"  [{letters}]" if letters else "")
    sheet.text(left + NUMBERS, y, name, size=SMALL, ha="left", bold=True)
    for n, words in enumerate(row.words, 1):
        sheet.text(left + NUMBERS, y - n * PITCH, words, size=SMALL, ha="left")
    right = left + wide
    for n, line in enumerate(row.blanks):
        x, base = right - BLANKS, top - PITCH - 0.6 - n * LINE
        for blank in line:
            _draw_blank(sheet, blank, x, base, right)
            x += _room(blank)
    sheet.line([(left, top - row.high + 1.0), (right, top - row.high + 1.0)], "fine", "soft")


def _draw_blank(sheet: Sheet, blank: Blank, x: float, y: float, right: float) -> None:
    if blank.box:
        ring = [(x, y - 0.2), (x + TICK, y - 0.2), (x + TICK, y - 0.2 + TICK), (x, y - 0.2 + TICK)]
        sheet.line(ring, "seen", closed=True)
        if blank.told:
            sheet.line([ring[0], ring[2]], "flag")
            sheet.line([ring[1], ring[3]], "flag")
        sheet.text(x + TICK + 1.2, y, blank.name, size=SMALL, ha="left")
        return
    end = right - lettering.width(blank.unit, SMALL) - 1.5 if blank.unit else right
    sheet.text(right, y, blank.unit, size=SMALL, ha="right")
    start = x
    if blank.name:
        sheet.text(x, y, blank.name, size=SMALL, ha="left")
        start += lettering.width(blank.name, SMALL) + 1.5
    sheet.line([(start, y - 0.8), (end, y - 0.8)], "seen")
    if blank.told:
        sheet.text((start + end) / 2, y, _shortened(blank.told, end - start), size=SMALL, bold=True)


def _shortened(text: str, room: float) -> str:
    """As much of a text as fits on a line."""
    if lettering.width(text, SMALL, True) <= room:
        return text
    kept = next(
        k
        for k in range(len(text), -1, -1)
        if lettering.width(text[:k] + "...", SMALL, True) <= room
    )
    return text[:kept] + "..."
