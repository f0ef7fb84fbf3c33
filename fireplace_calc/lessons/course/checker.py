"""What a lesson file still lacks, all of it at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fireplace_calc.base.resources import lesson_keys
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.course.countries import home_book
from fireplace_calc.lessons.course.in_motion import moved_wrongly, tried_wrongly, untold
from fireplace_calc.lessons.course.lesson_file import (
    LessonError,
    Slip,
    course_lesson,
    read_lesson,
)
from fireplace_calc.lessons.course.marks import questions
from fireplace_calc.lessons.course.place_values import bare_figures, step_of
from fireplace_calc.lessons.course.records import (
    BOTH,
    HAVE,
    NEED,
    SHOWN,
    VERDICT,
    CourseLesson,
    LessonOption,
)
from fireplace_calc.lessons.course.sums import Given, work_out
from fireplace_calc.lessons.course.told_lines import Path, line_of
from fireplace_calc.lessons.course.wording import texts, wording_slips
from fireplace_calc.lessons.exercise_kinds import known_kinds

MARKS: dict[str, frozenset[str]] = {
    "opening and flue": frozenset({"opening", "raised on the same flue"}),
    "roof": frozenset({"reach", "climb", "slope tape"}),
    "clearances and mantel": frozenset({"mantel", "filled gap"}),
    "hearths": frozenset({"opening", "first drawing"}),
    "firebox and throat": frozenset({"short lintel"}),
    "smoke chamber": frozenset({"run", "rise", "rough steps"}),
    "draft": frozenset({"column", "pull", "lost", "house", "kitchen fan on"}),
    "heat in the plan": frozenset({"kind", "middle", "hard", "later", "night after a soot fire"}),
    "beds of a set": frozenset({"pieces", "beds", "thick last bed"}),
    "lifting a piece": frozenset({"reach", "height", "piece on a ladder"}),
}
"""Drawings and the marks of each; every drawing knows those of ``ALWAYS``, and have, need and
gap of one rule alone, such as ``need A``.
"""
ALWAYS = frozenset({"have", "need", "gap", "rule"})
Told = Iterator[tuple[Path, str]]
"""Where something is wrong, and what."""


def missing(text: str) -> list[Slip]:
    """What a lesson lacks before it may be taught.

    Parameters
    ----------
    text : str
        Of its file.

    Returns
    -------
    list of Slip
        One sentence each with its line, in the order of the file; empty when nothing is missing.
    """
    read = read_lesson(text)
    found = list(read.slips)
    for country, lesson in read.told.items():
        told = list(_form(lesson))
        for path, table, words in texts(lesson):
            told += [(path, said) for said in wording_slips(path, table, words, country)]
            if path[0] != "control":
                told += [
                    (path, f"{figure!r} stands so for every reader: write {{{figure}}}.")
                    for figure in bare_figures(words)
                ]
        if not told:
            told += _in_motion(lesson, home_book(country))
        tail = "" if country == "american" else f" ({country})"
        found += [
            Slip(line_of((country, *path), read.lines), f"{said}{tail}")
            if line_of((country, *path), read.lines) > 1
            else Slip(line_of(path, read.lines), f"{said}{tail}")
            for path, said in told
        ]
    return sorted(_once(found))


def _once(found: list[Slip]) -> list[Slip]:
    """What is wrong in everybody's words is told once."""
    plain = {slip.said for slip in found if not slip.said.endswith(")")}
    return [slip for slip in dict.fromkeys(found) if slip.said.rpartition(" (")[0] not in plain]


def _form(lesson: CourseLesson) -> Told:
    """What can be seen without working anything out."""
    yield from _rules(lesson)
    yield from _controls(lesson)
    letters = [rule.letter for rule in lesson.rule]
    own = {f"{which} {letter}" for which in (HAVE, NEED, "gap") for letter in letters}
    marks = MARKS.get(lesson.picture.draw, frozenset()) | ALWAYS | own
    if lesson.picture.draw not in MARKS:
        known = ", ".join(MARKS)
        yield (
            ("picture", "draw"),
            f"There is no drawing {lesson.picture.draw!r}; there are {known}.",
        )
    elif lesson.fault.draw not in marks:
        yield ("fault", "draw"), _no_mark(lesson.fault.draw, marks)
    shown: list[tuple[Path, tuple[str, ...]]]
    shown = [(("fault",), lesson.fault.shows + lesson.fault.solved)]
    shown += [(("worked", "step", k), step.shows) for k, step in enumerate(lesson.worked.step)]
    for path, names in shown:
        for name in names:
            if lesson.picture.draw in MARKS and name not in marks:
                yield path, _no_mark(name, marks)
    if len(lesson.question) < 3:
        yield ("question",), f"Three questions are wanted, and there are {len(lesson.question)}."
    for k, question in enumerate(lesson.question):
        yield from _options(question.options, ("question", k))
    yield from _options(lesson.fault.options, ("fault",))
    for name in ("meets", "short"):
        if name not in lesson.verdict:
            yield ("verdict",), f"The verdict has no text for {name!r}."
    topics = sorted({row["topic"] for row in rows("safety.csv")})
    for topic in lesson.cautions:
        if topic not in topics:
            yield ("cautions",), f"There is no caution {topic!r}; there are {', '.join(topics)}."
    yield from _in_course(lesson)


def _in_course(lesson: CourseLesson) -> Told:
    """Whether the course leads to it, and whether an exercise stands on no list."""
    try:
        others = [course_lesson(key) for key in lesson_keys() if key != lesson.key]
    except LessonError:  # that file's own check says what is wrong there
        return
    known, kinds = {lesson.key, *(one.key for one in others)}, known_kinds()
    for name, told in (("next", (lesson.next,) if lesson.next else ()), ("needs", lesson.needs)):
        for key in told:
            if key not in known:
                yield (name,), f"There is no lesson {key!r}; there are {', '.join(sorted(known))}."
    first = all(lesson.number < one.number for one in others)
    if not first and lesson.key not in {one.next for one in others}:
        before = [one for one in others if one.number < lesson.number]
        after = max(before, key=lambda one: one.number).key if before else "the lesson before it"
        yield ("number",), f"No lesson leads here: write next = {lesson.key!r} in {after}."
    for kind in lesson.exercises:
        if kind not in kinds:
            yield ("exercises",), f"There is no exercise {kind!r}; there are {', '.join(kinds)}."
    listed = {kind for one in (lesson, *others) for kind in one.exercises}
    for key, made in kinds.items():
        if key not in listed and (made.lesson == lesson.key or made.lesson not in known):
            yield ("exercises",), f"No lesson lists exercise {key!r}, made for {made.lesson!r}."


def _no_mark(name: str, marks: frozenset[str]) -> str:
    return f"The drawing has no mark {name!r}; it has {', '.join(sorted(marks))}."


def _rules(lesson: CourseLesson) -> Told:
    letters = [rule.letter for rule in lesson.rule]
    for k, rule in enumerate(lesson.rule):
        if letters.index(rule.letter) != k:
            yield ("rule", k, "letter"), f"There are two rules {rule.letter!r}."
        if rule.question and rule.question not in questions():
            yield ("rule", k, "question"), f"{rule.question!r} is no row of questions.csv."
        if not (rule.question or rule.keys or rule.need):
            yield ("rule", k), f"Rule {rule.letter} names no question, no key and no need."
        if rule.need and not (rule.have and rule.source):
            yield ("rule", k), f"Rule {rule.letter} has a need, but no have or no source."


def _controls(lesson: CourseLesson) -> Told:
    if not 2 <= len(lesson.control) <= 4:
        yield ("control",), "Two to four controls are wanted: more hide the rule."
    for k, control in enumerate(lesson.control):
        at: Path = ("control", k)
        if control.moves not in (HAVE, NEED, BOTH, SHOWN):
            yield (
                (*at, "moves"),
                f"A control moves have, need, both or shown, not {control.moves!r}.",
            )
        if control.choices:
            if control.start not in control.choices:
                yield (*at, "start"), f"{control.start!r} is none of the choices."
            continue
        if "" in (control.start_at, control.end_at, control.step):
            yield at, f"{control.label} needs from, to and step, or choices."
            continue
        try:
            low, high, start = (
                work_out(one) for one in (control.start_at, control.end_at, control.start)
            )
            step = step_of(control)
        except InputError as wrong:
            yield at, str(wrong)
            continue
        steps = (start.value - low.value) / step if step > 0 else -1.0
        if not low.value < high.value or step <= 0:
            yield at, f"{control.label} runs from low to high by a step over nothing."
        elif not low.value <= start.value <= high.value or abs(steps - round(steps)) > 1e-6:
            yield (*at, "start"), f"{control.label} starts between its steps, or out of its range."
    for k, one in enumerate(lesson.tries):
        if one.changes not in (HAVE, NEED, BOTH, VERDICT, SHOWN):
            yield (
                ("try", k, "changes"),
                f"A try changes have, need or verdict, not {one.changes!r}.",
            )
    if len(lesson.tries) < 2:
        yield ("try",), "Two or three things to try are wanted."


def _options(options: tuple[LessonOption, ...], path: Path) -> Told:
    right = sum(option.right for option in options)
    if right != 1:
        yield (*path, "options"), f"One right answer is wanted, and there are {right}."
    for k, option in enumerate(options):
        if not option.told.strip():
            yield (*path, "options", k), f"{option.say!r} has no feedback."


def _in_motion(lesson: CourseLesson, book: str) -> Told:
    """What shows only when the lesson is worked out."""
    places: list[tuple[Path, Mapping[str, Given]]] = [
        (("worked",), lesson.worked.values),
        (("fault",), lesson.fault.values),
        *((("try", k), one.set) for k, one in enumerate(lesson.tries)),
        *((("question", k), one.values) for k, one in enumerate(lesson.question)),
    ]
    found = list(untold(lesson, book, places))
    yield from found or (*moved_wrongly(lesson, book), *tried_wrongly(lesson, book))
