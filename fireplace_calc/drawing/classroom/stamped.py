"""What every sheet of a class bears: whose it is, and by which program and exercises it was drawn,
so that sheets and key that belong together can be told from others.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from fireplace_calc.base.resources import made_by
from fireplace_calc.drawing.classroom.class_paper import CAUTION, EDGE, FOOT_ROOM, HEAD_ROOM, paper
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.pdf import can_be_printed
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.lessons.classroom.class_records import ClassTask


def on_paper(name: str, place: int) -> str:
    """A student's name as a sheet can bear it: by number where the font lacks its letters.

    >>> on_paper("Zoë", 3), on_paper("\N{CJK UNIFIED IDEOGRAPH-5C0F}", 4)
    ('Zoë', 'No. 4')
    """
    return name if can_be_printed(name) else f"No. {place}"


@dataclass(frozen=True, slots=True)
class ClassStamp:
    """What stands at the foot of all sheets of one printing.

    Attributes
    ----------
    task : ClassTask
    digest : str
        Of all exercises of all students, answers included.
    size : str or None
        ``letter`` or ``A4``; else by the units.
    """

    task: ClassTask
    digest: str
    size: str | None = None

    def blank(self, lying: bool = False) -> tuple[Sheet, Cell]:
        """An empty sheet, and the room between head and foot."""
        wide, high = paper(self.task.units, self.size)
        if lying:
            wide, high = high, wide
        room = Cell(EDGE, EDGE + FOOT_ROOM, wide - EDGE, high - EDGE - HEAD_ROOM)
        return Sheet(wide, high), room

    def put(self, sheet: Sheet, what: str, who: str = "") -> None:
        """Write head and foot.

        Parameters
        ----------
        sheet : Sheet
        what : str
            What the sheet is: *Quiz, sheet 3 of 30*.
        who : str
            Name at the head, right.
        """
        left, right = EDGE, sheet.width - EDGE
        head, half = sheet.height - EDGE - 6.0, (right - left) / 2 - 3.0
        title, who = (cut_to(text, half, TITLE, True) for text in (self.task.title, who))
        sheet.text(left, head, title, size=TITLE, ha="left", bold=True)
        if who:
            sheet.text(right, head, who, size=TITLE, ha="right", bold=True)
        sheet.line([(left, EDGE + FOOT_ROOM - 2), (right, EDGE + FOOT_ROOM - 2)], "seen")
        told = f"{self.task.pack}, exercises {self.digest}, {made_by()}, {date.today().isoformat()}"
        sheet.text(left, EDGE + 6.2, what, size=SMALL, ha="left", bold=True)
        sheet.text(right, EDGE + 6.2, told, size=SMALL, ha="right")
        sheet.text(left, EDGE + 1.8, CAUTION, size=SMALL, ha="left")


def cut_to(text: str, wide: float, size: float, bold: bool = False) -> str:
    """As much of a text as there is room for. [mm]

    >>> cut_to("Bartholomew", 15.0, 2.5), cut_to("Bart", 15.0, 2.5)
    ('Bartho…', 'Bart')
    """
    short = text
    while short and width(short, size, bold) > wide:
        short = f"{short.rstrip('…')[:-1].rstrip()}…"
    return short
