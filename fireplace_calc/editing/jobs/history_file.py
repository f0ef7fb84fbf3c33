"""The history of a job as the text of a file: the design it began with, then the lines that each
step changed.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.file_reading import parsed_file
from fireplace_calc.editing.file_text import quoted
from fireplace_calc.editing.jobs.deltas import Delta, Lines, apply_to, between
from fireplace_calc.editing.jobs.history import History, Moment, Namer
from fireplace_calc.editing.jobs.options import Option, Shelf

HEAD = """\
# What was done with this job, the oldest step first. The workbench writes this file and undoes and
# redoes from it; the design itself stands in design.toml.
"""
LARGEST_HISTORY = 200_000
"""A longer one loses its oldest steps. [bytes]"""
SHORTEST = 2
"""Moments that are kept even then."""


def _steps(history: History) -> Iterator[str]:
    shelf: Shelf | None = None
    survey = ""
    for moment in history.moments:
        lines = ["[[step]]", f"did = {quoted(moment.did)}"]
        if moment.delta:
            lines.append(f"lines = {quoted(moment.delta)}")
        if moment.shelf != shelf:
            shelf = moment.shelf
            words = [[o.number, o.name, "removed" if o.removed else "shown"] for o in shelf]
            lines.append(f"options = {quoted(words)}")
        if moment.survey != survey:
            entered = between(survey.split("\n"), moment.survey.split("\n"))
            lines.append(f"survey = {quoted(entered)}")
            survey = moment.survey
        yield "\n".join(lines) + "\n"


def history_text(history: History) -> str:
    """All of it as text; the oldest steps of one that has grown too long are forgotten."""
    text = _text(history)
    while len(text.encode()) > LARGEST_HISTORY:
        spare = min(history.at, len(history.moments) - SHORTEST)
        if spare < 1:
            break
        history.drop(min(spare, max(1, len(history.moments) // 10)))
        text = _text(history)
    return text


def _text(history: History) -> str:
    history.settle()
    moving = "true" if history.moving else "false"
    head = f"{HEAD}at = {history.at}\nmoving = {moving}\n"
    steps = "\n".join(_steps(history))
    return f"{head}base = {_long(history.base or [])}\n\n{steps}"


def _long(lines: Lines) -> str:
    """Many lines as one text of TOML, as they stand where they can."""
    whole = "\n".join(lines)
    if "'''" not in whole:
        return f"'''\n{whole}'''"
    escaped = whole.replace("\\", "\\\\").replace('"', '\\"')
    return f'"""\n{escaped}"""'


def read_history(path: Path, namer: Namer, folder: Path) -> History:
    """Read it back.

    Parameters
    ----------
    path : path
        The file.
    namer : callable
        As for ``History``.
    folder : path
        Of the job.

    Returns
    -------
    History
        It stands where the file says, whatever the design file holds.

    Raises
    ------
    InputError
        When the file is no history.
    """
    found = parsed_file(path)
    try:
        return _history(found, namer, folder)
    except (KeyError, TypeError, ValueError, AttributeError):
        raise InputError(
            f"{path} is no history of a job: its steps cannot be followed.",
            "history",
            "a file that the workbench wrote",
            str(path),
        ) from None


def _history(found: dict[str, Any], namer: Namer, folder: Path) -> History:
    base, at = found["base"].split("\n"), found["at"]
    moments: list[Moment] = []
    shelf: Shelf = ()
    text, measured = list(base), [""]
    for step in found["step"]:
        if "options" in step:
            shelf = tuple(_option(*words) for words in step["options"])
        delta = tuple(_change(*words) for words in step.get("lines", ()))
        entered = tuple(_change(*words) for words in step.get("survey", ()))
        _fits(entered, len(measured))
        apply_to(measured, entered)
        if moments:
            _fits(delta, len(text))
            apply_to(text, delta)
        survey = "\n".join(measured)
        moments.append(Moment(str(step["did"]), shelf, None, delta if moments else (), survey))
    if type(at) is not int or not 0 <= at < len(moments):
        raise ValueError(at)
    history = History(moments, namer, folder, base)
    history.at, history.moving = at, found["moving"] is True
    return history


def _option(number: int, name: str, state: str) -> Option:
    if type(number) is not int or not isinstance(name, str):
        raise TypeError(number)
    return Option(number, name, state == "removed")


def _change(start: int, count: int, lines: list[str]) -> tuple[int, int, tuple[str, ...]]:
    if type(start) is not int or type(count) is not int:
        raise TypeError(start)
    return start, count, tuple("" + line for line in lines)


def _fits(delta: Delta, length: int) -> None:
    if any(start < 0 or count < 0 or start + count > length for start, count, _ in delta):
        raise ValueError("lines that the text before has not")
