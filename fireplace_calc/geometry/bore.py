"""The bore of a flue: inside of its liner."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import pi

from fireplace_calc.base.tables.liners import (
    rectangular_liner,
    rectangular_liners,
    round_liner,
    round_liners,
)
from fireplace_calc.design.second_flue import SecondFlue
from fireplace_calc.design.smoke_path import ALONG, Flue


@dataclass(frozen=True, slots=True)
class Bore:
    """Inside of the flue and the wall of its liner, as it stands in the chimney.

    Attributes
    ----------
    round : bool
    width, depth : float
        Inside, left to right and front to back. [m]
    wall : float
        Thickness of the liner. [m]
    table_area : float or None
        Published net area; unknown for an own size. [m2]
    label : str
        Size as the table names it.
    """

    round: bool
    width: float
    depth: float
    wall: float
    table_area: float | None
    label: str

    @property
    def area(self) -> float:
        """Geometric inside area; corners taken as square. [m2]"""
        return pi * self.width**2 / 4 if self.round else self.width * self.depth

    @property
    def aspect(self) -> float:
        """Long inside dimension over the short one. [-]"""
        return max(self.width, self.depth) / min(self.width, self.depth)


@lru_cache(maxsize=256)
def flue_bore(flue: Flue | SecondFlue) -> Bore:
    """Size of the flue, from the liner table or the reader's own figures.

    Parameters
    ----------
    flue : Flue or SecondFlue

    Returns
    -------
    Bore

    Raises
    ------
    InputError
        When the table has no such liner.
    """
    if flue.size.strip().lower() == "own":
        depth = flue.own_width if flue.shape == "round" else flue.own_depth
        made = Bore(flue.shape == "round", flue.own_width, depth, flue.own_wall, None, "own size")
    elif flue.shape == "round":
        pipe = round_liner(flue.size)
        made = Bore(True, pipe.inside, pipe.inside, pipe.wall, pipe.net_area, pipe.size)
    else:
        row = rectangular_liner(flue.size)
        short, long = sorted((row.inside_a, row.inside_b))
        wide, deep = (long, short) if flue.long_side == ALONG else (short, long)
        made = Bore(False, wide, deep, row.wall, row.net_area, row.size)
    return made


def liners() -> dict[str, dict[str, str]]:
    """Every liner of the tables by the name a mason calls it, with the inputs that choose it."""
    of_shape = {"round": list(round_liners()), "rectangular": list(rectangular_liners())}
    return {
        f"{shape} {size} in": {"flue.shape": shape, "flue.size": size}
        for shape, sizes in of_shape.items()
        for size in sizes
    }
