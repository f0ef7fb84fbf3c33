"""The words under the picture of the room."""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.room.room_scene import Scene, room_deep
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion import (
    corner_fit,
    corner_of_room,
    proportion_figures,
    wall_ends,
    wall_top,
)


def caption(sheet: Sheet, cell: Cell, geometry: Geometry, s: Scene, units: str) -> None:
    """What the picture is, under it at the right.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
    geometry : Geometry
    s : Scene
        Of it.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    house, square = geometry.design.house, "12 in" if units == FEET_INCHES else "300 mm"
    where = ", farther than the room is deep" if s.eye.away > room_deep(geometry) else ""
    tall, away = (length(size, units) for size in (proportion_figures()["stature"][0], s.eye.away))
    said = [
        f"Seen from {away} away{where}; person {tall}; floor in squares of {square}.",
        "Sizes are those in the plane of the face.",
    ]
    if wall_top(geometry) > house.ceiling + 1e-9:
        said[0] = (
            f"The opening reaches too high for a ceiling of {length(house.ceiling, units)}."
            f" {said[0]}"
        )
    said[1] += _in_its_wall(geometry, s, units)
    if fit := corner_fit(geometry, units):
        said.append(f"{fit[0].upper()}{fit[1:]}.")
    least = cell.left + 2 + lettering.width("In its room", TITLE, True) + 6
    for row, text in enumerate(reversed(said)):
        if cell.right - 2 - lettering.width(text, SMALL) > least:
            sheet.text(
                cell.right - 2,
                cell.bottom + 2.2 + 4.2 * row,
                text,
                size=SMALL,
                ha="right",
                ink="soft",
            )


def _in_its_wall(geometry: Geometry, s: Scene, units: str) -> str:
    """What is to be said of the wall, and where in it the fireplace stands."""
    long, off = geometry.design.house.room_length, geometry.design.breast.off_center
    to = "right" if off > 0 else "left"
    aside = f" It stands {length(abs(off), units)} {to} of the middle of its wall." if off else ""
    if (corner := corner_of_room(geometry)) is not None:
        return f" Across a corner, its wall {length(corner.width, units)} wide.{aside}"
    if long is None:
        return " Length of the wall: unknown."
    if long / 2 < wall_ends(geometry) - 1e-6:
        return f" The masonry is longer than the wall of {length(long, units)}."
    if off == 0 and not s.whole:
        return f" Only the middle of the {length(long, units)} wall is shown."
    return aside
