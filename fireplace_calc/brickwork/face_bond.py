"""Bonds of a face: where the head joints of its courses stand, and how many stretchers and headers
show to a square metre.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.cut_stock import KERF
from fireplace_calc.brickwork.unit import Unit

HEADER_JOINTS = (INCH / 8, 3 * INCH / 4)
"""A bond closes where the head joint between two headers is neither narrower nor wider than this:
our own habit. [m]
"""
HEADER_COURSE = 6
"""Courses to one of headers in common bond. [-]"""
BRITISH = {"running": "stretcher", "common": "English garden wall"}
"""What England calls a bond by another name."""


@dataclass(frozen=True, slots=True)
class FaceBond:
    """How the courses of a face are bonded.

    Attributes
    ----------
    name : str
        As it is laid.
    course : float
        Height of one, bed counted in. [m]
    module : float
        After so much of a course its joints come again. [m]
    repeat : int
        After so many courses they do. [-]
    heads : tuple of float and tuple of int
        Where a head joint stands in the module, from a joint of the first course [m], and in which
        courses of the repeat.
    stretchers, headers : float
        To the square metre of face. [1/m2]
    header : float
        Width of a header with its joint. [m]
    note : str
        Why the bond is not the chosen one.
    """

    name: str
    course: float
    module: float
    repeat: int
    heads: tuple[tuple[float, tuple[int, ...]], ...]
    stretchers: float
    headers: float = 0.0
    header: float = 0.0
    note: str = ""


def lapped(course: float, length: float, name: str = "running", note: str = "") -> FaceBond:
    """Units of one length: each course moved by a half, by a third, or not at all.

    Parameters
    ----------
    course, length : float
        Of a unit, joints counted in. [m]
    name : str
        ``running``, ``third running`` or ``stack``.
    note : str
        Why it is not the chosen one.

    Returns
    -------
    FaceBond
    """
    laps = {"running": 2, "third running": 3, "stack": 1}[name]
    heads = tuple((length * k / laps, (k,)) for k in range(laps))
    return FaceBond(name, course, length, laps, heads, 1 / (course * length), note=note)


@lru_cache(maxsize=64)
def face_bond(unit: Unit, name: str) -> FaceBond:
    """The bond of a brick face.

    Parameters
    ----------
    unit : Unit
        As it lies in a stretcher course: its header is ``depth`` wide. [m]
    name : str
        One of ``FACE_BONDS``.

    Returns
    -------
    FaceBond
        Running, with a note, where so many headers and their joints do not make a stretcher.

    Examples
    --------
    >>> modular = Unit(7.625 * INCH, 2.25 * INCH, 3.625 * INCH, 0.375 * INCH)
    >>> flemish = face_bond(modular, "Flemish")
    >>> flemish.name, round(flemish.module / INCH, 3)  # a stretcher and a header
    ('Flemish', 12.0)
    """
    long, course = unit.length + unit.joint, unit.course
    if name in ("running", "third running", "stack"):
        return lapped(course, long, name)
    to_one = max(round(long / (unit.depth + unit.joint)), 1)
    header, least, most = long / to_one, *HEADER_JOINTS
    if not least - 1e-9 <= header - unit.depth <= most + 1e-9:
        note = f"{name} bond does not close with this brick and joint: laid as running bond"
        return lapped(course, long, note=note)
    if name == "Flemish":
        both = long + header
        # A stretcher stands over the middle of the hearth, over it a header.
        heads = tuple(
            (at, (row,))
            for row, middle in enumerate((long, header))
            for at in (middle / 2, both - middle / 2)
        )
        each = 1 / (both * course)
        return FaceBond(name, course, both, 2, heads, each, each, header)
    row = 1 if name == "English" else HEADER_COURSE - 1
    ends = tuple(((k + 0.5) * header, (row,)) for k in range(to_one))
    plain = ((0.0, tuple(range(0, row, 2))), (long / 2, tuple(range(1, row, 2))))
    stretchers = tuple(one for one in plain if one[1])
    all_rows = 1 / ((row + 1) * course * long)
    return FaceBond(
        *(name, course, long, row + 1, stretchers + ends, row * all_rows),
        *(to_one * all_rows, header),
    )


def snapped_from_one(unit: Unit) -> int:
    """Headers that do not tail into the wall, and come out of one brick.

    Parameters
    ----------
    unit : Unit

    Returns
    -------
    int
        [-]
    """
    return max(int((unit.length + KERF + 1e-9) / (unit.depth + KERF)), 1)


def english(text: str, pack: str) -> str:
    """A text about bonds, with England's names for them where her book is asked.

    Parameters
    ----------
    text : str
    pack : str
        Name of the book.

    Returns
    -------
    str

    Examples
    --------
    >>> english("one wythe in the room, running bond", "UK ADJ")
    'one wythe in the room, stretcher bond'
    """
    for name, told in BRITISH.items() if pack.startswith("UK") else ():
        text = text.replace(f", {name} bond", f", {told} bond")
        text = text.replace(f"laid as {name} bond", f"laid as {told} bond")
    return text
