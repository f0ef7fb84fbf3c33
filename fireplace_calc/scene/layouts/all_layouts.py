"""Every layout of a fireplace and its room, the particular ones before the general."""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.scene.layouts.arch import arch_layouts
from fireplace_calc.scene.layouts.brick_face import brick_layouts, tile_layouts
from fireplace_calc.scene.layouts.floors import floor_layouts
from fireplace_calc.scene.layouts.lining import lining_layouts
from fireplace_calc.scene.layouts.plain_masonry import plain_layouts
from fireplace_calc.scene.layouts.stone import stone_layouts
from fireplace_calc.scene.records import FaceLayout


def face_layouts(result: Assessment) -> tuple[FaceLayout, ...]:
    """How every face of a fireplace in its room is laid.

    Parameters
    ----------
    result : Assessment

    Returns
    -------
    tuple of FaceLayout
        Of several that fit a face the first counts; a stuff that none fits is painted in patches.
        Most stay the same, outlines and all, while a slider moves. [m]
    """
    geometry = result.geometry
    face = {"brick": brick_layouts, "tile": tile_layouts, "stone": stone_layouts}
    shown = face.get(geometry.design.surround.face)
    every = (
        *arch_layouts(geometry),
        *(shown(geometry) if shown else ()),
        *(() if shown is brick_layouts else brick_layouts(geometry)),
        *lining_layouts(geometry),
        *plain_layouts(geometry),
        *floor_layouts(geometry.design.breast.cornered),
    )
    # Where a face is too small for a single unit, none is laid.
    return tuple(layout for layout in every if layout.rings)
