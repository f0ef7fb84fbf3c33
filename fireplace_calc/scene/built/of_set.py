"""The pieces of a set and the mortar between them, each by itself, with the step it is set in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.build.setting.setting_order import steps_by_name
from fireplace_calc.geometry.from_set.lining_piece import LINING
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.pieces.records import Round
from fireplace_calc.pieces.roles import PARTS
from fireplace_calc.scene.built.standing import ShownSolid
from fireplace_calc.takeoff.shares_of_set import set_item

if TYPE_CHECKING:
    from fireplace_calc.geometry.assembled.assembly import Placed

UNDER = ("footing", "base walls", "base core", "hearth slab")
"""Parts that stand before the first piece."""
LAID = ("firebox floor", "firebox lining")
"""Parts that are laid with the lining."""


def setting_steps(geometry: Geometry) -> dict[str, int]:
    """When each piece of a set is set, and the lining laid.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of str to int
        By the piece's name, or ``lining``; lift by lift where pieces wait for each other. Empty
        without a set. [-]
    """
    design = geometry.design
    if design.piece_set is None:
        return {}
    from fireplace_calc.geometry.from_set.set_up import set_up

    assembly = set_up(design).assembly
    return steps_by_name(assembly, design.piece_set.lining) or {
        one.name: n for n, one in enumerate(assembly.placed, 1)
    }


def steps_beside_the_set(geometry: Geometry) -> dict[str, int]:
    """When each part of a fireplace from a set stands that is no piece; what is laid round the set
    after the last piece is left out.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    dict of str to int
        By the part's name; empty without a set. [-]
    """
    steps = setting_steps(geometry)
    if not steps:
        return {}
    laid = {name: steps[LINING] for name in LAID if LINING in steps}
    return laid | dict.fromkeys(UNDER, 0)


def pieces_of_set(geometry: Geometry) -> tuple[ShownSolid, ...]:
    """Every piece where it stands, the bed under it, and the upright joints of each lift.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of ShownSolid
        Lift by lift; none without a set.
    """
    if geometry.design.piece_set is None:
        return ()
    from fireplace_calc.geometry.from_set.frame_of_set import SetFrame
    from fireplace_calc.geometry.from_set.standing_solids import stood_apart

    steps, frame = setting_steps(geometry), geometry.frame
    start = frame.plate_bottom if isinstance(frame, SetFrame) else 0.0
    made: list[ShownSolid] = []
    part_with: dict[str, str] = {}
    lift: set[str] = set()
    number = -1
    for one in stood_apart(
        geometry.design, start, lambda here: max(here, key=lambda p: steps[p.name])
    ):
        body, step = one.body.translate(one.at), steps[one.with_piece]
        if one.placed is None:
            between = one.name.startswith("joints")
            part = _keeper(lift) if between else part_with[one.with_piece]
            made.append(ShownSolid(one.name, one.name, part, "mortar", body, step=step))
            continue
        if one.placed.lift != number:
            number = one.placed.lift
            lift.clear()
        part = part_with[one.name] = _part_of(one.placed)
        lift.add(part)
        piece = one.placed.piece
        made.append(
            ShownSolid(
                one.name,
                f"{one.name}, {piece.name}",
                part,
                "refractory",
                body,
                set_item(piece),
                "piece",
                step,
                any(isinstance(shape, Round) for shape in (*piece.adds, *piece.cuts)),
            )
        )
    return tuple(made)


def _part_of(one: Placed) -> str:
    return next(name for name, roles in PARTS.items() if one.piece.role in roles)


def _keeper(parts: set[str]) -> str:
    """Which part of a lift holds its upright joints: the first of them, the lintel last."""
    held = [name for name in PARTS if name in parts]
    return next((name for name in held if name != "lintel"), "lintel")
