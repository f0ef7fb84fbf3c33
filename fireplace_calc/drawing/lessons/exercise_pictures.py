"""The drawing of an exercise, for paper and page alike: a question mark where the answer goes, and
the working only as far as the step.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fireplace_calc.drawing.lessons.clear_spots import ClearSpots
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.drawing.sheets.style import TEXT
from fireplace_calc.lessons import Exercise
from fireplace_calc.lessons.exercise_figure import ExerciseFigure, FigureSize, FigureWord

SIDES = ("left", "right", "below", "above")
ROW, AIR, TICK = 2.3, 0.9, 0.4
"""Height of a row of sizes, air beside a letter, and half a tick, in heights of a letter. [-]"""
SHORT = 2.6
"""Up to here a figure stands level beside an upright string, in heights of a letter. [-]"""
SMALLER = 0.97
"""Of one scale that is tried to the next. [-]"""
EDGE = 1.5
"""Air along the edge of the sheet. [mm]"""


@dataclass(frozen=True, slots=True)
class ShownUpTo:
    """How far an exercise is drawn.

    Attributes
    ----------
    step : int or None
        The step that is asked, from nought; ``None`` on paper, where every step is asked at once.
    worked : bool
        That step's own working and answer too.
    """

    step: int | None = None
    worked: bool = False

    def text(self, own: int, text: str) -> str | None:
        """What is written for a figure: itself, a question mark, or nothing yet."""
        if own < 0:
            return text
        if self.step is None:
            return f"{'abcdefgh'[own]} ?"
        if own < self.step or (own == self.step and self.worked):
            return text
        return "?" if own == self.step else None

    def line(self, own: int) -> bool:
        """Whether a line is drawn: working comes when its step is worked."""
        if own < 0 or self.step is None:
            return own < 0
        return own < self.step or (own == self.step and self.worked)


def exercise_picture(
    task: Exercise,
    wide: float,
    high: float,
    step: int | None = None,
    worked: bool = False,
    letters: float = TEXT,
) -> Sheet:
    """Draw an exercise.

    Parameters
    ----------
    task : Exercise
    wide, high : float
        Of the sheet. [mm]
    step : int or None
        The step that is asked; ``None`` asks all of them, by letters. [-]
    worked : bool
        Show the working and the answer of that step too; with the last step, all of it.
    letters : float
        Height of a letter. [mm]

    Returns
    -------
    Sheet
        An empty one where the exercise has no drawing.
    """
    if task.figure is None:
        return Sheet(wide, high)
    return figure_sheet(task.figure, wide, high, ShownUpTo(step, worked), letters)


def figure_sheet(
    figure: ExerciseFigure, wide: float, high: float, shown: ShownUpTo, letters: float = TEXT
) -> Sheet:
    """The same for a drawing alone, as a student's page holds it without the answers.

    Parameters
    ----------
    figure : ExerciseFigure
    wide, high : float
        Of the sheet. [mm]
    shown : ShownUpTo
        How far it is drawn.
    letters : float
        Height of a letter. [mm]

    Returns
    -------
    Sheet
    """
    sheet = Sheet(wide, high)
    sizes = [(s, text) for s in figure.sizes if (text := shown.text(s.step, s.text)) is not None]
    words = [(w, text) for w in figure.words if (text := shown.text(w.step, w.text)) is not None]
    spots = [p for line in figure.lines for p in line.points]
    spots += [word.at for word in figure.words]
    spots += [p for size in figure.sizes for p in (size.start, size.end)]
    low, top = np.min(spots, axis=0), np.max(spots, axis=0)
    rows, scale = _fitted(sizes, words, (low, top), (wide, high), letters)
    margins = {side: sum(rows[side]) + _edge(letters) for side in SIDES}
    spare = (
        (wide - margins["left"] - margins["right"] - scale * (top[0] - low[0])) / 2,
        (high - margins["below"] - margins["above"] - scale * (top[1] - low[1])) / 2,
    )
    view = View(
        sheet,
        margins["left"] + spare[0] - scale * low[0],
        margins["below"] + spare[1] - scale * low[1],
        scale,
    )
    for line in figure.lines:
        if shown.line(line.step):
            if line.hatch:
                view.cut([line.points], line.hatch, line.weight)
            else:
                closed = (*line.points, line.points[0]) if line.closed else line.points
                view.path(closed, line.weight)
    edges = {
        "left": view.at(*low)[0],
        "below": view.at(*low)[1],
        "right": view.at(*top)[0],
        "above": view.at(*top)[1],
    }
    placed = [(size, text, *_string(view, size, edges, rows, letters)) for size, text in sizes]
    clear = ClearSpots(sheet)
    for size, text, start, end in sorted(placed, key=lambda p: p[0].row):
        _figure_of(sheet, clear, size, (text, start, end), letters)
    for word, text in sorted(words, key=lambda w: w[0].step < 0):
        _word(sheet, clear, word, text, view.at(*word.at), letters)
    return sheet


def _edge(letters: float) -> float:
    """Air along the edge: half a tick has to stand in it. [mm]"""
    return max(EDGE, 1.2 * TICK * letters)


def _across(size: FigureSize) -> int:
    """0 for a size that runs level, 1 for an upright one."""
    return 0 if size.side in ("above", "below") else 1


def _fitted(
    sizes: Sequence[tuple[FigureSize, str]],
    words: Sequence[tuple[FigureWord, str]],
    box: tuple[np.ndarray, np.ndarray],
    room: tuple[float, float],
    letters: float,
) -> tuple[dict[str, list[float]], float]:
    """How deep each row of sizes is on each side [mm], and the largest scale that leaves room for
    them [mm/m].
    """
    span = np.maximum(box[1] - box[0], 1e-6)
    scale = float(min(room[0] / span[0], room[1] / span[1]))
    while scale > 1.0:  # from the largest down: turned figures take less room than level ones
        rows = _rows(sizes, words, box, scale, letters)
        taken = [sum(rows["left"] + rows["right"]), sum(rows["below"] + rows["above"])]
        if bool((span * scale + taken + 2 * _edge(letters) <= np.array(room)).all()):
            break
        scale *= SMALLER
    return _rows(sizes, words, box, scale, letters), scale


def _rows(
    sizes: Sequence[tuple[FigureSize, str]],
    words: Sequence[tuple[FigureWord, str]],
    box: tuple[np.ndarray, np.ndarray],
    scale: float,
    letters: float,
) -> dict[str, list[float]]:
    """Room that words take over the edge, then each row of sizes, outward on each side. [mm]"""
    rows: dict[str, list[float]] = {side: [] for side in SIDES}
    for size, text in sizes:
        held = rows[size.side]
        held += [0.0] * (size.row + 1 - len(held))
        gap = abs(size.end[_across(size)] - size.start[_across(size)]) * scale
        long = lettering.width(text, letters, size.step >= 0)
        beside = _across(size) == 1 and not SHORT * letters < long < gap - AIR * letters
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


def _string(
    view: View,
    size: FigureSize,
    edges: dict[str, float],
    rows: dict[str, list[float]],
    letters: float,
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Draw the line of a size with its feet and ticks; gives its two ends. [mm]"""
    sheet, sign = view.sheet, 1 if size.side in ("right", "above") else -1
    before = sum(rows[size.side][: size.row + 1]) + 1.1 * letters
    at = edges[size.side] + sign * before
    ends = []
    for point in (size.start, size.end):
        x, y = view.at(*point)
        foot = (x, at) if _across(size) == 0 else (at, y)
        ends.append(foot)
        near = (x, y + sign * 0.8) if _across(size) == 0 else (x + sign * 0.8, y)
        far = (x, at + sign * 0.8) if _across(size) == 0 else (at + sign * 0.8, y)
        sheet.line([near, far], "dimension", "dimension")
        tick = TICK * letters
        sheet.line(
            [(foot[0] - tick, foot[1] - tick), (foot[0] + tick, foot[1] + tick)],
            "flag",
            "dimension",
        )
    sheet.line(ends, "dimension", "dimension")
    return ends[0], ends[1]


def _figure_of(
    sheet: Sheet,
    clear: ClearSpots,
    size: FigureSize,
    drawn: tuple[str, tuple[float, float], tuple[float, float]],
    letters: float,
) -> None:
    """Write the figure of a size at the first free place along its line."""
    text, start, end = drawn
    bold = size.step >= 0
    long = lettering.width(text, letters, bold)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    upright, sign = _across(size) == 1, 1 if size.side in ("right", "above") else -1
    gap = abs(end[1] - start[1]) if upright else abs(end[0] - start[0])
    spots: list[tuple[float, float, bool]] = []
    if upright:
        if SHORT * letters < long < gap - AIR * letters:  # a question mark is never turned
            spots.append((middle[0] + sign * 0.85 * letters, middle[1], True))
            spots.append((middle[0] - sign * 0.85 * letters, middle[1], True))
        beside = middle[0] + sign * (AIR * letters + long / 2)
        spots += [(beside, middle[1] + k * letters / 2, False) for k in (0, 1, -1, 2, -2, 4, -4)]
    else:
        over = middle[1] + 0.85 * letters
        under = middle[1] - 0.85 * letters
        if long + AIR * letters <= gap:
            spots += [(middle[0], over, False), (middle[0], under, False)]
        right, left = max(start[0], end[0]), min(start[0], end[0])
        out = AIR * letters + long / 2
        spots += [(right + out, middle[1], False), (left - out, middle[1], False)]
        spots += [(middle[0] + k * letters, under, False) for k in (0, 1, -1, 2, -2, 4, -4)]
    clear.write(text, spots, letters, bold, "dimension")


def _word(
    sheet: Sheet,
    clear: ClearSpots,
    word: FigureWord,
    text: str,
    at: tuple[float, float],
    letters: float,
) -> None:
    """A name with its figure under it, as near to its place as is free."""
    bold = word.step >= 0
    rows = [(word.name, False), (text, bold)] if word.name else [(text, bold)]
    clear.write_rows(rows, at, letters)
