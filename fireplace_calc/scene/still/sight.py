"""What a standpoint sees: points of the room in the dots of a picture."""

from __future__ import annotations

from dataclasses import dataclass
from math import radians, tan

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.scene.records import Point, Standpoint

NEAREST = 0.05
"""What is nearer than this to the eye is not seen. [m]"""


@dataclass(frozen=True, eq=False)
class Sight:
    """A standpoint and the picture it is seen in, uprights kept upright in the middle.

    Attributes
    ----------
    stands : array
        [m]
    axes : array
        To the right, upward in the picture, and away; a row each. [-]
    focal : float
        Dots to one meter, one meter away. [-]
    width, height : int
        Of the picture. [-]
    """

    stands: Array
    axes: Array
    focal: float
    width: int
    height: int

    def turned(self, points: Array) -> Array:
        """Points as right, up and away from the eye. [m]"""
        turned: Array = (np.asarray(points, dtype=float) - self.stands) @ self.axes.T
        return turned

    def dots(self, turned: Array) -> Array:
        """Where turned points lie in the picture: dots from the left and from the top. [-]"""
        away = np.maximum(turned[:, 2], 1e-9)
        return np.column_stack(
            (
                self.width / 2 + self.focal * turned[:, 0] / away,
                self.height / 2 - self.focal * turned[:, 1] / away,
            )
        )

    def points(self, rows: IntArray, columns: IntArray, away: Array) -> Array:
        """What lies behind the middle of some dots, so far away. [m]"""
        right, upward, ahead = self.axes
        across = (columns + 0.5 - self.width / 2) / self.focal
        up = (self.height / 2 - rows - 0.5) / self.focal
        found: Array = self.stands + away[:, None] * (
            across[:, None] * right + up[:, None] * upward + ahead
        )
        return found


def sight_of(standpoint: Standpoint, width: int, height: int) -> Sight:
    """What a standpoint sees in a picture of so many dots.

    Parameters
    ----------
    standpoint : Standpoint
    width, height : int
        Of the picture. [-]
    """
    across = 2 * tan(radians(standpoint.angle) / 2)
    return looking(standpoint.stands, standpoint.looks, width / across, width, height)


def looking(stands: Point, looks: Point, focal: float, width: int, height: int) -> Sight:
    """From one point at another; one that looks straight up or down has no upright."""
    eye = np.asarray(stands, dtype=float)
    away = np.asarray(looks, dtype=float) - eye
    away /= np.linalg.norm(away)
    right = np.cross(away, (0.0, 0.0, 1.0))
    length = np.linalg.norm(right)
    right = np.array((1.0, 0.0, 0.0)) if length < 1e-9 else right / length
    return Sight(eye, np.array((right, np.cross(right, away), away)), focal, width, height)
