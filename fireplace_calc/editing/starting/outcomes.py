"""What came of each answer, in a sentence: what was read, and what follows from it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import atan

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, InputError
from fireplace_calc.design.mantel import NONE
from fireplace_calc.design.records import Design
from fireplace_calc.editing.starting.answers import with_bare_unit
from fireplace_calc.editing.starting.worked_out import crown_with
from fireplace_calc.geometry.frame_builder import build_frame

ON_A_MARK = INCH / 32
"""Two heights nearer than half a mark of the tape are one. [m]"""


def came_of(key: str, design: Design, answers: Mapping[str, str], units: str) -> str:
    """What came of the answer to a question.

    Parameters
    ----------
    key : str
        Of the question.
    design : Design
        With everything that was answered in it.
    answers : mapping
        Text by question.
    units : str
        The reader's.

    Returns
    -------
    str
        One sentence or two.
    """
    return _WRITERS[key](_Read(design, answers, units))


@dataclass(frozen=True)
class _Read:
    """A design and the answers it came from, as a reader of these units is told of them."""

    design: Design
    answers: Mapping[str, str]
    units: str

    def long(self, value: float) -> str:
        return show(value, "length", self.units)

    def said(self, key: str) -> str:
        return " ".join(self.answers.get(key, "").split())

    def place(self) -> str:
        site = self.design.site
        up = site.altitude
        feet = self.units == FEET_INCHES
        high = grouped(round(up / FOOT if feet else up), units=self.units)
        named = f"{site.place}: " if site.place else ""
        return (
            f"{named}{high} {'ft' if feet else 'm'} up,"
            f" winter {show(site.winter, 'temperature', self.units)}."
        )

    def ceiling(self) -> str:
        house = self.design.house
        high = f"{self.long(house.ceiling)} high."
        top = house.highest_ceiling
        if top is None or abs(top - house.ceiling) < ON_A_MARK:
            return high
        return f"{high} The highest is {self.long(top)} over this floor."

    def room(self) -> str:
        house = self.design.house
        if house.room_length is None or house.room_width is None:
            return ""
        if self.design.breast.cornered:
            return (
                f"{self.long(house.room_length)} along the wall at the right of the fireplace,"
                f" {self.long(house.room_width)} along the wall at its left."
            )
        return (
            f"{self.long(house.room_length)} along the fireplace wall,"
            f" {self.long(house.room_width)} out from it."
        )

    def pitch(self) -> str:
        pitch = self.design.roof.pitch
        return f"{round(12 * pitch, 2):g} in 12, {show(atan(pitch), 'angle')}."

    def ridge(self) -> str:
        roof = self.design.roof
        return (
            f"{self.long(roof.ridge_distance)} from the chimney, its level"
            f" {self.long(roof.ridge_level)} over the floor."
        )

    def method(self) -> str:
        if self.design.piece_set is None:
            return "Laid in brick, course by course."
        opening = self.design.opening
        return (
            f"The set {self.design.pieces.set}: an opening of {self.long(opening.width)} by"
            f" {self.long(opening.height)}."
        )

    def raised(self) -> str:
        opening = self.design.opening
        return f"Raised by {self.long(opening.extension)}, so {self.long(opening.height)} high."

    def head(self) -> str:
        frame = build_frame(self.design)
        carried = self.design.lintel.material
        if self.design.opening.head != "segmental":
            return f"Straight, on a lintel: {carried}."
        rise = frame.opening_top - frame.spring
        return f"An arch that rises {self.long(rise)} at the middle, carried by: {carried}."

    def liner(self) -> str:
        frame, flue = build_frame(self.design), self.design.flue
        return (
            f"{flue.shape.capitalize()} {frame.bore.label}, 1 to"
            f" {frame.clear_area / frame.bore.area:.1f} of the opening."
        )

    def top(self) -> str:
        flue, top = self.design.flue, build_frame(self.design).crown_top
        count, each = flue.sections, self.long(flue.section_height)
        brought = f"{count} sections of {each} bring the top to {self.long(top)}"
        asked = self._asked_top()
        if asked is None:
            return f"{brought}."
        off = top - asked
        if abs(off) < ON_A_MARK:
            return f"{brought}, as asked."
        other = count + (1 if off < 0 else -1)
        return (
            f"{brought}, {self.long(abs(off))} {'under' if off < 0 else 'over'} what was asked."
            f" With {other} it is {self.long(crown_with(self.design, other))}."
        )

    def _asked_top(self) -> float | None:
        text = with_bare_unit(self.answers.get("top", ""), self.units, ("ft", "m"))
        try:
            return to_si(text, "length", "Chimney height")
        except InputError:
            return None


def _mantel(family: str) -> str:
    if family == NONE:
        return "No mantel."
    return f"The mantel: {family}, of wood, in the sizes that are usual for it."


_WRITERS: Mapping[str, Callable[[_Read], str]] = {
    "name": lambda read: f"The job is called {read.design.name}.",
    "place": _Read.place,
    "book": lambda read: f"Checked by {read.said('book')}.",
    "storeys": lambda read: f"Eaves {read.long(read.design.roof.eaves_level)} over the floor.",
    "ceiling": _Read.ceiling,
    "room": _Read.room,
    "stands": lambda read: f"A chimney {read.said('stands')}.",
    "pitch": _Read.pitch,
    "ridge": _Read.ridge,
    "method": _Read.method,
    "width": lambda read: f"{read.long(read.design.opening.width)} wide.",
    "height": lambda read: f"{read.long(read.design.opening.standard_height)} high.",
    "raised": _Read.raised,
    "head": _Read.head,
    "liner": _Read.liner,
    "top": _Read.top,
    "mantel": lambda read: _mantel(read.design.mantel.family),
    "face": lambda read: f"The face is {read.design.surround.face}.",
}
