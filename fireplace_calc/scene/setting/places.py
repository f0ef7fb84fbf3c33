"""Where something may stand: clear of the masonry, of the fire, of what already stands there, and
of whoever looks at the fire. [m]
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.in_room.cut_corner import TURNED
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.eyes import INSIDE, standpoints
from fireplace_calc.scene.setting.masonry_in_room import footprint
from fireplace_calc.scene.setting.measures import (
    cut_corner,
    front_and_back,
    side_walls,
    window_wall,
)
from fireplace_calc.scene.setting.openings import DOOR, FROM_WALL, door_place
from fireplace_calc.scene.setting.stood import Furniture

if TYPE_CHECKING:
    from manifold3d import CrossSection, JoinType

FROM_FIRE = 36 * INCH
"""From the opening to whatever burns: common practice, from memory. [m]"""
CLEAR = 0.06
"""Between one thing and the next, and from the masonry. [m]"""
LOW = 0.5
"""What is no higher than this is seen over. [m]"""
ROUND_AN_EYE = 0.22
"""Nothing stands so near to a standpoint. [m]"""
BESIDE_OPENING = 0.12
"""So much beside the opening is in sight as well. [m]"""


class Spot(NamedTuple):
    """Where the middle of something stands, and how it is turned to the left. [m, deg]"""

    x: float
    y: float
    turn: float = 0.0


class FloorPlan:
    """The floor of a room, filled piece by piece.

    Parameters
    ----------
    geometry : Geometry
    """

    def __init__(self, geometry: Geometry) -> None:
        self.corner = cut_corner(geometry)
        (left, self.own_right) = side_walls(geometry)
        (self.own_front, self.own_back) = front_and_back(geometry)
        wall = window_wall(geometry)
        at_left = wall is None or wall.turn == TURNED
        self.floor = self._placed(
            _rectangle(
                left + 0.01 + (FROM_WALL if at_left else 0.0),
                self.own_right - 0.02,
                self.own_front + (0.0 if at_left else FROM_WALL),
                self.own_back,
            )
        )
        self.left, self.right, self.front = left, self.own_right, self.own_front
        if self.corner is not None:
            self.left, self.front, self.right, _ = self.floor.bounds()
        self.masonry = footprint(geometry)
        self.fire = _rectangle(
            -geometry.frame.half_width, geometry.frame.half_width, -1e-3, 1e-3
        ).offset(FROM_FIRE, _round(), circular_segments=48)
        self.eyes, self.sight = _seen(geometry)
        self.taken = self.masonry.offset(CLEAR, _miter())
        door = door_place(geometry)
        if door is not None:
            self.taken += self._placed(
                _rectangle(self.own_right - 0.75, self.own_right, door - DOOR, door)
            )

    def _placed(self, own: CrossSection) -> CrossSection:
        """A part of the floor that was told in the room's own axes, before the wall across."""
        if self.corner is None:
            return own
        wide = self.corner.leg + self.own_right - self.own_front
        before = _rectangle(-2 * wide, 2 * wide, -3 * wide, self.corner.wall)
        return own.rotate(TURNED).translate(self.corner.corner) ^ before

    def spot(self, along: float, away: float, turn: float = 0.0) -> Spot:
        """A spot that was told in the own axes of a room whose corner is cut off.

        Parameters
        ----------
        along, away : float
            [m]
        turn : float
            To the left, against the walls. [deg]
        """
        assert self.corner is not None
        return Spot(*self.corner.fire(along, away), turn + TURNED)

    def stand(
        self, what: Furniture, spots: Iterable[Spot], burns: bool = True, rug: bool = False
    ) -> Spot | None:
        """Stand something on the first spot where there is room for it.

        Parameters
        ----------
        what : Furniture
        spots : iterable of Spot
        burns : bool
            Then it keeps away from the fire.
        rug : bool
            Lies flat: eyes are no matter, and a table may stand on it.

        Returns
        -------
        Spot or None
            Nothing where there is no room.
        """
        for spot in spots:
            own = outline(what, spot)
            if self.free(own, what.height, burns, rug):
                self.taken += own.offset(CLEAR, _miter())
                return spot
        return None

    def on(self, what: Furniture, spot: Spot) -> bool:
        """Whether something low may stand on a rug that lies already.

        Parameters
        ----------
        what : Furniture
        spot : Spot
        """
        own = outline(what, spot)
        return bool((own ^ (self.eyes + self.fire)).area() < 1e-9)

    def free(self, own: CrossSection, high: float, burns: bool = True, rug: bool = False) -> bool:
        """Whether an outline is free for something of a height.

        Parameters
        ----------
        own : CrossSection
        high : float
            [m]
        burns, rug : bool
            As of ``stand``.
        """
        against = [self.taken]
        if burns:
            against.append(self.fire)
        if not rug:
            against.append(self.eyes)
        if high > LOW:
            against.append(self.sight)
        inside = (own - self.floor).area() < 1e-9
        return inside and all((own ^ other).area() < 1e-9 for other in against)


def outline(what: Furniture, spot: Spot) -> CrossSection:
    """What it covers of the floor. [m]

    Parameters
    ----------
    what : Furniture
    spot : Spot
    """
    half, deep = what.width / 2, what.depth / 2
    return _rectangle(-half, half, -deep, deep).rotate(spot.turn).translate((spot.x, spot.y))


def _rectangle(x0: float, x1: float, y0: float, y1: float) -> CrossSection:
    from manifold3d import CrossSection

    return CrossSection.square((x1 - x0, y1 - y0)).translate((x0, y0))


def _seen(geometry: Geometry) -> tuple[CrossSection, CrossSection]:
    """Round every standpoint in the room, and between it and the opening."""
    from manifold3d import CrossSection, OpType

    half = geometry.frame.half_width + BESIDE_OPENING
    stood = [s.stands for s in standpoints(geometry) if s.name in INSIDE]
    round_them = [CrossSection.circle(ROUND_AN_EYE, 24).translate((x, y)) for x, y, _ in stood]
    sight = [CrossSection.hull_points([(x, y), (-half, 0.0), (half, 0.0)]) for x, y, _ in stood]
    return (
        CrossSection.batch_boolean(round_them, OpType.Add),
        CrossSection.batch_boolean(sight, OpType.Add),
    )


def _round() -> JoinType:
    from manifold3d import JoinType

    return JoinType.Round


def _miter() -> JoinType:
    from manifold3d import JoinType

    return JoinType.Miter
