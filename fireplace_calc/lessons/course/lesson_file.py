"""A lesson file as records; every slip of its form at once, each a sentence with its line."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from difflib import get_close_matches
from functools import cache
from types import UnionType
from typing import Any, NamedTuple, get_args, get_origin, get_type_hints

from fireplace_calc.base.messages import shown
from fireplace_calc.base.resources import lesson_keys, lesson_text
from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.course.countries import overlaid
from fireplace_calc.lessons.course.records import ALIAS, COUNTRIES, CourseLesson
from fireplace_calc.lessons.course.told_lines import Path, line_of, lines_of

FORMAT = 1
_SAID = {str: "a text in quotes", int: "a whole number", bool: "true or false"}


class Slip(NamedTuple):
    """What is wrong in a file, and on which line. [-]"""

    line: int
    said: str

    def __str__(self) -> str:
        return f"line {self.line}: {self.said}"


class LessonError(InputError):
    """A lesson file that cannot be used; ``slips`` holds all of what is wrong."""

    def __init__(self, name: str, slips: list[Slip]) -> None:
        more = f" (and {len(slips) - 1} more)" if len(slips) > 1 else ""
        super().__init__(f"{name}, {slips[0]}{more}", name)
        self.slips = slips


class ReadLesson(NamedTuple):
    """A lesson in the words of each country, the lines of its file, and what is wrong in it."""

    told: dict[str, CourseLesson]
    lines: dict[Path, int]
    slips: list[Slip]


def read_lesson(text: str) -> ReadLesson:
    """Read a lesson.

    Parameters
    ----------
    text : str
        Of the file.

    Returns
    -------
    ReadLesson
        Without records where its form is not whole.
    """
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        said = str(error)
        at = said.rpartition("(at line ")[2].split(",")[0]
        return ReadLesson({}, {}, [Slip(int(at) if at.isdigit() else 1, f"{said}.")])
    lines, slips = lines_of(text), []
    blocks = {country: table.pop(country, {}) for country in COUNTRIES[1:]}
    told = {}
    for country in COUNTRIES:
        wrong: list[tuple[Path, str]] = []
        whole = overlaid(table, blocks.get(country, {}), (country,), wrong)
        lesson = _record(CourseLesson, whole, (), wrong)
        if lesson is not None and not wrong and lesson.format != FORMAT:
            wrong.append((("format",), f"format is {lesson.format}, but {FORMAT} is read here."))
        slips += [slip for slip in _slips(wrong, lines) if slip not in slips]
        if lesson is not None:
            told[country] = lesson
    return ReadLesson({} if slips else told, lines, sorted(slips))


def _slips(wrong: list[tuple[Path, str]], lines: dict[Path, int]) -> list[Slip]:
    return [Slip(line_of(path, lines), said) for path, said in wrong]


@cache
def course_lesson(key: str, country: str = COUNTRIES[0]) -> CourseLesson:
    """A lesson that came with the package.

    Parameters
    ----------
    key : str
        Name of its file in ``data/lessons``, without its ending.
    country : str
        In whose words.

    Returns
    -------
    CourseLesson

    Raises
    ------
    InputError
        When there is no such lesson, or its file has slips.
    """
    if key not in lesson_keys():
        known = ", ".join(lesson_keys())
        raise InputError(f"There is no lesson {key!r}; there are {known}.", "lesson", known, key)
    read = read_lesson(lesson_text(key))
    if read.slips:
        raise LessonError(f"{key}.toml", read.slips)
    return read.told[country]


@cache
def course() -> tuple[str, ...]:
    """Keys of all lessons, in the order in which they are taught."""
    return tuple(sorted(lesson_keys(), key=lambda key: course_lesson(key).number))


def _record(kind: type, table: Any, path: Path, wrong: list[tuple[Path, str]]) -> Any:
    """A record from a table; what is missing, unknown or of another kind is noted."""
    if not isinstance(table, Mapping):
        wrong.append((path, f"{_name(path)} is {shown(table)}, but a table is wanted."))
        return None
    hints, before = get_type_hints(kind), len(wrong)
    specs = {ALIAS.get(one.name, one.name): one for one in fields(kind)}
    for name in table:
        if name not in specs:
            near = get_close_matches(name, specs, n=1)
            hint = f"did you mean {near[0]}?" if near else f"it may hold {', '.join(specs)}."
            wrong.append(((*path, name), f"{_name((*path, name))} is not known; {hint}"))
    given = {}
    for name, one in specs.items():
        if name in table:
            given[one.name] = _entry(hints[one.name], table[name], (*path, name), wrong)
        elif one.default is MISSING and one.default_factory is MISSING:
            wrong.append((path, f"{_name((*path, name))} is missing."))
    return kind(**given) if len(wrong) == before else None


def _entry(hint: Any, value: Any, path: Path, wrong: list[tuple[Path, str]]) -> Any:
    """One value of the kind that a record declares."""
    if isinstance(hint, type) and is_dataclass(hint):
        return _record(hint, value, path, wrong)
    if get_origin(hint) is tuple:
        if isinstance(value, list):
            one = get_args(hint)[0]
            return tuple(_entry(one, each, (*path, k), wrong) for k, each in enumerate(value))
        wrong.append((path, f"{_name(path)} is {shown(value)}, but a list is wanted."))
    elif get_origin(hint) is UnionType:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            wrong.append((path, f"{_name(path)} is {shown(value)}, but a figure is wanted."))
    elif hint in _SAID:
        if type(value) is not hint:
            wrong.append((path, f"{_name(path)} is {shown(value)}, but {_SAID[hint]} is wanted."))
    elif hint is not Any and not isinstance(value, Mapping):
        wrong.append((path, f"{_name(path)} is {shown(value)}, but a table is wanted."))
    return value


def _name(path: Path) -> str:
    """A path as a reader is told it, places counted from one."""
    return " ".join(str(step + 1) if isinstance(step, int) else step for step in path) or "the file"
