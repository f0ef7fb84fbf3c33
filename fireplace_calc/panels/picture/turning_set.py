"""A set in the view that turns: every piece a part of its own, its form sent once for all alike."""

from __future__ import annotations

from typing import Any

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.build.setting.setting_order import steps_by_name
from fireplace_calc.build.setting.wording import weight_text
from fireplace_calc.geometry.from_set.lining_piece import LINING
from fireplace_calc.geometry.mesh import CUT_NORMALS, Plane, cut_plane, skin
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.panels.picture.packing import packed_skins

UNDER = ("footing", "base walls", "base core", "hearth slab")
"""Parts that stand before the first piece."""
LAID = ("firebox floor", "firebox lining")
"""Parts that are laid with the lining."""

UNDER_BED = 0.3
"""How much is shown of what the set stands on. [m]"""


def _steps(made: Geometry) -> dict[str, int]:
    """Step of every piece, and of the lining. [-]"""
    from fireplace_calc.geometry.from_set.set_up import set_up

    design = made.design
    lining = design.piece_set.lining if design.piece_set else None
    assembly = set_up(design).assembly
    return steps_by_name(assembly, lining) or {
        one.name: n for n, one in enumerate(assembly.placed, 1)
    }


def steps_of_parts(made: Geometry) -> dict[str, int]:
    """Step after which each part stands that is no piece; parts that come later are left out.

    Parameters
    ----------
    made : Geometry

    Returns
    -------
    dict of str to int
        By the part's name; empty without a set. [-]
    """
    if made.design.piece_set is None:
        return {}
    steps = _steps(made)
    laid = {name: steps[LINING] for name in LAID if LINING in steps}
    return laid | dict.fromkeys(UNDER, 0)


def packed_set(made: Geometry, first: int) -> dict[str, Any]:
    """The pieces of a design's set and the mortar between them, as the page is sent them.

    Parameters
    ----------
    made : Geometry
    first : int
        Number of the first part that they make. [-]

    Returns
    -------
    dict
        ``parts``: name, material, step; of a piece its mark, what it is called and its weight.
        ``forms``: each as triangles, by state. ``stands``: form, part and place [m] of each solid.
        ``box`` round the pieces under the flue [m]. All empty without a set.
    """
    parts: list[dict[str, Any]] = []
    stands: list[list[float]] = []
    if made.design.piece_set is None:
        return {"parts": parts, "forms": [], "stands": stands, "box": []}
    from fireplace_calc.geometry.assembled.solids import extent, piece_weight
    from fireplace_calc.geometry.from_set.frame_of_set import SetFrame
    from fireplace_calc.geometry.from_set.standing_solids import stood_apart

    steps, frame = _steps(made), made.frame
    start = frame.plate_bottom if isinstance(frame, SetFrame) else 0.0
    every = stood_apart(made.design, start, lambda here: max(here, key=lambda one: steps[one.name]))
    number: dict[int, int] = {}
    forms: list[dict[str, Any]] = []
    for one in every:
        if id(one.body) not in number:
            number[id(one.body)] = len(forms)
            forms.append(_form(one.body, one.at, made))
        stands.append([number[id(one.body)], first + len(parts), *one.at])
        told: dict[str, Any] = {
            "name": one.name,
            "material": "refractory" if one.placed else "mortar",
            "one": one.name if one.placed else "mortar",
            "step": steps[one.with_piece],
        }
        if one.placed:
            piece = one.placed.piece
            told["mark"], told["called"] = piece.mark, piece.name
            told["top"] = one.placed.top + start
            told["kilograms"] = piece_weight(piece)
            told["weight"] = {
                u: weight_text(told["kilograms"], u) for u in (FEET_INCHES, MILLIMETRES)
            }
        parts.append(told)
    low = [one for one in every if one.placed and one.placed.piece.role != "flue"]
    reach = [extent(one.placed.piece) for one in low if one.placed]
    back = every[0].at[1]
    box = [
        min(e[0] for e in reach),
        max(e[1] for e in reach),
        min(e[2] for e in reach) + back,
        max(e[3] for e in reach) + back,
        start - UNDER_BED,
        frame.flue_start,
    ]
    return {"parts": parts, "forms": forms, "stands": stands, "box": box}


def _form(body: Any, at: tuple[float, float, float], made: Geometry) -> dict[str, Any]:
    """A form on its own bed in every state; nothing where all of it is cut away."""
    states: dict[str, Any] = {}
    for away in ("", *CUT_NORMALS):
        plane: Plane | None = None
        if away:
            normal, far = cut_plane(made, away)
            plane = normal, far - sum(a * b for a, b in zip(normal, at, strict=True))
        left = skin("", "", body, plane)
        states[away] = packed_skins((left,), {"": 0}, plane) if left else None
    return states
