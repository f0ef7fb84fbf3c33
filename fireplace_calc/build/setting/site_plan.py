"""The floor before the fireplace: spots for piles, walkway, pallets, mixer. [m]

Seen from above; x counts from the center line to the right, y from the front of the pieces away
from the room, so that all of it lies under nought.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf, sqrt

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.base.units import INCH
from fireplace_calc.build.setting.piles import LEFT, Pile
from fireplace_calc.design.surroundings import House
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.in_room.cut_corner import CutCorner

PALLET = (48 * INCH, 40 * INCH)
"""Common in America, along the wall and away from it; common practice, from memory. [m]"""
MIXER = (36 * INCH, 36 * INCH)
"""Floor for a mixer and a tub: our own habit. [m]"""
HANDS = 6 * INCH
"""Left free between piles: our own habit. [m]"""

Place = tuple[float, float]
Area = tuple[float, float, float, float]
"""Left, low, right, high. [m]"""


@dataclass(frozen=True, slots=True)
class StagingFloor:
    """What is known of the floor.

    Attributes
    ----------
    half : float
        From the center line to the end of the room; without end where it is not known. [m]
    deep : float
        From the front of the pieces to the opposite wall; without end where not known. [m]
    walkway, off, away, aside : float
        Kept free; nearest pile; pallet from the front and to the right. [m]
    off_center : float
        How far the fireplace stands off the middle of its wall: ``half`` counts to the nearer end.
        [m]
    corner : CutCorner or None
        Where it stands across a corner, the wall that cuts it: ``half`` is the nearer end of that
        one, ``deep`` counts to the corner across, and the floor goes out from its ends at 45
        degrees.
    """

    half: float
    deep: float
    walkway: float
    off: float
    away: float
    aside: float
    off_center: float = 0.0
    corner: CutCorner | None = None

    def span(self, low: float, high: float) -> tuple[float, float]:
        """Left and right end of the floor, over all of a row from one depth to another. [m]

        Parameters
        ----------
        low, high : float
            Farther from the work, and nearer to it; both less than nought. [m]
        """
        corner = self.corner
        if corner is None:
            return -self.half, self.half
        (x, y), out = corner.corner, corner.wall - high
        along, away = (inf if w is None else sqrt(2) * w for w in (corner.along, corner.away))
        return (
            max(corner.left - out, x + y - low - away),
            min(corner.right + out, x - y + low + along),
        )

    def holds(self, area: Area) -> bool:
        """Whether the room has floor there [m], as far as it is known."""
        left, right = self.span(area[1], area[3])
        return (
            area[0] >= left - CONTACT_GAP
            and area[2] <= right + CONTACT_GAP
            and area[1] >= -self.deep - CONTACT_GAP
        )

    @property
    def way(self) -> float:
        """From the pallet to the work. [m]"""
        return abs(self.aside) + self.away

    @property
    def walkways(self) -> tuple[Area, ...]:
        """Floor kept free: up the middle, and across to a pallet that stands aside. [m]"""
        side = self.walkway / 2
        up = (-side, -self.away, side, 0.0)
        if abs(self.aside) <= side:
            return (up,)
        low, high = sorted((0.0, self.aside))
        return up, (low - side, -self.away, high + side, self.walkway - self.away)


@dataclass(frozen=True, slots=True)
class Spots:
    """Where piles can stand, all of one size, on each side the nearest to the work first.

    Attributes
    ----------
    size : tuple of float
        Along the wall, and away from it. [m]
    left, right : tuple of (float, float)
        Their middles. [m]
    """

    size: tuple[float, float]
    left: tuple[Place, ...]
    right: tuple[Place, ...]

    def on(self, side: str) -> tuple[Place, ...]:
        """Those of one side. [m]"""
        return self.left if side == LEFT else self.right

    def ways(self, side: str) -> list[float]:
        """From each to the work, square to the walls. [m]"""
        return [abs(x) - y for x, y in self.on(side)]


def site_of(
    work: Work, house: House, off_center: float = 0.0, corner: CutCorner | None = None
) -> StagingFloor:
    """The floor as a design tells it.

    Parameters
    ----------
    work : Work
    house : House
    off_center : float
        The fireplace off the middle of its wall: the nearer end counts to both sides. [m]
    corner : CutCorner, optional
        The wall across a corner where it stands in one: the room goes out from its ends, of which
        nothing is counted.

    Returns
    -------
    StagingFloor
        A pallet that the room has no depth for stands against its far wall. [m]
    """
    half = inf if house.room_length is None else house.room_length / 2 - abs(off_center)
    deep = inf if house.room_width is None else house.room_width
    if corner is not None:
        half, deep = (
            corner.width / 2 - abs(off_center),
            -corner.fire(
                inf if corner.along is None else corner.along,
                -inf if corner.away is None else -corner.away,
            )[1],
        )
    most = deep if corner is None else corner.deep(PALLET[0] / 2)
    away = max(min(work.pallet_away, most - PALLET[1]), work.staged_off)
    site = StagingFloor(
        half,
        deep,
        work.walkway,
        work.staged_off,
        away,
        0.0,
        0.0 if half == inf else off_center,
        corner,
    )
    left, right = site.span(-away - PALLET[1], -away)
    return replace(
        site,
        aside=min(
            max(work.pallet_aside, min(left + PALLET[0] / 2, 0.0)), max(right - PALLET[0] / 2, 0.0)
        ),
    )


def spots_for(piles: tuple[Pile, ...], site: StagingFloor, taken: tuple[Area, ...]) -> Spots:
    """Spots to both sides of the walkway, as many as there are piles where the room has so many.

    Parameters
    ----------
    piles : tuple of Pile
    site : StagingFloor
    taken : tuple of (float, float, float, float)
        Floor where nothing else may stand. [m]

    Returns
    -------
    Spots
        Turned the way that leaves room for more and, of two alike, nearer to the work; none begins
        behind the pallets.
    """
    short = max(pile.footprint[0] for pile in piles) + HANDS
    long = max(pile.footprint[1] for pile in piles) + HANDS
    turned = [
        Spots(
            size,
            _grid(size, site, taken, len(piles), -1.0),
            _grid(size, site, taken, len(piles), 1.0),
        )
        for size in ((long, short), (short, long))
    ]
    return max(turned, key=lambda s: (len(s.left) + len(s.right), -sum(s.ways(LEFT))))


def _grid(
    size: tuple[float, float], site: StagingFloor, taken: tuple[Area, ...], most: int, sign: float
) -> tuple[Place, ...]:
    wide, deep = size
    found = []
    for rank in range(most):
        out = site.walkway / 2 + rank * wide
        for row in range(most):
            down = site.off + row * deep
            if down >= site.away or down + deep > site.deep + CONTACT_GAP:
                break
            x, y = sign * (out + wide / 2), -(down + deep / 2)
            area = (x - wide / 2, y - deep / 2, x + wide / 2, y + deep / 2)
            if site.holds(area) and not any(_over(area, other) for other in taken):
                found.append((x, y))
    found.sort(key=lambda p: (round(abs(p[0]) - p[1], 9), -p[1]))
    return tuple(found[:most])


def _over(one: Area, other: Area) -> bool:
    return (
        one[0] < other[2] - CONTACT_GAP
        and other[0] < one[2] - CONTACT_GAP
        and one[1] < other[3] - CONTACT_GAP
        and other[1] < one[3] - CONTACT_GAP
    )


def pallet_areas(site: StagingFloor, count: int) -> tuple[Area, ...]:
    """Floor under pallets and, last, the mixer: side by side, in rows where the wall is too short.

    Parameters
    ----------
    site : StagingFloor
    count : int
        Pallets. [-]

    Returns
    -------
    tuple of (float, float, float, float)
        Left, low, right, high. [m]
    """
    sizes = [PALLET] * count + [MIXER]
    found: list[Area] = []
    high = -site.away
    while sizes:
        left_end, right_end = site.span(high - PALLET[1], high)
        row = [sizes.pop(0)]
        while sizes and sum(s[0] + HANDS for s in row) + sizes[0][0] <= right_end - left_end:
            row.append(sizes.pop(0))
        wide = sum(s[0] for s in row) + HANDS * (len(row) - 1)
        left = site.aside - wide / 2
        if right_end < inf:
            left = min(max(left, left_end), max(right_end - wide, left_end))
        for across, deep in row:
            found.append((left, high - deep, left + across, high))
            left += across + HANDS
        high -= max(s[1] for s in row) + HANDS
    return tuple(found)
