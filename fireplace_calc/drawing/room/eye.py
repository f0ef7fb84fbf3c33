"""What an eye in the room sees: one-point perspective on the plane of the face.

The picture plane is the face of the fireplace, so everything in it keeps its size; what lies behind
shrinks towards the eye's own height, what stands before it grows.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.drawing.sheets.sheet import Pair

Spot = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Eye:
    """Where the eye is, before the middle of the fireplace: how far from the face, how high over
    the floor. [m]
    """

    away: float
    level: float

    def see(self, spots: Iterable[Spot] | np.ndarray) -> np.ndarray:
        """Where points show on the plane of the face.

        Parameters
        ----------
        spots : array, (..., 3)
            x to the right, y away from the room, z up. [m]

        Returns
        -------
        array, (..., 2)
            x and z. [m]

        Examples
        --------
        >>> Eye(3.0, 1.5).see([(1.0, 0.0, 0.5), (1.0, 3.0, 0.5)]).tolist()
        [[1.0, 0.5], [0.5, 1.0]]
        """
        spots = np.asarray(spots, dtype=float)
        k = self.away / (self.away + spots[..., 1:2])
        centre = np.array((0.0, self.level))
        shown: Array = centre + (spots[..., ::2] - centre) * k
        return shown

    def size(self, y: float) -> float:
        """How large a thing at depth ``y`` shows, against its own size. [-]"""
        return self.away / (self.away + y)

    def meeting(self, way: Spot) -> Pair:
        """Where all lines that run one way meet; their ``y`` must not be nought. [m]

        >>> Eye(3.0, 1.5).meeting((0.0, 1.0, 0.0))
        (0.0, 1.5)
        """
        return (self.away * way[0] / way[1], self.level + self.away * way[2] / way[1])


@dataclass(frozen=True, slots=True)
class Block:
    """An upright block that stands before the face, from ``y`` (less than nought) up to it, or to
    ``back`` behind it [m], and the tone it is filled with; ``against`` where its end towards the
    eye's own line is the side of the breast, which hides what lies behind the face there.
    """

    left: float
    right: float
    y: float
    bottom: float
    top: float
    tone: str = "wood"
    back: float = 0.0
    against: bool = False

    def _far(self, eye: Eye) -> tuple[float, float, float]:
        """Left and right end at the back, as far as the breast lets them be seen, and how far back
        its end is seen. [m]
        """
        if not self.against:
            return self.left, self.right, self.back
        k = eye.size(self.back)
        if self.right < 0:
            return self.left, self.right / k, 0.0
        return self.left / k, self.right, 0.0

    def faces(self, eye: Eye) -> list[tuple[str, np.ndarray]]:
        """The sides that can be seen, the front last, each as it shows. [m]"""
        a, b, y, low, high = self.left, self.right, self.y, self.bottom, self.top
        (c, d, deep), z = self._far(eye), self.back

        def lying(level: float) -> list[Spot]:
            """Its top or underside, with the breast's corner where that hides some of it."""
            corner = [(b if b < 0 else a, 0.0, level)] if self.against else []
            right, left = (corner, []) if b < 0 else ([], corner)
            return [(c, z, level), (d, z, level), *right, (b, y, level), (a, y, level), *left]

        made = []
        if eye.level > high:
            made.append(("top", lying(high)))
        if eye.level < low:
            made.append(("underside", lying(low)))
        for x, seen in ((a, a > 0), (b, b < 0)):
            if seen:
                made.append(("end", [(x, deep, low), (x, y, low), (x, y, high), (x, deep, high)]))
        if high - low > 1e-6:
            made.append(("front", [(a, y, low), (b, y, low), (b, y, high), (a, y, high)]))
        return [(name, eye.see(ring)) for name, ring in made]

    def outline(self, eye: Eye) -> np.ndarray:
        """What of the picture it covers, as a convex ring. [m]"""
        corners = [
            (x, y, z)
            for ends, y in ((self._far(eye)[:2], self.back), ((self.left, self.right), self.y))
            for x in ends
            for z in (self.bottom, self.top)
        ]
        return hull(eye.see(corners))

    def before(self, eye: Eye) -> tuple[float, float]:
        """How far out from the eye's own line; of two blocks on one wall the one farther out is
        painted first. [m]
        """
        return (
            max(self.bottom - eye.level, eye.level - self.top, 0.0),
            max(self.left, -self.right, 0.0),
        )


def hull(points: np.ndarray) -> np.ndarray:
    """Smallest convex ring round some points (Andrew's monotone chain).

    >>> hull(np.array([(0.0, 0.0), (2.0, 0.0), (1.0, 0.5), (2.0, 2.0), (0.0, 2.0)])).tolist()
    [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0]]
    """
    ordered = sorted({(round(x, 12), round(y, 12)) for x, y in points.tolist()})

    def chain(run: Iterable[Pair]) -> list[Pair]:
        made: list[Pair] = []
        for x, y in run:
            while (
                len(made) > 1
                and (made[-1][0] - made[-2][0]) * (y - made[-2][1])
                - (made[-1][1] - made[-2][1]) * (x - made[-2][0])
                <= 0
            ):
                made.pop()
            made.append((x, y))
        return made[:-1]

    return np.array(chain(ordered) + chain(reversed(ordered)))
