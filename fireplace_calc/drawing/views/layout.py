"""What the views share: cells on the sheet, fitting, titles, and cut parts."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import degrees

import numpy as np

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.design.firebox import STEEL_UNIT
from fireplace_calc.design.opening import AngleLegs
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View
from fireplace_calc.drawing.sheets.style import SMALL, TITLE
from fireplace_calc.drawing.views.cuts import SOLID
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.geometry.parts import Geometry

Scales = Iterable[float]
"""Denominators of the scales a view may be drawn at. [-]"""
ScaleName = Callable[[float], str]
"""What a scale is called on paper, by its denominator."""

LADDER = tuple(
    round(base * 10**power, 6)
    for power in (0, 1, 2)
    for base in (
        1,
        1.12,
        1.25,
        1.4,
        1.6,
        1.8,
        2,
        2.24,
        2.5,
        2.8,
        3.15,
        3.55,
        4,
        4.5,
        5,
        5.6,
        6.3,
        7.1,
        8,
        9,
    )
)
"""Scale denominators tried on the screen; steps, so that a picture does not breathe while a slider
moves. [-]
"""

ARCHITECT: dict[str, dict[float, str]] = {
    FEET_INCHES: {
        8: '1 1/2" = 1\'-0"',
        12: '1" = 1\'-0"',
        16: '3/4" = 1\'-0"',
        24: '1/2" = 1\'-0"',
        32: '3/8" = 1\'-0"',
        48: '1/4" = 1\'-0"',
        64: '3/16" = 1\'-0"',
        96: '1/8" = 1\'-0"',
        128: '3/32" = 1\'-0"',
        192: '1/16" = 1\'-0"',
        240: '1" = 20\'-0"',
        360: '1" = 30\'-0"',
    },
    "millimetres": {
        n: f"1:{n}" for n in (10, 15, 20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400)
    },
}
"""Scales of paper drawings, as the trade writes them."""


def fit(
    sheet: Sheet,
    cell: Cell,
    box: tuple[float, float, float, float],
    margins: tuple[float, float, float, float],
    scales: Scales = LADDER,
) -> tuple[View, float]:
    """Place a model box into a cell at the largest scale that leaves the margins free.

    Parameters
    ----------
    sheet : Sheet
    cell : Cell
        Where on the paper. [mm]
    box : left, bottom, right, top
        Of the model. [m]
    margins : left, bottom, right, top
        Room for annotation. [mm]
    scales : iterable of float
        Denominators to choose from. [-]

    Returns
    -------
    View, float
        The window and its scale denominator. [-]
    """
    wide, high = (
        cell.right - cell.left - margins[0] - margins[2],
        cell.top - cell.bottom - margins[1] - margins[3],
    )
    scales = sorted(scales)
    for denominator in scales:
        k = 1000 / denominator
        if (box[2] - box[0]) * k <= wide + 1e-6 and (box[3] - box[1]) * k <= high + 1e-6:
            break
    spare_x, spare_y = wide - (box[2] - box[0]) * k, high - (box[3] - box[1]) * k
    x0 = cell.left + margins[0] + spare_x / 2 - box[0] * k
    y0 = cell.bottom + margins[1] + spare_y / 2 - box[1] * k
    return View(sheet, x0, y0, k), denominator


def title(sheet: Sheet, cell: Cell, text: str, scale: str = "") -> None:
    """Name of a view at the foot of its cell."""
    sheet.text(cell.left + 2, cell.bottom + 2.2, text, size=TITLE, ha="left", bold=True)
    if scale:
        sheet.text(cell.right - 2, cell.bottom + 2.2, scale, size=SMALL, ha="right", ink="soft")


NAMES = {"parging": "chamber lining", "refractory": "refractory section"}


def key(sheet: Sheet, left: float, bottom: float, right: float) -> None:
    """What each hatch on the sheet means, where there is room between two places. [mm]"""
    names = [
        *dict.fromkeys(name for (_, name) in sheet.fills if name in sheet.hatched or name in SOLID)
    ]
    words = [NAMES.get(name, name) for name in names]
    if left + 12.0 + max(lettering.width(word, SMALL) for word in words) > right:
        return
    for row, (name, word) in enumerate(zip(reversed(names), reversed(words), strict=True)):
        y = bottom + row * 6.0
        ring = np.array([(left, y), (left + 9.0, y), (left + 9.0, y + 4.2), (left, y + 4.2)])
        sheet.fill([ring], name, None if name in SOLID else name)
        sheet.line(ring, "seen", closed=True)
        sheet.text(left + 11.0, y + 2.1, word, size=SMALL, ha="left", va="middle")


def roomy(cell: Cell, least: float = 185.0) -> bool:
    """Whether a cell has room for words beside the dimensions."""
    return cell.right - cell.left > least


def in_room(
    words: list[tuple[tuple[float, float], str]], room: float
) -> list[tuple[tuple[float, float], str]]:
    """Notes in as many rows as keep them within a column. [mm]"""
    return [(at, "\n".join(lettering.in_rows(text, room, SMALL))) for at, text in words]


def lining_word(geometry: Geometry) -> str:
    """What faces the fire, as it is called where it is cut."""
    if "firebox lining" not in geometry.parts_by_name:
        return "wall piece"
    return "air chamber" if geometry.design.firebox.lining == STEEL_UNIT else "lining"


CERTAIN = 9
"""Decimals of a length in meters that no reckoning blurs. [-]"""


def length(value: float, units: str) -> str:
    r"""A length as it is written in a dimension string: to the sixteenth, or in millimeters without
    their unit, be it as long as it may.

    Examples
    --------
    >>> length(12.8316, "feet-inches"), length(12.8316, "millimetres")
    ('42\'-1 3/16"', '12 832')
    >>> length(0.0635, "millimetres"), length(4.0635 - 4.0, "millimetres")
    ('64', '64')
    """
    value = round(value, CERTAIN)  # half of the last place is half, however it was reckoned
    if units == FEET_INCHES:
        return show(value, "length", units)
    return grouped(value / MM, 0, units)


def level(value: float, units: str) -> str:
    """A level as it is written at the side; in feet and inches never without its feet."""
    text = length(value, units)
    return (
        text
        if units != FEET_INCHES or "'" in text
        else text.replace("-", "-0'-", 1)
        if text.startswith("-")
        else f"0'-{text}"
    )


def cut_at(z: float, units: str) -> str:
    r"""At which level a plan is cut, to the inch or to 10 mm: nobody measures it.

    Examples
    --------
    >>> cut_at(0.5509, "feet-inches"), cut_at(0.5509, "millimetres")
    ('cut at 1\'-10"', 'cut at 550')
    """
    step = INCH if units == FEET_INCHES else 0.01
    return f"cut at {level(round(z / step) * step, units)}"


def flue_size(bore: Bore) -> str:
    """A flue by its size and form.

    Examples
    --------
    >>> flue_size(Bore(True, 0.3, 0.3, 0.02, None, "12"))
    '12 round'
    """
    return f"{bore.label} {'round' if bore.round else 'liner'}"


def earth(view: View, x0: float, x1: float, z: float) -> None:
    """Ground, cut: a heavy line and strokes in threes under it, as many whole threes as fit."""
    (a, y), (b, _) = view.at(x0, z), view.at(x1, z)
    view.sheet.line([(a, y), (b, y)], "ground")
    starts = np.arange(a + 2.4, b - 1.6, 4.2)
    if len(starts):
        x = np.concatenate([starts, starts + 0.7, starts + 1.4])
        long = np.repeat((1.0, 1.5, 2.0), len(starts))
        view.sheet.hatches.append(
            np.stack([np.stack([x, np.full_like(x, y)], 1), np.stack([x - long, y - long], 1)], 1)
        )


def break_line(view: View, x0: float, x1: float, z: float) -> None:
    """Zigzag where a drawing stops short of the thing."""
    (a, y), (b, _) = view.at(x0, z), view.at(x1, z)
    m = (a + b) / 2
    view.sheet.line(
        [
            (a - 2, y),
            (m - 1.5, y),
            (m - 0.5, y + 1.6),
            (m + 0.5, y - 1.6),
            (m + 1.5, y),
            (b + 2, y),
        ],
        "seen",
    )


def of_a_set(
    items: list[tuple[tuple[float, float], str]], geometry: Geometry
) -> list[tuple[tuple[float, float], str]]:
    """The same words where a set's pieces stand: no transition, a reducer for a chamber. [m]"""
    f = geometry.frame
    lean = degrees(max(f.chamber_slopes.values()))
    design = geometry.design
    angle = design.pieces.facing_angle(design.opening.head)
    facing = [] if angle is None else [_under_facing(geometry, angle)]
    kept = [
        (place, f"reducer, leans {lean:.0f} deg at most" if "chamber" in text else text)
        for place, text in items
        if text not in ("transition", "smoke shelf", "lintel", "arch")
    ]
    return [
        *kept,
        ((f.depth * 0.97, f.throat + 0.05), "smoke shelf"),
        ((f.breast - 0.05, f.opening_top + 0.1), "lintel"),
        *facing,
    ]


def _under_facing(geometry: Geometry, angle: AngleLegs) -> tuple[tuple[float, float], str]:
    """Where to point at the angle that carries the facing: its level leg. [m]"""
    back, top = geometry.design.pieces.facing, geometry.frame.opening_top
    return (back - angle.level * 0.8, top + angle.thickness / 2), "angle under the facing"


def apart(row: list[float]) -> list[float]:
    """Stops of a string without those that fall together. [m]"""
    return [y for i, y in enumerate(row) if i == 0 or y - row[i - 1] > 1e-6]
