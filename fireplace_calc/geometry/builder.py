"""What a design makes: every part built as a solid, from the footing up. The only source of
dimensions.
"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.design.records import Design
from fireplace_calc.geometry.laid_parts import Builder
from fireplace_calc.geometry.parts import Geometry


def _builder(design: Design) -> Builder:
    if design.piece_set is None:
        return Builder(design)
    from fireplace_calc.geometry.from_set.set_builder import SetBuilder  # wakes manifold3d

    return SetBuilder(design)


@lru_cache(maxsize=64)
def build_geometry(design: Design) -> Geometry:
    """Everything a design makes. Kept for the last few designs, so that every reader of one sees
    the same geometry.

    Parameters
    ----------
    design : Design
        Whole and consistent, as ``change`` and ``load`` hand it out.

    Returns
    -------
    Geometry
    """
    b = _builder(design)
    parts = (
        *b.foundation(),
        *b.hearth(),
        *b.firebox(),
        *b.smoke_chamber(),
        *b.stack(),
        *b.second_flue(),
    )
    return Geometry(design, b.frame, tuple([p for p in parts if p.adds]), b.voids, b.outer)
