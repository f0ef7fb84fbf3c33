"""The sheet of a pallet: what was typed for the set and for each piece, word for word."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.hollow_forms import FORMS, USUAL
from fireplace_calc.pieces.roles import MATERIALS, ROLES

Entry = Mapping[str, str]
"""One piece: texts by field; an empty text is no field."""
HEAD = {
    "name": "Name of the set",
    "unit": "A bare number is in",
    "bed": "Bed joint: least, wanted, most",
    "perpend": "Joint beside: least, wanted, most",
    "density": "Density, for pieces not weighed",
    "thickness": "Lining: firebrick, thickness",
    "joint": "Lining: joint",
    "floor": "Lining: floor",
    "raise": "Maker's limit: raise",
    "stack": "Maker's limit: stack",
    "approval": "Who approves what goes beyond",
    "note": "Note",
}
"""What is told once for the set, and its label."""
BEFORE = {
    "mark": "Mark",
    "role": "Role",
    "lifts": "Lift, from the base",
    "times": "Set how often, one on the other",
    "form": "Form",
}
PLACE = {
    "X": "X: center line to left side",
    "Y": "Y: set back from the front",
    "count": "How many on the pallet",
    "weight": "Weight, on a scale",
}
MORE = {
    "name": "Name",
    "bed": "Bed joint, if its own",
    "perpend": "Joint beside, if its own",
    "bearing": "Least bearing, if its own",
    "material": "Material",
    "after": "Set after",
}
"""Fields of a piece around its lengths, and what is seldom told."""
OF_A_HAND = ("mark", "lifts", "times", "count", "weight", "name", "after")
"""What the other hand of a piece has of its own; the rest is the piece's."""
NOT_COPIED = frozenset(("mark", "mirror", "weight", *MORE))
"""What the next piece does not take over from the last: its own, and what may be out of sight."""
LETTERS = "ABCDEFGHIJKL"
SHAPED = ("form", *LETTERS, "X", "Y", "times")
"""What a piece takes over from another of its role."""
UNITS = ("in", "mm")
SIDES = {"R": "L", "L": "R", "right": "left", "left": "right"}


@dataclass(frozen=True, slots=True)
class MeasuredSheet:
    """Everything that was typed.

    Attributes
    ----------
    head : mapping
        Texts told once for the set, by the keys of ``HEAD``.
    entries : tuple of mapping
        One for each mark, in the order they were measured.
    """

    head: Entry
    entries: tuple[Entry, ...] = ()

    @property
    def metric(self) -> bool:
        """Whether a bare number is millimeters."""
        return self.head.get("unit") == "mm"

    def entry_of(self, mark: str) -> Entry | None:
        """The entry of a mark."""
        return next((e for e in self.entries if mark and e.get("mark") == mark), None)


def source_of(sheet: MeasuredSheet, entry: Entry) -> Entry:
    """Whose lengths an entry has: its own, or those of the piece that it is the other hand of."""
    if "mirror" not in entry:
        return entry
    return sheet.entry_of(entry["mirror"]) or entry


def keys_of(sheet: MeasuredSheet, entry: Entry, more: bool = True) -> tuple[str, ...]:
    """Fields that are asked for, in order.

    Parameters
    ----------
    sheet : MeasuredSheet
    entry : mapping
    more : bool
        With what is seldom told.
    """
    flue = source_of(sheet, entry).get("role") == "flue"
    extra = tuple(MORE) if more else ()
    if "mirror" in entry:
        own = ("mark", "mirror", "lifts", *(("times",) if flue else ()), "count", "weight")
        return (*own, *(key for key in extra if key in OF_A_HAND))
    form = FORMS.get(entry.get("form", ""))
    letters = tuple(dim.key for dim in form.dims) if form else ()
    before = tuple(key for key in BEFORE if key != "times" or flue)
    return (*before, *letters, *PLACE, *extra)


def label_of(entry: Entry, key: str) -> str:
    """What a field is called."""
    form = FORMS.get(entry.get("form", ""))
    dim = form.dim(key) if form and key in LETTERS else None
    if dim:
        return f"{key}: {dim.name}"
    if key == "mirror":
        return "Other hand of"
    return {**BEFORE, **PLACE, **MORE}[key]


def choices_of(key: str) -> tuple[str, ...]:
    """Words that a field chooses from; none where it is typed."""
    lists = {"role": ROLES, "form": tuple(FORMS), "material": MATERIALS, "unit": UNITS}
    return lists.get(key, ())


def put_head(sheet: MeasuredSheet, key: str, text: str) -> MeasuredSheet:
    """The sheet with another text told for the whole set."""
    return replace(sheet, head=_with(sheet.head, key, text))


def put(sheet: MeasuredSheet, number: int, key: str, text: str) -> MeasuredSheet:
    """The sheet with another text in a field; what follows from it goes along.

    Parameters
    ----------
    sheet : MeasuredSheet
    number : int
        Of the entry, from nought. [-]
    key, text : str

    Notes
    -----
    A role brings form, lengths and place of the piece before that had it, or of another wall or
    another back; of a new one the form it mostly has. A form keeps the lengths that are called the
    same. A mark that changes is changed wherever the sheet names it.
    """
    entry = sheet.entries[number]
    old = entry.get(key, "")
    made = _with(entry, key, text)
    if key == "role" and text != old:
        made = _as_before(sheet, number, made)
    if key == "form" and text in FORMS:
        made = _formed(entry, text)
    entries = [*sheet.entries]
    entries[number] = made
    if key == "mark" and old and made.get("mark") and sheet.entry_of(old) is entry:
        entries = [_renamed(e, old, made["mark"]) for e in entries]
    return replace(sheet, entries=tuple(entries))


def begun(sheet: MeasuredSheet, number: int | None = None) -> MeasuredSheet:
    """The sheet with one more piece, begun as a copy of one before: of the last, if none is named.

    Parameters
    ----------
    sheet : MeasuredSheet
    number : int or None
        Of the entry to copy, from nought. [-]
    """
    if not sheet.entries:
        first = {"role": "base plate", "lifts": "1", "form": "box"}
        return replace(sheet, entries=(first,))
    last = sheet.entries[-1 if number is None else number]
    source = {**source_of(sheet, last), "lifts": last.get("lifts", "")}
    copy = {key: text for key, text in source.items() if text and key not in NOT_COPIED}
    return replace(sheet, entries=(*sheet.entries, copy))


def other_hand(sheet: MeasuredSheet, number: int, mark: str = "") -> MeasuredSheet:
    """The sheet with the other hand of a piece behind it.

    Parameters
    ----------
    sheet : MeasuredSheet
    number : int
        Of the piece, from nought; the other hand of another hand is that of its piece. [-]
    mark : str
        Of the new one; without it right becomes left in the mark.

    Raises
    ------
    InputError
        For a piece without a mark.
    """
    entry = sheet.entries[number]
    source = source_of(sheet, entry)
    if not source.get("mark"):
        raise InputError(
            "The piece has no mark yet; type it, then ask for its other hand.", "mark", "a mark", ""
        )
    made = {"mirror": source["mark"], "mark": mark or _other_mark(sheet, source["mark"])}
    made |= {key: entry[key] for key in ("lifts", "times", "count") if key in entry}
    if source.get("name"):
        made["name"] = re.sub("right|left", lambda m: SIDES[m[0]], source["name"])
    made = {key: text for key, text in made.items() if text}
    return replace(sheet, entries=(*sheet.entries, made))


def without(sheet: MeasuredSheet, number: int) -> MeasuredSheet:
    """The sheet without a piece.

    Raises
    ------
    InputError
        When another is its other hand.
    """
    mark = sheet.entries[number].get("mark", "")
    twins = [e.get("mark", "") for e in sheet.entries if mark and e.get("mirror") == mark]
    if twins:
        raise InputError(
            f"{twins[0]} is the other hand of {mark}; take {twins[0]} off the sheet first.",
            "mark",
            "a piece without another hand",
            mark,
        )
    left = (*sheet.entries[:number], *sheet.entries[number + 1 :])
    return replace(sheet, entries=left)


def _with(entry: Entry, key: str, text: str) -> Entry:
    clean = " ".join(text.split())
    rest = {k: v for k, v in entry.items() if k != key}
    return {**rest, key: clean} if clean else rest


def _as_before(sheet: MeasuredSheet, number: int, entry: Entry) -> Entry:
    """An entry in the form of the last piece of its role, or of its kind: most of them differ by a
    length or two.
    """
    role = entry.get("role", "")
    for same in (role, role.split()[-1] if role else ""):
        for k in range(len(sheet.entries) - 1, -1, -1):
            other = sheet.entries[k]
            held = other.get("role", "")
            if k == number or not held or (held if same == role else held.split()[-1]) != same:
                continue
            kept = {key: text for key, text in entry.items() if key not in SHAPED}
            return {**kept, **{key: other[key] for key in SHAPED if key in other}}
    made = _formed(entry, USUAL.get(role, "box"))
    return {key: text for key, text in made.items() if key not in ("X", "Y")}


def _formed(entry: Entry, form: str) -> Entry:
    """An entry in another form; what has the same name there is kept."""
    old, new = FORMS.get(entry.get("form", "")), FORMS.get(form)
    if old is new or new is None:
        return {**entry, "form": form}
    named = {d.name: entry[d.key] for d in old.dims if d.key in entry} if old else {}
    kept = {key: text for key, text in entry.items() if key not in LETTERS}
    taken = {d.key: named[d.name] for d in new.dims if d.name in named}
    return {**kept, "form": form, **taken}


def _renamed(entry: Entry, old: str, new: str) -> Entry:
    made = dict(entry)
    if made.get("mirror") == old:
        made["mirror"] = new
    if "after" in made:
        made["after"] = ", ".join(
            new if m.strip() == old else m.strip() for m in made["after"].split(",")
        )
    return made


def _other_mark(sheet: MeasuredSheet, mark: str) -> str:
    """R for L in a mark, at its end first; empty where that is taken or there is none."""
    found = [k for k in range(len(mark) - 1, -1, -1) if mark[k] in "RL"]
    for k in found:
        other = mark[:k] + SIDES[mark[k]] + mark[k + 1 :]
        if sheet.entry_of(other) is None:
            return other
    return ""
