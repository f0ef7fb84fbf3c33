"""The questions that a fireplace of one's own begins with, each answered by one entry."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.places import find, site
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import InputError
from fireplace_calc.design.mantel import FAMILIES, TOLD
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.editing.starting.answers import (
    is_length,
    liner,
    liner_choices,
    one_of,
    two_lengths,
    with_bare_unit,
)

Changes = dict[str, Any]
Read = Callable[[str, str], Changes]
"""Text and units to what ``change`` takes."""
FEET, INCHES = ("ft", "m"), ("in", "mm")

LAID = "laid"
STOREYS = {"one": "1", "two": "2", "three": "3"}
STANDS = {
    "inside the house": "interior",
    "within an outside wall": "within exterior wall",
    "outside the house": "exterior",
}
HEADS = {"straight": "straight", "arch": "segmental"}
MANTELS = {family: family for family in FAMILIES if family != TOLD}
FACES = {"brick": "brick", "stone": "stone", "plaster": "plaster", "tile": "tile"}


@dataclass(frozen=True)
class StartQuestion:
    """One question.

    Attributes
    ----------
    key : str
        What it is kept under.
    words, hint : str
        As it is asked, and an example of an answer.
    read : callable
        Text and units to changes of the design; empty for what is not the design's own.
    choices : callable
        Units to words to choose from, with what each stands for; empty where any text will do.
    only : bool
        Whether nothing but these will do.
    decides : tuple of str
        Inputs that a set may have decided already.
    """

    key: str
    words: str
    hint: str
    read: Read
    choices: Callable[[str], Mapping[str, str]] = lambda units: {}
    only: bool = False
    decides: tuple[str, ...] = ()


def _length(key: str, bare: tuple[str, str]) -> Read:
    return lambda text, units: {key: with_bare_unit(text, units, bare)}


def _nothing(text: str, units: str) -> Changes:
    del text, units
    return {}


def _place(text: str, units: str) -> Changes:
    """A town is looked up; a length is the altitude, and the winter stays assumed."""
    level = with_bare_unit(text, units, FEET)
    if is_length(level):
        return {"site.place": "", "site.altitude": level}
    found = find(text, limit=1)
    if not found:
        raise InputError(
            f"Place is {shown(text)}, but no weather station of that name is known; type a larger"
            " town near it, or the altitude.",
            "Place",
            "a town or an altitude",
            text,
        )
    return dict(site(found[0]))


def _room(text: str, units: str) -> Changes:
    long, wide = two_lengths(text, units, FEET, "The room")
    return {"house.room_length": long, "house.room_width": wide}


def _method(text: str, units: str) -> Changes:
    del units
    chosen = one_of(text, methods(), "Laid or set")
    if chosen == LAID:
        return {"method": LAID, "pieces.set": ""}
    return {"pieces.set": chosen}


def methods() -> dict[str, str]:
    """Laid, or which of the sets that came with the workbook."""
    sets = {f"set in pieces: {name}": name for name in shipped_sets()}
    return {"laid in brick": LAID, **sets}


def _head(text: str, units: str) -> Changes:
    del units
    return {"opening.head": one_of(text, HEADS, "Head of the opening")}


def _liner(text: str, units: str) -> Changes:
    shape, size = liner(text, units)
    return {"flue.shape": shape, "flue.size": size}


def _of(key: str, words: Mapping[str, str], label: str) -> Read:
    return lambda text, units: {key: one_of(text, words, label)}


def _usual(column: str) -> Callable[[str], dict[str, str]]:
    """Openings of the handbook's table, to pick from."""

    def choices(units: str) -> dict[str, str]:
        del units
        found = sorted({float(row[column]) for row in rows("fb1889_table3.csv")})
        return {f"{value:g} in": f"{value:g} in" for value in found}

    return choices


def _always(words: Mapping[str, str]) -> Callable[[str], Mapping[str, str]]:
    return lambda units: words


QUESTIONS = (
    StartQuestion(
        "name", "What is the job called?", "Lake house", lambda t, u: {"name": t.strip()}
    ),
    StartQuestion("place", "Where is it? A town, or the altitude", "a town, or 5,280 ft", _place),
    StartQuestion("book", "Which code?", "", _nothing, only=True),
    StartQuestion(
        "storeys",
        "How many stories, from this floor up?",
        "",
        _nothing,
        _always(STOREYS),
        only=True,
    ),
    StartQuestion("ceiling", "How high is the ceiling?", "9 ft", _length("house.ceiling", FEET)),
    StartQuestion("room", "How large is the room? Fireplace wall first", "20 x 14 ft", _room),
    StartQuestion(
        "stands",
        "Where does the chimney stand?",
        "",
        _of("chimney.location", STANDS, "Chimney"),
        _always(STANDS),
        only=True,
    ),
    StartQuestion(
        "pitch",
        "How steep is the roof?",
        "8 in 12",
        lambda text, units: {"roof.pitch": with_bare_unit(text, units, (":12", ":12"))},
    ),
    StartQuestion(
        "ridge",
        "How far, level, to the ridge?",
        "8 ft",
        _length("roof.ridge_distance", FEET),
    ),
    StartQuestion(
        "method",
        "Laid in brick, or set in pieces?",
        "",
        _method,
        lambda units: methods(),
        only=True,
    ),
    StartQuestion(
        "width",
        "How wide is the opening?",
        "42 in",
        _length("opening.width", INCHES),
        _usual("opening_width_w_in"),
    ),
    StartQuestion(
        "height",
        "How high, before it is raised?",
        "30 in",
        _length("opening.standard_height", INCHES),
        _usual("opening_height_h_in"),
        decides=("opening.standard_height",),
    ),
    StartQuestion(
        "raised",
        "How far is the firebox raised?",
        "0 in",
        _length("opening.extension", INCHES),
    ),
    StartQuestion("head", "Arch or straight?", "", _head, _always(HEADS), only=True),
    StartQuestion(
        "liner",
        "Which liner?",
        "12x16, or from the list",
        _liner,
        liner_choices,
        decides=("flue.size",),
    ),
    StartQuestion("top", "Floor to chimney top?", "24 ft", _nothing),
    StartQuestion(
        "face",
        "What is the face made of?",
        "",
        _of("surround.face", FACES, "Face"),
        _always(FACES),
        only=True,
    ),
    StartQuestion(
        "mantel",
        "Which mantel?",
        "",
        _of("mantel.family", MANTELS, "Mantel"),
        _always(MANTELS),
        only=True,
    ),
)
"""In the order in which they are asked."""
BY_KEY = {question.key: question for question in QUESTIONS}
