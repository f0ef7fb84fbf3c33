"""Where the front of the masonry turns into its sides: breast, and the chimney over it."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.geometry.parts import Geometry

UPPER = ("chimney walls", "shoulder")
"""Parts whose sides stand in over those of the breast."""


@dataclass(frozen=True, slots=True)
class Corner:
    """An outer corner of the face.

    Attributes
    ----------
    at : float
        Right of the center line. [m]
    side : int
        -1 to the left, 1 to the right. [-]
    things : tuple of str
        What turns there; everything else where empty.
    """

    at: float
    side: int
    things: tuple[str, ...] = ()


def corners(geometry: Geometry) -> tuple[Corner, ...]:
    """Every corner of the face, those of the chimney first.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of Corner
        [m]
    """
    f = geometry.frame
    middle = f.shift_at(f.shoulder_top) + f.stack_middle
    return (
        *(Corner(middle + side * f.stack_half, side, UPPER) for side in (-1, 1)),
        *(Corner(side * f.block_half, side) for side in (-1, 1)),
    )
