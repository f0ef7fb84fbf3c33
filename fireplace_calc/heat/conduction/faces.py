"""What goes out of free faces, and how steeply that changes with their temperatures."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.heat.conduction.exchange import air_layer, free_face, radiated
from fireplace_calc.heat.conduction.mesh import FreeFaces, Gap, Room

Drives = Mapping[str, float]
"""Temperature of each space by its name. [C]"""


def face_flows(
    faces: FreeFaces, one: Array, other: Array, drives: Drives
) -> tuple[Array, Array, Array]:
    """Heat across, and from either face to the space. [W/m]"""
    space = faces.space
    if isinstance(space, Room):
        room = drives[space.drive]
        sent, _ = radiated(one, np.array(room), np.array(space.emissivity))
        air, _ = free_face(one - room, np.array(space.coefficient))
        none = np.zeros_like(one)
        return none, faces.area * (sent + air * (one - room)), none
    assert isinstance(space, Gap)
    room = drives[space.drive]
    sent, _ = radiated(one, other, np.array(space.emittance))
    air, _ = air_layer(one - other, faces.width, space.way)
    each = 2 * air  # at either face (ISO 6946 has the two of them in a row)
    across, away = each**2 / (2 * each + space.air), each * space.air / (2 * each + space.air)
    return (
        faces.area * (sent + across * (one - other)),
        faces.area * away * (one - room),
        faces.area * away * (other - room),
    )


def face_slopes(
    faces: FreeFaces, one: Array, other: Array, room: float
) -> tuple[Array, Array, Array]:
    """How steeply those change with their differences. [W/(m K)]"""
    space = faces.space
    if isinstance(space, Room):
        _, sent = radiated(one, np.array(room), np.array(space.emissivity))
        _, air = free_face(one - room, np.array(space.coefficient))
        none = np.zeros_like(one)
        return none, faces.area * (sent + air), none
    assert isinstance(space, Gap)
    _, sent = radiated(one, other, np.array(space.emittance))
    _, air = air_layer(np.maximum(np.abs(one - other), 5.0), faces.width, space.way)
    each = 2 * air
    across, away = each**2 / (2 * each + space.air), each * space.air / (2 * each + space.air)
    return faces.area * (sent + across), faces.area * away, faces.area * away
