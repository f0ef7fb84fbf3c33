"""Changing a design: dotted keys or the code books' own names in, a whole and consistent record
out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import Field, fields
from functools import lru_cache
from operator import attrgetter
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fireplace_calc.base.inputs import Input, inputs_of, is_record, pieces_of
from fireplace_calc.base.messages import shown
from fireplace_calc.base.record import MOST_PIECES, too_many
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.design.smoke_path import ALONG
from fireplace_calc.editing.consistency import require_consistent
from fireplace_calc.editing.sets.deciding import decide, decided, let_go, refuse_decided

if TYPE_CHECKING:
    from fireplace_calc.pieces.records import PieceSet


def _long_side(turned: Any) -> tuple[str, Any]:
    """Files of version 0.1 answered *Long side front to back* with yes or no."""
    word = str(turned).strip().lower()
    said = {"yes": "front to back", "true": "front to back", "no": ALONG, "false": ALONG}
    return "flue.long_side", said.get(word, turned)


OLD_KEYS: dict[str, Callable[[Any], tuple[str, Any]]] = {"flue.turned": _long_side}
"""Inputs of older files, read as the inputs that took their place."""


@lru_cache(maxsize=1)
def all_inputs() -> dict[str, Input]:
    """Every single input of a design by dotted key, in reading order; pieces of a list are not
    among them.
    """
    found = dict(inputs_of(Design))
    for group in fields(Design):
        if is_record(group.default):
            found |= {
                f"{group.name}.{name}": spec for name, spec in inputs_of(group.default).items()
            }
    return found


NO_ANSWERS = ("name", "note", "site.place", "job.client", "job.drawn", "job.checked")
"""Inputs that tell nothing a check could rest on."""


def is_default(key: str, value: Any) -> bool:
    """Whether an input stands where nobody has to have put it; what is unknown is no default."""
    if value is None or key in NO_ANSWERS:
        return False
    return bool(value == all_inputs()[key].default)


@lru_cache(maxsize=1)
def book_names() -> dict[str, str]:
    """Name of a quantity in the code tables, to the dotted key of the input that holds it."""
    return {spec.book: key for key, spec in all_inputs().items() if spec.book}


def _unknown_key(key: str) -> InputError:
    import difflib  # here, so that importing the package does not wait for it

    near = difflib.get_close_matches(key, [*all_inputs(), *book_names()], n=3, cutoff=0.5)
    hint = f"did you mean {' or '.join(near)}?" if near else "NOMENCLATURE.md lists them all."
    return InputError(f"There is no input named {key}; {hint}", key, "a declared input", key)


def read_pieces(listed: Field[Any], values: Any, key: str) -> tuple[Any, ...]:
    """Read a list of like things.

    Parameters
    ----------
    listed : Field
        The list as it is declared: of which record, and its label.
    values : iterable
        Records, or tables that name their fields.
    key : str
        Dotted, of the list.

    Returns
    -------
    tuple
        Of records.

    Raises
    ------
    InputError
        Names the piece and the field.
    """
    if isinstance(values, (str, bytes, Mapping)) or not hasattr(values, "__iter__"):
        raise InputError(
            f"{key} is {shown(values)}, but a list of tables is wanted.",
            key,
            "a list of tables",
            values,
        )
    record, made = listed.metadata["pieces"], []
    for number, entry in enumerate(values, 1):
        if number > MOST_PIECES:
            raise too_many(key)
        at = f"{listed.metadata['label']}, piece {number}"
        made.append(entry if isinstance(entry, record) else _piece(record, entry, key, at))
    return tuple(made)


def _piece(record: type, entry: Any, key: str, at: str) -> Any:
    """One of the list, with its place in what is said about it."""
    specs = inputs_of(record)
    known = ", ".join(specs)
    if not isinstance(entry, Mapping):
        raise InputError(
            f"{at}, is {shown(entry)}, but a table of {known} is wanted.", key, known, entry
        )
    read = {}
    for name, value in entry.items():
        if name not in specs:
            raise InputError(f"{at}, has no {shown(name)}; it may hold {known}.", key, known, name)
        try:
            read[name] = specs[name].read(value)
        except InputError as wrong:
            raise InputError(f"{at}: {wrong}", key, wrong.allowed, value) from None
    return record(**read)


def _set_of(name: str, folder: Path | None) -> PieceSet | None:
    """The set of that name; none where no name is told."""
    if not name:
        return None
    from fireplace_calc.editing.sets.piece_sets import find_set  # wakes the reading of sets

    return find_set(name, folder)


def apply(design: Design, changes: Mapping[str, Any], folder: Path | None = None) -> Design:
    """Put checked values into a copy of the record, without asking whether the whole still holds
    together, or what a set of pieces decides.

    Parameters
    ----------
    design : Design
    changes : mapping
        As for ``change``.
    folder : path, optional
        Where a set's file is looked for first.
    """
    groups: dict[str, dict[str, Any]] = {}
    top: dict[str, Any] = {}
    told = set(design.told)
    for given, came in changes.items():
        spelled = given.replace("arrestor", "arrester")  # books spell it either way
        key, value = book_names().get(spelled, spelled), came
        if key in OLD_KEYS:
            key, value = OLD_KEYS[key](came)
        group, dot, name = key.partition(".")
        spec = all_inputs().get(key)
        if spec is not None:
            read = spec.read(value)
            if key == "pieces.set":
                top["piece_set"] = _set_of(read, folder)
            (groups.setdefault(group, {}) if dot else top)[name or group] = read
            (told.add if is_default(key, read) else told.discard)(key)
            continue
        held = getattr(design, group, None) if dot else None
        listed = pieces_of(held).get(name) if is_record(held) else None
        if listed is None:
            raise _unknown_key(given)
        listing = read_pieces(listed, value, key)
        groups.setdefault(group, {})[name] = listing
        (told.discard if listing else told.add)(key)
    for group, values in groups.items():
        top[group] = getattr(design, group).with_read(values)
    if told != design.told:
        top["told"] = frozenset(told)
    return design.with_read(top)


def change(design: Design, changes: Mapping[str, Any]) -> Design:
    """A copy of a design with some inputs changed.

    Parameters
    ----------
    design : Design
        Left as it is.
    changes : mapping
        Dotted key (``"opening.width"``) or a code book's name (``"opening_width"``), to a text with
        its unit (``"48 in"``), a pint quantity, a count, a word, or ``None`` for unknown.

    Returns
    -------
    Design
        Checked input by input and as a whole.

    Raises
    ------
    InputError
        One sentence: which input, what is allowed, what came.

    Examples
    --------
    >>> change(Design(), {"opening.width": "4 ft"}).opening.width
    1.2192
    """
    changed = apply(design, changes)
    if design.piece_set is not None and changed.piece_set is None:
        changed = let_go(design, changed)
    if changed.piece_set is not None:
        asked = [book_names().get(key, key) for key in changes]
        if changed.piece_set == design.piece_set:
            both = {
                k: (value_of(design, k), value_of(changed, k)) for k in asked if k in all_inputs()
            }
            refuse_decided(design, {k: (all_inputs()[k], *v) for k, v in both.items()})
        let = decided(design).keys() - decided(changed).keys() - set(asked)
        changed = decide(changed)
        if changed.overruled:
            changed = changed.with_read({"overruled": ()})
        if let & changed.told:  # the set decides it no longer, and nobody else has told it
            changed = changed.with_read({"told": changed.told - let})
    require_consistent(changed)
    return changed


def value_of(design: Design, key: str) -> Any:
    """What an input of a design is, by its dotted key; a list of pieces too.

    >>> value_of(Design(), "flue.sections")
    10
    """
    return _getter(key)(design)


@lru_cache(maxsize=1024)
def _getter(key: str) -> attrgetter[Any]:
    return attrgetter(key)


def unknown_of(design: Design, *keys: str) -> tuple[str, ...]:
    """Which of these inputs nobody knows yet.

    >>> unknown_of(Design(), "site.wind", "flue.sections")
    ('site.wind',)
    """
    return tuple(key for key in keys if value_of(design, key) is None)
