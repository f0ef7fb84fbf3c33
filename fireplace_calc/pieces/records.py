"""A set of refractory pieces as its file tells it: shapes, joints, lifts. [m, kg]

x counts from the center line to the right, y from the front line of the pieces away from the room,
z from a piece's own bed. A piece is measured from bed to bed: a tongue stands over that height, a
socket lies inside it.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import cached_property

Point = tuple[float, float]
Outline = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class JointRange:
    """How thick a joint may be: least, wanted and most. [m]"""

    least: float
    wanted: float
    most: float


@dataclass(frozen=True, slots=True)
class Tapered:
    """What stands between two level outlines of equally many corners. [m]

    Attributes
    ----------
    bottom, top : float
        Levels over the piece's bed.
    lower, upper : Outline
        Counter-clockwise, corner by corner; sides that belong together are parallel, or they would
        not be flat.
    """

    bottom: float
    top: float
    lower: Outline
    upper: Outline


@dataclass(frozen=True, slots=True)
class Round:
    """An upright cylinder: a bore, a tongue, a socket. [m]"""

    bottom: float
    top: float
    radius: float
    center: Point


@dataclass(frozen=True, slots=True)
class ArchCut:
    """What a lintel lacks under its arch, from its bed up and through its whole depth. [m]"""

    rise: float
    span: float
    depth: float


Shape = Tapered | Round | ArchCut


@dataclass(frozen=True)
class SetPiece:
    """One mark of a set.

    Attributes
    ----------
    mark, name, role : str
        What is written on it, what it is called, what it is for (``ROLES``).
    height : float
        From bed to bed. [m]
    adds, cuts : tuple of Shape
        What it is, and what is taken away from that; cuts lie inside adds and apart from each
        other. [m]
    bed, perpend : JointRange
        Under it, and beside it.
    density : float
        [kg/m3]
    weighed : float or None
        On a scale; unknown goes by volume and density. [kg]
    bearing : float
        Least width of what it rests on. [m]
    after : tuple of str
        Marks, or ``lining``, that stand before it although it does not rest on them.
    on_pallet : int or None
        How many come on one pallet. [-]
    liner : float
        Wall of the liner cast in it; nought where there is none. [m]
    mirrored : str
        Mark it is the other hand of, where it is one.
    material : str
        One of ``MATERIALS``.
    plain : tuple of tuple of Shape, or None
        What it adds and cuts without its tongue and socket, where it nests: as it fills a stack of
        its kind, nests filled. [m]
    liner_kind : str
        One of ``liner_kinds.LINERS``, of a flue piece; empty where its file does not say.
    """

    mark: str
    name: str
    role: str
    height: float
    adds: tuple[Shape, ...]
    cuts: tuple[Shape, ...]
    bed: JointRange
    perpend: JointRange
    density: float
    weighed: float | None
    bearing: float
    after: tuple[str, ...]
    on_pallet: int | None
    liner: float
    mirrored: str
    material: str
    plain: tuple[tuple[Shape, ...], tuple[Shape, ...]] | None = None
    liner_kind: str = ""

    @cached_property
    def _content(self) -> int:
        return hash(tuple(getattr(self, field.name) for field in fields(self)))

    def __hash__(self) -> int:
        """By content, worked out once: what is known of two pieces is kept by them."""
        return self._content


@dataclass(frozen=True, slots=True)
class SetLift:
    """Pieces whose tops come level.

    Attributes
    ----------
    name : str
    marks : tuple of str
    extension : bool
        Left out where the firebox is not raised so far.
    heads : tuple of (str, str)
        Mark of the lintel for each head the set comes with.
    times : tuple of int
        Least and most often it is set, one on the other. [-]
    """

    name: str
    marks: tuple[str, ...]
    extension: bool
    heads: tuple[tuple[str, str], ...] = ()
    times: tuple[int, int] = (1, 1)


@dataclass(frozen=True, slots=True)
class Width:
    """One width that the set comes in.

    Attributes
    ----------
    name : str
    shift : float
        How much farther out than in the file its left and right pieces stand. [m]
    swaps : tuple of (str, str)
        Marks of the file, and those that take their place.
    """

    name: str
    shift: float = 0.0
    swaps: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class FirebrickLining:
    """What is laid inside the pieces.

    Attributes
    ----------
    thickness, joint, floor : float
        Square to the face, behind and between the firebricks, and of the paving. [m]
    after : tuple of str
        Marks that stand before it is laid.
    """

    thickness: float
    joint: float
    floor: float
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MakersLimits:
    """What the maker allows; nothing of it is a code's.

    Attributes
    ----------
    raise_most : float or None
        Of the firebox, by extension pieces. [m]
    stack_most : float or None
        From the hearth to the top of the flue. [m]
    approved_by : str
        Who has to approve what goes beyond.
    """

    raise_most: float | None = None
    stack_most: float | None = None
    approved_by: str = ""


class _HashedOnce:
    """A set is looked up with every design that takes it: its hash is worked out once."""

    __slots__ = ("_hash",)
    _hash: int


@dataclass(frozen=True, slots=True)
class PieceSet(_HashedOnce):
    """A set as its file tells it.

    Attributes
    ----------
    name, note : str
    metric : bool
        Measured in millimeters; else in inches.
    pieces : tuple of SetPiece
    lifts : tuple of SetLift
        From the base up.
    widths : tuple of Width
        One at least.
    lining : FirebrickLining or None
    limits : MakersLimits
    """

    name: str
    note: str
    metric: bool
    pieces: tuple[SetPiece, ...]
    lifts: tuple[SetLift, ...]
    widths: tuple[Width, ...]
    lining: FirebrickLining | None
    limits: MakersLimits

    def __hash__(self) -> int:
        """Of all that its file tells."""
        try:
            return self._hash
        except AttributeError:
            made = hash(tuple(getattr(self, field.name) for field in fields(self)))
            object.__setattr__(self, "_hash", made)
            return made

    def piece(self, mark: str) -> SetPiece:
        """The piece of a mark."""
        return next(p for p in self.pieces if p.mark == mark)
