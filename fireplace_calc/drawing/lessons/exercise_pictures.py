"""The drawing of an exercise, for paper and page alike: a question mark where the answer goes, and
the working only as far as the step.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.drawing.lessons.clear_spots import ClearSpots
from fireplace_calc.drawing.lessons.figures.rows_of_sizes import (
    AIR,
    SHORT,
    SIDES,
    TICK,
    across,
    edge_of,
    fitted_rows,
)
from fireplace_calc.drawing.lessons.figures.word_leaders import lead_words
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.drawing.sheets.style import TEXT
from fireplace_calc.lessons import Exercise
from fireplace_calc.lessons.exercise_figure import ExerciseFigure, FigureSize, FigureWord

SHARES = (1.0, 0.85, 0.7)
"""Of the sheet for drawing and strings, the next one where letters find no free place. [-]"""


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
    for share in SHARES:
        sheet, crowded = _set_out(figure, (wide, high), shown, letters, share)
        if not crowded:
            break
    return sheet


def _set_out(
    figure: ExerciseFigure,
    room: tuple[float, float],
    shown: ShownUpTo,
    letters: float,
    share: float,
) -> tuple[Sheet, int]:
    """The drawing on a share of the sheet, with the rest for its letters; and how many texts found
    no free place all the same.
    """
    wide, high = room
    sheet = Sheet(wide, high)
    sizes = [(s, text) for s in figure.sizes if (text := shown.text(s.step, s.text)) is not None]
    words = [(w, text) for w in figure.words if (text := shown.text(w.step, w.text)) is not None]
    spots = [p for line in figure.lines for p in line.points]
    spots += [word.at for word in figure.words]
    spots += [p for size in figure.sizes for p in (size.start, size.end)]
    low, top = np.min(spots, axis=0), np.max(spots, axis=0)
    rows, scale = fitted_rows(sizes, words, (low, top), (share * wide, share * high), letters)
    margins = {side: sum(rows[side]) + edge_of(letters) for side in SIDES}
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
    outlines = []
    for line in figure.lines:
        if shown.line(line.step):
            ring = (*line.points, line.points[0]) if line.closed or line.hatch else line.points
            outlines.append(np.array([view.at(*point) for point in ring]))
            if line.hatch:
                view.cut([line.points], line.hatch, line.weight)
            else:
                view.path(ring, line.weight)
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
    named = []
    for word, text in sorted(words, key=lambda w: w[0].step < 0):
        _word(clear, word, text, view.at(*word.at), letters)
        named.append((view.at(*word.at), clear.taken[-1]))
    lead_words(clear, named, outlines, letters)
    return sheet, clear.crowded


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
        foot = (x, at) if across(size) == 0 else (at, y)
        ends.append(foot)
        near = (x, y + sign * 0.8) if across(size) == 0 else (x + sign * 0.8, y)
        far = (x, at + sign * 0.8) if across(size) == 0 else (at + sign * 0.8, y)
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
    upright, sign = across(size) == 1, 1 if size.side in ("right", "above") else -1
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
