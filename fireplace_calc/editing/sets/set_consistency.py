"""What must hold before a set of pieces can be built in a design."""

from __future__ import annotations

from fireplace_calc.base.printing import named
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame_builder import build_frame

MOST_SAID = 3
"""Misfits named in one message. [-]"""


def require_set(design: Design) -> None:
    """Refuse a set that has not been read, whose pieces do not meet, or that cannot do what is
    asked; a design without one passes.

    Parameters
    ----------
    design : Design

    Raises
    ------
    InputError
        Names both pieces and the measure.
    """
    name = design.pieces.set
    if design.piece_set is None:
        if name:
            raise InputError(
                f"Set of pieces is {name!r}, but its file has not been read; take it with change()"
                " or load().",
                "Set of pieces",
                "a set that has been read",
                name,
            )
        return
    from fireplace_calc.geometry.assembled.fitting import fit  # wakes manifold3d
    from fireplace_calc.geometry.from_set.set_up import set_up

    faults = fit(set_up(design).assembly)
    if faults:
        said = " ".join(f.says for f in faults[:MOST_SAID])
        more = f" And {len(faults) - MOST_SAID} more." if len(faults) > MOST_SAID else ""
        raise InputError(
            f"The pieces of the set {name} do not meet: {said}{more}",
            "Set of pieces",
            "pieces that meet",
            name,
        )
    frame = build_frame(design)
    short = frame.footing_top - frame.slab_bottom
    if short > ROUNDING:
        raise InputError(
            f"Hearth level is {named(frame.hearth, 'length')}, but base plates, floor and slab of"
            f" the set {name} reach {named(short, 'length')} into the footing; raise the hearth or"
            " lower the footing.",
            "Hearth level",
            f"at least {named(frame.hearth + short, 'length')}",
            frame.hearth,
        )
    jamb, bearing = frame.block_half - frame.half_width, design.pieces.angle_bearing or 0.0
    if design.pieces.facing_angle(design.opening.head) and bearing > jamb + ROUNDING:
        raise InputError(
            f"Bearing of the facing angle is {named(bearing, 'length')}, but the facing beside the"
            f" opening is {named(jamb, 'length')} wide; take a shorter bearing.",
            "Bearing of the facing angle",
            f"at most {named(jamb, 'length')}",
            bearing,
        )
    if design.second_flue.drawn:
        raise InputError(
            "A second flue is asked for, but a set carries one flue; build the chimney without a"
            " set, or leave the second flue out.",
            "Set of pieces",
            "no second flue",
            name,
        )
