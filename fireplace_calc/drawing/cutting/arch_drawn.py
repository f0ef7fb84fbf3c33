"""The arch as it is set out: its center, skewbacks, every joint."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, degrees, sin

import numpy as np

from fireplace_calc.brickwork.arch_ring import voussoirs
from fireplace_calc.brickwork.cutting.set_arch import ArchSetting, arch_setting
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.marks import center_line
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry

ROUND, BESIDE = 0.04, 0.12
"""How much is shown of the jamb under and beside the ring. [m]"""


def arc(setting: ArchSetting, share: float, count: int = 97) -> np.ndarray:
    """Points of the ring at a share of its depth from the soffit, left to right, (n, 2).

    Parameters
    ----------
    setting : ArchSetting
    share : float
        [-]
    count : int
        [-]

    Returns
    -------
    array
        Across from the center line and up from the floor. [m]
    """
    ring = setting.ring
    turn = np.linspace(-ring.half_angle, ring.half_angle, count)
    r, z = ring.radius + share * ring.depth, ring.spring - setting.center
    return np.stack([r * np.sin(turn), z + r * np.cos(turn)], 1)


def arch_figure(geometry: Geometry, units: str, scales: Sequence[float]) -> Figure | None:
    """The figure of the arch.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : sequence of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    Figure or None
        Nothing under a straight head.
    """
    setting = arch_setting(geometry)
    if setting is None:
        return None
    ring, (across, up) = setting.ring, setting.skewback
    half, center = ring.span / 2, ring.spring - setting.center
    shown = setting.center < 1.2 * ring.span
    low = (center if shown else ring.spring) - ROUND
    wide = half + across + BESIDE
    box = (-wide, low, wide, ring.top + ROUND)

    def draw(view: View) -> None:
        inner, outer = arc(setting, 0.0), arc(setting, 1.0)
        view.path([*inner, *outer[::-1], inner[0]], "cut")
        for joints in voussoirs(geometry, inner, outer):
            for joint in joints:
                view.path(joint, "seen")
        for side in (-1, 1):
            view.path([(side * half, max(low, ring.spring - 0.1)), (side * half, ring.spring)])
            view.path([(side * wide, ring.spring), (side * half, ring.spring)], "hidden")
        view.path([(-half, ring.spring), (half, ring.spring)], "hidden")
        foot, head = view.at(0, low), view.at(0, ring.top)
        center_line(view.sheet, foot, (head[0], head[1] + 2.0))
        if shown:
            lean = ring.half_angle
            for at in (-lean, lean):
                tip = (ring.radius * sin(at), center + ring.radius * cos(at))
                view.path([(0.0, center), tip], "dimension", "dimension")

    lean = ring.half_angle
    side = -lean * 0.55
    soffit = (ring.radius * sin(side), center + ring.radius * cos(side))
    skew = (-half - across / 2, ring.spring + up / 2)
    notes: list[Note] = [
        (soffit, f"radius of the soffit {length(ring.radius, units)}"),
        (
            skew,
            f"skewback: {length(across, units)} across, {length(up, units)} up,"
            f" {degrees(lean):.1f}\N{DEGREE SIGN} off plumb",
        ),
    ]
    if shown:
        notes.append(((0.0, center), f"center {length(setting.center, units)} under the springing"))
    return annotated(
        "arch",
        box,
        draw,
        units,
        scales,
        left=notes,
        beside=(Sizes((ring.spring, ring.spring + ring.rise, ring.top), wide),),
        above=(Sizes((-half - across, 0.0, half + across), ring.top),),
        note="seen from the room",
    )
