"""All that one picture shows, gathered: what is built and fixed to it, the room, how faces are
laid, and from where one looks.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.wall_guides import wall_sides, wall_top
from fireplace_calc.scene.eyes import USUAL_DEPTH, USUAL_HALF, standpoints
from fireplace_calc.scene.layouts.all_layouts import face_layouts
from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing
from fireplace_calc.scene.shown_masonry import mantel_things, masonry

PROUD = 0.254
"""How far the breast stands out of the wall, where nobody has told it. [m]"""


@dataclass(frozen=True, eq=False)
class WholeScene:
    """All that one picture shows.

    Attributes
    ----------
    fireplace : tuple of Thing
        What is built, and what is fixed to it.
    setting : tuple of Thing
        What only stands in the room; nothing outside of it.
    layouts : tuple of FaceLayout
    measures : RoomMeasures
    standpoints : tuple of Standpoint
    """

    fireplace: tuple[Thing, ...]
    setting: tuple[Thing, ...]
    layouts: tuple[FaceLayout, ...]
    measures: RoomMeasures
    standpoints: tuple[Standpoint, ...]


def gather_scene(result: Assessment, state: str = "room") -> WholeScene:
    """The scene of an assessment.

    Parameters
    ----------
    result : Assessment
    state : str
        One of ``shown_masonry.STATES``.

    Returns
    -------
    WholeScene
    """
    geometry = result.geometry
    return WholeScene(
        (*masonry(result, state), *mantel_things(result, state)),
        (),
        tuple(face_layouts(result)),
        _bare_room(geometry),
        standpoints(geometry),
    )


def _bare_room(geometry: Geometry) -> RoomMeasures:
    """A room of nothing but walls."""
    f, house = geometry.frame, geometry.design.house
    left, right = wall_sides(geometry)
    if house.room_length is None:
        left, right = min(left, -USUAL_HALF), max(right, USUAL_HALF)
    deep = house.room_width or USUAL_DEPTH
    told = geometry.design.breast.stands_out
    return RoomMeasures(
        left,
        right,
        -deep,
        PROUD if told is None else told,
        wall_top(geometry),
        (),
        (left + 0.6, -1.0, 1.5),
        (0.0, f.depth / 2, f.hearth),
        0.62 * f.back_width + 0.1,
    )
