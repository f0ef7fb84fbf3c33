"""From where a set is looked at, all lines of sight parallel. [m, rad]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin

import numpy as np

from fireplace_calc.base.arrays import Array


@dataclass(frozen=True)
class Viewpoint:
    """A way of looking: on paper u runs right, v runs up, and depth runs away from the eye.

    Attributes
    ----------
    turn : float
        How far to the right of the front the eye stands, round the pieces. [rad]
    tip : float
        How far it looks down. [rad]
    half : bool
        Whether what lies right of the center line is cut away.
    """

    turn: float = 0.0
    tip: float = 0.0
    half: bool = False

    @cached_property
    def axes(self) -> Array:
        """Rows: right, up, and away from the eye; unit vectors of x, y and z. [-]"""
        c, s, down, level = cos(self.turn), sin(self.turn), sin(self.tip), cos(self.tip)
        right, up = np.array([c, s, 0.0]), np.array([-s * down, c * down, level])
        return np.array([right, up, np.cross(up, right)])


FRONT = Viewpoint()
SECTION = Viewpoint(radians(90), 0.0, True)
CORNER = Viewpoint(radians(-35), radians(28))
"""From the front; cut on the center line, the room on the left; from above the left corner."""
