"""Design files: plain TOML text in friendly units, read back to the identical record. Opening one
runs no code.
"""

from __future__ import annotations

import hashlib
import os
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import fields
from fractions import Fraction
from functools import lru_cache
from itertools import count
from pathlib import Path
from typing import Any

from fireplace_calc.base.inputs import UNKNOWN, Input, inputs_of, is_record, pieces_of
from fireplace_calc.base.messages import shown
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FACTORS, INCH, SI_UNIT, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, apply, book_names
from fireplace_calc.editing.consistency import require_consistent

FRIENDLY = {
    "length": ("in", "ft", "mm", "m"),
    "area": ("in2", "ft2", "m2"),
    "volume": ("m3", "ft3", "yd3"),
    "angle": ("deg", "rad"),
    "pressure": ("psf", "Pa", "psi"),
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

SLOPES, NUMBERS = ("roof.pitch", "firebox.splay"), ("house.leakage", "ground.concrete_fc")
"""Ratios written as rise over run; numbers written in the last of their units: a bare ratio, pounds
per square inch.
"""

LARGEST = 256_000
"""A design file with every list full has a quarter of this. [bytes]"""
HUGE = 10**15
"""No input is a whole number beyond this."""

HEADER = """\
# A fireplace and its chimney. Edit any line: lengths as "42 in" or "1067 mm", "unknown" where
# nobody has looked yet.
# Whatever is left out takes its default. Every input, with its range, is listed by the workbook.
"""


END = "# The end: a file that begins as above and lacks this line has been cut short."
"""Last line of every file we write."""

TAPE = (1, 2, 3, 4, 6, 8, 16, 32, 64)
"""Parts of an inch that are written as a fraction."""


def _inches(value: float) -> str:
    """Inches with a fraction, as on a tape."""
    near = Fraction(abs(value) / INCH).limit_denominator(64)
    whole, part = divmod(near, 1)
    text = f"{whole}-{part}" if whole and part else f"{part or whole}"
    return (
        f"{'-' if value < 0 else ''}{text} in"
        if near.denominator in TAPE
        else f"{value / INCH:.6g} in"
    )


def _forms(value: float, kind: str, key: str) -> Iterator[str]:
    """Ways to write a number, the friendliest first; the last is exact SI."""
    if kind == "length":
        yield _inches(value)
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


def written(value: Any, spec: Input, key: str = "") -> str:
    """One value as TOML text that reads back to the identical value.

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
    for text in _forms(value, spec.kind, key):
        try:
            if to_si(text, spec.kind, spec.label) == value:
                return '"' + text + '"'
        except InputError:
            continue
    raise InputError(
        f"{spec.label} is {value!r}, which cannot be written as text.",
        spec.label,
        spec.allowed(),
        value,
    )


@lru_cache(maxsize=256)
def _lines(record: Any, group: str = "") -> tuple[str, ...]:
    """Lines of one record; kept, since a change touches one record and a file holds all."""
    return tuple(
        f"{n} = {written(getattr(record, n), spec, group + n)}"
        for n, spec in inputs_of(record).items()
    )


def text_of(design: Design) -> str:
    """The whole record as the text of a design file; every input stands in it."""
    lines = [HEADER, *_lines(design)]
    for group in fields(design):
        record = getattr(design, group.name)
        if not is_record(record):
            continue
        lines += ["", f"[{group.name}]"]
        lines += _lines(record, f"{group.name}.")
        for name in pieces_of(record):
            for piece in getattr(record, name):
                lines += ["", f"[[{group.name}.{name}]]", *_lines(piece)]
    return "\n".join([*lines, "", END]) + "\n"


def fingerprint(design: Design) -> str:
    """Twelve letters that change with any input: two sheets that carry the same come from the same
    design.

    >>> fingerprint(Design()) == fingerprint(Design())
    True
    """
    return hashlib.sha256(text_of(design).encode()).hexdigest()[:12]


def write_whole(path: str | os.PathLike[str], content: bytes) -> None:
    """Put a file in place in one step, or leave what was there and say why."""
    target = Path(os.path.realpath(path))
    beside = target.with_name(f".{target.name}.{os.getpid()}.{os.urandom(4).hex()}.tmp")
    try:
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            if target.exists():
                os.chmod(beside, target.stat().st_mode & 0o7777)
            os.replace(beside, target)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
    except OSError as trouble:
        raise InputError(
            f"{path} cannot be written: {trouble.strerror}.", "file", "", str(path)
        ) from None


def save(design: Design, path: str | os.PathLike[str]) -> None:
    """Write a design file in one step: a reader sees the old file or the new one, never half of
    either.

    Parameters
    ----------
    design : Design
        What to write.
    path : str or path
        The file; its folder has to exist. Permissions of a file already there are kept.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    write_whole(path, text_of(design).encode())


def save_words(words: Mapping[str, str], path: str | os.PathLike[str]) -> None:
    """Write a few plain words with their names, in one step."""
    write_whole(path, "".join(f'{name} = "{word}"\n' for name, word in words.items()).encode())


def load_words(path: str | os.PathLike[str]) -> dict[str, str]:
    """Read them back; an empty dict where there is no such file or it is no longer readable."""
    try:
        return {name: word for name, word in _parsed(Path(path)).items() if isinstance(word, str)}
    except InputError:
        return {}


def set_aside(path: str | os.PathLike[str]) -> Path:
    """Give a file that cannot be read another name beside it; nothing is written over it."""
    path = Path(path)
    taken = {other.name for other in path.parent.iterdir()}
    name = next(
        name for n in count(1) if (name := f"{path.stem}-unreadable-{n}{path.suffix}") not in taken
    )
    path.rename(path.with_name(name))
    return path.with_name(name)


def _parsed(path: Path) -> dict[str, Any]:
    try:
        with path.open("rb") as file:
            return _read_toml(_decoded(file.read(LARGEST + 1), str(path)), str(path))
    except OSError as trouble:
        why = f"cannot be opened: {trouble.strerror}"
    raise InputError(f"{path} {why}.", "design file", "a TOML file", str(path))


def _decoded(content: bytes, name: str) -> str:
    """Text of a file; the mark that some editors put before UTF-8 is no part of it."""
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        why = f"is no text file: byte {trouble.start} is not UTF-8; save it as UTF-8 text"
    raise InputError(f"{name} {why}.", "design file", "a TOML file", name)


def _read_toml(text: str, name: str) -> dict[str, Any]:
    if len(text) > LARGEST:
        raise InputError(
            f"{name} is larger than {LARGEST // 1000} kB, but a design file has some 20 kB: is it "
            "another file?",
            "design file",
            f"up to {LARGEST // 1000} kB",
            name,
        )
    if text.startswith(HEADER.partition("\n")[0]) and END not in text:
        raise InputError(
            f'{name} has been cut short: its last line, "{END}", is missing; if you took it out '
            "yourself, put it back.",
            "design file",
            "a whole file",
            name,
        )
    wrong, why = f"{name} is not valid TOML", ""
    try:
        found = tomllib.loads(text)
    except RecursionError:
        why = "it is nested too deep"
    except tomllib.TOMLDecodeError as trouble:
        why = f'{trouble}; a line reads name = "36 in", with text in quotes'
    except ValueError:
        why = "a number in it is beyond all bounds"
    else:
        if found:
            return found
        wrong, why = f"{name} is empty", "it holds no input at all; was it cut short?"
    raise InputError(f"{wrong}: {why}.".replace("?.", "?"), "design file", "a TOML file", name)


def _flat(content: dict[str, Any]) -> Iterator[tuple[str, Any]]:
    """Dotted keys and values of a parsed file, wrong places refused."""
    inputs, groups = (
        all_inputs(),
        {f.name: f.default for f in fields(Design) if is_record(f.default)},
    )
    for name, value in content.items():
        if name in groups:
            if not isinstance(value, dict):
                raise InputError(
                    f"{name} is {shown(value)}, but a table [{name}] is wanted.",
                    name,
                    "a table",
                    value,
                )
            for inner, held in value.items():
                if "." in inner:
                    raise InputError(
                        f"{shown(inner)} in [{name}] may not hold a dot; write its last word only.",
                        inner,
                        ", ".join(inputs_of(groups[name])),
                        held,
                    )
                yield f"{name}.{inner}", held
        elif name in inputs and "." not in name:
            yield name, value
        else:
            said = book_names().get(name) or (name if name in inputs else "")
            hint = (
                f"write {said.partition('.')[2]} under [{said.partition('.')[0]}]"
                if said
                else (
                    f"a file holds {', '.join(n for n in inputs if '.' not in n)} and the tables"
                    f" {', '.join(groups)}"
                )
            )
            raise InputError(
                f"there is no key {shown(name)} at the top of a design file; {hint}.",
                name,
                "",
                value,
            )


def _check_type(key: str, value: Any) -> None:
    """Refuse what TOML can hold and no input can; a quantity, a count and a word check the rest
    themselves.
    """
    spec = all_inputs().get(key)
    if spec is None:
        return
    wanted: Any = {"count": int, "yes-no": (bool, str), "choice": str, "text": str}.get(
        spec.kind, (str, int, float)
    )
    unknown = spec.optional and isinstance(value, str) and value.strip().lower() == UNKNOWN
    huge = isinstance(value, int) and abs(value) > HUGE
    if unknown or (
        isinstance(value, wanted)
        and not huge
        and not (isinstance(value, bool) and spec.kind != "yes-no")
    ):
        return
    raise InputError(
        f"{spec.label} is {shown(value)}, but {spec.allowed()} is wanted.",
        spec.label,
        spec.allowed(),
        value,
    )


def load(path: str | os.PathLike[str]) -> Design:
    """Read a design file, all of it or nothing.

    Parameters
    ----------
    path : str or path
        A TOML file; what it leaves out takes its default.

    Returns
    -------
    Design
        Checked input by input and as a whole.

    Raises
    ------
    InputError
        One sentence that names the file, the key, what is allowed and what was found.
    """
    return _whole(_parsed(Path(path)), str(path))


def load_text(text: str | bytes, name: str = "design file") -> Design:
    """A design out of the text or the bytes of a file, all of it or nothing; errors name the file.

    >>> load_text(text_of(Design())) == Design()
    True
    """
    return _whole(_read_toml(_decoded(text, name) if isinstance(text, bytes) else text, name), name)


def _whole(content: dict[str, Any], path: str) -> Design:
    design, key = Design(), ""
    try:
        for key, value in _flat(content):
            _check_type(key, value)
            design = apply(design, {key: value})
        key = ""
        require_consistent(design)
    except InputError as wrong:
        where = f"{path}: {key}: " if key else f"{path}: "
        raise InputError(
            where + str(wrong), key or wrong.name, wrong.allowed, wrong.received
        ) from None
    return design
