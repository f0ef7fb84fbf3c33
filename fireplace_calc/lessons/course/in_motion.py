"""What shows only when a lesson is worked out: names without a figure, controls and tries that do
not do what the file says.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.course.moments import LessonMoment, moment, worked_moments
from fireplace_calc.lessons.course.place_values import places_of
from fireplace_calc.lessons.course.records import (
    BOTH,
    HAVE,
    NEED,
    SHOWN,
    VERDICT,
    CourseLesson,
)
from fireplace_calc.lessons.course.sums import Given
from fireplace_calc.lessons.course.told_lines import Path
from fireplace_calc.lessons.course.wording import texts

FEW = 5
"""Places of a control that the checker looks at, beside its ends. [-]"""


def untold(
    lesson: CourseLesson, book: str, places: Sequence[tuple[Path, Mapping[str, Given]]]
) -> Iterator[tuple[Path, str]]:
    """Texts whose figures cannot be worked out at their place of the controls.

    Parameters
    ----------
    lesson : CourseLesson
    book : str
    places : sequence
        Path of a part of the file, and where the controls stand in it.
    """
    held: dict[Path, LessonMoment] = {}
    for path, values in [((), {}), *places]:
        try:
            held[path] = moment(lesson, values, book)
            _ = held[path].marks, held[path].verdict
        except InputError as wrong:
            yield path, str(wrong)
            return
    try:
        worked_moments(lesson, book)
    except InputError as wrong:
        yield ("worked",), str(wrong)
        return
    for path, _, text in texts(lesson):
        place = max((at for at in held if path[: len(at)] == at), key=len)
        if path[0] in ("worked", "verdict"):
            continue
        try:
            held[place].said(text)
        except InputError as wrong:
            yield path, str(wrong)


def effects(before: LessonMoment, after: LessonMoment) -> set[str]:
    """What has changed from one place to another: have, need, verdict.

    Parameters
    ----------
    before, after : LessonMoment
    """
    found = set()
    for one, other in zip(before.marks, after.marks, strict=True):
        found |= {HAVE} if _differ(one.have, other.have) else set()
        found |= {NEED} if _differ(one.need, other.need) else set()
        found |= {VERDICT} if one.short != other.short else set()
    return found


def _differ(a: float | None, b: float | None) -> bool:
    if a is None or b is None:
        return a is not b
    return abs(a - b) > 1e-6 * max(abs(a), abs(b), 1e-3)


def moved_wrongly(
    lesson: CourseLesson, book: str, every: bool = False
) -> Iterator[tuple[Path, str]]:
    """Controls that do not move what the file says.

    Parameters
    ----------
    lesson : CourseLesson
    book : str
    every : bool
        Look at every place of each, not at a few.
    """
    start = moment(lesson, None, book)
    for k, control in enumerate(lesson.control):
        places = places_of(control)
        few = places if every else places[:: max(1, len(places) // FEW)] + places[-1:]
        moved: set[str] = set()
        for place in few:
            try:
                moved |= effects(start, moment(lesson, {control.name: place}, book))
            except InputError as wrong:
                yield ("control", k), f"{control.label} at one of its places: {wrong}"
        moved.discard(VERDICT)
        told = {BOTH: {HAVE, NEED}, SHOWN: set()}.get(control.moves, {control.moves})
        if moved != told:
            said = " and ".join(sorted(moved)) or "nothing of the rules"
            yield (
                ("control", k, "moves"),
                f"{control.label} is said to move {control.moves}, but moves {said}.",
            )


def tried_wrongly(lesson: CourseLesson, book: str) -> Iterator[tuple[Path, str]]:
    """Things to try that do not change what the file says; each is done after the one before.

    Parameters
    ----------
    lesson : CourseLesson
    book : str
    """
    start = moment(lesson, None, book)
    for k, one in enumerate(lesson.tries):
        changed = effects(start, moment(lesson, one.set, book))
        wanted = {BOTH: {HAVE, NEED}, SHOWN: set()}.get(one.changes, {one.changes})
        if not wanted <= changed:
            said = " and ".join(sorted(changed)) or "nothing of the rules"
            yield (
                ("try", k, "changes"),
                f"{one.do!r} is said to change {one.changes}, but changes {said}.",
            )
