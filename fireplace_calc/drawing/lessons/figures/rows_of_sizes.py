"""How large an exercise is drawn, and how far its rows of sizes stand from it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.lessons.exercise_figure import FigureSize, FigureWord

SIDES = ("left", "right", "below", "above")
ROW, AIR, TICK = 2.3, 0.9, 0.4
"""Height of a row of sizes, air beside a letter, and half a tick, in heights of a letter. [-]"""
SHORT = 2.6
"""Up to here a figure stands level beside an upright string, in heights of a letter. [-]"""
LEAST, ALL = 0.25, 99
"""Of the sheet's width or height for the drawing itself, before rows of sizes close up; more rows
than a side has. [-]
"""
SMALLER = 0.97
"""Of one scale that is tried to the next. [-]"""
EDGE = 1.5
"""Air along the edge of the sheet. [mm]"""


def edge_of(letters: float) -> float:
    """Air along the edge: half a tick has to stand in it. [mm]"""
    return max(EDGE, 1.2 * TICK * letters)


def across(size: FigureSize) -> int:
    """0 for a size that runs level, 1 for an upright one."""
    return 0 if size.side in ("above", "below") else 1


def fitted_rows(
    sizes: Sequence[tuple[FigureSize, str]],
    words: Sequence[tuple[FigureWord, str]],
    box: tuple[np.ndarray, np.ndarray],
    room: tuple[float, float],
    letters: float,
) -> tuple[dict[str, list[float]], float]:
    """How deep each row of sizes is on each side [mm], and the largest scale that leaves room for
    them [mm/m]. Rows close up where the drawing would be small for the figures beside it.
    """
    span, whole = np.maximum(box[1] - box[0], 1e-6), np.array(room)
    for close in range(3):
        scale = float((whole / span).min())
        while scale > 1.0:  # from the largest down: turned figures take less room than level ones
            rows = _rows(sizes, words, box, scale, letters, close)
            taken = [sum(rows["left"] + rows["right"]), sum(rows["below"] + rows["above"])]
            if bool((span * scale + taken + 2 * edge_of(letters) <= whole).all()):
                break
            scale *= SMALLER
        if bool((span * scale >= LEAST * whole).any()):
            break
    return _rows(sizes, words, box, scale, letters, close), scale


def _rows(
    sizes: Sequence[tuple[FigureSize, str]],
    words: Sequence[tuple[FigureWord, str]],
    box: tuple[np.ndarray, np.ndarray],
    scale: float,
    letters: float,
    close: int,
) -> dict[str, list[float]]:
    """Room that words take over the edge, then each row of sizes, outward on each side; of those
    that close up (0 none, 1 inner ones, 2 all) figures stand wherever is free. [mm]
    """
    rows: dict[str, list[float]] = {side: [] for side in SIDES}
    last = {side: max([s.row for s, _ in sizes if s.side == side], default=0) for side in SIDES}
    for size, text in sizes:
        held = rows[size.side]
        held += [0.0] * (size.row + 1 - len(held))
        gap = abs(size.end[across(size)] - size.start[across(size)]) * scale
        long = lettering.width(text, letters, size.step >= 0)
        turned = SHORT * letters < long < gap - AIR * letters
        beside = across(size) == 1 and not turned and size.row >= (0, last[size.side], ALL)[close]
        held[size.row] = max(held[size.row], long + 2 * AIR * letters if beside else ROW * letters)
    over = dict.fromkeys(SIDES, 0.0)
    for word, text in words:
        long = max(lettering.width(t, letters, True) for t in (text, word.name or text)) / 2
        for side, reach, near in (
            ("left", long, word.at[0] - box[0][0]),
            ("right", long, box[1][0] - word.at[0]),
            ("below", 1.6 * letters, word.at[1] - box[0][1]),
            ("above", 1.6 * letters, box[1][1] - word.at[1]),
        ):
            over[side] = max(over[side], reach - near * scale)
    return {side: [over[side], *rows[side]] for side in SIDES}
