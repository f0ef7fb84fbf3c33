"""Every student's work found again: whose it is, and what does not fit."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.classroom.class_records import SchoolClass
from fireplace_calc.lessons.classroom.kept_work import WORK, read_work
from fireplace_calc.lessons.classroom.rosters import same_name
from fireplace_calc.lessons.classroom.student_work import StudentWork
from fireplace_calc.lessons.classroom.tickets import seed_of

DEEPEST = ("*", "*/*", "*/*/*")
"""Where a student's folder may stand below the folder of all: a tablet's stand under its own."""


@dataclass
class Gathered:
    """What was found.

    Attributes
    ----------
    works : dict of str to StudentWork
        By the roster's names; who has not begun is not there.
    said : list of str
        What the trainer should know: unread files, other tickets, one student in two places.
    """

    works: dict[str, StudentWork] = field(default_factory=dict)
    said: list[str] = field(default_factory=list)


def gathered(room: SchoolClass, homes: Iterable[Path]) -> Gathered:
    """Read the work of every student of a class.

    Parameters
    ----------
    room : SchoolClass
    homes : iterable of path
        Folders of students' work, and of tablets.

    Returns
    -------
    Gathered
    """
    found, names = Gathered(), {same_name(name): name for name in room.places}
    paths = {
        path.resolve(): path
        for home in homes
        for below in DEEPEST
        for path in sorted(home.glob(f"{below}/{WORK}"))
    }
    for path in paths.values():
        try:
            work = read_work(path.parent)
            seed = seed_of(work.ticket, work.name)
        except InputError as trouble:
            found.said.append(str(trouble))
            continue
        name = names.get(same_name(work.name))
        if work.key != room.task.key:
            found.said.append(f"{path.parent} is another class's and is left out.")
        elif name is None:
            found.said.append(f"{path.parent}: {work.name} is not on the roster and is left out.")
        elif seed != room.seed(name):
            found.said.append(
                f"{path.parent}: {name} works with a ticket that this class did not hand out. It"
                " is left out."
            )
        elif name in found.works:
            found.works[name] = _together(found.works[name], work)
            found.said.append(f"{name} has worked in two places; both are counted ({path.parent}).")
        else:
            found.works[name] = work
    return found


def _together(one: StudentWork, other: StudentWork) -> StudentWork:
    """Both lists, one behind the other."""
    return StudentWork(one.key, one.name, one.ticket, (*one.attempts, *other.attempts))
