"""The record of what was measured as the text of a file, and back; nothing of it is lost. [m]"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import MISSING, fields
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.printing import length_text
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.pieces.standing.as_built import LENGTHS, WORDS, AsBuilt, MeasuredTop

HEADER = """\
# What was measured at each hold point, in the order it was entered. Add to it; take nothing out.
# Levels count from the same datum as the plan. left_right: how much the right side is high;
# front_back: how much the back is high; again: lifted off, with what stood on it, and set anew.
"""
END = "# The end: a record that begins as above and lacks this line has been cut short."
LARGEST = 1_000_000
"""Letters of a file. [-]"""
_DEFAULTS = {f.name: f.default for f in fields(MeasuredTop)}


def as_built_text(built: AsBuilt, units: str = FEET_INCHES) -> str:
    """The record as the text of a file.

    Parameters
    ----------
    built : AsBuilt
    units : str
        Lengths are written in them where they come out exact.

    Returns
    -------
    str
        TOML that ``read_as_built`` reads back to the identical record.
    """
    metric = units == MILLIMETRES
    lines = [HEADER, f"job = {_quoted(built.job)}"]
    if built.start is not None:
        lines.append(f"start = {_quoted(length_text(built.start, metric))}")
    for top in built.tops:
        lines += ["", "[[top]]"]
        for name, default in _DEFAULTS.items():
            value = getattr(top, name)
            if default is MISSING or value != default:
                lines.append(f"{name} = {_value(name, value, metric)}")
    return "\n".join([*lines, "", END]) + "\n"


def _value(name: str, value: Any, metric: bool) -> str:
    if name in LENGTHS:
        return _quoted(length_text(value, metric))
    if name in WORDS:
        return _quoted(value)
    return str(value).lower() if isinstance(value, bool) else str(value.isoformat())


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def read_as_built(text: str) -> AsBuilt:
    """The record out of the text of its file, all of it or nothing.

    Parameters
    ----------
    text : str
        As ``as_built_text`` writes it, perhaps edited by hand.

    Returns
    -------
    AsBuilt

    Raises
    ------
    InputError
        One sentence: which entry, what is wanted, what came.
    """
    content = _parsed(text)
    _only("The record", content, ("job", "start", "top"))
    told = content.get("top", [])
    if not isinstance(told, list) or not all(isinstance(one, dict) for one in told):
        raise InputError(
            "In the record, top is no list of entries: each begins with [[top]].",
            "top",
            "[[top]]",
            told,
        )
    job, start = content.get("job", ""), content.get("start")
    level = None if start is None else _length("The record, start", start)
    return AsBuilt(job, level, tuple(_entry(n, one) for n, one in enumerate(told, 1)))


def _parsed(text: str) -> dict[str, Any]:
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    cut = text.startswith(HEADER.partition("\n")[0]) and END not in text
    if cut or len(text) > LARGEST:
        why = (
            f'has been cut short: its last line, "{END}", is missing'
            if cut
            else f"is longer than {LARGEST} letters: is it another file?"
        )
        raise InputError(f"The record {why}", "record", "a whole file", len(text))
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as wrong:
        why = f"The record cannot be read: {wrong}; lengths stand in quotes with their unit."
    raise InputError(why, "record", "TOML", "")


def _only(where: str, content: Mapping[str, Any], known: tuple[str, ...]) -> None:
    for key in content:
        if key not in known:
            raise InputError(
                f"{where} has no {shown(key)}; it may hold {', '.join(known)}.",
                key,
                ", ".join(known),
                content[key],
            )


def _entry(number: int, told: Mapping[str, Any]) -> MeasuredTop:
    where = f"Entry {number}"
    _only(where, told, tuple(_DEFAULTS))
    missing = [n for n, d in _DEFAULTS.items() if d is MISSING and n not in told]
    if missing:
        raise InputError(
            f"{where} lacks {' and '.join(missing)}: what was measured, where, and when.",
            missing[0],
            ", ".join(missing),
            "missing",
        )
    values: dict[str, Any] = {
        name: _length(f"{where}, {name}", value) if name in LENGTHS else value
        for name, value in told.items()
    }
    try:
        return MeasuredTop(**values)
    except InputError as wrong:
        raise InputError(f"{where}: {wrong}", wrong.name, wrong.allowed, wrong.received) from None


def _length(where: str, value: Any) -> float:
    return to_si(value, "length", where)
