"""Measured beside drawn: what the tape says, what the drawing has, and how far they differ. [SI]"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.mantel import TOLD
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.rules.tracing.follows import FOLLOWS
from fireplace_calc.survey.asked.entry import NOTE, SurveyEntry, answer, reads_number
from fireplace_calc.survey.asked.walk import NUMBER
from fireplace_calc.survey.from_survey import Surveyed
from fireplace_calc.survey.reading import MEASURED, UNREACHED, SurveyReading

DRAWN, USUAL = "drawn", "usual"


@dataclass(frozen=True)
class BesideDrawn:
    """One entry beside the drawing.

    Attributes
    ----------
    number : int
        On the sheet. [-]
    reading : SurveyReading
    drawn : value or None
        Unknown where the drawing has none. [SI]
    how : str
        ``drawn``, or ``usual`` where nobody has entered it.
    difference : float or None
        Measured less drawn; unknown for words. [SI]
    """

    number: int
    reading: SurveyReading
    drawn: Any
    how: str
    difference: float | None

    @property
    def alike(self) -> bool:
        """Whether measured and drawn are the same, to a hair of the tape."""
        taken = self.reading.taken
        if self.difference is None:
            return bool(taken == self.drawn)
        return abs(self.difference) < 1e-6


def beside_drawn(told: Surveyed, design: Design) -> tuple[BesideDrawn, ...]:
    """Everything measured beside a design, in the order of the walk.

    Parameters
    ----------
    told : Surveyed
    design : Design
        What is drawn: of the job, or the usual one.

    Returns
    -------
    tuple of BesideDrawn
        What was measured, and what could not be reached; signs of trouble are in no drawing.
    """
    geometry = build_geometry(design)
    facts, guessed = gather_facts(geometry), assumed(design)
    made = []
    for reading in told.readings.values():
        entry = reading.entry
        if reading.state not in (MEASURED, UNREACHED) or entry.fills == NOTE:
            continue
        drawn, behind = _drawn(entry, design, facts)
        how = USUAL if behind and guessed.issuperset(behind) else DRAWN
        both = drawn is not None and reading.taken is not None and reads_number(entry.spec)
        made.append(
            BesideDrawn(
                NUMBER[entry.key],
                reading,
                drawn,
                how,
                float(reading.taken - drawn) if both else None,
            )
        )
    return tuple(made)


def _drawn(entry: SurveyEntry, design: Design, facts: Facts) -> tuple[Any, tuple[str, ...]]:
    """What a design has for an entry, and the inputs behind it."""
    frame, trim = facts.frame, facts.trim
    behind = ("surround.trim",) if design.mantel.family == TOLD else ("mantel.family",)
    wooden = {
        place: [piece for piece in trim if piece.combustible and piece.place == place]
        for place in ("above", "beside")
    }
    own: dict[str, tuple[Any, tuple[str, ...]]] = {
        "opening height": (
            design.opening.height,
            ("opening.standard_height", "opening.extension"),
        ),
        "height before raising": (design.opening.standard_height, ("opening.standard_height",)),
        "throat length": (frame.throat_width, ("opening.width",)),
        "flue width": (frame.bore.width, ("flue.size",)),
        "flue depth": (frame.bore.depth, ("flue.size",)),
        "liner wall": (frame.bore.wall, ("flue.size",)),
        "rounding of the corners": (None, ()),
        "back width": (frame.back_width, ("firebox.splay",)),
        "arch rise": (design.opening.rise if design.opening.head == "segmental" else None, ()),
        "trim that burns": (any(piece.combustible for piece in trim), behind),
    }
    for name, place in (("mantel", "above"), ("side trim", "beside")):
        for what, pick in (("distance", min), ("projection", max)):
            known = [v for p in wooden[place] if (v := getattr(p, what)) is not None]
            own[f"{name} {what}"] = (pick(known) if known else None, behind)
    if entry.key in own:
        return own[entry.key]
    fact = all_inputs()[entry.fills].book
    if hasattr(facts, fact):
        follows = tuple(key for key in FOLLOWS.get(fact, ()) if not key.startswith("measured."))
        return getattr(facts, fact), follows or (entry.fills,)
    return value_of(design, entry.fills), (entry.fills,)


def value_words(entry: SurveyEntry, value: Any, units: str = FEET_INCHES) -> str:
    """A value of an entry as the reader sees it.

    Parameters
    ----------
    entry : SurveyEntry
    value : object
        [SI]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    if not reads_number(entry.spec):
        return answer(value)
    if entry.fills == "roof.pitch":
        return f"{value * 12:.4g} in 12"
    return show(value, entry.spec.kind, units)


def readings_words(reading: SurveyReading, units: str = FEET_INCHES) -> str:
    """What was read, each reading by its name, and which one is taken and why.

    Parameters
    ----------
    reading : SurveyReading
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    entry = reading.entry
    if reading.state == UNREACHED:
        return "cannot reach"
    if len(reading.given) < 2:
        said = value_words(entry, reading.taken, units)
        if reading.lacking:
            said += f"; {next(iter(reading.given))} only"
        return said
    each = ", ".join(f"{n} {value_words(entry, v, units)}" for n, v in reading.given.items())
    if reading.differ == 0:
        return f"{value_words(entry, reading.taken, units)}, all alike"
    apart = value_words(entry, reading.differ, units)
    return f"{each}: the {entry.take} is taken, {apart} apart. {entry.safe}"


BESIDE_HEADINGS = ("No.", "What", "Measured", "Drawn", "Difference")


def beside_words(row: BesideDrawn, units: str = FEET_INCHES) -> tuple[str, ...]:
    """One row under ``BESIDE_HEADINGS``.

    Parameters
    ----------
    row : BesideDrawn
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    entry = row.reading.entry
    drawn = "" if row.drawn is None else value_words(entry, row.drawn, units)
    drawn += f" ({USUAL})" if drawn and row.how == USUAL else ""
    if row.reading.taken is None or row.drawn is None:
        apart = ""
    elif row.alike:
        apart = "none"
    elif row.difference is None:
        apart = "not as drawn"
    else:
        more = value_words(entry, abs(row.difference), units)
        apart = f"{more} {'more' if row.difference > 0 else 'less'}"
    return (
        str(row.number),
        entry.spec.label,
        readings_words(row.reading, units),
        drawn or "not drawn",
        apart,
    )
