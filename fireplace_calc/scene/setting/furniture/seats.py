"""What one sits on: a sofa with its cushions, and an armchair. [m]"""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.scene.setting.forms import SOFT, block, cushion, pillow, tapered
from fireplace_calc.scene.setting.stood import Furniture, gathered, made

GAP = 0.004
"""Between one thing that is stuffed and the next. [m]"""
FOOT = 0.11
"""Height of feet. [m]"""
SEAT = 0.44
"""Top of a seat. [m]"""


@lru_cache(maxsize=8)
def sofa(width: float = 2.1) -> Furniture:
    """A sofa of two seats, with two loose cushions.

    Parameters
    ----------
    width : float
        Over both arms. [m]
    """
    half, deep, arm, back = width / 2, 0.92, 0.19, 0.2
    front, rear = -deep / 2, deep / 2
    inner = half - arm - GAP
    frame = [
        block((-inner, inner), (front + 0.03, rear), (FOOT, 0.27), 0.025),
        block((-inner, inner), (rear - back, rear), (0.27 + GAP, 0.74), 0.07, SOFT),
    ]
    for side in (-1, 1):
        x = (side * half - arm / 2 * (1 + side), side * half + arm / 2 * (1 - side))
        frame.append(block(x, (front, rear), (FOOT, 0.61), 0.065, SOFT))
    seat_deep = deep - back - 0.03
    each = 2 * inner / 2 - GAP
    middle = (front - 0.02 + rear - back - GAP) / 2
    seats = [
        cushion((each - GAP, seat_deep + 0.02, 0.2), 5.0, 9.0).translate(
            (side * (each + GAP) / 2, middle, 0.27 + GAP + 0.1)
        )
        for side in (-1, 1)
    ]
    lean = 13
    backs = [
        cushion((each - 0.01, 0.45, 0.2), 3.2, 7.0)
        .rotate((90 - lean, 0, 0))
        .translate((side * (each + GAP) / 2, rear - back - 0.135, 0.47 + 0.225))
        for side in (-1, 1)
    ]
    loose = [
        pillow(0.45, 0.17)
        .rotate((0, side * 7, 0))
        .rotate((-24, 0, 0))
        .rotate((0, 0, side * -16))
        .translate((side * (inner - 0.25), rear - back - 0.35, 0.47 + 0.235))
        for side in (-1, 1)
    ]
    feet = [
        tapered(0.0, FOOT, 0.016, 0.026, 8).translate((x, y, 0.0))
        for x in (-half + 0.1, half - 0.1)
        for y in (front + 0.09, rear - 0.09)
    ]
    return gathered(
        made("sofa", "sofa", "fabric", frame, smooth=True),
        made("sofa seats", "seat cushions of the sofa", "fabric", seats, smooth=True),
        made("sofa backs", "back cushions of the sofa", "fabric", backs, smooth=True),
        made("sofa loose cushions", "loose cushions", "wool", loose, smooth=True),
        made("sofa feet", "feet of the sofa", "walnut", feet, smooth=True),
    )


@lru_cache(maxsize=1)
def armchair() -> Furniture:
    """An armchair of leather, with a cushion."""
    half, deep, arm = 0.41, 0.84, 0.13
    front, rear, inner = -deep / 2, deep / 2, half - arm - GAP
    hide = [
        block((-inner, inner), (front + 0.03, rear - 0.17), (0.17, 0.3), 0.025),
        block((-half + 0.03, half - 0.03), (-0.08, 0.08), (0.0, 0.72), 0.06, SOFT)
        .rotate((-12, 0, 0))
        .translate((0, rear - 0.24, 0.2)),
    ]
    for side in (-1, 1):
        x = (side * half - arm / 2 * (1 + side), side * half + arm / 2 * (1 - side))
        hide.append(block(x, (front, rear - 0.29), (0.17, 0.6), 0.05, SOFT))
    seat = cushion((2 * inner - GAP, deep - 0.3, 0.17), 4.5, 9.0).translate(
        (0, front + (deep - 0.3) / 2 - 0.01, 0.3 + GAP + 0.085)
    )
    loose = (
        pillow(0.42, 0.16).rotate((-20, 0, 0)).translate((0.03, rear - 0.44, 0.3 + 0.17 + 0.215))
    )
    legs = [
        tapered(0.0, 0.17, 0.013, 0.022, 8).translate((x, y, 0.0))
        for x in (-half + 0.07, half - 0.07)
        for y in (front + 0.07, rear - 0.36)
    ]
    return gathered(
        made("armchair", "armchair", "leather", hide, smooth=True),
        made("armchair seat", "seat of the armchair", "leather", seat, smooth=True),
        made("armchair cushion", "cushion", "linen", loose, smooth=True),
        made("armchair legs", "legs of the armchair", "walnut", legs, smooth=True),
    )
