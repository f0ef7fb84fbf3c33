"""What the head of an opening carries: wall by its triangle, or all of it with what bears on it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.design.loads import Loads
from fireplace_calc.structure.beam import low_wall_load, triangle_load


@dataclass(frozen=True, slots=True)
class HeadLoad:
    """Load on a lintel or an arch, its own weight apart.

    Attributes
    ----------
    triangular, uniform, point : float
        The whole of a triangle, the whole of an even load, and what stands on one place. [N]
    low_cover : bool
        The triangle runs out of the breast: what stands on top comes in.
    bears : bool
        A floor or beam bears within the triangle, and nothing arches past the opening.
    """

    triangular: float
    uniform: float
    point: float
    low_cover: bool
    bears: bool

    @property
    def whole(self) -> float:
        """All of it. [N]"""
        return self.triangular + self.uniform + self.point


def head_load(loads: Loads, wall: float, span: float, cover: float) -> HeadLoad:
    """Load on the head of an opening.

    Parameters
    ----------
    loads : Loads
        What bears over it.
    wall : float
        Weight of the wall by its face. [Pa]
    span : float
        It is worked out for. [m]
    cover : float
        Masonry over it, up to where the breast draws in. [m]

    Returns
    -------
    HeadLoad

    Notes
    -----
    Wall within 45 degrees, the rest arches past. Where a floor or a beam bears there, the masonry
    is not trusted to arch: all of it over the span counts, and the load in full; one that is not
    known counts for nothing here.
    """
    low = cover < span / 2
    if loads.in_triangle:
        even = wall * span * max(cover, 0.0) + (loads.floor_over_head or 0.0)
        return HeadLoad(0.0, even, loads.beam_over_head or 0.0, low, True)
    if low:
        return HeadLoad(0.0, low_wall_load(wall, span, cover), 0.0, True, False)
    return HeadLoad(triangle_load(wall, span), 0.0, 0.0, False, False)
