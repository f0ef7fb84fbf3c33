"""All that one picture shows, gathered: what is built and fixed to it, the room, how faces are
laid, and from where one looks.
"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.scene.eyes import standpoints
from fireplace_calc.scene.layouts.all_layouts import face_layouts
from fireplace_calc.scene.layouts.floors import rug_layouts
from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing
from fireplace_calc.scene.setting.furnished import room_measures, setting
from fireplace_calc.scene.shown_masonry import mantel_things, masonry


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
    furniture = setting(geometry) if state == "room" else ()
    return WholeScene(
        (*masonry(result, state), *mantel_things(result, state)),
        furniture,
        (*rug_layouts(furniture), *face_layouts(result)),
        room_measures(geometry),
        standpoints(geometry),
    )
