"""The laid fire: a grate, logs on it, ashes under it, all of a size for the firebox. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import floor
from typing import TYPE_CHECKING

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.scene.records import Thing
from fireplace_calc.scene.setting.forms import block, extruded
from fireplace_calc.scene.setting.stood import Made, made
from fireplace_calc.scene.setting.wood import Log, bark_of, ends_of, resting

if TYPE_CHECKING:
    from manifold3d import Manifold

OFF_BACK, OFF_FRONT, OFF_SIDE = 0.04, 0.06, 0.035
"""From the fire to the back, to the plane of the face, and to either side. [m]"""
DEEP, HIGH, LONG = 0.39, 0.42, 0.66
"""Of a fire of full size. [m]"""
LEAST, LARGEST = 0.15, 1.25
"""No fire is laid smaller or larger, over that of full size. [-]"""
SHORTEST = 0.1
"""Nor with shorter logs. [m]"""
FORWARD = (1.0, 0.92, 0.84, 0.76, 0.68)
"""How deep the back log may lie, of the firebox. [-]"""
STEP = 0.05
"""Size and length of a fire go by this. [-], [m]"""
LAID = (
    (0.112, 0.078, 0.98, 0.0, True),
    (-0.1, 0.062, 0.94, 0.0, False),
    (-0.003, 0.03, 0.7, 0.0, True),
    (0.006, 0.058, 0.9, 3.0, False),
)
"""Back log, front log, a small one between, and one that lies on them, at full size: behind the
middle [m], radius [m], share of the longest that has room [-], turned [deg], charred.
"""
GRATE = 0.1
"""Top of its bars over the hearth, at full size. [m]"""
HAIR = 5e-5
"""[m]"""


@dataclass(frozen=True, slots=True)
class FirePlace:
    """Where the fire is laid.

    Attributes
    ----------
    middle : float
        Behind the face. [m]
    hearth : float
        Level it stands on. [m]
    long : float
        Of a log in the middle. [m]
    size : float
        Over that of full size. [-]
    closes : float
        How much shorter a log has to be per unit of depth behind the middle. [-]
    most : float
        No log is longer. [m]
    """

    middle: float
    hearth: float
    long: float
    size: float
    closes: float
    most: float

    def long_at(self, y: float) -> float:
        """Longest log behind (positive) or before the middle.

        Parameters
        ----------
        y : float
            [m]
        """
        return _stepped(min(self.most, self.long - self.closes * y))

    @property
    def lengths(self) -> tuple[float, ...]:
        """Of the logs as they are ``LAID``. [m]"""
        return tuple(
            _stepped(share * self.long_at((y + radius) * self.size))
            for y, radius, share, *_ in LAID
        )

    @property
    def shortest(self) -> float:
        """Of its logs. [m]"""
        return max(min(self.lengths), 0.0)


def fire_place(geometry: Geometry) -> FirePlace:
    """Where the fire is laid, clear of back, sides and head.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    FirePlace
    """
    return max(
        (_laid_at(geometry, share) for share in FORWARD), key=lambda at: at.size * at.shortest
    )


def _laid_at(geometry: Geometry, share: float) -> FirePlace:
    """The largest fire whose back log lies no deeper than a share of the depth. A back much
    narrower than the opening keeps logs of any length away from it.
    """
    f = geometry.frame
    size = min(LARGEST, (f.clear_top - f.hearth) * 0.66 / HIGH)
    for _ in range(4):
        rear = share * (f.back_at(f.hearth + HIGH * size) - OFF_BACK)
        front = min(OFF_FRONT, rear / 4)
        across = 2 * f.half_at(rear) - 2 * OFF_SIDE
        size = max(min(size, (rear - front) / DEEP, across / (0.7 * LONG)), 0.0)
    size = _stepped(size)
    middle, most = rear - DEEP * size / 2, 1.35 * LONG * size
    free = 2 * f.half_at(middle) - 2 * OFF_SIDE
    long = _stepped(min(free, most))
    return FirePlace(middle, f.hearth, long, size, 2 * f.side_slope, most)


def _stepped(value: float) -> float:
    """Down to the next step: logs stay the same while a slider moves a little. [m or -]"""
    return floor(value / STEP + 1e-9) * STEP


def laid_fire(geometry: Geometry) -> Iterator[Thing]:
    """Grate, logs and ashes.

    Parameters
    ----------
    geometry : Geometry

    Yields
    ------
    Thing
    """
    at = fire_place(geometry)
    if at.size < LEAST or at.shortest < SHORTEST:
        return
    for one in _made(at.size, at.lengths):
        yield one.at(y=at.middle, z=at.hearth)


@lru_cache(maxsize=32)
def _made(size: float, lengths: tuple[float, ...]) -> tuple[Made, ...]:
    from manifold3d import Manifold

    logs = _logs(size, lengths)
    made_of = {
        burnt: [bark_of(log) for log in logs if log.burnt == burnt] for burnt in (False, True)
    }
    sawn = [disk for log in logs if not log.burnt for disk in ends_of(log)]
    ashes = Manifold.sphere(1.0, 14).trim_by_plane((0.0, 0.0, 1.0), 0.0)
    ashes = ashes.scale((0.3 * lengths[0], 0.27 * DEEP * size, 0.035 * size))
    return (
        made("logs", "logs", "bark", made_of[False], smooth=True),
        made("charred logs", "charred logs", "char", made_of[True], smooth=True),
        made("log ends", "sawn ends", "log end", sawn),
        made("grate", "grate", "iron", _grate(size, 0.45 * lengths[0])),
        made("ashes", "ashes", "ash", ashes, smooth=True),
    )


def _logs(size: float, lengths: tuple[float, ...]) -> list[Log]:
    """Those on the grate, and one that lies on them."""
    flat = [
        Log((0.0, y * size, (GRATE + 0.003 + radius) * size), radius * size, long, turn, burnt)
        for (y, radius, _, turn, burnt), long in zip(LAID, lengths, strict=True)
    ]
    return [*flat[:-1], resting(flat[-1], flat[:-1])]


def _grate(s: float, half: float) -> list[Manifold]:
    """Square bars from front to back, turned up at the front, on two rails with feet."""
    thick, top = 0.011 * s, (GRATE - 0.011) * s
    many = max(4, round(2 * half / (0.075 * max(s, 0.4))))
    front, bend, rear, tip = -0.18 * s, -0.16 * s, 0.18 * s, top + 0.06 * s
    under = [(front - thick, tip), (bend - thick, top - thick), (rear, top - thick)]
    upper = [(rear, top + thick), (bend + thick, top + thick), (front + thick, tip)]
    # Drawn from the side and drawn out along the grate.
    bar = extruded(under + upper, 2 * thick).transform(
        [[0.0, 0.0, 1.0, -thick], [1.0, 0.0, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0]]
    )
    bars = [bar.translate((half * (2 * k / (many - 1) - 1), 0.0, 0.0)) for k in range(many)]
    # Each stands a hair off the next: bodies that meet are cut into three times the corners.
    low = top - 3.4 * thick
    rails = [
        block(
            (-half - 0.02 * s, half + 0.02 * s), (y - thick, y + thick), (low, top - thick - HAIR)
        )
        for y in (-0.13 * s, 0.15 * s)
    ]
    feet = [
        block((x - thick, x + thick), (y - thick, y + thick), (0.0, low - HAIR))
        for x in (-half, half)
        for y in (-0.13 * s, 0.15 * s)
    ]
    return [*bars, *rails, *feet]
