"""Writing a design over a file that a reader has commented: the comments stay, only what has
changed is written anew.

A file without a word of the reader's own is written whole, at once. tomlkit wakes only for the
others; it takes some 25 ms to read a file and 3 ms to write it, so what was read is kept for the
next change.
"""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Any

from fireplace_calc.base.inputs import inputs_of, is_record, pieces_of
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import OLD_KEYS, all_inputs, value_of
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import END, HEADER, OLD_HEADER, marked, text_of, written

if TYPE_CHECKING:
    from collections.abc import MutableMapping

    from tomlkit import TOMLDocument

MOST_KEPT = 8
"""Files that stay open for the next change: a design and its options. [-]"""

_documents: dict[str, tuple[TOMLDocument, Design]] = {}
"""By the text of the file as it was last written here."""


def text_over(old: str, design: Design) -> str:
    r"""Text of a design file that takes the place of another: with its comments and its order.

    Values that have not changed stand as the reader wrote them; what the file left out, and has
    changed since, is added behind the rest of its table.

    Parameters
    ----------
    old : str
        Text of the file as it stands.
    design : Design
        What to write.

    Returns
    -------
    str
        Reads back to the same design. Without the comments where the old text is no design file.

    Examples
    --------
    >>> old = '[opening]\nwidth = "3 ft"  # as measured\n'
    >>> print(text_over(old, load_text(old)), end="")
    [opening]
    width = "3 ft"  # as measured
    """
    if "#" not in old.removeprefix(HEADER).removeprefix(OLD_HEADER).replace(END, ""):
        return text_of(design)
    try:
        document, before = _documents.pop(old) if old in _documents else _read(old)
    except InputError:
        return text_of(design)
    _update(document, before, design)
    text = document.as_string()
    if END in old:
        text = f"{text.rstrip()}\n\n{END}\n"
    import tomllib  # here, so that importing the package does not wait for it

    try:
        same = tomllib.loads(text) == document.unwrap()
    except tomllib.TOMLDecodeError:
        same = False
    if not same:
        return text_of(design)
    while len(_documents) >= MOST_KEPT:
        del _documents[next(iter(_documents))]
    _documents[text] = document, design
    return text


def _read(old: str) -> tuple[TOMLDocument, Design]:
    """A file as tomlkit holds it, and the design it reads as."""
    import tomlkit

    design = load_text(old)
    text = old.replace(OLD_HEADER, HEADER, 1).replace(END, "")
    document = tomlkit.parse(text.rstrip() + "\n")
    for key, renewed in OLD_KEYS.items():
        group, _, name = key.partition(".")
        table = document.get(group, {})
        if name in table:
            now, value = renewed(table[name])
            del table[name]
            table[now.partition(".")[2]] = value
    if old.startswith(OLD_HEADER):
        _mark(document, design)
    return document, design


def _mark(document: TOMLDocument, design: Design) -> None:
    """Mark what a file from before the marks leaves at its default."""
    import tomlkit

    for key in assumed(design) - {"surround.trim", "roof.nearby"}:
        group, dot, name = key.partition(".")
        table = document.get(group, {}) if dot else document
        if (name or group) in table:
            text = marked(value_of(design, key), all_inputs()[key], key, frozenset())
            table[name or group] = tomlkit.value(text)


def _update(document: TOMLDocument, before: Design, after: Design) -> None:
    """Bring a file up to a design, by what differs from the design it holds."""
    import tomlkit

    told = before.told, after.told
    _update_record(document, before, after, "", told)
    changed = {key.partition(".")[0] for key in told[0] ^ told[1]}
    for group in fields(after):
        old, new = getattr(before, group.name), getattr(after, group.name)
        if not is_record(new) or (old == new and group.name not in changed):
            continue
        table = document.setdefault(group.name, tomlkit.table())
        _update_record(table, old, new, f"{group.name}.", told)
        for name in pieces_of(new):
            if f"{group.name}.{name}" in told[1]:
                table[name] = []
            elif getattr(old, name) != getattr(new, name):
                _update_pieces(table, name, getattr(old, name), getattr(new, name))


def _update_record(
    table: MutableMapping[str, Any],
    before: Any | None,
    after: Any,
    group: str = "",
    told: tuple[frozenset[str], frozenset[str]] | None = None,
) -> None:
    """Write what differs between two records of one kind into their table, and what has been told
    since; all of a new one.
    """
    import tomlkit

    for name, spec in inputs_of(after).items():
        value, key = getattr(after, name), group + name
        new = before is None or value != getattr(before, name)
        if told is None:
            if new:
                table[name] = tomlkit.value(written(value, spec, key))
        elif new or (key in told[0]) != (key in told[1]):
            table[name] = tomlkit.value(marked(value, spec, key, told[1]))


def _update_pieces(
    table: MutableMapping[str, Any], name: str, before: tuple[Any, ...], after: tuple[Any, ...]
) -> None:
    """Bring a list of pieces up to date, piece by piece; new ones come last."""
    import tomlkit

    if not after:
        del table[name]
        return
    listed = table.setdefault(name, tomlkit.aot())
    for old, new, held in zip(before, after, listed, strict=False):
        _update_record(held, old, new)
    for new in after[len(before) :]:
        piece = tomlkit.table() if isinstance(listed, tomlkit.items.AoT) else tomlkit.inline_table()
        _update_record(piece, None, new)
        listed.append(piece)
    del listed[len(after) :]
