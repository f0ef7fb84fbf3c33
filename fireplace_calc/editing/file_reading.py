"""Reading the text of a design file, all of it or nothing. Opening one runs no code."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any

from fireplace_calc.base.inputs import UNKNOWN, inputs_of, is_record
from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import MARK
from fireplace_calc.editing.changes import NO_ANSWERS, all_inputs, apply, book_names, value_of
from fireplace_calc.editing.consistency import require_consistent
from fireplace_calc.editing.file_text import END, HEADER, OLD_HEADER
from fireplace_calc.editing.sets.deciding import decide, overruled

LARGEST = 256_000
"""A design file with every list full has a quarter of this. [bytes]"""


HUGE = 10**15
"""No input is a whole number beyond this."""

OLD_DEFAULTS = {"smoke_chamber.course": "2-2/3 in", "smoke_chamber.unit_bed": "3-5/8 in"}
"""What a file may hold as assumed that is assumed otherwise today."""


def parsed_file(path: Path) -> dict[str, Any]:
    """Tables and keys of a TOML file as they stand there, none of them checked.

    Raises
    ------
    InputError
        When the file cannot be opened, is too large, cut short, or no TOML.
    """
    return _read_toml(file_text(path), str(path))


def file_text(path: Path) -> str:
    """Text of a file, of no more than can be a design file.

    Raises
    ------
    InputError
        When the file cannot be opened or is no text.
    """
    try:
        with path.open("rb") as file:
            return _decoded(file.read(LARGEST + 1), str(path))
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
    import tomllib  # here, so that importing the package does not wait for it

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
            known_as = book_names().get(name) or (name if name in inputs else "")
            hint = (
                f"write {known_as.partition('.')[2]} under [{known_as.partition('.')[0]}]"
                if known_as
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


def _unmarked(key: str, value: Any) -> tuple[Any, bool]:
    """A value without the mark of one that nobody has entered, and whether somebody has."""
    if not isinstance(value, str) or not value.endswith(MARK) or key in NO_ANSWERS:
        return value, True
    words, spec = value.removesuffix(MARK), all_inputs().get(key)
    counted = spec is not None and spec.kind == "count" and words.strip("-").isdigit()
    return int(words) if counted else words, False


def load_text(text: str | bytes, name: str = "design file", folder: Path | None = None) -> Design:
    """A design out of the text or the bytes of a file, all of it or nothing; errors name the file.

    >>> from fireplace_calc.editing.file_text import text_of
    >>> load_text(text_of(Design())) == Design()
    True
    """
    text = _decoded(text, name) if isinstance(text, bytes) else text
    return _as_told(whole_design(_read_toml(text, name), name, folder), text)


def load_file(path: Path) -> Design:
    """A design out of a file, all of it or nothing.

    Raises
    ------
    InputError
        One sentence that names the file, the key, what is allowed and what was found.
    """
    return load_text(file_text(path), str(path), path.parent)


def _as_told(design: Design, text: str) -> Design:
    """What a file written before inputs were marked leaves at its default is told by nobody."""
    return design.with_read({"told": frozenset()}) if text.startswith(OLD_HEADER) else design


def whole_design(content: dict[str, Any], path: str, folder: Path | None = None) -> Design:
    """A design out of the tables and keys of a file.

    Parameters
    ----------
    content : dict
        As TOML holds it.
    path : str
        Name of the file, for what is said about it.
    folder : path, optional
        Where the file of its set is looked for first.

    Raises
    ------
    InputError
        One sentence that names the file, the key, what is allowed and what was found.
    """
    design, key, entered = Design(), "", []
    try:
        for key, value in _flat(content):
            words, told = _unmarked(key, value)
            if not told and words == OLD_DEFAULTS.get(key):
                continue
            _check_type(key, words)
            taken = apply(design, {key: words}, folder)
            design = taken if told else taken.with_read({"told": design.told})
            if told:
                entered.append(book_names().get(key, key))
        key, asked = "", design
        design = decide(asked)
        specs = all_inputs()
        both = {
            k: (specs[k], value_of(design, k), value_of(asked, k)) for k in entered if k in specs
        }
        design = design.with_read({"overruled": overruled(design, both)})
        require_consistent(design)
    except InputError as wrong:
        where = f"{path}: {key}: " if key else f"{path}: "
        raise InputError(
            where + str(wrong), key or wrong.name, wrong.allowed, wrong.received
        ) from None
    return design
