"""Heights and clearances beside the chimney in the roof view."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.base.units import MILLIMETRES
from fireplace_calc.drawing.roof.cap import over_flue
from fireplace_calc.drawing.roof.roof_lines import _ridge, roof_at
from fireplace_calc.drawing.sheets.dimensions import (
    chain,
)
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet, View, spread
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.layout import length, level
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.roofline import REACH

Limits = Mapping[str, tuple[float | None, str]]
"""Required height of a clearance [m] and its verdict, by the name of the clearance."""


BAD = "falls short"


def _heights(geometry: Geometry, units: str, limits: Limits) -> list[tuple[str, list[str], str]]:
    """The two heights over the roof: name, lines of text, ink."""
    f = geometry.frame
    made = []
    for name, value in (
        ("reach", f.crown_top - f.highest_within_reach),
        ("contact", f.crown_top - f.uphill_contact),
    ):
        required, verdict = limits.get(name, (None, ""))
        lines = [_short(value, units)]
        if required is not None:
            lines.append(
                f"{'short of' if verdict == BAD else 'required:'} {_short(required, units)}"
            )
        made.append((name, lines, "bad" if verdict == BAD else "dimension"))
    return made


def _clearances(
    view: View,
    cell: Cell,
    geometry: Geometry,
    units: str,
    heights: list[tuple[str, list[str], str]],
    right: float,
    composed: bool = False,
) -> None:
    f, d = geometry.frame, geometry.design
    sheet = view.sheet
    reach = min(max(_ridge(geometry), 0.0), REACH)
    nearby = next(
        (
            part
            for part in d.roof.nearby
            if (part.name, part.drawn_level) == (f.highest_within_reach_is, f.highest_within_reach)
            and part.drawn_distance <= REACH * (1 + 1e-9)
        ),
        None,
    )
    if nearby is not None:
        reach = nearby.drawn_distance
    edge = view.at(right, 0)[0]
    top = view.at(0, f.crown_top)[1]
    sheet.line([view.at(0.0, f.crown_top), (edge + 1.5, top)], "hidden", "dimension")
    places = {
        "contact": view.at(0, 0)[0] + 2.2,
        "reach": min(max(view.at(reach, 0)[0], view.at(0, 0)[0] + 6.0), edge - 0.5),
    }
    lows = {"contact": f.uphill_contact, "reach": f.highest_within_reach}
    middles = []
    for name, lines, ink in heights:
        x, low = places[name], view.at(0, lows[name])[1]
        sheet.line([(x, low), (x, top)], "flag", ink)
        for y in (low, top):
            sheet.line([(x - 0.9, y), (x + 0.9, y)], "flag", ink)
        middles.append(((low + top) / 2, x, lines, ink))
    if reach > 0.3:
        line = (
            max(
                view.at(
                    0,
                    max(
                        f.liner_top + over_flue(geometry),
                        f.highest_within_reach,
                        roof_at(geometry, reach),
                    ),
                )[1],
                top,
            )
            + 3.0
        )
        if composed:
            line = max(line, cell.top - 7.0)
        chain(
            sheet,
            [view.at(0, 0)[0], view.at(reach, 0)[0]],
            [_short(reach, units)],
            line,
            side=1,
            limits=(cell.left + 2, cell.right - 2),
            composed=composed,
        )
    _beside(
        sheet, sorted(middles, key=lambda m: m[0]), edge + 3.0, (cell.bottom + 14, cell.top - 10)
    )


def _beside(
    sheet: Sheet,
    middles: list[tuple[float, float, list[str], str]],
    x: float,
    limits: tuple[float, float],
) -> None:
    """Values in the margin, each with a leader to the height it belongs to."""
    rows = [SMALL * 1.5 * len(lines) + 2.0 for _, _, lines, _ in middles]
    for (y, tip, lines, ink), at in zip(
        middles, spread([m[0] for m in middles], rows, *limits), strict=True
    ):
        sheet.line([(tip, y), (x - 0.8, at)], "dimension", ink)
        first = at + SMALL * 0.75 * (len(lines) - 1)
        for k, text in enumerate(lines):
            sheet.text(
                x,
                first - k * SMALL * 1.5,
                text,
                size=SMALL,
                ha="left",
                va="middle",
                ink=ink,
                bold=k == 0,
            )


def _short(value: float, units: str) -> str:
    return f"{value:.2f} m" if units == MILLIMETRES else length(value, units)


def _high(z: float, units: str) -> str:
    return f"{z:.2f} m".replace("-0.00", "0.00") if units == MILLIMETRES else level(z, units)
