"""What every finding on the head of an opening waits for: the loads over it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fireplace_calc.editing.changes import unknown_of
from fireplace_calc.rules.comparing import MEETS, NOT_CHECKED, Compared

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

LOW_COVER = (
    "The breast ends below the top of the triangle, so load from above comes in: call an engineer."
)
BEARS = ("loads.floor_over_head", "loads.beam_over_head")


def if_load_is_known(structure: Structure, found: Compared, low_cover: bool) -> Compared:
    """What is met counts as met only where every load in the triangle is known.

    Parameters
    ----------
    structure : Structure
    found : Compared
        With the loads as far as they are told.
    low_cover : bool
        The triangle runs out of the breast.

    Returns
    -------
    Compared
        Not checked where a load is missing.
    """
    if found.verdict != MEETS:
        return found
    inside = structure.design.loads.in_triangle
    waits = unknown_of(structure.design, *BEARS) if inside else ()
    if waits:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "The load that bears in the triangle counts in full and is not known.",
            waits,
        )
    if inside and structure.arch is not None and structure.design.loads.beam_over_head:
        return Compared(
            NOT_CHECKED, found.provided, found.required, "A beam on an arch is for an engineer."
        )
    if inside is None:
        return Compared(
            NOT_CHECKED,
            found.provided,
            found.required,
            "Whether a floor or beam bears in the triangle is not known yet.",
            ("loads.in_triangle",),
        )
    return Compared(NOT_CHECKED, found.provided, found.required, LOW_COVER) if low_cover else found
