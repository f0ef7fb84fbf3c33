"""Level marks in a column beside a drawing. Everything in mm on paper."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.dimensions import room_for
from fireplace_calc.drawing.sheets.sheet import Sheet, spread
from fireplace_calc.drawing.sheets.style import SMALL


def level_marks(
    named: dict[str, float], write: Callable[[float], str]
) -> list[tuple[float, str, str]]:
    """Levels as (level, value, name), bottom to top; names that share a level share a mark. [m]"""
    together: dict[float, list[str]] = {}
    for name, z in named.items():
        together.setdefault(round(z, 3), []).append(name)
    return [(z, write(z), ", ".join(names)) for z, names in sorted(together.items())]


def level_room(marks: Sequence[tuple[float, str, str]], stacked: bool) -> float:
    """Width of a column of level marks. [mm]"""
    texts = [text for _, *pair in marks for text in (pair if stacked else ["  ".join(pair)])]
    return room_for(texts)


def levels(
    sheet: Sheet,
    marks: Sequence[tuple[float, str, str]],
    feet: Sequence[float],
    x: float,
    side: int = 1,
    limits: tuple[float, float] = (0.0, 1e3),
    stacked: bool = False,
) -> None:
    """Level marks in a column at the side, spread apart where they crowd.

    Parameters
    ----------
    sheet : Sheet
    marks : sequence of (float, str, str)
        Level on the paper, value and name, bottom to top. [mm]
    feet : sequence of float
        Where each leader starts. [mm]
    x : float
        Where the texts start (``side`` 1) or end (``side`` -1). [mm]
    side : int
        1 for a column on the right, -1 for one on the left.
    limits : tuple of float
        Lowest and highest place of the column. [mm]
    stacked : bool
        Value over name, on either side of the level line; side by side otherwise.
    """
    ha = "left" if side > 0 else "right"
    pitch = SMALL * 1.55
    if stacked:  # as loosely as there is room
        pitch = min(3.3 * SMALL, max(2.8 * SMALL, (limits[1] - limits[0]) / max(len(marks), 1)))
    places = spread([y for y, *_ in marks], [pitch] * len(marks), *limits)
    for (y, value, name), at, foot in zip(marks, places, feet, strict=True):
        knee, near = x - side * 3.4, x - side * 0.8
        if not stacked:
            sheet.line(
                [(foot, y), (knee, y), (x - side * 1.6, at), (near, at)], "dimension", "dimension"
            )
            sheet.text(x, at, f"{value}  {name}", size=SMALL, ha=ha, va="middle", ink="dimension")
            continue
        end = x + side * max(lettering.width(value, SMALL), lettering.width(name, SMALL))
        sheet.line(
            [(foot, y), (knee, y), (x - side * 0.6, at), (end, at)], "dimension", "dimension"
        )
        sheet.text(x, at + 0.75, value, size=SMALL, ha=ha, ink="dimension")
        sheet.text(x, at - 0.55, name, size=SMALL, ha=ha, va="top", ink="dimension")
