"""Every guide, held against one design."""

from __future__ import annotations

from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.guide import Guide
from fireplace_calc.proportion.opening_guides import (
    opening_height,
    opening_shape,
    published_opening,
    width_for_room,
)
from fireplace_calc.proportion.wall_guides import door_head, golden_section, like_shapes, thirds


def find_guides(geometry: Geometry, units: str = FEET_INCHES) -> tuple[Guide, ...]:
    """Every guide held against one design.

    Parameters
    ----------
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of Guide
        In the order of ``NAMES``.
    """

    def text(value: float) -> str:
        return show(value, "length", units)

    return (
        opening_shape(geometry, text),
        published_opening(geometry, text),
        opening_height(geometry, text),
        like_shapes(geometry),
        golden_section(geometry, text),
        thirds(geometry),
        door_head(geometry, text),
        width_for_room(geometry, units),
    )
