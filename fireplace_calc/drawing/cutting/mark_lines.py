"""Marks beside one side of a face, each with a leader to its piece."""

from __future__ import annotations

from collections.abc import Callable

from fireplace_calc.drawing.cutting.in_outline import SIDES
from fireplace_calc.drawing.plates.figure import Extent
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.plates.words_round import AIR, KNEE, TO_TEXT
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import Pair, View, spread

OVER = 3.5
"""From a face to the marks over or under it. [mm]"""
PITCH = 1.7 * SMALL
"""From mark to mark in a column. [mm]"""
ALIGNED, OVERHEAD = {-1: "right", 1: "left"}, {-1: "top", 1: "base"}


class MarkLine:
    """One line of marks, or two that take turns.

    Parameters
    ----------
    side : str
        Of ``SIDES``.
    items : list
        Where each leader ends in its piece [m], and its mark.
    sizes : float, float
        Height and width of the face. [mm]
    """

    def __init__(
        self, side: str, items: list[tuple[Pair, str]], sizes: tuple[float, float]
    ) -> None:
        axis, self.way = SIDES[side]
        self.along = 1 - axis  # the axis along which the marks stand
        self.items = sorted(items, key=lambda item: (item[0][self.along], item[0][axis]))
        self.long = sizes[axis]
        self.wide = [width(mark, SMALL) for _, mark in self.items]
        pitch = [PITCH] * len(items) if axis == 0 else [wide + 1.6 for wide in self.wide]
        self.two = sum(pitch) > self.long
        if self.two:  # a leader of the far line passes between two marks of the near one
            beside = zip([0.0, *pitch], pitch, [*pitch[1:], 0.0], strict=False)
            pitch = [max(three) / 2 + 0.1 for three in beside]
        self.pitch = pitch
        self.step = max(self.wide) + 1.6 if axis == 0 else SMALL + 1.6

    @property
    def beyond(self) -> float:
        """How far they reach past either end of the face."""
        return max(0.0, (sum(self.pitch) - self.long) / 2)

    @property
    def room(self) -> float:
        """From the face to their far end."""
        own = max(self.wide) + KNEE + TO_TEXT + AIR if self.along else OVER + SMALL + 1.0
        return own + (self.step if self.two else 0.0)

    def runs(
        self, at: Callable[[float, float], Pair], box: Extent
    ) -> list[tuple[Pair, Pair, Pair, Pair]]:
        """Of each mark: where its leader starts, bends and ends, and where its letters stand.

        Parameters
        ----------
        at : callable
            From the face [m] to the paper. [mm]
        box : Extent
            Of the face. [m]
        """
        upright = self.along == 1
        ends = at(box[0], box[1]), at(box[2], box[3])
        edge = ends[0 if self.way < 0 else 1][1 - self.along]
        low, high = (end[self.along] for end in ends)
        tips = [at(*tip) for tip, _ in self.items]
        limits = (low - self.beyond, high + self.beyond)
        places = spread([tip[self.along] for tip in tips], self.pitch, *limits)
        first, knee = (AIR + KNEE + TO_TEXT, AIR) if upright else (OVER, 1.0)
        found = []
        for n, (tip, place) in enumerate(zip(tips, places, strict=True)):
            out = first + (self.step if self.two and n % 2 else 0.0)
            start, bend = (
                (edge + self.way * (out - TO_TEXT), place),
                (edge + self.way * knee, place),
            )
            text = (edge + self.way * out, place)
            if not upright:
                start, bend, text = start[::-1], bend[::-1], text[::-1]
            found.append((start, bend, tip, text))
        return found

    def paint(self, view: View, box: Extent) -> list[tuple[Pair, Pair]]:
        """Write them, each with its leader; gives the stretches that go to pieces."""
        drawn: list[tuple[Pair, Pair]] = []
        ha, va = (ALIGNED[self.way], "middle") if self.along else ("center", OVERHEAD[self.way])
        for (_, mark), (start, bend, tip, text) in zip(
            self.items, self.runs(view.at, box), strict=True
        ):
            view.sheet.line([start, bend, tip], "dimension", "soft")
            view.sheet.text(*text, mark, size=SMALL, ha=ha, va=va)
            drawn.append((bend, tip))
        return drawn
