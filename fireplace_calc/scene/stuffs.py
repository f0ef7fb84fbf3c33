"""What things look like: one row a stuff, its tones, joints, relief and gloss. All of it is our own
choice; no maker's color is meant.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import Source, rows, source_of
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import MORTAR_COLORS
from fireplace_calc.design.surroundings import FLOORS

PAINTERS = (
    *("brick", "stone", "block", "tile", "flag", "slab", "board", "wood", "bark", "endgrain"),
    *("trowel", "cast", "mortar", "paint", "metal", "pile", "weave", "hide", "plain"),
)
"""Ways a coat is painted on the page."""
UNDERFOOT = dict(
    zip(FLOORS, ("boards", "pine boards", "flags", "floor tile", "carpet"), strict=True)
)
"""Stuff of the floor by the finish that is chosen."""
MORTARS = {color: f"mortar {color}" for color in MORTAR_COLORS}
"""Stuff of the joints by the color that is chosen."""


@dataclass(frozen=True, slots=True)
class Stuff:
    """What one stuff looks like.

    Attributes
    ----------
    name : str
    painter : str
        One of ``PAINTERS``.
    tones : tuple of str
        Colors its units have, as ``#rrggbb``.
    vary : float
        How far a unit strays from its tone, of full brightness. [-]
    joint : str
        Color of its joints, as ``#rrggbb``; nothing where it has none.
    recess, relief, arris : float
        How deep joints lie, how uneven a face is, how far its edges are rounded. [m]
    rough : float
        From 0, a mirror, to 1, chalk. [-]
    dots : float
        As fine as it is painted. [1/m]
    patch : float
        Comes again after so much, where no layout says. [m]
    soot : bool
        Blackened where a fire has burned before it.
    source : Source
    """

    name: str
    painter: str
    tones: tuple[str, ...]
    vary: float
    joint: str
    recess: float
    relief: float
    arris: float
    rough: float
    dots: float
    patch: float
    soot: bool
    source: Source


@lru_cache(maxsize=1)
def stuffs() -> Mapping[str, Stuff]:
    """Every stuff by its name.

    Returns
    -------
    mapping of str to Stuff
        Lengths. [m]

    Examples
    --------
    >>> stuffs()["brick"].painter, stuffs()["brick"].joint == stuffs()["mortar gray"].tones[0]
    ('brick', True)
    """
    table = rows("stuffs.csv")
    tones = {r["stuff"]: tuple(r["tones"].split()) for r in table}

    def length(row: dict[str, str], name: str) -> float:
        return to_si(row[name], "length", f"{row['stuff']}, {name}")

    return {
        r["stuff"]: Stuff(
            name=r["stuff"],
            painter=r["painter"],
            tones=tones[r["stuff"]],
            vary=float(r["vary"]),
            joint=tones[r["joint"]][0] if r["joint"] in tones else r["joint"],
            recess=length(r, "recess"),
            relief=length(r, "relief"),
            arris=length(r, "arris"),
            rough=float(r["rough"]),
            dots=float(r["dots_per_m"]),
            patch=length(r, "patch"),
            soot=r["soot"] == "yes",
            source=source_of(r),
        )
        for r in table
    }


def floor_stuff(design: Design) -> str:
    """What the floor of the room is to the eye.

    Parameters
    ----------
    design : Design

    Returns
    -------
    str
    """
    return UNDERFOOT[design.house.floor]


def joint_color(design: Design) -> str:
    """Color of the mortar in brick, block and stone.

    Parameters
    ----------
    design : Design

    Returns
    -------
    str
        As ``#rrggbb``.
    """
    return stuffs()[MORTARS[design.surround.mortar]].tones[0]
