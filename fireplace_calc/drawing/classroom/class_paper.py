"""The paper that a class is printed on, and the caution at its foot."""

from __future__ import annotations

from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.report.sentences import require_units

STANDING = {"letter": (215.9, 279.4), "A4": (210.0, 297.0)}
"""Papers of a class. [mm]"""
USUAL = {FEET_INCHES: "letter", "millimetres": "A4"}
EDGE, FOOT_ROOM, HEAD_ROOM = 10.0, 13.0, 11.0
"""Margin all round, and the strips at foot and head. [mm]"""
CAUTION = (
    "Invented for an exercise. Not to be built from: local code, its official and licensed practice"
    " decide."
)


def paper(units: str, name: str | None = None) -> tuple[float, float]:
    """Width and height of a standing paper. [mm]

    Parameters
    ----------
    units : str
        Which paper is usual.
    name : str or None
        ``letter`` or ``A4``.

    Raises
    ------
    InputError
        When there is no such paper.
    """
    name = name or USUAL[require_units(units)]
    if name not in STANDING:
        raise InputError(
            f"Paper is {name!r}, but a class is printed on {' or '.join(STANDING)}.",
            "Paper",
            ", ".join(STANDING),
            name,
        )
    return STANDING[name]
