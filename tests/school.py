"""A class of invented students, as its trainer keeps it."""

from fireplace_calc.base.resources import made_by
from fireplace_calc.lessons.classroom.class_records import ClassTask, SchoolClass
from fireplace_calc.lessons.classroom.rosters import placed

THIRTY = (*map(str, range(1, 27)), "Ann Lee", "Zoë", "小屋", "Bartholomew " * 5)


def school_of(kinds, count, units, names=THIRTY, level=3, pack="US IRC 2021"):
    task = ClassTask(
        "Tuesday masons and bricklayers of the second year, all of it invented, evening class",
        "k", kinds, count, level, pack, units, "hints", made_by(),
    )  # fmt: skip
    return SchoolClass(task, "5" * 64, placed(tuple(map(str.strip, names)), {}), {})
