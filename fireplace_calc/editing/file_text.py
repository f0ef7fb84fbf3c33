"""The text of a design file: plain TOML in friendly units, read back to the identical record."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import fields
from functools import lru_cache
from typing import Any

from fireplace_calc.base.inputs import UNKNOWN, Input, inputs_of, is_record, pieces_of
from fireplace_calc.base.printing import inches_text
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FACTORS, SI_UNIT
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import MARK
from fireplace_calc.editing.changes import is_default

FRIENDLY = {
    "length": ("in", "ft", "mm", "m"),
    "area": ("in2", "ft2", "m2"),
    "volume": ("m3", "ft3", "yd3"),
    "angle": ("deg", "rad"),
    "pressure": ("psf", "Pa", "psi"),
    "bearing": ("psf", "kPa", "Pa"),
    "strength": ("psi", "MPa", "Pa"),
    "force": ("lbf", "kN"),
    "speed": ("m/s", "mph", "km/h"),
    "mass": ("kg", "lb"),
    "mass rate": ("kg/h", "lb/h"),
    "density": ("kg/m3", "pcf"),
    "ratio": ("%", ""),
    "power": ("kW",),
    "flow": ("L/s", "cfm", "m3/h"),
}
"""Units a file is written in, the first that reads back to the identical number wins."""


SLOPES, NUMBERS = ("roof.pitch", "firebox.splay"), ("house.leakage",)
"""Ratios written as rise over run; numbers written in the last of their units: a bare ratio."""


HEADER = """\
# A fireplace and its chimney. Edit any line: lengths as "42 in" or "1067 mm", "unknown" where
# nobody has looked yet.
# Whatever is left out takes its default, and so does what is marked (assumed): nobody has looked at
# it. Take the mark away when somebody has. Every input, with its range, is listed by the workbook.
"""
OLD_HEADER = """\
# A fireplace and its chimney. Edit any line: lengths as "42 in" or "1067 mm", "unknown" where
# nobody has looked yet.
# Whatever is left out takes its default. Every input, with its range, is listed by the workbook.
"""
"""Head of files written before inputs were marked: they hold every default, told or not."""


END = "# The end: a file that begins as above and lacks this line has been cut short."
"""Last line of every file we write."""


def _forms(value: float, kind: str, key: str) -> Iterator[str]:
    """Ways to write a number, the friendliest first; the last is exact SI."""
    if kind == "length":
        yield inches_text(value)
    if kind == "temperature":
        yield f"{value - 273.15:.10g} degC"
        yield f"{(value - 273.15) * 1.8 + 32:.10g} degF"
    if key in SLOPES:
        yield f"{value * 12:.10g}:12"
    units = FRIENDLY.get(kind, ())
    for digits in (6, 15):
        for unit in reversed(units) if key in NUMBERS else units:
            yield f"{value / FACTORS[kind][unit]:.{digits}g} {unit}".strip()
    yield f"{value!r} {SI_UNIT[kind].replace('**', '')}".strip()


def quoted(value: Any) -> str:
    r"""Text, whole numbers and lists of them, as TOML and JSON both write them.

    >>> print(quoted(['3" bed', 2]))
    ["3\" bed", 2]
    """
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")


def written(value: Any, spec: Input, key: str = "") -> str:
    """One value as TOML text that reads back to the identical value.

    >>> from fireplace_calc.editing.changes import all_inputs
    >>> written(0.193675, all_inputs()["base.block_width"])
    '"7-5/8 in"'
    """
    if value is None:
        return f'"{UNKNOWN}"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'
    forms = _forms(value, spec.kind, key)
    return '"' + next(t for t in forms if to_si(t, spec.kind, spec.label) == value) + '"'


def marked(value: Any, spec: Input, key: str, told: frozenset[str]) -> str:
    """One value as TOML text, with the mark behind it where nobody has entered it.

    >>> from fireplace_calc.editing.changes import all_inputs
    >>> marked(10, all_inputs()["flue.sections"], "flue.sections", frozenset())
    '"10 (assumed)"'
    """
    text = written(value, spec, key)
    if key in told or not is_default(key, value):
        return text
    words = {"true": "yes", "false": "no"}.get(text, text.strip('"'))
    return f'"{words}{MARK}"'


@lru_cache(maxsize=256)
def _lines(record: Any, group: str, told: frozenset[str]) -> tuple[str, ...]:
    """Lines of one record; kept, since a change touches one record and a file holds all."""
    return tuple(
        f"{n} = {marked(getattr(record, n), spec, group + n, told)}"
        for n, spec in inputs_of(record).items()
    )


def _of_group(told: frozenset[str], group: str) -> frozenset[str]:
    return frozenset(key for key in told if key.startswith(group))


def piece_lines(piece: Any) -> tuple[str, ...]:
    """Lines of one piece of a list."""
    inputs = inputs_of(piece).items()
    return tuple(f"{n} = {written(getattr(piece, n), spec)}" for n, spec in inputs)


def text_of(design: Design, without: str = "") -> str:
    """The whole record as the text of a design file; every input stands in it, but for a group that
    is left out.
    """
    told = design.told
    lines = [HEADER, *_lines(design, "", told & {"method"})]
    for group in fields(design):
        record = getattr(design, group.name)
        if not is_record(record) or group.name == without:
            continue
        lines += ["", f"[{group.name}]"]
        lines += _lines(record, f"{group.name}.", _of_group(told, f"{group.name}."))
        for name in pieces_of(record):
            if f"{group.name}.{name}" in told:
                lines += [f"{name} = []"]
            for piece in getattr(record, name):
                lines += ["", f"[[{group.name}.{name}]]", *piece_lines(piece)]
    return "\n".join([*lines, "", END]) + "\n"


def fingerprint(design: Design) -> str:
    """Twelve letters that change with any input but the names of the job: two sheets that carry the
    same come from the same design, and whoever signs for it later changes nothing.

    >>> fingerprint(Design()) == fingerprint(Design())
    True
    """
    import hashlib  # here, so that importing the package does not wait for it

    return hashlib.sha256(text_of(design, without="job").encode()).hexdigest()[:12]
