"""Bonds as lattices: where every brick of an endless wall lies, as a centre and a turn. Herringbone
closes for any size; basketweave only when the length of a brick is so many widths with their
joints.
"""

from __future__ import annotations

from math import ceil, floor

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.unit import Unit

Box = tuple[float, float, float, float]
"""Left, bottom, right, top. [m]"""

WEAVE_TOLERANCE = INCH / 16
"""How far a basketweave may be out and still be brought in by its joints: our own habit. [m]"""

BONDS = ("running", "stack", "herringbone 90", "herringbone 45", "basketweave")


def basketweave_joint(unit: Unit) -> tuple[int, float] | None:
    """Bricks side by side in one square of basketweave, and the joint between them.

    Parameters
    ----------
    unit : Unit
        Its face is ``length`` by ``height``. [m]

    Returns
    -------
    tuple of int and float, or None
        Bricks to a square [-], and the joint between them that fills it [m]; nothing when the
        square does not close.

    Examples
    --------
    >>> basketweave_joint(Unit(9 * INCH, 4.5 * INCH, 2.5 * INCH, 0.0))
    (2, 0.0)
    """
    number = max(round((unit.length + unit.joint) / (unit.height + unit.joint)), 1)
    if number < 2:
        return None
    spare = unit.length - number * unit.height
    between = spare / (number - 1)
    return (
        (number, between)
        if between >= -1e-12 and abs(between - unit.joint) * (number - 1) <= WEAVE_TOLERANCE + 1e-12
        else None
    )


def brick_corners(bond: str, unit: Unit, box: Box, origin: tuple[float, float]) -> Array:
    """Corners of every brick that can touch a box.

    Parameters
    ----------
    bond : str
        One of ``BONDS``.
    unit : Unit
        Its face is ``length`` by ``height``. [m]
    box : tuple of float
        Left, bottom, right, top. [m]
    origin : tuple of float
        Lower left corner of one brick. [m]

    Returns
    -------
    array, shape (n, 4, 2)
        Four corners of each of n bricks, counter-clockwise, the first side along the brick. [m]
    """
    import numpy as np  # here, so that importing the package does not wait for it

    j = unit.joint
    a, b = unit.length + j, unit.course
    x0, y0 = origin[0] - j / 2, origin[1] - j / 2
    if bond in ("running", "stack"):
        y0 = origin[1] - (b - unit.height) / 2
        cells = _courses(a, b, box, x0, y0, 0.0 if bond == "stack" else a / 2)
        return _corners(cells, unit.length, unit.height, 0.0)
    if bond == "basketweave":
        return _basketweave(unit, box, x0, y0)
    turn = np.pi / 4 if bond == "herringbone 45" else 0.0
    return _herringbone(unit, box, x0, y0, turn)


def _courses(a: float, b: float, box: Box, x0: float, y0: float, lap: float) -> Array:
    """Middle of every brick in courses of height ``b``, every other one shifted by ``lap``, (n, 2).
    [m]
    """
    import numpy as np  # here, so that importing the package does not wait for it

    left, bottom, right, top = box
    rows = np.arange(floor((bottom - y0) / b), ceil((top - y0) / b))
    columns = np.arange(floor((left - x0 - lap) / a), ceil((right - x0) / a))
    shift = np.where(rows % 2 == 1, lap, 0.0)
    x = x0 + columns[None, :] * a + shift[:, None] + a / 2
    y = np.broadcast_to((y0 + rows * b + b / 2)[:, None], x.shape)
    return np.stack([x.ravel(), y.ravel()], 1)


def _corners(middles: Array, length: float, height: float, turn: float) -> Array:
    """Four corners of every brick, (n, 4, 2), from its middle, (n, 2), and its turn. [m, rad]"""
    import numpy as np  # here, so that importing the package does not wait for it

    local = np.array(
        [
            (-length / 2, -height / 2),
            (length / 2, -height / 2),
            (length / 2, height / 2),
            (-length / 2, height / 2),
        ]
    )
    c, s = np.cos(turn), np.sin(turn)
    corners: Array = middles[:, None, :] + (local @ np.array([[c, s], [-s, c]]))[None, :, :]
    return corners


def _herringbone(unit: Unit, box: Box, x0: float, y0: float, turn: float) -> Array:
    """Two bricks to a cell, repeated by (b, b) and (a, -a); turned as a whole, (n, 4, 2). [m]"""
    import numpy as np  # here, so that importing the package does not wait for it

    j = unit.joint
    a, b = unit.length + j, unit.height + j
    c, s = np.cos(-turn), np.sin(-turn)
    left, bottom, right, top = box
    # The box turned back into the lattice's own directions, and a cell over on every side.
    corners = np.array([(left, bottom), (right, bottom), (right, top), (left, top)]) - (x0, y0)
    corners = corners @ np.array([[c, s], [-s, c]])
    low: Array = corners.min(axis=0) - (a + b)
    high: Array = corners.max(axis=0) + (a + b)
    # x + y goes by 2 b and x - y by 2 a from cell to cell, so the box bounds both counts.
    m = np.arange(floor((low[0] + low[1]) / (2 * b)), ceil((high[0] + high[1]) / (2 * b)) + 1)
    n = np.arange(floor((low[0] - high[1]) / (2 * a)), ceil((high[0] - low[1]) / (2 * a)) + 1)
    at = (m[:, None, None] * np.array([b, b]) + n[None, :, None] * np.array([a, -a])).reshape(-1, 2)
    level, upright = at + (a / 2, b / 2), at + (a + b / 2, b - a / 2)

    def inside(p: Array) -> Array:
        return p[((p > low) & (p < high)).all(axis=1)]

    corners = np.concatenate(
        [
            _corners(inside(level), unit.length, unit.height, 0.0),
            _corners(inside(upright), unit.length, unit.height, np.pi / 2),
        ]
    )
    c, s = np.cos(turn), np.sin(turn)
    turned: Array = corners @ np.array([[c, s], [-s, c]]) + (x0, y0)
    return turned


def _basketweave(unit: Unit, box: Box, x0: float, y0: float) -> Array:
    """Squares of bricks side by side, every other one turned, (n, 4, 2). [m]"""
    import numpy as np  # here, so that importing the package does not wait for it

    closed = basketweave_joint(unit)
    if closed is None:
        raise ValueError(f"No basketweave closes with {unit}; ask basketweave_joint first.")
    number, between = closed
    side = unit.length + unit.joint
    middles = _courses(side, side, box, x0, y0, 0.0)
    odd = np.rint((middles - (x0 + side / 2, y0 + side / 2)) / side).sum(axis=1) % 2
    offsets = (np.arange(number) - (number - 1) / 2) * (unit.height + between)
    level = (middles[odd == 0][:, None, :] + np.stack([0 * offsets, offsets], 1)[None]).reshape(
        -1, 2
    )
    upright = (middles[odd == 1][:, None, :] + np.stack([offsets, 0 * offsets], 1)[None]).reshape(
        -1, 2
    )
    return np.concatenate(
        [
            _corners(level, unit.length, unit.height, 0.0),
            _corners(upright, unit.length, unit.height, np.pi / 2),
        ]
    )
