"""The stones of a face in its bond, for everything that draws or lights them."""

from __future__ import annotations

from fireplace_calc.base.arrays import Array
from fireplace_calc.brickwork.seen.coursed_rubble import rubble, rubble_stones
from fireplace_calc.brickwork.seen.random_rubble import random_joints, rubble_around

Ends = tuple[float, float, float, float]
"""Left, right, bottom and top of a face, from the middle of the hearth. [m]"""


def stone_joints(bond: str, ends: Ends) -> Array:
    """Joints of a face of stone.

    Parameters
    ----------
    bond : str
        One of ``STONE_BONDS``.
    ends : tuple of float
        Of the face. [m]

    Returns
    -------
    array, (k, 2, 2)
        Segments; they may reach past the ends. [m]
    """
    return (random_joints if bond == "random rubble" else rubble)(*ends)


def stones(bond: str, ends: Ends) -> list[Array]:
    """The stones themselves, each without its joint.

    Parameters
    ----------
    bond : str
        One of ``STONE_BONDS``.
    ends : tuple of float
        Of the face. [m]

    Returns
    -------
    list of array, each (n, 2)
        Corners counter-clockwise; they may reach past the ends. [m]
    """
    return (rubble_around if bond == "random rubble" else rubble_stones)(*ends)
