"""A whole set, read from its text. [m, kg]"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

from fireplace_calc.base.messages import one_line, shown
from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.fields import MILLIMETER, Fields, unit_of
from fireplace_calc.pieces.piece_text import Defaults, read_piece
from fireplace_calc.pieces.records import (
    FirebrickLining,
    MakersLimits,
    PieceSet,
    SetLift,
    SetPiece,
    Width,
)
from fireplace_calc.pieces.roles import HEADS

LONGEST_FILE = 1_000_000
"""Letters of a set file. [-]"""
MOST_PIECES, MOST_LIFTS, MOST_TIMES = 200, 200, 60
"""Marks, lifts, and how often one lift is set. [-]"""
FIELDS = (
    "name",
    "note",
    "unit",
    "density",
    "bed",
    "perpend",
    "lining",
    "limits",
    "piece",
    "lift",
    "width",
)


def read_set(text: str) -> PieceSet:
    """Read a set from the text of its file.

    Parameters
    ----------
    text : str
        TOML; every length a bare number in the file's unit, or text with its own.

    Returns
    -------
    PieceSet
        Nothing is known yet of whether its pieces meet (``geometry.assembled.fit``).

    Raises
    ------
    InputError
        One sentence: which piece, which field, what is wanted, what came.
    """
    if len(text) > LONGEST_FILE:
        raise InputError("The set file is longer than any set.", "set", "a set file", len(text))
    try:
        raw = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except (tomllib.TOMLDecodeError, RecursionError) as wrong:
        raise InputError(
            one_line(f"The set file cannot be read as TOML: {wrong}."), "set", "TOML", None
        ) from None
    unit = unit_of(raw)
    whole = Fields("The set", raw, unit)
    whole.only(FIELDS)
    pieces = _pieces(whole)
    lifts = _lifts(whole, pieces)
    widths = _widths(whole, pieces)
    lining = _lining(whole, pieces)
    marks = {m for lift in lifts for m in (*lift.marks, *(mark for _, mark in lift.heads))}
    unused = set(pieces) - marks - {m for w in widths for _, m in w.swaps}
    if unused:
        raise InputError(
            f"No lift holds {', '.join(sorted(unused))}; every piece stands somewhere.",
            "lift",
            "a lift for every piece",
            sorted(unused),
        )
    return PieceSet(
        whole.words("name"),
        whole.words("note", "", 2000),
        unit == MILLIMETER,
        tuple(pieces.values()),
        lifts,
        widths,
        lining,
        _limits(whole),
    )


def _pieces(whole: Fields) -> dict[str, SetPiece]:
    defaults = Defaults(
        whole.joint("bed", None) if "bed" in whole.raw else None,
        whole.joint("perpend", None) if "perpend" in whole.raw else None,
        whole.number("density", 200, 8000, "kg/m3"),
    )
    tables = whole.tables("piece")
    if not 1 <= len(tables) <= MOST_PIECES:
        raise InputError(
            f"The set has {len(tables)} pieces; 1 to {MOST_PIECES} are wanted.",
            "piece",
            "a table for every mark",
            len(tables),
        )
    known: dict[str, tuple[Mapping[str, Any], SetPiece]] = {}
    for table in tables:
        full, piece = read_piece(table, known, defaults, whole.unit)
        known[piece.mark] = full, piece
    made = {mark: piece for mark, (_, piece) in known.items()}
    for piece in made.values():
        _known_marks(
            Fields(f"Piece {piece.mark}", {"after": list(piece.after)}, whole.unit),
            "after",
            piece.after,
            {*made, "lining"},
        )
    return made


def _known_marks(
    fields: Fields, field: str, told: tuple[Any, ...], known: Mapping[str, Any] | set[str]
) -> None:
    for mark in told:
        if not isinstance(mark, str) or mark not in known:
            raise fields.wrong(field, f"marks of the set, and {shown(mark)} is none")


def _lifts(whole: Fields, pieces: Mapping[str, SetPiece]) -> tuple[SetLift, ...]:
    made: list[SetLift] = []
    tables = whole.tables("lift")
    if not 1 <= len(tables) <= MOST_LIFTS:
        raise InputError(
            f"The set has {len(tables)} lifts; 1 to {MOST_LIFTS} are wanted, from the base up.",
            "lift",
            "pieces whose tops come level",
            len(tables),
        )
    for number, table in enumerate(tables, 1):
        here = Fields(f"Lift {number}", table, whole.unit)
        here.only(("name", "pieces", "extension", "heads", "repeat"))
        marks = here.listed("pieces", ())
        _known_marks(here, "pieces", marks, pieces)
        heads = here.raw.get("heads", {})
        if not isinstance(heads, Mapping) or not set(heads) <= set(HEADS):
            raise here.wrong("heads", f"a mark for {' or '.join(HEADS)}")
        _known_marks(here, "heads", tuple(heads.values()), pieces)
        if not marks and not heads:
            raise here.wrong("pieces", "at least one mark")
        extension = here.raw.get("extension", False)
        if not isinstance(extension, bool):
            raise here.wrong("extension", "true or false")
        name = here.words("name")
        if name in (lift.name for lift in made):
            raise here.wrong("name", "a name that no other lift has")
        made.append(SetLift(name, marks, extension, tuple(heads.items()), _times(here)))
    return tuple(made)


def _times(here: Fields) -> tuple[int, int]:
    told = here.raw.get("repeat", [1, 1])
    if (
        not isinstance(told, list)
        or len(told) != 2
        or not all(isinstance(n, int) and not isinstance(n, bool) for n in told)
        or not 1 <= told[0] <= told[1] <= MOST_TIMES
    ):
        raise here.wrong("repeat", f"a pair of counts in rising order, 1 to {MOST_TIMES}")
    return told[0], told[1]


def _widths(whole: Fields, pieces: Mapping[str, SetPiece]) -> tuple[Width, ...]:
    made = []
    for number, table in enumerate(whole.tables("width"), 1):
        here = Fields(f"Width {number}", table, whole.unit)
        here.only(("name", "shift", "swap"))
        swaps = here.raw.get("swap", {})
        if not isinstance(swaps, Mapping):
            raise here.wrong("swap", "a mark for each mark that changes")
        _known_marks(here, "swap", tuple(m for pair in swaps.items() for m in pair), pieces)
        shift = here.one_length("shift", table["shift"]) if "shift" in table else 0.0
        made.append(Width(here.words("name"), shift, tuple(swaps.items())))
    return tuple(made) or (Width("as drawn"),)


def _lining(whole: Fields, pieces: Mapping[str, SetPiece]) -> FirebrickLining | None:
    table = whole.raw.get("lining")
    if table is None:
        return None
    if not isinstance(table, Mapping):
        raise whole.wrong("lining", "a table of thickness, joint, floor and after")
    here = Fields("The lining", table, whole.unit)
    here.only(("thickness", "joint", "floor", "after"))
    after = here.listed("after", ())
    _known_marks(here, "after", after, pieces)
    return FirebrickLining(
        here.length("thickness", low=0.005, high=0.3),
        here.length("joint", 0.003, high=0.03),
        here.length("floor", low=0.01, high=0.3),
        after,
    )


def _limits(whole: Fields) -> MakersLimits:
    table = whole.raw.get("limits", {})
    if not isinstance(table, Mapping):
        raise whole.wrong("limits", "a table of raise, stack and approval")
    here = Fields("The maker's limits", table, whole.unit)
    here.only(("raise", "stack", "approval"))
    return MakersLimits(
        here.length("raise") if "raise" in table else None,
        here.length("stack", high=60.0) if "stack" in table else None,
        here.words("approval", ""),
    )
