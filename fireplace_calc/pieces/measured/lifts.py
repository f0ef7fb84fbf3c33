"""Lifts of a measured set: which pieces stand in each, what it is called, what is not there yet."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from fireplace_calc.pieces.measured.told import ReadSheet, Told
from fireplace_calc.pieces.records import ArchCut, SetPiece

NEEDED = (
    ("base plate",),
    ("wall",),
    ("back",),
    ("lintel",),
    ("throat back", "throat front"),
    ("reducer",),
    ("flue",),
)
"""Roles without which there is no fireplace; one of each group."""
NAMES = (
    ("flue", "flue"),
    ("collar", "collar"),
    ("reducer", "reducer"),
    ("throat back", "throat"),
    ("throat front", "throat"),
    ("smoke shelf", "throat"),
    ("lintel", "top walls"),
    ("top wall", "top walls"),
    ("top back", "top walls"),
    ("extension wall", "extension"),
    ("extension back", "extension"),
    ("wall", "course"),
    ("back", "course"),
    ("base plate", "plate"),
)
"""What a lift is called that holds a role; the first that is found."""


@dataclass(frozen=True, slots=True)
class MeasuredLift:
    """One lift as the sheet has it so far.

    Attributes
    ----------
    number : int
        From the base, from 1. [-]
    name : str
    pieces : tuple of SetPiece
        Without those of ``heads``.
    heads : tuple of (str, SetPiece)
        Lintels to choose from.
    extension : bool
    times : tuple of int
        Least and most often it is set. [-]
    """

    number: int
    name: str
    pieces: tuple[SetPiece, ...]
    heads: tuple[tuple[str, SetPiece], ...]
    extension: bool
    times: tuple[int, int]


def lifts_of(read: ReadSheet) -> tuple[MeasuredLift, ...]:
    """Lifts that hold a piece which can be read, from the base up.

    Parameters
    ----------
    read : ReadSheet
    """
    here: dict[int, list[Told]] = {}
    for one in read.told:
        for number in one.lifts if one.piece is not None else ():
            here.setdefault(number, []).append(one)
    names = _names({n: [t.piece.role for t in told if t.piece] for n, told in here.items()})
    return tuple(_lift(n, names[n], here[n]) for n in sorted(here))


def _lift(number: int, name: str, told: list[Told]) -> MeasuredLift:
    pieces = [t.piece for t in told if t.piece is not None]
    arched = [
        p for p in pieces if p.role == "lintel" and any(isinstance(c, ArchCut) for c in p.cuts)
    ]
    straight = [p for p in pieces if p.role == "lintel" and p not in arched]
    heads: tuple[tuple[str, SetPiece], ...] = ()
    if len(arched) == len(straight) == 1:
        heads = (("straight", straight[0]), ("segmental", arched[0]))
        pieces = [p for p in pieces if p.role != "lintel"]
    return MeasuredLift(
        number,
        name,
        tuple(pieces),
        heads,
        all(p.role.startswith("extension") for p in pieces) and not heads,
        next((t.times for t in told if t.times != (1, 1)), (1, 1)),
    )


def _names(roles: dict[int, list[str]]) -> dict[int, str]:
    kinds = {n: next(name for role, name in NAMES if role in held) for n, held in roles.items()}
    many, count, made = Counter(kinds.values()), Counter[str](), {}
    for n in sorted(kinds):
        kind = kinds[n]
        count[kind] += 1
        numbered = many[kind] > 1 or kind in ("course", "extension")
        made[n] = f"{kind} {count[kind]}" if numbered else kind
    return made


def still_missing(read: ReadSheet, lifts: tuple[MeasuredLift, ...]) -> tuple[str, ...]:
    """What a fireplace needs that the sheet does not have yet, a sentence each.

    Parameters
    ----------
    read : ReadSheet
    lifts : tuple of MeasuredLift
    """
    roles = {t.table.get("role") for t in read.told}
    lacking = [" or ".join(group) for group in NEEDED if not roles & set(group)]
    said = [f"Not on the sheet yet: {', '.join(lacking)}."] if lacking else []
    standing = {n for t in read.told for n in t.lifts}
    gaps = [str(n) for n in range(1, max(standing, default=0)) if n not in standing]
    if gaps:
        said.append(f"Nothing stands in lift {', '.join(gaps)} yet.")
    words = {
        "name": "a name",
        "bed": "the bed joint",
        "perpend": "the joint beside",
        "thickness": "the thickness of the firebrick lining",
        "floor": "the lining's floor",
    }
    wanted = [words[key] for key in read.head.missing]
    if wanted:
        said.append(f"The set still needs {', '.join(wanted)}.")
    return (*said, *_short(read, lifts))


def _short(read: ReadSheet, lifts: tuple[MeasuredLift, ...]) -> list[str]:
    """Marks of which too few are on the pallet."""
    said = []
    for one in read.told:
        count = one.table.get("pallet")
        if one.piece is None or count is None:
            continue
        here = [lift for lift in lifts if lift.number in one.lifts]
        need = sum(lift.times[0] for lift in here)
        if need > count and one.piece.role != "flue":
            said.append(f"{one.mark} stands in {need} lifts, but {count} are on the pallet.")
    return said
