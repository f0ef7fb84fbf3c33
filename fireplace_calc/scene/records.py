"""What a picture of the room is made of: things, the way their faces are laid, standpoints, and the
measures of the room. All of it in meters: right, away from the room, up from the floor; the plane
of the face is where the second is nought.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.geometry.in_room.cut_corner import CutCorner

if TYPE_CHECKING:
    from collections.abc import Sequence

Point = tuple[float, float, float]
"""Right, away from the room, up. [m]"""
KINDS = ("masonry", "piece", "trim", "setting")
"""What is built, a piece of a set, what is fixed to it, and what only stands in the room."""


@dataclass(frozen=True, eq=False)
class Thing:
    """One thing that can be seen, and picked by itself.

    Attributes
    ----------
    key : str
        Its own among all things, and the same after a slider has moved.
    name : str
        As it is spoken of.
    stuff : str
        What it is made of to the eye: a row of ``data/stuffs.csv``.
    kind : str
        One of ``KINDS``.
    points : array
        Corners, one a row. [m]
    faces : array
        Three rows of ``points`` a face, counter-clockwise seen from outside. [-]
    part : str
        The part or the piece of the list that it shows; nothing for what only stands in the room.
    smooth : bool
        Round to the eye: faces that meet at a small angle are shaded as one.
    away : tuple of float
        How far it is moved where the whole is drawn apart. [m]
    step : int
        When it is set, counted from 1; nought stands from the beginning. [-]
    cut : bool
        Only what the knife laid bare, to be hatched as ``stuff``, which is then the material by its
        name on the section.
    item : str
        Line of the list that it is one piece of; nothing for what is laid or poured.
    """

    key: str
    name: str
    stuff: str
    kind: str
    points: Array
    faces: IntArray
    part: str = ""
    smooth: bool = False
    away: Point = (0.0, 0.0, 0.0)
    step: int = 0
    cut: bool = False
    item: str = ""


@dataclass(frozen=True, eq=False)
class FaceLayout:
    """How the faces of a stuff are laid: the outline of every brick, stone, tile or board. Of
    several that fit a face the first counts.

    Attributes
    ----------
    stuff : str
        Whose faces.
    origin : tuple of float
        Where the outlines' nought lies. [m]
    along, up : tuple of float, optional
        Directions of the two numbers of an outline. Where they are left out: of an upright or
        sloping face, level to the right as it is seen from outside, and up the face; of a level
        one, right and away. [-]
    width, height : float
        What is laid; it comes again after so much where ``repeats``. [m]
    rings : sequence of array
        Outlines, two numbers a corner. [m]
    things : tuple of str
        Only on these things, by key; on all of the stuff where empty.
    normal : tuple of float, optional
        Only on faces that look this way. [-]
    repeats : bool
        Where not, nothing is laid beyond ``width`` and ``height``.
    joint : str
        Color of the joints, as ``#rrggbb``, where it is not the stuff's own.
    """

    stuff: str
    origin: Point
    width: float
    height: float
    rings: Sequence[Array]
    along: Point | None = None
    up: Point | None = None
    things: tuple[str, ...] = ()
    normal: Point | None = None
    repeats: bool = True
    joint: str = ""


@dataclass(frozen=True, slots=True)
class Standpoint:
    """Where somebody stands, and what he looks at.

    Attributes
    ----------
    name : str
        As it stands on its button.
    stands, looks : tuple of float
        [m]
    angle : float
        How wide it sees, from left to right. [deg]
    """

    name: str
    stands: Point
    looks: Point
    angle: float


@dataclass(frozen=True, slots=True)
class WindowWall:
    """The wall that has the windows: its axes are square to it, into the room, and along it.

    Attributes
    ----------
    x, y : float
        Where their nought lies. [m]
    turn : float
        From the fireplace's axes to these, to the left. [deg]
    plane : float
        Of its face. [m]
    """

    x: float
    y: float
    turn: float
    plane: float

    def placed(self, off: float, along: float) -> tuple[float, float]:
        """A place right and away from the fireplace's face. [m]

        Parameters
        ----------
        off, along : float
            From the face of the wall into the room, and along it. [m]
        """
        c, s, out = cos(radians(self.turn)), sin(radians(self.turn)), self.plane + off
        return self.x + c * out - s * along, self.y + s * out + c * along


@dataclass(frozen=True, slots=True)
class Window:
    """An opening in its wall, by its ends along it. [m]"""

    front: float
    back: float
    sill: float
    head: float


@dataclass(frozen=True, slots=True)
class RoomMeasures:
    """The room's measures, as the light needs them.

    Attributes
    ----------
    left, right : float
        Faces of the side walls. These, front and back are in the room's own axes, which are those
        of the fireplace unless it stands across a corner. [m]
    front, back : float
        The wall behind whoever looks at the fire (negative), and the wall that the breast stands
        out of. [m]
    ceiling : float
        [m]
    windows : tuple of Window
        Of the wall at the left, or of ``window_wall``.
    lamp : tuple of float
        Middle of the lamp's shade. [m]
    fire : tuple of float
        Middle of the fire's foot. [m]
    fire_width : float
        Of the laid logs. [m]
    corner : CutCorner, optional
        The wall across the corner.
    window_wall : WindowWall, optional
        Where that is not the one at the left, square to the wall at the fireplace.
    """

    left: float
    right: float
    front: float
    back: float
    ceiling: float
    windows: tuple[Window, ...]
    lamp: Point
    fire: Point
    fire_width: float
    corner: CutCorner | None = None
    window_wall: WindowWall | None = None

    @property
    def lit_from(self) -> WindowWall:
        """The wall that has the windows, wherever it stands."""
        return self.window_wall or WindowWall(0.0, 0.0, 0.0, self.left)
