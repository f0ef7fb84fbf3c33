"""Dimension strings, level marks, notes: the annotation a drawing is read by. Everything in mm on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from math import cos, pi, sin

from fireplace_calc.drawing import lettering
from fireplace_calc.drawing.sheet import Sheet, spread
from fireplace_calc.drawing.style import SMALL, TEXT

TICK, CLEAR, ROW = 1.1, 0.7, 4.4
"""Half length of a tick; air between a letter and a line; height of one row of a dimension string. [mm]"""


def chain(sheet: Sheet, stops: Sequence[float], texts: Sequence[str], line: float, along: str = "x", side: int = -1,
          limits: tuple[float, float] = (0.0, 1e3), feet: Sequence[float] | None = None) -> float:
    """Draw one dimension string; texts that are wider than their gap move to a second row with a leader.

    Parameters
    ----------
    sheet : Sheet
    stops : sequence of float
        Places of the ticks along the string, rising; one more than there are texts. [mm]
    texts : sequence of str
        One for each gap.
    line : float
        Where the string runs, across its direction. [mm]
    along : str
        ``x`` for a string left to right, ``y`` for one bottom to top.
    side : int
        -1 when the object lies above (or right of) the string, +1 when it lies below (or left).
    limits : tuple of float
        How far second-row texts may spread. [mm]
    feet : sequence of float, optional
        Where each extension line starts, across; none are drawn without. [mm]

    Returns
    -------
    float
        Room taken on the far side of the string, for the next one. [mm]
    """
    turned = along == "y"

    def put(a: float, b: float) -> tuple[float, float]:
        return (b, a) if turned else (a, b)

    sheet.line([put(stops[0] - 1.0, line), put(stops[-1] + 1.0, line)], "dimension", "dimension")
    for i, stop in enumerate(stops):
        sheet.line([put(stop - TICK * 0.7, line - TICK * 0.7), put(stop + TICK * 0.7, line + TICK * 0.7)], "flag", "dimension")
        if feet is not None:
            sheet.line([put(stop, feet[i] + side * 0.8), put(stop, line + side * 0.8)], "dimension", "dimension")
    outside: list[tuple[float, str]] = []
    for low, high, text in zip(stops, stops[1:], texts, strict=False):
        if high - low < 1e-6:
            continue
        middle = (low + high) / 2
        if lettering.width(text, TEXT) + 2.4 <= high - low:
            sheet.text(*put(middle, line - CLEAR if turned else line + CLEAR), text, turned=turned, ink="dimension")
        else:
            outside.append((middle, text))
    if not outside:
        return ROW
    sizes = [lettering.width(text, SMALL) + 1.6 for _, text in outside]
    places = spread([m for m, _ in outside], sizes, *limits)
    row = line + side * (ROW + (CLEAR if turned else 0.0))
    near, far = line + side * 0.3, row + (SMALL * 1.05 if side < 0 else -0.35 * SMALL)
    if turned:
        near, far = line + side * 0.3, row + (0.35 * SMALL if side < 0 else -SMALL * 1.05)
    for (middle, text), at in zip(outside, places, strict=True):
        sheet.line([put(middle, near), put(at, far)], "dimension", "dimension")
        sheet.text(*put(at, row), text, size=SMALL, turned=turned, ink="dimension")
    return 2 * ROW + 1.0


def level_marks(named: dict[str, float], write: Callable[[float], str]) -> list[tuple[float, str]]:
    """Levels as (level, text), bottom to top; names that share a level share a mark. [m]"""
    together: dict[float, list[str]] = {}
    for name, z in named.items():
        together.setdefault(round(z, 3), []).append(name)
    return [(z, f"{write(z)}  {', '.join(names)}") for z, names in sorted(together.items())]


def room_for(texts: Iterable[str], size: float = SMALL) -> float:
    """Width of the widest of some texts. [mm]"""
    return max((lettering.width(text, size) for text in texts), default=0.0)


def levels(sheet: Sheet, marks: Sequence[tuple[float, str]], foot: float, x: float, side: int = 1,
           limits: tuple[float, float] = (0.0, 1e3)) -> None:
    """Level marks in a column at the side, spread apart where they crowd.

    Parameters
    ----------
    sheet : Sheet
    marks : sequence of (float, str)
        Level on the paper and its text, bottom to top. [mm]
    foot : float
        Where each leader starts. [mm]
    x : float
        Where the texts start (``side`` 1) or end (``side`` -1). [mm]
    side : int
        1 for a column on the right, -1 for one on the left.
    limits : tuple of float
        Lowest and highest place of the column. [mm]
    """
    places = spread([y for y, _ in marks], [SMALL * 1.55] * len(marks), *limits)
    knee, near = x - side * 3.4, x - side * 0.8
    for (y, text), at in zip(marks, places, strict=True):
        sheet.line([(foot, y), (knee, y), (x - side * 1.6, at), (near, at)], "dimension", "dimension")
        sheet.text(x, at, text, size=SMALL, ha="left" if side > 0 else "right", va="middle", ink="dimension")


def note(sheet: Sheet, tip: tuple[float, float], x: float, y: float, text: str, ha: str = "left") -> None:
    """A word with a leader to what it names; the tip gets a dot."""
    end = x - 0.7 if ha == "left" else x + 0.7
    sheet.line([tip, (end, y)], "dimension", "soft")
    r = 0.35
    sheet.line([(tip[0] - r, tip[1]), (tip[0] + r, tip[1])], "ground", "soft")
    sheet.text(x, y, text, size=SMALL, ha=ha, va="middle", ink="ink")


def notes(sheet: Sheet, items: Sequence[tuple[tuple[float, float], str]], x: float, side: int = 1,
          limits: tuple[float, float] = (0.0, 1e3)) -> None:
    """A column of notes, each beside what it names as nearly as the others allow. Items run bottom to top. [mm]"""
    places = spread([tip[1] for tip, _ in items], [SMALL * 1.6] * len(items), *limits)
    for (tip, text), at in zip(items, places, strict=True):
        note(sheet, tip, x, at, text, "left" if side > 0 else "right")


def person(view, x: float, floor: float, height: float = 1.75) -> None:
    """Somebody standing there, for scale; feet on ``floor``, middle at ``x``. [m]"""
    h = height
    half = [(0.0, 0.0), (0.055, 0.0), (0.075, 0.02), (0.06, 0.26), (0.085, 0.45), (0.085, 0.52), (0.105, 0.52), (0.12, 0.62),
            (0.118, 0.78), (0.10, 0.815), (0.03, 0.835), (0.03, 0.86)]
    right = [(x + a * h, floor + b * h) for a, b in half[1:]]
    left = [(2 * x - a, b) for a, b in reversed(right)]
    inner = [(x - 0.012 * h, floor + 0.45 * h * 0), (x - 0.006 * h, floor + 0.44 * h), (x + 0.006 * h, floor + 0.44 * h),
             (x + 0.012 * h, floor)]
    view.seen(right + left + inner, "person", "fine", layer=-1, ink="soft")
    view.seen([(x + 0.052 * h * c, floor + 0.925 * h + 0.066 * h * s) for c, s in _ROUND], "person", "fine", layer=-1, ink="soft")


_ROUND = tuple((cos(i * pi / 12), sin(i * pi / 12)) for i in range(24))
