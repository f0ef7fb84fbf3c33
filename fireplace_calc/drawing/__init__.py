"""Drawings of a geometry: sheets to look at, views onto any Axes, and a picture that is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.composed.compose import CELLS, HEIGHT, WIDTH, elevations, single, views
from fireplace_calc.drawing.page.sheet_artist import sheet_figure
from fireplace_calc.drawing.roof.roof_marks import Limits
from fireplace_calc.drawing.sheets.canvas import Picture, paint
from fireplace_calc.geometry.parts import Geometry

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "CELLS",
    "HEIGHT",
    "WIDTH",
    "Picture",
    "elevations",
    "front",
    "paint",
    "plan",
    "roof",
    "section",
    "sheet_figure",
    "single",
    "views",
]


def front(ax: Axes, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Front elevation onto an Axes."""
    paint(ax, single("front", geometry, units), theme)


def section(ax: Axes, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Section through the centre onto an Axes."""
    paint(ax, single("section", geometry, units), theme)


def plan(ax: Axes, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Plan at the hearth onto an Axes."""
    paint(ax, single("plan", geometry, units), theme)


def roof(
    ax: Axes,
    geometry: Geometry,
    units: str = FEET_INCHES,
    theme: str = "light",
    limits: Limits | None = None,
) -> None:
    """The whole height against the roof onto an Axes, with its two clearances."""
    paint(ax, single("roof", geometry, units, limits), theme)
