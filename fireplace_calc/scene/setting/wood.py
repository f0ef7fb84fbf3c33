"""Firewood: a log with its bark, and the pale disk of its sawn end. [m]"""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from manifold3d import Manifold

    from fireplace_calc.scene.records import Point


class Log(NamedTuple):
    """Where a log lies.

    Attributes
    ----------
    middle : tuple of float
        [m]
    radius, long : float
        [m]
    turn : float
        From lying along x, to the left seen from above. [deg]
    burnt : bool
        Charred.
    """

    middle: Point
    radius: float
    long: float
    turn: float
    burnt: bool = False

    def axis(self, parts: int = 20) -> list[Point]:
        """Points of its axis from end to end. [m]

        Parameters
        ----------
        parts : int
            [-]
        """
        from math import cos, radians, sin

        x, y, z = self.middle
        c, s = cos(radians(self.turn)) * self.long / 2, sin(radians(self.turn)) * self.long / 2
        return [(x + c * k, y + s * k, z) for k in (2 * m / parts - 1 for m in range(parts + 1))]


def bark_of(log: Log, around: int = 10, along: int = 4) -> Manifold:
    """The log's body, not quite round and not quite straight; inside its ``radius``.

    Parameters
    ----------
    log : Log
    around, along : int
        Facets. [-]
    """
    import numpy as np
    from manifold3d import CrossSection, Manifold, Mesh64

    form = CrossSection.circle(1.0, around).extrude(1.0, along - 1).to_mesh64()
    x, y, z = np.array(form.vert_properties)[:, :3].T
    at, seed = np.arctan2(y, x), 7.3 * log.radius + 3.1 * log.middle[1] + log.middle[0]
    rough = 1 + 0.04 * np.sin(3 * at + 40 * seed) + 0.02 * np.sin(5 * at + 9 * z + 90 * seed)
    rough = 0.91 * rough + 0.015 * np.sin(2 * pi * z + 60 * seed)
    bend = 0.02 * np.sin(pi * z + 11 * seed)
    points = np.stack(
        [(z - 0.5) * log.long, log.radius * (x * rough + bend), log.radius * y * rough], -1
    )
    body = Manifold(Mesh64(np.ascontiguousarray(points), np.array(form.tri_verts, dtype="uint64")))
    return body.rotate((0.0, 0.0, log.turn)).translate(log.middle)


def ends_of(log: Log, around: int = 10, both: bool = True) -> list[Manifold]:
    """The sawn ends, a hair before the bark's.

    Parameters
    ----------
    log : Log
    around : int
        Facets. [-]
    both : bool
        Or only the one that lies at its left before it is turned.
    """
    from manifold3d import Manifold

    disk = Manifold.cylinder(0.002, 0.8 * log.radius, 0.8 * log.radius, around)
    disk = disk.rotate((0.0, 90.0, 0.0))
    half = log.long / 2
    seats = (-half - 0.002, half) if both else (-half - 0.002,)
    return [
        disk.translate((x, 0.0, 0.0)).rotate((0.0, 0.0, log.turn)).translate(log.middle)
        for x in seats
    ]


def resting(log: Log, on: list[Log], gap: float = 0.003) -> Log:
    """The log, let down until it lies on others.

    Parameters
    ----------
    log : Log
        Its level does not count.
    on : list of Log
        What it may lie on; at least one is under it.
    gap : float
        Left between them, for bark is not smooth. [m]
    """
    from math import sqrt

    level = max(
        z + sqrt(reach)
        for other in on
        for x, y, z in other.axis()
        for a, b, _ in log.axis()
        if (reach := (log.radius + other.radius + gap) ** 2 - (x - a) ** 2 - (y - b) ** 2) > 0
    )
    return log._replace(middle=(log.middle[0], log.middle[1], level))
