"""Slips to cut and hand out: a student's name and ticket on each."""

from __future__ import annotations

from fireplace_calc.drawing.classroom.stamped import ClassStamp, cut_to, on_paper
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.lessons.classroom.class_records import SchoolClass

ACROSS, DOWN = 3, 10
"""Slips of one sheet. [-]"""
LARGE = 4.2
"""Letters of a ticket. [mm]"""


def slip_sheets(school: SchoolClass, stamp: ClassStamp) -> list[Sheet]:
    """All slips, thirty a sheet, in the order of the roster.

    Parameters
    ----------
    school : SchoolClass
    stamp : ClassStamp
    """
    made, tickets = [], list(school.tickets.items())
    for first in range(0, len(tickets), ACROSS * DOWN):
        sheet, room = stamp.blank()
        wide, high = (room.right - room.left) / ACROSS, (room.top - room.bottom) / DOWN
        for number, (name, ticket) in enumerate(tickets[first : first + ACROSS * DOWN]):
            left = room.left + number % ACROSS * wide
            top = room.top - number // ACROSS * high
            corners = [(left, top), (left + wide, top), (left + wide, top - high)]
            sheet.line([*corners, (left, top - high)], "hidden", closed=True)
            title = cut_to(on_paper(name, school.places[name]), wide - 6, TITLE, True)
            sheet.text(left + 3, top - 6.5, title, size=TITLE, ha="left", bold=True)
            sheet.text(left + 3, top - 13.5, ticket, size=LARGE, ha="left")
            told = cut_to(school.task.title, wide - 6, SMALL)
            sheet.text(left + 3, top - 18.5, told, size=SMALL, ha="left")
        stamp.put(sheet, "Tickets, to cut and hand out")
        made.append(sheet)
    return made
