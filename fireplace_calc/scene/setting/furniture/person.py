"""Somebody who stands there, so that one sees how large the fireplace is. [m]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.base.tables.standing_person import STATURE, standing_person
from fireplace_calc.proportion.figures import proportion_figures
from fireplace_calc.scene.setting.stood import Furniture, Made, gathered

STUFFS = {"shoes": "leather"}
"""What pieces are made of whose name is no stuff."""


@lru_cache(maxsize=1)
def person() -> Furniture:
    """As tall as the person of the elevations."""
    size = proportion_figures()["stature"][0] / STATURE
    return gathered(
        *(
            Made(
                f"person, {piece.name}",
                "person",
                STUFFS.get(piece.name, piece.name),
                piece.points * size,
                piece.faces,
                smooth=True,
            )
            for piece in standing_person()
        )
    )
