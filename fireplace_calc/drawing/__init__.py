"""Drawings of a geometry: sheets to look at, views onto any Axes, and a picture that is kept."""

from __future__ import annotations

from fireplace_calc.drawing.canvas import Picture, paint
from fireplace_calc.drawing.front import front as _front
from fireplace_calc.drawing.plan import plan as _plan
from fireplace_calc.drawing.roof import Limits
from fireplace_calc.drawing.roof import roof as _roof
from fireplace_calc.drawing.section import section as _section
from fireplace_calc.drawing.sheet import Sheet
from fireplace_calc.drawing.views import Cell
from fireplace_calc.parts import Geometry
from fireplace_calc.units import FEET_INCHES

__all__ = ["Picture", "elevations", "front", "paint", "plan", "roof", "section", "single"]

WIDTH, HEIGHT = 300.0, 186.0
"""Of the sheet with all four views. [mm]"""

_VIEWS = {"front": _front, "section": _section, "plan": _plan, "roof": _roof}


def elevations(geometry: Geometry, units: str = FEET_INCHES, limits: Limits | None = None) -> Sheet:
    """One sheet with front elevation, plan, section and the whole height against the roof."""
    sheet = Sheet(WIDTH, HEIGHT)
    _front(sheet, Cell(0, 78, 112, HEIGHT), geometry, units)
    _plan(sheet, Cell(0, 0, 112, 78), geometry, units)
    _section(sheet, Cell(112, 0, 208, HEIGHT), geometry, units)
    _roof(sheet, Cell(208, 0, WIDTH, HEIGHT), geometry, units, limits)
    for x in (112.0, 208.0):
        sheet.line([(x, 4.0), (x, HEIGHT - 4.0)], "fine", "soft")
    sheet.line([(4.0, 78.0), (108.0, 78.0)], "fine", "soft")
    return sheet


def single(view: str, geometry: Geometry, units: str = FEET_INCHES, limits: Limits | None = None) -> Sheet:
    """One view alone on a sheet of the same size: ``front``, ``section``, ``plan`` or ``roof``."""
    sheet = Sheet(WIDTH, HEIGHT)
    more = {"limits": limits} if view == "roof" else {}
    _VIEWS[view](sheet, Cell(0, 0, WIDTH, HEIGHT), geometry, units, **more)
    return sheet


def _onto(view: str, ax, geometry: Geometry, units: str, theme: str, limits: Limits | None = None) -> None:
    paint(ax, single(view, geometry, units, limits), theme)


def front(ax, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Front elevation onto an Axes."""
    _onto("front", ax, geometry, units, theme)


def section(ax, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Section through the centre onto an Axes."""
    _onto("section", ax, geometry, units, theme)


def plan(ax, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light") -> None:
    """Plan at the hearth onto an Axes."""
    _onto("plan", ax, geometry, units, theme)


def roof(ax, geometry: Geometry, units: str = FEET_INCHES, theme: str = "light", limits: Limits | None = None) -> None:
    """The whole height against the roof onto an Axes, with its two clearances."""
    _onto("roof", ax, geometry, units, theme, limits)
